//! The packages for C: for every target one object in which only the interface's functions are global
//! and nothing is undefined, an archive that holds it, the header, and what build systems ask for.
//!
//! A plain Rust staticlib would bring `exp`, `memset` and soft-float routines that take the place of the
//! firmware's own, or be answered by a toolchain's: one of those rounds wrongly, and the order of the
//! link would choose. In this object they are local.

use std::collections::BTreeSet;
use std::path::{Path, PathBuf};

use cupwright_c::version::CUPWRIGHT_ABI_VERSION;
use object::read::archive::ArchiveFile;
use object::{Object, ObjectSymbol};

use super::interface;
use crate::commands::{cargo, program, quietly, text_of};
use crate::toolchain::Toolchain;
use crate::{Outcome, root, tools};

/// A processor to build for.
pub struct Target {
    /// Rust's name of it.
    pub triple: &'static str,
    /// What stands before the names of its binutils and compiler.
    pub tools: &'static str,
    /// What its linker must be told to join objects.
    linker: &'static [&'static str],
    /// What its C compiler must be told of the processor.
    pub compiler: &'static [&'static str],
    profile: &'static str,
    /// What its objcopy must be told of the tables for unwinding the stack.
    tables: &'static [&'static str],
}

/// On a bare board nothing unwinds: the tables would only take room.
const NO_TABLES: &[&str] = &[
    "--remove-section=.ARM.exidx*",
    "--remove-section=.rel.ARM.exidx*",
    "--remove-section=.eh_frame",
    "--remove-section=.rela.eh_frame",
];

/// Cortex-M and RISC-V, as scales have them.
pub const BARE: [Target; 6] = [
    arm("thumbv6m-none-eabi", &["-mcpu=cortex-m0", "-mthumb"]),
    arm("thumbv7m-none-eabi", &["-mcpu=cortex-m3", "-mthumb"]),
    arm(
        "thumbv7em-none-eabi",
        &["-mcpu=cortex-m4", "-mthumb", "-mfloat-abi=softfp", "-mfpu=fpv4-sp-d16"],
    ),
    arm(
        "thumbv7em-none-eabihf",
        &["-mcpu=cortex-m4", "-mthumb", "-mfloat-abi=hard", "-mfpu=fpv4-sp-d16"],
    ),
    arm(
        "thumbv8m.main-none-eabihf",
        &["-mcpu=cortex-m33", "-mthumb", "-mfloat-abi=hard", "-mfpu=fpv5-sp-d16"],
    ),
    Target {
        triple: "riscv32imc-unknown-none-elf",
        tools: "riscv64-unknown-elf-",
        linker: &["-m", "elf32lriscv"],
        compiler: &["-march=rv32imc", "-mabi=ilp32", "-mcmodel=medany"],
        profile: "firmware",
        tables: NO_TABLES,
    },
];

const fn arm(triple: &'static str, compiler: &'static [&'static str]) -> Target {
    Target {
        triple,
        tools: "arm-none-eabi-",
        linker: &[],
        compiler,
        profile: "firmware",
        tables: NO_TABLES,
    }
}

/// This computer.
pub const HOST: Target = Target {
    triple: "x86_64-unknown-linux-gnu",
    tools: "",
    linker: &[],
    compiler: &[],
    profile: "hosted",
    // A debugger walks out of the library with them.
    tables: &[],
};

/// A bare-metal target by its name.
pub fn bare(triple: &str) -> &'static Target {
    BARE.iter().find(|target| target.triple == triple).expect("a target of the list")
}

/// The shared library's name: a program made with one version of the layout runs with no other.
pub fn soname() -> String {
    format!("libcupwright.so.{CUPWRIGHT_ABI_VERSION}")
}

impl Target {
    /// The package's folder, laid out as an installation prefix.
    pub fn package(&self) -> PathBuf {
        root().join("target/dist").join(self.name())
    }

    fn name(&self) -> String {
        format!("cupwright-{}-{}", env!("CARGO_PKG_VERSION"), self.triple)
    }

    /// One of its binutils, or its compiler.
    pub fn tool(&self, name: &str) -> std::process::Command {
        program(format!("{}{name}", self.tools))
    }

    fn is_host(&self) -> bool {
        self.triple == HOST.triple
    }
}

/// Makes and checks every package.
pub fn dist() -> Outcome {
    packages().map(|_| ())
}

/// Makes and checks every package; the toolchain that it took.
pub fn packages() -> Outcome<Toolchain> {
    tools::debian(&["gcc-arm-none-eabi", "gcc-riscv64-unknown-elf", "binutils", "cmake"])?;
    let triples: Vec<&str> = BARE.iter().map(|target| target.triple).collect();
    let toolchain = Toolchain::install(&triples)?;
    for target in BARE.iter().chain([&HOST]) {
        package(target, toolchain)?;
    }
    Ok(toolchain)
}

/// Makes and checks this computer's package alone, which no toolchain for others is asked for.
pub fn of_host() -> Outcome {
    tools::debian(&["binutils", "cmake"])?;
    package(&HOST, Toolchain::Rustup)
}

fn package(target: &Target, toolchain: Toolchain) -> Outcome {
    let fail = |error: std::io::Error| format!("{}: {error}", target.triple);
    let (folder, version) = (target.package(), env!("CARGO_PKG_VERSION"));
    if folder.exists() {
        std::fs::remove_dir_all(&folder).map_err(fail)?;
    }
    for inner in ["include", "lib/pkgconfig", "lib/cmake/cupwright"] {
        std::fs::create_dir_all(folder.join(inner)).map_err(fail)?;
    }
    let plain = staticlib(target, toolchain, "Cargo.toml", "cupwright-library")?;
    let library = object(target, &plain, "cupwright", &functions()?, &folder.join("lib"))?;
    check_globals(&library, &functions()?)?;

    let from = root().join("bindings/c");
    let copy = |source: PathBuf, to: &str| {
        let text = text_of(&source)?;
        let text = text
            .replace("@VERSION@", version)
            .replace("@TARGET@", target.triple)
            .replace("@OPTIONS@", &target.compiler.join(" "));
        std::fs::write(folder.join(to), text).map_err(fail)
    };
    copy(super::header::path(), "include/cupwright.h")?;
    copy(from.join("package/cupwright.pc.in"), "lib/pkgconfig/cupwright.pc")?;
    copy(from.join("package/cupwrightConfig.cmake"), "lib/cmake/cupwright/cupwrightConfig.cmake")?;
    cmake_version(target, &folder.join("lib/cmake/cupwright/cupwrightConfigVersion.cmake"))?;
    copy(root().join("LICENSE"), "LICENSE")?;
    copy(from.join("package/THIRD-PARTY.txt"), "THIRD-PARTY.txt")?;
    copy(from.join("package/README.txt"), "README.txt")?;
    copy(from.join("COSTS.md"), "COSTS.md")?;
    if target.is_host() {
        shared(target, &folder.join("lib"))?;
    }
    // The same bytes for the same contents, whoever packs and when.
    quietly(
        program("tar")
            .current_dir(root().join("target/dist"))
            .args([
                "--sort=name",
                "--mode=u=rwX,go=rX",
                "--mtime=@0",
                "--owner=0",
                "--group=0",
                "--numeric-owner",
                "-czf",
            ])
            .arg(format!("{}.tar.gz", target.name()))
            .arg(target.name()),
    )
}

/// CMake's own file that says which versions fit, and on which width of pointers.
fn cmake_version(target: &Target, to: &Path) -> Outcome {
    let bytes = if target.is_host() { 8 } else { 4 };
    quietly(
        program("cmake")
            .arg(format!("-DTO={}", to.display()))
            .arg(format!("-DVERSION={}", env!("CARGO_PKG_VERSION")))
            .arg(format!("-DPOINTER={bytes}"))
            .args(["-P", "bindings/c/package/version.cmake"]),
    )
}

/// The interface's functions.
fn functions() -> Outcome<BTreeSet<String>> {
    Ok(interface::read()?.functions.into_iter().map(|function| function.name).collect())
}

/// Rust's own static library of a package for a target.
pub fn staticlib(
    target: &Target,
    toolchain: Toolchain,
    manifest: &str,
    package: &str,
) -> Outcome<PathBuf> {
    let (mut command, folder) = if target.is_host() {
        let mut command = cargo(&["rustc", "--locked", "--target", target.triple]);
        let folder = root().join("target/hosted");
        command.arg("--target-dir").arg(&folder);
        (command, folder)
    } else {
        (toolchain.cargo("rustc", target.triple), toolchain.folder())
    };
    quietly(
        command
            .args(["--quiet", "--manifest-path", manifest, "--package", package])
            .args(["--crate-type", "staticlib"])
            .args(["--profile", target.profile]),
    )?;
    let name = format!("lib{}.a", package.replace('-', "_"));
    Ok(folder.join(target.triple).join(target.profile).join(name))
}

/// Joins a static library to one object with only what bears its prefix global, and puts that in an
/// archive.
pub fn object(
    target: &Target,
    staticlib: &Path,
    prefix: &str,
    functions: &BTreeSet<String>,
    to: &Path,
) -> Outcome<PathBuf> {
    let joined = to.join("joined.o");
    let object = to.join(format!("{prefix}.o"));
    let mut link = target.tool("ld");
    link.args(target.linker).args(["-r", "--gc-sections"]);
    for function in functions {
        link.args(["-u", function]);
    }
    quietly(link.arg(staticlib).arg("-o").arg(&joined))?;
    quietly(
        target
            .tool("objcopy")
            .arg("--wildcard")
            .arg(format!("--keep-global-symbol={prefix}_*"))
            .args(target.tables)
            // Bitcode of another compiler's version, which some linkers' plugins choke on.
            .args(["--remove-section=.llvmbc", "--remove-section=.llvmcmd"])
            .args(["--remove-section=.comment", "--strip-debug"])
            .args([&joined, &object]),
    )?;
    std::fs::remove_file(&joined).map_err(|error| format!("{}: {error}", joined.display()))?;
    let archive = to.join(format!("lib{prefix}.a"));
    quietly(target.tool("ar").arg("rcsD").args([&archive, &object]))?;
    Ok(object)
}

/// Only a library's functions are global, all of them, and nothing is undefined.
pub fn check_globals(path: &Path, interface: &BTreeSet<String>) -> Outcome {
    let fail = |error: &dyn std::fmt::Display| format!("{}: {error}", path.display());
    let bytes = std::fs::read(path).map_err(|error| fail(&error))?;
    check_object(path, &bytes, interface)
}

/// The same of our archive's only member.
pub fn check_archive(path: &Path) -> Outcome {
    let fail = |error: &dyn std::fmt::Display| format!("{}: {error}", path.display());
    let bytes = std::fs::read(path).map_err(|error| fail(&error))?;
    let archive = ArchiveFile::parse(&*bytes).map_err(|error| fail(&error))?;
    let mut members = archive.members();
    let member = members.next().ok_or_else(|| fail(&"empty"))?.map_err(|error| fail(&error))?;
    if members.next().is_some() {
        return Err(fail(&"more than one member"));
    }
    check_object(path, member.data(&*bytes).map_err(|error| fail(&error))?, &functions()?)
}

fn check_object(path: &Path, bytes: &[u8], interface: &BTreeSet<String>) -> Outcome {
    let fail = |error: &dyn std::fmt::Display| format!("{}: {error}", path.display());
    let file = object::File::parse(bytes).map_err(|error| fail(&error))?;
    let mut globals = BTreeSet::new();
    for symbol in file.symbols() {
        let name = symbol.name().map_err(|error| fail(&error))?.to_string();
        if symbol.is_undefined() && !name.is_empty() {
            return Err(fail(&format!("{name} is undefined")));
        }
        if symbol.is_global() {
            globals.insert(name);
        }
    }
    if globals != *interface {
        let odd: Vec<&String> = globals.symmetric_difference(interface).collect();
        return Err(fail(&format!("global, or of the interface, but not both: {odd:?}")));
    }
    println!("{}: {} functions global, nothing undefined", path.display(), globals.len());
    Ok(())
}

/// The shared library, from the same object.
fn shared(target: &Target, lib: &Path) -> Outcome {
    quietly(
        target
            .tool("ld")
            .args(["-shared", "-z", "noexecstack", "-z", "relro", "-z", "now", "--build-id=sha1"])
            .args(["--no-undefined", "-soname", &soname()])
            .arg(lib.join("cupwright.o"))
            .arg("-o")
            .arg(lib.join(soname())),
    )?;
    std::os::unix::fs::symlink(soname(), lib.join("libcupwright.so"))
        .map_err(|error| format!("libcupwright.so: {error}"))
}
