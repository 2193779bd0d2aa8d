//! The café's pages: put together with the package, and used in headless Chromium.

use std::path::{Path, PathBuf};

use super::package;
use crate::commands::{limited, program, run};
use crate::{Outcome, root, tools};

/// Example pages, each a folder of `examples`. The first one has the package; the others use its files.
const PAGES: [&str; 2] = ["cafe-page", "cafe-embed"];

/// Where a server finds them all.
fn site() -> PathBuf {
    root().join("target/npm/site")
}

/// Puts every page together with the package, ready to be served.
fn put_together() -> Outcome {
    let site = package::fresh(&site())?;
    for page in PAGES {
        copy(&root().join("examples").join(page), &site.join(page))?;
    }
    copy(&package::built(), &site.join(PAGES[0]).join("cupwright"))
}

/// Builds the package and the pages, and says how to see them.
pub fn build() -> Outcome {
    package::build()?;
    put_together()?;
    let site = site();
    println!("python3 -m http.server --directory {} 8080", site.display());
    for page in PAGES {
        println!("http://localhost:8080/{page}/");
    }
    Ok(())
}

/// Uses the pages as a café would, and leaves pictures of them in `target/npm/pictures`.
pub fn check() -> Outcome {
    tools::debian(&["chromium"])?;
    let packages = tools::node_packages()?;
    put_together()?;
    let pictures = package::fresh(&root().join("target/npm/pictures"))?;
    let mut use_them = program("node");
    use_them.args(["--test", "--test-concurrency=2", "--test-reporter=spec"]).args(tests()?);
    use_them.env("NODE_PACKAGES", packages).env("SITE", site()).env("PICTURES", pictures);
    run(&mut limited(1500, &use_them))
}

/// The files of tests; without one Node.js would look for others.
fn tests() -> Outcome<Vec<PathBuf>> {
    let folder = root().join("tests/js/cafe");
    let fail = |error: std::io::Error| format!("{}: {error}", folder.display());
    let entries = std::fs::read_dir(&folder).map_err(fail)?;
    let paths = entries.map(|entry| Ok(entry.map_err(fail)?.path()));
    let mut tests: Vec<PathBuf> = paths.collect::<Outcome<_>>()?;
    tests.retain(|path| path.to_string_lossy().ends_with(".test.js"));
    tests.sort();
    if tests.is_empty() { Err(format!("{}: no tests", folder.display())) } else { Ok(tests) }
}

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
