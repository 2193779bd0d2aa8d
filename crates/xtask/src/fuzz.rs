//! Any bytes at the entry points: made by chance in every test run, sought by libFuzzer for as long as
//! one likes.

use crate::commands::{cargo, run};
use crate::{Outcome, root, tools};

/// The version of cargo-fuzz.
const CARGO_FUZZ: &str = "0.13.1";

/// Every target, and how many inputs of chance it gets in a test run: some seconds' worth.
const TARGETS: [(&str, u32); 4] =
    [("live", 5_000), ("bytes", 15_000), ("formulas", 40_000), ("c", 5_000)];

/// Inputs by chance, always the same, for every target.
pub fn smoke() -> Outcome {
    for (target, inputs) in TARGETS {
        let arguments = ["run", "--quiet", "--locked", "--package", "fuzzed", "--", target];
        run(cargo(&arguments).arg(inputs.to_string()))?;
    }
    Ok(())
}

/// `cargo xtask fuzz [SECONDS] [TARGET]`: libFuzzer, a minute for every target if nothing is said.
pub fn look(arguments: &[&str]) -> Outcome {
    let seconds = arguments.first().copied().unwrap_or("60");
    let seconds: u32 = seconds.parse().map_err(|_| format!("seconds: {seconds:?}"))?;
    let known = || TARGETS.iter().map(|(name, _)| *name);
    match arguments.get(1..).unwrap_or_default() {
        [] => known().try_for_each(|target| for_some_time(target, seconds)),
        [target] if known().any(|name| name == *target) => for_some_time(target, seconds),
        other => Err(format!("{other:?}: known are {}", known().collect::<Vec<_>>().join(", "))),
    }
}

/// libFuzzer on one target, in one process. What it kept of former runs lies in `fuzz/corpus`.
fn for_some_time(target: &str, seconds: u32) -> Outcome {
    let corpus = root().join("fuzz/corpus").join(target);
    let seeds = ["run", "--quiet", "--locked", "--package", "fuzzed", "--", "seeds"];
    run(cargo(&seeds).arg(&corpus))?;
    // What libFuzzer is compiled with.
    tools::debian(&["g++"])?;
    let cargo_fuzz = tools::cargo_tool("fuzz", CARGO_FUZZ)?;
    let mut fuzz = tools::under_toolchain("nightly", cargo_fuzz, &[], &[])?;
    fuzz
        // No sanitizer: only target c has unsafe code, and that is its own calls.
        .args(["run", "--fuzz-dir", "fuzz", "--target-dir", "target/fuzz", "--sanitizer", "none"])
        .args([target, "--", "-max_len=2048", "-print_final_stats=1"])
        .arg(format!("-max_total_time={seconds}"));
    run(&mut fuzz)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::commands::text_of;

    #[test]
    fn every_target_is_built_for_libfuzzer_and_known_here() {
        let manifest = text_of("fuzz/Cargo.toml").unwrap();
        let built: Vec<&str> = manifest
            .lines()
            .filter_map(|line| line.strip_prefix("path = \"targets/"))
            .filter_map(|line| line.strip_suffix(".rs\""))
            .collect();
        assert_eq!(built, TARGETS.map(|(name, _)| name));
    }

    #[test]
    fn other_words_are_refused() {
        assert!(look(&["soon"]).unwrap_err().contains("soon"));
        assert!(look(&["1", "life"]).unwrap_err().contains("known are live"));
    }
}
