//! Traces of real scales, in files.
//!
//! A record is text in UTF-8, comma-separated, one sample a line:
//!
//! ```text
//! # A drip cone on a kitchen scale, 20 g; times of arrival. (Invented.)
//! time_s,mass_g,label
//! 0.102,0.0,
//! 0.201,0.1,pour_start
//! 0.304,nan,
//! 0.398,1.2,
//! ```
//!
//! - Lines that begin with `#` are comments and may stand anywhere: say what was weighed, on what,
//!   by whom, and what was tared. Empty lines are ignored.
//! - The first other line names the columns: `time_s,mass_g` or `time_s,mass_g,label`.
//! - `time_s` in seconds, from any beginning, rises from line to line. `mass_g` is what the display
//!   showed; `nan` where a sample came that was no weight. Decimal points, no units, no spaces.
//! - `label` is empty or what began, ended or happened by this sample: [`Mark`]. What starts must
//!   stop before it starts again.
//!
//! `examples/cafe-page/record.md` says so to those who record; the page there has limits of its own.

use std::fmt;

use crate::label::Label;
use crate::line::Sample;

/// A sample and what was noted beside it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Row {
    pub sample: Sample,
    pub mark: Option<Mark>,
}

/// What a person noted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Mark {
    PourStart,
    PourStop,
    DripStart,
    DripStop,
    PressStart,
    PressStop,
    StirStart,
    StirStop,
    Tare,
    Lifted,
    Returned,
    Placed,
    Removed,
    Knock,
}

/// Every mark with its name in a file.
const MARKS: [(Mark, &str); 14] = [
    (Mark::PourStart, "pour_start"),
    (Mark::PourStop, "pour_stop"),
    (Mark::DripStart, "drip_start"),
    (Mark::DripStop, "drip_stop"),
    (Mark::PressStart, "press_start"),
    (Mark::PressStop, "press_stop"),
    (Mark::StirStart, "stir_start"),
    (Mark::StirStop, "stir_stop"),
    (Mark::Tare, "tare"),
    (Mark::Lifted, "lifted"),
    (Mark::Returned, "returned"),
    (Mark::Placed, "placed"),
    (Mark::Removed, "removed"),
    (Mark::Knock, "knock"),
];

/// What is wrong with a record, and in which line of it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Fault {
    pub line: usize,
    pub what: String,
}

impl fmt::Display for Fault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "line {}: {}", self.line, self.what)
    }
}

/// Reads a record.
pub fn read(text: &str) -> Result<Vec<Row>, Fault> {
    let mut rows: Vec<Row> = Vec::new();
    let mut columns = None;
    for (line, content) in (1..).zip(text.lines()) {
        if content.is_empty() || content.starts_with('#') {
            continue;
        }
        let fail = |what: String| Fault { line, what };
        let Some(columns) = columns else {
            columns = Some(match content {
                "time_s,mass_g" => 2,
                "time_s,mass_g,label" => 3,
                other => return Err(fail(format!("columns: \"{other}\" are not time_s,mass_g"))),
            });
            continue;
        };
        let fields: Vec<&str> = content.split(',').collect();
        if fields.len() != columns {
            return Err(fail(format!("{} fields where there are {columns} columns", fields.len())));
        }
        let row = row(&fields).map_err(fail)?;
        if let Some(before) = rows.last().filter(|row_| row_.sample.time_s >= row.sample.time_s) {
            let (now_s, then_s) = (row.sample.time_s, before.sample.time_s);
            return Err(fail(format!("time_s: {now_s} s does not come after {then_s} s")));
        }
        rows.push(row);
    }
    if columns.is_none() {
        return Err(Fault { line: 1, what: "columns: there are none".to_string() });
    }
    Ok(rows)
}

fn row(fields: &[&str]) -> Result<Row, String> {
    let [time_s, mass_g, label @ ..] = fields else {
        return Err("time_s and mass_g are missing".to_string());
    };
    let time_s = number("time_s", time_s)?;
    let mass_g = if *mass_g == "nan" { f64::NAN } else { number("mass_g", mass_g)? };
    let mark = match label {
        [] | [""] => None,
        [name, ..] => Some(mark(name)?),
    };
    Ok(Row { sample: Sample { time_s, mass_g }, mark })
}

/// A finite number in decimals; Rust would take `inf` and `+1` too.
fn number(name: &str, text: &str) -> Result<f64, String> {
    let plain = |c: char| c.is_ascii_digit() || matches!(c, '-' | '.' | 'e');
    match text.parse::<f64>() {
        Ok(value) if value.is_finite() && text.chars().all(plain) => Ok(value),
        _ => Err(format!("{name}: \"{text}\" is no number")),
    }
}

fn mark(name: &str) -> Result<Mark, String> {
    let known = MARKS.iter().find(|(_, of)| *of == name);
    known.map(|(mark, _)| *mark).ok_or_else(|| format!("label: there is no \"{name}\""))
}

/// Writes a record with a comment above it; every number reads back with the same bits.
pub fn write(comment: &str, rows: &[Row]) -> String {
    let mut text: String = comment.lines().map(|line| format!("# {line}\n")).collect();
    text.push_str("time_s,mass_g,label\n");
    for Row { sample: Sample { time_s, mass_g }, mark } in rows {
        let name = mark.and_then(|mark| MARKS.iter().find(|(of, _)| *of == mark));
        let name = name.map_or("", |(_, name)| name);
        let mass = if mass_g.is_nan() { "nan".to_string() } else { mass_g.to_string() };
        text.push_str(&format!("{time_s},{mass},{name}\n"));
    }
    text
}

/// What truly happened by the marks, in the order in which it began. The grams are the difference
/// of the display from start to stop, or from the sample before to the one two seconds later.
pub fn labels(rows: &[Row]) -> Result<Vec<Label>, String> {
    let mut labels = Vec::new();
    let mut open: Vec<(Mark, Sample)> = Vec::new();
    for (at, row) in rows.iter().enumerate() {
        let Some(mark) = row.mark else { continue };
        let at_s = row.sample.time_s;
        let close = |open: &mut Vec<(Mark, Sample)>, start: Mark| {
            let begun = open.iter().position(|(of, _)| *of == start);
            let begun = begun.ok_or_else(|| format!("{at_s} s: {mark:?} without {start:?}"))?;
            let (_, sample) = open.remove(begun);
            Ok::<_, String>((sample.time_s, row.sample.mass_g - sample.mass_g))
        };
        match mark {
            Mark::PourStart | Mark::DripStart | Mark::PressStart | Mark::StirStart => {
                if open.iter().any(|(of, _)| *of == mark) {
                    return Err(format!("{at_s} s: {mark:?} again before it stopped"));
                }
                open.push((mark, row.sample));
            }
            Mark::PourStop => {
                let (start_s, grams) = close(&mut open, Mark::PourStart)?;
                labels.push(Label::Pour { start_s, stop_s: at_s, grams });
            }
            Mark::DripStop => {
                let (start_s, grams) = close(&mut open, Mark::DripStart)?;
                labels.push(Label::Drip { start_s, stop_s: at_s, grams });
            }
            Mark::PressStop => {
                let (start_s, _) = close(&mut open, Mark::PressStart)?;
                labels.push(Label::Press { start_s, stop_s: at_s });
            }
            Mark::StirStop => {
                let (start_s, _) = close(&mut open, Mark::StirStart)?;
                labels.push(Label::Stir { start_s, stop_s: at_s });
            }
            Mark::Tare => labels.push(Label::Tare { at_s }),
            Mark::Knock => labels.push(Label::Knock { at_s }),
            Mark::Lifted => labels.push(Label::Lifted { at_s, grams: -moved_g(rows, at) }),
            Mark::Removed => labels.push(Label::Removed { at_s, grams: -moved_g(rows, at) }),
            Mark::Returned => labels.push(Label::Returned { at_s, grams: moved_g(rows, at) }),
            Mark::Placed => labels.push(Label::Placed { at_s, grams: moved_g(rows, at) }),
        }
    }
    if let Some((mark, sample)) = open.first() {
        return Err(format!("{} s: {mark:?} never stops", sample.time_s));
    }
    labels.sort_by(|a, b| a.start_s().total_cmp(&b.start_s()));
    Ok(labels)
}

/// How long something put down takes to come to rest. Estimate.
const REST_S: f64 = 2.0;

/// How far the display moved about a sample.
fn moved_g(rows: &[Row], at: usize) -> f64 {
    let at_s = rows[at].sample.time_s;
    let later = rows[at..].iter().find(|row| row.sample.time_s >= at_s + REST_S);
    let after = later.unwrap_or(&rows[rows.len() - 1]);
    after.sample.mass_g - rows[at.saturating_sub(1)].sample.mass_g
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Invented.
    const GOOD: &str = "\
# A cone on a scale.
time_s,mass_g,label

0.1,0.0,placed
0.2,300.5,
# Water.
2.3,301,pour_start
2.4,nan,
3.5,307.25,pour_stop
4,307.2,
";

    #[test]
    fn a_record_is_read() {
        let rows = read(GOOD).unwrap();
        assert_eq!(rows.len(), 6);
        assert_eq!(rows[1].sample, Sample { time_s: 0.2, mass_g: 300.5 });
        assert!(rows[3].sample.mass_g.is_nan());
        assert_eq!(
            labels(&rows).unwrap(),
            [
                Label::Placed { at_s: 0.1, grams: 301.0 },
                Label::Pour { start_s: 2.3, stop_s: 3.5, grams: 6.25 },
            ]
        );
        assert_eq!(read("time_s,mass_g\n1,2\n").unwrap().len(), 1);
    }

    #[test]
    fn what_is_written_reads_back_the_same() {
        let mut rows: Vec<Row> = MARKS
            .iter()
            .zip(1..)
            .map(|((mark, _), i)| Row {
                sample: Sample { time_s: 0.1 * f64::from(i), mass_g: 1.0 / 3.0 * f64::from(i) },
                mark: Some(*mark),
            })
            .collect();
        rows.push(Row { sample: Sample { time_s: 2.0, mass_g: f64::NAN }, mark: None });
        let text = write("Invented.\nTwo lines.", &rows);
        assert!(text.starts_with("# Invented.\n# Two lines.\ntime_s,mass_g,label\n"), "{text}");
        let again = read(&text).unwrap();
        assert_eq!(again.len(), rows.len());
        for (a, b) in again.iter().zip(&rows) {
            assert_eq!(a.sample.time_s.to_bits(), b.sample.time_s.to_bits());
            let same = a.sample.mass_g.to_bits() == b.sample.mass_g.to_bits();
            assert!(same || a.sample.mass_g.is_nan() && b.sample.mass_g.is_nan());
            assert_eq!(a.mark, b.mark);
        }
    }

    #[test]
    fn bad_records_are_refused_with_line_and_reason() {
        for (from, to, line, words) in [
            ("time_s,mass_g,label", "time,mass", 2, "are not time_s,mass_g"),
            ("0.2,300.5,", "0.2,300.5", 5, "2 fields where there are 3 columns"),
            ("0.2,300.5,", "0.2,300.5,,", 5, "4 fields"),
            ("0.2,300.5,", "0.1,300.5,", 5, "time_s: 0.1 s does not come after 0.1 s"),
            ("0.2,300.5,", "0.2,inf,", 5, "mass_g: \"inf\" is no number"),
            ("0.2,300.5,", "0.2, 300.5,", 5, "mass_g: \" 300.5\" is no number"),
            ("0.2,300.5,", "nan,300.5,", 5, "time_s: \"nan\" is no number"),
            ("0.2,300.5,", "0.2,,", 5, "mass_g: \"\" is no number"),
            ("pour_stop", "pour_end", 9, "label: there is no \"pour_end\""),
        ] {
            let fault = read(&GOOD.replacen(from, to, 1)).unwrap_err();
            assert_eq!(fault.line, line, "{to}: {fault}");
            assert!(fault.what.contains(words), "{to}: {fault}");
        }
        assert_eq!(read("# nothing\n").unwrap_err().what, "columns: there are none");
    }

    #[test]
    fn marks_must_pair() {
        let refused =
            |from: &str, to: &str| labels(&read(&GOOD.replacen(from, to, 1)).unwrap()).unwrap_err();
        assert_eq!(refused("pour_start", ""), "3.5 s: PourStop without PourStart");
        assert_eq!(refused("pour_stop", ""), "2.3 s: PourStart never stops");
        let again = refused("0.2,300.5,", "0.2,300.5,pour_start");
        assert_eq!(again, "2.3 s: PourStart again before it stopped");
    }
}
