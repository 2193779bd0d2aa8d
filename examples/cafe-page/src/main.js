// Puts the page together: inputs above, what follows from them below, everything remembered as it changes.

import { start } from "../cupwright/src/slim.js";
import words from "../words.en.js";
import { attempt, judged, planned } from "./bench.js";
import { h } from "./element.js";
import { entryOf } from "./exchange.js";
import { SHARED, SHELVED, fieldOf, fieldsOf } from "./fields.js";
import { Form } from "./form.js";
import { GuideView } from "./guide-view.js";
import { judgement } from "./judge-view.js";
import { fromFragment, toFragment } from "./link.js";
import { NotebookView } from "./notebook-view.js";
import { planPictures, refusedTicket, spoken, ticket } from "./recipe-view.js";
import { blamed, sentence } from "./refusals.js";
import { load, save, sections, shared, takeShared } from "./settings.js";
import { CHOICES } from "./units.js";

const DAILY = ["wish.cup_g", "wish.strength_pct", "wish.servings"];
// Somebody who is typing is not talked over.
const SPEAK_AFTER_MS = 700;

const settings = load();
const read = () => sections(settings);
let plan = null;
let found = null;

const news = h("p", { class: "news", role: "status" });
const aloud = h("p", { class: "unseen", role: "status" });
const paper = h("div", { class: "paper" });
const pictures = h("div", { class: "pictures" });
const verdictBox = h("div", { class: "verdict" });
const guideBox = h("div", {});
const notebookBox = h("div", {});
const pickers = {};
const wishForm = new Form(read, changed);
const judgeForm = new Form(read, changed);
const keepButton = h("button", { type: "button", class: "main", disabled: true, onclick: keepBrew }, words.judge.keep);
let guide;
let notebook;
let speaking;

const say = (text) => {
  clearTimeout(speaking);
  speaking = setTimeout(() => {
    aloud.textContent = text;
  }, SPEAK_AFTER_MS);
};

function changed(field) {
  // A link no longer tells what stands on the page once that is edited.
  if (location.hash && SHARED.includes(field?.section)) history.replaceState(null, "", location.pathname + location.search);
  if (!save(settings)) news.textContent = words.notKept;
  refresh();
}

function refresh() {
  const all = read();
  wishForm.refresh();
  judgeForm.refresh();
  for (const kind of SHELVED) showPicker(kind);
  showPlan(all);
  showJudgement(all);
}

function showPlan(all) {
  const outcome = attempt(() => planned(all));
  plan = outcome.value ?? null;
  if (plan) {
    wishForm.refuse(null);
    paper.replaceChildren(ticket(plan, all, { begin: beginBrew, print: () => window.print(), share: shareRecipe }));
    pictures.replaceChildren(...planPictures(plan, all));
    say(spoken(plan, all.units));
    return;
  }
  const { refusal } = outcome;
  const field = blamed(refusal, SHARED);
  const text = sentence(refusal, field, all.units);
  wishForm.refuse(field, text);
  paper.replaceChildren(
    refusedTicket(refusal, SHARED, all.units, {
      take: (blamedField, nearest) => {
        read()[blamedField.section][blamedField.key] = nearest;
        changed(blamedField);
        news.textContent = "";
      },
      visit: (blamedField) => wishForm.visit(blamedField),
    }),
  );
  pictures.replaceChildren();
  say(text);
}

function showJudgement(all) {
  found = null;
  keepButton.disabled = true;
  const { brew } = all;
  const begun = brew.dose_g !== null && brew.water_g !== null && brew.beverage_g !== null && brew.readings.length > 0;
  if (!begun) {
    judgeForm.refuse(null);
    verdictBox.replaceChildren(h("p", { class: "quiet" }, words.judge.waiting));
    return;
  }
  const outcome = attempt(() => judged(all));
  if (outcome.refusal) {
    const inSections = ["brew", "instrument"];
    const field = blamed(outcome.refusal, inSections) ?? blamed(outcome.refusal, SHARED);
    const text = sentence(outcome.refusal, field, all.units);
    judgeForm.refuse(field, text);
    verdictBox.replaceChildren(h("p", { class: "error" }, text));
    return;
  }
  judgeForm.refuse(null);
  found = outcome.value;
  keepButton.disabled = found.strength_pct === undefined;
  verdictBox.replaceChildren(judgement(found, plan, all, takeLearnt));
}

function takeLearnt({ yield_pct, apparent_retention_g_per_g }) {
  const { coffee, brewer } = read();
  coffee.yield_pct = yield_pct;
  brewer.apparent_retention_g_per_g = apparent_retention_g_per_g;
  changed(null);
  news.textContent = words.judge.taken;
  document.getElementById("ticket").scrollIntoView();
}

function beginBrew() {
  guide.begin(plan, read());
  document.getElementById("guide").scrollIntoView();
}

async function shareRecipe() {
  history.replaceState(null, "", toFragment(shared(settings)));
  try {
    await navigator.clipboard.writeText(location.href);
    news.textContent = words.ticket.shared;
  } catch {
    news.textContent = words.ticket.notCopied;
  }
}

async function keepBrew() {
  keepButton.disabled = true;
  await notebook.keep(entryOf(read(), found));
  news.textContent = words.judge.kept;
}

function asPlanned() {
  if (!plan) return;
  const { brew } = settings;
  brew.dose_g = plan.recipe.dose_g;
  brew.water_g = plan.recipe.water_g;
  changed(fieldOf("brew.dose_g"));
}

function showPicker(kind) {
  const { select, removal } = pickers[kind];
  select.replaceChildren(
    ...settings.shelf[kind].map((entry, index) =>
      h("option", { value: index, selected: index === settings.chosen[kind] }, entry.name || words.shelf.nameless),
    ),
  );
  removal.disabled = settings.shelf[kind].length === 1;
}

function picker(kind) {
  const { pick, another, remove } = words.shelf[kind];
  const select = h("select", {
    id: `pick-${kind}`,
    onchange: () => {
      settings.chosen[kind] = Number(select.value);
      changed({ section: kind });
    },
  });
  const addition = h(
    "button",
    {
      type: "button",
      onclick: () => {
        const entry = read()[kind];
        const count = settings.shelf[kind].push({ ...entry, name: words.shelf.copyOf(entry.name) });
        settings.chosen[kind] = count - 1;
        changed({ section: kind });
      },
    },
    another,
  );
  const removal = h(
    "button",
    {
      type: "button",
      onclick: () => {
        settings.shelf[kind].splice(settings.chosen[kind], 1);
        settings.chosen[kind] = 0;
        changed({ section: kind });
      },
    },
    remove,
  );
  pickers[kind] = { select, removal };
  return {
    field: h("div", { class: "field" }, h("label", { for: `pick-${kind}` }, pick), h("div", { class: "entry" }, h("span", { class: "box" }, select))),
    details: drawer(words.groups[kind], wishForm, fieldsOf(kind), h("div", { class: "actions" }, addition, removal)),
  };
}

function drawer(name, form, fields, ...more) {
  return h("details", {}, h("summary", {}, name), h("div", { class: "fields" }, fields.map((field) => form.build(field))), more);
}

function unitsDrawer() {
  return h(
    "details",
    {},
    h("summary", {}, words.groups.units),
    h(
      "div",
      { class: "fields" },
      Object.entries(CHOICES).map(([setting, options]) => {
        const select = h(
          "select",
          {
            id: `units-${setting}`,
            onchange: () => {
              settings.units[setting] = select.value;
              changed(null);
              guide.show();
              notebook.show();
            },
          },
          options.map((option) => h("option", { value: option, selected: settings.units[setting] === option }, words.units[setting][option])),
        );
        return h("div", { class: "field" }, h("label", { for: `units-${setting}` }, words.units[setting].label), h("div", { class: "entry" }, h("span", { class: "box" }, select)));
      }),
    ),
  );
}

function station(id, ...content) {
  const place = Object.keys(words.headings).indexOf(id) + 1;
  return h(
    "section",
    { id, class: "station", "aria-labelledby": `${id}-heading` },
    h("h2", { id: `${id}-heading` }, h("span", { class: "place", "aria-hidden": "true" }, place), words.headings[id]),
    content,
  );
}

function build() {
  document.documentElement.lang = words.language;
  document.title = `${words.title} · ${words.cafe}`;
  const shelves = SHELVED.map(picker);
  const byId = (id) => wishForm.build(fieldOf(id));
  const rest = fieldsOf("wish").filter(({ id }) => !DAILY.includes(id));
  document.body.replaceChildren(
    h("a", { class: "skip", href: "#ticket" }, words.skip),
    h(
      "header",
      { class: "board" },
      h("div", { class: "sign" }, h("p", { class: "cafe" }, words.cafe), h("h1", {}, words.title)),
      h("p", { class: "lead" }, words.lead),
    ),
    h(
      "nav",
      { class: "rail", "aria-label": words.steps },
      h("ul", {}, Object.entries(words.places).map(([id, name]) => h("li", {}, h("button", { type: "button", onclick: () => goTo(id) }, name)))),
    ),
    h(
      "main",
      {},
      news,
      aloud,
      h(
        "div",
        { class: "pair plan" },
        station(
          "wish",
          h("div", { class: "daily", role: "group", "aria-label": words.groups.daily }, DAILY.map(byId)),
          h("div", { class: "set", role: "group", "aria-label": words.groups.set }, shelves.map(({ field }) => field)),
          drawer(words.groups.wish, wishForm, rest),
          shelves.map(({ details }) => details),
          unitsDrawer(),
        ),
        station("ticket", paper),
        pictures,
      ),
      station("guide", guideBox),
      station(
        "judge",
        h("p", {}, words.judge.lead),
        h(
          "div",
          { class: "pair" },
          h(
            "div",
            {},
            h("div", { class: "actions" }, h("button", { type: "button", onclick: asPlanned }, words.judge.asPlanned)),
            h("div", { class: "fields" }, fieldsOf("brew").map((field) => judgeForm.build(field))),
            drawer(words.groups.instrument, judgeForm, fieldsOf("instrument")),
            h("div", { class: "actions" }, keepButton),
          ),
          verdictBox,
        ),
      ),
      station("notebook", notebookBox),
    ),
    h("footer", {}, h("p", {}, words.invented), h("p", {}, words.ticket.local)),
  );
}

function goTo(id) {
  const heading = document.getElementById(`${id}-heading`);
  heading.tabIndex = -1;
  heading.focus({ preventScroll: true });
  document.getElementById(id).scrollIntoView();
}

function takeLink() {
  const { inputs, wrong } = fromFragment(location.hash);
  if (wrong.length > 0) {
    news.textContent = words.linkRefused(wrong.slice(0, 5).join(", "));
    return;
  }
  takeShared(settings, inputs);
  save(settings);
  news.textContent = words.linkTaken;
}

async function open() {
  build();
  try {
    await start(new URL("../cupwright/cupwright.wasm", import.meta.url));
  } catch (error) {
    news.textContent = words.noStart;
    throw error;
  }
  guide = new GuideView(guideBox, { units: () => settings.units, say, judge: () => (asPlanned(), goTo("judge")) });
  notebook = new NotebookView(notebookBox, () => settings.units);
  if (location.hash.includes("=")) takeLink();
  addEventListener("hashchange", () => {
    if (!location.hash.includes("=")) return;
    takeLink();
    refresh();
  });
  addEventListener("offline", () => {
    news.textContent = words.offline;
  });
  refresh();
  notebook.show();
  // Kept brews should outlast a full disk; a browser that declines still keeps them for now.
  navigator.storage?.persist?.();
  if ("serviceWorker" in navigator) navigator.serviceWorker.register("service-worker.js");
}

open();
