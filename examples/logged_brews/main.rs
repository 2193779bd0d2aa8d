//! A log of brews scored at once: column in, column out, and for a row that is refused the reason.
//!
//! ```text
//! cargo run --release --example logged_brews [-- FILE.csv]
//! ```
//!
//! Without a file it uses the invented log beside it.

use std::process::ExitCode;

use cupwright::columns::{self, ANSWERED, Places, Standings};
use cupwright::extraction;
use cupwright::quantity::*;
use cupwright::verdict::{HOME_BREWER_2018, Side};

const EMBEDDED: &str = include_str!("brews.csv");

/// A log as columns. What is missing or no number is NaN, which is refused like any bad number.
#[derive(Default)]
struct Log {
    names: Vec<String>,
    dose_g: Vec<f64>,
    beverage_g: Vec<f64>,
    strength_pct: Vec<f64>,
}

impl Log {
    fn read(text: &str) -> Result<Self, String> {
        let mut lines = text.lines();
        if lines.next() != Some("brew,dose_g,water_g,beverage_g,strength_pct") {
            return Err("the first line is not brew,dose_g,water_g,beverage_g,strength_pct".into());
        }
        let mut log = Self::default();
        for line in lines {
            let mut fields = line.split(',');
            log.names.push(fields.next().unwrap_or_default().to_string());
            let mut number =
                || fields.next().and_then(|field| field.trim().parse().ok()).unwrap_or(f64::NAN);
            let [dose, _water, beverage, strength] = [number(), number(), number(), number()];
            log.dose_g.push(dose);
            log.beverage_g.push(beverage);
            log.strength_pct.push(strength);
        }
        Ok(log)
    }

    /// Why a row has no yield: its scalar function, asked again.
    fn reason(&self, row: usize) -> Result<Yield, cupwright::Error> {
        extraction::flow_through_yield(
            Strength::from_percent(self.strength_pct[row])?,
            Beverage::from_grams(self.beverage_g[row])?,
            Dose::from_grams(self.dose_g[row])?,
        )
    }
}

fn report(log: &Log) -> Result<(), columns::Uneven> {
    let rows = log.names.len();
    let column = || vec![0.0; rows];
    let (mut yield_pct, mut status, mut judged) = (column(), vec![0; rows], vec![0; rows]);
    let refused = columns::flow_through_yield(
        &log.strength_pct,
        &log.beverage_g,
        &log.dose_g,
        &mut yield_pct,
        &mut status,
    )?;

    let (mut sides, mut distances) = ([vec![0; rows], vec![0; rows]], [(); 6].map(|()| column()));
    let [strength_side, yield_side] = &mut sides;
    let [from_low, to_high, from_middle, yield_low, yield_high, yield_middle] = &mut distances;
    // A yield that was refused is NaN, and so refused here too.
    columns::stand(
        &HOME_BREWER_2018.window,
        &log.strength_pct,
        &yield_pct,
        Standings {
            strength: Places {
                side: strength_side,
                above_lowest: from_low,
                below_highest: to_high,
                above_centre: from_middle,
            },
            extracted: Places {
                side: yield_side,
                above_lowest: yield_low,
                below_highest: yield_high,
                above_centre: yield_middle,
            },
        },
        &mut judged,
    )?;

    for row in 0..rows {
        let name = &log.names[row];
        if status[row] == ANSWERED {
            println!(
                "{name}: yield {:.2} % ({}), strength {}",
                yield_pct[row],
                words(yield_side[row]),
                words(strength_side[row]),
            );
        } else if let Err(reason) = log.reason(row) {
            println!("{name}: {reason}");
        }
    }
    let inside = |side: &u8| *side == Side::Inside as u8;
    let both = strength_side.iter().zip(yield_side.iter()).filter(|(a, b)| inside(a) && inside(b));
    println!("{rows} brews, {} inside, {refused} refused", both.count());
    Ok(())
}

/// A side as it stands in a column.
fn words(side: u8) -> &'static str {
    const BELOW: u8 = Side::Below as u8;
    const INSIDE: u8 = Side::Inside as u8;
    const ABOVE: u8 = Side::Above as u8;
    match side {
        BELOW => "below",
        INSIDE => "inside",
        ABOVE => "above",
        _ => "not judged",
    }
}

fn main() -> ExitCode {
    let text = match std::env::args_os().nth(1) {
        None => Ok(EMBEDDED.to_string()),
        Some(name) => {
            std::fs::read_to_string(&name).map_err(|e| format!("{}: {e}", name.display()))
        }
    };
    let done = text.and_then(|text| {
        let log = Log::read(&text)?;
        report(&log).map_err(|uneven| uneven.to_string())
    });
    match done {
        Ok(()) => ExitCode::SUCCESS,
        Err(words) => {
            eprintln!("{words}");
            ExitCode::FAILURE
        }
    }
}
