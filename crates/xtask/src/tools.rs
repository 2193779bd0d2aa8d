//! Tools that the tests need: installed when missing, or a clear failure.

use crate::Outcome;
use crate::commands::{cargo, program, run, works};

/// Installs a rustup component if its cargo command is missing.
pub fn component(subcommand: &str, component: &str) -> Outcome {
    if works("cargo", &[subcommand, "--version"]) {
        return Ok(());
    }
    run(program("rustup").args(["component", "add", component]))?;
    run(&mut cargo(&[subcommand, "--version"]))
}

/// Installs Debian packages, through sudo where we are not root.
pub fn debian(packages: &[&str]) -> Outcome {
    let missing: Vec<_> =
        packages.iter().copied().filter(|package| !works("dpkg", &["-s", package])).collect();
    if missing.is_empty() {
        return Ok(());
    }
    if !works("apt-get", &["--version"]) {
        return Err(format!("install {} first: there is no apt-get here", missing.join(", ")));
    }
    let (name, before): (&str, &[&str]) = if works("test", &["-w", "/var/lib/dpkg"]) {
        ("env", &[])
    } else if works("sudo", &["-n", "true"]) {
        ("sudo", &["-n", "env"])
    } else {
        return Err(format!("install {} first: neither root nor sudo", missing.join(", ")));
    };
    let apt = |arguments: &[&str]| {
        run(program(name)
            .args(before)
            .args(["DEBIAN_FRONTEND=noninteractive", "apt-get", "-q"])
            .args(arguments))
    };
    apt(&["update"])?;
    apt(&["install", "--yes", "--no-install-recommends"]
        .iter()
        .chain(&missing)
        .copied()
        .collect::<Vec<_>>())
}
