// Made by `cargo xtask face`. Do not edit.

export { columns } from "./columns.js";
export { live } from "./live.js";

/** Key of a quantity. */
export type QuantityKey = "dose" | "brew_water" | "beverage" | "addition" | "ice" | "liquid" | "retained" | "vapour" | "hold_up" | "drips" | "paper_mass" | "paper_uptake" | "apparent_retention" | "true_retention" | "volume" | "displacement" | "water_ratio" | "beverage_ratio" | "dose_per_litre" | "strength" | "yield" | "moisture" | "water_solids" | "held_strength" | "share" | "time" | "time_constant" | "temperature" | "room_temperature" | "vessel_temperature" | "ice_temperature" | "temperature_drop" | "pressure" | "vapour_pressure" | "altitude" | "density" | "specific_heat" | "enthalpy" | "latent_heat" | "heat_capacity" | "vessel_mass" | "cooling_rate" | "humidity" | "diameter" | "brix" | "refractive_index" | "refractive_factor" | "sample_temperature" | "repeatability" | "milk_solids" | "caffeine_content" | "caffeine" | "spent_moisture" | "servings" | "batches" | "reading_count" | "rest" | "body_count" | "mass_uncertainty" | "strength_uncertainty" | "yield_uncertainty" | "share_uncertainty" | "temperature_uncertainty" | "water_solids_uncertainty" | "retention_uncertainty" | "span_uncertainty" | "factor_uncertainty" | "measurand" | "standard_uncertainty" | "sensitivity" | "degrees_of_freedom" | "doubt" | "confidence" | "probability" | "coverage_factor" | "correlation" | "term_count" | "repeat_count" | "measurements" | "fitted_hold_up" | "cup_number" | "heat_capacity_uncertainty" | "cooling_rate_uncertainty" | "time_constant_uncertainty" | "brix_uncertainty" | "time_uncertainty" | "clock" | "scale_reading" | "division" | "capacity" | "fastest_pour" | "flow" | "poured" | "change" | "unclear" | "lead" | "flow_variation" | "level" | "step_count";

/** A row of the table of quantities. */
export interface Quantity {
  /** Lasting code. */
  code: number;
  /** Name in plain words. */
  name: string;
  /** Unit as written after a number; empty for a plain count. */
  unit: string;
  /** Usual name of a field that holds it. */
  field: string;
  /** Lowest value accepted. */
  min: number;
  /** Highest value accepted. */
  max: number;
  /** How many decimals a person wants to see. */
  decimals: number;
  /** Whether only whole numbers are accepted. */
  whole: boolean;
  /** What it is, in a sentence. */
  meaning: string;
  /** Where its range comes from. */
  source: string;
}

/** Every quantity by its key: for forms, messages and glossaries. */
export const limits: Readonly<Record<QuantityKey, Quantity>>;

/** What can stand in the way of a wish. */
export type Limit = "adding_water_weakens" | "no_water_is_enough" | "boiling_point" | "chamber" | "coffee_gives_no_more" | "brew_on_hand" | "heat_left" | "surroundings" | "ice_and_heat" | "equilibrium_yield";
export const limitTexts: Readonly<Record<Limit, string>>;

/** Why measurements cannot tell. */
export type Untold = "too_few" | "one_dose" | "no_span" | "still_rising" | "levelled_off" | "one_rate" | "falling" | "not_cooling";
export const untoldTexts: Readonly<Record<Untold, string>>;
/** What is wanting then: what the value of a refusal counts. */
export const wantingTexts: Readonly<Record<Untold, string>>;

/** What can hurt. */
export type Caution = "scald" | "very_hot_drink" | "pressing" | "glass_shock" | "caffeine" | "milk" | "ice";
/** Cautions in plain words. They defer to local codes, the equipment's instructions and licensed practice. */
export const cautionTexts: Readonly<Record<Caution, string>>;

/** What goes on on a scale, what happens there, steps of a recipe, what to do, and why, in plain words. */
export const doingTexts: Readonly<Record<Doing, string>>;
export const happeningTexts: Readonly<Record<Happening, string>>;
export const stepTexts: Readonly<Record<Step, string>>;
export const cueTexts: Readonly<Record<Cue, string>>;
export const whyTexts: Readonly<Record<Why, string>>;

/** Constants with their sources. */
export const constants: Readonly<Record<"SUSPICIOUS_CHANCE" | "ALTITUDE_ONLY_UNCERTAINTY_K" | "EQUILIBRIUM_YIELD_PCT" | "SOLUBLE_LIMIT_LOW_PCT" | "SOLUBLE_LIMIT_HIGH_PCT" | "NEAR_LIMIT_POINTS" | "GROUNDS_J_PER_G_K" | "MILK_J_PER_G_K" | "THIN_STREAM_DROP_K" | "DUMP_DROP_K" | "OPEN_CUP_K_PER_KPA" | "OPEN_CUP_W_PER_M2_KPA" | "USUAL_REFRACTIVE_FACTOR_PCT_PER_BRIX" | "VERY_HOT_DRINK_C" | "SCALDING_C" | "SINGLE_DOSE_CAFFEINE_MG" | "DAILY_CAFFEINE_MG" | "BOROSILICATE_GLASS_J_PER_G_K" | "SODA_LIME_GLASS_J_PER_G_K" | "PORCELAIN_OR_STONEWARE_J_PER_G_K" | "STAINLESS_STEEL_J_PER_G_K" | "ALUMINIUM_J_PER_G_K" | "POLYPROPYLENE_J_PER_G_K" | "POLYCARBONATE_J_PER_G_K" | "COPOLYESTER_J_PER_G_K" | "SILICONE_RUBBER_J_PER_G_K" | "DRY_FILTER_PAPER_J_PER_G_K", { value: number; about: string }>>;

/** Published windows with their sources. A window is somebody's taste put in numbers. */
export const windows: Readonly<Record<"golden_cup_2015" | "home_brewer_2018", { window: Window; source: string }>>;

/** What went wrong. The first four never reach the formulas. */
export type RefusalCode =
  | "missing"
  | "wrong_type"
  | "unknown_field"
  | "unknown_choice"
  | "out_of_range"
  | "not_whole"
  | "impossible"
  | "empty_band"
  | "result_out_of_range"
  | "infeasible"
  | "cannot_tell"
  | "unreadable"
  | "not_begun"
  | "not_kept";

/** Why bytes are no profile. */
export type Unreadable = "length" | "foreign" | "version" | "damaged" | "not_blank" | "unsound";

/** Why a function has no answer, in words and in facts. */
export class Refusal extends RangeError {
  readonly code: RefusalCode;
  /** The input to blame, or null. */
  readonly field: string | null;
  /** Which item of a list, counted from 0; null where it is in none, or cannot be told. */
  readonly item: number | null;
  /** The value given or computed; how much there is of what is wanting, where measurements cannot tell; or null. */
  readonly value: unknown;
  /** The lowest value that is accepted or possible; how much is needed for a start, where measurements cannot tell; or null. */
  readonly min: number | null;
  /** The highest, or null. */
  readonly max: number | null;
  /** What the value is, or null. */
  readonly quantity: QuantityKey | null;
  /** The nearest value that can be had, for a wish that cannot be met, or null. */
  readonly nearest: number | null;
  /** What stands in the way of a wish, or null. */
  readonly limit: Limit | null;
  /** Why measurements cannot tell, or bytes are no profile, or null. */
  readonly why: Untold | Unreadable | null;
  /** The quantity that a value does not go with, or null. */
  readonly beside: QuantityKey | null;
}


export type Change = "drink_as_it_is" | "add_water" | "add_milk" | "same_again" | "dose" | "water" | "time" | "time_with_dose";
export type Direction = "leave" | "more" | "less" | "not_yet_decided" | "counting_not_stated";
export type Burn = "more_than_five_minutes" | "within" | "under_one_second";
export type Needed = "readings" | "more_than_ten" | "none_is_enough";
export type Credibility = "ordinary" | "near_limit" | "at_limit" | "beyond_limit";
export type Cover = "open" | "lidded";
export type Doing = "still" | "pouring" | "settling" | "dripping" | "disturbed" | "pressed" | "overloaded";
export type Happening = "pour_started" | "pour_stopped" | "settled" | "drip_started" | "drip_stopped" | "tared" | "placed" | "lifted" | "returned" | "unclear" | "disturbed" | "pressed" | "released" | "overloaded" | "lost" | "drifted" | "restless";
export type Step = "rinse" | "dose" | "pour" | "stir" | "wait" | "press" | "beverage";
export type Cue = "nothing" | "rinse" | "add_coffee" | "pour" | "stop_pouring" | "stir" | "wait" | "press" | "weigh_beverage";
export type Why = "next" | "time" | "early" | "lead" | "enough" | "too_much" | "missing" | "unclear" | "done";
export type Air = "pressure" | "altitude";
export type ContactHeat = "cooling_rate" | "at_most" | "unchanged";
export type Agreement = "mean" | "take_another" | "median";
export type Counting = "not_stated" | "flow_through" | "mass_balance";
export type Side = "below" | "inside" | "above";
export type Zero = "distilled" | "brew_water";
export type Shape = "rectangular" | "triangular" | "arcsine";
export type Decision = "inside" | "below" | "above" | "not_yet" | "too_uncertain";
export type JointDecision = "inside" | "outside" | "not_yet";

export interface Cup {
  /** Its masses, as weighed. */
  brew: Brew;
  /** Standard uncertainty of each weighing, 0 to 400000 g. */
  u_weighing_g: number;
  /** Its degrees of freedom, 1 to 1000000000; the highest where it is as good as known. */
  nu_weighing: number;
  /** Its strength, all solids. */
  strength: StrengthEstimate;
  /** Its yield by the brewer's own held strength. */
  yield: YieldEstimate;
  /** Time of contact, 0 to 172800 s. */
  contact_s: number;
}

export interface Kept {
  /** Apparent retention of the grounds, 0 to 10 g/g. */
  apparent_retention_g_per_g: number;
  /** What stays in the brewer whatever the dose: chamber, paper and drips, 0 to 5000 g. */
  hold_up_g: number;
}

export interface Means {
  /** How fast the coffee extracts, from one's own brews. */
  rates?: Rates | null;
  /** What the brewer is known to keep. */
  kept?: Kept | null;
  /** The chamber, where all the water stands in it at once. */
  chamber?: Chamber | null;
  /** Temperature of the water in it, 0 to 105 °C. */
  water_c: number;
  /** Whether milk may be added to this cup. */
  milk: boolean;
}

export interface Suggestion {
  /** In g or s: the new dose, brew water or time, or what to add. Without a change it is zero. */
  amount: number;
  /** What that was. Of what is added, and without a change, it is zero. */
  before: number;
  /** The new dose where it changes with the time, in g; else zero. */
  with_dose_g: number;
  /** What to expect. */
  outlook: Outlook;
  /** What changes. */
  change: Change;
}

export interface Advice {
  /** What can be done, the best first. */
  suggestions: Suggestion[];
  /** Which way to turn the grind. */
  grind: Direction;
  /** 0 where nothing is said of the next brew, since masses do not go together, nothing would be left for the cup or a number leaves its range; else 1. */
  is_next_told: boolean;
}

export interface Drained {
  /** Dose as weighed, 0.1 to 10000 g. */
  dose_g: number;
  /** Brew water, 0.1 to 200000 g. */
  water_g: number;
  /** Beverage, 0.1 to 200000 g. */
  beverage_g: number;
  /** Vapour lost, 0 to 20000 g; null where unknown, it then counts as kept. */
  vapour_g: number;
}

export interface Settled {
  /** Water, 0.1 to 400000 g. */
  liquid_g: number;
  /** Its temperature before, 0 to 105 °C. */
  before_c: number;
  /** The temperature at which both settle, 0 to 105 °C. */
  settled_c: number;
  /** Temperature of the brewer before, -40 to 105 °C. */
  vessel_c: number;
}

export interface Steeped {
  /** Strength, 0 to 50 %. */
  strength_pct: number;
  /** Brew water, 0.1 to 200000 g. */
  water_g: number;
  /** Dose as weighed, 0.1 to 10000 g. */
  dose_g: number;
}

export interface Timed {
  /** Time of contact, 0 to 172800 s. */
  contact_s: number;
  /** Yield by then, 0 to 100 %. */
  yield_pct: number;
}

export interface Thermometer {
  /** When, from any beginning, 0 to 172800 s. */
  time_s: number;
  /** What it shows, 0 to 105 °C. */
  water_c: number;
}

export interface Dried {
  /** The reading at 20 °C or compensated, -2 to 30.5 °Bx. */
  brix: number;
  /** Strength by the oven: dry residue over the sample's mass, 0 to 50 %. */
  strength_pct: number;
}

export interface Repeat {
  /** What was read, 0 to 50 %. */
  strength_pct: number;
  /** Which cup, 1 to 30. */
  cup: number;
}

export interface Odd {
  /** Its externally studentised residual: its distance from what the fit to all the others expects, in standard deviations of that distance. */
  studentised: number;
  /** Chance that the oddest of so many good measurements stands out as far or farther, 0 to 1. */
  chance: number;
  /** Which one, counted from 0. */
  at: number;
  /** Whether that chance is below constants.SUSPICIOUS_CHANCE, so that a reason is worth looking for before leaving it out. */
  is_suspicious: boolean;
}

export interface Quality {
  /** Degrees of freedom: measurements less parameters. Of every uncertainty that the fit tells. */
  degrees_of_freedom: number;
  /** Residual standard deviation, in the unit of what was fitted. */
  s: number;
  /** Residuals, measured less fitted, in the order given, as many as there are measurements. */
  residuals: number[];
  /** Leverages, in the order given, as many as there are measurements. How much of a measurement the fit takes from it alone, 0 to 1. They add up to the number of parameters. */
  leverages: number[];
  /** The oddest measurement; null with fewer than two degrees of freedom, or without any scatter. */
  odd?: Odd | null;
  /** How many, 0 to 30. */
  measurements: number;
}

export interface RetentionLine {
  /** Apparent retention of the grounds, 0 to 10 g/g. */
  apparent_retention_g_per_g: number;
  /** Its standard uncertainty, 0 to 10 g/g. */
  u_retention_g_per_g: number;
  /** What is kept whatever the dose: the chamber's hold-up, with an unrinsed paper's uptake and drips, -5000 to 5000 g. */
  fitted_hold_up_g: number;
  /** Its standard uncertainty, 0 to 400000 g. */
  u_hold_up_g: number;
  /** Covariance of the two, g²/g: negative, since a line that is steeper starts lower. */
  covariance_g2_per_g: number;
  /** How far the line can be trusted; its scatter is in g. */
  quality: Quality;
}

export interface Expected {
  /** What the next brew gives, 0.1 to 200000 g. */
  beverage_g: number;
  /** Its standard uncertainty, 0 to 400000 g. */
  u_beverage_g: number;
  /** Its degrees of freedom, 1 to 1000000000. */
  degrees_of_freedom: number;
  /** Standard uncertainty of what many such brews give on average, 0 to 400000 g. */
  u_mean_g: number;
}

export interface FittedRetention {
  /** Apparent retention, 0 to 10 g/g. */
  apparent_retention_g_per_g: number;
  /** Its standard uncertainty, 0 to 10 g/g. */
  u_retention_g_per_g: number;
  /** How far it can be trusted; its scatter is in g. */
  quality: Quality;
}

export interface FittedHeatCapacity {
  /** Heat capacity, 0 to 1000000 J/K. */
  heat_capacity_j_per_k: number;
  /** Its standard uncertainty, 0 to 1000000 J/K. */
  u_heat_capacity_j_per_k: number;
  /** How far it can be trusted; its scatter is in J. */
  quality: Quality;
}

export interface FittedYield {
  /** Yield, 0 to 100 %. */
  yield_pct: number;
  /** Its standard uncertainty, 0 to 100 %. */
  u_yield_pct: number;
  /** How far it can be trusted; its scatter is in points of yield. */
  quality: Quality;
}

export interface FittedRefractiveFactor {
  /** Strength per degree Brix, 0.3 to 2 %/°Bx. */
  refractive_factor_pct_per_brix: number;
  /** Its standard uncertainty over its value, 0 to 50 %. */
  u_factor_pct: number;
  /** How far it can be trusted; its scatter is in % strength. */
  quality: Quality;
}

export interface FittedRepeatability {
  /** Standard deviation of readings of one sample, % strength, 0.0005 to 2 % strength. */
  repeatability_pct: number;
  /** Its standard uncertainty, % strength, 0 to 50 %. */
  u_repeatability_pct: number;
  /** How far it can be trusted; its scatter is in % strength. */
  quality: Quality;
}

export interface OneRate {
  /** Yield that it levels off at, 0 to 100 %. */
  equilibrium_yield_pct: number;
  /** Its standard uncertainty, 0 to 100 %. */
  u_equilibrium_yield_pct: number;
  /** Time constant, 0.1 to 1000000 s. */
  time_constant_s: number;
  /** Standard uncertainty of its logarithm, 0 to 1000. */
  u_ln_time_constant: number;
  /** Covariance of the yield and that logarithm, points of yield. */
  covariance_pct: number;
  /** How far the curve can be trusted; its scatter is in points of yield. */
  quality: Quality;
}

export interface TwoRates {
  /** Yield that it levels off at, 0 to 100 %. */
  equilibrium_yield_pct: number;
  /** Its standard uncertainty, 0 to 100 %. */
  u_equilibrium_yield_pct: number;
  /** Share of it that dissolves fast, 0 to 100 %. */
  fast_share_pct: number;
  /** Its standard uncertainty, 0 to 100 %. */
  u_fast_share_pct: number;
  /** Time constant of the fast share, 0.1 to 1000000 s. */
  fast_time_s: number;
  /** Standard uncertainty of its logarithm, 0 to 1000. */
  u_ln_fast_time: number;
  /** Time constant of the rest, 0.1 to 1000000 s. */
  slow_time_s: number;
  /** Standard uncertainty of its logarithm, 0 to 1000. */
  u_ln_slow_time: number;
  /** Covariances of the yield, the fast share and the two logarithms, in points. */
  covariance: number[][];
  /** How far the curve can be trusted; its scatter is in points of yield. */
  quality: Quality;
}

export interface Cooling {
  /** Cooling rate, 0.000001 to 1 1/min. */
  cooling_per_min: number;
  /** Its standard uncertainty, 0 to 10 1/min. */
  u_cooling_per_min: number;
  /** Temperature at the first reading, by the curve through all of them, 0 to 105 °C. */
  start_c: number;
  /** Its standard uncertainty, 0 to 105 K. */
  u_start_k: number;
  /** Covariance of the two, K/min. */
  covariance_k_per_min: number;
  /** How far the curve can be trusted; its scatter is in K. */
  quality: Quality;
}

export interface Hazards {
  /** The hottest liquid handled on the way, 0 to 105 °C. */
  hottest_c: number;
  /** The drink when it is handed over, 0 to 105 °C. */
  served_c: number;
  /** Caffeine of a serving, 0 to 450000 mg; not looked at where unknown. */
  caffeine_mg?: number | null;
  /** Pressed by hand. */
  pressed: boolean;
  /** Glass meets hot or iced liquid. */
  glass: boolean;
  /** Milk goes in. */
  milk: boolean;
  /** Ice goes in. */
  ice: boolean;
}

export interface TimeToBurn {
  /** The time, 0 to 172800 s; 0 unless the burn is "within". */
  time_s: number;
  /** How fast. */
  burn: Burn;
}

export interface Band {
  /** Its lowest value, in the value's unit, -1000000000 to 1000000000. */
  lowest: number;
  /** Its highest, -1000000000 to 1000000000. */
  highest: number;
}

export interface Bands {
  /** Lowest strength inside, 0 to 50 %. */
  strength_lowest_pct: number;
  /** Highest, 0 to 50 %. */
  strength_highest_pct: number;
  /** Lowest yield inside, 0 to 100 %. */
  yield_lowest_pct: number;
  /** Highest, 0 to 100 %. */
  yield_highest_pct: number;
}

export interface Chances {
  /** Below the lowest edge, 0 to 100 %. */
  below_pct: number;
  /** Inside, 0 to 100 %. */
  inside_pct: number;
  /** Above the highest edge, 0 to 100 %. */
  above_pct: number;
}

export interface Acceptance {
  /** The band less a guard on either side; null where the uncertainty is too large for any. */
  acceptance: Band | null;
}

export interface ReadingsNeeded {
  /** The number, 1 to 10; 0 unless needed is "readings". */
  readings: number;
  /** How many. */
  needed: Needed;
}

export interface Joint {
  /** The strength beside its band. */
  strength: Chances;
  /** The yield beside its band. */
  yield: Chances;
  /** Probability that both are inside, 0 to 100 %. */
  both_pct: number;
}

export interface Pair {
  /** The first, -1000000000 to 1000000000. */
  first: number;
  /** Its standard uncertainty, 0 to 1000000000. */
  u_first: number;
  /** Its degrees of freedom, 1 to 1000000000; the highest where it is as good as known. */
  nu_first: number;
  /** The second, -1000000000 to 1000000000. */
  second: number;
  /** Its standard uncertainty, 0 to 1000000000. */
  u_second: number;
  /** Its degrees of freedom, 1 to 1000000000; the highest where it is as good as known. */
  nu_second: number;
}

export interface Comparison {
  /** The first less the second, in their unit. */
  difference: number;
  /** Standard uncertainty of the difference, the common factor's included, 0 to 1000000000. */
  u: number;
  /** Its degrees of freedom, 1 to 1000000000; the highest where it is as good as known. */
  degrees_of_freedom: number;
  /** The smallest difference that could be called real, in their unit. */
  least: number;
  /** The largest confidence at which this one can be called real, 0 to 100 %. */
  confidence_pct: number;
  /** Whether it is real at the confidence asked. */
  is_real: boolean;
}

export interface CupSplit {
  /** Brew into each cup, 0.1 to 200000 g. */
  beverage_g: number;
  /** Water into each cup, 0 to 200000 g. */
  added_g: number;
  /** Brew left over, 0 to 200000 g. */
  rest_g: number;
}

export interface MilkDrink {
  /** Coffee and milk together, 0.1 to 200000 g. */
  beverage_g: number;
  /** Solids from coffee and brew water, per mass of drink, 0 to 50 %. */
  strength_pct: number;
  /** Solids from milk, per mass of drink, 0 to 80 %. */
  milk_solids_pct: number;
}

export interface Iced {
  /** Temperature of liquid and ice, 0 to 105 °C. */
  water_c: number;
  /** Ice that melted, 0 to 200000 g. */
  melted_g: number;
  /** Ice that floats on, 0 to 200000 g. */
  ice_g: number;
  /** Strength of the liquid, 0 to 50 %. */
  strength_pct: number;
}

export interface Estimate {
  /** The value, in a unit of its own, -1000000000 to 1000000000. */
  value: number;
  /** Its standard uncertainty in that unit, 0 to 1000000000. */
  u_value: number;
  /** Its degrees of freedom, 1 to 1000000000; the highest where it is as good as known. */
  nu_value: number;
}

export interface StrengthEstimate {
  /** Strength, 0 to 50 %. */
  strength_pct: number;
  /** Its standard uncertainty, 0 to 50 %. */
  u_strength_pct: number;
  /** Its degrees of freedom, 1 to 1000000000; the highest where it is as good as known. */
  nu_strength: number;
}

export interface YieldEstimate {
  /** Extraction yield, 0 to 100 %. */
  yield_pct: number;
  /** Its standard uncertainty, 0 to 100 %. */
  u_yield_pct: number;
  /** Its degrees of freedom, 1 to 1000000000; the highest where it is as good as known. */
  nu_yield: number;
}

export interface DoseEstimate {
  /** Dose as weighed, 0.1 to 10000 g. */
  dose_g: number;
  /** Its standard uncertainty, 0 to 400000 g. */
  u_dose_g: number;
  /** Its degrees of freedom, 1 to 1000000000; the highest where it is as good as known. */
  nu_dose: number;
}

export interface WaterEstimate {
  /** Brew water, 0.1 to 200000 g. */
  water_g: number;
  /** Its standard uncertainty, 0 to 400000 g. */
  u_water_g: number;
  /** Its degrees of freedom, 1 to 1000000000; the highest where it is as good as known. */
  nu_water: number;
}

export interface BeverageEstimate {
  /** Beverage, 0.1 to 200000 g. */
  beverage_g: number;
  /** Its standard uncertainty, 0 to 400000 g. */
  u_beverage_g: number;
  /** Its degrees of freedom, 1 to 1000000000; the highest where it is as good as known. */
  nu_beverage: number;
}

export interface PortionEstimate {
  /** Brew into a cup, 0.1 to 200000 g. */
  portion_g: number;
  /** Its standard uncertainty, 0 to 400000 g. */
  u_portion_g: number;
  /** Its degrees of freedom, 1 to 1000000000; the highest where it is as good as known. */
  nu_portion: number;
}

export interface AddedEstimate {
  /** Water added, 0 to 200000 g. */
  added_g: number;
  /** Its standard uncertainty, 0 to 400000 g. */
  u_added_g: number;
  /** Its degrees of freedom, 1 to 1000000000; the highest where it is as good as known. */
  nu_added: number;
}

export interface MoistureEstimate {
  /** Moisture as weighed, 0 to 15 %. */
  moisture_pct: number;
  /** Its standard uncertainty, 0 to 100 %. */
  u_moisture_pct: number;
  /** Its degrees of freedom, 1 to 1000000000; the highest where it is as good as known. */
  nu_moisture: number;
}

export interface WaterSolidsEstimate {
  /** Solids of the water, 0 to 5000 mg/L. */
  water_solids_mg_per_l: number;
  /** Its standard uncertainty, 0 to 5000 mg/L. */
  u_water_solids_mg_per_l: number;
  /** Its degrees of freedom, 1 to 1000000000; the highest where it is as good as known. */
  nu_water_solids: number;
}

export interface VapourEstimate {
  /** Vapour lost, 0 to 20000 g. */
  vapour_g: number;
  /** Its standard uncertainty, 0 to 400000 g. */
  u_vapour_g: number;
  /** Its degrees of freedom, 1 to 1000000000; the highest where it is as good as known. */
  nu_vapour: number;
}

export interface HeldStrengthEstimate {
  /** Strength of the liquid kept relative to the beverage, 0 to 100 %. */
  held_strength_pct: number;
  /** Its standard uncertainty, 0 to 100 %. */
  u_held_strength_pct: number;
  /** Its degrees of freedom, 1 to 1000000000; the highest where it is as good as known. */
  nu_held_strength: number;
}

export interface HotEstimate {
  /** Its mass, 0.1 to 400000 g. */
  hot_g: number;
  /** Its standard uncertainty, 0 to 400000 g. */
  u_hot_g: number;
  /** Its degrees of freedom, 1 to 1000000000; the highest where it is as good as known. */
  nu_hot_mass: number;
  /** Its temperature, 0 to 105 °C. */
  hot_c: number;
  /** Its standard uncertainty, 0 to 105 K. */
  u_hot_k: number;
  /** Its degrees of freedom, 1 to 1000000000; the highest where it is as good as known. */
  nu_hot_temperature: number;
}

export interface ColdEstimate {
  /** Its mass, 0 to 200000 g. */
  cold_g: number;
  /** Its standard uncertainty, 0 to 400000 g. */
  u_cold_g: number;
  /** Its degrees of freedom, 1 to 1000000000; the highest where it is as good as known. */
  nu_cold_mass: number;
  /** Its temperature, 0 to 105 °C. */
  cold_c: number;
  /** Its standard uncertainty, 0 to 105 K. */
  u_cold_k: number;
  /** Its degrees of freedom, 1 to 1000000000; the highest where it is as good as known. */
  nu_cold_temperature: number;
}

export interface BrixEstimate {
  /** Reading at 20 °C or compensated, -2 to 30.5 °Bx. */
  brix: number;
  /** Its standard uncertainty, 0 to 32.5 °Bx. */
  u_brix: number;
  /** Its degrees of freedom, 1 to 1000000000; the highest where it is as good as known. */
  nu_brix: number;
}

export interface RefractiveFactorEstimate {
  /** The factor, 0.3 to 2 %/°Bx. */
  refractive_factor_pct_per_brix: number;
  /** Its standard uncertainty over its value, 0 to 50 %. */
  u_factor_pct: number;
  /** Its degrees of freedom, 1 to 1000000000; the highest where it is as good as known. */
  nu_factor: number;
}

export interface RepeatabilityEstimate {
  /** Standard deviation of readings of one sample by one person on one instrument, % strength, 0.0005 to 2 % strength. */
  repeatability_pct: number;
  /** Its standard uncertainty, % strength, 0 to 50 %. Not used but for its range: what counts is how many degrees of freedom there are. */
  u_repeatability_pct: number;
  /** Its degrees of freedom, 1 to 1000000000; the highest where it is as good as known. */
  nu_repeatability: number;
}

export interface LiquidEstimate {
  /** Its mass, 0.1 to 400000 g. */
  liquid_g: number;
  /** Its standard uncertainty, 0 to 400000 g. */
  u_liquid_g: number;
  /** Its degrees of freedom, 1 to 1000000000; the highest where it is as good as known. */
  nu_liquid: number;
  /** Its temperature before, 0 to 105 °C. */
  before_c: number;
  /** Its standard uncertainty, 0 to 105 K. */
  u_before_k: number;
  /** Its degrees of freedom, 1 to 1000000000; the highest where it is as good as known. */
  nu_before: number;
}

export interface BodyEstimate {
  /** Heat capacity of the part that warms, 0 to 1000000 J/K. */
  heat_capacity_j_per_k: number;
  /** Its standard uncertainty, 0 to 1000000 J/K. */
  u_heat_capacity_j_per_k: number;
  /** Its degrees of freedom, 1 to 1000000000; the highest where it is as good as known. */
  nu_heat_capacity: number;
  /** Its temperature before, -40 to 105 °C. */
  body_c: number;
  /** Its standard uncertainty, 0 to 105 K. */
  u_body_k: number;
  /** Its degrees of freedom, 1 to 1000000000; the highest where it is as good as known. */
  nu_body: number;
}

export interface TemperatureEstimate {
  /** Temperature now, 0 to 105 °C. */
  water_c: number;
  /** Its standard uncertainty, 0 to 105 K. */
  u_water_k: number;
  /** Its degrees of freedom, 1 to 1000000000; the highest where it is as good as known. */
  nu_water: number;
}

export interface CoolingEstimate {
  /** Cooling rate, 0.000001 to 1 1/min. */
  cooling_per_min: number;
  /** Its standard uncertainty, 0 to 10 1/min. */
  u_cooling_per_min: number;
  /** Its degrees of freedom, 1 to 1000000000; the highest where it is as good as known. */
  nu_cooling: number;
}

export interface TimeEstimate {
  /** Time, 0 to 172800 s. */
  time_s: number;
  /** Its standard uncertainty, 0 to 172800 s. */
  u_time_s: number;
  /** Its degrees of freedom, 1 to 1000000000; the highest where it is as good as known. */
  nu_time: number;
}

export interface InstrumentUncertainty {
  /** Its standard uncertainty, % strength, 0 to 50 %. */
  u_instrument_pct: number;
  /** Its degrees of freedom, 1 to 1000000000; the highest where it is as good as known. */
  nu_instrument: number;
}

export interface FactorUncertainty {
  /** Its standard uncertainty over its value, 0 to 50 %. */
  u_factor_pct: number;
  /** Its degrees of freedom, 1 to 1000000000; the highest where it is as good as known. */
  nu_factor: number;
}

export interface SpanUncertainty {
  /** Its standard uncertainty, relative, 0 to 50 %. */
  u_span_pct: number;
  /** Its degrees of freedom, 1 to 1000000000; the highest where it is as good as known. */
  nu_span: number;
}

export interface RetentionUncertainty {
  /** Its standard uncertainty, 0 to 10 g/g. */
  u_apparent_retention_g_per_g: number;
  /** Its degrees of freedom, 1 to 1000000000; the highest where it is as good as known. */
  nu_apparent_retention: number;
}

export interface LossesUncertainty {
  /** Their standard uncertainty, 0 to 400000 g. */
  u_losses_g: number;
  /** Its degrees of freedom, 1 to 1000000000; the highest where it is as good as known. */
  nu_losses: number;
}

export interface Brew {
  /** Dose D as weighed, 0.1 to 10000 g. */
  dose_g: number;
  /** Brew water W, 0.1 to 200000 g. */
  water_g: number;
  /** Beverage B, 0.1 to 200000 g. */
  beverage_g: number;
  /** Moisture h of the dose, 0 to 15 %. */
  moisture_pct: number;
  /** Solids s of the brew water, 0 to 5000 mg/L. */
  water_solids_mg_per_l: number;
  /** Vapour V lost, 0 to 20000 g. */
  vapour_g: number;
  /** Strength φ of the liquid kept, relative to the beverage, 0 to 100 %: 0 flowed through, 100 steeped and well mixed. Yields differ by up to three points between the two. */
  held_strength_pct: number;
}

export interface Kinetics {
  /** Yield that it levels off at, 0 to 100 %. */
  equilibrium_yield_pct: number;
  /** Share that dissolves fast, 0 to 100 %; 100 makes it a one-rate law. */
  fast_share_pct: number;
  /** Time constant of the fast part, 0.1 to 1000000 s. */
  fast_time_s: number;
  /** Time constant of the slow part, 0.1 to 1000000 s. */
  slow_time_s: number;
}

export interface Doubt {
  /** The value entered, in the quantity's unit. */
  entered: number;
  /** The value at which the yield would fall to the upper end of what is ordinary; null without one. */
  would_have_to_be: number | null;
  /** The input. */
  quantity: QuantityKey;
}

export interface Plausibility {
  /** The yield of the inputs, 0 to 100 %. */
  yield_pct: number;
  /** The inputs to doubt: strength, brew water, dose, held strength. None where the yield is ordinary. */
  doubts: Doubt[];
  /** How credible it is. */
  credibility: Credibility;
}

export interface Intended {
  /** Dose; how well it is weighed. */
  dose: DoseEstimate;
  /** Brew water; how well the hand stops. */
  water: WaterEstimate;
  /** Yield to expect by the brewer's own held strength; how well it is known, and how far brews differ. */
  yield: YieldEstimate;
  /** What does not reach the cup. */
  losses: Losses;
  /** How far the retention in it may be off. */
  retention: RetentionUncertainty;
  /** How far the other losses may be off together. */
  other: LossesUncertainty;
  /** Moisture of the dose, 0 to 15 %. */
  moisture_pct: number;
  /** Solids of the brew water and of water added, 0 to 5000 mg/L. */
  water_solids_mg_per_l: number;
  /** Strength of the liquid kept relative to the beverage, 0 to 100 %. */
  held_strength_pct: number;
  /** Brew that goes into a cup; without an addition it does not matter. */
  portion: PortionEstimate;
  /** Water added to it, 0 g for none. */
  added: AddedEstimate;
}

export interface Straying {
  /** Of the dose, and of brew portioned into a cup, 0 to 400000 g. */
  u_next_dose_g: number;
  /** 1 to 1000000000. */
  nu_next_dose: number;
  /** Of brew water, and of water added in the cup, 0 to 400000 g. */
  u_next_water_g: number;
  /** 1 to 1000000000. */
  nu_next_water: number;
  /** Of the yield from brew to brew, 0 to 100 %. */
  u_next_yield_pct: number;
  /** 1 to 1000000000. */
  nu_next_yield: number;
  /** Of the retention, 0 to 10 g/g. */
  u_next_retention_g_per_g: number;
  /** 1 to 1000000000. */
  nu_next_retention: number;
  /** Of hold-up, paper, drips and vapour together, 0 to 400000 g. */
  u_next_losses_g: number;
  /** 1 to 1000000000. */
  nu_next_losses: number;
}

export interface Outlook {
  /** Beverage of the brew, 0.1 to 200000 g. */
  beverage_g: number;
  /** Its standard uncertainty, 0 to 400000 g. */
  u_beverage_g: number;
  /** Its degrees of freedom, 1 to 1000000000. */
  nu_beverage: number;
  /** Strength of the drink, 0 to 50 %. */
  strength_pct: number;
  /** Its standard uncertainty, 0 to 50 %. */
  u_strength_pct: number;
  /** Its degrees of freedom, 1 to 1000000000. */
  nu_strength: number;
  /** Yield as the window counts it, by the chart where it does not say, 0 to 100 %. */
  counted_yield_pct: number;
  /** Its standard uncertainty, 0 to 100 %. */
  u_counted_yield_pct: number;
  /** Its degrees of freedom, 1 to 1000000000. */
  nu_counted_yield: number;
  /** How far the two go together, -1 to 1. */
  correlation: number;
  /** Probability that the strength lies inside the window, 0 to 100 %. */
  strength_inside_pct: number;
  /** Probability that the strength, and the yield where the window has one and says how it counts it, lie inside it, 0 to 100 %. */
  inside_pct: number;
}

export interface Body {
  /** Heat capacity of the part that warms, 0 to 1000000 J/K. */
  heat_capacity_j_per_k: number;
  /** Its temperature before, -40 to 105 °C. */
  body_c: number;
}

export interface Surroundings {
  /** Air temperature, -20 to 50 °C. */
  room_c: number;
  /** Relative humidity, 0 to 100 %; 50 where unknown, it hardly matters. */
  humidity_pct: number;
  /** Whether vapour can leave the surface. */
  cover: Cover;
}

export interface LiveSetup {
  /** Smallest step of its readings, 0.001 to 10 g. */
  division_g: number;
  /** Most that it can show from its zero at the beginning, 10 to 100000 g. */
  capacity_g: number;
  /** Fastest that water is poured on it, 2 to 100 g/s. */
  fastest_g_per_s: number;
}

export interface LiveSeen {
  /** The reading without its noise; what it was before while something disturbs it. */
  level_g: number;
  /** How fast it rises; null where unknown: while something disturbs it, and for the next three points. */
  flow_g_per_s: number | null;
  /** Water poured since countAnew(), whatever was lifted or set to zero meanwhile. */
  poured_g: number;
  /** What is not in that and may be water, or is in it and may not be. */
  unclear_g: number;
  /** When something happened, as well as can be told afterwards; null where nothing did. */
  event_clock_s: number | null;
  /** By how much, as its kind says; null where nothing did. */
  event_change_g: number | null;
  /** What is going on. */
  doing: Doing;
  /** What has happened; null for nothing. Things that happened at once come with one reading after the other. */
  event: Happening | null;
}

export interface LiveAccounts {
  /** Water. */
  poured_g: number;
  /** Things put down, less things taken off. */
  moved_g: number;
  /** Set to zero. */
  tared_g: number;
  /** Drift: creep, warming, evaporation, drips slower than 0.2 g/s. */
  drifted_g: number;
  /** What could be water or not. */
  unclear_g: number;
  /** What the activity going on has gained. */
  under_way_g: number;
  /** Standard uncertainty of the water poured, by what the scale saw alone: ends of its runs at rest, drift meanwhile, what is unclear. */
  u_poured_g: number;
}

export interface LiveStep {
  /** Coffee to weigh, 0.1 to 10000 g; needed for "dose". */
  dose_g?: number | null;
  /** Water in all when the step is over, 0.1 to 200000 g; needed for "pour". */
  to_g?: number | null;
  /** Not before this time, 0 to 172800 s; needed for "pour" and "stir". */
  from_s?: number | null;
  /** Until this time, 0 to 172800 s; needed for "wait". */
  until_s?: number | null;
  /** The vessel that the beverage is weighed in, 0 to 100000 g; 0 where the display was set to zero with it; needed for "beverage". */
  vessel_g?: number | null;
  /** What to do. */
  step: Step;
}

export interface LiveNow {
  /** What the scale saw. It knows no steps: coffee that is weighed in is a pour to it, until the follower counts it as dose. The brew's own clock is the time since the first water. */
  seen: LiveSeen;
  /** Water still to pour in this step; below zero for too much. */
  to_pour_g: number | null;
  /** Time still to wait in this step. */
  to_wait_s: number | null;
  /** Water over dose, once both are known. */
  ratio_g_per_g: number | null;
  /** Time since the first water. */
  brewing_s: number | null;
  /** How much the flow of this pour, or of the last one, wanders: its standard deviation over its mean. */
  flow_variation_pct: number | null;
  /** Which step of the recipe it is at, counted from 0; as many as there are when it is done. */
  step: number;
  /** What to do. */
  cue: Cue;
  /** Why. */
  why: Why;
}

export interface LiveWeighed {
  /** Coffee, weighed or told. */
  dose_g: number | null;
  /** What has come out, weighed or told. */
  beverage_g: number | null;
  /** What dripped off while the vessel was lifted. */
  drips_g: number;
  /** How long before the water is reached the cue to stop comes: every stop that follows a cue teaches it. Keep it for the same hand and kettle: setLead(). */
  lead_s: number;
}

export interface Wish {
  /** Size of the drink in each cup, 0.1 to 200000 g. */
  cup_g: number;
  /** Strength of the drink, 0 to 50 %. */
  strength_pct: number;
  /** Brew this strong and add water in the cup, 0 to 50 %. */
  brew_strength_pct?: number | null;
  /** Temperature of the brew water as it meets the grounds, 0 to 105 °C. */
  brew_c: number;
  /** Time of contact, 0 to 172800 s. */
  contact_s: number;
  /** Temperature at which to hand the drink over, 0 to 105 °C. */
  serve_c?: number | null;
  /** Window that the drink is to lie in. */
  window?: Window | null;
  /** How many cups, 1 to 1000. */
  servings: number;
  /** The most batches one is willing to brew, 1 to 1000. */
  most_batches?: number | null;
}

export interface Brewer {
  /** Strength of the liquid it keeps relative to the beverage, 0 to 100 %: 100 steeped, 0 flowed through. */
  held_strength_pct: number;
  /** What it keeps. */
  losses: Losses;
  /** Its chamber, where all the water stands in it at once. */
  chamber?: Chamber | null;
  /** Heat capacity of the part that warms, 0 to 1000000 J/K. */
  heat_capacity_j_per_k: number;
  /** Hot rinse, poured away, that preheats it, 0.1 to 400000 g. */
  rinse_g?: number | null;
  /** Cooling rate of the slurry in it, 0.000001 to 1 1/min. */
  cooling_per_min?: number | null;
  /** Whether the slurry is open to the air. */
  cover: Cover;
  /** Pressed by hand. */
  pressed: boolean;
  /** Glass meets hot liquid. */
  glass: boolean;
}

export interface Coffee {
  /** Yield to expect, as measured before with the brewer's held strength, 0 to 100 %. */
  yield_pct: number;
  /** Moisture as weighed, 0 to 15 %. */
  moisture_pct: number;
  /** Caffeine as weighed, 0 to 45 mg/g. */
  caffeine_mg_per_g?: number | null;
}

export interface Kitchen {
  /** Station pressure, 50 to 110 kPa; needed for "pressure". */
  pressure_kpa?: number | null;
  /** Altitude, -650 to 5550 m; needed for "altitude". */
  altitude_m?: number | null;
  /** Temperature of the room, the grounds, the cups and a cold brewer, -20 to 50 °C. */
  room_c: number;
  /** Relative humidity, 0 to 100 %; 50 where unknown (estimate). */
  humidity_pct: number;
  /** What each pour costs, 0 to 105 K. */
  drop_k: number;
  /** Heat capacity of a second vessel between kettle and brewer, 0 to 1000000 J/K. */
  second_vessel_j_per_k?: number | null;
  /** Heat capacity of a cup, 0 to 1000000 J/K. */
  cup_j_per_k: number;
  /** Cooling rate of a full cup, 0.000001 to 1 1/min. */
  cup_cooling_per_min?: number | null;
  /** Solids of the water, 0 to 5000 mg/L. */
  water_solids_mg_per_l: number;
  /** Temperature of water added in the cup, 0 to 105 °C. */
  added_c: number;
  /** What is known of the air. */
  air: Air;
}

export interface HeatWalk {
  /** Where water boils here, 0 to 105 °C. */
  boiling_c: number;
  /** How far off that may be, K. */
  boiling_uncertainty_k: number;
  /** Water in the kettle, 0 to 105 °C. */
  kettle_c: number;
  /** The brewer just before the brew, -40 to 105 °C. */
  brewer_c: number;
  /** Water settled in the second vessel, 0 to 105 °C; null without one. */
  second_vessel_c: number | null;
  /** Water as it meets the grounds, 0 to 105 °C. */
  brew_c: number;
  /** Water, grounds and brewer settled, 0 to 105 °C. */
  slurry_c: number;
  /** The slurry at the end of contact, 0 to 105 °C. */
  slurry_end_c: number;
  /** The drink in its cup, water added, 0 to 105 °C. */
  in_cup_c: number;
  /** Wait until it may be handed over as wished, 0 to 172800 s; null where nothing is wished or the cup's cooling is unknown. */
  wait_s: number | null;
  /** How sure the end of contact is. */
  contact_heat: ContactHeat;
}

export interface Tolerances {
  /** Lowest dose of a batch, 0.1 to 10000 g. */
  dose_from_g: number | null;
  /** Highest dose of a batch, 0.1 to 10000 g. */
  dose_to_g: number | null;
  /** Lowest brew water of a batch, 0.1 to 200000 g. */
  water_from_g: number | null;
  /** Highest brew water of a batch, 0.1 to 200000 g. */
  water_to_g: number | null;
}

export interface Recipe {
  /** Dose of each batch, 0.1 to 10000 g. */
  dose_g: number;
  /** Brew water of each batch, 0.1 to 200000 g. */
  water_g: number;
  /** Brew water per dose, 0.2 to 200 g/g. */
  water_ratio_g_per_g: number;
  /** Beverage expected from each batch, 0.1 to 200000 g. */
  beverage_g: number;
  /** How full a batch makes the chamber, 0.1 to 250000 mL; null without one. */
  fill_ml: number | null;
  /** Brew into each cup, 0.1 to 200000 g. */
  brew_per_cup_g: number;
  /** Water into each cup, 0 to 200000 g. */
  added_per_cup_g: number;
  /** Strength of the brew before water is added, 0 to 50 %. */
  brew_strength_pct: number;
  /** Strength of the drink, 0 to 50 %. */
  strength_pct: number;
  /** Yield it counts on, 0 to 100 %. */
  yield_pct: number;
  /** Caffeine of a serving if all of it is extracted, 0 to 450000 mg; null where unknown. */
  caffeine_mg: number | null;
  /** Temperatures on the way. */
  heat: HeatWalk;
  /** Where the drink, and the yield as the window counts it, stand in the window; null without one. */
  standing: Standing | null;
  /** How far dose and water may stray; null without a window. */
  tolerances: Tolerances | null;
  /** How many batches, 1 to 1000. */
  batches: number;
  /** What can hurt. */
  cautions: Caution[];
}

export interface Foreseen {
  /** The recipe. */
  recipe: Recipe;
  /** What it leads to, and the chance that it lands in the wish's window; null without one. */
  outlook: Outlook | null;
}

export interface Learned {
  /** The value, in the unit of the profile's field. */
  value: number;
  /** Its standard uncertainty as the fit told it, in the same unit where the field says no other. */
  u: number;
  /** The degrees of freedom of that, 1 to 1000000000. */
  degrees_of_freedom: number;
}

export interface Profile {
  /** Version of the fields. */
  version: 1;
  /** Apparent retention of the brewer's grounds, 0 to 10 g/g. */
  apparent_retention_g_per_g?: Learned | null;
  /** Hold-up of the brewer, as the same line has it, -5000 to 5000 g. */
  fitted_hold_up_g?: Learned | null;
  /** Heat capacity of the brewer, 0 to 1000000 J/K. */
  heat_capacity_j_per_k?: Learned | null;
  /** Cooling rate of the brewer while it steeps, 0.000001 to 1 1/min. */
  cooling_per_min?: Learned | null;
  /** Yield that the coffee levels off at, 0 to 100 %. */
  equilibrium_yield_pct?: Learned | null;
  /** Share of it that dissolves fast, 0 to 100 %. */
  fast_share_pct?: Learned | null;
  /** Time constant of the fast share, 0.1 to 1000000 s; u is that of its logarithm. */
  fast_time_s?: Learned | null;
  /** Time constant of the rest, 0.1 to 1000000 s; u is that of its logarithm. */
  slow_time_s?: Learned | null;
  /** Refractive factor of the coffee, 0.3 to 2 %/°Bx; u is over its value, in %. */
  refractive_factor_pct_per_brix?: Learned | null;
  /** Heat capacity of the cup, 0 to 1000000 J/K. */
  cup_j_per_k?: Learned | null;
  /** Cooling rate of the full cup, 0.000001 to 1 1/min. */
  cup_cooling_per_min?: Learned | null;
  /** Repeatability of one's own readings on the instrument, 0.0005 to 2 % strength. */
  repeatability_pct?: Learned | null;
  /** Correlation of retention and hold-up, -1 to 1. */
  retention_correlation?: number | null;
  /** Scatter of a brew about the line of the two, or about the retention alone, 0 to 400000 g. */
  retention_scatter_g?: number | null;
  /** Correlation of the plateau and the fast share, -1 to 1. */
  correlation_equilibrium_share?: number | null;
  /** Correlation of the plateau and the logarithm of the fast time, -1 to 1. */
  correlation_equilibrium_fast?: number | null;
  /** Correlation of the plateau and the logarithm of the slow time, -1 to 1. */
  correlation_equilibrium_slow?: number | null;
  /** Correlation of the fast share and the logarithm of the fast time, -1 to 1. */
  correlation_share_fast?: number | null;
  /** Correlation of the fast share and the logarithm of the slow time, -1 to 1. */
  correlation_share_slow?: number | null;
  /** Correlation of the two logarithms, -1 to 1. */
  correlation_fast_slow?: number | null;
}

export interface Chamber {
  /** Volume up to the highest safe level, 0.1 to 250000 mL. */
  volume_ml: number;
  /** Volume that a gram of wetted grounds takes away from the water, 0 to 5 mL/g. No published value was found: read the level before and after. */
  displacement_ml_per_g: number;
}

export interface BatchSplit {
  /** Dose of each, 0.1 to 10000 g. */
  dose_g: number;
  /** Brew water of each, 0.1 to 200000 g. */
  water_g: number;
  /** How full the chamber gets, water and grounds, 0.1 to 250000 mL. */
  fill_ml: number;
  /** How many, 1 to 1000. */
  batches: number;
}

export interface Amounts {
  /** Dose, 0.1 to 10000 g. */
  dose_g: number;
  /** Brew water, 0.1 to 200000 g. */
  water_g: number;
}

export interface Combined {
  /** The value: mean or median; the mean so far where another reading is asked for, 0 to 50 %. */
  strength_pct: number;
  /** Largest less smallest, % strength. */
  range_pct: number;
  /** The range that readings of this repeatability exceed once in twenty times, % strength; null for a single reading. */
  critical_range_pct: number | null;
  /** What they amount to. */
  agreement: Agreement;
}

export interface Losses {
  /** Brew water missing per dose, apart from what is named below, 0 to 10 g/g. Published: 1.5 to 2 for drained drip brews. */
  apparent_retention_g_per_g: number;
  /** Liquid that chamber and filter keep whatever the dose, 0 to 5000 g. */
  hold_up_g: number;
  /** Dry filter paper that drinks from the brew, 0 to 500 g; 0 for no paper, for metal, and for paper rinsed before, which is already full. */
  paper_g: number;
  /** What a gram of that paper takes up, 0 to 20 g/g: weigh one dry, then wet and drained. */
  paper_uptake_g_per_g: number;
  /** Drips lost before the press or the drain, 0 to 5000 g. */
  drips_g: number;
  /** Vapour lost, 0 to 20000 g. */
  vapour_g: number;
}

export interface Standard {
  /** The standard uncertainty, in the unit of what it was made from, 0 to 1000000000. */
  u: number;
  /** Its degrees of freedom, 1 to 1000000000; the highest where it is as good as known. */
  degrees_of_freedom: number;
}

export interface Mean {
  /** The mean, -1000000000 to 1000000000. */
  value: number;
  /** Its standard uncertainty, 0 to 1000000000. */
  u: number;
  /** The degrees of freedom of that, 1 to 1000000000. */
  degrees_of_freedom: number;
}

export interface Expanded {
  /** How many standard uncertainties it reaches to either side, 0.5 to 1000. */
  coverage_factor: number;
  /** How far it reaches to either side, 0 to 1000000000. */
  half_width: number;
}

export interface Series {
  /** Standard deviation of its readings, 0 to 1000000000. */
  s: number;
  /** One less than their number, 1 to 1000000000. */
  degrees_of_freedom: number;
}

export interface Influence {
  /** How much the result changes with it, -1000000000000 to 1000000000000. */
  sensitivity: number;
  /** Its standard uncertainty, 0 to 1000000000. */
  u: number;
  /** The degrees of freedom of that, 1 to 1000000000. */
  degrees_of_freedom: number;
}

export interface Rates {
  /** The law. */
  kinetics: Kinetics;
  /** Standard uncertainty of the fast share, 0 to 100 %. */
  u_fast_share_pct: number;
  /** That of the logarithm of the fast time constant, 0 to 1000. */
  u_ln_fast_time: number;
  /** That of the logarithm of the slow one, 0 to 1000. */
  u_ln_slow_time: number;
  /** Correlation of the share and the first logarithm, -1 to 1. */
  correlation_share_fast: number;
  /** Correlation of the share and the second, -1 to 1. */
  correlation_share_slow: number;
  /** Correlation of the two logarithms, -1 to 1. */
  correlation_fast_slow: number;
  /** Degrees of freedom of the fit, 1 to 1000000000. */
  nu_rates: number;
}

export interface Plateau {
  /** Standard uncertainty of the yield that it levels off at, 0 to 100 %. */
  u_equilibrium_yield_pct: number;
  /** Correlation of that yield and the fast share, -1 to 1. */
  correlation_equilibrium_share: number;
  /** Correlation of it and the logarithm of the fast time constant, -1 to 1. */
  correlation_equilibrium_fast: number;
  /** Correlation of it and the logarithm of the slow one, -1 to 1. */
  correlation_equilibrium_slow: number;
}

export interface Term {
  /** How much the result changes with the input, in the units of the two. */
  sensitivity: number;
  /** The input's standard uncertainty, in its own unit. */
  u: number;
  /** The degrees of freedom of that, 1 to 1000000000. */
  degrees_of_freedom: number;
  /** What it contributes to the result's standard uncertainty, in the result's unit. */
  contribution: number;
  /** The input, or its error. */
  source: QuantityKey;
}

export interface Dominant {
  /** What it contributes, in the result's unit. */
  contribution: number;
  /** Its share of the variance, 0 to 100 %. */
  share_pct: number;
  /** What the combined standard uncertainty would be with half the term's. */
  halved: number;
  /** What it would be without the term. */
  gone: number;
  /** The input, or its error. */
  source: QuantityKey;
}

export interface Budget {
  /** The result. */
  value: number;
  /** Its combined standard uncertainty, in its unit. */
  u: number;
  /** The effective degrees of freedom of that, 1 to 1000000000. */
  degrees_of_freedom: number;
  /** The combined standard uncertainty with second-order terms too. Where it differs much from u, the linear rule does not hold. 0 where it cannot be had. */
  second_order: number | null;
  /** How far the mean of the result lies above the result at the inputs' means, in its unit; 0 where it cannot be had. */
  shift: number;
  /** Correlation of a yield with the strength that it was computed from, -1 to 1; null for anything but a yield. */
  correlation: number | null;
  /** The term that contributes most, the first of several; null where nothing is uncertain. */
  dominant: Dominant | null;
  /** The terms in the order of the inputs. */
  terms: Term[];
}

export interface Measured {
  /** Strength, all solids. */
  strength: StrengthEstimate;
  /** Dose. */
  dose: DoseEstimate;
  /** Brew water. */
  water: WaterEstimate;
  /** Beverage. */
  beverage: BeverageEstimate;
  /** Moisture of the dose. */
  moisture: MoistureEstimate;
  /** Solids of the brew water. */
  water_solids: WaterSolidsEstimate;
  /** Vapour lost. */
  vapour: VapourEstimate;
  /** Strength of the liquid kept. How it was chosen may move the yield by three points: give it an uncertainty where it is not known to be 0 or 100. */
  held_strength: HeldStrengthEstimate;
  /** The scale that weighed dose, water and beverage. */
  span: SpanUncertainty;
  /** The coffee's refractive factor. */
  factor: FactorUncertainty;
}

export interface Window {
  /** Lowest strength inside, 0 to 50 %. */
  strength_lowest_pct: number;
  /** Highest, 0 to 50 %. */
  strength_highest_pct: number;
  /** Lowest yield inside, 0 to 100 %; not looked at without one. */
  yield_lowest_pct?: number | null;
  /** Highest, 0 to 100 %; not looked at without one. */
  yield_highest_pct?: number | null;
  /** How it counts that yield; not looked at without one. */
  yield_counting?: Counting | null;
}

export interface Place {
  /** Distance above the lowest edge. */
  above_lowest: number;
  /** Distance below the highest edge. */
  below_highest: number;
  /** Distance above the centre. */
  above_centre: number;
  /** Below, inside or above. */
  side: Side;
}

export interface Standing {
  /** Its strength. */
  strength: Place;
  /** Its yield; null where the window has none. */
  yield: Place | null;
  /** Whether strength, and yield where there is one, are both inside. */
  is_inside: boolean;
}

export namespace water {
  /**
   * Density of liquid water at 0.1 MPa. Source: IAPWS SR6-08(2011), equation 1.
   *
   * @throws {@link Refusal} For an input that is not accepted.
   */
  function density(options: {
    /** Temperature, 0 to 105 °C. */
    water_c: number;
  }): { density_kg_per_m3: number };
  /**
   * Specific heat of liquid water at 0.1 MPa. Source: IAPWS SR6-08(2011), equation 4.
   *
   * @throws {@link Refusal} For an input that is not accepted.
   */
  function specificHeat(options: {
    /** Temperature, 0 to 105 °C. */
    water_c: number;
  }): { specific_heat_j_per_g_k: number };
  /**
   * Heat content of liquid water at 0.1 MPa, above that at 0 °C. Source: IAPWS SR6-08(2011), g + T s.
   *
   * @throws {@link Refusal} For an input that is not accepted.
   */
  function enthalpy(options: {
    /** Temperature, 0 to 105 °C. */
    water_c: number;
  }): { enthalpy_j_per_g: number };
  /**
   * The temperature at which liquid water has a heat content: the inverse of
   * water.enthalpy().
   *
   * @throws {@link Refusal} For an input that is not accepted; with `result_out_of_range` above the heat content at 105 °C.
   */
  function temperatureOfEnthalpy(options: {
    /** Heat content, 0 to 441 J/g. */
    enthalpy_j_per_g: number;
  }): { water_c: number };
  /**
   * Vapour pressure of water. Source: IAPWS-IF97 region 4, R7-97(2012), equation 30.
   *
   * @throws {@link Refusal} For an input that is not accepted.
   */
  function vapourPressure(options: {
    /** Temperature, 0 to 105 °C. */
    water_c: number;
  }): { vapour_pressure_kpa: number };
  /**
   * Boiling point of water. Source: IAPWS-IF97 region 4, R7-97(2012), equation 31.
   *
   * @throws {@link Refusal} For an input that is not accepted.
   */
  function boilingPoint(options: {
    /** Station pressure, not reduced to sea level, 50 to 110 kPa. */
    pressure_kpa: number;
  }): { water_c: number };
  /**
   * Latent heat of vaporisation. Source: a cubic fitted to IAPWS-95, within 0.02 J/g from 0 to 100 °C.
   *
   * @throws {@link Refusal} For an input that is not accepted.
   */
  function latentHeat(options: {
    /** Temperature, 0 to 105 °C. */
    water_c: number;
  }): { latent_heat_j_per_g: number };
  /**
   * Air pressure in the standard atmosphere. Weather moves it by ±2.5 kPa, the boiling point by
   * constants.ALTITUDE_ONLY_UNCERTAINTY_K: a barometer is better. Source: ISO 2533:1975.
   *
   * @throws {@link Refusal} For an input that is not accepted.
   */
  function pressureAtAltitude(options: {
    /** Altitude, -650 to 5550 m. */
    altitude_m: number;
  }): { pressure_kpa: number };
  /**
   * The altitude at which the standard atmosphere has a pressure. Source: ISO 2533:1975.
   *
   * @throws {@link Refusal} For an input that is not accepted; with `result_out_of_range` outside the range of the altitude.
   */
  function altitudeAtPressure(options: {
    /** Air pressure, 50 to 110 kPa. */
    pressure_kpa: number;
  }): { altitude_m: number };
}

export namespace ratio {
  /**
   * Brew water per dose, R = W/D.
   *
   * @throws {@link Refusal} For an input that is not accepted; with `result_out_of_range` outside the range of the ratio.
   */
  function waterRatio(options: {
    /** Dose as weighed, 0.1 to 10000 g. */
    dose_g: number;
    /** Brew water, 0.1 to 200000 g. */
    water_g: number;
  }): { water_ratio_g_per_g: number };
  /**
   * Brew water for a dose at a ratio, W = R D.
   *
   * @throws {@link Refusal} For an input that is not accepted; with `result_out_of_range` outside the range of brew water.
   */
  function waterForRatio(options: {
    /** Dose as weighed, 0.1 to 10000 g. */
    dose_g: number;
    /** Brew water per dose, 0.2 to 200 g/g. */
    water_ratio_g_per_g: number;
  }): { water_g: number };
  /**
   * Dose for an amount of brew water at a ratio, D = W/R.
   *
   * @throws {@link Refusal} For an input that is not accepted; with `result_out_of_range` outside the range of the dose.
   */
  function doseForWater(options: {
    /** Brew water, 0.1 to 200000 g. */
    water_g: number;
    /** Brew water per dose, 0.2 to 200 g/g. */
    water_ratio_g_per_g: number;
  }): { dose_g: number };
  /**
   * Beverage per dose, B/D. An "18 in, 36 out" shot has 2.
   *
   * @throws {@link Refusal} For an input that is not accepted; with `result_out_of_range` outside the range of the ratio.
   */
  function beverageRatio(options: {
    /** Dose as weighed, 0.1 to 10000 g. */
    dose_g: number;
    /** Beverage, 0.1 to 200000 g. */
    beverage_g: number;
  }): { beverage_ratio_g_per_g: number };
  /**
   * Beverage from a dose at a ratio.
   *
   * @throws {@link Refusal} For an input that is not accepted; with `result_out_of_range` outside the range of the beverage.
   */
  function beverageForRatio(options: {
    /** Dose as weighed, 0.1 to 10000 g. */
    dose_g: number;
    /** Beverage per dose, 0.5 to 200 g/g. */
    beverage_ratio_g_per_g: number;
  }): { beverage_g: number };
  /**
   * Dose for a beverage at a ratio.
   *
   * @throws {@link Refusal} For an input that is not accepted; with `result_out_of_range` outside the range of the dose.
   */
  function doseForBeverage(options: {
    /** Beverage, 0.1 to 200000 g. */
    beverage_g: number;
    /** Beverage per dose, 0.5 to 200 g/g. */
    beverage_ratio_g_per_g: number;
  }): { dose_g: number };
  /**
   * Dose per litre of brew water measured at a temperature, ρ/R. The published "55 g/L" does not say
   * at which temperature its litre is measured; between 20 and 95 °C that is 3.6 %.
   *
   * @throws {@link Refusal} For an input that is not accepted.
   */
  function dosePerLitre(options: {
    /** Brew water per dose, 0.2 to 200 g/g. */
    water_ratio_g_per_g: number;
    /** Temperature at which the litre is measured, 0 to 105 °C. */
    water_c: number;
  }): { dose_g_per_l: number };
  /**
   * The ratio that a dose per litre of brew water stands for, ρ over that dose.
   *
   * @throws {@link Refusal} For an input that is not accepted; with `result_out_of_range` outside the range of the ratio.
   */
  function ratioOfDosePerLitre(options: {
    /** Dose per litre, 4 to 5100 g/L. */
    dose_g_per_l: number;
    /** Temperature at which the litre is measured, 0 to 105 °C. */
    water_c: number;
  }): { water_ratio_g_per_g: number };
  /**
   * Mass of a volume of water at its temperature, W = ρ V. A jug marked in millilitres misleads: 200
   * mL of water at 95 °C weighs 192.4 g.
   *
   * @throws {@link Refusal} For an input that is not accepted; with `result_out_of_range` outside the range of brew water.
   */
  function waterMass(options: {
    /** Volume, 0.1 to 250000 mL. */
    volume_ml: number;
    /** Temperature, 0 to 105 °C. */
    water_c: number;
  }): { water_g: number };
  /**
   * Volume of a mass of water at its temperature: the inverse of ratio.waterMass().
   *
   * @throws {@link Refusal} For an input that is not accepted.
   */
  function waterVolume(options: {
    /** Brew water, 0.1 to 200000 g. */
    water_g: number;
    /** Temperature, 0 to 105 °C. */
    water_c: number;
  }): { volume_ml: number };
  /**
   * Dose and water for several servings of one recipe. Plain multiplication: what a chamber keeps
   * whatever the dose is kept only once, which plan.recipe() allows for.
   *
   * @throws {@link Refusal} For an input that is not accepted; with `result_out_of_range` outside the range of dose or brew water.
   */
  function forServings(options: {
    /** Dose as weighed, 0.1 to 10000 g. */
    dose_g: number;
    /** Brew water, 0.1 to 200000 g. */
    water_g: number;
    /** Servings, 1 to 1000. */
    servings: number;
  }): Amounts;
  /**
   * How many whole cups of one size a beverage fills.
   *
   * @throws {@link Refusal} For an input that is not accepted; with `infeasible` where it does not fill one, the nearest cup being the beverage itself; `result_out_of_range` for more cups than servings may be.
   */
  function wholeCups(options: {
    /** Beverage, 0.1 to 200000 g. */
    beverage_g: number;
    /** Beverage in a cup, 0.1 to 200000 g. */
    cup_g: number;
  }): { servings: number };
  /**
   * The fewest equal batches that a chamber can brew, ⌈(W/ρ + v D)/V⌉. All the water of a batch is
   * in the chamber at once.
   *
   * @throws {@link Refusal} For an input that is not accepted; with `result_out_of_range` where a batch would be too small or the batches too many.
   */
  function batches(options: {
    /** Dose as weighed, 0.1 to 10000 g. */
    dose_g: number;
    /** Brew water, 0.1 to 200000 g. */
    water_g: number;
    /** Temperature, 0 to 105 °C. */
    water_c: number;
    /** The chamber. */
    chamber: Chamber;
  }): BatchSplit;
  /**
   * The largest dose that a chamber can brew in one batch at a ratio, V/(R/ρ + v).
   *
   * @throws {@link Refusal} For an input that is not accepted; with `result_out_of_range` outside the range of the dose.
   */
  function largestDose(options: {
    /** Brew water per dose, 0.2 to 200 g/g. */
    water_ratio_g_per_g: number;
    /** Temperature, 0 to 105 °C. */
    water_c: number;
    /** The chamber. */
    chamber: Chamber;
  }): { dose_g: number };
}

export namespace extraction {
  /**
   * Extraction yield of a brew from its strength, by the mass balance.
   *
   *     E = [τ(B + φQ) + s(hD − V)] / [D(1 − s − φτ)],  τ = T − s,  Q = W + hD − V − B
   *
   * The strength counts all solids, those of the water too: reading.totalStrength() makes
   * it from a reading.
   *
   * @throws {@link Refusal} For an input that is not accepted; with `impossible` for less water than such a beverage takes or a strength below that of the water itself; `result_out_of_range` for a yield above 100 % or below zero.
   */
  function extractionYield(options: {
    /** The brew. */
    brew: Brew;
    /** Strength, 0 to 50 %. */
    strength_pct: number;
  }): { yield_pct: number };
  /**
   * Strength of a brew from its yield: the inverse of extraction.extractionYield().
   *
   *     τ = [E D(1 − s) − s(hD − V)] / [B + φQ + φE D],  T = τ + s
   *
   * @throws {@link Refusal} For an input that is not accepted; with `impossible` for less water than such a beverage takes; `result_out_of_range` outside the range of the strength.
   */
  function strength(options: {
    /** The brew. */
    brew: Brew;
    /** Extraction yield, 0 to 100 %. */
    yield_pct: number;
  }): { strength_pct: number };
  /**
   * Beverage that a brew must have given, from its strength and yield. The beverage in the brew is
   * not used, but must be in its range.
   *
   *     B = {[E D(1 − s − φτ) − s(hD − V)]/τ − φ(W + hD − V)} / (1 − φ)
   *
   * @throws {@link Refusal} For an input that is not accepted; with `out_of_range` for a held strength of 100 %, since a steeped brew's strength says nothing of how much was drained; `impossible` for a strength not above the water's own or too little water; `result_out_of_range` outside the range of the beverage.
   */
  function beverage(options: {
    /** The brew. */
    brew: Brew;
    /** Strength, 0 to 50 %. */
    strength_pct: number;
    /** Extraction yield, 0 to 100 %. */
    yield_pct: number;
  }): { beverage_g: number };
  /**
   * Liquid kept by grounds, paper and chamber, its dissolved coffee included, L = Q + E D.
   *
   * @throws {@link Refusal} For an input that is not accepted; with `impossible` for less water than such a beverage takes.
   */
  function retainedLiquid(options: {
    /** The brew. */
    brew: Brew;
    /** Extraction yield, 0 to 100 %. */
    yield_pct: number;
  }): { retained_g: number };
  /**
   * The flow-through form of the yield, E = T B/D: kept liquid is plain water. The form of the
   * published brewing control chart; right for a long drip, low for a steep.
   *
   * @throws {@link Refusal} For an input that is not accepted; with `result_out_of_range` for a yield above 100 %.
   */
  function flowThroughYield(options: {
    /** Strength, 0 to 50 %. */
    strength_pct: number;
    /** Beverage, 0.1 to 200000 g. */
    beverage_g: number;
    /** Dose as weighed, 0.1 to 10000 g. */
    dose_g: number;
  }): { yield_pct: number };
  /**
   * Strength from the flow-through form, T = E D/B.
   *
   * @throws {@link Refusal} For an input that is not accepted; with `result_out_of_range` outside the range of the strength.
   */
  function flowThroughStrength(options: {
    /** Extraction yield, 0 to 100 %. */
    yield_pct: number;
    /** Beverage, 0.1 to 200000 g. */
    beverage_g: number;
    /** Dose as weighed, 0.1 to 10000 g. */
    dose_g: number;
  }): { strength_pct: number };
  /**
   * The steeped form of the yield, E = (W/D) T/(1 − T): all liquid is as strong as the beverage.
   * Right for a steep that is stirred and then pressed or drained.
   *
   * @throws {@link Refusal} For an input that is not accepted; with `result_out_of_range` for a yield above 100 %.
   */
  function steepedYield(options: {
    /** Strength, 0 to 50 %. */
    strength_pct: number;
    /** Brew water, 0.1 to 200000 g. */
    water_g: number;
    /** Dose as weighed, 0.1 to 10000 g. */
    dose_g: number;
  }): { yield_pct: number };
  /**
   * Strength of a steep, T = E/(R + E). At constants.EQUILIBRIUM_YIELD_PCT the published equilibrium
   * of a full steep (Liang, Chan & Ristenpart 2021, doi 10.1038/s41598-021-85787-1).
   *
   * @throws {@link Refusal} For an input that is not accepted; with `result_out_of_range` outside the range of the strength.
   */
  function steepedStrength(options: {
    /** Extraction yield, 0 to 100 %. */
    yield_pct: number;
    /** Brew water per dose, 0.2 to 200 g/g. */
    water_ratio_g_per_g: number;
  }): { strength_pct: number };
  /**
   * Water ratio at which a steep reaches a strength, R = E(1 − T)/T.
   *
   * @throws {@link Refusal} For an input that is not accepted; with `result_out_of_range` outside the range of the ratio.
   */
  function steepedRatio(options: {
    /** Extraction yield, 0 to 100 %. */
    yield_pct: number;
    /** Strength, 0 to 50 %. */
    strength_pct: number;
  }): { water_ratio_g_per_g: number };
  /**
   * Yield that oven-drying the spent grounds would show for a steep, E [1 − r/(R + E)]: the kept
   * liquid dries into the grounds, so the oven reads low.
   *
   * @throws {@link Refusal} For an input that is not accepted; with `result_out_of_range` where more liquid is kept than there is.
   */
  function ovenDriedYield(options: {
    /** Extraction yield, 0 to 100 %. */
    yield_pct: number;
    /** Brew water per dose, 0.2 to 200 g/g. */
    water_ratio_g_per_g: number;
    /** Liquid held per dose, 0 to 15 g/g. */
    true_retention_g_per_g: number;
  }): { oven_yield_pct: number };
  /**
   * Yield per dry coffee from yield per coffee as weighed, E/(1 − h).
   *
   * @throws {@link Refusal} For an input that is not accepted; with `result_out_of_range` for a yield above 100 %.
   */
  function dryBasisYield(options: {
    /** Extraction yield, 0 to 100 %. */
    yield_pct: number;
    /** Moisture of the dose, 0 to 15 %. */
    moisture_pct: number;
  }): { dry_yield_pct: number };
  /**
   * Yield per coffee as weighed from yield per dry coffee: the inverse of
   * extraction.dryBasisYield().
   *
   * @throws {@link Refusal} For an input that is not accepted.
   */
  function asWeighedYield(options: {
    /** Yield per dry coffee, 0 to 100 %. */
    yield_pct: number;
    /** Moisture of the dose, 0 to 15 %. */
    moisture_pct: number;
  }): { as_weighed_yield_pct: number };
  /**
   * Yield after a time of contact.
   *
   *     E(t) = E∞ [f(1 − e^(−t/τ1)) + (1 − f)(1 − e^(−t/τ2))]
   *
   * Valid at the grind and temperature of the kinetics, stirred, with water in plenty.
   *
   * @throws {@link Refusal} For an input that is not accepted.
   */
  function yieldAtTime(options: {
    /** The coffee. */
    kinetics: Kinetics;
    /** Time of contact, 0 to 172800 s. */
    time_s: number;
  }): { yield_pct: number };
  /**
   * Time of contact for a yield: the inverse of extraction.yieldAtTime().
   *
   * @throws {@link Refusal} For an input that is not accepted; with `infeasible` for a yield that it does not reach within two days, the longest time there is.
   */
  function timeForYield(options: {
    /** The coffee. */
    kinetics: Kinetics;
    /** Yield wanted, 0 to 100 %. */
    yield_pct: number;
  }): { time_s: number };
  /**
   * The yield of a brew, judged: a yield near or above what coffee can give is a reason to doubt an
   * input, not to praise the brew. Each doubt says what one input would have to be, all others kept,
   * for the yield to come down to 26 %, the end of what is ordinary.
   *
   * @throws {@link Refusal} For an input that is not accepted; with what extraction.extractionYield() fails with.
   */
  function plausibility(options: {
    /** The brew. */
    brew: Brew;
    /** Strength, 0 to 50 %. */
    strength_pct: number;
  }): Plausibility;
}

export namespace retention {
  /**
   * Beverage expected, B = W − r D − hold-up − paper − drips − vapour.
   *
   * @throws {@link Refusal} For an input that is not accepted; with `result_out_of_range` where nothing is left for the cup.
   */
  function beverage(options: {
    /** The losses. */
    losses: Losses;
    /** Dose as weighed, 0.1 to 10000 g. */
    dose_g: number;
    /** Brew water, 0.1 to 200000 g. */
    water_g: number;
  }): { beverage_g: number };
  /**
   * Brew water for a beverage: the inverse of retention.beverage() in W.
   *
   * @throws {@link Refusal} For an input that is not accepted; with `result_out_of_range` outside the range of brew water.
   */
  function waterForBeverage(options: {
    /** The losses. */
    losses: Losses;
    /** Dose as weighed, 0.1 to 10000 g. */
    dose_g: number;
    /** Beverage, 0.1 to 200000 g. */
    beverage_g: number;
  }): { water_g: number };
  /**
   * Dose that leaves a beverage from an amount of water: the inverse of
   * retention.beverage() in D.
   *
   * @throws {@link Refusal} For an input that is not accepted; with `impossible` where the water does not leave that much with the smallest dose; `result_out_of_range` outside the range of the dose.
   */
  function doseForBeverage(options: {
    /** The losses. */
    losses: Losses;
    /** Brew water, 0.1 to 200000 g. */
    water_g: number;
    /** Beverage, 0.1 to 200000 g. */
    beverage_g: number;
  }): { dose_g: number };
  /**
   * Apparent retention from one brew on a scale, r = (W − B − hold-up − paper − drips − vapour)/D.
   * The retention in the losses is not used, but must be in its range.
   *
   * @throws {@link Refusal} For an input that is not accepted; with `impossible` for less water than the beverage and the other losses take; `result_out_of_range` above the range of the retention.
   */
  function retentionOfBrew(options: {
    /** The losses. */
    losses: Losses;
    /** Dose as weighed, 0.1 to 10000 g. */
    dose_g: number;
    /** Brew water, 0.1 to 200000 g. */
    water_g: number;
    /** Beverage, 0.1 to 200000 g. */
    beverage_g: number;
  }): { apparent_retention_g_per_g: number };
  /**
   * Apparent retention as a scale alone sees it, r = (W − B)/D.
   *
   * @throws {@link Refusal} For an input that is not accepted; with `impossible` for less brew water than beverage; `result_out_of_range` above the range of the retention.
   */
  function apparentRetention(options: {
    /** Dose as weighed, 0.1 to 10000 g. */
    dose_g: number;
    /** Brew water, 0.1 to 200000 g. */
    water_g: number;
    /** Beverage, 0.1 to 200000 g. */
    beverage_g: number;
  }): { apparent_retention_g_per_g: number };
  /**
   * True retention, the liquid that the grounds hold with its dissolved coffee, from what a scale
   * sees, r + E + h − V/D.
   *
   * @throws {@link Refusal} For an input that is not accepted; with `result_out_of_range` where the vapour is more than all that is missing.
   */
  function trueRetention(options: {
    /** What a scale sees, 0 to 10 g/g. */
    apparent_retention_g_per_g: number;
    /** Extraction yield, 0 to 100 %. */
    yield_pct: number;
    /** Moisture of the dose, 0 to 15 %. */
    moisture_pct: number;
    /** Vapour that the apparent retention still contains, 0 to 20000 g; 0 where it was taken out before. */
    vapour_g: number;
    /** Dose as weighed, 0.1 to 10000 g. */
    dose_g: number;
  }): { true_retention_g_per_g: number };
  /**
   * What a scale sees from true retention: the inverse of retention.trueRetention().
   *
   * @throws {@link Refusal} For an input that is not accepted; with `result_out_of_range` below zero: the grounds hold less than they dissolved.
   */
  function apparentOfTrueRetention(options: {
    /** Liquid held per dose, 0 to 15 g/g. */
    true_retention_g_per_g: number;
    /** Extraction yield, 0 to 100 %. */
    yield_pct: number;
    /** Moisture of the dose, 0 to 15 %. */
    moisture_pct: number;
    /** Vapour lost, 0 to 20000 g. */
    vapour_g: number;
    /** Dose as weighed, 0.1 to 10000 g. */
    dose_g: number;
  }): { apparent_retention_g_per_g: number };
  /**
   * True retention per dose from the water content w of spent grounds, w/(1 − w) · (1 − E). Low by
   * about T/(1 − w): it counts the kept liquid's solids as grounds.
   *
   * @throws {@link Refusal} For an input that is not accepted; with `result_out_of_range` outside the range of the retention.
   */
  function retentionOfSpentMoisture(options: {
    /** Water in wet spent grounds, 0 to 95 %. */
    spent_moisture_pct: number;
    /** Extraction yield, 0 to 100 %. */
    yield_pct: number;
  }): { true_retention_g_per_g: number };
}

export namespace dilution {
  /**
   * Strength after adding water, T' = (T B + s A)/(B + A).
   *
   * @throws {@link Refusal} For an input that is not accepted.
   */
  function strengthAfterWater(options: {
    /** Beverage, 0.1 to 200000 g. */
    beverage_g: number;
    /** Strength of the brew, 0 to 50 %. */
    strength_pct: number;
    /** Water added, 0 to 200000 g. */
    added_g: number;
    /** Solids of the water, 0 to 5000 mg/L. */
    water_solids_mg_per_l: number;
  }): { after_pct: number };
  /**
   * Water to add for a wanted strength, A = B (T − T')/(T' − s).
   *
   * @throws {@link Refusal} For an input that is not accepted; with `infeasible` for a wish above the strength at hand, since adding water only weakens, and for one that no amount of this water comes down to; `impossible` for a brew weaker than its own water.
   */
  function waterToReach(options: {
    /** Beverage, 0.1 to 200000 g. */
    beverage_g: number;
    /** Strength of the brew, 0 to 50 %. */
    strength_pct: number;
    /** Strength wanted, 0 to 50 %. */
    wanted_pct: number;
    /** Solids of the water, 0 to 5000 mg/L. */
    water_solids_mg_per_l: number;
  }): { added_g: number };
  /**
   * Beverage that a strong brew makes when water takes it down to a wanted strength, brew and water
   * together, B (T − s)/(T' − s).
   *
   * @throws {@link Refusal} For an input that is not accepted; with `infeasible` for a wish above the strength at hand, since adding water only weakens, and for one that no amount of this water comes down to; `impossible` for a brew weaker than its own water; `result_out_of_range` for a drink larger than a beverage may be.
   */
  function drinkOfBrew(options: {
    /** Beverage, 0.1 to 200000 g. */
    beverage_g: number;
    /** Strength of the brew, 0 to 50 %. */
    strength_pct: number;
    /** Strength wanted, 0 to 50 %. */
    wanted_pct: number;
    /** Solids of the water, 0 to 5000 mg/L. */
    water_solids_mg_per_l: number;
  }): { cup_g: number };
  /**
   * Brew needed so that, with water added, a drink of a wanted size and strength results, B = C (T'
   * − s)/(T − s).
   *
   * @throws {@link Refusal} For an input that is not accepted; with `infeasible` for a wish above the strength of the brew and for one so weak that it takes less brew than a beverage may be; `impossible` for a brew weaker than its own water.
   */
  function brewForDrink(options: {
    /** The drink, 0.1 to 200000 g. */
    cup_g: number;
    /** Strength of the brew, 0 to 50 %. */
    strength_pct: number;
    /** Strength wanted, 0 to 50 %. */
    wanted_pct: number;
    /** Solids of the water, 0 to 5000 mg/L. */
    water_solids_mg_per_l: number;
  }): { beverage_g: number };
  /**
   * Splits one brew over cups of a wanted size and strength.
   *
   * @throws {@link Refusal} For an input that is not accepted; with `infeasible` where the brew does not last, with the largest cup of that strength as the nearest; otherwise as dilution.brewForDrink().
   */
  function split(options: {
    /** The brew, 0.1 to 200000 g. */
    beverage_g: number;
    /** Strength of the brew, 0 to 50 %. */
    strength_pct: number;
    /** Cups, 1 to 1000. */
    servings: number;
    /** Size of the drink in each, 0.1 to 200000 g. */
    cup_g: number;
    /** Strength wanted, 0 to 50 %. */
    wanted_pct: number;
    /** Solids of the water, 0 to 5000 mg/L. */
    water_solids_mg_per_l: number;
  }): CupSplit;
  /**
   * Coffee with milk, the two kinds of solids kept apart, T B/(B + A) and M A/(B + A). A
   * refractometer cannot tell them apart: read the strength before the milk goes in. Milk is
   * perishable: local food rules apply.
   *
   * @throws {@link Refusal} For an input that is not accepted; with `result_out_of_range` for a drink larger than a beverage may be.
   */
  function withMilk(options: {
    /** Beverage, 0.1 to 200000 g. */
    beverage_g: number;
    /** Strength of the brew, 0 to 50 %. */
    strength_pct: number;
    /** Milk, 0 to 200000 g. */
    added_g: number;
    /** Solids of the milk, 0 to 80 %. */
    milk_solids_pct: number;
  }): MilkDrink;
  /**
   * Temperature of two waters or brews mixed, B h(t1) + A h(t2) = (B + A) h(t). A brew's heat
   * content is taken as water's: a mixture moves by less than 0.2 K at filter strength, 1 K at 10 %.
   *
   * @throws {@link Refusal} For an input that is not accepted.
   */
  function mixedTemperature(options: {
    /** One liquid, 0.1 to 400000 g. */
    hot_g: number;
    /** Its temperature, 0 to 105 °C. */
    hot_c: number;
    /** The other, 0 to 200000 g. */
    cold_g: number;
    /** Its temperature, 0 to 105 °C. */
    cold_c: number;
  }): { water_c: number };
  /**
   * Temperature of a brew with milk, the milk's specific heat taken as constants.MILK_J_PER_G_K
   * whatever its fat.
   *
   * @throws {@link Refusal} For an input that is not accepted.
   */
  function mixedWithMilkTemperature(options: {
    /** The brew, 0.1 to 400000 g. */
    hot_g: number;
    /** Its temperature, 0 to 105 °C. */
    hot_c: number;
    /** The milk, 0 to 200000 g. */
    cold_g: number;
    /** Its temperature, 0 to 105 °C. */
    cold_c: number;
  }): { water_c: number };
  /**
   * A drink over ice: all melted, or at 0 °C with some left, by the balance of heat. The glass and
   * the air give nothing. Iced drinks are under local food rules. Source: IAPWS R10-06 for ice.
   *
   * @throws {@link Refusal} For an input that is not accepted; with `infeasible` for ice so cold and plentiful that the drink itself would begin to freeze.
   */
  function iced(options: {
    /** Beverage, 0.1 to 200000 g. */
    beverage_g: number;
    /** Temperature of the drink, 0 to 105 °C. */
    water_c: number;
    /** Its strength, 0 to 50 %. */
    strength_pct: number;
    /** Ice, 0 to 200000 g. */
    ice_g: number;
    /** Temperature of the ice, -40 to 0 °C. */
    ice_c: number;
  }): Iced;
  /**
   * Ice that brings a drink to a temperature, all of it melted: the inverse of
   * dilution.iced().
   *
   * @throws {@link Refusal} For an input that is not accepted; with `infeasible` for a wish above the drink's own temperature; `result_out_of_range` outside the range of the ice.
   */
  function iceToReach(options: {
    /** Beverage, 0.1 to 200000 g. */
    beverage_g: number;
    /** Temperature of the drink, 0 to 105 °C. */
    water_c: number;
    /** Temperature wanted, 0 to 105 °C. */
    wanted_c: number;
    /** Temperature of the ice, -40 to 0 °C. */
    ice_c: number;
  }): { ice_g: number };
}

export namespace heat {
  /**
   * Grounds at a temperature, with constants.GROUNDS_J_PER_G_K, an estimate.
   *
   * @throws {@link Refusal} For an input that is not accepted.
   */
  function grounds(options: {
    /** Dose as weighed, 0.1 to 10000 g. */
    dose_g: number;
    /** Temperature of the grounds, -40 to 105 °C. */
    grounds_c: number;
  }): Body;
  /**
   * Heat capacity of a vessel, f m c, of which a share f follows the liquid. The share tends to 100
   * % for a steep of a minute or more; no published value was found. Better:
   * heat.vesselHeatCapacity() from one thermometer reading.
   *
   * @throws {@link Refusal} For an input that is not accepted.
   */
  function heatCapacity(options: {
    /** Mass, 0 to 100000 g. */
    vessel_g: number;
    /** Specific heat, 0.05 to 10 J/(g K). */
    specific_heat_j_per_g_k: number;
    /** Share that follows, 0 to 100 %. */
    share_pct: number;
  }): { heat_capacity_j_per_k: number };
  /**
   * Temperature at which a liquid and the bodies it meets settle. Nothing is lost to the air
   * meanwhile.
   *
   *     m h(t) + t Σ C = m h(t0) + Σ C tᵢ
   *
   * @throws {@link Refusal} For an input that is not accepted; with `out_of_range` for more than eight bodies; `result_out_of_range` where the liquid would freeze.
   */
  function settle(options: {
    /** The liquid, 0.1 to 400000 g. */
    water_g: number;
    /** Its temperature, 0 to 105 °C. */
    water_c: number;
    /** The bodies. Empty where there are none. */
    bodies: Body[];
  }): { settled_c: number };
  /**
   * Temperature that a liquid must have so that it settles at a wanted one: the inverse of
   * heat.settle(). Whether it can be reached here is for heat.reachable() to
   * say.
   *
   * @throws {@link Refusal} For an input that is not accepted; with `out_of_range` for more than eight bodies; `result_out_of_range` where that is no temperature of liquid water.
   */
  function beforeSettling(options: {
    /** The liquid, 0.1 to 400000 g. */
    water_g: number;
    /** Temperature wanted, 0 to 105 °C. */
    settled_c: number;
    /** The bodies. Empty where there are none. */
    bodies: Body[];
  }): { water_c: number };
  /**
   * A vessel after a rinse that is poured away: it keeps the temperature at which both settled.
   *
   * @throws {@link Refusal} For an input that is not accepted; with `result_out_of_range` where the rinse would freeze.
   */
  function preheated(options: {
    /** The vessel before. */
    vessel: Body;
    /** The rinse, 0.1 to 400000 g. */
    water_g: number;
    /** Its temperature, 0 to 105 °C. */
    water_c: number;
  }): Body;
  /**
   * Heat capacity of a vessel from one thermometer reading: water of known mass and temperature goes
   * in, beside bodies already known, and settles.
   *
   *     C = {m [h(t0) − h(t)] − Σ Cᵢ (t − tᵢ)} / (t − t_vessel)
   *
   * @throws {@link Refusal} For an input that is not accepted; with `out_of_range` for more than eight bodies; `result_out_of_range` where the temperatures do not stand in order.
   */
  function vesselHeatCapacity(options: {
    /** The liquid, 0.1 to 400000 g. */
    water_g: number;
    /** Its temperature before, 0 to 105 °C. */
    water_c: number;
    /** The temperature read, 0 to 105 °C. */
    settled_c: number;
    /** Temperature of the vessel before, -40 to 105 °C. */
    vessel_c: number;
    /** Bodies already known. Empty where there are none. */
    others: Body[];
  }): { heat_capacity_j_per_k: number };
  /**
   * Temperature after a vapour loss that water and bodies, all at one temperature, pay for. A gram
   * of vapour costs 250 g of water 2.2 K.
   *
   *     (m − V) h(t) + C t = (m − V) h(t0) + C t0 − V L(t0)
   *
   * @throws {@link Refusal} For an input that is not accepted; with `impossible` for as much vapour as liquid; `result_out_of_range` where the rest would freeze.
   */
  function afterVapour(options: {
    /** The liquid, 0.1 to 400000 g. */
    water_g: number;
    /** Temperature before, 0 to 105 °C. */
    water_c: number;
    /** Vapour lost, 0 to 20000 g. */
    vapour_g: number;
    /** Heat capacity of all bodies, 0 to 1000000 J/K. */
    capacity_j_per_k: number;
  }): { after_c: number };
  /**
   * Temperature after a pour that costs a drop. Estimates: constants.THIN_STREAM_DROP_K,
   * constants.DUMP_DROP_K.
   *
   * @throws {@link Refusal} For an input that is not accepted; with `result_out_of_range` below 0 °C.
   */
  function afterPour(options: {
    /** Temperature before, 0 to 105 °C. */
    water_c: number;
    /** The drop, 0 to 105 K. */
    drop_k: number;
  }): { after_c: number };
  /**
   * Temperature before a pour that costs a drop: the inverse of heat.afterPour().
   *
   * @throws {@link Refusal} For an input that is not accepted; with `result_out_of_range` above the range of the temperature.
   */
  function beforePour(options: {
    /** Temperature after, 0 to 105 °C. */
    water_c: number;
    /** The drop, 0 to 105 K. */
    drop_k: number;
  }): { before_c: number };
  /**
   * Passes a temperature on if boiling water can be that hot.
   *
   * @throws {@link Refusal} For an input that is not accepted; with `infeasible` above the boiling point; a hair below it is the nearest.
   */
  function reachable(options: {
    /** Temperature, 0 to 105 °C. */
    water_c: number;
    /** Boiling point here, 0 to 105 °C. */
    boiling_c: number;
  }): { reachable_c: number };
  /**
   * Time to cool from one temperature to another.
   *
   *     t = (1/k) ∫ dT/F(T),  F(T) = (T − Ta) + β [p(T) − RH p(Ta)]
   *
   * β is constants.OPEN_CUP_K_PER_KPA open and 0 lidded, which is Newton's law. With a rate from two
   * readings ten minutes apart, measured cups were met within 0.8 K half an hour on.
   *
   * @throws {@link Refusal} For an input that is not accepted; with `impossible` for a start not warmer than where cooling ends; `infeasible` for a goal that cooling does not reach; `result_out_of_range` beyond the range of the time.
   */
  function timeToCool(options: {
    /** Temperature now, 0 to 105 °C. */
    water_c: number;
    /** Temperature wanted, 0 to 105 °C. */
    to_c: number;
    /** Cooling rate, 0.000001 to 1 1/min. */
    cooling_per_min: number;
    /** The room. */
    surroundings: Surroundings;
  }): { time_s: number };
  /**
   * Cooling rate from two thermometer readings a known time apart, by the law of
   * heat.timeToCool(). Ten minutes apart is good.
   *
   * @throws {@link Refusal} For an input that is not accepted; with `impossible` for readings that are not in order or not above where cooling ends; `result_out_of_range` outside the range of the rate, as for equal readings or no time between them.
   */
  function coolingRate(options: {
    /** First reading, 0 to 105 °C. */
    water_c: number;
    /** Second reading, 0 to 105 °C. */
    to_c: number;
    /** Time between them, 0 to 172800 s. */
    time_s: number;
    /** The room. */
    surroundings: Surroundings;
  }): { cooling_per_min: number };
  /**
   * Temperature after a time: the inverse of heat.timeToCool().
   *
   * @throws {@link Refusal} For an input that is not accepted; with `impossible` for a start not warmer than where cooling ends; `result_out_of_range` where it would freeze.
   */
  function temperatureAfter(options: {
    /** Temperature now, 0 to 105 °C. */
    water_c: number;
    /** Time, 0 to 172800 s. */
    time_s: number;
    /** Cooling rate, 0.000001 to 1 1/min. */
    cooling_per_min: number;
    /** The room. */
    surroundings: Surroundings;
  }): { after_c: number };
  /**
   * Cooling rate of an open cup without a thermometer. Estimate, −50 to +40 %; two readings and
   * heat.coolingRate() are far better.
   *
   * @throws {@link Refusal} For an input that is not accepted; with `result_out_of_range` outside the range of the rate.
   */
  function openCupRateEstimate(options: {
    /** The drink, 0.1 to 400000 g. */
    water_g: number;
    /** Heat capacity of the cup, 0 to 1000000 J/K. */
    heat_capacity_j_per_k: number;
    /** Inner diameter at the surface, 10 to 1000 mm. */
    diameter_mm: number;
  }): { cooling_per_min: number };
}

export namespace reading {
  /**
   * Combines repeated readings of one sample by the acceptance rule of ISO 5725-6. A display that
   * steps by 0.01 % adds to the scatter: with a repeatability of the sample alone pass √(s_r² +
   * 0.01²/12).
   *
   * @throws {@link Refusal} For an input that is not accepted; with `out_of_range` for no reading or more than ten.
   */
  function combine(options: {
    /** The readings, each 0 to 50 %. */
    strength_pct: number[];
    /** Standard deviation of readings of one sample by one person on one instrument, % strength, 0.0005 to 2 % strength. */
    repeatability_pct: number;
  }): Combined;
  /**
   * Standard deviation of repeated readings, one's own repeatability, √[Σ(x − x̄)²/(n − 1)]. From
   * three readings it is itself uncertain by half; pool several series.
   *
   * @throws {@link Refusal} For an input that is not accepted; with `out_of_range` for fewer than two readings or more than ten; `result_out_of_range` for readings that are all equal: the display is too coarse to tell.
   */
  function repeatability(options: {
    /** The readings, each 0 to 50 %. */
    strength_pct: number[];
  }): { repeatability_pct: number };
  /**
   * The range that n readings exceed once in twenty times, f(n) s_r, in % strength. Source: ISO
   * 5725-6, acceptability of results.
   *
   * @throws {@link Refusal} For an input that is not accepted; with `out_of_range` for fewer than two.
   */
  function criticalRange(options: {
    /** How many readings, at least 2, 1 to 10. */
    readings: number;
    /** Standard deviation of readings of one sample by one person on one instrument, % strength, 0.0005 to 2 % strength. */
    repeatability_pct: number;
  }): { critical_range_pct: number };
  /**
   * Strength of all solids in the beverage, which the mass balance works with: on distilled water
   * the reading itself, on brew water T + s(1 − T).
   *
   * @throws {@link Refusal} For an input that is not accepted; with `result_out_of_range` for a reading on brew water so near the highest strength that the water's solids lead past it.
   */
  function totalStrength(options: {
    /** The reading, 0 to 50 %. */
    strength_pct: number;
    /** What the instrument was zeroed on. */
    zero: Zero;
    /** Solids of the water, 0 to 5000 mg/L. */
    water_solids_mg_per_l: number;
  }): { total_pct: number };
  /**
   * Strength in coffee solids alone: on brew water the reading itself, on distilled water (T − s)/(1
   * − s).
   *
   * @throws {@link Refusal} For an input that is not accepted; with `result_out_of_range` for a reading on a distilled zero below the water's own solids.
   */
  function coffeeStrength(options: {
    /** The reading, 0 to 50 %. */
    strength_pct: number;
    /** What the instrument was zeroed on. */
    zero: Zero;
    /** Solids of the water, 0 to 5000 mg/L. */
    water_solids_mg_per_l: number;
  }): { coffee_pct: number };
  /**
   * Degrees Brix of a refractive index at 20 °C and 589 nm. Source: fitted to the ICUMSA 1974
   * sucrose table, 0 to 30 °Bx, within 0.005 °Bx.
   *
   * @throws {@link Refusal} For an input that is not accepted; with `result_out_of_range` outside the range of Brix.
   */
  function brixOfIndex(options: {
    /** Refractive index relative to air, 1.33 to 1.382. */
    refractive_index: number;
  }): { brix: number };
  /**
   * Refractive index at 20 °C and 589 nm of degrees Brix. Source: a fit of its own to the same
   * table, within 0.000007.
   *
   * @throws {@link Refusal} For an input that is not accepted; with `result_out_of_range` outside the range of the index.
   */
  function indexOfBrix(options: {
    /** Degrees Brix, -2 to 30.5 °Bx. */
    brix: number;
  }): { refractive_index: number };
  /**
   * A Brix reading at the sample's temperature, corrected to 20 °C. Only for an instrument that does
   * not compensate by itself and was zeroed at 20 °C; zeroing on water at the sample's temperature
   * is better. Source: fitted to IAPWS R9-97, within 0.1 °Bx for coffee at 10 to 30 °C.
   *
   * @throws {@link Refusal} For an input that is not accepted; with `result_out_of_range` outside the range of Brix.
   */
  function brixAt20(options: {
    /** Degrees Brix, -2 to 30.5 °Bx. */
    brix: number;
    /** Temperature of the sample, 10 to 40 °C. */
    sample_c: number;
  }): { corrected_brix: number };
  /**
   * Strength from degrees Brix at 20 °C or compensated, T = k B.
   *
   * @throws {@link Refusal} For an input that is not accepted; with `result_out_of_range` below zero or above the range of the strength.
   */
  function strengthOfBrix(options: {
    /** Degrees Brix, -2 to 30.5 °Bx. */
    brix: number;
    /** Strength per degree Brix, 0.3 to 2 %/°Bx. constants.USUAL_REFRACTIVE_FACTOR_PCT_PER_BRIX has a weak basis: calibrate where it matters. */
    refractive_factor_pct_per_brix: number;
  }): { strength_pct: number };
  /**
   * Degrees Brix that a strength would show, T/k.
   *
   * @throws {@link Refusal} For an input that is not accepted; with `result_out_of_range` above the range of Brix.
   */
  function brixOfStrength(options: {
    /** Strength, 0 to 50 %. */
    strength_pct: number;
    /** Strength per degree Brix, 0.3 to 2 %/°Bx. constants.USUAL_REFRACTIVE_FACTOR_PCT_PER_BRIX has a weak basis: calibrate where it matters. */
    refractive_factor_pct_per_brix: number;
  }): { brix: number };
  /**
   * Strength from a refractive index read at the sample's temperature: Brix, corrected to 20 °C,
   * times the factor.
   *
   * @throws {@link Refusal} For an input that is not accepted; with `result_out_of_range` for an index below that of water.
   */
  function strengthOfIndex(options: {
    /** Refractive index relative to air, 1.33 to 1.382. */
    refractive_index: number;
    /** Temperature of the sample, 10 to 40 °C. */
    sample_c: number;
    /** Strength per degree Brix, 0.3 to 2 %/°Bx. constants.USUAL_REFRACTIVE_FACTOR_PCT_PER_BRIX has a weak basis: calibrate where it matters. */
    refractive_factor_pct_per_brix: number;
  }): { strength_pct: number };
}

export namespace calibrate {
  /**
   * Retention and hold-up of a brewer, from brews of several doses by least squares. Doses far apart
   * tell most. In every fit of this room, a value plus and minus its u times
   * uncertainty.coverageFactor() for the fit's degrees of freedom holds the truth as
   * often as the confidence says. Two are told otherwise. A time constant goes by its logarithm: its
   * interval is its value over and times e to the power of that. A repeatability is itself a
   * scatter, whose interval would hold it 90 to 94 times in a hundred for 95; its degrees of freedom
   * make the intervals of later readings right, for which it is there. A measurement where every
   * such law begins, no yield after no time or no Brix of water, tells nothing and does not count.
   *
   *     W − B − V = c + r D
   *     r = S_xy/S_xx,  c = ȳ − r D̄,  u(r) = s/√S_xx,  u(c) = s √(1/n + D̄²/S_xx),  cov = −D̄ s²/S_xx
   *
   * @throws {@link Refusal} For an input that is not accepted; with `cannot_tell` for fewer than three brews, brews of one dose size, or of sizes so near each other that scatter makes the line; `result_out_of_range` outside the range of the retention or the hold-up.
   */
  function retentionLine(options: {
    /** The brews. */
    brews: Drained[];
  }): RetentionLine;
  /**
   * Beverage that the next brew gives by the line through earlier ones, B = W − V − c − r D.
   *
   * @throws {@link Refusal} For an input that is not accepted; with what calibrate.retentionLine() fails with; `result_out_of_range` where nothing is left for the cup, too.
   */
  function expectedBeverage(options: {
    /** The earlier brews. */
    brews: Drained[];
    /** Dose of the next one, 0.1 to 10000 g. */
    next_dose_g: number;
    /** Its brew water, 0.1 to 200000 g. */
    next_water_g: number;
    /** Vapour that it will lose, 0 to 20000 g. */
    next_vapour_g: number;
  }): Expected;
  /**
   * Retention of a brewer that keeps nothing but what the grounds hold, W − B − V = r D. Also for
   * brews of one dose size: then the hold-up is in it, and it is right for that size alone.
   *
   *     r = Σ D y/Σ D²,  u(r) = s/√Σ D²
   *
   * @throws {@link Refusal} For an input that is not accepted; with `cannot_tell` for fewer than two brews; `result_out_of_range` outside the range of the retention.
   */
  function retention(options: {
    /** The brews. */
    brews: Drained[];
  }): FittedRetention;
  /**
   * Heat capacity of a brewer, from several times that water was poured into it empty and settled.
   * Wait as long as a brew takes. For one pour beside bodies already known:
   * heat.vesselHeatCapacity().
   *
   *     m [h(t0) − h(t)] = C (t − t_vessel)
   *     C = Σxy/Σx²,  u(C) = s/√Σx²
   *
   * @throws {@link Refusal} For an input that is not accepted; with `cannot_tell` for fewer than two pours, or vessels that were as warm as the water; `result_out_of_range` where the temperatures do not stand in order.
   */
  function heatCapacity(options: {
    /** The pours. */
    pours: Settled[];
  }): FittedHeatCapacity;
  /**
   * Yield at which a coffee levels off: the mean of long steeps, (W/D) T/(1 − T), with u = s/√n.
   *
   * @throws {@link Refusal} For an input that is not accepted; with `cannot_tell` for fewer than two steeps; `result_out_of_range` for a steep whose own yield would be above 100 %.
   */
  function equilibriumYield(options: {
    /** The steeps. */
    steeps: Steeped[];
  }): FittedYield;
  /**
   * How fast a coffee extracts, by one rate, from yields of brews that differ in time of contact
   * only. No start is asked for. Source of the law: Fuller & Rao 2017, doi
   * 10.1038/s41598-017-18247-4, abstract.
   *
   *     E(t) = E∞ (1 − e^(−t/τ)),  parameters E∞ and ln τ
   *
   * @throws {@link Refusal} For an input that is not accepted; with `cannot_tell` for fewer than three yields after some time, for ones that do not begin to level off, that have all levelled off, or that fall; `result_out_of_range` for an equilibrium above 100 %.
   */
  function oneRate(options: {
    /** The yields. */
    yields: Timed[];
  }): OneRate;
  /**
   * How fast a coffee extracts, by two rates, from a few seconds to well beyond the slow time
   * constant. Accepted only where it explains more than scatter about one rate would explain once in
   * twenty times; refused too where the equilibrium would be above 100 %. Source of the law: Moroney
   * et al. 2015, doi 10.1016/j.ces.2015.06.003, abstract.
   *
   *     E(t) = E∞ [ f(1 − e^(−t/τ1)) + (1 − f)(1 − e^(−t/τ2)) ]
   *
   * @throws {@link Refusal} For an input that is not accepted; with `cannot_tell` for fewer than seven yields, for ones that one rate describes as well, that do not begin to level off, or that have all levelled off.
   */
  function twoRates(options: {
    /** The yields. */
    yields: Timed[];
  }): TwoRates;
  /**
   * Cooling rate of a cup from several readings of a thermometer left in it, by the law of
   * heat.timeToCool(): least squares in temperature, the first reading counting like all
   * others. Readings over twenty minutes tell more than many within five.
   *
   * @throws {@link Refusal} For an input that is not accepted; with `cannot_tell` for fewer than three readings, all at one time, or ones that do not fall; `impossible` for a reading not above where cooling ends; `result_out_of_range` outside the range of the rate.
   */
  function cooling(options: {
    /** The readings. */
    readings: Thermometer[];
    /** The room. */
    surroundings: Surroundings;
  }): Cooling;
  /**
   * Refractive factor of a coffee, T = k x, from samples read and oven-dried. Ten grams dried for
   * three hours at 105 °C on a balance of 0.1 mg tell T to 0.003 %; on a scale of 0.1 g nothing is
   * told. The factor holds for the coffees dried, filtered as they were.
   *
   *     k = Σ x T/Σ x²,  u(k)/k = s/(k √Σ x²)
   *
   * @throws {@link Refusal} For an input that is not accepted; with `cannot_tell` for fewer than two samples, or readings that are all zero; `result_out_of_range` outside the range of the factor.
   */
  function refractiveFactor(options: {
    /** The samples. */
    samples: Dried[];
  }): FittedRefractiveFactor;
  /**
   * Repeatability of one's own readings, pooled over several cups that were each read several times,
   * in any order. A cup that was read once adds nothing. Source: JCGM 100:2008, 4.2.4 and E.4.3
   * (from memory).
   *
   *     s_r² = Σ(x − x̄ of its cup)²/ν,  ν = readings less cups,  u(s_r) ≈ s_r/√(2ν)
   *
   * @throws {@link Refusal} For an input that is not accepted; with `cannot_tell` where no cup was read twice; `result_out_of_range` for readings that are all equal: the display is too coarse to tell.
   */
  function repeatability(options: {
    /** The readings. */
    readings: Repeat[];
  }): FittedRepeatability;
}

export namespace verdict {
  /**
   * Where a cup stands in a window, without regard to how sure its numbers are. The yield must be
   * counted as the window counts it.
   *
   * @throws {@link Refusal} For an input that is not accepted; with `empty_band` where a lowest edge is not below its highest.
   */
  function stand(options: {
    /** The window. */
    window: Window;
    /** Strength, 0 to 50 %. */
    strength_pct: number;
    /** Extraction yield, 0 to 100 %; must be in its range even where the window has none. */
    yield_pct: number;
  }): Standing;
}

export namespace uncertainty {
  /**
   * Coverage factor: the two-sided quantile of Student's distribution, of any degrees of freedom
   * from 1, whole or not; for the highest the normal distribution's. Relative error below 10⁻¹¹.
   * Source: GUM G.3.
   *
   *     P(|T| ≤ k) = confidence
   *
   * @throws {@link Refusal} For an input that is not accepted.
   */
  function coverageFactor(options: {
    /** How sure the statement has to be, 50 to 99.9 %. */
    confidence_pct: number;
    /** Of the uncertainty, 1 to 1000000000. */
    degrees_of_freedom: number;
  }): { coverage_factor: number };
  /**
   * Expanded uncertainty U = k u for a confidence: "1.44 % ± 0.05 %".
   *
   * @throws {@link Refusal} For an input that is not accepted; with `result_out_of_range` for a half-width past the range of the uncertainty.
   */
  function expanded(options: {
    /** The value. */
    estimate: Estimate;
    /** How sure the statement has to be, 50 to 99.9 %. */
    confidence_pct: number;
  }): Expanded;
  /**
   * Mean of repeats and its standard uncertainty (type A evaluation).
   *
   *     u = s/√n,   s² = Σ(x − x̄)²/(n − 1),   ν = n − 1
   *
   * Two or three repeats say little about their own scatter: then uncertainty.pooled()
   * from earlier series is better. Repeats that are all equal give zero, because the display hides
   * the scatter: put uncertainty.ofDisplay() beside it by
   * uncertainty.together(). Source: GUM 4.2.
   *
   * @throws {@link Refusal} For an input that is not accepted; with `out_of_range` for a single repeat or more than a hundred.
   */
  function ofRepeats(options: {
    /** The repeats, each -1000000000 to 1000000000. */
    value: number[];
  }): Mean;
  /**
   * Standard uncertainty of a mean of n readings, from the scatter of earlier series.
   *
   *     u = s_p/√n,   s_p² = Σ νᵢ sᵢ²/Σ νᵢ,   ν = Σ νᵢ
   *
   * Where there are more than ten series, pool in steps, with n = 1. Source: GUM 4.2.4.
   *
   * @throws {@link Refusal} For an input that is not accepted; with `out_of_range` for no series or more than ten.
   */
  function pooled(options: {
    /** The series. */
    series: Series[];
    /** How many readings the mean is of, 1 to 10. */
    readings: number;
  }): Standard;
  /**
   * A strength from repeated readings, by the rule of reading.combine(), and its standard
   * uncertainty.
   *
   *     u = s_r/√n, with the ν of s_r             one reading, or several that agree
   *     u = s/√n,   ν = n − 1, s their own        where they do not: two so far, or their median
   *
   * Readings that do not agree have shown that s_r is not their scatter.
   *
   * @throws {@link Refusal} For an input that is not accepted; with `out_of_range` for no reading or more than ten.
   */
  function ofReadings(options: {
    /** The readings, each 0 to 50 %. */
    strength_pct: number[];
    /** One's own repeatability s_r. */
    repeatability: RepeatabilityEstimate;
  }): StrengthEstimate;
  /**
   * Several independent errors of one value, u² = Σ uᵢ²: the scatter of readings and the step of
   * their display, a thermometer and its place. Source: GUM 5.1.2, G.4.1.
   *
   * @throws {@link Refusal} For an input that is not accepted; with `out_of_range` for none or more than ten; `result_out_of_range` past the range of the uncertainty.
   */
  function together(options: {
    /** Their uncertainties, all in one unit. */
    errors: Standard[];
  }): Standard;
  /**
   * Standard uncertainty of an error that lies within ± a (type B evaluation).
   *
   *     u = a/√3 rectangular,   a/√6 triangular,   a/√2 arcsine
   *
   * It counts as known; where the limit itself is a guess, uncertainty.freedomOfDoubt()
   * says how well. Source: GUM 4.3.7, 4.3.9, and H.1 for a cyclic temperature.
   *
   * @throws {@link Refusal} For an input that is not accepted.
   */
  function ofLimit(options: {
    /** The limit a, 0 to 1000000000. */
    limit: number;
    /** What is known of the error. */
    shape: Shape;
  }): Standard;
  /**
   * Standard uncertainty that a display of step d adds, u = d/√12. Source: GUM F.2.2.1.
   *
   * @throws {@link Refusal} For an input that is not accepted.
   */
  function ofDisplay(options: {
    /** The step d, 0 to 1000000000. */
    step: number;
  }): Standard;
  /**
   * Standard uncertainty from a certificate that says "± U, k", u = U/k. Source: GUM 4.3.3.
   *
   * @throws {@link Refusal} For an input that is not accepted; with `result_out_of_range` for a U at the end of its range over a k below one.
   */
  function ofExpanded(options: {
    /** The expanded uncertainty U, 0 to 1000000000. */
    expanded: number;
    /** The k, 0.5 to 1000; most often 2. */
    coverage_factor: number;
  }): Standard;
  /**
   * Degrees of freedom of an uncertainty that is itself uncertain by Δu/u, ν = ½ (Δu/u)⁻². A quarter
   * gives 8; less than 0.0022 % counts as known. Source: GUM G.4.2, equation G.3.
   *
   * @throws {@link Refusal} For an input that is not accepted.
   */
  function freedomOfDoubt(options: {
    /** How uncertain the uncertainty is, over itself, 0 to 70 %. */
    doubt_pct: number;
  }): { degrees_of_freedom: number };
  /**
   * A budget of one's own, from sensitivities and uncertainties in any units. Of what the linear
   * rule leaves out it says nothing.
   *
   *     u² = Σ cᵢ² uᵢ²                       GUM 5.1.2
   *     ν = u⁴ / Σ (cᵢ uᵢ)⁴/νᵢ               GUM G.4.1
   *
   * @throws {@link Refusal} For an input that is not accepted; with `out_of_range` for no influence or more than ten; `result_out_of_range` past the range of the uncertainty.
   */
  function combine(options: {
    /** The result, -1000000000 to 1000000000. */
    value: number;
    /** What moves it. */
    influences: Influence[];
  }): Budget;
  /**
   * Strength of all solids in the beverage, from a reading r; see
   * reading.totalStrength().
   *
   *     T = x + s(1 − x),  x = (r + e)(1 + f)       zeroed on brew water
   *     T = x                                       zeroed on distilled water
   *
   * Terms: reading, instrument e, factor f, water solids s. Leave the factor at 0 where it is to be
   * kept apart for yields and comparisons.
   *
   * @throws {@link Refusal} For an input that is not accepted; with what reading.totalStrength() fails with, and `result_out_of_range` for an uncertainty past its range.
   */
  function strength(options: {
    /** The reading, mean of repeats, with their scatter. */
    strength: StrengthEstimate;
    /** The instrument's own error. */
    instrument: InstrumentUncertainty;
    /** The coffee's refractive factor. */
    factor: FactorUncertainty;
    /** What the instrument was zeroed on. */
    zero: Zero;
    /** Solids of the brew water. */
    water_solids: WaterSolidsEstimate;
  }): Budget;
  /**
   * Strength from a reading in degrees Brix, T = k B; see reading.strengthOfBrix().
   *
   *     u(T)² = (k u(B))² + (T u(k)/k)²
   *
   * Terms: Brix, factor. The factor's error is common to all readings of one coffee: where it is given
   * apart for yields and comparisons, let it be 0 here.
   *
   * @throws {@link Refusal} For an input that is not accepted; with `result_out_of_range` for a strength or an uncertainty past its range.
   */
  function strengthOfBrix(options: {
    /** The reading. */
    brix: BrixEstimate;
    /** The coffee's refractive factor k. */
    factor: RefractiveFactorEstimate;
  }): Budget;
  /**
   * The flow-through form of the yield, E = T B/D; see extraction.flowThroughYield().
   *
   *     (u(E)/E)² = (u(T)/T)² + (u(B)/B)² + (u(D)/D)² + f²
   *
   * Terms: strength, beverage, dose, factor. The span of the scale cancels.
   *
   * @throws {@link Refusal} For an input that is not accepted; with `result_out_of_range` for a yield above 100 % or an uncertainty past its range.
   */
  function flowThroughYield(options: {
    /** Strength. */
    strength: StrengthEstimate;
    /** Beverage. */
    beverage: BeverageEstimate;
    /** Dose. */
    dose: DoseEstimate;
    /** The coffee's refractive factor. */
    factor: FactorUncertainty;
  }): Budget;
  /**
   * The steeped form of the yield, E = (W/D) T/(1 − T); see extraction.steepedYield().
   *
   *     (u(E)/E)² = (u(T)/[T(1 − T)])² + (u(W)/W)² + (u(D)/D)² + (f/(1 − T))²
   *
   * Terms: strength, brew water, dose, factor. The span of the scale cancels.
   *
   * @throws {@link Refusal} For an input that is not accepted; with `result_out_of_range` for a yield above 100 % or an uncertainty past its range.
   */
  function steepedYield(options: {
    /** Strength. */
    strength: StrengthEstimate;
    /** Brew water. */
    water: WaterEstimate;
    /** Dose. */
    dose: DoseEstimate;
    /** The coffee's refractive factor. */
    factor: FactorUncertainty;
  }): Budget;
  /**
   * The yield by the whole mass balance; see extraction.extractionYield(). Terms in the order of the
   * fields. What is left of the scale's span is the vapour's, if that was not weighed.
   *
   * @throws {@link Refusal} For an input that is not accepted; with what extraction.extractionYield() fails with, and `result_out_of_range` for an uncertainty past its range.
   */
  function extractionYield(options: {
    /** The brew. */
    measured: Measured;
  }): Budget;
  /**
   * Strength that a steep will have, T = E D/(W + E D); see extraction.steepedStrength().
   *
   *     ∂T/∂E = D W/(W + ED)²    ∂T/∂D = E W/(W + ED)²    ∂T/∂W = −E D/(W + ED)²
   *
   * Terms: yield, dose, brew water. The yield's uncertainty is how far it differs from brew to brew.
   *
   * @throws {@link Refusal} For an input that is not accepted; with `result_out_of_range` for a ratio, a strength or an uncertainty past its range.
   */
  function steepedStrength(options: {
    /** The yield to expect. */
    expected: YieldEstimate;
    /** Dose. */
    dose: DoseEstimate;
    /** Brew water. */
    water: WaterEstimate;
  }): Budget;
  /**
   * Beverage that a brew will give, B = W − r D − losses; see retention.beverage().
   *
   * Terms: brew water, dose, retention, other losses.
   *
   * @throws {@link Refusal} For an input that is not accepted; with what retention.beverage() fails with, and `result_out_of_range` for an uncertainty past its range.
   */
  function beverage(options: {
    /** What the brewer keeps. */
    losses: Losses;
    /** How uncertain its retention is. */
    retention: RetentionUncertainty;
    /** How uncertain its other losses are together. */
    other: LossesUncertainty;
    /** Dose. */
    dose: DoseEstimate;
    /** Brew water. */
    water: WaterEstimate;
  }): Budget;
  /**
   * Water to add for a wanted strength, A = B (T − T')/(T' − s); see
   * dilution.waterToReach().
   *
   *     ∂A/∂B = A/B    ∂A/∂T = B/(T' − s)    ∂A/∂s = A/(T' − s)
   *
   * Terms: beverage, strength, water solids. The wish is exact. On the scale that weighed the
   * beverage its span cancels.
   *
   * @throws {@link Refusal} For an input that is not accepted; with what dilution.waterToReach() fails with, and `result_out_of_range` for an uncertainty past its range.
   */
  function waterToReach(options: {
    /** The brew. */
    beverage: BeverageEstimate;
    /** Its strength. */
    strength: StrengthEstimate;
    /** Strength wanted, 0 to 50 %. */
    wanted_pct: number;
    /** Solids of the water that is added. */
    water_solids: WaterSolidsEstimate;
  }): Budget;
  /**
   * Strength after adding water, or with s = 0 milk, T' = (T B + s A)/(B + A); see
   * dilution.strengthAfterWater().
   *
   *     ∂T'/∂B = (T − T')/(B + A)    ∂T'/∂T = B/(B + A)
   *     ∂T'/∂A = (s − T')/(B + A)    ∂T'/∂s = A/(B + A)
   *
   * Terms: beverage, strength, addition, water solids. The span of the scale cancels.
   *
   * @throws {@link Refusal} For an input that is not accepted; with `result_out_of_range` for an uncertainty past its range.
   */
  function strengthAfterWater(options: {
    /** The brew. */
    beverage: BeverageEstimate;
    /** Its strength. */
    strength: StrengthEstimate;
    /** The water added. */
    added: AddedEstimate;
    /** Its solids. */
    water_solids: WaterSolidsEstimate;
  }): Budget;
  /**
   * Temperature of two waters or brews mixed, B h(t1) + A h(t2) = (B + A) h(t); see
   * dilution.mixedTemperature().
   *
   *     ∂t/∂B = [h(t1) − h(t)]/[(B + A) c(t)]    ∂t/∂t1 = B c(t1)/[(B + A) c(t)]    and for A, t2 alike
   *
   * Terms: mass and temperature of the one, mass and temperature of the other. A pour onto a
   * preheated brewer is such a mix, with the brewer as so much water. What the linear rule leaves
   * out is found with one specific heat.
   *
   * @throws {@link Refusal} For an input that is not accepted; with `result_out_of_range` for an uncertainty past its range.
   */
  function mixedTemperature(options: {
    /** The hotter liquid. */
    hot: HotEstimate;
    /** The colder one. */
    cold: ColdEstimate;
  }): Budget;
  /**
   * Temperature at which a liquid and a body settle, m h(t) + C t = m h(t0) + C t_b; see
   * heat.settle().
   *
   *     ∂t/∂t0 = m c(t0)/M    ∂t/∂m = [h(t0) − h(t)]/M    ∂t/∂C = (t_b − t)/M    ∂t/∂t_b = C/M
   *     M = m c(t) + C
   *
   * Terms: liquid, its temperature, heat capacity, the body's temperature. Bodies of one temperature
   * are one, of their heat capacities together. A walk from kettle to cup goes step by step: the
   * temperature that comes out is the next step's liquid, with the drop of the pour by
   * uncertainty.together(). What the linear rule leaves out is found with one specific
   * heat.
   *
   * @throws {@link Refusal} For an input that is not accepted; with `result_out_of_range` where the liquid would freeze, and for an uncertainty past its range.
   */
  function settle(options: {
    /** The liquid. */
    liquid: LiquidEstimate;
    /** The body. */
    body: BodyEstimate;
  }): Budget;
  /**
   * Time to cool to a wanted temperature; see heat.timeToCool().
   *
   *     ∂t/∂T1 = 1/[k F(T1)]    ∂t/∂k = −t/k        F as there
   *
   * Terms: temperature now, cooling rate. The wish is exact, and the room counts as known. The law
   * itself was met within 0.8 K, which no budget counts.
   *
   * @throws {@link Refusal} For an input that is not accepted; with `impossible` for a start not warmer than where cooling ends; `infeasible` for a goal that cooling does not reach; `result_out_of_range` for a time or an uncertainty past its range.
   */
  function timeToCool(options: {
    /** Temperature now. */
    temperature: TemperatureEstimate;
    /** Temperature wanted, 0 to 105 °C. */
    to_c: number;
    /** Cooling rate. */
    cooling: CoolingEstimate;
    /** The room. */
    surroundings: Surroundings;
  }): Budget;
  /**
   * Temperature after a time of cooling; see heat.temperatureAfter().
   *
   *     ∂T/∂T1 = F(T)/F(T1)    ∂T/∂t = −k F(T)    ∂T/∂k = −t F(T)        F as for the time to cool
   *
   * Terms: temperature now, time, cooling rate. The room counts as known. The law itself was met
   * within 0.8 K, which no budget counts.
   *
   * @throws {@link Refusal} For an input that is not accepted; with `impossible` for a start not warmer than where cooling ends; `result_out_of_range` where it would freeze, and for an uncertainty past its range.
   */
  function temperatureAfter(options: {
    /** Temperature now. */
    temperature: TemperatureEstimate;
    /** The time. */
    elapsed: TimeEstimate;
    /** Cooling rate. */
    cooling: CoolingEstimate;
    /** The room. */
    surroundings: Surroundings;
  }): Budget;
  /**
   * Yield after a time of contact; see extraction.yieldAtTime().
   *
   *     u²(E) = Σ cᵢ cⱼ rᵢⱼ uᵢ uⱼ + (Ė u(t))²   over E∞, f, ln τ1, ln τ2
   *     ∂E/∂E∞ = E/E∞    ∂E/∂f = E∞ (e^(−t/τ2) − e^(−t/τ1))    ∂E/∂ln τ1 = −E∞ f (t/τ1) e^(−t/τ1)    and for τ2 alike
   *     Ė = E∞ [ (f/τ1) e^(−t/τ1) + ((1 − f)/τ2) e^(−t/τ2) ]
   *
   * Terms: the law, time. What one fit tells goes together and is one term, in points of yield:
   * counted apart it would seem far less certain within the times that were measured. How far brews
   * differ is no part of it. Source: GUM 5.2.2.
   *
   * @throws {@link Refusal} For an input that is not accepted; with `result_out_of_range` for an uncertainty past its range.
   */
  function yieldAtTime(options: {
    /** The rates. */
    rates: Rates;
    /** How well their plateau is known. */
    plateau: Plateau;
    /** Time of contact. */
    contact: TimeEstimate;
  }): Budget;
  /**
   * Time of contact after which a yield is reached; see extraction.timeForYield().
   *
   *     u(t) = u(E)/Ė    u(E) and Ė at that time, as for the yield
   *
   * Terms: the law. The wish is exact. Near the plateau a yield hardly grows, and no time is sure.
   *
   * @throws {@link Refusal} For an input that is not accepted; with `infeasible` for a yield that is not reached within the longest time; `result_out_of_range` for an uncertainty past its range.
   */
  function timeForYield(options: {
    /** The rates. */
    rates: Rates;
    /** How well their plateau is known. */
    plateau: Plateau;
    /** Yield wanted, 0 to 100 %. */
    wanted_yield_pct: number;
  }): Budget;
}

export namespace decision {
  /**
   * Where the true value lies beside a band.
   *
   *     P(below) = F((T_L − y)/u)    P(above) = F((y − T_U)/u)    P(inside) = 1 − P(below) − P(above)
   *
   * F: Student's distribution with the estimate's ν. Nothing is supposed of the value beforehand:
   * how far the measurement alone carries, not how often brews come out inside. Error 10⁻¹². Source:
   * JCGM 106:2012, 7.
   *
   * @throws {@link Refusal} For an input that is not accepted; with `empty_band` where the lowest edge is not below the highest.
   */
  function chances(options: {
    /** The value. */
    estimate: Estimate;
    /** The band. */
    band: Band;
  }): Chances;
  /**
   * Inside, below, above, or not yet decided at a confidence. Source: the three outcomes are common
   * practice; each by its probability, as in decision.chances().
   *
   * @throws {@link Refusal} For an input that is not accepted; with `empty_band` where the lowest edge is not below the highest.
   */
  function decide(options: {
    /** The value. */
    estimate: Estimate;
    /** The band. */
    band: Band;
    /** How sure the statement has to be, 50 to 99.9 %. */
    confidence_pct: number;
  }): { decision: Decision };
  /**
   * The largest standard uncertainty with which any number can be called inside, (T_U − T_L)/(2 k),
   * with k of uncertainty.coverageFactor().
   *
   * @throws {@link Refusal} For an input that is not accepted; with `empty_band` where the lowest edge is not below the highest; `result_out_of_range` past the range of the uncertainty.
   */
  function largestUncertainty(options: {
    /** The band. */
    band: Band;
    /** How sure the statement has to be, 50 to 99.9 %. */
    confidence_pct: number;
    /** Of the uncertainty, 1 to 1000000000. */
    degrees_of_freedom: number;
  }): { u: number };
  /**
   * The values that can be called inside: the band less a guard g on either side.
   *
   *     F(−g/u) + F(−(T_U − T_L − g)/u) = 1 − confidence       from T_L + g to T_U − g
   *
   * Both edges count; far from the other one g = t u, with the one-sided t (1.645 at 95 %).
   * decision.decide() calls both edges inside. Source: JCGM 106:2012, 8.
   *
   * @throws {@link Refusal} For an input that is not accepted; with `empty_band` where the lowest edge is not below the highest.
   */
  function acceptance(options: {
    /** Standard uncertainty of a value, 0 to 1000000000. */
    u_value: number;
    /** The degrees of freedom of that, 1 to 1000000000. */
    nu_value: number;
    /** The band. */
    band: Band;
    /** How sure the statement has to be, 50 to 99.9 %. */
    confidence_pct: number;
  }): Acceptance;
  /**
   * How many readings in all decide, if their mean stays where it is.
   *
   *     u² = s²/n + rest²
   *
   * @throws {@link Refusal} For an input that is not accepted; with `empty_band` where the lowest edge is not below the highest; `result_out_of_range` for an uncertainty past its range.
   */
  function readingsNeeded(options: {
    /** The mean, -1000000000 to 1000000000. */
    value: number;
    /** Standard deviation s of one reading, 0 to 1000000000. */
    u_scatter: number;
    /** The degrees of freedom of that, 1 to 1000000000. */
    nu_scatter: number;
    /** What repeating does not lessen, the instrument's own error and the refractive factor, 0 to 1000000000. */
    u_rest: number;
    /** The degrees of freedom of that, 1 to 1000000000. */
    nu_rest: number;
    /** The band. */
    band: Band;
    /** How sure the statement has to be, 50 to 99.9 %. */
    confidence_pct: number;
  }): ReadingsNeeded;
  /**
   * Whether strength and yield are both inside: they share the reading, so their errors go together.
   *
   *     both = ∬ of the normal density with correlation r over the rectangle of the two bands
   *
   * With few degrees of freedom each edge is moved to where a normal value is exceeded as often, so
   * each alone is exact and the two go together as normal values would (a Gaussian copula: an
   * assumption). Error 10⁻¹² for what is as good as known, else 10⁻¹⁰. Source: Owen 1956, doi
   * 10.1214/aoms/1177728074, for the integral.
   *
   * @throws {@link Refusal} For an input that is not accepted; with `empty_band` where a lowest edge is not below its highest.
   */
  function joint(options: {
    /** The two bands. */
    bands: Bands;
    /** The strength. */
    strength: StrengthEstimate;
    /** The yield. */
    extracted: YieldEstimate;
    /** Correlation of the two, as in the yield's budget, -1 to 1. */
    correlation: number;
  }): Joint;
  /**
   * Both inside, not both, or not yet decided at a confidence. Two values that are each inside with
   * 95 % may be so together with 90 %: what is decided of each is not decided of the cup.
   *
   * @throws {@link Refusal} For an input that is not accepted.
   */
  function decideJoint(options: {
    /** Probability that both are inside, as decision.joint() tells it, 0 to 100 %. */
    both_pct: number;
    /** How sure the statement has to be, 50 to 99.9 %. */
    confidence_pct: number;
  }): { decision: JointDecision };
  /**
   * Whether two brews differ.
   *
   *     d = y₁ − y₂     real where |d| ≥ t √(u₁² + u₂²)     u²(d) = u₁² + u₂² + (f d)²
   *
   * What is common to both brews does not belong in u₁ and u₂. The refractive factor f of one coffee
   * makes a difference larger or smaller and never turns its sign, so it counts for the size of d
   * and not for whether d is real. The instrument's own error cancels in strengths as far as it is
   * the same for both readings: its zero, and most of its specification. In yields e (B₁/D₁ − B₂/D₂)
   * is left of an error e: nothing between brews of one recipe. The span of one scale cancels in
   * yields. t: the two-sided quantile. Source: GUM F.1.2.3; the test is Welch's.
   *
   * @throws {@link Refusal} For an input that is not accepted; with `result_out_of_range` for an uncertainty past its range.
   */
  function compare(options: {
    /** The two values. */
    pair: Pair;
    /** The coffee's refractive factor. */
    factor: FactorUncertainty;
    /** How sure the statement has to be, 50 to 99.9 %. */
    confidence_pct: number;
  }): Comparison;
}

export namespace caution {
  /**
   * The cautions that a drink calls for.
   *
   * @throws {@link Refusal} For an input that is not accepted.
   */
  function of(options: {
    /** What there is to know. */
    hazards: Hazards;
  }): { cautions: Caution[] };
  /**
   * How fast hot water burns adult skin seriously: between published points, ln t straight with
   * temperature. Lists differ by up to a factor of two and this takes the shortest; children burn
   * faster still. A reminder of how little time there is, never a safe limit.
   *
   * @throws {@link Refusal} For an input that is not accepted.
   */
  function timeToBurn(options: {
    /** Temperature, 0 to 105 °C. */
    water_c: number;
  }): TimeToBurn;
  /**
   * Caffeine of a serving, dose × content × share extracted. Brewing takes out some 70 to 100 %
   * (weak sources); 100 is the cautious choice.
   *
   * @throws {@link Refusal} For an input that is not accepted.
   */
  function caffeine(options: {
    /** Dose as weighed, 0.1 to 10000 g. */
    dose_g: number;
    /** Content as weighed, 0 to 45 mg/g. */
    caffeine_mg_per_g: number;
    /** Share extracted, 0 to 100 %. */
    share_pct: number;
  }): { caffeine_mg: number };
}

export namespace plan {
  /**
   * Plans a brew: dose, water, batches, what to add, every temperature on the way, how far a hand
   * may stray, and the cautions. The yield expected is that of this coffee, grind, time and
   * temperature; a recipe far from the one it was measured at needs it measured again.
   *
   * @throws {@link Refusal} For an input that is not accepted; with `infeasible` with the nearest feasible value and the limit that binds, where the error's field names the field of the wish; `empty_band` for a window whose lowest edge is not below its highest; `out_of_range` for a strength outside the window; `impossible` for a strength not above the water's own and for a chamber that its own hold-up fills; `result_out_of_range` where a result leaves its range.
   */
  function recipe(options: {
    /** What is to be in the cup. */
    wish: Wish;
    /** What it is made in. */
    brewer: Brewer;
    /** What it is made of. */
    coffee: Coffee;
    /** Where it is made. */
    kitchen: Kitchen;
  }): Recipe;
  /**
   * The recipe of a wish, what it leads to, and the chance that it lands in the wish's window, its
   * yield as the window does.
   *
   * @throws {@link Refusal} For an input that is not accepted; with what plan.recipe() fails with, and `result_out_of_range` for an uncertainty past its range.
   */
  function foreseen(options: {
    /** What is to be in the cup. */
    wish: Wish;
    /** What it is made in. */
    brewer: Brewer;
    /** What it is made of. */
    coffee: Coffee;
    /** Where it is made. */
    kitchen: Kitchen;
    /** How far a brew strays from what is meant. */
    straying: Straying;
  }): Foreseen;
  /**
   * The recipe that lands in the wish's window most surely: the wish with its strength moved inside
   * the window, where that is worth a point of chance; else the wish as it is. The chance of a
   * strength is that of the dose alone changed, found by golden section; the recipe is then planned
   * anew. Where that strength cannot be planned it is the nearest to it that can.
   *
   * @throws {@link Refusal} For an input that is not accepted; with what plan.foreseen() fails with for the wish as it is.
   */
  function surest(options: {
    /** What is to be in the cup. */
    wish: Wish;
    /** What it is made in. */
    brewer: Brewer;
    /** What it is made of. */
    coffee: Coffee;
    /** Where it is made. */
    kitchen: Kitchen;
    /** How far a brew strays from what is meant. */
    straying: Straying;
  }): Foreseen;
}

export namespace forecast {
  /**
   * Budget of the strength that a drink will have.
   *
   *     B = W − rD − losses
   *     N = E D(1 − s) − s(hD − V)     M = B(1 − φ) + φ(W + hD − V + ED)
   *     T' = [(N/M + s) p + s A]/(p + A)
   *
   * Terms: dose, brew water, yield, retention, other losses, portion p, addition A.
   *
   * @throws {@link Refusal} For an input that is not accepted; with `result_out_of_range` where nothing is left for the cup, or for a strength or an uncertainty past its range.
   */
  function strength(options: {
    /** The brew. */
    intended: Intended;
  }): Budget;
  /**
   * Budget of the yield as the control chart will count it, C = T B/D. Terms and symbols as in
   * forecast.strength().
   *
   * @throws {@link Refusal} For an input that is not accepted; with what forecast.strength() fails with, and `result_out_of_range` for a yield above 100 %.
   */
  function countedYield(options: {
    /** The brew. */
    intended: Intended;
  }): Budget;
  /**
   * What a brew will be, and the chance that it lies in a window.
   *
   * @throws {@link Refusal} For an input that is not accepted; with what forecast.countedYield() fails with, and `empty_band` for a window whose lowest edge is not below its highest.
   */
  function outlook(options: {
    /** The brew. */
    intended: Intended;
    /** The window. */
    window: Window;
  }): Outlook;
}

export namespace advise {
  /**
   * What to do about a cup: now, and next time.
   *
   * Suggested are the cup as it is; water, or milk, that brings it down to the wanted strength; the
   * same brew again; the dose alone and the water alone that make the next brew so strong; and, where
   * rates are known, a time alone and, where no change alone comes within a point of it, a time with a
   * dose that makes it so strong. A time aims at the best of seven yields spread over the band, or without a band at
   * the strength. Yields are counted as the window does; where it does not state how, they are not judged, and `grind`
   * says so. Not suggested is what would leave the chamber or the range of a quantity, what
   * changes less than a thousandth, what lands more than a point less surely than leaving things
   * alone, and a next brew that lands less than once in a hundred times.
   *
   *     score = P(inside) + 0.1 P(strength inside) − 10 |change|     orders them; in points, change relative
   *     u(E)/E += 0.25 |change of dose or water|                     in squares; an estimate
   *     u(E)/E += u(ln E(t')/E(t))                                   in squares: the rates, tied to this cup
   *
   * @throws {@link Refusal} For an input that is not accepted; with `empty_band` for a window whose lowest edge is not below its highest; `out_of_range` for a strength wanted outside the window; `result_out_of_range` for a yield or an uncertainty past its range. What is wrong with the next brew alone is no failure: `is_next_told` is 0 then.
   */
  function on(options: {
    /** The cup. */
    cup: Cup;
    /** What can be done. */
    means: Means;
    /** How far the next brew may stray. */
    straying: Straying;
    /** Strength wanted of the drink, inside the window, 0 to 50 %. */
    wanted_pct: number;
    /** The window. */
    window: Window;
    /** How sure the direction of the grind must be, 50 to 99.9 %. */
    confidence_pct: number;
  }): Advice;
}

export namespace profile {
  /**
   * A profile as bytes, the same on every processor: little endian, with a version and a check value.
   *
   * @throws {@link Refusal} For an input that is not accepted.
   */
  function toBytes(options: { profile: Profile }): { bytes: Uint8Array };
  /**
   * A profile from its bytes. No damaged one is ever read: a single wrong byte is always found.
   *
   * @throws {@link Refusal} With `unreadable` for bytes that are no profile, or a damaged one; with `out_of_range` for a
   * number that its field does not accept.
   */
  function fromBytes(options: { bytes: Uint8Array }): Profile;
  /**
   * Keeps what brews of several doses told of a brewer: retention, hold-up, how far the two go together,
   * and the scatter about them.
   *
   * @throws {@link Refusal} For an input that is not accepted.
   */
  function keepRetentionLine(options: {
    /** The profile before. */
    profile: Profile;
    /** The line, as calibrate.retentionLine() tells it. */
    line: RetentionLine;
  }): Profile;
  /**
   * Keeps a retention that has the hold-up in it. A hold-up kept apart before is dropped.
   *
   * @throws {@link Refusal} For an input that is not accepted.
   */
  function keepRetention(options: {
    /** The profile before. */
    profile: Profile;
    /** The retention, as calibrate.retention() tells it. */
    fitted: FittedRetention;
  }): Profile;
  /**
   * Keeps what yields told of a coffee by one rate. All of it is then fast: a fast share and a slow time
   * kept before are dropped.
   *
   * @throws {@link Refusal} For an input that is not accepted.
   */
  function keepOneRate(options: {
    /** The profile before. */
    profile: Profile;
    /** The law, as calibrate.oneRate() tells it. */
    law: OneRate;
  }): Profile;
  /**
   * Keeps what yields told of a coffee by two rates.
   *
   * @throws {@link Refusal} For an input that is not accepted.
   */
  function keepTwoRates(options: {
    /** The profile before. */
    profile: Profile;
    /** The law, as calibrate.twoRates() tells it. */
    law: TwoRates;
  }): Profile;
  /**
   * Keeps the heat capacity of a brewer.
   *
   * @throws {@link Refusal} For an input that is not accepted.
   */
  function keepHeatCapacity(options: {
    /** The profile before. */
    profile: Profile;
    /** The heat capacity, as calibrate.heatCapacity() tells it. */
    fitted: FittedHeatCapacity;
  }): Profile;
  /**
   * Keeps how fast a full cup cools.
   *
   * @throws {@link Refusal} For an input that is not accepted.
   */
  function keepCupCooling(options: {
    /** The profile before. */
    profile: Profile;
    /** How it cools, as calibrate.cooling() tells it. */
    cup: Cooling;
  }): Profile;
  /**
   * Keeps the refractive factor of a coffee.
   *
   * @throws {@link Refusal} For an input that is not accepted.
   */
  function keepRefractiveFactor(options: {
    /** The profile before. */
    profile: Profile;
    /** The factor, as calibrate.refractiveFactor() tells it. */
    fitted: FittedRefractiveFactor;
  }): Profile;
  /**
   * Keeps the repeatability of one's own readings.
   *
   * @throws {@link Refusal} For an input that is not accepted.
   */
  function keepRepeatability(options: {
    /** The profile before. */
    profile: Profile;
    /** The repeatability, as calibrate.repeatability() tells it. */
    fitted: FittedRepeatability;
  }): Profile;
  /**
   * Beverage that the next brew gives by what was kept: what calibrate.expectedBeverage()
   * tells of the same line, to the last bit. Without a hold-up the retention has it in it: then B = W −
   * V − r D, right for doses like those of the brews.
   *
   * @throws {@link Refusal} For an input that is not accepted; with `not_kept` where a part is missing, the error's `field` names it; `result_out_of_range` where nothing is left for the cup.
   */
  function expectedBeverage(options: {
    /** The profile. */
    profile: Profile;
    /** Dose, 0.1 to 10000 g. */
    dose_g: number;
    /** Brew water, 0.1 to 200000 g. */
    water_g: number;
    /** Vapour that the brew will lose, 0 to 20000 g. */
    vapour_g: number;
  }): Expected;
  /**
   * How fast the coffee extracts, and how well that is known, by what was kept.
   *
   * @throws {@link Refusal} For an input that is not accepted; with `not_kept` where a part is missing, the error's `field` names it.
   */
  function rates(options: {
    /** The profile. */
    profile: Profile;
  }): Rates;
  /**
   * How well the plateau of those rates is known.
   *
   * @throws {@link Refusal} For an input that is not accepted; with `not_kept` where a part is missing, the error's `field` names it.
   */
  function plateau(options: {
    /** The profile. */
    profile: Profile;
  }): Plateau;
  /**
   * What advice takes, with all that is known of coffee and brewer: rates where a plateau or a time was
   * kept, and what the brewer keeps where a retention was. No chamber and no milk: set them where there
   * are.
   *
   * @throws {@link Refusal} For an input that is not accepted; with `not_kept` where a part of what was kept is missing, the error's `field` names it; `result_out_of_range` for a hold-up below zero, which no brewer has.
   */
  function means(options: {
    /** The profile. */
    profile: Profile;
    /** Temperature of the water, 0 to 105 °C. */
    water_c: number;
  }): Means;
}
