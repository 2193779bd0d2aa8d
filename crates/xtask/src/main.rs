//! `cargo xtask COMMAND`: everything that a contributor or CI runs.

mod accuracy;
mod api;
mod brews;
mod c;
mod commands;
mod contents;
mod core_files;
mod corpus;
mod coverage;
mod dependencies;
mod difference;
mod embedded;
mod fuzz;
mod js;
mod live;
mod main_job;
mod manifest;
mod msrv;
mod mutants;
mod prove;
mod published;
mod reference;
mod speed;
mod symbols;
mod tables;
mod test;
mod toolchain;
mod tools;

use std::path::{Path, PathBuf};
use std::process::ExitCode;

/// What went wrong, in words for a terminal.
pub type Outcome<T = ()> = Result<T, String>;

const HELP: &str = "\
cargo xtask COMMAND

  test               install what the tests need and run all of them
  check              the quick part of it, for every commit
  prove              run what proves each claim of the README, and say whether it stands
  claims             write the present figures of the claims into the README
  reference          compute the check values of tests/vectors anew
  reference --check  compute them and compare with the committed ones
  accuracy           measure how many digits of each formula are right; fail where fewer than before
  accuracy --check   measure without writing the table
  accuracy --accept  write the table even so
  bits               accept what every formula answers to scattered inputs, where the changelog tells of changes
  bits --check       compare it on every target, with the packages of dist and wasm
  boards             compare what is too dear for that on emulated boards: [MINUTES] [TARGET], an hour if nothing is said
  expect             accept the present output of the main job and of the firmware as the expected one
  manifest           look what each formula must have, and write docs/FORMULAS.md
  manifest --check   look, and compare the page with the committed one
  live               score what follows a scale live on invented traces, and write it down
  corpus             compare the answers to the live corpus on every target, with the packages that are there
  golden             accept the present answers to the live corpus, bit for bit
  contents           compare what the crate and the npm package of wasm hold with tests/packages
  api                accept the crate's public interface, item by item
  api --check        compare it with the accepted one
  builds             compile the library in nine ways and compare the bits of all answers
  msrv               test the core and build the C interface with the oldest Rust that is promised
  coverage           measure which lines, regions and branches of the core the Rust tests run, and write it down
  coverage --check   measure, and compare with what was written down
  dependencies       compare what everything depends on, its licences and its places with the lists
  fuzz               let libFuzzer look for faults: [SECONDS] [TARGET], a minute for each if nothing is said
  mutants            look whether the tests notice every small change of the core: [ROOM…], all if nothing is said
  mutants --check    say what the record of that says and which rooms have changed since; fail below 95 % or where one has no reason
  c                  all that proves the C interface
  header             make the C header anew
  abi                promise what is new in the C interface's layout, for good
  dist               make the packages for C: an object, an archive and a header for every target
  size               measure what each C function costs, and write it down
  speed              measure formulas, fits and live flow beside established peers, and write it down
  speed --check      compare the instructions that ours take with the committed ones
  js                 all that proves the JavaScript package
  face               make the JavaScript face anew
  wasm               build the JavaScript package in target/npm
  page               put the café's pages together in target/npm/site, and say how to see them
  weigh              measure what the JavaScript package costs, and write it down
  embedded           get the embedded target, build the core for it and look into the build

CUPWRIGHT_TARGETS=rustup or =debian forces one way of getting the target.
";

fn main() -> ExitCode {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    let arguments: Vec<&str> = arguments.iter().map(String::as_str).collect();
    let Some(command) = named(&arguments) else {
        if !arguments.is_empty() {
            eprintln!("unknown command: {}\n", arguments.join(" "));
        }
        eprint!("{HELP}");
        return ExitCode::from(2);
    };
    match command() {
        Ok(()) => ExitCode::SUCCESS,
        Err(words) => {
            eprintln!("\nfailed: {words}");
            ExitCode::FAILURE
        }
    }
}

/// The command that the arguments name.
fn named<'a>(arguments: &'a [&'a str]) -> Option<Box<dyn Fn() -> Outcome + 'a>> {
    if let ["fuzz", rest @ ..] = arguments {
        return Some(Box::new(|| fuzz::look(rest)));
    }
    if let ["boards", rest @ ..] = arguments {
        return Some(Box::new(|| c::boards::compare(rest)));
    }
    if let ["mutants", "--check"] = arguments {
        return Some(Box::new(mutants::check));
    }
    if let ["mutants", rest @ ..] = arguments {
        return Some(Box::new(|| mutants::of_rooms(rest)));
    }
    let command: fn() -> Outcome = match arguments {
        ["test"] => test::all,
        ["check"] => test::quick,
        ["prove"] => prove::all,
        ["claims"] => prove::write,
        ["reference"] => reference::write,
        ["reference", "--check"] => reference::check,
        ["bits", "--check"] => test::of_bits,
        ["bits"] => c::scattered::write,
        ["accuracy"] => accuracy::write,
        ["accuracy", "--check"] => accuracy::check,
        ["accuracy", "--accept"] => accuracy::accept,
        ["manifest"] => manifest::write,
        ["manifest", "--check"] => manifest::check,
        ["live"] => live::write,
        ["golden"] => corpus::write,
        ["corpus"] => test::of_corpus,
        ["contents"] => || contents::of_crate().and_then(|()| contents::of_npm()),
        ["api"] => api::write,
        ["api", "--check"] => api::check,
        ["builds"] => c::builds::check,
        ["msrv"] => msrv::check,
        ["coverage"] => coverage::write,
        ["coverage", "--check"] => coverage::check,
        ["dependencies"] => || dependencies::check().and_then(|()| dependencies::check_python()),
        ["c"] => test::of_c,
        ["header"] => c::header::write,
        ["abi"] => c::abi::write,
        ["dist"] => c::archive::dist,
        ["size"] => c::size::write,
        ["speed"] => speed::write,
        ["speed", "--check"] => speed::check,
        ["js"] => test::of_js,
        ["face"] => js::package::write,
        ["wasm"] => js::package::build,
        ["page"] => js::page::build,
        ["weigh"] => js::costs::write,
        ["expect"] => || main_job::accept().and_then(|()| c::firmware::accept()),
        ["embedded"] => embedded::check,
        ["help" | "--help" | "-h"] => || {
            print!("{HELP}");
            Ok(())
        },
        _ => return None,
    };
    Some(Box::new(command))
}

/// The root of the workspace.
pub fn root() -> PathBuf {
    let here = Path::new(env!("CARGO_MANIFEST_DIR"));
    here.ancestors().nth(2).expect("xtask lies two folders deep").to_path_buf()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_command_of_the_help_is_known() {
        let listed = HELP.lines().filter_map(|line| line.strip_prefix("  "));
        let mut count = 0;
        for line in listed {
            let command = line.split("  ").next().unwrap();
            assert!(named(&command.split(' ').collect::<Vec<_>>()).is_some(), "{command}");
            count += 1;
        }
        assert_eq!(count, 42);
    }

    #[test]
    fn other_arguments_are_not() {
        let unknown: [&[&str]; 5] =
            [&[], &["tests"], &["test", "more"], &["reference", "--chek"], &["--check"]];
        for arguments in unknown {
            assert!(named(arguments).is_none(), "{arguments:?}");
        }
    }
}
