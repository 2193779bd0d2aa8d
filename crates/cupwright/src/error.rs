//! What can go wrong, with the facts: which quantity, what value, which range.
//!
//! Every fallible function returns [`Error`]. Nothing is clamped and nothing panics. Each variant
//! carries numbers in the quantity's own unit ([`Quantity::unit`]), so a caller can show its own
//! message, mark the right field of a form, or offer the nearest value that works.

use crate::quantity::{Quantity, Strength};

/// Why a function could not answer.
#[derive(Clone, Copy, Debug, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum Error {
    /// An input outside the range of its row in the quantity table, or outside a window that the
    /// caller gave itself; or not a number.
    #[error("{}: {value}{unit} is outside {lowest} to {highest}{unit}", .quantity.name(), unit = Unit(*.quantity))]
    OutOfRange {
        /// What was given.
        quantity: Quantity,
        /// The value given.
        value: f64,
        /// The lowest value accepted.
        lowest: f64,
        /// The highest value accepted.
        highest: f64,
    },

    /// A count that is not a whole number.
    #[error("{}: {value} is not a whole number from {lowest} to {highest}", .quantity.name())]
    NotWhole {
        /// What was given.
        quantity: Quantity,
        /// The value given.
        value: f64,
        /// The lowest count accepted.
        lowest: f64,
        /// The highest count accepted.
        highest: f64,
    },

    /// An input that is in its own range, but impossible beside another one.
    #[error(fmt = impossible)]
    Impossible {
        /// What was given.
        quantity: Quantity,
        /// The value given.
        value: f64,
        /// The lowest value that goes with the other inputs.
        lowest: f64,
        /// The highest value that goes with the other inputs.
        highest: f64,
        /// The input that it does not go with.
        beside: Quantity,
    },

    /// A band whose lowest edge is not below its highest.
    #[error("{}: a band from {lowest} to {highest}{} is empty", .quantity.name(), Unit(*.quantity))]
    EmptyBand {
        /// What the band is of.
        quantity: Quantity,
        /// The lowest edge given.
        lowest: f64,
        /// The highest edge given.
        highest: f64,
    },

    /// A computed value that leaves its quantity's range: the inputs are each possible, what
    /// follows from them is not.
    #[error(
        "{} comes out as {}{unit}, outside {lowest} to {highest}{unit}",
        .quantity.name(), Rounded(*.value), unit = Unit(*.quantity)
    )]
    ResultOutOfRange {
        /// What was computed.
        quantity: Quantity,
        /// The value computed. May be infinite.
        value: f64,
        /// The lowest value of the quantity.
        lowest: f64,
        /// The highest value of the quantity.
        highest: f64,
    },

    /// A wish that cannot be met, and the nearest one that can.
    #[error(
        "{}: {}{unit} cannot be reached, {limit}; the nearest is {}{unit}",
        .wish.name(), Rounded(*.value), Rounded(*.nearest), unit = Unit(*.wish)
    )]
    Infeasible {
        /// What was wished.
        wish: Quantity,
        /// The value wished.
        value: f64,
        /// The nearest value that can be had.
        nearest: f64,
        /// What stands in the way.
        limit: Limit,
    },

    /// Measurements from which a parameter cannot be told.
    #[error(
        "{}: these measurements cannot tell it, {why} ({}: {}, needed for a start: {})",
        .quantity.name(), .why.wanting(), Rounded(*.found), Rounded(*.needed)
    )]
    CannotTell {
        /// The parameter.
        quantity: Quantity,
        /// Why not.
        why: Untold,
        /// How much there is of that which is wanting; [`Untold`] says what it is.
        found: f64,
        /// How much of it is needed for a start.
        needed: f64,
    },

    /// A part that a profile does not hold, and that the answer needs.
    #[error("{field}: the profile has none")]
    NotKept {
        /// The field, by its name outside Rust.
        field: &'static str,
    },
}

impl Error {
    /// A strength that cannot be, since the minerals of the water alone make it `lowest` percent.
    pub(crate) fn weaker_than_its_water(strength: Strength, lowest: f64) -> Self {
        Self::Impossible {
            quantity: Quantity::Strength,
            value: strength.percent(),
            lowest,
            highest: Quantity::Strength.highest(),
            beside: Quantity::WaterSolids,
        }
    }
}

/// The constraint that binds when a wish cannot be met.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[non_exhaustive]
#[repr(u16)]
pub enum Limit {
    /// Adding water only ever weakens.
    AddingWaterWeakens = 1,
    /// No amount of the water brings the strength so low; its own minerals may stand in the way.
    NoWaterIsEnough = 2,
    /// Even boiling water does not arrive so hot.
    BoilingPoint = 3,
    /// The chamber cannot hold it.
    Chamber = 4,
    /// The coffee cannot give so much at the yield expected.
    CoffeeGivesNoMore = 5,
    /// There is not enough of the brew.
    BrewOnHand = 6,
    /// The drink is colder than that when it is made.
    HeatLeft = 7,
    /// Cooling in this room ends above the wish.
    Surroundings = 8,
    /// The ice cannot take up so much heat, or there is not enough heat to melt so much.
    IceAndHeat = 9,
    /// Extraction never gets there at this equilibrium yield.
    EquilibriumYield = 10,
}

impl Limit {
    /// Every limit.
    pub const ALL: &'static [Limit] = &[
        Limit::AddingWaterWeakens,
        Limit::NoWaterIsEnough,
        Limit::BoilingPoint,
        Limit::Chamber,
        Limit::CoffeeGivesNoMore,
        Limit::BrewOnHand,
        Limit::HeatLeft,
        Limit::Surroundings,
        Limit::IceAndHeat,
        Limit::EquilibriumYield,
    ];

    /// The limit in plain words.
    pub const fn words(self) -> &'static str {
        match self {
            Limit::AddingWaterWeakens => "adding water only weakens",
            Limit::NoWaterIsEnough => "no amount of this water brings it so low",
            Limit::BoilingPoint => "even boiling water does not arrive so hot",
            Limit::Chamber => "the chamber does not hold it",
            Limit::CoffeeGivesNoMore => "the coffee gives no more at the yield expected",
            Limit::BrewOnHand => "there is not enough brew",
            Limit::HeatLeft => "the drink is not that hot when it is made",
            Limit::Surroundings => "the room does not cool it so far",
            Limit::IceAndHeat => "ice and heat do not balance there",
            Limit::EquilibriumYield => "extraction levels off below that",
        }
    }
}

impl core::fmt::Display for Limit {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        f.write_str(self.words())
    }
}

/// Why measurements cannot tell a parameter.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[non_exhaustive]
#[repr(u16)]
pub enum Untold {
    /// Too few measurements: how many, and how many are needed.
    TooFew = 1,
    /// All doses alike, or nearly so, so that only what is kept in all is known: the widest gap between doses, g.
    OneDose = 2,
    /// What it is told by does not vary, or is all zero: how far it spans, in its own unit.
    NoSpan = 3,
    /// The yield has not begun to level off, so where it will is not known: the longest contact, s.
    StillRising = 4,
    /// The yield has levelled off before the first measurement: how many lie before half of the
    /// shortest contact.
    LevelledOff = 5,
    /// One rate describes the measurements as well as two: the ratio F of the scatter that the
    /// second rate explains to that which it leaves; needed is what one rate exceeds once in
    /// twenty times.
    OneRate = 6,
    /// The yield falls with time, which no extraction does: that after the longest contact, %; needed is
    /// nine tenths of the highest.
    Falling = 7,
    /// The readings rise, or follow no cooling at all: the rate along them, 1/min; 0 where there is none.
    NotCooling = 8,
}

impl Untold {
    /// Every reason.
    pub const ALL: &'static [Untold] = &[
        Untold::TooFew,
        Untold::OneDose,
        Untold::NoSpan,
        Untold::StillRising,
        Untold::LevelledOff,
        Untold::OneRate,
        Untold::Falling,
        Untold::NotCooling,
    ];

    /// The reason in plain words.
    pub const fn words(self) -> &'static str {
        match self {
            Untold::TooFew => "there are too few",
            Untold::OneDose => "one dose size shows only what is kept in all",
            Untold::NoSpan => "nothing varies that would tell it",
            Untold::StillRising => "the yield does not level off before the longest contact",
            Untold::LevelledOff => "the yield has levelled off at the shortest contact",
            Untold::OneRate => "one rate describes them as well as two",
            Untold::Falling => "the yield falls with time, which no extraction does",
            Untold::NotCooling => "the readings do not fall as a cooling cup's do",
        }
    }

    /// What is wanting, in plain words: what [`Error::CannotTell`] counts.
    pub const fn wanting(self) -> &'static str {
        match self {
            Untold::TooFew => "measurements",
            Untold::OneDose => "gap between doses in g",
            Untold::NoSpan => "it spans",
            Untold::StillRising => "longest contact in s",
            Untold::LevelledOff => "measurements before half the shortest contact",
            Untold::OneRate => "F of the second rate",
            Untold::Falling => "yield after the longest contact in %",
            Untold::NotCooling => "cooling rate in 1/min",
        }
    }
}

impl core::fmt::Display for Untold {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        f.write_str(self.words())
    }
}

/// A value impossible beside another one; a clock that goes back.
fn impossible(
    quantity: &Quantity,
    value: &f64,
    lowest: &f64,
    highest: &f64,
    beside: &Quantity,
    f: &mut core::fmt::Formatter<'_>,
) -> core::fmt::Result {
    let (name, unit, lowest) = (quantity.name(), Unit(*quantity), Rounded(*lowest));
    if *quantity == Quantity::Clock {
        return write!(
            f,
            "{name}: {value}{unit} does not come after the one before, {lowest}{unit}"
        );
    }
    let (beside, highest) = (beside.name(), Rounded(*highest));
    write!(
        f,
        "{name}: {value}{unit} cannot be with the {beside} given; {lowest} to {highest}{unit} can"
    )
}

/// A unit after its number; a plain count has none.
struct Unit(Quantity);

impl core::fmt::Display for Unit {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        match self.0.unit() {
            "" => Ok(()),
            unit => write!(f, " {unit}"),
        }
    }
}

/// A computed number for a message: four decimals at most, no trailing noise of binary fractions.
struct Rounded(f64);

impl core::fmt::Display for Rounded {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        let scaled = crate::math::floor(self.0 * 1e4 + 0.5) / 1e4;
        // Past 2^53 / 1e4 the shift would lose digits that four decimals never had.
        if scaled.is_finite() { write!(f, "{scaled}") } else { write!(f, "{}", self.0) }
    }
}

#[cfg(test)]
mod tests {
    extern crate std;
    use super::*;
    use std::{collections::HashSet, string::ToString};

    #[test]
    fn messages_name_quantity_value_and_range() {
        let error = Error::OutOfRange {
            quantity: Quantity::Strength,
            value: f64::NAN,
            lowest: 0.0,
            highest: 50.0,
        };
        assert_eq!(error.to_string(), "strength: NaN % is outside 0 to 50 %");

        let error = Error::Infeasible {
            wish: Quantity::Temperature,
            value: 95.0,
            nearest: 92.299_999_999_3,
            limit: Limit::BoilingPoint,
        };
        assert_eq!(
            error.to_string(),
            "temperature: 95 °C cannot be reached, even boiling water does not arrive so hot; the nearest is 92.3 °C"
        );
    }

    #[test]
    fn limits_are_distinct() {
        let codes: HashSet<_> = Limit::ALL.iter().map(|l| *l as u16).collect();
        let words: HashSet<_> = Limit::ALL.iter().map(|l| l.words()).collect();
        assert_eq!(codes.len(), Limit::ALL.len());
        assert_eq!(words.len(), Limit::ALL.len());
    }
}
