//! Masses, times and flows as whole numbers of 2⁻²⁰: a microgram, a microsecond.
//!
//! A processor without hardware for doubles adds them in a hundred instructions and more, whole
//! numbers in two. No scale and no clock resolves a millionth, sums are exact, and a double holds every
//! such number up to 2³³: it comes back from there as it was. Nothing overflows up to flows of
//! 500 g/s, far beyond any scale; beyond that, a comparison may wrap and a flow go unheard.

use core::num::Wrapping;

/// So many 2⁻²⁰.
pub(super) type Fixed = Wrapping<i64>;

/// Digits after the point.
const DIGITS: i32 = 20;

pub(super) const ZERO: Fixed = Wrapping(0);

/// Before any clock, s.
pub(super) const LONG_AGO: Fixed = fixed(-1e12);

/// Longer than any brew, s: what lasts longer counts as this.
const AGES: Fixed = fixed(16384.0);

/// A number below 2⁴² in magnitude, rounded down.
pub(super) const fn fixed(number: f64) -> Fixed {
    Wrapping(whole(number, DIGITS))
}

/// The largest whole number not above 2ⁿ times a number; ±2⁶² for larger ones. By its bits, which is
/// cheaper than a multiplication.
pub(super) const fn whole(number: f64, n: i32) -> i64 {
    const FRACTION: u64 = (1 << 52) - 1;
    let bits = number.to_bits();
    let exponent = (bits >> 52) as i32 & 0x7FF;
    if exponent == 0 {
        return 0;
    }
    let fraction = (bits & FRACTION | 1 << 52) as i64;
    let (signed, largest) = match bits >> 63 {
        0 => (fraction, 1 << 62),
        _ => (fraction.wrapping_neg(), -1 << 62),
    };
    match exponent.wrapping_add(n).wrapping_sub(1075) {
        10.. => largest,
        left @ 0..10 => signed << left,
        right @ -62..0 => signed >> right.unsigned_abs(),
        _ => signed >> 62,
    }
}

/// A number in its unit.
pub(super) fn number(fixed: Fixed) -> f64 {
    if fixed == ZERO { 0.0 } else { scaled(fixed.0 as f64, DIGITS.wrapping_neg()) }
}

/// 2ⁿ times a number that is far from zero and from the largest.
pub(super) fn scaled(number: f64, n: i32) -> f64 {
    f64::from_bits(number.to_bits().wrapping_add_signed(i64::from(n) << 52))
}

/// A product, rounded down.
pub(super) fn product(a: Fixed, b: Fixed) -> Fixed {
    (a * b) >> 20
}

/// What a flow brings in a time.
pub(super) fn brought(flow: Fixed, time: Fixed) -> Fixed {
    product(flow, time.min(AGES))
}

/// A sum's share of one among so many, by their reciprocal: for sums that are small.
pub(super) fn share(sum: Fixed, among: u8) -> Fixed {
    match (1_u32 << 20).checked_div(among.into()) {
        Some(reciprocal) => product(sum, Wrapping(reciprocal.into())),
        None => sum,
    }
}

pub(super) fn magnitude(fixed: Fixed) -> Fixed {
    Wrapping(fixed.0.wrapping_abs())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_number_there_and_back() {
        for x in [0.0, 1.0, -1.0, 0.1, -0.1, 1e5, -1e5, 5e9, 1e-7, -1e-7, 1e-300, -1e-300] {
            let wanted = crate::math::floor(x * 1_048_576.0);
            let rounded = if x == -1e-300 { -1.0 } else { wanted };
            assert_eq!(fixed(x).0 as f64, rounded, "{x}");
            assert_eq!(number(fixed(x)), rounded / 1_048_576.0, "{x}");
            assert_eq!(fixed(number(fixed(x))), fixed(x), "{x}");
        }
        assert_eq!(whole(1e300, 0), 1 << 62);
        assert_eq!(whole(-1e300, 0), -1 << 62);
        assert_eq!(whole(f64::INFINITY, 20), 1 << 62);
        assert_eq!((whole(3.9, 0), whole(-3.9, 0), whole(3.0, -1)), (3, -4, 1));
        assert_eq!((scaled(3.0, 4), scaled(-48.0, -4)), (48.0, -3.0));
    }
}
