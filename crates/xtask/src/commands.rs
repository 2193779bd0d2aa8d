//! Running other programs, never with our standard input, and reading files: always from the workspace's root.

use std::ffi::OsStr;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

use crate::{Outcome, root};

/// Programs that were installed for us alone, found before the computer's.
pub fn own_programs() -> PathBuf {
    root().join("target/programs")
}

/// A program in the workspace's root, with nothing to read.
pub fn program(name: impl AsRef<OsStr>) -> Command {
    let mut command = Command::new(name);
    command.current_dir(root()).stdin(Stdio::null());
    if own_programs().exists() {
        let mut path = own_programs().into_os_string();
        path.push(":");
        path.push(std::env::var_os("PATH").unwrap_or_default());
        command.env("PATH", path);
    }
    command
}

/// The cargo that runs us, with arguments.
pub fn cargo(arguments: &[&str]) -> Command {
    let mut command = program(std::env::var_os("CARGO").unwrap_or_else(|| "cargo".into()));
    command.args(arguments);
    command
}

/// What a file holds; an error names it.
pub fn text_of(path: impl AsRef<Path>) -> Outcome<String> {
    let path = path.as_ref();
    std::fs::read_to_string(root().join(path)).map_err(|e| format!("{}: {e}", path.display()))
}

/// Runs a command with its output shown; anything but success is an error with its words.
pub fn run(command: &mut Command) -> Outcome {
    let words = words(command);
    println!("$ {words}");
    let status = command.status().map_err(|error| format!("{words}: {error}"))?;
    if status.success() { Ok(()) } else { Err(format!("{words}: {status}")) }
}

/// A command that is stopped, with all that it started, when its time in seconds is over.
pub fn limited(seconds: u32, command: &Command) -> Command {
    let mut limited = program("timeout");
    limited.arg(seconds.to_string()).arg(command.get_program()).args(command.get_args());
    if let Some(folder) = command.get_current_dir() {
        limited.current_dir(folder);
    }
    for (name, value) in command.get_envs() {
        match value {
            Some(value) => limited.env(name, value),
            None => limited.env_remove(name),
        };
    }
    limited
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

/// Runs a command whose words are long and whose output is of interest only when it fails.
pub fn quietly(command: &mut Command) -> Outcome {
    output(command).map(|_| ())
}

/// Whether a program starts and succeeds, silently.
pub fn works(name: impl AsRef<OsStr>, arguments: &[&str]) -> bool {
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

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_program_has_nothing_to_read() {
        assert_eq!(output(&mut program("cat")), Ok(String::new()));
    }

    #[test]
    fn a_file_is_read_from_the_root_or_named() {
        assert!(text_of("Cargo.toml").unwrap().starts_with("[workspace]"));
        assert_eq!(text_of(root().join("Cargo.toml")), text_of("Cargo.toml"));
        assert!(text_of("no/such.file").unwrap_err().starts_with("no/such.file: "));
    }

    #[test]
    fn failures_carry_the_command() {
        assert!(run(&mut program("false")).unwrap_err().starts_with("false: exit status"));
        assert!(
            output(&mut program("no-such-program")).unwrap_err().starts_with("no-such-program")
        );
        assert!(!works("no-such-program", &[]));
    }

    #[test]
    fn what_hangs_is_stopped_with_what_it_started() {
        let start = std::time::Instant::now();
        // The output would stay open as long as the inner process lives.
        let mut hangs = program("sh");
        hangs.args(["-c", "sleep 60 & wait"]);
        let error = output(&mut limited(1, &hangs)).unwrap_err();
        assert!(error.ends_with("exit status: 124"), "{error}");
        assert!(start.elapsed().as_secs() < 30);
    }

    #[test]
    fn a_limited_command_keeps_its_folder_and_surroundings() {
        let mut shows = program("sh");
        shows.args(["-c", "pwd; echo $SEEN"]).current_dir("/").env("SEEN", "yes");
        assert_eq!(output(&mut limited(10, &shows)), Ok("/\nyes\n".to_string()));
    }
}
