//! Prints the table of scores: `traces` of the held-out traces, `traces tuning [FAMILY]` of the
//! others. Fails where a bar falls. `traces show FAMILY SEED` prints a trace as a record, its
//! labels above it; a family outside the corpus is the path of its file.

use std::path::Path;
use std::process::ExitCode;

use traces::family::Family;
use traces::record::{Row, write};
use traces::scores::{Set, all, bars, fallen, table};
use traces::world::World;

fn main() -> ExitCode {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    let arguments: Vec<&str> = arguments.iter().map(String::as_str).collect();
    let outcome = match arguments[..] {
        [] => scores(Set::HeldOut, None),
        ["tuning"] => scores(Set::Tuning, None),
        ["tuning", family] => scores(Set::Tuning, Some(family)),
        ["show", family, seed] => show(family, seed),
        _ => Err("traces [tuning [FAMILY] | show FAMILY SEED]".to_string()),
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
    let families = families(only)?;
    let scores = all(&families, set)?;
    print!("{}", table(&families, &scores));
    if set == Set::Tuning {
        return Ok(());
    }
    let fallen = fallen(&bars()?, &scores);
    if fallen.is_empty() { Ok(()) } else { Err(fallen.join("\n")) }
}

fn families(only: Option<&str>) -> Result<Vec<Family>, String> {
    let mut families = Family::all()?;
    families.retain(|family| only.is_none_or(|only| family.name == only));
    if families.is_empty() { Err("there is no such family".to_string()) } else { Ok(families) }
}

fn show(family: &str, seed: &str) -> Result<(), String> {
    let families = match Path::new(family).extension() {
        Some(_) => vec![Family::read(Path::new(family))?],
        None => families(Some(family))?,
    };
    let seed = seed.parse().map_err(|error| format!("seed: \"{seed}\": {error}"))?;
    for family in &families {
        print!("{}", record(family, seed)?);
    }
    Ok(())
}

/// A trace as a record. Nobody says when to stop.
fn record(family: &Family, seed: u64) -> Result<String, String> {
    let mut world = World::new(family, seed)?;
    let rows: Vec<Row> = world.by_ref().map(|sample| Row { sample, mark: None }).collect();
    let labels: Vec<String> = world.labels().iter().map(|l| format!("{l:?}")).collect();
    let Family { name, about, .. } = family;
    let head = format!("Invented: {about} ({name}, seed {seed}).\n{}", labels.join("\n"));
    Ok(write(&head, &rows))
}

#[cfg(test)]
mod tests {
    use super::*;
    use traces::family::folder;

    #[test]
    fn the_cafe_page_replays_what_comes_out() {
        let family = Family::read(&folder().join("page/pressed_brew.toml")).unwrap();
        let path = folder().join("../../examples/cafe-page/invented-brew.csv");
        let kept = std::fs::read_to_string(path).unwrap();
        assert!(record(&family, 3).unwrap() == kept, "the file is not what the family makes");
    }
}
