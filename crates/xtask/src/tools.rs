//! Tools that the tests need: installed when missing, or a clear failure.

use std::process::Stdio;

use crate::Outcome;
use crate::commands::{cargo, program, run, works};

/// Installs a rustup component if its cargo command is missing.
pub fn component(subcommand: &str, component: &str) -> Outcome {
    if works("cargo", &[subcommand, "--version"]) {
        return Ok(());
    }
    if !works("rustup", &["--version"]) {
        return Err(format!("install {component} first: there is no rustup here"));
    }
    run(program("rustup").args(["component", "add", component]))?;
    run(&mut cargo(&[subcommand, "--version"]))
}

/// Installs Debian packages, through sudo where we are not root.
pub fn debian(packages: &[&str]) -> Outcome {
    let missing: Vec<_> = packages.iter().copied().filter(|package| !installed(package)).collect();
    if missing.is_empty() {
        return Ok(());
    }
    let first = format!("install {} first", missing.join(", "));
    if !works("apt-get", &["--version"]) {
        return Err(format!("{first}: there is no apt-get here"));
    }
    let before: &[&str] = if works("test", &["-w", "/var/lib/dpkg"]) {
        &["env"]
    } else if works("sudo", &["-n", "true"]) {
        &["sudo", "-n", "env"]
    } else {
        return Err(format!("{first}: we are not root, and sudo asks for a password"));
    };
    let apt = |arguments: &[&str]| {
        run(program(before[0])
            .args(&before[1..])
            .args(["DEBIAN_FRONTEND=noninteractive", "apt-get", "--quiet"])
            .args(arguments))
    };
    apt(&["update"])?;
    apt(&[&["install", "--yes", "--no-install-recommends"], &missing[..]].concat())
}

/// Whether a Debian package is there; one that was removed may still be known by its settings.
fn installed(package: &str) -> bool {
    program("dpkg-query")
        .args(["--show", "--showformat=${db:Status-Status}", package])
        .stderr(Stdio::null())
        .output()
        .is_ok_and(|output| output.stdout == b"installed")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_there_needs_no_installing() {
        assert_eq!(debian(&[]), Ok(()));
        assert!(!installed("no-such-package"));
    }
}
