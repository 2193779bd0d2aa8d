//! Normal and Student t: tails, quantiles, and a correlated pair in a rectangle.
//!
//! | what | method | error |
//! |---|---|---|
//! | normal tail | complementary error function | 1 unit in the last place, about |
//! | t tail | two series of positive terms | 10⁻¹⁴ |
//! | quantiles | Halley's steps | 10⁻¹¹ relative |
//! | pair | Owen's T function | 10⁻¹² |

use core::f64::consts::{FRAC_1_SQRT_2, PI};

use crate::math::{erfc, exp, integral, ln, ln_one_plus, max, one_minus_exp_minus, sqrt, square};
use crate::quantity::DegreesOfFreedom;

/// 1/√(2π).
const NORMAL_PEAK: f64 = 0.398_942_280_401_432_7;

/// Probability that a standard normal value exceeds z.
pub(crate) fn normal_tail(z: f64) -> f64 {
    0.5 * erfc(z * FRAC_1_SQRT_2)
}

fn normal_density(z: f64) -> f64 {
    NORMAL_PEAK * exp(-0.5 * z * z)
}

/// The z that a standard normal value exceeds with probability `tail`, which is above 0 and at most ½.
///
/// Start: Abramowitz & Stegun 26.2.23, within 4.5·10⁻⁴; each of two Halley steps cubes that.
fn normal_exceeded(tail: f64) -> f64 {
    if tail >= 0.5 {
        return 0.0;
    }
    let t = sqrt(-2.0 * ln(tail));
    let mut z = t
        - (2.515_517 + t * (0.802_853 + t * 0.010_328))
            / (1.0 + t * (1.432_788 + t * (0.189_269 + t * 0.001_308)));
    for _ in 0..2 {
        let newton = (normal_tail(z) - tail) / normal_density(z);
        z += newton / (1.0 + 0.5 * z * newton);
    }
    z
}

/// Student's density.
pub(crate) fn density(t: f64, freedom: DegreesOfFreedom) -> f64 {
    if is_known(freedom) {
        return normal_density(t);
    }
    let nu = freedom.count();
    density_at(t, nu, peak(nu))
}

/// Whether the degrees of freedom stand for "as good as known".
fn is_known(freedom: DegreesOfFreedom) -> bool {
    freedom >= DegreesOfFreedom::KNOWN
}

/// Probability that a value of Student's distribution exceeds t.
pub(crate) fn tail(t: f64, freedom: DegreesOfFreedom) -> f64 {
    if is_known(freedom) {
        return normal_tail(t);
    }
    let nu = freedom.count();
    let tail = tail_above(t.abs(), nu, peak(nu));
    if t < 0.0 { 1.0 - tail } else { tail }
}

/// The t that a value of Student's distribution exceeds with probability `tail`, which is above 0 and
/// at most ½.
///
/// The logarithm of the tail over that of t is nearly straight far out, so Halley's steps go along
/// it. Start: Wallace 1959, t² = ν(e^(w²/ν) − 1) with w = z (8ν + 3)/(8ν + 1).
pub(crate) fn exceeded(tail: f64, freedom: DegreesOfFreedom) -> f64 {
    let z = normal_exceeded(tail);
    if is_known(freedom) || z == 0.0 {
        return z;
    }
    let nu = freedom.count();
    let peak = peak(nu);
    let w = z * (8.0 * nu + 3.0) / (8.0 * nu + 1.0);
    let mut t = sqrt(nu * -one_minus_exp_minus(-w * w / nu));
    for _ in 0..MOST_STEPS {
        let there = tail_above(t, nu, peak);
        let elasticity = t * density_at(t, nu, peak) / there;
        let newton = ln(there / tail) / elasticity;
        // Twice the second derivative over the first one, all of ln tail by ln t.
        let bend = 1.0 - (nu + 1.0) * t * t / (nu + t * t) + elasticity;
        let step = newton / (1.0 + 0.5 * newton * bend);
        t *= exp(step);
        // The next step would be some cube of this one.
        if step.abs() < 1e-4 {
            break;
        }
    }
    t
}

/// More than is ever needed (five in tests): only a bound.
const MOST_STEPS: u32 = 30;

/// Height of Student's density at zero, Γ((ν + 1)/2)/[√(νπ) Γ(ν/2)].
fn peak(nu: f64) -> f64 {
    // Γ(x + ½)/Γ(x) by its asymptotic series in 1/x, from an x large enough; down from there by
    // the recurrence.
    let mut x = 0.5 * nu;
    let mut down = 1.0;
    while x < 16.0 {
        down *= x / (x + 0.5);
        x += 1.0;
    }
    let r = 1.0 / x;
    let series = r
        * (-1.0 / 8.0 + r * r * (1.0 / 192.0 + r * r * (-1.0 / 640.0 + r * r * (17.0 / 14_336.0))));
    down * sqrt(x) * exp(series) / sqrt(nu * PI)
}

/// The density with its height at zero.
fn density_at(t: f64, nu: f64, peak: f64) -> f64 {
    peak * exp(-0.5 * (nu + 1.0) * ln_one_plus(t * t / nu))
}

/// Probability above a t that is not negative.
///
/// The incomplete beta function as t f(t) times a series: of what lies between 0 and t where
/// t² < ν, else of what lies beyond (DLMF 8.17.8). No term is negative, so no digits are lost.
fn tail_above(t: f64, nu: f64, peak: f64) -> f64 {
    let density = density_at(t, nu, peak);
    // Beyond, less than 10⁻¹⁸ is left where ν is large, and less than t f(t) anywhere.
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

/// Σ Π (ν/2 + ½ + j)/(b + j) r, the hypergeometric series F(ν/2 + ½, 1; b; r). At most 230 terms in
/// tests, 25 for a t of three.
fn series(nu: f64, below: f64, ratio: f64) -> f64 {
    let (mut above, mut below) = (0.5 * nu + 0.5, below);
    let (mut term, mut sum) = (1.0, 1.0);
    for _ in 0..MOST_TERMS {
        term *= above / below * ratio;
        sum += term;
        above += 1.0;
        below += 1.0;
        if term < 1e-17 * sum {
            break;
        }
    }
    sum
}

/// More than is ever needed: only a bound.
const MOST_TERMS: u32 = 1000;

/// The normal value exceeded as often as t.
pub(crate) fn normal_equivalent(t: f64, freedom: DegreesOfFreedom) -> f64 {
    if is_known(freedom) {
        return t;
    }
    // What is rarer than 10⁻¹⁸ counts for nothing, but must stay finite.
    let tail = max(tail(t.abs(), freedom), 1e-18);
    if t < 0.0 { -normal_exceeded(tail) } else { normal_exceeded(tail) }
}

/// Probability that two standard normal values of a correlation both lie between their edges.
pub(crate) fn in_rectangle(x: (f64, f64), y: (f64, f64), correlation: f64) -> f64 {
    let below = |h, k| both_below(h, k, correlation);
    let inside = below(x.1, y.1) - below(x.0, y.1) - below(x.1, y.0) + below(x.0, y.0);
    max(inside, 0.0)
}

/// Probability that one standard normal value lies below h and the other below k: Owen 1956,
/// doi 10.1214/aoms/1177728074, eq. 2.1, for correlations between the ends too, which it approaches.
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
///
/// Four panels of five points on the unit interval: 2·10⁻¹³ at worst.
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
    // Beyond, less than 10⁻¹⁷.
    if h > 8.5 {
        return 0.0;
    }
    let ring = |x: f64| {
        let one = 1.0 + square(x);
        exp(-0.5 * h * h * one) / one
    };
    integral(0.0, a, 4, ring) / (2.0 * PI)
}
