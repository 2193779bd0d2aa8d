//! From what an instrument shows to the strength of the beverage.
//!
//! Take the sample from the stirred cup, filter it, let it cool covered to room temperature, zero
//! the instrument at that temperature, wait ten seconds on the prism, and read at least twice:
//! single readings differ (common practice, no source).
//!
//! * [`combine`] turns repeated readings into one value, or says "take another";
//! * [`strength_of_brix`] and [`strength_of_index`] turn an optical reading into a strength, by a
//!   factor whose basis is weak;
//! * [`total_strength`] and [`coffee_strength`] account for the solids of the brew water.

use crate::error::Error;
use crate::math::{max, min, sqrt, square};
use crate::quantity::{
    Brix, Quantity, ReadingCount, RefractiveFactor, RefractiveIndex, Repeatability,
    SampleTemperature, Strength, WaterSolids, computed,
};

/// What repeated readings amount to.
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub enum Agreement {
    /// They agree: the value is their mean.
    Mean = 1,
    /// A single reading, or two that differ by more than the critical range: take another.
    TakeAnother = 2,
    /// Three or more differ by more than the critical range: the value is their median. Look for a
    /// reason (warm sample, bubble, unfiltered) before trusting it.
    Median = 3,
}

/// One value from repeated readings.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Combined {
    /// The value: mean or median. With [`Agreement::TakeAnother`] it is the mean so far.
    pub value: Strength,
    /// What the readings amount to.
    pub agreement: Agreement,
    /// How many there were.
    pub count: ReadingCount,
    /// Largest less smallest, % strength.
    pub range_pct: f64,
    /// The range that readings of this repeatability exceed once in twenty times, % strength;
    /// `None` for a single reading.
    pub critical_range_pct: Option<f64>,
}

/// Factors f(n) of the critical range, n = 2 to 10: the 95 % quantile of the range of n standard
/// normal values. ISO 5725-6 prints them rounded (2.8, 3.3, 3.6, …, from memory); here as computed by scipy
/// (`tests/vectors`).
const CRITICAL_RANGE_FACTORS: [f64; 9] =
    [2.7718, 3.3145, 3.6332, 3.8577, 4.0301, 4.1696, 4.2863, 4.3865, 4.4741];

/// The range that n readings exceed once in twenty times, in % strength.
///
/// ```text
/// R = f(n) s_r
/// ```
///
/// Symbols: R critical range, f(n) the 95 % quantile of the range of n standard normal values, s_r
/// repeatability.
///
/// For two it is the repeatability limit r = 1.96 √2 s_r. Source: ISO 5725-6, acceptability of
/// results.
///
/// # Errors
/// [`Error::OutOfRange`] for fewer than two or more than ten readings.
pub fn critical_range(count: ReadingCount, repeatability: Repeatability) -> Result<f64, Error> {
    let factor = (2_u8..)
        .zip(CRITICAL_RANGE_FACTORS)
        .find(|(n, _)| f64::from(*n) == count.count())
        .map(|(_, factor)| factor);
    match factor {
        Some(factor) => Ok(factor * repeatability.percent()),
        None => Err(Error::OutOfRange {
            quantity: Quantity::ReadingCount,
            value: count.count(),
            lowest: 2.0,
            highest: Quantity::ReadingCount.highest(),
        }),
    }
}

/// Combines repeated readings of one sample by the acceptance rule of ISO 5725-6.
///
/// ```text
/// value = mean where x_max − x_min ≤ f(n) s_r; else, from three readings on, the median
/// ```
///
/// Symbols: x readings, n how many, f(n) s_r the [`critical_range`]. Source: ISO 5725-6,
/// acceptability of results.
///
/// Two readings within f(2) s_r: their mean. Otherwise a third; three within f(3) s_r: their mean;
/// otherwise their median, or a fourth, and so on to ten. Readings that come as written on the
/// display are compared with a tolerance of 10⁻⁹ % strength.
///
/// A display that steps by 0.01 % adds to the scatter: with a repeatability of the sample alone, pass
/// √(s_r² + 0.01²/12). Even so steps of 0.01 % make the limit bite a little more or less often than one
/// time in twenty.
///
/// # Errors
/// [`Error::OutOfRange`] for no reading or more than ten.
///
/// ```
/// # use cupwright::{quantity::*, reading::{self, Agreement}};
/// let s_r = Repeatability::from_percent(0.01)?;
/// let readings = [Strength::from_percent(1.44)?, Strength::from_percent(1.39)?];
/// let two = reading::combine(&readings, s_r)?;
/// assert_eq!(two.agreement, Agreement::TakeAnother);
/// # Ok::<(), cupwright::Error>(())
/// ```
pub fn combine(readings: &[Strength], repeatability: Repeatability) -> Result<Combined, Error> {
    let count = ReadingCount::from_count(readings.len() as f64)?;
    let low = readings.iter().map(|r| r.percent()).fold(f64::INFINITY, min);
    let high = readings.iter().map(|r| r.percent()).fold(f64::NEG_INFINITY, max);
    let range_pct = high - low;
    let critical_range_pct = critical_range(count, repeatability).ok();
    let agree = critical_range_pct.is_some_and(|critical| range_pct <= critical + 1e-9);
    let agreement = match readings.len() {
        _ if agree => Agreement::Mean,
        0..=2 => Agreement::TakeAnother,
        _ => Agreement::Median,
    };
    let value = match agreement {
        Agreement::Median => median(readings),
        _ => mean(readings),
    };
    Ok(Combined { value: computed(value)?, agreement, count, range_pct, critical_range_pct })
}

/// Mean in percent.
fn mean(readings: &[Strength]) -> f64 {
    readings.iter().map(|r| r.percent()).sum::<f64>() / readings.len() as f64
}

/// Median in percent: the mean of the readings that as many lie at or below as at or above.
fn median(readings: &[Strength]) -> f64 {
    let half = readings.len().div_ceil(2);
    let middle = |r: &&Strength| {
        readings.iter().filter(|o| *o <= *r).count() >= half
            && readings.iter().filter(|o| *o >= *r).count() >= half
    };
    let low = readings.iter().filter(middle).map(|r| r.percent()).fold(f64::INFINITY, min);
    let high = readings.iter().filter(middle).map(|r| r.percent()).fold(f64::NEG_INFINITY, max);
    low + (high - low) / 2.0
}

/// Standard deviation of repeated readings: one's own repeatability.
///
/// ```text
/// s = √[ Σ(x − x̄)²/(n − 1) ]
/// ```
///
/// Symbols: s repeatability, x readings, x̄ their mean, n how many. Source: definition, as in JCGM
/// 100:2008, 4.2.2.
///
/// From three readings it is itself uncertain by half; pool several series.
///
/// # Errors
/// [`Error::OutOfRange`] for fewer than two or more than ten readings;
/// [`Error::ResultOutOfRange`] for readings that are all equal: the display is too coarse to tell.
pub fn repeatability(readings: &[Strength]) -> Result<Repeatability, Error> {
    let count = ReadingCount::from_count(readings.len() as f64)?;
    if readings.len() < 2 {
        return Err(Error::OutOfRange {
            quantity: Quantity::ReadingCount,
            value: count.count(),
            lowest: 2.0,
            highest: Quantity::ReadingCount.highest(),
        });
    }
    let centre = mean(readings);
    let squares = readings.iter().map(|r| square(r.percent() - centre)).sum::<f64>();
    computed(sqrt(squares / (count.count() - 1.0)))
}

/// What a refractometer was zeroed on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(rename_all = "snake_case")
)]
pub enum Zero {
    /// Distilled water: the reading holds the brew water's minerals too, taken as refracting like
    /// coffee solids (common salt differs by about 4 %, from memory).
    Distilled = 1,
    /// The brew water: the reading is of coffee alone.
    BrewWater = 2,
}

/// Strength of all solids in the beverage, which the mass balance works with, from a reading.
///
/// ```text
/// T = x                 zeroed on distilled water
/// T = x + s(1 − x)      zeroed on brew water
/// ```
///
/// Symbols: T strength of all solids, x reading, s solids of the brew water. Source: conservation
/// of solids.
///
/// Zeroed on distilled water, the reading itself; on brew water, T + s(1 − T). The minerals are never
/// counted twice.
///
/// # Errors
/// [`Error::ResultOutOfRange`] for a reading on brew water so near the highest strength that the
/// water's solids lead past it.
pub fn total_strength(
    reading: Strength,
    zero: Zero,
    water: WaterSolids,
) -> Result<Strength, Error> {
    computed(total_percent(reading.percent(), zero, water.fraction()))
}

/// The same with plain numbers, not checked: a reading in percent and the water's solids as a fraction.
pub(crate) fn total_percent(reading: f64, zero: Zero, solids: f64) -> f64 {
    match zero {
        Zero::Distilled => reading,
        Zero::BrewWater => reading + 100.0 * solids * (1.0 - reading / 100.0),
    }
}

/// Strength in coffee solids alone, from a reading.
///
/// ```text
/// T = (x − s)/(1 − s)   zeroed on distilled water
/// T = x                 zeroed on brew water
/// ```
///
/// Symbols: T strength in coffee solids, x reading, s solids of the brew water. Source:
/// conservation of solids.
///
/// # Errors
/// [`Error::ResultOutOfRange`] for a reading on a distilled zero below the water's own solids.
pub fn coffee_strength(
    reading: Strength,
    zero: Zero,
    water: WaterSolids,
) -> Result<Strength, Error> {
    match zero {
        Zero::BrewWater => Ok(reading),
        Zero::Distilled => {
            let s = water.fraction();
            computed(100.0 * (reading.fraction() - s) / (1.0 - s))
        }
    }
}

/// The usual factor from degrees Brix to coffee strength, 0.85.
///
/// **Weak basis**: trade convention found only in notes that were not peer-reviewed; a textbook's
/// espresso data imply 1.15 to 1.50 for total solids. Calibrate against oven-dried samples where it
/// matters. An uncertainty of 0.02 is common to all readings of one coffee, so it hardly touches the
/// difference of two brews.
pub const USUAL_REFRACTIVE_FACTOR: RefractiveFactor = RefractiveFactor::known(0.85);

/// Index of pure water at 20 °C, 589 nm, relative to air (ICUMSA 1974).
const INDEX_OF_WATER: f64 = 1.332_99;

/// Degrees Brix of a refractive index at 20 °C and 589 nm, relative to air.
///
/// ```text
/// B = 700.327805 y − 1831.48841 y² + 4666.42701 y³,   y = n − 1.33299
/// ```
///
/// Symbols: B degrees Brix, n refractive index. Source: ICUMSA 1974, fitted here.
///
/// Range: that of [`RefractiveIndex`]. Fitted here to the ICUMSA 1974 sucrose table, 0 to 30 °Bx,
/// within 0.005 °Bx.
///
/// # Errors
/// [`Error::ResultOutOfRange`] outside the range of [`Brix`].
pub fn brix_of_index(index: RefractiveIndex) -> Result<Brix, Error> {
    let y = index.ratio() - INDEX_OF_WATER;
    computed(y * (700.327_805 + y * (-1_831.488_41 + y * 4_666.427_01)))
}

/// Refractive index at 20 °C and 589 nm, relative to air, of degrees Brix.
///
/// ```text
/// n = 1.33299 + 1.42737174·10⁻³ B + 5.41909447·10⁻⁶ B² + 1.70831402·10⁻⁸ B³
/// ```
///
/// Symbols: n refractive index, B degrees Brix. Source: ICUMSA 1974, fitted here.
///
/// Fitted here to the ICUMSA 1974 sucrose table, 0 to 30 °Bx, within 7·10⁻⁶. [`brix_of_index`] is a
/// fit of its own, so the two invert each other within 0.006 °Bx.
///
/// # Errors
/// [`Error::ResultOutOfRange`] outside the range of [`RefractiveIndex`].
pub fn index_of_brix(brix: Brix) -> Result<RefractiveIndex, Error> {
    let b = brix.degrees();
    computed(INDEX_OF_WATER + b * (1.427_371_74e-3 + b * (5.419_094_47e-6 + b * 1.708_314_02e-8)))
}

/// A Brix reading at the sample's temperature, corrected to 20 °C.
///
/// ```text
/// B20 = B + 0.06197413 Δ + 1.209347·10⁻³ Δ² − 7.130168·10⁻⁶ Δ³,   Δ = t − 20 °C
/// ```
///
/// Symbols: B20 degrees Brix at 20 °C, B reading at the temperature t of the sample. Source: IAPWS
/// R9-97 and ICUMSA 1974, fitted here.
///
/// Only for an instrument that does not compensate by itself and was zeroed at 20 °C. The column of
/// pure water; at the 1 to 8 °Bx of coffee it is within 0.1 °Bx over 10 to 30 °C. Zeroing on water
/// at the sample's temperature is better. Fitted here to IAPWS R9-97 through the sucrose scale, with the
/// index of air from memory.
///
/// # Errors
/// [`Error::ResultOutOfRange`] outside the range of [`Brix`].
pub fn brix_at_20(brix: Brix, sample: SampleTemperature) -> Result<Brix, Error> {
    let d = sample.celsius() - 20.0;
    computed(brix.degrees() + d * (0.061_974_13 + d * (1.209_347e-3 - d * 7.130_168e-6)))
}

/// Strength from degrees Brix at 20 °C (or compensated).
///
/// ```text
/// T = k B
/// ```
///
/// Symbols: T strength, k refractive factor, B degrees Brix. Source: common practice, no source; k
/// is the caller's, its usual value a trade convention.
///
/// # Errors
/// [`Error::ResultOutOfRange`] below zero or above the range of [`Strength`].
///
/// ```
/// # use cupwright::{quantity::*, reading};
/// let strength = reading::strength_of_brix(
///     Brix::from_degrees(1.7)?,
///     reading::USUAL_REFRACTIVE_FACTOR,
/// )?;
/// assert_eq!(format!("{strength:.3}"), "1.445 %");
/// # Ok::<(), cupwright::Error>(())
/// ```
pub fn strength_of_brix(brix: Brix, factor: RefractiveFactor) -> Result<Strength, Error> {
    computed(percent_of_brix(brix, factor))
}

/// [`strength_of_brix`] in percent, not checked.
pub(crate) fn percent_of_brix(brix: Brix, factor: RefractiveFactor) -> f64 {
    factor.percent_per_degree() * brix.degrees()
}

/// Degrees Brix that a strength would show: the inverse of [`strength_of_brix`].
///
/// ```text
/// B = T/k
/// ```
///
/// Symbols: as for [`strength_of_brix`]. Source: common practice, no source, as for
/// [`strength_of_brix`].
///
/// # Errors
/// [`Error::ResultOutOfRange`] above the range of [`Brix`].
pub fn brix_of_strength(strength: Strength, factor: RefractiveFactor) -> Result<Brix, Error> {
    computed(strength.percent() / factor.percent_per_degree())
}

/// Strength from a refractive index read at the sample's temperature, relative to air.
///
/// ```text
/// T = k B20(B(n), t)
/// ```
///
/// Symbols: T strength, k refractive factor, B(n) by [`brix_of_index`], B20 by [`brix_at_20`] at
/// the temperature t of the sample. Source: ICUMSA 1974 and IAPWS R9-97 up to the Brix; from there
/// common practice, no source.
///
/// # Errors
/// [`Error::ResultOutOfRange`] for an index below that of water.
pub fn strength_of_index(
    index: RefractiveIndex,
    sample: SampleTemperature,
    factor: RefractiveFactor,
) -> Result<Strength, Error> {
    strength_of_brix(brix_at_20(brix_of_index(index)?, sample)?, factor)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn percent(values: &[f64]) -> std::vec::Vec<Strength> {
        values.iter().map(|v| Strength::from_percent(*v).unwrap()).collect()
    }

    extern crate std;

    #[test]
    fn median_of_odd_even_and_ties() {
        assert_eq!(median(&percent(&[3.0, 1.0, 2.0])), 2.0);
        assert_eq!(median(&percent(&[4.0, 1.0, 2.0, 3.0])), 2.5);
        assert_eq!(median(&percent(&[2.0, 2.0, 9.0])), 2.0);
        assert_eq!(median(&percent(&[1.0, 2.0, 2.0, 9.0])), 2.0);
        assert_eq!(median(&percent(&[1.0, 1.0, 9.0, 9.0])), 5.0);
    }

    #[test]
    fn the_rule_walks_from_one_reading_to_the_median() {
        let s_r = Repeatability::from_percent(0.01).unwrap();
        let agreement = |values: &[f64]| combine(&percent(values), s_r).unwrap().agreement;
        assert_eq!(agreement(&[1.44]), Agreement::TakeAnother);
        assert_eq!(agreement(&[1.44, 1.46]), Agreement::Mean);
        assert_eq!(agreement(&[1.44, 1.47]), Agreement::TakeAnother);
        assert_eq!(agreement(&[1.44, 1.47, 1.45]), Agreement::Mean);
        assert_eq!(agreement(&[1.44, 1.48, 1.45]), Agreement::Median);
        assert!(combine(&[], s_r).is_err());
        assert!(combine(&percent(&[1.4; 11]), s_r).is_err());
    }
}
