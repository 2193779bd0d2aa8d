//! All scattered inputs on emulated boards, of formulas that the tests have no time for there: hours of an emulator, so
//! they are compared by hand and in parts, and a record says which were.

use std::collections::BTreeMap;
use std::fmt::Write;
use std::time::{Duration, Instant};

use formulas::{FORMULAS, Formula};

use super::calls::{self, function_of};
use super::driver::{self, BITS_BOARDS, Board};
use super::interface;
use super::scattered::{self, ALL, Points};
use crate::commands::{output, program, text_of};
use crate::{Outcome, root};

/// Seconds that a formula may take: the dearest takes an idle computer half an hour.
const LONGEST: u32 = 6 * 3600;

const RECORD: &str = "tests/vectors/BOARDS";

const HEAD: &str = "\
# Made by `cargo xtask boards`, by hand and not by the tests: which formulas gave all 10000 answers of GOLDEN on an
# emulated board, of those of which the tests compare fewer there. Of each: the board's target, the formula, GOLDEN's
# hash of all, and the day. With another hash in GOLDEN a line is void.
";

/// What was compared: a board's target and a formula, with the hash of all answers and the day.
type Record = BTreeMap<(String, String), (u64, String)>;

fn text(record: &Record) -> String {
    let mut text = HEAD.to_string();
    for ((board, formula), (hash, day)) in record {
        // Writing to a string does not fail.
        let _ = writeln!(text, "{board} {formula} {hash:016x} {day}");
    }
    text
}

fn parsed(text: &str) -> Outcome<Record> {
    let entry = |line: &str| match line.split(' ').collect::<Vec<_>>()[..] {
        [board, formula, hash, day] => {
            let hash = u64::from_str_radix(hash, 16).ok()?;
            Some(((board.to_string(), formula.to_string()), (hash, day.to_string())))
        }
        _ => None,
    };
    let lines = text.lines().filter(|line| !line.starts_with('#'));
    lines.map(|line| entry(line).ok_or_else(|| format!("no comparison: {line}"))).collect()
}

/// Formulas of which the tests compare fewer points on boards, with the hash of all.
fn dear() -> Outcome<BTreeMap<&'static str, u64>> {
    let golden = scattered::accepted()?;
    let both = |formula: &'static Formula| {
        let ((few, _), (all, hash)) =
            (Points::OnBoards.of(&golden, formula)?, Points::All.of(&golden, formula)?);
        Ok((few < all).then_some((formula.id, hash)))
    };
    FORMULAS.iter().filter_map(|formula| both(formula).transpose()).collect()
}

/// The record without what is void.
fn valid(mut record: Record, dear: &BTreeMap<&str, u64>) -> Record {
    record.retain(|(_, formula), (hash, _)| dear.get(formula.as_str()) == Some(hash));
    record
}

fn recorded(dear: &BTreeMap<&str, u64>) -> Outcome<Record> {
    Ok(valid(parsed(&text_of(RECORD)?)?, dear))
}

fn write(record: &Record) -> Outcome {
    std::fs::write(root().join(RECORD), text(record)).map_err(|error| format!("{RECORD}: {error}"))
}

/// Takes out of the record what is void.
pub fn drop_void() -> Outcome {
    write(&recorded(&dear()?)?)
}

/// `cargo xtask boards [MINUTES] [TARGET]`: what is not on record yet, cheap formulas first, beginning none after so many
/// minutes; an hour, all boards, if nothing is said.
pub fn compare(arguments: &[&str]) -> Outcome {
    let minutes = arguments.first().copied().unwrap_or("60");
    let minutes: u64 = minutes.parse().map_err(|_| format!("minutes: {minutes:?}"))?;
    let boards: Vec<&Board> = match arguments.get(1..).unwrap_or_default() {
        [] => BITS_BOARDS.iter().collect(),
        [target] => BITS_BOARDS.iter().filter(|board| board.triple == *target).collect(),
        _ => Vec::new(),
    };
    if boards.is_empty() {
        let known: Vec<&str> = BITS_BOARDS.iter().map(|board| board.triple).collect();
        return Err(format!("{:?}: known are {}", &arguments[1..], known.join(", ")));
    }
    driver::emulators()?;
    let (costs, dear) = (scattered::costs()?, dear()?);
    let mut cheap_first: Vec<(&str, u64)> = dear.iter().map(|(id, hash)| (*id, *hash)).collect();
    cheap_first.sort_by_key(|(id, _)| costs.get(&function_of(id)).copied().unwrap_or(u64::MAX));
    let (start, mut record) = (Instant::now(), recorded(&dear)?);
    for (formula, hash) in cheap_first {
        for board in &boards {
            let key = (board.triple.to_string(), formula.to_string());
            if record.contains_key(&key) {
                continue;
            }
            if start.elapsed() >= Duration::from_secs(60 * minutes) {
                println!("the time is over: {formula} on {} is next", board.name);
                return Ok(());
            }
            answered(formula, board)?;
            let day = output(program("date").args(["--utc", "+%F"]))?.trim().to_string();
            record.insert(key, (hash, day));
            write(&record)?;
        }
    }
    println!("all are on record");
    Ok(())
}

/// Compares all answers of a formula on a board.
fn answered(formula: &str, board: &Board) -> Outcome {
    let (start, interface) = (Instant::now(), interface::read()?);
    let mut calls = calls::all(&interface);
    calls.retain(|call| call.function.name == function_of(formula));
    board.run("scattered", &driver::set_up_scattered(&calls, Points::All)?, LONGEST)?;
    let seconds = start.elapsed().as_secs_f64();
    println!("{formula} on {} at {ALL} inputs: {seconds:.0} s", board.name);
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn record(hash: u64) -> Record {
        let key = ("thumbv6m-none-eabi".to_string(), "advise.on".to_string());
        [(key, (hash, "2026-11-26".to_string()))].into()
    }

    #[test]
    fn a_record_comes_back() {
        assert_eq!(parsed(&text(&record(0xab))), Ok(record(0xab)));
        assert!(parsed("thumbv6m-none-eabi advise.on ab\n").is_err());
    }

    #[test]
    fn what_was_compared_with_other_bits_is_void() {
        let dear = [("advise.on", 1)].into();
        assert_eq!(valid(record(1), &dear), record(1));
        assert_eq!(valid(record(2), &dear), Record::new());
        // Nor does a line count twice, of a formula that the tests compare whole.
        assert_eq!(valid(record(1), &BTreeMap::new()), Record::new());
    }

    #[test]
    fn the_committed_record_is_valid_whole() {
        let committed = parsed(&text_of(RECORD).unwrap()).unwrap();
        let triples: Vec<&str> = BITS_BOARDS.iter().map(|board| board.triple).collect();
        assert!(committed.keys().all(|(triple, _)| triples.contains(&triple.as_str())));
        assert_eq!(valid(committed.clone(), &dear().unwrap()), committed);
    }

    #[test]
    fn unknown_boards_and_minutes_are_refused() {
        assert!(compare(&["1", "x86_64"]).unwrap_err().contains("riscv32imc"));
        assert!(compare(&["soon"]).unwrap_err().contains("soon"));
    }
}
