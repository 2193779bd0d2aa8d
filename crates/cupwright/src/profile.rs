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
use crate::error::Error;
use crate::math::max;
use crate::quantity::{
    ApparentRetention, CoolingRate, Correlation, FittedHoldUp, HeatCapacity, Measure,
    RefractiveFactor, Repeatability, Share, TimeConstant, Yield,
};
use crate::uncertainty::{Estimate, Uncertain};

/// First bytes of every profile.
const MAGIC: [u8; 4] = *b"CUPW";

/// Version of the layout.
const VERSION: u16 = 1;

/// Numbers in a profile.
const NUMBERS: usize = 37;

/// Length of a profile in bytes.
pub const PROFILE_BYTES: usize = 312;

/// Why bytes are no profile.
#[derive(Clone, Copy, Debug, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum Unreadable {
    /// Not as many bytes as a profile has.
    #[error("{found} bytes are no profile, which has {PROFILE_BYTES}")]
    Length {
        /// How many there are.
        found: usize,
    },
    /// They do not begin as a profile does.
    #[error("these bytes do not begin as a profile does")]
    NoProfile,
    /// A version of the layout that is not known here.
    #[error("a profile of version {found}, and only {VERSION} is known")]
    Version {
        /// Which one.
        found: u16,
    },
    /// Some of them have changed since they were written.
    #[error(
        "the profile is damaged: its check value is {found:08x}, its bytes make {computed:08x}"
    )]
    Damaged {
        /// The check value that is there.
        found: u32,
        /// The one that the bytes make.
        computed: u32,
    },
    /// Its check value is right, but something lies where this version has nothing.
    #[error("the profile has something where version {VERSION} has nothing")]
    NotBlank,
    /// A number that its field does not accept.
    #[error("{0}")]
    Value(#[from] Error),
}

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
                written(there, numbers)
            }

            /// A profile from its bytes.
            ///
            /// # Errors
            /// [`Unreadable`], with what is wrong: no damaged profile is ever read.
            pub fn from_bytes(bytes: &[u8]) -> Result<Self, Unreadable> {
                let (there, numbers) = read(bytes)?;
                const KNOWN: u32 = 0 $(| 1 << $bit)+;
                if there & !KNOWN != 0 {
                    return Err(Unreadable::NotBlank);
                }
                let mut numbers = numbers.into_iter();
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
    fn of(numbers: &mut impl Iterator<Item = f64>) -> Result<Self, Error>;
}

impl<M: Uncertain> Kept for Estimate<M> {
    const NUMBERS: usize = 3;

    fn numbers(self) -> impl Iterator<Item = f64> {
        [self.value.value(), self.u.value(), self.freedom.count()].into_iter()
    }

    fn of(numbers: &mut impl Iterator<Item = f64>) -> Result<Self, Error> {
        Ok(Self { value: one(numbers)?, u: one(numbers)?, freedom: one(numbers)? })
    }
}

impl Kept for Correlation {
    const NUMBERS: usize = 1;

    fn numbers(self) -> impl Iterator<Item = f64> {
        core::iter::once(self.ratio())
    }

    fn of(numbers: &mut impl Iterator<Item = f64>) -> Result<Self, Error> {
        one(numbers)
    }
}

/// The next number as a quantity.
fn one<M: Measure>(numbers: &mut impl Iterator<Item = f64>) -> Result<M, Error> {
    M::new(numbers.next().unwrap_or(f64::NAN))
}

/// The next field, if it is there; if not, its place must be blank.
fn kept<K: Kept>(
    is_there: bool,
    numbers: &mut impl Iterator<Item = f64>,
) -> Result<Option<K>, Unreadable> {
    if is_there {
        return Ok(Some(K::of(numbers)?));
    }
    let is_blank = numbers.by_ref().take(K::NUMBERS).all(|x| x.to_bits() == 0);
    if is_blank { Ok(None) } else { Err(Unreadable::NotBlank) }
}

/// Which fields there are, and all numbers, as bytes.
fn written(there: u32, numbers: [f64; NUMBERS]) -> [u8; PROFILE_BYTES] {
    let bytes_with = |check: u32| {
        let head =
            [MAGIC, u32::from(VERSION).to_le_bytes(), there.to_le_bytes(), check.to_le_bytes()];
        let rest = numbers.into_iter().flat_map(f64::to_le_bytes);
        let mut bytes = [0; PROFILE_BYTES];
        bytes.iter_mut().zip(head.into_iter().flatten().chain(rest)).for_each(|(b, of)| *b = of);
        bytes
    };
    bytes_with(check_value(&bytes_with(0)))
}

/// Which fields there are, and all numbers, if the bytes are a profile's and undamaged.
fn read(bytes: &[u8]) -> Result<(u32, [f64; NUMBERS]), Unreadable> {
    let length = Unreadable::Length { found: bytes.len() };
    let (head, rest) = bytes.split_first_chunk::<16>().ok_or(length)?;
    let (words, _) = head.as_chunks::<4>();
    let [magic, version, there, check] = *<&[[u8; 4]; 4]>::try_from(words).map_err(|_| length)?;
    if magic != MAGIC {
        return Err(Unreadable::NoProfile);
    }
    let [low, high, blank @ ..] = version;
    let found = u16::from_le_bytes([low, high]);
    if found != VERSION {
        return Err(Unreadable::Version { found });
    }
    if bytes.len() != PROFILE_BYTES {
        return Err(length);
    }
    let (found, computed) = (u32::from_le_bytes(check), check_value(bytes));
    if found != computed {
        return Err(Unreadable::Damaged { found, computed });
    }
    if blank != [0, 0] {
        return Err(Unreadable::NotBlank);
    }
    let (places, _) = rest.as_chunks::<8>();
    let mut numbers = [0.0; NUMBERS];
    numbers.iter_mut().zip(places).for_each(|(x, bytes)| *x = f64::from_le_bytes(*bytes));
    Ok((u32::from_le_bytes(there), numbers))
}

/// CRC-32 of all bytes but its own.
fn check_value(bytes: &[u8]) -> u32 {
    crc_32(bytes.iter().take(12).chain(bytes.iter().skip(16)).copied())
}

/// CRC-32 of IEEE 802.3: polynomial 04c11db7 from the lowest bit up, begun and ended inverted (from
/// memory; its usual check value stands in a test).
fn crc_32(bytes: impl Iterator<Item = u8>) -> u32 {
    const REVERSED: u32 = 0xedb8_8320;
    let shifted = |crc: u32| (crc >> 1) ^ if crc & 1 == 1 { REVERSED } else { 0 };
    !bytes.fold(u32::MAX, |crc, byte| (0..8).fold(crc ^ u32::from(byte), |crc, _| shifted(crc)))
}

#[cfg(test)]
#[allow(clippy::indexing_slicing)]
mod tests {
    extern crate std;
    use super::*;
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
        let check = check_value(&bytes).to_le_bytes();
        bytes.iter_mut().skip(12).zip(check).for_each(|(byte, of)| *byte = of);
        bytes
    }

    #[test]
    fn usual_check_value() {
        assert_eq!(crc_32(b"123456789".iter().copied()), 0xcbf4_3926);
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
            assert_eq!(error, Err(Unreadable::Length { found: length }));
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
        assert_eq!(with(0, b'c'), Err(Unreadable::NoProfile));
        assert_eq!(with(4, 2), Err(Unreadable::Version { found: 2 }));
        assert_eq!(with(6, 1), Err(Unreadable::NotBlank));
        // A field that is not there has a number, and a field that is not known is there.
        assert_eq!(with(64, 1), Err(Unreadable::NotBlank));
        assert_eq!(with(9, 0x38), Err(Unreadable::NotBlank));
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
