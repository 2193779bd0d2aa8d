//! The same bits from every way to compile the library: each build answers the scattered inputs and the live corpus
//! through C, and each answer is compared with what was accepted.

use std::collections::BTreeMap;
use std::fs::File;
use std::path::{Path, PathBuf};
use std::process::Stdio;
use std::time::Instant;

use super::archive::HOST;
use super::scattered::{self, Points};
use super::{calls, driver, interface};
use crate::commands::{cargo, output, program, quietly};
use crate::corpus::{Share, script};
use crate::{Outcome, root, tools};

/// A way to compile: what the profile says, and what else the compiler is told.
pub struct Build {
    name: &'static str,
    profile: &'static [&'static str],
    flags: &'static str,
}

const NATIVE: &str = "-C target-cpu=native";

/// The first is what users get who set nothing: `opt-level = 3`, 16 units, optimised across those alone.
pub const BUILDS: [Build; 9] = [
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
    },
];

const fn of_release(name: &'static str, profile: &'static [&'static str]) -> Build {
    Build { name, profile, flags: "" }
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
    tools::debian(&["binutils", "gcc"])?;
    std::fs::create_dir_all(current()).map_err(|e| format!("{}: {e}", current().display()))?;
    let interface = interface::read()?;
    let calls = calls::all(&interface);
    let cases = driver::set_up_scattered(&calls, Points::All)?.join("cases.txt");
    let (corpus, script) = (folder().join("corpus.txt"), script(Share::All)?);
    std::fs::write(&corpus, &script.text).map_err(|e| format!("{}: {e}", corpus.display()))?;
    let mut drivers = None;
    let mut seen = BTreeMap::new();
    for build in &BUILDS {
        let start = Instant::now();
        println!("\n{}", build.name);
        another(&mut seen, build.name, compiled(build)?)?;
        let [scattered, brews] = match &drivers {
            Some(drivers) => drivers,
            None => drivers.insert(linked(&scattered::cases(&calls, Points::OnBoards)?)?),
        };
        let heard = || {
            let file = File::open(&corpus).map_err(|e| format!("{}: {e}", corpus.display()))?;
            script.heard_by(program(brews).stdin(Stdio::from(file)))
        };
        let answers = driver::fed(&mut program(scattered), &cases).and_then(|()| heard());
        answers.map_err(|words| format!("{}: {words}", build.name))?;
        println!("{:.0} s", start.elapsed().as_secs_f64());
    }
    let cfg = output(program("rustc").args(["--print", "cfg"]).args(NATIVE.split(' ')))?;
    let can = if cfg.contains("target_feature=\"fma\"") { "can" } else { "cannot" };
    let (builds, (_, points)) = (BUILDS.len(), scattered::counted(Points::All)?);
    println!("\n{builds} builds agree bit for bit at {points} inputs; this processor {can} fuse");
    Ok(())
}

/// Compiles the library in one way and puts it where the drivers find it; its instructions.
fn compiled(build: &Build) -> Outcome<Vec<String>> {
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
    instructions(&made)
}

/// The instructions of a library, without where they lie: names, paths and the order of functions hang on cargo's
/// hash of the settings, whatever these do.
fn instructions(library: &Path) -> Outcome<Vec<String>> {
    let mut objdump = program("objdump");
    objdump.args(["--disassemble", "--no-show-raw-insn", "--section=.text"]).arg(library);
    let text = output(&mut objdump)?;
    let mut all: Vec<String> = text.lines().filter_map(instruction).collect();
    all.sort_unstable();
    if all.is_empty() { Err(format!("{}: no instructions", library.display())) } else { Ok(all) }
}

/// The instruction of a line of objdump's, without its address and those that it names.
fn instruction(line: &str) -> Option<String> {
    let (_, text) = line.split_once(":\t")?;
    let text = text.split(['#', '<']).next()?;
    let (name, operands) = text.split_once(' ').unwrap_or((text, ""));
    // A jump or a call to a place, or what lies beside the code; through a register it stays.
    let is_place = |operand: &str| {
        (name.starts_with(['j', 'c']) && u64::from_str_radix(operand, 16).is_ok())
            || operand.ends_with("(%rip)")
    };
    let operands = operands.trim().split(',').filter(|operand| !is_place(operand));
    Some(format!("{name} {}", operands.collect::<Vec<_>>().join(",")))
}

/// Whether a build has other instructions than those before: a setting that does nothing proves nothing.
fn another(
    seen: &mut BTreeMap<Vec<String>, &'static str>,
    name: &'static str,
    instructions: Vec<String>,
) -> Outcome {
    match seen.insert(instructions, name) {
        Some(same) => Err(format!("{name} has the instructions of {same}")),
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
        let of = |instruction: &str| vec![instruction.to_string()];
        assert_eq!(another(&mut seen, "one", of("ret")), Ok(()));
        assert_eq!(another(&mut seen, "two", of("nop")), Ok(()));
        let error = another(&mut seen, "three", of("ret")).unwrap_err();
        assert!(error.contains("three has the instructions of one"), "{error}");
    }

    #[test]
    fn the_mark_of_a_build_and_the_order_of_functions_do_not_count() {
        let place = std::env::temp_dir().join(format!("builds-{}", std::process::id()));
        std::fs::create_dir_all(&place).unwrap();
        let library = |name: &str, functions: &[&str]| {
            let (source, made) = (place.join("made.c"), place.join(name));
            std::fs::write(&source, functions.concat()).unwrap();
            let mark = format!("-Wl,--build-id=0x{name}");
            let options = ["-shared", "-fPIC", "-O1", &mark, "-o"];
            quietly(program("cc").args(options).args([&made, &source])).unwrap();
            (std::fs::read(&made).unwrap(), instructions(&made).unwrap())
        };
        let (twice, root) =
            ("double f(double x) { return x + x; }", "double g(void) { return 2; }");
        let (one, plain) = library("01", &[twice, root]);
        let (two, turned) = library("02", &[root, twice]);
        let (_, other) = library("03", &[root, "double f(double x) { return x * x; }"]);
        std::fs::remove_dir_all(&place).unwrap();
        assert_ne!(one, two);
        assert_eq!(plain, turned);
        assert_ne!(plain, other);
    }

    #[test]
    fn instructions_are_read_without_places() {
        let of = |line: &str| instruction(line).unwrap();
        assert_eq!(of("  3a9b0:\tcall   3b270 <exp+0x10>"), "call ");
        assert_eq!(of("  3a9b0:\tcall   *%rax"), "call *%rax");
        assert_eq!(of("  3a9b0:\tje     3b2"), "je ");
        let moved = of("  3a9b0:\tmovsd  0x1f3(%rip),%xmm0        # 4c1e8 <x>");
        assert_eq!(moved, "movsd %xmm0");
        assert_eq!(of("  3a9b0:\tadd    $0x10,%rsp"), "add $0x10,%rsp");
        assert_eq!(of("  3a9b0:\tret"), "ret ");
        assert_eq!(instruction("000000000003a9b0 <exp>:"), None);
    }
}
