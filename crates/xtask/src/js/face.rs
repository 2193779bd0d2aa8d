//! The JavaScript face of every function, and its types, written from the C interface: one room of
//! functions each, plain objects in and out, docs with ranges.

use std::fmt::Write;

use cupwright::live::{FOLLOWER_BYTES, SCALE_BYTES};
use cupwright::quantity::Quantity;
use formulas::FORMULAS;

use crate::Outcome;
use crate::c::calls::function_of;
use crate::c::header::{ranges_put_in, screaming};
use crate::c::interface::{self, Function, Interface, Record, Type, Variable};

/// The two texts that are committed.
pub struct Face {
    /// What runs.
    pub code: String,
    /// What TypeScript and editors read.
    pub types: String,
}

/// Where the inputs lie in the free memory of the module: behind the error and the answer, see `call.js`.
const INPUTS_AT: usize = 1152;

/// Items of a list that `call.js` takes at most.
const MOST_ITEMS: usize = 100;

/// Bytes of the error before the answer, see `call.js`.
const ERROR: usize = 64;

/// Bytes that a call has for error, answer and inputs, see `call.js`.
const ROOM: usize = 8192;

/// What a field means in JavaScript.
pub enum Meaning {
    Number,
    /// A count: an integer in C.
    Count,
    /// A text that stands for a code of an enum.
    Choice(String),
    Boolean,
    /// Says whether others are there: not a field in JavaScript.
    Flag,
    /// A row of the quantity table, by its key.
    Quantity,
    /// A set of cautions: a list of texts.
    Cautions,
    Record(String),
    Array(String, usize),
    /// As many numbers as another field says, so many at most.
    Numbers(usize),
    /// Rows of numbers, so many of so many.
    Table(usize, usize),
}

/// What an integer stands for, by its name and docs.
pub fn meaning(variable: &Variable) -> Meaning {
    match &variable.kind {
        Type::Double => Meaning::Number,
        Type::Unsigned => Meaning::Cautions,
        Type::Record(name) => Meaning::Record(name.clone()),
        Type::Array(of, length) => match &**of {
            Type::Record(name) => Meaning::Array(name.clone(), *length),
            Type::Double => Meaning::Numbers(*length),
            Type::Array(of, columns) if **of == Type::Double => Meaning::Table(*length, *columns),
            other => panic!("{}: an array of {other:?}", variable.name),
        },
        Type::Int if variable.name.starts_with("has_") => Meaning::Flag,
        Type::Int => match variable.about.split_once("enum cupwright_") {
            Some((_, rest)) => {
                let name: String =
                    rest.chars().take_while(|c| c.is_ascii_alphanumeric() || *c == '_').collect();
                if name == "quantity" { Meaning::Quantity } else { Meaning::Choice(name) }
            }
            None if ["{", "counted from 0"].iter().any(|words| variable.about.contains(words))
                || variable.name.ends_with("_count") =>
            {
                Meaning::Count
            }
            None => Meaning::Boolean,
        },
        other => panic!("{}: {other:?} in a struct", variable.name),
    }
}

/// The key of the quantity that a field's docs name in braces.
fn key_of(field: &Variable) -> String {
    let name = field.about.split_once('{').and_then(|(_, rest)| rest.split_once('}'));
    screaming(name.unwrap_or_else(|| panic!("{}: a count of what?", field.name)).0).to_lowercase()
}

/// The flag that says whether a field is there: the one that says most of its name. A choice that may be
/// none is its own flag, and that of the fields that begin with its name.
pub fn flag_of<'a>(record: &'a Record, field: &str) -> Option<&'a str> {
    let flags = record.fields.iter().filter_map(|flag| {
        let stem = match flag.name.strip_prefix("has_") {
            None if flag.about.contains("; 0 for nothing") => Some(flag.name.as_str()),
            stem => stem,
        };
        Some((flag.name.as_str(), stem?))
    });
    let flags = flags.filter(|(_, stem)| {
        field.strip_prefix(stem).is_some_and(|rest| rest.is_empty() || rest.starts_with('_'))
    });
    flags.max_by_key(|(_, stem)| stem.len()).map(|(flag, _)| flag)
}

/// The choices at which a field is looked at, from its docs: `looked at for CUPWRIGHT_AIR_PRESSURE`.
pub fn chosen_at(about: &str) -> Option<(String, Vec<String>)> {
    let (_, rest) = about.split_once("looked at for ")?;
    let mut kind = String::new();
    let mut values = Vec::new();
    for word in rest.split([' ', '.', ';']).filter_map(|word| word.strip_prefix("CUPWRIGHT_")) {
        let (of, value) = word.split_once('_')?;
        kind = of.to_lowercase();
        values.push(value.to_lowercase());
    }
    Some((kind, values))
}

/// `water_ratio` as `waterRatio`.
pub fn camel(snake: &str) -> String {
    let mut words = snake.split('_');
    let mut name = words.next().unwrap_or_default().to_string();
    for word in words {
        let mut letters = word.chars();
        name.extend(letters.next().map(|first| first.to_ascii_uppercase()));
        name.push_str(letters.as_str());
    }
    name
}

/// `cupwright_heat_walk` as `HeatWalk`.
fn type_name(record: &str) -> String {
    let name = camel(record.trim_start_matches("cupwright_"));
    name[..1].to_uppercase() + &name[1..]
}

/// Codes of an enum with the texts that stand for them.
pub fn codes(interface: &Interface, name: &str) -> Vec<(i64, String)> {
    let prefix = format!("CUPWRIGHT_{}_", name.to_uppercase());
    let mut codes: Vec<_> = interface
        .codes
        .iter()
        .filter_map(|(code, value)| Some((*value, code.strip_prefix(&prefix)?.to_lowercase())))
        .collect();
    codes.sort();
    codes
}

/// Makes both texts.
pub fn made() -> Outcome<Face> {
    let interface = interface::read()?;
    let mut face = Face { code: String::from(CODE_HEAD), types: String::new() };
    tables(&interface, &mut face);
    bind(&interface, &mut face.code);
    records(&interface, &mut face);
    let mut rooms: Vec<(&str, Vec<(&str, &Function)>)> = Vec::new();
    for formula in FORMULAS {
        let (room, name) = formula.id.split_once('.').expect("a formula is named room.function");
        let c_name = function_of(formula.id);
        let function = interface.function(&c_name);
        match rooms.last_mut().filter(|(last, _)| *last == room) {
            Some((_, functions)) => functions.push((name, function)),
            None => rooms.push((room, vec![(name, function)])),
        }
    }
    for (room, functions) in &rooms {
        let _ = writeln!(face.code, "export const {room} = Object.freeze({{");
        let _ = writeln!(face.types, "export namespace {room} {{");
        for (name, function) in functions {
            one(&interface, room, name, function, &mut face);
        }
        face.code.push_str("});\n\n");
        face.types.push_str("}\n\n");
    }
    profile(&interface, &mut face);
    live(&interface, &mut face.code);
    face.types = ranges_put_in(&words(&interface, &face.types))?;
    face.code = face.code.trim_end().to_string() + "\n";
    face.types = format!("{TYPES_HEAD}{}\n{}\n", super::about::types()?, face.types.trim_end());
    Ok(face)
}

const CODE_HEAD: &str = "// Made by `cargo xtask face`. Do not edit.

import {
  answer, answered, base, boolean, bytes, bytesAt, cautions, choice, doubles, f64, i32, integer, items, list, misspelt, number, numbers,
  optional, places, put, putBytes, putEach, quantity, record, table, version,
} from \"./call.js\";

";

const TYPES_HEAD: &str = "// Made by `cargo xtask face`. Do not edit.

export { columns } from \"./columns.js\";
export { live } from \"./live.js\";

";

/// What states of a scale and of a brew are for, and whole columns: `live.js` and `columns.js` are written by hand.
const BY_HAND: [&str; 3] = ["cupwright_live_", "cupwright_follow_", "cupwright_columns_"];

fn is_by_hand(name: &str) -> bool {
    BY_HAND.iter().any(|before| name.starts_with(before))
}

/// Whether code by hand lends a record to a function, or reads one.
fn is_lent(interface: &Interface, name: &str) -> bool {
    let takes = |function: &Function| {
        function.parameters.iter().any(|parameter| match &parameter.kind {
            Type::In(of) | Type::Out(of) => **of == Type::Record(name.to_string()),
            _ => false,
        })
    };
    is_by_hand(name) || interface.functions.iter().any(|of| is_by_hand(&of.name) && takes(of))
}

/// The two functions that take bytes, or give them.
const OF_BYTES: [&str; 2] = ["cupwright_profile_to_bytes", "cupwright_profile_from_bytes"];

/// What answers no formula but keeps fits in a profile, and asks it.
fn of_profile(interface: &Interface) -> impl Iterator<Item = (&str, &Function)> {
    interface.functions.iter().filter_map(|function| {
        let name = function.name.strip_prefix("cupwright_profile_")?;
        (!OF_BYTES.contains(&function.name.as_str())).then_some((name, function))
    })
}

/// In JSON a profile says its version.
const VERSIONED: &str = "cupwright_profile";

/// A profile to bytes and back, kept and asked.
fn profile(interface: &Interface, face: &mut Face) {
    let record = "cupwright_profile";
    assert!(ERROR + interface.size(record) <= INPUTS_AT, "{record} reaches into the inputs");
    let bytes = cupwright::profile::PROFILE_BYTES;
    let doubles = doubles(interface, record);
    let _ = write!(
        face.code,
        r#"const PROFILE_TO_BYTES_OPTIONS = new Set(["profile"]);
const PROFILE_FROM_BYTES_OPTIONS = new Set(["bytes"]);
export const profile = Object.freeze({{
  toBytes(o) {{
    record(o, 1, PROFILE_TO_BYTES_OPTIONS, "options");
    const profile = takeProfile(o.profile, "profile");
    answered(cupwrightProfileToBytes(put(profile, {INPUTS_AT}, {doubles}), answer, base));
    return {{ bytes: bytesAt(answer, {bytes}) }};
  }},
  fromBytes(o) {{
    record(o, 1, PROFILE_FROM_BYTES_OPTIONS, "options");
    const given = bytes(o.bytes, "bytes", {bytes});
    answered(cupwrightProfileFromBytes(putBytes(given.values, {INPUTS_AT}), given.count, answer, base));
    return getProfile(answer);
  }},
"#
    );
    face.types.push_str(PROFILE_TYPES);
    for (name, function) in of_profile(interface) {
        one(interface, "profile", name, function, face);
    }
    face.code.push_str("});\n");
    face.types.push_str("}\n\n");
}

const PROFILE_TYPES: &str = r#"export namespace profile {
  /**
   * A profile as bytes, the same on every processor: little endian, with a version and a check value.
   *
   * @throws {@link Refusal} For an input that is not accepted.
   */
  function toBytes(options: { profile: Profile }): { bytes: Uint8Array };
  /**
   * A profile from its bytes. No damaged one is ever read: a single wrong byte is always found.
   *
   * @throws {@link Refusal} With `unreadable` for bytes that are no profile, or a damaged one; with `out_of_range` for a
   * number that its field does not accept.
   */
  function fromBytes(options: { bytes: Uint8Array }): Profile;
"#;

// A follower's bytes do not reach into the inputs.
const _: () = assert!(ERROR + FOLLOWER_BYTES <= INPUTS_AT);

/// What `live.js` and `columns.js` must know of the module's memory.
fn live(interface: &Interface, code: &mut String) {
    let (step, follower) = ("cupwright_live_step", interface.size("cupwright_follower"));
    let most = Quantity::StepCount.highest() as usize;
    assert!(INPUTS_AT + follower + most * interface.size(step) <= ROOM, "a recipe is too long");
    let _ = write!(
        code,
        "\n/** Bytes of states and of what is kept of them, where one is lent after the base, and numbers of what goes with it. */\n\
         export const SCALE = {};\n\
         export const FOLLOWER = {follower};\n\
         export const SCALE_BYTES = {SCALE_BYTES};\n\
         export const FOLLOWER_BYTES = {FOLLOWER_BYTES};\n\
         export const STATE_AT = {INPUTS_AT};\n\
         export const SETUP_DOUBLES = {};\n\
         export const STEP_DOUBLES = {};\n\
         export const STEP_NUMBERS = {};\n\
         export const INTENDED_DOUBLES = {};\n\
         export const WINDOW_DOUBLES = {};\n\
         export const LOSSES_DOUBLES = {};\n",
        interface.size("cupwright_scale"),
        doubles(interface, "cupwright_live_setup"),
        doubles(interface, step),
        numbers(interface, step),
        doubles(interface, "cupwright_intended"),
        doubles(interface, "cupwright_window"),
        doubles(interface, "cupwright_losses")
    );
}

/// Names of C in a text as JavaScript says them.
fn words(interface: &Interface, text: &str) -> String {
    let mut text = text.to_string();
    for formula in FORMULAS {
        let (room, name) = formula.id.split_once('.').expect("a formula is named room.function");
        text = text.replace(
            &format!("{}()", function_of(formula.id)),
            &format!("{room}.{}()", camel(name)),
        );
    }
    for (name, function) in of_profile(interface) {
        let said = format!("profile.{}()", camel(name));
        text = text.replace(&format!("{}()", function.name), &said);
    }
    text = text.replace("cupwright_caution_text()", "cautionText()");
    for name in interface.codes.keys() {
        let said =
            name.rsplit_once("STATUS_").map_or(name.as_str(), |(_, status)| status).to_lowercase();
        if name.contains("_STATUS_") {
            text = text.replace(&format!("Fails with {name}"), &format!("Fails with `{said}`"));
            text = text.replace(name.as_str(), &format!("`{said}`"));
        }
    }
    for (in_c, in_javascript) in PHRASES {
        text = text.replace(in_c, in_javascript);
    }
    for name in interface.codes.keys() {
        let choice = name.trim_start_matches("CUPWRIGHT_");
        if let Some((_, value)) = choice.split_once('_') {
            for before in ["for", "and", "is"] {
                let said = format!("{before} \"{}\"", value.to_lowercase());
                text = text.replace(&format!("{before} {name}"), &said);
            }
        }
    }
    text = without_enums(&text);
    text.replace("CUPWRIGHT_", "constants.")
}

/// What C says and JavaScript says otherwise: absent values are null there, sets are lists.
const PHRASES: [(&str, &str); 20] = [
    ("; looked at for ", "; needed for "),
    (": 1 or 0.", "."),
    ("NULL where there are none.", "Empty where there are none."),
    ("A bit 1 << n for each of enum cupwright_caution.", "What can hurt."),
    (": a bit 1 << n for each of enum cupwright_caution", ""),
    ("; 0 without one", "; null without one"),
    ("; 0 where unknown", "; null where unknown"),
    ("; 0 behind them", ""),
    ("; 0 where nothing", "; null where nothing"),
    ("; 0 for anything", "; null for anything"),
    (" Only so many as are counted mean something.", ""),
    ("; 0 for nothing", "; null for nothing"),
    ("cupwright_live_count_anew()", "countAnew()"),
    ("cupwright_follow_set_lead()", "setLead()"),
    ("as enum cupwright_happening says", "as its kind says"),
    ("What is not there is 0.", "What is not there is null."),
    ("; 0 for a single", "; null for a single"),
    ("; all zero with", "; null with"),
    ("; all zero where", "; null where"),
    ("All zero where", "None where"),
];

/// Without "one of enum cupwright_cover": the type says so.
fn without_enums(text: &str) -> String {
    const BEFORE: &str = ": one of enum cupwright_";
    let mut text = text.to_string();
    while let Some(start) = text.find(BEFORE) {
        let name = &text[start + BEFORE.len()..];
        let end = name.find(|c: char| !c.is_ascii_alphanumeric() && c != '_').unwrap_or(name.len());
        text.replace_range(start..start + BEFORE.len() + end, "");
    }
    text
}

/// A function's name in the face's own scope.
fn bound(function: &Function) -> String {
    camel(&function.name)
}

/// The module's functions as variables: faster to reach than fields of an object.
fn bind(interface: &Interface, code: &mut String) {
    let functions: Vec<&Function> = FORMULAS
        .iter()
        .map(|f| function_of(f.id))
        .chain(OF_BYTES.map(str::to_string))
        .chain(of_profile(interface).map(|(_, function)| function.name.clone()))
        .map(|name| interface.function(&name))
        .collect();
    let names: Vec<String> = functions.iter().map(|function| bound(function)).collect();
    let _ = writeln!(code, "let {};", names.join(", "));
    let by_hand: Vec<&Function> =
        interface.functions.iter().filter(|f| is_by_hand(&f.name)).collect();
    let names: Vec<String> = by_hand.iter().map(|function| bound(function)).collect();
    let _ = writeln!(code, "export let {};\n", names.join(", "));
    code.push_str("/** Takes the functions of a module. */\nexport function bind(exports) {\n");
    for function in functions.into_iter().chain(by_hand) {
        let _ = writeln!(code, "  {} = exports.{};", bound(function), function.name);
    }
    code.push_str("}\n\n");
}

/// Texts of the choices.
fn tables(interface: &Interface, face: &mut Face) {
    let mut names = Vec::new();
    let is_seen = |record: &&Record| record.name != "cupwright_error" && !record.is_state();
    let records = interface.records.iter().filter(is_seen);
    let fields = records.flat_map(|record| &record.fields);
    let formulas = FORMULAS.iter().map(|f| interface.function(&function_of(f.id)));
    for variable in fields.chain(formulas.flat_map(|function| &function.parameters)) {
        if let Some(name) = choice_of(variable)
            && !names.contains(&name)
        {
            names.push(name);
        }
    }
    for name in names {
        let codes = codes(interface, &name);
        let texts: Vec<String> = codes.iter().map(|(_, text)| format!("{text:?}")).collect();
        // Codes count from one, or from zero.
        let first = codes.first().map_or(1, |(code, _)| *code);
        assert!(codes.iter().zip(first..).all(|((code, _), at)| *code == at), "{name}: {codes:?}");
        let nulls = "null, ".repeat(usize::try_from(first).expect("no code is below zero"));
        let _ =
            writeln!(face.code, "const {} = [{nulls}{}];", screaming_of(&name), texts.join(", "));
        let _ = writeln!(face.types, "export type {} = {};", type_name(&name), texts.join(" | "));
    }
    face.code.push('\n');
    face.types.push('\n');
}

/// The enum of a field, a parameter or an answer, if it is a choice.
pub fn choice_of(variable: &Variable) -> Option<String> {
    let is_integer = match &variable.kind {
        Type::Int => true,
        Type::Out(to) => **to == Type::Int,
        _ => false,
    };
    let kind = if is_integer { Type::Int } else { return None };
    match meaning(&Variable { kind, ..variable.clone() }) {
        Meaning::Choice(name) => Some(name),
        _ => None,
    }
}

fn screaming_of(name: &str) -> String {
    screaming(&type_name(name))
}

/// What takes and what gives each struct, and its type.
fn records(interface: &Interface, face: &mut Face) {
    for record in &interface.records {
        if record.name == "cupwright_error" || record.is_state() {
            continue;
        }
        let (is_in, is_out) = ways(interface, &record.name);
        if is_in {
            taker(interface, record, &mut face.code);
        }
        if is_out {
            reader(interface, record, &mut face.code);
        }
        type_of(record, is_in, is_out, &mut face.types);
    }
}

/// Whether a struct goes in, and whether it comes out, itself or in another.
fn ways(interface: &Interface, name: &str) -> (bool, bool) {
    let holds = |outer: &str| {
        outer == name
            || outer != "cupwright_error"
                && !interface.record(outer).is_state()
                && inner_records(interface, outer).iter().any(|inner| inner == name)
    };
    let (mut is_in, mut is_out) = (false, false);
    for function in &interface.functions {
        for parameter in &function.parameters {
            match &parameter.kind {
                Type::In(to) => is_in |= matches!(&**to, Type::Record(outer) if holds(outer)),
                Type::Out(to) => is_out |= matches!(&**to, Type::Record(outer) if holds(outer)),
                _ => {}
            }
        }
    }
    (is_in, is_out)
}

fn inner_records(interface: &Interface, name: &str) -> Vec<String> {
    let mut inner = Vec::new();
    for field in &interface.record(name).fields {
        if let Meaning::Record(of) | Meaning::Array(of, _) = meaning(field) {
            inner.extend(inner_records(interface, &of));
            inner.push(of);
        }
    }
    inner
}

/// Fields as JavaScript has them: without flags.
fn visible(record: &Record) -> Vec<&Variable> {
    record.fields.iter().filter(|field| !matches!(meaning(field), Meaning::Flag)).collect()
}

/// `function takeBrew(o, name)`: reads and checks an object's fields, each once, and gives back the
/// numbers for memory. Nothing is written yet: other options may have getters that call the module.
fn taker(interface: &Interface, record: &Record, code: &mut String) {
    let name = type_name(&record.name);
    let fields = visible(record);
    let mut names: Vec<String> = fields.iter().map(|field| format!("{:?}", field.name)).collect();
    let is_optional = |field: &Variable| flag_of(record, &field.name).is_some();
    let chosen: Vec<_> = fields.iter().filter_map(|field| chosen_at(&field.about)).collect();
    let mut needed = fields
        .iter()
        .filter(|field| !is_optional(field) && chosen_at(&field.about).is_none())
        .count();
    if record.name == VERSIONED {
        names.push("\"version\"".to_string());
        needed += 1;
    }
    let set = format!("{}_FIELDS", screaming(&name));
    let export = if is_lent(interface, &record.name) { "export " } else { "" };
    let _ = writeln!(code, "{export}const {set} = new Set([{}]);", names.join(", "));
    let _ = writeln!(
        code,
        "{export}function take{name}(o, name) {{\n  record(o, {needed}, {set}, name);"
    );
    let body = code.len();
    if record.name == VERSIONED {
        let known = cupwright::profile::PROFILE_VERSION;
        let _ = writeln!(code, "  version(o.version, {known});");
    }
    // What other values depend on is read before them.
    let is_first = |field: &Variable| {
        is_optional(field) || chosen.iter().any(|(choice, _)| *choice == field.name)
    };
    for field in fields.iter().filter(|field| is_first(field)) {
        let _ = writeln!(code, "  const {} = {};", field.name, taken(record, field));
    }
    for flag in &record.fields {
        let governed = governed(record, &flag.name);
        if governed.len() > 1 {
            let _ = writeln!(code, "  if ({}) {{", are_there(&governed));
            for field in governed {
                let _ = writeln!(code, "    number({field}, {field:?});");
            }
            code.push_str("  }\n");
        }
    }
    code.push_str("  return [\n");
    for field in &record.fields {
        let own = &field.name;
        let value = match meaning(field) {
            Meaning::Record(of) if is_optional(field) => {
                let zeros = vec!["0"; numbers(interface, &of)];
                format!("...({own} ?? [{}])", zeros.join(", "))
            }
            Meaning::Record(_) | Meaning::Numbers(_) | Meaning::Table(..) => {
                format!("...{}", taken(record, field))
            }
            Meaning::Flag => {
                let governed = governed(record, own);
                assert!(!governed.is_empty(), "{}.{own}: nothing for it", record.name);
                format!("{} ? 1 : 0", are_there(&governed))
            }
            _ if is_optional(field) => format!("{own} ?? 0"),
            _ if is_first(field) => own.clone(),
            _ => taken(record, field),
        };
        let _ = writeln!(code, "    {value},");
    }
    let integers = record.fields.iter().filter(|field| field.kind == Type::Int);
    if integers.count() % 2 == 1 {
        code.push_str("    0, // padding\n");
    }
    code.push_str("  ];\n");
    watched(code, body, "  ", &set);
    code.push_str("}\n\n");
}

/// Puts lines that read an object into a `try`: what a missing field was misspelt as is looked for when it
/// is missed, and costs nothing before.
fn watched(code: &mut String, from: usize, indent: &str, set: &str) {
    let body = code.split_off(from);
    let _ = writeln!(code, "{indent}try {{");
    for line in body.lines() {
        let _ = writeln!(code, "  {line}");
    }
    let _ = writeln!(code, "{indent}}} catch (thrown) {{");
    let _ = writeln!(code, "{indent}  throw misspelt(thrown, o, {set});\n{indent}}}");
}

/// The doubles that a struct begins with; integers fill the rest.
fn doubles(interface: &Interface, name: &str) -> usize {
    let mut doubles = 0;
    for (field, offset) in interface.offsets(name) {
        let own = match meaning(field) {
            Meaning::Number => 1,
            Meaning::Numbers(count) => count,
            Meaning::Table(rows, columns) => rows * columns,
            Meaning::Record(of) => self::doubles(interface, &of),
            _ => 0,
        };
        // Else `put` of `call.js` would write to other places.
        let is_next = offset == doubles * size_of::<f64>();
        assert!(own == 0 || is_next, "{name}.{}: a double behind an integer", field.name);
        doubles += own;
    }
    doubles
}

/// The numbers of a struct for memory, with one for padding at its end.
fn numbers(interface: &Interface, name: &str) -> usize {
    let doubles = doubles(interface, name);
    doubles + (interface.size(name) - doubles * size_of::<f64>()) / size_of::<i32>()
}

/// The fields that a flag is for.
fn governed<'a>(record: &'a Record, flag: &str) -> Vec<&'a str> {
    let names = record.fields.iter().map(|field| field.name.as_str());
    names.filter(|name| flag_of(record, name) == Some(flag)).collect()
}

/// Whether any of the fields is given, as JavaScript asks it.
fn are_there(fields: &[&str]) -> String {
    let tests: Vec<String> = fields.iter().map(|field| format!("{field} !== null")).collect();
    tests.join(" || ")
}

/// A field read and checked: a number for memory, a record's numbers.
fn taken(record: &Record, field: &Variable) -> String {
    let (value, name) = (format!("o.{}", field.name), format!("{:?}", field.name));
    let (check, more) = match meaning(field) {
        Meaning::Number => ("number".to_string(), None),
        // Which one of a list it is, is counted, and no quantity.
        Meaning::Count if field.about.contains("counted from 0") => ("number".to_string(), None),
        Meaning::Count => ("integer".to_string(), Some(format!("{:?}", key_of(field)))),
        Meaning::Boolean => ("boolean".to_string(), None),
        Meaning::Choice(of) => ("choice".to_string(), Some(screaming_of(&of))),
        Meaning::Record(of) => (format!("take{}", type_name(&of)), None),
        Meaning::Numbers(count) => ("places".to_string(), Some(count.to_string())),
        Meaning::Table(rows, columns) => ("table".to_string(), Some(format!("{rows}, {columns}"))),
        Meaning::Flag | Meaning::Quantity | Meaning::Cautions | Meaning::Array(..) => {
            panic!("{}.{name} is not given", record.name)
        }
    };
    let more = more.map(|more| format!(", {more}")).unwrap_or_default();
    if flag_of(record, &field.name).is_some() {
        return format!("optional({value}, {name}, {check}{more})");
    }
    let call = format!("{check}({value}, {name}{more})");
    match chosen_at(&field.about) {
        Some((kind, choices)) => {
            let texts = screaming_of(&kind);
            let tests: Vec<String> =
                choices.iter().map(|choice| format!("{texts}[{kind}] === {choice:?}")).collect();
            format!("{} ? {call} : 0", tests.join(" || "))
        }
        None => call,
    }
}

/// `function getBrew(at)`: an object from memory.
fn reader(interface: &Interface, record: &Record, code: &mut String) {
    let name = type_name(&record.name);
    let export = if is_lent(interface, &record.name) { "export " } else { "" };
    let _ = writeln!(code, "{export}function get{name}(at) {{\n  return {{");
    if record.name == VERSIONED {
        let _ = writeln!(code, "    version: {},", cupwright::profile::PROFILE_VERSION);
    }
    let offsets = interface.offsets(&record.name);
    for (field, offset) in &offsets {
        let double = format!("f64[(at + {offset}) >> 3]");
        let integer = format!("i32[(at + {offset}) >> 2]");
        let value = match meaning(field) {
            Meaning::Flag => continue,
            Meaning::Number => double,
            Meaning::Count => integer,
            Meaning::Boolean => format!("{integer} !== 0"),
            Meaning::Choice(of) => format!("{}[{integer}]", screaming_of(&of)),
            Meaning::Quantity => format!("quantity({integer})"),
            Meaning::Cautions => format!("cautions({integer})"),
            Meaning::Record(of) => format!("get{}(at + {offset})", type_name(&of)),
            Meaning::Array(of, length) => {
                let size = interface.size(&of);
                let count = count_at(&offsets, field);
                format!(
                    "list(i32[(at + {count}) >> 2], {length}, at + {offset}, {size}, get{})",
                    type_name(&of)
                )
            }
            Meaning::Numbers(_) => {
                format!("doubles(i32[(at + {}) >> 2], at + {offset})", count_at(&offsets, field))
            }
            Meaning::Table(rows, columns) => {
                let size = columns * size_of::<f64>();
                format!(
                    "list({rows}, {rows}, at + {offset}, {size}, (row) => doubles({columns}, row))"
                )
            }
        };
        let value = match flag_of(record, &field.name) {
            Some(flag) => {
                let (_, at) = offsets
                    .iter()
                    .find(|(other, _)| other.name == flag)
                    .expect("the flag is a field");
                format!("i32[(at + {at}) >> 2] ? {value} : null")
            }
            None => value,
        };
        // How long a list is, the list says itself.
        if field.name.ends_with("_count") {
            continue;
        }
        let _ = writeln!(code, "    {}: {value},", field.name);
    }
    code.push_str("  };\n}\n\n");
}

/// The field that says how many items of an array there are: its own count, or the one in its docs.
pub fn count_of(field: &Variable) -> String {
    match field.about.replace('\n', " ").split_once("as many as there are ") {
        Some((_, rest)) => rest.chars().take_while(char::is_ascii_lowercase).collect(),
        None => format!("{}_count", field.name.trim_end_matches('s')),
    }
}

/// Where that stands.
fn count_at(offsets: &[(&Variable, usize)], field: &Variable) -> usize {
    let count = count_of(field);
    let found = offsets.iter().find(|(other, _)| other.name == count);
    found.unwrap_or_else(|| panic!("how many {}?", field.name)).1
}

fn type_of(record: &Record, is_in: bool, is_out: bool, types: &mut String) {
    let _ = writeln!(types, "export interface {} {{", type_name(&record.name));
    if record.name == VERSIONED {
        let known = cupwright::profile::PROFILE_VERSION;
        let _ = writeln!(types, "  /** Version of the fields. */\n  version: {known};");
    }
    for field in visible(record) {
        if field.name.ends_with("_count") {
            continue;
        }
        let kind = match meaning(field) {
            Meaning::Number | Meaning::Count => "number".to_string(),
            Meaning::Boolean => "boolean".to_string(),
            Meaning::Choice(of) => type_name(&of),
            Meaning::Quantity => "QuantityKey".to_string(),
            Meaning::Cautions => "Caution[]".to_string(),
            Meaning::Record(of) => type_name(&of),
            Meaning::Array(of, _) => format!("{}[]", type_name(&of)),
            Meaning::Numbers(_) => "number[]".to_string(),
            Meaning::Table(..) => "number[][]".to_string(),
            Meaning::Flag => continue,
        };
        let optional = flag_of(record, &field.name).is_some() || chosen_at(&field.about).is_some();
        let (mark, or_null) = match (optional, is_in, is_out) {
            (false, ..) => ("", ""),
            (true, true, _) => ("?", " | null"),
            (true, false, _) => ("", " | null"),
        };
        let _ = writeln!(
            types,
            "  /** {} */\n  {}{mark}: {kind}{or_null};",
            field.about.replace('\n', " "),
            field.name
        );
    }
    types.push_str("}\n\n");
}

/// What a function takes for an option.
enum Taken {
    Number,
    Count,
    Choice(String),
    Record(String),
    /// A list of numbers.
    Numbers,
    /// A list of records.
    Items(String),
}

/// The options of a function: its inputs, a list and its count as one.
fn options(function: &Function) -> Vec<(&Variable, Taken)> {
    let inputs = &function.parameters[..function.parameters.len() - 2];
    let kind = |(at, input): (usize, &Variable)| {
        let is_list = inputs.get(at + 1).is_some_and(|next| next.kind == Type::Size);
        match &input.kind {
            Type::Size => None,
            Type::In(to) => Some(match (&**to, is_list) {
                (Type::Record(of), true) => Taken::Items(of.clone()),
                (Type::Record(of), false) => Taken::Record(of.clone()),
                _ => Taken::Numbers,
            }),
            Type::Int => Some(match meaning(input) {
                Meaning::Choice(of) => Taken::Choice(of),
                _ => Taken::Count,
            }),
            _ => Some(Taken::Number),
        }
    };
    inputs.iter().enumerate().filter_map(|(at, input)| Some((input, kind((at, input))?))).collect()
}

/// Where a function's answer goes, and what it is.
fn answer_of(function: &Function) -> (&Variable, &Type) {
    let out = &function.parameters[function.parameters.len() - 2];
    match &out.kind {
        Type::Out(to) => (out, to),
        other => panic!("{}: the answer goes to {other:?}", function.name),
    }
}

/// One function with its type.
fn one(interface: &Interface, room: &str, name: &str, function: &Function, face: &mut Face) {
    let options = options(function);
    let set = format!("{}_OPTIONS", screaming(&type_name(&format!("{room}_{name}"))));
    let names: Vec<String> = options.iter().map(|(input, _)| format!("{:?}", input.name)).collect();
    // What a room knows stands before it.
    let before_room = face.code.rfind("export const").unwrap_or(face.code.len());
    face.code.insert_str(before_room, &format!("const {set} = new Set([{}]);\n", names.join(", ")));

    let _ = writeln!(face.code, "  {}(o) {{", camel(name));
    let _ = writeln!(face.code, "    record(o, {}, {set}, \"options\");", options.len());
    let body = face.code.len();
    let arguments = arguments(interface, &options, &mut face.code);
    let _ = writeln!(
        face.code,
        "    answered({}({}, answer, base){});",
        bound(function),
        arguments.join(", "),
        listed(interface, &options)
    );
    let answer = match answer_of(function) {
        (_, Type::Record(of)) => {
            assert!(ERROR + interface.size(of) <= INPUTS_AT, "{of} reaches into the inputs");
            format!("get{}(answer)", type_name(of))
        }
        (out, Type::Int) => match choice_of(out) {
            Some(of) => format!("{{ {}: {}[i32[answer >> 2]] }}", out.name, screaming_of(&of)),
            None => format!("{{ {}: i32[answer >> 2] }}", out.name),
        },
        (out, Type::Unsigned) => format!("{{ {}: cautions(i32[answer >> 2]) }}", out.name),
        (out, _) => format!("{{ {}: f64[answer >> 3] }}", out.name),
    };
    let _ = writeln!(face.code, "    return {answer};");
    watched(&mut face.code, body, "    ", &set);
    face.code.push_str("  },\n");
    signature(&camel(name), function, &options, &mut face.types);
}

/// What `answered` of `call.js` is told of a list, to find an item that is refused.
fn listed(interface: &Interface, options: &[(&Variable, Taken)]) -> String {
    let lists = options.iter().filter_map(|(input, option)| match option {
        Taken::Items(of) => {
            let fields = &interface.record(of).fields;
            let is_other =
                |field: &Variable| options.iter().all(|(other, _)| other.name != field.name);
            assert!(fields.iter().all(is_other), "{}: whose field is it?", input.name);
            let is_alone = |field: &Variable| {
                matches!(meaning(field), Meaning::Number | Meaning::Count | Meaning::Choice(_))
            };
            assert!(fields.iter().all(is_alone), "{of}: a field is not one number");
            Some((&input.name, format!("{}_FIELDS", screaming(&type_name(of)))))
        }
        Taken::Numbers => Some((&input.name, format!("[{:?}]", input.name))),
        _ => None,
    });
    let lists: Vec<String> =
        lists.map(|(name, fields)| format!(", {name:?}, {name}, {fields}")).collect();
    assert!(lists.len() < 2, "two lists: {lists:?}");
    lists.concat()
}

/// Takes the options; the arguments of the call, which go from left to right. All is taken before
/// anything is written.
fn arguments(
    interface: &Interface,
    options: &[(&Variable, Taken)],
    code: &mut String,
) -> Vec<String> {
    let mut arguments = Vec::new();
    let mut place = INPUTS_AT;
    for (input, option) in options {
        let own = &input.name;
        let given = format!("o.{own}, {own:?}");
        let call = match option {
            Taken::Number => format!("number({given})"),
            Taken::Count => format!("integer({given}, {:?})", key_of(input)),
            Taken::Choice(of) => format!("choice({given}, {})", screaming_of(of)),
            Taken::Record(of) => format!("take{}({given})", type_name(of)),
            Taken::Items(of) => format!("items({given}, take{})", type_name(of)),
            Taken::Numbers => format!("numbers({given})"),
        };
        let is_scalar = matches!(option, Taken::Number | Taken::Count | Taken::Choice(_));
        // Left of all that is written.
        if is_scalar && place == INPUTS_AT {
            arguments.push(call);
            continue;
        }
        let _ = writeln!(code, "    const {own} = {call};");
        match option {
            Taken::Number | Taken::Count | Taken::Choice(_) => arguments.push(own.clone()),
            Taken::Record(of) => {
                arguments.push(format!("put({own}, {place}, {})", doubles(interface, of)));
                place += interface.size(of);
            }
            Taken::Items(_) | Taken::Numbers => {
                let size = match option {
                    Taken::Items(of) => interface.size(of),
                    _ => size_of::<f64>(),
                };
                arguments.push(match option {
                    Taken::Items(of) if numbers(interface, of) > doubles(interface, of) => format!(
                        "putEach({own}.values, {place}, {}, {})",
                        doubles(interface, of),
                        numbers(interface, of)
                    ),
                    _ => format!("put({own}.values, {place})"),
                });
                arguments.push(format!("{own}.count"));
                place += MOST_ITEMS * size;
            }
        }
    }
    assert!(place <= ROOM, "the inputs need {place} bytes");
    arguments
}

/// A function's docs and types.
fn signature(name: &str, function: &Function, options: &[(&Variable, Taken)], types: &mut String) {
    let (about, fails) = described(&function.about);
    let _ = write!(types, "  /**\n{about}   *\n   * @throws {{@link Refusal}} {fails}\n   */\n");
    let _ = writeln!(types, "  function {name}(options: {{");
    for (input, option) in options {
        let kind = match option {
            Taken::Number | Taken::Count => "number".to_string(),
            Taken::Choice(of) | Taken::Record(of) => type_name(of),
            Taken::Items(of) => format!("{}[]", type_name(of)),
            Taken::Numbers => "number[]".to_string(),
        };
        // Behind "@param" and the name.
        let about = input.about.splitn(3, ' ').nth(2).unwrap_or_default();
        let _ = writeln!(types, "    /** {about} */\n    {}: {kind};", input.name);
    }
    let answer = match answer_of(function) {
        (_, Type::Record(of)) => type_name(of),
        (out, Type::Unsigned) => format!("{{ {}: Caution[] }}", out.name),
        (out, _) => match choice_of(out) {
            Some(of) => format!("{{ {}: {} }}", out.name, type_name(&of)),
            None => format!("{{ {}: number }}", out.name),
        },
    };
    let _ = writeln!(types, "  }}): {answer};");
}

/// A function's docs without its parameters, as comment lines, and what it fails with.
fn described(about: &str) -> (String, String) {
    let (before, fails) = about.split_once("Fails with").unwrap_or((about, ""));
    let words = before.split("@param").next().unwrap_or_default();
    let mut lines = String::new();
    let mut is_equation = false;
    for line in words.trim().lines() {
        let _ = match line {
            "```text" => {
                is_equation = true;
                continue;
            }
            "```" => {
                is_equation = false;
                continue;
            }
            equation if is_equation => writeln!(lines, "   *     {equation}"),
            line => writeln!(lines, "   * {line}"),
        };
    }
    let fails = match fails.trim() {
        "" => "For an input that is not accepted.".to_string(),
        fails => format!("For an input that is not accepted; with {}", fails.replace('\n', " ")),
    };
    (lines.replace(" \n", "\n"), fails)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn names() {
        assert_eq!(camel("water_ratio"), "waterRatio");
        assert_eq!(type_name("cupwright_heat_walk"), "HeatWalk");
        assert_eq!(
            chosen_at("Station pressure; looked at for CUPWRIGHT_AIR_PRESSURE."),
            Some(("air".to_string(), vec!["pressure".to_string()]))
        );
        assert_eq!(
            chosen_at("A time; looked at for CUPWRIGHT_STEP_POUR and CUPWRIGHT_STEP_STIR."),
            Some(("step".to_string(), vec!["pour".to_string(), "stir".to_string()]))
        );
    }

    #[test]
    fn a_flag_governs_the_fields_that_begin_with_its_name() {
        let interface = interface::read().unwrap();
        let flag = |record, field| flag_of(interface.record(record), field);
        assert_eq!(flag("cupwright_wish", "brew_strength_pct"), Some("has_brew_strength"));
        assert_eq!(flag("cupwright_wish", "brew_c"), None);
        assert_eq!(flag("cupwright_window", "yield_lowest_pct"), Some("has_yield"));
        assert_eq!(flag("cupwright_brewer", "cooling_per_min"), Some("has_cooling"));
        assert_eq!(flag("cupwright_kitchen", "cup_j_per_k"), None);
    }

    #[test]
    fn nothing_of_c_is_left_in_the_types() {
        let types = made().unwrap().types;
        for words in ["CUPWRIGHT", "cupwright_", "NULL", "1 << n", "anything but 0", "has_", "```"]
        {
            assert!(
                !types.contains(words),
                "{words}: {}",
                &types[types.find(words).unwrap() - 200..][..300]
            );
        }
    }
}
