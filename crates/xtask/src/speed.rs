//! Ours beside established peers: formulas written by hand in C, water by CoolProp and iapws, fits by MINPACK,
//! live flow by Savitzky and Golay's weights from scipy.
//!
//! Instructions are counted by callgrind, the same every time, and compared with the committed table. What
//! criterion's clock tells (`benches/peers.rs`) is for readers.

use std::collections::BTreeMap;
use std::fmt::Write as _;
use std::path::{Path, PathBuf};

use serde_json::Value;

use crate::c::archive;
use crate::commands::{cargo, limited, output, program, quietly, run, text_of};
use crate::tables::{cell, rows};
use crate::{Outcome, root, tools};

/// The row without a formula: what the loop takes around all others.
const LOOP: &str = "loop";

/// Instructions of a call by us and by the peer, by the formula's name.
type Counts = BTreeMap<String, [f64; 2]>;

fn path() -> PathBuf {
    root().join("benches/SPEED.md")
}

fn folder() -> PathBuf {
    root().join("target/speed")
}

/// Measures everything and writes the table.
pub fn write() -> Outcome {
    let program = build()?;
    let counts = counted(&program)?;
    let text = text(&counts, &timed(&program)?, &water(&program)?, &made_with()?)?;
    print!("{text}");
    std::fs::write(path(), text).map_err(|error| format!("{}: {error}", path().display()))
}

/// Counts instructions anew, and compares ours with the committed ones as far as another version of the
/// compiler may differ.
pub fn check() -> Outcome {
    let committed = std::fs::read_to_string(path())
        .map_err(|error| format!("{}: {error}", path().display()))?;
    let known = listed(&committed);
    let counts = counted(&build()?)?;
    for (name, [ours, _]) in &counts {
        let then = known.get(name.as_str());
        if then.is_none_or(|then| differ(*ours, *then)) {
            return Err(format!(
                "{name} takes {ours:.0} instructions, SPEED.md says {then:?}: cargo xtask speed"
            ));
        }
    }
    if let Some(gone) = known.keys().find(|name| !counts.contains_key(**name)) {
        return Err(format!("SPEED.md has {gone}, which is not measured: cargo xtask speed"));
    }
    println!("{} rows answer like their peers and take the committed instructions", counts.len());
    Ok(())
}

/// The same compiler makes the same code; its next version, or that of gcc around it, shifts a few instructions.
fn differ(a: f64, b: f64) -> bool {
    let apart = (a - b).abs();
    // Of a count that is none nothing is near.
    !(apart <= 4.0 || apart <= 0.05 * a || apart <= 0.05 * b)
}

/// Our instructions by the names of the rows that have some.
fn listed(table: &str) -> BTreeMap<&str, f64> {
    let rows = rows(table).into_iter();
    rows.filter_map(|row| Some((row.first()?.trim_matches('`'), cell(&row, 2).ok()?))).collect()
}

/// The program of all rows, once each answers like its peer.
fn build() -> Outcome<PathBuf> {
    tools::debian(&["gcc", "libc6-dev", "valgrind", "libcminpack-dev"])?;
    archive::of_host()?;
    let fail = |error: std::io::Error| format!("{}: {error}", folder().display());
    std::fs::create_dir_all(folder()).map_err(fail)?;
    std::fs::write(folder().join("weights.h"), weights()?).map_err(fail)?;
    let built = compiled("speed", &[])?;
    quietly(program(&built).arg("agree"))?;
    Ok(built)
}

/// All rows with our archive, as a program or what else gcc is told.
fn compiled(name: &str, how: &[&str]) -> Outcome<PathBuf> {
    let (package, built) = (archive::HOST.package(), folder().join(name));
    quietly(
        program("gcc")
            .args(["-std=c11", "-D_POSIX_C_SOURCE=200809L", "-O2", "-Wall", "-Wextra", "-Werror"])
            .args(how)
            .args(["-I", "benches/speed", "-I"])
            .arg(folder())
            .arg("-I")
            .arg(package.join("include"))
            .args(["speed", "by_hand", "peers"].map(|name| format!("benches/speed/{name}.c")))
            .arg(package.join("lib/libcupwright.a"))
            .args(["-lcminpack", "-lm", "-o"])
            .arg(&built),
    )?;
    Ok(built)
}

/// Scipy's weights, as the followers of `crates/traces` have them, for the program.
fn weights() -> Outcome<String> {
    let path = root().join("tests/vectors/peers/slopes.json");
    let fail = |error: &dyn std::fmt::Display| format!("{}: {error}", path.display());
    let text = std::fs::read_to_string(&path).map_err(|error| fail(&error))?;
    let vectors: Value = serde_json::from_str(&text).map_err(|error| fail(&error))?;
    let slopes = vectors["checks"].as_array().ok_or_else(|| fail(&"no checks"))?.iter();
    let mut header = String::new();
    for slope in slopes.filter(|check| check["formula"] == "savitzky_golay.slope") {
        let (order, window) = (&slope["in"]["order"], &slope["in"]["window"]);
        let (Some(order), Some(window)) = (order.as_f64(), window.as_f64()) else {
            return Err(fail(&"a slope without order and window"));
        };
        let weights = slope["out"]["weights"].to_string().replace('[', "{").replace(']', "}");
        let _ = writeln!(header, "#define WEIGHTS_{order}_{window} (const double[]){weights}");
    }
    Ok(header)
}

/// Instructions of a call, without those of the loop.
fn counted(built: &Path) -> Outcome<Counts> {
    let dumps = folder().join("counts");
    let fail = |error: std::io::Error| format!("{}: {error}", dumps.display());
    if dumps.exists() {
        std::fs::remove_dir_all(&dumps).map_err(fail)?;
    }
    std::fs::create_dir_all(&dumps).map_err(fail)?;
    let mut valgrind = program("valgrind");
    valgrind
        .args(["--quiet", "--tool=callgrind"])
        .arg(format!("--callgrind-out-file={}", dumps.join("dump").display()))
        .arg(built)
        .arg("count");
    quietly(&mut limited(300, &valgrind))?;
    let mut seen: BTreeMap<(String, usize), BTreeMap<u64, u64>> = BTreeMap::new();
    for file in std::fs::read_dir(&dumps).map_err(fail)? {
        let text = std::fs::read_to_string(file.map_err(fail)?.path()).map_err(fail)?;
        // The last dump is the program's own end.
        if let Some((name, side, calls, instructions)) = dump(&text) {
            seen.entry((name, side)).or_default().insert(calls, instructions);
        }
    }
    let mut counts = Counts::new();
    for ((name, side), runs) in seen {
        let (Some((few, less)), Some((many, more))) =
            (runs.first_key_value(), runs.last_key_value())
        else {
            continue;
        };
        if let Some(of_side) = counts.entry(name).or_default().get_mut(side) {
            *of_side = more.saturating_sub(*less) as f64 / (many - few) as f64;
        }
    }
    let around = counts.remove(LOOP).ok_or("callgrind left no dump of the loop")?;
    for count in counts.values_mut() {
        *count = [count[0] - around[0], count[1] - around[1]];
    }
    Ok(counts)
}

/// A dump's formula, side, calls and instructions.
fn dump(text: &str) -> Option<(String, usize, u64, u64)> {
    let after = |words: &str| text.lines().find_map(|line| line.strip_prefix(words));
    let mut label = after("desc: Trigger: Client Request: ")?.split('|');
    let (name, side, calls) = (label.next()?, label.next()?, label.next()?);
    let instructions = after("summary: ")?;
    Some((
        name.to_string(),
        side.parse().ok()?,
        calls.parse().ok()?,
        instructions.trim().parse().ok()?,
    ))
}

/// How often criterion goes through all rows; odd, for the middle one is shown.
const ROUNDS: usize = 5;

/// A row's name and remark, and in each round the nanoseconds of a call by us and by the peer.
struct Timed {
    name: String,
    remark: String,
    rounds: Vec<[f64; 2]>,
}

/// Lets criterion time all rows.
fn timed(built: &Path) -> Outcome<Vec<Timed>> {
    // Functions are called as in a program, not through a table.
    let alone = ["-shared", "-fPIC", "-fvisibility=hidden", "-Wl,--exclude-libs,ALL"];
    compiled("libspeed.so", &alone)?;
    let row = |line: &str| {
        let (name, remark) =
            line.split_once('|').ok_or_else(|| format!("speed rows printed {line:?}"))?;
        Ok(Timed { name: name.to_string(), remark: remark.to_string(), rounds: Vec::new() })
    };
    let printed = output(program(built).arg("rows"))?;
    let mut rows = printed.lines().map(row).collect::<Outcome<Vec<_>>>()?;
    let home = folder().join("criterion");
    for _ in 0..ROUNDS {
        // What is read was measured in this round.
        if home.exists() {
            std::fs::remove_dir_all(&home)
                .map_err(|error| format!("{}: {error}", home.display()))?;
        }
        let bench = ["bench", "--locked", "--bench", "peers", "--", "--quiet"];
        run(cargo(&bench).env("CRITERION_HOME", &home))?;
        for Timed { name, rounds, .. } in &mut rows {
            let of = |side: &str| {
                let path = home.join(&*name).join(side).join("new/estimates.json");
                median(&text_of(&path)?).map_err(|words| format!("{}: {words}", path.display()))
            };
            rounds.push([of("ours")?, of("theirs")?]);
        }
    }
    Ok(rows)
}

/// The median among criterion's estimates, in nanoseconds of a call.
fn median(estimates: &str) -> Outcome<f64> {
    let estimates: Value = serde_json::from_str(estimates).map_err(|error| error.to_string())?;
    let median = &estimates["median"]["point_estimate"];
    median.as_f64().ok_or_else(|| format!("the median is {median}"))
}

impl Timed {
    /// The round with the middle ratio of ours to the peer's, and the least and the greatest ratio.
    fn middle(&self) -> ([f64; 2], [f64; 2]) {
        let ratio = |round: &[f64; 2]| round[0] / round[1];
        let mut rounds = self.rounds.clone();
        rounds.sort_by(|a, b| ratio(a).total_cmp(&ratio(b)));
        (rounds[rounds.len() / 2], [ratio(&rounds[0]), ratio(&rounds[rounds.len() - 1])])
    }
}

/// What CoolProp and iapws make of our inputs, a line for each formula of water.
fn water(built: &Path) -> Outcome<String> {
    let values = folder().join("values");
    let fail = |error: std::io::Error| format!("{}: {error}", values.display());
    std::fs::write(&values, output(program(built).arg("values"))?).map_err(fail)?;
    let python =
        tools::python("reference-venv", &["--requirement", "tests/reference/requirements.txt"])?;
    output(
        program(python)
            .arg("benches/speed/water.py")
            .stdin(std::fs::File::open(&values).map_err(fail)?),
    )
}

/// The tools and the machine that a table is made with.
fn made_with() -> Outcome<String> {
    let first = |name: &str, words: &[&str]| -> Outcome<String> {
        let printed = output(program(name).args(words))?;
        Ok(printed.lines().next().unwrap_or_default().trim().to_string())
    };
    let processors = std::fs::read_to_string("/proc/cpuinfo").map_err(|error| error.to_string())?;
    let model = processors.lines().find_map(|line| line.strip_prefix("model name"));
    let model = model.unwrap_or("an unknown processor").trim_matches([' ', '\t', ':']);
    Ok(format!(
        "{}, {}, {} and cminpack {} on {model}",
        first("rustc", &["--version"])?,
        first("gcc", &["--version"])?,
        first("valgrind", &["--version"])?,
        first("dpkg-query", &["--show", "--showformat=${Version}", "libcminpack-dev"])?,
    ))
}

fn text(counts: &Counts, timed: &[Timed], water: &str, made_with: &str) -> Outcome<String> {
    let ours_of = |name: &str| {
        let row = timed.iter().find(|row| row.name == name);
        row.map(|row| row.middle().0[0]).ok_or_else(|| format!("{name} was not timed"))
    };
    let formulas = FORMULAS.replace("@LOOP@", &format!("{:.1}", ours_of(LOOP)?));
    let mut text = format!("{BEFORE}\nMade with {made_with}.\n\n## C\n\n{formulas}");
    for row in timed.iter().filter(|row| row.name != LOOP) {
        let Timed { name, remark, .. } = row;
        let [count, peer] = counts.get(name).ok_or_else(|| format!("{name} was not counted"))?;
        let ([ours, theirs], [least, most]) = row.middle();
        let ratio = ours / theirs;
        let _ = write!(text, "| `{name}` | {ours:.1} | {count:.0} | {theirs:.1} | {peer:.0} ");
        let _ = writeln!(text, "| {ratio:.2} | {least:.2}–{most:.2} | {remark} |");
    }
    text.push_str(WATER);
    for line in water.lines() {
        let words: Vec<&str> = line.split(' ').collect();
        let [name, off, exact, off_quick, quick, python] = words[..] else {
            return Err(format!("water.py printed {line:?}"));
        };
        let ours = ours_of(name)?;
        let _ = writeln!(
            text,
            "| {name} | {ours:.1} | {off} | {quick} | {off_quick} | {exact} | {python} |"
        );
    }
    text.push_str(AFTER);
    Ok(text)
}

const BEFORE: &str = "\
# How fast it is, beside others

```text
cargo xtask speed
```

measures all of it in one run; `cargo xtask speed --check`, a step of `cargo xtask test`, compares our
instructions. Before anything is measured, each row's two answers must agree at eight inputs: formulas to
10⁻⁹, fits to 10⁻⁶, two slopes of one noisy pour roughly.
";

const FORMULAS: &str = "\
Instructions are those of a call at eight inputs on average, by callgrind, without the loop around it. They are
the same every time; `--check` lets five in a hundred or four pass, for the next version of a compiler.

Nanoseconds are the processor's, without what it does for others: criterion's median of 50 runs of some 4 ms, first
ours, then the peer's (`benches/peers.rs`). The table was gone through five times: a row is of the time with the middle
ratio, the range of all five. A median takes in that others share caches and the
processor's clock: where the range is wide, instructions tell more. The loop is in the nanoseconds: alone it takes
@LOOP@, but beside a call the processor runs it in part, so nothing is subtracted. No test looks at times.

The peer of a formula is the same equation by hand in C (`benches/speed/by_hand.c`, gcc -O2, in a file of its
own): no checks, no errors, the system's libm. Ours is called through the C interface, which checks pointers, every
input and the answer: five to eight instructions each.

The house allows 1.2 times the formula by hand. Most of what has some work of its own keeps that: water, mixing, settling,
the time to cool. What is two or three operations does not, and cannot while it is checked: such a call takes some
nanoseconds longer. The mass balance checks eight inputs. Where elementary functions count, glibc's are faster than
those of the libm crate: with tables, and with fused multiply-add where the processor has it, so their last bits
depend on it. Ours have the same bits everywhere: `heat_temperature_after` takes as many instructions as by hand and
more time, half of it in the exponential.

The peer of a fit is cminpack's Levenberg-Marquardt on the same data (`benches/speed/peers.c`). It is given a start near the
end and a tolerance of 10⁻¹², and answers parameters; ours is given none, and answers uncertainties, residuals and
leverages besides. Of one rate's instructions a fifth look for the start; the others are some twenty evaluations of the curve
and its slopes, most of them for the last digits. Two rates fit one rate first, then try every pair of time constants,
each half of the one before: a third each. The peer of live flow is Savitzky and Golay's slope of the last readings, weights by scipy. It
asks for evenly spaced readings and answers a flow; ours takes any times and tells pours, things put down
and water poured besides. At 80 Hz it takes eight readings for one point.

| row | ours, ns | instructions | peer, ns | instructions | times the peer's ns | range | remark |
|---|---:|---:|---:|---:|---:|---:|---|
";

const WATER: &str = "
## Water

Nanoseconds of a value, and the largest difference from IAPWS-95 at the eight inputs, in the formula's unit
(kg/m³, J/(g K), J/g, °C, kPa, °C). CoolProp's core is C++: it takes 500 values in one call of Python, which includes
its reading of the arguments and a look at the phase for each value. iapws is Python throughout; its equations are called
bare. Theirs are medians of 25 runs, the processor's time too. Ours is a loop of calls in C, from the table above.

| formula | ours, ns | off | CoolProp IF97, ns | off | CoolProp IAPWS-95, ns | iapws IF97, ns |
|---|---:|---:|---:|---:|---:|---:|
";

const AFTER: &str = "
## Elsewhere

Calls from JavaScript beside plain JavaScript: `bindings/wasm/COSTS.md`. Columns beside a copy of memory:
`benches/COLUMNS.md`. Boards: `bindings/c/COSTS.md`.
";

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_row_is_of_the_round_with_the_middle_ratio() {
        let rounds = vec![[2.0, 1.0], [9.0, 3.0], [1.0, 4.0]];
        let row = Timed { name: String::new(), remark: String::new(), rounds };
        assert_eq!(row.middle(), ([2.0, 1.0], [0.25, 3.0]));
    }

    #[test]
    fn a_dump_is_read() {
        let text =
            "desc: Trigger: Client Request: live at 10 Hz|1|2000\nevents: Ir\nsummary: 1417\n";
        assert_eq!(dump(text), Some(("live at 10 Hz".to_string(), 1, 2000, 1417)));
        assert_eq!(dump("desc: Trigger: Program termination\nsummary: 5\n"), None);
    }

    #[test]
    fn the_median_is_read_among_estimates() {
        let of = |value: &str| {
            median(&format!(
                r#"{{"mean": {{"point_estimate": 9.5}}, "median": {{"confidence_interval":
                {{"lower_bound": 2.5}}, "point_estimate": {value}, "standard_error": 0.1}}}}"#
            ))
        };
        assert_eq!(of("3.25"), Ok(3.25));
        assert_eq!(of("null"), Err("the median is null".to_string()));
        assert!(median("{").is_err() && median("{}").is_err());
    }

    #[test]
    fn a_row_shows_the_middle_of_its_rounds_and_the_range_of_their_ratios() {
        let row = |name: &str, rounds: [[f64; 2]; 3]| Timed {
            name: name.to_string(),
            remark: "words".to_string(),
            rounds: rounds.to_vec(),
        };
        let counts = Counts::from([("a".to_string(), [27.0, 5.0])]);
        let around = row(LOOP, [[0.5, 0.5], [0.75, 0.5], [0.25, 0.5]]);
        let timed = [around, row("a", [[6.0, 4.0], [9.0, 12.0], [3.0, 2.0]])];
        let table = text(&counts, &timed, "a 1 2 3 4 5\n", "gcc").unwrap();
        assert!(table.contains("| `a` | 6.0 | 27 | 4.0 | 5 | 1.50 | 0.75–1.50 | words |\n"));
        assert!(table.contains("| a | 6.0 | 1 | 4 | 3 | 2 | 5 |\n"));
        assert!(table.contains("alone it takes\n0.5, "));
        assert_eq!(listed(&table), BTreeMap::from([("a", 27.0)]));
        assert_eq!(text(&counts, &timed[1..], "", "gcc"), Err("loop was not timed".to_string()));
    }

    #[test]
    fn a_table_is_read_back() {
        let table = "| formula | ns |\n|---|---:|\n| `a b` | 2.5 | 34 | 2.0 | 6 | 1.25 | words |\n| c | 3.0 | 1e-4 |\n";
        assert_eq!(listed(table), BTreeMap::from([("a b", 34.0)]));
    }

    #[test]
    fn a_few_instructions_are_let_pass() {
        assert!(!differ(30.0, 34.0) && !differ(1000.0, 1049.0));
        assert!(differ(30.0, 35.0) && differ(1000.0, 1060.0));
    }
}
