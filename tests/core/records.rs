//! Serialised records: unit-suffixed names, checked on the way in, the same bits on the way back.

use cupwright::calibrate::{self, Drained, Repeat, Timed};
use cupwright::extraction::Brew;
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
    let others = (learned(), learned(), learned(), prop::option::of(some(-1.0, 1.0)));
    (brewer, coffee, others).prop_map(|(brewer, coffee, others)| {
        let (retention, hold_up, heat_capacity, cooling) = brewer;
        let (equilibrium, fast_share, fast, slow, refractive_factor) = coffee;
        let (cup, cup_cooling, repeatability, retention_correlation) = others;
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
    fn bytes_are_a_profile_or_refused(bytes in prop::collection::vec(any::<u8>(), 0..400)) {
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

    let mut profile = Profile::default();
    profile.keep_retention(&line);
    profile.keep_one_rate(&coffee);
    profile.repeatability = Some(own.estimate);

    assert_eq!(profile.retention, Some(line.retention));
    assert_eq!(profile.hold_up, Some(line.hold_up));
    assert_eq!(profile.fast.unwrap().freedom.count(), 2.0);
    // The mean dose over the root of the mean square dose, negative.
    let (mean, square) = (62.0 / 3.0, (144.0 + 400.0 + 900.0) / 3.0_f64);
    let correlation = profile.retention_correlation.unwrap().ratio();
    assert!((correlation + mean / square.sqrt()).abs() < 1e-12, "{correlation}");
    let text = serde_json::to_string(&profile).unwrap();
    assert!(
        text.starts_with(r#"{"apparent_retention_g_per_g":{"value":2."#)
            && !text.contains("slow_time_s"),
        "{text}"
    );
}

#[test]
fn a_profile_refuses_an_uncertainty_below_zero() {
    let text = r#"{ "repeatability_pct": { "value": 0.01, "u": -0.1, "degrees_of_freedom": 3 } }"#;
    let error = serde_json::from_str::<Profile>(text).unwrap_err().to_string();
    assert!(error.starts_with("uncertainty of a strength: -0.1 % is outside 0 to 50 %"), "{error}");
}
