//! How sure a number is.

use cupwright::Error;
use cupwright::quantity::{
    DegreesOfFreedom, Measurand, Measure, Quantity, ReadingCount, RepeatCount, StandardUncertainty,
    Strength, TermCount, Yield,
};
use cupwright::uncertainty::{
    self, Budget, Estimate, Influence, MOST_TERMS, Measured, Plateau, Rates, ReadStrength, Series,
    Shape, Standard, Term, Uncertain, Uncertainty,
};

use crate::call::{Call, Refused, answer, checked, counted, each, field, given};
use crate::estimate::{self, *};
use crate::extraction::{self, cupwright_kinetics};
use crate::heat::{cupwright_surroundings, surroundings_of};
use crate::reading::{with_readings, zero_of};
use crate::retention::{self, cupwright_losses};
use crate::status::cupwright_error;

/// A standard uncertainty and how well it is itself known.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_standard {
    /// The standard uncertainty, in the unit of what it was made from, {StandardUncertainty}.
    pub u: f64,
    /// Its degrees of freedom, {DegreesOfFreedom}; the highest where it is as good as known.
    pub degrees_of_freedom: f64,
}

/// A mean of repeats and how sure it is.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_mean {
    /// The mean, {Measurand}.
    pub value: f64,
    /// Its standard uncertainty, {StandardUncertainty}.
    pub u: f64,
    /// The degrees of freedom of that, {DegreesOfFreedom}.
    pub degrees_of_freedom: f64,
}

/// An interval around a value that holds the true one with some confidence.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_expanded {
    /// How many standard uncertainties it reaches to either side, {CoverageFactor}.
    pub coverage_factor: f64,
    /// How far it reaches to either side, {StandardUncertainty}.
    pub half_width: f64,
}

/// The scatter of an earlier series.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_series {
    /// Standard deviation of its readings, {StandardUncertainty}.
    pub s: f64,
    /// One less than their number, {DegreesOfFreedom}.
    pub degrees_of_freedom: f64,
}

/// What moves a result, for a budget of one's own.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_influence {
    /// How much the result changes with it, {Sensitivity}.
    pub sensitivity: f64,
    /// Its standard uncertainty, {StandardUncertainty}.
    pub u: f64,
    /// The degrees of freedom of that, {DegreesOfFreedom}.
    pub degrees_of_freedom: f64,
}

/// How fast a coffee extracts, and how well that is known, as a fit told it. How well the plateau is
/// known stands apart: advice starts from a cup that has a yield of its own. With one rate the fast
/// share is 100 %, and what is of the slow one is 0.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_rates {
    /// The law.
    pub kinetics: cupwright_kinetics,
    /// Standard uncertainty of the fast share, {ShareUncertainty}.
    pub u_fast_share_pct: f64,
    /// That of the logarithm of the fast time constant, {TimeConstantUncertainty}.
    pub u_ln_fast_time: f64,
    /// That of the logarithm of the slow one, {TimeConstantUncertainty}.
    pub u_ln_slow_time: f64,
    /// Correlation of the share and the first logarithm, {Correlation}.
    pub correlation_share_fast: f64,
    /// Correlation of the share and the second, {Correlation}.
    pub correlation_share_slow: f64,
    /// Correlation of the two logarithms, {Correlation}.
    pub correlation_fast_slow: f64,
    /// Degrees of freedom of the fit, {DegreesOfFreedom}.
    pub nu_rates: f64,
}

/// How well the plateau of some rates is known, as the same fit told it.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_plateau {
    /// Standard uncertainty of the yield that it levels off at, {YieldUncertainty}.
    pub u_equilibrium_yield_pct: f64,
    /// Correlation of that yield and the fast share, {Correlation}.
    pub correlation_equilibrium_share: f64,
    /// Correlation of it and the logarithm of the fast time constant, {Correlation}.
    pub correlation_equilibrium_fast: f64,
    /// Correlation of it and the logarithm of the slow one, {Correlation}.
    pub correlation_equilibrium_slow: f64,
}

/// What is known of an error inside its limits.
#[repr(i32)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum cupwright_shape {
    /// Nothing: all values inside are as likely. A specification, a rounding.
    Rectangular = 1,
    /// Values near the middle are likelier.
    Triangular = 2,
    /// It swings between the limits. A thermostat.
    Arcsine = 3,
}

/// One line of a budget.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_term {
    /// How much the result changes with the input, in the units of the two.
    pub sensitivity: f64,
    /// The input's standard uncertainty, in its own unit.
    pub u: f64,
    /// The degrees of freedom of that, {DegreesOfFreedom}.
    pub degrees_of_freedom: f64,
    /// What it contributes to the result's standard uncertainty, in the result's unit.
    pub contribution: f64,
    /// The input, or its error: one of enum cupwright_quantity.
    pub source: i32,
}

/// The term that contributes most, and what it is worth to improve it.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_dominant {
    /// What it contributes, in the result's unit.
    pub contribution: f64,
    /// Its share of the variance, {Share}.
    pub share_pct: f64,
    /// What the combined standard uncertainty would be with half the term's.
    pub halved: f64,
    /// What it would be without the term.
    pub gone: f64,
    /// The input, or its error: one of enum cupwright_quantity.
    pub source: i32,
}

/// A result with its standard uncertainty, and what that is made of.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_budget {
    /// The result.
    pub value: f64,
    /// Its combined standard uncertainty, in its unit.
    pub u: f64,
    /// The effective degrees of freedom of that, {DegreesOfFreedom}.
    pub degrees_of_freedom: f64,
    /// The combined standard uncertainty with second-order terms too. Where it differs much from u,
    /// the linear rule does not hold. 0 where it cannot be had.
    pub second_order: f64,
    /// How far the mean of the result lies above the result at the inputs' means, in its unit; 0
    /// where it cannot be had.
    pub shift: f64,
    /// Correlation of a yield with the strength that it was computed from, {Correlation}; 0 for
    /// anything but a yield.
    pub correlation: f64,
    /// The term that contributes most, the first of several; all zero where nothing is uncertain.
    pub dominant: cupwright_dominant,
    /// The terms in the order of the inputs. Only so many as are counted mean something.
    pub terms: [cupwright_term; 10],
    /// How many terms there are, {TermCount}.
    pub term_count: i32,
    /// Whether it is a yield: 1 or 0.
    pub has_correlation: i32,
    /// Whether anything is uncertain: 1 or 0.
    pub has_dominant: i32,
    /// Whether what the linear rule leaves out is told: 1 or 0. It is not where only sensitivities were
    /// given, and where the inputs are so uncertain that it cannot be had.
    pub has_second_order: i32,
}

/// The core's rates.
pub(crate) fn rates_of(call: Call, rates: &cupwright_rates) -> Result<Rates, Refused> {
    Ok(Rates {
        kinetics: extraction::kinetics_of(call, &rates.kinetics)?,
        u_fast_share: checked!(call, rates.u_fast_share_pct)?,
        u_fast: checked!(call, rates.u_ln_fast_time)?,
        u_slow: checked!(call, rates.u_ln_slow_time)?,
        share_and_fast: checked!(call, rates.correlation_share_fast)?,
        share_and_slow: checked!(call, rates.correlation_share_slow)?,
        fast_and_slow: checked!(call, rates.correlation_fast_slow)?,
        freedom: checked!(call, rates.nu_rates)?,
    })
}

/// No rates.
pub(crate) const NO_RATES: cupwright_rates = cupwright_rates {
    kinetics: cupwright_kinetics {
        equilibrium_yield_pct: 0.0,
        fast_share_pct: 0.0,
        fast_time_s: 0.0,
        slow_time_s: 0.0,
    },
    u_fast_share_pct: 0.0,
    u_ln_fast_time: 0.0,
    u_ln_slow_time: 0.0,
    correlation_share_fast: 0.0,
    correlation_share_slow: 0.0,
    correlation_fast_slow: 0.0,
    nu_rates: 0.0,
};

/// What C is told of rates.
pub(crate) fn rates(of: &Rates) -> cupwright_rates {
    cupwright_rates {
        kinetics: extraction::kinetics(&of.kinetics),
        u_fast_share_pct: of.u_fast_share.value(),
        u_ln_fast_time: of.u_fast.value(),
        u_ln_slow_time: of.u_slow.value(),
        correlation_share_fast: of.share_and_fast.value(),
        correlation_share_slow: of.share_and_slow.value(),
        correlation_fast_slow: of.fast_and_slow.value(),
        nu_rates: of.freedom.value(),
    }
}

/// What C is told of a plateau.
pub(crate) fn plateau(of: &Plateau) -> cupwright_plateau {
    cupwright_plateau {
        u_equilibrium_yield_pct: of.u_equilibrium.value(),
        correlation_equilibrium_share: of.equilibrium_and_share.value(),
        correlation_equilibrium_fast: of.equilibrium_and_fast.value(),
        correlation_equilibrium_slow: of.equilibrium_and_slow.value(),
    }
}

fn plateau_of(call: Call, plateau: &cupwright_plateau) -> Result<Plateau, Refused> {
    Ok(Plateau {
        u_equilibrium: checked!(call, plateau.u_equilibrium_yield_pct)?,
        equilibrium_and_share: checked!(call, plateau.correlation_equilibrium_share)?,
        equilibrium_and_fast: checked!(call, plateau.correlation_equilibrium_fast)?,
        equilibrium_and_slow: checked!(call, plateau.correlation_equilibrium_slow)?,
    })
}

/// The core's shape, or a refusal.
fn shape_of(call: Call, shape: i32) -> Result<Shape, Refused> {
    const RECTANGULAR: i32 = cupwright_shape::Rectangular as i32;
    const TRIANGULAR: i32 = cupwright_shape::Triangular as i32;
    const ARCSINE: i32 = cupwright_shape::Arcsine as i32;
    match shape {
        RECTANGULAR => Ok(Shape::Rectangular),
        TRIANGULAR => Ok(Shape::Triangular),
        ARCSINE => Ok(Shape::Arcsine),
        _ => Err(call.unknown_choice(shape, field!(shape))),
    }
}

fn standard(standard: Standard<StandardUncertainty>) -> cupwright_standard {
    cupwright_standard { u: standard.u.value(), degrees_of_freedom: standard.freedom.value() }
}

const NO_TERM: cupwright_term = cupwright_term {
    sensitivity: 0.0,
    u: 0.0,
    degrees_of_freedom: 0.0,
    contribution: 0.0,
    source: 0,
};

fn term(term: &Term) -> cupwright_term {
    cupwright_term {
        sensitivity: term.sensitivity,
        u: term.u,
        degrees_of_freedom: term.freedom.value(),
        contribution: term.contribution(),
        source: term.source as i32,
    }
}

fn dominant<M: Uncertain>(budget: &Budget<M>) -> Option<cupwright_dominant> {
    budget.dominant().map(|dominant| cupwright_dominant {
        contribution: dominant.term.contribution(),
        share_pct: dominant.share.value(),
        halved: dominant.halved.value(),
        gone: dominant.gone.value(),
        source: dominant.term.source as i32,
    })
}

const NO_DOMINANT: cupwright_dominant =
    cupwright_dominant { contribution: 0.0, share_pct: 0.0, halved: 0.0, gone: 0.0, source: 0 };

/// What C is told of a budget.
pub(crate) fn budget<M: Uncertain>(of: &Budget<M>) -> cupwright_budget {
    let dominant = dominant(of);
    // Made in its place: its terms would take 400 bytes of stack beside it.
    let mut budget = cupwright_budget {
        value: of.estimate.value.value(),
        u: of.estimate.u.value(),
        degrees_of_freedom: of.estimate.freedom.value(),
        second_order: of.second_order.map_or(0.0, |second| second.u.value()),
        shift: of.second_order.map_or(0.0, |second| second.shift),
        correlation: 0.0,
        dominant: dominant.unwrap_or(NO_DOMINANT),
        terms: [NO_TERM; MOST_TERMS],
        term_count: of.terms().count() as i32,
        has_correlation: 0,
        has_dominant: dominant.is_some().into(),
        has_second_order: of.second_order.is_some().into(),
    };
    for (place, of) in budget.terms.iter_mut().zip(of.terms()) {
        *place = term(of);
    }
    budget
}

/// What C is told of the budget of a yield.
fn of_yield(of: &Budget<Yield>) -> cupwright_budget {
    let mut budget = budget(of);
    budget.correlation = of.correlation_with_strength().value();
    budget.has_correlation = 1;
    budget
}

/// Coverage factor: the two-sided quantile of Student's distribution, of any degrees of freedom
/// from 1, whole or not; for the highest the normal distribution's. Relative error below 10⁻¹¹.
/// Source: GUM G.3.
///
/// ```text
/// P(|T| ≤ k) = confidence
/// ```
///
/// @param confidence_pct How sure the statement has to be, {Confidence}.
/// @param degrees_of_freedom Of the uncertainty, {DegreesOfFreedom}.
/// @param[out] coverage_factor {CoverageFactor}.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_uncertainty_coverage_factor(
    confidence_pct: f64,
    degrees_of_freedom: f64,
    coverage_factor: *mut f64,
    error: *mut cupwright_error,
) -> i32 {
    answer!(coverage_factor, error, |call| Ok({
        let (sure, freedom) =
            (checked!(call, confidence_pct)?, checked!(call, degrees_of_freedom)?);
        uncertainty::coverage_factor(sure, freedom).value()
    }))
}

/// Expanded uncertainty U = k u for a confidence: "1.44 % ± 0.05 %".
///
/// @param estimate The value.
/// @param confidence_pct How sure the statement has to be, {Confidence}.
/// @param[out] expanded The interval.
///
/// Fails with CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE for a half-width past the range of the
/// uncertainty.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_uncertainty_expanded(
    estimate: *const cupwright_estimate,
    confidence_pct: f64,
    expanded: *mut cupwright_expanded,
    error: *mut cupwright_error,
) -> i32 {
    answer!(expanded, error, |call| Ok({
        let estimate = estimate::any(call, given!(call, estimate)?)?;
        let expanded = call.core(estimate.expanded(checked!(call, confidence_pct)?))?;
        cupwright_expanded {
            coverage_factor: expanded.factor.value(),
            half_width: expanded.half_width.value(),
        }
    }))
}

/// Lends the core's repeats to a question.
fn with_repeats<T>(
    call: Call,
    value: &[f64],
    ask: impl FnOnce(&[Measurand]) -> Result<T, Error>,
) -> Result<T, Refused> {
    const MOST: usize = Quantity::RepeatCount.highest() as usize;
    let mut places = [call.core(Measurand::from_number(0.0))?; MOST];
    call.core(ask(each(value, &mut places, |value| checked!(call, value))?))
}

/// Mean of repeats and its standard uncertainty (type A evaluation).
///
/// ```text
/// u = s/√n,   s² = Σ(x − x̄)²/(n − 1),   ν = n − 1
/// ```
///
/// Two or three repeats say little about their own scatter: then cupwright_uncertainty_pooled()
/// from earlier series is better. Repeats that are all equal give zero, because the display hides
/// the scatter: put cupwright_uncertainty_of_display() beside it by
/// cupwright_uncertainty_together(). Source: GUM 4.2.
///
/// @param value The repeats, each {Measurand}.
/// @param count How many, {RepeatCount}.
/// @param[out] mean The mean and how sure it is.
///
/// Fails with CUPWRIGHT_STATUS_OUT_OF_RANGE for a single repeat or more than a hundred.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_uncertainty_of_repeats(
    value: *const f64,
    count: usize,
    mean: *mut cupwright_mean,
    error: *mut cupwright_error,
) -> i32 {
    answer!(mean, error, |call| Ok({
        let repeats = given!(call, value, count: RepeatCount)?;
        let mean = with_repeats(call, repeats, uncertainty::of_repeats)?;
        cupwright_mean {
            value: mean.value.value(),
            u: mean.u.value(),
            degrees_of_freedom: mean.freedom.value(),
        }
    }))
}

/// A series without scatter.
const NO_SERIES: Series<StandardUncertainty> =
    Series { s: StandardUncertainty::NONE, freedom: DegreesOfFreedom::KNOWN };

fn series_of(call: Call, series: cupwright_series) -> Result<Series<StandardUncertainty>, Refused> {
    Ok(Series { s: checked!(call, series.s)?, freedom: checked!(call, series.degrees_of_freedom)? })
}

/// Standard uncertainty of a mean of n readings, from the scatter of earlier series.
///
/// ```text
/// u = s_p/√n,   s_p² = Σ νᵢ sᵢ²/Σ νᵢ,   ν = Σ νᵢ
/// ```
///
/// Where there are more than ten series, pool in steps, with n = 1. Source: GUM 4.2.4.
///
/// @param series The series.
/// @param count How many, {TermCount}.
/// @param readings How many readings the mean is of, {ReadingCount}.
/// @param[out] standard The uncertainty of the mean.
///
/// Fails with CUPWRIGHT_STATUS_OUT_OF_RANGE for no series or more than ten.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_uncertainty_pooled(
    series: *const cupwright_series,
    count: usize,
    readings: i32,
    standard: *mut cupwright_standard,
    error: *mut cupwright_error,
) -> i32 {
    answer!(standard, error, |call| Ok({
        let given = given!(call, series, count: TermCount)?;
        let mut places = [NO_SERIES; MOST_TERMS];
        let series = each(given, &mut places, |series| series_of(call, series))?;
        self::standard(call.core(uncertainty::pooled(series, counted!(call, readings)?))?)
    }))
}

/// A strength from repeated readings, by the rule of cupwright_reading_combine(), and its standard
/// uncertainty.
///
/// ```text
/// u = s_r/√n, with the ν of s_r             one reading, or several that agree
/// u = s/√n,   ν = n − 1, s their own        where they do not: two so far, or their median
/// ```
///
/// Readings that do not agree have shown that s_r is not their scatter.
///
/// @param strength_pct The readings, each {Strength}.
/// @param count How many, {ReadingCount}.
/// @param repeatability One's own repeatability s_r.
/// @param[out] read The strength.
///
/// Fails with CUPWRIGHT_STATUS_OUT_OF_RANGE for no reading or more than ten.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_uncertainty_of_readings(
    strength_pct: *const f64,
    count: usize,
    repeatability: *const cupwright_repeatability_estimate,
    read: *mut cupwright_strength_estimate,
    error: *mut cupwright_error,
) -> i32 {
    answer!(read, error, |call| Ok({
        let ask = |readings: &[_]| {
            let own = estimate::repeatability(call, given!(call, repeatability)?)?;
            call.core(uncertainty::of_readings(readings, &Series::from(own)))
        };
        of_read(&with_readings(call, given!(call, strength_pct, count: ReadingCount)?, ask)?)
    }))
}

fn of_read(read: &Estimate<Strength>) -> cupwright_strength_estimate {
    cupwright_strength_estimate {
        strength_pct: read.value.value(),
        u_strength_pct: read.u.value(),
        nu_strength: read.freedom.value(),
    }
}

fn error_of(call: Call, one: cupwright_standard) -> Result<Standard<StandardUncertainty>, Refused> {
    Ok(Standard { u: checked!(call, one.u)?, freedom: checked!(call, one.degrees_of_freedom)? })
}

/// Several independent errors of one value, u² = Σ uᵢ²: the scatter of readings and the step of
/// their display, a thermometer and its place. Source: GUM 5.1.2, G.4.1.
///
/// @param errors Their uncertainties, all in one unit.
/// @param count How many, {TermCount}.
/// @param[out] standard All of them together.
///
/// Fails with CUPWRIGHT_STATUS_OUT_OF_RANGE for none or more than ten;
/// CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE past the range of the uncertainty.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_uncertainty_together(
    errors: *const cupwright_standard,
    count: usize,
    standard: *mut cupwright_standard,
    error: *mut cupwright_error,
) -> i32 {
    answer!(standard, error, |call| Ok({
        let given = given!(call, errors, count: TermCount)?;
        let mut places = [Standard::NONE; MOST_TERMS];
        let errors = each(given, &mut places, |one| error_of(call, one))?;
        self::standard(call.core(uncertainty::together(errors))?)
    }))
}

/// Standard uncertainty of an error that lies within ± a (type B evaluation).
///
/// ```text
/// u = a/√3 rectangular,   a/√6 triangular,   a/√2 arcsine
/// ```
///
/// It counts as known; where the limit itself is a guess, cupwright_uncertainty_freedom_of_doubt()
/// says how well. Source: GUM 4.3.7, 4.3.9, and H.1 for a cyclic temperature.
///
/// @param limit The limit a, {StandardUncertainty}.
/// @param shape What is known of the error: one of enum cupwright_shape.
/// @param[out] standard Its uncertainty.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_uncertainty_of_limit(
    limit: f64,
    shape: i32,
    standard: *mut cupwright_standard,
    error: *mut cupwright_error,
) -> i32 {
    answer!(standard, error, |call| Ok({
        let (limit, shape) = (checked!(call, limit)?, shape_of(call, shape)?);
        self::standard(uncertainty::of_limit(limit, shape))
    }))
}

/// Standard uncertainty that a display of step d adds, u = d/√12. Source: GUM F.2.2.1.
///
/// @param step The step d, {StandardUncertainty}.
/// @param[out] standard Its uncertainty.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_uncertainty_of_display(
    step: f64,
    standard: *mut cupwright_standard,
    error: *mut cupwright_error,
) -> i32 {
    answer!(standard, error, |call| Ok({
        self::standard(uncertainty::of_display(checked!(call, step)?))
    }))
}

/// Standard uncertainty from a certificate that says "± U, k", u = U/k. Source: GUM 4.3.3.
///
/// @param expanded The expanded uncertainty U, {StandardUncertainty}.
/// @param coverage_factor The k, {CoverageFactor}; most often 2.
/// @param[out] standard The standard uncertainty.
///
/// Fails with CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE for a U at the end of its range over a k below
/// one.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_uncertainty_of_expanded(
    expanded: f64,
    coverage_factor: f64,
    standard: *mut cupwright_standard,
    error: *mut cupwright_error,
) -> i32 {
    answer!(standard, error, |call| Ok({
        let (expanded, factor) = (checked!(call, expanded)?, checked!(call, coverage_factor)?);
        self::standard(call.core(uncertainty::of_expanded(expanded, factor))?)
    }))
}

/// Degrees of freedom of an uncertainty that is itself uncertain by Δu/u, ν = ½ (Δu/u)⁻². A quarter
/// gives 8; less than 0.0022 % counts as known. Source: GUM G.4.2, equation G.3.
///
/// @param doubt_pct How uncertain the uncertainty is, over itself, {Doubt}.
/// @param[out] degrees_of_freedom {DegreesOfFreedom}.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_uncertainty_freedom_of_doubt(
    doubt_pct: f64,
    degrees_of_freedom: *mut f64,
    error: *mut cupwright_error,
) -> i32 {
    answer!(degrees_of_freedom, error, |call| Ok({
        uncertainty::freedom_of_doubt(checked!(call, doubt_pct)?).value()
    }))
}

fn influence_of(call: Call, influence: cupwright_influence) -> Result<Influence, Refused> {
    Ok(Influence {
        sensitivity: checked!(call, influence.sensitivity)?,
        u: checked!(call, influence.u)?,
        freedom: checked!(call, influence.degrees_of_freedom)?,
    })
}

/// No influence.
const NO_INFLUENCE: cupwright_influence =
    cupwright_influence { sensitivity: 0.0, u: 0.0, degrees_of_freedom: 1.0 };

/// A budget of one's own, from sensitivities and uncertainties in any units. Of what the linear
/// rule leaves out it says nothing.
///
/// ```text
/// u² = Σ cᵢ² uᵢ²                       GUM 5.1.2
/// ν = u⁴ / Σ (cᵢ uᵢ)⁴/νᵢ               GUM G.4.1
/// ```
///
/// @param value The result, {Measurand}.
/// @param influences What moves it.
/// @param count How many, {TermCount}.
/// @param[out] budget The budget.
///
/// Fails with CUPWRIGHT_STATUS_OUT_OF_RANGE for no influence or more than ten;
/// CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE past the range of the uncertainty.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_uncertainty_combine(
    value: f64,
    influences: *const cupwright_influence,
    count: usize,
    budget: *mut cupwright_budget,
    error: *mut cupwright_error,
) -> i32 {
    answer!(budget, error, |call| Ok({
        let (value, given) = (checked!(call, value)?, given!(call, influences, count: TermCount)?);
        let mut places = [influence_of(call, NO_INFLUENCE)?; MOST_TERMS];
        let influences = each(given, &mut places, |influence| influence_of(call, influence))?;
        let made = uncertainty::combine(value, influences);
        self::budget(call.core(made.as_ref())?)
    }))
}

/// Strength of all solids in the beverage, from a reading r; see
/// cupwright_reading_total_strength().
///
/// ```text
/// T = x + s(1 − x),  x = (r + e)(1 + f)       zeroed on brew water
/// T = x                                       zeroed on distilled water
/// ```
///
/// Terms: reading, instrument e, factor f, water solids s. Leave the factor at 0 where it is to be
/// kept apart for yields and comparisons.
///
/// @param strength The reading, mean of repeats, with their scatter.
/// @param instrument The instrument's own error.
/// @param factor The coffee's refractive factor.
/// @param zero What the instrument was zeroed on: one of enum cupwright_zero.
/// @param water_solids Solids of the brew water.
/// @param[out] budget The strength and its budget, in %.
///
/// Fails with what cupwright_reading_total_strength() fails with, and
/// CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE for an uncertainty past its range.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_uncertainty_strength(
    strength: *const cupwright_strength_estimate,
    instrument: *const cupwright_instrument_uncertainty,
    factor: *const cupwright_factor_uncertainty,
    zero: i32,
    water_solids: *const cupwright_water_solids_estimate,
    budget: *mut cupwright_budget,
    error: *mut cupwright_error,
) -> i32 {
    answer!(budget, error, |call| Ok({
        let read = ReadStrength {
            reading: estimate::strength(call, given!(call, strength)?)?,
            instrument: estimate::instrument(call, given!(call, instrument)?)?,
            factor: estimate::factor(call, given!(call, factor)?)?,
            zero: zero_of(call, zero)?,
            water_solids: estimate::water_solids(call, given!(call, water_solids)?)?,
        };
        let made = uncertainty::strength(&read);
        self::budget(call.core(made.as_ref())?)
    }))
}

/// Strength from a reading in degrees Brix, T = k B; see cupwright_reading_strength_of_brix().
///
/// ```text
/// u(T)² = (k u(B))² + (T u(k)/k)²
/// ```
///
/// Terms: Brix, factor. The factor's error is common to all readings of one coffee: where it is given
/// apart for yields and comparisons, let it be 0 here.
///
/// @param brix The reading.
/// @param factor The coffee's refractive factor k.
/// @param[out] budget The strength, %, and its budget.
///
/// Fails with CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE for a strength or an uncertainty past its range.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_uncertainty_strength_of_brix(
    brix: *const cupwright_brix_estimate,
    factor: *const cupwright_refractive_factor_estimate,
    budget: *mut cupwright_budget,
    error: *mut cupwright_error,
) -> i32 {
    answer!(budget, error, |call| Ok({
        let brix = estimate::brix(call, given!(call, brix)?)?;
        let factor = estimate::refractive_factor(call, given!(call, factor)?)?;
        self::budget(call.core(uncertainty::strength_of_brix(&brix, &factor).as_ref())?)
    }))
}

/// The flow-through form of the yield, E = T B/D; see cupwright_extraction_flow_through_yield().
///
/// ```text
/// (u(E)/E)² = (u(T)/T)² + (u(B)/B)² + (u(D)/D)² + f²
/// ```
///
/// Terms: strength, beverage, dose, factor. The span of the scale cancels.
///
/// @param strength Strength.
/// @param beverage Beverage.
/// @param dose Dose.
/// @param factor The coffee's refractive factor.
/// @param[out] budget The yield and its budget, in %.
///
/// Fails with CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE for a yield above 100 % or an uncertainty past
/// its range.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_uncertainty_flow_through_yield(
    strength: *const cupwright_strength_estimate,
    beverage: *const cupwright_beverage_estimate,
    dose: *const cupwright_dose_estimate,
    factor: *const cupwright_factor_uncertainty,
    budget: *mut cupwright_budget,
    error: *mut cupwright_error,
) -> i32 {
    answer!(budget, error, |call| Ok({
        let strength = estimate::strength(call, given!(call, strength)?)?;
        let beverage = estimate::beverage(call, given!(call, beverage)?)?;
        let dose = estimate::dose(call, given!(call, dose)?)?;
        let factor = estimate::factor(call, given!(call, factor)?)?;
        let made = uncertainty::flow_through_yield(&strength, &beverage, &dose, &factor);
        of_yield(call.core(made.as_ref())?)
    }))
}

/// The steeped form of the yield, E = (W/D) T/(1 − T); see cupwright_extraction_steeped_yield().
///
/// ```text
/// (u(E)/E)² = (u(T)/[T(1 − T)])² + (u(W)/W)² + (u(D)/D)² + (f/(1 − T))²
/// ```
///
/// Terms: strength, brew water, dose, factor. The span of the scale cancels.
///
/// @param strength Strength.
/// @param water Brew water.
/// @param dose Dose.
/// @param factor The coffee's refractive factor.
/// @param[out] budget The yield and its budget, in %.
///
/// Fails with CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE for a yield above 100 % or an uncertainty past
/// its range.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_uncertainty_steeped_yield(
    strength: *const cupwright_strength_estimate,
    water: *const cupwright_water_estimate,
    dose: *const cupwright_dose_estimate,
    factor: *const cupwright_factor_uncertainty,
    budget: *mut cupwright_budget,
    error: *mut cupwright_error,
) -> i32 {
    answer!(budget, error, |call| Ok({
        let strength = estimate::strength(call, given!(call, strength)?)?;
        let water = estimate::water(call, given!(call, water)?)?;
        let dose = estimate::dose(call, given!(call, dose)?)?;
        let factor = estimate::factor(call, given!(call, factor)?)?;
        let made = uncertainty::steeped_yield(&strength, &water, &dose, &factor);
        of_yield(call.core(made.as_ref())?)
    }))
}

/// A brew with its strength, every number with its uncertainty.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_measured {
    /// Strength, all solids.
    pub strength: cupwright_strength_estimate,
    /// Dose.
    pub dose: cupwright_dose_estimate,
    /// Brew water.
    pub water: cupwright_water_estimate,
    /// Beverage.
    pub beverage: cupwright_beverage_estimate,
    /// Moisture of the dose.
    pub moisture: cupwright_moisture_estimate,
    /// Solids of the brew water.
    pub water_solids: cupwright_water_solids_estimate,
    /// Vapour lost.
    pub vapour: cupwright_vapour_estimate,
    /// Strength of the liquid kept. How it was chosen may move the yield by three points: give it
    /// an uncertainty where it is not known to be 0 or 100.
    pub held_strength: cupwright_held_strength_estimate,
    /// The scale that weighed dose, water and beverage.
    pub span: cupwright_span_uncertainty,
    /// The coffee's refractive factor.
    pub factor: cupwright_factor_uncertainty,
}

/// The core's measured brew.
fn measured_of(call: Call, measured: &cupwright_measured) -> Result<Measured, Refused> {
    Ok(Measured {
        strength: estimate::strength(call, &measured.strength)?,
        dose: estimate::dose(call, &measured.dose)?,
        water: estimate::water(call, &measured.water)?,
        beverage: estimate::beverage(call, &measured.beverage)?,
        moisture: estimate::moisture(call, &measured.moisture)?,
        water_solids: estimate::water_solids(call, &measured.water_solids)?,
        vapour: estimate::vapour(call, &measured.vapour)?,
        held_strength: estimate::held_strength(call, &measured.held_strength)?,
        span: estimate::span(call, &measured.span)?,
        factor: estimate::factor(call, &measured.factor)?,
    })
}

/// The yield by the whole mass balance; see cupwright_extraction_yield(). Terms in the order of the
/// fields. What is left of the scale's span is the vapour's, if that was not weighed.
///
/// @param measured The brew.
/// @param[out] budget The yield and its budget, in %.
///
/// Fails with what cupwright_extraction_yield() fails with, and
/// CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE for an uncertainty past its range.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_uncertainty_extraction_yield(
    measured: *const cupwright_measured,
    budget: *mut cupwright_budget,
    error: *mut cupwright_error,
) -> i32 {
    answer!(budget, error, |call| Ok({
        let measured = measured_of(call, given!(call, measured)?)?;
        let made = uncertainty::extraction_yield(&measured);
        of_yield(call.core(made.as_ref())?)
    }))
}

/// Strength that a steep will have, T = E D/(W + E D); see cupwright_extraction_steeped_strength().
///
/// ```text
/// ∂T/∂E = D W/(W + ED)²    ∂T/∂D = E W/(W + ED)²    ∂T/∂W = −E D/(W + ED)²
/// ```
///
/// Terms: yield, dose, brew water. The yield's uncertainty is how far it differs from brew to brew.
///
/// @param expected The yield to expect.
/// @param dose Dose.
/// @param water Brew water.
/// @param[out] budget The strength and its budget, in %.
///
/// Fails with CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE for a ratio, a strength or an uncertainty past
/// its range.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_uncertainty_steeped_strength(
    expected: *const cupwright_yield_estimate,
    dose: *const cupwright_dose_estimate,
    water: *const cupwright_water_estimate,
    budget: *mut cupwright_budget,
    error: *mut cupwright_error,
) -> i32 {
    answer!(budget, error, |call| Ok({
        let expected = estimate::extracted(call, given!(call, expected)?)?;
        let dose = estimate::dose(call, given!(call, dose)?)?;
        let water = estimate::water(call, given!(call, water)?)?;
        let made = uncertainty::steeped_strength(&expected, &dose, &water);
        self::budget(call.core(made.as_ref())?)
    }))
}

/// Beverage that a brew will give, B = W − r D − losses; see cupwright_retention_beverage().
///
/// Terms: brew water, dose, retention, other losses.
///
/// @param losses What the brewer keeps.
/// @param retention How uncertain its retention is.
/// @param other How uncertain its other losses are together.
/// @param dose Dose.
/// @param water Brew water.
/// @param[out] budget The beverage and its budget, in g.
///
/// Fails with what cupwright_retention_beverage() fails with, and
/// CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE for an uncertainty past its range.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_uncertainty_beverage(
    losses: *const cupwright_losses,
    retention: *const cupwright_retention_uncertainty,
    other: *const cupwright_losses_uncertainty,
    dose: *const cupwright_dose_estimate,
    water: *const cupwright_water_estimate,
    budget: *mut cupwright_budget,
    error: *mut cupwright_error,
) -> i32 {
    answer!(budget, error, |call| Ok({
        let losses = retention::losses(call, given!(call, losses)?)?;
        let held = estimate::retention(call, given!(call, retention)?)?;
        let other = estimate::losses(call, given!(call, other)?)?;
        let dose = estimate::dose(call, given!(call, dose)?)?;
        let water = estimate::water(call, given!(call, water)?)?;
        let made = uncertainty::beverage(&losses, &held, &other, &dose, &water);
        self::budget(call.core(made.as_ref())?)
    }))
}

/// Water to add for a wanted strength, A = B (T − T')/(T' − s); see
/// cupwright_dilution_water_to_reach().
///
/// ```text
/// ∂A/∂B = A/B    ∂A/∂T = B/(T' − s)    ∂A/∂s = A/(T' − s)
/// ```
///
/// Terms: beverage, strength, water solids. The wish is exact. On the scale that weighed the
/// beverage its span cancels.
///
/// @param beverage The brew.
/// @param strength Its strength.
/// @param wanted_pct Strength wanted, {Strength}.
/// @param water_solids Solids of the water that is added.
/// @param[out] budget The water and its budget, in g.
///
/// Fails with what cupwright_dilution_water_to_reach() fails with, and
/// CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE for an uncertainty past its range.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_uncertainty_water_to_reach(
    beverage: *const cupwright_beverage_estimate,
    strength: *const cupwright_strength_estimate,
    wanted_pct: f64,
    water_solids: *const cupwright_water_solids_estimate,
    budget: *mut cupwright_budget,
    error: *mut cupwright_error,
) -> i32 {
    answer!(budget, error, |call| Ok({
        let beverage = estimate::beverage(call, given!(call, beverage)?)?;
        let strength = estimate::strength(call, given!(call, strength)?)?;
        let wanted = checked!(call, wanted_pct)?;
        let water = estimate::water_solids(call, given!(call, water_solids)?)?;
        let made = uncertainty::water_to_reach(&beverage, &strength, wanted, &water);
        let about = [(Quantity::Strength, field!(wanted_pct))];
        self::budget(call.wish(&about, made.as_ref())?)
    }))
}

/// Strength after adding water, or with s = 0 milk, T' = (T B + s A)/(B + A); see
/// cupwright_dilution_strength_after_water().
///
/// ```text
/// ∂T'/∂B = (T − T')/(B + A)    ∂T'/∂T = B/(B + A)
/// ∂T'/∂A = (s − T')/(B + A)    ∂T'/∂s = A/(B + A)
/// ```
///
/// Terms: beverage, strength, addition, water solids. The span of the scale cancels.
///
/// @param beverage The brew.
/// @param strength Its strength.
/// @param added The water added.
/// @param water_solids Its solids.
/// @param[out] budget The strength and its budget, in %.
///
/// Fails with CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE for an uncertainty past its range.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_uncertainty_strength_after_water(
    beverage: *const cupwright_beverage_estimate,
    strength: *const cupwright_strength_estimate,
    added: *const cupwright_added_estimate,
    water_solids: *const cupwright_water_solids_estimate,
    budget: *mut cupwright_budget,
    error: *mut cupwright_error,
) -> i32 {
    answer!(budget, error, |call| Ok({
        let beverage = estimate::beverage(call, given!(call, beverage)?)?;
        let strength = estimate::strength(call, given!(call, strength)?)?;
        let added = estimate::added(call, given!(call, added)?)?;
        let water = estimate::water_solids(call, given!(call, water_solids)?)?;
        let made = uncertainty::strength_after_water(&beverage, &strength, &added, &water);
        self::budget(call.core(made.as_ref())?)
    }))
}

/// Temperature of two waters or brews mixed, B h(t1) + A h(t2) = (B + A) h(t); see
/// cupwright_dilution_mixed_temperature().
///
/// ```text
/// ∂t/∂B = [h(t1) − h(t)]/[(B + A) c(t)]    ∂t/∂t1 = B c(t1)/[(B + A) c(t)]    and for A, t2 alike
/// ```
///
/// Terms: mass and temperature of the one, mass and temperature of the other. A pour onto a
/// preheated brewer is such a mix, with the brewer as so much water. What the linear rule leaves
/// out is found with one specific heat.
///
/// @param hot The hotter liquid.
/// @param cold The colder one.
/// @param[out] budget The temperature, °C, and its budget, in K.
///
/// Fails with CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE for an uncertainty past its range.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_uncertainty_mixed_temperature(
    hot: *const cupwright_hot_estimate,
    cold: *const cupwright_cold_estimate,
    budget: *mut cupwright_budget,
    error: *mut cupwright_error,
) -> i32 {
    answer!(budget, error, |call| Ok({
        let hot = given!(call, hot)?;
        let (liquid, at) = (estimate::hot(call, hot)?, estimate::hot_temperature(call, hot)?);
        let cold = given!(call, cold)?;
        let (added, of) = (estimate::cold(call, cold)?, estimate::cold_temperature(call, cold)?);
        let made = uncertainty::mixed_temperature(&liquid, &at, &added, &of);
        self::budget(call.core(made.as_ref())?)
    }))
}

/// Temperature at which a liquid and a body settle, m h(t) + C t = m h(t0) + C t_b; see
/// cupwright_heat_settle().
///
/// ```text
/// ∂t/∂t0 = m c(t0)/M    ∂t/∂m = [h(t0) − h(t)]/M    ∂t/∂C = (t_b − t)/M    ∂t/∂t_b = C/M
/// M = m c(t) + C
/// ```
///
/// Terms: liquid, its temperature, heat capacity, the body's temperature. Bodies of one temperature
/// are one, of their heat capacities together. A walk from kettle to cup goes step by step: the
/// temperature that comes out is the next step's liquid, with the drop of the pour by
/// cupwright_uncertainty_together(). What the linear rule leaves out is found with one specific
/// heat.
///
/// @param liquid The liquid.
/// @param body The body.
/// @param[out] budget The temperature, °C, and its budget, in K.
///
/// Fails with CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE where the liquid would freeze, and for an
/// uncertainty past its range.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_uncertainty_settle(
    liquid: *const cupwright_liquid_estimate,
    body: *const cupwright_body_estimate,
    budget: *mut cupwright_budget,
    error: *mut cupwright_error,
) -> i32 {
    answer!(budget, error, |call| Ok({
        let liquid = given!(call, liquid)?;
        let (mass, at) = (estimate::liquid(call, liquid)?, estimate::before(call, liquid)?);
        let body = given!(call, body)?;
        let (capacity, of) = (estimate::heat_capacity(call, body)?, estimate::body(call, body)?);
        self::budget(call.core(uncertainty::settle(&mass, &at, &capacity, &of).as_ref())?)
    }))
}

/// Time to cool to a wanted temperature; see cupwright_heat_time_to_cool().
///
/// ```text
/// ∂t/∂T1 = 1/[k F(T1)]    ∂t/∂k = −t/k        F as there
/// ```
///
/// Terms: temperature now, cooling rate. The wish is exact, and the room counts as known. The law
/// itself was met within 0.8 K, which no budget counts.
///
/// @param temperature Temperature now.
/// @param to_c Temperature wanted, {Temperature}.
/// @param cooling Cooling rate.
/// @param surroundings The room.
/// @param[out] budget The time, s, and its budget.
///
/// Fails with CUPWRIGHT_STATUS_IMPOSSIBLE for a start not warmer than where cooling ends;
/// CUPWRIGHT_STATUS_INFEASIBLE for a goal that cooling does not reach;
/// CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE for a time or an uncertainty past its range.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_uncertainty_time_to_cool(
    temperature: *const cupwright_temperature_estimate,
    to_c: f64,
    cooling: *const cupwright_cooling_estimate,
    surroundings: *const cupwright_surroundings,
    budget: *mut cupwright_budget,
    error: *mut cupwright_error,
) -> i32 {
    answer!(budget, error, |call| Ok({
        let from = estimate::temperature(call, given!(call, temperature)?)?;
        let to = checked!(call, to_c)?;
        let rate = estimate::cooling(call, given!(call, cooling)?)?;
        let room = surroundings_of(call, given!(call, surroundings)?)?;
        let wait = uncertainty::time_to_cool(&from, to, &rate, &room);
        self::budget(call.wish(&[(Quantity::Temperature, field!(to_c))], wait.as_ref())?)
    }))
}

/// Temperature after a time of cooling; see cupwright_heat_temperature_after().
///
/// ```text
/// ∂T/∂T1 = F(T)/F(T1)    ∂T/∂t = −k F(T)    ∂T/∂k = −t F(T)        F as for the time to cool
/// ```
///
/// Terms: temperature now, time, cooling rate. The room counts as known. The law itself was met
/// within 0.8 K, which no budget counts.
///
/// @param temperature Temperature now.
/// @param elapsed The time.
/// @param cooling Cooling rate.
/// @param surroundings The room.
/// @param[out] budget The temperature, °C, and its budget, in K.
///
/// Fails with CUPWRIGHT_STATUS_IMPOSSIBLE for a start not warmer than where cooling ends;
/// CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE where it would freeze, and for an uncertainty past its range.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_uncertainty_temperature_after(
    temperature: *const cupwright_temperature_estimate,
    elapsed: *const cupwright_time_estimate,
    cooling: *const cupwright_cooling_estimate,
    surroundings: *const cupwright_surroundings,
    budget: *mut cupwright_budget,
    error: *mut cupwright_error,
) -> i32 {
    answer!(budget, error, |call| Ok({
        let from = estimate::temperature(call, given!(call, temperature)?)?;
        let elapsed = estimate::time(call, given!(call, elapsed)?)?;
        let rate = estimate::cooling(call, given!(call, cooling)?)?;
        let room = surroundings_of(call, given!(call, surroundings)?)?;
        let later = uncertainty::temperature_after(&from, &elapsed, &rate, &room);
        self::budget(call.core(later.as_ref())?)
    }))
}

/// Yield after a time of contact; see cupwright_extraction_yield_at_time().
///
/// ```text
/// u²(E) = Σ cᵢ cⱼ rᵢⱼ uᵢ uⱼ + (Ė u(t))²   over E∞, f, ln τ1, ln τ2
/// ∂E/∂E∞ = E/E∞    ∂E/∂f = E∞ (e^(−t/τ2) − e^(−t/τ1))    ∂E/∂ln τ1 = −E∞ f (t/τ1) e^(−t/τ1)    and for τ2 alike
/// Ė = E∞ [ (f/τ1) e^(−t/τ1) + ((1 − f)/τ2) e^(−t/τ2) ]
/// ```
///
/// Terms: the law, time. What one fit tells goes together and is one term, in points of yield:
/// counted apart it would seem far less certain within the times that were measured. How far brews
/// differ is no part of it. Source: GUM 5.2.2.
///
/// @param rates The rates.
/// @param plateau How well their plateau is known.
/// @param contact Time of contact.
/// @param[out] budget The yield, %, and its budget.
///
/// Fails with CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE for an uncertainty past its range.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_uncertainty_yield_at_time(
    rates: *const cupwright_rates,
    plateau: *const cupwright_plateau,
    contact: *const cupwright_time_estimate,
    budget: *mut cupwright_budget,
    error: *mut cupwright_error,
) -> i32 {
    answer!(budget, error, |call| Ok({
        let rates = rates_of(call, given!(call, rates)?)?;
        let plateau = plateau_of(call, given!(call, plateau)?)?;
        let contact = estimate::time(call, given!(call, contact)?)?;
        let extracted = uncertainty::yield_at_time(&rates, &plateau, &contact);
        self::budget(call.core(extracted.as_ref())?)
    }))
}

/// Time of contact after which a yield is reached; see cupwright_extraction_time_for_yield().
///
/// ```text
/// u(t) = u(E)/Ė    u(E) and Ė at that time, as for the yield
/// ```
///
/// Terms: the law. The wish is exact. Near the plateau a yield hardly grows, and no time is sure.
///
/// @param rates The rates.
/// @param plateau How well their plateau is known.
/// @param wanted_yield_pct Yield wanted, {Yield}.
/// @param[out] budget The time, s, and its budget.
///
/// Fails with CUPWRIGHT_STATUS_INFEASIBLE for a yield that is not reached within the longest time;
/// CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE for an uncertainty past its range.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_uncertainty_time_for_yield(
    rates: *const cupwright_rates,
    plateau: *const cupwright_plateau,
    wanted_yield_pct: f64,
    budget: *mut cupwright_budget,
    error: *mut cupwright_error,
) -> i32 {
    answer!(budget, error, |call| Ok({
        let rates = rates_of(call, given!(call, rates)?)?;
        let plateau = plateau_of(call, given!(call, plateau)?)?;
        let wanted = checked!(call, wanted_yield_pct)?;
        let wait = uncertainty::time_for_yield(&rates, &plateau, wanted);
        self::budget(call.wish(&[(Quantity::Yield, field!(wanted_yield_pct))], wait.as_ref())?)
    }))
}
