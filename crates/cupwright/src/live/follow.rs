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
