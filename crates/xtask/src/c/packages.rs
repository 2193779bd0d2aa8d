//! The packages as their users meet them: unpacked somewhere else, linked by a plain compiler, by
//! pkg-config and by CMake. The program is the one of the README.

use std::path::{Path, PathBuf};
use std::process::Command;

use super::archive::{BARE, HOST, Target, bare, check_archive, soname};
use crate::commands::{output, program, quietly, text_of};
use crate::{Outcome, root, tools};

/// Unpacks every package, looks into it, and uses that of this computer in each way.
pub fn check() -> Outcome {
    tools::debian(&["gcc", "g++", "binutils", "cmake", "make", "pkg-config"])?;
    let folder = fresh("target/c/consumer")?;
    for target in BARE.iter().chain([&HOST]) {
        quietly(program("tar").arg("-xzf").arg(packed(target)).arg("-C").arg(&folder))?;
        check_archive(&unpacked(&folder, target).join("lib/libcupwright.a"))?;
    }
    let prefix = unpacked(&folder, &HOST);
    let (source, printed) = example()?;
    let path = folder.join("consumer.c");
    std::fs::write(&path, source).map_err(|error| format!("{}: {error}", path.display()))?;

    let with = |what: &str, compile: &mut Command, run: &mut Command| -> Outcome {
        quietly(compile)?;
        let got = output(run)?;
        if got != printed {
            return Err(format!("{what}: the README says {printed:?}, its program prints {got:?}"));
        }
        println!("{what}: {}", got.trim_end());
        Ok(())
    };
    with(
        "a compiler and the archive alone",
        compiler(&folder, "plain")
            .args(["consumer.c", "-I"])
            .arg(prefix.join("include"))
            .arg(prefix.join("lib/libcupwright.a")),
        &mut program(folder.join("plain")),
    )?;
    with(
        "the same as C++",
        program("g++")
            .current_dir(&folder)
            .args([
                "-x",
                "c++",
                "-std=c++17",
                "-Wall",
                "-Wextra",
                "-Wpedantic",
                "-Werror",
                "-o",
                "plusplus",
            ])
            .args(["consumer.c", "-x", "none", "-I"])
            .arg(prefix.join("include"))
            .arg(prefix.join("lib/libcupwright.a")),
        &mut program(folder.join("plusplus")),
    )?;
    let flags = package_config(&prefix, &["--cflags", "--libs", "cupwright"])?;
    let libraries = package_config(&prefix, &["--variable=libdir", "cupwright"])?;
    with(
        "pkg-config",
        compiler(&folder, "by-pkg-config")
            .arg("consumer.c")
            .args(flags.split_whitespace())
            .arg(format!("-Wl,-rpath,{}", libraries.trim())),
        &mut program(folder.join("by-pkg-config")),
    )?;
    let needed = output(program("readelf").arg("--dynamic").arg(folder.join("by-pkg-config")))?;
    if !needed.contains(&format!("[{}]", soname())) {
        return Err(format!("pkg-config's program does not ask for {}:\n{needed}", soname()));
    }
    let version = package_config(&prefix, &["--modversion", "cupwright"])?;
    if version.trim() != env!("CARGO_PKG_VERSION") {
        return Err(format!("pkg-config says version {version}"));
    }
    configure(&folder.join("build"), &prefix, &path)?;
    for kind in ["cupwright", "shared"] {
        let made = folder.join(format!("build/consumer_{kind}"));
        with(
            &format!("CMake, cupwright::{kind}"),
            program("cmake").arg("--build").arg(folder.join("build")),
            &mut program(made),
        )?;
    }
    let other = unpacked(&folder, bare("thumbv6m-none-eabi"));
    match configure(&folder.join("other"), &other, &path) {
        Err(_) => println!("CMake: a package for another width of pointers is refused"),
        Ok(()) => return Err("CMake takes a package for another processor".to_string()),
    }
    Ok(())
}

fn configure(build: &Path, prefix: &Path, source: &Path) -> Outcome {
    quietly(
        program("cmake")
            .args(["-S", "tests/c/package", "-B"])
            .arg(build)
            .arg(format!("-DP={}", prefix.display()))
            .arg(format!("-DSOURCE={}", source.display()))
            .arg(format!("-DVERSION={}", env!("CARGO_PKG_VERSION"))),
    )
}

/// The packed release for a target.
fn packed(target: &Target) -> PathBuf {
    let mut name = target.package().into_os_string();
    name.push(".tar.gz");
    name.into()
}

/// Where it lies in the folder that it was unpacked in.
fn unpacked(folder: &Path, target: &Target) -> PathBuf {
    folder.join(target.package().file_name().expect("a package has a name"))
}

fn fresh(folder: &str) -> Outcome<PathBuf> {
    let folder = root().join(folder);
    if folder.exists() {
        std::fs::remove_dir_all(&folder)
            .map_err(|error| format!("{}: {error}", folder.display()))?;
    }
    std::fs::create_dir_all(&folder).map_err(|error| format!("{}: {error}", folder.display()))?;
    Ok(folder)
}

/// A strict compiler in a folder, with its output's name.
fn compiler(folder: &Path, name: &str) -> Command {
    let mut command = program("gcc");
    command.current_dir(folder).args([
        "-std=c99",
        "-Wall",
        "-Wextra",
        "-Wpedantic",
        "-Werror",
        "-o",
        name,
    ]);
    command
}

fn package_config(prefix: &Path, arguments: &[&str]) -> Outcome<String> {
    output(
        program("pkg-config").env("PKG_CONFIG_PATH", prefix.join("lib/pkgconfig")).args(arguments),
    )
}

/// The README's program in C, and what its last comment says that it prints.
fn example() -> Outcome<(String, String)> {
    from_readme(&text_of("README.md")?)
        .ok_or_else(|| "the README has no program in C that says what it prints".to_string())
}

fn from_readme(text: &str) -> Option<(String, String)> {
    let source = text.split_once("```c\n")?.1.split_once("```")?.0;
    let printed = source.lines().rev().find_map(|line| line.trim().strip_prefix("/* prints: "))?;
    Some((source.to_string(), format!("{}\n", printed.strip_suffix(" */")?)))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_program_and_what_it_prints() {
        let text = "words\n```c\nint main(void) {\n    /* prints: 3 g */\n}\n```\nmore";
        let (source, printed) = from_readme(text).unwrap();
        assert!(source.starts_with("int main"));
        assert_eq!(printed, "3 g\n");
        assert!(from_readme("no program").is_none());
    }
}
