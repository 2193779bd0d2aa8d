//! What each function costs on a Cortex-M0 and a Cortex-M4F: flash, memory, stack, instructions.
//!
//! Flash and memory: an image that links the one function, less an image that links none. Stack and
//! instructions: the most of many calls, good and bad, on an emulated board whose clock counts
//! instructions. Not cycles: memories and pipelines differ.

use std::collections::BTreeMap;
use std::fmt::Write;
use std::path::{Path, PathBuf};

use object::{Object, ObjectSection};

use super::calls::dealt;
use super::driver::{self, BOARDS, Board};
use super::interface::{self, Interface};
use crate::commands::{limited, output, program, text_of};
use crate::tables::{self, cell, spaced};
use crate::toolchain::Toolchain;
use crate::{Outcome, root, tools};

/// What a function costs on a board.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Cost {
    flash: u64,
    memory: u64,
    /// What calls take; none for a function that only looks up words.
    call: Option<Call>,
}

/// What calls of a function take.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Call {
    /// Most bytes of stack.
    stack: u64,
    /// Instructions at the example.
    example: u64,
    /// Most instructions.
    most: u64,
}

/// Random cases of each kind for each function.
const RANDOM: u64 = 12;

/// The costs of all functions, and of all of them together, in the order of the interface.
type Table = Vec<(String, Vec<Cost>)>;

/// Bytes of stack that a call may take.
pub const STACK: u64 = 1024;

/// What goes past it, and how far it may: a judgement solves the balance for four inputs, a plan calls
/// nearly everything there is, a hundred repeats are lent as quantities, and a budget is ten terms in the
/// core and ten in C beside the differences of its model, and where a law of extraction is an input all that one fit
/// told together. A fit is lent up to thirty measurements, and tells
/// a residual and a leverage of each. Advice tells up to eight outlooks, and the surest recipe is planned twice.
pub const DEEPER: [(&str, u64); 38] = [
    ("cupwright_live_take", 1472),
    ("cupwright_follow_take", 2048),
    ("cupwright_follow_outlook", 3072),
    ("cupwright_plan_foreseen", 6144),
    ("cupwright_plan_surest", 8064),
    ("cupwright_forecast_strength", 3840),
    ("cupwright_forecast_counted_yield", 3840),
    ("cupwright_forecast_outlook", 3072),
    ("cupwright_advise_on", 8192),
    ("cupwright_extraction_plausibility", 1152),
    ("cupwright_plan_recipe", 3584),
    ("cupwright_uncertainty_of_repeats", 1152),
    ("cupwright_uncertainty_combine", 2048),
    ("cupwright_uncertainty_strength", 2944),
    ("cupwright_uncertainty_flow_through_yield", 2816),
    ("cupwright_uncertainty_steeped_yield", 2816),
    ("cupwright_uncertainty_extraction_yield", 4096),
    ("cupwright_uncertainty_steeped_strength", 2688),
    ("cupwright_uncertainty_beverage", 2688),
    ("cupwright_uncertainty_water_to_reach", 2560),
    ("cupwright_uncertainty_strength_after_water", 2880),
    ("cupwright_uncertainty_mixed_temperature", 2688),
    ("cupwright_uncertainty_strength_of_brix", 2560),
    ("cupwright_uncertainty_settle", 2688),
    ("cupwright_uncertainty_time_to_cool", 2688),
    ("cupwright_uncertainty_temperature_after", 2880),
    ("cupwright_uncertainty_yield_at_time", 3072),
    ("cupwright_uncertainty_time_for_yield", 3072),
    ("cupwright_calibrate_retention_line", 4608),
    ("cupwright_calibrate_expected_beverage", 4608),
    ("cupwright_calibrate_retention", 4352),
    ("cupwright_calibrate_heat_capacity", 4352),
    ("cupwright_calibrate_equilibrium_yield", 4352),
    ("cupwright_calibrate_one_rate", 4608),
    ("cupwright_calibrate_two_rates", 6656),
    ("cupwright_calibrate_cooling", 4608),
    ("cupwright_calibrate_refractive_factor", 3840),
    ("cupwright_calibrate_repeatability", 3840),
];

/// Most instructions of a reading on each board: five in a hundred of 48 MHz at 80 readings a second on the first.
pub const READING: [u64; 2] = [30_000, 8_000];

/// The boards of the table.
fn boards() -> &'static [Board] {
    &BOARDS[..2]
}

fn path() -> PathBuf {
    root().join("bindings/c/COSTS.md")
}

/// Measures and writes the table.
pub fn write() -> Outcome {
    let toolchain = super::archive::packages()?;
    let text = text(&measured()?, &made_with(toolchain)?);
    print!("{text}");
    std::fs::write(path(), text).map_err(|error| format!("{}: {error}", path().display()))
}

/// Measures, and compares with the committed table as far as another compiler may differ.
pub fn check() -> Outcome {
    let committed = text_of(path())?;
    let table = measured()?;
    within_budget(&table)?;
    let text = text(&table, "");
    if prose(&text) != prose(&committed) {
        return Err("the words of COSTS.md are not those of today: cargo xtask size".to_string());
    }
    let fresh = rows(&text);
    let known = rows(&committed);
    for (name, now) in &fresh {
        let then =
            known.get(name).ok_or_else(|| format!("COSTS.md lacks {name}: cargo xtask size"))?;
        if now.len() != then.len() || now.iter().zip(then).any(|(a, b)| differ(*a, *b)) {
            return Err(format!("{name} costs {now:?}, COSTS.md says {then:?}: cargo xtask size"));
        }
    }
    if let Some(gone) = known.keys().find(|name| !fresh.contains_key(*name)) {
        return Err(format!("COSTS.md has {gone}, which is no function: cargo xtask size"));
    }
    println!("{} rows, as committed within a fifth", fresh.len());
    Ok(())
}

/// The words around a table, but for the tools it was made with.
fn prose(text: &str) -> Vec<&str> {
    text.lines().filter(|line| !line.starts_with("| `") && !line.starts_with("Made by")).collect()
}

/// Whether two costs differ by more than the compilers of rustup and of Debian do.
fn differ(a: u64, b: u64) -> bool {
    a.abs_diff(b) > 64.max(a.max(b) / 5)
}

/// The numbers of each row of a table in Markdown, by its first word.
pub fn rows(text: &str) -> BTreeMap<String, Vec<u64>> {
    let numbers = |cells: &[&str]| (1..cells.len()).filter_map(|at| cell(cells, at).ok()).collect();
    let named =
        |cells: Vec<&str>| Some((cells.first()?.trim_matches('`').to_string(), numbers(&cells)));
    tables::rows(text).into_iter().filter_map(named).collect()
}

fn within_budget(table: &Table) -> Outcome {
    for (name, costs) in table {
        let most =
            DEEPER.iter().find(|(deeper, _)| deeper == name).map_or(STACK, |(_, most)| *most);
        for (cost, reading) in costs.iter().zip(READING) {
            if cost.memory > 0 {
                return Err(format!("{name} takes {} bytes of memory of its own", cost.memory));
            }
            if let Some(call) =
                cost.call.filter(|call| name.ends_with("_take") && call.most > reading)
            {
                return Err(format!(
                    "{name} takes {} instructions, more than {reading}",
                    call.most
                ));
            }
            if let Some(call) = cost.call.filter(|call| call.stack > most) {
                return Err(format!(
                    "{name} takes {} bytes of stack, more than {most}",
                    call.stack
                ));
            }
        }
    }
    Ok(())
}

fn measured() -> Outcome<Table> {
    tools::debian(&["gcc-arm-none-eabi", "qemu-system-arm"])?;
    let interface = interface::read()?;
    let names: Vec<&str> =
        interface.functions.iter().map(|function| function.name.as_str()).collect();
    let mut table: Table = names.iter().map(|name| (name.to_string(), Vec::new())).collect();
    table.push(("everything".to_string(), Vec::new()));
    for board in boards() {
        let calls = calls(board, &interface)?;
        let (flash, memory) = linked(board, &[])?;
        for (name, costs) in &mut table {
            let functions = if name == "everything" { &names[..] } else { &[name.as_str()] };
            let (with_flash, with_memory) = linked(board, functions)?;
            costs.push(Cost {
                flash: with_flash - flash,
                memory: with_memory - memory,
                call: calls.get(name.as_str()).copied(),
            });
        }
    }
    Ok(table)
}

/// Bytes of flash and of memory of an image that links some functions.
fn linked(board: &Board, functions: &[&str]) -> Outcome<(u64, u64)> {
    let wanted: Vec<String> = functions.iter().map(|name| format!("-Wl,-u,{name}")).collect();
    let wanted: Vec<&str> = wanted.iter().map(String::as_str).collect();
    let image = board.build(&wanted, &["tests/c/nothing.c", "tests/c/board.c"], "nothing")?;
    occupied(&image)
}

fn occupied(image: &Path) -> Outcome<(u64, u64)> {
    let fail = |error: &dyn std::fmt::Display| format!("{}: {error}", image.display());
    let bytes = std::fs::read(image).map_err(|error| fail(&error))?;
    let file = object::File::parse(&*bytes).map_err(|error| fail(&error))?;
    let (mut flash, mut memory) = (0, 0);
    for section in file.sections() {
        match section.name().map_err(|error| fail(&error))? {
            ".text" | ".ARM.exidx" => flash += section.size(),
            ".data" | ".bss" => memory += section.size(),
            _ => {}
        }
    }
    Ok((flash, memory))
}

/// Stack and instructions of a call of each function, by its name.
fn calls(board: &Board, interface: &Interface) -> Outcome<BTreeMap<String, Call>> {
    let mut calls = BTreeMap::new();
    for dealt in dealt(interface, board.parts) {
        let folder = driver::set_up(interface, &dealt, RANDOM)?;
        calls.append(&mut counted(board, "measure", &folder)?);
    }
    let folder = driver::set_up_brews()?;
    calls.append(&mut counted(board, "measure_brews", &folder)?);
    Ok(calls)
}

/// What an image that measures prints.
fn counted(board: &Board, name: &str, folder: &Path) -> Outcome<BTreeMap<String, Call>> {
    let source = format!("tests/c/{name}.c");
    let sources = [&source, "tests/c/platform_bare.c", "tests/c/board.c"];
    let image = board.build(&[], &sources, name)?;
    let mut run = board.emulate(&image);
    // An instruction takes 128 ns of the emulated clock, a few ticks of the board's.
    run.args(["-icount", "shift=7"]).current_dir(folder);
    let printed = output(&mut limited(300, &run))?;
    let call = |line: &str| {
        let words: Vec<&str> = line.split(' ').collect();
        let [name, example, most, stack] = words[..] else {
            return Err(format!("{}: {line}", board.name));
        };
        let number = |word: &str| word.parse().map_err(|_| format!("{}: {line}", board.name));
        let (stack, example, most) = (number(stack)?, number(example)?, number(most)?);
        Ok((name.to_string(), Call { stack, example, most }))
    };
    printed.lines().map(call).collect()
}

/// The tools that a table is made with.
fn made_with(toolchain: Toolchain) -> Outcome<String> {
    let version = |name: &str| -> Outcome<String> {
        let printed = output(program(name).arg("--version"))?;
        Ok(printed.lines().next().unwrap_or_default().to_string())
    };
    let rustc = toolchain.version()?;
    Ok(format!("{rustc}, {}, {}", version("arm-none-eabi-gcc")?, version("qemu-system-arm")?))
}

fn text(table: &Table, made_with: &str) -> String {
    let mut text = format!(
        "# What each function costs\n\n\
         Made by `cargo xtask size` with {made_with}.\n\n\
         Flash: bytes that an image grows by when it links the one function and nothing else of the library, \
         soft-float included; functions share most of it. Memory of its own: none, for any function. Link with \
         `-Wl,--gc-sections`, or all of it goes in.\n\n\
         Stack: the most bytes of many calls, good and bad, the function's callees included. Instructions: of \
         a call with the inputs of the function's first check value or example, and the most of those many calls, \
         in an emulator that counts instructions and not cycles; where it is millions, up to 104 bytes of the stack \
         are the measurement's own. Functions that give words, take columns, or only begin, change or keep a state or a profile are not measured.\n\n\
         | function | M0 flash | stack | instructions | most | M4F flash | stack | instructions | most |\n\
         |---|---:|---:|---:|---:|---:|---:|---:|---:|\n"
    );
    for (name, costs) in table {
        let _ = write!(text, "| `{name}` |");
        for cost in costs {
            let _ = match cost.call {
                Some(Call { stack, example, most }) => {
                    let (flash, example, most) =
                        (spaced(cost.flash), spaced(example), spaced(most));
                    write!(text, " {flash} | {stack} | {example} | {most} |")
                }
                None => write!(text, " {} | | | |", spaced(cost.flash)),
            };
        }
        text.push('\n');
    }
    text
}

#[cfg(test)]
mod tests {
    use super::*;

    const fn calls(stack: u64, example: u64, most: u64) -> Option<Call> {
        Some(Call { stack, example, most })
    }

    #[test]
    fn rows_are_read_back() {
        let table = vec![
            (
                "a".to_string(),
                vec![Cost { flash: 12_345, memory: 0, call: calls(88, 1_234_567, 2_000_000) }],
            ),
            ("b".to_string(), vec![Cost { flash: 9, memory: 0, call: None }]),
        ];
        let rows = rows(&text(&table, "anything"));
        assert_eq!(rows["a"], [12_345, 88, 1_234_567, 2_000_000]);
        assert_eq!(rows["b"], [9]);
    }

    #[test]
    fn a_fifth_is_let_pass() {
        assert!(!differ(1000, 1200) && !differ(10, 70));
        assert!(differ(1000, 1300) && differ(10, 80));
    }

    #[test]
    fn too_much_stack_or_memory_is_refused() {
        let row = |memory, stack| {
            vec![("x".to_string(), vec![Cost { flash: 1, memory, call: calls(stack, 1, 1) }])]
        };
        assert!(within_budget(&row(0, 1024)).is_ok());
        assert!(within_budget(&row(0, 1032)).unwrap_err().contains("1032 bytes of stack"));
        assert!(within_budget(&row(4, 8)).unwrap_err().contains("4 bytes of memory"));
    }
}
