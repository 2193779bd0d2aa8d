//! A coffee: how fast it gives what it can, and how much that is.

use core::f64::consts::LN_2;

use super::curve::{self, Curve, Square};
use super::quality::{MOST_MEASUREMENTS, Quality, enough};
use super::{Fitted, told};
use crate::error::{Error, Untold};
use crate::extraction::{self, Kinetics};
use crate::math::{exp, ln, max, min, one_minus_exp_minus, power, sqrt, square};
use crate::quantity::{BrewWater, Dose, Quantity, Share, Strength, Time, TimeConstant, Yield};
use crate::record::record;
use crate::uncertainty::Estimate;

record! {
    /// A long steep, stirred and drained.
    pub struct Steeped {
        /// Strength T.
        strength: Strength = "strength_pct",
        /// Brew water W.
        water: BrewWater = "water_g",
        /// Dose D.
        dose: Dose = "dose_g",
    }
}

/// Yield at which a coffee levels off: the mean of long steeps.
///
/// ```text
/// E∞ = mean of (W/D) T/(1 − T),   u = s/√n
/// ```
///
/// Symbols: W brew water, D dose, T strength, s scatter, n steeps. Source: conservation of solids;
/// least squares.
///
/// # Errors
/// [`Error::CannotTell`] for a single steep; [`Error::OutOfRange`] for more than thirty;
/// [`Error::ResultOutOfRange`] for a steep whose own yield would be above 100 %.
///
/// ```
/// # use cupwright::{calibrate::{self, Steeped}, quantity::*};
/// let steep = |strength, water| {
///     Ok::<_, cupwright::Error>(Steeped {
///         strength: Strength::from_percent(strength)?,
///         water: BrewWater::from_grams(water)?,
///         dose: Dose::from_grams(20.0)?,
///     })
/// };
/// // Invented steeps.
/// let steeps = [steep(1.41, 300.0)?, steep(1.38, 310.0)?, steep(1.02, 400.0)?];
/// let coffee = calibrate::equilibrium_yield(&steeps)?.estimate;
/// assert_eq!(format!("{} ± {}", coffee.value, coffee.u), "21.25 % ± 0.33 %");
/// # Ok::<(), cupwright::Error>(())
/// ```
pub fn equilibrium_yield(steeps: &[Steeped]) -> Result<Fitted<Yield>, Error> {
    let measurements = enough(steeps.len(), 2.0, Quantity::Yield)?;
    for steep in steeps {
        of_steep(steep)?;
    }
    let count = measurements.count();
    let yields = steeps.iter().map(|steep| of_steep(steep).map_or(f64::NAN, Yield::percent));
    let mean = yields.clone().sum::<f64>() / count;
    let quality = Quality::of(measurements, 1.0, yields.map(|e| (e - mean, 1.0 / count)));
    Ok(Fitted { estimate: told(mean, quality.s / sqrt(count), &quality)?, quality })
}

fn of_steep(steep: &Steeped) -> Result<Yield, Error> {
    extraction::steeped_yield(steep.strength, steep.water, steep.dose)
}

record! {
    /// A yield after a time of contact.
    pub struct Timed {
        /// Time of contact t.
        contact: Time = "contact_s",
        /// Yield E by then.
        extracted: Yield = "yield_pct",
    }
}

impl Timed {
    /// Whether there was time for a yield: at no time every law has none.
    fn tells(self: &&Self) -> bool {
        self.contact.seconds() > 0.0
    }

    fn point(&self) -> (f64, f64) {
        (self.contact.seconds(), self.extracted.percent())
    }
}

/// A one-rate law of extraction.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct OneRate {
    /// Yield E∞ that it levels off at.
    pub equilibrium: Estimate<Yield>,
    /// Time constant τ; its uncertainty is that of ln τ.
    pub time: Estimate<TimeConstant>,
    /// Covariance of E∞ and ln τ, points of yield.
    pub covariance: f64,
    /// How far the curve can be trusted; its scatter is in points of yield.
    pub quality: Quality,
}

impl OneRate {
    /// The law as [`crate::extraction`] takes it.
    pub fn kinetics(&self) -> Kinetics {
        Kinetics {
            equilibrium: self.equilibrium.value,
            fast_share: Share::known(100.0),
            fast: self.time.value,
            slow: self.time.value,
        }
    }
}

/// How fast a coffee extracts, by one rate.
///
/// ```text
/// E(t) = E∞ (1 − e^(−t/τ)),   parameters E∞ and ln τ
/// ```
///
/// Symbols: E yield after the time t, E∞ yield that it levels off at, τ time constant. Source:
/// least squares; the law of Fuller & Rao 2017, doi 10.1038/s41598-017-18247-4 (abstract).
///
/// One yield each of brews that differ in time of contact only, or of samples drawn from one. No
/// start is asked for: for each of many τ, four to a halving, the best E∞ is known in closed form,
/// and the best of them is where the search begins. First order to an equilibrium was found for cold
/// brews (Fuller & Rao 2017, doi 10.1038/s41598-017-18247-4, abstract).
///
/// # Errors
/// [`Error::CannotTell`] for fewer than three yields after some time, for ones that do not begin to level
/// off, that have all levelled off, or that fall; [`Error::OutOfRange`] for more than thirty;
/// [`Error::ResultOutOfRange`] for an equilibrium above 100 %.
///
/// ```
/// # use cupwright::{calibrate::{self, Timed}, quantity::*};
/// let timed = |contact, extracted| {
///     Ok::<_, cupwright::Error>(Timed {
///         contact: Time::from_seconds(contact)?,
///         extracted: Yield::from_percent(extracted)?,
///     })
/// };
/// // Invented steeps.
/// let steeps = [timed(30.0, 9.1)?, timed(60.0, 13.9)?, timed(120.0, 18.6)?, timed(300.0, 20.7)?];
/// let coffee = calibrate::one_rate(&steeps)?;
/// assert_eq!(coffee.equilibrium.value.to_string(), "20.76 %");
/// assert_eq!(coffee.time.value.to_string(), "53.2 s");
/// # Ok::<(), cupwright::Error>(())
/// ```
pub fn one_rate(yields: &[Timed]) -> Result<OneRate, Error> {
    enough(yields.len(), 3.0, Quantity::TimeConstant)?;
    let reach = Reach::of(yields)?;
    let points = yields.iter().filter(Timed::tells).map(Timed::point);
    let measurements = enough(points.clone().count(), 3.0, Quantity::TimeConstant)?;
    let best = best_single(points.clone(), &reach);
    let Curve { parameters, covariance } =
        fit_single(points.clone(), &reach, &best).ok_or_else(|| reach.refusal(best.ln_time))?;
    let curve = single(&parameters);
    let each = yields.iter().map(Timed::point).map(|(t, e)| {
        let (value, slopes) = curve(t);
        (e - value, curve::covaried(&covariance, &slopes, &slopes))
    });
    let quality = Quality::of(measurements, 2.0, each);
    let [equilibrium, ln_time] = parameters;
    let [[of_equilibrium, of_both], [_, of_time]] = covariance;
    let u_ln_time = quality.s * sqrt(of_time);
    if !reach.covers(ln_time) || u_ln_time > MOST_U_LN_TIME {
        return Err(reach.refusal(ln_time));
    }
    Ok(OneRate {
        equilibrium: told(equilibrium, quality.s * sqrt(of_equilibrium), &quality)?,
        time: told(exp(ln_time), u_ln_time, &quality)?,
        // Adding zero turns -0 into +0.
        covariance: square(quality.s) * of_both + 0.0,
        quality,
    })
}

/// A time constant uncertain by a factor of e is not told.
const MOST_U_LN_TIME: f64 = 1.0;

/// E(t) and its slopes in E∞ and ln τ.
fn single(parameters: &[f64; 2]) -> impl Fn(f64) -> (f64, [f64; 2]) + use<> {
    let [equilibrium, ln_time] = *parameters;
    let rate = exp(-ln_time);
    move |t| {
        let turns = t * rate;
        let done = one_minus_exp_minus(turns);
        (equilibrium * done, [done, -equilibrium * turns * (1.0 - done)])
    }
}

/// The times of contact that there are.
struct Reach {
    /// The shortest above zero, s.
    shortest: f64,
    /// The longest, s.
    longest: f64,
    /// The yield after the longest, %.
    last: f64,
    /// The highest yield, %.
    most: f64,
}

/// Most halvings of a time constant tried before a search: enough for yields from a second to
/// twenty-four days.
const MOST_HALVINGS: f64 = 32.0;

/// How far neighbours of those tried alone lie apart, in ln τ: four to a halving.
const APART: f64 = 0.25 * LN_2;

impl Reach {
    fn of(yields: &[Timed]) -> Result<Self, Error> {
        let contacts = yields.iter().map(|timed| timed.contact.seconds());
        let longest = contacts.clone().fold(0.0, max);
        let most = yields.iter().map(|timed| timed.extracted.percent()).fold(0.0, max);
        for (quantity, found, needed) in
            [(Quantity::TimeConstant, longest, STARTING_CONTACT_S), (Quantity::Yield, most, 1.0)]
        {
            if found == 0.0 {
                return Err(Error::CannotTell { quantity, why: Untold::NoSpan, found, needed });
            }
        }
        let shortest = contacts.filter(|t| *t > 0.0).fold(f64::INFINITY, min);
        let last = yields
            .iter()
            .filter(|timed| timed.contact.seconds() == longest)
            .fold(0.0, |last, timed| max(last, timed.extracted.percent()));
        Ok(Self { shortest, longest, last, most })
    }

    /// Logarithms of the least and the largest time constant that could leave a trace in the
    /// yields: e^−20 of the equilibrium is still to come at the shortest contact, or a hundredth
    /// has come at the longest.
    fn ln_times(&self) -> (f64, f64) {
        (ln(self.shortest / 20.0), ln(self.longest * 100.0))
    }

    fn covers(&self, ln_time: f64) -> bool {
        let (least, most) = self.ln_times();
        ln_time > least && ln_time < most
    }

    /// How many of them are tried, each half of the one before.
    fn tries(&self) -> u32 {
        let (least, most) = self.ln_times();
        (1.0 + min((most - least) / LN_2, MOST_HALVINGS)) as u32
    }

    /// Whether the best of those tried lies between others: otherwise it leaves the way open to ever
    /// larger or smaller ones, which a search would follow to no end.
    fn surrounds(&self, ln_time: f64) -> bool {
        self.covers(ln_time - APART) && self.covers(ln_time + APART)
    }

    /// Why a time constant is not told: it is beyond the yields on one side or the other.
    fn refusal(&self, ln_time: f64) -> Error {
        let needed = LEAST_LEFT * self.most;
        if self.last < needed {
            let (quantity, why) = (Quantity::Yield, Untold::Falling);
            Error::CannotTell { quantity, why, found: self.last, needed }
        } else if ln_time > 0.5 * (ln(self.shortest) + ln(self.longest)) {
            Error::CannotTell {
                quantity: Quantity::Yield,
                why: Untold::StillRising,
                found: self.longest,
                needed: 2.0 * self.longest,
            }
        } else {
            Error::CannotTell {
                quantity: Quantity::TimeConstant,
                why: Untold::LevelledOff,
                found: 0.0,
                needed: 1.0,
            }
        }
    }
}

/// Of the highest yield, what is still there after the longest contact where yields do not fall but
/// scatter. Estimate.
const LEAST_LEFT: f64 = 0.9;

/// A time of contact that tells something for a start, s.
const STARTING_CONTACT_S: f64 = 60.0;

/// What is still to come, e^(−t/τ), of each yield for one time constant.
///
/// Half the time constant squares it, so a whole row of them takes one exponential.
#[derive(Clone)]
struct Left {
    ln_time: f64,
    shares: [f64; MOST_MEASUREMENTS],
    /// How many yields there are.
    count: usize,
}

impl Left {
    fn of(points: impl Iterator<Item = (f64, f64)>, ln_time: f64) -> Self {
        let rate = exp(-ln_time);
        let mut left = Self { ln_time, shares: [0.0; MOST_MEASUREMENTS], count: 0 };
        for (share, (t, _)) in left.shares.iter_mut().zip(points) {
            *share = exp(-t * rate);
            left.count = left.count.saturating_add(1);
        }
        left
    }

    /// Goes on to half the time constant.
    fn halve(&mut self) {
        self.ln_time -= LN_2;
        self.shares.iter_mut().take(self.count).for_each(|share| *share = square(*share));
    }
}

/// The best of the time constants tried, with its own best equilibrium.
struct Single {
    ln_time: f64,
    equilibrium: f64,
    /// Part of Σ E² that it explains.
    explained: f64,
}

impl Single {
    fn of(points: impl Iterator<Item = (f64, f64)>, left: &Left) -> Self {
        let [mut dd, mut de] = [0.0; 2];
        for ((_, e), share) in points.zip(&left.shares) {
            let done = 1.0 - share;
            (dd, de) = (dd + done * done, de + done * e);
        }
        let equilibrium = de / dd;
        Self { ln_time: left.ln_time, equilibrium, explained: equilibrium * de }
    }
}

/// The best of four time constants to a halving.
fn best_single(points: impl Iterator<Item = (f64, f64)> + Clone, reach: &Reach) -> Single {
    let (_, most) = reach.ln_times();
    let mut best = Single { ln_time: most, equilibrium: 0.0, explained: 0.0 };
    for quarter in 0..4 {
        let longest = most - APART * f64::from(quarter);
        let mut left = Left::of(points.clone(), longest);
        for _ in 0..reach.tries() {
            let next = Single::of(points.clone(), &left);
            if next.explained > best.explained {
                best = next;
            }
            left.halve();
        }
    }
    best
}

/// The one-rate curve from the best of the time constants tried.
fn fit_single(
    points: impl Iterator<Item = (f64, f64)> + Clone,
    reach: &Reach,
    best: &Single,
) -> Option<Curve<2>> {
    let start = [best.equilibrium, best.ln_time];
    reach.surrounds(best.ln_time).then(|| curve::fit(points, start, single)).flatten()
}

/// A two-rate law of extraction.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TwoRates {
    /// Yield E∞ that it levels off at.
    pub equilibrium: Estimate<Yield>,
    /// Fast share f of it.
    pub fast_share: Estimate<Share>,
    /// Time constant τ1 of the fast share; its uncertainty is that of ln τ1.
    pub fast: Estimate<TimeConstant>,
    /// Time constant τ2 of the rest; its uncertainty is that of ln τ2.
    pub slow: Estimate<TimeConstant>,
    /// Covariances of E∞, f, ln τ1 and ln τ2, in points.
    pub covariance: [[f64; 4]; 4],
    /// How far the curve can be trusted; its scatter is in points of yield.
    pub quality: Quality,
}

impl TwoRates {
    /// The law as [`crate::extraction`] takes it.
    pub fn kinetics(&self) -> Kinetics {
        Kinetics {
            equilibrium: self.equilibrium.value,
            fast_share: self.fast_share.value,
            fast: self.fast.value,
            slow: self.slow.value,
        }
    }
}

/// With one or two degrees of freedom, chance decides whether a second rate is accepted, and the
/// intervals of those that are held the truth only 84 to 92 times in a hundred.
const FEWEST_FOR_TWO: f64 = 7.0;

/// How fast a coffee extracts, by two rates.
///
/// ```text
/// E(t) = E∞ [ f(1 − e^(−t/τ1)) + (1 − f)(1 − e^(−t/τ2)) ]
/// sought in ln(E∞ f), ln(E∞ (1 − f)), ln(1/τ2), ln(τ2/τ1 − 1)
/// ```
///
/// Symbols: as for [`crate::extraction::yield_at_time`]; S1 and S2 sums of squares left by one and
/// two rates, ν degrees of freedom. Source: least squares; the law of Moroney et al. 2015, doi
/// 10.1016/j.ces.2015.06.003 (abstract).
///
/// Yields from a few seconds to well beyond the slow time constant are needed. Even then the parts
/// are far less certain than their sum E∞. The search begins at the best of all pairs of time
/// constants, each half of the one before, for which the best shares are known in closed form.
///
/// A second rate always describes some scatter as well. It is accepted only if it explains more
/// than scatter about one rate would explain once in twenty times:
///
/// ```text
/// F = [(S1 − S2)/2]/(S2/ν) > (ν/2)(0.05^(−2/ν) − 1)
/// ```
///
/// Two mechanisms: Moroney et al. 2015, doi 10.1016/j.ces.2015.06.003 (abstract).
///
/// # Errors
/// [`Error::CannotTell`] for fewer than seven yields after some time, for ones that one rate describes as well, and
/// as [`one_rate`]; [`Error::OutOfRange`] for more than thirty; [`Error::ResultOutOfRange`] for an
/// equilibrium above 100 %.
///
/// ```
/// # use cupwright::{calibrate::{self, Timed}, quantity::*};
/// let timed = |contact, extracted| {
///     Ok::<_, cupwright::Error>(Timed {
///         contact: Time::from_seconds(contact)?,
///         extracted: Yield::from_percent(extracted)?,
///     })
/// };
/// // Invented steeps.
/// let steeps = [
///     timed(3.0, 5.02)?, timed(6.0, 8.12)?, timed(12.0, 10.73)?, timed(25.0, 12.6)?,
///     timed(50.0, 14.41)?, timed(100.0, 17.1)?, timed(200.0, 19.6)?, timed(400.0, 20.96)?,
/// ];
/// let coffee = calibrate::two_rates(&steeps)?;
/// assert_eq!(coffee.fast.value.to_string(), "4.8 s");
/// assert_eq!(coffee.slow.value.to_string(), "104.4 s");
/// assert!(coffee.fast.u.ratio() < 0.05 && coffee.slow.u.ratio() < 0.10);
/// # Ok::<(), cupwright::Error>(())
/// ```
pub fn two_rates(yields: &[Timed]) -> Result<TwoRates, Error> {
    enough(yields.len(), FEWEST_FOR_TWO, Quantity::TimeConstant)?;
    let reach = Reach::of(yields)?;
    let points = yields.iter().filter(Timed::tells).map(Timed::point);
    let measurements = enough(points.clone().count(), FEWEST_FOR_TWO, Quantity::TimeConstant)?;
    let one = squares_of_one(points.clone(), &reach);
    let freedom = measurements.count() - 4.0;
    // Without any scatter left the ratio is endless, or nothing where one rate leaves none either.
    let ratio = |left: f64| if one > left { 0.5 * (one - left) / (left / freedom) } else { 0.0 };
    let needed = 0.5 * freedom * (power(0.05, -2.0 / freedom) - 1.0);
    let one_rate_does = |found| {
        let (quantity, why) = (Quantity::TimeConstant, Untold::OneRate);
        Error::CannotTell { quantity, why, found, needed }
    };
    let pair = best_pair(points.clone(), &reach).ok_or_else(|| one_rate_does(0.0))?;
    let untold = |ln_fast, ln_slow, left| match ratio(left) {
        found if found <= needed => one_rate_does(found),
        _ if ln_slow > ln(reach.longest) => reach.refusal(ln_slow),
        _ => reach.refusal(ln_fast),
    };
    let Curve { parameters, covariance } = curve::fit(points.clone(), pair.sought(), double)
        .ok_or_else(|| untold(pair.ln_fast, pair.ln_slow, pair.squares))?;
    let curve = double(&parameters);
    let each = yields.iter().map(Timed::point).map(|(t, e)| {
        let (value, slopes) = curve(t);
        (e - value, curve::covaried(&covariance, &slopes, &slopes))
    });
    let quality = Quality::of(measurements, 4.0, each);
    let left = freedom * square(quality.s);
    let law = Law::of(&parameters);
    let covariance = law.covariance(&covariance, square(quality.s));
    let [[of_all, ..], [_, of_share, ..], [_, _, of_fast, _], [.., of_slow]] = covariance;
    let is_told = [(law.ln_fast, of_fast), (law.ln_slow, of_slow)]
        .into_iter()
        .all(|(ln_time, variance)| reach.covers(ln_time) && sqrt(variance) <= MOST_U_LN_TIME);
    if ratio(left) <= needed || !is_told {
        return Err(untold(law.ln_fast, law.ln_slow, left));
    }
    Ok(TwoRates {
        equilibrium: told(law.equilibrium, sqrt(of_all), &quality)?,
        fast_share: told(100.0 * law.fast_share, sqrt(of_share), &quality)?,
        fast: told(exp(law.ln_fast), sqrt(of_fast), &quality)?,
        slow: told(exp(law.ln_slow), sqrt(of_slow), &quality)?,
        covariance,
        quality,
    })
}

/// Σe² about the best one-rate law.
fn squares_of_one(points: impl Iterator<Item = (f64, f64)> + Clone, reach: &Reach) -> f64 {
    let best = best_single(points.clone(), reach);
    let fitted = fit_single(points.clone(), reach, &best);
    let start = [best.equilibrium, best.ln_time];
    let curve = single(&fitted.map_or(start, |curve| curve.parameters));
    points.map(|(t, e)| square(e - curve(t).0)).sum()
}

/// E(t) and its slopes in the parameters sought.
fn double(parameters: &[f64; 4]) -> impl Fn(f64) -> (f64, [f64; 4]) + use<> {
    let [fast, slow, rate, excess] = parameters.map(exp);
    move |t| {
        let slow_turns = t * rate;
        let fast_turns = slow_turns * (1.0 + excess);
        let fast_part = fast * one_minus_exp_minus(fast_turns);
        let slow_part = slow * one_minus_exp_minus(slow_turns);
        let by_fast_turns = fast - fast_part;
        let by_rate = by_fast_turns * fast_turns + (slow - slow_part) * slow_turns;
        let by_excess = by_fast_turns * slow_turns * excess;
        (fast_part + slow_part, [fast_part, slow_part, by_rate, by_excess])
    }
}

/// The parameters sought, as those of the law.
struct Law {
    equilibrium: f64,
    fast_share: f64,
    ln_fast: f64,
    ln_slow: f64,
    /// Slopes of the four in the parameters sought.
    slopes: Square<4>,
}

impl Law {
    fn of([ln_fast, ln_slow, ln_rate, ln_excess]: &[f64; 4]) -> Self {
        let (fast, slow, excess) = (exp(*ln_fast), exp(*ln_slow), exp(*ln_excess));
        let share = fast / (fast + slow);
        let by_share = 100.0 * share * (1.0 - share);
        Self {
            equilibrium: fast + slow,
            fast_share: share,
            ln_fast: -ln_rate - ln(1.0 + excess),
            ln_slow: -ln_rate,
            slopes: [
                [fast, slow, 0.0, 0.0],
                [by_share, -by_share, 0.0, 0.0],
                [0.0, 0.0, -1.0, -excess / (1.0 + excess)],
                [0.0, 0.0, -1.0, 0.0],
            ],
        }
    }

    /// Covariances of E∞, f in %, ln τ1 and ln τ2.
    fn covariance(&self, sought: &Square<4>, variance: f64) -> Square<4> {
        let slopes = self.slopes;
        // Adding zero turns -0 into +0.
        slopes.map(|one| slopes.map(|other| variance * curve::covaried(sought, &one, &other) + 0.0))
    }
}

/// Two time constants with their own best parts of the equilibrium.
struct Pair {
    ln_fast: f64,
    ln_slow: f64,
    fast_part: f64,
    slow_part: f64,
    /// Σe²
    squares: f64,
}

impl Pair {
    /// The parameters sought.
    fn sought(&self) -> [f64; 4] {
        let excess = exp(self.ln_slow - self.ln_fast) - 1.0;
        [ln(self.fast_part), ln(self.slow_part), -self.ln_slow, ln(excess)]
    }

    /// The parts that describe the points best, from two linear equations.
    fn of(points: impl Iterator<Item = (f64, f64)>, fast: &Left, slow: &Left) -> Self {
        let [mut ff, mut fs, mut ss, mut fe, mut se, mut ee] = [0.0; 6];
        for ((_, e), (fast, slow)) in points.zip(fast.shares.iter().zip(&slow.shares)) {
            let (f, s) = (1.0 - fast, 1.0 - slow);
            (ff, fs, ss) = (ff + f * f, fs + f * s, ss + s * s);
            (fe, se, ee) = (fe + f * e, se + s * e, ee + e * e);
        }
        let below = ff * ss - fs * fs;
        let fast_part = (fe * ss - se * fs) / below;
        let slow_part = (se * ff - fe * fs) / below;
        let squares = max(0.0, ee - fast_part * fe - slow_part * se);
        Self { ln_fast: fast.ln_time, ln_slow: slow.ln_time, fast_part, slow_part, squares }
    }
}

/// The best pair of the time constants tried; none where no pair has two parts above zero.
fn best_pair(points: impl Iterator<Item = (f64, f64)> + Clone, reach: &Reach) -> Option<Pair> {
    let mut best: Option<Pair> = None;
    let mut slow = Left::of(points.clone(), reach.ln_times().1);
    for faster in (0..reach.tries()).rev() {
        let mut fast = slow.clone();
        for _ in 0..faster {
            fast.halve();
            let pair = Pair::of(points.clone(), &fast, &slow);
            let is_better = best.as_ref().is_none_or(|best| pair.squares < best.squares);
            if is_better && pair.fast_part > 0.0 && pair.slow_part > 0.0 {
                best = Some(pair);
            }
        }
        slow.halve();
    }
    best
}

#[cfg(test)]
#[allow(clippy::indexing_slicing, clippy::arithmetic_side_effects)]
mod tests {
    use super::*;

    const TIMES: [f64; 8] = [3.0, 6.0, 12.0, 25.0, 50.0, 100.0, 200.0, 400.0];

    fn near(a: f64, b: f64) {
        assert!((a - b).abs() <= 1e-9 * (1.0 + b.abs()), "{a} {b}");
    }

    fn reach(last: f64) -> Reach {
        Reach { shortest: 4.0, longest: 1024.0, last, most: 20.0 }
    }

    fn points(of: impl Fn(f64) -> f64) -> [(f64, f64); 8] {
        TIMES.map(|time| (time, of(time)))
    }

    fn two(time: f64, [fast_part, slow_part, fast, slow]: [f64; 4]) -> f64 {
        fast_part * one_minus_exp_minus(time / fast) + slow_part * one_minus_exp_minus(time / slow)
    }

    /// Beyond a twentieth of the shortest contact and a hundred times the longest no time constant leaves a
    /// trace; from the one to the other they are halved.
    #[test]
    fn time_constants_that_leave_a_trace() {
        let reach = reach(20.0);
        let (least, most) = reach.ln_times();
        near(exp(least), 0.2);
        near(exp(most), 102_400.0);
        assert!(!reach.covers(least) && !reach.covers(most), "the ends are none");
        assert!(reach.covers(least + 1e-9) && reach.covers(most - 1e-9));
        // 512 000 is 2^18.97: eighteen halvings, and the first one.
        assert_eq!(reach.tries(), 19);
        let long = Reach { longest: 1e12, ..reach };
        assert_eq!(long.tries(), 33, "no more than 32 halvings");
        let quarter = 0.25 * LN_2;
        assert!(
            !reach.surrounds(least + 0.999 * quarter) && reach.surrounds(least + 1.001 * quarter)
        );
        assert!(
            !reach.surrounds(most - 0.999 * quarter) && reach.surrounds(most - 1.001 * quarter)
        );
    }

    /// Samples at no time count for the highest yield alone.
    #[test]
    fn the_shortest_contact_is_above_zero() {
        let timed = |contact: f64, extracted: f64| Timed {
            contact: Time::from_seconds(contact).unwrap(),
            extracted: Yield::from_percent(extracted).unwrap(),
        };
        let yields = [timed(0.0, 19.0), timed(9.0, 8.0), timed(4.0, 3.0), timed(9.0, 7.0)];
        let Reach { shortest, longest, last, most } = Reach::of(&yields).unwrap();
        assert_eq!([shortest, longest, last, most], [4.0, 9.0, 8.0, 19.0]);
    }

    /// F = [(S1 − S2)/2]/(S2/ν) is what is found where one rate does.
    #[test]
    fn what_a_second_rate_explains_is_a_ratio_of_variances() {
        let bumps = [1.0, -1.2, 0.5, -1.0, 1.2, -0.5, 1.0, -0.8];
        let times = [10.0, 20.0, 40.0, 60.0, 90.0, 120.0, 200.0, 400.0];
        let mut explained = 0;
        for scatter in [0.05, 0.1, 0.2, 0.4, 0.8] {
            let mut steeps = times.map(|time| (time, two(time, [8.0, 12.0, 10.0, 60.0])));
            steeps.iter_mut().zip(bumps).for_each(|((_, e), bump)| *e += scatter * bump);
            let yields = steeps.map(|(time, e)| Timed {
                contact: Time::from_seconds(time).unwrap(),
                extracted: Yield::from_percent(e).unwrap(),
            });
            let Err(Error::CannotTell { why: Untold::OneRate, found, .. }) = two_rates(&yields)
            else {
                continue;
            };
            let pair = best_pair(steeps.into_iter(), &Reach::of(&yields).unwrap()).unwrap();
            let curve = curve::fit(steeps.into_iter(), pair.sought(), double);
            let left = curve.map_or(pair.squares, |fitted| {
                let curve = double(&fitted.parameters);
                steeps.iter().map(|(time, e)| square(e - curve(*time).0)).sum()
            });
            let one = one_rate(&yields).unwrap().quality;
            let gain = max(0.0, one.freedom.count() * square(one.s) - left);
            near(found, 0.5 * gain / (left / 4.0));
            explained += u32::from(found > 0.1);
        }
        assert!(explained > 0);
    }

    #[test]
    fn why_a_time_constant_is_not_told() {
        let why = |last, time: f64| match reach(last).refusal(ln(time)) {
            Error::CannotTell { quantity, why, found, needed } => (quantity, why, found, needed),
            other => panic!("{other}"),
        };
        // Nine tenths of the most is no fall yet; the middle of 4 and 1024 s is 64 s.
        let fallen = (Quantity::Yield, Untold::Falling, 17.9, 18.0);
        assert_eq!((why(17.9, 1.0), why(17.9, 1e6)), (fallen, fallen));
        let done = (Quantity::TimeConstant, Untold::LevelledOff, 0.0, 1.0);
        let rising = (Quantity::Yield, Untold::StillRising, 1024.0, 2048.0);
        assert_eq!((why(18.0, 63.9), why(18.0, 64.1)), (done, rising));
        let middle = 0.5 * (ln(4.0) + ln(1024.0));
        let at_the_middle = reach(20.0).refusal(middle);
        assert!(matches!(at_the_middle, Error::CannotTell { why: Untold::LevelledOff, .. }));
    }

    #[test]
    fn what_is_left_at_half_a_time_constant() {
        let mut left = Left::of(points(|_| 0.0).into_iter(), ln(40.0));
        for time_constant in [40.0, 20.0, 10.0] {
            near(exp(left.ln_time), time_constant);
            let shares = TIMES.iter().zip(left.shares);
            shares.for_each(|(time, share)| near(share, exp(-time / time_constant)));
            left.halve();
        }
    }

    /// A yield by a rate that is tried is found with all that it explains, one between two within half of
    /// their distance.
    #[test]
    fn the_best_single_rate() {
        let reach = Reach { shortest: 3.0, longest: 400.0, last: 20.0, most: 20.0 };
        for halvings in [3.0, 7.25, 9.5, 10.75] {
            let time_constant = 40_000.0 / power(2.0, halvings);
            let steeps = points(|time| 21.0 * one_minus_exp_minus(time / time_constant));
            let best = best_single(steeps.into_iter(), &reach);
            near(exp(best.ln_time), time_constant);
            near(best.equilibrium, 21.0);
            near(best.explained, steeps.iter().map(|(_, e)| e * e).sum());
        }
        for time_constant in [7.0, 31.0, 150.0, 490.0] {
            let steeps = points(|time| 21.0 * one_minus_exp_minus(time / time_constant));
            let best = best_single(steeps.into_iter(), &reach);
            assert!((best.ln_time - ln(time_constant)).abs() < 0.55 * APART, "{time_constant}");
        }
    }

    #[test]
    fn the_best_pair_of_rates() {
        let reach = Reach { shortest: 3.0, longest: 400.0, last: 20.0, most: 20.0 };
        // Both are tried: 40 000 s halved eight times and thirteen times.
        let (slow, fast) = (40_000.0 / 256.0, 40_000.0 / 8192.0);
        let steeps = points(|time| two(time, [12.0, 9.0, fast, slow]));
        let best = best_pair(steeps.into_iter(), &reach).unwrap();
        near(exp(best.ln_fast), fast);
        near(exp(best.ln_slow), slow);
        near(best.fast_part, 12.0);
        near(best.slow_part, 9.0);
        assert!((0.0..1e-9).contains(&best.squares), "{}", best.squares);
        // What is sought from there is that law.
        let law = Law::of(&best.sought());
        near(exp(law.ln_fast), fast);
        near(exp(law.ln_slow), slow);
        near(law.equilibrium, 21.0);
        near(law.fast_share, 12.0 / 21.0);
        // Yields that fall again have no two parts above zero.
        let falling = points(|time| 20.0 * exp(-time / 100.0));
        assert!(best_pair(falling.into_iter(), &reach).is_none());
    }

    /// Of scattered yields too: no parts nearby leave less, and what they leave is what is told.
    #[test]
    fn the_parts_of_a_pair_are_least_squares() {
        let bumps = [0.3, -0.2, 0.25, -0.4, 0.1, 0.35, -0.3, 0.15];
        let mut steeps = points(|time| two(time, [12.0, 9.0, 5.0, 160.0]));
        steeps.iter_mut().zip(bumps).for_each(|((_, e), bump)| *e += bump);
        let left = |time_constant| Left::of(steeps.into_iter(), ln(time_constant));
        let pair = Pair::of(steeps.into_iter(), &left(4.0), &left(150.0));
        let squares = |fast_part, slow_part| -> f64 {
            let law = [fast_part, slow_part, 4.0, 150.0];
            steeps.iter().map(|(time, e)| square(e - two(*time, law))).sum()
        };
        near(pair.squares, squares(pair.fast_part, pair.slow_part));
        for (more, other) in [(0.01, 0.0), (-0.01, 0.0), (0.0, 0.01), (0.0, -0.01), (0.01, -0.01)] {
            let (fast_part, slow_part) = (pair.fast_part + more, pair.slow_part + other);
            assert!(squares(fast_part, slow_part) > pair.squares, "{more} {other}");
        }
    }

    fn slope(of: impl Fn(f64) -> f64) -> f64 {
        (of(1e-5) - of(-1e-5)) / 2e-5
    }

    #[test]
    fn slopes_are_those_of_the_laws() {
        let close = |a: f64, b: f64| assert!((a - b).abs() < 1e-7 * (1.0 + b.abs()), "{a} {b}");
        for time in [1.0, 40.0, 300.0] {
            let at = [20.0, ln(60.0)];
            let (value, slopes) = single(&at)(time);
            near(value, 20.0 * one_minus_exp_minus(time / 60.0));
            for (place, wanted) in slopes.into_iter().enumerate() {
                let moved = |by| {
                    let mut moved = at;
                    moved[place] += by;
                    single(&moved)(time).0
                };
                close(slope(moved), wanted);
            }
            let at = [ln(12.0), ln(9.0), -ln(150.0), ln(29.0)];
            let (value, slopes) = double(&at)(time);
            near(value, two(time, [12.0, 9.0, 5.0, 150.0]));
            for (place, wanted) in slopes.into_iter().enumerate() {
                let moved = |by| {
                    let mut moved = at;
                    moved[place] += by;
                    moved
                };
                close(slope(|by| double(&moved(by))(time).0), wanted);
                let law = Law::of(&at);
                let told = |by| {
                    let law = Law::of(&moved(by));
                    [law.equilibrium, 100.0 * law.fast_share, law.ln_fast, law.ln_slow]
                };
                for (row, slopes) in law.slopes.into_iter().enumerate() {
                    close(slope(|by| told(by)[row]), slopes[place]);
                }
            }
        }
    }
}
