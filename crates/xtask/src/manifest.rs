//! What each public formula of the core must have, found from the core's own source so that none can be
//! left out; and the page made of all that, `docs/FORMULAS.md`.

mod page;

use std::collections::{BTreeMap, BTreeSet};
use std::path::PathBuf;

use formulas::FORMULAS;
use formulas::vectors::{CHECKED_ELSEWHERE, files};
use fuzzed::formulas::Calls;

use crate::c::{calls::function_of, interface};
use crate::commands::{cargo, output, text_of};
use crate::js::face::camel;
use crate::{Outcome, difference, root};

/// Public rooms without formulas, with the reason.
const WITHOUT_FORMULAS: &[(&str, &str)] = &[
    ("columns", "formulas of other rooms on whole columns"),
    ("error", "what went wrong"),
    ("live", "states that take one reading after another"),
    ("profile", "keeps what the fits of calibrate tell"),
    ("quantity", "the table"),
];

/// Public functions that compute but are no formula of their own, with the reason.
const NO_FORMULA: &[(&str, &str)] = &[
    ("advise.on_into", "`on`, written where the caller says"),
    ("calibrate.chamber", "a hold-up that is told already, as the planner's quantity"),
    ("caution.contains", "looks into a set"),
    ("plan.field_of", "names the field of a wish that an error is about"),
    ("uncertainty.known", "makes a record"),
    ("uncertainty.exact", "makes a record"),
    ("uncertainty.with", "makes a record"),
    ("verdict.new", "makes a record"),
    ("verdict.place", "one of the two bands of `stand`"),
];

/// Methods that are a formula of another name.
const OTHERWISE_NAMED: &[(&str, &str)] = &[("calibrate.expected", "calibrate.expected_beverage")];

/// What a source begins with where it is no citation. DEVELOPERS.md says what each means.
const WITHOUT_CITATION: [&str; 6] = [
    "common practice, no source",
    "conservation of ",
    "convention chosen here",
    "definition",
    "estimate",
    "least squares",
];

/// Inputs by chance that the fuzz target gets here: a tenth of those in "any bytes".
const INPUTS: u64 = 4_000;

/// So many of them, at least, must get past a formula's refusals: what is refused alone is not looked into.
const ANSWERED: u64 = 20;

/// A public function that answers a formula.
#[derive(Clone, Debug)]
struct Public {
    /// Its room and name.
    id: String,
    docs: String,
    /// Whether it may refuse.
    is_fallible: bool,
}

impl Public {
    /// What its docs say first.
    fn answers(&self) -> String {
        plain(self.docs.split("\n\n").next().unwrap_or_default())
    }

    /// The lines of its first block of equations.
    fn equations(&self) -> Vec<&str> {
        let lines = self.docs.lines().skip_while(|line| line.trim() != "```text").skip(1);
        lines.take_while(|line| line.trim() != "```").collect()
    }

    /// The rest of the first paragraph that has a word, after it.
    fn said_after(&self, word: &str) -> Option<String> {
        let paragraphs = self.docs.split("\n\n").map(plain);
        paragraphs.filter_map(|text| Some(text.split_once(word)?.1.to_string())).next()
    }

    fn source(&self) -> Option<String> {
        self.said_after("Source: ")
    }

    /// What its symbols stand for.
    fn symbols(&self) -> Option<String> {
        let said = self.said_after("Symbols: ")?;
        let said = said.split("Source: ").next()?.trim();
        (!said.is_empty()).then(|| format!("Symbols: {said}"))
    }

    /// What is missing in its docs.
    fn lacking(&self) -> Vec<&'static str> {
        let is_sourced = self.source().is_some_and(|source| is_source(&source));
        let has = [
            (!self.equations().is_empty(), "equation in its docs"),
            (self.symbols().is_some(), "symbols in its docs"),
            (!self.is_fallible || self.docs.contains("# Errors\n"), "errors in its docs"),
            (is_sourced, "source in its docs"),
        ];
        has.into_iter().filter(|(is, _)| !is).map(|(_, what)| what).collect()
    }
}

/// Whether a source is a citation or says what else it is.
fn is_source(source: &str) -> bool {
    let says = |words: &str| {
        let rest = source.strip_prefix(words);
        rest.is_some_and(|rest| words.ends_with(' ') || !rest.starts_with(char::is_alphabetic))
    };
    WITHOUT_CITATION.into_iter().any(says) || is_citation(source)
}

/// Whether something published can be found by it: a DOI; a name with a year; or a body's letters with the number or
/// the clause of a document.
fn is_citation(source: &str) -> bool {
    let words: Vec<&str> = source.split([' ', ';', ',', '(', ')']).collect();
    let is_year = |word: &str| {
        let year = word.trim_end_matches(['.', ':']);
        year.len() == 4 && year.parse().is_ok_and(|year: u16| (1800..2100).contains(&year))
    };
    let is_name = |word: &&str| {
        word.starts_with(char::is_uppercase) && word.chars().nth(1).is_some_and(char::is_alphabetic)
    };
    let is_body = |word: &str| {
        word.len() > 2 && word.chars().all(|letter| letter.is_ascii_uppercase() || letter == '-')
    };
    // 2533:1975, SR6-08, 5.1.2, G.3
    let is_number = |word: &str| {
        let mut letters = word.chars();
        word.contains(|letter: char| letter.is_ascii_digit())
            && letters.all(|letter| letter.is_ascii_uppercase() || "0123456789.:-".contains(letter))
    };
    let pairs = || words.iter().zip(words.iter().skip(1));
    let dated = words.iter().position(|word| is_year(word));
    pairs().any(|(one, next)| *one == "doi" && next.starts_with("10."))
        || dated.is_some_and(|year| words.iter().take(year).any(is_name))
        || pairs().any(|(one, next)| is_body(one) && is_number(next))
        || words.iter().any(|word| {
            word.split_once('-').is_some_and(|(body, number)| is_body(body) && is_number(number))
        })
}

/// Docs without their links, in one line.
fn plain(docs: &str) -> String {
    let text = docs.lines().map(str::trim).collect::<Vec<_>>().join(" ");
    without_links(&text)
}

fn without_links(text: &str) -> String {
    let links = [
        ("see the [module](self)", "those of the room"),
        ("see the [module](crate::plan)", "those of the room"),
        ("[`crate::", "`"),
        ("[`", "`"),
        ("`]", "`"),
    ];
    links.into_iter().fold(text.to_string(), |text, (link, words)| text.replace(link, words))
}

/// Where each formula was found.
#[derive(Clone, Default)]
struct Found {
    /// In `crates/formulas`.
    listed: BTreeSet<String>,
    /// In `tests/vectors`: how many values in which file.
    checked: BTreeMap<String, BTreeMap<String, u64>>,
    /// Checked elsewhere, and where.
    excused: BTreeMap<String, String>,
    c: BTreeSet<String>,
    javascript: BTreeSet<String>,
    benched: BTreeSet<String>,
    /// What became of its calls by the fuzz target.
    fuzzed: BTreeMap<String, Calls>,
}

impl Found {
    /// What is missing, each with the formula's name.
    fn lacking(&self, public: &[Public]) -> Vec<String> {
        let mut lacking = Vec::new();
        for formula in public {
            let id = &formula.id;
            let is_checked = self.checked.contains_key(id);
            let has = [
                (self.listed.contains(id), "entry in crates/formulas"),
                (is_checked || self.excused.contains_key(id), "check value in tests/vectors"),
                (self.c.contains(&function_of(id)), "function in C"),
                (self.javascript.contains(id), "function in JavaScript"),
                (self.benched.contains(id), "benchmark"),
                (self.fuzzed.contains_key(id), "way to it in the fuzz target"),
            ];
            let missing = has.into_iter().filter(|(is, _)| !is).map(|(_, what)| what);
            let missing = missing.chain(formula.lacking());
            lacking.extend(missing.map(|what| format!("{id}: no {what}")));
            let few = self.fuzzed.get(id).filter(|calls| calls.answered < ANSWERED);
            lacking.extend(few.map(|Calls { answered, refused }| {
                format!("{id}: answers {answered} inputs of the fuzz target and refuses {refused}")
            }));
            if is_checked && self.excused.contains_key(id) {
                lacking.push(format!("{id}: has a check value and an excuse for having none"));
            }
        }
        let known: BTreeSet<&str> = public.iter().map(|formula| formula.id.as_str()).collect();
        let unknown = self.listed.iter().chain(self.excused.keys());
        let unknown = unknown.filter(|id| !known.contains(id.as_str()));
        lacking.extend(unknown.map(|id| format!("{id}: no public function in the core")));
        lacking
    }
}

/// A room with formulas.
struct Room {
    name: String,
    /// Its docs.
    about: String,
    formulas: Vec<Public>,
}

/// The rooms with formulas, in the order of the list.
fn rooms() -> Outcome<Vec<Room>> {
    let folder = root().join("crates/cupwright/src");
    let declared: BTreeSet<String> = public_rooms(&text_of(folder.join("lib.rs"))?)?;
    let mut names: Vec<String> = Vec::new();
    let listed = FORMULAS.iter().filter_map(|formula| formula.id.split_once('.'));
    for room in listed.map(|(room, _)| room.to_string()).chain(declared) {
        if !names.contains(&room) && WITHOUT_FORMULAS.iter().all(|(without, _)| *without != room) {
            names.push(room);
        }
    }
    let mut rooms = Vec::new();
    for name in names {
        let mut paths = vec![folder.join(format!("{name}.rs"))];
        if let Ok(parts) = std::fs::read_dir(folder.join(&name)) {
            paths.extend(parts.filter_map(Result::ok).map(|entry| entry.path()));
        }
        paths.sort();
        let about = introduction(&text_of(folder.join(format!("{name}.rs")))?);
        let mut formulas = Vec::new();
        for path in paths {
            formulas.extend(functions_of(&name, &text_of(&path)?)?);
        }
        let place = |id: &str| FORMULAS.iter().position(|formula| formula.id == id);
        formulas.sort_by_key(|formula| place(&formula.id));
        rooms.push(Room { name, about, formulas });
    }
    Ok(rooms)
}

/// What a room's docs say, without examples in code; their headings stand below the page's own.
fn introduction(text: &str) -> String {
    let lines = text.lines().map_while(|line| line.strip_prefix("//!"));
    let (mut whole, mut is_code, mut is_text) = (String::new(), false, false);
    for line in lines.map(|line| line.strip_prefix(' ').unwrap_or(line)) {
        let is_fence = line.starts_with("```");
        if is_code || (is_fence && line == "```" && !is_text) {
            is_code ^= is_fence;
            continue;
        }
        is_text ^= is_fence;
        let deeper = if line.starts_with("# ") { "###" } else { "" };
        whole += &format!("{deeper}{line}\n");
    }
    without_links(whole.trim()).replace("\n\n\n", "\n\n")
}

fn public_rooms(text: &str) -> Outcome<BTreeSet<String>> {
    let file = syn::parse_file(text).map_err(|error| error.to_string())?;
    let rooms = file.items.iter().filter_map(|item| match item {
        syn::Item::Mod(room) if interface::is_public(&room.vis) => Some(room.ident.to_string()),
        _ => None,
    });
    Ok(rooms.collect())
}

/// The formulas of a file: public functions, and public methods that take something or may refuse.
/// What only shows a part of a record is none.
fn functions_of(room: &str, text: &str) -> Outcome<Vec<Public>> {
    let file = syn::parse_file(text).map_err(|error| error.to_string())?;
    let hidden: BTreeSet<String> = file
        .items
        .iter()
        .filter_map(|item| match item {
            syn::Item::Struct(of) if !interface::is_public(&of.vis) => Some(of.ident.to_string()),
            _ => None,
        })
        .collect();
    let mut found = Vec::new();
    for item in &file.items {
        match item {
            syn::Item::Fn(function) if interface::is_public(&function.vis) => {
                found.push((&function.sig, &function.attrs));
            }
            syn::Item::Impl(of)
                if of.trait_.is_none() && !hidden.contains(&name_of(&of.self_ty)) =>
            {
                let methods = of.items.iter().filter_map(|item| match item {
                    syn::ImplItem::Fn(method) if interface::is_public(&method.vis) => Some(method),
                    _ => None,
                });
                let methods = methods.map(|method| (&method.sig, &method.attrs));
                found.extend(methods.filter(|(signature, _)| {
                    let is_plain = |input: &syn::FnArg| matches!(input, syn::FnArg::Receiver(_));
                    is_fallible(signature) || !signature.inputs.iter().all(is_plain)
                }));
            }
            _ => {}
        }
    }
    let functions = found.into_iter().map(|(signature, attributes)| {
        let id = format!("{room}.{}", signature.ident);
        let other = OTHERWISE_NAMED.iter().find(|(method, _)| *method == id);
        Public {
            id: other.map_or(id, |(_, name)| (*name).to_string()),
            docs: interface::lines_of_docs(attributes).join("\n"),
            is_fallible: is_fallible(signature),
        }
    });
    Ok(functions.filter(|f| NO_FORMULA.iter().all(|(id, _)| *id != f.id)).collect())
}

fn name_of(kind: &syn::Type) -> String {
    match kind {
        syn::Type::Path(path) => {
            path.path.segments.last().map_or_else(String::new, |segment| segment.ident.to_string())
        }
        _ => String::new(),
    }
}

fn is_fallible(signature: &syn::Signature) -> bool {
    matches!(&signature.output, syn::ReturnType::Type(_, kind) if name_of(kind) == "Result")
}

/// Looks for every formula wherever it must be.
fn found() -> Outcome<Found> {
    let mut found = Found {
        listed: FORMULAS.iter().map(|formula| formula.id.to_string()).collect(),
        c: interface::read()?.functions.into_iter().map(|function| function.name).collect(),
        javascript: in_javascript(&text_of("bindings/wasm/npm/index.d.ts")?),
        benched: benched(&output(&mut cargo(&[
            "bench", "--locked", "--bench", "rooms", "--", "--list",
        ]))?),
        ..Found::default()
    };
    for (path, file) in files() {
        let name = path.file_stem().unwrap_or_default().to_string_lossy().into_owned();
        for check in file.checks {
            let by = found.checked.entry(check.formula).or_default();
            *by.entry(name.clone()).or_default() += check.out.len() as u64;
        }
    }
    let excused = CHECKED_ELSEWHERE.iter().map(|(id, why)| (id.to_string(), why.to_string()));
    found.excused = excused.collect();
    let counted = fuzzed::formulas::counted(INPUTS).into_iter();
    found.fuzzed = counted.map(|(id, calls)| (id.to_string(), calls)).collect();
    if let Some((id, calls)) = found.fuzzed.iter().min_by_key(|(_, calls)| calls.answered) {
        println!("{id} answers the fewest inputs of the fuzz target, {}", calls.answered);
    }
    Ok(found)
}

/// The formulas that types of JavaScript declare, by their names in the core.
fn in_javascript(types: &str) -> BTreeSet<String> {
    let mut declared = BTreeSet::new();
    let mut room = "";
    for line in types.lines() {
        if let Some(name) = line.strip_prefix("export namespace ") {
            room = name.trim_end_matches(" {");
        } else if let Some(function) = line.strip_prefix("  function ") {
            let name = function.split('(').next().unwrap_or_default();
            declared.insert(format!("{room}.{name}"));
        }
    }
    let named = |id: &&str| declared.contains(&javascript_of(id));
    FORMULAS.iter().map(|formula| formula.id).filter(named).map(str::to_string).collect()
}

/// A formula's name in JavaScript.
fn javascript_of(id: &str) -> String {
    let (room, name) = id.split_once('.').unwrap_or_default();
    format!("{room}.{}", camel(name))
}

/// The formulas that the benchmarks list.
fn benched(listed: &str) -> BTreeSet<String> {
    let names = listed.lines().filter_map(|line| line.strip_suffix(": benchmark"));
    names.filter_map(|name| name.strip_prefix("every/")).map(str::to_string).collect()
}

fn path() -> PathBuf {
    root().join("docs/FORMULAS.md")
}

/// The page, if no formula lacks anything.
fn made() -> Outcome<String> {
    let (rooms, found) = (rooms()?, found()?);
    let public: Vec<Public> = rooms.iter().flat_map(|room| &room.formulas).cloned().collect();
    let lacking = found.lacking(&public);
    if !lacking.is_empty() {
        return Err(format!("{} lacks:\n{}", lacking.len(), lacking.join("\n")));
    }
    println!("{} formulas have all that a formula must have", public.len());
    page::made(&rooms, &found)
}

/// Writes the page.
pub fn write() -> Outcome {
    std::fs::write(path(), made()?).map_err(|error| format!("{}: {error}", path().display()))
}

/// Looks at every formula, and whether the page is what would be made.
pub fn check() -> Outcome {
    match difference::between(&text_of(path())?, &made()?) {
        Some(shown) => {
            Err(format!("docs/FORMULAS.md is not up to date: cargo xtask manifest\n{shown}"))
        }
        None => Ok(()),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const GOOD: &str = "Brew water per dose.\n\n```text\nR = W/D\n```\n\nSymbols: R ratio, W water. Source: \
                        definition.\n\n# Errors\nNone.";

    fn good() -> Public {
        let id = FORMULAS[0].id.to_string();
        Public { id, docs: GOOD.to_string(), is_fallible: true }
    }

    fn whole() -> Found {
        let id = good().id;
        let one = || BTreeSet::from([id.clone()]);
        Found {
            listed: one(),
            checked: BTreeMap::from([(id.clone(), BTreeMap::from([("a_file".to_string(), 3)]))]),
            excused: BTreeMap::new(),
            c: BTreeSet::from([function_of(&id)]),
            javascript: one(),
            benched: one(),
            fuzzed: BTreeMap::from([(id.clone(), Calls { answered: ANSWERED, refused: 0 })]),
        }
    }

    #[test]
    fn a_whole_formula_lacks_nothing() {
        assert_eq!(whole().lacking(&[good()]), [""; 0]);
    }

    #[test]
    fn whatever_is_not_found_is_named() {
        type Without = fn(&mut Found);
        let gates: [(Without, &str); 8] = [
            (|found| found.listed.clear(), "no entry in crates/formulas"),
            (|found| found.checked.clear(), "no check value in tests/vectors"),
            (|found| found.c.clear(), "no function in C"),
            (|found| found.javascript.clear(), "no function in JavaScript"),
            (|found| found.benched.clear(), "no benchmark"),
            (|found| found.fuzzed.clear(), "no way to it in the fuzz target"),
            (
                |found| {
                    found.fuzzed = BTreeMap::from([(good().id, Calls { answered: 0, refused: 7 })])
                },
                "answers 0 inputs of the fuzz target and refuses 7",
            ),
            (
                |found| found.excused = BTreeMap::from([(good().id, "laws".to_string())]),
                "has a check value and an excuse for having none",
            ),
        ];
        for (without, words) in gates {
            let mut found = whole();
            without(&mut found);
            assert_eq!(found.lacking(&[good()]), [format!("{}: {words}", good().id)]);
        }
    }

    #[test]
    fn whatever_the_docs_leave_out_is_named() {
        let gates = [
            ("```text\nR = W/D\n```", "equation"),
            ("Symbols: R ratio, W water.", "symbols"),
            ("# Errors", "errors"),
            ("Source: definition.", "source"),
        ];
        for (words, what) in gates {
            let formula = Public { docs: GOOD.replace(words, ""), ..good() };
            let expected = [format!("{}: no {what} in its docs", formula.id)];
            assert_eq!(whole().lacking(&[formula]), expected);
        }
        let infallible =
            Public { docs: GOOD.replace("# Errors", ""), is_fallible: false, ..good() };
        assert_eq!(infallible.lacking(), [""; 0]);
    }

    #[test]
    fn a_source_is_a_citation_or_says_what_it_is() {
        let of = |source: &str| {
            let docs = GOOD.replace("definition", source);
            Public { docs, ..good() }.lacking()
        };
        let good = [
            "IAPWS SR6-08(2011), equation 1",
            "ISO 2533:1975",
            "ISO 5725-6, acceptability of results",
            "GUM 5.1.2",
            "GUM G.3",
            "OIV-MA-AS2-02, table I",
            "fitted here to IAPWS-95",
            "the law of Fuller & Rao, doi 10.1038/s41598-017-18247-4",
            "reported by Liang, Chan & Ristenpart 2021; the solids balance",
            "Burn Foundation, Safety Facts on Scald Burns (2008)",
            "estimate, −50 to +40 %",
            "conservation of heat",
        ];
        for source in good {
            assert_eq!(of(source), [""; 0], "{source}");
        }
        let bad = [
            "well known",
            "a US consumer agency for 48.9 and 54.4 °C, another list for 52 °C",
            "the Burn Foundation for 56.1, 60 and 65 °C",
            "measured on 2021 cups",
            "5.1.2",
            "equation 3 of the textbook",
            "definitional",
        ];
        for source in bad {
            assert_eq!(of(source), ["source in its docs"], "{source}");
        }
    }

    #[test]
    fn a_function_that_is_not_listed_is_found() {
        let text = "
            /// One.
            pub fn one(dose: Dose) -> Result<Dose, Error> { todo() }
            pub(crate) fn hidden() {}
            pub struct Shown;
            struct Hidden;
            impl Shown {
                pub fn view(&self) -> f64 { 0.0 }
                pub fn two(&self, dose: Dose) -> f64 { 0.0 }
            }
            impl Hidden { pub fn three(dose: Dose) -> f64 { 0.0 } }
        ";
        let functions = functions_of("ratio", text).unwrap();
        let names: Vec<_> = functions.iter().map(|f| (f.id.as_str(), f.is_fallible)).collect();
        assert_eq!(names, [("ratio.one", true), ("ratio.two", false)]);
        let lacking = whole().lacking(&functions);
        assert!(lacking.contains(&"ratio.one: no entry in crates/formulas".to_string()));
        assert!(lacking.contains(&format!("{}: no public function in the core", good().id)));
    }

    #[test]
    fn an_introduction_has_no_examples() {
        let text = "//! Room.\n//!\n//! # How\n//! ```text\n//! a = b\n//! ```\n//!\n//! ```\n//! # use\n//! \
                    ```\n//!\n//! See [`one`].\nuse x;\n//! not this";
        assert_eq!(introduction(text), "Room.\n\n#### How\n```text\na = b\n```\n\nSee `one`.");
    }

    #[test]
    fn what_stands_aside_is_there() {
        let folder = root().join("crates/cupwright/src");
        let rooms = public_rooms(&text_of(folder.join("lib.rs")).unwrap()).unwrap();
        for (room, _) in WITHOUT_FORMULAS {
            assert!(rooms.contains(*room), "{room}");
        }
        let named =
            NO_FORMULA.iter().map(|(id, _)| id).chain(OTHERWISE_NAMED.iter().map(|(id, _)| id));
        for id in named {
            let (room, name) = id.split_once('.').unwrap();
            let mut texts = vec![text_of(folder.join(format!("{room}.rs"))).unwrap()];
            for part in std::fs::read_dir(folder.join(room)).into_iter().flatten() {
                texts.push(text_of(part.unwrap().path()).unwrap());
            }
            assert!(texts.iter().any(|text| text.contains(&format!("fn {name}"))), "{id}");
        }
    }

    #[test]
    fn benchmarks_and_types_are_read() {
        assert_eq!(
            benched("every/a.b: benchmark\nwater/density: benchmark\n"),
            ["a.b".into()].into()
        );
        let types = "export namespace ratio {\n  function waterRatio(options: {\n}\n";
        assert_eq!(in_javascript(types), ["ratio.water_ratio".into()].into());
    }
}
