//! How surely a recipe lands in a window, and the one that lands most surely.

use super::{Brewer, Coffee, Kitchen, Recipe, Wish, recipe};
use crate::error::Error;
use crate::forecast::{self, Intended, Outlook, Straying};
use crate::quantity::{Dose, Measure, Strength};
use crate::uncertainty::Estimate;
use crate::verdict::Window;

/// Steps of each search: golden section takes the window's width to a four-hundredth, bisection any way to
/// a four-thousandth.
const STEPS: u32 = 12;
/// What is left of an interval after each, (√5 − 1)/2.
const GOLDEN: f64 = 0.618_033_988_749_894_8;
/// Gain in chance, in points, below which a wish is left as it is: a convention chosen here.
const WORTH_IT: f64 = 1.0;

/// The brew that a recipe means, by a hand and a brewer that stray.
fn intended(
    recipe: &Recipe,
    brewer: &Brewer,
    coffee: &Coffee,
    kitchen: &Kitchen,
    straying: &Straying,
) -> Intended {
    Intended {
        dose: Estimate::with(recipe.dose, straying.dose),
        water: Estimate::with(recipe.water, straying.water),
        extracted: Estimate::with(coffee.expected, straying.extracted),
        losses: brewer.losses,
        retention: straying.retention,
        other: straying.other,
        moisture: coffee.moisture,
        water_solids: kitchen.water_solids,
        held_strength: brewer.held_strength,
        portion: Estimate::with(recipe.brew_per_cup, straying.dose),
        added: if recipe.added_per_cup.grams() > 0.0 {
            Estimate::with(recipe.added_per_cup, straying.water)
        } else {
            Estimate::exact(recipe.added_per_cup)
        },
    }
}

/// A recipe and what it leads to.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Foreseen {
    /// The recipe.
    pub recipe: Recipe,
    /// What it leads to, and the chance that it lands in the wish's window; none without a window.
    pub outlook: Option<Outlook>,
}

/// The recipe of a wish, what it leads to, and the chance that it lands in the wish's window.
///
/// ```text
/// recipe, then P(strength and yield inside) of what it leads to
/// ```
///
/// Symbols: P by [`crate::decision::joint`]. Source: conservation of water, solids and heat; the
/// chance by JCGM 106:2012, 7.
///
/// Both count the yield as the window does, and neither judges it where the window does not say how.
///
/// # Errors
/// As [`recipe`] and [`forecast::outlook`].
pub fn foreseen(
    wish: &Wish,
    brewer: &Brewer,
    coffee: &Coffee,
    kitchen: &Kitchen,
    straying: &Straying,
) -> Result<Foreseen, Error> {
    let recipe = recipe(wish, brewer, coffee, kitchen)?;
    let meant = intended(&recipe, brewer, coffee, kitchen, straying);
    let outlook = wish.window.map(|window| forecast::outlook(&meant, &window)).transpose()?;
    Ok(Foreseen { recipe, outlook })
}

/// The recipe that lands in the wish's window most surely: the wish with its strength moved inside the
/// window, where that is worth a point of chance; else, and without a window, the wish as it is.
///
/// ```text
/// T* = argmax P(strength and yield inside) over the strengths T of the window
/// ```
///
/// Symbols: T strength wished, P as in [`foreseen`]. Source: conservation of water, solids and
/// heat; the chance by JCGM 106:2012, 7; that a point of chance is worth it is a convention chosen
/// here.
///
/// The chance of a strength is that of the dose alone changed, found by golden section; the recipe is then
/// planned anew. Where that strength cannot be planned, for the chamber or the batches, it is the nearest to
/// it that can, found by bisection to a four-thousandth of the way. Near an edge a wish gains most; in the
/// middle it is left alone.
///
/// # Errors
/// As [`foreseen`] for the wish as it is.
pub fn surest(
    wish: &Wish,
    brewer: &Brewer,
    coffee: &Coffee,
    kitchen: &Kitchen,
    straying: &Straying,
) -> Result<Foreseen, Error> {
    let wished = foreseen(wish, brewer, coffee, kitchen, straying)?;
    let Some(window) = &wish.window else { return Ok(wished) };
    let meant = intended(&wished.recipe, brewer, coffee, kitchen, straying);
    let of = |strength| Wish { strength, ..*wish };
    let is_planned = |strength| recipe(&of(strength), brewer, coffee, kitchen).is_ok();
    let other = likeliest(&meant, window)
        .and_then(|strength| nearest(wish.strength, strength, is_planned))
        .and_then(|strength| foreseen(&of(strength), brewer, coffee, kitchen, straying).ok());
    let chance = |of: &Foreseen| of.outlook.map_or(0.0, |outlook| outlook.inside.percent());
    let gain = |other: &Foreseen| chance(other) - chance(&wished) >= WORTH_IT;
    Ok(other.filter(gain).unwrap_or(wished))
}

/// The strength nearest to one sought that can be planned, on the way there from one that can.
fn nearest(
    planned: Strength,
    sought: Strength,
    is_planned: impl Fn(Strength) -> bool,
) -> Option<Strength> {
    if is_planned(sought) {
        return Some(sought);
    }
    let way = sought.percent() - planned.percent();
    let (mut done, mut step) = (0.0, 0.5);
    for _ in 0..STEPS {
        if Strength::accept(planned.percent() + (done + step) * way).is_some_and(&is_planned) {
            done += step;
        }
        step *= 0.5;
    }
    Strength::accept(planned.percent() + done * way)
}

/// The strength of the drink, inside the window, that is the likeliest to land there.
fn likeliest(meant: &Intended, window: &Window) -> Option<Strength> {
    let (portion, added) = (meant.portion.value.grams(), meant.added.value.grams());
    let chance = |drink: f64| {
        let of_brew = drink + (drink - 100.0 * meant.water_solids.fraction()) * added / portion;
        let dose = Strength::accept(of_brew).and_then(|t| Dose::accept(meant.dose_for(t)));
        let other =
            dose.map(|dose| Intended { dose: Estimate { value: dose, ..meant.dose }, ..*meant });
        other
            .and_then(|other| forecast::outlook(&other, window).ok())
            .map_or(-1.0, |outlook| outlook.inside.percent())
    };
    let (mut low, mut high) =
        (window.strength.lowest().percent(), window.strength.highest().percent());
    let (mut left, mut right) = (high - GOLDEN * (high - low), low + GOLDEN * (high - low));
    let (mut of_left, mut of_right) = (chance(left), chance(right));
    for _ in 0..STEPS {
        if of_left >= of_right {
            (high, right, of_right) = (right, left, of_left);
            left = high - GOLDEN * (high - low);
            of_left = chance(left);
        } else {
            (low, left, of_left) = (left, right, of_right);
            right = low + GOLDEN * (high - low);
            of_right = chance(right);
        }
    }
    Strength::accept(low + (high - low) / 2.0)
}
