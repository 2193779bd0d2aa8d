//! The mass balance both ways, extraction with time, and whether a yield is credible.

use cupwright::extraction::{self, Brew, Doubt, Kinetics};
use cupwright::quantity::{Measure, Quantity};

use crate::call::{Call, Refused, answer, checked, field, given};
use crate::status::cupwright_error;

/// The masses of a brew and what is known of its coffee and water.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_brew {
    /// Dose D as weighed, {Dose}.
    pub dose_g: f64,
    /// Brew water W, {BrewWater}.
    pub water_g: f64,
    /// Beverage B, {Beverage}.
    pub beverage_g: f64,
    /// Moisture h of the dose, {Moisture}.
    pub moisture_pct: f64,
    /// Solids s of the brew water, {WaterSolids}.
    pub water_solids_mg_per_l: f64,
    /// Vapour V lost, {Vapour}.
    pub vapour_g: f64,
    /// Strength φ of the liquid kept, relative to the beverage, {HeldStrength}: 0 flowed through,
    /// 100 steeped and well mixed. Yields differ by up to three points between the two.
    pub held_strength_pct: f64,
}

/// How fast one coffee, at one grind and temperature, gives up what it can. No published constants
/// hold for every grinder: they come from a few brews of one's own.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_kinetics {
    /// Yield that it levels off at, {Yield}.
    pub equilibrium_yield_pct: f64,
    /// Share that dissolves fast, {Share}; 100 makes it a one-rate law.
    pub fast_share_pct: f64,
    /// Time constant of the fast part, {TimeConstant}.
    pub fast_time_s: f64,
    /// Time constant of the slow part, {TimeConstant}.
    pub slow_time_s: f64,
}

/// How credible a yield is beside what coffee has been shown to give.
#[repr(i32)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum cupwright_credibility {
    /// Nothing speaks against it.
    Ordinary = 1,
    /// Within two points of the published soluble limit: check the inputs.
    NearLimit = 2,
    /// Inside the range of soluble limits, 28 to 32 %: an input is probably wrong.
    AtLimit = 3,
    /// Above 32 %: an input is almost certainly wrong.
    BeyondLimit = 4,
}

/// One input of a yield, and what it would have to be for the yield to be ordinary.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_doubt {
    /// The value entered, in the quantity's unit.
    pub entered: f64,
    /// The value at which the yield would fall to the upper end of what is ordinary; 0 without one.
    pub would_have_to_be: f64,
    /// The input: one of enum cupwright_quantity.
    pub quantity: i32,
    /// Whether a possible value does that: 1 or 0.
    pub has_would_have_to_be: i32,
}

/// A yield with what there is to doubt about it.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_plausibility {
    /// The yield of the inputs, {Yield}.
    pub yield_pct: f64,
    /// The inputs to doubt: strength, brew water, dose, held strength. All zero where the yield is
    /// ordinary.
    pub doubts: [cupwright_doubt; 4],
    /// How credible it is: one of enum cupwright_credibility.
    pub credibility: i32,
    /// How many doubts there are: 4, or 0 where the yield is ordinary.
    pub doubt_count: i32,
}

/// The core's brew.
//
// Out of line, where size counts, its doubles go through memory twice.
#[cfg_attr(not(any(target_os = "none", target_family = "wasm")), inline(always))]
pub(crate) fn brew_of(call: Call, brew: &cupwright_brew) -> Result<Brew, Refused> {
    Ok(Brew {
        dose: checked!(call, brew.dose_g)?,
        water: checked!(call, brew.water_g)?,
        beverage: checked!(call, brew.beverage_g)?,
        moisture: checked!(call, brew.moisture_pct)?,
        water_solids: checked!(call, brew.water_solids_mg_per_l)?,
        vapour: checked!(call, brew.vapour_g)?,
        held_strength: checked!(call, brew.held_strength_pct)?,
    })
}

/// The core's kinetics.
pub(crate) fn kinetics_of(call: Call, kinetics: &cupwright_kinetics) -> Result<Kinetics, Refused> {
    Ok(Kinetics {
        equilibrium: checked!(call, kinetics.equilibrium_yield_pct)?,
        fast_share: checked!(call, kinetics.fast_share_pct)?,
        fast: checked!(call, kinetics.fast_time_s)?,
        slow: checked!(call, kinetics.slow_time_s)?,
    })
}

/// What C is told of kinetics.
pub(crate) fn kinetics(of: &Kinetics) -> cupwright_kinetics {
    cupwright_kinetics {
        equilibrium_yield_pct: of.equilibrium.value(),
        fast_share_pct: of.fast_share.value(),
        fast_time_s: of.fast.value(),
        slow_time_s: of.slow.value(),
    }
}

fn doubt(doubt: &Doubt) -> cupwright_doubt {
    cupwright_doubt {
        entered: doubt.entered,
        would_have_to_be: doubt.would_have_to_be.unwrap_or_default(),
        quantity: doubt.quantity as i32,
        has_would_have_to_be: doubt.would_have_to_be.is_some().into(),
    }
}

/// Extraction yield of a brew from its strength, by the mass balance.
///
/// ```text
/// E = [τ(B + φQ) + s(hD − V)] / [D(1 − s − φτ)],  τ = T − s,  Q = W + hD − V − B
/// ```
///
/// The strength counts all solids, those of the water too: cupwright_reading_total_strength() makes
/// it from a reading.
///
/// @param brew The brew.
/// @param strength_pct Strength, {Strength}.
/// @param[out] yield_pct {Yield}.
///
/// Fails with CUPWRIGHT_STATUS_IMPOSSIBLE for less water than such a beverage takes or a strength
/// below that of the water itself; CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE for a yield above 100 % or
/// below zero.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_extraction_yield(
    brew: *const cupwright_brew,
    strength_pct: f64,
    yield_pct: *mut f64,
    error: *mut cupwright_error,
) -> i32 {
    answer!(yield_pct, error, |call| Ok(call
        .core(extraction::extraction_yield(
            &brew_of(call, given!(call, brew)?)?,
            checked!(call, strength_pct)?
        ))?
        .value()))
}

/// Strength of a brew from its yield: the inverse of cupwright_extraction_yield().
///
/// ```text
/// τ = [E D(1 − s) − s(hD − V)] / [B + φQ + φE D],  T = τ + s
/// ```
///
/// @param brew The brew.
/// @param yield_pct Extraction yield, {Yield}.
/// @param[out] strength_pct {Strength}.
///
/// Fails with CUPWRIGHT_STATUS_IMPOSSIBLE for less water than such a beverage takes;
/// CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE outside the range of the strength.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_extraction_strength(
    brew: *const cupwright_brew,
    yield_pct: f64,
    strength_pct: *mut f64,
    error: *mut cupwright_error,
) -> i32 {
    answer!(strength_pct, error, |call| Ok(call
        .core(extraction::strength(
            &brew_of(call, given!(call, brew)?)?,
            checked!(call, yield_pct)?
        ))?
        .value()))
}

/// Beverage that a brew must have given, from its strength and yield. The beverage in the brew is
/// not used, but must be in its range.
///
/// ```text
/// B = {[E D(1 − s − φτ) − s(hD − V)]/τ − φ(W + hD − V)} / (1 − φ)
/// ```
///
/// @param brew The brew.
/// @param strength_pct Strength, {Strength}.
/// @param yield_pct Extraction yield, {Yield}.
/// @param[out] beverage_g {Beverage}.
///
/// Fails with CUPWRIGHT_STATUS_OUT_OF_RANGE for a held strength of 100 %, since a steeped brew's
/// strength says nothing of how much was drained; CUPWRIGHT_STATUS_IMPOSSIBLE for a strength not
/// above the water's own or too little water; CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE outside the
/// range of the beverage.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_extraction_beverage(
    brew: *const cupwright_brew,
    strength_pct: f64,
    yield_pct: f64,
    beverage_g: *mut f64,
    error: *mut cupwright_error,
) -> i32 {
    answer!(beverage_g, error, |call| Ok({
        let brew = brew_of(call, given!(call, brew)?)?;
        call.wish(
            &[(Quantity::HeldStrength, field!(held_strength_pct))],
            extraction::beverage(&brew, checked!(call, strength_pct)?, checked!(call, yield_pct)?),
        )?
        .value()
    }))
}

/// Liquid kept by grounds, paper and chamber, its dissolved coffee included, L = Q + E D.
///
/// @param brew The brew.
/// @param yield_pct Extraction yield, {Yield}.
/// @param[out] retained_g {Retained}.
///
/// Fails with CUPWRIGHT_STATUS_IMPOSSIBLE for less water than such a beverage takes.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_extraction_retained_liquid(
    brew: *const cupwright_brew,
    yield_pct: f64,
    retained_g: *mut f64,
    error: *mut cupwright_error,
) -> i32 {
    answer!(retained_g, error, |call| Ok(call
        .core(extraction::retained_liquid(
            &brew_of(call, given!(call, brew)?)?,
            checked!(call, yield_pct)?
        ))?
        .value()))
}

/// The flow-through form of the yield, E = T B/D: kept liquid is plain water. The form of the
/// published brewing control chart; right for a long drip, low for a steep.
///
/// @param strength_pct Strength, {Strength}.
/// @param beverage_g Beverage, {Beverage}.
/// @param dose_g Dose as weighed, {Dose}.
/// @param[out] yield_pct {Yield}.
///
/// Fails with CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE for a yield above 100 %.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_extraction_flow_through_yield(
    strength_pct: f64,
    beverage_g: f64,
    dose_g: f64,
    yield_pct: *mut f64,
    error: *mut cupwright_error,
) -> i32 {
    answer!(yield_pct, error, |call| Ok({
        let (strength, beverage) = (checked!(call, strength_pct)?, checked!(call, beverage_g)?);
        call.core(extraction::flow_through_yield(strength, beverage, checked!(call, dose_g)?))?
            .value()
    }))
}

/// Strength from the flow-through form, T = E D/B.
///
/// @param yield_pct Extraction yield, {Yield}.
/// @param beverage_g Beverage, {Beverage}.
/// @param dose_g Dose as weighed, {Dose}.
/// @param[out] strength_pct {Strength}.
///
/// Fails with CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE outside the range of the strength.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_extraction_flow_through_strength(
    yield_pct: f64,
    beverage_g: f64,
    dose_g: f64,
    strength_pct: *mut f64,
    error: *mut cupwright_error,
) -> i32 {
    answer!(strength_pct, error, |call| Ok({
        let (extracted, beverage) = (checked!(call, yield_pct)?, checked!(call, beverage_g)?);
        call.core(extraction::flow_through_strength(extracted, beverage, checked!(call, dose_g)?))?
            .value()
    }))
}

/// The steeped form of the yield, E = (W/D) T/(1 − T): all liquid is as strong as the beverage.
/// Right for a steep that is stirred and then pressed or drained.
///
/// @param strength_pct Strength, {Strength}.
/// @param water_g Brew water, {BrewWater}.
/// @param dose_g Dose as weighed, {Dose}.
/// @param[out] yield_pct {Yield}.
///
/// Fails with CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE for a yield above 100 %.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_extraction_steeped_yield(
    strength_pct: f64,
    water_g: f64,
    dose_g: f64,
    yield_pct: *mut f64,
    error: *mut cupwright_error,
) -> i32 {
    answer!(yield_pct, error, |call| Ok({
        let (strength, water) = (checked!(call, strength_pct)?, checked!(call, water_g)?);
        call.core(extraction::steeped_yield(strength, water, checked!(call, dose_g)?))?.value()
    }))
}

/// Strength of a steep, T = E/(R + E). At CUPWRIGHT_EQUILIBRIUM_YIELD_PCT the published equilibrium
/// of a full steep (Liang, Chan & Ristenpart 2021, doi 10.1038/s41598-021-85787-1).
///
/// @param yield_pct Extraction yield, {Yield}.
/// @param water_ratio_g_per_g Brew water per dose, {WaterRatio}.
/// @param[out] strength_pct {Strength}.
///
/// Fails with CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE outside the range of the strength.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_extraction_steeped_strength(
    yield_pct: f64,
    water_ratio_g_per_g: f64,
    strength_pct: *mut f64,
    error: *mut cupwright_error,
) -> i32 {
    answer!(strength_pct, error, |call| Ok(call
        .core(extraction::steeped_strength(
            checked!(call, yield_pct)?,
            checked!(call, water_ratio_g_per_g)?
        ))?
        .value()))
}

/// Water ratio at which a steep reaches a strength, R = E(1 − T)/T.
///
/// @param yield_pct Extraction yield, {Yield}.
/// @param strength_pct Strength, {Strength}.
/// @param[out] water_ratio_g_per_g {WaterRatio}.
///
/// Fails with CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE outside the range of the ratio.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_extraction_steeped_ratio(
    yield_pct: f64,
    strength_pct: f64,
    water_ratio_g_per_g: *mut f64,
    error: *mut cupwright_error,
) -> i32 {
    answer!(water_ratio_g_per_g, error, |call| Ok(call
        .core(extraction::steeped_ratio(checked!(call, yield_pct)?, checked!(call, strength_pct)?))?
        .value()))
}

/// Yield that oven-drying the spent grounds would show for a steep, E [1 − r/(R + E)]: the kept
/// liquid dries into the grounds, so the oven reads low.
///
/// @param yield_pct Extraction yield, {Yield}.
/// @param water_ratio_g_per_g Brew water per dose, {WaterRatio}.
/// @param true_retention_g_per_g Liquid held per dose, {TrueRetention}.
/// @param[out] oven_yield_pct {Yield}.
///
/// Fails with CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE where more liquid is kept than there is.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_extraction_oven_dried_yield(
    yield_pct: f64,
    water_ratio_g_per_g: f64,
    true_retention_g_per_g: f64,
    oven_yield_pct: *mut f64,
    error: *mut cupwright_error,
) -> i32 {
    answer!(oven_yield_pct, error, |call| Ok({
        let (extracted, ratio) = (checked!(call, yield_pct)?, checked!(call, water_ratio_g_per_g)?);
        call.core(extraction::oven_dried_yield(
            extracted,
            ratio,
            checked!(call, true_retention_g_per_g)?,
        ))?
        .value()
    }))
}

/// Yield per dry coffee from yield per coffee as weighed, E/(1 − h).
///
/// @param yield_pct Extraction yield, {Yield}.
/// @param moisture_pct Moisture of the dose, {Moisture}.
/// @param[out] dry_yield_pct {Yield}.
///
/// Fails with CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE for a yield above 100 %.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_extraction_dry_basis_yield(
    yield_pct: f64,
    moisture_pct: f64,
    dry_yield_pct: *mut f64,
    error: *mut cupwright_error,
) -> i32 {
    answer!(dry_yield_pct, error, |call| Ok(call
        .core(extraction::dry_basis_yield(
            checked!(call, yield_pct)?,
            checked!(call, moisture_pct)?
        ))?
        .value()))
}

/// Yield per coffee as weighed from yield per dry coffee: the inverse of
/// cupwright_extraction_dry_basis_yield().
///
/// @param yield_pct Yield per dry coffee, {Yield}.
/// @param moisture_pct Moisture of the dose, {Moisture}.
/// @param[out] as_weighed_yield_pct {Yield}.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_extraction_as_weighed_yield(
    yield_pct: f64,
    moisture_pct: f64,
    as_weighed_yield_pct: *mut f64,
    error: *mut cupwright_error,
) -> i32 {
    answer!(as_weighed_yield_pct, error, |call| Ok(extraction::as_weighed_yield(
        checked!(call, yield_pct)?,
        checked!(call, moisture_pct)?
    )
    .value()))
}

/// Yield after a time of contact.
///
/// ```text
/// E(t) = E∞ [f(1 − e^(−t/τ1)) + (1 − f)(1 − e^(−t/τ2))]
/// ```
///
/// Valid at the grind and temperature of the kinetics, stirred, with water in plenty.
///
/// @param kinetics The coffee.
/// @param time_s Time of contact, {Time}.
/// @param[out] yield_pct {Yield}.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_extraction_yield_at_time(
    kinetics: *const cupwright_kinetics,
    time_s: f64,
    yield_pct: *mut f64,
    error: *mut cupwright_error,
) -> i32 {
    answer!(yield_pct, error, |call| Ok(extraction::yield_at_time(
        &kinetics_of(call, given!(call, kinetics)?)?,
        checked!(call, time_s)?
    )
    .value()))
}

/// Time of contact for a yield: the inverse of cupwright_extraction_yield_at_time().
///
/// @param kinetics The coffee.
/// @param yield_pct Yield wanted, {Yield}.
/// @param[out] time_s {Time}.
///
/// Fails with CUPWRIGHT_STATUS_INFEASIBLE for a yield that it does not reach within two days, the
/// longest time there is.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_extraction_time_for_yield(
    kinetics: *const cupwright_kinetics,
    yield_pct: f64,
    time_s: *mut f64,
    error: *mut cupwright_error,
) -> i32 {
    answer!(time_s, error, |call| Ok(call
        .wish(
            &[(Quantity::Yield, field!(yield_pct))],
            extraction::time_for_yield(
                &kinetics_of(call, given!(call, kinetics)?)?,
                checked!(call, yield_pct)?
            )
        )?
        .value()))
}

/// The yield of a brew, judged: a yield near or above what coffee can give is a reason to doubt an
/// input, not to praise the brew. Each doubt says what one input would have to be, all others kept,
/// for the yield to come down to 26 %, the end of what is ordinary.
///
/// @param brew The brew.
/// @param strength_pct Strength, {Strength}.
/// @param[out] plausibility The yield and the doubts.
///
/// Fails with what cupwright_extraction_yield() fails with.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_extraction_plausibility(
    brew: *const cupwright_brew,
    strength_pct: f64,
    plausibility: *mut cupwright_plausibility,
    error: *mut cupwright_error,
) -> i32 {
    answer!(plausibility, error, |call| Ok({
        let brew = brew_of(call, given!(call, brew)?)?;
        let judged = call.core(extraction::plausibility(&brew, checked!(call, strength_pct)?))?;
        cupwright_plausibility {
            yield_pct: judged.extracted.value(),
            doubts: judged.doubts.as_ref().map_or(NO_DOUBTS, |doubts| doubts.each_ref().map(doubt)),
            credibility: judged.credibility as i32,
            doubt_count: judged.doubts.map_or(0, |doubts| doubts.len() as i32),
        }
    }))
}

/// Nothing to doubt.
const NO_DOUBTS: [cupwright_doubt; 4] =
    [cupwright_doubt { entered: 0.0, would_have_to_be: 0.0, quantity: 0, has_would_have_to_be: 0 };
        4];
