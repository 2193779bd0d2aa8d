// Every input of the page. The order here is the order on the page, in a link and in the notebook.

import { limits } from "../cupwright/src/slim.js";

/** The longest text that a field takes. */
export const MOST_TEXT = 500;
/** The most readings that the package combines. */
export const MOST_READINGS = limits.reading_count.max;
// More than anybody types. What is more than the package combines is kept for it to refuse.
const LONGEST_LIST = 100;

const number = (section, key, quantity, more) => ({ section, key, kind: "number", quantity, ...more });
const choice = (section, key, options, more) => ({ section, key, kind: "choice", options, ...more });
const flag = (section, key, more) => ({ section, key, kind: "flag", ...more });
const text = (section, key, more) => ({ section, key, kind: "text", ...more });

const optional = { optional: true };
const whenAdding = { when: (all) => all.wish.add_water };
const whenOwnWindow = { when: (all) => all.wish.window === "own" };
const whenChambered = { when: (all) => all.brewer.has_chamber };

export const FIELDS = [
  number("wish", "cup_g", "beverage", { step: { metric: 10, other: 0.5 } }),
  number("wish", "strength_pct", "strength", { step: { metric: 0.05, other: 0.05 } }),
  number("wish", "servings", "servings", { step: { metric: 1, other: 1 } }),
  flag("wish", "add_water"),
  number("wish", "brew_strength_pct", "strength", whenAdding),
  choice("wish", "window", ["golden_cup_2015", "home_brewer_2018", "own", "none"]),
  number("wish", "strength_lowest_pct", "strength", whenOwnWindow),
  number("wish", "strength_highest_pct", "strength", whenOwnWindow),
  number("wish", "yield_lowest_pct", "yield", { ...whenOwnWindow, ...optional }),
  number("wish", "yield_highest_pct", "yield", { ...whenOwnWindow, ...optional }),
  number("wish", "serve_c", "temperature", optional),
  number("wish", "most_batches", "batches", optional),

  text("brewer", "name"),
  number("brewer", "brew_c", "temperature"),
  number("brewer", "contact_s", "time"),
  number("brewer", "held_strength_pct", "held_strength"),
  number("brewer", "apparent_retention_g_per_g", "apparent_retention"),
  number("brewer", "hold_up_g", "hold_up"),
  number("brewer", "paper_g", "paper_mass"),
  number("brewer", "paper_uptake_g_per_g", "paper_uptake"),
  number("brewer", "drips_g", "drips"),
  number("brewer", "vapour_g", "vapour"),
  flag("brewer", "has_chamber"),
  number("brewer", "volume_ml", "volume", whenChambered),
  number("brewer", "displacement_ml_per_g", "displacement", whenChambered),
  number("brewer", "heat_capacity_j_per_k", "heat_capacity"),
  number("brewer", "rinse_g", "liquid", optional),
  number("brewer", "cooling_per_min", "cooling_rate", optional),
  choice("brewer", "cover", ["lidded", "open"]),
  flag("brewer", "pressed"),
  flag("brewer", "glass"),

  text("coffee", "name"),
  number("coffee", "yield_pct", "yield"),
  number("coffee", "moisture_pct", "moisture"),
  number("coffee", "caffeine_mg_per_g", "caffeine_content", optional),

  text("kitchen", "name"),
  choice("kitchen", "air", ["altitude", "pressure"]),
  number("kitchen", "altitude_m", "altitude", { when: (all) => all.kitchen.air === "altitude" }),
  number("kitchen", "pressure_kpa", "pressure", { when: (all) => all.kitchen.air === "pressure" }),
  number("kitchen", "room_c", "room_temperature"),
  number("kitchen", "humidity_pct", "humidity"),
  number("kitchen", "drop_k", "temperature_drop"),
  number("kitchen", "second_vessel_j_per_k", "heat_capacity", optional),
  number("kitchen", "cup_j_per_k", "heat_capacity"),
  number("kitchen", "cup_cooling_per_min", "cooling_rate", optional),
  number("kitchen", "water_solids_mg_per_l", "water_solids"),
  number("kitchen", "added_c", "temperature", whenAdding),

  choice("instrument", "reads", ["strength", "brix"]),
  number("instrument", "refractive_factor_pct_per_brix", "refractive_factor", {
    when: (all) => all.instrument.reads === "brix",
  }),
  choice("instrument", "zero", ["distilled", "brew_water"]),
  number("instrument", "repeatability_pct", "repeatability"),
  number("instrument", "limit_pct", "strength_uncertainty"),
  number("instrument", "factor_doubt_pct", "factor_uncertainty"),
  number("instrument", "scale_limit_g", "mass_uncertainty"),

  number("hand", "dose_g", "mass_uncertainty"),
  number("hand", "water_g", "mass_uncertainty"),
  number("hand", "yield_pct", "yield_uncertainty"),
  number("hand", "retention_g_per_g", "retention_uncertainty"),
  number("hand", "losses_g", "mass_uncertainty"),

  number("scale", "division_g", "division"),
  number("scale", "capacity_g", "capacity"),
  number("scale", "fastest_g_per_s", "fastest_pour"),
  number("scale", "vessel_g", "vessel_mass"),

  number("brew", "dose_g", "dose"),
  number("brew", "water_g", "brew_water"),
  number("brew", "beverage_g", "beverage"),
  { section: "brew", key: "readings", kind: "list" },
  text("brew", "note", optional),
].map((field) => ({ ...field, id: `${field.section}.${field.key}` }));

/** Sections of which a café has several, kept on a shelf and chosen by name. */
export const SHELVED = ["brewer", "coffee", "kitchen"];

/** What a link carries: all that a recipe depends on. */
export const SHARED = ["wish", ...SHELVED];

/** What a plan and its chance depend on. */
export const PLANNED = [...SHARED, "hand"];

export const fieldsOf = (...sections) => FIELDS.filter((field) => sections.includes(field.section));

export const fieldOf = (id) => FIELDS.find((field) => field.id === id);

/** What a quantity's readings are, which depends on the instrument. */
export const quantityOf = (field, all) =>
  field.kind === "list" ? (all.instrument.reads === "brix" ? "brix" : "strength") : field.quantity;

/** Whether a value is text that a field takes. */
export const isText = (value) => typeof value === "string" && value.length <= MOST_TEXT;
const isTyped = (value) => isText(value) || (typeof value === "number" && Number.isFinite(value));

/** Whether a field can hold a value. What was typed and is no number stays text, for the package to refuse. */
export function canHold({ kind, options }, value) {
  switch (kind) {
    case "number":
      return value === null || isTyped(value);
    case "flag":
      return typeof value === "boolean";
    case "choice":
      return options.includes(value);
    case "list":
      return Array.isArray(value) && value.length <= LONGEST_LIST && value.every(isTyped);
    default:
      return isText(value);
  }
}
