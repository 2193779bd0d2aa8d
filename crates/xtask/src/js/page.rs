//! Folders of files for a page.

use std::path::Path;

use crate::Outcome;

/// Copies a folder with all that is in it.
pub fn copy(from: &Path, to: &Path) -> Outcome {
    let fail = |error: std::io::Error| format!("{}: {error}", from.display());
    std::fs::create_dir_all(to).map_err(fail)?;
    for entry in std::fs::read_dir(from).map_err(fail)? {
        let entry = entry.map_err(fail)?;
        let place = to.join(entry.file_name());
        if entry.path().is_dir() {
            copy(&entry.path(), &place)?;
        } else {
            std::fs::copy(entry.path(), &place).map_err(fail)?;
        }
    }
    Ok(())
}
