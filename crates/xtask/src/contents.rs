//! What the published packages hold: the crate and the npm package, file by file, and the crate as somebody
//! who unpacks it has it.

use std::collections::BTreeSet;
use std::path::Path;

use serde_json::Value;

use crate::commands::{cargo, output, program, run, text_of};
use crate::js::package;
use crate::{Outcome, root};

/// The one package of the workspace that goes to a registry.
const CRATE: &str = "cupwright";

/// The crate's files and what it says of itself; then its tests, from the package alone.
pub fn of_crate() -> Outcome {
    let metadata =
        output(&mut cargo(&["metadata", "--format-version=1", "--locked", "--no-deps"]))?;
    let metadata = read_json("cargo metadata", &metadata)?;
    let version = says_enough(&metadata)?;
    // Where files lie about, they are packed: so they are listed, and refused by name.
    let list = ["package", "--list", "--locked", "--allow-dirty", "--package", CRATE];
    let listed = output(&mut cargo(&list))?;
    // Where the sources are no checkout, cargo cannot write this one.
    let files = listed.lines().filter(|name| *name != ".cargo_vcs_info.json");
    same_files("crate", files)?;

    let folder = root().join("target/package").join(format!("{CRATE}-{version}"));
    let package = ["package", "--quiet", "--locked", "--offline", "--allow-dirty", "--package"];
    run(&mut cargo(&[&package[..], &[CRATE]].concat()))?;
    for name in ["LICENSE", "CHANGELOG.md"] {
        same_text(&root().join(name), &folder.join(name))?;
    }
    // Its own target folder: what lies there is no part of the package.
    let mut test = cargo(&["test", "--quiet", "--locked", "--offline", "--all-features"]);
    let target = root().join("target/unpacked");
    run(test.current_dir(&folder).arg("--target-dir").arg(target))
}

/// The files of the npm package that was put together, and its agreement with the crate.
pub fn of_npm() -> Outcome {
    let mut pack = program("npm");
    pack.args(["pack", "--dry-run", "--json", "--offline", "--ignore-scripts"]);
    let packed = read_json("npm pack", &output(pack.current_dir(package::built()))?)?;
    let files = packed[0]["files"].as_array().ok_or("npm pack: no files")?;
    same_files("npm", files.iter().filter_map(|file| file["path"].as_str()))?;
    for name in ["LICENSE", "CHANGELOG.md"] {
        same_text(&root().join(name), &package::built().join(name))?;
    }
    let version = env!("CARGO_PKG_VERSION");
    if packed[0]["version"] == version {
        return Ok(());
    }
    Err(format!("the npm package's version is {}, the crate's {version}", packed[0]["version"]))
}

fn read_json(what: &str, text: &str) -> Outcome<Value> {
    serde_json::from_str(text).map_err(|error| format!("{what}: {error}"))
}

/// Compares the files of a package with the list in `tests/packages`.
fn same_files<'a>(package: &str, files: impl Iterator<Item = &'a str>) -> Outcome {
    let path = root().join("tests/packages").join(format!("{package}.txt"));
    let text = text_of(&path)?;
    let count = compared(&text.lines().collect(), &files.collect())
        .map_err(|words| format!("{words}\nIf that is meant, {} says so", path.display()))?;
    println!("{package}: {count} files, as listed");
    Ok(())
}

fn compared(wanted: &BTreeSet<&str>, found: &BTreeSet<&str>) -> Outcome<usize> {
    let names = |a: &BTreeSet<&str>, b: &BTreeSet<&str>| {
        a.difference(b).copied().collect::<Vec<_>>().join(", ")
    };
    if wanted == found {
        return Ok(found.len());
    }
    Err(format!(
        "packed but not listed [{}], gone [{}]",
        names(found, wanted),
        names(wanted, found)
    ))
}

/// Whether one file is the other to the byte: a link may come out of a checkout as a text.
fn same_text(wanted: &Path, packed: &Path) -> Outcome {
    let read = |path: &Path| std::fs::read(path).map_err(|e| format!("{}: {e}", path.display()));
    if read(wanted)? == read(packed)? {
        return Ok(());
    }
    Err(format!("{} is not {}", packed.display(), wanted.display()))
}

/// Whether the crate alone may be published, and says of itself what a registry asks; its version.
fn says_enough(metadata: &Value) -> Outcome<&str> {
    let packages = metadata["packages"].as_array().ok_or("cargo metadata: no packages")?;
    let open: Vec<&Value> = packages.iter().filter(|one| one["publish"].is_null()).collect();
    let [package] = open[..] else {
        let names: Vec<&str> = open.iter().filter_map(|one| one["name"].as_str()).collect();
        return Err(format!("to be published is {CRATE} alone, not {}", names.join(", ")));
    };
    if package["name"] != CRATE {
        return Err(format!("to be published is {CRATE}, not {}", package["name"]));
    }
    let said = |name: &str| match &package[name] {
        Value::String(text) => !text.is_empty(),
        Value::Array(words) => !words.is_empty() && words.len() <= 5,
        _ => false,
    };
    let fields = ["description", "license", "readme", "rust_version", "keywords", "categories"];
    match fields.into_iter().find(|name| !said(name)) {
        Some(name) => Err(format!("{CRATE}'s manifest does not say its {name}")),
        None => package["version"].as_str().ok_or_else(|| "no version".to_string()),
    }
}

#[cfg(test)]
mod tests {
    use serde_json::json;

    use super::*;

    #[test]
    fn a_file_too_many_or_too_few_is_named() {
        let listed = ["LICENSE", "src/lib.rs"].into();
        assert_eq!(compared(&listed, &["src/lib.rs", "LICENSE"].into()), Ok(2));
        let error = compared(&listed, &["LICENSE", "notes.txt"].into()).unwrap_err();
        assert!(error.contains("not listed [notes.txt], gone [src/lib.rs]"), "{error}");
    }

    #[test]
    fn a_list_is_found_by_its_package() {
        assert!(same_files("crate", ["LICENSE"].into_iter()).unwrap_err().contains("src/lib.rs"));
        assert!(same_files("none", ["LICENSE"].into_iter()).unwrap_err().contains("none.txt"));
    }

    #[test]
    fn a_link_that_became_a_text_is_refused() {
        let root = root();
        let (licence, changes) = (root.join("LICENSE"), root.join("CHANGELOG.md"));
        assert_eq!(same_text(&licence, &root.join("crates/cupwright/LICENSE")), Ok(()));
        assert!(same_text(&licence, &changes).unwrap_err().contains("CHANGELOG.md is not"));
    }

    #[test]
    fn what_a_registry_asks_must_be_said() {
        let package = json!({
            "name": "cupwright", "version": "0.1.0", "publish": null, "description": "x",
            "license": "MIT", "readme": "README.md", "rust_version": "1.88",
            "keywords": ["x"], "categories": ["x"],
        });
        let of =
            |packages: &[&Value]| says_enough(&json!({ "packages": packages })).map(str::to_string);
        assert_eq!(of(&[&package]), Ok("0.1.0".to_string()));
        for name in ["description", "license", "readme", "rust_version", "keywords", "categories"] {
            let mut silent = package.clone();
            silent[name] = Value::Null;
            assert!(of(&[&silent]).unwrap_err().contains(name));
        }
        let mut other = package.clone();
        other["name"] = json!("xtask");
        assert!(of(&[&package, &other]).unwrap_err().contains("not cupwright, xtask"));
        assert!(of(&[&other]).is_err());
        other["publish"] = json!([]);
        assert!(of(&[&package, &other]).is_ok());
    }
}
