//! Ten million rows through every function of the `columns` room, against a plain copy of as many bytes.
//!
//! ```text
//! cargo bench --bench columns [-- ROWS]
//! ```
//!
//! Of each call the fastest of several runs counts, and right before it that of the copy: a machine's
//! memory is not as fast every minute. Bytes are those of all columns, each read or written once.

use std::hint::black_box;
use std::time::Instant;

use cupwright::columns::{self, Places, Standings, Uneven};
use cupwright::quantity::*;
use cupwright::retention::{Losses, Paper};
use cupwright::verdict::HOME_BREWER_2018;

const ROWS: usize = 10_000_000;
const RUNS: usize = 7;

/// Seconds of the fastest run.
fn fastest(mut run: impl FnMut()) -> f64 {
    let seconds = (0..RUNS).map(|_| {
        let start = Instant::now();
        run();
        start.elapsed().as_secs_f64()
    });
    seconds.fold(f64::INFINITY, |least, next| if next < least { next } else { least })
}

/// Invented values between two numbers, no two rows alike.
fn column(rows: usize, low: f64, high: f64) -> Vec<f64> {
    let step = |row: usize| (row.wrapping_mul(0x9E37_79B9) >> 8 & 0xFFFF) as f64 / 65536.0;
    (0..rows).map(|row| low + (high - low) * step(row)).collect()
}

/// Memory that is there, with bytes that a copy may have.
struct Copies {
    from: Vec<u64>,
    to: Vec<u64>,
}

impl Copies {
    /// Seconds for a copy that moves so many bytes in all, half of them read and half written.
    fn seconds(&mut self, bytes: usize) -> f64 {
        let words = bytes / 16;
        fastest(|| black_box(&mut self.to[..words]).copy_from_slice(black_box(&self.from[..words])))
    }
}

fn main() {
    let rows = std::env::args().find_map(|given| given.parse().ok()).unwrap_or(ROWS);
    let [dose, water] = [column(rows, 12.0, 20.0), column(rows, 210.0, 330.0)];
    let [beverage, strength] = [column(rows, 170.0, 205.0), column(rows, 1.25, 1.5)];
    let [extracted, wanted] = [column(rows, 17.0, 23.0), column(rows, 1.1, 1.25)];
    let [brix, moisture] = [column(rows, 1.4, 1.8), column(rows, 1.0, 3.0)];
    let [solids, vapour] = [column(rows, 40.0, 120.0), column(rows, 0.5, 2.5)];
    let held = column(rows, 0.0, 100.0);
    let (mut out, mut status) = (vec![1.0; rows], vec![1; rows]);
    let mut distances: Vec<Vec<f64>> = (0..6).map(|_| vec![1.0; rows]).collect();
    let mut sides = [vec![1; rows], vec![1; rows]];
    let most = rows * 73 / 16;
    let mut copies = Copies { from: vec![1; most], to: vec![2; most] };
    let losses = Losses {
        retention: ApparentRetention::from_grams_per_gram(1.9).unwrap(),
        hold_up: HoldUp::from_grams(3.0).unwrap(),
        paper: Paper::Rinsed,
        drips: Drips::NONE,
        vapour: Vapour::from_grams(1.5).unwrap(),
    };
    let factor = RefractiveFactor::from_percent_per_degree(0.85).unwrap();

    println!("| function | bytes a row | ns a row | GB/s | copy GB/s | of the copy |");
    println!("|---|---|---|---|---|---|");
    let mut tell = |name: &str, row: usize, call: &mut dyn FnMut() -> Result<usize, Uneven>| {
        let copied = copies.seconds(rows * row);
        let seconds = fastest(|| assert_eq!(black_box(call()), Ok(0), "{name}"));
        let speed = |seconds: f64| (rows * row) as f64 / seconds / 1e9;
        println!(
            "| `{name}` | {row} | {:.2} | {:.1} | {:.1} | {:.0} % |",
            seconds / rows as f64 * 1e9,
            speed(seconds),
            speed(copied),
            100.0 * copied / seconds,
        );
    };
    let (o, s) = (&mut out, &mut status);
    tell("flow_through_yield", 33, &mut || {
        columns::flow_through_yield(&strength, &beverage, &dose, o, s)
    });
    tell("flow_through_strength", 33, &mut || {
        columns::flow_through_strength(&extracted, &beverage, &dose, o, s)
    });
    tell("steeped_yield", 33, &mut || columns::steeped_yield(&strength, &water, &dose, o, s));
    tell("extraction_yield", 73, &mut || {
        columns::extraction_yield(
            &dose, &water, &beverage, &moisture, &solids, &vapour, &held, &strength, o, s,
        )
    });
    tell("water_ratio", 25, &mut || columns::water_ratio(&dose, &water, o, s));
    tell("water_to_reach", 41, &mut || {
        columns::water_to_reach(&beverage, &strength, &wanted, &solids, o, s)
    });
    tell("strength_of_brix", 17, &mut || columns::strength_of_brix(factor, &brix, o, s));
    tell("beverage", 25, &mut || columns::beverage(&losses, &dose, &water, o, s));
    let [strength_side, yield_side] = &mut sides;
    let Ok([low, high, mid, yield_low, yield_high, yield_mid]) =
        <&mut [Vec<f64>; 6]>::try_from(&mut distances[..])
    else {
        return;
    };
    tell("stand", 67, &mut || {
        let standings = Standings {
            strength: Places {
                side: strength_side,
                above_lowest: low,
                below_highest: high,
                above_centre: mid,
            },
            extracted: Places {
                side: yield_side,
                above_lowest: yield_low,
                below_highest: yield_high,
                above_centre: yield_mid,
            },
        };
        columns::stand(&HOME_BREWER_2018.window, &strength, &extracted, standings, s)
    });
    // One row in ten bad, here and there.
    let spoiled: Vec<f64> =
        dose.iter().enumerate().map(|(row, g)| if row * 7 % 10 == 3 { -g } else { *g }).collect();
    let bad = rows / 10;
    tell("flow_through_yield, one row in ten bad", 33, &mut || {
        let refused = columns::flow_through_yield(&strength, &beverage, &spoiled, o, s)?;
        assert!(refused.abs_diff(bad) < 2);
        Ok(0)
    });
}
