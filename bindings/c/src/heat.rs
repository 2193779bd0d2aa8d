//! Where the heat goes: kettle, brewer, grounds, cup; and cooling with time.

use cupwright::Error;
use cupwright::heat::{self, Body, Cover, Surroundings};
use cupwright::quantity::{BodyCount, Measure, Quantity};

use crate::call::{Call, Refused, answer, checked, each, field, given};
use crate::status::cupwright_error;

/// A solid that takes part in a heat balance: a vessel, the grounds, the paper.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_body {
    /// Heat capacity of the part that warms, {HeatCapacity}.
    pub heat_capacity_j_per_k: f64,
    /// Its temperature before, {VesselTemperature}.
    pub body_c: f64,
}

/// Whether vapour can leave the surface.
#[repr(i32)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum cupwright_cover {
    /// Open to the air: about half of the heat leaves as vapour.
    Open = 1,
    /// Lidded, or a closed brewer.
    Lidded = 2,
}

/// The room in which something cools.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct cupwright_surroundings {
    /// Air temperature, {RoomTemperature}.
    pub room_c: f64,
    /// Relative humidity, {Humidity}; 50 where unknown, it hardly matters.
    pub humidity_pct: f64,
    /// Whether vapour can leave the surface: one of enum cupwright_cover.
    pub cover: i32,
}

/// The core's cover, or a refusal.
pub(crate) fn cover(call: Call, code: i32) -> Result<Cover, Refused> {
    const OPEN: i32 = cupwright_cover::Open as i32;
    const LIDDED: i32 = cupwright_cover::Lidded as i32;
    match code {
        OPEN => Ok(Cover::Open),
        LIDDED => Ok(Cover::Lidded),
        _ => Err(call.unknown_choice(code, field!(cover))),
    }
}

/// The core's surroundings.
pub(crate) fn surroundings_of(
    call: Call,
    surroundings: &cupwright_surroundings,
) -> Result<Surroundings, Refused> {
    Ok(Surroundings {
        room: checked!(call, surroundings.room_c)?,
        humidity: checked!(call, surroundings.humidity_pct)?,
        cover: cover(call, surroundings.cover)?,
    })
}

/// The core's body.
fn body_of(call: Call, body: &cupwright_body) -> Result<Body, Refused> {
    Ok(Body {
        heat_capacity: checked!(call, body.heat_capacity_j_per_k)?,
        temperature: checked!(call, body.body_c)?,
    })
}

fn body(body: Body) -> cupwright_body {
    cupwright_body {
        heat_capacity_j_per_k: body.heat_capacity.value(),
        body_c: body.temperature.value(),
    }
}

/// The most bodies that the core is lent at once.
const MOST: usize = Quantity::BodyCount.highest() as usize;

/// Lends the core's bodies to a question.
fn with_bodies<T>(
    call: Call,
    given: &[cupwright_body],
    ask: impl FnOnce(&[Body]) -> Result<T, Error>,
) -> Result<T, Refused> {
    let nothing = body_of(call, &cupwright_body { heat_capacity_j_per_k: 0.0, body_c: 0.0 })?;
    let mut places = [nothing; MOST];
    call.core(ask(each(given, &mut places, |body| body_of(call, &body))?))
}

/// Grounds at a temperature, with CUPWRIGHT_GROUNDS_J_PER_G_K, an estimate.
///
/// @param dose_g Dose as weighed, {Dose}.
/// @param grounds_c Temperature of the grounds, {VesselTemperature}.
/// @param[out] grounds The grounds.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_heat_grounds(
    dose_g: f64,
    grounds_c: f64,
    grounds: *mut cupwright_body,
    error: *mut cupwright_error,
) -> i32 {
    answer!(grounds, error, |call| Ok(body(
        call.core(Body::grounds(checked!(call, dose_g)?, checked!(call, grounds_c)?))?
    )))
}

/// Heat capacity of a vessel, f m c, of which a share f follows the liquid. The share tends to 100
/// % for a steep of a minute or more; no published value was found. Better:
/// cupwright_heat_vessel_heat_capacity() from one thermometer reading.
///
/// @param vessel_g Mass, {VesselMass}.
/// @param specific_heat_j_per_g_k Specific heat, {SpecificHeat}.
/// @param share_pct Share that follows, {Share}.
/// @param[out] heat_capacity_j_per_k {HeatCapacity}.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_heat_capacity(
    vessel_g: f64,
    specific_heat_j_per_g_k: f64,
    share_pct: f64,
    heat_capacity_j_per_k: *mut f64,
    error: *mut cupwright_error,
) -> i32 {
    answer!(heat_capacity_j_per_k, error, |call| Ok({
        let (mass, specific_heat) =
            (checked!(call, vessel_g)?, checked!(call, specific_heat_j_per_g_k)?);
        call.core(heat::heat_capacity(mass, specific_heat, checked!(call, share_pct)?))?.value()
    }))
}

/// Temperature at which a liquid and the bodies it meets settle. Nothing is lost to the air
/// meanwhile.
///
/// ```text
/// m h(t) + t Σ C = m h(t0) + Σ C tᵢ
/// ```
///
/// @param water_g The liquid, {Liquid}.
/// @param water_c Its temperature, {Temperature}.
/// @param bodies The bodies. NULL where there are none.
/// @param count How many, {BodyCount}.
/// @param[out] settled_c {Temperature}.
///
/// Fails with CUPWRIGHT_STATUS_OUT_OF_RANGE for more than eight bodies;
/// CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE where the liquid would freeze.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_heat_settle(
    water_g: f64,
    water_c: f64,
    bodies: *const cupwright_body,
    count: usize,
    settled_c: *mut f64,
    error: *mut cupwright_error,
) -> i32 {
    answer!(settled_c, error, |call| Ok({
        let (liquid, temperature) = (checked!(call, water_g)?, checked!(call, water_c)?);
        with_bodies(call, given!(call, bodies, count: BodyCount)?, |bodies| {
            heat::settle(liquid, temperature, bodies)
        })?
        .value()
    }))
}

/// Temperature that a liquid must have so that it settles at a wanted one: the inverse of
/// cupwright_heat_settle(). Whether it can be reached here is for cupwright_heat_reachable() to
/// say.
///
/// @param water_g The liquid, {Liquid}.
/// @param settled_c Temperature wanted, {Temperature}.
/// @param bodies The bodies. NULL where there are none.
/// @param count How many, {BodyCount}.
/// @param[out] water_c {Temperature}.
///
/// Fails with CUPWRIGHT_STATUS_OUT_OF_RANGE for more than eight bodies;
/// CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE where that is no temperature of liquid water.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_heat_before_settling(
    water_g: f64,
    settled_c: f64,
    bodies: *const cupwright_body,
    count: usize,
    water_c: *mut f64,
    error: *mut cupwright_error,
) -> i32 {
    answer!(water_c, error, |call| Ok({
        let (liquid, wanted) = (checked!(call, water_g)?, checked!(call, settled_c)?);
        with_bodies(call, given!(call, bodies, count: BodyCount)?, |bodies| {
            heat::before_settling(liquid, wanted, bodies)
        })?
        .value()
    }))
}

/// A vessel after a rinse that is poured away: it keeps the temperature at which both settled.
///
/// @param vessel The vessel before.
/// @param water_g The rinse, {Liquid}.
/// @param water_c Its temperature, {Temperature}.
/// @param[out] preheated The vessel after.
///
/// Fails with CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE where the rinse would freeze.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_heat_preheated(
    vessel: *const cupwright_body,
    water_g: f64,
    water_c: f64,
    preheated: *mut cupwright_body,
    error: *mut cupwright_error,
) -> i32 {
    answer!(preheated, error, |call| Ok({
        let vessel = body_of(call, given!(call, vessel)?)?;
        body(call.core(heat::preheated(
            vessel,
            checked!(call, water_g)?,
            checked!(call, water_c)?,
        ))?)
    }))
}

/// Heat capacity of a vessel from one thermometer reading: water of known mass and temperature goes
/// in, beside bodies already known, and settles.
///
/// ```text
/// C = {m [h(t0) − h(t)] − Σ Cᵢ (t − tᵢ)} / (t − t_vessel)
/// ```
///
/// @param water_g The liquid, {Liquid}.
/// @param water_c Its temperature before, {Temperature}.
/// @param settled_c The temperature read, {Temperature}.
/// @param vessel_c Temperature of the vessel before, {VesselTemperature}.
/// @param others Bodies already known. NULL where there are none.
/// @param count How many, {BodyCount}.
/// @param[out] heat_capacity_j_per_k {HeatCapacity}.
///
/// Fails with CUPWRIGHT_STATUS_OUT_OF_RANGE for more than eight bodies;
/// CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE where the temperatures do not stand in order.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_heat_vessel_heat_capacity(
    water_g: f64,
    water_c: f64,
    settled_c: f64,
    vessel_c: f64,
    others: *const cupwright_body,
    count: usize,
    heat_capacity_j_per_k: *mut f64,
    error: *mut cupwright_error,
) -> i32 {
    answer!(heat_capacity_j_per_k, error, |call| Ok({
        let (liquid, before) = (checked!(call, water_g)?, checked!(call, water_c)?);
        let (settled, vessel) = (checked!(call, settled_c)?, checked!(call, vessel_c)?);
        let ask =
            |others: &[_]| heat::vessel_heat_capacity(liquid, before, settled, vessel, others);
        with_bodies(call, given!(call, others, count: BodyCount)?, ask)?.value()
    }))
}

/// Temperature after a vapour loss that water and bodies, all at one temperature, pay for. A gram
/// of vapour costs 250 g of water 2.2 K.
///
/// ```text
/// (m − V) h(t) + C t = (m − V) h(t0) + C t0 − V L(t0)
/// ```
///
/// @param water_g The liquid, {Liquid}.
/// @param water_c Temperature before, {Temperature}.
/// @param vapour_g Vapour lost, {Vapour}.
/// @param capacity_j_per_k Heat capacity of all bodies, {HeatCapacity}.
/// @param[out] after_c {Temperature}.
///
/// Fails with CUPWRIGHT_STATUS_IMPOSSIBLE for as much vapour as liquid;
/// CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE where the rest would freeze.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_heat_after_vapour(
    water_g: f64,
    water_c: f64,
    vapour_g: f64,
    capacity_j_per_k: f64,
    after_c: *mut f64,
    error: *mut cupwright_error,
) -> i32 {
    answer!(after_c, error, |call| Ok({
        let (liquid, temperature) = (checked!(call, water_g)?, checked!(call, water_c)?);
        let (vapour, bodies) = (checked!(call, vapour_g)?, checked!(call, capacity_j_per_k)?);
        call.core(heat::after_vapour(liquid, temperature, vapour, bodies))?.value()
    }))
}

/// Temperature after a pour that costs a drop. Estimates: CUPWRIGHT_THIN_STREAM_DROP_K,
/// CUPWRIGHT_DUMP_DROP_K.
///
/// @param water_c Temperature before, {Temperature}.
/// @param drop_k The drop, {TemperatureDrop}.
/// @param[out] after_c {Temperature}.
///
/// Fails with CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE below 0 °C.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_heat_after_pour(
    water_c: f64,
    drop_k: f64,
    after_c: *mut f64,
    error: *mut cupwright_error,
) -> i32 {
    answer!(after_c, error, |call| Ok(call
        .core(heat::after_pour(checked!(call, water_c)?, checked!(call, drop_k)?))?
        .value()))
}

/// Temperature before a pour that costs a drop: the inverse of cupwright_heat_after_pour().
///
/// @param water_c Temperature after, {Temperature}.
/// @param drop_k The drop, {TemperatureDrop}.
/// @param[out] before_c {Temperature}.
///
/// Fails with CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE above the range of the temperature.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_heat_before_pour(
    water_c: f64,
    drop_k: f64,
    before_c: *mut f64,
    error: *mut cupwright_error,
) -> i32 {
    answer!(before_c, error, |call| Ok(call
        .core(heat::before_pour(checked!(call, water_c)?, checked!(call, drop_k)?))?
        .value()))
}

/// Passes a temperature on if boiling water can be that hot.
///
/// @param water_c Temperature, {Temperature}.
/// @param boiling_c Boiling point here, {Temperature}.
/// @param[out] reachable_c {Temperature}.
///
/// Fails with CUPWRIGHT_STATUS_INFEASIBLE above the boiling point; a hair below it is the nearest.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_heat_reachable(
    water_c: f64,
    boiling_c: f64,
    reachable_c: *mut f64,
    error: *mut cupwright_error,
) -> i32 {
    answer!(reachable_c, error, |call| Ok(call
        .wish(
            &[(Quantity::Temperature, field!(water_c))],
            heat::reachable(checked!(call, water_c)?, checked!(call, boiling_c)?)
        )?
        .value()))
}

/// Time to cool from one temperature to another.
///
/// ```text
/// t = (1/k) ∫ dT/F(T),  F(T) = (T − Ta) + β [p(T) − RH p(Ta)]
/// ```
///
/// β is CUPWRIGHT_OPEN_CUP_K_PER_KPA open and 0 lidded, which is Newton's law. With a rate from two
/// readings ten minutes apart, measured cups were met within 0.8 K half an hour on.
///
/// @param water_c Temperature now, {Temperature}.
/// @param to_c Temperature wanted, {Temperature}.
/// @param cooling_per_min Cooling rate, {CoolingRate}.
/// @param surroundings The room.
/// @param[out] time_s {Time}.
///
/// Fails with CUPWRIGHT_STATUS_IMPOSSIBLE for a start not warmer than where cooling ends;
/// CUPWRIGHT_STATUS_INFEASIBLE for a goal that cooling does not reach;
/// CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE beyond the range of the time.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_heat_time_to_cool(
    water_c: f64,
    to_c: f64,
    cooling_per_min: f64,
    surroundings: *const cupwright_surroundings,
    time_s: *mut f64,
    error: *mut cupwright_error,
) -> i32 {
    answer!(time_s, error, |call| Ok({
        let (from, to) = (checked!(call, water_c)?, checked!(call, to_c)?);
        let (rate, room) = (checked!(call, cooling_per_min)?, given!(call, surroundings)?);
        call.wish(
            &[(Quantity::Temperature, field!(to_c))],
            heat::time_to_cool(from, to, rate, &surroundings_of(call, room)?),
        )?
        .value()
    }))
}

/// Cooling rate from two thermometer readings a known time apart, by the law of
/// cupwright_heat_time_to_cool(). Ten minutes apart is good.
///
/// @param water_c First reading, {Temperature}.
/// @param to_c Second reading, {Temperature}.
/// @param time_s Time between them, {Time}.
/// @param surroundings The room.
/// @param[out] cooling_per_min {CoolingRate}.
///
/// Fails with CUPWRIGHT_STATUS_IMPOSSIBLE for readings that are not in order or not above where
/// cooling ends; CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE outside the range of the rate, as for equal
/// readings or no time between them.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_heat_cooling_rate(
    water_c: f64,
    to_c: f64,
    time_s: f64,
    surroundings: *const cupwright_surroundings,
    cooling_per_min: *mut f64,
    error: *mut cupwright_error,
) -> i32 {
    answer!(cooling_per_min, error, |call| Ok({
        let (from, to) = (checked!(call, water_c)?, checked!(call, to_c)?);
        let (elapsed, room) = (checked!(call, time_s)?, given!(call, surroundings)?);
        call.core(heat::cooling_rate(from, to, elapsed, &surroundings_of(call, room)?))?.value()
    }))
}

/// Temperature after a time: the inverse of cupwright_heat_time_to_cool().
///
/// @param water_c Temperature now, {Temperature}.
/// @param time_s Time, {Time}.
/// @param cooling_per_min Cooling rate, {CoolingRate}.
/// @param surroundings The room.
/// @param[out] after_c {Temperature}.
///
/// Fails with CUPWRIGHT_STATUS_IMPOSSIBLE for a start not warmer than where cooling ends;
/// CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE where it would freeze.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_heat_temperature_after(
    water_c: f64,
    time_s: f64,
    cooling_per_min: f64,
    surroundings: *const cupwright_surroundings,
    after_c: *mut f64,
    error: *mut cupwright_error,
) -> i32 {
    answer!(after_c, error, |call| Ok({
        let (from, elapsed) = (checked!(call, water_c)?, checked!(call, time_s)?);
        let (rate, room) = (checked!(call, cooling_per_min)?, given!(call, surroundings)?);
        call.core(heat::temperature_after(from, elapsed, rate, &surroundings_of(call, room)?))?
            .value()
    }))
}

/// Cooling rate of an open cup without a thermometer. Estimate, −50 to +40 %; two readings and
/// cupwright_heat_cooling_rate() are far better.
///
/// @param water_g The drink, {Liquid}.
/// @param heat_capacity_j_per_k Heat capacity of the cup, {HeatCapacity}.
/// @param diameter_mm Inner diameter at the surface, {Diameter}.
/// @param[out] cooling_per_min {CoolingRate}.
///
/// Fails with CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE outside the range of the rate.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_heat_open_cup_rate_estimate(
    water_g: f64,
    heat_capacity_j_per_k: f64,
    diameter_mm: f64,
    cooling_per_min: *mut f64,
    error: *mut cupwright_error,
) -> i32 {
    answer!(cooling_per_min, error, |call| Ok({
        let (liquid, cup) = (checked!(call, water_g)?, checked!(call, heat_capacity_j_per_k)?);
        call.core(heat::open_cup_rate_estimate(liquid, cup, checked!(call, diameter_mm)?))?.value()
    }))
}
