//! The temperatures of a recipe, from the kettle to the guest.

use core::cmp::Ordering;

use super::{Brewer, ContactHeat, HeatWalk, Kitchen, Wish};
use crate::dilution;
use crate::error::{Error, Limit};
use crate::heat::{self, Body, Cover, Surroundings};
use crate::quantity::{
    Addition, Beverage, BrewWater, CoolingRate, Dose, Quantity, Temperature, Time,
    VesselTemperature, computed,
};

/// Every temperature from the kettle to the guest, for one batch and one cup.
pub(super) fn heat_walk(
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
    let air = Surroundings { room: kitchen.room, humidity: kitchen.humidity, cover: brewer.cover };
    let (slurry_end, contact) = match brewer.cooling {
        _ if !heat::cools(slurry, &air) => (slurry, ContactHeat::Unchanged),
        Some(rate) => {
            (heat::temperature_after(slurry, wish.contact, rate, &air)?, ContactHeat::CoolingRate)
        }
        None => {
            let bodies =
                body.heat_capacity.joules_per_kelvin() + grounds.heat_capacity.joules_per_kelvin();
            let vapour = brewer.losses.vapour;
            let end = heat::after_vapour(water.into(), slurry, vapour, computed(bodies)?)?;
            (end, ContactHeat::AtMost)
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
        contact,
        in_cup,
        wait: wait(wish, kitchen, in_cup)?,
    })
}

/// How long the drink has to wait for the temperature wished; none where the cup's cooling is unknown.
fn wait(wish: &Wish, kitchen: &Kitchen, in_cup: Temperature) -> Result<Option<Time>, Error> {
    let Some(serve_at) = wish.serve_at else { return Ok(None) };
    let room = Surroundings { room: kitchen.room, humidity: kitchen.humidity, cover: Cover::Open };
    let limit = match serve_at.celsius().total_cmp(&in_cup.celsius()) {
        Ordering::Equal => return Ok(Some(computed(0.0)?)),
        Ordering::Less if heat::cools(in_cup, &room) => {
            let time = |rate| heat::time_to_cool(in_cup, serve_at, rate, &room);
            // Where cooling ends does not depend on its rate.
            time(CoolingRate::known(1.0))?;
            return kitchen.cup_cooling.map(time).transpose();
        }
        Ordering::Less => Limit::Surroundings,
        Ordering::Greater => Limit::HeatLeft,
    };
    Err(Error::Infeasible {
        wish: Quantity::Temperature,
        value: serve_at.celsius(),
        nearest: in_cup.celsius(),
        limit,
    })
}
