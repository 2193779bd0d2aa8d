//! A straight line through the last points of a scale: level and flow.
//!
//! Least squares over the points' own times. The line grows with every point up to a weight of
//! [`LONGEST`], then older points fade. Two sums watch how far each new point lies off the line, in
//! standard deviations of that prediction; when one passes [`ALARM`] the line starts anew from
//! the points since that sum began to grow:
//!
//! ```text
//! e = (z − ẑ)/(σ √(1 + 1/n + (t − t̄)²/S_tt)),   g± ← max(0, g± ± e − 0.75),   alarm at g± > 5
//! ```
//!
//! Sources: linear regression with fading memory; the cumulative sum test of Page, Biometrika 41
//! (1954), 100 (from memory). Its two constants and the weight were tuned on invented traces ("estimate").

use super::kept::{Kept, Walk};
use crate::math::{max, sqrt, square};

/// Points that are kept, to start a line anew from.
const KEPT: usize = 7;

/// Points from which on the weights fade (estimate).
const LONGEST: f64 = 20.0;

/// What a cumulative sum loses each time, in standard deviations (estimate).
const SLACK: f64 = 0.75;

/// Where a cumulative sum tells that the line has changed (estimate).
const ALARM: f64 = 5.0;

/// Fewest points of a line that starts anew.
const FEWEST: f64 = 3.0;

/// A point of the scale.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(super) struct Point {
    pub(super) time: f64,
    pub(super) mass: f64,
}

/// The line, at the newest point: least squares through points whose weights fade with their age.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Line {
    /// The newest first.
    points: [Point; KEPT],
    /// How many of them are there.
    there: u8,
    /// Sums over the points of the line, about the newest one.
    sums: Sums,
    /// The two cumulative sums, and how many points in a row have kept each above zero.
    watched: [f64; 2],
    watching: [u8; 2],
    /// Level at the newest point, g.
    pub(super) level: f64,
    /// Flow, g/s.
    pub(super) flow: f64,
}

/// Weighted sums over points, with ages counted back from the newest point and masses from its own.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
struct Sums {
    weight: f64,
    age: f64,
    mass: f64,
    age_squared: f64,
    age_mass: f64,
}

impl Sums {
    /// Moves on to a newer point, `step` later and `rise` higher.
    fn take(&mut self, step: f64, rise: f64) {
        let Self { weight, age, mass, age_squared, age_mass } = *self;
        let fade = if weight < LONGEST { 1.0 } else { 1.0 - 1.0 / LONGEST };
        let aged = age + weight * step;
        let lower = mass - weight * rise;
        *self = Self {
            weight: fade * weight + 1.0,
            age: fade * aged,
            mass: fade * lower,
            age_squared: fade * (age_squared + step * (age + aged)),
            age_mass: fade * (age_mass - rise * age + step * lower),
        };
    }

    /// S_tt of the points times their weight: divisions are dear.
    fn weighted_spread(&self) -> f64 {
        self.weight * self.age_squared - square(self.age)
    }
}

impl Line {
    /// No line yet.
    pub(super) const NONE: Self = Self {
        points: [Point { time: 0.0, mass: 0.0 }; KEPT],
        there: 0,
        sums: Sums { weight: 0.0, age: 0.0, mass: 0.0, age_squared: 0.0, age_mass: 0.0 },
        watched: [0.0; 2],
        watching: [0; 2],
        level: 0.0,
        flow: 0.0,
    };

    /// Begins anew through points, the newest first; flat through one. In its place: a line is large.
    #[inline(never)]
    pub(super) fn begin(&mut self, points: &[Point]) {
        *self = Self::NONE;
        for (place, point) in self.points.iter_mut().zip(points) {
            *place = *point;
            self.there = self.there.saturating_add(1);
        }
        self.restart(self.there);
    }

    /// Begins anew, flat at the mean of points; new points will tilt it.
    pub(super) fn begin_flat(&mut self, points: [Point; 3]) {
        self.begin(&points);
        self.level = points.iter().map(|point| point.mass).sum::<f64>() / 3.0;
        self.flow = 0.0;
    }

    pub(super) fn is_begun(&self) -> bool {
        self.there > 0
    }

    /// Readings are lower by so much from here on.
    pub(super) fn lower(&mut self, by: f64) {
        self.points.iter_mut().for_each(|point| point.mass -= by);
        self.level -= by;
    }

    /// How many points the line is fitted to; those that have faded count for less.
    pub(super) fn weight(&self) -> f64 {
        self.sums.weight
    }

    /// Time of the newest point.
    pub(super) fn time(&self) -> f64 {
        self.newest().time
    }

    fn newest(&self) -> Point {
        let [newest, ..] = self.points;
        newest
    }

    /// Where the line leads.
    pub(super) fn ahead(&self, time: f64) -> f64 {
        self.level + self.flow * (time - self.time())
    }

    /// Variance of a point ahead of the line, over that of a point.
    fn variance_ahead(&self, time: f64) -> f64 {
        let (weight, spread) = (self.sums.weight, self.sums.weighted_spread());
        let away = weight * (time - self.time()) + self.sums.age;
        let turned = if spread > 0.0 { square(away) / spread } else { 0.0 };
        1.0 + (1.0 + turned) / weight
    }

    /// Standard deviation of the flow over that of a point.
    pub(super) fn u_flow(&self) -> f64 {
        let spread = self.sums.weighted_spread();
        if spread > 0.0 { sqrt(self.sums.weight / spread) } else { f64::INFINITY }
    }

    /// By how much a point is off the line through the two before it, squared, over what it would
    /// be of one point: a noise that no constant flow reaches.
    pub(super) fn bend(&self, point: Point) -> Option<f64> {
        let [newest, before, ..] = self.points;
        let (last, step) = (newest.time - before.time, point.time - newest.time);
        if self.there < 2 {
            return None;
        }
        let off = (point.mass - newest.mass) * last - (newest.mass - before.mass) * step;
        Some(square(off) / (square(last) + square(last + step) + square(step)))
    }

    /// Takes a point that lies near the line; σ² is the variance of a point.
    pub(super) fn take(&mut self, point: Point, variance: f64) {
        if self.weight() >= FEWEST {
            let off = point.mass - self.ahead(point.time);
            self.watch(off / sqrt(variance * self.variance_ahead(point.time)));
        }
        let newest = self.newest();
        self.sums.take(point.time - newest.time, point.mass - newest.mass);
        self.points.rotate_right(1);
        if let Some(newest) = self.points.first_mut() {
            *newest = point;
        }
        self.there = self.there.saturating_add(1).min(KEPT as u8);
        let mut watches = self.watched.into_iter().zip(self.watching);
        match watches.find(|(sum, _)| *sum > ALARM) {
            Some((_, points)) => {
                (self.watched, self.watching) = ([0.0; 2], [0; 2]);
                self.restart(points.saturating_add(1).max(FEWEST as u8));
            }
            None => self.fit(),
        }
    }

    /// Adds how far a point lies off the line to both sums.
    fn watch(&mut self, error: f64) {
        let sums = self.watched.iter_mut().zip(&mut self.watching);
        for ((sum, points), error) in sums.zip([error, -error]) {
            *sum = max(0.0, *sum + error - SLACK);
            *points = if *sum > 0.0 { points.saturating_add(1) } else { 0 };
        }
    }

    /// Whether the last two steps are each a fair share of what the flow makes: one step alone is no
    /// flow.
    pub(super) fn is_rising(&self) -> bool {
        let [a, b, c, ..] = self.points;
        let rises =
            |new: Point, old: Point| new.mass - old.mass > 0.3 * self.flow * (new.time - old.time);
        rises(a, b) && rises(b, c)
    }

    /// The line through the newest points alone.
    #[inline(never)]
    fn restart(&mut self, points: u8) {
        let newest = self.newest();
        self.sums = Sums::default();
        for point in self.points.iter().take(points.min(self.there).into()) {
            let (back, off) = (newest.time - point.time, point.mass - newest.mass);
            self.sums.weight += 1.0;
            self.sums.age += back;
            self.sums.mass += off;
            self.sums.age_squared += square(back);
            self.sums.age_mass += back * off;
        }
        self.fit();
    }

    /// Least squares.
    fn fit(&mut self) {
        let Sums { weight, age, mass, age_mass, .. } = self.sums;
        let spread = self.sums.weighted_spread();
        self.flow = if spread > 0.0 { (age * mass - weight * age_mass) / spread } else { 0.0 };
        self.level = self.newest().mass + (mass + self.flow * age) / weight;
    }
}

impl Kept for Point {
    fn walk(&mut self, walk: &mut impl Walk) {
        walk.number(&mut self.time);
        walk.number(&mut self.mass);
    }
}

impl Kept for Line {
    fn walk(&mut self, walk: &mut impl Walk) {
        self.points.iter_mut().for_each(|point| point.walk(walk));
        walk.count(&mut self.there);
        let Sums { weight, age, mass, age_squared, age_mass } = &mut self.sums;
        walk.numbers([weight, age, mass, age_squared, age_mass]);
        self.watched.iter_mut().for_each(|sum| walk.number(sum));
        self.watching.iter_mut().for_each(|points| walk.count(points));
        walk.number(&mut self.level);
        walk.number(&mut self.flow);
    }
}
