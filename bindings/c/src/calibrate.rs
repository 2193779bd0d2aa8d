//! What one's own brews tell: the numbers for which no published value can stand in.

use cupwright::Error;
use cupwright::calibrate::{
    self, Cooling, Drained, Dried, Expected, Fitted, MOST_MEASUREMENTS, OneRate, Quality, Repeat,
    RetentionLine, Settled, Steeped, Thermometer, Timed, TwoRates,
};
use cupwright::quantity::{
    ApparentRetention, HeatCapacity, Measurand, Measure, Measurements, RefractiveFactor,
    Repeatability, StandardUncertainty,
};
use cupwright::uncertainty::Estimate;

use crate::call::{Call, Field, Refused, answer, checked, counted, each, field, given};
use crate::heat::{cupwright_surroundings, surroundings_of};
use crate::status::cupwright_error;

/// A brew as a scale saw it.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_drained {
    /// Dose as weighed, {Dose}.
    pub dose_g: f64,
    /// Brew water, {BrewWater}.
    pub water_g: f64,
    /// Beverage, {Beverage}.
    pub beverage_g: f64,
    /// Vapour lost, {Vapour}; 0 where unknown, it then counts as kept.
    pub vapour_g: f64,
}

/// Water poured into a brewer and left until both are equally warm.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_settled {
    /// Water, {Liquid}.
    pub liquid_g: f64,
    /// Its temperature before, {Temperature}.
    pub before_c: f64,
    /// The temperature at which both settle, {Temperature}.
    pub settled_c: f64,
    /// Temperature of the brewer before, {VesselTemperature}.
    pub vessel_c: f64,
}

/// A long steep, stirred and drained.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_steeped {
    /// Strength, {Strength}.
    pub strength_pct: f64,
    /// Brew water, {BrewWater}.
    pub water_g: f64,
    /// Dose as weighed, {Dose}.
    pub dose_g: f64,
}

/// A yield after a time of contact.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_timed {
    /// Time of contact, {Time}.
    pub contact_s: f64,
    /// Yield by then, {Yield}.
    pub yield_pct: f64,
}

/// A thermometer in a cup, read.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_thermometer {
    /// When, from any beginning, {Time}.
    pub time_s: f64,
    /// What it shows, {Temperature}.
    pub water_c: f64,
}

/// A sample that was read, and then dried in an oven.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_dried {
    /// The reading at 20 °C or compensated, {Brix}.
    pub brix: f64,
    /// Strength by the oven: dry residue over the sample's mass, {Strength}.
    pub strength_pct: f64,
}

/// One reading of one cup.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_repeat {
    /// What was read, {Strength}.
    pub strength_pct: f64,
    /// Which cup, {CupNumber}.
    pub cup: i32,
}

/// The measurement that stands out most from a fit.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_odd {
    /// Its externally studentised residual: its distance from what the fit to all the others
    /// expects, in standard deviations of that distance.
    pub studentised: f64,
    /// Chance that the oddest of so many good measurements stands out as far or farther, 0 to 1.
    pub chance: f64,
    /// Which one, counted from 0.
    pub at: i32,
    /// Whether that chance is below CUPWRIGHT_SUSPICIOUS_CHANCE, so that a reason is worth looking
    /// for before leaving it out: 1 or 0.
    pub is_suspicious: i32,
}

/// How well a fit describes what was measured.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_quality {
    /// Degrees of freedom: measurements less parameters. Of every uncertainty that the fit tells.
    pub degrees_of_freedom: f64,
    /// Residual standard deviation, in the unit of what was fitted.
    pub s: f64,
    /// Residuals, measured less fitted, in the order given, as many as there are measurements; 0
    /// behind them.
    pub residuals: [f64; 30],
    /// Leverages, in the order given, as many as there are measurements; 0 behind them. How much of
    /// a measurement the fit takes from it alone, 0 to 1. They add up to the number of parameters.
    pub leverages: [f64; 30],
    /// The oddest measurement; all zero with fewer than two degrees of freedom, or without any
    /// scatter.
    pub odd: cupwright_odd,
    /// How many, {Measurements}.
    pub measurements: i32,
    /// Whether one is odd: 1 or 0.
    pub has_odd: i32,
}

/// What a brewer keeps, as a line in the dose.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_retention_line {
    /// Apparent retention of the grounds, {ApparentRetention}.
    pub apparent_retention_g_per_g: f64,
    /// Its standard uncertainty, {RetentionUncertainty}.
    pub u_retention_g_per_g: f64,
    /// What is kept whatever the dose: the chamber's hold-up, with an unrinsed paper's uptake and
    /// drips, {FittedHoldUp}.
    pub fitted_hold_up_g: f64,
    /// Its standard uncertainty, {MassUncertainty}.
    pub u_hold_up_g: f64,
    /// Covariance of the two, g²/g: negative, since a line that is steeper starts lower.
    pub covariance_g2_per_g: f64,
    /// How far the line can be trusted; its scatter is in g.
    pub quality: cupwright_quality,
}

/// A beverage that a line expects.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_expected {
    /// What the next brew gives, {Beverage}.
    pub beverage_g: f64,
    /// Its standard uncertainty, {MassUncertainty}.
    pub u_beverage_g: f64,
    /// Its degrees of freedom, {DegreesOfFreedom}.
    pub degrees_of_freedom: f64,
    /// Standard uncertainty of what many such brews give on average, {MassUncertainty}.
    pub u_mean_g: f64,
}

/// A retention, as brews tell it.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_fitted_retention {
    /// Apparent retention, {ApparentRetention}.
    pub apparent_retention_g_per_g: f64,
    /// Its standard uncertainty, {RetentionUncertainty}.
    pub u_retention_g_per_g: f64,
    /// How far it can be trusted; its scatter is in g.
    pub quality: cupwright_quality,
}

/// A heat capacity, as pours tell it.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_fitted_heat_capacity {
    /// Heat capacity, {HeatCapacity}.
    pub heat_capacity_j_per_k: f64,
    /// Its standard uncertainty, {HeatCapacityUncertainty}.
    pub u_heat_capacity_j_per_k: f64,
    /// How far it can be trusted; its scatter is in J.
    pub quality: cupwright_quality,
}

/// A yield that long steeps level off at.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_fitted_yield {
    /// Yield, {Yield}.
    pub yield_pct: f64,
    /// Its standard uncertainty, {YieldUncertainty}.
    pub u_yield_pct: f64,
    /// How far it can be trusted; its scatter is in points of yield.
    pub quality: cupwright_quality,
}

/// A refractive factor, as dried samples tell it.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_fitted_refractive_factor {
    /// Strength per degree Brix, {RefractiveFactor}.
    pub refractive_factor_pct_per_brix: f64,
    /// Its standard uncertainty over its value, {FactorUncertainty}.
    pub u_factor_pct: f64,
    /// How far it can be trusted; its scatter is in % strength.
    pub quality: cupwright_quality,
}

/// One's own repeatability, as cups read several times tell it.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_fitted_repeatability {
    /// Standard deviation of readings of one sample, % strength, {Repeatability}.
    pub repeatability_pct: f64,
    /// Its standard uncertainty, % strength, {StrengthUncertainty}.
    pub u_repeatability_pct: f64,
    /// How far it can be trusted; its scatter is in % strength.
    pub quality: cupwright_quality,
}

/// A one-rate law of extraction.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_one_rate {
    /// Yield that it levels off at, {Yield}.
    pub equilibrium_yield_pct: f64,
    /// Its standard uncertainty, {YieldUncertainty}.
    pub u_equilibrium_yield_pct: f64,
    /// Time constant, {TimeConstant}.
    pub time_constant_s: f64,
    /// Standard uncertainty of its logarithm, {TimeConstantUncertainty}.
    pub u_ln_time_constant: f64,
    /// Covariance of the yield and that logarithm, points of yield.
    pub covariance_pct: f64,
    /// How far the curve can be trusted; its scatter is in points of yield.
    pub quality: cupwright_quality,
}

/// A two-rate law of extraction.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_two_rates {
    /// Yield that it levels off at, {Yield}.
    pub equilibrium_yield_pct: f64,
    /// Its standard uncertainty, {YieldUncertainty}.
    pub u_equilibrium_yield_pct: f64,
    /// Share of it that dissolves fast, {Share}.
    pub fast_share_pct: f64,
    /// Its standard uncertainty, {ShareUncertainty}.
    pub u_fast_share_pct: f64,
    /// Time constant of the fast share, {TimeConstant}.
    pub fast_time_s: f64,
    /// Standard uncertainty of its logarithm, {TimeConstantUncertainty}.
    pub u_ln_fast_time: f64,
    /// Time constant of the rest, {TimeConstant}.
    pub slow_time_s: f64,
    /// Standard uncertainty of its logarithm, {TimeConstantUncertainty}.
    pub u_ln_slow_time: f64,
    /// Covariances of the yield, the fast share and the two logarithms, in points.
    pub covariance: [[f64; 4]; 4],
    /// How far the curve can be trusted; its scatter is in points of yield.
    pub quality: cupwright_quality,
}

/// How a cup cools, as a thermometer tells it.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_cooling {
    /// Cooling rate, {CoolingRate}.
    pub cooling_per_min: f64,
    /// Its standard uncertainty, {CoolingRateUncertainty}.
    pub u_cooling_per_min: f64,
    /// Temperature at the first reading, by the curve through all of them, {Temperature}.
    pub start_c: f64,
    /// Its standard uncertainty, {TemperatureUncertainty}.
    pub u_start_k: f64,
    /// Covariance of the two, K/min.
    pub covariance_k_per_min: f64,
    /// How far the curve can be trusted; its scatter is in K.
    pub quality: cupwright_quality,
}

/// What the core tells of measurements.
fn fit<C: Copy, T: Copy, R>(
    call: Call,
    given: &[C],
    of: impl Fn(C) -> Result<T, Refused> + Copy,
    ask: impl FnOnce(&[T]) -> Result<R, Error>,
) -> Result<R, Refused> {
    with_measurements(given, of, |measurements| call.core(ask(measurements)))
}

/// Lends the core's measurements to a question.
fn with_measurements<C: Copy, T: Copy, R>(
    given: &[C],
    of: impl Fn(C) -> Result<T, Refused> + Copy,
    ask: impl FnOnce(&[T]) -> Result<R, Refused>,
) -> Result<R, Refused> {
    let Some(first) = given.first() else { return ask(&[]) };
    let mut places = [of(*first)?; MOST_MEASUREMENTS];
    ask(each(given, &mut places, of)?)
}

fn drained_of(call: Call, brew: cupwright_drained) -> Result<Drained, Refused> {
    Ok(Drained {
        dose: checked!(call, brew.dose_g)?,
        water: checked!(call, brew.water_g)?,
        beverage: checked!(call, brew.beverage_g)?,
        vapour: checked!(call, brew.vapour_g)?,
    })
}

fn line_of(call: Call, brews: &[cupwright_drained]) -> Result<RetentionLine, Refused> {
    fit(call, brews, |brew| drained_of(call, brew), calibrate::retention_line)
}

fn settled_of(call: Call, pour: cupwright_settled) -> Result<Settled, Refused> {
    Ok(Settled {
        liquid: checked!(call, pour.liquid_g)?,
        before: checked!(call, pour.before_c)?,
        settled: checked!(call, pour.settled_c)?,
        vessel: checked!(call, pour.vessel_c)?,
    })
}

fn steeped_of(call: Call, steep: cupwright_steeped) -> Result<Steeped, Refused> {
    Ok(Steeped {
        strength: checked!(call, steep.strength_pct)?,
        water: checked!(call, steep.water_g)?,
        dose: checked!(call, steep.dose_g)?,
    })
}

fn timed_of(call: Call, timed: cupwright_timed) -> Result<Timed, Refused> {
    Ok(Timed {
        contact: checked!(call, timed.contact_s)?,
        extracted: checked!(call, timed.yield_pct)?,
    })
}

fn thermometer_of(call: Call, reading: cupwright_thermometer) -> Result<Thermometer, Refused> {
    Ok(Thermometer {
        time: checked!(call, reading.time_s)?,
        temperature: checked!(call, reading.water_c)?,
    })
}

fn dried_of(call: Call, sample: cupwright_dried) -> Result<Dried, Refused> {
    Ok(Dried { brix: checked!(call, sample.brix)?, strength: checked!(call, sample.strength_pct)? })
}

fn repeat_of(call: Call, read: cupwright_repeat) -> Result<Repeat, Refused> {
    Ok(Repeat { cup: counted!(call, read.cup)?, strength: checked!(call, read.strength_pct)? })
}

fn quality(quality: &Quality) -> cupwright_quality {
    const NONE: cupwright_odd =
        cupwright_odd { studentised: 0.0, chance: 0.0, at: 0, is_suspicious: 0 };
    let odd = quality.odd.map(|odd| cupwright_odd {
        studentised: odd.studentised,
        chance: odd.chance,
        at: odd.at as i32,
        is_suspicious: odd.is_suspicious.into(),
    });
    cupwright_quality {
        degrees_of_freedom: quality.freedom.value(),
        s: quality.s,
        residuals: quality.residuals,
        leverages: quality.leverages,
        odd: odd.unwrap_or(NONE),
        measurements: quality.measurements.value() as i32,
        has_odd: odd.is_some().into(),
    }
}

fn retention_line(line: &RetentionLine) -> cupwright_retention_line {
    cupwright_retention_line {
        apparent_retention_g_per_g: line.retention.value.value(),
        u_retention_g_per_g: line.retention.u.value(),
        fitted_hold_up_g: line.hold_up.value.value(),
        u_hold_up_g: line.hold_up.u.value(),
        covariance_g2_per_g: line.covariance,
        quality: quality(&line.quality),
    }
}

fn one_rate(law: &OneRate) -> cupwright_one_rate {
    cupwright_one_rate {
        equilibrium_yield_pct: law.equilibrium.value.value(),
        u_equilibrium_yield_pct: law.equilibrium.u.value(),
        time_constant_s: law.time.value.value(),
        u_ln_time_constant: law.time.u.value(),
        covariance_pct: law.covariance,
        quality: quality(&law.quality),
    }
}

fn two_rates(law: &TwoRates) -> cupwright_two_rates {
    cupwright_two_rates {
        equilibrium_yield_pct: law.equilibrium.value.value(),
        u_equilibrium_yield_pct: law.equilibrium.u.value(),
        fast_share_pct: law.fast_share.value.value(),
        u_fast_share_pct: law.fast_share.u.value(),
        fast_time_s: law.fast.value.value(),
        u_ln_fast_time: law.fast.u.value(),
        slow_time_s: law.slow.value.value(),
        u_ln_slow_time: law.slow.u.value(),
        covariance: law.covariance,
        quality: quality(&law.quality),
    }
}

fn cooling(cup: &Cooling) -> cupwright_cooling {
    cupwright_cooling {
        cooling_per_min: cup.rate.value.value(),
        u_cooling_per_min: cup.rate.u.value(),
        start_c: cup.start.value.value(),
        u_start_k: cup.start.u.value(),
        covariance_k_per_min: cup.covariance,
        quality: quality(&cup.quality),
    }
}

/// What C is told of a beverage.
pub(crate) fn expected(next: &Expected) -> cupwright_expected {
    cupwright_expected {
        beverage_g: next.beverage.value.value(),
        u_beverage_g: next.beverage.u.value(),
        degrees_of_freedom: next.beverage.freedom.value(),
        u_mean_g: next.u_mean.value(),
    }
}

/// The core's quality of a fit; which measurement was odd is no part of what is kept.
fn quality_told(call: Call, quality: &cupwright_quality) -> Result<Quality, Refused> {
    Ok(Quality {
        measurements: counted!(call, quality.measurements)?,
        freedom: checked!(call, quality.degrees_of_freedom)?,
        s: call.check::<StandardUncertainty>(quality.s, field!(s))?.value(),
        residuals: quality.residuals,
        leverages: quality.leverages,
        odd: None,
    })
}

/// A value that a fit told, with the degrees of freedom of its quality.
macro_rules! told {
    ($call:ident, $fit:ident: $value:ident, $u:ident, $quality:ident) => {
        Estimate {
            value: checked!($call, $fit.$value)?,
            u: checked!($call, $fit.$u)?,
            freedom: $quality.freedom,
        }
    };
}

/// A covariance, of any sign.
fn covariance(call: Call, value: f64, field: Field) -> Result<f64, Refused> {
    Ok(call.check::<Measurand>(value, field)?.value())
}

/// The core's fits, of what C was told.
macro_rules! fits_told {
    ($($name:ident($fit:ty) -> $kind:ty: $value:ident, $u:ident;)+) => {$(
        pub(crate) fn $name(call: Call, fit: &$fit) -> Result<Fitted<$kind>, Refused> {
            let quality = quality_told(call, &fit.quality)?;
            Ok(Fitted { estimate: told!(call, fit: $value, $u, quality), quality })
        }
    )+};
}
fits_told! {
    retention_told(cupwright_fitted_retention) -> ApparentRetention:
        apparent_retention_g_per_g, u_retention_g_per_g;
    heat_capacity_told(cupwright_fitted_heat_capacity) -> HeatCapacity:
        heat_capacity_j_per_k, u_heat_capacity_j_per_k;
    refractive_factor_told(cupwright_fitted_refractive_factor) -> RefractiveFactor:
        refractive_factor_pct_per_brix, u_factor_pct;
    repeatability_told(cupwright_fitted_repeatability) -> Repeatability:
        repeatability_pct, u_repeatability_pct;
}

pub(crate) fn line_told(
    call: Call,
    line: &cupwright_retention_line,
) -> Result<RetentionLine, Refused> {
    let quality = quality_told(call, &line.quality)?;
    Ok(RetentionLine {
        retention: told!(call, line: apparent_retention_g_per_g, u_retention_g_per_g, quality),
        hold_up: told!(call, line: fitted_hold_up_g, u_hold_up_g, quality),
        covariance: covariance(call, line.covariance_g2_per_g, field!(covariance_g2_per_g))?,
        quality,
    })
}

pub(crate) fn one_rate_told(call: Call, law: &cupwright_one_rate) -> Result<OneRate, Refused> {
    let quality = quality_told(call, &law.quality)?;
    Ok(OneRate {
        equilibrium: told!(call, law: equilibrium_yield_pct, u_equilibrium_yield_pct, quality),
        time: told!(call, law: time_constant_s, u_ln_time_constant, quality),
        covariance: covariance(call, law.covariance_pct, field!(covariance_pct))?,
        quality,
    })
}

pub(crate) fn two_rates_told(call: Call, law: &cupwright_two_rates) -> Result<TwoRates, Refused> {
    let quality = quality_told(call, &law.quality)?;
    let table = field!(covariance);
    law.covariance
        .as_flattened()
        .iter()
        .try_for_each(|of| covariance(call, *of, table).map(drop))?;
    Ok(TwoRates {
        equilibrium: told!(call, law: equilibrium_yield_pct, u_equilibrium_yield_pct, quality),
        fast_share: told!(call, law: fast_share_pct, u_fast_share_pct, quality),
        fast: told!(call, law: fast_time_s, u_ln_fast_time, quality),
        slow: told!(call, law: slow_time_s, u_ln_slow_time, quality),
        covariance: law.covariance,
        quality,
    })
}

pub(crate) fn cooling_told(call: Call, cup: &cupwright_cooling) -> Result<Cooling, Refused> {
    let quality = quality_told(call, &cup.quality)?;
    Ok(Cooling {
        rate: told!(call, cup: cooling_per_min, u_cooling_per_min, quality),
        start: told!(call, cup: start_c, u_start_k, quality),
        covariance: covariance(call, cup.covariance_k_per_min, field!(covariance_k_per_min))?,
        quality,
    })
}

/// Retention and hold-up of a brewer, from brews of several doses by least squares. Doses far apart
/// tell most. In every fit of this room, a value plus and minus its u times
/// cupwright_uncertainty_coverage_factor() for the fit's degrees of freedom holds the truth as
/// often as the confidence says. Two are told otherwise. A time constant goes by its logarithm: its
/// interval is its value over and times e to the power of that. A repeatability is itself a
/// scatter, whose interval would hold it 90 to 94 times in a hundred for 95; its degrees of freedom
/// make the intervals of later readings right, for which it is there. A measurement where every
/// such law begins, no yield after no time or no Brix of water, tells nothing and does not count.
///
/// ```text
/// W − B − V = c + r D
/// r = S_xy/S_xx,  c = ȳ − r D̄,  u(r) = s/√S_xx,  u(c) = s √(1/n + D̄²/S_xx),  cov = −D̄ s²/S_xx
/// ```
///
/// @param brews The brews.
/// @param count How many, {Measurements}.
/// @param[out] line Retention r and hold-up c.
///
/// Fails with CUPWRIGHT_STATUS_CANNOT_TELL for fewer than three brews, brews of one dose size, or of
/// sizes so near each other that scatter makes the line; CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE
/// outside the range of the retention or the hold-up.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_calibrate_retention_line(
    brews: *const cupwright_drained,
    count: usize,
    line: *mut cupwright_retention_line,
    error: *mut cupwright_error,
) -> i32 {
    answer!(line, error, |call| Ok(retention_line(&line_of(
        call,
        given!(call, brews, count: Measurements)?
    )?)))
}

/// Beverage that the next brew gives by the line through earlier ones, B = W − V − c − r D.
///
/// @param brews The earlier brews.
/// @param count How many, {Measurements}.
/// @param next_dose_g Dose of the next one, {Dose}.
/// @param next_water_g Its brew water, {BrewWater}.
/// @param next_vapour_g Vapour that it will lose, {Vapour}.
/// @param[out] expected The beverage.
///
/// Fails with what cupwright_calibrate_retention_line() fails with;
/// CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE where nothing is left for the cup, too.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_calibrate_expected_beverage(
    brews: *const cupwright_drained,
    count: usize,
    next_dose_g: f64,
    next_water_g: f64,
    next_vapour_g: f64,
    expected: *mut cupwright_expected,
    error: *mut cupwright_error,
) -> i32 {
    answer!(expected, error, |call| Ok({
        let line = line_of(call, given!(call, brews, count: Measurements)?)?;
        let (dose, water) = (checked!(call, next_dose_g)?, checked!(call, next_water_g)?);
        self::expected(&call.core(line.expected(dose, water, checked!(call, next_vapour_g)?))?)
    }))
}

/// Retention of a brewer that keeps nothing but what the grounds hold, W − B − V = r D. Also for
/// brews of one dose size: then the hold-up is in it, and it is right for that size alone.
///
/// ```text
/// r = Σ D y/Σ D²,  u(r) = s/√Σ D²
/// ```
///
/// @param brews The brews.
/// @param count How many, {Measurements}.
/// @param[out] fitted The retention.
///
/// Fails with CUPWRIGHT_STATUS_CANNOT_TELL for fewer than two brews;
/// CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE outside the range of the retention.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_calibrate_retention(
    brews: *const cupwright_drained,
    count: usize,
    fitted: *mut cupwright_fitted_retention,
    error: *mut cupwright_error,
) -> i32 {
    answer!(fitted, error, |call| Ok({
        let brews = given!(call, brews, count: Measurements)?;
        let of = |brew| drained_of(call, brew);
        let fitted = fit(call, brews, of, calibrate::retention)?;
        cupwright_fitted_retention {
            apparent_retention_g_per_g: fitted.estimate.value.value(),
            u_retention_g_per_g: fitted.estimate.u.value(),
            quality: quality(&fitted.quality),
        }
    }))
}

/// Heat capacity of a brewer, from several times that water was poured into it empty and settled.
/// Wait as long as a brew takes. For one pour beside bodies already known:
/// cupwright_heat_vessel_heat_capacity().
///
/// ```text
/// m [h(t0) − h(t)] = C (t − t_vessel)
/// C = Σxy/Σx²,  u(C) = s/√Σx²
/// ```
///
/// @param pours The pours.
/// @param count How many, {Measurements}.
/// @param[out] fitted The heat capacity.
///
/// Fails with CUPWRIGHT_STATUS_CANNOT_TELL for fewer than two pours, or vessels that were as warm
/// as the water; CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE where the temperatures do not stand in order.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_calibrate_heat_capacity(
    pours: *const cupwright_settled,
    count: usize,
    fitted: *mut cupwright_fitted_heat_capacity,
    error: *mut cupwright_error,
) -> i32 {
    answer!(fitted, error, |call| Ok({
        let pours = given!(call, pours, count: Measurements)?;
        let of = |pour| settled_of(call, pour);
        let fitted = fit(call, pours, of, calibrate::heat_capacity)?;
        cupwright_fitted_heat_capacity {
            heat_capacity_j_per_k: fitted.estimate.value.value(),
            u_heat_capacity_j_per_k: fitted.estimate.u.value(),
            quality: quality(&fitted.quality),
        }
    }))
}

/// Yield at which a coffee levels off: the mean of long steeps, (W/D) T/(1 − T), with u = s/√n.
///
/// @param steeps The steeps.
/// @param count How many, {Measurements}.
/// @param[out] fitted The yield.
///
/// Fails with CUPWRIGHT_STATUS_CANNOT_TELL for fewer than two steeps;
/// CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE for a steep whose own yield would be above 100 %.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_calibrate_equilibrium_yield(
    steeps: *const cupwright_steeped,
    count: usize,
    fitted: *mut cupwright_fitted_yield,
    error: *mut cupwright_error,
) -> i32 {
    answer!(fitted, error, |call| Ok({
        let steeps = given!(call, steeps, count: Measurements)?;
        let of = |steep| steeped_of(call, steep);
        let fitted = fit(call, steeps, of, calibrate::equilibrium_yield)?;
        cupwright_fitted_yield {
            yield_pct: fitted.estimate.value.value(),
            u_yield_pct: fitted.estimate.u.value(),
            quality: quality(&fitted.quality),
        }
    }))
}

/// How fast a coffee extracts, by one rate, from yields of brews that differ in time of contact
/// only. No start is asked for. Source of the law: Fuller & Rao 2017, doi
/// 10.1038/s41598-017-18247-4, abstract.
///
/// ```text
/// E(t) = E∞ (1 − e^(−t/τ)),  parameters E∞ and ln τ
/// ```
///
/// @param yields The yields.
/// @param count How many, {Measurements}.
/// @param[out] law Equilibrium yield and time constant.
///
/// Fails with CUPWRIGHT_STATUS_CANNOT_TELL for fewer than three yields after some time, for ones that
/// do not begin to level off, that have all levelled off, or that fall;
/// CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE for an equilibrium above 100 %.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_calibrate_one_rate(
    yields: *const cupwright_timed,
    count: usize,
    law: *mut cupwright_one_rate,
    error: *mut cupwright_error,
) -> i32 {
    answer!(law, error, |call| Ok({
        let yields = given!(call, yields, count: Measurements)?;
        let of = |timed| timed_of(call, timed);
        one_rate(&fit(call, yields, of, calibrate::one_rate)?)
    }))
}

/// How fast a coffee extracts, by two rates, from a few seconds to well beyond the slow time
/// constant. Accepted only where it explains more than scatter about one rate would explain once in
/// twenty times; refused too where the equilibrium would be above 100 %. Source of the law: Moroney
/// et al. 2015, doi 10.1016/j.ces.2015.06.003, abstract.
///
/// ```text
/// E(t) = E∞ [ f(1 − e^(−t/τ1)) + (1 − f)(1 − e^(−t/τ2)) ]
/// ```
///
/// @param yields The yields.
/// @param count How many, {Measurements}.
/// @param[out] law Equilibrium yield, fast share and the two time constants.
///
/// Fails with CUPWRIGHT_STATUS_CANNOT_TELL for fewer than seven yields, for ones that one rate
/// describes as well, that do not begin to level off, or that have all levelled off.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_calibrate_two_rates(
    yields: *const cupwright_timed,
    count: usize,
    law: *mut cupwright_two_rates,
    error: *mut cupwright_error,
) -> i32 {
    answer!(law, error, |call| Ok({
        let yields = given!(call, yields, count: Measurements)?;
        let of = |timed| timed_of(call, timed);
        two_rates(&fit(call, yields, of, calibrate::two_rates)?)
    }))
}

/// Cooling rate of a cup from several readings of a thermometer left in it, by the law of
/// cupwright_heat_time_to_cool(): least squares in temperature, the first reading counting like all
/// others. Readings over twenty minutes tell more than many within five.
///
/// @param readings The readings.
/// @param count How many, {Measurements}.
/// @param surroundings The room.
/// @param[out] cup Cooling rate and first temperature.
///
/// Fails with CUPWRIGHT_STATUS_CANNOT_TELL for fewer than three readings, all at one time, or ones
/// that do not fall; CUPWRIGHT_STATUS_IMPOSSIBLE for a reading not above where cooling ends;
/// CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE outside the range of the rate.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_calibrate_cooling(
    readings: *const cupwright_thermometer,
    count: usize,
    surroundings: *const cupwright_surroundings,
    cup: *mut cupwright_cooling,
    error: *mut cupwright_error,
) -> i32 {
    answer!(cup, error, |call| Ok({
        let readings = given!(call, readings, count: Measurements)?;
        let of = |reading| thermometer_of(call, reading);
        let ask = |readings: &[_]| {
            let room = surroundings_of(call, given!(call, surroundings)?)?;
            call.core(calibrate::cooling(readings, &room))
        };
        cooling(&with_measurements(readings, of, ask)?)
    }))
}

/// Refractive factor of a coffee, T = k x, from samples read and oven-dried. Ten grams dried for
/// three hours at 105 °C on a balance of 0.1 mg tell T to 0.003 %; on a scale of 0.1 g nothing is
/// told. The factor holds for the coffees dried, filtered as they were.
///
/// ```text
/// k = Σ x T/Σ x²,  u(k)/k = s/(k √Σ x²)
/// ```
///
/// @param samples The samples.
/// @param count How many, {Measurements}.
/// @param[out] fitted The factor.
///
/// Fails with CUPWRIGHT_STATUS_CANNOT_TELL for fewer than two samples, or readings that are all
/// zero; CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE outside the range of the factor.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_calibrate_refractive_factor(
    samples: *const cupwright_dried,
    count: usize,
    fitted: *mut cupwright_fitted_refractive_factor,
    error: *mut cupwright_error,
) -> i32 {
    answer!(fitted, error, |call| Ok({
        let samples = given!(call, samples, count: Measurements)?;
        let of = |sample| dried_of(call, sample);
        let fitted = fit(call, samples, of, calibrate::refractive_factor)?;
        cupwright_fitted_refractive_factor {
            refractive_factor_pct_per_brix: fitted.estimate.value.value(),
            u_factor_pct: fitted.estimate.u.value(),
            quality: quality(&fitted.quality),
        }
    }))
}

/// Repeatability of one's own readings, pooled over several cups that were each read several times,
/// in any order. A cup that was read once adds nothing. Source: JCGM 100:2008, 4.2.4 and E.4.3
/// (from memory).
///
/// ```text
/// s_r² = Σ(x − x̄ of its cup)²/ν,  ν = readings less cups,  u(s_r) ≈ s_r/√(2ν)
/// ```
///
/// @param readings The readings.
/// @param count How many, {Measurements}.
/// @param[out] fitted The repeatability.
///
/// Fails with CUPWRIGHT_STATUS_CANNOT_TELL where no cup was read twice;
/// CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE for readings that are all equal: the display is too coarse
/// to tell.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_calibrate_repeatability(
    readings: *const cupwright_repeat,
    count: usize,
    fitted: *mut cupwright_fitted_repeatability,
    error: *mut cupwright_error,
) -> i32 {
    answer!(fitted, error, |call| Ok({
        let readings = given!(call, readings, count: Measurements)?;
        let of = |read| repeat_of(call, read);
        let fitted = fit(call, readings, of, calibrate::repeatability)?;
        cupwright_fitted_repeatability {
            repeatability_pct: fitted.estimate.value.value(),
            u_repeatability_pct: fitted.estimate.u.value(),
            quality: quality(&fitted.quality),
        }
    }))
}
