//! `cargo xtask test`: every test there is, in an order that fails soonest.

use std::time::Instant;

use crate::commands::{cargo, run};
use crate::{Outcome, dependencies, embedded, main_job, reference, root, tools};

type Step = (&'static str, fn() -> Outcome);

const STEPS: &[Step] = &[
    ("format", format),
    ("lint", lint),
    ("promises of the source", promises),
    ("dependencies", dependencies::check),
    ("unit, property and published-value tests", tests),
    ("examples in the docs", doc_tests),
    ("docs", docs),
    ("benchmarks build", benches),
    ("embedded", embedded::check),
    ("main job", main_job::check),
    ("reference values", reference::check),
];

/// Runs steps in order and stops at the first that fails.
fn in_order(steps: &[Step]) -> Outcome {
    let mut seconds = Vec::new();
    for (name, step) in steps {
        println!("\n==== {name}");
        let start = Instant::now();
        step().map_err(|words| format!("{name}: {words}"))?;
        seconds.push((name, start.elapsed().as_secs_f64()));
    }
    println!("\n==== all passed");
    for (name, seconds) in &seconds {
        println!("{seconds:>7.1} s  {name}");
    }
    Ok(())
}

/// Runs every step.
pub fn all() -> Outcome {
    in_order(STEPS)
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

/// What lib.rs declares is what makes the other promises hold; a lint cannot see it taken away.
fn promises() -> Outcome {
    let path = root().join("crates/cupwright/src/lib.rs");
    let text = std::fs::read_to_string(&path).map_err(|e| format!("{}: {e}", path.display()))?;
    for line in ["#![no_std]", "#![forbid(unsafe_code)]"] {
        if !text.lines().any(|l| l == line) {
            return Err(format!("lib.rs of the core does not say {line}"));
        }
    }
    if text.contains("extern crate") {
        return Err("lib.rs of the core takes in another crate by hand".to_string());
    }
    println!("no_std, no alloc, no unsafe");
    Ok(())
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
    run(&mut cargo(&[
        "test",
        "--locked",
        "--package",
        "cupwright",
        "--no-default-features",
        "--lib",
    ]))
}

fn doc_tests() -> Outcome {
    run(&mut cargo(&["test", "--locked", "--package", "cupwright", "--doc", "--all-features"]))
}

fn docs() -> Outcome {
    run(cargo(&["doc", "--locked", "--workspace", "--no-deps", "--all-features"])
        .env("RUSTDOCFLAGS", "--deny warnings"))
}

fn benches() -> Outcome {
    run(&mut cargo(&["bench", "--locked", "--no-run"]))
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
}
