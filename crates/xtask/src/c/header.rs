//! The C header: cbindgen's reading of the binding, with the core's table and constants put in.

use std::cmp::Reverse;
use std::fmt::Write;
use std::path::PathBuf;

use cupwright::quantity::Quantity;

use super::size::{DEEPER, STACK};
use crate::commands::text_of;
use crate::published::{self, Constant, WINDOWS, edges};
use crate::{Outcome, difference, root};

/// The committed header.
pub fn path() -> PathBuf {
    root().join("bindings/c/include/cupwright.h")
}

/// Writes the header.
pub fn write() -> Outcome {
    std::fs::write(path(), made()?).map_err(|error| format!("{}: {error}", path().display()))
}

/// Compares the committed header with one made now.
pub fn check() -> Outcome {
    let committed = text_of(path())?;
    match difference::between(&committed, &made()?) {
        None => {
            println!("{} lines, as committed", committed.lines().count());
            Ok(())
        }
        Some(difference) => Err(format!(
            "the committed header is not the one made from the binding\n{difference}\nIf the change is \
             meant: cargo xtask header"
        )),
    }
}

/// Makes the header.
fn made() -> Outcome<String> {
    let folder = root().join("bindings/c");
    let mut config =
        cbindgen::Config::from_file(folder.join("cbindgen.toml").to_string_lossy().as_ref())?;
    config.after_includes = Some(before_the_functions()?);
    let bindings = cbindgen::Builder::new()
        .with_crate(&folder)
        .with_config(config)
        .generate()
        .map_err(|error| format!("cbindgen: {error}"))?;
    let mut text = Vec::new();
    bindings.write(&mut text);
    let text = String::from_utf8(text).map_err(|error| format!("cbindgen: {error}"))?;
    let text = equations_set_in(&text);
    let sizes = sizes(&crate::c::interface::read()?);
    let functions = "\n#ifdef __cplusplus\nextern";
    ranges_put_in(&text.replacen(functions, &format!("{sizes}{functions}"), 1))
}

/// Equations and examples, fenced in Rust's docs, are set in by four spaces.
fn equations_set_in(text: &str) -> String {
    let (mut out, mut is_equation) = (String::new(), false);
    for line in text.lines() {
        match line.trim() {
            "* ```text" => is_equation = true,
            "* ```" => is_equation = false,
            equation if is_equation => {
                let equation = equation.strip_prefix("* ").unwrap_or_default();
                let _ = writeln!(out, "{}", format!(" *     {equation}").trim_end());
            }
            _ => {
                let _ = writeln!(out, "{line}");
            }
        }
    }
    out
}

/// `{Dose}` becomes `0.1 to 10000 g`.
pub fn ranges_put_in(text: &str) -> Outcome<String> {
    let mut whole = String::new();
    let mut rest = text;
    while let Some(start) = rest.find('{') {
        let (before, from) = rest.split_at(start + 1);
        let name: String = from.chars().take_while(char::is_ascii_alphanumeric).collect();
        let closed = from[name.len()..].starts_with('}');
        if !closed || !name.starts_with(|first: char| first.is_ascii_uppercase()) {
            whole.push_str(before);
            rest = from;
            continue;
        }
        let quantity = named(&name)
            .ok_or_else(|| format!("the docs speak of {{{name}}}, which is no quantity"))?;
        whole.push_str(&before[..start]);
        whole.push_str(&range(quantity));
        rest = &from[name.len() + 1..];
    }
    whole.push_str(rest);
    Ok(whole)
}

/// The quantity with a name as in the core.
fn named(name: &str) -> Option<Quantity> {
    Quantity::ALL.iter().copied().find(|quantity| format!("{quantity:?}") == name)
}

fn range(quantity: Quantity) -> String {
    let unit = match quantity.unit() {
        "" => String::new(),
        unit => format!(" {unit}"),
    };
    format!("{} to {}{unit}", quantity.lowest(), quantity.highest())
}

/// `BrewWater` as `BREW_WATER`.
pub fn screaming(name: &str) -> String {
    let mut out = String::new();
    for c in name.chars() {
        if c.is_ascii_uppercase() && !out.is_empty() {
            out.push('_');
        }
        out.push(c.to_ascii_uppercase());
    }
    out
}

/// Macros and the quantities' codes: what the C compiler must know before the rest.
fn before_the_functions() -> Outcome<String> {
    let mut text = CONVENTIONS.replace("{STACK}", &stack());
    version(&mut text);
    quantities(&mut text);
    limits(&mut text);
    constants(&mut text)?;
    Ok(text)
}

const CONVENTIONS: &str = r#"
/**
 * @file
 * Brewing mathematics for coffee. For C99 and C++11 or later. Link with -Wl,--gc-sections, so that only what
 * is called goes into the image.
 *
 * Every function that can fail returns an int32_t, CUPWRIGHT_STATUS_OK or the reason, and takes its
 * answer's place and an error's place as its last two parameters. The answer is written only on success,
 * the error only on failure. The error may be NULL, and so may a list whose count is 0; the answer and every
 * struct may not.
 *
 * Names carry units: _g grams, _pct percent (never a fraction), _c degrees Celsius, _k kelvin, _s seconds,
 * _ml millilitres, _mg milligrams, _mm millimetres, _kpa kilopascals, _m metres, _j_per_k joules per kelvin,
 * _g_per_g grams per gram, _mg_per_l milligrams per litre, _per_min per minute. Every number is checked
 * against its range, CUPWRIGHT_..._LOWEST to CUPWRIGHT_..._HIGHEST, and against NaN and infinities;
 * nothing is clamped. Symbols in equations: D dose, W brew water, B beverage, T strength, E yield,
 * h moisture, s solids of the water, V vapour, φ held strength, r retention, R ratio, ρ density.
 *
 * Nothing is allocated, nothing is global, nothing is kept after a call but in states that the caller owns: call
 * from any thread, and from an interrupt if its stack and time allow. On a processor without doubles a plan takes
 * millions of instructions, a fit (cupwright_calibrate_...()) up to a hundred million. Answers have the same bits on
 * every processor that has a package. On bare-metal targets the library computes doubles itself, and the caller's
 * floating-point mode does not matter; on computers keep the default, round to nearest.
 *
{STACK} *
 * Hot water scalds and pressing hot liquid can burst a vessel: show the cautions of cupwright_caution_of()
 * and cupwright_plan_recipe(). They defer to local codes, the equipment's instructions and licensed practice.
 */
"#;

/// What calls take of the stack, as far as it is held: the deepest first.
fn stack() -> String {
    let mut deeper = DEEPER;
    deeper.sort_by_key(|(name, most)| (Reverse(*most), *name));
    let mut text = format!(
        " * The stack of many calls, good and bad, stays below these bytes on a Cortex-M0 and M4F, names without cupwright_;\n \
         * of all others that COSTS.md has stack of, below {STACK}. Of columns, profiles and bytes it is not measured.\n *\n"
    );
    for same in deeper.chunk_by(|a, b| a.1 == b.1) {
        let names: Vec<&str> =
            same.iter().map(|(name, _)| name.trim_start_matches("cupwright_")).collect();
        // Writing to a string does not fail.
        let _ = writeln!(text, " *   {}  {}", same[0].1, names.join(", "));
    }
    text
}

fn version(text: &mut String) {
    let version = env!("CARGO_PKG_VERSION");
    text.push_str("\n/** Version of the package. */\n");
    let _ = writeln!(text, "#define CUPWRIGHT_VERSION \"{version}\"");
    for (name, part) in ["MAJOR", "MINOR", "PATCH"].into_iter().zip(version.split('.')) {
        let _ = writeln!(text, "#define CUPWRIGHT_VERSION_{name} {part}");
    }
}

fn quantities(text: &mut String) {
    text.push_str(
        "\n/**\n * What a number is. A value never changes its meaning and is never used again for another.\n \
         * In words: cupwright_quantity_text(), cupwright_unit_text().\n */\nenum cupwright_quantity\n\
         #if defined(__cplusplus) || __STDC_VERSION__ >= 202311L\n  : int32_t\n#endif\n{\n",
    );
    for quantity in Quantity::ALL {
        let _ = writeln!(
            text,
            "    /** {} Unit: {}. */\n    CUPWRIGHT_QUANTITY_{} = {},",
            quantity.meaning(),
            if quantity.unit().is_empty() { "none" } else { quantity.unit() },
            screaming(&format!("{quantity:?}")),
            *quantity as i32
        );
    }
    text.truncate(text.trim_end_matches([',', '\n']).len());
    text.push_str(
        "\n};\n#if !defined(__cplusplus) && __STDC_VERSION__ < 202311L\ntypedef int32_t cupwright_quantity;\n\
         #elif !defined(__cplusplus)\ntypedef enum cupwright_quantity cupwright_quantity;\n#endif\n",
    );
}

fn limits(text: &mut String) {
    text.push_str("\n/* The lowest and highest values accepted. */\n\n");
    for quantity in Quantity::ALL {
        let name = screaming(&format!("{quantity:?}"));
        let _ = writeln!(
            text,
            "/** {}: {}. Source: {}. */\n#define CUPWRIGHT_{name}_LOWEST {}\n#define CUPWRIGHT_{name}_HIGHEST {}",
            capital(quantity.name()),
            range(*quantity),
            quantity.source(),
            literal(quantity.lowest()),
            literal(quantity.highest()),
        );
    }
}

/// A double in C, to its last bit.
pub fn literal(value: f64) -> String {
    if value < 0.0 { format!("({value:?})") } else { format!("{value:?}") }
}

fn capital(words: &str) -> String {
    let mut letters = words.chars();
    letters.next().map_or(String::new(), |first| first.to_uppercase().chain(letters).collect())
}

fn constants(text: &mut String) -> Outcome {
    text.push_str("\n/* Constants with their sources. */\n\n");
    for Constant { name, value, about } in published::constants()? {
        let _ = writeln!(text, "/** {about} */\n#define CUPWRIGHT_{name} {}", literal(value));
    }
    text.push_str("\n/* Published windows: initialisers of a cupwright_window. */\n\n");
    for (name, window) in WINDOWS {
        let edges = edges(&window);
        let (edges, [has_yield, counting]) =
            edges.split_last_chunk().expect("a window ends with two integers");
        let edges: Vec<String> = edges.iter().copied().map(literal).collect();
        let _ = writeln!(
            text,
            "/** {}. */\n#define CUPWRIGHT_{name} {{ {}, {has_yield}, {counting} }}",
            window.source,
            edges.join(", ")
        );
    }
    Ok(())
}

/// Assertions on the sizes of the structs, where doubles are aligned to eight bytes.
fn sizes(interface: &crate::c::interface::Interface) -> String {
    let mut text = String::from(
        "\n/* The library and its user must agree on the size of every struct. */\n\
         #if defined(__cplusplus)\n\
         #define CUPWRIGHT_SIZE(type, bytes) static_assert(sizeof(type) == (bytes) || alignof(double) != 8, #type)\n\
         #elif defined(__STDC_VERSION__) && __STDC_VERSION__ >= 201112L\n\
         #define CUPWRIGHT_SIZE(type, bytes) _Static_assert(sizeof(type) == (bytes) || _Alignof(double) != 8, #type)\n\
         #endif\n\
         #if defined(CUPWRIGHT_SIZE)\n",
    );
    for record in &interface.records {
        let _ =
            writeln!(text, "CUPWRIGHT_SIZE({}, {});", record.name, interface.size(&record.name));
    }
    text.push_str("#undef CUPWRIGHT_SIZE\n#endif\n");
    text
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn ranges_take_the_place_of_names() {
        assert_eq!(
            ranges_put_in("a {Dose}, b {Servings}. struct { int c; }").unwrap(),
            "a 0.1 to 10000 g, b 1 to 1000. struct { int c; }"
        );
        assert!(ranges_put_in("{Dosis}").unwrap_err().contains("{Dosis}"));
    }

    #[test]
    fn equations_lose_their_fences() {
        let text = " * Words.\n *\n * ```text\n * E = T B/D\n *\n *   s\n * ```\n */\n";
        let set_in = " * Words.\n *\n *     E = T B/D\n *\n *       s\n */\n";
        assert_eq!(equations_set_in(text), set_in);
    }

    #[test]
    fn every_enum_that_is_spoken_of_is_there() {
        let text = text_of(path()).unwrap();
        // A name may stand on the next line of a comment.
        let words: Vec<&str> = text.split_whitespace().filter(|word| *word != "*").collect();
        let mut count = 0;
        for pair in words.windows(2) {
            let &[word, name] = pair else { continue };
            let name = name.trim_end_matches(|letter: char| !letter.is_alphanumeric());
            if let ("enum", Some(kind)) = (word, name.strip_prefix("cupwright_")) {
                assert!(text.contains(&format!("\nenum {name}\n")), "{name} is not in the header");
                assert!(text.contains(&format!("CUPWRIGHT_{}_", kind.to_uppercase())), "{name}");
                count += 1;
            }
        }
        assert!(count > 20, "{count}");
    }

    #[test]
    fn names_and_literals() {
        assert_eq!(screaming("BrewWater"), "BREW_WATER");
        assert_eq!(literal(0.1), "0.1");
        assert_eq!(literal(-650.0), "(-650.0)");
        assert_eq!(capital("dose"), "Dose");
    }
}
