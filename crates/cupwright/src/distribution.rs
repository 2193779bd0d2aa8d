//! Normal and Student t: tails, quantiles, and a correlated pair in a rectangle.
//!
//! | what | method | error |
//! |---|---|---|
//! | normal tail | complementary error function | 10⁻¹⁵ |
//! | normal quantile | two rational functions | 10⁻¹⁵ relative |
//! | t tail | two series of positive terms | 5·10⁻¹⁴ |
//! | t quantile | Halley's steps | 5·10⁻¹² relative, of tails from 5·10⁻⁴ on |
//! | pair | Owen's T function | 10⁻¹² |

use core::f64::consts::{FRAC_1_SQRT_2, PI};

use crate::math::{erfc, exp, integral, ln, ln_one_plus, max, one_minus_exp_minus, sqrt, square};
use crate::quantity::DegreesOfFreedom;

/// 1/√(2π).
const NORMAL_PEAK: f64 = 0.398_942_280_401_432_7;

/// Probability that a standard normal value exceeds z.
fn normal_tail(z: f64) -> f64 {
    0.5 * erfc(z * FRAC_1_SQRT_2)
}

/// The z that a standard normal value exceeds with a probability from [`RAREST`] to ½.
///
/// Wichura 1988, algorithm AS 241, doi 10.2307/2347330, PPND16 without its farthest tail.
fn normal_exceeded(tail: f64) -> f64 {
    let q = 0.5 - tail;
    if q <= 0.425 {
        let r = 0.180_625 - q * q;
        let above = horner(
            r,
            [
                2_509.080_928_730_122_7,
                33_430.575_583_588_13,
                67_265.770_927_008_7,
                45_921.953_931_549_87,
                13_731.693_765_509_46,
                1_971.590_950_306_551_3,
                133.141_667_891_784_38,
                3.387_132_872_796_366_5,
            ],
        );
        let below = horner(
            r,
            [
                5_226.495_278_852_854,
                28_729.085_735_721_943,
                39_307.895_800_092_71,
                21_213.794_301_586_597,
                5_394.196_021_424_751,
                687.187_007_492_057_9,
                42.313_330_701_600_91,
                1.0,
            ],
        );
        return q * above / below;
    }
    let r = sqrt(-ln(tail)) - 1.6;
    let above = horner(
        r,
        [
            7.745_450_142_783_414e-4,
            2.272_384_498_926_918_4e-2,
            2.417_807_251_774_506e-1,
            1.270_458_252_452_368_4,
            3.647_848_324_763_204_5,
            5.769_497_221_460_691,
            4.630_337_846_156_546,
            1.423_437_110_749_683_5,
        ],
    );
    let below = horner(
        r,
        [
            1.050_750_071_644_416_9e-9,
            5.475_938_084_995_345e-4,
            1.519_866_656_361_645_7e-2,
            1.481_039_764_274_800_8e-1,
            6.897_673_349_851e-1,
            1.676_384_830_183_803_8,
            2.053_191_626_637_759,
            1.0,
        ],
    );
    above / below
}

/// The rarest tail of the second rational function, e⁻²⁵.
const RAREST: f64 = 1.388_794_386_496_402_1e-11;

/// A polynomial from its highest coefficient down.
fn horner(x: f64, coefficients: [f64; 8]) -> f64 {
    coefficients.into_iter().fold(0.0, |sum, coefficient| sum * x + coefficient)
}

/// The distribution of an error of standard uncertainty one.
#[derive(Clone, Copy)]
pub(crate) enum Law {
    /// Its uncertainty is as good as known.
    Normal,
    /// Student's, with its degrees of freedom and its density at zero.
    Student { nu: f64, peak: f64 },
}

impl Law {
    pub(crate) fn of(freedom: DegreesOfFreedom) -> Self {
        if freedom >= DegreesOfFreedom::KNOWN {
            return Law::Normal;
        }
        let nu = freedom.count();
        Law::Student { nu, peak: peak(nu) }
    }

    /// Probability of exceeding t.
    pub(crate) fn tail(self, t: f64) -> f64 {
        match self {
            Law::Normal => normal_tail(t),
            Law::Student { .. } => self.tail_and_density(t).0,
        }
    }

    /// Probability of exceeding t, and the density there.
    pub(crate) fn tail_and_density(self, t: f64) -> (f64, f64) {
        match self {
            Law::Normal => (normal_tail(t), NORMAL_PEAK * exp(-0.5 * t * t)),
            Law::Student { nu, peak } => {
                let density = peak * exp(-0.5 * (nu + 1.0) * ln_one_plus(t * t / nu));
                let tail = tail_above(t.abs(), nu, density);
                (if t.is_sign_negative() { 1.0 - tail } else { tail }, density)
            }
        }
    }

    /// The t that is exceeded with a probability from 5·10⁻⁴ to ½. Rarer ones drown in the error of the tail.
    ///
    /// The logarithm of the tail over that of t is nearly straight far out, so Halley's steps go along
    /// it. Start: Wallace 1959, t² = ν(e^(w²/ν) − 1) with w = z (8ν + 3)/(8ν + 1).
    pub(crate) fn exceeded(self, tail: f64) -> f64 {
        self.exceeded_by_steps(tail).0
    }

    /// The same, and how many steps it took.
    fn exceeded_by_steps(self, tail: f64) -> (f64, u32) {
        let z = normal_exceeded(tail);
        let Law::Student { nu, .. } = self else { return (z, 0) };
        if z == 0.0 {
            return (z, 0);
        }
        let w = z * (8.0 * nu + 3.0) / (8.0 * nu + 1.0);
        let mut t = sqrt(nu * -one_minus_exp_minus(-w * w / nu));
        for steps in 1..=MOST_STEPS {
            let (there, density) = self.tail_and_density(t);
            let elasticity = t * density / there;
            let newton = ln(there / tail) / elasticity;
            // Second over first derivative of ln tail by ln t.
            let bend = 1.0 - (nu + 1.0) * t * t / (nu + t * t) + elasticity;
            let step = newton / (1.0 + 0.5 * newton * bend);
            t *= exp(step);
            // The next step would be about the cube of this one.
            if step.abs() < 1e-4 {
                return (t, steps);
            }
        }
        (t, MOST_STEPS)
    }

    /// The normal value exceeded as often as t; what is rarer than [`RAREST`] counts for nothing.
    pub(crate) fn normal_equivalent(self, t: f64) -> f64 {
        if let Law::Normal = self {
            return t;
        }
        let z = normal_exceeded(max(self.tail(t.abs()), RAREST));
        if t < 0.0 { -z } else { z }
    }
}

/// More than is ever needed (four in tests): only a bound.
const MOST_STEPS: u32 = 30;

/// Height of Student's density at zero, Γ((ν + 1)/2)/[√(νπ) Γ(ν/2)].
fn peak(nu: f64) -> f64 {
    // Γ(x + ½)/Γ(x) by its asymptotic series in 1/x, from an x large enough; down from there by
    // the recurrence.
    let mut x = 0.5 * nu;
    let (mut above, mut below) = (1.0, 1.0);
    while x < 16.0 {
        above *= x;
        below *= x + 0.5;
        x += 1.0;
    }
    let r = 1.0 / x;
    let s = r * r;
    let series = -1.0 / 8.0 + s * (1.0 / 192.0 + s * (-1.0 / 640.0 + s * (17.0 / 14_336.0)));
    above / below * sqrt(x / (nu * PI)) * exp(r * series)
}

/// Probability above a t that is not negative, where the density is known.
///
/// The incomplete beta function as t f(t) times a series: of what lies between 0 and t where
/// t² < ν, else of what lies beyond (DLMF 8.17.8). No term is negative, so no digits are lost.
fn tail_above(t: f64, nu: f64, density: f64) -> f64 {
    // Beyond, less than this is left.
    if t > 1.0 && t * density < 1e-19 {
        return 0.0;
    }
    let all = nu + square(t);
    if square(t) < nu {
        // Rounding may lead below zero.
        max(0.5 - t * density * series(nu, 1.5, square(t) / all), 0.0)
    } else {
        t * density / nu * series(nu, 0.5 * nu + 1.0, nu / all)
    }
}

/// Σ Π (ν/2 + ½ + j)/(b + j) r, the hypergeometric series F(ν/2 + ½, 1; b; r): 20 to 50 terms for the t
/// of a confidence.
fn series(nu: f64, below: f64, ratio: f64) -> f64 {
    let (mut above, mut below) = ((0.5 * nu + 0.5) * ratio, below);
    let (mut term, mut sum) = (1.0, 1.0);
    for _ in 0..MOST_TERMS {
        term *= above / below;
        sum += term;
        above += ratio;
        below += 1.0;
        if term < 1e-16 * sum {
            break;
        }
    }
    sum
}

/// More than is ever needed (230 in tests): only a bound.
const MOST_TERMS: u32 = 1000;

/// Probability that two standard normal values of a correlation both lie between their edges.
pub(crate) fn in_rectangle(x: (f64, f64), y: (f64, f64), correlation: f64) -> f64 {
    let below = |h, k| both_below(h, k, correlation);
    let inside = below(x.1, y.1) - below(x.0, y.1) - below(x.1, y.0) + below(x.0, y.0);
    max(inside, 0.0)
}

/// Probability that one standard normal value lies below h and the other below k: Owen 1956,
/// doi 10.1214/aoms/1177728074, for correlations between the ends too, which it approaches.
fn both_below(h: f64, k: f64, correlation: f64) -> f64 {
    // An edge at zero has no side; a distance that nothing can show gives it one.
    let off_zero = |x: f64| if x == 0.0 { 1e-100 } else { x };
    let (h, k) = (off_zero(h), off_zero(k));
    let apart = max(sqrt((1.0 - correlation) * (1.0 + correlation)), 1e-12);
    let opposite = if (h < 0.0) == (k < 0.0) { 0.0 } else { 0.5 };
    0.5 * (normal_tail(-h) + normal_tail(-k))
        - owen(h, (k - correlation * h) / apart)
        - owen(k, (h - correlation * k) / apart)
        - opposite
}

/// Owen's T(h, q/h): the probability that one value is above h > 0 and the other between 0 and q/h
/// times that one.
///
/// ```text
/// T(h, a) = 1/2π ∫₀ᵃ exp[−h²(1 + x²)/2]/(1 + x²) dx        |a| ≤ 1
/// T(h, a) = ½[Q(h) + Q(ah)] − Q(h) Q(ah) − T(ah, 1/a)      a > 1, h ≥ 0
/// ```
fn owen(h: f64, q: f64) -> f64 {
    let sign = if (h < 0.0) == (q < 0.0) { 1.0 } else { -1.0 };
    let (h, q) = (h.abs(), q.abs());
    if q > h {
        let (beyond_h, beyond_q) = (normal_tail(h), normal_tail(q));
        return sign * (0.5 * (beyond_h + beyond_q) - beyond_h * beyond_q - owen_within(q, h / q));
    }
    sign * owen_within(h, q / h)
}

/// T(h, a) for a from 0 to 1.
fn owen_within(h: f64, a: f64) -> f64 {
    // Beyond, less than 10⁻¹³.
    if h > 7.5 {
        return 0.0;
    }
    let ring = |x: f64| {
        let one = 1.0 + square(x);
        exp(-0.5 * h * h * one) / one
    };
    // Panels of five points, a third of the unit interval wide at most.
    let panels = if a > 2.0 / 3.0 { 3 } else { 2 };
    integral(0.0, a, panels, ring) / (2.0 * PI)
}

#[cfg(test)]
mod tests {
    use core::f64::consts::FRAC_PI_6;

    use super::*;

    fn student(nu: f64) -> Law {
        Law::Student { nu, peak: peak(nu) }
    }

    #[test]
    fn a_density_is_what_its_tail_loses() {
        let laws = [1.0, 2.5, 30.0, 1e6].map(student);
        for law in laws.into_iter().chain([Law::Normal]) {
            for t in [-3.0, -1.0, 0.0, 0.5, 1.0, 2.0, 4.0] {
                let lost = law.tail(t - 1e-4) - law.tail(t + 1e-4);
                let (_, density) = law.tail_and_density(t);
                assert!((lost / 2e-4 - density).abs() < 1e-8, "{t}: {lost} for {density}");
            }
        }
    }

    /// So far out the density is below the smallest number and a series would have to be without end.
    #[test]
    fn far_out_nothing_is_left() {
        for nu in [3e3, 1e5, 1e7, 9e8] {
            for t in [10.0, 40.0, 50.0, 1e3, 1e150] {
                assert!(student(nu).tail(t) < 1e-19, "{t} of {nu}");
                assert_eq!(student(nu).tail(-t), 1.0, "{t} of {nu}");
            }
        }
    }

    #[test]
    fn a_quantile_takes_two_steps_at_most_and_one_as_often() {
        let (mut all, mut steps_of_all) = (0, 0);
        for nu in [1.0, 1.5, 2.0, 3.0, 5.0, 8.0, 13.0, 30.0, 100.0, 1e3, 1e5, 1e8] {
            for tail in [0.49, 0.4, 0.25, 0.1, 0.05, 0.025, 0.01, 1e-3, 5e-4] {
                let (t, steps) = student(nu).exceeded_by_steps(tail);
                let (there, density) = student(nu).tail_and_density(t);
                // By how much t itself is off, over itself.
                let off = (there - tail) / (t * density);
                assert!(off.abs() < 5e-12, "{tail} of {nu}: {t} is off by {off}");
                assert!(steps <= 2, "{tail} of {nu}: {steps}");
                all += 1;
                steps_of_all += steps;
            }
        }
        assert!(5 * steps_of_all < 8 * all, "{steps_of_all} for {all}");
    }

    /// Where both edges are in the middle: ¼ + arcsin r/2π (Sheppard 1899).
    #[test]
    fn both_are_below_the_middle_as_often_as_their_correlation_says() {
        for (correlation, angle) in [(-1.0, -3.0), (-0.5, -1.0), (0.0, 0.0), (0.5, 1.0), (1.0, 3.0)]
        {
            let exact = 0.25 + angle * FRAC_PI_6 / (2.0 * PI);
            let got = both_below(0.0, 0.0, correlation);
            assert!((got - exact).abs() < 1e-12, "{correlation}: {got} for {exact}");
        }
    }

    /// Without a correlation they have nothing to do with each other.
    #[test]
    fn uncorrelated_values_are_below_independently() {
        for h in [-2.0, -0.3, 0.0, 1.0, 9.0] {
            for k in [-1.5, 0.0, 0.7, 3.0] {
                let exact = normal_tail(-h) * normal_tail(-k);
                let got = both_below(h, k, 0.0);
                assert!((got - exact).abs() < 1e-12, "{h} and {k}: {got} for {exact}");
            }
        }
    }
}
