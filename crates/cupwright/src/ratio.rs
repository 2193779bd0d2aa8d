//! Dose, water, beverage and the ratios between them; volume and mass; servings and batches.
//!
//! Two ratios are in use and are often confused: filter brewers count brew water per dose
//! ([`WaterRatio`]), espresso brewers count beverage per dose ([`BeverageRatio`]). They are two
//! types here. A third habit, grams per litre, is a [`DosePerLitre`] and depends on the temperature
//! at which the litre is measured.

use crate::error::{Error, Limit};
use crate::math::{parts_needed, whole_parts};
use crate::quantity::{
    Batches, Beverage, BeverageRatio, BrewWater, Density, Displacement, Dose, DosePerLitre,
    Quantity, Servings, Temperature, Volume, WaterRatio, computed,
};
use crate::record::record;
use crate::water;

/// Brew water per dose. A "1:16" brew has R = 16.
///
/// ```text
/// R = W/D
/// ```
///
/// Symbols: R water ratio, W brew water, D dose. Source: definition.
///
/// # Errors
/// [`Error::ResultOutOfRange`] outside the range of [`WaterRatio`].
///
/// ```
/// # use cupwright::{quantity::*, ratio};
/// let ratio = ratio::water_ratio(Dose::from_grams(15.0)?, BrewWater::from_grams(240.0)?)?;
/// assert_eq!(ratio.grams_per_gram(), 16.0);
/// # Ok::<(), cupwright::Error>(())
/// ```
pub fn water_ratio(dose: Dose, water: BrewWater) -> Result<WaterRatio, Error> {
    computed(water_per_dose(dose, water))
}

/// [`water_ratio`] in g/g, not checked.
pub(crate) fn water_per_dose(dose: Dose, water: BrewWater) -> f64 {
    water.grams() / dose.grams()
}

/// Brew water for a dose at a ratio.
///
/// ```text
/// W = R D
/// ```
///
/// Symbols: W brew water, R water ratio, D dose. Source: definition.
///
/// # Errors
/// [`Error::ResultOutOfRange`] outside the range of [`BrewWater`].
pub fn water_for_ratio(dose: Dose, ratio: WaterRatio) -> Result<BrewWater, Error> {
    computed(ratio.grams_per_gram() * dose.grams())
}

/// Dose for an amount of brew water at a ratio.
///
/// ```text
/// D = W/R
/// ```
///
/// Symbols: D dose, W brew water, R water ratio. Source: definition.
///
/// # Errors
/// [`Error::ResultOutOfRange`] outside the range of [`Dose`].
pub fn dose_for_water(water: BrewWater, ratio: WaterRatio) -> Result<Dose, Error> {
    computed(water.grams() / ratio.grams_per_gram())
}

/// Beverage per dose. An "18 in, 36 out" shot has 2.
///
/// ```text
/// R = B/D
/// ```
///
/// Symbols: R beverage ratio, B beverage, D dose. Source: definition.
///
/// # Errors
/// [`Error::ResultOutOfRange`] outside the range of [`BeverageRatio`].
pub fn beverage_ratio(dose: Dose, beverage: Beverage) -> Result<BeverageRatio, Error> {
    computed(beverage.grams() / dose.grams())
}

/// Beverage from a dose at a ratio.
///
/// ```text
/// B = R D
/// ```
///
/// Symbols: B beverage, R beverage ratio, D dose. Source: definition.
///
/// # Errors
/// [`Error::ResultOutOfRange`] outside the range of [`Beverage`].
pub fn beverage_for_ratio(dose: Dose, ratio: BeverageRatio) -> Result<Beverage, Error> {
    computed(ratio.grams_per_gram() * dose.grams())
}

/// Dose for a beverage at a ratio.
///
/// ```text
/// D = B/R
/// ```
///
/// Symbols: D dose, B beverage, R beverage ratio. Source: definition.
///
/// # Errors
/// [`Error::ResultOutOfRange`] outside the range of [`Dose`].
pub fn dose_for_beverage(beverage: Beverage, ratio: BeverageRatio) -> Result<Dose, Error> {
    computed(beverage.grams() / ratio.grams_per_gram())
}

/// Dose per litre of brew water measured at the temperature given.
///
/// ```text
/// dose per litre = ρ(t)/R
/// ```
///
/// Symbols: ρ density of water at the temperature t ([`water::density`]), R water ratio. Source:
/// definition.
///
/// The published "55 g/L" does not say at which temperature its litre is measured; between 20 and
/// 95 °C that is 3.6 %.
///
/// # Errors
/// None in range; the `Result` guards the range of [`DosePerLitre`].
pub fn dose_per_litre(ratio: WaterRatio, measured_at: Temperature) -> Result<DosePerLitre, Error> {
    computed(water::density(measured_at).kilograms_per_cubic_metre() / ratio.grams_per_gram())
}

/// The ratio that a dose per litre of brew water stands for: the inverse of [`dose_per_litre`].
///
/// ```text
/// R = ρ(t)/(dose per litre)
/// ```
///
/// Symbols: R water ratio, ρ density of water at the temperature t ([`water::density`]). Source:
/// definition.
///
/// # Errors
/// [`Error::ResultOutOfRange`] outside the range of [`WaterRatio`].
pub fn ratio_of_dose_per_litre(
    dose: DosePerLitre,
    measured_at: Temperature,
) -> Result<WaterRatio, Error> {
    computed(water::density(measured_at).kilograms_per_cubic_metre() / dose.grams_per_litre())
}

/// Mass of a volume of water at its temperature.
///
/// ```text
/// W = ρ(t) V
/// ```
///
/// Symbols: W mass, ρ density of water at the temperature t ([`water::density`]), V volume. Source:
/// definition.
///
/// A jug marked in millilitres misleads by the density: 200 mL of water at 95 °C weighs 192.4 g.
/// The jug's own expansion is left out (glass: below 0.1 %).
///
/// # Errors
/// [`Error::ResultOutOfRange`] outside the range of [`BrewWater`].
///
/// ```
/// # use cupwright::{quantity::*, ratio};
/// let hot = ratio::water_mass(Volume::from_millilitres(200.0)?, Temperature::from_celsius(95.0)?)?;
/// assert_eq!(hot.to_string(), "192.4 g");
/// # Ok::<(), cupwright::Error>(())
/// ```
pub fn water_mass(volume: Volume, water: Temperature) -> Result<BrewWater, Error> {
    computed(volume.millilitres() * water::density(water).kilograms_per_cubic_metre() / 1000.0)
}

/// Volume of a mass of water at its temperature: the inverse of [`water_mass`].
///
/// ```text
/// V = W/ρ(t)
/// ```
///
/// Symbols: V volume, W mass, ρ density of water at the temperature t ([`water::density`]). Source:
/// definition.
///
/// # Errors
/// None in range; the `Result` guards the range of [`Volume`].
pub fn water_volume(mass: BrewWater, water: Temperature) -> Result<Volume, Error> {
    computed(mass.grams() * 1000.0 / water::density(water).kilograms_per_cubic_metre())
}

/// Dose and water for several servings of one recipe. Time and ratio stay as they are.
///
/// ```text
/// D' = n D,   W' = n W
/// ```
///
/// Symbols: D dose, W brew water, n servings; with a dash those of all together. Source:
/// definition.
///
/// Plain multiplication. What a chamber keeps whatever the dose is kept only once, so the cups come out
/// a little larger; [`crate::plan::recipe`] allows for that.
///
/// # Errors
/// [`Error::ResultOutOfRange`] outside the range of [`Dose`] or [`BrewWater`].
pub fn for_servings(
    dose: Dose,
    water: BrewWater,
    servings: Servings,
) -> Result<(Dose, BrewWater), Error> {
    Ok((computed(dose.grams() * servings.count())?, computed(water.grams() * servings.count())?))
}

/// How many whole cups of one size a beverage fills.
///
/// ```text
/// n = ⌊B/C⌋
/// ```
///
/// Symbols: n cups, B beverage, C size of a cup. Source: definition.
///
/// # Errors
/// [`Error::Infeasible`] when it does not fill one; the nearest cup is the beverage itself.
/// [`Error::ResultOutOfRange`] for more cups than [`Servings`] allows.
pub fn whole_cups(beverage: Beverage, cup: Beverage) -> Result<Servings, Error> {
    if beverage < cup {
        return Err(Error::Infeasible {
            wish: Quantity::Beverage,
            value: cup.grams(),
            nearest: beverage.grams(),
            limit: Limit::BrewOnHand,
        });
    }
    computed(whole_parts(beverage.grams() / cup.grams()))
}

record! {
    /// What a brewer's chamber holds.
    pub struct Chamber {
        /// Volume up to the highest safe level.
        volume: Volume = "volume_ml",
        /// Volume that a gram of wetted grounds takes away from the water.
        displacement: Displacement = "displacement_ml_per_g",
    }
}

record! {
    /// A brew divided into equal batches.
    pub struct BatchSplit {
        /// How many batches.
        batches: Batches = "batches",
        /// Dose of each.
        dose: Dose = "dose_g",
        /// Brew water of each.
        water: BrewWater = "water_g",
        /// How full the chamber gets: water and grounds.
        fill: Volume = "fill_ml",
    }
}

/// The fewest equal batches that a chamber can brew.
///
/// ```text
/// n = ⌈(W/ρ(t) + v D)/V⌉,   D/n and W/n in each
/// ```
///
/// Symbols: n batches, W brew water, ρ density of water at the temperature t, v displacement of the
/// grounds, D dose, V volume of the chamber. Source: definition.
///
/// Grounds displace v mL of water per gram. Range: all water is in the chamber at once.
///
/// # Errors
/// [`Error::ResultOutOfRange`] when a batch would be too small or the batches too many.
pub fn batches(
    dose: Dose,
    water: BrewWater,
    water_temperature: Temperature,
    chamber: &Chamber,
) -> Result<BatchSplit, Error> {
    let total = fill_ml(
        dose.grams(),
        water.grams(),
        water::density(water_temperature),
        chamber.displacement,
    );
    let count: Batches = computed(parts_needed(total / chamber.volume.millilitres()))?;
    Ok(BatchSplit {
        batches: count,
        dose: computed(dose.grams() / count.count())?,
        water: computed(water.grams() / count.count())?,
        fill: computed(total / count.count())?,
    })
}

/// Volume of water and grounds together, mL.
pub(crate) fn fill_ml(
    dose_g: f64,
    water_g: f64,
    density: Density,
    displacement: Displacement,
) -> f64 {
    water_g * 1000.0 / density.kilograms_per_cubic_metre()
        + dose_g * displacement.millilitres_per_gram()
}

/// The largest dose that a chamber can brew in one batch at a ratio.
///
/// ```text
/// D = V/(R/ρ(t) + v)
/// ```
///
/// Symbols: D dose, V volume of the chamber, R water ratio, ρ density of water at the temperature
/// t, v displacement of the grounds. Source: definition.
///
/// # Errors
/// [`Error::ResultOutOfRange`] outside the range of [`Dose`].
pub fn largest_dose(
    ratio: WaterRatio,
    water_temperature: Temperature,
    chamber: &Chamber,
) -> Result<Dose, Error> {
    let per_gram = fill_ml(
        1.0,
        ratio.grams_per_gram(),
        water::density(water_temperature),
        chamber.displacement,
    );
    computed(chamber.volume.millilitres() / per_gram)
}
