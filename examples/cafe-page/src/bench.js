// All brewing numbers of the page: each comes from the package.

import {
  advise,
  caution,
  constants,
  decision,
  dilution,
  extraction,
  heat,
  limits,
  plan,
  reading,
  Refusal,
  retention,
  uncertainty,
  verdict,
  windows,
} from "../cupwright/src/slim.js";

/** The window chosen, or null. */
export function windowOf({ wish }) {
  if (wish.window === "none") return null;
  if (wish.window !== "own") return windows[wish.window].window;
  const { strength_lowest_pct, strength_highest_pct, yield_lowest_pct, yield_highest_pct } = wish;
  return { strength_lowest_pct, strength_highest_pct, yield_lowest_pct, yield_highest_pct };
}

// As good as known: what a specification or a habit says has no degrees of freedom to count.
const KNOWN = () => limits.degrees_of_freedom.max;

/** How sure is sure: common practice. */
export const SURE_PCT = 95;

/** How far brews stray, as the package asks for it. */
const strayingOf = ({ hand }) => ({
  u_next_dose_g: hand.dose_g,
  nu_next_dose: KNOWN(),
  u_next_water_g: hand.water_g,
  nu_next_water: KNOWN(),
  u_next_yield_pct: hand.yield_pct,
  nu_next_yield: KNOWN(),
  u_next_retention_g_per_g: hand.retention_g_per_g,
  nu_next_retention: KNOWN(),
  u_next_losses_g: hand.losses_g,
  nu_next_losses: KNOWN(),
});

const chamberOf = (brewer) =>
  brewer.has_chamber ? { volume_ml: brewer.volume_ml, displacement_ml_per_g: brewer.displacement_ml_per_g } : null;

const lossesOf = (brewer) => ({
  apparent_retention_g_per_g: brewer.apparent_retention_g_per_g,
  hold_up_g: brewer.hold_up_g,
  paper_g: brewer.paper_g,
  paper_uptake_g_per_g: brewer.paper_uptake_g_per_g,
  drips_g: brewer.drips_g,
  vapour_g: brewer.vapour_g,
});

/** A recipe, and where it stands in the window with its yield counted as windows count it. */
export function planned(all) {
  const { wish, brewer, coffee, kitchen } = all;
  const window = windowOf(all);
  const question = {
    wish: {
      cup_g: wish.cup_g,
      strength_pct: wish.strength_pct,
      brew_strength_pct: wish.add_water ? required(wish.brew_strength_pct) : null,
      brew_c: brewer.brew_c,
      contact_s: brewer.contact_s,
      serve_c: wish.serve_c,
      window,
      servings: wish.servings,
      most_batches: wish.most_batches,
    },
    brewer: {
      held_strength_pct: brewer.held_strength_pct,
      losses: lossesOf(brewer),
      chamber: chamberOf(brewer),
      heat_capacity_j_per_k: brewer.heat_capacity_j_per_k,
      rinse_g: brewer.rinse_g,
      cooling_per_min: brewer.cooling_per_min,
      cover: brewer.cover,
      pressed: brewer.pressed,
      glass: brewer.glass,
    },
    coffee: {
      yield_pct: coffee.yield_pct,
      moisture_pct: coffee.moisture_pct,
      caffeine_mg_per_g: coffee.caffeine_mg_per_g,
    },
    kitchen: {
      air: kitchen.air,
      pressure_kpa: kitchen.air === "pressure" ? kitchen.pressure_kpa : null,
      altitude_m: kitchen.air === "altitude" ? kitchen.altitude_m : null,
      room_c: kitchen.room_c,
      humidity_pct: kitchen.humidity_pct,
      drop_k: kitchen.drop_k,
      second_vessel_j_per_k: kitchen.second_vessel_j_per_k,
      cup_j_per_k: kitchen.cup_j_per_k,
      cup_cooling_per_min: kitchen.cup_cooling_per_min,
      water_solids_mg_per_l: kitchen.water_solids_mg_per_l,
      // Where none is added its temperature is nobody's business.
      added_c: wish.add_water ? kitchen.added_c : brewer.brew_c,
    },
  };
  const straying = strayingOf(all);
  // Where nothing surer is worth while, the surest is the wish as it is.
  const surest = plan.surest({ ...question, straying });
  const isWished = surest.recipe.strength_pct === wish.strength_pct;
  const { recipe, outlook } = isWished ? surest : plan.foreseen({ ...question, straying });
  const counted_yield_pct = extraction.flowThroughYield({
    strength_pct: recipe.brew_strength_pct,
    beverage_g: recipe.beverage_g,
    dose_g: recipe.dose_g,
  }).yield_pct;
  // Water added in the cup is heated too, unless it is added cold.
  const hot_added_g =
    wish.add_water && kitchen.added_c > kitchen.room_c ? (recipe.added_per_cup_g * wish.servings) / recipe.batches : 0;
  return {
    recipe,
    outlook,
    surer: isWished ? null : surest,
    window,
    counted_yield_pct,
    standing: standing(window, recipe.strength_pct, counted_yield_pct),
    to_heat_g: recipe.water_g + (brewer.rinse_g ?? 0) + hot_added_g,
  };
}

// Empty means "no strong brew" to the package, but not to somebody who has just asked for one.
const required = (value) => value ?? "";

const standing = (window, strength_pct, yield_pct) => window && verdict.stand({ window, strength_pct, yield_pct });

/** How fast the hottest thing handled burns. */
export const burn = (water_c) => caution.timeToBurn({ water_c });

/** The drink cooling in its cup, or null where its rate is unknown or it is no warmer than the room. */
export function cooling({ recipe }, { kitchen, wish }) {
  const cooling_per_min = kitchen.cup_cooling_per_min;
  const from_c = recipe.heat.in_cup_c;
  if (cooling_per_min === null || from_c <= kitchen.room_c) return null;
  const surroundings = { room_c: kitchen.room_c, humidity_pct: kitchen.humidity_pct, cover: "open" };
  const whenAt = (to_c) =>
    to_c === null || to_c >= from_c
      ? null
      : answerOrNull(() => heat.timeToCool({ water_c: from_c, to_c, cooling_per_min, surroundings }).time_s);
  const very_hot_c = constants.VERY_HOT_DRINK_C.value;
  const marks = [
    { at_c: very_hot_c, time_s: whenAt(very_hot_c) },
    { at_c: wish.serve_c, time_s: whenAt(wish.serve_c) },
  ].filter(({ time_s }) => time_s !== null);
  const shown_s = Math.min(limits.time.max, Math.max(1800, ...marks.map(({ time_s }) => time_s * 1.25)));
  const curve = Array.from({ length: 49 }, (_, index) => {
    const time_s = (shown_s * index) / 48;
    return {
      time_s,
      water_c: heat.temperatureAfter({ water_c: from_c, time_s, cooling_per_min, surroundings }).after_c,
    };
  });
  return { from_c, very_hot_c, marks, curve, is_at_most: recipe.heat.contact_heat === "at_most" };
}

function answerOrNull(question) {
  try {
    return question();
  } catch (error) {
    if (error instanceof Refusal) return null;
    throw error;
  }
}

/** Strength of a brew as water goes in, up to twice its size. */
export function weakening(beverage_g, strength_pct, water_solids_mg_per_l, least_g) {
  const most_g = Math.max(beverage_g, least_g * 1.3);
  return Array.from({ length: 33 }, (_, index) => {
    const added_g = (most_g * index) / 32;
    return {
      added_g,
      strength_pct: dilution.strengthAfterWater({ beverage_g, strength_pct, added_g, water_solids_mg_per_l }).after_pct,
    };
  });
}

/** What was weighed and read, judged. Where two readings disagree there is only `combined`. */
export function judged(all) {
  const { wish, brewer, coffee, kitchen, instrument, brew } = all;
  const readings = brew.readings.map((read) =>
    instrument.reads === "brix"
      ? reading.strengthOfBrix({
          brix: read,
          refractive_factor_pct_per_brix: instrument.refractive_factor_pct_per_brix,
        }).strength_pct
      : read,
  );
  const combined = reading.combine({ strength_pct: readings, repeatability_pct: instrument.repeatability_pct });
  if (combined.agreement === "take_another" && readings.length > 1) return { combined };
  const water_solids_mg_per_l = kitchen.water_solids_mg_per_l;
  const strength_pct = reading.totalStrength({
    strength_pct: combined.strength_pct,
    zero: instrument.zero,
    water_solids_mg_per_l,
  }).total_pct;
  const mass = {
    dose_g: brew.dose_g,
    water_g: brew.water_g,
    beverage_g: brew.beverage_g,
    moisture_pct: coffee.moisture_pct,
    water_solids_mg_per_l,
    vapour_g: brewer.vapour_g,
    held_strength_pct: brewer.held_strength_pct,
  };
  const { yield_pct } = extraction.extractionYield({ brew: mass, strength_pct });
  const counted_yield_pct = extraction.flowThroughYield({
    strength_pct,
    beverage_g: brew.beverage_g,
    dose_g: brew.dose_g,
  }).yield_pct;
  const plausibility = extraction.plausibility({ brew: mass, strength_pct });
  const add = attempt(
    () =>
      dilution.waterToReach({
        beverage_g: brew.beverage_g,
        strength_pct,
        wanted_pct: wish.strength_pct,
        water_solids_mg_per_l,
      }).added_g,
  );
  const window = windowOf(all);
  // A strong brew is not the drink: the drink is what water makes of it.
  const drink_pct = wish.add_water && add.value !== undefined ? wish.strength_pct : strength_pct;
  return {
    combined,
    strength_pct,
    drink_pct,
    yield_pct,
    counted_yield_pct,
    plausibility,
    add,
    window,
    worth: worth(all, mass, combined.strength_pct, readings.length, window),
    standing: standing(window, drink_pct, counted_yield_pct),
    added_g: drink_pct === strength_pct ? 0 : add.value,
    next: plausibility.credibility === "ordinary" ? nextTime(all, yield_pct) : null,
  };
}

/** What the numbers of a brew are worth: how sure they are, what that rests on, what is decided, what could be done. */
function worth({ wish, brewer, instrument, hand }, brew, read_pct, readings, window) {
  const known = KNOWN();
  const scale = within(instrument, "scale_limit_g");
  const maker = within(instrument, "limit_pct");
  const scatter = { s: instrument.repeatability_pct, degrees_of_freedom: known };
  const of_mean = uncertainty.pooled({ series: [scatter], readings }).u;
  const weighed = (name, field) => ({ [field]: brew[field], [`u_${field}`]: scale, [`nu_${name}`]: known });
  const exact = (name, field) => ({ [field]: brew[field], [`u_${field}`]: 0, [`nu_${name}`]: known });
  const readWith = (u) =>
    uncertainty.strength({
      strength: { strength_pct: read_pct, u_strength_pct: u, nu_strength: known },
      instrument: { u_instrument_pct: maker, nu_instrument: known },
      factor: { u_factor_pct: instrument.factor_doubt_pct, nu_factor: known },
      zero: instrument.zero,
      water_solids: exact("water_solids", "water_solids_mg_per_l"),
    });
  const strength = readWith(of_mean);
  const of_strength = {
    strength_pct: strength.value,
    u_strength_pct: strength.u,
    nu_strength: strength.degrees_of_freedom,
  };
  const masses = {
    strength: of_strength,
    dose: weighed("dose", "dose_g"),
    beverage: weighed("beverage", "beverage_g"),
    // It is in the strength already.
    factor: { u_factor_pct: 0, nu_factor: known },
  };
  const extracted = uncertainty.extractionYield({
    measured: {
      ...masses,
      water: weighed("water", "water_g"),
      moisture: exact("moisture", "moisture_pct"),
      water_solids: exact("water_solids", "water_solids_mg_per_l"),
      vapour: exact("vapour", "vapour_g"),
      held_strength: exact("held_strength", "held_strength_pct"),
      span: { u_span_pct: 0, nu_span: known },
    },
  });
  const counted = uncertainty.flowThroughYield(masses);
  const sure = { strength: reach(strength), yield: reach(extracted), counted: reach(counted) };
  if (!window) return { sure };
  const decided = {
    strength: beside(strength, window.strength_lowest_pct, window.strength_highest_pct),
    yield: hasYield(window) ? beside(counted, window.yield_lowest_pct, window.yield_highest_pct) : null,
  };
  const of_yield = { yield_pct: counted.value, u_yield_pct: counted.u, nu_yield: counted.degrees_of_freedom };
  const both_pct =
    decided.yield &&
    decision.joint({ bands: window, strength: of_strength, extracted: of_yield, correlation: counted.correlation })
      .both_pct;
  const undecided = decided.strength.decision === "not_yet" || decided.strength.decision === "too_uncertain";
  const needed = undecided ? moreReadings(readWith(0), scatter, window) : null;
  const cup = {
    brew,
    u_weighing_g: scale,
    nu_weighing: known,
    strength: of_strength,
    yield: { yield_pct: extracted.value, u_yield_pct: extracted.u, nu_yield: extracted.degrees_of_freedom },
    contact_s: brewer.contact_s,
  };
  const advice = () =>
    advise.on({
      cup,
      means: { rates: null, losses: null, chamber: chamberOf(brewer), water_c: brewer.brew_c, milk: false },
      straying: strayingOf({ hand }),
      wanted_pct: wish.strength_pct,
      window,
      confidence_pct: SURE_PCT,
    });
  // A strong brew is advised on by what water makes of it, which is said apart.
  return { sure, decided, both_pct, needed, advice: wish.add_water ? null : answerOrNull(advice) };
}

/** Whether a window has a yield. */
export const hasYield = (window) =>
  Number.isFinite(window.yield_lowest_pct) && Number.isFinite(window.yield_highest_pct);

const estimateOf = ({ value, u, degrees_of_freedom }) => ({ value, u_value: u, nu_value: degrees_of_freedom });

/** How far a value reaches to either side, what most of that comes from, and how far it would with that halved. */
function reach(budget) {
  const { dominant } = budget;
  const within = (u) =>
    uncertainty.expanded({ estimate: { ...estimateOf(budget), u_value: u }, confidence_pct: SURE_PCT }).half_width;
  return { half_width: within(budget.u), dominant, halved: dominant && within(dominant.halved) };
}

/** How far a number of an outlook reaches to either side. */
export const reachOf = (name, outlook) =>
  uncertainty.expanded({
    estimate: {
      value: outlook[`${name}_pct`],
      u_value: outlook[`u_${name}_pct`],
      nu_value: outlook[`nu_${name}`],
    },
    confidence_pct: SURE_PCT,
  });

/** The standard uncertainty of something that its maker promises to be within limits. */
function within(instrument, key) {
  try {
    return uncertainty.ofLimit({ limit: instrument[key], shape: "rectangular" }).u;
  } catch (refusal) {
    if (refusal instanceof Refusal) refusal.field = key;
    throw refusal;
  }
}

function beside(budget, lowest, highest) {
  const question = { estimate: estimateOf(budget), band: { lowest, highest } };
  const { inside_pct } = decision.chances(question);
  return { inside_pct, ...decision.decide({ ...question, confidence_pct: SURE_PCT }) };
}

// What repeating does not lessen is what a reading without scatter still has.
function moreReadings(without, { s, degrees_of_freedom }, window) {
  return decision.readingsNeeded({
    value: without.value,
    u_scatter: s,
    nu_scatter: degrees_of_freedom,
    u_rest: without.u,
    nu_rest: without.degrees_of_freedom,
    band: { lowest: window.strength_lowest_pct, highest: window.strength_highest_pct },
    confidence_pct: SURE_PCT,
  });
}

function nextTime(all, yield_pct) {
  const { brewer, brew } = all;
  const kept = attempt(
    () =>
      retention.retentionOfBrew({
        losses: lossesOf(brewer),
        dose_g: brew.dose_g,
        water_g: brew.water_g,
        beverage_g: brew.beverage_g,
      }).apparent_retention_g_per_g,
  );
  const learnt = {
    yield_pct,
    apparent_retention_g_per_g: kept.value ?? brewer.apparent_retention_g_per_g,
  };
  const again = {
    ...all,
    coffee: { ...all.coffee, yield_pct },
    brewer: { ...brewer, apparent_retention_g_per_g: learnt.apparent_retention_g_per_g },
  };
  return { learnt, keptRefusal: kept.refusal, plan: attempt(() => planned(again)) };
}

/** An answer, or the refusal in its place. */
export function attempt(question) {
  try {
    return { value: question() };
  } catch (refusal) {
    if (!(refusal instanceof Refusal)) throw refusal;
    return { refusal };
  }
}
