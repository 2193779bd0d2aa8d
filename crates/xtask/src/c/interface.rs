//! The C interface as its source declares it: functions with their parameters, structs with their
//! fields, enums with their values. What the tests in C are made from, so that none can be left out.

use std::collections::BTreeMap;
use std::path::Path;

use crate::commands::text_of;
use crate::{Outcome, root};

/// The whole interface, in the order of the source's files.
#[derive(Debug, Default)]
pub struct Interface {
    pub functions: Vec<Function>,
    pub records: Vec<Record>,
    /// Value of every enum's constant, by its name in C.
    pub codes: BTreeMap<String, i64>,
}

/// A function.
#[derive(Debug)]
pub struct Function {
    pub name: String,
    pub parameters: Vec<Variable>,
    pub returns: Type,
    /// Its docs.
    pub about: String,
}

/// Lines that a function's body may have: a binding converts, calls and converts back.
const MOST_LINES: usize = 14;

/// A struct.
#[derive(Debug)]
pub struct Record {
    pub name: String,
    pub fields: Vec<Variable>,
}

impl Record {
    /// Whether it is a state that the library keeps in the caller's memory: nobody looks into it.
    pub fn is_state(&self) -> bool {
        let is_word = |kind: &Type| matches!(kind, Type::Array(of, _) if **of == Type::Word);
        self.fields.iter().any(|field| is_word(&field.kind))
    }
}

/// A parameter or a field.
#[derive(Clone, Debug, PartialEq)]
pub struct Variable {
    pub name: String,
    pub kind: Type,
    /// Its docs: of a field its own, of a parameter those of its line.
    pub about: String,
}

/// A type of the interface.
#[derive(Clone, Debug, PartialEq)]
pub enum Type {
    Double,
    Int,
    Unsigned,
    Size,
    Char,
    Byte,
    /// `uint64_t`: what a state is made of.
    Word,
    Record(String),
    Array(Box<Type>, usize),
    /// `const T *`
    In(Box<Type>),
    /// `T *`
    Out(Box<Type>),
}

impl Type {
    /// As written in C before a name; not for arrays.
    pub fn in_c(&self) -> String {
        match self {
            Self::Double => "double".to_string(),
            Self::Int => "int32_t".to_string(),
            Self::Unsigned => "uint32_t".to_string(),
            Self::Size => "size_t".to_string(),
            Self::Char => "char".to_string(),
            Self::Byte => "uint8_t".to_string(),
            Self::Word => "uint64_t".to_string(),
            Self::Record(name) => name.clone(),
            Self::Array(of, length) => format!("{}[{length}]", of.in_c()),
            Self::In(to) => format!("const {} *", to.in_c()),
            Self::Out(to) => format!("{} *", to.in_c()),
        }
    }
}

impl Interface {
    /// A function by its name.
    pub fn function(&self, name: &str) -> &Function {
        let found = self.functions.iter().find(|function| function.name == name);
        found.unwrap_or_else(|| panic!("no function {name}"))
    }

    /// A struct by its name.
    pub fn record(&self, name: &str) -> &Record {
        self.records
            .iter()
            .find(|record| record.name == name)
            .unwrap_or_else(|| panic!("no struct {name}"))
    }

    /// Bytes of a struct where doubles and long pointers are aligned to eight.
    pub fn size(&self, name: &str) -> usize {
        let end = self.offsets(name).last().map(|(field, at)| at + self.extent(&field.kind).0);
        end.unwrap_or(0).next_multiple_of(8)
    }

    /// Fields of a struct with their places.
    pub fn offsets(&self, name: &str) -> Vec<(&Variable, usize)> {
        let mut end = 0_usize;
        let fields = self.record(name).fields.iter();
        fields
            .map(|field| {
                let (size, alignment) = self.extent(&field.kind);
                let at = end.next_multiple_of(alignment);
                end = at + size;
                (field, at)
            })
            .collect()
    }

    /// The numbers of a struct in their order, those of inner structs and arrays too: name, kind, place.
    pub fn places(&self, name: &str) -> Vec<(String, Type, usize)> {
        let offsets = self.offsets(name).into_iter();
        offsets.flat_map(|(field, at)| self.places_of(&field.kind, &field.name, at)).collect()
    }

    fn places_of(&self, kind: &Type, name: &str, at: usize) -> Vec<(String, Type, usize)> {
        match kind {
            Type::Record(of) => {
                let inner = self.places(of).into_iter();
                inner
                    .map(|(field, kind, inside)| (format!("{name}.{field}"), kind, at + inside))
                    .collect()
            }
            Type::Array(of, length) => {
                let (size, _) = self.extent(of);
                (0..*length)
                    .flat_map(|i| self.places_of(of, &format!("{name}.{i}"), at + i * size))
                    .collect()
            }
            kind => vec![(name.to_string(), kind.clone(), at)],
        }
    }

    fn extent(&self, kind: &Type) -> (usize, usize) {
        match kind {
            Type::Double | Type::In(_) | Type::Out(_) | Type::Size | Type::Word => (8, 8),
            Type::Int | Type::Unsigned => (4, 4),
            Type::Char | Type::Byte => (1, 1),
            Type::Record(name) => (self.size(name), 8),
            Type::Array(of, length) => {
                let (size, alignment) = self.extent(of);
                (size * length, alignment)
            }
        }
    }
}

/// Reads the binding's source.
pub fn read() -> Outcome<Interface> {
    let folder = root().join("bindings/c/src");
    let fail = |path: &Path, error: &dyn std::fmt::Display| format!("{}: {error}", path.display());
    let mut paths = std::fs::read_dir(&folder)
        .and_then(|entries| entries.map(|entry| Ok(entry?.path())).collect::<Result<Vec<_>, _>>())
        .map_err(|error| fail(&folder, &error))?;
    paths.sort();
    let mut interface = Interface::default();
    for path in paths {
        let text = text_of(&path)?;
        read_file(&text, &mut interface).map_err(|words| fail(&path, &words))?;
    }
    Ok(interface)
}

fn read_file(text: &str, interface: &mut Interface) -> Outcome {
    let file = syn::parse_file(text).map_err(|error| error.to_string())?;
    for item in file.items {
        match item {
            syn::Item::Fn(function) if function.sig.abi.is_some() => {
                interface.functions.push(read_function(&function)?);
            }
            syn::Item::Struct(record) if is_public(&record.vis) => {
                interface.records.push(read_record(&record)?);
            }
            syn::Item::Enum(choices) if is_public(&choices.vis) => {
                read_enum(&choices, &mut interface.codes)?
            }
            _ => {}
        }
    }
    Ok(())
}

pub fn is_public(visibility: &syn::Visibility) -> bool {
    matches!(visibility, syn::Visibility::Public(_))
}

fn read_function(function: &syn::ItemFn) -> Outcome<Function> {
    let name = function.sig.ident.to_string();
    let about = docs(&function.attrs);
    let mut parameters = Vec::new();
    for input in &function.sig.inputs {
        let syn::FnArg::Typed(typed) = input else { return Err(format!("{name} takes self")) };
        let syn::Pat::Ident(pattern) = &*typed.pat else {
            return Err(format!("{name}: a pattern"));
        };
        let parameter = pattern.ident.to_string();
        let about = about_parameter(&about, &parameter);
        parameters.push(Variable { name: parameter, kind: read_type(&typed.ty)?, about });
    }
    let returns = match &function.sig.output {
        syn::ReturnType::Type(_, kind) => read_type(kind)?,
        syn::ReturnType::Default => return Err(format!("{name} returns nothing")),
    };
    let brace = &function.block.brace_token.span;
    let lines = brace.close().start().line - brace.open().start().line - 1;
    if lines > MOST_LINES {
        return Err(format!("{name} has {lines} lines, more than {MOST_LINES}"));
    }
    Ok(Function { name, parameters, returns, about })
}

/// A doc comment, its lines trimmed.
pub fn docs(attributes: &[syn::Attribute]) -> String {
    let lines = lines_of_docs(attributes);
    lines.iter().map(|line| line.trim()).collect::<Vec<_>>().join("\n")
}

/// The lines of a doc comment, as indented behind its marks.
pub fn lines_of_docs(attributes: &[syn::Attribute]) -> Vec<String> {
    let mut lines = Vec::new();
    for attribute in attributes {
        let syn::Meta::NameValue(meta) = &attribute.meta else { continue };
        let syn::Expr::Lit(syn::ExprLit { lit: syn::Lit::Str(line), .. }) = &meta.value else {
            continue;
        };
        if meta.path.is_ident("doc") {
            let line = line.value();
            lines.push(line.strip_prefix(' ').unwrap_or(&line).trim_end().to_string());
        }
    }
    lines
}

/// What a function's docs say of a parameter.
fn about_parameter(about: &str, name: &str) -> String {
    let is_start = |line: &&str| {
        let rest = line.strip_prefix("@param[out] ").or_else(|| line.strip_prefix("@param "));
        rest.is_some_and(|rest| rest.split(' ').next() == Some(name))
    };
    let mut lines = about.lines().skip_while(|line| !is_start(line));
    let first = lines.next().unwrap_or_default();
    let rest = lines.take_while(|line| !line.is_empty() && !line.starts_with('@'));
    std::iter::once(first).chain(rest).collect::<Vec<_>>().join(" ")
}

fn read_record(record: &syn::ItemStruct) -> Outcome<Record> {
    let mut fields = Vec::new();
    for field in &record.fields {
        let name = field.ident.as_ref().ok_or("a tuple struct")?.to_string();
        let name = name.trim_start_matches("r#").to_string();
        fields.push(Variable { name, kind: read_type(&field.ty)?, about: docs(&field.attrs) });
    }
    Ok(Record { name: record.ident.to_string(), fields })
}

fn read_enum(choices: &syn::ItemEnum, codes: &mut BTreeMap<String, i64>) -> Outcome {
    for choice in &choices.variants {
        let value = match &choice.discriminant {
            Some((_, syn::Expr::Lit(syn::ExprLit { lit: syn::Lit::Int(value), .. }))) => value,
            _ => return Err(format!("{} has no number", choice.ident)),
        };
        let name = format!(
            "{}_{}",
            choices.ident.to_string().to_uppercase(),
            super::header::screaming(&choice.ident.to_string())
        );
        codes.insert(name, value.base10_parse().map_err(|error: syn::Error| error.to_string())?);
    }
    Ok(())
}

fn read_type(kind: &syn::Type) -> Outcome<Type> {
    match kind {
        syn::Type::Ptr(pointer) => {
            let to = Box::new(read_type(&pointer.elem)?);
            Ok(if pointer.mutability.is_some() { Type::Out(to) } else { Type::In(to) })
        }
        syn::Type::Array(array) => {
            let syn::Expr::Lit(syn::ExprLit { lit: syn::Lit::Int(length), .. }) = &array.len else {
                return Err("an array whose length is no number".to_string());
            };
            let length = length.base10_parse().map_err(|error: syn::Error| error.to_string())?;
            Ok(Type::Array(Box::new(read_type(&array.elem)?), length))
        }
        syn::Type::Path(path) => {
            let name = path.path.segments.last().ok_or("an empty path")?.ident.to_string();
            Ok(match name.as_str() {
                "f64" => Type::Double,
                "i32" => Type::Int,
                "u32" => Type::Unsigned,
                "usize" => Type::Size,
                "c_char" => Type::Char,
                "u8" => Type::Byte,
                "u64" => Type::Word,
                _ => Type::Record(name),
            })
        }
        _ => Err("a type that the interface does not use".to_string()),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn functions_structs_and_enums_are_read() {
        let text = "
            #[repr(i32)] pub enum a_side { Below = 1, VeryHigh = 7 }
            #[repr(C)] pub struct a_doubt { pub value: f64, pub code: i32, pub of: [f64; 3] }
            pub unsafe extern \"C\" fn a_call(x_g: f64, of: *const a_doubt, n: usize, out: *mut f64) -> i32 {
                0
            }
            fn not_this_one() {}
        ";
        let mut interface = Interface::default();
        read_file(text, &mut interface).unwrap();
        assert_eq!(interface.codes["A_SIDE_VERY_HIGH"], 7);
        assert_eq!(interface.size("a_doubt"), 40);
        let [call] = &interface.functions[..] else { panic!("{interface:?}") };
        assert_eq!(call.parameters[1].kind.in_c(), "const a_doubt *");
        assert_eq!(
            call.parameters[3],
            Variable {
                name: "out".into(),
                kind: Type::Out(Box::new(Type::Double)),
                about: String::new()
            }
        );
    }

    #[test]
    fn a_long_function_is_refused() {
        let text = format!("pub extern \"C\" fn long() -> i32 {{\n{}0\n}}", "f();\n".repeat(14));
        let error = read_file(&text, &mut Interface::default()).unwrap_err();
        assert_eq!(error, "long has 15 lines, more than 14");
    }

    #[test]
    fn miri_calls_every_function_without_pointers() {
        let tests = text_of("bindings/c/tests/from_rust.rs").unwrap();
        let interface = read().unwrap();
        for call in super::super::calls::all(&interface) {
            let name = format!("{}(", call.function.name);
            assert!(tests.contains(&name), "{name}");
        }
    }

    #[test]
    fn states_are_tried_from_rust_and_from_c() {
        let read = |path: &str| text_of(path).unwrap();
        let miri = read("bindings/c/tests/live.rs");
        let driver = read("tests/c/brews.h") + &read("tests/c/brews.c");
        let interface = super::read().unwrap();
        let is_state = |kind: &Type| match kind {
            Type::In(to) | Type::Out(to) => {
                matches!(&**to, Type::Record(name) if interface.record(name).is_state())
            }
            _ => false,
        };
        for function in &interface.functions {
            if function.parameters.iter().any(|parameter| is_state(&parameter.kind)) {
                let name = format!("{}(", function.name);
                assert!(miri.contains(&name) && driver.contains(&name), "{name}");
            }
        }
    }

    #[test]
    fn columns_are_tried_from_rust_and_from_c() {
        let read = |path: &str| text_of(path).unwrap();
        let tests = [read("bindings/c/tests/columns.rs"), read("tests/c/columns.c")];
        let interface = super::read().unwrap();
        let names = interface.functions.iter().map(|function| function.name.as_str());
        let columns: Vec<&str> =
            names.filter(|name| name.starts_with("cupwright_columns_")).collect();
        assert!(columns.len() > 8, "{columns:?}");
        for name in columns {
            assert!(tests.iter().all(|test| test.contains(&format!("{name}("))), "{name}");
        }
    }

    #[test]
    fn the_interface_has_a_function_for_each_formula() {
        let interface = read().unwrap();
        let names: Vec<_> = interface.functions.iter().map(|f| f.name.as_str()).collect();
        for formula in formulas::FORMULAS {
            let name = super::super::calls::function_of(formula.id);
            assert!(names.contains(&name.as_str()), "{}: no {name}", formula.id);
        }
    }
}
