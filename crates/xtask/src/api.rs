//! The crate's public interface, item by item, as rustdoc tells it: compared with the list that was accepted, so
//! that no change of it goes unseen.

use std::path::PathBuf;

use crate::commands::{run, text_of};
use crate::{Outcome, difference, root, tools};

/// The nightly Rust whose rustdoc the reader of its JSON understands; coverage is measured with it too.
pub const NIGHTLY: &str = public_api::MINIMUM_NIGHTLY_RUST_VERSION;

fn listed() -> PathBuf {
    root().join("tests/packages/api.txt")
}

/// Accepts the present interface.
pub fn write() -> Outcome {
    std::fs::write(listed(), found()?).map_err(|error| format!("{}: {error}", listed().display()))
}

/// Compares the present interface with the accepted one.
pub fn check() -> Outcome {
    let path = listed();
    let known = text_of(&path)?;
    let count =
        compared(&known, &found()?).map_err(|words| format!("{}: {words}", path.display()))?;
    println!("{count} items of the public interface, as accepted");
    Ok(())
}

/// How many items there are, all of them known.
fn compared(known: &str, found: &str) -> Outcome<usize> {
    match difference::between(known, found) {
        None => Ok(found.lines().count()),
        Some(difference) => Err(format!(
            "the public interface has changed; what goes or changes breaks users\n{difference}\nIf that is \
             meant: a line in CHANGELOG.md, and cargo xtask api"
        )),
    }
}

/// Every public item with all features, a line each.
fn found() -> Outcome<String> {
    let mut rustdoc = tools::under_toolchain(NIGHTLY, "cargo", &[], &[])?;
    rustdoc.args(["rustdoc", "--quiet", "--locked", "--package", "cupwright", "--all-features"]);
    rustdoc.args(["--target-dir", "target/api", "--", "-Z", "unstable-options"]);
    run(rustdoc.args(["--output-format", "json", "--cap-lints", "allow"]))?;
    let interface =
        public_api::Builder::from_rustdoc_json(root().join("target/api/doc/cupwright.json"))
            // Send, Sync and the like, which all plain data has, and what every type has by blanket.
            .omit_auto_trait_impls(true)
            .omit_blanket_impls(true)
            .sorted(true)
            .build()
            .map_err(|error| format!("rustdoc's JSON: {error}"))?;
    Ok(interface.items().map(|item| format!("{item}\n")).collect())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_item_that_goes_or_comes_is_shown() {
        let known = "pub fn a()\npub fn b()\n";
        assert_eq!(compared(known, known), Ok(2));
        assert!(compared(known, "pub fn a()\n").unwrap_err().contains("-pub fn b()"));
        let new = "pub fn a()\npub fn b()\npub fn c()\n";
        assert!(compared(known, new).unwrap_err().contains("+pub fn c()"));
    }
}
