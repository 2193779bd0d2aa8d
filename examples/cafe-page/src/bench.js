// All brewing numbers of the page: each comes from the package.

import {
  caution,
  constants,
  dilution,
  extraction,
  heat,
  limits,
  plan,
  reading,
  Refusal,
  retention,
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
  const recipe = plan.recipe({
    wish: {
      cup_g: wish.cup_g,
      strength_pct: wish.strength_pct,
      brew_strength_pct: wish.add_water ? required(wish.brew_strength_pct) : null,
      brew_c: brewer.brew_c,
      contact_s: brewer.contact_s,
      serve_c: wish.serve_c,
      // The yield's edges are left to the verdict below: a plan counts its yield by the brewer, a window by the chart.
      window: window && {
        strength_lowest_pct: window.strength_lowest_pct,
        strength_highest_pct: window.strength_highest_pct,
      },
      servings: wish.servings,
      most_batches: wish.most_batches,
    },
    brewer: {
      held_strength_pct: brewer.held_strength_pct,
      losses: lossesOf(brewer),
      chamber: brewer.has_chamber
        ? { volume_ml: brewer.volume_ml, displacement_ml_per_g: brewer.displacement_ml_per_g }
        : null,
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
  });
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
  return { from_c, very_hot_c, marks, curve };
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
    standing: standing(window, drink_pct, counted_yield_pct),
    added_g: drink_pct === strength_pct ? 0 : add.value,
    next: plausibility.credibility === "ordinary" ? nextTime(all, yield_pct) : null,
  };
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
