//! Tests of the core from outside, through its public functions only.

#![allow(clippy::disallowed_methods, reason = "the last bit does not matter in a test")]

mod any_input;
mod bends;
mod check_values;
mod columns;
mod coverage;
mod edges;
mod errors;
mod laws;
mod laws_of_advice;
mod laws_of_uncertainty;
mod live;
mod optima;
mod plans;
mod recipes;
mod records;

use cupwright::quantity::Measure;
use proptest::strategy::Strategy;

/// A quantity, for a number known to be in range.
fn value<M: Measure>(value: f64) -> M {
    M::new(value).unwrap()
}

/// A quantity drawn from a part of its range.
fn some<M: Measure>(low: f64, high: f64) -> impl Strategy<Value = M> {
    (low..=high).prop_map(value)
}
