//! A bare-metal build of the core, and what it must not contain.

use std::path::Path;
use std::process::Command;

use crate::commands::run;
use crate::toolchain::Toolchain;
use crate::{Outcome, symbols};

/// The smallest target of the house: a Cortex-M0, no floating-point unit, no atomics.
const TARGET: &str = "thumbv6m-none-eabi";

/// Makes a build put every function of a crate into its archive.
///
/// A release build leaves out small functions, to be inlined by whoever calls them, and a small
/// function can still index out of bounds. An incremental build leaves out only what is generic or
/// marked `#[inline]`. One codegen unit keeps it as optimised as the release build.
///
/// `CARGO_INCREMENTAL`, since the profile's own setting gives way to it where it is set already.
fn in_full(build: &mut Command) -> &mut Command {
    build
        .env("CARGO_INCREMENTAL", "1")
        .env("CARGO_PROFILE_RELEASE_CODEGEN_UNITS", "1")
        .args(["--quiet", "--release"])
}

/// Builds the core for the target with and without `serde`, and looks into both archives: code that
/// cannot panic refers to no panic, and code without a heap to no allocator.
///
/// What the archive does not hold is not seen: the core marks nothing `#[inline]` (a step of the
/// tests sees to that), so that leaves generic functions and, with `serde`, the derived code, which
/// is generic over the format.
pub fn check() -> Outcome {
    let toolchain = Toolchain::install(&[TARGET])?;
    println!("{TARGET} by {toolchain:?}");
    let archive = toolchain.folder().join(TARGET).join("release/libcupwright.rlib");
    for features in ["", "serde"] {
        run(in_full(&mut toolchain.cargo("build", TARGET))
            .args(["--package", "cupwright", "--no-default-features"])
            .args(["--features", features]))?;
        let found = clean(&archive)?;
        let own = found.iter().filter(|symbol| symbol.contains("cupwright")).count();
        if own < 200 {
            return Err(format!("{}: {own} symbols of its own, too few", archive.display()));
        }
        println!("{own} symbols of the core, none of a panic or an allocation");
    }
    Ok(())
}

/// The symbols of an archive, none of which means a panic or an allocation.
fn clean(archive: &Path) -> Outcome<Vec<String>> {
    let found = symbols::in_archive(archive)?;
    let bad = symbols::forbidden(&found);
    if !bad.is_empty() {
        return Err(format!("{} refers to {}", archive.display(), bad.join(", ")));
    }
    Ok(found)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::commands::cargo;

    /// Builds a crate of this source as the core is built, but for this machine, and looks into it.
    fn looked_into(name: &str, source: &str) -> Outcome<Vec<String>> {
        let folder = std::env::temp_dir().join(format!("{name}-{}", std::process::id()));
        std::fs::create_dir_all(&folder).unwrap();
        let manifest = format!(
            "[package]\nname = \"{name}\"\nedition = \"2024\"\n[lib]\npath = \"lib.rs\"\n[workspace]\n"
        );
        std::fs::write(folder.join("Cargo.toml"), manifest).unwrap();
        std::fs::write(folder.join("lib.rs"), format!("#![no_std]\n{source}\n")).unwrap();
        run(in_full(&mut cargo(&["build", "--target-dir", "target"])).current_dir(&folder))
            .unwrap();
        let looked = clean(&folder.join(format!("target/release/lib{name}.rlib")));
        std::fs::remove_dir_all(&folder).unwrap();
        looked
    }

    #[test]
    fn code_that_cannot_panic_is_clean() {
        let source = "pub fn third(a: f64) -> f64 { a / 3.0 }
            pub fn first(a: &[u8]) -> Option<u8> { a.first().copied() }";
        let found = looked_into("clean", source).unwrap();
        for function in ["5third", "5first"] {
            assert!(found.iter().any(|symbol| symbol.contains(function)), "{function}: {found:?}");
        }
    }

    #[test]
    fn a_small_function_that_indexes_is_found() {
        let source = "pub fn nth(a: &[u8], i: usize) -> u8 { a[i] }";
        let words = looked_into("indexes", source).unwrap_err();
        assert!(words.contains("panic_bounds_check"), "{words}");
    }

    #[test]
    fn every_other_way_to_panic_and_the_heap_are_found() {
        let source = "extern crate alloc;
            pub fn divides(a: u32, b: u32) -> u32 { a / b }
            pub fn unwraps(a: Option<u8>) -> u8 { a.unwrap() }
            pub fn expects(a: Result<u8, u8>) -> u8 { a.expect(\"a\") }
            pub fn slices(a: &[u8], i: usize) -> &[u8] { &a[i..] }
            pub fn cuts(a: &str, i: usize) -> &str { &a[i..] }
            pub fn copies(a: &mut [u8], b: &[u8]) { a.copy_from_slice(b) }
            pub fn boxes(a: u8) -> alloc::boxed::Box<u8> { alloc::boxed::Box::new(a) }";
        let words = looked_into("panics", source).unwrap_err();
        let names = [
            "div_by_zero",
            "6option13unwrap_failed",
            "6result13unwrap_failed",
            "slice_index_fail",
            "slice_error_fail",
            "len_mismatch_fail",
            "__rust_alloc",
        ];
        for name in names {
            assert!(words.contains(name), "{name}: {words}");
        }
    }
}
