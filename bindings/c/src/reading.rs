//! From what an instrument shows to the strength of the beverage.

use cupwright::quantity::{Measure, Quantity, ReadingCount, Strength};
use cupwright::reading::{self, Combined, Zero};

use crate::call::{Call, Refused, answer, checked, counted, each, field, given};
use crate::status::cupwright_error;

/// What repeated readings amount to.
#[repr(i32)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum cupwright_agreement {
    /// They agree: the value is their mean.
    Mean = 1,
    /// A single reading, or two that differ by more than the critical range: take another.
    TakeAnother = 2,
    /// Three or more differ by more than the critical range: the value is their median. Look for a
    /// reason before trusting it.
    Median = 3,
}

/// One value from repeated readings.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_combined {
    /// The value: mean or median; the mean so far where another reading is asked for, {Strength}.
    pub strength_pct: f64,
    /// Largest less smallest, % strength.
    pub range_pct: f64,
    /// The range that readings of this repeatability exceed once in twenty times, % strength; 0 for
    /// a single reading.
    pub critical_range_pct: f64,
    /// What they amount to: one of enum cupwright_agreement.
    pub agreement: i32,
    /// Whether there is a critical range: 1 or 0.
    pub has_critical_range: i32,
}

/// What a refractometer was zeroed on.
#[repr(i32)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum cupwright_zero {
    /// Distilled water: the reading holds the brew water's minerals too.
    Distilled = 1,
    /// The brew water: the reading is of coffee alone.
    BrewWater = 2,
}

/// The core's zero, or a refusal.
pub(crate) fn zero_of(call: Call, zero: i32) -> Result<Zero, Refused> {
    const DISTILLED: i32 = cupwright_zero::Distilled as i32;
    const BREW_WATER: i32 = cupwright_zero::BrewWater as i32;
    match zero {
        DISTILLED => Ok(Zero::Distilled),
        BREW_WATER => Ok(Zero::BrewWater),
        _ => Err(call.unknown_choice(zero, field!(zero))),
    }
}

/// The most readings that the core is lent at once.
const MOST: usize = Quantity::ReadingCount.highest() as usize;

/// Lends the core's readings to a question.
pub(crate) fn with_readings<T>(
    call: Call,
    strength_pct: &[f64],
    ask: impl FnOnce(&[Strength]) -> Result<T, Refused>,
) -> Result<T, Refused> {
    let mut places = [call.core(Strength::from_percent(0.0))?; MOST];
    ask(each(strength_pct, &mut places, |strength_pct| checked!(call, strength_pct))?)
}

/// The range that n readings exceed once in twenty times, f(n) s_r, in % strength. Source: ISO
/// 5725-6, acceptability of results.
///
/// @param readings How many readings, at least 2, {ReadingCount}.
/// @param repeatability_pct Standard deviation of readings of one sample by one person on one
///     instrument, % strength, {Repeatability}.
/// @param[out] critical_range_pct The range, % strength.
///
/// Fails with CUPWRIGHT_STATUS_OUT_OF_RANGE for fewer than two.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_reading_critical_range(
    readings: i32,
    repeatability_pct: f64,
    critical_range_pct: *mut f64,
    error: *mut cupwright_error,
) -> i32 {
    answer!(critical_range_pct, error, |call| call.wish(
        &[(Quantity::ReadingCount, field!(readings))],
        reading::critical_range(counted!(call, readings)?, checked!(call, repeatability_pct)?)
    ))
}

fn of_read(read: &Combined) -> cupwright_combined {
    cupwright_combined {
        strength_pct: read.value.value(),
        range_pct: read.range_pct,
        critical_range_pct: read.critical_range_pct.unwrap_or_default(),
        agreement: read.agreement as i32,
        has_critical_range: read.critical_range_pct.is_some().into(),
    }
}

/// Combines repeated readings of one sample by the acceptance rule of ISO 5725-6. A display that
/// steps by 0.01 % adds to the scatter: with a repeatability of the sample alone pass √(s_r² +
/// 0.01²/12).
///
/// @param strength_pct The readings, each {Strength}.
/// @param count How many, {ReadingCount}.
/// @param repeatability_pct Standard deviation of readings of one sample by one person on one
///     instrument, % strength, {Repeatability}.
/// @param[out] combined The value and what it rests on.
///
/// Fails with CUPWRIGHT_STATUS_OUT_OF_RANGE for no reading or more than ten.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_reading_combine(
    strength_pct: *const f64,
    count: usize,
    repeatability_pct: f64,
    combined: *mut cupwright_combined,
    error: *mut cupwright_error,
) -> i32 {
    answer!(combined, error, |call| Ok({
        let ask = |readings: &[_]| {
            call.core(reading::combine(readings, checked!(call, repeatability_pct)?))
        };
        of_read(&with_readings(call, given!(call, strength_pct, count: ReadingCount)?, ask)?)
    }))
}

/// Standard deviation of repeated readings, one's own repeatability, √[Σ(x − x̄)²/(n − 1)]. From
/// three readings it is itself uncertain by half; pool several series.
///
/// @param strength_pct The readings, each {Strength}.
/// @param count How many, {ReadingCount}.
/// @param[out] repeatability_pct {Repeatability}.
///
/// Fails with CUPWRIGHT_STATUS_OUT_OF_RANGE for fewer than two readings or more than ten;
/// CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE for readings that are all equal: the display is too coarse
/// to tell.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_reading_repeatability(
    strength_pct: *const f64,
    count: usize,
    repeatability_pct: *mut f64,
    error: *mut cupwright_error,
) -> i32 {
    answer!(repeatability_pct, error, |call| Ok({
        let ask = |readings: &[_]| {
            call.wish(&[(Quantity::ReadingCount, field!(count))], reading::repeatability(readings))
        };
        with_readings(call, given!(call, strength_pct, count: ReadingCount)?, ask)?.value()
    }))
}

/// Strength of all solids in the beverage, which the mass balance works with: on distilled water
/// the reading itself, on brew water T + s(1 − T).
///
/// @param strength_pct The reading, {Strength}.
/// @param zero What the instrument was zeroed on: one of enum cupwright_zero.
/// @param water_solids_mg_per_l Solids of the water, {WaterSolids}.
/// @param[out] total_pct {Strength}.
///
/// Fails with CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE for a reading on brew water so near the highest
/// strength that the water's solids lead past it.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_reading_total_strength(
    strength_pct: f64,
    zero: i32,
    water_solids_mg_per_l: f64,
    total_pct: *mut f64,
    error: *mut cupwright_error,
) -> i32 {
    answer!(total_pct, error, |call| Ok({
        let (reading, zero) = (checked!(call, strength_pct)?, zero_of(call, zero)?);
        call.core(reading::total_strength(reading, zero, checked!(call, water_solids_mg_per_l)?))?
            .value()
    }))
}

/// Strength in coffee solids alone: on brew water the reading itself, on distilled water (T − s)/(1
/// − s).
///
/// @param strength_pct The reading, {Strength}.
/// @param zero What the instrument was zeroed on: one of enum cupwright_zero.
/// @param water_solids_mg_per_l Solids of the water, {WaterSolids}.
/// @param[out] coffee_pct {Strength}.
///
/// Fails with CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE for a reading on a distilled zero below the
/// water's own solids.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_reading_coffee_strength(
    strength_pct: f64,
    zero: i32,
    water_solids_mg_per_l: f64,
    coffee_pct: *mut f64,
    error: *mut cupwright_error,
) -> i32 {
    answer!(coffee_pct, error, |call| Ok({
        let (reading, zero) = (checked!(call, strength_pct)?, zero_of(call, zero)?);
        call.core(reading::coffee_strength(reading, zero, checked!(call, water_solids_mg_per_l)?))?
            .value()
    }))
}

/// Degrees Brix of a refractive index at 20 °C and 589 nm. Source: fitted to the ICUMSA 1974
/// sucrose table, 0 to 30 °Bx, within 0.005 °Bx.
///
/// @param refractive_index Refractive index relative to air, {RefractiveIndex}.
/// @param[out] brix {Brix}.
///
/// Fails with CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE outside the range of Brix.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_reading_brix_of_index(
    refractive_index: f64,
    brix: *mut f64,
    error: *mut cupwright_error,
) -> i32 {
    answer!(brix, error, |call| Ok(call
        .core(reading::brix_of_index(checked!(call, refractive_index)?))?
        .value()))
}

/// Refractive index at 20 °C and 589 nm of degrees Brix. Source: a fit of its own to the same
/// table, within 0.000007.
///
/// @param brix Degrees Brix, {Brix}.
/// @param[out] refractive_index {RefractiveIndex}.
///
/// Fails with CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE outside the range of the index.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_reading_index_of_brix(
    brix: f64,
    refractive_index: *mut f64,
    error: *mut cupwright_error,
) -> i32 {
    answer!(refractive_index, error, |call| Ok(call
        .core(reading::index_of_brix(checked!(call, brix)?))?
        .value()))
}

/// A Brix reading at the sample's temperature, corrected to 20 °C. Only for an instrument that does
/// not compensate by itself and was zeroed at 20 °C; zeroing on water at the sample's temperature
/// is better. Source: fitted to IAPWS R9-97, within 0.1 °Bx for coffee at 10 to 30 °C.
///
/// @param brix Degrees Brix, {Brix}.
/// @param sample_c Temperature of the sample, {SampleTemperature}.
/// @param[out] corrected_brix {Brix}.
///
/// Fails with CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE outside the range of Brix.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_reading_brix_at_20(
    brix: f64,
    sample_c: f64,
    corrected_brix: *mut f64,
    error: *mut cupwright_error,
) -> i32 {
    answer!(corrected_brix, error, |call| Ok(call
        .core(reading::brix_at_20(checked!(call, brix)?, checked!(call, sample_c)?))?
        .value()))
}

/// Strength from degrees Brix at 20 °C or compensated, T = k B.
///
/// @param brix Degrees Brix, {Brix}.
/// @param refractive_factor_pct_per_brix Strength per degree Brix, {RefractiveFactor}.
///     CUPWRIGHT_USUAL_REFRACTIVE_FACTOR_PCT_PER_BRIX has a weak basis: calibrate where it matters.
/// @param[out] strength_pct {Strength}.
///
/// Fails with CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE below zero or above the range of the strength.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_reading_strength_of_brix(
    brix: f64,
    refractive_factor_pct_per_brix: f64,
    strength_pct: *mut f64,
    error: *mut cupwright_error,
) -> i32 {
    answer!(strength_pct, error, |call| Ok(call
        .core(reading::strength_of_brix(
            checked!(call, brix)?,
            checked!(call, refractive_factor_pct_per_brix)?
        ))?
        .value()))
}

/// Degrees Brix that a strength would show, T/k.
///
/// @param strength_pct Strength, {Strength}.
/// @param refractive_factor_pct_per_brix Strength per degree Brix, {RefractiveFactor}.
///     CUPWRIGHT_USUAL_REFRACTIVE_FACTOR_PCT_PER_BRIX has a weak basis: calibrate where it matters.
/// @param[out] brix {Brix}.
///
/// Fails with CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE above the range of Brix.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_reading_brix_of_strength(
    strength_pct: f64,
    refractive_factor_pct_per_brix: f64,
    brix: *mut f64,
    error: *mut cupwright_error,
) -> i32 {
    answer!(brix, error, |call| Ok({
        let (strength, factor) =
            (checked!(call, strength_pct)?, checked!(call, refractive_factor_pct_per_brix)?);
        call.core(reading::brix_of_strength(strength, factor))?.value()
    }))
}

/// Strength from a refractive index read at the sample's temperature: Brix, corrected to 20 °C,
/// times the factor.
///
/// @param refractive_index Refractive index relative to air, {RefractiveIndex}.
/// @param sample_c Temperature of the sample, {SampleTemperature}.
/// @param refractive_factor_pct_per_brix Strength per degree Brix, {RefractiveFactor}.
///     CUPWRIGHT_USUAL_REFRACTIVE_FACTOR_PCT_PER_BRIX has a weak basis: calibrate where it matters.
/// @param[out] strength_pct {Strength}.
///
/// Fails with CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE for an index below that of water.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_reading_strength_of_index(
    refractive_index: f64,
    sample_c: f64,
    refractive_factor_pct_per_brix: f64,
    strength_pct: *mut f64,
    error: *mut cupwright_error,
) -> i32 {
    answer!(strength_pct, error, |call| Ok({
        let (index, sample) = (checked!(call, refractive_index)?, checked!(call, sample_c)?);
        let factor = checked!(call, refractive_factor_pct_per_brix)?;
        call.core(reading::strength_of_index(index, sample, factor))?.value()
    }))
}
