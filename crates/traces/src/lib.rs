//! Invented traces of a brewing scale with their truth beside them, simple followers of a scale,
//! and scores: what judges a live estimate of water and flow.
//!
//! | room | answers |
//! |---|---|
//! | [`draw`] | numbers that a seed draws from a range |
//! | [`family`] | what a file of `tests/traces` says: settings, a script, seeds |
//! | [`hand`], [`stream`], [`touch`] | what a person does: pours water, that falls, and handles things |
//! | [`sensor`], [`line`](mod@line) | what a scale makes of the force, and what arrives of that |
//! | [`world`] | all of it in time, with a hand that hears when to stop |
//! | [`label`] | what truly happened, and when |
//! | [`follower`], [`peers`] | what makes water and flow of samples; textbook ways to be better than |
//! | [`watched`] | cupwright's way |
//! | [`heard`] | a trace as cupwright hears it, for others to answer the same |
//! | [`judge`], [`scores`] | how well one did on a trace, and all on every family; bars |
//! | [`record`] | traces of real scales, in a file |
//!
//! Everything is in grams, seconds and hertz; a force is the mass whose weight it is. Nothing here
//! was measured: every trace is invented, but for those that [`record`] reads.

pub mod draw;
pub mod family;
pub mod follower;
pub mod hand;
pub mod heard;
pub mod judge;
pub mod label;
pub mod line;
pub mod peers;
pub mod record;
pub mod scores;
pub mod sensor;
pub mod stream;
#[cfg(test)]
mod testing;
pub mod touch;
pub mod watched;
pub mod world;

/// Steps of the simulation in a second: five for each conversion at 80 Hz, the fastest rate of
/// common converters for scales, and many for each swing of a load cell.
pub const STEPS_PER_S: u32 = 400;
/// Length of a step.
pub const STEP_S: f64 = 1.0 / STEPS_PER_S as f64;
/// Standard gravity, exact by definition (BIPM, SI Brochure, 9th edition).
pub const GRAVITY_M_S2: f64 = 9.80665;
