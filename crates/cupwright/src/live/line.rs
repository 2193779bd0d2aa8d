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

/// What a cumulative sum loses each time, in standard deviations, 2⁻¹⁰ (estimate).
const SLACK: i32 = whole(0.75, 10) as i32;

/// Where a cumulative sum tells that the line has changed, alike (estimate).
const ALARM: i32 = whole(5.0, 10) as i32;

/// Fewest points of a line that starts anew.
const FEWEST: u8 = 3;

/// Points older than this tell nothing of the flow, s (estimate).
const OLD: Fixed = fixed(8.0);

/// Points nearer than a millisecond tell nothing of it either: n S_tt, s², of sums 2⁻³².
const LEAST_SPREAD: i64 = 1 << 12;

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

#[cfg(test)]
#[allow(clippy::indexing_slicing, clippy::arithmetic_side_effects)]
mod tests {
    extern crate std;

    use std::vec::Vec;

    use super::super::fixed::number;
    use super::*;
    use crate::math::{max, sqrt, square};

    fn point(time: f64, mass: f64) -> Point {
        Point { time: fixed(time), mass: fixed(mass) }
    }

    /// σ² as the line takes it, 2⁻⁴⁰ g².
    fn variance(sigma: f64) -> i64 {
        whole(square(sigma), 40)
    }

    /// The same line as the module's text has it, in doubles and with a list of weighted points.
    #[derive(Default)]
    struct Textbook {
        /// Time, mass, weight; the newest last.
        points: Vec<(f64, f64, f64)>,
        sums: [f64; 2],
        since: [usize; 2],
        alarms: [u32; 2],
    }

    impl Textbook {
        fn moments(&self) -> (f64, f64, f64, f64, f64) {
            let sum = |of: fn(f64, f64) -> f64| -> f64 {
                self.points.iter().map(|(t, z, w)| w * of(*t, *z)).sum()
            };
            let n = sum(|_, _| 1.0);
            let (t, z) = (sum(|t, _| t) / n, sum(|_, z| z) / n);
            let off = |of: fn(f64, f64) -> f64| -> f64 {
                self.points.iter().map(|one| one.2 * of(one.0 - t, one.1 - z)).sum()
            };
            (n, t, z, off(|t, _| t * t), off(|t, z| t * z))
        }

        fn flow(&self) -> f64 {
            let (.., tt, tz) = self.moments();
            if tt > 0.0 { tz / tt } else { 0.0 }
        }

        fn at(&self, time: f64) -> f64 {
            let (_, t, z, ..) = self.moments();
            z + self.flow() * (time - t)
        }

        fn error(&self, time: f64, mass: f64, sigma: f64) -> f64 {
            let (n, t, _, tt, _) = self.moments();
            (mass - self.at(time)) / (sigma * sqrt(1.0 + 1.0 / n + square(time - t) / tt))
        }

        fn take(&mut self, time: f64, mass: f64, sigma: f64) {
            if self.points.last().is_none_or(|last| time - last.0 > 1.0) {
                *self = Self { points: Vec::new(), sums: [0.0; 2], since: [0; 2], ..*self };
            } else if self.moments().0 > 2.5 {
                let error = self.error(time, mass, sigma);
                for (at, error) in [error, -error].into_iter().enumerate() {
                    self.sums[at] = max(0.0, self.sums[at] + error - 0.75);
                    self.since[at] = if self.sums[at] > 0.0 { self.since[at] + 1 } else { 0 };
                    assert!((self.sums[at] - 5.0).abs() > 0.01, "nearer to an alarm than rounding");
                }
            }
            let is_long = self.moments().0 > 20.5;
            if is_long {
                self.points.iter_mut().for_each(|point| point.2 *= 61.0 / 64.0);
            }
            self.points.push((time, mass, if is_long { 63.0 / 64.0 } else { 1.0 }));
            if let Some(at) = self.sums.iter().position(|sum| *sum > 5.0) {
                let left = (self.since[at] + 1).clamp(3, 7);
                self.points.drain(..self.points.len() - left);
                self.points.iter_mut().for_each(|point| point.2 = 1.0);
                (self.sums, self.since) = ([0.0; 2], [0; 2]);
                self.alarms[at] += 1;
            }
        }
    }

    /// Invented: pours, rests, a gap, a slow change, at uneven times with noise that has no chance in it.
    #[test]
    fn the_line_is_the_textbooks() {
        let sigma = 0.05;
        let (mut line, mut textbook) = (Line::NONE, Textbook::default());
        let (mut time, mut mass) = (100.0, 250.0);
        line.begin(&[point(time, mass)]);
        textbook.take(time, mass, sigma);
        let flows = [0.0, 5.0, 0.0, 7.5, 2.0, -0.4, 0.0, 0.3, 0.0, 4.0, 4.5, 9.0, 0.0];
        let mut most = (0.0, 0.0);
        for step in 0..flows.len() * 40 {
            let gap = if step % 130 == 129 { 1.25 } else { 0.0 };
            let after = 0.1 + 0.03 * f64::from((step * 7 % 11) as u32) / 11.0 + gap;
            time += after;
            mass += flows[step / 40] * after;
            let noise =
                sigma * crate::math::exp(-1.0) * f64::from((step * 37 % 19) as i32 - 9) / 4.0;
            let reading = point(time, mass + noise);
            // What the line has of it, to the last digit.
            let (t, z) = (number(reading.time), number(reading.mass));
            if textbook.moments().0 > 2.5 && gap == 0.0 {
                let (error, wanted) =
                    (line.error(reading, variance(sigma)), textbook.error(t, z, sigma));
                assert!(
                    (f64::from(error) / 1024.0 - wanted).abs() < 0.004,
                    "{step}: {error} {wanted}"
                );
            }
            line.take(reading, variance(sigma));
            textbook.take(t, z, sigma);
            let (level, flow) = (textbook.at(t), textbook.flow());
            most.0 = max(most.0, (number(line.level) - level).abs());
            most.1 = max(most.1, (number(line.flow) - flow).abs());
            let weight = textbook.moments().0;
            assert!((f64::from(line.weight()) - weight).abs() < 1e-9, "{step}: {weight}");
        }
        assert!(textbook.alarms.into_iter().all(|alarms| alarms > 5), "{:?}", textbook.alarms);
        // Some 2⁻²⁰ of rounding.
        assert!(most.0 < 1e-5 && most.1 < 5e-6, "{most:?}");
    }

    #[test]
    fn products_of_sums_are_fine_and_do_not_overflow() {
        for a in [0, 1, -1, 255, 256, -257, 1023, 1024, 123_456_789, -98_765_432_101] {
            for b in [0, 3, -3, 1023, 1024, -7_777_777, 20_000_000_000] {
                let exact = i128::from(a) * i128::from(b);
                let off = i128::from(fine(Wrapping(a), Wrapping(b)).0) * 256 - exact;
                assert!((-255..=0).contains(&off), "{a} {b}: {off}");
            }
        }
        // As a whole this one would be 2⁶⁷.
        assert_eq!(fine(fixed(8192.0), fixed(16384.0)).0, 1 << 59);
    }

    /// Points a millisecond apart tell a flow, nearer ones none.
    #[test]
    fn points_too_near_each_other_tell_no_flow() {
        let least = 1.0 / 1024.0;
        let flow_of = |step: f64| {
            let mut line = Line::NONE;
            line.begin(&[point(5.0 + step, 1.0), point(5.0, 0.0)]);
            line
        };
        let line = flow_of(least);
        assert_eq!((number(line.flow), number(line.level)), (1024.0, 1.0));
        assert!(line.is_sure(fixed(1.0), 1, 0));
        // 976 g off, at 1 + 1/2 + (t − t̄)²/S_tt variances.
        let wanted = 976.0 / sqrt(1.5 + 2.0 * square((1.0 - 0.5 * least) / least));
        let error = line.error(point(6.0, 2e3), variance(1.0));
        assert!((f64::from(error) / 1024.0 - wanted).abs() < 1e-3, "{error} {wanted}");
        let line = flow_of(least - 1.0 / 1_048_576.0);
        assert_eq!((number(line.flow), number(line.level)), (0.0, 0.5));
        assert!(!line.is_sure(fixed(1.0), 1, 0));
        assert_eq!(line.error(point(6.0, 100.0), variance(1.0)), 0);
    }

    /// Of four points, 0.25 s apart, S_tt is 0.3125 s²: the slope's deviation is σ/√0.3125.
    #[test]
    fn a_flow_is_sure_from_so_many_deviations_on() {
        let mut line = Line::NONE;
        let times = [0.75, 0.5, 0.25, 0.0];
        line.begin(&times.map(|time| point(9.0 + time, 2.0 * time)));
        assert_eq!((number(line.flow), number(line.level), line.weight()), (2.0, 1.5, 4));
        for (sigma, times) in [(0.05, 1_u8), (0.05, 4), (1.0, 4)] {
            let least = f64::from(times) * sigma / sqrt(0.3125);
            for sign in [1.0, -1.0] {
                let is_sure = |share: f64| {
                    line.is_sure(fixed(sign * least * share), times * times, variance(sigma))
                };
                assert!(is_sure(1.001) && !is_sure(0.999), "{sigma} {times} {sign}");
            }
        }
        // At exactly so many it is not yet sure: 4² · 0.3125 is 5.
        assert!(!line.is_sure(Wrapping(4), 1, 5) && line.is_sure(Wrapping(5), 1, 5));
    }

    /// A second difference: of points at even steps off/√6.
    #[test]
    fn a_bend_is_that_of_three_points() {
        let mut line = Line::NONE;
        line.begin(&[point(1.0, 3.0)]);
        assert_eq!(line.bend(point(1.5, 4.0)), None, "two are a line");
        line.begin(&[point(1.0, 3.0), point(0.5, 2.0)]);
        let bend = |time, mass| {
            line.bend(point(time, mass)).map(|bend| bend as f64 / (1_u64 << 40) as f64)
        };
        assert_eq!(bend(1.5, 4.0), Some(0.0), "on the line");
        for mass in [4.6, 3.4] {
            assert!((bend(1.5, mass).unwrap() - 0.36 / 6.0).abs() < 1e-5, "{mass}");
        }
        // Uneven: off·0.5/√(0.5² + 1.5² + 1²) where 5 was expected.
        assert!((bend(2.0, 6.0).unwrap() - 0.25 / 3.5).abs() < 1e-5);
        assert_eq!(bend(2.001, 5.0), None, "after a gap");
        line.begin(&[point(1.0, 3.0), point(0.0, 2.0)]);
        assert!(line.bend(point(1.5, 4.0)).is_some());
        line.begin(&[point(1.0, 3.0), point(-0.001, 2.0)]);
        assert_eq!(line.bend(point(1.5, 4.0)), None, "before which was a gap");
    }

    #[test]
    fn points_older_than_eight_seconds_tell_nothing() {
        let mut line = Line::NONE;
        let weight = |line: &mut Line, oldest| {
            line.begin(&[
                point(10.0, 1.0),
                point(9.5, 1.0),
                point(oldest, 9.0),
                point(oldest, 9.0),
            ]);
            line.weight()
        };
        assert_eq!(weight(&mut line, 2.0), 4);
        assert_eq!(weight(&mut line, 1.999), 2);
        assert_eq!((number(line.flow), number(line.level)), (0.0, 1.0));
    }

    #[test]
    fn a_gap_begins_a_line_anew() {
        let mut line = Line::NONE;
        assert!(!line.is_begun());
        line.begin(&[point(2.0, 0.0), point(1.0, 0.0)]);
        assert!(line.is_begun());
        line.take(point(3.0, 3.0), variance(0.1));
        assert_eq!((line.weight(), number(line.flow)), (3, 1.5));
        line.take(point(4.001, 50.0), variance(0.1));
        assert_eq!((line.weight(), number(line.flow), number(line.level)), (1, 0.0, 50.0));
        assert_eq!(line.last_three(), [point(4.001, 50.0), Point::NONE, Point::NONE]);
    }

    /// A line that begins flat is level at the mean; one whose readings are lowered is the same, lower.
    #[test]
    fn a_line_flat_and_lowered() {
        let points = [point(2.0, 7.0), point(1.9, 4.0), point(1.8, 4.0)];
        assert!((number(mean(&points)) - 5.0).abs() < 3e-6);
        let (mut line, mut lower) = (Line::NONE, Line::NONE);
        line.begin_flat(&points);
        assert_eq!((line.level, line.flow, line.weight()), (mean(&points), ZERO, 3));
        assert_eq!((line.ahead(fixed(3.0)), line.time()), (line.level, fixed(2.0)));
        line.begin(&points);
        lower.begin(&points);
        lower.lower(fixed(400.0));
        assert_eq!(line.level - lower.level, fixed(400.0));
        assert_eq!(number(lower.ahead(fixed(3.0)) - lower.level), number(lower.flow));
        for time in [2.25, 2.5] {
            line.take(point(time, 4.0 * time), variance(0.1));
            lower.take(point(time, 4.0 * time - 400.0), variance(0.1));
            assert_eq!((line.level - lower.level, line.flow), (fixed(400.0), lower.flow));
        }
    }

    /// At five deviations in sum there is no alarm yet.
    #[test]
    fn an_alarm_forgets_what_gave_it() {
        let left = |sum: i32| {
            let mut line = Line::NONE;
            line.begin(&[point(1.0, 0.0), point(0.5, 0.0)]);
            (line.watched, line.watching) = ([0, sum], [0, 4]);
            line.take(point(1.5, 0.0), variance(0.1));
            (line.watched, line.watching)
        };
        assert_eq!((left(5 * 1024), left(5 * 1024 + 1)), (([0, 5120], [0, 4]), ([0; 2], [0; 2])));
    }

    /// Each of the last two steps makes three tenths of what the flow does.
    #[test]
    fn one_step_alone_is_no_flow() {
        let is_rising = |masses: [f64; 3], noise: f64| {
            let mut line = Line::NONE;
            let [a, b, c] = masses;
            line.begin(&[point(2.0, c), point(1.0, b), point(0.0, a)]);
            line.is_rising(fixed(noise))
        };
        // Half of what there is at the end is the flow: 0.3 of it are 0.15.
        assert!(is_rising([0.0, 0.5, 1.0], 0.0));
        assert!(is_rising([0.0, 0.16, 1.0], 0.0) && is_rising([0.0, 0.84, 1.0], 0.0));
        assert!(!is_rising([0.0, 0.14, 1.0], 0.0) && !is_rising([0.0, 0.86, 1.0], 0.0));
        assert!(!is_rising([0.0; 3], 0.0), "none at all");
        // But for the noise: by so much either may fall short.
        assert!(is_rising([0.0, 0.06, 1.0], 0.1) && is_rising([0.0, 0.94, 1.0], 0.1));
        assert!(!is_rising([0.0, 0.04, 1.0], 0.1) && !is_rising([0.0, 0.96, 1.0], 0.1));
    }
}
