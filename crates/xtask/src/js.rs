//! The JavaScript package: its face written from the C interface, its module, and what proves them.

pub mod about;
pub mod cases;
pub mod consumers;
pub mod costs;
pub mod face;
pub mod package;
pub mod page;
pub mod parity;
pub mod types;
