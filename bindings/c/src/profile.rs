//! What was learned of one brewer, coffee, cup and instrument: kept from fits, kept as bytes, and
//! asked.

use cupwright::profile::{PROFILE_BYTES, Profile};
use cupwright::quantity::Measure;
use cupwright::uncertainty::{Estimate, Uncertain};

use crate::advise::{self, cupwright_means};
use crate::calibrate::*;
use crate::call::{Call, Field, Refused, answer, checked, field, given, opened, optional};
use crate::status::cupwright_error;
use crate::uncertainty::{cupwright_plateau, cupwright_rates, plateau, rates};

/// Length of a profile in bytes.
pub const CUPWRIGHT_PROFILE_BYTES: usize = 368;

const _: () = assert!(CUPWRIGHT_PROFILE_BYTES == PROFILE_BYTES);

/// A value as a fit told it.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct cupwright_learned {
    /// The value, in the unit of the profile's field.
    pub value: f64,
    /// Its standard uncertainty as the fit told it, in the same unit where the field says no other.
    pub u: f64,
    /// The degrees of freedom of that, {DegreesOfFreedom}.
    pub degrees_of_freedom: f64,
}

/// What was learned of one brewer, coffee, cup and instrument. Flags say what there is: 0 for no,
/// anything else for yes. What is not there comes back as zeros.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct cupwright_profile {
    /// Apparent retention of the brewer's grounds, {ApparentRetention}.
    pub apparent_retention_g_per_g: cupwright_learned,
    /// Hold-up of the brewer, as the same line has it, {FittedHoldUp}.
    pub fitted_hold_up_g: cupwright_learned,
    /// Heat capacity of the brewer, {HeatCapacity}.
    pub heat_capacity_j_per_k: cupwright_learned,
    /// Cooling rate of the brewer while it steeps, {CoolingRate}.
    pub cooling_per_min: cupwright_learned,
    /// Yield that the coffee levels off at, {Yield}.
    pub equilibrium_yield_pct: cupwright_learned,
    /// Share of it that dissolves fast, {Share}.
    pub fast_share_pct: cupwright_learned,
    /// Time constant of the fast share, {TimeConstant}; u is that of its logarithm.
    pub fast_time_s: cupwright_learned,
    /// Time constant of the rest, {TimeConstant}; u is that of its logarithm.
    pub slow_time_s: cupwright_learned,
    /// Refractive factor of the coffee, {RefractiveFactor}; u is over its value, in %.
    pub refractive_factor_pct_per_brix: cupwright_learned,
    /// Heat capacity of the cup, {HeatCapacity}.
    pub cup_j_per_k: cupwright_learned,
    /// Cooling rate of the full cup, {CoolingRate}.
    pub cup_cooling_per_min: cupwright_learned,
    /// Repeatability of one's own readings on the instrument, {Repeatability}.
    pub repeatability_pct: cupwright_learned,
    /// Correlation of retention and hold-up, {Correlation}.
    pub retention_correlation: f64,
    /// Scatter of a brew about the line of the two, or about the retention alone, {MassUncertainty}.
    pub retention_scatter_g: f64,
    /// Correlation of the plateau and the fast share, {Correlation}.
    pub correlation_equilibrium_share: f64,
    /// Correlation of the plateau and the logarithm of the fast time, {Correlation}.
    pub correlation_equilibrium_fast: f64,
    /// Correlation of the plateau and the logarithm of the slow time, {Correlation}.
    pub correlation_equilibrium_slow: f64,
    /// Correlation of the fast share and the logarithm of the fast time, {Correlation}.
    pub correlation_share_fast: f64,
    /// Correlation of the fast share and the logarithm of the slow time, {Correlation}.
    pub correlation_share_slow: f64,
    /// Correlation of the two logarithms, {Correlation}.
    pub correlation_fast_slow: f64,
    /// Whether there is a retention.
    pub has_apparent_retention: i32,
    /// Whether there is a hold-up.
    pub has_fitted_hold_up: i32,
    /// Whether there is a heat capacity of the brewer.
    pub has_heat_capacity: i32,
    /// Whether there is a cooling rate of the brewer.
    pub has_cooling: i32,
    /// Whether there is a yield.
    pub has_equilibrium_yield: i32,
    /// Whether there is a fast share.
    pub has_fast_share: i32,
    /// Whether there is a time constant of the fast share.
    pub has_fast_time: i32,
    /// Whether there is one of the rest.
    pub has_slow_time: i32,
    /// Whether there is a refractive factor.
    pub has_refractive_factor: i32,
    /// Whether there is a heat capacity of the cup.
    pub has_cup: i32,
    /// Whether there is a cooling rate of the cup.
    pub has_cup_cooling: i32,
    /// Whether there is a repeatability.
    pub has_repeatability: i32,
    /// Whether there is a correlation of retention and hold-up.
    pub has_retention_correlation: i32,
    /// Whether there is a scatter.
    pub has_retention_scatter: i32,
    /// Whether there is one of the plateau and the fast share.
    pub has_correlation_equilibrium_share: i32,
    /// Whether there is one of the plateau and the fast time.
    pub has_correlation_equilibrium_fast: i32,
    /// Whether there is one of the plateau and the slow time.
    pub has_correlation_equilibrium_slow: i32,
    /// Whether there is one of the fast share and its time.
    pub has_correlation_share_fast: i32,
    /// Whether there is one of the fast share and the slow time.
    pub has_correlation_share_slow: i32,
    /// Whether there is one of the two times.
    pub has_correlation_fast_slow: i32,
}

/// A part of a profile, by its name.
macro_rules! part {
    ($field:ident) => {
        (stringify!($field), field!($field))
    };
}

/// The core's estimate, where there is one.
fn estimate_of<M: Uncertain>(
    call: Call,
    has: i32,
    learned: &cupwright_learned,
    field: Field,
) -> Result<Option<Estimate<M>>, Refused> {
    if has == 0 {
        return Ok(None);
    }
    Ok(Some(Estimate {
        value: call.check(learned.value, field)?,
        u: call.check(learned.u, field)?,
        freedom: call.check(learned.degrees_of_freedom, field)?,
    }))
}

/// The core's profile.
fn profile_of(call: Call, profile: &cupwright_profile) -> Result<Profile, Refused> {
    macro_rules! learned {
        ($flag:ident, $field:ident) => {
            estimate_of(call, profile.$flag, &profile.$field, field!($field))?
        };
    }
    macro_rules! one {
        ($flag:ident, $field:ident) => {
            optional!(call, profile.$flag, $field)?
        };
    }
    Ok(Profile {
        retention: learned!(has_apparent_retention, apparent_retention_g_per_g),
        hold_up: learned!(has_fitted_hold_up, fitted_hold_up_g),
        heat_capacity: learned!(has_heat_capacity, heat_capacity_j_per_k),
        cooling: learned!(has_cooling, cooling_per_min),
        equilibrium: learned!(has_equilibrium_yield, equilibrium_yield_pct),
        fast_share: learned!(has_fast_share, fast_share_pct),
        fast: learned!(has_fast_time, fast_time_s),
        slow: learned!(has_slow_time, slow_time_s),
        refractive_factor: learned!(has_refractive_factor, refractive_factor_pct_per_brix),
        cup: learned!(has_cup, cup_j_per_k),
        cup_cooling: learned!(has_cup_cooling, cup_cooling_per_min),
        repeatability: learned!(has_repeatability, repeatability_pct),
        retention_correlation: one!(has_retention_correlation, retention_correlation),
        retention_scatter: one!(has_retention_scatter, retention_scatter_g),
        equilibrium_and_share: one!(
            has_correlation_equilibrium_share,
            correlation_equilibrium_share
        ),
        equilibrium_and_fast: one!(has_correlation_equilibrium_fast, correlation_equilibrium_fast),
        equilibrium_and_slow: one!(has_correlation_equilibrium_slow, correlation_equilibrium_slow),
        share_and_fast: one!(has_correlation_share_fast, correlation_share_fast),
        share_and_slow: one!(has_correlation_share_slow, correlation_share_slow),
        fast_and_slow: one!(has_correlation_fast_slow, correlation_fast_slow),
    })
}

fn learned<M: Uncertain>(estimate: Option<Estimate<M>>) -> cupwright_learned {
    const NONE: cupwright_learned =
        cupwright_learned { value: 0.0, u: 0.0, degrees_of_freedom: 0.0 };
    estimate.map_or(NONE, |estimate| cupwright_learned {
        value: estimate.value.value(),
        u: estimate.u.value(),
        degrees_of_freedom: estimate.freedom.value(),
    })
}

fn one<M: Measure>(number: Option<M>) -> f64 {
    number.map_or(0.0, Measure::value)
}

fn profile(of: &Profile) -> cupwright_profile {
    cupwright_profile {
        apparent_retention_g_per_g: learned(of.retention),
        fitted_hold_up_g: learned(of.hold_up),
        heat_capacity_j_per_k: learned(of.heat_capacity),
        cooling_per_min: learned(of.cooling),
        equilibrium_yield_pct: learned(of.equilibrium),
        fast_share_pct: learned(of.fast_share),
        fast_time_s: learned(of.fast),
        slow_time_s: learned(of.slow),
        refractive_factor_pct_per_brix: learned(of.refractive_factor),
        cup_j_per_k: learned(of.cup),
        cup_cooling_per_min: learned(of.cup_cooling),
        repeatability_pct: learned(of.repeatability),
        retention_correlation: one(of.retention_correlation),
        retention_scatter_g: one(of.retention_scatter),
        correlation_equilibrium_share: one(of.equilibrium_and_share),
        correlation_equilibrium_fast: one(of.equilibrium_and_fast),
        correlation_equilibrium_slow: one(of.equilibrium_and_slow),
        correlation_share_fast: one(of.share_and_fast),
        correlation_share_slow: one(of.share_and_slow),
        correlation_fast_slow: one(of.fast_and_slow),
        has_apparent_retention: of.retention.is_some().into(),
        has_fitted_hold_up: of.hold_up.is_some().into(),
        has_heat_capacity: of.heat_capacity.is_some().into(),
        has_cooling: of.cooling.is_some().into(),
        has_equilibrium_yield: of.equilibrium.is_some().into(),
        has_fast_share: of.fast_share.is_some().into(),
        has_fast_time: of.fast.is_some().into(),
        has_slow_time: of.slow.is_some().into(),
        has_refractive_factor: of.refractive_factor.is_some().into(),
        has_cup: of.cup.is_some().into(),
        has_cup_cooling: of.cup_cooling.is_some().into(),
        has_repeatability: of.repeatability.is_some().into(),
        has_retention_correlation: of.retention_correlation.is_some().into(),
        has_retention_scatter: of.retention_scatter.is_some().into(),
        has_correlation_equilibrium_share: of.equilibrium_and_share.is_some().into(),
        has_correlation_equilibrium_fast: of.equilibrium_and_fast.is_some().into(),
        has_correlation_equilibrium_slow: of.equilibrium_and_slow.is_some().into(),
        has_correlation_share_fast: of.share_and_fast.is_some().into(),
        has_correlation_share_slow: of.share_and_slow.is_some().into(),
        has_correlation_fast_slow: of.fast_and_slow.is_some().into(),
    }
}

/// A profile as bytes, the same on every processor: little endian, with a version and a check value.
///
/// @param profile The profile; its numbers must lie in their ranges.
/// @param[out] bytes Room for CUPWRIGHT_PROFILE_BYTES bytes.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_profile_to_bytes(
    profile: *const cupwright_profile,
    bytes: *mut u8,
    error: *mut cupwright_error,
) -> i32 {
    let bytes: *mut [u8; CUPWRIGHT_PROFILE_BYTES] = bytes.cast();
    answer!(bytes, error, |call| Ok(profile_of(call, given!(call, profile)?)?.to_bytes()))
}

/// A profile from its bytes. No damaged one is ever read: a single wrong byte is always found.
///
/// @param bytes The bytes.
/// @param count How many: CUPWRIGHT_PROFILE_BYTES of this version.
/// @param[out] profile The profile.
///
/// Fails with CUPWRIGHT_STATUS_UNREADABLE, the error's `limit` says why;
/// CUPWRIGHT_STATUS_OUT_OF_RANGE for a number that its field does not accept.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_profile_from_bytes(
    bytes: *const u8,
    count: usize,
    profile: *mut cupwright_profile,
    error: *mut cupwright_error,
) -> i32 {
    answer!(profile, error, |call| {
        Ok(self::profile(&opened!(call, bytes, count, Profile::from_bytes)?))
    })
}

/// The parts that an answer may miss.
const PARTS: &[(&str, Field)] = &[
    part!(apparent_retention_g_per_g),
    part!(retention_correlation),
    part!(retention_scatter_g),
    part!(equilibrium_yield_pct),
    part!(fast_share_pct),
    part!(fast_time_s),
    part!(slow_time_s),
    part!(correlation_equilibrium_share),
    part!(correlation_equilibrium_fast),
    part!(correlation_equilibrium_slow),
    part!(correlation_share_fast),
    part!(correlation_share_slow),
    part!(correlation_fast_slow),
];

/// A profile with something more in it.
fn with(
    call: Call,
    before: &cupwright_profile,
    keep: impl FnOnce(&mut Profile),
) -> Result<cupwright_profile, Refused> {
    let mut kept = profile_of(call, before)?;
    keep(&mut kept);
    Ok(profile(&kept))
}

/// Keeps what brews of several doses told of a brewer: retention, hold-up, how far the two go together,
/// and the scatter about them.
///
/// @param profile The profile before.
/// @param line The line, as cupwright_calibrate_retention_line() tells it.
/// @param[out] kept The profile with it; it may be the one before.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_profile_keep_retention_line(
    profile: *const cupwright_profile,
    line: *const cupwright_retention_line,
    kept: *mut cupwright_profile,
    error: *mut cupwright_error,
) -> i32 {
    answer!(kept, error, |call| {
        let told = line_told(call, given!(call, line)?)?;
        with(call, given!(call, profile)?, |kept| kept.keep_retention_line(&told))
    })
}

/// Keeps a retention that has the hold-up in it. A hold-up kept apart before is dropped.
///
/// @param profile The profile before.
/// @param fitted The retention, as cupwright_calibrate_retention() tells it.
/// @param[out] kept The profile with it; it may be the one before.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_profile_keep_retention(
    profile: *const cupwright_profile,
    fitted: *const cupwright_fitted_retention,
    kept: *mut cupwright_profile,
    error: *mut cupwright_error,
) -> i32 {
    answer!(kept, error, |call| {
        let told = retention_told(call, given!(call, fitted)?)?;
        with(call, given!(call, profile)?, |kept| kept.keep_retention(&told))
    })
}

/// Keeps what yields told of a coffee by one rate. All of it is then fast: a fast share and a slow time
/// kept before are dropped.
///
/// @param profile The profile before.
/// @param law The law, as cupwright_calibrate_one_rate() tells it.
/// @param[out] kept The profile with it; it may be the one before.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_profile_keep_one_rate(
    profile: *const cupwright_profile,
    law: *const cupwright_one_rate,
    kept: *mut cupwright_profile,
    error: *mut cupwright_error,
) -> i32 {
    answer!(kept, error, |call| {
        let told = one_rate_told(call, given!(call, law)?)?;
        with(call, given!(call, profile)?, |kept| kept.keep_one_rate(&told))
    })
}

/// Keeps what yields told of a coffee by two rates.
///
/// @param profile The profile before.
/// @param law The law, as cupwright_calibrate_two_rates() tells it.
/// @param[out] kept The profile with it; it may be the one before.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_profile_keep_two_rates(
    profile: *const cupwright_profile,
    law: *const cupwright_two_rates,
    kept: *mut cupwright_profile,
    error: *mut cupwright_error,
) -> i32 {
    answer!(kept, error, |call| {
        let told = two_rates_told(call, given!(call, law)?)?;
        with(call, given!(call, profile)?, |kept| kept.keep_two_rates(&told))
    })
}

/// Keeps the heat capacity of a brewer.
///
/// @param profile The profile before.
/// @param fitted The heat capacity, as cupwright_calibrate_heat_capacity() tells it.
/// @param[out] kept The profile with it; it may be the one before.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_profile_keep_heat_capacity(
    profile: *const cupwright_profile,
    fitted: *const cupwright_fitted_heat_capacity,
    kept: *mut cupwright_profile,
    error: *mut cupwright_error,
) -> i32 {
    answer!(kept, error, |call| {
        let told = heat_capacity_told(call, given!(call, fitted)?)?;
        with(call, given!(call, profile)?, |kept| kept.keep_heat_capacity(&told))
    })
}

/// Keeps how fast a full cup cools.
///
/// @param profile The profile before.
/// @param cup How it cools, as cupwright_calibrate_cooling() tells it.
/// @param[out] kept The profile with it; it may be the one before.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_profile_keep_cup_cooling(
    profile: *const cupwright_profile,
    cup: *const cupwright_cooling,
    kept: *mut cupwright_profile,
    error: *mut cupwright_error,
) -> i32 {
    answer!(kept, error, |call| {
        let told = cooling_told(call, given!(call, cup)?)?;
        with(call, given!(call, profile)?, |kept| kept.keep_cup_cooling(&told))
    })
}

/// Keeps the refractive factor of a coffee.
///
/// @param profile The profile before.
/// @param fitted The factor, as cupwright_calibrate_refractive_factor() tells it.
/// @param[out] kept The profile with it; it may be the one before.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_profile_keep_refractive_factor(
    profile: *const cupwright_profile,
    fitted: *const cupwright_fitted_refractive_factor,
    kept: *mut cupwright_profile,
    error: *mut cupwright_error,
) -> i32 {
    answer!(kept, error, |call| {
        let told = refractive_factor_told(call, given!(call, fitted)?)?;
        with(call, given!(call, profile)?, |kept| kept.keep_refractive_factor(&told))
    })
}

/// Keeps the repeatability of one's own readings.
///
/// @param profile The profile before.
/// @param fitted The repeatability, as cupwright_calibrate_repeatability() tells it.
/// @param[out] kept The profile with it; it may be the one before.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_profile_keep_repeatability(
    profile: *const cupwright_profile,
    fitted: *const cupwright_fitted_repeatability,
    kept: *mut cupwright_profile,
    error: *mut cupwright_error,
) -> i32 {
    answer!(kept, error, |call| {
        let told = repeatability_told(call, given!(call, fitted)?)?;
        with(call, given!(call, profile)?, |kept| kept.keep_repeatability(&told))
    })
}

/// Beverage that the next brew gives by what was kept: what cupwright_calibrate_expected_beverage()
/// tells of the same line, to the last bit. Without a hold-up the retention has it in it: then B = W −
/// V − r D, right for doses like those of the brews.
///
/// @param profile The profile.
/// @param dose_g Dose, {Dose}.
/// @param water_g Brew water, {BrewWater}.
/// @param vapour_g Vapour that the brew will lose, {Vapour}.
/// @param[out] expected The beverage.
///
/// Fails with CUPWRIGHT_STATUS_NOT_KEPT where a part is missing, the error's `field` names it;
/// CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE where nothing is left for the cup.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_profile_expected_beverage(
    profile: *const cupwright_profile,
    dose_g: f64,
    water_g: f64,
    vapour_g: f64,
    expected: *mut cupwright_expected,
    error: *mut cupwright_error,
) -> i32 {
    answer!(expected, error, |call| Ok({
        let profile = profile_of(call, given!(call, profile)?)?;
        let (dose, water) = (checked!(call, dose_g)?, checked!(call, water_g)?);
        let next = profile.expected_beverage(dose, water, checked!(call, vapour_g)?);
        self::expected(&call.kept(PARTS, next)?)
    }))
}

/// How fast the coffee extracts, and how well that is known, by what was kept.
///
/// @param profile The profile.
/// @param[out] rates The rates.
///
/// Fails with CUPWRIGHT_STATUS_NOT_KEPT where a part is missing, the error's `field` names it.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_profile_rates(
    profile: *const cupwright_profile,
    rates: *mut cupwright_rates,
    error: *mut cupwright_error,
) -> i32 {
    answer!(rates, error, |call| Ok({
        let profile = profile_of(call, given!(call, profile)?)?;
        self::rates(&call.kept(PARTS, profile.rates())?)
    }))
}

/// How well the plateau of those rates is known.
///
/// @param profile The profile.
/// @param[out] plateau The plateau.
///
/// Fails with CUPWRIGHT_STATUS_NOT_KEPT where a part is missing, the error's `field` names it.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_profile_plateau(
    profile: *const cupwright_profile,
    plateau: *mut cupwright_plateau,
    error: *mut cupwright_error,
) -> i32 {
    answer!(plateau, error, |call| Ok({
        let profile = profile_of(call, given!(call, profile)?)?;
        self::plateau(&call.kept(PARTS, profile.plateau())?)
    }))
}

/// What advice takes, with all that is known of coffee and brewer: rates where a plateau or a time was
/// kept, and what the brewer keeps where a retention was. No chamber and no milk: set them where there
/// are.
///
/// @param profile The profile.
/// @param water_c Temperature of the water, {Temperature}.
/// @param[out] means What can be done.
///
/// Fails with CUPWRIGHT_STATUS_NOT_KEPT where a part of what was kept is missing, the error's `field`
/// names it; CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE for a hold-up below zero, which no brewer has.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_profile_means(
    profile: *const cupwright_profile,
    water_c: f64,
    means: *mut cupwright_means,
    error: *mut cupwright_error,
) -> i32 {
    answer!(means, error, |call| Ok({
        let profile = profile_of(call, given!(call, profile)?)?;
        advise::means(&call.kept(PARTS, profile.means(checked!(call, water_c)?))?)
    }))
}
