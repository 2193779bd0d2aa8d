//! What holds on an edge itself, and what a refusal beyond it says.

use approx::assert_relative_eq;
use cupwright::columns;
use cupwright::decision::{self, Decision};
use cupwright::dilution;
use cupwright::error::{Error, Limit};
use cupwright::extraction::{self, Brew, Credibility, Kinetics};
use cupwright::heat::{self, Cover, Surroundings};
use cupwright::quantity::*;
use cupwright::ratio;
use cupwright::reading::{self, Agreement};
use cupwright::retention::{self, Losses, Paper};
use cupwright::uncertainty::{Estimate, Standard, Uncertain};
use cupwright::verdict::{self, Band, Side};

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

// ---- Ice ----------------------------------------------------------------------------------------

#[test]
fn the_most_ice_that_a_drink_takes_is_warmed_to_the_melting_point_by_all_its_heat() {
    let iced = |ice| dilution::iced(value(100.0), value(5.0), value(1.2), value(ice), value(-30.0));
    let most = nearest(iced(2000.0), Limit::IceAndHeat);
    let glass = iced(most).unwrap();
    assert_eq!(glass.temperature.celsius(), 0.0);
    assert!(glass.melted.grams() < 1e-6, "{glass:?}");
    assert_relative_eq!(glass.left.grams(), most, max_relative = 1e-8);
    assert_relative_eq!(glass.strength.percent(), 1.2, max_relative = 1e-8);
}

#[test]
fn a_drink_that_is_cold_enough_takes_no_ice_and_one_that_is_colder_cannot_be_warmed() {
    let reach =
        |wanted| dilution::ice_to_reach(value(150.0), value(60.0), value(wanted), value(-18.0));
    assert_eq!(reach(60.0).unwrap().grams(), 0.0);
    assert_eq!(nearest(reach(61.0), Limit::IceAndHeat), 60.0);
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

// ---- Extraction ---------------------------------------------------------------------------------

const STEEP: fn() -> Brew = || Brew {
    dose: value(15.0),
    water: value(200.0),
    beverage: value(172.0),
    moisture: value(3.0),
    water_solids: value(300.0),
    vapour: value(1.0),
    held_strength: value(40.0),
};

/// The lowest that an impossible value could have been.
fn lowest<T: std::fmt::Debug>(answer: Result<T, Error>, of: Quantity) -> f64 {
    match answer {
        Err(Error::Impossible { quantity, lowest, .. }) if quantity == of => lowest,
        other => panic!("{other:?}"),
    }
}

#[test]
fn a_beverage_of_all_there_is_can_be_and_a_larger_one_is_named_with_what_is_missing() {
    // With nothing kept: B = W + hD − V + x, and x + sW = T B.
    let (t, s) = (0.014, STEEP().water_solids.fraction());
    let most = (200.0 * (1.0 - s) + 0.03 * 15.0 - 1.0) / (1.0 - t);
    let of = |beverage: f64| {
        extraction::extraction_yield(&Brew { beverage: value(beverage), ..STEEP() }, value(1.4))
    };
    assert!(of(most * (1.0 - 1e-12)).is_ok());
    let more = lowest(of(most + 5.0), Quantity::BrewWater);
    assert_relative_eq!(more, 205.0, max_relative = 1e-12);
}

#[test]
fn a_strength_below_the_water_s_own_is_named_with_that() {
    // 300 mg in a litre, which weighs 998.2 g.
    let own = 100.0 * 0.3 / 998.2;
    let weak = extraction::extraction_yield(&STEEP(), value(0.02));
    assert_relative_eq!(lowest(weak, Quantity::Strength), own, max_relative = 1e-4);
    // No coffee says nothing of how much beverage there was: it takes a hair more.
    let exactly = 100.0 * STEEP().water_solids.fraction();
    let none = extraction::beverage(&STEEP(), value(exactly), value(20.0));
    assert_eq!(lowest(none, Quantity::Strength), exactly.next_up());
}

#[test]
fn no_strength_takes_water_without_end() {
    for extracted in [0.0, 20.0] {
        let error = extraction::steeped_ratio(value(extracted), value(0.0)).unwrap_err();
        let Error::ResultOutOfRange { quantity, value, .. } = error else { panic!("{error}") };
        assert_eq!((quantity, value), (Quantity::WaterRatio, f64::INFINITY));
    }
}

const ONE_RATE: fn() -> Kinetics = || Kinetics {
    equilibrium: value(20.0),
    fast_share: value(100.0),
    fast: value(100.0),
    slow: value(100.0),
};

#[test]
fn the_equilibrium_is_never_reached() {
    let within = extraction::time_for_yield(&ONE_RATE(), value(20.0));
    let most = nearest(within, Limit::EquilibriumYield);
    assert_relative_eq!(most, 20.0, max_relative = 1e-8);
    assert!(extraction::time_for_yield(&ONE_RATE(), value(most)).is_ok());
}

#[test]
fn times_early_and_late_have_all_their_digits() {
    // A ten-millionth of it, and all but a ten-millionth: t = −τ ln(1 − E/E∞).
    let early = extraction::time_for_yield(&ONE_RATE(), value(20.0 * 1e-7)).unwrap();
    assert_relative_eq!(early.seconds(), -100.0 * (-1e-7_f64).ln_1p(), max_relative = 1e-14);
    let late = 20.0 * (1.0 - 1e-7);
    let left = 1.0 - late / 20.0;
    let late = extraction::time_for_yield(&ONE_RATE(), value(late)).unwrap();
    assert_relative_eq!(late.seconds(), -100.0 * left.ln(), max_relative = 1e-14);
}

// ---- Heat ---------------------------------------------------------------------------------------

#[test]
fn grounds_take_up_as_much_as_their_dose_says() {
    let grounds = heat::Body::grounds(value(20.0), value(21.0)).unwrap();
    // 20 g of 1.6 J/(g K).
    assert_eq!(grounds.heat_capacity.joules_per_kelvin(), 32.0);
}

#[test]
fn cooling_begins_a_tenth_of_a_kelvin_above_its_end() {
    // Under a lid it ends at the temperature of the room.
    let room = Surroundings { room: value(20.0), humidity: value(50.0), cover: Cover::Lidded };
    let after = |from: f64| heat::temperature_after(value(from), value(60.0), value(0.01), &room);
    let least = lowest(after(20.05), Quantity::Temperature);
    assert_relative_eq!(least, 20.1, epsilon = 1e-5, max_relative = 0.0);
    assert!(after(least).is_ok());
    assert!(after(least - 1e-4).is_err());
}

#[test]
fn a_start_just_where_the_law_begins_cools() {
    let frost = Surroundings { room: value(0.0), humidity: value(50.0), cover: Cover::Lidded };
    assert!(heat::temperature_after(value(0.1), value(60.0), value(0.01), &frost).is_ok());
}

#[test]
fn a_rate_is_refused_with_the_temperatures_that_have_one() {
    let room = Surroundings { room: value(20.0), humidity: value(50.0), cover: Cover::Lidded };
    let between =
        |from: f64, to: f64| match heat::cooling_rate(value(from), value(to), value(600.0), &room)
            .unwrap_err()
        {
            Error::Impossible { quantity: Quantity::Temperature, lowest, highest, .. } => {
                (lowest, highest)
            }
            other => panic!("{other}"),
        };
    for (from, to, highest) in [(60.0, 20.05, 60.0), (60.0, 61.0, 60.0), (20.1, 20.05, 20.1)] {
        let (low, high) = between(from, to);
        assert_relative_eq!(low, 20.1, epsilon = 1e-5, max_relative = 0.0);
        assert_relative_eq!(high, highest, epsilon = 1e-5, max_relative = 0.0);
        assert!(low <= high);
    }
    // Nothing within no time.
    let error = heat::cooling_rate(value(60.0), value(60.0), value(0.0), &room).unwrap_err();
    let Error::ResultOutOfRange { quantity, value, .. } = error else { panic!("{error}") };
    assert_eq!((quantity, value), (Quantity::CoolingRate, f64::INFINITY));
}

// ---- Verdicts -----------------------------------------------------------------------------------

#[test]
fn the_edges_of_a_band_are_inside() {
    let band = Band::<Strength>::new(value(1.125), value(1.375)).unwrap();
    let side = |strength| band.place(value(strength)).side;
    let at = [1.0, 1.125, 1.25, 1.375, 1.5].map(side);
    use Side::{Above, Below, Inside};
    assert_eq!(at, [Below, Inside, Inside, Inside, Above]);
    let place = band.place(value(1.5));
    let distances = (place.above_lowest, place.below_highest, place.above_centre);
    assert_eq!(distances, (0.375, -0.125, 0.25));
}

#[test]
fn a_cup_is_inside_where_its_strength_is_and_its_yield_if_that_is_judged() {
    let window = verdict::HOME_BREWER_2018.window;
    let is_inside =
        |window, strength, e| verdict::stand(&window, value(strength), value(e)).is_inside();
    assert!(is_inside(window, 1.3, 20.0));
    assert!(!is_inside(window, 1.5, 20.0));
    assert!(!is_inside(window, 1.3, 23.0));
    assert!(!is_inside(window, 1.5, 23.0));
    let strength_alone = verdict::Window { extracted: None, ..window };
    assert!(is_inside(strength_alone, 1.3, 23.0));
    assert!(!is_inside(strength_alone, 1.5, 23.0));
}

// ---- Decisions ----------------------------------------------------------------------------------

#[test]
fn what_is_not_uncertain_is_where_it_is() {
    let band = Band::<Strength>::new(value(1.125), value(1.375)).unwrap();
    let sure = value(95.0);
    let decide = |strength| decision::decide(&Estimate::exact(value(strength)), &band, sure);
    use Decision::{Above, Below, Inside};
    let at = [1.0, 1.125, 1.25, 1.375, 1.5].map(decide);
    assert_eq!(at, [Below, Inside, Inside, Inside, Above]);
    let chances = decision::chances(&Estimate::exact(value(1.0)), &band);
    let parts = (chances.below.percent(), chances.inside.percent(), chances.above.percent());
    assert_eq!(parts, (100.0, 0.0, 0.0));
    // All of it, edges too, can be called inside.
    let safe = decision::acceptance(&Standard::NONE, &band, sure).unwrap();
    assert_eq!((safe.lowest(), safe.highest()), (band.lowest(), band.highest()));
}

#[test]
fn what_can_be_called_inside_shrinks_to_the_middle_and_goes() {
    let band = Band::<Strength>::new(value(1.15), value(1.45)).unwrap();
    let sure: Confidence = value(95.0);
    let most =
        decision::largest_uncertainty(&band, sure, DegreesOfFreedom::KNOWN).unwrap().percent();
    let of = |u: f64| decision::acceptance(&Standard::known(value(u)), &band, sure);
    assert_eq!(of(most * 1.001), None);
    assert_eq!(of(most * 10.0), None);
    for share in [0.5, 0.9, 0.99, 0.9999] {
        let safe = of(most * share).unwrap();
        assert_relative_eq!(safe.centre(), 1.3, max_relative = 1e-12);
        // Just sure enough at its edge, and no longer a hundredth of an uncertainty outside.
        let u = Standard::known(value(most * share));
        let inside = |strength| {
            decision::chances(&Estimate::with(value(strength), u), &band).inside.percent()
        };
        assert_relative_eq!(inside(safe.lowest().percent()), 95.0, max_relative = 1e-11);
        assert!(inside(safe.lowest().percent() - 0.01 * most) < 95.0);
    }
}

#[test]
fn readings_just_as_far_apart_as_they_may_be_agree() {
    let s_r = value(0.01);
    let critical = reading::critical_range(value(2.0), s_r).unwrap();
    let readings = [value(1.4), value(1.4 + critical)];
    assert_eq!(reading::combine(&readings, s_r).unwrap().agreement, Agreement::Mean);
    let farther = [value(1.4), value(1.4 + critical + 1e-6)];
    assert_eq!(reading::combine(&farther, s_r).unwrap().agreement, Agreement::TakeAnother);
}

// ---- Yields -------------------------------------------------------------------------------------

/// A brew of which nothing is kept but what it drank: E = T B/D.
fn flowed(dose: f64, beverage: f64) -> Brew {
    Brew {
        dose: value(dose),
        water: value(beverage + 2.0 * dose),
        beverage: value(beverage),
        moisture: value(0.0),
        water_solids: WaterSolids::NONE,
        vapour: Vapour::NONE,
        held_strength: HeldStrength::FLOWED_THROUGH,
    }
}

#[test]
fn a_yield_on_a_limit_belongs_to_what_the_limit_ends_or_begins() {
    for (limit, on_it) in
        [(26.0, Credibility::Ordinary), (28.0, Credibility::AtLimit), (30.0, Credibility::AtLimit)]
    {
        let mut on_the_limit = 0;
        for tenths in 100..300_u32 {
            let beverage = f64::from(tenths) / 10.0;
            let strength: Strength = value(limit * 10.0 / beverage);
            let told = extraction::plausibility(&flowed(10.0, beverage), strength).unwrap();
            if told.extracted.percent() == limit {
                assert_eq!(told.credibility, on_it, "{beverage}");
                on_the_limit += 1;
            }
        }
        assert!(on_the_limit > 20, "{limit}: {on_the_limit}");
    }
}

/// A column has the yields of its rows, and where a row is refused no number.
#[test]
fn a_yield_in_a_column_is_refused_where_its_row_is() {
    let steeped = Brew {
        water_solids: value(400.0),
        held_strength: HeldStrength::STEEPED,
        ..flowed(15.0, 170.0)
    };
    for (brew, percent) in [
        (steeped, 1.4),
        (steeped, 100.0 * steeped.water_solids.fraction()),
        (steeped, 0.03),
        (Brew { water: value(160.0), ..steeped }, 1.4),
        (Brew { water: value(160.0), ..steeped }, 0.03),
    ] {
        let one = extraction::extraction_yield(&brew, value(percent));
        let (mut told, mut status) = ([0.0], [0]);
        columns::extraction_yield(
            &[brew.dose.grams()],
            &[brew.water.grams()],
            &[brew.beverage.grams()],
            &[brew.moisture.percent()],
            &[brew.water_solids.milligrams_per_litre()],
            &[brew.vapour.grams()],
            &[brew.held_strength.percent()],
            &[percent],
            &mut told,
            &mut status,
        )
        .unwrap();
        match one {
            Ok(extracted) => assert_eq!((told, status), ([extracted.percent()], [0])),
            Err(_) => assert!(told[0].is_nan() && status[0] != 0, "{brew:?}"),
        }
    }
}

// ---- Cooling ------------------------------------------------------------------------------------

/// Nearer than a tenth of a kelvin to where it ends no time is told.
#[test]
fn cooling_is_told_down_to_a_tenth_of_a_kelvin_above_its_end() {
    let around = Surroundings { room: value(0.0), humidity: value(50.0), cover: Cover::Lidded };
    let time =
        |from: f64, to: f64| heat::time_to_cool(value(from), value(to), value(0.05), &around);
    assert!(time(50.0, 0.1).is_ok() && time(0.1, 0.1).is_ok());
    assert!(nearest(time(50.0, 0.099), Limit::Surroundings) > 0.1);
}

// ---- Decisions ----------------------------------------------------------------------------------

/// Uncertainties from next to nothing to all that a band takes, at some confidences and degrees of freedom.
fn uncertain<M: Uncertain>(band: &Band<M>, look: impl Fn(Standard<M::Uncertainty>, Confidence)) {
    for confidence in [55.0, 68.3, 80.0, 90.0, 95.0, 97.7, 99.9] {
        for freedom in [1.0, 2.5, 9.0, 120.0, 1e9] {
            let (confidence, freedom) = (value(confidence), value(freedom));
            let most = decision::largest_uncertainty(band, confidence, freedom).unwrap();
            for share in [0.001, 0.03, 0.2, 0.5, 0.8, 0.95, 0.999, 1.0 - 1e-9] {
                look(Standard { u: value(share * most.value()), freedom }, confidence);
            }
        }
    }
}

/// From the lowest acceptable to the highest, both included, and no farther.
fn both_ends_are_sure<M: Uncertain + std::fmt::Debug>(band: &Band<M>) {
    uncertain(band, |standard, confidence| {
        let safe = decision::acceptance(&standard, band, confidence).unwrap();
        let decide =
            |v: f64| decision::decide(&Estimate::with(value(v), standard), band, confidence);
        let (low, high) = (safe.lowest().value(), safe.highest().value());
        for end in [low, high] {
            assert_eq!(decide(end), Decision::Inside, "{end} {standard:?} {confidence}");
        }
        let hair = 1e-6 * (high - low).max(standard.u.value());
        for beyond in [low - hair, high + hair] {
            assert_eq!(decide(beyond), Decision::NotYet, "{beyond} {standard:?} {confidence}");
        }
    });
}

#[test]
fn what_is_acceptable_ends_where_it_is_no_longer_sure() {
    both_ends_are_sure(&verdict::HOME_BREWER_2018.window.strength);
    both_ends_are_sure(&verdict::HOME_BREWER_2018.window.extracted.unwrap());
    both_ends_are_sure::<Strength>(&Band::new(value(0.37), value(2.911)).unwrap());
    both_ends_are_sure::<Yield>(&Band::new(value(17.3), value(23.119)).unwrap());
}

/// Whatever is too uncertain for one value of a band is so for all, and for its middle.
#[test]
fn too_uncertain_is_said_where_the_middle_cannot_be_sure() {
    let band: Band<Strength> = Band::new(value(1.0), value(2.0)).unwrap();
    let mut turned = 0;
    for tenths in 501..=999_u32 {
        let confidence: Confidence = value(f64::from(tenths) / 10.0);
        let most =
            decision::largest_uncertainty(&band, confidence, DegreesOfFreedom::KNOWN).unwrap();
        let mut u = most.value() * (1.0 - 8.0 * f64::EPSILON);
        let mut can_be = true;
        for _ in 0..16 {
            let decide = |percent: f64| {
                let standard = Standard::known(value(u));
                decision::decide(&Estimate::with(value(percent), standard), &band, confidence)
            };
            let middle_is_sure = decide(1.5) == Decision::Inside;
            let other = if middle_is_sure { Decision::NotYet } else { Decision::TooUncertain };
            assert_eq!(decide(1.0), other, "{u} {confidence}");
            turned += usize::from(can_be && !middle_is_sure);
            can_be = middle_is_sure;
            u = u.next_up();
        }
    }
    assert!(turned > 300, "{turned}");
}
