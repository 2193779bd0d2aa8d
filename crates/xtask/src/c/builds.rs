//! The same bits from every way to compile the library: each build answers the scattered inputs and the live corpus
//! through C, and each answer is compared with what was accepted.

use std::collections::BTreeMap;
use std::fs::File;
use std::path::{Path, PathBuf};
use std::process::Stdio;
use std::time::Instant;

use super::archive::HOST;
use super::{calls, driver, interface, scattered};
use crate::commands::{cargo, output, program, quietly};
use crate::corpus::{self, Script, Share};
use crate::{Outcome, root, tools};

/// A way to compile: what the profile says, and what else the compiler is told.
struct Build {
    name: &'static str,
    profile: &'static [&'static str],
    flags: &'static str,
    asked: Asked,
}

/// How much a build is asked.
#[derive(Clone, Copy, PartialEq)]
enum Asked {
    All,
    /// A slow one: so many inputs of each formula at most, and every tenth trace.
    Fewer,
}

/// Inputs of each formula, at most, for slow builds.
const FEWER: u64 = 200;

const NATIVE: &str = "-C target-cpu=native";

/// The first is what users get who set nothing: `opt-level = 3`, 16 units, optimised across those alone.
const BUILDS: [Build; 9] = [
    of_release("release", &[]),
    of_release("release without LTO", &["lto=\"off\""]),
    of_release("release with fat LTO", &["lto=\"fat\""]),
    of_release("one unit", &["codegen-units=1"]),
    of_release("optimised for size, s", &["opt-level=\"s\""]),
    of_release("optimised for size, z", &["opt-level=\"z\""]),
    of_release("optimised a little, 1", &["opt-level=1"]),
    Build { flags: NATIVE, ..of_release("for this very processor", &["codegen-units=1"]) },
    Build {
        name: "debug, not optimised, with checks for overflow",
        profile: &[
            "inherits=\"dev\"",
            "package.cupwright.opt-level=0",
            "package.libm.opt-level=0",
            "overflow-checks=true",
        ],
        flags: "",
        asked: Asked::Fewer,
    },
];

const fn of_release(name: &'static str, profile: &'static [&'static str]) -> Build {
    Build { name, profile, flags: "", asked: Asked::All }
}

fn folder() -> PathBuf {
    root().join("target/builds")
}

/// The library that the drivers are linked with, whichever build it is of.
fn current() -> PathBuf {
    folder().join("current")
}

/// Compiles the library in every way and compares its answers.
pub fn check() -> Outcome {
    tools::debian(&["gcc"])?;
    std::fs::create_dir_all(current()).map_err(|e| format!("{}: {e}", current().display()))?;
    let interface = interface::read()?;
    let calls = calls::all(&interface);
    let cases = driver::set_up_scattered(&calls)?.join("cases.txt");
    let text = std::fs::read_to_string(&cases).map_err(|e| format!("{}: {e}", cases.display()))?;
    let written = |name: &str, text: &str| -> Outcome<PathBuf> {
        let path = folder().join(name);
        std::fs::write(&path, text).map_err(|e| format!("{}: {e}", path.display()))?;
        Ok(path)
    };
    let of = |asked: Asked| -> Outcome<Questions> {
        let (name, text, share) = match asked {
            Asked::All => ("all", text.clone(), Share::All),
            Asked::Fewer => ("fewer", scattered::fewer_cases(&calls, FEWER)?, Share::Tenth),
        };
        let script = corpus::script(share)?;
        Ok(Questions {
            cases: written(&format!("{name}-cases.txt"), &text)?,
            corpus: written(&format!("{name}-corpus.txt"), &script.text)?,
            script,
        })
    };
    let (all, fewer) = (of(Asked::All)?, of(Asked::Fewer)?);
    let mut drivers = None;
    let mut seen = BTreeMap::new();
    for build in &BUILDS {
        let start = Instant::now();
        println!("\n{}", build.name);
        another(&mut seen, build.name, compiled(build)?)?;
        let [scattered, brews] = match &drivers {
            Some(drivers) => drivers,
            None => drivers.insert(linked(&text)?),
        };
        let asked = if build.asked == Asked::All { &all } else { &fewer };
        asked.answered_by(scattered, brews).map_err(|words| format!("{}: {words}", build.name))?;
        println!("{:.0} s", start.elapsed().as_secs_f64());
    }
    let cfg = output(program("rustc").args(["--print", "cfg"]).args(NATIVE.split(' ')))?;
    let can = if cfg.contains("target_feature=\"fma\"") { "can" } else { "cannot" };
    println!("\n{} builds agree bit for bit; this processor {can} fuse", BUILDS.len());
    Ok(())
}

/// What a build is asked, and what it must answer.
struct Questions {
    cases: PathBuf,
    corpus: PathBuf,
    script: Script,
}

impl Questions {
    fn answered_by(&self, scattered: &Path, brews: &Path) -> Outcome {
        driver::fed(&mut program(scattered), &self.cases)?;
        let file = File::open(&self.corpus).map_err(|e| format!("corpus: {e}"))?;
        self.script.heard_by(program(brews).stdin(Stdio::from(file)))
    }
}

/// Compiles the library in one way and puts it where the drivers find it; its bytes.
fn compiled(build: &Build) -> Outcome<Vec<u8>> {
    let mut command = cargo(&["rustc", "--quiet", "--locked", "--target", HOST.triple]);
    command.args(["--package", "cupwright-library", "--crate-type", "cdylib"]);
    command.args(["--profile", "builds", "--target-dir", "target/builds"]);
    let inherits = build.profile.iter().any(|setting| setting.starts_with("inherits"));
    let release = (!inherits).then_some("inherits=\"release\"");
    for setting in release.iter().chain(build.profile) {
        command.arg("--config").arg(format!("profile.builds.{setting}"));
    }
    quietly(command.env("RUSTFLAGS", build.flags))?;
    let name = "libcupwright_library.so";
    let made = folder().join(HOST.triple).join("builds").join(name);
    let fail = |error: std::io::Error| format!("{}: {error}", made.display());
    std::fs::copy(&made, current().join(name)).map_err(fail)?;
    std::fs::read(&made).map_err(fail)
}

/// Whether a library is another one than those before: a setting that does nothing proves nothing.
fn another(
    seen: &mut BTreeMap<Vec<u8>, &'static str>,
    name: &'static str,
    library: Vec<u8>,
) -> Outcome {
    match seen.insert(library, name) {
        Some(same) => Err(format!("{name} is the same library as {same}")),
        None => Ok(()),
    }
}

/// The drivers of scattered inputs and of brews; the first sees a wrong bit.
fn linked(cases: &str) -> Outcome<[PathBuf; 2]> {
    let place = current();
    let library = [format!("-L{}", place.display()), format!("-Wl,-rpath,{}", place.display())];
    let library = [&library[0], &library[1], "-lcupwright_library"];
    let options = ["-std=c99", "-O2", "-Ibindings/c/include"];
    let build = |name| driver::build(name, "gcc", &options, &library, "-builds");
    let drivers = [build("scattered")?, build("brews")?];
    driver::sees_a_wrong_bit(&drivers[0], cases, 0)?;
    Ok(drivers)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_build_that_is_no_other_is_refused() {
        let mut seen = BTreeMap::new();
        assert_eq!(another(&mut seen, "one", vec![1]), Ok(()));
        assert_eq!(another(&mut seen, "two", vec![2]), Ok(()));
        let error = another(&mut seen, "three", vec![1]).unwrap_err();
        assert!(error.contains("three is the same library as one"), "{error}");
    }
}
