//! Every public formula under one name, with named inputs and outputs, so that check values from
//! files and random inputs can reach all of them alike.

use std::cell::RefCell;
use std::collections::BTreeMap;

use cupwright::extraction::{Brew, Kinetics};
use cupwright::heat::{Body, Cover, Surroundings};
use cupwright::quantity::*;
use cupwright::ratio::Chamber;
use cupwright::retention::{Losses, Paper};
use cupwright::{Error, caution, dilution, extraction, heat, ratio, reading, retention, water};

/// Where a formula takes its inputs from.
pub trait Inputs {
    /// The value of a field.
    fn number(&self, field: &str, quantity: Quantity) -> f64;
    /// The values of a list.
    fn numbers(&self, field: &str, quantity: Quantity) -> Vec<f64>;
}

/// Inputs from a check-value file.
pub struct Given(pub BTreeMap<String, serde_json::Value>);

impl Inputs for Given {
    fn number(&self, field: &str, _: Quantity) -> f64 {
        self.0[field].as_f64().unwrap_or_else(|| panic!("{field} is not a number"))
    }

    fn numbers(&self, field: &str, _: Quantity) -> Vec<f64> {
        let Some(list) = self.0.get(field) else { return Vec::new() };
        let list = list.as_array().unwrap_or_else(|| panic!("{field} is not a list"));
        list.iter().map(|value| value.as_f64().unwrap()).collect()
    }
}

/// Inputs drawn from each quantity's range, its edges, and a little beyond.
pub struct Drawn(pub RefCell<u64>);

impl Drawn {
    /// SplitMix64 (Steele, Lea & Flood 2014).
    fn next(&self) -> u64 {
        let mut state = self.0.borrow_mut();
        *state = state.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = *state;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        z ^ (z >> 31)
    }

    fn fraction(&self) -> f64 {
        (self.next() >> 11) as f64 / (1_u64 << 53) as f64
    }
}

impl Inputs for Drawn {
    fn number(&self, _: &str, quantity: Quantity) -> f64 {
        let (low, high) = (quantity.lowest(), quantity.highest());
        let uniform = low + (high - low) * self.fraction();
        match self.next() % 40 {
            0 => low,
            1 => high,
            2 => low.next_down(),
            3 => high.next_up(),
            4 => f64::NAN,
            5 => f64::INFINITY,
            6 => f64::from_bits(self.next()),
            // Most real values crowd near the low end of a wide range.
            7..=25 if !quantity.is_whole() => low + (high - low) * self.fraction().powi(6),
            _ if quantity.is_whole() => uniform.round(),
            _ => uniform,
        }
    }

    fn numbers(&self, field: &str, quantity: Quantity) -> Vec<f64> {
        (0..self.next() % 12).map(|_| self.number(field, quantity)).collect()
    }
}

/// What a formula gives back.
pub type Outputs = Vec<(&'static str, f64)>;

/// A public formula.
pub struct Formula {
    pub id: &'static str,
    pub call: fn(&dyn Inputs) -> Result<Outputs, Error>,
}

fn get<M: Measure>(i: &dyn Inputs, field: &str) -> Result<M, Error> {
    M::new(i.number(field, M::QUANTITY))
}

fn list<M: Measure>(i: &dyn Inputs, field: &str) -> Result<Vec<M>, Error> {
    i.numbers(field, M::QUANTITY).into_iter().map(M::new).collect()
}

/// One output. Every quantity that comes out must be one that could go in.
fn one<M: Measure>(field: &'static str, value: M) -> Outputs {
    assert_eq!(M::new(value.value()), Ok(value), "{field} leaves its range");
    vec![(field, value.value())]
}

fn brew(i: &dyn Inputs) -> Result<Brew, Error> {
    Ok(Brew {
        dose: get(i, "dose_g")?,
        water: get(i, "water_g")?,
        beverage: get(i, "beverage_g")?,
        moisture: get(i, "moisture_pct")?,
        water_solids: get(i, "water_solids_mg_per_l")?,
        vapour: get(i, "vapour_g")?,
        held_strength: get(i, "held_strength_pct")?,
    })
}

/// A brew whose beverage is the unknown.
fn brew_to_find(i: &dyn Inputs) -> Result<Brew, Error> {
    Ok(Brew {
        dose: get(i, "dose_g")?,
        water: get(i, "water_g")?,
        beverage: Beverage::from_grams(1.0)?,
        moisture: get(i, "moisture_pct")?,
        water_solids: get(i, "water_solids_mg_per_l")?,
        vapour: get(i, "vapour_g")?,
        held_strength: get(i, "held_strength_pct")?,
    })
}

fn kinetics(i: &dyn Inputs) -> Result<Kinetics, Error> {
    Ok(Kinetics {
        equilibrium: get(i, "equilibrium_yield_pct")?,
        fast_share: get(i, "fast_share_pct")?,
        fast: get(i, "fast_time_s")?,
        slow: get(i, "slow_time_s")?,
    })
}

fn chamber(i: &dyn Inputs) -> Result<Chamber, Error> {
    Ok(Chamber { volume: get(i, "chamber_ml")?, displacement: get(i, "displacement_ml_per_g")? })
}

fn losses(i: &dyn Inputs) -> Result<Losses, Error> {
    Ok(Losses {
        retention: get(i, "apparent_retention_g_per_g")?,
        hold_up: get(i, "hold_up_g")?,
        paper: Paper::Dry { mass: get(i, "paper_g")?, uptake: get(i, "paper_uptake_g_per_g")? },
        drips: get(i, "drips_g")?,
        vapour: get(i, "vapour_g")?,
    })
}

fn surroundings(i: &dyn Inputs) -> Result<Surroundings, Error> {
    // 0 lidded, 1 open; a share so that random inputs find both.
    let open = get::<Share>(i, "open")?.percent() >= 1.0;
    Ok(Surroundings {
        room: get(i, "room_c")?,
        humidity: get(i, "humidity_pct")?,
        cover: if open { Cover::Open } else { Cover::Lidded },
    })
}

fn bodies(i: &dyn Inputs) -> Result<Vec<Body>, Error> {
    let capacities = list::<HeatCapacity>(i, "heat_capacity_j_per_k")?;
    let temperatures = list::<VesselTemperature>(i, "body_c")?;
    Ok(capacities
        .into_iter()
        .zip(temperatures)
        .map(|(heat_capacity, temperature)| Body { heat_capacity, temperature })
        .collect())
}

macro_rules! formulas {
    ($($id:literal => |$i:ident| $call:expr;)+) => {
        /// All of them, in the order of the rooms.
        pub const FORMULAS: &[Formula] = &[$(Formula {
            id: $id,
            call: |$i| { Ok($call) },
        },)+];
    };
}

formulas! {
    "water.density" => |i| one("density_kg_per_m3", water::density(get(i, "water_c")?));
    "water.specific_heat" => |i|
        one("specific_heat_j_per_g_k", water::specific_heat(get(i, "water_c")?));
    "water.enthalpy" => |i| one("enthalpy_j_per_g", water::enthalpy(get(i, "water_c")?));
    "water.temperature_of_enthalpy" => |i|
        one("water_c", water::temperature_of_enthalpy(get(i, "enthalpy_j_per_g")?)?);
    "water.vapour_pressure" => |i|
        one("vapour_pressure_kpa", water::vapour_pressure(get(i, "water_c")?));
    "water.boiling_point" => |i| one("water_c", water::boiling_point(get(i, "pressure_kpa")?));
    "water.latent_heat" => |i| one("latent_heat_j_per_g", water::latent_heat(get(i, "water_c")?));
    "water.pressure_at_altitude" => |i|
        one("pressure_kpa", water::pressure_at_altitude(get(i, "altitude_m")?));
    "water.altitude_at_pressure" => |i|
        one("altitude_m", water::altitude_at_pressure(get(i, "pressure_kpa")?)?);

    "ratio.water_ratio" => |i|
        one("water_ratio_g_per_g", ratio::water_ratio(get(i, "dose_g")?, get(i, "water_g")?)?);
    "ratio.water_for_ratio" => |i| one("water_g",
        ratio::water_for_ratio(get(i, "dose_g")?, get(i, "water_ratio_g_per_g")?)?);
    "ratio.dose_for_water" => |i| one("dose_g",
        ratio::dose_for_water(get(i, "water_g")?, get(i, "water_ratio_g_per_g")?)?);
    "ratio.beverage_ratio" => |i| one("beverage_ratio_g_per_g",
        ratio::beverage_ratio(get(i, "dose_g")?, get(i, "beverage_g")?)?);
    "ratio.beverage_for_ratio" => |i| one("beverage_g",
        ratio::beverage_for_ratio(get(i, "dose_g")?, get(i, "beverage_ratio_g_per_g")?)?);
    "ratio.dose_for_beverage" => |i| one("dose_g",
        ratio::dose_for_beverage(get(i, "beverage_g")?, get(i, "beverage_ratio_g_per_g")?)?);
    "ratio.dose_per_litre" => |i| one("dose_g_per_l",
        ratio::dose_per_litre(get(i, "water_ratio_g_per_g")?, get(i, "water_c")?)?);
    "ratio.ratio_of_dose_per_litre" => |i| one("water_ratio_g_per_g",
        ratio::ratio_of_dose_per_litre(get(i, "dose_g_per_l")?, get(i, "water_c")?)?);
    "ratio.water_mass" => |i|
        one("water_g", ratio::water_mass(get(i, "volume_ml")?, get(i, "water_c")?)?);
    "ratio.water_volume" => |i|
        one("volume_ml", ratio::water_volume(get(i, "water_g")?, get(i, "water_c")?)?);
    "ratio.for_servings" => |i| {
        let (dose, water) = ratio::for_servings(
            get(i, "dose_g")?, get(i, "water_g")?, get(i, "servings")?)?;
        [one("dose_g", dose), one("water_g", water)].concat()
    };
    "ratio.whole_cups" => |i|
        one("servings", ratio::whole_cups(get(i, "beverage_g")?, get(i, "cup_g")?)?);
    "ratio.batches" => |i| {
        let split = ratio::batches(
            get(i, "dose_g")?, get(i, "water_g")?, get(i, "water_c")?, &chamber(i)?)?;
        [
            one("batches", split.batches),
            one("dose_g", split.dose),
            one("water_g", split.water),
            one("fill_ml", split.fill),
        ].concat()
    };
    "ratio.largest_dose" => |i| one("dose_g",
        ratio::largest_dose(get(i, "water_ratio_g_per_g")?, get(i, "water_c")?, &chamber(i)?)?);

    "extraction.extraction_yield" => |i| one("yield_pct",
        extraction::extraction_yield(&brew(i)?, get(i, "strength_pct")?)?);
    "extraction.strength" => |i|
        one("strength_pct", extraction::strength(&brew(i)?, get(i, "yield_pct")?)?);
    "extraction.beverage" => |i| one("beverage_g",
        extraction::beverage(&brew_to_find(i)?, get(i, "strength_pct")?, get(i, "yield_pct")?)?);
    "extraction.retained_liquid" => |i| {
        let brew = brew(i)?;
        let extracted = extraction::extraction_yield(&brew, get(i, "strength_pct")?)?;
        one("retained_g", extraction::retained_liquid(&brew, extracted)?)
    };
    "extraction.flow_through_yield" => |i| one("yield_pct", extraction::flow_through_yield(
        get(i, "strength_pct")?, get(i, "beverage_g")?, get(i, "dose_g")?)?);
    "extraction.flow_through_strength" => |i| one("strength_pct",
        extraction::flow_through_strength(
            get(i, "yield_pct")?, get(i, "beverage_g")?, get(i, "dose_g")?)?);
    "extraction.steeped_yield" => |i| one("yield_pct", extraction::steeped_yield(
        get(i, "strength_pct")?, get(i, "water_g")?, get(i, "dose_g")?)?);
    "extraction.steeped_strength" => |i| one("strength_pct", extraction::steeped_strength(
        get(i, "yield_pct")?, get(i, "water_ratio_g_per_g")?)?);
    "extraction.steeped_ratio" => |i| one("water_ratio_g_per_g",
        extraction::steeped_ratio(get(i, "yield_pct")?, get(i, "strength_pct")?)?);
    "extraction.oven_dried_yield" => |i| one("yield_pct", extraction::oven_dried_yield(
        get(i, "yield_pct")?, get(i, "water_ratio_g_per_g")?, get(i, "true_retention_g_per_g")?)?);
    "extraction.dry_basis_yield" => |i| one("yield_pct",
        extraction::dry_basis_yield(get(i, "yield_pct")?, get(i, "moisture_pct")?)?);
    "extraction.as_weighed_yield" => |i| one("yield_pct",
        extraction::as_weighed_yield(get(i, "yield_pct")?, get(i, "moisture_pct")?));
    "extraction.yield_at_time" => |i|
        one("yield_pct", extraction::yield_at_time(&kinetics(i)?, get(i, "time_s")?));
    "extraction.time_for_yield" => |i|
        one("time_s", extraction::time_for_yield(&kinetics(i)?, get(i, "yield_pct")?)?);
    "extraction.plausibility" => |i| {
        let judged = extraction::plausibility(&brew(i)?, get(i, "strength_pct")?)?;
        for doubt in judged.doubts.iter().flatten() {
            let range = doubt.quantity.lowest()..=doubt.quantity.highest();
            assert!(doubt.would_have_to_be.is_none_or(|v| range.contains(&v)), "{doubt:?}");
        }
        one("yield_pct", judged.extracted)
    };

    "retention.beverage" => |i| one("beverage_g",
        retention::beverage(&losses(i)?, get(i, "dose_g")?, get(i, "water_g")?)?);
    "retention.water_for_beverage" => |i| one("water_g",
        retention::water_for_beverage(&losses(i)?, get(i, "dose_g")?, get(i, "beverage_g")?)?);
    "retention.dose_for_beverage" => |i| one("dose_g",
        retention::dose_for_beverage(&losses(i)?, get(i, "water_g")?, get(i, "beverage_g")?)?);
    "retention.retention_of_brew" => |i| one("apparent_retention_g_per_g",
        retention::retention_of_brew(
            &losses(i)?, get(i, "dose_g")?, get(i, "water_g")?, get(i, "beverage_g")?)?);
    "retention.apparent_retention" => |i| one("apparent_retention_g_per_g",
        retention::apparent_retention(
            get(i, "dose_g")?, get(i, "water_g")?, get(i, "beverage_g")?)?);
    "retention.true_retention" => |i| one("true_retention_g_per_g", retention::true_retention(
        get(i, "apparent_retention_g_per_g")?, get(i, "yield_pct")?, get(i, "moisture_pct")?,
        get(i, "vapour_g")?, get(i, "dose_g")?)?);
    "retention.apparent_of_true_retention" => |i| one("apparent_retention_g_per_g",
        retention::apparent_of_true_retention(
            get(i, "true_retention_g_per_g")?, get(i, "yield_pct")?, get(i, "moisture_pct")?,
            get(i, "vapour_g")?, get(i, "dose_g")?)?);
    "retention.retention_of_spent_moisture" => |i| one("true_retention_g_per_g",
        retention::retention_of_spent_moisture(get(i, "spent_moisture_pct")?, get(i, "yield_pct")?)?);

    "dilution.strength_after_water" => |i| one("strength_pct", dilution::strength_after_water(
        get(i, "beverage_g")?, get(i, "strength_pct")?, get(i, "added_g")?,
        get(i, "water_solids_mg_per_l")?)?);
    "dilution.water_to_reach" => |i| one("added_g", dilution::water_to_reach(
        get(i, "beverage_g")?, get(i, "strength_pct")?, get(i, "wanted_pct")?,
        get(i, "water_solids_mg_per_l")?)?);
    "dilution.drink_of_brew" => |i| one("cup_g", dilution::drink_of_brew(
        get(i, "beverage_g")?, get(i, "strength_pct")?, get(i, "wanted_pct")?,
        get(i, "water_solids_mg_per_l")?)?);
    "dilution.brew_for_drink" => |i| one("beverage_g", dilution::brew_for_drink(
        get(i, "cup_g")?, get(i, "strength_pct")?, get(i, "wanted_pct")?,
        get(i, "water_solids_mg_per_l")?)?);
    "dilution.split" => |i| {
        let split = dilution::split(
            get(i, "beverage_g")?, get(i, "strength_pct")?, get(i, "servings")?,
            get(i, "cup_g")?, get(i, "wanted_pct")?, get(i, "water_solids_mg_per_l")?)?;
        [
            one("beverage_g", split.brew),
            one("added_g", split.added),
            one("rest_g", split.rest),
        ].concat()
    };
    "dilution.with_milk" => |i| {
        let drink = dilution::with_milk(
            get(i, "beverage_g")?, get(i, "strength_pct")?, get(i, "added_g")?,
            get(i, "milk_solids_pct")?)?;
        [
            one("cup_g", drink.drink),
            one("strength_pct", drink.strength),
            one("milk_solids_pct", drink.milk_solids),
        ].concat()
    };
    "dilution.mixed_temperature" => |i| one("water_c", dilution::mixed_temperature(
        get(i, "hot_g")?, get(i, "hot_c")?, get(i, "cold_g")?, get(i, "cold_c")?)?);
    "dilution.mixed_with_milk_temperature" => |i| one("water_c",
        dilution::mixed_with_milk_temperature(
            get(i, "hot_g")?, get(i, "hot_c")?, get(i, "cold_g")?, get(i, "cold_c")?)?);
    "dilution.iced" => |i| {
        let iced = dilution::iced(
            get(i, "beverage_g")?, get(i, "water_c")?, get(i, "strength_pct")?, get(i, "ice_g")?,
            get(i, "ice_c")?)?;
        [
            one("water_c", iced.temperature),
            one("melted_g", iced.melted),
            one("left_g", iced.left),
            one("strength_pct", iced.strength),
        ].concat()
    };
    "dilution.ice_to_reach" => |i| one("ice_g", dilution::ice_to_reach(
        get(i, "beverage_g")?, get(i, "water_c")?, get(i, "wanted_c")?, get(i, "ice_c")?)?);

    "heat.heat_capacity" => |i| one("heat_capacity_j_per_k", heat::heat_capacity(
        get(i, "vessel_g")?, get(i, "specific_heat_j_per_g_k")?, get(i, "share_pct")?)?);
    "heat.settle" => |i| one("water_c",
        heat::settle(get(i, "water_g")?, get(i, "water_c")?, &bodies(i)?)?);
    "heat.before_settling" => |i| one("water_c",
        heat::before_settling(get(i, "water_g")?, get(i, "settled_c")?, &bodies(i)?)?);
    "heat.preheated" => |i| {
        let vessel = Body {
            heat_capacity: get(i, "heat_capacity_j_per_k")?,
            temperature: get(i, "vessel_c")?,
        };
        one("vessel_c", heat::preheated(vessel, get(i, "water_g")?, get(i, "water_c")?)?.temperature)
    };
    "heat.vessel_heat_capacity" => |i| one("heat_capacity_j_per_k", heat::vessel_heat_capacity(
        get(i, "water_g")?, get(i, "water_c")?, get(i, "settled_c")?, get(i, "vessel_c")?,
        &bodies(i)?)?);
    "heat.after_vapour" => |i| one("water_c", heat::after_vapour(
        get(i, "water_g")?, get(i, "water_c")?, get(i, "vapour_g")?,
        get(i, "capacity_j_per_k")?)?);
    "heat.after_pour" => |i|
        one("water_c", heat::after_pour(get(i, "water_c")?, get(i, "drop_k")?)?);
    "heat.before_pour" => |i|
        one("water_c", heat::before_pour(get(i, "water_c")?, get(i, "drop_k")?)?);
    "heat.reachable" => |i|
        one("water_c", heat::reachable(get(i, "water_c")?, get(i, "boiling_c")?)?);
    "heat.time_to_cool" => |i| one("time_s", heat::time_to_cool(
        get(i, "water_c")?, get(i, "to_c")?, get(i, "cooling_per_min")?, &surroundings(i)?)?);
    "heat.cooling_rate" => |i| one("cooling_per_min", heat::cooling_rate(
        get(i, "water_c")?, get(i, "to_c")?, get(i, "time_s")?, &surroundings(i)?)?);
    "heat.temperature_after" => |i| one("water_c", heat::temperature_after(
        get(i, "water_c")?, get(i, "time_s")?, get(i, "cooling_per_min")?, &surroundings(i)?)?);
    "heat.open_cup_rate_estimate" => |i| one("cooling_per_min", heat::open_cup_rate_estimate(
        get(i, "water_g")?, get(i, "heat_capacity_j_per_k")?, get(i, "diameter_mm")?)?);

    "reading.mean" => |i| {
        let readings = list::<Strength>(i, "strength_pct")?;
        // So wide a repeatability that no readings of these checks disagree.
        let read = reading::combine(&readings, Repeatability::from_percent(2.0)?)?;
        let spread = reading::repeatability(&readings)?;
        [one("strength_pct", read.value), one("standard_deviation_pct", spread)].concat()
    };
    "reading.critical_range" => |i| vec![("strength_range_pct",
        reading::critical_range(get(i, "readings")?, get(i, "repeatability_pct")?)?)];
    "reading.total_strength" => |i| one("strength_pct", reading::total_strength(
        get(i, "strength_pct")?, reading::Zero::BrewWater, get(i, "water_solids_mg_per_l")?)?);
    "reading.coffee_strength" => |i| one("strength_pct", reading::coffee_strength(
        get(i, "strength_pct")?, reading::Zero::Distilled, get(i, "water_solids_mg_per_l")?)?);
    "reading.brix_of_index" => |i|
        one("brix", reading::brix_of_index(get(i, "refractive_index")?)?);
    "reading.index_of_brix" => |i|
        one("refractive_index", reading::index_of_brix(get(i, "brix")?)?);
    "reading.brix_at_20" => |i|
        one("brix", reading::brix_at_20(get(i, "brix")?, get(i, "sample_c")?)?);
    "reading.strength_of_brix" => |i| one("strength_pct",
        reading::strength_of_brix(get(i, "brix")?, get(i, "refractive_factor_pct_per_brix")?)?);
    "reading.brix_of_strength" => |i| one("brix",
        reading::brix_of_strength(get(i, "strength_pct")?, get(i, "refractive_factor_pct_per_brix")?)?);
    "reading.strength_of_index" => |i| one("strength_pct", reading::strength_of_index(
        get(i, "refractive_index")?, get(i, "sample_c")?,
        get(i, "refractive_factor_pct_per_brix")?)?);

    "caution.time_to_burn" => |i| match caution::time_to_burn(get(i, "water_c")?) {
        caution::TimeToBurn::Within(time) => one("time_s", time),
        _ => vec![],
    };
    "caution.caffeine" => |i| one("caffeine_mg", caution::caffeine(
        get(i, "dose_g")?, get(i, "caffeine_mg_per_g")?, get(i, "share_pct")?)?);
}
