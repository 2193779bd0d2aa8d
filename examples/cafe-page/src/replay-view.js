// A recorded brew on the page: chosen, replayed at a pace, drawn as it comes, and put down at its end.

import { cueTexts, doingTexts, happeningTexts, limits, whyTexts } from "../cupwright/src/slim.js";
import words from "../words.en.js";
import { attempt, followerOf } from "./bench.js";
import { h } from "./element.js";
import { fieldOf, fieldsOf } from "./fields.js";
import { Form } from "./form.js";
import { refusedFile } from "./notebook-view.js";
import { Strip } from "./pictures.js";
import { Replay, readRecord } from "./replay.js";
import { blamed, sentence } from "./refusals.js";
import { amount, clock, figure, toShown, unitOf } from "./units.js";

const SAID = words.replay;
const EXAMPLE = new URL("../invented-brew.csv", import.meta.url);
const FORM = new URL("../record.md", import.meta.url);
const RECIPES = ["here", "elsewhere", "none"];
const AT_ONCE = "once";
const PACES = ["1", "4", "16", AT_ONCE];
// Leaves half of a sixtieth of a second to drawing. Estimate.
const PATIENCE_MS = 8;
// A page that slept goes on from where it was.
const LONGEST_FRAME_MS = 250;
// What water and flow are drawn up to before there is more.
const FIRST_WATER_G = 200;
const FIRST_FLOW = 6;

const happening = (event) => words.happenings[event] ?? happeningTexts[event];

export class ReplayView {
  #read;
  #act;
  #form;
  #record = null;
  #replay = null;
  #followed = null;
  #refusal = null;
  #setup = "";
  #units = "";
  // Where it stands, and where it is on its way to while nobody is to wait for the clock.
  #time_s = 0;
  #seek_s = null;
  #isRunning = false;
  #frame = 0;
  #frame_ms = null;
  #listed = 0;
  #water;
  #flow;
  #mass;
  #account = null;

  #news = h("div", { role: "status" });
  #stage = h("div", { hidden: true });
  #about = h("p", { class: "quiet" });
  #where = h("p", { class: "where" });
  #cue = h("p", { class: "what" });
  #why = h("p", {});
  #doing = h("p", { class: "quiet" });
  #facts = h("dl", { class: "rows" });
  #pictures = h("div", { class: "pictures" });
  #rows = h("tbody", {});
  #count = h("summary", {});
  #told = h("div", {});
  #play = h("button", { type: "button", class: "main", onclick: () => this.#toggle() });
  #end = h("button", { type: "button", onclick: () => this.#goTo(this.#replay.span_s) }, SAID.toEnd);
  #enter = h("button", { type: "button", onclick: () => this.#act.enter(this.#weighed()) }, SAID.enter);
  #slider = h("input", {
    type: "range",
    id: "replay-time",
    min: 0,
    step: "any",
    oninput: () => this.#goTo(Number(this.#slider.value)),
  });
  #pace;
  #recipe;

  /**
   * `read` gives all sections; `act` what belongs to others: `brewing()`, the recipe to follow or null, `changed(field)`,
   * `enter(weighed)` for the brew's form and `say(text)` aloud. `until` ends its clock.
   */
  constructor(root, read, act) {
    this.#read = read;
    this.#act = act;
    this.#form = new Form(read, act.changed);
    this.#recipe = choice("replay-recipe", SAID.recipe, RECIPES, () => this.show());
    this.#pace = choice("replay-pace", SAID.pace, PACES, () => {});
    if (matchMedia("(prefers-reduced-motion: reduce)").matches) this.#pace.select.value = AT_ONCE;
    const file = h("input", {
      type: "file",
      id: "replay-file",
      accept: ".csv,text/csv",
      "aria-describedby": "replay-file-hint",
      onchange: () => this.#take(file.files[0]?.text(), () => (file.value = "")),
    });
    const example = () => this.#take(fetch(EXAMPLE).then((answer) => (answer.ok ? answer.text() : Promise.reject())));
    this.#build();
    root.append(
      h("p", {}, SAID.lead),
      h("div", { class: "actions" }, h("button", { type: "button", onclick: example }, SAID.example)),
      h(
        "div",
        { class: "field file" },
        h("label", { for: "replay-file" }, SAID.file),
        file,
        h(
          "p",
          { class: "hint", id: "replay-file-hint" },
          SAID.fileHint,
          " ",
          h("a", { href: FORM.href, target: "_blank", rel: "noopener" }, SAID.fileForm),
        ),
      ),
      this.#news,
      this.#recipe.field,
      h(
        "details",
        {},
        h("summary", {}, words.groups.scale),
        h(
          "div",
          { class: "fields" },
          fieldsOf("scale").map((field) => this.#form.build(field)),
        ),
      ),
      this.#stage,
    );
    act.until.addEventListener("abort", () => this.#pause());
  }

  /** Shows the settings as they are now. Another scale or way with the recipe is another replay. */
  show() {
    this.#form.refresh();
    if (!this.#record) return;
    if (this.#setup !== this.#setupNow()) this.#begin();
    else if (this.#units !== this.#unitsNow()) {
      if (this.#replay) this.#drawAnew();
      if (this.#refusal) this.#refuse(this.#refusal);
    }
    this.#showEntering();
  }

  get #strips() {
    return [this.#water, this.#flow, this.#mass];
  }

  #setupNow() {
    return JSON.stringify([this.#read().scale, this.#recipe.select.value]);
  }

  #unitsNow() {
    return JSON.stringify(this.#read().units);
  }

  #build() {
    const again = h("button", { type: "button", onclick: () => (this.#begin(), this.#play.focus()) }, SAID.fromStart);
    const { time, what, change } = SAID.columns;
    const table = h(
      "table",
      {},
      h("caption", { class: "unseen" }, SAID.table),
      h(
        "thead",
        {},
        h(
          "tr",
          {},
          [time, what, change].map((name) => h("th", { scope: "col" }, name)),
        ),
      ),
      this.#rows,
    );
    this.#stage.append(
      this.#about,
      h(
        "div",
        { class: "pair replayed" },
        h(
          "div",
          {},
          h("article", { class: "slip", "aria-label": SAID.slip }, [
            h("h3", {}, SAID.slip),
            this.#where,
            this.#cue,
            this.#why,
            this.#doing,
            this.#facts,
          ]),
          h("div", { class: "actions" }, this.#play, this.#end, again),
          h(
            "div",
            { class: "fields" },
            this.#pace.field,
            h("div", { class: "field" }, h("label", { for: "replay-time" }, SAID.time), this.#slider),
          ),
        ),
        this.#pictures,
        h("div", {}, h("details", {}, this.#count, table), this.#told),
      ),
    );
  }

  async #take(coming, then = () => {}) {
    if (!coming) return;
    this.#pause();
    let text;
    try {
      text = await coming;
    } catch {
      this.#news.replaceChildren(h("p", { class: "error" }, SAID.notRead));
      return;
    } finally {
      then();
    }
    const record = readRecord(text);
    if (record.wrong.length > 0) {
      this.#news.replaceChildren(...refusedFile(record.wrong));
      return;
    }
    this.#record = record;
    this.#begin();
    this.#play.focus();
  }

  // From the first reading on, with the recipe and the scale as they are now.
  #begin() {
    this.#pause();
    const all = this.#read();
    this.#setup = this.#setupNow();
    this.#replay = null;
    this.#refusal = null;
    this.#time_s = 0;
    this.#account = null;
    this.#form.refuse(null);
    this.#news.replaceChildren();
    this.#told.replaceChildren();
    const wanted = this.#recipe.select.value;
    this.#followed = wanted === "none" ? null : this.#act.brewing();
    const { value, refusal } = attempt(() => followerOf(all.scale, this.#followed, wanted === "elsewhere"));
    this.#stage.hidden = refusal !== undefined;
    if (refusal) {
      this.#refuse(refusal);
      return;
    }
    const { samples, comments } = this.#record;
    this.#replay = new Replay(this.#record, value);
    const missing = samples.filter(({ mass_g }) => mass_g === null).length;
    this.#about.replaceChildren(
      ...(comments[0] ? [h("q", {}, comments[0]), " "] : []),
      [
        SAID.record(String(samples.length), clock(this.#replay.span_s)),
        missing > 0 && SAID.missing(String(missing)),
        this.#saidRecipe(wanted, all.units),
      ]
        .filter(Boolean)
        .join(" "),
    );
    this.#slider.max = this.#replay.span_s;
    this.#drawAnew();
    this.#goTo(0);
  }

  #saidRecipe(wanted, units) {
    if (!this.#followed) return wanted === "none" ? "" : SAID.noRecipe;
    const { dose_g, water_g } = this.#followed.recipe;
    return SAID.recipeIs(amount("dose", dose_g, units), amount("brew_water", water_g, units));
  }

  #refuse(refusal) {
    const { units } = this.#read();
    this.#refusal = refusal;
    this.#units = this.#unitsNow();
    const field = blamed(refusal, ["scale"]);
    const text = sentence(refusal, field, units);
    this.#form.refuse(field, text);
    this.#news.replaceChildren(h("p", { class: "error" }, text));
  }

  // ---- The clock ----

  #toggle() {
    if (this.#isRunning) {
      this.#pause();
      this.#showPlay();
      return;
    }
    const { span_s } = this.#replay;
    if (this.#time_s >= span_s) this.#time_s = 0;
    this.#seek_s = this.#pace.select.value === AT_ONCE ? span_s : null;
    this.#run();
  }

  #goTo(time_s) {
    this.#seek_s = time_s;
    this.#run();
  }

  #run() {
    this.#isRunning = true;
    this.#frame_ms = null;
    this.#showPlay();
    this.#ask();
  }

  #ask() {
    cancelAnimationFrame(this.#frame);
    this.#frame = requestAnimationFrame((now_ms) => this.#step(now_ms));
  }

  #pause() {
    cancelAnimationFrame(this.#frame);
    this.#isRunning = false;
    this.#seek_s = null;
  }

  #step(now_ms) {
    const passed_ms = Math.min(now_ms - (this.#frame_ms ?? now_ms), LONGEST_FRAME_MS);
    this.#frame_ms = now_ms;
    const replay = this.#replay;
    const isSought = this.#seek_s !== null;
    const pace = this.#pace.select.value === AT_ONCE ? Infinity : Number(this.#pace.select.value);
    const passed_s = passed_ms > 0 ? (pace * passed_ms) / 1000 : 0;
    const goal_s = this.#seek_s ?? Math.min(replay.span_s, this.#time_s + passed_s);
    const isThere = replay.run(replay.indexAt(goal_s), PATIENCE_MS, (index) => this.#lay(index));
    if (replay.refusal) {
      this.#pause();
      this.#refuse(replay.refusal);
      return;
    }
    if (isThere) this.#time_s = goal_s;
    else if (!isSought) this.#time_s = replay.timeOf(replay.followed - 1);
    if (isThere && (isSought || goal_s >= replay.span_s)) this.#pause();
    if (isThere || !isSought) this.#showNow();
    if (this.#isRunning) this.#ask();
    else this.#showPlay();
    if (replay.isDone && this.#account === null) this.#finish();
  }

  // ---- What is seen ----

  #drawAnew() {
    const { units } = this.#read();
    const replay = this.#replay;
    this.#units = this.#unitsNow();
    const masses = replay.samples.map(({ mass_g }) => mass_g).filter((mass_g) => mass_g !== null);
    const [low_g, high_g] = masses.reduce(([low, high], mass) => [Math.min(low, mass), Math.max(high, mass)], [0, 0]);
    const show = (quantity, value) => amount(quantity, value, units);
    const span_s = replay.span_s;
    const kinds = ["curve"];
    const water_g = this.#followed?.recipe.water_g ?? null;
    this.#water = new Strip({
      title: SAID.water,
      text: SAID.waterText(water_g !== null && show("brew_water", water_g)),
      axis: SAID.waterAxis(unitOf("poured", units)),
      span_s,
      kinds: ["band", "curve"],
      low: 0,
      high: toShown("poured", 1.2 * (water_g ?? FIRST_WATER_G), units),
      aim: water_g && { value: toShown("poured", water_g, units), name: SAID.aim(show("brew_water", water_g)) },
    });
    this.#flow = new Strip({
      title: SAID.flow,
      text: SAID.flowText,
      axis: SAID.flowAxis(unitOf("flow", units)),
      span_s,
      kinds,
      low: 0,
      high: FIRST_FLOW,
    });
    this.#mass = new Strip({
      title: SAID.mass,
      text: SAID.massText(show("level", low_g), show("level", high_g), clock(span_s)),
      axis: SAID.massAxis(unitOf("level", units)),
      span_s,
      kinds,
      low: toShown("level", low_g, units),
      high: toShown("level", high_g, units),
    });
    this.#pictures.replaceChildren(...this.#strips.map(({ element }) => element));
    this.#rows.replaceChildren();
    this.#listed = 0;
    for (let index = 0; index < replay.followed; index += 1) this.#lay(index);
    if (replay.followed > 0) this.#showNow();
    if (this.#account) this.#showAccount();
  }

  // Takes what was answered to a sample into the pictures and the table.
  #lay(index) {
    const { units } = this.#read();
    const replay = this.#replay;
    const answer = replay.answer(index);
    if (answer) {
      const { level_g, poured_g, flow_g_per_s } = answer.seen;
      const time_s = replay.timeOf(index);
      const water = toShown("poured", poured_g, units);
      this.#water.add(time_s, [water, water]);
      this.#flow.add(time_s, [flow_g_per_s]);
      this.#mass.add(time_s, [toShown("level", level_g, units)]);
    }
    for (; replay.events[this.#listed]?.at <= index; this.#listed += 1) this.#list(replay.events[this.#listed], units);
  }

  #list({ at, time_s, event, change_g, mark }, units) {
    const cells = event
      ? [happening(event), amount("change", change_g, units)]
      : [SAID.notedByHand(SAID.noted[mark]), ""];
    const row = h("tr", {}, h("td", {}, clock(time_s)), h("td", {}, cells[0]), h("td", {}, cells[1]));
    row.dataset.at = at;
    this.#rows.append(row);
    if (!event) return;
    const { level_g } = this.#replay.answer(Math.min(this.#replay.indexAt(time_s), at))?.seen ?? {};
    this.#mass.mark(time_s, level_g === undefined ? null : toShown("level", level_g, units), happening(event));
  }

  #showNow() {
    const { units } = this.#read();
    const replay = this.#replay;
    const index = replay.indexAt(this.#time_s);
    const answer = replay.answer(index);
    for (const strip of this.#strips) strip.show(this.#time_s);
    let count = 0;
    for (const row of this.#rows.children) {
      row.hidden = Number(row.dataset.at) > index;
      if (!row.hidden) count += 1;
    }
    this.#count.textContent = SAID.events(String(count));
    this.#slider.value = this.#time_s;
    const where = SAID.where(clock(this.#time_s), clock(replay.span_s));
    this.#slider.setAttribute("aria-valuetext", where);
    this.#where.textContent = where;
    this.#showSlip(answer, units);
  }

  #showSlip(answer, units) {
    const show = (quantity, value) => (value === null ? SAID.unknown : amount(quantity, value, units));
    const { seen, cue, why, to_pour_g, to_wait_s, ratio_g_per_g, brewing_s, flow_variation_pct } = answer ?? NOTHING;
    this.#doing.textContent = seen.doing ? SAID.doing(words.doings[seen.doing] ?? doingTexts[seen.doing]) : "";
    const cueText = this.#followed && cue ? SAID.cue(words.cues[cue] ?? cueTexts[cue]) : SAID.noCue;
    const whyText = this.#followed && why ? SAID.why(words.whys[why] ?? whyTexts[why]) : "";
    this.#cue.textContent = cueText;
    this.#why.textContent = whyText;
    const facts = [
      [SAID.water, show("poured", seen.poured_g)],
      to_pour_g !== null && to_pour_g < 0
        ? [SAID.tooMuch, show("poured", -to_pour_g)]
        : [SAID.toPour, show("poured", to_pour_g)],
      [SAID.toWait, show("time", to_wait_s)],
      [SAID.ratio, ratio_g_per_g === null ? SAID.unknown : SAID.parts(figure("water_ratio", ratio_g_per_g, units))],
      [SAID.brewing, show("time", brewing_s)],
      [SAID.flowNow, show("flow", seen.flow_g_per_s)],
      [SAID.wanders, show("flow_variation", flow_variation_pct)],
      [SAID.level, show("level", seen.level_g)],
    ];
    showRows(this.#facts, facts);
    // What runs past at once is not worth a word.
    if (this.#isRunning && this.#seek_s === null && this.#followed && cue) this.#act.say(`${cueText} ${whyText}`);
  }

  #showPlay() {
    const { span_s } = this.#replay;
    const at =
      this.#isRunning && this.#seek_s !== 0
        ? "pause"
        : this.#time_s <= 0
          ? "start"
          : this.#time_s >= span_s
            ? "again"
            : "goOn";
    this.#play.textContent = SAID.play[at];
  }

  // ---- At its end ----

  #finish() {
    this.#account = this.#replay.account();
    this.#showAccount();
    this.#act.say(SAID.ended(amount("poured", this.#last.poured_g, this.#read().units)));
  }

  #showAccount() {
    const { units } = this.#read();
    const account = this.#account;
    const show = (quantity, value) => (value === null ? SAID.notWeighed : amount(quantity, value, units));
    const list = (facts) => {
      const rows = h("dl", { class: "rows" });
      showRows(rows, facts);
      return rows;
    };
    this.#told.replaceChildren(
      h("h3", {}, SAID.account),
      list([
        [words.ticket.coffee, show("dose", account.dose_g)],
        [SAID.poured, show("poured", this.#last.poured_g)],
        [SAID.drips, show("drips", account.drips_g)],
        [SAID.beverage, show("beverage", account.beverage_g)],
        [SAID.unclear, show("unclear", this.#last.unclear_g)],
      ]),
      h("p", { class: "hint" }, SAID.enterHint),
      h("div", { class: "actions" }, this.#enter),
      h(
        "details",
        {},
        h("summary", {}, SAID.weights),
        h("p", { class: "hint" }, SAID.weightsHint),
        list([
          [SAID.gained, show("change", account.poured_g)],
          [SAID.moved, show("change", account.moved_g)],
          [SAID.tared, show("change", account.tared_g)],
          [SAID.drifted, show("change", account.drifted_g)],
          [SAID.unclear, show("change", account.unclear_g)],
          [SAID.underWay, show("change", account.under_way_g)],
        ]),
      ),
    );
    this.#showEntering();
  }

  // What was seen at the end: its water has what evaporated while it was poured; an account has weight alone.
  get #last() {
    return this.#replay.answer(this.#replay.samples.length - 1).seen;
  }

  // What the brew's form can take, with the digits that are shown.
  #weighed() {
    const { dose_g, beverage_g } = this.#account;
    const masses = { dose_g, water_g: this.#last.poured_g, beverage_g };
    for (const [key, mass] of Object.entries(masses)) {
      const { min, decimals } = limits[fieldOf(`brew.${key}`).quantity];
      masses[key] = mass === null || mass < min ? null : Number(mass.toFixed(decimals));
    }
    return masses;
  }

  #showEntering() {
    if (!this.#account) return;
    const { brew } = this.#read();
    this.#enter.disabled = Object.entries(this.#weighed()).every(([key, mass]) => mass === null || brew[key] !== null);
  }
}

const NOTHING = {
  seen: { doing: null, poured_g: null, flow_g_per_s: null, level_g: null },
  cue: null,
  why: null,
  to_pour_g: null,
  to_wait_s: null,
  ratio_g_per_g: null,
  brewing_s: null,
  flow_variation_pct: null,
};

function choice(id, { label, options }, values, onchange) {
  const select = h(
    "select",
    { id, onchange },
    values.map((value) => h("option", { value }, options[value])),
  );
  const field = h(
    "div",
    { class: "field" },
    h("label", { for: id }, label),
    h("div", { class: "entry" }, h("span", { class: "box" }, select)),
  );
  return { field, select };
}

// Rows of names and values; those that are there are kept, since they change with every frame.
function showRows(list, facts) {
  facts.forEach(([name, value], at) => {
    const row = list.children[at] ?? list.appendChild(h("div", {}, h("dt", {}), h("dd", {})));
    const [dt, dd] = row.children;
    if (dt.textContent !== name) dt.textContent = name;
    if (dd.textContent !== value) dd.textContent = value;
  });
}
