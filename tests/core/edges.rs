//! What holds on an edge itself, and what a refusal beyond it says.

use approx::assert_relative_eq;
use cupwright::dilution;
use cupwright::error::{Error, Limit};
use cupwright::quantity::*;
use cupwright::ratio;
use cupwright::retention::{self, Losses, Paper};

use crate::value;

/// The nearest value of an infeasible wish.
fn nearest<T: std::fmt::Debug>(answer: Result<T, Error>, because: Limit) -> f64 {
    match answer {
        Err(Error::Infeasible { nearest, limit, .. }) if limit == because => nearest,
        other => panic!("{other:?}"),
    }
}

// ---- Cups ---------------------------------------------------------------------------------------

#[test]
fn a_beverage_of_just_one_cup_fills_it() {
    assert_eq!(ratio::whole_cups(value(200.0), value(200.0)).unwrap().count(), 1.0);
    let short = ratio::whole_cups(value(150.0), value(200.0));
    assert_eq!(nearest(short, Limit::BrewOnHand), 150.0);
}

#[test]
fn a_brew_that_just_lasts_is_split_without_a_rest() {
    let split = |cups| {
        let solids = WaterSolids::NONE;
        dilution::split(value(200.0), value(2.0), value(cups), value(200.0), value(1.0), solids)
    };
    let two = split(2.0).unwrap();
    assert_eq!((two.brew.grams(), two.added.grams(), two.rest.grams()), (100.0, 100.0, 0.0));
    // 400 g of drink in all.
    assert_relative_eq!(nearest(split(3.0), Limit::BrewOnHand), 400.0 / 3.0, max_relative = 1e-8);
}

// ---- Dilution -----------------------------------------------------------------------------------

#[test]
fn a_brew_as_strong_as_its_water_takes_no_more_of_it_and_a_weaker_one_is_refused() {
    let hard = WaterSolids::from_milligrams_per_litre(500.0).unwrap();
    let own = 100.0 * hard.fraction();
    let reach = |strength| dilution::water_to_reach(value(170.0), strength, strength, hard);
    assert_eq!(reach(value(own)).unwrap().grams(), 0.0);
    let drink = |strength| dilution::brew_for_drink(value(170.0), strength, strength, hard);
    assert_eq!(drink(value(own)).unwrap().grams(), 170.0);
    let weaker = value(0.8 * own);
    assert!(matches!(reach(weaker), Err(Error::Impossible { quantity: Quantity::Strength, .. })));
    assert!(matches!(drink(weaker), Err(Error::Impossible { quantity: Quantity::Strength, .. })));
}

#[test]
fn no_water_takes_a_brew_down_to_its_water() {
    let hard = WaterSolids::from_milligrams_per_litre(500.0).unwrap();
    let own: Strength = value(100.0 * hard.fraction());
    let within = dilution::water_to_reach(value(170.0), value(1.2), own, hard);
    let most = Quantity::Addition.highest();
    let weakest = (1.2 * 170.0 + own.percent() * most) / (170.0 + most);
    assert_relative_eq!(nearest(within, Limit::NoWaterIsEnough), weakest, max_relative = 1e-8);
}

#[test]
fn the_least_brew_makes_the_weakest_drink() {
    let none = WaterSolids::NONE;
    let least = dilution::brew_for_drink(value(0.2), value(2.0), value(1.0), none).unwrap();
    assert_eq!(least.grams(), Quantity::Beverage.lowest());
    let soft = WaterSolids::from_milligrams_per_litre(100.0).unwrap();
    let own = 100.0 * soft.fraction();
    let brew = |wanted| dilution::brew_for_drink(value(250.0), value(1.2), value(wanted), soft);
    let weakest = nearest(brew(own + 1e-4), Limit::NoWaterIsEnough);
    assert_relative_eq!(weakest, own + (1.2 - own) * 0.1 / 250.0, max_relative = 1e-8);
    assert_relative_eq!(brew(weakest).unwrap().grams(), 0.1, max_relative = 1e-6);
}

// ---- Retention ----------------------------------------------------------------------------------

/// Six grams stay behind whatever the dose.
fn six_and(retention: f64) -> Losses {
    Losses {
        retention: value(retention),
        hold_up: value(3.0),
        paper: Paper::Rinsed,
        drips: value(1.0),
        vapour: value(2.0),
    }
}

#[test]
fn water_that_only_just_suffices_suffices() {
    let losses = six_and(10.0);
    let nothing = retention::retention_of_brew(&losses, value(15.0), value(206.0), value(200.0));
    assert_eq!(nothing.unwrap().grams_per_gram(), 0.0);
    // A gram is what ten times the smallest dose keeps.
    let smallest = retention::dose_for_beverage(&losses, value(207.0), value(200.0)).unwrap();
    assert_eq!(smallest.grams(), Quantity::Dose.lowest());
}

#[test]
fn water_that_does_not_suffice_for_the_smallest_dose_is_named_with_the_least_that_does() {
    for retention in [2.0, 10.0] {
        let losses = six_and(retention);
        let error = retention::dose_for_beverage(&losses, value(206.1), value(200.0)).unwrap_err();
        let Error::Impossible { quantity, value, lowest, beside, .. } = error else {
            panic!("{error}")
        };
        assert_eq!((quantity, value, beside), (Quantity::BrewWater, 206.1, Quantity::Beverage));
        assert_relative_eq!(lowest, 206.0 + 0.1 * retention, max_relative = 1e-15);
    }
}

#[test]
fn a_published_retention_is_what_its_scale_saw() {
    // Olechno et al. 2021, Foods 10:1208, table 2: 36 g, 600 in, 532 out.
    let seen = retention::apparent_retention(value(36.0), value(600.0), value(532.0)).unwrap();
    assert_eq!(
        retention::PUBLISHED.map(|row| row.retention.grams_per_gram()),
        [1.5, seen.grams_per_gram(), 2.0]
    );
}
