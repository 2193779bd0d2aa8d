//! What to do to a judged cup now, and what to change in the next brew.

use cupwright::advise::{self, Advice, Cup, Kept, MOST_SUGGESTIONS, Means, Suggestion};
use cupwright::quantity::{Measure, Quantity};

use crate::call::{Call, Field, Refused, answer, checked, field, given};
use crate::estimate::{self, *};
use crate::extraction::{self, cupwright_brew};
use crate::forecast::{self, NO_OUTLOOK, cupwright_outlook, cupwright_straying};
use crate::ratio::{self, cupwright_chamber};
use crate::status::cupwright_error;
use crate::uncertainty::{NO_RATES, cupwright_rates, rates, rates_of};
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

/// What a brewer keeps, from one's own brews.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_kept {
    /// Apparent retention of the grounds, {ApparentRetention}.
    pub apparent_retention_g_per_g: f64,
    /// What stays in the brewer whatever the dose: chamber, paper and drips, {HoldUp}.
    pub hold_up_g: f64,
}

/// What can be done, and what is known of it. Yes is anything but 0.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_means {
    /// How fast the coffee extracts, from one's own brews.
    pub rates: cupwright_rates,
    /// What the brewer is known to keep.
    pub kept: cupwright_kept,
    /// The chamber, where all the water stands in it at once.
    pub chamber: cupwright_chamber,
    /// Temperature of the water in it, {Temperature}.
    pub water_c: f64,
    /// 0 where the rates are not known: then no time is suggested.
    pub has_rates: i32,
    /// 0 where what the brewer keeps is not known: then the grounds are taken to keep all that this
    /// brew lost but its vapour.
    pub has_kept: i32,
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
    /// The next brew, the time of contact and the dose: as for each.
    TimeWithDose = 8,
}

/// Which way to turn what has no number. No rate of temperature was published; a grind has no
/// number that holds for two grinders.
#[repr(i32)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum cupwright_direction {
    /// Leave it: the yield lies in its band as surely as asked, or the window has none.
    Leave = 1,
    /// Extract more: grind finer.
    More = 2,
    /// Extract less: grind coarser.
    Less = 3,
    /// Read again first: at the confidence asked for it is not decided where the yield lies.
    NotYetDecided = 4,
    /// Nothing to say: the window does not state how it counts its yield, and only the strength was
    /// judged.
    CountingNotStated = 5,
}

/// One thing to do, and what to expect of it.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_suggestion {
    /// In g or s: the new dose, brew water or time, or what to add. Without a change it is zero.
    pub amount: f64,
    /// What that was. Of what is added, and without a change, it is zero.
    pub before: f64,
    /// The new dose where it changes with the time, in g; else zero.
    pub with_dose_g: f64,
    /// What to expect.
    pub outlook: cupwright_outlook,
    /// What changes: one of enum cupwright_change.
    pub change: i32,
}

/// What to do about a cup.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_advice {
    /// What can be done, the best first. Only so many as are counted mean something.
    pub suggestions: [cupwright_suggestion; 8],
    /// How many there are.
    pub suggestion_count: i32,
    /// Which way to turn the grind: one of enum cupwright_direction.
    pub grind: i32,
    /// 0 where nothing is said of the next brew, since masses do not go together, nothing would be
    /// left for the cup or a number leaves its range; else 1.
    pub is_next_told: i32,
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

fn kept(call: Call, kept: &cupwright_kept) -> Result<Kept, Refused> {
    Ok(Kept {
        retention: checked!(call, kept.apparent_retention_g_per_g)?,
        hold_up: checked!(call, kept.hold_up_g)?,
    })
}

fn means_of(call: Call, means: &cupwright_means) -> Result<Means, Refused> {
    Ok(Means {
        rates: match means.has_rates {
            0 => None,
            _ => Some(rates_of(call, &means.rates)?),
        },
        kept: match means.has_kept {
            0 => None,
            _ => Some(kept(call, &means.kept)?),
        },
        chamber: match means.has_chamber {
            0 => None,
            _ => Some(ratio::chamber(call, &means.chamber)?),
        },
        water: checked!(call, means.water_c)?,
        milk: means.milk != 0,
    })
}

/// What C is told of means that a profile gives: no chamber and no milk.
pub(crate) fn means(of: &Means) -> cupwright_means {
    cupwright_means {
        rates: of.rates.map_or(NO_RATES, |of| rates(&of)),
        kept: cupwright_kept {
            apparent_retention_g_per_g: of.kept.map_or(0.0, |kept| kept.retention.value()),
            hold_up_g: of.kept.map_or(0.0, |kept| kept.hold_up.value()),
        },
        chamber: cupwright_chamber { volume_ml: 0.0, displacement_ml_per_g: 0.0 },
        water_c: of.water.value(),
        has_rates: of.rates.is_some().into(),
        has_kept: of.kept.is_some().into(),
        has_chamber: 0,
        milk: 0,
    }
}

const NO_SUGGESTION: cupwright_suggestion = cupwright_suggestion {
    amount: 0.0,
    before: 0.0,
    with_dose_g: 0.0,
    outlook: NO_OUTLOOK,
    change: 0,
};

fn suggestion(suggestion: &Suggestion) -> cupwright_suggestion {
    cupwright_suggestion {
        amount: suggestion.amount,
        before: suggestion.before,
        with_dose_g: suggestion.with_dose,
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
        is_next_told: advice.untold.is_none().into(),
    }
}

/// What a refusal of the wish is about.
const WANTED: &[(Quantity, Field)] = &[(Quantity::Strength, field!(wanted_pct))];

/// What to do about a cup: now, and next time.
///
/// Suggested are the cup as it is; water, or milk, that brings it down to the wanted strength; the
/// same brew again; the dose alone and the water alone that make the next brew so strong; and, where
/// rates are known, a time alone and, where no change alone comes within a point of it, a time with a
/// dose that makes it so strong. A time aims at the best of seven yields spread over the band, or without a band at
/// the strength. Yields are counted as the window does; where it does not state how, they are not judged, and `grind`
/// says so. Not suggested is what would leave the chamber or the range of a quantity, what
/// changes less than a thousandth, what lands more than a point less surely than leaving things
/// alone, and a next brew that lands less than once in a hundred times.
///
/// ```text
/// score = P(inside) + 0.1 P(strength inside) − 10 |change|     orders them; in points, change relative
/// u(E)/E += 0.25 |change of dose or water|                     in squares; an estimate
/// u(E)/E += u(ln E(t')/E(t))                                   in squares: the rates, tied to this cup
/// ```
///
/// @param cup The cup.
/// @param means What can be done.
/// @param straying How far the next brew may stray.
/// @param wanted_pct Strength wanted of the drink, inside the window, {Strength}.
/// @param window The window.
/// @param confidence_pct How sure the direction of the grind must be, {Confidence}.
/// @param[out] advice What to do.
///
/// Fails with CUPWRIGHT_STATUS_EMPTY_BAND for a window whose lowest edge is not below its highest;
/// CUPWRIGHT_STATUS_OUT_OF_RANGE for a strength wanted outside the window;
/// CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE for a yield or an uncertainty past its range. What is wrong
/// with the next brew alone is no failure: `is_next_told` is 0 then.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_advise_on(
    cup: *const cupwright_cup,
    means: *const cupwright_means,
    straying: *const cupwright_straying,
    wanted_pct: f64,
    window: *const cupwright_window,
    confidence_pct: f64,
    advice: *mut cupwright_advice,
    error: *mut cupwright_error,
) -> i32 {
    answer!(advice, error, |call| Ok({
        let cup = cup_of(call, given!(call, cup)?)?;
        let means = means_of(call, given!(call, means)?)?;
        let straying = forecast::straying(call, given!(call, straying)?)?;
        let wanted = checked!(call, wanted_pct)?;
        let window = verdict::window(call, given!(call, window)?)?;
        let sure = checked!(call, confidence_pct)?;
        let mut advice = Advice::NONE;
        let told = advise::on_into(&mut advice, &cup, &straying, &means, wanted, &window, sure);
        call.wish(WANTED, told.as_ref())?;
        self::advice(&advice)
    }))
}
