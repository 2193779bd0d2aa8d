//! From a number that is not quite sure to a decision: inside a band, outside, or not yet decided.

use cupwright::decision::{self, Chances, Comparison, Needed};
use cupwright::quantity::{Measurand, Measure, StandardUncertainty, Strength, Yield};
use cupwright::uncertainty::{Estimate, Standard};
use cupwright::verdict::Band;

use crate::call::{Call, Refused, answer, checked, given};
use crate::estimate::{
    self, cupwright_estimate, cupwright_factor_uncertainty, cupwright_strength_estimate,
    cupwright_yield_estimate,
};
use crate::status::cupwright_error;

/// A range of any value.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_band {
    /// Its lowest value, in the value's unit, {Measurand}.
    pub lowest: f64,
    /// Its highest, {Measurand}.
    pub highest: f64,
}

/// A range of strength and one of yield: the fields of a cupwright_window that has both.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_bands {
    /// Lowest strength inside, {Strength}.
    pub strength_lowest_pct: f64,
    /// Highest, {Strength}.
    pub strength_highest_pct: f64,
    /// Lowest yield inside, {Yield}.
    pub yield_lowest_pct: f64,
    /// Highest, {Yield}.
    pub yield_highest_pct: f64,
}

/// Probabilities that the true value lies below a band, inside, or above; together 100 %.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_chances {
    /// Below the lowest edge, {Probability}.
    pub below_pct: f64,
    /// Inside, {Probability}.
    pub inside_pct: f64,
    /// Above the highest edge, {Probability}.
    pub above_pct: f64,
}

/// What can be said of a value beside a band.
#[repr(i32)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum cupwright_decision {
    /// Inside, as surely as was asked.
    Inside = 1,
    /// Below the lowest edge, as surely as was asked.
    Below = 2,
    /// Above the highest edge, as surely as was asked.
    Above = 3,
    /// Not yet decided: too near an edge.
    NotYet = 4,
    /// Not decided, and so uncertain beside so narrow a band that no number could be called inside.
    TooUncertain = 5,
}

/// What can be said of strength and yield together.
#[repr(i32)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum cupwright_joint_decision {
    /// Both inside, as surely as was asked.
    Inside = 1,
    /// One of them or both outside, as surely as was asked: which, each says for itself.
    Outside = 2,
    /// Not yet decided.
    NotYet = 3,
}

/// The values that can be called inside.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_acceptance {
    /// The band less a guard on either side; all zero where the uncertainty is too large for any.
    pub acceptance: cupwright_band,
    /// Whether there are any: 1 or 0.
    pub has_acceptance: i32,
}

/// How many readings decide.
#[repr(i32)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum cupwright_needed {
    /// So many in all.
    Readings = 1,
    /// More than ten.
    MoreThanTen = 2,
    /// None: what they do not lessen is too large by itself, or the mean lies on an edge.
    NoneIsEnough = 3,
}

/// How many readings decide, and the number.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_readings_needed {
    /// The number, {ReadingCount}; 0 unless needed is CUPWRIGHT_NEEDED_READINGS.
    pub readings: i32,
    /// How many: one of enum cupwright_needed.
    pub needed: i32,
}

/// Strength and yield, each for itself and both together.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_joint {
    /// The strength beside its band.
    pub strength: cupwright_chances,
    /// The yield beside its band.
    pub r#yield: cupwright_chances,
    /// Probability that both are inside, {Probability}.
    pub both_pct: f64,
}

/// Two values of one kind.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_pair {
    /// The first, {Measurand}.
    pub first: f64,
    /// Its standard uncertainty, {StandardUncertainty}.
    pub u_first: f64,
    /// Its degrees of freedom, {DegreesOfFreedom}; the highest where it is as good as known.
    pub nu_first: f64,
    /// The second, {Measurand}.
    pub second: f64,
    /// Its standard uncertainty, {StandardUncertainty}.
    pub u_second: f64,
    /// Its degrees of freedom, {DegreesOfFreedom}; the highest where it is as good as known.
    pub nu_second: f64,
}

/// Two values of one kind beside each other.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_comparison {
    /// The first less the second, in their unit.
    pub difference: f64,
    /// Standard uncertainty of the difference, the common factor's included, {StandardUncertainty}.
    pub u: f64,
    /// Its degrees of freedom, {DegreesOfFreedom}; the highest where it is as good as known.
    pub degrees_of_freedom: f64,
    /// The smallest difference that could be called real, in their unit.
    pub least: f64,
    /// The largest confidence at which this one can be called real, {Probability}.
    pub confidence_pct: f64,
    /// Whether it is real at the confidence asked: 1 or 0.
    pub is_real: i32,
}

/// The core's band.
fn band_of(call: Call, band: &cupwright_band) -> Result<Band<Measurand>, Refused> {
    call.core(Band::new(checked!(call, band.lowest)?, checked!(call, band.highest)?))
}

/// The core's two bands.
fn bands_of(call: Call, bands: &cupwright_bands) -> Result<(Band<Strength>, Band<Yield>), Refused> {
    let strength = call.core(Band::new(
        checked!(call, bands.strength_lowest_pct)?,
        checked!(call, bands.strength_highest_pct)?,
    ))?;
    let extracted = call.core(Band::new(
        checked!(call, bands.yield_lowest_pct)?,
        checked!(call, bands.yield_highest_pct)?,
    ))?;
    Ok((strength, extracted))
}

/// The core's two values.
fn pair_of(call: Call, pair: &cupwright_pair) -> Result<[Estimate<Measurand>; 2], Refused> {
    let first = Estimate {
        value: checked!(call, pair.first)?,
        u: checked!(call, pair.u_first)?,
        freedom: checked!(call, pair.nu_first)?,
    };
    let second = Estimate {
        value: checked!(call, pair.second)?,
        u: checked!(call, pair.u_second)?,
        freedom: checked!(call, pair.nu_second)?,
    };
    Ok([first, second])
}

fn chances(chances: Chances) -> cupwright_chances {
    cupwright_chances {
        below_pct: chances.below.value(),
        inside_pct: chances.inside.value(),
        above_pct: chances.above.value(),
    }
}

/// Where the true value lies beside a band.
///
/// ```text
/// P(below) = F((T_L − y)/u)    P(above) = F((y − T_U)/u)    P(inside) = 1 − P(below) − P(above)
/// ```
///
/// F: Student's distribution with the estimate's ν. Nothing is supposed of the value beforehand:
/// how far the measurement alone carries, not how often brews come out inside. Error 10⁻¹². Source:
/// JCGM 106:2012, 7.
///
/// @param estimate The value.
/// @param band The band.
/// @param[out] chances The probabilities.
///
/// Fails with CUPWRIGHT_STATUS_EMPTY_BAND where the lowest edge is not below the highest.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_decision_chances(
    estimate: *const cupwright_estimate,
    band: *const cupwright_band,
    chances: *mut cupwright_chances,
    error: *mut cupwright_error,
) -> i32 {
    answer!(chances, error, |call| Ok({
        let estimate = estimate::any(call, given!(call, estimate)?)?;
        self::chances(decision::chances(&estimate, &band_of(call, given!(call, band)?)?))
    }))
}

/// Inside, below, above, or not yet decided at a confidence. Source: the three outcomes are common
/// practice; each by its probability, as in cupwright_decision_chances().
///
/// @param estimate The value.
/// @param band The band.
/// @param confidence_pct How sure the statement has to be, {Confidence}.
/// @param[out] decision What can be said: one of enum cupwright_decision.
///
/// Fails with CUPWRIGHT_STATUS_EMPTY_BAND where the lowest edge is not below the highest.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_decision_decide(
    estimate: *const cupwright_estimate,
    band: *const cupwright_band,
    confidence_pct: f64,
    decision: *mut i32,
    error: *mut cupwright_error,
) -> i32 {
    answer!(decision, error, |call| Ok({
        let estimate = estimate::any(call, given!(call, estimate)?)?;
        let band = band_of(call, given!(call, band)?)?;
        decision::decide(&estimate, &band, checked!(call, confidence_pct)?) as i32
    }))
}

/// The largest standard uncertainty with which any number can be called inside, (T_U − T_L)/(2 k),
/// with k of cupwright_uncertainty_coverage_factor().
///
/// @param band The band.
/// @param confidence_pct How sure the statement has to be, {Confidence}.
/// @param degrees_of_freedom Of the uncertainty, {DegreesOfFreedom}.
/// @param[out] u {StandardUncertainty}.
///
/// Fails with CUPWRIGHT_STATUS_EMPTY_BAND where the lowest edge is not below the highest;
/// CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE past the range of the uncertainty.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_decision_largest_uncertainty(
    band: *const cupwright_band,
    confidence_pct: f64,
    degrees_of_freedom: f64,
    u: *mut f64,
    error: *mut cupwright_error,
) -> i32 {
    answer!(u, error, |call| Ok({
        let (band, sure) = (band_of(call, given!(call, band)?)?, checked!(call, confidence_pct)?);
        let freedom = checked!(call, degrees_of_freedom)?;
        call.core(decision::largest_uncertainty(&band, sure, freedom))?.value()
    }))
}

/// The values that can be called inside: the band less a guard g on either side.
///
/// ```text
/// F(−g/u) + F(−(T_U − T_L − g)/u) = 1 − confidence       from T_L + g to T_U − g
/// ```
///
/// Both edges count; far from the other one g = t u, with the one-sided t (1.645 at 95 %).
/// cupwright_decision_decide() calls both edges inside. Source: JCGM 106:2012, 8.
///
/// @param u_value Standard uncertainty of a value, {StandardUncertainty}.
/// @param nu_value The degrees of freedom of that, {DegreesOfFreedom}.
/// @param band The band.
/// @param confidence_pct How sure the statement has to be, {Confidence}.
/// @param[out] safe The values.
///
/// Fails with CUPWRIGHT_STATUS_EMPTY_BAND where the lowest edge is not below the highest.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_decision_acceptance(
    u_value: f64,
    nu_value: f64,
    band: *const cupwright_band,
    confidence_pct: f64,
    safe: *mut cupwright_acceptance,
    error: *mut cupwright_error,
) -> i32 {
    answer!(safe, error, |call| Ok({
        let standard = Standard { u: checked!(call, u_value)?, freedom: checked!(call, nu_value)? };
        let band = band_of(call, given!(call, band)?)?;
        let safe = decision::acceptance(&standard, &band, checked!(call, confidence_pct)?);
        let (lowest, highest) =
            safe.map_or((0.0, 0.0), |safe| (safe.lowest().value(), safe.highest().value()));
        let acceptance = cupwright_band { lowest, highest };
        cupwright_acceptance { acceptance, has_acceptance: safe.is_some().into() }
    }))
}

/// What C is told of the readings needed.
fn needed(needed: Needed) -> cupwright_readings_needed {
    let (readings, needed) = match needed {
        Needed::Readings(count) => (count.count() as i32, cupwright_needed::Readings),
        Needed::MoreThanTen => (0, cupwright_needed::MoreThanTen),
        _ => (0, cupwright_needed::NoneIsEnough),
    };
    cupwright_readings_needed { readings, needed: needed as i32 }
}

/// How many readings in all decide, if their mean stays where it is.
///
/// ```text
/// u² = s²/n + rest²
/// ```
///
/// @param value The mean, {Measurand}.
/// @param u_scatter Standard deviation s of one reading, {StandardUncertainty}.
/// @param nu_scatter The degrees of freedom of that, {DegreesOfFreedom}.
/// @param u_rest What repeating does not lessen, the instrument's own error and the refractive
///     factor, {StandardUncertainty}.
/// @param nu_rest The degrees of freedom of that, {DegreesOfFreedom}.
/// @param band The band.
/// @param confidence_pct How sure the statement has to be, {Confidence}.
/// @param[out] needed How many.
///
/// Fails with CUPWRIGHT_STATUS_EMPTY_BAND where the lowest edge is not below the highest;
/// CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE for an uncertainty past its range.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_decision_readings_needed(
    value: f64,
    u_scatter: f64,
    nu_scatter: f64,
    u_rest: f64,
    nu_rest: f64,
    band: *const cupwright_band,
    confidence_pct: f64,
    needed: *mut cupwright_readings_needed,
    error: *mut cupwright_error,
) -> i32 {
    answer!(needed, error, |call| Ok({
        let mean = checked!(call, value)?;
        let scatter =
            Standard { u: checked!(call, u_scatter)?, freedom: checked!(call, nu_scatter)? };
        let rest = Standard { u: checked!(call, u_rest)?, freedom: checked!(call, nu_rest)? };
        let (band, sure) = (band_of(call, given!(call, band)?)?, checked!(call, confidence_pct)?);
        self::needed(call.core(decision::readings_needed(mean, &scatter, &rest, &band, sure))?)
    }))
}

/// Whether strength and yield are both inside: they share the reading, so their errors go together.
///
/// ```text
/// both = ∬ of the normal density with correlation r over the rectangle of the two bands
/// ```
///
/// With few degrees of freedom each edge is moved to where a normal value is exceeded as often, so
/// each alone is exact and the two go together as normal values would (a Gaussian copula: an
/// assumption). Error 10⁻¹² for what is as good as known, else 10⁻¹⁰. Source: Owen 1956, doi
/// 10.1214/aoms/1177728074, for the integral.
///
/// @param bands The two bands.
/// @param strength The strength.
/// @param extracted The yield.
/// @param correlation Correlation of the two, as in the yield's budget, {Correlation}.
/// @param[out] joint The probabilities.
///
/// Fails with CUPWRIGHT_STATUS_EMPTY_BAND where a lowest edge is not below its highest.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_decision_joint(
    bands: *const cupwright_bands,
    strength: *const cupwright_strength_estimate,
    extracted: *const cupwright_yield_estimate,
    correlation: f64,
    joint: *mut cupwright_joint,
    error: *mut cupwright_error,
) -> i32 {
    answer!(joint, error, |call| Ok({
        let (strengths, yields) = bands_of(call, given!(call, bands)?)?;
        let strength = estimate::strength(call, given!(call, strength)?)?;
        let extracted = estimate::extracted(call, given!(call, extracted)?)?;
        let together = checked!(call, correlation)?;
        let joint = decision::joint(&strength, &extracted, together, &strengths, &yields);
        cupwright_joint {
            strength: chances(joint.strength),
            r#yield: chances(joint.extracted),
            both_pct: joint.both.value(),
        }
    }))
}

/// Both inside, not both, or not yet decided at a confidence. Two values that are each inside with
/// 95 % may be so together with 90 %: what is decided of each is not decided of the cup.
///
/// @param both_pct Probability that both are inside, as cupwright_decision_joint() tells it, {Probability}.
/// @param confidence_pct How sure the statement has to be, {Confidence}.
/// @param[out] decision What can be said: one of enum cupwright_joint_decision.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_decision_decide_joint(
    both_pct: f64,
    confidence_pct: f64,
    decision: *mut i32,
    error: *mut cupwright_error,
) -> i32 {
    answer!(decision, error, |call| Ok({
        let (both, sure) = (checked!(call, both_pct)?, checked!(call, confidence_pct)?);
        decision::decide_joint(both, sure) as i32
    }))
}

fn comparison_of(of: &Comparison<StandardUncertainty>) -> cupwright_comparison {
    cupwright_comparison {
        difference: of.difference,
        u: of.standard.u.value(),
        degrees_of_freedom: of.standard.freedom.value(),
        least: of.least,
        confidence_pct: of.confidence.value(),
        is_real: of.is_real.into(),
    }
}

/// Whether two brews differ.
///
/// ```text
/// d = y₁ − y₂     real where |d| ≥ t √(u₁² + u₂²)     u²(d) = u₁² + u₂² + (f d)²
/// ```
///
/// What is common to both brews does not belong in u₁ and u₂. The refractive factor f of one coffee
/// makes a difference larger or smaller and never turns its sign, so it counts for the size of d
/// and not for whether d is real. The instrument's own error cancels in strengths as far as it is
/// the same for both readings: its zero, and most of its specification. In yields e (B₁/D₁ − B₂/D₂)
/// is left of an error e: nothing between brews of one recipe. The span of one scale cancels in
/// yields. t: the two-sided quantile. Source: GUM F.1.2.3; the test is Welch's.
///
/// @param pair The two values.
/// @param factor The coffee's refractive factor.
/// @param confidence_pct How sure the statement has to be, {Confidence}.
/// @param[out] comparison What can be said.
///
/// Fails with CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE for an uncertainty past its range.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_decision_compare(
    pair: *const cupwright_pair,
    factor: *const cupwright_factor_uncertainty,
    confidence_pct: f64,
    comparison: *mut cupwright_comparison,
    error: *mut cupwright_error,
) -> i32 {
    answer!(comparison, error, |call| Ok({
        let [first, second] = pair_of(call, given!(call, pair)?)?;
        let factor = estimate::factor(call, given!(call, factor)?)?;
        let sure = checked!(call, confidence_pct)?;
        comparison_of(&call.core(decision::compare(&first, &second, &factor, sure))?)
    }))
}
