//! Every check value in `tests/vectors`, each file with its source, against the core.

use std::collections::BTreeSet;

use formulas::FORMULAS;
use formulas::inputs::Given;
use formulas::vectors::{CHECKED_ELSEWHERE, files};

#[test]
fn the_core_meets_every_check_value() {
    let mut checked = 0;
    let mut failures = Vec::new();
    for (path, file) in files() {
        let name = path.file_name().unwrap().to_string_lossy().into_owned();
        assert!(
            !file.source.is_empty() && !file.seen.is_empty() && !file.made_by.is_empty(),
            "{name}: a source is missing"
        );
        for check in file.checks {
            assert!(!check.why.is_empty(), "{name}: a tolerance without a reason");
            let formula = FORMULAS
                .iter()
                .find(|formula| formula.id == check.formula)
                .unwrap_or_else(|| panic!("{name}: no formula {}", check.formula));
            let context = format!("{name}: {} {:?} {}", check.formula, check.r#in, check.note);
            let outputs = match (formula.call)(&Given(check.r#in)) {
                Ok(outputs) => outputs,
                Err(error) => {
                    failures.push(format!("{context}: {error}"));
                    continue;
                }
            };
            for (field, expected) in &check.out {
                let (_, got) = outputs
                    .iter()
                    .find(|(name, _)| name == field)
                    .unwrap_or_else(|| panic!("{context}: no output {field}"));
                let tolerance = check.tolerance[field];
                checked += 1;
                let met = (got - expected).abs() <= tolerance;
                if !met {
                    failures.push(format!(
                        "{context}: {field} is {got:e}, expected {expected:e} within {tolerance:e}, off by {:e}",
                        got - expected
                    ));
                }
            }
        }
    }
    println!("{checked} values checked");
    assert!(failures.is_empty(), "{} of {checked} fail:\n{}", failures.len(), failures.join("\n"));
}

#[test]
fn no_formula_goes_unchecked() {
    let checked: BTreeSet<String> =
        files().into_iter().flat_map(|(_, file)| file.checks).map(|check| check.formula).collect();
    let missing: Vec<_> = FORMULAS
        .iter()
        .map(|formula| formula.id)
        .filter(|id| !checked.contains(*id))
        .filter(|id| !CHECKED_ELSEWHERE.iter().any(|(elsewhere, _)| elsewhere == id))
        .collect();
    assert!(missing.is_empty(), "no check value for {missing:?}");
}
