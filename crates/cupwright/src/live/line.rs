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
//! All sums are whole numbers; only a ratio of two is a double's.
//!
//! Sources: linear regression with fading memory; the cumulative sum test of Page, Biometrika 41
//! (1954), 100 (from memory). Its two constants and the weight were tuned on invented traces ("estimate").

use core::num::Wrapping;

use super::GAP;
use super::fixed::{Fixed, ZERO, brought, fixed, product, scaled, share, whole};
use super::kept::{Kept, Walk};

/// Points that are kept, to start a line anew from.
const KEPT: usize = 7;

/// Points from which on the weights fade (estimate). Each time they lose 3/64, which keeps their sum.
const LONGEST: u8 = 21;

/// What a cumulative sum loses each time, in standard deviations (estimate).
const SLACK: i32 = deviations(0.75);

/// Where a cumulative sum tells that the line has changed (estimate).
const ALARM: i32 = deviations(5.0);

/// Fewest points of a line that starts anew.
const FEWEST: u8 = 3;

/// Points older than this tell nothing of the flow, s (estimate).
const OLD: Fixed = fixed(8.0);

/// Points nearer than a millisecond tell nothing of it either: n S_tt, s², of sums 2⁻³².
const LEAST_SPREAD: i64 = 1 << 12;

/// Standard deviations, as sums count them: 2⁻¹⁰.
const fn deviations(number: f64) -> i32 {
    whole(number, 10) as i32
}

/// A point of the scale.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Point {
    pub(super) time: Fixed,
    pub(super) mass: Fixed,
}

impl Point {
    pub(super) const NONE: Self = Self { time: ZERO, mass: ZERO };
}

/// The mean mass of points. By what they differ: a share is rounded.
pub(super) fn mean(points: &[Point; 3]) -> Fixed {
    let [a, b, c] = points.each_ref().map(|point| point.mass);
    a + share(b - a + c - a, 3)
}

/// The line, at the newest point: least squares through points whose weights fade with their age.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Line {
    /// The newest first.
    points: [Point; KEPT],
    /// How many of them are there.
    there: u8,
    /// Of the sums; here and not there, where it would take eight bytes.
    weight: u8,
    /// Sums over the points of the line, about the newest one.
    sums: Sums,
    /// The two cumulative sums, and how many points in a row have kept each above zero.
    watched: [i32; 2],
    watching: [u8; 2],
    /// Level at the newest point.
    pub(super) level: Fixed,
    /// Flow.
    pub(super) flow: Fixed,
}

/// Weighted sums over points, with ages counted back from the newest point and masses from its own.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Sums {
    age: Fixed,
    mass: Fixed,
    /// Of products, 2⁻³².
    age_squared: Fixed,
    age_mass: Fixed,
}

/// A product as the sums count it, 2⁻³².
fn fine(a: Fixed, b: Fixed) -> Fixed {
    // In two parts: as a whole it could overflow.
    (a >> 8) * b + (((a & Wrapping(255)) * b) >> 8)
}

impl Sums {
    const NONE: Self = Self { age: ZERO, mass: ZERO, age_squared: ZERO, age_mass: ZERO };

    /// Moves on to a newer point, `step` later and `rise` higher.
    fn take(&mut self, weight: Fixed, step: Fixed, rise: Fixed) {
        let aged = self.age + weight * step;
        let lower = self.mass - weight * rise;
        self.age_squared += fine(step, self.age + aged);
        self.age_mass += fine(step, lower) - fine(self.age, rise);
        (self.age, self.mass) = (aged, lower);
    }

    /// The oldest points fade.
    fn fade(&mut self) {
        for sum in [&mut self.age, &mut self.mass, &mut self.age_squared, &mut self.age_mass] {
            *sum -= (*sum * Wrapping(3)) >> 6;
        }
    }
}

impl Line {
    /// No line yet.
    pub(super) const NONE: Self = Self {
        points: [Point::NONE; KEPT],
        there: 0,
        weight: 0,
        sums: Sums::NONE,
        watched: [0; 2],
        watching: [0; 2],
        level: ZERO,
        flow: ZERO,
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
    pub(super) fn begin_flat(&mut self, points: &[Point; 3]) {
        self.begin(points);
        self.level = mean(points);
        self.flow = ZERO;
    }

    pub(super) fn is_begun(&self) -> bool {
        self.there > 0
    }

    /// Readings are lower by so much from here on.
    pub(super) fn lower(&mut self, by: Fixed) {
        self.points.iter_mut().for_each(|point| point.mass -= by);
        self.level -= by;
    }

    /// How many points the line is fitted to; those that have faded count for less.
    pub(super) fn weight(&self) -> u8 {
        self.weight
    }

    /// S_tt of the points times their weight, 2⁻³² s²: divisions are dear.
    fn weighted_spread(&self) -> Fixed {
        let Sums { age, age_squared, .. } = self.sums;
        Wrapping(self.weight.into()) * age_squared - fine(age, age)
    }

    /// Time of the newest point.
    pub(super) fn time(&self) -> Fixed {
        self.newest().time
    }

    fn newest(&self) -> Point {
        let [newest, ..] = self.points;
        newest
    }

    /// The last three points, the newest first.
    pub(super) fn last_three(&self) -> [Point; 3] {
        let [a, b, c, ..] = self.points;
        [a, b, c]
    }

    /// Where the line leads.
    pub(super) fn ahead(&self, time: Fixed) -> Fixed {
        self.level + brought(self.flow, time - self.time())
    }

    /// How far a point lies off the line ahead of it, over the standard deviation of that, 2⁻¹⁰.
    fn error(&self, point: Point, variance: i64) -> i32 {
        let (off, spread) = (point.mass - self.ahead(point.time), self.weighted_spread());
        if spread.0 < LEAST_SPREAD {
            return 0;
        }
        let weight: Fixed = Wrapping(self.weight.into());
        let away = weight * (point.time - self.time()) + self.sums.age;
        // e² = (z − ẑ)² n D/(σ² (n D + D + away²)), where D = n S_tt: one division.
        let spreads = (weight + Wrapping(1)) * spread + fine(away, away);
        let squared =
            double(off * off) * double(weight * spread) / (variance as f64 * double(spreads));
        let error = u32::try_from(whole(squared, 20)).unwrap_or(u32::MAX).isqrt() as i32;
        if off < ZERO { error.wrapping_neg() } else { error }
    }

    /// Whether a flow surely is one on this line: many times its standard deviation σ √(n/D), the
    /// square of how many times given.
    pub(super) fn is_sure(&self, flow: Fixed, squared: u8, variance: i64) -> bool {
        let spread = self.weighted_spread();
        let noise = Wrapping(variance) * Wrapping(self.weight.into()) * Wrapping(squared.into());
        spread.0 >= LEAST_SPREAD && double(flow * flow) * double(spread) > scaled(double(noise), 32)
    }

    /// By how much a point is off the line through the two before it, squared, over what it would
    /// be of one point: a noise that no constant flow reaches. A variance, 2⁻⁴⁰ g².
    pub(super) fn bend(&self, point: Point) -> Option<i64> {
        let [newest, before, ..] = self.points;
        let (last, step) = (newest.time - before.time, point.time - newest.time);
        if self.there < 2 || last > GAP || step > GAP {
            return None;
        }
        let off = (point.mass - newest.mass) * last - (newest.mass - before.mass) * step;
        let both = last + step;
        let squares = last * last + both * both + step * step;
        let off = double(off);
        Some(whole(off * off / double(squares), 0))
    }

    /// Takes a point that lies near the line; σ² is the variance of a point.
    pub(super) fn take(&mut self, point: Point, variance: i64) {
        let newest = self.newest();
        if point.time - newest.time > GAP {
            return self.begin(&[point]);
        }
        if self.weight() >= FEWEST {
            self.watch(self.error(point, variance));
        }
        let weight = Wrapping(self.weight.into());
        self.sums.take(weight, point.time - newest.time, point.mass - newest.mass);
        match self.weight < LONGEST {
            true => self.weight = self.weight.saturating_add(1),
            false => self.sums.fade(),
        }
        self.points.rotate_right(1);
        if let Some(newest) = self.points.first_mut() {
            *newest = point;
        }
        self.there = self.there.saturating_add(1).min(KEPT as u8);
        let mut watches = self.watched.into_iter().zip(self.watching);
        match watches.find(|(sum, _)| *sum > ALARM) {
            Some((_, points)) => {
                (self.watched, self.watching) = ([0; 2], [0; 2]);
                self.restart(points.saturating_add(1).max(FEWEST));
            }
            None => self.fit(),
        }
    }

    /// Adds how far a point lies off the line to both sums.
    fn watch(&mut self, error: i32) {
        let sums = self.watched.iter_mut().zip(&mut self.watching);
        for ((sum, points), error) in sums.zip([error, error.wrapping_neg()]) {
            *sum = sum.saturating_add(error).saturating_sub(SLACK).max(0);
            *points = if *sum > 0 { points.saturating_add(1) } else { 0 };
        }
    }

    /// Whether the last two steps are each a fair share of what the flow makes, but for some noise: one
    /// step alone is no flow.
    pub(super) fn is_rising(&self, noise: Fixed) -> bool {
        let [a, b, c, ..] = self.points;
        let fair = product(fixed(0.3), self.flow);
        let rises = |new: Point, old: Point| {
            new.mass - old.mass > brought(fair, new.time - old.time) - noise
        };
        rises(a, b) && rises(b, c)
    }

    /// The line through the newest points alone.
    #[inline(never)]
    fn restart(&mut self, points: u8) {
        let newest = self.newest();
        (self.sums, self.weight) = (Sums::NONE, 0);
        for point in self.points.iter().take(points.min(self.there).into()) {
            let (back, off) = (newest.time - point.time, point.mass - newest.mass);
            if back > OLD {
                break;
            }
            self.weight = self.weight.saturating_add(1);
            self.sums.age += back;
            self.sums.mass += off;
            self.sums.age_squared += fine(back, back);
            self.sums.age_mass += fine(back, off);
        }
        self.fit();
    }

    /// Least squares.
    fn fit(&mut self) {
        let (Sums { age, mass, age_mass, .. }, weight) = (self.sums, self.weight);
        let spread = self.weighted_spread();
        self.flow = if spread.0 < LEAST_SPREAD {
            ZERO
        } else {
            let slope = fine(age, mass) - Wrapping(self.weight.into()) * age_mass;
            fixed(double(slope) / double(spread))
        };
        self.level = self.newest().mass + share(mass + product(self.flow, age), weight);
    }
}

/// A whole number as a double.
fn double(whole: Fixed) -> f64 {
    whole.0 as f64
}

impl Kept for Point {
    fn walk(&mut self, walk: &mut impl Walk) {
        walk.fixed(&mut self.time);
        walk.fixed(&mut self.mass);
    }
}

impl Kept for Line {
    fn walk(&mut self, walk: &mut impl Walk) {
        self.points.iter_mut().for_each(|point| point.walk(walk));
        walk.count(&mut self.there);
        walk.count(&mut self.weight);
        let Sums { age, mass, age_squared, age_mass } = &mut self.sums;
        for sum in [age, mass, age_squared, age_mass] {
            walk.fixed(sum);
        }
        self.watched.iter_mut().for_each(|sum| walk.whole(sum, |number| number as i32));
        self.watching.iter_mut().for_each(|points| walk.count(points));
        walk.fixed(&mut self.level);
        walk.fixed(&mut self.flow);
    }
}
