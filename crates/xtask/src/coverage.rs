//! Which lines, regions and branches of the core the workspace's Rust tests run: a table of every file, and every line
//! that none runs in a list with its reason, which must fit.

use std::collections::BTreeMap;
use std::fmt::Write;
use std::path::Path;

use serde_json::Value;

use crate::api::NIGHTLY;
use crate::commands::{limited, run, text_of};
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
JavaScript and the boards are not counted. Tests inside the files are not counted. A generic function counts once, by
all its uses together. A region is a stretch of code without a branch in it. Of a branch each side counts: of what stands
after `if` and `while`, before `&&` and `||` and in `let … else`; arms of a `match` and `?` are regions alone. Some regions
and branches hang on random inputs.

";

/// Runs the tests, writes the table, and compares what is left with the list of reasons.
pub fn write() -> Outcome {
    let (table, explained) = measured()?;
    std::fs::write(root().join(TABLE), table).map_err(|error| format!("{TABLE}: {error}"))?;
    explained
}

/// Runs the tests and compares the table and what is left with the list of reasons.
pub fn check() -> Outcome {
    let (table, explained) = measured()?;
    explained?;
    let known = text_of(TABLE)?;
    match difference::between(&lines_in(&known), &lines_in(&table)) {
        Some(shown) => Err(format!("{TABLE} is not what comes out: cargo xtask coverage\n{shown}")),
        None => Ok(()),
    }
}

/// The columns of a table that tell of lines: which regions and branches are run hangs on the random inputs of some
/// tests.
fn lines_in(table: &str) -> String {
    let rows = rows(table).into_iter();
    rows.map(|cells| format!("{}\n", cells.iter().take(3).copied().collect::<Vec<_>>().join(" | ")))
        .collect()
}

/// Lines that are run, of all of them, and the same of regions and branches, in per cent, as in the table.
pub fn figure() -> Outcome<String> {
    let table = text_of(TABLE)?;
    let rows = rows(&table);
    let cells = row(&rows, "all")?;
    let (all, run): (u64, u64) = (cell(cells, 1)?, cell(cells, 2)?);
    let (regions, branches): (f64, f64) = (cell(cells, 6)?, cell(cells, 9)?);
    Ok(format!(
        "{} of {} lines, {regions} % of regions, {branches} % of branches",
        spaced(run),
        spaced(all)
    ))
}

/// The table, and whether what is left is what the list has.
fn measured() -> Outcome<(String, Outcome)> {
    let tool = tools::cargo_tool("llvm-cov", CARGO_LLVM_COV)?;
    // Stable Rust does not count branches.
    let mut rustup = tools::under_toolchain(NIGHTLY, "rustup", &[], &[])?;
    run(&mut limited(300, rustup.args(["component", "add", "llvm-tools"])))?;
    let report = |arguments: &[&str]| {
        let mut tool = tools::under_toolchain(NIGHTLY, &tool, &[], &[])?;
        run(tool.arg("llvm-cov").args(arguments))
    };
    let (regions, lines) = ("target/coverage.json", "target/coverage.lcov");
    // The first runs the tests, and clears old counts before.
    let tests = ["--workspace", "--exclude", "xtask", "--lib", "--bins", "--tests", "--branch"];
    let as_json = ["--locked", "--all-features", "--json", "--output-path", regions];
    report(&[&tests[..], &as_json].concat())?;
    report(&["report", "--package", "cupwright", "--lcov", "--output-path", lines])?;
    let files = files(&text_of(regions)?, &text_of(lines)?)?;
    let left = files.iter().flat_map(|(name, file)| {
        file.left.iter().map(|(code, times)| ((name.clone(), code.clone()), *times))
    });
    let explained = parsed(&text_of(REASONS)?)
        .and_then(|reasons| explained(&left.collect(), &reasons))
        .map_err(|words| format!("{REASONS}: {words}"));
    Ok((text(&files), explained))
}

/// What is known of a file.
#[derive(Debug, Default)]
struct File {
    /// Of lines, of regions and of sides of branches how many there are and how many run.
    counts: [[usize; 2]; 3],
    /// The lines of code that do not run, each with how often it stands there.
    left: BTreeMap<String, usize>,
}

fn add([all, run]: &mut [usize; 2], times: u64) {
    *all += 1;
    *run += usize::from(times > 0);
}

/// Every file of the core, from the two reports of llvm-cov.
fn files(places: &str, lines: &str) -> Outcome<BTreeMap<String, File>> {
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
        for (line, times) in part.lines().filter_map(counted).filter(|(line, _)| *line < first) {
            add(&mut file.counts[0], times);
            let code = code.get(line - 1).copied().unwrap_or_default();
            if times == 0 && code.contains(char::is_alphanumeric) {
                *file.left.entry(code.to_string()).or_default() += 1;
            }
        }
        tests.insert(name, first);
    }
    let report: Value =
        serde_json::from_str(places).map_err(|error| format!("llvm-cov's report: {error}"))?;
    for (at, what) in [(1, "regions"), (2, "branches")] {
        for ((name, place, _), times) in counts(&report, what, of_core)? {
            let first = tests.get(&name).copied().unwrap_or(usize::MAX);
            if place[0] < first as u64 {
                add(&mut files.entry(name).or_default().counts[at], times);
            }
        }
    }
    let is_empty = |file: &File| file.counts[0][0] == 0 || file.counts[1][0] == 0;
    match files.iter().find(|(_, file)| is_empty(file)) {
        Some((name, _)) => Err(format!("no lines or no regions were measured of {name}")),
        None if files.values().all(|file| file.counts[2][0] == 0) => {
            Err(format!("no branches were measured in {}", core_files::FOLDER))
        }
        None => Ok(files),
    }
}

/// A line's number and how often it ran.
fn counted(line: &str) -> Option<(usize, u64)> {
    let (line, times) = line.strip_prefix("DA:")?.split_once(',')?;
    Some((line.parse().ok()?, times.parse().ok()?))
}

/// How often something ran in all uses of its function, by file, place and, of a branch, side.
type Counts = BTreeMap<(String, [u64; 4], usize), u64>;

/// The regions or the branches of a report.
fn counts(report: &Value, what: &str, of_core: impl Fn(&str) -> Option<String>) -> Outcome<Counts> {
    let functions =
        report["data"][0]["functions"].as_array().ok_or("llvm-cov's report: no functions")?;
    let mut counts = Counts::new();
    for function in functions {
        for entry in function[what].as_array().into_iter().flatten() {
            let numbers: Vec<u64> =
                entry.as_array().into_iter().flatten().filter_map(Value::as_u64).collect();
            // Place, counts, file, the file that it is expanded in, and kind: code or a branch.
            let [line, column, last, end, times @ .., file, _, 0 | 4] = &numbers[..] else {
                continue;
            };
            let path = function["filenames"][*file as usize].as_str();
            let Some(name) = path.and_then(&of_core) else { continue };
            for (side, times) in times.iter().enumerate() {
                let place = [*line, *column, *last, *end];
                *counts.entry((name.clone(), place, side)).or_default() += times;
            }
        }
    }
    Ok(counts)
}

fn text(files: &BTreeMap<String, File>) -> String {
    let mut text = format!(
        "{HEAD}Measured with {NIGHTLY} and cargo-llvm-cov {CARGO_LLVM_COV}.\n\n\
         | file | lines | run | % | regions | run | % | branches | run | % |\n\
         |---|--:|--:|--:|--:|--:|--:|--:|--:|--:|\n"
    );
    let mut row = |name: &str, counts: [[usize; 2]; 3]| {
        let cells = counts.map(|[all, run]| match all {
            0 => " 0 | 0 | – |".to_string(),
            _ => format!(" {all} | {run} | {:.1} |", 100.0 * run as f64 / all as f64),
        });
        // Writing to a string does not fail.
        let _ = writeln!(text, "| {name} |{}", cells.concat());
    };
    let mut sum = [[0; 2]; 3];
    for (name, file) in files {
        row(&format!("`{name}`"), file.counts);
        for (sum, count) in sum.iter_mut().flatten().zip(file.counts.iter().flatten()) {
            *sum += count;
        }
    }
    row("`all`", sum);
    text
}

/// Files with lines of code, each with how often it stands there: a reason for one excuses no other that reads the same.
type Code = BTreeMap<(String, String), usize>;

/// The list: a file and a reason after a colon, then the lines of code, indented.
fn parsed(list: &str) -> Outcome<Code> {
    let (mut code, mut file) = (Code::new(), "");
    for line in list.lines().filter(|line| !line.is_empty() && !line.starts_with('#')) {
        if let Some(line) = line.strip_prefix("    ") {
            *code.entry((file.to_string(), line.to_string())).or_default() += 1;
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
        let more = a.iter().map(|(line @ (file, code), times)| {
            let known = b.get(line).copied().unwrap_or_default();
            format!("\n{file}: {code}").repeat(times.saturating_sub(known))
        });
        more.collect::<String>()
    };
    let (unknown, run) = (list(left, reasons), list(reasons, left));
    if unknown.is_empty() && run.is_empty() {
        println!("{} lines are not run, each with its reason", left.values().sum::<usize>());
        return Ok(());
    }
    Err(format!("not run, without a reason:{unknown}\nwith a reason, but run or gone:{run}"))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A report of functions that are uses of one, by how often its first region ran and the sides of its branch.
    fn report(uses: &[[u64; 3]]) -> String {
        let path = root().join(core_files::FOLDER).join("ratio.rs");
        let function = |[region, held, failed]: &[u64; 3]| {
            serde_json::json!({
                "filenames": [path],
                "regions": [[1, 1, 1, 9, region, 0, 0, 0], [2, 1, 2, 9, 0, 0, 0, 0]],
                "branches": [[1, 4, 1, 6, held, failed, 0, 0, 4]],
            })
        };
        let functions: Vec<Value> = uses.iter().map(function).collect();
        serde_json::json!({"data": [{"functions": functions}]}).to_string()
    }

    fn lines(counts: &str) -> String {
        let path = root().join(core_files::FOLDER).join("ratio.rs");
        format!("SF:{}\n{counts}\nend_of_record\n", path.display())
    }

    #[test]
    fn lines_regions_and_sides_of_branches_are_counted_once_by_all_uses() {
        let files = files(&report(&[[0, 3, 0], [2, 1, 0]]), &lines("DA:1,3\nDA:2,0")).unwrap();
        assert_eq!(files["ratio.rs"].counts, [[2, 1]; 3]);
        let row = "| 2 | 1 | 50.0 | 2 | 1 | 50.0 | 2 | 1 | 50.0 |\n";
        assert!(text(&files).ends_with(&format!("| `ratio.rs` {row}| `all` {row}")));
    }

    #[test]
    fn both_sides_of_a_branch_run_in_different_uses() {
        let files = files(&report(&[[1, 3, 0], [1, 0, 2]]), &lines("DA:1,3")).unwrap();
        assert_eq!(files["ratio.rs"].counts[2], [2, 2]);
    }

    #[test]
    fn nothing_measured_is_an_error() {
        let (some, none) = (report(&[[1, 1, 1]]), report(&[]));
        assert!(files(&some, "").unwrap_err().starts_with("no lines or no regions"));
        assert!(files(&none, &lines("DA:1,3")).unwrap_err().starts_with("no lines or no regions"));
        assert!(files(&none, "").unwrap_err().starts_with("no branches"));
        let stable = some.replace("\"branches\"", "\"none\"");
        assert!(files(&stable, &lines("DA:1,3")).unwrap_err().starts_with("no branches"));
    }

    #[test]
    fn a_file_without_branches_has_no_share_of_them() {
        let file = File { counts: [[1, 1], [1, 1], [0, 0]], ..File::default() };
        let files = BTreeMap::from([("a.rs".to_string(), file)]);
        assert!(text(&files).contains("| `a.rs` | 1 | 1 | 100.0 | 1 | 1 | 100.0 | 0 | 0 | – |\n"));
    }

    #[test]
    fn a_table_is_compared_by_its_lines() {
        let of = |run: u64, regions: u64| format!("| `a.rs` | 9 | {run} | 1.0 | 8 | {regions} |\n");
        assert_eq!(lines_in(&of(7, 5)), "`a.rs` | 9 | 7\n");
        assert_eq!(lines_in(&of(7, 5)), lines_in(&of(7, 6)));
        assert_ne!(lines_in(&of(7, 5)), lines_in(&of(8, 5)));
    }

    fn code(lines: &[(&str, usize)]) -> Code {
        lines.iter().map(|(code, times)| (("a.rs".to_string(), code.to_string()), *times)).collect()
    }

    #[test]
    fn what_is_not_run_needs_a_reason_and_no_reason_outlives_it() {
        let list = parsed("# Head\n\na.rs: cannot be\n    return 1;\n").unwrap();
        assert_eq!(explained(&code(&[("return 1;", 1)]), &list), Ok(()));
        let other = explained(&code(&[("return 2;", 1)]), &list).unwrap_err();
        assert!(other.contains("reason:\na.rs: return 2;"));
        assert!(explained(&Code::new(), &list).unwrap_err().contains("gone:\na.rs: return 1;"));
        assert!(parsed("a.rs\n    return 1;\n").is_err());
    }

    #[test]
    fn an_equal_line_needs_a_reason_of_its_own() {
        let once = parsed("a.rs: cannot be\n    return 1;\n").unwrap();
        let twice =
            parsed("a.rs: cannot be\n    return 1;\n\na.rs: nor this\n    return 1;\n").unwrap();
        let left = |times| code(&[("return 1;", times)]);
        assert_eq!(explained(&left(2), &twice), Ok(()));
        assert!(explained(&left(2), &once).unwrap_err().contains("reason:\na.rs: return 1;\nwith"));
        assert!(explained(&left(1), &twice).unwrap_err().ends_with("gone:\na.rs: return 1;"));
    }

    #[test]
    fn equal_lines_that_do_not_run_are_each_left() {
        // Lines of ratio.rs that read the same.
        let source = &core_files::code().unwrap()["ratio.rs"];
        let mut places = BTreeMap::<&str, Vec<usize>>::new();
        for (line, at) in source.lines().map(str::trim).zip(1..core_files::first_of_tests(source)) {
            places.entry(line).or_default().push(at);
        }
        let is_code = |line: &str| line.contains(char::is_alphanumeric);
        let (line, at) = places.iter().find(|(line, at)| is_code(line) && at.len() == 2).unwrap();
        let counts = format!("DA:{},0\nDA:{},0", at[0], at[1]);
        let files = files(&report(&[[1, 1, 1]]), &lines(&counts)).unwrap();
        assert_eq!(files["ratio.rs"].left, BTreeMap::from([(line.to_string(), 2)]));
    }
}
