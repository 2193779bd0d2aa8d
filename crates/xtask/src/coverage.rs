//! Which lines and regions of the core the workspace's Rust tests run: a table of every file, and every line that none
//! runs in a list with its reason, which must fit.

use std::collections::{BTreeMap, BTreeSet};
use std::fmt::Write;
use std::path::Path;

use serde_json::Value;

use crate::commands::{limited, output, program, run, text_of};
use crate::tables::{cell, row, rows, spaced};
use crate::{Outcome, core_files, difference, root, tools};

/// The version of cargo-llvm-cov.
const CARGO_LLVM_COV: &str = "0.9.1";

const TABLE: &str = "tests/COVERAGE.md";
const REASONS: &str = "tests/uncovered.txt";

const HEAD: &str = "\
# Coverage of the core

Made by `cargo xtask coverage`, which fails where a line that no test runs is not in [uncovered.txt](uncovered.txt) with its
reason, or where one in it is run. Run are all Rust tests of the workspace but the doc tests and those of xtask; C,
JavaScript and the boards are not counted. Tests inside the files are not counted as lines. A generic function counts
once, by all its uses together. Branches are not measured: that needs nightly Rust; a region is a stretch of code without
a branch in it, and some hang on random inputs.

";

/// Runs the tests, writes the table, and compares what is left with the list of reasons.
pub fn write() -> Outcome {
    let (table, explained) = measured()?;
    std::fs::write(root().join(TABLE), table).map_err(|error| format!("{TABLE}: {error}"))?;
    explained
}

/// Runs the tests and compares the table, if it is this compiler's, and what is left with the list of reasons.
pub fn check() -> Outcome {
    let (table, explained) = measured()?;
    explained?;
    let known = text_of(TABLE)?;
    match difference::between(&lines_in(&known), &lines_in(&table)) {
        Some(shown) if known.contains(&compiler()?) => {
            Err(format!("{TABLE} is not what comes out: cargo xtask coverage\n{shown}"))
        }
        _ => Ok(()),
    }
}

/// The columns of a table that tell of lines: which regions are run hangs on the random inputs of some tests.
fn lines_in(table: &str) -> String {
    let rows = rows(table).into_iter();
    rows.map(|cells| format!("{}\n", cells.iter().take(3).copied().collect::<Vec<_>>().join(" | ")))
        .collect()
}

/// Lines that are run, of all of them, and the same of regions, in per cent, as in the table.
pub fn figure() -> Outcome<String> {
    let table = text_of(TABLE)?;
    let rows = rows(&table);
    let cells = row(&rows, "all")?;
    let (all, run): (u64, u64) = (cell(cells, 1)?, cell(cells, 2)?);
    let regions: f64 = cell(cells, 6)?;
    Ok(format!("{} of {} lines, {regions} % of regions", spaced(run), spaced(all)))
}

fn compiler() -> Outcome<String> {
    Ok(output(program("rustc").arg("--version"))?.trim().to_string())
}

/// The table, and whether what is left is what the list has.
fn measured() -> Outcome<(String, Outcome)> {
    run(&mut limited(300, program("rustup").args(["component", "add", "llvm-tools"])))?;
    let tool = tools::cargo_tool("llvm-cov", CARGO_LLVM_COV)?;
    let report = |arguments: &[&str]| run(program(&tool).arg("llvm-cov").args(arguments));
    let tests = ["--lib", "--bins", "--tests", "--no-report", "--locked", "--all-features"];
    report(&[&tests[..], &["--workspace", "--exclude", "xtask"]].concat())?;
    let (regions, lines) = ("target/coverage.json", "target/coverage.lcov");
    let of_core = ["report", "--package", "cupwright"];
    report(&[&of_core[..], &["--json", "--output-path", regions]].concat())?;
    report(&[&of_core[..], &["--lcov", "--output-path", lines]].concat())?;
    let files = files(&text_of(regions)?, &text_of(lines)?)?;
    let left = files.iter().flat_map(|(name, file)| {
        file.left.iter().map(|code| (name.clone(), code.clone())).collect::<Vec<_>>()
    });
    let explained = parsed(&text_of(REASONS)?)
        .and_then(|reasons| explained(&left.collect(), &reasons))
        .map_err(|words| format!("{REASONS}: {words}"));
    Ok((text(&files, &compiler()?), explained))
}

/// What is known of a file: of lines and of regions how many there are and how many run, and the code that does not.
#[derive(Debug, Default)]
struct File {
    lines: [usize; 2],
    regions: [usize; 2],
    left: BTreeSet<String>,
}

/// Every file of the core, from the two reports of llvm-cov.
fn files(regions: &str, lines: &str) -> Outcome<BTreeMap<String, File>> {
    let mut files = BTreeMap::new();
    let mut tests = BTreeMap::new();
    let (folder, sources) = (root().join(core_files::FOLDER), core_files::code()?);
    let of_core = |path: &str| {
        let name = Path::new(path).strip_prefix(&folder).ok()?.to_str()?;
        sources.contains_key(name).then(|| name.to_string())
    };
    for part in lines.split("end_of_record") {
        let path = part.lines().find_map(|line| line.strip_prefix("SF:"));
        let Some(name) = path.and_then(of_core) else { continue };
        let source = &sources[&name];
        let first = core_files::first_of_tests(source);
        let code: Vec<&str> = source.lines().map(str::trim).collect();
        let file: &mut File = files.entry(name.clone()).or_default();
        for (line, count) in part.lines().filter_map(counted).filter(|(line, _)| *line < first) {
            file.lines[0] += 1;
            file.lines[1] += usize::from(count > 0);
            let code = code.get(line - 1).copied().unwrap_or_default();
            if count == 0 && code.contains(char::is_alphanumeric) {
                file.left.insert(code.to_string());
            }
        }
        tests.insert(name, first);
    }
    for ((name, place), count) in regions_of(regions, of_core)? {
        let first = tests.get(&name).copied().unwrap_or(usize::MAX);
        if place[0] < first as u64 {
            let file: &mut File = files.entry(name).or_default();
            file.regions[0] += 1;
            file.regions[1] += usize::from(count > 0);
        }
    }
    let is_empty = |file: &File| file.lines[0] == 0 || file.regions[0] == 0;
    match files.iter().find(|(_, file)| is_empty(file)) {
        Some((name, _)) => Err(format!("no lines or no regions were measured of {name}")),
        None if files.is_empty() => Err(format!("nothing was measured in {}", core_files::FOLDER)),
        None => Ok(files),
    }
}

/// A line's number and how often it ran.
fn counted(line: &str) -> Option<(usize, u64)> {
    let (line, count) = line.strip_prefix("DA:")?.split_once(',')?;
    Some((line.parse().ok()?, count.parse().ok()?))
}

/// Regions by file and place, each with how often it ran in all uses of its function.
type Regions = BTreeMap<(String, [u64; 4]), u64>;

fn regions_of(report: &str, of_core: impl Fn(&str) -> Option<String>) -> Outcome<Regions> {
    let report: Value =
        serde_json::from_str(report).map_err(|error| format!("llvm-cov's report: {error}"))?;
    let functions =
        report["data"][0]["functions"].as_array().ok_or("llvm-cov's report: no functions")?;
    let mut regions = Regions::new();
    for function in functions {
        for region in function["regions"].as_array().into_iter().flatten() {
            let numbers: Vec<u64> =
                region.as_array().into_iter().flatten().filter_map(Value::as_u64).collect();
            // Place, count, file, the file that it is expanded in, and kind: zero is code.
            let [line, column, last, end, count, file, _, 0] = numbers[..] else { continue };
            let path = function["filenames"][file as usize].as_str();
            if let Some(name) = path.and_then(&of_core) {
                *regions.entry((name, [line, column, last, end])).or_default() += count;
            }
        }
    }
    Ok(regions)
}

fn text(files: &BTreeMap<String, File>, compiler: &str) -> String {
    let mut text = format!(
        "{HEAD}Measured with {compiler} and cargo-llvm-cov {CARGO_LLVM_COV}.\n\n\
         | file | lines | run | % | regions | run | % |\n|---|--:|--:|--:|--:|--:|--:|\n"
    );
    let mut add = |name: &str, [lines, regions]: [[usize; 2]; 2]| {
        let share = |[all, run]: [usize; 2]| format!("{:.1}", 100.0 * run as f64 / all as f64);
        // Writing to a string does not fail.
        let _ = writeln!(
            text,
            "| {name} | {} | {} | {} | {} | {} | {} |",
            lines[0],
            lines[1],
            share(lines),
            regions[0],
            regions[1],
            share(regions)
        );
    };
    let mut sum = [[0; 2]; 2];
    for (name, file) in files {
        let counts = [file.lines, file.regions];
        add(&format!("`{name}`"), counts);
        for (sum, count) in sum.iter_mut().flatten().zip(counts.iter().flatten()) {
            *sum += count;
        }
    }
    add("`all`", sum);
    text
}

/// Files with lines of code.
type Code = BTreeSet<(String, String)>;

/// The list: a file and a reason after a colon, then the lines of code, indented.
fn parsed(list: &str) -> Outcome<Code> {
    let (mut code, mut file) = (Code::new(), "");
    for line in list.lines().filter(|line| !line.is_empty() && !line.starts_with('#')) {
        if let Some(line) = line.strip_prefix("    ") {
            code.insert((file.to_string(), line.to_string()));
        } else {
            match line.split_once(": ") {
                Some((name, reason)) if !reason.trim().is_empty() => file = name,
                _ => return Err(format!("no file with a reason: {line}")),
            }
        }
    }
    Ok(code)
}

/// Whether what no test runs is what the list has.
fn explained(left: &Code, reasons: &Code) -> Outcome {
    let list = |a: &Code, b: &Code| {
        a.difference(b).map(|(file, code)| format!("\n{file}: {code}")).collect::<String>()
    };
    let (unknown, run) = (list(left, reasons), list(reasons, left));
    if unknown.is_empty() && run.is_empty() {
        println!("{} different lines are not run, each with its reason", left.len());
        return Ok(());
    }
    Err(format!("not run, without a reason:{unknown}\nwith a reason, but run or gone:{run}"))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lines_and_regions_are_counted() {
        let path = root().join(core_files::FOLDER).join("ratio.rs");
        let lines = format!("SF:{}\nDA:1,3\nDA:2,0\nend_of_record\n", path.display());
        let region = |count| format!("[1, 1, 1, 9, {count}, 0, 0, 0], [2, 1, 2, 9, 0, 0, 0, 0]");
        let function =
            |count| format!(r#"{{"filenames": [{:?}], "regions": [{}]}}"#, path, region(count));
        let uses = format!(r#"{{"data": [{{"functions": [{}, {}]}}]}}"#, function(0), function(2));
        assert!(files(&uses, "").unwrap_err().starts_with("no lines or no regions"));
        let none = r#"{"data": [{"functions": []}]}"#;
        assert!(files(none, &lines).is_err() && files(none, "").is_err());
        let files = files(&uses, &lines).unwrap();
        assert_eq!((files["ratio.rs"].lines, files["ratio.rs"].regions), ([2, 1], [2, 1]));
        assert!(
            text(&files, "rustc")
                .contains("| `ratio.rs` | 2 | 1 | 50.0 | 2 | 1 | 50.0 |\n| `all` | 2")
        );
    }

    #[test]
    fn a_table_is_compared_by_its_lines() {
        let of = |run: u64, regions: u64| format!("| `a.rs` | 9 | {run} | 1.0 | 8 | {regions} |\n");
        assert_eq!(lines_in(&of(7, 5)), "`a.rs` | 9 | 7\n");
        assert_eq!(lines_in(&of(7, 5)), lines_in(&of(7, 6)));
        assert_ne!(lines_in(&of(7, 5)), lines_in(&of(8, 5)));
    }

    #[test]
    fn what_is_not_run_needs_a_reason_and_no_reason_outlives_it() {
        let of = |code: &str| Code::from([("a.rs".to_string(), code.to_string())]);
        let list = parsed("# Head\n\na.rs: cannot be\n    return 1;\n").unwrap();
        assert_eq!(explained(&of("return 1;"), &list), Ok(()));
        assert!(
            explained(&of("return 2;"), &list).unwrap_err().contains("reason:\na.rs: return 2;")
        );
        assert!(explained(&Code::new(), &list).unwrap_err().contains("gone:\na.rs: return 1;"));
        assert!(parsed("a.rs\n    return 1;\n").is_err());
    }
}
