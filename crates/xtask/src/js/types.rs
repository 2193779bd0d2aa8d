//! The package's types, as TypeScript reads them: right uses pass, every wrong one fails.

use super::{package, page};
use crate::commands::{program, run};
use crate::{Outcome, root, tools};

/// Checks both files of `tests/js/types` as a bundler's project and as one of Node.js.
pub fn check() -> Outcome {
    let compiler = tools::node_tool("tsc")?;
    let folder = package::fresh(&root().join("target/npm/types"))?;
    page::copy(&package::built(), &folder.join("node_modules/cupwright"))?;
    page::copy(&root().join("tests/js/types"), &folder)?;
    std::fs::write(folder.join("package.json"), "{ \"type\": \"module\" }\n")
        .map_err(|error| format!("{}: {error}", folder.display()))?;
    for (module, resolution) in [("esnext", "bundler"), ("nodenext", "nodenext")] {
        run(program(&compiler)
            .args([
                "--noEmit",
                "--strict",
                "--exactOptionalPropertyTypes",
                "--noUncheckedIndexedAccess",
            ])
            .args(["--target", "es2022", "--lib", "es2022,dom"])
            .args(["--module", module, "--moduleResolution", resolution])
            .args(["right.ts", "wrong.ts"])
            .current_dir(&folder))?;
    }
    Ok(())
}
