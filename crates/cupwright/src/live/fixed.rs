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
    let bits = number.to_bits();
    let exponent = (bits >> 52) as i32 & 0x7FF;
    if exponent == 0 {
        return 0;
    }
    // The digits behind the point, and the one before it, which is not told.
    let fraction = ((bits << 11 | 1 << 63) >> 11) as i64;
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

    /// At the ends of what a shift can do: the largest that still fits, and the least that leave a digit.
    #[test]
    fn whole_numbers_of_any_size() {
        let one_and_a_last_digit = 1.0 + f64::EPSILON;
        assert_eq!(whole(one_and_a_last_digit, 52), (1 << 52) + 1);
        assert_eq!(whole(-one_and_a_last_digit, 53), -(1 << 53) - 2);
        assert_eq!(whole(one_and_a_last_digit, 61), (1 << 61) + (1 << 9));
        assert_eq!((whole(1.0, 62), whole(-1.0, 62)), (1 << 62, -1 << 62));
        assert_eq!((whole(1.5, 62), whole(-1.5, 62)), (1 << 62, -1 << 62), "too large");
        assert_eq!((whole(1.0, -10), whole(-1.0, -10)), (0, -1));
        assert_eq!((whole(1.0, -11), whole(-1.0, -11)), (0, -1));
        assert_eq!((whole(1.0, -300), whole(-1.0, -300)), (0, -1));
        // Below the least number with all its digits everything is nought.
        assert_eq!((whole(-f64::MIN_POSITIVE, 20), whole(-0.5 * f64::MIN_POSITIVE, 20)), (-1, 0));
    }

    #[test]
    fn products_and_shares_are_rounded_down() {
        let least = Wrapping(1);
        assert_eq!(product(fixed(-1.5), fixed(2.25)), fixed(-3.375));
        assert_eq!((product(least, least), product(least, -least)), (ZERO, -least));
        assert_eq!(brought(fixed(0.5), fixed(16384.0)), fixed(8192.0));
        assert_eq!(brought(fixed(0.5), fixed(1e12)), fixed(8192.0), "longer than any brew");
        assert_eq!((share(fixed(9.0), 0), share(fixed(9.0), 1)), (fixed(9.0), fixed(9.0)));
        assert_eq!((share(fixed(9.0), 4), share(fixed(-9.0), 8)), (fixed(2.25), fixed(-1.125)));
        assert!((number(share(fixed(9.0), 3)) - 3.0).abs() < 1e-5);
        assert_eq!((magnitude(fixed(-2.5)), magnitude(fixed(2.5))), (fixed(2.5), fixed(2.5)));
    }
}
