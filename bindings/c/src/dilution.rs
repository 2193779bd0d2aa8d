//! Water, milk and ice in the cup, one brew split over cups.

use cupwright::dilution::{self, Iced};
use cupwright::quantity::{Measure, Quantity};

use crate::call::{Field, answer, checked, counted, field};
use crate::status::cupwright_error;

/// One brew poured over several cups and topped up with water.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_cup_split {
    /// Brew into each cup, {Beverage}.
    pub beverage_g: f64,
    /// Water into each cup, {Addition}.
    pub added_g: f64,
    /// Brew left over, {Rest}.
    pub rest_g: f64,
}

/// A drink of coffee and milk.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_milk_drink {
    /// Coffee and milk together, {Beverage}.
    pub beverage_g: f64,
    /// Solids from coffee and brew water, per mass of drink, {Strength}.
    pub strength_pct: f64,
    /// Solids from milk, per mass of drink, {MilkSolids}.
    pub milk_solids_pct: f64,
}

/// A drink on ice, when heat has come to rest.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_iced {
    /// Temperature of liquid and ice, {Temperature}.
    pub water_c: f64,
    /// Ice that melted, {Ice}.
    pub melted_g: f64,
    /// Ice that floats on, {Ice}.
    pub ice_g: f64,
    /// Strength of the liquid, {Strength}.
    pub strength_pct: f64,
}

/// What a wish for a strength is about.
const WANTED: &[(Quantity, Field)] = &[(Quantity::Strength, field!(wanted_pct))];

/// What a wish for cups of a strength is about.
const WANTED_CUP: &[(Quantity, Field)] =
    &[(Quantity::Strength, field!(wanted_pct)), (Quantity::Beverage, field!(cup_g))];

/// What a wish for a drink on ice is about.
const ICE: &[(Quantity, Field)] = &[(Quantity::Ice, field!(ice_g))];

/// What a wish for a colder drink is about.
const COOLER: &[(Quantity, Field)] = &[(Quantity::Temperature, field!(wanted_c))];

/// Strength after adding water, T' = (T B + s A)/(B + A).
///
/// @param beverage_g Beverage, {Beverage}.
/// @param strength_pct Strength of the brew, {Strength}.
/// @param added_g Water added, {Addition}.
/// @param water_solids_mg_per_l Solids of the water, {WaterSolids}.
/// @param[out] after_pct {Strength}.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_dilution_strength_after_water(
    beverage_g: f64,
    strength_pct: f64,
    added_g: f64,
    water_solids_mg_per_l: f64,
    after_pct: *mut f64,
    error: *mut cupwright_error,
) -> i32 {
    answer!(after_pct, error, |call| Ok({
        let (beverage, strength) = (checked!(call, beverage_g)?, checked!(call, strength_pct)?);
        let (added, water) = (checked!(call, added_g)?, checked!(call, water_solids_mg_per_l)?);
        call.core(dilution::strength_after_water(beverage, strength, added, water))?.value()
    }))
}

/// Water to add for a wanted strength, A = B (T − T')/(T' − s).
///
/// @param beverage_g Beverage, {Beverage}.
/// @param strength_pct Strength of the brew, {Strength}.
/// @param wanted_pct Strength wanted, {Strength}.
/// @param water_solids_mg_per_l Solids of the water, {WaterSolids}.
/// @param[out] added_g {Addition}.
///
/// Fails with CUPWRIGHT_STATUS_INFEASIBLE for a wish above the strength at hand, since adding water
/// only weakens, and for one that no amount of this water comes down to;
/// CUPWRIGHT_STATUS_IMPOSSIBLE for a brew weaker than its own water.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_dilution_water_to_reach(
    beverage_g: f64,
    strength_pct: f64,
    wanted_pct: f64,
    water_solids_mg_per_l: f64,
    added_g: *mut f64,
    error: *mut cupwright_error,
) -> i32 {
    answer!(added_g, error, |call| Ok({
        let (beverage, strength) = (checked!(call, beverage_g)?, checked!(call, strength_pct)?);
        let (wanted, water) = (checked!(call, wanted_pct)?, checked!(call, water_solids_mg_per_l)?);
        call.wish(WANTED, dilution::water_to_reach(beverage, strength, wanted, water))?.value()
    }))
}

/// Beverage that a strong brew makes when water takes it down to a wanted strength, brew and water
/// together, B (T − s)/(T' − s).
///
/// @param beverage_g Beverage, {Beverage}.
/// @param strength_pct Strength of the brew, {Strength}.
/// @param wanted_pct Strength wanted, {Strength}.
/// @param water_solids_mg_per_l Solids of the water, {WaterSolids}.
/// @param[out] cup_g {Beverage}.
///
/// Fails with CUPWRIGHT_STATUS_INFEASIBLE for a wish above the strength at hand, since adding water
/// only weakens, and for one that no amount of this water comes down to;
/// CUPWRIGHT_STATUS_IMPOSSIBLE for a brew weaker than its own water;
/// CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE for a drink larger than a beverage may be.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_dilution_drink_of_brew(
    beverage_g: f64,
    strength_pct: f64,
    wanted_pct: f64,
    water_solids_mg_per_l: f64,
    cup_g: *mut f64,
    error: *mut cupwright_error,
) -> i32 {
    answer!(cup_g, error, |call| Ok({
        let (brew, strength) = (checked!(call, beverage_g)?, checked!(call, strength_pct)?);
        let (wanted, water) = (checked!(call, wanted_pct)?, checked!(call, water_solids_mg_per_l)?);
        call.wish(WANTED, dilution::drink_of_brew(brew, strength, wanted, water))?.value()
    }))
}

/// Brew needed so that, with water added, a drink of a wanted size and strength results, B = C (T'
/// − s)/(T − s).
///
/// @param cup_g The drink, {Beverage}.
/// @param strength_pct Strength of the brew, {Strength}.
/// @param wanted_pct Strength wanted, {Strength}.
/// @param water_solids_mg_per_l Solids of the water, {WaterSolids}.
/// @param[out] beverage_g {Beverage}.
///
/// Fails with CUPWRIGHT_STATUS_INFEASIBLE for a wish above the strength of the brew and for one so
/// weak that it takes less brew than a beverage may be; CUPWRIGHT_STATUS_IMPOSSIBLE for a brew
/// weaker than its own water.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_dilution_brew_for_drink(
    cup_g: f64,
    strength_pct: f64,
    wanted_pct: f64,
    water_solids_mg_per_l: f64,
    beverage_g: *mut f64,
    error: *mut cupwright_error,
) -> i32 {
    answer!(beverage_g, error, |call| Ok({
        let (drink, strength) = (checked!(call, cup_g)?, checked!(call, strength_pct)?);
        let (wanted, water) = (checked!(call, wanted_pct)?, checked!(call, water_solids_mg_per_l)?);
        call.wish(WANTED, dilution::brew_for_drink(drink, strength, wanted, water))?.value()
    }))
}

/// Splits one brew over cups of a wanted size and strength.
///
/// @param beverage_g The brew, {Beverage}.
/// @param strength_pct Strength of the brew, {Strength}.
/// @param servings Cups, {Servings}.
/// @param cup_g Size of the drink in each, {Beverage}.
/// @param wanted_pct Strength wanted, {Strength}.
/// @param water_solids_mg_per_l Solids of the water, {WaterSolids}.
/// @param[out] split What goes into each cup, and the rest.
///
/// Fails with CUPWRIGHT_STATUS_INFEASIBLE where the brew does not last, with the largest cup of
/// that strength as the nearest; otherwise as cupwright_dilution_brew_for_drink().
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_dilution_split(
    beverage_g: f64,
    strength_pct: f64,
    servings: i32,
    cup_g: f64,
    wanted_pct: f64,
    water_solids_mg_per_l: f64,
    split: *mut cupwright_cup_split,
    error: *mut cupwright_error,
) -> i32 {
    answer!(split, error, |call| Ok({
        let (brew, strength) = (checked!(call, beverage_g)?, checked!(call, strength_pct)?);
        let (cups, cup) = (counted!(call, servings)?, checked!(call, cup_g)?);
        let (wanted, water) = (checked!(call, wanted_pct)?, checked!(call, water_solids_mg_per_l)?);
        let split =
            call.wish(WANTED_CUP, dilution::split(brew, strength, cups, cup, wanted, water))?;
        cupwright_cup_split {
            beverage_g: split.brew.value(),
            added_g: split.added.value(),
            rest_g: split.rest.value(),
        }
    }))
}

/// Coffee with milk, the two kinds of solids kept apart, T B/(B + A) and M A/(B + A). A
/// refractometer cannot tell them apart: read the strength before the milk goes in. Milk is
/// perishable: local food rules apply.
///
/// @param beverage_g Beverage, {Beverage}.
/// @param strength_pct Strength of the brew, {Strength}.
/// @param added_g Milk, {Addition}.
/// @param milk_solids_pct Solids of the milk, {MilkSolids}.
/// @param[out] drink The drink.
///
/// Fails with CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE for a drink larger than a beverage may be.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_dilution_with_milk(
    beverage_g: f64,
    strength_pct: f64,
    added_g: f64,
    milk_solids_pct: f64,
    drink: *mut cupwright_milk_drink,
    error: *mut cupwright_error,
) -> i32 {
    answer!(drink, error, |call| Ok({
        let (beverage, strength) = (checked!(call, beverage_g)?, checked!(call, strength_pct)?);
        let (milk, milk_solids) = (checked!(call, added_g)?, checked!(call, milk_solids_pct)?);
        let drink = call.core(dilution::with_milk(beverage, strength, milk, milk_solids))?;
        cupwright_milk_drink {
            beverage_g: drink.drink.value(),
            strength_pct: drink.strength.value(),
            milk_solids_pct: drink.milk_solids.value(),
        }
    }))
}

/// Temperature of two waters or brews mixed, B h(t1) + A h(t2) = (B + A) h(t). A brew's heat
/// content is taken as water's: a mixture moves by less than 0.2 K at filter strength, 1 K at 10 %.
///
/// @param hot_g One liquid, {Liquid}.
/// @param hot_c Its temperature, {Temperature}.
/// @param cold_g The other, {Addition}.
/// @param cold_c Its temperature, {Temperature}.
/// @param[out] water_c {Temperature}.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_dilution_mixed_temperature(
    hot_g: f64,
    hot_c: f64,
    cold_g: f64,
    cold_c: f64,
    water_c: *mut f64,
    error: *mut cupwright_error,
) -> i32 {
    answer!(water_c, error, |call| Ok({
        let (liquid, temperature) = (checked!(call, hot_g)?, checked!(call, hot_c)?);
        let (added, added_temperature) = (checked!(call, cold_g)?, checked!(call, cold_c)?);
        call.core(dilution::mixed_temperature(liquid, temperature, added, added_temperature))?
            .value()
    }))
}

/// Temperature of a brew with milk, the milk's specific heat taken as CUPWRIGHT_MILK_J_PER_G_K
/// whatever its fat.
///
/// @param hot_g The brew, {Liquid}.
/// @param hot_c Its temperature, {Temperature}.
/// @param cold_g The milk, {Addition}.
/// @param cold_c Its temperature, {Temperature}.
/// @param[out] water_c {Temperature}.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_dilution_mixed_with_milk_temperature(
    hot_g: f64,
    hot_c: f64,
    cold_g: f64,
    cold_c: f64,
    water_c: *mut f64,
    error: *mut cupwright_error,
) -> i32 {
    answer!(water_c, error, |call| Ok({
        let (liquid, temperature) = (checked!(call, hot_g)?, checked!(call, hot_c)?);
        let (milk, milk_temperature) = (checked!(call, cold_g)?, checked!(call, cold_c)?);
        call.core(dilution::mixed_with_milk_temperature(
            liquid,
            temperature,
            milk,
            milk_temperature,
        ))?
        .value()
    }))
}

fn of_iced(iced: &Iced) -> cupwright_iced {
    cupwright_iced {
        water_c: iced.temperature.value(),
        melted_g: iced.melted.value(),
        ice_g: iced.left.value(),
        strength_pct: iced.strength.value(),
    }
}

/// A drink over ice: all melted, or at 0 °C with some left, by the balance of heat. The glass and
/// the air give nothing. Iced drinks are under local food rules. Source: IAPWS R10-06 for ice.
///
/// @param beverage_g Beverage, {Beverage}.
/// @param water_c Temperature of the drink, {Temperature}.
/// @param strength_pct Its strength, {Strength}.
/// @param ice_g Ice, {Ice}.
/// @param ice_c Temperature of the ice, {IceTemperature}.
/// @param[out] iced The drink at rest.
///
/// Fails with CUPWRIGHT_STATUS_INFEASIBLE for ice so cold and plentiful that the drink itself would
/// begin to freeze.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_dilution_iced(
    beverage_g: f64,
    water_c: f64,
    strength_pct: f64,
    ice_g: f64,
    ice_c: f64,
    iced: *mut cupwright_iced,
    error: *mut cupwright_error,
) -> i32 {
    answer!(iced, error, |call| Ok({
        let (beverage, temperature) = (checked!(call, beverage_g)?, checked!(call, water_c)?);
        let (strength, ice) = (checked!(call, strength_pct)?, checked!(call, ice_g)?);
        let at = checked!(call, ice_c)?;
        of_iced(&call.wish(ICE, dilution::iced(beverage, temperature, strength, ice, at))?)
    }))
}

/// Ice that brings a drink to a temperature, all of it melted: the inverse of
/// cupwright_dilution_iced().
///
/// @param beverage_g Beverage, {Beverage}.
/// @param water_c Temperature of the drink, {Temperature}.
/// @param wanted_c Temperature wanted, {Temperature}.
/// @param ice_c Temperature of the ice, {IceTemperature}.
/// @param[out] ice_g {Ice}.
///
/// Fails with CUPWRIGHT_STATUS_INFEASIBLE for a wish above the drink's own temperature;
/// CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE outside the range of the ice.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_dilution_ice_to_reach(
    beverage_g: f64,
    water_c: f64,
    wanted_c: f64,
    ice_c: f64,
    ice_g: *mut f64,
    error: *mut cupwright_error,
) -> i32 {
    answer!(ice_g, error, |call| Ok({
        let (beverage, temperature) = (checked!(call, beverage_g)?, checked!(call, water_c)?);
        let (wanted, ice) = (checked!(call, wanted_c)?, checked!(call, ice_c)?);
        call.wish(COOLER, dilution::ice_to_reach(beverage, temperature, wanted, ice))?.value()
    }))
}
