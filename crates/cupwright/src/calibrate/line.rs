//! Straight lines by least squares: y = a + b x, and y = b x.
//!
//! Sums are centred on the mean before anything is squared, which keeps the digits where all x lie
//! far from zero. How many are left on a certified data set: see `certified.rs`.

use crate::math::square;

/// Relative spread of x below which a slope would be made of rounding, (largest gap / mean).
const LEAST_SPREAD: f64 = 1e-6;

/// A straight line and what its uncertainty is made of.
pub(super) struct Line {
    pub(super) slope: f64,
    pub(super) intercept: f64,
    count: f64,
    mean_x: f64,
    /// S_xx = Σ(x − x̄)²
    spread: f64,
}

impl Line {
    /// The line of points, or none where all x are alike.
    pub(super) fn of(points: impl Iterator<Item = (f64, f64)> + Clone) -> Option<Self> {
        let count = points.clone().count() as f64;
        let mean_x = points.clone().map(|(x, _)| x).sum::<f64>() / count;
        let mean_y = points.clone().map(|(_, y)| y).sum::<f64>() / count;
        let spread = points.clone().map(|(x, _)| square(x - mean_x)).sum::<f64>();
        let together = points.map(|(x, y)| (x - mean_x) * (y - mean_y)).sum::<f64>();
        let slope = together / spread;
        (spread > count * square(LEAST_SPREAD * mean_x)).then_some(Self {
            slope,
            intercept: mean_y - slope * mean_x,
            count,
            mean_x,
            spread,
        })
    }

    /// y of the line at x.
    pub(super) fn at(&self, x: f64) -> f64 {
        self.intercept + self.slope * x
    }

    /// Leverage of a point at x, h = 1/n + (x − x̄)²/S_xx: the variance of the line there, over s².
    pub(super) fn leverage(&self, x: f64) -> f64 {
        1.0 / self.count + square(x - self.mean_x) / self.spread
    }

    /// Variance of the slope over s², 1/S_xx.
    pub(super) fn slope_variance(&self) -> f64 {
        1.0 / self.spread
    }

    /// Covariance of slope and intercept over s², −x̄/S_xx.
    pub(super) fn covariance(&self) -> f64 {
        -self.mean_x / self.spread
    }
}

/// A straight line through the origin.
pub(super) struct Ray {
    pub(super) slope: f64,
    /// Σx²
    squares: f64,
}

impl Ray {
    /// The ray through points, b = Σxy/Σx², or none where all x are zero, or so near it that
    /// their squares have no digits.
    pub(super) fn of(points: impl Iterator<Item = (f64, f64)> + Clone) -> Option<Self> {
        let squares = points.clone().map(|(x, _)| square(x)).sum::<f64>();
        let slope = points.map(|(x, y)| x * y).sum::<f64>() / squares;
        (squares >= f64::MIN_POSITIVE).then_some(Self { slope, squares })
    }

    /// Leverage of a point at x, h = x²/Σx².
    pub(super) fn leverage(&self, x: f64) -> f64 {
        square(x) / self.squares
    }

    /// Variance of the slope over s², 1/Σx².
    pub(super) fn slope_variance(&self) -> f64 {
        1.0 / self.squares
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A gap of a thousandth of a gram between doses of a kilogram is none.
    #[test]
    fn a_line_through_points_at_one_place_is_none() {
        let line = |gap: f64| Line::of([(1e3 - gap, 1.0), (1e3 + gap, 2.0)].into_iter());
        assert!(line(0.999e-3).is_none());
        let line = line(1.001e-3).unwrap();
        assert!((line.at(1e3) - 1.5).abs() < 1e-9 && (line.slope - 1.0 / 2.002e-3).abs() < 1e-5);
    }

    #[test]
    fn a_ray_through_points_next_to_zero_is_none() {
        let ray = |x: f64| Ray::of([(x, 0.0), (-x, 0.0)].into_iter());
        assert!([0.0, 5e-324, 1e-160].into_iter().all(|x| ray(x).is_none()));
        assert!(ray(1e-150).unwrap().slope_variance().is_finite());
    }
}
