//! What every answer and every refusal must be, whatever was asked.

use cupwright::Error;

use crate::Formula;
use crate::inputs::Inputs;

/// An error says what is wrong, with facts that agree.
pub fn facts_are_whole(error: Error) {
    let words = error.to_string();
    assert!(!words.is_empty());
    match error {
        Error::OutOfRange { value, lowest, highest, .. } => {
            assert!(!(lowest..=highest).contains(&value), "{words}");
        }
        Error::ResultOutOfRange { value, lowest, highest, .. } => {
            assert!(value < lowest || value > highest, "{words}");
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
        Error::CannotTell { found, needed, .. } => assert!(found < needed, "{words}"),
        _ => panic!("a new variant: say here what its facts are"),
    }
}

/// Calls a formula, and looks at its answer or at the facts of its error; whether it answered.
pub fn answers(formula: &Formula, inputs: &dyn Inputs) -> bool {
    match (formula.call)(inputs) {
        Ok(outputs) => {
            for (field, value) in outputs {
                let positive = value != 0.0 || value.is_sign_positive();
                assert!(value.is_finite() && positive, "{} {field}: {value}", formula.id);
            }
            true
        }
        Err(error) => {
            facts_are_whole(error);
            false
        }
    }
}
