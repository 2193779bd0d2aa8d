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
//! C can give, from W/ρ + vD ≤ C. The ends of the tolerances are roots of a quadratic. There is no
//! search.
//!
//! # What it takes for granted
//!
//! The yield expected is that of this coffee, grind, time and temperature: a recipe far from the one
//! it was measured at needs it measured again. All the water meets the grounds at one temperature;
//! heat lost to the air during the pour is the pour drop; all batches are alike. Where the brewer's
//! cooling is not known, the temperatures after contact are the most they can be, and say so.

use crate::caution::{self, Cautions, Hazards};
use crate::dilution;
use crate::error::{Error, Limit};
use crate::heat::{self, Body, Cover, Surroundings};
use crate::math::{just_below, max, min, parts_needed, quadratic_roots};
use crate::quantity::{
    Addition, Altitude, Batches, Beverage, BeverageRatio, BrewWater, Caffeine, CaffeineContent,
    CoolingRate, Dose, HeatCapacity, HeldStrength, Humidity, Liquid, Measure, Moisture, Pressure,
    Quantity, RoomTemperature, Servings, Share, Strength, Temperature, TemperatureDrop, Time,
    VesselTemperature, Volume, WaterRatio, WaterSolids, Yield, computed,
};
use crate::ratio::{self, Chamber};
use crate::record::record;
use crate::retention::{self, Losses};
use crate::verdict::{self, Standing, Window};
use crate::water;

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
        /// The slurry at the end of contact: by the brewer's cooling rate, or, where that is unknown,
        /// after the heat of the vapour lost and nothing else.
        slurry_end: Temperature = "slurry_end_c",
        /// Whether the brewer's cooling is unknown, so that the end of contact and all that follows are
        /// the most it can be.
        at_most: bool = "at_most",
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
        /// Where the drink and the yield counted on stand in the window: how far a reading may be off.
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
/// # Errors
/// [`Error::Infeasible`] with the nearest feasible value: a strength that the coffee cannot give or
/// that water cannot bring down to, a brew temperature above what boiling water brings here, a cup
/// too large for the batches allowed, a serving temperature that the drink no longer has.
/// [`Error::OutOfRange`] for a strength outside the wish's own window; [`Error::Impossible`] for a
/// chamber that its own hold-up fills; [`Error::ResultOutOfRange`] where a result leaves its range.
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
    let standing = standing(wish, coffee)?;
    let brew_strength = wish.brew_strength.unwrap_or(wish.strength);
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

    let heat = heat_walk(wish, brewer, kitchen, dose, water, brew_per_cup, added_per_cup)?;
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

/// Where the wish and the yield expected stand in the wish's own window; a strength outside is refused.
fn standing(wish: &Wish, coffee: &Coffee) -> Result<Option<Standing>, Error> {
    let Some(window) = wish.window else { return Ok(None) };
    let band = window.strength;
    if wish.strength < band.lowest() || wish.strength > band.highest() {
        return Err(Error::OutOfRange {
            quantity: Quantity::Strength,
            value: wish.strength.percent(),
            lowest: band.lowest().percent(),
            highest: band.highest().percent(),
        });
    }
    Ok(Some(verdict::stand(&window, wish.strength, coffee.expected)))
}

/// The numbers of brewer, coffee and water as the mass balance uses them.
struct Model {
    expected: f64,
    moisture: f64,
    solids: f64,
    held: f64,
    retention: f64,
    /// k: liquid kept or lost whatever the dose.
    fixed: f64,
    vapour: f64,
    chamber: Option<Chamber>,
    /// Of the water in the chamber.
    temperature: Temperature,
}

/// What all batches together have to give.
#[derive(Clone, Copy)]
enum Total {
    /// So many grams of brew, whatever its strength.
    Brew(f64),
    /// So many grams of coffee, in as little brew as its strength makes it: water is added after.
    Coffee(f64),
}

impl Total {
    fn over(self, batches: f64) -> Self {
        match self {
            Total::Brew(brew) => Total::Brew(brew / batches),
            Total::Coffee(coffee) => Total::Coffee(coffee / batches),
        }
    }
}

/// A straight line.
#[derive(Clone, Copy)]
struct Line {
    at_zero: f64,
    slope: f64,
}

impl Line {
    fn at(self, x: f64) -> f64 {
        self.at_zero + self.slope * x
    }

    /// Where the line has a value.
    fn reaches(self, value: f64) -> f64 {
        (value - self.at_zero) / self.slope
    }
}

impl Model {
    fn of(wish: &Wish, brewer: &Brewer, coffee: &Coffee, water: WaterSolids) -> Self {
        Self {
            expected: coffee.expected.fraction(),
            moisture: coffee.moisture.fraction(),
            solids: water.fraction(),
            held: brewer.held_strength.fraction(),
            retention: brewer.losses.retention.grams_per_gram(),
            fixed: brewer.losses.fixed_liquid(),
            vapour: brewer.losses.vapour.grams(),
            chamber: brewer.chamber,
            temperature: wish.brew_temperature,
        }
    }

    /// Dose of a batch against its beverage, at a strength of the brew.
    fn dose_line(&self, total: Total, strength: Strength) -> Result<Line, Error> {
        let tau = strength.fraction() - self.solids;
        let strongest = self.strongest(total)?;
        if tau > strongest {
            return Err(Error::Infeasible {
                wish: Quantity::Strength,
                value: strength.percent(),
                nearest: just_below(100.0 * (strongest + self.solids)),
                limit: Limit::CoffeeGivesNoMore,
            });
        }
        let per_dose = self.coffee_per_dose()
            - tau * self.held * (self.expected + self.retention + self.moisture);
        Ok(Line {
            at_zero: (tau * self.held * self.fixed - self.solids * self.vapour) / per_dose,
            slope: tau / per_dose,
        })
    }

    /// Coffee dissolved by a gram of dose, less the minerals that its moisture stands in for.
    fn coffee_per_dose(&self) -> f64 {
        self.expected * (1.0 - self.solids) - self.solids * self.moisture
    }

    /// The highest τ that a total can be brewed at, over all numbers of batches: each batch has the
    /// highest dose that its beverage allows ([`BeverageRatio`]) and that the chamber holds beside it.
    fn strongest(&self, total: Total) -> Result<f64, Error> {
        let densest = Line { at_zero: 0.0, slope: 1.0 / BeverageRatio::QUANTITY.lowest() };
        let mut strongest = None;
        let mut batches = 1.0;
        while batches <= Quantity::Batches.highest() {
            let part = total.over(batches);
            let by_ratio =
                self.range_of_strength(part, densest).map_or(0.0, |(_, highest)| highest);
            let (weakest, by_chamber) = match self.chamber {
                None => (0.0, f64::INFINITY),
                // Too large for so few batches at any strength.
                Some(chamber) => {
                    self.range_in_chamber(part, &chamber).unwrap_or((f64::INFINITY, f64::INFINITY))
                }
            };
            if weakest <= by_ratio {
                let highest = min(by_ratio, by_chamber);
                strongest = Some(max(strongest.unwrap_or(highest), highest));
                // More batches only help a chamber that is too small.
                if by_ratio <= by_chamber {
                    break;
                }
            }
            batches += 1.0;
        }
        strongest.ok_or_else(|| self.chamber_is_filled_by_hold_up())
    }

    /// The lowest and the highest τ at which the chamber can brew a part.
    fn range_in_chamber(&self, part: Total, chamber: &Chamber) -> Option<(f64, f64)> {
        let volume = self.volume_line(0.0, chamber);
        if volume.slope > 0.0 {
            return self.range_of_strength(part, self.dose_beside(chamber));
        }
        // A dose that keeps nothing and takes no room: only the beverage counts.
        let by_beverage = Line {
            at_zero: volume.at_zero,
            slope: self.volume_line(1.0, chamber).at_zero - volume.at_zero,
        };
        let most = by_beverage.reaches(chamber.volume.millilitres());
        match part {
            Total::Brew(brew) => (brew <= most).then_some((0.0, f64::INFINITY)),
            Total::Coffee(g) => (most > 0.0).then(|| (g / most, f64::INFINITY)),
        }
    }

    /// The lowest and the highest τ at which a part can be brewed with a dose no higher than a line of
    /// its beverage: where τ(B + φ(k + qD)) = pD + sV.
    fn range_of_strength(&self, part: Total, dose: Line) -> Option<(f64, f64)> {
        let p = self.coffee_per_dose();
        let q = self.held * (self.expected + self.retention + self.moisture);
        let k = self.held * self.fixed;
        let minerals = self.solids * self.vapour;
        match part {
            Total::Brew(beverage) => {
                let d = dose.at(beverage);
                (d > 0.0).then(|| (0.0, (p * d + minerals) / (beverage + k + q * d)))
            }
            // With B = g/τ it is a quadratic in τ.
            Total::Coffee(g) => {
                let square = k + q * dose.at_zero;
                let linear = g * (1.0 + q * dose.slope) - p * dose.at_zero - minerals;
                let (mut lowest, mut highest) = (f64::INFINITY, 0.0);
                for root in quadratic_roots(square, linear, -p * dose.slope * g) {
                    if root > 0.0 {
                        lowest = min(lowest, root);
                        highest = max(highest, root);
                    }
                }
                if highest == 0.0 {
                    None
                } else if dose.slope > 0.0 {
                    Some((0.0, highest))
                } else if square > 0.0 {
                    Some((lowest, highest))
                } else {
                    Some((lowest, f64::INFINITY))
                }
            }
        }
    }

    fn chamber_is_filled_by_hold_up(&self) -> Error {
        let (value, lowest) = self.chamber.map_or((0.0, 0.0), |chamber| {
            let least = Quantity::Beverage.lowest();
            let volume = self.volume_line(least, &chamber).at(Quantity::Dose.lowest());
            (chamber.volume.millilitres(), volume)
        });
        Error::Impossible {
            quantity: Quantity::Volume,
            value,
            lowest: max(lowest, value.next_up()),
            highest: Quantity::Volume.highest(),
            beside: Quantity::HoldUp,
        }
    }

    /// Millilitres in the chamber against the dose, for a beverage of a batch.
    fn volume_line(&self, beverage: f64, chamber: &Chamber) -> Line {
        let volume =
            |dose, water| ratio::fill_ml(dose, water, self.temperature, chamber.displacement);
        Line {
            at_zero: volume(0.0, beverage + self.fixed + self.vapour),
            slope: volume(1.0, self.retention),
        }
    }

    /// The highest dose that the chamber holds beside the water for a beverage, against that beverage.
    fn dose_beside(&self, chamber: &Chamber) -> Line {
        let dose =
            |beverage| self.volume_line(beverage, chamber).reaches(chamber.volume.millilitres());
        Line { at_zero: dose(0.0), slope: dose(1.0) - dose(0.0) }
    }

    /// How full a batch makes the chamber, if there is one.
    fn fill(&self, dose: Dose, water: BrewWater) -> Result<Option<Volume>, Error> {
        self.chamber
            .map(|chamber| {
                let (d, w) = (dose.grams(), water.grams());
                computed(ratio::fill_ml(d, w, self.temperature, chamber.displacement))
            })
            .transpose()
    }

    /// The fewest equal batches that the chamber holds; one without a chamber.
    fn batches(&self, wish: &Wish, dose: Line, brew_total: f64) -> Result<Batches, Error> {
        let Some(chamber) = self.chamber else { return Batches::from_count(1.0) };
        // The volume is straight in the dose and in the beverage, and the dose in the beverage.
        let filled = |beverage| self.volume_line(beverage, &chamber).at(dose.at(beverage));
        let volume = Line { at_zero: filled(0.0), slope: filled(1.0) - filled(0.0) };
        let most = volume.reaches(chamber.volume.millilitres());
        let batches: Batches = computed(parts_needed(brew_total / most))?;
        match wish.most_batches {
            Some(allowed) if batches > allowed => Err(Error::Infeasible {
                wish: Quantity::Beverage,
                value: wish.cup.grams(),
                nearest: just_below(wish.cup.grams() * most * allowed.count() / brew_total),
                limit: Limit::Chamber,
            }),
            _ => Ok(batches),
        }
    }

    /// How far dose and water may stray, all else as planned.
    fn tolerances(&self, window: &Window, dose: Dose, water: BrewWater, added: f64) -> Tolerances {
        let (d, w) = (dose.grams(), water.grams());
        let lost = self.fixed + self.vapour;
        let minerals = self.solids * self.vapour;
        let per_dose = self.coffee_per_dose();
        let kept_per_dose = self.retention + self.moisture + self.expected;
        let of_dose = Straying {
            dissolved: Line { at_zero: minerals, slope: per_dose },
            beverage: Line { at_zero: w - lost, slope: -self.retention },
            kept: Line { at_zero: self.fixed, slope: kept_per_dose },
        };
        let of_water = Straying {
            dissolved: Line { at_zero: minerals + per_dose * d, slope: 0.0 },
            beverage: Line { at_zero: -lost - self.retention * d, slope: 1.0 },
            kept: Line { at_zero: self.fixed + kept_per_dose * d, slope: 0.0 },
        };
        // The chamber holds so much dose beside the water, and so much water beside the dose.
        let (mut most_dose, mut most_water) = (f64::INFINITY, f64::INFINITY);
        if let Some(Chamber { volume, displacement }) = self.chamber {
            let filled = |dose, water| ratio::fill_ml(dose, water, self.temperature, displacement);
            let full = volume.millilitres();
            let by_dose = Line { at_zero: filled(0.0, w), slope: filled(1.0, 0.0) };
            let by_water = Line { at_zero: filled(d, 0.0), slope: filled(0.0, 1.0) };
            most_dose = max(by_dose.reaches(full), d);
            most_water = max(by_water.reaches(full), w);
        }
        let (dose_from, dose_to) = self.span(&of_dose, window, added, d, most_dose);
        let (water_from, water_to) = self.span(&of_water, window, added, w, most_water);
        Tolerances { dose_from, dose_to, water_from, water_to }
    }

    /// The nearest places on either side of `planned`, up to `most`, where the drink's strength is at
    /// an edge of the window: the roots of B N = τ (B + A)(B + φL), a quadratic in what strays.
    fn span<M: Measure>(
        &self,
        straying: &Straying,
        window: &Window,
        added: f64,
        planned: f64,
        most: f64,
    ) -> (Option<M>, Option<M>) {
        let Straying { dissolved, beverage, kept } = *straying;
        let drink = Line { at_zero: beverage.at_zero + added, slope: beverage.slope };
        let liquid = Line {
            at_zero: beverage.at_zero + self.held * kept.at_zero,
            slope: beverage.slope + self.held * kept.slope,
        };
        let (mut from, mut to) = (f64::NEG_INFINITY, most);
        for edge in [window.strength.lowest(), window.strength.highest()] {
            let tau = edge.fraction() - self.solids;
            let square = beverage.slope * dissolved.slope - tau * drink.slope * liquid.slope;
            let linear = beverage.at_zero * dissolved.slope + beverage.slope * dissolved.at_zero
                - tau * (drink.at_zero * liquid.slope + drink.slope * liquid.at_zero);
            let constant =
                beverage.at_zero * dissolved.at_zero - tau * drink.at_zero * liquid.at_zero;
            for root in quadratic_roots(square, linear, constant) {
                if root <= planned {
                    from = max(from, root);
                }
                if root >= planned {
                    to = min(to, root);
                }
            }
        }
        (M::new(from).ok(), M::new(to).ok())
    }
}

/// What straying moves, each straight in what strays: dissolved coffee N, beverage B, kept liquid L.
struct Straying {
    dissolved: Line,
    beverage: Line,
    kept: Line,
}

/// Every temperature from the kettle to the guest, for one batch and one cup.
fn heat_walk(
    wish: &Wish,
    brewer: &Brewer,
    kitchen: &Kitchen,
    dose: Dose,
    water: BrewWater,
    brew_per_cup: Beverage,
    added_per_cup: Addition,
) -> Result<HeatWalk, Error> {
    let room: VesselTemperature = computed(kitchen.room.celsius())?;
    let drop = kitchen.pour_drop;
    let second = kitchen.second_vessel.map(|c| Body { heat_capacity: c, temperature: room });

    let (boiling, boiling_uncertainty_k) = kitchen.air.boiling_point();
    let poured = heat::after_pour(boiling, drop)?;
    let hottest = match second {
        None => poured,
        Some(vessel) => heat::after_pour(heat::settle(water.into(), poured, &[vessel])?, drop)?,
    };
    let at_grounds = heat::reachable(wish.brew_temperature, hottest)?;
    let before_last_pour = heat::before_pour(at_grounds, drop)?;
    let (kettle, second_vessel) = match second {
        None => (before_last_pour, None),
        Some(vessel) => {
            let poured = heat::before_settling(water.into(), before_last_pour, &[vessel])?;
            (heat::before_pour(poured, drop)?, Some(before_last_pour))
        }
    };

    let cold = Body { heat_capacity: brewer.heat_capacity, temperature: room };
    let body = match brewer.rinse {
        None => cold,
        Some(rinse) => heat::preheated(cold, rinse, heat::after_pour(kettle, drop)?)?,
    };
    let grounds = Body::grounds(dose, room)?;
    let slurry = heat::settle(water.into(), at_grounds, &[grounds, body])?;
    let slurry_end = match brewer.cooling {
        Some(rate) => {
            let air = Surroundings {
                room: kitchen.room,
                humidity: kitchen.humidity,
                cover: brewer.cover,
            };
            heat::temperature_after(slurry, wish.contact, rate, &air)?
        }
        None => {
            let bodies =
                body.heat_capacity.joules_per_kelvin() + grounds.heat_capacity.joules_per_kelvin();
            heat::after_vapour(water.into(), slurry, brewer.losses.vapour, computed(bodies)?)?
        }
    };

    let brewed = heat::after_pour(slurry_end, drop)?;
    let mixed =
        dilution::mixed_temperature(brew_per_cup.into(), brewed, added_per_cup, kitchen.added)?;
    let cup = Body { heat_capacity: kitchen.cup, temperature: room };
    let in_cup = heat::settle(wish.cup.into(), mixed, &[cup])?;
    Ok(HeatWalk {
        boiling,
        boiling_uncertainty_k,
        kettle,
        brewer: body.temperature,
        second_vessel,
        at_grounds,
        slurry,
        slurry_end,
        at_most: brewer.cooling.is_none(),
        in_cup,
        wait: wait(wish, kitchen, in_cup)?,
    })
}

/// How long the drink has to wait for the temperature wished.
fn wait(wish: &Wish, kitchen: &Kitchen, in_cup: Temperature) -> Result<Option<Time>, Error> {
    let Some(serve_at) = wish.serve_at else {
        return Ok(None);
    };
    if serve_at > in_cup {
        return Err(Error::Infeasible {
            wish: Quantity::Temperature,
            value: serve_at.celsius(),
            nearest: in_cup.celsius(),
            limit: Limit::HeatLeft,
        });
    }
    let room = Surroundings { room: kitchen.room, humidity: kitchen.humidity, cover: Cover::Open };
    kitchen.cup_cooling.map(|rate| heat::time_to_cool(in_cup, serve_at, rate, &room)).transpose()
}
