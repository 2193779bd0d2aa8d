// The recipe as a paper ticket, with its pictures, or what stands in its way.

import words from "../words.en.js";
import { cooling, reachOf, weakening } from "./bench.js";
import { cautionsAt } from "./cautions.js";
import { h } from "./element.js";
import { restsOnBrews } from "./learnt.js";
import { coolingPicture, placePicture, weakeningPicture } from "./pictures.js";
import { blamed, sentence } from "./refusals.js";
import { amount, bound, clock, figure, short } from "./units.js";

const SAID = words.ticket;

/** The ticket of a plan, with what can be done with it: `actions` of { name, act }, the first one foremost. */
export function ticket(plan, all, actions) {
  const { recipe } = plan;
  const { units, wish, brewer, coffee, kitchen } = all;
  const show = (quantity, value) => amount(quantity, value, units);
  return h(
    "article",
    { class: "ticket", "aria-label": words.headings.ticket },
    h(
      "header",
      {},
      h(
        "p",
        { class: "order" },
        SAID.order(
          figure("servings", wish.servings, units),
          short("beverage", wish.cup_g, units),
          show("strength", recipe.strength_pct),
        ),
      ),
      h("p", { class: "made-with" }, [brewer.name, coffee.name, kitchen.name].filter(Boolean).join(" · ")),
    ),
    h(
      "dl",
      { class: "weigh" },
      big(SAID.coffee, show("dose", recipe.dose_g), recipe.batches > 1 && SAID.eachBatch),
      big(SAID.water, show("brew_water", recipe.water_g), recipe.batches > 1 && SAID.eachBatch),
      recipe.batches > 1 && big(SAID.batches, `× ${figure("batches", recipe.batches, units)}`),
      wish.add_water &&
        big(SAID.added, show("addition", recipe.added_per_cup_g), SAID.addedAt(show("temperature", kitchen.added_c))),
    ),
    h("p", { class: "ratio" }, SAID.ratio(figure("water_ratio", recipe.water_ratio_g_per_g, units))),
    cautionsAt("pour", recipe, recipe.heat.kettle_c, units),
    h(
      "dl",
      { class: "rows" },
      row(SAID.contact, clock(brewer.contact_s)),
      row(
        SAID.beverage,
        show("beverage", recipe.beverage_g),
        wish.add_water && SAID.brewStrength(show("strength", recipe.brew_strength_pct)),
      ),
      wish.add_water && row(SAID.perCup, show("beverage", recipe.brew_per_cup_g)),
      recipe.fill_ml !== null && row(SAID.fill, show("volume", recipe.fill_ml)),
      row(SAID.yield, show("yield", recipe.yield_pct), SAID.counted(show("yield", plan.counted_yield_pct))),
      recipe.caffeine_mg !== null && row(SAID.caffeine, show("caffeine", recipe.caffeine_mg)),
    ),
    restsOnBrews(all) && h("p", { class: "learnt" }, words.learn.onTicket(brewer.learned.brews.length)),
    heatWalk(plan, all),
    cautionsAt("press", recipe, recipe.heat.slurry_end_c, units),
    h(
      "p",
      { class: "wait" },
      recipe.heat.wait_s !== null
        ? SAID.wait(
            show("temperature", wish.serve_c),
            clock(recipe.heat.wait_s),
            recipe.heat.contact_heat === "at_most",
          )
        : wish.serve_c !== null && SAID.noWait,
    ),
    cautionsAt("serve", recipe, recipe.heat.wait_s === null ? recipe.heat.in_cup_c : wish.serve_c, units),
    recipe.tolerances && tolerances(recipe.tolerances, units),
    plan.outlook && chances(plan, units),
    standingWords(plan.standing, units),
    h("p", { class: "local" }, SAID.local),
    h(
      "div",
      { class: "actions" },
      actions.map(({ name, act }, index) =>
        h("button", { type: "button", class: index === 0 && "main", onclick: act }, name),
      ),
    ),
  );
}

/** The pictures of a plan. */
export function planPictures(plan, all) {
  const { recipe } = plan;
  const { wish, kitchen, units } = all;
  const wanted = wish.add_water ? { added_g: recipe.added_per_cup_g, strength_pct: recipe.strength_pct } : null;
  return [
    placePicture(
      [
        {
          name: words.pictures.planned,
          kind: "planned",
          strength_pct: recipe.strength_pct,
          yield_pct: plan.counted_yield_pct,
        },
      ],
      plan.window,
      units,
    ),
    coolingPicture(cooling(plan, all), units),
    weakeningPicture(
      weakening(recipe.brew_per_cup_g, recipe.brew_strength_pct, kitchen.water_solids_mg_per_l, recipe.added_per_cup_g),
      wanted,
      units,
    ),
  ];
}

/** What is said aloud of a plan. */
export const spoken = ({ recipe }, units) =>
  SAID.said(
    amount("dose", recipe.dose_g, units),
    amount("brew_water", recipe.water_g, units),
    figure("batches", recipe.batches, units),
  );

/** A ticket's place taken by the reason why there is none, with what can be had instead. */
export function refusedTicket(refusal, sections, units, { take, visit }) {
  const field = blamed(refusal, sections);
  const nearest = refusal.nearest !== null && field?.kind === "number";
  return h(
    "article",
    { class: "ticket refused" },
    h("h3", {}, SAID.refused),
    h("p", {}, sentence(refusal, field, units)),
    h(
      "div",
      { class: "actions" },
      nearest &&
        h(
          "button",
          { type: "button", class: "main", onclick: () => take(field, refusal.nearest) },
          SAID.take(bound(refusal.quantity, refusal.nearest, units)),
        ),
      field && h("button", { type: "button", onclick: () => visit(field) }, SAID.goTo),
    ),
  );
}

/**
 * Where a cup stands, in words; `of` says which cup, where that is not plain. One that is not settled stands there as
 * read: its box has no colour of a verdict.
 */
export function standingWords(standing, units, { of = null, isSettled = true } = {}) {
  if (!standing) return h("p", { class: "standing" }, words.standing.none);
  const place = (name, at) => {
    const by = at.side === "below" ? -at.above_lowest : at.side === "above" ? -at.below_highest : 0;
    const points = figure(name, by, units);
    const seen = points !== figure(name, 0, units);
    return words.standing[name][at.side](seen ? words.standing.points(points) : words.standing.hair);
  };
  const side = standing.is_inside ? "inside" : "outside";
  return h(
    "p",
    { class: isSettled ? `standing ${side}` : "standing" },
    of && `${of} `,
    h("strong", {}, isSettled ? words.standing[side] : words.standing.read[side]),
    " ",
    place("strength", standing.strength),
    standing.yield && ` ${place("yield", standing.yield)}`,
  );
}

const big = (name, value, aside) => h("div", {}, h("dt", {}, name), h("dd", {}, value, aside && h("small", {}, aside)));

const row = (name, value, aside) => h("div", {}, h("dt", {}, name), h("dd", {}, value, aside && h("small", {}, aside)));

function heatWalk({ recipe, to_heat_g }, { brewer, units }) {
  const { heat, batches } = recipe;
  const show = (value) => amount("temperature", value, units);
  const stops = [
    [SAID.kettle, heat.kettle_c],
    [SAID.second, heat.second_vessel_c],
    [SAID.brewer[brewer.rinse_g === null ? "cold" : "rinsed"], heat.brewer_c],
    [SAID.meets, heat.brew_c],
    [SAID.slurry, heat.slurry_c],
    [SAID.end[heat.contact_heat], heat.slurry_end_c],
    [SAID.cup[heat.contact_heat], heat.in_cup_c],
  ].filter(([, value]) => value !== null);
  return h(
    "section",
    { class: "walk" },
    h("h3", {}, SAID.walk),
    h(
      "dl",
      { class: "rows" },
      row(SAID.toHeat, amount("liquid", to_heat_g, units), batches > 1 && SAID.eachBatch),
      brewer.rinse_g !== null && row(SAID.rinse, amount("liquid", brewer.rinse_g, units)),
    ),
    h(
      "ol",
      {},
      stops.map(([name, value]) => h("li", {}, h("span", {}, name), h("b", {}, show(value)))),
    ),
    batches > 1 && h("p", { class: "hint" }, SAID.oneCup),
    h(
      "p",
      { class: "hint" },
      heat.boiling_uncertainty_k > 0
        ? SAID.boils(show(heat.boiling_c), amount("temperature_drop", heat.boiling_uncertainty_k, units))
        : SAID.boilsSurely(show(heat.boiling_c)),
    ),
  );
}

function chances({ outlook, surer }, units) {
  const { half_width } = reachOf("strength", outlook);
  const share = (value) => amount("probability", value, units);
  return h(
    "p",
    {},
    SAID.chance(
      amount("strength", outlook.strength_pct, units),
      amount("strength", half_width, units),
      share(outlook.inside_pct),
    ),
    surer && " ",
    surer &&
      SAID.surer(
        amount("dose", surer.recipe.dose_g, units),
        amount("strength", surer.recipe.strength_pct, units),
        share(surer.outlook.inside_pct),
      ),
  );
}

function tolerances(range, units) {
  const span = (name, quantity, from, to) =>
    from !== null && to !== null && row(name, SAID.between(figure(quantity, from, units), amount(quantity, to, units)));
  return h(
    "section",
    {},
    h("h3", {}, SAID.tolerances),
    h(
      "dl",
      { class: "rows" },
      span(SAID.doseAlone, "dose", range.dose_from_g, range.dose_to_g),
      span(SAID.waterAlone, "brew_water", range.water_from_g, range.water_to_g),
    ),
    h("p", { class: "hint" }, SAID.stillIn),
  );
}
