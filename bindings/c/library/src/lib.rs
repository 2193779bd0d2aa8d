//! The C interface as a library to link. Nothing here but what a crate that is linked into C needs.
//!
//! Where panics abort, as in the profiles `firmware` and `hosted`, the library stands without Rust's
//! standard library. Nothing in it can panic, and the link proves it: the panic handler calls a function
//! that exists nowhere, so code that could reach it would leave an undefined symbol. Where panics unwind,
//! as in development and tests, it leans on the standard library like any crate.
//!
//! `cargo xtask dist` makes one object of it, whose only global symbols are the interface's functions.

#![cfg_attr(panic = "abort", no_std)]

pub use cupwright_c::*;

#[cfg(panic = "abort")]
#[panic_handler]
fn panic(_: &core::panic::PanicInfo<'_>) -> ! {
    unsafe extern "C" {
        fn cupwright_can_panic() -> !;
    }
    // SAFETY: never called, since nothing here panics.
    unsafe { cupwright_can_panic() }
}

/// What compiled code asks of a computer's C library. With its own, the object needs nothing from outside there
/// either. Bare-metal targets have theirs from Rust.
#[cfg(any(test, all(panic = "abort", not(target_os = "none"))))]
mod memory;
