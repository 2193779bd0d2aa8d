//! Tests of the core from outside, through its public functions only.

#![allow(clippy::disallowed_methods, reason = "the last bit does not matter in a test")]

mod any_input;
mod check_values;
mod errors;
mod formulas;
mod laws;
mod plans;
mod records;
