//! Every function of the interface called from C with plain numbers in and plain numbers out, written
//! as C source. The driver in `tests/c` is compiled with it, for computers and microcontrollers alike.

use std::collections::BTreeSet;
use std::fmt::Write;

use cupwright::quantity::Quantity;
use formulas::{FORMULAS, Outputs};

use super::interface::{Function, Interface, Type, Variable};

/// The function that answers a formula: `ratio.batches` is `cupwright_ratio_batches`, and a word is not
/// said twice: `heat.heat_capacity` is `cupwright_heat_capacity`.
pub fn function_of(formula: &str) -> String {
    let (room, name) = formula.split_once('.').expect("a formula is named room.function");
    if name.starts_with(&format!("{room}_")) {
        format!("cupwright_{name}")
    } else {
        format!("cupwright_{room}_{name}")
    }
}

/// What a function takes, as numbers in a row.
#[derive(Clone, Debug, PartialEq)]
pub enum Taken {
    /// One number, by the name of its parameter or field; whether it is an integer in C.
    One(String, bool),
    /// A count, then for each item its numbers, by their names.
    Many(Vec<String>),
}

/// A function that answers a formula: not a text, not the version, not a profile's.
pub struct Call<'a> {
    pub function: &'a Function,
    pub takes: Vec<Taken>,
    /// The answer's numbers, nested names with dots; a single number has no name.
    pub gives: Vec<String>,
}

impl Call<'_> {
    /// The place of the answer.
    fn out(&self) -> &Variable {
        &self.function.parameters[self.function.parameters.len() - 2]
    }

    /// The numbers of a formula's answer in their order.
    pub fn answers(&self, outputs: &Outputs) -> impl Iterator<Item = f64> {
        assert_eq!(outputs.len(), self.gives.len(), "{}: its numbers", self.function.name);
        let value = |name: &String| match &self.gives[..] {
            [only] if only.is_empty() => outputs.first().expect("an answer").1,
            _ => {
                let found = outputs.iter().find(|(of, _)| of == name);
                found.unwrap_or_else(|| panic!("{}: no {name}", self.function.name)).1
            }
        };
        self.gives.iter().map(value)
    }

    /// Everything before the places of answer and error.
    fn inputs(&self) -> &[Variable] {
        &self.function.parameters[..self.function.parameters.len() - 2]
    }
}

/// The functions that answer a formula.
pub fn all(interface: &Interface) -> Vec<Call<'_>> {
    let names: BTreeSet<String> = FORMULAS.iter().map(|formula| function_of(formula.id)).collect();
    interface
        .functions
        .iter()
        .filter(|function| names.contains(&function.name))
        .map(|function| call(interface, function))
        .collect()
}

fn call<'a>(interface: &'a Interface, function: &'a Function) -> Call<'a> {
    let mut call = Call { function, takes: Vec::new(), gives: Vec::new() };
    let mut taken = Vec::new();
    for (at, parameter) in call.inputs().iter().enumerate() {
        let counted = call.inputs().get(at + 1).is_some_and(|next| next.kind == Type::Size);
        match &parameter.kind {
            Type::Size => {}
            Type::In(to) if counted => {
                let names = match &**to {
                    Type::Record(name) => names(leaves(interface, name, "")),
                    _ => vec![parameter.name.clone()],
                };
                taken.push(Taken::Many(names));
            }
            Type::In(to) => match &**to {
                // Names of nested fields are their own: none occurs twice in one function.
                Type::Record(name) => {
                    taken.extend(leaves(interface, name, "").into_iter().map(|(path, kind)| {
                        let name = path.rsplit('.').next().unwrap_or_default();
                        Taken::One(name.to_string(), kind == Type::Int)
                    }))
                }
                other => panic!("{}: a lone pointer to {other:?}", function.name),
            },
            kind => taken.push(Taken::One(parameter.name.clone(), *kind == Type::Int)),
        }
    }
    call.takes = taken;
    call.gives = match &call.out().kind {
        Type::Out(to) => match &**to {
            Type::Record(name) => names(leaves(interface, name, "")),
            _ => vec![String::new()],
        },
        other => panic!("{}: the answer goes to {other:?}", function.name),
    };
    call
}

fn names(leaves: Vec<(String, Type)>) -> Vec<String> {
    leaves.into_iter().map(|(name, _)| name).collect()
}

/// A record's numbers in their order, with their names and types.
fn leaves(interface: &Interface, record: &str, before: &str) -> Vec<(String, Type)> {
    let fields = interface.record(record).fields.iter();
    fields
        .flat_map(|field| leaves_of(interface, &field.kind, format!("{before}{}", field.name)))
        .collect()
}

/// The numbers of a value of a name.
fn leaves_of(interface: &Interface, kind: &Type, name: String) -> Vec<(String, Type)> {
    match kind {
        Type::Record(inner) => leaves(interface, inner, &format!("{name}.")),
        Type::Array(of, length) => {
            (0..*length).flat_map(|at| leaves_of(interface, of, format!("{name}.{at}"))).collect()
        }
        kind => vec![(name, kind.clone())],
    }
}

/// A name with dots as C says it: `doubts.0.entered` is `doubts[0].entered`.
fn path_in_c(name: &str) -> String {
    let mut path = String::new();
    for part in name.split('.') {
        if part.starts_with(|first: char| first.is_ascii_digit()) {
            let _ = write!(path, "[{part}]");
        } else {
            let _ = write!(path, "{}{part}", if path.is_empty() { "" } else { "." });
        }
    }
    path
}

/// What the compiler is to make of a number for a variable of a kind.
fn cast(kind: &Type) -> &'static str {
    match kind {
        Type::Int => "(int32_t)",
        _ => "",
    }
}

/// The functions that answer a formula, dealt out over so many images: a small board has no room for
/// all of them in one.
pub fn dealt(interface: &Interface, parts: usize) -> Vec<Vec<Call<'_>>> {
    let mut dealt: Vec<Vec<Call>> = (0..parts).map(|_| Vec::new()).collect();
    for (at, call) in all(interface).into_iter().enumerate() {
        dealt[at % parts].push(call);
    }
    dealt
}

/// C source that calls some functions: included by the driver.
pub fn source(interface: &Interface, calls: &[Call]) -> String {
    let mut text = String::from("/* Made by xtask from the interface. */\n\n");
    for call in calls {
        adaptor(interface, call, &mut text);
        without_pointers(interface, call, &mut text);
    }
    let codes: Vec<String> =
        Quantity::ALL.iter().map(|quantity| (*quantity as i32).to_string()).collect();
    let _ = writeln!(text, "#define QUANTITIES {}\n", codes.join(", "));
    text.push_str("static const struct call calls[] = {\n");
    for call in calls {
        let name = &call.function.name;
        let _ = writeln!(text, "    {{\"{name}\", call_{name}, null_{name}}},");
    }
    text.push_str("};\n");
    text
}

/// Declares the inputs and takes them from the row of numbers; gives back the arguments.
fn declare(interface: &Interface, call: &Call, text: &mut String) -> Vec<String> {
    let mut arguments = Vec::new();
    let inputs = call.inputs();
    for (at, parameter) in inputs.iter().enumerate() {
        let name = &parameter.name;
        match &parameter.kind {
            Type::Size => arguments.push(name.clone()),
            Type::In(to) if inputs.get(at + 1).is_some_and(|next| next.kind == Type::Size) => {
                let count = &inputs[at + 1].name;
                let _ = writeln!(text, "    size_t {count} = (size_t)take(row);");
                let _ = writeln!(text, "    {} {name}[MOST_ITEMS];", to.in_c());
                let _ =
                    writeln!(text, "    for (size_t i = 0; i < {count} && i < MOST_ITEMS; i++) {{");
                match &**to {
                    Type::Record(record) => {
                        for field in &interface.record(record).fields {
                            let _ = writeln!(
                                text,
                                "        {name}[i].{} = {}take(row);",
                                field.name,
                                cast(&field.kind)
                            );
                        }
                    }
                    _ => {
                        let _ = writeln!(text, "        {name}[i] = take(row);");
                    }
                }
                text.push_str("    }\n");
                arguments.push(name.clone());
            }
            Type::In(to) => {
                let Type::Record(record) = &**to else { panic!("{name}: a lone pointer") };
                let _ = writeln!(text, "    {record} {name};");
                fill(interface, record, name, text);
                arguments.push(format!("&{name}"));
            }
            kind => {
                let _ = writeln!(text, "    {} {name} = {}take(row);", kind.in_c(), cast(kind));
                arguments.push(name.clone());
            }
        }
    }
    arguments
}

fn fill(interface: &Interface, record: &str, path: &str, text: &mut String) {
    for field in &interface.record(record).fields {
        let path = format!("{path}.{}", field.name);
        match &field.kind {
            Type::Record(inner) => fill(interface, inner, &path, text),
            kind => {
                let _ = writeln!(text, "    {path} = {}take(row);", cast(kind));
            }
        }
    }
}

/// A function that takes a row of numbers, calls, and gives a row.
fn adaptor(interface: &Interface, call: &Call, text: &mut String) {
    let function = &call.function.name;
    let _ = writeln!(
        text,
        "static int32_t call_{function}(struct row *row, struct row *answer, cupwright_error *error) {{"
    );
    let mut arguments = declare(interface, call, text);
    let out = call.out();
    let Type::Out(to) = &out.kind else { panic!("{function}: no place for the answer") };
    let _ = writeln!(text, "    {} {};", to.in_c(), out.name);
    let _ = writeln!(text, "    mark(&{0}, sizeof {0});", out.name);
    arguments.extend([format!("&{}", out.name), "error".to_string()]);
    text.push_str("    BEFORE_CALL();\n");
    let _ = writeln!(text, "    int32_t status = {function}({});", arguments.join(", "));
    text.push_str("    AFTER_CALL();\n");
    let _ = writeln!(text, "    if (status != CUPWRIGHT_STATUS_OK) {{");
    let _ = writeln!(
        text,
        "        return is_marked(&{0}, sizeof {0}) ? status : WROTE_ON_FAILURE;",
        out.name
    );
    text.push_str("    }\n");
    for name in &call.gives {
        let path = if name.is_empty() {
            out.name.clone()
        } else {
            format!("{}.{}", out.name, path_in_c(name))
        };
        let _ = writeln!(text, "    give(answer, (double){path});");
    }
    text.push_str("    return status;\n}\n\n");
}

/// A function that calls with each pointer NULL in turn, and counts what is wrong.
fn without_pointers(interface: &Interface, call: &Call, text: &mut String) {
    let function = &call.function.name;
    let _ = writeln!(text, "static int null_{function}(struct row *row) {{");
    let arguments = declare(interface, call, text);
    let out = call.out();
    let Type::Out(to) = &out.kind else { panic!("{function}: no place for the answer") };
    let _ = writeln!(text, "    {} {};\n    int wrong = 0;", to.in_c(), out.name);
    let inputs = call.inputs();
    let pointers = inputs.iter().enumerate().filter(|(_, p)| matches!(p.kind, Type::In(_)));
    let mut nulls: Vec<(String, Vec<String>)> = Vec::new();
    for (at, pointer) in pointers {
        let mut changed = arguments.clone();
        changed[at] = "NULL".to_string();
        if let Some(count) = inputs.get(at + 1).filter(|next| next.kind == Type::Size) {
            changed[at + 1] = format!("{} + 1", count.name);
        }
        changed.push(format!("&{}", out.name));
        nulls.push((pointer.name.clone(), changed));
    }
    let mut changed = arguments.clone();
    changed.push("NULL".to_string());
    nulls.push((out.name.clone(), changed));
    for (name, arguments) in nulls {
        let arguments = arguments.join(", ");
        let _ = writeln!(
            text,
            "    mark(&{0}, sizeof {0});\n    wrong += !refuses_null({function}({arguments}, &null_error), \"{name}\");\n    \
             wrong += {function}({arguments}, NULL) != CUPWRIGHT_STATUS_NULL;\n    wrong += !is_marked(&{0}, sizeof {0});",
            out.name
        );
    }
    text.push_str("    return wrong;\n}\n\n");
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn names_of_functions() {
        assert_eq!(function_of("ratio.batches"), "cupwright_ratio_batches");
        assert_eq!(function_of("heat.heat_capacity"), "cupwright_heat_capacity");
    }

    #[test]
    fn paths() {
        assert_eq!(path_in_c("doubts.0.entered"), "doubts[0].entered");
        assert_eq!(path_in_c("heat.kettle_c"), "heat.kettle_c");
    }

    #[test]
    fn what_a_call_takes_and_gives() {
        let interface = super::super::interface::read().unwrap();
        let calls = all(&interface);
        let call = |name: &str| calls.iter().find(|call| call.function.name == name).unwrap();
        let settle = call("cupwright_heat_settle");
        assert_eq!(
            settle.takes,
            [
                Taken::One("water_g".into(), false),
                Taken::One("water_c".into(), false),
                Taken::Many(vec!["heat_capacity_j_per_k".into(), "body_c".into()])
            ]
        );
        assert_eq!(settle.gives, [""]);
        assert!(call("cupwright_plan_recipe").gives.contains(&"standing.yield.side".to_string()));
    }

    #[test]
    fn no_input_is_named_twice_in_a_function() {
        let interface = super::super::interface::read().unwrap();
        for call in all(&interface) {
            let mut names = std::collections::BTreeSet::new();
            for taken in &call.takes {
                let inner = match taken {
                    Taken::One(name, _) => std::slice::from_ref(name),
                    Taken::Many(names) => names,
                };
                for name in inner {
                    assert!(names.insert(name.clone()), "{}: {name}", call.function.name);
                }
            }
        }
    }
}
