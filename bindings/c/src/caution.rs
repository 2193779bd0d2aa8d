//! What can hurt.

use cupwright::caution::{self, Cautions, Hazards, TimeToBurn};
use cupwright::quantity::Measure;

use crate::call::{answer, checked, given, optional};
use crate::status::cupwright_error;

/// What can hurt. Plain words: cupwright_caution_text(). A set of cautions is a uint32_t with bit 1
/// << n for the caution n. They defer to local codes, the equipment's instructions and licensed
/// practice.
#[repr(i32)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum cupwright_caution {
    /// Liquid at or above CUPWRIGHT_SCALDING_C.
    Scald = 1,
    /// A drink above CUPWRIGHT_VERY_HOT_DRINK_C.
    VeryHotDrink = 2,
    /// Hot liquid pressed by hand.
    Pressing = 3,
    /// Glass that meets hot or cold liquid.
    GlassShock = 4,
    /// More caffeine in a serving than CUPWRIGHT_SINGLE_DOSE_CAFFEINE_MG.
    Caffeine = 5,
    /// Milk in the drink.
    Milk = 6,
    /// Ice in the drink.
    Ice = 7,
}

/// What there is to know of a drink for its cautions. Yes is anything but 0.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_hazards {
    /// The hottest liquid handled on the way, {Temperature}.
    pub hottest_c: f64,
    /// The drink when it is handed over, {Temperature}.
    pub served_c: f64,
    /// Caffeine of a serving, {Caffeine}; not looked at where unknown.
    pub caffeine_mg: f64,
    /// Whether the caffeine is known.
    pub has_caffeine: i32,
    /// Pressed by hand.
    pub pressed: i32,
    /// Glass meets hot or iced liquid.
    pub glass: i32,
    /// Milk goes in.
    pub milk: i32,
    /// Ice goes in.
    pub ice: i32,
}

/// How fast hot water burns adult skin seriously.
#[repr(i32)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum cupwright_burn {
    /// Below 48.9 °C. Long contact still burns.
    MoreThanFiveMinutes = 1,
    /// In so much time.
    Within = 2,
    /// Above 68 °C.
    UnderOneSecond = 3,
}

/// A burn and its time.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_time_to_burn {
    /// The time, {Time}; 0 unless the burn is CUPWRIGHT_BURN_WITHIN.
    pub time_s: f64,
    /// How fast: one of enum cupwright_burn.
    pub burn: i32,
}

/// A set of cautions as bits.
pub(crate) fn bits(cautions: Cautions) -> u32 {
    cautions.iter().fold(0, |bits, caution| bits | 1_u32.wrapping_shl(caution as u32))
}

/// The cautions that a drink calls for.
///
/// @param hazards What there is to know.
/// @param[out] cautions A bit 1 << n for each of enum cupwright_caution.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_caution_of(
    hazards: *const cupwright_hazards,
    cautions: *mut u32,
    error: *mut cupwright_error,
) -> i32 {
    answer!(cautions, error, |call| Ok({
        let hazards = given!(call, hazards)?;
        bits(caution::of(&Hazards {
            hottest: checked!(call, hazards.hottest_c)?,
            served: checked!(call, hazards.served_c)?,
            pressed: hazards.pressed != 0,
            glass: hazards.glass != 0,
            caffeine: optional!(call, hazards.has_caffeine, caffeine_mg)?,
            milk: hazards.milk != 0,
            ice: hazards.ice != 0,
        }))
    }))
}

/// How fast hot water burns adult skin seriously: between published points, ln t straight with
/// temperature. Lists differ by up to a factor of two and this takes the shortest; children burn
/// faster still. A reminder of how little time there is, never a safe limit.
///
/// @param water_c Temperature, {Temperature}.
/// @param[out] burns The burn and its time.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_caution_time_to_burn(
    water_c: f64,
    burns: *mut cupwright_time_to_burn,
    error: *mut cupwright_error,
) -> i32 {
    answer!(burns, error, |call| Ok({
        let (burn, time_s) = match caution::time_to_burn(checked!(call, water_c)?) {
            TimeToBurn::Within(time) => (cupwright_burn::Within, time.value()),
            TimeToBurn::MoreThanFiveMinutes => (cupwright_burn::MoreThanFiveMinutes, 0.0),
            _ => (cupwright_burn::UnderOneSecond, 0.0),
        };
        cupwright_time_to_burn { time_s, burn: burn as i32 }
    }))
}

/// Caffeine of a serving, dose × content × share extracted. Brewing takes out some 70 to 100 %
/// (weak sources); 100 is the cautious choice.
///
/// @param dose_g Dose as weighed, {Dose}.
/// @param caffeine_mg_per_g Content as weighed, {CaffeineContent}.
/// @param share_pct Share extracted, {Share}.
/// @param[out] caffeine_mg {Caffeine}.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_caution_caffeine(
    dose_g: f64,
    caffeine_mg_per_g: f64,
    share_pct: f64,
    caffeine_mg: *mut f64,
    error: *mut cupwright_error,
) -> i32 {
    answer!(caffeine_mg, error, |call| Ok({
        let (dose, content) = (checked!(call, dose_g)?, checked!(call, caffeine_mg_per_g)?);
        call.core(caution::caffeine(dose, content, checked!(call, share_pct)?))?.value()
    }))
}
