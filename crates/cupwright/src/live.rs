//! What a scale sees while someone brews on it: water, flow, and what happens.
//!
//! [`Scale`] takes one reading after the other, five to a hundred a second, at uneven times and with
//! gaps, and tells after each how much water was poured, how fast it comes, and what happened: a pour
//! began or ended, something was put down, taken off or put back, the display was set to zero, a hand
//! pressed. It is a plain value of half a kilobyte at most that its owner keeps; it has no clock and
//! remembers nothing elsewhere.
//!
//! ```
//! use cupwright::live::{Happening, Scale, Setup};
//! use cupwright::quantity::*;
//!
//! let mut scale = Scale::new(Setup {
//!     division: Division::from_grams(0.1)?,
//!     capacity: Capacity::from_grams(2000.0)?,
//!     ..Setup::COMMON
//! });
//!
//! // Invented: three still seconds, a pour of 5 g/s for six, three still seconds.
//! let mut heard = Vec::new();
//! for tenth in 0..120 {
//!     let time = f64::from(tenth) / 10.0;
//!     let shown = (10.0 * (5.0 * (time - 3.0).clamp(0.0, 6.0))).round() / 10.0;
//!     let seen = scale.take(Clock::from_seconds(time)?, ScaleReading::from_grams(shown)?)?;
//!     heard.extend(seen.event.map(|event| event.happening));
//! }
//! assert_eq!(heard, [Happening::PourStarted, Happening::PourStopped, Happening::Settled]);
//! assert!((scale.poured()?.grams() - 30.0).abs() < 0.05);
//! # Ok::<(), cupwright::Error>(())
//! ```
//!
//! # How
//!
//! Readings nearer than a tenth of a second are averaged to one point. A line is fitted to the points
//! since the flow last changed; a change is told by cumulative sums (Page 1954). Its slope is the flow. A point that no pour can reach is
//! held back until those after it say what it was: back where it was (a knock), rising like water (a
//! splash), at rest elsewhere (something moved), or restless (a hand). What was put down and then weighs
//! less, and water that goes away again, was a hand or a spoon: [`Happening::Pressed`] or
//! [`Happening::Disturbed`] says so, and no account keeps it. The noise is told all along, so
//! that nothing has to be set for it. All that is whole numbers of 2⁻²⁰ g and s, cheap on a processor
//! without doubles; ratios and accounts are doubles. How well that works, and where it fails, is measured on invented
//! traces in `tests/traces/SCORES.md`.
//!
//! # What it cannot see
//!
//! A pour shorter than half a second; a thing put down in place of another that weighs the same; water
//! poured while a hand leans on the scale, which comes out as [`Happening::Unclear`]; pouring slower than 0.2
//! g/s, which counts as drift; that a spoon's first stroke is no pour before it falls; up to ten grams that drip
//! and are taken off again at once, which count as a spoon; a hand that presses as steadily as a thing lies there,
//! which is one to it. Within eight points after a fall, or after something told as moving, it hears no pour and no drip
//! begin, since a hand or a spoon that fell rises next; the water counts once it is heard, and a pour that is over by
//! then counts as something put down. A display that is set to zero and a vessel that is lifted from a scale never
//! zeroed both end at nothing: a step within one reading counts as the former. Firmware knows:
//! [`Scale::zeroed`].

mod book;
#[cfg(test)]
#[allow(clippy::arithmetic_side_effects)]
mod edges;
mod fixed;
mod follow;
mod hold;
mod kept;
mod line;

use core::num::Wrapping;

use crate::error::Error;
use crate::math::sqrt;
use crate::quantity::{
    Capacity, Change, Clock, Division, FastestPour, Flow, Level, MassUncertainty, Measure, Poured,
    Quantity, ScaleReading, Unclear, computed,
};
use crate::record::record;
use crate::sealed::Seal;

pub use crate::sealed::Unreadable;
pub use follow::{Cue, FOLLOWER_BYTES, Follower, Now, Step, StepKind, Why};

use book::Book;
use fixed::{Fixed, ZERO, brought, fixed, magnitude, number, product, share};
use hold::{Hold, Told};
use kept::{Kept, Walk};
use line::{Line, Point, mean};

/// Readings nearer than this are averaged to one point, s (estimate).
const POINT: Fixed = fixed(0.1);

/// Longer without a reading is a gap, s (estimate).
const GAP: Fixed = fixed(1.0);

/// Noise at the beginning, g (estimate: that of a common kitchen scale).
const FIRST_NOISE: Fixed = fixed(0.05);

/// Most that noise is taken for, g (estimate).
const MOST_NOISE: Fixed = fixed(0.5);

/// A pour has begun at this flow, g/s (estimate).
const ON: Fixed = fixed(0.8);

/// Until a flow shows, s (estimate).
const ONSET: Fixed = fixed(0.5);

/// A pour has ended at this flow, g/s (estimate).
const OFF: Fixed = fixed(0.4);

/// A flow below this is drift, g/s (estimate).
const DRIFT: Fixed = fixed(0.2);

/// A pour of no more than this on average ends more slowly, g/s (estimate).
const SLOW: Fixed = fixed(2.5);

/// A drip has begun, or ended, after so long, s (estimate).
const DRIP: Fixed = fixed(1.0);

/// Water comes to rest within this time after a pour, s (estimate).
const SETTLING: Fixed = fixed(1.0);

/// And is taken to have come to rest after this, s (estimate).
const SETTLED: Fixed = fixed(3.0);

/// What rises by more than this is no hand that wavers, and no spoon, g (estimate).
const WATER: f64 = 10.0;

/// A hand that looks like a thing still wavers by its weight over two to the power of this (estimate).
const WAVER: usize = 8;

/// And may look like water within this time, s (estimate).
const WAVERING: Fixed = fixed(2.5);

/// No pour begins so soon after something moved, s (estimate).
const QUIET: Fixed = fixed(0.8);

/// Nor within so many points after a fall: what rises then is a hand or a spoon (estimate).
const WAIT: i8 = -8;

/// What a movement leaves comes to rest within this time, s (estimate).
const AFTERMATH: Fixed = fixed(2.0);

/// The level that drift is put down to follows by so much, s.
const LAG: Fixed = fixed(1.0);

/// What a level still changes by within this time after water came to rest belongs to it, s (estimate).
const COMING_TO_REST: Fixed = fixed(2.0);

/// Drift that is told, g (estimate).
const DRIFT_TOLD: Fixed = fixed(2.0);

record! {
    /// A scale, and how it is used.
    pub struct Setup {
        /// Smallest step d of its readings.
        division: Division = "division_g",
        /// Most that it can show from its zero at the beginning.
        capacity: Capacity = "capacity_g",
        /// Fastest that water is poured on it.
        fastest: FastestPour = "fastest_g_per_s",
    }
}

impl Setup {
    /// A common kitchen scale under a kettle with a spout: 0.1 g, 2 kg, 15 g/s (estimate).
    pub const COMMON: Self = Self {
        division: Division::known(0.1),
        capacity: Capacity::known(2000.0),
        fastest: FastestPour::known(15.0),
    };
}

/// What is going on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[non_exhaustive]
#[repr(u16)]
pub enum Doing {
    /// Nothing but drift.
    Still = 1,
    /// Water is poured.
    Pouring = 2,
    /// A pour has just ended.
    Settling = 3,
    /// Water comes too slowly to be a pour.
    Dripping = 4,
    /// Something is moved, stirred or knocked.
    Disturbed = 5,
    /// A hand presses.
    Pressed = 6,
    /// More lies on the scale than it can weigh.
    Overloaded = 7,
}

impl Doing {
    /// Everything that can go on.
    pub const ALL: &'static [Doing] = &[
        Doing::Still,
        Doing::Pouring,
        Doing::Settling,
        Doing::Dripping,
        Doing::Disturbed,
        Doing::Pressed,
        Doing::Overloaded,
    ];

    /// What goes on, in plain words.
    pub const fn words(self) -> &'static str {
        match self {
            Doing::Still => "still",
            Doing::Pouring => "water is poured",
            Doing::Settling => "the water comes to rest",
            Doing::Dripping => "water drips",
            Doing::Disturbed => "something moves",
            Doing::Pressed => "a hand presses",
            Doing::Overloaded => "more than the scale can weigh",
        }
    }
}

/// What can happen.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[non_exhaustive]
#[repr(u16)]
pub enum Happening {
    /// A pour began; with what it has brought so far.
    PourStarted = 1,
    /// A pour ended; with what it brought.
    PourStopped = 2,
    /// The water of a pour has come to rest; with what that pour brought in the end.
    Settled = 3,
    /// Water began to come slowly; with what it has brought so far.
    DripStarted = 4,
    /// It no longer does; with what it brought.
    DripStopped = 5,
    /// The display was set to zero; with the change of the reading.
    Tared = 6,
    /// Something was put down; with its weight.
    Placed = 7,
    /// Something was taken off; with the change, below zero.
    Lifted = 8,
    /// It was put back; with what it is heavier than before.
    Returned = 9,
    /// The reading changed, and that may have been water or not; with the change.
    Unclear = 10,
    /// Something moved, was stirred or knocked; with how far the reading is off. A pour that was told and has
    /// not come to rest was none if it has fallen back to where it began: it brought nothing, as [`Seen::poured`] says.
    Disturbed = 11,
    /// A hand presses; with how much. What was put down since is the hand, and a pour that goes on none.
    Pressed = 12,
    /// The hand let go; with what is left of the press.
    Released = 13,
    /// More than the scale can weigh; with the reading.
    Overloaded = 14,
    /// No readings came for a while; with what has changed meanwhile.
    Lost = 15,
    /// The reading has drifted; with how far since this was last told.
    Drifted = 16,
    /// The reading has been restless for a minute: a fault, or the scale is being carried; with how far
    /// it is off.
    Restless = 17,
}

impl Happening {
    /// Everything that can happen.
    pub const ALL: &'static [Happening] = &[
        Happening::PourStarted,
        Happening::PourStopped,
        Happening::Settled,
        Happening::DripStarted,
        Happening::DripStopped,
        Happening::Tared,
        Happening::Placed,
        Happening::Lifted,
        Happening::Returned,
        Happening::Unclear,
        Happening::Disturbed,
        Happening::Pressed,
        Happening::Released,
        Happening::Overloaded,
        Happening::Lost,
        Happening::Drifted,
        Happening::Restless,
    ];

    /// What happened, in plain words.
    pub const fn words(self) -> &'static str {
        match self {
            Happening::PourStarted => "a pour began",
            Happening::PourStopped => "a pour ended",
            Happening::Settled => "the water has come to rest",
            Happening::DripStarted => "water began to drip",
            Happening::DripStopped => "water no longer drips",
            Happening::Tared => "the display was set to zero",
            Happening::Placed => "something was put down",
            Happening::Lifted => "something was taken off",
            Happening::Returned => "what was taken off is back",
            Happening::Unclear => "water, or something else",
            Happening::Disturbed => "something moved",
            Happening::Pressed => "a hand presses",
            Happening::Released => "the hand let go",
            Happening::Overloaded => "more than the scale can weigh",
            Happening::Lost => "no readings came for a while",
            Happening::Drifted => "the reading has drifted",
            Happening::Restless => "the reading does not come to rest",
        }
    }
}

/// Something that happened.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Event {
    /// What.
    pub happening: Happening,
    /// When, as well as can be told afterwards.
    pub clock: Clock,
    /// By how much, as [`Happening`] says.
    pub change: Change,
}

/// What a scale saw, after a reading.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Seen {
    /// The reading without its noise; what it was before while something disturbs it.
    pub level: Level,
    /// Flow; none while something disturbs the reading, and for three points afterwards.
    pub flow: Option<Flow>,
    /// Water poured since [`Scale::count_anew`], whatever was lifted or set to zero meanwhile.
    pub poured: Poured,
    /// What is not in `poured` and may be water, or is in it and may not be.
    pub unclear: Unclear,
    /// What is going on.
    pub doing: Doing,
    /// What has happened. Things that happened at once come one after the other.
    pub event: Option<Event>,
}

/// Where all that a reading has changed by is put down: their sum is the level, less what the
/// activity going on has gained so far.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Account {
    /// Water.
    pub poured: Change,
    /// Things put down, less things taken off.
    pub moved: Change,
    /// Set to zero.
    pub tared: Change,
    /// Drift: creep, warming, evaporation, drips slower than 0.2 g/s.
    pub drifted: Change,
    /// What could be water or not.
    pub unclear: Change,
    /// What the activity going on has gained.
    pub under_way: Change,
}

/// What the scale thinks is going on when nothing disturbs it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Phase {
    Still,
    Pouring,
    Settling,
    Dripping,
}

/// Something that happened, before it is told.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Heard {
    happening: Happening,
    time: Fixed,
    /// g.
    change: f64,
}

impl Heard {
    fn event(self) -> Result<Event, Error> {
        let Self { happening, time, change } = self;
        Ok(Event { happening, clock: computed(number(time))?, change: computed(change)? })
    }
}

/// What happened at the same time as what is being told, in order. One is told with each reading, and one makes
/// four at most: a pour's end, an overload's, what was left, and a gap. That none comes while as many wait that there
/// is no room is tested by chance, not proved.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Pending([Waiting; 3]);

/// Something that waits to be told, in sixteen bytes: its time, and in the lowest eight bits its happening.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Waiting {
    stamp: i64,
    change: f64,
}

impl Waiting {
    const NONE: Self = Self { stamp: 0, change: 0.0 };

    fn of(heard: Heard) -> Self {
        let Heard { happening, time, change } = heard;
        Self { stamp: time.0 << 8 | happening as i64, change }
    }

    fn heard(self) -> Option<Heard> {
        let place = usize::from((self.stamp as u8).checked_sub(1)?);
        let happening = *Happening::ALL.get(place)?;
        Some(Heard { happening, time: Wrapping(self.stamp >> 8), change: self.change })
    }
}

impl Pending {
    const NONE: Self = Self([Waiting::NONE; 3]);

    /// Takes the first out.
    fn next(&mut self) -> Option<Heard> {
        let [first, second, third] = self.0;
        let heard = first.heard()?;
        self.0 = [second, third, Waiting::NONE];
        Some(heard)
    }

    fn add(&mut self, heard: Heard) {
        let place = self.0.iter_mut().find(|place| **place == Waiting::NONE);
        #[cfg(test)]
        assert!(place.is_some(), "{heard:?} would be lost: {self:?}");
        if let Some(place) = place {
            *place = Waiting::of(heard);
        }
    }
}

/// Readings on their way to a point.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Gathered {
    /// Times and masses over those of the first.
    first: Point,
    time: Fixed,
    mass: Fixed,
    /// When the last point was made.
    closed: Fixed,
    /// When the last reading came, s; as it was told, for clocks that hardly go on.
    last: f64,
}

/// A scale that is being watched. See the [module](self).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Scale {
    /// This and two more in 32 bits, that the whole may be small; 2⁻²⁰ g.
    division: i32,
    capacity: Fixed,
    /// 2⁻²⁰ g/s.
    fastest: i32,
    gathered: Gathered,
    /// How many readings that is. Here and not there, where it would take eight bytes.
    readings: u8,
    line: Line,
    noise: Noise,
    hold: Hold,
    phase: Phase,
    /// Points in a row that ask for another phase; below zero while none is heard.
    asking: i8,
    /// Runs of water since it is counted; beyond 255 their uncertainty grows no more.
    runs: u8,
    /// Since when the phase lasts; while still, since when there is more than drift.
    since: Fixed,
    /// Since when nothing but drift goes on, or a run of water.
    calm: Fixed,
    book: Book,
    /// What was drift when it was last told, 2⁻¹⁰ g.
    drift_told: i32,
    pending: Pending,
}

/// The noise of a point.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Noise {
    /// σ², 2⁻⁴⁰ g².
    variance: i64,
    /// σ, the root of it to 2⁻¹⁷ g.
    deviation: Fixed,
}

/// How every scale's bytes begin.
const SEAL: Seal = Seal { letters: *b"CUPS", version: 1 };

/// Numbers of a scale's state.
const NUMBERS: usize = 76;

/// Length of a scale's state in bytes.
pub const SCALE_BYTES: usize = Seal::length(NUMBERS);

impl Scale {
    /// The state as bytes, the same on every processor, for a memory that outlives a restart.
    pub fn to_bytes(&self) -> [u8; SCALE_BYTES] {
        kept::closed::<_, NUMBERS, SCALE_BYTES>(&SEAL, *self)
    }

    /// A state from its bytes. The clock must have gone on meanwhile; the first reading afterwards
    /// counts as one after a gap.
    ///
    /// # Errors
    /// [`Unreadable`], with what is wrong: no damaged state is ever read.
    pub fn from_bytes(bytes: &[u8]) -> Result<Self, Unreadable> {
        kept::opened(&SEAL, NUMBERS, bytes, Self::new(Setup::COMMON))
    }

    /// A scale of which nothing is known yet. Its first reading is taken for what lies on it.
    pub const fn new(setup: Setup) -> Self {
        Self {
            division: fixed(setup.division.grams()).0 as i32,
            capacity: fixed(setup.capacity.grams()),
            fastest: fixed(setup.fastest.grams_per_second()).0 as i32,
            gathered: Gathered {
                first: Point::NONE,
                time: ZERO,
                mass: ZERO,
                closed: ZERO,
                last: f64::NEG_INFINITY,
            },
            readings: 0,
            line: Line::NONE,
            noise: Noise::of(FIRST_NOISE),
            hold: Hold::NONE,
            phase: Phase::Still,
            asking: 0,
            runs: 0,
            since: ZERO,
            calm: ZERO,
            book: Book::BLANK,
            drift_told: 0,
            pending: Pending::NONE,
        }
    }

    /// Takes the next reading.
    ///
    /// # Errors
    /// [`Error::Impossible`] for a clock that does not go forward; nothing is changed by it.
    /// [`Error::ResultOutOfRange`] for accounts that leave all ranges, after years of pouring.
    pub fn take(&mut self, clock: Clock, reading: ScaleReading) -> Result<Seen, Error> {
        let time = clock.seconds();
        if time <= self.gathered.last {
            return Err(Error::Impossible {
                quantity: Quantity::Clock,
                value: time,
                lowest: self.gathered.last,
                highest: Quantity::Clock.highest(),
                beside: Quantity::Clock,
            });
        }
        let point = Point { time: fixed(time), mass: fixed(reading.grams()) };
        let step = point.time - fixed(self.gathered.last);
        self.gathered.last = time;
        let mut event = self.pending.next();
        if !self.line.is_begun() {
            self.begin(point);
        } else if point.mass - fixed(self.book.tared) >= self.capacity - self.division() {
            self.overload(point, &mut event);
        } else {
            self.gather(point, step, &mut event);
        }
        self.seen(event)
    }

    /// Water poured since [`count_anew`](Self::count_anew).
    ///
    /// # Errors
    /// [`Error::ResultOutOfRange`] after years of pouring.
    pub fn poured(&self) -> Result<Poured, Error> {
        let water = self.book.water(self.run());
        computed(if self.phase == Phase::Still { water } else { water + self.under_way() })
    }

    /// Standard uncertainty of the water poured, g, by what the scale saw alone:
    ///
    /// ```text
    /// u² = 2n u_L² + (u_R t)² + Q²/3     u_R² = 1/(1/u_0² + t_S²/u_S²)
    /// ```
    ///
    /// | symbol | meaning |
    /// |---|---|
    /// | n | pours and drips since water is counted; a drip that grows to a pour is one with it |
    /// | u_L | of a level at the end of a run, 0.08 g (estimate) |
    /// | u_R | of the rate of drift while water came, in t |
    /// | u_0, t_S | of usual drift, 0.01 g/s (estimate); time at rest in which its rate was seen |
    /// | u_S | of a level at the end of such a time, 0.06 g (estimate) |
    /// | Q | [`Seen::unclear`]: all of it may be water, or none |
    ///
    /// The scale's own span is not in it. How often the truth lies within two of it, on invented
    /// traces, is told by `tests/traces/SCORES.md`.
    ///
    /// # Errors
    /// [`Error::ResultOutOfRange`] after years of pouring.
    pub fn poured_uncertainty(&self) -> Result<MassUncertainty, Error> {
        computed(sqrt(self.book.water_variance(self.runs, self.run())))
    }

    /// When the last reading came, if there was one.
    pub fn latest(&self) -> Option<Clock> {
        Clock::accept(self.gathered.last)
    }

    /// Where all changes of the reading are put down.
    ///
    /// # Errors
    /// [`Error::ResultOutOfRange`] after years of pouring.
    pub fn account(&self) -> Result<Account, Error> {
        let Book { poured, moved, tared, drifted, unclear, .. } = self.book;
        Ok(Account {
            poured: computed(poured)?,
            moved: computed(moved)?,
            tared: computed(tared)?,
            drifted: computed(drifted)?,
            unclear: computed(unclear)?,
            under_way: computed(self.under_way())?,
        })
    }

    /// Counts water from here on: what was poured so far, a rinse for example, is so much weight like
    /// any other.
    pub fn count_anew(&mut self) {
        if self.phase != Phase::Still {
            self.enter(|book| &mut book.poured);
            self.calm = self.line.time();
        }
        self.book.count_anew();
        self.runs = u8::from(self.phase != Phase::Still);
    }

    /// Tells that readings are lower by so much from the next one on, because the display was set to
    /// zero: firmware knows, and nothing has to be guessed.
    pub fn zeroed(&mut self, by: Change) {
        self.book.zeroed(by.grams());
        let by = fixed(by.grams());
        self.gathered.first.mass -= by;
        self.line.lower(by);
        self.hold.lower(by);
    }

    fn division(&self) -> Fixed {
        Wrapping(self.division.into())
    }

    fn fastest(&self) -> Fixed {
        Wrapping(self.fastest.into())
    }

    /// So many times the noise of a point.
    fn noise(&self, times: Fixed) -> Fixed {
        product(times, self.noise.deviation)
    }

    /// How far a point can be off without being something else than water.
    fn reach(&self, step: Fixed) -> Fixed {
        // Four standard deviations of a difference.
        brought(self.fastest(), step) + self.noise(fixed(5.7)) + self.division()
    }

    /// Level, g.
    fn level(&self) -> f64 {
        number(self.line.level)
    }

    /// What lies on the scale at a level, if it began empty, g.
    fn load(&self, level: f64) -> f64 {
        level - self.book.tared
    }

    /// What the phase has gained, g.
    fn under_way(&self) -> f64 {
        self.level() - self.book.anchor
    }

    /// How many seconds a run of water has lasted; zero while none goes on.
    fn run(&self) -> f64 {
        if self.phase == Phase::Still { 0.0 } else { number(self.line.time() - self.calm) }
    }

    /// Puts down what the phase has gained.
    fn enter(&mut self, account: fn(&mut Book) -> &mut f64) {
        self.book.enter(self.level(), account);
    }

    fn turn(&mut self, phase: Phase, time: Fixed) {
        let begins = match (self.phase, phase) {
            (_, Phase::Still) => Some(time),
            // The level that drift is put down to lags behind: what went off just before belongs to the run.
            (Phase::Still, _) => Some(time - LAG),
            (Phase::Settling, Phase::Pouring) => Some(time),
            // A drip that grows to a pour is one run with it.
            _ => None,
        };
        if let Some(begun) = begins {
            self.calm = begun;
            self.runs = self.runs.saturating_add(u8::from(phase != Phase::Still));
        }
        self.phase = phase;
        self.asking = 0;
        self.since = time;
    }

    /// What is seen now.
    fn seen(&self, heard: Option<Heard>) -> Result<Seen, Error> {
        let is_known = !self.hold.is_on() && self.line.weight() >= 3;
        let flow = if is_known { Some(computed(number(self.line.flow))?) } else { None };
        Ok(Seen {
            level: computed(self.level())?,
            flow,
            poured: self.poured()?,
            unclear: computed(self.book.unsure)?,
            doing: match (self.hold.doing(), self.phase) {
                (Some(doing), _) => doing,
                (None, Phase::Still) => Doing::Still,
                (None, Phase::Pouring) => Doing::Pouring,
                (None, Phase::Settling) => Doing::Settling,
                (None, Phase::Dripping) => Doing::Dripping,
            },
            event: heard.map(Heard::event).transpose()?,
        })
    }

    /// The first reading.
    fn begin(&mut self, point: Point) {
        self.line.begin(&[point]);
        self.gathered.closed = point.time;
        self.enter(|book| &mut book.moved);
        self.turn(Phase::Still, point.time);
    }

    /// A reading beyond the scale.
    #[inline(never)]
    fn overload(&mut self, point: Point, event: &mut Option<Heard>) {
        self.readings = 0;
        self.gathered.closed = point.time;
        if self.hold.overload(point) {
            self.tell(event, Happening::Overloaded, point.time, number(point.mass));
        }
    }

    /// A reading on its way to a point, `step` after the one before.
    fn gather(&mut self, point: Point, step: Fixed, event: &mut Option<Heard>) {
        if self.readings > 0 && (step > GAP || self.jumps(point, step)) {
            // No point lies astride a gap or a jump.
            self.close(point.time - step, event);
        }
        let gathered = &mut self.gathered;
        if self.readings == 0 {
            (gathered.first, gathered.time, gathered.mass) = (point, ZERO, ZERO);
        }
        self.readings = self.readings.saturating_add(1);
        gathered.time += point.time - gathered.first.time;
        gathered.mass += point.mass - gathered.first.mass;
        if point.time - gathered.closed >= POINT - (step >> 1) {
            self.close(point.time, event);
        }
    }

    /// Whether a reading is off those on their way to a point by more than water can bring.
    fn jumps(&self, reading: Point, step: Fixed) -> bool {
        let off = reading.mass - self.gathered.mean(self.readings).mass;
        !self.hold.is_on() && magnitude(off) > self.reach(step)
    }

    fn close(&mut self, time: Fixed, event: &mut Option<Heard>) {
        let point = self.gathered.mean(self.readings);
        self.readings = 0;
        self.gathered.closed = time;
        self.point(point, event)
    }

    fn point(&mut self, point: Point, event: &mut Option<Heard>) {
        let step = point.time - self.line.time();
        if self.hold.is_on() {
            return self.held(point, event);
        }
        if step > GAP {
            return self.lost(point, step, event);
        }
        if !self.is_reached(point, step) {
            self.hold.begin(point);
            return;
        }
        self.listen(point);
        self.line.take(point, self.noise.variance);
        self.judge(point.time, step, event)
    }

    /// Whether water can have brought the reading to a point: no faster than water is poured, and down
    /// no more than when a stream no longer pushes (half of that, estimate).
    fn is_reached(&self, point: Point, step: Fixed) -> bool {
        let change = point.mass - self.line.level;
        magnitude(change) <= self.reach(if change < ZERO { step >> 1 } else { step })
    }

    /// Follows the noise.
    fn listen(&mut self, point: Point) {
        if let Some(bend) = self.line.bend(point) {
            self.noise.take(bend, self.division());
        }
    }

    /// What the line says now.
    #[inline(never)]
    fn judge(&mut self, time: Fixed, step: Fixed, event: &mut Option<Heard>) {
        if self.sinks() {
            self.wait();
        }
        if self.phase == Phase::Still && self.hold.ended_at(time, QUIET) {
            (self.calm, self.since) = (time, time);
            return;
        }
        if self.phase != Phase::Pouring && self.starts(time) {
            // A drip may still prove to be a spoon, and is one run with what it grows to.
            if self.phase == Phase::Settling {
                self.close_phase(self.level());
            }
            let gain = self.under_way();
            // Not before there was a flow at all.
            let earliest = (self.since - ONSET).max(ZERO);
            let began = earliest.max(time - fixed(gain / number(self.line.flow)));
            self.turn(Phase::Pouring, time);
            return self.tell(event, Happening::PourStarted, began, gain);
        }
        if self.falls() {
            return self.hand(self.line.last_three(), event);
        }
        match self.phase {
            Phase::Still => self.drift(time, step, event),
            Phase::Pouring => self.pour(time, event),
            Phase::Settling => self.settle(time, event),
            Phase::Dripping => self.drip(time, event),
        }
    }

    /// Whether a pour starts: the flow is large, surely so, and has brought something.
    fn starts(&mut self, time: Fixed) -> bool {
        let (flow, weight) = (self.line.flow, self.line.weight());
        // A hand wavers by some share of its weight.
        let is_new = self.hold.ended_at(time, WAVERING);
        let wavers = if is_new { self.hold.suspected() >> WAVER } else { ZERO };
        let least = wavers.max(fixed(0.25));
        let asks = weight >= 3
            && flow > ON
            && flow < product(fixed(1.2), self.fastest())
            && fixed(self.under_way()) > least + self.noise(fixed(3.0))
            && self.line.is_rising(if weight >= 6 { self.noise(fixed(3.0)) } else { ZERO })
            && self.is_sure(flow, 16);
        self.asking = if asks || self.asking < 0 { self.asking.saturating_add(1) } else { 0 };
        asks && self.asking >= 2
    }

    /// What moved while nothing was poured may move on: no pour is heard for a while.
    fn wait(&mut self) {
        if self.phase == Phase::Still {
            self.asking = WAIT;
        }
    }

    /// Whether the reading surely falls.
    fn sinks(&self) -> bool {
        self.line.flow < ZERO - ON && self.line.weight() >= 3 && self.is_sure(self.line.flow, 16)
    }

    /// Whether what rose like water falls back to where it began, or what was put down to less than it
    /// weighed: water and things do not.
    fn falls(&self) -> bool {
        let most = match self.phase {
            Phase::Pouring | Phase::Settling | Phase::Dripping => fixed(0.25),
            Phase::Still if self.hold.suspected() > ZERO => fixed(-0.25),
            _ => return false,
        };
        fixed(self.under_way()) < most && self.sinks()
    }

    /// It was a hand, or a spoon: what was put down for it, weight or water, is taken back.
    #[inline(never)]
    fn hand(&mut self, last: [Point; 3], event: &mut Option<Heard>) {
        let (weight, since, phase) = (self.hold.suspected(), self.since, self.phase);
        let (told, happening) = match weight > ZERO {
            true => (Told::Pressed, Happening::Pressed),
            false => (Told::Disturbed, Happening::Disturbed),
        };
        self.book.take_back(number(weight));
        self.runs = self.runs.saturating_sub(u8::from(phase != Phase::Still));
        let (time, before) = (self.line.time(), fixed(self.book.anchor));
        let off = mean(&last) - before;
        self.hold = Hold::off(told, last, if weight > ZERO { off } else { ZERO });
        self.line.begin(&[Point { time, mass: before }]);
        self.turn(Phase::Still, time);
        self.tell(event, happening, since, number(off));
        match phase {
            Phase::Pouring => self.tell(event, Happening::PourStopped, since, 0.0),
            Phase::Dripping => self.tell(event, Happening::DripStopped, since, 0.0),
            Phase::Still | Phase::Settling => {}
        }
    }

    /// Whether a flow is more than noise: its standard deviations, squared.
    fn is_sure(&self, flow: Fixed, squared: u8) -> bool {
        self.line.is_sure(flow, squared, self.noise.variance)
    }

    fn pour(&mut self, time: Fixed, event: &mut Option<Heard>) {
        let flow = self.line.flow;
        let ends = self.line.weight() >= 3 && flow < OFF && self.is_sure(ON - flow, 1);
        self.asking = if ends { self.asking.saturating_add(1) } else { 0 };
        let is_slow = fixed(self.under_way()) < brought(SLOW, time - self.since);
        if self.asking >= if is_slow { 4 } else { 2 } {
            let gain = self.under_way();
            if gain > WATER {
                self.hold.suspect(ZERO);
            }
            self.turn(Phase::Settling, time);
            self.tell(event, Happening::PourStopped, time, gain);
        }
    }

    fn settle(&mut self, time: Fixed, event: &mut Option<Heard>) {
        let waited = time - self.since;
        if (waited > SETTLING && magnitude(self.line.flow) < DRIFT) || waited > SETTLED {
            self.rest(Happening::Settled, time, event);
        }
    }

    /// What water brought is put down, and nothing goes on any more.
    fn rest(&mut self, happening: Happening, time: Fixed, event: &mut Option<Heard>) {
        let gain = self.under_way();
        self.close_phase(self.level());
        self.turn(Phase::Still, time);
        self.tell(event, happening, time, gain)
    }

    fn drip(&mut self, time: Fixed, event: &mut Option<Heard>) {
        if self.line.flow > DRIFT >> 1 {
            self.since = time;
        } else if time - self.since > DRIP {
            self.rest(Happening::DripStopped, time, event);
        }
    }

    fn drift(&mut self, time: Fixed, step: Fixed, event: &mut Option<Heard>) {
        let (flow, gain) = (self.line.flow, self.under_way());
        if magnitude(flow) >= DRIFT {
            // A hand wavers by some grams.
            let suspected = self.hold.suspected() > ZERO;
            let least = fixed(if suspected { 2.0 } else { 0.3 }) + self.noise(fixed(3.0));
            let is_drip = flow > ZERO
                && self.asking >= 0
                && time - self.since > DRIP
                && !self.hold.ended_at(time, AFTERMATH + DRIP)
                && fixed(gain) > least
                && self.is_sure(flow, 16);
            if is_drip {
                self.turn(Phase::Dripping, time);
                self.tell(event, Happening::DripStarted, time, gain);
            }
            return;
        }
        let mut gain = gain;
        if self.hold.ended_at(time, AFTERMATH) {
            self.enter(|book| &mut book.drifted);
            gain = 0.0;
        } else if magnitude(fixed(gain)) > fixed(1.0) + self.noise(fixed(3.0)) {
            // Too small for a jump, too quick for water.
            return self.moved(self.since, gain, event);
        }
        let step = number(step.min(fixed(1.0)));
        let change = step * gain;
        self.since = time;
        if time - self.calm > COMING_TO_REST {
            self.book.drift(change);
            self.book.still(step, change);
        } else if self.hold.ended_at(time, AFTERMATH + QUIET) {
            self.book.drift(change);
        } else {
            self.book.rest(step, change);
        }
        let told: Fixed = Wrapping(self.drift_told.into());
        let drifted = fixed(self.book.drifted) - (told << 10);
        if magnitude(drifted) > DRIFT_TOLD {
            self.drift_told = self.drift_told.wrapping_add((drifted >> 10).0 as i32);
            self.tell(event, Happening::Drifted, time, number(drifted));
        }
    }

    /// A point while something disturbs the reading.
    #[inline(never)]
    fn held(&mut self, point: Point, event: &mut Option<Heard>) {
        let step = point.time - self.hold.time();
        let elapsed = self.hold.take(point);
        // Back where it was, or would have come to.
        let is_pouring = self.phase == Phase::Pouring;
        let (expected, reach) = if is_pouring {
            let strayed = brought(magnitude(self.line.flow) >> 1, elapsed);
            let step = product(fixed(0.2), step.min(GAP));
            (self.line.ahead(point.time), self.reach(step) + strayed)
        } else {
            (self.line.level, self.reach(step.min(GAP)) + self.hold.left_by_press())
        };
        if self.hold.is_near(expected, reach) {
            if self.hold.is_short() {
                if self.hold.dipped(self.line.level) {
                    self.wait();
                }
                self.hold.end(None);
                self.line.take(point, self.noise.variance);
                return self.judge(point.time, step, event);
            }
            let (old, was_press) = (self.level(), self.hold.was_press());
            self.line.begin(self.hold.last_two());
            self.hold.end(Some(point.time));
            self.since = point.time;
            if self.phase == Phase::Still {
                self.calm = point.time;
            }
            if was_press {
                self.tell(event, Happening::Released, point.time, self.level() - old);
            }
            return self.judge(point.time, step, event);
        }
        // Water that began with a splash.
        let gain = point.mass - self.line.level;
        let is_water = gain + reach > ZERO && gain < brought(self.fastest(), elapsed) + reach;
        if is_water && self.hold.rises(OFF, self.fastest()) {
            if self.hold.told() != Told::Nothing {
                self.wait();
            }
            self.line.begin(self.hold.last_three());
            self.hold.end(None);
            return self.judge(point.time, step, event);
        }
        if self.hold.is_calm(self.noise(fixed(6.0)).max(self.division() * Wrapping(3))) {
            return self.elsewhere(point.time, elapsed, event);
        }
        self.announce(point.time, event)
    }

    /// Says what disturbs the reading, once that can be told.
    #[inline(never)]
    fn announce(&mut self, time: Fixed, event: &mut Option<Heard>) {
        let Some((told, off)) = self.hold.announce(self.line.level) else {
            return;
        };
        let (since, off) = (self.hold.since(), number(off));
        match told {
            Told::Restless => return self.tell(event, Happening::Restless, time, off),
            Told::Pressed => self.tell(event, Happening::Pressed, since, off),
            _ => self.tell(event, Happening::Disturbed, since, off),
        }
        if self.phase == Phase::Pouring {
            self.turn(Phase::Settling, time);
            self.tell(event, Happening::PourStopped, since, self.under_way());
        }
    }

    /// The reading has come to rest elsewhere.
    #[inline(never)]
    fn elsewhere(&mut self, time: Fixed, elapsed: Fixed, event: &mut Option<Heard>) {
        let (before, flow, since) = (self.line.level, self.line.flow, self.hold.since());
        let (was_press, was_sudden) = (self.hold.was_press(), self.hold.is_sudden());
        let was_told = self.hold.told() != Told::Nothing;
        // A spoon that was taken for water.
        let last = *self.hold.last_three();
        if self.phase != Phase::Still
            && self.under_way() < WATER
            && magnitude(before - mean(&last)) < fixed(WATER)
            && number(mean(&last)) - self.book.anchor < 0.25
        {
            return self.hand(last, event);
        }
        self.line.begin_flat(&last);
        let suspected = self.hold.suspected();
        self.hold = Hold::ended(time);
        self.hold.suspect(suspected);
        let after = self.line.level;
        let (old, new) = (number(before), number(after));
        let change = new - old;
        // The stream's end: it no longer pushes.
        if self.phase == Phase::Pouring
            && magnitude(after - before) < self.reach(POINT) + (flow >> 2)
        {
            self.turn(Phase::Settling, time);
            return self.tell(event, Happening::PourStopped, since, new - self.book.anchor);
        }
        let gain = old - self.book.anchor;
        // Up to when the old level was seen.
        self.calm += elapsed;
        self.close_phase(old);
        if self.phase == Phase::Pouring {
            self.tell(event, Happening::PourStopped, since, gain);
        }
        if was_press {
            self.tell(event, Happening::Released, time, change);
        }
        self.turn(Phase::Still, time);
        let nothing = product(fixed(2.5), self.division()).max(self.noise(fixed(3.5)));
        if magnitude(after) <= nothing && magnitude(before) > fixed(1.0) && was_sudden {
            self.enter(|book| &mut book.tared);
            return self.tell(event, Happening::Tared, since, change);
        }
        let could_be_water = change > 0.0 && after - before <= brought(self.fastest(), elapsed);
        if could_be_water && was_told {
            self.enter(|book| &mut book.unclear);
            self.book.unsure += change;
            return self.tell(event, Happening::Unclear, since, change);
        }
        self.moved(since, change, event)
    }

    /// Something was put down, taken off or put back.
    fn moved(&mut self, time: Fixed, change: f64, event: &mut Option<Heard>) {
        self.enter(|book| &mut book.moved);
        self.hold.waver(fixed(change));
        if change < 0.0 {
            self.book.take_off(-change);
            return self.tell(event, Happening::Lifted, time, change);
        }
        match self.book.put_back(change) {
            Some(off) => self.tell(event, Happening::Returned, time, change - off),
            None => self.tell(event, Happening::Placed, time, change),
        }
    }

    /// A reading after a gap.
    #[inline(never)]
    fn lost(&mut self, point: Point, gap: Fixed, event: &mut Option<Heard>) {
        let (old, flow) = (self.level(), self.line.flow);
        let change = point.mass - self.line.level;
        let (reach, expected) = (self.reach(POINT), brought(flow, gap));
        let went_on = magnitude(change - expected) < (expected >> 1) + reach;
        let could_be_water = change + reach > ZERO && change < brought(self.fastest(), gap) + reach;
        let changed = number(change);
        self.line.begin(&[point]);
        self.hold.suspect(ZERO);
        // Nobody knows what went off meanwhile.
        self.calm += gap;
        if self.phase != Phase::Still && could_be_water {
            self.book.unsure += changed.abs();
            if self.phase == Phase::Pouring && went_on {
                self.asking = 0;
            } else {
                self.turn(Phase::Settling, point.time);
            }
        } else {
            self.close_phase(old);
            if magnitude(change) > reach {
                self.book.unsure += changed.abs();
                self.enter(|book| &mut book.unclear);
            }
            self.turn(Phase::Still, point.time);
        }
        self.tell(event, Happening::Lost, point.time, changed)
    }

    /// Puts down what the phase has gained up to a level.
    fn close_phase(&mut self, level: f64) {
        match self.phase {
            Phase::Still => self.book.enter(level, |book| &mut book.drifted),
            _ => self.book.pour(level, self.run()),
        }
    }

    /// Tells now, or with one of the next readings where something is told already.
    fn tell(&mut self, event: &mut Option<Heard>, happening: Happening, time: Fixed, change: f64) {
        let heard = Heard { happening, time, change };
        match event {
            None => *event = Some(heard),
            Some(_) => self.pending.add(heard),
        }
    }
}

impl Gathered {
    /// The mean of so many readings.
    fn mean(&self, count: u8) -> Point {
        Point {
            time: self.first.time + share(self.time, count),
            mass: self.first.mass + share(self.mass, count),
        }
    }
}

impl Noise {
    /// A deviation, to 2⁻¹⁷ g.
    const fn of(deviation: Fixed) -> Self {
        let deviation = Wrapping(deviation.0 & !7);
        Self { variance: deviation.0.wrapping_mul(deviation.0), deviation }
    }

    /// Takes a new look at it, of which a tenth counts (estimate).
    fn take(&mut self, variance: i64, division: Fixed) {
        // What whole divisions make of a steady level, and a little.
        let least = product(fixed(0.3055), division);
        let most = Self::of(MOST_NOISE).variance;
        let looked = variance.min(self.variance.saturating_mul(9));
        let step = looked.saturating_sub(self.variance).saturating_mul(13) >> 7;
        self.variance = self.variance.saturating_add(step).max(Self::of(least).variance).min(most);
        self.find_deviation();
    }

    fn find_deviation(&mut self) {
        let root = u32::try_from(self.variance >> 6).unwrap_or(u32::MAX).isqrt();
        self.deviation = Wrapping(i64::from(root) << 3);
    }
}

impl Kept for Noise {
    fn walk(&mut self, walk: &mut impl Walk) {
        let mut variance = Wrapping(self.variance);
        walk.fixed(&mut variance);
        self.variance = variance.0;
        self.find_deviation();
    }
}

impl Kept for Scale {
    fn walk(&mut self, walk: &mut impl Walk) {
        use Phase::{Dripping, Pouring, Settling, Still};
        for short in [&mut self.division, &mut self.fastest, &mut self.drift_told] {
            walk.whole(short, |number| number as i32);
        }
        walk.fixed(&mut self.capacity);
        let Gathered { first, time, mass, closed, last } = &mut self.gathered;
        first.walk(walk);
        for gathered in [time, mass, closed] {
            walk.fixed(gathered);
        }
        walk.number(last);
        walk.count(&mut self.readings);
        self.line.walk(walk);
        self.noise.walk(walk);
        self.hold.walk(walk);
        walk.one_of(&mut self.phase, &[Still, Pouring, Settling, Dripping]);
        walk.whole(&mut self.asking, |number| number as i8);
        walk.count(&mut self.runs);
        walk.fixed(&mut self.since);
        walk.fixed(&mut self.calm);
        self.book.walk(walk);
        self.pending.walk(walk);
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Whatever comes, in jumps, floods, gaps and overloads: nothing is told that finds no room.
    #[test]
    fn nothing_that_happens_is_lost() {
        let mut dice = Wrapping(1_u32);
        let mut roll = |among: u32| {
            dice = dice * Wrapping(1_664_525) + Wrapping(1_013_904_223);
            f64::from((dice.0 >> 16) % among)
        };
        let (mut heard, mut waited) = (0, 0);
        for _ in 0..100 {
            let mut scale = Scale::new(Setup::COMMON);
            let (mut time, mut mass, mut flow) = (0.0, 0.0, 0.0);
            for _ in 0..1000 {
                time += if roll(50) < 1.0 { roll(8) } else { 0.0 } + 0.02 + roll(9) / 100.0;
                if roll(12) < 1.0 {
                    flow = 0.5 * roll(4) * roll(2);
                    mass = if roll(3) < 1.0 { 10.0 * roll(400) } else { mass };
                }
                mass += flow;
                let (clock, reading) = (Clock::known(time), ScaleReading::known(mass));
                let seen = scale.take(clock, reading).unwrap();
                heard += u32::from(seen.event.is_some());
                waited += u32::from(scale.pending != Pending::NONE);
            }
        }
        assert!(heard > 1000 && waited > 100, "{heard}, {waited}");
    }
}
