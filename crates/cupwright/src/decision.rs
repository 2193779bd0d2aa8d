//! From a number that is not quite sure to a decision: inside a band, outside, or not yet decided.
//!
//! ```
//! use cupwright::decision::{self, Decision};
//! use cupwright::quantity::*;
//! use cupwright::uncertainty::{self, *};
//! use cupwright::verdict;
//!
//! // "1.42, twice", on a display of 0.01 % and an instrument that promises ± 0.03 %.
//! let promised = StrengthUncertainty::from_percent(0.03)?;
//! let twice = of_repeats(&[Strength::from_percent(1.42)?; 2])?;
//! let step = of_display(StrengthUncertainty::from_percent(0.01)?);
//! let strength = uncertainty::strength(&ReadStrength {
//!     reading: Estimate::with(twice.value, together(&[twice.standard(), step])?),
//!     instrument: of_limit(promised, Shape::Rectangular),
//!     factor: Standard::NONE,
//!     zero: cupwright::reading::Zero::Distilled,
//!     water_solids: Estimate::exact(WaterSolids::NONE),
//! })?
//! .estimate;
//!
//! let wanted = verdict::HOME_BREWER_2018.window.strength;
//! let chances = decision::chances(&strength, &wanted);
//! assert_eq!(format!("{:.0}", chances.inside), "96 %");
//! let sure = Confidence::from_percent(95.0)?;
//! assert_eq!(decision::decide(&strength, &wanted, sure), Decision::Inside);
//! # Ok::<(), cupwright::Error>(())
//! ```
//!
//! The true value is taken as distributed about the measured one by Student's law with the
//! estimate's degrees of freedom, and nothing is supposed of it beforehand (JCGM 106:2012, 7). So a
//! probability here says how far the measurement alone carries, not how often brews come out inside.

use crate::distribution::{Law, in_rectangle};
use crate::error::Error;
use crate::math::{max, min, sqrt};
use crate::quantity::{
    Confidence, Correlation, DegreesOfFreedom, FactorUncertainty, Measure, Probability,
    ReadingCount, Strength, Yield, computed,
};
use crate::record::record;
use crate::uncertainty::{Estimate, Standard, Uncertain, Uncertainty, coverage_factor, together};
use crate::verdict::Band;

record! {
    /// Probabilities that the true value lies below a band, inside, or above; together 100 %.
    pub struct Chances {
        /// Below the lowest edge.
        below: Probability = "below_pct",
        /// Inside.
        inside: Probability = "inside_pct",
        /// Above the highest edge.
        above: Probability = "above_pct",
    }
}

/// A distance in standard uncertainties; without uncertainty beyond all bounds, an edge (nought by
/// nought, NaN) counting as inside.
fn scaled(distance: f64, u: f64) -> f64 {
    // As far as any distribution here tells from certain.
    const CERTAIN: f64 = 1e150;
    let far = distance / u;
    if far.abs() <= CERTAIN {
        far
    } else if distance < 0.0 {
        -CERTAIN
    } else {
        CERTAIN
    }
}

/// Where the true value lies beside a band.
///
/// ```text
/// P(below) = F((T_L − y)/u)    P(above) = F((y − T_U)/u)    P(inside) = 1 − P(below) − P(above)
/// ```
///
/// Symbols: F Student's distribution with the estimate's ν, y value, u its standard uncertainty,
/// T_L and T_U edges of the band.
///
/// Error 10⁻¹². Source: JCGM 106:2012, 7.
///
/// ```
/// # use cupwright::{decision, quantity::*, uncertainty::*, verdict};
/// let read = Standard::known(StrengthUncertainty::from_percent(0.02)?);
/// let cup = Estimate::with(Strength::from_percent(1.44)?, read);
/// let chances = decision::chances(&cup, &verdict::HOME_BREWER_2018.window.strength);
/// assert_eq!(format!("inside {:.0}, above {:.0}", chances.inside, chances.above), "inside 69 %, above 31 %");
/// # Ok::<(), cupwright::Error>(())
/// ```
pub fn chances<M: Uncertain>(estimate: &Estimate<M>, band: &Band<M>) -> Chances {
    let (y, u) = (estimate.value.value(), estimate.u.value());
    let law = Law::of(estimate.freedom);
    let below = 100.0 * law.tail(scaled(y - band.lowest().value(), u));
    let above = 100.0 * law.tail(scaled(band.highest().value() - y, u));
    Chances {
        below: Probability::known(below),
        inside: Probability::known(max(100.0 - below - above, 0.0)),
        above: Probability::known(above),
    }
}

/// What can be said of a value beside a band.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[non_exhaustive]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(rename_all = "snake_case")
)]
pub enum Decision {
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

/// Inside, below, above, or not yet decided at a confidence.
///
/// ```text
/// inside, below or above where its P ≥ confidence, else not yet decided
/// ```
///
/// Symbols: P the chances of [`chances`]. Source: common practice, no source, for the three
/// outcomes; each by its probability ([`chances`]).
///
/// ```
/// # use cupwright::{decision::{self, Decision}, quantity::*, uncertainty::*, verdict};
/// let wanted = verdict::HOME_BREWER_2018.window.strength;
/// let sure = Confidence::from_percent(95.0)?;
/// let decide = |percent, u| -> Result<_, cupwright::Error> {
///     let read = Standard::known(StrengthUncertainty::from_percent(u)?);
///     let cup = Estimate::with(Strength::from_percent(percent)?, read);
///     Ok(decision::decide(&cup, &wanted, sure))
/// };
/// assert_eq!(decide(1.40, 0.02)?, Decision::Inside);
/// assert_eq!(decide(1.44, 0.02)?, Decision::NotYet);
/// assert_eq!(decide(1.49, 0.02)?, Decision::Above);
/// assert_eq!(decide(1.30, 0.10)?, Decision::TooUncertain);
/// # Ok::<(), cupwright::Error>(())
/// ```
pub fn decide<M: Uncertain>(
    estimate: &Estimate<M>,
    band: &Band<M>,
    confidence: Confidence,
) -> Decision {
    let chances = chances(estimate, band);
    let sure = |of| is_sure(of, confidence);
    if sure(chances.inside) {
        Decision::Inside
    } else if sure(chances.below) {
        Decision::Below
    } else if sure(chances.above) {
        Decision::Above
    } else if sure(inside_at_best(estimate.u.value(), Law::of(estimate.freedom), band)) {
        Decision::NotYet
    } else {
        Decision::TooUncertain
    }
}

fn is_sure(of: Probability, confidence: Confidence) -> bool {
    of.percent() >= confidence.percent()
}

fn width<M: Measure>(band: &Band<M>) -> f64 {
    band.highest().value() - band.lowest().value()
}

/// Probability of lying inside when the value is in the middle.
fn inside_at_best<M: Measure>(u: f64, law: Law, band: &Band<M>) -> Probability {
    let on_a_side = 100.0 * law.tail(scaled(0.5 * width(band), u));
    Probability::known(100.0 - on_a_side - on_a_side)
}

/// The largest standard uncertainty with which any number can be called inside.
///
/// ```text
/// u = (T_U − T_L)/(2 k)
/// ```
///
/// Symbols: u standard uncertainty, T_L and T_U edges of the band, k its [`coverage_factor`].
/// Source: JCGM 106:2012, 7, in the middle of the band, where the chance is largest.
///
/// # Errors
/// [`Error::ResultOutOfRange`] past the range of the uncertainty.
///
/// ```
/// # use cupwright::{decision, quantity::*, verdict};
/// let wanted = verdict::HOME_BREWER_2018.window.strength;
/// let sure = Confidence::from_percent(95.0)?;
/// let most = decision::largest_uncertainty(&wanted, sure, DegreesOfFreedom::KNOWN)?;
/// assert_eq!(most.to_string(), "0.077 %");
/// # Ok::<(), cupwright::Error>(())
/// ```
pub fn largest_uncertainty<M: Uncertain>(
    band: &Band<M>,
    confidence: Confidence,
    freedom: DegreesOfFreedom,
) -> Result<M::Uncertainty, Error> {
    computed(0.5 * width(band) / coverage_factor(confidence, freedom).ratio())
}

/// The values that can be called inside: the band less a guard on either side; `None` where the
/// uncertainty is too large for any.
///
/// ```text
/// F(−g/u) + F(−(T_U − T_L − g)/u) = 1 − confidence       from T_L + g to T_U − g
/// ```
///
/// Symbols: F Student's distribution, g guard, u standard uncertainty, T_L and T_U edges of the
/// band.
///
/// Both edges count; far from the other one g = t u, with the one-sided t (1.645 at 95 %). g = 2u is the
/// usual guard of ISO 14253-1 (from memory), 97.7 %. Newton's method, from below; [`decide`] calls both
/// edges inside. Source: JCGM 106:2012, 8.
///
/// ```
/// # use cupwright::{decision, quantity::*, uncertainty::*, verdict};
/// let read = Standard::known(StrengthUncertainty::from_percent(0.02)?);
/// let wanted = verdict::HOME_BREWER_2018.window.strength;
/// let safe = decision::acceptance(&read, &wanted, Confidence::from_percent(95.0)?).unwrap();
/// assert_eq!(format!("{} to {}", safe.lowest(), safe.highest()), "1.18 % to 1.42 %");
/// # Ok::<(), cupwright::Error>(())
/// ```
pub fn acceptance<M: Uncertain>(
    standard: &Standard<M::Uncertainty>,
    band: &Band<M>,
    confidence: Confidence,
) -> Option<Band<M>> {
    let (u, law) = (standard.u.value(), Law::of(standard.freedom));
    if !is_sure(inside_at_best(u, law, band), confidence) {
        return None;
    }
    let (allowed, width) = ((100.0 - confidence.percent()) / 100.0, width(band));
    let mut guard = u * law.exceeded(allowed);
    // The probability outside is convex and falls as the guard grows to half the width.
    for _ in 0..MOST_STEPS {
        let (near, near_density) = law.tail_and_density(scaled(guard, u));
        let (far, far_density) = law.tail_and_density(scaled(width - guard, u));
        let next = guard + (near + far - allowed) * u / (near_density - far_density);
        if next > guard * SETTLED && next < 0.5 * width {
            guard = next;
        } else {
            break;
        }
    }
    // Rounding may leave an edge a hair short of the confidence: a guard wider by that hair.
    let sure =
        |value| decide(&Estimate::with(value, *standard), band, confidence) == Decision::Inside;
    let mut hair = f64::EPSILON * max(band.lowest().value().abs(), band.highest().value().abs());
    for _ in 0..MOST_HAIRS {
        let lowest = M::accept(band.lowest().value() + guard)?;
        let highest = M::accept(band.highest().value() - guard)?;
        if sure(lowest) && sure(highest) {
            return Band::new(lowest, highest).ok();
        }
        guard += hair;
        hair *= 2.0;
    }
    None
}

/// A step that takes the guard no further than this leaves it where it is.
const SETTLED: f64 = 1.000_000_000_000_1;

/// Two or three are usual; far more only where the confidence is had nowhere but in the middle.
const MOST_HAIRS: u32 = 50;

/// Five are usual; near the largest uncertainty each step halves the error.
const MOST_STEPS: u32 = 60;

/// How many readings decide.
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub enum Needed {
    /// So many in all.
    Readings(ReadingCount),
    /// More than ten.
    MoreThanTen,
    /// None: what they do not lessen is too large by itself, or the mean lies on an edge.
    NoneIsEnough,
}

/// How many readings in all decide, if their mean stays where it is.
///
/// ```text
/// u² = s²/n + rest²
/// ```
///
/// Symbols: u standard uncertainty of the mean, s scatter of one reading, n readings. Source: GUM
/// 4.2.3 and 5.1.2; decided by [`decide`].
///
/// `scatter` is s, that of one reading; `rest` is what repeating does not lessen: the instrument's
/// own error and the refractive factor.
///
/// # Errors
/// [`Error::ResultOutOfRange`] for an uncertainty past its range.
///
/// ```
/// # use cupwright::{decision::{self, Needed}, quantity::*, uncertainty::*, verdict};
/// let scatter = Standard::known(StrengthUncertainty::from_percent(0.02)?);
/// let rest = Standard::known(StrengthUncertainty::from_percent(0.01)?);
/// let wanted = verdict::HOME_BREWER_2018.window.strength;
/// let sure = Confidence::from_percent(95.0)?;
/// let read = |percent| -> Result<_, cupwright::Error> {
///     let mean = Strength::from_percent(percent)?;
///     decision::readings_needed(mean, &scatter, &rest, &wanted, sure)
/// };
/// assert_eq!(read(1.425)?, Needed::Readings(ReadingCount::from_count(4.0)?));
/// assert_eq!(read(1.44)?, Needed::NoneIsEnough);
/// # Ok::<(), cupwright::Error>(())
/// ```
pub fn readings_needed<M: Uncertain>(
    mean: M,
    scatter: &Standard<M::Uncertainty>,
    rest: &Standard<M::Uncertainty>,
    band: &Band<M>,
    confidence: Confidence,
) -> Result<Needed, Error> {
    let decided = |standard| {
        let decision = decide(&Estimate::with(mean, standard), band, confidence);
        matches!(decision, Decision::Inside | Decision::Below | Decision::Above)
    };
    for n in 1..=10_u8 {
        let n = f64::from(n);
        let of_mean = computed(scatter.u.value() / sqrt(n))?;
        if decided(together(&[Standard { u: of_mean, ..*scatter }, *rest])?) {
            return Ok(Needed::Readings(ReadingCount::known(n)));
        }
    }
    // On an edge the chance stays at one half, however little is left of the scatter.
    let is_on_edge = mean == band.lowest() || mean == band.highest();
    let ever = decided(*rest) && !(is_on_edge && rest.u == M::Uncertainty::NONE);
    Ok(if ever { Needed::MoreThanTen } else { Needed::NoneIsEnough })
}

record! {
    /// Strength and yield, each for itself and both together.
    pub struct Joint {
        /// The strength beside its band.
        strength: Chances = "strength",
        /// The yield beside its band.
        extracted: Chances = "yield",
        /// Probability that both are inside.
        both: Probability = "both_pct",
    }
}

/// Whether strength and yield are both inside: they share the reading, so their errors go together.
///
/// ```text
/// both = ∬ of the normal density with correlation r over the rectangle of the two bands
/// ```
///
/// Symbols: r correlation of the two.
///
/// r: [`crate::uncertainty::Budget::correlation_with_strength`]. With few degrees of freedom each edge is moved
/// to where a normal value is exceeded as often, so each alone is exact and the two go together as
/// normal values would (a Gaussian copula: an assumption). Error 10⁻¹² for what is as good as known, else
/// 10⁻¹⁰. Source: Owen 1956, doi 10.1214/aoms/1177728074, for the integral.
///
/// ```
/// # use cupwright::{decision, quantity::*, uncertainty::*, verdict};
/// let read = Standard::known(StrengthUncertainty::from_percent(0.02)?);
/// let scale = of_limit(MassUncertainty::from_grams(0.1)?, Shape::Rectangular);
/// let strength = Estimate::with(Strength::from_percent(1.42)?, read);
/// let extracted = flow_through_yield(
///     &strength,
///     &Estimate::with(Beverage::from_grams(275.0)?, scale),
///     &Estimate::with(Dose::from_grams(18.0)?, scale),
///     &Standard::NONE,
/// )?;
/// let window = verdict::HOME_BREWER_2018.window;
/// let cup = decision::joint(
///     &strength,
///     &extracted.estimate,
///     extracted.correlation_with_strength(),
///     &window.strength,
///     &window.extracted.unwrap(),
/// );
/// assert_eq!(format!("{:.0} {:.0}", cup.strength.inside, cup.extracted.inside), "93 % 84 %");
/// // Not 78 %, as if the two had nothing to do with each other.
/// assert_eq!(format!("{:.0}", cup.both), "84 %");
/// # Ok::<(), cupwright::Error>(())
/// ```
pub fn joint(
    strength: &Estimate<Strength>,
    extracted: &Estimate<Yield>,
    correlation: Correlation,
    strength_band: &Band<Strength>,
    yield_band: &Band<Yield>,
) -> Joint {
    let (of_strength, of_yield) =
        (chances(strength, strength_band), chances(extracted, yield_band));
    let both = in_rectangle(
        edges(strength, strength_band),
        edges(extracted, yield_band),
        correlation.ratio(),
    );
    // Only rounding can bring it above either.
    let most = min(of_strength.inside.percent(), of_yield.inside.percent());
    let both = Probability::known(min(100.0 * both, most));
    Joint { strength: of_strength, extracted: of_yield, both }
}

/// What can be said of strength and yield together.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[non_exhaustive]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(rename_all = "snake_case")
)]
pub enum JointDecision {
    /// Both inside, as surely as was asked.
    Inside = 1,
    /// One of them or both outside, as surely as was asked: which, each says for itself.
    Outside = 2,
    /// Not yet decided.
    NotYet = 3,
}

/// Both inside, not both, or not yet decided at a confidence.
///
/// ```text
/// inside where both ≥ confidence, not both where 1 − both ≥ confidence, else not yet decided
/// ```
///
/// Symbols: both, the chance that strength and yield are inside. Source: common practice, no
/// source, for the three outcomes, as in [`decide`].
///
/// Two values that are each inside with 95 % may be so together with 90 %: two single decisions are not
/// one about the cup. `both` is that of [`joint`].
///
/// ```
/// # use cupwright::{decision::{self, JointDecision}, quantity::*};
/// let sure = Confidence::from_percent(95.0)?;
/// let decide = |both| -> Result<_, cupwright::Error> {
///     Ok(decision::decide_joint(Probability::from_percent(both)?, sure))
/// };
/// assert_eq!(decide(96.0)?, JointDecision::Inside);
/// assert_eq!(decide(84.0)?, JointDecision::NotYet);
/// assert_eq!(decide(3.0)?, JointDecision::Outside);
/// # Ok::<(), cupwright::Error>(())
/// ```
pub fn decide_joint(both: Probability, confidence: Confidence) -> JointDecision {
    if is_sure(both, confidence) {
        JointDecision::Inside
    } else if 100.0 - both.percent() >= confidence.percent() {
        JointDecision::Outside
    } else {
        JointDecision::NotYet
    }
}

/// The edges of a band as a standard normal value would have them.
fn edges<M: Uncertain>(estimate: &Estimate<M>, band: &Band<M>) -> (f64, f64) {
    let (y, u) = (estimate.value.value(), estimate.u.value());
    let lowest = -scaled(y - band.lowest().value(), u);
    let highest = scaled(band.highest().value() - y, u);
    let law = Law::of(estimate.freedom);
    (law.normal_equivalent(lowest), law.normal_equivalent(highest))
}

/// Two values of one kind beside each other.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Comparison<U> {
    /// The first less the second, in their unit.
    pub difference: f64,
    /// Standard uncertainty of the difference, the common factor's included.
    pub standard: Standard<U>,
    /// The smallest difference that could be called real, in their unit.
    pub least: f64,
    /// The largest confidence at which this one can be called real.
    pub confidence: Probability,
    /// Whether it is real at the confidence asked.
    pub is_real: bool,
}

/// Whether two brews differ.
///
/// ```text
/// d = y₁ − y₂     real where |d| ≥ t √(u₁² + u₂²)     u²(d) = u₁² + u₂² + (f d)²
/// ```
///
/// Symbols: y₁ and y₂ values, u₁ and u₂ their standard uncertainties, d difference, f relative
/// uncertainty of the refractive factor.
///
/// What is common to both brews does not belong in u₁ and u₂:
///
/// * the refractive factor, f, of one coffee. It makes a difference larger or smaller and never turns
///   its sign, so it counts for the size of d and not for whether d is real;
/// * the instrument's own error, as far as it is the same for both readings: its zero, and most of its
///   specification. It cancels in strengths. In yields e (B₁/D₁ − B₂/D₂) is left of an error e: nothing
///   between brews of one recipe;
/// * the span of one scale, which cancels in yields.
///
/// t: the two-sided quantile. Source: GUM F.1.2.3; the test is Welch's.
///
/// # Errors
/// [`Error::ResultOutOfRange`] for an uncertainty past its range.
///
/// ```
/// # use cupwright::{decision, quantity::*, uncertainty::*};
/// let read = Standard::known(StrengthUncertainty::from_percent(0.015)?);
/// let brew = |percent| -> Result<_, cupwright::Error> {
///     Ok(Estimate::with(Strength::from_percent(percent)?, read))
/// };
/// // The refractive factor, uncertain by 2.4 %, is the same for both.
/// let factor = Standard::known(FactorUncertainty::from_percent(2.4)?);
/// let sure = Confidence::from_percent(95.0)?;
/// let finer = decision::compare(&brew(1.44)?, &brew(1.38)?, &factor, sure)?;
/// assert!(finer.is_real);
/// let again = decision::compare(&brew(1.44)?, &brew(1.42)?, &factor, sure)?;
/// assert!(!again.is_real);
/// assert_eq!(format!("{:.3}", again.least), "0.042");
/// # Ok::<(), cupwright::Error>(())
/// ```
pub fn compare<M: Uncertain>(
    first: &Estimate<M>,
    second: &Estimate<M>,
    factor: &Standard<FactorUncertainty>,
    confidence: Confidence,
) -> Result<Comparison<M::Uncertainty>, Error> {
    let difference = first.value.value() - second.value.value();
    let own = together(&[first.standard(), second.standard()])?;
    let of_factor = computed(factor.u.fraction() * difference.abs())?;
    let common = Standard { u: of_factor, freedom: factor.freedom };
    let standard = together(&[first.standard(), second.standard(), common])?;
    let least = coverage_factor(confidence, own.freedom).ratio() * own.u.value();
    let far = scaled(difference.abs(), own.u.value());
    let chance = if difference == 0.0 { 1.0 } else { 2.0 * Law::of(own.freedom).tail(far) };
    Ok(Comparison {
        difference,
        standard,
        least,
        confidence: Probability::known(100.0 * (1.0 - chance)),
        is_real: difference != 0.0 && difference.abs() >= least,
    })
}
