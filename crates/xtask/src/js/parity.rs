//! Every function called from JavaScript, each answer and each refusal compared with the core's.

use std::path::PathBuf;
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
    let files = [root().join("tests/js/scattered.js"), plans()?];
    run(&mut shown("scattered", &["cupwright"], &files)?)
}

/// Writes the plans of the draws.
fn plans() -> Outcome<PathBuf> {
    write("scattered.json", &scattered::plans()?)
}

/// In headless Chromium, under a strict content security policy, by both entries of the package.
pub fn in_chromium() -> Outcome {
    let [cases, brews] = written()?;
    let [parity, play] = ["parity.js", "brews.js"].map(|name| root().join("tests/js").join(name));
    run(&mut shown("parity", &["cupwright", "slim-copy"], &[parity, play, cases, brews])?)
}

/// The live corpus in headless Chromium.
pub fn corpus_in_chromium() -> Outcome {
    let script = corpus::script(Share::All)?;
    let files = [root().join("tests/js/brews.js"), write("corpus.txt", &script.text)?];
    script.heard_by(&mut shown("corpus", &["cupwright"], &files)?)
}

/// The command that shows a page of `tests/js/page` to headless Chromium, in a folder of its own beside
/// some files and the package under some names.
fn shown(page: &str, packages: &[&str], files: &[PathBuf]) -> Outcome<Command> {
    tools::debian(&["chromium"])?;
    let tools = tools::node_packages()?;
    let folder = package::fresh(&root().join("target/npm/page").join(page))?;
    for name in packages {
        page::copy(&package::built(), &folder.join(name))?;
    }
    page::copy(&root().join("tests/js/page"), &folder)?;
    for file in files {
        let place = folder.join(file.file_name().unwrap_or_default());
        std::fs::copy(file, place).map_err(|error| format!("{}: {error}", file.display()))?;
    }
    let mut chromium = program("node");
    chromium.arg("tests/js/chromium.js").arg(tools).arg(folder).arg(format!("{page}.html"));
    Ok(limited(300, &chromium))
}
