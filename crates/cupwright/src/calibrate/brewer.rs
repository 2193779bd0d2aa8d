//! A brewer: what it keeps, and what heat it takes.

use super::line::Line;
use super::quality::{Quality, enough};
use super::rates::correlation;
use super::{Fitted, proportion, told};
use crate::error::{Error, Untold};
use crate::math::{max, min, sqrt, square};
use crate::quantity::{
    ApparentRetention, Beverage, BrewWater, Correlation, Dose, FittedHoldUp, HeatCapacity, HoldUp,
    Liquid, MassUncertainty, Quantity, Temperature, Vapour, VesselTemperature, computed,
};
use crate::record::record;
use crate::uncertainty::Estimate;
use crate::water;

record! {
    /// A brew as a scale saw it.
    pub struct Drained {
        /// Dose D.
        dose: Dose = "dose_g",
        /// Brew water W.
        water: BrewWater = "water_g",
        /// Beverage B.
        beverage: Beverage = "beverage_g",
        /// Vapour V lost; zero where unknown, it then counts as kept.
        vapour: Vapour = "vapour_g",
    }
}

impl Drained {
    /// Dose, and what did not reach the cup, W − B − V.
    fn point(&self) -> (f64, f64) {
        let kept = self.water.grams() - self.beverage.grams() - self.vapour.grams();
        (self.dose.grams(), kept)
    }
}

/// What a brewer keeps, as a line in the dose.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RetentionLine {
    /// Apparent retention r of the grounds.
    pub retention: Estimate<ApparentRetention>,
    /// What is kept whatever the dose, c: the chamber's hold-up, with an unrinsed paper's uptake
    /// and drips.
    pub hold_up: Estimate<FittedHoldUp>,
    /// Covariance of the two, g²/g: negative, since a line that is steeper starts lower.
    pub covariance: f64,
    /// How far the line can be trusted; its scatter is in g.
    pub quality: Quality,
}

/// A beverage that a line expects.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Expected {
    /// What the next brew gives, with the standard uncertainty √(u_mean² + s²).
    pub beverage: Estimate<Beverage>,
    /// Standard uncertainty of what many such brews give on average.
    pub u_mean: MassUncertainty,
}

impl RetentionLine {
    /// Beverage that the next brew gives.
    ///
    /// ```text
    /// B = W − V − c − r D
    /// u² = u²(c) + 2 D cov + D² u²(r) + s²,   u_mean the same without s²
    /// ```
    ///
    /// Symbols: W brew water, B beverage, V vapour, D dose, c hold-up and r retention with their
    /// covariance cov, s scatter from brew to brew. Source: conservation of mass; GUM 5.2.2.
    ///
    /// # Errors
    /// [`Error::ResultOutOfRange`] where nothing is left for the cup.
    pub fn expected(
        &self,
        dose: Dose,
        water: BrewWater,
        vapour: Vapour,
    ) -> Result<Expected, Error> {
        let (retention, hold_up) = (self.retention, self.hold_up);
        let (correlation, scatter) = (self.correlation(), self.quality.s);
        Keeping { retention, hold_up, correlation, scatter }.expected(dose, water, vapour)
    }

    /// Correlation of the two: 0 of a line without any scatter.
    pub fn correlation(&self) -> Correlation {
        correlation(self.covariance, self.retention.u.grams_per_gram(), self.hold_up.u.grams())
    }

    /// The hold-up as the planner takes it.
    ///
    /// # Errors
    /// [`Error::ResultOutOfRange`] where the line starts below zero: then [`retention`] without a
    /// hold-up describes the brewer better.
    pub fn chamber(&self) -> Result<HoldUp, Error> {
        computed(self.hold_up.value.grams())
    }
}

/// What expects a beverage, of a line or of what was kept of one: the same bits for both.
pub(crate) struct Keeping {
    pub(crate) retention: Estimate<ApparentRetention>,
    pub(crate) hold_up: Estimate<FittedHoldUp>,
    pub(crate) correlation: Correlation,
    /// Scatter s of a brew about the line, g.
    pub(crate) scatter: f64,
}

impl Keeping {
    pub(crate) fn expected(
        &self,
        dose: Dose,
        water: BrewWater,
        vapour: Vapour,
    ) -> Result<Expected, Error> {
        let d = dose.grams();
        let (hold_up, retention) = (self.hold_up, self.retention);
        let kept = hold_up.value.grams() + retention.value.grams_per_gram() * d;
        let (of_hold_up, of_grounds) = (hold_up.u.grams(), retention.u.grams_per_gram() * d);
        let both = 2.0 * self.correlation.ratio() * of_hold_up * of_grounds;
        // Rounding may leave less than nothing of a line without scatter.
        let variance = max(0.0, square(of_hold_up) + both + square(of_grounds));
        Ok(Expected {
            beverage: Estimate {
                value: computed(water.grams() - vapour.grams() - kept)?,
                u: computed(sqrt(variance + square(self.scatter)))?,
                freedom: retention.freedom,
            },
            u_mean: computed(sqrt(variance))?,
        })
    }
}

/// Retention and hold-up of a brewer, from brews of several doses.
///
/// ```text
/// W − B − V = c + r D
/// r = S_xy/S_xx,   c = ȳ − r D̄,   u(r) = s/√S_xx,   u(c) = s √(1/n + D̄²/S_xx),   cov = −D̄ s²/S_xx
/// ```
///
/// Symbols: W brew water, B beverage, V vapour, D dose, c hold-up, r apparent retention, y what was
/// kept, S sums of squares and products about the means, s scatter, n brews.
///
/// Doses far apart tell most: with a scatter of 1 g, two brews each of 15 and 20 g tell r to 0.2
/// g/g, of 15 and 30 g to 0.07 g/g. Source: least squares; checked against scipy and NIST's
/// Norris data.
///
/// # Errors
/// [`Error::CannotTell`] for fewer than three brews, brews of one dose size, or of sizes so near each
/// other that scatter makes the line; [`Error::OutOfRange`] for more than thirty;
/// [`Error::ResultOutOfRange`] outside the range of [`ApparentRetention`].
///
/// ```
/// # use cupwright::{calibrate::{self, Drained}, quantity::*};
/// let brew = |dose, water, beverage| {
///     Ok::<_, cupwright::Error>(Drained {
///         dose: Dose::from_grams(dose)?,
///         water: BrewWater::from_grams(water)?,
///         beverage: Beverage::from_grams(beverage)?,
///         vapour: Vapour::NONE,
///     })
/// };
/// // Invented brews.
/// let brews = [
///     brew(12.0, 192.0, 164.1)?,
///     brew(15.0, 240.0, 205.4)?,
///     brew(20.0, 320.0, 276.6)?,
///     brew(30.0, 480.0, 414.4)?,
/// ];
/// let line = calibrate::retention_line(&brews)?;
/// assert_eq!(line.retention.value.to_string(), "2.08 g/g");
/// assert_eq!(line.hold_up.value.to_string(), "2.8 g");
/// let next = line.expected(
///     Dose::from_grams(18.0)?,
///     BrewWater::from_grams(290.0)?,
///     Vapour::NONE,
/// )?;
/// assert_eq!(next.beverage.value.to_string(), "249.7 g");
/// # Ok::<(), cupwright::Error>(())
/// ```
pub fn retention_line(brews: &[Drained]) -> Result<RetentionLine, Error> {
    let measurements = enough(brews.len(), 3.0, Quantity::ApparentRetention)?;
    let (points, gap) = (brews.iter().map(Drained::point), gap(brews));
    let line = Line::of(points.clone()).ok_or_else(|| one_dose(gap))?;
    let each = points.map(|(x, y)| (y - line.at(x), line.leverage(x)));
    let quality = Quality::of(measurements, 2.0, each);
    let u_slope = quality.s * sqrt(line.slope_variance());
    let is_told = Quantity::ApparentRetention.accepts(line.slope) && u_slope <= MOST_U_RETENTION;
    if !is_told && gap.0 < gap.1 {
        return Err(one_dose(gap));
    }
    Ok(RetentionLine {
        retention: told(line.slope, u_slope, &quality)?,
        hold_up: told(line.intercept, quality.s * sqrt(line.leverage(0.0)), &quality)?,
        covariance: square(quality.s) * line.covariance() + 0.0,
        quality,
    })
}

/// A retention uncertain by more is not told by doses so near each other, g/g: half of all that grounds
/// hold. Estimate.
const MOST_U_RETENTION: f64 = 1.0;

/// The gap between the doses, and the one that does for a start: half as large again.
fn gap(brews: &[Drained]) -> (f64, f64) {
    let doses = brews.iter().map(|brew| brew.dose.grams());
    let smallest = doses.clone().fold(f64::INFINITY, min);
    (doses.fold(0.0, max) - smallest, 0.5 * smallest)
}

/// A refusal of brews of one dose size, or nearly so.
fn one_dose((found, needed): (f64, f64)) -> Error {
    Error::CannotTell { quantity: Quantity::HoldUp, why: Untold::OneDose, found, needed }
}

/// Retention of a brewer that keeps nothing but what the grounds hold.
///
/// ```text
/// W − B − V = r D
/// r = Σ D y/Σ D²,   u(r) = s/√Σ D²
/// ```
///
/// Symbols: W brew water, B beverage, V vapour, D dose, y what was kept, r apparent retention, s
/// scatter. Source: least squares.
///
/// Also for brews of one dose size: then the hold-up is in it, and it is right for that size alone.
///
/// # Errors
/// [`Error::CannotTell`] for a single brew; [`Error::OutOfRange`] for more than thirty;
/// [`Error::ResultOutOfRange`] outside the range of [`ApparentRetention`].
///
/// ```
/// # use cupwright::{calibrate::{self, Drained}, quantity::*};
/// let brew = |beverage| {
///     Ok::<_, cupwright::Error>(Drained {
///         dose: Dose::from_grams(15.0)?,
///         water: BrewWater::from_grams(240.0)?,
///         beverage: Beverage::from_grams(beverage)?,
///         vapour: Vapour::NONE,
///     })
/// };
/// // Invented brews.
/// let brewer = calibrate::retention(&[brew(205.4)?, brew(207.1)?, brew(206.0)?])?.estimate;
/// assert_eq!(format!("{} ± {:.2}", brewer.value, brewer.u), "2.26 g/g ± 0.03 g/g");
/// # Ok::<(), cupwright::Error>(())
/// ```
pub fn retention(brews: &[Drained]) -> Result<Fitted<ApparentRetention>, Error> {
    let (r, u, quality) =
        proportion(Quantity::ApparentRetention, brews, Drained::point, Quantity::Dose.lowest())?;
    Ok(Fitted { estimate: told(r, u, &quality)?, quality })
}

record! {
    /// Water poured into a brewer and left until both are equally warm.
    pub struct Settled {
        /// Water.
        liquid: Liquid = "liquid_g",
        /// Its temperature before.
        before: Temperature = "before_c",
        /// The temperature at which both settle.
        settled: Temperature = "settled_c",
        /// Temperature of the brewer before.
        vessel: VesselTemperature = "vessel_c",
    }
}

/// Heat capacity of a brewer, from several times that water was poured into it empty.
///
/// ```text
/// m [h(t0) − h(t)] = C (t − t_vessel)
/// C = Σxy/Σx²,   u(C) = s/√Σx²
/// ```
///
/// Symbols: m liquid, t0 its temperature before, t settled, C heat capacity, t_vessel temperature
/// of the vessel before, h heat content of water, s scatter. Source: conservation of heat; least
/// squares.
///
/// A line through the origin, in the heat that the water gave (y, J) over the rise of the vessel
/// (x, K). It is the part that warms within the time you wait, so wait as long as a brew takes. A
/// thermometer's 0.3 K is 300 J in 250 g of water: several pours are worth it. For one pour beside
/// bodies already known, see [`crate::heat::vessel_heat_capacity`].
///
/// # Errors
/// [`Error::CannotTell`] for a single pour, or vessels that were as warm as the water;
/// [`Error::OutOfRange`] for more than thirty; [`Error::ResultOutOfRange`] below zero, where the
/// temperatures do not stand in order.
///
/// ```
/// # use cupwright::{calibrate::{self, Settled}, quantity::*};
/// let pour = |liquid, before, settled| {
///     Ok::<_, cupwright::Error>(Settled {
///         liquid: Liquid::from_grams(liquid)?,
///         before: Temperature::from_celsius(before)?,
///         settled: Temperature::from_celsius(settled)?,
///         vessel: VesselTemperature::from_celsius(21.0)?,
///     })
/// };
/// // Invented pours.
/// let pours = [pour(250.0, 95.0, 84.9)?, pour(200.0, 95.0, 82.4)?, pour(250.0, 88.0, 79.2)?];
/// let brewer = calibrate::heat_capacity(&pours)?.estimate;
/// assert_eq!(format!("{} ± {}", brewer.value, brewer.u), "166 J/K ± 3.9 J/K");
/// # Ok::<(), cupwright::Error>(())
/// ```
pub fn heat_capacity(pours: &[Settled]) -> Result<Fitted<HeatCapacity>, Error> {
    let point = |pour: &Settled| {
        let rise = pour.settled.celsius() - pour.vessel.celsius();
        let given = water::enthalpy(pour.before).joules_per_gram()
            - water::enthalpy(pour.settled).joules_per_gram();
        (rise, pour.liquid.grams() * given)
    };
    let (capacity, u, quality) = proportion(Quantity::HeatCapacity, pours, point, 1.0)?;
    Ok(Fitted { estimate: told(capacity, u, &quality)?, quality })
}
