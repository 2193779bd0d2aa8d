//! What the header says of each function, held against what the function does: the ranges of its
//! inputs, and the ways in which it fails.

use std::cell::RefCell;
use std::collections::{BTreeMap, BTreeSet};

use cupwright::Error;
use formulas::examples::examples;
use formulas::inputs::{Asked, Drawn, Given, Inputs, Near, Remembered, asked_by};
use formulas::vectors::files;
use formulas::{FORMULAS, Formula};

use super::calls::function_of;
use super::cases::{is_of_a_list, unaccepted};
use super::interface::{self, Function, Interface, Type};
use crate::Outcome;

/// Random inputs of each kind for each function: enough to meet every way to fail.
const RANDOM: u64 = 3_000;

/// Compares all docs with what happens.
pub fn check() -> Outcome {
    let interface = interface::read()?;
    let documented: BTreeMap<&str, &Function> =
        interface.functions.iter().map(|function| (function.name.as_str(), function)).collect();
    let mut wrong = Vec::new();
    let mut ranges = 0;
    for formula in FORMULAS {
        let name = function_of(formula.id);
        let function = documented[name.as_str()];
        let (count, mut bad) = ranges_of(&interface, function, formula);
        ranges += count;
        wrong.append(&mut bad);
        let said = said(&documented, &name);
        let met = met(formula);
        if said != met {
            wrong.push(format!("{name} says that it fails with {said:?}, and fails with {met:?}"));
        }
    }
    if !wrong.is_empty() {
        return Err(wrong.join("\n"));
    }
    println!("{ranges} ranges and the failures of {} functions are as documented", FORMULAS.len());
    Ok(())
}

/// How many documented ranges an example meets, and those that are another quantity's.
fn ranges_of(
    interface: &Interface,
    function: &Function,
    formula: &Formula,
) -> (usize, Vec<String>) {
    let base = &examples()[formula.id];
    let docs = docs_of_inputs(interface, function);
    let mut wrong = Vec::new();
    let asked = asked_by(formula, base);
    for (field, asked) in &asked {
        let (Asked::Number(quantity, _) | Asked::Numbers(quantity, _)) = asked else { continue };
        let about = docs.get(field.as_str()).copied().unwrap_or_default();
        let named = named_in(about);
        if named != Some(format!("{quantity:?}")) {
            wrong.push(format!(
                "{}: {field} is a {quantity:?}, its docs say {about:?}",
                function.name
            ));
        }
    }
    (asked.len(), wrong)
}

/// Docs of parameters and of the fields of their structs, by name.
fn docs_of_inputs<'a>(
    interface: &'a Interface,
    function: &'a Function,
) -> BTreeMap<&'a str, &'a str> {
    let mut docs = BTreeMap::new();
    let inputs = function.parameters.len() - 2;
    for parameter in &function.parameters[..inputs] {
        docs.insert(parameter.name.as_str(), parameter.about.as_str());
        if let Type::In(to) = &parameter.kind
            && let Type::Record(record) = &**to
        {
            fields(interface, record, &mut docs);
        }
    }
    docs
}

fn fields<'a>(interface: &'a Interface, record: &str, docs: &mut BTreeMap<&'a str, &'a str>) {
    for field in &interface.record(record).fields {
        match &field.kind {
            Type::Record(inner) => fields(interface, inner, docs),
            _ => {
                docs.insert(field.name.as_str(), field.about.as_str());
            }
        }
    }
}

/// The first name in braces.
fn named_in(about: &str) -> Option<String> {
    let (name, _) = about.split_once('{')?.1.split_once('}')?;
    Some(name.to_string())
}

/// The failures that a function's docs speak of, those of functions that they point to included.
fn said<'a>(documented: &BTreeMap<&'a str, &'a Function>, name: &str) -> BTreeSet<String> {
    let Some((_, fails)) = documented[name].about.split_once("Fails with") else {
        return BTreeSet::new();
    };
    let fails = fails.replace('\n', " ");
    let mut said = BTreeSet::new();
    for word in fails.split(|c: char| !c.is_ascii_alphanumeric() && c != '_') {
        if let Some(status) = word.strip_prefix("CUPWRIGHT_STATUS_") {
            said.insert(status.to_string());
        } else if word.starts_with("cupwright_") && word != name {
            said.extend(self::said(documented, word));
        }
    }
    said
}

/// The failures that happen, apart from inputs that are not accepted.
fn met(formula: &Formula) -> BTreeSet<String> {
    let base = &examples()[formula.id];
    let mut met = BTreeSet::new();
    let mut meet = |inputs: &dyn Inputs| {
        let remembered = Remembered::new(inputs);
        let Err(error) = (formula.call)(&remembered) else { return };
        let asked = remembered.asked.into_inner();
        if is_of_a_list(&error, &asked) || unaccepted(&asked).is_none() {
            met.insert(status(&error).to_string());
        }
    };
    for seed in 0..RANDOM {
        meet(&Near { base, drawn: Drawn(RefCell::new(seed)) });
        meet(&Drawn(RefCell::new(seed)));
    }
    for check in files().into_iter().flat_map(|(_, file)| file.checks) {
        if check.formula == formula.id {
            meet(&Given(check.r#in));
        }
    }
    met
}

fn status(error: &Error) -> &'static str {
    match error {
        Error::OutOfRange { .. } => "OUT_OF_RANGE",
        Error::NotWhole { .. } => "NOT_WHOLE",
        Error::Impossible { .. } => "IMPOSSIBLE",
        Error::EmptyBand { .. } => "EMPTY_BAND",
        Error::ResultOutOfRange { .. } => "RESULT_OUT_OF_RANGE",
        Error::Infeasible { .. } => "INFEASIBLE",
        Error::CannotTell { .. } => "CANNOT_TELL",
        other => panic!("a new variant: {other:?}"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn names_in_braces() {
        assert_eq!(named_in("Dose as weighed, {Dose}; {Share}."), Some("Dose".to_string()));
        assert_eq!(named_in("Anything."), None);
    }

    #[test]
    fn failures_of_another_function_count() {
        let interface = interface::read().unwrap();
        let documented = interface.functions.iter().map(|f| (f.name.as_str(), f)).collect();
        let of = |name| said(&documented, name);
        assert_eq!(of("cupwright_extraction_plausibility"), of("cupwright_extraction_yield"));
        assert!(!of("cupwright_extraction_yield").is_empty());
    }
}
