//! Inputs made by chance for a target, always the same: `fuzzed TARGET INPUTS`. `fuzzed seeds FOLDER`
//! writes the first few of them, for libFuzzer to begin with.

use std::path::Path;
use std::process::ExitCode;
use std::time::Instant;

use fuzzed::{TARGETS, Target, chance::Chance};

/// What libFuzzer begins with: some kilobytes.
const SEEDS: u64 = 16;

fn main() -> ExitCode {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    let arguments: Vec<&str> = arguments.iter().map(String::as_str).collect();
    let target = |named: &str| TARGETS.iter().find(|(name, _)| *name == named);
    let outcome = match arguments[..] {
        ["seeds", folder] => Some(seeds(Path::new(folder))),
        [name, inputs] => {
            let asked = target(name).zip(inputs.parse().ok());
            asked.map(|(target, inputs)| {
                by_chance(target, inputs);
                Ok(())
            })
        }
        _ => None,
    };
    match outcome {
        Some(Ok(())) => ExitCode::SUCCESS,
        Some(Err(error)) => {
            eprintln!("{error}");
            ExitCode::FAILURE
        }
        None => {
            eprintln!("fuzzed TARGET INPUTS | fuzzed seeds FOLDER");
            ExitCode::from(2)
        }
    }
}

fn seeds(folder: &Path) -> std::io::Result<()> {
    std::fs::create_dir_all(folder)?;
    (0..SEEDS).try_for_each(|seed| {
        std::fs::write(folder.join(seed.to_string()), Chance::new(seed).input())
    })
}

/// Says which input it was where one fails.
fn by_chance((name, run): &Target, inputs: u64) {
    let start = Instant::now();
    let mut bytes = 0;
    for input in 0..inputs {
        let data = Chance::new(input).input();
        bytes += data.len();
        let failed = std::panic::catch_unwind(|| run(&data)).is_err();
        assert!(!failed, "{name}: input {input}");
    }
    println!("{name}: {inputs} inputs, {bytes} bytes, {:.1} s", start.elapsed().as_secs_f64());
}
