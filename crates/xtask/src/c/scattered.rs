//! The same bits for random inputs on every target: each target draws the inputs itself
//! (`formulas::scattered`), and hashes of all its answers are compared with those that were accepted.

use std::collections::{BTreeMap, BTreeSet};
use std::fmt::Write;
use std::path::PathBuf;
use std::sync::OnceLock;
use std::sync::atomic::{AtomicUsize, Ordering};

use cupwright::quantity::Quantity;
use formulas::examples::examples;
use formulas::inputs::{Asked, Given, Inputs, asked_by};
use formulas::scattered::{Scattered, fnv};
use formulas::{FORMULAS, Formula};
use serde_json::{Value, json};

use super::calls::{self, Call, Taken, function_of};
use super::cases::facts;
use super::interface::{self, Type};
use crate::commands::text_of;
use crate::{Outcome, root};

/// All inputs of a formula.
pub const ALL: u64 = 10_000;

/// Which of a formula's inputs are answered.
#[derive(Clone, Copy)]
pub enum Points {
    All,
    /// The first ones, as many as an emulated Cortex-M0 has time for.
    OnBoards,
}

/// Instructions on a Cortex-M0 that a formula's calls may take all together.
const INSTRUCTIONS: u64 = 150_000_000;

/// Instructions of a function that COSTS.md does not list yet: as many as a budget takes.
const UNMEASURED: u64 = 2_000_000;

/// Points of a formula on boards, whose call takes so many instructions.
fn points(cost: u64) -> u64 {
    (INSTRUCTIONS / cost.max(1)).clamp(10, ALL)
}

/// Hashes of a formula's answers, by how many points they are of: of all, and of those on boards.
pub type Hashes = BTreeMap<u64, u64>;

/// What was accepted of each formula.
pub type Golden = BTreeMap<String, Hashes>;

impl Points {
    /// How many points, and the hash of their answers.
    pub fn of(self, golden: &Golden, formula: &Formula) -> Outcome<(u64, u64)> {
        let hashes = golden.get(formula.id).and_then(|hashes| match self {
            Self::All => hashes.get_key_value(&ALL),
            Self::OnBoards => hashes.first_key_value(),
        });
        let (points, hash) =
            hashes.ok_or_else(|| format!("no hash of {}: cargo xtask bits", formula.id))?;
        Ok((*points, *hash))
    }
}

fn path() -> PathBuf {
    root().join("tests/vectors/GOLDEN")
}

const HEAD: &str = "\
# Made by `cargo xtask bits`; `cargo xtask test` compares, on every target. Of each formula: how many scattered inputs
# (crates/formulas/src/scattered.rs), and the FNV-1a hash of 64 bits over every status, answer and refusal
# (tests/c/scattered.c). Where a call takes more than 15000 instructions on a Cortex-M0 (bindings/c/COSTS.md), first of
# the fewer inputs that emulated boards answer, then of all 10000, which computers and browsers do. A change needs a
# line under \"Numerical changes\" in CHANGELOG.md.
";

fn text(golden: &Golden) -> String {
    let mut text = HEAD.to_string();
    for (id, hashes) in FORMULAS.iter().filter_map(|formula| golden.get_key_value(formula.id)) {
        text.push_str(id);
        for (points, hash) in hashes {
            // Writing to a string does not fail.
            let _ = write!(text, " {points} {hash:016x}");
        }
        text.push('\n');
    }
    text
}

fn parsed(text: &str) -> Outcome<Golden> {
    let entry = |line: &str| -> Option<(String, Hashes)> {
        let (id, rest) = line.split_once(' ')?;
        let words: Vec<&str> = rest.split(' ').collect();
        let pairs = words.chunks(2).map(|pair| match pair {
            [points, hash] => Some((points.parse().ok()?, u64::from_str_radix(hash, 16).ok()?)),
            _ => None,
        });
        Some((id.to_string(), pairs.collect::<Option<_>>()?))
    };
    let lines = text.lines().filter(|line| !line.starts_with('#'));
    lines.map(|line| entry(line).ok_or_else(|| format!("no hash of a formula: {line}"))).collect()
}

pub fn accepted() -> Outcome<Golden> {
    parsed(&text_of(path())?)
}

/// Instructions of each function's call at its example, on a Cortex-M0.
pub fn costs() -> Outcome<BTreeMap<String, u64>> {
    let rows = super::size::rows(&text_of("bindings/c/COSTS.md")?).into_iter();
    Ok(rows.filter_map(|(name, numbers)| Some((name, *numbers.get(2)?))).collect())
}

/// Words of a point's answer: the status, then the answer or the facts of the refusal.
fn answer(call: &Call, formula: &Formula, inputs: &dyn Inputs) -> Vec<u64> {
    let bits = |value: f64| if value.is_nan() { 0x7ff8_0000_0000_0000 } else { value.to_bits() };
    match (formula.call)(inputs) {
        Ok(outputs) => std::iter::once(0).chain(call.answers(&outputs).map(bits)).collect(),
        Err(error) => {
            let f = facts(&error);
            let facts = [f.value, f.lowest, f.highest, f.nearest, f.quantity, f.beside, f.limit];
            std::iter::once(f.status as u64).chain(facts.map(bits)).collect()
        }
    }
}

/// The hash of the core's answers at so many points.
fn hash(call: &Call, formula: &Formula, base: &Given, points: u64) -> u64 {
    let words = (0..points)
        .flat_map(|number| answer(call, formula, &Scattered::new(formula.id, number, base, true)));
    fnv(words.flat_map(u64::to_le_bytes))
}

/// The core's hashes of all points and of those on boards: as many as were accepted, or as a new formula's cost allows.
fn fresh() -> Outcome<&'static Golden> {
    static HASHED: OnceLock<Outcome<Golden>> = OnceLock::new();
    HASHED.get_or_init(hash_all).as_ref().map_err(String::clone)
}

fn hash_all() -> Outcome<Golden> {
    let (interface, examples, costs) = (interface::read()?, examples(), costs()?);
    let calls = calls::all(&interface);
    let known = if path().exists() { accepted()? } else { Golden::new() };
    let one = |formula: &Formula| -> Outcome<(String, Hashes)> {
        let name = function_of(formula.id);
        let call = calls.iter().find(|call| call.function.name == name);
        let call = call.ok_or_else(|| format!("no function {name}"))?;
        let on_boards = match known.get(formula.id).and_then(Hashes::first_key_value) {
            Some((count, _)) => *count,
            None => points(costs.get(&name).copied().unwrap_or(UNMEASURED)),
        };
        let of = |count| (count, hash(call, formula, &examples[formula.id], count));
        let hashes = BTreeSet::from([on_boards, ALL]).into_iter().map(of).collect();
        Ok((formula.id.to_string(), hashes))
    };
    // Some take a hundred times as long as others: whoever is free takes the next.
    let next = AtomicUsize::new(0);
    let some = || {
        let taken = std::iter::from_fn(|| FORMULAS.get(next.fetch_add(1, Ordering::Relaxed)));
        taken.map(one).collect::<Outcome<Vec<_>>>()
    };
    std::thread::scope(|scope| {
        let other = scope.spawn(some);
        let mut all = some()?;
        all.extend(other.join().map_err(|_| "the hashing of formulas broke off".to_string())??);
        Ok(all.into_iter().collect())
    })
}

/// Which formulas' answers are no longer what they were; new ones, or more of them, do not count.
fn changed<'a>(old: &'a Golden, new: &Golden) -> Vec<&'a str> {
    let same = |id: &str, was: &Hashes| {
        let is = new.get(id);
        was.iter().all(|(points, hash)| is.and_then(|is| is.get(points)) == Some(hash))
    };
    old.iter().filter(|(id, was)| !same(id, was)).map(|(id, _)| id.as_str()).collect()
}

/// Whether the changelog's unreleased part has an entry of numerical changes.
fn says_so(changelog: &str) -> bool {
    let unreleased = changelog.split("\n## ").find(|part| part.starts_with("Unreleased"));
    let mut parts = unreleased.unwrap_or_default().split("\n### ");
    parts.any(|part| part.starts_with("Numerical changes") && part.contains("\n* "))
}

/// A change of answers is one of the interface, and stands in the changelog.
fn told(old: &Golden, new: &Golden, changelog: &str) -> Outcome {
    let changed = changed(old, new);
    if changed.is_empty() || says_so(changelog) {
        return Ok(());
    }
    Err(format!(
        "other bits than before: {}\nIf that is meant, CHANGELOG.md says so under \"Numerical changes\" of \
         \"Unreleased\"; then cargo xtask bits",
        changed.join(", ")
    ))
}

/// Accepts the present answers, where the changelog tells of what has changed.
pub fn write() -> Outcome {
    let new = fresh()?;
    if path().exists() {
        told(&accepted()?, new, &text_of("CHANGELOG.md")?)?;
    }
    std::fs::write(path(), text(new)).map_err(|error| format!("{}: {error}", path().display()))?;
    super::boards::drop_void()
}

/// Compares the core's answers on this computer with those accepted, and those with the last commit's.
pub fn check() -> Outcome {
    let (new, accepted) = (fresh()?, accepted()?);
    if *new != accepted {
        let gone = accepted.keys().any(|id| !new.contains_key(id));
        let words: Vec<&str> = changed(&accepted, new);
        return Err(format!(
            "{} is not what comes out: {}{}\nIf the change is meant: a line under \"Numerical changes\" in \
             CHANGELOG.md, and cargo xtask bits",
            path().display(),
            words.join(", "),
            if gone || words.is_empty() { " (formulas gone or new)" } else { "" }
        ));
    }
    println!("{} formulas at {ALL} inputs each, as accepted", new.len());
    Ok(())
}

/// How many formulas there are, and their inputs.
pub fn counted(which: Points) -> Outcome<(usize, u64)> {
    let accepted = accepted()?;
    let points = FORMULAS.iter().map(|formula| Ok(which.of(&accepted, formula)?.0));
    Ok((FORMULAS.len(), points.sum::<Outcome<u64>>()?))
}

/// Lines for the driver: those of some functions.
pub fn cases(calls: &[Call], which: Points) -> Outcome<String> {
    let (accepted, mut lines) = (accepted()?, String::new());
    for (at, (_, formula)) in answered(calls).enumerate() {
        let (points, hash) = which.of(&accepted, formula)?;
        let _ = writeln!(lines, "{at} {points} {hash:016x}");
    }
    let _ = writeln!(lines, "end {}", calls.len());
    Ok(lines)
}

/// Calls with the formulas that they answer.
fn answered<'a, 'b>(
    calls: &'a [Call<'b>],
) -> impl Iterator<Item = (&'a Call<'b>, &'static Formula)> {
    calls.iter().map(|call| {
        let found = FORMULAS.iter().find(|f| function_of(f.id) == call.function.name);
        (call, found.expect("a call that answers a formula"))
    })
}

/// How an input is drawn.
struct Input {
    key: u64,
    kind: Kind,
    /// Codes of a choice.
    count: u8,
    low: f64,
    high: f64,
    /// The example's numbers.
    base: Vec<f64>,
}

#[derive(Clone, Copy, PartialEq)]
enum Kind {
    Number,
    Whole,
    Choice,
    Flag,
}

/// The inputs of a formula, by their names.
struct Draws<'a> {
    asked: BTreeMap<String, Asked>,
    base: &'a Given,
}

impl<'a> Draws<'a> {
    /// All that is asked for: at many points, since some is asked for behind a flag alone.
    fn of(formula: &Formula, base: &'a Given) -> Self {
        let at = |number| asked_by(formula, &Scattered::new(formula.id, number, base, false));
        Self { asked: (0..40).flat_map(at).collect(), base }
    }

    fn input(&self, field: &str) -> Input {
        let base = self.base;
        let example = |number: &dyn Fn() -> f64| {
            base.0.contains_key(field).then(number).into_iter().collect::<Vec<f64>>()
        };
        let plain = |kind, count, base| Input {
            key: fnv(field.bytes()),
            kind,
            count,
            low: 0.0,
            high: 0.0,
            base,
        };
        let ranged = |quantity: Quantity, base| Input {
            low: quantity.lowest(),
            high: quantity.highest(),
            ..plain(if quantity.is_whole() { Kind::Whole } else { Kind::Number }, 0, base)
        };
        match self.asked.get(field) {
            Some(Asked::Number(of, _)) => ranged(*of, example(&|| base.number(field, *of))),
            Some(Asked::Numbers(of, _)) => ranged(*of, base.numbers(field, *of)),
            Some(Asked::Choice(_, codes)) => {
                plain(Kind::Choice, *codes, example(&|| f64::from(base.choice(field, *codes))))
            }
            Some(Asked::Flag(_)) => {
                plain(Kind::Flag, 0, example(&|| f64::from(u8::from(base.flag(field)))))
            }
            None => panic!("{field} is never asked for"),
        }
    }

    /// The columns of a list, of one length in the example.
    fn columns(&self, fields: &[String]) -> Vec<Input> {
        let columns: Vec<Input> = fields.iter().map(|field| self.input(field)).collect();
        let length = columns.first().map_or(0, |column| column.base.len());
        assert!(columns.iter().all(|c| c.base.len() == length), "{fields:?} differ in length");
        columns
    }
}

/// The plans of the draws, written as C source: included by the driver.
pub fn source(calls: &[Call]) -> String {
    let examples = examples();
    let mut text = String::from("/* Made by xtask from the formulas. */\n\n");
    let mut plans = String::new();
    for (call, formula) in answered(calls) {
        let draws = Draws::of(formula, &examples[formula.id]);
        let name = &call.function.name;
        let (mut inputs, mut numbers, mut count, mut rows) = (String::new(), String::new(), 0, 0);
        let mut add = |input: &Input, kind: &str, codes: usize| {
            let (low, high) = (input.low.to_bits(), input.high.to_bits());
            let _ = writeln!(
                inputs,
                "    {{0x{:016x}u, {kind}, {codes}, 0x{low:016x}u, 0x{high:016x}u, {}, &base_{name}[{count}]}},",
                input.key,
                input.base.len(),
            );
            for number in &input.base {
                let _ = write!(numbers, "0x{:016x}u, ", number.to_bits());
            }
            count += input.base.len();
            rows += 1;
        };
        for taken in &call.takes {
            match taken {
                Taken::One(field, _) => {
                    let input = draws.input(field);
                    let kind = ["NUMBER", "WHOLE", "CHOICE", "FLAG"][input.kind as usize];
                    add(&input, kind, usize::from(input.count));
                }
                Taken::Many(fields) => {
                    let columns = draws.columns(fields);
                    // Of the list itself only its length counts.
                    add(&columns[0], "LIST", columns.len());
                    for column in &columns {
                        let is_whole = column.kind == Kind::Whole;
                        add(column, if is_whole { "WHOLE_ITEM" } else { "ITEM" }, 0);
                    }
                }
            }
        }
        let _ = writeln!(text, "static const uint64_t base_{name}[] = {{{numbers}0}};");
        let _ = writeln!(text, "static const struct input inputs_{name}[] = {{\n{inputs}}};\n");
        let key = fnv(formula.id.bytes());
        let _ = writeln!(plans, "    {{0x{key:016x}u, {rows}, inputs_{name}}},");
    }
    let _ = writeln!(text, "static const struct plan plans[] = {{\n{plans}}};");
    text
}

/// The same as JSON, with the places of all numbers in the memory of a WebAssembly module, and the hashes.
pub fn plans() -> Outcome<String> {
    let (interface, examples, accepted) = (interface::read()?, examples(), accepted()?);
    let calls = calls::all(&interface);
    let hex = |bits: u64| json!(format!("{bits:016x}"));
    let plan = |(call, formula): (&Call, &Formula)| -> Outcome<Value> {
        let draws = Draws::of(formula, &examples[formula.id]);
        let input = |field: &str| {
            let input = draws.input(field);
            let kind = ["number", "whole", "choice", "flag"][input.kind as usize];
            json!({
                "key": hex(input.key),
                "kind": kind,
                "count": input.count,
                "low": hex(input.low.to_bits()),
                "high": hex(input.high.to_bits()),
                "base": input.base.iter().map(|number| hex(number.to_bits())).collect::<Value>(),
            })
        };
        let field = |(name, kind, at): &(String, Type, usize)| {
            // Names of nested fields are their own.
            json!([at, word_of(kind), input(name.rsplit('.').next().unwrap_or_default())])
        };
        let inputs = &call.function.parameters[..call.function.parameters.len() - 2];
        let mut takes = Vec::new();
        for (at, parameter) in inputs.iter().enumerate() {
            let is_list = inputs.get(at + 1).is_some_and(|next| next.kind == Type::Size);
            let shape = if is_list { "list" } else { "record" };
            takes.push(match &parameter.kind {
                Type::Size => continue,
                Type::In(to) => match &**to {
                    Type::Record(name) => {
                        let fields = interface.places(name);
                        json!({ "shape": shape, "size": interface.size(name),
                                "fields": fields.iter().map(field).collect::<Value>() })
                    }
                    _ => json!({ "shape": "list", "size": 8,
                                 "fields": [[0, "double", input(&parameter.name)]] }),
                },
                kind => json!({ "shape": "value", "size": 0,
                                "fields": [[0, word_of(kind), input(&parameter.name)]] }),
            });
        }
        let (size, leaves) = match &call.function.parameters[inputs.len()].kind {
            Type::Out(to) => match &**to {
                Type::Record(name) => (interface.size(name), interface.places(name)),
                kind => (8, vec![(String::new(), kind.clone(), 0)]),
            },
            other => panic!("{}: the answer goes to {other:?}", call.function.name),
        };
        let leaves: Value = leaves.iter().map(|(_, kind, at)| json!([at, word_of(kind)])).collect();
        let of = |which: Points| -> Outcome<Value> {
            let (points, hash) = which.of(&accepted, formula)?;
            Ok(json!({ "points": points, "hash": hex(hash) }))
        };
        Ok(json!({
            "id": formula.id, "name": call.function.name, "key": hex(fnv(formula.id.bytes())),
            "all": of(Points::All)?, "onBoards": of(Points::OnBoards)?, "takes": takes,
            "answer": { "size": size, "leaves": leaves },
        }))
    };
    let all = answered(&calls).map(plan).collect::<Outcome<Vec<_>>>()?;
    Ok(Value::Array(all).to_string())
}

fn word_of(kind: &Type) -> &'static str {
    match kind {
        Type::Double => "double",
        Type::Int => "int",
        Type::Unsigned => "unsigned",
        other => panic!("no number: {other:?}"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn dear_formulas_get_fewer_points() {
        assert_eq!([points(800), points(1_500_000), points(95_000_000)], [10_000, 100, 10]);
    }

    fn golden<const N: usize>(hashes: [(u64, u64); N]) -> Golden {
        [("water.density".to_string(), hashes.into())].into()
    }

    #[test]
    fn a_table_comes_back() {
        for golden in [golden([(ALL, 0xab)]), golden([(100, 0xcd), (ALL, 0xab)])] {
            assert_eq!(parsed(&text(&golden)), Ok(golden));
        }
        for wrong in ["water.density 100\n", "water.density\n", "water.density 100 ab 10000\n"] {
            assert!(parsed(wrong).is_err(), "{wrong}");
        }
    }

    #[test]
    fn boards_get_the_first_points_and_others_all() {
        let formula = FORMULAS.iter().find(|formula| formula.id == "water.density").unwrap();
        let of = |golden: &Golden| {
            [Points::OnBoards, Points::All].map(|which| which.of(golden, formula))
        };
        let both = golden([(100, 1), (ALL, 2)]);
        assert_eq!(of(&both), [Ok((100, 1)), Ok((ALL, 2))]);
        assert_eq!(of(&golden([(ALL, 2)])), [Ok((ALL, 2)), Ok((ALL, 2))]);
        // Fewer are not all.
        assert!(of(&golden([(100, 1)]))[1].is_err());
    }

    #[test]
    fn other_bits_must_be_told() {
        let of = |hash| golden([(100, 7), (ALL, hash)]);
        let silent = "# Changelog\n\n## Unreleased\n\n### Added\n\n* More.\n\n## 0.1.0\n\n### Numerical changes\n\n* Old.\n";
        let telling =
            "# Changelog\n\n## Unreleased\n\n### Numerical changes\n\n* Densities.\n\n## 0.1.0\n";
        let empty = "# Changelog\n\n## Unreleased\n\n### Numerical changes\n\n## 0.1.0\n\n* Old.\n";
        assert_eq!(told(&of(1), &of(1), silent), Ok(()));
        assert!(told(&of(1), &of(2), silent).unwrap_err().contains("water.density"));
        assert!(told(&of(1), &of(2), empty).is_err());
        assert_eq!(told(&of(1), &of(2), telling), Ok(()));
        // What is gone has changed; what is new, or of more points, has not.
        assert!(told(&of(1), &Golden::new(), silent).is_err());
        assert_eq!(told(&Golden::new(), &of(1), silent), Ok(()));
        assert_eq!(told(&golden([(100, 7)]), &of(1), silent), Ok(()));
    }

    #[test]
    fn one_bit_of_one_answer_is_another_hash() {
        assert_ne!(fnv(1_u64.to_le_bytes()), fnv(0_u64.to_le_bytes()));
    }
}
