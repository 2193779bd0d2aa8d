// What the brews of the notebook tell of the brewer, the readings and the coffee, to be planned with or given back.

import words from "../words.en.js";
import { drained, extracting, keeping, learntReach, repeating } from "./bench.js";
import { download } from "./download.js";
import { h } from "./element.js";
import { profileFromFile, profileToJson } from "./exchange.js";
import { brewsOf, cupsOf, isEdited, isSame, joined, steepsOf } from "./learnt.js";
import { refusedFile } from "./notebook-view.js";
import { keptPicture } from "./pictures.js";
import { sentence } from "./refusals.js";
import { amount, clock, moment } from "./units.js";

const SAID = words.learn;
const RETENTION = words.fields["brewer.apparent_retention_g_per_g"];
// From here on a line hangs on one brew. Estimate: at one it goes through that brew whatever was weighed.
const ALONE = 0.9;
// A rate needs as many different times.
const FEWEST_TIMES = 3;

export class LearnView {
  #told = h("div", {});
  #news = h("div", { role: "status" });
  #export = h("button", { type: "button", onclick: () => this.#exportProfile() }, SAID.export);
  #nothing = h("p", { class: "hint" }, SAID.nothingToExport);
  #read;
  #act;
  #entries = [];
  #shown = "";

  /** `read` gives all sections; `act` what can be done: take(learned), giveBack(), leaveOut(ids, text). */
  constructor(root, read, act) {
    this.#read = read;
    this.#act = act;
    const file = h("input", {
      type: "file",
      id: "profile-file",
      accept: ".json,application/json",
      "aria-describedby": "profile-file-hint",
      onchange: () => this.#import(file),
    });
    root.append(
      h("p", {}, SAID.lead),
      this.#told,
      h("h3", {}, SAID.file),
      h("div", { class: "actions" }, this.#export),
      this.#nothing,
      h(
        "div",
        { class: "field file" },
        h("label", { for: "profile-file" }, SAID.import),
        file,
        h("p", { class: "hint", id: "profile-file-hint" }, SAID.importHint),
      ),
      this.#news,
    );
  }

  /** Takes the notebook as it is now. */
  follow(entries) {
    this.#entries = entries;
    this.#shown = "";
    this.show();
  }

  /** Shows what the notebook tells, where that may have changed. */
  show() {
    const all = this.#read();
    const { brewer, coffee, kitchen, instrument, units } = all;
    const now = JSON.stringify([brewer, coffee.name, kitchen, instrument, units]);
    if (now === this.#shown) return;
    this.#shown = now;
    this.#export.disabled = !brewer.learned;
    this.#nothing.hidden = brewer.learned !== null;
    const found = this.#found(all);
    this.#told.replaceChildren(
      h("div", {}, this.#keeping(found, all)),
      h("div", { class: "pair" }, h("div", {}, readings(found, all)), h("div", {}, extraction(found, all))),
      h("div", {}, this.#use(found, all)),
    );
  }

  #found({ brewer, coffee, instrument }) {
    const brews = brewsOf(this.#entries, brewer);
    const cups = cupsOf(this.#entries, instrument);
    const steeps = steepsOf(brews.counted, coffee);
    const times = new Set(steeps.map((entry) => entry.brewer.contact_s)).size;
    const kept = keeping(drained(brews.counted));
    const repeated = repeating(cups);
    const extracted = times < FEWEST_TIMES ? null : extracting(steeps);
    const told = { ...kept.value?.profile, ...repeated.value?.profile, ...extracted?.value?.profile };
    return { brews, cups, kept, repeated, extracted, told };
  }

  #keeping({ brews, kept }, all) {
    const { brewer, units } = all;
    const { counted, older, leftOut } = brews;
    const name = brewer.name || SAID.nameless;
    const outs = leftOut.map((entry) => this.#leftOut(entry, brewer));
    const heading = h("h3", {}, SAID.keeps(name));
    if (kept.refusal) {
      const { why, value, min } = kept.refusal;
      const text = why === "too_few" ? SAID.too_few(value, min, name) : sentence(kept.refusal, null, units);
      return [heading, h("p", { class: why === "too_few" ? "quiet" : "doubt" }, text), outs];
    }
    const { profile, quality, drawing } = kept.value;
    const odd = quality.odd?.is_suspicious ? quality.odd.at : null;
    const drawn = words.pictures.keptText(counted.length);
    const text = odd === null ? drawn : `${drawn} ${words.pictures.oddText(moment(counted[odd].at))}`;
    return [
      heading,
      h(
        "div",
        { class: "pair" },
        h(
          "div",
          {},
          h(
            "dl",
            { class: "weigh" },
            fact(RETENTION.label, "apparent_retention", profile.apparent_retention_g_per_g, units),
            profile.fitted_hold_up_g && fact(SAID.hold_up, "fitted_hold_up", profile.fitted_hold_up_g, units),
          ),
          h("p", {}, SAID.rests(counted.length, amount("retained", quality.s, units))),
          older.length > 0 && h("p", { class: "hint" }, SAID.older(older.length)),
          h("p", { class: "hint" }, SAID.within),
          lacking(kept.value, counted, units),
          odd === null ? h("p", {}, SAID.noneOdd) : this.#odd(counted[odd], quality.residuals[odd], all),
          outs,
        ),
        h("div", { class: "pictures" }, keptPicture(drawing, odd, text, units)),
      ),
    ];
  }

  #odd({ id, at }, residual_g, { brewer, units }) {
    const when = moment(at);
    const leave = () => this.#act.leaveOut([...brewer.leftOut, id], SAID.isLeftOut(when));
    return [
      h("p", { class: "doubt" }, SAID.odd(when, amount("retained", Math.abs(residual_g), units), residual_g > 0)),
      h("div", { class: "actions" }, h("button", { type: "button", onclick: leave }, SAID.leaveOut)),
    ];
  }

  #leftOut(entry, brewer) {
    const when = moment(entry.at);
    const ids = brewer.leftOut.filter((id) => id !== entry.id);
    return h(
      "div",
      { class: "actions" },
      h("p", {}, SAID.leftOut(when)),
      h(
        "button",
        {
          type: "button",
          "aria-label": SAID.takeInNamed(when),
          onclick: () => this.#act.leaveOut(ids, SAID.isTakenIn(when)),
        },
        SAID.takeIn,
      ),
    );
  }

  // What is in use, and what can be done about that.
  #use({ told, brews, kept }, all) {
    const { learned } = all.brewer;
    const profile = joined(told, all.brewer);
    const isNewer = learned !== null && Object.keys(told).length > 0 && !isSame(learned.profile, profile);
    const isChanged = learned !== null && isEdited(all);
    const offers = Object.keys(told).length > 0 && (!learned || isNewer || isChanged);
    const use = () => this.#take("brews", profile, kept.value ? drained(brews.counted) : [], SAID.used);
    return [
      learned && h("p", { class: "learnt" }, SAID.inUse[learned.from](moment(learned.at))),
      isNewer && h("p", {}, SAID.newer),
      isChanged && h("p", {}, SAID.edited),
      h(
        "div",
        { class: "actions" },
        offers && h("button", { type: "button", class: "main", onclick: use }, SAID.use),
        learned && h("button", { type: "button", onclick: () => this.#act.giveBack() }, SAID.giveBack),
      ),
    ];
  }

  #take(from, profile, brews, said) {
    this.#news.replaceChildren();
    this.#act.take({ at: new Date().toISOString(), from, coffee: this.#read().coffee.name, profile, brews }, said);
  }

  #exportProfile() {
    download("brewer-profile.json", "application/json", profileToJson(this.#read().brewer.learned.profile));
  }

  async #import(input) {
    const [file] = input.files;
    if (!file) return;
    const { profile, wrong } = profileFromFile(await file.text());
    input.value = "";
    if (wrong.length > 0) this.#news.replaceChildren(...refusedFile(wrong));
    else this.#take("file", profile, [], SAID.imported);
  }
}

// What the brews could not tell, or only on one brew's word.
function lacking({ lacks, wanted_dose_g, quality }, brews, units) {
  if (lacks) {
    const doses = brews.map(({ brew }) => brew.dose_g);
    const all = [Math.min(...doses), Math.max(...doses), wanted_dose_g];
    return h("p", {}, SAID.lacks[lacks](...all.map((dose_g) => amount("dose", dose_g, units))));
  }
  const alone = brews.find((_, at) => quality.leverages[at] > ALONE);
  return alone && h("p", {}, SAID.alone(moment(alone.at)));
}

const fact = (name, quantity, learned, units) =>
  h(
    "div",
    {},
    h("dt", {}, name),
    h(
      "dd",
      {},
      amount(quantity, learned.value, units),
      h("small", {}, words.judge.reach(amount(quantity, learntReach(learned), units))),
    ),
  );

function readings({ cups, repeated }, { units }) {
  const heading = h("h3", {}, SAID.readings);
  if (repeated.refusal) {
    const text = SAID.readingsMissing[repeated.refusal.code] ?? sentence(repeated.refusal, null, units);
    return [heading, h("p", { class: "quiet" }, text)];
  }
  const { profile, quality } = repeated.value;
  return [
    heading,
    h("dl", { class: "weigh" }, fact(SAID.repeatability, "repeatability", profile.repeatability_pct, units)),
    h("p", {}, SAID.pooled(quality.measurements, cups.length)),
  ];
}

function extraction({ extracted }, { brewer, coffee, units }) {
  if (!brewer.has_chamber) return null;
  const heading = h("h3", {}, SAID.coffee(coffee.name || SAID.namelessCoffee));
  if (!extracted?.value) {
    const refusal = extracted?.refusal;
    const text = refusal ? SAID.coffeeMissing[refusal.why] : SAID.coffeeMissing.times;
    const said = typeof text === "function" ? text(clock(refusal.value)) : text;
    return [heading, h("p", { class: "quiet" }, said ?? sentence(refusal, null, units))];
  }
  const { profile, quality } = extracted.value;
  return [
    heading,
    h("dl", { class: "weigh" }, fact(SAID.equilibrium, "yield", profile.equilibrium_yield_pct, units)),
    h("p", {}, SAID.after(clock(profile.fast_time_s.value), quality.measurements)),
  ];
}
