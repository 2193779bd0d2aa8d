//! What was learned of one brewer, coffee, cup and instrument, and how it is kept.
//!
//! A [`Profile`] holds what [`crate::calibrate`] told, each value with its standard uncertainty and
//! degrees of freedom, and nothing for what is not known yet. What goes together is kept with its
//! correlations, so that a profile read back answers as the fit did, to the last bit:
//! [`Profile::expected_beverage`], [`Profile::rates`], [`Profile::plateau`], [`Profile::means`].
//!
//! An uncertainty u is in the unit of its value, with three exceptions: of `fast_time_s` and
//! `slow_time_s` it is that of the logarithm, so that a time is τ e^(±k u); of
//! `refractive_factor_pct_per_brix` it is in % of the value.
//!
//! With the feature `serde` a profile is a plain record with a `version`, 1; without any library it is
//! 368 bytes, for a scale's memory:
//!
//! | bytes | what |
//! |---|---|
//! | 0 to 3 | `CUPW` |
//! | 4 to 5 | version of the layout, 1 |
//! | 6 to 7 | zero |
//! | 8 to 11 | which fields are there: bit 0 for the first field of [`Profile`], and so on |
//! | 12 to 15 | CRC-32 of all other bytes (IEEE 802.3; of `123456789` it is `cbf43926`) |
//! | 16 to 303 | for each of the twelve fields with an uncertainty: value, uncertainty, degrees of freedom |
//! | 304 to 367 | a number each: correlation and scatter of the retention line, correlations of the law of extraction |
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
//! mine.keep_refractive_factor(&factor);
//!
//! let kept = mine.to_bytes();
//! assert_eq!(Profile::from_bytes(&kept)?, mine);
//!
//! let mut damaged = kept;
//! damaged[100] ^= 1;
//! assert!(Profile::from_bytes(&damaged).is_err());
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

use crate::advise::{Kept, Means};
use crate::calibrate::{
    Cooling, Expected, Fitted, Keeping, OneRate, Quality, RetentionLine, TwoRates,
};
use crate::error::Error;
use crate::extraction::Kinetics;
use crate::quantity::{
    ApparentRetention, BrewWater, CoolingRate, Correlation, Dose, FittedHoldUp, HeatCapacity,
    HoldUp, MassUncertainty, Measure, RefractiveFactor, Repeatability, Share, Temperature,
    TimeConstant, Vapour, Yield, computed,
};
use crate::sealed::Seal;
use crate::uncertainty::{Estimate, Plateau, Rates, Uncertain};

pub use crate::sealed::Unreadable;

/// How every profile begins.
const SEAL: Seal = Seal { letters: *b"CUPW", version: PROFILE_VERSION };

/// Version of a profile's fields, in bytes and in JSON.
pub const PROFILE_VERSION: u16 = 1;

/// Numbers in a profile.
const NUMBERS: usize = 44;

/// Length of a profile in bytes.
pub const PROFILE_BYTES: usize = Seal::length(NUMBERS);

macro_rules! profile {
    ($($(#[$meaning:meta])* $bit:literal $field:ident: $kind:ty = $outside:literal,)+) => {
        /// What was learned of one brewer, coffee, cup and instrument.
        #[derive(Clone, Copy, Debug, Default, PartialEq)]
        #[cfg_attr(
            feature = "serde",
            derive(serde::Serialize, serde::Deserialize),
            serde(try_from = "Versioned", into = "Versioned")
        )]
        pub struct Profile {
            $(
                $(#[$meaning])*
                pub $field: Option<$kind>,
            )+
        }

        /// A profile as it is written down.
        #[cfg(feature = "serde")]
        #[derive(serde::Serialize, serde::Deserialize)]
        #[serde(deny_unknown_fields)]
        struct Versioned {
            version: u16,
            $(
                #[serde(rename = $outside, default, skip_serializing_if = "Option::is_none")]
                $field: Option<$kind>,
            )+
        }

        #[cfg(feature = "serde")]
        impl TryFrom<Versioned> for Profile {
            type Error = Unreadable;

            fn try_from(written: Versioned) -> Result<Self, Unreadable> {
                let (found, known) = (written.version, PROFILE_VERSION);
                if found == known {
                    Ok(Self { $($field: written.$field,)+ })
                } else {
                    Err(Unreadable::Version { found, known })
                }
            }
        }

        #[cfg(feature = "serde")]
        impl From<Profile> for Versioned {
            fn from(profile: Profile) -> Self {
                Self { version: PROFILE_VERSION, $($field: profile.$field,)+ }
            }
        }

        /// Names of the fields outside Rust, for a part that is not there.
        mod names {
            #![allow(non_upper_case_globals, reason = "as the fields")]
            $(#[allow(dead_code, reason = "not every part is asked for")]
            pub(super) const $field: &str = $outside;)+
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
                        places.by_ref().take(<$kind as Field>::NUMBERS).for_each(drop);
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
    /// Scatter s of a brew about the line of retention and hold-up, or about the retention alone.
    13 retention_scatter: MassUncertainty = "retention_scatter_g",
    /// Correlation of the plateau and the fast share.
    14 equilibrium_and_share: Correlation = "correlation_equilibrium_share",
    /// Correlation of the plateau and the logarithm of the fast time.
    15 equilibrium_and_fast: Correlation = "correlation_equilibrium_fast",
    /// Correlation of the plateau and the logarithm of the slow time.
    16 equilibrium_and_slow: Correlation = "correlation_equilibrium_slow",
    /// Correlation of the fast share and the logarithm of the fast time.
    17 share_and_fast: Correlation = "correlation_share_fast",
    /// Correlation of the fast share and the logarithm of the slow time.
    18 share_and_slow: Correlation = "correlation_share_slow",
    /// Correlation of the two logarithms.
    19 fast_and_slow: Correlation = "correlation_fast_slow",
}

/// A part that an answer needs, or a refusal that names it.
fn needed<T>(part: Option<T>, field: &'static str) -> Result<T, Error> {
    part.ok_or(Error::NotKept { field })
}

/// Keeping what a fit told.
impl Profile {
    /// Keeps what brews of several doses told of a brewer: retention, hold-up and how far they go together.
    pub fn keep_retention_line(&mut self, line: &RetentionLine) {
        (self.retention, self.hold_up) = (Some(line.retention), Some(line.hold_up));
        self.retention_correlation = Some(line.correlation());
        self.retention_scatter = scatter(&line.quality);
    }

    /// Keeps a retention that has the hold-up in it: one kept apart before is dropped.
    pub fn keep_retention(&mut self, fit: &Fitted<ApparentRetention>) {
        (self.retention, self.hold_up) = (Some(fit.estimate), None);
        self.retention_correlation = None;
        self.retention_scatter = scatter(&fit.quality);
    }

    /// Keeps what yields told of a coffee by one rate. All of it is then fast: a fast share and a
    /// slow time kept before are dropped.
    pub fn keep_one_rate(&mut self, coffee: &OneRate) {
        (self.equilibrium, self.fast) = (Some(coffee.equilibrium), Some(coffee.time));
        (self.fast_share, self.slow) = (None, None);
        self.equilibrium_and_fast = Some(coffee.plateau().equilibrium_and_fast);
        (self.equilibrium_and_share, self.equilibrium_and_slow) = (None, None);
        (self.share_and_fast, self.share_and_slow, self.fast_and_slow) = (None, None, None);
    }

    /// Keeps what yields told of a coffee by two rates.
    pub fn keep_two_rates(&mut self, coffee: &TwoRates) {
        (self.equilibrium, self.fast_share) = (Some(coffee.equilibrium), Some(coffee.fast_share));
        (self.fast, self.slow) = (Some(coffee.fast), Some(coffee.slow));
        let (rates, plateau) = (coffee.rates(), coffee.plateau());
        self.equilibrium_and_share = Some(plateau.equilibrium_and_share);
        self.equilibrium_and_fast = Some(plateau.equilibrium_and_fast);
        self.equilibrium_and_slow = Some(plateau.equilibrium_and_slow);
        self.share_and_fast = Some(rates.share_and_fast);
        self.share_and_slow = Some(rates.share_and_slow);
        self.fast_and_slow = Some(rates.fast_and_slow);
    }

    /// Keeps the heat capacity of a brewer.
    pub fn keep_heat_capacity(&mut self, fit: &Fitted<HeatCapacity>) {
        self.heat_capacity = Some(fit.estimate);
    }

    /// Keeps how fast a full cup cools.
    pub fn keep_cup_cooling(&mut self, cup: &Cooling) {
        self.cup_cooling = Some(cup.rate);
    }

    /// Keeps the refractive factor of a coffee.
    pub fn keep_refractive_factor(&mut self, fit: &Fitted<RefractiveFactor>) {
        self.refractive_factor = Some(fit.estimate);
    }

    /// Keeps the repeatability of one's own readings.
    pub fn keep_repeatability(&mut self, fit: &Fitted<Repeatability>) {
        self.repeatability = Some(fit.estimate);
    }
}

/// The scatter of brews, where it is one that a beverage could have.
fn scatter(quality: &Quality) -> Option<MassUncertainty> {
    MassUncertainty::accept(quality.s)
}

/// Answers from what was kept.
impl Profile {
    /// Beverage that the next brew gives, as [`RetentionLine::expected`] tells it of the line that was
    /// kept. Without a hold-up the retention has it in it: then B = W − V − r D, right for doses like
    /// those of the brews.
    ///
    /// # Errors
    /// [`Error::NotKept`] where a part is missing; [`Error::ResultOutOfRange`] where nothing is left for the
    /// cup.
    ///
    /// ```
    /// # use cupwright::{calibrate::{self, Drained}, profile::Profile, quantity::*};
    /// let brew = |dose, water, beverage| {
    ///     Ok::<_, cupwright::Error>(Drained {
    ///         dose: Dose::from_grams(dose)?,
    ///         water: BrewWater::from_grams(water)?,
    ///         beverage: Beverage::from_grams(beverage)?,
    ///         vapour: Vapour::NONE,
    ///     })
    /// };
    /// // Invented brews.
    /// let brews = [brew(12.0, 192.0, 164.1)?, brew(20.0, 320.0, 276.6)?, brew(30.0, 480.0, 414.4)?];
    /// let line = calibrate::retention_line(&brews)?;
    /// let mut mine = Profile::default();
    /// mine.keep_retention_line(&line);
    /// let read = Profile::from_bytes(&mine.to_bytes())?;
    ///
    /// let (dose, water) = (Dose::from_grams(18.0)?, BrewWater::from_grams(290.0)?);
    /// let next = read.expected_beverage(dose, water, Vapour::NONE)?;
    /// assert_eq!(next, line.expected(dose, water, Vapour::NONE)?);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn expected_beverage(
        &self,
        dose: Dose,
        water: BrewWater,
        vapour: Vapour,
    ) -> Result<Expected, Error> {
        let retention = needed(self.retention, names::retention)?;
        let scatter = needed(self.retention_scatter, names::retention_scatter)?.grams();
        let (hold_up, correlation) = match self.hold_up {
            None => (Estimate::exact(FittedHoldUp::known(0.0)), Correlation::known(0.0)),
            Some(hold_up) => {
                (hold_up, needed(self.retention_correlation, names::retention_correlation)?)
            }
        };
        Keeping { retention, hold_up, correlation, scatter }.expected(dose, water, vapour)
    }

    /// How fast the coffee extracts, and how well that is known, as [`OneRate::rates`] or
    /// [`TwoRates::rates`] tells it.
    ///
    /// # Errors
    /// [`Error::NotKept`] where a part is missing.
    pub fn rates(&self) -> Result<Rates, Error> {
        let equilibrium = needed(self.equilibrium, names::equilibrium)?.value;
        let fast = needed(self.fast, names::fast)?;
        if self.is_of_one_rate() {
            return Ok(Rates::one(equilibrium, &fast));
        }
        let share = needed(self.fast_share, names::fast_share)?;
        let slow = needed(self.slow, names::slow)?;
        let (fast_share, freedom) = (share.value, fast.freedom);
        Ok(Rates {
            kinetics: Kinetics { equilibrium, fast_share, fast: fast.value, slow: slow.value },
            u_fast_share: share.u,
            u_fast: fast.u,
            u_slow: slow.u,
            share_and_fast: needed(self.share_and_fast, names::share_and_fast)?,
            share_and_slow: needed(self.share_and_slow, names::share_and_slow)?,
            fast_and_slow: needed(self.fast_and_slow, names::fast_and_slow)?,
            freedom,
        })
    }

    /// How well the plateau of those rates is known.
    ///
    /// # Errors
    /// [`Error::NotKept`] where a part is missing.
    pub fn plateau(&self) -> Result<Plateau, Error> {
        let none = self.is_of_one_rate().then_some(Correlation::known(0.0));
        let (share, slow) =
            (self.equilibrium_and_share.or(none), self.equilibrium_and_slow.or(none));
        Ok(Plateau {
            u_equilibrium: needed(self.equilibrium, names::equilibrium)?.u,
            equilibrium_and_share: needed(share, names::equilibrium_and_share)?,
            equilibrium_and_fast: needed(self.equilibrium_and_fast, names::equilibrium_and_fast)?,
            equilibrium_and_slow: needed(slow, names::equilibrium_and_slow)?,
        })
    }

    /// Whether there is no sign of a second rate.
    const fn is_of_one_rate(&self) -> bool {
        self.fast_share.is_none() && self.slow.is_none()
    }

    /// What the brewer keeps, as advice takes it. Without a hold-up the retention has it in it.
    ///
    /// # Errors
    /// [`Error::NotKept`] without a retention; [`Error::ResultOutOfRange`] for a hold-up below zero, as
    /// [`RetentionLine::chamber`].
    pub fn kept(&self) -> Result<Kept, Error> {
        let retention = needed(self.retention, names::retention)?.value;
        let hold_up = self.hold_up.map(|line| computed(line.value.grams())).transpose()?;
        Ok(Kept { retention, hold_up: hold_up.unwrap_or(HoldUp::NONE) })
    }

    /// What advice takes, with all that is known of coffee and brewer: rates where a plateau, a time or a share
    /// was kept, and what is kept of a brew where a retention was. No chamber and no milk.
    ///
    /// # Errors
    /// As [`Self::rates`] and [`Self::kept`] for what was kept in part.
    ///
    /// ```
    /// # use cupwright::{calibrate::{self, Timed}, profile::Profile, quantity::*};
    /// let timed = |contact, extracted| {
    ///     Ok::<_, cupwright::Error>(Timed {
    ///         contact: Time::from_seconds(contact)?,
    ///         extracted: Yield::from_percent(extracted)?,
    ///     })
    /// };
    /// // Invented steeps.
    /// let steeps = [timed(30.0, 9.1)?, timed(60.0, 13.9)?, timed(120.0, 18.6)?, timed(300.0, 20.7)?];
    /// let coffee = calibrate::one_rate(&steeps)?;
    /// let mut mine = Profile::default();
    /// mine.keep_one_rate(&coffee);
    /// let means = mine.means(Temperature::from_celsius(92.0)?)?;
    /// assert_eq!((means.rates, means.kept), (Some(coffee.rates()), None));
    /// # Ok::<(), cupwright::Error>(())
    /// ```
    pub fn means(&self, water: Temperature) -> Result<Means, Error> {
        let is_coffee_known = self.equilibrium.is_some()
            || self.fast.is_some()
            || self.slow.is_some()
            || self.fast_share.is_some();
        Ok(Means {
            rates: is_coffee_known.then(|| self.rates()).transpose()?,
            kept: self.retention.map(|_| self.kept()).transpose()?,
            chamber: None,
            water,
            milk: false,
        })
    }
}

/// What a field of a profile is made of.
trait Field: Sized {
    /// How many numbers it is.
    const NUMBERS: usize;
    /// The numbers, in their order.
    fn numbers(self) -> impl Iterator<Item = f64>;
    /// What they were.
    fn of(numbers: &mut impl Iterator<Item = f64>) -> Result<Self, Unreadable>;
}

impl<M: Uncertain> Field for Estimate<M> {
    const NUMBERS: usize = 3;

    fn numbers(self) -> impl Iterator<Item = f64> {
        [self.value.value(), self.u.value(), self.freedom.count()].into_iter()
    }

    fn of(numbers: &mut impl Iterator<Item = f64>) -> Result<Self, Unreadable> {
        Ok(Self { value: one(numbers)?, u: one(numbers)?, freedom: one(numbers)? })
    }
}

impl<M: Measure> Field for M {
    const NUMBERS: usize = 1;

    fn numbers(self) -> impl Iterator<Item = f64> {
        core::iter::once(self.value())
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
fn kept<F: Field>(
    is_there: bool,
    numbers: &mut impl Iterator<Item = f64>,
) -> Result<Option<F>, Unreadable> {
    if is_there {
        return F::of(numbers).map(Some);
    }
    let is_blank = numbers.by_ref().take(F::NUMBERS).all(|x| x.to_bits() == 0);
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
            retention_scatter: Some(MassUncertainty::from_grams(0.9).unwrap()),
            fast_and_slow: Some(Correlation::from_ratio(0.25).unwrap()),
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
        assert_eq!(bytes[..12], *b"CUPW\x01\0\0\0\x53\x38\x08\0");
        assert_eq!(bytes[16..24], 2.03_f64.to_le_bytes());
        assert_eq!(bytes[24..32], 0.067_f64.to_le_bytes());
        assert_eq!(bytes[32..40], 6.0_f64.to_le_bytes());
        // Field 2 is not there, field 4 is.
        assert_eq!(bytes[64..88], [0; 24]);
        assert_eq!(bytes[112..120], 20.8_f64.to_le_bytes());
        assert_eq!(bytes[304..312], (-0.96_f64).to_le_bytes());
        assert_eq!(bytes[312..320], 0.9_f64.to_le_bytes());
        assert_eq!(bytes[320..360], [0; 40]);
        assert_eq!(bytes[360..], 0.25_f64.to_le_bytes());
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
        assert_eq!(with(10, 0x18), Err(Unreadable::NotBlank));
        // A zero with a sign in the place of the retention's uncertainty.
        let mut signed = bytes;
        signed[24..32].copy_from_slice(&(-0.0_f64).to_le_bytes());
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
