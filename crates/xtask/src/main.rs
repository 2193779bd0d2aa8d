//! `cargo xtask COMMAND`: everything that a contributor or CI runs.

mod commands;
mod dependencies;
mod embedded;
mod main_job;
mod reference;
mod symbols;
mod test;
mod tools;

use std::path::{Path, PathBuf};
use std::process::ExitCode;

/// What went wrong, in words for a terminal.
pub type Outcome<T = ()> = Result<T, String>;

const HELP: &str = "\
cargo xtask COMMAND

  test               install what the tests need and run all of them
  reference          compute the check values of tests/vectors anew
  reference --check  compute them and compare with the committed ones
  expect             accept the main job's present output as the expected one
  targets            install the embedded target and say by which way

CUPWRIGHT_TARGETS=rustup or =debian forces one way of getting the embedded target.
";

fn main() -> ExitCode {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    let arguments: Vec<&str> = arguments.iter().map(String::as_str).collect();
    let outcome = match arguments[..] {
        ["test"] => test::all(),
        ["reference"] => reference::write(),
        ["reference", "--check"] => reference::check(),
        ["expect"] => main_job::accept(),
        ["targets"] => embedded::Toolchain::install().map(|way| println!("{way}")),
        ["help" | "--help" | "-h"] => {
            print!("{HELP}");
            return ExitCode::SUCCESS;
        }
        _ => {
            eprint!("unknown command: {}\n\n{HELP}", arguments.join(" "));
            return ExitCode::from(2);
        }
    };
    match outcome {
        Ok(()) => ExitCode::SUCCESS,
        Err(words) => {
            eprintln!("\nfailed: {words}");
            ExitCode::FAILURE
        }
    }
}

/// The root of the workspace.
pub fn root() -> PathBuf {
    let here = Path::new(env!("CARGO_MANIFEST_DIR"));
    here.ancestors().nth(2).expect("xtask lies two folders deep").to_path_buf()
}
