//! Cases for the JavaScript face: options in, and the core's own answer or error, to the last bit.
//!
//! A line of JSON per case. Every number is the text of its bits, sixteen hexadecimal digits, so that
//! not-a-number and negative zero come through.

use std::cell::RefCell;
use std::collections::BTreeMap;

use cupwright::Error;
use cupwright::quantity::Quantity;
use formulas::examples::examples;
use formulas::inputs::{Asked, Drawn, Given, Inputs, Near, Remembered};
use formulas::vectors::files;
use formulas::{FORMULAS, Formula, Outputs};
use serde_json::{Map, Value, json};

use super::about::key;
use super::face::{Meaning, camel, choice_of, chosen_at, codes, count_of, flag_of, meaning};
use crate::Outcome;
use crate::c::calls::function_of;
use crate::c::cases::{blamed, spoiled, unaccepted_items, wholes};
use crate::c::interface::{self, Function, Interface, Type};

/// All cases, with as many random ones of each kind for each function as asked for.
pub fn all(random: u64) -> Outcome<String> {
    let interface = interface::read()?;
    let mut lines = String::new();
    let mut add = |formula: &Formula, inputs: &dyn Inputs| {
        if let Some(case) = case(&interface, formula, inputs) {
            lines.push_str(&case.to_string());
            lines.push('\n');
        }
    };
    let examples = examples();
    for formula in FORMULAS {
        let base = &examples[formula.id];
        add(formula, base);
        for inputs in spoiled(formula, base) {
            add(formula, &inputs);
        }
        for seed in 0..random {
            add(formula, &Near { base, drawn: Drawn(RefCell::new(seed)) });
            add(formula, &Drawn(RefCell::new(seed)));
        }
    }
    for check in files().into_iter().flat_map(|(_, file)| file.checks) {
        let formula =
            FORMULAS.iter().find(|f| f.id == check.formula).expect("a check of a known formula");
        add(formula, &Given(check.r#in));
    }
    Ok(lines)
}

fn bits(value: f64) -> Value {
    json!(format!("{:016x}", value.to_bits()))
}

/// A case; none where inputs that were not asked for leave nothing to say for a field that must be there.
fn case(interface: &Interface, formula: &Formula, inputs: &dyn Inputs) -> Option<Value> {
    let remembered = Remembered::new(inputs);
    let answer = (formula.call)(&remembered);
    let asked = remembered.asked.into_inner();
    // A count of negative zero is zero in the module.
    let is_lost = |asked: &Asked| matches!(asked, Asked::Number(q, v) if q.is_whole() && *v == 0.0 && v.is_sign_negative());
    if asked.iter().any(|(_, asked)| is_lost(asked)) {
        return None;
    }
    // An item that is no integer is refused before any other.
    if wholes(&asked).next().is_some() && unaccepted_items(&asked) > 1 {
        return None;
    }
    let function = interface.functions.iter().find(|f| f.name == function_of(formula.id))?;
    let options = options(interface, function, &asked);
    let (room, name) = formula.id.split_once('.')?;
    let mut case = json!({ "room": room, "name": camel(name), "options": options });
    match answer {
        Ok(outputs) => case["answer"] = answered(interface, function, &outputs),
        Err(error) => case["refusal"] = refused(formula, &error, &asked),
    }
    Some(case)
}

/// The options object: what was asked for in its place; what was not asked for after a refusal is zero.
fn options(interface: &Interface, function: &Function, asked: &[(String, Asked)]) -> Value {
    let asked: BTreeMap<&str, &Asked> =
        asked.iter().map(|(name, asked)| (name.as_str(), asked)).collect();
    let inputs = &function.parameters[..function.parameters.len() - 2];
    let mut options = Map::new();
    for (at, input) in inputs.iter().enumerate() {
        let is_list = inputs.get(at + 1).is_some_and(|next| next.kind == Type::Size);
        let value = match &input.kind {
            Type::Size => continue,
            Type::In(to) => match (&**to, is_list) {
                (Type::Record(of), true) => items(interface, of, &asked),
                (Type::Record(of), false) => object_in(interface, of, &asked),
                _ => numbers(&asked, &input.name),
            },
            _ => scalar(interface, input, &asked),
        };
        options.insert(input.name.clone(), value);
    }
    Value::Object(options)
}

fn scalar(
    interface: &Interface,
    field: &interface::Variable,
    asked: &BTreeMap<&str, &Asked>,
) -> Value {
    match (asked.get(field.name.as_str()), meaning(field)) {
        (Some(Asked::Number(_, value)), _) => bits(*value),
        (Some(Asked::Choice(code, _)), Meaning::Choice(of)) => {
            json!(codes(interface, &of)[usize::from(*code) - 1].1)
        }
        (Some(Asked::Flag(is)), _) => json!(is),
        (None, Meaning::Choice(of)) => json!(codes(interface, &of)[0].1),
        (None, Meaning::Boolean) => json!(false),
        (None, _) => bits(0.0),
        (Some(other), _) => panic!("{}: {other:?}", field.name),
    }
}

fn numbers(asked: &BTreeMap<&str, &Asked>, name: &str) -> Value {
    match asked.get(name) {
        Some(Asked::Numbers(_, values)) => values.iter().copied().map(bits).collect(),
        _ => json!([]),
    }
}

fn items(interface: &Interface, record: &str, asked: &BTreeMap<&str, &Asked>) -> Value {
    let fields = &interface.record(record).fields;
    let lists: Vec<&[f64]> = fields
        .iter()
        .map(|field| match asked.get(field.name.as_str()) {
            Some(Asked::Numbers(_, values)) => &values[..],
            _ => &[],
        })
        .collect();
    let count = lists.iter().map(|list| list.len()).min().unwrap_or(0);
    (0..count)
        .map(|at| {
            let object =
                fields.iter().zip(&lists).map(|(field, list)| (field.name.clone(), bits(list[at])));
            Value::Object(object.collect())
        })
        .collect()
}

fn object_in(interface: &Interface, record: &str, asked: &BTreeMap<&str, &Asked>) -> Value {
    let record = interface.record(record);
    let mut object = Map::new();
    for field in &record.fields {
        if matches!(meaning(field), Meaning::Flag) {
            continue;
        }
        if let Some(flag) = flag_of(record, &field.name)
            && !matches!(asked.get(flag), Some(Asked::Flag(true)))
        {
            continue;
        }
        if let Some((choice, values)) = chosen_at(&field.about) {
            // A choice that was not asked for is the first one.
            let first = &codes(interface, &choice)[0].1;
            let is_default = !asked.contains_key(choice.as_str()) && values.contains(first);
            if !is_default && !asked.contains_key(field.name.as_str()) {
                continue;
            }
        }
        let value = match meaning(field) {
            Meaning::Record(of) => object_in(interface, &of, asked),
            _ => scalar(interface, field, asked),
        };
        object.insert(field.name.clone(), value);
    }
    Value::Object(object)
}

/// The answer as the face gives it.
fn answered(interface: &Interface, function: &Function, outputs: &Outputs) -> Value {
    let out = &function.parameters[function.parameters.len() - 2];
    let Type::Out(to) = &out.kind else { panic!("{}: no answer", function.name) };
    match &**to {
        Type::Record(of) => object_out(interface, of, "", outputs),
        Type::Unsigned => json!({ &out.name: cautions(outputs[0].1) }),
        _ => match choice_of(out) {
            Some(of) => json!({ &out.name: codes(interface, &of)[outputs[0].1 as usize - 1].1 }),
            None => json!({ &out.name: bits(outputs[0].1) }),
        },
    }
}

fn object_out(interface: &Interface, record: &str, before: &str, outputs: &Outputs) -> Value {
    let record = interface.record(record);
    let value = |name: &str| {
        let path = format!("{before}{name}");
        outputs.iter().find(|(of, _)| *of == path).unwrap_or_else(|| panic!("no {path}")).1
    };
    let mut object = Map::new();
    for field in &record.fields {
        if matches!(meaning(field), Meaning::Flag) || field.name.ends_with("_count") {
            continue;
        }
        let is_there = flag_of(record, &field.name).is_none_or(|flag| value(flag) != 0.0);
        let shown = match meaning(field) {
            _ if !is_there => Value::Null,
            Meaning::Number | Meaning::Count => bits(value(&field.name)),
            Meaning::Boolean => json!(value(&field.name) != 0.0),
            Meaning::Choice(of) => json!(codes(interface, &of)[value(&field.name) as usize - 1].1),
            Meaning::Quantity => {
                let code = value(&field.name) as u16;
                json!(Quantity::ALL.iter().find(|q| **q as u16 == code).map(key))
            }
            Meaning::Cautions => cautions(value(&field.name)),
            Meaning::Record(of) => {
                object_out(interface, &of, &format!("{before}{}.", field.name), outputs)
            }
            Meaning::Array(of, _) => {
                let count = value(&count_of(field)) as usize;
                (0..count)
                    .map(|at| {
                        object_out(
                            interface,
                            &of,
                            &format!("{before}{}.{at}.", field.name),
                            outputs,
                        )
                    })
                    .collect()
            }
            Meaning::Numbers(_) => (0..value(&count_of(field)) as usize)
                .map(|at| bits(value(&format!("{}.{at}", field.name))))
                .collect(),
            Meaning::Table(rows, columns) => (0..rows)
                .map(|row| -> Value {
                    let entry = |at| bits(value(&format!("{}.{row}.{at}", field.name)));
                    (0..columns).map(entry).collect()
                })
                .collect(),
            Meaning::Flag => unreachable!("skipped"),
        };
        object.insert(field.name.clone(), shown);
    }
    Value::Object(object)
}

fn cautions(bits: f64) -> Value {
    let bits = bits as u32;
    let all = cupwright::caution::Caution::ALL;
    all.into_iter()
        .filter(|caution| bits & (1 << (*caution as u32)) != 0)
        .map(|c| json!(key(&c)))
        .collect()
}

/// The refusal as the face throws it, in the core's words.
fn refused(formula: &Formula, error: &Error, asked: &[(String, Asked)]) -> Value {
    let field = blamed(formula, error, asked);
    let mut refusal = json!({ "message": error.to_string(), "field": field });
    let mut put = |code: &str, quantity: Quantity, facts: &[(&str, f64)]| {
        refusal["code"] = json!(code);
        refusal["quantity"] = json!(key(&quantity));
        for (name, value) in facts {
            refusal[*name] = bits(*value);
        }
    };
    match *error {
        Error::OutOfRange { quantity, value, lowest, highest } => {
            put("out_of_range", quantity, &[("value", value), ("min", lowest), ("max", highest)]);
        }
        Error::NotWhole { quantity, value, lowest, highest } => {
            put("not_whole", quantity, &[("value", value), ("min", lowest), ("max", highest)]);
        }
        Error::Impossible { quantity, value, lowest, highest, beside } => {
            put("impossible", quantity, &[("value", value), ("min", lowest), ("max", highest)]);
            refusal["beside"] = json!(key(&beside));
        }
        Error::EmptyBand { quantity, lowest, highest } => {
            put("empty_band", quantity, &[("min", lowest), ("max", highest)]);
        }
        Error::ResultOutOfRange { quantity, value, lowest, highest } => {
            put(
                "result_out_of_range",
                quantity,
                &[("value", value), ("min", lowest), ("max", highest)],
            );
        }
        Error::Infeasible { wish, value, nearest, limit } => {
            put("infeasible", wish, &[("value", value), ("nearest", nearest)]);
            refusal["limit"] = json!(key(&limit));
        }
        Error::CannotTell { quantity, why, found, needed } => {
            put("cannot_tell", quantity, &[("value", found), ("min", needed)]);
            refusal["why"] = json!(key(&why));
        }
        other => panic!("a new variant: {other:?}"),
    }
    refusal
}
