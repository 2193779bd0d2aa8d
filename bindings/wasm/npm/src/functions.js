// Made by `cargo xtask face`. Do not edit.

import { answered, boolean, cautions, choice, f64, i32, integer, items, list, number, numbers, quantity, record, x } from "./call.js";

const BURN = [null, "more_than_five_minutes", "within", "under_one_second"];
const CREDIBILITY = [null, "ordinary", "near_limit", "at_limit", "beyond_limit"];
const COVER = [null, "open", "lidded"];
const AIR = [null, "pressure", "altitude"];
const CONTACT_HEAT = [null, "cooling_rate", "at_most", "unchanged"];
const AGREEMENT = [null, "mean", "take_another", "median"];
const SIDE = [null, "below", "inside", "above"];
const ZERO = [null, "distilled", "brew_water"];

const HAZARDS_FIELDS = new Set(["hottest_c", "served_c", "caffeine_mg", "pressed", "glass", "milk", "ice"]);
function putHazards(o, at, name) {
  record(o, HAZARDS_FIELDS, name);
  f64[(at + 0) >> 3] = number(o.hottest_c, "hottest_c");
  f64[(at + 8) >> 3] = number(o.served_c, "served_c");
  if (o.caffeine_mg != null) f64[(at + 16) >> 3] = number(o.caffeine_mg, "caffeine_mg");
  i32[(at + 24) >> 2] = o.caffeine_mg != null ? 1 : 0;
  i32[(at + 28) >> 2] = boolean(o.pressed, "pressed");
  i32[(at + 32) >> 2] = boolean(o.glass, "glass");
  i32[(at + 36) >> 2] = boolean(o.milk, "milk");
  i32[(at + 40) >> 2] = boolean(o.ice, "ice");
}

function getTimeToBurn(at) {
  return {
    time_s: f64[(at + 0) >> 3],
    burn: BURN[i32[(at + 8) >> 2]],
  };
}

function getCupSplit(at) {
  return {
    beverage_g: f64[(at + 0) >> 3],
    added_g: f64[(at + 8) >> 3],
    rest_g: f64[(at + 16) >> 3],
  };
}

function getMilkDrink(at) {
  return {
    beverage_g: f64[(at + 0) >> 3],
    strength_pct: f64[(at + 8) >> 3],
    milk_solids_pct: f64[(at + 16) >> 3],
  };
}

function getIced(at) {
  return {
    water_c: f64[(at + 0) >> 3],
    melted_g: f64[(at + 8) >> 3],
    ice_g: f64[(at + 16) >> 3],
    strength_pct: f64[(at + 24) >> 3],
  };
}

const BREW_FIELDS = new Set(["dose_g", "water_g", "beverage_g", "moisture_pct", "water_solids_mg_per_l", "vapour_g", "held_strength_pct"]);
function putBrew(o, at, name) {
  record(o, BREW_FIELDS, name);
  f64[(at + 0) >> 3] = number(o.dose_g, "dose_g");
  f64[(at + 8) >> 3] = number(o.water_g, "water_g");
  f64[(at + 16) >> 3] = number(o.beverage_g, "beverage_g");
  f64[(at + 24) >> 3] = number(o.moisture_pct, "moisture_pct");
  f64[(at + 32) >> 3] = number(o.water_solids_mg_per_l, "water_solids_mg_per_l");
  f64[(at + 40) >> 3] = number(o.vapour_g, "vapour_g");
  f64[(at + 48) >> 3] = number(o.held_strength_pct, "held_strength_pct");
}

const KINETICS_FIELDS = new Set(["equilibrium_yield_pct", "fast_share_pct", "fast_time_s", "slow_time_s"]);
function putKinetics(o, at, name) {
  record(o, KINETICS_FIELDS, name);
  f64[(at + 0) >> 3] = number(o.equilibrium_yield_pct, "equilibrium_yield_pct");
  f64[(at + 8) >> 3] = number(o.fast_share_pct, "fast_share_pct");
  f64[(at + 16) >> 3] = number(o.fast_time_s, "fast_time_s");
  f64[(at + 24) >> 3] = number(o.slow_time_s, "slow_time_s");
}

function getDoubt(at) {
  return {
    entered: f64[(at + 0) >> 3],
    would_have_to_be: i32[(at + 20) >> 2] ? f64[(at + 8) >> 3] : null,
    quantity: quantity(i32[(at + 16) >> 2]),
  };
}

function getPlausibility(at) {
  return {
    yield_pct: f64[(at + 0) >> 3],
    doubts: list(i32[(at + 108) >> 2], 4, at + 8, 24, getDoubt),
    credibility: CREDIBILITY[i32[(at + 104) >> 2]],
  };
}

const BODY_FIELDS = new Set(["heat_capacity_j_per_k", "body_c"]);
function putBody(o, at, name) {
  record(o, BODY_FIELDS, name);
  f64[(at + 0) >> 3] = number(o.heat_capacity_j_per_k, "heat_capacity_j_per_k");
  f64[(at + 8) >> 3] = number(o.body_c, "body_c");
}

function getBody(at) {
  return {
    heat_capacity_j_per_k: f64[(at + 0) >> 3],
    body_c: f64[(at + 8) >> 3],
  };
}

const SURROUNDINGS_FIELDS = new Set(["room_c", "humidity_pct", "cover"]);
function putSurroundings(o, at, name) {
  record(o, SURROUNDINGS_FIELDS, name);
  f64[(at + 0) >> 3] = number(o.room_c, "room_c");
  f64[(at + 8) >> 3] = number(o.humidity_pct, "humidity_pct");
  i32[(at + 16) >> 2] = choice(o.cover, COVER, "cover");
}

const WISH_FIELDS = new Set(["cup_g", "strength_pct", "brew_strength_pct", "brew_c", "contact_s", "serve_c", "window", "servings", "most_batches"]);
function putWish(o, at, name) {
  record(o, WISH_FIELDS, name);
  f64[(at + 0) >> 3] = number(o.cup_g, "cup_g");
  f64[(at + 8) >> 3] = number(o.strength_pct, "strength_pct");
  if (o.brew_strength_pct != null) f64[(at + 16) >> 3] = number(o.brew_strength_pct, "brew_strength_pct");
  f64[(at + 24) >> 3] = number(o.brew_c, "brew_c");
  f64[(at + 32) >> 3] = number(o.contact_s, "contact_s");
  if (o.serve_c != null) f64[(at + 40) >> 3] = number(o.serve_c, "serve_c");
  if (o.window != null) putWindow(o.window, at + 48, "window");
  i32[(at + 88) >> 2] = integer(o.servings, "servings", "servings");
  if (o.most_batches != null) i32[(at + 92) >> 2] = integer(o.most_batches, "most_batches", "batches");
  i32[(at + 96) >> 2] = o.brew_strength_pct != null ? 1 : 0;
  i32[(at + 100) >> 2] = o.most_batches != null ? 1 : 0;
  i32[(at + 104) >> 2] = o.serve_c != null ? 1 : 0;
  i32[(at + 108) >> 2] = o.window != null ? 1 : 0;
}

const BREWER_FIELDS = new Set(["held_strength_pct", "losses", "chamber", "heat_capacity_j_per_k", "rinse_g", "cooling_per_min", "cover", "pressed", "glass"]);
function putBrewer(o, at, name) {
  record(o, BREWER_FIELDS, name);
  f64[(at + 0) >> 3] = number(o.held_strength_pct, "held_strength_pct");
  putLosses(o.losses, at + 8, "losses");
  if (o.chamber != null) putChamber(o.chamber, at + 56, "chamber");
  f64[(at + 72) >> 3] = number(o.heat_capacity_j_per_k, "heat_capacity_j_per_k");
  if (o.rinse_g != null) f64[(at + 80) >> 3] = number(o.rinse_g, "rinse_g");
  if (o.cooling_per_min != null) f64[(at + 88) >> 3] = number(o.cooling_per_min, "cooling_per_min");
  i32[(at + 96) >> 2] = o.chamber != null ? 1 : 0;
  i32[(at + 100) >> 2] = o.rinse_g != null ? 1 : 0;
  i32[(at + 104) >> 2] = o.cooling_per_min != null ? 1 : 0;
  i32[(at + 108) >> 2] = choice(o.cover, COVER, "cover");
  i32[(at + 112) >> 2] = boolean(o.pressed, "pressed");
  i32[(at + 116) >> 2] = boolean(o.glass, "glass");
}

const COFFEE_FIELDS = new Set(["yield_pct", "moisture_pct", "caffeine_mg_per_g"]);
function putCoffee(o, at, name) {
  record(o, COFFEE_FIELDS, name);
  f64[(at + 0) >> 3] = number(o.yield_pct, "yield_pct");
  f64[(at + 8) >> 3] = number(o.moisture_pct, "moisture_pct");
  if (o.caffeine_mg_per_g != null) f64[(at + 16) >> 3] = number(o.caffeine_mg_per_g, "caffeine_mg_per_g");
  i32[(at + 24) >> 2] = o.caffeine_mg_per_g != null ? 1 : 0;
}

const KITCHEN_FIELDS = new Set(["pressure_kpa", "altitude_m", "room_c", "humidity_pct", "drop_k", "second_vessel_j_per_k", "cup_j_per_k", "cup_cooling_per_min", "water_solids_mg_per_l", "added_c", "air"]);
function putKitchen(o, at, name) {
  record(o, KITCHEN_FIELDS, name);
  if (o.air === "pressure") f64[(at + 0) >> 3] = number(o.pressure_kpa, "pressure_kpa");
  if (o.air === "altitude") f64[(at + 8) >> 3] = number(o.altitude_m, "altitude_m");
  f64[(at + 16) >> 3] = number(o.room_c, "room_c");
  f64[(at + 24) >> 3] = number(o.humidity_pct, "humidity_pct");
  f64[(at + 32) >> 3] = number(o.drop_k, "drop_k");
  if (o.second_vessel_j_per_k != null) f64[(at + 40) >> 3] = number(o.second_vessel_j_per_k, "second_vessel_j_per_k");
  f64[(at + 48) >> 3] = number(o.cup_j_per_k, "cup_j_per_k");
  if (o.cup_cooling_per_min != null) f64[(at + 56) >> 3] = number(o.cup_cooling_per_min, "cup_cooling_per_min");
  f64[(at + 64) >> 3] = number(o.water_solids_mg_per_l, "water_solids_mg_per_l");
  f64[(at + 72) >> 3] = number(o.added_c, "added_c");
  i32[(at + 80) >> 2] = choice(o.air, AIR, "air");
  i32[(at + 84) >> 2] = o.second_vessel_j_per_k != null ? 1 : 0;
  i32[(at + 88) >> 2] = o.cup_cooling_per_min != null ? 1 : 0;
}

function getHeatWalk(at) {
  return {
    boiling_c: f64[(at + 0) >> 3],
    boiling_uncertainty_k: f64[(at + 8) >> 3],
    kettle_c: f64[(at + 16) >> 3],
    brewer_c: f64[(at + 24) >> 3],
    second_vessel_c: i32[(at + 80) >> 2] ? f64[(at + 32) >> 3] : null,
    brew_c: f64[(at + 40) >> 3],
    slurry_c: f64[(at + 48) >> 3],
    slurry_end_c: f64[(at + 56) >> 3],
    in_cup_c: f64[(at + 64) >> 3],
    wait_s: i32[(at + 88) >> 2] ? f64[(at + 72) >> 3] : null,
    contact_heat: CONTACT_HEAT[i32[(at + 84) >> 2]],
  };
}

function getTolerances(at) {
  return {
    dose_from_g: i32[(at + 32) >> 2] ? f64[(at + 0) >> 3] : null,
    dose_to_g: i32[(at + 36) >> 2] ? f64[(at + 8) >> 3] : null,
    water_from_g: i32[(at + 40) >> 2] ? f64[(at + 16) >> 3] : null,
    water_to_g: i32[(at + 44) >> 2] ? f64[(at + 24) >> 3] : null,
  };
}

function getRecipe(at) {
  return {
    dose_g: f64[(at + 0) >> 3],
    water_g: f64[(at + 8) >> 3],
    water_ratio_g_per_g: f64[(at + 16) >> 3],
    beverage_g: f64[(at + 24) >> 3],
    fill_ml: i32[(at + 312) >> 2] ? f64[(at + 32) >> 3] : null,
    brew_per_cup_g: f64[(at + 40) >> 3],
    added_per_cup_g: f64[(at + 48) >> 3],
    brew_strength_pct: f64[(at + 56) >> 3],
    strength_pct: f64[(at + 64) >> 3],
    yield_pct: f64[(at + 72) >> 3],
    caffeine_mg: i32[(at + 316) >> 2] ? f64[(at + 80) >> 3] : null,
    heat: getHeatWalk(at + 88),
    standing: i32[(at + 320) >> 2] ? getStanding(at + 184) : null,
    tolerances: i32[(at + 324) >> 2] ? getTolerances(at + 256) : null,
    batches: i32[(at + 304) >> 2],
    cautions: cautions(i32[(at + 308) >> 2]),
  };
}

const CHAMBER_FIELDS = new Set(["volume_ml", "displacement_ml_per_g"]);
function putChamber(o, at, name) {
  record(o, CHAMBER_FIELDS, name);
  f64[(at + 0) >> 3] = number(o.volume_ml, "volume_ml");
  f64[(at + 8) >> 3] = number(o.displacement_ml_per_g, "displacement_ml_per_g");
}

function getBatchSplit(at) {
  return {
    dose_g: f64[(at + 0) >> 3],
    water_g: f64[(at + 8) >> 3],
    fill_ml: f64[(at + 16) >> 3],
    batches: i32[(at + 24) >> 2],
  };
}

function getAmounts(at) {
  return {
    dose_g: f64[(at + 0) >> 3],
    water_g: f64[(at + 8) >> 3],
  };
}

function getCombined(at) {
  return {
    strength_pct: f64[(at + 0) >> 3],
    range_pct: f64[(at + 8) >> 3],
    critical_range_pct: i32[(at + 28) >> 2] ? f64[(at + 16) >> 3] : null,
    agreement: AGREEMENT[i32[(at + 24) >> 2]],
  };
}

const LOSSES_FIELDS = new Set(["apparent_retention_g_per_g", "hold_up_g", "paper_g", "paper_uptake_g_per_g", "drips_g", "vapour_g"]);
function putLosses(o, at, name) {
  record(o, LOSSES_FIELDS, name);
  f64[(at + 0) >> 3] = number(o.apparent_retention_g_per_g, "apparent_retention_g_per_g");
  f64[(at + 8) >> 3] = number(o.hold_up_g, "hold_up_g");
  f64[(at + 16) >> 3] = number(o.paper_g, "paper_g");
  f64[(at + 24) >> 3] = number(o.paper_uptake_g_per_g, "paper_uptake_g_per_g");
  f64[(at + 32) >> 3] = number(o.drips_g, "drips_g");
  f64[(at + 40) >> 3] = number(o.vapour_g, "vapour_g");
}

const WINDOW_FIELDS = new Set(["strength_lowest_pct", "strength_highest_pct", "yield_lowest_pct", "yield_highest_pct"]);
function putWindow(o, at, name) {
  record(o, WINDOW_FIELDS, name);
  f64[(at + 0) >> 3] = number(o.strength_lowest_pct, "strength_lowest_pct");
  f64[(at + 8) >> 3] = number(o.strength_highest_pct, "strength_highest_pct");
  if (o.yield_lowest_pct != null || o.yield_highest_pct != null) f64[(at + 16) >> 3] = number(o.yield_lowest_pct, "yield_lowest_pct");
  if (o.yield_lowest_pct != null || o.yield_highest_pct != null) f64[(at + 24) >> 3] = number(o.yield_highest_pct, "yield_highest_pct");
  i32[(at + 32) >> 2] = o.yield_lowest_pct != null || o.yield_highest_pct != null ? 1 : 0;
}

function getPlace(at) {
  return {
    above_lowest: f64[(at + 0) >> 3],
    below_highest: f64[(at + 8) >> 3],
    above_centre: f64[(at + 16) >> 3],
    side: SIDE[i32[(at + 24) >> 2]],
  };
}

function getStanding(at) {
  return {
    strength: getPlace(at + 0),
    yield: i32[(at + 64) >> 2] ? getPlace(at + 32) : null,
    is_inside: i32[(at + 68) >> 2] !== 0,
  };
}

const WATER_DENSITY_OPTIONS = new Set(["water_c"]);
const WATER_SPECIFIC_HEAT_OPTIONS = new Set(["water_c"]);
const WATER_ENTHALPY_OPTIONS = new Set(["water_c"]);
const WATER_TEMPERATURE_OF_ENTHALPY_OPTIONS = new Set(["enthalpy_j_per_g"]);
const WATER_VAPOUR_PRESSURE_OPTIONS = new Set(["water_c"]);
const WATER_BOILING_POINT_OPTIONS = new Set(["pressure_kpa"]);
const WATER_LATENT_HEAT_OPTIONS = new Set(["water_c"]);
const WATER_PRESSURE_AT_ALTITUDE_OPTIONS = new Set(["altitude_m"]);
const WATER_ALTITUDE_AT_PRESSURE_OPTIONS = new Set(["pressure_kpa"]);
export const water = Object.freeze({
  density(o) {
    record(o, WATER_DENSITY_OPTIONS, "options");
    answered(x.cupwright_water_density(number(o.water_c, "water_c"), x.base + 64, x.base + 0));
    return { density_kg_per_m3: f64[(x.base + 64) >> 3] };
  },
  specificHeat(o) {
    record(o, WATER_SPECIFIC_HEAT_OPTIONS, "options");
    answered(x.cupwright_water_specific_heat(number(o.water_c, "water_c"), x.base + 64, x.base + 0));
    return { specific_heat_j_per_g_k: f64[(x.base + 64) >> 3] };
  },
  enthalpy(o) {
    record(o, WATER_ENTHALPY_OPTIONS, "options");
    answered(x.cupwright_water_enthalpy(number(o.water_c, "water_c"), x.base + 64, x.base + 0));
    return { enthalpy_j_per_g: f64[(x.base + 64) >> 3] };
  },
  temperatureOfEnthalpy(o) {
    record(o, WATER_TEMPERATURE_OF_ENTHALPY_OPTIONS, "options");
    answered(x.cupwright_water_temperature_of_enthalpy(number(o.enthalpy_j_per_g, "enthalpy_j_per_g"), x.base + 64, x.base + 0));
    return { water_c: f64[(x.base + 64) >> 3] };
  },
  vapourPressure(o) {
    record(o, WATER_VAPOUR_PRESSURE_OPTIONS, "options");
    answered(x.cupwright_water_vapour_pressure(number(o.water_c, "water_c"), x.base + 64, x.base + 0));
    return { vapour_pressure_kpa: f64[(x.base + 64) >> 3] };
  },
  boilingPoint(o) {
    record(o, WATER_BOILING_POINT_OPTIONS, "options");
    answered(x.cupwright_water_boiling_point(number(o.pressure_kpa, "pressure_kpa"), x.base + 64, x.base + 0));
    return { water_c: f64[(x.base + 64) >> 3] };
  },
  latentHeat(o) {
    record(o, WATER_LATENT_HEAT_OPTIONS, "options");
    answered(x.cupwright_water_latent_heat(number(o.water_c, "water_c"), x.base + 64, x.base + 0));
    return { latent_heat_j_per_g: f64[(x.base + 64) >> 3] };
  },
  pressureAtAltitude(o) {
    record(o, WATER_PRESSURE_AT_ALTITUDE_OPTIONS, "options");
    answered(x.cupwright_water_pressure_at_altitude(number(o.altitude_m, "altitude_m"), x.base + 64, x.base + 0));
    return { pressure_kpa: f64[(x.base + 64) >> 3] };
  },
  altitudeAtPressure(o) {
    record(o, WATER_ALTITUDE_AT_PRESSURE_OPTIONS, "options");
    answered(x.cupwright_water_altitude_at_pressure(number(o.pressure_kpa, "pressure_kpa"), x.base + 64, x.base + 0));
    return { altitude_m: f64[(x.base + 64) >> 3] };
  },
});

const RATIO_WATER_RATIO_OPTIONS = new Set(["dose_g", "water_g"]);
const RATIO_WATER_FOR_RATIO_OPTIONS = new Set(["dose_g", "water_ratio_g_per_g"]);
const RATIO_DOSE_FOR_WATER_OPTIONS = new Set(["water_g", "water_ratio_g_per_g"]);
const RATIO_BEVERAGE_RATIO_OPTIONS = new Set(["dose_g", "beverage_g"]);
const RATIO_BEVERAGE_FOR_RATIO_OPTIONS = new Set(["dose_g", "beverage_ratio_g_per_g"]);
const RATIO_DOSE_FOR_BEVERAGE_OPTIONS = new Set(["beverage_g", "beverage_ratio_g_per_g"]);
const RATIO_DOSE_PER_LITRE_OPTIONS = new Set(["water_ratio_g_per_g", "water_c"]);
const RATIO_RATIO_OF_DOSE_PER_LITRE_OPTIONS = new Set(["dose_g_per_l", "water_c"]);
const RATIO_WATER_MASS_OPTIONS = new Set(["volume_ml", "water_c"]);
const RATIO_WATER_VOLUME_OPTIONS = new Set(["water_g", "water_c"]);
const RATIO_FOR_SERVINGS_OPTIONS = new Set(["dose_g", "water_g", "servings"]);
const RATIO_WHOLE_CUPS_OPTIONS = new Set(["beverage_g", "cup_g"]);
const RATIO_BATCHES_OPTIONS = new Set(["dose_g", "water_g", "water_c", "chamber"]);
const RATIO_LARGEST_DOSE_OPTIONS = new Set(["water_ratio_g_per_g", "water_c", "chamber"]);
export const ratio = Object.freeze({
  waterRatio(o) {
    record(o, RATIO_WATER_RATIO_OPTIONS, "options");
    answered(x.cupwright_ratio_water_ratio(number(o.dose_g, "dose_g"), number(o.water_g, "water_g"), x.base + 64, x.base + 0));
    return { water_ratio_g_per_g: f64[(x.base + 64) >> 3] };
  },
  waterForRatio(o) {
    record(o, RATIO_WATER_FOR_RATIO_OPTIONS, "options");
    answered(x.cupwright_ratio_water_for_ratio(number(o.dose_g, "dose_g"), number(o.water_ratio_g_per_g, "water_ratio_g_per_g"), x.base + 64, x.base + 0));
    return { water_g: f64[(x.base + 64) >> 3] };
  },
  doseForWater(o) {
    record(o, RATIO_DOSE_FOR_WATER_OPTIONS, "options");
    answered(x.cupwright_ratio_dose_for_water(number(o.water_g, "water_g"), number(o.water_ratio_g_per_g, "water_ratio_g_per_g"), x.base + 64, x.base + 0));
    return { dose_g: f64[(x.base + 64) >> 3] };
  },
  beverageRatio(o) {
    record(o, RATIO_BEVERAGE_RATIO_OPTIONS, "options");
    answered(x.cupwright_ratio_beverage_ratio(number(o.dose_g, "dose_g"), number(o.beverage_g, "beverage_g"), x.base + 64, x.base + 0));
    return { beverage_ratio_g_per_g: f64[(x.base + 64) >> 3] };
  },
  beverageForRatio(o) {
    record(o, RATIO_BEVERAGE_FOR_RATIO_OPTIONS, "options");
    answered(x.cupwright_ratio_beverage_for_ratio(number(o.dose_g, "dose_g"), number(o.beverage_ratio_g_per_g, "beverage_ratio_g_per_g"), x.base + 64, x.base + 0));
    return { beverage_g: f64[(x.base + 64) >> 3] };
  },
  doseForBeverage(o) {
    record(o, RATIO_DOSE_FOR_BEVERAGE_OPTIONS, "options");
    answered(x.cupwright_ratio_dose_for_beverage(number(o.beverage_g, "beverage_g"), number(o.beverage_ratio_g_per_g, "beverage_ratio_g_per_g"), x.base + 64, x.base + 0));
    return { dose_g: f64[(x.base + 64) >> 3] };
  },
  dosePerLitre(o) {
    record(o, RATIO_DOSE_PER_LITRE_OPTIONS, "options");
    answered(x.cupwright_ratio_dose_per_litre(number(o.water_ratio_g_per_g, "water_ratio_g_per_g"), number(o.water_c, "water_c"), x.base + 64, x.base + 0));
    return { dose_g_per_l: f64[(x.base + 64) >> 3] };
  },
  ratioOfDosePerLitre(o) {
    record(o, RATIO_RATIO_OF_DOSE_PER_LITRE_OPTIONS, "options");
    answered(x.cupwright_ratio_of_dose_per_litre(number(o.dose_g_per_l, "dose_g_per_l"), number(o.water_c, "water_c"), x.base + 64, x.base + 0));
    return { water_ratio_g_per_g: f64[(x.base + 64) >> 3] };
  },
  waterMass(o) {
    record(o, RATIO_WATER_MASS_OPTIONS, "options");
    answered(x.cupwright_ratio_water_mass(number(o.volume_ml, "volume_ml"), number(o.water_c, "water_c"), x.base + 64, x.base + 0));
    return { water_g: f64[(x.base + 64) >> 3] };
  },
  waterVolume(o) {
    record(o, RATIO_WATER_VOLUME_OPTIONS, "options");
    answered(x.cupwright_ratio_water_volume(number(o.water_g, "water_g"), number(o.water_c, "water_c"), x.base + 64, x.base + 0));
    return { volume_ml: f64[(x.base + 64) >> 3] };
  },
  forServings(o) {
    record(o, RATIO_FOR_SERVINGS_OPTIONS, "options");
    answered(x.cupwright_ratio_for_servings(number(o.dose_g, "dose_g"), number(o.water_g, "water_g"), integer(o.servings, "servings", "servings"), x.base + 64, x.base + 0));
    return getAmounts(x.base + 64);
  },
  wholeCups(o) {
    record(o, RATIO_WHOLE_CUPS_OPTIONS, "options");
    answered(x.cupwright_ratio_whole_cups(number(o.beverage_g, "beverage_g"), number(o.cup_g, "cup_g"), x.base + 64, x.base + 0));
    return { servings: i32[(x.base + 64) >> 2] };
  },
  batches(o) {
    record(o, RATIO_BATCHES_OPTIONS, "options");
    putChamber(o.chamber, x.base + 576, "chamber");
    answered(x.cupwright_ratio_batches(number(o.dose_g, "dose_g"), number(o.water_g, "water_g"), number(o.water_c, "water_c"), x.base + 576, x.base + 64, x.base + 0));
    return getBatchSplit(x.base + 64);
  },
  largestDose(o) {
    record(o, RATIO_LARGEST_DOSE_OPTIONS, "options");
    putChamber(o.chamber, x.base + 576, "chamber");
    answered(x.cupwright_ratio_largest_dose(number(o.water_ratio_g_per_g, "water_ratio_g_per_g"), number(o.water_c, "water_c"), x.base + 576, x.base + 64, x.base + 0));
    return { dose_g: f64[(x.base + 64) >> 3] };
  },
});

const EXTRACTION_EXTRACTION_YIELD_OPTIONS = new Set(["brew", "strength_pct"]);
const EXTRACTION_STRENGTH_OPTIONS = new Set(["brew", "yield_pct"]);
const EXTRACTION_BEVERAGE_OPTIONS = new Set(["brew", "strength_pct", "yield_pct"]);
const EXTRACTION_RETAINED_LIQUID_OPTIONS = new Set(["brew", "yield_pct"]);
const EXTRACTION_FLOW_THROUGH_YIELD_OPTIONS = new Set(["strength_pct", "beverage_g", "dose_g"]);
const EXTRACTION_FLOW_THROUGH_STRENGTH_OPTIONS = new Set(["yield_pct", "beverage_g", "dose_g"]);
const EXTRACTION_STEEPED_YIELD_OPTIONS = new Set(["strength_pct", "water_g", "dose_g"]);
const EXTRACTION_STEEPED_STRENGTH_OPTIONS = new Set(["yield_pct", "water_ratio_g_per_g"]);
const EXTRACTION_STEEPED_RATIO_OPTIONS = new Set(["yield_pct", "strength_pct"]);
const EXTRACTION_OVEN_DRIED_YIELD_OPTIONS = new Set(["yield_pct", "water_ratio_g_per_g", "true_retention_g_per_g"]);
const EXTRACTION_DRY_BASIS_YIELD_OPTIONS = new Set(["yield_pct", "moisture_pct"]);
const EXTRACTION_AS_WEIGHED_YIELD_OPTIONS = new Set(["yield_pct", "moisture_pct"]);
const EXTRACTION_YIELD_AT_TIME_OPTIONS = new Set(["kinetics", "time_s"]);
const EXTRACTION_TIME_FOR_YIELD_OPTIONS = new Set(["kinetics", "yield_pct"]);
const EXTRACTION_PLAUSIBILITY_OPTIONS = new Set(["brew", "strength_pct"]);
export const extraction = Object.freeze({
  extractionYield(o) {
    record(o, EXTRACTION_EXTRACTION_YIELD_OPTIONS, "options");
    putBrew(o.brew, x.base + 576, "brew");
    answered(x.cupwright_extraction_yield(x.base + 576, number(o.strength_pct, "strength_pct"), x.base + 64, x.base + 0));
    return { yield_pct: f64[(x.base + 64) >> 3] };
  },
  strength(o) {
    record(o, EXTRACTION_STRENGTH_OPTIONS, "options");
    putBrew(o.brew, x.base + 576, "brew");
    answered(x.cupwright_extraction_strength(x.base + 576, number(o.yield_pct, "yield_pct"), x.base + 64, x.base + 0));
    return { strength_pct: f64[(x.base + 64) >> 3] };
  },
  beverage(o) {
    record(o, EXTRACTION_BEVERAGE_OPTIONS, "options");
    putBrew(o.brew, x.base + 576, "brew");
    answered(x.cupwright_extraction_beverage(x.base + 576, number(o.strength_pct, "strength_pct"), number(o.yield_pct, "yield_pct"), x.base + 64, x.base + 0));
    return { beverage_g: f64[(x.base + 64) >> 3] };
  },
  retainedLiquid(o) {
    record(o, EXTRACTION_RETAINED_LIQUID_OPTIONS, "options");
    putBrew(o.brew, x.base + 576, "brew");
    answered(x.cupwright_extraction_retained_liquid(x.base + 576, number(o.yield_pct, "yield_pct"), x.base + 64, x.base + 0));
    return { retained_g: f64[(x.base + 64) >> 3] };
  },
  flowThroughYield(o) {
    record(o, EXTRACTION_FLOW_THROUGH_YIELD_OPTIONS, "options");
    answered(x.cupwright_extraction_flow_through_yield(number(o.strength_pct, "strength_pct"), number(o.beverage_g, "beverage_g"), number(o.dose_g, "dose_g"), x.base + 64, x.base + 0));
    return { yield_pct: f64[(x.base + 64) >> 3] };
  },
  flowThroughStrength(o) {
    record(o, EXTRACTION_FLOW_THROUGH_STRENGTH_OPTIONS, "options");
    answered(x.cupwright_extraction_flow_through_strength(number(o.yield_pct, "yield_pct"), number(o.beverage_g, "beverage_g"), number(o.dose_g, "dose_g"), x.base + 64, x.base + 0));
    return { strength_pct: f64[(x.base + 64) >> 3] };
  },
  steepedYield(o) {
    record(o, EXTRACTION_STEEPED_YIELD_OPTIONS, "options");
    answered(x.cupwright_extraction_steeped_yield(number(o.strength_pct, "strength_pct"), number(o.water_g, "water_g"), number(o.dose_g, "dose_g"), x.base + 64, x.base + 0));
    return { yield_pct: f64[(x.base + 64) >> 3] };
  },
  steepedStrength(o) {
    record(o, EXTRACTION_STEEPED_STRENGTH_OPTIONS, "options");
    answered(x.cupwright_extraction_steeped_strength(number(o.yield_pct, "yield_pct"), number(o.water_ratio_g_per_g, "water_ratio_g_per_g"), x.base + 64, x.base + 0));
    return { strength_pct: f64[(x.base + 64) >> 3] };
  },
  steepedRatio(o) {
    record(o, EXTRACTION_STEEPED_RATIO_OPTIONS, "options");
    answered(x.cupwright_extraction_steeped_ratio(number(o.yield_pct, "yield_pct"), number(o.strength_pct, "strength_pct"), x.base + 64, x.base + 0));
    return { water_ratio_g_per_g: f64[(x.base + 64) >> 3] };
  },
  ovenDriedYield(o) {
    record(o, EXTRACTION_OVEN_DRIED_YIELD_OPTIONS, "options");
    answered(x.cupwright_extraction_oven_dried_yield(number(o.yield_pct, "yield_pct"), number(o.water_ratio_g_per_g, "water_ratio_g_per_g"), number(o.true_retention_g_per_g, "true_retention_g_per_g"), x.base + 64, x.base + 0));
    return { oven_yield_pct: f64[(x.base + 64) >> 3] };
  },
  dryBasisYield(o) {
    record(o, EXTRACTION_DRY_BASIS_YIELD_OPTIONS, "options");
    answered(x.cupwright_extraction_dry_basis_yield(number(o.yield_pct, "yield_pct"), number(o.moisture_pct, "moisture_pct"), x.base + 64, x.base + 0));
    return { dry_yield_pct: f64[(x.base + 64) >> 3] };
  },
  asWeighedYield(o) {
    record(o, EXTRACTION_AS_WEIGHED_YIELD_OPTIONS, "options");
    answered(x.cupwright_extraction_as_weighed_yield(number(o.yield_pct, "yield_pct"), number(o.moisture_pct, "moisture_pct"), x.base + 64, x.base + 0));
    return { as_weighed_yield_pct: f64[(x.base + 64) >> 3] };
  },
  yieldAtTime(o) {
    record(o, EXTRACTION_YIELD_AT_TIME_OPTIONS, "options");
    putKinetics(o.kinetics, x.base + 576, "kinetics");
    answered(x.cupwright_extraction_yield_at_time(x.base + 576, number(o.time_s, "time_s"), x.base + 64, x.base + 0));
    return { yield_pct: f64[(x.base + 64) >> 3] };
  },
  timeForYield(o) {
    record(o, EXTRACTION_TIME_FOR_YIELD_OPTIONS, "options");
    putKinetics(o.kinetics, x.base + 576, "kinetics");
    answered(x.cupwright_extraction_time_for_yield(x.base + 576, number(o.yield_pct, "yield_pct"), x.base + 64, x.base + 0));
    return { time_s: f64[(x.base + 64) >> 3] };
  },
  plausibility(o) {
    record(o, EXTRACTION_PLAUSIBILITY_OPTIONS, "options");
    putBrew(o.brew, x.base + 576, "brew");
    answered(x.cupwright_extraction_plausibility(x.base + 576, number(o.strength_pct, "strength_pct"), x.base + 64, x.base + 0));
    return getPlausibility(x.base + 64);
  },
});

const RETENTION_BEVERAGE_OPTIONS = new Set(["losses", "dose_g", "water_g"]);
const RETENTION_WATER_FOR_BEVERAGE_OPTIONS = new Set(["losses", "dose_g", "beverage_g"]);
const RETENTION_DOSE_FOR_BEVERAGE_OPTIONS = new Set(["losses", "water_g", "beverage_g"]);
const RETENTION_RETENTION_OF_BREW_OPTIONS = new Set(["losses", "dose_g", "water_g", "beverage_g"]);
const RETENTION_APPARENT_RETENTION_OPTIONS = new Set(["dose_g", "water_g", "beverage_g"]);
const RETENTION_TRUE_RETENTION_OPTIONS = new Set(["apparent_retention_g_per_g", "yield_pct", "moisture_pct", "vapour_g", "dose_g"]);
const RETENTION_APPARENT_OF_TRUE_RETENTION_OPTIONS = new Set(["true_retention_g_per_g", "yield_pct", "moisture_pct", "vapour_g", "dose_g"]);
const RETENTION_RETENTION_OF_SPENT_MOISTURE_OPTIONS = new Set(["spent_moisture_pct", "yield_pct"]);
export const retention = Object.freeze({
  beverage(o) {
    record(o, RETENTION_BEVERAGE_OPTIONS, "options");
    putLosses(o.losses, x.base + 576, "losses");
    answered(x.cupwright_retention_beverage(x.base + 576, number(o.dose_g, "dose_g"), number(o.water_g, "water_g"), x.base + 64, x.base + 0));
    return { beverage_g: f64[(x.base + 64) >> 3] };
  },
  waterForBeverage(o) {
    record(o, RETENTION_WATER_FOR_BEVERAGE_OPTIONS, "options");
    putLosses(o.losses, x.base + 576, "losses");
    answered(x.cupwright_retention_water_for_beverage(x.base + 576, number(o.dose_g, "dose_g"), number(o.beverage_g, "beverage_g"), x.base + 64, x.base + 0));
    return { water_g: f64[(x.base + 64) >> 3] };
  },
  doseForBeverage(o) {
    record(o, RETENTION_DOSE_FOR_BEVERAGE_OPTIONS, "options");
    putLosses(o.losses, x.base + 576, "losses");
    answered(x.cupwright_retention_dose_for_beverage(x.base + 576, number(o.water_g, "water_g"), number(o.beverage_g, "beverage_g"), x.base + 64, x.base + 0));
    return { dose_g: f64[(x.base + 64) >> 3] };
  },
  retentionOfBrew(o) {
    record(o, RETENTION_RETENTION_OF_BREW_OPTIONS, "options");
    putLosses(o.losses, x.base + 576, "losses");
    answered(x.cupwright_retention_of_brew(x.base + 576, number(o.dose_g, "dose_g"), number(o.water_g, "water_g"), number(o.beverage_g, "beverage_g"), x.base + 64, x.base + 0));
    return { apparent_retention_g_per_g: f64[(x.base + 64) >> 3] };
  },
  apparentRetention(o) {
    record(o, RETENTION_APPARENT_RETENTION_OPTIONS, "options");
    answered(x.cupwright_retention_apparent_retention(number(o.dose_g, "dose_g"), number(o.water_g, "water_g"), number(o.beverage_g, "beverage_g"), x.base + 64, x.base + 0));
    return { apparent_retention_g_per_g: f64[(x.base + 64) >> 3] };
  },
  trueRetention(o) {
    record(o, RETENTION_TRUE_RETENTION_OPTIONS, "options");
    answered(x.cupwright_retention_true_retention(number(o.apparent_retention_g_per_g, "apparent_retention_g_per_g"), number(o.yield_pct, "yield_pct"), number(o.moisture_pct, "moisture_pct"), number(o.vapour_g, "vapour_g"), number(o.dose_g, "dose_g"), x.base + 64, x.base + 0));
    return { true_retention_g_per_g: f64[(x.base + 64) >> 3] };
  },
  apparentOfTrueRetention(o) {
    record(o, RETENTION_APPARENT_OF_TRUE_RETENTION_OPTIONS, "options");
    answered(x.cupwright_retention_apparent_of_true_retention(number(o.true_retention_g_per_g, "true_retention_g_per_g"), number(o.yield_pct, "yield_pct"), number(o.moisture_pct, "moisture_pct"), number(o.vapour_g, "vapour_g"), number(o.dose_g, "dose_g"), x.base + 64, x.base + 0));
    return { apparent_retention_g_per_g: f64[(x.base + 64) >> 3] };
  },
  retentionOfSpentMoisture(o) {
    record(o, RETENTION_RETENTION_OF_SPENT_MOISTURE_OPTIONS, "options");
    answered(x.cupwright_retention_of_spent_moisture(number(o.spent_moisture_pct, "spent_moisture_pct"), number(o.yield_pct, "yield_pct"), x.base + 64, x.base + 0));
    return { true_retention_g_per_g: f64[(x.base + 64) >> 3] };
  },
});

const DILUTION_STRENGTH_AFTER_WATER_OPTIONS = new Set(["beverage_g", "strength_pct", "added_g", "water_solids_mg_per_l"]);
const DILUTION_WATER_TO_REACH_OPTIONS = new Set(["beverage_g", "strength_pct", "wanted_pct", "water_solids_mg_per_l"]);
const DILUTION_DRINK_OF_BREW_OPTIONS = new Set(["beverage_g", "strength_pct", "wanted_pct", "water_solids_mg_per_l"]);
const DILUTION_BREW_FOR_DRINK_OPTIONS = new Set(["cup_g", "strength_pct", "wanted_pct", "water_solids_mg_per_l"]);
const DILUTION_SPLIT_OPTIONS = new Set(["beverage_g", "strength_pct", "servings", "cup_g", "wanted_pct", "water_solids_mg_per_l"]);
const DILUTION_WITH_MILK_OPTIONS = new Set(["beverage_g", "strength_pct", "added_g", "milk_solids_pct"]);
const DILUTION_MIXED_TEMPERATURE_OPTIONS = new Set(["hot_g", "hot_c", "cold_g", "cold_c"]);
const DILUTION_MIXED_WITH_MILK_TEMPERATURE_OPTIONS = new Set(["hot_g", "hot_c", "cold_g", "cold_c"]);
const DILUTION_ICED_OPTIONS = new Set(["beverage_g", "water_c", "strength_pct", "ice_g", "ice_c"]);
const DILUTION_ICE_TO_REACH_OPTIONS = new Set(["beverage_g", "water_c", "wanted_c", "ice_c"]);
export const dilution = Object.freeze({
  strengthAfterWater(o) {
    record(o, DILUTION_STRENGTH_AFTER_WATER_OPTIONS, "options");
    answered(x.cupwright_dilution_strength_after_water(number(o.beverage_g, "beverage_g"), number(o.strength_pct, "strength_pct"), number(o.added_g, "added_g"), number(o.water_solids_mg_per_l, "water_solids_mg_per_l"), x.base + 64, x.base + 0));
    return { after_pct: f64[(x.base + 64) >> 3] };
  },
  waterToReach(o) {
    record(o, DILUTION_WATER_TO_REACH_OPTIONS, "options");
    answered(x.cupwright_dilution_water_to_reach(number(o.beverage_g, "beverage_g"), number(o.strength_pct, "strength_pct"), number(o.wanted_pct, "wanted_pct"), number(o.water_solids_mg_per_l, "water_solids_mg_per_l"), x.base + 64, x.base + 0));
    return { added_g: f64[(x.base + 64) >> 3] };
  },
  drinkOfBrew(o) {
    record(o, DILUTION_DRINK_OF_BREW_OPTIONS, "options");
    answered(x.cupwright_dilution_drink_of_brew(number(o.beverage_g, "beverage_g"), number(o.strength_pct, "strength_pct"), number(o.wanted_pct, "wanted_pct"), number(o.water_solids_mg_per_l, "water_solids_mg_per_l"), x.base + 64, x.base + 0));
    return { cup_g: f64[(x.base + 64) >> 3] };
  },
  brewForDrink(o) {
    record(o, DILUTION_BREW_FOR_DRINK_OPTIONS, "options");
    answered(x.cupwright_dilution_brew_for_drink(number(o.cup_g, "cup_g"), number(o.strength_pct, "strength_pct"), number(o.wanted_pct, "wanted_pct"), number(o.water_solids_mg_per_l, "water_solids_mg_per_l"), x.base + 64, x.base + 0));
    return { beverage_g: f64[(x.base + 64) >> 3] };
  },
  split(o) {
    record(o, DILUTION_SPLIT_OPTIONS, "options");
    answered(x.cupwright_dilution_split(number(o.beverage_g, "beverage_g"), number(o.strength_pct, "strength_pct"), integer(o.servings, "servings", "servings"), number(o.cup_g, "cup_g"), number(o.wanted_pct, "wanted_pct"), number(o.water_solids_mg_per_l, "water_solids_mg_per_l"), x.base + 64, x.base + 0));
    return getCupSplit(x.base + 64);
  },
  withMilk(o) {
    record(o, DILUTION_WITH_MILK_OPTIONS, "options");
    answered(x.cupwright_dilution_with_milk(number(o.beverage_g, "beverage_g"), number(o.strength_pct, "strength_pct"), number(o.added_g, "added_g"), number(o.milk_solids_pct, "milk_solids_pct"), x.base + 64, x.base + 0));
    return getMilkDrink(x.base + 64);
  },
  mixedTemperature(o) {
    record(o, DILUTION_MIXED_TEMPERATURE_OPTIONS, "options");
    answered(x.cupwright_dilution_mixed_temperature(number(o.hot_g, "hot_g"), number(o.hot_c, "hot_c"), number(o.cold_g, "cold_g"), number(o.cold_c, "cold_c"), x.base + 64, x.base + 0));
    return { water_c: f64[(x.base + 64) >> 3] };
  },
  mixedWithMilkTemperature(o) {
    record(o, DILUTION_MIXED_WITH_MILK_TEMPERATURE_OPTIONS, "options");
    answered(x.cupwright_dilution_mixed_with_milk_temperature(number(o.hot_g, "hot_g"), number(o.hot_c, "hot_c"), number(o.cold_g, "cold_g"), number(o.cold_c, "cold_c"), x.base + 64, x.base + 0));
    return { water_c: f64[(x.base + 64) >> 3] };
  },
  iced(o) {
    record(o, DILUTION_ICED_OPTIONS, "options");
    answered(x.cupwright_dilution_iced(number(o.beverage_g, "beverage_g"), number(o.water_c, "water_c"), number(o.strength_pct, "strength_pct"), number(o.ice_g, "ice_g"), number(o.ice_c, "ice_c"), x.base + 64, x.base + 0));
    return getIced(x.base + 64);
  },
  iceToReach(o) {
    record(o, DILUTION_ICE_TO_REACH_OPTIONS, "options");
    answered(x.cupwright_dilution_ice_to_reach(number(o.beverage_g, "beverage_g"), number(o.water_c, "water_c"), number(o.wanted_c, "wanted_c"), number(o.ice_c, "ice_c"), x.base + 64, x.base + 0));
    return { ice_g: f64[(x.base + 64) >> 3] };
  },
});

const HEAT_GROUNDS_OPTIONS = new Set(["dose_g", "grounds_c"]);
const HEAT_HEAT_CAPACITY_OPTIONS = new Set(["vessel_g", "specific_heat_j_per_g_k", "share_pct"]);
const HEAT_SETTLE_OPTIONS = new Set(["water_g", "water_c", "bodies"]);
const HEAT_BEFORE_SETTLING_OPTIONS = new Set(["water_g", "settled_c", "bodies"]);
const HEAT_PREHEATED_OPTIONS = new Set(["vessel", "water_g", "water_c"]);
const HEAT_VESSEL_HEAT_CAPACITY_OPTIONS = new Set(["water_g", "water_c", "settled_c", "vessel_c", "others"]);
const HEAT_AFTER_VAPOUR_OPTIONS = new Set(["water_g", "water_c", "vapour_g", "capacity_j_per_k"]);
const HEAT_AFTER_POUR_OPTIONS = new Set(["water_c", "drop_k"]);
const HEAT_BEFORE_POUR_OPTIONS = new Set(["water_c", "drop_k"]);
const HEAT_REACHABLE_OPTIONS = new Set(["water_c", "boiling_c"]);
const HEAT_TIME_TO_COOL_OPTIONS = new Set(["water_c", "to_c", "cooling_per_min", "surroundings"]);
const HEAT_COOLING_RATE_OPTIONS = new Set(["water_c", "to_c", "time_s", "surroundings"]);
const HEAT_TEMPERATURE_AFTER_OPTIONS = new Set(["water_c", "time_s", "cooling_per_min", "surroundings"]);
const HEAT_OPEN_CUP_RATE_ESTIMATE_OPTIONS = new Set(["water_g", "heat_capacity_j_per_k", "diameter_mm"]);
export const heat = Object.freeze({
  grounds(o) {
    record(o, HEAT_GROUNDS_OPTIONS, "options");
    answered(x.cupwright_heat_grounds(number(o.dose_g, "dose_g"), number(o.grounds_c, "grounds_c"), x.base + 64, x.base + 0));
    return getBody(x.base + 64);
  },
  heatCapacity(o) {
    record(o, HEAT_HEAT_CAPACITY_OPTIONS, "options");
    answered(x.cupwright_heat_capacity(number(o.vessel_g, "vessel_g"), number(o.specific_heat_j_per_g_k, "specific_heat_j_per_g_k"), number(o.share_pct, "share_pct"), x.base + 64, x.base + 0));
    return { heat_capacity_j_per_k: f64[(x.base + 64) >> 3] };
  },
  settle(o) {
    record(o, HEAT_SETTLE_OPTIONS, "options");
    const count = items(o.bodies, "bodies", 576, 16, putBody);
    answered(x.cupwright_heat_settle(number(o.water_g, "water_g"), number(o.water_c, "water_c"), x.base + 576, count, x.base + 64, x.base + 0));
    return { settled_c: f64[(x.base + 64) >> 3] };
  },
  beforeSettling(o) {
    record(o, HEAT_BEFORE_SETTLING_OPTIONS, "options");
    const count = items(o.bodies, "bodies", 576, 16, putBody);
    answered(x.cupwright_heat_before_settling(number(o.water_g, "water_g"), number(o.settled_c, "settled_c"), x.base + 576, count, x.base + 64, x.base + 0));
    return { water_c: f64[(x.base + 64) >> 3] };
  },
  preheated(o) {
    record(o, HEAT_PREHEATED_OPTIONS, "options");
    putBody(o.vessel, x.base + 576, "vessel");
    answered(x.cupwright_heat_preheated(x.base + 576, number(o.water_g, "water_g"), number(o.water_c, "water_c"), x.base + 64, x.base + 0));
    return getBody(x.base + 64);
  },
  vesselHeatCapacity(o) {
    record(o, HEAT_VESSEL_HEAT_CAPACITY_OPTIONS, "options");
    const count = items(o.others, "others", 576, 16, putBody);
    answered(x.cupwright_heat_vessel_heat_capacity(number(o.water_g, "water_g"), number(o.water_c, "water_c"), number(o.settled_c, "settled_c"), number(o.vessel_c, "vessel_c"), x.base + 576, count, x.base + 64, x.base + 0));
    return { heat_capacity_j_per_k: f64[(x.base + 64) >> 3] };
  },
  afterVapour(o) {
    record(o, HEAT_AFTER_VAPOUR_OPTIONS, "options");
    answered(x.cupwright_heat_after_vapour(number(o.water_g, "water_g"), number(o.water_c, "water_c"), number(o.vapour_g, "vapour_g"), number(o.capacity_j_per_k, "capacity_j_per_k"), x.base + 64, x.base + 0));
    return { after_c: f64[(x.base + 64) >> 3] };
  },
  afterPour(o) {
    record(o, HEAT_AFTER_POUR_OPTIONS, "options");
    answered(x.cupwright_heat_after_pour(number(o.water_c, "water_c"), number(o.drop_k, "drop_k"), x.base + 64, x.base + 0));
    return { after_c: f64[(x.base + 64) >> 3] };
  },
  beforePour(o) {
    record(o, HEAT_BEFORE_POUR_OPTIONS, "options");
    answered(x.cupwright_heat_before_pour(number(o.water_c, "water_c"), number(o.drop_k, "drop_k"), x.base + 64, x.base + 0));
    return { before_c: f64[(x.base + 64) >> 3] };
  },
  reachable(o) {
    record(o, HEAT_REACHABLE_OPTIONS, "options");
    answered(x.cupwright_heat_reachable(number(o.water_c, "water_c"), number(o.boiling_c, "boiling_c"), x.base + 64, x.base + 0));
    return { reachable_c: f64[(x.base + 64) >> 3] };
  },
  timeToCool(o) {
    record(o, HEAT_TIME_TO_COOL_OPTIONS, "options");
    putSurroundings(o.surroundings, x.base + 576, "surroundings");
    answered(x.cupwright_heat_time_to_cool(number(o.water_c, "water_c"), number(o.to_c, "to_c"), number(o.cooling_per_min, "cooling_per_min"), x.base + 576, x.base + 64, x.base + 0));
    return { time_s: f64[(x.base + 64) >> 3] };
  },
  coolingRate(o) {
    record(o, HEAT_COOLING_RATE_OPTIONS, "options");
    putSurroundings(o.surroundings, x.base + 576, "surroundings");
    answered(x.cupwright_heat_cooling_rate(number(o.water_c, "water_c"), number(o.to_c, "to_c"), number(o.time_s, "time_s"), x.base + 576, x.base + 64, x.base + 0));
    return { cooling_per_min: f64[(x.base + 64) >> 3] };
  },
  temperatureAfter(o) {
    record(o, HEAT_TEMPERATURE_AFTER_OPTIONS, "options");
    putSurroundings(o.surroundings, x.base + 576, "surroundings");
    answered(x.cupwright_heat_temperature_after(number(o.water_c, "water_c"), number(o.time_s, "time_s"), number(o.cooling_per_min, "cooling_per_min"), x.base + 576, x.base + 64, x.base + 0));
    return { after_c: f64[(x.base + 64) >> 3] };
  },
  openCupRateEstimate(o) {
    record(o, HEAT_OPEN_CUP_RATE_ESTIMATE_OPTIONS, "options");
    answered(x.cupwright_heat_open_cup_rate_estimate(number(o.water_g, "water_g"), number(o.heat_capacity_j_per_k, "heat_capacity_j_per_k"), number(o.diameter_mm, "diameter_mm"), x.base + 64, x.base + 0));
    return { cooling_per_min: f64[(x.base + 64) >> 3] };
  },
});

const READING_COMBINE_OPTIONS = new Set(["strength_pct", "repeatability_pct"]);
const READING_REPEATABILITY_OPTIONS = new Set(["strength_pct"]);
const READING_CRITICAL_RANGE_OPTIONS = new Set(["readings", "repeatability_pct"]);
const READING_TOTAL_STRENGTH_OPTIONS = new Set(["strength_pct", "zero", "water_solids_mg_per_l"]);
const READING_COFFEE_STRENGTH_OPTIONS = new Set(["strength_pct", "zero", "water_solids_mg_per_l"]);
const READING_BRIX_OF_INDEX_OPTIONS = new Set(["refractive_index"]);
const READING_INDEX_OF_BRIX_OPTIONS = new Set(["brix"]);
const READING_BRIX_AT20_OPTIONS = new Set(["brix", "sample_c"]);
const READING_STRENGTH_OF_BRIX_OPTIONS = new Set(["brix", "refractive_factor_pct_per_brix"]);
const READING_BRIX_OF_STRENGTH_OPTIONS = new Set(["strength_pct", "refractive_factor_pct_per_brix"]);
const READING_STRENGTH_OF_INDEX_OPTIONS = new Set(["refractive_index", "sample_c", "refractive_factor_pct_per_brix"]);
export const reading = Object.freeze({
  combine(o) {
    record(o, READING_COMBINE_OPTIONS, "options");
    const count = numbers(o.strength_pct, "strength_pct", 576);
    answered(x.cupwright_reading_combine(x.base + 576, count, number(o.repeatability_pct, "repeatability_pct"), x.base + 64, x.base + 0));
    return getCombined(x.base + 64);
  },
  repeatability(o) {
    record(o, READING_REPEATABILITY_OPTIONS, "options");
    const count = numbers(o.strength_pct, "strength_pct", 576);
    answered(x.cupwright_reading_repeatability(x.base + 576, count, x.base + 64, x.base + 0));
    return { repeatability_pct: f64[(x.base + 64) >> 3] };
  },
  criticalRange(o) {
    record(o, READING_CRITICAL_RANGE_OPTIONS, "options");
    answered(x.cupwright_reading_critical_range(integer(o.readings, "readings", "reading_count"), number(o.repeatability_pct, "repeatability_pct"), x.base + 64, x.base + 0));
    return { critical_range_pct: f64[(x.base + 64) >> 3] };
  },
  totalStrength(o) {
    record(o, READING_TOTAL_STRENGTH_OPTIONS, "options");
    answered(x.cupwright_reading_total_strength(number(o.strength_pct, "strength_pct"), choice(o.zero, ZERO, "zero"), number(o.water_solids_mg_per_l, "water_solids_mg_per_l"), x.base + 64, x.base + 0));
    return { total_pct: f64[(x.base + 64) >> 3] };
  },
  coffeeStrength(o) {
    record(o, READING_COFFEE_STRENGTH_OPTIONS, "options");
    answered(x.cupwright_reading_coffee_strength(number(o.strength_pct, "strength_pct"), choice(o.zero, ZERO, "zero"), number(o.water_solids_mg_per_l, "water_solids_mg_per_l"), x.base + 64, x.base + 0));
    return { coffee_pct: f64[(x.base + 64) >> 3] };
  },
  brixOfIndex(o) {
    record(o, READING_BRIX_OF_INDEX_OPTIONS, "options");
    answered(x.cupwright_reading_brix_of_index(number(o.refractive_index, "refractive_index"), x.base + 64, x.base + 0));
    return { brix: f64[(x.base + 64) >> 3] };
  },
  indexOfBrix(o) {
    record(o, READING_INDEX_OF_BRIX_OPTIONS, "options");
    answered(x.cupwright_reading_index_of_brix(number(o.brix, "brix"), x.base + 64, x.base + 0));
    return { refractive_index: f64[(x.base + 64) >> 3] };
  },
  brixAt20(o) {
    record(o, READING_BRIX_AT20_OPTIONS, "options");
    answered(x.cupwright_reading_brix_at_20(number(o.brix, "brix"), number(o.sample_c, "sample_c"), x.base + 64, x.base + 0));
    return { corrected_brix: f64[(x.base + 64) >> 3] };
  },
  strengthOfBrix(o) {
    record(o, READING_STRENGTH_OF_BRIX_OPTIONS, "options");
    answered(x.cupwright_reading_strength_of_brix(number(o.brix, "brix"), number(o.refractive_factor_pct_per_brix, "refractive_factor_pct_per_brix"), x.base + 64, x.base + 0));
    return { strength_pct: f64[(x.base + 64) >> 3] };
  },
  brixOfStrength(o) {
    record(o, READING_BRIX_OF_STRENGTH_OPTIONS, "options");
    answered(x.cupwright_reading_brix_of_strength(number(o.strength_pct, "strength_pct"), number(o.refractive_factor_pct_per_brix, "refractive_factor_pct_per_brix"), x.base + 64, x.base + 0));
    return { brix: f64[(x.base + 64) >> 3] };
  },
  strengthOfIndex(o) {
    record(o, READING_STRENGTH_OF_INDEX_OPTIONS, "options");
    answered(x.cupwright_reading_strength_of_index(number(o.refractive_index, "refractive_index"), number(o.sample_c, "sample_c"), number(o.refractive_factor_pct_per_brix, "refractive_factor_pct_per_brix"), x.base + 64, x.base + 0));
    return { strength_pct: f64[(x.base + 64) >> 3] };
  },
});

const VERDICT_STAND_OPTIONS = new Set(["window", "strength_pct", "yield_pct"]);
export const verdict = Object.freeze({
  stand(o) {
    record(o, VERDICT_STAND_OPTIONS, "options");
    putWindow(o.window, x.base + 576, "window");
    answered(x.cupwright_verdict_stand(x.base + 576, number(o.strength_pct, "strength_pct"), number(o.yield_pct, "yield_pct"), x.base + 64, x.base + 0));
    return getStanding(x.base + 64);
  },
});

const CAUTION_OF_OPTIONS = new Set(["hazards"]);
const CAUTION_TIME_TO_BURN_OPTIONS = new Set(["water_c"]);
const CAUTION_CAFFEINE_OPTIONS = new Set(["dose_g", "caffeine_mg_per_g", "share_pct"]);
export const caution = Object.freeze({
  of(o) {
    record(o, CAUTION_OF_OPTIONS, "options");
    putHazards(o.hazards, x.base + 576, "hazards");
    answered(x.cupwright_caution_of(x.base + 576, x.base + 64, x.base + 0));
    return { cautions: cautions(i32[(x.base + 64) >> 2]) };
  },
  timeToBurn(o) {
    record(o, CAUTION_TIME_TO_BURN_OPTIONS, "options");
    answered(x.cupwright_caution_time_to_burn(number(o.water_c, "water_c"), x.base + 64, x.base + 0));
    return getTimeToBurn(x.base + 64);
  },
  caffeine(o) {
    record(o, CAUTION_CAFFEINE_OPTIONS, "options");
    answered(x.cupwright_caution_caffeine(number(o.dose_g, "dose_g"), number(o.caffeine_mg_per_g, "caffeine_mg_per_g"), number(o.share_pct, "share_pct"), x.base + 64, x.base + 0));
    return { caffeine_mg: f64[(x.base + 64) >> 3] };
  },
});

const PLAN_RECIPE_OPTIONS = new Set(["wish", "brewer", "coffee", "kitchen"]);
export const plan = Object.freeze({
  recipe(o) {
    record(o, PLAN_RECIPE_OPTIONS, "options");
    putWish(o.wish, x.base + 576, "wish");
    putBrewer(o.brewer, x.base + 688, "brewer");
    putCoffee(o.coffee, x.base + 808, "coffee");
    putKitchen(o.kitchen, x.base + 840, "kitchen");
    answered(x.cupwright_plan_recipe(x.base + 576, x.base + 688, x.base + 808, x.base + 840, x.base + 64, x.base + 0));
    return getRecipe(x.base + 64);
  },
});
