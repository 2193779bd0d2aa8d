//! What the core may depend on, and the licences that anything here may have.

use std::collections::BTreeSet;

use serde_json::Value;

use crate::commands::{cargo, output, program, text_of};
use crate::{Outcome, reference};

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

/// What the tools that build and test may have besides: they are part of nothing that is shipped. The last is that of
/// a table of browsers' versions, the one before that of LLVM's fuzzer.
const TOOLS: [&str; 6] = ["ISC", "0BSD", "BlueOak-1.0.0", "PSF-2.0", "NCSA", "CC-BY-4.0"];

/// Packages of the Python environment that computes check values, what each says of its licence, and what that is.
/// GPL's is run beside the library, for comparison; nothing of it is in what we give away.
const PYTHON: [(&str, &str); 7] = [
    ("CoolProp", "MIT License"),
    ("GTC", "MIT License"),
    ("iapws", "GNU General Public License v3 (GPLv3)"),
    ("mpmath", "BSD-3-Clause"),
    ("numpy", "BSD-3-Clause AND 0BSD AND MIT AND Zlib AND CC0-1.0"),
    ("scipy", "BSD License"),
    ("uncertainties", "BSD License"),
];

/// How cargo writes down that a package comes from where it looks by itself.
const REGISTRY: &str = "registry+https://github.com/rust-lang/crates.io-index";

/// Compares both lists with what cargo resolves; then the licences of all that is locked, and where it comes from.
pub fn check() -> Outcome {
    same("no features", &CORE.into(), &tree("--no-default-features")?)?;
    same("all features", &CORE.into_iter().chain(SERDE).collect(), &tree("--all-features")?)?;
    let metadata = ["metadata", "--format-version=1", "--locked", "--manifest-path"];
    let of = |manifest| output(cargo(&metadata).arg(manifest));
    licences("Cargo.toml", &of("Cargo.toml")?, &[])?;
    licences("fuzz/Cargo.toml", &of("fuzz/Cargo.toml")?, &TOOLS)?;
    for path in ["Cargo.lock", "fuzz/Cargo.lock"] {
        sources(&text_of(path)?).map_err(|words| format!("{path}: {words}"))?;
    }
    let path = "bindings/wasm/tools/package-lock.json";
    node_lock(&text_of(path)?).map_err(|words| format!("{path}: {words}"))?;
    let path = "tests/reference/requirements.txt";
    requirements(&text_of(path)?).map_err(|words| format!("{path}: {words}"))
}

/// Prints a line for each installed package but those that come with Python: its name and its licence, an
/// expression or else how it is classified.
const INSTALLED: &str = "
from importlib.metadata import distributions
for one in distributions():
    classified = [c for c in one.metadata.get_all('Classifier', []) if c.startswith('License :: ')]
    licence = one.metadata['License-Expression'] or ', '.join(c.split(' :: ')[-1] for c in classified)
    if one.metadata['Name'] not in ('pip', 'setuptools'):
        print(one.metadata['Name'], licence)
";

/// Compares the Python packages that are installed with the list, names and licences.
pub fn check_python() -> Outcome {
    python_licences(&output(program(reference::python()?).args(["-c", INSTALLED]))?)
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

fn parsed(what: &str, text: &str) -> Outcome<Value> {
    serde_json::from_str(text).map_err(|error| format!("{what}: {error}"))
}

/// Every package in `cargo metadata` has a licence that the lists allow.
fn licences(what: &str, metadata: &str, besides: &[&str]) -> Outcome {
    let metadata = parsed(what, metadata)?;
    let packages = metadata["packages"].as_array().ok_or("cargo metadata: no packages")?;
    for package in packages {
        licence(&package["name"], &package["license"], besides)?;
    }
    println!("{what}: {} packages, each with a licence in the list", packages.len());
    Ok(())
}

fn licence(name: &Value, licence: &Value, besides: &[&str]) -> Outcome {
    let licence = licence.as_str().unwrap_or("none");
    if allowed(licence, besides) {
        return Ok(());
    }
    let name = name.as_str().unwrap_or("?");
    Err(format!("{name} has the licence {licence:?}, which is not in the list"))
}

/// Whether every package of one of cargo's locks comes from the usual registry or from here.
fn sources(lock: &str) -> Outcome {
    let said = lock.lines().filter_map(|line| line.strip_prefix("source = "));
    match said.map(|source| source.trim_matches('"')).find(|source| *source != REGISTRY) {
        Some(source) => Err(format!("a package comes from {source}")),
        None => Ok(()),
    }
}

/// Every package of npm's lock has a licence in the lists, is told by its bytes, and from no place of its own.
fn node_lock(lock: &str) -> Outcome {
    let lock = parsed("lock", lock)?;
    let packages = lock["packages"].as_object().ok_or("no packages")?;
    let others = || packages.iter().filter(|(name, _)| !name.is_empty());
    for (name, package) in others() {
        licence(&Value::from(name.as_str()), &package["license"], &TOOLS)?;
        if !package["resolved"].is_null() {
            return Err(format!("{name} comes from {}", package["resolved"]));
        }
        if !package["integrity"].is_string() {
            return Err(format!("{name} has no hash"));
        }
    }
    println!("npm: {} packages, each with a licence in the list", others().count());
    Ok(())
}

/// Whether pip is told exact versions, and nothing of where they come from.
fn requirements(text: &str) -> Outcome {
    let exact = |line: &&str| {
        let word =
            |text: &str| text.chars().all(|c| c.is_ascii_alphanumeric() || "._-".contains(c));
        line.split_once("==").is_some_and(|(name, version)| word(name) && word(version))
    };
    match text.lines().find(|line| !exact(line)) {
        Some(line) => Err(format!("{line:?} is no name with an exact version")),
        None => Ok(()),
    }
}

/// Compares lines of names and licences with the list.
fn python_licences(installed: &str) -> Outcome {
    for line in installed.lines() {
        let (name, said) = line.split_once(' ').unwrap_or((line, ""));
        let known = PYTHON.iter().find(|(known, _)| known.eq_ignore_ascii_case(name));
        match known {
            None => return Err(format!("{name} with the licence {said:?} is not in the list")),
            Some((_, licence)) if *licence != said => {
                return Err(format!("{name} has the licence {said:?}, not {licence:?}"));
            }
            Some(_) => {}
        }
    }
    match installed.lines().count() {
        0 => Err("no Python package is installed".to_string()),
        count => {
            println!("Python: {count} packages, each with the licence in the list");
            Ok(())
        }
    }
}

/// Whether an expression of alternatives and conjunctions can be met from the list.
///
/// Parentheses are dropped and alternatives bind first, which is exact for `(A OR B) AND C`; of any
/// other mixture it may refuse what could be met, but never allows what could not.
fn allowed(expression: &str, besides: &[&str]) -> bool {
    let plain = expression.replace(['(', ')'], "").replace('/', " OR ");
    let one = |name: &str| LICENCES.contains(&name) || besides.contains(&name);
    plain.split(" AND ").all(|all| all.split(" OR ").any(|name| one(name.trim())))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn licence_expressions() {
        assert!(allowed("MIT", &[]));
        assert!(allowed("MIT/Apache-2.0", &[]));
        assert!(allowed("LGPL-3.0 OR MIT", &[]));
        assert!(allowed("(MIT OR Apache-2.0) AND Unicode-3.0", &[]));
        assert!(!allowed("GPL-3.0", &[]));
        assert!(!allowed("MIT AND GPL-3.0", &[]));
        assert!(!allowed("(MIT AND GPL-3.0) OR GPL-3.0", &[]));
        assert!(!allowed("GPL-3.0 OR (MIT AND GPL-3.0)", &[]));
        assert!(!allowed("none", &[]));
        assert!(!allowed("ISC", &[]));
        assert!(allowed("ISC", &TOOLS));
    }

    #[test]
    fn a_licence_outside_the_list_is_refused() {
        let metadata = r#"{"packages": [{"name": "x", "license": "GPL-3.0"}]}"#;
        assert!(licences("x", metadata, &[]).unwrap_err().contains("x has the licence"));
        let metadata = r#"{"packages": [{"name": "x", "license": null}]}"#;
        assert!(licences("x", metadata, &[]).is_err());
    }

    #[test]
    fn locks_name_no_other_place() {
        assert_eq!(sources(&format!("name = \"x\"\nsource = \"{REGISTRY}\"\n")), Ok(()));
        let other = "source = \"registry+mirror\"\n";
        assert!(sources(other).unwrap_err().contains("registry+mirror"));

        let lock = |package: &str| format!(r#"{{"packages": {{"": {{}}, "x": {package}}}}}"#);
        let good = r#"{"license": "ISC", "integrity": "sha512-0"}"#;
        assert_eq!(node_lock(&lock(good)), Ok(()));
        let other = r#"{"license": "ISC", "integrity": "sha512-0", "resolved": "mirror"}"#;
        assert!(node_lock(&lock(other)).unwrap_err().contains("x comes from \"mirror\""));
        assert!(node_lock(&lock(r#"{"license": "ISC"}"#)).unwrap_err().contains("no hash"));
        let strange = r#"{"license": "GPL-3.0", "integrity": "sha512-0"}"#;
        assert!(node_lock(&lock(strange)).unwrap_err().contains("x has the licence"));
        assert!(node_lock(&lock(r#"{"integrity": "sha512-0"}"#)).is_err());

        assert_eq!(requirements("numpy==2.4.6\n"), Ok(()));
        for other in ["numpy", "numpy>=2", "--index-url mirror", "numpy==2 --hash=0"] {
            assert!(requirements(other).unwrap_err().contains(other));
        }
    }

    #[test]
    fn python_packages_are_known_with_their_licences() {
        assert_eq!(python_licences("mpmath BSD-3-Clause\ngtc MIT License\n"), Ok(()));
        assert!(python_licences("mpmath GPL-3.0\n").unwrap_err().contains("mpmath has"));
        assert!(python_licences("mpmath\n").is_err());
        assert!(python_licences("new MIT\n").unwrap_err().contains("new with the licence"));
        assert!(python_licences("").is_err());
    }

    #[test]
    fn a_new_dependency_is_named() {
        let found = ["cupwright", "new"].map(str::to_string).into();
        let error = same("x", &["cupwright", "libm"].into(), &found).unwrap_err();
        assert!(error.contains("not allowed [new], gone [libm]"), "{error}");
    }
}
