//! What to do to a judged cup now, and what to change in the next brew.

use cupwright::advise::{self, Advice, Cup, MOST_SUGGESTIONS, Means, Suggestion};

use crate::call::{Call, Refused, answer, checked, given};
use crate::estimate::{self, *};
use crate::extraction::{self, cupwright_brew, cupwright_kinetics};
use crate::forecast::{self, NO_OUTLOOK, cupwright_outlook, cupwright_straying};
use crate::ratio::{self, cupwright_chamber};
use crate::status::cupwright_error;
use crate::verdict::{self, cupwright_window};

/// A cup that was brewed and read.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_cup {
    /// Its masses, as weighed.
    pub brew: cupwright_brew,
    /// Standard uncertainty of each weighing, {MassUncertainty}.
    pub u_weighing_g: f64,
    /// Its degrees of freedom, {DegreesOfFreedom}; the highest where it is as good as known.
    pub nu_weighing: f64,
    /// Its strength, all solids.
    pub strength: cupwright_strength_estimate,
    /// Its yield by the brewer's own held strength.
    pub r#yield: cupwright_yield_estimate,
    /// Time of contact, {Time}.
    pub contact_s: f64,
}

/// What can be done, and what is known of it. Yes is anything but 0.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_means {
    /// How fast the coffee extracts, from one's own brews.
    pub kinetics: cupwright_kinetics,
    /// The chamber, where all the water stands in it at once.
    pub chamber: cupwright_chamber,
    /// Temperature of the water in it, {Temperature}.
    pub water_c: f64,
    /// 0 where the rates are not known: then no time is suggested.
    pub has_kinetics: i32,
    /// 0 for a dripper.
    pub has_chamber: i32,
    /// Whether milk may be added to this cup.
    pub milk: i32,
}

/// What a suggestion changes.
#[repr(i32)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum cupwright_change {
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
    /// The next brew, the time of contact: takes for granted that the rates learned hold for this
    /// coffee, at this grind and temperature.
    Time = 7,
}

/// Which way to turn what has no number. No rate of temperature was published; a grind has no
/// number that holds for two grinders.
#[repr(i32)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum cupwright_direction {
    /// Leave it: the yield lies in its band, or the window has none.
    Leave = 1,
    /// Extract more: grind finer.
    More = 2,
    /// Extract less: grind coarser.
    Less = 3,
}

/// One thing to do, and what to expect of it.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_suggestion {
    /// In g or s: the new dose, brew water or time, or what to add. Without a change it is zero.
    pub amount: f64,
    /// What that was. Of what is added, and without a change, it is zero.
    pub before: f64,
    /// What to expect.
    pub outlook: cupwright_outlook,
    /// What changes: one of enum cupwright_change.
    pub change: i32,
}

/// What to do about a cup.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_advice {
    /// What can be done, the surest first. Only so many as are counted mean something.
    pub suggestions: [cupwright_suggestion; 7],
    /// How many there are.
    pub suggestion_count: i32,
    /// Which way to turn the grind: one of enum cupwright_direction.
    pub grind: i32,
}

fn cup_of(call: Call, cup: &cupwright_cup) -> Result<Cup, Refused> {
    Ok(Cup {
        brew: extraction::brew_of(call, &cup.brew)?,
        weighing: estimate::weighing(call, cup)?,
        strength: estimate::strength(call, &cup.strength)?,
        extracted: estimate::extracted(call, &cup.r#yield)?,
        contact: checked!(call, cup.contact_s)?,
    })
}

fn means_of(call: Call, means: &cupwright_means) -> Result<Means, Refused> {
    Ok(Means {
        kinetics: match means.has_kinetics {
            0 => None,
            _ => Some(extraction::kinetics_of(call, &means.kinetics)?),
        },
        chamber: match means.has_chamber {
            0 => None,
            _ => Some(ratio::chamber(call, &means.chamber)?),
        },
        water: checked!(call, means.water_c)?,
        milk: means.milk != 0,
    })
}

const NO_SUGGESTION: cupwright_suggestion =
    cupwright_suggestion { amount: 0.0, before: 0.0, outlook: NO_OUTLOOK, change: 0 };

fn suggestion(suggestion: &Suggestion) -> cupwright_suggestion {
    cupwright_suggestion {
        amount: suggestion.amount,
        before: suggestion.before,
        outlook: forecast::outlook(&suggestion.outlook),
        change: suggestion.change as i32,
    }
}

fn advice(advice: &Advice) -> cupwright_advice {
    let mut suggestions = [NO_SUGGESTION; MOST_SUGGESTIONS];
    for (place, of) in suggestions.iter_mut().zip(advice.suggestions()) {
        *place = suggestion(of);
    }
    cupwright_advice {
        suggestions,
        suggestion_count: advice.suggestions().count() as i32,
        grind: advice.grind as i32,
    }
}

/// What to do about a cup: now, and next time.
///
/// Suggested are the cup as it is; water, or milk, that brings it down to the wanted strength; the
/// same brew again; the dose alone and the water alone that make the next brew so strong; and, where
/// rates are known, the time alone that brings the yield to the middle of its band, or without a band
/// the strength to the wanted. A suggestion that would leave the chamber or the range of a quantity is
/// not made. Those come first that land in the window more surely, in steps of five points; then those
/// whose strength does; then the smaller change.
///
/// @param cup The cup.
/// @param means What can be done.
/// @param straying How far the next brew may stray.
/// @param wanted_pct Strength wanted of the drink, {Strength}.
/// @param window The window, its yield as charts count it.
/// @param[out] advice What to do.
///
/// Fails with CUPWRIGHT_STATUS_EMPTY_BAND for a window whose lowest edge is not below its highest;
/// CUPWRIGHT_STATUS_IMPOSSIBLE for masses that do not go together;
/// CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE for a retention, a yield or an uncertainty past its range.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_advise_on(
    cup: *const cupwright_cup,
    means: *const cupwright_means,
    straying: *const cupwright_straying,
    wanted_pct: f64,
    window: *const cupwright_window,
    advice: *mut cupwright_advice,
    error: *mut cupwright_error,
) -> i32 {
    answer!(advice, error, |call| Ok({
        let cup = cup_of(call, given!(call, cup)?)?;
        let means = means_of(call, given!(call, means)?)?;
        let straying = forecast::straying(call, given!(call, straying)?)?;
        let wanted = checked!(call, wanted_pct)?;
        let window = verdict::window(call, given!(call, window)?)?;
        self::advice(&call.core(advise::on(&cup, &straying, &means, wanted, &window))?)
    }))
}
