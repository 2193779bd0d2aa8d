//! Numbers that a seed draws from a range.

use std::f64::consts::TAU;

use rand_pcg::Pcg64;
use rand_pcg::rand_core::{Rng, SeedableRng};
use serde::Deserialize;

/// A stream of random numbers, the same for the same seed and purpose.
pub struct Dice(Pcg64);

impl Dice {
    /// A stream of its own for each purpose, so that one more draw in one leaves the others as they
    /// are.
    pub fn new(seed: u64, purpose: &str) -> Self {
        Self(Pcg64::seed_from_u64(hash(&seed.to_le_bytes()) ^ hash(purpose.as_bytes())))
    }

    /// Evenly from 0 up to, not including, 1, in steps of 2⁻⁵³.
    pub fn even(&mut self) -> f64 {
        (self.0.next_u64() >> 11) as f64 / (1_u64 << 53) as f64
    }

    /// Evenly from -1 to 1.
    pub fn to_either_side(&mut self) -> f64 {
        2.0 * self.even() - 1.0
    }

    /// Normal with mean 0 and standard deviation 1, by Box and Muller (1958, from memory). A
    /// library's ziggurat would take its tails from the platform's own logarithm, and traces would
    /// differ.
    pub fn normal(&mut self) -> f64 {
        let radius = libm::sqrt(-2.0 * libm::log(1.0 - self.even()));
        radius * libm::cos(TAU * self.even())
    }

    /// One of a list, each as likely. The list must not be empty.
    pub fn one_of<'a, T>(&mut self, list: &'a [T]) -> &'a T {
        let at = (self.even() * list.len() as f64) as usize;
        &list[at]
    }
}

/// FNV-1a, 64 bits (Fowler, Noll and Vo; offset and prime from memory): no secret, only spread.
pub fn hash(bytes: &[u8]) -> u64 {
    bytes.iter().fold(0xcbf2_9ce4_8422_2325, |hash, byte| {
        (hash ^ u64::from(*byte)).wrapping_mul(0x0000_0100_0000_01b3)
    })
}

/// A number as a file gives it: exactly, between two ends, or one of a list.
#[derive(Clone, Debug, Deserialize, PartialEq)]
#[serde(untagged)]
pub enum Number {
    Exactly(f64),
    Between([f64; 2]),
    OneOf { one_of: Vec<f64> },
}

impl Number {
    /// Draws it. Between two ends evenly.
    pub fn draw(&self, dice: &mut Dice) -> f64 {
        match self {
            Self::Exactly(value) => *value,
            Self::Between([low, high]) => low + (high - low) * dice.even(),
            Self::OneOf { one_of } => *dice.one_of(one_of),
        }
    }

    /// Refuses a number that can be drawn outside of a range, with its name.
    pub fn within(&self, name: &str, lowest: f64, highest: f64) -> Result<(), String> {
        let values: &[f64] = match self {
            Self::Exactly(value) => std::slice::from_ref(value),
            Self::Between(ends) => ends,
            Self::OneOf { one_of } => one_of,
        };
        if values.is_empty() {
            return Err(format!("{name}: the list to draw one of is empty"));
        }
        if let Some(value) = values.iter().find(|value| !(lowest..=highest).contains(*value)) {
            return Err(format!("{name}: {value} is outside {lowest} to {highest}"));
        }
        match self {
            Self::Between([low, high]) if low > high => {
                Err(format!("{name}: [{low}, {high}] falls; the lower end comes first"))
            }
            _ => Ok(()),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn draws_stay_in_range_and_fill_it() {
        let mut dice = Dice::new(1, "test");
        let between = Number::Between([2.0, 3.0]);
        let drawn: Vec<f64> = (0..2000).map(|_| between.draw(&mut dice)).collect();
        assert!(drawn.iter().all(|x| (2.0..3.0).contains(x)));
        assert!(drawn.iter().any(|x| *x < 2.01) && drawn.iter().any(|x| *x > 2.99));
        let one_of = Number::OneOf { one_of: vec![5.0, 7.0] };
        let sevens = (0..2000).filter(|_| one_of.draw(&mut dice) == 7.0).count();
        // Four standard deviations of a fair coin thrown 2000 times.
        assert!(sevens.abs_diff(1000) < 90, "{sevens}");
    }

    #[test]
    fn normal_draws_have_the_moments_and_tails_of_the_law() {
        let mut dice = Dice::new(1, "test");
        let drawn: Vec<f64> = (0..200_000).map(|_| dice.normal()).collect();
        let moment = |power: i32| {
            let raised = |x: &f64| (0..power).map(|_| x).product::<f64>();
            drawn.iter().map(raised).sum::<f64>() / drawn.len() as f64
        };
        // Four standard deviations of each moment: those of x, x², x³, x⁴ are 1, √2, √15, √96.
        for (power, expected, spread) in
            [(1, 0.0, 1.0), (2, 1.0, 2.0), (3, 0.0, 15.0), (4, 3.0, 96.0)]
        {
            let most = 4.0 * libm::sqrt(spread / 200_000.0);
            assert!((moment(power) - expected).abs() < most, "{power}: {}", moment(power));
        }
        // 0.27 % lie past three: 540 of these, with a spread of 23.
        let far = drawn.iter().filter(|x| x.abs() > 3.0).count();
        assert!(far.abs_diff(540) < 93, "{far}");
    }

    #[test]
    fn seeds_and_purposes_differ() {
        let first = |seed, purpose| Dice::new(seed, purpose).even();
        assert_eq!(first(1, "a").to_bits(), first(1, "a").to_bits());
        assert_ne!(first(1, "a").to_bits(), first(2, "a").to_bits());
        assert_ne!(first(1, "a").to_bits(), first(1, "b").to_bits());
    }

    #[test]
    fn bad_numbers_are_refused() {
        let refused = |number: Number| number.within("flow_g_s", 0.0, 30.0).unwrap_err();
        assert_eq!(refused(Number::Exactly(31.0)), "flow_g_s: 31 is outside 0 to 30");
        assert_eq!(refused(Number::Exactly(f64::NAN)), "flow_g_s: NaN is outside 0 to 30");
        assert!(refused(Number::Between([3.0, 2.0])).contains("falls"));
        assert!(refused(Number::OneOf { one_of: vec![] }).contains("empty"));
    }
}
