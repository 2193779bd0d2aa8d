//! Inputs made by chance for every target, always the same: `fuzzed TARGET INPUTS`.

use std::process::ExitCode;
use std::time::Instant;

use fuzzed::{TARGETS, Target, chance::Chance};

fn main() -> ExitCode {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    let inputs = arguments.get(1).and_then(|count| count.parse().ok());
    let target = TARGETS.iter().find(|(name, _)| arguments.first().is_some_and(|a| a == name));
    let (Some(target), Some(inputs), 2) = (target, inputs, arguments.len()) else {
        eprintln!("fuzzed TARGET INPUTS");
        return ExitCode::from(2);
    };
    by_chance(target, inputs);
    ExitCode::SUCCESS
}

fn by_chance((name, run): &Target, inputs: u64) {
    let start = Instant::now();
    let mut bytes = 0;
    for input in 0..inputs {
        let data = Chance::new(input).input(name);
        bytes += data.len();
        run(&data);
    }
    println!("{name}: {inputs} inputs, {bytes} bytes, {:.1} s", start.elapsed().as_secs_f64());
}
