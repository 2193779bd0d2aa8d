//! The main formulas on whole columns: millions of logged brews scored in one call.
//!
//! Each function is a formula of another room, called for every row: columns in, a column out, and a
//! status for each row, all in the caller's memory. Columns are plain numbers, in the unit that their
//! name says, as a log holds them: bad rows may be among them, and a missing number is NaN.
//!
//! | status of a row | what it means | its answer |
//! |---|---|---|
//! | [`ANSWERED`], 0 | answered: the same bits as from the formula itself | a number |
//! | 1, 2, 3, … | this input, counted in the function's order, is the first that is not accepted | NaN |
//! | [`NO_ANSWER`], 255 | every input is accepted, but nothing possible follows from them | NaN |
//!
//! The reason in full, an [`Error`](crate::Error) with value and range, is had by asking the formula itself for that row:
//! it refuses the same rows, for the same input.
//!
//! What is the same for every row of a call is passed once where the formula takes it as one
//! setting: a brewer's losses, a factor, a window. A column that holds one number throughout
//! can be short and used again, with the rows in blocks.
//!
//! ```
//! use cupwright::columns::{self, ANSWERED, NO_ANSWER};
//! use cupwright::{extraction, quantity::*};
//!
//! // Invented: one good brew, one with a slip in the beverage, one that cannot be.
//! let strength_pct = [1.32, 1.31, 12.9];
//! let beverage_g = [220.0, -220.0, 220.0];
//! let dose_g = [15.0, 15.0, 15.0];
//! let (mut yield_pct, mut status) = ([0.0; 3], [0; 3]);
//! let refused = columns::flow_through_yield(
//!     &strength_pct, &beverage_g, &dose_g, &mut yield_pct, &mut status,
//! )?;
//! assert_eq!((refused, status), (2, [ANSWERED, 2, NO_ANSWER]));
//! assert_eq!(format!("{:.2}", yield_pct[0]), "19.36");
//! assert!(yield_pct[1].is_nan() && yield_pct[2].is_nan());
//!
//! // Why was the second input of the second row refused?
//! assert_eq!(
//!     Beverage::from_grams(beverage_g[1]).unwrap_err().to_string(),
//!     "beverage: -220 g is outside 0.1 to 200000 g",
//! );
//! // And why has the third no answer?
//! let reason = extraction::flow_through_yield(
//!     Strength::from_percent(strength_pct[2])?,
//!     Beverage::from_grams(beverage_g[2])?,
//!     Dose::from_grams(dose_g[2])?,
//! );
//! assert_eq!(reason.unwrap_err().to_string(), "yield comes out as 189.2 %, outside 0 to 100 %");
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

use crate::extraction::Brew;
use crate::quantity::{
    Addition, Beverage, BrewWater, Brix, Dose, HeldStrength, Measure, Moisture, RefractiveFactor,
    Strength, Vapour, WaterRatio, WaterSolids, Yield, is_accepted,
};
use crate::retention::Losses;
use crate::verdict::{Band, Window};
use crate::{dilution, extraction, ratio, reading, retention};

/// The status of a row that is answered.
pub const ANSWERED: u8 = 0;

/// The status of a row of which no answer follows, though every input is accepted.
pub const NO_ANSWER: u8 = 255;

/// Columns of different lengths. Nothing was written.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
#[error("{column}: {found} rows, where the statuses have {rows}")]
pub struct Uneven {
    /// The first column that is not as long as the statuses.
    pub column: &'static str,
    /// How many rows it has.
    pub found: usize,
    /// How many statuses there are.
    pub rows: usize,
}

/// Refuses a column of another length.
fn even(column: &'static str, found: usize, rows: usize) -> Result<(), Uneven> {
    if found == rows { Ok(()) } else { Err(Uneven { column, found, rows }) }
}

/// Rows that are answered before their statuses are looked at: few enough to stay in the nearest cache.
const BLOCK: usize = 512;

/// Iterators as one, of nested pairs.
macro_rules! zipped {
    ($first:expr $(, $rest:expr)*) => { $first$(.zip($rest))* };
}

/// The pattern of their items.
macro_rules! nested {
    ($done:pat) => { $done };
    ($done:pat, $next:pat $(, $rest:pat)*) => { nested!(($done, $next) $(, $rest)*) };
}

/// Functions on columns: what is the same for every row, the columns and their quantities, the answer, and
/// the formula that it comes from, in plain numbers. It must answer NaN, or a number out of range, for
/// what it refuses.
macro_rules! columns {
    ($(
        $(#[$about:meta])+
        fn $name:ident(
            $($same:ident: $setting:ty,)* [$($input:ident: $kind:ident),+]
        ) -> $answer:ident: $of:ident = $formula:expr;
    )+) => {$(
        $(#[$about])+
        ///
        /// How many rows were refused.
        ///
        /// # Errors
        /// [`Uneven`] for columns of different lengths.
        #[allow(clippy::too_many_arguments, reason = "one for each column")]
        pub fn $name(
            $($same: $setting,)*
            $($input: &[f64],)+
            $answer: &mut [f64],
            status: &mut [u8],
        ) -> Result<usize, Uneven> {
            // Out of line, and so told that the answers lie apart from the inputs. Without a branch,
            // so that the loop becomes one over vectors.
            #[inline(never)]
            #[allow(clippy::too_many_arguments, reason = "one for each column")]
            fn answer($($same: $setting,)* $($input: &[f64],)+ answers: &mut [f64]) {
                for (nested!($($input),+), answer) in
                    zipped!($($input.iter()),+).zip(answers)
                {
                    let are_accepted = $(is_accepted::<$kind>(*$input))&+;
                    // Zero has one sign.
                    $(let $input = $kind::known(*$input + 0.0);)+
                    let computed: f64 = $formula;
                    let is_answered = are_accepted & is_accepted::<$of>(computed);
                    *answer = if is_answered { computed + 0.0 } else { f64::NAN };
                }
            }

            let rows = status.len();
            $(even(stringify!($input), $input.len(), rows)?;)+
            even(stringify!($answer), $answer.len(), rows)?;
            let mut refused = 0_usize;
            $(let mut $input = $input;)+
            let (mut answers, mut statuses) = ($answer, status);
            while !statuses.is_empty() {
                let rows = statuses.len().min(BLOCK);
                $(let $input = $input.split_off(..rows).unwrap_or_default();)+
                let answers = answers.split_off_mut(..rows).unwrap_or_default();
                let statuses = statuses.split_off_mut(..rows).unwrap_or_default();
                answer($($same,)* $($input,)+ answers);
                let found = mark(answers, statuses);
                if found == 0 {
                    continue;
                }
                refused = refused.saturating_add(found);
                for (nested!($($input),+), status) in zipped!($($input.iter()),+).zip(statuses) {
                    if *status != ANSWERED {
                        *status = refusal(&[$(is_accepted::<$kind>(*$input)),+]);
                    }
                }
            }
            Ok(refused)
        }
    )+};
}

/// Marks the rows that have no answer; how many.
#[inline(never)]
fn mark(answers: &[f64], statuses: &mut [u8]) -> usize {
    let unanswered = u8::from(true);
    for (answer, status) in answers.iter().zip(&mut *statuses) {
        *status = if answer.is_nan() { unanswered } else { ANSWERED };
    }
    statuses.iter().map(|status| u32::from(*status)).sum::<u32>() as usize
}

/// The status of a row that was refused.
fn refusal(are_accepted: &[bool]) -> u8 {
    let first = are_accepted.iter().position(|is_accepted| !is_accepted);
    first.and_then(|at| u8::try_from(at).ok()).map_or(NO_ANSWER, |at| at.saturating_add(1))
}

columns! {
    /// [`extraction::flow_through_yield`] of every row, E = T B/D.
    fn flow_through_yield([strength_pct: Strength, beverage_g: Beverage, dose_g: Dose])
        -> yield_pct: Yield = extraction::flow_through_percent(strength_pct, beverage_g, dose_g);

    /// [`extraction::flow_through_strength`] of every row, T = E D/B.
    fn flow_through_strength([yield_pct: Yield, beverage_g: Beverage, dose_g: Dose])
        -> strength_pct: Strength =
        extraction::flow_through_strength_percent(yield_pct, beverage_g, dose_g);

    /// [`extraction::steeped_yield`] of every row, E = (W/D) T/(1 − T).
    fn steeped_yield([strength_pct: Strength, water_g: BrewWater, dose_g: Dose])
        -> yield_pct: Yield = extraction::steeped_percent(strength_pct, water_g, dose_g);

    /// [`extraction::extraction_yield`] of every row: the whole mass balance.
    ///
    /// ```text
    /// E = [ τ(B + φQ) + s(hD − V) ] / [ D(1 − s − φτ) ]
    /// ```
    fn extraction_yield([
        dose_g: Dose,
        water_g: BrewWater,
        beverage_g: Beverage,
        moisture_pct: Moisture,
        water_solids_mg_per_l: WaterSolids,
        vapour_g: Vapour,
        held_strength_pct: HeldStrength,
        strength_pct: Strength
    ]) -> yield_pct: Yield = {
        let brew = Brew {
            dose: dose_g,
            water: water_g,
            beverage: beverage_g,
            moisture: moisture_pct,
            water_solids: water_solids_mg_per_l,
            vapour: vapour_g,
            held_strength: held_strength_pct,
        };
        extraction::extracted_percent(&brew, strength_pct)
    };

    /// [`ratio::water_ratio`] of every row, R = W/D.
    fn water_ratio([dose_g: Dose, water_g: BrewWater])
        -> water_ratio_g_per_g: WaterRatio = ratio::water_per_dose(dose_g, water_g);

    /// [`dilution::water_to_reach`] of every row, A = B (T − T')/(T' − s).
    fn water_to_reach([
        beverage_g: Beverage,
        strength_pct: Strength,
        wanted_pct: Strength,
        water_solids_mg_per_l: WaterSolids
    ]) -> added_g: Addition = dilution::grams_to_reach(
        beverage_g,
        strength_pct,
        wanted_pct,
        water_solids_mg_per_l,
    );

    /// [`reading::strength_of_brix`] of every row, T = k B, with one factor.
    fn strength_of_brix(factor: RefractiveFactor, [brix: Brix])
        -> strength_pct: Strength = reading::percent_of_brix(brix, factor);

    /// [`retention::beverage`] of every row, B = W − r D − c − p − d − V, with one brewer's losses.
    fn beverage(losses: &Losses, [dose_g: Dose, water_g: BrewWater])
        -> beverage_g: Beverage = retention::beverage_grams(losses, dose_g, water_g);
}

/// Where the values of a column stand in a band, as [`Place`](crate::verdict::Place) says of one. A row that was refused,
/// or has nothing to stand in, has no side (0), and NaN for distances.
#[derive(Debug)]
pub struct Places<'a> {
    /// Below (1), inside (2) or above (3): a [`Side`](crate::verdict::Side)'s number.
    pub side: &'a mut [u8],
    /// Distance above the lowest edge.
    pub above_lowest: &'a mut [f64],
    /// Distance below the highest edge.
    pub below_highest: &'a mut [f64],
    /// Distance above the centre.
    pub above_centre: &'a mut [f64],
}

impl<'a> Places<'a> {
    /// Refuses columns of another length.
    fn even(&self, names: [&'static str; 4], rows: usize) -> Result<(), Uneven> {
        let [side, above_lowest, below_highest, above_centre] = names;
        even(side, self.side.len(), rows)?;
        even(above_lowest, self.above_lowest.len(), rows)?;
        even(below_highest, self.below_highest.len(), rows)?;
        even(above_centre, self.above_centre.len(), rows)
    }

    /// The next block.
    fn split_off(&mut self, rows: usize) -> Places<'a> {
        Places {
            side: self.side.split_off_mut(..rows).unwrap_or_default(),
            above_lowest: self.above_lowest.split_off_mut(..rows).unwrap_or_default(),
            below_highest: self.below_highest.split_off_mut(..rows).unwrap_or_default(),
            above_centre: self.above_centre.split_off_mut(..rows).unwrap_or_default(),
        }
    }

    /// Places values that are accepted beside others that are; the distances above the centre.
    #[inline(never)]
    fn put<M: Measure, O: Measure>(
        self,
        band: Option<&Band<M>>,
        values: &[f64],
        beside: &[f64],
    ) -> &'a [f64] {
        let Some(band) = band else {
            self.side.fill(0);
            self.above_lowest.fill(f64::NAN);
            self.below_highest.fill(f64::NAN);
            self.above_centre.fill(f64::NAN);
            return self.above_centre;
        };
        let places = values.iter().zip(beside).map(|(value, other)| {
            let is_answered = is_accepted::<M>(*value) & is_accepted::<O>(*other);
            (is_answered, band.place_of(*value + 0.0))
        });
        let distances =
            self.above_lowest.iter_mut().zip(self.below_highest).zip(&mut *self.above_centre);
        for ((is_answered, place), ((lowest, highest), centre)) in places.clone().zip(distances) {
            *lowest = if is_answered { place.above_lowest } else { f64::NAN };
            *highest = if is_answered { place.below_highest } else { f64::NAN };
            *centre = if is_answered { place.above_centre } else { f64::NAN };
        }
        for ((is_answered, place), side) in places.zip(self.side) {
            *side = if is_answered { place.side as u8 } else { 0 };
        }
        self.above_centre
    }
}

/// Where cups stand in a window, as [`Standing`](crate::verdict::Standing) says of one.
#[derive(Debug)]
pub struct Standings<'a> {
    /// Their strength.
    pub strength: Places<'a>,
    /// Their yield; without places where the window has none.
    pub extracted: Places<'a>,
}

/// [`stand`](crate::verdict::stand) of every row: where strength and yield stand in one window.
///
/// How many rows were refused. A status is [`ANSWERED`], 1 for the strength or 2 for the yield.
///
/// # Errors
/// [`Uneven`] for columns of different lengths.
pub fn stand(
    window: &Window,
    strength_pct: &[f64],
    yield_pct: &[f64],
    standings: Standings<'_>,
    status: &mut [u8],
) -> Result<usize, Uneven> {
    let rows = status.len();
    let Standings { mut strength, mut extracted } = standings;
    even("strength_pct", strength_pct.len(), rows)?;
    even("yield_pct", yield_pct.len(), rows)?;
    strength.even(
        [
            "strength_side",
            "strength_above_lowest",
            "strength_below_highest",
            "strength_above_centre",
        ],
        rows,
    )?;
    extracted.even(
        ["yield_side", "yield_above_lowest", "yield_below_highest", "yield_above_centre"],
        rows,
    )?;
    let mut refused = 0_usize;
    let (mut strengths, mut yields, mut statuses) = (strength_pct, yield_pct, status);
    while !statuses.is_empty() {
        let rows = statuses.len().min(BLOCK);
        let strengths = strengths.split_off(..rows).unwrap_or_default();
        let yields = yields.split_off(..rows).unwrap_or_default();
        let statuses = statuses.split_off_mut(..rows).unwrap_or_default();
        let band = window.extracted.as_ref();
        extracted.split_off(rows).put::<Yield, Strength>(band, yields, strengths);
        let places = strength.split_off(rows);
        let distances = places.put::<Strength, Yield>(Some(&window.strength), strengths, yields);
        let found = mark(distances, statuses);
        if found == 0 {
            continue;
        }
        refused = refused.saturating_add(found);
        for ((strength, extracted), status) in strengths.iter().zip(yields).zip(statuses) {
            if *status != ANSWERED {
                *status = refusal(&[
                    is_accepted::<Strength>(*strength),
                    is_accepted::<Yield>(*extracted),
                ]);
            }
        }
    }
    Ok(refused)
}
