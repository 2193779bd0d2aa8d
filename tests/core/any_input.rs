//! Whatever goes in, what comes out is a number in range or an error with facts.

use std::cell::RefCell;

use cupwright::Error;
use proptest::prelude::*;

use crate::formulas::{Drawn, FORMULAS};

fn facts_are_whole(error: Error) {
    let words = error.to_string();
    assert!(!words.is_empty());
    match error {
        Error::OutOfRange { value, lowest, highest, .. }
        | Error::ResultOutOfRange { value, lowest, highest, .. } => {
            assert!(!(lowest..=highest).contains(&value), "{words}");
        }
        Error::Impossible { quantity, value, lowest, highest, .. } => {
            assert!(!(lowest..=highest).contains(&value), "{words}");
            // There is a value that goes with the others, unless they ask for more than is accepted.
            assert!(lowest <= highest || lowest > quantity.highest(), "{words}");
        }
        Error::Infeasible { value, nearest, .. } => {
            assert!(nearest.is_finite() && value.is_finite(), "{words}");
        }
        Error::NotWhole { value, .. } => assert!(value.fract() != 0.0, "{words}"),
        Error::EmptyBand { lowest, highest, .. } => assert!(lowest >= highest, "{words}"),
        _ => panic!("a new variant: say here what its facts are"),
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(20_000))]

    #[test]
    fn a_number_in_range_or_an_error_with_facts(seed: u64) {
        for formula in FORMULAS {
            match (formula.call)(&Drawn(RefCell::new(seed))) {
                Ok(outputs) => {
                    for (field, value) in outputs {
                        prop_assert!(value.is_finite(), "{} {field}: {value}", formula.id);
                        prop_assert!(
                            value != 0.0 || value.is_sign_positive(),
                            "{} {field}: negative zero", formula.id
                        );
                    }
                }
                Err(error) => facts_are_whole(error),
            }
        }
    }
}

#[test]
fn every_formula_succeeds_on_some_random_input() {
    for formula in FORMULAS {
        let successes =
            (0..20_000).filter(|seed| (formula.call)(&Drawn(RefCell::new(*seed))).is_ok()).count();
        assert!(successes > 20, "{}: {successes} of 20000", formula.id);
    }
}
