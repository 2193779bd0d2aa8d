//! The drivers of `tests/c`: every function called from C, brews on a scale, and columns, on this computer under
//! several instruments and on emulated microcontrollers, each answer compared with the core's to the last
//! bit.

use std::fs::File;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};
use std::time::Instant;

use super::archive::{HOST, Target, bare};
use super::calls::{self, Call};
use super::cases;
use super::interface::{self, Interface};
use super::scattered::{self, Points};
use crate::commands::{limited, program, quietly, run, text_of};
use crate::corpus::{self, Share};
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
    /// How much of the live corpus it hears.
    corpus: Share,
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
        corpus: Share::All,
    },
    Board {
        name: "Cortex-M4F",
        triple: "thumbv7em-none-eabihf",
        emulator: "qemu-system-arm",
        machine: &["-M", "mps2-an386"],
        memory: ["FLASH_START=0", "RAM_START=0x20000000", "RAM_END=0x20400000"],
        random: 100,
        parts: 1,
        corpus: Share::All,
    },
    Board {
        name: "RISC-V rv32imc",
        triple: "riscv32imc-unknown-none-elf",
        emulator: "qemu-system-riscv32",
        machine: &["-M", "virt", "-bios", "none", "-m", "128M"],
        memory: ["FLASH_START=0x80000000", "RAM_START=0x80400000", "RAM_END=0x80800000"],
        random: 100,
        parts: 1,
        corpus: Share::All,
    },
    Board {
        name: "Cortex-M3",
        triple: "thumbv7m-none-eabi",
        emulator: "qemu-system-arm",
        machine: &["-M", "mps2-an385"],
        memory: ["FLASH_START=0", "RAM_START=0x20000000", "RAM_END=0x20400000"],
        random: 20,
        parts: 1,
        corpus: Share::Tenth,
    },
    Board {
        name: "Cortex-M4F with doubles in integer registers",
        triple: "thumbv7em-none-eabi",
        emulator: "qemu-system-arm",
        machine: &["-M", "mps2-an386"],
        memory: ["FLASH_START=0", "RAM_START=0x20000000", "RAM_END=0x20400000"],
        random: 20,
        parts: 1,
        corpus: Share::Tenth,
    },
    Board {
        name: "Cortex-M33F",
        triple: "thumbv8m.main-none-eabihf",
        emulator: "qemu-system-arm",
        machine: &["-M", "mps2-an505"],
        memory: ["FLASH_START=0x10000000", "RAM_START=0x38000000", "RAM_END=0x38400000"],
        random: 20,
        parts: 1,
        corpus: Share::Tenth,
    },
];

/// Those that answer scattered inputs.
pub const BITS_BOARDS: &[Board] = BOARDS.split_at(3).0;

/// Random cases of each kind for each function on this computer.
const RANDOM: u64 = 3_000;

/// Columns of each kind for each function on a slow processor.
const ROUNDS: &str = "5\n";

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
    write(&folder.join("cases.txt"), &cases::all(calls, random))?;
    Ok(folder)
}

/// Writes brews where a driver looks for its lines.
pub fn set_up_brews() -> Outcome<PathBuf> {
    let folder = folder()?;
    write(&folder.join("cases.txt"), &brews::all())?;
    Ok(folder)
}

fn write(path: &Path, text: &str) -> Outcome {
    std::fs::write(path, text).map_err(|error| format!("{}: {error}", path.display()))
}

/// A driver: its name, and its cases.
struct Driver<'a> {
    name: &'a str,
    cases: PathBuf,
    /// The same, fewer: for slow instruments.
    fewer: PathBuf,
}

/// The drivers on this computer: plain, with the shared library, and under each instrument.
pub fn on_this_computer() -> Outcome {
    tools::debian(&["gcc", "g++", "clang", "libclang-rt-14-dev", "valgrind"])?;
    let interface = interface::read()?;
    let calls = calls::all(&interface);
    let folder = set_up(&interface, &calls, RANDOM)?;
    let written = |name: &str, text: &str| -> Outcome<PathBuf> {
        let path = folder.join(name);
        write(&path, text)?;
        Ok(path)
    };
    let brews = written("brews.txt", &brews::all())?;
    let of_calls = Driver {
        name: "driver",
        cases: folder.join("cases.txt"),
        fewer: written("fewer.txt", &cases::all(&calls, 10))?,
    };
    sees_a_wrong_bit(&of_calls.checked()?, &cases::one_each(&calls), 0)?;
    let of_brews = Driver { name: "brews", cases: brews.clone(), fewer: brews };
    let columns = written("columns.txt", "200\n")?;
    let fewer = written("fewer-columns.txt", ROUNDS)?;
    Driver { name: "columns", cases: columns, fewer }.checked()?;
    let lines = brews::all();
    sees_a_wrong_bit(&of_brews.checked()?, &lines, lines.lines().count() - 2)
}

/// The live corpus, by the driver that plays brews, on this computer.
pub fn corpus_on_this_computer() -> Outcome {
    tools::debian(&["gcc"])?;
    let (path, script) = (folder()?.join("corpus.txt"), corpus::script(Share::All)?);
    write(&path, &script.text)?;
    let archive = HOST.package().join("lib/libcupwright.a");
    let driver = build("brews", "gcc", &["-std=c99", "-O2"], &[&archive.to_string_lossy()], "")?;
    let file = File::open(&path).map_err(|error| format!("{}: {error}", path.display()))?;
    script.heard_by(program(driver).stdin(Stdio::from(file)))
}

impl Driver<'_> {
    /// Runs it in every way; the plain one.
    fn checked(&self) -> Outcome<PathBuf> {
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
        let plain = build(self.name, "gcc", &["-std=c99", "-O2"], &[&archive], "")?;
        fed(&mut program(&plain), &self.cases)?;
        let with_shared = build(self.name, "gcc", &["-std=c11", "-O2"], &shared, "-shared")?;
        fed(&mut program(&with_shared), &self.cases)?;
        for compiler in ["gcc", "clang"] {
            let mut options = sanitizers.to_vec();
            options.push("-std=c17");
            let suffix = format!("-{compiler}-sanitized");
            let sanitized = build(self.name, compiler, &options, &[&archive], &suffix)?;
            fed(&mut program(&sanitized), &self.cases)?;
        }
        let options = ["-std=c99", "-O1", "-g"];
        let valgrind =
            ["--quiet", "--error-exitcode=99", "--leak-check=full", "--track-origins=yes"];
        let checked = build(self.name, "gcc", &options, &[&archive], "-valgrind")?;
        fed(program("valgrind").args(valgrind).arg(checked), &self.fewer)?;
        Ok(plain)
    }
}

/// Compiles and links a driver for this computer.
pub fn build(
    driver: &str,
    compiler: &str,
    options: &[&str],
    library: &[&str],
    suffix: &str,
) -> Outcome<PathBuf> {
    let to = folder()?.join(format!("{driver}{suffix}"));
    quietly(
        program(compiler)
            .args(options)
            .args(["-Wall", "-Wextra", "-Wpedantic", "-Werror", "-Itests/c", "-Itarget/c"])
            .arg(format!("-I{}", HOST.package().join("include").display()))
            .args([&format!("tests/c/{driver}.c"), "tests/c/platform_host.c"])
            .args(library)
            .arg("-o")
            .arg(&to),
    )?;
    Ok(to)
}

/// A driver passes good cases, and fails where the last bit of one line is wrong.
pub fn sees_a_wrong_bit(driver: &Path, good: &str, line: usize) -> Outcome {
    let path = folder()?.join("wrong.txt");
    write(&path, good)?;
    fed(&mut program(driver), &path)?;
    let mut lines: Vec<String> = good.lines().map(str::to_string).collect();
    let digit = lines[line].pop().ok_or("an empty line")?;
    lines[line].push(if digit == '0' { '1' } else { '0' });
    write(&path, &(lines.join("\n") + "\n"))?;
    if fed(&mut program(driver), &path).is_ok() {
        return Err("a driver does not see a wrong bit".to_string());
    }
    println!("a wrong bit is seen");
    Ok(())
}

/// Every function at all scattered inputs, on this computer.
pub fn scattered() -> Outcome {
    tools::debian(&["gcc"])?;
    let interface = interface::read()?;
    let calls = calls::all(&interface);
    let cases = set_up_scattered(&calls, Points::All)?.join("cases.txt");
    let archive = HOST.package().join("lib/libcupwright.a");
    let archive = archive.to_string_lossy();
    let plain = build("scattered", "gcc", &["-std=c99", "-O2"], &[&archive], "")?;
    fed(&mut program(&plain), &cases)?;
    sees_a_wrong_answer(calls, &archive)
}

/// The driver passes a library that answers one bit wrong behind all points of boards where it compares those,
/// and fails where it compares all.
fn sees_a_wrong_answer(mut calls: Vec<Call>, archive: &str) -> Outcome {
    const NAME: &str = "cupwright_water_temperature_of_enthalpy";
    calls.retain(|call| call.function.name == NAME);
    let cases = set_up_scattered(&calls, Points::OnBoards)?.join("cases.txt");
    let on_boards = text_of(&cases)?;
    let points = on_boards.split(' ').nth(1).ok_or("no case")?;
    let options = ["-std=c99", "-O2", &format!("-DAFTER={points}"), &format!("-Wl,--wrap={NAME}")];
    let library = ["tests/c/wrong_bit.c", archive];
    let faulty = build("scattered", "gcc", &options, &library, "-wrong")?;
    fed(&mut program(&faulty), &cases)?;
    write(&cases, &scattered::cases(&calls, Points::All)?)?;
    if fed(&mut program(&faulty), &cases).is_ok() {
        return Err(format!("the driver does not see a wrong bit after {points} inputs"));
    }
    println!("a wrong bit after {points} inputs is seen");
    Ok(())
}

/// The same on a Cortex-M0, a Cortex-M4F and a RISC-V.
pub fn scattered_on_boards() -> Outcome {
    emulators()?;
    let interface = interface::read()?;
    for board in BITS_BOARDS {
        println!("{}", board.name);
        // Beside the calls, plans of the draws: more images for a small flash.
        for calls in calls::dealt(&interface, 2 * board.parts) {
            board.run("scattered", &set_up_scattered(&calls, Points::OnBoards)?, 600)?;
        }
    }
    Ok(())
}

/// Writes what the driver of scattered inputs is compiled with, and its cases.
pub fn set_up_scattered(calls: &[Call], points: Points) -> Outcome<PathBuf> {
    let (folder, interface) = (folder()?, interface::read()?);
    write(&folder.join("calls.h"), &calls::source(&interface, calls))?;
    write(&folder.join("scattered.h"), &scattered::source(calls))?;
    write(&folder.join("cases.txt"), &scattered::cases(calls, points)?)?;
    Ok(folder)
}

/// Runs a command with a file to read.
pub fn fed(command: &mut Command, file: &Path) -> Outcome {
    let file = File::open(file).map_err(|error| format!("{}: {error}", file.display()))?;
    run(command.stdin(Stdio::from(file)))
}

/// What builds for boards and emulates them.
pub fn emulators() -> Outcome {
    tools::debian(&[
        "gcc-arm-none-eabi",
        "gcc-riscv64-unknown-elf",
        "qemu-system-arm",
        "qemu-system-misc",
    ])
}

/// The live corpus on every emulated board, or the share of it that a board has time for.
pub fn corpus_on_boards() -> Outcome {
    emulators()?;
    BOARDS.iter().try_for_each(Board::hears_the_corpus)
}

/// The drivers on every emulated board.
pub fn on_boards() -> Outcome {
    emulators()?;
    let interface = interface::read()?;
    for board in &BOARDS {
        println!("{}", board.name);
        for calls in calls::dealt(&interface, board.parts) {
            let folder = set_up(&interface, &calls, board.random)?;
            board.run("driver", &folder, 600)?;
        }
        board.run("brews", &set_up_brews()?, 120)?;
        write(&folder()?.join("cases.txt"), ROUNDS)?;
        board.run("columns", &folder()?, 120)?;
    }
    Ok(())
}

impl Board {
    /// Builds a driver for the board and runs it in a folder, for so many seconds at most.
    pub fn run(&self, driver: &str, folder: &Path, seconds: u32) -> Outcome {
        let image = self.driver(driver)?;
        run(&mut limited(seconds, self.emulate(&image).current_dir(folder)))
    }

    /// Builds a driver for the board.
    fn driver(&self, name: &str) -> Outcome<PathBuf> {
        let source = format!("tests/c/{name}.c");
        let sources = [source.as_str(), "tests/c/platform_bare.c", "tests/c/board.c"];
        self.build(&[], &sources, name)
    }

    /// Traces of the live corpus, by the driver that plays brews.
    fn hears_the_corpus(&self) -> Outcome {
        let start = Instant::now();
        let (folder, script) = (folder()?.join("corpus"), corpus::script(self.corpus)?);
        std::fs::create_dir_all(&folder).map_err(|e| format!("{}: {e}", folder.display()))?;
        write(&folder.join("cases.txt"), &script.text)?;
        let image = self.driver("brews")?;
        script.heard_by(&mut limited(900, self.emulate(&image).current_dir(folder)))?;
        println!("{} in {:.0} s", self.name, start.elapsed().as_secs_f64());
        Ok(())
    }

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

/// The interface called from Rust, and its own copying, under Miri, which sees every wrong use of memory.
pub fn under_miri() -> Outcome {
    let mut miri = tools::under_toolchain("nightly", "cargo", &["miri"], &["miri", "rust-src"])?;
    run(miri
        .args(["miri", "test", "--locked", "--quiet", "--package", "cupwright-c"])
        .args(["--package", "cupwright-library"])
        .args(["--target-dir", "target/miri"]))
}
