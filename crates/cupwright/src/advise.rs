//! What to do to a judged cup now, and what to change in the next brew.
//!
//! Each suggestion says what strength, yield and size to expect, how surely they land in the window, and
//! what it takes for granted. Those that land more surely come first, and among those that land about
//! as surely the smaller change.
//!
//! A grind has no number that holds for two grinders, and published evidence gives no rate for
//! temperature (extraction of full steeps was the same from 80 to 99 °C: Liang, Chan & Ristenpart 2021,
//! doi 10.1038/s41598-021-85787-1). Of both there is only the [`Direction`].

use crate::dilution;
use crate::error::Error;
use crate::extraction::{self, Brew, Kinetics};
use crate::forecast::{self, Intended, Outlook, Straying};
use crate::math::{floor, just_above};
use crate::quantity::{
    Addition, ApparentRetention, Beverage, BrewWater, Dose, Drips, HoldUp, MassUncertainty,
    Measure, Probability, Strength, Temperature, Time, WaterSolids, Yield, computed,
};
use crate::ratio::{self, Chamber};
use crate::record::record;
use crate::retention::{self, Losses, Paper};
use crate::uncertainty::{Estimate, Input, Standard, together};
use crate::verdict::{Side, Window};
use crate::water;

record! {
    /// A cup that was brewed and read.
    pub struct Cup {
        /// Its masses, as weighed.
        brew: Brew = "brew",
        /// Standard uncertainty of each weighing.
        weighing: Standard<MassUncertainty> = "weighing",
        /// Its strength, all solids.
        strength: Estimate<Strength> = "strength",
        /// Its yield by the brewer's own φ ([`crate::uncertainty::extraction_yield`]).
        extracted: Estimate<Yield> = "yield",
        /// Time of contact.
        contact: Time = "contact_s",
    }
}

record! {
    /// What can be done, and what is known of it.
    pub struct Means {
        /// How fast the coffee extracts, from one's own brews ([`crate::calibrate`]); without it no time
        /// is suggested.
        kinetics: Option<Kinetics> = "kinetics",
        /// The chamber, where all the water stands in it at once.
        chamber: Option<Chamber> = "chamber",
        /// Temperature of the water in it.
        water: Temperature = "water_c",
        /// Whether milk may be added to this cup.
        milk: bool = "milk",
    }
}

/// What a suggestion changes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[non_exhaustive]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(rename_all = "snake_case")
)]
pub enum Change {
    /// This cup, nothing.
    DrinkAsItIs = 1,
    /// This cup, water added: takes for granted that it is stirred in.
    AddWater = 2,
    /// This cup, milk added: as for water; the strength is that of the coffee in the drink.
    AddMilk = 3,
    /// The next brew, nothing: takes for granted that it extracts and keeps as this one did.
    SameAgain = 4,
    /// The next brew, the dose: as before, though a larger bed may extract less.
    Dose = 5,
    /// The next brew, the water: as before.
    Water = 6,
    /// The next brew, the time of contact: takes for granted that the rates learned hold for this coffee, at this
    /// grind and temperature.
    Time = 7,
}

record! {
    /// One thing to do, and what to expect of it.
    pub struct Suggestion {
        /// What changes.
        change: Change = "change",
        /// The new dose, brew water, time, or what to add, in g or s; zero where nothing changes.
        amount: f64 = "amount",
        /// What that was; zero for what is added.
        before: f64 = "before",
        /// What to expect.
        outlook: Outlook = "outlook",
    }
}

impl Suggestion {
    /// How large the change is, relative; of an addition, to the beverage.
    fn size(&self, beverage: Beverage) -> f64 {
        let whole = if self.before > 0.0 { self.before } else { beverage.grams() };
        (self.amount - self.before).abs() / whole
    }
}

/// Which way to turn what has no number.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[non_exhaustive]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(rename_all = "snake_case")
)]
pub enum Direction {
    /// Leave it: the yield lies in its band, or the window has none.
    Leave = 1,
    /// Extract more: grind finer. Hotter water may do it too; at which rate nobody has published.
    More = 2,
    /// Extract less: grind coarser. Cooler water may do it too; at which rate nobody has published.
    Less = 3,
}

/// Most suggestions for one cup.
pub const MOST_SUGGESTIONS: usize = 7;

/// What to do about a cup.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Advice {
    /// Which way to turn the grind.
    pub grind: Direction,
    suggestions: [Option<Suggestion>; MOST_SUGGESTIONS],
}

impl Advice {
    /// What can be done, the surest first.
    pub fn suggestions(&self) -> impl Iterator<Item = &Suggestion> {
        self.suggestions.iter().flatten()
    }
}

/// What to do about a cup: now, and next time.
///
/// Suggested are the cup as it is; water, or milk, that brings it down to `wanted`; the same brew again;
/// the dose alone and the water alone that make the next brew `wanted` strong; and, where rates are known,
/// the time alone that brings the yield to the middle of its band, or without a band the strength to
/// `wanted`. A suggestion that would leave the chamber or the range of a quantity is not made.
///
/// Order: the chance of landing in the window, in steps of five points; where that is the same, the chance
/// of its strength alone; then the smaller change, relative to what it was. The steps are a convention
/// chosen here.
///
/// # Errors
/// [`Error::Impossible`] for masses that do not go together, as [`retention::retention_of_brew`] and
/// [`extraction::strength`]; [`Error::ResultOutOfRange`] for a retention, or an uncertainty, past its range.
///
/// ```
/// # use cupwright::{advise::{self, *}, extraction::Brew, forecast::Straying, quantity::*, uncertainty::*, verdict};
/// // Invented cup: 14 g and 200 g gave 178 g that read 1.50 %, on the strong side.
/// let gram = |u| MassUncertainty::from_grams(u).map(Standard::known);
/// let brew = Brew {
///     dose: Dose::from_grams(14.0)?,
///     water: BrewWater::from_grams(200.0)?,
///     beverage: Beverage::from_grams(178.0)?,
///     moisture: Moisture::from_percent(2.0)?,
///     water_solids: WaterSolids::NONE,
///     vapour: Vapour::NONE,
///     held_strength: HeldStrength::STEEPED,
/// };
/// let read = Standard::known(StrengthUncertainty::from_percent(0.02)?);
/// let strength = Estimate::with(Strength::from_percent(1.50)?, read);
/// let cup = Cup {
///     brew,
///     weighing: gram(0.06)?,
///     strength,
///     extracted: Estimate::with(
///         cupwright::extraction::extraction_yield(&brew, strength.value)?,
///         Standard::known(YieldUncertainty::from_percent(0.3)?),
///     ),
///     contact: Time::from_seconds(120.0)?,
/// };
/// let straying = Straying {
///     dose: gram(0.06)?,
///     water: gram(2.0)?,
///     extracted: Standard::known(YieldUncertainty::from_percent(0.4)?),
///     retention: Standard::known(RetentionUncertainty::from_grams_per_gram(0.1)?),
///     other: gram(0.5)?,
/// };
/// let means = Means {
///     kinetics: None,
///     chamber: None,
///     water: Temperature::from_celsius(92.0)?,
///     milk: false,
/// };
/// let window = verdict::HOME_BREWER_2018.window;
/// let wanted = Strength::from_percent(1.30)?;
/// let advice = advise::on(&cup, &straying, &means, wanted, &window)?;
/// let first = advice.suggestions().next().unwrap();
/// assert_eq!(first.change, Change::Dose);
/// assert_eq!(format!("{:.1} g for {:.1} g", first.amount, first.before), "12.1 g for 14.0 g");
/// assert_eq!(format!("{:.0}", first.outlook.inside), "100 %");
/// let now = advice.suggestions().find(|s| s.change == Change::AddWater).unwrap();
/// assert_eq!(format!("{:.0} g", now.amount), "27 g");
/// assert_eq!(advice.grind, Direction::Leave);
/// # Ok::<(), cupwright::Error>(())
/// ```
pub fn on(
    cup: &Cup,
    straying: &Straying,
    means: &Means,
    wanted: Strength,
    window: &Window,
) -> Result<Advice, Error> {
    let now = Now::of(cup, straying, window)?;
    let next = Next::of(cup, straying, means, wanted, window)?;
    let mut advice = Advice { grind: now.grind(), suggestions: [None; MOST_SUGGESTIONS] };
    let beverage = cup.brew.beverage;
    advice.add(Some(now.as_it_is()?), beverage);
    advice.add(now.added(Change::AddWater, wanted, cup.brew.water_solids), beverage);
    if means.milk {
        advice.add(now.added(Change::AddMilk, wanted, WaterSolids::NONE), beverage);
    }
    advice.add(Some(next.seen(Change::SameAgain, 0.0, 0.0, &next.intended)?), beverage);
    advice.add(next.other_dose(), beverage);
    advice.add(next.other_water(), beverage);
    if let Some(kinetics) = &means.kinetics {
        advice.add(next.other_time(kinetics, cup.contact), beverage);
    }
    Ok(advice)
}

impl Advice {
    /// Puts a suggestion in its place: the surest first, then the smallest; what is equal stays as it
    /// was made.
    fn add(&mut self, suggestion: Option<Suggestion>, beverage: Beverage) {
        // Steps of five points, so that a small change is not outranked by a hair.
        let steps = |chance: Probability| -floor(chance.percent() / 5.0);
        let key = |suggestion: &Option<Suggestion>| match suggestion {
            Some(s) => {
                let size = s.size(beverage);
                (steps(s.outlook.inside), steps(s.outlook.strength_inside), size)
            }
            None => (f64::INFINITY, 0.0, 0.0),
        };
        let (mut carried, mut placed) = (suggestion, false);
        for slot in &mut self.suggestions {
            // Once it has its place, all behind it move on by one.
            placed = placed || key(&carried) < key(slot);
            if placed {
                core::mem::swap(slot, &mut carried);
            }
        }
    }
}

/// The cup as it stands.
struct Now<'a> {
    cup: &'a Cup,
    straying: &'a Straying,
    window: &'a Window,
    /// Yield as windows count it.
    counted: Yield,
}

impl<'a> Now<'a> {
    fn of(cup: &'a Cup, straying: &'a Straying, window: &'a Window) -> Result<Self, Error> {
        let brew = &cup.brew;
        let counted = extraction::flow_through_yield(cup.strength.value, brew.beverage, brew.dose)?;
        Ok(Self { cup, straying, window, counted })
    }

    fn as_it_is(&self) -> Result<Suggestion, Error> {
        self.with(Change::DrinkAsItIs, Estimate::exact(Addition::known(0.0)), WaterSolids::NONE)
    }

    /// Brought down to a strength; none where it is not above that.
    fn added(&self, change: Change, wanted: Strength, solids: WaterSolids) -> Option<Suggestion> {
        let beverage = self.cup.brew.beverage;
        let added =
            dilution::water_to_reach(beverage, self.cup.strength.value, wanted, solids).ok()?;
        if added.grams() == 0.0 {
            return None;
        }
        self.with(change, Estimate::with(added, self.straying.water), solids).ok()
    }

    // Out of line, as is what is foreseen of the next brew, so that their stacks do not add up.
    #[inline(never)]
    fn with(
        &self,
        change: Change,
        added: Estimate<Addition>,
        solids: WaterSolids,
    ) -> Result<Suggestion, Error> {
        let (cup, brew) = (self.cup, &self.cup.brew);
        let after =
            dilution::strength_after_water(brew.beverage, cup.strength.value, added.value, solids)?;
        let (b, d, a) = (brew.beverage.grams(), brew.dose.grams(), added.value.grams());
        let (t, mixed, s) =
            (cup.strength.value.percent(), after.percent(), 100.0 * solids.fraction());
        let beverage = Estimate::with(brew.beverage, cup.weighing);
        let dose = Estimate::with(brew.dose, cup.weighing);
        // By strength, beverage, dose, addition.
        let inputs = |[by_t, by_b, by_d, by_a]: [f64; 4]| {
            [
                Input::new(&cup.strength, by_t),
                Input::new(&beverage, by_b),
                Input::new(&dose, by_d),
                Input::new(&added, by_a),
            ]
        };
        let of_strength = inputs([b / (b + a), (t - mixed) / (b + a), 0.0, (s - mixed) / (b + a)]);
        let of_counted = inputs([b / d, t / d, -t * b / (d * d), 0.0]);
        let size = forecast::linear(computed(b + a)?, &inputs([0.0, 1.0, 0.0, 1.0]))?;
        let strength = forecast::linear(after, &of_strength)?;
        let counted = forecast::linear(self.counted, &of_counted)?;
        let correlation = forecast::correlation(&of_strength, &of_counted);
        let outlook = Outlook::of(self.window, size, strength, counted, correlation);
        Ok(Suggestion { change, amount: a, before: 0.0, outlook })
    }

    fn grind(&self) -> Direction {
        match self.window.extracted.map(|band| band.place(self.counted).side) {
            None | Some(Side::Inside) => Direction::Leave,
            Some(Side::Below) => Direction::More,
            Some(Side::Above) => Direction::Less,
        }
    }
}

/// The next brew, made as this one was.
struct Next<'a> {
    intended: Intended,
    means: &'a Means,
    wanted: Strength,
    window: &'a Window,
}

impl<'a> Next<'a> {
    fn of(
        cup: &Cup,
        straying: &Straying,
        means: &'a Means,
        wanted: Strength,
        window: &'a Window,
    ) -> Result<Self, Error> {
        let brew = &cup.brew;
        // All that was kept is laid to the grounds: their share cannot be told from one brew.
        let unknown = Losses {
            retention: ApparentRetention::known(0.0),
            hold_up: HoldUp::NONE,
            paper: Paper::None,
            drips: Drips::NONE,
            vapour: brew.vapour,
        };
        let kept = retention::retention_of_brew(&unknown, brew.dose, brew.water, brew.beverage)?;
        let intended = Intended {
            dose: Estimate::with(brew.dose, straying.dose),
            water: Estimate::with(brew.water, straying.water),
            extracted: Estimate::with(
                cup.extracted.value,
                together(&[cup.extracted.standard(), straying.extracted])?,
            ),
            losses: Losses { retention: kept, ..unknown },
            retention: straying.retention,
            other: straying.other,
            moisture: brew.moisture,
            water_solids: brew.water_solids,
            held_strength: brew.held_strength,
            portion: Estimate::exact(brew.beverage),
            added: Estimate::exact(Addition::known(0.0)),
        };
        Ok(Self { intended, means, wanted, window })
    }

    /// What to expect of a brew.
    #[inline(never)]
    fn seen(
        &self,
        change: Change,
        amount: f64,
        before: f64,
        intended: &Intended,
    ) -> Result<Suggestion, Error> {
        let outlook = forecast::outlook(intended, self.window)?;
        Ok(Suggestion { change, amount, before, outlook })
    }

    /// A changed brew, if it is one and there is room for it.
    fn changed(
        &self,
        change: Change,
        amount: f64,
        before: f64,
        intended: &Intended,
    ) -> Option<Suggestion> {
        let room = self.means.chamber.is_none_or(|chamber| {
            let (dose, water) = (intended.dose.value.grams(), intended.water.value.grams());
            let density = water::density(self.means.water);
            let fill = ratio::fill_ml(dose, water, density, chamber.displacement);
            fill <= just_above(chamber.volume.millilitres())
        });
        if amount == before || !room {
            return None;
        }
        self.seen(change, amount, before, intended).ok()
    }

    /// The dose alone.
    fn other_dose(&self) -> Option<Suggestion> {
        let now = self.intended.dose;
        let dose: Dose = Measure::accept(self.intended.dose_for(self.wanted))?;
        let intended = Intended { dose: Estimate { value: dose, ..now }, ..self.intended };
        self.changed(Change::Dose, dose.grams(), now.value.grams(), &intended)
    }

    /// The water alone.
    fn other_water(&self) -> Option<Suggestion> {
        let now = self.intended.water;
        let water: BrewWater = Measure::accept(self.intended.water_for(self.wanted))?;
        let intended = Intended { water: Estimate { value: water, ..now }, ..self.intended };
        self.changed(Change::Water, water.grams(), now.value.grams(), &intended)
    }

    /// The time alone, by rates whose level is moved so that they give this cup's yield.
    fn other_time(&self, kinetics: &Kinetics, contact: Time) -> Option<Suggestion> {
        let now = self.intended.extracted;
        let aim = match self.window.extracted {
            Some(band) => self.intended.yield_for_counted(Measure::accept(band.centre())?)?,
            None => self.intended.yield_for(self.wanted),
        };
        let extracted: Yield = Measure::accept(aim)?;
        let by_rates = extraction::yield_at_time(kinetics, contact).percent();
        let level = kinetics.equilibrium.percent() * now.value.percent() / by_rates;
        let moved = Kinetics { equilibrium: Measure::accept(level)?, ..*kinetics };
        let time = extraction::time_for_yield(&moved, extracted).ok()?;
        // What is relative stays so.
        let u = now.u.percent() * extracted.percent() / now.value.percent();
        let extracted = Estimate { value: extracted, u: Measure::accept(u)?, ..now };
        let intended = Intended { extracted, ..self.intended };
        self.changed(Change::Time, time.seconds(), contact.seconds(), &intended)
    }
}
