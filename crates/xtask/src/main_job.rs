//! The main job: the example's output against the one committed.

use std::path::{Path, PathBuf};

use crate::commands::{cargo, output, text_of};
use crate::{Outcome, difference, root};

const SCENARIO: &str = "examples/mountain_stop/scenario.toml";

fn expected() -> PathBuf {
    root().join("examples/mountain_stop/expected.txt")
}

/// What the example prints, for its own scenario or for a file.
fn printed(file: Option<&str>) -> Outcome<String> {
    let mut run = cargo(&["run", "--quiet", "--release", "--example", "mountain_stop"]);
    if let Some(file) = file {
        run.args(["--", file]);
    }
    output(&mut run)
}

/// Compares both ways of running it with the committed output.
pub fn check() -> Outcome {
    let path = expected();
    let wanted = text_of(&path)?;
    for file in [None, Some(SCENARIO)] {
        if let Some(difference) = difference::between(&wanted, &printed(file)?) {
            return Err(format!(
                "the main job prints something else than {}\n{difference}\nIf the change is meant: \
                 cargo xtask expect",
                path.display()
            ));
        }
    }
    println!("{} lines, as expected, twice", wanted.lines().count());
    refusal()
}

/// A file with one bad number is refused with file, line, field, value and range.
fn refusal() -> Outcome {
    let fail = |path: &Path, error: std::io::Error| format!("{}: {error}", path.display());
    let good = text_of(SCENARIO)?;
    let bad = good.replacen("dose_g = 15.2", "dose_g = -15.2", 1);
    let line = 1 + good
        .lines()
        .position(|l| l.starts_with("dose_g = 15.2"))
        .ok_or("the scenario has lost the dose that this test makes bad")?;
    let path = root().join("target/bad-scenario.toml");
    std::fs::write(&path, bad).map_err(|e| fail(&path, e))?;
    let refused = cargo(&["run", "--quiet", "--release", "--example", "mountain_stop", "--"])
        .arg("target/bad-scenario.toml")
        .output()
        .map_err(|e| e.to_string())?;
    let words = String::from_utf8_lossy(&refused.stderr);
    let wanted =
        format!("target/bad-scenario.toml, line {line}: dose: -15.2 g is outside 0.1 to 10000 g\n");
    if refused.status.success() || !words.starts_with(&wanted) || !words.contains("dose_g = -15.2")
    {
        return Err(format!(
            "a bad scenario should be refused with\n{wanted}but was met with\n{words}"
        ));
    }
    println!("a bad file is refused with file, line, field, value and range");
    Ok(())
}

/// Writes the present output as the expected one.
pub fn accept() -> Outcome {
    let path = expected();
    std::fs::write(&path, printed(None)?).map_err(|e| format!("{}: {e}", path.display()))
}
