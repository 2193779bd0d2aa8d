//! Every function called from JavaScript, each answer and each refusal compared with the core's.

use std::path::{Path, PathBuf};
use std::process::Command;

use super::{cases, package, page};
use crate::c::scattered;
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
    let [cases, brews] = written()?;
    run(program("node").arg("tests/js/node.js").arg(package::built()).args([&cases, &brews]))?;
    run(program("node").arg("tests/js/any_input.js").arg(package::built()).arg(cases))
}

/// The live corpus in Node.js.
pub fn corpus_in_node() -> Outcome {
    tools::node()?;
    let script = corpus::script(Share::All)?;
    let path = write("corpus.txt", &script.text)?;
    script.heard_by(program("node").arg("tests/js/corpus.js").arg(package::built()).arg(path))
}

/// The module at scattered inputs, in Node.js.
pub fn scattered_in_node() -> Outcome {
    tools::node()?;
    run(program("node").arg("tests/js/scattered-node.js").args([package::built(), plans()?]))
}

/// The same in headless Chromium.
pub fn scattered_in_chromium() -> Outcome {
    tools::debian(&["chromium"])?;
    let packages = tools::node_packages()?;
    let folder = package::fresh(&root().join("target/npm/scattered"))?;
    page::copy(&package::built(), &folder.join("cupwright"))?;
    page::copy(&root().join("tests/js/page"), &folder)?;
    let fail = |error: std::io::Error| format!("{}: {error}", folder.display());
    for (from, to) in
        [(root().join("tests/js/scattered.js"), "scattered.js"), (plans()?, "scattered.json")]
    {
        std::fs::copy(from, folder.join(to)).map_err(fail)?;
    }
    let mut chromium = program("node");
    chromium.arg("tests/js/chromium.js").arg(packages).arg(&folder).arg("scattered.html");
    run(&mut limited(300, &chromium))
}

/// Writes the plans of the draws.
fn plans() -> Outcome<PathBuf> {
    let path = root().join("target/npm/scattered.json");
    std::fs::write(&path, scattered::plans()?)
        .map_err(|error| format!("{}: {error}", path.display()))?;
    Ok(path)
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
    for (from, to) in [
        (root().join("tests/js/parity.js"), "parity.js"),
        (root().join("tests/js/brews.js"), "brews.js"),
        (cases, "cases.jsonl"),
        (brews, "brews.txt"),
    ] {
        std::fs::copy(from, folder.join(to)).map_err(fail)?;
    }
    run(&mut shown(&packages, &folder, "parity.html"))
}

/// The live corpus in headless Chromium.
pub fn corpus_in_chromium() -> Outcome {
    tools::debian(&["chromium"])?;
    let packages = tools::node_packages()?;
    let folder = package::fresh(&root().join("target/npm/corpus"))?;
    page::copy(&package::built(), &folder.join("cupwright"))?;
    page::copy(&root().join("tests/js/page"), &folder)?;
    let script = corpus::script(Share::All)?;
    let fail = |error: std::io::Error| format!("{}: {error}", folder.display());
    std::fs::copy(root().join("tests/js/brews.js"), folder.join("brews.js")).map_err(fail)?;
    std::fs::write(folder.join("corpus.txt"), &script.text).map_err(fail)?;
    script.heard_by(&mut shown(&packages, &folder, "corpus.html"))
}

/// The command that shows a page of a folder to Chromium.
fn shown(packages: &Path, folder: &Path, page: &str) -> Command {
    let mut chromium = program("node");
    chromium.arg("tests/js/chromium.js").arg(packages).arg(folder).arg(page);
    limited(300, &chromium)
}
