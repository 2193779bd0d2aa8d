//! Which version this is.

use core::ffi::c_char;

/// Version of the interface's layout: function signatures, structs and the meaning of codes. A program
/// made with one does not fit a library with another. Compare with cupwright_abi_version().
pub const CUPWRIGHT_ABI_VERSION: u32 = 1;

/// The version of the interface's layout that the library was built with: CUPWRIGHT_ABI_VERSION of its
/// own header.
#[unsafe(no_mangle)]
pub extern "C" fn cupwright_abi_version() -> u32 {
    CUPWRIGHT_ABI_VERSION
}

/// The package's version, "major.minor.patch": CUPWRIGHT_VERSION of its own header.
#[unsafe(no_mangle)]
pub extern "C" fn cupwright_version_text() -> *const c_char {
    concat!(env!("CARGO_PKG_VERSION"), "\0").as_ptr().cast()
}
