// Made by `cargo xtask face`. Do not edit.

import {
  answer, answered, base, boolean, bytes, bytesAt, cautions, choice, doubles, f64, i32, integer, items, list, misspelt, number, numbers,
  optional, places, put, putBytes, putEach, quantity, record, table, version,
} from "./call.js";

const CHANGE = [null, "drink_as_it_is", "add_water", "add_milk", "same_again", "dose", "water", "time", "time_with_dose"];
const DIRECTION = [null, "leave", "more", "less", "not_yet_decided", "counting_not_stated"];
const BURN = [null, "more_than_five_minutes", "within", "under_one_second"];
const NEEDED = [null, "readings", "more_than_ten", "none_is_enough"];
const CREDIBILITY = [null, "ordinary", "near_limit", "at_limit", "beyond_limit"];
const COVER = [null, "open", "lidded"];
const DOING = [null, "still", "pouring", "settling", "dripping", "disturbed", "pressed", "overloaded"];
const HAPPENING = [null, "pour_started", "pour_stopped", "settled", "drip_started", "drip_stopped", "tared", "placed", "lifted", "returned", "unclear", "disturbed", "pressed", "released", "overloaded", "lost", "drifted", "restless"];
const STEP = [null, "rinse", "dose", "pour", "stir", "wait", "press", "beverage"];
const CUE = ["nothing", "rinse", "add_coffee", "pour", "stop_pouring", "stir", "wait", "press", "weigh_beverage"];
const WHY = [null, "next", "time", "early", "lead", "enough", "too_much", "missing", "unclear", "done"];
const AIR = [null, "pressure", "altitude"];
const CONTACT_HEAT = [null, "cooling_rate", "at_most", "unchanged"];
const AGREEMENT = [null, "mean", "take_another", "median"];
const COUNTING = [null, "not_stated", "flow_through", "mass_balance"];
const SIDE = [null, "below", "inside", "above"];
const ZERO = [null, "distilled", "brew_water"];
const SHAPE = [null, "rectangular", "triangular", "arcsine"];
const DECISION = [null, "inside", "below", "above", "not_yet", "too_uncertain"];
const JOINT_DECISION = [null, "inside", "outside", "not_yet"];

let cupwrightWaterDensity, cupwrightWaterSpecificHeat, cupwrightWaterEnthalpy, cupwrightWaterTemperatureOfEnthalpy, cupwrightWaterVapourPressure, cupwrightWaterBoilingPoint, cupwrightWaterLatentHeat, cupwrightWaterPressureAtAltitude, cupwrightWaterAltitudeAtPressure, cupwrightRatioWaterRatio, cupwrightRatioWaterForRatio, cupwrightRatioDoseForWater, cupwrightRatioBeverageRatio, cupwrightRatioBeverageForRatio, cupwrightRatioDoseForBeverage, cupwrightRatioDosePerLitre, cupwrightRatioOfDosePerLitre, cupwrightRatioWaterMass, cupwrightRatioWaterVolume, cupwrightRatioForServings, cupwrightRatioWholeCups, cupwrightRatioBatches, cupwrightRatioLargestDose, cupwrightExtractionYield, cupwrightExtractionStrength, cupwrightExtractionBeverage, cupwrightExtractionRetainedLiquid, cupwrightExtractionFlowThroughYield, cupwrightExtractionFlowThroughStrength, cupwrightExtractionSteepedYield, cupwrightExtractionSteepedStrength, cupwrightExtractionSteepedRatio, cupwrightExtractionOvenDriedYield, cupwrightExtractionDryBasisYield, cupwrightExtractionAsWeighedYield, cupwrightExtractionYieldAtTime, cupwrightExtractionTimeForYield, cupwrightExtractionPlausibility, cupwrightRetentionBeverage, cupwrightRetentionWaterForBeverage, cupwrightRetentionDoseForBeverage, cupwrightRetentionOfBrew, cupwrightRetentionApparentRetention, cupwrightRetentionTrueRetention, cupwrightRetentionApparentOfTrueRetention, cupwrightRetentionOfSpentMoisture, cupwrightDilutionStrengthAfterWater, cupwrightDilutionWaterToReach, cupwrightDilutionDrinkOfBrew, cupwrightDilutionBrewForDrink, cupwrightDilutionSplit, cupwrightDilutionWithMilk, cupwrightDilutionMixedTemperature, cupwrightDilutionMixedWithMilkTemperature, cupwrightDilutionIced, cupwrightDilutionIceToReach, cupwrightHeatGrounds, cupwrightHeatCapacity, cupwrightHeatSettle, cupwrightHeatBeforeSettling, cupwrightHeatPreheated, cupwrightHeatVesselHeatCapacity, cupwrightHeatAfterVapour, cupwrightHeatAfterPour, cupwrightHeatBeforePour, cupwrightHeatReachable, cupwrightHeatTimeToCool, cupwrightHeatCoolingRate, cupwrightHeatTemperatureAfter, cupwrightHeatOpenCupRateEstimate, cupwrightReadingCombine, cupwrightReadingRepeatability, cupwrightReadingCriticalRange, cupwrightReadingTotalStrength, cupwrightReadingCoffeeStrength, cupwrightReadingBrixOfIndex, cupwrightReadingIndexOfBrix, cupwrightReadingBrixAt20, cupwrightReadingStrengthOfBrix, cupwrightReadingBrixOfStrength, cupwrightReadingStrengthOfIndex, cupwrightCalibrateRetentionLine, cupwrightCalibrateExpectedBeverage, cupwrightCalibrateRetention, cupwrightCalibrateHeatCapacity, cupwrightCalibrateEquilibriumYield, cupwrightCalibrateOneRate, cupwrightCalibrateTwoRates, cupwrightCalibrateCooling, cupwrightCalibrateRefractiveFactor, cupwrightCalibrateRepeatability, cupwrightVerdictStand, cupwrightUncertaintyCoverageFactor, cupwrightUncertaintyExpanded, cupwrightUncertaintyOfRepeats, cupwrightUncertaintyPooled, cupwrightUncertaintyOfReadings, cupwrightUncertaintyTogether, cupwrightUncertaintyOfLimit, cupwrightUncertaintyOfDisplay, cupwrightUncertaintyOfExpanded, cupwrightUncertaintyFreedomOfDoubt, cupwrightUncertaintyCombine, cupwrightUncertaintyStrength, cupwrightUncertaintyStrengthOfBrix, cupwrightUncertaintyFlowThroughYield, cupwrightUncertaintySteepedYield, cupwrightUncertaintyExtractionYield, cupwrightUncertaintySteepedStrength, cupwrightUncertaintyBeverage, cupwrightUncertaintyWaterToReach, cupwrightUncertaintyStrengthAfterWater, cupwrightUncertaintyMixedTemperature, cupwrightUncertaintySettle, cupwrightUncertaintyTimeToCool, cupwrightUncertaintyTemperatureAfter, cupwrightUncertaintyYieldAtTime, cupwrightUncertaintyTimeForYield, cupwrightDecisionChances, cupwrightDecisionDecide, cupwrightDecisionLargestUncertainty, cupwrightDecisionAcceptance, cupwrightDecisionReadingsNeeded, cupwrightDecisionJoint, cupwrightDecisionDecideJoint, cupwrightDecisionCompare, cupwrightCautionOf, cupwrightCautionTimeToBurn, cupwrightCautionCaffeine, cupwrightPlanRecipe, cupwrightPlanForeseen, cupwrightPlanSurest, cupwrightForecastStrength, cupwrightForecastCountedYield, cupwrightForecastOutlook, cupwrightAdviseOn, cupwrightProfileToBytes, cupwrightProfileFromBytes, cupwrightProfileKeepRetentionLine, cupwrightProfileKeepRetention, cupwrightProfileKeepOneRate, cupwrightProfileKeepTwoRates, cupwrightProfileKeepHeatCapacity, cupwrightProfileKeepCupCooling, cupwrightProfileKeepRefractiveFactor, cupwrightProfileKeepRepeatability, cupwrightProfileExpectedBeverage, cupwrightProfileRates, cupwrightProfilePlateau, cupwrightProfileMeans;
export let cupwrightColumnsFlowThroughYield, cupwrightColumnsFlowThroughStrength, cupwrightColumnsSteepedYield, cupwrightColumnsExtractionYield, cupwrightColumnsWaterRatio, cupwrightColumnsWaterToReach, cupwrightColumnsStrengthOfBrix, cupwrightColumnsBeverage, cupwrightColumnsStand, cupwrightLiveBegin, cupwrightLiveTake, cupwrightLiveZeroed, cupwrightLiveCountAnew, cupwrightLiveAccount, cupwrightLiveToBytes, cupwrightLiveFromBytes, cupwrightFollowBegin, cupwrightFollowTake, cupwrightFollowGoOn, cupwrightFollowZeroed, cupwrightFollowSetDose, cupwrightFollowSetBeverage, cupwrightFollowSetLead, cupwrightFollowWeighed, cupwrightFollowAccount, cupwrightFollowOutlook, cupwrightFollowToBytes, cupwrightFollowFromBytes;

/** Takes the functions of a module. */
export function bind(exports) {
  cupwrightWaterDensity = exports.cupwright_water_density;
  cupwrightWaterSpecificHeat = exports.cupwright_water_specific_heat;
  cupwrightWaterEnthalpy = exports.cupwright_water_enthalpy;
  cupwrightWaterTemperatureOfEnthalpy = exports.cupwright_water_temperature_of_enthalpy;
  cupwrightWaterVapourPressure = exports.cupwright_water_vapour_pressure;
  cupwrightWaterBoilingPoint = exports.cupwright_water_boiling_point;
  cupwrightWaterLatentHeat = exports.cupwright_water_latent_heat;
  cupwrightWaterPressureAtAltitude = exports.cupwright_water_pressure_at_altitude;
  cupwrightWaterAltitudeAtPressure = exports.cupwright_water_altitude_at_pressure;
  cupwrightRatioWaterRatio = exports.cupwright_ratio_water_ratio;
  cupwrightRatioWaterForRatio = exports.cupwright_ratio_water_for_ratio;
  cupwrightRatioDoseForWater = exports.cupwright_ratio_dose_for_water;
  cupwrightRatioBeverageRatio = exports.cupwright_ratio_beverage_ratio;
  cupwrightRatioBeverageForRatio = exports.cupwright_ratio_beverage_for_ratio;
  cupwrightRatioDoseForBeverage = exports.cupwright_ratio_dose_for_beverage;
  cupwrightRatioDosePerLitre = exports.cupwright_ratio_dose_per_litre;
  cupwrightRatioOfDosePerLitre = exports.cupwright_ratio_of_dose_per_litre;
  cupwrightRatioWaterMass = exports.cupwright_ratio_water_mass;
  cupwrightRatioWaterVolume = exports.cupwright_ratio_water_volume;
  cupwrightRatioForServings = exports.cupwright_ratio_for_servings;
  cupwrightRatioWholeCups = exports.cupwright_ratio_whole_cups;
  cupwrightRatioBatches = exports.cupwright_ratio_batches;
  cupwrightRatioLargestDose = exports.cupwright_ratio_largest_dose;
  cupwrightExtractionYield = exports.cupwright_extraction_yield;
  cupwrightExtractionStrength = exports.cupwright_extraction_strength;
  cupwrightExtractionBeverage = exports.cupwright_extraction_beverage;
  cupwrightExtractionRetainedLiquid = exports.cupwright_extraction_retained_liquid;
  cupwrightExtractionFlowThroughYield = exports.cupwright_extraction_flow_through_yield;
  cupwrightExtractionFlowThroughStrength = exports.cupwright_extraction_flow_through_strength;
  cupwrightExtractionSteepedYield = exports.cupwright_extraction_steeped_yield;
  cupwrightExtractionSteepedStrength = exports.cupwright_extraction_steeped_strength;
  cupwrightExtractionSteepedRatio = exports.cupwright_extraction_steeped_ratio;
  cupwrightExtractionOvenDriedYield = exports.cupwright_extraction_oven_dried_yield;
  cupwrightExtractionDryBasisYield = exports.cupwright_extraction_dry_basis_yield;
  cupwrightExtractionAsWeighedYield = exports.cupwright_extraction_as_weighed_yield;
  cupwrightExtractionYieldAtTime = exports.cupwright_extraction_yield_at_time;
  cupwrightExtractionTimeForYield = exports.cupwright_extraction_time_for_yield;
  cupwrightExtractionPlausibility = exports.cupwright_extraction_plausibility;
  cupwrightRetentionBeverage = exports.cupwright_retention_beverage;
  cupwrightRetentionWaterForBeverage = exports.cupwright_retention_water_for_beverage;
  cupwrightRetentionDoseForBeverage = exports.cupwright_retention_dose_for_beverage;
  cupwrightRetentionOfBrew = exports.cupwright_retention_of_brew;
  cupwrightRetentionApparentRetention = exports.cupwright_retention_apparent_retention;
  cupwrightRetentionTrueRetention = exports.cupwright_retention_true_retention;
  cupwrightRetentionApparentOfTrueRetention = exports.cupwright_retention_apparent_of_true_retention;
  cupwrightRetentionOfSpentMoisture = exports.cupwright_retention_of_spent_moisture;
  cupwrightDilutionStrengthAfterWater = exports.cupwright_dilution_strength_after_water;
  cupwrightDilutionWaterToReach = exports.cupwright_dilution_water_to_reach;
  cupwrightDilutionDrinkOfBrew = exports.cupwright_dilution_drink_of_brew;
  cupwrightDilutionBrewForDrink = exports.cupwright_dilution_brew_for_drink;
  cupwrightDilutionSplit = exports.cupwright_dilution_split;
  cupwrightDilutionWithMilk = exports.cupwright_dilution_with_milk;
  cupwrightDilutionMixedTemperature = exports.cupwright_dilution_mixed_temperature;
  cupwrightDilutionMixedWithMilkTemperature = exports.cupwright_dilution_mixed_with_milk_temperature;
  cupwrightDilutionIced = exports.cupwright_dilution_iced;
  cupwrightDilutionIceToReach = exports.cupwright_dilution_ice_to_reach;
  cupwrightHeatGrounds = exports.cupwright_heat_grounds;
  cupwrightHeatCapacity = exports.cupwright_heat_capacity;
  cupwrightHeatSettle = exports.cupwright_heat_settle;
  cupwrightHeatBeforeSettling = exports.cupwright_heat_before_settling;
  cupwrightHeatPreheated = exports.cupwright_heat_preheated;
  cupwrightHeatVesselHeatCapacity = exports.cupwright_heat_vessel_heat_capacity;
  cupwrightHeatAfterVapour = exports.cupwright_heat_after_vapour;
  cupwrightHeatAfterPour = exports.cupwright_heat_after_pour;
  cupwrightHeatBeforePour = exports.cupwright_heat_before_pour;
  cupwrightHeatReachable = exports.cupwright_heat_reachable;
  cupwrightHeatTimeToCool = exports.cupwright_heat_time_to_cool;
  cupwrightHeatCoolingRate = exports.cupwright_heat_cooling_rate;
  cupwrightHeatTemperatureAfter = exports.cupwright_heat_temperature_after;
  cupwrightHeatOpenCupRateEstimate = exports.cupwright_heat_open_cup_rate_estimate;
  cupwrightReadingCombine = exports.cupwright_reading_combine;
  cupwrightReadingRepeatability = exports.cupwright_reading_repeatability;
  cupwrightReadingCriticalRange = exports.cupwright_reading_critical_range;
  cupwrightReadingTotalStrength = exports.cupwright_reading_total_strength;
  cupwrightReadingCoffeeStrength = exports.cupwright_reading_coffee_strength;
  cupwrightReadingBrixOfIndex = exports.cupwright_reading_brix_of_index;
  cupwrightReadingIndexOfBrix = exports.cupwright_reading_index_of_brix;
  cupwrightReadingBrixAt20 = exports.cupwright_reading_brix_at_20;
  cupwrightReadingStrengthOfBrix = exports.cupwright_reading_strength_of_brix;
  cupwrightReadingBrixOfStrength = exports.cupwright_reading_brix_of_strength;
  cupwrightReadingStrengthOfIndex = exports.cupwright_reading_strength_of_index;
  cupwrightCalibrateRetentionLine = exports.cupwright_calibrate_retention_line;
  cupwrightCalibrateExpectedBeverage = exports.cupwright_calibrate_expected_beverage;
  cupwrightCalibrateRetention = exports.cupwright_calibrate_retention;
  cupwrightCalibrateHeatCapacity = exports.cupwright_calibrate_heat_capacity;
  cupwrightCalibrateEquilibriumYield = exports.cupwright_calibrate_equilibrium_yield;
  cupwrightCalibrateOneRate = exports.cupwright_calibrate_one_rate;
  cupwrightCalibrateTwoRates = exports.cupwright_calibrate_two_rates;
  cupwrightCalibrateCooling = exports.cupwright_calibrate_cooling;
  cupwrightCalibrateRefractiveFactor = exports.cupwright_calibrate_refractive_factor;
  cupwrightCalibrateRepeatability = exports.cupwright_calibrate_repeatability;
  cupwrightVerdictStand = exports.cupwright_verdict_stand;
  cupwrightUncertaintyCoverageFactor = exports.cupwright_uncertainty_coverage_factor;
  cupwrightUncertaintyExpanded = exports.cupwright_uncertainty_expanded;
  cupwrightUncertaintyOfRepeats = exports.cupwright_uncertainty_of_repeats;
  cupwrightUncertaintyPooled = exports.cupwright_uncertainty_pooled;
  cupwrightUncertaintyOfReadings = exports.cupwright_uncertainty_of_readings;
  cupwrightUncertaintyTogether = exports.cupwright_uncertainty_together;
  cupwrightUncertaintyOfLimit = exports.cupwright_uncertainty_of_limit;
  cupwrightUncertaintyOfDisplay = exports.cupwright_uncertainty_of_display;
  cupwrightUncertaintyOfExpanded = exports.cupwright_uncertainty_of_expanded;
  cupwrightUncertaintyFreedomOfDoubt = exports.cupwright_uncertainty_freedom_of_doubt;
  cupwrightUncertaintyCombine = exports.cupwright_uncertainty_combine;
  cupwrightUncertaintyStrength = exports.cupwright_uncertainty_strength;
  cupwrightUncertaintyStrengthOfBrix = exports.cupwright_uncertainty_strength_of_brix;
  cupwrightUncertaintyFlowThroughYield = exports.cupwright_uncertainty_flow_through_yield;
  cupwrightUncertaintySteepedYield = exports.cupwright_uncertainty_steeped_yield;
  cupwrightUncertaintyExtractionYield = exports.cupwright_uncertainty_extraction_yield;
  cupwrightUncertaintySteepedStrength = exports.cupwright_uncertainty_steeped_strength;
  cupwrightUncertaintyBeverage = exports.cupwright_uncertainty_beverage;
  cupwrightUncertaintyWaterToReach = exports.cupwright_uncertainty_water_to_reach;
  cupwrightUncertaintyStrengthAfterWater = exports.cupwright_uncertainty_strength_after_water;
  cupwrightUncertaintyMixedTemperature = exports.cupwright_uncertainty_mixed_temperature;
  cupwrightUncertaintySettle = exports.cupwright_uncertainty_settle;
  cupwrightUncertaintyTimeToCool = exports.cupwright_uncertainty_time_to_cool;
  cupwrightUncertaintyTemperatureAfter = exports.cupwright_uncertainty_temperature_after;
  cupwrightUncertaintyYieldAtTime = exports.cupwright_uncertainty_yield_at_time;
  cupwrightUncertaintyTimeForYield = exports.cupwright_uncertainty_time_for_yield;
  cupwrightDecisionChances = exports.cupwright_decision_chances;
  cupwrightDecisionDecide = exports.cupwright_decision_decide;
  cupwrightDecisionLargestUncertainty = exports.cupwright_decision_largest_uncertainty;
  cupwrightDecisionAcceptance = exports.cupwright_decision_acceptance;
  cupwrightDecisionReadingsNeeded = exports.cupwright_decision_readings_needed;
  cupwrightDecisionJoint = exports.cupwright_decision_joint;
  cupwrightDecisionDecideJoint = exports.cupwright_decision_decide_joint;
  cupwrightDecisionCompare = exports.cupwright_decision_compare;
  cupwrightCautionOf = exports.cupwright_caution_of;
  cupwrightCautionTimeToBurn = exports.cupwright_caution_time_to_burn;
  cupwrightCautionCaffeine = exports.cupwright_caution_caffeine;
  cupwrightPlanRecipe = exports.cupwright_plan_recipe;
  cupwrightPlanForeseen = exports.cupwright_plan_foreseen;
  cupwrightPlanSurest = exports.cupwright_plan_surest;
  cupwrightForecastStrength = exports.cupwright_forecast_strength;
  cupwrightForecastCountedYield = exports.cupwright_forecast_counted_yield;
  cupwrightForecastOutlook = exports.cupwright_forecast_outlook;
  cupwrightAdviseOn = exports.cupwright_advise_on;
  cupwrightProfileToBytes = exports.cupwright_profile_to_bytes;
  cupwrightProfileFromBytes = exports.cupwright_profile_from_bytes;
  cupwrightProfileKeepRetentionLine = exports.cupwright_profile_keep_retention_line;
  cupwrightProfileKeepRetention = exports.cupwright_profile_keep_retention;
  cupwrightProfileKeepOneRate = exports.cupwright_profile_keep_one_rate;
  cupwrightProfileKeepTwoRates = exports.cupwright_profile_keep_two_rates;
  cupwrightProfileKeepHeatCapacity = exports.cupwright_profile_keep_heat_capacity;
  cupwrightProfileKeepCupCooling = exports.cupwright_profile_keep_cup_cooling;
  cupwrightProfileKeepRefractiveFactor = exports.cupwright_profile_keep_refractive_factor;
  cupwrightProfileKeepRepeatability = exports.cupwright_profile_keep_repeatability;
  cupwrightProfileExpectedBeverage = exports.cupwright_profile_expected_beverage;
  cupwrightProfileRates = exports.cupwright_profile_rates;
  cupwrightProfilePlateau = exports.cupwright_profile_plateau;
  cupwrightProfileMeans = exports.cupwright_profile_means;
  cupwrightColumnsFlowThroughYield = exports.cupwright_columns_flow_through_yield;
  cupwrightColumnsFlowThroughStrength = exports.cupwright_columns_flow_through_strength;
  cupwrightColumnsSteepedYield = exports.cupwright_columns_steeped_yield;
  cupwrightColumnsExtractionYield = exports.cupwright_columns_extraction_yield;
  cupwrightColumnsWaterRatio = exports.cupwright_columns_water_ratio;
  cupwrightColumnsWaterToReach = exports.cupwright_columns_water_to_reach;
  cupwrightColumnsStrengthOfBrix = exports.cupwright_columns_strength_of_brix;
  cupwrightColumnsBeverage = exports.cupwright_columns_beverage;
  cupwrightColumnsStand = exports.cupwright_columns_stand;
  cupwrightLiveBegin = exports.cupwright_live_begin;
  cupwrightLiveTake = exports.cupwright_live_take;
  cupwrightLiveZeroed = exports.cupwright_live_zeroed;
  cupwrightLiveCountAnew = exports.cupwright_live_count_anew;
  cupwrightLiveAccount = exports.cupwright_live_account;
  cupwrightLiveToBytes = exports.cupwright_live_to_bytes;
  cupwrightLiveFromBytes = exports.cupwright_live_from_bytes;
  cupwrightFollowBegin = exports.cupwright_follow_begin;
  cupwrightFollowTake = exports.cupwright_follow_take;
  cupwrightFollowGoOn = exports.cupwright_follow_go_on;
  cupwrightFollowZeroed = exports.cupwright_follow_zeroed;
  cupwrightFollowSetDose = exports.cupwright_follow_set_dose;
  cupwrightFollowSetBeverage = exports.cupwright_follow_set_beverage;
  cupwrightFollowSetLead = exports.cupwright_follow_set_lead;
  cupwrightFollowWeighed = exports.cupwright_follow_weighed;
  cupwrightFollowAccount = exports.cupwright_follow_account;
  cupwrightFollowOutlook = exports.cupwright_follow_outlook;
  cupwrightFollowToBytes = exports.cupwright_follow_to_bytes;
  cupwrightFollowFromBytes = exports.cupwright_follow_from_bytes;
}

const CUP_FIELDS = new Set(["brew", "u_weighing_g", "nu_weighing", "strength", "yield", "contact_s"]);
function takeCup(o, name) {
  record(o, 6, CUP_FIELDS, name);
  try {
    return [
      ...takeBrew(o.brew, "brew"),
      number(o.u_weighing_g, "u_weighing_g"),
      number(o.nu_weighing, "nu_weighing"),
      ...takeStrengthEstimate(o.strength, "strength"),
      ...takeYieldEstimate(o.yield, "yield"),
      number(o.contact_s, "contact_s"),
    ];
  } catch (thrown) {
    throw misspelt(thrown, o, CUP_FIELDS);
  }
}

const KEPT_FIELDS = new Set(["apparent_retention_g_per_g", "hold_up_g"]);
function takeKept(o, name) {
  record(o, 2, KEPT_FIELDS, name);
  try {
    return [
      number(o.apparent_retention_g_per_g, "apparent_retention_g_per_g"),
      number(o.hold_up_g, "hold_up_g"),
    ];
  } catch (thrown) {
    throw misspelt(thrown, o, KEPT_FIELDS);
  }
}

function getKept(at) {
  return {
    apparent_retention_g_per_g: f64[(at + 0) >> 3],
    hold_up_g: f64[(at + 8) >> 3],
  };
}

const MEANS_FIELDS = new Set(["rates", "kept", "chamber", "water_c", "milk"]);
function takeMeans(o, name) {
  record(o, 2, MEANS_FIELDS, name);
  try {
    const rates = optional(o.rates, "rates", takeRates);
    const kept = optional(o.kept, "kept", takeKept);
    const chamber = optional(o.chamber, "chamber", takeChamber);
    return [
      ...(rates ?? [0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0]),
      ...(kept ?? [0, 0]),
      ...(chamber ?? [0, 0]),
      number(o.water_c, "water_c"),
      rates !== null ? 1 : 0,
      kept !== null ? 1 : 0,
      chamber !== null ? 1 : 0,
      boolean(o.milk, "milk"),
    ];
  } catch (thrown) {
    throw misspelt(thrown, o, MEANS_FIELDS);
  }
}

function getMeans(at) {
  return {
    rates: i32[(at + 128) >> 2] ? getRates(at + 0) : null,
    kept: i32[(at + 132) >> 2] ? getKept(at + 88) : null,
    chamber: i32[(at + 136) >> 2] ? getChamber(at + 104) : null,
    water_c: f64[(at + 120) >> 3],
    milk: i32[(at + 140) >> 2] !== 0,
  };
}

function getSuggestion(at) {
  return {
    amount: f64[(at + 0) >> 3],
    before: f64[(at + 8) >> 3],
    with_dose_g: f64[(at + 16) >> 3],
    outlook: getOutlook(at + 24),
    change: CHANGE[i32[(at + 120) >> 2]],
  };
}

function getAdvice(at) {
  return {
    suggestions: list(i32[(at + 1024) >> 2], 8, at + 0, 128, getSuggestion),
    grind: DIRECTION[i32[(at + 1028) >> 2]],
    is_next_told: i32[(at + 1032) >> 2] !== 0,
  };
}

const DRAINED_FIELDS = new Set(["dose_g", "water_g", "beverage_g", "vapour_g"]);
function takeDrained(o, name) {
  record(o, 4, DRAINED_FIELDS, name);
  try {
    return [
      number(o.dose_g, "dose_g"),
      number(o.water_g, "water_g"),
      number(o.beverage_g, "beverage_g"),
      number(o.vapour_g, "vapour_g"),
    ];
  } catch (thrown) {
    throw misspelt(thrown, o, DRAINED_FIELDS);
  }
}

const SETTLED_FIELDS = new Set(["liquid_g", "before_c", "settled_c", "vessel_c"]);
function takeSettled(o, name) {
  record(o, 4, SETTLED_FIELDS, name);
  try {
    return [
      number(o.liquid_g, "liquid_g"),
      number(o.before_c, "before_c"),
      number(o.settled_c, "settled_c"),
      number(o.vessel_c, "vessel_c"),
    ];
  } catch (thrown) {
    throw misspelt(thrown, o, SETTLED_FIELDS);
  }
}

const STEEPED_FIELDS = new Set(["strength_pct", "water_g", "dose_g"]);
function takeSteeped(o, name) {
  record(o, 3, STEEPED_FIELDS, name);
  try {
    return [
      number(o.strength_pct, "strength_pct"),
      number(o.water_g, "water_g"),
      number(o.dose_g, "dose_g"),
    ];
  } catch (thrown) {
    throw misspelt(thrown, o, STEEPED_FIELDS);
  }
}

const TIMED_FIELDS = new Set(["contact_s", "yield_pct"]);
function takeTimed(o, name) {
  record(o, 2, TIMED_FIELDS, name);
  try {
    return [
      number(o.contact_s, "contact_s"),
      number(o.yield_pct, "yield_pct"),
    ];
  } catch (thrown) {
    throw misspelt(thrown, o, TIMED_FIELDS);
  }
}

const THERMOMETER_FIELDS = new Set(["time_s", "water_c"]);
function takeThermometer(o, name) {
  record(o, 2, THERMOMETER_FIELDS, name);
  try {
    return [
      number(o.time_s, "time_s"),
      number(o.water_c, "water_c"),
    ];
  } catch (thrown) {
    throw misspelt(thrown, o, THERMOMETER_FIELDS);
  }
}

const DRIED_FIELDS = new Set(["brix", "strength_pct"]);
function takeDried(o, name) {
  record(o, 2, DRIED_FIELDS, name);
  try {
    return [
      number(o.brix, "brix"),
      number(o.strength_pct, "strength_pct"),
    ];
  } catch (thrown) {
    throw misspelt(thrown, o, DRIED_FIELDS);
  }
}

const REPEAT_FIELDS = new Set(["strength_pct", "cup"]);
function takeRepeat(o, name) {
  record(o, 2, REPEAT_FIELDS, name);
  try {
    return [
      number(o.strength_pct, "strength_pct"),
      integer(o.cup, "cup", "cup_number"),
      0, // padding
    ];
  } catch (thrown) {
    throw misspelt(thrown, o, REPEAT_FIELDS);
  }
}

const ODD_FIELDS = new Set(["studentised", "chance", "at", "is_suspicious"]);
function takeOdd(o, name) {
  record(o, 4, ODD_FIELDS, name);
  try {
    return [
      number(o.studentised, "studentised"),
      number(o.chance, "chance"),
      number(o.at, "at"),
      boolean(o.is_suspicious, "is_suspicious"),
    ];
  } catch (thrown) {
    throw misspelt(thrown, o, ODD_FIELDS);
  }
}

function getOdd(at) {
  return {
    studentised: f64[(at + 0) >> 3],
    chance: f64[(at + 8) >> 3],
    at: i32[(at + 16) >> 2],
    is_suspicious: i32[(at + 20) >> 2] !== 0,
  };
}

const QUALITY_FIELDS = new Set(["degrees_of_freedom", "s", "residuals", "leverages", "odd", "measurements"]);
function takeQuality(o, name) {
  record(o, 5, QUALITY_FIELDS, name);
  try {
    const odd = optional(o.odd, "odd", takeOdd);
    return [
      number(o.degrees_of_freedom, "degrees_of_freedom"),
      number(o.s, "s"),
      ...places(o.residuals, "residuals", 30),
      ...places(o.leverages, "leverages", 30),
      ...(odd ?? [0, 0, 0, 0]),
      integer(o.measurements, "measurements", "measurements"),
      odd !== null ? 1 : 0,
    ];
  } catch (thrown) {
    throw misspelt(thrown, o, QUALITY_FIELDS);
  }
}

function getQuality(at) {
  return {
    degrees_of_freedom: f64[(at + 0) >> 3],
    s: f64[(at + 8) >> 3],
    residuals: doubles(i32[(at + 520) >> 2], at + 16),
    leverages: doubles(i32[(at + 520) >> 2], at + 256),
    odd: i32[(at + 524) >> 2] ? getOdd(at + 496) : null,
    measurements: i32[(at + 520) >> 2],
  };
}

const RETENTION_LINE_FIELDS = new Set(["apparent_retention_g_per_g", "u_retention_g_per_g", "fitted_hold_up_g", "u_hold_up_g", "covariance_g2_per_g", "quality"]);
function takeRetentionLine(o, name) {
  record(o, 6, RETENTION_LINE_FIELDS, name);
  try {
    return [
      number(o.apparent_retention_g_per_g, "apparent_retention_g_per_g"),
      number(o.u_retention_g_per_g, "u_retention_g_per_g"),
      number(o.fitted_hold_up_g, "fitted_hold_up_g"),
      number(o.u_hold_up_g, "u_hold_up_g"),
      number(o.covariance_g2_per_g, "covariance_g2_per_g"),
      ...takeQuality(o.quality, "quality"),
    ];
  } catch (thrown) {
    throw misspelt(thrown, o, RETENTION_LINE_FIELDS);
  }
}

function getRetentionLine(at) {
  return {
    apparent_retention_g_per_g: f64[(at + 0) >> 3],
    u_retention_g_per_g: f64[(at + 8) >> 3],
    fitted_hold_up_g: f64[(at + 16) >> 3],
    u_hold_up_g: f64[(at + 24) >> 3],
    covariance_g2_per_g: f64[(at + 32) >> 3],
    quality: getQuality(at + 40),
  };
}

function getExpected(at) {
  return {
    beverage_g: f64[(at + 0) >> 3],
    u_beverage_g: f64[(at + 8) >> 3],
    degrees_of_freedom: f64[(at + 16) >> 3],
    u_mean_g: f64[(at + 24) >> 3],
  };
}

const FITTED_RETENTION_FIELDS = new Set(["apparent_retention_g_per_g", "u_retention_g_per_g", "quality"]);
function takeFittedRetention(o, name) {
  record(o, 3, FITTED_RETENTION_FIELDS, name);
  try {
    return [
      number(o.apparent_retention_g_per_g, "apparent_retention_g_per_g"),
      number(o.u_retention_g_per_g, "u_retention_g_per_g"),
      ...takeQuality(o.quality, "quality"),
    ];
  } catch (thrown) {
    throw misspelt(thrown, o, FITTED_RETENTION_FIELDS);
  }
}

function getFittedRetention(at) {
  return {
    apparent_retention_g_per_g: f64[(at + 0) >> 3],
    u_retention_g_per_g: f64[(at + 8) >> 3],
    quality: getQuality(at + 16),
  };
}

const FITTED_HEAT_CAPACITY_FIELDS = new Set(["heat_capacity_j_per_k", "u_heat_capacity_j_per_k", "quality"]);
function takeFittedHeatCapacity(o, name) {
  record(o, 3, FITTED_HEAT_CAPACITY_FIELDS, name);
  try {
    return [
      number(o.heat_capacity_j_per_k, "heat_capacity_j_per_k"),
      number(o.u_heat_capacity_j_per_k, "u_heat_capacity_j_per_k"),
      ...takeQuality(o.quality, "quality"),
    ];
  } catch (thrown) {
    throw misspelt(thrown, o, FITTED_HEAT_CAPACITY_FIELDS);
  }
}

function getFittedHeatCapacity(at) {
  return {
    heat_capacity_j_per_k: f64[(at + 0) >> 3],
    u_heat_capacity_j_per_k: f64[(at + 8) >> 3],
    quality: getQuality(at + 16),
  };
}

function getFittedYield(at) {
  return {
    yield_pct: f64[(at + 0) >> 3],
    u_yield_pct: f64[(at + 8) >> 3],
    quality: getQuality(at + 16),
  };
}

const FITTED_REFRACTIVE_FACTOR_FIELDS = new Set(["refractive_factor_pct_per_brix", "u_factor_pct", "quality"]);
function takeFittedRefractiveFactor(o, name) {
  record(o, 3, FITTED_REFRACTIVE_FACTOR_FIELDS, name);
  try {
    return [
      number(o.refractive_factor_pct_per_brix, "refractive_factor_pct_per_brix"),
      number(o.u_factor_pct, "u_factor_pct"),
      ...takeQuality(o.quality, "quality"),
    ];
  } catch (thrown) {
    throw misspelt(thrown, o, FITTED_REFRACTIVE_FACTOR_FIELDS);
  }
}

function getFittedRefractiveFactor(at) {
  return {
    refractive_factor_pct_per_brix: f64[(at + 0) >> 3],
    u_factor_pct: f64[(at + 8) >> 3],
    quality: getQuality(at + 16),
  };
}

const FITTED_REPEATABILITY_FIELDS = new Set(["repeatability_pct", "u_repeatability_pct", "quality"]);
function takeFittedRepeatability(o, name) {
  record(o, 3, FITTED_REPEATABILITY_FIELDS, name);
  try {
    return [
      number(o.repeatability_pct, "repeatability_pct"),
      number(o.u_repeatability_pct, "u_repeatability_pct"),
      ...takeQuality(o.quality, "quality"),
    ];
  } catch (thrown) {
    throw misspelt(thrown, o, FITTED_REPEATABILITY_FIELDS);
  }
}

function getFittedRepeatability(at) {
  return {
    repeatability_pct: f64[(at + 0) >> 3],
    u_repeatability_pct: f64[(at + 8) >> 3],
    quality: getQuality(at + 16),
  };
}

const ONE_RATE_FIELDS = new Set(["equilibrium_yield_pct", "u_equilibrium_yield_pct", "time_constant_s", "u_ln_time_constant", "covariance_pct", "quality"]);
function takeOneRate(o, name) {
  record(o, 6, ONE_RATE_FIELDS, name);
  try {
    return [
      number(o.equilibrium_yield_pct, "equilibrium_yield_pct"),
      number(o.u_equilibrium_yield_pct, "u_equilibrium_yield_pct"),
      number(o.time_constant_s, "time_constant_s"),
      number(o.u_ln_time_constant, "u_ln_time_constant"),
      number(o.covariance_pct, "covariance_pct"),
      ...takeQuality(o.quality, "quality"),
    ];
  } catch (thrown) {
    throw misspelt(thrown, o, ONE_RATE_FIELDS);
  }
}

function getOneRate(at) {
  return {
    equilibrium_yield_pct: f64[(at + 0) >> 3],
    u_equilibrium_yield_pct: f64[(at + 8) >> 3],
    time_constant_s: f64[(at + 16) >> 3],
    u_ln_time_constant: f64[(at + 24) >> 3],
    covariance_pct: f64[(at + 32) >> 3],
    quality: getQuality(at + 40),
  };
}

const TWO_RATES_FIELDS = new Set(["equilibrium_yield_pct", "u_equilibrium_yield_pct", "fast_share_pct", "u_fast_share_pct", "fast_time_s", "u_ln_fast_time", "slow_time_s", "u_ln_slow_time", "covariance", "quality"]);
function takeTwoRates(o, name) {
  record(o, 10, TWO_RATES_FIELDS, name);
  try {
    return [
      number(o.equilibrium_yield_pct, "equilibrium_yield_pct"),
      number(o.u_equilibrium_yield_pct, "u_equilibrium_yield_pct"),
      number(o.fast_share_pct, "fast_share_pct"),
      number(o.u_fast_share_pct, "u_fast_share_pct"),
      number(o.fast_time_s, "fast_time_s"),
      number(o.u_ln_fast_time, "u_ln_fast_time"),
      number(o.slow_time_s, "slow_time_s"),
      number(o.u_ln_slow_time, "u_ln_slow_time"),
      ...table(o.covariance, "covariance", 4, 4),
      ...takeQuality(o.quality, "quality"),
    ];
  } catch (thrown) {
    throw misspelt(thrown, o, TWO_RATES_FIELDS);
  }
}

function getTwoRates(at) {
  return {
    equilibrium_yield_pct: f64[(at + 0) >> 3],
    u_equilibrium_yield_pct: f64[(at + 8) >> 3],
    fast_share_pct: f64[(at + 16) >> 3],
    u_fast_share_pct: f64[(at + 24) >> 3],
    fast_time_s: f64[(at + 32) >> 3],
    u_ln_fast_time: f64[(at + 40) >> 3],
    slow_time_s: f64[(at + 48) >> 3],
    u_ln_slow_time: f64[(at + 56) >> 3],
    covariance: list(4, 4, at + 64, 32, (row) => doubles(4, row)),
    quality: getQuality(at + 192),
  };
}

const COOLING_FIELDS = new Set(["cooling_per_min", "u_cooling_per_min", "start_c", "u_start_k", "covariance_k_per_min", "quality"]);
function takeCooling(o, name) {
  record(o, 6, COOLING_FIELDS, name);
  try {
    return [
      number(o.cooling_per_min, "cooling_per_min"),
      number(o.u_cooling_per_min, "u_cooling_per_min"),
      number(o.start_c, "start_c"),
      number(o.u_start_k, "u_start_k"),
      number(o.covariance_k_per_min, "covariance_k_per_min"),
      ...takeQuality(o.quality, "quality"),
    ];
  } catch (thrown) {
    throw misspelt(thrown, o, COOLING_FIELDS);
  }
}

function getCooling(at) {
  return {
    cooling_per_min: f64[(at + 0) >> 3],
    u_cooling_per_min: f64[(at + 8) >> 3],
    start_c: f64[(at + 16) >> 3],
    u_start_k: f64[(at + 24) >> 3],
    covariance_k_per_min: f64[(at + 32) >> 3],
    quality: getQuality(at + 40),
  };
}

const HAZARDS_FIELDS = new Set(["hottest_c", "served_c", "caffeine_mg", "pressed", "glass", "milk", "ice"]);
function takeHazards(o, name) {
  record(o, 6, HAZARDS_FIELDS, name);
  try {
    const caffeine_mg = optional(o.caffeine_mg, "caffeine_mg", number);
    return [
      number(o.hottest_c, "hottest_c"),
      number(o.served_c, "served_c"),
      caffeine_mg ?? 0,
      caffeine_mg !== null ? 1 : 0,
      boolean(o.pressed, "pressed"),
      boolean(o.glass, "glass"),
      boolean(o.milk, "milk"),
      boolean(o.ice, "ice"),
      0, // padding
    ];
  } catch (thrown) {
    throw misspelt(thrown, o, HAZARDS_FIELDS);
  }
}

function getTimeToBurn(at) {
  return {
    time_s: f64[(at + 0) >> 3],
    burn: BURN[i32[(at + 8) >> 2]],
  };
}

const BAND_FIELDS = new Set(["lowest", "highest"]);
function takeBand(o, name) {
  record(o, 2, BAND_FIELDS, name);
  try {
    return [
      number(o.lowest, "lowest"),
      number(o.highest, "highest"),
    ];
  } catch (thrown) {
    throw misspelt(thrown, o, BAND_FIELDS);
  }
}

function getBand(at) {
  return {
    lowest: f64[(at + 0) >> 3],
    highest: f64[(at + 8) >> 3],
  };
}

const BANDS_FIELDS = new Set(["strength_lowest_pct", "strength_highest_pct", "yield_lowest_pct", "yield_highest_pct"]);
function takeBands(o, name) {
  record(o, 4, BANDS_FIELDS, name);
  try {
    return [
      number(o.strength_lowest_pct, "strength_lowest_pct"),
      number(o.strength_highest_pct, "strength_highest_pct"),
      number(o.yield_lowest_pct, "yield_lowest_pct"),
      number(o.yield_highest_pct, "yield_highest_pct"),
    ];
  } catch (thrown) {
    throw misspelt(thrown, o, BANDS_FIELDS);
  }
}

function getChances(at) {
  return {
    below_pct: f64[(at + 0) >> 3],
    inside_pct: f64[(at + 8) >> 3],
    above_pct: f64[(at + 16) >> 3],
  };
}

function getAcceptance(at) {
  return {
    acceptance: i32[(at + 16) >> 2] ? getBand(at + 0) : null,
  };
}

function getReadingsNeeded(at) {
  return {
    readings: i32[(at + 0) >> 2],
    needed: NEEDED[i32[(at + 4) >> 2]],
  };
}

function getJoint(at) {
  return {
    strength: getChances(at + 0),
    yield: getChances(at + 24),
    both_pct: f64[(at + 48) >> 3],
  };
}

const PAIR_FIELDS = new Set(["first", "u_first", "nu_first", "second", "u_second", "nu_second"]);
function takePair(o, name) {
  record(o, 6, PAIR_FIELDS, name);
  try {
    return [
      number(o.first, "first"),
      number(o.u_first, "u_first"),
      number(o.nu_first, "nu_first"),
      number(o.second, "second"),
      number(o.u_second, "u_second"),
      number(o.nu_second, "nu_second"),
    ];
  } catch (thrown) {
    throw misspelt(thrown, o, PAIR_FIELDS);
  }
}

function getComparison(at) {
  return {
    difference: f64[(at + 0) >> 3],
    u: f64[(at + 8) >> 3],
    degrees_of_freedom: f64[(at + 16) >> 3],
    least: f64[(at + 24) >> 3],
    confidence_pct: f64[(at + 32) >> 3],
    is_real: i32[(at + 40) >> 2] !== 0,
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

const ESTIMATE_FIELDS = new Set(["value", "u_value", "nu_value"]);
function takeEstimate(o, name) {
  record(o, 3, ESTIMATE_FIELDS, name);
  try {
    return [
      number(o.value, "value"),
      number(o.u_value, "u_value"),
      number(o.nu_value, "nu_value"),
    ];
  } catch (thrown) {
    throw misspelt(thrown, o, ESTIMATE_FIELDS);
  }
}

const STRENGTH_ESTIMATE_FIELDS = new Set(["strength_pct", "u_strength_pct", "nu_strength"]);
function takeStrengthEstimate(o, name) {
  record(o, 3, STRENGTH_ESTIMATE_FIELDS, name);
  try {
    return [
      number(o.strength_pct, "strength_pct"),
      number(o.u_strength_pct, "u_strength_pct"),
      number(o.nu_strength, "nu_strength"),
    ];
  } catch (thrown) {
    throw misspelt(thrown, o, STRENGTH_ESTIMATE_FIELDS);
  }
}

function getStrengthEstimate(at) {
  return {
    strength_pct: f64[(at + 0) >> 3],
    u_strength_pct: f64[(at + 8) >> 3],
    nu_strength: f64[(at + 16) >> 3],
  };
}

const YIELD_ESTIMATE_FIELDS = new Set(["yield_pct", "u_yield_pct", "nu_yield"]);
function takeYieldEstimate(o, name) {
  record(o, 3, YIELD_ESTIMATE_FIELDS, name);
  try {
    return [
      number(o.yield_pct, "yield_pct"),
      number(o.u_yield_pct, "u_yield_pct"),
      number(o.nu_yield, "nu_yield"),
    ];
  } catch (thrown) {
    throw misspelt(thrown, o, YIELD_ESTIMATE_FIELDS);
  }
}

const DOSE_ESTIMATE_FIELDS = new Set(["dose_g", "u_dose_g", "nu_dose"]);
function takeDoseEstimate(o, name) {
  record(o, 3, DOSE_ESTIMATE_FIELDS, name);
  try {
    return [
      number(o.dose_g, "dose_g"),
      number(o.u_dose_g, "u_dose_g"),
      number(o.nu_dose, "nu_dose"),
    ];
  } catch (thrown) {
    throw misspelt(thrown, o, DOSE_ESTIMATE_FIELDS);
  }
}

const WATER_ESTIMATE_FIELDS = new Set(["water_g", "u_water_g", "nu_water"]);
function takeWaterEstimate(o, name) {
  record(o, 3, WATER_ESTIMATE_FIELDS, name);
  try {
    return [
      number(o.water_g, "water_g"),
      number(o.u_water_g, "u_water_g"),
      number(o.nu_water, "nu_water"),
    ];
  } catch (thrown) {
    throw misspelt(thrown, o, WATER_ESTIMATE_FIELDS);
  }
}

const BEVERAGE_ESTIMATE_FIELDS = new Set(["beverage_g", "u_beverage_g", "nu_beverage"]);
function takeBeverageEstimate(o, name) {
  record(o, 3, BEVERAGE_ESTIMATE_FIELDS, name);
  try {
    return [
      number(o.beverage_g, "beverage_g"),
      number(o.u_beverage_g, "u_beverage_g"),
      number(o.nu_beverage, "nu_beverage"),
    ];
  } catch (thrown) {
    throw misspelt(thrown, o, BEVERAGE_ESTIMATE_FIELDS);
  }
}

const PORTION_ESTIMATE_FIELDS = new Set(["portion_g", "u_portion_g", "nu_portion"]);
function takePortionEstimate(o, name) {
  record(o, 3, PORTION_ESTIMATE_FIELDS, name);
  try {
    return [
      number(o.portion_g, "portion_g"),
      number(o.u_portion_g, "u_portion_g"),
      number(o.nu_portion, "nu_portion"),
    ];
  } catch (thrown) {
    throw misspelt(thrown, o, PORTION_ESTIMATE_FIELDS);
  }
}

const ADDED_ESTIMATE_FIELDS = new Set(["added_g", "u_added_g", "nu_added"]);
function takeAddedEstimate(o, name) {
  record(o, 3, ADDED_ESTIMATE_FIELDS, name);
  try {
    return [
      number(o.added_g, "added_g"),
      number(o.u_added_g, "u_added_g"),
      number(o.nu_added, "nu_added"),
    ];
  } catch (thrown) {
    throw misspelt(thrown, o, ADDED_ESTIMATE_FIELDS);
  }
}

const MOISTURE_ESTIMATE_FIELDS = new Set(["moisture_pct", "u_moisture_pct", "nu_moisture"]);
function takeMoistureEstimate(o, name) {
  record(o, 3, MOISTURE_ESTIMATE_FIELDS, name);
  try {
    return [
      number(o.moisture_pct, "moisture_pct"),
      number(o.u_moisture_pct, "u_moisture_pct"),
      number(o.nu_moisture, "nu_moisture"),
    ];
  } catch (thrown) {
    throw misspelt(thrown, o, MOISTURE_ESTIMATE_FIELDS);
  }
}

const WATER_SOLIDS_ESTIMATE_FIELDS = new Set(["water_solids_mg_per_l", "u_water_solids_mg_per_l", "nu_water_solids"]);
function takeWaterSolidsEstimate(o, name) {
  record(o, 3, WATER_SOLIDS_ESTIMATE_FIELDS, name);
  try {
    return [
      number(o.water_solids_mg_per_l, "water_solids_mg_per_l"),
      number(o.u_water_solids_mg_per_l, "u_water_solids_mg_per_l"),
      number(o.nu_water_solids, "nu_water_solids"),
    ];
  } catch (thrown) {
    throw misspelt(thrown, o, WATER_SOLIDS_ESTIMATE_FIELDS);
  }
}

const VAPOUR_ESTIMATE_FIELDS = new Set(["vapour_g", "u_vapour_g", "nu_vapour"]);
function takeVapourEstimate(o, name) {
  record(o, 3, VAPOUR_ESTIMATE_FIELDS, name);
  try {
    return [
      number(o.vapour_g, "vapour_g"),
      number(o.u_vapour_g, "u_vapour_g"),
      number(o.nu_vapour, "nu_vapour"),
    ];
  } catch (thrown) {
    throw misspelt(thrown, o, VAPOUR_ESTIMATE_FIELDS);
  }
}

const HELD_STRENGTH_ESTIMATE_FIELDS = new Set(["held_strength_pct", "u_held_strength_pct", "nu_held_strength"]);
function takeHeldStrengthEstimate(o, name) {
  record(o, 3, HELD_STRENGTH_ESTIMATE_FIELDS, name);
  try {
    return [
      number(o.held_strength_pct, "held_strength_pct"),
      number(o.u_held_strength_pct, "u_held_strength_pct"),
      number(o.nu_held_strength, "nu_held_strength"),
    ];
  } catch (thrown) {
    throw misspelt(thrown, o, HELD_STRENGTH_ESTIMATE_FIELDS);
  }
}

const HOT_ESTIMATE_FIELDS = new Set(["hot_g", "u_hot_g", "nu_hot_mass", "hot_c", "u_hot_k", "nu_hot_temperature"]);
function takeHotEstimate(o, name) {
  record(o, 6, HOT_ESTIMATE_FIELDS, name);
  try {
    return [
      number(o.hot_g, "hot_g"),
      number(o.u_hot_g, "u_hot_g"),
      number(o.nu_hot_mass, "nu_hot_mass"),
      number(o.hot_c, "hot_c"),
      number(o.u_hot_k, "u_hot_k"),
      number(o.nu_hot_temperature, "nu_hot_temperature"),
    ];
  } catch (thrown) {
    throw misspelt(thrown, o, HOT_ESTIMATE_FIELDS);
  }
}

const COLD_ESTIMATE_FIELDS = new Set(["cold_g", "u_cold_g", "nu_cold_mass", "cold_c", "u_cold_k", "nu_cold_temperature"]);
function takeColdEstimate(o, name) {
  record(o, 6, COLD_ESTIMATE_FIELDS, name);
  try {
    return [
      number(o.cold_g, "cold_g"),
      number(o.u_cold_g, "u_cold_g"),
      number(o.nu_cold_mass, "nu_cold_mass"),
      number(o.cold_c, "cold_c"),
      number(o.u_cold_k, "u_cold_k"),
      number(o.nu_cold_temperature, "nu_cold_temperature"),
    ];
  } catch (thrown) {
    throw misspelt(thrown, o, COLD_ESTIMATE_FIELDS);
  }
}

const BRIX_ESTIMATE_FIELDS = new Set(["brix", "u_brix", "nu_brix"]);
function takeBrixEstimate(o, name) {
  record(o, 3, BRIX_ESTIMATE_FIELDS, name);
  try {
    return [
      number(o.brix, "brix"),
      number(o.u_brix, "u_brix"),
      number(o.nu_brix, "nu_brix"),
    ];
  } catch (thrown) {
    throw misspelt(thrown, o, BRIX_ESTIMATE_FIELDS);
  }
}

const REFRACTIVE_FACTOR_ESTIMATE_FIELDS = new Set(["refractive_factor_pct_per_brix", "u_factor_pct", "nu_factor"]);
function takeRefractiveFactorEstimate(o, name) {
  record(o, 3, REFRACTIVE_FACTOR_ESTIMATE_FIELDS, name);
  try {
    return [
      number(o.refractive_factor_pct_per_brix, "refractive_factor_pct_per_brix"),
      number(o.u_factor_pct, "u_factor_pct"),
      number(o.nu_factor, "nu_factor"),
    ];
  } catch (thrown) {
    throw misspelt(thrown, o, REFRACTIVE_FACTOR_ESTIMATE_FIELDS);
  }
}

const REPEATABILITY_ESTIMATE_FIELDS = new Set(["repeatability_pct", "u_repeatability_pct", "nu_repeatability"]);
function takeRepeatabilityEstimate(o, name) {
  record(o, 3, REPEATABILITY_ESTIMATE_FIELDS, name);
  try {
    return [
      number(o.repeatability_pct, "repeatability_pct"),
      number(o.u_repeatability_pct, "u_repeatability_pct"),
      number(o.nu_repeatability, "nu_repeatability"),
    ];
  } catch (thrown) {
    throw misspelt(thrown, o, REPEATABILITY_ESTIMATE_FIELDS);
  }
}

const LIQUID_ESTIMATE_FIELDS = new Set(["liquid_g", "u_liquid_g", "nu_liquid", "before_c", "u_before_k", "nu_before"]);
function takeLiquidEstimate(o, name) {
  record(o, 6, LIQUID_ESTIMATE_FIELDS, name);
  try {
    return [
      number(o.liquid_g, "liquid_g"),
      number(o.u_liquid_g, "u_liquid_g"),
      number(o.nu_liquid, "nu_liquid"),
      number(o.before_c, "before_c"),
      number(o.u_before_k, "u_before_k"),
      number(o.nu_before, "nu_before"),
    ];
  } catch (thrown) {
    throw misspelt(thrown, o, LIQUID_ESTIMATE_FIELDS);
  }
}

const BODY_ESTIMATE_FIELDS = new Set(["heat_capacity_j_per_k", "u_heat_capacity_j_per_k", "nu_heat_capacity", "body_c", "u_body_k", "nu_body"]);
function takeBodyEstimate(o, name) {
  record(o, 6, BODY_ESTIMATE_FIELDS, name);
  try {
    return [
      number(o.heat_capacity_j_per_k, "heat_capacity_j_per_k"),
      number(o.u_heat_capacity_j_per_k, "u_heat_capacity_j_per_k"),
      number(o.nu_heat_capacity, "nu_heat_capacity"),
      number(o.body_c, "body_c"),
      number(o.u_body_k, "u_body_k"),
      number(o.nu_body, "nu_body"),
    ];
  } catch (thrown) {
    throw misspelt(thrown, o, BODY_ESTIMATE_FIELDS);
  }
}

const TEMPERATURE_ESTIMATE_FIELDS = new Set(["water_c", "u_water_k", "nu_water"]);
function takeTemperatureEstimate(o, name) {
  record(o, 3, TEMPERATURE_ESTIMATE_FIELDS, name);
  try {
    return [
      number(o.water_c, "water_c"),
      number(o.u_water_k, "u_water_k"),
      number(o.nu_water, "nu_water"),
    ];
  } catch (thrown) {
    throw misspelt(thrown, o, TEMPERATURE_ESTIMATE_FIELDS);
  }
}

const COOLING_ESTIMATE_FIELDS = new Set(["cooling_per_min", "u_cooling_per_min", "nu_cooling"]);
function takeCoolingEstimate(o, name) {
  record(o, 3, COOLING_ESTIMATE_FIELDS, name);
  try {
    return [
      number(o.cooling_per_min, "cooling_per_min"),
      number(o.u_cooling_per_min, "u_cooling_per_min"),
      number(o.nu_cooling, "nu_cooling"),
    ];
  } catch (thrown) {
    throw misspelt(thrown, o, COOLING_ESTIMATE_FIELDS);
  }
}

const TIME_ESTIMATE_FIELDS = new Set(["time_s", "u_time_s", "nu_time"]);
function takeTimeEstimate(o, name) {
  record(o, 3, TIME_ESTIMATE_FIELDS, name);
  try {
    return [
      number(o.time_s, "time_s"),
      number(o.u_time_s, "u_time_s"),
      number(o.nu_time, "nu_time"),
    ];
  } catch (thrown) {
    throw misspelt(thrown, o, TIME_ESTIMATE_FIELDS);
  }
}

const INSTRUMENT_UNCERTAINTY_FIELDS = new Set(["u_instrument_pct", "nu_instrument"]);
function takeInstrumentUncertainty(o, name) {
  record(o, 2, INSTRUMENT_UNCERTAINTY_FIELDS, name);
  try {
    return [
      number(o.u_instrument_pct, "u_instrument_pct"),
      number(o.nu_instrument, "nu_instrument"),
    ];
  } catch (thrown) {
    throw misspelt(thrown, o, INSTRUMENT_UNCERTAINTY_FIELDS);
  }
}

const FACTOR_UNCERTAINTY_FIELDS = new Set(["u_factor_pct", "nu_factor"]);
function takeFactorUncertainty(o, name) {
  record(o, 2, FACTOR_UNCERTAINTY_FIELDS, name);
  try {
    return [
      number(o.u_factor_pct, "u_factor_pct"),
      number(o.nu_factor, "nu_factor"),
    ];
  } catch (thrown) {
    throw misspelt(thrown, o, FACTOR_UNCERTAINTY_FIELDS);
  }
}

const SPAN_UNCERTAINTY_FIELDS = new Set(["u_span_pct", "nu_span"]);
function takeSpanUncertainty(o, name) {
  record(o, 2, SPAN_UNCERTAINTY_FIELDS, name);
  try {
    return [
      number(o.u_span_pct, "u_span_pct"),
      number(o.nu_span, "nu_span"),
    ];
  } catch (thrown) {
    throw misspelt(thrown, o, SPAN_UNCERTAINTY_FIELDS);
  }
}

const RETENTION_UNCERTAINTY_FIELDS = new Set(["u_apparent_retention_g_per_g", "nu_apparent_retention"]);
function takeRetentionUncertainty(o, name) {
  record(o, 2, RETENTION_UNCERTAINTY_FIELDS, name);
  try {
    return [
      number(o.u_apparent_retention_g_per_g, "u_apparent_retention_g_per_g"),
      number(o.nu_apparent_retention, "nu_apparent_retention"),
    ];
  } catch (thrown) {
    throw misspelt(thrown, o, RETENTION_UNCERTAINTY_FIELDS);
  }
}

const LOSSES_UNCERTAINTY_FIELDS = new Set(["u_losses_g", "nu_losses"]);
function takeLossesUncertainty(o, name) {
  record(o, 2, LOSSES_UNCERTAINTY_FIELDS, name);
  try {
    return [
      number(o.u_losses_g, "u_losses_g"),
      number(o.nu_losses, "nu_losses"),
    ];
  } catch (thrown) {
    throw misspelt(thrown, o, LOSSES_UNCERTAINTY_FIELDS);
  }
}

const BREW_FIELDS = new Set(["dose_g", "water_g", "beverage_g", "moisture_pct", "water_solids_mg_per_l", "vapour_g", "held_strength_pct"]);
function takeBrew(o, name) {
  record(o, 7, BREW_FIELDS, name);
  try {
    return [
      number(o.dose_g, "dose_g"),
      number(o.water_g, "water_g"),
      number(o.beverage_g, "beverage_g"),
      number(o.moisture_pct, "moisture_pct"),
      number(o.water_solids_mg_per_l, "water_solids_mg_per_l"),
      number(o.vapour_g, "vapour_g"),
      number(o.held_strength_pct, "held_strength_pct"),
    ];
  } catch (thrown) {
    throw misspelt(thrown, o, BREW_FIELDS);
  }
}

const KINETICS_FIELDS = new Set(["equilibrium_yield_pct", "fast_share_pct", "fast_time_s", "slow_time_s"]);
function takeKinetics(o, name) {
  record(o, 4, KINETICS_FIELDS, name);
  try {
    return [
      number(o.equilibrium_yield_pct, "equilibrium_yield_pct"),
      number(o.fast_share_pct, "fast_share_pct"),
      number(o.fast_time_s, "fast_time_s"),
      number(o.slow_time_s, "slow_time_s"),
    ];
  } catch (thrown) {
    throw misspelt(thrown, o, KINETICS_FIELDS);
  }
}

function getKinetics(at) {
  return {
    equilibrium_yield_pct: f64[(at + 0) >> 3],
    fast_share_pct: f64[(at + 8) >> 3],
    fast_time_s: f64[(at + 16) >> 3],
    slow_time_s: f64[(at + 24) >> 3],
  };
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

export const INTENDED_FIELDS = new Set(["dose", "water", "yield", "losses", "retention", "other", "moisture_pct", "water_solids_mg_per_l", "held_strength_pct", "portion", "added"]);
export function takeIntended(o, name) {
  record(o, 11, INTENDED_FIELDS, name);
  try {
    return [
      ...takeDoseEstimate(o.dose, "dose"),
      ...takeWaterEstimate(o.water, "water"),
      ...takeYieldEstimate(o.yield, "yield"),
      ...takeLosses(o.losses, "losses"),
      ...takeRetentionUncertainty(o.retention, "retention"),
      ...takeLossesUncertainty(o.other, "other"),
      number(o.moisture_pct, "moisture_pct"),
      number(o.water_solids_mg_per_l, "water_solids_mg_per_l"),
      number(o.held_strength_pct, "held_strength_pct"),
      ...takePortionEstimate(o.portion, "portion"),
      ...takeAddedEstimate(o.added, "added"),
    ];
  } catch (thrown) {
    throw misspelt(thrown, o, INTENDED_FIELDS);
  }
}

const STRAYING_FIELDS = new Set(["u_next_dose_g", "nu_next_dose", "u_next_water_g", "nu_next_water", "u_next_yield_pct", "nu_next_yield", "u_next_retention_g_per_g", "nu_next_retention", "u_next_losses_g", "nu_next_losses"]);
function takeStraying(o, name) {
  record(o, 10, STRAYING_FIELDS, name);
  try {
    return [
      number(o.u_next_dose_g, "u_next_dose_g"),
      number(o.nu_next_dose, "nu_next_dose"),
      number(o.u_next_water_g, "u_next_water_g"),
      number(o.nu_next_water, "nu_next_water"),
      number(o.u_next_yield_pct, "u_next_yield_pct"),
      number(o.nu_next_yield, "nu_next_yield"),
      number(o.u_next_retention_g_per_g, "u_next_retention_g_per_g"),
      number(o.nu_next_retention, "nu_next_retention"),
      number(o.u_next_losses_g, "u_next_losses_g"),
      number(o.nu_next_losses, "nu_next_losses"),
    ];
  } catch (thrown) {
    throw misspelt(thrown, o, STRAYING_FIELDS);
  }
}

export function getOutlook(at) {
  return {
    beverage_g: f64[(at + 0) >> 3],
    u_beverage_g: f64[(at + 8) >> 3],
    nu_beverage: f64[(at + 16) >> 3],
    strength_pct: f64[(at + 24) >> 3],
    u_strength_pct: f64[(at + 32) >> 3],
    nu_strength: f64[(at + 40) >> 3],
    counted_yield_pct: f64[(at + 48) >> 3],
    u_counted_yield_pct: f64[(at + 56) >> 3],
    nu_counted_yield: f64[(at + 64) >> 3],
    correlation: f64[(at + 72) >> 3],
    strength_inside_pct: f64[(at + 80) >> 3],
    inside_pct: f64[(at + 88) >> 3],
  };
}

const BODY_FIELDS = new Set(["heat_capacity_j_per_k", "body_c"]);
function takeBody(o, name) {
  record(o, 2, BODY_FIELDS, name);
  try {
    return [
      number(o.heat_capacity_j_per_k, "heat_capacity_j_per_k"),
      number(o.body_c, "body_c"),
    ];
  } catch (thrown) {
    throw misspelt(thrown, o, BODY_FIELDS);
  }
}

function getBody(at) {
  return {
    heat_capacity_j_per_k: f64[(at + 0) >> 3],
    body_c: f64[(at + 8) >> 3],
  };
}

const SURROUNDINGS_FIELDS = new Set(["room_c", "humidity_pct", "cover"]);
function takeSurroundings(o, name) {
  record(o, 3, SURROUNDINGS_FIELDS, name);
  try {
    return [
      number(o.room_c, "room_c"),
      number(o.humidity_pct, "humidity_pct"),
      choice(o.cover, "cover", COVER),
      0, // padding
    ];
  } catch (thrown) {
    throw misspelt(thrown, o, SURROUNDINGS_FIELDS);
  }
}

export const LIVE_SETUP_FIELDS = new Set(["division_g", "capacity_g", "fastest_g_per_s"]);
export function takeLiveSetup(o, name) {
  record(o, 3, LIVE_SETUP_FIELDS, name);
  try {
    return [
      number(o.division_g, "division_g"),
      number(o.capacity_g, "capacity_g"),
      number(o.fastest_g_per_s, "fastest_g_per_s"),
    ];
  } catch (thrown) {
    throw misspelt(thrown, o, LIVE_SETUP_FIELDS);
  }
}

export function getLiveSeen(at) {
  return {
    level_g: f64[(at + 0) >> 3],
    flow_g_per_s: i32[(at + 48) >> 2] ? f64[(at + 8) >> 3] : null,
    poured_g: f64[(at + 16) >> 3],
    unclear_g: f64[(at + 24) >> 3],
    event_clock_s: i32[(at + 56) >> 2] ? f64[(at + 32) >> 3] : null,
    event_change_g: i32[(at + 56) >> 2] ? f64[(at + 40) >> 3] : null,
    doing: DOING[i32[(at + 52) >> 2]],
    event: i32[(at + 56) >> 2] ? HAPPENING[i32[(at + 56) >> 2]] : null,
  };
}

export function getLiveAccounts(at) {
  return {
    poured_g: f64[(at + 0) >> 3],
    moved_g: f64[(at + 8) >> 3],
    tared_g: f64[(at + 16) >> 3],
    drifted_g: f64[(at + 24) >> 3],
    unclear_g: f64[(at + 32) >> 3],
    under_way_g: f64[(at + 40) >> 3],
    u_poured_g: f64[(at + 48) >> 3],
  };
}

export const LIVE_STEP_FIELDS = new Set(["dose_g", "to_g", "from_s", "until_s", "vessel_g", "step"]);
export function takeLiveStep(o, name) {
  record(o, 1, LIVE_STEP_FIELDS, name);
  try {
    const step = choice(o.step, "step", STEP);
    return [
      STEP[step] === "dose" ? number(o.dose_g, "dose_g") : 0,
      STEP[step] === "pour" ? number(o.to_g, "to_g") : 0,
      STEP[step] === "pour" || STEP[step] === "stir" ? number(o.from_s, "from_s") : 0,
      STEP[step] === "wait" ? number(o.until_s, "until_s") : 0,
      STEP[step] === "beverage" ? number(o.vessel_g, "vessel_g") : 0,
      step,
      0, // padding
    ];
  } catch (thrown) {
    throw misspelt(thrown, o, LIVE_STEP_FIELDS);
  }
}

export function getLiveNow(at) {
  return {
    seen: getLiveSeen(at + 0),
    to_pour_g: i32[(at + 104) >> 2] ? f64[(at + 64) >> 3] : null,
    to_wait_s: i32[(at + 108) >> 2] ? f64[(at + 72) >> 3] : null,
    ratio_g_per_g: i32[(at + 112) >> 2] ? f64[(at + 80) >> 3] : null,
    brewing_s: i32[(at + 116) >> 2] ? f64[(at + 88) >> 3] : null,
    flow_variation_pct: i32[(at + 120) >> 2] ? f64[(at + 96) >> 3] : null,
    step: i32[(at + 124) >> 2],
    cue: CUE[i32[(at + 128) >> 2]],
    why: WHY[i32[(at + 132) >> 2]],
  };
}

export function getLiveWeighed(at) {
  return {
    dose_g: i32[(at + 32) >> 2] ? f64[(at + 0) >> 3] : null,
    beverage_g: i32[(at + 36) >> 2] ? f64[(at + 8) >> 3] : null,
    drips_g: f64[(at + 16) >> 3],
    lead_s: f64[(at + 24) >> 3],
  };
}

const WISH_FIELDS = new Set(["cup_g", "strength_pct", "brew_strength_pct", "brew_c", "contact_s", "serve_c", "window", "servings", "most_batches"]);
function takeWish(o, name) {
  record(o, 5, WISH_FIELDS, name);
  try {
    const brew_strength_pct = optional(o.brew_strength_pct, "brew_strength_pct", number);
    const serve_c = optional(o.serve_c, "serve_c", number);
    const window = optional(o.window, "window", takeWindow);
    const most_batches = optional(o.most_batches, "most_batches", integer, "batches");
    return [
      number(o.cup_g, "cup_g"),
      number(o.strength_pct, "strength_pct"),
      brew_strength_pct ?? 0,
      number(o.brew_c, "brew_c"),
      number(o.contact_s, "contact_s"),
      serve_c ?? 0,
      ...(window ?? [0, 0, 0, 0, 0, 0]),
      integer(o.servings, "servings", "servings"),
      most_batches ?? 0,
      brew_strength_pct !== null ? 1 : 0,
      most_batches !== null ? 1 : 0,
      serve_c !== null ? 1 : 0,
      window !== null ? 1 : 0,
    ];
  } catch (thrown) {
    throw misspelt(thrown, o, WISH_FIELDS);
  }
}

const BREWER_FIELDS = new Set(["held_strength_pct", "losses", "chamber", "heat_capacity_j_per_k", "rinse_g", "cooling_per_min", "cover", "pressed", "glass"]);
function takeBrewer(o, name) {
  record(o, 6, BREWER_FIELDS, name);
  try {
    const chamber = optional(o.chamber, "chamber", takeChamber);
    const rinse_g = optional(o.rinse_g, "rinse_g", number);
    const cooling_per_min = optional(o.cooling_per_min, "cooling_per_min", number);
    return [
      number(o.held_strength_pct, "held_strength_pct"),
      ...takeLosses(o.losses, "losses"),
      ...(chamber ?? [0, 0]),
      number(o.heat_capacity_j_per_k, "heat_capacity_j_per_k"),
      rinse_g ?? 0,
      cooling_per_min ?? 0,
      chamber !== null ? 1 : 0,
      rinse_g !== null ? 1 : 0,
      cooling_per_min !== null ? 1 : 0,
      choice(o.cover, "cover", COVER),
      boolean(o.pressed, "pressed"),
      boolean(o.glass, "glass"),
    ];
  } catch (thrown) {
    throw misspelt(thrown, o, BREWER_FIELDS);
  }
}

const COFFEE_FIELDS = new Set(["yield_pct", "moisture_pct", "caffeine_mg_per_g"]);
function takeCoffee(o, name) {
  record(o, 2, COFFEE_FIELDS, name);
  try {
    const caffeine_mg_per_g = optional(o.caffeine_mg_per_g, "caffeine_mg_per_g", number);
    return [
      number(o.yield_pct, "yield_pct"),
      number(o.moisture_pct, "moisture_pct"),
      caffeine_mg_per_g ?? 0,
      caffeine_mg_per_g !== null ? 1 : 0,
      0, // padding
    ];
  } catch (thrown) {
    throw misspelt(thrown, o, COFFEE_FIELDS);
  }
}

const KITCHEN_FIELDS = new Set(["pressure_kpa", "altitude_m", "room_c", "humidity_pct", "drop_k", "second_vessel_j_per_k", "cup_j_per_k", "cup_cooling_per_min", "water_solids_mg_per_l", "added_c", "air"]);
function takeKitchen(o, name) {
  record(o, 7, KITCHEN_FIELDS, name);
  try {
    const second_vessel_j_per_k = optional(o.second_vessel_j_per_k, "second_vessel_j_per_k", number);
    const cup_cooling_per_min = optional(o.cup_cooling_per_min, "cup_cooling_per_min", number);
    const air = choice(o.air, "air", AIR);
    return [
      AIR[air] === "pressure" ? number(o.pressure_kpa, "pressure_kpa") : 0,
      AIR[air] === "altitude" ? number(o.altitude_m, "altitude_m") : 0,
      number(o.room_c, "room_c"),
      number(o.humidity_pct, "humidity_pct"),
      number(o.drop_k, "drop_k"),
      second_vessel_j_per_k ?? 0,
      number(o.cup_j_per_k, "cup_j_per_k"),
      cup_cooling_per_min ?? 0,
      number(o.water_solids_mg_per_l, "water_solids_mg_per_l"),
      number(o.added_c, "added_c"),
      air,
      second_vessel_j_per_k !== null ? 1 : 0,
      cup_cooling_per_min !== null ? 1 : 0,
      0, // padding
    ];
  } catch (thrown) {
    throw misspelt(thrown, o, KITCHEN_FIELDS);
  }
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

function getForeseen(at) {
  return {
    recipe: getRecipe(at + 0),
    outlook: i32[(at + 424) >> 2] ? getOutlook(at + 328) : null,
  };
}

const LEARNED_FIELDS = new Set(["value", "u", "degrees_of_freedom"]);
function takeLearned(o, name) {
  record(o, 3, LEARNED_FIELDS, name);
  try {
    return [
      number(o.value, "value"),
      number(o.u, "u"),
      number(o.degrees_of_freedom, "degrees_of_freedom"),
    ];
  } catch (thrown) {
    throw misspelt(thrown, o, LEARNED_FIELDS);
  }
}

function getLearned(at) {
  return {
    value: f64[(at + 0) >> 3],
    u: f64[(at + 8) >> 3],
    degrees_of_freedom: f64[(at + 16) >> 3],
  };
}

const PROFILE_FIELDS = new Set(["apparent_retention_g_per_g", "fitted_hold_up_g", "heat_capacity_j_per_k", "cooling_per_min", "equilibrium_yield_pct", "fast_share_pct", "fast_time_s", "slow_time_s", "refractive_factor_pct_per_brix", "cup_j_per_k", "cup_cooling_per_min", "repeatability_pct", "retention_correlation", "retention_scatter_g", "correlation_equilibrium_share", "correlation_equilibrium_fast", "correlation_equilibrium_slow", "correlation_share_fast", "correlation_share_slow", "correlation_fast_slow", "version"]);
function takeProfile(o, name) {
  record(o, 1, PROFILE_FIELDS, name);
  try {
    version(o.version, 1);
    const apparent_retention_g_per_g = optional(o.apparent_retention_g_per_g, "apparent_retention_g_per_g", takeLearned);
    const fitted_hold_up_g = optional(o.fitted_hold_up_g, "fitted_hold_up_g", takeLearned);
    const heat_capacity_j_per_k = optional(o.heat_capacity_j_per_k, "heat_capacity_j_per_k", takeLearned);
    const cooling_per_min = optional(o.cooling_per_min, "cooling_per_min", takeLearned);
    const equilibrium_yield_pct = optional(o.equilibrium_yield_pct, "equilibrium_yield_pct", takeLearned);
    const fast_share_pct = optional(o.fast_share_pct, "fast_share_pct", takeLearned);
    const fast_time_s = optional(o.fast_time_s, "fast_time_s", takeLearned);
    const slow_time_s = optional(o.slow_time_s, "slow_time_s", takeLearned);
    const refractive_factor_pct_per_brix = optional(o.refractive_factor_pct_per_brix, "refractive_factor_pct_per_brix", takeLearned);
    const cup_j_per_k = optional(o.cup_j_per_k, "cup_j_per_k", takeLearned);
    const cup_cooling_per_min = optional(o.cup_cooling_per_min, "cup_cooling_per_min", takeLearned);
    const repeatability_pct = optional(o.repeatability_pct, "repeatability_pct", takeLearned);
    const retention_correlation = optional(o.retention_correlation, "retention_correlation", number);
    const retention_scatter_g = optional(o.retention_scatter_g, "retention_scatter_g", number);
    const correlation_equilibrium_share = optional(o.correlation_equilibrium_share, "correlation_equilibrium_share", number);
    const correlation_equilibrium_fast = optional(o.correlation_equilibrium_fast, "correlation_equilibrium_fast", number);
    const correlation_equilibrium_slow = optional(o.correlation_equilibrium_slow, "correlation_equilibrium_slow", number);
    const correlation_share_fast = optional(o.correlation_share_fast, "correlation_share_fast", number);
    const correlation_share_slow = optional(o.correlation_share_slow, "correlation_share_slow", number);
    const correlation_fast_slow = optional(o.correlation_fast_slow, "correlation_fast_slow", number);
    return [
      ...(apparent_retention_g_per_g ?? [0, 0, 0]),
      ...(fitted_hold_up_g ?? [0, 0, 0]),
      ...(heat_capacity_j_per_k ?? [0, 0, 0]),
      ...(cooling_per_min ?? [0, 0, 0]),
      ...(equilibrium_yield_pct ?? [0, 0, 0]),
      ...(fast_share_pct ?? [0, 0, 0]),
      ...(fast_time_s ?? [0, 0, 0]),
      ...(slow_time_s ?? [0, 0, 0]),
      ...(refractive_factor_pct_per_brix ?? [0, 0, 0]),
      ...(cup_j_per_k ?? [0, 0, 0]),
      ...(cup_cooling_per_min ?? [0, 0, 0]),
      ...(repeatability_pct ?? [0, 0, 0]),
      retention_correlation ?? 0,
      retention_scatter_g ?? 0,
      correlation_equilibrium_share ?? 0,
      correlation_equilibrium_fast ?? 0,
      correlation_equilibrium_slow ?? 0,
      correlation_share_fast ?? 0,
      correlation_share_slow ?? 0,
      correlation_fast_slow ?? 0,
      apparent_retention_g_per_g !== null ? 1 : 0,
      fitted_hold_up_g !== null ? 1 : 0,
      heat_capacity_j_per_k !== null ? 1 : 0,
      cooling_per_min !== null ? 1 : 0,
      equilibrium_yield_pct !== null ? 1 : 0,
      fast_share_pct !== null ? 1 : 0,
      fast_time_s !== null ? 1 : 0,
      slow_time_s !== null ? 1 : 0,
      refractive_factor_pct_per_brix !== null ? 1 : 0,
      cup_j_per_k !== null ? 1 : 0,
      cup_cooling_per_min !== null ? 1 : 0,
      repeatability_pct !== null ? 1 : 0,
      retention_correlation !== null ? 1 : 0,
      retention_scatter_g !== null ? 1 : 0,
      correlation_equilibrium_share !== null ? 1 : 0,
      correlation_equilibrium_fast !== null ? 1 : 0,
      correlation_equilibrium_slow !== null ? 1 : 0,
      correlation_share_fast !== null ? 1 : 0,
      correlation_share_slow !== null ? 1 : 0,
      correlation_fast_slow !== null ? 1 : 0,
    ];
  } catch (thrown) {
    throw misspelt(thrown, o, PROFILE_FIELDS);
  }
}

function getProfile(at) {
  return {
    version: 1,
    apparent_retention_g_per_g: i32[(at + 352) >> 2] ? getLearned(at + 0) : null,
    fitted_hold_up_g: i32[(at + 356) >> 2] ? getLearned(at + 24) : null,
    heat_capacity_j_per_k: i32[(at + 360) >> 2] ? getLearned(at + 48) : null,
    cooling_per_min: i32[(at + 364) >> 2] ? getLearned(at + 72) : null,
    equilibrium_yield_pct: i32[(at + 368) >> 2] ? getLearned(at + 96) : null,
    fast_share_pct: i32[(at + 372) >> 2] ? getLearned(at + 120) : null,
    fast_time_s: i32[(at + 376) >> 2] ? getLearned(at + 144) : null,
    slow_time_s: i32[(at + 380) >> 2] ? getLearned(at + 168) : null,
    refractive_factor_pct_per_brix: i32[(at + 384) >> 2] ? getLearned(at + 192) : null,
    cup_j_per_k: i32[(at + 388) >> 2] ? getLearned(at + 216) : null,
    cup_cooling_per_min: i32[(at + 392) >> 2] ? getLearned(at + 240) : null,
    repeatability_pct: i32[(at + 396) >> 2] ? getLearned(at + 264) : null,
    retention_correlation: i32[(at + 400) >> 2] ? f64[(at + 288) >> 3] : null,
    retention_scatter_g: i32[(at + 404) >> 2] ? f64[(at + 296) >> 3] : null,
    correlation_equilibrium_share: i32[(at + 408) >> 2] ? f64[(at + 304) >> 3] : null,
    correlation_equilibrium_fast: i32[(at + 412) >> 2] ? f64[(at + 312) >> 3] : null,
    correlation_equilibrium_slow: i32[(at + 416) >> 2] ? f64[(at + 320) >> 3] : null,
    correlation_share_fast: i32[(at + 420) >> 2] ? f64[(at + 328) >> 3] : null,
    correlation_share_slow: i32[(at + 424) >> 2] ? f64[(at + 336) >> 3] : null,
    correlation_fast_slow: i32[(at + 428) >> 2] ? f64[(at + 344) >> 3] : null,
  };
}

const CHAMBER_FIELDS = new Set(["volume_ml", "displacement_ml_per_g"]);
function takeChamber(o, name) {
  record(o, 2, CHAMBER_FIELDS, name);
  try {
    return [
      number(o.volume_ml, "volume_ml"),
      number(o.displacement_ml_per_g, "displacement_ml_per_g"),
    ];
  } catch (thrown) {
    throw misspelt(thrown, o, CHAMBER_FIELDS);
  }
}

function getChamber(at) {
  return {
    volume_ml: f64[(at + 0) >> 3],
    displacement_ml_per_g: f64[(at + 8) >> 3],
  };
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

export const LOSSES_FIELDS = new Set(["apparent_retention_g_per_g", "hold_up_g", "paper_g", "paper_uptake_g_per_g", "drips_g", "vapour_g"]);
export function takeLosses(o, name) {
  record(o, 6, LOSSES_FIELDS, name);
  try {
    return [
      number(o.apparent_retention_g_per_g, "apparent_retention_g_per_g"),
      number(o.hold_up_g, "hold_up_g"),
      number(o.paper_g, "paper_g"),
      number(o.paper_uptake_g_per_g, "paper_uptake_g_per_g"),
      number(o.drips_g, "drips_g"),
      number(o.vapour_g, "vapour_g"),
    ];
  } catch (thrown) {
    throw misspelt(thrown, o, LOSSES_FIELDS);
  }
}

const STANDARD_FIELDS = new Set(["u", "degrees_of_freedom"]);
function takeStandard(o, name) {
  record(o, 2, STANDARD_FIELDS, name);
  try {
    return [
      number(o.u, "u"),
      number(o.degrees_of_freedom, "degrees_of_freedom"),
    ];
  } catch (thrown) {
    throw misspelt(thrown, o, STANDARD_FIELDS);
  }
}

function getStandard(at) {
  return {
    u: f64[(at + 0) >> 3],
    degrees_of_freedom: f64[(at + 8) >> 3],
  };
}

function getMean(at) {
  return {
    value: f64[(at + 0) >> 3],
    u: f64[(at + 8) >> 3],
    degrees_of_freedom: f64[(at + 16) >> 3],
  };
}

function getExpanded(at) {
  return {
    coverage_factor: f64[(at + 0) >> 3],
    half_width: f64[(at + 8) >> 3],
  };
}

const SERIES_FIELDS = new Set(["s", "degrees_of_freedom"]);
function takeSeries(o, name) {
  record(o, 2, SERIES_FIELDS, name);
  try {
    return [
      number(o.s, "s"),
      number(o.degrees_of_freedom, "degrees_of_freedom"),
    ];
  } catch (thrown) {
    throw misspelt(thrown, o, SERIES_FIELDS);
  }
}

const INFLUENCE_FIELDS = new Set(["sensitivity", "u", "degrees_of_freedom"]);
function takeInfluence(o, name) {
  record(o, 3, INFLUENCE_FIELDS, name);
  try {
    return [
      number(o.sensitivity, "sensitivity"),
      number(o.u, "u"),
      number(o.degrees_of_freedom, "degrees_of_freedom"),
    ];
  } catch (thrown) {
    throw misspelt(thrown, o, INFLUENCE_FIELDS);
  }
}

const RATES_FIELDS = new Set(["kinetics", "u_fast_share_pct", "u_ln_fast_time", "u_ln_slow_time", "correlation_share_fast", "correlation_share_slow", "correlation_fast_slow", "nu_rates"]);
function takeRates(o, name) {
  record(o, 8, RATES_FIELDS, name);
  try {
    return [
      ...takeKinetics(o.kinetics, "kinetics"),
      number(o.u_fast_share_pct, "u_fast_share_pct"),
      number(o.u_ln_fast_time, "u_ln_fast_time"),
      number(o.u_ln_slow_time, "u_ln_slow_time"),
      number(o.correlation_share_fast, "correlation_share_fast"),
      number(o.correlation_share_slow, "correlation_share_slow"),
      number(o.correlation_fast_slow, "correlation_fast_slow"),
      number(o.nu_rates, "nu_rates"),
    ];
  } catch (thrown) {
    throw misspelt(thrown, o, RATES_FIELDS);
  }
}

function getRates(at) {
  return {
    kinetics: getKinetics(at + 0),
    u_fast_share_pct: f64[(at + 32) >> 3],
    u_ln_fast_time: f64[(at + 40) >> 3],
    u_ln_slow_time: f64[(at + 48) >> 3],
    correlation_share_fast: f64[(at + 56) >> 3],
    correlation_share_slow: f64[(at + 64) >> 3],
    correlation_fast_slow: f64[(at + 72) >> 3],
    nu_rates: f64[(at + 80) >> 3],
  };
}

const PLATEAU_FIELDS = new Set(["u_equilibrium_yield_pct", "correlation_equilibrium_share", "correlation_equilibrium_fast", "correlation_equilibrium_slow"]);
function takePlateau(o, name) {
  record(o, 4, PLATEAU_FIELDS, name);
  try {
    return [
      number(o.u_equilibrium_yield_pct, "u_equilibrium_yield_pct"),
      number(o.correlation_equilibrium_share, "correlation_equilibrium_share"),
      number(o.correlation_equilibrium_fast, "correlation_equilibrium_fast"),
      number(o.correlation_equilibrium_slow, "correlation_equilibrium_slow"),
    ];
  } catch (thrown) {
    throw misspelt(thrown, o, PLATEAU_FIELDS);
  }
}

function getPlateau(at) {
  return {
    u_equilibrium_yield_pct: f64[(at + 0) >> 3],
    correlation_equilibrium_share: f64[(at + 8) >> 3],
    correlation_equilibrium_fast: f64[(at + 16) >> 3],
    correlation_equilibrium_slow: f64[(at + 24) >> 3],
  };
}

function getTerm(at) {
  return {
    sensitivity: f64[(at + 0) >> 3],
    u: f64[(at + 8) >> 3],
    degrees_of_freedom: f64[(at + 16) >> 3],
    contribution: f64[(at + 24) >> 3],
    source: quantity(i32[(at + 32) >> 2]),
  };
}

function getDominant(at) {
  return {
    contribution: f64[(at + 0) >> 3],
    share_pct: f64[(at + 8) >> 3],
    halved: f64[(at + 16) >> 3],
    gone: f64[(at + 24) >> 3],
    source: quantity(i32[(at + 32) >> 2]),
  };
}

function getBudget(at) {
  return {
    value: f64[(at + 0) >> 3],
    u: f64[(at + 8) >> 3],
    degrees_of_freedom: f64[(at + 16) >> 3],
    second_order: i32[(at + 500) >> 2] ? f64[(at + 24) >> 3] : null,
    shift: f64[(at + 32) >> 3],
    correlation: i32[(at + 492) >> 2] ? f64[(at + 40) >> 3] : null,
    dominant: i32[(at + 496) >> 2] ? getDominant(at + 48) : null,
    terms: list(i32[(at + 488) >> 2], 10, at + 88, 40, getTerm),
  };
}

const MEASURED_FIELDS = new Set(["strength", "dose", "water", "beverage", "moisture", "water_solids", "vapour", "held_strength", "span", "factor"]);
function takeMeasured(o, name) {
  record(o, 10, MEASURED_FIELDS, name);
  try {
    return [
      ...takeStrengthEstimate(o.strength, "strength"),
      ...takeDoseEstimate(o.dose, "dose"),
      ...takeWaterEstimate(o.water, "water"),
      ...takeBeverageEstimate(o.beverage, "beverage"),
      ...takeMoistureEstimate(o.moisture, "moisture"),
      ...takeWaterSolidsEstimate(o.water_solids, "water_solids"),
      ...takeVapourEstimate(o.vapour, "vapour"),
      ...takeHeldStrengthEstimate(o.held_strength, "held_strength"),
      ...takeSpanUncertainty(o.span, "span"),
      ...takeFactorUncertainty(o.factor, "factor"),
    ];
  } catch (thrown) {
    throw misspelt(thrown, o, MEASURED_FIELDS);
  }
}

export const WINDOW_FIELDS = new Set(["strength_lowest_pct", "strength_highest_pct", "yield_lowest_pct", "yield_highest_pct", "yield_counting"]);
export function takeWindow(o, name) {
  record(o, 2, WINDOW_FIELDS, name);
  try {
    const yield_lowest_pct = optional(o.yield_lowest_pct, "yield_lowest_pct", number);
    const yield_highest_pct = optional(o.yield_highest_pct, "yield_highest_pct", number);
    const yield_counting = optional(o.yield_counting, "yield_counting", choice, COUNTING);
    if (yield_lowest_pct !== null || yield_highest_pct !== null || yield_counting !== null) {
      number(yield_lowest_pct, "yield_lowest_pct");
      number(yield_highest_pct, "yield_highest_pct");
      number(yield_counting, "yield_counting");
    }
    return [
      number(o.strength_lowest_pct, "strength_lowest_pct"),
      number(o.strength_highest_pct, "strength_highest_pct"),
      yield_lowest_pct ?? 0,
      yield_highest_pct ?? 0,
      yield_lowest_pct !== null || yield_highest_pct !== null || yield_counting !== null ? 1 : 0,
      yield_counting ?? 0,
    ];
  } catch (thrown) {
    throw misspelt(thrown, o, WINDOW_FIELDS);
  }
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
    record(o, 1, WATER_DENSITY_OPTIONS, "options");
    try {
      answered(cupwrightWaterDensity(number(o.water_c, "water_c"), answer, base));
      return { density_kg_per_m3: f64[answer >> 3] };
    } catch (thrown) {
      throw misspelt(thrown, o, WATER_DENSITY_OPTIONS);
    }
  },
  specificHeat(o) {
    record(o, 1, WATER_SPECIFIC_HEAT_OPTIONS, "options");
    try {
      answered(cupwrightWaterSpecificHeat(number(o.water_c, "water_c"), answer, base));
      return { specific_heat_j_per_g_k: f64[answer >> 3] };
    } catch (thrown) {
      throw misspelt(thrown, o, WATER_SPECIFIC_HEAT_OPTIONS);
    }
  },
  enthalpy(o) {
    record(o, 1, WATER_ENTHALPY_OPTIONS, "options");
    try {
      answered(cupwrightWaterEnthalpy(number(o.water_c, "water_c"), answer, base));
      return { enthalpy_j_per_g: f64[answer >> 3] };
    } catch (thrown) {
      throw misspelt(thrown, o, WATER_ENTHALPY_OPTIONS);
    }
  },
  temperatureOfEnthalpy(o) {
    record(o, 1, WATER_TEMPERATURE_OF_ENTHALPY_OPTIONS, "options");
    try {
      answered(cupwrightWaterTemperatureOfEnthalpy(number(o.enthalpy_j_per_g, "enthalpy_j_per_g"), answer, base));
      return { water_c: f64[answer >> 3] };
    } catch (thrown) {
      throw misspelt(thrown, o, WATER_TEMPERATURE_OF_ENTHALPY_OPTIONS);
    }
  },
  vapourPressure(o) {
    record(o, 1, WATER_VAPOUR_PRESSURE_OPTIONS, "options");
    try {
      answered(cupwrightWaterVapourPressure(number(o.water_c, "water_c"), answer, base));
      return { vapour_pressure_kpa: f64[answer >> 3] };
    } catch (thrown) {
      throw misspelt(thrown, o, WATER_VAPOUR_PRESSURE_OPTIONS);
    }
  },
  boilingPoint(o) {
    record(o, 1, WATER_BOILING_POINT_OPTIONS, "options");
    try {
      answered(cupwrightWaterBoilingPoint(number(o.pressure_kpa, "pressure_kpa"), answer, base));
      return { water_c: f64[answer >> 3] };
    } catch (thrown) {
      throw misspelt(thrown, o, WATER_BOILING_POINT_OPTIONS);
    }
  },
  latentHeat(o) {
    record(o, 1, WATER_LATENT_HEAT_OPTIONS, "options");
    try {
      answered(cupwrightWaterLatentHeat(number(o.water_c, "water_c"), answer, base));
      return { latent_heat_j_per_g: f64[answer >> 3] };
    } catch (thrown) {
      throw misspelt(thrown, o, WATER_LATENT_HEAT_OPTIONS);
    }
  },
  pressureAtAltitude(o) {
    record(o, 1, WATER_PRESSURE_AT_ALTITUDE_OPTIONS, "options");
    try {
      answered(cupwrightWaterPressureAtAltitude(number(o.altitude_m, "altitude_m"), answer, base));
      return { pressure_kpa: f64[answer >> 3] };
    } catch (thrown) {
      throw misspelt(thrown, o, WATER_PRESSURE_AT_ALTITUDE_OPTIONS);
    }
  },
  altitudeAtPressure(o) {
    record(o, 1, WATER_ALTITUDE_AT_PRESSURE_OPTIONS, "options");
    try {
      answered(cupwrightWaterAltitudeAtPressure(number(o.pressure_kpa, "pressure_kpa"), answer, base));
      return { altitude_m: f64[answer >> 3] };
    } catch (thrown) {
      throw misspelt(thrown, o, WATER_ALTITUDE_AT_PRESSURE_OPTIONS);
    }
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
    record(o, 2, RATIO_WATER_RATIO_OPTIONS, "options");
    try {
      answered(cupwrightRatioWaterRatio(number(o.dose_g, "dose_g"), number(o.water_g, "water_g"), answer, base));
      return { water_ratio_g_per_g: f64[answer >> 3] };
    } catch (thrown) {
      throw misspelt(thrown, o, RATIO_WATER_RATIO_OPTIONS);
    }
  },
  waterForRatio(o) {
    record(o, 2, RATIO_WATER_FOR_RATIO_OPTIONS, "options");
    try {
      answered(cupwrightRatioWaterForRatio(number(o.dose_g, "dose_g"), number(o.water_ratio_g_per_g, "water_ratio_g_per_g"), answer, base));
      return { water_g: f64[answer >> 3] };
    } catch (thrown) {
      throw misspelt(thrown, o, RATIO_WATER_FOR_RATIO_OPTIONS);
    }
  },
  doseForWater(o) {
    record(o, 2, RATIO_DOSE_FOR_WATER_OPTIONS, "options");
    try {
      answered(cupwrightRatioDoseForWater(number(o.water_g, "water_g"), number(o.water_ratio_g_per_g, "water_ratio_g_per_g"), answer, base));
      return { dose_g: f64[answer >> 3] };
    } catch (thrown) {
      throw misspelt(thrown, o, RATIO_DOSE_FOR_WATER_OPTIONS);
    }
  },
  beverageRatio(o) {
    record(o, 2, RATIO_BEVERAGE_RATIO_OPTIONS, "options");
    try {
      answered(cupwrightRatioBeverageRatio(number(o.dose_g, "dose_g"), number(o.beverage_g, "beverage_g"), answer, base));
      return { beverage_ratio_g_per_g: f64[answer >> 3] };
    } catch (thrown) {
      throw misspelt(thrown, o, RATIO_BEVERAGE_RATIO_OPTIONS);
    }
  },
  beverageForRatio(o) {
    record(o, 2, RATIO_BEVERAGE_FOR_RATIO_OPTIONS, "options");
    try {
      answered(cupwrightRatioBeverageForRatio(number(o.dose_g, "dose_g"), number(o.beverage_ratio_g_per_g, "beverage_ratio_g_per_g"), answer, base));
      return { beverage_g: f64[answer >> 3] };
    } catch (thrown) {
      throw misspelt(thrown, o, RATIO_BEVERAGE_FOR_RATIO_OPTIONS);
    }
  },
  doseForBeverage(o) {
    record(o, 2, RATIO_DOSE_FOR_BEVERAGE_OPTIONS, "options");
    try {
      answered(cupwrightRatioDoseForBeverage(number(o.beverage_g, "beverage_g"), number(o.beverage_ratio_g_per_g, "beverage_ratio_g_per_g"), answer, base));
      return { dose_g: f64[answer >> 3] };
    } catch (thrown) {
      throw misspelt(thrown, o, RATIO_DOSE_FOR_BEVERAGE_OPTIONS);
    }
  },
  dosePerLitre(o) {
    record(o, 2, RATIO_DOSE_PER_LITRE_OPTIONS, "options");
    try {
      answered(cupwrightRatioDosePerLitre(number(o.water_ratio_g_per_g, "water_ratio_g_per_g"), number(o.water_c, "water_c"), answer, base));
      return { dose_g_per_l: f64[answer >> 3] };
    } catch (thrown) {
      throw misspelt(thrown, o, RATIO_DOSE_PER_LITRE_OPTIONS);
    }
  },
  ratioOfDosePerLitre(o) {
    record(o, 2, RATIO_RATIO_OF_DOSE_PER_LITRE_OPTIONS, "options");
    try {
      answered(cupwrightRatioOfDosePerLitre(number(o.dose_g_per_l, "dose_g_per_l"), number(o.water_c, "water_c"), answer, base));
      return { water_ratio_g_per_g: f64[answer >> 3] };
    } catch (thrown) {
      throw misspelt(thrown, o, RATIO_RATIO_OF_DOSE_PER_LITRE_OPTIONS);
    }
  },
  waterMass(o) {
    record(o, 2, RATIO_WATER_MASS_OPTIONS, "options");
    try {
      answered(cupwrightRatioWaterMass(number(o.volume_ml, "volume_ml"), number(o.water_c, "water_c"), answer, base));
      return { water_g: f64[answer >> 3] };
    } catch (thrown) {
      throw misspelt(thrown, o, RATIO_WATER_MASS_OPTIONS);
    }
  },
  waterVolume(o) {
    record(o, 2, RATIO_WATER_VOLUME_OPTIONS, "options");
    try {
      answered(cupwrightRatioWaterVolume(number(o.water_g, "water_g"), number(o.water_c, "water_c"), answer, base));
      return { volume_ml: f64[answer >> 3] };
    } catch (thrown) {
      throw misspelt(thrown, o, RATIO_WATER_VOLUME_OPTIONS);
    }
  },
  forServings(o) {
    record(o, 3, RATIO_FOR_SERVINGS_OPTIONS, "options");
    try {
      answered(cupwrightRatioForServings(number(o.dose_g, "dose_g"), number(o.water_g, "water_g"), integer(o.servings, "servings", "servings"), answer, base));
      return getAmounts(answer);
    } catch (thrown) {
      throw misspelt(thrown, o, RATIO_FOR_SERVINGS_OPTIONS);
    }
  },
  wholeCups(o) {
    record(o, 2, RATIO_WHOLE_CUPS_OPTIONS, "options");
    try {
      answered(cupwrightRatioWholeCups(number(o.beverage_g, "beverage_g"), number(o.cup_g, "cup_g"), answer, base));
      return { servings: i32[answer >> 2] };
    } catch (thrown) {
      throw misspelt(thrown, o, RATIO_WHOLE_CUPS_OPTIONS);
    }
  },
  batches(o) {
    record(o, 4, RATIO_BATCHES_OPTIONS, "options");
    try {
      const chamber = takeChamber(o.chamber, "chamber");
      answered(cupwrightRatioBatches(number(o.dose_g, "dose_g"), number(o.water_g, "water_g"), number(o.water_c, "water_c"), put(chamber, 1152, 2), answer, base));
      return getBatchSplit(answer);
    } catch (thrown) {
      throw misspelt(thrown, o, RATIO_BATCHES_OPTIONS);
    }
  },
  largestDose(o) {
    record(o, 3, RATIO_LARGEST_DOSE_OPTIONS, "options");
    try {
      const chamber = takeChamber(o.chamber, "chamber");
      answered(cupwrightRatioLargestDose(number(o.water_ratio_g_per_g, "water_ratio_g_per_g"), number(o.water_c, "water_c"), put(chamber, 1152, 2), answer, base));
      return { dose_g: f64[answer >> 3] };
    } catch (thrown) {
      throw misspelt(thrown, o, RATIO_LARGEST_DOSE_OPTIONS);
    }
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
    record(o, 2, EXTRACTION_EXTRACTION_YIELD_OPTIONS, "options");
    try {
      const brew = takeBrew(o.brew, "brew");
      const strength_pct = number(o.strength_pct, "strength_pct");
      answered(cupwrightExtractionYield(put(brew, 1152, 7), strength_pct, answer, base));
      return { yield_pct: f64[answer >> 3] };
    } catch (thrown) {
      throw misspelt(thrown, o, EXTRACTION_EXTRACTION_YIELD_OPTIONS);
    }
  },
  strength(o) {
    record(o, 2, EXTRACTION_STRENGTH_OPTIONS, "options");
    try {
      const brew = takeBrew(o.brew, "brew");
      const yield_pct = number(o.yield_pct, "yield_pct");
      answered(cupwrightExtractionStrength(put(brew, 1152, 7), yield_pct, answer, base));
      return { strength_pct: f64[answer >> 3] };
    } catch (thrown) {
      throw misspelt(thrown, o, EXTRACTION_STRENGTH_OPTIONS);
    }
  },
  beverage(o) {
    record(o, 3, EXTRACTION_BEVERAGE_OPTIONS, "options");
    try {
      const brew = takeBrew(o.brew, "brew");
      const strength_pct = number(o.strength_pct, "strength_pct");
      const yield_pct = number(o.yield_pct, "yield_pct");
      answered(cupwrightExtractionBeverage(put(brew, 1152, 7), strength_pct, yield_pct, answer, base));
      return { beverage_g: f64[answer >> 3] };
    } catch (thrown) {
      throw misspelt(thrown, o, EXTRACTION_BEVERAGE_OPTIONS);
    }
  },
  retainedLiquid(o) {
    record(o, 2, EXTRACTION_RETAINED_LIQUID_OPTIONS, "options");
    try {
      const brew = takeBrew(o.brew, "brew");
      const yield_pct = number(o.yield_pct, "yield_pct");
      answered(cupwrightExtractionRetainedLiquid(put(brew, 1152, 7), yield_pct, answer, base));
      return { retained_g: f64[answer >> 3] };
    } catch (thrown) {
      throw misspelt(thrown, o, EXTRACTION_RETAINED_LIQUID_OPTIONS);
    }
  },
  flowThroughYield(o) {
    record(o, 3, EXTRACTION_FLOW_THROUGH_YIELD_OPTIONS, "options");
    try {
      answered(cupwrightExtractionFlowThroughYield(number(o.strength_pct, "strength_pct"), number(o.beverage_g, "beverage_g"), number(o.dose_g, "dose_g"), answer, base));
      return { yield_pct: f64[answer >> 3] };
    } catch (thrown) {
      throw misspelt(thrown, o, EXTRACTION_FLOW_THROUGH_YIELD_OPTIONS);
    }
  },
  flowThroughStrength(o) {
    record(o, 3, EXTRACTION_FLOW_THROUGH_STRENGTH_OPTIONS, "options");
    try {
      answered(cupwrightExtractionFlowThroughStrength(number(o.yield_pct, "yield_pct"), number(o.beverage_g, "beverage_g"), number(o.dose_g, "dose_g"), answer, base));
      return { strength_pct: f64[answer >> 3] };
    } catch (thrown) {
      throw misspelt(thrown, o, EXTRACTION_FLOW_THROUGH_STRENGTH_OPTIONS);
    }
  },
  steepedYield(o) {
    record(o, 3, EXTRACTION_STEEPED_YIELD_OPTIONS, "options");
    try {
      answered(cupwrightExtractionSteepedYield(number(o.strength_pct, "strength_pct"), number(o.water_g, "water_g"), number(o.dose_g, "dose_g"), answer, base));
      return { yield_pct: f64[answer >> 3] };
    } catch (thrown) {
      throw misspelt(thrown, o, EXTRACTION_STEEPED_YIELD_OPTIONS);
    }
  },
  steepedStrength(o) {
    record(o, 2, EXTRACTION_STEEPED_STRENGTH_OPTIONS, "options");
    try {
      answered(cupwrightExtractionSteepedStrength(number(o.yield_pct, "yield_pct"), number(o.water_ratio_g_per_g, "water_ratio_g_per_g"), answer, base));
      return { strength_pct: f64[answer >> 3] };
    } catch (thrown) {
      throw misspelt(thrown, o, EXTRACTION_STEEPED_STRENGTH_OPTIONS);
    }
  },
  steepedRatio(o) {
    record(o, 2, EXTRACTION_STEEPED_RATIO_OPTIONS, "options");
    try {
      answered(cupwrightExtractionSteepedRatio(number(o.yield_pct, "yield_pct"), number(o.strength_pct, "strength_pct"), answer, base));
      return { water_ratio_g_per_g: f64[answer >> 3] };
    } catch (thrown) {
      throw misspelt(thrown, o, EXTRACTION_STEEPED_RATIO_OPTIONS);
    }
  },
  ovenDriedYield(o) {
    record(o, 3, EXTRACTION_OVEN_DRIED_YIELD_OPTIONS, "options");
    try {
      answered(cupwrightExtractionOvenDriedYield(number(o.yield_pct, "yield_pct"), number(o.water_ratio_g_per_g, "water_ratio_g_per_g"), number(o.true_retention_g_per_g, "true_retention_g_per_g"), answer, base));
      return { oven_yield_pct: f64[answer >> 3] };
    } catch (thrown) {
      throw misspelt(thrown, o, EXTRACTION_OVEN_DRIED_YIELD_OPTIONS);
    }
  },
  dryBasisYield(o) {
    record(o, 2, EXTRACTION_DRY_BASIS_YIELD_OPTIONS, "options");
    try {
      answered(cupwrightExtractionDryBasisYield(number(o.yield_pct, "yield_pct"), number(o.moisture_pct, "moisture_pct"), answer, base));
      return { dry_yield_pct: f64[answer >> 3] };
    } catch (thrown) {
      throw misspelt(thrown, o, EXTRACTION_DRY_BASIS_YIELD_OPTIONS);
    }
  },
  asWeighedYield(o) {
    record(o, 2, EXTRACTION_AS_WEIGHED_YIELD_OPTIONS, "options");
    try {
      answered(cupwrightExtractionAsWeighedYield(number(o.yield_pct, "yield_pct"), number(o.moisture_pct, "moisture_pct"), answer, base));
      return { as_weighed_yield_pct: f64[answer >> 3] };
    } catch (thrown) {
      throw misspelt(thrown, o, EXTRACTION_AS_WEIGHED_YIELD_OPTIONS);
    }
  },
  yieldAtTime(o) {
    record(o, 2, EXTRACTION_YIELD_AT_TIME_OPTIONS, "options");
    try {
      const kinetics = takeKinetics(o.kinetics, "kinetics");
      const time_s = number(o.time_s, "time_s");
      answered(cupwrightExtractionYieldAtTime(put(kinetics, 1152, 4), time_s, answer, base));
      return { yield_pct: f64[answer >> 3] };
    } catch (thrown) {
      throw misspelt(thrown, o, EXTRACTION_YIELD_AT_TIME_OPTIONS);
    }
  },
  timeForYield(o) {
    record(o, 2, EXTRACTION_TIME_FOR_YIELD_OPTIONS, "options");
    try {
      const kinetics = takeKinetics(o.kinetics, "kinetics");
      const yield_pct = number(o.yield_pct, "yield_pct");
      answered(cupwrightExtractionTimeForYield(put(kinetics, 1152, 4), yield_pct, answer, base));
      return { time_s: f64[answer >> 3] };
    } catch (thrown) {
      throw misspelt(thrown, o, EXTRACTION_TIME_FOR_YIELD_OPTIONS);
    }
  },
  plausibility(o) {
    record(o, 2, EXTRACTION_PLAUSIBILITY_OPTIONS, "options");
    try {
      const brew = takeBrew(o.brew, "brew");
      const strength_pct = number(o.strength_pct, "strength_pct");
      answered(cupwrightExtractionPlausibility(put(brew, 1152, 7), strength_pct, answer, base));
      return getPlausibility(answer);
    } catch (thrown) {
      throw misspelt(thrown, o, EXTRACTION_PLAUSIBILITY_OPTIONS);
    }
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
    record(o, 3, RETENTION_BEVERAGE_OPTIONS, "options");
    try {
      const losses = takeLosses(o.losses, "losses");
      const dose_g = number(o.dose_g, "dose_g");
      const water_g = number(o.water_g, "water_g");
      answered(cupwrightRetentionBeverage(put(losses, 1152, 6), dose_g, water_g, answer, base));
      return { beverage_g: f64[answer >> 3] };
    } catch (thrown) {
      throw misspelt(thrown, o, RETENTION_BEVERAGE_OPTIONS);
    }
  },
  waterForBeverage(o) {
    record(o, 3, RETENTION_WATER_FOR_BEVERAGE_OPTIONS, "options");
    try {
      const losses = takeLosses(o.losses, "losses");
      const dose_g = number(o.dose_g, "dose_g");
      const beverage_g = number(o.beverage_g, "beverage_g");
      answered(cupwrightRetentionWaterForBeverage(put(losses, 1152, 6), dose_g, beverage_g, answer, base));
      return { water_g: f64[answer >> 3] };
    } catch (thrown) {
      throw misspelt(thrown, o, RETENTION_WATER_FOR_BEVERAGE_OPTIONS);
    }
  },
  doseForBeverage(o) {
    record(o, 3, RETENTION_DOSE_FOR_BEVERAGE_OPTIONS, "options");
    try {
      const losses = takeLosses(o.losses, "losses");
      const water_g = number(o.water_g, "water_g");
      const beverage_g = number(o.beverage_g, "beverage_g");
      answered(cupwrightRetentionDoseForBeverage(put(losses, 1152, 6), water_g, beverage_g, answer, base));
      return { dose_g: f64[answer >> 3] };
    } catch (thrown) {
      throw misspelt(thrown, o, RETENTION_DOSE_FOR_BEVERAGE_OPTIONS);
    }
  },
  retentionOfBrew(o) {
    record(o, 4, RETENTION_RETENTION_OF_BREW_OPTIONS, "options");
    try {
      const losses = takeLosses(o.losses, "losses");
      const dose_g = number(o.dose_g, "dose_g");
      const water_g = number(o.water_g, "water_g");
      const beverage_g = number(o.beverage_g, "beverage_g");
      answered(cupwrightRetentionOfBrew(put(losses, 1152, 6), dose_g, water_g, beverage_g, answer, base));
      return { apparent_retention_g_per_g: f64[answer >> 3] };
    } catch (thrown) {
      throw misspelt(thrown, o, RETENTION_RETENTION_OF_BREW_OPTIONS);
    }
  },
  apparentRetention(o) {
    record(o, 3, RETENTION_APPARENT_RETENTION_OPTIONS, "options");
    try {
      answered(cupwrightRetentionApparentRetention(number(o.dose_g, "dose_g"), number(o.water_g, "water_g"), number(o.beverage_g, "beverage_g"), answer, base));
      return { apparent_retention_g_per_g: f64[answer >> 3] };
    } catch (thrown) {
      throw misspelt(thrown, o, RETENTION_APPARENT_RETENTION_OPTIONS);
    }
  },
  trueRetention(o) {
    record(o, 5, RETENTION_TRUE_RETENTION_OPTIONS, "options");
    try {
      answered(cupwrightRetentionTrueRetention(number(o.apparent_retention_g_per_g, "apparent_retention_g_per_g"), number(o.yield_pct, "yield_pct"), number(o.moisture_pct, "moisture_pct"), number(o.vapour_g, "vapour_g"), number(o.dose_g, "dose_g"), answer, base));
      return { true_retention_g_per_g: f64[answer >> 3] };
    } catch (thrown) {
      throw misspelt(thrown, o, RETENTION_TRUE_RETENTION_OPTIONS);
    }
  },
  apparentOfTrueRetention(o) {
    record(o, 5, RETENTION_APPARENT_OF_TRUE_RETENTION_OPTIONS, "options");
    try {
      answered(cupwrightRetentionApparentOfTrueRetention(number(o.true_retention_g_per_g, "true_retention_g_per_g"), number(o.yield_pct, "yield_pct"), number(o.moisture_pct, "moisture_pct"), number(o.vapour_g, "vapour_g"), number(o.dose_g, "dose_g"), answer, base));
      return { apparent_retention_g_per_g: f64[answer >> 3] };
    } catch (thrown) {
      throw misspelt(thrown, o, RETENTION_APPARENT_OF_TRUE_RETENTION_OPTIONS);
    }
  },
  retentionOfSpentMoisture(o) {
    record(o, 2, RETENTION_RETENTION_OF_SPENT_MOISTURE_OPTIONS, "options");
    try {
      answered(cupwrightRetentionOfSpentMoisture(number(o.spent_moisture_pct, "spent_moisture_pct"), number(o.yield_pct, "yield_pct"), answer, base));
      return { true_retention_g_per_g: f64[answer >> 3] };
    } catch (thrown) {
      throw misspelt(thrown, o, RETENTION_RETENTION_OF_SPENT_MOISTURE_OPTIONS);
    }
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
    record(o, 4, DILUTION_STRENGTH_AFTER_WATER_OPTIONS, "options");
    try {
      answered(cupwrightDilutionStrengthAfterWater(number(o.beverage_g, "beverage_g"), number(o.strength_pct, "strength_pct"), number(o.added_g, "added_g"), number(o.water_solids_mg_per_l, "water_solids_mg_per_l"), answer, base));
      return { after_pct: f64[answer >> 3] };
    } catch (thrown) {
      throw misspelt(thrown, o, DILUTION_STRENGTH_AFTER_WATER_OPTIONS);
    }
  },
  waterToReach(o) {
    record(o, 4, DILUTION_WATER_TO_REACH_OPTIONS, "options");
    try {
      answered(cupwrightDilutionWaterToReach(number(o.beverage_g, "beverage_g"), number(o.strength_pct, "strength_pct"), number(o.wanted_pct, "wanted_pct"), number(o.water_solids_mg_per_l, "water_solids_mg_per_l"), answer, base));
      return { added_g: f64[answer >> 3] };
    } catch (thrown) {
      throw misspelt(thrown, o, DILUTION_WATER_TO_REACH_OPTIONS);
    }
  },
  drinkOfBrew(o) {
    record(o, 4, DILUTION_DRINK_OF_BREW_OPTIONS, "options");
    try {
      answered(cupwrightDilutionDrinkOfBrew(number(o.beverage_g, "beverage_g"), number(o.strength_pct, "strength_pct"), number(o.wanted_pct, "wanted_pct"), number(o.water_solids_mg_per_l, "water_solids_mg_per_l"), answer, base));
      return { cup_g: f64[answer >> 3] };
    } catch (thrown) {
      throw misspelt(thrown, o, DILUTION_DRINK_OF_BREW_OPTIONS);
    }
  },
  brewForDrink(o) {
    record(o, 4, DILUTION_BREW_FOR_DRINK_OPTIONS, "options");
    try {
      answered(cupwrightDilutionBrewForDrink(number(o.cup_g, "cup_g"), number(o.strength_pct, "strength_pct"), number(o.wanted_pct, "wanted_pct"), number(o.water_solids_mg_per_l, "water_solids_mg_per_l"), answer, base));
      return { beverage_g: f64[answer >> 3] };
    } catch (thrown) {
      throw misspelt(thrown, o, DILUTION_BREW_FOR_DRINK_OPTIONS);
    }
  },
  split(o) {
    record(o, 6, DILUTION_SPLIT_OPTIONS, "options");
    try {
      answered(cupwrightDilutionSplit(number(o.beverage_g, "beverage_g"), number(o.strength_pct, "strength_pct"), integer(o.servings, "servings", "servings"), number(o.cup_g, "cup_g"), number(o.wanted_pct, "wanted_pct"), number(o.water_solids_mg_per_l, "water_solids_mg_per_l"), answer, base));
      return getCupSplit(answer);
    } catch (thrown) {
      throw misspelt(thrown, o, DILUTION_SPLIT_OPTIONS);
    }
  },
  withMilk(o) {
    record(o, 4, DILUTION_WITH_MILK_OPTIONS, "options");
    try {
      answered(cupwrightDilutionWithMilk(number(o.beverage_g, "beverage_g"), number(o.strength_pct, "strength_pct"), number(o.added_g, "added_g"), number(o.milk_solids_pct, "milk_solids_pct"), answer, base));
      return getMilkDrink(answer);
    } catch (thrown) {
      throw misspelt(thrown, o, DILUTION_WITH_MILK_OPTIONS);
    }
  },
  mixedTemperature(o) {
    record(o, 4, DILUTION_MIXED_TEMPERATURE_OPTIONS, "options");
    try {
      answered(cupwrightDilutionMixedTemperature(number(o.hot_g, "hot_g"), number(o.hot_c, "hot_c"), number(o.cold_g, "cold_g"), number(o.cold_c, "cold_c"), answer, base));
      return { water_c: f64[answer >> 3] };
    } catch (thrown) {
      throw misspelt(thrown, o, DILUTION_MIXED_TEMPERATURE_OPTIONS);
    }
  },
  mixedWithMilkTemperature(o) {
    record(o, 4, DILUTION_MIXED_WITH_MILK_TEMPERATURE_OPTIONS, "options");
    try {
      answered(cupwrightDilutionMixedWithMilkTemperature(number(o.hot_g, "hot_g"), number(o.hot_c, "hot_c"), number(o.cold_g, "cold_g"), number(o.cold_c, "cold_c"), answer, base));
      return { water_c: f64[answer >> 3] };
    } catch (thrown) {
      throw misspelt(thrown, o, DILUTION_MIXED_WITH_MILK_TEMPERATURE_OPTIONS);
    }
  },
  iced(o) {
    record(o, 5, DILUTION_ICED_OPTIONS, "options");
    try {
      answered(cupwrightDilutionIced(number(o.beverage_g, "beverage_g"), number(o.water_c, "water_c"), number(o.strength_pct, "strength_pct"), number(o.ice_g, "ice_g"), number(o.ice_c, "ice_c"), answer, base));
      return getIced(answer);
    } catch (thrown) {
      throw misspelt(thrown, o, DILUTION_ICED_OPTIONS);
    }
  },
  iceToReach(o) {
    record(o, 4, DILUTION_ICE_TO_REACH_OPTIONS, "options");
    try {
      answered(cupwrightDilutionIceToReach(number(o.beverage_g, "beverage_g"), number(o.water_c, "water_c"), number(o.wanted_c, "wanted_c"), number(o.ice_c, "ice_c"), answer, base));
      return { ice_g: f64[answer >> 3] };
    } catch (thrown) {
      throw misspelt(thrown, o, DILUTION_ICE_TO_REACH_OPTIONS);
    }
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
    record(o, 2, HEAT_GROUNDS_OPTIONS, "options");
    try {
      answered(cupwrightHeatGrounds(number(o.dose_g, "dose_g"), number(o.grounds_c, "grounds_c"), answer, base));
      return getBody(answer);
    } catch (thrown) {
      throw misspelt(thrown, o, HEAT_GROUNDS_OPTIONS);
    }
  },
  heatCapacity(o) {
    record(o, 3, HEAT_HEAT_CAPACITY_OPTIONS, "options");
    try {
      answered(cupwrightHeatCapacity(number(o.vessel_g, "vessel_g"), number(o.specific_heat_j_per_g_k, "specific_heat_j_per_g_k"), number(o.share_pct, "share_pct"), answer, base));
      return { heat_capacity_j_per_k: f64[answer >> 3] };
    } catch (thrown) {
      throw misspelt(thrown, o, HEAT_HEAT_CAPACITY_OPTIONS);
    }
  },
  settle(o) {
    record(o, 3, HEAT_SETTLE_OPTIONS, "options");
    try {
      const bodies = items(o.bodies, "bodies", takeBody);
      answered(cupwrightHeatSettle(number(o.water_g, "water_g"), number(o.water_c, "water_c"), put(bodies.values, 1152), bodies.count, answer, base), "bodies", bodies, BODY_FIELDS);
      return { settled_c: f64[answer >> 3] };
    } catch (thrown) {
      throw misspelt(thrown, o, HEAT_SETTLE_OPTIONS);
    }
  },
  beforeSettling(o) {
    record(o, 3, HEAT_BEFORE_SETTLING_OPTIONS, "options");
    try {
      const bodies = items(o.bodies, "bodies", takeBody);
      answered(cupwrightHeatBeforeSettling(number(o.water_g, "water_g"), number(o.settled_c, "settled_c"), put(bodies.values, 1152), bodies.count, answer, base), "bodies", bodies, BODY_FIELDS);
      return { water_c: f64[answer >> 3] };
    } catch (thrown) {
      throw misspelt(thrown, o, HEAT_BEFORE_SETTLING_OPTIONS);
    }
  },
  preheated(o) {
    record(o, 3, HEAT_PREHEATED_OPTIONS, "options");
    try {
      const vessel = takeBody(o.vessel, "vessel");
      const water_g = number(o.water_g, "water_g");
      const water_c = number(o.water_c, "water_c");
      answered(cupwrightHeatPreheated(put(vessel, 1152, 2), water_g, water_c, answer, base));
      return getBody(answer);
    } catch (thrown) {
      throw misspelt(thrown, o, HEAT_PREHEATED_OPTIONS);
    }
  },
  vesselHeatCapacity(o) {
    record(o, 5, HEAT_VESSEL_HEAT_CAPACITY_OPTIONS, "options");
    try {
      const others = items(o.others, "others", takeBody);
      answered(cupwrightHeatVesselHeatCapacity(number(o.water_g, "water_g"), number(o.water_c, "water_c"), number(o.settled_c, "settled_c"), number(o.vessel_c, "vessel_c"), put(others.values, 1152), others.count, answer, base), "others", others, BODY_FIELDS);
      return { heat_capacity_j_per_k: f64[answer >> 3] };
    } catch (thrown) {
      throw misspelt(thrown, o, HEAT_VESSEL_HEAT_CAPACITY_OPTIONS);
    }
  },
  afterVapour(o) {
    record(o, 4, HEAT_AFTER_VAPOUR_OPTIONS, "options");
    try {
      answered(cupwrightHeatAfterVapour(number(o.water_g, "water_g"), number(o.water_c, "water_c"), number(o.vapour_g, "vapour_g"), number(o.capacity_j_per_k, "capacity_j_per_k"), answer, base));
      return { after_c: f64[answer >> 3] };
    } catch (thrown) {
      throw misspelt(thrown, o, HEAT_AFTER_VAPOUR_OPTIONS);
    }
  },
  afterPour(o) {
    record(o, 2, HEAT_AFTER_POUR_OPTIONS, "options");
    try {
      answered(cupwrightHeatAfterPour(number(o.water_c, "water_c"), number(o.drop_k, "drop_k"), answer, base));
      return { after_c: f64[answer >> 3] };
    } catch (thrown) {
      throw misspelt(thrown, o, HEAT_AFTER_POUR_OPTIONS);
    }
  },
  beforePour(o) {
    record(o, 2, HEAT_BEFORE_POUR_OPTIONS, "options");
    try {
      answered(cupwrightHeatBeforePour(number(o.water_c, "water_c"), number(o.drop_k, "drop_k"), answer, base));
      return { before_c: f64[answer >> 3] };
    } catch (thrown) {
      throw misspelt(thrown, o, HEAT_BEFORE_POUR_OPTIONS);
    }
  },
  reachable(o) {
    record(o, 2, HEAT_REACHABLE_OPTIONS, "options");
    try {
      answered(cupwrightHeatReachable(number(o.water_c, "water_c"), number(o.boiling_c, "boiling_c"), answer, base));
      return { reachable_c: f64[answer >> 3] };
    } catch (thrown) {
      throw misspelt(thrown, o, HEAT_REACHABLE_OPTIONS);
    }
  },
  timeToCool(o) {
    record(o, 4, HEAT_TIME_TO_COOL_OPTIONS, "options");
    try {
      const surroundings = takeSurroundings(o.surroundings, "surroundings");
      answered(cupwrightHeatTimeToCool(number(o.water_c, "water_c"), number(o.to_c, "to_c"), number(o.cooling_per_min, "cooling_per_min"), put(surroundings, 1152, 2), answer, base));
      return { time_s: f64[answer >> 3] };
    } catch (thrown) {
      throw misspelt(thrown, o, HEAT_TIME_TO_COOL_OPTIONS);
    }
  },
  coolingRate(o) {
    record(o, 4, HEAT_COOLING_RATE_OPTIONS, "options");
    try {
      const surroundings = takeSurroundings(o.surroundings, "surroundings");
      answered(cupwrightHeatCoolingRate(number(o.water_c, "water_c"), number(o.to_c, "to_c"), number(o.time_s, "time_s"), put(surroundings, 1152, 2), answer, base));
      return { cooling_per_min: f64[answer >> 3] };
    } catch (thrown) {
      throw misspelt(thrown, o, HEAT_COOLING_RATE_OPTIONS);
    }
  },
  temperatureAfter(o) {
    record(o, 4, HEAT_TEMPERATURE_AFTER_OPTIONS, "options");
    try {
      const surroundings = takeSurroundings(o.surroundings, "surroundings");
      answered(cupwrightHeatTemperatureAfter(number(o.water_c, "water_c"), number(o.time_s, "time_s"), number(o.cooling_per_min, "cooling_per_min"), put(surroundings, 1152, 2), answer, base));
      return { after_c: f64[answer >> 3] };
    } catch (thrown) {
      throw misspelt(thrown, o, HEAT_TEMPERATURE_AFTER_OPTIONS);
    }
  },
  openCupRateEstimate(o) {
    record(o, 3, HEAT_OPEN_CUP_RATE_ESTIMATE_OPTIONS, "options");
    try {
      answered(cupwrightHeatOpenCupRateEstimate(number(o.water_g, "water_g"), number(o.heat_capacity_j_per_k, "heat_capacity_j_per_k"), number(o.diameter_mm, "diameter_mm"), answer, base));
      return { cooling_per_min: f64[answer >> 3] };
    } catch (thrown) {
      throw misspelt(thrown, o, HEAT_OPEN_CUP_RATE_ESTIMATE_OPTIONS);
    }
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
    record(o, 2, READING_COMBINE_OPTIONS, "options");
    try {
      const strength_pct = numbers(o.strength_pct, "strength_pct");
      const repeatability_pct = number(o.repeatability_pct, "repeatability_pct");
      answered(cupwrightReadingCombine(put(strength_pct.values, 1152), strength_pct.count, repeatability_pct, answer, base), "strength_pct", strength_pct, ["strength_pct"]);
      return getCombined(answer);
    } catch (thrown) {
      throw misspelt(thrown, o, READING_COMBINE_OPTIONS);
    }
  },
  repeatability(o) {
    record(o, 1, READING_REPEATABILITY_OPTIONS, "options");
    try {
      const strength_pct = numbers(o.strength_pct, "strength_pct");
      answered(cupwrightReadingRepeatability(put(strength_pct.values, 1152), strength_pct.count, answer, base), "strength_pct", strength_pct, ["strength_pct"]);
      return { repeatability_pct: f64[answer >> 3] };
    } catch (thrown) {
      throw misspelt(thrown, o, READING_REPEATABILITY_OPTIONS);
    }
  },
  criticalRange(o) {
    record(o, 2, READING_CRITICAL_RANGE_OPTIONS, "options");
    try {
      answered(cupwrightReadingCriticalRange(integer(o.readings, "readings", "reading_count"), number(o.repeatability_pct, "repeatability_pct"), answer, base));
      return { critical_range_pct: f64[answer >> 3] };
    } catch (thrown) {
      throw misspelt(thrown, o, READING_CRITICAL_RANGE_OPTIONS);
    }
  },
  totalStrength(o) {
    record(o, 3, READING_TOTAL_STRENGTH_OPTIONS, "options");
    try {
      answered(cupwrightReadingTotalStrength(number(o.strength_pct, "strength_pct"), choice(o.zero, "zero", ZERO), number(o.water_solids_mg_per_l, "water_solids_mg_per_l"), answer, base));
      return { total_pct: f64[answer >> 3] };
    } catch (thrown) {
      throw misspelt(thrown, o, READING_TOTAL_STRENGTH_OPTIONS);
    }
  },
  coffeeStrength(o) {
    record(o, 3, READING_COFFEE_STRENGTH_OPTIONS, "options");
    try {
      answered(cupwrightReadingCoffeeStrength(number(o.strength_pct, "strength_pct"), choice(o.zero, "zero", ZERO), number(o.water_solids_mg_per_l, "water_solids_mg_per_l"), answer, base));
      return { coffee_pct: f64[answer >> 3] };
    } catch (thrown) {
      throw misspelt(thrown, o, READING_COFFEE_STRENGTH_OPTIONS);
    }
  },
  brixOfIndex(o) {
    record(o, 1, READING_BRIX_OF_INDEX_OPTIONS, "options");
    try {
      answered(cupwrightReadingBrixOfIndex(number(o.refractive_index, "refractive_index"), answer, base));
      return { brix: f64[answer >> 3] };
    } catch (thrown) {
      throw misspelt(thrown, o, READING_BRIX_OF_INDEX_OPTIONS);
    }
  },
  indexOfBrix(o) {
    record(o, 1, READING_INDEX_OF_BRIX_OPTIONS, "options");
    try {
      answered(cupwrightReadingIndexOfBrix(number(o.brix, "brix"), answer, base));
      return { refractive_index: f64[answer >> 3] };
    } catch (thrown) {
      throw misspelt(thrown, o, READING_INDEX_OF_BRIX_OPTIONS);
    }
  },
  brixAt20(o) {
    record(o, 2, READING_BRIX_AT20_OPTIONS, "options");
    try {
      answered(cupwrightReadingBrixAt20(number(o.brix, "brix"), number(o.sample_c, "sample_c"), answer, base));
      return { corrected_brix: f64[answer >> 3] };
    } catch (thrown) {
      throw misspelt(thrown, o, READING_BRIX_AT20_OPTIONS);
    }
  },
  strengthOfBrix(o) {
    record(o, 2, READING_STRENGTH_OF_BRIX_OPTIONS, "options");
    try {
      answered(cupwrightReadingStrengthOfBrix(number(o.brix, "brix"), number(o.refractive_factor_pct_per_brix, "refractive_factor_pct_per_brix"), answer, base));
      return { strength_pct: f64[answer >> 3] };
    } catch (thrown) {
      throw misspelt(thrown, o, READING_STRENGTH_OF_BRIX_OPTIONS);
    }
  },
  brixOfStrength(o) {
    record(o, 2, READING_BRIX_OF_STRENGTH_OPTIONS, "options");
    try {
      answered(cupwrightReadingBrixOfStrength(number(o.strength_pct, "strength_pct"), number(o.refractive_factor_pct_per_brix, "refractive_factor_pct_per_brix"), answer, base));
      return { brix: f64[answer >> 3] };
    } catch (thrown) {
      throw misspelt(thrown, o, READING_BRIX_OF_STRENGTH_OPTIONS);
    }
  },
  strengthOfIndex(o) {
    record(o, 3, READING_STRENGTH_OF_INDEX_OPTIONS, "options");
    try {
      answered(cupwrightReadingStrengthOfIndex(number(o.refractive_index, "refractive_index"), number(o.sample_c, "sample_c"), number(o.refractive_factor_pct_per_brix, "refractive_factor_pct_per_brix"), answer, base));
      return { strength_pct: f64[answer >> 3] };
    } catch (thrown) {
      throw misspelt(thrown, o, READING_STRENGTH_OF_INDEX_OPTIONS);
    }
  },
});

const CALIBRATE_RETENTION_LINE_OPTIONS = new Set(["brews"]);
const CALIBRATE_EXPECTED_BEVERAGE_OPTIONS = new Set(["brews", "next_dose_g", "next_water_g", "next_vapour_g"]);
const CALIBRATE_RETENTION_OPTIONS = new Set(["brews"]);
const CALIBRATE_HEAT_CAPACITY_OPTIONS = new Set(["pours"]);
const CALIBRATE_EQUILIBRIUM_YIELD_OPTIONS = new Set(["steeps"]);
const CALIBRATE_ONE_RATE_OPTIONS = new Set(["yields"]);
const CALIBRATE_TWO_RATES_OPTIONS = new Set(["yields"]);
const CALIBRATE_COOLING_OPTIONS = new Set(["readings", "surroundings"]);
const CALIBRATE_REFRACTIVE_FACTOR_OPTIONS = new Set(["samples"]);
const CALIBRATE_REPEATABILITY_OPTIONS = new Set(["readings"]);
export const calibrate = Object.freeze({
  retentionLine(o) {
    record(o, 1, CALIBRATE_RETENTION_LINE_OPTIONS, "options");
    try {
      const brews = items(o.brews, "brews", takeDrained);
      answered(cupwrightCalibrateRetentionLine(put(brews.values, 1152), brews.count, answer, base), "brews", brews, DRAINED_FIELDS);
      return getRetentionLine(answer);
    } catch (thrown) {
      throw misspelt(thrown, o, CALIBRATE_RETENTION_LINE_OPTIONS);
    }
  },
  expectedBeverage(o) {
    record(o, 4, CALIBRATE_EXPECTED_BEVERAGE_OPTIONS, "options");
    try {
      const brews = items(o.brews, "brews", takeDrained);
      const next_dose_g = number(o.next_dose_g, "next_dose_g");
      const next_water_g = number(o.next_water_g, "next_water_g");
      const next_vapour_g = number(o.next_vapour_g, "next_vapour_g");
      answered(cupwrightCalibrateExpectedBeverage(put(brews.values, 1152), brews.count, next_dose_g, next_water_g, next_vapour_g, answer, base), "brews", brews, DRAINED_FIELDS);
      return getExpected(answer);
    } catch (thrown) {
      throw misspelt(thrown, o, CALIBRATE_EXPECTED_BEVERAGE_OPTIONS);
    }
  },
  retention(o) {
    record(o, 1, CALIBRATE_RETENTION_OPTIONS, "options");
    try {
      const brews = items(o.brews, "brews", takeDrained);
      answered(cupwrightCalibrateRetention(put(brews.values, 1152), brews.count, answer, base), "brews", brews, DRAINED_FIELDS);
      return getFittedRetention(answer);
    } catch (thrown) {
      throw misspelt(thrown, o, CALIBRATE_RETENTION_OPTIONS);
    }
  },
  heatCapacity(o) {
    record(o, 1, CALIBRATE_HEAT_CAPACITY_OPTIONS, "options");
    try {
      const pours = items(o.pours, "pours", takeSettled);
      answered(cupwrightCalibrateHeatCapacity(put(pours.values, 1152), pours.count, answer, base), "pours", pours, SETTLED_FIELDS);
      return getFittedHeatCapacity(answer);
    } catch (thrown) {
      throw misspelt(thrown, o, CALIBRATE_HEAT_CAPACITY_OPTIONS);
    }
  },
  equilibriumYield(o) {
    record(o, 1, CALIBRATE_EQUILIBRIUM_YIELD_OPTIONS, "options");
    try {
      const steeps = items(o.steeps, "steeps", takeSteeped);
      answered(cupwrightCalibrateEquilibriumYield(put(steeps.values, 1152), steeps.count, answer, base), "steeps", steeps, STEEPED_FIELDS);
      return getFittedYield(answer);
    } catch (thrown) {
      throw misspelt(thrown, o, CALIBRATE_EQUILIBRIUM_YIELD_OPTIONS);
    }
  },
  oneRate(o) {
    record(o, 1, CALIBRATE_ONE_RATE_OPTIONS, "options");
    try {
      const yields = items(o.yields, "yields", takeTimed);
      answered(cupwrightCalibrateOneRate(put(yields.values, 1152), yields.count, answer, base), "yields", yields, TIMED_FIELDS);
      return getOneRate(answer);
    } catch (thrown) {
      throw misspelt(thrown, o, CALIBRATE_ONE_RATE_OPTIONS);
    }
  },
  twoRates(o) {
    record(o, 1, CALIBRATE_TWO_RATES_OPTIONS, "options");
    try {
      const yields = items(o.yields, "yields", takeTimed);
      answered(cupwrightCalibrateTwoRates(put(yields.values, 1152), yields.count, answer, base), "yields", yields, TIMED_FIELDS);
      return getTwoRates(answer);
    } catch (thrown) {
      throw misspelt(thrown, o, CALIBRATE_TWO_RATES_OPTIONS);
    }
  },
  cooling(o) {
    record(o, 2, CALIBRATE_COOLING_OPTIONS, "options");
    try {
      const readings = items(o.readings, "readings", takeThermometer);
      const surroundings = takeSurroundings(o.surroundings, "surroundings");
      answered(cupwrightCalibrateCooling(put(readings.values, 1152), readings.count, put(surroundings, 2752, 2), answer, base), "readings", readings, THERMOMETER_FIELDS);
      return getCooling(answer);
    } catch (thrown) {
      throw misspelt(thrown, o, CALIBRATE_COOLING_OPTIONS);
    }
  },
  refractiveFactor(o) {
    record(o, 1, CALIBRATE_REFRACTIVE_FACTOR_OPTIONS, "options");
    try {
      const samples = items(o.samples, "samples", takeDried);
      answered(cupwrightCalibrateRefractiveFactor(put(samples.values, 1152), samples.count, answer, base), "samples", samples, DRIED_FIELDS);
      return getFittedRefractiveFactor(answer);
    } catch (thrown) {
      throw misspelt(thrown, o, CALIBRATE_REFRACTIVE_FACTOR_OPTIONS);
    }
  },
  repeatability(o) {
    record(o, 1, CALIBRATE_REPEATABILITY_OPTIONS, "options");
    try {
      const readings = items(o.readings, "readings", takeRepeat);
      answered(cupwrightCalibrateRepeatability(putEach(readings.values, 1152, 1, 3), readings.count, answer, base), "readings", readings, REPEAT_FIELDS);
      return getFittedRepeatability(answer);
    } catch (thrown) {
      throw misspelt(thrown, o, CALIBRATE_REPEATABILITY_OPTIONS);
    }
  },
});

const VERDICT_STAND_OPTIONS = new Set(["window", "strength_pct", "yield_pct"]);
export const verdict = Object.freeze({
  stand(o) {
    record(o, 3, VERDICT_STAND_OPTIONS, "options");
    try {
      const window = takeWindow(o.window, "window");
      const strength_pct = number(o.strength_pct, "strength_pct");
      const yield_pct = number(o.yield_pct, "yield_pct");
      answered(cupwrightVerdictStand(put(window, 1152, 4), strength_pct, yield_pct, answer, base));
      return getStanding(answer);
    } catch (thrown) {
      throw misspelt(thrown, o, VERDICT_STAND_OPTIONS);
    }
  },
});

const UNCERTAINTY_COVERAGE_FACTOR_OPTIONS = new Set(["confidence_pct", "degrees_of_freedom"]);
const UNCERTAINTY_EXPANDED_OPTIONS = new Set(["estimate", "confidence_pct"]);
const UNCERTAINTY_OF_REPEATS_OPTIONS = new Set(["value"]);
const UNCERTAINTY_POOLED_OPTIONS = new Set(["series", "readings"]);
const UNCERTAINTY_OF_READINGS_OPTIONS = new Set(["strength_pct", "repeatability"]);
const UNCERTAINTY_TOGETHER_OPTIONS = new Set(["errors"]);
const UNCERTAINTY_OF_LIMIT_OPTIONS = new Set(["limit", "shape"]);
const UNCERTAINTY_OF_DISPLAY_OPTIONS = new Set(["step"]);
const UNCERTAINTY_OF_EXPANDED_OPTIONS = new Set(["expanded", "coverage_factor"]);
const UNCERTAINTY_FREEDOM_OF_DOUBT_OPTIONS = new Set(["doubt_pct"]);
const UNCERTAINTY_COMBINE_OPTIONS = new Set(["value", "influences"]);
const UNCERTAINTY_STRENGTH_OPTIONS = new Set(["strength", "instrument", "factor", "zero", "water_solids"]);
const UNCERTAINTY_STRENGTH_OF_BRIX_OPTIONS = new Set(["brix", "factor"]);
const UNCERTAINTY_FLOW_THROUGH_YIELD_OPTIONS = new Set(["strength", "beverage", "dose", "factor"]);
const UNCERTAINTY_STEEPED_YIELD_OPTIONS = new Set(["strength", "water", "dose", "factor"]);
const UNCERTAINTY_EXTRACTION_YIELD_OPTIONS = new Set(["measured"]);
const UNCERTAINTY_STEEPED_STRENGTH_OPTIONS = new Set(["expected", "dose", "water"]);
const UNCERTAINTY_BEVERAGE_OPTIONS = new Set(["losses", "retention", "other", "dose", "water"]);
const UNCERTAINTY_WATER_TO_REACH_OPTIONS = new Set(["beverage", "strength", "wanted_pct", "water_solids"]);
const UNCERTAINTY_STRENGTH_AFTER_WATER_OPTIONS = new Set(["beverage", "strength", "added", "water_solids"]);
const UNCERTAINTY_MIXED_TEMPERATURE_OPTIONS = new Set(["hot", "cold"]);
const UNCERTAINTY_SETTLE_OPTIONS = new Set(["liquid", "body"]);
const UNCERTAINTY_TIME_TO_COOL_OPTIONS = new Set(["temperature", "to_c", "cooling", "surroundings"]);
const UNCERTAINTY_TEMPERATURE_AFTER_OPTIONS = new Set(["temperature", "elapsed", "cooling", "surroundings"]);
const UNCERTAINTY_YIELD_AT_TIME_OPTIONS = new Set(["rates", "plateau", "contact"]);
const UNCERTAINTY_TIME_FOR_YIELD_OPTIONS = new Set(["rates", "plateau", "wanted_yield_pct"]);
export const uncertainty = Object.freeze({
  coverageFactor(o) {
    record(o, 2, UNCERTAINTY_COVERAGE_FACTOR_OPTIONS, "options");
    try {
      answered(cupwrightUncertaintyCoverageFactor(number(o.confidence_pct, "confidence_pct"), number(o.degrees_of_freedom, "degrees_of_freedom"), answer, base));
      return { coverage_factor: f64[answer >> 3] };
    } catch (thrown) {
      throw misspelt(thrown, o, UNCERTAINTY_COVERAGE_FACTOR_OPTIONS);
    }
  },
  expanded(o) {
    record(o, 2, UNCERTAINTY_EXPANDED_OPTIONS, "options");
    try {
      const estimate = takeEstimate(o.estimate, "estimate");
      const confidence_pct = number(o.confidence_pct, "confidence_pct");
      answered(cupwrightUncertaintyExpanded(put(estimate, 1152, 3), confidence_pct, answer, base));
      return getExpanded(answer);
    } catch (thrown) {
      throw misspelt(thrown, o, UNCERTAINTY_EXPANDED_OPTIONS);
    }
  },
  ofRepeats(o) {
    record(o, 1, UNCERTAINTY_OF_REPEATS_OPTIONS, "options");
    try {
      const value = numbers(o.value, "value");
      answered(cupwrightUncertaintyOfRepeats(put(value.values, 1152), value.count, answer, base), "value", value, ["value"]);
      return getMean(answer);
    } catch (thrown) {
      throw misspelt(thrown, o, UNCERTAINTY_OF_REPEATS_OPTIONS);
    }
  },
  pooled(o) {
    record(o, 2, UNCERTAINTY_POOLED_OPTIONS, "options");
    try {
      const series = items(o.series, "series", takeSeries);
      const readings = integer(o.readings, "readings", "reading_count");
      answered(cupwrightUncertaintyPooled(put(series.values, 1152), series.count, readings, answer, base), "series", series, SERIES_FIELDS);
      return getStandard(answer);
    } catch (thrown) {
      throw misspelt(thrown, o, UNCERTAINTY_POOLED_OPTIONS);
    }
  },
  ofReadings(o) {
    record(o, 2, UNCERTAINTY_OF_READINGS_OPTIONS, "options");
    try {
      const strength_pct = numbers(o.strength_pct, "strength_pct");
      const repeatability = takeRepeatabilityEstimate(o.repeatability, "repeatability");
      answered(cupwrightUncertaintyOfReadings(put(strength_pct.values, 1152), strength_pct.count, put(repeatability, 1952, 3), answer, base), "strength_pct", strength_pct, ["strength_pct"]);
      return getStrengthEstimate(answer);
    } catch (thrown) {
      throw misspelt(thrown, o, UNCERTAINTY_OF_READINGS_OPTIONS);
    }
  },
  together(o) {
    record(o, 1, UNCERTAINTY_TOGETHER_OPTIONS, "options");
    try {
      const errors = items(o.errors, "errors", takeStandard);
      answered(cupwrightUncertaintyTogether(put(errors.values, 1152), errors.count, answer, base), "errors", errors, STANDARD_FIELDS);
      return getStandard(answer);
    } catch (thrown) {
      throw misspelt(thrown, o, UNCERTAINTY_TOGETHER_OPTIONS);
    }
  },
  ofLimit(o) {
    record(o, 2, UNCERTAINTY_OF_LIMIT_OPTIONS, "options");
    try {
      answered(cupwrightUncertaintyOfLimit(number(o.limit, "limit"), choice(o.shape, "shape", SHAPE), answer, base));
      return getStandard(answer);
    } catch (thrown) {
      throw misspelt(thrown, o, UNCERTAINTY_OF_LIMIT_OPTIONS);
    }
  },
  ofDisplay(o) {
    record(o, 1, UNCERTAINTY_OF_DISPLAY_OPTIONS, "options");
    try {
      answered(cupwrightUncertaintyOfDisplay(number(o.step, "step"), answer, base));
      return getStandard(answer);
    } catch (thrown) {
      throw misspelt(thrown, o, UNCERTAINTY_OF_DISPLAY_OPTIONS);
    }
  },
  ofExpanded(o) {
    record(o, 2, UNCERTAINTY_OF_EXPANDED_OPTIONS, "options");
    try {
      answered(cupwrightUncertaintyOfExpanded(number(o.expanded, "expanded"), number(o.coverage_factor, "coverage_factor"), answer, base));
      return getStandard(answer);
    } catch (thrown) {
      throw misspelt(thrown, o, UNCERTAINTY_OF_EXPANDED_OPTIONS);
    }
  },
  freedomOfDoubt(o) {
    record(o, 1, UNCERTAINTY_FREEDOM_OF_DOUBT_OPTIONS, "options");
    try {
      answered(cupwrightUncertaintyFreedomOfDoubt(number(o.doubt_pct, "doubt_pct"), answer, base));
      return { degrees_of_freedom: f64[answer >> 3] };
    } catch (thrown) {
      throw misspelt(thrown, o, UNCERTAINTY_FREEDOM_OF_DOUBT_OPTIONS);
    }
  },
  combine(o) {
    record(o, 2, UNCERTAINTY_COMBINE_OPTIONS, "options");
    try {
      const influences = items(o.influences, "influences", takeInfluence);
      answered(cupwrightUncertaintyCombine(number(o.value, "value"), put(influences.values, 1152), influences.count, answer, base), "influences", influences, INFLUENCE_FIELDS);
      return getBudget(answer);
    } catch (thrown) {
      throw misspelt(thrown, o, UNCERTAINTY_COMBINE_OPTIONS);
    }
  },
  strength(o) {
    record(o, 5, UNCERTAINTY_STRENGTH_OPTIONS, "options");
    try {
      const strength = takeStrengthEstimate(o.strength, "strength");
      const instrument = takeInstrumentUncertainty(o.instrument, "instrument");
      const factor = takeFactorUncertainty(o.factor, "factor");
      const zero = choice(o.zero, "zero", ZERO);
      const water_solids = takeWaterSolidsEstimate(o.water_solids, "water_solids");
      answered(cupwrightUncertaintyStrength(put(strength, 1152, 3), put(instrument, 1176, 2), put(factor, 1192, 2), zero, put(water_solids, 1208, 3), answer, base));
      return getBudget(answer);
    } catch (thrown) {
      throw misspelt(thrown, o, UNCERTAINTY_STRENGTH_OPTIONS);
    }
  },
  strengthOfBrix(o) {
    record(o, 2, UNCERTAINTY_STRENGTH_OF_BRIX_OPTIONS, "options");
    try {
      const brix = takeBrixEstimate(o.brix, "brix");
      const factor = takeRefractiveFactorEstimate(o.factor, "factor");
      answered(cupwrightUncertaintyStrengthOfBrix(put(brix, 1152, 3), put(factor, 1176, 3), answer, base));
      return getBudget(answer);
    } catch (thrown) {
      throw misspelt(thrown, o, UNCERTAINTY_STRENGTH_OF_BRIX_OPTIONS);
    }
  },
  flowThroughYield(o) {
    record(o, 4, UNCERTAINTY_FLOW_THROUGH_YIELD_OPTIONS, "options");
    try {
      const strength = takeStrengthEstimate(o.strength, "strength");
      const beverage = takeBeverageEstimate(o.beverage, "beverage");
      const dose = takeDoseEstimate(o.dose, "dose");
      const factor = takeFactorUncertainty(o.factor, "factor");
      answered(cupwrightUncertaintyFlowThroughYield(put(strength, 1152, 3), put(beverage, 1176, 3), put(dose, 1200, 3), put(factor, 1224, 2), answer, base));
      return getBudget(answer);
    } catch (thrown) {
      throw misspelt(thrown, o, UNCERTAINTY_FLOW_THROUGH_YIELD_OPTIONS);
    }
  },
  steepedYield(o) {
    record(o, 4, UNCERTAINTY_STEEPED_YIELD_OPTIONS, "options");
    try {
      const strength = takeStrengthEstimate(o.strength, "strength");
      const water = takeWaterEstimate(o.water, "water");
      const dose = takeDoseEstimate(o.dose, "dose");
      const factor = takeFactorUncertainty(o.factor, "factor");
      answered(cupwrightUncertaintySteepedYield(put(strength, 1152, 3), put(water, 1176, 3), put(dose, 1200, 3), put(factor, 1224, 2), answer, base));
      return getBudget(answer);
    } catch (thrown) {
      throw misspelt(thrown, o, UNCERTAINTY_STEEPED_YIELD_OPTIONS);
    }
  },
  extractionYield(o) {
    record(o, 1, UNCERTAINTY_EXTRACTION_YIELD_OPTIONS, "options");
    try {
      const measured = takeMeasured(o.measured, "measured");
      answered(cupwrightUncertaintyExtractionYield(put(measured, 1152, 28), answer, base));
      return getBudget(answer);
    } catch (thrown) {
      throw misspelt(thrown, o, UNCERTAINTY_EXTRACTION_YIELD_OPTIONS);
    }
  },
  steepedStrength(o) {
    record(o, 3, UNCERTAINTY_STEEPED_STRENGTH_OPTIONS, "options");
    try {
      const expected = takeYieldEstimate(o.expected, "expected");
      const dose = takeDoseEstimate(o.dose, "dose");
      const water = takeWaterEstimate(o.water, "water");
      answered(cupwrightUncertaintySteepedStrength(put(expected, 1152, 3), put(dose, 1176, 3), put(water, 1200, 3), answer, base));
      return getBudget(answer);
    } catch (thrown) {
      throw misspelt(thrown, o, UNCERTAINTY_STEEPED_STRENGTH_OPTIONS);
    }
  },
  beverage(o) {
    record(o, 5, UNCERTAINTY_BEVERAGE_OPTIONS, "options");
    try {
      const losses = takeLosses(o.losses, "losses");
      const retention = takeRetentionUncertainty(o.retention, "retention");
      const other = takeLossesUncertainty(o.other, "other");
      const dose = takeDoseEstimate(o.dose, "dose");
      const water = takeWaterEstimate(o.water, "water");
      answered(cupwrightUncertaintyBeverage(put(losses, 1152, 6), put(retention, 1200, 2), put(other, 1216, 2), put(dose, 1232, 3), put(water, 1256, 3), answer, base));
      return getBudget(answer);
    } catch (thrown) {
      throw misspelt(thrown, o, UNCERTAINTY_BEVERAGE_OPTIONS);
    }
  },
  waterToReach(o) {
    record(o, 4, UNCERTAINTY_WATER_TO_REACH_OPTIONS, "options");
    try {
      const beverage = takeBeverageEstimate(o.beverage, "beverage");
      const strength = takeStrengthEstimate(o.strength, "strength");
      const wanted_pct = number(o.wanted_pct, "wanted_pct");
      const water_solids = takeWaterSolidsEstimate(o.water_solids, "water_solids");
      answered(cupwrightUncertaintyWaterToReach(put(beverage, 1152, 3), put(strength, 1176, 3), wanted_pct, put(water_solids, 1200, 3), answer, base));
      return getBudget(answer);
    } catch (thrown) {
      throw misspelt(thrown, o, UNCERTAINTY_WATER_TO_REACH_OPTIONS);
    }
  },
  strengthAfterWater(o) {
    record(o, 4, UNCERTAINTY_STRENGTH_AFTER_WATER_OPTIONS, "options");
    try {
      const beverage = takeBeverageEstimate(o.beverage, "beverage");
      const strength = takeStrengthEstimate(o.strength, "strength");
      const added = takeAddedEstimate(o.added, "added");
      const water_solids = takeWaterSolidsEstimate(o.water_solids, "water_solids");
      answered(cupwrightUncertaintyStrengthAfterWater(put(beverage, 1152, 3), put(strength, 1176, 3), put(added, 1200, 3), put(water_solids, 1224, 3), answer, base));
      return getBudget(answer);
    } catch (thrown) {
      throw misspelt(thrown, o, UNCERTAINTY_STRENGTH_AFTER_WATER_OPTIONS);
    }
  },
  mixedTemperature(o) {
    record(o, 2, UNCERTAINTY_MIXED_TEMPERATURE_OPTIONS, "options");
    try {
      const hot = takeHotEstimate(o.hot, "hot");
      const cold = takeColdEstimate(o.cold, "cold");
      answered(cupwrightUncertaintyMixedTemperature(put(hot, 1152, 6), put(cold, 1200, 6), answer, base));
      return getBudget(answer);
    } catch (thrown) {
      throw misspelt(thrown, o, UNCERTAINTY_MIXED_TEMPERATURE_OPTIONS);
    }
  },
  settle(o) {
    record(o, 2, UNCERTAINTY_SETTLE_OPTIONS, "options");
    try {
      const liquid = takeLiquidEstimate(o.liquid, "liquid");
      const body = takeBodyEstimate(o.body, "body");
      answered(cupwrightUncertaintySettle(put(liquid, 1152, 6), put(body, 1200, 6), answer, base));
      return getBudget(answer);
    } catch (thrown) {
      throw misspelt(thrown, o, UNCERTAINTY_SETTLE_OPTIONS);
    }
  },
  timeToCool(o) {
    record(o, 4, UNCERTAINTY_TIME_TO_COOL_OPTIONS, "options");
    try {
      const temperature = takeTemperatureEstimate(o.temperature, "temperature");
      const to_c = number(o.to_c, "to_c");
      const cooling = takeCoolingEstimate(o.cooling, "cooling");
      const surroundings = takeSurroundings(o.surroundings, "surroundings");
      answered(cupwrightUncertaintyTimeToCool(put(temperature, 1152, 3), to_c, put(cooling, 1176, 3), put(surroundings, 1200, 2), answer, base));
      return getBudget(answer);
    } catch (thrown) {
      throw misspelt(thrown, o, UNCERTAINTY_TIME_TO_COOL_OPTIONS);
    }
  },
  temperatureAfter(o) {
    record(o, 4, UNCERTAINTY_TEMPERATURE_AFTER_OPTIONS, "options");
    try {
      const temperature = takeTemperatureEstimate(o.temperature, "temperature");
      const elapsed = takeTimeEstimate(o.elapsed, "elapsed");
      const cooling = takeCoolingEstimate(o.cooling, "cooling");
      const surroundings = takeSurroundings(o.surroundings, "surroundings");
      answered(cupwrightUncertaintyTemperatureAfter(put(temperature, 1152, 3), put(elapsed, 1176, 3), put(cooling, 1200, 3), put(surroundings, 1224, 2), answer, base));
      return getBudget(answer);
    } catch (thrown) {
      throw misspelt(thrown, o, UNCERTAINTY_TEMPERATURE_AFTER_OPTIONS);
    }
  },
  yieldAtTime(o) {
    record(o, 3, UNCERTAINTY_YIELD_AT_TIME_OPTIONS, "options");
    try {
      const rates = takeRates(o.rates, "rates");
      const plateau = takePlateau(o.plateau, "plateau");
      const contact = takeTimeEstimate(o.contact, "contact");
      answered(cupwrightUncertaintyYieldAtTime(put(rates, 1152, 11), put(plateau, 1240, 4), put(contact, 1272, 3), answer, base));
      return getBudget(answer);
    } catch (thrown) {
      throw misspelt(thrown, o, UNCERTAINTY_YIELD_AT_TIME_OPTIONS);
    }
  },
  timeForYield(o) {
    record(o, 3, UNCERTAINTY_TIME_FOR_YIELD_OPTIONS, "options");
    try {
      const rates = takeRates(o.rates, "rates");
      const plateau = takePlateau(o.plateau, "plateau");
      const wanted_yield_pct = number(o.wanted_yield_pct, "wanted_yield_pct");
      answered(cupwrightUncertaintyTimeForYield(put(rates, 1152, 11), put(plateau, 1240, 4), wanted_yield_pct, answer, base));
      return getBudget(answer);
    } catch (thrown) {
      throw misspelt(thrown, o, UNCERTAINTY_TIME_FOR_YIELD_OPTIONS);
    }
  },
});

const DECISION_CHANCES_OPTIONS = new Set(["estimate", "band"]);
const DECISION_DECIDE_OPTIONS = new Set(["estimate", "band", "confidence_pct"]);
const DECISION_LARGEST_UNCERTAINTY_OPTIONS = new Set(["band", "confidence_pct", "degrees_of_freedom"]);
const DECISION_ACCEPTANCE_OPTIONS = new Set(["u_value", "nu_value", "band", "confidence_pct"]);
const DECISION_READINGS_NEEDED_OPTIONS = new Set(["value", "u_scatter", "nu_scatter", "u_rest", "nu_rest", "band", "confidence_pct"]);
const DECISION_JOINT_OPTIONS = new Set(["bands", "strength", "extracted", "correlation"]);
const DECISION_DECIDE_JOINT_OPTIONS = new Set(["both_pct", "confidence_pct"]);
const DECISION_COMPARE_OPTIONS = new Set(["pair", "factor", "confidence_pct"]);
export const decision = Object.freeze({
  chances(o) {
    record(o, 2, DECISION_CHANCES_OPTIONS, "options");
    try {
      const estimate = takeEstimate(o.estimate, "estimate");
      const band = takeBand(o.band, "band");
      answered(cupwrightDecisionChances(put(estimate, 1152, 3), put(band, 1176, 2), answer, base));
      return getChances(answer);
    } catch (thrown) {
      throw misspelt(thrown, o, DECISION_CHANCES_OPTIONS);
    }
  },
  decide(o) {
    record(o, 3, DECISION_DECIDE_OPTIONS, "options");
    try {
      const estimate = takeEstimate(o.estimate, "estimate");
      const band = takeBand(o.band, "band");
      const confidence_pct = number(o.confidence_pct, "confidence_pct");
      answered(cupwrightDecisionDecide(put(estimate, 1152, 3), put(band, 1176, 2), confidence_pct, answer, base));
      return { decision: DECISION[i32[answer >> 2]] };
    } catch (thrown) {
      throw misspelt(thrown, o, DECISION_DECIDE_OPTIONS);
    }
  },
  largestUncertainty(o) {
    record(o, 3, DECISION_LARGEST_UNCERTAINTY_OPTIONS, "options");
    try {
      const band = takeBand(o.band, "band");
      const confidence_pct = number(o.confidence_pct, "confidence_pct");
      const degrees_of_freedom = number(o.degrees_of_freedom, "degrees_of_freedom");
      answered(cupwrightDecisionLargestUncertainty(put(band, 1152, 2), confidence_pct, degrees_of_freedom, answer, base));
      return { u: f64[answer >> 3] };
    } catch (thrown) {
      throw misspelt(thrown, o, DECISION_LARGEST_UNCERTAINTY_OPTIONS);
    }
  },
  acceptance(o) {
    record(o, 4, DECISION_ACCEPTANCE_OPTIONS, "options");
    try {
      const band = takeBand(o.band, "band");
      const confidence_pct = number(o.confidence_pct, "confidence_pct");
      answered(cupwrightDecisionAcceptance(number(o.u_value, "u_value"), number(o.nu_value, "nu_value"), put(band, 1152, 2), confidence_pct, answer, base));
      return getAcceptance(answer);
    } catch (thrown) {
      throw misspelt(thrown, o, DECISION_ACCEPTANCE_OPTIONS);
    }
  },
  readingsNeeded(o) {
    record(o, 7, DECISION_READINGS_NEEDED_OPTIONS, "options");
    try {
      const band = takeBand(o.band, "band");
      const confidence_pct = number(o.confidence_pct, "confidence_pct");
      answered(cupwrightDecisionReadingsNeeded(number(o.value, "value"), number(o.u_scatter, "u_scatter"), number(o.nu_scatter, "nu_scatter"), number(o.u_rest, "u_rest"), number(o.nu_rest, "nu_rest"), put(band, 1152, 2), confidence_pct, answer, base));
      return getReadingsNeeded(answer);
    } catch (thrown) {
      throw misspelt(thrown, o, DECISION_READINGS_NEEDED_OPTIONS);
    }
  },
  joint(o) {
    record(o, 4, DECISION_JOINT_OPTIONS, "options");
    try {
      const bands = takeBands(o.bands, "bands");
      const strength = takeStrengthEstimate(o.strength, "strength");
      const extracted = takeYieldEstimate(o.extracted, "extracted");
      const correlation = number(o.correlation, "correlation");
      answered(cupwrightDecisionJoint(put(bands, 1152, 4), put(strength, 1184, 3), put(extracted, 1208, 3), correlation, answer, base));
      return getJoint(answer);
    } catch (thrown) {
      throw misspelt(thrown, o, DECISION_JOINT_OPTIONS);
    }
  },
  decideJoint(o) {
    record(o, 2, DECISION_DECIDE_JOINT_OPTIONS, "options");
    try {
      answered(cupwrightDecisionDecideJoint(number(o.both_pct, "both_pct"), number(o.confidence_pct, "confidence_pct"), answer, base));
      return { decision: JOINT_DECISION[i32[answer >> 2]] };
    } catch (thrown) {
      throw misspelt(thrown, o, DECISION_DECIDE_JOINT_OPTIONS);
    }
  },
  compare(o) {
    record(o, 3, DECISION_COMPARE_OPTIONS, "options");
    try {
      const pair = takePair(o.pair, "pair");
      const factor = takeFactorUncertainty(o.factor, "factor");
      const confidence_pct = number(o.confidence_pct, "confidence_pct");
      answered(cupwrightDecisionCompare(put(pair, 1152, 6), put(factor, 1200, 2), confidence_pct, answer, base));
      return getComparison(answer);
    } catch (thrown) {
      throw misspelt(thrown, o, DECISION_COMPARE_OPTIONS);
    }
  },
});

const CAUTION_OF_OPTIONS = new Set(["hazards"]);
const CAUTION_TIME_TO_BURN_OPTIONS = new Set(["water_c"]);
const CAUTION_CAFFEINE_OPTIONS = new Set(["dose_g", "caffeine_mg_per_g", "share_pct"]);
export const caution = Object.freeze({
  of(o) {
    record(o, 1, CAUTION_OF_OPTIONS, "options");
    try {
      const hazards = takeHazards(o.hazards, "hazards");
      answered(cupwrightCautionOf(put(hazards, 1152, 3), answer, base));
      return { cautions: cautions(i32[answer >> 2]) };
    } catch (thrown) {
      throw misspelt(thrown, o, CAUTION_OF_OPTIONS);
    }
  },
  timeToBurn(o) {
    record(o, 1, CAUTION_TIME_TO_BURN_OPTIONS, "options");
    try {
      answered(cupwrightCautionTimeToBurn(number(o.water_c, "water_c"), answer, base));
      return getTimeToBurn(answer);
    } catch (thrown) {
      throw misspelt(thrown, o, CAUTION_TIME_TO_BURN_OPTIONS);
    }
  },
  caffeine(o) {
    record(o, 3, CAUTION_CAFFEINE_OPTIONS, "options");
    try {
      answered(cupwrightCautionCaffeine(number(o.dose_g, "dose_g"), number(o.caffeine_mg_per_g, "caffeine_mg_per_g"), number(o.share_pct, "share_pct"), answer, base));
      return { caffeine_mg: f64[answer >> 3] };
    } catch (thrown) {
      throw misspelt(thrown, o, CAUTION_CAFFEINE_OPTIONS);
    }
  },
});

const PLAN_RECIPE_OPTIONS = new Set(["wish", "brewer", "coffee", "kitchen"]);
const PLAN_FORESEEN_OPTIONS = new Set(["wish", "brewer", "coffee", "kitchen", "straying"]);
const PLAN_SUREST_OPTIONS = new Set(["wish", "brewer", "coffee", "kitchen", "straying"]);
export const plan = Object.freeze({
  recipe(o) {
    record(o, 4, PLAN_RECIPE_OPTIONS, "options");
    try {
      const wish = takeWish(o.wish, "wish");
      const brewer = takeBrewer(o.brewer, "brewer");
      const coffee = takeCoffee(o.coffee, "coffee");
      const kitchen = takeKitchen(o.kitchen, "kitchen");
      answered(cupwrightPlanRecipe(put(wish, 1152, 10), put(brewer, 1264, 12), put(coffee, 1384, 3), put(kitchen, 1416, 10), answer, base));
      return getRecipe(answer);
    } catch (thrown) {
      throw misspelt(thrown, o, PLAN_RECIPE_OPTIONS);
    }
  },
  foreseen(o) {
    record(o, 5, PLAN_FORESEEN_OPTIONS, "options");
    try {
      const wish = takeWish(o.wish, "wish");
      const brewer = takeBrewer(o.brewer, "brewer");
      const coffee = takeCoffee(o.coffee, "coffee");
      const kitchen = takeKitchen(o.kitchen, "kitchen");
      const straying = takeStraying(o.straying, "straying");
      answered(cupwrightPlanForeseen(put(wish, 1152, 10), put(brewer, 1264, 12), put(coffee, 1384, 3), put(kitchen, 1416, 10), put(straying, 1512, 10), answer, base));
      return getForeseen(answer);
    } catch (thrown) {
      throw misspelt(thrown, o, PLAN_FORESEEN_OPTIONS);
    }
  },
  surest(o) {
    record(o, 5, PLAN_SUREST_OPTIONS, "options");
    try {
      const wish = takeWish(o.wish, "wish");
      const brewer = takeBrewer(o.brewer, "brewer");
      const coffee = takeCoffee(o.coffee, "coffee");
      const kitchen = takeKitchen(o.kitchen, "kitchen");
      const straying = takeStraying(o.straying, "straying");
      answered(cupwrightPlanSurest(put(wish, 1152, 10), put(brewer, 1264, 12), put(coffee, 1384, 3), put(kitchen, 1416, 10), put(straying, 1512, 10), answer, base));
      return getForeseen(answer);
    } catch (thrown) {
      throw misspelt(thrown, o, PLAN_SUREST_OPTIONS);
    }
  },
});

const FORECAST_STRENGTH_OPTIONS = new Set(["intended"]);
const FORECAST_COUNTED_YIELD_OPTIONS = new Set(["intended"]);
const FORECAST_OUTLOOK_OPTIONS = new Set(["intended", "window"]);
export const forecast = Object.freeze({
  strength(o) {
    record(o, 1, FORECAST_STRENGTH_OPTIONS, "options");
    try {
      const intended = takeIntended(o.intended, "intended");
      answered(cupwrightForecastStrength(put(intended, 1152, 28), answer, base));
      return getBudget(answer);
    } catch (thrown) {
      throw misspelt(thrown, o, FORECAST_STRENGTH_OPTIONS);
    }
  },
  countedYield(o) {
    record(o, 1, FORECAST_COUNTED_YIELD_OPTIONS, "options");
    try {
      const intended = takeIntended(o.intended, "intended");
      answered(cupwrightForecastCountedYield(put(intended, 1152, 28), answer, base));
      return getBudget(answer);
    } catch (thrown) {
      throw misspelt(thrown, o, FORECAST_COUNTED_YIELD_OPTIONS);
    }
  },
  outlook(o) {
    record(o, 2, FORECAST_OUTLOOK_OPTIONS, "options");
    try {
      const intended = takeIntended(o.intended, "intended");
      const window = takeWindow(o.window, "window");
      answered(cupwrightForecastOutlook(put(intended, 1152, 28), put(window, 1376, 4), answer, base));
      return getOutlook(answer);
    } catch (thrown) {
      throw misspelt(thrown, o, FORECAST_OUTLOOK_OPTIONS);
    }
  },
});

const ADVISE_ON_OPTIONS = new Set(["cup", "means", "straying", "wanted_pct", "window", "confidence_pct"]);
export const advise = Object.freeze({
  on(o) {
    record(o, 6, ADVISE_ON_OPTIONS, "options");
    try {
      const cup = takeCup(o.cup, "cup");
      const means = takeMeans(o.means, "means");
      const straying = takeStraying(o.straying, "straying");
      const wanted_pct = number(o.wanted_pct, "wanted_pct");
      const window = takeWindow(o.window, "window");
      const confidence_pct = number(o.confidence_pct, "confidence_pct");
      answered(cupwrightAdviseOn(put(cup, 1152, 16), put(means, 1280, 16), put(straying, 1424, 10), wanted_pct, put(window, 1504, 4), confidence_pct, answer, base));
      return getAdvice(answer);
    } catch (thrown) {
      throw misspelt(thrown, o, ADVISE_ON_OPTIONS);
    }
  },
});

const PROFILE_TO_BYTES_OPTIONS = new Set(["profile"]);
const PROFILE_FROM_BYTES_OPTIONS = new Set(["bytes"]);
const PROFILE_KEEP_RETENTION_LINE_OPTIONS = new Set(["profile", "line"]);
const PROFILE_KEEP_RETENTION_OPTIONS = new Set(["profile", "fitted"]);
const PROFILE_KEEP_ONE_RATE_OPTIONS = new Set(["profile", "law"]);
const PROFILE_KEEP_TWO_RATES_OPTIONS = new Set(["profile", "law"]);
const PROFILE_KEEP_HEAT_CAPACITY_OPTIONS = new Set(["profile", "fitted"]);
const PROFILE_KEEP_CUP_COOLING_OPTIONS = new Set(["profile", "cup"]);
const PROFILE_KEEP_REFRACTIVE_FACTOR_OPTIONS = new Set(["profile", "fitted"]);
const PROFILE_KEEP_REPEATABILITY_OPTIONS = new Set(["profile", "fitted"]);
const PROFILE_EXPECTED_BEVERAGE_OPTIONS = new Set(["profile", "dose_g", "water_g", "vapour_g"]);
const PROFILE_RATES_OPTIONS = new Set(["profile"]);
const PROFILE_PLATEAU_OPTIONS = new Set(["profile"]);
const PROFILE_MEANS_OPTIONS = new Set(["profile", "water_c"]);
export const profile = Object.freeze({
  toBytes(o) {
    record(o, 1, PROFILE_TO_BYTES_OPTIONS, "options");
    const profile = takeProfile(o.profile, "profile");
    answered(cupwrightProfileToBytes(put(profile, 1152, 44), answer, base));
    return { bytes: bytesAt(answer, 368) };
  },
  fromBytes(o) {
    record(o, 1, PROFILE_FROM_BYTES_OPTIONS, "options");
    const given = bytes(o.bytes, "bytes", 368);
    answered(cupwrightProfileFromBytes(putBytes(given.values, 1152), given.count, answer, base));
    return getProfile(answer);
  },
  keepRetentionLine(o) {
    record(o, 2, PROFILE_KEEP_RETENTION_LINE_OPTIONS, "options");
    try {
      const profile = takeProfile(o.profile, "profile");
      const line = takeRetentionLine(o.line, "line");
      answered(cupwrightProfileKeepRetentionLine(put(profile, 1152, 44), put(line, 1584, 69), answer, base));
      return getProfile(answer);
    } catch (thrown) {
      throw misspelt(thrown, o, PROFILE_KEEP_RETENTION_LINE_OPTIONS);
    }
  },
  keepRetention(o) {
    record(o, 2, PROFILE_KEEP_RETENTION_OPTIONS, "options");
    try {
      const profile = takeProfile(o.profile, "profile");
      const fitted = takeFittedRetention(o.fitted, "fitted");
      answered(cupwrightProfileKeepRetention(put(profile, 1152, 44), put(fitted, 1584, 66), answer, base));
      return getProfile(answer);
    } catch (thrown) {
      throw misspelt(thrown, o, PROFILE_KEEP_RETENTION_OPTIONS);
    }
  },
  keepOneRate(o) {
    record(o, 2, PROFILE_KEEP_ONE_RATE_OPTIONS, "options");
    try {
      const profile = takeProfile(o.profile, "profile");
      const law = takeOneRate(o.law, "law");
      answered(cupwrightProfileKeepOneRate(put(profile, 1152, 44), put(law, 1584, 69), answer, base));
      return getProfile(answer);
    } catch (thrown) {
      throw misspelt(thrown, o, PROFILE_KEEP_ONE_RATE_OPTIONS);
    }
  },
  keepTwoRates(o) {
    record(o, 2, PROFILE_KEEP_TWO_RATES_OPTIONS, "options");
    try {
      const profile = takeProfile(o.profile, "profile");
      const law = takeTwoRates(o.law, "law");
      answered(cupwrightProfileKeepTwoRates(put(profile, 1152, 44), put(law, 1584, 88), answer, base));
      return getProfile(answer);
    } catch (thrown) {
      throw misspelt(thrown, o, PROFILE_KEEP_TWO_RATES_OPTIONS);
    }
  },
  keepHeatCapacity(o) {
    record(o, 2, PROFILE_KEEP_HEAT_CAPACITY_OPTIONS, "options");
    try {
      const profile = takeProfile(o.profile, "profile");
      const fitted = takeFittedHeatCapacity(o.fitted, "fitted");
      answered(cupwrightProfileKeepHeatCapacity(put(profile, 1152, 44), put(fitted, 1584, 66), answer, base));
      return getProfile(answer);
    } catch (thrown) {
      throw misspelt(thrown, o, PROFILE_KEEP_HEAT_CAPACITY_OPTIONS);
    }
  },
  keepCupCooling(o) {
    record(o, 2, PROFILE_KEEP_CUP_COOLING_OPTIONS, "options");
    try {
      const profile = takeProfile(o.profile, "profile");
      const cup = takeCooling(o.cup, "cup");
      answered(cupwrightProfileKeepCupCooling(put(profile, 1152, 44), put(cup, 1584, 69), answer, base));
      return getProfile(answer);
    } catch (thrown) {
      throw misspelt(thrown, o, PROFILE_KEEP_CUP_COOLING_OPTIONS);
    }
  },
  keepRefractiveFactor(o) {
    record(o, 2, PROFILE_KEEP_REFRACTIVE_FACTOR_OPTIONS, "options");
    try {
      const profile = takeProfile(o.profile, "profile");
      const fitted = takeFittedRefractiveFactor(o.fitted, "fitted");
      answered(cupwrightProfileKeepRefractiveFactor(put(profile, 1152, 44), put(fitted, 1584, 66), answer, base));
      return getProfile(answer);
    } catch (thrown) {
      throw misspelt(thrown, o, PROFILE_KEEP_REFRACTIVE_FACTOR_OPTIONS);
    }
  },
  keepRepeatability(o) {
    record(o, 2, PROFILE_KEEP_REPEATABILITY_OPTIONS, "options");
    try {
      const profile = takeProfile(o.profile, "profile");
      const fitted = takeFittedRepeatability(o.fitted, "fitted");
      answered(cupwrightProfileKeepRepeatability(put(profile, 1152, 44), put(fitted, 1584, 66), answer, base));
      return getProfile(answer);
    } catch (thrown) {
      throw misspelt(thrown, o, PROFILE_KEEP_REPEATABILITY_OPTIONS);
    }
  },
  expectedBeverage(o) {
    record(o, 4, PROFILE_EXPECTED_BEVERAGE_OPTIONS, "options");
    try {
      const profile = takeProfile(o.profile, "profile");
      const dose_g = number(o.dose_g, "dose_g");
      const water_g = number(o.water_g, "water_g");
      const vapour_g = number(o.vapour_g, "vapour_g");
      answered(cupwrightProfileExpectedBeverage(put(profile, 1152, 44), dose_g, water_g, vapour_g, answer, base));
      return getExpected(answer);
    } catch (thrown) {
      throw misspelt(thrown, o, PROFILE_EXPECTED_BEVERAGE_OPTIONS);
    }
  },
  rates(o) {
    record(o, 1, PROFILE_RATES_OPTIONS, "options");
    try {
      const profile = takeProfile(o.profile, "profile");
      answered(cupwrightProfileRates(put(profile, 1152, 44), answer, base));
      return getRates(answer);
    } catch (thrown) {
      throw misspelt(thrown, o, PROFILE_RATES_OPTIONS);
    }
  },
  plateau(o) {
    record(o, 1, PROFILE_PLATEAU_OPTIONS, "options");
    try {
      const profile = takeProfile(o.profile, "profile");
      answered(cupwrightProfilePlateau(put(profile, 1152, 44), answer, base));
      return getPlateau(answer);
    } catch (thrown) {
      throw misspelt(thrown, o, PROFILE_PLATEAU_OPTIONS);
    }
  },
  means(o) {
    record(o, 2, PROFILE_MEANS_OPTIONS, "options");
    try {
      const profile = takeProfile(o.profile, "profile");
      const water_c = number(o.water_c, "water_c");
      answered(cupwrightProfileMeans(put(profile, 1152, 44), water_c, answer, base));
      return getMeans(answer);
    } catch (thrown) {
      throw misspelt(thrown, o, PROFILE_MEANS_OPTIONS);
    }
  },
});

/** Bytes of states and of what is kept of them, where one is lent after the base, and numbers of what goes with it. */
export const SCALE = 512;
export const FOLLOWER = 768;
export const SCALE_BYTES = 624;
export const FOLLOWER_BYTES = 784;
export const STATE_AT = 1152;
export const SETUP_DOUBLES = 3;
export const STEP_DOUBLES = 5;
export const STEP_NUMBERS = 7;
export const INTENDED_DOUBLES = 28;
export const WINDOW_DOUBLES = 4;
export const LOSSES_DOUBLES = 6;
