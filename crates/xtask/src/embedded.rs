//! The embedded target: how to get it, and what a build for it must and must not contain.
//!
//! rustup's own target is the ordinary way. Where rustup refuses, Debian's packages carry the
//! sources of the standard library and build `core` for the target from them.

use std::fmt;
use std::path::Path;
use std::process::Command;
use std::time::Duration;

use crate::commands::{cargo, program, run, run_within};
use crate::{Outcome, root, symbols, tools};

/// The smallest target of the house: a Cortex-M0, no floating-point unit, no atomics.
const TARGET: &str = "thumbv6m-none-eabi";

/// A toolchain that can build for [`TARGET`].
#[derive(Clone, Copy, Debug, PartialEq)]
enum Toolchain {
    Rustup,
    Debian,
}

impl fmt::Display for Toolchain {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Rustup => write!(f, "{TARGET} through rustup"),
            Self::Debian => write!(f, "{TARGET} through Debian's rustc-web and rust-web-src"),
        }
    }
}

impl Toolchain {
    /// Installs the target, by the way that `CUPWRIGHT_TARGETS` forces or by the first that works.
    fn install() -> Outcome<Self> {
        match std::env::var_os("CUPWRIGHT_TARGETS") {
            None => Self::Rustup.ready().or_else(|refused| {
                println!("{refused}; trying Debian's packages");
                Self::Debian.ready()
            }),
            Some(way) => Self::named(&way.to_string_lossy())?.ready(),
        }
    }

    fn named(way: &str) -> Outcome<Self> {
        match way {
            "rustup" => Ok(Self::Rustup),
            "debian" => Ok(Self::Debian),
            _ => Err(format!("CUPWRIGHT_TARGETS is {way:?}; rustup and debian are known")),
        }
    }

    fn ready(self) -> Outcome<Self> {
        match self {
            // rustup's cargo says which toolchain it belongs to; another one has no use for the target.
            Self::Rustup if std::env::var_os("RUSTUP_TOOLCHAIN").is_none() => {
                return Err("this cargo is not rustup's".to_string());
            }
            Self::Rustup => run_within(
                Duration::from_secs(300),
                program("rustup").args(["target", "add", TARGET]),
            )?,
            Self::Debian => tools::debian(&["rustc-web", "cargo-web", "rust-web-src"])?,
        }
        Ok(self)
    }

    /// The target folder of its builds: the other toolchain's would be of no use to it.
    fn folder(self) -> &'static str {
        match self {
            Self::Rustup => "target/embedded-rustup",
            Self::Debian => "target/embedded-debian",
        }
    }

    /// A cargo build for [`TARGET`].
    fn build(self) -> Command {
        let mut command = match self {
            Self::Rustup => cargo(&["build"]),
            Self::Debian => {
                let path = std::env::var("PATH").unwrap_or_default();
                let mut command = program("/usr/bin/cargo");
                command.env("PATH", format!("/usr/bin:{path}")).env("RUSTC_BOOTSTRAP", "1");
                // What the toolchain that runs us has set for itself.
                for name in ["RUSTUP_TOOLCHAIN", "CARGO", "RUSTC", "LD_LIBRARY_PATH"] {
                    command.env_remove(name);
                }
                command.args(["build", "-Z", "build-std=core"]);
                command
            }
        };
        command.args(["--target", TARGET, "--target-dir", self.folder()]);
        command
    }
}

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
    let toolchain = Toolchain::install()?;
    println!("{toolchain}");
    let archive = root().join(toolchain.folder()).join(TARGET).join("release/libcupwright.rlib");
    for features in ["", "serde"] {
        run(in_full(&mut toolchain.build())
            .args(["--locked", "--package", "cupwright", "--no-default-features"])
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

    #[test]
    fn ways_have_names() {
        assert_eq!(Toolchain::named("rustup"), Ok(Toolchain::Rustup));
        assert_eq!(Toolchain::named("debian"), Ok(Toolchain::Debian));
        assert!(Toolchain::named("").unwrap_err().contains("rustup and debian are known"));
    }
}
