//! The main job, end to end: plan a cup, walk its heat, judge what was brewed, mend it, plan the next.
//!
//! ```text
//! cargo run --release --example mountain_stop [-- FILE.toml]
//! ```
//!
//! Without a file it uses the invented scenario beside it.

#![allow(clippy::disallowed_methods, reason = "rounding for display only")]

mod report;
mod scenario;
mod surety;

use std::{path::Path, process::ExitCode};

use scenario::Located;

const EMBEDDED: &str = include_str!("scenario.toml");

fn main() -> ExitCode {
    let mut arguments = std::env::args_os().skip(1);
    let file = arguments.next();
    if arguments.next().is_some() {
        eprintln!("usage: mountain_stop [FILE.toml]");
        return ExitCode::from(2);
    }
    let (path, text) = match &file {
        None => (Path::new("scenario.toml"), EMBEDDED.to_string()),
        Some(name) => match std::fs::read_to_string(name) {
            Ok(text) => (Path::new(name), text),
            Err(error) => {
                eprintln!("{}: {error}", name.display());
                return ExitCode::FAILURE;
            }
        },
    };
    match scenario::read(&text).and_then(|scenario| report::of(&scenario)) {
        Ok(report) => {
            print!("{report}");
            ExitCode::SUCCESS
        }
        Err(fault) => {
            eprintln!("{}", Located { path, text: &text, fault });
            ExitCode::FAILURE
        }
    }
}
