//! Columns called from Rust as C would, so that Miri can watch: memory that nobody wrote to before, no more of
//! it written than there are rows, NULL refused, and none needed for no rows.

use std::mem::MaybeUninit;
use std::ptr::{null, null_mut};

use cupwright_c::columns::*;
use cupwright_c::retention::cupwright_losses;
use cupwright_c::status::cupwright_status;
use cupwright_c::verdict::{cupwright_counting, cupwright_window};

const OK: i32 = cupwright_status::Ok as i32;
const NULL: i32 = cupwright_status::Null as i32;
const NO_ANSWER: u8 = cupwright_row::NoAnswer as i32 as u8;

const LOSSES: cupwright_losses = cupwright_losses {
    apparent_retention_g_per_g: 1.9,
    hold_up_g: 3.0,
    paper_g: 1.5,
    paper_uptake_g_per_g: 3.0,
    drips_g: 0.5,
    vapour_g: 1.5,
};

const WINDOW: cupwright_window = cupwright_window {
    strength_lowest_pct: 1.15,
    strength_highest_pct: 1.45,
    yield_lowest_pct: 18.0,
    yield_highest_pct: 22.0,
    has_yield: 1,
    yield_counting: cupwright_counting::FlowThrough as i32,
};

// A good row, one with a bad first input, one with nothing possible, as far as the function can have them.
const DOSES: [f64; 3] = [15.0, -1.0, 15.0];
const WATERS: [f64; 3] = [250.0, 250.0, 9000.0];
const BEVERAGES: [f64; 3] = [220.0, -1.0, 9000.0];
const STRENGTHS: [f64; 3] = [1.3, -1.0, 40.0];
const YIELDS: [f64; 3] = [19.0, -1.0, 90.0];

/// What a function answers, in memory of just the size.
struct Answers {
    answers: Box<[MaybeUninit<f64>]>,
    statuses: Box<[MaybeUninit<u8>]>,
    refused: MaybeUninit<usize>,
}

impl Answers {
    fn new() -> Self {
        let (answers, statuses) = (Box::new_uninit_slice(3), Box::new_uninit_slice(3));
        Self { answers, statuses, refused: MaybeUninit::uninit() }
    }

    /// Calls a function with its places, and without one after the other; how its rows went.
    fn of(call: impl Fn(usize, *mut f64, *mut u8, *mut usize) -> i32) -> ([u8; 3], [bool; 3]) {
        let mut of = Self::new();
        let answers: *mut f64 = of.answers.as_mut_ptr().cast();
        let statuses: *mut u8 = of.statuses.as_mut_ptr().cast();
        let refused = of.refused.as_mut_ptr();
        assert_eq!(call(3, null_mut(), statuses, refused), NULL);
        assert_eq!(call(3, answers, null_mut(), refused), NULL);
        assert_eq!(call(3, answers, statuses, null_mut()), NULL);
        assert_eq!(call(0, null_mut(), null_mut(), refused), OK);
        assert_eq!(call(3, answers, statuses, refused), OK);
        // SAFETY: the call wrote them.
        let (answers, statuses, refused) = unsafe {
            (of.answers.assume_init(), of.statuses.assume_init(), of.refused.assume_init())
        };
        assert_eq!(refused, statuses.iter().filter(|status| **status != 0).count());
        let statuses = [statuses[0], statuses[1], statuses[2]];
        (statuses, [answers[0].is_nan(), answers[1].is_nan(), answers[2].is_nan()])
    }
}

const REFUSED: ([u8; 3], [bool; 3]) = ([0, 1, NO_ANSWER], [false, true, true]);

#[test]
fn every_function_fills_its_columns() {
    let (d, w, b) = (DOSES.as_ptr(), WATERS.as_ptr(), BEVERAGES.as_ptr());
    let (t, e, zeros) = (STRENGTHS.as_ptr(), YIELDS.as_ptr(), [0.0; 3]);
    let (z, error) = (zeros.as_ptr(), null_mut());
    let wanted = [1.2, 1.2, 45.0];
    let brix = [1.6, -1.0, 99.0];
    // SAFETY: NULL, or so many rows, and the columns that are written lie apart.
    unsafe {
        let of = Answers::of(|n, to, status, refused| {
            cupwright_columns_flow_through_yield(t, b, d, n, to, status, refused, error)
        });
        assert_eq!(of, REFUSED);
        let of = Answers::of(|n, to, status, refused| {
            cupwright_columns_flow_through_strength(e, d, b, n, to, status, refused, error)
        });
        assert_eq!(of.0, [NO_ANSWER, 1, NO_ANSWER]);
        let of = Answers::of(|n, to, status, refused| {
            cupwright_columns_steeped_yield(t, w, d, n, to, status, refused, error)
        });
        assert_eq!(of, REFUSED);
        let of = Answers::of(|n, to, status, refused| {
            cupwright_columns_extraction_yield(
                d, w, b, z, z, z, z, t, n, to, status, refused, error,
            )
        });
        assert_eq!(of, REFUSED);
        let of = Answers::of(|n, to, status, refused| {
            cupwright_columns_water_ratio(d, w, n, to, status, refused, error)
        });
        assert_eq!(of, REFUSED);
        let of = Answers::of(|n, to, status, refused| {
            let wanted = wanted.as_ptr();
            cupwright_columns_water_to_reach(b, t, wanted, z, n, to, status, refused, error)
        });
        assert_eq!(of, REFUSED);
        let of = Answers::of(|n, to, status, refused| {
            let brix = brix.as_ptr();
            cupwright_columns_strength_of_brix(0.85, brix, n, to, status, refused, error)
        });
        assert_eq!(of, ([0, NO_ANSWER, 1], [false, true, true]));
        let of = Answers::of(|n, to, status, refused| {
            let few = [250.0, 250.0, 30.0];
            let few = if n == 0 { null() } else { few.as_ptr() };
            cupwright_columns_beverage(&LOSSES, d, few, n, to, status, refused, error)
        });
        assert_eq!(of, REFUSED);
    }
}

#[test]
fn the_judge_fills_its_columns() {
    let mut sides = [[77_u8; 3]; 2];
    let mut distances = [[7.0; 3]; 6];
    let [side, yield_side] = sides.each_mut().map(|of| of.as_mut_ptr());
    let [a, b, c, d, e, f] = distances.each_mut().map(|of| of.as_mut_ptr());
    let (t, y, error) = (STRENGTHS.as_ptr(), YIELDS.as_ptr(), null_mut());
    let of = Answers::of(|n, to, status, refused| {
        // SAFETY: NULL, or so many rows, and the columns that are written lie apart.
        unsafe {
            cupwright_columns_stand(
                &WINDOW, t, y, n, side, to, b, c, yield_side, d, e, f, status, refused, error,
            )
        }
    });
    assert_eq!(of, ([0, 1, 0], [false, true, false]));
    assert_eq!(sides, [[2, 0, 3], [2, 0, 3]]);
    assert!(distances[1..].iter().all(|of| !of[0].is_nan() && of[1].is_nan()));
    // SAFETY: the same; a window that is NULL is refused.
    let status = unsafe {
        let mut refused = 0;
        cupwright_columns_stand(
            null(),
            t,
            y,
            3,
            side,
            a,
            b,
            c,
            yield_side,
            d,
            e,
            f,
            side,
            &mut refused,
            error,
        )
    };
    assert_eq!(status, NULL);
}
