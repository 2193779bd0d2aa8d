//! What was learned of one brewer, coffee, cup and instrument, kept as bytes.

use cupwright::profile::{PROFILE_BYTES, Profile};
use cupwright::quantity::{Correlation, Measure};
use cupwright::uncertainty::{Estimate, Uncertain};

use crate::call::{Call, Field, Refused, answer, field, given, opened, optional};
use crate::status::cupwright_error;

/// Length of a profile in bytes.
pub const CUPWRIGHT_PROFILE_BYTES: usize = 312;

const _: () = assert!(CUPWRIGHT_PROFILE_BYTES == PROFILE_BYTES);

/// A value as a fit told it.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct cupwright_learned {
    /// The value, in the unit of the profile's field.
    pub value: f64,
    /// Its standard uncertainty as the fit told it.
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
    /// Whether there is a correlation.
    pub has_retention_correlation: i32,
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
        retention_correlation: optional!(
            call,
            profile.has_retention_correlation,
            retention_correlation
        )?,
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
        retention_correlation: of.retention_correlation.map_or(0.0, Correlation::ratio),
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
