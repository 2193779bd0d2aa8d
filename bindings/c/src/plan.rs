//! From a wish to a recipe.

use cupwright::Error;
use cupwright::forecast::Straying;
use cupwright::plan::{
    self, Air, Brewer, Coffee, Foreseen, HeatWalk, Kitchen, Recipe, Tolerances, Wish,
};
use cupwright::quantity::Measure;

use crate::call::{Call, Field, Refused, answer, checked, counted, field, given, optional};
use crate::forecast::{cupwright_outlook, cupwright_straying};
use crate::ratio::cupwright_chamber;
use crate::retention::cupwright_losses;
use crate::status::cupwright_error;
use crate::verdict::{cupwright_standing, cupwright_window};
use crate::{caution, forecast, heat, ratio, retention, verdict};

/// What is to be in the cup. A value with a has_ flag of 0 is not looked at; yes is anything but 0.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_wish {
    /// Size of the drink in each cup, {Beverage}.
    pub cup_g: f64,
    /// Strength of the drink, {Strength}.
    pub strength_pct: f64,
    /// Brew this strong and add water in the cup, {Strength}.
    pub brew_strength_pct: f64,
    /// Temperature of the brew water as it meets the grounds, {Temperature}.
    pub brew_c: f64,
    /// Time of contact, {Time}.
    pub contact_s: f64,
    /// Temperature at which to hand the drink over, {Temperature}.
    pub serve_c: f64,
    /// Window that the drink is to lie in.
    pub window: cupwright_window,
    /// How many cups, {Servings}.
    pub servings: i32,
    /// The most batches one is willing to brew, {Batches}.
    pub most_batches: i32,
    /// 0 to brew at the drink's own strength.
    pub has_brew_strength: i32,
    /// 0 for as many as it takes.
    pub has_most_batches: i32,
    /// 0 for as hot as it comes.
    pub has_serve: i32,
    /// 0 for no tolerances.
    pub has_window: i32,
}

/// A brewer and how it behaves.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_brewer {
    /// Strength of the liquid it keeps relative to the beverage, {HeldStrength}: 100 steeped, 0
    /// flowed through.
    pub held_strength_pct: f64,
    /// What it keeps.
    pub losses: cupwright_losses,
    /// Its chamber, where all the water stands in it at once.
    pub chamber: cupwright_chamber,
    /// Heat capacity of the part that warms, {HeatCapacity}.
    pub heat_capacity_j_per_k: f64,
    /// Hot rinse, poured away, that preheats it, {Liquid}.
    pub rinse_g: f64,
    /// Cooling rate of the slurry in it, {CoolingRate}.
    pub cooling_per_min: f64,
    /// 0 for a dripper.
    pub has_chamber: i32,
    /// 0 for a brewer at room temperature.
    pub has_rinse: i32,
    /// 0 where unknown.
    pub has_cooling: i32,
    /// Whether the slurry is open to the air: one of enum cupwright_cover.
    pub cover: i32,
    /// Pressed by hand.
    pub pressed: i32,
    /// Glass meets hot liquid.
    pub glass: i32,
}

/// A coffee at its grind.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_coffee {
    /// Yield to expect, as measured before with the brewer's held strength, {Yield}.
    pub yield_pct: f64,
    /// Moisture as weighed, {Moisture}.
    pub moisture_pct: f64,
    /// Caffeine as weighed, {CaffeineContent}.
    pub caffeine_mg_per_g: f64,
    /// 0 where unknown.
    pub has_caffeine: i32,
}

/// What is known of the air.
#[repr(i32)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum cupwright_air {
    /// A barometer's station pressure.
    Pressure = 1,
    /// Only the altitude: the boiling point is uncertain by the weather.
    Altitude = 2,
}

/// The place and its things.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_kitchen {
    /// Station pressure, {Pressure}; looked at for CUPWRIGHT_AIR_PRESSURE.
    pub pressure_kpa: f64,
    /// Altitude, {Altitude}; looked at for CUPWRIGHT_AIR_ALTITUDE.
    pub altitude_m: f64,
    /// Temperature of the room, the grounds, the cups and a cold brewer, {RoomTemperature}.
    pub room_c: f64,
    /// Relative humidity, {Humidity}; 50 where unknown (estimate).
    pub humidity_pct: f64,
    /// What each pour costs, {TemperatureDrop}.
    pub drop_k: f64,
    /// Heat capacity of a second vessel between kettle and brewer, {HeatCapacity}.
    pub second_vessel_j_per_k: f64,
    /// Heat capacity of a cup, {HeatCapacity}.
    pub cup_j_per_k: f64,
    /// Cooling rate of a full cup, {CoolingRate}.
    pub cup_cooling_per_min: f64,
    /// Solids of the water, {WaterSolids}.
    pub water_solids_mg_per_l: f64,
    /// Temperature of water added in the cup, {Temperature}.
    pub added_c: f64,
    /// What is known of the air: one of enum cupwright_air.
    pub air: i32,
    /// 0 to pour from the kettle.
    pub has_second_vessel: i32,
    /// 0 where unknown.
    pub has_cup_cooling: i32,
}

/// What the slurry's temperature at the end of contact rests on.
#[repr(i32)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum cupwright_contact_heat {
    /// The brewer's cooling rate.
    CoolingRate = 1,
    /// The heat of the vapour lost and nothing else: the most that it can be.
    AtMost = 2,
    /// Nothing: the slurry is not warmer than the room, and warming is not modelled.
    Unchanged = 3,
}

/// Temperatures from the kettle to the guest.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_heat_walk {
    /// Where water boils here, {Temperature}.
    pub boiling_c: f64,
    /// How far off that may be, K.
    pub boiling_uncertainty_k: f64,
    /// Water in the kettle, {Temperature}.
    pub kettle_c: f64,
    /// The brewer just before the brew, {VesselTemperature}.
    pub brewer_c: f64,
    /// Water settled in the second vessel, {Temperature}; 0 without one.
    pub second_vessel_c: f64,
    /// Water as it meets the grounds, {Temperature}.
    pub brew_c: f64,
    /// Water, grounds and brewer settled, {Temperature}.
    pub slurry_c: f64,
    /// The slurry at the end of contact, {Temperature}.
    pub slurry_end_c: f64,
    /// The drink in its cup, water added, {Temperature}.
    pub in_cup_c: f64,
    /// Wait until it may be handed over as wished, {Time}; 0 where nothing is wished or the cup's
    /// cooling is unknown.
    pub wait_s: f64,
    /// Whether there is a second vessel: 1 or 0.
    pub has_second_vessel: i32,
    /// How sure the end of contact is: one of enum cupwright_contact_heat.
    pub contact_heat: i32,
    /// Whether the wait is known: 1 or 0.
    pub has_wait: i32,
}

/// How far one thing alone may stray before the drink's strength leaves the window or the chamber
/// is full. Without a flag even the outermost accepted value stays inside, and the number is 0.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_tolerances {
    /// Lowest dose of a batch, {Dose}.
    pub dose_from_g: f64,
    /// Highest dose of a batch, {Dose}.
    pub dose_to_g: f64,
    /// Lowest brew water of a batch, {BrewWater}.
    pub water_from_g: f64,
    /// Highest brew water of a batch, {BrewWater}.
    pub water_to_g: f64,
    /// 1 or 0.
    pub has_dose_from: i32,
    /// 1 or 0.
    pub has_dose_to: i32,
    /// 1 or 0.
    pub has_water_from: i32,
    /// 1 or 0.
    pub has_water_to: i32,
}

/// What to do, and what to expect.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_recipe {
    /// Dose of each batch, {Dose}.
    pub dose_g: f64,
    /// Brew water of each batch, {BrewWater}.
    pub water_g: f64,
    /// Brew water per dose, {WaterRatio}.
    pub water_ratio_g_per_g: f64,
    /// Beverage expected from each batch, {Beverage}.
    pub beverage_g: f64,
    /// How full a batch makes the chamber, {Volume}; 0 without one.
    pub fill_ml: f64,
    /// Brew into each cup, {Beverage}.
    pub brew_per_cup_g: f64,
    /// Water into each cup, {Addition}.
    pub added_per_cup_g: f64,
    /// Strength of the brew before water is added, {Strength}.
    pub brew_strength_pct: f64,
    /// Strength of the drink, {Strength}.
    pub strength_pct: f64,
    /// Yield it counts on, {Yield}.
    pub yield_pct: f64,
    /// Caffeine of a serving if all of it is extracted, {Caffeine}; 0 where unknown.
    pub caffeine_mg: f64,
    /// Temperatures on the way.
    pub heat: cupwright_heat_walk,
    /// Where the drink, and the yield as the window counts it, stand in the window; all zero without
    /// one.
    pub standing: cupwright_standing,
    /// How far dose and water may stray; all zero without a window.
    pub tolerances: cupwright_tolerances,
    /// How many batches, {Batches}.
    pub batches: i32,
    /// What can hurt: a bit 1 << n for each of enum cupwright_caution.
    pub cautions: u32,
    /// Whether there is a chamber: 1 or 0.
    pub has_fill: i32,
    /// Whether the caffeine is known: 1 or 0.
    pub has_caffeine: i32,
    /// Whether there is a window: 1 or 0.
    pub has_standing: i32,
    /// Whether there is a window: 1 or 0.
    pub has_tolerances: i32,
}

/// A recipe and what it leads to.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_foreseen {
    /// The recipe.
    pub recipe: cupwright_recipe,
    /// What it leads to, and the chance that it lands in the wish's window; all zero without one.
    pub outlook: cupwright_outlook,
    /// Whether the wish has a window: 1 or 0.
    pub has_outlook: i32,
}

fn wish_of(call: Call, wish: &cupwright_wish) -> Result<Wish, Refused> {
    Ok(Wish {
        cup: checked!(call, wish.cup_g)?,
        strength: checked!(call, wish.strength_pct)?,
        servings: counted!(call, wish.servings)?,
        brew_strength: optional!(call, wish.has_brew_strength, brew_strength_pct)?,
        most_batches: match wish.has_most_batches {
            0 => None,
            _ => Some(counted!(call, wish.most_batches)?),
        },
        brew_temperature: checked!(call, wish.brew_c)?,
        contact: checked!(call, wish.contact_s)?,
        serve_at: optional!(call, wish.has_serve, serve_c)?,
        window: match wish.has_window {
            0 => None,
            _ => Some(verdict::window(call, &wish.window)?),
        },
    })
}

fn brewer_of(call: Call, brewer: &cupwright_brewer) -> Result<Brewer, Refused> {
    Ok(Brewer {
        held_strength: checked!(call, brewer.held_strength_pct)?,
        losses: retention::losses(call, &brewer.losses)?,
        chamber: match brewer.has_chamber {
            0 => None,
            _ => Some(ratio::chamber(call, &brewer.chamber)?),
        },
        heat_capacity: checked!(call, brewer.heat_capacity_j_per_k)?,
        rinse: optional!(call, brewer.has_rinse, rinse_g)?,
        cooling: optional!(call, brewer.has_cooling, cooling_per_min)?,
        cover: heat::cover(call, brewer.cover)?,
        pressed: brewer.pressed != 0,
        glass: brewer.glass != 0,
    })
}

fn coffee_of(call: Call, coffee: &cupwright_coffee) -> Result<Coffee, Refused> {
    Ok(Coffee {
        expected: checked!(call, coffee.yield_pct)?,
        moisture: checked!(call, coffee.moisture_pct)?,
        caffeine: optional!(call, coffee.has_caffeine, caffeine_mg_per_g)?,
    })
}

fn air_of(call: Call, kitchen: &cupwright_kitchen) -> Result<Air, Refused> {
    const PRESSURE: i32 = cupwright_air::Pressure as i32;
    const ALTITUDE: i32 = cupwright_air::Altitude as i32;
    match kitchen.air {
        PRESSURE => Ok(Air::Pressure(checked!(call, kitchen.pressure_kpa)?)),
        ALTITUDE => Ok(Air::Altitude(checked!(call, kitchen.altitude_m)?)),
        _ => Err(call.unknown_choice(kitchen.air, field!(air))),
    }
}

fn kitchen_of(call: Call, kitchen: &cupwright_kitchen) -> Result<Kitchen, Refused> {
    Ok(Kitchen {
        air: air_of(call, kitchen)?,
        room: checked!(call, kitchen.room_c)?,
        humidity: checked!(call, kitchen.humidity_pct)?,
        pour_drop: checked!(call, kitchen.drop_k)?,
        second_vessel: optional!(call, kitchen.has_second_vessel, second_vessel_j_per_k)?,
        cup: checked!(call, kitchen.cup_j_per_k)?,
        cup_cooling: optional!(call, kitchen.has_cup_cooling, cup_cooling_per_min)?,
        water_solids: checked!(call, kitchen.water_solids_mg_per_l)?,
        added: checked!(call, kitchen.added_c)?,
    })
}

/// A number that need not be there: 0 where it is not.
fn number<M: Measure>(value: Option<M>) -> f64 {
    value.map_or(0.0, M::value)
}

fn heat_walk(walk: &HeatWalk) -> cupwright_heat_walk {
    cupwright_heat_walk {
        boiling_c: walk.boiling.value(),
        boiling_uncertainty_k: walk.boiling_uncertainty_k,
        kettle_c: walk.kettle.value(),
        brewer_c: walk.brewer.value(),
        second_vessel_c: number(walk.second_vessel),
        brew_c: walk.at_grounds.value(),
        slurry_c: walk.slurry.value(),
        slurry_end_c: walk.slurry_end.value(),
        in_cup_c: walk.in_cup.value(),
        wait_s: number(walk.wait),
        has_second_vessel: walk.second_vessel.is_some().into(),
        contact_heat: walk.contact as i32,
        has_wait: walk.wait.is_some().into(),
    }
}

fn tolerances(tolerances: &Tolerances) -> cupwright_tolerances {
    cupwright_tolerances {
        dose_from_g: number(tolerances.dose_from),
        dose_to_g: number(tolerances.dose_to),
        water_from_g: number(tolerances.water_from),
        water_to_g: number(tolerances.water_to),
        has_dose_from: tolerances.dose_from.is_some().into(),
        has_dose_to: tolerances.dose_to.is_some().into(),
        has_water_from: tolerances.water_from.is_some().into(),
        has_water_to: tolerances.water_to.is_some().into(),
    }
}

fn recipe(recipe: &Recipe) -> cupwright_recipe {
    const NONE: Tolerances =
        Tolerances { dose_from: None, dose_to: None, water_from: None, water_to: None };
    cupwright_recipe {
        dose_g: recipe.dose.value(),
        water_g: recipe.water.value(),
        water_ratio_g_per_g: recipe.ratio.value(),
        beverage_g: recipe.beverage.value(),
        fill_ml: number(recipe.fill),
        brew_per_cup_g: recipe.brew_per_cup.value(),
        added_per_cup_g: recipe.added_per_cup.value(),
        brew_strength_pct: recipe.brew_strength.value(),
        strength_pct: recipe.strength.value(),
        yield_pct: recipe.expected.value(),
        caffeine_mg: number(recipe.caffeine),
        heat: heat_walk(&recipe.heat),
        standing: recipe.standing.map_or(verdict::NO_STANDING, verdict::standing),
        tolerances: tolerances(recipe.tolerances.as_ref().unwrap_or(&NONE)),
        batches: recipe.batches.count() as i32,
        cautions: caution::bits(recipe.cautions),
        has_fill: recipe.fill.is_some().into(),
        has_caffeine: recipe.caffeine.is_some().into(),
        has_standing: recipe.standing.is_some().into(),
        has_tolerances: recipe.tolerances.is_some().into(),
    }
}

/// The field of the wish that an error of the plan is about.
fn blamed(wish: &Wish, error: &Error) -> Option<Field> {
    const FIELDS: [(&str, Field); 5] = [
        ("cup_g", field!(cup_g)),
        ("strength_pct", field!(strength_pct)),
        ("brew_strength_pct", field!(brew_strength_pct)),
        ("brew_c", field!(brew_c)),
        ("serve_c", field!(serve_c)),
    ];
    let name = wish.field_of(error);
    FIELDS.iter().find(|(known, _)| name == Some(*known)).map(|(_, field)| *field)
}

/// Plans a brew: dose, water, batches, what to add, every temperature on the way, how far a hand
/// may stray, and the cautions. The yield expected is that of this coffee, grind, time and
/// temperature; a recipe far from the one it was measured at needs it measured again.
///
/// @param wish What is to be in the cup.
/// @param brewer What it is made in.
/// @param coffee What it is made of.
/// @param kitchen Where it is made.
/// @param[out] recipe What to do, and what to expect.
///
/// Fails with CUPWRIGHT_STATUS_INFEASIBLE with the nearest feasible value and the limit that binds,
/// where the error's field names the field of the wish; CUPWRIGHT_STATUS_EMPTY_BAND for a window
/// whose lowest edge is not below its highest; CUPWRIGHT_STATUS_OUT_OF_RANGE for a strength outside
/// the window; CUPWRIGHT_STATUS_IMPOSSIBLE for a strength not above the
/// water's own and for a chamber that its own hold-up fills; CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE
/// where a result leaves its range.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_plan_recipe(
    wish: *const cupwright_wish,
    brewer: *const cupwright_brewer,
    coffee: *const cupwright_coffee,
    kitchen: *const cupwright_kitchen,
    recipe: *mut cupwright_recipe,
    error: *mut cupwright_error,
) -> i32 {
    answer!(recipe, error, |call| Ok({
        let wish = wish_of(call, given!(call, wish)?)?;
        let (brewer, coffee) =
            (brewer_of(call, given!(call, brewer)?)?, coffee_of(call, given!(call, coffee)?)?);
        let kitchen = kitchen_of(call, given!(call, kitchen)?)?;
        let planned = plan::recipe(&wish, &brewer, &coffee, &kitchen);
        self::recipe(&planned.map_err(|error| call.refuse(&error, blamed(&wish, &error)))?)
    }))
}

/// Asks a question of a wish with all that it is made with, and of how surely it lands.
fn ask(
    call: Call,
    wish: &cupwright_wish,
    brewer: &cupwright_brewer,
    coffee: &cupwright_coffee,
    kitchen: &cupwright_kitchen,
    straying: &cupwright_straying,
    question: Question,
) -> Result<cupwright_foreseen, Refused> {
    let wish = wish_of(call, wish)?;
    let (brewer, coffee) = (brewer_of(call, brewer)?, coffee_of(call, coffee)?);
    let kitchen = kitchen_of(call, kitchen)?;
    let straying = forecast::straying(call, straying)?;
    let seen = question(&wish, &brewer, &coffee, &kitchen, &straying)
        .map_err(|error| call.refuse(&error, blamed(&wish, &error)))?;
    Ok(cupwright_foreseen {
        recipe: recipe(&seen.recipe),
        outlook: seen.outlook.as_ref().map_or(forecast::NO_OUTLOOK, forecast::outlook),
        has_outlook: seen.outlook.is_some().into(),
    })
}

type Question = fn(&Wish, &Brewer, &Coffee, &Kitchen, &Straying) -> Result<Foreseen, Error>;

/// The recipe of a wish, what it leads to, and the chance that it lands in the wish's window, its
/// yield as the window does.
///
/// @param wish What is to be in the cup.
/// @param brewer What it is made in.
/// @param coffee What it is made of.
/// @param kitchen Where it is made.
/// @param straying How far a brew strays from what is meant.
/// @param[out] foreseen The recipe and its outlook.
///
/// Fails with what cupwright_plan_recipe() fails with, and CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE for
/// an uncertainty past its range.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_plan_foreseen(
    wish: *const cupwright_wish,
    brewer: *const cupwright_brewer,
    coffee: *const cupwright_coffee,
    kitchen: *const cupwright_kitchen,
    straying: *const cupwright_straying,
    foreseen: *mut cupwright_foreseen,
    error: *mut cupwright_error,
) -> i32 {
    answer!(foreseen, error, |call| ask(
        call,
        given!(call, wish)?,
        given!(call, brewer)?,
        given!(call, coffee)?,
        given!(call, kitchen)?,
        given!(call, straying)?,
        plan::foreseen,
    ))
}

/// The recipe that lands in the wish's window most surely: the wish with its strength moved inside
/// the window, where that is worth a point of chance; else the wish as it is. The chance of a
/// strength is that of the dose alone changed, found by golden section; the recipe is then planned
/// anew. Where that strength cannot be planned it is the nearest to it that can.
///
/// @param wish What is to be in the cup.
/// @param brewer What it is made in.
/// @param coffee What it is made of.
/// @param kitchen Where it is made.
/// @param straying How far a brew strays from what is meant.
/// @param[out] foreseen The recipe and its outlook.
///
/// Fails with what cupwright_plan_foreseen() fails with for the wish as it is.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_plan_surest(
    wish: *const cupwright_wish,
    brewer: *const cupwright_brewer,
    coffee: *const cupwright_coffee,
    kitchen: *const cupwright_kitchen,
    straying: *const cupwright_straying,
    foreseen: *mut cupwright_foreseen,
    error: *mut cupwright_error,
) -> i32 {
    answer!(foreseen, error, |call| ask(
        call,
        given!(call, wish)?,
        given!(call, brewer)?,
        given!(call, coffee)?,
        given!(call, kitchen)?,
        given!(call, straying)?,
        plan::surest,
    ))
}
