//! Every function called from JavaScript, each answer and each refusal compared with the core's.

use std::path::PathBuf;

use super::{cases, package};
use crate::commands::{program, run};
use crate::{Outcome, root, tools};

/// Random cases of each kind for each function.
const RANDOM: u64 = 200;

/// Writes the cases.
fn written() -> Outcome<PathBuf> {
    let path = root().join("target/npm/cases.jsonl");
    std::fs::write(&path, cases::all(RANDOM)?)
        .map_err(|error| format!("{}: {error}", path.display()))?;
    Ok(path)
}

/// In Node.js.
pub fn in_node() -> Outcome {
    tools::node()?;
    run(program("node").arg("tests/js/node.js").arg(package::built()).arg(written()?))
}
