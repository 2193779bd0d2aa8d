//! Scores of what follows a scale live, on invented traces: the committed table against the one
//! that comes out.

use std::path::PathBuf;

use crate::commands::{cargo, output, text_of};
use crate::{Outcome, difference, root};

fn committed() -> PathBuf {
    root().join("tests/traces/SCORES.md")
}

/// The table as it comes out; an error where a bar falls.
fn table() -> Outcome<String> {
    output(&mut cargo(&["run", "--quiet", "--locked", "--release", "--package", "traces"]))
}

/// Compares the table with the committed one.
pub fn check() -> Outcome {
    let path = committed();
    let wanted = text_of(&path)?;
    if let Some(difference) = difference::between(&wanted, &table()?) {
        return Err(format!(
            "{} is not what comes out\n{difference}\nIf the change is meant: cargo xtask live",
            path.display()
        ));
    }
    println!("{} lines of scores, as committed, and every bar holds", wanted.lines().count());
    Ok(())
}

/// Writes the table.
pub fn write() -> Outcome {
    let path = committed();
    std::fs::write(&path, table()?).map_err(|e| format!("{}: {e}", path.display()))
}
