//! What the core may depend on, and the licences that anything here may have.

use std::collections::BTreeSet;

use crate::Outcome;
use crate::commands::{cargo, output};

/// The core and its dependencies; the last five make thiserror's macros and run on the host only.
const CORE: [&str; 8] = [
    "cupwright",
    "libm",
    "thiserror",
    "thiserror-impl",
    "proc-macro2",
    "quote",
    "syn",
    "unicode-ident",
];
/// What the `serde` feature adds.
const SERDE: [&str; 3] = ["serde", "serde_core", "serde_derive"];

/// Licences of free software that ask for no more than their notice, and one that asks for changes to its
/// own files: that of the tool that makes the C header, which is part of nothing that is shipped.
const LICENCES: [&str; 9] = [
    "MIT",
    "MPL-2.0",
    "Apache-2.0",
    "Apache-2.0 WITH LLVM-exception",
    "BSD-2-Clause",
    "BSD-3-Clause",
    "Unicode-3.0",
    "Unlicense",
    "Zlib",
];

/// Compares both lists with what cargo resolves.
pub fn check() -> Outcome {
    same("no features", &CORE.into(), &tree("--no-default-features")?)?;
    same("all features", &CORE.into_iter().chain(SERDE).collect(), &tree("--all-features")?)?;
    licences(&output(&mut cargo(&["metadata", "--format-version=1", "--locked"]))?)
}

fn same(what: &str, allowed: &BTreeSet<&str>, found: &BTreeSet<String>) -> Outcome {
    let found: BTreeSet<&str> = found.iter().map(String::as_str).collect();
    if *allowed == found {
        println!("the core with {what} depends on what is allowed: {}", found.len() - 1);
        return Ok(());
    }
    let list = |a: &BTreeSet<&str>, b: &BTreeSet<&str>| {
        a.difference(b).copied().collect::<Vec<_>>().join(", ")
    };
    Err(format!(
        "dependencies of the core with {what}: not allowed [{}], gone [{}]",
        list(&found, allowed),
        list(allowed, &found)
    ))
}

/// Names of the core and all its dependencies, whatever the target.
fn tree(features: &str) -> Outcome<BTreeSet<String>> {
    let mut command = cargo(&["tree", "--locked", "--package", "cupwright", features]);
    command.args(["--edges", "normal,build", "--target", "all", "--prefix", "none"]);
    command.args(["--format", "{p}"]);
    let names = output(&mut command)?;
    Ok(names.lines().filter_map(|line| line.split(' ').next()).map(str::to_string).collect())
}

/// Every package in `cargo metadata` has a licence that the list allows.
fn licences(metadata: &str) -> Outcome {
    let metadata: serde_json::Value =
        serde_json::from_str(metadata).map_err(|error| format!("cargo metadata: {error}"))?;
    let packages = metadata["packages"].as_array().ok_or("cargo metadata: no packages")?;
    for package in packages {
        let name = package["name"].as_str().unwrap_or("?");
        let licence = package["license"].as_str().unwrap_or("none");
        if !allowed(licence) {
            return Err(format!("{name} has the licence {licence:?}, which is not in the list"));
        }
    }
    println!("{} packages, each with a licence in the list", packages.len());
    Ok(())
}

/// Whether an expression of alternatives and conjunctions can be met from the list.
///
/// Parentheses are dropped and alternatives bind first, which is exact for `(A OR B) AND C`; of any
/// other mixture it may refuse what could be met, but never allows what could not.
fn allowed(expression: &str) -> bool {
    let plain = expression.replace(['(', ')'], "").replace('/', " OR ");
    plain.split(" AND ").all(|all| all.split(" OR ").any(|one| LICENCES.contains(&one.trim())))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn licence_expressions() {
        assert!(allowed("MIT"));
        assert!(allowed("MIT/Apache-2.0"));
        assert!(allowed("LGPL-3.0 OR MIT"));
        assert!(allowed("(MIT OR Apache-2.0) AND Unicode-3.0"));
        assert!(!allowed("GPL-3.0"));
        assert!(!allowed("MIT AND GPL-3.0"));
        assert!(!allowed("(MIT AND GPL-3.0) OR GPL-3.0"));
        assert!(!allowed("GPL-3.0 OR (MIT AND GPL-3.0)"));
        assert!(!allowed("none"));
    }

    #[test]
    fn a_licence_outside_the_list_is_refused() {
        let metadata = r#"{"packages": [{"name": "x", "license": "GPL-3.0"}]}"#;
        assert!(licences(metadata).unwrap_err().contains("x has the licence"));
        let metadata = r#"{"packages": [{"name": "x", "license": null}]}"#;
        assert!(licences(metadata).is_err());
    }

    #[test]
    fn a_new_dependency_is_named() {
        let found = ["cupwright", "new"].map(str::to_string).into();
        let error = same("x", &["cupwright", "libm"].into(), &found).unwrap_err();
        assert!(error.contains("not allowed [new], gone [libm]"), "{error}");
    }
}
