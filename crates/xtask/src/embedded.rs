//! The embedded target: how to get it, and what a build for it must and must not contain.
//!
//! rustup's own target is the ordinary way. Where rustup refuses, Debian's packages carry the
//! sources of the standard library and build `core` for the target from them.

use std::fmt;
use std::path::PathBuf;
use std::process::Command;

use crate::commands::{program, run, works};
use crate::{Outcome, root, symbols, tools};

/// The smallest target of the house: a Cortex-M0, no floating-point unit, no atomics.
const TARGET: &str = "thumbv6m-none-eabi";

/// A toolchain that can build for [`TARGET`].
#[derive(Clone, Copy)]
pub enum Toolchain {
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
    pub fn install() -> Outcome<Self> {
        match std::env::var("CUPWRIGHT_TARGETS").as_deref() {
            Ok("rustup") => rustup(),
            Ok("debian") => debian(),
            Ok(other) => {
                Err(format!("CUPWRIGHT_TARGETS is {other:?}; rustup and debian are known"))
            }
            Err(_) => rustup().or_else(|refused| {
                println!("{refused}; trying Debian's packages");
                debian()
            }),
        }
    }

    /// A release build of the core, and where its archive lies.
    fn build(self, features: &[&str]) -> (Command, PathBuf) {
        let folder = match self {
            Self::Rustup => "target/embedded-rustup",
            Self::Debian => "target/embedded-debian",
        };
        let mut command = match self {
            Self::Rustup => crate::commands::cargo(&[]),
            Self::Debian => {
                let mut command = program("/usr/bin/cargo");
                let path = std::env::var("PATH").unwrap_or_default();
                command
                    .env("PATH", format!("/usr/bin:{path}"))
                    .env("RUSTC_BOOTSTRAP", "1")
                    .env_remove("RUSTUP_TOOLCHAIN")
                    .env_remove("CARGO")
                    .env_remove("RUSTC");
                command
            }
        };
        command.args(["build", "--quiet", "--package", "cupwright", "--no-default-features"]);
        command.args(["--release", "--target", TARGET, "--target-dir", folder]);
        if let Self::Debian = self {
            command.args(["-Z", "build-std=core"]);
        }
        if !features.is_empty() {
            command.args(["--features", &features.join(",")]);
        }
        (command, root().join(folder).join(TARGET).join("release/libcupwright.rlib"))
    }
}

fn rustup() -> Outcome<Toolchain> {
    if !works("rustup", &["--version"]) {
        return Err("there is no rustup here".to_string());
    }
    // A refused download may hang rather than fail.
    run(program("timeout").args(["300", "rustup", "target", "add", TARGET]))?;
    Ok(Toolchain::Rustup)
}

fn debian() -> Outcome<Toolchain> {
    tools::debian(&["rustc-web", "cargo-web", "rust-web-src"])?;
    Ok(Toolchain::Debian)
}

/// Builds the core for the target with and without `serde`, and looks into both archives: code that
/// cannot panic refers to no panic, and code without a heap to no allocator.
///
/// An archive holds what is neither generic nor inlined: the formulas themselves.
pub fn check() -> Outcome {
    let toolchain = Toolchain::install()?;
    println!("{toolchain}");
    for features in [&[][..], &["serde"][..]] {
        let (mut build, archive) = toolchain.build(features);
        run(&mut build)?;
        let found = symbols::in_archive(&archive)?;
        println!("{} symbols, features {features:?}", found.len());
        if found.len() < 50 {
            return Err(format!("{}: too few symbols to be the core", archive.display()));
        }
        let bad = symbols::forbidden(&found);
        if !bad.is_empty() {
            return Err(format!("the core refers to {}", bad.join(", ")));
        }
    }
    Ok(())
}
