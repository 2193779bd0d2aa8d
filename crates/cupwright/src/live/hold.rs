//! Points that no pour could reach, held back until it is clear what they are.

use super::Doing;
use super::fixed::{Fixed, LONG_AGO, ZERO, brought, fixed, magnitude, product};
use super::kept::{Kept, Walk};
use super::line::{Point, mean};

/// What disturbs a reading is told after this time, s (estimate).
const TELL: Fixed = fixed(0.8);

/// And again, as a fault, after this, s (estimate).
const RESTLESS: Fixed = fixed(60.0);

/// A hand that presses is heavier than this, and a spoon lighter, g (estimate).
const PRESS: Fixed = fixed(50.0);

/// What a press leaves, as creep, over its weight (estimate).
const LEFT_BY_PRESS: Fixed = fixed(0.001);

/// Water that begins with a splash goes on rising within this time, s (estimate).
const SPLASH: Fixed = fixed(1.5);

/// Points in a row that lie near each other and end a disturbance that was told (estimate).
const CALM: u8 = 4;

/// The same for a press: a hand's tremor, taken ten times a second, may look still for a while (estimate).
const CALM_PRESS: u8 = 20;

/// What was told of a disturbance.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Told {
    Nothing,
    Disturbed,
    Pressed,
    Overloaded,
    Restless,
}

/// Points held back, if any.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Hold {
    /// How many there are.
    points: u8,
    /// How many in a row lie near each other.
    calm: u8,
    told: Told,
    /// Since when; where nothing is held back, when that last ended with something moved.
    since: Fixed,
    /// The last three, the newest first.
    last: [Point; 3],
    /// Weight of a hand; where none is told, of what was put down last, while it may be one.
    press: Fixed,
}

impl Hold {
    /// Nothing is held back.
    pub(super) const NONE: Self = Self {
        points: 0,
        calm: 0,
        told: Told::Nothing,
        since: LONG_AGO,
        last: [Point::NONE; 3],
        press: ZERO,
    };

    /// Nothing is held back any more since a time.
    pub(super) fn ended(time: Fixed) -> Self {
        Self { since: time, ..Self::NONE }
    }

    /// Points that lie off after all, of a hand that presses or of something that moves.
    pub(super) fn off(told: Told, last: [Point; 3], press: Fixed) -> Self {
        let [newest, ..] = last;
        Self { points: 3, calm: 0, told, since: newest.time, last, press }
    }

    /// Something was put down: if it is heavy it may be a hand, until that is clear.
    pub(super) fn suspect(&mut self, weight: Fixed) {
        self.press = if weight > PRESS { weight } else { ZERO };
    }

    /// Something was put down or taken off. What only wavers may still be a hand.
    pub(super) fn waver(&mut self, change: Fixed) {
        let suspected = self.suspected();
        let is_little = magnitude(change) < suspected >> 6;
        self.suspect(if is_little { suspected + change } else { change });
    }

    /// Weight of what was put down and may be a hand; zero where there is none.
    pub(super) fn suspected(&self) -> Fixed {
        if self.was_press() { ZERO } else { self.press }
    }

    /// Whether something moved no longer than so many seconds ago.
    pub(super) fn ended_at(&self, time: Fixed, ago: Fixed) -> bool {
        !self.is_on() && time - self.since <= ago
    }

    /// Holds a first point back.
    pub(super) fn begin(&mut self, point: Point) {
        let press = self.suspected();
        *self = Self { points: 1, since: point.time, last: [point; 3], press, ..Self::NONE };
    }

    /// Holds nothing back any more; since a time, where something moved until then.
    pub(super) fn end(&mut self, moved: Option<Fixed>) {
        let press = self.suspected();
        *self = Self { since: moved.unwrap_or(LONG_AGO), press, ..Self::NONE };
    }

    /// Holds a reading beyond the scale back; whether that is new.
    pub(super) fn overload(&mut self, point: Point) -> bool {
        if !self.is_on() {
            self.begin(point);
        }
        self.calm = 0;
        self.press = point.mass;
        let is_new = self.told != Told::Overloaded;
        self.told = Told::Overloaded;
        is_new
    }

    /// Holds another point back; how long it lasts now.
    pub(super) fn take(&mut self, point: Point) -> Fixed {
        let [newest, before, _] = self.last;
        self.last = [point, newest, before];
        self.points = self.points.saturating_add(1);
        point.time - self.since
    }

    pub(super) fn is_on(&self) -> bool {
        self.points > 0
    }

    pub(super) fn told(&self) -> Told {
        self.told
    }

    /// Whether a weight like a hand's is over.
    pub(super) fn was_press(&self) -> bool {
        matches!(self.told, Told::Pressed | Told::Overloaded)
    }

    pub(super) fn since(&self) -> Fixed {
        self.since
    }

    /// Time of the newest point.
    pub(super) fn time(&self) -> Fixed {
        let [newest, ..] = self.last;
        newest.time
    }

    pub(super) fn last_two(&self) -> &[Point] {
        let [last_two @ .., _] = &self.last;
        last_two
    }

    pub(super) fn last_three(&self) -> &[Point; 3] {
        &self.last
    }

    /// Readings are lower by so much from here on.
    pub(super) fn lower(&mut self, by: Fixed) {
        self.last.iter_mut().for_each(|point| point.mass -= by);
    }

    /// What is going on, for others.
    pub(super) fn doing(&self) -> Option<Doing> {
        self.is_on().then_some(match self.told {
            Told::Pressed => Doing::Pressed,
            Told::Overloaded => Doing::Overloaded,
            Told::Nothing | Told::Disturbed | Told::Restless => Doing::Disturbed,
        })
    }

    /// Whether no more than two points were off.
    pub(super) fn is_short(&self) -> bool {
        self.points <= 2
    }

    /// Whether the point before the newest lay below a level.
    pub(super) fn dipped(&self, level: Fixed) -> bool {
        let [_, before, _] = self.last;
        before.mass < level
    }

    /// Whether the points lay near each other from the first one on.
    pub(super) fn is_sudden(&self) -> bool {
        self.points == 3
    }

    /// What creep a press may have left.
    pub(super) fn left_by_press(&self) -> Fixed {
        if self.was_press() { product(LEFT_BY_PRESS, self.press) } else { ZERO }
    }

    /// Whether the newest point is back near a level; of more than two, all of the last three.
    pub(super) fn is_near(&self, level: Fixed, reach: Fixed) -> bool {
        let is_near = |point: Point| magnitude(point.mass - level) <= reach;
        let [newest, ..] = self.last;
        if self.points <= 2 { is_near(newest) } else { self.last.into_iter().all(is_near) }
    }

    /// Whether the points rise as water does.
    pub(super) fn rises(&self, slowest: Fixed, fastest: Fixed) -> bool {
        let [a, b, c] = self.last;
        let is_flow = |new: Point, old: Point| {
            let (rise, step) = (new.mass - old.mass, new.time - old.time);
            rise > brought(slowest, step) && rise < brought(fastest, step)
        };
        self.points >= 3 && a.time - self.since < SPLASH && is_flow(a, b) && is_flow(b, c)
    }

    /// Whether the points have come to rest: nearer to each other than `near`, or up to four times
    /// that after some seconds.
    pub(super) fn is_calm(&mut self, near: Fixed) -> bool {
        let [a, b, c] = self.last.map(|point| point.mass);
        let (lowest, highest) = (a.min(b).min(c), a.max(b).max(c));
        let more = match self.told {
            Told::Pressed => fixed(1.0),
            _ => (fixed(1.0) + self.time() - self.since).min(fixed(4.0)),
        };
        let near = product(near, more);
        let is_calm = self.points >= 3 && highest - lowest <= near;
        self.calm = if is_calm { self.calm.saturating_add(1) } else { 0 };
        self.calm
            >= match self.told {
                Told::Nothing => 1,
                Told::Pressed => CALM_PRESS,
                _ => CALM,
            }
    }

    /// What there is to tell now, and how far the points are off a level.
    pub(super) fn announce(&mut self, level: Fixed) -> Option<(Told, Fixed)> {
        let elapsed = self.time() - self.since;
        let off = mean(&self.last) - level;
        let told = match self.told {
            Told::Nothing if elapsed > TELL && off > PRESS => Told::Pressed,
            Told::Nothing if elapsed > TELL => Told::Disturbed,
            Told::Disturbed if elapsed > RESTLESS => Told::Restless,
            _ => return None,
        };
        self.told = told;
        if told == Told::Pressed {
            self.press = off;
        }
        Some((told, off))
    }
}

impl Kept for Hold {
    fn walk(&mut self, walk: &mut impl Walk) {
        use Told::{Disturbed, Nothing, Overloaded, Pressed, Restless};
        walk.count(&mut self.points);
        walk.count(&mut self.calm);
        walk.one_of(&mut self.told, &[Nothing, Disturbed, Pressed, Overloaded, Restless]);
        walk.fixed(&mut self.since);
        self.last.iter_mut().for_each(|point| point.walk(walk));
        walk.fixed(&mut self.press);
    }
}

#[cfg(test)]
#[allow(clippy::arithmetic_side_effects)]
mod tests {
    use super::*;

    fn point(time: f64, mass: f64) -> Point {
        Point { time: fixed(time), mass: fixed(mass) }
    }

    /// Points held back from the tenth second on, ten in a second.
    fn held(masses: &[f64]) -> Hold {
        let mut hold = Hold::NONE;
        let mut time = 10.0;
        for mass in masses {
            let point = point(time, *mass);
            match hold.is_on() {
                true => _ = hold.take(point),
                false => hold.begin(point),
            }
            time += 0.1;
        }
        hold
    }

    #[test]
    fn points_are_held_until_they_are_not() {
        let mut hold = Hold::NONE;
        assert!(!hold.is_on() && hold.doing().is_none());
        hold.begin(point(10.0, 3.0));
        assert!(hold.is_on() && hold.is_short() && !hold.is_sudden());
        assert_eq!(
            (hold.since(), hold.time(), hold.doing()),
            (fixed(10.0), fixed(10.0), Some(Doing::Disturbed))
        );
        assert_eq!(hold.take(point(10.5, 4.0)), fixed(0.5));
        assert!(hold.is_short() && !hold.is_sudden());
        assert_eq!(hold.take(point(11.0, 5.0)), fixed(1.0));
        assert!(!hold.is_short() && hold.is_sudden());
        assert_eq!((hold.since(), hold.time()), (fixed(10.0), fixed(11.0)));
        assert_eq!(hold.last_three(), &[point(11.0, 5.0), point(10.5, 4.0), point(10.0, 3.0)]);
        assert_eq!(hold.last_two(), &[point(11.0, 5.0), point(10.5, 4.0)]);
        hold.lower(fixed(400.0));
        assert_eq!(hold.last_two(), &[point(11.0, -395.0), point(10.5, -396.0)]);
        hold.take(point(11.5, 6.0));
        assert!(!hold.is_sudden() && !hold.is_short());
        hold.end(None);
        assert!(!hold.is_on() && hold.doing().is_none());
        assert!(!hold.ended_at(fixed(12.0), fixed(1e6)), "nothing moved");
    }

    #[test]
    fn a_point_before_the_newest_dipped() {
        let dipped = |before: f64| held(&[150.0, before, 150.0]).dipped(fixed(100.0));
        assert!(dipped(99.999) && !dipped(100.0) && !dipped(150.0));
        assert!(!held(&[0.0, 150.0, 0.0]).dipped(fixed(100.0)), "neither the newest nor the first");
    }

    #[test]
    fn when_something_last_moved() {
        let mut hold = held(&[3.0]);
        assert!(!hold.ended_at(fixed(10.0), fixed(1.0)), "it still does");
        hold.end(Some(fixed(10.0)));
        assert!(
            hold.ended_at(fixed(11.0), fixed(1.0)) && !hold.ended_at(fixed(11.001), fixed(1.0))
        );
        assert_eq!(Hold::ended(fixed(10.0)), hold);
        let last = [point(9.0, 70.0), point(8.9, 71.0), point(8.8, 72.0)];
        let hold = Hold::off(Told::Pressed, last, fixed(71.0));
        assert!(hold.is_on() && hold.is_sudden() && hold.was_press());
        assert_eq!(
            (hold.since(), hold.last_three(), hold.told()),
            (fixed(9.0), &last, Told::Pressed)
        );
        assert_eq!(hold.doing(), Some(Doing::Pressed));
    }

    /// What is heavier than 50 g; while it wavers by less than a 64th of its weight it is the same.
    #[test]
    fn what_was_put_down_may_be_a_hand() {
        let suspected = |changes: &[f64]| {
            let mut hold = Hold::NONE;
            changes.iter().for_each(|change| hold.waver(fixed(*change)));
            hold.suspected()
        };
        assert_eq!((suspected(&[50.0]), suspected(&[50.001])), (ZERO, fixed(50.001)));
        assert_eq!(suspected(&[-640.0]), ZERO, "taken off");
        assert_eq!(suspected(&[640.0, 9.999]), fixed(640.0) + fixed(9.999));
        assert_eq!(suspected(&[640.0, -9.999]), fixed(640.0) + fixed(-9.999));
        assert_eq!((suspected(&[640.0, 10.0]), suspected(&[640.0, -10.0])), (ZERO, ZERO));
        assert_eq!(suspected(&[640.0, 90.0]), fixed(90.0));
        let mut hold = Hold::NONE;
        hold.suspect(fixed(640.0));
        hold.begin(point(1.0, 3.0));
        assert_eq!(hold.suspected(), fixed(640.0), "while points are held");
        hold.end(None);
        assert_eq!(hold.suspected(), fixed(640.0), "and afterwards");
        hold.told = Told::Pressed;
        assert_eq!(hold.suspected(), ZERO, "a press is over that");
        hold.end(None);
        assert_eq!((hold.told(), hold.suspected()), (Told::Nothing, ZERO));
    }

    #[test]
    fn more_than_a_scale_can_weigh_is_new_once() {
        let mut hold = Hold::NONE;
        assert!(hold.overload(point(5.0, 2500.0)));
        assert!(!hold.overload(point(5.1, 2600.0)));
        assert_eq!((hold.doing(), hold.since()), (Some(Doing::Overloaded), fixed(5.0)));
        assert!(hold.was_press() && hold.is_short());
        assert_eq!(hold.left_by_press(), product(fixed(0.001), fixed(2600.0)));
        let mut hold = held(&[300.0; 3]);
        assert!(hold.is_calm(fixed(0.2)) && hold.overload(point(10.5, 2500.0)));
        assert_eq!((hold.calm, hold.since()), (0, fixed(10.0)), "held since then");
    }

    /// A thousandth of a press may be left as creep.
    #[test]
    fn creep_is_left_by_a_press_alone() {
        let hold = |told| Hold { told, press: fixed(800.0), ..held(&[800.0]) }.left_by_press();
        assert_eq!(hold(Told::Pressed), hold(Told::Overloaded));
        assert!((hold(Told::Pressed) - fixed(0.8)).0.abs() < 1000);
        assert!(
            [Told::Nothing, Told::Disturbed, Told::Restless]
                .into_iter()
                .all(|told| hold(told) == ZERO)
        );
    }

    #[test]
    fn one_or_two_points_are_back_by_the_last_more_by_all_three() {
        let is_near = |masses: &[f64]| held(masses).is_near(fixed(100.0), fixed(0.5));
        assert!(is_near(&[100.5]) && is_near(&[99.5]) && is_near(&[120.0, 100.5]));
        assert!(!is_near(&[100.501]) && !is_near(&[99.499]) && !is_near(&[100.0, 101.0]));
        assert!(!is_near(&[120.0, 100.0, 100.0]));
        assert!(is_near(&[120.0, 99.5, 100.0, 100.5]));
        assert!(!is_near(&[120.0, 101.0, 100.0, 100.0]) && !is_near(&[120.0, 100.0, 101.0, 100.0]));
    }

    /// Each step between those of the slowest and the fastest flow, within a second and a half.
    #[test]
    fn points_that_rise_as_water_does() {
        let rises = |masses: &[f64]| held(masses).rises(fixed(1.0), fixed(10.0));
        assert!(
            rises(&[0.0, 0.11, 0.22]) && rises(&[0.0, 0.99, 1.98]) && rises(&[0.0, 0.11, 1.09])
        );
        assert!(!rises(&[0.11, 0.22]), "two are too few");
        assert!(!rises(&[0.0, 0.09, 0.5]) && !rises(&[0.0, 0.5, 0.59]));
        assert!(!rises(&[0.0, 1.01, 1.5]) && !rises(&[0.0, 0.5, 1.51]));
        let long = |readings: u8| {
            let mut hold = Hold::NONE;
            hold.begin(point(10.0, 0.0));
            (1..=readings).for_each(|reading| {
                let elapsed = f64::from(reading) / 8.0;
                hold.take(point(10.0 + elapsed, 4.0 * elapsed));
            });
            hold.rises(fixed(1.0), fixed(10.0))
        };
        assert!(long(11) && !long(12), "a second and a half is too long");
        let mut even = Hold::NONE;
        even.begin(point(8.0, 0.0));
        even.take(point(8.5, 0.5));
        even.take(point(9.0, 1.0));
        assert!(!even.rises(fixed(1.0), fixed(4.0)), "not faster than the slowest");
        assert!(!even.rises(fixed(0.5), fixed(1.0)), "not slower than the fastest");
        assert!(even.rises(fixed(0.999), fixed(1.001)));
    }

    /// Nothing was told: one look. Something was: four. A hand: twenty, and no nearer than at first.
    #[test]
    fn points_come_to_rest() {
        let looks = |told: Told, off: f64| {
            let mut hold = Hold { told, ..held(&[0.0, 0.0]) };
            let mut mass = 0.0;
            (1..=40).find(|look| {
                mass = off - mass;
                hold.take(point(10.1 + 0.001 * f64::from(*look), mass));
                hold.is_calm(fixed(1.0))
            })
        };
        assert_eq!((looks(Told::Nothing, 1.0), looks(Told::Nothing, 1.2)), (Some(1), None));
        assert_eq!((looks(Told::Disturbed, 1.0), looks(Told::Restless, 1.0)), (Some(4), Some(4)));
        assert_eq!((looks(Told::Overloaded, 1.0), looks(Told::Pressed, 1.0)), (Some(4), Some(20)));
        assert_eq!(looks(Told::Pressed, 1.001), None);
        assert!(!held(&[0.0, 0.0]).is_calm(fixed(1.0)), "two are too few");
        // Each of three may be the farthest off.
        for masses in
            [[3.0, 0.0, 0.0], [0.0, 3.0, 0.0], [0.0, 0.0, 3.0], [-3.0, 0.0, 0.0], [0.0, -3.0, 0.0]]
        {
            assert!(!held(&masses).is_calm(fixed(1.0)), "{masses:?}");
        }
        // After a second twice as far apart, after three and more four times.
        for (after, most) in [(0.0, 1.0), (1.0, 2.0), (3.0, 4.0), (30.0, 4.0)] {
            let is_calm = |told, apart: f64| {
                let mut hold = Hold { told, ..Hold::NONE };
                hold.begin(point(10.0, 0.0));
                hold.take(point(10.0 + after, apart));
                hold.take(point(10.0 + after, 0.0));
                hold.told = told;
                hold.calm = 30;
                hold.is_calm(fixed(1.0))
            };
            assert!(
                is_calm(Told::Nothing, most) && !is_calm(Told::Nothing, most + 0.001),
                "{after}"
            );
            assert_eq!(is_calm(Told::Pressed, most), after == 0.0, "a hand stays a hand");
        }
        let mut hold = held(&[0.0, 0.0, 0.0]);
        assert!(hold.is_calm(fixed(1.0)) && hold.calm == 1);
        hold.take(point(10.3, 9.0));
        assert!(!hold.is_calm(fixed(1.0)) && hold.calm == 0, "from the beginning again");
    }

    #[test]
    fn what_disturbs_is_told_once_and_as_a_fault_after_a_minute() {
        let at = |hold: &mut Hold, elapsed: f64, mass: f64| {
            for _ in 0..3 {
                hold.take(point(10.0 + elapsed, mass));
            }
            hold.announce(fixed(300.0))
        };
        let mut hold = held(&[330.0]);
        assert_eq!(at(&mut hold, 0.8, 350.0), None, "not yet");
        let (told, off) = at(&mut hold, 0.801, 350.0).unwrap();
        assert_eq!(
            (told, hold.told(), hold.doing()),
            (Told::Disturbed, told, Some(Doing::Disturbed))
        );
        assert!((off - fixed(50.0)).0.abs() < 200, "50 g is no hand yet");
        assert_eq!((at(&mut hold, 60.0, 900.0), hold.press), (None, ZERO));
        let (told, off) = at(&mut hold, 60.001, 290.0).unwrap();
        assert_eq!((told, hold.doing()), (Told::Restless, Some(Doing::Disturbed)));
        assert!((off - fixed(-10.0)).0.abs() < 200);
        assert_eq!(at(&mut hold, 600.0, 290.0), None, "once");

        let mut hold = held(&[351.0]);
        let (told, off) = at(&mut hold, 1.0, 350.01).unwrap();
        assert_eq!((told, hold.press, hold.doing()), (Told::Pressed, off, Some(Doing::Pressed)));
        assert!(hold.was_press());
        assert_eq!(at(&mut hold, 600.0, 350.01), None);
    }
}
