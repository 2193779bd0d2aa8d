//! The C interface of cupwright: one function per formula of the core, one file per room.
//!
//! Each function checks its pointers, makes the core's quantities of its numbers, calls the core and
//! writes the answer. It does no arithmetic and knows no defaults. `include/cupwright.h` is made from
//! this crate by `cargo xtask header`; the names in braces in the docs become the ranges of the
//! quantity table there.
//!
//! # Safety
//!
//! What every function here asks of its caller: a pointer that is not NULL points to a value of its
//! type, aligned, and stays valid for the call; a pointer with a count, to so many of them. NULL is
//! refused with a status where a pointer is needed. Nothing is kept after the call, nothing is global,
//! and inputs are read before the answer is written, so an answer may replace an input in place; columns alone
//! must not overlap with those that are written. A state
//! is what its function wrote when it was begun, changed by nobody else, or a copy of that; other memory
//! is refused by its first word.

#![no_std]
#![deny(missing_docs, clippy::arithmetic_side_effects, clippy::float_arithmetic)]
#![forbid(
    clippy::expect_used,
    clippy::indexing_slicing,
    clippy::panic,
    clippy::unreachable,
    clippy::unwrap_used
)]
#![allow(
    rustdoc::broken_intra_doc_links,
    reason = "the docs are written for C: `[out]` is no link"
)]
#![allow(non_camel_case_types, reason = "names are the same in Rust and in C")]
#![allow(clippy::missing_safety_doc, reason = "the same for every function: see the crate's docs")]
#![allow(
    clippy::too_many_arguments,
    reason = "C has no named arguments, and records cost more here"
)]

mod call;

// The header follows this order, which is that of a brew.

pub mod version;

pub mod status;

pub mod plan;

pub mod ratio;

pub mod water;

pub mod heat;

pub mod retention;

pub mod reading;

pub mod extraction;

pub mod verdict;

pub mod estimate;

pub mod uncertainty;

pub mod decision;

pub mod forecast;

pub mod advise;

pub mod calibrate;

pub mod profile;

pub mod dilution;

pub mod caution;

pub mod live;

pub mod columns;

mod text;

pub use text::*;
