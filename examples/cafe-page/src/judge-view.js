// What the weights and readings of a brew mean, what to do now and what next time.

import words from "../words.en.js";
import { weakening } from "./bench.js";
import { h } from "./element.js";
import { placePicture, weakeningPicture } from "./pictures.js";
import { standingWords } from "./recipe-view.js";
import { blamed, sentence } from "./refusals.js";
import { amount, figure } from "./units.js";

const SAID = words.judge;

/** The judgement; `plan` is the recipe beside it, or null. */
export function judgement(found, plan, all, takeLearnt) {
  const { units, brew } = all;
  const show = (quantity, value) => amount(quantity, value, units);
  const { combined } = found;
  const agreement = [
    h("p", {}, brew.readings.length === 1 ? SAID.single : SAID.agreement[combined.agreement]),
    combined.critical_range_pct !== null &&
      h(
        "p",
        { class: "hint" },
        SAID.spread(
          amount("repeatability", combined.range_pct, units),
          amount("repeatability", combined.critical_range_pct, units),
        ),
      ),
  ];
  if (found.strength_pct === undefined) return h("div", { class: "slate" }, h("h3", {}, SAID.meaning), agreement);
  const { plausibility } = found;
  return h(
    "div",
    { class: "slate" },
    h("h3", {}, SAID.meaning),
    h(
      "dl",
      { class: "weigh" },
      fact(SAID.strength, show("strength", found.strength_pct), show("strength", found.worth.sure.strength.half_width)),
      fact(SAID.yield, show("yield", found.yield_pct), show("yield", found.worth.sure.yield.half_width)),
      fact(SAID.counted, show("yield", found.counted_yield_pct), show("yield", found.worth.sure.counted.half_width)),
    ),
    agreement,
    h(
      "p",
      { class: plausibility.credibility === "ordinary" ? null : "doubt" },
      SAID.credibility[plausibility.credibility],
    ),
    plausibility.doubts.length > 0 && doubts(plausibility.doubts, units),
    standingWords(found.standing, units, {
      of: found.added_g > 0 ? words.standing.drink(amount("addition", found.added_g, units)) : null,
      isSettled: isSettled(found),
    }),
    sureness(found.worth, units),
    found.worth.advice && suggestions(found.worth.advice, units),
    h("h3", {}, SAID.now),
    now(found, all),
    h("h3", {}, SAID.next),
    next(found.next, units, takeLearnt),
    h("div", { class: "pictures" }, pictures(found, plan, all)),
  );
}

const fact = (name, value, reach) =>
  h("div", {}, h("dt", {}, name), h("dd", {}, value, h("small", {}, SAID.reach(reach))));

// Whether where the cup stands as read is decided. What is decided is of the brew, before water goes in.
const isSettled = ({ standing, worth: { whole }, added_g }) =>
  standing !== null && added_g === 0 && whole === (standing.is_inside ? "inside" : "outside");

function sureness({ sure, decided, both_pct, needed }, units) {
  const share = (value) => amount("probability", value, units);
  const rests = (name) => {
    const { half_width, dominant, halved } = sure[name];
    if (!dominant) return null;
    const source = SAID.sources[dominant.source] ?? words.fields[`brew.${dominant.source}`]?.label ?? dominant.source;
    return h(
      "p",
      { class: "hint" },
      SAID.rests[name](
        share(dominant.share_pct),
        source,
        amount("strength", halved, units),
        amount("strength", half_width, units),
      ),
    );
  };
  const said = (name) => {
    const { decision, inside_pct } = decided[name];
    const text = SAID.decided[name][decision];
    return typeof text === "string" ? text : text(share(inside_pct));
  };
  return [
    h("h3", {}, SAID.sure),
    h("p", { class: "hint" }, SAID.sureHint),
    decided && h("p", { class: "decided" }, said("strength"), decided.yield && ` ${said("yield")}`),
    decided && both_pct !== null && h("p", {}, SAID.decided.both(share(both_pct))),
    needed &&
      h("p", {}, needed.needed === "readings" ? SAID.needed.readings(needed.readings) : SAID.needed[needed.needed]),
    rests("strength"),
    rests("yield"),
  ];
}

const AMOUNTS = {
  add_water: "addition",
  add_milk: "addition",
  dose: "dose",
  water: "brew_water",
  time: "time",
  time_with_dose: "time",
};

function suggestions({ suggestions: list, grind }, units) {
  const what = ({ change, amount: value, before, with_dose_g }) => {
    const quantity = AMOUNTS[change];
    if (!quantity) return SAID.change[change]();
    const amounts = [value, before].map((number) => amount(quantity, number, units));
    return SAID.change[change](...amounts, amount("dose", with_dose_g, units));
  };
  const outlook = ({ strength_pct, beverage_g, inside_pct }) =>
    SAID.outlook(
      amount("strength", strength_pct, units),
      amount("beverage", beverage_g, units),
      amount("probability", inside_pct, units),
    );
  return [
    h("h3", {}, SAID.could),
    h(
      "ol",
      { class: "could" },
      list.map((one) => h("li", {}, h("strong", {}, what(one)), h("span", {}, outlook(one.outlook)))),
    ),
    SAID.grind[grind] && h("p", {}, SAID.grind[grind]),
  ];
}

const doubts = (list, units) => [
  h("p", {}, SAID.doubts),
  h(
    "ul",
    {},
    list.map(({ quantity, entered, would_have_to_be }) => {
      const label = SAID.doubted[quantity];
      const had = amount(quantity, entered, units);
      return h(
        "li",
        {},
        would_have_to_be === null
          ? SAID.doubtWithout(label, had)
          : SAID.doubt(label, had, amount(quantity, would_have_to_be, units)),
      );
    }),
  ),
];

function now({ add }, { wish, units }) {
  if (add.refusal) return h("p", {}, sentence(add.refusal, blamed({ field: "strength_pct" }, ["wish"]), units));
  if (add.value === 0) return h("p", {}, SAID.addNothing);
  return h(
    "p",
    { class: "do" },
    SAID.addWater(amount("addition", add.value, units), amount("strength", wish.strength_pct, units)),
  );
}

function next(learning, units, takeLearnt) {
  if (!learning) return h("p", {}, SAID.nextDoubt);
  const { learnt, keptRefusal, plan } = learning;
  return [
    h(
      "p",
      {},
      SAID.learnt(
        amount("yield", learnt.yield_pct, units),
        amount("apparent_retention", learnt.apparent_retention_g_per_g, units),
      ),
    ),
    keptRefusal && h("p", { class: "doubt" }, sentence(keptRefusal, null, units)),
    plan.value
      ? h(
          "p",
          { class: "do" },
          SAID.nextPlan(
            amount("dose", plan.value.recipe.dose_g, units),
            amount("brew_water", plan.value.recipe.water_g, units),
            figure("batches", plan.value.recipe.batches, units),
          ),
        )
      : h(
          "p",
          { class: "doubt" },
          sentence(plan.refusal, blamed(plan.refusal, ["wish", "brewer", "coffee", "kitchen"]), units),
        ),
    h("button", { type: "button", onclick: () => takeLearnt(learnt) }, SAID.takeLearnt),
  ];
}

function pictures(found, plan, { brew, kitchen, wish, units }) {
  const points = [
    {
      name:
        found.added_g > 0 ? words.pictures.after(amount("addition", found.added_g, units)) : words.pictures.measured,
      kind: "measured",
      strength_pct: found.drink_pct,
      yield_pct: found.counted_yield_pct,
    },
  ];
  if (plan) {
    points.unshift({
      name: words.pictures.planned,
      kind: "planned",
      strength_pct: plan.recipe.strength_pct,
      yield_pct: plan.counted_yield_pct,
    });
  }
  const added_g = found.add.value;
  const wanted = added_g === undefined ? null : { added_g, strength_pct: wish.strength_pct };
  return [
    placePicture(points, found.window, units),
    weakeningPicture(
      weakening(brew.beverage_g, found.strength_pct, kitchen.water_solids_mg_per_l, added_g ?? 0),
      wanted,
      units,
    ),
  ];
}
