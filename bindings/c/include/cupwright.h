#ifndef CUPWRIGHT_H
#define CUPWRIGHT_H

/* Made by `cargo xtask header`. Do not edit. */

#include <stddef.h>
#include <stdint.h>

/**
 * @file
 * Brewing mathematics for coffee. For C99 and C++11 or later. Link with -Wl,--gc-sections, so that only what
 * is called goes into the image.
 *
 * Every function that can fail returns an int32_t, CUPWRIGHT_STATUS_OK or the reason, and takes its
 * answer's place and an error's place as its last two parameters. The answer is written only on success,
 * the error only on failure. The error may be NULL, and so may a list whose count is 0; the answer and every
 * struct may not.
 *
 * Names carry units: _g grams, _pct percent (never a fraction), _c degrees Celsius, _k kelvin, _s seconds,
 * _ml millilitres, _mg milligrams, _mm millimetres, _kpa kilopascals, _m metres, _j_per_k joules per kelvin,
 * _g_per_g grams per gram, _mg_per_l milligrams per litre, _per_min per minute. Every number is checked
 * against its range, CUPWRIGHT_..._LOWEST to CUPWRIGHT_..._HIGHEST, and against NaN and infinities;
 * nothing is clamped. Symbols in equations: D dose, W brew water, B beverage, T strength, E yield,
 * h moisture, s solids of the water, V vapour, φ held strength, r retention, R ratio, ρ density.
 *
 * Nothing is allocated, nothing is global, nothing is kept after a call but in states that the caller owns: call
 * from any thread, and from an interrupt if its stack and time allow. On a processor without doubles a plan takes
 * millions of instructions, a fit (cupwright_calibrate_...()) up to a hundred million. Answers have the same bits on
 * every processor that has a package. On bare-metal targets the library computes doubles itself, and the caller's
 * floating-point mode does not matter; on computers keep the default, round to nearest.
 *
 * The stack of many calls, good and bad, stays below these bytes on a Cortex-M0 and M4F, names without cupwright_;
 * of all others that COSTS.md has stack of, below 1024. Of columns, profiles and bytes it is not measured.
 *
 *   8192  advise_on
 *   8064  plan_surest
 *   6656  calibrate_two_rates
 *   6144  plan_foreseen
 *   4608  calibrate_cooling, calibrate_expected_beverage, calibrate_one_rate, calibrate_retention_line
 *   4352  calibrate_equilibrium_yield, calibrate_heat_capacity, calibrate_retention
 *   4096  uncertainty_extraction_yield
 *   3840  calibrate_refractive_factor, calibrate_repeatability, forecast_counted_yield, forecast_strength
 *   3584  plan_recipe
 *   3072  follow_outlook, forecast_outlook, uncertainty_time_for_yield, uncertainty_yield_at_time
 *   2944  uncertainty_strength
 *   2880  uncertainty_strength_after_water, uncertainty_temperature_after
 *   2816  uncertainty_flow_through_yield, uncertainty_steeped_yield
 *   2688  uncertainty_beverage, uncertainty_mixed_temperature, uncertainty_settle, uncertainty_steeped_strength, uncertainty_time_to_cool
 *   2560  uncertainty_strength_of_brix, uncertainty_water_to_reach
 *   2048  follow_take, uncertainty_combine
 *   1472  live_take
 *   1152  extraction_plausibility, uncertainty_of_repeats
 *
 * Hot water scalds and pressing hot liquid can burst a vessel: show the cautions of cupwright_caution_of()
 * and cupwright_plan_recipe(). They defer to local codes, the equipment's instructions and licensed practice.
 */

/** Version of the package. */
#define CUPWRIGHT_VERSION "0.1.0"
#define CUPWRIGHT_VERSION_MAJOR 0
#define CUPWRIGHT_VERSION_MINOR 1
#define CUPWRIGHT_VERSION_PATCH 0

/**
 * What a number is. A value never changes its meaning and is never used again for another.
 * In words: cupwright_quantity_text(), cupwright_unit_text().
 */
enum cupwright_quantity
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif
{
    /** Ground coffee as weighed, its moisture included. Unit: g. */
    CUPWRIGHT_QUANTITY_DOSE = 1,
    /** Water poured onto the coffee. Unit: g. */
    CUPWRIGHT_QUANTITY_BREW_WATER = 2,
    /** Brewed coffee that reaches the cup or server. Unit: g. */
    CUPWRIGHT_QUANTITY_BEVERAGE = 3,
    /** Water or milk added to the beverage after the brew. Unit: g. */
    CUPWRIGHT_QUANTITY_ADDITION = 4,
    /** Ice added to the beverage, or what is left of it. Unit: g. */
    CUPWRIGHT_QUANTITY_ICE = 5,
    /** Any watery liquid that takes part in a heat balance. Unit: g. */
    CUPWRIGHT_QUANTITY_LIQUID = 6,
    /** Liquid left behind by the grounds, the paper and the chamber together, its dissolved coffee included. Unit: g. */
    CUPWRIGHT_QUANTITY_RETAINED = 7,
    /** Water lost as vapour during the brew. Unit: g. */
    CUPWRIGHT_QUANTITY_VAPOUR = 8,
    /** Liquid that the chamber and its filter keep whatever the dose. Unit: g. */
    CUPWRIGHT_QUANTITY_HOLD_UP = 9,
    /** Liquid that drips away before the press or the drain and never reaches the cup. Unit: g. */
    CUPWRIGHT_QUANTITY_DRIPS = 10,
    /** Dry filter paper. Unit: g. */
    CUPWRIGHT_QUANTITY_PAPER_MASS = 11,
    /** Water that a gram of dry filter paper takes up. Unit: g/g. */
    CUPWRIGHT_QUANTITY_PAPER_UPTAKE = 12,
    /** Brew water missing from the beverage per gram of dose, apart from losses named separately: what a scale sees. Unit: g/g. */
    CUPWRIGHT_QUANTITY_APPARENT_RETENTION = 13,
    /** Liquid that the grounds hold per gram of dose, its dissolved coffee included. Unit: g/g. */
    CUPWRIGHT_QUANTITY_TRUE_RETENTION = 14,
    /** Volume of a liquid, or of a chamber. Unit: mL. */
    CUPWRIGHT_QUANTITY_VOLUME = 15,
    /** Volume that a gram of wetted grounds takes up under water. Unit: mL/g. */
    CUPWRIGHT_QUANTITY_DISPLACEMENT = 16,
    /** Brew water per gram of dose. Unit: g/g. */
    CUPWRIGHT_QUANTITY_WATER_RATIO = 17,
    /** Beverage per gram of dose. Unit: g/g. */
    CUPWRIGHT_QUANTITY_BEVERAGE_RATIO = 18,
    /** Dose per litre of brew water at the water's temperature. Unit: g/L. */
    CUPWRIGHT_QUANTITY_DOSE_PER_LITRE = 19,
    /** Total dissolved solids (TDS) of the beverage, per mass of beverage, the brew water's included. Unit: %. */
    CUPWRIGHT_QUANTITY_STRENGTH = 20,
    /** Extraction yield: coffee dissolved, per mass of dose as weighed. Unit: %. */
    CUPWRIGHT_QUANTITY_YIELD = 21,
    /** Water in the dose as weighed. Unit: %. */
    CUPWRIGHT_QUANTITY_MOISTURE = 22,
    /** Dissolved solids of the water itself. Unit: mg/L. */
    CUPWRIGHT_QUANTITY_WATER_SOLIDS = 23,
    /** Strength of the liquid left in the grounds, as a share of the beverage's: 0 % flowed through, 100 % steeped. Unit: %. */
    CUPWRIGHT_QUANTITY_HELD_STRENGTH = 24,
    /** A share of a whole. Unit: %. */
    CUPWRIGHT_QUANTITY_SHARE = 25,
    /** A span of time. Unit: s. */
    CUPWRIGHT_QUANTITY_TIME = 26,
    /** Time constant of an exponential. Unit: s. */
    CUPWRIGHT_QUANTITY_TIME_CONSTANT = 27,
    /** Temperature of liquid water, brew or milk. Unit: °C. */
    CUPWRIGHT_QUANTITY_TEMPERATURE = 28,
    /** Temperature of the air. Unit: °C. */
    CUPWRIGHT_QUANTITY_ROOM_TEMPERATURE = 29,
    /** Temperature of a vessel, of dry grounds or of paper. Unit: °C. */
    CUPWRIGHT_QUANTITY_VESSEL_TEMPERATURE = 30,
    /** Temperature of ice. Unit: °C. */
    CUPWRIGHT_QUANTITY_ICE_TEMPERATURE = 31,
    /** A drop in temperature. Unit: K. */
    CUPWRIGHT_QUANTITY_TEMPERATURE_DROP = 32,
    /** Pressure of the air where the brew is made (station pressure, not reduced to sea level). Unit: kPa. */
    CUPWRIGHT_QUANTITY_PRESSURE = 33,
    /** Vapour pressure of water. Unit: kPa. */
    CUPWRIGHT_QUANTITY_VAPOUR_PRESSURE = 34,
    /** Height above sea level. Unit: m. */
    CUPWRIGHT_QUANTITY_ALTITUDE = 35,
    /** Density of liquid water. Unit: kg/m³. */
    CUPWRIGHT_QUANTITY_DENSITY = 36,
    /** Heat needed to warm a gram by a kelvin. Unit: J/(g K). */
    CUPWRIGHT_QUANTITY_SPECIFIC_HEAT = 37,
    /** Heat content of liquid water above that at 0 °C. Unit: J/g. */
    CUPWRIGHT_QUANTITY_ENTHALPY = 38,
    /** Heat taken up when a gram of water turns to vapour. Unit: J/g. */
    CUPWRIGHT_QUANTITY_LATENT_HEAT = 39,
    /** Heat needed to warm a whole vessel, or the part of it that warms, by a kelvin. Unit: J/K. */
    CUPWRIGHT_QUANTITY_HEAT_CAPACITY = 40,
    /** Mass of a vessel, or of the part of it that warms. Unit: g. */
    CUPWRIGHT_QUANTITY_VESSEL_MASS = 41,
    /** Rate constant of the cooling law. Unit: 1/min. */
    CUPWRIGHT_QUANTITY_COOLING_RATE = 42,
    /** Relative humidity of the air. Unit: %. */
    CUPWRIGHT_QUANTITY_HUMIDITY = 43,
    /** Inner diameter of a cup at the liquid's surface. Unit: mm. */
    CUPWRIGHT_QUANTITY_DIAMETER = 44,
    /** Sugar-scale reading of a refractometer. Unit: °Bx. */
    CUPWRIGHT_QUANTITY_BRIX = 45,
    /** Refractive index relative to air at the sodium line. Unit: none. */
    CUPWRIGHT_QUANTITY_REFRACTIVE_INDEX = 46,
    /** Strength per degree Brix of a coffee. Unit: %/°Bx. */
    CUPWRIGHT_QUANTITY_REFRACTIVE_FACTOR = 47,
    /** Temperature of a sample on the prism. Unit: °C. */
    CUPWRIGHT_QUANTITY_SAMPLE_TEMPERATURE = 48,
    /** Standard deviation of repeated strength readings of one sample by one person on one instrument. Unit: % strength. */
    CUPWRIGHT_QUANTITY_REPEATABILITY = 49,
    /** Solids of milk, per mass of milk or of drink. Unit: %. */
    CUPWRIGHT_QUANTITY_MILK_SOLIDS = 50,
    /** Caffeine in ground coffee as weighed. Unit: mg/g. */
    CUPWRIGHT_QUANTITY_CAFFEINE_CONTENT = 51,
    /** Caffeine in a drink. Unit: mg. */
    CUPWRIGHT_QUANTITY_CAFFEINE = 52,
    /** Water in spent grounds, per mass of wet grounds. Unit: %. */
    CUPWRIGHT_QUANTITY_SPENT_MOISTURE = 53,
    /** People to be served, or cups. Unit: none. */
    CUPWRIGHT_QUANTITY_SERVINGS = 54,
    /** Brews made one after the other in one chamber. Unit: none. */
    CUPWRIGHT_QUANTITY_BATCHES = 55,
    /** Repeated readings of one sample. Unit: none. */
    CUPWRIGHT_QUANTITY_READING_COUNT = 56,
    /** Brew left over when cups are filled. Unit: g. */
    CUPWRIGHT_QUANTITY_REST = 57,
    /** Solids that meet a liquid in one heat balance, where an interface has room for only so many. Unit: none. */
    CUPWRIGHT_QUANTITY_BODY_COUNT = 58,
    /** Standard uncertainty of a mass, or a limit or step that one is made from. Unit: g. */
    CUPWRIGHT_QUANTITY_MASS_UNCERTAINTY = 59,
    /** Standard uncertainty of a strength, or a limit or step that one is made from. Unit: %. */
    CUPWRIGHT_QUANTITY_STRENGTH_UNCERTAINTY = 60,
    /** Standard uncertainty of a yield, or a limit that one is made from. Unit: %. */
    CUPWRIGHT_QUANTITY_YIELD_UNCERTAINTY = 61,
    /** Standard uncertainty of a moisture, a held strength or another share, or a limit that one is made from. Unit: %. */
    CUPWRIGHT_QUANTITY_SHARE_UNCERTAINTY = 62,
    /** Standard uncertainty of a temperature, or a limit or step that one is made from. Unit: K. */
    CUPWRIGHT_QUANTITY_TEMPERATURE_UNCERTAINTY = 63,
    /** Standard uncertainty of the solids of water, or a limit that one is made from. Unit: mg/L. */
    CUPWRIGHT_QUANTITY_WATER_SOLIDS_UNCERTAINTY = 64,
    /** Standard uncertainty of a retention, or a limit that one is made from. Unit: g/g. */
    CUPWRIGHT_QUANTITY_RETENTION_UNCERTAINTY = 65,
    /** Standard uncertainty of a scale's span: a relative error common to all that it weighs. Unit: %. */
    CUPWRIGHT_QUANTITY_SPAN_UNCERTAINTY = 66,
    /** Standard uncertainty of a refractive factor over its value: common to all readings of one coffee. Unit: %. */
    CUPWRIGHT_QUANTITY_FACTOR_UNCERTAINTY = 67,
    /** Any value in a unit of its own. Unit: none. */
    CUPWRIGHT_QUANTITY_MEASURAND = 68,
    /** Standard uncertainty in the unit of its value, or a limit or step that one is made from. Unit: none. */
    CUPWRIGHT_QUANTITY_STANDARD_UNCERTAINTY = 69,
    /** How much a result changes with an input, in the units of the two. Unit: none. */
    CUPWRIGHT_QUANTITY_SENSITIVITY = 70,
    /** How well an uncertainty is itself known, as if from so many repeats and one more; the highest stands for as good as known. Unit: none. */
    CUPWRIGHT_QUANTITY_DEGREES_OF_FREEDOM = 71,
    /** How uncertain an uncertainty is, over itself. Unit: %. */
    CUPWRIGHT_QUANTITY_DOUBT = 72,
    /** How sure a statement has to be. Unit: %. */
    CUPWRIGHT_QUANTITY_CONFIDENCE = 73,
    /** Probability of a statement. Unit: %. */
    CUPWRIGHT_QUANTITY_PROBABILITY = 74,
    /** Expanded uncertainty over standard uncertainty. Unit: none. */
    CUPWRIGHT_QUANTITY_COVERAGE_FACTOR = 75,
    /** Correlation of two values' errors. Unit: none. */
    CUPWRIGHT_QUANTITY_CORRELATION = 76,
    /** Terms of an uncertainty budget, or series of repeats put together. Unit: none. */
    CUPWRIGHT_QUANTITY_TERM_COUNT = 77,
    /** Repeats whose scatter tells an uncertainty. Unit: none. */
    CUPWRIGHT_QUANTITY_REPEAT_COUNT = 78,
    /** Measurements from which something is learned. Unit: none. */
    CUPWRIGHT_QUANTITY_MEASUREMENTS = 80,
    /** Chamber hold-up as a line through several brews has it, which may come out a little below zero. Unit: g. */
    CUPWRIGHT_QUANTITY_FITTED_HOLD_UP = 81,
    /** Which cup a reading is of, where several cups were read several times each. Unit: none. */
    CUPWRIGHT_QUANTITY_CUP_NUMBER = 82,
    /** Standard uncertainty of a heat capacity. Unit: J/K. */
    CUPWRIGHT_QUANTITY_HEAT_CAPACITY_UNCERTAINTY = 83,
    /** Standard uncertainty of a cooling rate. Unit: 1/min. */
    CUPWRIGHT_QUANTITY_COOLING_RATE_UNCERTAINTY = 84,
    /** Standard uncertainty of a time constant over its value, which is that of its logarithm. Unit: none. */
    CUPWRIGHT_QUANTITY_TIME_CONSTANT_UNCERTAINTY = 85,
    /** Standard uncertainty of a Brix reading, or a limit or step that one is made from. Unit: °Bx. */
    CUPWRIGHT_QUANTITY_BRIX_UNCERTAINTY = 90,
    /** Standard uncertainty of a span of time. Unit: s. */
    CUPWRIGHT_QUANTITY_TIME_UNCERTAINTY = 91,
    /** Time on a clock that only goes forward, from any beginning. Unit: s. */
    CUPWRIGHT_QUANTITY_CLOCK = 100,
    /** What a scale shows, or would show: below zero after something was taken off. Unit: g. */
    CUPWRIGHT_QUANTITY_SCALE_READING = 101,
    /** The smallest step of a scale's reading. Unit: g. */
    CUPWRIGHT_QUANTITY_DIVISION = 102,
    /** The most that a scale can weigh. Unit: g. */
    CUPWRIGHT_QUANTITY_CAPACITY = 103,
    /** The fastest that water is poured: a reading that rises faster is something else. Unit: g/s. */
    CUPWRIGHT_QUANTITY_FASTEST_POUR = 104,
    /** How fast a reading rises. Unit: g/s. */
    CUPWRIGHT_QUANTITY_FLOW = 105,
    /** Water that was poured, as a scale saw it: its noise can bring it below zero. Unit: g. */
    CUPWRIGHT_QUANTITY_POURED = 106,
    /** A difference of two readings. Unit: g. */
    CUPWRIGHT_QUANTITY_CHANGE = 107,
    /** Weight of which a scale cannot say whether it is water. Unit: g. */
    CUPWRIGHT_QUANTITY_UNCLEAR = 108,
    /** How long before its time a cue is given. Unit: s. */
    CUPWRIGHT_QUANTITY_LEAD = 109,
    /** How much the flow of a pour wanders: its standard deviation over its mean. Unit: %. */
    CUPWRIGHT_QUANTITY_FLOW_VARIATION = 110,
    /** What lies on a scale since it was last set to zero, without noise. Unit: g. */
    CUPWRIGHT_QUANTITY_LEVEL = 111,
    /** How many steps a recipe that is followed on a scale has. Unit: none. */
    CUPWRIGHT_QUANTITY_STEP_COUNT = 112
};
#if !defined(__cplusplus) && __STDC_VERSION__ < 202311L
typedef int32_t cupwright_quantity;
#elif !defined(__cplusplus)
typedef enum cupwright_quantity cupwright_quantity;
#endif

/* The lowest and highest values accepted. */

/** Dose: 0.1 to 10000 g. Source: range chosen here: a tasting spoon to a catering brewer. */
#define CUPWRIGHT_DOSE_LOWEST 0.1
#define CUPWRIGHT_DOSE_HIGHEST 10000.0
/** Brew water: 0.1 to 200000 g. Source: range chosen here: a tasting spoon to a catering brewer. */
#define CUPWRIGHT_BREW_WATER_LOWEST 0.1
#define CUPWRIGHT_BREW_WATER_HIGHEST 200000.0
/** Beverage: 0.1 to 200000 g. Source: range chosen here: a tasting spoon to a catering brewer. */
#define CUPWRIGHT_BEVERAGE_LOWEST 0.1
#define CUPWRIGHT_BEVERAGE_HIGHEST 200000.0
/** Addition: 0 to 200000 g. Source: range chosen here: as for the beverage. */
#define CUPWRIGHT_ADDITION_LOWEST 0.0
#define CUPWRIGHT_ADDITION_HIGHEST 200000.0
/** Ice: 0 to 200000 g. Source: range chosen here: as for the beverage. */
#define CUPWRIGHT_ICE_LOWEST 0.0
#define CUPWRIGHT_ICE_HIGHEST 200000.0
/** Liquid: 0.1 to 400000 g. Source: range chosen here: beverage and addition together. */
#define CUPWRIGHT_LIQUID_LOWEST 0.1
#define CUPWRIGHT_LIQUID_HIGHEST 400000.0
/** Retained liquid: 0 to 250000 g. Source: range chosen here: more than any brew water with moisture. */
#define CUPWRIGHT_RETAINED_LOWEST 0.0
#define CUPWRIGHT_RETAINED_HIGHEST 250000.0
/** Vapour lost: 0 to 20000 g. Source: range chosen here: a tenth of the largest brew water. */
#define CUPWRIGHT_VAPOUR_LOWEST 0.0
#define CUPWRIGHT_VAPOUR_HIGHEST 20000.0
/** Chamber hold-up: 0 to 5000 g. Source: range chosen here. */
#define CUPWRIGHT_HOLD_UP_LOWEST 0.0
#define CUPWRIGHT_HOLD_UP_HIGHEST 5000.0
/** Drips lost: 0 to 5000 g. Source: range chosen here. */
#define CUPWRIGHT_DRIPS_LOWEST 0.0
#define CUPWRIGHT_DRIPS_HIGHEST 5000.0
/** Filter paper: 0 to 500 g. Source: range chosen here. */
#define CUPWRIGHT_PAPER_MASS_LOWEST 0.0
#define CUPWRIGHT_PAPER_MASS_HIGHEST 500.0
/** Paper uptake: 0 to 20 g/g. Source: range chosen here; no published value found, weigh a wet paper. */
#define CUPWRIGHT_PAPER_UPTAKE_LOWEST 0.0
#define CUPWRIGHT_PAPER_UPTAKE_HIGHEST 20.0
/** Apparent retention: 0 to 10 g/g. Source: range chosen here; published values 1.5 to 2.5. */
#define CUPWRIGHT_APPARENT_RETENTION_LOWEST 0.0
#define CUPWRIGHT_APPARENT_RETENTION_HIGHEST 10.0
/** True retention: 0 to 15 g/g. Source: range chosen here. */
#define CUPWRIGHT_TRUE_RETENTION_LOWEST 0.0
#define CUPWRIGHT_TRUE_RETENTION_HIGHEST 15.0
/** Volume: 0.1 to 250000 mL. Source: range chosen here. */
#define CUPWRIGHT_VOLUME_LOWEST 0.1
#define CUPWRIGHT_VOLUME_HIGHEST 250000.0
/** Grounds displacement: 0 to 5 mL/g. Source: range chosen here; no published value found, read the level before and after. */
#define CUPWRIGHT_DISPLACEMENT_LOWEST 0.0
#define CUPWRIGHT_DISPLACEMENT_HIGHEST 5.0
/** Water ratio: 0.2 to 200 g/g. Source: range chosen here. */
#define CUPWRIGHT_WATER_RATIO_LOWEST 0.2
#define CUPWRIGHT_WATER_RATIO_HIGHEST 200.0
/** Beverage ratio: 0.5 to 200 g/g. Source: range chosen here: no brew leaves less than half its dose. */
#define CUPWRIGHT_BEVERAGE_RATIO_LOWEST 0.5
#define CUPWRIGHT_BEVERAGE_RATIO_HIGHEST 200.0
/** Dose per litre: 4 to 5100 g/L. Source: range of the water ratio. */
#define CUPWRIGHT_DOSE_PER_LITRE_LOWEST 4.0
#define CUPWRIGHT_DOSE_PER_LITRE_HIGHEST 5100.0
/** Strength: 0 to 50 %. Source: range chosen here: far above any brew. */
#define CUPWRIGHT_STRENGTH_LOWEST 0.0
#define CUPWRIGHT_STRENGTH_HIGHEST 50.0
/** Yield: 0 to 100 %. Source: mass conservation; published soluble limits are near 30 %. */
#define CUPWRIGHT_YIELD_LOWEST 0.0
#define CUPWRIGHT_YIELD_HIGHEST 100.0
/** Moisture: 0 to 15 %. Source: range chosen here; roasted coffee 1 to 5 % (trade pages). */
#define CUPWRIGHT_MOISTURE_LOWEST 0.0
#define CUPWRIGHT_MOISTURE_HIGHEST 15.0
/** Water solids: 0 to 5000 mg/L. Source: range chosen here: above drinking water. */
#define CUPWRIGHT_WATER_SOLIDS_LOWEST 0.0
#define CUPWRIGHT_WATER_SOLIDS_HIGHEST 5000.0
/** Held strength: 0 to 100 %. Source: the two published forms of the mass balance. */
#define CUPWRIGHT_HELD_STRENGTH_LOWEST 0.0
#define CUPWRIGHT_HELD_STRENGTH_HIGHEST 100.0
/** Share: 0 to 100 %. Source: definition. */
#define CUPWRIGHT_SHARE_LOWEST 0.0
#define CUPWRIGHT_SHARE_HIGHEST 100.0
/** Time: 0 to 172800 s. Source: range chosen here: two days, for cold brews. */
#define CUPWRIGHT_TIME_LOWEST 0.0
#define CUPWRIGHT_TIME_HIGHEST 172800.0
/** Time constant: 0.1 to 1000000 s. Source: range chosen here. */
#define CUPWRIGHT_TIME_CONSTANT_LOWEST 0.1
#define CUPWRIGHT_TIME_CONSTANT_HIGHEST 1000000.0
/** Temperature: 0 to 105 °C. Source: liquid water at the accepted pressures; inside IAPWS SR6-08. */
#define CUPWRIGHT_TEMPERATURE_LOWEST 0.0
#define CUPWRIGHT_TEMPERATURE_HIGHEST 105.0
/** Room temperature: -20 to 50 °C. Source: range chosen here: a winter cart to a hot kitchen. */
#define CUPWRIGHT_ROOM_TEMPERATURE_LOWEST (-20.0)
#define CUPWRIGHT_ROOM_TEMPERATURE_HIGHEST 50.0
/** Vessel temperature: -40 to 105 °C. Source: range chosen here: freezer to boiling water. */
#define CUPWRIGHT_VESSEL_TEMPERATURE_LOWEST (-40.0)
#define CUPWRIGHT_VESSEL_TEMPERATURE_HIGHEST 105.0
/** Ice temperature: -40 to 0 °C. Source: range chosen here: below a freezer to melting. */
#define CUPWRIGHT_ICE_TEMPERATURE_LOWEST (-40.0)
#define CUPWRIGHT_ICE_TEMPERATURE_HIGHEST 0.0
/** Temperature drop: 0 to 105 K. Source: range of the temperature. */
#define CUPWRIGHT_TEMPERATURE_DROP_LOWEST 0.0
#define CUPWRIGHT_TEMPERATURE_DROP_HIGHEST 105.0
/** Air pressure: 50 to 110 kPa. Source: range chosen here: 5500 m to below sea level. */
#define CUPWRIGHT_PRESSURE_LOWEST 50.0
#define CUPWRIGHT_PRESSURE_HIGHEST 110.0
/** Vapour pressure: 0.6 to 125 kPa. Source: IAPWS-IF97 over the range of the temperature. */
#define CUPWRIGHT_VAPOUR_PRESSURE_LOWEST 0.6
#define CUPWRIGHT_VAPOUR_PRESSURE_HIGHEST 125.0
/** Altitude: -650 to 5550 m. Source: range chosen here: inhabited places, inside that of the pressure. */
#define CUPWRIGHT_ALTITUDE_LOWEST (-650.0)
#define CUPWRIGHT_ALTITUDE_HIGHEST 5550.0
/** Density: 950 to 1001 kg/m³. Source: IAPWS SR6-08 over the range of the temperature. */
#define CUPWRIGHT_DENSITY_LOWEST 950.0
#define CUPWRIGHT_DENSITY_HIGHEST 1001.0
/** Specific heat: 0.05 to 10 J/(g K). Source: range chosen here: metals to water. */
#define CUPWRIGHT_SPECIFIC_HEAT_LOWEST 0.05
#define CUPWRIGHT_SPECIFIC_HEAT_HIGHEST 10.0
/** Heat content: 0 to 441 J/g. Source: IAPWS SR6-08 over the range of the temperature. */
#define CUPWRIGHT_ENTHALPY_LOWEST 0.0
#define CUPWRIGHT_ENTHALPY_HIGHEST 441.0
/** Latent heat: 2200 to 2510 J/g. Source: IAPWS-95 over the range of the temperature. */
#define CUPWRIGHT_LATENT_HEAT_LOWEST 2200.0
#define CUPWRIGHT_LATENT_HEAT_HIGHEST 2510.0
/** Heat capacity: 0 to 1000000 J/K. Source: range chosen here. */
#define CUPWRIGHT_HEAT_CAPACITY_LOWEST 0.0
#define CUPWRIGHT_HEAT_CAPACITY_HIGHEST 1000000.0
/** Vessel: 0 to 100000 g. Source: range chosen here. */
#define CUPWRIGHT_VESSEL_MASS_LOWEST 0.0
#define CUPWRIGHT_VESSEL_MASS_HIGHEST 100000.0
/** Cooling rate: 0.000001 to 1 1/min. Source: range chosen here; measured open mugs 0.005 to 0.008. */
#define CUPWRIGHT_COOLING_RATE_LOWEST 1e-6
#define CUPWRIGHT_COOLING_RATE_HIGHEST 1.0
/** Humidity: 0 to 100 %. Source: definition. */
#define CUPWRIGHT_HUMIDITY_LOWEST 0.0
#define CUPWRIGHT_HUMIDITY_HIGHEST 100.0
/** Surface diameter: 10 to 1000 mm. Source: range chosen here. */
#define CUPWRIGHT_DIAMETER_LOWEST 10.0
#define CUPWRIGHT_DIAMETER_HIGHEST 1000.0
/** Brix: -2 to 30.5 °Bx. Source: range of the sucrose fit, its margin and a zero error. */
#define CUPWRIGHT_BRIX_LOWEST (-2.0)
#define CUPWRIGHT_BRIX_HIGHEST 30.5
/** Refractive index: 1.33 to 1.382. Source: range of the sucrose fit. */
#define CUPWRIGHT_REFRACTIVE_INDEX_LOWEST 1.33
#define CUPWRIGHT_REFRACTIVE_INDEX_HIGHEST 1.382
/** Refractive factor: 0.3 to 2 %/°Bx. Source: range chosen here; reported 0.85 to 1.5. */
#define CUPWRIGHT_REFRACTIVE_FACTOR_LOWEST 0.3
#define CUPWRIGHT_REFRACTIVE_FACTOR_HIGHEST 2.0
/** Sample temperature: 10 to 40 °C. Source: range of the correction's fit. */
#define CUPWRIGHT_SAMPLE_TEMPERATURE_LOWEST 10.0
#define CUPWRIGHT_SAMPLE_TEMPERATURE_HIGHEST 40.0
/** Repeatability: 0.0005 to 2 % strength. Source: range chosen here. */
#define CUPWRIGHT_REPEATABILITY_LOWEST 0.0005
#define CUPWRIGHT_REPEATABILITY_HIGHEST 2.0
/** Milk solids: 0 to 80 %. Source: range chosen here: skim to condensed. */
#define CUPWRIGHT_MILK_SOLIDS_LOWEST 0.0
#define CUPWRIGHT_MILK_SOLIDS_HIGHEST 80.0
/** Caffeine content: 0 to 45 mg/g. Source: range chosen here; green beans 8 to 40 mg/g dry. */
#define CUPWRIGHT_CAFFEINE_CONTENT_LOWEST 0.0
#define CUPWRIGHT_CAFFEINE_CONTENT_HIGHEST 45.0
/** Caffeine: 0 to 450000 mg. Source: range of dose and content. */
#define CUPWRIGHT_CAFFEINE_LOWEST 0.0
#define CUPWRIGHT_CAFFEINE_HIGHEST 450000.0
/** Spent-grounds moisture: 0 to 95 %. Source: range chosen here; published 50 to 85 % (10.1007/s12649-017-0061-4). */
#define CUPWRIGHT_SPENT_MOISTURE_LOWEST 0.0
#define CUPWRIGHT_SPENT_MOISTURE_HIGHEST 95.0
/** Servings: 1 to 1000. Source: range chosen here. */
#define CUPWRIGHT_SERVINGS_LOWEST 1.0
#define CUPWRIGHT_SERVINGS_HIGHEST 1000.0
/** Batches: 1 to 1000. Source: range chosen here. */
#define CUPWRIGHT_BATCHES_LOWEST 1.0
#define CUPWRIGHT_BATCHES_HIGHEST 1000.0
/** Readings: 1 to 10. Source: critical-range factors are given for 2 to 10. */
#define CUPWRIGHT_READING_COUNT_LOWEST 1.0
#define CUPWRIGHT_READING_COUNT_HIGHEST 10.0
/** Rest: 0 to 200000 g. Source: range chosen here: as for the beverage. */
#define CUPWRIGHT_REST_LOWEST 0.0
#define CUPWRIGHT_REST_HIGHEST 200000.0
/** Bodies: 0 to 8. Source: range chosen here: kettle, brewer, grounds, paper, cup and three more. */
#define CUPWRIGHT_BODY_COUNT_LOWEST 0.0
#define CUPWRIGHT_BODY_COUNT_HIGHEST 8.0
/** Uncertainty of a mass: 0 to 400000 g. Source: range chosen here: as for the largest mass. */
#define CUPWRIGHT_MASS_UNCERTAINTY_LOWEST 0.0
#define CUPWRIGHT_MASS_UNCERTAINTY_HIGHEST 400000.0
/** Uncertainty of a strength: 0 to 50 %. Source: range of the strength. */
#define CUPWRIGHT_STRENGTH_UNCERTAINTY_LOWEST 0.0
#define CUPWRIGHT_STRENGTH_UNCERTAINTY_HIGHEST 50.0
/** Uncertainty of a yield: 0 to 100 %. Source: range of the yield. */
#define CUPWRIGHT_YIELD_UNCERTAINTY_LOWEST 0.0
#define CUPWRIGHT_YIELD_UNCERTAINTY_HIGHEST 100.0
/** Uncertainty of a share: 0 to 100 %. Source: range of a share. */
#define CUPWRIGHT_SHARE_UNCERTAINTY_LOWEST 0.0
#define CUPWRIGHT_SHARE_UNCERTAINTY_HIGHEST 100.0
/** Uncertainty of a temperature: 0 to 105 K. Source: range of the temperature. */
#define CUPWRIGHT_TEMPERATURE_UNCERTAINTY_LOWEST 0.0
#define CUPWRIGHT_TEMPERATURE_UNCERTAINTY_HIGHEST 105.0
/** Uncertainty of water solids: 0 to 5000 mg/L. Source: range of the water solids. */
#define CUPWRIGHT_WATER_SOLIDS_UNCERTAINTY_LOWEST 0.0
#define CUPWRIGHT_WATER_SOLIDS_UNCERTAINTY_HIGHEST 5000.0
/** Uncertainty of a retention: 0 to 10 g/g. Source: range of the apparent retention. */
#define CUPWRIGHT_RETENTION_UNCERTAINTY_LOWEST 0.0
#define CUPWRIGHT_RETENTION_UNCERTAINTY_HIGHEST 10.0
/** Uncertainty of the scale's span: 0 to 50 %. Source: range chosen here. */
#define CUPWRIGHT_SPAN_UNCERTAINTY_LOWEST 0.0
#define CUPWRIGHT_SPAN_UNCERTAINTY_HIGHEST 50.0
/** Uncertainty of the refractive factor: 0 to 50 %. Source: range chosen here. */
#define CUPWRIGHT_FACTOR_UNCERTAINTY_LOWEST 0.0
#define CUPWRIGHT_FACTOR_UNCERTAINTY_HIGHEST 50.0
/** Measurand: -1000000000 to 1000000000. Source: range chosen here. */
#define CUPWRIGHT_MEASURAND_LOWEST (-1000000000.0)
#define CUPWRIGHT_MEASURAND_HIGHEST 1000000000.0
/** Standard uncertainty: 0 to 1000000000. Source: range chosen here: as for any value. */
#define CUPWRIGHT_STANDARD_UNCERTAINTY_LOWEST 0.0
#define CUPWRIGHT_STANDARD_UNCERTAINTY_HIGHEST 1000000000.0
/** Sensitivity: -1000000000000 to 1000000000000. Source: range chosen here. */
#define CUPWRIGHT_SENSITIVITY_LOWEST (-1000000000000.0)
#define CUPWRIGHT_SENSITIVITY_HIGHEST 1000000000000.0
/** Degrees of freedom: 1 to 1000000000. Source: GUM G.4; the highest chosen here. */
#define CUPWRIGHT_DEGREES_OF_FREEDOM_LOWEST 1.0
#define CUPWRIGHT_DEGREES_OF_FREEDOM_HIGHEST 1000000000.0
/** Doubt: 0 to 70 %. Source: one degree of freedom or more by GUM G.3. */
#define CUPWRIGHT_DOUBT_LOWEST 0.0
#define CUPWRIGHT_DOUBT_HIGHEST 70.0
/** Confidence: 50 to 99.9 %. Source: range chosen here. */
#define CUPWRIGHT_CONFIDENCE_LOWEST 50.0
#define CUPWRIGHT_CONFIDENCE_HIGHEST 99.9
/** Probability: 0 to 100 %. Source: definition. */
#define CUPWRIGHT_PROBABILITY_LOWEST 0.0
#define CUPWRIGHT_PROBABILITY_HIGHEST 100.0
/** Coverage factor: 0.5 to 1000. Source: Student t over the range of confidence. */
#define CUPWRIGHT_COVERAGE_FACTOR_LOWEST 0.5
#define CUPWRIGHT_COVERAGE_FACTOR_HIGHEST 1000.0
/** Correlation: -1 to 1. Source: definition. */
#define CUPWRIGHT_CORRELATION_LOWEST (-1.0)
#define CUPWRIGHT_CORRELATION_HIGHEST 1.0
/** Terms: 1 to 10. Source: range chosen here: the inputs of a mass balance. */
#define CUPWRIGHT_TERM_COUNT_LOWEST 1.0
#define CUPWRIGHT_TERM_COUNT_HIGHEST 10.0
/** Repeats: 2 to 100. Source: range chosen here; one alone has no scatter. */
#define CUPWRIGHT_REPEAT_COUNT_LOWEST 2.0
#define CUPWRIGHT_REPEAT_COUNT_HIGHEST 100.0
/** Measurements: 0 to 30. Source: range chosen here: a month of brews, and what a small device has room for. */
#define CUPWRIGHT_MEASUREMENTS_LOWEST 0.0
#define CUPWRIGHT_MEASUREMENTS_HIGHEST 30.0
/** Fitted hold-up: -5000 to 5000 g. Source: range of the hold-up, either side. */
#define CUPWRIGHT_FITTED_HOLD_UP_LOWEST (-5000.0)
#define CUPWRIGHT_FITTED_HOLD_UP_HIGHEST 5000.0
/** Cup number: 1 to 30. Source: as many as measurements. */
#define CUPWRIGHT_CUP_NUMBER_LOWEST 1.0
#define CUPWRIGHT_CUP_NUMBER_HIGHEST 30.0
/** Uncertainty of a heat capacity: 0 to 1000000 J/K. Source: range chosen here. */
#define CUPWRIGHT_HEAT_CAPACITY_UNCERTAINTY_LOWEST 0.0
#define CUPWRIGHT_HEAT_CAPACITY_UNCERTAINTY_HIGHEST 1000000.0
/** Uncertainty of a cooling rate: 0 to 10 1/min. Source: range chosen here. */
#define CUPWRIGHT_COOLING_RATE_UNCERTAINTY_LOWEST 0.0
#define CUPWRIGHT_COOLING_RATE_UNCERTAINTY_HIGHEST 10.0
/** Uncertainty of a time constant: 0 to 1000. Source: range chosen here. */
#define CUPWRIGHT_TIME_CONSTANT_UNCERTAINTY_LOWEST 0.0
#define CUPWRIGHT_TIME_CONSTANT_UNCERTAINTY_HIGHEST 1000.0
/** Uncertainty of a Brix reading: 0 to 32.5 °Bx. Source: range of the Brix. */
#define CUPWRIGHT_BRIX_UNCERTAINTY_LOWEST 0.0
#define CUPWRIGHT_BRIX_UNCERTAINTY_HIGHEST 32.5
/** Uncertainty of a time: 0 to 172800 s. Source: range of the time. */
#define CUPWRIGHT_TIME_UNCERTAINTY_LOWEST 0.0
#define CUPWRIGHT_TIME_UNCERTAINTY_HIGHEST 172800.0
/** Clock: 0 to 5000000000 s. Source: range chosen here: 32 bits of milliseconds a thousand times over. */
#define CUPWRIGHT_CLOCK_LOWEST 0.0
#define CUPWRIGHT_CLOCK_HIGHEST 5000000000.0
/** Scale reading: -100000 to 100000 g. Source: range chosen here. */
#define CUPWRIGHT_SCALE_READING_LOWEST (-100000.0)
#define CUPWRIGHT_SCALE_READING_HIGHEST 100000.0
/** Scale division: 0.001 to 10 g. Source: range chosen here. */
#define CUPWRIGHT_DIVISION_LOWEST 0.001
#define CUPWRIGHT_DIVISION_HIGHEST 10.0
/** Scale capacity: 10 to 100000 g. Source: range chosen here. */
#define CUPWRIGHT_CAPACITY_LOWEST 10.0
#define CUPWRIGHT_CAPACITY_HIGHEST 100000.0
/** Fastest pour: 2 to 100 g/s. Source: range chosen here. */
#define CUPWRIGHT_FASTEST_POUR_LOWEST 2.0
#define CUPWRIGHT_FASTEST_POUR_HIGHEST 100.0
/** Flow: -100000000 to 100000000 g/s. Source: range chosen here: a scale's range within a millisecond. */
#define CUPWRIGHT_FLOW_LOWEST (-100000000.0)
#define CUPWRIGHT_FLOW_HIGHEST 100000000.0
/** Water poured: -1000000000 to 1000000000 g. Source: range chosen here. */
#define CUPWRIGHT_POURED_LOWEST (-1000000000.0)
#define CUPWRIGHT_POURED_HIGHEST 1000000000.0
/** Change of weight: -1000000000 to 1000000000 g. Source: range chosen here. */
#define CUPWRIGHT_CHANGE_LOWEST (-1000000000.0)
#define CUPWRIGHT_CHANGE_HIGHEST 1000000000.0
/** Unclear weight: 0 to 1000000000 g. Source: range chosen here. */
#define CUPWRIGHT_UNCLEAR_LOWEST 0.0
#define CUPWRIGHT_UNCLEAR_HIGHEST 1000000000.0
/** Lead of a cue: 0 to 1.5 s. Source: range chosen here. */
#define CUPWRIGHT_LEAD_LOWEST 0.0
#define CUPWRIGHT_LEAD_HIGHEST 1.5
/** Flow variation: 0 to 100000 %. Source: range chosen here. */
#define CUPWRIGHT_FLOW_VARIATION_LOWEST 0.0
#define CUPWRIGHT_FLOW_VARIATION_HIGHEST 100000.0
/** Level of a scale: -1000000000 to 1000000000 g. Source: range chosen here. */
#define CUPWRIGHT_LEVEL_LOWEST (-1000000000.0)
#define CUPWRIGHT_LEVEL_HIGHEST 1000000000.0
/** Steps: 0 to 24. Source: range chosen here: a reading looks at all of them. */
#define CUPWRIGHT_STEP_COUNT_LOWEST 0.0
#define CUPWRIGHT_STEP_COUNT_HIGHEST 24.0

/* Constants with their sources. */

/** Below this chance a measurement is called suspicious. Common practice. */
#define CUPWRIGHT_SUSPICIOUS_CHANCE 0.05
/** How far weather may move the boiling point from the one an altitude alone gives, K. 0.277 K per kPa times a day's ±2.5 kPa (the swing is an estimate). */
#define CUPWRIGHT_ALTITUDE_ONLY_UNCERTAINTY_K 0.7
/** Yield at which a full steep levels off: "approximately 21 % over a wide range of brew ratios", 80 to 99 °C, any grind (Liang, Chan & Ristenpart 2021, abstract). One coffee's own may differ; pass it instead where it is known. */
#define CUPWRIGHT_EQUILIBRIUM_YIELD_PCT 21.0
/** Lowest published limit of what hot water dissolves from roasted coffee: 28 to 32 % for fine and coarse grinds (trade-education text quoting "recent experiments"); "roughly 30 %" (ITC Coffee Guide, Q&A 064). */
#define CUPWRIGHT_SOLUBLE_LIMIT_LOW_PCT 28.0
/** Highest of the limits in that range; Lockhart 1957 is quoted with 32 %, and with 36, 30 and 29 % for complete extraction of three origins. */
#define CUPWRIGHT_SOLUBLE_LIMIT_HIGH_PCT 32.0
/** How near, in points of yield, counts as near the limit. Estimate. */
#define CUPWRIGHT_NEAR_LIMIT_POINTS 2.0
/** Specific heat of roasted ground coffee, 1.6 ± 0.3 J/(g K). Estimate, between composition formulas (1.4 to 1.9); the uncertainty moves a 1:16 brew by 0.4 K. */
#define CUPWRIGHT_GROUNDS_J_PER_G_K 1.6
/** Specific heat of milk, J/(g K): 3.89 whole, 3.97 skim (Choi–Okos composition; 3.85 and 3.98 to 4.02 in Geankoplis, table A.4). The mean is used. */
#define CUPWRIGHT_MILK_J_PER_G_K 3.93
/** Heat lost by a thin stream of a few grams a second over 10 to 15 cm. Estimate, ±50 %. */
#define CUPWRIGHT_THIN_STREAM_DROP_K 1.0
/** Heat lost by water dumped in at once. Estimate, ±50 %. */
#define CUPWRIGHT_DUMP_DROP_K 0.4
/** Weight of the vapour term against the temperature term for an open cup, K/kPa. Chosen on five measured cooling curves and one computed one; anything from 4 to 10 stays within 1.2 K over half an hour once the rate is calibrated. Estimate. */
#define CUPWRIGHT_OPEN_CUP_K_PER_KPA 6.0
/** Heat that leaves an open cup with its vapour, W per m² of surface and kPa. Estimate, fitted here. */
#define CUPWRIGHT_OPEN_CUP_W_PER_M2_KPA 218.0
/** The usual factor from degrees Brix to coffee strength, 0.85. Weak basis: trade convention found only in notes that were not peer-reviewed; a textbook's espresso data imply 1.15 to 1.50 for total solids. Calibrate against oven-dried samples where it matters. An uncertainty of 0.02 is common to all readings of one coffee, so it hardly touches the difference of two brews. */
#define CUPWRIGHT_USUAL_REFRACTIVE_FACTOR_PCT_PER_BRIX 0.85
/** Above this a drink counts as very hot: IARC Monograph 116 (2016), as reported. */
#define CUPWRIGHT_VERY_HOT_DRINK_C 65.0
/** From here a serious burn takes ten seconds or less; see time_to_burn. */
#define CUPWRIGHT_SCALDING_C 57.0
/** "Single doses of caffeine up to 200 mg … do not give rise to safety concerns" for healthy adults: EFSA Journal 2015;13(5):4102. */
#define CUPWRIGHT_SINGLE_DOSE_CAFFEINE_MG 200.0
/** "Up to 400 mg per day does not give rise to safety concerns for non-pregnant adults": the same opinion, as reported by a law digest. The digests give 200 mg a day in pregnancy. */
#define CUPWRIGHT_DAILY_CAFFEINE_MG 400.0
/** Specific heat of borosilicate glass, J/(g K). Source: Callister 0.85; a properties table 0.84; an engineering data handbook 0.753. */
#define CUPWRIGHT_BOROSILICATE_GLASS_J_PER_G_K 0.83
/** Specific heat of soda-lime glass, J/(g K). Source: Callister 0.84; a properties table 0.82; EN 12524 0.75. */
#define CUPWRIGHT_SODA_LIME_GLASS_J_PER_G_K 0.84
/** Specific heat of porcelain or stoneware, J/(g K). Source: EN 12524 tile 0.84; clay and pottery 0.92; a materials table 1.05. */
#define CUPWRIGHT_PORCELAIN_OR_STONEWARE_J_PER_G_K 0.9
/** Specific heat of stainless steel, J/(g K). Source: EN 12524 0.46; Crawford 0.49; a materials table 0.50. */
#define CUPWRIGHT_STAINLESS_STEEL_J_PER_G_K 0.5
/** Specific heat of aluminium, J/(g K). Source: EN 12524 alloys 0.88; handbook 0.897; alloy 6061 0.896. */
#define CUPWRIGHT_ALUMINIUM_J_PER_G_K 0.9
/** Specific heat of polypropylene, J/(g K). Source: EN 12524 1.8; Crawford 2.0; a materials table 1.7. */
#define CUPWRIGHT_POLYPROPYLENE_J_PER_G_K 1.8
/** Specific heat of polycarbonate, J/(g K). Source: EN 12524 1.2; Crawford 1.2. */
#define CUPWRIGHT_POLYCARBONATE_J_PER_G_K 1.2
/** Specific heat of copolyester, J/(g K). Source: estimate, ±0.2, from PET 1.0 to 1.25 and polycarbonate. */
#define CUPWRIGHT_COPOLYESTER_J_PER_G_K 1.3
/** Specific heat of silicone rubber, J/(g K). Source: EN 12524 1.0; rounded up, estimate. */
#define CUPWRIGHT_SILICONE_RUBBER_J_PER_G_K 1.1
/** Specific heat of dry filter paper, J/(g K). Source: Wood Handbook 2010: 0.1031 + 0.003867 T/K, 1.24 at 20 °C to 1.51 at 90 °C. */
#define CUPWRIGHT_DRY_FILTER_PAPER_J_PER_G_K 1.34

/* Published windows: initialisers of a cupwright_window. */

/** SCAA Standard "Golden Cup", revision of 23 December 2015. */
#define CUPWRIGHT_GOLDEN_CUP_2015 { 1.15, 1.35, 18.0, 22.0, 1, 2 }
/** SCA certified home brewer program, news of 22 April 2018. */
#define CUPWRIGHT_HOME_BREWER_2018 { 1.15, 1.45, 18.0, 22.0, 1, 2 }


/**
 * Version of the interface's layout: function signatures, structs and the meaning of codes. A program
 * made with one does not fit a library with another. Compare with cupwright_abi_version().
 */
#define CUPWRIGHT_ABI_VERSION 1

/**
 * Length of a profile in bytes.
 */
#define CUPWRIGHT_PROFILE_BYTES 368

/**
 * Length of a scale's state as bytes.
 */
#define CUPWRIGHT_SCALE_BYTES 624

/**
 * Length of a follower's state as bytes.
 */
#define CUPWRIGHT_FOLLOWER_BYTES 784

/**
 * Whether a function answered, and if not, why. A value never changes its meaning and is never used
 * again for another.
 */
enum cupwright_status
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
    /**
     * It answered.
     */
    CUPWRIGHT_STATUS_OK = 0,
    /**
     * An input is outside its range, or not a number.
     */
    CUPWRIGHT_STATUS_OUT_OF_RANGE = 1,
    /**
     * A count is not a whole number. Not from C, where counts are integers.
     */
    CUPWRIGHT_STATUS_NOT_WHOLE = 2,
    /**
     * An input is in its range, but impossible beside another one.
     */
    CUPWRIGHT_STATUS_IMPOSSIBLE = 3,
    /**
     * A band's lowest edge is not below its highest.
     */
    CUPWRIGHT_STATUS_EMPTY_BAND = 4,
    /**
     * What follows from the inputs leaves its range.
     */
    CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE = 5,
    /**
     * A wish cannot be met; the error's `nearest` can.
     */
    CUPWRIGHT_STATUS_INFEASIBLE = 6,
    /**
     * A pointer that is needed is NULL.
     */
    CUPWRIGHT_STATUS_NULL = 7,
    /**
     * A field that stands for a choice has a value that is none of them.
     */
    CUPWRIGHT_STATUS_UNKNOWN_CHOICE = 8,
    /**
     * An error that this version of the interface has no name for.
     */
    CUPWRIGHT_STATUS_UNNAMED = 9,
    /**
     * Measurements that cannot tell what they are for; the error's `limit` says why.
     */
    CUPWRIGHT_STATUS_CANNOT_TELL = 10,
    /**
     * Bytes of something else than is read from them, or damaged ones; the error's `limit` says which.
     */
    CUPWRIGHT_STATUS_UNREADABLE = 11,
    /**
     * A state that was never begun, or one of another version of this library.
     */
    CUPWRIGHT_STATUS_NOT_BEGUN = 12,
    /**
     * A profile that lacks a part which the answer needs; the error's `field` names it.
     */
    CUPWRIGHT_STATUS_NOT_KEPT = 13,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum cupwright_status cupwright_status;
#else
typedef int32_t cupwright_status;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

/**
 * What stands in the way of a wish, in the `limit` of an error.
 */
enum cupwright_limit
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
    /**
     * Adding water only ever weakens.
     */
    CUPWRIGHT_LIMIT_ADDING_WATER_WEAKENS = 1,
    /**
     * No amount of the water brings the strength so low.
     */
    CUPWRIGHT_LIMIT_NO_WATER_IS_ENOUGH = 2,
    /**
     * Even boiling water does not arrive so hot.
     */
    CUPWRIGHT_LIMIT_BOILING_POINT = 3,
    /**
     * The chamber cannot hold it.
     */
    CUPWRIGHT_LIMIT_CHAMBER = 4,
    /**
     * The coffee cannot give so much at the yield expected.
     */
    CUPWRIGHT_LIMIT_COFFEE_GIVES_NO_MORE = 5,
    /**
     * There is not enough of the brew.
     */
    CUPWRIGHT_LIMIT_BREW_ON_HAND = 6,
    /**
     * The drink is colder than that when it is made.
     */
    CUPWRIGHT_LIMIT_HEAT_LEFT = 7,
    /**
     * Cooling in this room ends above the wish.
     */
    CUPWRIGHT_LIMIT_SURROUNDINGS = 8,
    /**
     * The ice cannot take up so much heat, or there is not enough heat to melt so much.
     */
    CUPWRIGHT_LIMIT_ICE_AND_HEAT = 9,
    /**
     * Extraction never gets there at this equilibrium yield.
     */
    CUPWRIGHT_LIMIT_EQUILIBRIUM_YIELD = 10,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum cupwright_limit cupwright_limit;
#else
typedef int32_t cupwright_limit;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

/**
 * Why measurements cannot tell, in the `limit` of an error. Its `value` is how much there is of what
 * is wanting, its `lowest` how much is needed for a start: cupwright_wanting_text().
 */
enum cupwright_untold
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
    /**
     * Too few measurements.
     */
    CUPWRIGHT_UNTOLD_TOO_FEW = 1,
    /**
     * All doses alike, or nearly so, so that only what is kept in all is known.
     */
    CUPWRIGHT_UNTOLD_ONE_DOSE = 2,
    /**
     * What it is told by does not vary, or is all zero.
     */
    CUPWRIGHT_UNTOLD_NO_SPAN = 3,
    /**
     * The yield has not begun to level off, so where it will is not known.
     */
    CUPWRIGHT_UNTOLD_STILL_RISING = 4,
    /**
     * The yield has levelled off before the first measurement.
     */
    CUPWRIGHT_UNTOLD_LEVELLED_OFF = 5,
    /**
     * One rate describes the measurements as well as two.
     */
    CUPWRIGHT_UNTOLD_ONE_RATE = 6,
    /**
     * The yield falls with time, which no extraction does.
     */
    CUPWRIGHT_UNTOLD_FALLING = 7,
    /**
     * The readings rise, or follow no cooling at all.
     */
    CUPWRIGHT_UNTOLD_NOT_COOLING = 8,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum cupwright_untold cupwright_untold;
#else
typedef int32_t cupwright_untold;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

/**
 * Why bytes cannot be read, in the `limit` of an error: cupwright_unreadable_text().
 */
enum cupwright_unreadable
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
    /**
     * Not as many bytes as there should be; the error's `value` is how many there are.
     */
    CUPWRIGHT_UNREADABLE_LENGTH = 1,
    /**
     * They do not begin as they should: they are something else.
     */
    CUPWRIGHT_UNREADABLE_FOREIGN = 2,
    /**
     * A version of the layout that this library does not know; the error's `value` is which.
     */
    CUPWRIGHT_UNREADABLE_VERSION = 3,
    /**
     * Some of them have changed since they were written; the error's `value` is the check value there.
     */
    CUPWRIGHT_UNREADABLE_DAMAGED = 4,
    /**
     * The check value is right, but something lies where this version has nothing.
     */
    CUPWRIGHT_UNREADABLE_NOT_BLANK = 5,
    /**
     * The check value is right, but no such state can be.
     */
    CUPWRIGHT_UNREADABLE_UNSOUND = 6,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum cupwright_unreadable cupwright_unreadable;
#else
typedef int32_t cupwright_unreadable;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

/**
 * What can hurt. Plain words: cupwright_caution_text(). A set of cautions is a uint32_t with bit 1
 * << n for the caution n. They defer to local codes, the equipment's instructions and licensed
 * practice.
 */
enum cupwright_caution
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
    /**
     * Liquid at or above CUPWRIGHT_SCALDING_C.
     */
    CUPWRIGHT_CAUTION_SCALD = 1,
    /**
     * A drink above CUPWRIGHT_VERY_HOT_DRINK_C.
     */
    CUPWRIGHT_CAUTION_VERY_HOT_DRINK = 2,
    /**
     * Hot liquid pressed by hand.
     */
    CUPWRIGHT_CAUTION_PRESSING = 3,
    /**
     * Glass that meets hot or cold liquid.
     */
    CUPWRIGHT_CAUTION_GLASS_SHOCK = 4,
    /**
     * More caffeine in a serving than CUPWRIGHT_SINGLE_DOSE_CAFFEINE_MG.
     */
    CUPWRIGHT_CAUTION_CAFFEINE = 5,
    /**
     * Milk in the drink.
     */
    CUPWRIGHT_CAUTION_MILK = 6,
    /**
     * Ice in the drink.
     */
    CUPWRIGHT_CAUTION_ICE = 7,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum cupwright_caution cupwright_caution;
#else
typedef int32_t cupwright_caution;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

/**
 * How fast hot water burns adult skin seriously.
 */
enum cupwright_burn
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
    /**
     * Below 48.9 °C. Long contact still burns.
     */
    CUPWRIGHT_BURN_MORE_THAN_FIVE_MINUTES = 1,
    /**
     * In so much time.
     */
    CUPWRIGHT_BURN_WITHIN = 2,
    /**
     * Above 68 °C.
     */
    CUPWRIGHT_BURN_UNDER_ONE_SECOND = 3,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum cupwright_burn cupwright_burn;
#else
typedef int32_t cupwright_burn;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

/**
 * How credible a yield is beside what coffee has been shown to give.
 */
enum cupwright_credibility
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
    /**
     * Nothing speaks against it.
     */
    CUPWRIGHT_CREDIBILITY_ORDINARY = 1,
    /**
     * Within two points of the published soluble limit: check the inputs.
     */
    CUPWRIGHT_CREDIBILITY_NEAR_LIMIT = 2,
    /**
     * Inside the range of soluble limits, 28 to 32 %: an input is probably wrong.
     */
    CUPWRIGHT_CREDIBILITY_AT_LIMIT = 3,
    /**
     * Above 32 %: an input is almost certainly wrong.
     */
    CUPWRIGHT_CREDIBILITY_BEYOND_LIMIT = 4,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum cupwright_credibility cupwright_credibility;
#else
typedef int32_t cupwright_credibility;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

/**
 * Whether vapour can leave the surface.
 */
enum cupwright_cover
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
    /**
     * Open to the air: about half of the heat leaves as vapour.
     */
    CUPWRIGHT_COVER_OPEN = 1,
    /**
     * Lidded, or a closed brewer.
     */
    CUPWRIGHT_COVER_LIDDED = 2,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum cupwright_cover cupwright_cover;
#else
typedef int32_t cupwright_cover;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

/**
 * What is known of the air.
 */
enum cupwright_air
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
    /**
     * A barometer's station pressure.
     */
    CUPWRIGHT_AIR_PRESSURE = 1,
    /**
     * Only the altitude: the boiling point is uncertain by the weather.
     */
    CUPWRIGHT_AIR_ALTITUDE = 2,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum cupwright_air cupwright_air;
#else
typedef int32_t cupwright_air;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

/**
 * What the slurry's temperature at the end of contact rests on.
 */
enum cupwright_contact_heat
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
    /**
     * The brewer's cooling rate.
     */
    CUPWRIGHT_CONTACT_HEAT_COOLING_RATE = 1,
    /**
     * The heat of the vapour lost and nothing else: the most that it can be.
     */
    CUPWRIGHT_CONTACT_HEAT_AT_MOST = 2,
    /**
     * Nothing: the slurry is not warmer than the room, and warming is not modelled.
     */
    CUPWRIGHT_CONTACT_HEAT_UNCHANGED = 3,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum cupwright_contact_heat cupwright_contact_heat;
#else
typedef int32_t cupwright_contact_heat;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

/**
 * What repeated readings amount to.
 */
enum cupwright_agreement
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
    /**
     * They agree: the value is their mean.
     */
    CUPWRIGHT_AGREEMENT_MEAN = 1,
    /**
     * A single reading, or two that differ by more than the critical range: take another.
     */
    CUPWRIGHT_AGREEMENT_TAKE_ANOTHER = 2,
    /**
     * Three or more differ by more than the critical range: the value is their median. Look for a
     * reason before trusting it.
     */
    CUPWRIGHT_AGREEMENT_MEDIAN = 3,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum cupwright_agreement cupwright_agreement;
#else
typedef int32_t cupwright_agreement;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

/**
 * What a refractometer was zeroed on.
 */
enum cupwright_zero
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
    /**
     * Distilled water: the reading holds the brew water's minerals too.
     */
    CUPWRIGHT_ZERO_DISTILLED = 1,
    /**
     * The brew water: the reading is of coffee alone.
     */
    CUPWRIGHT_ZERO_BREW_WATER = 2,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum cupwright_zero cupwright_zero;
#else
typedef int32_t cupwright_zero;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

/**
 * On which side of a band a value lies. The edges are inside.
 */
enum cupwright_side
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
    /**
     * Below the lowest edge.
     */
    CUPWRIGHT_SIDE_BELOW = 1,
    /**
     * Inside, edges included.
     */
    CUPWRIGHT_SIDE_INSIDE = 2,
    /**
     * Above the highest edge.
     */
    CUPWRIGHT_SIDE_ABOVE = 3,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum cupwright_side cupwright_side;
#else
typedef int32_t cupwright_side;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

/**
 * What is known of an error inside its limits.
 */
enum cupwright_shape
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
    /**
     * Nothing: all values inside are as likely. A specification, a rounding.
     */
    CUPWRIGHT_SHAPE_RECTANGULAR = 1,
    /**
     * Values near the middle are likelier.
     */
    CUPWRIGHT_SHAPE_TRIANGULAR = 2,
    /**
     * It swings between the limits. A thermostat.
     */
    CUPWRIGHT_SHAPE_ARCSINE = 3,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum cupwright_shape cupwright_shape;
#else
typedef int32_t cupwright_shape;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

/**
 * What can be said of a value beside a band.
 */
enum cupwright_decision
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
    /**
     * Inside, as surely as was asked.
     */
    CUPWRIGHT_DECISION_INSIDE = 1,
    /**
     * Below the lowest edge, as surely as was asked.
     */
    CUPWRIGHT_DECISION_BELOW = 2,
    /**
     * Above the highest edge, as surely as was asked.
     */
    CUPWRIGHT_DECISION_ABOVE = 3,
    /**
     * Not yet decided: too near an edge.
     */
    CUPWRIGHT_DECISION_NOT_YET = 4,
    /**
     * Not decided, and so uncertain beside so narrow a band that no number could be called inside.
     */
    CUPWRIGHT_DECISION_TOO_UNCERTAIN = 5,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum cupwright_decision cupwright_decision;
#else
typedef int32_t cupwright_decision;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

/**
 * How many readings decide.
 */
enum cupwright_needed
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
    /**
     * So many in all.
     */
    CUPWRIGHT_NEEDED_READINGS = 1,
    /**
     * More than ten.
     */
    CUPWRIGHT_NEEDED_MORE_THAN_TEN = 2,
    /**
     * None: what they do not lessen is too large by itself, or the mean lies on an edge.
     */
    CUPWRIGHT_NEEDED_NONE_IS_ENOUGH = 3,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum cupwright_needed cupwright_needed;
#else
typedef int32_t cupwright_needed;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

/**
 * What can be said of strength and yield together.
 */
enum cupwright_joint_decision
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
    /**
     * Both inside, as surely as was asked.
     */
    CUPWRIGHT_JOINT_DECISION_INSIDE = 1,
    /**
     * One of them or both outside, as surely as was asked: which, each says for itself.
     */
    CUPWRIGHT_JOINT_DECISION_OUTSIDE = 2,
    /**
     * Not yet decided.
     */
    CUPWRIGHT_JOINT_DECISION_NOT_YET = 3,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum cupwright_joint_decision cupwright_joint_decision;
#else
typedef int32_t cupwright_joint_decision;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

/**
 * What a suggestion changes.
 */
enum cupwright_change
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
    /**
     * This cup, nothing.
     */
    CUPWRIGHT_CHANGE_DRINK_AS_IT_IS = 1,
    /**
     * This cup, water added: takes for granted that it is stirred in.
     */
    CUPWRIGHT_CHANGE_ADD_WATER = 2,
    /**
     * This cup, milk added: as for water; the strength is that of the coffee in the drink.
     */
    CUPWRIGHT_CHANGE_ADD_MILK = 3,
    /**
     * The next brew, nothing: takes for granted that it extracts and keeps as this one did.
     */
    CUPWRIGHT_CHANGE_SAME_AGAIN = 4,
    /**
     * The next brew, the dose: as before, though a larger bed may extract less.
     */
    CUPWRIGHT_CHANGE_DOSE = 5,
    /**
     * The next brew, the water: as before.
     */
    CUPWRIGHT_CHANGE_WATER = 6,
    /**
     * The next brew, the time of contact: takes for granted that the rates learned hold for this
     * coffee, at this grind and temperature.
     */
    CUPWRIGHT_CHANGE_TIME = 7,
    /**
     * The next brew, the time of contact and the dose: as for each.
     */
    CUPWRIGHT_CHANGE_TIME_WITH_DOSE = 8,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum cupwright_change cupwright_change;
#else
typedef int32_t cupwright_change;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

/**
 * Which way to turn what has no number. No rate of temperature was published; a grind has no
 * number that holds for two grinders.
 */
enum cupwright_direction
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
    /**
     * Leave it: the yield lies in its band as surely as asked, or the window has none.
     */
    CUPWRIGHT_DIRECTION_LEAVE = 1,
    /**
     * Extract more: grind finer.
     */
    CUPWRIGHT_DIRECTION_MORE = 2,
    /**
     * Extract less: grind coarser.
     */
    CUPWRIGHT_DIRECTION_LESS = 3,
    /**
     * Read again first: at the confidence asked for it is not decided where the yield lies.
     */
    CUPWRIGHT_DIRECTION_NOT_YET_DECIDED = 4,
    /**
     * Nothing to say: the window does not state how it counts its yield, and only the strength was
     * judged.
     */
    CUPWRIGHT_DIRECTION_COUNTING_NOT_STATED = 5,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum cupwright_direction cupwright_direction;
#else
typedef int32_t cupwright_direction;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

/**
 * How a window counts the yield of a cup. Two counts of one cup differ by up to three points.
 */
enum cupwright_counting
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
    /**
     * Its source does not say: then no forecast and no advice judges the yield.
     */
    CUPWRIGHT_COUNTING_NOT_STATED = 1,
    /**
     * As the brewing control chart does: cupwright_extraction_flow_through_yield().
     */
    CUPWRIGHT_COUNTING_FLOW_THROUGH = 2,
    /**
     * By the whole balance at the brewer's own held strength: cupwright_extraction_yield().
     */
    CUPWRIGHT_COUNTING_MASS_BALANCE = 3,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum cupwright_counting cupwright_counting;
#else
typedef int32_t cupwright_counting;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

/**
 * What is going on.
 */
enum cupwright_doing
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
    /**
     * Nothing but drift.
     */
    CUPWRIGHT_DOING_STILL = 1,
    /**
     * Water is poured.
     */
    CUPWRIGHT_DOING_POURING = 2,
    /**
     * A pour has just ended.
     */
    CUPWRIGHT_DOING_SETTLING = 3,
    /**
     * Water comes too slowly to be a pour.
     */
    CUPWRIGHT_DOING_DRIPPING = 4,
    /**
     * Something is moved, stirred or knocked.
     */
    CUPWRIGHT_DOING_DISTURBED = 5,
    /**
     * A hand presses.
     */
    CUPWRIGHT_DOING_PRESSED = 6,
    /**
     * More lies on the scale than it can weigh.
     */
    CUPWRIGHT_DOING_OVERLOADED = 7,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum cupwright_doing cupwright_doing;
#else
typedef int32_t cupwright_doing;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

/**
 * What can happen, and what its event_change_g is.
 */
enum cupwright_happening
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
    /**
     * A pour began: what it has brought so far.
     */
    CUPWRIGHT_HAPPENING_POUR_STARTED = 1,
    /**
     * A pour ended: what it brought.
     */
    CUPWRIGHT_HAPPENING_POUR_STOPPED = 2,
    /**
     * The water of a pour has come to rest: what that pour brought in the end.
     */
    CUPWRIGHT_HAPPENING_SETTLED = 3,
    /**
     * Water began to come slowly: what it has brought so far.
     */
    CUPWRIGHT_HAPPENING_DRIP_STARTED = 4,
    /**
     * It no longer does: what it brought.
     */
    CUPWRIGHT_HAPPENING_DRIP_STOPPED = 5,
    /**
     * The display was set to zero: the change of the reading.
     */
    CUPWRIGHT_HAPPENING_TARED = 6,
    /**
     * Something was put down: its weight.
     */
    CUPWRIGHT_HAPPENING_PLACED = 7,
    /**
     * Something was taken off: the change, below zero.
     */
    CUPWRIGHT_HAPPENING_LIFTED = 8,
    /**
     * It was put back: what it is heavier than before.
     */
    CUPWRIGHT_HAPPENING_RETURNED = 9,
    /**
     * The reading changed, and that may have been water or not: the change.
     */
    CUPWRIGHT_HAPPENING_UNCLEAR = 10,
    /**
     * Something moved, was stirred or knocked: how far the reading is off. A pour that was told and has not come to
     * rest was none if the reading has fallen back to where it began: it brought nothing, as poured_g says.
     */
    CUPWRIGHT_HAPPENING_DISTURBED = 11,
    /**
     * A hand presses: how much. What was put down since is the hand, and a pour that goes on none.
     */
    CUPWRIGHT_HAPPENING_PRESSED = 12,
    /**
     * The hand let go: what is left of the press.
     */
    CUPWRIGHT_HAPPENING_RELEASED = 13,
    /**
     * More than the scale can weigh: the reading.
     */
    CUPWRIGHT_HAPPENING_OVERLOADED = 14,
    /**
     * No readings came for a while: what has changed meanwhile.
     */
    CUPWRIGHT_HAPPENING_LOST = 15,
    /**
     * The reading has drifted: how far since this was last told.
     */
    CUPWRIGHT_HAPPENING_DRIFTED = 16,
    /**
     * The reading has been restless for a minute, a fault or a scale that is carried: how far it is
     * off.
     */
    CUPWRIGHT_HAPPENING_RESTLESS = 17,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum cupwright_happening cupwright_happening;
#else
typedef int32_t cupwright_happening;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

/**
 * A step of a recipe as a scale can follow it.
 */
enum cupwright_step
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
    /**
     * Rinse the paper; the water is thrown away. Over when the vessel is lifted.
     */
    CUPWRIGHT_STEP_RINSE = 1,
    /**
     * Weigh the coffee: dose_g.
     */
    CUPWRIGHT_STEP_DOSE = 2,
    /**
     * Pour until there is so much water in all: to_g, not before from_s.
     */
    CUPWRIGHT_STEP_POUR = 3,
    /**
     * Stir, or swirl: not before from_s.
     */
    CUPWRIGHT_STEP_STIR = 4,
    /**
     * Wait: until_s.
     */
    CUPWRIGHT_STEP_WAIT = 5,
    /**
     * Press by hand, or let it drain.
     */
    CUPWRIGHT_STEP_PRESS = 6,
    /**
     * Weigh what has come out: vessel_g. Put down, or left where it stands when the brewer is lifted off
     * it, of which the weight tells where the scale began empty.
     */
    CUPWRIGHT_STEP_BEVERAGE = 7,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum cupwright_step cupwright_step;
#else
typedef int32_t cupwright_step;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

/**
 * What to do now.
 */
enum cupwright_cue
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
    /**
     * Nothing: there is no recipe, or it is done.
     */
    CUPWRIGHT_CUE_NOTHING = 0,
    /**
     * Rinse the paper and throw the water away.
     */
    CUPWRIGHT_CUE_RINSE = 1,
    /**
     * Add coffee.
     */
    CUPWRIGHT_CUE_ADD_COFFEE = 2,
    /**
     * Pour.
     */
    CUPWRIGHT_CUE_POUR = 3,
    /**
     * Stop pouring.
     */
    CUPWRIGHT_CUE_STOP_POURING = 4,
    /**
     * Stir.
     */
    CUPWRIGHT_CUE_STIR = 5,
    /**
     * Wait.
     */
    CUPWRIGHT_CUE_WAIT = 6,
    /**
     * Press.
     */
    CUPWRIGHT_CUE_PRESS = 7,
    /**
     * Weigh what has come out.
     */
    CUPWRIGHT_CUE_WEIGH_BEVERAGE = 8,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum cupwright_cue cupwright_cue;
#else
typedef int32_t cupwright_cue;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

/**
 * Why a cue is given.
 */
enum cupwright_why
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
    /**
     * It is next in the recipe.
     */
    CUPWRIGHT_WHY_NEXT = 1,
    /**
     * Its time has come.
     */
    CUPWRIGHT_WHY_TIME = 2,
    /**
     * It is too early for what comes next.
     */
    CUPWRIGHT_WHY_EARLY = 3,
    /**
     * What flows and falls until the hand has stopped makes up the rest.
     */
    CUPWRIGHT_WHY_LEAD = 4,
    /**
     * There is enough.
     */
    CUPWRIGHT_WHY_ENOUGH = 5,
    /**
     * There is more than wanted.
     */
    CUPWRIGHT_WHY_TOO_MUCH = 6,
    /**
     * Some is still missing.
     */
    CUPWRIGHT_WHY_MISSING = 7,
    /**
     * The scale cannot say how much water there is: unclear_g.
     */
    CUPWRIGHT_WHY_UNCLEAR = 8,
    /**
     * Nothing is left to do.
     */
    CUPWRIGHT_WHY_DONE = 9,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum cupwright_why cupwright_why;
#else
typedef int32_t cupwright_why;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

/**
 * What became of a row of columns. Between the two: the first input that is not accepted, counted from 1 in
 * the order of the function's columns.
 *
 * The functions cupwright_columns_...() call a formula for each row. Columns are arrays of `count` numbers,
 * in the caller's memory, and may hold bad numbers; none may overlap with one that is written. A row
 * that is refused has NaN for an answer, and the function for a single row, called with its numbers, tells
 * the error in full: it refuses the same rows, for the same input. NULL is accepted for a column only
 * where count is 0.
 */
enum cupwright_row
#if defined(__cplusplus) || __STDC_VERSION__ >= 202311L
  : int32_t
#endif // defined(__cplusplus) || __STDC_VERSION__ >= 202311L
 {
    /**
     * Answered, with the same bits as by the function for a single row.
     */
    CUPWRIGHT_ROW_ANSWERED = 0,
    /**
     * Every input is accepted, but nothing possible follows from them.
     */
    CUPWRIGHT_ROW_NO_ANSWER = 255,
};
#ifndef __cplusplus
#if __STDC_VERSION__ >= 202311L
typedef enum cupwright_row cupwright_row;
#else
typedef int32_t cupwright_row;
#endif // __STDC_VERSION__ >= 202311L
#endif // __cplusplus

/**
 * A wanted range of strength, and of yield where there is one. Published windows are in the macros
 * CUPWRIGHT_GOLDEN_CUP_2015 and CUPWRIGHT_HOME_BREWER_2018; a window is somebody's taste put in
 * numbers.
 */
typedef struct cupwright_window {
    /**
     * Lowest strength inside, 0 to 50 %.
     */
    double strength_lowest_pct;
    /**
     * Highest, 0 to 50 %.
     */
    double strength_highest_pct;
    /**
     * Lowest yield inside, 0 to 100 %; not looked at without one.
     */
    double yield_lowest_pct;
    /**
     * Highest, 0 to 100 %; not looked at without one.
     */
    double yield_highest_pct;
    /**
     * Whether the window has a yield: 0 for no, anything else for yes.
     */
    int32_t has_yield;
    /**
     * How it counts that yield: one of enum cupwright_counting; not looked at without one.
     */
    int32_t yield_counting;
} cupwright_window;

/**
 * What is to be in the cup. A value with a has_ flag of 0 is not looked at; yes is anything but 0.
 */
typedef struct cupwright_wish {
    /**
     * Size of the drink in each cup, 0.1 to 200000 g.
     */
    double cup_g;
    /**
     * Strength of the drink, 0 to 50 %.
     */
    double strength_pct;
    /**
     * Brew this strong and add water in the cup, 0 to 50 %.
     */
    double brew_strength_pct;
    /**
     * Temperature of the brew water as it meets the grounds, 0 to 105 °C.
     */
    double brew_c;
    /**
     * Time of contact, 0 to 172800 s.
     */
    double contact_s;
    /**
     * Temperature at which to hand the drink over, 0 to 105 °C.
     */
    double serve_c;
    /**
     * Window that the drink is to lie in.
     */
    struct cupwright_window window;
    /**
     * How many cups, 1 to 1000.
     */
    int32_t servings;
    /**
     * The most batches one is willing to brew, 1 to 1000.
     */
    int32_t most_batches;
    /**
     * 0 to brew at the drink's own strength.
     */
    int32_t has_brew_strength;
    /**
     * 0 for as many as it takes.
     */
    int32_t has_most_batches;
    /**
     * 0 for as hot as it comes.
     */
    int32_t has_serve;
    /**
     * 0 for no tolerances.
     */
    int32_t has_window;
} cupwright_wish;

/**
 * Where the brew water goes that does not become beverage.
 */
typedef struct cupwright_losses {
    /**
     * Brew water missing per dose, apart from what is named below, 0 to 10 g/g. Published:
     * 1.5 to 2 for drained drip brews.
     */
    double apparent_retention_g_per_g;
    /**
     * Liquid that chamber and filter keep whatever the dose, 0 to 5000 g.
     */
    double hold_up_g;
    /**
     * Dry filter paper that drinks from the brew, 0 to 500 g; 0 for no paper, for metal, and for
     * paper rinsed before, which is already full.
     */
    double paper_g;
    /**
     * What a gram of that paper takes up, 0 to 20 g/g: weigh one dry, then wet and drained.
     */
    double paper_uptake_g_per_g;
    /**
     * Drips lost before the press or the drain, 0 to 5000 g.
     */
    double drips_g;
    /**
     * Vapour lost, 0 to 20000 g.
     */
    double vapour_g;
} cupwright_losses;

/**
 * What a brewer's chamber holds.
 */
typedef struct cupwright_chamber {
    /**
     * Volume up to the highest safe level, 0.1 to 250000 mL.
     */
    double volume_ml;
    /**
     * Volume that a gram of wetted grounds takes away from the water, 0 to 5 mL/g. No published
     * value was found: read the level before and after.
     */
    double displacement_ml_per_g;
} cupwright_chamber;

/**
 * A brewer and how it behaves.
 */
typedef struct cupwright_brewer {
    /**
     * Strength of the liquid it keeps relative to the beverage, 0 to 100 %: 100 steeped, 0
     * flowed through.
     */
    double held_strength_pct;
    /**
     * What it keeps.
     */
    struct cupwright_losses losses;
    /**
     * Its chamber, where all the water stands in it at once.
     */
    struct cupwright_chamber chamber;
    /**
     * Heat capacity of the part that warms, 0 to 1000000 J/K.
     */
    double heat_capacity_j_per_k;
    /**
     * Hot rinse, poured away, that preheats it, 0.1 to 400000 g.
     */
    double rinse_g;
    /**
     * Cooling rate of the slurry in it, 0.000001 to 1 1/min.
     */
    double cooling_per_min;
    /**
     * 0 for a dripper.
     */
    int32_t has_chamber;
    /**
     * 0 for a brewer at room temperature.
     */
    int32_t has_rinse;
    /**
     * 0 where unknown.
     */
    int32_t has_cooling;
    /**
     * Whether the slurry is open to the air: one of enum cupwright_cover.
     */
    int32_t cover;
    /**
     * Pressed by hand.
     */
    int32_t pressed;
    /**
     * Glass meets hot liquid.
     */
    int32_t glass;
} cupwright_brewer;

/**
 * A coffee at its grind.
 */
typedef struct cupwright_coffee {
    /**
     * Yield to expect, as measured before with the brewer's held strength, 0 to 100 %.
     */
    double yield_pct;
    /**
     * Moisture as weighed, 0 to 15 %.
     */
    double moisture_pct;
    /**
     * Caffeine as weighed, 0 to 45 mg/g.
     */
    double caffeine_mg_per_g;
    /**
     * 0 where unknown.
     */
    int32_t has_caffeine;
} cupwright_coffee;

/**
 * The place and its things.
 */
typedef struct cupwright_kitchen {
    /**
     * Station pressure, 50 to 110 kPa; looked at for CUPWRIGHT_AIR_PRESSURE.
     */
    double pressure_kpa;
    /**
     * Altitude, -650 to 5550 m; looked at for CUPWRIGHT_AIR_ALTITUDE.
     */
    double altitude_m;
    /**
     * Temperature of the room, the grounds, the cups and a cold brewer, -20 to 50 °C.
     */
    double room_c;
    /**
     * Relative humidity, 0 to 100 %; 50 where unknown (estimate).
     */
    double humidity_pct;
    /**
     * What each pour costs, 0 to 105 K.
     */
    double drop_k;
    /**
     * Heat capacity of a second vessel between kettle and brewer, 0 to 1000000 J/K.
     */
    double second_vessel_j_per_k;
    /**
     * Heat capacity of a cup, 0 to 1000000 J/K.
     */
    double cup_j_per_k;
    /**
     * Cooling rate of a full cup, 0.000001 to 1 1/min.
     */
    double cup_cooling_per_min;
    /**
     * Solids of the water, 0 to 5000 mg/L.
     */
    double water_solids_mg_per_l;
    /**
     * Temperature of water added in the cup, 0 to 105 °C.
     */
    double added_c;
    /**
     * What is known of the air: one of enum cupwright_air.
     */
    int32_t air;
    /**
     * 0 to pour from the kettle.
     */
    int32_t has_second_vessel;
    /**
     * 0 where unknown.
     */
    int32_t has_cup_cooling;
} cupwright_kitchen;

/**
 * Temperatures from the kettle to the guest.
 */
typedef struct cupwright_heat_walk {
    /**
     * Where water boils here, 0 to 105 °C.
     */
    double boiling_c;
    /**
     * How far off that may be, K.
     */
    double boiling_uncertainty_k;
    /**
     * Water in the kettle, 0 to 105 °C.
     */
    double kettle_c;
    /**
     * The brewer just before the brew, -40 to 105 °C.
     */
    double brewer_c;
    /**
     * Water settled in the second vessel, 0 to 105 °C; 0 without one.
     */
    double second_vessel_c;
    /**
     * Water as it meets the grounds, 0 to 105 °C.
     */
    double brew_c;
    /**
     * Water, grounds and brewer settled, 0 to 105 °C.
     */
    double slurry_c;
    /**
     * The slurry at the end of contact, 0 to 105 °C.
     */
    double slurry_end_c;
    /**
     * The drink in its cup, water added, 0 to 105 °C.
     */
    double in_cup_c;
    /**
     * Wait until it may be handed over as wished, 0 to 172800 s; 0 where nothing is wished or the cup's
     * cooling is unknown.
     */
    double wait_s;
    /**
     * Whether there is a second vessel: 1 or 0.
     */
    int32_t has_second_vessel;
    /**
     * How sure the end of contact is: one of enum cupwright_contact_heat.
     */
    int32_t contact_heat;
    /**
     * Whether the wait is known: 1 or 0.
     */
    int32_t has_wait;
} cupwright_heat_walk;

/**
 * Where a value stands in its band; distances in the value's unit, negative outside.
 */
typedef struct cupwright_place {
    /**
     * Distance above the lowest edge.
     */
    double above_lowest;
    /**
     * Distance below the highest edge.
     */
    double below_highest;
    /**
     * Distance above the centre.
     */
    double above_centre;
    /**
     * Below, inside or above: one of enum cupwright_side.
     */
    int32_t side;
} cupwright_place;

/**
 * Where a cup stands in a window.
 */
typedef struct cupwright_standing {
    /**
     * Its strength.
     */
    struct cupwright_place strength;
    /**
     * Its yield; all zero where the window has none.
     */
    struct cupwright_place yield;
    /**
     * Whether the window has a yield: 1 or 0.
     */
    int32_t has_yield;
    /**
     * Whether strength, and yield where there is one, are both inside: 1 or 0.
     */
    int32_t is_inside;
} cupwright_standing;

/**
 * How far one thing alone may stray before the drink's strength leaves the window or the chamber
 * is full. Without a flag even the outermost accepted value stays inside, and the number is 0.
 */
typedef struct cupwright_tolerances {
    /**
     * Lowest dose of a batch, 0.1 to 10000 g.
     */
    double dose_from_g;
    /**
     * Highest dose of a batch, 0.1 to 10000 g.
     */
    double dose_to_g;
    /**
     * Lowest brew water of a batch, 0.1 to 200000 g.
     */
    double water_from_g;
    /**
     * Highest brew water of a batch, 0.1 to 200000 g.
     */
    double water_to_g;
    /**
     * 1 or 0.
     */
    int32_t has_dose_from;
    /**
     * 1 or 0.
     */
    int32_t has_dose_to;
    /**
     * 1 or 0.
     */
    int32_t has_water_from;
    /**
     * 1 or 0.
     */
    int32_t has_water_to;
} cupwright_tolerances;

/**
 * What to do, and what to expect.
 */
typedef struct cupwright_recipe {
    /**
     * Dose of each batch, 0.1 to 10000 g.
     */
    double dose_g;
    /**
     * Brew water of each batch, 0.1 to 200000 g.
     */
    double water_g;
    /**
     * Brew water per dose, 0.2 to 200 g/g.
     */
    double water_ratio_g_per_g;
    /**
     * Beverage expected from each batch, 0.1 to 200000 g.
     */
    double beverage_g;
    /**
     * How full a batch makes the chamber, 0.1 to 250000 mL; 0 without one.
     */
    double fill_ml;
    /**
     * Brew into each cup, 0.1 to 200000 g.
     */
    double brew_per_cup_g;
    /**
     * Water into each cup, 0 to 200000 g.
     */
    double added_per_cup_g;
    /**
     * Strength of the brew before water is added, 0 to 50 %.
     */
    double brew_strength_pct;
    /**
     * Strength of the drink, 0 to 50 %.
     */
    double strength_pct;
    /**
     * Yield it counts on, 0 to 100 %.
     */
    double yield_pct;
    /**
     * Caffeine of a serving if all of it is extracted, 0 to 450000 mg; 0 where unknown.
     */
    double caffeine_mg;
    /**
     * Temperatures on the way.
     */
    struct cupwright_heat_walk heat;
    /**
     * Where the drink, and the yield as the window counts it, stand in the window; all zero without
     * one.
     */
    struct cupwright_standing standing;
    /**
     * How far dose and water may stray; all zero without a window.
     */
    struct cupwright_tolerances tolerances;
    /**
     * How many batches, 1 to 1000.
     */
    int32_t batches;
    /**
     * What can hurt: a bit 1 << n for each of enum cupwright_caution.
     */
    uint32_t cautions;
    /**
     * Whether there is a chamber: 1 or 0.
     */
    int32_t has_fill;
    /**
     * Whether the caffeine is known: 1 or 0.
     */
    int32_t has_caffeine;
    /**
     * Whether there is a window: 1 or 0.
     */
    int32_t has_standing;
    /**
     * Whether there is a window: 1 or 0.
     */
    int32_t has_tolerances;
} cupwright_recipe;

/**
 * The facts of a refusal. Numbers are in the quantity's own unit; what does not apply is zero.
 */
typedef struct cupwright_error {
    /**
     * The value given or computed. May be infinite or not a number. Of measurements that cannot
     * tell, how much there is of what is wanting.
     */
    double value;
    /**
     * The lowest value that is accepted, or that is possible beside the other inputs. Of
     * measurements that cannot tell, how much is needed for a start.
     */
    double lowest;
    /**
     * The highest.
     */
    double highest;
    /**
     * For an infeasible wish, the nearest value that can be had.
     */
    double nearest;
    /**
     * The status that was returned: one of enum cupwright_status.
     */
    int32_t status;
    /**
     * What the value is: one of enum cupwright_quantity, or 0.
     */
    int32_t quantity;
    /**
     * For an impossible value, the input that it does not go with: one of enum cupwright_quantity.
     */
    int32_t beside;
    /**
     * For an infeasible wish, what stands in the way: one of enum cupwright_limit. For measurements
     * that cannot tell, why: one of enum cupwright_untold. For unreadable bytes, why: one of enum
     * cupwright_unreadable.
     */
    int32_t limit;
    /**
     * The parameter or field to blame, by its name; NULL where the fault is not one input's.
     */
    const char *field;
} cupwright_error;

/**
 * How far a brew strays from what is meant: the hand, the scale, the coffee, the brewer. Each u is
 * a standard uncertainty, each nu its degrees of freedom:
 * CUPWRIGHT_DEGREES_OF_FREEDOM_HIGHEST where it is as good as known.
 */
typedef struct cupwright_straying {
    /**
     * Of the dose, and of brew portioned into a cup, 0 to 400000 g.
     */
    double u_next_dose_g;
    /**
     * 1 to 1000000000.
     */
    double nu_next_dose;
    /**
     * Of brew water, and of water added in the cup, 0 to 400000 g.
     */
    double u_next_water_g;
    /**
     * 1 to 1000000000.
     */
    double nu_next_water;
    /**
     * Of the yield from brew to brew, 0 to 100 %.
     */
    double u_next_yield_pct;
    /**
     * 1 to 1000000000.
     */
    double nu_next_yield;
    /**
     * Of the retention, 0 to 10 g/g.
     */
    double u_next_retention_g_per_g;
    /**
     * 1 to 1000000000.
     */
    double nu_next_retention;
    /**
     * Of hold-up, paper, drips and vapour together, 0 to 400000 g.
     */
    double u_next_losses_g;
    /**
     * 1 to 1000000000.
     */
    double nu_next_losses;
} cupwright_straying;

/**
 * What will come out, and how surely.
 */
typedef struct cupwright_outlook {
    /**
     * Beverage of the brew, 0.1 to 200000 g.
     */
    double beverage_g;
    /**
     * Its standard uncertainty, 0 to 400000 g.
     */
    double u_beverage_g;
    /**
     * Its degrees of freedom, 1 to 1000000000.
     */
    double nu_beverage;
    /**
     * Strength of the drink, 0 to 50 %.
     */
    double strength_pct;
    /**
     * Its standard uncertainty, 0 to 50 %.
     */
    double u_strength_pct;
    /**
     * Its degrees of freedom, 1 to 1000000000.
     */
    double nu_strength;
    /**
     * Yield as the window counts it, by the chart where it does not say, 0 to 100 %.
     */
    double counted_yield_pct;
    /**
     * Its standard uncertainty, 0 to 100 %.
     */
    double u_counted_yield_pct;
    /**
     * Its degrees of freedom, 1 to 1000000000.
     */
    double nu_counted_yield;
    /**
     * How far the two go together, -1 to 1.
     */
    double correlation;
    /**
     * Probability that the strength lies inside the window, 0 to 100 %.
     */
    double strength_inside_pct;
    /**
     * Probability that the strength, and the yield where the window has one and says how it counts
     * it, lie inside it,
     * 0 to 100 %.
     */
    double inside_pct;
} cupwright_outlook;

/**
 * A recipe and what it leads to.
 */
typedef struct cupwright_foreseen {
    /**
     * The recipe.
     */
    struct cupwright_recipe recipe;
    /**
     * What it leads to, and the chance that it lands in the wish's window; all zero without one.
     */
    struct cupwright_outlook outlook;
    /**
     * Whether the wish has a window: 1 or 0.
     */
    int32_t has_outlook;
} cupwright_foreseen;

/**
 * A dose with its brew water.
 */
typedef struct cupwright_amounts {
    /**
     * Dose, 0.1 to 10000 g.
     */
    double dose_g;
    /**
     * Brew water, 0.1 to 200000 g.
     */
    double water_g;
} cupwright_amounts;

/**
 * A brew divided into equal batches.
 */
typedef struct cupwright_batch_split {
    /**
     * Dose of each, 0.1 to 10000 g.
     */
    double dose_g;
    /**
     * Brew water of each, 0.1 to 200000 g.
     */
    double water_g;
    /**
     * How full the chamber gets, water and grounds, 0.1 to 250000 mL.
     */
    double fill_ml;
    /**
     * How many, 1 to 1000.
     */
    int32_t batches;
} cupwright_batch_split;

/**
 * A solid that takes part in a heat balance: a vessel, the grounds, the paper.
 */
typedef struct cupwright_body {
    /**
     * Heat capacity of the part that warms, 0 to 1000000 J/K.
     */
    double heat_capacity_j_per_k;
    /**
     * Its temperature before, -40 to 105 °C.
     */
    double body_c;
} cupwright_body;

/**
 * The room in which something cools.
 */
typedef struct cupwright_surroundings {
    /**
     * Air temperature, -20 to 50 °C.
     */
    double room_c;
    /**
     * Relative humidity, 0 to 100 %; 50 where unknown, it hardly matters.
     */
    double humidity_pct;
    /**
     * Whether vapour can leave the surface: one of enum cupwright_cover.
     */
    int32_t cover;
} cupwright_surroundings;

/**
 * One value from repeated readings.
 */
typedef struct cupwright_combined {
    /**
     * The value: mean or median; the mean so far where another reading is asked for, 0 to 50 %.
     */
    double strength_pct;
    /**
     * Largest less smallest, % strength.
     */
    double range_pct;
    /**
     * The range that readings of this repeatability exceed once in twenty times, % strength; 0 for
     * a single reading.
     */
    double critical_range_pct;
    /**
     * What they amount to: one of enum cupwright_agreement.
     */
    int32_t agreement;
    /**
     * Whether there is a critical range: 1 or 0.
     */
    int32_t has_critical_range;
} cupwright_combined;

/**
 * The masses of a brew and what is known of its coffee and water.
 */
typedef struct cupwright_brew {
    /**
     * Dose D as weighed, 0.1 to 10000 g.
     */
    double dose_g;
    /**
     * Brew water W, 0.1 to 200000 g.
     */
    double water_g;
    /**
     * Beverage B, 0.1 to 200000 g.
     */
    double beverage_g;
    /**
     * Moisture h of the dose, 0 to 15 %.
     */
    double moisture_pct;
    /**
     * Solids s of the brew water, 0 to 5000 mg/L.
     */
    double water_solids_mg_per_l;
    /**
     * Vapour V lost, 0 to 20000 g.
     */
    double vapour_g;
    /**
     * Strength φ of the liquid kept, relative to the beverage, 0 to 100 %: 0 flowed through,
     * 100 steeped and well mixed. Yields differ by up to three points between the two.
     */
    double held_strength_pct;
} cupwright_brew;

/**
 * How fast one coffee, at one grind and temperature, gives up what it can. No published constants
 * hold for every grinder: they come from a few brews of one's own.
 */
typedef struct cupwright_kinetics {
    /**
     * Yield that it levels off at, 0 to 100 %.
     */
    double equilibrium_yield_pct;
    /**
     * Share that dissolves fast, 0 to 100 %; 100 makes it a one-rate law.
     */
    double fast_share_pct;
    /**
     * Time constant of the fast part, 0.1 to 1000000 s.
     */
    double fast_time_s;
    /**
     * Time constant of the slow part, 0.1 to 1000000 s.
     */
    double slow_time_s;
} cupwright_kinetics;

/**
 * One input of a yield, and what it would have to be for the yield to be ordinary.
 */
typedef struct cupwright_doubt {
    /**
     * The value entered, in the quantity's unit.
     */
    double entered;
    /**
     * The value at which the yield would fall to the upper end of what is ordinary; 0 without one.
     */
    double would_have_to_be;
    /**
     * The input: one of enum cupwright_quantity.
     */
    int32_t quantity;
    /**
     * Whether a possible value does that: 1 or 0.
     */
    int32_t has_would_have_to_be;
} cupwright_doubt;

/**
 * A yield with what there is to doubt about it.
 */
typedef struct cupwright_plausibility {
    /**
     * The yield of the inputs, 0 to 100 %.
     */
    double yield_pct;
    /**
     * The inputs to doubt: strength, brew water, dose, held strength. All zero where the yield is
     * ordinary.
     */
    struct cupwright_doubt doubts[4];
    /**
     * How credible it is: one of enum cupwright_credibility.
     */
    int32_t credibility;
    /**
     * How many doubts there are: 4, or 0 where the yield is ordinary.
     */
    int32_t doubt_count;
} cupwright_plausibility;

/**
 * Any value with its standard uncertainty. In every struct like this one, u is the standard
 * uncertainty, 0 for a value that is not uncertain, and nu the degrees of freedom of that, never
 * 0: CUPWRIGHT_DEGREES_OF_FREEDOM_HIGHEST where u is as good as known.
 */
typedef struct cupwright_estimate {
    /**
     * The value, in a unit of its own, -1000000000 to 1000000000.
     */
    double value;
    /**
     * Its standard uncertainty in that unit, 0 to 1000000000.
     */
    double u_value;
    /**
     * Its degrees of freedom, 1 to 1000000000; the highest where it is as good as known.
     */
    double nu_value;
} cupwright_estimate;

/**
 * An interval around a value that holds the true one with some confidence.
 */
typedef struct cupwright_expanded {
    /**
     * How many standard uncertainties it reaches to either side, 0.5 to 1000.
     */
    double coverage_factor;
    /**
     * How far it reaches to either side, 0 to 1000000000.
     */
    double half_width;
} cupwright_expanded;

/**
 * A mean of repeats and how sure it is.
 */
typedef struct cupwright_mean {
    /**
     * The mean, -1000000000 to 1000000000.
     */
    double value;
    /**
     * Its standard uncertainty, 0 to 1000000000.
     */
    double u;
    /**
     * The degrees of freedom of that, 1 to 1000000000.
     */
    double degrees_of_freedom;
} cupwright_mean;

/**
 * The scatter of an earlier series.
 */
typedef struct cupwright_series {
    /**
     * Standard deviation of its readings, 0 to 1000000000.
     */
    double s;
    /**
     * One less than their number, 1 to 1000000000.
     */
    double degrees_of_freedom;
} cupwright_series;

/**
 * A standard uncertainty and how well it is itself known.
 */
typedef struct cupwright_standard {
    /**
     * The standard uncertainty, in the unit of what it was made from, 0 to 1000000000.
     */
    double u;
    /**
     * Its degrees of freedom, 1 to 1000000000; the highest where it is as good as known.
     */
    double degrees_of_freedom;
} cupwright_standard;

/**
 * One's own repeatability.
 */
typedef struct cupwright_repeatability_estimate {
    /**
     * Standard deviation of readings of one sample by one person on one instrument, % strength,
     * 0.0005 to 2 % strength.
     */
    double repeatability_pct;
    /**
     * Its standard uncertainty, % strength, 0 to 50 %. Not used but for its range: what
     * counts is how many degrees of freedom there are.
     */
    double u_repeatability_pct;
    /**
     * Its degrees of freedom, 1 to 1000000000; the highest where it is as good as known.
     */
    double nu_repeatability;
} cupwright_repeatability_estimate;

/**
 * A strength with its standard uncertainty.
 */
typedef struct cupwright_strength_estimate {
    /**
     * Strength, 0 to 50 %.
     */
    double strength_pct;
    /**
     * Its standard uncertainty, 0 to 50 %.
     */
    double u_strength_pct;
    /**
     * Its degrees of freedom, 1 to 1000000000; the highest where it is as good as known.
     */
    double nu_strength;
} cupwright_strength_estimate;

/**
 * What moves a result, for a budget of one's own.
 */
typedef struct cupwright_influence {
    /**
     * How much the result changes with it, -1000000000000 to 1000000000000.
     */
    double sensitivity;
    /**
     * Its standard uncertainty, 0 to 1000000000.
     */
    double u;
    /**
     * The degrees of freedom of that, 1 to 1000000000.
     */
    double degrees_of_freedom;
} cupwright_influence;

/**
 * The term that contributes most, and what it is worth to improve it.
 */
typedef struct cupwright_dominant {
    /**
     * What it contributes, in the result's unit.
     */
    double contribution;
    /**
     * Its share of the variance, 0 to 100 %.
     */
    double share_pct;
    /**
     * What the combined standard uncertainty would be with half the term's.
     */
    double halved;
    /**
     * What it would be without the term.
     */
    double gone;
    /**
     * The input, or its error: one of enum cupwright_quantity.
     */
    int32_t source;
} cupwright_dominant;

/**
 * One line of a budget.
 */
typedef struct cupwright_term {
    /**
     * How much the result changes with the input, in the units of the two.
     */
    double sensitivity;
    /**
     * The input's standard uncertainty, in its own unit.
     */
    double u;
    /**
     * The degrees of freedom of that, 1 to 1000000000.
     */
    double degrees_of_freedom;
    /**
     * What it contributes to the result's standard uncertainty, in the result's unit.
     */
    double contribution;
    /**
     * The input, or its error: one of enum cupwright_quantity.
     */
    int32_t source;
} cupwright_term;

/**
 * A result with its standard uncertainty, and what that is made of.
 */
typedef struct cupwright_budget {
    /**
     * The result.
     */
    double value;
    /**
     * Its combined standard uncertainty, in its unit.
     */
    double u;
    /**
     * The effective degrees of freedom of that, 1 to 1000000000.
     */
    double degrees_of_freedom;
    /**
     * The combined standard uncertainty with second-order terms too. Where it differs much from u,
     * the linear rule does not hold. 0 where it cannot be had.
     */
    double second_order;
    /**
     * How far the mean of the result lies above the result at the inputs' means, in its unit; 0
     * where it cannot be had.
     */
    double shift;
    /**
     * Correlation of a yield with the strength that it was computed from, -1 to 1; 0 for
     * anything but a yield.
     */
    double correlation;
    /**
     * The term that contributes most, the first of several; all zero where nothing is uncertain.
     */
    struct cupwright_dominant dominant;
    /**
     * The terms in the order of the inputs. Only so many as are counted mean something.
     */
    struct cupwright_term terms[10];
    /**
     * How many terms there are, 1 to 10.
     */
    int32_t term_count;
    /**
     * Whether it is a yield: 1 or 0.
     */
    int32_t has_correlation;
    /**
     * Whether anything is uncertain: 1 or 0.
     */
    int32_t has_dominant;
    /**
     * Whether what the linear rule leaves out is told: 1 or 0. It is not where only sensitivities were
     * given, and where the inputs are so uncertain that it cannot be had.
     */
    int32_t has_second_order;
} cupwright_budget;

/**
 * An instrument's own error, common to all its readings: its specification, its zero.
 */
typedef struct cupwright_instrument_uncertainty {
    /**
     * Its standard uncertainty, % strength, 0 to 50 %.
     */
    double u_instrument_pct;
    /**
     * Its degrees of freedom, 1 to 1000000000; the highest where it is as good as known.
     */
    double nu_instrument;
} cupwright_instrument_uncertainty;

/**
 * The refractive factor's error, common to all readings of one coffee. Keep it out of the
 * strength's own uncertainty and give it here, so that it can be dropped where two brews of one
 * coffee are compared.
 */
typedef struct cupwright_factor_uncertainty {
    /**
     * Its standard uncertainty over its value, 0 to 50 %.
     */
    double u_factor_pct;
    /**
     * Its degrees of freedom, 1 to 1000000000; the highest where it is as good as known.
     */
    double nu_factor;
} cupwright_factor_uncertainty;

/**
 * The solids of water with their standard uncertainty.
 */
typedef struct cupwright_water_solids_estimate {
    /**
     * Solids of the water, 0 to 5000 mg/L.
     */
    double water_solids_mg_per_l;
    /**
     * Its standard uncertainty, 0 to 5000 mg/L.
     */
    double u_water_solids_mg_per_l;
    /**
     * Its degrees of freedom, 1 to 1000000000; the highest where it is as good as known.
     */
    double nu_water_solids;
} cupwright_water_solids_estimate;

/**
 * A reading in degrees Brix with its standard uncertainty.
 */
typedef struct cupwright_brix_estimate {
    /**
     * Reading at 20 °C or compensated, -2 to 30.5 °Bx.
     */
    double brix;
    /**
     * Its standard uncertainty, 0 to 32.5 °Bx.
     */
    double u_brix;
    /**
     * Its degrees of freedom, 1 to 1000000000; the highest where it is as good as known.
     */
    double nu_brix;
} cupwright_brix_estimate;

/**
 * A coffee's refractive factor with its standard uncertainty, which all readings of it share.
 */
typedef struct cupwright_refractive_factor_estimate {
    /**
     * The factor, 0.3 to 2 %/°Bx.
     */
    double refractive_factor_pct_per_brix;
    /**
     * Its standard uncertainty over its value, 0 to 50 %.
     */
    double u_factor_pct;
    /**
     * Its degrees of freedom, 1 to 1000000000; the highest where it is as good as known.
     */
    double nu_factor;
} cupwright_refractive_factor_estimate;

/**
 * A beverage with its standard uncertainty.
 */
typedef struct cupwright_beverage_estimate {
    /**
     * Beverage, 0.1 to 200000 g.
     */
    double beverage_g;
    /**
     * Its standard uncertainty, 0 to 400000 g.
     */
    double u_beverage_g;
    /**
     * Its degrees of freedom, 1 to 1000000000; the highest where it is as good as known.
     */
    double nu_beverage;
} cupwright_beverage_estimate;

/**
 * A dose with its standard uncertainty.
 */
typedef struct cupwright_dose_estimate {
    /**
     * Dose as weighed, 0.1 to 10000 g.
     */
    double dose_g;
    /**
     * Its standard uncertainty, 0 to 400000 g.
     */
    double u_dose_g;
    /**
     * Its degrees of freedom, 1 to 1000000000; the highest where it is as good as known.
     */
    double nu_dose;
} cupwright_dose_estimate;

/**
 * Brew water with its standard uncertainty.
 */
typedef struct cupwright_water_estimate {
    /**
     * Brew water, 0.1 to 200000 g.
     */
    double water_g;
    /**
     * Its standard uncertainty, 0 to 400000 g.
     */
    double u_water_g;
    /**
     * Its degrees of freedom, 1 to 1000000000; the highest where it is as good as known.
     */
    double nu_water;
} cupwright_water_estimate;

/**
 * The moisture of a dose with its standard uncertainty.
 */
typedef struct cupwright_moisture_estimate {
    /**
     * Moisture as weighed, 0 to 15 %.
     */
    double moisture_pct;
    /**
     * Its standard uncertainty, 0 to 100 %.
     */
    double u_moisture_pct;
    /**
     * Its degrees of freedom, 1 to 1000000000; the highest where it is as good as known.
     */
    double nu_moisture;
} cupwright_moisture_estimate;

/**
 * Vapour with its standard uncertainty.
 */
typedef struct cupwright_vapour_estimate {
    /**
     * Vapour lost, 0 to 20000 g.
     */
    double vapour_g;
    /**
     * Its standard uncertainty, 0 to 400000 g.
     */
    double u_vapour_g;
    /**
     * Its degrees of freedom, 1 to 1000000000; the highest where it is as good as known.
     */
    double nu_vapour;
} cupwright_vapour_estimate;

/**
 * A held strength with its standard uncertainty.
 */
typedef struct cupwright_held_strength_estimate {
    /**
     * Strength of the liquid kept relative to the beverage, 0 to 100 %.
     */
    double held_strength_pct;
    /**
     * Its standard uncertainty, 0 to 100 %.
     */
    double u_held_strength_pct;
    /**
     * Its degrees of freedom, 1 to 1000000000; the highest where it is as good as known.
     */
    double nu_held_strength;
} cupwright_held_strength_estimate;

/**
 * A scale's error of span, common to all that it weighs.
 */
typedef struct cupwright_span_uncertainty {
    /**
     * Its standard uncertainty, relative, 0 to 50 %.
     */
    double u_span_pct;
    /**
     * Its degrees of freedom, 1 to 1000000000; the highest where it is as good as known.
     */
    double nu_span;
} cupwright_span_uncertainty;

/**
 * A brew with its strength, every number with its uncertainty.
 */
typedef struct cupwright_measured {
    /**
     * Strength, all solids.
     */
    struct cupwright_strength_estimate strength;
    /**
     * Dose.
     */
    struct cupwright_dose_estimate dose;
    /**
     * Brew water.
     */
    struct cupwright_water_estimate water;
    /**
     * Beverage.
     */
    struct cupwright_beverage_estimate beverage;
    /**
     * Moisture of the dose.
     */
    struct cupwright_moisture_estimate moisture;
    /**
     * Solids of the brew water.
     */
    struct cupwright_water_solids_estimate water_solids;
    /**
     * Vapour lost.
     */
    struct cupwright_vapour_estimate vapour;
    /**
     * Strength of the liquid kept. How it was chosen may move the yield by three points: give it
     * an uncertainty where it is not known to be 0 or 100.
     */
    struct cupwright_held_strength_estimate held_strength;
    /**
     * The scale that weighed dose, water and beverage.
     */
    struct cupwright_span_uncertainty span;
    /**
     * The coffee's refractive factor.
     */
    struct cupwright_factor_uncertainty factor;
} cupwright_measured;

/**
 * A yield with its standard uncertainty.
 */
typedef struct cupwright_yield_estimate {
    /**
     * Extraction yield, 0 to 100 %.
     */
    double yield_pct;
    /**
     * Its standard uncertainty, 0 to 100 %.
     */
    double u_yield_pct;
    /**
     * Its degrees of freedom, 1 to 1000000000; the highest where it is as good as known.
     */
    double nu_yield;
} cupwright_yield_estimate;

/**
 * How uncertain a retention is.
 */
typedef struct cupwright_retention_uncertainty {
    /**
     * Its standard uncertainty, 0 to 10 g/g.
     */
    double u_apparent_retention_g_per_g;
    /**
     * Its degrees of freedom, 1 to 1000000000; the highest where it is as good as known.
     */
    double nu_apparent_retention;
} cupwright_retention_uncertainty;

/**
 * How uncertain hold-up, paper, drips and vapour are together.
 */
typedef struct cupwright_losses_uncertainty {
    /**
     * Their standard uncertainty, 0 to 400000 g.
     */
    double u_losses_g;
    /**
     * Its degrees of freedom, 1 to 1000000000; the highest where it is as good as known.
     */
    double nu_losses;
} cupwright_losses_uncertainty;

/**
 * Added water with its standard uncertainty.
 */
typedef struct cupwright_added_estimate {
    /**
     * Water added, 0 to 200000 g.
     */
    double added_g;
    /**
     * Its standard uncertainty, 0 to 400000 g.
     */
    double u_added_g;
    /**
     * Its degrees of freedom, 1 to 1000000000; the highest where it is as good as known.
     */
    double nu_added;
} cupwright_added_estimate;

/**
 * The hotter of two liquids that are mixed.
 */
typedef struct cupwright_hot_estimate {
    /**
     * Its mass, 0.1 to 400000 g.
     */
    double hot_g;
    /**
     * Its standard uncertainty, 0 to 400000 g.
     */
    double u_hot_g;
    /**
     * Its degrees of freedom, 1 to 1000000000; the highest where it is as good as known.
     */
    double nu_hot_mass;
    /**
     * Its temperature, 0 to 105 °C.
     */
    double hot_c;
    /**
     * Its standard uncertainty, 0 to 105 K.
     */
    double u_hot_k;
    /**
     * Its degrees of freedom, 1 to 1000000000; the highest where it is as good as known.
     */
    double nu_hot_temperature;
} cupwright_hot_estimate;

/**
 * The colder of two liquids that are mixed.
 */
typedef struct cupwright_cold_estimate {
    /**
     * Its mass, 0 to 200000 g.
     */
    double cold_g;
    /**
     * Its standard uncertainty, 0 to 400000 g.
     */
    double u_cold_g;
    /**
     * Its degrees of freedom, 1 to 1000000000; the highest where it is as good as known.
     */
    double nu_cold_mass;
    /**
     * Its temperature, 0 to 105 °C.
     */
    double cold_c;
    /**
     * Its standard uncertainty, 0 to 105 K.
     */
    double u_cold_k;
    /**
     * Its degrees of freedom, 1 to 1000000000; the highest where it is as good as known.
     */
    double nu_cold_temperature;
} cupwright_cold_estimate;

/**
 * A liquid that meets a body.
 */
typedef struct cupwright_liquid_estimate {
    /**
     * Its mass, 0.1 to 400000 g.
     */
    double liquid_g;
    /**
     * Its standard uncertainty, 0 to 400000 g.
     */
    double u_liquid_g;
    /**
     * Its degrees of freedom, 1 to 1000000000; the highest where it is as good as known.
     */
    double nu_liquid;
    /**
     * Its temperature before, 0 to 105 °C.
     */
    double before_c;
    /**
     * Its standard uncertainty, 0 to 105 K.
     */
    double u_before_k;
    /**
     * Its degrees of freedom, 1 to 1000000000; the highest where it is as good as known.
     */
    double nu_before;
} cupwright_liquid_estimate;

/**
 * A body that a liquid meets.
 */
typedef struct cupwright_body_estimate {
    /**
     * Heat capacity of the part that warms, 0 to 1000000 J/K.
     */
    double heat_capacity_j_per_k;
    /**
     * Its standard uncertainty, 0 to 1000000 J/K.
     */
    double u_heat_capacity_j_per_k;
    /**
     * Its degrees of freedom, 1 to 1000000000; the highest where it is as good as known.
     */
    double nu_heat_capacity;
    /**
     * Its temperature before, -40 to 105 °C.
     */
    double body_c;
    /**
     * Its standard uncertainty, 0 to 105 K.
     */
    double u_body_k;
    /**
     * Its degrees of freedom, 1 to 1000000000; the highest where it is as good as known.
     */
    double nu_body;
} cupwright_body_estimate;

/**
 * The temperature of a cup with its standard uncertainty.
 */
typedef struct cupwright_temperature_estimate {
    /**
     * Temperature now, 0 to 105 °C.
     */
    double water_c;
    /**
     * Its standard uncertainty, 0 to 105 K.
     */
    double u_water_k;
    /**
     * Its degrees of freedom, 1 to 1000000000; the highest where it is as good as known.
     */
    double nu_water;
} cupwright_temperature_estimate;

/**
 * A cooling rate with its standard uncertainty.
 */
typedef struct cupwright_cooling_estimate {
    /**
     * Cooling rate, 0.000001 to 1 1/min.
     */
    double cooling_per_min;
    /**
     * Its standard uncertainty, 0 to 10 1/min.
     */
    double u_cooling_per_min;
    /**
     * Its degrees of freedom, 1 to 1000000000; the highest where it is as good as known.
     */
    double nu_cooling;
} cupwright_cooling_estimate;

/**
 * A time with its standard uncertainty.
 */
typedef struct cupwright_time_estimate {
    /**
     * Time, 0 to 172800 s.
     */
    double time_s;
    /**
     * Its standard uncertainty, 0 to 172800 s.
     */
    double u_time_s;
    /**
     * Its degrees of freedom, 1 to 1000000000; the highest where it is as good as known.
     */
    double nu_time;
} cupwright_time_estimate;

/**
 * How fast a coffee extracts, and how well that is known, as a fit told it. How well the plateau is
 * known stands apart: advice starts from a cup that has a yield of its own. With one rate the fast
 * share is 100 %, and what is of the slow one is 0.
 */
typedef struct cupwright_rates {
    /**
     * The law.
     */
    struct cupwright_kinetics kinetics;
    /**
     * Standard uncertainty of the fast share, 0 to 100 %.
     */
    double u_fast_share_pct;
    /**
     * That of the logarithm of the fast time constant, 0 to 1000.
     */
    double u_ln_fast_time;
    /**
     * That of the logarithm of the slow one, 0 to 1000.
     */
    double u_ln_slow_time;
    /**
     * Correlation of the share and the first logarithm, -1 to 1.
     */
    double correlation_share_fast;
    /**
     * Correlation of the share and the second, -1 to 1.
     */
    double correlation_share_slow;
    /**
     * Correlation of the two logarithms, -1 to 1.
     */
    double correlation_fast_slow;
    /**
     * Degrees of freedom of the fit, 1 to 1000000000.
     */
    double nu_rates;
} cupwright_rates;

/**
 * How well the plateau of some rates is known, as the same fit told it.
 */
typedef struct cupwright_plateau {
    /**
     * Standard uncertainty of the yield that it levels off at, 0 to 100 %.
     */
    double u_equilibrium_yield_pct;
    /**
     * Correlation of that yield and the fast share, -1 to 1.
     */
    double correlation_equilibrium_share;
    /**
     * Correlation of it and the logarithm of the fast time constant, -1 to 1.
     */
    double correlation_equilibrium_fast;
    /**
     * Correlation of it and the logarithm of the slow one, -1 to 1.
     */
    double correlation_equilibrium_slow;
} cupwright_plateau;

/**
 * A range of any value.
 */
typedef struct cupwright_band {
    /**
     * Its lowest value, in the value's unit, -1000000000 to 1000000000.
     */
    double lowest;
    /**
     * Its highest, -1000000000 to 1000000000.
     */
    double highest;
} cupwright_band;

/**
 * Probabilities that the true value lies below a band, inside, or above; together 100 %.
 */
typedef struct cupwright_chances {
    /**
     * Below the lowest edge, 0 to 100 %.
     */
    double below_pct;
    /**
     * Inside, 0 to 100 %.
     */
    double inside_pct;
    /**
     * Above the highest edge, 0 to 100 %.
     */
    double above_pct;
} cupwright_chances;

/**
 * The values that can be called inside.
 */
typedef struct cupwright_acceptance {
    /**
     * The band less a guard on either side; all zero where the uncertainty is too large for any.
     */
    struct cupwright_band acceptance;
    /**
     * Whether there are any: 1 or 0.
     */
    int32_t has_acceptance;
} cupwright_acceptance;

/**
 * How many readings decide, and the number.
 */
typedef struct cupwright_readings_needed {
    /**
     * The number, 1 to 10; 0 unless needed is CUPWRIGHT_NEEDED_READINGS.
     */
    int32_t readings;
    /**
     * How many: one of enum cupwright_needed.
     */
    int32_t needed;
} cupwright_readings_needed;

/**
 * A range of strength and one of yield: the fields of a cupwright_window that has both.
 */
typedef struct cupwright_bands {
    /**
     * Lowest strength inside, 0 to 50 %.
     */
    double strength_lowest_pct;
    /**
     * Highest, 0 to 50 %.
     */
    double strength_highest_pct;
    /**
     * Lowest yield inside, 0 to 100 %.
     */
    double yield_lowest_pct;
    /**
     * Highest, 0 to 100 %.
     */
    double yield_highest_pct;
} cupwright_bands;

/**
 * Strength and yield, each for itself and both together.
 */
typedef struct cupwright_joint {
    /**
     * The strength beside its band.
     */
    struct cupwright_chances strength;
    /**
     * The yield beside its band.
     */
    struct cupwright_chances yield;
    /**
     * Probability that both are inside, 0 to 100 %.
     */
    double both_pct;
} cupwright_joint;

/**
 * Two values of one kind.
 */
typedef struct cupwright_pair {
    /**
     * The first, -1000000000 to 1000000000.
     */
    double first;
    /**
     * Its standard uncertainty, 0 to 1000000000.
     */
    double u_first;
    /**
     * Its degrees of freedom, 1 to 1000000000; the highest where it is as good as known.
     */
    double nu_first;
    /**
     * The second, -1000000000 to 1000000000.
     */
    double second;
    /**
     * Its standard uncertainty, 0 to 1000000000.
     */
    double u_second;
    /**
     * Its degrees of freedom, 1 to 1000000000; the highest where it is as good as known.
     */
    double nu_second;
} cupwright_pair;

/**
 * Two values of one kind beside each other.
 */
typedef struct cupwright_comparison {
    /**
     * The first less the second, in their unit.
     */
    double difference;
    /**
     * Standard uncertainty of the difference, the common factor's included, 0 to 1000000000.
     */
    double u;
    /**
     * Its degrees of freedom, 1 to 1000000000; the highest where it is as good as known.
     */
    double degrees_of_freedom;
    /**
     * The smallest difference that could be called real, in their unit.
     */
    double least;
    /**
     * The largest confidence at which this one can be called real, 0 to 100 %.
     */
    double confidence_pct;
    /**
     * Whether it is real at the confidence asked: 1 or 0.
     */
    int32_t is_real;
} cupwright_comparison;

/**
 * Brew that goes into a cup with its standard uncertainty.
 */
typedef struct cupwright_portion_estimate {
    /**
     * Brew into a cup, 0.1 to 200000 g.
     */
    double portion_g;
    /**
     * Its standard uncertainty, 0 to 400000 g.
     */
    double u_portion_g;
    /**
     * Its degrees of freedom, 1 to 1000000000; the highest where it is as good as known.
     */
    double nu_portion;
} cupwright_portion_estimate;

/**
 * A brew as it is meant to be made, each number with how far it may stray.
 */
typedef struct cupwright_intended {
    /**
     * Dose; how well it is weighed.
     */
    struct cupwright_dose_estimate dose;
    /**
     * Brew water; how well the hand stops.
     */
    struct cupwright_water_estimate water;
    /**
     * Yield to expect by the brewer's own held strength; how well it is known, and how far brews
     * differ.
     */
    struct cupwright_yield_estimate yield;
    /**
     * What does not reach the cup.
     */
    struct cupwright_losses losses;
    /**
     * How far the retention in it may be off.
     */
    struct cupwright_retention_uncertainty retention;
    /**
     * How far the other losses may be off together.
     */
    struct cupwright_losses_uncertainty other;
    /**
     * Moisture of the dose, 0 to 15 %.
     */
    double moisture_pct;
    /**
     * Solids of the brew water and of water added, 0 to 5000 mg/L.
     */
    double water_solids_mg_per_l;
    /**
     * Strength of the liquid kept relative to the beverage, 0 to 100 %.
     */
    double held_strength_pct;
    /**
     * Brew that goes into a cup; without an addition it does not matter.
     */
    struct cupwright_portion_estimate portion;
    /**
     * Water added to it, 0 g for none.
     */
    struct cupwright_added_estimate added;
} cupwright_intended;

/**
 * A cup that was brewed and read.
 */
typedef struct cupwright_cup {
    /**
     * Its masses, as weighed.
     */
    struct cupwright_brew brew;
    /**
     * Standard uncertainty of each weighing, 0 to 400000 g.
     */
    double u_weighing_g;
    /**
     * Its degrees of freedom, 1 to 1000000000; the highest where it is as good as known.
     */
    double nu_weighing;
    /**
     * Its strength, all solids.
     */
    struct cupwright_strength_estimate strength;
    /**
     * Its yield by the brewer's own held strength.
     */
    struct cupwright_yield_estimate yield;
    /**
     * Time of contact, 0 to 172800 s.
     */
    double contact_s;
} cupwright_cup;

/**
 * What a brewer keeps, from one's own brews.
 */
typedef struct cupwright_kept {
    /**
     * Apparent retention of the grounds, 0 to 10 g/g.
     */
    double apparent_retention_g_per_g;
    /**
     * What stays in the brewer whatever the dose: chamber, paper and drips, 0 to 5000 g.
     */
    double hold_up_g;
} cupwright_kept;

/**
 * What can be done, and what is known of it. Yes is anything but 0.
 */
typedef struct cupwright_means {
    /**
     * How fast the coffee extracts, from one's own brews.
     */
    struct cupwright_rates rates;
    /**
     * What the brewer is known to keep.
     */
    struct cupwright_kept kept;
    /**
     * The chamber, where all the water stands in it at once.
     */
    struct cupwright_chamber chamber;
    /**
     * Temperature of the water in it, 0 to 105 °C.
     */
    double water_c;
    /**
     * 0 where the rates are not known: then no time is suggested.
     */
    int32_t has_rates;
    /**
     * 0 where what the brewer keeps is not known: then the grounds are taken to keep all that this
     * brew lost but its vapour.
     */
    int32_t has_kept;
    /**
     * 0 for a dripper.
     */
    int32_t has_chamber;
    /**
     * Whether milk may be added to this cup.
     */
    int32_t milk;
} cupwright_means;

/**
 * One thing to do, and what to expect of it.
 */
typedef struct cupwright_suggestion {
    /**
     * In g or s: the new dose, brew water or time, or what to add. Without a change it is zero.
     */
    double amount;
    /**
     * What that was. Of what is added, and without a change, it is zero.
     */
    double before;
    /**
     * The new dose where it changes with the time, in g; else zero.
     */
    double with_dose_g;
    /**
     * What to expect.
     */
    struct cupwright_outlook outlook;
    /**
     * What changes: one of enum cupwright_change.
     */
    int32_t change;
} cupwright_suggestion;

/**
 * What to do about a cup.
 */
typedef struct cupwright_advice {
    /**
     * What can be done, the best first. Only so many as are counted mean something.
     */
    struct cupwright_suggestion suggestions[8];
    /**
     * How many there are.
     */
    int32_t suggestion_count;
    /**
     * Which way to turn the grind: one of enum cupwright_direction.
     */
    int32_t grind;
    /**
     * 0 where nothing is said of the next brew, since masses do not go together, nothing would be
     * left for the cup or a number leaves its range; else 1.
     */
    int32_t is_next_told;
} cupwright_advice;

/**
 * A brew as a scale saw it.
 */
typedef struct cupwright_drained {
    /**
     * Dose as weighed, 0.1 to 10000 g.
     */
    double dose_g;
    /**
     * Brew water, 0.1 to 200000 g.
     */
    double water_g;
    /**
     * Beverage, 0.1 to 200000 g.
     */
    double beverage_g;
    /**
     * Vapour lost, 0 to 20000 g; 0 where unknown, it then counts as kept.
     */
    double vapour_g;
} cupwright_drained;

/**
 * The measurement that stands out most from a fit.
 */
typedef struct cupwright_odd {
    /**
     * Its externally studentised residual: its distance from what the fit to all the others
     * expects, in standard deviations of that distance.
     */
    double studentised;
    /**
     * Chance that the oddest of so many good measurements stands out as far or farther, 0 to 1.
     */
    double chance;
    /**
     * Which one, counted from 0.
     */
    int32_t at;
    /**
     * Whether that chance is below CUPWRIGHT_SUSPICIOUS_CHANCE, so that a reason is worth looking
     * for before leaving it out: 1 or 0.
     */
    int32_t is_suspicious;
} cupwright_odd;

/**
 * How well a fit describes what was measured.
 */
typedef struct cupwright_quality {
    /**
     * Degrees of freedom: measurements less parameters. Of every uncertainty that the fit tells.
     */
    double degrees_of_freedom;
    /**
     * Residual standard deviation, in the unit of what was fitted.
     */
    double s;
    /**
     * Residuals, measured less fitted, in the order given, as many as there are measurements; 0
     * behind them.
     */
    double residuals[30];
    /**
     * Leverages, in the order given, as many as there are measurements; 0 behind them. How much of
     * a measurement the fit takes from it alone, 0 to 1. They add up to the number of parameters.
     */
    double leverages[30];
    /**
     * The oddest measurement; all zero with fewer than two degrees of freedom, or without any
     * scatter.
     */
    struct cupwright_odd odd;
    /**
     * How many, 0 to 30.
     */
    int32_t measurements;
    /**
     * Whether one is odd: 1 or 0.
     */
    int32_t has_odd;
} cupwright_quality;

/**
 * What a brewer keeps, as a line in the dose.
 */
typedef struct cupwright_retention_line {
    /**
     * Apparent retention of the grounds, 0 to 10 g/g.
     */
    double apparent_retention_g_per_g;
    /**
     * Its standard uncertainty, 0 to 10 g/g.
     */
    double u_retention_g_per_g;
    /**
     * What is kept whatever the dose: the chamber's hold-up, with an unrinsed paper's uptake and
     * drips, -5000 to 5000 g.
     */
    double fitted_hold_up_g;
    /**
     * Its standard uncertainty, 0 to 400000 g.
     */
    double u_hold_up_g;
    /**
     * Covariance of the two, g²/g: negative, since a line that is steeper starts lower.
     */
    double covariance_g2_per_g;
    /**
     * How far the line can be trusted; its scatter is in g.
     */
    struct cupwright_quality quality;
} cupwright_retention_line;

/**
 * A beverage that a line expects.
 */
typedef struct cupwright_expected {
    /**
     * What the next brew gives, 0.1 to 200000 g.
     */
    double beverage_g;
    /**
     * Its standard uncertainty, 0 to 400000 g.
     */
    double u_beverage_g;
    /**
     * Its degrees of freedom, 1 to 1000000000.
     */
    double degrees_of_freedom;
    /**
     * Standard uncertainty of what many such brews give on average, 0 to 400000 g.
     */
    double u_mean_g;
} cupwright_expected;

/**
 * A retention, as brews tell it.
 */
typedef struct cupwright_fitted_retention {
    /**
     * Apparent retention, 0 to 10 g/g.
     */
    double apparent_retention_g_per_g;
    /**
     * Its standard uncertainty, 0 to 10 g/g.
     */
    double u_retention_g_per_g;
    /**
     * How far it can be trusted; its scatter is in g.
     */
    struct cupwright_quality quality;
} cupwright_fitted_retention;

/**
 * Water poured into a brewer and left until both are equally warm.
 */
typedef struct cupwright_settled {
    /**
     * Water, 0.1 to 400000 g.
     */
    double liquid_g;
    /**
     * Its temperature before, 0 to 105 °C.
     */
    double before_c;
    /**
     * The temperature at which both settle, 0 to 105 °C.
     */
    double settled_c;
    /**
     * Temperature of the brewer before, -40 to 105 °C.
     */
    double vessel_c;
} cupwright_settled;

/**
 * A heat capacity, as pours tell it.
 */
typedef struct cupwright_fitted_heat_capacity {
    /**
     * Heat capacity, 0 to 1000000 J/K.
     */
    double heat_capacity_j_per_k;
    /**
     * Its standard uncertainty, 0 to 1000000 J/K.
     */
    double u_heat_capacity_j_per_k;
    /**
     * How far it can be trusted; its scatter is in J.
     */
    struct cupwright_quality quality;
} cupwright_fitted_heat_capacity;

/**
 * A long steep, stirred and drained.
 */
typedef struct cupwright_steeped {
    /**
     * Strength, 0 to 50 %.
     */
    double strength_pct;
    /**
     * Brew water, 0.1 to 200000 g.
     */
    double water_g;
    /**
     * Dose as weighed, 0.1 to 10000 g.
     */
    double dose_g;
} cupwright_steeped;

/**
 * A yield that long steeps level off at.
 */
typedef struct cupwright_fitted_yield {
    /**
     * Yield, 0 to 100 %.
     */
    double yield_pct;
    /**
     * Its standard uncertainty, 0 to 100 %.
     */
    double u_yield_pct;
    /**
     * How far it can be trusted; its scatter is in points of yield.
     */
    struct cupwright_quality quality;
} cupwright_fitted_yield;

/**
 * A yield after a time of contact.
 */
typedef struct cupwright_timed {
    /**
     * Time of contact, 0 to 172800 s.
     */
    double contact_s;
    /**
     * Yield by then, 0 to 100 %.
     */
    double yield_pct;
} cupwright_timed;

/**
 * A one-rate law of extraction.
 */
typedef struct cupwright_one_rate {
    /**
     * Yield that it levels off at, 0 to 100 %.
     */
    double equilibrium_yield_pct;
    /**
     * Its standard uncertainty, 0 to 100 %.
     */
    double u_equilibrium_yield_pct;
    /**
     * Time constant, 0.1 to 1000000 s.
     */
    double time_constant_s;
    /**
     * Standard uncertainty of its logarithm, 0 to 1000.
     */
    double u_ln_time_constant;
    /**
     * Covariance of the yield and that logarithm, points of yield.
     */
    double covariance_pct;
    /**
     * How far the curve can be trusted; its scatter is in points of yield.
     */
    struct cupwright_quality quality;
} cupwright_one_rate;

/**
 * A two-rate law of extraction.
 */
typedef struct cupwright_two_rates {
    /**
     * Yield that it levels off at, 0 to 100 %.
     */
    double equilibrium_yield_pct;
    /**
     * Its standard uncertainty, 0 to 100 %.
     */
    double u_equilibrium_yield_pct;
    /**
     * Share of it that dissolves fast, 0 to 100 %.
     */
    double fast_share_pct;
    /**
     * Its standard uncertainty, 0 to 100 %.
     */
    double u_fast_share_pct;
    /**
     * Time constant of the fast share, 0.1 to 1000000 s.
     */
    double fast_time_s;
    /**
     * Standard uncertainty of its logarithm, 0 to 1000.
     */
    double u_ln_fast_time;
    /**
     * Time constant of the rest, 0.1 to 1000000 s.
     */
    double slow_time_s;
    /**
     * Standard uncertainty of its logarithm, 0 to 1000.
     */
    double u_ln_slow_time;
    /**
     * Covariances of the yield, the fast share and the two logarithms, in points.
     */
    double covariance[4][4];
    /**
     * How far the curve can be trusted; its scatter is in points of yield.
     */
    struct cupwright_quality quality;
} cupwright_two_rates;

/**
 * A thermometer in a cup, read.
 */
typedef struct cupwright_thermometer {
    /**
     * When, from any beginning, 0 to 172800 s.
     */
    double time_s;
    /**
     * What it shows, 0 to 105 °C.
     */
    double water_c;
} cupwright_thermometer;

/**
 * How a cup cools, as a thermometer tells it.
 */
typedef struct cupwright_cooling {
    /**
     * Cooling rate, 0.000001 to 1 1/min.
     */
    double cooling_per_min;
    /**
     * Its standard uncertainty, 0 to 10 1/min.
     */
    double u_cooling_per_min;
    /**
     * Temperature at the first reading, by the curve through all of them, 0 to 105 °C.
     */
    double start_c;
    /**
     * Its standard uncertainty, 0 to 105 K.
     */
    double u_start_k;
    /**
     * Covariance of the two, K/min.
     */
    double covariance_k_per_min;
    /**
     * How far the curve can be trusted; its scatter is in K.
     */
    struct cupwright_quality quality;
} cupwright_cooling;

/**
 * A sample that was read, and then dried in an oven.
 */
typedef struct cupwright_dried {
    /**
     * The reading at 20 °C or compensated, -2 to 30.5 °Bx.
     */
    double brix;
    /**
     * Strength by the oven: dry residue over the sample's mass, 0 to 50 %.
     */
    double strength_pct;
} cupwright_dried;

/**
 * A refractive factor, as dried samples tell it.
 */
typedef struct cupwright_fitted_refractive_factor {
    /**
     * Strength per degree Brix, 0.3 to 2 %/°Bx.
     */
    double refractive_factor_pct_per_brix;
    /**
     * Its standard uncertainty over its value, 0 to 50 %.
     */
    double u_factor_pct;
    /**
     * How far it can be trusted; its scatter is in % strength.
     */
    struct cupwright_quality quality;
} cupwright_fitted_refractive_factor;

/**
 * One reading of one cup.
 */
typedef struct cupwright_repeat {
    /**
     * What was read, 0 to 50 %.
     */
    double strength_pct;
    /**
     * Which cup, 1 to 30.
     */
    int32_t cup;
} cupwright_repeat;

/**
 * One's own repeatability, as cups read several times tell it.
 */
typedef struct cupwright_fitted_repeatability {
    /**
     * Standard deviation of readings of one sample, % strength, 0.0005 to 2 % strength.
     */
    double repeatability_pct;
    /**
     * Its standard uncertainty, % strength, 0 to 50 %.
     */
    double u_repeatability_pct;
    /**
     * How far it can be trusted; its scatter is in % strength.
     */
    struct cupwright_quality quality;
} cupwright_fitted_repeatability;

/**
 * A value as a fit told it.
 */
typedef struct cupwright_learned {
    /**
     * The value, in the unit of the profile's field.
     */
    double value;
    /**
     * Its standard uncertainty as the fit told it, in the same unit where the field says no other.
     */
    double u;
    /**
     * The degrees of freedom of that, 1 to 1000000000.
     */
    double degrees_of_freedom;
} cupwright_learned;

/**
 * What was learned of one brewer, coffee, cup and instrument. Flags say what there is: 0 for no,
 * anything else for yes. What is not there comes back as zeros.
 */
typedef struct cupwright_profile {
    /**
     * Apparent retention of the brewer's grounds, 0 to 10 g/g.
     */
    struct cupwright_learned apparent_retention_g_per_g;
    /**
     * Hold-up of the brewer, as the same line has it, -5000 to 5000 g.
     */
    struct cupwright_learned fitted_hold_up_g;
    /**
     * Heat capacity of the brewer, 0 to 1000000 J/K.
     */
    struct cupwright_learned heat_capacity_j_per_k;
    /**
     * Cooling rate of the brewer while it steeps, 0.000001 to 1 1/min.
     */
    struct cupwright_learned cooling_per_min;
    /**
     * Yield that the coffee levels off at, 0 to 100 %.
     */
    struct cupwright_learned equilibrium_yield_pct;
    /**
     * Share of it that dissolves fast, 0 to 100 %.
     */
    struct cupwright_learned fast_share_pct;
    /**
     * Time constant of the fast share, 0.1 to 1000000 s; u is that of its logarithm.
     */
    struct cupwright_learned fast_time_s;
    /**
     * Time constant of the rest, 0.1 to 1000000 s; u is that of its logarithm.
     */
    struct cupwright_learned slow_time_s;
    /**
     * Refractive factor of the coffee, 0.3 to 2 %/°Bx; u is over its value, in %.
     */
    struct cupwright_learned refractive_factor_pct_per_brix;
    /**
     * Heat capacity of the cup, 0 to 1000000 J/K.
     */
    struct cupwright_learned cup_j_per_k;
    /**
     * Cooling rate of the full cup, 0.000001 to 1 1/min.
     */
    struct cupwright_learned cup_cooling_per_min;
    /**
     * Repeatability of one's own readings on the instrument, 0.0005 to 2 % strength.
     */
    struct cupwright_learned repeatability_pct;
    /**
     * Correlation of retention and hold-up, -1 to 1.
     */
    double retention_correlation;
    /**
     * Scatter of a brew about the line of the two, or about the retention alone, 0 to 400000 g.
     */
    double retention_scatter_g;
    /**
     * Correlation of the plateau and the fast share, -1 to 1.
     */
    double correlation_equilibrium_share;
    /**
     * Correlation of the plateau and the logarithm of the fast time, -1 to 1.
     */
    double correlation_equilibrium_fast;
    /**
     * Correlation of the plateau and the logarithm of the slow time, -1 to 1.
     */
    double correlation_equilibrium_slow;
    /**
     * Correlation of the fast share and the logarithm of the fast time, -1 to 1.
     */
    double correlation_share_fast;
    /**
     * Correlation of the fast share and the logarithm of the slow time, -1 to 1.
     */
    double correlation_share_slow;
    /**
     * Correlation of the two logarithms, -1 to 1.
     */
    double correlation_fast_slow;
    /**
     * Whether there is a retention.
     */
    int32_t has_apparent_retention;
    /**
     * Whether there is a hold-up.
     */
    int32_t has_fitted_hold_up;
    /**
     * Whether there is a heat capacity of the brewer.
     */
    int32_t has_heat_capacity;
    /**
     * Whether there is a cooling rate of the brewer.
     */
    int32_t has_cooling;
    /**
     * Whether there is a yield.
     */
    int32_t has_equilibrium_yield;
    /**
     * Whether there is a fast share.
     */
    int32_t has_fast_share;
    /**
     * Whether there is a time constant of the fast share.
     */
    int32_t has_fast_time;
    /**
     * Whether there is one of the rest.
     */
    int32_t has_slow_time;
    /**
     * Whether there is a refractive factor.
     */
    int32_t has_refractive_factor;
    /**
     * Whether there is a heat capacity of the cup.
     */
    int32_t has_cup;
    /**
     * Whether there is a cooling rate of the cup.
     */
    int32_t has_cup_cooling;
    /**
     * Whether there is a repeatability.
     */
    int32_t has_repeatability;
    /**
     * Whether there is a correlation of retention and hold-up.
     */
    int32_t has_retention_correlation;
    /**
     * Whether there is a scatter.
     */
    int32_t has_retention_scatter;
    /**
     * Whether there is one of the plateau and the fast share.
     */
    int32_t has_correlation_equilibrium_share;
    /**
     * Whether there is one of the plateau and the fast time.
     */
    int32_t has_correlation_equilibrium_fast;
    /**
     * Whether there is one of the plateau and the slow time.
     */
    int32_t has_correlation_equilibrium_slow;
    /**
     * Whether there is one of the fast share and its time.
     */
    int32_t has_correlation_share_fast;
    /**
     * Whether there is one of the fast share and the slow time.
     */
    int32_t has_correlation_share_slow;
    /**
     * Whether there is one of the two times.
     */
    int32_t has_correlation_fast_slow;
} cupwright_profile;

/**
 * One brew poured over several cups and topped up with water.
 */
typedef struct cupwright_cup_split {
    /**
     * Brew into each cup, 0.1 to 200000 g.
     */
    double beverage_g;
    /**
     * Water into each cup, 0 to 200000 g.
     */
    double added_g;
    /**
     * Brew left over, 0 to 200000 g.
     */
    double rest_g;
} cupwright_cup_split;

/**
 * A drink of coffee and milk.
 */
typedef struct cupwright_milk_drink {
    /**
     * Coffee and milk together, 0.1 to 200000 g.
     */
    double beverage_g;
    /**
     * Solids from coffee and brew water, per mass of drink, 0 to 50 %.
     */
    double strength_pct;
    /**
     * Solids from milk, per mass of drink, 0 to 80 %.
     */
    double milk_solids_pct;
} cupwright_milk_drink;

/**
 * A drink on ice, when heat has come to rest.
 */
typedef struct cupwright_iced {
    /**
     * Temperature of liquid and ice, 0 to 105 °C.
     */
    double water_c;
    /**
     * Ice that melted, 0 to 200000 g.
     */
    double melted_g;
    /**
     * Ice that floats on, 0 to 200000 g.
     */
    double ice_g;
    /**
     * Strength of the liquid, 0 to 50 %.
     */
    double strength_pct;
} cupwright_iced;

/**
 * What there is to know of a drink for its cautions. Yes is anything but 0.
 */
typedef struct cupwright_hazards {
    /**
     * The hottest liquid handled on the way, 0 to 105 °C.
     */
    double hottest_c;
    /**
     * The drink when it is handed over, 0 to 105 °C.
     */
    double served_c;
    /**
     * Caffeine of a serving, 0 to 450000 mg; not looked at where unknown.
     */
    double caffeine_mg;
    /**
     * Whether the caffeine is known.
     */
    int32_t has_caffeine;
    /**
     * Pressed by hand.
     */
    int32_t pressed;
    /**
     * Glass meets hot or iced liquid.
     */
    int32_t glass;
    /**
     * Milk goes in.
     */
    int32_t milk;
    /**
     * Ice goes in.
     */
    int32_t ice;
} cupwright_hazards;

/**
 * A burn and its time.
 */
typedef struct cupwright_time_to_burn {
    /**
     * The time, 0 to 172800 s; 0 unless the burn is CUPWRIGHT_BURN_WITHIN.
     */
    double time_s;
    /**
     * How fast: one of enum cupwright_burn.
     */
    int32_t burn;
} cupwright_time_to_burn;

/**
 * A scale, and how it is used. A common kitchen scale under a kettle with a spout: 0.1 g, 2000 g, 15
 * g/s (estimate).
 */
typedef struct cupwright_live_setup {
    /**
     * Smallest step of its readings, 0.001 to 10 g.
     */
    double division_g;
    /**
     * Most that it can show from its zero at the beginning, 10 to 100000 g.
     */
    double capacity_g;
    /**
     * Fastest that water is poured on it, 2 to 100 g/s.
     */
    double fastest_g_per_s;
} cupwright_live_setup;

/**
 * A scale that is being watched. The caller keeps it, anywhere, one for each scale; it may be copied
 * and the copy goes on as the scale itself. cupwright_live_begin() begins it. What is in it concerns
 * nobody else, and holds for this version of the library on this kind of processor:
 * cupwright_live_to_bytes() makes something to keep of it.
 */
typedef struct cupwright_scale {
    /**
     * Not to be read or written.
     */
    uint64_t state[64];
} cupwright_scale;

/**
 * What a scale saw, after a reading.
 */
typedef struct cupwright_live_seen {
    /**
     * The reading without its noise; what it was before while something disturbs it.
     */
    double level_g;
    /**
     * How fast it rises; 0 where unknown: while something disturbs it, and for the next three points.
     */
    double flow_g_per_s;
    /**
     * Water poured since cupwright_live_count_anew(), whatever was lifted or set to zero meanwhile.
     */
    double poured_g;
    /**
     * What is not in that and may be water, or is in it and may not be.
     */
    double unclear_g;
    /**
     * When something happened, as well as can be told afterwards; 0 where nothing did.
     */
    double event_clock_s;
    /**
     * By how much, as enum cupwright_happening says; 0 where nothing did.
     */
    double event_change_g;
    /**
     * Whether there is a flow: 1 or 0.
     */
    int32_t has_flow;
    /**
     * What is going on: one of enum cupwright_doing.
     */
    int32_t doing;
    /**
     * What has happened: one of enum cupwright_happening; 0 for nothing. Things that happened at once
     * come with one reading after the other.
     */
    int32_t event;
} cupwright_live_seen;

/**
 * Where all that a reading has changed by is put down.
 */
typedef struct cupwright_live_accounts {
    /**
     * Water.
     */
    double poured_g;
    /**
     * Things put down, less things taken off.
     */
    double moved_g;
    /**
     * Set to zero.
     */
    double tared_g;
    /**
     * Drift: creep, warming, evaporation, drips slower than 0.2 g/s.
     */
    double drifted_g;
    /**
     * What could be water or not.
     */
    double unclear_g;
    /**
     * What the activity going on has gained.
     */
    double under_way_g;
    /**
     * Standard uncertainty of the water poured, by what the scale saw alone: ends of its runs at rest,
     * drift meanwhile, what is unclear.
     */
    double u_poured_g;
} cupwright_live_accounts;

/**
 * A brew that is being followed, with its scale. Kept as a cupwright_scale is; cupwright_follow_begin()
 * begins it.
 */
typedef struct cupwright_follower {
    /**
     * Not to be read or written.
     */
    uint64_t state[96];
} cupwright_follower;

/**
 * A step with its numbers. Times count from the first water.
 */
typedef struct cupwright_live_step {
    /**
     * Coffee to weigh, 0.1 to 10000 g; looked at for CUPWRIGHT_STEP_DOSE.
     */
    double dose_g;
    /**
     * Water in all when the step is over, 0.1 to 200000 g; looked at for CUPWRIGHT_STEP_POUR.
     */
    double to_g;
    /**
     * Not before this time, 0 to 172800 s; looked at for CUPWRIGHT_STEP_POUR and CUPWRIGHT_STEP_STIR.
     */
    double from_s;
    /**
     * Until this time, 0 to 172800 s; looked at for CUPWRIGHT_STEP_WAIT.
     */
    double until_s;
    /**
     * The vessel that the beverage is weighed in, 0 to 100000 g; 0 where the display was set to zero
     * with it; looked at for CUPWRIGHT_STEP_BEVERAGE.
     */
    double vessel_g;
    /**
     * What to do: one of enum cupwright_step.
     */
    int32_t step;
} cupwright_live_step;

/**
 * A brew as it stands. What is not there is 0.
 */
typedef struct cupwright_live_now {
    /**
     * What the scale saw. It knows no steps: coffee that is weighed in is a pour to it, until the
     * follower counts it as dose. The brew's own clock is the time since the first water.
     */
    struct cupwright_live_seen seen;
    /**
     * Water still to pour in this step; below zero for too much.
     */
    double to_pour_g;
    /**
     * Time still to wait in this step.
     */
    double to_wait_s;
    /**
     * Water over dose, once both are known.
     */
    double ratio_g_per_g;
    /**
     * Time since the first water.
     */
    double brewing_s;
    /**
     * How much the flow of this pour, or of the last one, wanders: its standard deviation over its
     * mean.
     */
    double flow_variation_pct;
    /**
     * Whether there is water to pour: 1 or 0.
     */
    int32_t has_to_pour;
    /**
     * Whether there is time to wait: 1 or 0.
     */
    int32_t has_to_wait;
    /**
     * Whether there is a ratio: 1 or 0.
     */
    int32_t has_ratio;
    /**
     * Whether there was water: 1 or 0.
     */
    int32_t has_brewing;
    /**
     * Whether there is a variation: 1 or 0.
     */
    int32_t has_flow_variation;
    /**
     * Which step of the recipe it is at, counted from 0; as many as there are when it is done.
     */
    int32_t step;
    /**
     * What to do: one of enum cupwright_cue.
     */
    int32_t cue;
    /**
     * Why: one of enum cupwright_why.
     */
    int32_t why;
} cupwright_live_now;

/**
 * What a follower has weighed and learned.
 */
typedef struct cupwright_live_weighed {
    /**
     * Coffee, weighed or told.
     */
    double dose_g;
    /**
     * What has come out, weighed or told.
     */
    double beverage_g;
    /**
     * What dripped off while the vessel was lifted.
     */
    double drips_g;
    /**
     * How long before the water is reached the cue to stop comes: every stop that follows a cue
     * teaches it. Keep it for the same hand and kettle: cupwright_follow_set_lead().
     */
    double lead_s;
    /**
     * Whether there is a dose: 1 or 0.
     */
    int32_t has_dose;
    /**
     * Whether there is a beverage: 1 or 0.
     */
    int32_t has_beverage;
} cupwright_live_weighed;

/* The library and its user must agree on the size of every struct. */
#if defined(__cplusplus)
#define CUPWRIGHT_SIZE(type, bytes) static_assert(sizeof(type) == (bytes) || alignof(double) != 8, #type)
#elif defined(__STDC_VERSION__) && __STDC_VERSION__ >= 201112L
#define CUPWRIGHT_SIZE(type, bytes) _Static_assert(sizeof(type) == (bytes) || _Alignof(double) != 8, #type)
#endif
#if defined(CUPWRIGHT_SIZE)
CUPWRIGHT_SIZE(cupwright_cup, 128);
CUPWRIGHT_SIZE(cupwright_kept, 16);
CUPWRIGHT_SIZE(cupwright_means, 144);
CUPWRIGHT_SIZE(cupwright_suggestion, 128);
CUPWRIGHT_SIZE(cupwright_advice, 1040);
CUPWRIGHT_SIZE(cupwright_drained, 32);
CUPWRIGHT_SIZE(cupwright_settled, 32);
CUPWRIGHT_SIZE(cupwright_steeped, 24);
CUPWRIGHT_SIZE(cupwright_timed, 16);
CUPWRIGHT_SIZE(cupwright_thermometer, 16);
CUPWRIGHT_SIZE(cupwright_dried, 16);
CUPWRIGHT_SIZE(cupwright_repeat, 16);
CUPWRIGHT_SIZE(cupwright_odd, 24);
CUPWRIGHT_SIZE(cupwright_quality, 528);
CUPWRIGHT_SIZE(cupwright_retention_line, 568);
CUPWRIGHT_SIZE(cupwright_expected, 32);
CUPWRIGHT_SIZE(cupwright_fitted_retention, 544);
CUPWRIGHT_SIZE(cupwright_fitted_heat_capacity, 544);
CUPWRIGHT_SIZE(cupwright_fitted_yield, 544);
CUPWRIGHT_SIZE(cupwright_fitted_refractive_factor, 544);
CUPWRIGHT_SIZE(cupwright_fitted_repeatability, 544);
CUPWRIGHT_SIZE(cupwright_one_rate, 568);
CUPWRIGHT_SIZE(cupwright_two_rates, 720);
CUPWRIGHT_SIZE(cupwright_cooling, 568);
CUPWRIGHT_SIZE(cupwright_hazards, 48);
CUPWRIGHT_SIZE(cupwright_time_to_burn, 16);
CUPWRIGHT_SIZE(cupwright_band, 16);
CUPWRIGHT_SIZE(cupwright_bands, 32);
CUPWRIGHT_SIZE(cupwright_chances, 24);
CUPWRIGHT_SIZE(cupwright_acceptance, 24);
CUPWRIGHT_SIZE(cupwright_readings_needed, 8);
CUPWRIGHT_SIZE(cupwright_joint, 56);
CUPWRIGHT_SIZE(cupwright_pair, 48);
CUPWRIGHT_SIZE(cupwright_comparison, 48);
CUPWRIGHT_SIZE(cupwright_cup_split, 24);
CUPWRIGHT_SIZE(cupwright_milk_drink, 24);
CUPWRIGHT_SIZE(cupwright_iced, 32);
CUPWRIGHT_SIZE(cupwright_estimate, 24);
CUPWRIGHT_SIZE(cupwright_strength_estimate, 24);
CUPWRIGHT_SIZE(cupwright_yield_estimate, 24);
CUPWRIGHT_SIZE(cupwright_dose_estimate, 24);
CUPWRIGHT_SIZE(cupwright_water_estimate, 24);
CUPWRIGHT_SIZE(cupwright_beverage_estimate, 24);
CUPWRIGHT_SIZE(cupwright_portion_estimate, 24);
CUPWRIGHT_SIZE(cupwright_added_estimate, 24);
CUPWRIGHT_SIZE(cupwright_moisture_estimate, 24);
CUPWRIGHT_SIZE(cupwright_water_solids_estimate, 24);
CUPWRIGHT_SIZE(cupwright_vapour_estimate, 24);
CUPWRIGHT_SIZE(cupwright_held_strength_estimate, 24);
CUPWRIGHT_SIZE(cupwright_hot_estimate, 48);
CUPWRIGHT_SIZE(cupwright_cold_estimate, 48);
CUPWRIGHT_SIZE(cupwright_brix_estimate, 24);
CUPWRIGHT_SIZE(cupwright_refractive_factor_estimate, 24);
CUPWRIGHT_SIZE(cupwright_repeatability_estimate, 24);
CUPWRIGHT_SIZE(cupwright_liquid_estimate, 48);
CUPWRIGHT_SIZE(cupwright_body_estimate, 48);
CUPWRIGHT_SIZE(cupwright_temperature_estimate, 24);
CUPWRIGHT_SIZE(cupwright_cooling_estimate, 24);
CUPWRIGHT_SIZE(cupwright_time_estimate, 24);
CUPWRIGHT_SIZE(cupwright_instrument_uncertainty, 16);
CUPWRIGHT_SIZE(cupwright_factor_uncertainty, 16);
CUPWRIGHT_SIZE(cupwright_span_uncertainty, 16);
CUPWRIGHT_SIZE(cupwright_retention_uncertainty, 16);
CUPWRIGHT_SIZE(cupwright_losses_uncertainty, 16);
CUPWRIGHT_SIZE(cupwright_brew, 56);
CUPWRIGHT_SIZE(cupwright_kinetics, 32);
CUPWRIGHT_SIZE(cupwright_doubt, 24);
CUPWRIGHT_SIZE(cupwright_plausibility, 112);
CUPWRIGHT_SIZE(cupwright_intended, 224);
CUPWRIGHT_SIZE(cupwright_straying, 80);
CUPWRIGHT_SIZE(cupwright_outlook, 96);
CUPWRIGHT_SIZE(cupwright_body, 16);
CUPWRIGHT_SIZE(cupwright_surroundings, 24);
CUPWRIGHT_SIZE(cupwright_scale, 512);
CUPWRIGHT_SIZE(cupwright_follower, 768);
CUPWRIGHT_SIZE(cupwright_live_setup, 24);
CUPWRIGHT_SIZE(cupwright_live_seen, 64);
CUPWRIGHT_SIZE(cupwright_live_accounts, 56);
CUPWRIGHT_SIZE(cupwright_live_step, 48);
CUPWRIGHT_SIZE(cupwright_live_now, 136);
CUPWRIGHT_SIZE(cupwright_live_weighed, 40);
CUPWRIGHT_SIZE(cupwright_wish, 112);
CUPWRIGHT_SIZE(cupwright_brewer, 120);
CUPWRIGHT_SIZE(cupwright_coffee, 32);
CUPWRIGHT_SIZE(cupwright_kitchen, 96);
CUPWRIGHT_SIZE(cupwright_heat_walk, 96);
CUPWRIGHT_SIZE(cupwright_tolerances, 48);
CUPWRIGHT_SIZE(cupwright_recipe, 328);
CUPWRIGHT_SIZE(cupwright_foreseen, 432);
CUPWRIGHT_SIZE(cupwright_learned, 24);
CUPWRIGHT_SIZE(cupwright_profile, 432);
CUPWRIGHT_SIZE(cupwright_chamber, 16);
CUPWRIGHT_SIZE(cupwright_batch_split, 32);
CUPWRIGHT_SIZE(cupwright_amounts, 16);
CUPWRIGHT_SIZE(cupwright_combined, 32);
CUPWRIGHT_SIZE(cupwright_losses, 48);
CUPWRIGHT_SIZE(cupwright_error, 56);
CUPWRIGHT_SIZE(cupwright_standard, 16);
CUPWRIGHT_SIZE(cupwright_mean, 24);
CUPWRIGHT_SIZE(cupwright_expanded, 16);
CUPWRIGHT_SIZE(cupwright_series, 16);
CUPWRIGHT_SIZE(cupwright_influence, 24);
CUPWRIGHT_SIZE(cupwright_rates, 88);
CUPWRIGHT_SIZE(cupwright_plateau, 32);
CUPWRIGHT_SIZE(cupwright_term, 40);
CUPWRIGHT_SIZE(cupwright_dominant, 40);
CUPWRIGHT_SIZE(cupwright_budget, 504);
CUPWRIGHT_SIZE(cupwright_measured, 224);
CUPWRIGHT_SIZE(cupwright_window, 40);
CUPWRIGHT_SIZE(cupwright_place, 32);
CUPWRIGHT_SIZE(cupwright_standing, 72);
#undef CUPWRIGHT_SIZE
#endif

#ifdef __cplusplus
extern "C" {
#endif // __cplusplus

/**
 * The version of the interface's layout that the library was built with: CUPWRIGHT_ABI_VERSION of its
 * own header.
 */
uint32_t cupwright_abi_version(void);

/**
 * The package's version, "major.minor.patch": CUPWRIGHT_VERSION of its own header.
 */
const char *cupwright_version_text(void);

/**
 * Plans a brew: dose, water, batches, what to add, every temperature on the way, how far a hand
 * may stray, and the cautions. The yield expected is that of this coffee, grind, time and
 * temperature; a recipe far from the one it was measured at needs it measured again.
 *
 * @param wish What is to be in the cup.
 * @param brewer What it is made in.
 * @param coffee What it is made of.
 * @param kitchen Where it is made.
 * @param[out] recipe What to do, and what to expect.
 *
 * Fails with CUPWRIGHT_STATUS_INFEASIBLE with the nearest feasible value and the limit that binds,
 * where the error's field names the field of the wish; CUPWRIGHT_STATUS_EMPTY_BAND for a window
 * whose lowest edge is not below its highest; CUPWRIGHT_STATUS_OUT_OF_RANGE for a strength outside
 * the window; CUPWRIGHT_STATUS_IMPOSSIBLE for a strength not above the
 * water's own and for a chamber that its own hold-up fills; CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE
 * where a result leaves its range.
 */
int32_t cupwright_plan_recipe(const struct cupwright_wish *wish,
                              const struct cupwright_brewer *brewer,
                              const struct cupwright_coffee *coffee,
                              const struct cupwright_kitchen *kitchen,
                              struct cupwright_recipe *recipe,
                              struct cupwright_error *error);

/**
 * The recipe of a wish, what it leads to, and the chance that it lands in the wish's window, its
 * yield as the window does.
 *
 * @param wish What is to be in the cup.
 * @param brewer What it is made in.
 * @param coffee What it is made of.
 * @param kitchen Where it is made.
 * @param straying How far a brew strays from what is meant.
 * @param[out] foreseen The recipe and its outlook.
 *
 * Fails with what cupwright_plan_recipe() fails with, and CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE for
 * an uncertainty past its range.
 */
int32_t cupwright_plan_foreseen(const struct cupwright_wish *wish,
                                const struct cupwright_brewer *brewer,
                                const struct cupwright_coffee *coffee,
                                const struct cupwright_kitchen *kitchen,
                                const struct cupwright_straying *straying,
                                struct cupwright_foreseen *foreseen,
                                struct cupwright_error *error);

/**
 * The recipe that lands in the wish's window most surely: the wish with its strength moved inside
 * the window, where that is worth a point of chance; else the wish as it is. The chance of a
 * strength is that of the dose alone changed, found by golden section; the recipe is then planned
 * anew. Where that strength cannot be planned it is the nearest to it that can.
 *
 * @param wish What is to be in the cup.
 * @param brewer What it is made in.
 * @param coffee What it is made of.
 * @param kitchen Where it is made.
 * @param straying How far a brew strays from what is meant.
 * @param[out] foreseen The recipe and its outlook.
 *
 * Fails with what cupwright_plan_foreseen() fails with for the wish as it is.
 */
int32_t cupwright_plan_surest(const struct cupwright_wish *wish,
                              const struct cupwright_brewer *brewer,
                              const struct cupwright_coffee *coffee,
                              const struct cupwright_kitchen *kitchen,
                              const struct cupwright_straying *straying,
                              struct cupwright_foreseen *foreseen,
                              struct cupwright_error *error);

/**
 * Brew water per dose, R = W/D.
 *
 * @param dose_g Dose as weighed, 0.1 to 10000 g.
 * @param water_g Brew water, 0.1 to 200000 g.
 * @param[out] water_ratio_g_per_g 0.2 to 200 g/g.
 *
 * Fails with CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE outside the range of the ratio.
 */
int32_t cupwright_ratio_water_ratio(double dose_g,
                                    double water_g,
                                    double *water_ratio_g_per_g,
                                    struct cupwright_error *error);

/**
 * Brew water for a dose at a ratio, W = R D.
 *
 * @param dose_g Dose as weighed, 0.1 to 10000 g.
 * @param water_ratio_g_per_g Brew water per dose, 0.2 to 200 g/g.
 * @param[out] water_g 0.1 to 200000 g.
 *
 * Fails with CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE outside the range of brew water.
 */
int32_t cupwright_ratio_water_for_ratio(double dose_g,
                                        double water_ratio_g_per_g,
                                        double *water_g,
                                        struct cupwright_error *error);

/**
 * Dose for an amount of brew water at a ratio, D = W/R.
 *
 * @param water_g Brew water, 0.1 to 200000 g.
 * @param water_ratio_g_per_g Brew water per dose, 0.2 to 200 g/g.
 * @param[out] dose_g 0.1 to 10000 g.
 *
 * Fails with CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE outside the range of the dose.
 */
int32_t cupwright_ratio_dose_for_water(double water_g,
                                       double water_ratio_g_per_g,
                                       double *dose_g,
                                       struct cupwright_error *error);

/**
 * Beverage per dose, B/D. An "18 in, 36 out" shot has 2.
 *
 * @param dose_g Dose as weighed, 0.1 to 10000 g.
 * @param beverage_g Beverage, 0.1 to 200000 g.
 * @param[out] beverage_ratio_g_per_g 0.5 to 200 g/g.
 *
 * Fails with CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE outside the range of the ratio.
 */
int32_t cupwright_ratio_beverage_ratio(double dose_g,
                                       double beverage_g,
                                       double *beverage_ratio_g_per_g,
                                       struct cupwright_error *error);

/**
 * Beverage from a dose at a ratio.
 *
 * @param dose_g Dose as weighed, 0.1 to 10000 g.
 * @param beverage_ratio_g_per_g Beverage per dose, 0.5 to 200 g/g.
 * @param[out] beverage_g 0.1 to 200000 g.
 *
 * Fails with CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE outside the range of the beverage.
 */
int32_t cupwright_ratio_beverage_for_ratio(double dose_g,
                                           double beverage_ratio_g_per_g,
                                           double *beverage_g,
                                           struct cupwright_error *error);

/**
 * Dose for a beverage at a ratio.
 *
 * @param beverage_g Beverage, 0.1 to 200000 g.
 * @param beverage_ratio_g_per_g Beverage per dose, 0.5 to 200 g/g.
 * @param[out] dose_g 0.1 to 10000 g.
 *
 * Fails with CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE outside the range of the dose.
 */
int32_t cupwright_ratio_dose_for_beverage(double beverage_g,
                                          double beverage_ratio_g_per_g,
                                          double *dose_g,
                                          struct cupwright_error *error);

/**
 * Dose per litre of brew water measured at a temperature, ρ/R. The published "55 g/L" does not say
 * at which temperature its litre is measured; between 20 and 95 °C that is 3.6 %.
 *
 * @param water_ratio_g_per_g Brew water per dose, 0.2 to 200 g/g.
 * @param water_c Temperature at which the litre is measured, 0 to 105 °C.
 * @param[out] dose_g_per_l 4 to 5100 g/L.
 */
int32_t cupwright_ratio_dose_per_litre(double water_ratio_g_per_g,
                                       double water_c,
                                       double *dose_g_per_l,
                                       struct cupwright_error *error);

/**
 * The ratio that a dose per litre of brew water stands for, ρ over that dose.
 *
 * @param dose_g_per_l Dose per litre, 4 to 5100 g/L.
 * @param water_c Temperature at which the litre is measured, 0 to 105 °C.
 * @param[out] water_ratio_g_per_g 0.2 to 200 g/g.
 *
 * Fails with CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE outside the range of the ratio.
 */
int32_t cupwright_ratio_of_dose_per_litre(double dose_g_per_l,
                                          double water_c,
                                          double *water_ratio_g_per_g,
                                          struct cupwright_error *error);

/**
 * Mass of a volume of water at its temperature, W = ρ V. A jug marked in millilitres misleads: 200
 * mL of water at 95 °C weighs 192.4 g.
 *
 * @param volume_ml Volume, 0.1 to 250000 mL.
 * @param water_c Temperature, 0 to 105 °C.
 * @param[out] water_g 0.1 to 200000 g.
 *
 * Fails with CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE outside the range of brew water.
 */
int32_t cupwright_ratio_water_mass(double volume_ml,
                                   double water_c,
                                   double *water_g,
                                   struct cupwright_error *error);

/**
 * Volume of a mass of water at its temperature: the inverse of cupwright_ratio_water_mass().
 *
 * @param water_g Brew water, 0.1 to 200000 g.
 * @param water_c Temperature, 0 to 105 °C.
 * @param[out] volume_ml 0.1 to 250000 mL.
 */
int32_t cupwright_ratio_water_volume(double water_g,
                                     double water_c,
                                     double *volume_ml,
                                     struct cupwright_error *error);

/**
 * Dose and water for several servings of one recipe. Plain multiplication: what a chamber keeps
 * whatever the dose is kept only once, which cupwright_plan_recipe() allows for.
 *
 * @param dose_g Dose as weighed, 0.1 to 10000 g.
 * @param water_g Brew water, 0.1 to 200000 g.
 * @param servings Servings, 1 to 1000.
 * @param[out] amounts Dose and brew water for all of them.
 *
 * Fails with CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE outside the range of dose or brew water.
 */
int32_t cupwright_ratio_for_servings(double dose_g,
                                     double water_g,
                                     int32_t servings,
                                     struct cupwright_amounts *amounts,
                                     struct cupwright_error *error);

/**
 * How many whole cups of one size a beverage fills.
 *
 * @param beverage_g Beverage, 0.1 to 200000 g.
 * @param cup_g Beverage in a cup, 0.1 to 200000 g.
 * @param[out] servings 1 to 1000.
 *
 * Fails with CUPWRIGHT_STATUS_INFEASIBLE where it does not fill one, the nearest cup being the
 * beverage itself; CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE for more cups than servings may be.
 */
int32_t cupwright_ratio_whole_cups(double beverage_g,
                                   double cup_g,
                                   int32_t *servings,
                                   struct cupwright_error *error);

/**
 * The fewest equal batches that a chamber can brew, ⌈(W/ρ + v D)/V⌉. All the water of a batch is
 * in the chamber at once.
 *
 * @param dose_g Dose as weighed, 0.1 to 10000 g.
 * @param water_g Brew water, 0.1 to 200000 g.
 * @param water_c Temperature, 0 to 105 °C.
 * @param chamber The chamber.
 * @param[out] split The batches.
 *
 * Fails with CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE where a batch would be too small or the batches
 * too many.
 */
int32_t cupwright_ratio_batches(double dose_g,
                                double water_g,
                                double water_c,
                                const struct cupwright_chamber *chamber,
                                struct cupwright_batch_split *split,
                                struct cupwright_error *error);

/**
 * The largest dose that a chamber can brew in one batch at a ratio, V/(R/ρ + v).
 *
 * @param water_ratio_g_per_g Brew water per dose, 0.2 to 200 g/g.
 * @param water_c Temperature, 0 to 105 °C.
 * @param chamber The chamber.
 * @param[out] dose_g 0.1 to 10000 g.
 *
 * Fails with CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE outside the range of the dose.
 */
int32_t cupwright_ratio_largest_dose(double water_ratio_g_per_g,
                                     double water_c,
                                     const struct cupwright_chamber *chamber,
                                     double *dose_g,
                                     struct cupwright_error *error);

/**
 * Density of liquid water at 0.1 MPa. Source: IAPWS SR6-08(2011), equation 1.
 *
 * @param water_c Temperature, 0 to 105 °C.
 * @param[out] density_kg_per_m3 950 to 1001 kg/m³.
 */
int32_t cupwright_water_density(double water_c,
                                double *density_kg_per_m3,
                                struct cupwright_error *error);

/**
 * Specific heat of liquid water at 0.1 MPa. Source: IAPWS SR6-08(2011), equation 4.
 *
 * @param water_c Temperature, 0 to 105 °C.
 * @param[out] specific_heat_j_per_g_k 0.05 to 10 J/(g K).
 */
int32_t cupwright_water_specific_heat(double water_c,
                                      double *specific_heat_j_per_g_k,
                                      struct cupwright_error *error);

/**
 * Heat content of liquid water at 0.1 MPa, above that at 0 °C. Source: IAPWS SR6-08(2011), g + T s.
 *
 * @param water_c Temperature, 0 to 105 °C.
 * @param[out] enthalpy_j_per_g 0 to 441 J/g.
 */
int32_t cupwright_water_enthalpy(double water_c,
                                 double *enthalpy_j_per_g,
                                 struct cupwright_error *error);

/**
 * The temperature at which liquid water has a heat content: the inverse of
 * cupwright_water_enthalpy().
 *
 * @param enthalpy_j_per_g Heat content, 0 to 441 J/g.
 * @param[out] water_c 0 to 105 °C.
 *
 * Fails with CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE above the heat content at 105 °C.
 */
int32_t cupwright_water_temperature_of_enthalpy(double enthalpy_j_per_g,
                                                double *water_c,
                                                struct cupwright_error *error);

/**
 * Vapour pressure of water. Source: IAPWS-IF97 region 4, R7-97(2012), equation 30.
 *
 * @param water_c Temperature, 0 to 105 °C.
 * @param[out] vapour_pressure_kpa 0.6 to 125 kPa.
 */
int32_t cupwright_water_vapour_pressure(double water_c,
                                        double *vapour_pressure_kpa,
                                        struct cupwright_error *error);

/**
 * Boiling point of water. Source: IAPWS-IF97 region 4, R7-97(2012), equation 31.
 *
 * @param pressure_kpa Station pressure, not reduced to sea level, 50 to 110 kPa.
 * @param[out] water_c 0 to 105 °C.
 */
int32_t cupwright_water_boiling_point(double pressure_kpa,
                                      double *water_c,
                                      struct cupwright_error *error);

/**
 * Latent heat of vaporisation. Source: a cubic fitted to IAPWS-95, within 0.02 J/g from 0 to 100 °C.
 *
 * @param water_c Temperature, 0 to 105 °C.
 * @param[out] latent_heat_j_per_g 2200 to 2510 J/g.
 */
int32_t cupwright_water_latent_heat(double water_c,
                                    double *latent_heat_j_per_g,
                                    struct cupwright_error *error);

/**
 * Air pressure in the standard atmosphere. Weather moves it by ±2.5 kPa, the boiling point by
 * CUPWRIGHT_ALTITUDE_ONLY_UNCERTAINTY_K: a barometer is better. Source: ISO 2533:1975.
 *
 * @param altitude_m Altitude, -650 to 5550 m.
 * @param[out] pressure_kpa 50 to 110 kPa.
 */
int32_t cupwright_water_pressure_at_altitude(double altitude_m,
                                             double *pressure_kpa,
                                             struct cupwright_error *error);

/**
 * The altitude at which the standard atmosphere has a pressure. Source: ISO 2533:1975.
 *
 * @param pressure_kpa Air pressure, 50 to 110 kPa.
 * @param[out] altitude_m -650 to 5550 m.
 *
 * Fails with CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE outside the range of the altitude.
 */
int32_t cupwright_water_altitude_at_pressure(double pressure_kpa,
                                             double *altitude_m,
                                             struct cupwright_error *error);

/**
 * Grounds at a temperature, with CUPWRIGHT_GROUNDS_J_PER_G_K, an estimate.
 *
 * @param dose_g Dose as weighed, 0.1 to 10000 g.
 * @param grounds_c Temperature of the grounds, -40 to 105 °C.
 * @param[out] grounds The grounds.
 */
int32_t cupwright_heat_grounds(double dose_g,
                               double grounds_c,
                               struct cupwright_body *grounds,
                               struct cupwright_error *error);

/**
 * Heat capacity of a vessel, f m c, of which a share f follows the liquid. The share tends to 100
 * % for a steep of a minute or more; no published value was found. Better:
 * cupwright_heat_vessel_heat_capacity() from one thermometer reading.
 *
 * @param vessel_g Mass, 0 to 100000 g.
 * @param specific_heat_j_per_g_k Specific heat, 0.05 to 10 J/(g K).
 * @param share_pct Share that follows, 0 to 100 %.
 * @param[out] heat_capacity_j_per_k 0 to 1000000 J/K.
 */
int32_t cupwright_heat_capacity(double vessel_g,
                                double specific_heat_j_per_g_k,
                                double share_pct,
                                double *heat_capacity_j_per_k,
                                struct cupwright_error *error);

/**
 * Temperature at which a liquid and the bodies it meets settle. Nothing is lost to the air
 * meanwhile.
 *
 *     m h(t) + t Σ C = m h(t0) + Σ C tᵢ
 *
 * @param water_g The liquid, 0.1 to 400000 g.
 * @param water_c Its temperature, 0 to 105 °C.
 * @param bodies The bodies. NULL where there are none.
 * @param count How many, 0 to 8.
 * @param[out] settled_c 0 to 105 °C.
 *
 * Fails with CUPWRIGHT_STATUS_OUT_OF_RANGE for more than eight bodies;
 * CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE where the liquid would freeze.
 */
int32_t cupwright_heat_settle(double water_g,
                              double water_c,
                              const struct cupwright_body *bodies,
                              size_t count,
                              double *settled_c,
                              struct cupwright_error *error);

/**
 * Temperature that a liquid must have so that it settles at a wanted one: the inverse of
 * cupwright_heat_settle(). Whether it can be reached here is for cupwright_heat_reachable() to
 * say.
 *
 * @param water_g The liquid, 0.1 to 400000 g.
 * @param settled_c Temperature wanted, 0 to 105 °C.
 * @param bodies The bodies. NULL where there are none.
 * @param count How many, 0 to 8.
 * @param[out] water_c 0 to 105 °C.
 *
 * Fails with CUPWRIGHT_STATUS_OUT_OF_RANGE for more than eight bodies;
 * CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE where that is no temperature of liquid water.
 */
int32_t cupwright_heat_before_settling(double water_g,
                                       double settled_c,
                                       const struct cupwright_body *bodies,
                                       size_t count,
                                       double *water_c,
                                       struct cupwright_error *error);

/**
 * A vessel after a rinse that is poured away: it keeps the temperature at which both settled.
 *
 * @param vessel The vessel before.
 * @param water_g The rinse, 0.1 to 400000 g.
 * @param water_c Its temperature, 0 to 105 °C.
 * @param[out] preheated The vessel after.
 *
 * Fails with CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE where the rinse would freeze.
 */
int32_t cupwright_heat_preheated(const struct cupwright_body *vessel,
                                 double water_g,
                                 double water_c,
                                 struct cupwright_body *preheated,
                                 struct cupwright_error *error);

/**
 * Heat capacity of a vessel from one thermometer reading: water of known mass and temperature goes
 * in, beside bodies already known, and settles.
 *
 *     C = {m [h(t0) − h(t)] − Σ Cᵢ (t − tᵢ)} / (t − t_vessel)
 *
 * @param water_g The liquid, 0.1 to 400000 g.
 * @param water_c Its temperature before, 0 to 105 °C.
 * @param settled_c The temperature read, 0 to 105 °C.
 * @param vessel_c Temperature of the vessel before, -40 to 105 °C.
 * @param others Bodies already known. NULL where there are none.
 * @param count How many, 0 to 8.
 * @param[out] heat_capacity_j_per_k 0 to 1000000 J/K.
 *
 * Fails with CUPWRIGHT_STATUS_OUT_OF_RANGE for more than eight bodies;
 * CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE where the temperatures do not stand in order.
 */
int32_t cupwright_heat_vessel_heat_capacity(double water_g,
                                            double water_c,
                                            double settled_c,
                                            double vessel_c,
                                            const struct cupwright_body *others,
                                            size_t count,
                                            double *heat_capacity_j_per_k,
                                            struct cupwright_error *error);

/**
 * Temperature after a vapour loss that water and bodies, all at one temperature, pay for. A gram
 * of vapour costs 250 g of water 2.2 K.
 *
 *     (m − V) h(t) + C t = (m − V) h(t0) + C t0 − V L(t0)
 *
 * @param water_g The liquid, 0.1 to 400000 g.
 * @param water_c Temperature before, 0 to 105 °C.
 * @param vapour_g Vapour lost, 0 to 20000 g.
 * @param capacity_j_per_k Heat capacity of all bodies, 0 to 1000000 J/K.
 * @param[out] after_c 0 to 105 °C.
 *
 * Fails with CUPWRIGHT_STATUS_IMPOSSIBLE for as much vapour as liquid;
 * CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE where the rest would freeze.
 */
int32_t cupwright_heat_after_vapour(double water_g,
                                    double water_c,
                                    double vapour_g,
                                    double capacity_j_per_k,
                                    double *after_c,
                                    struct cupwright_error *error);

/**
 * Temperature after a pour that costs a drop. Estimates: CUPWRIGHT_THIN_STREAM_DROP_K,
 * CUPWRIGHT_DUMP_DROP_K.
 *
 * @param water_c Temperature before, 0 to 105 °C.
 * @param drop_k The drop, 0 to 105 K.
 * @param[out] after_c 0 to 105 °C.
 *
 * Fails with CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE below 0 °C.
 */
int32_t cupwright_heat_after_pour(double water_c,
                                  double drop_k,
                                  double *after_c,
                                  struct cupwright_error *error);

/**
 * Temperature before a pour that costs a drop: the inverse of cupwright_heat_after_pour().
 *
 * @param water_c Temperature after, 0 to 105 °C.
 * @param drop_k The drop, 0 to 105 K.
 * @param[out] before_c 0 to 105 °C.
 *
 * Fails with CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE above the range of the temperature.
 */
int32_t cupwright_heat_before_pour(double water_c,
                                   double drop_k,
                                   double *before_c,
                                   struct cupwright_error *error);

/**
 * Passes a temperature on if boiling water can be that hot.
 *
 * @param water_c Temperature, 0 to 105 °C.
 * @param boiling_c Boiling point here, 0 to 105 °C.
 * @param[out] reachable_c 0 to 105 °C.
 *
 * Fails with CUPWRIGHT_STATUS_INFEASIBLE above the boiling point; a hair below it is the nearest.
 */
int32_t cupwright_heat_reachable(double water_c,
                                 double boiling_c,
                                 double *reachable_c,
                                 struct cupwright_error *error);

/**
 * Time to cool from one temperature to another.
 *
 *     t = (1/k) ∫ dT/F(T),  F(T) = (T − Ta) + β [p(T) − RH p(Ta)]
 *
 * β is CUPWRIGHT_OPEN_CUP_K_PER_KPA open and 0 lidded, which is Newton's law. With a rate from two
 * readings ten minutes apart, measured cups were met within 0.8 K half an hour on.
 *
 * @param water_c Temperature now, 0 to 105 °C.
 * @param to_c Temperature wanted, 0 to 105 °C.
 * @param cooling_per_min Cooling rate, 0.000001 to 1 1/min.
 * @param surroundings The room.
 * @param[out] time_s 0 to 172800 s.
 *
 * Fails with CUPWRIGHT_STATUS_IMPOSSIBLE for a start not warmer than where cooling ends;
 * CUPWRIGHT_STATUS_INFEASIBLE for a goal that cooling does not reach;
 * CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE beyond the range of the time.
 */
int32_t cupwright_heat_time_to_cool(double water_c,
                                    double to_c,
                                    double cooling_per_min,
                                    const struct cupwright_surroundings *surroundings,
                                    double *time_s,
                                    struct cupwright_error *error);

/**
 * Cooling rate from two thermometer readings a known time apart, by the law of
 * cupwright_heat_time_to_cool(). Ten minutes apart is good.
 *
 * @param water_c First reading, 0 to 105 °C.
 * @param to_c Second reading, 0 to 105 °C.
 * @param time_s Time between them, 0 to 172800 s.
 * @param surroundings The room.
 * @param[out] cooling_per_min 0.000001 to 1 1/min.
 *
 * Fails with CUPWRIGHT_STATUS_IMPOSSIBLE for readings that are not in order or not above where
 * cooling ends; CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE outside the range of the rate, as for equal
 * readings or no time between them.
 */
int32_t cupwright_heat_cooling_rate(double water_c,
                                    double to_c,
                                    double time_s,
                                    const struct cupwright_surroundings *surroundings,
                                    double *cooling_per_min,
                                    struct cupwright_error *error);

/**
 * Temperature after a time: the inverse of cupwright_heat_time_to_cool().
 *
 * @param water_c Temperature now, 0 to 105 °C.
 * @param time_s Time, 0 to 172800 s.
 * @param cooling_per_min Cooling rate, 0.000001 to 1 1/min.
 * @param surroundings The room.
 * @param[out] after_c 0 to 105 °C.
 *
 * Fails with CUPWRIGHT_STATUS_IMPOSSIBLE for a start not warmer than where cooling ends;
 * CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE where it would freeze.
 */
int32_t cupwright_heat_temperature_after(double water_c,
                                         double time_s,
                                         double cooling_per_min,
                                         const struct cupwright_surroundings *surroundings,
                                         double *after_c,
                                         struct cupwright_error *error);

/**
 * Cooling rate of an open cup without a thermometer. Estimate, −50 to +40 %; two readings and
 * cupwright_heat_cooling_rate() are far better.
 *
 * @param water_g The drink, 0.1 to 400000 g.
 * @param heat_capacity_j_per_k Heat capacity of the cup, 0 to 1000000 J/K.
 * @param diameter_mm Inner diameter at the surface, 10 to 1000 mm.
 * @param[out] cooling_per_min 0.000001 to 1 1/min.
 *
 * Fails with CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE outside the range of the rate.
 */
int32_t cupwright_heat_open_cup_rate_estimate(double water_g,
                                              double heat_capacity_j_per_k,
                                              double diameter_mm,
                                              double *cooling_per_min,
                                              struct cupwright_error *error);

/**
 * Beverage expected, B = W − r D − hold-up − paper − drips − vapour.
 *
 * @param losses The losses.
 * @param dose_g Dose as weighed, 0.1 to 10000 g.
 * @param water_g Brew water, 0.1 to 200000 g.
 * @param[out] beverage_g 0.1 to 200000 g.
 *
 * Fails with CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE where nothing is left for the cup.
 */
int32_t cupwright_retention_beverage(const struct cupwright_losses *losses,
                                     double dose_g,
                                     double water_g,
                                     double *beverage_g,
                                     struct cupwright_error *error);

/**
 * Brew water for a beverage: the inverse of cupwright_retention_beverage() in W.
 *
 * @param losses The losses.
 * @param dose_g Dose as weighed, 0.1 to 10000 g.
 * @param beverage_g Beverage, 0.1 to 200000 g.
 * @param[out] water_g 0.1 to 200000 g.
 *
 * Fails with CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE outside the range of brew water.
 */
int32_t cupwright_retention_water_for_beverage(const struct cupwright_losses *losses,
                                               double dose_g,
                                               double beverage_g,
                                               double *water_g,
                                               struct cupwright_error *error);

/**
 * Dose that leaves a beverage from an amount of water: the inverse of
 * cupwright_retention_beverage() in D.
 *
 * @param losses The losses.
 * @param water_g Brew water, 0.1 to 200000 g.
 * @param beverage_g Beverage, 0.1 to 200000 g.
 * @param[out] dose_g 0.1 to 10000 g.
 *
 * Fails with CUPWRIGHT_STATUS_IMPOSSIBLE where the water does not leave that much with the
 * smallest dose; CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE outside the range of the dose.
 */
int32_t cupwright_retention_dose_for_beverage(const struct cupwright_losses *losses,
                                              double water_g,
                                              double beverage_g,
                                              double *dose_g,
                                              struct cupwright_error *error);

/**
 * Apparent retention from one brew on a scale, r = (W − B − hold-up − paper − drips − vapour)/D.
 * The retention in the losses is not used, but must be in its range.
 *
 * @param losses The losses.
 * @param dose_g Dose as weighed, 0.1 to 10000 g.
 * @param water_g Brew water, 0.1 to 200000 g.
 * @param beverage_g Beverage, 0.1 to 200000 g.
 * @param[out] apparent_retention_g_per_g 0 to 10 g/g.
 *
 * Fails with CUPWRIGHT_STATUS_IMPOSSIBLE for less water than the beverage and the other losses
 * take; CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE above the range of the retention.
 */
int32_t cupwright_retention_of_brew(const struct cupwright_losses *losses,
                                    double dose_g,
                                    double water_g,
                                    double beverage_g,
                                    double *apparent_retention_g_per_g,
                                    struct cupwright_error *error);

/**
 * Apparent retention as a scale alone sees it, r = (W − B)/D.
 *
 * @param dose_g Dose as weighed, 0.1 to 10000 g.
 * @param water_g Brew water, 0.1 to 200000 g.
 * @param beverage_g Beverage, 0.1 to 200000 g.
 * @param[out] apparent_retention_g_per_g 0 to 10 g/g.
 *
 * Fails with CUPWRIGHT_STATUS_IMPOSSIBLE for less brew water than beverage;
 * CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE above the range of the retention.
 */
int32_t cupwright_retention_apparent_retention(double dose_g,
                                               double water_g,
                                               double beverage_g,
                                               double *apparent_retention_g_per_g,
                                               struct cupwright_error *error);

/**
 * True retention, the liquid that the grounds hold with its dissolved coffee, from what a scale
 * sees, r + E + h − V/D.
 *
 * @param apparent_retention_g_per_g What a scale sees, 0 to 10 g/g.
 * @param yield_pct Extraction yield, 0 to 100 %.
 * @param moisture_pct Moisture of the dose, 0 to 15 %.
 * @param vapour_g Vapour that the apparent retention still contains, 0 to 20000 g; 0 where it was
 *     taken out before.
 * @param dose_g Dose as weighed, 0.1 to 10000 g.
 * @param[out] true_retention_g_per_g 0 to 15 g/g.
 *
 * Fails with CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE where the vapour is more than all that is
 * missing.
 */
int32_t cupwright_retention_true_retention(double apparent_retention_g_per_g,
                                           double yield_pct,
                                           double moisture_pct,
                                           double vapour_g,
                                           double dose_g,
                                           double *true_retention_g_per_g,
                                           struct cupwright_error *error);

/**
 * What a scale sees from true retention: the inverse of cupwright_retention_true_retention().
 *
 * @param true_retention_g_per_g Liquid held per dose, 0 to 15 g/g.
 * @param yield_pct Extraction yield, 0 to 100 %.
 * @param moisture_pct Moisture of the dose, 0 to 15 %.
 * @param vapour_g Vapour lost, 0 to 20000 g.
 * @param dose_g Dose as weighed, 0.1 to 10000 g.
 * @param[out] apparent_retention_g_per_g 0 to 10 g/g.
 *
 * Fails with CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE below zero: the grounds hold less than they
 * dissolved.
 */
int32_t cupwright_retention_apparent_of_true_retention(double true_retention_g_per_g,
                                                       double yield_pct,
                                                       double moisture_pct,
                                                       double vapour_g,
                                                       double dose_g,
                                                       double *apparent_retention_g_per_g,
                                                       struct cupwright_error *error);

/**
 * True retention per dose from the water content w of spent grounds, w/(1 − w) · (1 − E). Low by
 * about T/(1 − w): it counts the kept liquid's solids as grounds.
 *
 * @param spent_moisture_pct Water in wet spent grounds, 0 to 95 %.
 * @param yield_pct Extraction yield, 0 to 100 %.
 * @param[out] true_retention_g_per_g 0 to 15 g/g.
 *
 * Fails with CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE outside the range of the retention.
 */
int32_t cupwright_retention_of_spent_moisture(double spent_moisture_pct,
                                              double yield_pct,
                                              double *true_retention_g_per_g,
                                              struct cupwright_error *error);

/**
 * The range that n readings exceed once in twenty times, f(n) s_r, in % strength. Source: ISO
 * 5725-6, acceptability of results.
 *
 * @param readings How many readings, at least 2, 1 to 10.
 * @param repeatability_pct Standard deviation of readings of one sample by one person on one
 *     instrument, % strength, 0.0005 to 2 % strength.
 * @param[out] critical_range_pct The range, % strength.
 *
 * Fails with CUPWRIGHT_STATUS_OUT_OF_RANGE for fewer than two.
 */
int32_t cupwright_reading_critical_range(int32_t readings,
                                         double repeatability_pct,
                                         double *critical_range_pct,
                                         struct cupwright_error *error);

/**
 * Combines repeated readings of one sample by the acceptance rule of ISO 5725-6. A display that
 * steps by 0.01 % adds to the scatter: with a repeatability of the sample alone pass √(s_r² +
 * 0.01²/12).
 *
 * @param strength_pct The readings, each 0 to 50 %.
 * @param count How many, 1 to 10.
 * @param repeatability_pct Standard deviation of readings of one sample by one person on one
 *     instrument, % strength, 0.0005 to 2 % strength.
 * @param[out] combined The value and what it rests on.
 *
 * Fails with CUPWRIGHT_STATUS_OUT_OF_RANGE for no reading or more than ten.
 */
int32_t cupwright_reading_combine(const double *strength_pct,
                                  size_t count,
                                  double repeatability_pct,
                                  struct cupwright_combined *combined,
                                  struct cupwright_error *error);

/**
 * Standard deviation of repeated readings, one's own repeatability, √[Σ(x − x̄)²/(n − 1)]. From
 * three readings it is itself uncertain by half; pool several series.
 *
 * @param strength_pct The readings, each 0 to 50 %.
 * @param count How many, 1 to 10.
 * @param[out] repeatability_pct 0.0005 to 2 % strength.
 *
 * Fails with CUPWRIGHT_STATUS_OUT_OF_RANGE for fewer than two readings or more than ten;
 * CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE for readings that are all equal: the display is too coarse
 * to tell.
 */
int32_t cupwright_reading_repeatability(const double *strength_pct,
                                        size_t count,
                                        double *repeatability_pct,
                                        struct cupwright_error *error);

/**
 * Strength of all solids in the beverage, which the mass balance works with: on distilled water
 * the reading itself, on brew water T + s(1 − T).
 *
 * @param strength_pct The reading, 0 to 50 %.
 * @param zero What the instrument was zeroed on: one of enum cupwright_zero.
 * @param water_solids_mg_per_l Solids of the water, 0 to 5000 mg/L.
 * @param[out] total_pct 0 to 50 %.
 *
 * Fails with CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE for a reading on brew water so near the highest
 * strength that the water's solids lead past it.
 */
int32_t cupwright_reading_total_strength(double strength_pct,
                                         int32_t zero,
                                         double water_solids_mg_per_l,
                                         double *total_pct,
                                         struct cupwright_error *error);

/**
 * Strength in coffee solids alone: on brew water the reading itself, on distilled water (T − s)/(1
 * − s).
 *
 * @param strength_pct The reading, 0 to 50 %.
 * @param zero What the instrument was zeroed on: one of enum cupwright_zero.
 * @param water_solids_mg_per_l Solids of the water, 0 to 5000 mg/L.
 * @param[out] coffee_pct 0 to 50 %.
 *
 * Fails with CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE for a reading on a distilled zero below the
 * water's own solids.
 */
int32_t cupwright_reading_coffee_strength(double strength_pct,
                                          int32_t zero,
                                          double water_solids_mg_per_l,
                                          double *coffee_pct,
                                          struct cupwright_error *error);

/**
 * Degrees Brix of a refractive index at 20 °C and 589 nm. Source: fitted to the ICUMSA 1974
 * sucrose table, 0 to 30 °Bx, within 0.005 °Bx.
 *
 * @param refractive_index Refractive index relative to air, 1.33 to 1.382.
 * @param[out] brix -2 to 30.5 °Bx.
 *
 * Fails with CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE outside the range of Brix.
 */
int32_t cupwright_reading_brix_of_index(double refractive_index,
                                        double *brix,
                                        struct cupwright_error *error);

/**
 * Refractive index at 20 °C and 589 nm of degrees Brix. Source: a fit of its own to the same
 * table, within 0.000007.
 *
 * @param brix Degrees Brix, -2 to 30.5 °Bx.
 * @param[out] refractive_index 1.33 to 1.382.
 *
 * Fails with CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE outside the range of the index.
 */
int32_t cupwright_reading_index_of_brix(double brix,
                                        double *refractive_index,
                                        struct cupwright_error *error);

/**
 * A Brix reading at the sample's temperature, corrected to 20 °C. Only for an instrument that does
 * not compensate by itself and was zeroed at 20 °C; zeroing on water at the sample's temperature
 * is better. Source: fitted to IAPWS R9-97, within 0.1 °Bx for coffee at 10 to 30 °C.
 *
 * @param brix Degrees Brix, -2 to 30.5 °Bx.
 * @param sample_c Temperature of the sample, 10 to 40 °C.
 * @param[out] corrected_brix -2 to 30.5 °Bx.
 *
 * Fails with CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE outside the range of Brix.
 */
int32_t cupwright_reading_brix_at_20(double brix,
                                     double sample_c,
                                     double *corrected_brix,
                                     struct cupwright_error *error);

/**
 * Strength from degrees Brix at 20 °C or compensated, T = k B.
 *
 * @param brix Degrees Brix, -2 to 30.5 °Bx.
 * @param refractive_factor_pct_per_brix Strength per degree Brix, 0.3 to 2 %/°Bx.
 *     CUPWRIGHT_USUAL_REFRACTIVE_FACTOR_PCT_PER_BRIX has a weak basis: calibrate where it matters.
 * @param[out] strength_pct 0 to 50 %.
 *
 * Fails with CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE below zero or above the range of the strength.
 */
int32_t cupwright_reading_strength_of_brix(double brix,
                                           double refractive_factor_pct_per_brix,
                                           double *strength_pct,
                                           struct cupwright_error *error);

/**
 * Degrees Brix that a strength would show, T/k.
 *
 * @param strength_pct Strength, 0 to 50 %.
 * @param refractive_factor_pct_per_brix Strength per degree Brix, 0.3 to 2 %/°Bx.
 *     CUPWRIGHT_USUAL_REFRACTIVE_FACTOR_PCT_PER_BRIX has a weak basis: calibrate where it matters.
 * @param[out] brix -2 to 30.5 °Bx.
 *
 * Fails with CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE above the range of Brix.
 */
int32_t cupwright_reading_brix_of_strength(double strength_pct,
                                           double refractive_factor_pct_per_brix,
                                           double *brix,
                                           struct cupwright_error *error);

/**
 * Strength from a refractive index read at the sample's temperature: Brix, corrected to 20 °C,
 * times the factor.
 *
 * @param refractive_index Refractive index relative to air, 1.33 to 1.382.
 * @param sample_c Temperature of the sample, 10 to 40 °C.
 * @param refractive_factor_pct_per_brix Strength per degree Brix, 0.3 to 2 %/°Bx.
 *     CUPWRIGHT_USUAL_REFRACTIVE_FACTOR_PCT_PER_BRIX has a weak basis: calibrate where it matters.
 * @param[out] strength_pct 0 to 50 %.
 *
 * Fails with CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE for an index below that of water.
 */
int32_t cupwright_reading_strength_of_index(double refractive_index,
                                            double sample_c,
                                            double refractive_factor_pct_per_brix,
                                            double *strength_pct,
                                            struct cupwright_error *error);

/**
 * Extraction yield of a brew from its strength, by the mass balance.
 *
 *     E = [τ(B + φQ) + s(hD − V)] / [D(1 − s − φτ)],  τ = T − s,  Q = W + hD − V − B
 *
 * The strength counts all solids, those of the water too: cupwright_reading_total_strength() makes
 * it from a reading.
 *
 * @param brew The brew.
 * @param strength_pct Strength, 0 to 50 %.
 * @param[out] yield_pct 0 to 100 %.
 *
 * Fails with CUPWRIGHT_STATUS_IMPOSSIBLE for less water than such a beverage takes or a strength
 * below that of the water itself; CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE for a yield above 100 % or
 * below zero.
 */
int32_t cupwright_extraction_yield(const struct cupwright_brew *brew,
                                   double strength_pct,
                                   double *yield_pct,
                                   struct cupwright_error *error);

/**
 * Strength of a brew from its yield: the inverse of cupwright_extraction_yield().
 *
 *     τ = [E D(1 − s) − s(hD − V)] / [B + φQ + φE D],  T = τ + s
 *
 * @param brew The brew.
 * @param yield_pct Extraction yield, 0 to 100 %.
 * @param[out] strength_pct 0 to 50 %.
 *
 * Fails with CUPWRIGHT_STATUS_IMPOSSIBLE for less water than such a beverage takes;
 * CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE outside the range of the strength.
 */
int32_t cupwright_extraction_strength(const struct cupwright_brew *brew,
                                      double yield_pct,
                                      double *strength_pct,
                                      struct cupwright_error *error);

/**
 * Beverage that a brew must have given, from its strength and yield. The beverage in the brew is
 * not used, but must be in its range.
 *
 *     B = {[E D(1 − s − φτ) − s(hD − V)]/τ − φ(W + hD − V)} / (1 − φ)
 *
 * @param brew The brew.
 * @param strength_pct Strength, 0 to 50 %.
 * @param yield_pct Extraction yield, 0 to 100 %.
 * @param[out] beverage_g 0.1 to 200000 g.
 *
 * Fails with CUPWRIGHT_STATUS_OUT_OF_RANGE for a held strength of 100 %, since a steeped brew's
 * strength says nothing of how much was drained; CUPWRIGHT_STATUS_IMPOSSIBLE for a strength not
 * above the water's own or too little water; CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE outside the
 * range of the beverage.
 */
int32_t cupwright_extraction_beverage(const struct cupwright_brew *brew,
                                      double strength_pct,
                                      double yield_pct,
                                      double *beverage_g,
                                      struct cupwright_error *error);

/**
 * Liquid kept by grounds, paper and chamber, its dissolved coffee included, L = Q + E D.
 *
 * @param brew The brew.
 * @param yield_pct Extraction yield, 0 to 100 %.
 * @param[out] retained_g 0 to 250000 g.
 *
 * Fails with CUPWRIGHT_STATUS_IMPOSSIBLE for less water than such a beverage takes.
 */
int32_t cupwright_extraction_retained_liquid(const struct cupwright_brew *brew,
                                             double yield_pct,
                                             double *retained_g,
                                             struct cupwright_error *error);

/**
 * The flow-through form of the yield, E = T B/D: kept liquid is plain water. The form of the
 * published brewing control chart; right for a long drip, low for a steep.
 *
 * @param strength_pct Strength, 0 to 50 %.
 * @param beverage_g Beverage, 0.1 to 200000 g.
 * @param dose_g Dose as weighed, 0.1 to 10000 g.
 * @param[out] yield_pct 0 to 100 %.
 *
 * Fails with CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE for a yield above 100 %.
 */
int32_t cupwright_extraction_flow_through_yield(double strength_pct,
                                                double beverage_g,
                                                double dose_g,
                                                double *yield_pct,
                                                struct cupwright_error *error);

/**
 * Strength from the flow-through form, T = E D/B.
 *
 * @param yield_pct Extraction yield, 0 to 100 %.
 * @param beverage_g Beverage, 0.1 to 200000 g.
 * @param dose_g Dose as weighed, 0.1 to 10000 g.
 * @param[out] strength_pct 0 to 50 %.
 *
 * Fails with CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE outside the range of the strength.
 */
int32_t cupwright_extraction_flow_through_strength(double yield_pct,
                                                   double beverage_g,
                                                   double dose_g,
                                                   double *strength_pct,
                                                   struct cupwright_error *error);

/**
 * The steeped form of the yield, E = (W/D) T/(1 − T): all liquid is as strong as the beverage.
 * Right for a steep that is stirred and then pressed or drained.
 *
 * @param strength_pct Strength, 0 to 50 %.
 * @param water_g Brew water, 0.1 to 200000 g.
 * @param dose_g Dose as weighed, 0.1 to 10000 g.
 * @param[out] yield_pct 0 to 100 %.
 *
 * Fails with CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE for a yield above 100 %.
 */
int32_t cupwright_extraction_steeped_yield(double strength_pct,
                                           double water_g,
                                           double dose_g,
                                           double *yield_pct,
                                           struct cupwright_error *error);

/**
 * Strength of a steep, T = E/(R + E). At CUPWRIGHT_EQUILIBRIUM_YIELD_PCT the published equilibrium
 * of a full steep (Liang, Chan & Ristenpart 2021, doi 10.1038/s41598-021-85787-1).
 *
 * @param yield_pct Extraction yield, 0 to 100 %.
 * @param water_ratio_g_per_g Brew water per dose, 0.2 to 200 g/g.
 * @param[out] strength_pct 0 to 50 %.
 *
 * Fails with CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE outside the range of the strength.
 */
int32_t cupwright_extraction_steeped_strength(double yield_pct,
                                              double water_ratio_g_per_g,
                                              double *strength_pct,
                                              struct cupwright_error *error);

/**
 * Water ratio at which a steep reaches a strength, R = E(1 − T)/T.
 *
 * @param yield_pct Extraction yield, 0 to 100 %.
 * @param strength_pct Strength, 0 to 50 %.
 * @param[out] water_ratio_g_per_g 0.2 to 200 g/g.
 *
 * Fails with CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE outside the range of the ratio.
 */
int32_t cupwright_extraction_steeped_ratio(double yield_pct,
                                           double strength_pct,
                                           double *water_ratio_g_per_g,
                                           struct cupwright_error *error);

/**
 * Yield that oven-drying the spent grounds would show for a steep, E [1 − r/(R + E)]: the kept
 * liquid dries into the grounds, so the oven reads low.
 *
 * @param yield_pct Extraction yield, 0 to 100 %.
 * @param water_ratio_g_per_g Brew water per dose, 0.2 to 200 g/g.
 * @param true_retention_g_per_g Liquid held per dose, 0 to 15 g/g.
 * @param[out] oven_yield_pct 0 to 100 %.
 *
 * Fails with CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE where more liquid is kept than there is.
 */
int32_t cupwright_extraction_oven_dried_yield(double yield_pct,
                                              double water_ratio_g_per_g,
                                              double true_retention_g_per_g,
                                              double *oven_yield_pct,
                                              struct cupwright_error *error);

/**
 * Yield per dry coffee from yield per coffee as weighed, E/(1 − h).
 *
 * @param yield_pct Extraction yield, 0 to 100 %.
 * @param moisture_pct Moisture of the dose, 0 to 15 %.
 * @param[out] dry_yield_pct 0 to 100 %.
 *
 * Fails with CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE for a yield above 100 %.
 */
int32_t cupwright_extraction_dry_basis_yield(double yield_pct,
                                             double moisture_pct,
                                             double *dry_yield_pct,
                                             struct cupwright_error *error);

/**
 * Yield per coffee as weighed from yield per dry coffee: the inverse of
 * cupwright_extraction_dry_basis_yield().
 *
 * @param yield_pct Yield per dry coffee, 0 to 100 %.
 * @param moisture_pct Moisture of the dose, 0 to 15 %.
 * @param[out] as_weighed_yield_pct 0 to 100 %.
 */
int32_t cupwright_extraction_as_weighed_yield(double yield_pct,
                                              double moisture_pct,
                                              double *as_weighed_yield_pct,
                                              struct cupwright_error *error);

/**
 * Yield after a time of contact.
 *
 *     E(t) = E∞ [f(1 − e^(−t/τ1)) + (1 − f)(1 − e^(−t/τ2))]
 *
 * Valid at the grind and temperature of the kinetics, stirred, with water in plenty.
 *
 * @param kinetics The coffee.
 * @param time_s Time of contact, 0 to 172800 s.
 * @param[out] yield_pct 0 to 100 %.
 */
int32_t cupwright_extraction_yield_at_time(const struct cupwright_kinetics *kinetics,
                                           double time_s,
                                           double *yield_pct,
                                           struct cupwright_error *error);

/**
 * Time of contact for a yield: the inverse of cupwright_extraction_yield_at_time().
 *
 * @param kinetics The coffee.
 * @param yield_pct Yield wanted, 0 to 100 %.
 * @param[out] time_s 0 to 172800 s.
 *
 * Fails with CUPWRIGHT_STATUS_INFEASIBLE for a yield that it does not reach within two days, the
 * longest time there is.
 */
int32_t cupwright_extraction_time_for_yield(const struct cupwright_kinetics *kinetics,
                                            double yield_pct,
                                            double *time_s,
                                            struct cupwright_error *error);

/**
 * The yield of a brew, judged: a yield near or above what coffee can give is a reason to doubt an
 * input, not to praise the brew. Each doubt says what one input would have to be, all others kept,
 * for the yield to come down to 26 %, the end of what is ordinary.
 *
 * @param brew The brew.
 * @param strength_pct Strength, 0 to 50 %.
 * @param[out] plausibility The yield and the doubts.
 *
 * Fails with what cupwright_extraction_yield() fails with.
 */
int32_t cupwright_extraction_plausibility(const struct cupwright_brew *brew,
                                          double strength_pct,
                                          struct cupwright_plausibility *plausibility,
                                          struct cupwright_error *error);

/**
 * Where a cup stands in a window, without regard to how sure its numbers are. The yield must be
 * counted as the window counts it.
 *
 * @param window The window.
 * @param strength_pct Strength, 0 to 50 %.
 * @param yield_pct Extraction yield, 0 to 100 %; must be in its range even where the window has none.
 * @param[out] standing Where it stands.
 *
 * Fails with CUPWRIGHT_STATUS_EMPTY_BAND where a lowest edge is not below its highest.
 */
int32_t cupwright_verdict_stand(const struct cupwright_window *window,
                                double strength_pct,
                                double yield_pct,
                                struct cupwright_standing *standing,
                                struct cupwright_error *error);

/**
 * Coverage factor: the two-sided quantile of Student's distribution, of any degrees of freedom
 * from 1, whole or not; for the highest the normal distribution's. Relative error below 10⁻¹¹.
 * Source: GUM G.3.
 *
 *     P(|T| ≤ k) = confidence
 *
 * @param confidence_pct How sure the statement has to be, 50 to 99.9 %.
 * @param degrees_of_freedom Of the uncertainty, 1 to 1000000000.
 * @param[out] coverage_factor 0.5 to 1000.
 */
int32_t cupwright_uncertainty_coverage_factor(double confidence_pct,
                                              double degrees_of_freedom,
                                              double *coverage_factor,
                                              struct cupwright_error *error);

/**
 * Expanded uncertainty U = k u for a confidence: "1.44 % ± 0.05 %".
 *
 * @param estimate The value.
 * @param confidence_pct How sure the statement has to be, 50 to 99.9 %.
 * @param[out] expanded The interval.
 *
 * Fails with CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE for a half-width past the range of the
 * uncertainty.
 */
int32_t cupwright_uncertainty_expanded(const struct cupwright_estimate *estimate,
                                       double confidence_pct,
                                       struct cupwright_expanded *expanded,
                                       struct cupwright_error *error);

/**
 * Mean of repeats and its standard uncertainty (type A evaluation).
 *
 *     u = s/√n,   s² = Σ(x − x̄)²/(n − 1),   ν = n − 1
 *
 * Two or three repeats say little about their own scatter: then cupwright_uncertainty_pooled()
 * from earlier series is better. Repeats that are all equal give zero, because the display hides
 * the scatter: put cupwright_uncertainty_of_display() beside it by
 * cupwright_uncertainty_together(). Source: GUM 4.2.
 *
 * @param value The repeats, each -1000000000 to 1000000000.
 * @param count How many, 2 to 100.
 * @param[out] mean The mean and how sure it is.
 *
 * Fails with CUPWRIGHT_STATUS_OUT_OF_RANGE for a single repeat or more than a hundred.
 */
int32_t cupwright_uncertainty_of_repeats(const double *value,
                                         size_t count,
                                         struct cupwright_mean *mean,
                                         struct cupwright_error *error);

/**
 * Standard uncertainty of a mean of n readings, from the scatter of earlier series.
 *
 *     u = s_p/√n,   s_p² = Σ νᵢ sᵢ²/Σ νᵢ,   ν = Σ νᵢ
 *
 * Where there are more than ten series, pool in steps, with n = 1. Source: GUM 4.2.4.
 *
 * @param series The series.
 * @param count How many, 1 to 10.
 * @param readings How many readings the mean is of, 1 to 10.
 * @param[out] standard The uncertainty of the mean.
 *
 * Fails with CUPWRIGHT_STATUS_OUT_OF_RANGE for no series or more than ten.
 */
int32_t cupwright_uncertainty_pooled(const struct cupwright_series *series,
                                     size_t count,
                                     int32_t readings,
                                     struct cupwright_standard *standard,
                                     struct cupwright_error *error);

/**
 * A strength from repeated readings, by the rule of cupwright_reading_combine(), and its standard
 * uncertainty.
 *
 *     u = s_r/√n, with the ν of s_r             one reading, or several that agree
 *     u = s/√n,   ν = n − 1, s their own        where they do not: two so far, or their median
 *
 * Readings that do not agree have shown that s_r is not their scatter.
 *
 * @param strength_pct The readings, each 0 to 50 %.
 * @param count How many, 1 to 10.
 * @param repeatability One's own repeatability s_r.
 * @param[out] read The strength.
 *
 * Fails with CUPWRIGHT_STATUS_OUT_OF_RANGE for no reading or more than ten.
 */
int32_t cupwright_uncertainty_of_readings(const double *strength_pct,
                                          size_t count,
                                          const struct cupwright_repeatability_estimate *repeatability,
                                          struct cupwright_strength_estimate *read,
                                          struct cupwright_error *error);

/**
 * Several independent errors of one value, u² = Σ uᵢ²: the scatter of readings and the step of
 * their display, a thermometer and its place. Source: GUM 5.1.2, G.4.1.
 *
 * @param errors Their uncertainties, all in one unit.
 * @param count How many, 1 to 10.
 * @param[out] standard All of them together.
 *
 * Fails with CUPWRIGHT_STATUS_OUT_OF_RANGE for none or more than ten;
 * CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE past the range of the uncertainty.
 */
int32_t cupwright_uncertainty_together(const struct cupwright_standard *errors,
                                       size_t count,
                                       struct cupwright_standard *standard,
                                       struct cupwright_error *error);

/**
 * Standard uncertainty of an error that lies within ± a (type B evaluation).
 *
 *     u = a/√3 rectangular,   a/√6 triangular,   a/√2 arcsine
 *
 * It counts as known; where the limit itself is a guess, cupwright_uncertainty_freedom_of_doubt()
 * says how well. Source: GUM 4.3.7, 4.3.9, and H.1 for a cyclic temperature.
 *
 * @param limit The limit a, 0 to 1000000000.
 * @param shape What is known of the error: one of enum cupwright_shape.
 * @param[out] standard Its uncertainty.
 */
int32_t cupwright_uncertainty_of_limit(double limit,
                                       int32_t shape,
                                       struct cupwright_standard *standard,
                                       struct cupwright_error *error);

/**
 * Standard uncertainty that a display of step d adds, u = d/√12. Source: GUM F.2.2.1.
 *
 * @param step The step d, 0 to 1000000000.
 * @param[out] standard Its uncertainty.
 */
int32_t cupwright_uncertainty_of_display(double step,
                                         struct cupwright_standard *standard,
                                         struct cupwright_error *error);

/**
 * Standard uncertainty from a certificate that says "± U, k", u = U/k. Source: GUM 4.3.3.
 *
 * @param expanded The expanded uncertainty U, 0 to 1000000000.
 * @param coverage_factor The k, 0.5 to 1000; most often 2.
 * @param[out] standard The standard uncertainty.
 *
 * Fails with CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE for a U at the end of its range over a k below
 * one.
 */
int32_t cupwright_uncertainty_of_expanded(double expanded,
                                          double coverage_factor,
                                          struct cupwright_standard *standard,
                                          struct cupwright_error *error);

/**
 * Degrees of freedom of an uncertainty that is itself uncertain by Δu/u, ν = ½ (Δu/u)⁻². A quarter
 * gives 8; less than 0.0022 % counts as known. Source: GUM G.4.2, equation G.3.
 *
 * @param doubt_pct How uncertain the uncertainty is, over itself, 0 to 70 %.
 * @param[out] degrees_of_freedom 1 to 1000000000.
 */
int32_t cupwright_uncertainty_freedom_of_doubt(double doubt_pct,
                                               double *degrees_of_freedom,
                                               struct cupwright_error *error);

/**
 * A budget of one's own, from sensitivities and uncertainties in any units. Of what the linear
 * rule leaves out it says nothing.
 *
 *     u² = Σ cᵢ² uᵢ²                       GUM 5.1.2
 *     ν = u⁴ / Σ (cᵢ uᵢ)⁴/νᵢ               GUM G.4.1
 *
 * @param value The result, -1000000000 to 1000000000.
 * @param influences What moves it.
 * @param count How many, 1 to 10.
 * @param[out] budget The budget.
 *
 * Fails with CUPWRIGHT_STATUS_OUT_OF_RANGE for no influence or more than ten;
 * CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE past the range of the uncertainty.
 */
int32_t cupwright_uncertainty_combine(double value,
                                      const struct cupwright_influence *influences,
                                      size_t count,
                                      struct cupwright_budget *budget,
                                      struct cupwright_error *error);

/**
 * Strength of all solids in the beverage, from a reading r; see
 * cupwright_reading_total_strength().
 *
 *     T = x + s(1 − x),  x = (r + e)(1 + f)       zeroed on brew water
 *     T = x                                       zeroed on distilled water
 *
 * Terms: reading, instrument e, factor f, water solids s. Leave the factor at 0 where it is to be
 * kept apart for yields and comparisons.
 *
 * @param strength The reading, mean of repeats, with their scatter.
 * @param instrument The instrument's own error.
 * @param factor The coffee's refractive factor.
 * @param zero What the instrument was zeroed on: one of enum cupwright_zero.
 * @param water_solids Solids of the brew water.
 * @param[out] budget The strength and its budget, in %.
 *
 * Fails with what cupwright_reading_total_strength() fails with, and
 * CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE for an uncertainty past its range.
 */
int32_t cupwright_uncertainty_strength(const struct cupwright_strength_estimate *strength,
                                       const struct cupwright_instrument_uncertainty *instrument,
                                       const struct cupwright_factor_uncertainty *factor,
                                       int32_t zero,
                                       const struct cupwright_water_solids_estimate *water_solids,
                                       struct cupwright_budget *budget,
                                       struct cupwright_error *error);

/**
 * Strength from a reading in degrees Brix, T = k B; see cupwright_reading_strength_of_brix().
 *
 *     u(T)² = (k u(B))² + (T u(k)/k)²
 *
 * Terms: Brix, factor. The factor's error is common to all readings of one coffee: where it is given
 * apart for yields and comparisons, let it be 0 here.
 *
 * @param brix The reading.
 * @param factor The coffee's refractive factor k.
 * @param[out] budget The strength, %, and its budget.
 *
 * Fails with CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE for a strength or an uncertainty past its range.
 */
int32_t cupwright_uncertainty_strength_of_brix(const struct cupwright_brix_estimate *brix,
                                               const struct cupwright_refractive_factor_estimate *factor,
                                               struct cupwright_budget *budget,
                                               struct cupwright_error *error);

/**
 * The flow-through form of the yield, E = T B/D; see cupwright_extraction_flow_through_yield().
 *
 *     (u(E)/E)² = (u(T)/T)² + (u(B)/B)² + (u(D)/D)² + f²
 *
 * Terms: strength, beverage, dose, factor. The span of the scale cancels.
 *
 * @param strength Strength.
 * @param beverage Beverage.
 * @param dose Dose.
 * @param factor The coffee's refractive factor.
 * @param[out] budget The yield and its budget, in %.
 *
 * Fails with CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE for a yield above 100 % or an uncertainty past
 * its range.
 */
int32_t cupwright_uncertainty_flow_through_yield(const struct cupwright_strength_estimate *strength,
                                                 const struct cupwright_beverage_estimate *beverage,
                                                 const struct cupwright_dose_estimate *dose,
                                                 const struct cupwright_factor_uncertainty *factor,
                                                 struct cupwright_budget *budget,
                                                 struct cupwright_error *error);

/**
 * The steeped form of the yield, E = (W/D) T/(1 − T); see cupwright_extraction_steeped_yield().
 *
 *     (u(E)/E)² = (u(T)/[T(1 − T)])² + (u(W)/W)² + (u(D)/D)² + (f/(1 − T))²
 *
 * Terms: strength, brew water, dose, factor. The span of the scale cancels.
 *
 * @param strength Strength.
 * @param water Brew water.
 * @param dose Dose.
 * @param factor The coffee's refractive factor.
 * @param[out] budget The yield and its budget, in %.
 *
 * Fails with CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE for a yield above 100 % or an uncertainty past
 * its range.
 */
int32_t cupwright_uncertainty_steeped_yield(const struct cupwright_strength_estimate *strength,
                                            const struct cupwright_water_estimate *water,
                                            const struct cupwright_dose_estimate *dose,
                                            const struct cupwright_factor_uncertainty *factor,
                                            struct cupwright_budget *budget,
                                            struct cupwright_error *error);

/**
 * The yield by the whole mass balance; see cupwright_extraction_yield(). Terms in the order of the
 * fields. What is left of the scale's span is the vapour's, if that was not weighed.
 *
 * @param measured The brew.
 * @param[out] budget The yield and its budget, in %.
 *
 * Fails with what cupwright_extraction_yield() fails with, and
 * CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE for an uncertainty past its range.
 */
int32_t cupwright_uncertainty_extraction_yield(const struct cupwright_measured *measured,
                                               struct cupwright_budget *budget,
                                               struct cupwright_error *error);

/**
 * Strength that a steep will have, T = E D/(W + E D); see cupwright_extraction_steeped_strength().
 *
 *     ∂T/∂E = D W/(W + ED)²    ∂T/∂D = E W/(W + ED)²    ∂T/∂W = −E D/(W + ED)²
 *
 * Terms: yield, dose, brew water. The yield's uncertainty is how far it differs from brew to brew.
 *
 * @param expected The yield to expect.
 * @param dose Dose.
 * @param water Brew water.
 * @param[out] budget The strength and its budget, in %.
 *
 * Fails with CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE for a ratio, a strength or an uncertainty past
 * its range.
 */
int32_t cupwright_uncertainty_steeped_strength(const struct cupwright_yield_estimate *expected,
                                               const struct cupwright_dose_estimate *dose,
                                               const struct cupwright_water_estimate *water,
                                               struct cupwright_budget *budget,
                                               struct cupwright_error *error);

/**
 * Beverage that a brew will give, B = W − r D − losses; see cupwright_retention_beverage().
 *
 * Terms: brew water, dose, retention, other losses.
 *
 * @param losses What the brewer keeps.
 * @param retention How uncertain its retention is.
 * @param other How uncertain its other losses are together.
 * @param dose Dose.
 * @param water Brew water.
 * @param[out] budget The beverage and its budget, in g.
 *
 * Fails with what cupwright_retention_beverage() fails with, and
 * CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE for an uncertainty past its range.
 */
int32_t cupwright_uncertainty_beverage(const struct cupwright_losses *losses,
                                       const struct cupwright_retention_uncertainty *retention,
                                       const struct cupwright_losses_uncertainty *other,
                                       const struct cupwright_dose_estimate *dose,
                                       const struct cupwright_water_estimate *water,
                                       struct cupwright_budget *budget,
                                       struct cupwright_error *error);

/**
 * Water to add for a wanted strength, A = B (T − T')/(T' − s); see
 * cupwright_dilution_water_to_reach().
 *
 *     ∂A/∂B = A/B    ∂A/∂T = B/(T' − s)    ∂A/∂s = A/(T' − s)
 *
 * Terms: beverage, strength, water solids. The wish is exact. On the scale that weighed the
 * beverage its span cancels.
 *
 * @param beverage The brew.
 * @param strength Its strength.
 * @param wanted_pct Strength wanted, 0 to 50 %.
 * @param water_solids Solids of the water that is added.
 * @param[out] budget The water and its budget, in g.
 *
 * Fails with what cupwright_dilution_water_to_reach() fails with, and
 * CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE for an uncertainty past its range.
 */
int32_t cupwright_uncertainty_water_to_reach(const struct cupwright_beverage_estimate *beverage,
                                             const struct cupwright_strength_estimate *strength,
                                             double wanted_pct,
                                             const struct cupwright_water_solids_estimate *water_solids,
                                             struct cupwright_budget *budget,
                                             struct cupwright_error *error);

/**
 * Strength after adding water, or with s = 0 milk, T' = (T B + s A)/(B + A); see
 * cupwright_dilution_strength_after_water().
 *
 *     ∂T'/∂B = (T − T')/(B + A)    ∂T'/∂T = B/(B + A)
 *     ∂T'/∂A = (s − T')/(B + A)    ∂T'/∂s = A/(B + A)
 *
 * Terms: beverage, strength, addition, water solids. The span of the scale cancels.
 *
 * @param beverage The brew.
 * @param strength Its strength.
 * @param added The water added.
 * @param water_solids Its solids.
 * @param[out] budget The strength and its budget, in %.
 *
 * Fails with CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE for an uncertainty past its range.
 */
int32_t cupwright_uncertainty_strength_after_water(const struct cupwright_beverage_estimate *beverage,
                                                   const struct cupwright_strength_estimate *strength,
                                                   const struct cupwright_added_estimate *added,
                                                   const struct cupwright_water_solids_estimate *water_solids,
                                                   struct cupwright_budget *budget,
                                                   struct cupwright_error *error);

/**
 * Temperature of two waters or brews mixed, B h(t1) + A h(t2) = (B + A) h(t); see
 * cupwright_dilution_mixed_temperature().
 *
 *     ∂t/∂B = [h(t1) − h(t)]/[(B + A) c(t)]    ∂t/∂t1 = B c(t1)/[(B + A) c(t)]    and for A, t2 alike
 *
 * Terms: mass and temperature of the one, mass and temperature of the other. A pour onto a
 * preheated brewer is such a mix, with the brewer as so much water. What the linear rule leaves
 * out is found with one specific heat.
 *
 * @param hot The hotter liquid.
 * @param cold The colder one.
 * @param[out] budget The temperature, °C, and its budget, in K.
 *
 * Fails with CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE for an uncertainty past its range.
 */
int32_t cupwright_uncertainty_mixed_temperature(const struct cupwright_hot_estimate *hot,
                                                const struct cupwright_cold_estimate *cold,
                                                struct cupwright_budget *budget,
                                                struct cupwright_error *error);

/**
 * Temperature at which a liquid and a body settle, m h(t) + C t = m h(t0) + C t_b; see
 * cupwright_heat_settle().
 *
 *     ∂t/∂t0 = m c(t0)/M    ∂t/∂m = [h(t0) − h(t)]/M    ∂t/∂C = (t_b − t)/M    ∂t/∂t_b = C/M
 *     M = m c(t) + C
 *
 * Terms: liquid, its temperature, heat capacity, the body's temperature. Bodies of one temperature
 * are one, of their heat capacities together. A walk from kettle to cup goes step by step: the
 * temperature that comes out is the next step's liquid, with the drop of the pour by
 * cupwright_uncertainty_together(). What the linear rule leaves out is found with one specific
 * heat.
 *
 * @param liquid The liquid.
 * @param body The body.
 * @param[out] budget The temperature, °C, and its budget, in K.
 *
 * Fails with CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE where the liquid would freeze, and for an
 * uncertainty past its range.
 */
int32_t cupwright_uncertainty_settle(const struct cupwright_liquid_estimate *liquid,
                                     const struct cupwright_body_estimate *body,
                                     struct cupwright_budget *budget,
                                     struct cupwright_error *error);

/**
 * Time to cool to a wanted temperature; see cupwright_heat_time_to_cool().
 *
 *     ∂t/∂T1 = 1/[k F(T1)]    ∂t/∂k = −t/k        F as there
 *
 * Terms: temperature now, cooling rate. The wish is exact, and the room counts as known. The law
 * itself was met within 0.8 K, which no budget counts.
 *
 * @param temperature Temperature now.
 * @param to_c Temperature wanted, 0 to 105 °C.
 * @param cooling Cooling rate.
 * @param surroundings The room.
 * @param[out] budget The time, s, and its budget.
 *
 * Fails with CUPWRIGHT_STATUS_IMPOSSIBLE for a start not warmer than where cooling ends;
 * CUPWRIGHT_STATUS_INFEASIBLE for a goal that cooling does not reach;
 * CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE for a time or an uncertainty past its range.
 */
int32_t cupwright_uncertainty_time_to_cool(const struct cupwright_temperature_estimate *temperature,
                                           double to_c,
                                           const struct cupwright_cooling_estimate *cooling,
                                           const struct cupwright_surroundings *surroundings,
                                           struct cupwright_budget *budget,
                                           struct cupwright_error *error);

/**
 * Temperature after a time of cooling; see cupwright_heat_temperature_after().
 *
 *     ∂T/∂T1 = F(T)/F(T1)    ∂T/∂t = −k F(T)    ∂T/∂k = −t F(T)        F as for the time to cool
 *
 * Terms: temperature now, time, cooling rate. The room counts as known. The law itself was met
 * within 0.8 K, which no budget counts.
 *
 * @param temperature Temperature now.
 * @param elapsed The time.
 * @param cooling Cooling rate.
 * @param surroundings The room.
 * @param[out] budget The temperature, °C, and its budget, in K.
 *
 * Fails with CUPWRIGHT_STATUS_IMPOSSIBLE for a start not warmer than where cooling ends;
 * CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE where it would freeze, and for an uncertainty past its range.
 */
int32_t cupwright_uncertainty_temperature_after(const struct cupwright_temperature_estimate *temperature,
                                                const struct cupwright_time_estimate *elapsed,
                                                const struct cupwright_cooling_estimate *cooling,
                                                const struct cupwright_surroundings *surroundings,
                                                struct cupwright_budget *budget,
                                                struct cupwright_error *error);

/**
 * Yield after a time of contact; see cupwright_extraction_yield_at_time().
 *
 *     u²(E) = Σ cᵢ cⱼ rᵢⱼ uᵢ uⱼ + (Ė u(t))²   over E∞, f, ln τ1, ln τ2
 *     ∂E/∂E∞ = E/E∞    ∂E/∂f = E∞ (e^(−t/τ2) − e^(−t/τ1))    ∂E/∂ln τ1 = −E∞ f (t/τ1) e^(−t/τ1)    and for τ2 alike
 *     Ė = E∞ [ (f/τ1) e^(−t/τ1) + ((1 − f)/τ2) e^(−t/τ2) ]
 *
 * Terms: the law, time. What one fit tells goes together and is one term, in points of yield:
 * counted apart it would seem far less certain within the times that were measured. How far brews
 * differ is no part of it. Source: GUM 5.2.2.
 *
 * @param rates The rates.
 * @param plateau How well their plateau is known.
 * @param contact Time of contact.
 * @param[out] budget The yield, %, and its budget.
 *
 * Fails with CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE for an uncertainty past its range.
 */
int32_t cupwright_uncertainty_yield_at_time(const struct cupwright_rates *rates,
                                            const struct cupwright_plateau *plateau,
                                            const struct cupwright_time_estimate *contact,
                                            struct cupwright_budget *budget,
                                            struct cupwright_error *error);

/**
 * Time of contact after which a yield is reached; see cupwright_extraction_time_for_yield().
 *
 *     u(t) = u(E)/Ė    u(E) and Ė at that time, as for the yield
 *
 * Terms: the law. The wish is exact. Near the plateau a yield hardly grows, and no time is sure.
 *
 * @param rates The rates.
 * @param plateau How well their plateau is known.
 * @param wanted_yield_pct Yield wanted, 0 to 100 %.
 * @param[out] budget The time, s, and its budget.
 *
 * Fails with CUPWRIGHT_STATUS_INFEASIBLE for a yield that is not reached within the longest time;
 * CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE for an uncertainty past its range.
 */
int32_t cupwright_uncertainty_time_for_yield(const struct cupwright_rates *rates,
                                             const struct cupwright_plateau *plateau,
                                             double wanted_yield_pct,
                                             struct cupwright_budget *budget,
                                             struct cupwright_error *error);

/**
 * Where the true value lies beside a band.
 *
 *     P(below) = F((T_L − y)/u)    P(above) = F((y − T_U)/u)    P(inside) = 1 − P(below) − P(above)
 *
 * F: Student's distribution with the estimate's ν. Nothing is supposed of the value beforehand:
 * how far the measurement alone carries, not how often brews come out inside. Error 10⁻¹². Source:
 * JCGM 106:2012, 7.
 *
 * @param estimate The value.
 * @param band The band.
 * @param[out] chances The probabilities.
 *
 * Fails with CUPWRIGHT_STATUS_EMPTY_BAND where the lowest edge is not below the highest.
 */
int32_t cupwright_decision_chances(const struct cupwright_estimate *estimate,
                                   const struct cupwright_band *band,
                                   struct cupwright_chances *chances,
                                   struct cupwright_error *error);

/**
 * Inside, below, above, or not yet decided at a confidence. Source: the three outcomes are common
 * practice; each by its probability, as in cupwright_decision_chances().
 *
 * @param estimate The value.
 * @param band The band.
 * @param confidence_pct How sure the statement has to be, 50 to 99.9 %.
 * @param[out] decision What can be said: one of enum cupwright_decision.
 *
 * Fails with CUPWRIGHT_STATUS_EMPTY_BAND where the lowest edge is not below the highest.
 */
int32_t cupwright_decision_decide(const struct cupwright_estimate *estimate,
                                  const struct cupwright_band *band,
                                  double confidence_pct,
                                  int32_t *decision,
                                  struct cupwright_error *error);

/**
 * The largest standard uncertainty with which any number can be called inside, (T_U − T_L)/(2 k),
 * with k of cupwright_uncertainty_coverage_factor().
 *
 * @param band The band.
 * @param confidence_pct How sure the statement has to be, 50 to 99.9 %.
 * @param degrees_of_freedom Of the uncertainty, 1 to 1000000000.
 * @param[out] u 0 to 1000000000.
 *
 * Fails with CUPWRIGHT_STATUS_EMPTY_BAND where the lowest edge is not below the highest;
 * CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE past the range of the uncertainty.
 */
int32_t cupwright_decision_largest_uncertainty(const struct cupwright_band *band,
                                               double confidence_pct,
                                               double degrees_of_freedom,
                                               double *u,
                                               struct cupwright_error *error);

/**
 * The values that can be called inside: the band less a guard g on either side.
 *
 *     F(−g/u) + F(−(T_U − T_L − g)/u) = 1 − confidence       from T_L + g to T_U − g
 *
 * Both edges count; far from the other one g = t u, with the one-sided t (1.645 at 95 %).
 * cupwright_decision_decide() calls both edges inside. Source: JCGM 106:2012, 8.
 *
 * @param u_value Standard uncertainty of a value, 0 to 1000000000.
 * @param nu_value The degrees of freedom of that, 1 to 1000000000.
 * @param band The band.
 * @param confidence_pct How sure the statement has to be, 50 to 99.9 %.
 * @param[out] safe The values.
 *
 * Fails with CUPWRIGHT_STATUS_EMPTY_BAND where the lowest edge is not below the highest.
 */
int32_t cupwright_decision_acceptance(double u_value,
                                      double nu_value,
                                      const struct cupwright_band *band,
                                      double confidence_pct,
                                      struct cupwright_acceptance *safe,
                                      struct cupwright_error *error);

/**
 * How many readings in all decide, if their mean stays where it is.
 *
 *     u² = s²/n + rest²
 *
 * @param value The mean, -1000000000 to 1000000000.
 * @param u_scatter Standard deviation s of one reading, 0 to 1000000000.
 * @param nu_scatter The degrees of freedom of that, 1 to 1000000000.
 * @param u_rest What repeating does not lessen, the instrument's own error and the refractive
 *     factor, 0 to 1000000000.
 * @param nu_rest The degrees of freedom of that, 1 to 1000000000.
 * @param band The band.
 * @param confidence_pct How sure the statement has to be, 50 to 99.9 %.
 * @param[out] needed How many.
 *
 * Fails with CUPWRIGHT_STATUS_EMPTY_BAND where the lowest edge is not below the highest;
 * CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE for an uncertainty past its range.
 */
int32_t cupwright_decision_readings_needed(double value,
                                           double u_scatter,
                                           double nu_scatter,
                                           double u_rest,
                                           double nu_rest,
                                           const struct cupwright_band *band,
                                           double confidence_pct,
                                           struct cupwright_readings_needed *needed,
                                           struct cupwright_error *error);

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
 * @param bands The two bands.
 * @param strength The strength.
 * @param extracted The yield.
 * @param correlation Correlation of the two, as in the yield's budget, -1 to 1.
 * @param[out] joint The probabilities.
 *
 * Fails with CUPWRIGHT_STATUS_EMPTY_BAND where a lowest edge is not below its highest.
 */
int32_t cupwright_decision_joint(const struct cupwright_bands *bands,
                                 const struct cupwright_strength_estimate *strength,
                                 const struct cupwright_yield_estimate *extracted,
                                 double correlation,
                                 struct cupwright_joint *joint,
                                 struct cupwright_error *error);

/**
 * Both inside, not both, or not yet decided at a confidence. Two values that are each inside with
 * 95 % may be so together with 90 %: what is decided of each is not decided of the cup.
 *
 * @param both_pct Probability that both are inside, as cupwright_decision_joint() tells it, 0 to 100 %.
 * @param confidence_pct How sure the statement has to be, 50 to 99.9 %.
 * @param[out] decision What can be said: one of enum cupwright_joint_decision.
 */
int32_t cupwright_decision_decide_joint(double both_pct,
                                        double confidence_pct,
                                        int32_t *decision,
                                        struct cupwright_error *error);

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
 * @param pair The two values.
 * @param factor The coffee's refractive factor.
 * @param confidence_pct How sure the statement has to be, 50 to 99.9 %.
 * @param[out] comparison What can be said.
 *
 * Fails with CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE for an uncertainty past its range.
 */
int32_t cupwright_decision_compare(const struct cupwright_pair *pair,
                                   const struct cupwright_factor_uncertainty *factor,
                                   double confidence_pct,
                                   struct cupwright_comparison *comparison,
                                   struct cupwright_error *error);

/**
 * Budget of the strength that a drink will have.
 *
 *     B = W − rD − losses
 *     N = E D(1 − s) − s(hD − V)     M = B(1 − φ) + φ(W + hD − V + ED)
 *     T' = [(N/M + s) p + s A]/(p + A)
 *
 * Terms: dose, brew water, yield, retention, other losses, portion p, addition A.
 *
 * @param intended The brew.
 * @param[out] budget The strength and its budget, in %.
 *
 * Fails with CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE where nothing is left for the cup, or for a
 * strength or an uncertainty past its range.
 */
int32_t cupwright_forecast_strength(const struct cupwright_intended *intended,
                                    struct cupwright_budget *budget,
                                    struct cupwright_error *error);

/**
 * Budget of the yield as the control chart will count it, C = T B/D. Terms and symbols as in
 * cupwright_forecast_strength().
 *
 * @param intended The brew.
 * @param[out] budget The yield and its budget, in %.
 *
 * Fails with what cupwright_forecast_strength() fails with, and
 * CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE for a yield above 100 %.
 */
int32_t cupwright_forecast_counted_yield(const struct cupwright_intended *intended,
                                         struct cupwright_budget *budget,
                                         struct cupwright_error *error);

/**
 * What a brew will be, and the chance that it lies in a window.
 *
 * @param intended The brew.
 * @param window The window.
 * @param[out] outlook What will come out.
 *
 * Fails with what cupwright_forecast_counted_yield() fails with, and CUPWRIGHT_STATUS_EMPTY_BAND
 * for a window whose lowest edge is not below its highest.
 */
int32_t cupwright_forecast_outlook(const struct cupwright_intended *intended,
                                   const struct cupwright_window *window,
                                   struct cupwright_outlook *outlook,
                                   struct cupwright_error *error);

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
 * @param cup The cup.
 * @param means What can be done.
 * @param straying How far the next brew may stray.
 * @param wanted_pct Strength wanted of the drink, inside the window, 0 to 50 %.
 * @param window The window.
 * @param confidence_pct How sure the direction of the grind must be, 50 to 99.9 %.
 * @param[out] advice What to do.
 *
 * Fails with CUPWRIGHT_STATUS_EMPTY_BAND for a window whose lowest edge is not below its highest;
 * CUPWRIGHT_STATUS_OUT_OF_RANGE for a strength wanted outside the window;
 * CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE for a yield or an uncertainty past its range. What is wrong
 * with the next brew alone is no failure: `is_next_told` is 0 then.
 */
int32_t cupwright_advise_on(const struct cupwright_cup *cup,
                            const struct cupwright_means *means,
                            const struct cupwright_straying *straying,
                            double wanted_pct,
                            const struct cupwright_window *window,
                            double confidence_pct,
                            struct cupwright_advice *advice,
                            struct cupwright_error *error);

/**
 * Retention and hold-up of a brewer, from brews of several doses by least squares. Doses far apart
 * tell most. In every fit of this room, a value plus and minus its u times
 * cupwright_uncertainty_coverage_factor() for the fit's degrees of freedom holds the truth as
 * often as the confidence says. Two are told otherwise. A time constant goes by its logarithm: its
 * interval is its value over and times e to the power of that. A repeatability is itself a
 * scatter, whose interval would hold it 90 to 94 times in a hundred for 95; its degrees of freedom
 * make the intervals of later readings right, for which it is there. A measurement where every
 * such law begins, no yield after no time or no Brix of water, tells nothing and does not count.
 *
 *     W − B − V = c + r D
 *     r = S_xy/S_xx,  c = ȳ − r D̄,  u(r) = s/√S_xx,  u(c) = s √(1/n + D̄²/S_xx),  cov = −D̄ s²/S_xx
 *
 * @param brews The brews.
 * @param count How many, 0 to 30.
 * @param[out] line Retention r and hold-up c.
 *
 * Fails with CUPWRIGHT_STATUS_CANNOT_TELL for fewer than three brews, brews of one dose size, or of
 * sizes so near each other that scatter makes the line; CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE
 * outside the range of the retention or the hold-up.
 */
int32_t cupwright_calibrate_retention_line(const struct cupwright_drained *brews,
                                           size_t count,
                                           struct cupwright_retention_line *line,
                                           struct cupwright_error *error);

/**
 * Beverage that the next brew gives by the line through earlier ones, B = W − V − c − r D.
 *
 * @param brews The earlier brews.
 * @param count How many, 0 to 30.
 * @param next_dose_g Dose of the next one, 0.1 to 10000 g.
 * @param next_water_g Its brew water, 0.1 to 200000 g.
 * @param next_vapour_g Vapour that it will lose, 0 to 20000 g.
 * @param[out] expected The beverage.
 *
 * Fails with what cupwright_calibrate_retention_line() fails with;
 * CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE where nothing is left for the cup, too.
 */
int32_t cupwright_calibrate_expected_beverage(const struct cupwright_drained *brews,
                                              size_t count,
                                              double next_dose_g,
                                              double next_water_g,
                                              double next_vapour_g,
                                              struct cupwright_expected *expected,
                                              struct cupwright_error *error);

/**
 * Retention of a brewer that keeps nothing but what the grounds hold, W − B − V = r D. Also for
 * brews of one dose size: then the hold-up is in it, and it is right for that size alone.
 *
 *     r = Σ D y/Σ D²,  u(r) = s/√Σ D²
 *
 * @param brews The brews.
 * @param count How many, 0 to 30.
 * @param[out] fitted The retention.
 *
 * Fails with CUPWRIGHT_STATUS_CANNOT_TELL for fewer than two brews;
 * CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE outside the range of the retention.
 */
int32_t cupwright_calibrate_retention(const struct cupwright_drained *brews,
                                      size_t count,
                                      struct cupwright_fitted_retention *fitted,
                                      struct cupwright_error *error);

/**
 * Heat capacity of a brewer, from several times that water was poured into it empty and settled.
 * Wait as long as a brew takes. For one pour beside bodies already known:
 * cupwright_heat_vessel_heat_capacity().
 *
 *     m [h(t0) − h(t)] = C (t − t_vessel)
 *     C = Σxy/Σx²,  u(C) = s/√Σx²
 *
 * @param pours The pours.
 * @param count How many, 0 to 30.
 * @param[out] fitted The heat capacity.
 *
 * Fails with CUPWRIGHT_STATUS_CANNOT_TELL for fewer than two pours, or vessels that were as warm
 * as the water; CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE where the temperatures do not stand in order.
 */
int32_t cupwright_calibrate_heat_capacity(const struct cupwright_settled *pours,
                                          size_t count,
                                          struct cupwright_fitted_heat_capacity *fitted,
                                          struct cupwright_error *error);

/**
 * Yield at which a coffee levels off: the mean of long steeps, (W/D) T/(1 − T), with u = s/√n.
 *
 * @param steeps The steeps.
 * @param count How many, 0 to 30.
 * @param[out] fitted The yield.
 *
 * Fails with CUPWRIGHT_STATUS_CANNOT_TELL for fewer than two steeps;
 * CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE for a steep whose own yield would be above 100 %.
 */
int32_t cupwright_calibrate_equilibrium_yield(const struct cupwright_steeped *steeps,
                                              size_t count,
                                              struct cupwright_fitted_yield *fitted,
                                              struct cupwright_error *error);

/**
 * How fast a coffee extracts, by one rate, from yields of brews that differ in time of contact
 * only. No start is asked for. Source of the law: Fuller & Rao 2017, doi
 * 10.1038/s41598-017-18247-4, abstract.
 *
 *     E(t) = E∞ (1 − e^(−t/τ)),  parameters E∞ and ln τ
 *
 * @param yields The yields.
 * @param count How many, 0 to 30.
 * @param[out] law Equilibrium yield and time constant.
 *
 * Fails with CUPWRIGHT_STATUS_CANNOT_TELL for fewer than three yields after some time, for ones that
 * do not begin to level off, that have all levelled off, or that fall;
 * CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE for an equilibrium above 100 %.
 */
int32_t cupwright_calibrate_one_rate(const struct cupwright_timed *yields,
                                     size_t count,
                                     struct cupwright_one_rate *law,
                                     struct cupwright_error *error);

/**
 * How fast a coffee extracts, by two rates, from a few seconds to well beyond the slow time
 * constant. Accepted only where it explains more than scatter about one rate would explain once in
 * twenty times; refused too where the equilibrium would be above 100 %. Source of the law: Moroney
 * et al. 2015, doi 10.1016/j.ces.2015.06.003, abstract.
 *
 *     E(t) = E∞ [ f(1 − e^(−t/τ1)) + (1 − f)(1 − e^(−t/τ2)) ]
 *
 * @param yields The yields.
 * @param count How many, 0 to 30.
 * @param[out] law Equilibrium yield, fast share and the two time constants.
 *
 * Fails with CUPWRIGHT_STATUS_CANNOT_TELL for fewer than seven yields, for ones that one rate
 * describes as well, that do not begin to level off, or that have all levelled off.
 */
int32_t cupwright_calibrate_two_rates(const struct cupwright_timed *yields,
                                      size_t count,
                                      struct cupwright_two_rates *law,
                                      struct cupwright_error *error);

/**
 * Cooling rate of a cup from several readings of a thermometer left in it, by the law of
 * cupwright_heat_time_to_cool(): least squares in temperature, the first reading counting like all
 * others. Readings over twenty minutes tell more than many within five.
 *
 * @param readings The readings.
 * @param count How many, 0 to 30.
 * @param surroundings The room.
 * @param[out] cup Cooling rate and first temperature.
 *
 * Fails with CUPWRIGHT_STATUS_CANNOT_TELL for fewer than three readings, all at one time, or ones
 * that do not fall; CUPWRIGHT_STATUS_IMPOSSIBLE for a reading not above where cooling ends;
 * CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE outside the range of the rate.
 */
int32_t cupwright_calibrate_cooling(const struct cupwright_thermometer *readings,
                                    size_t count,
                                    const struct cupwright_surroundings *surroundings,
                                    struct cupwright_cooling *cup,
                                    struct cupwright_error *error);

/**
 * Refractive factor of a coffee, T = k x, from samples read and oven-dried. Ten grams dried for
 * three hours at 105 °C on a balance of 0.1 mg tell T to 0.003 %; on a scale of 0.1 g nothing is
 * told. The factor holds for the coffees dried, filtered as they were.
 *
 *     k = Σ x T/Σ x²,  u(k)/k = s/(k √Σ x²)
 *
 * @param samples The samples.
 * @param count How many, 0 to 30.
 * @param[out] fitted The factor.
 *
 * Fails with CUPWRIGHT_STATUS_CANNOT_TELL for fewer than two samples, or readings that are all
 * zero; CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE outside the range of the factor.
 */
int32_t cupwright_calibrate_refractive_factor(const struct cupwright_dried *samples,
                                              size_t count,
                                              struct cupwright_fitted_refractive_factor *fitted,
                                              struct cupwright_error *error);

/**
 * Repeatability of one's own readings, pooled over several cups that were each read several times,
 * in any order. A cup that was read once adds nothing. Source: JCGM 100:2008, 4.2.4 and E.4.3
 * (from memory).
 *
 *     s_r² = Σ(x − x̄ of its cup)²/ν,  ν = readings less cups,  u(s_r) ≈ s_r/√(2ν)
 *
 * @param readings The readings.
 * @param count How many, 0 to 30.
 * @param[out] fitted The repeatability.
 *
 * Fails with CUPWRIGHT_STATUS_CANNOT_TELL where no cup was read twice;
 * CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE for readings that are all equal: the display is too coarse
 * to tell.
 */
int32_t cupwright_calibrate_repeatability(const struct cupwright_repeat *readings,
                                          size_t count,
                                          struct cupwright_fitted_repeatability *fitted,
                                          struct cupwright_error *error);

/**
 * A profile as bytes, the same on every processor: little endian, with a version and a check value.
 *
 * @param profile The profile; its numbers must lie in their ranges.
 * @param[out] bytes Room for CUPWRIGHT_PROFILE_BYTES bytes.
 */
int32_t cupwright_profile_to_bytes(const struct cupwright_profile *profile,
                                   uint8_t *bytes,
                                   struct cupwright_error *error);

/**
 * A profile from its bytes. No damaged one is ever read: a single wrong byte is always found.
 *
 * @param bytes The bytes.
 * @param count How many: CUPWRIGHT_PROFILE_BYTES of this version.
 * @param[out] profile The profile.
 *
 * Fails with CUPWRIGHT_STATUS_UNREADABLE, the error's `limit` says why;
 * CUPWRIGHT_STATUS_OUT_OF_RANGE for a number that its field does not accept.
 */
int32_t cupwright_profile_from_bytes(const uint8_t *bytes,
                                     size_t count,
                                     struct cupwright_profile *profile,
                                     struct cupwright_error *error);

/**
 * Keeps what brews of several doses told of a brewer: retention, hold-up, how far the two go together,
 * and the scatter about them.
 *
 * @param profile The profile before.
 * @param line The line, as cupwright_calibrate_retention_line() tells it.
 * @param[out] kept The profile with it; it may be the one before.
 */
int32_t cupwright_profile_keep_retention_line(const struct cupwright_profile *profile,
                                              const struct cupwright_retention_line *line,
                                              struct cupwright_profile *kept,
                                              struct cupwright_error *error);

/**
 * Keeps a retention that has the hold-up in it. A hold-up kept apart before is dropped.
 *
 * @param profile The profile before.
 * @param fitted The retention, as cupwright_calibrate_retention() tells it.
 * @param[out] kept The profile with it; it may be the one before.
 */
int32_t cupwright_profile_keep_retention(const struct cupwright_profile *profile,
                                         const struct cupwright_fitted_retention *fitted,
                                         struct cupwright_profile *kept,
                                         struct cupwright_error *error);

/**
 * Keeps what yields told of a coffee by one rate. All of it is then fast: a fast share and a slow time
 * kept before are dropped.
 *
 * @param profile The profile before.
 * @param law The law, as cupwright_calibrate_one_rate() tells it.
 * @param[out] kept The profile with it; it may be the one before.
 */
int32_t cupwright_profile_keep_one_rate(const struct cupwright_profile *profile,
                                        const struct cupwright_one_rate *law,
                                        struct cupwright_profile *kept,
                                        struct cupwright_error *error);

/**
 * Keeps what yields told of a coffee by two rates.
 *
 * @param profile The profile before.
 * @param law The law, as cupwright_calibrate_two_rates() tells it.
 * @param[out] kept The profile with it; it may be the one before.
 */
int32_t cupwright_profile_keep_two_rates(const struct cupwright_profile *profile,
                                         const struct cupwright_two_rates *law,
                                         struct cupwright_profile *kept,
                                         struct cupwright_error *error);

/**
 * Keeps the heat capacity of a brewer.
 *
 * @param profile The profile before.
 * @param fitted The heat capacity, as cupwright_calibrate_heat_capacity() tells it.
 * @param[out] kept The profile with it; it may be the one before.
 */
int32_t cupwright_profile_keep_heat_capacity(const struct cupwright_profile *profile,
                                             const struct cupwright_fitted_heat_capacity *fitted,
                                             struct cupwright_profile *kept,
                                             struct cupwright_error *error);

/**
 * Keeps how fast a full cup cools.
 *
 * @param profile The profile before.
 * @param cup How it cools, as cupwright_calibrate_cooling() tells it.
 * @param[out] kept The profile with it; it may be the one before.
 */
int32_t cupwright_profile_keep_cup_cooling(const struct cupwright_profile *profile,
                                           const struct cupwright_cooling *cup,
                                           struct cupwright_profile *kept,
                                           struct cupwright_error *error);

/**
 * Keeps the refractive factor of a coffee.
 *
 * @param profile The profile before.
 * @param fitted The factor, as cupwright_calibrate_refractive_factor() tells it.
 * @param[out] kept The profile with it; it may be the one before.
 */
int32_t cupwright_profile_keep_refractive_factor(const struct cupwright_profile *profile,
                                                 const struct cupwright_fitted_refractive_factor *fitted,
                                                 struct cupwright_profile *kept,
                                                 struct cupwright_error *error);

/**
 * Keeps the repeatability of one's own readings.
 *
 * @param profile The profile before.
 * @param fitted The repeatability, as cupwright_calibrate_repeatability() tells it.
 * @param[out] kept The profile with it; it may be the one before.
 */
int32_t cupwright_profile_keep_repeatability(const struct cupwright_profile *profile,
                                             const struct cupwright_fitted_repeatability *fitted,
                                             struct cupwright_profile *kept,
                                             struct cupwright_error *error);

/**
 * Beverage that the next brew gives by what was kept: what cupwright_calibrate_expected_beverage()
 * tells of the same line, to the last bit. Without a hold-up the retention has it in it: then B = W −
 * V − r D, right for doses like those of the brews.
 *
 * @param profile The profile.
 * @param dose_g Dose, 0.1 to 10000 g.
 * @param water_g Brew water, 0.1 to 200000 g.
 * @param vapour_g Vapour that the brew will lose, 0 to 20000 g.
 * @param[out] expected The beverage.
 *
 * Fails with CUPWRIGHT_STATUS_NOT_KEPT where a part is missing, the error's `field` names it;
 * CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE where nothing is left for the cup.
 */
int32_t cupwright_profile_expected_beverage(const struct cupwright_profile *profile,
                                            double dose_g,
                                            double water_g,
                                            double vapour_g,
                                            struct cupwright_expected *expected,
                                            struct cupwright_error *error);

/**
 * How fast the coffee extracts, and how well that is known, by what was kept.
 *
 * @param profile The profile.
 * @param[out] rates The rates.
 *
 * Fails with CUPWRIGHT_STATUS_NOT_KEPT where a part is missing, the error's `field` names it.
 */
int32_t cupwright_profile_rates(const struct cupwright_profile *profile,
                                struct cupwright_rates *rates,
                                struct cupwright_error *error);

/**
 * How well the plateau of those rates is known.
 *
 * @param profile The profile.
 * @param[out] plateau The plateau.
 *
 * Fails with CUPWRIGHT_STATUS_NOT_KEPT where a part is missing, the error's `field` names it.
 */
int32_t cupwright_profile_plateau(const struct cupwright_profile *profile,
                                  struct cupwright_plateau *plateau,
                                  struct cupwright_error *error);

/**
 * What advice takes, with all that is known of coffee and brewer: rates where a plateau or a time was
 * kept, and what the brewer keeps where a retention was. No chamber and no milk: set them where there
 * are.
 *
 * @param profile The profile.
 * @param water_c Temperature of the water, 0 to 105 °C.
 * @param[out] means What can be done.
 *
 * Fails with CUPWRIGHT_STATUS_NOT_KEPT where a part of what was kept is missing, the error's `field`
 * names it; CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE for a hold-up below zero, which no brewer has.
 */
int32_t cupwright_profile_means(const struct cupwright_profile *profile,
                                double water_c,
                                struct cupwright_means *means,
                                struct cupwright_error *error);

/**
 * Strength after adding water, T' = (T B + s A)/(B + A).
 *
 * @param beverage_g Beverage, 0.1 to 200000 g.
 * @param strength_pct Strength of the brew, 0 to 50 %.
 * @param added_g Water added, 0 to 200000 g.
 * @param water_solids_mg_per_l Solids of the water, 0 to 5000 mg/L.
 * @param[out] after_pct 0 to 50 %.
 */
int32_t cupwright_dilution_strength_after_water(double beverage_g,
                                                double strength_pct,
                                                double added_g,
                                                double water_solids_mg_per_l,
                                                double *after_pct,
                                                struct cupwright_error *error);

/**
 * Water to add for a wanted strength, A = B (T − T')/(T' − s).
 *
 * @param beverage_g Beverage, 0.1 to 200000 g.
 * @param strength_pct Strength of the brew, 0 to 50 %.
 * @param wanted_pct Strength wanted, 0 to 50 %.
 * @param water_solids_mg_per_l Solids of the water, 0 to 5000 mg/L.
 * @param[out] added_g 0 to 200000 g.
 *
 * Fails with CUPWRIGHT_STATUS_INFEASIBLE for a wish above the strength at hand, since adding water
 * only weakens, and for one that no amount of this water comes down to;
 * CUPWRIGHT_STATUS_IMPOSSIBLE for a brew weaker than its own water.
 */
int32_t cupwright_dilution_water_to_reach(double beverage_g,
                                          double strength_pct,
                                          double wanted_pct,
                                          double water_solids_mg_per_l,
                                          double *added_g,
                                          struct cupwright_error *error);

/**
 * Beverage that a strong brew makes when water takes it down to a wanted strength, brew and water
 * together, B (T − s)/(T' − s).
 *
 * @param beverage_g Beverage, 0.1 to 200000 g.
 * @param strength_pct Strength of the brew, 0 to 50 %.
 * @param wanted_pct Strength wanted, 0 to 50 %.
 * @param water_solids_mg_per_l Solids of the water, 0 to 5000 mg/L.
 * @param[out] cup_g 0.1 to 200000 g.
 *
 * Fails with CUPWRIGHT_STATUS_INFEASIBLE for a wish above the strength at hand, since adding water
 * only weakens, and for one that no amount of this water comes down to;
 * CUPWRIGHT_STATUS_IMPOSSIBLE for a brew weaker than its own water;
 * CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE for a drink larger than a beverage may be.
 */
int32_t cupwright_dilution_drink_of_brew(double beverage_g,
                                         double strength_pct,
                                         double wanted_pct,
                                         double water_solids_mg_per_l,
                                         double *cup_g,
                                         struct cupwright_error *error);

/**
 * Brew needed so that, with water added, a drink of a wanted size and strength results, B = C (T'
 * − s)/(T − s).
 *
 * @param cup_g The drink, 0.1 to 200000 g.
 * @param strength_pct Strength of the brew, 0 to 50 %.
 * @param wanted_pct Strength wanted, 0 to 50 %.
 * @param water_solids_mg_per_l Solids of the water, 0 to 5000 mg/L.
 * @param[out] beverage_g 0.1 to 200000 g.
 *
 * Fails with CUPWRIGHT_STATUS_INFEASIBLE for a wish above the strength of the brew and for one so
 * weak that it takes less brew than a beverage may be; CUPWRIGHT_STATUS_IMPOSSIBLE for a brew
 * weaker than its own water.
 */
int32_t cupwright_dilution_brew_for_drink(double cup_g,
                                          double strength_pct,
                                          double wanted_pct,
                                          double water_solids_mg_per_l,
                                          double *beverage_g,
                                          struct cupwright_error *error);

/**
 * Splits one brew over cups of a wanted size and strength.
 *
 * @param beverage_g The brew, 0.1 to 200000 g.
 * @param strength_pct Strength of the brew, 0 to 50 %.
 * @param servings Cups, 1 to 1000.
 * @param cup_g Size of the drink in each, 0.1 to 200000 g.
 * @param wanted_pct Strength wanted, 0 to 50 %.
 * @param water_solids_mg_per_l Solids of the water, 0 to 5000 mg/L.
 * @param[out] split What goes into each cup, and the rest.
 *
 * Fails with CUPWRIGHT_STATUS_INFEASIBLE where the brew does not last, with the largest cup of
 * that strength as the nearest; otherwise as cupwright_dilution_brew_for_drink().
 */
int32_t cupwright_dilution_split(double beverage_g,
                                 double strength_pct,
                                 int32_t servings,
                                 double cup_g,
                                 double wanted_pct,
                                 double water_solids_mg_per_l,
                                 struct cupwright_cup_split *split,
                                 struct cupwright_error *error);

/**
 * Coffee with milk, the two kinds of solids kept apart, T B/(B + A) and M A/(B + A). A
 * refractometer cannot tell them apart: read the strength before the milk goes in. Milk is
 * perishable: local food rules apply.
 *
 * @param beverage_g Beverage, 0.1 to 200000 g.
 * @param strength_pct Strength of the brew, 0 to 50 %.
 * @param added_g Milk, 0 to 200000 g.
 * @param milk_solids_pct Solids of the milk, 0 to 80 %.
 * @param[out] drink The drink.
 *
 * Fails with CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE for a drink larger than a beverage may be.
 */
int32_t cupwright_dilution_with_milk(double beverage_g,
                                     double strength_pct,
                                     double added_g,
                                     double milk_solids_pct,
                                     struct cupwright_milk_drink *drink,
                                     struct cupwright_error *error);

/**
 * Temperature of two waters or brews mixed, B h(t1) + A h(t2) = (B + A) h(t). A brew's heat
 * content is taken as water's: a mixture moves by less than 0.2 K at filter strength, 1 K at 10 %.
 *
 * @param hot_g One liquid, 0.1 to 400000 g.
 * @param hot_c Its temperature, 0 to 105 °C.
 * @param cold_g The other, 0 to 200000 g.
 * @param cold_c Its temperature, 0 to 105 °C.
 * @param[out] water_c 0 to 105 °C.
 */
int32_t cupwright_dilution_mixed_temperature(double hot_g,
                                             double hot_c,
                                             double cold_g,
                                             double cold_c,
                                             double *water_c,
                                             struct cupwright_error *error);

/**
 * Temperature of a brew with milk, the milk's specific heat taken as CUPWRIGHT_MILK_J_PER_G_K
 * whatever its fat.
 *
 * @param hot_g The brew, 0.1 to 400000 g.
 * @param hot_c Its temperature, 0 to 105 °C.
 * @param cold_g The milk, 0 to 200000 g.
 * @param cold_c Its temperature, 0 to 105 °C.
 * @param[out] water_c 0 to 105 °C.
 */
int32_t cupwright_dilution_mixed_with_milk_temperature(double hot_g,
                                                       double hot_c,
                                                       double cold_g,
                                                       double cold_c,
                                                       double *water_c,
                                                       struct cupwright_error *error);

/**
 * A drink over ice: all melted, or at 0 °C with some left, by the balance of heat. The glass and
 * the air give nothing. Iced drinks are under local food rules. Source: IAPWS R10-06 for ice.
 *
 * @param beverage_g Beverage, 0.1 to 200000 g.
 * @param water_c Temperature of the drink, 0 to 105 °C.
 * @param strength_pct Its strength, 0 to 50 %.
 * @param ice_g Ice, 0 to 200000 g.
 * @param ice_c Temperature of the ice, -40 to 0 °C.
 * @param[out] iced The drink at rest.
 *
 * Fails with CUPWRIGHT_STATUS_INFEASIBLE for ice so cold and plentiful that the drink itself would
 * begin to freeze.
 */
int32_t cupwright_dilution_iced(double beverage_g,
                                double water_c,
                                double strength_pct,
                                double ice_g,
                                double ice_c,
                                struct cupwright_iced *iced,
                                struct cupwright_error *error);

/**
 * Ice that brings a drink to a temperature, all of it melted: the inverse of
 * cupwright_dilution_iced().
 *
 * @param beverage_g Beverage, 0.1 to 200000 g.
 * @param water_c Temperature of the drink, 0 to 105 °C.
 * @param wanted_c Temperature wanted, 0 to 105 °C.
 * @param ice_c Temperature of the ice, -40 to 0 °C.
 * @param[out] ice_g 0 to 200000 g.
 *
 * Fails with CUPWRIGHT_STATUS_INFEASIBLE for a wish above the drink's own temperature;
 * CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE outside the range of the ice.
 */
int32_t cupwright_dilution_ice_to_reach(double beverage_g,
                                        double water_c,
                                        double wanted_c,
                                        double ice_c,
                                        double *ice_g,
                                        struct cupwright_error *error);

/**
 * The cautions that a drink calls for.
 *
 * @param hazards What there is to know.
 * @param[out] cautions A bit 1 << n for each of enum cupwright_caution.
 */
int32_t cupwright_caution_of(const struct cupwright_hazards *hazards,
                             uint32_t *cautions,
                             struct cupwright_error *error);

/**
 * How fast hot water burns adult skin seriously: between published points, ln t straight with
 * temperature. Lists differ by up to a factor of two and this takes the shortest; children burn
 * faster still. A reminder of how little time there is, never a safe limit.
 *
 * @param water_c Temperature, 0 to 105 °C.
 * @param[out] burns The burn and its time.
 */
int32_t cupwright_caution_time_to_burn(double water_c,
                                       struct cupwright_time_to_burn *burns,
                                       struct cupwright_error *error);

/**
 * Caffeine of a serving, dose × content × share extracted. Brewing takes out some 70 to 100 %
 * (weak sources); 100 is the cautious choice.
 *
 * @param dose_g Dose as weighed, 0.1 to 10000 g.
 * @param caffeine_mg_per_g Content as weighed, 0 to 45 mg/g.
 * @param share_pct Share extracted, 0 to 100 %.
 * @param[out] caffeine_mg 0 to 450000 mg.
 */
int32_t cupwright_caution_caffeine(double dose_g,
                                   double caffeine_mg_per_g,
                                   double share_pct,
                                   double *caffeine_mg,
                                   struct cupwright_error *error);

/**
 * Begins to watch a scale. The first reading is taken for what lies on it.
 *
 *     static cupwright_scale scale;
 *
 *     void on_start(void) {
 *         const cupwright_live_setup setup = {0.1, 2000.0, 15.0};
 *         cupwright_live_begin(&setup, &scale, NULL);
 *     }
 *
 *     void on_reading(double clock_s, double reading_g) {
 *         cupwright_live_seen seen;
 *         if (cupwright_live_take(&scale, clock_s, reading_g, &seen, NULL) != CUPWRIGHT_STATUS_OK) {
 *             return;
 *         }
 *         show(seen.poured_g, seen.has_flow ? seen.flow_g_per_s : 0.0);
 *         if (seen.event == CUPWRIGHT_HAPPENING_POUR_STARTED) {
 *             start_timer(seen.event_clock_s);
 *         }
 *     }
 *
 *     void on_tare_button(double reading_g) {
 *         cupwright_live_zeroed(&scale, reading_g, NULL);
 *     }
 *
 * @param setup The scale.
 * @param[out] scale The state; whatever it was before.
 */
int32_t cupwright_live_begin(const struct cupwright_live_setup *setup,
                             struct cupwright_scale *scale,
                             struct cupwright_error *error);

/**
 * Takes the next reading: five to a hundred a second, at uneven times and with gaps.
 *
 * Readings nearer than 0.1 s are averaged to one point. A line is fitted to the points since the flow
 * last changed; its slope is the flow. A point that no pour can reach is held back until those after
 * it say what it was. Sources: linear regression; the cumulative sum test of Page, Biometrika 41
 * (1954), 100 (from memory).
 *
 * @param scale The state.
 * @param clock_s When the reading was taken, on a clock that only goes forward, 0 to 5000000000 s.
 * @param reading_g What the scale reads, -100000 to 100000 g. NaN is refused, like all that is out of range,
 *     and the state stays as it was: a reading that failed is simply left out.
 * @param[out] seen What the scale saw.
 *
 * Fails with CUPWRIGHT_STATUS_NOT_BEGUN for a state that was never begun; CUPWRIGHT_STATUS_IMPOSSIBLE
 * for a clock that does not go forward, and the state stays as it was;
 * CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE after years of pouring.
 */
int32_t cupwright_live_take(struct cupwright_scale *scale,
                            double clock_s,
                            double reading_g,
                            struct cupwright_live_seen *seen,
                            struct cupwright_error *error);

/**
 * Tells that readings are lower by so much from the next one on, because the display was set to zero:
 * the firmware knows, and nothing has to be guessed.
 *
 * @param scale The state.
 * @param change_g By how much readings are lower, -1000000000 to 1000000000 g: the reading before.
 *
 * Fails with CUPWRIGHT_STATUS_NOT_BEGUN for a state that was never begun.
 */
int32_t cupwright_live_zeroed(struct cupwright_scale *scale,
                              double change_g,
                              struct cupwright_error *error);

/**
 * Counts water from here on: what was poured so far, a rinse for example, is weight like any other.
 *
 * @param scale The state.
 *
 * Fails with CUPWRIGHT_STATUS_NOT_BEGUN for a state that was never begun.
 */
int32_t cupwright_live_count_anew(struct cupwright_scale *scale, struct cupwright_error *error);

/**
 * Where all changes of the reading are put down. Their sum is the level.
 *
 * @param scale The state; it stays as it is.
 * @param[out] account The accounts.
 *
 * Fails with CUPWRIGHT_STATUS_NOT_BEGUN for a state that was never begun;
 * CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE after years of pouring.
 */
int32_t cupwright_live_account(const struct cupwright_scale *scale,
                               struct cupwright_live_accounts *account,
                               struct cupwright_error *error);

/**
 * A scale's state as bytes, the same on every processor, for a memory that outlives a restart.
 *
 * @param scale The state; it stays as it is.
 * @param[out] bytes Room for CUPWRIGHT_SCALE_BYTES bytes.
 *
 * Fails with CUPWRIGHT_STATUS_NOT_BEGUN for a state that was never begun.
 */
int32_t cupwright_live_to_bytes(const struct cupwright_scale *scale,
                                uint8_t *bytes,
                                struct cupwright_error *error);

/**
 * A scale's state from its bytes. No damaged one is ever read: a single wrong byte is always found.
 * The clock must have gone on meanwhile; the first reading counts as one after a gap.
 *
 * @param bytes The bytes.
 * @param count How many: CUPWRIGHT_SCALE_BYTES of this version.
 * @param[out] scale The state; whatever it was before.
 *
 * Fails with CUPWRIGHT_STATUS_UNREADABLE, the error's `limit` says why.
 */
int32_t cupwright_live_from_bytes(const uint8_t *bytes,
                                  size_t count,
                                  struct cupwright_scale *scale,
                                  struct cupwright_error *error);

/**
 * Begins to follow a brew, at the first step of its recipe and with nothing known.
 *
 *     static const cupwright_live_step recipe[] = {
 *         {.step = CUPWRIGHT_STEP_DOSE, .dose_g = 15.0},
 *         {.step = CUPWRIGHT_STEP_POUR, .to_g = 45.0},
 *         {.step = CUPWRIGHT_STEP_POUR, .to_g = 250.0, .from_s = 40.0},
 *     };
 *
 *     cupwright_live_now now;
 *     if (cupwright_follow_take(&follower, recipe, 3, clock_s, reading_g, &now, NULL) == CUPWRIGHT_STATUS_OK) {
 *         show_words(cupwright_cue_text(now.cue), cupwright_why_text(now.why));
 *     }
 *
 * @param setup The scale.
 * @param[out] follower The state; whatever it was before.
 */
int32_t cupwright_follow_begin(const struct cupwright_live_setup *setup,
                               struct cupwright_follower *follower,
                               struct cupwright_error *error);

/**
 * Takes the next reading, as cupwright_live_take() does, and tells what to do.
 *
 * @param follower The state.
 * @param recipe The steps, the same at every call; NULL where there are none.
 * @param count How many, 0 to 24.
 * @param clock_s When the reading was taken, on a clock that only goes forward, 0 to 5000000000 s.
 * @param reading_g What the scale reads, -100000 to 100000 g. NaN is refused, like all that is out of range,
 *     and the state stays as it was.
 * @param[out] now The brew as it stands.
 *
 * Fails with CUPWRIGHT_STATUS_NOT_BEGUN for a state that was never begun;
 * CUPWRIGHT_STATUS_UNKNOWN_CHOICE for a step that is none; CUPWRIGHT_STATUS_IMPOSSIBLE for a clock that
 * does not go forward; CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE after years of pouring.
 */
int32_t cupwright_follow_take(struct cupwright_follower *follower,
                              const struct cupwright_live_step *recipe,
                              size_t count,
                              double clock_s,
                              double reading_g,
                              struct cupwright_live_now *now,
                              struct cupwright_error *error);

/**
 * Goes on to the next step: a button was pressed.
 *
 * @param follower The state.
 *
 * Fails with CUPWRIGHT_STATUS_NOT_BEGUN for a state that was never begun.
 */
int32_t cupwright_follow_go_on(struct cupwright_follower *follower, struct cupwright_error *error);

/**
 * Tells that the display was set to zero, as cupwright_live_zeroed() does.
 *
 * @param follower The state.
 * @param change_g By how much readings are lower, -1000000000 to 1000000000 g: the reading before.
 *
 * Fails with CUPWRIGHT_STATUS_NOT_BEGUN for a state that was never begun.
 */
int32_t cupwright_follow_zeroed(struct cupwright_follower *follower,
                                double change_g,
                                struct cupwright_error *error);

/**
 * Tells the dose, where it was weighed elsewhere. In a step that weighs coffee the scale has the last
 * word: cupwright_follow_go_on() first.
 *
 * @param follower The state.
 * @param dose_g The dose, 0.1 to 10000 g.
 *
 * Fails with CUPWRIGHT_STATUS_NOT_BEGUN for a state that was never begun.
 */
int32_t cupwright_follow_set_dose(struct cupwright_follower *follower,
                                  double dose_g,
                                  struct cupwright_error *error);

/**
 * Tells the beverage, where it was weighed elsewhere.
 *
 * @param follower The state.
 * @param beverage_g The beverage, 0.1 to 200000 g.
 *
 * Fails with CUPWRIGHT_STATUS_NOT_BEGUN for a state that was never begun.
 */
int32_t cupwright_follow_set_beverage(struct cupwright_follower *follower,
                                      double beverage_g,
                                      struct cupwright_error *error);

/**
 * Sets how long before the water is reached the cue to stop comes, for a hand that is known.
 *
 * @param follower The state.
 * @param lead_s The lead, 0 to 1.5 s.
 *
 * Fails with CUPWRIGHT_STATUS_NOT_BEGUN for a state that was never begun.
 */
int32_t cupwright_follow_set_lead(struct cupwright_follower *follower,
                                  double lead_s,
                                  struct cupwright_error *error);

/**
 * What was weighed and learned so far.
 *
 * @param follower The state; it stays as it is.
 * @param[out] weighed Dose, beverage, drips and lead.
 *
 * Fails with CUPWRIGHT_STATUS_NOT_BEGUN for a state that was never begun;
 * CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE for more drips than can be.
 */
int32_t cupwright_follow_weighed(const struct cupwright_follower *follower,
                                 struct cupwright_live_weighed *weighed,
                                 struct cupwright_error *error);

/**
 * The accounts of the follower's scale, as cupwright_live_account() has them.
 *
 * @param follower The state; it stays as it is.
 * @param[out] account The accounts.
 *
 * Fails with CUPWRIGHT_STATUS_NOT_BEGUN for a state that was never begun;
 * CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE after years of pouring.
 */
int32_t cupwright_follow_account(const struct cupwright_follower *follower,
                                 struct cupwright_live_accounts *account,
                                 struct cupwright_error *error);

/**
 * What the brew will be if nothing more is poured, and the chance that it lies in a window: as
 * cupwright_forecast_outlook() says, with the dose and the water that are there by now.
 *
 * @param follower The state; it stays as it is.
 * @param intended The brew as it was meant. Its dose counts until one is weighed, its water never does;
 *     how surely the dose is known stays as it was meant, how surely the water is comes from the scale.
 * @param window The window, its yield as charts count it.
 * @param[out] outlook What will come out.
 *
 * Fails with CUPWRIGHT_STATUS_NOT_BEGUN for a state that was never begun;
 * CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE for water that is no brew water yet, and with what
 * cupwright_forecast_outlook() fails with.
 */
int32_t cupwright_follow_outlook(const struct cupwright_follower *follower,
                                 const struct cupwright_intended *intended,
                                 const struct cupwright_window *window,
                                 struct cupwright_outlook *outlook,
                                 struct cupwright_error *error);

/**
 * A follower's state as bytes, as cupwright_live_to_bytes() makes them of a scale's.
 *
 * @param follower The state; it stays as it is.
 * @param[out] bytes Room for CUPWRIGHT_FOLLOWER_BYTES bytes.
 *
 * Fails with CUPWRIGHT_STATUS_NOT_BEGUN for a state that was never begun.
 */
int32_t cupwright_follow_to_bytes(const struct cupwright_follower *follower,
                                  uint8_t *bytes,
                                  struct cupwright_error *error);

/**
 * A follower's state from its bytes, as cupwright_live_from_bytes() reads a scale's. The recipe is not
 * among them.
 *
 * @param bytes The bytes.
 * @param count How many: CUPWRIGHT_FOLLOWER_BYTES of this version.
 * @param[out] follower The state; whatever it was before.
 *
 * Fails with CUPWRIGHT_STATUS_UNREADABLE, the error's `limit` says why.
 */
int32_t cupwright_follow_from_bytes(const uint8_t *bytes,
                                    size_t count,
                                    struct cupwright_follower *follower,
                                    struct cupwright_error *error);

/**
 * Yields by the flow-through form, E = T B/D. cupwright_extraction_flow_through_yield() of every row.
 *
 * @param strength_pct Strength, 0 to 50 %.
 * @param beverage_g Beverage, 0.1 to 200000 g.
 * @param dose_g Doses as weighed, 0.1 to 10000 g.
 * @param count How many rows.
 * @param[out] yield_pct 0 to 100 %, or NaN.
 * @param[out] status What became of each row: enum cupwright_row.
 * @param[out] refused How many rows have no answer.
 *
 * Fails for no row, but with CUPWRIGHT_STATUS_NULL.
 */
int32_t cupwright_columns_flow_through_yield(const double *strength_pct,
                                             const double *beverage_g,
                                             const double *dose_g,
                                             size_t count,
                                             double *yield_pct,
                                             uint8_t *status,
                                             size_t *refused,
                                             struct cupwright_error *error);

/**
 * Strengths by the flow-through form, T = E D/B. cupwright_extraction_flow_through_strength() of every row.
 *
 * @param yield_pct Extraction yields, 0 to 100 %.
 * @param beverage_g Beverage, 0.1 to 200000 g.
 * @param dose_g Doses as weighed, 0.1 to 10000 g.
 * @param count How many rows.
 * @param[out] strength_pct 0 to 50 %, or NaN.
 * @param[out] status What became of each row: enum cupwright_row.
 * @param[out] refused How many rows have no answer.
 *
 * Fails for no row, but with CUPWRIGHT_STATUS_NULL.
 */
int32_t cupwright_columns_flow_through_strength(const double *yield_pct,
                                                const double *beverage_g,
                                                const double *dose_g,
                                                size_t count,
                                                double *strength_pct,
                                                uint8_t *status,
                                                size_t *refused,
                                                struct cupwright_error *error);

/**
 * Yields by the steeped form, E = (W/D) T/(1 − T). cupwright_extraction_steeped_yield() of every row.
 *
 * @param strength_pct Strength, 0 to 50 %.
 * @param water_g Brew water, 0.1 to 200000 g.
 * @param dose_g Doses as weighed, 0.1 to 10000 g.
 * @param count How many rows.
 * @param[out] yield_pct 0 to 100 %, or NaN.
 * @param[out] status What became of each row: enum cupwright_row.
 * @param[out] refused How many rows have no answer.
 *
 * Fails for no row, but with CUPWRIGHT_STATUS_NULL.
 */
int32_t cupwright_columns_steeped_yield(const double *strength_pct,
                                        const double *water_g,
                                        const double *dose_g,
                                        size_t count,
                                        double *yield_pct,
                                        uint8_t *status,
                                        size_t *refused,
                                        struct cupwright_error *error);

/**
 * Yields by the whole mass balance. cupwright_extraction_yield() of every row.
 *
 * @param dose_g Doses as weighed, 0.1 to 10000 g.
 * @param water_g Brew water, 0.1 to 200000 g.
 * @param beverage_g Beverage, 0.1 to 200000 g.
 * @param moisture_pct Moisture of the doses, 0 to 15 %.
 * @param water_solids_mg_per_l Solids of the waters, 0 to 5000 mg/L.
 * @param vapour_g Vapour lost, 0 to 20000 g.
 * @param held_strength_pct Strength of the liquid kept, relative to the beverage, 0 to 100 %.
 * @param strength_pct Strength, 0 to 50 %.
 * @param count How many rows.
 * @param[out] yield_pct 0 to 100 %, or NaN.
 * @param[out] status What became of each row: enum cupwright_row.
 * @param[out] refused How many rows have no answer.
 *
 * Fails for no row, but with CUPWRIGHT_STATUS_NULL.
 */
int32_t cupwright_columns_extraction_yield(const double *dose_g,
                                           const double *water_g,
                                           const double *beverage_g,
                                           const double *moisture_pct,
                                           const double *water_solids_mg_per_l,
                                           const double *vapour_g,
                                           const double *held_strength_pct,
                                           const double *strength_pct,
                                           size_t count,
                                           double *yield_pct,
                                           uint8_t *status,
                                           size_t *refused,
                                           struct cupwright_error *error);

/**
 * Brew water per dose, R = W/D. cupwright_ratio_water_ratio() of every row.
 *
 * @param dose_g Doses as weighed, 0.1 to 10000 g.
 * @param water_g Brew water, 0.1 to 200000 g.
 * @param count How many rows.
 * @param[out] water_ratio_g_per_g 0.2 to 200 g/g, or NaN.
 * @param[out] status What became of each row: enum cupwright_row.
 * @param[out] refused How many rows have no answer.
 *
 * Fails for no row, but with CUPWRIGHT_STATUS_NULL.
 */
int32_t cupwright_columns_water_ratio(const double *dose_g,
                                      const double *water_g,
                                      size_t count,
                                      double *water_ratio_g_per_g,
                                      uint8_t *status,
                                      size_t *refused,
                                      struct cupwright_error *error);

/**
 * Water to add for wanted strengths. cupwright_dilution_water_to_reach() of every row.
 *
 * @param beverage_g Beverage, 0.1 to 200000 g.
 * @param strength_pct Strength, 0 to 50 %.
 * @param wanted_pct Strength wanted, 0 to 50 %.
 * @param water_solids_mg_per_l Solids of the waters, 0 to 5000 mg/L.
 * @param count How many rows.
 * @param[out] added_g 0 to 200000 g, or NaN.
 * @param[out] status What became of each row: enum cupwright_row.
 * @param[out] refused How many rows have no answer.
 *
 * Fails for no row, but with CUPWRIGHT_STATUS_NULL.
 */
int32_t cupwright_columns_water_to_reach(const double *beverage_g,
                                         const double *strength_pct,
                                         const double *wanted_pct,
                                         const double *water_solids_mg_per_l,
                                         size_t count,
                                         double *added_g,
                                         uint8_t *status,
                                         size_t *refused,
                                         struct cupwright_error *error);

/**
 * Strengths from degrees Brix, with one factor. cupwright_reading_strength_of_brix() of every row.
 *
 * @param refractive_factor_pct_per_brix Factor of all rows, 0.3 to 2 %/°Bx.
 * @param brix Readings at 20 °C, -2 to 30.5 °Bx.
 * @param count How many rows.
 * @param[out] strength_pct 0 to 50 %, or NaN.
 * @param[out] status What became of each row: enum cupwright_row.
 * @param[out] refused How many rows have no answer.
 *
 * Fails for no row, but for the factor, and with CUPWRIGHT_STATUS_NULL.
 */
int32_t cupwright_columns_strength_of_brix(double refractive_factor_pct_per_brix,
                                           const double *brix,
                                           size_t count,
                                           double *strength_pct,
                                           uint8_t *status,
                                           size_t *refused,
                                           struct cupwright_error *error);

/**
 * Beverages expected, with one brewer's losses. cupwright_retention_beverage() of every row.
 *
 * @param losses The losses of all rows.
 * @param dose_g Doses as weighed, 0.1 to 10000 g.
 * @param water_g Brew water, 0.1 to 200000 g.
 * @param count How many rows.
 * @param[out] beverage_g 0.1 to 200000 g, or NaN.
 * @param[out] status What became of each row: enum cupwright_row.
 * @param[out] refused How many rows have no answer.
 *
 * Fails for no row, but for losses that are not accepted, and with CUPWRIGHT_STATUS_NULL.
 */
int32_t cupwright_columns_beverage(const struct cupwright_losses *losses,
                                   const double *dose_g,
                                   const double *water_g,
                                   size_t count,
                                   double *beverage_g,
                                   uint8_t *status,
                                   size_t *refused,
                                   struct cupwright_error *error);

/**
 * Where cups stand in a window: cupwright_verdict_stand() of every row. The yield must be counted as the window
 * counts it. A row that is refused has 0 for sides and NaN for distances, and so has the yield where the
 * window has none.
 *
 * @param window The window of all rows.
 * @param strength_pct Strength, 0 to 50 %.
 * @param yield_pct Extraction yields, 0 to 100 %; looked at even where the window has none.
 * @param count How many rows.
 * @param[out] strength_side Side of the strength: enum cupwright_side.
 * @param[out] strength_above_lowest Its distance above the lowest edge.
 * @param[out] strength_below_highest Its distance below the highest edge.
 * @param[out] strength_above_centre Its distance above the centre.
 * @param[out] yield_side Side of the yield: enum cupwright_side.
 * @param[out] yield_above_lowest Its distance above the lowest edge.
 * @param[out] yield_below_highest Its distance below the highest edge.
 * @param[out] yield_above_centre Its distance above the centre.
 * @param[out] status What became of each row: enum cupwright_row.
 * @param[out] refused How many rows have no answer.
 *
 * Fails for no row, but as cupwright_verdict_stand() for a window that is none, and with CUPWRIGHT_STATUS_NULL.
 */
int32_t cupwright_columns_stand(const struct cupwright_window *window,
                                const double *strength_pct,
                                const double *yield_pct,
                                size_t count,
                                uint8_t *strength_side,
                                double *strength_above_lowest,
                                double *strength_below_highest,
                                double *strength_above_centre,
                                uint8_t *yield_side,
                                double *yield_above_lowest,
                                double *yield_below_highest,
                                double *yield_above_centre,
                                uint8_t *status,
                                size_t *refused,
                                struct cupwright_error *error);

/**
 * A status in plain words; NULL for a code that is none of enum cupwright_status.
 */
const char *cupwright_status_text(int32_t status);

/**
 * The name of a quantity in plain words, "brew water"; NULL for a code that is none of enum
 * cupwright_quantity.
 */
const char *cupwright_quantity_text(int32_t quantity_code);

/**
 * The unit of a quantity as written after a number, "g", "%"; empty for a plain count; NULL for a
 * code that is none of enum cupwright_quantity.
 */
const char *cupwright_unit_text(int32_t quantity_code);

/**
 * A limit in plain words, "even boiling water does not arrive so hot"; NULL for a code that is none
 * of enum cupwright_limit.
 */
const char *cupwright_limit_text(int32_t limit);

/**
 * Why measurements cannot tell, in plain words, "there are too few"; NULL for a code that is none of
 * enum cupwright_untold.
 */
const char *cupwright_untold_text(int32_t why);

/**
 * What is wanting where measurements cannot tell, in plain words, "gap between doses in g"; NULL for a
 * code that is none of enum cupwright_untold.
 */
const char *cupwright_wanting_text(int32_t why);

/**
 * Why bytes cannot be read, in plain words, "they have changed since they were written"; NULL for a
 * code that is none of enum cupwright_unreadable.
 */
const char *cupwright_unreadable_text(int32_t why);

/**
 * A caution in plain words for the person at the bench; NULL for a code that is none of enum
 * cupwright_caution.
 */
const char *cupwright_caution_text(int32_t caution);

/**
 * What is going on on a scale, in plain words, "water is poured"; NULL for a code that is none of enum
 * cupwright_doing.
 */
const char *cupwright_doing_text(int32_t doing);

/**
 * What happened on a scale, in plain words, "a pour began"; NULL for a code that is none of enum
 * cupwright_happening.
 */
const char *cupwright_happening_text(int32_t happening);

/**
 * A step of a recipe in plain words, "pour water"; NULL for a code that is none of enum
 * cupwright_step.
 */
const char *cupwright_step_text(int32_t step);

/**
 * A cue in plain words, "stop pouring"; NULL for a code that is none of enum cupwright_cue.
 */
const char *cupwright_cue_text(int32_t cue);

/**
 * Why a cue is given, in plain words, "it is time"; NULL for a code that is none of enum
 * cupwright_why.
 */
const char *cupwright_why_text(int32_t why);

#ifdef __cplusplus
}  // extern "C"
#endif  // __cplusplus

#endif  /* CUPWRIGHT_H */
