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

/// One of the two routines that compiled code asks of a computer's C library: copies structs. With its
/// own, the object needs nothing from outside there either. Bare-metal targets have theirs from Rust.
///
/// # Safety
/// As C's `memcpy`.
#[cfg(all(panic = "abort", not(target_os = "none")))]
#[unsafe(no_mangle)]
unsafe extern "C" fn memcpy(to: *mut u8, from: *const u8, count: usize) -> *mut u8 {
    // Structs of doubles are copied by eight bytes.
    let aligned = (to.addr() | from.addr()).is_multiple_of(size_of::<u64>());
    let words = if aligned { count / size_of::<u64>() } else { 0 };
    for at in 0..words {
        // Volatile, or the compiler would see a memcpy here and call itself.
        // SAFETY: the caller's; both are aligned for words.
        unsafe { to.cast::<u64>().add(at).write_volatile(from.cast::<u64>().add(at).read()) };
    }
    for at in words * size_of::<u64>()..count {
        // SAFETY: the caller's.
        unsafe { to.add(at).write_volatile(from.add(at).read()) };
    }
    to
}

/// The other: blank arrays.
///
/// # Safety
/// As C's `memset`.
#[cfg(all(panic = "abort", not(target_os = "none")))]
#[unsafe(no_mangle)]
unsafe extern "C" fn memset(to: *mut u8, byte: i32, count: usize) -> *mut u8 {
    for at in 0..count {
        // Volatile for the same reason.
        // SAFETY: the caller's.
        unsafe { to.add(at).write_volatile(byte as u8) };
    }
    to
}
