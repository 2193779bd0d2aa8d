//! The only door to elementary functions.
//!
//! `std`'s float methods go to the platform's own library and differ in the last bits from one
//! target to the next. Everything here goes to one exact version of `libm`, or is exact by IEEE 754,
//! so a result has the same bits on a microcontroller, in a browser and on a server. Clippy's
//! `disallowed-methods` keeps the methods themselves out of the crate.

/// e to the power x.
pub(crate) fn exp(x: f64) -> f64 {
    libm::exp(x)
}

/// 1 - e^-x without loss of digits for small x.
pub(crate) fn one_minus_exp_minus(x: f64) -> f64 {
    -libm::expm1(-x)
}

/// Complementary error function, 2/√π times the integral of e^(-x²) from x on.
pub(crate) fn erfc(x: f64) -> f64 {
    libm::erfc(x)
}

/// Natural logarithm of 1 + x without loss of digits for small x.
pub(crate) fn ln_one_plus(x: f64) -> f64 {
    libm::log1p(x)
}

/// Natural logarithm.
pub(crate) fn ln(x: f64) -> f64 {
    libm::log(x)
}

/// x to the power y.
pub(crate) fn power(x: f64, y: f64) -> f64 {
    libm::pow(x, y)
}

/// Square root, correctly rounded.
#[cfg(not(target_arch = "wasm32"))]
pub(crate) fn sqrt(x: f64) -> f64 {
    libm::sqrt(x)
}

/// The same by the instruction for it. On stable Rust libm does not reach WebAssembly's and computes in integers,
/// which made cooling three times as dear.
#[cfg(target_arch = "wasm32")]
#[target_feature(enable = "simd128")]
pub(crate) fn sqrt(x: f64) -> f64 {
    use core::arch::wasm32::{f64x2_extract_lane, f64x2_splat, f64x2_sqrt};
    f64x2_extract_lane::<0>(f64x2_sqrt(f64x2_splat(x)))
}

/// How far a quotient may be off a whole number and still be taken for it: far more than rounding,
/// far less than anyone can weigh.
const ROUNDING: f64 = 1e-9;

/// Largest whole number not above x.
pub(crate) fn floor(x: f64) -> f64 {
    libm::floor(x)
}

/// How many times a part goes into a whole; 450.9 by 150.3 is three.
pub(crate) fn whole_parts(quotient: f64) -> f64 {
    libm::floor(quotient * (1.0 + ROUNDING))
}

/// How many parts a whole must be cut into; exactly three stays three.
pub(crate) fn parts_needed(quotient: f64) -> f64 {
    libm::ceil(quotient * (1.0 - ROUNDING))
}

/// A value that lies visibly below a limit which itself cannot be had, or only but for rounding.
pub(crate) fn just_below(limit: f64) -> f64 {
    limit - ROUNDING * limit.abs()
}

/// The smaller one. Neither may be NaN; of two zeros, `b`.
pub(crate) fn min(a: f64, b: f64) -> f64 {
    if a < b { a } else { b }
}

/// The larger one. Neither may be NaN; of two zeros, `b`.
pub(crate) fn max(a: f64, b: f64) -> f64 {
    if a > b { a } else { b }
}

/// A value that lies visibly above a limit which itself cannot be had, or only but for rounding.
pub(crate) fn just_above(limit: f64) -> f64 {
    limit + ROUNDING * limit.abs()
}

/// x squared.
pub(crate) fn square(x: f64) -> f64 {
    x * x
}

/// The real roots of a x² + b x + c = 0, none, one (a = 0) or two, in no order.
///
/// The root larger in magnitude is formed without cancellation, the other one from the product of
/// the roots.
pub(crate) fn quadratic_roots(a: f64, b: f64, c: f64) -> impl Iterator<Item = f64> {
    let discriminant = b * b - 4.0 * a * c;
    // Without real roots this is NaN, and so are both candidates.
    let root = sqrt(discriminant);
    let q = -0.5 * (b + if b < 0.0 { -root } else { root });
    [q / a, c / q].into_iter().filter(|x| x.is_finite())
}

/// Nodes and weights of five-point Gauss–Legendre quadrature on -1..1
/// (Abramowitz & Stegun, table 25.4; exact for polynomials up to degree nine, which a test checks).
const GAUSS_LEGENDRE: [(f64, f64); 5] = [
    (-0.906_179_845_938_664, 0.236_926_885_056_189_1),
    (-0.538_469_310_105_683_1, 0.478_628_670_499_366_5),
    (0.0, 0.568_888_888_888_888_9),
    (0.538_469_310_105_683_1, 0.478_628_670_499_366_5),
    (0.906_179_845_938_664, 0.236_926_885_056_189_1),
];

/// The integral of `f` from `a` to `b`, by five points on each of `panels` equal panels.
pub(crate) fn integral(a: f64, b: f64, panels: u32, f: impl Fn(f64) -> f64) -> f64 {
    let half = (b - a) / (2.0 * f64::from(panels));
    let mut sum = 0.0;
    for panel in 0..panels {
        let middle = a + half * (2.0 * f64::from(panel) + 1.0);
        for (node, weight) in GAUSS_LEGENDRE {
            sum += weight * f(middle + half * node);
        }
    }
    sum * half
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn quadrature_is_exact_to_degree_nine() {
        let power = |x: f64, n: i32| (0..n).fold(1.0, |p, _| p * x);
        for degree in 0..=9 {
            let exact = (power(3.0, degree + 1) - power(1.0, degree + 1)) / f64::from(degree + 1);
            let got = integral(1.0, 3.0, 1, |x| power(x, degree));
            assert!((got / exact - 1.0).abs() < 2e-15, "degree {degree}: {got} for {exact}");
        }
    }

    #[test]
    fn quadratics() {
        // (x - 2)(x - 30), x² + 1, 2x - 8.
        assert!(quadratic_roots(1.0, -32.0, 60.0).eq([30.0, 2.0]));
        assert_eq!(quadratic_roots(1.0, 0.0, 1.0).count(), 0);
        assert!(quadratic_roots(0.0, 2.0, -8.0).eq([4.0]));
        assert!(quadratic_roots(0.0, -2.0, 8.0).eq([4.0]));
    }

    #[test]
    fn of_two_zeros_the_second_is_taken() {
        assert!(min(-0.0, 0.0).is_sign_positive() && min(0.0, -0.0).is_sign_negative());
        assert!(max(-0.0, 0.0).is_sign_positive() && max(0.0, -0.0).is_sign_negative());
    }

    #[test]
    fn nearest_values_are_a_billionth_away() {
        for limit in [200.0_f64, -200.0] {
            assert!((just_above(limit) - limit - 2e-7).abs() < 1e-12);
            assert!((limit - just_below(limit) - 2e-7).abs() < 1e-12);
        }
    }
}
