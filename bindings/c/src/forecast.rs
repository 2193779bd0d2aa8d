//! What a brew will be before it is made, and how surely.

use cupwright::forecast::{self, Intended, Outlook, Straying};
use cupwright::quantity::Measure;

use crate::call::{Call, Refused, answer, checked, given};
use crate::estimate::{self, *};
use crate::retention::{self, cupwright_losses};
use crate::status::cupwright_error;
use crate::uncertainty::{budget, cupwright_budget};
use crate::verdict::{self, cupwright_window};

/// A brew as it is meant to be made, each number with how far it may stray.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_intended {
    /// Dose; how well it is weighed.
    pub dose: cupwright_dose_estimate,
    /// Brew water; how well the hand stops.
    pub water: cupwright_water_estimate,
    /// Yield to expect by the brewer's own held strength; how well it is known, and how far brews
    /// differ.
    pub r#yield: cupwright_yield_estimate,
    /// What does not reach the cup.
    pub losses: cupwright_losses,
    /// How far the retention in it may be off.
    pub retention: cupwright_retention_uncertainty,
    /// How far the other losses may be off together.
    pub other: cupwright_losses_uncertainty,
    /// Moisture of the dose, {Moisture}.
    pub moisture_pct: f64,
    /// Solids of the brew water and of water added, {WaterSolids}.
    pub water_solids_mg_per_l: f64,
    /// Strength of the liquid kept relative to the beverage, {HeldStrength}.
    pub held_strength_pct: f64,
    /// Brew that goes into a cup; without an addition it does not matter.
    pub portion: cupwright_portion_estimate,
    /// Water added to it, 0 g for none.
    pub added: cupwright_added_estimate,
}

/// How far a brew strays from what is meant: the hand, the scale, the coffee, the brewer. Each u is
/// a standard uncertainty, each nu its degrees of freedom:
/// CUPWRIGHT_DEGREES_OF_FREEDOM_HIGHEST where it is as good as known.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_straying {
    /// Of the dose, and of brew portioned into a cup, {MassUncertainty}.
    pub u_next_dose_g: f64,
    /// {DegreesOfFreedom}.
    pub nu_next_dose: f64,
    /// Of brew water, and of water added in the cup, {MassUncertainty}.
    pub u_next_water_g: f64,
    /// {DegreesOfFreedom}.
    pub nu_next_water: f64,
    /// Of the yield from brew to brew, {YieldUncertainty}.
    pub u_next_yield_pct: f64,
    /// {DegreesOfFreedom}.
    pub nu_next_yield: f64,
    /// Of the retention, {RetentionUncertainty}.
    pub u_next_retention_g_per_g: f64,
    /// {DegreesOfFreedom}.
    pub nu_next_retention: f64,
    /// Of hold-up, paper, drips and vapour together, {MassUncertainty}.
    pub u_next_losses_g: f64,
    /// {DegreesOfFreedom}.
    pub nu_next_losses: f64,
}

/// What will come out, and how surely.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_outlook {
    /// Beverage of the brew, {Beverage}.
    pub beverage_g: f64,
    /// Its standard uncertainty, {MassUncertainty}.
    pub u_beverage_g: f64,
    /// Its degrees of freedom, {DegreesOfFreedom}.
    pub nu_beverage: f64,
    /// Strength of the drink, {Strength}.
    pub strength_pct: f64,
    /// Its standard uncertainty, {StrengthUncertainty}.
    pub u_strength_pct: f64,
    /// Its degrees of freedom, {DegreesOfFreedom}.
    pub nu_strength: f64,
    /// Yield as the window counts it, by the chart where it does not say, {Yield}.
    pub counted_yield_pct: f64,
    /// Its standard uncertainty, {YieldUncertainty}.
    pub u_counted_yield_pct: f64,
    /// Its degrees of freedom, {DegreesOfFreedom}.
    pub nu_counted_yield: f64,
    /// How far the two go together, {Correlation}.
    pub correlation: f64,
    /// Probability that the strength lies inside the window, {Probability}.
    pub strength_inside_pct: f64,
    /// Probability that the strength, and the yield where the window has one and says how it counts
    /// it, lie inside it,
    /// {Probability}.
    pub inside_pct: f64,
}

/// The core's intended brew.
pub(crate) fn intended_of(call: Call, intended: &cupwright_intended) -> Result<Intended, Refused> {
    Ok(Intended {
        dose: estimate::dose(call, &intended.dose)?,
        water: estimate::water(call, &intended.water)?,
        extracted: estimate::extracted(call, &intended.r#yield)?,
        losses: retention::losses(call, &intended.losses)?,
        retention: estimate::retention(call, &intended.retention)?,
        other: estimate::losses(call, &intended.other)?,
        moisture: checked!(call, intended.moisture_pct)?,
        water_solids: checked!(call, intended.water_solids_mg_per_l)?,
        held_strength: checked!(call, intended.held_strength_pct)?,
        portion: estimate::portion(call, &intended.portion)?,
        added: estimate::added(call, &intended.added)?,
    })
}

/// The core's straying.
pub(crate) fn straying(call: Call, of: &cupwright_straying) -> Result<Straying, Refused> {
    Ok(Straying {
        dose: estimate::next_dose(call, of)?,
        water: estimate::next_water(call, of)?,
        extracted: estimate::next_yield(call, of)?,
        retention: estimate::next_retention(call, of)?,
        other: estimate::next_losses(call, of)?,
    })
}

pub(crate) const NO_OUTLOOK: cupwright_outlook = cupwright_outlook {
    beverage_g: 0.0,
    u_beverage_g: 0.0,
    nu_beverage: 0.0,
    strength_pct: 0.0,
    u_strength_pct: 0.0,
    nu_strength: 0.0,
    counted_yield_pct: 0.0,
    u_counted_yield_pct: 0.0,
    nu_counted_yield: 0.0,
    correlation: 0.0,
    strength_inside_pct: 0.0,
    inside_pct: 0.0,
};

/// What C is told of an outlook.
pub(crate) fn outlook(outlook: &Outlook) -> cupwright_outlook {
    cupwright_outlook {
        beverage_g: outlook.beverage.value.value(),
        u_beverage_g: outlook.beverage.u.value(),
        nu_beverage: outlook.beverage.freedom.value(),
        strength_pct: outlook.strength.value.value(),
        u_strength_pct: outlook.strength.u.value(),
        nu_strength: outlook.strength.freedom.value(),
        counted_yield_pct: outlook.counted.value.value(),
        u_counted_yield_pct: outlook.counted.u.value(),
        nu_counted_yield: outlook.counted.freedom.value(),
        correlation: outlook.correlation.value(),
        strength_inside_pct: outlook.strength_inside.value(),
        inside_pct: outlook.inside.value(),
    }
}

/// Budget of the strength that a drink will have.
///
/// ```text
/// B = W − rD − losses
/// N = E D(1 − s) − s(hD − V)     M = B(1 − φ) + φ(W + hD − V + ED)
/// T' = [(N/M + s) p + s A]/(p + A)
/// ```
///
/// Terms: dose, brew water, yield, retention, other losses, portion p, addition A.
///
/// @param intended The brew.
/// @param[out] budget The strength and its budget, in %.
///
/// Fails with CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE where nothing is left for the cup, or for a
/// strength or an uncertainty past its range.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_forecast_strength(
    intended: *const cupwright_intended,
    budget: *mut cupwright_budget,
    error: *mut cupwright_error,
) -> i32 {
    answer!(budget, error, |call| Ok({
        let intended = intended_of(call, given!(call, intended)?)?;
        self::budget(&call.core(forecast::strength(&intended))?)
    }))
}

/// Budget of the yield as the control chart will count it, C = T B/D. Terms and symbols as in
/// cupwright_forecast_strength().
///
/// @param intended The brew.
/// @param[out] budget The yield and its budget, in %.
///
/// Fails with what cupwright_forecast_strength() fails with, and
/// CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE for a yield above 100 %.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_forecast_counted_yield(
    intended: *const cupwright_intended,
    budget: *mut cupwright_budget,
    error: *mut cupwright_error,
) -> i32 {
    answer!(budget, error, |call| Ok({
        let intended = intended_of(call, given!(call, intended)?)?;
        self::budget(&call.core(forecast::counted_yield(&intended))?)
    }))
}

/// What a brew will be, and the chance that it lies in a window.
///
/// @param intended The brew.
/// @param window The window.
/// @param[out] outlook What will come out.
///
/// Fails with what cupwright_forecast_counted_yield() fails with, and CUPWRIGHT_STATUS_EMPTY_BAND
/// for a window whose lowest edge is not below its highest.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_forecast_outlook(
    intended: *const cupwright_intended,
    window: *const cupwright_window,
    outlook: *mut cupwright_outlook,
    error: *mut cupwright_error,
) -> i32 {
    answer!(outlook, error, |call| Ok({
        let intended = intended_of(call, given!(call, intended)?)?;
        let window = verdict::window(call, given!(call, window)?)?;
        self::outlook(&call.core(forecast::outlook(&intended, &window))?)
    }))
}
