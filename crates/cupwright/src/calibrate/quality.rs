//! How far a fit can be trusted: scatter, residuals, leverages, and the measurement that stands
//! out.

use crate::error::{Error, Untold};
use crate::math::{atan, max, min, sqrt, square};
use crate::quantity::{Measurements, Quantity};

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
    /// Measurements n.
    pub measurements: Measurements,
    /// Degrees of freedom ν = n − p with p parameters.
    pub freedom: f64,
    /// Residual standard deviation s = √(Σe²/ν), in the unit of what was fitted.
    pub s: f64,
    /// Residuals e, measured less fitted, in the order given; zeros beyond n.
    pub residuals: [f64; MOST_MEASUREMENTS],
    /// Leverages h, in the order given: how much of a measurement the fit takes from it alone, 0 to
    /// 1; zeros beyond n. They add up to p.
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
        let squares = each.clone().map(|(e, _)| square(e)).sum::<f64>();
        Self {
            measurements,
            freedom,
            s: sqrt(squares / freedom),
            residuals,
            leverages,
            odd: oddest(measurements.count(), freedom, squares, each),
        }
    }
}

/// How many measurements there are, refused if more than thirty or fewer than needed to tell a
/// quantity.
pub(super) fn enough<T>(
    measured: &[T],
    needed: f64,
    quantity: Quantity,
) -> Result<Measurements, Error> {
    let found = measured.len() as f64;
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
        .filter(|(_, (_, h))| 1.0 - h > LEAST_OWN)
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
    let chance = min(1.0, count * student_outside(share, others as u32));
    Some(Odd {
        at,
        studentised: if residual < 0.0 { -distance } else { distance },
        chance,
        is_suspicious: chance < SUSPICIOUS_CHANCE,
    })
}

/// Chance that Student's t with a whole number of degrees of freedom lies outside ±t, by the finite
/// series for x = sin²θ = t²/(ν + t²) (Abramowitz & Stegun, 26.7.3 and 26.7.4).
fn student_outside(x: f64, freedom: u32) -> f64 {
    let (sine, square_cosine) = (sqrt(x), 1.0 - x);
    let even = freedom.is_multiple_of(2);
    let mut term = if even { 1.0 } else { sqrt(square_cosine) };
    // One degree of freedom has the angle alone.
    let mut sum = if freedom == 1 { 0.0 } else { term };
    for j in (1..freedom / 2).map(f64::from) {
        let ratio = if even { (2.0 * j - 1.0) / (2.0 * j) } else { 2.0 * j / (2.0 * j + 1.0) };
        term *= ratio * square_cosine;
        sum += term;
    }
    let inside = if even {
        sine * sum
    } else {
        core::f64::consts::FRAC_2_PI * (atan(sqrt(x / square_cosine)) + sine * sum)
    };
    max(0.0, 1.0 - inside)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn students_tails_are_those_of_scipy() {
        // t, degrees of freedom, 2 scipy.stats.t.sf(t, ν).
        for (t, freedom, outside) in [
            (0.0, 7, 1.0),
            (1.0, 1, 0.5),
            (2.0, 2, 0.183_503_419_072_273_97),
            (1.5, 3, 0.230_583_865_244_822_94),
            (1.5, 4, 0.208),
            (2.5, 7, 0.040_992_218_585_752_89),
            (3.1, 12, 0.009_189_996_378_391_336),
            (12.706_204_736_174_694, 1, 0.05),
            (4.302_652_729_749_462, 2, 0.05),
            (2.048_407_141_795_245, 28, 0.05),
            (2.045_229_642_132_703, 29, 0.05),
        ] {
            let x = t * t / (f64::from(freedom) + t * t);
            let got = student_outside(x, freedom);
            assert!((got - outside).abs() < 1e-13, "t {t}, ν {freedom}: {got} for {outside}");
        }
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
