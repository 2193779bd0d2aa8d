//! Mutation testing: what cargo-mutants would change in the core, put behind switches in one build, and
//! whether the tests notice. cargo-mutants itself compiles once for each of thousands of mutants.

use std::collections::BTreeMap;
use std::num::NonZeroU32;
use std::path::{Path, PathBuf};

use formulas::scattered::fnv;
use serde_json::{Map, Value};

use crate::commands::{output, program, run, text_of};
use crate::tables::{cell, spaced};
use crate::{Outcome, core_files, root, tools};

/// The version of cargo-mutants, which says what the mutants are.
const CARGO_MUTANTS: &str = "27.1.0";

/// What reads Rust where the switches are put.
const PYTHON: [&str; 2] = ["tree-sitter==0.26.1", "tree-sitter-rust==0.24.2"];

/// The share of the mutants run that tests must catch, in percent.
const LEAST_CAUGHT: f64 = 95.0;

/// Where the copy with the switches lies, and what is known of it.
fn place() -> PathBuf {
    root().join("target/mutants")
}

/// `cargo xtask mutants [--every N] [ROOM…]`: the mutants of some rooms, or of all, and their record.
pub fn of_rooms(arguments: &[&str]) -> Outcome {
    let rooms = match arguments {
        ["--every", every, rooms @ ..] => {
            every.parse::<NonZeroU32>().map_err(|_| format!("every {every:?}: not a number"))?;
            rooms
        }
        rooms => rooms,
    };
    let sources = sources()?;
    if let Some(other) = rooms.iter().find(|room| !sources.contains_key(**room)) {
        return Err(format!("{other:?}: there is no crates/cupwright/src/{other}.rs"));
    }
    let (list, tree) = (place().join("list.json"), place().join("tree"));
    let fail = |error: std::io::Error| format!("{}: {error}", place().display());
    if tree.exists() {
        std::fs::remove_dir_all(&tree).map_err(fail)?;
    }
    std::fs::create_dir_all(&tree).map_err(fail)?;
    let mut mutants = program(tools::cargo_tool("mutants", CARGO_MUTANTS)?);
    mutants.args(["mutants", "--list", "--json", "--package", "cupwright"]);
    std::fs::write(&list, output(&mut mutants)?).map_err(fail)?;
    let sources: Map<String, Value> =
        sources.into_iter().map(|(room, hash)| (room, hash.into())).collect();
    std::fs::write(place().join("sources.json"), Value::from(sources).to_string()).map_err(fail)?;
    copy(&tree)?;
    let python = python()?;
    let script = |name: &str| {
        let mut script = program(&python);
        script.arg(root().join("tests/mutants").join(name)).arg(&list).arg(&tree);
        // What is compiled for the copy lies beside everything else, so that other crates are there.
        script.env("CARGO_TARGET_DIR", root().join("target")).env("PYTHONDONTWRITEBYTECODE", "1");
        script
    };
    run(&mut script("switched.py"))?;
    run(script("judged.py").args(arguments))
}

/// The interpreter that puts the switches.
pub fn python() -> Outcome<PathBuf> {
    tools::python("mutants-venv", &PYTHON)
}

/// Copies what belongs to the workspace, as it is now.
fn copy(tree: &Path) -> Outcome {
    let files = output(program("git").args(["ls-files", "-z", "--cached"]))?;
    for file in files.split('\0').filter(|file| !file.is_empty()) {
        let (from, to) = (root().join(file), tree.join(file));
        let fail = |error: std::io::Error| format!("{file}: {error}");
        std::fs::create_dir_all(to.parent().unwrap_or(tree)).map_err(fail)?;
        match std::fs::read_link(&from) {
            Ok(elsewhere) => std::os::unix::fs::symlink(elsewhere, to).map_err(fail)?,
            Err(_) => drop(std::fs::copy(from, to).map_err(fail)?),
        }
    }
    Ok(())
}

/// Every room of the core with a hash of its source.
fn sources() -> Outcome<BTreeMap<String, String>> {
    let files = core_files::code()?.into_iter();
    Ok(files
        .map(|(name, text)| (name.trim_end_matches(".rs").to_string(), hashed(&text)))
        .collect())
}

/// A hash of what mutants change in a file: neither comments nor unit tests.
fn hashed(text: &str) -> String {
    let code = text.lines().take(core_files::first_of_tests(text) - 1);
    let code = code.filter(|line| !line.is_empty() && !line.trim_start().starts_with("//"));
    format!("{:08x}", fnv(code.flat_map(|line| line.bytes().chain([b'\n']))) >> 32)
}

/// What the record says as a whole.
#[derive(Debug, PartialEq)]
pub struct Caught {
    /// Mutants that were run, and of them those caught.
    run: u64,
    caught: u64,
    /// Survivors of which nobody has said why.
    open: usize,
    /// Rooms of which only a sample was run, rooms that have changed since, and rooms without a row.
    sampled: Vec<String>,
    changed: Vec<String>,
    never: Vec<String>,
}

impl Caught {
    fn percent(&self) -> f64 {
        100.0 * self.caught as f64 / self.run as f64
    }

    fn told(&self) -> Outcome<String> {
        let Self { run, caught, open, changed, .. } = self;
        let (percent, changed) = (self.percent(), changed.len());
        let told = format!("{} of {}, {percent:.1} %", spaced(*caught), spaced(*run));
        if percent < LEAST_CAUGHT {
            return Err(format!("{told}: below {LEAST_CAUGHT} %"));
        }
        if *open > 0 {
            return Err(format!("{told}: {open} survivors without a reason"));
        }
        match changed {
            0 => Ok(told),
            _ => Ok(format!("{told}; rooms changed since: {changed}")),
        }
    }

    fn read(record: &str, sources: &BTreeMap<String, String>) -> Outcome<Self> {
        let open = record.lines().filter(|line| line.contains(": not yet killed")).count();
        let (mut run, mut caught) = (0, 0);
        let (mut sampled, mut changed) = (Vec::new(), Vec::new());
        let mut never = sources.clone();
        for line in record.lines().filter(|line| line.starts_with("| ")).skip(1) {
            let cells: Vec<&str> = line.split('|').skip(1).map(str::trim).collect();
            let room = cells[0];
            if room == "**all**" {
                break;
            }
            run += cell::<u64>(&cells, 4)?;
            caught += cell::<u64>(&cells, 5)? + cell::<u64>(&cells, 6)?;
            if cells.get(9) != Some(&"whole") {
                sampled.push(room.to_string());
            }
            if cells.get(10).copied() != never.remove(room).as_deref() {
                changed.push(room.to_string());
            }
        }
        if run == 0 {
            return Err("no mutants in the record".to_string());
        }
        Ok(Self { run, caught, open, sampled, changed, never: never.into_keys().collect() })
    }
}

/// `cargo xtask mutants --check`: what the record says, and of which rooms it is older than the source; fails where
/// too few of the mutants run were caught, or a survivor has no reason.
pub fn check() -> Outcome {
    let all = recorded()?;
    println!("{}", all.told()?);
    println!("run as a sample: {}", all.sampled.join(" "));
    println!("of another source than the present one: {}", all.changed.join(" "));
    println!("not in the record: {}", all.never.join(" "));
    Ok(())
}

/// Mutants caught, of those run, as the record has them.
pub fn figure() -> Outcome<String> {
    recorded()?.told()
}

fn recorded() -> Outcome<Caught> {
    Caught::read(&text_of("tests/MUTANTS.md")?, &sources()?)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn comments_and_unit_tests_leave_the_hash_of_a_source() {
        let code = "fn a() {\n    1 + 1\n}\n";
        let more = "//! Why.\n\nfn a() {\n    // Two.\n    1 + 1\n}\n\n#[cfg(test)]\n#[allow(x)]\nmod tests {\n}\n";
        assert_eq!(hashed(code), hashed(more));
        assert_ne!(hashed(code), hashed(&code.replace('+', "-")));
    }

    #[test]
    fn the_record_is_added_up_and_held_against_the_source() {
        let record = "| room | mutants | … |\n|---|---:|---|\n\
            | a | 9 | 1 | 0 | 8 | 6 | 1 | 1 | 87.5 % | whole | 01 |\n\
            | b | 60 | 0 | 0 | 3 | 3 | 0 | 0 | 100.0 % | every 20th | 02 |\n\
            | **all** | 69 | 1 | 0 | 11 | 9 | 1 | 1 | 90.9 % |  |  |\n\n\
            ## a\n\n- `x` (3): not yet killed; no test comes here\n- `y` (4): equivalent\n";
        let sources =
            [("a", "01"), ("b", "03"), ("c", "04")].map(|(a, b)| (a.to_string(), b.to_string()));
        let all = Caught::read(record, &sources.into()).unwrap();
        let [sampled, changed, never] = ["b", "b", "c"].map(|room| vec![room.to_string()]);
        assert_eq!(all, Caught { run: 11, caught: 10, open: 1, sampled, changed, never });
        assert!((all.percent() - 90.909).abs() < 1e-3);
    }

    #[test]
    fn a_record_stands_with_its_share_and_its_reasons() {
        let record = |caught, open, changed: &[&str]| {
            let changed = changed.iter().map(|room| room.to_string()).collect();
            Caught { run: 1000, caught, open, sampled: vec![], changed, never: vec![] }.told()
        };
        assert_eq!(record(950, 0, &[]), Ok("950 of 1 000, 95.0 %".to_string()));
        let older = "950 of 1 000, 95.0 %; rooms changed since: 2".to_string();
        assert_eq!(record(950, 0, &["a", "b"]), Ok(older));
        assert!(record(949, 0, &[]).unwrap_err().contains("below 95 %"));
        assert!(record(950, 1, &[]).unwrap_err().contains("1 survivors without a reason"));
    }

    #[test]
    fn a_room_that_is_not_there_is_refused() {
        assert!(of_rooms(&["extraction", "attic"]).unwrap_err().starts_with("\"attic\""));
        assert!(of_rooms(&["--every", "20", "attic"]).unwrap_err().starts_with("\"attic\""));
        assert!(of_rooms(&["--every", "attic"]).unwrap_err().contains("not a number"));
    }
}
