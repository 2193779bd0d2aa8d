//! How far a fit can be trusted: scatter, residuals, leverages, and the measurement that stands
//! out.

use crate::distribution::Law;
use crate::error::{Error, Untold};
use crate::math::{min, sqrt, square};
use crate::quantity::{DegreesOfFreedom, Measurements, Quantity};

/// Most measurements that one fit takes.
pub const MOST_MEASUREMENTS: usize = 30;

/// The measurement that stands out most from a fit.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Odd {
    /// Which one, counted from 0.
    pub at: usize,
    /// Its externally studentised residual: its distance from what the fit to all the others
    /// expects, in standard deviations of that distance.
    pub studentised: f64,
    /// Chance that the oddest of so many good measurements stands out as far or farther
    /// (Bonferroni's bound, 1 at most).
    pub chance: f64,
    /// Whether that chance is below [`SUSPICIOUS_CHANCE`]: look for a reason before leaving it out.
    pub is_suspicious: bool,
}

/// Below this chance a measurement is called suspicious. Common practice.
pub const SUSPICIOUS_CHANCE: f64 = 0.05;

/// How well a fit describes what was measured.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Quality {
    /// Measurements n that tell something: not those at zero, where every such law begins.
    pub measurements: Measurements,
    /// Degrees of freedom ν = n − p with p parameters.
    pub freedom: DegreesOfFreedom,
    /// Residual standard deviation s = √(Σe²/ν), in the unit of what was fitted.
    pub s: f64,
    /// Residuals e, measured less fitted, in the order given; zeros beyond the last.
    pub residuals: [f64; MOST_MEASUREMENTS],
    /// Leverages h, in the order given: how much of a measurement the fit takes from it alone, 0 to
    /// 1; zero of one that tells nothing, and beyond the last. They add up to p.
    pub leverages: [f64; MOST_MEASUREMENTS],
    /// The oddest measurement; none with fewer than two degrees of freedom, or without any scatter.
    pub odd: Option<Odd>,
}

/// A leverage nearer to one than this leaves nothing of a residual to judge.
const LEAST_OWN: f64 = 1e-9;

impl Quality {
    /// The quality of a fit of `parameters` from its residuals and leverages, at most thirty.
    pub(super) fn of(
        measurements: Measurements,
        parameters: f64,
        each: impl Iterator<Item = (f64, f64)> + Clone,
    ) -> Self {
        let mut residuals = [0.0; MOST_MEASUREMENTS];
        let mut leverages = [0.0; MOST_MEASUREMENTS];
        let kept = residuals.iter_mut().zip(&mut leverages);
        // Adding zero turns -0 into +0.
        kept.zip(each.clone()).for_each(|((e, h), of)| (*e, *h) = (of.0 + 0.0, of.1 + 0.0));
        let freedom = measurements.count() - parameters;
        // A sum over none is -0 as well.
        let squares = each.clone().filter(tells).map(|(e, _)| square(e)).sum::<f64>() + 0.0;
        Self {
            measurements,
            freedom: DegreesOfFreedom::known(freedom),
            s: sqrt(squares / freedom),
            residuals,
            leverages,
            odd: oddest(measurements.count(), freedom, squares, each),
        }
    }
}

/// Whether a fit takes anything from a measurement. One at zero has no leverage: to count it would make
/// the scatter of the others look small.
fn tells((_, leverage): &(f64, f64)) -> bool {
    *leverage > 0.0
}

/// How many measurements there are, refused if more than thirty or fewer than needed to tell a
/// quantity.
pub(super) fn enough(count: usize, needed: f64, quantity: Quantity) -> Result<Measurements, Error> {
    let found = count as f64;
    if found < needed {
        return Err(Error::CannotTell { quantity, why: Untold::TooFew, found, needed });
    }
    Measurements::from_count(found)
}

/// The measurement with the largest externally studentised residual.
///
/// With x = e²/[(1 − h) Σe²], the share of the scatter that one measurement makes alone,
/// t² = (ν − 1) x/(1 − x), which is distributed as Student's t with ν − 1 degrees of freedom.
fn oddest(
    count: f64,
    freedom: f64,
    squares: f64,
    each: impl Iterator<Item = (f64, f64)>,
) -> Option<Odd> {
    let share = |e: f64, h: f64| square(e) / ((1.0 - h) * squares);
    let (at, share, residual) = each
        .enumerate()
        .filter(|(_, one)| tells(one) && 1.0 - one.1 > LEAST_OWN)
        .map(|(at, (e, h))| (at, share(e, h), e))
        .fold(None, |most: Option<(usize, f64, f64)>, one| match most {
            Some(most) if most.1 >= one.1 => Some(most),
            _ => Some(one),
        })?;
    // Rounding may make one measurement more than all there is.
    let share = min(share, 1.0 - f64::EPSILON);
    if freedom < 2.0 || squares <= 0.0 {
        return None;
    }
    let others = freedom - 1.0;
    let distance = sqrt(others * share / (1.0 - share));
    let chance = min(1.0, count * 2.0 * Law::of(DegreesOfFreedom::known(others)).tail(distance));
    Some(Odd {
        at,
        studentised: if residual < 0.0 { -distance } else { distance },
        chance,
        is_suspicious: chance < SUSPICIOUS_CHANCE,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn where_nothing_tells_there_is_no_scatter_without_a_sign() {
        let measurements = Measurements::from_count(4.0).unwrap();
        let quality = Quality::of(measurements, 2.0, [(0.1, 0.0); 4].into_iter());
        assert_eq!(quality.s.to_bits(), 0);
    }

    #[test]
    fn nothing_that_is_told_has_a_zero_with_a_sign() {
        let measurements = Measurements::from_count(4.0).unwrap();
        // One stands alone: of the others none is off.
        let each = [(0.5, 1.0 - 1e-12), (-0.0, 0.5), (-0.0, 0.5), (-0.0, -0.0)];
        let quality = Quality::of(measurements, 2.0, each.into_iter());
        assert!(
            quality.residuals.iter().chain(&quality.leverages).all(|one| one.to_bits() >> 63 == 0)
        );
        assert_eq!(quality.odd.unwrap().studentised.to_bits(), 0);
    }

    /// e²/(1 − h) of the first is all of Σe², to the last digit.
    #[test]
    fn one_that_makes_all_of_the_scatter_is_still_at_some_distance() {
        let measurements = Measurements::from_count(4.0).unwrap();
        let each = [(1.0, 0.5), (1.0, 0.25), (0.0, 0.5), (0.0, 0.5)];
        let odd = Quality::of(measurements, 2.0, each.into_iter()).odd.unwrap();
        assert!(odd.at == 0 && odd.studentised > 1e6 && odd.studentised < 1e9, "{odd:?}");
    }

    #[test]
    fn what_stands_alone_is_not_judged() {
        let measurements = Measurements::from_count(4.0).unwrap();
        // The first has all the leverage and no residual of its own.
        let each = [(0.0, 1.0), (0.1, 1.0 / 3.0), (0.1, 1.0 / 3.0), (-0.2, 1.0 / 3.0)];
        let odd = Quality::of(measurements, 2.0, each.into_iter()).odd.unwrap();
        assert_eq!(odd.at, 3);
        // Without scatter, or with too little to compare with, nothing is odd.
        let still = each.map(|(_, h)| (0.0, h));
        assert_eq!(Quality::of(measurements, 2.0, still.into_iter()).odd, None);
        assert_eq!(Quality::of(measurements, 3.0, each.into_iter()).odd, None);
    }
}
