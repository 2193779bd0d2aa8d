//! Rust toolchains that build for bare-metal targets.
//!
//! rustup's own targets are the ordinary way. Where rustup refuses, Debian's packages carry the sources
//! of the standard library and build `core` for a target from them.

use std::path::PathBuf;
use std::process::Command;

use crate::commands::{cargo, limited, output, program, run};
use crate::{Outcome, root, tools};

/// A toolchain that can build for bare-metal targets.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Toolchain {
    Rustup,
    Debian,
}

impl Toolchain {
    /// Installs targets, by the way that `CUPWRIGHT_TARGETS` forces or by the first that works.
    pub fn install(targets: &[&str]) -> Outcome<Self> {
        match std::env::var_os("CUPWRIGHT_TARGETS") {
            None => Self::Rustup.ready(targets).or_else(|refused| {
                println!("{refused}; trying Debian's packages");
                Self::Debian.ready(targets)
            }),
            Some(way) => Self::named(&way.to_string_lossy())?.ready(targets),
        }
    }

    fn named(way: &str) -> Outcome<Self> {
        match way {
            "rustup" => Ok(Self::Rustup),
            "debian" => Ok(Self::Debian),
            _ => Err(format!("CUPWRIGHT_TARGETS is {way:?}; rustup and debian are known")),
        }
    }

    fn ready(self, targets: &[&str]) -> Outcome<Self> {
        match self {
            // rustup's cargo says which toolchain it belongs to; another one has no use for the target.
            Self::Rustup if std::env::var_os("RUSTUP_TOOLCHAIN").is_none() => {
                return Err("this cargo is not rustup's".to_string());
            }
            Self::Rustup => {
                let mut add = program("rustup");
                run(&mut limited(300, add.args(["target", "add"]).args(targets)))?;
            }
            Self::Debian => tools::debian(&["rustc-web", "cargo-web", "rust-web-src"])?,
        }
        Ok(self)
    }

    /// Its compiler's version.
    pub fn version(self) -> Outcome<String> {
        let rustc = match self {
            Self::Rustup => "rustc",
            Self::Debian => "/usr/bin/rustc",
        };
        Ok(output(program(rustc).arg("--version"))?.trim().to_string())
    }

    /// The target folder of its builds: the other toolchain's would be of no use to it.
    pub fn folder(self) -> PathBuf {
        root().join(match self {
            Self::Rustup => "target/embedded-rustup",
            Self::Debian => "target/embedded-debian",
        })
    }

    /// A cargo command for a target: `build` or the like.
    pub fn cargo(self, subcommand: &str, target: &str) -> Command {
        let mut command = match self {
            Self::Rustup => cargo(&[subcommand]),
            Self::Debian => {
                let path = std::env::var("PATH").unwrap_or_default();
                let mut command = program("/usr/bin/cargo");
                command.env("PATH", format!("/usr/bin:{path}")).env("RUSTC_BOOTSTRAP", "1");
                // What the toolchain that runs us has set for itself.
                for name in ["RUSTUP_TOOLCHAIN", "CARGO", "RUSTC", "LD_LIBRARY_PATH"] {
                    command.env_remove(name);
                }
                command.args([subcommand, "-Z", "build-std=core"]);
                command
            }
        };
        command.args(["--locked", "--target", target, "--target-dir"]).arg(self.folder());
        command
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn ways_have_names() {
        assert_eq!(Toolchain::named("rustup"), Ok(Toolchain::Rustup));
        assert_eq!(Toolchain::named("debian"), Ok(Toolchain::Debian));
        assert!(Toolchain::named("").unwrap_err().contains("rustup and debian are known"));
    }
}
