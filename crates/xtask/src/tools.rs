//! Tools that the tests need: installed when missing, or a clear failure.

use std::path::PathBuf;
use std::process::Stdio;

use crate::commands::{cargo, program, run, works};
use crate::{Outcome, root};

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

/// Installs Node.js if it is missing.
pub fn node() -> Outcome {
    if works("node", &["--version"]) && works("npm", &["--version"]) {
        return Ok(());
    }
    debian(&["nodejs", "npm"])
}

/// The folder of the pinned Node.js packages that build and test the JavaScript package, installed when
/// their list has changed.
pub fn node_packages() -> Outcome<PathBuf> {
    node()?;
    let fail = |error: std::io::Error| format!("node packages: {error}");
    let (list, folder) = (root().join("bindings/wasm/tools"), root().join("target/node"));
    let lock = std::fs::read(list.join("package-lock.json")).map_err(fail)?;
    let installed = folder.join("installed.json");
    if std::fs::read(&installed).is_ok_and(|known| known == lock) {
        return Ok(folder);
    }
    std::fs::create_dir_all(&folder).map_err(fail)?;
    for name in ["package.json", "package-lock.json"] {
        std::fs::copy(list.join(name), folder.join(name)).map_err(fail)?;
    }
    run(program("npm")
        .args(["ci", "--no-audit", "--no-fund", "--loglevel=error"])
        .current_dir(&folder))?;
    std::fs::write(&installed, lock).map_err(fail)?;
    Ok(folder)
}

/// A program of those packages.
pub fn node_tool(name: &str) -> Outcome<PathBuf> {
    Ok(node_packages()?.join("node_modules/.bin").join(name))
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
