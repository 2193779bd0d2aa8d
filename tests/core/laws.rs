//! What must always hold: mass and heat are conserved, inverses invert, more water is never stronger.

use approx::{assert_abs_diff_eq, assert_relative_eq};
use cupwright::calibrate::{self, Drained, Quality, Thermometer, Timed};
use cupwright::extraction::{self, Brew, Credibility, Kinetics};
use cupwright::heat::{self, Body, Cover, Surroundings};
use cupwright::quantity::*;
use cupwright::ratio::{self, Chamber};
use cupwright::retention::{self, Losses, Paper};
use cupwright::{dilution, reading, water};
use proptest::prelude::*;

use crate::some;

prop_compose! {
    /// A brew whose beverage is between a fifth of the water and all but the grounds' share.
    fn brews()(
        dose in 5.0..60.0_f64,
        water_ratio in 3.0..25.0_f64,
        beverage_share in 0.2..0.85_f64,
        moisture in some(0.0, 6.0),
        water_solids in some(0.0, 400.0),
        vapour in some(0.0, 4.0),
        held_strength in some(0.0, 100.0),
    ) -> Brew {
        Brew {
            dose: Dose::from_grams(dose).unwrap(),
            water: BrewWater::from_grams(dose * water_ratio).unwrap(),
            beverage: Beverage::from_grams(dose * water_ratio * beverage_share).unwrap(),
            moisture, water_solids, vapour, held_strength,
        }
    }
}

prop_compose! {
    fn losses_of_a_brewer()(
        retention in some(0.2, 3.0),
        hold_up in some(0.0, 10.0),
        mass in some(0.0, 3.0),
        uptake in some(0.0, 4.0),
        drips in some(0.0, 5.0),
        vapour in some(0.0, 5.0),
    ) -> Losses {
        Losses { retention, hold_up, paper: Paper::Dry { mass, uptake }, drips, vapour }
    }
}

prop_compose! {
    fn rooms()(room in some(-20.0, 40.0), humidity in some(0.0, 100.0), open: bool) -> Surroundings {
        Surroundings { room, humidity, cover: if open { Cover::Open } else { Cover::Lidded } }
    }
}

fn bodies() -> impl Strategy<Value = Vec<Body>> {
    let body = (some(0.0, 400.0), some(-10.0, 95.0))
        .prop_map(|(heat_capacity, temperature)| Body { heat_capacity, temperature });
    prop::collection::vec(body, 0..4)
}

proptest! {
    // ---- Mass -------------------------------------------------------------------------------------

    #[test]
    fn solids_and_water_are_conserved(brew in brews(), extracted in some::<Yield>(5.0, 30.0)) {
        let strength = extraction::strength(&brew, extracted).unwrap();
        let kept = extraction::retained_liquid(&brew, extracted).unwrap().grams();
        let (d, w, b) = (brew.dose.grams(), brew.water.grams(), brew.beverage.grams());
        let (t, s) = (strength.fraction(), brew.water_solids.fraction());
        let in_kept = s + brew.held_strength.fraction() * (t - s);
        // Solids: from coffee and water, into beverage and kept liquid.
        assert_relative_eq!(
            extracted.fraction() * d + s * w,
            t * b + in_kept * kept,
            max_relative = 1e-12
        );
        // Everything: water and beans in; beverage, wet grounds and vapour out.
        let grounds = d * (1.0 - brew.moisture.fraction() - extracted.fraction());
        assert_relative_eq!(w + d, b + kept + grounds + brew.vapour.grams(), max_relative = 1e-12);
    }

    #[test]
    fn yield_and_strength_invert(brew in brews(), extracted in some::<Yield>(5.0, 30.0)) {
        let strength = extraction::strength(&brew, extracted).unwrap();
        let back = extraction::extraction_yield(&brew, strength).unwrap();
        assert_relative_eq!(back.percent(), extracted.percent(), max_relative = 1e-12);
    }

    #[test]
    fn the_beverage_comes_back(brew in brews(), extracted in some::<Yield>(5.0, 30.0)) {
        // Near φ = 1 the strength says little of the beverage: digits are lost as 1/(1 − φ).
        prop_assume!(brew.held_strength.percent() <= 90.0);
        let strength = extraction::strength(&brew, extracted).unwrap();
        let back = extraction::beverage(&brew, strength, extracted).unwrap();
        assert_relative_eq!(back.grams(), brew.beverage.grams(), max_relative = 1e-9);
    }

    #[test]
    fn the_trade_forms_are_the_ends_of_the_balance(
        brew in brews(), strength in some::<Strength>(0.5, 2.0)
    ) {
        let plain = Brew {
            moisture: Moisture::from_percent(0.0).unwrap(),
            water_solids: WaterSolids::NONE,
            vapour: Vapour::NONE,
            ..brew
        };
        let at = |held_strength| {
            extraction::extraction_yield(&Brew { held_strength, ..plain }, strength).map(Yield::percent)
        };
        let through = extraction::flow_through_yield(strength, brew.beverage, brew.dose);
        if let (Ok(a), Ok(b)) = (at(HeldStrength::FLOWED_THROUGH), through) {
            assert_relative_eq!(a, b.percent(), max_relative = 1e-12);
        }
        let steeped = extraction::steeped_yield(strength, brew.water, brew.dose);
        if let (Ok(a), Ok(b)) = (at(HeldStrength::STEEPED), steeped) {
            assert_relative_eq!(a, b.percent(), max_relative = 1e-12);
            let ratio = ratio::water_ratio(brew.dose, brew.water).unwrap();
            let back = extraction::steeped_strength(b, ratio).unwrap();
            assert_relative_eq!(back.percent(), strength.percent(), max_relative = 1e-12);
            let again = extraction::steeped_ratio(b, strength).unwrap();
            assert_relative_eq!(again.grams_per_gram(), ratio.grams_per_gram(), max_relative = 1e-12);
        }
    }

    #[test]
    fn a_stronger_cup_means_a_higher_yield_and_more_water_a_weaker_cup(
        brew in brews(), extracted in some::<Yield>(5.0, 30.0), more in 1.0..200.0_f64
    ) {
        let strength = extraction::strength(&brew, extracted).unwrap();
        let higher = Yield::from_percent(extracted.percent() + 0.01).unwrap();
        prop_assert!(extraction::strength(&brew, higher).unwrap() > strength);
        // The added water reaches the cup.
        let watered = Brew {
            water: BrewWater::from_grams(brew.water.grams() + more).unwrap(),
            beverage: Beverage::from_grams(brew.beverage.grams() + more).unwrap(),
            ..brew
        };
        prop_assert!(extraction::strength(&watered, extracted).unwrap() < strength);
    }

    #[test]
    fn a_doubt_settles_the_yield(brew in brews(), strength in some::<Strength>(0.5, 12.0)) {
        let Ok(judged) = extraction::plausibility(&brew, strength) else { return Ok(()) };
        let Some([t, w, d, held]) = judged.doubts else {
            prop_assert!(judged.credibility == Credibility::Ordinary);
            return Ok(());
        };
        prop_assert!(judged.extracted.percent() > 26.0);
        let mended = [
            t.would_have_to_be.map(|v| (brew, Strength::from_percent(v).unwrap())),
            w.would_have_to_be
                .map(|v| (Brew { water: BrewWater::from_grams(v).unwrap(), ..brew }, strength)),
            d.would_have_to_be.map(|v| (Brew { dose: Dose::from_grams(v).unwrap(), ..brew }, strength)),
            held.would_have_to_be.map(|v| {
                (Brew { held_strength: HeldStrength::from_percent(v).unwrap(), ..brew }, strength)
            }),
        ];
        for (mended, strength) in mended.into_iter().flatten() {
            let e = extraction::extraction_yield(&mended, strength).unwrap();
            assert_relative_eq!(e.percent(), 26.0, max_relative = 1e-9);
        }
    }

    #[test]
    fn bases_invert(extracted in some::<Yield>(0.0, 80.0), moisture in some::<Moisture>(0.0, 15.0)) {
        let dry = extraction::dry_basis_yield(extracted, moisture).unwrap();
        let back = extraction::as_weighed_yield(dry, moisture);
        assert_relative_eq!(back.percent(), extracted.percent(), max_relative = 1e-14);
    }

    #[test]
    fn extraction_rises_with_time_and_inverts(
        equilibrium in some::<Yield>(10.0, 30.0),
        fast_share in some::<Share>(0.0, 100.0),
        fast in some::<TimeConstant>(1.0, 60.0),
        slow in some::<TimeConstant>(30.0, 3000.0),
        contact in some::<Time>(0.0, 1000.0),
    ) {
        let kinetics = Kinetics { equilibrium, fast_share, fast, slow };
        let extracted = extraction::yield_at_time(&kinetics, contact);
        let later = Time::from_seconds(contact.seconds() + 1.0).unwrap();
        prop_assert!(extraction::yield_at_time(&kinetics, later) >= extracted);
        // Close to the equilibrium the yield no longer tells the time.
        prop_assume!(extracted.percent() < 0.99 * equilibrium.percent());
        let back = extraction::time_for_yield(&kinetics, extracted).unwrap();
        assert_abs_diff_eq!(back.seconds(), contact.seconds(), epsilon = 1e-8);
    }

    // ---- Ratios, retention ------------------------------------------------------------------------

    #[test]
    fn ratios_invert(
        dose in some::<Dose>(1.0, 100.0),
        ratio in some::<WaterRatio>(1.0, 30.0),
        celsius in some::<Temperature>(0.0, 100.0),
    ) {
        let water = ratio::water_for_ratio(dose, ratio).unwrap();
        let again = ratio::water_ratio(dose, water).unwrap();
        assert_relative_eq!(again.grams_per_gram(), ratio.grams_per_gram(), max_relative = 1e-15);
        let back = ratio::dose_for_water(water, ratio).unwrap();
        assert_relative_eq!(back.grams(), dose.grams(), max_relative = 1e-15);

        let beverages = BeverageRatio::from_grams_per_gram(ratio.grams_per_gram()).unwrap();
        let beverage = ratio::beverage_for_ratio(dose, beverages).unwrap();
        let again = ratio::beverage_ratio(dose, beverage).unwrap();
        assert_relative_eq!(again.grams_per_gram(), ratio.grams_per_gram(), max_relative = 1e-15);
        let back = ratio::dose_for_beverage(beverage, beverages).unwrap();
        assert_relative_eq!(back.grams(), dose.grams(), max_relative = 1e-15);

        let per_litre = ratio::dose_per_litre(ratio, celsius).unwrap();
        let again = ratio::ratio_of_dose_per_litre(per_litre, celsius).unwrap();
        assert_relative_eq!(again.grams_per_gram(), ratio.grams_per_gram(), max_relative = 1e-15);

        let volume = ratio::water_volume(water, celsius).unwrap();
        let back = ratio::water_mass(volume, celsius).unwrap();
        assert_relative_eq!(back.grams(), water.grams(), max_relative = 1e-15);
    }

    #[test]
    fn batches_fit_and_one_fewer_does_not(
        dose in some::<Dose>(10.0, 200.0),
        ratio in some::<WaterRatio>(2.0, 20.0),
        celsius in some::<Temperature>(80.0, 100.0),
        volume in some::<Volume>(150.0, 600.0),
        displacement in some::<Displacement>(0.0, 1.5),
    ) {
        let chamber = Chamber { volume, displacement };
        let water = ratio::water_for_ratio(dose, ratio).unwrap();
        let split = ratio::batches(dose, water, celsius, &chamber).unwrap();
        let n = split.batches.count();
        assert_relative_eq!(split.dose.grams() * n, dose.grams(), max_relative = 1e-14);
        assert_relative_eq!(split.water.grams() * n, water.grams(), max_relative = 1e-14);
        prop_assert!(split.fill.millilitres() <= volume.millilitres() * (1.0 + 1e-9));
        if n > 1.0 {
            prop_assert!(split.fill.millilitres() * n / (n - 1.0) > volume.millilitres());
        }
        let largest = ratio::largest_dose(ratio, celsius, &chamber).unwrap();
        prop_assert!((dose <= largest) == (n == 1.0));
        let full = ratio::water_for_ratio(largest, ratio).unwrap();
        let one = ratio::batches(largest, full, celsius, &chamber).unwrap();
        prop_assert_eq!(one.batches.count(), 1.0);
        assert_relative_eq!(
            one.fill.millilitres(), volume.millilitres(), max_relative = 1e-14
        );
    }

    #[test]
    fn retention_inverts(
        losses in losses_of_a_brewer(),
        dose in some::<Dose>(5.0, 60.0),
        water in some::<BrewWater>(300.0, 900.0),
        extracted in some::<Yield>(10.0, 25.0),
        moisture in some::<Moisture>(0.0, 5.0),
    ) {
        let beverage = retention::beverage(&losses, dose, water).unwrap();
        let back = retention::water_for_beverage(&losses, dose, beverage).unwrap();
        assert_relative_eq!(back.grams(), water.grams(), max_relative = 1e-13);
        let back = retention::dose_for_beverage(&losses, water, beverage).unwrap();
        assert_relative_eq!(back.grams(), dose.grams(), max_relative = 1e-11);
        let back = retention::retention_of_brew(&losses, dose, water, beverage).unwrap();
        assert_abs_diff_eq!(
            back.grams_per_gram(), losses.retention.grams_per_gram(), epsilon = 1e-11
        );
        let held =
            retention::true_retention(losses.retention, extracted, moisture, losses.vapour, dose);
        if let Ok(held) = held {
            let back = retention::apparent_of_true_retention(
                held, extracted, moisture, losses.vapour, dose).unwrap();
            assert_abs_diff_eq!(
                back.grams_per_gram(), losses.retention.grams_per_gram(), epsilon = 1e-14
            );
        }
    }

    #[test]
    fn a_rinsed_paper_takes_nothing(
        losses in losses_of_a_brewer(),
        dose in some::<Dose>(5.0, 60.0),
        water in some::<BrewWater>(300.0, 900.0),
    ) {
        let with = |paper| retention::beverage(&Losses { paper, ..losses }, dose, water).unwrap();
        prop_assert_eq!(with(Paper::Rinsed), with(Paper::None));
        prop_assert!(with(losses.paper) <= with(Paper::Rinsed));
    }

    // ---- Dilution ---------------------------------------------------------------------------------

    #[test]
    fn dilution_inverts_and_never_strengthens(
        beverage in some::<Beverage>(20.0, 500.0),
        strength in some::<Strength>(1.0, 12.0),
        added in some::<Addition>(0.0, 500.0),
        solids in some::<WaterSolids>(0.0, 400.0),
    ) {
        let after = dilution::strength_after_water(beverage, strength, added, solids).unwrap();
        prop_assert!(after <= strength);
        let back = dilution::water_to_reach(beverage, strength, after, solids).unwrap();
        assert_abs_diff_eq!(back.grams(), added.grams(), epsilon = 1e-9);
        let drink = dilution::drink_of_brew(beverage, strength, after, solids).unwrap();
        assert_relative_eq!(
            drink.grams(), beverage.grams() + added.grams(), max_relative = 1e-11
        );
        let brew = dilution::brew_for_drink(drink, strength, after, solids).unwrap();
        assert_relative_eq!(brew.grams(), beverage.grams(), max_relative = 1e-11);
    }

    #[test]
    fn a_split_loses_nothing(
        beverage in some::<Beverage>(100.0, 500.0),
        strength in some::<Strength>(1.5, 12.0),
        wanted in some::<Strength>(1.0, 1.5),
        cup in some::<Beverage>(50.0, 150.0),
        cups in 1..8_u32,
        solids in some::<WaterSolids>(0.0, 400.0),
    ) {
        let cups = Servings::from_count(f64::from(cups)).unwrap();
        match dilution::split(beverage, strength, cups, cup, wanted, solids) {
            Ok(split) => {
                let used = split.brew.grams() * cups.count() + split.rest.grams();
                assert_relative_eq!(used, beverage.grams(), max_relative = 1e-12);
                assert_relative_eq!(
                    split.brew.grams() + split.added.grams(), cup.grams(), max_relative = 1e-12
                );
                let got =
                    dilution::strength_after_water(split.brew, strength, split.added, solids).unwrap();
                assert_relative_eq!(got.percent(), wanted.percent(), max_relative = 1e-11);
            }
            Err(cupwright::Error::Infeasible { nearest, .. }) => {
                prop_assert!(nearest < cup.grams());
                let smaller = Beverage::from_grams(nearest).unwrap();
                prop_assert!(
                    dilution::split(beverage, strength, cups, smaller, wanted, solids).is_ok()
                );
            }
            Err(other) => prop_assert!(false, "{other}"),
        }
    }

    #[test]
    fn ice_conserves_heat_and_inverts(
        beverage in some::<Beverage>(50.0, 400.0),
        celsius in some::<Temperature>(20.0, 95.0),
        strength in some::<Strength>(1.0, 6.0),
        ice in some::<Ice>(0.0, 300.0),
        cold in some::<IceTemperature>(-20.0, 0.0),
    ) {
        let drink = match dilution::iced(beverage, celsius, strength, ice, cold) {
            Ok(drink) => drink,
            Err(cupwright::Error::Infeasible { nearest, .. }) => {
                prop_assert!(nearest < ice.grams());
                let less = Ice::from_grams(nearest).unwrap();
                prop_assert!(dilution::iced(beverage, celsius, strength, less, cold).is_ok());
                return Ok(());
            }
            Err(other) => return Err(TestCaseError::fail(other.to_string())),
        };
        assert_relative_eq!(
            drink.melted.grams() + drink.left.grams(), ice.grams(), max_relative = 1e-12
        );
        // Solids stay.
        let liquid = beverage.grams() + drink.melted.grams();
        assert_relative_eq!(
            drink.strength.percent() * liquid,
            strength.percent() * beverage.grams(),
            max_relative = 1e-12
        );
        // Heat: what the brew gave is what warming and melting took.
        let t = cold.celsius();
        let warming = ice.grams() * -t * (2.0967 + 0.00735 * t / 2.0);
        let before = beverage.grams() * water::enthalpy(celsius).joules_per_gram();
        let after = liquid * water::enthalpy(drink.temperature).joules_per_gram();
        assert_abs_diff_eq!(
            before, after + warming + drink.melted.grams() * 333.4265, epsilon = 1e-9 * before
        );
        if drink.left.grams() == 0.0 && ice.grams() > 0.0 {
            let back =
                dilution::ice_to_reach(beverage, celsius, drink.temperature, cold).unwrap();
            assert_abs_diff_eq!(back.grams(), ice.grams(), epsilon = 1e-8);
        }
    }

    // ---- Heat -------------------------------------------------------------------------------------

    #[test]
    fn what_is_equally_warm_stays_so(
        celsius in prop_oneof![Just(0.0), Just(105.0), 0.0..=105.0_f64],
        liquid in some::<Liquid>(0.1, 5_000.0),
        added in some::<Addition>(0.0, 5_000.0),
        capacity in some::<HeatCapacity>(0.0, 5_000.0),
    ) {
        let water: Temperature = crate::value(celsius);
        let body = Body { heat_capacity: capacity, temperature: crate::value(celsius) };
        for same in [
            dilution::mixed_temperature(liquid, water, added, water),
            dilution::mixed_with_milk_temperature(liquid, water, added, water),
            heat::settle(liquid, water, &[body]),
            heat::before_settling(liquid, water, &[body]),
        ] {
            assert_abs_diff_eq!(same.unwrap().celsius(), celsius, epsilon = 1e-9);
        }
    }

    #[test]
    fn settling_conserves_heat_and_inverts(
        liquid in some::<Liquid>(50.0, 1000.0),
        celsius in some::<Temperature>(60.0, 100.0),
        bodies in bodies(),
    ) {
        let settled = heat::settle(liquid, celsius, &bodies).unwrap();
        let m = liquid.grams();
        let heat = |t: Temperature| m * water::enthalpy(t).joules_per_gram();
        let taken: f64 = bodies
            .iter()
            .map(|b| {
                b.heat_capacity.joules_per_kelvin() * (settled.celsius() - b.temperature.celsius())
            })
            .sum();
        assert_abs_diff_eq!(heat(celsius) - heat(settled), taken, epsilon = 1e-8 * heat(celsius));
        let back = heat::before_settling(liquid, settled, &bodies).unwrap();
        assert_abs_diff_eq!(back.celsius(), celsius.celsius(), epsilon = 1e-9);
    }

    #[test]
    fn a_vessel_is_found_from_one_reading(
        liquid in some::<Liquid>(50.0, 1000.0),
        celsius in some::<Temperature>(60.0, 100.0),
        capacity in some::<HeatCapacity>(20.0, 500.0),
        vessel in some::<VesselTemperature>(0.0, 40.0),
        others in bodies(),
    ) {
        let body = Body { heat_capacity: capacity, temperature: vessel };
        let all: Vec<_> = others.iter().copied().chain([body]).collect();
        let settled = heat::settle(liquid, celsius, &all).unwrap();
        // Near the vessel's own temperature it gave or took too little to tell.
        prop_assume!((settled.celsius() - vessel.celsius()).abs() > 1.0);
        let found =
            heat::vessel_heat_capacity(liquid, celsius, settled, vessel, &others).unwrap();
        assert_relative_eq!(
            found.joules_per_kelvin(), capacity.joules_per_kelvin(), max_relative = 1e-6
        );
    }

    #[test]
    fn every_nearest_is_feasible(
        celsius in some::<Temperature>(30.0, 100.0),
        to in some::<Temperature>(0.0, 105.0),
        room in rooms(),
        strength in some::<Strength>(1.0, 6.0),
        wanted in some::<Strength>(0.0, 7.0),
        solids in some::<WaterSolids>(0.0, 5000.0),
        fast_share in some::<Share>(0.0, 100.0),
        slow in some::<TimeConstant>(30.0, 300_000.0),
        extracted in some::<Yield>(0.0, 30.0),
    ) {
        use cupwright::Error::Infeasible;
        let rate = CoolingRate::from_per_minute(0.3).unwrap();
        if let Err(Infeasible { nearest, .. }) = heat::time_to_cool(celsius, to, rate, &room)
            && let Ok(nearest) = Temperature::from_celsius(nearest)
        {
            prop_assert!(heat::time_to_cool(celsius, nearest, rate, &room).is_ok());
        }
        let beverage = Beverage::from_grams(170.0).unwrap();
        if let Err(Infeasible { nearest, .. }) =
            dilution::water_to_reach(beverage, strength, wanted, solids)
        {
            let nearest = Strength::from_percent(nearest).unwrap();
            prop_assert!(dilution::water_to_reach(beverage, strength, nearest, solids).is_ok());
        }
        if let Err(Infeasible { nearest, .. }) =
            dilution::brew_for_drink(beverage, strength, wanted, solids)
        {
            let nearest = Strength::from_percent(nearest).unwrap();
            prop_assert!(dilution::brew_for_drink(beverage, strength, nearest, solids).is_ok());
        }
        let kinetics = Kinetics {
            equilibrium: Yield::from_percent(21.0).unwrap(),
            fast_share,
            fast: TimeConstant::from_seconds(20.0).unwrap(),
            slow,
        };
        if let Err(Infeasible { nearest, .. }) = extraction::time_for_yield(&kinetics, extracted) {
            let nearest = Yield::from_percent(nearest).unwrap();
            prop_assert!(extraction::time_for_yield(&kinetics, nearest).is_ok());
        }
    }

    #[test]
    fn vapour_takes_its_heat(
        liquid in some::<Liquid>(50.0, 1000.0),
        celsius in some::<Temperature>(60.0, 100.0),
        vapour in some::<Vapour>(0.0, 5.0),
        capacity in some::<HeatCapacity>(0.0, 300.0),
    ) {
        let after = heat::after_vapour(liquid, celsius, vapour, capacity).unwrap();
        prop_assert!(after <= celsius);
        let h = |t: Temperature| water::enthalpy(t).joules_per_gram();
        let rest = liquid.grams() - vapour.grams();
        let given = rest * (h(celsius) - h(after))
            + capacity.joules_per_kelvin() * (celsius.celsius() - after.celsius());
        let taken = vapour.grams() * water::latent_heat(celsius).joules_per_gram();
        assert_abs_diff_eq!(given, taken, epsilon = 1e-6);
    }

    #[test]
    fn pours_invert(celsius in some::<Temperature>(20.0, 95.0), drop in some::<TemperatureDrop>(0.0, 5.0)) {
        let after = heat::after_pour(celsius, drop).unwrap();
        let back = heat::before_pour(after, drop).unwrap();
        assert_abs_diff_eq!(back.celsius(), celsius.celsius(), epsilon = 1e-12);
    }

    #[test]
    fn cooling_inverts_and_goes_one_way(
        room in rooms(),
        from in some::<Temperature>(50.0, 100.0),
        wait in some::<Time>(1.0, 20_000.0),
        rate in some::<CoolingRate>(0.0005, 0.05),
    ) {
        let Ok(cooled) = heat::temperature_after(from, wait, rate, &room) else {
            // In a freezing room the cup may freeze.
            prop_assert!(room.room.celsius() < 12.0);
            return Ok(());
        };
        prop_assert!(cooled < from);
        let later = Time::from_seconds(wait.seconds() + 60.0).unwrap();
        if let Ok(later) = heat::temperature_after(from, later, rate, &room) {
            prop_assert!(later < cooled || cooled.celsius() - room.room.celsius() < 1e-6);
        }
        if let Ok(back) = heat::time_to_cool(from, cooled, rate, &room) {
            assert_relative_eq!(back.seconds(), wait.seconds(), max_relative = 1e-6);
            let k = heat::cooling_rate(from, cooled, wait, &room).unwrap();
            assert_relative_eq!(k.per_minute(), rate.per_minute(), max_relative = 1e-6);
        }
    }

    #[test]
    fn a_lid_makes_it_newtons_law(
        room in some::<RoomTemperature>(0.0, 40.0),
        from in some::<Temperature>(60.0, 100.0),
        wait in some::<Time>(1.0, 10_000.0),
        rate in some::<CoolingRate>(0.0005, 0.05),
    ) {
        let humidity = Humidity::from_percent(50.0).unwrap();
        let lidded = Surroundings { room, humidity, cover: Cover::Lidded };
        let cooled = heat::temperature_after(from, wait, rate, &lidded).unwrap();
        let t = room.celsius();
        let newton =
            t + (from.celsius() - t) * (-rate.per_minute() * wait.seconds() / 60.0).exp();
        assert_abs_diff_eq!(cooled.celsius(), newton, epsilon = 1e-9);
        let open = Surroundings { cover: Cover::Open, ..lidded };
        if let Ok(open) = heat::temperature_after(from, wait, rate, &open) {
            prop_assert!(open < cooled);
        }
    }

    // ---- Reading ----------------------------------------------------------------------------------

    #[test]
    fn repeated_readings_do_not_depend_on_their_order(
        mut values in prop::collection::vec(1.30..1.50_f64, 1..=10)
    ) {
        let s_r = Repeatability::from_percent(0.01).unwrap();
        let combine = |values: &[f64]| {
            let readings: Vec<_> =
                values.iter().map(|v| Strength::from_percent(*v).unwrap()).collect();
            reading::combine(&readings, s_r).unwrap()
        };
        let one = combine(&values);
        let (low, high) =
            values.iter().fold((f64::MAX, 0.0_f64), |(l, h), v| (l.min(*v), h.max(*v)));
        prop_assert!((low - 1e-12..=high + 1e-12).contains(&one.value.percent()));
        values.reverse();
        let other = combine(&values);
        prop_assert_eq!(one.agreement, other.agreement);
        assert_relative_eq!(one.value.percent(), other.value.percent(), max_relative = 1e-14);
    }

    #[test]
    fn minerals_are_counted_once(
        reading in some::<Strength>(1.0, 12.0), solids in some::<WaterSolids>(0.0, 400.0)
    ) {
        use reading::Zero;
        // Zeroed on brew water, adding the minerals and taking them out again gives the reading back.
        let total = reading::total_strength(reading, Zero::BrewWater, solids).unwrap();
        let coffee = reading::coffee_strength(total, Zero::Distilled, solids).unwrap();
        assert_relative_eq!(coffee.percent(), reading.percent(), max_relative = 1e-12);
    }

    #[test]
    fn refraction_inverts(degrees in some::<Brix>(0.0, 28.0)) {
        let index = reading::index_of_brix(degrees).unwrap();
        let back = reading::brix_of_index(index).unwrap();
        // Two independent fits; the docs promise 0.006.
        assert_abs_diff_eq!(back.degrees(), degrees.degrees(), epsilon = 0.012);
        let factor = reading::USUAL_REFRACTIVE_FACTOR;
        let strength = reading::strength_of_brix(degrees, factor).unwrap();
        let back = reading::brix_of_strength(strength, factor).unwrap();
        assert_relative_eq!(back.degrees(), degrees.degrees(), max_relative = 1e-14);
    }

    #[test]
    fn the_atmosphere_inverts(metres in some::<Altitude>(-400.0, 5500.0)) {
        let back = water::altitude_at_pressure(water::pressure_at_altitude(metres)).unwrap();
        assert_abs_diff_eq!(back.metres(), metres.metres(), epsilon = 1e-8);
    }
}

#[test]
fn denser_is_never_hotter_above_the_maximum_and_vapour_rises() {
    let at = |tenths: i32| Temperature::from_celsius(f64::from(tenths) / 10.0).unwrap();
    for tenths in 40..1050 {
        let (a, b) = (at(tenths), at(tenths + 1));
        assert!(water::density(b) < water::density(a));
        assert!(water::vapour_pressure(b) > water::vapour_pressure(a));
        assert!(water::enthalpy(b) > water::enthalpy(a));
        assert!(water::latent_heat(b) < water::latent_heat(a));
    }
}

// ---- What brews tell ----------------------------------------------------------------------------

/// Leverages add up to the parameters, and every one lies between 0 and 1.
fn assert_leverages(quality: &Quality, parameters: f64) {
    assert_abs_diff_eq!(quality.leverages.iter().sum::<f64>(), parameters, epsilon = 1e-8);
    assert!(quality.leverages.iter().all(|h| (-1e-12..=1.0 + 1e-9).contains(h)));
    assert_eq!(quality.freedom.count(), quality.measurements.count() - parameters);
}

/// Numbers to scatter measurements by, from -1 to 1.
fn scatter<const N: usize>() -> impl Strategy<Value = [f64; N]> {
    prop::array::uniform(-1.0..1.0_f64)
}

const CONTACTS: [f64; 9] = [4.0, 10.0, 20.0, 35.0, 60.0, 100.0, 180.0, 300.0, 600.0];

fn yields_of(law: &Kinetics, off: [f64; 9]) -> [Timed; 9] {
    let each = |at: usize| {
        let contact = Time::from_seconds(CONTACTS[at]).unwrap();
        let extracted = extraction::yield_at_time(law, contact).percent() + off[at];
        Timed { contact, extracted: Yield::from_percent(extracted).unwrap() }
    };
    std::array::from_fn(each)
}

fn brews_of(retention: f64, hold_up: f64, off: [f64; 6]) -> [Drained; 6] {
    let each = |at: usize| {
        let dose = 12.0 + 3.5 * at as f64;
        Drained {
            dose: Dose::from_grams(dose).unwrap(),
            water: BrewWater::from_grams(16.0 * dose).unwrap(),
            beverage: Beverage::from_grams((16.0 - retention) * dose - hold_up - 1.0 + off[at])
                .unwrap(),
            vapour: Vapour::from_grams(1.0).unwrap(),
        }
    };
    std::array::from_fn(each)
}

proptest! {
    #[test]
    fn exact_brews_give_the_brewer_back(
        retention in 0.5..4.0_f64, hold_up in 0.0..20.0_f64, off in scatter::<6>()
    ) {
        let line = calibrate::retention_line(&brews_of(retention, hold_up, [0.0; 6])).unwrap();
        assert_relative_eq!(line.retention.value.grams_per_gram(), retention, max_relative = 1e-10);
        assert_abs_diff_eq!(line.hold_up.value.grams(), hold_up, epsilon = 1e-10);
        assert!(line.quality.s < 1e-10 && line.retention.u.grams_per_gram() < 1e-10);

        let brews = brews_of(retention, hold_up, off);
        let line = calibrate::retention_line(&brews).unwrap();
        assert_leverages(&line.quality, 2.0);
        assert_abs_diff_eq!(line.quality.residuals.iter().sum::<f64>(), 0.0, epsilon = 1e-9);
        // What a residual is off, the line expects of its own brew.
        for (brew, off) in brews.iter().zip(line.quality.residuals) {
            let expected = line.expected(brew.dose, brew.water, brew.vapour).unwrap();
            assert_abs_diff_eq!(
                expected.beverage.value.grams() - brew.beverage.grams(),
                off,
                epsilon = 1e-9
            );
            let u_next = expected.beverage.u;
            assert!(expected.u_mean < u_next && u_next.grams() < 1.5 * line.quality.s);
        }
        let alone = calibrate::retention(&brews).unwrap();
        assert_leverages(&alone.quality, 1.0);
    }

    #[test]
    fn a_spoilt_brew_stands_out(at in 0..6_usize, off in scatter::<6>(), up: bool) {
        let mut off = off.map(|off| 0.2 * off);
        off[at] += if up { 20.0 } else { -20.0 };
        let odd = calibrate::retention_line(&brews_of(2.0, 3.0, off)).unwrap().quality.odd.unwrap();
        assert_eq!(odd.at, at);
        // More beverage is less kept.
        assert_eq!(odd.studentised < 0.0, up);
        assert!(odd.is_suspicious, "{odd:?}");
    }

    #[test]
    fn exact_yields_give_the_coffee_back(
        equilibrium in some::<Yield>(15.0, 28.0),
        share in some::<Share>(30.0, 70.0),
        fast in some::<TimeConstant>(8.0, 25.0),
        ratio in 5.0..12.0_f64,
        off in scatter::<9>(),
    ) {
        let slow = TimeConstant::from_seconds(fast.seconds() * ratio).unwrap();
        let one = Kinetics { equilibrium, fast_share: Share::from_percent(100.0).unwrap(), fast, slow: fast };
        let fit = calibrate::one_rate(&yields_of(&one, [0.0; 9])).unwrap();
        assert_relative_eq!(fit.equilibrium.value.percent(), equilibrium.percent(), max_relative = 1e-9);
        assert_relative_eq!(fit.time.value.seconds(), fast.seconds(), max_relative = 1e-9);
        assert_relative_eq!(
            extraction::yield_at_time(&fit.kinetics(), Time::from_seconds(40.0).unwrap()).percent(),
            extraction::yield_at_time(&one, Time::from_seconds(40.0).unwrap()).percent(),
            max_relative = 1e-9
        );

        let two = Kinetics { equilibrium, fast_share: share, fast, slow };
        let fit = calibrate::two_rates(&yields_of(&two, [0.0; 9])).unwrap();
        assert_relative_eq!(fit.equilibrium.value.percent(), equilibrium.percent(), max_relative = 1e-6);
        assert_relative_eq!(fit.fast_share.value.percent(), share.percent(), max_relative = 1e-5);
        assert_relative_eq!(fit.fast.value.seconds(), fast.seconds(), max_relative = 1e-5);
        assert_relative_eq!(fit.slow.value.seconds(), slow.seconds(), max_relative = 1e-5);

        let scattered = yields_of(&two, off.map(|off| 0.1 * off));
        if let Ok(fit) = calibrate::two_rates(&scattered) {
            assert_leverages(&fit.quality, 4.0);
            assert!(fit.fast.value <= fit.slow.value);
            for (at, row) in fit.covariance.iter().enumerate() {
                for (other, entry) in row.iter().enumerate() {
                    assert_relative_eq!(*entry, fit.covariance[other][at], max_relative = 1e-9);
                }
            }
            // No one-rate law comes nearer.
            if let Ok(one) = calibrate::one_rate(&scattered) {
                let squares = |q: &Quality| q.freedom.count() * q.s * q.s;
                assert!(squares(&fit.quality) < squares(&one.quality));
            }
        }
    }

    #[test]
    fn exact_readings_give_the_cup_back(
        start in some::<Temperature>(75.0, 95.0),
        rate in some::<CoolingRate>(0.003, 0.02),
        room in rooms(),
        begin in 0.0..600.0_f64,
        off in scatter::<5>(),
    ) {
        prop_assume!(room.room.celsius() > 5.0);
        let readings = |off: [f64; 5]| -> [Thermometer; 5] {
            std::array::from_fn(|at| {
                let since = 240.0 * at as f64;
                let elapsed = Time::from_seconds(since).unwrap();
                let shown = heat::temperature_after(start, elapsed, rate, &room).unwrap().celsius();
                Thermometer {
                    time: Time::from_seconds(begin + since).unwrap(),
                    temperature: Temperature::from_celsius(shown + off[at]).unwrap(),
                }
            })
        };
        let fit = calibrate::cooling(&readings([0.0; 5]), &room).unwrap();
        assert_relative_eq!(fit.rate.value.per_minute(), rate.per_minute(), max_relative = 1e-8);
        assert_relative_eq!(fit.start.value.celsius(), start.celsius(), max_relative = 1e-8);
        // Two readings alone have no scatter, and the function of two is the same law.
        let [first, .., last] = readings([0.0; 5]);
        let elapsed = Time::from_seconds(960.0).unwrap();
        let of_two = heat::cooling_rate(first.temperature, last.temperature, elapsed, &room).unwrap();
        assert_relative_eq!(fit.rate.value.per_minute(), of_two.per_minute(), max_relative = 1e-8);

        let fit = calibrate::cooling(&readings(off.map(|off| 0.3 * off)), &room).unwrap();
        assert_leverages(&fit.quality, 2.0);
    }
}
