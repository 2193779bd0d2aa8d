//! Running other programs: never with our standard input, always from the workspace's root.

use std::ffi::OsStr;
use std::process::{Command, Stdio};

use crate::{Outcome, root};

/// A program in the workspace's root, with nothing to read.
pub fn program(name: impl AsRef<OsStr>) -> Command {
    let mut command = Command::new(name);
    command.current_dir(root()).stdin(Stdio::null());
    command
}

/// The cargo that runs us, with arguments.
pub fn cargo(arguments: &[&str]) -> Command {
    let mut command = program(std::env::var_os("CARGO").unwrap_or_else(|| "cargo".into()));
    command.args(arguments);
    command
}

/// Runs a command with its output shown; anything but success is an error with its words.
pub fn run(command: &mut Command) -> Outcome {
    let words = words(command);
    println!("$ {words}");
    let status = command.status().map_err(|error| format!("{words}: {error}"))?;
    if status.success() { Ok(()) } else { Err(format!("{words}: {status}")) }
}

/// Runs a command and gives back what it printed.
pub fn output(command: &mut Command) -> Outcome<String> {
    let words = words(command);
    let output =
        command.stderr(Stdio::inherit()).output().map_err(|error| format!("{words}: {error}"))?;
    if !output.status.success() {
        return Err(format!("{words}: {}", output.status));
    }
    String::from_utf8(output.stdout).map_err(|_| format!("{words}: printed no UTF-8"))
}

/// Whether a program starts and succeeds, silently.
pub fn works(name: &str, arguments: &[&str]) -> bool {
    program(name)
        .args(arguments)
        .stdout(Stdio::null())
        .stderr(Stdio::null())
        .status()
        .is_ok_and(|status| status.success())
}

fn words(command: &Command) -> String {
    let program = command.get_program().to_string_lossy();
    let name = program.rsplit('/').next().unwrap_or(&program).to_string();
    let arguments = command.get_args().map(|a| a.to_string_lossy().into_owned());
    std::iter::once(name).chain(arguments).collect::<Vec<_>>().join(" ")
}
