//! What a call comes back with.

use core::ffi::c_char;

/// Whether a function answered, and if not, why. A value never changes its meaning and is never used
/// again for another.
#[repr(i32)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum cupwright_status {
    /// It answered.
    Ok = 0,
    /// An input is outside its range, or not a number.
    OutOfRange = 1,
    /// A count is not a whole number. Not from C, where counts are integers.
    NotWhole = 2,
    /// An input is in its range, but impossible beside another one.
    Impossible = 3,
    /// A band's lowest edge is not below its highest.
    EmptyBand = 4,
    /// What follows from the inputs leaves its range.
    ResultOutOfRange = 5,
    /// A wish cannot be met; the error's `nearest` can.
    Infeasible = 6,
    /// A pointer that is needed is NULL.
    Null = 7,
    /// A field that stands for a choice has a value that is none of them.
    UnknownChoice = 8,
    /// An error that this version of the interface has no name for.
    Unnamed = 9,
    /// Measurements that cannot tell what they are for; the error's `limit` says why.
    CannotTell = 10,
    /// Bytes of something else than is read from them, or damaged ones; the error's `limit` says which.
    Unreadable = 11,
    /// A state that was never begun, or one of another version of this library.
    NotBegun = 12,
    /// A profile that lacks a part which the answer needs; the error's `field` names it.
    NotKept = 13,
}

/// What stands in the way of a wish, in the `limit` of an error.
#[repr(i32)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum cupwright_limit {
    /// Adding water only ever weakens.
    AddingWaterWeakens = 1,
    /// No amount of the water brings the strength so low.
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

/// Why measurements cannot tell, in the `limit` of an error. Its `value` is how much there is of what
/// is wanting, its `lowest` how much is needed for a start: cupwright_wanting_text().
#[repr(i32)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum cupwright_untold {
    /// Too few measurements.
    TooFew = 1,
    /// All doses alike, or nearly so, so that only what is kept in all is known.
    OneDose = 2,
    /// What it is told by does not vary, or is all zero.
    NoSpan = 3,
    /// The yield has not begun to level off, so where it will is not known.
    StillRising = 4,
    /// The yield has levelled off before the first measurement.
    LevelledOff = 5,
    /// One rate describes the measurements as well as two.
    OneRate = 6,
    /// The yield falls with time, which no extraction does.
    Falling = 7,
    /// The readings rise, or follow no cooling at all.
    NotCooling = 8,
}

/// Why bytes cannot be read, in the `limit` of an error: cupwright_unreadable_text().
#[repr(i32)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum cupwright_unreadable {
    /// Not as many bytes as there should be; the error's `value` is how many there are.
    Length = 1,
    /// They do not begin as they should: they are something else.
    Foreign = 2,
    /// A version of the layout that this library does not know; the error's `value` is which.
    Version = 3,
    /// Some of them have changed since they were written; the error's `value` is the check value there.
    Damaged = 4,
    /// The check value is right, but something lies where this version has nothing.
    NotBlank = 5,
    /// The check value is right, but no such state can be.
    Unsound = 6,
}

/// The facts of a refusal. Numbers are in the quantity's own unit; what does not apply is zero.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_error {
    /// The value given or computed. May be infinite or not a number. Of measurements that cannot
    /// tell, how much there is of what is wanting.
    pub value: f64,
    /// The lowest value that is accepted, or that is possible beside the other inputs. Of
    /// measurements that cannot tell, how much is needed for a start.
    pub lowest: f64,
    /// The highest.
    pub highest: f64,
    /// For an infeasible wish, the nearest value that can be had.
    pub nearest: f64,
    /// The status that was returned: one of enum cupwright_status.
    pub status: i32,
    /// What the value is: one of enum cupwright_quantity, or 0.
    pub quantity: i32,
    /// For an impossible value, the input that it does not go with: one of enum cupwright_quantity.
    pub beside: i32,
    /// For an infeasible wish, what stands in the way: one of enum cupwright_limit. For measurements
    /// that cannot tell, why: one of enum cupwright_untold. For unreadable bytes, why: one of enum
    /// cupwright_unreadable.
    pub limit: i32,
    /// The parameter or field to blame, by its name; NULL where the fault is not one input's.
    pub field: *const c_char,
}
