//! Following a brew on a scale: which step of a recipe it is at, how much is still to pour, and when to
//! stop.

use core::num::Wrapping;

use super::fixed::{Fixed, ZERO, fixed, number};
use super::kept::{self, Kept, Walk};
use super::{Doing, Event, Happening, Scale, Seen, Setup};
use crate::error::Error;
use crate::forecast::Intended;
use crate::math::{max, min, sqrt};
use crate::quantity::{
    Beverage, BrewWater, Change, Clock, Dose, Drips, FlowVariation, Lead, Measure, Poured,
    ScaleReading, Time, Unclear, VesselMass, WaterRatio, computed,
};
use crate::sealed::{Seal, Unreadable};
use crate::uncertainty::{Estimate, Standard};

/// A cue to stop comes this long before the water is reached, until a hand has shown better: a
/// reaction of 0.275 s, half the kettle's way back of 0.45 s, half the time between readings (estimate).
const FIRST_LEAD: Lead = Lead::known(0.55);

/// Stops that teach the lead; of later ones each counts as the last of these (estimate).
const MOST_STOPS: u8 = 7;

/// A lead that was set counts for so many stops (estimate).
const SET_STOPS: u8 = 3;

/// Coffee is as wanted within this, g (estimate).
const DOSE_NEAR: f64 = 0.3;

/// Less is no coffee yet, but a pour that is about to be heard, g (estimate).
const LEAST_COFFEE: f64 = 1.0;

/// What makes more than this much of the dose is no coffee, but a vessel, or water if it pours (estimate).
const MOST_COFFEE: f64 = 1.5;

/// Less than this share of the dose is no first water, but a little more coffee (estimate).
const LITTLE_MORE: f64 = 0.1;

/// With this share of the water, a pour is over when the time for the next step has come (estimate).
const MOST_POURED: f64 = 0.8;

/// A cup that stays on the scale holds at least this share of the water (estimate).
const LEAST_BEVERAGE: f64 = 0.3;

/// A hand that stops later than this after it should have was not stopping for the cue, s (estimate).
const LATEST_STOP: f64 = 1.5;

/// Points of a line from which on its flow counts for its variation: not when it has just begun or
/// ended (estimate).
const SURE: u8 = 6;

/// A slower flow teaches no lead, g/s (estimate).
const LEAST_TAUGHT: f64 = 1.0;

/// Water is as wanted within this share, or within a gram (estimate).
const NEAR: f64 = 0.02;

/// A flow counts for its steadiness after this time, s (estimate).
const RUNNING_IN: Fixed = fixed(1.0);

/// So many flows of a pour are enough, for its steadiness: seven minutes.
const MOST_FLOWS: u16 = 4096;

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
    /// Weigh what has come out, in a vessel of known weight: put down, or left where it stands when the
    /// brewer is lifted off it, of which the weight tells where the scale began empty.
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
    /// What the scale saw. It knows no steps: coffee that is weighed in is a pour to it, until the
    /// follower counts it as dose. The brew's own clock is the time since the first water.
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

/// A recipe's step at a place.
trait Recipe: Fn(usize) -> Option<Step> {}

impl<F: Fn(usize) -> Option<Step>> Recipe for F {}

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
    first_water: Option<Fixed>,
    /// Water and flow for which the cue to stop was given in this pour.
    cued: Option<(f64, f64)>,
    lead: Lead,
    /// Stops that taught it.
    stops: u8,
    /// What dripped off while the vessel was lifted.
    drips: f64,
    flows: Flows,
}

/// A pour's flow: how often it was seen, and sums over it in mg/s. Whole numbers lose no digits.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Flows {
    since: Fixed,
    count: u16,
    sum: Fixed,
    squares: Fixed,
}

impl Flows {
    const fn since(time: Fixed) -> Self {
        Self { since: time, count: 0, sum: ZERO, squares: ZERO }
    }

    fn take(&mut self, time: Fixed, flow: Fixed) {
        if time - self.since < RUNNING_IN || self.count == MOST_FLOWS {
            return;
        }
        let flow = flow >> 10;
        self.count = self.count.saturating_add(1);
        self.sum += flow;
        self.squares += flow * flow;
    }

    /// Standard deviation over mean.
    fn variation(&self) -> Option<FlowVariation> {
        if self.count < 3 || self.sum <= ZERO {
            return None;
        }
        let count = Wrapping(self.count.into());
        let square = self.sum * self.sum;
        let off = (count * self.squares - square).0 as f64;
        // In percent, squared: one multiplication less.
        let counts = f64::from(u32::from(self.count).saturating_mul(10_000));
        let fewer = f64::from(self.count.saturating_sub(1));
        FlowVariation::accept(sqrt(off * counts / (fewer * square.0 as f64)))
    }
}

/// How near water must come.
fn near(water: f64) -> f64 {
    max(1.0, NEAR * water)
}

/// Coffee of so much weight, if it is any.
fn coffee(grams: f64) -> Option<Dose> {
    if grams > LEAST_COFFEE { Dose::accept(grams) } else { None }
}

/// How every follower's bytes begin.
const SEAL: Seal = Seal { letters: *b"CUPF", version: 1 };

/// Numbers of a follower's state.
pub(super) const NUMBERS: usize = 96;

/// Length of a follower's state in bytes.
pub const FOLLOWER_BYTES: usize = Seal::length(NUMBERS);

impl Follower {
    /// The state as bytes: see [`Scale::to_bytes`].
    pub fn to_bytes(&self) -> [u8; FOLLOWER_BYTES] {
        kept::closed::<_, NUMBERS, FOLLOWER_BYTES>(&SEAL, *self)
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
            stops: 0,
            drips: 0.0,
            flows: Flows::since(ZERO),
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
        self.take_from(|place| recipe.get(place).copied(), clock, reading)
    }

    /// The same with a recipe that is kept in another form: its step at a place, counted from zero, and
    /// none beyond the last.
    ///
    /// # Errors
    /// Those of [`Scale::take`].
    pub fn take_from(
        &mut self,
        recipe: impl Fn(usize) -> Option<Step>,
        clock: Clock,
        reading: ScaleReading,
    ) -> Result<Now, Error> {
        let is_first = !self.scale.line.is_begun();
        let mut seen = self.scale.take(clock, reading)?;
        if is_first {
            self.level = seen.level.grams();
        }
        if let Some(event) = seen.event {
            self.hear(&recipe, &event, &seen);
        }
        // Once for each point, however many readings it is made of.
        let is_known = self.scale.line.weight() >= SURE && self.scale.readings == 0;
        if seen.doing == Doing::Pouring && is_known {
            self.flows.take(self.scale.line.time(), self.scale.line.flow);
        }
        let mut step = self.current(&recipe);
        if let Some(Step::Dose { dose }) = step {
            self.weigh(&recipe, dose, &mut seen);
            step = self.current(&recipe);
        }
        let time = fixed(clock.seconds());
        let brewing = self.first_water.map(|first| (time - first).max(ZERO));
        let step = self.pass(&recipe, step, brewing, &seen);
        self.now(step, brewing, seen)
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
        self.level = self.scale.level();
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

    /// Tells the dose, where it was weighed elsewhere. In a step that weighs coffee the scale has the last
    /// word: [`go_on`](Self::go_on) first.
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
    pub fn lead(&self) -> Lead {
        self.lead
    }

    /// Sets the lead, for a hand that is known. Stops go on teaching it, as if there had been three.
    pub fn set_lead(&mut self, lead: Lead) {
        (self.lead, self.stops) = (lead, SET_STOPS);
    }

    /// A brew as it was meant, with the dose and the water that are there by now in their places: what
    /// [`forecast`](crate::forecast) then says is what comes out if nothing more is poured.
    ///
    /// How well the dose is known stays as it was meant, how well the water is known comes from the scale. The yield
    /// stays as well: where its rates are known, put in what has dissolved by now.
    ///
    /// ```
    /// # use cupwright::{forecast::{self, *}, live::*, quantity::*, retention::*, uncertainty::*, verdict};
    /// # let gram = |u| MassUncertainty::from_grams(u).map(Standard::known);
    /// let meant = Intended {
    ///     dose: Estimate::with(Dose::from_grams(15.0)?, gram(0.06)?),
    ///     water: Estimate::with(BrewWater::from_grams(240.0)?, gram(2.0)?),
    ///     // ...
    /// #   extracted: Estimate::with(
    /// #       Yield::from_percent(20.5)?,
    /// #       Standard::known(YieldUncertainty::from_percent(0.5)?),
    /// #   ),
    /// #   losses: Losses {
    /// #       retention: ApparentRetention::from_grams_per_gram(1.35)?,
    /// #       hold_up: HoldUp::from_grams(3.0)?,
    /// #       paper: Paper::None,
    /// #       drips: Drips::NONE,
    /// #       vapour: Vapour::NONE,
    /// #   },
    /// #   retention: Standard::known(RetentionUncertainty::from_grams_per_gram(0.1)?),
    /// #   other: gram(1.0)?,
    /// #   moisture: Moisture::from_percent(1.8)?,
    /// #   water_solids: WaterSolids::NONE,
    /// #   held_strength: HeldStrength::STEEPED,
    /// #   portion: Estimate::exact(Beverage::from_grams(190.0)?),
    /// #   added: Estimate::exact(Addition::from_grams(0.0)?),
    /// };
    /// let mut follower = Follower::new(Setup::COMMON);
    /// follower.set_dose(Dose::from_grams(15.2)?);
    /// // Invented: three still seconds, then 6 g/s for 25 s so far.
    /// for tenth in 0..280 {
    ///     let time = f64::from(tenth) / 10.0;
    ///     let shown = 6.0 * f64::max(time - 3.0, 0.0);
    ///     follower.take(&[], Clock::from_seconds(time)?, ScaleReading::from_grams(shown)?)?;
    /// }
    /// let now = follower.so_far(&meant)?;
    /// assert_eq!(format!("{:.0} of {:.0}", now.water.value, meant.water.value), "149 g of 240 g");
    /// let outlook = forecast::outlook(&now, &verdict::HOME_BREWER_2018.window)?;
    /// assert_eq!(format!("{:.0} at {:.1}", outlook.beverage.value, outlook.strength.value), "126 g at 2.0 %");
    /// # Ok::<(), cupwright::Error>(())
    /// ```
    ///
    /// # Errors
    /// [`Error::ResultOutOfRange`] for water that is no brew water yet.
    pub fn so_far(&self, meant: &Intended) -> Result<Intended, Error> {
        let water = Standard::known(self.scale.poured_uncertainty()?);
        let dose = Estimate { value: self.dose.unwrap_or(meant.dose.value), ..meant.dose };
        let poured = computed(self.scale.poured()?.grams())?;
        Ok(Intended { dose, water: Estimate::with(poured, water), ..*meant })
    }

    fn current(&self, recipe: &impl Recipe) -> Option<Step> {
        recipe(self.step.into())
    }

    /// Goes on to the next step of a kind, if there is one: someone has gone ahead.
    fn skip_to(&mut self, recipe: &impl Recipe, is_it: fn(&Step) -> bool) -> bool {
        let mut ahead = (self.step.saturating_add(1)..u16::MAX)
            .map_while(|place| recipe(place.into()).map(|step| (place, step)));
        let found = ahead.find(|(_, step)| is_it(step));
        if let Some((place, _)) = found {
            self.go_to(place);
        }
        found.is_some()
    }

    /// What an event means for the step.
    fn hear(&mut self, recipe: &impl Recipe, event: &Event, seen: &Seen) {
        let change = event.change.grams();
        match (event.happening, self.current(recipe)) {
            (Happening::PourStarted, step) => self.hear_pour(recipe, step, event, seen),
            (Happening::Settled, Some(Step::Pour { .. }))
                if self.is_coffee(recipe, seen.poured.grams()) =>
            {
                self.add_coffee(seen.poured.grams());
            }
            (Happening::Settled, _) => self.learn(seen),
            (Happening::Tared, Some(Step::Dose { .. })) => self.level = seen.level.grams(),
            (Happening::Tared, _) => self.level += change,
            // A vessel, not coffee. What comes back tells no weight: another may have been lifted.
            (Happening::Placed | Happening::Returned, Some(Step::Dose { dose }))
                if !(-DOSE_NEAR..=MOST_COFFEE * dose.grams())
                    .contains(&(seen.level.grams() - self.level)) =>
            {
                self.level = seen.level.grams();
            }
            // Something stays, without coffee: a hand that rested on it, or the cup under a brewer.
            (Happening::Lifted, Some(Step::Dose { .. }))
                if self.dose.is_none() && self.scale.load(seen.level.grams()) > LEAST_COFFEE =>
            {
                self.level = seen.level.grams();
            }
            (Happening::Placed | Happening::Returned, Some(Step::Beverage { vessel })) => {
                let weight = seen.level.grams() - self.level;
                if let Some(beverage) = Beverage::accept(weight - vessel.grams()) {
                    self.beverage = Some(beverage);
                    self.go_on();
                }
            }
            (Happening::Lifted, Some(Step::Rinse)) if self.is_begun => {
                self.scale.count_anew();
                self.go_on();
            }
            (Happening::Lifted, Some(Step::Press | Step::Beverage { .. })) => {
                if let Some(Step::Press) = self.current(recipe) {
                    self.go_on();
                }
                self.level = seen.level.grams();
                self.weigh_what_stays(recipe, seen);
            }
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
    fn hear_pour(&mut self, recipe: &impl Recipe, step: Option<Step>, event: &Event, seen: &Seen) {
        let time = fixed(event.clock.seconds());
        match step {
            Some(Step::Rinse) => {
                self.is_begun = true;
                return;
            }
            Some(Step::Dose { .. }) => {
                // Coffee pours as well, and in more than one go: how much comes will tell.
                let before = seen.level.grams() - event.change.grams() - self.level;
                self.dose = coffee(before);
                self.flows = Flows::since(time);
                return;
            }
            Some(Step::Stir { .. } | Step::Wait { .. }) => {
                self.skip_to(recipe, |step| matches!(step, Step::Pour { .. }));
            }
            _ => {}
        }
        self.begin_pour(time);
    }

    fn begin_pour(&mut self, time: Fixed) {
        self.is_begun = true;
        self.cued = None;
        self.flows = Flows::since(time);
        self.first_water = self.first_water.or(Some(time));
    }

    /// How far a stop missed what it was cued for teaches the lead: the mean over the stops, in which the
    /// first lead counts as one.
    fn learn(&mut self, seen: &Seen) {
        if let Some((water, flow)) = self.cued.take().filter(|(_, flow)| *flow > LEAST_TAUGHT) {
            let late = (seen.poured.grams() - water) / flow;
            if late > LATEST_STOP {
                return;
            }
            self.stops = self.stops.saturating_add(1).min(MOST_STOPS);
            let lead = self.lead.seconds() + late / f64::from(self.stops.saturating_add(1));
            let lead = min(max(lead, Lead::QUANTITY.lowest()), Lead::QUANTITY.highest());
            self.lead = Lead::accept(lead).unwrap_or(self.lead);
        }
    }

    /// Weighs the coffee, which is no water. What pours on far beyond it is, on whatever coffee there is.
    fn weigh(&mut self, recipe: &impl Recipe, wanted: Dose, seen: &mut Seen) {
        let gain = seen.level.grams() - self.level;
        if seen.doing == Doing::Pouring && gain > MOST_COFFEE * wanted.grams() {
            let since = self.flows.since;
            if !self.skip_to(recipe, |step| matches!(step, Step::Pour { .. })) {
                self.go_on();
            }
            return self.begin_pour(since);
        }
        if seen.doing == Doing::Still {
            self.scale.count_anew();
            self.dose = coffee(gain);
        }
        (seen.poured, seen.unclear) = (Poured::known(0.0), Unclear::known(0.0));
    }

    /// Whether there is as much coffee as wanted.
    fn is_weighed(&self, wanted: Dose) -> bool {
        let off = |dose: Dose| (dose.grams() - wanted.grams()).abs();
        self.dose.is_some_and(|dose| off(dose) <= max(DOSE_NEAR, NEAR * wanted.grams()))
    }

    /// What came to rest right after the coffee was weighed, and is too little for water, is a little more of it.
    fn is_coffee(&self, recipe: &impl Recipe, poured: f64) -> bool {
        let before = self.step.checked_sub(1).and_then(|place| recipe(place.into()));
        let is_little = |dose: Dose| poured < LITTLE_MORE * dose.grams();
        matches!(before, Some(Step::Dose { .. })) && self.dose.is_some_and(is_little)
    }

    fn add_coffee(&mut self, grams: f64) {
        self.dose = self.dose.and_then(|dose| Dose::accept(dose.grams() + grams));
        self.scale.count_anew();
        (self.is_begun, self.first_water) = (false, None);
    }

    /// Weighs what stays on the scale when a brewer is lifted off it, where the scale began empty.
    fn weigh_what_stays(&mut self, recipe: &impl Recipe, seen: &Seen) {
        let Some(Step::Beverage { vessel }) = self.current(recipe) else { return };
        let water = seen.poured.grams();
        let left = self.scale.load(seen.level.grams()) - vessel.grams();
        if vessel.grams() > 0.0 && left > LEAST_BEVERAGE * water && left < water {
            self.beverage = Beverage::accept(left);
            self.go_on();
        }
    }

    /// Leaves steps that are over, from the current one on; the first that is not.
    fn pass(
        &mut self,
        recipe: &impl Recipe,
        mut step: Option<Step>,
        brewing: Option<Fixed>,
        seen: &Seen,
    ) -> Option<Step> {
        loop {
            let is_over = match step {
                Some(Step::Dose { dose }) => seen.doing == Doing::Still && self.is_weighed(dose),
                Some(Step::Pour { to, .. }) => {
                    let (poured, to) = (seen.poured.grams(), to.grams());
                    let is_rest = seen.doing == Doing::Still && self.is_begun;
                    let is_late = || poured >= MOST_POURED * to && self.is_late(recipe, brewing);
                    is_rest && (poured >= to - near(to) || is_late())
                }
                Some(Step::Stir { .. }) => self.is_begun && seen.doing != Doing::Disturbed,
                Some(Step::Wait { until }) => {
                    brewing.is_some_and(|time| time >= fixed(until.seconds()))
                }
                _ => false,
            };
            if !is_over {
                return step;
            }
            self.go_on();
            step = self.current(recipe);
        }
    }

    /// Whether the time has come for the step that comes next.
    fn is_late(&self, recipe: &impl Recipe, brewing: Option<Fixed>) -> bool {
        let due = match recipe(usize::from(self.step).saturating_add(1)) {
            Some(
                Step::Pour { from: due, .. } | Step::Stir { from: due } | Step::Wait { until: due },
            ) => due,
            _ => return false,
        };
        due.seconds() > 0.0 && brewing.is_some_and(|time| time >= fixed(due.seconds()))
    }

    fn now(
        &mut self,
        step: Option<Step>,
        brewing: Option<Fixed>,
        seen: Seen,
    ) -> Result<Now, Error> {
        let poured = seen.poured.grams();
        let (left, due) = match step {
            Some(Step::Pour { to, from }) => (to.grams() - poured, fixed(from.seconds())),
            Some(Step::Stir { from: due } | Step::Wait { until: due }) => {
                (0.0, fixed(due.seconds()))
            }
            _ => (0.0, ZERO),
        };
        let wait = (due - brewing.unwrap_or(ZERO)).max(ZERO);
        let to_pour = match step {
            Some(Step::Pour { .. }) => Some(computed(left)?),
            _ => None,
        };
        let (cue, why) = match (step, seen.doing) {
            (None, _) => (Cue::Nothing, Why::Done),
            (Some(Step::Rinse), _) => (Cue::Rinse, Why::Next),
            (Some(Step::Dose { dose }), _) => (Cue::AddCoffee, self.why_coffee(dose)),
            (Some(Step::Pour { to, .. }), Doing::Pouring) => self.cue_stop(left, to.grams(), &seen),
            (Some(Step::Pour { .. }), _) => self.cue_pour(left, wait, due, &seen),
            (Some(Step::Beverage { .. }), _) => (Cue::WeighBeverage, Why::Next),
            (Some(_), Doing::Pouring) => (Cue::StopPouring, Why::Enough),
            (Some(Step::Press), _) => (Cue::Press, Why::Next),
            (Some(_), _) if wait > ZERO => (Cue::Wait, Why::Early),
            (Some(Step::Stir { .. }), _) => (Cue::Stir, Why::Time),
            (Some(Step::Wait { .. }), _) => (Cue::Wait, Why::Next),
        };
        Ok(Now {
            seen,
            step: self.step,
            cue,
            why,
            to_pour,
            to_wait: if wait > ZERO { Time::accept(number(wait)) } else { None },
            ratio: self.dose.and_then(|dose| WaterRatio::accept(poured / dose.grams())),
            brewing: brewing.and_then(|time| Time::accept(number(time))),
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
        if self.cued.is_none() && left <= self.lead.seconds() * flow {
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
    fn cue_pour(&self, left: f64, wait: Fixed, due: Fixed, seen: &Seen) -> (Cue, Why) {
        match seen.doing {
            Doing::Settling if self.cued.is_some() => (Cue::Wait, Why::Enough),
            _ if wait > ZERO => (Cue::Wait, Why::Early),
            _ if seen.unclear.grams() > near(left) => (Cue::Pour, Why::Unclear),
            _ if self.is_begun => (Cue::Pour, Why::Missing),
            _ if due > ZERO => (Cue::Pour, Why::Time),
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
        kept::perhaps(walk, &mut self.dose);
        kept::perhaps(walk, &mut self.beverage);
        walk.perhaps_fixed(&mut self.first_water);
        let (mut water, mut flow) = (self.cued.map(|cued| cued.0), self.cued.map(|cued| cued.1));
        walk.perhaps(&mut water);
        walk.perhaps(&mut flow);
        self.cued = water.zip(flow);
        if water.is_some() != flow.is_some() {
            walk.refuse();
        }
        kept::quantity(walk, &mut self.lead);
        walk.count(&mut self.stops);
        walk.number(&mut self.drips);
        let Flows { since, count, sum, squares } = &mut self.flows;
        walk.fixed(since);
        walk.whole(count, |number| number as u16);
        walk.fixed(sum);
        walk.fixed(squares);
    }
}

#[cfg(test)]
#[allow(clippy::arithmetic_side_effects)]
mod tests {
    use super::*;
    use crate::quantity::{Flow, Level};

    fn value<M: Measure>(x: f64) -> M {
        M::accept(x).unwrap()
    }

    fn near_by(a: f64, b: f64) {
        assert!((a - b).abs() < 1e-9, "{a} {b}");
    }

    /// A level and water on it.
    fn seen(doing: Doing, level: f64, poured: f64) -> Seen {
        Seen {
            level: value::<Level>(level),
            flow: Some(value::<Flow>(4.0)),
            poured: value(poured),
            unclear: value(0.0),
            doing,
            event: None,
        }
    }

    fn event(happening: Happening, change: f64) -> Event {
        Event { happening, clock: value(20.0), change: value(change) }
    }

    fn pour(to: f64, from: f64) -> Step {
        Step::Pour { to: value(to), from: value(from) }
    }

    fn dose(grams: f64) -> Step {
        Step::Dose { dose: value(grams) }
    }

    const BEVERAGE: Step = Step::Beverage { vessel: VesselMass::known(300.0) };

    fn at(steps: &[Step]) -> impl Recipe + '_ {
        |place| steps.get(place).copied()
    }

    /// A brew at a step, of which the first water came at the tenth second.
    fn brewing(step: u16) -> Follower {
        Follower { step, first_water: Some(fixed(10.0)), ..Follower::new(Setup::COMMON) }
    }

    #[test]
    fn a_flow_wanders_by_its_deviation_over_its_mean() {
        let mut flows = Flows::since(fixed(5.0));
        flows.take(fixed(5.9), fixed(90.0));
        assert_eq!((flows.count, flows.variation()), (0, None), "not before it has run in");
        for (time, flow) in [(6.0, 4.0), (6.1, 5.0)] {
            flows.take(fixed(time), fixed(flow));
        }
        assert_eq!(flows.variation(), None, "two are too few");
        flows.take(fixed(6.2), fixed(6.0));
        near_by(flows.variation().unwrap().percent(), 20.0);
        let mut none = Flows { count: 3, ..Flows::since(ZERO) };
        assert_eq!(none.variation(), None, "no flow at all");
        none.count = MOST_FLOWS;
        none.take(fixed(9.0), fixed(5.0));
        assert_eq!(none, Flows { count: MOST_FLOWS, ..Flows::since(ZERO) });
        let mut last = Flows { count: MOST_FLOWS - 1, ..Flows::since(ZERO) };
        last.take(fixed(9.0), fixed(5.0));
        assert_eq!((last.count, number(last.sum << 10)), (MOST_FLOWS, 5.0));
    }

    #[test]
    fn how_near_is_near_and_how_little_is_none() {
        assert_eq!((near(10.0), near(50.0), near(200.0)), (1.0, 1.0, 4.0));
        assert_eq!((coffee(1.0), coffee(1.01)), (None, Some(value(1.01))));
    }

    /// The mean of the first lead and of those that the stops would have needed, eight in all.
    #[test]
    fn a_lead_is_the_mean_over_the_stops() {
        let learned = |follower: &mut Follower, needed: f64| {
            let late = needed - follower.lead.seconds();
            follower.cued = Some((50.0, 4.0));
            follower.learn(&seen(Doing::Still, 0.0, 50.0 + 4.0 * late));
            assert_eq!(follower.cued, None, "once");
            follower.lead.seconds()
        };
        let mut follower = Follower::new(Setup::COMMON);
        near_by(learned(&mut follower, 1.05), (0.55 + 1.05) / 2.0);
        near_by(learned(&mut follower, 0.4), (0.55 + 1.05 + 0.4) / 3.0);
        for _ in 0..10 {
            learned(&mut follower, 1.0);
        }
        let before = follower.lead.seconds();
        near_by(learned(&mut follower, 0.2), before + (0.2 - before) / 8.0);
        // One that was set is as good as the first and three stops.
        follower.set_lead(value(0.8));
        near_by(learned(&mut follower, 1.3), 0.8 + 0.5 / 5.0);
    }

    #[test]
    fn what_teaches_no_lead() {
        let lead = |flow: f64, late: f64| {
            let mut follower =
                Follower { cued: Some((50.0, flow)), ..Follower::new(Setup::COMMON) };
            follower.learn(&seen(Doing::Still, 0.0, 50.0 + flow * late));
            follower.lead.seconds()
        };
        assert_eq!(lead(1.0, 1.0), 0.55, "too slow a flow");
        near_by(lead(1.25, 1.0), 1.05);
        assert_eq!(lead(4.0, 1.625), 0.55, "later than a hand stops");
        near_by(lead(4.0, 1.5), 1.3);
        let mut follower =
            Follower { lead: value(Lead::QUANTITY.highest()), ..Follower::new(Setup::COMMON) };
        follower.cued = Some((50.0, 4.0));
        follower.learn(&seen(Doing::Still, 0.0, 55.0));
        assert_eq!(follower.lead.seconds(), Lead::QUANTITY.highest());
        follower.set_lead(value(Lead::QUANTITY.lowest()));
        follower.cued = Some((50.0, 4.0));
        follower.learn(&seen(Doing::Still, 0.0, 10.0));
        assert_eq!(follower.lead.seconds(), Lead::QUANTITY.lowest());
        follower.learn(&seen(Doing::Still, 0.0, 55.0));
        assert_eq!(follower.lead.seconds(), Lead::QUANTITY.lowest(), "no cue, no lesson");
    }

    #[test]
    fn coffee_is_weighed_at_rest_and_is_no_water() {
        let steps = [dose(15.0), Step::Stir { from: value(0.0) }, pour(50.0, 0.0)];
        let weigh = |doing, gain: f64| {
            let mut follower = Follower { level: 100.0, ..Follower::new(Setup::COMMON) };
            follower.flows = Flows::since(fixed(7.0));
            let mut now = seen(doing, 100.0 + gain, 9.0);
            now.unclear = value(3.0);
            follower.weigh(&at(&steps), value(15.0), &mut now);
            (follower, now)
        };
        let (follower, now) = weigh(Doing::Still, 14.5);
        assert_eq!((follower.dose, follower.step), (Some(value(14.5)), 0));
        assert_eq!((now.poured.grams(), now.unclear.grams()), (0.0, 0.0));
        assert_eq!(weigh(Doing::Still, 1.0).0.dose, None);
        assert_eq!(weigh(Doing::Still, 40.0).0.step, 0, "at rest it is no water");
        let (follower, now) = weigh(Doing::Pouring, 22.5);
        assert_eq!((follower.step, follower.dose, now.poured.grams()), (0, None, 0.0));
        let (follower, now) = weigh(Doing::Pouring, 22.625);
        assert_eq!((follower.step, follower.is_begun, now.poured.grams()), (2, true, 9.0));
        assert_eq!(follower.first_water, Some(fixed(7.0)));
        // Without a pour in the recipe the next step is as good.
        let mut follower = Follower::new(Setup::COMMON);
        let mut now = seen(Doing::Pouring, 60.0, 9.0);
        follower.weigh(&at(&steps[..2]), value(15.0), &mut now);
        assert_eq!(follower.step, 1);
    }

    #[test]
    fn a_dose_is_as_wanted_within_three_tenths_or_two_in_a_hundred() {
        let is_weighed = |dose: f64, wanted: f64| {
            let follower = Follower { dose: Some(value(dose)), ..Follower::new(Setup::COMMON) };
            follower.is_weighed(value(wanted))
        };
        assert!(is_weighed(15.29, 15.0) && is_weighed(14.71, 15.0));
        assert!(!is_weighed(15.31, 15.0) && !is_weighed(14.69, 15.0));
        assert!(is_weighed(51.0, 50.0) && is_weighed(49.0, 50.0));
        assert!(!is_weighed(51.01, 50.0) && !is_weighed(48.99, 50.0));
        assert!(!Follower::new(Setup::COMMON).is_weighed(value(15.0)));
        let why = |dose: Option<f64>| {
            let dose = dose.map(value);
            Follower { dose, ..Follower::new(Setup::COMMON) }.why_coffee(value(15.0))
        };
        assert_eq!([why(None), why(Some(14.9))], [Why::Next, Why::Missing]);
        assert_eq!([why(Some(15.0)), why(Some(15.1))], [Why::TooMuch; 2]);
    }

    #[test]
    fn a_little_right_after_the_coffee_is_coffee() {
        let steps = [dose(15.0), pour(50.0, 0.0), pour(90.0, 0.0)];
        let settled = |step, poured| {
            let mut follower =
                Follower { dose: Some(value(15.0)), is_begun: true, ..brewing(step) };
            let now = seen(Doing::Still, 0.0, poured);
            follower.hear(&at(&steps), &event(Happening::Settled, poured), &now);
            (follower.dose.unwrap().grams(), follower.first_water.is_some(), follower.is_begun)
        };
        assert_eq!(settled(1, 1.25), (16.25, false, false));
        assert_eq!(settled(1, 1.5), (15.0, true, true), "a tenth is water");
        assert_eq!(settled(2, 1.25), (15.0, true, true), "water came before");
        let begun = [pour(50.0, 0.0)];
        assert!(!brewing(0).is_coffee(&at(&begun), 0.5), "no coffee was weighed here");
    }

    #[test]
    fn what_stays_when_a_brewer_is_lifted() {
        let after_press = |steps: &[Step], level: f64| {
            let mut follower = brewing(0);
            follower.hear(
                &at(steps),
                &event(Happening::Lifted, -500.0),
                &seen(Doing::Still, level, 200.0),
            );
            assert!(
                follower.beverage.is_some() || follower.level == level,
                "what is put down next counts from there"
            );
            (follower.beverage.map(Beverage::grams), follower.step)
        };
        let stays = |vessel: f64, level: f64| {
            after_press(&[Step::Press, Step::Beverage { vessel: value(vessel) }], level)
        };
        assert_eq!(stays(300.0, 475.0), (Some(175.0), 2));
        assert_eq!((stays(300.0, 360.0), stays(300.0, 360.25)), ((None, 1), (Some(60.25), 2)));
        assert_eq!((stays(300.0, 500.0), stays(300.0, 499.75)), ((None, 1), (Some(199.75), 2)));
        assert_eq!(stays(0.0, 150.0), (None, 1), "a vessel that nobody weighed");
        assert_eq!(after_press(&[Step::Press], 475.0), (None, 1), "no beverage in the recipe");
    }

    #[test]
    fn a_pour_is_over_with_the_water_or_with_the_time_and_most_of_it() {
        let steps =
            [pour(50.0, 0.0), pour(200.0, 30.0), Step::Stir { from: value(60.0) }, Step::Press];
        let passed = |step: u16, poured: f64, elapsed: f64| {
            let mut follower = Follower { is_begun: true, ..brewing(step) };
            let (recipe, now) = (at(&steps), seen(Doing::Still, 0.0, poured));
            follower.pass(&recipe, recipe(step.into()), Some(fixed(elapsed)), &now);
            follower.step
        };
        assert_eq!((passed(0, 48.875, 0.0), passed(0, 49.0, 0.0)), (0, 1));
        assert_eq!((passed(1, 195.875, 0.0), passed(1, 196.0, 0.0)), (1, 2));
        // The second pour's time, 30 s, with 40 g; the stir's, 60 s, with 160 g.
        assert_eq!(
            (passed(0, 40.0, 29.875), passed(0, 40.0, 30.0), passed(0, 39.875, 99.0)),
            (0, 1, 0)
        );
        assert_eq!(
            (passed(1, 160.0, 59.875), passed(1, 160.0, 60.0), passed(1, 159.875, 99.0)),
            (1, 2, 1)
        );
        for (doing, is_begun) in
            [(Doing::Still, false), (Doing::Pouring, true), (Doing::Settling, true)]
        {
            let mut follower = Follower { is_begun, ..brewing(0) };
            follower.pass(&at(&steps), Some(pour(50.0, 0.0)), None, &seen(doing, 0.0, 50.0));
            assert_eq!(follower.step, 0, "{doing:?} {is_begun}");
        }
        let is_late = |next: Option<Step>, elapsed: Option<f64>| {
            let steps = [Some(pour(50.0, 0.0)), next];
            brewing(0).is_late(&|place| steps.get(place).copied().flatten(), elapsed.map(fixed))
        };
        let wait = |until: f64| Some(Step::Wait { until: value(until) });
        assert!(is_late(wait(9.0), Some(9.0)) && !is_late(wait(9.0), Some(8.875)));
        assert!(!is_late(wait(9.0), None) && !is_late(wait(0.0), Some(9.0)));
        assert!(!is_late(Some(Step::Press), Some(9.0)) && !is_late(None, Some(9.0)));
    }

    #[test]
    fn steps_that_are_over_are_left_together() {
        let steps =
            [dose(15.0), Step::Wait { until: value(20.0) }, Step::Wait { until: value(30.0) }];
        let passed = |doing, dose: f64, elapsed: Option<f64>| {
            let mut follower = Follower { dose: Some(value(dose)), ..Follower::new(Setup::COMMON) };
            let recipe = at(&steps);
            follower.pass(&recipe, recipe(0), elapsed.map(fixed), &seen(doing, 0.0, 0.0));
            follower.step
        };
        assert_eq!(passed(Doing::Still, 15.0, None), 1);
        assert_eq!(passed(Doing::Still, 14.0, None), 0);
        assert_eq!(passed(Doing::Settling, 15.0, None), 0);
        assert_eq!(passed(Doing::Still, 15.0, Some(19.875)), 1);
        assert_eq!(passed(Doing::Still, 15.0, Some(20.0)), 2);
        assert_eq!(passed(Doing::Still, 15.0, Some(30.0)), 3);
        let stirred = |is_begun, doing| {
            let stir = [Step::Stir { from: value(0.0) }];
            let mut follower = Follower { is_begun, ..brewing(0) };
            follower.pass(&at(&stir), Some(stir[0]), None, &seen(doing, 0.0, 0.0)).is_none()
        };
        assert!(stirred(true, Doing::Still) && !stirred(true, Doing::Disturbed));
        assert!(!stirred(false, Doing::Still));
    }

    #[test]
    fn cues_and_their_reasons() {
        let now = |step: Step, doing, elapsed: Option<f64>| {
            let mut follower = Follower { dose: Some(value(15.0)), ..brewing(0) };
            let now = follower.now(Some(step), elapsed.map(fixed), seen(doing, 0.0, 30.0)).unwrap();
            assert_eq!(now.ratio.unwrap().grams_per_gram(), 2.0);
            assert_eq!(now.brewing.map(Time::seconds), elapsed);
            (now.cue, now.why, now.to_pour.map(Change::grams), now.to_wait.map(Time::seconds))
        };
        let (still, pouring) = (Doing::Still, Doing::Pouring);
        let stir = Step::Stir { from: value(20.0) };
        let wait = Step::Wait { until: value(20.0) };
        let early = (Cue::Wait, Why::Early, None, Some(5.0));
        assert_eq!(now(stir, still, Some(15.0)), early);
        assert_eq!(now(wait, still, Some(15.0)), early);
        assert_eq!(now(wait, still, None), (Cue::Wait, Why::Early, None, Some(20.0)));
        assert_eq!(now(stir, still, Some(20.0)), (Cue::Stir, Why::Time, None, None));
        assert_eq!(now(wait, still, Some(20.0)), (Cue::Wait, Why::Next, None, None));
        assert_eq!(now(stir, pouring, Some(20.0)), (Cue::StopPouring, Why::Enough, None, None));
        assert_eq!(now(Step::Press, still, None), (Cue::Press, Why::Next, None, None));
        assert_eq!(now(Step::Press, pouring, None), (Cue::StopPouring, Why::Enough, None, None));
        assert_eq!(now(Step::Rinse, pouring, None), (Cue::Rinse, Why::Next, None, None));
        assert_eq!(now(BEVERAGE, pouring, None), (Cue::WeighBeverage, Why::Next, None, None));
        assert_eq!(now(dose(16.0), still, None), (Cue::AddCoffee, Why::Missing, None, None));
        assert_eq!(
            now(pour(50.0, 40.0), still, Some(15.0)),
            (Cue::Wait, Why::Early, Some(20.0), Some(25.0))
        );
        assert_eq!(
            now(pour(50.0, 40.0), still, Some(40.0)),
            (Cue::Pour, Why::Time, Some(20.0), None)
        );
        assert_eq!(now(pour(50.0, 0.0), still, None), (Cue::Pour, Why::Next, Some(20.0), None));
        assert_eq!(now(pour(50.0, 0.0), pouring, None), (Cue::Pour, Why::Next, Some(20.0), None));
        assert_eq!(
            now(pour(20.0, 0.0), pouring, None),
            (Cue::StopPouring, Why::TooMuch, Some(-10.0), None)
        );
        let done = brewing(9).now(None, None, seen(still, 0.0, 30.0)).unwrap();
        assert_eq!((done.cue, done.why, done.step, done.ratio), (Cue::Nothing, Why::Done, 9, None));
    }

    /// At 4 g/s and a lead of half a second the cue comes two grams before; what comes then is told.
    #[test]
    fn the_cue_to_stop_comes_its_lead_before_and_stays() {
        let mut follower = Follower { lead: value(0.5), ..brewing(0) };
        let now = seen(Doing::Pouring, 0.0, 30.0);
        let mut cue = |left: f64, to: f64| follower.cue_stop(left, to, &now);
        assert_eq!(cue(2.125, 50.0), (Cue::Pour, Why::Next));
        assert_eq!(cue(2.0, 50.0), (Cue::StopPouring, Why::Lead));
        assert_eq!(cue(2.5, 50.0), (Cue::StopPouring, Why::Lead), "it is not taken back");
        assert_eq!((cue(0.125, 50.0).1, cue(0.0, 50.0).1), (Why::Lead, Why::Enough));
        assert_eq!((cue(-1.0, 50.0).1, cue(-1.125, 50.0).1), (Why::Enough, Why::TooMuch));
        assert_eq!((cue(-4.0, 200.0).1, cue(-4.125, 200.0).1), (Why::Enough, Why::TooMuch));
        assert_eq!(follower.cued, Some((50.0, 4.0)), "as it was then");
        let mut follower = brewing(0);
        let blind = Seen { flow: None, ..now };
        assert_eq!(follower.cue_stop(0.125, 50.0, &blind), (Cue::Pour, Why::Next));
        assert_eq!(follower.cue_stop(0.0, 50.0, &blind), (Cue::StopPouring, Why::Enough));
    }

    #[test]
    fn cues_between_pours() {
        let cue = |follower: &Follower, doing, wait: f64, due: f64, unclear: f64| {
            let now = Seen { unclear: value(unclear), ..seen(doing, 0.0, 0.0) };
            follower.cue_pour(200.0, fixed(wait), fixed(due), &now)
        };
        let new = brewing(0);
        let begun = Follower { is_begun: true, ..new };
        let cued = Follower { cued: Some((50.0, 4.0)), ..begun };
        let (still, settling) = (Doing::Still, Doing::Settling);
        assert_eq!(cue(&cued, settling, 5.0, 5.0, 9.0), (Cue::Wait, Why::Enough));
        assert_eq!(cue(&cued, still, 5.0, 5.0, 9.0), (Cue::Wait, Why::Early));
        assert_eq!(cue(&begun, settling, 5.0, 5.0, 9.0), (Cue::Wait, Why::Early));
        assert_eq!(cue(&begun, still, 0.0, 5.0, 4.125), (Cue::Pour, Why::Unclear));
        assert_eq!(cue(&begun, still, 0.0, 5.0, 4.0), (Cue::Pour, Why::Missing));
        assert_eq!(cue(&new, still, 0.0, 5.0, 4.0), (Cue::Pour, Why::Time));
        assert_eq!(cue(&new, still, 0.0, 0.0, 4.0), (Cue::Pour, Why::Next));
    }

    /// A follower at a step after something was heard.
    fn after(
        steps: &[Step],
        before: Follower,
        happening: Happening,
        change: f64,
        level: f64,
    ) -> Follower {
        let mut follower = before;
        follower.hear(&at(steps), &event(happening, change), &seen(Doing::Still, level, 30.0));
        follower
    }

    #[test]
    fn what_is_put_down_for_coffee_is_coffee_or_a_vessel() {
        let new = Follower { level: 100.0, ..Follower::new(Setup::COMMON) };
        let level = |happening, level| after(&[dose(20.0)], new, happening, 5.0, level).level;
        for happening in [Happening::Placed, Happening::Returned] {
            assert_eq!((level(happening, 130.0), level(happening, 130.125)), (100.0, 130.125));
            assert_eq!((level(happening, 99.75), level(happening, 99.625)), (100.0, 99.625));
        }
        assert_eq!(level(Happening::Tared, 7.0), 7.0);
        assert_eq!(
            (level(Happening::Lifted, 1.0), level(Happening::Lifted, 1.125)),
            (100.0, 1.125)
        );
        let weighed = Follower { dose: Some(value(20.0)), ..new };
        let lifted = after(&[dose(20.0)], weighed, Happening::Lifted, -5.0, 50.0);
        assert_eq!(lifted.level, 100.0, "the coffee with its vessel");
        let tared = after(&[pour(50.0, 0.0)], new, Happening::Tared, -60.0, 40.0);
        assert_eq!(tared.level, 40.0);
        // Coffee that pours: what lay there before it is the dose so far.
        let poured = after(&[dose(20.0)], new, Happening::PourStarted, 2.0, 113.0);
        assert_eq!(
            (poured.dose, poured.first_water, poured.flows.since),
            (Some(value(11.0)), None, fixed(20.0))
        );
        assert!(!poured.is_begun);
    }

    #[test]
    fn what_is_heard_moves_the_steps_on() {
        use Happening::*;
        let stir = Step::Stir { from: value(0.0) };
        let wait = Step::Wait { until: value(90.0) };
        let heard = |steps: &[Step], before: Follower, happening| {
            let follower = after(steps, before, happening, -2.0, 700.0);
            (follower.step, follower.is_begun)
        };
        let new = Follower::new(Setup::COMMON);
        let begun = |follower| Follower { is_begun: true, ..follower };
        // A rinse is thrown away.
        let rinse = [Step::Rinse, pour(50.0, 0.0)];
        assert_eq!(heard(&rinse, new, PourStarted), (0, true));
        assert_eq!(after(&rinse, new, PourStarted, 2.0, 9.0).first_water, None);
        assert_eq!(
            (heard(&rinse, new, Lifted), heard(&rinse, begun(new), Lifted)),
            ((0, false), (1, false))
        );
        // Water begins the step, or the next pour where one waits.
        let steps = [pour(50.0, 0.0), stir, wait, pour(90.0, 0.0), Step::Press, BEVERAGE];
        let first = after(&steps, new, PourStarted, 2.0, 9.0);
        assert_eq!((first.step, first.is_begun, first.first_water), (0, true, Some(fixed(20.0))));
        assert_eq!(after(&steps, brewing(0), PourStarted, 2.0, 9.0).first_water, Some(fixed(10.0)));
        assert_eq!(
            (heard(&steps, brewing(1), PourStarted), heard(&steps, brewing(2), PourStarted)),
            ((3, true), (3, true))
        );
        assert_eq!(heard(&steps, brewing(4), PourStarted), (4, true));
        // A stir is a disturbance, or a brewer that was lifted.
        assert_eq!(
            (heard(&steps, brewing(1), Disturbed), heard(&steps, brewing(2), Disturbed)),
            ((1, true), (2, false))
        );
        assert_eq!(
            (heard(&steps, brewing(1), Returned), heard(&steps, brewing(2), Returned)),
            ((2, false), (2, false))
        );
        // A press in its step, or ahead of it once there is water.
        assert_eq!(
            (heard(&steps, brewing(4), Pressed), heard(&steps, brewing(1), Pressed)),
            ((4, true), (4, true))
        );
        assert_eq!(heard(&steps, Follower { step: 1, ..new }, Pressed), (1, false));
        assert_eq!(heard(&steps, Follower { step: 4, ..new }, Pressed), (4, true));
        assert_eq!(heard(&steps[..2], brewing(1), Pressed), (1, false), "no press in the recipe");
        assert_eq!(heard(&steps, begun(brewing(1)), Pressed), (4, true));
        assert_eq!(
            (heard(&steps, brewing(4), Released), heard(&steps, begun(brewing(4)), Released)),
            ((4, false), (5, false))
        );
        assert_eq!(heard(&steps, begun(brewing(3)), Released), (3, true));
        assert_eq!(heard(&steps, brewing(3), Lifted), (3, false));
    }

    #[test]
    fn a_beverage_is_what_is_put_down_less_its_vessel() {
        let put = |vessel: f64, happening, level: f64| {
            let steps = [Step::Beverage { vessel: value(vessel) }];
            let before = Follower { level: 50.0, ..brewing(0) };
            let follower = after(&steps, before, happening, 9.0, level);
            (follower.beverage.map(Beverage::grams), follower.step)
        };
        assert_eq!(put(300.0, Happening::Placed, 550.0), (Some(200.0), 1));
        assert_eq!(put(0.0, Happening::Returned, 250.0), (Some(200.0), 1));
        assert_eq!(put(300.0, Happening::Placed, 250.0), (None, 0), "the vessel is not all of it");
    }

    #[test]
    fn what_a_vessel_lacks_when_it_comes_back_has_dripped_off() {
        let drips = |first_water: Option<Fixed>, changes: &[f64]| {
            let mut follower = Follower { first_water, ..brewing(0) };
            for change in changes {
                follower = after(&[pour(50.0, 0.0)], follower, Happening::Returned, *change, 0.0);
            }
            follower.drips().unwrap().grams()
        };
        let water = Some(fixed(10.0));
        assert_eq!(drips(water, &[-2.0, 1.5, -0.5]), 2.5);
        assert_eq!(drips(None, &[-2.0]), 0.0, "no water yet");
    }

    /// Dose and water as they are by now; what was meant stays.
    #[test]
    fn a_brew_so_far() {
        use crate::quantity::{
            Addition, ApparentRetention, HeldStrength, HoldUp, Moisture, Vapour, WaterSolids,
        };
        use crate::retention::{Losses, Paper};
        let meant = Intended {
            dose: Estimate::with(value(15.0), Standard::known(value(0.06))),
            water: Estimate::with(value(240.0), Standard::known(value(2.0))),
            extracted: Estimate::with(value(20.5), Standard::known(value(0.5))),
            losses: Losses {
                retention: ApparentRetention::known(1.35),
                hold_up: HoldUp::NONE,
                paper: Paper::None,
                drips: Drips::NONE,
                vapour: Vapour::NONE,
            },
            retention: Standard::known(value(0.1)),
            other: Standard::known(value(1.0)),
            moisture: Moisture::known(1.8),
            water_solids: WaterSolids::NONE,
            held_strength: HeldStrength::STEEPED,
            portion: Estimate::exact(value(190.0)),
            added: Estimate::exact(Addition::known(0.0)),
        };
        let mut follower = brewing(0);
        assert!(follower.so_far(&meant).is_err(), "no water yet");
        follower.scale.book.poured = 120.0;
        follower.scale.runs = 2;
        let now = follower.so_far(&meant).unwrap();
        near_by(now.water.u.grams(), 0.16);
        let water = Estimate { value: value(120.0), ..now.water };
        assert_eq!(now, Intended { water, ..meant });
        follower.set_dose(value(16.0));
        let dose = Estimate { value: value(16.0), ..meant.dose };
        assert_eq!(follower.so_far(&meant).unwrap(), Intended { dose, water, ..meant });
        assert_eq!((follower.dose(), follower.beverage()), (Some(value(16.0)), None));
        follower.set_beverage(value(190.0));
        assert_eq!(follower.beverage(), Some(value(190.0)));
    }

    #[test]
    fn going_on_forgets_what_the_step_had() {
        let mut follower =
            Follower { is_begun: true, cued: Some((50.0, 4.0)), level: 77.0, ..brewing(3) };
        follower.go_on();
        assert_eq!(
            (follower.step, follower.is_begun, follower.cued, follower.level),
            (4, false, None, 0.0)
        );
        follower.go_to(u16::MAX);
        follower.go_on();
        assert_eq!(follower.step, u16::MAX);
        let steps = [pour(50.0, 0.0), Step::Press, pour(90.0, 0.0)];
        let is_pour = |step: &Step| matches!(step, Step::Pour { .. });
        follower.go_to(0);
        assert!(follower.skip_to(&at(&steps), is_pour) && follower.step == 2, "not where it is");
        follower.is_begun = true;
        assert!(!follower.skip_to(&at(&steps), is_pour) && follower.step == 2 && follower.is_begun);
        follower.level = 400.0;
        follower.zeroed(value(390.0));
        assert_eq!((follower.level, follower.scale.book.anchor), (10.0, -390.0));
    }
}
