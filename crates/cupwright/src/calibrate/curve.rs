//! Curves by least squares: the method of Levenberg and Marquardt with Nielsen's damping, and what
//! the answer's uncertainty is made of.
//!
//! ```text
//! (JᵀJ + μ I) δ = Jᵀ r,   gain ρ = (S − S⁺)/[δᵀ(μ δ + Jᵀ r)]
//! ρ > 0:  take the step, μ ← μ max(1/3, 1 − (2ρ − 1)³), ν ← 2;  otherwise μ ← μ ν, ν ← 2 ν
//! ```
//!
//! (Nielsen 1999, report IMM-REP-1999-05, from memory.) The damping is not scaled by the diagonal
//! of JᵀJ: as it is, it masters every certified data set of `certified.rs` from both of its starts.
//!
//! JᵀJ is never formed, which would cost half of the digits: each row of J is turned into a
//! triangle R with RᵀR = JᵀJ by Givens' rotations as it comes, so no table of rows is needed
//! either.
//!
//! Sums of squares can be compared to half of their digits only. The last steps are therefore
//! undamped and judged by what another one promises to gain, |Qᵀr|², which falls to rounding.

use crate::math::{max, sqrt, square};

/// A square table of numbers.
pub(super) type Square<const P: usize> = [[f64; P]; P];

/// Most damped steps. The hardest certified data set takes 474 from its bad start, brews a few.
const MOST_STEPS: u32 = 600;

/// Most undamped steps after them.
const MOST_LAST_STEPS: u32 = 30;

/// A sum of squares is taken as least when another step promises to lower it by less than this
/// share.
const SETTLED: f64 = 1e-12;

/// A sum of squares is rounding alone below this share of the squares of what was measured.
const ROUNDING: f64 = 1e-28;

/// A step that promises less than this share cannot be judged by comparing sums of squares.
const JUDGED: f64 = 1e-13;

/// A parameter that the others describe to this share of its effect cannot be told from them.
const LEAST_OWN: f64 = 1e-10;

/// A fitted curve.
pub(super) struct Curve<const P: usize> {
    pub(super) parameters: [f64; P],
    /// Covariance of the parameters over s²: (JᵀJ)⁻¹.
    pub(super) covariance: Square<P>,
}

/// Fits a model to points (x, y); none where it does not settle, or where the points cannot tell the
/// parameters apart. From parameters the model makes a curve, which gives its value at x and its
/// derivatives: what all points share is computed once.
pub(super) fn fit<const P: usize, X, C: Fn(X) -> (f64, [f64; P])>(
    points: impl Iterator<Item = (X, f64)> + Clone,
    start: [f64; P],
    model: impl Fn(&[f64; P]) -> C,
) -> Option<Curve<P>> {
    let rounding = ROUNDING * points.clone().map(|(_, y)| square(y)).sum::<f64>();
    let place = |parameters| Place::at(points.clone(), parameters, model(&parameters));
    let mut here = place(start);
    let mut damping = 1e-3 * here.triangle.column_squares().fold(0.0, max);
    let mut growth = 2.0;
    for _ in 0..MOST_STEPS {
        if here.promise() <= SETTLED * here.squares + rounding {
            break;
        }
        let (step, promised) = here.triangle.damped_step(damping);
        let next = place(sum(here.parameters, step));
        let gain = (here.squares - next.squares) / promised;
        if gain > 0.0 {
            here = next;
            let turn = 2.0 * gain - 1.0;
            damping *= max(1.0 / 3.0, 1.0 - turn * turn * turn);
            growth = 2.0;
        } else if promised < JUDGED * here.squares {
            break;
        } else {
            damping *= growth;
            growth *= 2.0;
        }
    }
    // Sums of squares say no more: from here on, what a step promises.
    for _ in 0..MOST_LAST_STEPS {
        let next = place(sum(here.parameters, here.triangle.solve()));
        if next.promise() < 0.5 * here.promise() {
            here = next;
        } else {
            break;
        }
    }
    let has_settled = here.promise() <= SETTLED * here.squares + rounding;
    (has_settled && here.triangle.is_told_apart())
        .then(|| Curve { parameters: here.parameters, covariance: here.triangle.covariance() })
}

/// How far the model is off at some parameters.
struct Place<const P: usize> {
    parameters: [f64; P],
    /// S = Σr²
    squares: f64,
    triangle: Triangle<P>,
}

impl<const P: usize> Place<P> {
    fn at<X>(
        points: impl Iterator<Item = (X, f64)>,
        parameters: [f64; P],
        curve: impl Fn(X) -> (f64, [f64; P]),
    ) -> Self {
        let mut squares = 0.0;
        let mut triangle = Triangle { rows: [[0.0; P]; P], turned: [0.0; P] };
        for (x, y) in points {
            let (value, slopes) = curve(x);
            squares += square(y - value);
            triangle.take(slopes, y - value);
        }
        Self { parameters, squares, triangle }
    }

    /// By how much an undamped step would lower the sum of squares, were the model straight. Does
    /// not depend on the units of the parameters.
    fn promise(&self) -> f64 {
        dot(self.triangle.turned, self.triangle.turned)
    }
}

/// R of J = Q R, and Qᵀr.
#[derive(Clone, Copy)]
struct Triangle<const P: usize> {
    rows: Square<P>,
    turned: [f64; P],
}

impl<const P: usize> Triangle<P> {
    /// Turns one more row of J and its residual in.
    fn take(&mut self, mut slopes: [f64; P], mut residual: f64) {
        for (at, (row, turned)) in self.rows.iter_mut().zip(&mut self.turned).enumerate() {
            let (own, new) = (pick(row, at), pick(&slopes, at));
            if new == 0.0 {
                continue;
            }
            let both = sqrt(square(own) + square(new));
            let (cosine, sine) = (own / both, new / both);
            let turn = |a: &mut f64, b: &mut f64| {
                (*a, *b) = (cosine * *a + sine * *b, cosine * *b - sine * *a);
            };
            row.iter_mut().zip(&mut slopes).skip(at).for_each(|(a, b)| turn(a, b));
            turn(turned, &mut residual);
        }
    }

    /// |J e|² for each parameter e: the diagonal of JᵀJ.
    fn column_squares(&self) -> impl Iterator<Item = f64> {
        (0..P).map(|at| self.rows.iter().map(|row| square(pick(row, at))).sum())
    }

    /// Whether no parameter's effect is that of the others together.
    fn is_told_apart(&self) -> bool {
        let own = self.rows.iter().enumerate().map(|(at, row)| square(pick(row, at)));
        own.zip(self.column_squares()).all(|(own, all)| own > square(LEAST_OWN) * all)
    }

    /// δ of R δ = Qᵀr.
    fn solve(&self) -> [f64; P] {
        let mut solved = [0.0; P];
        for (at, row) in self.rows.iter().enumerate().rev() {
            let value = (pick(&self.turned, at) - dot(*row, solved)) / pick(row, at);
            put(&mut solved, at, value);
        }
        solved
    }

    /// The damped step, and by how much it would lower the sum of squares, were the model straight.
    fn damped_step(&self, damping: f64) -> ([f64; P], f64) {
        let mut damped = *self;
        for at in 0..P {
            let mut row = [0.0; P];
            put(&mut row, at, sqrt(damping));
            damped.take(row, 0.0);
        }
        let step = damped.solve();
        let seen = self.rows.map(|row| dot(row, step));
        // δᵀ(μ δ + Rᵀ Qᵀr)
        (step, damping * dot(step, step) + dot(seen, self.turned))
    }

    /// (RᵀR)⁻¹ = R⁻¹R⁻ᵀ.
    fn covariance(&self) -> Square<P> {
        let mut columns = [[0.0; P]; P];
        for (at, column) in columns.iter_mut().enumerate() {
            let mut unit = [0.0; P];
            put(&mut unit, at, 1.0);
            *column = Self { rows: self.rows, turned: unit }.solve();
        }
        let mut covariance = [[0.0; P]; P];
        for (one, row) in covariance.iter_mut().enumerate() {
            for (other, entry) in row.iter_mut().enumerate() {
                *entry = columns.iter().map(|column| pick(column, one) * pick(column, other)).sum();
            }
        }
        covariance
    }
}

fn sum<const P: usize>(mut a: [f64; P], b: [f64; P]) -> [f64; P] {
    a.iter_mut().zip(b).for_each(|(a, b)| *a += b);
    a
}

fn dot<const P: usize>(a: [f64; P], b: [f64; P]) -> f64 {
    a.into_iter().zip(b).map(|(a, b)| a * b).sum()
}

/// One of a row; no index is ever beyond its end.
fn pick<const P: usize>(row: &[f64; P], at: usize) -> f64 {
    row.get(at).copied().unwrap_or(f64::NAN)
}

fn put<const P: usize>(row: &mut [f64; P], at: usize, value: f64) {
    if let Some(place) = row.get_mut(at) {
        *place = value;
    }
}

/// gᵀ C h: the covariance of two sums of parameters weighted by g and h; with g = h a variance.
pub(super) fn covaried<const P: usize>(
    covariance: &Square<P>,
    one: &[f64; P],
    other: &[f64; P],
) -> f64 {
    covariance.iter().zip(one).map(|(row, weight)| weight * dot(*row, *other)).sum()
}

#[cfg(test)]
#[allow(clippy::indexing_slicing, clippy::arithmetic_side_effects)]
mod tests {
    use super::*;
    use crate::math::exp;

    fn near(a: f64, b: f64) {
        assert!((a - b).abs() <= 1e-12 * (1.0 + b.abs()), "{a} {b}");
    }

    /// A line of these: x̄ = 2.5, ȳ = 3.5, S_xx = 5, S_xy = 5.5.
    const POINTS: [(f64, f64); 4] = [(1.0, 2.0), (2.0, 2.5), (3.0, 4.5), (4.0, 5.0)];

    fn straight([a, b]: &[f64; 2]) -> impl Fn(f64) -> (f64, [f64; 2]) + use<> {
        let (a, b) = (*a, *b);
        move |x| (a + b * x, [1.0, x])
    }

    #[test]
    fn a_straight_line_is_a_curve() {
        for start in [[0.0, 0.0], [1e6, -1e6], [0.75, 1.1]] {
            let Curve { parameters: [a, b], covariance } =
                fit(POINTS.into_iter(), start, straight).unwrap();
            near(a, 0.75);
            near(b, 1.1);
            // 1/n + x̄²/S_xx, −x̄/S_xx, 1/S_xx
            near(covariance[0][0], 1.5);
            near(covariance[0][1], -0.5);
            near(covariance[1][0], -0.5);
            near(covariance[1][1], 0.2);
            // The variance of the line at 6, and its covariance with that at 0.
            near(covaried(&covariance, &[1.0, 6.0], &[1.0, 6.0]), 0.25 + 3.5 * 3.5 / 5.0);
            near(covaried(&covariance, &[1.0, 6.0], &[1.0, 0.0]), -1.5);
        }
    }

    /// R of JᵀJ, and what is promised: the whole sum of squares but for what no line takes away.
    #[test]
    fn a_triangle_has_the_squares_of_its_columns() {
        let place = Place::at(POINTS.into_iter(), [0.0; 2], straight(&[0.0; 2]));
        let squares: [f64; 2] =
            core::array::from_fn(|at| place.triangle.column_squares().nth(at).unwrap());
        near(squares[0], 4.0);
        near(squares[1], 30.0);
        near(place.squares, 4.0 + 6.25 + 20.25 + 25.0);
        // Σ(y − line)² = 0.15² + 0.45² + 0.45² + 0.15²
        near(place.promise(), place.squares - 0.45);
        let [a, b] = place.triangle.solve();
        near(a, 0.75);
        near(b, 1.1);
        // (JᵀJ + μ I) δ = Jᵀ r with μ = 2: 6 a + 10 b = 14, 10 a + 32 b = 40.5.
        let ([a, b], promised) = place.triangle.damped_step(2.0);
        near(a, 43.0 / 92.0);
        near(b, 103.0 / 92.0);
        near(promised, 2.0 * (a * a + b * b) + 14.0 * a + 40.5 * b);
    }

    /// Two parameters of the same effect, or one of none, cannot be told; of one ten thousand times as small they can.
    #[test]
    fn what_cannot_be_told_apart_is_no_curve() {
        let both = |points: [(f64, f64); 4], size: f64, by: f64| {
            fit(points.into_iter(), [1.0; 2], move |[a, b]: &[f64; 2]| {
                let (a, b) = (*a, *b);
                move |x| (size * (a + b * (1.0 + by * x)), [size, size * (1.0 + by * x)])
            })
        };
        assert!(both(POINTS, 1.0, 0.0).is_none() && both(POINTS, 1.0, 1e-11).is_none());
        assert!(both(POINTS, 1.0, 1e-6).is_some());
        assert!(both(POINTS.map(|(x, y)| (x, 1e-6 * y)), 1e-6, 1e-3).is_some(), "a small effect");
        // Nor where the start is right already.
        assert!(both(POINTS.map(|(x, _)| (x, 2.0)), 1.0, 0.0).is_none());
        let of_none = |points: [(f64, f64); 4]| {
            fit(points.into_iter(), [1.0; 2], |[a, _]: &[f64; 2]| {
                let a = *a;
                move |x| (a + x, [1.0, 0.0])
            })
        };
        assert!(of_none(POINTS).is_none() && of_none(POINTS.map(|(x, _)| (x, 1.0 + x))).is_none());
    }

    /// Slopes that lead the wrong way lead to no least squares, however small these are.
    #[test]
    fn what_does_not_settle_is_no_curve() {
        for size in [1.0, 1e-5, 1e5] {
            let points = POINTS.map(|(x, y)| (x, size * y));
            let astray = fit(points.into_iter(), [0.0; 2], |[a, b]: &[f64; 2]| {
                let (a, b) = (*a, *b);
                move |x| (a + b * x, [-1.0, -x])
            });
            assert!(astray.is_none(), "{size}");
        }
    }

    /// Points without scatter are fitted to rounding, far from the start too.
    #[test]
    fn a_curve_without_scatter() {
        let law = |[a, k]: &[f64; 2]| {
            let (a, k) = (*a, *k);
            move |x: f64| (a * exp(-k * x), [exp(-k * x), -a * x * exp(-k * x)])
        };
        let points = [0.0, 1.0, 2.0, 5.0, 9.0].map(|x| (x, 7.0 * exp(-0.3 * x)));
        for start in [[7.0, 0.3], [1.0, 1.0], [50.0, 0.01], [3.0, 2.0]] {
            let Curve { parameters: [a, k], .. } = fit(points.into_iter(), start, law).unwrap();
            near(a, 7.0);
            near(k, 0.3);
        }
        let nothing = points.map(|(x, _)| (x, 0.0));
        let flat = fit(nothing.into_iter(), [0.0, 0.3], law);
        assert!(flat.is_none(), "where nothing is measured no rate is told");
    }
}
