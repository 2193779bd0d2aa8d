//! Numbers with their uncertainties, as they go into budgets and decisions.

use cupwright::quantity::{
    Addition, Beverage, BrewWater, Brix, CoolingRate, Dose, FactorUncertainty, HeatCapacity,
    HeldStrength, Liquid, MassUncertainty, Measurand, Moisture, RefractiveFactor, Repeatability,
    RetentionUncertainty, SpanUncertainty, Strength, StrengthUncertainty, Temperature, Time,
    Vapour, VesselTemperature, WaterSolids, Yield, YieldUncertainty,
};
use cupwright::uncertainty::{Estimate, Standard};

use crate::advise::cupwright_cup;
use crate::call::{Call, Refused, checked};
use crate::forecast::cupwright_straying;

/// Any value with its standard uncertainty. In every struct like this one, u is the standard
/// uncertainty, 0 for a value that is not uncertain, and nu the degrees of freedom of that, never
/// 0: CUPWRIGHT_DEGREES_OF_FREEDOM_HIGHEST where u is as good as known.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_estimate {
    /// The value, in a unit of its own, {Measurand}.
    pub value: f64,
    /// Its standard uncertainty in that unit, {StandardUncertainty}.
    pub u_value: f64,
    /// Its degrees of freedom, {DegreesOfFreedom}; the highest where it is as good as known.
    pub nu_value: f64,
}

/// A strength with its standard uncertainty.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_strength_estimate {
    /// Strength, {Strength}.
    pub strength_pct: f64,
    /// Its standard uncertainty, {StrengthUncertainty}.
    pub u_strength_pct: f64,
    /// Its degrees of freedom, {DegreesOfFreedom}; the highest where it is as good as known.
    pub nu_strength: f64,
}

/// A yield with its standard uncertainty.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_yield_estimate {
    /// Extraction yield, {Yield}.
    pub yield_pct: f64,
    /// Its standard uncertainty, {YieldUncertainty}.
    pub u_yield_pct: f64,
    /// Its degrees of freedom, {DegreesOfFreedom}; the highest where it is as good as known.
    pub nu_yield: f64,
}

/// A dose with its standard uncertainty.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_dose_estimate {
    /// Dose as weighed, {Dose}.
    pub dose_g: f64,
    /// Its standard uncertainty, {MassUncertainty}.
    pub u_dose_g: f64,
    /// Its degrees of freedom, {DegreesOfFreedom}; the highest where it is as good as known.
    pub nu_dose: f64,
}

/// Brew water with its standard uncertainty.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_water_estimate {
    /// Brew water, {BrewWater}.
    pub water_g: f64,
    /// Its standard uncertainty, {MassUncertainty}.
    pub u_water_g: f64,
    /// Its degrees of freedom, {DegreesOfFreedom}; the highest where it is as good as known.
    pub nu_water: f64,
}

/// A beverage with its standard uncertainty.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_beverage_estimate {
    /// Beverage, {Beverage}.
    pub beverage_g: f64,
    /// Its standard uncertainty, {MassUncertainty}.
    pub u_beverage_g: f64,
    /// Its degrees of freedom, {DegreesOfFreedom}; the highest where it is as good as known.
    pub nu_beverage: f64,
}

/// Brew that goes into a cup with its standard uncertainty.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_portion_estimate {
    /// Brew into a cup, {Beverage}.
    pub portion_g: f64,
    /// Its standard uncertainty, {MassUncertainty}.
    pub u_portion_g: f64,
    /// Its degrees of freedom, {DegreesOfFreedom}; the highest where it is as good as known.
    pub nu_portion: f64,
}

/// Added water with its standard uncertainty.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_added_estimate {
    /// Water added, {Addition}.
    pub added_g: f64,
    /// Its standard uncertainty, {MassUncertainty}.
    pub u_added_g: f64,
    /// Its degrees of freedom, {DegreesOfFreedom}; the highest where it is as good as known.
    pub nu_added: f64,
}

/// The moisture of a dose with its standard uncertainty.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_moisture_estimate {
    /// Moisture as weighed, {Moisture}.
    pub moisture_pct: f64,
    /// Its standard uncertainty, {ShareUncertainty}.
    pub u_moisture_pct: f64,
    /// Its degrees of freedom, {DegreesOfFreedom}; the highest where it is as good as known.
    pub nu_moisture: f64,
}

/// The solids of water with their standard uncertainty.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_water_solids_estimate {
    /// Solids of the water, {WaterSolids}.
    pub water_solids_mg_per_l: f64,
    /// Its standard uncertainty, {WaterSolidsUncertainty}.
    pub u_water_solids_mg_per_l: f64,
    /// Its degrees of freedom, {DegreesOfFreedom}; the highest where it is as good as known.
    pub nu_water_solids: f64,
}

/// Vapour with its standard uncertainty.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_vapour_estimate {
    /// Vapour lost, {Vapour}.
    pub vapour_g: f64,
    /// Its standard uncertainty, {MassUncertainty}.
    pub u_vapour_g: f64,
    /// Its degrees of freedom, {DegreesOfFreedom}; the highest where it is as good as known.
    pub nu_vapour: f64,
}

/// A held strength with its standard uncertainty.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_held_strength_estimate {
    /// Strength of the liquid kept relative to the beverage, {HeldStrength}.
    pub held_strength_pct: f64,
    /// Its standard uncertainty, {ShareUncertainty}.
    pub u_held_strength_pct: f64,
    /// Its degrees of freedom, {DegreesOfFreedom}; the highest where it is as good as known.
    pub nu_held_strength: f64,
}

/// The hotter of two liquids that are mixed.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_hot_estimate {
    /// Its mass, {Liquid}.
    pub hot_g: f64,
    /// Its standard uncertainty, {MassUncertainty}.
    pub u_hot_g: f64,
    /// Its degrees of freedom, {DegreesOfFreedom}; the highest where it is as good as known.
    pub nu_hot_mass: f64,
    /// Its temperature, {Temperature}.
    pub hot_c: f64,
    /// Its standard uncertainty, {TemperatureUncertainty}.
    pub u_hot_k: f64,
    /// Its degrees of freedom, {DegreesOfFreedom}; the highest where it is as good as known.
    pub nu_hot_temperature: f64,
}

/// The colder of two liquids that are mixed.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_cold_estimate {
    /// Its mass, {Addition}.
    pub cold_g: f64,
    /// Its standard uncertainty, {MassUncertainty}.
    pub u_cold_g: f64,
    /// Its degrees of freedom, {DegreesOfFreedom}; the highest where it is as good as known.
    pub nu_cold_mass: f64,
    /// Its temperature, {Temperature}.
    pub cold_c: f64,
    /// Its standard uncertainty, {TemperatureUncertainty}.
    pub u_cold_k: f64,
    /// Its degrees of freedom, {DegreesOfFreedom}; the highest where it is as good as known.
    pub nu_cold_temperature: f64,
}

/// A reading in degrees Brix with its standard uncertainty.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_brix_estimate {
    /// Reading at 20 °C or compensated, {Brix}.
    pub brix: f64,
    /// Its standard uncertainty, {BrixUncertainty}.
    pub u_brix: f64,
    /// Its degrees of freedom, {DegreesOfFreedom}; the highest where it is as good as known.
    pub nu_brix: f64,
}

/// A coffee's refractive factor with its standard uncertainty, which all readings of it share.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_refractive_factor_estimate {
    /// The factor, {RefractiveFactor}.
    pub refractive_factor_pct_per_brix: f64,
    /// Its standard uncertainty over its value, {FactorUncertainty}.
    pub u_factor_pct: f64,
    /// Its degrees of freedom, {DegreesOfFreedom}; the highest where it is as good as known.
    pub nu_factor: f64,
}

/// One's own repeatability.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_repeatability_estimate {
    /// Standard deviation of readings of one sample by one person on one instrument, % strength,
    /// {Repeatability}.
    pub repeatability_pct: f64,
    /// Its standard uncertainty, % strength, {StrengthUncertainty}. Not used but for its range: what
    /// counts is how many degrees of freedom there are.
    pub u_repeatability_pct: f64,
    /// Its degrees of freedom, {DegreesOfFreedom}; the highest where it is as good as known.
    pub nu_repeatability: f64,
}

/// A liquid that meets a body.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_liquid_estimate {
    /// Its mass, {Liquid}.
    pub liquid_g: f64,
    /// Its standard uncertainty, {MassUncertainty}.
    pub u_liquid_g: f64,
    /// Its degrees of freedom, {DegreesOfFreedom}; the highest where it is as good as known.
    pub nu_liquid: f64,
    /// Its temperature before, {Temperature}.
    pub before_c: f64,
    /// Its standard uncertainty, {TemperatureUncertainty}.
    pub u_before_k: f64,
    /// Its degrees of freedom, {DegreesOfFreedom}; the highest where it is as good as known.
    pub nu_before: f64,
}

/// A body that a liquid meets.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_body_estimate {
    /// Heat capacity of the part that warms, {HeatCapacity}.
    pub heat_capacity_j_per_k: f64,
    /// Its standard uncertainty, {HeatCapacityUncertainty}.
    pub u_heat_capacity_j_per_k: f64,
    /// Its degrees of freedom, {DegreesOfFreedom}; the highest where it is as good as known.
    pub nu_heat_capacity: f64,
    /// Its temperature before, {VesselTemperature}.
    pub body_c: f64,
    /// Its standard uncertainty, {TemperatureUncertainty}.
    pub u_body_k: f64,
    /// Its degrees of freedom, {DegreesOfFreedom}; the highest where it is as good as known.
    pub nu_body: f64,
}

/// The temperature of a cup with its standard uncertainty.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_temperature_estimate {
    /// Temperature now, {Temperature}.
    pub water_c: f64,
    /// Its standard uncertainty, {TemperatureUncertainty}.
    pub u_water_k: f64,
    /// Its degrees of freedom, {DegreesOfFreedom}; the highest where it is as good as known.
    pub nu_water: f64,
}

/// A cooling rate with its standard uncertainty.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_cooling_estimate {
    /// Cooling rate, {CoolingRate}.
    pub cooling_per_min: f64,
    /// Its standard uncertainty, {CoolingRateUncertainty}.
    pub u_cooling_per_min: f64,
    /// Its degrees of freedom, {DegreesOfFreedom}; the highest where it is as good as known.
    pub nu_cooling: f64,
}

/// A time with its standard uncertainty.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_time_estimate {
    /// Time, {Time}.
    pub time_s: f64,
    /// Its standard uncertainty, {TimeUncertainty}.
    pub u_time_s: f64,
    /// Its degrees of freedom, {DegreesOfFreedom}; the highest where it is as good as known.
    pub nu_time: f64,
}

/// An instrument's own error, common to all its readings: its specification, its zero.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_instrument_uncertainty {
    /// Its standard uncertainty, % strength, {StrengthUncertainty}.
    pub u_instrument_pct: f64,
    /// Its degrees of freedom, {DegreesOfFreedom}; the highest where it is as good as known.
    pub nu_instrument: f64,
}

/// The refractive factor's error, common to all readings of one coffee. Keep it out of the
/// strength's own uncertainty and give it here, so that it can be dropped where two brews of one
/// coffee are compared.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_factor_uncertainty {
    /// Its standard uncertainty over its value, {FactorUncertainty}.
    pub u_factor_pct: f64,
    /// Its degrees of freedom, {DegreesOfFreedom}; the highest where it is as good as known.
    pub nu_factor: f64,
}

/// A scale's error of span, common to all that it weighs.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_span_uncertainty {
    /// Its standard uncertainty, relative, {SpanUncertainty}.
    pub u_span_pct: f64,
    /// Its degrees of freedom, {DegreesOfFreedom}; the highest where it is as good as known.
    pub nu_span: f64,
}

/// How uncertain a retention is.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_retention_uncertainty {
    /// Its standard uncertainty, {RetentionUncertainty}.
    pub u_apparent_retention_g_per_g: f64,
    /// Its degrees of freedom, {DegreesOfFreedom}; the highest where it is as good as known.
    pub nu_apparent_retention: f64,
}

/// How uncertain hold-up, paper, drips and vapour are together.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_losses_uncertainty {
    /// Their standard uncertainty, {MassUncertainty}.
    pub u_losses_g: f64,
    /// Its degrees of freedom, {DegreesOfFreedom}; the highest where it is as good as known.
    pub nu_losses: f64,
}

/// A value and its uncertainty from three fields of a record, in the order in which they are
/// checked.
macro_rules! estimated {
    ($call:ident, $record:ident: $value:ident, $u:ident, $nu:ident) => {
        Ok(Estimate {
            value: checked!($call, $record.$value)?,
            u: checked!($call, $record.$u)?,
            freedom: checked!($call, $record.$nu)?,
        })
    };
}

/// An uncertainty alone.
macro_rules! uncertain {
    ($call:ident, $record:ident: $u:ident, $nu:ident) => {
        Ok(Standard { u: checked!($call, $record.$u)?, freedom: checked!($call, $record.$nu)? })
    };
}

/// What becomes of each record in the core.
macro_rules! readers {
    ($($name:ident($record:ty) -> $core:ty = $way:ident($($field:ident),+);)+) => {$(
        pub(crate) fn $name(call: Call, record: &$record) -> Result<$core, Refused> {
            $way!(call, record: $($field),+)
        }
    )+};
}
readers! {
    any(cupwright_estimate) -> Estimate<Measurand> = estimated(value, u_value, nu_value);
    strength(cupwright_strength_estimate) -> Estimate<Strength> =
        estimated(strength_pct, u_strength_pct, nu_strength);
    extracted(cupwright_yield_estimate) -> Estimate<Yield> =
        estimated(yield_pct, u_yield_pct, nu_yield);
    dose(cupwright_dose_estimate) -> Estimate<Dose> = estimated(dose_g, u_dose_g, nu_dose);
    water(cupwright_water_estimate) -> Estimate<BrewWater> =
        estimated(water_g, u_water_g, nu_water);
    beverage(cupwright_beverage_estimate) -> Estimate<Beverage> =
        estimated(beverage_g, u_beverage_g, nu_beverage);
    portion(cupwright_portion_estimate) -> Estimate<Beverage> =
        estimated(portion_g, u_portion_g, nu_portion);
    added(cupwright_added_estimate) -> Estimate<Addition> =
        estimated(added_g, u_added_g, nu_added);
    moisture(cupwright_moisture_estimate) -> Estimate<Moisture> =
        estimated(moisture_pct, u_moisture_pct, nu_moisture);
    water_solids(cupwright_water_solids_estimate) -> Estimate<WaterSolids> =
        estimated(water_solids_mg_per_l, u_water_solids_mg_per_l, nu_water_solids);
    vapour(cupwright_vapour_estimate) -> Estimate<Vapour> =
        estimated(vapour_g, u_vapour_g, nu_vapour);
    held_strength(cupwright_held_strength_estimate) -> Estimate<HeldStrength> =
        estimated(held_strength_pct, u_held_strength_pct, nu_held_strength);
    hot(cupwright_hot_estimate) -> Estimate<Liquid> = estimated(hot_g, u_hot_g, nu_hot_mass);
    hot_temperature(cupwright_hot_estimate) -> Estimate<Temperature> =
        estimated(hot_c, u_hot_k, nu_hot_temperature);
    cold(cupwright_cold_estimate) -> Estimate<Addition> =
        estimated(cold_g, u_cold_g, nu_cold_mass);
    cold_temperature(cupwright_cold_estimate) -> Estimate<Temperature> =
        estimated(cold_c, u_cold_k, nu_cold_temperature);
    brix(cupwright_brix_estimate) -> Estimate<Brix> = estimated(brix, u_brix, nu_brix);
    refractive_factor(cupwright_refractive_factor_estimate) -> Estimate<RefractiveFactor> =
        estimated(refractive_factor_pct_per_brix, u_factor_pct, nu_factor);
    repeatability(cupwright_repeatability_estimate) -> Estimate<Repeatability> =
        estimated(repeatability_pct, u_repeatability_pct, nu_repeatability);
    liquid(cupwright_liquid_estimate) -> Estimate<Liquid> =
        estimated(liquid_g, u_liquid_g, nu_liquid);
    before(cupwright_liquid_estimate) -> Estimate<Temperature> =
        estimated(before_c, u_before_k, nu_before);
    heat_capacity(cupwright_body_estimate) -> Estimate<HeatCapacity> =
        estimated(heat_capacity_j_per_k, u_heat_capacity_j_per_k, nu_heat_capacity);
    body(cupwright_body_estimate) -> Estimate<VesselTemperature> =
        estimated(body_c, u_body_k, nu_body);
    temperature(cupwright_temperature_estimate) -> Estimate<Temperature> =
        estimated(water_c, u_water_k, nu_water);
    cooling(cupwright_cooling_estimate) -> Estimate<CoolingRate> =
        estimated(cooling_per_min, u_cooling_per_min, nu_cooling);
    time(cupwright_time_estimate) -> Estimate<Time> = estimated(time_s, u_time_s, nu_time);
    instrument(cupwright_instrument_uncertainty) -> Standard<StrengthUncertainty> =
        uncertain(u_instrument_pct, nu_instrument);
    factor(cupwright_factor_uncertainty) -> Standard<FactorUncertainty> =
        uncertain(u_factor_pct, nu_factor);
    span(cupwright_span_uncertainty) -> Standard<SpanUncertainty> =
        uncertain(u_span_pct, nu_span);
    retention(cupwright_retention_uncertainty) -> Standard<RetentionUncertainty> =
        uncertain(u_apparent_retention_g_per_g, nu_apparent_retention);
    losses(cupwright_losses_uncertainty) -> Standard<MassUncertainty> =
        uncertain(u_losses_g, nu_losses);
    weighing(cupwright_cup) -> Standard<MassUncertainty> = uncertain(u_weighing_g, nu_weighing);
    next_dose(cupwright_straying) -> Standard<MassUncertainty> =
        uncertain(u_next_dose_g, nu_next_dose);
    next_water(cupwright_straying) -> Standard<MassUncertainty> =
        uncertain(u_next_water_g, nu_next_water);
    next_yield(cupwright_straying) -> Standard<YieldUncertainty> =
        uncertain(u_next_yield_pct, nu_next_yield);
    next_retention(cupwright_straying) -> Standard<RetentionUncertainty> =
        uncertain(u_next_retention_g_per_g, nu_next_retention);
    next_losses(cupwright_straying) -> Standard<MassUncertainty> =
        uncertain(u_next_losses_g, nu_next_losses);
}
