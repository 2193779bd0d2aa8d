//! Check values computed with reference libraries: a Python environment of pinned packages, and
//! `tests/reference/make.py` in it.

use std::path::{Path, PathBuf};

use crate::commands::{program, run, works};
use crate::{Outcome, root, tools};

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
    if fresh.exists() {
        std::fs::remove_dir_all(&fresh).map_err(|e| format!("{}: {e}", fresh.display()))?;
    }
    std::fs::create_dir_all(&fresh).map_err(|e| format!("{}: {e}", fresh.display()))?;
    make(&fresh)?;
    let files = std::fs::read_dir(&fresh).map_err(|e| e.to_string())?;
    let mut count = 0;
    for file in files {
        let name = file.map_err(|e| e.to_string())?.file_name();
        let read = |folder: &Path| {
            let path = folder.join(&name);
            std::fs::read(&path).map_err(|e| format!("{}: {e}", path.display()))
        };
        if read(&fresh)? != read(&committed())? {
            return Err(format!(
                "tests/vectors/{} is not what its command makes: cargo xtask reference",
                name.display()
            ));
        }
        count += 1;
    }
    if count == 0 {
        return Err("tests/reference/make.py wrote nothing".to_string());
    }
    println!("{count} files of check values are what their commands make");
    Ok(())
}

fn make(folder: &Path) -> Outcome {
    let python = environment()?;
    run(program(python).arg("tests/reference/make.py").arg("--out").arg(folder))
}

/// The interpreter of an environment that holds the pinned packages.
fn environment() -> Outcome<PathBuf> {
    if !works("python3", &["-c", "import ensurepip, venv"]) {
        tools::debian(&["python3", "python3-venv"])?;
    }
    let folder = root().join("target/reference-venv");
    let python = folder.join("bin/python");
    if !python.exists() {
        run(program("python3").args(["-m", "venv"]).arg(&folder))?;
    }
    run(program(&python).args([
        "-m",
        "pip",
        "install",
        "--quiet",
        "--disable-pip-version-check",
        "--requirement",
        "tests/reference/requirements.txt",
    ]))?;
    Ok(python)
}
