//! Numbers sealed in bytes: letters, a version, a check value.
//!
//! | bytes | what |
//! |---|---|
//! | 0 to 3 | four letters |
//! | 4 to 5 | version of the layout |
//! | 6 to 7 | zero |
//! | 8 to 11 | flags |
//! | 12 to 15 | CRC-32 of all other bytes (IEEE 802.3; of `123456789` it is `cbf43926`) |
//! | from 16 | the numbers |
//!
//! Whole numbers are little endian, the others IEEE 754 binary64, little endian. A single wrong
//! byte is always found, other damage but once in four thousand million times.

use crate::error::Error;

/// Bytes before the numbers.
const HEAD: usize = 16;

/// Why bytes cannot be read.
#[derive(Clone, Copy, Debug, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum Unreadable {
    /// Not as many bytes as there should be.
    #[error("{found} bytes, where {expected} are needed")]
    Length {
        /// How many there are.
        found: usize,
        /// How many there should be.
        expected: usize,
    },
    /// They do not begin as they should: they are something else.
    #[error("these bytes are something else: they do not begin as they should")]
    Foreign,
    /// A version of the layout that is not known here.
    #[error("version {found} of the layout, and only {known} is known")]
    Version {
        /// Which one.
        found: u16,
        /// The one that is known.
        known: u16,
    },
    /// Some of them have changed since they were written.
    #[error("damaged: the check value is {found:08x}, the bytes make {computed:08x}")]
    Damaged {
        /// The check value that is there.
        found: u32,
        /// The one that the bytes make.
        computed: u32,
    },
    /// The check value is right, but something lies where this version has nothing.
    #[error("there is something where this version has nothing")]
    NotBlank,
    /// The check value is right, but no such state can be.
    #[error("the numbers are of no state that can be")]
    Unsound,
    /// A number that its field does not accept.
    #[error("{0}")]
    Value(#[from] Error),
}

/// What bytes of one kind begin with.
pub(crate) struct Seal {
    pub(crate) letters: [u8; 4],
    pub(crate) version: u16,
}

impl Seal {
    /// How many bytes so many numbers take.
    pub(crate) const fn length(numbers: usize) -> usize {
        numbers.saturating_mul(8).saturating_add(HEAD)
    }

    /// Seals flags and numbers.
    pub(crate) fn close<const BYTES: usize>(
        &self,
        flags: u32,
        numbers: impl Iterator<Item = f64> + Clone,
    ) -> [u8; BYTES] {
        let bytes_with = |check: u32| {
            let version = u32::from(self.version).to_le_bytes();
            let head = [self.letters, version, flags.to_le_bytes(), check.to_le_bytes()];
            let rest = numbers.clone().flat_map(f64::to_le_bytes);
            let mut bytes = [0; BYTES];
            let places = bytes.iter_mut();
            places.zip(head.into_iter().flatten().chain(rest)).for_each(|(b, of)| *b = of);
            bytes
        };
        bytes_with(check_value(&bytes_with(0)))
    }

    /// Flags and numbers, if the bytes are of this kind, as many as `numbers` take, and undamaged.
    pub(crate) fn open<'a>(
        &self,
        bytes: &'a [u8],
        numbers: usize,
    ) -> Result<(u32, impl Iterator<Item = f64> + 'a), Unreadable> {
        let length = Unreadable::Length { found: bytes.len(), expected: Self::length(numbers) };
        let (head, rest) = bytes.split_first_chunk::<HEAD>().ok_or(length)?;
        let (words, _) = head.as_chunks::<4>();
        let [letters, version, flags, check] =
            *<&[[u8; 4]; 4]>::try_from(words).map_err(|_| length)?;
        if letters != self.letters {
            return Err(Unreadable::Foreign);
        }
        let [low, high, blank @ ..] = version;
        let found = u16::from_le_bytes([low, high]);
        if found != self.version {
            return Err(Unreadable::Version { found, known: self.version });
        }
        if bytes.len() != Self::length(numbers) {
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
        Ok((u32::from_le_bytes(flags), places.iter().map(|bytes| f64::from_le_bytes(*bytes))))
    }
}

/// CRC-32 of all bytes but its own.
pub(crate) fn check_value(bytes: &[u8]) -> u32 {
    crc_32(bytes.iter().take(12).chain(bytes.iter().skip(HEAD)).copied())
}

/// CRC-32 of IEEE 802.3: polynomial 04c11db7 from the lowest bit up, begun and ended inverted (from
/// memory; its usual check value stands in a test).
fn crc_32(bytes: impl Iterator<Item = u8>) -> u32 {
    const REVERSED: u32 = 0xedb8_8320;
    let shifted = |crc: u32| (crc >> 1) ^ if crc & 1 == 1 { REVERSED } else { 0 };
    !bytes.fold(u32::MAX, |crc, byte| (0..8).fold(crc ^ u32::from(byte), |crc, _| shifted(crc)))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn usual_check_value() {
        assert_eq!(crc_32(b"123456789".iter().copied()), 0xcbf4_3926);
    }
}
