//! The core's public constants and windows for other languages, with the docs that stand beside them in
//! its source.

use cupwright::quantity::Measure;
use cupwright::verdict::{GOLDEN_CUP_2015, HOME_BREWER_2018, PublishedWindow};
use cupwright::{calibrate, caution, dilution, extraction, heat, reading, water};

use crate::commands::text_of;
use crate::{Outcome, root};

/// A constant.
pub struct Constant {
    /// Its name outside Rust, with its unit.
    pub name: String,
    pub value: f64,
    /// What it is, and its source.
    pub about: String,
}

/// Names outside Rust, values, and where the core has them: file and name.
const NUMBERS: [(&str, f64, &str, &str); 17] = [
    ("SUSPICIOUS_CHANCE", calibrate::SUSPICIOUS_CHANCE, "calibrate/quality", "SUSPICIOUS_CHANCE"),
    (
        "ALTITUDE_ONLY_UNCERTAINTY_K",
        water::ALTITUDE_ONLY_UNCERTAINTY_K,
        "water",
        "ALTITUDE_ONLY_UNCERTAINTY_K",
    ),
    (
        "EQUILIBRIUM_YIELD_PCT",
        extraction::EQUILIBRIUM_YIELD.percent(),
        "extraction",
        "EQUILIBRIUM_YIELD",
    ),
    (
        "SOLUBLE_LIMIT_LOW_PCT",
        extraction::SOLUBLE_LIMIT_LOW.percent(),
        "extraction",
        "SOLUBLE_LIMIT_LOW",
    ),
    (
        "SOLUBLE_LIMIT_HIGH_PCT",
        extraction::SOLUBLE_LIMIT_HIGH.percent(),
        "extraction",
        "SOLUBLE_LIMIT_HIGH",
    ),
    ("NEAR_LIMIT_POINTS", extraction::NEAR_LIMIT_POINTS, "extraction", "NEAR_LIMIT_POINTS"),
    (
        "GROUNDS_J_PER_G_K",
        heat::GROUNDS_SPECIFIC_HEAT.joules_per_gram_kelvin(),
        "heat",
        "GROUNDS_SPECIFIC_HEAT",
    ),
    ("MILK_J_PER_G_K", dilution::MILK_J_PER_G_K, "dilution", "MILK_J_PER_G_K"),
    ("THIN_STREAM_DROP_K", heat::THIN_STREAM_DROP.kelvin(), "heat", "THIN_STREAM_DROP"),
    ("DUMP_DROP_K", heat::DUMP_DROP.kelvin(), "heat", "DUMP_DROP"),
    ("OPEN_CUP_K_PER_KPA", heat::OPEN_CUP_K_PER_KPA, "heat", "OPEN_CUP_K_PER_KPA"),
    ("OPEN_CUP_W_PER_M2_KPA", heat::OPEN_CUP_W_PER_M2_KPA, "heat", "OPEN_CUP_W_PER_M2_KPA"),
    (
        "USUAL_REFRACTIVE_FACTOR_PCT_PER_BRIX",
        reading::USUAL_REFRACTIVE_FACTOR.percent_per_degree(),
        "reading",
        "USUAL_REFRACTIVE_FACTOR",
    ),
    ("VERY_HOT_DRINK_C", caution::VERY_HOT_DRINK.celsius(), "caution", "VERY_HOT_DRINK"),
    ("SCALDING_C", caution::SCALDING.celsius(), "caution", "SCALDING"),
    (
        "SINGLE_DOSE_CAFFEINE_MG",
        caution::SINGLE_DOSE_CAFFEINE.milligrams(),
        "caution",
        "SINGLE_DOSE_CAFFEINE",
    ),
    ("DAILY_CAFFEINE_MG", caution::DAILY_CAFFEINE.milligrams(), "caution", "DAILY_CAFFEINE"),
];

/// All constants: those above, and the materials' specific heats.
pub fn constants() -> Outcome<Vec<Constant>> {
    let mut constants = Vec::new();
    for (name, value, file, core_name) in NUMBERS {
        constants.push(Constant { name: name.to_string(), value, about: docs(file, core_name)? });
    }
    for material in heat::MATERIALS {
        constants.push(Constant {
            name: format!("{}_J_PER_G_K", material.name.to_uppercase().replace([' ', '-'], "_")),
            value: material.specific_heat.value(),
            about: format!(
                "Specific heat of {}, J/(g K). Source: {}.",
                material.name, material.source
            ),
        });
    }
    Ok(constants)
}

/// The docs of a constant of the core, in one line and without Rust's links.
fn docs(file: &str, name: &str) -> Outcome<String> {
    let path = root().join("crates/cupwright/src").join(file).with_extension("rs");
    let fail = |error: &dyn std::fmt::Display| format!("{}: {error}", path.display());
    let text = text_of(&path)?;
    let source = syn::parse_file(&text).map_err(|error| fail(&error))?;
    let constant = source.items.iter().find_map(|item| match item {
        syn::Item::Const(constant) if constant.ident == name => Some(constant),
        _ => None,
    });
    let constant = constant.ok_or_else(|| fail(&format!("no constant {name}")))?;
    let words = crate::c::interface::docs(&constant.attrs).replace('\n', " ").replace("  ", " ");
    Ok(words.replace(['[', ']', '`'], "").replace("**", ""))
}

/// The published windows, by their names outside Rust.
pub const WINDOWS: [(&str, PublishedWindow); 2] =
    [("GOLDEN_CUP_2015", GOLDEN_CUP_2015), ("HOME_BREWER_2018", HOME_BREWER_2018)];

/// The numbers of a window, lowest and highest strength, lowest and highest yield, whether it has a yield, and how
/// that is counted.
pub fn edges(window: &PublishedWindow) -> Vec<f64> {
    let window = window.window;
    let mut edges = vec![window.strength.lowest().value(), window.strength.highest().value()];
    match window.extracted {
        None => edges.extend([0.0, 0.0, 0.0]),
        Some(band) => edges.extend([band.lowest().value(), band.highest().value(), 1.0]),
    }
    edges.push(f64::from(window.counting as u8));
    edges
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_constant_has_its_docs() {
        let constants = constants().unwrap();
        assert_eq!(constants.len(), NUMBERS.len() + heat::MATERIALS.len());
        for Constant { name, about, .. } in &constants {
            assert!(about.ends_with('.') && !about.contains(['[', '`', '\n']), "{name}: {about}");
        }
        let scalding = constants.iter().find(|constant| constant.name == "SCALDING_C").unwrap();
        assert!(scalding.about.starts_with("From here a serious burn"), "{}", scalding.about);
        assert!(docs("heat", "NOT_THERE").is_err());
    }
}
