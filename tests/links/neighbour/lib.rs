//! A library prepared as ours is: one object, only `neighbour_*` global, nothing undefined.

#![no_std]

/// The mean of some numbers.
///
/// # Safety
/// `values` points to `count` numbers.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn neighbour_mean(values: *const f64, count: u32) -> f64 {
    // SAFETY: the caller's.
    let values = unsafe { core::slice::from_raw_parts(values, count as usize) };
    values.iter().sum::<f64>() / f64::from(count)
}

#[panic_handler]
fn panic(_: &core::panic::PanicInfo<'_>) -> ! {
    unsafe extern "C" {
        fn neighbour_can_panic() -> !;
    }
    // SAFETY: never called, since nothing here panics.
    unsafe { neighbour_can_panic() }
}
