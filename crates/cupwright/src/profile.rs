//! What was learned of one brewer, coffee, cup and instrument, and how it is kept.
//!
//! A [`Profile`] holds what [`crate::calibrate`] told, each value with its standard uncertainty and
//! degrees of freedom, and nothing for what is not known yet. With the feature `serde` it is a
//! plain record; without any library it is 312 bytes, for a scale's memory:
//!
//! | bytes | what |
//! |---|---|
//! | 0 to 3 | `CUPW` |
//! | 4 to 5 | version of the layout, 1 |
//! | 6 to 7 | zero |
//! | 8 to 11 | which fields are there: bit 0 for the first field of [`Profile`], and so on |
//! | 12 to 15 | CRC-32 of all other bytes (IEEE 802.3; of `123456789` it is `cbf43926`) |
//! | 16 to 303 | for each of the twelve fields with an uncertainty: value, uncertainty, degrees of freedom |
//! | 304 to 311 | the correlation |
//!
//! Whole numbers are little endian, the others IEEE 754 binary64, little endian; a field that is
//! not there is zeros. A field added later makes a new version. A single wrong byte is always found,
//! other damage but once in four thousand million times.
//!
//! ```
//! use cupwright::calibrate::{self, Dried};
//! use cupwright::profile::Profile;
//! use cupwright::quantity::*;
//!
//! let sample = |brix, strength| {
//!     Ok::<_, cupwright::Error>(Dried {
//!         brix: Brix::from_degrees(brix)?,
//!         strength: Strength::from_percent(strength)?,
//!     })
//! };
//! // Invented samples.
//! let factor = calibrate::refractive_factor(&[sample(1.42, 1.214)?, sample(1.66, 1.402)?])?;
//! let mut mine = Profile::default();
//! mine.refractive_factor = Some(factor.estimate);
//!
//! let kept = mine.to_bytes();
//! assert_eq!(Profile::from_bytes(&kept)?, mine);
//!
//! let mut damaged = kept;
//! damaged[100] ^= 1;
//! assert!(Profile::from_bytes(&damaged).is_err());
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

use crate::calibrate::{OneRate, RetentionLine, TwoRates};
use crate::math::max;
use crate::quantity::{
    ApparentRetention, CoolingRate, Correlation, FittedHoldUp, HeatCapacity, Measure,
    RefractiveFactor, Repeatability, Share, TimeConstant, Yield,
};
use crate::sealed::Seal;
use crate::uncertainty::{Estimate, Uncertain};

pub use crate::sealed::Unreadable;

/// How every profile begins.
const SEAL: Seal = Seal { letters: *b"CUPW", version: 1 };

/// Numbers in a profile.
const NUMBERS: usize = 37;

/// Length of a profile in bytes.
pub const PROFILE_BYTES: usize = Seal::length(NUMBERS);

macro_rules! profile {
    ($($(#[$meaning:meta])* $bit:literal $field:ident: $kind:ty = $outside:literal,)+) => {
        /// What was learned of one brewer, coffee, cup and instrument.
        #[derive(Clone, Copy, Debug, Default, PartialEq)]
        #[cfg_attr(
            feature = "serde",
            derive(serde::Serialize, serde::Deserialize),
            serde(deny_unknown_fields)
        )]
        pub struct Profile {
            $(
                $(#[$meaning])*
                #[cfg_attr(
                    feature = "serde",
                    serde(rename = $outside, default, skip_serializing_if = "Option::is_none")
                )]
                pub $field: Option<$kind>,
            )+
        }

        impl Profile {
            /// The profile as bytes.
            pub fn to_bytes(&self) -> [u8; PROFILE_BYTES] {
                let mut numbers = [0.0; NUMBERS];
                let mut places = numbers.iter_mut();
                let mut there = 0;
                $(
                    if let Some(kept) = self.$field {
                        there |= const { 1_u32 << $bit };
                        places.by_ref().zip(kept.numbers()).for_each(|(place, x)| *place = x);
                    } else {
                        places.by_ref().take(<$kind as Kept>::NUMBERS).for_each(drop);
                    }
                )+
                SEAL.close(there, numbers.into_iter())
            }

            /// A profile from its bytes.
            ///
            /// # Errors
            /// [`Unreadable`], with what is wrong: no damaged profile is ever read.
            pub fn from_bytes(bytes: &[u8]) -> Result<Self, Unreadable> {
                let (there, mut numbers) = SEAL.open(bytes, NUMBERS)?;
                const KNOWN: u32 = 0 $(| 1 << $bit)+;
                if there & !KNOWN != 0 {
                    return Err(Unreadable::NotBlank);
                }
                Ok(Self {
                    $($field: kept(there & const { 1_u32 << $bit } != 0, &mut numbers)?,)+
                })
            }
        }
    };
}

profile! {
    /// Apparent retention of the brewer's grounds.
    0 retention: Estimate<ApparentRetention> = "apparent_retention_g_per_g",
    /// Hold-up of the brewer, as the same line has it.
    1 hold_up: Estimate<FittedHoldUp> = "fitted_hold_up_g",
    /// Heat capacity of the brewer.
    2 heat_capacity: Estimate<HeatCapacity> = "heat_capacity_j_per_k",
    /// Cooling rate of the brewer while it steeps.
    3 cooling: Estimate<CoolingRate> = "cooling_per_min",
    /// Yield that the coffee levels off at.
    4 equilibrium: Estimate<Yield> = "equilibrium_yield_pct",
    /// Share of it that dissolves fast.
    5 fast_share: Estimate<Share> = "fast_share_pct",
    /// Time constant of the fast share.
    6 fast: Estimate<TimeConstant> = "fast_time_s",
    /// Time constant of the rest.
    7 slow: Estimate<TimeConstant> = "slow_time_s",
    /// Refractive factor of the coffee.
    8 refractive_factor: Estimate<RefractiveFactor> = "refractive_factor_pct_per_brix",
    /// Heat capacity of the cup.
    9 cup: Estimate<HeatCapacity> = "cup_j_per_k",
    /// Cooling rate of the full cup.
    10 cup_cooling: Estimate<CoolingRate> = "cup_cooling_per_min",
    /// Repeatability of one's own readings on the instrument.
    11 repeatability: Estimate<Repeatability> = "repeatability_pct",
    /// Correlation of retention and hold-up, without which a beverage expected of both seems far
    /// less certain than it is.
    12 retention_correlation: Correlation = "retention_correlation",
}

impl Profile {
    /// Keeps what brews told of a brewer's retention.
    pub fn keep_retention(&mut self, line: &RetentionLine) {
        (self.retention, self.hold_up) = (Some(line.retention), Some(line.hold_up));
        // Brews without any scatter have none; rounding may lead a hair past one.
        let both = line.retention.u.grams_per_gram() * line.hold_up.u.grams();
        self.retention_correlation = Correlation::accept(max(line.covariance / both, -1.0));
    }

    /// Keeps what yields told of a coffee by one rate. All of it is then fast: a fast share and a
    /// slow time kept before are dropped.
    pub fn keep_one_rate(&mut self, coffee: &OneRate) {
        (self.equilibrium, self.fast) = (Some(coffee.equilibrium), Some(coffee.time));
        (self.fast_share, self.slow) = (None, None);
    }

    /// Keeps what yields told of a coffee by two rates.
    pub fn keep_two_rates(&mut self, coffee: &TwoRates) {
        (self.equilibrium, self.fast_share) = (Some(coffee.equilibrium), Some(coffee.fast_share));
        (self.fast, self.slow) = (Some(coffee.fast), Some(coffee.slow));
    }
}

/// What a field of a profile is made of.
trait Kept: Sized {
    /// How many numbers it is.
    const NUMBERS: usize;
    /// The numbers, in their order.
    fn numbers(self) -> impl Iterator<Item = f64>;
    /// What they were.
    fn of(numbers: &mut impl Iterator<Item = f64>) -> Result<Self, Unreadable>;
}

impl<M: Uncertain> Kept for Estimate<M> {
    const NUMBERS: usize = 3;

    fn numbers(self) -> impl Iterator<Item = f64> {
        [self.value.value(), self.u.value(), self.freedom.count()].into_iter()
    }

    fn of(numbers: &mut impl Iterator<Item = f64>) -> Result<Self, Unreadable> {
        Ok(Self { value: one(numbers)?, u: one(numbers)?, freedom: one(numbers)? })
    }
}

impl Kept for Correlation {
    const NUMBERS: usize = 1;

    fn numbers(self) -> impl Iterator<Item = f64> {
        core::iter::once(self.ratio())
    }

    fn of(numbers: &mut impl Iterator<Item = f64>) -> Result<Self, Unreadable> {
        one(numbers)
    }
}

/// The next number as a quantity. A zero has one sign: no profile has two forms in bytes.
fn one<M: Measure>(numbers: &mut impl Iterator<Item = f64>) -> Result<M, Unreadable> {
    let number = numbers.next().unwrap_or(f64::NAN);
    let quantity = M::new(number)?;
    let is_same = quantity.value().to_bits() == number.to_bits();
    if is_same { Ok(quantity) } else { Err(Unreadable::Unsound) }
}

/// The next field, if it is there; if not, its place must be blank.
fn kept<K: Kept>(
    is_there: bool,
    numbers: &mut impl Iterator<Item = f64>,
) -> Result<Option<K>, Unreadable> {
    if is_there {
        return K::of(numbers).map(Some);
    }
    let is_blank = numbers.by_ref().take(K::NUMBERS).all(|x| x.to_bits() == 0);
    if is_blank { Ok(None) } else { Err(Unreadable::NotBlank) }
}

#[cfg(test)]
#[allow(clippy::indexing_slicing)]
mod tests {
    extern crate std;
    use super::*;
    use crate::error::Error;
    use std::vec::Vec;

    fn learned<M: Uncertain>(value: f64, u: f64, freedom: f64) -> Option<Estimate<M>> {
        let (u, freedom) = (Measure::new(u).unwrap(), Measure::new(freedom).unwrap());
        Some(Estimate { value: Measure::new(value).unwrap(), u, freedom })
    }

    fn profile() -> Profile {
        Profile {
            retention: learned(2.03, 0.067, 6.0),
            hold_up: learned(-0.4, 1.35, 6.0),
            equilibrium: learned(20.8, 0.12, 2.0),
            fast: learned(53.2, 0.02, 2.0),
            repeatability: learned(0.012, 0.003, 10.0),
            retention_correlation: Some(Correlation::from_ratio(-0.96).unwrap()),
            ..Profile::default()
        }
    }

    /// Bytes with a check value that is theirs.
    fn resealed(mut bytes: [u8; PROFILE_BYTES]) -> [u8; PROFILE_BYTES] {
        let check = crate::sealed::check_value(&bytes).to_le_bytes();
        bytes.iter_mut().skip(12).zip(check).for_each(|(byte, of)| *byte = of);
        bytes
    }

    #[test]
    fn the_layout_is_as_documented() {
        assert_eq!(PROFILE_BYTES, 16 + 8 * NUMBERS);
        let bytes = profile().to_bytes();
        assert_eq!(bytes[..12], *b"CUPW\x01\0\0\0\x53\x18\0\0");
        assert_eq!(bytes[16..24], 2.03_f64.to_le_bytes());
        assert_eq!(bytes[24..32], 0.067_f64.to_le_bytes());
        assert_eq!(bytes[32..40], 6.0_f64.to_le_bytes());
        // Field 2 is not there, field 4 is.
        assert_eq!(bytes[64..88], [0; 24]);
        assert_eq!(bytes[112..120], 20.8_f64.to_le_bytes());
        assert_eq!(bytes[304..], (-0.96_f64).to_le_bytes());
    }

    #[test]
    fn every_wrong_bit_and_byte_is_refused() {
        let bytes = profile().to_bytes();
        assert_eq!(Profile::from_bytes(&bytes), Ok(profile()));
        for at in 0..PROFILE_BYTES {
            for wrong in 1..=255 {
                let mut damaged = bytes;
                damaged[at] ^= wrong;
                assert!(Profile::from_bytes(&damaged).is_err(), "byte {at} by {wrong:02x}");
            }
        }
    }

    #[test]
    fn every_wrong_length_is_refused() {
        let bytes: Vec<u8> = profile().to_bytes().into_iter().chain([0]).collect();
        for length in (0..PROFILE_BYTES).chain([PROFILE_BYTES + 1]) {
            let error = Profile::from_bytes(&bytes[..length]);
            assert_eq!(error, Err(Unreadable::Length { found: length, expected: PROFILE_BYTES }));
        }
    }

    #[test]
    fn what_a_right_check_value_cannot_hide() {
        let bytes = profile().to_bytes();
        let with = |at: usize, new: u8| {
            let mut bytes = bytes;
            bytes[at] = new;
            Profile::from_bytes(&resealed(bytes))
        };
        assert_eq!(with(0, b'c'), Err(Unreadable::Foreign));
        assert_eq!(with(4, 2), Err(Unreadable::Version { found: 2, known: 1 }));
        assert_eq!(with(6, 1), Err(Unreadable::NotBlank));
        // A field that is not there has a number, and a field that is not known is there.
        assert_eq!(with(64, 1), Err(Unreadable::NotBlank));
        assert_eq!(with(9, 0x38), Err(Unreadable::NotBlank));
        // A zero with a sign in place of the correlation.
        let mut signed = profile().to_bytes();
        signed[304..].copy_from_slice(&(-0.0_f64).to_le_bytes());
        assert_eq!(Profile::from_bytes(&resealed(signed)), Err(Unreadable::Unsound));
        // The retention's sign.
        let error = with(23, 0xc0).unwrap_err();
        assert!(matches!(error, Unreadable::Value(Error::OutOfRange { .. })), "{error}");
    }

    #[test]
    fn an_empty_profile_is_one() {
        let empty = Profile::default();
        assert_eq!(Profile::from_bytes(&empty.to_bytes()), Ok(empty));
    }
}
