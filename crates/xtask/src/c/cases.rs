//! Cases for the C interface: numbers in, and the core's own answer or error to the last bit.
//!
//! A line per case, numbers as the hexadecimal digits of their bits:
//!
//! ```text
//! FUNCTION COUNT number…  0 COUNT number…                       the answer
//! FUNCTION COUNT number…  STATUS 7 value lowest highest nearest quantity beside limit FIELD
//! ```
//!
//! FUNCTION is the place in the list of calls, FIELD the input to blame or `-`. The last line says how
//! many there are.

use std::cell::RefCell;
use std::collections::BTreeMap;
use std::fmt::Write;

use cupwright::Error;
use cupwright::quantity::Quantity;
use formulas::inputs::{Asked, Drawn, Given, Inputs, Near, Remembered, asked_by};
use formulas::vectors::files;
use formulas::{FORMULAS, Formula, Outputs, examples::examples};
use serde_json::Value;

use super::calls::{Call, Taken, function_of};

/// Cases of every function: all check values, examples with one input bad or two exchanged, and as many
/// random ones of each kind as asked for.
pub fn all(calls: &[Call], random: u64) -> String {
    let mut cases = Cases { text: String::new(), count: 0 };
    let examples = examples();
    for formula in FORMULAS {
        let Some((at, call)) = place(calls, formula) else { continue };
        let base = &examples[formula.id];
        cases.unknown_choices(at, call, formula, base);
        let mut add = |inputs: &dyn Inputs| cases.add(at, call, formula, inputs);
        add(base);
        for inputs in spoiled(formula, base) {
            add(&inputs);
        }
        for seed in 0..random {
            add(&Near { base, drawn: Drawn(RefCell::new(seed)) });
            add(&Drawn(RefCell::new(seed)));
        }
    }
    for check in files().into_iter().flat_map(|(_, file)| file.checks) {
        let formula =
            FORMULAS.iter().find(|f| f.id == check.formula).expect("a check of a known formula");
        if let Some((at, call)) = place(calls, formula) {
            cases.add(at, call, formula, &Given(check.r#in));
        }
    }
    let _ = writeln!(cases.text, "end {}", cases.count);
    cases.text
}

/// One case of every function: that at its example.
pub fn one_each(calls: &[Call]) -> String {
    let mut cases = Cases { text: String::new(), count: 0 };
    let examples = examples();
    for formula in FORMULAS {
        let Some((at, call)) = place(calls, formula) else { continue };
        cases.add(at, call, formula, &examples[formula.id]);
    }
    let _ = writeln!(cases.text, "end {}", cases.count);
    cases.text
}

/// The function that answers a formula, if it is among those given, and its place. That C has one for each
/// formula is a test of its own.
fn place<'a, 'b>(calls: &'a [Call<'b>], formula: &Formula) -> Option<(usize, &'a Call<'b>)> {
    let name = function_of(formula.id);
    let at = calls.iter().position(|call| call.function.name == name)?;
    Some((at, &calls[at]))
}

/// The example with each number in turn bad or at its edge, and with each two neighbours exchanged.
pub fn spoiled(formula: &Formula, base: &Given) -> Vec<Given> {
    let asked = asked_by(formula, base);
    let mut all = Vec::new();
    let with = |field: &str, value: f64| {
        let mut fields = base.0.clone();
        fields.insert(field.to_string(), number(value));
        Given(fields)
    };
    for (field, asked) in &asked {
        let Asked::Number(quantity, _) = asked else { continue };
        let (low, high) = (quantity.lowest(), quantity.highest());
        for value in [low, high, low.next_down(), high.next_up(), -high, 2.0 * high, -0.0] {
            all.push(with(field, value));
        }
        for value in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY] {
            all.push(with(field, value));
        }
    }
    for pair in asked.windows(2) {
        let [(first, Asked::Number(_, a)), (second, Asked::Number(_, b))] = pair else { continue };
        let mut fields = base.0.clone();
        fields.insert(first.clone(), number(*b));
        fields.insert(second.clone(), number(*a));
        all.push(Given(fields));
    }
    all
}

/// A number as JSON holds it; what JSON cannot hold, as the text of its bits.
fn number(value: f64) -> Value {
    serde_json::Number::from_f64(value)
        .map_or_else(|| Value::String(format!("{:016x}", value.to_bits())), Value::Number)
}

struct Cases {
    text: String,
    count: usize,
}

impl Cases {
    fn add(&mut self, at: usize, call: &Call, formula: &Formula, inputs: &dyn Inputs) {
        let remembered = Remembered::new(inputs);
        let answer = (formula.call)(&remembered);
        let asked = remembered.asked.into_inner();
        // Yes is anything but zero.
        let yes = [1, 2, -1, i32::MIN][self.count % 4];
        let Some(row) = row(call, &asked, yes) else { return };
        self.row(at, &row);
        match answer {
            Ok(outputs) => self.answer(call, &outputs),
            Err(error) => self.facts(&facts(&error), blamed(formula, &error, &asked).as_deref()),
        }
        self.text.push('\n');
        self.count += 1;
    }

    fn row(&mut self, at: usize, row: &[f64]) {
        let _ = write!(self.text, "{at} {}", row.len());
        for value in row {
            let _ = write!(self.text, " {:016x}", value.to_bits());
        }
    }

    /// The example with each choice in turn none of those known.
    fn unknown_choices(&mut self, at: usize, call: &Call, formula: &Formula, base: &Given) {
        let asked = asked_by(formula, base);
        for (field, entry) in &asked {
            let Asked::Choice(_, count) = entry else { continue };
            let place =
                call.takes.iter().position(|t| matches!(t, Taken::One(name, _) if name == field));
            let place = place.unwrap_or_else(|| panic!("{}: no {field}", call.function.name));
            let mut row = row(call, &asked, 1).expect("an example that C can say");
            // Lists come before choices, and are as long as they are.
            let at_end = row.len() - (call.takes.len() - place);
            for code in [0, i32::from(*count) + 1, -1, i32::MIN, i32::MAX] {
                row[at_end] = f64::from(code);
                self.row(at, &row);
                self.facts(&Facts { value: f64::from(code), ..Facts::none(8) }, Some(field));
                self.text.push('\n');
                self.count += 1;
            }
        }
    }

    fn answer(&mut self, call: &Call, outputs: &Outputs) {
        let _ = write!(self.text, " 0 {}", call.gives.len());
        for value in call.answers(outputs) {
            let _ = write!(self.text, " {:016x}", value.to_bits());
        }
    }

    fn facts(&mut self, f: &Facts, field: Option<&str>) {
        let _ = write!(self.text, " {} 7", f.status);
        for value in [f.value, f.lowest, f.highest, f.nearest, f.quantity, f.beside, f.limit] {
            let _ = write!(self.text, " {:016x}", value.to_bits());
        }
        let _ = write!(self.text, " {}", field.unwrap_or("-"));
    }
}

/// The numbers in the order of the function's parameters; none where C cannot say them. What was not
/// asked for is not a number: an input behind a flag, or one after the first that was refused.
fn row(call: &Call, asked: &[(String, Asked)], yes: i32) -> Option<Vec<f64>> {
    let by_name: BTreeMap<&str, &Asked> =
        asked.iter().map(|(name, asked)| (name.as_str(), asked)).collect();
    let mut row = Vec::new();
    for taken in &call.takes {
        match taken {
            Taken::One(name, is_integer) => {
                let value = match by_name.get(name.as_str()) {
                    Some(Asked::Number(quantity, value)) if quantity.is_whole() => {
                        // Counts are integers in C.
                        if f64::from(*value as i32).to_bits() != value.to_bits() {
                            return None;
                        }
                        *value
                    }
                    Some(Asked::Number(_, value)) => *value,
                    Some(Asked::Choice(code, _)) => f64::from(*code),
                    Some(Asked::Flag(is)) => f64::from(if *is { yes } else { 0 }),
                    Some(Asked::Numbers(..)) => panic!("{name} is a list"),
                    None if *is_integer => 0.0,
                    None => f64::NAN,
                };
                row.push(value);
            }
            Taken::Many(names) => {
                let lists: Vec<&[f64]> = names
                    .iter()
                    .map(|name| match by_name.get(name.as_str()) {
                        Some(Asked::Numbers(_, values)) => &values[..],
                        _ => &[],
                    })
                    .collect();
                let count = length(&lists);
                // Counts are integers in C.
                let is_integer = |x: &f64| f64::from(*x as i32).to_bits() == x.to_bits();
                if wholes(asked).any(|values| !values.iter().take(count).all(is_integer)) {
                    return None;
                }
                row.push(count as f64);
                for at in 0..count {
                    row.extend(lists.iter().map(|list| list[at]));
                }
            }
        }
    }
    Some(row)
}

/// Lists of counts.
pub fn wholes(asked: &[(String, Asked)]) -> impl Iterator<Item = &[f64]> {
    asked.iter().filter_map(|(_, asked)| match asked {
        Asked::Numbers(quantity, values) if quantity.is_whole() => Some(&values[..]),
        _ => None,
    })
}

/// The error's facts as C tells them.
pub struct Facts {
    pub status: i32,
    pub value: f64,
    pub lowest: f64,
    pub highest: f64,
    pub nearest: f64,
    pub quantity: f64,
    pub beside: f64,
    pub limit: f64,
}

impl Facts {
    /// A refusal without facts.
    fn none(status: i32) -> Self {
        Self {
            status,
            value: 0.0,
            lowest: 0.0,
            highest: 0.0,
            nearest: 0.0,
            quantity: 0.0,
            beside: 0.0,
            limit: 0.0,
        }
    }
}

pub fn facts(error: &Error) -> Facts {
    let code = |quantity: Quantity| f64::from(quantity as u16);
    let ranged = |status, quantity, value, lowest, highest| Facts {
        value,
        lowest,
        highest,
        quantity: code(quantity),
        ..Facts::none(status)
    };
    match *error {
        Error::OutOfRange { quantity, value, lowest, highest } => {
            ranged(1, quantity, value, lowest, highest)
        }
        Error::NotWhole { quantity, value, lowest, highest } => {
            ranged(2, quantity, value, lowest, highest)
        }
        Error::Impossible { quantity, value, lowest, highest, beside } => {
            Facts { beside: code(beside), ..ranged(3, quantity, value, lowest, highest) }
        }
        Error::EmptyBand { quantity, lowest, highest } => ranged(4, quantity, 0.0, lowest, highest),
        Error::ResultOutOfRange { quantity, value, lowest, highest } => {
            ranged(5, quantity, value, lowest, highest)
        }
        Error::Infeasible { wish, value, nearest, limit } => {
            Facts { nearest, limit: f64::from(limit as u16), ..ranged(6, wish, value, 0.0, 0.0) }
        }
        Error::CannotTell { quantity, why, found, needed } => {
            Facts { limit: f64::from(why as u16), ..ranged(10, quantity, found, needed, 0.0) }
        }
        other => panic!("a new variant: {other:?}"),
    }
}

/// What a wish that is refused, or a limit of the core's own, is about where the quantity alone leaves it
/// open: formula, quantity, field.
const WISHES: [(&str, Quantity, &str); 17] = [
    ("advise.on", Quantity::Strength, "wanted_pct"),
    ("dilution.water_to_reach", Quantity::Strength, "wanted_pct"),
    ("dilution.drink_of_brew", Quantity::Strength, "wanted_pct"),
    ("dilution.brew_for_drink", Quantity::Strength, "wanted_pct"),
    ("dilution.split", Quantity::Strength, "wanted_pct"),
    ("dilution.split", Quantity::Beverage, "cup_g"),
    ("dilution.iced", Quantity::Ice, "ice_g"),
    ("dilution.ice_to_reach", Quantity::Temperature, "wanted_c"),
    ("extraction.beverage", Quantity::HeldStrength, "held_strength_pct"),
    ("extraction.time_for_yield", Quantity::Yield, "yield_pct"),
    ("heat.time_to_cool", Quantity::Temperature, "to_c"),
    ("heat.reachable", Quantity::Temperature, "water_c"),
    ("ratio.whole_cups", Quantity::Beverage, "cup_g"),
    ("reading.critical_range", Quantity::ReadingCount, "readings"),
    ("uncertainty.time_for_yield", Quantity::Yield, "wanted_yield_pct"),
    ("uncertainty.time_to_cool", Quantity::Temperature, "to_c"),
    ("uncertainty.water_to_reach", Quantity::Strength, "wanted_pct"),
];

/// The input to blame: the first that is not accepted, else the wish that cannot be met.
pub fn blamed(formula: &Formula, error: &Error, asked: &[(String, Asked)]) -> Option<String> {
    if is_of_a_list(error, asked) {
        return Some("count".to_string());
    }
    if let Some(field) = unaccepted(asked) {
        return Some(field.to_string());
    }
    if formula.id.starts_with("plan.") {
        return wished(error, asked);
    }
    let (Error::Infeasible { wish: about, .. } | Error::OutOfRange { quantity: about, .. }) = error
    else {
        return None;
    };
    let known = WISHES.iter().find(|(id, quantity, _)| *id == formula.id && quantity == about);
    let (.., field) =
        known.unwrap_or_else(|| panic!("{}: which field is {error} about?", formula.id));
    Some((*field).to_string())
}

/// The field of its wish that an error of a plan is about.
fn wished(error: &Error, asked: &[(String, Asked)]) -> Option<String> {
    let fields = asked.iter().map(|(field, asked)| {
        let value = match asked {
            Asked::Number(_, value) => *value,
            Asked::Choice(code, _) => f64::from(*code),
            Asked::Flag(is) => f64::from(u8::from(*is)),
            Asked::Numbers(..) => panic!("a recipe asks for no list"),
        };
        (field.clone(), number(value))
    });
    let wish = formulas::wish(&Given(fields.collect())).ok()?;
    wish.field_of(error).map(str::to_string)
}

/// Whether an error is about how many items a list has, which is looked at before the items.
pub fn is_of_a_list(error: &Error, asked: &[(String, Asked)]) -> bool {
    use Quantity::{BodyCount, Measurements, ReadingCount, RepeatCount, TermCount};
    let Error::OutOfRange { quantity, .. } = error else { return false };
    let is_count =
        matches!(quantity, BodyCount | Measurements | ReadingCount | RepeatCount | TermCount);
    let has_list = asked.iter().any(|(_, asked)| matches!(asked, Asked::Numbers(..)));
    // A number of readings may be an input beside a list of something else.
    let is_number = asked.iter().any(|(_, asked)| match asked {
        Asked::Number(of, value) => of == quantity && !of.accepts(*value),
        _ => false,
    });
    is_count && has_list && !is_number
}

/// How many items lists make together.
fn length(lists: &[&[f64]]) -> usize {
    lists.iter().map(|list| list.len()).min().unwrap_or(0)
}

/// How many numbers of lists are not accepted.
pub fn unaccepted_items(asked: &[(String, Asked)]) -> usize {
    let unaccepted = |(_, asked): &(String, Asked)| match asked {
        Asked::Numbers(quantity, values) => {
            values.iter().filter(|value| !quantity.accepts(**value)).count()
        }
        _ => 0,
    };
    asked.iter().map(unaccepted).sum()
}

/// The first input that is not accepted, in the order in which C looks at them: item by item in lists.
pub fn unaccepted(asked: &[(String, Asked)]) -> Option<&str> {
    let lists = || {
        asked.iter().filter_map(|(field, asked)| match asked {
            Asked::Numbers(quantity, values) => Some((field, quantity, values)),
            _ => None,
        })
    };
    let length = length(&lists().map(|(_, _, values)| &values[..]).collect::<Vec<_>>());
    for (field, entry) in asked {
        match entry {
            Asked::Number(quantity, value) if !quantity.accepts(*value) => return Some(field),
            Asked::Numbers(..) => {
                for at in 0..length {
                    if let Some((field, ..)) = lists().find(|(_, q, values)| !q.accepts(values[at]))
                    {
                        return Some(field);
                    }
                }
            }
            _ => {}
        }
    }
    None
}
