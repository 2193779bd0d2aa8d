//! One's own instrument: what it shows of a coffee, and how well it repeats itself.

use super::quality::{Quality, enough};
use super::{Fitted, proportion, told};
use crate::error::Error;
use crate::math::{floor, sqrt};
use crate::quantity::{Brix, CupNumber, Quantity, RefractiveFactor, Repeatability, Strength};
use crate::record::record;

record! {
    /// A sample that was read, and then dried in an oven.
    pub struct Dried {
        /// The reading x, at 20 °C or compensated.
        brix: Brix = "brix",
        /// Strength T by the oven: dry residue over the sample's mass.
        strength: Strength = "strength_pct",
    }
}

/// Refractive factor of a coffee, from samples read and oven-dried.
///
/// ```text
/// T = k x
/// k = Σ x T/Σ x²,   u(k)/k = s/(k √Σ x²)
/// ```
///
/// Symbols: T strength by drying, k refractive factor, x degrees Brix, s scatter. Source: least
/// squares.
///
/// The uncertainty is told relative to k, as [`crate::uncertainty::strength`] takes it.
///
/// Ten grams dried for three hours at 105 °C on a balance of 0.1 mg tell T to 0.003 %; on a scale
/// of 0.1 g nothing is told. The factor holds for the coffees dried, filtered as they were. Its
/// error is common to all readings and hardly touches their differences.
///
/// # Errors
/// [`Error::CannotTell`] for a single sample, or readings that are all zero; [`Error::OutOfRange`]
/// for more than thirty; [`Error::ResultOutOfRange`] outside the range of [`RefractiveFactor`].
///
/// ```
/// # use cupwright::{calibrate::{self, Dried}, quantity::*};
/// let sample = |brix, strength| {
///     Ok::<_, cupwright::Error>(Dried {
///         brix: Brix::from_degrees(brix)?,
///         strength: Strength::from_percent(strength)?,
///     })
/// };
/// // Invented samples.
/// let samples = [sample(1.42, 1.214)?, sample(1.66, 1.402)?, sample(1.95, 1.667)?];
/// let factor = calibrate::refractive_factor(&samples)?.estimate;
/// assert_eq!(format!("{} ± {}", factor.value, factor.u), "0.852 %/°Bx ± 0.40 %");
/// # Ok::<(), cupwright::Error>(())
/// ```
pub fn refractive_factor(samples: &[Dried]) -> Result<Fitted<RefractiveFactor>, Error> {
    let point = |sample: &Dried| (sample.brix.degrees(), sample.strength.percent());
    let (k, u, quality) = proportion(Quantity::RefractiveFactor, samples, point, 1.0)?;
    Ok(Fitted { estimate: told(k, 100.0 * u / k, &quality)?, quality })
}

record! {
    /// One reading of one cup.
    pub struct Repeat {
        /// Which cup.
        cup: CupNumber = "cup",
        /// What was read.
        strength: Strength = "strength_pct",
    }
}

/// Repeatability of one's own readings, pooled over several cups that were each read several times.
///
/// ```text
/// s_r² = Σ(x − x̄ of its cup)²/ν,   ν = readings less cups,   u(s_r) ≈ s_r/√(2ν)
/// ```
///
/// Symbols: x readings, s_r repeatability, ν degrees of freedom.
///
/// The order does not matter. A cup that was read once adds nothing. Five cups read three times
/// tell s_r to a fifth; what counts later is ν: with an interval by Student's t of that many
/// degrees of freedom the doubt about s_r is allowed for. An interval for s_r itself is lopsided, and
/// s_r ± t u is none. Source: JCGM 100:2008, 4.2.4 and E.4.3
/// (from memory).
///
/// # Errors
/// [`Error::CannotTell`] where no cup was read twice; [`Error::OutOfRange`] for more than thirty
/// readings; [`Error::ResultOutOfRange`] for readings that are all equal: the display is too coarse
/// to tell.
///
/// ```
/// # use cupwright::{calibrate::{self, Repeat}, quantity::*};
/// let read = |cup, strength| {
///     Ok::<_, cupwright::Error>(Repeat {
///         cup: CupNumber::from_number(cup)?,
///         strength: Strength::from_percent(strength)?,
///     })
/// };
/// // Invented readings of two cups.
/// let readings = [
///     read(1.0, 1.44)?, read(1.0, 1.46)?, read(1.0, 1.45)?,
///     read(2.0, 1.31)?, read(2.0, 1.33)?,
/// ];
/// let own = calibrate::repeatability(&readings)?;
/// assert_eq!(own.estimate.value.to_string(), "0.012 % strength");
/// assert_eq!(own.estimate.freedom.count(), 3.0);
/// # Ok::<(), cupwright::Error>(())
/// ```
pub fn repeatability(readings: &[Repeat]) -> Result<Fitted<Repeatability>, Error> {
    let of_cup = |cup| readings.iter().filter(move |other| other.cup == cup);
    // Each reading is one part of its cup.
    let cups = readings.iter().map(|read| 1.0 / of_cup(read.cup).count() as f64).sum::<f64>();
    let cups = floor(cups + 0.5);
    let measurements = enough(readings.len(), cups + 1.0, Quantity::Repeatability)?;
    let each = readings.iter().map(|read| {
        let count = of_cup(read.cup).count() as f64;
        let mean = of_cup(read.cup).map(|other| other.strength.percent()).sum::<f64>() / count;
        (read.strength.percent() - mean, 1.0 / count)
    });
    let quality = Quality::of(measurements, cups, each);
    let u = quality.s / sqrt(2.0 * quality.freedom.count());
    Ok(Fitted { estimate: told(quality.s, u, &quality)?, quality })
}
