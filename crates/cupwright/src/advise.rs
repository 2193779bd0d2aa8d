//! What to do to a judged cup now, and what to change in the next brew.
//!
//! Each suggestion says what strength, yield and size to expect, how surely they land in the window, and
//! what it takes for granted. They come in the order of their chance less what the change costs.
//!
//! A grind has no number that holds for two grinders, and published evidence gives no rate for
//! temperature (extraction of full steeps was the same from 80 to 99 °C: Liang, Chan & Ristenpart 2021,
//! doi 10.1038/s41598-021-85787-1). Of both there is only the [`Direction`].

use crate::decision::{self, Decision};
use crate::dilution;
use crate::error::Error;
use crate::extraction::{self, Balance, Brew, Kinetics};
use crate::forecast::{self, Intended, Outlook, Straying};
use crate::math::{just_above, max, min, square};
use crate::quantity::{
    Addition, ApparentRetention, BrewWater, Confidence, Correlation, Dose, Drips, HoldUp,
    MassUncertainty, Measure, Probability, Strength, Temperature, Time, WaterSolids, Yield,
    YieldUncertainty, computed,
};
use crate::ratio::{self, Chamber};
use crate::record::record;
use crate::retention::{self, Losses, Paper};
use crate::uncertainty::Rates;
use crate::uncertainty::{Estimate, Input, Standard, together};
use crate::verdict::{Counting, Window};
use crate::water;

/// Points of chance that a change by the whole of what it changes has to be worth, so that a tenth more
/// coffee is worth one: a convention chosen here.
const COST_OF_CHANGE: f64 = 10.0;

/// What the chance of the strength alone counts beside that of landing: a convention chosen here.
const WORTH_OF_STRENGTH: f64 = 0.1;

/// Points of chance that are no difference: a convention chosen here.
const HAIR: f64 = 1.0;

/// A relative change below which nothing changes: no brew is weighed or timed so well.
const LEAST_CHANGE: f64 = 1e-3;

/// Relative standard uncertainty of the yield for a change of dose or water by the whole: 10 % more coffee makes
/// a yield of 20 % uncertain by half a point. Estimate.
pub const YIELD_DOUBT_OF_CHANGE: f64 = 0.25;

/// Yields of the band that a change of time aims at, evenly spread.
const AIMS: u8 = 7;

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
    /// What a brewer keeps, from one's own brews ([`crate::calibrate::retention_line`]).
    pub struct Kept {
        /// Apparent retention of the grounds.
        retention: ApparentRetention = "apparent_retention_g_per_g",
        /// What stays in it whatever the dose: chamber, paper and drips.
        hold_up: HoldUp = "hold_up_g",
    }
}

record! {
    /// What can be done, and what is known of it.
    pub struct Means {
        /// How fast the coffee extracts, from one's own brews ([`crate::calibrate`]); without it no time
        /// is suggested.
        rates: Option<Rates> = "rates",
        /// What the brewer is known to keep; without it the grounds are taken to keep all that this
        /// brew lost but its vapour.
        kept: Option<Kept> = "kept",
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
    /// The next brew, the time of contact and the dose: as for each.
    TimeWithDose = 8,
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
        /// The new dose where it changes with the time, g; else zero.
        with_dose: f64 = "with_dose_g",
        /// What to expect.
        outlook: Outlook = "outlook",
    }
}

impl Suggestion {
    /// How large the change is, relative; of an addition, to the beverage.
    fn size(&self, brew: &Brew) -> f64 {
        let whole = if self.before > 0.0 { self.before } else { brew.beverage.grams() };
        let dose = brew.dose.grams();
        let with = if self.with_dose > 0.0 { (self.with_dose - dose).abs() / dose } else { 0.0 };
        (self.amount - self.before).abs() / whole + with
    }

    /// Points that order it among others.
    fn score(&self, brew: &Brew) -> f64 {
        let outlook = &self.outlook;
        outlook.inside.percent() + WORTH_OF_STRENGTH * outlook.strength_inside.percent()
            - COST_OF_CHANGE * self.size(brew)
    }

    /// Whether it lands as surely as leaving things alone, or all but.
    fn lands_like(&self, alone: Probability) -> bool {
        self.outlook.inside.percent() >= alone.percent() - HAIR
    }

    /// The better of two.
    fn better(self, other: Self, brew: &Brew) -> Self {
        if other.score(brew) > self.score(brew) { other } else { self }
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
    /// Leave it: the yield lies in its band as surely as asked, or the window has none.
    Leave = 1,
    /// Extract more: grind finer. Hotter water may do it too; at which rate nobody has published.
    More = 2,
    /// Extract less: grind coarser. Cooler water may do it too; at which rate nobody has published.
    Less = 3,
    /// Read again first: at the confidence asked for it is not decided where the yield lies.
    NotYetDecided = 4,
    /// Nothing to say: the window does not state how it counts its yield, and only the strength was judged.
    CountingNotStated = 5,
}

/// Most suggestions for one cup.
pub const MOST_SUGGESTIONS: usize = 8;

/// What to do about a cup.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Advice {
    /// Which way to turn the grind.
    pub grind: Direction,
    /// Why nothing is said of the next brew, where nothing is.
    pub untold: Option<Error>,
    suggestions: [Option<Suggestion>; MOST_SUGGESTIONS],
}

impl Advice {
    /// Nothing.
    pub const NONE: Self =
        Self { grind: Direction::Leave, untold: None, suggestions: [None; MOST_SUGGESTIONS] };

    /// What can be done, the best first.
    pub fn suggestions(&self) -> impl Iterator<Item = &Suggestion> {
        self.suggestions.iter().flatten()
    }
}

/// What to do about a cup: now, and next time.
///
/// Suggested are the cup as it is; water, or milk, that brings it down to `wanted`; the same brew again;
/// the dose alone and the water alone that make the next brew `wanted` strong; and, where rates are known,
/// a time alone and, where no change alone comes within a point of it, a time with a dose that makes it `wanted`.
/// A time aims at the best of seven yields spread over the band, or without a band at `wanted`. Yields are counted
/// as the window does; where it does not state how, they are not judged, and [`Direction::CountingNotStated`]
/// says so.
///
/// Not suggested is what would leave the chamber or the range of a quantity, what changes less than a
/// thousandth, what lands more than a point less surely than leaving things alone, and a next brew that lands
/// less than once in a hundred times: then only the grind is left.
///
/// ```text
/// score = P(inside) + 0.1 P(strength inside) − 10 |change|     orders them; in points, change relative
/// u(E)/E += 0.25 |change of dose or water|                     in squares: another ratio extracts otherwise
/// u(E)/E += u(ln E(t')/E(t))                                   in squares: the rates, tied to this cup
/// ```
///
/// Symbols: P chances, E yield, t and t' time of contact before and after, u standard
/// uncertainties. Source: convention chosen here for the order; the doubt of a change is an
/// estimate.
///
/// The first is a convention chosen here, the second an estimate ([`YIELD_DOUBT_OF_CHANGE`]).
///
/// # Errors
/// [`Error::OutOfRange`] for a strength wanted outside the window; [`Error::ResultOutOfRange`] for a yield, or an
/// uncertainty, past its range. What is wrong with the next brew alone stands in [`Advice::untold`].
///
/// ```
/// # use cupwright::{advise::{self, Change, *}, extraction::Brew, forecast::Straying, quantity::*, uncertainty::*, verdict};
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
///     rates: None,
///     kept: None,
///     chamber: None,
///     water: Temperature::from_celsius(92.0)?,
///     milk: false,
/// };
/// let window = verdict::HOME_BREWER_2018.window;
/// let wanted = Strength::from_percent(1.30)?;
/// let sure = Confidence::from_percent(95.0)?;
/// let advice = advise::on(&cup, &straying, &means, wanted, &window, sure)?;
/// let first = advice.suggestions().next().unwrap();
/// assert_eq!(first.change, Change::AddWater);
/// assert_eq!(format!("{:.0} g", first.amount), "27 g");
/// assert_eq!(format!("{:.0}", first.outlook.inside), "100 %");
/// let next = advice.suggestions().find(|s| s.change == Change::Dose).unwrap();
/// assert_eq!(format!("{:.1} g for {:.1} g", next.amount, next.before), "12.1 g for 14.0 g");
/// assert_eq!(format!("{:.0}", next.outlook.inside), "96 %");
/// assert_eq!(advice.grind, Direction::Leave);
/// # Ok::<(), cupwright::Error>(())
/// ```
pub fn on(
    cup: &Cup,
    straying: &Straying,
    means: &Means,
    wanted: Strength,
    window: &Window,
    confidence: Confidence,
) -> Result<Advice, Error> {
    let mut advice = Advice::NONE;
    on_into(&mut advice, cup, straying, means, wanted, window, confidence)?;
    Ok(advice)
}

/// As [`on`], into an advice that is there already: for stacks that have no room for two.
///
/// # Errors
/// As [`on`]; what is in the advice then is nobody's.
pub fn on_into(
    advice: &mut Advice,
    cup: &Cup,
    straying: &Straying,
    means: &Means,
    wanted: Strength,
    window: &Window,
    confidence: Confidence,
) -> Result<(), Error> {
    window.admit(wanted)?;
    *advice = Advice::NONE;
    let counted = Now::of(cup, straying, window)?.tell(means.milk, wanted, advice)?;
    advice.grind = grind(&counted, window, confidence);
    advice.untold = Next::tell(cup, straying, means, wanted, window, advice).err();
    Ok(())
}

/// Which way to turn the grind for a yield.
fn grind(counted: &Estimate<Yield>, window: &Window, confidence: Confidence) -> Direction {
    match window.judged().map(|band| decision::decide(counted, band, confidence)) {
        None if window.extracted.is_some() => Direction::CountingNotStated,
        None | Some(Decision::Inside) => Direction::Leave,
        Some(Decision::Below) => Direction::More,
        Some(Decision::Above) => Direction::Less,
        Some(Decision::NotYet | Decision::TooUncertain) => Direction::NotYetDecided,
    }
}

impl Advice {
    /// Puts a suggestion in its place, what is equal as it was made; its score.
    #[inline(never)]
    fn offer(&mut self, suggestion: &Suggestion, brew: &Brew) -> f64 {
        let score = suggestion.score(brew);
        let (mut carried, mut placed) = (Some(*suggestion), false);
        for slot in &mut self.suggestions {
            // Once it has its place, all behind it move on by one.
            placed = placed || slot.is_none_or(|other| score > other.score(brew));
            if placed {
                core::mem::swap(slot, &mut carried);
            }
        }
        score
    }
}

/// The cup as it stands.
struct Now<'a> {
    cup: &'a Cup,
    straying: &'a Straying,
    window: &'a Window,
    /// Yield as the chart counts it.
    by_chart: Yield,
}

impl<'a> Now<'a> {
    fn of(cup: &'a Cup, straying: &'a Straying, window: &'a Window) -> Result<Self, Error> {
        let brew = &cup.brew;
        let strength = cup.strength.value;
        let by_chart = extraction::flow_through_yield(strength, brew.beverage, brew.dose)?;
        Ok(Self { cup, straying, window, by_chart })
    }

    /// The cup as it is, and with what brings it down to a strength; its yield as the window counts it.
    #[inline(never)]
    fn tell(
        &self,
        milk: bool,
        wanted: Strength,
        advice: &mut Advice,
    ) -> Result<Estimate<Yield>, Error> {
        let brew = &self.cup.brew;
        let as_it_is = self.as_it_is()?;
        let Outlook { inside, counted, .. } = as_it_is.outlook;
        advice.offer(&as_it_is, brew);
        let mut offer = |added: Option<Suggestion>| {
            if let Some(s) = added.filter(|s| s.lands_like(inside)) {
                advice.offer(&s, brew);
            }
        };
        offer(self.added(Change::AddWater, wanted, brew.water_solids));
        if milk {
            offer(self.added(Change::AddMilk, wanted, WaterSolids::NONE));
        }
        Ok(counted)
    }

    fn as_it_is(&self) -> Result<Suggestion, Error> {
        self.with(Change::DrinkAsItIs, Estimate::exact(Addition::known(0.0)), WaterSolids::NONE)
    }

    /// Brought down to a strength; none where it is not above that.
    fn added(&self, change: Change, wanted: Strength, solids: WaterSolids) -> Option<Suggestion> {
        let beverage = self.cup.brew.beverage;
        let added =
            dilution::water_to_reach(beverage, self.cup.strength.value, wanted, solids).ok()?;
        if added.grams() <= LEAST_CHANGE * beverage.grams() {
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
        let (counted, correlation) = match self.window.counting {
            Counting::MassBalance => {
                (cup.extracted, self.correlation(b / (b + a), strength.u.percent()))
            }
            _ => (
                forecast::linear(self.by_chart, &of_counted)?,
                forecast::correlation(&of_strength, &of_counted),
            ),
        };
        let outlook = Outlook::of(self.window, size, strength, counted, correlation);
        Ok(Suggestion { change, amount: a, before: 0.0, with_dose: 0.0, outlook })
    }
}

impl Now<'_> {
    /// How far the drink's strength and the yield by the whole balance go together: both share the reading, a
    /// share of which is in the drink. What they share by the weighings is far less and not counted.
    fn correlation(&self, share: f64, u_strength: f64) -> Correlation {
        let Cup { brew, strength, extracted, .. } = self.cup;
        let balance = Balance::of(brew);
        let coffee = extracted.value.fraction() * brew.dose.grams();
        let by_strength = balance.by_strength(strength.value.fraction() - balance.solids, coffee);
        let shared = share * by_strength * square(strength.u.percent());
        let apart = u_strength * extracted.u.percent();
        // A yield told surer than its strength allows cannot have come from it.
        Correlation::known(if apart > 0.0 { max(-1.0, min(1.0, shared / apart)) } else { 0.0 })
    }
}

/// The next brew, made as this one was.
struct Next<'a> {
    cup: &'a Cup,
    intended: Intended,
    means: &'a Means,
    wanted: Strength,
    window: &'a Window,
}

impl<'a> Next<'a> {
    fn of(
        cup: &'a Cup,
        straying: &Straying,
        means: &'a Means,
        wanted: Strength,
        window: &'a Window,
    ) -> Result<Self, Error> {
        let brew = &cup.brew;
        let intended = Intended {
            dose: Estimate::with(brew.dose, straying.dose),
            water: Estimate::with(brew.water, straying.water),
            extracted: Estimate::with(
                cup.extracted.value,
                together(&[cup.extracted.standard(), straying.extracted])?,
            ),
            losses: losses(brew, means.kept)?,
            retention: straying.retention,
            other: straying.other,
            moisture: brew.moisture,
            water_solids: brew.water_solids,
            held_strength: brew.held_strength,
            portion: Estimate::exact(brew.beverage),
            added: Estimate::exact(Addition::known(0.0)),
        };
        Ok(Self { cup, intended, means, wanted, window })
    }

    /// The same again, and what lands as surely.
    #[inline(never)]
    fn tell(
        cup: &Cup,
        straying: &Straying,
        means: &Means,
        wanted: Strength,
        window: &Window,
        advice: &mut Advice,
    ) -> Result<(), Error> {
        let next = Next::of(cup, straying, means, wanted, window)?;
        let brew = &cup.brew;
        let again = next.seen(Change::SameAgain, 0.0, 0.0, &next.intended)?;
        let alone = again.outlook.inside;
        advice.offer(&again, brew);
        // Two changes for one have to be worth it.
        let mut best = f64::NEG_INFINITY;
        let mut offer = |changed: Option<Suggestion>, least: f64| {
            let lands = |s: &Suggestion| s.lands_like(alone) && s.outlook.inside.percent() >= HAIR;
            changed
                .filter(|s| lands(s) && s.score(brew) > least)
                .map_or(f64::NEG_INFINITY, |s| advice.offer(&s, brew))
        };
        best = max(best, offer(next.other_dose(), f64::NEG_INFINITY));
        best = max(best, offer(next.other_water(), f64::NEG_INFINITY));
        best = max(best, offer(next.other_time(Change::Time), f64::NEG_INFINITY));
        offer(next.other_time(Change::TimeWithDose), best + HAIR);
        Ok(())
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
        let with_dose =
            if change == Change::TimeWithDose { intended.dose.value.grams() } else { 0.0 };
        Ok(Suggestion { change, amount, before, with_dose, outlook })
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
        if (amount - before).abs() <= LEAST_CHANGE * before || !room {
            return None;
        }
        self.seen(change, amount, before, intended).ok()
    }

    /// The dose alone.
    #[inline(never)]
    fn other_dose(&self) -> Option<Suggestion> {
        let now = self.intended.dose.value.grams();
        let mut brew = self.intended;
        self.change_dose(&mut brew, self.intended.dose_for(self.wanted))?;
        self.changed(Change::Dose, brew.dose.value.grams(), now, &brew)
    }

    /// Gives a brew another dose, g, and its yield the doubt of that.
    fn change_dose(&self, brew: &mut Intended, dose: f64) -> Option<()> {
        let now = self.intended.dose.value.grams();
        brew.dose.value = Dose::accept(dose)?;
        let doubt = YIELD_DOUBT_OF_CHANGE * (brew.dose.value.grams() / now - 1.0).abs();
        brew.extracted = straying_more(brew.extracted, doubt)?;
        Some(())
    }

    /// The water alone.
    #[inline(never)]
    fn other_water(&self) -> Option<Suggestion> {
        let (now, extracted) = (self.intended.water, self.intended.extracted);
        let value = BrewWater::accept(self.intended.water_for(self.wanted))?;
        let before = now.value.grams();
        let doubt = YIELD_DOUBT_OF_CHANGE * (value.grams() / before - 1.0).abs();
        let extracted = straying_more(extracted, doubt)?;
        let intended = Intended { water: Estimate { value, ..now }, extracted, ..self.intended };
        self.changed(Change::Water, value.grams(), before, &intended)
    }

    /// The best of the times, alone or with a dose, that give the yields of the band.
    #[inline(never)]
    fn other_time(&self, change: Change) -> Option<Suggestion> {
        let Some(band) = self.window.judged() else { return self.at_yield(change, None) };
        let (lowest, highest) = (band.lowest().percent(), band.highest().percent());
        let step = (highest - lowest) / f64::from(AIMS + 1);
        let mut best: Option<Suggestion> = None;
        for aim in 1..=AIMS {
            let counted = Yield::accept(lowest + step * f64::from(aim));
            if let Some(other) = self.at_yield(change, counted) {
                best = Some(best.map_or(other, |best| best.better(other, &self.cup.brew)));
            }
        }
        best
    }

    /// The time that gives a yield as the window counts it, or else the strength wanted; with the dose that gives both.
    fn at_yield(&self, change: Change, counted: Option<Yield>) -> Option<Suggestion> {
        let mut brew = self.intended;
        let counting = self.window.counting;
        let extracted = match (change, counted) {
            (Change::TimeWithDose, counted) => {
                let dose = brew.dose_for_counted(counted?, counting, self.wanted);
                self.change_dose(&mut brew, dose)?;
                brew.yield_for(self.wanted)
            }
            (_, Some(counted)) => brew.yield_for_counted(counted, counting)?,
            (_, None) => brew.yield_for(self.wanted),
        };
        self.in_time(change, &mut brew, extracted)
    }

    /// The time in which a brew extracts so much, %, by rates whose level is moved so that they give this cup's
    /// yield.
    fn in_time(&self, change: Change, brew: &mut Intended, extracted: f64) -> Option<Suggestion> {
        let (rates, contact) = (self.means.rates?, self.cup.contact);
        let (now, extracted) = (brew.extracted, Yield::accept(extracted)?);
        let by_rates = extraction::yield_at_time(&rates.kinetics, contact).percent();
        let level = rates.kinetics.equilibrium.percent() * now.value.percent() / by_rates;
        let moved = Kinetics { equilibrium: Measure::accept(level)?, ..rates.kinetics };
        let time = extraction::time_for_yield(&moved, extracted).ok()?;
        // What is relative stays so.
        let ratio = extracted.percent() / now.value.percent();
        let level = Standard { u: Measure::accept(now.u.percent() * ratio)?, ..now.standard() };
        let of_rates = Standard {
            u: Measure::accept(rates.u_of_ratio(contact, time) * extracted.percent())?,
            freedom: rates.freedom,
        };
        brew.extracted = Estimate::with(extracted, together(&[level, of_rates]).ok()?);
        self.changed(change, time.seconds(), contact.seconds(), brew)
    }
}

/// A yield that may stray by so much more, relative.
fn straying_more(extracted: Estimate<Yield>, by: f64) -> Option<Estimate<Yield>> {
    let u = YieldUncertainty::accept(extracted.value.percent() * by)?;
    let all = together(&[extracted.standard(), Standard::known(u)]).ok()?;
    Some(Estimate::with(extracted.value, all))
}

/// What a brewer keeps of the next brew; where that is not known, what this one kept is laid to the
/// grounds but for the vapour, since their share cannot be told from it.
fn losses(brew: &Brew, kept: Option<Kept>) -> Result<Losses, Error> {
    let Kept { retention, hold_up } =
        kept.unwrap_or(Kept { retention: ApparentRetention::known(0.0), hold_up: HoldUp::NONE });
    let vapour = brew.vapour;
    let known = Losses { retention, hold_up, paper: Paper::None, drips: Drips::NONE, vapour };
    if kept.is_some() {
        return Ok(known);
    }
    let retention = retention::retention_of_brew(&known, brew.dose, brew.water, brew.beverage)?;
    Ok(Losses { retention, ..known })
}
