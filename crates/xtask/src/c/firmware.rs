//! The scale's firmware of `examples/scale-firmware`, built and run on emulated microcontrollers.

use std::path::PathBuf;
use std::process::Command;

use super::archive::{HOST, Target, bare};
use crate::commands::{limited, output, program, quietly, text_of};
use crate::{Outcome, difference, root, tools};

const EXAMPLE: &str = "examples/scale-firmware";

/// Longest run of an image, in seconds. The slowest takes half a second of a processor's time.
const LIMIT: u32 = 120;

/// One way of building the firmware.
struct Build {
    name: &'static str,
    /// The Makefile's name of the target.
    target: &'static str,
    triple: &'static str,
    /// What else the Makefile is told.
    arguments: &'static [&'static str],
}

const BUILDS: [Build; 5] = [
    Build { name: "host", target: "host", triple: HOST.triple, arguments: &[] },
    Build { name: "host-clang", target: "host", triple: HOST.triple, arguments: &["CC=clang"] },
    Build { name: "m0", target: "m0", triple: "thumbv6m-none-eabi", arguments: &[] },
    Build { name: "m4f", target: "m4f", triple: "thumbv7em-none-eabihf", arguments: &[] },
    Build { name: "rv32", target: "rv32", triple: "riscv32imc-unknown-none-elf", arguments: &[] },
];

/// Builds and runs the firmware everywhere; every run must print what is committed, to the byte.
pub fn check() -> Outcome {
    tools::debian(&[
        "make",
        "gcc",
        "clang",
        "gcc-arm-none-eabi",
        "gcc-riscv64-unknown-elf",
        "qemu-system-arm",
        "qemu-system-misc",
    ])?;
    let path = expected();
    let wanted = text_of(&path)?;
    for build in &BUILDS {
        if let Some(difference) = difference::between(&wanted, &build.printed()?) {
            return Err(format!(
                "the firmware for {} prints something else than {}\n{difference}\nIf the change \
                 is meant: cargo xtask expect",
                build.name,
                path.display()
            ));
        }
        let [code, data, zeros] = build.sizes()?;
        println!(
            "{}: {} lines, as expected; {code} bytes of code and constants, {} of memory",
            build.name,
            wanted.lines().count(),
            data + zeros
        );
    }
    Ok(())
}

/// Writes what the firmware prints on this computer as the expected output.
pub fn accept() -> Outcome {
    tools::debian(&["make", "gcc"])?;
    super::archive::dist()?;
    let path = expected();
    std::fs::write(&path, BUILDS[0].printed()?).map_err(|e| format!("{}: {e}", path.display()))
}

fn expected() -> PathBuf {
    root().join(EXAMPLE).join("expected.txt")
}

impl Build {
    fn processor(&self) -> &'static Target {
        if self.triple == HOST.triple { &HOST } else { bare(self.triple) }
    }

    fn folder(&self) -> PathBuf {
        root().join("target/firmware").join(self.name)
    }

    /// What it prints, built first.
    fn printed(&self) -> Outcome<String> {
        quietly(&mut self.make("image"))?;
        output(&mut limited(LIMIT, &self.make("run")))
    }

    /// A goal of the Makefile.
    fn make(&self, goal: &str) -> Command {
        let mut command = program("make");
        command
            .args(["--silent", "--no-print-directory", "-C", EXAMPLE])
            .arg(format!("TARGET={}", self.target))
            .arg(format!("CUPWRIGHT={}", self.processor().package().display()))
            .arg(format!("OUT={}", self.folder().display()))
            .args(self.arguments)
            .arg(goal);
        command
    }

    /// Bytes of code and constants, of variables with a value, and of zeros.
    fn sizes(&self) -> Outcome<[u64; 3]> {
        let image = self.folder().join("scale.elf");
        let text = output(self.processor().tool("size").arg(&image))?;
        sizes(&text).ok_or_else(|| format!("{}: unknown sizes\n{text}", image.display()))
    }
}

/// The first three numbers of the second line that `size` prints.
fn sizes(text: &str) -> Option<[u64; 3]> {
    let mut numbers = text.lines().nth(1)?.split_whitespace();
    let mut next = || numbers.next()?.parse().ok();
    Some([next()?, next()?, next()?])
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn sizes_are_read() {
        let text = "   text\t   data\t    bss\t    dec\t    hex\tfilename\n  29064\t      8\t     16\t  29088\t   71a0\tscale.elf\n";
        assert_eq!(sizes(text), Some([29064, 8, 16]));
        assert_eq!(sizes("nothing"), None);
    }

    #[test]
    fn every_build_has_a_folder_of_its_own() {
        let folders: std::collections::BTreeSet<_> = BUILDS.iter().map(Build::folder).collect();
        assert_eq!(folders.len(), BUILDS.len());
    }

    #[test]
    fn numbers_are_rounded_as_rust_rounds_them() {
        let text = text_of(expected()).unwrap();
        let mut count = 0;
        for line in text.lines() {
            let Some((shown, bits)) = line.rsplit_once(" 0x") else { continue };
            let Some(shown) = shown.split_whitespace().rfind(|word| word.parse::<f64>().is_ok())
            else {
                continue;
            };
            let value = f64::from_bits(u64::from_str_radix(bits, 16).unwrap());
            let places = shown.split_once('.').map_or(0, |(_, places)| places.len());
            assert_eq!(shown, format!("{value:.places$}"), "{line}");
            count += 1;
        }
        assert!(count > 50, "{count}");
    }
}
