//! Every row of `benches/SPEED.md`, ours and its peer: all in C, in `benches/speed`.
//!
//! ```text
//! cargo xtask speed
//! cargo bench --bench peers -- water
//! ```
//!
//! The first builds the library that is loaded here, goes through all of it some times and makes the
//! table; then the second times rows anew.

use std::error::Error;
use std::ffi::{CStr, c_char, c_int, c_long};
use std::time::Duration;

use criterion::{Criterion, SamplingMode};
use libloading::{Library, Symbol};
use rustix::time::{ClockId, clock_gettime};

const LIBRARY: &str = concat!(env!("CARGO_MANIFEST_DIR"), "/target/speed/libspeed.so");

type Prepare = unsafe extern "C" fn(row: usize) -> *const c_char;
type Run = unsafe extern "C" fn(row: usize, theirs: c_int, calls: c_long) -> c_int;

/// What the processor spent on us: nothing of it goes to others who use the machine.
fn own_time() -> Duration {
    let time = clock_gettime(ClockId::ThreadCPUTime);
    time.try_into().expect("no time before the thread began")
}

fn main() -> Result<(), Box<dyn Error>> {
    // SAFETY: The library is built from benches/speed, and does nothing when it is loaded.
    let library = unsafe { Library::new(LIBRARY) }
        .map_err(|error| format!("{LIBRARY}: {error}; cargo xtask speed builds it"))?;
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
        // All runs as long, so that each goes through the inputs, and through a pour, alike; short, for a
        // table is made of several rounds.
        group
            .sampling_mode(SamplingMode::Flat)
            .sample_size(50)
            .warm_up_time(Duration::from_millis(50))
            .measurement_time(Duration::from_millis(200))
            .nresamples(2000);
        for (side, theirs) in [("ours", 0), ("theirs", 1)] {
            group.bench_function(side, |bencher| {
                bencher.iter_custom(|calls| {
                    let calls = c_long::try_from(calls).expect("so many calls take years");
                    let start = own_time();
                    // SAFETY: The row is there and was prepared.
                    let refused = unsafe { run(row, theirs, calls) };
                    let elapsed = own_time() - start;
                    assert_eq!(refused, 0, "a call of {name} was refused");
                    elapsed
                })
            });
        }
    }
    c.final_summary();
    Ok(())
}
