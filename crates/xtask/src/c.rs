//! The C interface: its header, its archives, and what proves them.

pub mod calls;
pub mod cases;
pub mod header;
pub mod interface;
