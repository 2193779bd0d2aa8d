//! Every function called from JavaScript, each answer and each refusal compared with the core's.

use std::path::PathBuf;

use super::{cases, package, page};
use crate::commands::{limited, program, run};
use crate::corpus::{self, Share};
use crate::{Outcome, brews, root, tools};

/// Random cases of each kind for each function.
const RANDOM: u64 = 200;

/// Writes a file for a test.
fn write(name: &str, text: &str) -> Outcome<PathBuf> {
    let path = root().join("target/npm").join(name);
    std::fs::write(&path, text).map_err(|error| format!("{}: {error}", path.display()))?;
    Ok(path)
}

/// Writes the cases, and brews.
fn written() -> Outcome<[PathBuf; 2]> {
    Ok([write("cases.jsonl", &cases::all(RANDOM)?)?, write("brews.txt", &brews::all())?])
}

/// In Node.js.
pub fn in_node() -> Outcome {
    tools::node()?;
    run(program("node").arg("tests/js/node.js").arg(package::built()).args(written()?))?;
    let script = corpus::script(Share::All)?;
    let path = write("corpus.txt", &script.text)?;
    script.heard_by(program("node").arg("tests/js/corpus.js").arg(package::built()).arg(path))
}

/// In headless Chromium, under a strict content security policy, by both entries of the package.
pub fn in_chromium() -> Outcome {
    tools::debian(&["chromium"])?;
    let packages = tools::node_packages()?;
    let folder = package::fresh(&root().join("target/npm/page"))?;
    for name in ["cupwright", "slim-copy"] {
        page::copy(&package::built(), &folder.join(name))?;
    }
    page::copy(&root().join("tests/js/page"), &folder)?;
    let fail = |error: std::io::Error| format!("{}: {error}", folder.display());
    let [cases, brews] = written()?;
    let script = corpus::script(Share::All)?;
    let corpus = write("corpus.txt", &script.text)?;
    for (from, to) in [
        (root().join("tests/js/parity.js"), "parity.js"),
        (root().join("tests/js/brews.js"), "brews.js"),
        (cases, "cases.jsonl"),
        (brews, "brews.txt"),
        (corpus, "corpus.txt"),
    ] {
        std::fs::copy(from, folder.join(to)).map_err(fail)?;
    }
    let shown = |page: &str| {
        let mut chromium = program("node");
        chromium.arg("tests/js/chromium.js").arg(&packages).arg(&folder).arg(page);
        limited(300, &chromium)
    };
    run(&mut shown("parity.html"))?;
    script.heard_by(&mut shown("corpus.html"))
}
