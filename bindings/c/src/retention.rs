//! What grounds, paper and chamber keep, and the beverage that is left.

use cupwright::quantity::Measure;
use cupwright::retention::{self, Losses, Paper};

use crate::call::{Call, Refused, answer, checked, given};
use crate::status::cupwright_error;

/// Where the brew water goes that does not become beverage.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_losses {
    /// Brew water missing per dose, apart from what is named below, {ApparentRetention}. Published:
    /// 1.5 to 2 for drained drip brews.
    pub apparent_retention_g_per_g: f64,
    /// Liquid that chamber and filter keep whatever the dose, {HoldUp}.
    pub hold_up_g: f64,
    /// Dry filter paper that drinks from the brew, {PaperMass}; 0 for no paper, for metal, and for
    /// paper rinsed before, which is already full.
    pub paper_g: f64,
    /// What a gram of that paper takes up, {PaperUptake}: weigh one dry, then wet and drained.
    pub paper_uptake_g_per_g: f64,
    /// Drips lost before the press or the drain, {Drips}.
    pub drips_g: f64,
    /// Vapour lost, {Vapour}.
    pub vapour_g: f64,
}

/// The core's losses.
//
// Inline as brews are.
#[cfg_attr(not(any(target_os = "none", target_family = "wasm")), inline(always))]
pub(crate) fn losses(call: Call, losses: &cupwright_losses) -> Result<Losses, Refused> {
    Ok(Losses {
        retention: checked!(call, losses.apparent_retention_g_per_g)?,
        hold_up: checked!(call, losses.hold_up_g)?,
        paper: Paper::Dry {
            mass: checked!(call, losses.paper_g)?,
            uptake: checked!(call, losses.paper_uptake_g_per_g)?,
        },
        drips: checked!(call, losses.drips_g)?,
        vapour: checked!(call, losses.vapour_g)?,
    })
}

/// Beverage expected, B = W − r D − hold-up − paper − drips − vapour.
///
/// @param losses The losses.
/// @param dose_g Dose as weighed, {Dose}.
/// @param water_g Brew water, {BrewWater}.
/// @param[out] beverage_g {Beverage}.
///
/// Fails with CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE where nothing is left for the cup.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_retention_beverage(
    losses: *const cupwright_losses,
    dose_g: f64,
    water_g: f64,
    beverage_g: *mut f64,
    error: *mut cupwright_error,
) -> i32 {
    answer!(beverage_g, error, |call| Ok({
        let losses = self::losses(call, given!(call, losses)?)?;
        call.core(retention::beverage(&losses, checked!(call, dose_g)?, checked!(call, water_g)?))?
            .value()
    }))
}

/// Brew water for a beverage: the inverse of cupwright_retention_beverage() in W.
///
/// @param losses The losses.
/// @param dose_g Dose as weighed, {Dose}.
/// @param beverage_g Beverage, {Beverage}.
/// @param[out] water_g {BrewWater}.
///
/// Fails with CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE outside the range of brew water.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_retention_water_for_beverage(
    losses: *const cupwright_losses,
    dose_g: f64,
    beverage_g: f64,
    water_g: *mut f64,
    error: *mut cupwright_error,
) -> i32 {
    answer!(water_g, error, |call| Ok({
        let losses = self::losses(call, given!(call, losses)?)?;
        call.core(retention::water_for_beverage(
            &losses,
            checked!(call, dose_g)?,
            checked!(call, beverage_g)?,
        ))?
        .value()
    }))
}

/// Dose that leaves a beverage from an amount of water: the inverse of
/// cupwright_retention_beverage() in D.
///
/// @param losses The losses.
/// @param water_g Brew water, {BrewWater}.
/// @param beverage_g Beverage, {Beverage}.
/// @param[out] dose_g {Dose}.
///
/// Fails with CUPWRIGHT_STATUS_IMPOSSIBLE where the water does not leave that much with the
/// smallest dose; CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE outside the range of the dose.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_retention_dose_for_beverage(
    losses: *const cupwright_losses,
    water_g: f64,
    beverage_g: f64,
    dose_g: *mut f64,
    error: *mut cupwright_error,
) -> i32 {
    answer!(dose_g, error, |call| Ok({
        let losses = self::losses(call, given!(call, losses)?)?;
        call.core(retention::dose_for_beverage(
            &losses,
            checked!(call, water_g)?,
            checked!(call, beverage_g)?,
        ))?
        .value()
    }))
}

/// Apparent retention from one brew on a scale, r = (W − B − hold-up − paper − drips − vapour)/D.
/// The retention in the losses is not used, but must be in its range.
///
/// @param losses The losses.
/// @param dose_g Dose as weighed, {Dose}.
/// @param water_g Brew water, {BrewWater}.
/// @param beverage_g Beverage, {Beverage}.
/// @param[out] apparent_retention_g_per_g {ApparentRetention}.
///
/// Fails with CUPWRIGHT_STATUS_IMPOSSIBLE for less water than the beverage and the other losses
/// take; CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE above the range of the retention.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_retention_of_brew(
    losses: *const cupwright_losses,
    dose_g: f64,
    water_g: f64,
    beverage_g: f64,
    apparent_retention_g_per_g: *mut f64,
    error: *mut cupwright_error,
) -> i32 {
    answer!(apparent_retention_g_per_g, error, |call| Ok({
        let losses = self::losses(call, given!(call, losses)?)?;
        let (dose, water) = (checked!(call, dose_g)?, checked!(call, water_g)?);
        call.core(retention::retention_of_brew(&losses, dose, water, checked!(call, beverage_g)?))?
            .value()
    }))
}

/// Apparent retention as a scale alone sees it, r = (W − B)/D.
///
/// @param dose_g Dose as weighed, {Dose}.
/// @param water_g Brew water, {BrewWater}.
/// @param beverage_g Beverage, {Beverage}.
/// @param[out] apparent_retention_g_per_g {ApparentRetention}.
///
/// Fails with CUPWRIGHT_STATUS_IMPOSSIBLE for less brew water than beverage;
/// CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE above the range of the retention.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_retention_apparent_retention(
    dose_g: f64,
    water_g: f64,
    beverage_g: f64,
    apparent_retention_g_per_g: *mut f64,
    error: *mut cupwright_error,
) -> i32 {
    answer!(apparent_retention_g_per_g, error, |call| Ok({
        let (dose, water) = (checked!(call, dose_g)?, checked!(call, water_g)?);
        call.core(retention::apparent_retention(dose, water, checked!(call, beverage_g)?))?.value()
    }))
}

/// True retention, the liquid that the grounds hold with its dissolved coffee, from what a scale
/// sees, r + E + h − V/D.
///
/// @param apparent_retention_g_per_g What a scale sees, {ApparentRetention}.
/// @param yield_pct Extraction yield, {Yield}.
/// @param moisture_pct Moisture of the dose, {Moisture}.
/// @param vapour_g Vapour that the apparent retention still contains, {Vapour}; 0 where it was
///     taken out before.
/// @param dose_g Dose as weighed, {Dose}.
/// @param[out] true_retention_g_per_g {TrueRetention}.
///
/// Fails with CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE where the vapour is more than all that is
/// missing.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_retention_true_retention(
    apparent_retention_g_per_g: f64,
    yield_pct: f64,
    moisture_pct: f64,
    vapour_g: f64,
    dose_g: f64,
    true_retention_g_per_g: *mut f64,
    error: *mut cupwright_error,
) -> i32 {
    answer!(true_retention_g_per_g, error, |call| Ok({
        let (apparent, extracted) =
            (checked!(call, apparent_retention_g_per_g)?, checked!(call, yield_pct)?);
        let (moisture, vapour) = (checked!(call, moisture_pct)?, checked!(call, vapour_g)?);
        call.core(retention::true_retention(
            apparent,
            extracted,
            moisture,
            vapour,
            checked!(call, dose_g)?,
        ))?
        .value()
    }))
}

/// What a scale sees from true retention: the inverse of cupwright_retention_true_retention().
///
/// @param true_retention_g_per_g Liquid held per dose, {TrueRetention}.
/// @param yield_pct Extraction yield, {Yield}.
/// @param moisture_pct Moisture of the dose, {Moisture}.
/// @param vapour_g Vapour lost, {Vapour}.
/// @param dose_g Dose as weighed, {Dose}.
/// @param[out] apparent_retention_g_per_g {ApparentRetention}.
///
/// Fails with CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE below zero: the grounds hold less than they
/// dissolved.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_retention_apparent_of_true_retention(
    true_retention_g_per_g: f64,
    yield_pct: f64,
    moisture_pct: f64,
    vapour_g: f64,
    dose_g: f64,
    apparent_retention_g_per_g: *mut f64,
    error: *mut cupwright_error,
) -> i32 {
    answer!(apparent_retention_g_per_g, error, |call| Ok({
        let (held, extracted) =
            (checked!(call, true_retention_g_per_g)?, checked!(call, yield_pct)?);
        let (moisture, vapour, dose) =
            (checked!(call, moisture_pct)?, checked!(call, vapour_g)?, checked!(call, dose_g)?);
        call.core(retention::apparent_of_true_retention(held, extracted, moisture, vapour, dose))?
            .value()
    }))
}

/// True retention per dose from the water content w of spent grounds, w/(1 − w) · (1 − E). Low by
/// about T/(1 − w): it counts the kept liquid's solids as grounds.
///
/// @param spent_moisture_pct Water in wet spent grounds, {SpentMoisture}.
/// @param yield_pct Extraction yield, {Yield}.
/// @param[out] true_retention_g_per_g {TrueRetention}.
///
/// Fails with CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE outside the range of the retention.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_retention_of_spent_moisture(
    spent_moisture_pct: f64,
    yield_pct: f64,
    true_retention_g_per_g: *mut f64,
    error: *mut cupwright_error,
) -> i32 {
    answer!(true_retention_g_per_g, error, |call| Ok({
        let (moisture, extracted) =
            (checked!(call, spent_moisture_pct)?, checked!(call, yield_pct)?);
        call.core(retention::retention_of_spent_moisture(moisture, extracted))?.value()
    }))
}
