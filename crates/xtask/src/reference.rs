//! Check values computed with reference libraries: a Python environment of pinned packages, and
//! `tests/reference/make.py` in it.

use std::path::{Path, PathBuf};

use crate::commands::{program, run, text_of};
use crate::{Outcome, difference, root, tools};

fn committed() -> PathBuf {
    root().join("tests/vectors")
}

/// Computes the files anew in place.
pub fn write() -> Outcome {
    make(&committed())
}

/// Computes the files beside the committed ones and compares them byte for byte.
pub fn check() -> Outcome {
    let fresh = root().join("target/reference-check");
    let fail = |error: std::io::Error| format!("{}: {error}", fresh.display());
    if fresh.exists() {
        std::fs::remove_dir_all(&fresh).map_err(fail)?;
    }
    std::fs::create_dir_all(&fresh).map_err(fail)?;
    make(&fresh)?;
    let count = compare(&fresh, &committed())?;
    println!("{count} files of check values are what their commands make");
    Ok(())
}

/// Compares every file of a folder and of those in it with its namesake in another one, and counts
/// them. The other folder may hold more: values that were published, not computed.
fn compare(fresh: &Path, committed: &Path) -> Outcome<usize> {
    let files = std::fs::read_dir(fresh).map_err(|e| format!("{}: {e}", fresh.display()))?;
    let mut count = 0;
    for file in files {
        let name = file.map_err(|e| format!("{}: {e}", fresh.display()))?.file_name();
        if fresh.join(&name).is_dir() {
            count += compare(&fresh.join(&name), &committed.join(&name))?;
            continue;
        }
        let read = |folder: &Path| text_of(folder.join(&name));
        if let Some(difference) = difference::between(&read(committed)?, &read(fresh)?) {
            return Err(format!(
                "{} is not what its command makes\n{difference}\nIf the change is meant: cargo \
                 xtask reference",
                name.display()
            ));
        }
        count += 1;
    }
    if count == 0 {
        return Err("tests/reference/make.py wrote nothing".to_string());
    }
    Ok(count)
}

/// The environment's interpreter.
pub fn python() -> Outcome<PathBuf> {
    tools::python("reference-venv", &["--requirement", "tests/reference/requirements.txt"])
}

fn make(folder: &Path) -> Outcome {
    run(program(python()?)
        .arg("tests/reference/make.py")
        .arg("--out")
        .arg(folder)
        // Compiled modules would lie among the sources.
        .env("PYTHONDONTWRITEBYTECODE", "1"))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn files_are_compared_byte_for_byte() {
        let folder = std::env::temp_dir().join(format!("reference-{}", std::process::id()));
        let (fresh, committed) = (folder.join("fresh"), folder.join("committed"));
        for path in [&fresh, &committed] {
            std::fs::create_dir_all(path).unwrap();
        }
        let write = |folder: &Path, name: &str, text| std::fs::write(folder.join(name), text);

        write(&committed, "published.json", "1\n").unwrap();
        assert!(compare(&fresh, &committed).unwrap_err().contains("wrote nothing"));

        write(&fresh, "computed.json", "1.5\n").unwrap();
        assert!(compare(&fresh, &committed).unwrap_err().contains("committed/computed.json"));

        write(&committed, "computed.json", "1.4\n").unwrap();
        assert!(compare(&fresh, &committed).unwrap_err().contains("-1.4\n+1.5\n"));

        write(&committed, "computed.json", "1.5\n").unwrap();
        assert_eq!(compare(&fresh, &committed), Ok(1));

        for folder in [&fresh, &committed] {
            std::fs::create_dir_all(folder.join("within")).unwrap();
            write(folder, "within/computed.json", "2\n").unwrap();
        }
        assert_eq!(compare(&fresh, &committed), Ok(2));
        write(&committed, "within/computed.json", "3\n").unwrap();
        assert!(compare(&fresh, &committed).unwrap_err().contains("-3\n+2\n"));
        std::fs::remove_dir_all(&folder).unwrap();
    }
}
