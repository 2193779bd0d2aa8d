//! Running other programs: never with our standard input, always from the workspace's root.

use std::ffi::OsStr;
use std::process::{Command, Stdio};
use std::time::{Duration, Instant};

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

/// The same for a command that may hang rather than fail: it is stopped when its time is over.
pub fn run_within(limit: Duration, command: &mut Command) -> Outcome {
    let words = words(command);
    println!("$ {words}");
    let fail = |error: std::io::Error| format!("{words}: {error}");
    let mut child = command.spawn().map_err(fail)?;
    let start = Instant::now();
    loop {
        match child.try_wait().map_err(fail)? {
            Some(status) if status.success() => return Ok(()),
            Some(status) => return Err(format!("{words}: {status}")),
            None if start.elapsed() > limit => {
                child.kill().and_then(|()| child.wait()).map_err(fail)?;
                return Err(format!("{words}: not done after {} s", limit.as_secs()));
            }
            None => std::thread::sleep(Duration::from_millis(50)),
        }
    }
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
    fn failures_carry_the_command() {
        assert!(run(&mut program("false")).unwrap_err().starts_with("false: exit status"));
        assert!(
            output(&mut program("no-such-program")).unwrap_err().starts_with("no-such-program")
        );
        assert!(!works("no-such-program", &[]));
    }

    #[test]
    fn what_hangs_is_stopped() {
        let start = Instant::now();
        let limit = Duration::from_millis(100);
        let error = run_within(limit, program("sleep").arg("60")).unwrap_err();
        assert_eq!(error, "sleep 60: not done after 0 s");
        assert!(start.elapsed() < Duration::from_secs(30));
        assert_eq!(run_within(Duration::from_secs(30), &mut program("true")), Ok(()));
        assert!(run_within(Duration::from_secs(30), &mut program("false")).is_err());
    }
}
