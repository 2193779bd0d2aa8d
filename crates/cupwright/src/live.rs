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
//! splash), at rest elsewhere (something moved), or restless (a hand). The noise is told all along, so
//! that nothing has to be set for it. How well that works, and where it fails, is measured on invented
//! traces in `tests/traces/SCORES.md`.
//!
//! # What it cannot see
//!
//! A pour shorter than half a second; a thing put down in place of another that weighs the same; water
//! poured while a hand leans on the scale, which comes out as [`Happening::Unclear`]; pouring slower than 0.2
//! g/s, which counts as drift. A display that is set to zero and a vessel that is lifted from a scale never
//! zeroed both end at nothing: a step within one reading counts as the former. Firmware knows:
//! [`Scale::zeroed`].

mod book;
mod follow;
mod hold;
mod kept;
mod line;

use crate::error::Error;
use crate::math::{max, min, sqrt, square};
use crate::quantity::{
    Capacity, Change, Clock, Division, FastestPour, Flow, Level, MassUncertainty, Measure, Poured,
    Quantity, ScaleReading, Unclear, computed,
};
use crate::record::record;
use crate::sealed::Seal;

pub use crate::sealed::Unreadable;
pub use follow::{Cue, FOLLOWER_BYTES, Follower, Now, Step, StepKind, Why};

use book::Book;
use hold::{Hold, Told};
use kept::{Kept, Walk};
use line::{Line, Point};

/// Readings nearer than this are averaged to one point, s (estimate).
const POINT: f64 = 0.1;

/// Longer without a reading is a gap, s (estimate).
const GAP: f64 = 1.0;

/// Noise at the beginning, g (estimate: that of a common kitchen scale).
const FIRST_NOISE: f64 = 0.05;

/// Most that noise is taken for, g (estimate).
const MOST_NOISE: f64 = 0.5;

/// Share of a new look at the noise (estimate).
const NEW_NOISE: f64 = 0.1;

/// A pour has begun at this flow, g/s (estimate).
const ON: f64 = 0.8;

/// Until a flow shows, s (estimate).
const ONSET: f64 = 0.5;

/// A pour has ended at this flow, g/s (estimate).
const OFF: f64 = 0.4;

/// A flow below this is drift, g/s (estimate).
const DRIFT: f64 = 0.2;

/// A pour of no more than this on average ends more slowly, g/s (estimate).
const SLOW: f64 = 2.5;

/// A drip has begun, or ended, after so long, s (estimate).
const DRIP: f64 = 1.0;

/// Water comes to rest within this time after a pour, s (estimate).
const SETTLING: f64 = 1.0;

/// And is taken to have come to rest after this, s (estimate).
const SETTLED: f64 = 3.0;

/// No pour begins so soon after something moved, s (estimate).
const QUIET: f64 = 0.8;

/// What a movement leaves comes to rest within this time, s (estimate).
const AFTERMATH: f64 = 2.0;

/// Drift that is told, g (estimate).
const DRIFT_TOLD: f64 = 2.0;

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
    /// Something moved, was stirred or knocked; with how far the reading is off.
    Disturbed = 11,
    /// A hand presses; with how much.
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

/// Readings on their way to a point.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Gathered {
    /// Times and masses over those of the first.
    first: Point,
    time: f64,
    mass: f64,
    /// When the last point was made.
    closed: f64,
    /// When the last reading came.
    last: f64,
}

/// A scale that is being watched. See the [module](self).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Scale {
    division: f64,
    capacity: f64,
    fastest: f64,
    gathered: Gathered,
    /// How many readings that is. Here and not there, where it would take eight bytes.
    readings: u8,
    line: Line,
    /// σ² of a point, g².
    variance: f64,
    hold: Hold,
    phase: Phase,
    /// Points in a row that ask for another phase.
    asking: u8,
    /// Runs of water since it is counted; beyond 255 their uncertainty grows no more.
    runs: u8,
    /// Since when the phase lasts; while still, since when there is more than drift.
    since: f64,
    /// Since when nothing but drift goes on.
    calm: f64,
    book: Book,
    /// What was drift when it was last told.
    drift_told: f64,
    /// What happened at the same time as what is being told.
    pending: Option<Event>,
}

/// How every scale's bytes begin.
const SEAL: Seal = Seal { letters: *b"CUPS", version: 1 };

/// Numbers of a scale's state.
const NUMBERS: usize = 72;

/// Length of a scale's state in bytes.
pub const SCALE_BYTES: usize = Seal::length(NUMBERS);

impl Scale {
    /// The state as bytes, the same on every processor, for a memory that outlives a restart.
    pub fn to_bytes(&self) -> [u8; SCALE_BYTES] {
        kept::closed::<_, NUMBERS, _>(&SEAL, *self)
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
            division: setup.division.grams(),
            capacity: setup.capacity.grams(),
            fastest: setup.fastest.grams_per_second(),
            gathered: Gathered {
                first: Point { time: 0.0, mass: 0.0 },
                time: 0.0,
                mass: 0.0,
                closed: 0.0,
                last: f64::NEG_INFINITY,
            },
            readings: 0,
            line: Line::NONE,
            variance: FIRST_NOISE * FIRST_NOISE,
            hold: Hold::NONE,
            phase: Phase::Still,
            asking: 0,
            runs: 0,
            since: 0.0,
            calm: 0.0,
            book: Book::BLANK,
            drift_told: 0.0,
            pending: None,
        }
    }

    /// Takes the next reading.
    ///
    /// # Errors
    /// [`Error::Impossible`] for a clock that does not go forward; nothing is changed by it.
    /// [`Error::ResultOutOfRange`] for accounts that leave all ranges, after years of pouring.
    pub fn take(&mut self, clock: Clock, reading: ScaleReading) -> Result<Seen, Error> {
        let point = Point { time: clock.seconds(), mass: reading.grams() };
        if point.time <= self.gathered.last {
            return Err(Error::Impossible {
                quantity: Quantity::Clock,
                value: point.time,
                lowest: self.gathered.last,
                highest: Quantity::Clock.highest(),
                beside: Quantity::Clock,
            });
        }
        let mut event = self.pending.take();
        if !self.line.is_begun() {
            self.begin(point);
        } else if point.mass - self.book.tared >= self.capacity - self.division {
            self.overload(point, &mut event)?;
        } else {
            self.gather(point, &mut event)?;
        }
        self.seen(event)
    }

    /// Water poured since [`count_anew`](Self::count_anew).
    ///
    /// # Errors
    /// [`Error::ResultOutOfRange`] after years of pouring.
    pub fn poured(&self) -> Result<Poured, Error> {
        let under_way = if self.phase == Phase::Still { 0.0 } else { self.under_way() };
        computed(self.book.water() + under_way)
    }

    /// Standard uncertainty of the water poured, g, by what the scale saw alone:
    ///
    /// ```text
    /// u² = 2n u_L² + (u_R t)² + Q²/3     u_R² = 1/(1/u_0² + t_S²/u_L²)
    /// ```
    ///
    /// | symbol | meaning |
    /// |---|---|
    /// | n | runs of water, pours and drips, since it is counted |
    /// | u_L | of a level at rest, 0.08 g (estimate) |
    /// | u_R | of the rate of drift while water came, in t |
    /// | u_0, t_S | of usual drift, 0.01 g/s (estimate); time at rest in which its rate was seen |
    /// | Q | [`Seen::unclear`]: all of it may be water, or none |
    ///
    /// The scale's own span is not in it. How often the truth lies within two of it, on invented
    /// traces, is told by `tests/traces/SCORES.md`.
    ///
    /// # Errors
    /// [`Error::ResultOutOfRange`] after years of pouring.
    pub fn poured_uncertainty(&self) -> Result<MassUncertainty, Error> {
        computed(sqrt(self.book.water_variance(self.runs)))
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
        }
        self.book.count_anew();
        self.runs = u8::from(self.phase != Phase::Still);
    }

    /// Tells that readings are lower by so much from the next one on, because the display was set to
    /// zero: firmware knows, and nothing has to be guessed.
    pub fn zeroed(&mut self, by: Change) {
        let by = by.grams();
        self.gathered.first.mass -= by;
        self.line.lower(by);
        self.hold.lower(by);
        self.book.anchor -= by;
        self.book.tared -= by;
    }

    /// σ of a point.
    fn noise(&self) -> f64 {
        sqrt(self.variance)
    }

    /// How far a point can be off without being something else than water.
    fn reach(&self, step: f64) -> f64 {
        // Four standard deviations of a difference.
        self.fastest * step + 5.7 * self.noise() + self.division
    }

    /// What the phase has gained.
    fn under_way(&self) -> f64 {
        self.line.level - self.book.anchor
    }

    /// Puts down what the phase has gained.
    fn enter(&mut self, account: fn(&mut Book) -> &mut f64) {
        self.book.enter(self.line.level, account);
    }

    fn turn(&mut self, phase: Phase, time: f64) {
        if self.phase == Phase::Still && phase != Phase::Still {
            self.runs = self.runs.saturating_add(1);
        }
        self.phase = phase;
        self.asking = 0;
        self.since = time;
        self.calm = time;
    }

    /// What is seen now.
    fn seen(&self, event: Option<Event>) -> Result<Seen, Error> {
        let is_known = !self.hold.is_on() && self.line.weight() >= 3.0;
        let flow = if is_known { Some(computed(self.line.flow)?) } else { None };
        Ok(Seen {
            level: computed(self.line.level)?,
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
            event,
        })
    }

    /// The first reading.
    fn begin(&mut self, point: Point) {
        self.line.begin(&[point]);
        self.gathered.closed = point.time;
        self.gathered.last = point.time;
        self.enter(|book| &mut book.moved);
        self.turn(Phase::Still, point.time);
    }

    /// A reading beyond the scale.
    #[inline(never)]
    fn overload(&mut self, point: Point, event: &mut Option<Event>) -> Result<(), Error> {
        self.readings = 0;
        self.gathered.closed = point.time;
        self.gathered.last = point.time;
        if self.hold.overload(point) {
            self.tell(event, Happening::Overloaded, point.time, point.mass)?;
        }
        Ok(())
    }

    /// A reading on its way to a point.
    fn gather(&mut self, point: Point, event: &mut Option<Event>) -> Result<(), Error> {
        let Gathered { last, closed, .. } = self.gathered;
        let step = point.time - last;
        // No point lies astride a jump.
        if self.readings > 0 && !self.hold.is_on() {
            let off = point.mass - self.gathered.mean(self.readings).mass;
            if off.abs() > self.reach(step) {
                self.close(last, event)?;
            }
        }
        let gathered = &mut self.gathered;
        if self.readings == 0 {
            (gathered.first, gathered.time, gathered.mass) = (point, 0.0, 0.0);
        }
        gathered.last = point.time;
        self.readings = self.readings.saturating_add(1);
        gathered.time += point.time - gathered.first.time;
        gathered.mass += point.mass - gathered.first.mass;
        if point.time - closed >= POINT - 0.5 * step {
            self.close(point.time, event)?;
        }
        Ok(())
    }

    fn close(&mut self, time: f64, event: &mut Option<Event>) -> Result<(), Error> {
        let point = self.gathered.mean(self.readings);
        self.readings = 0;
        self.gathered.closed = time;
        self.point(point, event)
    }

    fn point(&mut self, point: Point, event: &mut Option<Event>) -> Result<(), Error> {
        let step = point.time - self.line.time();
        if self.hold.is_on() {
            return self.held(point, event);
        }
        if step > GAP {
            return self.lost(point, step, event);
        }
        if !self.is_reached(point, step) {
            self.hold = Hold::from(point);
            return Ok(());
        }
        self.listen(point);
        self.line.take(point, self.variance);
        self.judge(point.time, step, event)
    }

    /// Whether water can have brought the reading to a point: no faster than water is poured, and down
    /// no more than when a stream no longer pushes (half of that, estimate).
    fn is_reached(&self, point: Point, step: f64) -> bool {
        let change = point.mass - self.line.level;
        change.abs() <= self.reach(if change < 0.0 { 0.5 * step } else { step })
    }

    /// Follows the noise.
    fn listen(&mut self, point: Point) {
        if let Some(bend) = self.line.bend(point) {
            let least = square(self.division) * (1.0 / 12.0 + 0.01);
            let next = self.variance + NEW_NOISE * (min(bend, 9.0 * self.variance) - self.variance);
            self.variance = min(max(next, least), square(MOST_NOISE));
        }
    }

    /// What the line says now.
    #[inline(never)]
    fn judge(&mut self, time: f64, step: f64, event: &mut Option<Event>) -> Result<(), Error> {
        if self.phase == Phase::Still && self.hold.ended_at(time, QUIET) {
            (self.calm, self.since) = (time, time);
            return Ok(());
        }
        if self.phase != Phase::Pouring && self.starts() {
            if self.phase != Phase::Still {
                self.enter(|book| &mut book.poured);
            }
            let gain = self.under_way();
            // Not before there was a flow at all.
            let earliest = max(0.0, self.since - ONSET);
            let began = max(earliest, time - gain / self.line.flow);
            self.turn(Phase::Pouring, time);
            return self.tell(event, Happening::PourStarted, began, gain);
        }
        if self.phase != Phase::Still {
            self.book.wet(step);
        }
        match self.phase {
            Phase::Still => self.drift(time, step, event),
            Phase::Pouring => self.pour(time, event),
            Phase::Settling => self.settle(time, event),
            Phase::Dripping => self.drip(time, event),
        }
    }

    /// Whether a pour starts: the flow is large, surely so, and has brought something.
    fn starts(&mut self) -> bool {
        let (flow, weight) = (self.line.flow, self.line.weight());
        let is_flow = weight >= 3.0 && flow > ON && flow < 1.2 * self.fastest;
        // Roots are dear: only where they are needed.
        let is_sure = || {
            let noise = self.noise();
            flow > 4.0 * noise * self.line.u_flow()
                && self.under_way() > 0.25 + 3.0 * noise
                && (weight >= 6.0 || self.line.is_rising())
        };
        let asks = is_flow && is_sure();
        self.asking = if asks { self.asking.saturating_add(1) } else { 0 };
        asks && self.asking >= 2
    }

    fn pour(&mut self, time: f64, event: &mut Option<Event>) -> Result<(), Error> {
        let flow = self.line.flow;
        let ends = self.line.weight() >= 3.0
            && flow < OFF
            && flow + self.noise() * self.line.u_flow() < ON;
        self.asking = if ends { self.asking.saturating_add(1) } else { 0 };
        let is_slow = self.under_way() < SLOW * (time - self.since);
        if self.asking >= if is_slow { 4 } else { 2 } {
            self.turn(Phase::Settling, time);
            self.tell(event, Happening::PourStopped, time, self.under_way())?;
        }
        Ok(())
    }

    fn settle(&mut self, time: f64, event: &mut Option<Event>) -> Result<(), Error> {
        let waited = time - self.since;
        if (waited > SETTLING && self.line.flow.abs() < DRIFT) || waited > SETTLED {
            self.rest(Happening::Settled, time, event)?;
        }
        Ok(())
    }

    /// What water brought is put down, and nothing goes on any more.
    fn rest(
        &mut self,
        happening: Happening,
        time: f64,
        event: &mut Option<Event>,
    ) -> Result<(), Error> {
        let gain = self.under_way();
        self.enter(|book| &mut book.poured);
        self.turn(Phase::Still, time);
        self.tell(event, happening, time, gain)
    }

    fn drip(&mut self, time: f64, event: &mut Option<Event>) -> Result<(), Error> {
        if self.line.flow > 0.5 * DRIFT {
            self.since = time;
        } else if time - self.since > DRIP {
            self.rest(Happening::DripStopped, time, event)?;
        }
        Ok(())
    }

    fn drift(&mut self, time: f64, step: f64, event: &mut Option<Event>) -> Result<(), Error> {
        let (flow, gain) = (self.line.flow, self.under_way());
        if flow.abs() >= DRIFT {
            let noise = self.noise();
            let is_sure = flow > 4.0 * noise * self.line.u_flow() && gain > 0.3 + 3.0 * noise;
            if is_sure && time - self.since > DRIP {
                self.turn(Phase::Dripping, time);
                self.tell(event, Happening::DripStarted, time, gain)?;
            }
            return Ok(());
        }
        if self.hold.ended_at(time, AFTERMATH) {
            self.enter(|book| &mut book.drifted);
        } else if gain.abs() > 1.0 && gain.abs() > 1.0 + 3.0 * self.noise() {
            // Too small for a jump, too quick for water.
            return self.moved(self.since, gain, event);
        }
        let gain = self.under_way();
        let share = min(step, 1.0);
        self.since = time;
        self.book.drift(share * gain);
        if time - self.calm > 2.0 {
            self.book.still(step, share * gain);
        }
        let drifted = self.book.drifted - self.drift_told;
        if drifted.abs() > DRIFT_TOLD {
            self.drift_told = self.book.drifted;
            self.tell(event, Happening::Drifted, time, drifted)?;
        }
        Ok(())
    }

    /// A point while something disturbs the reading.
    #[inline(never)]
    fn held(&mut self, point: Point, event: &mut Option<Event>) -> Result<(), Error> {
        let step = point.time - self.hold.time();
        let elapsed = self.hold.take(point);
        // Back where it was, or would have come to.
        let is_pouring = self.phase == Phase::Pouring;
        let (expected, reach) = if is_pouring {
            let strayed = 0.5 * self.line.flow.abs() * elapsed;
            (self.line.ahead(point.time), self.reach(0.2 * min(step, GAP)) + strayed)
        } else {
            (self.line.level, self.reach(min(step, GAP)) + self.hold.left_by_press())
        };
        if self.hold.is_near(expected, reach) {
            let hold = core::mem::replace(&mut self.hold, Hold::NONE);
            if hold.is_short() {
                self.line.take(point, self.variance);
                return self.judge(point.time, step, event);
            }
            let old = self.line.level;
            self.hold = Hold::ended(point.time);
            self.line.begin(&hold.last_two());
            (self.calm, self.since) = (point.time, point.time);
            if hold.was_press() {
                self.tell(event, Happening::Released, point.time, self.line.level - old)?;
            }
            return self.judge(point.time, step, event);
        }
        // Water that began with a splash.
        let gain = point.mass - self.line.level;
        let is_water = gain > -reach && gain < self.fastest * elapsed + reach;
        if is_water && self.hold.rises(OFF, self.fastest) {
            let hold = core::mem::replace(&mut self.hold, Hold::NONE);
            self.line.begin(&hold.last_three());
            return self.judge(point.time, step, event);
        }
        if self.hold.is_calm(max(6.0 * self.noise(), 3.0 * self.division)) {
            return self.elsewhere(point.time, elapsed, event);
        }
        self.announce(point.time, event)
    }

    /// Says what disturbs the reading, once that can be told.
    #[inline(never)]
    fn announce(&mut self, time: f64, event: &mut Option<Event>) -> Result<(), Error> {
        let Some((told, off)) = self.hold.announce(self.line.level) else {
            return Ok(());
        };
        let since = self.hold.since();
        match told {
            Told::Restless => return self.tell(event, Happening::Restless, time, off),
            Told::Pressed => self.tell(event, Happening::Pressed, since, off)?,
            _ => self.tell(event, Happening::Disturbed, since, off)?,
        }
        if self.phase == Phase::Pouring {
            self.turn(Phase::Settling, time);
            self.tell(event, Happening::PourStopped, since, self.under_way())?;
        }
        Ok(())
    }

    /// The reading has come to rest elsewhere.
    #[inline(never)]
    fn elsewhere(
        &mut self,
        time: f64,
        elapsed: f64,
        event: &mut Option<Event>,
    ) -> Result<(), Error> {
        let hold = core::mem::replace(&mut self.hold, Hold::ended(time));
        let (old, flow, since) = (self.line.level, self.line.flow, hold.since());
        self.line.begin_flat(hold.last_three());
        let (new, change) = (self.line.level, self.line.level - old);
        // The stream's end: it no longer pushes.
        if self.phase == Phase::Pouring && change.abs() < self.reach(POINT) + 0.25 * flow {
            self.turn(Phase::Settling, time);
            return self.tell(event, Happening::PourStopped, since, new - self.book.anchor);
        }
        let gain = old - self.book.anchor;
        self.close_phase(old);
        if self.phase == Phase::Pouring {
            self.tell(event, Happening::PourStopped, since, gain)?;
        }
        if hold.was_press() {
            self.tell(event, Happening::Released, time, change)?;
        }
        self.turn(Phase::Still, time);
        let is_zero = new.abs() <= max(2.5 * self.division, 3.5 * self.noise());
        if is_zero && old.abs() > 1.0 && hold.is_sudden() {
            self.enter(|book| &mut book.tared);
            return self.tell(event, Happening::Tared, since, change);
        }
        if change > 0.0 && change <= self.fastest * elapsed && hold.told() != Told::Nothing {
            self.enter(|book| &mut book.unclear);
            self.book.unsure += change;
            return self.tell(event, Happening::Unclear, since, change);
        }
        self.moved(since, change, event)
    }

    /// Something was put down, taken off or put back.
    fn moved(&mut self, time: f64, change: f64, event: &mut Option<Event>) -> Result<(), Error> {
        self.enter(|book| &mut book.moved);
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
    fn lost(&mut self, point: Point, gap: f64, event: &mut Option<Event>) -> Result<(), Error> {
        let (old, flow) = (self.line.level, self.line.flow);
        let change = point.mass - old;
        let reach = self.reach(POINT);
        let went_on = (change - flow * gap).abs() < 0.5 * flow * gap + reach;
        let could_be_water = change > -reach && change < self.fastest * gap + reach;
        self.line.begin(&[point]);
        if self.phase != Phase::Still && could_be_water {
            self.book.unsure += change.abs();
            if self.phase == Phase::Pouring && went_on {
                self.asking = 0;
            } else {
                self.turn(Phase::Settling, point.time);
            }
        } else {
            self.close_phase(old);
            if change.abs() > reach {
                self.book.unsure += change.abs();
                self.enter(|book| &mut book.unclear);
            }
            self.turn(Phase::Still, point.time);
        }
        self.tell(event, Happening::Lost, point.time, change)
    }

    /// Puts down what the phase has gained up to a level.
    fn close_phase(&mut self, level: f64) {
        match self.phase {
            Phase::Still => self.book.enter(level, |book| &mut book.drifted),
            _ => self.book.enter(level, |book| &mut book.poured),
        }
    }

    /// Tells now, or with the next reading where something is told already.
    fn tell(
        &mut self,
        event: &mut Option<Event>,
        happening: Happening,
        time: f64,
        change: f64,
    ) -> Result<(), Error> {
        let happened = Event { happening, clock: computed(time)?, change: computed(change)? };
        let place = if event.is_none() { event } else { &mut self.pending };
        *place = Some(happened);
        Ok(())
    }
}

impl Gathered {
    /// The mean of so many readings.
    fn mean(&self, count: u8) -> Point {
        if count == 1 {
            return self.first;
        }
        let count = f64::from(count);
        Point {
            time: self.first.time + self.time / count,
            mass: self.first.mass + self.mass / count,
        }
    }
}

impl Kept for Scale {
    fn walk(&mut self, walk: &mut impl Walk) {
        use Phase::{Dripping, Pouring, Settling, Still};
        walk.numbers([&mut self.division, &mut self.capacity, &mut self.fastest]);
        let Gathered { first, time, mass, closed, last } = &mut self.gathered;
        first.walk(walk);
        walk.numbers([time, mass, closed, last]);
        walk.count(&mut self.readings);
        self.line.walk(walk);
        walk.number(&mut self.variance);
        self.hold.walk(walk);
        walk.one_of(&mut self.phase, &[Still, Pouring, Settling, Dripping]);
        walk.count(&mut self.asking);
        walk.count(&mut self.runs);
        walk.number(&mut self.since);
        walk.number(&mut self.calm);
        self.book.walk(walk);
        walk.number(&mut self.drift_told);
        self.pending.walk(walk);
    }
}
