//! The mass balance of a brew, both ways; the equilibrium of a steep; extraction with time.
//!
//! # The balance
//!
//! What dissolves is either in the cup or in the liquid that the grounds keep. With
//!
//! | symbol | quantity |
//! |---|---|
//! | D, h | dose as weighed, its moisture |
//! | W, s | brew water, its own solids |
//! | B, T | beverage, its strength (all solids) |
//! | V | vapour lost |
//! | φ | held strength: that of the kept liquid over the beverage's; 0 flowed through, 1 steeped |
//! | E | yield per dose |
//!
//! and τ = T − s (solids that came from coffee), Q = W + hD − V − B (water that did not reach the
//! cup), conservation of water and solids gives
//!
//! ```text
//! E = [ τ(B + φQ) + s(hD − V) ] / [ D(1 − s − φτ) ]
//! L = Q + E D     the liquid kept
//! ```
//!
//! The only assumption is φ. Its two ends are the trade's two formulas, for percolation
//! ([`flow_through_yield`], TB/D) and for immersion ([`steeped_yield`], (W/D) T/(1−T)). For one and the same cup they differ by up to three points of
//! yield, which is more than any instrument's error, so a yield always belongs to its φ. Derived
//! from conservation alone; checked in `tests/vectors` against the conservation equations solved in
//! 50 digits, and against published arithmetic.

use crate::error::{Error, Limit};
use crate::math::{exp, just_below, ln, ln_one_plus, one_minus_exp_minus};
use crate::quantity::{
    Beverage, BrewWater, Dose, HeldStrength, Measure, Moisture, Quantity, Retained, Share,
    Strength, Time, TimeConstant, TrueRetention, Vapour, WaterRatio, WaterSolids, Yield, computed,
};
use crate::record::record;

record! {
    /// The masses of a brew and what is known of its coffee and water.
    pub struct Brew {
        /// Dose D as weighed.
        dose: Dose = "dose_g",
        /// Brew water W.
        water: BrewWater = "water_g",
        /// Beverage B.
        beverage: Beverage = "beverage_g",
        /// Moisture h of the dose.
        moisture: Moisture = "moisture_pct",
        /// Solids s of the brew water.
        water_solids: WaterSolids = "water_solids_mg_per_l",
        /// Vapour V lost.
        vapour: Vapour = "vapour_g",
        /// Strength φ of the liquid kept, relative to the beverage.
        held_strength: HeldStrength = "held_strength_pct",
    }
}

/// The numbers of a [`Brew`] as the equations use them, not checked.
pub(crate) struct Balance {
    pub(crate) dose: f64,
    pub(crate) beverage: f64,
    /// Water of the beans less vapour, hD − V.
    pub(crate) bean_water: f64,
    /// Q, water that did not reach the cup.
    pub(crate) missing: f64,
    pub(crate) solids: f64,
    pub(crate) held: f64,
}

impl Balance {
    pub(crate) fn of(brew: &Brew) -> Self {
        let dose = brew.dose.grams();
        let beverage = brew.beverage.grams();
        let bean_water = brew.moisture.fraction() * dose - brew.vapour.grams();
        Self {
            dose,
            beverage,
            bean_water,
            missing: brew.water.grams() + bean_water - beverage,
            solids: brew.water_solids.fraction(),
            held: brew.held_strength.fraction(),
        }
    }

    /// Yield in percent of a brew whose solids from coffee are τ.
    pub(crate) fn extracted(&self, tau: f64) -> f64 {
        let dissolved =
            tau * (self.beverage + self.held * self.missing) + self.solids * self.bean_water;
        100.0 * dissolved / (self.dose * (1.0 - self.solids - self.held * tau))
    }

    /// Solids from coffee τ of a brew that gave so much coffee, g.
    pub(crate) fn coffee_solids(&self, coffee: f64) -> f64 {
        (coffee * (1.0 - self.solids) - self.solids * self.bean_water)
            / (self.beverage + self.held * (self.missing + coffee))
    }

    /// ∂E/∂T of a brew whose solids from coffee are τ, and that gave so much coffee, g.
    pub(crate) fn by_strength(&self, tau: f64, coffee: f64) -> f64 {
        (self.beverage + self.held * (self.missing + coffee))
            / (self.dose * (1.0 - self.solids - self.held * tau))
    }

    /// The most beverage of a strength, with nothing kept: B = W + hD − V + x and x + sW = T B.
    fn most(&self, brew: &Brew, strength: Strength) -> f64 {
        let all_water = brew.water.grams() * (1.0 - self.solids) + self.bean_water;
        all_water / (1.0 - strength.fraction())
    }

    /// Refuses a beverage larger than `most`, where nothing at all would be kept.
    fn accept(&self, brew: &Brew, most: f64) -> Result<(), Error> {
        if self.beverage <= most {
            return Ok(());
        }
        Err(Error::Impossible {
            quantity: Quantity::BrewWater,
            value: brew.water.grams(),
            lowest: brew.water.grams() + self.beverage - most,
            highest: Quantity::BrewWater.highest(),
            beside: Quantity::Beverage,
        })
    }
}

/// Yield E of a brew from its strength.
///
/// ```text
/// E = [ τ(B + φQ) + s(hD − V) ] / [ D(1 − s − φτ) ]
/// ```
///
/// Symbols: see the [module](self). Source: conservation of water and solids.
///
/// The strength counts all solids, those of the water too:
/// [`crate::reading::total_strength`] makes it from a reading.
///
/// # Errors
/// [`Error::Impossible`] for less water than such a beverage takes, or for a strength below that of
/// the water itself; [`Error::ResultOutOfRange`] for a yield above 100 %, or below zero where vapour has
/// made the water's own minerals that strong.
///
/// ```
/// # use cupwright::{extraction::{self, Brew}, quantity::*};
/// let brew = Brew {
///     dose: Dose::from_grams(15.0)?,
///     water: BrewWater::from_grams(200.0)?,
///     beverage: Beverage::from_grams(172.0)?,
///     moisture: Moisture::from_percent(2.0)?,
///     water_solids: WaterSolids::from_milligrams_per_litre(80.0)?,
///     vapour: Vapour::from_grams(2.0)?,
///     held_strength: HeldStrength::STEEPED,
/// };
/// let extracted = extraction::extraction_yield(&brew, Strength::from_percent(1.44)?)?;
/// assert_eq!(extracted.to_string(), "19.21 %");
/// # Ok::<(), cupwright::Error>(())
/// ```
pub fn extraction_yield(brew: &Brew, strength: Strength) -> Result<Yield, Error> {
    let b = Balance::of(brew);
    let tau = coffee_solids(strength, brew.water_solids)?;
    b.accept(brew, b.most(brew, strength))?;
    computed(b.extracted(tau))
}

/// [`extraction_yield`] in percent, not checked; NaN for what cannot be.
pub(crate) fn extracted_percent(brew: &Brew, strength: Strength) -> f64 {
    let b = Balance::of(brew);
    let tau = tau_of(strength, brew.water_solids);
    let extracted = b.extracted(tau);
    let can_be = (tau >= 0.0) & (b.beverage <= b.most(brew, strength));
    if can_be { extracted } else { f64::NAN }
}

/// Solids from coffee τ = T − s, below zero where the water alone is stronger than the beverage.
fn tau_of(strength: Strength, water: WaterSolids) -> f64 {
    strength.fraction() - water.fraction()
}

/// τ, refused where the water alone is stronger than the beverage.
fn coffee_solids(strength: Strength, water: WaterSolids) -> Result<f64, Error> {
    let tau = tau_of(strength, water);
    if tau < 0.0 {
        return Err(Error::weaker_than_its_water(strength, 100.0 * water.fraction()));
    }
    Ok(tau)
}

/// Strength T of a brew from its yield: the inverse of [`extraction_yield`].
///
/// ```text
/// τ = [ E D(1 − s) − s(hD − V) ] / [ B + φQ + φE D ],   T = τ + s
/// ```
///
/// Symbols: see the [module](self). Source: conservation of water and solids.
///
/// # Errors
/// [`Error::Impossible`] for less water than such a beverage takes;
/// [`Error::ResultOutOfRange`] outside the range of [`Strength`].
pub fn strength(brew: &Brew, extracted: Yield) -> Result<Strength, Error> {
    let b = Balance::of(brew);
    let coffee = extracted.fraction() * b.dose;
    b.accept(brew, b.missing + b.beverage + coffee)?;
    computed(100.0 * (b.coffee_solids(coffee) + b.solids))
}

/// Beverage B that a brew must have given, from its strength and yield: the third way round.
/// The beverage in `brew` is not used.
///
/// ```text
/// B = { [ E D(1 − s − φτ) − s(hD − V) ]/τ − φ(W + hD − V) } / (1 − φ)
/// ```
///
/// Symbols: see the [module](self). Source: conservation of water and solids.
///
/// # Errors
/// [`Error::OutOfRange`] for a held strength of 100 %: a steeped brew is as strong everywhere, so
/// its strength says nothing of how much was drained. [`Error::Impossible`] for a strength not above
/// the water's own, or where the water does not suffice for so weak a beverage;
/// [`Error::ResultOutOfRange`] outside the range of [`Beverage`].
pub fn beverage(brew: &Brew, strength: Strength, extracted: Yield) -> Result<Beverage, Error> {
    let held = brew.held_strength.fraction();
    if held >= 1.0 {
        return Err(Error::OutOfRange {
            quantity: Quantity::HeldStrength,
            value: brew.held_strength.percent(),
            lowest: Quantity::HeldStrength.lowest(),
            highest: 100.0_f64.next_down(),
        });
    }
    let tau = coffee_solids(strength, brew.water_solids)?;
    let s = brew.water_solids.fraction();
    if tau == 0.0 {
        return Err(Error::weaker_than_its_water(strength, (100.0 * s).next_up()));
    }
    let dose = brew.dose.grams();
    let bean_water = brew.moisture.fraction() * dose - brew.vapour.grams();
    let coffee = extracted.fraction() * dose * (1.0 - s - held * tau) - s * bean_water;
    let all = (coffee / tau - held * (brew.water.grams() + bean_water)) / (1.0 - held);
    let drained = computed(all)?;
    retained_liquid(&Brew { beverage: drained, ..*brew }, extracted)?;
    Ok(drained)
}

/// Liquid kept by grounds, paper and chamber, its dissolved coffee included.
///
/// ```text
/// L = Q + E D
/// ```
///
/// Symbols: L liquid kept; the others, see the [module](self). Source: conservation of water and
/// solids.
///
/// # Errors
/// [`Error::Impossible`] for less water than such a beverage takes.
pub fn retained_liquid(brew: &Brew, extracted: Yield) -> Result<Retained, Error> {
    let b = Balance::of(brew);
    let coffee = extracted.fraction() * b.dose;
    b.accept(brew, b.missing + b.beverage + coffee)?;
    computed(b.missing + coffee)
}

/// The flow-through form of the yield: kept liquid is plain water, no other corrections.
///
/// ```text
/// E = T B/D
/// ```
///
/// Symbols: E yield, T strength, B beverage, D dose. Source: conservation of solids; the form of
/// the SCAA brewing control chart.
///
/// The balance with φ = h = s = V = 0. The form of the published brewing control chart; right for a
/// long drip, low for a steep.
///
/// # Errors
/// [`Error::ResultOutOfRange`] for a yield above 100 %.
pub fn flow_through_yield(
    strength: Strength,
    beverage: Beverage,
    dose: Dose,
) -> Result<Yield, Error> {
    computed(flow_through_percent(strength, beverage, dose))
}

/// [`flow_through_yield`] in percent, not checked.
pub(crate) fn flow_through_percent(strength: Strength, beverage: Beverage, dose: Dose) -> f64 {
    strength.percent() * beverage.grams() / dose.grams()
}

/// Strength from the flow-through form: the inverse of [`flow_through_yield`].
///
/// ```text
/// T = E D/B
/// ```
///
/// Symbols: T strength, E yield, D dose, B beverage. Source: conservation of solids; the form of
/// the SCAA brewing control chart.
///
/// # Errors
/// [`Error::ResultOutOfRange`] outside the range of [`Strength`].
pub fn flow_through_strength(
    extracted: Yield,
    beverage: Beverage,
    dose: Dose,
) -> Result<Strength, Error> {
    computed(flow_through_strength_percent(extracted, beverage, dose))
}

/// [`flow_through_strength`] in percent, not checked.
pub(crate) fn flow_through_strength_percent(
    extracted: Yield,
    beverage: Beverage,
    dose: Dose,
) -> f64 {
    extracted.percent() * dose.grams() / beverage.grams()
}

/// The steeped form of the yield: all liquid is as strong as the beverage.
///
/// ```text
/// E = (W/D) T/(1 − T)
/// ```
///
/// Symbols: E yield, W brew water, D dose, T strength. Source: conservation of solids.
///
/// The balance with φ = 1, h = s = V = 0; how much was drained does not matter. Right for a steep
/// that is stirred and then pressed or drained.
///
/// # Errors
/// [`Error::ResultOutOfRange`] for a yield above 100 %.
///
/// ```
/// # use cupwright::{extraction, quantity::*};
/// let extracted = extraction::steeped_yield(
///     Strength::from_percent(1.44)?,
///     BrewWater::from_grams(200.0)?,
///     Dose::from_grams(15.0)?,
/// )?;
/// assert_eq!(extracted.to_string(), "19.48 %");
/// # Ok::<(), cupwright::Error>(())
/// ```
pub fn steeped_yield(strength: Strength, water: BrewWater, dose: Dose) -> Result<Yield, Error> {
    computed(steeped_percent(strength, water, dose))
}

/// [`steeped_yield`] in percent, not checked.
pub(crate) fn steeped_percent(strength: Strength, water: BrewWater, dose: Dose) -> f64 {
    let t = strength.fraction();
    100.0 * water.grams() / dose.grams() * t / (1.0 - t)
}

/// Strength of a steep: the inverse of [`steeped_yield`] at a water ratio R.
///
/// ```text
/// T = E/(R + E)
/// ```
///
/// Symbols: T strength, E yield, R water ratio. Source: conservation of solids; Liang, Chan &
/// Ristenpart 2021 for the equilibrium.
///
/// At [`EQUILIBRIUM_YIELD`] this is the published equilibrium of a full steep: strength nearly
/// inverse to the ratio, yield independent of it (Liang, Chan & Ristenpart 2021,
/// doi 10.1038/s41598-021-85787-1; the equation follows from the paper's abstract).
///
/// # Errors
/// [`Error::ResultOutOfRange`] outside the range of [`Strength`].
pub fn steeped_strength(extracted: Yield, ratio: WaterRatio) -> Result<Strength, Error> {
    let e = extracted.fraction();
    computed(100.0 * e / (ratio.grams_per_gram() + e))
}

/// Water ratio at which a steep reaches a strength.
///
/// ```text
/// R = E(1 − T)/T
/// ```
///
/// Symbols: R water ratio, E yield, T strength. Source: conservation of solids.
///
/// # Errors
/// [`Error::ResultOutOfRange`] outside the range of [`WaterRatio`].
pub fn steeped_ratio(extracted: Yield, strength: Strength) -> Result<WaterRatio, Error> {
    let t = strength.fraction();
    // No strength takes water without end, of no yield too.
    computed(if t > 0.0 { extracted.fraction() * (1.0 - t) / t } else { f64::INFINITY })
}

/// Yield at which a full steep levels off: "approximately 21 % over a wide range of brew ratios",
/// 80 to 99 °C, any grind (Liang, Chan & Ristenpart 2021, abstract). One coffee's own may differ;
/// pass it instead where it is known.
pub const EQUILIBRIUM_YIELD: Yield = Yield::known(21.0);

/// Yield that oven-drying the spent grounds would show for a steep.
///
/// ```text
/// E' = E [ 1 − r/(R + E) ]
/// ```
///
/// Symbols: E' yield shown, E yield, r true retention, R water ratio.
///
/// The kept liquid dries into the grounds and its solids count as undissolved, so the oven reads
/// low: at R = 15 and r = 2 g/g, 18.2 % for 21 %. Assumes that nothing but water leaves in the oven.
/// Source: the effect is reported by Liang, Chan & Ristenpart 2021; the equation is the solids
/// balance.
///
/// # Errors
/// [`Error::ResultOutOfRange`] where more liquid is kept than there is.
pub fn oven_dried_yield(
    extracted: Yield,
    ratio: WaterRatio,
    retention: TrueRetention,
) -> Result<Yield, Error> {
    let liquid = ratio.grams_per_gram() + extracted.fraction();
    computed(extracted.percent() * (1.0 - retention.grams_per_gram() / liquid))
}

/// Yield per dry coffee from yield per coffee as weighed.
///
/// ```text
/// E' = E/(1 − h)
/// ```
///
/// Symbols: E' yield per dry coffee, E yield per coffee as weighed, h moisture. Source: definition.
///
/// # Errors
/// [`Error::ResultOutOfRange`] for a yield above 100 %.
pub fn dry_basis_yield(extracted: Yield, moisture: Moisture) -> Result<Yield, Error> {
    computed(extracted.percent() / (1.0 - moisture.fraction()))
}

/// Yield per coffee as weighed from yield per dry coffee: the inverse of [`dry_basis_yield`].
///
/// ```text
/// E = E'(1 − h)
/// ```
///
/// Symbols: E yield per coffee as weighed, E' yield per dry coffee, h moisture. Source: definition.
pub fn as_weighed_yield(dry_basis: Yield, moisture: Moisture) -> Yield {
    Yield::known(dry_basis.percent() * (1.0 - moisture.fraction()))
}

record! {
    /// How fast one coffee, at one grind and temperature, gives up what it can.
    ///
    /// A share dissolves fast from broken cells, the rest slowly from whole ones (the two mechanisms
    /// of Moroney et al. 2015, doi 10.1016/j.ces.2015.06.003). No published constants hold for every
    /// grinder, so there are no defaults: they come from a few brews of one's own.
    pub struct Kinetics {
        /// Yield E∞ that it levels off at.
        equilibrium: Yield = "equilibrium_yield_pct",
        /// Share f that dissolves fast. 100 % makes it a one-rate law.
        fast_share: Share = "fast_share_pct",
        /// Time constant τ1 of the fast part.
        fast: TimeConstant = "fast_time_s",
        /// Time constant τ2 of the slow part.
        slow: TimeConstant = "slow_time_s",
    }
}

/// Yield after a time of contact.
///
/// ```text
/// E(t) = E∞ [ f(1 − e^(−t/τ1)) + (1 − f)(1 − e^(−t/τ2)) ]
/// ```
///
/// Symbols: E∞ yield that it levels off at, f fast share, τ1 and τ2 time constants of both parts, t
/// time. Source: the two mechanisms of Moroney et al. 2015, doi 10.1016/j.ces.2015.06.003
/// (abstract); two exponentials for them are a convention chosen here.
///
/// Valid at the grind and temperature of the [`Kinetics`], stirred, with water in plenty.
pub fn yield_at_time(kinetics: &Kinetics, contact: Time) -> Yield {
    let f = kinetics.fast_share.fraction();
    let t = contact.seconds();
    let done = f * one_minus_exp_minus(t / kinetics.fast.seconds())
        + (1.0 - f) * one_minus_exp_minus(t / kinetics.slow.seconds());
    Yield::known(kinetics.equilibrium.percent() * done)
}

/// Time of contact after which a yield is reached: the inverse of [`yield_at_time`].
///
/// ```text
/// E∞ [ f(1 − e^(−t/τ1)) + (1 − f)(1 − e^(−t/τ2)) ] = E, solved for t
/// ```
///
/// Symbols: as for [`yield_at_time`]. Source: as [`yield_at_time`]: Moroney et al. 2015, doi
/// 10.1016/j.ces.2015.06.003 (abstract).
///
/// The logarithm of what is still to come is convex in time, so Newton's steps from t = 0 approach
/// from below and never overshoot; one rate takes a single step.
///
/// # Errors
/// [`Error::Infeasible`] for a yield that is not reached within the longest [`Time`].
pub fn time_for_yield(kinetics: &Kinetics, wanted: Yield) -> Result<Time, Error> {
    let longest = Time::known(Quantity::Time.highest());
    let most = just_below(yield_at_time(kinetics, longest).percent());
    if wanted.percent() > most {
        return Err(Error::Infeasible {
            wish: Quantity::Yield,
            value: wanted.percent(),
            nearest: most,
            limit: Limit::EquilibriumYield,
        });
    }
    if wanted.percent() == 0.0 {
        return computed(0.0);
    }
    computed(seconds_until(
        wanted.percent() / kinetics.equilibrium.percent(),
        kinetics.fast_share.fraction(),
        kinetics.fast.seconds(),
        kinetics.slow.seconds(),
    ))
}

/// Time until so much of the equilibrium yield, a fraction, is extracted, s; no number where it never is.
pub(crate) fn seconds_until(done: f64, f: f64, fast: f64, slow: f64) -> f64 {
    if done >= 1.0 {
        return f64::NAN;
    }
    // Near one a logarithm has no digits of how far from one: early, count what is gone, not what is left.
    let early = done < 0.5;
    let goal = ln_one_plus(-done);
    let mut t = 0.0;
    for _ in 0..MOST_NEWTON_STEPS {
        let gone = |tau: f64| if early { one_minus_exp_minus(t / tau) } else { 1.0 };
        let left = |tau: f64, gone: f64| if early { 1.0 - gone } else { exp(-t / tau) };
        let (gone_fast, gone_slow) = (gone(fast), gone(slow));
        let left_fast = f * left(fast, gone_fast);
        let left_slow = (1.0 - f) * left(slow, gone_slow);
        let left = left_fast + left_slow;
        let logarithm =
            if early { ln_one_plus(-(f * gone_fast + (1.0 - f) * gone_slow)) } else { ln(left) };
        let step = (logarithm - goal) * left / (left_fast / fast + left_slow / slow);
        let next = t + step;
        if next > t {
            t = next;
        } else {
            break;
        }
    }
    t
}

/// Far more than convergence needs (under ten in tests): only a bound for the proof that it ends.
const MOST_NEWTON_STEPS: u32 = 64;

/// How credible a yield is beside what coffee has been shown to give.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
#[non_exhaustive]
pub enum Credibility {
    /// Nothing speaks against it.
    Ordinary = 1,
    /// Within [`NEAR_LIMIT_POINTS`] of the published soluble limit: check the inputs.
    NearLimit = 2,
    /// Inside the range of soluble limits, 28 to 32 %: an input is probably wrong.
    AtLimit = 3,
    /// Above 32 %: an input is almost certainly wrong.
    BeyondLimit = 4,
}

/// Lowest published limit of what hot water dissolves from roasted coffee: 28 to 32 % for fine and
/// coarse grinds (trade-education text quoting "recent experiments"); "roughly 30 %" (ITC Coffee
/// Guide, Q&A 064).
pub const SOLUBLE_LIMIT_LOW: Yield = Yield::known(28.0);

/// Highest of the limits in that range; Lockhart 1957 is quoted with 32 %, and with 36, 30 and 29 % for
/// complete extraction of three origins.
pub const SOLUBLE_LIMIT_HIGH: Yield = Yield::known(32.0);

/// How near, in points of yield, counts as near the limit. Estimate.
pub const NEAR_LIMIT_POINTS: f64 = 2.0;

/// One input of a yield, and what it would have to be for the yield to be ordinary.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Doubt {
    /// The input.
    pub quantity: Quantity,
    /// The value entered, in the quantity's unit.
    pub entered: f64,
    /// The value at which the yield would fall to the upper end of what is ordinary, all other
    /// inputs as entered; `None` where no possible value does that.
    pub would_have_to_be: Option<f64>,
}

/// A yield with what there is to doubt about it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Plausibility {
    /// The yield of the inputs.
    pub extracted: Yield,
    /// How credible it is.
    pub credibility: Credibility,
    /// The inputs to doubt: strength, brew water, dose, held strength. None where the yield is
    /// ordinary.
    pub doubts: Option<[Doubt; 4]>,
}

/// The yield of a brew, judged: a yield near or above what coffee can give is a reason to doubt an
/// input, not to praise the brew.
///
/// ```text
/// E D(1 − s − φτ) = τ(B + φQ) + s(hD − V) at E = 26 %, solved for T, W, D and φ in turn
/// ```
///
/// Symbols: see the [module](self). Source: conservation of water and solids; limits of trade
/// education and of the ITC Coffee Guide, Q&A 064; how near counts as near is an estimate.
///
/// Each doubt says what one input would have to be, all others kept, for the yield to come down to
/// 26 %, the end of what is ordinary ([`SOLUBLE_LIMIT_LOW`] less [`NEAR_LIMIT_POINTS`]). Usual
/// causes: an unfiltered or evaporated sample and a refractive factor that does not suit the coffee
/// (strength); water not all weighed; a dose misread; a brew that was not well mixed (held strength).
///
/// # Errors
/// As [`extraction_yield`].
pub fn plausibility(brew: &Brew, strength: Strength) -> Result<Plausibility, Error> {
    let extracted = extraction_yield(brew, strength)?;
    let ordinary = SOLUBLE_LIMIT_LOW.percent() - NEAR_LIMIT_POINTS;
    let credibility = match extracted.percent() {
        e if e <= ordinary => Credibility::Ordinary,
        e if e < SOLUBLE_LIMIT_LOW.percent() => Credibility::NearLimit,
        e if e <= SOLUBLE_LIMIT_HIGH.percent() => Credibility::AtLimit,
        _ => Credibility::BeyondLimit,
    };
    Ok(Plausibility {
        extracted,
        credibility,
        doubts: match credibility {
            Credibility::Ordinary => None,
            _ => Some(doubts(brew, strength, ordinary / 100.0)),
        },
    })
}

/// For each input the value that makes the yield `e`, by solving
/// E D(1 − s − φτ) = τ(B + φQ) + s(hD − V) for that symbol: it is linear in each.
fn doubts(brew: &Brew, given: Strength, e: f64) -> [Doubt; 4] {
    let b = Balance::of(brew);
    let s = b.solids;
    let tau = given.fraction() - s;
    let h = brew.moisture.fraction();
    let vapour = brew.vapour.grams();
    let dissolved = e * b.dose;
    let strength = (dissolved * (1.0 - s) - s * b.bean_water)
        / (b.beverage + b.held * (b.missing + dissolved))
        + s;
    let missing =
        ((dissolved * (1.0 - s - b.held * tau) - s * b.bean_water) / tau - b.beverage) / b.held;
    let dose = (tau * (b.beverage + b.held * (brew.water.grams() - vapour - b.beverage))
        - s * vapour)
        / (e * (1.0 - s - b.held * tau) - b.held * tau * h - s * h);
    let held = (dissolved * (1.0 - s) - s * b.bean_water - tau * b.beverage)
        / (tau * (b.missing + dissolved));
    let water = missing + b.beverage - b.bean_water;
    // A value that the balance would refuse explains nothing. It refuses neither a larger dose nor
    // another strength of what is held.
    let possible = |brew: Brew, strength| extraction_yield(&brew, strength).is_ok();
    [
        doubt(given, 100.0 * strength, |v| possible(*brew, v)),
        doubt(brew.water, water, |v| possible(Brew { water: v, ..*brew }, given)),
        doubt(brew.dose, dose, |_| true),
        doubt(brew.held_strength, 100.0 * held, |_| true),
    ]
}

fn doubt<M: Measure>(entered: M, would_have_to_be: f64, possible: impl Fn(M) -> bool) -> Doubt {
    Doubt {
        quantity: M::QUANTITY,
        entered: entered.value(),
        would_have_to_be: M::new(would_have_to_be).ok().filter(|v| possible(*v)).map(M::value),
    }
}
