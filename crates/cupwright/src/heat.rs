//! Where the heat goes: kettle, second vessel, brewer, grounds, cup; and cooling with time.
//!
//! Each step is one heat balance: the water's heat content ([`water::enthalpy`]) and the heat
//! capacities of the [`Body`]s it meets settle at one temperature. A walk from kettle to cup is the
//! same function called once per step, and each step has its inverse.
//!
//! Wetting the grounds gives off a little heat, which no published value was found for; a rough
//! estimate is 0.3 to 0.9 K for 16 g in 250 g. It is not counted.

use crate::error::{Error, Limit};
use crate::math::{exp, integral, just_below, ln, max, sqrt};
use crate::quantity::{
    CoolingRate, Diameter, Dose, HeatCapacity, Humidity, Liquid, Quantity, RoomTemperature, Share,
    SpecificHeat, Temperature, TemperatureDrop, Time, Vapour, VesselMass, VesselTemperature,
    computed,
};
use crate::record::record;
use crate::water;

record! {
    /// A solid that takes part in a heat balance: a vessel, the grounds, the paper.
    pub struct Body {
        /// Heat capacity of the part that warms.
        heat_capacity: HeatCapacity = "heat_capacity_j_per_k",
        /// Its temperature before.
        temperature: VesselTemperature = "body_c",
    }
}

impl Body {
    /// Grounds at a temperature, with [`GROUNDS_SPECIFIC_HEAT`].
    ///
    /// ```text
    /// C = c D
    /// ```
    ///
    /// Symbols: C heat capacity, c = 1.6 J/(g K), D dose. Source: estimate
    /// ([`GROUNDS_SPECIFIC_HEAT`]).
    ///
    /// # Errors
    /// None in range; the `Result` guards the range of [`HeatCapacity`].
    pub fn grounds(dose: Dose, temperature: VesselTemperature) -> Result<Self, Error> {
        let capacity = dose.grams() * GROUNDS_SPECIFIC_HEAT.joules_per_gram_kelvin();
        Ok(Self { heat_capacity: computed(capacity)?, temperature })
    }
}

/// Specific heat of roasted ground coffee, 1.6 ± 0.3 J/(g K). Estimate, between composition
/// formulas (1.4 to 1.9); the uncertainty moves a 1:16 brew by 0.4 K.
pub const GROUNDS_SPECIFIC_HEAT: SpecificHeat = SpecificHeat::known(1.6);

/// A material that vessels are made of.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Material {
    /// Its name.
    pub name: &'static str,
    /// Its specific heat.
    pub specific_heat: SpecificHeat,
    /// Where the value comes from and how far sources differ, J/(g K).
    pub source: &'static str,
}

/// Materials of kettles, brewers and cups.
pub const MATERIALS: [Material; 10] = [
    material(
        "borosilicate glass",
        0.83,
        "Callister 0.85; a properties table 0.84; an engineering data handbook 0.753",
    ),
    material("soda-lime glass", 0.84, "Callister 0.84; a properties table 0.82; EN 12524 0.75"),
    material(
        "porcelain or stoneware",
        0.90,
        "EN 12524 tile 0.84; clay and pottery 0.92; a materials table 1.05",
    ),
    material("stainless steel", 0.50, "EN 12524 0.46; Crawford 0.49; a materials table 0.50"),
    material("aluminium", 0.90, "EN 12524 alloys 0.88; handbook 0.897; alloy 6061 0.896"),
    material("polypropylene", 1.8, "EN 12524 1.8; Crawford 2.0; a materials table 1.7"),
    material("polycarbonate", 1.2, "EN 12524 1.2; Crawford 1.2"),
    material("copolyester", 1.3, "estimate, ±0.2, from PET 1.0 to 1.25 and polycarbonate"),
    material("silicone rubber", 1.1, "EN 12524 1.0; rounded up, estimate"),
    material(
        "dry filter paper",
        1.34,
        "Wood Handbook 2010: 0.1031 + 0.003867 T/K, 1.24 at 20 °C to 1.51 at 90 °C",
    ),
];

const fn material(name: &'static str, specific_heat: f64, source: &'static str) -> Material {
    Material { name, specific_heat: SpecificHeat::known(specific_heat), source }
}

/// Heat capacity of a vessel, of which a share follows the liquid.
///
/// ```text
/// C = f m c
/// ```
///
/// Symbols: C heat capacity, f share, m mass of the vessel, c specific heat of its material.
/// Source: definition.
///
/// The share tends to 100 % for a steep of a minute or more (a 4 mm ceramic wall evens out in about
/// 24 s) and is well below it for a dripper; no published value was found. Better than guessing:
/// [`vessel_heat_capacity`] from one thermometer reading.
///
/// # Errors
/// None in range; the `Result` guards the range of [`HeatCapacity`].
pub fn heat_capacity(
    mass: VesselMass,
    specific_heat: SpecificHeat,
    share: Share,
) -> Result<HeatCapacity, Error> {
    computed(mass.grams() * specific_heat.joules_per_gram_kelvin() * share.fraction())
}

/// Heat capacity of all bodies together (J/K), and their heat above 0 °C (J).
fn of_bodies(bodies: &[Body]) -> (f64, f64) {
    bodies.iter().fold((0.0, 0.0), |(capacity, heat), body| {
        let c = body.heat_capacity.joules_per_kelvin();
        (capacity + c, heat + c * body.temperature.celsius())
    })
}

/// Temperature at which a liquid and the bodies it meets settle.
///
/// ```text
/// m h(t) + t Σ C = m h(t0) + Σ C tᵢ
/// ```
///
/// Symbols: m liquid, t0 its temperature before, t after, C and tᵢ heat capacities and temperatures
/// of the bodies, h heat content of water ([`water::enthalpy`]). Source: conservation of heat.
///
/// Nothing is lost to the air meanwhile.
///
/// # Errors
/// [`Error::ResultOutOfRange`] where the liquid would freeze.
///
/// ```
/// # use cupwright::{heat::{self, Body}, quantity::*};
/// // Ground coffee and a cold glass brewer take 11 K out of the water.
/// let grounds = Body::grounds(Dose::from_grams(16.0)?, VesselTemperature::from_celsius(21.0)?)?;
/// let glass = Body {
///     heat_capacity: HeatCapacity::from_joules_per_kelvin(168.0)?,
///     temperature: VesselTemperature::from_celsius(21.0)?,
/// };
/// let water = Liquid::from_grams(250.0)?;
/// let slurry = heat::settle(water, Temperature::from_celsius(95.0)?, &[grounds, glass])?;
/// assert_eq!(slurry.to_string(), "83.5 °C");
/// # Ok::<(), cupwright::Error>(())
/// ```
pub fn settle(
    liquid: Liquid,
    temperature: Temperature,
    bodies: &[Body],
) -> Result<Temperature, Error> {
    let (capacity, heat) = of_bodies(bodies);
    let m = liquid.grams();
    water::balanced_temperature(
        m,
        capacity,
        m * water::enthalpy(temperature).joules_per_gram() + heat,
    )
}

/// Temperature that a liquid must have so that it settles at a wanted one: the inverse of [`settle`].
///
/// ```text
/// h(t0) = h(t) + Σ C (t − tᵢ)/m, solved for t0
/// ```
///
/// Symbols: as for [`settle`]. Source: conservation of heat.
///
/// # Errors
/// [`Error::ResultOutOfRange`] where that is no temperature of liquid water. Whether it can be
/// reached under the air pressure at hand is for [`reachable`] to say.
pub fn before_settling(
    liquid: Liquid,
    wanted: Temperature,
    bodies: &[Body],
) -> Result<Temperature, Error> {
    let (capacity, heat) = of_bodies(bodies);
    let m = liquid.grams();
    let needed = m * water::enthalpy(wanted).joules_per_gram() + capacity * wanted.celsius() - heat;
    water::balanced_temperature(m, 0.0, needed)
}

/// A vessel after a rinse that is poured away: it keeps the temperature at which both settled.
///
/// ```text
/// m h(t) + C t = m h(t0) + C t_vessel, solved for t; C stays
/// ```
///
/// Symbols: as for [`settle`], with m the water of the rinse. Source: conservation of heat.
///
/// # Errors
/// As [`settle`].
pub fn preheated(
    vessel: Body,
    rinse: Liquid,
    rinse_temperature: Temperature,
) -> Result<Body, Error> {
    let settled = settle(rinse, rinse_temperature, &[vessel])?;
    Ok(Body { temperature: computed(settled.celsius())?, ..vessel })
}

/// Heat capacity of a vessel from one thermometer reading: water of known mass and temperature goes
/// in, beside bodies already known, and settles.
///
/// ```text
/// C = { m [h(t0) − h(t)] − Σ Cᵢ (t − tᵢ) } / (t − t_vessel)
/// ```
///
/// Symbols: as for [`settle`], with Cᵢ and tᵢ of the other bodies. Source: conservation of heat.
///
/// # Errors
/// [`Error::ResultOutOfRange`] outside the range of [`HeatCapacity`]: below zero where the
/// temperatures do not stand in order, infinite where the vessel took or gave nothing.
pub fn vessel_heat_capacity(
    liquid: Liquid,
    before: Temperature,
    settled: Temperature,
    vessel: VesselTemperature,
    others: &[Body],
) -> Result<HeatCapacity, Error> {
    let t = settled.celsius();
    let given =
        water::enthalpy(before).joules_per_gram() - water::enthalpy(settled).joules_per_gram();
    let (capacity, heat) = of_bodies(others);
    let quotient = (liquid.grams() * given - (capacity * t - heat)) / (t - vessel.celsius());
    // Nothing given and nothing taken fits any capacity: as much as something given.
    computed(if quotient.is_nan() { f64::INFINITY } else { quotient })
}

/// Temperature after a vapour loss that water and bodies, all at one temperature, pay for.
///
/// ```text
/// (m − V) h(t) + C t = (m − V) h(t0) + C t0 − V L(t0)
/// ```
///
/// Symbols: m liquid, V vapour lost, C heat capacity of the bodies, t0 and t temperature before and
/// after, h heat content, L latent heat ([`water::latent_heat`]). Source: conservation of heat.
///
/// A gram of vapour costs 250 g of water 2.2 K.
///
/// # Errors
/// [`Error::Impossible`] for as much vapour as liquid; [`Error::ResultOutOfRange`] where the rest
/// would freeze.
pub fn after_vapour(
    liquid: Liquid,
    temperature: Temperature,
    vapour: Vapour,
    bodies: HeatCapacity,
) -> Result<Temperature, Error> {
    let rest = liquid.grams() - vapour.grams();
    if rest <= 0.0 {
        return Err(Error::Impossible {
            quantity: Quantity::Vapour,
            value: vapour.grams(),
            lowest: Quantity::Vapour.lowest(),
            highest: just_below(liquid.grams()),
            beside: Quantity::Liquid,
        });
    }
    let (capacity, t0) = (bodies.joules_per_kelvin(), temperature.celsius());
    let cost = vapour.grams() * water::latent_heat(temperature).joules_per_gram();
    let heat = rest * water::enthalpy(temperature).joules_per_gram() + capacity * t0 - cost;
    water::balanced_temperature(rest, capacity, heat)
}

/// Temperature after a pour that costs a drop.
///
/// ```text
/// t' = t − Δ
/// ```
///
/// Symbols: t temperature before, t' after, Δ drop. Source: definition; the usual drops are
/// estimates.
///
/// No measured kettle-to-vessel drop was found; estimates are 1 K for a thin stream and 0.4 K for a
/// dump ([`THIN_STREAM_DROP`], [`DUMP_DROP`]).
///
/// # Errors
/// [`Error::ResultOutOfRange`] below 0 °C.
pub fn after_pour(temperature: Temperature, drop: TemperatureDrop) -> Result<Temperature, Error> {
    computed(temperature.celsius() - drop.kelvin())
}

/// Temperature before a pour that costs a drop: the inverse of [`after_pour`].
///
/// ```text
/// t = t' + Δ
/// ```
///
/// Symbols: as for [`after_pour`]. Source: definition; the usual drops are estimates.
///
/// # Errors
/// [`Error::ResultOutOfRange`] above the range of [`Temperature`].
pub fn before_pour(temperature: Temperature, drop: TemperatureDrop) -> Result<Temperature, Error> {
    computed(temperature.celsius() + drop.kelvin())
}

/// Heat lost by a thin stream of a few grams a second over 10 to 15 cm. Estimate, ±50 %.
pub const THIN_STREAM_DROP: TemperatureDrop = TemperatureDrop::known(1.0);

/// Heat lost by water dumped in at once. Estimate, ±50 %.
pub const DUMP_DROP: TemperatureDrop = TemperatureDrop::known(0.4);

/// Passes a temperature on if boiling water, or what is left of its heat, can be that hot.
///
/// ```text
/// t ≤ t_boiling
/// ```
///
/// Symbols: t temperature wanted, t_boiling boiling point at hand. Source: definition.
///
/// # Errors
/// [`Error::Infeasible`] above `boiling`, a hair below which is the nearest.
pub fn reachable(kettle: Temperature, boiling: Temperature) -> Result<Temperature, Error> {
    if kettle > boiling {
        return Err(Error::Infeasible {
            wish: Quantity::Temperature,
            value: kettle.celsius(),
            nearest: just_below(boiling.celsius()),
            limit: Limit::BoilingPoint,
        });
    }
    Ok(kettle)
}

/// Whether vapour can leave the surface.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(rename_all = "snake_case")
)]
pub enum Cover {
    /// Open to the air: about half of the heat leaves as vapour.
    Open = 1,
    /// Lidded, or a closed brewer.
    Lidded = 2,
}

record! {
    /// The room in which something cools.
    pub struct Surroundings {
        /// Air temperature.
        room: RoomTemperature = "room_c",
        /// Relative humidity; 50 % where unknown. It hardly matters.
        humidity: Humidity = "humidity_pct",
        /// Open or lidded.
        cover: Cover = "cover",
    }
}

/// Weight of the vapour term against the temperature term for an open cup, K/kPa. Chosen on five
/// measured cooling curves and one computed one; anything from 4 to 10 stays within 1.2 K over half
/// an hour once the rate is calibrated. Estimate.
pub const OPEN_CUP_K_PER_KPA: f64 = 6.0;

/// Nearer than this to where cooling ends, the law is straight to 0.3 %, K.
const STRAIGHT_K: f64 = 0.1;

/// The nearest that a temperature may come: a hair more, so that rounding does not refuse it.
const NEAREST_K: f64 = STRAIGHT_K + 1e-6;

/// Panels of the quadrature over the logarithm of the temperature left: 3e-10 relative in a room,
/// 2e-7 at −20 °C.
const PANELS: u32 = 6;

/// The cooling law of a surroundings, dT/dt = −k F(T).
pub(crate) struct Law {
    room: f64,
    vapour_weight: f64,
    vapour_of_air: f64,
    /// Where cooling ends, F = 0: the room's temperature, or a little below it under evaporation.
    end: f64,
}

/// Whether a liquid is warm enough for the cooling law to say anything.
pub(crate) fn cools(from: Temperature, surroundings: &Surroundings) -> bool {
    Law::of(surroundings).start(from).is_ok()
}

impl Law {
    pub(crate) fn of(surroundings: &Surroundings) -> Self {
        let room = surroundings.room.celsius();
        let vapour_weight = match surroundings.cover {
            Cover::Open => OPEN_CUP_K_PER_KPA,
            Cover::Lidded => 0.0,
        };
        let vapour_of_air = surroundings.humidity.fraction() * water::vapour_pressure_at(room);
        let mut law = Self { room, vapour_weight, vapour_of_air, end: room };
        // F is increasing and convex: Newton's steps from the room's temperature come down to its
        // root without crossing it, each a thousandfold nearer with this difference quotient.
        for _ in 0..8 {
            const STEP: f64 = 1e-3;
            let f = law.f(law.end);
            law.end -= f * STEP / (law.f(law.end + STEP) - f);
        }
        law
    }

    /// F(T) = (T − Ta) + β [p(T) − RH p(Ta)].
    fn f(&self, celsius: f64) -> f64 {
        celsius - self.room
            + self.vapour_weight * (water::vapour_pressure_at(celsius) - self.vapour_of_air)
    }

    /// θ/F at a temperature θ above the end; constant below [`STRAIGHT_K`], where F is a difference
    /// of near-equal numbers.
    pub(crate) fn pace(&self, theta: f64) -> f64 {
        let theta = max(theta, STRAIGHT_K);
        theta / self.f(self.end + theta)
    }

    /// F at a temperature θ above the end, as the law is evaluated.
    pub(crate) fn speed(&self, theta: f64) -> f64 {
        theta / self.pace(theta)
    }

    /// k t from θ1 down to θ: the integral of dT/F = (θ/F) d ln θ.
    pub(crate) fn span(&self, theta1: f64, theta: f64) -> f64 {
        integral(ln(theta), ln(theta1), PANELS, |u| self.pace(exp(u)))
    }

    /// θ of a start, refused if there is nothing to cool.
    pub(crate) fn start(&self, from: Temperature) -> Result<f64, Error> {
        let theta = from.celsius() - self.end;
        if theta < STRAIGHT_K {
            return Err(Error::Impossible {
                quantity: Quantity::Temperature,
                value: from.celsius(),
                lowest: self.end + NEAREST_K,
                highest: Quantity::Temperature.highest(),
                beside: Quantity::RoomTemperature,
            });
        }
        Ok(theta)
    }

    /// θ after θ1 has cooled for k t, the inverse of [`Self::span`].
    fn after(&self, theta1: f64, goal: f64) -> f64 {
        let to_straight = self.span(theta1, STRAIGHT_K);
        if goal >= to_straight {
            return STRAIGHT_K * exp((to_straight - goal) / self.pace(STRAIGHT_K));
        }
        // k t is a convex, decreasing function of ln θ. The first step lands on or below the root,
        // those after it climb.
        let mut u = ln(theta1);
        for _ in 0..MOST_NEWTON_STEPS {
            let theta = exp(u);
            let step = (goal - self.span(theta1, theta)) / self.pace(theta);
            let next = max(u - step, ln(STRAIGHT_K));
            let settled = (next - u).abs() < 1e-13;
            u = next;
            if settled {
                break;
            }
        }
        exp(u)
    }

    /// θ after θ1 has cooled for so much more than what led from one start to one end: for starts and
    /// ends near those two. The quadrature for all that lies between would make a budget ten times as dear.
    pub(crate) fn after_near(&self, (start, end): (f64, f64), theta1: f64, more: f64) -> f64 {
        let goal = more - self.short_span(theta1, start);
        let step =
            |theta: f64| theta * exp((self.short_span(end, theta) - goal) / self.pace(theta));
        step(step(end))
    }

    /// [`Self::span`] of a short way, by Simpson's rule.
    fn short_span(&self, theta1: f64, theta: f64) -> f64 {
        let middle = self.pace(sqrt(theta1 * theta));
        ln(theta1 / theta) * (self.pace(theta1) + 4.0 * middle + self.pace(theta)) / 6.0
    }

    /// A temperature θ above the end, in °C.
    pub(crate) fn celsius(&self, theta: f64) -> f64 {
        self.end + theta
    }

    /// θ of a goal, refused if cooling does not get there.
    fn goal(&self, to: Temperature, from: Temperature) -> Result<f64, Error> {
        let theta = to.celsius() - self.end;
        if theta < STRAIGHT_K || to > from {
            let too_cold = theta < STRAIGHT_K;
            return Err(Error::Infeasible {
                wish: Quantity::Temperature,
                value: to.celsius(),
                nearest: if too_cold { self.end + NEAREST_K } else { from.celsius() },
                limit: if too_cold { Limit::Surroundings } else { Limit::HeatLeft },
            });
        }
        Ok(theta)
    }
}

/// Time to cool from one temperature to another.
///
/// ```text
/// t = (1/k) ∫ dT/F(T),   F(T) = (T − Ta) + β [p(T) − RH p(Ta)]
/// ```
///
/// Symbols: t time, T temperature of the drink, Ta of the room, k cooling rate, p vapour pressure,
/// RH humidity of the room, β = 6 K/kPa open, 0 lidded. Source: estimate for the vapour term
/// ([`OPEN_CUP_K_PER_KPA`]); without it, Newton's law of cooling.
///
/// Lidded, this is Newton's law, which alone is wrong by several kelvin for an open cup. Evaluated
/// by one fixed quadrature over ln(T − T_end), without stepping. Loss of mass by evaporation is not
/// counted.
///
/// With a rate from two readings ten minutes apart ([`cooling_rate`]), measured cups were met within
/// 0.8 K half an hour on. A thermometer's 0.5 K becomes about 0.6 K there.
///
/// # Errors
/// [`Error::Impossible`] for a start not warmer than where cooling ends; [`Error::Infeasible`] for a
/// goal that cooling does not reach; [`Error::ResultOutOfRange`] beyond the range of [`Time`].
///
/// ```
/// # use cupwright::{heat::{self, Cover, Surroundings}, quantity::*};
/// let room = Surroundings {
///     room: RoomTemperature::from_celsius(17.0)?,
///     humidity: Humidity::from_percent(50.0)?,
///     cover: Cover::Open,
/// };
/// // A thermometer in the cup: 82.3 °C, and 65.0 °C ten minutes later.
/// let (hot, later) = (Temperature::from_celsius(82.3)?, Temperature::from_celsius(65.0)?);
/// let rate = heat::cooling_rate(hot, later, Time::from_seconds(600.0)?, &room)?;
/// let wait = heat::time_to_cool(hot, Temperature::from_celsius(60.0)?, rate, &room)?;
/// assert_eq!(wait.to_string(), "864 s");
/// # Ok::<(), cupwright::Error>(())
/// ```
pub fn time_to_cool(
    from: Temperature,
    to: Temperature,
    rate: CoolingRate,
    surroundings: &Surroundings,
) -> Result<Time, Error> {
    let law = Law::of(surroundings);
    let theta1 = law.start(from)?;
    let theta = law.goal(to, from)?;
    computed(60.0 * law.span(theta1, theta) / rate.per_minute())
}

/// Cooling rate k from two thermometer readings a known time apart, by the law of [`time_to_cool`].
///
/// ```text
/// k = (1/t) ∫ dT/F(T)   between the two readings, t apart
/// ```
///
/// Symbols: as for [`time_to_cool`]. Source: estimate, as for [`time_to_cool`].
///
/// Ten minutes apart is good; with five, errors of 2 K half an hour on were seen.
///
/// # Errors
/// [`Error::Impossible`] for readings that are not in order or not above where cooling ends;
/// [`Error::ResultOutOfRange`] outside the range of [`CoolingRate`], as for equal readings or no time
/// between them.
pub fn cooling_rate(
    from: Temperature,
    to: Temperature,
    elapsed: Time,
    surroundings: &Surroundings,
) -> Result<CoolingRate, Error> {
    let law = Law::of(surroundings);
    let theta1 = law.start(from)?;
    let theta = law.goal(to, from).map_err(|_| Error::Impossible {
        quantity: Quantity::Temperature,
        value: to.celsius(),
        lowest: law.end + NEAREST_K,
        highest: max(from.celsius(), law.end + NEAREST_K),
        beside: Quantity::Temperature,
    })?;
    let (span, seconds) = (law.span(theta1, theta), elapsed.seconds());
    // Nothing within no time has no rate either.
    computed(if seconds > 0.0 { 60.0 * span / seconds } else { f64::INFINITY })
}

/// Temperature after a time: the inverse of [`time_to_cool`].
///
/// ```text
/// (1/k) ∫ dT/F(T) = t, solved for the temperature at its end
/// ```
///
/// Symbols: as for [`time_to_cool`]. Source: estimate, as for [`time_to_cool`].
///
/// Newton's method on the same quadrature, so the two agree to the last digits; within 0.1 K of
/// where cooling ends the law is straight and the answer closed.
///
/// # Errors
/// [`Error::Impossible`] for a start not warmer than where cooling ends;
/// [`Error::ResultOutOfRange`] where it would freeze.
pub fn temperature_after(
    from: Temperature,
    elapsed: Time,
    rate: CoolingRate,
    surroundings: &Surroundings,
) -> Result<Temperature, Error> {
    let law = Law::of(surroundings);
    let theta1 = law.start(from)?;
    computed(law.celsius(law.after(theta1, rate.per_minute() * elapsed.seconds() / 60.0)))
}

/// Far more than convergence needs (under ten in tests): only a bound for the proof that it ends.
const MOST_NEWTON_STEPS: u32 = 32;

/// Cooling rate of an open cup without a thermometer.
///
/// ```text
/// k = h A/(β C)
/// ```
///
/// Symbols: k cooling rate, h = [`OPEN_CUP_W_PER_M2_KPA`], A surface of the liquid, β =
/// [`OPEN_CUP_K_PER_KPA`], C heat capacity of liquid and cup. Source: estimate, −50 to +40 %.
///
/// Fitted here to a computed reference mug, filled to the brim. Measured open mugs, of unknown mass
/// and width, lay at half to three quarters of its rate: expect less rather than more. Estimate,
/// −50 to +40 %; two readings and [`cooling_rate`] are far better.
///
/// # Errors
/// [`Error::ResultOutOfRange`] outside the range of [`CoolingRate`].
pub fn open_cup_rate_estimate(
    liquid: Liquid,
    cup: HeatCapacity,
    surface: Diameter,
) -> Result<CoolingRate, Error> {
    let radius_m = surface.millimetres() / 2000.0;
    let area = core::f64::consts::PI * radius_m * radius_m;
    let capacity = 4.19 * liquid.grams() + cup.joules_per_kelvin();
    computed(60.0 * OPEN_CUP_W_PER_M2_KPA * area / (OPEN_CUP_K_PER_KPA * capacity))
}

/// Heat that leaves an open cup with its vapour, W per m² of surface and kPa. Estimate, fitted here.
pub const OPEN_CUP_W_PER_M2_KPA: f64 = 218.0;
