//! `cargo xtask prove`: what the library claims, each claim with its figure and the steps of the tests
//! that prove it. The same figures are in the README.

use std::collections::{BTreeMap, BTreeSet};
use std::fmt::Write;
use std::path::PathBuf;

use formulas::FORMULAS;
use formulas::vectors::files;

use crate::c::scattered::{ALL, Points, counted};
use crate::c::{builds, calls, interface, size::READING};
use crate::commands::text_of;
use crate::tables::{cell, row, rows, spaced};
use crate::{Outcome, coverage, difference, mutants, root, test};

/// A claim.
struct Claim {
    words: &'static str,
    /// Its figure, taken from what the steps compare with what comes out; an error where it is beyond the
    /// bound that is claimed.
    figure: fn() -> Outcome<String>,
    /// The steps of the tests that prove it.
    steps: &'static [&'static str],
}

const CLAIMS: &[Claim] = &[
    Claim {
        words: "Every formula has the same bits on x86-64, in Node.js and Chromium, on Cortex-M0, M4F and rv32imc",
        figure: scattered,
        steps: &[
            "bits at scattered inputs",
            "bits in Node.js",
            "bits in Chromium",
            "bits in C",
            "bits on emulated boards",
        ],
    },
    Claim {
        words: "Those bits do not depend on how the library is compiled: unoptimised or for size, as one unit or many",
        figure: compiled,
        steps: &["nine builds"],
    },
    Claim {
        words: "Every formula refuses and answers alike in C on six boards and in JavaScript in Node.js and Chromium",
        figure: functions,
        steps: &[
            "C calls",
            "C calls on emulated boards",
            "JavaScript calls in Node.js",
            "JavaScript calls in Chromium",
        ],
    },
    Claim {
        words: "Brews that are followed live have the same bits on all of them",
        figure: traces,
        steps: &[
            "live corpus as accepted",
            "live corpus in C",
            "live corpus on emulated boards",
            "live corpus in Node.js",
            "live corpus in Chromium",
        ],
    },
    Claim {
        words: "Over whole ranges, models are off by ten roundings of their inputs at most; probabilities have ten right digits",
        figure: accuracy,
        steps: &["right digits"],
    },
    Claim {
        words: "Answers meet published values, and values that other libraries or methods compute",
        figure: check_values,
        steps: &["unit, property and published-value tests", "reference values"],
    },
    Claim {
        words: "The Rust tests run every line of the core, but for those that are listed with a reason",
        figure: coverage::figure,
        steps: &["coverage"],
    },
    Claim {
        words: "When last asked, the Rust tests noticed 95 of 100 small changes of the core's code at least, and survivors have a reason",
        figure: mutants::figure,
        steps: &["record of mutants"],
    },
    Claim {
        words: "Every formula has its equation, symbols, source, check value, benchmark, C and JavaScript function",
        figure: || Ok(format!("{} formulas", FORMULAS.len())),
        steps: &["every formula whole"],
    },
    Claim {
        words: "The core cannot panic, has no heap and no unsafe code; its packages leave nothing undefined",
        figure: sources,
        steps: &["promises of the source", "embedded", "C packages", "any bytes"],
    },
    Claim {
        words: "Calls use memory as they should: from C under valgrind and two sanitizers, from Rust under Miri",
        figure: functions,
        steps: &["C calls", "C calls from Rust under Miri"],
    },
    Claim {
        words: "A Cortex-M0 follows the brews measured with 30 000 instructions a reading at most, a Cortex-M4F with 8 000",
        figure: live_costs,
        steps: &["C costs"],
    },
    Claim {
        words: "A watched scale hears every pour in the traces it was never tuned on, where nothing hides them",
        figure: live_scores,
        steps: &["scores of live flow"],
    },
    Claim {
        words: "The oldest Rust that is promised runs the core's unit and doc tests and builds the C interface",
        figure: || Ok(format!("Rust {}", env!("CARGO_PKG_RUST_VERSION"))),
        steps: &["oldest Rust"],
    },
    Claim {
        words: "The JavaScript package weighs less than 300 KB gzipped, whatever is imported",
        figure: weight,
        steps: &["JavaScript costs"],
    },
];

/// Steps that make what others look at.
const MAKERS: [&str; 2] = ["C packages", "JavaScript package"];

/// Runs what proves the claims and says of each whether it stands.
pub fn all() -> Outcome {
    let mut named: BTreeSet<&str> = MAKERS.into();
    named.extend(CLAIMS.iter().flat_map(|claim| claim.steps));
    let outcomes = test::each(&named);
    // Without them others would look at packages of before.
    MAKERS.iter().filter_map(|maker| outcomes.get(maker).cloned()).collect::<Outcome>()?;
    let (text, fallen) = verdicts(CLAIMS, &outcomes);
    print!("\n{text}");
    in_the_readme()?;
    if fallen == 0 { Ok(()) } else { Err(format!("{fallen} of {} claims fall", CLAIMS.len())) }
}

/// A line for each claim, and how many have fallen.
fn verdicts(claims: &[Claim], outcomes: &BTreeMap<&str, Outcome>) -> (String, usize) {
    let (mut text, mut fallen) = (String::new(), 0);
    for Claim { words, figure, steps } in claims {
        let failed = steps.iter().find_map(|step| match outcomes.get(step) {
            Some(outcome) => outcome.as_ref().err().cloned(),
            None => Some(format!("no step {step}")),
        });
        let stands = failed.map_or_else(figure, Err);
        fallen += usize::from(stands.is_err());
        // Writing to a string does not fail.
        let _ = match stands {
            Ok(figure) => writeln!(text, "stands  {words}: {figure}"),
            Err(why) => writeln!(text, "FALLS   {words}: {why}"),
        };
    }
    (text, fallen)
}

/// The table of the README.
fn table() -> Outcome<String> {
    let mut text = String::from("| claim | figure |\n|---|---|\n");
    for Claim { words, figure, .. } in CLAIMS {
        let _ = writeln!(text, "| {words} | {} |", figure()?);
    }
    Ok(text)
}

fn readme() -> (PathBuf, Outcome<String>) {
    (root().join("README.md"), text_of("README.md"))
}

/// The table as it stands in a text: from its head to the first line that is none of it.
fn table_in(text: &str) -> Option<&str> {
    let start = text.find("| claim | figure |\n")?;
    let length: usize = text[start..]
        .split_inclusive('\n')
        .take_while(|line| line.starts_with('|'))
        .map(str::len)
        .sum();
    Some(&text[start..start + length])
}

/// Compares the README's table with the figures.
pub fn in_the_readme() -> Outcome {
    let text = readme().1?;
    let stated = table_in(&text).ok_or("README.md has no table of claims")?;
    match difference::between(stated, &table()?) {
        None => {
            println!("{} claims, as in the README", CLAIMS.len());
            Ok(())
        }
        Some(difference) => {
            Err(format!("README.md states other figures\n{difference}\ncargo xtask claims"))
        }
    }
}

/// Writes the table into the README.
pub fn write() -> Outcome {
    let (path, text) = readme();
    let text = text?;
    let stated = table_in(&text).ok_or("README.md has no table of claims")?;
    let text = text.replace(stated, &table()?);
    std::fs::write(&path, text).map_err(|error| format!("{}: {error}", path.display()))
}

/// The words of each line that is no remark.
fn lines(text: &str) -> impl Iterator<Item = Vec<&str>> {
    text.lines().filter(|line| !line.starts_with('#')).map(|line| line.split(' ').collect())
}

fn sum(lines: &[Vec<&str>], at: usize) -> Outcome<u64> {
    lines.iter().map(|words| cell::<u64>(words, at)).sum()
}

fn scattered() -> Outcome<String> {
    let ((formulas, all), (_, on_boards)) = (counted(Points::All)?, counted(Points::OnBoards)?);
    let (each, all, on_boards) = (spaced(ALL), spaced(all), spaced(on_boards));
    Ok(format!(
        "{formulas} formulas at {each} inputs each, {all}; on boards at {on_boards} of them"
    ))
}

fn compiled() -> Outcome<String> {
    let (builds, (_, inputs)) = (builds::BUILDS.len(), counted(Points::All)?);
    Ok(format!(
        "{builds} builds, each at {} inputs, {} of each formula",
        spaced(inputs),
        spaced(ALL)
    ))
}

fn functions() -> Outcome<String> {
    Ok(format!("{} functions", calls::all(&interface::read()?).len()))
}

fn traces() -> Outcome<String> {
    let text = text_of("tests/traces/GOLDEN")?;
    let lines: Vec<_> = lines(&text).collect();
    Ok(format!("{} held-out traces, {} readings", lines.len(), spaced(sum(&lines, 2)?)))
}

fn accuracy() -> Outcome<String> {
    let text = text_of("tests/reference/ACCURACY.md")?;
    let rows = rows(&text);
    let measured = || rows.iter().filter(|cells| cells.len() > 7);
    // Probabilities and coverage factors are integrals and their inverses.
    let is_integral = |cells: &[&str]| {
        cells[0].contains("decision.") || cells[0].contains("uncertainty.coverage_factor")
    };
    let of = |integrals: bool, at| -> Outcome<Vec<f64>> {
        let chosen = measured().filter(|cells| is_integral(cells) == integrals);
        let mut figures: Vec<f64> = chosen.map(|cells| cell(cells, at)).collect::<Outcome<_>>()?;
        figures.sort_by(f64::total_cmp);
        Ok(figures)
    };
    let roundings = of(false, 6)?.pop().ok_or("ACCURACY.md measures no model")?;
    let digits = of(true, 4)?.first().copied().ok_or("ACCURACY.md measures no probability")?;
    if roundings > 10.0 || digits < 10.0 {
        return Err(format!("{roundings} roundings, {digits} digits"));
    }
    let formulas: BTreeSet<&str> = measured().map(|cells| cells[0]).collect();
    let count = formulas.len();
    Ok(format!("{count} formulas: {roundings} roundings, {digits} digits at worst"))
}

/// Values that were published and copied by hand, and those that were computed.
fn check_values() -> Outcome<String> {
    let values = files().into_iter().map(|(_, file)| {
        let count: usize = file.checks.iter().map(|check| check.out.len()).sum();
        (file.made_by, count as u64)
    });
    told_apart(&values.collect::<Vec<_>>())
}

/// Of files, how each was made and how many values it has.
fn told_apart(files: &[(String, u64)]) -> Outcome<String> {
    let of = |is_copied: bool| {
        let chosen = files.iter().filter(|(made_by, _)| (made_by == "copied by hand") == is_copied);
        let counts: Vec<u64> = chosen.map(|(_, count)| *count).collect();
        (spaced(counts.iter().sum()), counts.len())
    };
    if let Some((made_by, _)) = files.iter().find(|(made_by, _)| {
        made_by != "copied by hand" && !made_by.starts_with("tests/reference/")
    }) {
        return Err(format!("check values made by {made_by:?}"));
    }
    let ((copied, sources), (computed, scripts)) = (of(true), of(false));
    Ok(format!(
        "{copied} values copied by hand from {sources} sources, {computed} computed by {scripts} scripts"
    ))
}

fn sources() -> Outcome<String> {
    Ok(format!("{} files", test::promises_of_the_core()?))
}

fn live_costs() -> Outcome<String> {
    let text = text_of("bindings/c/COSTS.md")?;
    let rows = rows(&text);
    let cells = row(&rows, "cupwright_follow_take")?;
    let (m0, m4f): (u64, u64) = (cell(cells, 4)?, cell(cells, 8)?);
    let [most_m0, most_m4f] = READING;
    if m0 > most_m0 || m4f > most_m4f {
        return Err(format!("{m0} and {m4f} instructions"));
    }
    Ok(format!("{} and {}", spaced(m0), spaced(m4f)))
}

fn live_scores() -> Outcome<String> {
    let text = text_of("tests/traces/SCORES.md")?;
    let (mut families, mut started) = (0, 0);
    for section in text.split("\n## ").skip(1).filter(|text| !text.contains("(not strict)")) {
        let ours = section.lines().find_map(|line| line.strip_prefix("| cupwright | "));
        let missed = ours.and_then(|line| line.split(" / ").next()).ok_or("a family unscored")?;
        if missed != "0" {
            let name = section.lines().next().unwrap_or_default();
            return Err(format!("{missed} starts and stops missed in {name}"));
        }
        let before = section.split(" starts and stops").next().unwrap_or_default();
        let count = before.rsplit(' ').next().and_then(|word| word.parse::<u64>().ok());
        started += count.ok_or("a family without its number of starts and stops")?;
        families += 1;
    }
    Ok(format!("0 of {} starts and stops missed in {families} families", spaced(started)))
}

fn weight() -> Outcome<String> {
    let text = text_of("bindings/wasm/COSTS.md")?;
    let rows = rows(&text);
    let gzipped = |name| cell::<u64>(row(&rows, name)?, 2);
    let (all, slim) = (gzipped("cupwright")?, gzipped("cupwright/slim")?);
    if all.max(slim) >= 300_000 {
        return Err(format!("{all} and {slim} bytes"));
    }
    Ok(format!(
        "{} KB with the module inlined, {} KB beside it",
        (all + 500) / 1000,
        (slim + 500) / 1000
    ))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_step_of_a_claim_exists() {
        let steps: Vec<&str> = test::names().collect();
        for Claim { words, steps: named, .. } in CLAIMS {
            assert!(!named.is_empty(), "{words}: nothing proves it");
            for step in *named {
                assert!(steps.contains(step), "{words}: no step {step}");
            }
        }
        assert!(MAKERS.iter().all(|step| steps.contains(step)));
    }

    #[test]
    fn a_claim_falls_with_a_step_or_with_its_figure() {
        let good = || Ok("7".to_string());
        let claims = [
            Claim { words: "a", figure: good, steps: &["one"] },
            Claim { words: "b", figure: good, steps: &["one", "two"] },
            Claim { words: "c", figure: || Err("9 is more than 8".to_string()), steps: &["one"] },
            Claim { words: "d", figure: good, steps: &["three"] },
        ];
        let outcomes = [("one", Ok(())), ("two", Err("broken".to_string()))].into();
        let (text, fallen) = verdicts(&claims, &outcomes);
        assert_eq!(
            text,
            "stands  a: 7\nFALLS   b: broken\nFALLS   c: 9 is more than 8\nFALLS   d: no step three\n"
        );
        assert_eq!(fallen, 3);
    }

    #[test]
    fn published_and_computed_values_are_told_apart() {
        let of = |made_by: &str, count| (made_by.to_string(), count);
        let mut files = vec![of("copied by hand", 2), of("copied by hand", 3)];
        files.push(of("tests/reference/a.py with scipy 1", 1000));
        let told = "5 values copied by hand from 2 sources, 1 000 computed by 1 scripts";
        assert_eq!(told_apart(&files), Ok(told.to_string()));
        files.push(of("hearsay", 1));
        assert!(told_apart(&files).unwrap_err().contains("hearsay"));
    }

    #[test]
    fn a_table_ends_where_it_ends() {
        let text = "x\n| claim | figure |\n|---|---|\n| a | b |\n\n| other |\n";
        assert_eq!(table_in(text), Some("| claim | figure |\n|---|---|\n| a | b |\n"));
        assert_eq!(table_in("| claim |"), None);
    }
}
