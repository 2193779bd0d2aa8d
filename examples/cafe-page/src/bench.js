// All brewing numbers of the page: each comes from the package.

import {
  advise,
  calibrate,
  caution,
  constants,
  decision,
  dilution,
  extraction,
  heat,
  limits,
  live,
  plan,
  profile,
  reading,
  Refusal,
  retention,
  uncertainty,
  verdict,
  windows,
} from "../cupwright/src/slim.js";
import { inUse, restsOnBrews } from "./learnt.js";

/** The window chosen, or null. */
export function windowOf({ wish }) {
  if (wish.window === "none") return null;
  if (wish.window !== "own") return windows[wish.window].window;
  const { strength_lowest_pct, strength_highest_pct, yield_lowest_pct, yield_highest_pct } = wish;
  const yield_counting = yield_lowest_pct === null && yield_highest_pct === null ? null : "flow_through";
  return { strength_lowest_pct, strength_highest_pct, yield_lowest_pct, yield_highest_pct, yield_counting };
}

/** Version of profiles as files; on the page they have none. */
export const PROFILE_VERSION = 1;

const NOTHING = { version: PROFILE_VERSION };

// What a profile holds, as the page keeps it.
const held = ({ version, ...fields }) =>
  Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== null));

// As good as known: what a specification or a habit says has no degrees of freedom to count.
const KNOWN = () => limits.degrees_of_freedom.max;

/** How sure is sure: common practice. */
export const SURE_PCT = 95;

/** How far brews stray, as the package asks for it; `amounts` gives dose and water of the one that is meant. */
const strayingOf = (all, amounts) => ({
  u_next_dose_g: all.hand.dose_g,
  nu_next_dose: KNOWN(),
  u_next_water_g: all.hand.water_g,
  nu_next_water: KNOWN(),
  u_next_yield_pct: all.hand.yield_pct,
  nu_next_yield: KNOWN(),
  ...(restsOnBrews(all) ? keptStraying(all.brewer, amounts()) : handStraying(all.hand)),
});

const handStraying = ({ retention_g_per_g, losses_g }) => ({
  u_next_retention_g_per_g: retention_g_per_g,
  nu_next_retention: KNOWN(),
  u_next_losses_g: losses_g,
  nu_next_losses: KNOWN(),
});

// What earlier brews say of the next one, the doubt about their line and the scatter around it in one.
function keptStraying({ learned, vapour_g }, { dose_g, water_g }) {
  const { brews, profile: known } = learned;
  if (!known.fitted_hold_up_g) {
    const { u_retention_g_per_g, quality } = calibrate.retention({ brews });
    return {
      u_next_retention_g_per_g: u_retention_g_per_g,
      nu_next_retention: quality.degrees_of_freedom,
      u_next_losses_g: quality.s,
      nu_next_losses: quality.degrees_of_freedom,
    };
  }
  const next = { next_dose_g: dose_g, next_water_g: water_g, next_vapour_g: vapour_g };
  const { u_beverage_g, degrees_of_freedom } = calibrate.expectedBeverage({ brews, ...next });
  return {
    u_next_retention_g_per_g: 0,
    nu_next_retention: KNOWN(),
    u_next_losses_g: u_beverage_g,
    nu_next_losses: degrees_of_freedom,
  };
}

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
  const straying = strayingOf(all, () => plan.recipe(question));
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

const strengthOf = (read, { reads, refractive_factor_pct_per_brix }) =>
  reads === "brix" ? reading.strengthOfBrix({ brix: read, refractive_factor_pct_per_brix }).strength_pct : read;

/** What was weighed and read, judged. Where two readings disagree there is only `combined`. */
export function judged(all) {
  const { wish, brewer, coffee, kitchen, instrument, brew } = all;
  const readings = brew.readings.map((read) => strengthOf(read, instrument));
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
    worth: worth(all, mass, readings, window),
    standing: standing(window, drink_pct, counted_yield_pct),
    added_g: drink_pct === strength_pct ? 0 : add.value,
    next: plausibility.credibility === "ordinary" ? nextTime(all, yield_pct) : null,
  };
}

/** What the numbers of a brew are worth: how sure they are, what that rests on, what is decided, what could be done. */
function worth(all, brew, readings, window) {
  const { wish, brewer, instrument } = all;
  const known = KNOWN();
  const scale = within(instrument, "scale_limit_g");
  const maker = within(instrument, "limit_pct");
  const own = {
    repeatability_pct: instrument.repeatability_pct,
    u_repeatability_pct: 0,
    nu_repeatability: inUse(all, "repeatability_pct")?.degrees_of_freedom ?? known,
  };
  const read = uncertainty.ofReadings({ strength_pct: readings, repeatability: own });
  const weighed = (name, field) => ({ [field]: brew[field], [`u_${field}`]: scale, [`nu_${name}`]: known });
  const exact = (name, field) => ({ [field]: brew[field], [`u_${field}`]: 0, [`nu_${name}`]: known });
  const withItsErrors = (strength) =>
    uncertainty.strength({
      strength,
      instrument: { u_instrument_pct: maker, nu_instrument: known },
      factor: { u_factor_pct: instrument.factor_doubt_pct, nu_factor: known },
      zero: instrument.zero,
      water_solids: exact("water_solids", "water_solids_mg_per_l"),
    });
  const strength = withItsErrors(read);
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
  const { yield_counting, ...bands } = window;
  const both_pct =
    decided.yield &&
    decision.joint({ bands, strength: of_strength, extracted: of_yield, correlation: counted.correlation })
      .both_pct;
  const whole = decision.decideJoint({
    both_pct: both_pct ?? decided.strength.inside_pct,
    confidence_pct: SURE_PCT,
  }).decision;
  const undecided = decided.strength.decision === "not_yet" || decided.strength.decision === "too_uncertain";
  const needed = undecided ? moreReadings(withItsErrors({ ...read, u_strength_pct: 0 }), own, window) : null;
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
      means: { rates: ratesOf(all), kept: null, chamber: chamberOf(brewer), water_c: brewer.brew_c, milk: false },
      straying: strayingOf(all, () => brew),
      wanted_pct: wish.strength_pct,
      window,
      confidence_pct: SURE_PCT,
    });
  // A strong brew is advised on by what water makes of it, which is said apart.
  return { sure, decided, both_pct, whole, needed, advice: wish.add_water ? null : answerOrNull(advice) };
}

// How fast this coffee extracts, and how well that is known, where it was learnt of it. Of a profile that lacks a part
// of that nothing is known.
function ratesOf({ brewer: { learned }, coffee }) {
  const { equilibrium_yield_pct, fast_time_s } = learned?.profile ?? {};
  if (learned?.coffee !== coffee.name || !equilibrium_yield_pct || !fast_time_s) return null;
  return answerOrNull(() => profile.rates({ profile: { version: PROFILE_VERSION, ...learned.profile } }));
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
function moreReadings(without, own, window) {
  return decision.readingsNeeded({
    value: without.value,
    u_scatter: own.repeatability_pct,
    nu_scatter: own.nu_repeatability,
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

// Of doses all alike the package asks for one half as large again; nearly alike they tell no more.
const WIDE_ENOUGH = 1.5;

/** Brews of the notebook as a scale saw them. */
export const drained = (entries) =>
  entries.map(({ brew: { dose_g, water_g, beverage_g }, brewer: { vapour_g } }) => ({
    dose_g,
    water_g,
    beverage_g,
    vapour_g,
  }));

/**
 * What a brewer keeps, by its brews: a line in the dose, or retention alone where the doses lie too near for a line or
 * it starts below zero, which `lacks` says.
 */
export function keeping(brews) {
  const doses = brews.map(({ dose_g }) => dose_g);
  const wanted_dose_g = WIDE_ENOUGH * Math.min(...doses);
  const isWide = Math.max(...doses) >= wanted_dose_g;
  const line = attempt(() => calibrate.retentionLine({ brews }));
  if (line.refusal && (isWide || line.refusal.why === "too_few")) return line;
  if (isWide && line.value.fitted_hold_up_g >= limits.hold_up.min) return attempt(() => ofLine(line.value, brews));
  const lacks = isWide ? "below_zero" : "one_dose";
  return attempt(() => ({ ...ofRetention(calibrate.retention({ brews }), brews), lacks, wanted_dose_g }));
}

function ofLine(line, brews) {
  const { quality } = line;
  // Enough for any dose that is drawn.
  const next_water_g = 2 * Math.max(...brews.map(({ water_g }) => water_g));
  const keptAt = (next_dose_g) => {
    const next = calibrate.expectedBeverage({ brews, next_dose_g, next_water_g, next_vapour_g: 0 });
    return { kept_g: next_water_g - next.beverage_g, u: next.u_beverage_g };
  };
  return {
    profile: held(profile.keepRetentionLine({ profile: NOTHING, line })),
    quality,
    drawing: drawing(brews, quality, keptAt),
  };
}

function ofRetention(retention, brews) {
  const { apparent_retention_g_per_g, u_retention_g_per_g, quality } = retention;
  const keptAt = (dose_g) => ({
    kept_g: apparent_retention_g_per_g * dose_g,
    u: Math.hypot(u_retention_g_per_g * dose_g, quality.s),
  });
  return {
    profile: held(profile.keepRetention({ profile: NOTHING, fitted: retention })),
    quality,
    drawing: drawing(brews, quality, keptAt),
  };
}

const fitted = (value, u, { degrees_of_freedom }) => ({ value, u, degrees_of_freedom });

/** How far a value that was learnt reaches to either side. */
export const learntReach = ({ value, u, degrees_of_freedom }) =>
  uncertainty.expanded({ estimate: estimateOf({ value, u, degrees_of_freedom }), confidence_pct: SURE_PCT }).half_width;

// Every brew, and the line with the band that holds the next brew.
function drawing(brews, quality, keptAt) {
  const points = brews.map(({ dose_g, water_g, beverage_g, vapour_g }) => ({
    dose_g,
    kept_g: water_g - beverage_g - vapour_g,
  }));
  const doses = points.map(({ dose_g }) => dose_g);
  const from_g = 0.9 * Math.min(...doses);
  const step_g = (1.1 * Math.max(...doses) - from_g) / 24;
  const line = Array.from({ length: 25 }, (_, index) => {
    const dose_g = from_g + step_g * index;
    const { kept_g, u } = keptAt(dose_g);
    const half = learntReach(fitted(kept_g, u, quality));
    return { dose_g, kept_g, least_g: kept_g - half, most_g: kept_g + half };
  });
  return { points, line };
}

/** How well readings repeat themselves, of cups as the notebook has them. */
export const repeating = (cups) =>
  attempt(() => {
    const strengths = ({ brew: { readings }, instrument }) => readings.map((read) => strengthOf(read, instrument));
    const readings = cups.flatMap((cup, at) => strengths(cup).map((strength_pct) => ({ cup: at + 1, strength_pct })));
    const own = calibrate.repeatability({ readings });
    return { profile: held(profile.keepRepeatability({ profile: NOTHING, fitted: own })), quality: own.quality };
  });

/** How fast a coffee extracts and where that ends, by its yields after several times of contact. */
export const extracting = (entries) =>
  attempt(() => {
    const yields = entries.map(({ brewer, result }) => ({ contact_s: brewer.contact_s, yield_pct: result.yield_pct }));
    const law = calibrate.oneRate({ yields });
    return { profile: held(profile.keepOneRate({ profile: NOTHING, law })), quality: law.quality };
  });

/**
 * What follows a brew on a scale. `brewing` is { recipe, contact_s, pressed }, or null for no recipe; the coffee is
 * weighed on the same scale or, where `isWeighed`, was weighed elsewhere.
 */
export function followerOf({ division_g, capacity_g, fastest_g_per_s, vessel_g }, brewing, isWeighed) {
  const setup = { division_g, capacity_g, fastest_g_per_s };
  if (!brewing) return live.follower(setup, []);
  const { recipe, contact_s, pressed } = brewing;
  const follower = live.follower(setup, [
    ...(isWeighed ? [] : [{ step: "dose", dose_g: recipe.dose_g }]),
    { step: "pour", to_g: recipe.water_g, from_s: 0 },
    { step: "wait", until_s: contact_s },
    ...(pressed ? [{ step: "press" }] : []),
    { step: "beverage", vessel_g },
  ]);
  if (isWeighed) follower.setDose({ dose_g: recipe.dose_g });
  return follower;
}

/** What the package finds wrong with a profile, or null. */
export const profileFault = (learned) =>
  attempt(() => profile.toBytes({ profile: { version: PROFILE_VERSION, ...learned } })).refusal ?? null;

/** An answer, or the refusal in its place. */
export function attempt(question) {
  try {
    return { value: question() };
  } catch (refusal) {
    if (!(refusal instanceof Refusal)) throw refusal;
    return { refusal };
  }
}
