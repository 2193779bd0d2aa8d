//! After the brew: water, milk and ice in the cup, one brew split over cups, and how warm it gets.
//!
//! Adding water to a finished brew is also called bypass.
//!
//! All of it is two balances: solids with mass, heat with mass. A diluent brings its own solids:
//! water its minerals, milk its milk solids, which are kept apart from the coffee's. Heat lost to a
//! cold cup or to the air is in [`crate::heat`].

use crate::error::{Error, Limit};
use crate::math::{just_above, just_below};
use crate::quantity::{
    Addition, Beverage, Ice, IceTemperature, Liquid, Measure, MilkSolids, Quantity, Rest, Servings,
    Strength, Temperature, WaterSolids, computed,
};
use crate::record::record;
use crate::water;

/// Strength after adding water.
///
/// ```text
/// T' = (T B + s A)/(B + A)
/// ```
///
/// Symbols: T' strength after, T strength before, B beverage, s solids of the water, A water added.
/// Source: conservation of solids.
///
/// # Errors
/// None in range; the `Result` guards the range of [`Strength`].
///
/// ```
/// # use cupwright::{dilution, quantity::*};
/// let after = dilution::strength_after_water(
///     Beverage::from_grams(45.0)?,
///     Strength::from_percent(5.2)?,
///     Addition::from_grams(120.0)?,
///     WaterSolids::NONE,
/// )?;
/// assert_eq!(after.to_string(), "1.42 %");
/// # Ok::<(), cupwright::Error>(())
/// ```
pub fn strength_after_water(
    beverage: Beverage,
    strength: Strength,
    added: Addition,
    water: WaterSolids,
) -> Result<Strength, Error> {
    let (b, a) = (beverage.grams(), added.grams());
    computed((strength.percent() * b + 100.0 * water.fraction() * a) / (b + a))
}

/// Water to add for a wanted strength.
///
/// ```text
/// A = B (T − T')/(T' − s)
/// ```
///
/// Symbols: A water added, B beverage, T strength at hand, T' strength wanted, s solids of the
/// water. Source: conservation of solids.
///
/// # Errors
/// [`Error::Infeasible`] for a wish above the strength at hand, since adding water only weakens, and
/// for a wish that the most water that [`Addition`] allows does not come down to.
/// [`Error::Impossible`] for a brew weaker than its own water.
///
/// ```
/// # use cupwright::{dilution, quantity::*};
/// let too_strong = dilution::water_to_reach(
///     Beverage::from_grams(170.0)?,
///     Strength::from_percent(1.2)?,
///     Strength::from_percent(1.3)?,
///     WaterSolids::NONE,
/// );
/// assert_eq!(
///     too_strong.unwrap_err().to_string(),
///     "strength: 1.3 % cannot be reached, adding water only weakens; the nearest is 1.2 %",
/// );
/// # Ok::<(), cupwright::Error>(())
/// ```
pub fn water_to_reach(
    beverage: Beverage,
    strength: Strength,
    wanted: Strength,
    water: WaterSolids,
) -> Result<Addition, Error> {
    weaker(strength, wanted, water)?;
    if let Some(added) = Addition::accept(grams_to_reach(beverage, strength, wanted, water)) {
        return Ok(added);
    }
    let most = Addition::known(just_below(Quantity::Addition.highest()));
    Err(Error::Infeasible {
        wish: Quantity::Strength,
        value: wanted.percent(),
        nearest: strength_after_water(beverage, strength, most, water)?.percent(),
        limit: Limit::NoWaterIsEnough,
    })
}

/// [`water_to_reach`] in grams, not checked; NaN where no water does it.
pub(crate) fn grams_to_reach(
    beverage: Beverage,
    strength: Strength,
    wanted: Strength,
    water: WaterSolids,
) -> f64 {
    let minerals = 100.0 * water.fraction();
    let (from, to) = (strength.percent(), wanted.percent());
    let added = beverage.grams() * (from - to) / (to - minerals);
    let can_be = (from >= minerals) & (from > to) & (to > minerals);
    let added = if can_be { added } else { f64::NAN };
    // Nothing to add, even to a brew no stronger than its water.
    if (from == to) & (from >= minerals) { 0.0 } else { added }
}

/// Refuses a brew weaker than its own water, and a wish stronger than the brew.
fn weaker(strength: Strength, wanted: Strength, water: WaterSolids) -> Result<(), Error> {
    let minerals = 100.0 * water.fraction();
    if strength.percent() < minerals {
        return Err(Error::weaker_than_its_water(strength, minerals));
    }
    if wanted > strength {
        return Err(Error::Infeasible {
            wish: Quantity::Strength,
            value: wanted.percent(),
            nearest: strength.percent(),
            limit: Limit::AddingWaterWeakens,
        });
    }
    Ok(())
}

/// Beverage that a strong brew makes when water takes it down to a wanted strength: brew and water
/// together. The inverse, the brew needed for a drink, is [`brew_for_drink`].
///
/// ```text
/// C = B (T − s)/(T' − s)
/// ```
///
/// Symbols: C drink, B brew, T its strength, T' strength wanted, s solids of the water. Source:
/// conservation of solids.
///
/// # Errors
/// As [`water_to_reach`]; [`Error::ResultOutOfRange`] for a drink larger than [`Beverage`] allows.
pub fn drink_of_brew(
    brew: Beverage,
    strength: Strength,
    wanted: Strength,
    water: WaterSolids,
) -> Result<Beverage, Error> {
    let added = water_to_reach(brew, strength, wanted, water)?;
    computed(brew.grams() + added.grams())
}

/// Brew needed so that, with water added, a drink of a wanted size and strength results.
///
/// ```text
/// B = C (T' − s)/(T − s)
/// ```
///
/// Symbols: B brew, C drink, T' strength wanted, s solids of the water, T strength of the brew.
/// Source: conservation of solids.
///
/// # Errors
/// [`Error::Infeasible`] for a wish above the strength of the brew, and for one so weak that it takes
/// less brew than [`Beverage`] allows; [`Error::Impossible`] for a brew weaker than its own water.
pub fn brew_for_drink(
    drink: Beverage,
    strength: Strength,
    wanted: Strength,
    water: WaterSolids,
) -> Result<Beverage, Error> {
    weaker(strength, wanted, water)?;
    if wanted == strength {
        return Ok(drink);
    }
    let minerals = 100.0 * water.fraction();
    let coffee = strength.percent() - minerals;
    let brew = drink.grams() * (wanted.percent() - minerals) / coffee;
    let least = Quantity::Beverage.lowest();
    if brew < least {
        return Err(Error::Infeasible {
            wish: Quantity::Strength,
            value: wanted.percent(),
            nearest: minerals + just_above(coffee * least / drink.grams()),
            limit: Limit::NoWaterIsEnough,
        });
    }
    computed(brew)
}

record! {
    /// One brew poured over several cups and topped up with water.
    pub struct CupSplit {
        /// Brew into each cup.
        brew: Beverage = "beverage_g",
        /// Water into each cup.
        added: Addition = "added_g",
        /// Brew left over.
        rest: Rest = "rest_g",
    }
}

/// Splits one brew over cups of a wanted size and strength.
///
/// ```text
/// B = C (T' − s)/(T − s) into each, C − B of water on it, rest = all − n B
/// ```
///
/// Symbols: n cups; the others as for [`brew_for_drink`]. Source: conservation of solids.
///
/// # Errors
/// [`Error::Infeasible`] where the brew does not last; the nearest is the largest cup of that
/// strength. Otherwise as [`brew_for_drink`].
pub fn split(
    brew: Beverage,
    strength: Strength,
    cups: Servings,
    cup: Beverage,
    wanted: Strength,
    water: WaterSolids,
) -> Result<CupSplit, Error> {
    let each = brew_for_drink(cup, strength, wanted, water)?;
    let rest = brew.grams() - each.grams() * cups.count();
    if rest < 0.0 {
        // Each cup takes the share of brew that a cup of any size takes.
        let all = brew.grams() * cup.grams() / each.grams();
        return Err(Error::Infeasible {
            wish: Quantity::Beverage,
            value: cup.grams(),
            nearest: just_below(all / cups.count()),
            limit: Limit::BrewOnHand,
        });
    }
    Ok(CupSplit { brew: each, added: computed(cup.grams() - each.grams())?, rest: computed(rest)? })
}

record! {
    /// A drink of coffee and milk.
    pub struct MilkDrink {
        /// Coffee and milk together.
        drink: Beverage = "beverage_g",
        /// Solids from coffee and brew water, per mass of drink.
        strength: Strength = "strength_pct",
        /// Solids from milk, per mass of drink.
        milk_solids: MilkSolids = "milk_solids_pct",
    }
}

/// Coffee with milk, the two kinds of solids kept apart.
///
/// ```text
/// T' = T B/(B + A),   M' = M A/(B + A)
/// ```
///
/// Symbols: T' and M' coffee and milk solids of the drink, T strength of the beverage B, M solids
/// of the milk A. Source: conservation of solids.
///
/// A refractometer cannot tell them apart: read the strength before the milk goes in. Milk is
/// perishable: local food rules apply ([`crate::caution::Caution::Milk`]).
///
/// # Errors
/// [`Error::ResultOutOfRange`] outside the range of [`Beverage`].
pub fn with_milk(
    beverage: Beverage,
    strength: Strength,
    milk: Addition,
    milk_solids: MilkSolids,
) -> Result<MilkDrink, Error> {
    let (b, m) = (beverage.grams(), milk.grams());
    Ok(MilkDrink {
        drink: computed(b + m)?,
        strength: computed(strength.percent() * b / (b + m))?,
        milk_solids: computed(milk_solids.percent() * m / (b + m))?,
    })
}

/// Temperature of two waters or brews mixed.
///
/// ```text
/// B h(t1) + A h(t2) = (B + A) h(t), solved for t
/// ```
///
/// Symbols: B and A masses, t1 and t2 their temperatures, t that of the mixture, h heat content of
/// water ([`water::enthalpy`]). Source: conservation of heat.
///
/// A brew's heat content is taken as water's: 1 % high at filter strength, 5 % at 10 % strength,
/// which moves a mixture by less than 0.2 K and 1 K. A gram of vapour lost from 250 g costs 2 K and
/// is not counted.
///
/// # Errors
/// None in range; the `Result` guards the range of [`Temperature`].
pub fn mixed_temperature(
    liquid: Liquid,
    temperature: Temperature,
    added: Addition,
    added_temperature: Temperature,
) -> Result<Temperature, Error> {
    let heat = liquid.grams() * water::enthalpy(temperature).joules_per_gram()
        + added.grams() * water::enthalpy(added_temperature).joules_per_gram();
    water::balanced_temperature(liquid.grams() + added.grams(), 0.0, heat)
}

/// Specific heat of milk, J/(g K): 3.89 whole, 3.97 skim (Choi–Okos composition; 3.85 and 3.98 to
/// 4.02 in Geankoplis, table A.4). The mean is used.
pub const MILK_J_PER_G_K: f64 = 3.93;

/// Temperature of a brew with milk, whose specific heat c is taken as 3.93 J/(g K) whatever its
/// fat.
///
/// ```text
/// B h(t1) + c A t2 = B h(t) + c A t, solved for t
/// ```
///
/// Symbols: B brew, A milk, t1 and t2 their temperatures, t that of the drink, h heat content of
/// water ([`water::enthalpy`]). Source: conservation of heat; [`MILK_J_PER_G_K`] from the Choi–Okos
/// composition.
///
/// # Errors
/// None in range; the `Result` guards the range of [`Temperature`].
pub fn mixed_with_milk_temperature(
    liquid: Liquid,
    temperature: Temperature,
    milk: Addition,
    milk_temperature: Temperature,
) -> Result<Temperature, Error> {
    let capacity = MILK_J_PER_G_K * milk.grams();
    let heat = liquid.grams() * water::enthalpy(temperature).joules_per_gram()
        + capacity * milk_temperature.celsius();
    water::balanced_temperature(liquid.grams(), capacity, heat)
}

/// Heat of fusion of ice at 0 °C and 101.325 kPa, J/g: IAPWS R10-06 with IAPWS-95.
const FUSION_J_PER_G: f64 = 333.4265;

/// Heat that brings a gram of ice from its temperature to 0 °C, J/g: the integral of
/// 2.0967 + 0.00735 t, fitted here to IAPWS R10-06 from −18 to 0 °C.
fn ice_warming(ice: IceTemperature) -> f64 {
    let t = ice.celsius();
    -t * (2.0967 + 0.007_35 / 2.0 * t)
}

record! {
    /// A drink on ice, when heat has come to rest.
    pub struct Iced {
        /// Temperature of liquid and ice.
        temperature: Temperature = "water_c",
        /// Ice that melted.
        melted: Ice = "melted_g",
        /// Ice that floats on.
        left: Ice = "ice_g",
        /// Strength of the liquid.
        strength: Strength = "strength_pct",
    }
}

/// A drink over ice: all melted, or at 0 °C with some left.
///
/// ```text
/// B h(t0) − m [qᵢ + 333.43] = (B + m) h(t)        t ≥ 0
/// melted = [B h(t0) − m qᵢ]/333.43  at t = 0      otherwise
/// ```
///
/// Symbols: B beverage at t0, m ice, qᵢ heat to warm a gram of it to 0 °C, t temperature of the
/// drink, h heat content of water in J/g ([`water::enthalpy`]). Source: conservation of heat; IAPWS
/// R10-06 for ice.
///
/// The glass and the air give nothing. Iced drinks are under local food rules
/// ([`crate::caution::Caution::Ice`]).
///
/// # Errors
/// [`Error::Infeasible`] for ice so cold and plentiful that the drink itself would begin to freeze;
/// the nearest is the most ice that it can take.
///
/// ```
/// # use cupwright::{dilution, quantity::*};
/// let glass = dilution::iced(
///     Beverage::from_grams(150.0)?,
///     Temperature::from_celsius(80.0)?,
///     Strength::from_percent(2.4)?,
///     Ice::from_grams(100.0)?,
///     IceTemperature::from_celsius(-18.0)?,
/// )?;
/// assert_eq!(glass.temperature.to_string(), "12.6 °C");
/// assert_eq!(glass.strength.to_string(), "1.44 %");
/// # Ok::<(), cupwright::Error>(())
/// ```
pub fn iced(
    beverage: Beverage,
    temperature: Temperature,
    strength: Strength,
    ice: Ice,
    ice_temperature: IceTemperature,
) -> Result<Iced, Error> {
    let (b, m) = (beverage.grams(), ice.grams());
    let heat = b * water::enthalpy(temperature).joules_per_gram();
    let to_warm = ice_warming(ice_temperature);
    let to_melt = heat - m * to_warm;
    if to_melt < 0.0 {
        return Err(Error::Infeasible {
            wish: Quantity::Ice,
            value: m,
            nearest: just_below(heat / to_warm),
            limit: Limit::IceAndHeat,
        });
    }
    let all_melts = to_melt >= m * FUSION_J_PER_G;
    let melted = if all_melts { m } else { to_melt / FUSION_J_PER_G };
    Ok(Iced {
        temperature: if all_melts {
            water::balanced_temperature(b + m, 0.0, to_melt - m * FUSION_J_PER_G)?
        } else {
            Temperature::known(0.0)
        },
        melted: computed(melted)?,
        left: computed(m - melted)?,
        strength: computed(strength.percent() * b / (b + melted))?,
    })
}

/// Ice that brings a drink to a temperature, all of it melted: the inverse of [`iced`].
///
/// ```text
/// m = B [h(t0) − h(t)] / [qᵢ + 333.43 + h(t)]
/// ```
///
/// Symbols: as for [`iced`]. Source: conservation of heat; IAPWS R10-06 for ice.
///
/// # Errors
/// [`Error::Infeasible`] for a wish above the drink's own temperature; [`Error::ResultOutOfRange`]
/// outside the range of [`Ice`].
pub fn ice_to_reach(
    beverage: Beverage,
    temperature: Temperature,
    wanted: Temperature,
    ice_temperature: IceTemperature,
) -> Result<Ice, Error> {
    if wanted > temperature {
        return Err(Error::Infeasible {
            wish: Quantity::Temperature,
            value: wanted.celsius(),
            nearest: temperature.celsius(),
            limit: Limit::IceAndHeat,
        });
    }
    let end = water::enthalpy(wanted).joules_per_gram();
    let given = water::enthalpy(temperature).joules_per_gram() - end;
    computed(beverage.grams() * given / (ice_warming(ice_temperature) + FUSION_J_PER_G + end))
}
