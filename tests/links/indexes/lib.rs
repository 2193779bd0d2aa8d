//! Prepared as ours is, and it can panic: the undefined function must give it away.

#![no_std]

/// One of three numbers.
#[unsafe(no_mangle)]
pub extern "C" fn indexes_nth(at: u32) -> f64 {
    [1.5, 2.5, 3.5][at as usize]
}

#[panic_handler]
fn panic(_: &core::panic::PanicInfo<'_>) -> ! {
    unsafe extern "C" {
        fn indexes_can_panic() -> !;
    }
    // SAFETY: never called: nobody links this.
    unsafe { indexes_can_panic() }
}
