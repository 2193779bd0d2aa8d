//! How sure a number is: standard uncertainties, and budgets that carry them through the models.
//!
//! The rules are those of the GUM, the Guide to the expression of uncertainty in measurement
//! (JCGM 100:2008); its clauses are cited from memory, but for those that check values come from.
//!
//! | question | functions |
//! |---|---|
//! | how sure is an input? | [`of_repeats`], [`pooled`], [`of_limit`], [`of_display`], [`of_expanded`], [`freedom_of_doubt`] |
//! | and several errors of it? | [`together`] |
//! | and the strength read? | [`of_readings`], [`strength_of_brix`], [`strength`] |
//! | and the yield? | [`flow_through_yield`], [`steeped_yield`], [`extraction_yield`] |
//! | and what is corrected or mixed? | [`water_to_reach`], [`strength_after_water`], [`mixed_temperature`] |
//! | and how hot, and for how long? | [`settle`], [`time_to_cool`], [`temperature_after`] |
//! | and how much is extracted, and by when? | [`yield_at_time`], [`time_for_yield`] |
//! | and what a recipe predicts? | [`steeped_strength`], [`beverage`] |
//! | and anything else? | [`combine`] |
//! | what to say? | [`Estimate::expanded`], [`Budget::dominant`], and [`crate::decision`] |
//!
//! ```text
//! u_c² = Σ cᵢ² uᵢ²                       combined standard uncertainty, GUM 5.1.2
//! ν_eff = u_c⁴ / Σ (cᵢ uᵢ)⁴/νᵢ           effective degrees of freedom, GUM G.4.1
//! U = k u_c,  k = t(ν_eff)               expanded uncertainty, GUM G.3
//! ```
//!
//! # Errors that several inputs share
//!
//! They are inputs of their own (GUM F.1.2.3), so no correlation is ever needed between inputs:
//!
//! * the **span** of one scale, a relative error common to dose, water and beverage. It cancels in
//!   every ratio of them, exactly, and so is no term of [`flow_through_yield`], [`steeped_yield`],
//!   [`steeped_strength`] and [`water_to_reach`]. In [`extraction_yield`] what is left of it is
//!   the vapour's, if that was not weighed;
//! * the **refractive factor**, a relative error common to all readings of one coffee. Keep it out of the
//!   strength's own uncertainty and pass it as `factor`, so that it can be dropped where two brews of
//!   one coffee are compared ([`crate::decision::compare`]);
//! * what a **law of extraction** has from one fit, its level, share and times, goes together and is one term
//!   ([`Rates`], [`Plateau`]);
//! * the **instrument's own error**, common to all its readings. It belongs in what one cup is judged by and
//!   cancels where the strengths of two are compared: leave it out of both.
//!
//! # Where the linear rule ends
//!
//! Each budget says what the rule leaves out, by the note to GUM 5.1.2: [`Budget::second_order`]. The derivatives they need are differences of the model's values up to one standard
//! uncertainty up and down in each input and each pair of inputs. They cover curvature and products
//! of normal inputs. The inputs of a brew weighed on a kitchen scale change u by less than a hundredth; a
//! dose of 3 g ± 0.3 g by four. Of 3 g ± 3 g nothing can be said beyond the rule: one
//! uncertainty down there is no coffee. `tests/reference/monte_carlo.py` draws a million brews of each kind.
//!
//! The shape of the result's distribution is taken as Student's whatever the inputs are. Where one
//! rectangular limit dominates, a 95 % interval is a tenth too wide.

mod rates;

pub use rates::{Plateau, Rates, time_for_yield, yield_at_time};

use crate::distribution::Law;
use crate::error::Error;
use crate::extraction::{self, Balance, Brew};
use crate::heat::{Body, Surroundings};
use crate::math::{max, min, sqrt, square};
use crate::quantity::{
    Addition, ApparentRetention, Beverage, BrewWater, Brix, BrixUncertainty, Confidence,
    CoolingRate, CoolingRateUncertainty, Correlation, CoverageFactor, DegreesOfFreedom, Dose,
    Doubt, FactorUncertainty, FittedHoldUp, HeatCapacity, HeatCapacityUncertainty, HeldStrength,
    Liquid, MassUncertainty, Measurand, Measure, Moisture, Quantity, ReadingCount,
    RefractiveFactor, RepeatCount, Repeatability, RetentionUncertainty, Sensitivity, Share,
    ShareUncertainty, SpanUncertainty, StandardUncertainty, Strength, StrengthUncertainty,
    Temperature, TemperatureUncertainty, TermCount, Time, TimeConstant, TimeConstantUncertainty,
    TimeUncertainty, Vapour, VesselTemperature, WaterSolids, WaterSolidsUncertainty, Yield,
    YieldUncertainty, computed,
};
use crate::reading::{self, Agreement, Zero};
use crate::record::record;
use crate::retention::{self, Losses};
use crate::{dilution, heat, ratio, water};

/// A quantity that is a standard uncertainty.
pub trait Uncertainty: Measure {
    /// Not uncertain at all.
    const NONE: Self;
}

/// A quantity that has a standard uncertainty, and which.
pub trait Uncertain: Measure {
    /// Its standard uncertainty.
    type Uncertainty: Uncertainty;
}

macro_rules! uncertainties {
    ($($of:ident: $($quantity:ident),*;)+) => {$(
        impl Uncertainty for $of {
            const NONE: Self = Self::known(0.0);
        }
        $(impl Uncertain for $quantity {
            type Uncertainty = $of;
        })*
    )+};
}
uncertainties! {
    BrixUncertainty: Brix;
    MassUncertainty: Dose, BrewWater, Beverage, Addition, Liquid, Vapour, FittedHoldUp;
    StrengthUncertainty: Strength, Repeatability;
    YieldUncertainty: Yield;
    ShareUncertainty: Moisture, HeldStrength, Share;
    TemperatureUncertainty: Temperature, VesselTemperature;
    WaterSolidsUncertainty: WaterSolids;
    RetentionUncertainty: ApparentRetention;
    SpanUncertainty:;
    FactorUncertainty: RefractiveFactor;
    HeatCapacityUncertainty: HeatCapacity;
    CoolingRateUncertainty: CoolingRate;
    TimeConstantUncertainty: TimeConstant;
    TimeUncertainty: Time;
    StandardUncertainty: Measurand;
}

/// A standard uncertainty and how well it is itself known.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(deny_unknown_fields)
)]
pub struct Standard<U> {
    /// The standard uncertainty.
    pub u: U,
    /// Its degrees of freedom ν.
    #[cfg_attr(feature = "serde", serde(rename = "degrees_of_freedom"))]
    pub freedom: DegreesOfFreedom,
}

impl<U: Uncertainty> Standard<U> {
    /// No uncertainty.
    pub const NONE: Self = Self::known(U::NONE);

    /// An uncertainty as good as known.
    pub const fn known(u: U) -> Self {
        Self { u, freedom: DegreesOfFreedom::KNOWN }
    }
}

/// A value with its standard uncertainty, in the same unit; of a refractive factor and of a time constant relative to
/// it.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(
        deny_unknown_fields,
        bound(
            serialize = "M: serde::Serialize, M::Uncertainty: serde::Serialize",
            deserialize = "M: serde::Deserialize<'de>, M::Uncertainty: serde::Deserialize<'de>"
        )
    )
)]
pub struct Estimate<M: Uncertain> {
    /// The value.
    pub value: M,
    /// Its standard uncertainty.
    pub u: M::Uncertainty,
    /// The degrees of freedom ν of that.
    #[cfg_attr(feature = "serde", serde(rename = "degrees_of_freedom"))]
    pub freedom: DegreesOfFreedom,
}

/// An interval around a value that holds the true one with some confidence.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Expanded<U> {
    /// How many standard uncertainties it reaches to either side.
    pub factor: CoverageFactor,
    /// How far it reaches to either side.
    pub half_width: U,
}

impl<M: Uncertain> Estimate<M> {
    /// A value that is not uncertain.
    pub const fn exact(value: M) -> Self {
        Self::with(value, Standard::NONE)
    }

    /// A value with an uncertainty found apart from it.
    pub const fn with(value: M, standard: Standard<M::Uncertainty>) -> Self {
        Self { value, u: standard.u, freedom: standard.freedom }
    }

    /// Its uncertainty apart from it.
    pub const fn standard(&self) -> Standard<M::Uncertainty> {
        Standard { u: self.u, freedom: self.freedom }
    }

    /// Expanded uncertainty for a confidence, "1.44 % ± 0.05 %".
    ///
    /// ```text
    /// U = k u
    /// ```
    ///
    /// Symbols: U half-width, k [`coverage_factor`], u standard uncertainty. Source: GUM G.3.
    ///
    /// # Errors
    /// [`Error::ResultOutOfRange`] for a half-width past the range of the uncertainty.
    ///
    /// ```
    /// # use cupwright::{quantity::*, uncertainty::{Estimate, Standard}};
    /// let strength = Estimate::with(
    ///     Strength::from_percent(1.44)?,
    ///     Standard::known(StrengthUncertainty::from_percent(0.02)?),
    /// );
    /// let sure = strength.expanded(Confidence::from_percent(95.0)?)?;
    /// assert_eq!(format!("{} ± {}", strength.value, sure.half_width), "1.44 % ± 0.039 %");
    /// # Ok::<(), cupwright::Error>(())
    /// ```
    pub fn expanded(&self, confidence: Confidence) -> Result<Expanded<M::Uncertainty>, Error> {
        let factor = coverage_factor(confidence, self.freedom);
        Ok(Expanded { factor, half_width: computed(factor.ratio() * self.u.value())? })
    }
}

/// Coverage factor: the two-sided quantile of Student's distribution.
///
/// ```text
/// P(|T| ≤ k) = confidence,   T of ν degrees of freedom, any ν from 1, whole or not
/// ```
///
/// Symbols: k coverage factor, ν degrees of freedom.
///
/// At [`DegreesOfFreedom::KNOWN`] the normal distribution's, 2·10⁻⁹ from what ν = 10⁹ would give.
/// Relative error below 10⁻¹¹. Source: GUM G.3.
///
/// ```
/// # use cupwright::{quantity::*, uncertainty};
/// let sure = Confidence::from_percent(95.0)?;
/// let from_three_readings = uncertainty::coverage_factor(sure, DegreesOfFreedom::from_count(2.0)?);
/// assert_eq!(from_three_readings.to_string(), "4.30");
/// assert_eq!(uncertainty::coverage_factor(sure, DegreesOfFreedom::KNOWN).to_string(), "1.96");
/// # Ok::<(), cupwright::Error>(())
/// ```
pub fn coverage_factor(confidence: Confidence, freedom: DegreesOfFreedom) -> CoverageFactor {
    let either_side = (100.0 - confidence.percent()) / 200.0;
    CoverageFactor::known(Law::of(freedom).exceeded(either_side))
}

/// Mean of repeats and its standard uncertainty (type A evaluation).
///
/// ```text
/// u = s/√n,   s² = Σ(x − x̄)²/(n − 1),   ν = n − 1
/// ```
///
/// Symbols: u standard uncertainty of the mean, s scatter, x repeats, n how many, ν degrees of
/// freedom.
///
/// Two or three repeats say little about their own scatter: then [`pooled`] from earlier series is better.
/// Repeats that are all equal give zero, because the display hides the scatter: put [`of_display`]
/// beside it, [`together`]. Source: GUM 4.2.
///
/// # Errors
/// [`Error::OutOfRange`] for fewer than 2 or more than 100 values; [`Error::ResultOutOfRange`]
/// for a scatter past the range of the uncertainty.
///
/// ```
/// # use cupwright::{quantity::*, uncertainty};
/// let read = [1.43, 1.45, 1.44].map(|v| Strength::from_percent(v).unwrap());
/// let strength = uncertainty::of_repeats(&read)?;
/// assert_eq!(format!("{} ± {}", strength.value, strength.u), "1.44 % ± 0.006 %");
/// assert_eq!(strength.freedom.count(), 2.0);
///
/// // "1.44, twice", on a display that steps by 0.01 %.
/// let twice = uncertainty::of_repeats(&[Strength::from_percent(1.44)?; 2])?;
/// let step = uncertainty::of_display(StrengthUncertainty::from_percent(0.01)?);
/// let both = uncertainty::together(&[twice.standard(), step])?;
/// assert_eq!(both.u.to_string(), "0.003 %");
/// # Ok::<(), cupwright::Error>(())
/// ```
pub fn of_repeats<M: Uncertain>(repeats: &[M]) -> Result<Estimate<M>, Error> {
    let n = RepeatCount::from_count(repeats.len() as f64)?.count();
    // From the first one on, so that equal repeats have no scatter of rounding.
    let first = repeats.first().map_or(0.0, |x| x.value());
    let mean = first + repeats.iter().map(|x| x.value() - first).sum::<f64>() / n;
    let squares = repeats.iter().map(|x| square(x.value() - mean)).sum::<f64>();
    Ok(Estimate {
        value: computed(mean)?,
        u: computed(sqrt(squares / (n - 1.0) / n))?,
        freedom: DegreesOfFreedom::known(n - 1.0),
    })
}

/// The scatter of one reading, as a series tells it: not that of a mean.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Series<U> {
    /// Standard deviation s of its readings.
    pub s: U,
    /// One less than their number, ν.
    pub freedom: DegreesOfFreedom,
}

/// One's own repeatability, as [`crate::calibrate::repeatability`] tells it.
impl From<Estimate<Repeatability>> for Series<StrengthUncertainty> {
    fn from(own: Estimate<Repeatability>) -> Self {
        Self { s: StrengthUncertainty::known(own.value.percent()), freedom: own.freedom }
    }
}

/// Standard uncertainty of a mean of n readings, from the scatter of earlier series.
///
/// ```text
/// u = s_p/√n,   s_p² = Σ νᵢ sᵢ²/Σ νᵢ,   ν = Σ νᵢ
/// ```
///
/// Symbols: u standard uncertainty, s_p pooled scatter, n readings in the mean.
///
/// Each series is its standard deviation sᵢ with νᵢ, one less than its number of readings. Source:
/// GUM 4.2.4.
///
/// # Errors
/// [`Error::OutOfRange`] for no series or more than ten; pool in steps, with n = 1, where there are more.
///
/// ```
/// # use cupwright::{quantity::*, uncertainty::{self, Series}};
/// let series = |s, nu| -> Result<_, cupwright::Error> {
///     let s = StrengthUncertainty::from_percent(s)?;
///     Ok(Series { s, freedom: DegreesOfFreedom::from_count(nu)? })
/// };
/// let history = [series(0.010, 4.0)?, series(0.014, 6.0)?, series(0.008, 2.0)?];
/// let twice = uncertainty::pooled(&history, ReadingCount::from_count(2.0)?)?;
/// assert_eq!((twice.u.to_string(), twice.freedom.count()), ("0.008 %".to_string(), 12.0));
/// # Ok::<(), cupwright::Error>(())
/// ```
pub fn pooled<U: Uncertainty>(
    series: &[Series<U>],
    readings: ReadingCount,
) -> Result<Standard<U>, Error> {
    TermCount::from_count(series.len() as f64)?;
    let freedom = series.iter().map(|s| s.freedom.count()).sum::<f64>();
    let squares = series.iter().map(|s| s.freedom.count() * square(s.s.value())).sum::<f64>();
    Ok(Standard {
        u: computed(sqrt(squares / freedom / readings.count()))?,
        freedom: at_most_known(freedom),
    })
}

/// A strength from repeated readings, by the rule of [`reading::combine`], and its standard uncertainty.
///
/// ```text
/// u = s_r/√n, with the ν of s_r             one reading, or several that agree
/// u = s/√n,   ν = n − 1, s their own        where they do not: two so far, or their median
/// ```
///
/// Symbols: u standard uncertainty of the value, s_r repeatability, n readings, ν degrees of
/// freedom. Source: GUM 4.2.4 and 4.2.3, after the rule of ISO 5725-6.
///
/// Readings that do not agree have shown that s_r is not their scatter. Where that was chance, the
/// median of three scatters by 0.92 s_r, told 1.17 s_r on the average of squares; one reading in five
/// off by 6 s_r: by 2.1, told 2.3 (simulated).
///
/// # Errors
/// As [`reading::combine`]; [`Error::OutOfRange`] for an s_r outside the range of [`Repeatability`].
///
/// ```
/// # use cupwright::{quantity::*, uncertainty::{self, Series}};
/// let s = StrengthUncertainty::from_percent(0.010)?;
/// let own = Series { s, freedom: DegreesOfFreedom::from_count(12.0)? };
/// let read = |percent: &[f64]| -> Result<_, cupwright::Error> {
///     let mut readings = [Strength::from_percent(0.0)?; 3];
///     for (reading, percent) in readings.iter_mut().zip(percent) {
///         *reading = Strength::from_percent(*percent)?;
///     }
///     let (readings, _) = readings.split_at(percent.len());
///     let strength = uncertainty::of_readings(readings, &own)?;
///     Ok(format!("{} ± {}, ν {}", strength.value, strength.u, strength.freedom))
/// };
/// assert_eq!(read(&[1.44, 1.45])?, "1.44 % ± 0.007 %, ν 12.0");
/// assert_eq!(read(&[1.44, 1.39])?, "1.42 % ± 0.025 %, ν 1.0");
/// assert_eq!(read(&[1.44, 1.39, 1.43])?, "1.43 % ± 0.015 %, ν 2.0");
/// # Ok::<(), cupwright::Error>(())
/// ```
pub fn of_readings(
    readings: &[Strength],
    one: &Series<StrengthUncertainty>,
) -> Result<Estimate<Strength>, Error> {
    let read = reading::combine(readings, Repeatability::from_percent(one.s.percent())?)?;
    let standard = match read.agreement {
        Agreement::TakeAnother | Agreement::Median if readings.len() > 1 => {
            of_repeats(readings)?.standard()
        }
        _ => pooled(&[*one], read.count)?,
    };
    Ok(Estimate::with(read.value, standard))
}

/// Degrees of freedom, where those above what stands for known stand for it too; rounding does not
/// lead below one.
fn at_most_known(freedom: f64) -> DegreesOfFreedom {
    DegreesOfFreedom::known(max(1.0, min(freedom, DegreesOfFreedom::KNOWN.count())))
}

/// What is known of an error inside its limits.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(rename_all = "snake_case")
)]
pub enum Shape {
    /// Nothing: all values inside are as likely (rectangular), u = a/√3. A specification, a rounding.
    Rectangular = 1,
    /// Values near the middle are likelier (triangular), u = a/√6.
    Triangular = 2,
    /// It swings between the limits (arcsine), u = a/√2. A thermostat.
    Arcsine = 3,
}

/// Standard uncertainty of an error that lies within ± a (type B evaluation).
///
/// ```text
/// u = a/√3 rectangular,   a/√6 triangular,   a/√2 arcsine
/// ```
///
/// Symbols: u standard uncertainty, a half the width of the limits.
///
/// The uncertainty counts as known; where the limit itself is a guess, set `freedom` by
/// [`freedom_of_doubt`]. Source: GUM 4.3.7, 4.3.9, and H.1 for a cyclic
/// temperature.
///
/// ```
/// # use cupwright::{quantity::*, uncertainty::{self, Shape}};
/// // A scale that promises ± 0.1 g.
/// let scale = uncertainty::of_limit(MassUncertainty::from_grams(0.1)?, Shape::Rectangular);
/// assert_eq!(format!("{:.3}", scale.u), "0.058 g");
/// # Ok::<(), cupwright::Error>(())
/// ```
pub fn of_limit<U: Uncertainty>(limit: U, shape: Shape) -> Standard<U> {
    let divisor = match shape {
        Shape::Rectangular => 3.0,
        Shape::Triangular => 6.0,
        Shape::Arcsine => 2.0,
    };
    Standard::known(smaller(limit, sqrt(divisor)))
}

/// An uncertainty over something above one, which cannot leave its range.
fn smaller<U: Uncertainty>(u: U, divisor: f64) -> U {
    U::accept(u.value() / divisor).unwrap_or(u)
}

/// Standard uncertainty that a display adds.
///
/// ```text
/// u = d/√12
/// ```
///
/// Symbols: u standard uncertainty, d step of the display. Source: GUM F.2.2.1.
///
/// ```
/// # use cupwright::{quantity::*, uncertainty};
/// let shown = uncertainty::of_display(StrengthUncertainty::from_percent(0.01)?);
/// assert_eq!(format!("{:.4}", shown.u), "0.0029 %");
/// # Ok::<(), cupwright::Error>(())
/// ```
pub fn of_display<U: Uncertainty>(step: U) -> Standard<U> {
    Standard::known(smaller(step, sqrt(12.0)))
}

/// Standard uncertainty from a certificate that says "± U, k".
///
/// ```text
/// u = U/k
/// ```
///
/// Symbols: u standard uncertainty, U expanded uncertainty, k coverage factor. Source: GUM 4.3.3.
///
/// # Errors
/// [`Error::ResultOutOfRange`] for a U at the end of its range over a k below one.
///
/// ```
/// # use cupwright::{quantity::*, uncertainty};
/// // A certificate: ± 0.02 g, k = 2.
/// let (limit, k) = (MassUncertainty::from_grams(0.02)?, CoverageFactor::from_ratio(2.0)?);
/// assert_eq!(uncertainty::of_expanded(limit, k)?.u.grams(), 0.01);
/// # Ok::<(), cupwright::Error>(())
/// ```
pub fn of_expanded<U: Uncertainty>(
    expanded: U,
    factor: CoverageFactor,
) -> Result<Standard<U>, Error> {
    Ok(Standard::known(computed(expanded.value() / factor.ratio())?))
}

/// Degrees of freedom of an uncertainty that is itself uncertain by Δu/u.
///
/// ```text
/// ν = ½ (Δu/u)⁻²
/// ```
///
/// Symbols: ν degrees of freedom, Δu/u relative doubt.
///
/// A quarter gives 8; less than 0.0022 % counts as known. Source: GUM G.4.2, equation G.3.
///
/// ```
/// # use cupwright::{quantity::*, uncertainty};
/// let guess = uncertainty::freedom_of_doubt(Doubt::from_percent(25.0)?);
/// assert_eq!(guess.count(), 8.0);
/// # Ok::<(), cupwright::Error>(())
/// ```
pub fn freedom_of_doubt(doubt: Doubt) -> DegreesOfFreedom {
    at_most_known(0.5 / square(doubt.percent() / 100.0))
}

/// Most terms that a budget holds.
pub const MOST_TERMS: usize = 10;

/// One line of a budget.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Term {
    /// The input.
    pub source: Quantity,
    /// How much the result changes with it, c, in the units of the two.
    pub sensitivity: f64,
    /// Its standard uncertainty, in its own unit.
    pub u: f64,
    /// The degrees of freedom of that.
    pub freedom: DegreesOfFreedom,
}

impl Term {
    /// What it contributes to the result's standard uncertainty, |c| u, in the result's unit.
    pub fn contribution(&self) -> f64 {
        (self.sensitivity * self.u).abs()
    }
}

/// The term that contributes most, and what it is worth to improve it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Dominant<U> {
    /// The term.
    pub term: Term,
    /// Its share of the variance.
    pub share: Share,
    /// What the combined standard uncertainty would be with half the term's.
    pub halved: U,
    /// What it would be without the term.
    pub gone: U,
}

/// What the linear rule leaves out, for normal inputs.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SecondOrder<U> {
    /// The combined standard uncertainty with second-order terms too. Where it differs much from the
    /// estimate's, the linear rule does not hold.
    pub u: U,
    /// How far the mean of the result lies above the result at the inputs' means, in its unit.
    pub shift: f64,
}

/// A result with its standard uncertainty, and what that is made of.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Budget<M: Uncertain> {
    /// The result, its combined standard uncertainty, and its effective degrees of freedom.
    pub estimate: Estimate<M>,
    /// What the linear rule leaves out; `None` where only sensitivities were given, and where the inputs
    /// are so uncertain that it cannot be had.
    pub second_order: Option<SecondOrder<M::Uncertainty>>,
    terms: [Option<Term>; MOST_TERMS],
}

impl<M: Uncertain> Budget<M> {
    /// The terms, in the order of the inputs.
    pub fn terms(&self) -> impl Iterator<Item = &Term> {
        self.terms.iter().flatten()
    }

    /// The term that contributes most, the first of several; `None` where nothing is uncertain.
    ///
    /// ```
    /// # use cupwright::{quantity::*, uncertainty::{self, Estimate, Standard}};
    /// let scale = Standard::known(MassUncertainty::from_grams(0.06)?);
    /// let read = Standard::known(StrengthUncertainty::from_percent(0.02)?);
    /// let extracted = uncertainty::flow_through_yield(
    ///     &Estimate::with(Strength::from_percent(1.44)?, read),
    ///     &Estimate::with(Beverage::from_grams(250.0)?, scale),
    ///     &Estimate::with(Dose::from_grams(18.0)?, scale),
    ///     &Standard::NONE,
    /// )?;
    /// let worst = extracted.dominant().unwrap();
    /// assert_eq!(worst.term.source, Quantity::Strength);
    /// assert_eq!(worst.share.to_string(), "94.5 %");
    /// assert_eq!(format!("{} → {}", extracted.estimate.u, worst.halved), "0.29 % → 0.15 %");
    /// # Ok::<(), cupwright::Error>(())
    /// ```
    pub fn dominant(&self) -> Option<Dominant<M::Uncertainty>> {
        let larger = |a: usize, b: usize| if self.squared(b) > self.squared(a) { b } else { a };
        let at = (0..MOST_TERMS).reduce(larger)?;
        let term = (*self.terms.get(at)?)?;
        let most = self.squared(at);
        let others = (0..MOST_TERMS).filter(|i| *i != at).map(|i| self.squared(i)).sum::<f64>();
        let share = Share::accept(100.0 * most / (most + others))?;
        let halved = M::Uncertainty::accept(sqrt(others + 0.25 * most))?;
        let gone = M::Uncertainty::accept(sqrt(others))?;
        Some(Dominant { term, share, halved, gone })
    }

    /// What a term contributes to the variance.
    fn squared(&self, at: usize) -> f64 {
        self.terms.get(at).copied().flatten().map_or(0.0, |term| square(term.contribution()))
    }

    /// Share of the variance that comes from some sources, as a fraction.
    fn share_of(&self, sources: &[Quantity]) -> f64 {
        let (mut of_them, mut all) = (0.0, 0.0);
        for term in self.terms() {
            let squared = square(term.contribution());
            all += squared;
            if sources.contains(&term.source) {
                of_them += squared;
            }
        }
        if all > 0.0 { of_them / all } else { 0.0 }
    }
}

/// An input of a model before it becomes a term.
pub(crate) struct Input {
    source: Quantity,
    value: f64,
    pub u: f64,
    freedom: DegreesOfFreedom,
    pub sensitivity: f64,
}

impl Input {
    pub fn new<M: Uncertain>(estimate: &Estimate<M>, sensitivity: f64) -> Self {
        Self {
            source: M::QUANTITY,
            value: estimate.value.value(),
            u: estimate.u.value(),
            freedom: estimate.freedom,
            sensitivity,
        }
    }

    /// An error whose best estimate is zero.
    pub fn error<U: Uncertainty>(standard: &Standard<U>, sensitivity: f64) -> Self {
        let (source, u) = (U::QUANTITY, standard.u.value());
        Self { source, value: 0.0, u, freedom: standard.freedom, sensitivity }
    }

    pub const fn term(&self) -> Term {
        // Adding zero turns -0 into +0.
        let sensitivity = self.sensitivity + 0.0;
        Term { source: self.source, sensitivity, u: self.u, freedom: self.freedom }
    }
}

/// The budget of a result from its inputs and its model, which takes their values in their order.
pub(crate) fn propagate<M: Uncertain, const N: usize>(
    value: M,
    inputs: [Input; N],
    model: impl Fn([f64; N]) -> f64,
) -> Result<Budget<M>, Error> {
    propagate_by(value, &inputs.each_ref().map(Input::term), inputs, model)
}

/// The same where inputs make fewer terms than they are.
pub(crate) fn propagate_by<M: Uncertain, const N: usize>(
    value: M,
    terms: &[Term],
    inputs: [Input; N],
    model: impl Fn([f64; N]) -> f64,
) -> Result<Budget<M>, Error> {
    let (more, shift) = beyond_linear(&inputs, model);
    let term = |at: usize| terms.get(at).copied();
    let (u, freedom) = combined(term);
    // A model moved to where it has no value leaves no number.
    let is_had = more.is_finite() && M::Uncertainty::accept(shift.abs()).is_some();
    let with_more = M::Uncertainty::accept(sqrt(max(square(u) + more, 0.0)));
    let second_order = with_more.filter(|_| is_had).map(|u| SecondOrder { u, shift });
    // Where a slope has no end, no uncertainty has one.
    let u = computed(if u >= 0.0 { u } else { f64::INFINITY })?;
    let estimate = Estimate { value, u, freedom };
    Ok(Budget { estimate, second_order, terms: core::array::from_fn(term) })
}

/// Combined standard uncertainty and effective degrees of freedom (Welch–Satterthwaite) of some terms,
/// ten at most.
#[inline(never)]
pub(crate) fn combined(term: impl Fn(usize) -> Option<Term>) -> (f64, DegreesOfFreedom) {
    let terms = || (0..MOST_TERMS).map_while(&term);
    let variance = terms().map(|term| square(term.contribution())).sum::<f64>();
    let mut inverse = 0.0;
    for term in terms().filter(|term| term.freedom < DegreesOfFreedom::KNOWN) {
        // Over the variance first: the fourth power of a small number may be none.
        let share = square(term.contribution()) / variance;
        inverse += share * share / term.freedom.count();
    }
    // Where nothing is uncertain the shares are not numbers.
    let freedom =
        if inverse > 0.0 { at_most_known(1.0 / inverse) } else { DegreesOfFreedom::KNOWN };
    (sqrt(variance), freedom)
}

/// Variance and shift of the mean that the linear rule leaves out.
///
/// ```text
/// variance  ΣΣ (½ f″ᵢⱼ² + f′ᵢ f‴ᵢⱼⱼ) uᵢ² uⱼ²        shift  Σ ½ f″ᵢᵢ uᵢ²
/// ```
//
// Out of line, as is what is linear, so that their stacks do not add up.
#[inline(never)]
fn beyond_linear<const N: usize>(
    inputs: &[Input; N],
    model: impl Fn([f64; N]) -> f64,
) -> (f64, f64) {
    // The model where one input is moved by so many of its uncertainties, and then another.
    let at = |i: usize, by: f64, j: usize, and_by: f64| {
        let mut moved = [0.0; N];
        for (k, (slot, input)) in moved.iter_mut().zip(inputs).enumerate() {
            *slot = input.value;
            if k == i {
                *slot += by * input.u;
            }
            if k == j {
                *slot += and_by * input.u;
            }
        }
        model(moved)
    };
    let across = |i: usize, by: f64| at(i, by, i, 0.0) - at(i, -by, i, 0.0);
    // For each input its place, what it contributes, and the model across it.
    let across_one: [f64; N] = core::array::from_fn(|i| across(i, 1.0));
    let uncertain = |(i, (input, across)): (usize, (&Input, &f64))| {
        (input.u > 0.0).then_some((i, input.sensitivity * input.u, *across))
    };
    let all = || inputs.iter().zip(&across_one).enumerate();
    let middle = at(0, 0.0, 0, 0.0);
    let (mut variance, mut shift) = (0.0, 0.0);
    for (i, slope, across_i) in all().filter_map(uncertain) {
        let bend = at(i, 1.0, i, 0.0) + at(i, -1.0, i, 0.0) - 2.0 * middle;
        let third = 4.0 * across_i - 8.0 * across(i, 0.5);
        variance += 0.5 * square(bend) + slope * third;
        shift += 0.5 * bend;
        for (j, slope_j, across_j) in all().skip(i.saturating_add(1)).filter_map(uncertain) {
            let (both, one) = (at(i, 1.0, j, 1.0), at(i, 1.0, j, -1.0));
            let (other, neither) = (at(i, -1.0, j, 1.0), at(i, -1.0, j, -1.0));
            let crossed = (both - one - other + neither) / 4.0;
            let bend_of_slope = (both + one - other - neither) / 2.0 - across_i;
            let bend_of_other = (both - one + other - neither) / 2.0 - across_j;
            variance += square(crossed) + slope * bend_of_slope + slope_j * bend_of_other;
        }
    }
    (variance, shift)
}

/// Several independent errors of one value: the scatter of readings and the step of their display,
/// a thermometer and its place.
///
/// ```text
/// u² = Σ uᵢ²,   ν = u⁴/Σ (uᵢ⁴/νᵢ)
/// ```
///
/// Symbols: uᵢ and νᵢ standard uncertainties and degrees of freedom, u and ν those of all together.
/// Source: GUM 5.1.2, G.4.1.
///
/// # Errors
/// [`Error::OutOfRange`] for none or more than ten; [`Error::ResultOutOfRange`] past the range of the
/// uncertainty.
///
/// ```
/// # use cupwright::{quantity::*, uncertainty};
/// // A thermometer good to 0.3 K, in a place good to 0.4 K.
/// let error = |kelvin| -> Result<_, cupwright::Error> {
///     Ok(uncertainty::Standard::known(TemperatureUncertainty::from_kelvin(kelvin)?))
/// };
/// let both = uncertainty::together(&[error(0.3)?, error(0.4)?])?;
/// assert_eq!(both.u.to_string(), "0.50 K");
/// # Ok::<(), cupwright::Error>(())
/// ```
pub fn together<U: Uncertainty>(errors: &[Standard<U>]) -> Result<Standard<U>, Error> {
    TermCount::from_count(errors.len() as f64)?;
    let (u, freedom) = combined(|at| errors.get(at).map(|one| Input::error(one, 1.0).term()));
    Ok(Standard { u: computed(u)?, freedom })
}

record! {
    /// What moves a result, for a budget of one's own.
    pub struct Influence {
        /// How much the result changes with it.
        sensitivity: Sensitivity = "sensitivity",
        /// Its standard uncertainty.
        u: StandardUncertainty = "u",
        /// The degrees of freedom of that.
        freedom: DegreesOfFreedom = "degrees_of_freedom",
    }
}

/// A budget of one's own, from sensitivities and uncertainties in any units.
///
/// ```text
/// u² = Σ (cᵢ uᵢ)²,   ν = u⁴/Σ ((cᵢ uᵢ)⁴/νᵢ)
/// ```
///
/// Symbols: cᵢ sensitivities, uᵢ and νᵢ standard uncertainties and degrees of freedom, u and ν the
/// result's. Source: GUM 5.1.2, G.4.1.
///
/// # Errors
/// [`Error::OutOfRange`] for no term or more than ten;
/// [`Error::ResultOutOfRange`] past the range of [`StandardUncertainty`].
///
/// ```
/// # use cupwright::{quantity::*, uncertainty::{self, Influence}};
/// // A kettle's thermometer reads to 0.3 K, its place to 0.5 K, and the pour is uncertain by 1 K.
/// let part = |u| -> Result<_, cupwright::Error> {
///     let (sensitivity, u) = (Sensitivity::from_number(1.0)?, StandardUncertainty::from_number(u)?);
///     Ok(Influence { sensitivity, u, freedom: DegreesOfFreedom::KNOWN })
/// };
/// let parts = [part(0.3)?, part(0.5)?, part(1.0)?];
/// let at_grounds = uncertainty::combine(Measurand::from_number(92.0)?, &parts)?;
/// assert_eq!(format!("{:.2}", at_grounds.estimate.u), "1.16");
/// # Ok::<(), cupwright::Error>(())
/// ```
pub fn combine(value: Measurand, influences: &[Influence]) -> Result<Budget<Measurand>, Error> {
    TermCount::from_count(influences.len() as f64)?;
    let term = |at: usize| {
        influences.get(at).map(|influence| Term {
            source: Quantity::StandardUncertainty,
            sensitivity: influence.sensitivity.number(),
            u: influence.u.number(),
            freedom: influence.freedom,
        })
    };
    let (u, freedom) = combined(term);
    let estimate = Estimate { value, u: computed(u)?, freedom };
    Ok(Budget { estimate, second_order: None, terms: core::array::from_fn(term) })
}

/// A relative error of one percent, as the models below take it.
const PERCENT: f64 = 0.01;

record! {
    /// What a strength is read from.
    pub struct ReadStrength {
        /// The reading, mean of repeats, with their scatter.
        reading: Estimate<Strength> = "reading",
        /// The instrument's own error, common to all its readings: its specification, its zero.
        instrument: Standard<StrengthUncertainty> = "instrument",
        /// The coffee's refractive factor, relative.
        factor: Standard<FactorUncertainty> = "factor",
        /// What the instrument was zeroed on.
        zero: Zero = "zero",
        /// Solids of the brew water.
        water_solids: Estimate<WaterSolids> = "water_solids",
    }
}

/// Strength of all solids in the beverage, from a reading r.
///
/// ```text
/// T = x + s(1 − x),  x = (r + e)(1 + f)       zeroed on brew water
/// T = x                                       zeroed on distilled water
/// ∂T/∂r = ∂T/∂e = 1 − s    ∂T/∂f = r(1 − s)    ∂T/∂s = 1 − r
/// ```
///
/// Symbols: T strength, r reading, e error of the instrument and f of the factor, s water solids.
/// Source: GUM 5.1.2.
///
/// Terms: reading, instrument e, factor f (its best estimates are zero), water solids s. Leave `factor` out
/// where it is to be kept apart for yields and comparisons.
///
/// # Errors
/// As [`reading::total_strength`]; [`Error::ResultOutOfRange`] for an uncertainty past its range.
///
/// ```
/// # use cupwright::{quantity::*, reading::Zero, uncertainty::{self, *}};
/// // "1.44, twice", on a display of 0.01 % and an instrument that promises ± 0.03 %.
/// let promised = StrengthUncertainty::from_percent(0.03)?;
/// let twice = of_repeats(&[Strength::from_percent(1.44)?; 2])?;
/// let step = of_display(StrengthUncertainty::from_percent(0.01)?);
/// let strength = uncertainty::strength(&ReadStrength {
///     reading: Estimate::with(twice.value, together(&[twice.standard(), step])?),
///     instrument: of_limit(promised, Shape::Rectangular),
///     factor: Standard::NONE,
///     zero: Zero::Distilled,
///     water_solids: Estimate::exact(WaterSolids::NONE),
/// })?;
/// assert_eq!(strength.estimate.u.to_string(), "0.018 %");
/// # Ok::<(), cupwright::Error>(())
/// ```
pub fn strength(read: &ReadStrength) -> Result<Budget<Strength>, Error> {
    let r = read.reading.value;
    let total = reading::total_strength(r, read.zero, read.water_solids.value)?;
    let per_milligram = WaterSolids::known(1.0).fraction();
    let (by_reading, by_solids) = match read.zero {
        Zero::Distilled => (1.0, 0.0),
        Zero::BrewWater => {
            let s = read.water_solids.value.fraction();
            (1.0 - s, 100.0 * per_milligram * (1.0 - r.fraction()))
        }
    };
    let inputs = [
        Input::new(&read.reading, by_reading),
        Input::error(&read.instrument, by_reading),
        Input::error(&read.factor, by_reading * r.percent() * PERCENT),
        Input::new(&read.water_solids, by_solids),
    ];
    propagate(total, inputs, |[r, e, f, s]| {
        reading::total_percent((r + e) * (1.0 + PERCENT * f), read.zero, s * per_milligram)
    })
}

/// Strength from a reading in degrees Brix ([`reading::strength_of_brix`]).
///
/// ```text
/// T = k B
/// u(T)² = (k u(B))² + (T u(k)/k)²
/// ```
///
/// Symbols: T strength, k refractive factor, B degrees Brix. Source: GUM 5.1.2.
///
/// Terms: Brix, factor. The factor's error is common to all readings of one coffee: where it is given apart
/// for yields and comparisons, let the factor be exact here.
///
/// # Errors
/// As [`reading::strength_of_brix`]; [`Error::ResultOutOfRange`] for an uncertainty past its range.
///
/// ```
/// # use cupwright::{quantity::*, reading, uncertainty::{self, *}};
/// let read = of_limit(BrixUncertainty::from_degrees(0.05)?, Shape::Rectangular);
/// // 0.85 ± 0.02 %/°Bx.
/// let factor = Standard::known(FactorUncertainty::from_percent(2.35)?);
/// let strength = uncertainty::strength_of_brix(
///     &Estimate::with(Brix::from_degrees(1.70)?, read),
///     &Estimate::with(reading::USUAL_REFRACTIVE_FACTOR, factor),
/// )?
/// .estimate;
/// assert_eq!(format!("{} ± {}", strength.value, strength.u), "1.44 % ± 0.042 %");
/// # Ok::<(), cupwright::Error>(())
/// ```
pub fn strength_of_brix(
    brix: &Estimate<Brix>,
    factor: &Estimate<RefractiveFactor>,
) -> Result<Budget<Strength>, Error> {
    let strength = reading::strength_of_brix(brix.value, factor.value)?;
    let k = factor.value.percent_per_degree();
    let inputs =
        [Input::new(brix, k), Input::error(&factor.standard(), PERCENT * strength.percent())];
    propagate(strength, inputs, |[b, f]| k * (1.0 + PERCENT * f) * b)
}

/// The flow-through form of the yield ([`extraction::flow_through_yield`]).
///
/// ```text
/// E = T B/D
/// (u(E)/E)² = (u(T)/T)² + (u(B)/B)² + (u(D)/D)² + f²
/// ```
///
/// Symbols: E yield, T strength, B beverage, D dose, f relative uncertainty of the refractive
/// factor. Source: GUM 5.1.2.
///
/// Terms: strength, beverage, dose, factor. The span of the scale cancels.
///
/// # Errors
/// As [`extraction::flow_through_yield`]; [`Error::ResultOutOfRange`] for an uncertainty past its range.
///
/// ```
/// # use cupwright::{quantity::*, uncertainty::{self, *}};
/// let scale = of_limit(MassUncertainty::from_grams(0.1)?, Shape::Rectangular);
/// let read = Standard::known(StrengthUncertainty::from_percent(0.02)?);
/// let extracted = uncertainty::flow_through_yield(
///     &Estimate::with(Strength::from_percent(1.44)?, read),
///     &Estimate::with(Beverage::from_grams(250.0)?, scale),
///     &Estimate::with(Dose::from_grams(18.0)?, scale),
///     &Standard::NONE,
/// )?;
/// assert_eq!(extracted.estimate.value.to_string(), "20.00 %");
/// assert_eq!(extracted.estimate.u.to_string(), "0.29 %");
/// # Ok::<(), cupwright::Error>(())
/// ```
pub fn flow_through_yield(
    strength: &Estimate<Strength>,
    beverage: &Estimate<Beverage>,
    dose: &Estimate<Dose>,
    factor: &Standard<FactorUncertainty>,
) -> Result<Budget<Yield>, Error> {
    let (t, b, d) = (strength.value.percent(), beverage.value.grams(), dose.value.grams());
    let extracted = extraction::flow_through_yield(strength.value, beverage.value, dose.value)?;
    let e = extracted.percent();
    let inputs = [
        Input::new(strength, b / d),
        Input::new(beverage, t / d),
        Input::new(dose, -e / d),
        Input::error(factor, e * PERCENT),
    ];
    propagate(extracted, inputs, |[t, b, d, f]| t * (1.0 + PERCENT * f) * b / d)
}

/// The steeped form of the yield ([`extraction::steeped_yield`]).
///
/// ```text
/// E = (W/D) T/(1 − T)
/// (u(E)/E)² = (u(T)/[T(1 − T)])² + (u(W)/W)² + (u(D)/D)² + (f/(1 − T))²
/// ```
///
/// Symbols: E yield, W brew water, D dose, T strength, f relative uncertainty of the refractive
/// factor. Source: GUM 5.1.2.
///
/// Terms: strength, brew water, dose, factor. The span of the scale cancels.
///
/// # Errors
/// As [`extraction::steeped_yield`]; [`Error::ResultOutOfRange`] for an uncertainty past its range.
///
/// ```
/// # use cupwright::{quantity::*, uncertainty::{self, *}};
/// let scale = Standard::known(MassUncertainty::from_grams(0.06)?);
/// let read = Standard::known(StrengthUncertainty::from_percent(0.02)?);
/// let extracted = uncertainty::steeped_yield(
///     &Estimate::with(Strength::from_percent(1.44)?, read),
///     &Estimate::with(BrewWater::from_grams(200.0)?, scale),
///     &Estimate::with(Dose::from_grams(15.0)?, scale),
///     &Standard::NONE,
/// )?;
/// let estimate = extracted.estimate;
/// assert_eq!(format!("{} ± {}", estimate.value, estimate.u), "19.48 % ± 0.29 %");
/// # Ok::<(), cupwright::Error>(())
/// ```
pub fn steeped_yield(
    strength: &Estimate<Strength>,
    water: &Estimate<BrewWater>,
    dose: &Estimate<Dose>,
    factor: &Standard<FactorUncertainty>,
) -> Result<Budget<Yield>, Error> {
    let (t, w, d) = (strength.value.fraction(), water.value.grams(), dose.value.grams());
    let extracted = extraction::steeped_yield(strength.value, water.value, dose.value)?;
    let e = extracted.percent();
    let by_strength = w / d / square(1.0 - t);
    let inputs = [
        Input::new(strength, by_strength),
        Input::new(water, e / w),
        Input::new(dose, -e / d),
        Input::error(factor, by_strength * strength.value.percent() * PERCENT),
    ];
    propagate(extracted, inputs, |[t, w, d, f]| {
        let t = t * (1.0 + PERCENT * f);
        w / d * t / (1.0 - PERCENT * t)
    })
}

record! {
    /// A brew with its strength, every number with its uncertainty.
    pub struct Measured {
        /// Strength T, all solids.
        strength: Estimate<Strength> = "strength",
        /// Dose D as weighed.
        dose: Estimate<Dose> = "dose",
        /// Brew water W.
        water: Estimate<BrewWater> = "water",
        /// Beverage B.
        beverage: Estimate<Beverage> = "beverage",
        /// Moisture h of the dose.
        moisture: Estimate<Moisture> = "moisture",
        /// Solids s of the brew water.
        water_solids: Estimate<WaterSolids> = "water_solids",
        /// Vapour V lost.
        vapour: Estimate<Vapour> = "vapour",
        /// Strength φ of the liquid kept, relative to the beverage.
        held_strength: Estimate<HeldStrength> = "held_strength",
        /// Span of the scale that weighed dose, water and beverage, relative.
        span: Standard<SpanUncertainty> = "span",
        /// The coffee's refractive factor, relative.
        factor: Standard<FactorUncertainty> = "factor",
    }
}

impl Measured {
    /// The brew, without its uncertainties.
    fn brew(&self) -> Brew {
        Brew {
            dose: self.dose.value,
            water: self.water.value,
            beverage: self.beverage.value,
            moisture: self.moisture.value,
            water_solids: self.water_solids.value,
            vapour: self.vapour.value,
            held_strength: self.held_strength.value,
        }
    }
}

/// The yield by the whole mass balance ([`extraction::extraction_yield`]).
///
/// With τ, Q of [`extraction`], M = D(1 − s − φτ) and L = Q + ED:
///
/// ```text
/// ∂E/∂T = (B + φQ + φDE)/M      ∂E/∂B = τ(1 − φ)/M       ∂E/∂W = φτ/M
/// ∂E/∂D = h(φτ + s)/M − E/D     ∂E/∂h = D(φτ + s)/M      ∂E/∂V = −(φτ + s)/M
/// ∂E/∂s = [hD − V − B − φQ + DE(1 − φ)]/M                ∂E/∂φ = τL/M
/// span:   D ∂E/∂D + W ∂E/∂W + B ∂E/∂B = −V ∂E/∂V         factor: T ∂E/∂T
/// ```
///
/// Symbols: as in [`extraction`]. Source: GUM 5.1.2.
///
/// Terms, in this order: strength, dose, brew water, beverage, moisture, water solids, vapour, held strength,
/// span, factor. How φ was chosen may move the yield by three points; give it an uncertainty where it
/// is not known to be 0 or 1.
///
/// # Errors
/// As [`extraction::extraction_yield`]; [`Error::ResultOutOfRange`] for an uncertainty past its range.
///
/// ```
/// # use cupwright::{quantity::*, uncertainty::{self, *}};
/// let scale = Standard::known(MassUncertainty::from_grams(0.06)?);
/// let read = Standard::known(StrengthUncertainty::from_percent(0.02)?);
/// let extracted = uncertainty::extraction_yield(&Measured {
///     strength: Estimate::with(Strength::from_percent(1.44)?, read),
///     dose: Estimate::with(Dose::from_grams(15.0)?, scale),
///     water: Estimate::with(BrewWater::from_grams(200.0)?, scale),
///     beverage: Estimate::with(Beverage::from_grams(172.0)?, scale),
///     moisture: Estimate::exact(Moisture::from_percent(2.0)?),
///     water_solids: Estimate::exact(WaterSolids::NONE),
///     vapour: Estimate::exact(Vapour::NONE),
///     // Steeped, but perhaps not mixed to the last drop.
///     held_strength: Estimate::with(
///         HeldStrength::from_percent(90.0)?,
///         of_limit(ShareUncertainty::from_percent(10.0)?, Shape::Rectangular),
///     ),
///     span: Standard::known(SpanUncertainty::from_percent(0.1)?),
///     factor: Standard::NONE,
/// })?;
/// let estimate = extracted.estimate;
/// assert_eq!(format!("{} ± {}", estimate.value, estimate.u), "19.21 % ± 0.33 %");
/// # Ok::<(), cupwright::Error>(())
/// ```
pub fn extraction_yield(measured: &Measured) -> Result<Budget<Yield>, Error> {
    let brew = measured.brew();
    let extracted = extraction::extraction_yield(&brew, measured.strength.value)?;
    let b = Balance::of(&brew);
    let (t, e) = (measured.strength.value.fraction(), extracted.fraction());
    let (s, held, h) = (b.solids, b.held, brew.moisture.fraction());
    let tau = t - s;
    let m = b.dose * (1.0 - s - held * tau);
    let in_kept = held * tau + s;
    let coffee = e * b.dose;
    let by_strength = b.by_strength(tau, coffee);
    let by_vapour = -in_kept / m;
    let by_solids = b.bean_water - b.beverage - held * b.missing + coffee * (1.0 - held);
    let per_milligram = WaterSolids::known(1.0).fraction();
    // Strength, moisture and held strength are percentages as the yield is; the others are not.
    let inputs = [
        Input::new(&measured.strength, by_strength),
        Input::new(&measured.dose, 100.0 * (h * in_kept / m - e / b.dose)),
        Input::new(&measured.water, 100.0 * held * tau / m),
        Input::new(&measured.beverage, 100.0 * tau * (1.0 - held) / m),
        Input::new(&measured.moisture, b.dose * in_kept / m),
        Input::new(&measured.water_solids, 100.0 * per_milligram * by_solids / m),
        Input::new(&measured.vapour, 100.0 * by_vapour),
        Input::new(&measured.held_strength, tau * (b.missing + coffee) / m),
        Input::error(&measured.span, -brew.vapour.grams() * by_vapour),
        Input::error(&measured.factor, by_strength * t),
    ];
    propagate(extracted, inputs, |[t, d, w, b, h, s, v, held, g, f]| {
        let span = 1.0 + PERCENT * g;
        let (dose, beverage, solids) = (d * span, b * span, s * per_milligram);
        let bean_water = PERCENT * h * dose - v;
        let missing = w * span + bean_water - beverage;
        let held = PERCENT * held;
        Balance { dose, beverage, bean_water, missing, solids, held }
            .extracted(PERCENT * t * (1.0 + PERCENT * f) - solids)
    })
}

impl Budget<Yield> {
    /// Correlation of the yield with the strength that it was computed from: both share the reading and
    /// the factor. The root of their share of the variance.
    ///
    /// For the flow-through form (u(T)/T)/(u(E)/E). The strength that it goes with has the factor in its
    /// uncertainty.
    pub fn correlation_with_strength(&self) -> Correlation {
        let shared = self.share_of(&[Quantity::Strength, Quantity::FactorUncertainty]);
        Correlation::known(sqrt(shared))
    }
}

/// Strength that a steep will have ([`extraction::steeped_strength`]).
///
/// ```text
/// T = E D/(W + E D)
/// ∂T/∂E = D W/(W + ED)²    ∂T/∂D = E W/(W + ED)²    ∂T/∂W = −E D/(W + ED)²
/// ```
///
/// Symbols: T strength, E yield, D dose, W brew water. Source: GUM 5.1.2.
///
/// Terms: yield, dose, brew water. The yield's uncertainty is how far it differs from brew to brew.
///
/// # Errors
/// As [`ratio::water_ratio`]; [`Error::ResultOutOfRange`] for a result past its range.
///
/// ```
/// # use cupwright::{quantity::*, uncertainty::{self, *}};
/// let from_brew_to_brew = Standard::known(YieldUncertainty::from_percent(0.5)?);
/// let cup = uncertainty::steeped_strength(
///     &Estimate::with(Yield::from_percent(19.5)?, from_brew_to_brew),
///     &Estimate::exact(Dose::from_grams(15.0)?),
///     &Estimate::exact(BrewWater::from_grams(200.0)?),
/// )?
/// .estimate;
/// assert_eq!(format!("{} ± {}", cup.value, cup.u), "1.44 % ± 0.036 %");
/// # Ok::<(), cupwright::Error>(())
/// ```
pub fn steeped_strength(
    extracted: &Estimate<Yield>,
    dose: &Estimate<Dose>,
    water: &Estimate<BrewWater>,
) -> Result<Budget<Strength>, Error> {
    let (e, d, w) = (extracted.value.fraction(), dose.value.grams(), water.value.grams());
    let ratio = ratio::water_ratio(dose.value, water.value)?;
    let t = extraction::steeped_strength(extracted.value, ratio)?;
    let all = square(w + e * d);
    let inputs = [
        Input::new(extracted, d * w / all),
        Input::new(dose, 100.0 * e * w / all),
        Input::new(water, -100.0 * e * d / all),
    ];
    propagate(t, inputs, |[e, d, w]| 100.0 * e * d / (100.0 * w + e * d))
}

/// Beverage that a brew will give ([`retention::beverage`]).
///
/// ```text
/// B = W − r D − losses
/// u²(B) = u²(W) + (r u(D))² + (D u(r))² + u²(losses)
/// ```
///
/// Symbols: B beverage, W brew water, r apparent retention, D dose. Source: GUM 5.1.2.
///
/// Terms: brew water, dose, retention, other losses. The retention in `losses` is that of `retention`'s value;
/// `other` is how uncertain hold-up, paper, drips and vapour are together.
///
/// # Errors
/// As [`retention::beverage`]; [`Error::ResultOutOfRange`] for an uncertainty past its range.
///
/// ```
/// # use cupwright::{quantity::*, retention::{Losses, Paper}, uncertainty::{self, *}};
/// let losses = Losses {
///     retention: ApparentRetention::from_grams_per_gram(2.0)?,
///     hold_up: HoldUp::NONE,
///     paper: Paper::Rinsed,
///     drips: Drips::NONE,
///     vapour: Vapour::from_grams(2.0)?,
/// };
/// let cup = uncertainty::beverage(
///     &losses,
///     &Standard::known(RetentionUncertainty::from_grams_per_gram(0.1)?),
///     &Standard::NONE,
///     &Estimate::exact(Dose::from_grams(15.0)?),
///     &Estimate::exact(BrewWater::from_grams(250.0)?),
/// )?
/// .estimate;
/// assert_eq!(format!("{} ± {:.1}", cup.value, cup.u), "218.0 g ± 1.5 g");
/// # Ok::<(), cupwright::Error>(())
/// ```
pub fn beverage(
    losses: &Losses,
    retention: &Standard<RetentionUncertainty>,
    other: &Standard<MassUncertainty>,
    dose: &Estimate<Dose>,
    water: &Estimate<BrewWater>,
) -> Result<Budget<Beverage>, Error> {
    let expected = retention::beverage(losses, dose.value, water.value)?;
    let held = Estimate::with(losses.retention, *retention);
    let fixed =
        water.value.grams() - held.value.grams_per_gram() * dose.value.grams() - expected.grams();
    let inputs = [
        Input::new(water, 1.0),
        Input::new(dose, -held.value.grams_per_gram()),
        Input::new(&held, -dose.value.grams()),
        Input::error(other, -1.0),
    ];
    propagate(expected, inputs, |[w, d, r, other]| w - r * d - fixed - other)
}

/// Water to add for a wanted strength ([`dilution::water_to_reach`]).
///
/// ```text
/// A = B (T − T')/(T' − s)
/// ∂A/∂B = A/B    ∂A/∂T = B/(T' − s)    ∂A/∂s = A/(T' − s)
/// ```
///
/// Symbols: A water added, B beverage, T strength at hand, T' strength wanted, s water solids.
/// Source: GUM 5.1.2.
///
/// Terms: beverage, strength, water solids. The wish is exact. On the scale that weighed the beverage its
/// span cancels.
///
/// # Errors
/// As [`dilution::water_to_reach`]; [`Error::ResultOutOfRange`] for an uncertainty past its range.
///
/// ```
/// # use cupwright::{quantity::*, uncertainty::{self, *}};
/// let read = Standard::known(StrengthUncertainty::from_percent(0.02)?);
/// let added = uncertainty::water_to_reach(
///     &Estimate::exact(Beverage::from_grams(180.0)?),
///     &Estimate::with(Strength::from_percent(1.55)?, read),
///     Strength::from_percent(1.35)?,
///     &Estimate::exact(WaterSolids::NONE),
/// )?;
/// assert_eq!(format!("{} ± {:.1}", added.estimate.value, added.estimate.u), "26.7 g ± 2.7 g");
/// # Ok::<(), cupwright::Error>(())
/// ```
pub fn water_to_reach(
    beverage: &Estimate<Beverage>,
    strength: &Estimate<Strength>,
    wanted: Strength,
    water: &Estimate<WaterSolids>,
) -> Result<Budget<Addition>, Error> {
    let added = dilution::water_to_reach(beverage.value, strength.value, wanted, water.value)?;
    let (a, b, aim) = (added.grams(), beverage.value.grams(), wanted.percent());
    let per_milligram = 100.0 * WaterSolids::known(1.0).fraction();
    let over = aim - per_milligram * water.value.milligrams_per_litre();
    let inputs = [
        Input::new(beverage, a / b),
        Input::new(strength, b / over),
        Input::new(water, per_milligram * a / over),
    ];
    propagate(added, inputs, |[b, t, s]| b * (t - aim) / (aim - per_milligram * s))
}

/// Strength after adding water, or with s = 0 milk ([`dilution::strength_after_water`]).
///
/// ```text
/// T' = (T B + s A)/(B + A)
/// ∂T'/∂B = (T − T')/(B + A)    ∂T'/∂T = B/(B + A)    ∂T'/∂A = (s − T')/(B + A)    ∂T'/∂s = A/(B + A)
/// ```
///
/// Symbols: T' strength after, T before, B beverage, s water solids, A water added. Source: GUM
/// 5.1.2.
///
/// Terms: beverage, strength, addition, water solids. The span of the scale cancels.
///
/// # Errors
/// [`Error::ResultOutOfRange`] for an uncertainty past its range.
///
/// ```
/// # use cupwright::{quantity::*, uncertainty::{self, *}};
/// let read = Standard::known(StrengthUncertainty::from_percent(0.02)?);
/// let cup = uncertainty::strength_after_water(
///     &Estimate::exact(Beverage::from_grams(180.0)?),
///     &Estimate::with(Strength::from_percent(1.55)?, read),
///     &Estimate::exact(Addition::from_grams(26.7)?),
///     &Estimate::exact(WaterSolids::NONE),
/// )?
/// .estimate;
/// assert_eq!(format!("{} ± {}", cup.value, cup.u), "1.35 % ± 0.017 %");
/// # Ok::<(), cupwright::Error>(())
/// ```
pub fn strength_after_water(
    beverage: &Estimate<Beverage>,
    strength: &Estimate<Strength>,
    added: &Estimate<Addition>,
    water: &Estimate<WaterSolids>,
) -> Result<Budget<Strength>, Error> {
    let after =
        dilution::strength_after_water(beverage.value, strength.value, added.value, water.value)?;
    let (b, a) = (beverage.value.grams(), added.value.grams());
    let (t, mixed) = (strength.value.percent(), after.percent());
    let per_milligram = 100.0 * WaterSolids::known(1.0).fraction();
    let s = per_milligram * water.value.milligrams_per_litre();
    let inputs = [
        Input::new(beverage, (t - mixed) / (b + a)),
        Input::new(strength, b / (b + a)),
        Input::new(added, (s - mixed) / (b + a)),
        Input::new(water, per_milligram * a / (b + a)),
    ];
    propagate(after, inputs, |[b, t, a, s]| (t * b + per_milligram * s * a) / (b + a))
}

/// Temperature of two waters or brews mixed ([`dilution::mixed_temperature`]).
///
/// ```text
/// B h(t1) + A h(t2) = (B + A) h(t)
/// ∂t/∂B = [h(t1) − h(t)]/[(B + A) c(t)]    ∂t/∂t1 = B c(t1)/[(B + A) c(t)]    and for A, t2 alike
/// ```
///
/// Symbols: B and A masses, t1 and t2 their temperatures, t that of the mixture, h heat content and
/// c specific heat of water. Source: GUM 5.1.2.
///
/// Terms: liquid, its temperature, addition, its temperature. A pour onto a preheated brewer is such a mix, with
/// the brewer as so much water. What the linear rule leaves out is found with one specific heat.
///
/// # Errors
/// [`Error::ResultOutOfRange`] for an uncertainty past its range.
///
/// ```
/// # use cupwright::{quantity::*, uncertainty::{self, *}};
/// // Boiling water taken down with water from the tap.
/// let thermometer = Standard::known(TemperatureUncertainty::from_kelvin(0.5)?);
/// let mixed = uncertainty::mixed_temperature(
///     &Estimate::exact(Liquid::from_grams(250.0)?),
///     &Estimate::with(Temperature::from_celsius(98.0)?, thermometer),
///     &Estimate::exact(Addition::from_grams(20.0)?),
///     &Estimate::with(Temperature::from_celsius(15.0)?, thermometer),
/// )?
/// .estimate;
/// assert_eq!(format!("{} ± {:.1}", mixed.value, mixed.u), "91.9 °C ± 0.5 K");
/// # Ok::<(), cupwright::Error>(())
/// ```
pub fn mixed_temperature(
    liquid: &Estimate<Liquid>,
    temperature: &Estimate<Temperature>,
    added: &Estimate<Addition>,
    added_temperature: &Estimate<Temperature>,
) -> Result<Budget<Temperature>, Error> {
    let mixed = dilution::mixed_temperature(
        liquid.value,
        temperature.value,
        added.value,
        added_temperature.value,
    )?;
    let heat = |t: Temperature| water::enthalpy(t).joules_per_gram();
    let warms = |t: Temperature| water::specific_heat(t).joules_per_gram_kelvin();
    let (b, a) = (liquid.value.grams(), added.value.grams());
    let capacity = (b + a) * warms(mixed);
    let inputs = [
        Input::new(liquid, (heat(temperature.value) - heat(mixed)) / capacity),
        Input::new(temperature, b * warms(temperature.value) / capacity),
        Input::new(added, (heat(added_temperature.value) - heat(mixed)) / capacity),
        Input::new(added_temperature, a * warms(added_temperature.value) / capacity),
    ];
    propagate(mixed, inputs, |[b, t, a, other]| (b * t + a * other) / (b + a))
}

/// Temperature at which a liquid and a body settle ([`heat::settle`]).
///
/// ```text
/// m h(t) + C t = m h(t0) + C t_b
/// ∂t/∂t0 = m c(t0)/M    ∂t/∂m = [h(t0) − h(t)]/M    ∂t/∂C = (t_b − t)/M    ∂t/∂t_b = C/M
/// M = m c(t) + C
/// ```
///
/// Symbols: m liquid, t0 its temperature before, t settled, C heat capacity of the body, t_b its
/// temperature, h heat content and c specific heat of water. Source: GUM 5.1.2.
///
/// Terms: liquid, its temperature, heat capacity, the body's temperature. Bodies of one temperature are one, of
/// their heat capacities together. A walk from kettle to cup goes step by step: the temperature that comes out
/// is the next step's liquid, with the drop of the pour [`together`]. What the linear rule leaves
/// out is found with one specific heat.
///
/// # Errors
/// As [`heat::settle`]; [`Error::ResultOutOfRange`] for an uncertainty past its range.
///
/// ```
/// # use cupwright::{quantity::*, uncertainty::{self, *}};
/// // Grounds and a cold glass brewer, known to a tenth, take 11 K out of the water.
/// let slurry = uncertainty::settle(
///     &Estimate::exact(Liquid::from_grams(250.0)?),
///     &Estimate::with(
///         Temperature::from_celsius(95.0)?,
///         Standard::known(TemperatureUncertainty::from_kelvin(0.5)?),
///     ),
///     &Estimate::with(
///         HeatCapacity::from_joules_per_kelvin(193.0)?,
///         Standard::known(HeatCapacityUncertainty::from_joules_per_kelvin(19.0)?),
///     ),
///     &Estimate::exact(VesselTemperature::from_celsius(21.0)?),
/// )?
/// .estimate;
/// assert_eq!(format!("{} ± {:.1}", slurry.value, slurry.u), "83.5 °C ± 1.0 K");
/// # Ok::<(), cupwright::Error>(())
/// ```
pub fn settle(
    liquid: &Estimate<Liquid>,
    temperature: &Estimate<Temperature>,
    capacity: &Estimate<HeatCapacity>,
    body: &Estimate<VesselTemperature>,
) -> Result<Budget<Temperature>, Error> {
    let solid = Body { heat_capacity: capacity.value, temperature: body.value };
    let settled = heat::settle(liquid.value, temperature.value, &[solid])?;
    let heat = |t: Temperature| water::enthalpy(t).joules_per_gram();
    let warms = |t: Temperature| water::specific_heat(t).joules_per_gram_kelvin();
    let (m, own) = (liquid.value.grams(), warms(settled));
    let of_body = capacity.value.joules_per_kelvin();
    let all = m * own + of_body;
    let inputs = [
        Input::new(liquid, (heat(temperature.value) - heat(settled)) / all),
        Input::new(temperature, m * warms(temperature.value) / all),
        Input::new(capacity, (body.value.celsius() - settled.celsius()) / all),
        Input::new(body, of_body / all),
    ];
    propagate(settled, inputs, |[m, t, c, b]| (m * own * t + c * b) / (m * own + c))
}

/// Time to cool to a wanted temperature ([`heat::time_to_cool`]).
///
/// ```text
/// ∂t/∂T1 = 1/[k F(T1)]    ∂t/∂k = −t/k        F as for heat::time_to_cool
/// ```
///
/// Symbols: t time, T1 temperature now, k cooling rate. Source: GUM 5.1.2.
///
/// Terms: temperature now, cooling rate. The wish is exact, and the room counts as known. With a rate from
/// [`crate::calibrate::cooling`] the law itself is met within 0.8 K, which no budget counts.
///
/// # Errors
/// As [`heat::time_to_cool`]; [`Error::ResultOutOfRange`] for an uncertainty past its range.
///
/// ```
/// # use cupwright::{heat::{Cover, Surroundings}, quantity::*, uncertainty::{self, *}};
/// let room = Surroundings {
///     room: RoomTemperature::from_celsius(17.0)?,
///     humidity: Humidity::from_percent(50.0)?,
///     cover: Cover::Open,
/// };
/// let wait = uncertainty::time_to_cool(
///     &Estimate::with(
///         Temperature::from_celsius(82.3)?,
///         Standard::known(TemperatureUncertainty::from_kelvin(0.5)?),
///     ),
///     Temperature::from_celsius(60.0)?,
///     &Estimate {
///         value: CoolingRate::from_per_minute(0.00665)?,
///         u: CoolingRateUncertainty::from_per_minute(0.00016)?,
///         freedom: DegreesOfFreedom::from_count(2.0)?,
///     },
///     &room,
/// )?
/// .estimate;
/// assert_eq!(format!("{} ± {}", wait.value, wait.u), "851 s ± 24 s");
/// # Ok::<(), cupwright::Error>(())
/// ```
pub fn time_to_cool(
    from: &Estimate<Temperature>,
    to: Temperature,
    rate: &Estimate<CoolingRate>,
    surroundings: &Surroundings,
) -> Result<Budget<Time>, Error> {
    let wait = heat::time_to_cool(from.value, to, rate.value, surroundings)?;
    let law = heat::Law::of(surroundings);
    let end = law.celsius(0.0);
    let (k, theta) = (rate.value.per_minute(), to.celsius() - end);
    let inputs = [
        Input::new(from, 60.0 / (k * law.speed(from.value.celsius() - end))),
        Input::new(rate, -wait.seconds() / k),
    ];
    propagate(wait, inputs, |[from, k]| 60.0 * law.span(from - end, theta) / k)
}

/// Temperature after a time of cooling ([`heat::temperature_after`]).
///
/// ```text
/// ∂T/∂T1 = F(T)/F(T1)    ∂T/∂t = −k F(T)    ∂T/∂k = −t F(T)        F as for heat::time_to_cool
/// ```
///
/// Symbols: T temperature after the time t, T1 temperature now, k cooling rate. Source: GUM 5.1.2.
///
/// Terms: temperature now, time, cooling rate. The room counts as known. With a rate from
/// [`crate::calibrate::cooling`] the law itself is met within 0.8 K, which no budget counts.
///
/// # Errors
/// As [`heat::temperature_after`]; [`Error::ResultOutOfRange`] for an uncertainty past its range.
///
/// ```
/// # use cupwright::{heat::{Cover, Surroundings}, quantity::*, uncertainty::{self, *}};
/// let room = Surroundings {
///     room: RoomTemperature::from_celsius(17.0)?,
///     humidity: Humidity::from_percent(50.0)?,
///     cover: Cover::Open,
/// };
/// let later = uncertainty::temperature_after(
///     &Estimate::with(
///         Temperature::from_celsius(82.3)?,
///         Standard::known(TemperatureUncertainty::from_kelvin(0.5)?),
///     ),
///     &Estimate::exact(Time::from_seconds(600.0)?),
///     &Estimate {
///         value: CoolingRate::from_per_minute(0.00665)?,
///         u: CoolingRateUncertainty::from_per_minute(0.00016)?,
///         freedom: DegreesOfFreedom::from_count(2.0)?,
///     },
///     &room,
/// )?
/// .estimate;
/// assert_eq!(format!("{} ± {}", later.value, later.u), "64.8 °C ± 0.40 K");
/// # Ok::<(), cupwright::Error>(())
/// ```
pub fn temperature_after(
    from: &Estimate<Temperature>,
    elapsed: &Estimate<Time>,
    rate: &Estimate<CoolingRate>,
    surroundings: &Surroundings,
) -> Result<Budget<Temperature>, Error> {
    let later = heat::temperature_after(from.value, elapsed.value, rate.value, surroundings)?;
    let law = heat::Law::of(surroundings);
    let end = law.celsius(0.0);
    let (minutes, k) = (elapsed.value.seconds() / 60.0, rate.value.per_minute());
    let cooled = k * elapsed.value.seconds() / 60.0;
    let (start, theta) = (from.value.celsius() - end, later.celsius() - end);
    let speed = law.speed(theta);
    let inputs = [
        Input::new(from, speed / law.speed(start)),
        Input::new(elapsed, -k * speed / 60.0),
        Input::new(rate, -minutes * speed),
    ];
    propagate(later, inputs, |[from, t, k]| {
        law.celsius(law.after_near((start, theta), from - end, k * t / 60.0 - cooled))
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn input(value: f64, u: f64, freedom: f64, sensitivity: f64) -> Input {
        let freedom = DegreesOfFreedom::known(freedom);
        Input { source: Quantity::StandardUncertainty, value, u, freedom, sensitivity }
    }

    /// GUM H.1, the end gauge: l = l_S + d − l_S(δα θ + α_S δθ), in nm. Inputs as in the documentation
    /// of GTC and in suncal; the document's 34 nm with second-order terms from memory.
    #[test]
    fn products_of_uncertain_zeros() {
        let length = 50_000_623.0;
        let third = sqrt(3.0);
        let inputs = [
            input(length, 25.0, 18.0, 1.0),
            input(215.0, 9.681_942, 25.447, 1.0),
            input(0.0, 1e-6 / third, 50.0, 0.1 * length),
            input(-0.1, sqrt(0.04 + 0.125), 1e9, 0.0),
            input(11.5e-6, 2e-6 / third, 1e9, 0.0),
            input(0.0, 0.05 / third, 2.0, -11.5e-6 * length),
        ];
        let budget = propagate(Measurand::known(50_000_838.0), inputs, |[l, d, da, t, a, dt]| {
            l + d - l * (da * t + a * dt)
        })
        .unwrap();
        let u = budget.estimate.u.number();
        assert!((u - 31.663_879).abs() < 1e-5, "{u}");
        let second = budget.second_order.unwrap();
        assert!((second.u.number() - 33.806).abs() < 1e-3, "{}", second.u);
        assert!(second.shift.abs() < 1e-6);
    }

    /// A product of two relative uncertainties of a third: (1 + ⅓ε₁)(1 + ⅓ε₂) has the variance
    /// 2/9 + 1/81 exactly; a square has 4/9 + 2/81, and lies 1/9 higher.
    #[test]
    fn curvature_of_normal_inputs_is_exact_to_second_order() {
        let third = 1.0 / 3.0;
        let inputs = [input(1.0, third, 1e9, 1.0), input(1.0, third, 1e9, 1.0)];
        let product = propagate(Measurand::known(1.0), inputs, |[x, y]| x * y).unwrap();
        let second = |budget: Budget<Measurand>| budget.second_order.unwrap();
        assert!((square(second(product).u.number()) - 19.0 / 81.0).abs() < 1e-15);
        let one = [input(1.0, third, 1e9, 2.0)];
        let squared = second(propagate(Measurand::known(1.0), one, |[x]| x * x).unwrap());
        assert!((square(squared.u.number()) - 38.0 / 81.0).abs() < 1e-14);
        assert!((squared.shift - 1.0 / 9.0).abs() < 1e-15);
        // A cube has 1 + 36/81, and 15/729 of the third order.
        let one = [input(1.0, third, 1e9, 3.0)];
        let cubed = propagate(Measurand::known(1.0), one, |[x]| x * x * x).unwrap();
        assert!((square(second(cubed).u.number()) - 117.0 / 81.0).abs() < 1e-14);
    }

    /// One uncertainty down, a quotient has no value: its linear budget stands.
    #[test]
    fn what_cannot_be_had_beyond_the_rule_does_not_refuse_the_budget() {
        let one = [input(3.0, 3.0, 1e9, -1.0 / 9.0)];
        let inverse = propagate(Measurand::known(1.0 / 3.0), one, |[x]| 1.0 / x).unwrap();
        assert_eq!(inverse.second_order, None);
        assert!((inverse.estimate.u.number() - 1.0 / 3.0).abs() < 1e-15);
    }

    #[test]
    fn of_two_terms_that_are_as_large_the_first_dominates() {
        let [mut first, second] = [input(1.0, 0.1, 1e9, 1.0), input(1.0, 0.1, 1e9, 1.0)];
        first.source = Quantity::Dose;
        let sum = propagate(Measurand::known(2.0), [first, second], |[x, y]| x + y).unwrap();
        let dominant = sum.dominant().unwrap();
        assert_eq!((dominant.term.source, dominant.share.percent()), (Quantity::Dose, 50.0));
    }

    #[test]
    fn of_nothing_uncertain_nothing_has_a_share() {
        let sure = propagate(Measurand::known(1.0), [input(1.0, 0.0, 1e9, -0.0)], |[x]| x).unwrap();
        assert_eq!(sure.share_of(&[Quantity::StandardUncertainty]), 0.0);
        assert_eq!(sure.dominant(), None);
        // And zero has one sign.
        assert!(sure.terms().all(|term| term.sensitivity.is_sign_positive()));
    }

    /// A shift beyond what an uncertainty may be leaves the linear budget, as a model without a value does.
    #[test]
    fn a_shift_that_cannot_be_told_is_not() {
        let most = Quantity::StandardUncertainty.highest();
        let bent = |times: f64| {
            let one = [input(0.0, 1.0, 1e9, 1.0)];
            propagate(Measurand::known(0.0), one, |[x]| times * most * x * x).unwrap()
        };
        assert_eq!(bent(3.0).second_order, None);
        // Not even where what it does to the variance is taken back by a slope that falls.
        let falling = propagate(Measurand::known(0.0), [input(0.0, 1.0, 1e9, 1.0)], |[x]| {
            3.0 * most * x * x - 4.0 * most * most * x * x * x
        });
        assert_eq!(falling.unwrap().second_order, None);
        let second = bent(0.5).second_order.unwrap();
        assert!((second.shift / most - 0.5).abs() < 1e-12, "{}", second.shift);
    }
}
