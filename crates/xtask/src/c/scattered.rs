//! The same bits for random inputs on every target: each target draws the inputs itself
//! (`formulas::scattered`), and hashes of all its answers are compared with those that were accepted.

use std::collections::BTreeMap;
use std::fmt::Write;
use std::path::PathBuf;
use std::sync::OnceLock;

use cupwright::quantity::Quantity;
use formulas::examples::examples;
use formulas::inputs::{Asked, Given, Inputs, asked_by};
use formulas::scattered::{Scattered, fnv};
use formulas::{FORMULAS, Formula};

use super::calls::{self, Call, Taken, function_of};
use super::cases::facts;
use super::interface;
use crate::{Outcome, root};

/// Inputs of each formula, unless it is too dear for an emulated Cortex-M0.
const MOST_POINTS: u64 = 10_000;

/// Instructions on a Cortex-M0 that a formula's calls may take all together.
const INSTRUCTIONS: u64 = 150_000_000;

/// Instructions of a function that COSTS.md does not list yet: as many as a budget takes.
const UNMEASURED: u64 = 2_000_000;

/// Points of a formula whose call takes so many instructions.
fn points(cost: u64) -> u64 {
    (INSTRUCTIONS / cost.max(1)).clamp(10, MOST_POINTS)
}

/// What was accepted of a formula: points, and the hash of their answers.
type Golden = BTreeMap<String, (u64, u64)>;

fn path() -> PathBuf {
    root().join("tests/vectors/GOLDEN")
}

const HEAD: &str = "\
# Made by `cargo xtask bits`; `cargo xtask test` compares, on every target. Of each formula: how many scattered inputs
# (crates/formulas/src/scattered.rs), and the FNV-1a hash of 64 bits over every status, answer and refusal
# (tests/c/scattered.c). Fewer than 10000 where a call takes more than 15000 instructions on a Cortex-M0
# (bindings/c/COSTS.md). A change needs a line under \"Numerical changes\" in CHANGELOG.md.
";

fn text(golden: &Golden) -> String {
    let lines = FORMULAS.iter().filter_map(|formula| {
        golden
            .get(formula.id)
            .map(|(points, hash)| format!("{} {points} {hash:016x}\n", formula.id))
    });
    HEAD.to_string() + &lines.collect::<String>()
}

fn parsed(text: &str) -> Outcome<Golden> {
    let lines = text.lines().filter(|line| !line.starts_with('#'));
    lines
        .map(|line| {
            let words: Vec<&str> = line.split(' ').collect();
            let entry = match words[..] {
                [id, points, hash] => {
                    points.parse().ok().zip(u64::from_str_radix(hash, 16).ok()).map(|e| (id, e))
                }
                _ => None,
            };
            let (id, entry) = entry.ok_or_else(|| format!("no hash of a formula: {line}"))?;
            Ok((id.to_string(), entry))
        })
        .collect()
}

fn accepted() -> Outcome<Golden> {
    let path = path();
    parsed(&std::fs::read_to_string(&path).map_err(|e| format!("{}: {e}", path.display()))?)
}

/// Instructions of each function's call at its example, on a Cortex-M0.
fn costs() -> Outcome<BTreeMap<String, u64>> {
    let path = root().join("bindings/c/COSTS.md");
    let text = std::fs::read_to_string(&path).map_err(|e| format!("{}: {e}", path.display()))?;
    let rows = super::size::rows(&text).into_iter();
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

/// The core's hashes, with the points that were accepted, or as many as a new formula's cost allows.
fn fresh() -> Outcome<&'static Golden> {
    static HASHED: OnceLock<Outcome<Golden>> = OnceLock::new();
    HASHED.get_or_init(hash_all).as_ref().map_err(String::clone)
}

fn hash_all() -> Outcome<Golden> {
    let (interface, examples, costs) = (interface::read()?, examples(), costs()?);
    let calls = calls::all(&interface);
    let known = if path().exists() { accepted()? } else { Golden::new() };
    let one = |formula: &Formula| -> Outcome<(String, (u64, u64))> {
        let name = function_of(formula.id);
        let call = calls.iter().find(|call| call.function.name == name);
        let call = call.ok_or_else(|| format!("no function {name}"))?;
        let count = match (known.get(formula.id), costs.get(&name)) {
            (Some((count, _)), _) => *count,
            (None, Some(cost)) => points(*cost),
            (None, None) => points(UNMEASURED),
        };
        Ok((formula.id.to_string(), (count, hash(call, formula, &examples[formula.id], count))))
    };
    let half =
        |odd: usize| FORMULAS.iter().skip(odd).step_by(2).map(one).collect::<Outcome<Vec<_>>>();
    std::thread::scope(|scope| {
        let other = scope.spawn(|| half(1));
        let mut all = half(0)?;
        all.extend(other.join().map_err(|_| "the hashing of formulas broke off".to_string())??);
        Ok(all.into_iter().collect())
    })
}

/// Which formulas' answers are no longer what they were; new ones do not count.
fn changed<'a>(old: &'a Golden, new: &Golden) -> Vec<&'a str> {
    let same = |id: &str, was: &(u64, u64)| new.get(id).is_some_and(|is| is == was);
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

fn changelog() -> Outcome<String> {
    std::fs::read_to_string(root().join("CHANGELOG.md")).map_err(|e| format!("CHANGELOG.md: {e}"))
}

/// Accepts the present answers, where the changelog tells of what has changed.
pub fn write() -> Outcome {
    let new = fresh()?;
    if path().exists() {
        told(&accepted()?, new, &changelog()?)?;
    }
    std::fs::write(path(), text(new)).map_err(|error| format!("{}: {error}", path().display()))
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
    let points: u64 = new.values().map(|(points, _)| points).sum();
    println!("{} formulas, {points} inputs, as accepted", new.len());
    Ok(())
}

/// Lines for the driver: those of some functions.
pub fn cases(calls: &[Call]) -> Outcome<String> {
    let accepted = accepted()?;
    let mut lines = String::new();
    let mut count = 0;
    for (at, call, formula) in answered(calls) {
        let (points, hash) = accepted
            .get(formula.id)
            .ok_or_else(|| format!("no hash of {}: cargo xtask bits", formula.id))?;
        let _ = writeln!(lines, "{at} {points} {hash:x}");
        count += 1;
        debug_assert_eq!(call.function.name, function_of(formula.id));
    }
    let _ = writeln!(lines, "end {count}");
    Ok(lines)
}

fn answered<'a, 'b>(
    calls: &'a [Call<'b>],
) -> impl Iterator<Item = (usize, &'a Call<'b>, &'static Formula)> {
    calls.iter().enumerate().filter_map(|(at, call)| {
        let formula = FORMULAS.iter().find(|f| function_of(f.id) == call.function.name)?;
        Some((at, call, formula))
    })
}

/// All that a formula may ask for: at many points, since some is asked for behind a flag alone.
fn everything_asked(formula: &Formula, base: &Given) -> BTreeMap<String, Asked> {
    let points =
        (0..200).map(|number| asked_by(formula, &Scattered::new(formula.id, number, base, false)));
    points.flatten().collect()
}

/// The plans of the draws, written as C source: included by the driver.
pub fn source(calls: &[Call]) -> String {
    let examples = examples();
    let mut text = String::from("/* Made by xtask from the formulas. */\n\n");
    let mut plans = String::new();
    for (_, call, formula) in answered(calls) {
        let (base, name) = (&examples[formula.id], &call.function.name);
        let asked = everything_asked(formula, base);
        let mut inputs = Table::default();
        for taken in &call.takes {
            match taken {
                Taken::One(field, _) => inputs.one(field, asked.get(field), base),
                Taken::Many(fields) => inputs.list(fields, &asked, base),
            }
        }
        let _ = writeln!(text, "static const uint64_t base_{name}[] = {{{}0}};", inputs.numbers);
        let _ = writeln!(text, "static const struct input inputs_{name}[] = {{");
        for (entry, at) in &inputs.entries {
            let _ = writeln!(text, "    {{{entry}, &base_{name}[{at}]}},");
        }
        text.push_str("};\n\n");
        let (key, count) = (fnv(formula.id.bytes()), inputs.entries.len());
        let _ = writeln!(plans, "    {{0x{key:016x}u, {count}, inputs_{name}}},");
    }
    let _ = write!(text, "static const struct plan plans[] = {{\n{plans}}};\n");
    text
}

/// Entries of inputs, and the numbers of the example that they point to.
#[derive(Default)]
struct Table {
    /// All but the pointer, and where it points.
    entries: Vec<(String, usize)>,
    numbers: String,
    count: usize,
}

impl Table {
    fn push(&mut self, field: &str, kind: &str, count: usize, edges: (f64, f64), base: &[f64]) {
        let (key, length) = (fnv(field.bytes()), base.len());
        let (low, high) = (edges.0.to_bits(), edges.1.to_bits());
        let entry =
            format!("0x{key:016x}u, {kind}, {count}, 0x{low:016x}u, 0x{high:016x}u, {length}");
        self.entries.push((entry, self.count));
        for number in base {
            let _ = write!(self.numbers, "0x{:016x}u, ", number.to_bits());
        }
        self.count += length;
    }

    fn one(&mut self, field: &str, asked: Option<&Asked>, base: &Given) {
        let example =
            |number: f64| if base.0.contains_key(field) { vec![number] } else { Vec::new() };
        match asked {
            Some(Asked::Number(quantity, _)) => {
                let kind = if quantity.is_whole() { "WHOLE" } else { "NUMBER" };
                let at = if base.0.contains_key(field) {
                    vec![base.number(field, *quantity)]
                } else {
                    Vec::new()
                };
                self.push(field, kind, 0, (quantity.lowest(), quantity.highest()), &at);
            }
            Some(Asked::Choice(_, count)) => {
                let at = if base.0.contains_key(field) {
                    example(f64::from(base.choice(field, *count)))
                } else {
                    Vec::new()
                };
                self.push(field, "CHOICE", usize::from(*count), (0.0, 0.0), &at);
            }
            Some(Asked::Flag(_)) => {
                self.push(
                    field,
                    "FLAG",
                    0,
                    (0.0, 0.0),
                    &example(f64::from(u8::from(base.flag(field)))),
                );
            }
            Some(Asked::Numbers(..)) => panic!("{field} is a list"),
            // Never asked for: C does not look at it either.
            None => panic!("{field} is never asked for"),
        }
    }

    fn list(&mut self, fields: &[String], asked: &BTreeMap<String, Asked>, base: &Given) {
        let column = |field: &String| match asked.get(field) {
            Some(Asked::Numbers(quantity, _)) => (*quantity, base.numbers(field, *quantity)),
            other => panic!("{field} is no list: {other:?}"),
        };
        let columns: Vec<(Quantity, Vec<f64>)> = fields.iter().map(column).collect();
        let length = columns[0].1.len();
        assert!(
            columns.iter().all(|(_, list)| list.len() == length),
            "{fields:?} differ in length"
        );
        // The list's own length is that of its numbers, which it does not use.
        self.push(&fields[0], "LIST", fields.len(), (0.0, 0.0), &vec![0.0; length]);
        for (field, (quantity, list)) in fields.iter().zip(&columns) {
            let kind = if quantity.is_whole() { "WHOLE_ITEM" } else { "ITEM" };
            self.push(field, kind, 0, (quantity.lowest(), quantity.highest()), list);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn dear_formulas_get_fewer_points() {
        assert_eq!([points(800), points(1_500_000), points(95_000_000)], [10_000, 100, 10]);
    }

    #[test]
    fn a_table_comes_back() {
        let golden = Golden::from([("water.density".to_string(), (100, 0xab))]);
        assert_eq!(parsed(&text(&golden)), Ok(golden));
        assert!(parsed("water.density 100\n").is_err());
    }

    #[test]
    fn other_bits_must_be_told() {
        let of = |hash| Golden::from([("water.density".to_string(), (100, hash))]);
        let silent = "# Changelog\n\n## Unreleased\n\n### Added\n\n* More.\n\n## 0.1.0\n\n### Numerical changes\n\n* Old.\n";
        let telling =
            "# Changelog\n\n## Unreleased\n\n### Numerical changes\n\n* Densities.\n\n## 0.1.0\n";
        let empty = "# Changelog\n\n## Unreleased\n\n### Numerical changes\n\n## 0.1.0\n\n* Old.\n";
        assert_eq!(told(&of(1), &of(1), silent), Ok(()));
        assert!(told(&of(1), &of(2), silent).unwrap_err().contains("water.density"));
        assert!(told(&of(1), &of(2), empty).is_err());
        assert_eq!(told(&of(1), &of(2), telling), Ok(()));
        // What is gone has changed; what is new has not.
        assert!(told(&of(1), &Golden::new(), silent).is_err());
        assert_eq!(told(&Golden::new(), &of(1), silent), Ok(()));
    }

    #[test]
    fn one_bit_of_one_answer_is_another_hash() {
        assert_ne!(fnv(1_u64.to_le_bytes()), fnv(0_u64.to_le_bytes()));
    }
}
