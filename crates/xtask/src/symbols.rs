//! Symbols of a compiled archive, and those that must not be among them.

use std::path::Path;

use object::read::archive::ArchiveFile;
use object::{Object, ObjectSymbol};

use crate::Outcome;

/// Parts of names that stand for a panic or an allocation.
///
/// `core` gives its panics many names: `panic_bounds_check`, `unwrap_failed`, `slice_index_fail`,
/// `len_mismatch_fail`. `5alloc` is the crate `alloc` in a mangled name.
const FORBIDDEN: [&str; 4] = ["panic", "_fail", "__rust_alloc", "5alloc"];

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
        for symbol in file.symbols() {
            symbols.push(symbol.name().map_err(|error| fail(&error))?.to_string());
        }
    }
    Ok(symbols)
}

/// Those that mean a panic or an allocation.
pub fn forbidden(symbols: &[String]) -> Vec<&str> {
    let bad = |symbol: &&str| FORBIDDEN.iter().any(|part| symbol.contains(part));
    symbols.iter().map(String::as_str).filter(bad).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_no_archive_is_an_error() {
        assert!(in_archive(Path::new(env!("CARGO_MANIFEST_DIR"))).is_err());
        assert!(in_archive(&Path::new(env!("CARGO_MANIFEST_DIR")).join("Cargo.toml")).is_err());
    }

    #[test]
    fn names_of_panics_and_allocations_are_known() {
        let bad = [
            "_RNvNtCs0_4core9panicking18panic_bounds_check",
            "_RNvNtNtCs0_4core5slice5index16slice_index_fail",
            "_RNvNtCs0_4core6option13unwrap_failed",
            "_RNvCs0_7___rustc12___rust_alloc",
            "_ZN5alloc5alloc18handle_alloc_error17h0E",
        ];
        for name in bad {
            assert_eq!(forbidden(&[name.to_string()]), [name]);
        }
        let good = ["_ZN9cupwright5ratio7batches17h0E", "__aeabi_dmul", "memcpy"];
        assert_eq!(forbidden(&good.map(str::to_string)), [""; 0]);
    }
}
