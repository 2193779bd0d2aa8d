//! The parts of a recipe, each against what it promises: heat on the way, batches, limits, fields.

use approx::{assert_abs_diff_eq, assert_relative_eq};
use cupwright::caution::Caution;
use cupwright::dilution;
use cupwright::error::{Error, Limit};
use cupwright::extraction::{self, Brew};
use cupwright::forecast::Straying;
use cupwright::heat::{self, Body, Cover, Surroundings};
use cupwright::plan::{self, Air, Brewer, Coffee, ContactHeat, Kitchen, Recipe, Wish};
use cupwright::quantity::*;
use cupwright::ratio::Chamber;
use cupwright::retention::{self, Losses, Paper};
use cupwright::uncertainty::Standard;
use cupwright::verdict::{Band, Counting, Window};
use cupwright::water;

use crate::plans::{brewed, tolerances_hold};
use crate::value;

// Everything here is invented.

pub fn brewer() -> Brewer {
    Brewer {
        held_strength: HeldStrength::STEEPED,
        losses: Losses {
            retention: value(1.5),
            hold_up: value(3.0),
            paper: Paper::Rinsed,
            drips: value(1.0),
            vapour: value(1.5),
        },
        chamber: None,
        heat_capacity: value(120.0),
        rinse: None,
        cooling: None,
        cover: Cover::Lidded,
        pressed: false,
        glass: false,
    }
}

fn coffee() -> Coffee {
    Coffee { expected: value(20.0), moisture: value(2.0), caffeine: Some(value(11.0)) }
}

fn kitchen() -> Kitchen {
    Kitchen {
        air: Air::Pressure(value(100.0)),
        room: value(21.0),
        humidity: value(40.0),
        pour_drop: value(0.7),
        second_vessel: None,
        cup: value(150.0),
        cup_cooling: Some(value(0.02)),
        water_solids: value(120.0),
        added: value(60.0),
    }
}

fn wish() -> Wish {
    Wish {
        cup: value(180.0),
        strength: value(1.3),
        servings: value(2.0),
        brew_strength: None,
        most_batches: None,
        brew_temperature: value(88.0),
        contact: value(150.0),
        serve_at: None,
        window: None,
    }
}

fn window(counting: Counting) -> Window {
    Window {
        strength: Band::new(value(1.15), value(1.45)).unwrap(),
        extracted: Some(Band::new(value(18.0), value(22.0)).unwrap()),
        counting,
    }
}

fn recipe(wish: &Wish, brewer: &Brewer) -> Result<Recipe, Error> {
    plan::recipe(wish, brewer, &coffee(), &kitchen())
}

// ---- Heat ---------------------------------------------------------------------------------------

/// Every step of the way again, forward, by the model of that step.
fn walked(wish: &Wish, brewer: &Brewer, kitchen: &Kitchen) {
    let recipe = plan::recipe(wish, brewer, &coffee(), kitchen).unwrap();
    let (way, drop) = (recipe.heat, kitchen.pour_drop);
    let room: VesselTemperature = value(kitchen.room.celsius());
    let same = |a: Temperature, b: Temperature| {
        assert_abs_diff_eq!(a.celsius(), b.celsius(), epsilon = 1e-9);
    };
    let poured = heat::after_pour(way.kettle, drop).unwrap();
    let arrived = match kitchen.second_vessel {
        None => poured,
        Some(heat_capacity) => {
            let vessel = Body { heat_capacity, temperature: room };
            let settled = heat::settle(recipe.water.into(), poured, &[vessel]).unwrap();
            same(settled, way.second_vessel.unwrap());
            heat::after_pour(settled, drop).unwrap()
        }
    };
    same(arrived, way.at_grounds);
    same(way.at_grounds, wish.brew_temperature);

    let cold = Body { heat_capacity: brewer.heat_capacity, temperature: room };
    let body = brewer.rinse.map_or(cold, |rinse| heat::preheated(cold, rinse, poured).unwrap());
    assert_eq!(way.brewer, body.temperature);
    let grounds = Body::grounds(recipe.dose, room).unwrap();
    same(heat::settle(recipe.water.into(), arrived, &[grounds, body]).unwrap(), way.slurry);

    let (room, humidity) = (kitchen.room, kitchen.humidity);
    let around = Surroundings { room, humidity, cover: brewer.cover };
    let end = match brewer.cooling {
        Some(rate) => heat::temperature_after(way.slurry, wish.contact, rate, &around),
        None => {
            let bodies = brewer.heat_capacity.joules_per_kelvin()
                + grounds.heat_capacity.joules_per_kelvin();
            let vapour = brewer.losses.vapour;
            heat::after_vapour(recipe.water.into(), way.slurry, vapour, value(bodies))
        }
    };
    same(end.unwrap(), way.slurry_end);

    let brew = heat::after_pour(way.slurry_end, drop).unwrap();
    let (portion, added) = (recipe.brew_per_cup, recipe.added_per_cup);
    let mixed = dilution::mixed_temperature(portion.into(), brew, added, kitchen.added).unwrap();
    let cup = Body { heat_capacity: kitchen.cup, temperature: value(kitchen.room.celsius()) };
    same(heat::settle(wish.cup.into(), mixed, &[cup]).unwrap(), way.in_cup);
}

#[test]
fn every_temperature_follows_from_the_one_before() {
    for second_vessel in [None, Some(value(90.0))] {
        for rinse in [None, Some(value(120.0))] {
            for cooling in [None, Some(value(0.01))] {
                for cover in [Cover::Lidded, Cover::Open] {
                    for brew_strength in [None, Some(value(3.0))] {
                        let brewer = Brewer { rinse, cooling, cover, ..brewer() };
                        let kitchen = Kitchen { second_vessel, ..kitchen() };
                        walked(&Wish { brew_strength, ..wish() }, &brewer, &kitchen);
                    }
                }
            }
        }
    }
}

#[test]
fn the_hottest_water_that_arrives_has_boiled() {
    for second_vessel in [None, Some(value(90.0))] {
        let kitchen = Kitchen { second_vessel, ..kitchen() };
        let at = |celsius| {
            let wish = Wish { brew_temperature: value(celsius), ..wish() };
            plan::recipe(&wish, &brewer(), &coffee(), &kitchen)
        };
        let Err(Error::Infeasible { nearest, limit: Limit::BoilingPoint, .. }) = at(102.0) else {
            panic!("{second_vessel:?}")
        };
        let way = at(nearest).unwrap().heat;
        // Water weighs a little more where it is a little colder, and so does a recipe.
        assert_abs_diff_eq!(way.kettle.celsius(), way.boiling.celsius(), epsilon = 1e-2);
        assert!(way.kettle <= way.boiling);
    }
}

#[test]
fn what_is_no_warmer_than_the_room_is_left_as_it_is() {
    let cold = Wish { brew_temperature: value(10.0), ..wish() };
    let way = recipe(&cold, &Brewer { cooling: Some(value(0.01)), ..brewer() }).unwrap().heat;
    assert_eq!((way.contact, way.slurry_end), (ContactHeat::Unchanged, way.slurry));
    // It gets neither colder nor warmer by waiting.
    let serve = |off: f64| {
        let serve_at = Some(value(way.in_cup.celsius() + off));
        recipe(&Wish { serve_at, ..cold }, &Brewer { cooling: Some(value(0.01)), ..brewer() })
    };
    assert_eq!(serve(0.0).unwrap().heat.wait, Some(value(0.0)));
    for (off, because) in [(-1.0, Limit::Surroundings), (1.0, Limit::HeatLeft)] {
        let Err(Error::Infeasible { nearest, limit, .. }) = serve(off) else { panic!("{off}") };
        assert_eq!((nearest, limit), (way.in_cup.celsius(), because));
    }
}

#[test]
fn a_drink_waits_as_long_as_it_cools() {
    let as_made = recipe(&wish(), &brewer()).unwrap();
    assert_eq!(as_made.heat.wait, None);
    let in_cup = as_made.heat.in_cup;
    let serve = |celsius: f64, cup_cooling| {
        let wish = Wish { serve_at: Some(value(celsius)), ..wish() };
        plan::recipe(&wish, &brewer(), &coffee(), &Kitchen { cup_cooling, ..kitchen() })
    };
    let known = kitchen().cup_cooling;
    let Kitchen { room, humidity, .. } = kitchen();
    let around = Surroundings { room, humidity, cover: Cover::Open };
    let at_sixty = serve(60.0, known).unwrap();
    let wait = heat::time_to_cool(in_cup, value(60.0), known.unwrap(), &around).unwrap();
    assert_eq!(at_sixty.heat.wait, Some(wait));
    assert_eq!(serve(in_cup.celsius(), known).unwrap().heat.wait, Some(value(0.0)));
    // How long is not known without a rate, but where it ends is.
    assert_eq!(serve(60.0, None).unwrap().heat.wait, None);
    for rate in [known, None] {
        let Err(Error::Infeasible { limit: Limit::Surroundings, nearest, .. }) = serve(15.0, rate)
        else {
            panic!("{rate:?}")
        };
        assert!(nearest > 15.0 && serve(nearest, rate).is_ok());
        let Err(Error::Infeasible { limit: Limit::HeatLeft, nearest, .. }) = serve(95.0, rate)
        else {
            panic!("{rate:?}")
        };
        assert_eq!(nearest, in_cup.celsius());
    }
    // It is as hot as it is handed over: without a wait as hot as it is made.
    let very_hot = |recipe: &Recipe| recipe.cautions.contains(Caution::VeryHotDrink);
    assert!(very_hot(&as_made) && !very_hot(&at_sixty));
    assert!(very_hot(&serve(60.0, None).unwrap()));
}

// ---- Drinks and batches -------------------------------------------------------------------------

#[test]
fn servings_share_their_batches() {
    let brewer = Brewer {
        chamber: Some(Chamber { volume: value(200.0), displacement: value(0.8) }),
        ..brewer()
    };
    let wish = Wish {
        servings: value(7.0),
        brew_strength: Some(value(2.6)),
        window: Some(window(Counting::NotStated)),
        ..wish()
    };
    let recipe = recipe(&wish, &brewer).unwrap();
    let batches = recipe.batches.count();
    assert!(batches > 2.0 && batches != 7.0, "{batches}");
    let total = 7.0 * recipe.brew_per_cup.grams();
    assert_relative_eq!(recipe.beverage.grams() * batches, total, max_relative = 1e-12);
    let caffeine = 11.0 * recipe.dose.grams() * batches / 7.0;
    assert_relative_eq!(recipe.caffeine.unwrap().milligrams(), caffeine, max_relative = 1e-12);
    let density = water::density(wish.brew_temperature).kilograms_per_cubic_metre();
    let fill = recipe.water.grams() * 1000.0 / density + 0.8 * recipe.dose.grams();
    assert_relative_eq!(recipe.fill.unwrap().millilitres(), fill, max_relative = 1e-12);
    // One batch fewer would not go in.
    assert!(fill <= 200.0 && fill * batches / (batches - 1.0) > 200.0, "{fill} of {batches}");

    let edges = recipe.tolerances.unwrap();
    let drink =
        |dose, water| brewed(&wish, &brewer, &coffee(), &kitchen(), &recipe, dose, water).unwrap();
    let (weakest, strongest) = (1.15, 1.45);
    let dose_from = drink(edges.dose_from.unwrap(), recipe.water);
    let dose_to = drink(edges.dose_to.unwrap(), recipe.water);
    assert_relative_eq!(dose_from, weakest, max_relative = 1e-9);
    assert_relative_eq!(dose_to, strongest, max_relative = 1e-9);
}

/// In a chamber that the recipe all but fills, and without one; strong and weak, with and without an addition; in
/// a narrow window, and in one that no brew is too strong for.
#[test]
fn tolerances_end_at_the_window_the_chamber_or_the_densest_brew() {
    for (held, vapour) in [(0.0, 0.0), (50.0, 15.0), (100.0, 1.5)] {
        for brew_strength in [None, Some(2.0), Some(12.0)] {
            for strength in [1.1, 1.3, 1.5] {
                for strongest in [1.5, 49.0] {
                    let base = brewer();
                    let losses = Losses { vapour: value(vapour), ..base.losses };
                    let open = Brewer { held_strength: value(held), losses, ..base };
                    let wish = Wish {
                        strength: value(strength),
                        brew_strength: brew_strength.map(value),
                        window: Some(Window {
                            strength: Band::new(value(1.1), value(strongest)).unwrap(),
                            extracted: None,
                            counting: Counting::NotStated,
                        }),
                        ..wish()
                    };
                    tolerances_in_chambers(&wish, &open);
                }
            }
        }
    }
}

fn tolerances_in_chambers(wish: &Wish, open: &Brewer) {
    let Ok(planned) = recipe(wish, open) else { return };
    tolerances_hold(wish, open, &coffee(), &kitchen());
    let density = water::density(wish.brew_temperature).kilograms_per_cubic_metre();
    let fill = planned.water.grams() * 1000.0 / density + 0.8 * planned.dose.grams();
    for room in [1.0, 1.001, 1.05, 3.0] {
        let volume = value(fill * room * (1.0 + 1e-12));
        let chamber = Some(Chamber { volume, displacement: value(0.8) });
        tolerances_hold(wish, &Brewer { chamber, ..*open }, &coffee(), &kitchen());
    }
}

#[test]
fn a_window_counts_the_yield_as_it_says() {
    let standing = |counting| {
        let wish = Wish { window: Some(window(counting)), ..wish() };
        recipe(&wish, &brewer()).unwrap()
    };
    let by_balance = standing(Counting::MassBalance).standing.unwrap().extracted.unwrap();
    assert_abs_diff_eq!(by_balance.above_lowest, 2.0, epsilon = 1e-12);
    let flowing = standing(Counting::FlowThrough);
    let counted =
        extraction::flow_through_yield(flowing.brew_strength, flowing.beverage, flowing.dose);
    let place = flowing.standing.unwrap().extracted.unwrap();
    let above = counted.unwrap().percent() - 18.0;
    assert_abs_diff_eq!(place.above_lowest, above, epsilon = 1e-9);
    assert!(standing(Counting::NotStated).standing.unwrap().extracted.is_none());
}

#[test]
fn a_brew_no_stronger_than_its_water_is_refused() {
    let own = 100.0 * kitchen().water_solids.fraction();
    let brew = |strength: f64| recipe(&Wish { strength: value(strength), ..wish() }, &brewer());
    for strength in [0.5 * own, own] {
        let Err(Error::Impossible { quantity: Quantity::Strength, value, lowest, .. }) =
            brew(strength)
        else {
            panic!("{strength}")
        };
        assert_eq!((value, lowest), (strength, own.next_up()));
    }
    assert!(!matches!(brew(2.0 * own), Err(Error::Impossible { .. })));
}

#[test]
fn the_largest_cup_fills_the_chamber_of_every_batch_allowed() {
    let chamber = Chamber { volume: value(200.0), displacement: value(0.8) };
    let brewer = Brewer { chamber: Some(chamber), ..brewer() };
    for brew_strength in [None, Some(value(2.6))] {
        let needed = Wish { servings: value(7.0), brew_strength, ..wish() };
        let batches = recipe(&needed, &brewer).unwrap().batches;
        let allowed = |most: f64, cup: Beverage| {
            let most_batches = Some(value(most));
            recipe(&Wish { most_batches, cup, ..needed }, &brewer)
        };
        assert_eq!(allowed(batches.count(), needed.cup).unwrap().batches, batches);
        // Each of three would be larger than the chamber, whatever its dose.
        for most in [1.0, 3.0] {
            let refused = allowed(most, needed.cup);
            let Err(Error::Infeasible { limit: Limit::Chamber, nearest, value: cup, .. }) = refused
            else {
                panic!("{most}: {refused:?}")
            };
            assert_eq!(cup, needed.cup.grams());
            let full = allowed(most, value(nearest)).unwrap();
            assert_eq!(full.batches.count(), most);
            assert_relative_eq!(full.fill.unwrap().millilitres(), 200.0, max_relative = 1e-8);
        }
    }
}

/// Whether one of so many equal batches can be brewed at a strength: with the highest dose that its
/// beverage allows and that goes into the chamber beside its water, it is as strong.
fn can_be(strength: f64, batches: f64, wish: &Wish, brewer: &Brewer, kitchen: &Kitchen) -> bool {
    let solids = kitchen.water_solids;
    let wanted: Strength = value(strength);
    let drink = if wish.brew_strength.is_some() { wish.strength } else { wanted };
    let Ok(portion) = dilution::brew_for_drink(wish.cup, wanted, drink, solids) else {
        return false;
    };
    let part = portion.grams() * wish.servings.count() / batches;
    let losses = brewer.losses;
    let mut most = part / Quantity::BeverageRatio.lowest();
    if let Some(Chamber { volume, displacement }) = brewer.chamber {
        let specific = 1000.0 / water::density(wish.brew_temperature).kilograms_per_cubic_metre();
        let room = volume.millilitres() - specific * (part + 4.0 + losses.vapour.grams());
        let per_dose =
            specific * losses.retention.grams_per_gram() + displacement.millilitres_per_gram();
        if room < 0.0 {
            return false;
        }
        most = most.min(room / per_dose);
    }
    let (Ok(dose), Ok(beverage)) = (Dose::new(most), Beverage::new(part)) else { return false };
    let water = retention::water_for_beverage(&losses, dose, beverage).unwrap();
    let brew = Brew {
        dose,
        water,
        beverage,
        moisture: coffee().moisture,
        water_solids: solids,
        vapour: losses.vapour,
        held_strength: brewer.held_strength,
    };
    extraction::strength(&brew, coffee().expected).is_ok_and(|most| most.percent() >= strength)
}

#[test]
fn the_strongest_brew_is_the_strongest_of_any_number_of_batches() {
    let mut looked_at = 0;
    for held in [0.0, 40.0, 100.0] {
        for (retention, displacement) in [(1.5, 0.8), (0.0, 0.9), (1.5, 0.0), (0.0, 0.0)] {
            for volume in [None, Some(90.0), Some(200.0), Some(450.0)] {
                for brew_strength in [None, Some(value(50.0))] {
                    // More batches than one boil off more water, which leaves more minerals: no brew is
                    // planned for those.
                    for (most, vapour, solids, servings) in [
                        (1.0, 1.5, 400.0, 2.0),
                        (3.0, 0.0, 400.0, 2.0),
                        (8.0, 20.0, 0.0, 2.0),
                        (1.0, 0.0, 0.0, 8.0),
                        (2.0, 0.0, 300.0, 5.0),
                    ] {
                        let base = brewer();
                        let brewer = Brewer {
                            held_strength: value(held),
                            losses: Losses {
                                retention: value(retention),
                                vapour: value(vapour),
                                ..base.losses
                            },
                            chamber: volume.map(|volume| Chamber {
                                volume: value(volume),
                                displacement: value(displacement),
                            }),
                            ..base
                        };
                        let strength = if brew_strength.is_some() { 1.3 } else { 50.0 };
                        let wish = Wish {
                            strength: value(strength),
                            brew_strength,
                            servings: value(servings),
                            most_batches: Some(value(most)),
                            ..wish()
                        };
                        looked_at += usize::from(strongest(&wish, &brewer, value(solids)));
                    }
                }
            }
        }
    }
    assert!(looked_at > 350, "{looked_at}");
}

/// Holds the strongest brew that a refusal names against every number of batches allowed.
fn strongest(wish: &Wish, brewer: &Brewer, water_solids: WaterSolids) -> bool {
    let kitchen = Kitchen { water_solids, ..kitchen() };
    let refused = plan::recipe(wish, brewer, &coffee(), &kitchen);
    let Err(Error::Infeasible { limit: Limit::CoffeeGivesNoMore, nearest, .. }) = refused else {
        panic!("{refused:?}: {wish:?} {brewer:?}")
    };
    let most = wish.most_batches.unwrap().count() as u32;
    let can = |strength: f64, up_to: u32| {
        (1..=up_to).any(|n| can_be(strength, f64::from(n), wish, brewer, &kitchen))
    };
    // Where no number allowed will do, over all numbers: the cup is refused next.
    let up_to = if can(nearest, most) { most } else { 1000 };
    if up_to > 1 && water_solids.fraction() * brewer.losses.vapour.grams() > 0.0 {
        return false;
    }
    assert!(can(nearest, up_to), "{nearest}: {wish:?} {brewer:?}");
    for more in [1.0 + 1e-6, 1.001, 1.1, 2.0, 4.0] {
        let stronger = nearest * more;
        assert!(
            stronger > 50.0 || !can(stronger, most.max(up_to)),
            "{stronger} and not {nearest}: {wish:?} {brewer:?}"
        );
    }
    true
}

#[test]
fn a_chamber_filled_by_what_stays_in_it_is_refused_with_the_least_that_is_not() {
    let base = brewer();
    let filled = |volume: f64| Brewer {
        losses: Losses { hold_up: value(200.0), ..base.losses },
        chamber: Some(Chamber { volume: value(volume), displacement: value(0.8) }),
        ..base
    };
    for brew_strength in [None, Some(value(2.0))] {
        let wish = Wish { brew_strength, ..wish() };
        let Err(Error::Impossible { quantity, value: told, lowest, beside, .. }) =
            recipe(&wish, &filled(150.0))
        else {
            panic!("{brew_strength:?}")
        };
        assert_eq!((quantity, told, beside), (Quantity::Volume, 150.0, Quantity::HoldUp));
        let density = water::density(wish.brew_temperature).kilograms_per_cubic_metre();
        let least = (200.0 + 1.0 + 1.5 + 0.1 + 0.1 * 1.5) * 1000.0 / density + 0.1 * 0.8;
        assert_relative_eq!(lowest, least, max_relative = 1e-12);
    }
}

// ---- Whose fault it is --------------------------------------------------------------------------

#[test]
fn an_error_names_the_field_of_the_wish_that_it_is_about() {
    let infeasible =
        |limit| Error::Infeasible { wish: Quantity::Strength, value: 2.0, nearest: 1.0, limit };
    let impossible = |quantity| Error::Impossible {
        quantity,
        value: 2.0,
        lowest: 3.0,
        highest: 4.0,
        beside: Quantity::WaterSolids,
    };
    let out_of_range =
        |quantity| Error::OutOfRange { quantity, value: 2.0, lowest: 3.0, highest: 4.0 };
    let alone = wish();
    let diluted = Wish { brew_strength: Some(value(2.0)), ..alone };
    for (error, of_alone, of_diluted) in [
        (infeasible(Limit::BoilingPoint), Some("brew_c"), Some("brew_c")),
        (infeasible(Limit::HeatLeft), Some("serve_c"), Some("serve_c")),
        (infeasible(Limit::Surroundings), Some("serve_c"), Some("serve_c")),
        (infeasible(Limit::Chamber), Some("cup_g"), Some("cup_g")),
        (infeasible(Limit::CoffeeGivesNoMore), Some("strength_pct"), Some("brew_strength_pct")),
        (infeasible(Limit::AddingWaterWeakens), Some("strength_pct"), Some("strength_pct")),
        (infeasible(Limit::NoWaterIsEnough), Some("strength_pct"), Some("strength_pct")),
        (out_of_range(Quantity::Strength), Some("strength_pct"), Some("strength_pct")),
        (out_of_range(Quantity::Dose), None, None),
        (impossible(Quantity::Strength), Some("strength_pct"), Some("brew_strength_pct")),
        (impossible(Quantity::Volume), None, None),
    ] {
        assert_eq!(alone.field_of(&error), of_alone, "{error}");
        assert_eq!(diluted.field_of(&error), of_diluted, "{error}");
    }
}

// ---- The surest recipe --------------------------------------------------------------------------

fn straying() -> Straying {
    Straying {
        dose: Standard::known(value(0.2)),
        water: Standard::known(value(3.0)),
        extracted: Standard::known(value(0.6)),
        retention: Standard::known(value(0.1)),
        other: Standard::known(value(1.0)),
    }
}

/// Very hard water, which brings its own strength into the drink.
#[test]
fn the_surest_of_a_window_is_the_likeliest_of_all_its_strengths() {
    let kitchen = Kitchen { water_solids: value(1500.0), ..kitchen() };
    for brew_strength in [None, Some(value(3.0))] {
        let foreseen = |strength: f64| {
            let window = Window {
                strength: Band::new(value(1.2), value(1.36)).unwrap(),
                extracted: None,
                counting: Counting::NotStated,
            };
            let wish =
                Wish { strength: value(strength), brew_strength, window: Some(window), ..wish() };
            let (brewer, coffee, straying) = (brewer(), coffee(), straying());
            let foreseen = plan::foreseen(&wish, &brewer, &coffee, &kitchen, &straying).unwrap();
            let surest = plan::surest(&wish, &brewer, &coffee, &kitchen, &straying).unwrap();
            (foreseen.outlook.unwrap().inside.percent(), surest)
        };
        let all = (0..=160).map(|step| 1.2 + 0.001 * f64::from(step));
        let (mut best, mut at) = (0.0, 0.0);
        for strength in all {
            let (chance, _) = foreseen(strength);
            if chance > best {
                (best, at) = (chance, strength);
            }
        }
        for wished in [1.2, 1.21, 1.355] {
            let (chance, surest) = foreseen(wished);
            assert_abs_diff_eq!(surest.recipe.strength.percent(), at, epsilon = 0.004);
            let gained = surest.outlook.unwrap().inside.percent();
            assert!(gained > best - 0.05 && gained > chance + 1.0, "{gained} of {best}");
        }
        // Less than a point of chance is not worth another wish.
        let (_, left) = foreseen(at + 0.002);
        assert_eq!(left.recipe.strength.percent(), at + 0.002);
    }
}
