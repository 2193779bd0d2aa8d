//! Every formula, with any numbers.

use std::cell::RefCell;
use std::collections::BTreeMap;
use std::sync::OnceLock;

use cupwright::quantity::Quantity;
use formulas::answers::answers;
use formulas::examples::examples;
use formulas::inputs::{Given, Inputs};
use formulas::{FORMULAS, Formula};

use crate::chance::Chance;
use crate::source::Source;

/// Inputs from bytes, or, where a byte says so, those of the formula's example.
struct Bytes<'a> {
    source: RefCell<Source<'a>>,
    example: &'a Given,
    /// Most are the example's: what has twenty inputs would else refuse one of them nearly always.
    is_calm: bool,
}

impl Bytes<'_> {
    fn one(&self, quantity: Quantity, example: impl Fn() -> f64) -> f64 {
        let mut source = self.source.borrow_mut();
        let (low, high) = (quantity.lowest(), quantity.highest());
        if self.is_calm && source.byte() >= 32 {
            return example();
        }
        let whole = |number: f64| if quantity.is_whole() { number.round() } else { number };
        match source.byte() % 8 {
            0..=2 => example(),
            3 => whole(example() * source.between(0.5, 2.0)),
            4 => whole(source.between(low, high)),
            5 => whole(low + (high - low) * source.between(0.0, 1.0) * 1e-3),
            6 => [low, high, low.next_down(), high.next_up()][usize::from(source.byte() % 4)],
            _ => source.any(),
        }
    }
}

impl Inputs for Bytes<'_> {
    fn number(&self, field: &str, quantity: Quantity) -> f64 {
        self.one(quantity, || self.example.number(field, quantity))
    }

    fn numbers(&self, field: &str, quantity: Quantity) -> Vec<f64> {
        let mut numbers = self.example.numbers(field, quantity);
        let count = self.source.borrow_mut().byte();
        // Mostly as many as in the example; one too many for every list now and then.
        if count >= 200 {
            numbers.resize(usize::from(count - 200), 1.0);
        }
        numbers.iter().map(|number| self.one(quantity, || *number)).collect()
    }

    fn choice(&self, field: &str, count: u8) -> u8 {
        match self.source.borrow_mut().byte() {
            0..=99 => self.example.choice(field, count),
            byte => 1 + byte % count,
        }
    }

    fn flag(&self, field: &str) -> bool {
        match self.source.borrow_mut().byte() {
            0..=99 => self.example.flag(field),
            byte => byte % 2 == 0,
        }
    }
}

/// The formula that a byte chooses.
fn chosen(byte: u8) -> &'static Formula {
    &FORMULAS[usize::from(byte) % FORMULAS.len()]
}

/// Bytes choose formulas and their inputs, until they are used up; of each call, whether it answered.
fn called(bytes: &[u8], mut answered: impl FnMut(&'static Formula, bool)) {
    static EXAMPLES: OnceLock<BTreeMap<String, Given>> = OnceLock::new();
    let examples = EXAMPLES.get_or_init(examples);
    let mut source = Source::new(bytes);
    while !source.is_empty() {
        let formula = chosen(source.byte());
        let is_calm = source.byte() < 128;
        let inputs =
            Bytes { source: RefCell::new(source), example: &examples[formula.id], is_calm };
        answered(formula, answers(formula, &inputs));
        source = inputs.source.into_inner();
    }
}

/// Calls whatever bytes choose.
pub fn run(bytes: &[u8]) {
    called(bytes, |_, _| {});
}

/// What became of a formula's calls.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Calls {
    pub answered: u64,
    pub refused: u64,
}

/// The same of so many inputs made by chance, by the formulas' names: those that were called.
pub fn counted(inputs: u64) -> BTreeMap<&'static str, Calls> {
    let mut all: BTreeMap<&str, Calls> = BTreeMap::new();
    for input in 0..inputs {
        called(&Chance::new(input).input(), |formula, is_answered| {
            let calls = all.entry(formula.id).or_default();
            calls.answered += u64::from(is_answered);
            calls.refused += u64::from(!is_answered);
        });
    }
    all
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_example_is_answered_and_what_lies_outside_refused() {
        let of = |bytes: &[u8]| {
            let mut seen = Vec::new();
            called(bytes, |formula, is_answered| seen.push((formula.id, is_answered)));
            seen
        };
        let first = FORMULAS[0].id;
        assert_eq!(first, "water.density");
        // Calm, and the input kept; wild, and one next below the range.
        assert_eq!(of(&[0, 0, 255]), [(first, true)]);
        assert_eq!(of(&[0, 255, 6, 2]), [(first, false)]);
        assert_eq!(of(&[0, 0, 255, 0, 255, 6, 2]), [(first, true), (first, false)]);
    }

    #[test]
    fn every_formula_is_called() {
        let counted = counted(1_000);
        assert_eq!(counted.len(), FORMULAS.len());
    }
}
