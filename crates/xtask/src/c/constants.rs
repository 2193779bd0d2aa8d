//! The header as compilers read it: without a warning in every C and C++ it claims to be, and every
//! macro and every enum value equal to Rust's.

use std::collections::BTreeMap;
use std::fmt::Write;

use cupwright::advise::{Change, Direction};
use cupwright::caution::Caution;
use cupwright::columns;
use cupwright::decision::{Decision, JointDecision};
use cupwright::error::{Limit, Untold};
use cupwright::extraction::Credibility;
use cupwright::heat::Cover;
use cupwright::live::{Cue, Doing, Happening, StepKind, Why};
use cupwright::plan::ContactHeat;
use cupwright::quantity::Quantity;
use cupwright::reading::{Agreement, Zero};
use cupwright::uncertainty::Shape;
use cupwright::verdict::{Counting, Side};

use super::{header, interface};
use crate::commands::{program, quietly, run, text_of};
use crate::{Outcome, published, root, tools};

/// Compiles the header alone with each compiler in each language.
pub fn check_languages() -> Outcome {
    tools::debian(&["gcc", "g++", "clang"])?;
    for (compiler, language, standards) in [
        ("gcc", "c", &["c99", "c11", "c17", "c2x"][..]),
        ("clang", "c", &["c99", "c11", "c17", "c2x"]),
        ("g++", "c++", &["c++11", "c++14", "c++17", "c++20"]),
        ("clang++", "c++", &["c++11", "c++14", "c++17", "c++20"]),
    ] {
        for standard in standards {
            quietly(
                program(compiler)
                    .args(["-x", language, &format!("-std={standard}"), "-fsyntax-only"])
                    .args([
                        "-Wall",
                        "-Wextra",
                        "-Wpedantic",
                        "-Werror",
                        "-Wconversion",
                        "-Wundef",
                        "-Wshadow",
                    ])
                    .arg("-include")
                    .args([header::path(), header::path()]),
            )?;
            println!("{compiler} -std={standard}: not a warning");
        }
    }
    Ok(())
}

/// Compiles and runs a program that holds every constant of the header against Rust's value.
pub fn check_values() -> Outcome {
    tools::debian(&["gcc"])?;
    let text = text_of(header::path())?;
    let expected = expected()?;
    let named = named_in(&text);
    if let Some(odd) = named.iter().find(|name| !expected.contains_key(*name)) {
        return Err(format!("the header has {odd}, which nothing in Rust stands for"));
    }
    if let Some(odd) = expected.keys().find(|name| !named.contains(name)) {
        return Err(format!("the header lacks {odd}"));
    }
    let folder = super::driver::folder()?;
    let source = folder.join("constants.c");
    std::fs::write(&source, assertions(&expected))
        .map_err(|error| format!("{}: {error}", source.display()))?;
    let checker = folder.join("constants");
    quietly(
        program("gcc")
            .args([
                "-std=c11",
                "-Wall",
                "-Wextra",
                "-Wpedantic",
                "-Werror",
                "-Wno-overlength-strings",
            ])
            .arg(format!("-I{}", root().join("bindings/c/include").display()))
            .arg(&source)
            .arg("-o")
            .arg(&checker),
    )?;
    run(&mut program(&checker))
}

/// What a constant must be.
#[derive(Clone, Debug, PartialEq)]
enum Value {
    Integer(i64),
    Double(f64),
    Text(String),
    /// The numbers of a window.
    Window(Vec<f64>),
}

/// Names of the constants in a header: macros with a value, and enum values.
fn named_in(text: &str) -> Vec<String> {
    let mut names = Vec::new();
    for line in text.lines().map(str::trim) {
        let (name, has_value) = match line.strip_prefix("#define ") {
            Some(macro_) => {
                let mut words = macro_.splitn(2, ' ');
                (words.next().unwrap_or_default(), words.next().is_some())
            }
            None => (line.split(' ').next().unwrap_or_default(), line.contains(" = ")),
        };
        // The macro that asserts sizes is gone at the end of the header.
        if name.starts_with("CUPWRIGHT_") && has_value && !name.contains('(') {
            names.push(name.to_string());
        }
    }
    names
}

/// Every constant by the name it must have.
fn expected() -> Outcome<BTreeMap<String, Value>> {
    let mut all = BTreeMap::new();
    let mut put = |name: String, value: Value| {
        assert!(all.insert(format!("CUPWRIGHT_{name}"), value).is_none(), "{name} twice");
    };
    let version = env!("CARGO_PKG_VERSION");
    put("VERSION".to_string(), Value::Text(version.to_string()));
    for (name, part) in ["MAJOR", "MINOR", "PATCH"].into_iter().zip(version.split('.')) {
        put(format!("VERSION_{name}"), Value::Integer(part.parse().map_err(|_| version)?));
    }
    put(
        "ABI_VERSION".to_string(),
        Value::Integer(i64::from(cupwright_c::version::CUPWRIGHT_ABI_VERSION)),
    );
    let bytes = cupwright::profile::PROFILE_BYTES as i64;
    put("PROFILE_BYTES".to_string(), Value::Integer(bytes));
    put("SCALE_BYTES".to_string(), Value::Integer(cupwright::live::SCALE_BYTES as i64));
    put("FOLLOWER_BYTES".to_string(), Value::Integer(cupwright::live::FOLLOWER_BYTES as i64));
    put("ROW_ANSWERED".to_string(), Value::Integer(columns::ANSWERED.into()));
    put("ROW_NO_ANSWER".to_string(), Value::Integer(columns::NO_ANSWER.into()));
    for quantity in Quantity::ALL {
        let name = header::screaming(&format!("{quantity:?}"));
        put(format!("QUANTITY_{name}"), Value::Integer(*quantity as i64));
        put(format!("{name}_LOWEST"), Value::Double(quantity.lowest()));
        put(format!("{name}_HIGHEST"), Value::Double(quantity.highest()));
    }
    for constant in published::constants()? {
        put(constant.name, Value::Double(constant.value));
    }
    for (name, window) in published::WINDOWS {
        put(name.to_string(), Value::Window(published::edges(&window)));
    }
    for (name, code) in codes_of_the_core() {
        put(name, Value::Integer(code));
    }
    // What only the interface knows: its own source says it once.
    let own = ["STATUS_", "AIR_", "BURN_", "NEEDED_", "UNREADABLE_"];
    for (name, code) in interface::read()?.codes {
        let name = name.trim_start_matches("CUPWRIGHT_").to_string();
        if own.iter().any(|own| name.starts_with(own)) {
            put(name, Value::Integer(code));
        }
    }
    Ok(all)
}

/// The core's codes by their names in C.
fn codes_of_the_core() -> Vec<(String, i64)> {
    fn listed<T: std::fmt::Debug + Copy>(
        kind: &str,
        all: impl IntoIterator<Item = T>,
        code: impl Fn(T) -> i64,
    ) -> Vec<(String, i64)> {
        all.into_iter()
            .map(|one| (format!("{kind}_{}", header::screaming(&format!("{one:?}"))), code(one)))
            .collect()
    }
    use Change::{AddMilk, AddWater, Dose, DrinkAsItIs, SameAgain, Time, TimeWithDose, Water};
    use Counting::{FlowThrough, MassBalance, NotStated};
    use Credibility::{AtLimit, BeyondLimit, NearLimit, Ordinary};
    use Decision::{Above, Below, Inside, NotYet, TooUncertain};
    use Direction::{CountingNotStated, Leave, Less, More, NotYetDecided};
    [
        listed("LIMIT", Limit::ALL.iter().copied(), |one| one as i64),
        listed("UNTOLD", Untold::ALL.iter().copied(), |one| one as i64),
        listed("CAUTION", Caution::ALL, |one| one as i64),
        listed("CREDIBILITY", [Ordinary, NearLimit, AtLimit, BeyondLimit], |one| one as i64),
        listed("COVER", [Cover::Open, Cover::Lidded], |one| one as i64),
        listed(
            "CONTACT_HEAT",
            [ContactHeat::CoolingRate, ContactHeat::AtMost, ContactHeat::Unchanged],
            |one| one as i64,
        ),
        listed("AGREEMENT", [Agreement::Mean, Agreement::TakeAnother, Agreement::Median], |one| {
            one as i64
        }),
        listed("ZERO", [Zero::Distilled, Zero::BrewWater], |one| one as i64),
        listed("SIDE", [Side::Below, Side::Inside, Side::Above], |one| one as i64),
        listed("SHAPE", [Shape::Rectangular, Shape::Triangular, Shape::Arcsine], |one| one as i64),
        listed("DECISION", [Inside, Below, Above, NotYet, TooUncertain], |one| one as i64),
        listed(
            "JOINT_DECISION",
            [JointDecision::Inside, JointDecision::Outside, JointDecision::NotYet],
            |one| one as i64,
        ),
        listed("COUNTING", [NotStated, FlowThrough, MassBalance], |one| one as i64),
        listed(
            "CHANGE",
            [DrinkAsItIs, AddWater, AddMilk, SameAgain, Dose, Water, Time, TimeWithDose],
            |one| one as i64,
        ),
        listed("DIRECTION", [Leave, More, Less, NotYetDecided, CountingNotStated], |one| {
            one as i64
        }),
        listed("DOING", Doing::ALL.iter().copied(), |one| one as i64),
        listed("HAPPENING", Happening::ALL.iter().copied(), |one| one as i64),
        listed("STEP", StepKind::ALL.iter().copied(), |one| one as i64),
        listed("CUE", Cue::ALL.iter().copied(), |one| one as i64),
        listed("WHY", Why::ALL.iter().copied(), |one| one as i64),
    ]
    .concat()
}

/// A C program that counts the constants that are not what they must be.
fn assertions(expected: &BTreeMap<String, Value>) -> String {
    let mut text = String::from(
        "#include <stdio.h>\n#include <string.h>\n#include \"cupwright.h\"\n\n\
         static int wrong;\n\n\
         static void check(int is_right, const char *name) {\n    if (!is_right) {\n        \
         printf(\"%s\\n\", name);\n        wrong++;\n    }\n}\n\n\
         static int same(double value, unsigned long long bits) {\n    \
         return memcmp(&value, &bits, sizeof value) == 0;\n}\n\nint main(void) {\n",
    );
    for (name, value) in expected {
        let _ = match value {
            Value::Integer(number) => writeln!(text, "    check({name} == {number}, \"{name}\");"),
            Value::Double(number) => {
                writeln!(
                    text,
                    "    check(same({name}, 0x{:016x}ull), \"{name}\");",
                    number.to_bits()
                )
            }
            Value::Text(words) => {
                writeln!(text, "    check(strcmp({name}, \"{words}\") == 0, \"{name}\");")
            }
            Value::Window(edges) => {
                let fields = [
                    "strength_lowest_pct",
                    "strength_highest_pct",
                    "yield_lowest_pct",
                    "yield_highest_pct",
                ];
                let _ = writeln!(text, "    {{\n        const cupwright_window window = {name};");
                for (field, edge) in fields.into_iter().zip(edges) {
                    let bits = edge.to_bits();
                    let _ = writeln!(
                        text,
                        "        check(same(window.{field}, 0x{bits:016x}ull), \"{name} {field}\");"
                    );
                }
                for (field, code) in ["has_yield", "yield_counting"].into_iter().zip(&edges[4..]) {
                    let _ = writeln!(
                        text,
                        "        check(window.{field} == {code}, \"{name} {field}\");"
                    );
                }
                writeln!(text, "    }}")
            }
        };
    }
    let _ = writeln!(
        text,
        "    printf(\"{} constants, %d wrong\\n\", wrong);\n    return wrong != 0;\n}}",
        expected.len()
    );
    text
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn constants_are_found_in_a_header() {
        let text = "#define CUPWRIGHT_H\n#define CUPWRIGHT_A 1\n    CUPWRIGHT_B = 2,\n\
                    #define CUPWRIGHT_SIZE(type, bytes) x\n * CUPWRIGHT_C = in words\nint x = 3;";
        assert_eq!(named_in(text), ["CUPWRIGHT_A", "CUPWRIGHT_B"]);
    }

    #[test]
    fn each_value_is_asserted_to_its_bits() {
        let text = assertions(&[("X".to_string(), Value::Double(0.1))].into());
        assert!(text.contains("check(same(X, 0x3fb999999999999aull), \"X\");"), "{text}");
    }
}
