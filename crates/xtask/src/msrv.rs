//! The oldest Rust that the manifests promise: the core tested and the C interface built with exactly that one.

use crate::commands::{cargo, output, run, text_of};
use crate::{Outcome, tools};

/// Installs the toolchain, tests the core with it and builds the C interface.
pub fn check() -> Outcome {
    let metadata =
        output(&mut cargo(&["metadata", "--format-version=1", "--locked", "--no-deps"]))?;
    let version = promised(&metadata)?;
    told(&text_of("README.md")?, &version)?;
    let toolchain = format!("{version}.0");
    let with = |arguments: &[&str]| {
        let mut cargo = tools::under_toolchain(&toolchain, "cargo", &[], &[])?;
        cargo.args(arguments);
        cargo.args(["--quiet", "--locked", "--target-dir", "target/msrv"]);
        run(&mut cargo)
    };
    with(&["test", "--package", "cupwright", "--all-features"])?;
    with(&["build", "--package", "cupwright-library"])?;
    println!("Rust {toolchain} tests the core and builds the C interface");
    Ok(())
}

/// The version that every package with one promises, as `1.88`.
fn promised(metadata: &str) -> Outcome<String> {
    let metadata: serde_json::Value =
        serde_json::from_str(metadata).map_err(|error| format!("cargo metadata: {error}"))?;
    let packages = metadata["packages"].as_array().ok_or("cargo metadata: no packages")?;
    let mut versions: Vec<&str> =
        packages.iter().filter_map(|package| package["rust_version"].as_str()).collect();
    versions.sort_unstable();
    versions.dedup();
    match versions[..] {
        [version] if version.split('.').count() == 2 => Ok(version.to_string()),
        _ => Err(format!("one rust-version like 1.88 is expected, not {versions:?}")),
    }
}

/// Whether a README tells it.
fn told(readme: &str, version: &str) -> Outcome {
    let words = format!("Rust {version} or later");
    if readme.contains(&words) { Ok(()) } else { Err(format!("README.md lacks {words:?}")) }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn one_version_is_promised() {
        let of = |versions: &str| {
            let packages: Vec<String> =
                versions.split(' ').map(|v| format!(r#"{{"rust_version": {v}}}"#)).collect();
            promised(&format!(r#"{{"packages": [{}]}}"#, packages.join(", ")))
        };
        assert_eq!(of(r#""1.88" null "1.88""#), Ok("1.88".to_string()));
        assert!(of(r#""1.88" "1.90""#).is_err());
        assert!(of("null").is_err());
        assert!(of(r#""1.88.1""#).is_err());
    }

    #[test]
    fn both_readmes_tell_it() {
        let version = env!("CARGO_PKG_RUST_VERSION");
        for path in ["README.md", "crates/cupwright/README.md"] {
            let text = text_of(path).unwrap();
            assert_eq!(told(&text, version), Ok(()), "{path}");
        }
        assert!(told("Rust 1.87 or later.", version).unwrap_err().contains(version));
    }
}
