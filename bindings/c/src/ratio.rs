//! Ratios, millilitres and grams, servings, batches.

use cupwright::quantity::{Measure, Quantity};
use cupwright::ratio::{self, BatchSplit, Chamber};

use crate::call::{Call, Refused, answer, checked, counted, field, given};
use crate::status::cupwright_error;

/// What a brewer's chamber holds.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_chamber {
    /// Volume up to the highest safe level, {Volume}.
    pub volume_ml: f64,
    /// Volume that a gram of wetted grounds takes away from the water, {Displacement}. No published
    /// value was found: read the level before and after.
    pub displacement_ml_per_g: f64,
}

/// A brew divided into equal batches.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_batch_split {
    /// Dose of each, {Dose}.
    pub dose_g: f64,
    /// Brew water of each, {BrewWater}.
    pub water_g: f64,
    /// How full the chamber gets, water and grounds, {Volume}.
    pub fill_ml: f64,
    /// How many, {Batches}.
    pub batches: i32,
}

/// A dose with its brew water.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_amounts {
    /// Dose, {Dose}.
    pub dose_g: f64,
    /// Brew water, {BrewWater}.
    pub water_g: f64,
}

/// The core's chamber.
pub(crate) fn chamber(call: Call, chamber: &cupwright_chamber) -> Result<Chamber, Refused> {
    Ok(Chamber {
        volume: checked!(call, chamber.volume_ml)?,
        displacement: checked!(call, chamber.displacement_ml_per_g)?,
    })
}

/// Brew water per dose, R = W/D.
///
/// @param dose_g Dose as weighed, {Dose}.
/// @param water_g Brew water, {BrewWater}.
/// @param[out] water_ratio_g_per_g {WaterRatio}.
///
/// Fails with CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE outside the range of the ratio.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_ratio_water_ratio(
    dose_g: f64,
    water_g: f64,
    water_ratio_g_per_g: *mut f64,
    error: *mut cupwright_error,
) -> i32 {
    answer!(water_ratio_g_per_g, error, |call| Ok(call
        .core(ratio::water_ratio(checked!(call, dose_g)?, checked!(call, water_g)?))?
        .value()))
}

/// Brew water for a dose at a ratio, W = R D.
///
/// @param dose_g Dose as weighed, {Dose}.
/// @param water_ratio_g_per_g Brew water per dose, {WaterRatio}.
/// @param[out] water_g {BrewWater}.
///
/// Fails with CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE outside the range of brew water.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_ratio_water_for_ratio(
    dose_g: f64,
    water_ratio_g_per_g: f64,
    water_g: *mut f64,
    error: *mut cupwright_error,
) -> i32 {
    answer!(water_g, error, |call| Ok(call
        .core(ratio::water_for_ratio(
            checked!(call, dose_g)?,
            checked!(call, water_ratio_g_per_g)?
        ))?
        .value()))
}

/// Dose for an amount of brew water at a ratio, D = W/R.
///
/// @param water_g Brew water, {BrewWater}.
/// @param water_ratio_g_per_g Brew water per dose, {WaterRatio}.
/// @param[out] dose_g {Dose}.
///
/// Fails with CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE outside the range of the dose.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_ratio_dose_for_water(
    water_g: f64,
    water_ratio_g_per_g: f64,
    dose_g: *mut f64,
    error: *mut cupwright_error,
) -> i32 {
    answer!(dose_g, error, |call| Ok(call
        .core(ratio::dose_for_water(
            checked!(call, water_g)?,
            checked!(call, water_ratio_g_per_g)?
        ))?
        .value()))
}

/// Beverage per dose, B/D. An "18 in, 36 out" shot has 2.
///
/// @param dose_g Dose as weighed, {Dose}.
/// @param beverage_g Beverage, {Beverage}.
/// @param[out] beverage_ratio_g_per_g {BeverageRatio}.
///
/// Fails with CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE outside the range of the ratio.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_ratio_beverage_ratio(
    dose_g: f64,
    beverage_g: f64,
    beverage_ratio_g_per_g: *mut f64,
    error: *mut cupwright_error,
) -> i32 {
    answer!(beverage_ratio_g_per_g, error, |call| Ok(call
        .core(ratio::beverage_ratio(checked!(call, dose_g)?, checked!(call, beverage_g)?))?
        .value()))
}

/// Beverage from a dose at a ratio.
///
/// @param dose_g Dose as weighed, {Dose}.
/// @param beverage_ratio_g_per_g Beverage per dose, {BeverageRatio}.
/// @param[out] beverage_g {Beverage}.
///
/// Fails with CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE outside the range of the beverage.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_ratio_beverage_for_ratio(
    dose_g: f64,
    beverage_ratio_g_per_g: f64,
    beverage_g: *mut f64,
    error: *mut cupwright_error,
) -> i32 {
    answer!(beverage_g, error, |call| Ok(call
        .core(ratio::beverage_for_ratio(
            checked!(call, dose_g)?,
            checked!(call, beverage_ratio_g_per_g)?
        ))?
        .value()))
}

/// Dose for a beverage at a ratio.
///
/// @param beverage_g Beverage, {Beverage}.
/// @param beverage_ratio_g_per_g Beverage per dose, {BeverageRatio}.
/// @param[out] dose_g {Dose}.
///
/// Fails with CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE outside the range of the dose.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_ratio_dose_for_beverage(
    beverage_g: f64,
    beverage_ratio_g_per_g: f64,
    dose_g: *mut f64,
    error: *mut cupwright_error,
) -> i32 {
    answer!(dose_g, error, |call| Ok(call
        .core(ratio::dose_for_beverage(
            checked!(call, beverage_g)?,
            checked!(call, beverage_ratio_g_per_g)?
        ))?
        .value()))
}

/// Dose per litre of brew water measured at a temperature, ρ/R. The published "55 g/L" does not say
/// at which temperature its litre is measured; between 20 and 95 °C that is 3.6 %.
///
/// @param water_ratio_g_per_g Brew water per dose, {WaterRatio}.
/// @param water_c Temperature at which the litre is measured, {Temperature}.
/// @param[out] dose_g_per_l {DosePerLitre}.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_ratio_dose_per_litre(
    water_ratio_g_per_g: f64,
    water_c: f64,
    dose_g_per_l: *mut f64,
    error: *mut cupwright_error,
) -> i32 {
    answer!(dose_g_per_l, error, |call| Ok(call
        .core(ratio::dose_per_litre(
            checked!(call, water_ratio_g_per_g)?,
            checked!(call, water_c)?
        ))?
        .value()))
}

/// The ratio that a dose per litre of brew water stands for, ρ over that dose.
///
/// @param dose_g_per_l Dose per litre, {DosePerLitre}.
/// @param water_c Temperature at which the litre is measured, {Temperature}.
/// @param[out] water_ratio_g_per_g {WaterRatio}.
///
/// Fails with CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE outside the range of the ratio.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_ratio_of_dose_per_litre(
    dose_g_per_l: f64,
    water_c: f64,
    water_ratio_g_per_g: *mut f64,
    error: *mut cupwright_error,
) -> i32 {
    answer!(water_ratio_g_per_g, error, |call| Ok(call
        .core(ratio::ratio_of_dose_per_litre(
            checked!(call, dose_g_per_l)?,
            checked!(call, water_c)?
        ))?
        .value()))
}

/// Mass of a volume of water at its temperature, W = ρ V. A jug marked in millilitres misleads: 200
/// mL of water at 95 °C weighs 192.4 g.
///
/// @param volume_ml Volume, {Volume}.
/// @param water_c Temperature, {Temperature}.
/// @param[out] water_g {BrewWater}.
///
/// Fails with CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE outside the range of brew water.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_ratio_water_mass(
    volume_ml: f64,
    water_c: f64,
    water_g: *mut f64,
    error: *mut cupwright_error,
) -> i32 {
    answer!(water_g, error, |call| Ok(call
        .core(ratio::water_mass(checked!(call, volume_ml)?, checked!(call, water_c)?))?
        .value()))
}

/// Volume of a mass of water at its temperature: the inverse of cupwright_ratio_water_mass().
///
/// @param water_g Brew water, {BrewWater}.
/// @param water_c Temperature, {Temperature}.
/// @param[out] volume_ml {Volume}.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_ratio_water_volume(
    water_g: f64,
    water_c: f64,
    volume_ml: *mut f64,
    error: *mut cupwright_error,
) -> i32 {
    answer!(volume_ml, error, |call| Ok(call
        .core(ratio::water_volume(checked!(call, water_g)?, checked!(call, water_c)?))?
        .value()))
}

/// Dose and water for several servings of one recipe. Plain multiplication: what a chamber keeps
/// whatever the dose is kept only once, which cupwright_plan_recipe() allows for.
///
/// @param dose_g Dose as weighed, {Dose}.
/// @param water_g Brew water, {BrewWater}.
/// @param servings Servings, {Servings}.
/// @param[out] amounts Dose and brew water for all of them.
///
/// Fails with CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE outside the range of dose or brew water.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_ratio_for_servings(
    dose_g: f64,
    water_g: f64,
    servings: i32,
    amounts: *mut cupwright_amounts,
    error: *mut cupwright_error,
) -> i32 {
    answer!(amounts, error, |call| Ok({
        let (dose, water) = call.core(ratio::for_servings(
            checked!(call, dose_g)?,
            checked!(call, water_g)?,
            counted!(call, servings)?,
        ))?;
        cupwright_amounts { dose_g: dose.value(), water_g: water.value() }
    }))
}

/// How many whole cups of one size a beverage fills.
///
/// @param beverage_g Beverage, {Beverage}.
/// @param cup_g Beverage in a cup, {Beverage}.
/// @param[out] servings {Servings}.
///
/// Fails with CUPWRIGHT_STATUS_INFEASIBLE where it does not fill one, the nearest cup being the
/// beverage itself; CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE for more cups than servings may be.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_ratio_whole_cups(
    beverage_g: f64,
    cup_g: f64,
    servings: *mut i32,
    error: *mut cupwright_error,
) -> i32 {
    answer!(servings, error, |call| Ok(call
        .wish(
            &[(Quantity::Beverage, field!(cup_g))],
            ratio::whole_cups(checked!(call, beverage_g)?, checked!(call, cup_g)?)
        )?
        .count() as i32))
}

fn of_split(split: &BatchSplit) -> cupwright_batch_split {
    cupwright_batch_split {
        dose_g: split.dose.value(),
        water_g: split.water.value(),
        fill_ml: split.fill.value(),
        batches: split.batches.count() as i32,
    }
}

/// The fewest equal batches that a chamber can brew, ⌈(W/ρ + v D)/V⌉. All the water of a batch is
/// in the chamber at once.
///
/// @param dose_g Dose as weighed, {Dose}.
/// @param water_g Brew water, {BrewWater}.
/// @param water_c Temperature, {Temperature}.
/// @param chamber The chamber.
/// @param[out] split The batches.
///
/// Fails with CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE where a batch would be too small or the batches
/// too many.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_ratio_batches(
    dose_g: f64,
    water_g: f64,
    water_c: f64,
    chamber: *const cupwright_chamber,
    split: *mut cupwright_batch_split,
    error: *mut cupwright_error,
) -> i32 {
    answer!(split, error, |call| Ok({
        let (dose, water, at) =
            (checked!(call, dose_g)?, checked!(call, water_g)?, checked!(call, water_c)?);
        let chamber = self::chamber(call, given!(call, chamber)?)?;
        of_split(&call.core(ratio::batches(dose, water, at, &chamber))?)
    }))
}

/// The largest dose that a chamber can brew in one batch at a ratio, V/(R/ρ + v).
///
/// @param water_ratio_g_per_g Brew water per dose, {WaterRatio}.
/// @param water_c Temperature, {Temperature}.
/// @param chamber The chamber.
/// @param[out] dose_g {Dose}.
///
/// Fails with CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE outside the range of the dose.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_ratio_largest_dose(
    water_ratio_g_per_g: f64,
    water_c: f64,
    chamber: *const cupwright_chamber,
    dose_g: *mut f64,
    error: *mut cupwright_error,
) -> i32 {
    answer!(dose_g, error, |call| Ok({
        let (ratio, at) = (checked!(call, water_ratio_g_per_g)?, checked!(call, water_c)?);
        call.core(ratio::largest_dose(ratio, at, &self::chamber(call, given!(call, chamber)?)?))?
            .value()
    }))
}
