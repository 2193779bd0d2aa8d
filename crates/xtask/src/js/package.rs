//! The package: the face as committed, the module as built, and all of it packed for npm.

use std::collections::BTreeSet;
use std::path::{Path, PathBuf};

use super::{about, face};
use crate::c::interface;
use crate::commands::{output, program, quietly, text_of};
use crate::toolchain::Toolchain;
use crate::{Outcome, difference, root, tools};

const TARGET: &str = "wasm32-unknown-unknown";

/// The package's own files.
fn source() -> PathBuf {
    root().join("bindings/wasm/npm")
}

/// Where the package is put together.
pub fn built() -> PathBuf {
    root().join("target/npm/cupwright")
}

/// The texts that are made, by their places.
fn texts() -> Outcome<[(PathBuf, String); 3]> {
    let face = face::made()?;
    let source = source();
    Ok([
        (source.join("src/about.js"), about::made()?),
        (source.join("src/functions.js"), face.code),
        (source.join("index.d.ts"), face.types),
    ])
}

/// Writes the face.
pub fn write() -> Outcome {
    for (path, text) in texts()? {
        std::fs::write(&path, text).map_err(|error| format!("{}: {error}", path.display()))?;
    }
    Ok(())
}

/// Compares the committed face with one made now.
pub fn check_face() -> Outcome {
    for (path, text) in texts()? {
        let committed = text_of(&path)?;
        if let Some(difference) = difference::between(&committed, &text) {
            return Err(format!(
                "{} is not what the C interface makes it\n{difference}\nIf the change is meant: cargo xtask face",
                path.display()
            ));
        }
        println!("{}: {} lines, as committed", path.display(), committed.lines().count());
    }
    Ok(())
}

/// Builds the module and puts the package together.
pub fn build() -> Outcome {
    tools::node()?;
    let toolchain = Toolchain::install(&[TARGET])?;
    let folder = fresh(&built())?;
    let module = folder.join("cupwright.wasm");
    optimised(&module_of(toolchain)?, &module)?;
    check_module(&module)?;
    let copy = |from: PathBuf, to: &str| -> Outcome {
        let to = folder.join(to);
        std::fs::copy(&from, &to)
            .map(|_| ())
            .map_err(|error| format!("{}: {error}", from.display()))
    };
    std::fs::create_dir_all(folder.join("src")).map_err(|error| error.to_string())?;
    for name in
        ["package.json", "README.md", "index.d.ts", "columns.d.ts", "live.d.ts", "slim.d.ts"]
    {
        copy(source().join(name), name)?;
    }
    for name in [
        "about.js",
        "all.js",
        "call.js",
        "columns.js",
        "functions.js",
        "index.js",
        "live.js",
        "slim.js",
    ] {
        copy(source().join("src").join(name), &format!("src/{name}"))?;
    }
    copy(root().join("LICENSE"), "LICENSE")?;
    copy(root().join("CHANGELOG.md"), "CHANGELOG.md")?;
    copy(root().join("bindings/c/package/THIRD-PARTY.txt"), "THIRD-PARTY.txt")?;
    inline(&module, &folder.join("src/inlined.js"))
}

pub fn fresh(folder: &Path) -> Outcome<PathBuf> {
    let fail = |error: std::io::Error| format!("{}: {error}", folder.display());
    if folder.exists() {
        std::fs::remove_dir_all(folder).map_err(fail)?;
    }
    std::fs::create_dir_all(folder).map_err(fail)?;
    Ok(folder.to_path_buf())
}

/// Vectors for their square root, which the core takes where there is one, and for nothing else: loops made of them
/// are a tenth more to load.
const FLAGS: &str = "-C target-feature=+simd128 -C no-vectorize-loops -C no-vectorize-slp";

/// The C library as a WebAssembly module.
fn module_of(toolchain: Toolchain) -> Outcome<PathBuf> {
    quietly(
        toolchain
            .cargo("rustc", TARGET)
            .args(["--quiet", "--package", "cupwright-library", "--crate-type", "cdylib"])
            .args(["--profile", "hosted", "--", "-C", "link-arg=-zstack-size=32768"])
            .env("CARGO_TARGET_WASM32_UNKNOWN_UNKNOWN_RUSTFLAGS", FLAGS),
    )?;
    Ok(toolchain.folder().join(TARGET).join("hosted/cupwright_library.wasm"))
}

/// Makes a module faster and smaller, its answers kept.
fn optimised(from: &Path, to: &Path) -> Outcome {
    quietly(
        program(tools::node_tool("wasm-opt")?)
            .args(["-O3", "--strip-debug", "--strip-producers"])
            .arg("--enable-simd")
            // A little less than by default: that makes the module a twentieth larger and calls no faster.
            .arg("--flexible-inline-max-function-size=16")
            .arg(from)
            .arg("-o")
            .arg(to),
    )
}

/// The module asks for nothing, and has what the face calls.
fn check_module(module: &Path) -> Outcome {
    let script = "const m = new WebAssembly.Module(require('fs').readFileSync(process.argv[1]));
        console.log(WebAssembly.Module.imports(m).length, WebAssembly.Module.exports(m).map(e => e.name).join(' '));";
    let printed = output(program("node").args(["-e", script]).arg(module))?;
    let (imports, exports) = printed.trim().split_once(' ').ok_or("no exports")?;
    if imports != "0" {
        return Err(format!("the module asks for {imports} things from outside"));
    }
    let found: BTreeSet<&str> = exports.split(' ').collect();
    let interface = interface::read()?;
    for function in &interface.functions {
        if !found.contains(function.name.as_str()) {
            return Err(format!("the module lacks {}", function.name));
        }
    }
    println!("{}: {} exports, nothing asked for", module.display(), found.len());
    Ok(())
}

/// The module as a text in code.
fn inline(module: &Path, to: &Path) -> Outcome {
    let bytes = std::fs::read(module).map_err(|error| format!("{}: {error}", module.display()))?;
    let text =
        format!("// The module, in base64.\nexport const inlined = \"{}\";\n", base64(&bytes));
    std::fs::write(to, text).map_err(|error| format!("{}: {error}", to.display()))
}

fn base64(bytes: &[u8]) -> String {
    use base64::Engine;
    base64::engine::general_purpose::STANDARD.encode(bytes)
}
