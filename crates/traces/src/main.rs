//! Prints the table of scores: `traces` of the held-out traces, `traces tuning [FAMILY]` of the others.
//! Fails where a bar falls.

use std::process::ExitCode;

use traces::family::Family;
use traces::scores::{Set, all, bars, fallen, table};

fn main() -> ExitCode {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    let arguments: Vec<&str> = arguments.iter().map(String::as_str).collect();
    let outcome = match arguments[..] {
        [] => scores(Set::HeldOut, None),
        ["tuning"] => scores(Set::Tuning, None),
        ["tuning", family] => scores(Set::Tuning, Some(family)),
        _ => Err("traces [tuning [FAMILY]]".to_string()),
    };
    match outcome {
        Ok(()) => ExitCode::SUCCESS,
        Err(words) => {
            eprintln!("{words}");
            ExitCode::FAILURE
        }
    }
}

fn scores(set: Set, only: Option<&str>) -> Result<(), String> {
    let mut families = Family::all()?;
    families.retain(|family| only.is_none_or(|only| family.name == only));
    if families.is_empty() {
        return Err("there is no such family".to_string());
    }
    let scores = all(&families, set)?;
    print!("{}", table(&families, &scores));
    if set == Set::Tuning {
        return Ok(());
    }
    let fallen = fallen(&bars()?, &scores);
    if fallen.is_empty() { Ok(()) } else { Err(fallen.join("\n")) }
}
