//! What the package weighs and what a call costs: measured, and written down.

use std::fmt::Write as _;
use std::io::Write as _;
use std::path::{Path, PathBuf};

use super::package;
use crate::commands::{output, program};
use crate::{Outcome, root, tools};

fn path() -> PathBuf {
    root().join("bindings/wasm/COSTS.md")
}

/// The files that a page loads, in the order of the table.
const FILES: [&str; 4] = ["cupwright.wasm", "src/functions.js", "src/call.js", "src/about.js"];

/// Bytes of a file, as it is and gzipped.
type Weight = (usize, usize);

/// Measures and writes the table.
pub fn write() -> Outcome {
    package::build()?;
    let text = text(&weights()?, &calls()?)?;
    print!("{text}");
    std::fs::write(path(), text).map_err(|error| format!("{}: {error}", path().display()))
}

/// Compares the weights with the committed ones as far as another compiler may differ.
pub fn check() -> Outcome {
    let committed = std::fs::read_to_string(path())
        .map_err(|error| format!("{}: {error}", path().display()))?;
    for (name, (bytes, gzipped)) in weights()? {
        let line = committed.lines().find(|line| line.starts_with(&format!("| `{name}` |")));
        let numbers: Vec<usize> = line
            .unwrap_or_default()
            .split('|')
            .filter_map(|cell| cell.trim().parse().ok())
            .collect();
        if numbers.len() != 2 || differ(bytes, numbers[0]) || differ(gzipped, numbers[1]) {
            return Err(format!(
                "{name} weighs {bytes} bytes, {gzipped} gzipped; COSTS.md says {numbers:?}: cargo xtask weigh"
            ));
        }
    }
    println!("{} files, as committed within a twentieth", FILES.len());
    Ok(())
}

fn differ(a: usize, b: usize) -> bool {
    a.abs_diff(b) > a.max(b) / 20
}

fn weights() -> Outcome<Vec<(&'static str, Weight)>> {
    FILES.iter().map(|name| Ok((*name, weight(&package::built().join(name))?))).collect()
}

fn weight(path: &Path) -> Outcome<Weight> {
    let fail = |error: std::io::Error| format!("{}: {error}", path.display());
    let bytes = std::fs::read(path).map_err(fail)?;
    let mut gzip = flate2::write::GzEncoder::new(Vec::new(), flate2::Compression::best());
    gzip.write_all(&bytes).map_err(fail)?;
    Ok((bytes.len(), gzip.finish().map_err(fail)?.len()))
}

/// What the benchmark prints: a function, its nanoseconds, those of the same by hand.
fn calls() -> Outcome<String> {
    tools::node()?;
    output(program("node").arg("tests/js/bench.js").arg(package::built()))
}

fn text(weights: &[(&str, Weight)], calls: &str) -> Outcome<String> {
    let node = output(program("node").arg("--version"))?;
    let mut text = format!(
        "# What the package weighs and what a call costs\n\n\
         Made by `cargo xtask weigh` with Node.js {}.\n\n\
         | file | bytes | gzipped |\n|---|---:|---:|\n",
        node.trim()
    );
    for (name, (bytes, gzipped)) in weights {
        let _ = writeln!(text, "| `{name}` | {bytes} | {gzipped} |");
    }
    text.push_str(
        "\nThe default entry carries the module as text, a third more. `about.js` is data for forms and \
         glossaries.\n\n\
         Nanoseconds of a call, options object in, checks, plain object out, beside the same formula written by \
         hand in JavaScript without checks, in one run; the least of nine:\n\n\
         | function | call | by hand | ratio |\n|---|---:|---:|---:|\n",
    );
    for line in calls.lines() {
        let words: Vec<&str> = line.split(' ').collect();
        let [name, ours, theirs] = words[..] else {
            return Err(format!("the benchmark printed {line:?}"));
        };
        let ratio = match (ours.parse::<f64>(), theirs.parse::<f64>()) {
            (Ok(ours), Ok(theirs)) => format!("{:.1}", ours / theirs),
            _ => String::new(),
        };
        let _ = writeln!(text, "| `{name}` | {ours} | {} | {ratio} |", theirs.trim_matches('-'));
    }
    Ok(text)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_twentieth_is_let_pass() {
        assert!(!differ(1000, 1050) && differ(1000, 1100));
    }
}
