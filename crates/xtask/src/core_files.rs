//! The core's source files: which are there, which of them only tests have, and where the tests in the others begin.

use std::collections::BTreeMap;

use crate::commands::text_of;
use crate::{Outcome, root};

/// Where they lie.
pub const FOLDER: &str = "crates/cupwright/src";

/// Every file, by its path in the folder, and its text.
pub fn all() -> Outcome<BTreeMap<String, String>> {
    let folder = root().join(FOLDER);
    let (mut folders, mut found) = (vec![folder.clone()], BTreeMap::new());
    while let Some(within) = folders.pop() {
        let fail = |error: std::io::Error| format!("{}: {error}", within.display());
        for entry in std::fs::read_dir(&within).map_err(fail)? {
            let path = entry.map_err(fail)?.path();
            if path.is_dir() {
                folders.push(path);
            } else if let Ok(name) = path.strip_prefix(&folder) {
                found.insert(name.to_string_lossy().into_owned(), text_of(&path)?);
            }
        }
    }
    Ok(found)
}

/// The same without files that only tests have.
pub fn code() -> Outcome<BTreeMap<String, String>> {
    let all = all()?;
    let of_tests: Vec<String> =
        all.iter().flat_map(|(name, text)| tests_beside(name, text)).collect();
    Ok(all.into_iter().filter(|(name, _)| !of_tests.contains(name)).collect())
}

/// The files that a file declares for tests alone.
fn tests_beside(name: &str, text: &str) -> Vec<String> {
    let folder = name.trim_end_matches(".rs");
    let modules =
        for_tests(text).filter_map(|(_, line)| line.strip_prefix("mod ")?.strip_suffix(';'));
    modules.map(|module| format!("{folder}/{module}.rs")).collect()
}

/// The number of the line where a file's tests begin.
pub fn first_of_tests(text: &str) -> usize {
    for_tests(text).find(|(_, line)| line.ends_with('{')).map_or(usize::MAX, |(at, _)| at)
}

/// What is compiled for tests alone: the number of the line that says so, and what is declared there.
fn for_tests(text: &str) -> impl Iterator<Item = (usize, &str)> {
    let lines = || text.lines().zip(1..);
    lines().filter(|(line, _)| *line == "#[cfg(test)]").filter_map(move |(_, at)| {
        let (declared, _) = lines().skip(at).find(|(line, _)| !line.starts_with('#'))?;
        Some((at, declared))
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn tests_inside_a_file_are_found() {
        assert_eq!(first_of_tests("fn a() {}\n\n#[cfg(test)]\nmod tests {\n}\n"), 3);
        assert_eq!(first_of_tests("#[cfg(test)]\n#[allow(x)]\nmod tests {\n}\n"), 1);
        assert_eq!(first_of_tests("#[cfg(test)]\nmod certified;\nfn a() {\n}\n"), usize::MAX);
    }

    #[test]
    fn files_that_only_tests_have_are_no_code() {
        let text =
            "mod a;\n#[cfg(test)]\n#[allow(x)]\nmod b;\nmod c;\n#[cfg(test)]\nmod tests {\n}\n";
        assert_eq!(tests_beside("live.rs", text), ["live/b.rs"]);
        let (all, code) = (all().unwrap(), code().unwrap());
        assert!(all.contains_key("calibrate/certified.rs") && all.contains_key("live/edges.rs"));
        assert!(
            !code.contains_key("calibrate/certified.rs") && !code.contains_key("live/edges.rs")
        );
        assert_eq!(code.len() + 2, all.len());
    }
}
