//! The packed package as its users meet it: installed by npm somewhere else, called from Node.js, bundled, and
//! loaded by a page without a build step. One answer is compared with the core's to the last bit.

use std::path::Path;
use std::process::Command;

use cupwright::Error;
use cupwright::heat::{self, Cover, Surroundings};
use cupwright::quantity::{CoolingRate, Humidity, RoomTemperature, Temperature};

use super::{cases, package, page};
use crate::commands::{limited, output, program, run};
use crate::{Outcome, root, tools};

/// Projects of `tests/js/consumers`.
const PROJECTS: [&str; 4] = ["node", "at-once", "slim", "page"];
/// Those that are bundled: one for each entry of the package.
const BUNDLED: [&str; 2] = ["at-once", "slim"];
/// Random cases of each kind for each function, so that each field has a case in which it is given.
const RANDOM: u64 = 20;

/// Packs the package, installs it in every project, and uses it there.
pub fn check() -> Outcome {
    tools::debian(&["chromium"])?;
    let packages = tools::node_packages()?;
    let folder = package::fresh(&root().join("target/npm/consumers"))?;
    install(&folder)?;
    let answer = answer().map_err(|error| error.to_string())?;
    in_node(&folder.join("node"), &answer)?;
    bundle(&folder, &packages)?;
    let mut readme = program("node");
    run(readme.arg("tests/js/consumers/readme.js").args([&packages, &folder]))?;
    run(&mut limited(
        60,
        program("node")
            .arg("tests/js/consumers/in-chromium.js")
            .args([&packages, &folder])
            .arg(&answer),
    ))
}

/// The bits of what the core answers to the call in `shared/answer.js`.
fn answer() -> Result<String, Error> {
    let surroundings = Surroundings {
        room: RoomTemperature::from_celsius(19.0)?,
        humidity: Humidity::from_percent(55.0)?,
        cover: Cover::Open,
    };
    let (from, to) = (Temperature::from_celsius(82.5)?, Temperature::from_celsius(61.0)?);
    let rate = CoolingRate::from_per_minute(0.0065)?;
    let time = heat::time_to_cool(from, to, rate, &surroundings)?;
    Ok(format!("{:016x}", time.seconds().to_bits()))
}

/// Packs the package and installs it in a copy of every project.
fn install(folder: &Path) -> Outcome {
    let built = package::built();
    let name = output(
        npm("pack").args(["--loglevel=error", "--pack-destination", ".."]).current_dir(&built),
    )?;
    let packed = built.with_file_name(name.trim());
    let sources = root().join("tests/js/consumers");
    for project in PROJECTS {
        let copy = folder.join(project);
        page::copy(&sources.join("shared"), &copy)?;
        page::copy(&sources.join(project), &copy)?;
        output(
            npm("install")
                .args(["--no-audit", "--no-fund", "--no-package-lock", "--no-save"])
                .args(["--loglevel=error"])
                .arg(&packed)
                .current_dir(&copy),
        )?;
    }
    // So that what holds for the folder, its types among it, holds for what is installed.
    let installed = folder.join("node/node_modules/cupwright");
    run(program("diff").arg("--recursive").args([built, installed]))
}

/// npm, which needs nothing from a registry here.
fn npm(what: &str) -> Command {
    let mut command = program("npm");
    command.args([what, "--offline", "--ignore-scripts"]);
    command
}

/// Both entries in Node.js, as a module, by `require` and in workers; then every misuse, and
/// options that call the library while they are read.
fn in_node(project: &Path, answer: &str) -> Outcome {
    for script in ["at-once.js", "slim.js", "workers.js", "required.cjs"] {
        let got = output(&mut limited(60, program("node").arg(script).current_dir(project)))?;
        if got.trim_end() != answer {
            return Err(format!("{script}: the core answers {answer}, the package {got}"));
        }
        println!("{script}: {answer}");
    }
    let cases = project.join("cases.jsonl");
    std::fs::write(&cases, cases::all(RANDOM)?)
        .map_err(|error| format!("{}: {error}", cases.display()))?;
    run(program("node").args(["misuse.js", "cases.jsonl"]).current_dir(project))?;
    for script in ["profile.js", "columns.js"] {
        run(program("node").arg(script).current_dir(project))?;
    }
    for entry in ["cupwright", "cupwright/slim"] {
        run(program("node").args(["lazy.js", entry, "cases.jsonl"]).current_dir(project))?;
    }
    Ok(())
}

/// Bundles by Vite and webpack, which must have nothing to say.
fn bundle(folder: &Path, packages: &Path) -> Outcome {
    let vite = tools::node_tool("vite")?;
    for project in BUNDLED.map(|name| folder.join(name)) {
        silently(
            "vite",
            program(&vite)
                .args(["build", "--base", "./", "--outDir", "vite", "--logLevel", "warn"])
                .current_dir(&project),
        )?;
        silently(
            "webpack",
            program("node").arg("tests/js/consumers/webpack.js").args([packages, &project]),
        )?;
    }
    Ok(())
}

/// Runs a command that must succeed without a word.
fn silently(what: &str, command: &mut Command) -> Outcome {
    let output = command.output().map_err(|error| format!("{what}: {error}"))?;
    let said = String::from_utf8_lossy(&[output.stdout, output.stderr].concat()).into_owned();
    if output.status.success() && said.is_empty() {
        return Ok(());
    }
    Err(format!("{what}: {}\n{said}", output.status))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_warning_is_an_error() {
        let shell = |script: &str| silently("x", program("sh").args(["-c", script]));
        assert_eq!(shell("true"), Ok(()));
        assert!(shell("echo large").unwrap_err().ends_with("large\n"));
        assert!(shell("echo old >&2").unwrap_err().ends_with("old\n"));
        assert!(shell("exit 3").unwrap_err().contains("exit status: 3"));
    }
}
