//! Every held-out trace of the corpus, heard through each interface on each target and compared with the
//! core's answers bit for bit; and what these were when they were last accepted.

use std::fmt::Write;
use std::path::PathBuf;
use std::process::Command;
use std::sync::OnceLock;

use cupwright::live::{Setup, Step};
use cupwright::quantity::*;
use cupwright_c::status::cupwright_status;
use formulas::scattered::fnv;
use traces::family::{Family, of_each};
use traces::heard::{Heard, heard};

use crate::brews::{self, Played};
use crate::commands::text_of;
use crate::{Outcome, difference, root};

/// A hash over the bytes of words, little endian.
fn hash(words: impl IntoIterator<Item = u64>) -> u64 {
    fnv(words.into_iter().flat_map(u64::to_le_bytes))
}

/// One trace: its name, the lines that a driver reads, and hashes of what is heard and answered.
struct Trace {
    family: String,
    seed: u64,
    readings: usize,
    samples: u64,
    answers: u64,
    text: String,
}

/// Every trace, played once.
fn traces() -> Outcome<&'static [Trace]> {
    static PLAYED: OnceLock<Outcome<Vec<Trace>>> = OnceLock::new();
    PLAYED.get_or_init(play_all).as_deref().map_err(String::clone)
}

/// Every trace.
fn play_all() -> Outcome<Vec<Trace>> {
    let families = Family::all()?;
    let one = |family: &Family| -> Outcome<Vec<Trace>> {
        let [first, last] = family.seeds.held_out;
        (first..=last)
            .map(|seed| played(family.name.clone(), seed, &heard(family, seed)?))
            .collect()
    };
    of_each(&families, one)
}

/// The aims of a trace as a recipe: each a pour, after what was poured before. Where nothing is aimed
/// at, every other trace is followed by a whole recipe all the same, whatever comes of it.
fn recipe(seed: u64, heard: &Heard) -> Outcome<Vec<Step>> {
    if heard.aims.is_empty() && !seed.is_multiple_of(2) {
        return Ok(brews::recipe().into());
    }
    let mut water = 0.0;
    let step = |(_, grams): &(usize, f64)| {
        water += grams;
        let to = BrewWater::from_grams(water)?;
        Ok(Step::Pour { to, from: Time::from_seconds(0.0)? })
    };
    let steps: Result<Vec<Step>, cupwright::Error> = heard.aims.iter().map(step).collect();
    steps.map_err(|error| error.to_string())
}

/// Plays a trace to the core.
fn played(family: String, seed: u64, heard: &Heard) -> Outcome<Trace> {
    let setup = || {
        Ok(Setup {
            division: Division::from_grams(heard.plate.step_g)?,
            capacity: Capacity::from_grams(heard.plate.most_g)?,
            ..Setup::COMMON
        })
    };
    let setup = setup().map_err(|error: cupwright::Error| error.to_string())?;
    let recipe = recipe(seed, heard)?;
    let mut text = String::new();
    let mut played = Played::begin(setup, &recipe, &mut text);
    let mut aims = heard.aims.iter().enumerate().peekable();
    let (mut answers, mut at_step) = (Vec::new(), 0);
    for (at, sample) in heard.samples.iter().enumerate() {
        if let Some((step, _)) = aims.next_if(|(_, (before, _))| *before == at) {
            // The hand does not wait for the scale.
            (at_step..step).for_each(|_| played.go_on());
        }
        if ScaleReading::accept(sample.mass_g).is_none() {
            played.refuse(sample.time_s, sample.mass_g, cupwright_status::OutOfRange);
            continue;
        }
        let (now, answer) = played.take(sample.time_s, sample.mass_g);
        at_step = usize::from(now.step);
        answers.push(answer);
    }
    answers.push(played.tell());
    let numbers = heard.samples.iter().flat_map(|sample| [sample.time_s, sample.mass_g]);
    Ok(Trace {
        family,
        seed,
        readings: heard.samples.len(),
        samples: hash(numbers.map(f64::to_bits)),
        answers: hash(answers),
        text,
    })
}

const HEAD: &str = "\
# Made by `cargo xtask golden`; `cargo xtask test` compares. Of each held-out trace: family, seed, readings, and
# FNV-1a hashes of 64 bits over the readings (clock and mass of each) and over all that is answered to them (of
# each reading the hash that crates/xtask/src/brews.rs describes, and of what is told in the end).
# Where the answers alone have changed, CHANGELOG.md says so under \"Numerical changes\".
";

fn table(traces: &[Trace]) -> String {
    let mut text = HEAD.to_string();
    for Trace { family, seed, readings, samples, answers, .. } in traces {
        // Writing to a string does not fail.
        let _ = writeln!(text, "{family} {seed} {readings} {samples:016x} {answers:016x}");
    }
    text
}

fn golden() -> PathBuf {
    root().join("tests/traces/GOLDEN")
}

/// Compares the core's answers with those that were accepted.
pub fn check() -> Outcome {
    let path = golden();
    let wanted = text_of(&path)?;
    let traces = traces()?;
    if let Some(difference) = difference::between(&wanted, &table(traces)) {
        return Err(format!(
            "{} is not what comes out\n{difference}\nIf the change is meant: a line under \"Numerical \
             changes\" in CHANGELOG.md, and cargo xtask golden",
            path.display()
        ));
    }
    let readings: usize = traces.iter().map(|trace| trace.readings).sum();
    println!("{} traces of {readings} readings, as accepted", traces.len());
    Ok(())
}

/// Accepts the present answers.
pub fn write() -> Outcome {
    let path = golden();
    std::fs::write(&path, table(traces()?)).map_err(|e| format!("{}: {e}", path.display()))
}

/// How much of the corpus is heard.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Share {
    All,
    /// Every tenth trace, from the fifth on.
    Tenth,
}

/// Traces as a driver reads them, and their names in its order.
pub struct Script {
    pub text: String,
    names: Vec<String>,
}

/// Some of the corpus for drivers.
pub fn script(share: Share) -> Outcome<Script> {
    let (skip, step) = if share == Share::All { (0, 1) } else { (4, 10) };
    let (mut text, mut names) = (String::new(), Vec::new());
    for Trace { family, seed, text: lines, .. } in traces()?.iter().skip(skip).step_by(step) {
        text += lines;
        names.push(format!("{family}, seed {seed}"));
    }
    brews::end(&mut text);
    Ok(Script { text, names })
}

impl Script {
    /// Runs a driver that reads it, and says which trace and reading is the first that differs.
    pub fn heard_by(&self, driver: &mut Command) -> Outcome {
        let ran = driver.output().map_err(|error| format!("{driver:?}: {error}"))?;
        let said = [ran.stdout, ran.stderr].map(|said| String::from_utf8_lossy(&said).into_owned());
        print!("{} traces: {}", self.names.len(), said.concat());
        match self.first_that_differs(&said.concat()) {
            Some(place) => Err(format!("{place} is the first that differs")),
            None if ran.status.success() => Ok(()),
            None => Err(format!("{driver:?}: {}", ran.status)),
        }
    }

    /// The trace and the reading that a driver's words name first.
    fn first_that_differs(&self, said: &str) -> Option<String> {
        let (_, place) = said.split_once("brew ")?;
        let (brew, rest) = place.split_once(", reading ")?;
        let (reading, _) = rest.split_once(" differs")?;
        let name = self.names.get(brew.parse::<usize>().ok()?.checked_sub(1)?)?;
        Some(format!("{name}, reading {reading}"))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_first_that_differs_is_named() {
        let names = ["a, seed 1", "b, seed 7"].map(str::to_string).into();
        let script = Script { text: String::new(), names };
        let said =
            "brew 2, reading 31 differs\nbrew 2, reading 32 differs\n9 lines of brews, 2 wrong\n";
        let place = script.first_that_differs(said);
        assert_eq!(place.as_deref(), Some("b, seed 7, reading 31"));
        assert_eq!(script.first_that_differs("9 lines of brews, 0 wrong\n"), None);
    }

    #[test]
    fn a_last_bit_changes_a_golden_line() {
        let trace = |answer: f64| Trace {
            family: "a".to_string(),
            seed: 1,
            readings: 1,
            samples: 0,
            answers: hash([answer.to_bits()]),
            text: String::new(),
        };
        assert_ne!(table(&[trace(0.1)]), table(&[trace(0.1_f64.next_up())]));
    }
}
