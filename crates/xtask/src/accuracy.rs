//! How many digits of each formula's answers are right: the core's answers at many points against the
//! documented equations in fifty digits (`tests/reference/accuracy.py`), and against what was accepted.

use std::fmt::Write;
use std::path::PathBuf;

use formulas::examples::examples;
use formulas::inputs::{Asked, Given, Remembered};
use formulas::scattered::Scattered;
use formulas::vectors::files;
use formulas::{FORMULAS, Formula, Outputs};
use serde_json::{Map, Value, json};

use crate::commands::{output, program, run};
use crate::{Outcome, reference, root};

/// Answered points of each formula.
const POINTS: usize = 1000;

/// Draws for each point that may be refused.
const DRAWS: u64 = 60;

/// Fewer points where the reference takes long: by quadrature, by roots of one, or by roots of the equation
/// of water's heat content.
const FEWER: [(&str, usize); 20] = [
    ("water.temperature_of_enthalpy", 500),
    ("dilution.mixed_temperature", 300),
    ("dilution.mixed_with_milk_temperature", 300),
    ("dilution.iced", 300),
    ("heat.settle", 300),
    ("heat.before_settling", 300),
    ("heat.preheated", 300),
    ("heat.after_vapour", 300),
    ("heat.vessel_heat_capacity", 500),
    ("heat.time_to_cool", 100),
    ("heat.cooling_rate", 60),
    ("heat.temperature_after", 40),
    ("uncertainty.coverage_factor", 150),
    ("uncertainty.expanded", 40),
    ("decision.chances", 100),
    ("decision.largest_uncertainty", 40),
    ("decision.acceptance", 30),
    ("decision.joint", 30),
    ("decision.compare", 30),
    ("extraction.time_for_yield", 500),
];

fn committed() -> PathBuf {
    root().join("tests/reference/ACCURACY.md")
}

fn hex(value: f64) -> Value {
    json!(format!("{:016x}", value.to_bits()))
}

/// A point as a line of JSON, every number the text of its bits.
fn line(formula: &Formula, asked: &[(String, Asked)], outputs: &Outputs) -> Value {
    let given: Map<String, Value> = asked
        .iter()
        .map(|(name, asked)| {
            let value = match asked {
                Asked::Number(_, value) => hex(*value),
                Asked::Numbers(_, values) => values.iter().copied().map(hex).collect(),
                Asked::Choice(code, _) => hex(f64::from(*code)),
                Asked::Flag(is) => hex(f64::from(u8::from(*is))),
            };
            (name.clone(), value)
        })
        .collect();
    let out: Map<String, Value> =
        outputs.iter().map(|(name, value)| ((*name).to_string(), hex(*value))).collect();
    json!({ "formula": formula.id, "in": given, "out": out })
}

/// Answered points of a formula, scattered over its ranges and around its example.
fn points(formula: &Formula, base: &Given, text: &mut String) {
    let count = FEWER.iter().find(|(id, _)| *id == formula.id).map_or(POINTS, |(_, count)| *count);
    let mut left = count;
    for number in 0..count as u64 * DRAWS {
        let inputs = Scattered::new(formula.id, number, base, false);
        let remembered = Remembered::new(&inputs);
        let Ok(outputs) = (formula.call)(&remembered) else { continue };
        // Writing to a string does not fail.
        let _ = writeln!(text, "{}", line(formula, &remembered.asked.into_inner(), &outputs));
        left -= 1;
        if left == 0 {
            break;
        }
    }
}

/// Which files of check values reach a formula.
fn checked_by(id: &str) -> Vec<String> {
    let reaches = |file: &formulas::vectors::File| file.checks.iter().any(|c| c.formula == id);
    let named = files().into_iter().filter(|(_, file)| reaches(file));
    named.map(|(path, _)| path.file_stem().unwrap().to_string_lossy().into_owned()).collect()
}

/// Measures, and refuses what is worse than what was accepted. The table is written where `accept` says so,
/// or where nothing is worse.
fn measure(options: &[&str]) -> Outcome {
    let python = reference::python()?;
    let script = || {
        let mut script = program(&python);
        script.arg("tests/reference/accuracy.py").env("PYTHONDONTWRITEBYTECODE", "1");
        script
    };
    let listed = output(script().arg("--formulas"))?;
    let examples = examples();
    let mut text = String::new();
    for formula in FORMULAS {
        if listed.lines().any(|id| id == formula.id) {
            points(formula, &examples[formula.id], &mut text);
        } else {
            let by = checked_by(formula.id);
            let _ = writeln!(text, "{}", json!({ "formula": formula.id, "checked_by": by }));
        }
    }
    let folder = root().join("target/accuracy");
    let path = folder.join("points.jsonl");
    std::fs::create_dir_all(&folder)
        .and_then(|()| std::fs::write(&path, text))
        .map_err(|error| format!("{}: {error}", path.display()))?;
    run(script().args(options).args([path, committed()]))
}

/// Measures and compares with the committed table, which stays.
pub fn check() -> Outcome {
    measure(&["--check"])
}

/// Measures, fails where an error has grown, and else writes the table.
pub fn write() -> Outcome {
    measure(&[])
}

/// Measures and writes the table, whatever has grown.
pub fn accept() -> Outcome {
    measure(&["--accept"])
}
