//! The main formulas on whole columns: millions of logged brews scored in one call.

use cupwright::columns::{self, Places, Standings, Uneven};

use crate::call::{Call, Refused, answer, checked, field, given};
use crate::retention::{self, cupwright_losses};
use crate::status::cupwright_error;
use crate::verdict::{self, cupwright_window};

/// What became of a row of columns. Between the two: the first input that is not accepted, counted from 1 in
/// the order of the function's columns.
///
/// The functions cupwright_columns_...() call a formula for each row. Columns are arrays of `count` numbers,
/// in the caller's memory, and may hold bad numbers; none may overlap with one that is written. A row
/// that is refused has NaN for an answer, and the function for a single row, called with its numbers, tells
/// the error in full: it refuses the same rows, for the same input. NULL is accepted for a column only
/// where count is 0.
#[repr(i32)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum cupwright_row {
    /// Answered, with the same bits as by the function for a single row.
    Answered = 0,
    /// Every input is accepted, but nothing possible follows from them.
    NoAnswer = 255,
}

/// A column that is read.
macro_rules! column {
    ($call:ident, $from:ident, $count:ident) => {
        // SAFETY: the crate's own condition: NULL, or valid for the call.
        unsafe { $call.all($from, $count, field!($from)) }
    };
}

/// A column that is written.
macro_rules! place {
    ($call:ident, $to:ident, $count:ident) => {
        // SAFETY: the crate's own condition: NULL, or valid for the call, and apart from all others.
        unsafe { $call.room($to, $count, field!($to)) }
    };
}

/// The columns of one quantity's places.
macro_rules! places {
    ($call:ident, $count:ident => $side:ident, $low:ident, $high:ident, $centre:ident) => {
        Places {
            side: place!($call, $side, $count)?,
            above_lowest: place!($call, $low, $count)?,
            below_highest: place!($call, $high, $count)?,
            above_centre: place!($call, $centre, $count)?,
        }
    };
}

/// The core's function on so many rows: what they share, the columns that are read, the answers' column, and
/// that of the statuses.
macro_rules! scored {
    ($call:ident, $count:ident,
        $function:ident($($same:expr)?; $($from:ident),+ => $to:ident, $status:ident)) => {
        columns::$function(
            $($same,)?
            $(column!($call, $from, $count)?,)+
            place!($call, $to, $count)?,
            place!($call, $status, $count)?,
        )
        .map_err(|uneven| of_one_count($call, uneven))
    };
}

/// Never told: all columns of a call have its count.
fn of_one_count(call: Call, _: Uneven) -> Refused {
    call.null(field!(count))
}

/// Yields by the flow-through form, E = T B/D. cupwright_extraction_flow_through_yield() of every row.
///
/// @param strength_pct Strength, {Strength}.
/// @param beverage_g Beverage, {Beverage}.
/// @param dose_g Doses as weighed, {Dose}.
/// @param count How many rows.
/// @param[out] yield_pct {Yield}, or NaN.
/// @param[out] status What became of each row: enum cupwright_row.
/// @param[out] refused How many rows have no answer.
///
/// Fails for no row, but with CUPWRIGHT_STATUS_NULL.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_columns_flow_through_yield(
    strength_pct: *const f64,
    beverage_g: *const f64,
    dose_g: *const f64,
    count: usize,
    yield_pct: *mut f64,
    status: *mut u8,
    refused: *mut usize,
    error: *mut cupwright_error,
) -> i32 {
    answer!(refused, error, |call| {
        scored!(call, count, flow_through_yield(;
            strength_pct, beverage_g, dose_g
            => yield_pct, status))
    })
}

/// Strengths by the flow-through form, T = E D/B. cupwright_extraction_flow_through_strength() of every row.
///
/// @param yield_pct Extraction yields, {Yield}.
/// @param beverage_g Beverage, {Beverage}.
/// @param dose_g Doses as weighed, {Dose}.
/// @param count How many rows.
/// @param[out] strength_pct {Strength}, or NaN.
/// @param[out] status What became of each row: enum cupwright_row.
/// @param[out] refused How many rows have no answer.
///
/// Fails for no row, but with CUPWRIGHT_STATUS_NULL.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_columns_flow_through_strength(
    yield_pct: *const f64,
    beverage_g: *const f64,
    dose_g: *const f64,
    count: usize,
    strength_pct: *mut f64,
    status: *mut u8,
    refused: *mut usize,
    error: *mut cupwright_error,
) -> i32 {
    answer!(refused, error, |call| {
        scored!(call, count, flow_through_strength(;
            yield_pct, beverage_g, dose_g
            => strength_pct, status))
    })
}

/// Yields by the steeped form, E = (W/D) T/(1 − T). cupwright_extraction_steeped_yield() of every row.
///
/// @param strength_pct Strength, {Strength}.
/// @param water_g Brew water, {BrewWater}.
/// @param dose_g Doses as weighed, {Dose}.
/// @param count How many rows.
/// @param[out] yield_pct {Yield}, or NaN.
/// @param[out] status What became of each row: enum cupwright_row.
/// @param[out] refused How many rows have no answer.
///
/// Fails for no row, but with CUPWRIGHT_STATUS_NULL.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_columns_steeped_yield(
    strength_pct: *const f64,
    water_g: *const f64,
    dose_g: *const f64,
    count: usize,
    yield_pct: *mut f64,
    status: *mut u8,
    refused: *mut usize,
    error: *mut cupwright_error,
) -> i32 {
    answer!(refused, error, |call| {
        scored!(call, count, steeped_yield(; strength_pct, water_g, dose_g => yield_pct, status))
    })
}

/// Yields by the whole mass balance. cupwright_extraction_yield() of every row.
///
/// @param dose_g Doses as weighed, {Dose}.
/// @param water_g Brew water, {BrewWater}.
/// @param beverage_g Beverage, {Beverage}.
/// @param moisture_pct Moisture of the doses, {Moisture}.
/// @param water_solids_mg_per_l Solids of the waters, {WaterSolids}.
/// @param vapour_g Vapour lost, {Vapour}.
/// @param held_strength_pct Strength of the liquid kept, relative to the beverage, {HeldStrength}.
/// @param strength_pct Strength, {Strength}.
/// @param count How many rows.
/// @param[out] yield_pct {Yield}, or NaN.
/// @param[out] status What became of each row: enum cupwright_row.
/// @param[out] refused How many rows have no answer.
///
/// Fails for no row, but with CUPWRIGHT_STATUS_NULL.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_columns_extraction_yield(
    dose_g: *const f64,
    water_g: *const f64,
    beverage_g: *const f64,
    moisture_pct: *const f64,
    water_solids_mg_per_l: *const f64,
    vapour_g: *const f64,
    held_strength_pct: *const f64,
    strength_pct: *const f64,
    count: usize,
    yield_pct: *mut f64,
    status: *mut u8,
    refused: *mut usize,
    error: *mut cupwright_error,
) -> i32 {
    answer!(refused, error, |call| {
        scored!(call, count, extraction_yield(;
            dose_g, water_g, beverage_g, moisture_pct, water_solids_mg_per_l,
            vapour_g, held_strength_pct, strength_pct
            => yield_pct, status))
    })
}

/// Brew water per dose, R = W/D. cupwright_ratio_water_ratio() of every row.
///
/// @param dose_g Doses as weighed, {Dose}.
/// @param water_g Brew water, {BrewWater}.
/// @param count How many rows.
/// @param[out] water_ratio_g_per_g {WaterRatio}, or NaN.
/// @param[out] status What became of each row: enum cupwright_row.
/// @param[out] refused How many rows have no answer.
///
/// Fails for no row, but with CUPWRIGHT_STATUS_NULL.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_columns_water_ratio(
    dose_g: *const f64,
    water_g: *const f64,
    count: usize,
    water_ratio_g_per_g: *mut f64,
    status: *mut u8,
    refused: *mut usize,
    error: *mut cupwright_error,
) -> i32 {
    answer!(refused, error, |call| {
        scored!(call, count, water_ratio(; dose_g, water_g => water_ratio_g_per_g, status))
    })
}

/// Water to add for wanted strengths. cupwright_dilution_water_to_reach() of every row.
///
/// @param beverage_g Beverage, {Beverage}.
/// @param strength_pct Strength, {Strength}.
/// @param wanted_pct Strength wanted, {Strength}.
/// @param water_solids_mg_per_l Solids of the waters, {WaterSolids}.
/// @param count How many rows.
/// @param[out] added_g {Addition}, or NaN.
/// @param[out] status What became of each row: enum cupwright_row.
/// @param[out] refused How many rows have no answer.
///
/// Fails for no row, but with CUPWRIGHT_STATUS_NULL.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_columns_water_to_reach(
    beverage_g: *const f64,
    strength_pct: *const f64,
    wanted_pct: *const f64,
    water_solids_mg_per_l: *const f64,
    count: usize,
    added_g: *mut f64,
    status: *mut u8,
    refused: *mut usize,
    error: *mut cupwright_error,
) -> i32 {
    answer!(refused, error, |call| {
        scored!(call, count, water_to_reach(;
            beverage_g, strength_pct, wanted_pct, water_solids_mg_per_l
            => added_g, status))
    })
}

/// Strengths from degrees Brix, with one factor. cupwright_reading_strength_of_brix() of every row.
///
/// @param refractive_factor_pct_per_brix Factor of all rows, {RefractiveFactor}.
/// @param brix Readings at 20 °C, {Brix}.
/// @param count How many rows.
/// @param[out] strength_pct {Strength}, or NaN.
/// @param[out] status What became of each row: enum cupwright_row.
/// @param[out] refused How many rows have no answer.
///
/// Fails for no row, but for the factor, and with CUPWRIGHT_STATUS_NULL.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_columns_strength_of_brix(
    refractive_factor_pct_per_brix: f64,
    brix: *const f64,
    count: usize,
    strength_pct: *mut f64,
    status: *mut u8,
    refused: *mut usize,
    error: *mut cupwright_error,
) -> i32 {
    answer!(refused, error, |call| {
        let factor = checked!(call, refractive_factor_pct_per_brix)?;
        scored!(call, count, strength_of_brix(factor; brix => strength_pct, status))
    })
}

/// Beverages expected, with one brewer's losses. cupwright_retention_beverage() of every row.
///
/// @param losses The losses of all rows.
/// @param dose_g Doses as weighed, {Dose}.
/// @param water_g Brew water, {BrewWater}.
/// @param count How many rows.
/// @param[out] beverage_g {Beverage}, or NaN.
/// @param[out] status What became of each row: enum cupwright_row.
/// @param[out] refused How many rows have no answer.
///
/// Fails for no row, but for losses that are not accepted, and with CUPWRIGHT_STATUS_NULL.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_columns_beverage(
    losses: *const cupwright_losses,
    dose_g: *const f64,
    water_g: *const f64,
    count: usize,
    beverage_g: *mut f64,
    status: *mut u8,
    refused: *mut usize,
    error: *mut cupwright_error,
) -> i32 {
    answer!(refused, error, |call| {
        let losses = retention::losses(call, given!(call, losses)?)?;
        scored!(call, count, beverage(&losses; dose_g, water_g => beverage_g, status))
    })
}

/// Where cups stand in a window: cupwright_verdict_stand() of every row. The yield must be counted as the window
/// counts it. A row that is refused has 0 for sides and NaN for distances, and so has the yield where the
/// window has none.
///
/// @param window The window of all rows.
/// @param strength_pct Strength, {Strength}.
/// @param yield_pct Extraction yields, {Yield}; looked at even where the window has none.
/// @param count How many rows.
/// @param[out] strength_side Side of the strength: enum cupwright_side.
/// @param[out] strength_above_lowest Its distance above the lowest edge.
/// @param[out] strength_below_highest Its distance below the highest edge.
/// @param[out] strength_above_centre Its distance above the centre.
/// @param[out] yield_side Side of the yield: enum cupwright_side.
/// @param[out] yield_above_lowest Its distance above the lowest edge.
/// @param[out] yield_below_highest Its distance below the highest edge.
/// @param[out] yield_above_centre Its distance above the centre.
/// @param[out] status What became of each row: enum cupwright_row.
/// @param[out] refused How many rows have no answer.
///
/// Fails for no row, but as cupwright_verdict_stand() for a window that is none, and with CUPWRIGHT_STATUS_NULL.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_columns_stand(
    window: *const cupwright_window,
    strength_pct: *const f64,
    yield_pct: *const f64,
    count: usize,
    strength_side: *mut u8,
    strength_above_lowest: *mut f64,
    strength_below_highest: *mut f64,
    strength_above_centre: *mut f64,
    yield_side: *mut u8,
    yield_above_lowest: *mut f64,
    yield_below_highest: *mut f64,
    yield_above_centre: *mut f64,
    status: *mut u8,
    refused: *mut usize,
    error: *mut cupwright_error,
) -> i32 {
    answer!(refused, error, |call| {
        let window = verdict::window(call, given!(call, window)?)?;
        let strength = places!(call, count => strength_side, strength_above_lowest,
            strength_below_highest, strength_above_centre);
        let extracted = places!(call, count => yield_side, yield_above_lowest,
            yield_below_highest, yield_above_centre);
        let standings = Standings { strength, extracted };
        let (strengths, yields) =
            (column!(call, strength_pct, count)?, column!(call, yield_pct, count)?);
        let status = place!(call, status, count)?;
        columns::stand(&window, strengths, yields, standings, status)
            .map_err(|uneven| of_one_count(call, uneven))
    })
}
