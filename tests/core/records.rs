//! Serialised records: unit-suffixed names, checked on the way in, the same bits on the way back.

use cupwright::Error;
use cupwright::calibrate::{self, Drained, Dried, Repeat, Settled, Thermometer, Timed};
use cupwright::caution::{Caution, Cautions};
use cupwright::extraction::Brew;
use cupwright::heat::{Cover, Surroundings};
use cupwright::plan::Air;
use cupwright::profile::Profile;
use cupwright::quantity::*;
use cupwright::retention::Paper;
use cupwright::uncertainty::{Estimate, ReadStrength, Uncertain};
use cupwright::verdict::Window;
use proptest::prelude::*;

use crate::{some, value};

const BREW: &str = r#"{
    "dose_g": 15, "water_g": 200.5, "beverage_g": 173.25, "moisture_pct": 1.8,
    "water_solids_mg_per_l": 62, "vapour_g": 1, "held_strength_pct": 100
}"#;

#[test]
fn a_record_comes_back_with_the_same_bits() {
    let brew: Brew = serde_json::from_str(BREW).unwrap();
    assert_eq!(brew.dose, Dose::from_grams(15.0).unwrap());
    let again: Brew = serde_json::from_str(&serde_json::to_string(&brew).unwrap()).unwrap();
    assert_eq!(again, brew);
}

#[test]
fn a_value_out_of_range_is_refused_with_its_range() {
    let error = serde_json::from_str::<Brew>(&BREW.replace("200.5", "900000")).unwrap_err();
    assert!(
        error.to_string().starts_with("brew water: 900000 g is outside 0.1 to 200000 g"),
        "{error}"
    );
}

#[test]
fn an_unknown_or_missing_name_is_refused() {
    let error = serde_json::from_str::<Brew>(&BREW.replace("dose_g", "dose")).unwrap_err();
    assert!(error.to_string().contains("unknown field `dose`"), "{error}");
    let error = serde_json::from_str::<Brew>(&BREW.replace("\"dose_g\": 15,", "")).unwrap_err();
    assert!(error.to_string().contains("missing field `dose_g`"), "{error}");
}

#[test]
fn choices_have_plain_names() {
    let paper: Paper =
        serde_json::from_str(r#"{ "dry": { "paper_g": 0.4, "paper_uptake_g_per_g": 2.5 } }"#)
            .unwrap();
    assert!(matches!(paper, Paper::Dry { .. }));
    assert_eq!(serde_json::from_str::<Paper>(r#""rinsed""#).unwrap(), Paper::Rinsed);
    let air: Air = serde_json::from_str(r#"{ "altitude_m": 2140 }"#).unwrap();
    assert_eq!(air, Air::Altitude(Altitude::from_metres(2140.0).unwrap()));
}

#[test]
fn cautions_are_a_list_of_their_names_each_once() {
    let read = |text| serde_json::from_str::<Cautions>(text);
    let two = read(r#"["ice", "scald", "ice"]"#).unwrap();
    assert!(two.iter().eq([Caution::Scald, Caution::Ice]));
    assert_eq!(serde_json::to_string(&two).unwrap(), r#"["scald","ice"]"#);
    assert_eq!(read("[]").unwrap(), Cautions::default());
    let error = read(r#""ice""#).unwrap_err().to_string();
    assert!(error.contains("expected a list of cautions"), "{error}");
    assert!(read(r#"["tea"]"#).unwrap_err().to_string().contains("unknown variant `tea`"));
}

#[test]
fn a_window_comes_back_with_its_edges() {
    let text = concat!(
        r#"{"strength":{"lowest_pct":1.15,"highest_pct":1.45},"#,
        r#""yield":{"lowest_pct":18.0,"highest_pct":22.0},"yield_counting":"flow_through"}"#
    );
    let window: Window = serde_json::from_str(text).unwrap();
    assert_eq!(serde_json::to_string(&window).unwrap(), text);
}

#[test]
fn a_quantity_tells_the_name_of_its_field() {
    assert_eq!(Quantity::Dose.field(), "dose_g");
    assert_eq!(Quantity::Strength.field(), "strength_pct");
    assert_eq!([Quantity::Batches.decimals(), Quantity::Strength.decimals()], [0, 2]);
    for quantity in Quantity::ALL {
        let field = quantity.field();
        let is_plain = |c: char| c.is_ascii_lowercase() || c.is_ascii_digit() || c == '_';
        assert!(!field.is_empty() && field.chars().all(is_plain), "{field}");
        assert!(!quantity.is_whole() || quantity.decimals() == 0, "{field}");
    }
}

#[test]
fn a_window_with_crossed_edges_is_refused() {
    let text = r#"{ "strength": { "lowest_pct": 1.45, "highest_pct": 1.15 } }"#;
    assert!(serde_json::from_str::<Window>(text).is_err());
}

#[test]
fn an_estimate_is_a_value_with_its_uncertainty() {
    const READ: &str = r#"{
        "reading": { "value": 1.44, "u": 0.01, "degrees_of_freedom": 2 },
        "instrument": { "u": 0.02, "degrees_of_freedom": 1e9 },
        "factor": { "u": 2.4, "degrees_of_freedom": 8 },
        "zero": "brew_water",
        "water_solids": { "value": 80, "u": 20, "degrees_of_freedom": 1e9 }
    }"#;
    let read: ReadStrength = serde_json::from_str(READ).unwrap();
    assert_eq!(read.reading.value, Strength::from_percent(1.44).unwrap());
    let again: ReadStrength = serde_json::from_str(&serde_json::to_string(&read).unwrap()).unwrap();
    assert_eq!(again, read);
    let error = serde_json::from_str::<ReadStrength>(&READ.replace("0.01", "-0.01")).unwrap_err();
    assert!(error.to_string().starts_with("uncertainty of a strength: -0.01 %"), "{error}");
}

fn learned<M: Uncertain>() -> impl Strategy<Value = Option<Estimate<M>>> {
    let known = (any_of::<M>(), any_of::<M::Uncertainty>(), any_of::<DegreesOfFreedom>())
        .prop_map(|(value, u, freedom)| Estimate { value, u, freedom });
    prop::option::of(known)
}

fn any_of<M: Measure>() -> impl Strategy<Value = M> {
    some(M::QUANTITY.lowest(), M::QUANTITY.highest())
}

fn profiles() -> impl Strategy<Value = Profile> {
    let brewer = (learned(), learned(), learned(), learned());
    let coffee = (learned(), learned(), learned(), learned(), learned());
    let others = (learned(), learned(), learned(), prop::option::of(some(0.0, 10.0)));
    let correlations = prop::array::uniform7(prop::option::of(some(-1.0, 1.0)));
    (brewer, coffee, others, correlations).prop_map(|(brewer, coffee, others, correlations)| {
        let (retention, hold_up, heat_capacity, cooling) = brewer;
        let (equilibrium, fast_share, fast, slow, refractive_factor) = coffee;
        let (cup, cup_cooling, repeatability, retention_scatter) = others;
        let [retention_correlation, equilibrium_and_share, equilibrium_and_fast, ..] = correlations;
        let [.., equilibrium_and_slow, share_and_fast, share_and_slow, fast_and_slow] =
            correlations;
        Profile {
            retention,
            hold_up,
            heat_capacity,
            cooling,
            equilibrium,
            fast_share,
            fast,
            slow,
            refractive_factor,
            cup,
            cup_cooling,
            repeatability,
            retention_correlation,
            retention_scatter,
            equilibrium_and_share,
            equilibrium_and_fast,
            equilibrium_and_slow,
            share_and_fast,
            share_and_slow,
            fast_and_slow,
        }
    })
}

proptest! {
    #[test]
    fn a_profile_comes_back_from_bytes_and_from_json(profile in profiles()) {
        assert_eq!(Profile::from_bytes(&profile.to_bytes()), Ok(profile));
        let text = serde_json::to_string(&profile).unwrap();
        assert_eq!(serde_json::from_str::<Profile>(&text).unwrap(), profile);
    }

    #[test]
    fn bytes_are_a_profile_or_refused(bytes in prop::collection::vec(any::<u8>(), 0..500)) {
        assert!(Profile::from_bytes(&bytes).is_err());
    }
}

#[test]
fn a_profile_keeps_what_brews_told() {
    let brew = |dose: f64, kept: f64| Drained {
        dose: value(dose),
        water: value(16.0 * dose),
        beverage: value(16.0 * dose - kept),
        vapour: Vapour::NONE,
    };
    let line =
        calibrate::retention_line(&[brew(12.0, 27.9), brew(20.0, 43.4), brew(30.0, 65.6)]).unwrap();
    let timed =
        |(contact, extracted)| Timed { contact: value(contact), extracted: value(extracted) };
    let yields = [(30.0, 9.1), (60.0, 13.9), (120.0, 18.6), (300.0, 20.7)].map(timed);
    let coffee = calibrate::one_rate(&yields).unwrap();
    let read = |strength| Repeat { cup: value(1.0), strength: value(strength) };
    let own = calibrate::repeatability(&[1.44, 1.46, 1.45].map(read)).unwrap();
    let room = Surroundings { room: value(20.0), humidity: value(50.0), cover: Cover::Lidded };
    let read =
        |(time, temperature)| Thermometer { time: value(time), temperature: value(temperature) };
    let cooled = [(0.0, 85.0), (600.0, 66.5), (1200.0, 53.5), (1800.0, 44.0)].map(read);
    let cup = calibrate::cooling(&cooled, &room).unwrap();
    let poured = |(liquid, before, settled)| Settled {
        liquid: value(liquid),
        before: value(before),
        settled: value(settled),
        vessel: value(21.0),
    };
    let pours = [(250.0, 95.0, 84.9), (200.0, 95.0, 82.4), (250.0, 88.0, 79.2)].map(poured);
    let brewer = calibrate::heat_capacity(&pours).unwrap();

    let mut profile = Profile::default();
    profile.keep_retention_line(&line);
    profile.keep_one_rate(&coffee);
    profile.keep_repeatability(&own);
    profile.keep_cup_cooling(&cup);
    profile.keep_heat_capacity(&brewer);
    assert_eq!(profile.cup_cooling, Some(cup.rate));
    assert_eq!(profile.heat_capacity, Some(brewer.estimate));

    assert_eq!(profile.retention, Some(line.retention));
    assert_eq!(profile.hold_up, Some(line.hold_up));
    assert_eq!(profile.fast.unwrap().freedom.count(), 2.0);
    // The mean dose over the root of the mean square dose, negative.
    let (mean, square) = (62.0 / 3.0, (144.0 + 400.0 + 900.0) / 3.0_f64);
    let correlation = profile.retention_correlation.unwrap().ratio();
    assert!((correlation + mean / square.sqrt()).abs() < 1e-12, "{correlation}");
    let text = serde_json::to_string(&profile).unwrap();
    assert!(
        text.starts_with(r#"{"version":1,"apparent_retention_g_per_g":{"value":2."#)
            && !text.contains("slow_time_s"),
        "{text}"
    );

    // What comes back answers as the fits do, bit by bit.
    let back = Profile::from_bytes(&profile.to_bytes()).unwrap();
    assert_eq!(back, serde_json::from_str(&text).unwrap());
    for (dose, water) in [(14.0, 230.0), (25.0, 400.0)] {
        let (dose, water, vapour) = (value(dose), value(water), Vapour::NONE);
        let expected = line.expected(dose, water, vapour).unwrap();
        assert_eq!(back.expected_beverage(dose, water, vapour), Ok(expected));
    }
    assert_eq!(back.rates(), Ok(coffee.rates()));
    assert_eq!(back.plateau(), Ok(coffee.plateau()));
    let means = back.means(value(93.0)).unwrap();
    assert_eq!(means.rates, Some(coffee.rates()));
    assert_eq!(means.kept.unwrap().retention, line.retention.value);
    assert_eq!(means.kept.unwrap().hold_up, line.chamber().unwrap());
}

#[test]
fn a_profile_keeps_each_fit_in_its_own_place() {
    let pour = |settled| Settled {
        liquid: value(200.0),
        before: value(95.0),
        settled: value(settled),
        vessel: value(20.0),
    };
    let vessel = calibrate::heat_capacity(&[pour(86.1), pour(86.4)]).unwrap();
    let read =
        |(seconds, celsius)| Thermometer { time: value(seconds), temperature: value(celsius) };
    let around = Surroundings { room: value(20.0), humidity: value(50.0), cover: Cover::Open };
    let readings = [(0.0, 80.0), (300.0, 68.4), (600.0, 59.9), (900.0, 53.2)].map(read);
    let cup = calibrate::cooling(&readings, &around).unwrap();
    let dried = |(brix, strength)| Dried { brix: value(brix), strength: value(strength) };
    let factor = calibrate::refractive_factor(&[(1.7, 1.45), (2.0, 1.69)].map(dried)).unwrap();
    let strength = |strength| Repeat { cup: value(1.0), strength: value(strength) };
    let own = calibrate::repeatability(&[1.44, 1.46, 1.45].map(strength)).unwrap();

    let mut profile = Profile::default();
    profile.keep_heat_capacity(&vessel);
    assert_eq!(profile, Profile { heat_capacity: Some(vessel.estimate), ..Profile::default() });
    profile.keep_cup_cooling(&cup);
    profile.keep_refractive_factor(&factor);
    profile.keep_repeatability(&own);
    let all = Profile {
        heat_capacity: Some(vessel.estimate),
        cup_cooling: Some(cup.rate),
        refractive_factor: Some(factor.estimate),
        repeatability: Some(own.estimate),
        ..Profile::default()
    };
    assert_eq!(profile, all);
    // None of it moves a yield or says what a brewer keeps.
    let means = profile.means(value(92.0)).unwrap();
    assert_eq!((means.rates, means.kept), (None, None));
}

/// Of a coffee that is known in part the rates are asked for, and what is missing is named.
#[test]
fn a_coffee_kept_in_part_is_not_taken_for_none() {
    let (u, freedom) = (0.1, 4.0);
    let equilibrium = Some(Estimate { value: value(21.0), u: value(u), freedom: value(freedom) });
    let time = Some(Estimate { value: value(60.0), u: value(u), freedom: value(freedom) });
    let fast_share = Some(Estimate { value: value(60.0), u: value(u), freedom: value(freedom) });
    for part in [
        Profile { equilibrium, ..Profile::default() },
        Profile { fast: time, ..Profile::default() },
        Profile { slow: time, ..Profile::default() },
        Profile { fast_share, ..Profile::default() },
    ] {
        assert!(matches!(part.means(value(92.0)), Err(Error::NotKept { .. })), "{part:?}");
    }
}

/// Yields of two rates, and brews of one dose.
#[test]
fn a_profile_answers_as_its_fits_do() {
    let timed =
        |(contact, extracted)| Timed { contact: value(contact), extracted: value(extracted) };
    let yields = [
        (3.0, 5.02),
        (6.0, 8.12),
        (12.0, 10.73),
        (25.0, 12.6),
        (50.0, 14.41),
        (100.0, 17.1),
        (200.0, 19.6),
        (400.0, 20.96),
    ];
    let coffee = calibrate::two_rates(&yields.map(timed)).unwrap();
    let brew = |beverage| Drained {
        dose: value(15.0),
        water: value(240.0),
        beverage: value(beverage),
        vapour: Vapour::NONE,
    };
    let brews = [205.4, 207.1, 206.0].map(brew);
    let brewer = calibrate::retention(&brews).unwrap();
    let mut profile = Profile::default();
    profile.keep_two_rates(&coffee);
    profile.keep_retention(&brewer);

    let back = Profile::from_bytes(&profile.to_bytes()).unwrap();
    assert_eq!((back.rates(), back.plateau()), (Ok(coffee.rates()), Ok(coffee.plateau())));
    let next = back.expected_beverage(value(15.0), value(240.0), Vapour::NONE).unwrap();
    // At the dose of the brews the mean of them, and the scatter of one about it.
    let (mean, s) = (206.166_666_666_666_67, brewer.quality.s);
    assert!((next.beverage.value.grams() - mean).abs() < 1e-9);
    assert!((next.beverage.u.grams() - s * (1.0_f64 + 1.0 / 3.0).sqrt()).abs() < 1e-12);
    assert_eq!(next.beverage.freedom.count(), 2.0);
    assert_eq!(back.kept().unwrap().hold_up, HoldUp::NONE);

    // One rate after two leaves nothing of them.
    let one = calibrate::one_rate(&yields[3..].iter().copied().map(timed).collect::<Vec<_>>());
    profile.keep_one_rate(&one.unwrap());
    assert_eq!((profile.slow, profile.share_and_slow), (None, None));
    assert!(profile.rates().is_ok() && profile.plateau().is_ok());
}

#[test]
fn a_part_that_is_missing_is_named() {
    let named = |error: Error| error.to_string();
    let none = Profile::default();
    let ask = |profile: &Profile| {
        profile.expected_beverage(value(15.0), value(240.0), Vapour::NONE).map_err(named)
    };
    let missing = |field: &str| Err(format!("{field}: the profile has none"));
    assert_eq!(ask(&none).map(drop), missing("apparent_retention_g_per_g"));
    let known =
        |value: f64, u: f64| serde_json::json!({ "value": value, "u": u, "degrees_of_freedom": 4 });
    let of = |fields: serde_json::Value| serde_json::from_value::<Profile>(fields).unwrap();
    let retention = known(2.0, 0.1);
    let part = of(serde_json::json!({ "version": 1, "apparent_retention_g_per_g": retention }));
    assert_eq!(ask(&part).map(drop), missing("retention_scatter_g"));
    let part = of(serde_json::json!({
        "version": 1, "apparent_retention_g_per_g": retention, "fitted_hold_up_g": known(3.0, 1.0),
        "retention_scatter_g": 0.8,
    }));
    assert_eq!(ask(&part).map(drop), missing("retention_correlation"));

    assert_eq!(none.rates().map(drop).map_err(named), missing("equilibrium_yield_pct"));
    assert_eq!(none.means(value(93.0)).unwrap().rates, None);
    let part = of(serde_json::json!({
        "version": 1, "equilibrium_yield_pct": known(21.0, 0.2), "fast_time_s": known(5.0, 0.05),
        "slow_time_s": known(100.0, 0.1),
    }));
    assert_eq!(part.means(value(93.0)).map(drop).map_err(named), missing("fast_share_pct"));
    let level = part.plateau().map(drop).map_err(named);
    assert_eq!(level, missing("correlation_equilibrium_share"));
    // Whatever part there is asks for the rest.
    let part = of(serde_json::json!({ "version": 1, "slow_time_s": known(100.0, 0.1) }));
    assert_eq!(part.means(value(93.0)).map(drop).map_err(named), missing("equilibrium_yield_pct"));
    // A hold-up below zero is no chamber's.
    let below = of(serde_json::json!({
        "version": 1, "apparent_retention_g_per_g": retention, "fitted_hold_up_g": known(-1.0, 1.0),
    }));
    assert!(matches!(below.kept(), Err(Error::ResultOutOfRange { .. })));
}

/// The fields whose u has a unit of its own, and what it is.
#[test]
fn uncertainties_of_a_profile_are_in_the_units_that_its_docs_say() {
    let timed =
        |(contact, extracted)| Timed { contact: value(contact), extracted: value(extracted) };
    let yields = [(30.0, 9.1), (60.0, 13.9), (120.0, 18.6), (300.0, 20.7)];
    let u_of = |times: f64| {
        let stretched = yields.map(|(contact, extracted)| timed((times * contact, extracted)));
        let mut profile = Profile::default();
        profile.keep_one_rate(&calibrate::one_rate(&stretched).unwrap());
        let json = serde_json::to_value(profile).unwrap();
        json["fast_time_s"]["u"].as_f64().unwrap()
    };
    // That of the logarithm is the same for times ten times as long.
    assert!((u_of(1.0) - u_of(10.0)).abs() < 1e-9, "{} {}", u_of(1.0), u_of(10.0));

    let dried = |(brix, strength)| Dried { brix: value(brix), strength: value(strength) };
    let fit = calibrate::refractive_factor(&[(1.42, 1.214), (1.66, 1.402)].map(dried)).unwrap();
    let mut profile = Profile::default();
    profile.keep_refractive_factor(&fit);
    let json = serde_json::to_value(profile).unwrap();
    // By hand: k = Σ x T/Σ x², s² = Σ (T − k x)² with one degree of freedom, u = s/√Σ x².
    let squares = 1.42_f64 * 1.42 + 1.66 * 1.66;
    let k = (1.42 * 1.214 + 1.66 * 1.402) / squares;
    let s = ((1.214 - k * 1.42).powi(2) + (1.402 - k * 1.66).powi(2)).sqrt();
    let u = json["refractive_factor_pct_per_brix"]["u"].as_f64().unwrap();
    assert!((u - 100.0 * s / squares.sqrt() / k).abs() < 1e-9, "{u}");
}

#[test]
fn a_profile_of_another_version_is_refused() {
    let refused = |text: &str| serde_json::from_str::<Profile>(text).unwrap_err().to_string();
    assert_eq!(refused(r#"{ "version": 2 }"#), "version 2 of the layout, and only 1 is known");
    assert!(refused("{}").starts_with("missing field `version`"));
    assert_eq!(serde_json::to_string(&Profile::default()).unwrap(), r#"{"version":1}"#);
}

#[test]
fn a_profile_refuses_an_uncertainty_below_zero() {
    let text = r#"{ "version": 1, "repeatability_pct": { "value": 0.01, "u": -0.1, "degrees_of_freedom": 3 } }"#;
    let error = serde_json::from_str::<Profile>(text).unwrap_err().to_string();
    assert!(error.starts_with("uncertainty of a strength: -0.1 % is outside 0 to 50 %"), "{error}");
}
