//! From a wish to a recipe: the inverse of everything in the model rooms.
//!
//! A [`Wish`] says what is to be in the cup; [`Brewer`], [`Coffee`] and [`Kitchen`] say what there is
//! to make it with. [`recipe`] answers with dose, water, batches, what to add, every temperature on
//! the way, how far a hand may stray, and the cautions. A wish that cannot be met comes back as
//! [`Error::Infeasible`] with the nearest that can and the limit that binds.
//!
//! # How
//!
//! With symbols as in [`crate::extraction`] and [`crate::retention`], k = c + p + d, and the brew's
//! own strength T (τ = T − s), the mass balance is linear in the dose:
//!
//! ```text
//! D [ E(1 − s − φτ) − sh − τφ(r + h) ] = τ(B + φk) − sV
//! W = B + rD + k + V
//! ```
//!
//! so dose and water come in closed form, and so does the largest beverage B that a chamber of volume
//! C can give, from W/ρ + vD ≤ C. The ends of the tolerances are roots of a quadratic, and
//! so is the strongest brew for each number of batches, which are counted up. Nothing is searched for,
//! but by [`surest`], which looks for the likeliest strength in a window.
//!
//! # What it takes for granted
//!
//! The yield expected is that of this coffee, grind, time and temperature: a recipe far from the one
//! it was measured at needs it measured again. All the water meets the grounds at one temperature;
//! heat lost to the air during the pour is the pour drop; all batches are alike. Where the brewer's
//! cooling is not known, the temperatures after contact are the most they can be, and say so.

mod batch;
mod chance;
mod tolerance;
mod walk;

pub use chance::{Foreseen, foreseen, surest};

use crate::caution::{self, Cautions, Hazards};
use crate::dilution;
use crate::error::{Error, Limit};
use crate::extraction;
use crate::heat::Cover;
use crate::quantity::{
    Addition, Altitude, Batches, Beverage, BrewWater, Caffeine, CaffeineContent, CoolingRate, Dose,
    HeatCapacity, HeldStrength, Humidity, Liquid, Moisture, Pressure, Quantity, RoomTemperature,
    Servings, Share, Strength, Temperature, TemperatureDrop, Time, VesselTemperature, Volume,
    WaterRatio, WaterSolids, Yield, computed,
};
use crate::ratio::{self, Chamber};
use crate::record::record;
use crate::retention::{self, Losses};
use crate::verdict::{self, Counting, Standing, Window};
use crate::water;
use batch::{Model, Total};

record! {
    /// What is to be in the cup.
    pub struct Wish {
        /// Size of the drink in each cup.
        cup: Beverage = "cup_g",
        /// Strength of the drink.
        strength: Strength = "strength_pct",
        /// How many cups.
        servings: Servings = "servings",
        /// Brew this strong and add water in the cup; none to brew at the drink's own strength.
        brew_strength: Option<Strength> = "brew_strength_pct",
        /// The most batches one is willing to brew; none for as many as it takes.
        most_batches: Option<Batches> = "most_batches",
        /// Temperature of the brew water as it meets the grounds.
        brew_temperature: Temperature = "brew_c",
        /// Time of contact. It sets how far the slurry cools; the yield is the coffee's.
        contact: Time = "contact_s",
        /// Temperature at which to hand the drink over; none for as hot as it comes.
        serve_at: Option<Temperature> = "serve_c",
        /// Window that the drink is to lie in; none for no tolerances.
        window: Option<Window> = "window",
    }
}

impl Wish {
    /// The field, by its name outside Rust, that an error of [`recipe`] is about; none where it is not
    /// about the wish.
    pub const fn field_of(&self, error: &Error) -> Option<&'static str> {
        match error {
            Error::Infeasible { limit, .. } => match limit {
                Limit::BoilingPoint => Some("brew_c"),
                Limit::HeatLeft | Limit::Surroundings => Some("serve_c"),
                Limit::Chamber => Some("cup_g"),
                Limit::CoffeeGivesNoMore if self.brew_strength.is_some() => {
                    Some("brew_strength_pct")
                }
                _ => Some("strength_pct"),
            },
            Error::OutOfRange { quantity: Quantity::Strength, .. } => Some("strength_pct"),
            Error::Impossible { quantity: Quantity::Strength, .. }
                if self.brew_strength.is_some() =>
            {
                Some("brew_strength_pct")
            }
            Error::Impossible { quantity: Quantity::Strength, .. } => Some("strength_pct"),
            _ => None,
        }
    }
}

record! {
    /// A brewer and how it behaves.
    pub struct Brewer {
        /// Strength φ of the liquid it keeps: steeped or flowed through.
        held_strength: HeldStrength = "held_strength_pct",
        /// What it keeps.
        losses: Losses = "losses",
        /// Its chamber, where all the water stands in it at once; none for a dripper.
        chamber: Option<Chamber> = "chamber",
        /// Heat capacity of the part that warms.
        heat_capacity: HeatCapacity = "heat_capacity_j_per_k",
        /// Hot rinse, poured away, that preheats it; none for a brewer at room temperature.
        rinse: Option<Liquid> = "rinse_g",
        /// Cooling rate of the slurry in it, from two thermometer readings; none where unknown.
        cooling: Option<CoolingRate> = "cooling_per_min",
        /// Whether the slurry is open to the air.
        cover: Cover = "cover",
        /// Pressed by hand.
        pressed: bool = "pressed",
        /// Glass meets hot liquid.
        glass: bool = "glass",
    }
}

record! {
    /// A coffee at its grind.
    pub struct Coffee {
        /// Yield E to expect, as measured before by the mass balance with the brewer's φ.
        expected: Yield = "yield_pct",
        /// Moisture h as weighed.
        moisture: Moisture = "moisture_pct",
        /// Caffeine as weighed; none where unknown.
        caffeine: Option<CaffeineContent> = "caffeine_mg_per_g",
    }
}

/// What is known of the air.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Air {
    /// A barometer's station pressure.
    #[cfg_attr(feature = "serde", serde(rename = "pressure_kpa"))]
    Pressure(Pressure),
    /// Only the altitude: the boiling point is uncertain by the weather.
    #[cfg_attr(feature = "serde", serde(rename = "altitude_m"))]
    Altitude(Altitude),
}

impl Air {
    /// The boiling point of water in this air, and how far off it may be, K: zero from a barometer,
    /// [`water::ALTITUDE_ONLY_UNCERTAINTY_K`] from an altitude.
    pub fn boiling_point(self) -> (Temperature, f64) {
        match self {
            Air::Pressure(pressure) => (water::boiling_point(pressure), 0.0),
            Air::Altitude(altitude) => (
                water::boiling_point(water::pressure_at_altitude(altitude)),
                water::ALTITUDE_ONLY_UNCERTAINTY_K,
            ),
        }
    }
}

record! {
    /// The place and its things.
    pub struct Kitchen {
        /// Pressure or altitude.
        air: Air = "air",
        /// Temperature of the room, the grounds, the cups and a cold brewer.
        room: RoomTemperature = "room_c",
        /// Relative humidity; 50 % where unknown.
        humidity: Humidity = "humidity_pct",
        /// What each pour costs.
        pour_drop: TemperatureDrop = "drop_k",
        /// Heat capacity of a second vessel between kettle and brewer, at room temperature; none to
        /// pour from the kettle.
        second_vessel: Option<HeatCapacity> = "second_vessel_j_per_k",
        /// Heat capacity of a cup.
        cup: HeatCapacity = "cup_j_per_k",
        /// Cooling rate of a full cup; none where unknown.
        cup_cooling: Option<CoolingRate> = "cup_cooling_per_min",
        /// Solids of the water.
        water_solids: WaterSolids = "water_solids_mg_per_l",
        /// Temperature of water added in the cup.
        added: Temperature = "added_c",
    }
}

/// What the slurry's temperature at the end of contact rests on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[non_exhaustive]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(rename_all = "snake_case")
)]
pub enum ContactHeat {
    /// The brewer's cooling rate.
    CoolingRate = 1,
    /// The heat of the vapour lost and nothing else: the most that it can be.
    AtMost = 2,
    /// Nothing: the slurry is not warmer than the room, and warming is not modelled. It is passed on
    /// unchanged.
    Unchanged = 3,
}

record! {
    /// Temperatures from the kettle to the guest.
    pub struct HeatWalk {
        /// Where water boils here.
        boiling: Temperature = "boiling_c",
        /// How far off that may be, K.
        boiling_uncertainty_k: f64 = "boiling_uncertainty_k",
        /// Water in the kettle.
        kettle: Temperature = "kettle_c",
        /// The brewer just before the brew.
        brewer: VesselTemperature = "brewer_c",
        /// Water settled in the second vessel; none without one.
        second_vessel: Option<Temperature> = "second_vessel_c",
        /// Water as it meets the grounds.
        at_grounds: Temperature = "brew_c",
        /// Water, grounds and brewer settled.
        slurry: Temperature = "slurry_c",
        /// The slurry at the end of contact.
        slurry_end: Temperature = "slurry_end_c",
        /// How sure the end of contact is, and with it all that follows.
        contact: ContactHeat = "contact_heat",
        /// The drink in its cup, water added.
        in_cup: Temperature = "in_cup_c",
        /// Wait until it may be handed over as wished; none where nothing is wished or the cup's
        /// cooling is unknown.
        wait: Option<Time> = "wait_s",
    }
}

record! {
    /// How far one thing alone may stray before the drink's strength leaves the window or the chamber
    /// is full. The yield is taken as unchanged, which holds for small strayings.
    ///
    /// More water does not always weaken a drink that water is added to: it also washes more coffee
    /// out of the grounds. Both ends may then lie at the window's weak edge.
    pub struct Tolerances {
        /// Lowest dose of a batch; none if even the lowest accepted stays inside.
        dose_from: Option<Dose> = "dose_from_g",
        /// Highest dose of a batch.
        dose_to: Option<Dose> = "dose_to_g",
        /// Lowest brew water of a batch.
        water_from: Option<BrewWater> = "water_from_g",
        /// Highest brew water of a batch.
        water_to: Option<BrewWater> = "water_to_g",
    }
}

record! {
    /// What to do, and what to expect.
    pub struct Recipe {
        /// How many batches.
        batches: Batches = "batches",
        /// Dose of each batch.
        dose: Dose = "dose_g",
        /// Brew water of each batch.
        water: BrewWater = "water_g",
        /// Brew water per dose.
        ratio: WaterRatio = "water_ratio_g_per_g",
        /// Beverage expected from each batch.
        beverage: Beverage = "beverage_g",
        /// How full a batch makes the chamber, if there is one.
        fill: Option<Volume> = "fill_ml",
        /// Brew into each cup.
        brew_per_cup: Beverage = "brew_per_cup_g",
        /// Water into each cup.
        added_per_cup: Addition = "added_per_cup_g",
        /// Strength of the brew before water is added.
        brew_strength: Strength = "brew_strength_pct",
        /// Strength of the drink.
        strength: Strength = "strength_pct",
        /// Yield it counts on.
        expected: Yield = "yield_pct",
        /// Temperatures on the way.
        heat: HeatWalk = "heat",
        /// Where the drink, and the yield as the window counts it, stand in the window: how far a reading
        /// may be off. No yield where the window does not say how it counts.
        standing: Option<Standing> = "standing",
        /// How far dose and water may stray.
        tolerances: Option<Tolerances> = "tolerances",
        /// Caffeine of a serving if all of it is extracted, where the coffee's is known.
        caffeine: Option<Caffeine> = "caffeine_mg",
        /// What can hurt.
        cautions: Cautions = "cautions",
    }
}

/// Plans a brew.
///
/// ```text
/// D [ E(1 − s − φτ) − sh − τφ(r + h) ] = τ(B + φk) − sV
/// W = B + rD + k + V
/// ```
///
/// Symbols: see the [module](crate::plan). Source: conservation of water, solids and heat.
///
/// # Errors
/// [`Error::Infeasible`] with the nearest feasible value: a strength that the coffee cannot give or
/// that water cannot bring down to, a brew temperature above what boiling water brings here, a cup
/// too large for the batches allowed, a serving temperature that the drink no longer has or never cools
/// to. The nearest value may lie outside the wish's own window; [`Wish::field_of`] says which field of
/// the wish an error is about. [`Error::OutOfRange`] for a strength outside that window;
/// [`Error::Impossible`] for a strength not above the water's own and for a chamber that its own hold-up
/// fills; [`Error::ResultOutOfRange`] where a result leaves its range.
///
/// ```
/// # use cupwright::{plan::{self, *}, heat::Cover, quantity::*, ratio::Chamber, retention::*};
/// let brewer = Brewer {
///     held_strength: HeldStrength::STEEPED,
///     losses: Losses {
///         retention: ApparentRetention::from_grams_per_gram(1.5)?,
///         hold_up: HoldUp::from_grams(2.0)?,
///         paper: Paper::Rinsed,
///         drips: Drips::NONE,
///         vapour: Vapour::NONE,
///     },
///     chamber: None,
///     heat_capacity: HeatCapacity::from_joules_per_kelvin(90.0)?,
///     rinse: None,
///     cooling: None,
///     cover: Cover::Lidded,
///     pressed: true,
///     glass: false,
/// };
/// let coffee = Coffee {
///     expected: Yield::from_percent(19.5)?,
///     moisture: Moisture::from_percent(0.0)?,
///     caffeine: None,
/// };
/// let kitchen = Kitchen {
///     air: Air::Altitude(Altitude::from_metres(0.0)?),
///     room: RoomTemperature::from_celsius(21.0)?,
///     humidity: Humidity::from_percent(50.0)?,
///     pour_drop: TemperatureDrop::from_kelvin(1.0)?,
///     second_vessel: None,
///     cup: HeatCapacity::from_joules_per_kelvin(200.0)?,
///     cup_cooling: None,
///     water_solids: WaterSolids::NONE,
///     added: Temperature::from_celsius(90.0)?,
/// };
/// let wish = Wish {
///     cup: Beverage::from_grams(175.0)?,
///     strength: Strength::from_percent(1.3)?,
///     servings: Servings::from_count(1.0)?,
///     brew_strength: None,
///     most_batches: None,
///     brew_temperature: Temperature::from_celsius(95.0)?,
///     contact: Time::from_seconds(120.0)?,
///     serve_at: None,
///     window: None,
/// };
/// let recipe = plan::recipe(&wish, &brewer, &coffee, &kitchen)?;
/// assert_eq!(recipe.dose.to_string(), "13.3 g");
/// assert_eq!(recipe.water.to_string(), "197.0 g");
/// assert_eq!(recipe.heat.kettle.to_string(), "96.0 °C");
/// # Ok::<(), cupwright::Error>(())
/// ```
pub fn recipe(
    wish: &Wish,
    brewer: &Brewer,
    coffee: &Coffee,
    kitchen: &Kitchen,
) -> Result<Recipe, Error> {
    wish.window.map_or(Ok(()), |window| window.admit(wish.strength))?;
    let brew_strength = wish.brew_strength.unwrap_or(wish.strength);
    let minerals = 100.0 * kitchen.water_solids.fraction();
    if brew_strength.percent() <= minerals {
        return Err(Error::weaker_than_its_water(brew_strength, minerals.next_up()));
    }
    let brew_per_cup =
        dilution::brew_for_drink(wish.cup, brew_strength, wish.strength, kitchen.water_solids)?;
    let added_per_cup: Addition = computed(wish.cup.grams() - brew_per_cup.grams())?;
    let brew_total = brew_per_cup.grams() * wish.servings.count();

    let model = Model::of(wish, brewer, coffee, kitchen.water_solids);
    let total = match wish.brew_strength {
        None => Total::Brew(brew_total),
        Some(strength) => {
            Total::Coffee(brew_total * (strength.fraction() - kitchen.water_solids.fraction()))
        }
    };
    let line = model.dose_line(total, brew_strength)?;
    let batches = model.batches(wish, line, brew_total)?;
    let beverage: Beverage = computed(brew_total / batches.count())?;
    let dose: Dose = computed(line.at(beverage.grams()))?;
    let water = retention::water_for_beverage(&brewer.losses, dose, beverage)?;
    let of = |window: &Window| standing(window, wish, coffee, brew_strength, beverage, dose);
    let standing = wish.window.as_ref().map(of).transpose()?;

    let heat = walk::heat_walk(wish, brewer, kitchen, dose, water, brew_per_cup, added_per_cup)?;
    let caffeine = coffee
        .caffeine
        .map(|content| {
            let all = Share::from_percent(100.0)?;
            let whole = caution::caffeine(dose, content, all)?;
            computed(whole.milligrams() * batches.count() / wish.servings.count())
        })
        .transpose()?;

    Ok(Recipe {
        batches,
        dose,
        water,
        ratio: ratio::water_ratio(dose, water)?,
        beverage,
        fill: model.fill(dose, water)?,
        brew_per_cup,
        added_per_cup,
        brew_strength,
        strength: wish.strength,
        expected: coffee.expected,
        heat,
        standing,
        tolerances: wish.window.map(|window| {
            let added = added_per_cup.grams() * wish.servings.count() / batches.count();
            model.tolerances(&window, dose, water, added)
        }),
        caffeine,
        cautions: caution::of(&Hazards {
            hottest: heat.kettle,
            served: match heat.wait {
                Some(_) => wish.serve_at.unwrap_or(heat.in_cup),
                None => heat.in_cup,
            },
            pressed: brewer.pressed,
            glass: brewer.glass,
            caffeine,
            milk: false,
            ice: false,
        }),
    })
}

/// Where the wish, and the yield expected as the window counts it, stand in the wish's own window.
fn standing(
    window: &Window,
    wish: &Wish,
    coffee: &Coffee,
    brew_strength: Strength,
    beverage: Beverage,
    dose: Dose,
) -> Result<Standing, Error> {
    let counted = match window.counting {
        Counting::FlowThrough => extraction::flow_through_yield(brew_strength, beverage, dose)?,
        Counting::MassBalance | Counting::NotStated => coffee.expected,
    };
    let judged = Window { extracted: window.judged().copied(), ..*window };
    Ok(verdict::stand(&judged, wish.strength, counted))
}
