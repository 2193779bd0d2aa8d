// The calculator: inputs above, what follows from them below, everything remembered as it changes. It stands in a page
// of its own (main.js) or in any other one (brew-ticket.js) and knows neither.

import { start } from "../cupwright/src/slim.js";
import words from "../words.en.js";
import { attempt, judged, planned } from "./bench.js";
import { h } from "./element.js";
import { entryOf } from "./exchange.js";
import { PLANNED, SHARED, SHELVED, fieldOf, fieldsOf } from "./fields.js";
import { Form } from "./form.js";
import { GuideView } from "./guide-view.js";
import { judgement } from "./judge-view.js";
import { LearnView } from "./learn-view.js";
import { giveBack, take } from "./learnt.js";
import { toFragment } from "./link.js";
import { NotebookView } from "./notebook-view.js";
import { PRESETS } from "./presets.js";
import { planPictures, refusedTicket, spoken, ticket } from "./recipe-view.js";
import { blamed, sentence } from "./refusals.js";
import { ReplayView } from "./replay-view.js";
import { load, restored, save, sections, shared, takeShared } from "./settings.js";
import { Shelf } from "./shelf-view.js";
import { CHOICES, asShown } from "./units.js";

const DAILY = ["wish.cup_g", "wish.strength_pct", "wish.servings"];
// Somebody who is typing is not talked over.
const SPEAK_AFTER_MS = 700;
// On it, tabs and elements of one device tell each other what has changed.
const CHANNEL = "brew-ticket";

let started;
/** Loads the package, once for all calculators of a page; what failed is tried again when next asked for. */
export function loaded() {
  started ??= start(new URL("../cupwright/cupwright.wasm", import.meta.url)).catch((error) => {
    started = undefined;
    throw error;
  });
  return started;
}

export class Calculator {
  /** Its elements, to be put somewhere. */
  element;

  #settings = load();
  #surroundings;
  #plan = null;
  #found = null;
  #spoken = "";
  #speaking;
  #stopped = new AbortController();
  #channel = new BroadcastChannel(CHANNEL);

  #news = h("div", { class: "news", role: "status" });
  #notKept = h("p", { class: "lasting", role: "status" });
  #aloud = h("p", { class: "unseen", role: "status" });
  #paper = h("div", {});
  #pictures = h("div", { class: "pictures" });
  #verdict = h("div", { class: "verdict" });
  #fill;
  #keep = h(
    "button",
    { type: "button", class: "main", disabled: true, onclick: () => this.#keepBrew() },
    words.judge.keep,
  );
  #wishForm;
  #judgeForm;
  #shelves;
  #units = {};
  #guide;
  #notebook;
  #learn;
  #replay;
  #stations = {};

  /**
   * The package must be `loaded`. Of what it stands in it asks: `edited()` once a recipe is no longer what a link
   * said, `link(fragment)` for the address of a recipe, `print: { name, act(fragment) }` for the card.
   */
  constructor(surroundings) {
    this.#surroundings = surroundings;
    const read = () => sections(this.#settings);
    const changed = (field) => this.#changed(field);
    this.#wishForm = new Form(read, changed);
    this.#judgeForm = new Form(read, changed);
    this.#shelves = SHELVED.map(
      (kind) =>
        new Shelf(
          kind,
          this.#settings,
          () => changed({ section: kind }),
          (text, undo) => this.#offerUndo(text, undo),
        ),
    );
    const guideBox = h("div", {});
    const notebookBox = h("div", {});
    const learnBox = h("div", {});
    const scaleBox = h("div", {});
    this.element = this.#build(guideBox, notebookBox, learnBox, scaleBox);
    this.#guide = new GuideView(guideBox, {
      units: () => this.#settings.units,
      judge: () => (this.#asPlanned(), this.goTo("judge")),
      changed: (guide) => this.#channel.postMessage({ guide }),
      ended: (guide) => this.#offerUndo(words.guide.ended, () => this.#guide.guide ?? this.#guide.put(guide)),
      until: this.#stopped.signal,
    });
    this.#notebook = new NotebookView(notebookBox, () => this.#settings.units, {
      changed: () => this.#channel.postMessage({ notebook: true }),
      shown: (entries) => this.#learn.follow(entries),
    });
    this.#learn = new LearnView(learnBox, read, {
      take: (learned, said) => this.#takeLearned(learned, said),
      giveBack: () => this.#giveBack(),
      leaveOut: (ids, said) => this.#leaveOut(ids, said),
    });
    this.#replay = new ReplayView(scaleBox, read, {
      brewing: () => this.#brewing(),
      changed,
      enter: (weighed) => this.#enterWeighed(weighed),
      say: (text) => this.#say(text),
      until: this.#stopped.signal,
    });
    this.#channel.addEventListener("message", ({ data }) => this.#hear(data));
    addEventListener("offline", () => this.#undoOffered || this.tell(words.offline), { signal: this.#stopped.signal });
    this.#refresh();
    this.#notebook.show();
  }

  /** Takes the inputs of a link, or says what is wrong with it. */
  take({ inputs, wrong }) {
    if (wrong.length > 0) {
      this.tell(words.linkRefused(wrong.slice(0, 5).join(", ")));
      return;
    }
    const { wish, shelf, chosen } = structuredClone(this.#settings);
    takeShared(this.#settings, inputs);
    this.#save();
    this.#refresh();
    this.#offerUndo(words.linkTaken, () => {
      Object.assign(this.#settings, { wish, shelf, chosen });
      this.#changed(fieldOf("wish.cup_g"));
    });
  }

  /** Says something at the edge of the screen, with a button for what can be done about it. */
  tell(text, button = null) {
    const from = this.element.getRootNode().activeElement;
    const shut = () => {
      this.#news.replaceChildren();
      from?.focus({ preventScroll: true });
    };
    const act = button && h("button", { type: "button", onclick: () => (shut(), button.act()) }, button.name);
    const close = h("button", { type: "button", class: "shut", "aria-label": words.close, onclick: shut }, "×");
    this.#news.replaceChildren(...[h("p", {}, text), act, close].filter(Boolean));
  }

  /** Moves to a station. */
  goTo(id) {
    const station = this.#stations[id];
    const heading = station.querySelector("h2");
    heading.tabIndex = -1;
    heading.focus({ preventScroll: true });
    station.scrollIntoView();
  }

  /** Ends clocks and listeners. */
  stop() {
    clearTimeout(this.#speaking);
    this.#channel.close();
    this.#stopped.abort();
  }

  #read() {
    return sections(this.#settings);
  }

  #fragment() {
    return toFragment(shared(this.#settings));
  }

  // Nothing is said twice; what is about to be said stays so when it is asked for again.
  #say(text) {
    if (text === this.#spoken) return;
    clearTimeout(this.#speaking);
    this.#spoken = text;
    this.#speaking = setTimeout(() => {
      this.#aloud.textContent = text;
    }, SPEAK_AFTER_MS);
  }

  // What another tab or element did. Messages carry it, since storage may lag behind them.
  #hear({ settings, guide, notebook }) {
    if (guide !== undefined) this.#guide.follow(guide);
    if (notebook) this.#notebook.show();
    if (settings) {
      const before = { fragment: this.#fragment(), units: { ...this.#settings.units } };
      Object.assign(this.#settings, restored(settings));
      if (this.#fragment() !== before.fragment) this.#surroundings.edited();
      this.#refresh();
      const isOther = ([setting, unit]) => before.units[setting] !== unit;
      if (Object.entries(this.#settings.units).some(isOther)) this.#showUnits();
    }
  }

  #save() {
    this.#channel.postMessage({ settings: this.#settings });
    const text = save(this.#settings) ? "" : words.notKept;
    if (this.#notKept.textContent !== text) this.#notKept.textContent = text;
  }

  // Says what was done, with a button that undoes that and leaves alone what was done since.
  #offerUndo(text, undo) {
    this.tell(text, { name: words.putBack, act: undo });
  }

  get #undoOffered() {
    return this.#news.querySelector("button:not(.shut)") !== null;
  }

  #changed(field) {
    if (SHARED.includes(field?.section)) this.#surroundings.edited();
    this.#save();
    this.#refresh();
  }

  #refresh() {
    const all = this.#read();
    this.#wishForm.refresh();
    this.#judgeForm.refresh();
    for (const shelf of this.#shelves) shelf.show();
    this.#learn.show();
    this.#showPlan(all);
    this.#showJudgement(all);
    this.#replay.show();
  }

  #showPlan(all) {
    const outcome = attempt(() => planned(all));
    this.#plan = outcome.value ?? null;
    if (this.#plan) {
      const { print } = this.#surroundings;
      this.#wishForm.refuse(null);
      this.#paper.replaceChildren(
        ticket(this.#plan, all, [
          { name: words.ticket.begin, act: () => this.#beginBrew() },
          { name: print.name, act: () => print.act(this.#fragment()) },
          { name: words.ticket.share, act: () => this.#share() },
        ]),
      );
      this.#pictures.replaceChildren(...planPictures(this.#plan, all));
      this.#say(spoken(this.#plan, all.units));
      return;
    }
    const { refusal } = outcome;
    const field = blamed(refusal, PLANNED);
    const text = sentence(refusal, field, all.units);
    this.#wishForm.refuse(field, text);
    this.#paper.replaceChildren(
      refusedTicket(refusal, PLANNED, all.units, {
        take: (blamedField, nearest) => {
          this.#read()[blamedField.section][blamedField.key] = nearest;
          this.#changed(blamedField);
          this.goTo("ticket");
        },
        visit: (blamedField) => this.#wishForm.visit(blamedField),
      }),
    );
    this.#pictures.replaceChildren();
    this.#say(text);
  }

  #showJudgement(all) {
    this.#found = null;
    this.#keep.disabled = true;
    const { brew } = all;
    this.#fill.disabled = brew.dose_g !== null && brew.water_g !== null;
    const begun =
      [brew.dose_g, brew.water_g, brew.beverage_g].every((mass) => mass !== null) && brew.readings.length > 0;
    if (!begun) {
      this.#judgeForm.refuse(null);
      this.#verdict.replaceChildren(h("p", { class: "quiet" }, words.judge.waiting));
      return;
    }
    const outcome = attempt(() => judged(all));
    if (outcome.refusal) {
      const field = blamed(outcome.refusal, ["brew", "instrument"]) ?? blamed(outcome.refusal, PLANNED);
      const text = sentence(outcome.refusal, field, all.units);
      this.#judgeForm.refuse(field, text);
      this.#verdict.replaceChildren(h("p", { class: "error" }, text));
      return;
    }
    this.#judgeForm.refuse(null);
    this.#found = outcome.value;
    this.#keep.disabled = this.#found.strength_pct === undefined;
    this.#verdict.replaceChildren(judgement(this.#found, this.#plan, all, (learnt) => this.#takeLearnt(learnt)));
  }

  #takeLearnt(learnt) {
    const { shelf, chosen } = this.#settings;
    const [coffee, brewer] = [chosen.coffee, chosen.brewer];
    const before = {
      yield_pct: shelf.coffee[coffee].yield_pct,
      apparent_retention_g_per_g: shelf.brewer[brewer].apparent_retention_g_per_g,
    };
    const set = ({ yield_pct, apparent_retention_g_per_g }) => {
      // Another tab may have taken one off its shelf meanwhile.
      const { shelf: now } = this.#settings;
      if (now.coffee[coffee]) now.coffee[coffee].yield_pct = yield_pct;
      if (now.brewer[brewer]) now.brewer[brewer].apparent_retention_g_per_g = apparent_retention_g_per_g;
      this.#changed(fieldOf("coffee.yield_pct"));
    };
    set(learnt);
    this.#offerUndo(words.judge.taken, () => set(before));
    this.goTo("ticket");
  }

  // What brews or a file tell of the chosen brewer goes into its fields.
  #takeLearned(learned, said) {
    const at = this.#settings.chosen.brewer;
    const undo = take(this.#read(), learned);
    this.#learnedChanged();
    this.goTo("ticket");
    this.#offerUndo(said, () => {
      const { brewer } = this.#settings.shelf;
      // Another tab may have taken it off the shelf meanwhile.
      if (brewer[at]) undo({ ...this.#read(), brewer: brewer[at] });
      this.#learnedChanged();
    });
  }

  #giveBack() {
    giveBack(this.#read());
    this.#learnedChanged();
    this.goTo("learn");
    this.tell(words.learn.givenBack);
  }

  #leaveOut(ids, said) {
    this.#read().brewer.leftOut = ids;
    this.#changed(null);
    this.goTo("learn");
    this.tell(said);
  }

  #learnedChanged() {
    this.#changed(fieldOf("brewer.apparent_retention_g_per_g"));
  }

  // A new brew starts with nothing entered of the one before. What was offered to be undone was of that one.
  #beginBrew() {
    const { brew } = this.#settings;
    const { guide } = this.#guide;
    const blank = JSON.stringify(brew) === JSON.stringify(PRESETS.brew);
    this.#news.replaceChildren();
    this.#settings.brew = structuredClone(PRESETS.brew);
    this.#changed(fieldOf("brew.dose_g"));
    this.#guide.begin(this.#plan, this.#read());
    const { begun } = this.#guide.guide;
    if (!blank || guide) {
      this.#offerUndo(words.guide.restarted, () => {
        if (this.#guide.guide?.begun !== begun) return;
        this.#settings.brew = brew;
        this.#changed(fieldOf("brew.dose_g"));
        this.#guide.put(guide);
      });
    }
    this.#stations.guide.scrollIntoView();
  }

  async #share() {
    const link = this.#surroundings.link(this.#fragment());
    try {
      await navigator.clipboard.writeText(link);
      this.tell(words.ticket.shared);
    } catch {
      this.tell([words.ticket.notCopied, " ", h("a", { href: link }, words.ticket.theLink)]);
    }
  }

  async #keepBrew() {
    const { entry, wrong } = entryOf(this.#read(), this.#found);
    if (wrong.length > 0) {
      this.tell(words.judge.notKept(wrong.slice(0, 3).join(" ")));
      return;
    }
    this.#keep.disabled = true;
    if (await this.#notebook.keep(entry)) this.tell(words.judge.kept);
    else this.#keep.disabled = false;
  }

  // What the brew under way was begun with, or would be.
  #brewing() {
    if (this.#guide.guide) return this.#guide.guide;
    const { contact_s, pressed } = this.#read().brewer;
    return this.#plan && { recipe: this.#plan.recipe, contact_s, pressed };
  }

  // With the digits that the ticket shows: nobody weighs any finer by it.
  #asPlanned() {
    const { recipe } = this.#brewing() ?? {};
    if (!recipe) return;
    const { units } = this.#settings;
    this.#fillIn({
      dose_g: asShown("dose", recipe.dose_g, units),
      water_g: asShown("brew_water", recipe.water_g, units),
    });
  }

  // What was weighed stands; the keys of what was filled in.
  #fillIn(masses) {
    const { brew } = this.#settings;
    const empty = Object.keys(masses).filter((key) => brew[key] === null && masses[key] !== null);
    for (const key of empty) brew[key] = masses[key];
    this.#changed(fieldOf("brew.dose_g"));
    return empty;
  }

  #enterWeighed(masses) {
    const entered = this.#fillIn(masses);
    this.goTo("judge");
    const names = entered.map((key) => words.fields[`brew.${key}`].label);
    this.tell(words.replay.entered(new Intl.ListFormat(words.locale).format(names)));
  }

  #build(guideBox, notebookBox, learnBox, scaleBox) {
    const byId = (id) => this.#wishForm.build(fieldOf(id));
    const rest = fieldsOf("wish").filter(({ id }) => !DAILY.includes(id));
    this.#fill = h("button", { type: "button", onclick: () => this.#asPlanned() }, words.judge.asPlanned);
    return h(
      "div",
      { class: "calculator" },
      this.#aloud,
      this.#notKept,
      h(
        "div",
        { class: "pair plan" },
        this.#station(
          "wish",
          h("div", { class: "daily", role: "group", "aria-label": words.groups.daily }, DAILY.map(byId)),
          h(
            "div",
            { class: "set", role: "group", "aria-label": words.groups.set },
            this.#shelves.map(({ field }) => field),
          ),
          drawer(words.groups.wish, this.#wishForm, rest),
          this.#shelves.map(({ kind, actions }) => drawer(words.groups[kind], this.#wishForm, fieldsOf(kind), actions)),
          drawer(words.groups.hand, this.#wishForm, fieldsOf("hand")),
          this.#unitsDrawer(),
        ),
        this.#station("ticket", this.#paper),
        this.#pictures,
      ),
      this.#station("guide", guideBox),
      this.#station(
        "judge",
        h("p", {}, words.judge.lead),
        h(
          "div",
          { class: "pair" },
          h(
            "div",
            {},
            h("div", { class: "actions" }, this.#fill),
            h(
              "div",
              { class: "fields" },
              fieldsOf("brew").map((field) => this.#judgeForm.build(field)),
            ),
            drawer(words.groups.instrument, this.#judgeForm, fieldsOf("instrument")),
            h("div", { class: "actions" }, this.#keep),
          ),
          this.#verdict,
        ),
      ),
      this.#station("notebook", notebookBox),
      this.#station("learn", learnBox),
      this.#station("scale", scaleBox),
      this.#news,
    );
  }

  #station(id, ...content) {
    const place = Object.keys(words.headings).indexOf(id) + 1;
    const number = h("span", { class: "place", "aria-hidden": "true" }, place);
    const heading = h("h2", { id: `${id}-heading` }, number, words.headings[id]);
    const station = h("section", { id, class: "station", "aria-labelledby": `${id}-heading` }, heading, content);
    this.#stations[id] = station;
    return station;
  }

  #unitsDrawer() {
    const choice = ([setting, options]) => {
      const id = `units-${setting}`;
      const select = h(
        "select",
        {
          id,
          onchange: () => {
            this.#settings.units[setting] = select.value;
            this.#changed(null);
            this.#showUnits();
          },
        },
        options.map((option) => h("option", { value: option }, words.units[setting][option])),
      );
      select.value = this.#settings.units[setting];
      this.#units[setting] = select;
      return h(
        "div",
        { class: "field" },
        h("label", { for: id }, words.units[setting].label),
        h("div", { class: "entry" }, h("span", { class: "box" }, select)),
      );
    };
    const choices = h("div", { class: "fields" }, Object.entries(CHOICES).map(choice));
    return h("details", {}, h("summary", {}, words.groups.units), choices);
  }

  // What stands outside the forms and depends on units.
  #showUnits() {
    for (const [setting, select] of Object.entries(this.#units)) select.value = this.#settings.units[setting];
    this.#guide.show();
    this.#notebook.show();
  }
}

function drawer(name, form, fields, actions) {
  const boxes = h(
    "div",
    { class: "fields" },
    fields.map((field) => form.build(field)),
  );
  return h("details", {}, h("summary", {}, name), boxes, actions);
}
