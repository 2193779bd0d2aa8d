//! Inputs scattered over and around the ranges of quantities, by whole numbers of 64 bits alone: a driver in
//! any language draws the same ones (`tests/c/scattered.h`).
//!
//! ```text
//! word(key, k)  the k-th word of SplitMix64 from the state key (Steele, Lea & Flood 2014)
//! point         word(FNV-1a of the formula's name, number + 1), the first is number 0
//! field         point ⊕ FNV-1a of the field's name; of a list's item, word(field, 8 + place)
//! ```
//!
//! A point whose word 1 is odd lies around the formula's example. The length of its lists is the example's, of
//! the others word 2 modulo 12. Of a field a, b, c are the words 1 to 3, and a counts modulo 256. A number is
//!
//! ```text
//! a = 0, 1    the lowest         4   just below it              6   not a number (of no whole quantity)
//! a = 2, 3    the highest        5   just above it
//! around an example, for a ≥ 32: the example's bits + b modulo 2⁵⁰ − 2⁴⁹; zero stays
//! else        any place from e − 2ⁱ⁺⁵² or the other end up to e, bits as whole numbers, by b;
//!             i = 0, 0, 1, … 6 by c modulo 8; e is the end of larger magnitude, or by the top bit of c the
//!             negative one of a range that has zero inside
//! ```
//!
//! A whole number is the example's, or the lowest and b modulo a span of the range shifted right by c modulo
//! 8. Yes or no, and one of some choices, are the example's for a ≥ 32, or by b.

use cupwright::quantity::Quantity;

use crate::inputs::{Given, Inputs};

/// Offset and prime of FNV-1a of 64 bits (Fowler, Noll, Vo; draft-eastlake-fnv; from memory, its usual
/// check value stands in a test).
const OFFSET: u64 = 0xcbf2_9ce4_8422_2325;
const PRIME: u64 = 0x0000_0100_0000_01b3;

/// FNV-1a of 64 bits.
pub fn fnv(bytes: impl IntoIterator<Item = u8>) -> u64 {
    bytes.into_iter().fold(OFFSET, |hash, byte| (hash ^ u64::from(byte)).wrapping_mul(PRIME))
}

/// The k-th word of SplitMix64 from a state.
fn word(key: u64, k: u64) -> u64 {
    let mut z = key.wrapping_add(k.wrapping_mul(0x9e37_79b9_7f4a_7c15));
    z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
    z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
    z ^ (z >> 31)
}

/// A point's inputs.
pub struct Scattered<'a> {
    point: u64,
    base: &'a Given,
    /// Whether some lie just outside their ranges.
    beyond: bool,
}

/// The words 1 to 3 of a key.
fn words(key: u64) -> [u64; 3] {
    [word(key, 1) % 256, word(key, 2), word(key, 3)]
}

impl<'a> Scattered<'a> {
    /// The inputs of a numbered point of a formula, around its example or anywhere.
    pub fn new(formula: &str, number: u64, base: &'a Given, beyond: bool) -> Self {
        Self { point: word(fnv(formula.bytes()), number + 1), base, beyond }
    }

    fn near(&self) -> bool {
        word(self.point, 1) % 2 == 1
    }

    fn key(&self, field: &str) -> u64 {
        self.point ^ fnv(field.bytes())
    }

    fn drawn(&self, key: u64, quantity: Quantity, base: Option<f64>) -> f64 {
        let (low, high) = (quantity.lowest(), quantity.highest());
        let [a, b, c] = words(key);
        match a {
            0 | 1 => return low,
            2 | 3 => return high,
            4..=6 if !self.beyond => {}
            4 => return if quantity.is_whole() { low - 1.0 } else { low.next_down() },
            5 => return if quantity.is_whole() { high + 1.0 } else { high.next_up() },
            6 if !quantity.is_whole() => return f64::NAN,
            _ => {}
        }
        let base = base.filter(|_| self.near() && a >= 32);
        if quantity.is_whole() {
            let span = ((high - low) as u64) >> (c % 8);
            return base.unwrap_or(low + (b % (span + 1)) as f64);
        }
        if let Some(base) = base {
            let bits = base.to_bits().wrapping_add(b % (1 << 50)).wrapping_sub(1 << 49);
            return if base == 0.0 { 0.0 } else { f64::from_bits(bits) };
        }
        let negative = high <= 0.0 || (low < 0.0 && c >> 63 == 1);
        let (end, bottom) = if negative { (-low, -high) } else { (high, low) };
        let (top, bottom) = (end.to_bits(), if bottom > 0.0 { bottom.to_bits() } else { 0 });
        let span = 1_u64 << (52 + (c % 8).saturating_sub(1));
        let floor = top.saturating_sub(span).max(bottom);
        let magnitude = f64::from_bits(floor + b % (top - floor + 1));
        if negative && magnitude > 0.0 { -magnitude } else { magnitude }
    }
}

impl Inputs for Scattered<'_> {
    fn number(&self, field: &str, quantity: Quantity) -> f64 {
        let base = self.base.0.contains_key(field).then(|| self.base.number(field, quantity));
        self.drawn(self.key(field), quantity, base)
    }

    fn numbers(&self, field: &str, quantity: Quantity) -> Vec<f64> {
        let base = self.base.numbers(field, quantity);
        let length = if self.near() { base.len() } else { (word(self.point, 2) % 12) as usize };
        let key = self.key(field);
        (0..length)
            .map(|at| self.drawn(word(key, 8 + at as u64), quantity, base.get(at).copied()))
            .collect()
    }

    fn choice(&self, field: &str, count: u8) -> u8 {
        let [a, b, _] = words(self.key(field));
        if self.near() && a >= 32 && self.base.0.contains_key(field) {
            return self.base.choice(field, count);
        }
        1 + (b % u64::from(count)) as u8
    }

    fn flag(&self, field: &str) -> bool {
        let [a, b, _] = words(self.key(field));
        if self.near() && a >= 32 { self.base.flag(field) } else { b % 2 == 1 }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_hash_has_its_usual_check_value() {
        // Of "a" (draft-eastlake-fnv; from memory).
        assert_eq!(fnv(*b"a"), 0xaf63_dc4c_8601_ec8c);
    }

    #[test]
    fn the_words_are_split_mix() {
        // The first two from the state 1234567 (Vigna's splitmix64.c; from memory).
        assert_eq!(
            [word(1_234_567, 1), word(1_234_567, 2)],
            [6_457_827_717_110_365_317, 3_203_168_211_198_807_973]
        );
    }

    #[test]
    fn inside_is_inside_and_every_range_is_filled() {
        let none = Given(Default::default());
        for quantity in Quantity::ALL {
            let draws = || (0..2000).map(|at| Scattered::new("any", at, &none, false));
            let values: Vec<f64> = draws().map(|d| d.number("field", *quantity)).collect();
            assert!(values.iter().all(|value| quantity.accepts(*value)), "{quantity:?}");
            let (low, high) = (quantity.lowest(), quantity.highest());
            let middle = low + (high - low) / 2.0;
            let above = values.iter().filter(|value| **value > middle).count();
            assert!((100..1900).contains(&above), "{quantity:?}: {above} above the middle");
            let beyond = |at| Scattered::new("any", at, &none, true).number("field", *quantity);
            let outside = (0..2000).map(beyond).filter(|v| !quantity.accepts(*v)).count();
            assert!((5..60).contains(&outside), "{quantity:?}: {outside} outside");
        }
    }
}
