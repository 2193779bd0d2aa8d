//! The page of all formulas, put together from what is written down elsewhere.

use std::collections::{BTreeMap, BTreeSet};
use std::fmt::Write;

use super::{Found, Public, Room, javascript_of};
use crate::Outcome;
use crate::c::calls::function_of;
use crate::c::header::ranges_put_in;
use crate::c::interface::{self, Interface, Type, Variable};
use crate::c::size;
use crate::commands::text_of;
use crate::tables::spaced;

const HEAD: &str = "\
# Every formula

Made by `cargo xtask manifest` from the source, its docs and its tests; `cargo xtask test` fails where a formula
lacks anything of what is told here, or where this page is not what would be made.

A formula has one name everywhere: `ratio.water_ratio` is `ratio::water_ratio` in Rust, with types, and
`cupwright_ratio_water_ratio` in C and `ratio.waterRatio` in JavaScript, with plain numbers whose names carry their
units. What goes in is checked against the range given with it. Percentages go in and come out as percentages, and into
an equation as fractions.

* **Check values** are numbers from outside the library: published ones copied by hand, or computed by another method.
  The names are files of [tests/vectors](../tests/vectors), each with its source.
* **Digits** are those that are right in the worst of up to a thousand answers, inputs scattered over their whole ranges
  ([how it is measured](../tests/reference/ACCURACY.md)). Where few are left the reason is told. None are counted of
  choices, fits and what is made of several formulas; their check values have tolerances of their own.
* **Sources**: clauses of the GUM are cited from memory, but for those that check values come from.
* **Instructions** are those of an ordinary call on a Cortex-M0, all arithmetic in software
  ([other processors, flash](../bindings/c/COSTS.md)).

";

const RECORDS: &str = "\
# Records

What goes in and out together: structs in C, named `cupwright_` and then as here, and plain objects in JavaScript.

";

/// How well an answer was measured: its fewest right digits, if any were counted, and why they are few.
#[derive(Default)]
struct Digits {
    fewest: Option<f64>,
    reason: Option<String>,
}

/// Digits of every formula, from the table of `cargo xtask accuracy`.
fn digits(table: &str) -> BTreeMap<String, Digits> {
    let mut all: BTreeMap<String, Digits> = BTreeMap::new();
    for line in table.lines() {
        if let Some((id, reason)) = line.strip_prefix("* `").and_then(|l| l.split_once("`: ")) {
            all.entry(id.to_string()).or_default().reason = Some(reason.to_string());
        }
        let cells: Vec<&str> = line.split('|').map(str::trim).collect();
        let [_, id, _, _, _, digits, _, _, ..] = cells[..] else { continue };
        let digits = if digits == "all" { Ok(f64::INFINITY) } else { digits.parse::<f64>() };
        if let Ok(digits) = digits {
            let entry = all.entry(id.trim_matches('`').to_string()).or_default();
            if entry.fewest.is_none_or(|fewest| digits < fewest) {
                entry.fewest = Some(digits);
            }
        }
    }
    all
}

/// What is told of a formula beside its docs.
struct Told {
    values: String,
    checked: String,
    digits: String,
    reason: String,
    instructions: String,
}

fn told(id: &str, found: &Found, digits: Option<&Digits>, costs: Option<&Vec<u64>>) -> Told {
    let files = found.checked.get(id).cloned().unwrap_or_default();
    let checked: Vec<String> =
        files.iter().map(|(file, count)| format!("{file} {count}")).collect();
    let none_of_its_own = found.excused.get(id).map(|why| format!("none of its own; {why}"));
    let shown = |fewest: f64| {
        if fewest.is_finite() { format!("{fewest:.1}") } else { "all".to_string() }
    };
    let reason = digits.and_then(|digits| digits.reason.clone());
    Told {
        values: match files.values().sum::<u64>() {
            0 => String::new(),
            count => spaced(count),
        },
        checked: none_of_its_own.unwrap_or_else(|| checked.join(", ")),
        digits: digits.and_then(|digits| digits.fewest).map_or_else(String::new, shown),
        reason: reason.map_or_else(String::new, |reason| format!(": {reason}")),
        instructions: costs
            .and_then(|costs| costs.get(2))
            .map_or_else(String::new, |count| spaced(*count)),
    }
}

/// What docs say of a parameter or field, with ranges.
fn about(variable: &Variable) -> Outcome<String> {
    let about = variable.about.trim_start_matches("@param[out] ").trim_start_matches("@param ");
    let about = about.strip_prefix(&format!("{} ", variable.name)).unwrap_or(about);
    ranges_put_in(&about.replace('\n', " "))
}

/// The record that a type is, or holds, or points to.
fn record_of(kind: &Type) -> Option<&str> {
    match kind {
        Type::Record(name) => Some(name),
        Type::In(of) | Type::Out(of) | Type::Array(of, _) => record_of(of),
        _ => None,
    }
}

/// A record's name as a link.
fn link(record: &str) -> String {
    let name = record.trim_start_matches("cupwright_");
    format!("[{name}](#{name})")
}

/// A line of what goes in or comes out.
fn line(variable: &Variable) -> Outcome<String> {
    let about = about(variable)?;
    Ok(match record_of(&variable.kind) {
        Some(record) => format!("`{}`, {}: {about}", variable.name, link(record)),
        None => format!("`{}`: {about}", variable.name),
    })
}

/// A formula's own section.
fn entry(formula: &Public, interface: &Interface, told: &Told) -> Outcome<String> {
    let (id, c) = (&formula.id, function_of(&formula.id));
    let parameters = &interface.function(&c).parameters;
    let mut text = format!("### {id}\n\n{}\n\n```text\n", formula.answers());
    for equation in formula.equations() {
        let _ = writeln!(text, "{equation}");
    }
    let symbols = formula.symbols().unwrap_or_default();
    let source = formula.source().unwrap_or_default();
    let _ = writeln!(text, "```\n\n{symbols}\n");
    let [inputs @ .., out, _] = &parameters[..] else { return Err(format!("{c} takes nothing")) };
    for input in inputs.iter().filter(|input| input.kind != Type::Size) {
        let _ = writeln!(text, "* takes {}", line(input)?);
    }
    let _ = writeln!(text, "* gives {}", line(out)?);
    let _ = writeln!(text, "* source: {source}\n* check values: {}", told.checked);
    if !told.digits.is_empty() {
        let _ = writeln!(text, "* right digits, at worst: {}{}", told.digits, told.reason);
    }
    let _ = writeln!(text, "* `{c}` in C, `{}` in JavaScript\n", javascript_of(id));
    Ok(text)
}

/// Records that formulas take or give, those inside of them too.
fn records<'a>(interface: &'a Interface, formulas: &[&Public]) -> BTreeSet<&'a str> {
    let mut records = BTreeSet::new();
    let mut open: Vec<&str> = Vec::new();
    for formula in formulas {
        let parameters = &interface.function(&function_of(&formula.id)).parameters;
        let (_, parameters) = parameters.split_last().expect("an error's place");
        open.extend(parameters.iter().filter_map(|parameter| record_of(&parameter.kind)));
    }
    while let Some(name) = open.pop() {
        if records.insert(name) {
            let fields = interface.record(name).fields.iter();
            open.extend(fields.filter_map(|field| record_of(&field.kind)));
        }
    }
    records
}

/// The page.
pub fn made(rooms: &[Room], found: &Found) -> Outcome<String> {
    let interface = interface::read()?;
    let digits = digits(&text_of("tests/reference/ACCURACY.md")?);
    let costs = size::rows(&text_of("bindings/c/COSTS.md")?);
    let mut text = HEAD.to_string();
    let all: Vec<&Public> = rooms.iter().flat_map(|room| &room.formulas).collect();
    let _ = writeln!(text, "| {} rooms | | {} formulas |\n|---|---|---:|", rooms.len(), all.len());
    for Room { name: room, about, formulas } in rooms {
        let first = about.split("\n\n").next().unwrap_or_default().replace('\n', " ");
        let _ = writeln!(text, "| [{room}](#{room}) | {first} | {} |", formulas.len());
    }
    text.push('\n');
    for Room { name: room, about, formulas } in rooms {
        let _ = writeln!(
            text,
            "## {room}\n\n{about}\n\n\
             | formula | equation | check values | digits | instructions |\n|---|---|---:|---:|---:|"
        );
        let mut entries = String::new();
        for formula in formulas {
            let id = &formula.id;
            let told = told(id, found, digits.get(id), costs.get(&function_of(id)));
            let (_, name) = id.split_once('.').unwrap_or_default();
            let anchor = id.replace('.', "");
            let equation =
                formula.equations().first().copied().unwrap_or_default().replace('|', "\\|");
            let Told { values, digits, instructions, .. } = &told;
            let _ = writeln!(
                text,
                "| [{name}](#{anchor}) | `{}` | {values} | {digits} | {instructions} |",
                equation.trim()
            );
            entries.push_str(&entry(formula, &interface, &told)?);
        }
        let _ = write!(text, "\n{entries}");
    }
    text.push_str(RECORDS);
    for name in records(&interface, &all) {
        let _ = writeln!(text, "### {}\n", name.trim_start_matches("cupwright_"));
        for field in &interface.record(name).fields {
            let _ = writeln!(text, "* {}", line(field)?);
        }
        text.push('\n');
    }
    Ok(text.trim_end().to_string() + "\n")
}
