//! Tests of the core from outside, through its public functions only.

mod any_input;
mod check_values;
mod errors;
mod formulas;
mod laws;
mod plans;
mod records;
