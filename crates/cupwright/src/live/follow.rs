//! Following a brew on a scale: which step of a recipe it is at, how much is still to pour, and when to
//! stop.

use super::kept::{self, Kept, Walk, quantity};
use super::{Doing, Event, Happening, Scale, Seen, Setup};
use crate::error::Error;
use crate::math::{max, min, sqrt};
use crate::quantity::{
    Beverage, BrewWater, Change, Clock, Dose, Drips, FlowVariation, Lead, Measure, ScaleReading,
    Time, VesselMass, WaterRatio, computed,
};
use crate::sealed::{Seal, Unreadable};

/// A cue to stop comes this long before the water is reached, until a hand has shown better: half a
/// reaction, the kettle's way back, the stream's fall (estimate).
const FIRST_LEAD: f64 = 0.45;

/// Share of a new look at the lead (estimate).
const NEW_LEAD: f64 = 0.5;

/// Coffee is as wanted within this, g (estimate).
const DOSE_NEAR: f64 = 0.3;

/// A weight beyond this, or beyond twice the dose, is a vessel and no coffee, g (estimate).
const VESSEL: f64 = 60.0;

/// Points of a line from which on its flow counts for its variation: not when it has just begun or
/// ended (estimate).
const SURE: f64 = 6.0;

/// A slower flow teaches no lead, g/s (estimate).
const LEAST_TAUGHT: f64 = 1.0;

/// Water is as wanted within this share, or within a gram (estimate).
const NEAR: f64 = 0.02;

/// A flow counts for its steadiness after this time, s (estimate).
const RUNNING_IN: f64 = 1.0;

/// A step of a recipe as a scale can follow it.
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub enum Step {
    /// Rinse the paper; the water is thrown away.
    Rinse,
    /// Weigh the coffee.
    Dose {
        /// How much.
        dose: Dose,
    },
    /// Pour until there is so much water in all.
    Pour {
        /// Water in all.
        to: BrewWater,
        /// Not before this time after the first water.
        from: Time,
    },
    /// Stir, or swirl.
    Stir {
        /// Not before this time after the first water.
        from: Time,
    },
    /// Wait.
    Wait {
        /// Until this time after the first water.
        until: Time,
    },
    /// Press by hand, or let it drain.
    Press,
    /// Weigh what has come out, in a vessel of known weight.
    Beverage {
        /// The vessel; zero where the display was set to zero with it.
        vessel: VesselMass,
    },
}

/// What a step of a recipe is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[non_exhaustive]
#[repr(u16)]
pub enum StepKind {
    /// [`Step::Rinse`].
    Rinse = 1,
    /// [`Step::Dose`].
    Dose = 2,
    /// [`Step::Pour`].
    Pour = 3,
    /// [`Step::Stir`].
    Stir = 4,
    /// [`Step::Wait`].
    Wait = 5,
    /// [`Step::Press`].
    Press = 6,
    /// [`Step::Beverage`].
    Beverage = 7,
}

impl StepKind {
    /// Every kind.
    pub const ALL: &'static [StepKind] = &[
        StepKind::Rinse,
        StepKind::Dose,
        StepKind::Pour,
        StepKind::Stir,
        StepKind::Wait,
        StepKind::Press,
        StepKind::Beverage,
    ];

    /// The step in plain words.
    pub const fn words(self) -> &'static str {
        match self {
            StepKind::Rinse => "rinse the paper",
            StepKind::Dose => "weigh the coffee",
            StepKind::Pour => "pour water",
            StepKind::Stir => "stir",
            StepKind::Wait => "wait",
            StepKind::Press => "press, or let it drain",
            StepKind::Beverage => "weigh what has come out",
        }
    }
}

/// What to do now.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[non_exhaustive]
#[repr(u16)]
pub enum Cue {
    /// Nothing: there is no recipe, or it is done.
    Nothing = 0,
    /// Rinse the paper and throw the water away.
    Rinse = 1,
    /// Add coffee.
    AddCoffee = 2,
    /// Pour.
    Pour = 3,
    /// Stop pouring.
    StopPouring = 4,
    /// Stir.
    Stir = 5,
    /// Wait.
    Wait = 6,
    /// Press.
    Press = 7,
    /// Weigh what has come out.
    WeighBeverage = 8,
}

impl Cue {
    /// Every cue.
    pub const ALL: &'static [Cue] = &[
        Cue::Nothing,
        Cue::Rinse,
        Cue::AddCoffee,
        Cue::Pour,
        Cue::StopPouring,
        Cue::Stir,
        Cue::Wait,
        Cue::Press,
        Cue::WeighBeverage,
    ];

    /// The cue in plain words.
    pub const fn words(self) -> &'static str {
        match self {
            Cue::Nothing => "nothing to do",
            Cue::Rinse => "rinse the paper",
            Cue::AddCoffee => "add coffee",
            Cue::Pour => "pour",
            Cue::StopPouring => "stop pouring",
            Cue::Stir => "stir",
            Cue::Wait => "wait",
            Cue::Press => "press",
            Cue::WeighBeverage => "weigh what has come out",
        }
    }
}

/// Why a cue is given.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[non_exhaustive]
#[repr(u16)]
pub enum Why {
    /// It is next in the recipe.
    Next = 1,
    /// Its time has come.
    Time = 2,
    /// It is too early for what comes next.
    Early = 3,
    /// What flows and falls until the hand has stopped makes up the rest.
    Lead = 4,
    /// There is enough.
    Enough = 5,
    /// There is more than wanted.
    TooMuch = 6,
    /// Some is still missing.
    Missing = 7,
    /// The scale cannot say how much water there is: see [`Seen::unclear`].
    Unclear = 8,
    /// Nothing is left to do.
    Done = 9,
}

impl Why {
    /// Every reason.
    pub const ALL: &'static [Why] = &[
        Why::Next,
        Why::Time,
        Why::Early,
        Why::Lead,
        Why::Enough,
        Why::TooMuch,
        Why::Missing,
        Why::Unclear,
        Why::Done,
    ];

    /// The reason in plain words.
    pub const fn words(self) -> &'static str {
        match self {
            Why::Next => "it is next",
            Why::Time => "it is time",
            Why::Early => "it is too early for what comes next",
            Why::Lead => "what still falls makes up the rest",
            Why::Enough => "there is enough",
            Why::TooMuch => "there is too much",
            Why::Missing => "some is still missing",
            Why::Unclear => "the scale cannot tell how much water there is",
            Why::Done => "nothing is left to do",
        }
    }
}

/// A brew as it stands.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Now {
    /// What the scale saw.
    pub seen: Seen,
    /// Which step of the recipe it is at, counted from zero; as many as there are when it is done.
    pub step: u16,
    /// What to do.
    pub cue: Cue,
    /// Why.
    pub why: Why,
    /// Water still to pour in this step; below zero for too much.
    pub to_pour: Option<Change>,
    /// Time still to wait in this step.
    pub to_wait: Option<Time>,
    /// Water over dose, once both are known.
    pub ratio: Option<WaterRatio>,
    /// Time since the first water.
    pub brewing: Option<Time>,
    /// How much the flow of this pour, or of the last one, wanders.
    pub variation: Option<FlowVariation>,
}

/// Follows a brew. A plain value of a kilobyte at most.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Follower {
    scale: Scale,
    step: u16,
    /// Whether what the step asks for was seen to begin.
    is_begun: bool,
    /// Level from which the step weighs.
    level: f64,
    dose: Option<Dose>,
    beverage: Option<Beverage>,
    /// When the first water came.
    first_water: Option<f64>,
    /// Water and flow for which the cue to stop was given in this pour.
    cued: Option<(f64, f64)>,
    lead: f64,
    /// What dripped off while the vessel was lifted.
    drips: f64,
    flows: Flows,
}

/// A pour's flow, by the recurrence of Welford, Technometrics 4 (1962), 419 (from memory).
#[derive(Clone, Copy, Debug, PartialEq)]
struct Flows {
    since: f64,
    count: f64,
    mean: f64,
    squares: f64,
}

impl Flows {
    const fn since(time: f64) -> Self {
        Self { since: time, count: 0.0, mean: 0.0, squares: 0.0 }
    }

    fn take(&mut self, time: f64, flow: f64) {
        if time - self.since < RUNNING_IN {
            return;
        }
        self.count += 1.0;
        let off = flow - self.mean;
        self.mean += off / self.count;
        self.squares += off * (flow - self.mean);
    }

    fn variation(&self) -> Option<FlowVariation> {
        if self.count < 3.0 || self.mean <= 0.0 {
            return None;
        }
        FlowVariation::accept(100.0 * sqrt(self.squares / (self.count - 1.0)) / self.mean)
    }
}

/// How near water must come.
fn near(water: f64) -> f64 {
    max(1.0, NEAR * water)
}

/// How every follower's bytes begin.
const SEAL: Seal = Seal { letters: *b"CUPF", version: 1 };

/// Numbers of a follower's state.
pub(super) const NUMBERS: usize = 90;

/// Length of a follower's state in bytes.
pub const FOLLOWER_BYTES: usize = Seal::length(NUMBERS);

impl Follower {
    /// The state as bytes: see [`Scale::to_bytes`].
    pub fn to_bytes(&self) -> [u8; FOLLOWER_BYTES] {
        kept::closed::<_, NUMBERS, _>(&SEAL, *self)
    }

    /// A state from its bytes: see [`Scale::from_bytes`].
    ///
    /// # Errors
    /// [`Unreadable`], with what is wrong: no damaged state is ever read.
    pub fn from_bytes(bytes: &[u8]) -> Result<Self, Unreadable> {
        kept::opened(&SEAL, NUMBERS, bytes, Self::new(Setup::COMMON))
    }

    /// Begins at the first step, with nothing known.
    pub const fn new(setup: Setup) -> Self {
        Self {
            scale: Scale::new(setup),
            step: 0,
            is_begun: false,
            level: 0.0,
            dose: None,
            beverage: None,
            first_water: None,
            cued: None,
            lead: FIRST_LEAD,
            drips: 0.0,
            flows: Flows::since(0.0),
        }
    }

    /// Takes the next reading. `recipe` is the same all along, and may be empty.
    ///
    /// # Errors
    /// Those of [`Scale::take`].
    pub fn take(
        &mut self,
        recipe: &[Step],
        clock: Clock,
        reading: ScaleReading,
    ) -> Result<Now, Error> {
        let is_first = !self.scale.line.is_begun();
        let seen = self.scale.take(clock, reading)?;
        if is_first {
            self.level = seen.level.grams();
        }
        if let Some(event) = seen.event {
            self.hear(recipe, &event, &seen);
        }
        let is_known = self.scale.line.weight() >= SURE;
        if let (Doing::Pouring, Some(flow), true) = (seen.doing, seen.flow, is_known) {
            self.flows.take(clock.seconds(), flow.grams_per_second());
        }
        self.weigh(recipe, &seen);
        self.pass(recipe, clock.seconds(), &seen);
        self.now(recipe, clock.seconds(), seen)
    }

    /// The scale, for its accounts.
    pub fn scale(&self) -> &Scale {
        &self.scale
    }

    /// Goes on to the next step: a button was pressed.
    pub fn go_on(&mut self) {
        self.go_to(self.step.saturating_add(1));
    }

    /// Goes to a step, counted from zero.
    pub fn go_to(&mut self, step: u16) {
        self.step = step;
        self.is_begun = false;
        self.cued = None;
        self.level = self.scale.line.level;
    }

    /// The display was set to zero: [`Scale::zeroed`].
    pub fn zeroed(&mut self, by: Change) {
        self.scale.zeroed(by);
        self.level -= by.grams();
    }

    /// The dose, weighed here or told by [`set_dose`](Self::set_dose).
    pub fn dose(&self) -> Option<Dose> {
        self.dose
    }

    /// Tells the dose, where it was weighed elsewhere.
    pub fn set_dose(&mut self, dose: Dose) {
        self.dose = Some(dose);
    }

    /// The beverage, weighed here or told by [`set_beverage`](Self::set_beverage).
    pub fn beverage(&self) -> Option<Beverage> {
        self.beverage
    }

    /// Tells the beverage, where it was weighed elsewhere.
    pub fn set_beverage(&mut self, beverage: Beverage) {
        self.beverage = Some(beverage);
    }

    /// What dripped off while the vessel was lifted.
    ///
    /// # Errors
    /// [`Error::ResultOutOfRange`] where that is more than drips can be.
    pub fn drips(&self) -> Result<Drips, Error> {
        computed(self.drips)
    }

    /// How long before the water is reached the cue to stop comes. Every stop that follows a cue
    /// teaches it.
    ///
    /// # Errors
    /// None that can occur.
    pub fn lead(&self) -> Result<Lead, Error> {
        computed(self.lead)
    }

    /// Sets the lead, for a hand that is known.
    pub fn set_lead(&mut self, lead: Lead) {
        self.lead = lead.seconds();
    }

    fn current<'a>(&self, recipe: &'a [Step]) -> Option<&'a Step> {
        recipe.get(usize::from(self.step))
    }

    /// Goes on to the next step of a kind, if there is one: someone has gone ahead.
    fn skip_to(&mut self, recipe: &[Step], is_it: fn(&Step) -> bool) -> bool {
        let next = usize::from(self.step).saturating_add(1);
        let Some(ahead) = recipe.iter().skip(next).position(is_it) else {
            return false;
        };
        for _ in 0..=ahead {
            self.go_on();
        }
        true
    }

    /// What an event means for the step.
    fn hear(&mut self, recipe: &[Step], event: &Event, seen: &Seen) {
        let change = event.change.grams();
        match (event.happening, self.current(recipe)) {
            (Happening::PourStarted, step) => self.hear_pour(recipe, step.copied(), event),
            (Happening::Settled, _) => self.learn(seen),
            (Happening::Tared, Some(Step::Dose { .. })) => self.level = seen.level.grams(),
            (Happening::Tared, _) => self.level += change,
            (Happening::Placed | Happening::Returned, Some(Step::Dose { dose }))
                if change > max(VESSEL, 2.0 * dose.grams()) =>
            {
                self.level = seen.level.grams();
            }
            (Happening::Placed, Some(Step::Beverage { vessel })) => {
                if let Some(beverage) = Beverage::accept(change - vessel.grams()) {
                    self.beverage = Some(beverage);
                    self.go_on();
                }
            }
            (Happening::Lifted, Some(Step::Rinse)) if self.is_begun => {
                self.scale.count_anew();
                self.go_on();
            }
            (Happening::Lifted, Some(Step::Press)) => self.go_on(),
            (Happening::Returned, step) => {
                if self.first_water.is_some() {
                    self.drips += max(0.0, -change);
                }
                if let Some(Step::Stir { .. }) = step {
                    self.go_on();
                }
            }
            (Happening::Disturbed, Some(Step::Stir { .. })) => self.is_begun = true,
            (Happening::Pressed, step) => {
                let at_press = matches!(step, Some(Step::Press))
                    || (self.first_water.is_some()
                        && self.skip_to(recipe, |step| matches!(step, Step::Press)));
                self.is_begun |= at_press;
            }
            (Happening::Released, Some(Step::Press)) if self.is_begun => self.go_on(),
            _ => {}
        }
    }

    /// Something is poured: coffee into the vessel, a rinse, or water.
    fn hear_pour(&mut self, recipe: &[Step], step: Option<Step>, event: &Event) {
        let time = event.clock.seconds();
        match step {
            Some(Step::Rinse) => {
                self.is_begun = true;
                return;
            }
            Some(Step::Dose { dose }) => {
                // Coffee pours as well. With most of it there, this is water.
                let has_most = self.dose.is_some_and(|seen| seen.grams() > 0.5 * dose.grams());
                if !has_most {
                    return;
                }
                self.scale.count_anew();
                self.skip_to(recipe, |step| matches!(step, Step::Pour { .. }));
            }
            Some(Step::Stir { .. } | Step::Wait { .. }) => {
                self.skip_to(recipe, |step| matches!(step, Step::Pour { .. }));
            }
            _ => {}
        }
        self.is_begun = true;
        self.cued = None;
        self.flows = Flows::since(time);
        self.first_water = self.first_water.or(Some(time));
    }

    /// How far a stop missed what it was cued for teaches the lead.
    fn learn(&mut self, seen: &Seen) {
        if let Some((water, flow)) = self.cued.take().filter(|(_, flow)| *flow > LEAST_TAUGHT) {
            let missed = seen.poured.grams() - water;
            let lead = self.lead + NEW_LEAD * missed / flow;
            self.lead = min(max(lead, Lead::QUANTITY.lowest()), Lead::QUANTITY.highest());
        }
    }

    /// Weighs the coffee.
    fn weigh(&mut self, recipe: &[Step], seen: &Seen) {
        let Some(Step::Dose { dose }) = self.current(recipe) else {
            return;
        };
        if seen.doing != Doing::Still {
            return;
        }
        let gain = seen.level.grams() - self.level;
        self.dose = if gain > DOSE_NEAR { Dose::accept(gain) } else { None };
        if (gain - dose.grams()).abs() <= max(DOSE_NEAR, NEAR * dose.grams()) {
            self.scale.count_anew();
            self.go_on();
        }
    }

    /// Leaves steps that are over.
    fn pass(&mut self, recipe: &[Step], time: f64, seen: &Seen) {
        let elapsed = self.first_water.map_or(0.0, |first| time - first);
        while let Some(step) = self.current(recipe) {
            let is_over = match *step {
                Step::Pour { to, .. } => {
                    seen.doing == Doing::Still
                        && self.is_begun
                        && seen.poured.grams() >= to.grams() - near(to.grams())
                }
                Step::Stir { .. } => self.is_begun && seen.doing != Doing::Disturbed,
                Step::Wait { until } => self.first_water.is_some() && elapsed >= until.seconds(),
                _ => false,
            };
            if !is_over {
                return;
            }
            self.go_on();
        }
    }

    fn now(&mut self, recipe: &[Step], time: f64, seen: Seen) -> Result<Now, Error> {
        let poured = seen.poured.grams();
        let left_to = |water: BrewWater| water.grams() - poured;
        let brewing = self.first_water.map(|first| max(0.0, time - first));
        let step = self.current(recipe).copied();
        let (left, due) = match step {
            Some(Step::Pour { to, from }) => (Some(left_to(to)), from.seconds()),
            Some(Step::Stir { from: due } | Step::Wait { until: due }) => (None, due.seconds()),
            _ => (None, 0.0),
        };
        let wait = max(0.0, due - brewing.unwrap_or(0.0));
        let (cue, why) = match (step, seen.doing) {
            (None, _) => (Cue::Nothing, Why::Done),
            (Some(Step::Rinse), _) => (Cue::Rinse, Why::Next),
            (Some(Step::Dose { dose }), _) => (Cue::AddCoffee, self.why_coffee(dose)),
            (Some(Step::Pour { to, .. }), Doing::Pouring) => {
                self.cue_stop(left_to(to), to.grams(), &seen)
            }
            (Some(Step::Pour { to, .. }), _) => self.cue_pour(left_to(to), wait, due, &seen),
            (Some(Step::Beverage { .. }), _) => (Cue::WeighBeverage, Why::Next),
            (Some(_), Doing::Pouring) => (Cue::StopPouring, Why::Enough),
            (Some(Step::Press), _) => (Cue::Press, Why::Next),
            (Some(_), _) if wait > 0.0 => (Cue::Wait, Why::Early),
            (Some(Step::Stir { .. }), _) => (Cue::Stir, Why::Time),
            (Some(Step::Wait { .. }), _) => (Cue::Wait, Why::Next),
        };
        Ok(Now {
            seen,
            step: self.step,
            cue,
            why,
            to_pour: left.map(computed).transpose()?,
            to_wait: if wait > 0.0 { Time::accept(wait) } else { None },
            ratio: self.dose.and_then(|dose| WaterRatio::accept(poured / dose.grams())),
            brewing: brewing.and_then(Time::accept),
            variation: self.flows.variation(),
        })
    }

    fn why_coffee(&self, wanted: Dose) -> Why {
        match self.dose {
            None => Why::Next,
            Some(dose) if dose < wanted => Why::Missing,
            Some(_) => Why::TooMuch,
        }
    }

    /// While water is poured: whether to stop, with so much left.
    fn cue_stop(&mut self, left: f64, to: f64, seen: &Seen) -> (Cue, Why) {
        let flow = seen.flow.map_or(0.0, |flow| flow.grams_per_second());
        if self.cued.is_none() && left <= self.lead * flow {
            self.cued = Some((to, flow));
        }
        match self.cued {
            Some(_) if left < -near(to) => (Cue::StopPouring, Why::TooMuch),
            Some(_) if left <= 0.0 => (Cue::StopPouring, Why::Enough),
            Some(_) => (Cue::StopPouring, Why::Lead),
            None => (Cue::Pour, Why::Next),
        }
    }

    /// Before and between pours of a step.
    fn cue_pour(&self, left: f64, wait: f64, due: f64, seen: &Seen) -> (Cue, Why) {
        match seen.doing {
            Doing::Settling if self.cued.is_some() => (Cue::Wait, Why::Enough),
            _ if wait > 0.0 => (Cue::Wait, Why::Early),
            _ if seen.unclear.grams() > near(left) => (Cue::Pour, Why::Unclear),
            _ if self.is_begun => (Cue::Pour, Why::Missing),
            _ if due > 0.0 => (Cue::Pour, Why::Time),
            _ => (Cue::Pour, Why::Next),
        }
    }
}

impl Kept for Follower {
    fn walk(&mut self, walk: &mut impl Walk) {
        self.scale.walk(walk);
        walk.whole(&mut self.step, |number| number as u16);
        walk.one_of(&mut self.is_begun, &[false, true]);
        walk.number(&mut self.level);
        quantity(walk, &mut self.dose);
        quantity(walk, &mut self.beverage);
        walk.perhaps(&mut self.first_water);
        let (mut water, mut flow) = (self.cued.map(|cued| cued.0), self.cued.map(|cued| cued.1));
        walk.perhaps(&mut water);
        walk.perhaps(&mut flow);
        self.cued = water.zip(flow);
        if water.is_some() != flow.is_some() {
            walk.refuse();
        }
        walk.number(&mut self.lead);
        walk.number(&mut self.drips);
        let Flows { since, count, mean, squares } = &mut self.flows;
        walk.numbers([since, count, mean, squares]);
    }
}
