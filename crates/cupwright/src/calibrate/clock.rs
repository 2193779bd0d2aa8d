//! The cooling law as a clock that runs −k t, read off a temperature θ above the end.
//!
//! ```text
//! −k t = ∫ dθ/F = ∫ (θ/F) d ln θ = a ln θ + Q(θ) + constant,   a = θ/F at θ = 0
//! ```
//!
//! θ/F is smooth from the end to the hottest water. Q is the integral, term by term, of the polynomial
//! through it at the zeros of a Chebyshev polynomial (recurrences from memory; a test compares with the
//! quadrature of [`Law::span`]). One series then does for all readings and all steps of a fit what takes
//! the quadrature thirty vapour pressures each time. Below 0.1 K, where [`Law`] is cut straight, the two
//! differ by 0.3 % of θ.

use crate::heat::Law;
use crate::math::{exp, ln, square};
use crate::quantity::Quantity;

/// Terms of the series: 1e-11 relative in a room, 2e-8 at −20 °C.
const TERMS: usize = 18;

/// cos(π/(2 TERMS)), the outermost node.
const OUTERMOST: f64 = 0.996_194_698_091_745_5;

/// A step in ln θ that leaves an error far below rounding.
const SETTLED: f64 = 1e-8;

/// Far more than convergence needs (under ten in tests): only a bound for the proof that it ends.
const MOST_NEWTON_STEPS: u32 = 32;

pub(super) struct Clock {
    /// a
    straight: f64,
    /// Q in Chebyshev polynomials of x = 2 θ/θ_max − 1, from the first on: the constant is nought.
    series: [f64; TERMS - 1],
    /// 2/θ_max
    per_half: f64,
}

/// What a clock shows at a temperature.
pub(super) struct Shown {
    /// −k t, from any beginning.
    pub(super) reads: f64,
    /// θ/F, by how much it changes with ln θ.
    pub(super) pace: f64,
}

impl Clock {
    pub(super) fn of(law: &Law) -> Self {
        let half = 0.5 * (Quantity::Temperature.highest() - law.celsius(0.0));
        // θ/F = c0/2 + Σ c_j T_j, by sums over the nodes.
        let mut pace = [0.0; TERMS];
        let (mut node, mut before) = (OUTERMOST, OUTERMOST);
        for _ in 0..TERMS {
            let here = 2.0 / TERMS as f64 * law.pace(half * (1.0 + node));
            let (mut polynomial, mut next) = (1.0, node);
            for coefficient in &mut pace {
                *coefficient += here * polynomial;
                (polynomial, next) = (next, 2.0 * node * next - polynomial);
            }
            let turn = 2.0 * square(OUTERMOST) - 1.0;
            (node, before) = (2.0 * turn * node - before, node);
        }
        // (θ/F − a)/(1 + x) = d0/2 + Σ d_j T_j,  d_(j−1) = 2 (c_j − d_j) − d_(j+1);
        // Q = Σ (d_(j−1) − d_(j+1))/(2j) T_j.
        let [constant, pace @ ..] = pace;
        let mut series = [0.0; TERMS - 1];
        let (mut own, mut above) = (0.0, 0.0);
        for ((at, coefficient), term) in pace.iter().enumerate().zip(&mut series).rev() {
            let below = 2.0 * (coefficient - own) - above;
            *term = (below - above) / (2.0 * (at as f64 + 1.0));
            (own, above) = (below, own);
        }
        Self { straight: 0.5 * (constant - own - above), series, per_half: 1.0 / half }
    }

    /// What it shows at ln θ.
    pub(super) fn at(&self, ln_theta: f64) -> Shown {
        // Clenshaw's recurrence, and its derivative.
        let above_least = exp(ln_theta) * self.per_half;
        let x = above_least - 1.0;
        let [mut sum, mut sum_before, mut slope, mut slope_before] = [0.0; 4];
        for term in self.series.iter().rev() {
            (slope, slope_before) = (2.0 * (sum + x * slope) - slope_before, slope);
            (sum, sum_before) = (term + 2.0 * x * sum - sum_before, sum);
        }
        Shown {
            reads: self.straight * ln_theta + (x * sum - sum_before),
            pace: self.straight + above_least * (sum + x * slope - slope_before),
        }
    }

    /// θ at which it shows a reading, and θ/F there, sought from a θ near it.
    ///
    /// The reading is a concave, rising function of ln θ: the first of Newton's steps lands on or below
    /// the root, those after it climb.
    pub(super) fn when(&self, reads: f64, near: f64) -> (f64, f64) {
        let mut ln_theta = ln(near);
        let mut pace = self.straight;
        for _ in 0..MOST_NEWTON_STEPS {
            let shown = self.at(ln_theta);
            let step = (reads - shown.reads) / shown.pace;
            (ln_theta, pace) = (ln_theta + step, shown.pace);
            if step.abs() < SETTLED || step.is_nan() {
                break;
            }
        }
        (exp(ln_theta), pace)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::heat::{Cover, Surroundings};
    use crate::quantity::{Humidity, RoomTemperature};

    #[test]
    fn runs_as_the_quadrature() {
        for (room, within) in [(-20.0, 3e-7), (0.0, 1e-7), (20.0, 1e-7), (50.0, 1e-7)] {
            for cover in [Cover::Open, Cover::Lidded] {
                let law = Law::of(&Surroundings {
                    room: RoomTemperature::from_celsius(room).unwrap(),
                    humidity: Humidity::from_percent(50.0).unwrap(),
                    cover,
                });
                let clock = Clock::of(&law);
                let hottest = 105.0 - law.celsius(0.0);
                for theta in [0.1, 1.0, 10.0, 30.0, 50.0] {
                    let span = clock.at(ln(hottest)).reads - clock.at(ln(theta)).reads;
                    let expected = law.span(hottest, theta);
                    assert!(
                        (span / expected - 1.0).abs() < within,
                        "{room} {theta}: {span} {expected}"
                    );
                    let pace = clock.at(ln(theta)).pace;
                    assert!(
                        (pace / law.pace(theta) - 1.0).abs() < 10.0 * within,
                        "{room} {theta}: {pace}"
                    );
                    for near in [0.1, 40.0, hottest] {
                        let (back, _) = clock.when(clock.at(ln(theta)).reads, near);
                        assert!((back / theta - 1.0).abs() < 1e-12, "{room} {theta}: {back}");
                    }
                }
            }
        }
    }
}
