//! Mutation testing: what cargo-mutants would change in the core, put behind switches in one build, and
//! whether the tests notice. cargo-mutants itself compiles once for each of thousands of mutants.

use std::num::NonZeroU32;
use std::path::PathBuf;

use crate::commands::{output, program, run};
use crate::{Outcome, root, tools};

/// The version of cargo-mutants, which says what the mutants are.
const CARGO_MUTANTS: &str = "27.1.0";

/// What reads Rust where the switches are put.
const PYTHON: [&str; 2] = ["tree-sitter==0.26.1", "tree-sitter-rust==0.24.2"];

/// Where the copy with the switches lies, and what is known of it.
fn place() -> PathBuf {
    root().join("target/mutants")
}

/// `cargo xtask mutants [--every N] [ROOM…]`: the mutants of some rooms, or of all, and their record.
pub fn of_rooms(arguments: &[&str]) -> Outcome {
    let source = root().join("crates/cupwright/src");
    let rooms = match arguments {
        ["--every", every, rooms @ ..] => {
            every.parse::<NonZeroU32>().map_err(|_| format!("every {every:?}: not a number"))?;
            rooms
        }
        rooms => rooms,
    };
    if let Some(other) = rooms.iter().find(|room| !source.join(format!("{room}.rs")).is_file()) {
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
fn copy(tree: &std::path::Path) -> Outcome {
    let files = output(program("git").args(["ls-files", "-z", "--cached"]))?;
    for file in files.split('\0').filter(|file| !file.is_empty()) {
        let (from, to) = (root().join(file), tree.join(file));
        let fail = |error: std::io::Error| format!("{file}: {error}");
        std::fs::create_dir_all(to.parent().unwrap_or(tree)).map_err(fail)?;
        std::fs::copy(from, to).map_err(fail)?;
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_room_that_is_not_there_is_refused() {
        assert!(of_rooms(&["extraction", "attic"]).unwrap_err().starts_with("\"attic\""));
        assert!(of_rooms(&["--every", "20", "attic"]).unwrap_err().starts_with("\"attic\""));
        assert!(of_rooms(&["--every", "attic"]).unwrap_err().contains("not a number"));
    }
}
