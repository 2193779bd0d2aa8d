//! Every public function of the core under one name, with named inputs and outputs, so that check
//! values from files and random inputs can reach all of them alike, in Rust and behind every interface.

#![allow(clippy::disallowed_methods, reason = "the last bit does not matter in drawing inputs")]

pub mod answers;
pub mod examples;
pub mod inputs;
pub mod scattered;
pub mod vectors;

use std::collections::BTreeMap;
use std::sync::Mutex;

use cupwright::advise::{Cup, Kept, Means, Suggestion};
use cupwright::calibrate::{
    Drained, Dried, Fitted, MOST_MEASUREMENTS, Quality, Repeat, Settled, Steeped, Thermometer,
    Timed,
};
use cupwright::caution::{Hazards, TimeToBurn};
use cupwright::decision::{Chances, Needed};
use cupwright::extraction::{Brew, Kinetics};
use cupwright::forecast::{Intended, Outlook, Straying};
use cupwright::heat::{Body, Cover, Surroundings};
use cupwright::plan::{Air, Brewer, Coffee, Foreseen, Kitchen, Recipe, Wish};
use cupwright::quantity::*;
use cupwright::ratio::Chamber;
use cupwright::reading::Zero;
use cupwright::retention::{Losses, Paper};
use cupwright::uncertainty::{
    Budget, Estimate, Influence, Measured, Plateau, Rates, ReadStrength, Series, Shape, Standard,
    Uncertain, Uncertainty,
};
use cupwright::verdict::{Band, Counting, Place, Standing, Window};
use cupwright::{
    Error, advise, calibrate, caution, decision, dilution, extraction, forecast, heat, plan, ratio,
    reading, retention, uncertainty, verdict, water,
};

use inputs::Inputs;

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

/// One of a list of codes and what they stand for.
fn choice<T: Copy>(i: &dyn Inputs, field: &str, known: &[(u8, T)]) -> T {
    let code = i.choice(field, known.len() as u8);
    let found = known.iter().find(|(of, _)| *of == code);
    found.unwrap_or_else(|| panic!("{field}: {code} is not among the choices")).1
}

/// Every quantity that comes out must be one that could go in.
fn in_range<M: Measure>(value: M) -> f64 {
    assert_eq!(M::new(value.value()), Ok(value), "{} leaves its range", M::QUANTITY.name());
    value.value()
}

/// One output.
fn one<M: Measure>(field: &'static str, value: M) -> Outputs {
    vec![(field, in_range(value))]
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

fn kinetics(i: &dyn Inputs) -> Result<Kinetics, Error> {
    Ok(Kinetics {
        equilibrium: get(i, "equilibrium_yield_pct")?,
        fast_share: get(i, "fast_share_pct")?,
        fast: get(i, "fast_time_s")?,
        slow: get(i, "slow_time_s")?,
    })
}

fn rates(i: &dyn Inputs) -> Result<Rates, Error> {
    Ok(Rates {
        kinetics: kinetics(i)?,
        u_fast_share: get(i, "u_fast_share_pct")?,
        u_fast: get(i, "u_ln_fast_time")?,
        u_slow: get(i, "u_ln_slow_time")?,
        share_and_fast: get(i, "correlation_share_fast")?,
        share_and_slow: get(i, "correlation_share_slow")?,
        fast_and_slow: get(i, "correlation_fast_slow")?,
        freedom: get(i, "nu_rates")?,
    })
}

fn plateau(i: &dyn Inputs) -> Result<Plateau, Error> {
    Ok(Plateau {
        u_equilibrium: get(i, "u_equilibrium_yield_pct")?,
        equilibrium_and_share: get(i, "correlation_equilibrium_share")?,
        equilibrium_and_fast: get(i, "correlation_equilibrium_fast")?,
        equilibrium_and_slow: get(i, "correlation_equilibrium_slow")?,
    })
}

fn chamber(i: &dyn Inputs) -> Result<Chamber, Error> {
    Ok(Chamber { volume: get(i, "volume_ml")?, displacement: get(i, "displacement_ml_per_g")? })
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
    Ok(Surroundings { room: get(i, "room_c")?, humidity: get(i, "humidity_pct")?, cover: cover(i) })
}

fn cover(i: &dyn Inputs) -> Cover {
    choice(i, "cover", &[(Cover::Open as u8, Cover::Open), (Cover::Lidded as u8, Cover::Lidded)])
}

fn zero(i: &dyn Inputs) -> Zero {
    let known =
        [(Zero::Distilled as u8, Zero::Distilled), (Zero::BrewWater as u8, Zero::BrewWater)];
    choice(i, "zero", &known)
}

/// Solids in the order of their list, refused as too many for every interface before any of them is
/// looked at.
fn bodies(i: &dyn Inputs) -> Result<Vec<Body>, Error> {
    let capacities = i.numbers("heat_capacity_j_per_k", Quantity::HeatCapacity);
    let temperatures = i.numbers("body_c", Quantity::VesselTemperature);
    BodyCount::from_count(capacities.len().min(temperatures.len()) as f64)?;
    capacities
        .into_iter()
        .zip(temperatures)
        .map(|(capacity, temperature)| {
            Ok(Body {
                heat_capacity: Measure::new(capacity)?,
                temperature: Measure::new(temperature)?,
            })
        })
        .collect()
}

/// Readings, refused as too few or too many before any of them is looked at.
fn readings(i: &dyn Inputs) -> Result<Vec<Strength>, Error> {
    let values = i.numbers("strength_pct", Quantity::Strength);
    ReadingCount::from_count(values.len() as f64)?;
    values.into_iter().map(Measure::new).collect()
}

fn window(i: &dyn Inputs) -> Result<Window, Error> {
    let strength = Band::new(get(i, "strength_lowest_pct")?, get(i, "strength_highest_pct")?)?;
    if !i.flag("has_yield") {
        return Ok(Window { strength, extracted: None, counting: Counting::NotStated });
    }
    let extracted = Some(Band::new(get(i, "yield_lowest_pct")?, get(i, "yield_highest_pct")?)?);
    let known = [Counting::NotStated, Counting::FlowThrough, Counting::MassBalance];
    let counting = choice(i, "yield_counting", &known.map(|of| (of as u8, of)));
    Ok(Window { strength, extracted, counting })
}

fn optional<M: Measure>(i: &dyn Inputs, flag: &str, field: &str) -> Result<Option<M>, Error> {
    if i.flag(flag) { get(i, field).map(Some) } else { Ok(None) }
}

/// The wish of a recipe.
///
/// # Errors
/// As the quantities of its fields.
pub fn wish(i: &dyn Inputs) -> Result<Wish, Error> {
    Ok(Wish {
        cup: get(i, "cup_g")?,
        strength: get(i, "strength_pct")?,
        servings: get(i, "servings")?,
        brew_strength: optional(i, "has_brew_strength", "brew_strength_pct")?,
        most_batches: optional(i, "has_most_batches", "most_batches")?,
        brew_temperature: get(i, "brew_c")?,
        contact: get(i, "contact_s")?,
        serve_at: optional(i, "has_serve", "serve_c")?,
        window: if i.flag("has_window") { Some(window(i)?) } else { None },
    })
}

fn brewer(i: &dyn Inputs) -> Result<Brewer, Error> {
    Ok(Brewer {
        held_strength: get(i, "held_strength_pct")?,
        losses: losses(i)?,
        chamber: if i.flag("has_chamber") { Some(chamber(i)?) } else { None },
        heat_capacity: get(i, "heat_capacity_j_per_k")?,
        rinse: optional(i, "has_rinse", "rinse_g")?,
        cooling: optional(i, "has_cooling", "cooling_per_min")?,
        cover: cover(i),
        pressed: i.flag("pressed"),
        glass: i.flag("glass"),
    })
}

fn coffee(i: &dyn Inputs) -> Result<Coffee, Error> {
    Ok(Coffee {
        expected: get(i, "yield_pct")?,
        moisture: get(i, "moisture_pct")?,
        caffeine: optional(i, "has_caffeine", "caffeine_mg_per_g")?,
    })
}

fn kitchen(i: &dyn Inputs) -> Result<Kitchen, Error> {
    Ok(Kitchen {
        air: match i.choice("air", 2) {
            1 => Air::Pressure(get(i, "pressure_kpa")?),
            2 => Air::Altitude(get(i, "altitude_m")?),
            code => panic!("air: {code} is not among the choices"),
        },
        room: get(i, "room_c")?,
        humidity: get(i, "humidity_pct")?,
        pour_drop: get(i, "drop_k")?,
        second_vessel: optional(i, "has_second_vessel", "second_vessel_j_per_k")?,
        cup: get(i, "cup_j_per_k")?,
        cup_cooling: optional(i, "has_cup_cooling", "cup_cooling_per_min")?,
        water_solids: get(i, "water_solids_mg_per_l")?,
        added: get(i, "added_c")?,
    })
}

fn hazards(i: &dyn Inputs) -> Result<Hazards, Error> {
    Ok(Hazards {
        hottest: get(i, "hottest_c")?,
        served: get(i, "served_c")?,
        pressed: i.flag("pressed"),
        glass: i.flag("glass"),
        caffeine: optional(i, "has_caffeine", "caffeine_mg")?,
        milk: i.flag("milk"),
        ice: i.flag("ice"),
    })
}

/// Measurements from a list for each field, refused as too many before any of them is looked at.
fn measured<const N: usize, T>(
    i: &dyn Inputs,
    fields: [(&str, Quantity); N],
    of: impl Fn([f64; N]) -> Result<T, Error>,
) -> Result<Vec<T>, Error> {
    let lists = fields.map(|(field, quantity)| i.numbers(field, quantity));
    let count = lists.iter().map(Vec::len).min().unwrap_or(0);
    if count > MOST_MEASUREMENTS {
        Measurements::from_count(count as f64)?;
    }
    (0..count).map(|at| of(lists.each_ref().map(|list| list[at]))).collect()
}

fn drained(i: &dyn Inputs) -> Result<Vec<Drained>, Error> {
    let fields = [
        ("dose_g", Quantity::Dose),
        ("water_g", Quantity::BrewWater),
        ("beverage_g", Quantity::Beverage),
        ("vapour_g", Quantity::Vapour),
    ];
    measured(i, fields, |[dose, water, beverage, vapour]| {
        Ok(Drained {
            dose: Measure::new(dose)?,
            water: Measure::new(water)?,
            beverage: Measure::new(beverage)?,
            vapour: Measure::new(vapour)?,
        })
    })
}

fn settled(i: &dyn Inputs) -> Result<Vec<Settled>, Error> {
    let fields = [
        ("liquid_g", Quantity::Liquid),
        ("before_c", Quantity::Temperature),
        ("settled_c", Quantity::Temperature),
        ("vessel_c", Quantity::VesselTemperature),
    ];
    measured(i, fields, |[liquid, before, settled, vessel]| {
        Ok(Settled {
            liquid: Measure::new(liquid)?,
            before: Measure::new(before)?,
            settled: Measure::new(settled)?,
            vessel: Measure::new(vessel)?,
        })
    })
}

fn steeped(i: &dyn Inputs) -> Result<Vec<Steeped>, Error> {
    let fields = [
        ("strength_pct", Quantity::Strength),
        ("water_g", Quantity::BrewWater),
        ("dose_g", Quantity::Dose),
    ];
    measured(i, fields, |[strength, water, dose]| {
        Ok(Steeped {
            strength: Measure::new(strength)?,
            water: Measure::new(water)?,
            dose: Measure::new(dose)?,
        })
    })
}

fn timed(i: &dyn Inputs) -> Result<Vec<Timed>, Error> {
    let fields = [("contact_s", Quantity::Time), ("yield_pct", Quantity::Yield)];
    measured(i, fields, |[contact, extracted]| {
        Ok(Timed { contact: Measure::new(contact)?, extracted: Measure::new(extracted)? })
    })
}

fn thermometer(i: &dyn Inputs) -> Result<Vec<Thermometer>, Error> {
    let fields = [("time_s", Quantity::Time), ("water_c", Quantity::Temperature)];
    measured(i, fields, |[time, temperature]| {
        Ok(Thermometer { time: Measure::new(time)?, temperature: Measure::new(temperature)? })
    })
}

fn dried(i: &dyn Inputs) -> Result<Vec<Dried>, Error> {
    let fields = [("brix", Quantity::Brix), ("strength_pct", Quantity::Strength)];
    measured(i, fields, |[brix, strength]| {
        Ok(Dried { brix: Measure::new(brix)?, strength: Measure::new(strength)? })
    })
}

fn repeats(i: &dyn Inputs) -> Result<Vec<Repeat>, Error> {
    let fields = [("cup", Quantity::CupNumber), ("strength_pct", Quantity::Strength)];
    measured(i, fields, |[cup, strength]| {
        Ok(Repeat { cup: Measure::new(cup)?, strength: Measure::new(strength)? })
    })
}

/// `before` followed by each of thirty places.
macro_rules! of_each {
    ($before:literal) => {
        of_each!($before; 0 1 2 3 4 5 6 7 8 9 10 11 12 13 14 15 16 17 18 19 20 21 22 23 24 25 26 27 28 29)
    };
    ($before:literal; $($at:literal)+) => {
        [$(concat!($before, ".", $at)),+]
    };
}

fn quality(q: Quality) -> Outputs {
    let odd = q.odd;
    [
        one("quality.measurements", q.measurements),
        one("quality.degrees_of_freedom", q.freedom),
        vec![("quality.s", q.s)],
        of_each!("quality.residuals").into_iter().zip(q.residuals).collect(),
        of_each!("quality.leverages").into_iter().zip(q.leverages).collect(),
        vec![
            ("quality.has_odd", flag(odd.is_some())),
            ("quality.odd.at", odd.map_or(0.0, |odd| odd.at as f64)),
            ("quality.odd.studentised", odd.map_or(0.0, |odd| odd.studentised)),
            ("quality.odd.chance", odd.map_or(0.0, |odd| odd.chance)),
            ("quality.odd.is_suspicious", flag(odd.is_some_and(|odd| odd.is_suspicious))),
        ],
    ]
    .concat()
}

/// A learned value and its standard uncertainty; its degrees of freedom are the quality's.
fn learned<M: Uncertain>(field: &'static str, u: &'static str, learned: Estimate<M>) -> Outputs {
    [one(field, learned.value), one(u, learned.u)].concat()
}

fn fitted<M: Uncertain>(field: &'static str, u: &'static str, fit: Fitted<M>) -> Outputs {
    [learned(field, u, fit.estimate), quality(fit.quality)].concat()
}

fn retention_line(i: &dyn Inputs) -> Result<Outputs, Error> {
    let line = calibrate::retention_line(&drained(i)?)?;
    Ok([
        learned("apparent_retention_g_per_g", "u_retention_g_per_g", line.retention),
        learned("fitted_hold_up_g", "u_hold_up_g", line.hold_up),
        vec![("covariance_g2_per_g", line.covariance)],
        quality(line.quality),
    ]
    .concat())
}

fn expected_beverage(i: &dyn Inputs) -> Result<Outputs, Error> {
    let line = calibrate::retention_line(&drained(i)?)?;
    let expected =
        line.expected(get(i, "next_dose_g")?, get(i, "next_water_g")?, get(i, "next_vapour_g")?)?;
    Ok([
        learned("beverage_g", "u_beverage_g", expected.beverage),
        one("degrees_of_freedom", expected.beverage.freedom),
        one("u_mean_g", expected.u_mean),
    ]
    .concat())
}

fn one_rate(i: &dyn Inputs) -> Result<Outputs, Error> {
    let coffee = calibrate::one_rate(&timed(i)?)?;
    Ok([
        learned("equilibrium_yield_pct", "u_equilibrium_yield_pct", coffee.equilibrium),
        learned("time_constant_s", "u_ln_time_constant", coffee.time),
        vec![("covariance_pct", coffee.covariance)],
        quality(coffee.quality),
    ]
    .concat())
}

fn two_rates(i: &dyn Inputs) -> Result<Outputs, Error> {
    let coffee = calibrate::two_rates(&timed(i)?)?;
    const COVARIANCES: [[&str; 4]; 4] = [
        ["covariance.0.0", "covariance.0.1", "covariance.0.2", "covariance.0.3"],
        ["covariance.1.0", "covariance.1.1", "covariance.1.2", "covariance.1.3"],
        ["covariance.2.0", "covariance.2.1", "covariance.2.2", "covariance.2.3"],
        ["covariance.3.0", "covariance.3.1", "covariance.3.2", "covariance.3.3"],
    ];
    let covariance = coffee.covariance.as_flattened().iter().copied();
    Ok([
        learned("equilibrium_yield_pct", "u_equilibrium_yield_pct", coffee.equilibrium),
        learned("fast_share_pct", "u_fast_share_pct", coffee.fast_share),
        learned("fast_time_s", "u_ln_fast_time", coffee.fast),
        learned("slow_time_s", "u_ln_slow_time", coffee.slow),
        COVARIANCES.as_flattened().iter().copied().zip(covariance).collect(),
        quality(coffee.quality),
    ]
    .concat())
}

fn cooling(i: &dyn Inputs) -> Result<Outputs, Error> {
    let cup = calibrate::cooling(&thermometer(i)?, &surroundings(i)?)?;
    Ok([
        learned("cooling_per_min", "u_cooling_per_min", cup.rate),
        learned("start_c", "u_start_k", cup.start),
        vec![("covariance_k_per_min", cup.covariance)],
        quality(cup.quality),
    ]
    .concat())
}

/// A flag and a value that goes out as zero where there is none.
fn perhaps<M: Measure>(has: &'static str, field: &'static str, value: Option<M>) -> Outputs {
    vec![(has, flag(value.is_some())), (field, value.map_or(0.0, |value| one(field, value)[0].1))]
}

fn place(names: [&'static str; 4], place: Option<Place>) -> Outputs {
    let values = place.map_or([0.0; 4], |p| {
        [p.above_lowest, p.below_highest, p.above_centre, f64::from(p.side as u8)]
    });
    names.into_iter().zip(values).collect()
}

macro_rules! place_names {
    ($before:literal) => {
        [
            concat!($before, "above_lowest"),
            concat!($before, "below_highest"),
            concat!($before, "above_centre"),
            concat!($before, "side"),
        ]
    };
}

fn cautions(set: caution::Cautions) -> Outputs {
    let bits = set.iter().map(|caution| 1_u32 << (caution as u8)).sum::<u32>();
    vec![("cautions", f64::from(bits))]
}

fn recipe(r: Recipe) -> Outputs {
    let tolerances = r.tolerances;
    [
        one("batches", r.batches),
        one("dose_g", r.dose),
        one("water_g", r.water),
        one("water_ratio_g_per_g", r.ratio),
        one("beverage_g", r.beverage),
        perhaps("has_fill", "fill_ml", r.fill),
        one("brew_per_cup_g", r.brew_per_cup),
        one("added_per_cup_g", r.added_per_cup),
        one("brew_strength_pct", r.brew_strength),
        one("strength_pct", r.strength),
        one("yield_pct", r.expected),
        perhaps("has_caffeine", "caffeine_mg", r.caffeine),
        cautions(r.cautions),
        one("heat.boiling_c", r.heat.boiling),
        vec![("heat.boiling_uncertainty_k", r.heat.boiling_uncertainty_k)],
        one("heat.kettle_c", r.heat.kettle),
        one("heat.brewer_c", r.heat.brewer),
        perhaps("heat.has_second_vessel", "heat.second_vessel_c", r.heat.second_vessel),
        one("heat.brew_c", r.heat.at_grounds),
        one("heat.slurry_c", r.heat.slurry),
        one("heat.slurry_end_c", r.heat.slurry_end),
        vec![("heat.contact_heat", f64::from(r.heat.contact as u8))],
        one("heat.in_cup_c", r.heat.in_cup),
        perhaps("heat.has_wait", "heat.wait_s", r.heat.wait),
        vec![("has_standing", flag(r.standing.is_some()))],
        place(place_names!("standing.strength."), r.standing.map(|s| s.strength)),
        vec![("standing.has_yield", flag(r.standing.and_then(|s| s.extracted).is_some()))],
        place(place_names!("standing.yield."), r.standing.and_then(|s| s.extracted)),
        vec![("standing.is_inside", flag(r.standing.is_some_and(|s| s.is_inside())))],
        vec![("has_tolerances", flag(tolerances.is_some()))],
        perhaps(
            "tolerances.has_dose_from",
            "tolerances.dose_from_g",
            tolerances.and_then(|t| t.dose_from),
        ),
        perhaps(
            "tolerances.has_dose_to",
            "tolerances.dose_to_g",
            tolerances.and_then(|t| t.dose_to),
        ),
        perhaps(
            "tolerances.has_water_from",
            "tolerances.water_from_g",
            tolerances.and_then(|t| t.water_from),
        ),
        perhaps(
            "tolerances.has_water_to",
            "tolerances.water_to_g",
            tolerances.and_then(|t| t.water_to),
        ),
    ]
    .concat()
}

fn flag(is: bool) -> f64 {
    f64::from(u8::from(is))
}

fn standing(s: Standing) -> Outputs {
    [
        place(place_names!("strength."), Some(s.strength)),
        vec![("has_yield", flag(s.extracted.is_some()))],
        place(place_names!("yield."), s.extracted),
        vec![("is_inside", flag(s.is_inside()))],
    ]
    .concat()
}

fn plausibility(p: extraction::Plausibility) -> Outputs {
    const NAMES: [[&str; 4]; 4] = [
        [
            "doubts.0.quantity",
            "doubts.0.entered",
            "doubts.0.has_would_have_to_be",
            "doubts.0.would_have_to_be",
        ],
        [
            "doubts.1.quantity",
            "doubts.1.entered",
            "doubts.1.has_would_have_to_be",
            "doubts.1.would_have_to_be",
        ],
        [
            "doubts.2.quantity",
            "doubts.2.entered",
            "doubts.2.has_would_have_to_be",
            "doubts.2.would_have_to_be",
        ],
        [
            "doubts.3.quantity",
            "doubts.3.entered",
            "doubts.3.has_would_have_to_be",
            "doubts.3.would_have_to_be",
        ],
    ];
    let mut outputs = one("yield_pct", p.extracted);
    outputs.push(("credibility", f64::from(p.credibility as u8)));
    outputs.push(("doubt_count", p.doubts.map_or(0.0, |doubts| doubts.len() as f64)));
    for (at, names) in NAMES.into_iter().enumerate() {
        let doubt = p.doubts.map(|doubts| doubts[at]);
        let instead = doubt.and_then(|d| d.would_have_to_be);
        if let (Some(d), Some(value)) = (doubt, instead) {
            assert!((d.quantity.lowest()..=d.quantity.highest()).contains(&value), "{d:?}");
        }
        outputs.push((names[0], doubt.map_or(0.0, |d| f64::from(d.quantity as u16))));
        outputs.push((names[1], doubt.map_or(0.0, |d| d.entered)));
        outputs.push((names[2], flag(instead.is_some())));
        outputs.push((names[3], instead.unwrap_or(0.0)));
    }
    outputs
}

macro_rules! term_names {
    ($($at:literal)+) => {[$([
        concat!("terms.", $at, ".source"),
        concat!("terms.", $at, ".sensitivity"),
        concat!("terms.", $at, ".u"),
        concat!("terms.", $at, ".degrees_of_freedom"),
        concat!("terms.", $at, ".contribution"),
    ]),+]};
}

/// A value by its field, its standard uncertainty under the same name after `u_`, its degrees of freedom
/// under the name without its unit after `nu_`.
fn estimate<M: Uncertain>(i: &dyn Inputs, field: &str) -> Result<Estimate<M>, Error> {
    Ok(Estimate::with(get(i, field)?, standard(i, field)?))
}

/// A value with names of its own for its uncertainty and the degrees of freedom of that.
fn named<M: Uncertain>(i: &dyn Inputs, [value, u, nu]: [&str; 3]) -> Result<Estimate<M>, Error> {
    Ok(Estimate { value: get(i, value)?, u: get(i, u)?, freedom: get(i, nu)? })
}

fn standard<U: Uncertainty>(i: &dyn Inputs, of: &str) -> Result<Standard<U>, Error> {
    Ok(Standard {
        u: get(i, &format!("u_{of}"))?,
        freedom: get(i, &format!("nu_{}", without_unit(of)))?,
    })
}

/// A field's name without its unit.
fn without_unit(field: &str) -> &str {
    let units = ["_mg_per_l", "_g_per_g", "_pct", "_g"];
    units.iter().find_map(|unit| field.strip_suffix(unit)).unwrap_or(field)
}

/// Terms from lists of equal length, refused as too few or too many before any of them is looked at.
fn terms<T>(
    i: &dyn Inputs,
    fields: &[(&str, Quantity)],
    one: impl Fn(&[f64]) -> Result<T, Error>,
) -> Result<Vec<T>, Error> {
    let columns: Vec<_> = fields.iter().map(|(field, of)| i.numbers(field, *of)).collect();
    let rows = columns.iter().map(Vec::len).min().unwrap_or(0);
    TermCount::from_count(rows as f64)?;
    (0..rows)
        .map(|row| one(&columns.iter().map(|column| column[row]).collect::<Vec<_>>()))
        .collect()
}

fn band<M: Measure>(i: &dyn Inputs) -> Result<Band<M>, Error> {
    Band::new(get(i, "lowest")?, get(i, "highest")?)
}

fn shape(i: &dyn Inputs) -> Shape {
    let known = [Shape::Rectangular, Shape::Triangular, Shape::Arcsine].map(|s| (s as u8, s));
    choice(i, "shape", &known)
}

fn standard_out<U: Uncertainty>(standard: Standard<U>) -> Outputs {
    [one("u", standard.u), one("degrees_of_freedom", standard.freedom)].concat()
}

fn chances([below, inside, above]: [&'static str; 3], c: Chances) -> Outputs {
    [one(below, c.below), one(inside, c.inside), one(above, c.above)].concat()
}

/// A budget that has nothing to say of a correlation.
fn budget<M: Uncertain>(b: Budget<M>) -> Outputs {
    whole_budget(b, None)
}

/// A budget: its result, what the linear rule leaves out, how far it goes with the strength, its largest
/// term, and every term.
fn whole_budget<M: Uncertain>(b: Budget<M>, correlation: Option<Correlation>) -> Outputs {
    const TERMS: [[&str; 5]; uncertainty::MOST_TERMS] = term_names!(0 1 2 3 4 5 6 7 8 9);
    let dominant = b.dominant();
    let of_dominant = |value: fn(&uncertainty::Dominant<M::Uncertainty>) -> f64| {
        dominant.as_ref().map_or(0.0, value)
    };
    let mut outputs = vec![
        ("value", b.estimate.value.value()),
        ("u", one("u", b.estimate.u)[0].1),
        ("degrees_of_freedom", one("degrees_of_freedom", b.estimate.freedom)[0].1),
        ("has_second_order", flag(b.second_order.is_some())),
        ("second_order", b.second_order.map_or(0.0, |second| in_range(second.u))),
        ("shift", b.second_order.map_or(0.0, |second| second.shift)),
        ("has_correlation", flag(correlation.is_some())),
        ("correlation", correlation.map_or(0.0, Correlation::ratio)),
        ("has_dominant", flag(dominant.is_some())),
        ("dominant.source", of_dominant(|d| f64::from(d.term.source as u16))),
        ("dominant.contribution", of_dominant(|d| d.term.contribution())),
        ("dominant.share_pct", of_dominant(|d| d.share.percent())),
        ("dominant.halved", of_dominant(|d| d.halved.value())),
        ("dominant.gone", of_dominant(|d| d.gone.value())),
        ("term_count", b.terms().count() as f64),
    ];
    let terms = b.terms().copied().map(Some).chain(std::iter::repeat(None));
    for (names, term) in TERMS.into_iter().zip(terms) {
        outputs.push((names[0], term.map_or(0.0, |t| f64::from(t.source as u16))));
        outputs.push((names[1], term.map_or(0.0, |t| t.sensitivity)));
        outputs.push((names[2], term.map_or(0.0, |t| t.u)));
        outputs.push((names[3], term.map_or(0.0, |t| t.freedom.count())));
        outputs.push((names[4], term.map_or(0.0, |t| t.contribution())));
    }
    outputs
}

/// How far a brew may stray: names of the next brew, since the cup before it has its own.
fn straying(i: &dyn Inputs) -> Result<Straying, Error> {
    Ok(Straying {
        dose: standard(i, "next_dose_g")?,
        water: standard(i, "next_water_g")?,
        extracted: standard(i, "next_yield_pct")?,
        retention: standard(i, "next_retention_g_per_g")?,
        other: standard(i, "next_losses_g")?,
    })
}

fn intended(i: &dyn Inputs) -> Result<Intended, Error> {
    Ok(Intended {
        dose: estimate(i, "dose_g")?,
        water: estimate(i, "water_g")?,
        extracted: estimate(i, "yield_pct")?,
        losses: losses(i)?,
        retention: standard(i, "apparent_retention_g_per_g")?,
        other: standard(i, "losses_g")?,
        moisture: get(i, "moisture_pct")?,
        water_solids: get(i, "water_solids_mg_per_l")?,
        held_strength: get(i, "held_strength_pct")?,
        portion: estimate(i, "portion_g")?,
        added: estimate(i, "added_g")?,
    })
}

fn outlook(outlook: Option<Outlook>) -> Outputs {
    const NAMES: [&str; 12] = [
        "beverage_g",
        "u_beverage_g",
        "nu_beverage",
        "strength_pct",
        "u_strength_pct",
        "nu_strength",
        "counted_yield_pct",
        "u_counted_yield_pct",
        "nu_counted_yield",
        "correlation",
        "strength_inside_pct",
        "inside_pct",
    ];
    fn three<M: Uncertain>(of: Estimate<M>) -> [f64; 3] {
        [in_range(of.value), in_range(of.u), in_range(of.freedom)]
    }
    let values = outlook.map_or(vec![0.0; NAMES.len()], |o| {
        let rest = [in_range(o.correlation), in_range(o.strength_inside), in_range(o.inside)];
        [three(o.beverage), three(o.strength), three(o.counted), rest].concat()
    });
    NAMES.into_iter().zip(values).collect()
}

/// Outputs inside of something: its name, a dot, and theirs.
fn inside(of: &str, outputs: Outputs) -> Outputs {
    static NAMES: Mutex<BTreeMap<String, &'static str>> = Mutex::new(BTreeMap::new());
    let mut names = NAMES.lock().expect("no test panics while it names an output");
    let mut named = |name: &str| -> &'static str {
        let whole = format!("{of}.{name}");
        names.entry(whole.clone()).or_insert_with(|| Box::leak(whole.into_boxed_str()))
    };
    outputs.into_iter().map(|(name, value)| (named(name), value)).collect()
}

fn foreseen(f: Foreseen) -> Outputs {
    [
        inside("recipe", recipe(f.recipe)),
        vec![("has_outlook", flag(f.outlook.is_some()))],
        inside("outlook", outlook(f.outlook)),
    ]
    .concat()
}

fn advice(i: &dyn Inputs) -> Result<Outputs, Error> {
    let cup = Cup {
        brew: brew(i)?,
        weighing: standard(i, "weighing_g")?,
        strength: estimate(i, "strength_pct")?,
        extracted: estimate(i, "yield_pct")?,
        contact: get(i, "contact_s")?,
    };
    let means = Means {
        rates: if i.flag("has_rates") { Some(rates(i)?) } else { None },
        kept: if i.flag("has_kept") {
            Some(Kept {
                retention: get(i, "apparent_retention_g_per_g")?,
                hold_up: get(i, "hold_up_g")?,
            })
        } else {
            None
        },
        chamber: if i.flag("has_chamber") { Some(chamber(i)?) } else { None },
        water: get(i, "water_c")?,
        milk: i.flag("milk"),
    };
    let (straying, wanted, window) = (straying(i)?, get(i, "wanted_pct")?, window(i)?);
    let advice = advise::on(&cup, &straying, &means, wanted, &window, get(i, "confidence_pct")?)?;
    let listed = advice.suggestions().copied().map(Some).chain(std::iter::repeat(None));
    let mut outputs = vec![
        ("grind", f64::from(advice.grind as u8)),
        ("is_next_told", flag(advice.untold.is_none())),
        ("suggestion_count", advice.suggestions().count() as f64),
    ];
    for (at, of) in listed.take(advise::MOST_SUGGESTIONS).enumerate() {
        outputs.extend(inside(&format!("suggestions.{at}"), suggestion(of)));
    }
    Ok(outputs)
}

fn suggestion(of: Option<Suggestion>) -> Outputs {
    let mut outputs = vec![
        ("change", of.map_or(0.0, |s| f64::from(s.change as u8))),
        ("amount", of.map_or(0.0, |s| s.amount)),
        ("before", of.map_or(0.0, |s| s.before)),
        ("with_dose_g", of.map_or(0.0, |s| s.with_dose)),
    ];
    outputs.extend(inside("outlook", outlook(of.map(|s| s.outlook))));
    outputs
}

/// The budget of a yield, and how far it goes with the strength.
fn yield_budget(b: Budget<Yield>) -> Outputs {
    let correlation = b.correlation_with_strength();
    whole_budget(b, Some(correlation))
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
        extraction::beverage(&brew(i)?, get(i, "strength_pct")?, get(i, "yield_pct")?)?);
    "extraction.retained_liquid" => |i|
        one("retained_g", extraction::retained_liquid(&brew(i)?, get(i, "yield_pct")?)?);
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
    "extraction.plausibility" => |i|
        plausibility(extraction::plausibility(&brew(i)?, get(i, "strength_pct")?)?);

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
            one("beverage_g", drink.drink),
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
            one("ice_g", iced.left),
            one("strength_pct", iced.strength),
        ].concat()
    };
    "dilution.ice_to_reach" => |i| one("ice_g", dilution::ice_to_reach(
        get(i, "beverage_g")?, get(i, "water_c")?, get(i, "wanted_c")?, get(i, "ice_c")?)?);

    "heat.grounds" => |i| {
        let grounds = Body::grounds(get(i, "dose_g")?, get(i, "grounds_c")?)?;
        [one("heat_capacity_j_per_k", grounds.heat_capacity), one("body_c", grounds.temperature)]
            .concat()
    };
    "heat.heat_capacity" => |i| one("heat_capacity_j_per_k", heat::heat_capacity(
        get(i, "vessel_g")?, get(i, "specific_heat_j_per_g_k")?, get(i, "share_pct")?)?);
    "heat.settle" => |i| one("water_c",
        heat::settle(get(i, "water_g")?, get(i, "water_c")?, &bodies(i)?)?);
    "heat.before_settling" => |i| one("water_c",
        heat::before_settling(get(i, "water_g")?, get(i, "settled_c")?, &bodies(i)?)?);
    "heat.preheated" => |i| {
        let vessel = Body {
            heat_capacity: get(i, "heat_capacity_j_per_k")?,
            temperature: get(i, "body_c")?,
        };
        let vessel = heat::preheated(vessel, get(i, "water_g")?, get(i, "water_c")?)?;
        [one("heat_capacity_j_per_k", vessel.heat_capacity), one("body_c", vessel.temperature)].concat()
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

    "reading.combine" => |i| {
        let read = reading::combine(&readings(i)?, get(i, "repeatability_pct")?)?;
        let critical = read.critical_range_pct;
        [
            one("strength_pct", read.value),
            vec![
                ("range_pct", read.range_pct),
                ("critical_range_pct", critical.unwrap_or(0.0)),
                ("agreement", f64::from(read.agreement as u8)),
                ("has_critical_range", flag(critical.is_some())),
            ],
        ].concat()
    };
    "reading.repeatability" => |i| one("repeatability_pct", reading::repeatability(&readings(i)?)?);
    "reading.critical_range" => |i| vec![("strength_range_pct",
        reading::critical_range(get(i, "readings")?, get(i, "repeatability_pct")?)?)];
    "reading.total_strength" => |i| one("strength_pct", reading::total_strength(
        get(i, "strength_pct")?, zero(i), get(i, "water_solids_mg_per_l")?)?);
    "reading.coffee_strength" => |i| one("strength_pct", reading::coffee_strength(
        get(i, "strength_pct")?, zero(i), get(i, "water_solids_mg_per_l")?)?);
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

    "calibrate.retention_line" => |i| retention_line(i)?;
    "calibrate.expected_beverage" => |i| expected_beverage(i)?;
    "calibrate.retention" => |i| fitted(
        "apparent_retention_g_per_g", "u_retention_g_per_g", calibrate::retention(&drained(i)?)?);
    "calibrate.heat_capacity" => |i| fitted("heat_capacity_j_per_k", "u_heat_capacity_j_per_k",
        calibrate::heat_capacity(&settled(i)?)?);
    "calibrate.equilibrium_yield" => |i| fitted(
        "yield_pct", "u_yield_pct", calibrate::equilibrium_yield(&steeped(i)?)?);
    "calibrate.one_rate" => |i| one_rate(i)?;
    "calibrate.two_rates" => |i| two_rates(i)?;
    "calibrate.cooling" => |i| cooling(i)?;
    "calibrate.refractive_factor" => |i| fitted(
        "refractive_factor_pct_per_brix", "u_factor_pct",
        calibrate::refractive_factor(&dried(i)?)?);
    "calibrate.repeatability" => |i| fitted(
        "repeatability_pct", "u_repeatability_pct", calibrate::repeatability(&repeats(i)?)?);

    "verdict.stand" => |i|
        standing(verdict::stand(&window(i)?, get(i, "strength_pct")?, get(i, "yield_pct")?));

    "uncertainty.coverage_factor" => |i| one("coverage_factor",
        uncertainty::coverage_factor(get(i, "confidence_pct")?, get(i, "degrees_of_freedom")?));
    "uncertainty.expanded" => |i| {
        let sure = estimate::<Measurand>(i, "value")?.expanded(get(i, "confidence_pct")?)?;
        [one("coverage_factor", sure.factor), one("half_width", sure.half_width)].concat()
    };
    "uncertainty.of_repeats" => |i| {
        let repeats = i.numbers("value", Quantity::Measurand);
        RepeatCount::from_count(repeats.len() as f64)?;
        let repeats = repeats.into_iter().map(Measure::new).collect::<Result<Vec<_>, _>>()?;
        let mean: Estimate<Measurand> = uncertainty::of_repeats(&repeats)?;
        [one("value", mean.value), standard_out(mean.standard())].concat()
    };
    "uncertainty.pooled" => |i| {
        let fields =
            [("s", Quantity::StandardUncertainty), ("degrees_of_freedom", Quantity::DegreesOfFreedom)];
        let series = terms(i, &fields, |of| {
            Ok(Series { s: StandardUncertainty::new(of[0])?, freedom: Measure::new(of[1])? })
        })?;
        standard_out(uncertainty::pooled(&series, get(i, "readings")?)?)
    };
    "uncertainty.of_readings" => |i| {
        let readings = readings(i)?;
        let own = named(i, ["repeatability_pct", "u_repeatability_pct", "nu_repeatability"])?;
        let read = uncertainty::of_readings(&readings, &Series::from(own))?;
        [one("strength_pct", read.value), one("u_strength_pct", read.u), one("nu_strength", read.freedom)].concat()
    };
    "uncertainty.together" => |i| {
        let fields =
            [("u", Quantity::StandardUncertainty), ("degrees_of_freedom", Quantity::DegreesOfFreedom)];
        let errors = terms(i, &fields, |of| {
            Ok(Standard { u: StandardUncertainty::new(of[0])?, freedom: Measure::new(of[1])? })
        })?;
        standard_out(uncertainty::together(&errors)?)
    };
    "uncertainty.of_limit" => |i| standard_out(uncertainty::of_limit(
        get::<StandardUncertainty>(i, "limit")?, shape(i)));
    "uncertainty.of_display" => |i|
        standard_out(uncertainty::of_display(get::<StandardUncertainty>(i, "step")?));
    "uncertainty.of_expanded" => |i| standard_out(uncertainty::of_expanded(
        get::<StandardUncertainty>(i, "expanded")?, get(i, "coverage_factor")?)?);
    "uncertainty.freedom_of_doubt" => |i|
        one("degrees_of_freedom", uncertainty::freedom_of_doubt(get(i, "doubt_pct")?));
    "uncertainty.combine" => |i| {
        let fields = [
            ("sensitivity", Quantity::Sensitivity),
            ("u", Quantity::StandardUncertainty),
            ("degrees_of_freedom", Quantity::DegreesOfFreedom),
        ];
        let value = get(i, "value")?;
        let influences = terms(i, &fields, |of| Ok(Influence {
            sensitivity: Measure::new(of[0])?,
            u: Measure::new(of[1])?,
            freedom: Measure::new(of[2])?,
        }))?;
        budget(uncertainty::combine(value, &influences)?)
    };
    "uncertainty.strength" => |i| budget(uncertainty::strength(&ReadStrength {
        reading: estimate(i, "strength_pct")?,
        instrument: standard(i, "instrument_pct")?,
        factor: standard(i, "factor_pct")?,
        zero: zero(i),
        water_solids: estimate(i, "water_solids_mg_per_l")?,
    })?);
    "uncertainty.strength_of_brix" => |i| budget(uncertainty::strength_of_brix(
        &named(i, ["brix", "u_brix", "nu_brix"])?,
        &named(i, ["refractive_factor_pct_per_brix", "u_factor_pct", "nu_factor"])?)?);
    "uncertainty.flow_through_yield" => |i| yield_budget(uncertainty::flow_through_yield(
        &estimate(i, "strength_pct")?, &estimate(i, "beverage_g")?, &estimate(i, "dose_g")?,
        &standard(i, "factor_pct")?)?);
    "uncertainty.steeped_yield" => |i| yield_budget(uncertainty::steeped_yield(
        &estimate(i, "strength_pct")?, &estimate(i, "water_g")?, &estimate(i, "dose_g")?,
        &standard(i, "factor_pct")?)?);
    "uncertainty.extraction_yield" => |i| yield_budget(uncertainty::extraction_yield(&Measured {
        strength: estimate(i, "strength_pct")?,
        dose: estimate(i, "dose_g")?,
        water: estimate(i, "water_g")?,
        beverage: estimate(i, "beverage_g")?,
        moisture: estimate(i, "moisture_pct")?,
        water_solids: estimate(i, "water_solids_mg_per_l")?,
        vapour: estimate(i, "vapour_g")?,
        held_strength: estimate(i, "held_strength_pct")?,
        span: standard(i, "span_pct")?,
        factor: standard(i, "factor_pct")?,
    })?);
    "uncertainty.steeped_strength" => |i| budget(uncertainty::steeped_strength(
        &estimate(i, "yield_pct")?, &estimate(i, "dose_g")?, &estimate(i, "water_g")?)?);
    "uncertainty.beverage" => |i| budget(uncertainty::beverage(
        &losses(i)?, &standard(i, "apparent_retention_g_per_g")?, &standard(i, "losses_g")?,
        &estimate(i, "dose_g")?, &estimate(i, "water_g")?)?);
    "uncertainty.water_to_reach" => |i| budget(uncertainty::water_to_reach(
        &estimate(i, "beverage_g")?, &estimate(i, "strength_pct")?, get(i, "wanted_pct")?,
        &estimate(i, "water_solids_mg_per_l")?)?);
    "uncertainty.strength_after_water" => |i| budget(uncertainty::strength_after_water(
        &estimate(i, "beverage_g")?, &estimate(i, "strength_pct")?, &estimate(i, "added_g")?,
        &estimate(i, "water_solids_mg_per_l")?)?);
    "uncertainty.mixed_temperature" => |i| budget(uncertainty::mixed_temperature(
        &named(i, ["hot_g", "u_hot_g", "nu_hot_mass"])?,
        &named(i, ["hot_c", "u_hot_k", "nu_hot_temperature"])?,
        &named(i, ["cold_g", "u_cold_g", "nu_cold_mass"])?,
        &named(i, ["cold_c", "u_cold_k", "nu_cold_temperature"])?)?);
    "uncertainty.settle" => |i| budget(uncertainty::settle(
        &estimate(i, "liquid_g")?,
        &named(i, ["before_c", "u_before_k", "nu_before"])?,
        &named(i, ["heat_capacity_j_per_k", "u_heat_capacity_j_per_k", "nu_heat_capacity"])?,
        &named(i, ["body_c", "u_body_k", "nu_body"])?)?);
    "uncertainty.time_to_cool" => |i| budget(uncertainty::time_to_cool(
        &named(i, ["water_c", "u_water_k", "nu_water"])?,
        get(i, "to_c")?,
        &named(i, ["cooling_per_min", "u_cooling_per_min", "nu_cooling"])?,
        &surroundings(i)?)?);
    "uncertainty.temperature_after" => |i| budget(uncertainty::temperature_after(
        &named(i, ["water_c", "u_water_k", "nu_water"])?,
        &named(i, ["time_s", "u_time_s", "nu_time"])?,
        &named(i, ["cooling_per_min", "u_cooling_per_min", "nu_cooling"])?,
        &surroundings(i)?)?);
    "uncertainty.yield_at_time" => |i| budget(uncertainty::yield_at_time(
        &rates(i)?, &plateau(i)?, &named(i, ["time_s", "u_time_s", "nu_time"])?)?);
    "uncertainty.time_for_yield" => |i| budget(uncertainty::time_for_yield(
        &rates(i)?, &plateau(i)?, get(i, "wanted_yield_pct")?)?);

    "decision.chances" => |i| chances(["below_pct", "inside_pct", "above_pct"],
        decision::chances(&estimate::<Measurand>(i, "value")?, &band(i)?));
    "decision.decide" => |i| vec![("decision", f64::from(decision::decide(
        &estimate::<Measurand>(i, "value")?, &band(i)?, get(i, "confidence_pct")?) as u8))];
    "decision.largest_uncertainty" => |i| one("u", decision::largest_uncertainty::<Measurand>(
        &band(i)?, get(i, "confidence_pct")?, get(i, "degrees_of_freedom")?)?);
    "decision.acceptance" => |i| {
        let safe = decision::acceptance::<Measurand>(
            &standard(i, "value")?, &band(i)?, get(i, "confidence_pct")?);
        vec![
            ("has_acceptance", flag(safe.is_some())),
            ("acceptance.lowest", safe.map_or(0.0, |safe| safe.lowest().number())),
            ("acceptance.highest", safe.map_or(0.0, |safe| safe.highest().number())),
        ]
    };
    "decision.readings_needed" => |i| {
        let needed = decision::readings_needed::<Measurand>(
            get(i, "value")?, &standard(i, "scatter")?, &standard(i, "rest")?, &band(i)?,
            get(i, "confidence_pct")?)?;
        match needed {
            Needed::Readings(n) => vec![("needed", 1.0), ("readings", n.count())],
            Needed::MoreThanTen => vec![("needed", 2.0), ("readings", 0.0)],
            Needed::NoneIsEnough => vec![("needed", 3.0), ("readings", 0.0)],
            other => panic!("a new variant: {other:?}"),
        }
    };
    "decision.joint" => |i| {
        let strengths = Band::new(get(i, "strength_lowest_pct")?, get(i, "strength_highest_pct")?)?;
        let yields = Band::new(get(i, "yield_lowest_pct")?, get(i, "yield_highest_pct")?)?;
        let joint = decision::joint(
            &estimate(i, "strength_pct")?, &estimate(i, "yield_pct")?, get(i, "correlation")?,
            &strengths, &yields);
        [
            chances(
                ["strength.below_pct", "strength.inside_pct", "strength.above_pct"], joint.strength),
            chances(["yield.below_pct", "yield.inside_pct", "yield.above_pct"], joint.extracted),
            one("both_pct", joint.both),
        ].concat()
    };
    "decision.decide_joint" => |i| vec![("decision", f64::from(decision::decide_joint(
        get(i, "both_pct")?, get(i, "confidence_pct")?) as u8))];
    "decision.compare" => |i| {
        let compared = decision::compare(
            &estimate::<Measurand>(i, "first")?, &estimate(i, "second")?, &standard(i, "factor_pct")?,
            get(i, "confidence_pct")?)?;
        [
            vec![("difference", compared.difference)],
            standard_out(compared.standard),
            vec![("least", compared.least)],
            one("confidence_pct", compared.confidence),
            vec![("is_real", flag(compared.is_real))],
        ].concat()
    };

    "caution.of" => |i| cautions(caution::of(&hazards(i)?));
    "caution.time_to_burn" => |i| match caution::time_to_burn(get(i, "water_c")?) {
        TimeToBurn::MoreThanFiveMinutes => vec![("burn", 1.0), ("time_s", 0.0)],
        TimeToBurn::Within(time) => [vec![("burn", 2.0)], one("time_s", time)].concat(),
        TimeToBurn::UnderOneSecond => vec![("burn", 3.0), ("time_s", 0.0)],
        other => panic!("a new variant: {other:?}"),
    };
    "caution.caffeine" => |i| one("caffeine_mg", caution::caffeine(
        get(i, "dose_g")?, get(i, "caffeine_mg_per_g")?, get(i, "share_pct")?)?);

    "plan.recipe" => |i| recipe(plan::recipe(&wish(i)?, &brewer(i)?, &coffee(i)?, &kitchen(i)?)?);
    "plan.foreseen" => |i| foreseen(plan::foreseen(
        &wish(i)?, &brewer(i)?, &coffee(i)?, &kitchen(i)?, &straying(i)?)?);
    "plan.surest" => |i| foreseen(plan::surest(
        &wish(i)?, &brewer(i)?, &coffee(i)?, &kitchen(i)?, &straying(i)?)?);

    "forecast.strength" => |i| budget(forecast::strength(&intended(i)?)?);
    "forecast.counted_yield" => |i| budget(forecast::counted_yield(&intended(i)?)?);
    "forecast.outlook" => |i| outlook(Some(forecast::outlook(&intended(i)?, &window(i)?)?));

    "advise.on" => |i| advice(i)?;
}
