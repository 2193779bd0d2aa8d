//! What must always hold of forecasts and advice: suggestions lead where they say, stay within reach, and
//! come in the order of their chances.

use approx::{assert_abs_diff_eq, assert_relative_eq};
use cupwright::advise::{self, Advice, Change, Cup, Direction, Means};
use cupwright::extraction::{self, Brew, Kinetics};
use cupwright::forecast::{self, Intended, Straying};
use cupwright::quantity::*;
use cupwright::ratio::Chamber;
use cupwright::retention::{self, Losses, Paper};
use cupwright::uncertainty::{Estimate, Standard};
use cupwright::verdict::{Band, HOME_BREWER_2018, Window};
use proptest::prelude::*;

use crate::{some, value};

prop_compose! {
    fn straying()(
        dose in some(0.0, 0.5), water in some(0.0, 5.0), extracted in some(0.01, 1.0),
        retention in some(0.0, 0.2), other in some(0.0, 2.0),
    ) -> Straying {
        Straying {
            dose: Standard::known(dose),
            water: Standard::known(water),
            extracted: Standard::known(extracted),
            retention: Standard::known(retention),
            other: Standard::known(other),
        }
    }
}

prop_compose! {
    /// A brew, a yield in reach, and the cup that it gives.
    fn cup()(
        dose in some::<Dose>(8.0, 60.0), ratio in 9.0..20.0_f64, kept in 1.2..2.6_f64,
        extracted in some::<Yield>(12.0, 26.0), u in (some(0.0, 0.05), some(0.0, 0.6)),
        moisture in some(0.0, 6.0), water_solids in some(0.0, 300.0), vapour in some(0.0, 4.0),
        held_strength in prop_oneof![Just(HeldStrength::STEEPED), Just(HeldStrength::FLOWED_THROUGH), some(0.0, 100.0)],
        contact in some(60.0, 400.0), weighing in some(0.0, 0.2),
    ) -> Cup {
        let d = dose.grams();
        let brew = Brew {
            dose, moisture, water_solids, vapour, held_strength,
            water: value(d * ratio),
            beverage: value(d * (ratio - kept) - vapour.grams()),
        };
        let strength = extraction::strength(&brew, extracted).unwrap();
        Cup {
            brew,
            weighing: Standard::known(weighing),
            strength: Estimate::with(strength, Standard::known(u.0)),
            extracted: Estimate::with(extracted, Standard::known(u.1)),
            contact,
        }
    }
}

prop_compose! {
    fn means()(
        rates in proptest::option::of((some(20.0, 30.0), some(0.0, 100.0), some(5.0, 60.0), some(60.0, 400.0))),
        volume in proptest::option::of(some::<Volume>(150.0, 1500.0)),
        water in some(60.0, 100.0), milk: bool,
    ) -> Means {
        Means {
            kinetics: rates.map(|(equilibrium, fast_share, fast, slow)| Kinetics { equilibrium, fast_share, fast, slow }),
            chamber: volume.map(|volume| Chamber { volume, displacement: value(0.8) }),
            water,
            milk,
        }
    }
}

fn find(advice: &Advice, change: Change) -> Option<&advise::Suggestion> {
    advice.suggestions().find(|s| s.change == change)
}

fn losses(brew: &Brew) -> Losses {
    let none = Losses {
        retention: value(0.0),
        hold_up: HoldUp::NONE,
        paper: Paper::None,
        drips: Drips::NONE,
        vapour: brew.vapour,
    };
    let retention =
        retention::retention_of_brew(&none, brew.dose, brew.water, brew.beverage).unwrap();
    Losses { retention, ..none }
}

/// The strength of the same coffee brewed with other masses.
fn brewed(cup: &Cup, dose: Dose, water: BrewWater) -> f64 {
    let beverage = retention::beverage(&losses(&cup.brew), dose, water).unwrap();
    let brew = Brew { dose, water, beverage, ..cup.brew };
    extraction::strength(&brew, cup.extracted.value).unwrap().percent()
}

proptest! {
    #[test]
    fn suggestions_lead_where_they_say_and_stay_within_reach(
        cup in cup(), straying in straying(), means in means(), wanted in some::<Strength>(0.9, 2.0),
    ) {
        let window = HOME_BREWER_2018.window;
        let Ok(advice) = advise::on(&cup, &straying, &means, wanted, &window) else { return Ok(()) };

        for (change, strength) in [
            (Change::Dose, find(&advice, Change::Dose).map(|s| brewed(&cup, value(s.amount), cup.brew.water))),
            (Change::Water, find(&advice, Change::Water).map(|s| brewed(&cup, cup.brew.dose, value(s.amount)))),
        ] {
            if let Some(strength) = strength {
                assert_relative_eq!(strength, wanted.percent(), max_relative = 1e-9);
                let told = find(&advice, change).unwrap().outlook.strength.value.percent();
                assert_relative_eq!(told, wanted.percent(), max_relative = 1e-9);
            }
        }
        if let Some(time) = find(&advice, Change::Time) {
            let band = window.extracted.unwrap();
            assert_relative_eq!(time.outlook.counted.value.percent(), band.centre(), max_relative = 1e-8);
        }
        // Something is added only to what is too strong, and then it is as strong as wished.
        for change in [Change::AddWater, Change::AddMilk] {
            let found = find(&advice, change);
            if let Some(s) = found {
                prop_assert!(cup.strength.value > wanted && s.amount > 0.0);
                assert_relative_eq!(s.outlook.strength.value.percent(), wanted.percent(), max_relative = 1e-9);
            }
            prop_assert!(change != Change::AddMilk || means.milk || found.is_none());
        }
        if let Some(chamber) = means.chamber {
            let density = cupwright::water::density(means.water).kilograms_per_cubic_metre();
            for s in advice.suggestions() {
                let (dose, water) = match s.change {
                    Change::Dose => (s.amount, cup.brew.water.grams()),
                    Change::Water => (cup.brew.dose.grams(), s.amount),
                    _ => continue,
                };
                let fill = 1000.0 * water / density + 0.8 * dose;
                prop_assert!(fill <= chamber.volume.millilitres() * (1.0 + 1e-8), "{fill}");
            }
        }
        // As it is and the same again are always there, with what was read and what it says.
        let as_it_is = find(&advice, Change::DrinkAsItIs).unwrap().outlook;
        assert_relative_eq!(as_it_is.strength.value.percent(), cup.strength.value.percent(), max_relative = 1e-14);
        let again = find(&advice, Change::SameAgain).unwrap().outlook;
        assert_relative_eq!(again.strength.value.percent(), cup.strength.value.percent(), max_relative = 1e-9);
        assert_relative_eq!(again.beverage.value.grams(), cup.brew.beverage.grams(), max_relative = 1e-9);
        prop_assert!(again.beverage.u >= straying.water.u || straying.water.u.grams() == 0.0);

        let steps = |s: &advise::Suggestion| {
            let step = |chance: Probability| (chance.percent() / 5.0).floor();
            (step(s.outlook.inside), step(s.outlook.strength_inside))
        };
        let listed: Vec<_> = advice.suggestions().map(steps).collect();
        prop_assert!(listed.windows(2).all(|pair| pair[0] >= pair[1]), "{listed:?}");

        let counted = as_it_is.counted.value.percent();
        let grind = if counted < 18.0 { Direction::More } else if counted > 22.0 { Direction::Less } else { Direction::Leave };
        prop_assert_eq!(advice.grind, grind);
    }

    /// The slopes against differences of the models themselves, in each input.
    #[test]
    fn forecasts_have_the_slopes_of_the_models(cup in cup(), straying in straying(), added in some::<Addition>(0.0, 200.0)) {
        let brew = cup.brew;
        let intended = Intended {
            dose: Estimate::with(brew.dose, straying.dose),
            water: Estimate::with(brew.water, straying.water),
            extracted: Estimate::with(cup.extracted.value, straying.extracted),
            losses: losses(&brew),
            retention: straying.retention,
            other: Standard::NONE,
            moisture: brew.moisture,
            water_solids: brew.water_solids,
            held_strength: brew.held_strength,
            portion: Estimate::exact(brew.beverage),
            added: Estimate::exact(added),
        };
        let drink = |i: &Intended| -> [f64; 2] {
            let beverage = retention::beverage(&i.losses, i.dose.value, i.water.value).unwrap();
            let brew = Brew { dose: i.dose.value, water: i.water.value, beverage, ..brew };
            let of_brew = extraction::strength(&brew, i.extracted.value).unwrap();
            let drink = cupwright::dilution::strength_after_water(i.portion.value, of_brew, i.added.value, i.water_solids).unwrap();
            [drink.percent(), of_brew.percent() * beverage.grams() / i.dose.value.grams()]
        };
        let moved = |by: f64| {
            let near = |x: f64| x * (1.0 + by);
            [
                Intended { dose: Estimate { value: value(near(brew.dose.grams())), ..intended.dose }, ..intended },
                Intended { water: Estimate { value: value(near(brew.water.grams())), ..intended.water }, ..intended },
                Intended { extracted: Estimate { value: value(near(cup.extracted.value.percent())), ..intended.extracted }, ..intended },
                Intended { losses: Losses { retention: value(near(intended.losses.retention.grams_per_gram())), ..intended.losses }, ..intended },
            ].map(|i| drink(&i))
        };
        const STEP: f64 = 1e-5;
        let (up, down) = (moved(STEP), moved(-STEP));
        let at = [brew.dose.grams(), brew.water.grams(), cup.extracted.value.percent(), intended.losses.retention.grams_per_gram()];
        let of_strength = forecast::strength(&intended).unwrap();
        let of_counted = forecast::counted_yield(&intended).unwrap();
        let slopes = [
            of_strength.terms().map(|t| t.sensitivity).collect::<Vec<_>>(),
            of_counted.terms().map(|t| t.sensitivity).collect::<Vec<_>>(),
        ];
        for (result, slopes) in slopes.iter().enumerate() {
            for input in 0..4 {
                let slope = (up[input][result] - down[input][result]) / (2.0 * STEP * at[input]);
                assert_abs_diff_eq!(slopes[input], slope, epsilon = 1e-6 * slope.abs() + 1e-7);
            }
        }
        // What is not uncertain has no doubt, and what is has no less than its linear part.
        let none = Intended {
            dose: Estimate::exact(brew.dose),
            water: Estimate::exact(brew.water),
            extracted: Estimate::exact(cup.extracted.value),
            retention: Standard::NONE,
            ..intended
        };
        prop_assert_eq!(forecast::strength(&none).unwrap().estimate.u, StrengthUncertainty::from_percent(0.0).unwrap());
        let outlook = forecast::outlook(&intended, &HOME_BREWER_2018.window).unwrap();
        assert_relative_eq!(outlook.strength.u.percent(), of_strength.estimate.u.percent(), max_relative = 1e-12);
        assert_relative_eq!(outlook.counted.u.percent(), of_counted.estimate.u.percent(), max_relative = 1e-12);
        prop_assert!(outlook.inside <= outlook.strength_inside);
    }

    /// A window without a yield asks for the strength alone.
    #[test]
    fn without_a_yield_the_strength_decides(cup in cup(), straying in straying(), means in means()) {
        let strength = Band::new(value(1.2), value(1.4)).unwrap();
        let window = Window { strength, extracted: None };
        let Ok(advice) = advise::on(&cup, &straying, &means, value(1.3), &window) else { return Ok(()) };
        prop_assert_eq!(advice.grind, Direction::Leave);
        for s in advice.suggestions() {
            prop_assert_eq!(s.outlook.inside, s.outlook.strength_inside);
        }
        if let Some(time) = find(&advice, Change::Time) {
            assert_relative_eq!(time.outlook.strength.value.percent(), 1.3, max_relative = 1e-8);
        }
    }
}
