//! The driver of `tests/c`: every function called from C, on this computer under several instruments
//! and on emulated microcontrollers, each answer compared with the core's to the last bit.

use std::fs::File;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

use super::archive::{HOST, Target, bare};
use super::calls::{self, Call};
use super::cases;
use super::interface::{self, Interface};
use crate::commands::{limited, program, quietly, run, works};
use crate::{Outcome, brews, root, tools};

/// An emulated board.
pub struct Board {
    pub name: &'static str,
    pub triple: &'static str,
    emulator: &'static str,
    machine: &'static [&'static str],
    /// Start and end of its memories.
    pub memory: [&'static str; 3],
    /// Random cases of each kind for each function: slow processors get fewer.
    random: u64,
    /// How many images the functions are dealt out over.
    pub parts: usize,
}

/// One for every bare-metal package: first a Cortex-M0 with 16 KiB of memory and a Cortex-M4F.
pub const BOARDS: [Board; 6] = [
    Board {
        name: "Cortex-M0",
        triple: "thumbv6m-none-eabi",
        emulator: "qemu-system-arm",
        machine: &["-M", "microbit"],
        memory: ["FLASH_START=0", "RAM_START=0x20000000", "RAM_END=0x20004000"],
        random: 20,
        // Its flash has 256 KiB.
        parts: 2,
    },
    Board {
        name: "Cortex-M4F",
        triple: "thumbv7em-none-eabihf",
        emulator: "qemu-system-arm",
        machine: &["-M", "mps2-an386"],
        memory: ["FLASH_START=0", "RAM_START=0x20000000", "RAM_END=0x20400000"],
        random: 100,
        parts: 1,
    },
    Board {
        name: "RISC-V rv32imc",
        triple: "riscv32imc-unknown-none-elf",
        emulator: "qemu-system-riscv32",
        machine: &["-M", "virt", "-bios", "none", "-m", "128M"],
        memory: ["FLASH_START=0x80000000", "RAM_START=0x80400000", "RAM_END=0x80800000"],
        random: 100,
        parts: 1,
    },
    Board {
        name: "Cortex-M3",
        triple: "thumbv7m-none-eabi",
        emulator: "qemu-system-arm",
        machine: &["-M", "mps2-an385"],
        memory: ["FLASH_START=0", "RAM_START=0x20000000", "RAM_END=0x20400000"],
        random: 20,
        parts: 1,
    },
    Board {
        name: "Cortex-M4F with doubles in integer registers",
        triple: "thumbv7em-none-eabi",
        emulator: "qemu-system-arm",
        machine: &["-M", "mps2-an386"],
        memory: ["FLASH_START=0", "RAM_START=0x20000000", "RAM_END=0x20400000"],
        random: 20,
        parts: 1,
    },
    Board {
        name: "Cortex-M33F",
        triple: "thumbv8m.main-none-eabihf",
        emulator: "qemu-system-arm",
        machine: &["-M", "mps2-an505"],
        memory: ["FLASH_START=0x10000000", "RAM_START=0x38000000", "RAM_END=0x38400000"],
        random: 20,
        parts: 1,
    },
];

/// Random cases of each kind for each function on this computer.
const RANDOM: u64 = 3_000;

/// Where what is made for tests in C lies.
pub fn folder() -> Outcome<PathBuf> {
    let folder = root().join("target/c");
    std::fs::create_dir_all(&folder).map_err(|error| format!("{}: {error}", folder.display()))?;
    Ok(folder)
}

/// The same, with the source that calls some functions and with cases for them.
pub fn set_up(interface: &Interface, calls: &[Call], random: u64) -> Outcome<PathBuf> {
    let folder = folder()?;
    write(&folder.join("calls.h"), &calls::source(interface, calls))?;
    write(&folder.join("cases.txt"), &with_brews(&cases::all(calls, random)))?;
    Ok(folder)
}

/// Cases, and brews behind them.
fn with_brews(cases: &str) -> String {
    format!("{cases}{}", brews::all())
}

fn write(path: &Path, text: &str) -> Outcome {
    std::fs::write(path, text).map_err(|error| format!("{}: {error}", path.display()))
}

/// The driver on this computer: plain, with the shared library, as C++, and under each instrument.
pub fn on_this_computer() -> Outcome {
    tools::debian(&["gcc", "g++", "clang", "libclang-rt-14-dev", "valgrind"])?;
    let interface = interface::read()?;
    let calls = calls::all(&interface);
    let folder = set_up(&interface, &calls, RANDOM)?;
    let cases = folder.join("cases.txt");
    let library = HOST.package().join("lib");
    let archive = library.join("libcupwright.a");
    let archive = archive.to_string_lossy();
    let shared = [
        format!("-L{}", library.display()),
        "-lcupwright".into(),
        format!("-Wl,-rpath,{}", library.display()),
    ];
    let shared: Vec<&str> = shared.iter().map(String::as_str).collect();
    let sanitizers = ["-g", "-O1", "-fsanitize=address,undefined", "-fno-sanitize-recover=all"];

    let plain = build("gcc", &["-std=c99", "-O2"], &[&archive], &folder.join("driver"))?;
    fed(&mut program(&plain), &cases)?;
    sees_a_wrong_bit(&plain, &folder, &calls)?;
    let with_shared = build("gcc", &["-std=c11", "-O2"], &shared, &folder.join("driver-shared"))?;
    fed(&mut program(&with_shared), &cases)?;
    for compiler in ["gcc", "clang"] {
        let path = folder.join(format!("driver-{compiler}-sanitized"));
        let mut options = sanitizers.to_vec();
        options.push("-std=c17");
        let sanitized = build(compiler, &options, &[&archive], &path)?;
        fed(&mut program(&sanitized), &cases)?;
    }
    // valgrind is slow: fewer random cases.
    write(&cases, &with_brews(&cases::all(&calls, 10)))?;
    let checked =
        build("gcc", &["-std=c99", "-O1", "-g"], &[&archive], &folder.join("driver-valgrind"))?;
    fed(
        program("valgrind")
            .args(["--quiet", "--error-exitcode=99", "--leak-check=full", "--track-origins=yes"])
            .arg(checked),
        &cases,
    )
}

/// The driver fails on an answer whose last bit is wrong.
fn sees_a_wrong_bit(driver: &Path, folder: &Path, calls: &[Call]) -> Outcome {
    let good = with_brews(&cases::one_each(calls));
    let path = folder.join("wrong.txt");
    write(&path, &good)?;
    fed(&mut program(driver), &path)?;
    let first_case = good.find('\n').ok_or("no cases")?;
    let last_brew = good.trim_end().rfind('\n').ok_or("no brews")?;
    for end_of_line in [first_case, last_brew] {
        let (kept, rest) = good.split_at(end_of_line);
        let (kept, digit) = kept.split_at(kept.len() - 1);
        let other = if digit == "0" { "1" } else { "0" };
        write(&path, &format!("{kept}{other}{rest}"))?;
        if fed(&mut program(driver), &path).is_ok() {
            return Err("the driver does not see a wrong bit".to_string());
        }
    }
    println!("a wrong bit is seen");
    Ok(())
}

/// Compiles and links the driver for this computer.
fn build(compiler: &str, options: &[&str], library: &[&str], to: &Path) -> Outcome<PathBuf> {
    quietly(
        program(compiler)
            .args(options)
            .args(["-Wall", "-Wextra", "-Wpedantic", "-Werror", "-Itests/c", "-Itarget/c"])
            .arg(format!("-I{}", HOST.package().join("include").display()))
            .args(["tests/c/driver.c", "tests/c/platform_host.c"])
            .args(library)
            .arg("-o")
            .arg(to),
    )?;
    Ok(to.to_path_buf())
}

/// Runs a command with a file to read.
fn fed(command: &mut Command, file: &Path) -> Outcome {
    let file = File::open(file).map_err(|error| format!("{}: {error}", file.display()))?;
    run(command.stdin(Stdio::from(file)))
}

/// The driver on every emulated board.
pub fn on_boards() -> Outcome {
    tools::debian(&[
        "gcc-arm-none-eabi",
        "gcc-riscv64-unknown-elf",
        "qemu-system-arm",
        "qemu-system-misc",
    ])?;
    let interface = interface::read()?;
    for board in &BOARDS {
        println!("{}", board.name);
        for calls in calls::dealt(&interface, board.parts) {
            let folder = set_up(&interface, &calls, board.random)?;
            let image = board.build(
                &[],
                &["tests/c/driver.c", "tests/c/platform_bare.c", "tests/c/board.c"],
                "driver",
            )?;
            run(&mut limited(600, board.emulate(&image).current_dir(&folder)))?;
        }
    }
    Ok(())
}

impl Board {
    pub fn target(&self) -> &'static Target {
        bare(self.triple)
    }

    /// Compiles and links an image for the board.
    pub fn build(&self, options: &[&str], sources: &[&str], name: &str) -> Outcome<PathBuf> {
        let target = self.target();
        let image = root().join(format!("target/c/{name}-{}.elf", self.triple));
        let include = target.package().join("include");
        let mut command = target.tool("gcc");
        command
            .args(target.compiler)
            .args(["-std=c11", "-Os", "-ffreestanding", "-nostdlib", "-ffunction-sections"])
            .args(["-Wall", "-Wextra", "-Wpedantic", "-Werror", "-Itests/c", "-Itarget/c"])
            .arg(format!("-I{}", include.display()))
            .args([
                "-Wl,--gc-sections",
                "-Wl,--no-warn-rwx-segments",
                "-Wl,-z,noexecstack",
                "-T",
                "tests/c/board.ld",
            ]);
        for memory in self.memory {
            command.arg(format!("-Wl,--defsym={memory}"));
        }
        quietly(
            command
                .args(options)
                .args(sources)
                .arg(target.package().join("lib/libcupwright.a"))
                .arg("-lgcc")
                .arg("-o")
                .arg(&image),
        )?;
        Ok(image)
    }

    /// The command that runs an image; its exit code is the image's.
    pub fn emulate(&self, image: &Path) -> Command {
        let mut command = program(self.emulator);
        command
            .args(self.machine)
            .args(["-display", "none", "-monitor", "none", "-serial", "none"])
            .args(["-chardev", "stdio,id=text,signal=off"])
            .args(["-semihosting-config", "enable=on,target=native,chardev=text"])
            .arg("-kernel")
            .arg(image);
        command
    }
}

/// The interface called from Rust under Miri, which sees every wrong use of memory.
pub fn under_miri() -> Outcome {
    if !works("cargo", &["+nightly", "miri", "--version"]) {
        let mut install = program("rustup");
        install.args(["toolchain", "install", "nightly", "--profile", "minimal"]);
        install.args(["--component", "miri", "--component", "rust-src"]);
        run(&mut limited(600, &install))?;
    }
    let mut miri = program("cargo");
    // What the toolchain that runs us has set for itself.
    for name in ["RUSTUP_TOOLCHAIN", "CARGO", "RUSTC", "RUSTDOC", "LD_LIBRARY_PATH"] {
        miri.env_remove(name);
    }
    run(miri
        .args(["+nightly", "miri", "test", "--locked", "--quiet", "--package", "cupwright-c"])
        .args(["--target-dir", "target/miri"]))
}
