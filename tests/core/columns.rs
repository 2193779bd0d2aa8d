//! Columns: every row as its formula alone, to the last bit, good rows and bad.

use cupwright::Error;
use cupwright::columns::{self, ANSWERED, NO_ANSWER, Places, Standings, Uneven};
use cupwright::extraction::{self, Brew};
use cupwright::quantity::*;
use cupwright::retention::{self, Losses, Paper};
use cupwright::verdict::{self, Band, Counting, HOME_BREWER_2018, Window};
use cupwright::{dilution, ratio, reading};
use proptest::prelude::*;

use crate::value;

/// Where a column's numbers are to lie: within what makes sense together, with edges and bad ones among
/// them.
struct Draw {
    seed: u64,
}

impl Draw {
    fn next(&mut self) -> u64 {
        // The multiplier is Knuth's MMIX, from memory.
        self.seed = self.seed.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1);
        self.seed >> 33
    }

    /// A number for a quantity.
    fn number(&mut self, of: Quantity, low: f64, high: f64) -> f64 {
        let (lowest, highest) = (of.lowest(), of.highest());
        let bad = [
            f64::NAN,
            -f64::NAN,
            f64::INFINITY,
            f64::NEG_INFINITY,
            -1.0,
            -0.0,
            0.0,
            5e-324,
            -5e-324,
            f64::MAX,
            lowest,
            lowest.next_down(),
            lowest.next_up(),
            highest,
            highest.next_up(),
            highest.next_down(),
        ];
        let among = self.next();
        if among.is_multiple_of(16) {
            return bad[self.next() as usize % bad.len()];
        }
        let share = self.next() as f64 / f64::from(1_u32 << 31);
        if among % 16 == 1 {
            lowest + (highest - lowest) * share
        } else {
            low + (high - low) * share
        }
    }

    /// Some of each column's numbers: quantity, low, high.
    fn columns<const N: usize>(
        &mut self,
        rows: usize,
        of: [(Quantity, f64, f64); N],
    ) -> [Vec<f64>; N] {
        of.map(|(of, low, high)| (0..rows).map(|_| self.number(of, low, high)).collect())
    }
}

/// What a row's status must be: the inputs' own checks in their order, then the formula.
fn expected<const N: usize>(
    accepted: [Result<(), Error>; N],
    scalar: Result<f64, Error>,
) -> (u8, u64) {
    match (accepted.iter().position(Result::is_err), scalar) {
        (Some(at), Err(reason)) => {
            // The formula, asked again, names the same input.
            assert_eq!(format!("{:?}", Err::<(), _>(reason)), format!("{:?}", accepted[at]));
            (at as u8 + 1, f64::NAN.to_bits())
        }
        (None, Err(reason)) => {
            let is_input = matches!(reason, Error::OutOfRange { .. } | Error::NotWhole { .. });
            assert!(!is_input, "{reason}");
            (NO_ANSWER, f64::NAN.to_bits())
        }
        (None, Ok(answer)) => (ANSWERED, answer.to_bits()),
        (Some(_), Ok(_)) => panic!("a bad input and an answer"),
    }
}

/// Draws columns, calls a function on them and its formula on each row, and compares.
macro_rules! same_as_scalar {
    ($draw:expr, $rows:expr, $function:ident($($same:expr)?; [$($column:ident: $kind:ident in $low:literal..$high:literal),+]) = $scalar:expr) => {{
        let rows: usize = $rows;
        let [$($column),+] = $draw.columns(rows, [$((Quantity::$kind, $low, $high)),+]);
        // What was there before.
        let (mut answer, mut status) = (vec![7.0; rows], vec![77; rows]);
        let refused =
            columns::$function($($same,)? $(&$column,)+ &mut answer, &mut status).unwrap();
        assert_eq!(refused, status.iter().filter(|status| **status != ANSWERED).count());
        for row in 0..rows {
            let accepted = [$($kind::new($column[row]).map(drop)),+];
            let scalar = || -> Result<f64, Error> {
                $(let $column = $kind::new($column[row])?;)+
                Ok($scalar?.value())
            };
            assert_eq!(
                (status[row], answer[row].to_bits()),
                expected(accepted, scalar()),
                "{} row {row}: {:?}",
                stringify!($function),
                [$($column[row]),+]
            );
        }
        refused
    }};
}

fn losses() -> Losses {
    Losses {
        retention: value(1.9),
        hold_up: value(3.0),
        paper: Paper::Dry { mass: value(1.5), uptake: value(3.0) },
        drips: value(0.5),
        vapour: value(1.5),
    }
}

/// Every function but the judge; how many rows were refused.
fn all_functions(seed: u64, rows: usize) -> [usize; 8] {
    let draw = &mut Draw { seed };
    let factor: RefractiveFactor = value(0.85);
    let losses = losses();
    [
        same_as_scalar!(draw, rows, flow_through_yield(; [
            t: Strength in 1.0..4.0, b: Beverage in 100.0..400.0, d: Dose in 8.0..25.0
        ]) = extraction::flow_through_yield(t, b, d)),
        same_as_scalar!(draw, rows, flow_through_strength(; [
            e: Yield in 10.0..30.0, b: Beverage in 5.0..400.0, d: Dose in 8.0..25.0
        ]) = extraction::flow_through_strength(e, b, d)),
        same_as_scalar!(draw, rows, steeped_yield(; [
            t: Strength in 1.0..4.0, w: BrewWater in 100.0..400.0, d: Dose in 8.0..25.0
        ]) = extraction::steeped_yield(t, w, d)),
        same_as_scalar!(draw, rows, extraction_yield(; [
            d: Dose in 10.0..25.0, w: BrewWater in 150.0..400.0, b: Beverage in 100.0..300.0,
            h: Moisture in 0.0..6.0, s: WaterSolids in 0.0..2000.0, v: Vapour in 0.0..10.0,
            phi: HeldStrength in 0.0..100.0, t: Strength in 0.0..3.0
        ]) = {
            let brew = Brew {
                dose: d, water: w, beverage: b, moisture: h, water_solids: s, vapour: v,
                held_strength: phi,
            };
            extraction::extraction_yield(&brew, t)
        }),
        same_as_scalar!(draw, rows, water_ratio(; [
            d: Dose in 0.1..30.0, w: BrewWater in 1.0..800.0
        ]) = ratio::water_ratio(d, w)),
        same_as_scalar!(draw, rows, water_to_reach(; [
            b: Beverage in 100.0..400.0, t: Strength in 0.0..2.0, wanted: Strength in 0.0..1.5,
            s: WaterSolids in 0.0..4000.0
        ]) = dilution::water_to_reach(b, t, wanted, s)),
        same_as_scalar!(draw, rows, strength_of_brix(factor; [
            brix: Brix in 0.5..6.0
        ]) = reading::strength_of_brix(brix, factor)),
        same_as_scalar!(draw, rows, beverage(&losses; [
            d: Dose in 5.0..100.0, w: BrewWater in 20.0..400.0
        ]) = retention::beverage(&losses, d, w)),
    ]
}

/// Places for the judge's answers, with what was there before.
struct Judged {
    sides: [Vec<u8>; 2],
    distances: [Vec<f64>; 6],
    status: Vec<u8>,
}

impl Judged {
    fn new(rows: usize) -> Self {
        Self {
            sides: [(); 2].map(|()| vec![77; rows]),
            distances: [(); 6].map(|()| vec![7.0; rows]),
            status: vec![77; rows],
        }
    }

    fn stand(&mut self, window: &Window, t: &[f64], e: &[f64]) -> Result<usize, Uneven> {
        let [side, yield_side] = &mut self.sides;
        let [low, high, mid, yield_low, yield_high, yield_mid] = &mut self.distances;
        let place = |side, above_lowest, below_highest, above_centre| Places {
            side,
            above_lowest,
            below_highest,
            above_centre,
        };
        let standings = Standings {
            strength: place(side, low, high, mid),
            extracted: place(yield_side, yield_low, yield_high, yield_mid),
        };
        columns::stand(window, t, e, standings, &mut self.status)
    }

    /// Sides and distances of a row, as bits.
    fn row(&self, row: usize) -> ([u8; 2], [u64; 6]) {
        (
            self.sides.each_ref().map(|of| of[row]),
            self.distances.each_ref().map(|of| of[row].to_bits()),
        )
    }
}

fn judge(seed: u64, rows: usize, window: &Window) -> usize {
    let draw = &mut Draw { seed };
    let [t, e] =
        draw.columns(rows, [(Quantity::Strength, 1.0, 1.6), (Quantity::Yield, 17.0, 23.0)]);
    let mut judged = Judged::new(rows);
    let refused = judged.stand(window, &t, &e).unwrap();
    for row in 0..rows {
        let (strength, extracted) = (Strength::new(t[row]), Yield::new(e[row]));
        let mut sides = [0; 2];
        let mut distances = [f64::NAN; 6];
        let status = match (strength, extracted) {
            (Ok(strength), Ok(extracted)) => {
                let standing = verdict::stand(window, strength, extracted);
                let places = [Some(standing.strength), standing.extracted];
                for (at, place) in places.iter().enumerate() {
                    let Some(place) = place else { continue };
                    sides[at] = place.side as u8;
                    distances[3 * at] = place.above_lowest;
                    distances[3 * at + 1] = place.below_highest;
                    distances[3 * at + 2] = place.above_centre;
                }
                ANSWERED
            }
            (Err(_), _) => 1,
            (_, Err(_)) => 2,
        };
        assert_eq!(judged.status[row], status, "row {row}: {} {}", t[row], e[row]);
        assert_eq!(judged.row(row), (sides, distances.map(f64::to_bits)), "{} {}", t[row], e[row]);
    }
    refused
}

fn strength_alone() -> Window {
    let strength = Band::new(value(1.15), value(1.45)).unwrap();
    Window { strength, extracted: None, counting: Counting::NotStated }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(300))]

    #[test]
    fn every_row_has_the_bits_of_its_formula(seed: u64, rows in 0_usize..1200) {
        all_functions(seed, rows);
        judge(seed, rows, &HOME_BREWER_2018.window);
        judge(seed, rows, &strength_alone());
    }
}

#[test]
fn good_rows_and_bad_ones_are_met() {
    const ROWS: usize = 100_000;
    let refused = all_functions(1, ROWS);
    let judged = judge(1, ROWS, &HOME_BREWER_2018.window);
    for refused in refused.into_iter().chain([judged]) {
        assert!(refused > ROWS / 50 && refused < ROWS * 9 / 10, "{refused} of {ROWS}");
    }
}

#[test]
fn a_negative_zero_lies_on_an_edge_at_zero() {
    let (strength, extracted) =
        (Band::new(value(0.0), value(2.0)), Band::new(value(0.0), value(9.0)));
    let window = Window {
        strength: strength.unwrap(),
        extracted: Some(extracted.unwrap()),
        counting: Counting::NotStated,
    };
    let mut judged = Judged::new(1);
    assert_eq!(judged.stand(&window, &[-0.0], &[-0.0]), Ok(0));
    let distances = [0.0, 2.0, -1.0, 0.0, 9.0, -4.5].map(f64::to_bits);
    assert_eq!(judged.row(0), ([verdict::Side::Inside as u8; 2], distances));
}

#[test]
fn statuses_name_the_first_bad_input_or_none() {
    let strength = [1.3, f64::NAN, 1.3, 1.3, -1.0, 40.0];
    let beverage = [220.0, 220.0, 0.0, 220.0, 0.0, 220.0];
    let dose = [15.0, 15.0, 15.0, 1e6, 1e6, 15.0];
    let (mut extracted, mut status) = ([7.0; 6], [77; 6]);
    let refused =
        columns::flow_through_yield(&strength, &beverage, &dose, &mut extracted, &mut status);
    assert_eq!((refused, status), (Ok(5), [0, 1, 2, 3, 1, 255]));
    assert!(!extracted[0].is_nan() && extracted[1..].iter().all(|e| e.is_nan()));
}

#[test]
fn uneven_columns_are_refused_before_anything_is_written() {
    let (mut answer, mut status) = ([7.0; 3], [77; 3]);
    let three = [15.0; 3];
    let uneven = columns::water_ratio(&three, &three[..2], &mut answer, &mut status).unwrap_err();
    assert_eq!(uneven, Uneven { column: "water_g", found: 2, rows: 3 });
    assert_eq!(uneven.to_string(), "water_g: 2 rows, where the statuses have 3");
    let short = columns::water_ratio(&three, &three, &mut answer[..2], &mut status).unwrap_err();
    assert_eq!(short.column, "water_ratio_g_per_g");
    let long = columns::water_ratio(&three, &three, &mut answer, &mut status[..2]).unwrap_err();
    assert_eq!(long, Uneven { column: "dose_g", found: 3, rows: 2 });
    assert_eq!((answer, status), ([7.0; 3], [77; 3]));

    let names = [
        "strength_side",
        "yield_side",
        "strength_above_lowest",
        "strength_below_highest",
        "strength_above_centre",
        "yield_above_lowest",
        "yield_below_highest",
        "yield_above_centre",
    ];
    for (at, name) in names.into_iter().enumerate() {
        let mut judged = Judged::new(3);
        match at {
            0 | 1 => judged.sides[at].truncate(2),
            _ => judged.distances[at - 2].truncate(2),
        }
        let uneven = judged.stand(&strength_alone(), &three, &three).unwrap_err();
        assert_eq!(uneven, Uneven { column: name, found: 2, rows: 3 });
        assert!(judged.status == [77; 3] && judged.distances.iter().flatten().all(|d| *d == 7.0));
    }
}
