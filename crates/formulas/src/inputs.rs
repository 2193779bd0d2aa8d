//! Where a formula takes its inputs from.

use std::cell::RefCell;
use std::collections::BTreeMap;

use cupwright::quantity::Quantity;

pub trait Inputs {
    /// The value of a field.
    fn number(&self, field: &str, quantity: Quantity) -> f64;
    /// The values of a list.
    fn numbers(&self, field: &str, quantity: Quantity) -> Vec<f64>;
    /// One of the codes 1 to `count`.
    fn choice(&self, field: &str, count: u8) -> u8;
    /// Yes or no.
    fn flag(&self, field: &str) -> bool;
}

/// A number, or the text of the bits of one that JSON cannot hold.
fn plain(value: &serde_json::Value) -> Option<f64> {
    match value {
        serde_json::Value::String(bits) => u64::from_str_radix(bits, 16).ok().map(f64::from_bits),
        _ => value.as_f64(),
    }
}

/// Inputs from a check-value file.
pub struct Given(pub BTreeMap<String, serde_json::Value>);

impl Inputs for Given {
    fn number(&self, field: &str, _: Quantity) -> f64 {
        let Some(value) = self.0.get(field) else { panic!("{field} is missing") };
        plain(value).unwrap_or_else(|| panic!("{field} is not a number"))
    }

    fn numbers(&self, field: &str, _: Quantity) -> Vec<f64> {
        let Some(list) = self.0.get(field) else { return Vec::new() };
        let list = list.as_array().unwrap_or_else(|| panic!("{field} is not a list"));
        list.iter().map(|value| plain(value).unwrap()).collect()
    }

    fn choice(&self, field: &str, _: u8) -> u8 {
        self.number(field, Quantity::Batches) as u8
    }

    fn flag(&self, field: &str) -> bool {
        self.0.get(field).is_some_and(|value| value.as_f64() != Some(0.0))
    }
}

/// Inputs drawn from each quantity's range, its edges, and a little beyond.
pub struct Drawn(pub RefCell<u64>);

impl Drawn {
    /// SplitMix64 (Steele, Lea & Flood 2014).
    fn next(&self) -> u64 {
        let mut state = self.0.borrow_mut();
        *state = state.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = *state;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        z ^ (z >> 31)
    }

    fn fraction(&self) -> f64 {
        (self.next() >> 11) as f64 / (1_u64 << 53) as f64
    }
}

impl Inputs for Drawn {
    fn number(&self, _: &str, quantity: Quantity) -> f64 {
        let (low, high) = (quantity.lowest(), quantity.highest());
        let uniform = low + (high - low) * self.fraction();
        match self.next() % 40 {
            0 => low,
            1 => high,
            2 => low.next_down(),
            3 => high.next_up(),
            4 => f64::NAN,
            5 => f64::INFINITY,
            6 => f64::from_bits(self.next()),
            // Most real values crowd near the low end of a wide range.
            7..=25 if !quantity.is_whole() => low + (high - low) * self.fraction().powi(6),
            _ if quantity.is_whole() => uniform.round(),
            _ => uniform,
        }
    }

    fn numbers(&self, field: &str, quantity: Quantity) -> Vec<f64> {
        (0..self.next() % 12).map(|_| self.number(field, quantity)).collect()
    }

    fn choice(&self, _: &str, count: u8) -> u8 {
        1 + (self.next() % u64::from(count)) as u8
    }

    fn flag(&self, _: &str) -> bool {
        self.next().is_multiple_of(2)
    }
}

/// Inputs drawn around given ones, mostly within a tenth of them, now and then from anywhere.
pub struct Near<'a> {
    /// What they lie around.
    pub base: &'a Given,
    /// Where chance comes from.
    pub drawn: Drawn,
}

impl Near<'_> {
    fn strays(&self) -> bool {
        self.drawn.next().is_multiple_of(64)
    }

    fn around(&self, value: f64, quantity: Quantity) -> f64 {
        let value = value * (0.9 + 0.2 * self.drawn.fraction());
        if quantity.is_whole() { value.round() } else { value }
    }
}

impl Inputs for Near<'_> {
    fn number(&self, field: &str, quantity: Quantity) -> f64 {
        if self.strays() {
            return self.drawn.number(field, quantity);
        }
        self.around(self.base.number(field, quantity), quantity)
    }

    fn numbers(&self, field: &str, quantity: Quantity) -> Vec<f64> {
        if self.strays() {
            return self.drawn.numbers(field, quantity);
        }
        let base = self.base.numbers(field, quantity);
        base.into_iter().map(|value| self.around(value, quantity)).collect()
    }

    fn choice(&self, field: &str, count: u8) -> u8 {
        if self.strays() { self.drawn.choice(field, count) } else { self.base.choice(field, count) }
    }

    fn flag(&self, field: &str) -> bool {
        if self.strays() { self.drawn.flag(field) } else { self.base.flag(field) }
    }
}

/// An input as it was asked for.
#[derive(Clone, Debug, PartialEq)]
pub enum Asked {
    /// A number of a quantity.
    Number(Quantity, f64),
    /// A list of numbers of a quantity.
    Numbers(Quantity, Vec<f64>),
    /// A code, and how many there are to choose from.
    Choice(u8, u8),
    /// Yes or no.
    Flag(bool),
}

/// Inputs that remember what was asked of them, in its order.
pub struct Remembered<'a> {
    /// Where they come from.
    pub from: &'a dyn Inputs,
    /// What was asked so far.
    pub asked: RefCell<Vec<(String, Asked)>>,
}

/// What a formula asks for when it is given some inputs, in its order.
pub fn asked_by(formula: &crate::Formula, inputs: &dyn Inputs) -> Vec<(String, Asked)> {
    let remembered = Remembered::new(inputs);
    // Its answer is of no interest.
    let _ = (formula.call)(&remembered);
    remembered.asked.into_inner()
}

impl<'a> Remembered<'a> {
    /// Nothing asked yet.
    pub fn new(from: &'a dyn Inputs) -> Self {
        Self { from, asked: RefCell::default() }
    }

    fn remember(&self, field: &str, asked: Asked) {
        self.asked.borrow_mut().push((field.to_string(), asked));
    }
}

impl Inputs for Remembered<'_> {
    fn number(&self, field: &str, quantity: Quantity) -> f64 {
        let value = self.from.number(field, quantity);
        self.remember(field, Asked::Number(quantity, value));
        value
    }

    fn numbers(&self, field: &str, quantity: Quantity) -> Vec<f64> {
        let values = self.from.numbers(field, quantity);
        self.remember(field, Asked::Numbers(quantity, values.clone()));
        values
    }

    fn choice(&self, field: &str, count: u8) -> u8 {
        let code = self.from.choice(field, count);
        self.remember(field, Asked::Choice(code, count));
        code
    }

    fn flag(&self, field: &str) -> bool {
        let is = self.from.flag(field);
        self.remember(field, Asked::Flag(is));
        is
    }
}
