//! `cargo xtask test`: every test there is, in an order that fails soonest.

use std::collections::{BTreeMap, BTreeSet};
use std::time::Instant;

use crate::commands::{cargo, run};
use crate::{
    Outcome, accuracy, c, contents, core_files, corpus, coverage, dependencies, embedded, fuzz, js,
    live, main_job, manifest, msrv, mutants, prove, reference, speed, tools,
};

type Step = (&'static str, fn() -> Outcome);

const STEPS: &[Step] = &[
    ("format", format),
    ("lint", lint),
    ("promises of the source", promises),
    ("dependencies", dependencies::check),
    ("record of mutants", mutants::check),
    ("claims in the README", prove::in_the_readme),
    ("unit, property and published-value tests", tests),
    ("any bytes", fuzz::smoke),
    ("examples in the docs", doc_tests),
    ("docs", docs),
    ("crate as published", contents::of_crate),
    ("benchmarks build", benches),
    ("every formula whole", manifest::check),
    ("embedded", embedded::check),
    ("main job", main_job::check),
    ("scores of live flow", live::check),
    ("live corpus as accepted", corpus::check),
    ("reference values", reference::check),
    ("licences of Python packages", dependencies::check_python),
    ("right digits", accuracy::check),
];

/// What proves the C interface.
const C_STEPS: &[Step] = &[
    ("C header", c::header::check),
    ("C header in every language", c::constants::check_languages),
    ("C constants", c::constants::check_values),
    ("C layout as promised", c::abi::check),
    ("C docs", c::docs::check),
    ("C packages", c::archive::dist),
    ("C packages in use", c::packages::check),
    ("C links", c::links::check),
    ("C calls", c::driver::on_this_computer),
    ("C calls on emulated boards", c::driver::on_boards),
    ("live corpus in C", c::driver::corpus_on_this_computer),
    ("live corpus on emulated boards", c::driver::corpus_on_boards),
    ("C calls from Rust under Miri", c::driver::under_miri),
    ("C costs", c::size::check),
    ("scale's firmware", c::firmware::check),
    ("speed beside peers", speed::check),
];

/// Runs steps in order up to the first that fails, and says how long each took.
fn in_order(steps: &[Step]) -> Outcome {
    let mut seconds = Vec::new();
    let mut outcome = Ok(());
    for step in steps {
        outcome = timed(step, &mut seconds);
        if outcome.is_err() {
            break;
        }
    }
    println!("\n==== {}", if outcome.is_ok() { "all passed" } else { "the last one failed" });
    show(&seconds);
    outcome
}

/// Runs a step and notes how long it took.
fn timed((name, step): &Step, seconds: &mut Vec<(&'static str, f64)>) -> Outcome {
    println!("\n==== {name}");
    let start = Instant::now();
    let outcome = step().map_err(|words| format!("{name}: {words}"));
    seconds.push((name, start.elapsed().as_secs_f64()));
    outcome
}

fn show(seconds: &[(&str, f64)]) {
    for (name, seconds) in seconds {
        println!("{seconds:>7.1} s  {name}");
    }
}

/// What proves the JavaScript package.
const JS_STEPS: &[Step] = &[
    ("JavaScript face", js::package::check_face),
    ("JavaScript package", js::package::build),
    ("npm package as published", contents::of_npm),
    ("JavaScript types", js::types::check),
    ("JavaScript package in use", js::consumers::check),
    ("JavaScript calls in Node.js", js::parity::in_node),
    ("JavaScript calls in Chromium", js::parity::in_chromium),
    ("live corpus in Node.js", js::parity::corpus_in_node),
    ("live corpus in Chromium", js::parity::corpus_in_chromium),
    ("JavaScript costs", js::costs::check),
    ("café's pages in Chromium", js::page::check),
];

/// What compares every formula's bits at scattered inputs, with the packages of the steps before.
const BITS_STEPS: &[Step] = &[
    ("bits at scattered inputs", c::scattered::check),
    ("bits in Node.js", js::parity::scattered_in_node),
    ("bits in Chromium", js::parity::scattered_in_chromium),
    ("bits in C", c::driver::scattered),
    ("bits on emulated boards", c::driver::scattered_on_boards),
];

/// What takes long and hangs on no single change: for `cargo xtask prove` alone.
const LONG_STEPS: &[Step] = &[
    ("nine builds", c::builds::check),
    ("oldest Rust", msrv::check),
    ("coverage", coverage::check),
];

/// Every step of the tests.
fn every() -> Vec<Step> {
    [STEPS, C_STEPS, JS_STEPS, BITS_STEPS].concat()
}

/// Runs every step.
pub fn all() -> Outcome {
    in_order(&every())
}

/// What a change is looked at with before every commit: no tool is installed for it but rustfmt and clippy.
const QUICK: [&str; 9] = [
    "format",
    "lint",
    "promises of the source",
    "dependencies",
    "claims in the README",
    "main job",
    "scores of live flow",
    "C header",
    "JavaScript face",
];

/// Runs the quick steps and the core's own tests.
pub fn quick() -> Outcome {
    let mut steps = every();
    steps.retain(|(name, _)| QUICK.contains(name));
    steps.push(("tests of the core", || run(&mut cargo(&["test", "--locked", "--test", "core"]))));
    in_order(&steps)
}

/// The name of every step, of long ones too.
#[cfg(test)]
pub fn names() -> impl Iterator<Item = &'static str> {
    every().into_iter().chain(LONG_STEPS.iter().copied()).map(|(name, _)| name)
}

/// Runs the steps of these names in order, whatever becomes of one, with what became of each.
pub fn each(named: &BTreeSet<&str>) -> BTreeMap<&'static str, Outcome> {
    let mut seconds = Vec::new();
    let steps = every().into_iter().chain(LONG_STEPS.iter().copied());
    let steps = steps.filter(|(name, _)| named.contains(name));
    let outcomes = steps.map(|step| (step.0, timed(&step, &mut seconds))).collect();
    println!();
    show(&seconds);
    outcomes
}

/// Runs the steps of the JavaScript package.
pub fn of_js() -> Outcome {
    in_order(JS_STEPS)
}

/// Runs the steps of the C interface.
pub fn of_c() -> Outcome {
    in_order(C_STEPS)
}

/// Runs the steps of the live corpus, with the packages that are there.
pub fn of_corpus() -> Outcome {
    let mut steps = every();
    steps.retain(|(name, _)| name.starts_with("live corpus"));
    in_order(&steps)
}

/// Runs the steps of scattered inputs on every target.
pub fn of_bits() -> Outcome {
    in_order(BITS_STEPS)
}

fn format() -> Outcome {
    tools::component("fmt", "rustfmt")?;
    run(&mut cargo(&["fmt", "--all", "--check"]))
}

fn lint() -> Outcome {
    tools::component("clippy", "clippy")?;
    let deny = ["--", "--deny", "warnings"];
    run(
        cargo(&["clippy", "--locked", "--workspace", "--all-targets", "--all-features"]).args(deny)
    )?;
    run(cargo(&["clippy", "--locked", "--package", "cupwright", "--no-default-features"])
        .args(deny))
}

/// What the core's source says, or must not say, for other checks to hold: the compiler keeps what
/// lib.rs declares, but not the declaration, and the archive's symbols leave out what is inlined.
fn promises() -> Outcome {
    let count = promises_of_the_core()?;
    println!("{count} files: no std, no alloc, no unsafe, nothing hidden by #[inline]");
    Ok(())
}

/// The same; how many files there are.
pub fn promises_of_the_core() -> Outcome<usize> {
    let files = core_files::all()?;
    for (name, text) in &files {
        let broken = broken_promises(text, name == "lib.rs");
        if !broken.is_empty() {
            return Err(format!("{}/{name} {}", core_files::FOLDER, broken.join(" and ")));
        }
    }
    Ok(files.len())
}

/// What is wrong with one file of the core.
fn broken_promises(text: &str, is_root: bool) -> Vec<String> {
    let code: Vec<&str> =
        text.lines().map(str::trim).filter(|line| !line.starts_with("//")).collect();
    let declared = ["#![no_std]", "#![forbid(unsafe_code)]"]
        .into_iter()
        .filter(|line| is_root && !code.contains(line))
        .map(|line| format!("does not say {line}"));
    let said = ["extern crate alloc", "unsafe ", "#[inline]", "#[inline(always)]"]
        .into_iter()
        .filter(|words| code.iter().any(|line| line.contains(words)))
        .map(|words| format!("says {words:?}"));
    declared.chain(said).collect()
}

fn tests() -> Outcome {
    run(&mut cargo(&[
        "test",
        "--locked",
        "--workspace",
        "--all-features",
        "--lib",
        "--bins",
        "--tests",
        "--examples",
    ]))?;
    run(&mut cargo(&["test", "--locked", "--package", "cupwright", "--no-default-features"]))
}

fn doc_tests() -> Outcome {
    run(&mut cargo(&["test", "--locked", "--package", "cupwright", "--doc", "--all-features"]))
}

fn docs() -> Outcome {
    run(cargo(&["doc", "--locked", "--workspace", "--no-deps", "--all-features"])
        .env("RUSTDOCFLAGS", "--deny warnings"))
}

fn benches() -> Outcome {
    run(&mut cargo(&["bench", "--locked", "--no-run", "--bench", "*"]))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_failing_step_stops_the_rest_and_is_named() {
        fn good() -> Outcome {
            Ok(())
        }
        fn bad() -> Outcome {
            Err("broken".to_string())
        }
        fn never() -> Outcome {
            panic!("a step after a failed one ran")
        }
        assert_eq!(
            in_order(&[("one", good), ("two", bad), ("three", never)]),
            Err("two: broken".to_string())
        );
        assert_eq!(in_order(&[("one", good)]), Ok(()));
    }

    #[test]
    fn every_quick_step_is_one() {
        for step in QUICK {
            assert!(names().any(|name| name == step), "{step}");
        }
    }

    #[test]
    fn broken_promises_are_found() {
        let good = "#![no_std]\n#![forbid(unsafe_code)]\n// unsafe { } in words\n";
        assert_eq!(broken_promises(good, true), [""; 0]);
        assert_eq!(broken_promises("", false), [""; 0]);
        assert_eq!(broken_promises("#[inline(never)]", false), [""; 0]);
        assert_eq!(
            broken_promises("#![cfg_attr(not(test), no_std)]\nunsafe { }", true),
            ["does not say #![no_std]", "does not say #![forbid(unsafe_code)]", "says \"unsafe \""]
        );
        assert_eq!(
            broken_promises("    extern crate alloc;", false),
            ["says \"extern crate alloc\""]
        );
        assert_eq!(broken_promises("#[inline(always)]", false), ["says \"#[inline(always)]\""]);
    }
}
