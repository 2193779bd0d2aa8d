//! What the package weighs and what a call costs: measured, and written down.

use std::fmt::Write as _;
use std::io::Write as _;
use std::path::{Path, PathBuf};

use super::package;
use crate::commands::{output, program, text_of};
use crate::{Outcome, root, tools};

fn path() -> PathBuf {
    root().join("bindings/wasm/COSTS.md")
}

/// The files that both entries load.
const SHARED: [&str; 6] = [
    "src/functions.js",
    "src/columns.js",
    "src/live.js",
    "src/call.js",
    "src/about.js",
    "src/all.js",
];
/// The entries, with the files that each loads besides.
const ENTRIES: [(&str, [&str; 2]); 2] = [
    ("cupwright", ["src/index.js", "src/inlined.js"]),
    ("cupwright/slim", ["src/slim.js", "cupwright.wasm"]),
];

/// Bytes of a file, as it is and gzipped.
type Weight = (usize, usize);

/// Measures and writes the table.
pub fn write() -> Outcome {
    package::build()?;
    let text = text(&weights()?, &calls()?)?;
    print!("{text}");
    std::fs::write(path(), text).map_err(|error| format!("{}: {error}", path().display()))
}

/// Compares the weights with the committed ones as far as another compiler may differ, and the README's
/// with those.
pub fn check() -> Outcome {
    let committed = text_of(path())?;
    let weights = weights()?;
    for (name, (bytes, gzipped)) in &weights {
        let known = listed(&committed, name);
        if known.is_none_or(|known| differ(*bytes, known.0) || differ(*gzipped, known.1)) {
            return Err(format!(
                "{name} weighs {bytes} bytes, {gzipped} gzipped; COSTS.md says {known:?}: cargo xtask weigh"
            ));
        }
    }
    let [whole, slim] = ENTRIES.map(|(name, _)| listed(&committed, name).unwrap_or_default());
    let words = smaller(slim, whole);
    // Wherever its lines break.
    let readme = text_of(package::built().join("README.md"))?.replace('\n', " ");
    if !readme.contains(&words) {
        return Err(format!("the package's README does not say that slim is {words:?}"));
    }
    println!("{} weights, as committed within a twentieth; slim is {words}", weights.len());
    Ok(())
}

/// The weight that the table lists.
fn listed(table: &str, name: &str) -> Option<Weight> {
    let line = table.lines().find(|line| line.starts_with(&format!("| `{name}` |")))?;
    let mut numbers = line.split('|').filter_map(|cell| cell.trim().parse().ok());
    Some((numbers.next()?, numbers.next()?))
}

/// How the README says that one entry is smaller than another.
fn smaller(small: Weight, large: Weight) -> String {
    let kb = |bytes: usize| (bytes + 500) / 1000;
    format!(
        "smaller: {} kB against {}, gzipped {} against {}",
        kb(small.0),
        kb(large.0),
        kb(small.1),
        kb(large.1)
    )
}

fn differ(a: usize, b: usize) -> bool {
    a.abs_diff(b) > a.max(b) / 20
}

/// Every file's weight, then every entry's.
fn weights() -> Outcome<Vec<(&'static str, Weight)>> {
    let own = ENTRIES.iter().flat_map(|(_, own)| own);
    let names: Vec<&str> = SHARED.iter().chain(own).copied().collect();
    let mut weights = Vec::new();
    for name in &names {
        weights.push((*name, weight(&package::built().join(name))?));
    }
    for (entry, own) in ENTRIES {
        let loaded: Vec<Weight> = weights
            .iter()
            .filter(|(name, _)| SHARED.contains(name) || own.contains(name))
            .map(|(_, weight)| *weight)
            .collect();
        let sum = |of: fn(&Weight) -> usize| loaded.iter().map(of).sum();
        weights.push((entry, (sum(|weight| weight.0), sum(|weight| weight.1))));
    }
    Ok(weights)
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
         | file or entry | bytes | gzipped |\n|---|---:|---:|\n",
        node.trim()
    );
    for (name, (bytes, gzipped)) in weights {
        let _ = writeln!(text, "| `{name}` | {bytes} | {gzipped} |");
    }
    text.push_str(
        "\nAn entry weighs what its files do together. `inlined.js` is the module as text. `about.js` is data for \
         forms and glossaries.\n\n\
         Nanoseconds of a call, options object in, checks, plain object out, beside the same formula written by \
         hand in JavaScript without checks, in one run; the least of 4000 short ones:\n\n\
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
    text.push_str(
        "\nA yield takes longest: it comes in two objects, of which nine fields are counted, checked and written.\n",
    );
    Ok(text)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_twentieth_is_let_pass() {
        assert!(!differ(1000, 1050) && differ(1000, 1100));
    }

    /// Offline, a page has only what its worker keeps.
    #[test]
    fn the_cafe_s_worker_keeps_every_file_of_the_slim_entry() {
        let worker = root().join("examples/cafe-page/service-worker.js");
        let worker = text_of(worker).unwrap();
        let [_, (_, own)] = ENTRIES;
        for file in SHARED.iter().chain(&own) {
            assert!(worker.contains(&format!("\"cupwright/{file}\"")), "{file}");
        }
    }

    #[test]
    fn a_weight_is_found_by_its_whole_name() {
        let table = "| `cupwright.wasm` | 5 | 4 |\n| `cupwright` | 7400 | 3500 |\n| `x` | 1 |\n";
        assert_eq!(listed(table, "cupwright"), Some((7400, 3500)));
        assert_eq!(listed(table, "x"), None);
        assert_eq!(listed(table, "wasm"), None);
        assert_eq!(
            smaller((5499, 2000), (7400, 3500)),
            "smaller: 5 kB against 7, gzipped 2 against 4"
        );
    }
}
