//! Serialised records: unit-suffixed names, checked on the way in, the same bits on the way back.

use cupwright::extraction::Brew;
use cupwright::plan::Air;
use cupwright::quantity::*;
use cupwright::retention::Paper;
use cupwright::uncertainty::ReadStrength;
use cupwright::verdict::Window;

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
