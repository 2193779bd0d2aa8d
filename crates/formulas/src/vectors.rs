//! The check values of `tests/vectors`.

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};

use serde::Deserialize;

/// Check values of one source.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub struct File {
    pub source: String,
    pub seen: String,
    pub made_by: String,
    pub checks: Vec<Check>,
}

/// A formula, what goes in, what must come out, and how near.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Check {
    pub formula: String,
    pub r#in: BTreeMap<String, serde_json::Value>,
    pub out: BTreeMap<String, f64>,
    pub tolerance: BTreeMap<String, f64>,
    pub why: String,
    #[serde(default)]
    pub note: String,
}

/// Every file with its path, in the order of their names.
pub fn files() -> Vec<(PathBuf, File)> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../tests/vectors");
    let mut paths: Vec<_> = std::fs::read_dir(folder)
        .unwrap()
        .map(|entry| entry.unwrap().path())
        .filter(|path| path.extension().is_some_and(|e| e == "json"))
        .collect();
    paths.sort();
    assert!(paths.len() >= 8, "check values are missing: {paths:?}");
    paths
        .into_iter()
        .map(|path| {
            let text = std::fs::read_to_string(&path).unwrap();
            let file = serde_json::from_str(&text)
                .unwrap_or_else(|error| panic!("{}: {error}", path.display()));
            (path, file)
        })
        .collect()
}

/// Formulas whose check is elsewhere, with the reason.
pub const CHECKED_ELSEWHERE: &[(&str, &str)] = &[
    ("heat.reachable", "a comparison"),
    (
        "heat.grounds",
        "one multiplication; 250 g of water over 16 g of grounds in the docs of settle",
    ),
    ("verdict.stand", "subtractions; a published window in errors.rs"),
    ("caution.of", "comparisons; each caution alone in caution.rs"),
    ("plan.recipe", "the models turned round: its recipes brewed forward again in plans.rs"),
];
