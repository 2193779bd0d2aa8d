//! The C interface: its header, its archives, and what proves them.

pub mod abi;
pub mod archive;
pub mod boards;
pub mod builds;
pub mod calls;
pub mod cases;
pub mod constants;
pub mod docs;
pub mod driver;
pub mod firmware;
pub mod header;
pub mod interface;
pub mod links;
pub mod packages;
pub mod scattered;
pub mod size;
