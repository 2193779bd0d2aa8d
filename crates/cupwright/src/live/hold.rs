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
