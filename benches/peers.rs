//! Every row of `benches/SPEED.md`, ours and its peer: all in C, in `benches/speed`.
//!
//! ```text
//! cargo xtask speed
//! cargo bench --bench peers -- water
//! ```
//!
//! The first builds the library that is loaded here, runs all of this and makes the table of it; then
//! the second times rows anew.

use std::error::Error;
use std::ffi::{CStr, c_char, c_int, c_long};
use std::time::{Duration, Instant};

use criterion::{Criterion, SamplingMode};
use libloading::{Library, Symbol};

const LIBRARY: &str = concat!(env!("CARGO_MANIFEST_DIR"), "/target/speed/libspeed.so");

type Prepare = unsafe extern "C" fn(row: usize) -> *const c_char;
type Run = unsafe extern "C" fn(row: usize, theirs: c_int, calls: c_long) -> c_int;

fn main() -> Result<(), Box<dyn Error>> {
    // SAFETY: The library is built from benches/speed, and does nothing when it is loaded.
    let library = unsafe { Library::new(LIBRARY) }
        .map_err(|error| format!("cargo xtask speed builds what is timed here: {error}"))?;
    // SAFETY: The types are those of the functions in benches/speed/speed.c.
    let prepare: Symbol<Prepare> = unsafe { library.get("speed_prepare") }?;
    let run: Symbol<Run> = unsafe { library.get("speed_run") }?;

    let mut c = Criterion::default().configure_from_args();
    for row in 0.. {
        // SAFETY: Any row may be asked for.
        let name = unsafe { prepare(row) };
        if name.is_null() {
            break;
        }
        // SAFETY: A name is a string of the library's, which stays loaded.
        let name = unsafe { CStr::from_ptr(name) }.to_str()?;
        let mut group = c.benchmark_group(name);
        // Each run as long as the others: all go through the inputs, and through a pour, alike.
        group
            .sampling_mode(SamplingMode::Flat)
            .sample_size(50)
            .warm_up_time(Duration::from_millis(200))
            .measurement_time(Duration::from_millis(750))
            .nresamples(10_000);
        for (side, theirs) in [("ours", 0), ("theirs", 1)] {
            group.bench_function(side, |bencher| {
                bencher.iter_custom(|calls| {
                    let calls = c_long::try_from(calls).expect("so many calls take years");
                    let start = Instant::now();
                    // SAFETY: The row is there and was prepared.
                    let refused = unsafe { run(row, theirs, calls) };
                    let elapsed = start.elapsed();
                    assert_eq!(refused, 0, "a call of {name} was refused");
                    elapsed
                })
            });
        }
    }
    c.final_summary();
    Ok(())
}
