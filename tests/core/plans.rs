//! A recipe is the inverse of the models: brewed forward, it gives the cup that was wished.

use approx::{assert_abs_diff_eq, assert_relative_eq};
use cupwright::error::Limit;
use cupwright::extraction::{self, Brew};
use cupwright::forecast::Straying;
use cupwright::heat::Cover;
use cupwright::plan::{self, Air, Brewer, Coffee, ContactHeat, Kitchen, Recipe, Wish};
use cupwright::quantity::*;
use cupwright::ratio::Chamber;
use cupwright::retention::{self, Losses, Paper};
use cupwright::uncertainty::Standard;
use cupwright::verdict::{Band, Counting, Window};
use cupwright::{Error, caution::Caution, dilution};
use proptest::prelude::*;

use crate::recipes::brewer;
use crate::{some, value};

prop_compose! {
    fn brewers()(
        held_strength in some(0.0, 100.0),
        retention in some(0.5, 2.5),
        hold_up in some(0.0, 6.0),
        drips in some(0.0, 4.0),
        vapour in some(0.0, 4.0),
        volume in some(120.0, 400.0),
        displacement in some(0.3, 1.2),
        chambered: bool,
        heat_capacity in some(0.0, 200.0),
        rinse in prop::option::of(some(50.0, 300.0)),
        cooling in prop::option::of(some(0.001, 0.03)),
        pressed: bool,
    ) -> Brewer {
        Brewer {
            held_strength,
            losses: Losses { retention, hold_up, paper: Paper::Rinsed, drips, vapour },
            chamber: chambered.then_some(Chamber { volume, displacement }),
            heat_capacity, rinse, cooling, cover: Cover::Lidded, pressed, glass: !pressed,
        }
    }
}

prop_compose! {
    fn coffees()(expected in some(15.0, 24.0), moisture in some(0.0, 5.0)) -> Coffee {
        Coffee { expected, moisture, caffeine: Some(value(11.0)) }
    }
}

prop_compose! {
    fn kitchens()(
        altitude in some(0.0, 2500.0),
        room in some(5.0, 30.0),
        pour_drop in some(0.0, 2.0),
        second_vessel in prop::option::of(some(0.0, 150.0)),
        cup in some(0.0, 250.0),
        water_solids in some(0.0, 300.0),
        added in some(20.0, 90.0),
    ) -> Kitchen {
        Kitchen {
            air: Air::Altitude(altitude), room, humidity: value(50.0), pour_drop, second_vessel,
            cup, cup_cooling: Some(value(0.006)), water_solids, added,
        }
    }
}

prop_compose! {
    fn wishes()(
        cup in some(60.0, 300.0),
        strength in some::<Strength>(1.15, 1.45),
        servings in 1..5_u32,
        brew_strength in prop::option::of(some(1.5, 5.0)),
    ) -> Wish {
        Wish {
            cup, strength, servings: value(f64::from(servings)), brew_strength,
            most_batches: None, brew_temperature: value(80.0), contact: value(120.0),
            serve_at: None,
            window: Some(Window {
                strength: Band::new(value(1.1), value(1.5)).unwrap(),
                extracted: None,
                counting: Counting::NotStated,
            }),
        }
    }
}

/// The strength of the drink when dose and water of each batch are as given, all else as planned.
pub fn brewed(
    wish: &Wish,
    brewer: &Brewer,
    coffee: &Coffee,
    kitchen: &Kitchen,
    recipe: &Recipe,
    dose: Dose,
    water: BrewWater,
) -> Result<f64, Error> {
    let beverage = retention::beverage(&brewer.losses, dose, water)?;
    let brew = Brew {
        dose,
        water,
        beverage,
        moisture: coffee.moisture,
        water_solids: kitchen.water_solids,
        vapour: brewer.losses.vapour,
        held_strength: brewer.held_strength,
    };
    let strength = extraction::strength(&brew, coffee.expected)?;
    let added = recipe.added_per_cup.grams() * wish.servings.count() / recipe.batches.count();
    dilution::strength_after_water(beverage, strength, value(added), kitchen.water_solids)
        .map(Strength::percent)
}

/// Each end of a recipe's tolerances is an edge of the window, a full chamber or the densest brew, and between
/// them the drink stays in the window.
pub fn tolerances_hold(wish: &Wish, brewer: &Brewer, coffee: &Coffee, kitchen: &Kitchen) {
    let Ok(recipe) = plan::recipe(wish, brewer, coffee, kitchen) else { return };
    let edges = recipe.tolerances.unwrap();
    let window = wish.window.unwrap().strength;
    let (low, high) = (window.lowest().percent(), window.highest().percent());
    let strength = |dose, water| brewed(wish, brewer, coffee, kitchen, &recipe, dose, water);
    // At an edge of the window, where the chamber is full, or where no brew leaves less.
    let densest = |dose: Dose, water: BrewWater| {
        retention::beverage(&brewer.losses, dose, water)
            .is_ok_and(|b| (b.grams() / dose.grams() - 0.5).abs() < 1e-9)
    };
    let full = |dose: Dose, water: BrewWater| {
        brewer.chamber.is_some_and(|Chamber { volume, displacement }| {
            let fill = water.grams() * 1000.0
                / cupwright::water::density(wish.brew_temperature).kilograms_per_cubic_metre()
                + dose.grams() * displacement.millilitres_per_gram();
            (fill - volume.millilitres()).abs() < 1e-6
        })
    };
    let at_an_edge = |got: Result<f64, Error>| match got {
        Ok(got) => (got - low).abs() < 1e-7 || (got - high).abs() < 1e-7,
        Err(_) => false,
    };
    for dose in [edges.dose_from, edges.dose_to].into_iter().flatten() {
        assert!(
            full(dose, recipe.water)
                || densest(dose, recipe.water)
                || at_an_edge(strength(dose, recipe.water)),
            "{dose:?} {recipe:?}"
        );
    }
    for water in [edges.water_from, edges.water_to].into_iter().flatten() {
        assert!(
            full(recipe.dose, water)
                || densest(recipe.dose, water)
                || at_an_edge(strength(recipe.dose, water)),
            "{water:?} {recipe:?}"
        );
    }
    // Inside, the drink stays in the window.
    let inside =
        |got: Result<f64, Error>| got.is_ok_and(|t| (low - 1e-9..=high + 1e-9).contains(&t));
    if let (Some(from), Some(to)) = (edges.dose_from, edges.dose_to) {
        for share in [0.25, 0.5, 0.75] {
            let dose = value(from.grams() + share * (to.grams() - from.grams()));
            let got = strength(dose, recipe.water);
            assert!(inside(got), "{dose:?} {got:?} {recipe:?}");
        }
    }
    if let (Some(from), Some(to)) = (edges.water_from, edges.water_to) {
        for share in [0.25, 0.5, 0.75] {
            let water = value(from.grams() + share * (to.grams() - from.grams()));
            let got = strength(recipe.dose, water);
            assert!(inside(got), "{water:?} {got:?} {recipe:?}");
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(2000))]

    #[test]
    fn brewed_forward_it_is_the_cup_wished(
        wish in wishes(), brewer in brewers(), coffee in coffees(), kitchen in kitchens()
    ) {
        let recipe = match plan::recipe(&wish, &brewer, &coffee, &kitchen) {
            Ok(recipe) => recipe,
            Err(Error::Infeasible {
                // Steeped coffee cannot be as strong as wished; or a cold second vessel takes the
                // heat of too little water.
                limit: Limit::CoffeeGivesNoMore | Limit::BoilingPoint, nearest, value: wished, ..
            }) => {
                prop_assert!(nearest < wished);
                return Ok(());
            }
            Err(Error::Impossible { quantity: Quantity::Volume, .. }) => return Ok(()),
            Err(other) => return Err(TestCaseError::fail(other.to_string())),
        };
        let got =
            brewed(&wish, &brewer, &coffee, &kitchen, &recipe, recipe.dose, recipe.water).unwrap();
        assert_relative_eq!(got, wish.strength.percent(), max_relative = 1e-9);
        let drinks = recipe.beverage.grams() * recipe.batches.count()
            + recipe.added_per_cup.grams() * wish.servings.count();
        assert_relative_eq!(drinks, wish.cup.grams() * wish.servings.count(), max_relative = 1e-12);
        if let (Some(fill), Some(chamber)) = (recipe.fill, brewer.chamber) {
            prop_assert!(fill.millilitres() <= chamber.volume.millilitres() * (1.0 + 1e-9));
        }
        prop_assert_eq!(recipe.cautions.contains(Caution::Pressing), brewer.pressed);
        prop_assert_eq!(recipe.cautions.contains(Caution::GlassShock), brewer.glass);
        prop_assert!(recipe.cautions.contains(Caution::Scald));
        let heat = recipe.heat;
        prop_assert!(heat.kettle <= heat.boiling);
        prop_assert!(heat.at_grounds <= heat.kettle);
        // A brewer rinsed from the kettle may be hotter than water that came by a second vessel.
        prop_assert!(heat.slurry <= heat.at_grounds || heat.brewer.celsius() > heat.slurry.celsius());
        prop_assert!(heat.slurry_end <= heat.slurry);
        prop_assert_eq!(heat.contact == ContactHeat::AtMost, brewer.cooling.is_none());
        prop_assert_eq!(heat.second_vessel.is_some(), kitchen.second_vessel.is_some());
    }

    #[test]
    fn the_tolerances_are_where_the_window_ends(
        wish in wishes(), brewer in brewers(), coffee in coffees(), kitchen in kitchens()
    ) {
        tolerances_hold(&wish, &brewer, &coffee, &kitchen);
    }

    #[test]
    fn the_nearest_is_feasible(
        wish in wishes(), brewer in brewers(), coffee in coffees(), kitchen in kitchens(),
        which in 0..5,
    ) {
        let wish = match which {
            0 => Wish { brew_temperature: value(101.0), ..wish },
            1 => Wish { serve_at: Some(value(99.0)), ..wish },
            2 => Wish { most_batches: Some(value(1.0)), ..wish },
            3 => Wish {
                brew_strength: None,
                strength: value(25.0),
                most_batches: Some(value(2.0)),
                window: None,
                ..wish
            },
            _ => Wish { brew_strength: Some(value(30.0)), ..wish },
        };
        let Err(Error::Infeasible { limit, nearest, value: wished, .. }) =
            plan::recipe(&wish, &brewer, &coffee, &kitchen)
        else {
            return Ok(());
        };
        prop_assert!(nearest < wished);
        let mended = match limit {
            Limit::BoilingPoint => Wish { brew_temperature: value(nearest), ..wish },
            Limit::HeatLeft => Wish { serve_at: Some(value(nearest)), ..wish },
            Limit::Chamber => Wish { cup: value(nearest), ..wish },
            Limit::CoffeeGivesNoMore if wish.brew_strength.is_some() => {
                Wish { brew_strength: Some(value(nearest)), ..wish }
            }
            Limit::CoffeeGivesNoMore | Limit::AddingWaterWeakens => {
                Wish { strength: value(nearest), window: None, ..wish }
            }
            _ => return Ok(()),
        };
        match plan::recipe(&mended, &brewer, &coffee, &kitchen) {
            // The largest cup fills the chamber of every batch allowed.
            Ok(recipe) if limit == Limit::Chamber => {
                prop_assert_eq!(Some(recipe.batches), wish.most_batches);
                let volume = brewer.chamber.unwrap().volume.millilitres();
                assert_relative_eq!(
                    recipe.fill.unwrap().millilitres(), volume, max_relative = 1e-6
                );
            }
            Ok(_) => {}
            // Something else may bind next.
            Err(Error::Infeasible { limit: next, .. }) => prop_assert!(next != limit, "{next:?}"),
            Err(other) => prop_assert!(
                matches!(other, Error::ResultOutOfRange { .. } | Error::Impossible { .. }),
                "{other}"
            ),
        }
    }
}

/// 15 g and 200 g steeped to 1.44 %, and 15 g and 60 g to 6.49 %: common practice, no source.
#[test]
fn the_planner_finds_the_trade_recipes_back() {
    let brewer = Brewer {
        held_strength: HeldStrength::STEEPED,
        losses: Losses {
            retention: value(1.8),
            hold_up: HoldUp::NONE,
            paper: Paper::Rinsed,
            drips: Drips::NONE,
            vapour: Vapour::NONE,
        },
        chamber: None,
        heat_capacity: value(0.0),
        rinse: None,
        cooling: None,
        cover: Cover::Lidded,
        pressed: true,
        glass: false,
    };
    let kitchen = Kitchen {
        air: Air::Pressure(value(101.325)),
        room: value(20.0),
        humidity: value(50.0),
        pour_drop: value(0.5),
        second_vessel: None,
        cup: value(0.0),
        cup_cooling: None,
        water_solids: WaterSolids::NONE,
        added: value(20.0),
    };
    for (strength, water, expected) in
        [(1.44, 200.0, 19.480_519_480_5), (6.49, 60.0, 27.761_736_712_7)]
    {
        let coffee = Coffee { expected: value(expected), moisture: value(0.0), caffeine: None };
        let wish = Wish {
            cup: value(water - 1.8 * 15.0),
            strength: value(strength),
            servings: value(1.0),
            brew_strength: None,
            most_batches: None,
            brew_temperature: value(95.0),
            contact: value(120.0),
            serve_at: None,
            window: None,
        };
        let recipe = plan::recipe(&wish, &brewer, &coffee, &kitchen).unwrap();
        assert_abs_diff_eq!(recipe.dose.grams(), 15.0, epsilon = 1e-8);
        assert_abs_diff_eq!(recipe.water.grams(), water, epsilon = 1e-8);
        // Two servings: 30 g and twice the water, time unchanged.
        let two = Wish { servings: value(2.0), ..wish };
        let recipe = plan::recipe(&two, &brewer, &coffee, &kitchen).unwrap();
        assert_abs_diff_eq!(recipe.dose.grams(), 30.0, epsilon = 1e-8);
        assert_abs_diff_eq!(recipe.water.grams(), 2.0 * water, epsilon = 1e-8);
    }
}

/// A wish for one cup, water of 100 °C and a brewer that keeps nothing, with a chamber of 100 mL.
fn plain() -> (Wish, Brewer, Coffee, Kitchen) {
    let wish = Wish {
        cup: value(95.0),
        strength: value(1.3),
        servings: value(1.0),
        brew_strength: None,
        most_batches: None,
        brew_temperature: value(90.0),
        contact: value(120.0),
        serve_at: None,
        window: None,
    };
    let brewer = Brewer {
        losses: Losses {
            retention: value(0.0),
            hold_up: HoldUp::NONE,
            paper: Paper::Rinsed,
            drips: Drips::NONE,
            vapour: Vapour::NONE,
        },
        chamber: Some(Chamber { volume: value(100.0), displacement: value(0.0) }),
        heat_capacity: value(0.0),
        ..brewer()
    };
    let coffee = Coffee { expected: value(20.0), moisture: value(0.0), caffeine: None };
    let kitchen = Kitchen {
        air: Air::Pressure(value(101.325)),
        room: value(20.0),
        humidity: value(50.0),
        pour_drop: value(0.5),
        second_vessel: None,
        cup: value(0.0),
        cup_cooling: Some(value(0.006)),
        water_solids: WaterSolids::NONE,
        added: value(20.0),
    };
    (wish, brewer, coffee, kitchen)
}

#[test]
fn grounds_that_take_no_room_leave_the_chamber_to_the_beverage() {
    let (wish, brewer, coffee, kitchen) = plain();
    for brew_strength in [None, Some(value(1.5))] {
        for servings in [1.0, 2.0, 3.0] {
            let wish = Wish { servings: value(servings), brew_strength, ..wish };
            let recipe = plan::recipe(&wish, &brewer, &coffee, &kitchen).unwrap();
            // 95 g fill it nearly; of a stronger brew 82.3 g do.
            assert_eq!(recipe.batches.count(), servings);
            assert!(recipe.fill.unwrap().millilitres() <= 100.0);
        }
        let wish =
            Wish { servings: value(2.0), most_batches: Some(value(1.0)), brew_strength, ..wish };
        let error = plan::recipe(&wish, &brewer, &coffee, &kitchen).unwrap_err();
        assert!(matches!(error, Error::Infeasible { limit: Limit::Chamber, .. }), "{error}");
        assert_eq!(wish.field_of(&error), Some("cup_g"));
    }
}

#[test]
fn an_error_names_the_field_of_the_wish() {
    let (wish, brewer, coffee, kitchen) = plain();
    let field = |wish: Wish, kitchen: &Kitchen| {
        let error = plan::recipe(&wish, &brewer, &coffee, kitchen).unwrap_err();
        (wish.field_of(&error), error)
    };
    let of = |wish: Wish| field(wish, &kitchen).0;
    assert_eq!(of(Wish { brew_temperature: value(103.0), ..wish }), Some("brew_c"));
    assert_eq!(of(Wish { serve_at: Some(value(95.0)), ..wish }), Some("serve_c"));
    assert_eq!(of(Wish { serve_at: Some(value(10.0)), ..wish }), Some("serve_c"));
    assert_eq!(of(Wish { strength: value(49.0), ..wish }), Some("strength_pct"));
    let strong = Some(value(49.0));
    assert_eq!(of(Wish { brew_strength: strong, ..wish }), Some("brew_strength_pct"));
    let window = Some(Window {
        strength: Band::new(value(1.1), value(1.2)).unwrap(),
        extracted: None,
        counting: Counting::NotStated,
    });
    assert_eq!(of(Wish { window, ..wish }), Some("strength_pct"));

    // Water that is stronger than the wish.
    let hard = Kitchen { water_solids: value(1000.0), ..kitchen };
    let weak = Wish { strength: value(0.05), ..wish };
    let (name, error) = field(weak, &hard);
    assert!(matches!(error, Error::Impossible { .. }), "{error}");
    assert_eq!(name, Some("strength_pct"));
    let both = Wish { brew_strength: Some(value(0.06)), ..weak };
    assert_eq!(field(both, &hard).0, Some("brew_strength_pct"));

    let other = Dose::from_grams(-1.0).unwrap_err();
    assert_eq!(wish.field_of(&other), None);
}

/// Where the chamber does not hold the likeliest strength, the surest recipe is at the strongest that it holds.
#[test]
fn the_surest_recipe_goes_as_far_as_the_chamber_does() {
    // Invented: a wish at the weak edge, and a chamber filled by 1.2 %.
    let wish = |strength: f64| Wish {
        cup: value(190.0),
        strength: value(strength),
        servings: value(1.0),
        brew_strength: None,
        most_batches: Some(value(1.0)),
        brew_temperature: value(80.0),
        contact: value(120.0),
        serve_at: None,
        window: Some(Window {
            strength: Band::new(value(1.15), value(1.45)).unwrap(),
            extracted: None,
            counting: Counting::NotStated,
        }),
    };
    let brewer = |volume: f64| Brewer {
        losses: Losses { vapour: value(1.0), ..brewer().losses },
        chamber: Some(Chamber { volume: value(volume), displacement: value(0.8) }),
        heat_capacity: value(100.0),
        ..brewer()
    };
    let coffee = Coffee { expected: value(20.0), moisture: value(2.0), caffeine: None };
    let kitchen = Kitchen {
        air: Air::Altitude(value(0.0)),
        room: value(20.0),
        humidity: value(50.0),
        pour_drop: value(0.0),
        second_vessel: None,
        cup: value(100.0),
        cup_cooling: None,
        water_solids: value(50.0),
        added: value(20.0),
    };
    let straying = Straying {
        dose: Standard::known(value(0.1)),
        water: Standard::known(value(2.0)),
        extracted: Standard::known(value(0.4)),
        retention: Standard::known(value(0.1)),
        other: Standard::known(value(1.0)),
    };
    let fill = plan::recipe(&wish(1.2), &brewer(400.0), &coffee, &kitchen).unwrap().fill.unwrap();
    let brewer = brewer(fill.millilitres());

    let surest = plan::surest(&wish(1.16), &brewer, &coffee, &kitchen, &straying).unwrap();
    // To a four-thousandth of the way to the middle of the window, at most.
    let short = 1.2 - surest.recipe.strength.percent();
    assert!((-1e-9..(1.31 - 1.16) / 4096.0).contains(&short), "{short}");
    let as_wished = plan::foreseen(&wish(1.16), &brewer, &coffee, &kitchen, &straying).unwrap();
    let chance = |of: &plan::Foreseen| of.outlook.unwrap().inside.percent();
    assert!(chance(&surest) > chance(&as_wished) + 20.0, "{surest:?}");
}
