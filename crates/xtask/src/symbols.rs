//! Symbols of a compiled archive, and those that must not be among them.

use std::path::Path;

use object::read::archive::ArchiveFile;
use object::{Object, ObjectSymbol};

use crate::Outcome;

/// Every symbol named in the object files of an archive, defined or only referred to.
pub fn in_archive(path: &Path) -> Outcome<Vec<String>> {
    let fail = |error: &dyn std::fmt::Display| format!("{}: {error}", path.display());
    let bytes = std::fs::read(path).map_err(|error| fail(&error))?;
    let archive = ArchiveFile::parse(&*bytes).map_err(|error| fail(&error))?;
    let mut symbols = Vec::new();
    for member in archive.members() {
        let member = member.map_err(|error| fail(&error))?;
        // The other member of an rlib is its metadata.
        if !member.name().ends_with(b".o") {
            continue;
        }
        let data = member.data(&*bytes).map_err(|error| fail(&error))?;
        let file = object::File::parse(data).map_err(|error| fail(&error))?;
        symbols.extend(file.symbols().filter_map(|s| s.name().ok()).map(str::to_string));
    }
    Ok(symbols)
}

/// Those that mean a panic or an allocation.
pub fn forbidden(symbols: &[String]) -> Vec<&str> {
    const FORBIDDEN: [&str; 5] =
        ["panic", "unwrap_failed", "expect_failed", "__rust_alloc", "5alloc"];
    symbols
        .iter()
        .map(String::as_str)
        .filter(|symbol| FORBIDDEN.iter().any(|bad| symbol.contains(bad)))
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::commands::{program, run};

    /// Compiles a crate of one function and returns the forbidden symbols in it.
    fn forbidden_in(name: &str, function: &str) -> Vec<String> {
        let folder = crate::root().join("target/xtask-symbols");
        std::fs::create_dir_all(&folder).unwrap();
        let source = folder.join(format!("{name}.rs"));
        let archive = folder.join(format!("lib{name}.rlib"));
        std::fs::write(&source, format!("#![no_std]\n#[unsafe(no_mangle)]\n{function}\n")).unwrap();
        run(program("rustc")
            .args(["--edition=2024", "--crate-type=rlib", "-Copt-level=3", "-o"])
            .args([&archive, &source]))
        .unwrap();
        let symbols = in_archive(&archive).unwrap();
        assert!(symbols.iter().any(|symbol| symbol == name), "{symbols:?}");
        forbidden(&symbols).into_iter().map(str::to_string).collect()
    }

    #[test]
    fn a_panic_is_found() {
        let found =
            forbidden_in("takes_one", "pub fn takes_one(a: &[u8], i: usize) -> u8 { a[i] }");
        assert!(!found.is_empty());
    }

    #[test]
    fn arithmetic_is_clean() {
        let found = forbidden_in("only_divides", "pub fn only_divides(a: f64) -> f64 { a / 3.0 }");
        assert_eq!(found, [] as [&str; 0]);
    }
}
