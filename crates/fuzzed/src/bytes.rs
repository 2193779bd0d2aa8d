//! A profile, a scale and a brew from any bytes: refused, or what makes the same bytes again.

use std::fmt::Debug;

use cupwright::live::{Follower, Scale, Unreadable};
use cupwright::profile::Profile;
use cupwright::quantity::{Clock, ScaleReading};
use cupwright::uncertainty::{Estimate, Uncertain};

use crate::live::kept_live;
use crate::source::Source;

/// CRC-32 of IEEE 802.3 over all bytes but its own four, bit by bit as the core documents it.
fn check_value(bytes: &[u8]) -> u32 {
    let others = bytes.iter().take(12).chain(bytes.iter().skip(16));
    !others.fold(u32::MAX, |crc, byte| {
        (0..8).fold(crc ^ u32::from(*byte), |crc, _| {
            (crc >> 1) ^ if crc & 1 == 1 { 0xedb8_8320 } else { 0 }
        })
    })
}

/// What is read makes the bytes that it was read from.
fn read<T: Debug, const N: usize>(
    bytes: &[u8],
    of: impl Fn(&[u8]) -> Result<T, Unreadable>,
    to: impl Fn(&T) -> [u8; N],
) -> Option<T> {
    match of(bytes) {
        Ok(state) => {
            assert!(to(&state) == bytes, "other bytes come out: {state:?}");
            Some(state)
        }
        Err(error) => {
            assert!(!error.to_string().is_empty());
            None
        }
    }
}

/// A profile of something.
fn learned(source: &mut Source) -> Profile {
    let there = source.byte();
    Profile {
        retention: (there & 1 != 0).then(|| estimate(source)),
        equilibrium: (there & 2 != 0).then(|| estimate(source)),
        repeatability: (there & 4 != 0).then(|| estimate(source)),
        retention_correlation: (there & 8 != 0).then(|| source.quantity()),
        ..Profile::default()
    }
}

fn estimate<M: Uncertain>(source: &mut Source) -> Estimate<M> {
    Estimate { value: source.quantity(), u: source.quantity(), freedom: source.quantity() }
}

/// Whatever a state is, readings do it no harm.
fn go_on(bytes: &[u8], source: &mut Source) {
    let mut scale = read(bytes, Scale::from_bytes, Scale::to_bytes);
    let mut follower = read(bytes, Follower::from_bytes, Follower::to_bytes);
    let latest = |scale: &Scale| scale.latest().map_or(0.0, Clock::seconds);
    for _ in 0..24 {
        let (step, mass) = (source.between(0.001, 2.0), source.between(-900.0, 2500.0));
        let reading = ScaleReading::from_grams(mass).expect("in range");
        if let Some(scale) = &mut scale
            && let Ok(clock) = Clock::from_seconds(latest(scale) + step)
        {
            let _ = scale.take(clock, reading);
            let _ = scale.account();
        }
        if let Some(follower) = &mut follower
            && let Ok(clock) = Clock::from_seconds(latest(follower.scale()) + step)
        {
            let _ = follower.take(&[], clock, reading);
            let _ = follower.drips();
        }
    }
}

/// Bytes as they are; and as a state that was kept and changed in a few places, with a check value
/// that is right.
pub fn run(bytes: &[u8]) {
    let _ = read(bytes, Profile::from_bytes, Profile::to_bytes);
    let _ = read(bytes, Scale::from_bytes, Scale::to_bytes);
    let _ = read(bytes, Follower::from_bytes, Follower::to_bytes);

    let mut source = Source::new(bytes);
    let kind = source.byte();
    let [scale, brew] = kept_live(kind / 3);
    let mut kept: Vec<u8> = match kind % 3 {
        0 => scale,
        1 => brew,
        _ => learned(&mut source).to_bytes().into(),
    };
    for _ in 0..source.byte() % 8 {
        let at = usize::from(source.word()) % kept.len();
        if source.byte().is_multiple_of(2) {
            kept[at] = source.byte();
        } else if let (places, _) = kept[16..].as_chunks_mut::<8>()
            && let Some(place) = places.get_mut(at / 8)
        {
            *place = source.any().to_le_bytes();
        }
    }
    let check = check_value(&kept).to_le_bytes();
    kept[12..16].copy_from_slice(&check);
    let _ = read(&kept, Profile::from_bytes, Profile::to_bytes);
    go_on(&kept, &mut source);
}
