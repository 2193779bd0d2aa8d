//! What must hold whatever comes in: functions of any bytes, that break off where it does not.
//!
//! `cargo xtask fuzz` lets libFuzzer look for bytes that break one, in the folder `fuzz`. `cargo xtask
//! test` gives each of them many made by chance, always the same.

#![allow(clippy::disallowed_methods, reason = "judges: the last bit does not matter here")]

pub mod bytes;
pub mod c;
pub mod chance;
pub mod formulas;
pub mod live;
mod source;

/// A target's name, and what it does with bytes.
pub type Target = (&'static str, fn(&[u8]));

/// Every target.
pub const TARGETS: &[Target] =
    &[("live", live::run), ("bytes", bytes::run), ("formulas", formulas::run), ("c", c::run)];
