//! Walks over all numbers of a state: for a memory that outlives a restart.
//!
//! The same walk goes out and comes in, so what is written and what is read cannot differ.

use super::fixed::{self, Fixed, ZERO, fixed};
use super::{Happening, Heard, Pending, Waiting};
use crate::quantity::Measure;
use crate::sealed::{Seal, Unreadable};

/// What a state is made of.
pub(super) trait Kept {
    /// Walks over its numbers, in their order.
    fn walk(&mut self, walk: &mut impl Walk);
}

/// A walk.
pub(super) trait Walk {
    /// Comes to a number.
    fn number(&mut self, number: &mut f64);

    /// Comes to numbers.
    fn numbers<const N: usize>(&mut self, numbers: [&mut f64; N]) {
        numbers.into_iter().for_each(|number| self.number(number));
    }

    /// Comes to something that cannot be.
    fn refuse(&mut self);

    /// Comes to a whole number, made of one by a cast.
    fn whole<W: Copy + Into<f64>>(&mut self, whole: &mut W, cast: fn(f64) -> W) {
        let mut number = (*whole).into();
        self.number(&mut number);
        *whole = cast(number);
        if !is_same(Some((*whole).into()), Some(number)) {
            self.refuse();
        }
    }

    /// Comes to a mass, a time or a flow.
    fn fixed(&mut self, of: &mut Fixed) {
        let mut number = fixed::number(*of);
        self.number(&mut number);
        *of = fixed(number);
        if !is_same(Some(fixed::number(*of)), Some(number)) {
            self.refuse();
        }
    }

    /// Comes to a small whole number.
    fn count(&mut self, count: &mut u8) {
        self.whole(count, |number| number as u8);
    }

    /// Comes to one of several values, by its place among all.
    fn one_of<T: Copy + PartialEq>(&mut self, value: &mut T, all: &[T]) {
        let mut place =
            all.iter().position(|one| one == value).map_or(u8::MAX, |place| place as u8);
        self.count(&mut place);
        match all.get(usize::from(place)) {
            Some(one) => *value = *one,
            None => self.refuse(),
        }
    }

    /// Comes to a number that may not be there; it is zero then.
    fn perhaps(&mut self, number: &mut Option<f64>) {
        let mut is_there = number.is_some();
        let mut value = number.unwrap_or(0.0);
        self.one_of(&mut is_there, &[false, true]);
        self.number(&mut value);
        *number = is_there.then_some(value);
        if !is_same(Some(number.unwrap_or(0.0)), Some(value)) {
            self.refuse();
        }
    }

    /// Comes to a mass, a time or a flow that may not be there.
    fn perhaps_fixed(&mut self, of: &mut Option<Fixed>) {
        let mut number = of.map(fixed::number);
        self.perhaps(&mut number);
        *of = number.map(fixed);
        if !is_same(of.map(fixed::number), number) {
            self.refuse();
        }
    }
}

/// Whether a number goes out with the bits that it came in with: each state has one form in bytes.
fn is_same(out: Option<f64>, came: Option<f64>) -> bool {
    out.map(f64::to_bits) == came.map(f64::to_bits)
}

/// Comes to a quantity.
pub(super) fn quantity<M: Measure>(walk: &mut impl Walk, quantity: &mut M) {
    let mut number = quantity.value();
    walk.number(&mut number);
    match M::accept(number).filter(|one| is_same(Some(one.value()), Some(number))) {
        Some(one) => *quantity = one,
        None => walk.refuse(),
    }
}

/// Comes to a quantity that may not be there.
pub(super) fn perhaps<M: Measure>(walk: &mut impl Walk, quantity: &mut Option<M>) {
    let mut number = quantity.map(M::value);
    walk.perhaps(&mut number);
    *quantity = number.and_then(M::accept);
    if !is_same(quantity.map(M::value), number) {
        walk.refuse();
    }
}

impl Kept for Option<Heard> {
    fn walk(&mut self, walk: &mut impl Walk) {
        // Nought for none.
        let (mut code, mut time, mut change) =
            self.map_or((0, ZERO, 0.0), |heard| (heard.happening as u8, heard.time, heard.change));
        walk.count(&mut code);
        walk.fixed(&mut time);
        walk.number(&mut change);
        let place = usize::from(code).checked_sub(1);
        let happening = place.and_then(|place| Happening::ALL.get(place).copied());
        *self = happening.map(|happening| Heard { happening, time, change });
        let is_nought = code == 0 && time == ZERO && is_same(Some(change), Some(0.0));
        if self.is_none() && !is_nought {
            walk.refuse();
        }
    }
}

impl Kept for Pending {
    fn walk(&mut self, walk: &mut impl Walk) {
        for waiting in &mut self.0 {
            let mut heard = waiting.heard();
            heard.walk(walk);
            *waiting = heard.map_or(Waiting::NONE, Waiting::of);
            if waiting.heard() != heard {
                walk.refuse();
            }
        }
        if !self.0.is_sorted_by_key(|waiting| *waiting == Waiting::NONE) {
            walk.refuse();
        }
    }
}

/// A state sealed in bytes.
pub(super) fn closed<S: Kept, const NUMBERS: usize, const BYTES: usize>(
    seal: &Seal,
    mut state: S,
) -> [u8; BYTES] {
    let mut numbers = [0.0; NUMBERS];
    state.walk(&mut Out { places: numbers.iter_mut() });
    seal.close(0, numbers.into_iter())
}

/// A state from its bytes, in the place of another one.
pub(super) fn opened<S: Kept>(
    seal: &Seal,
    numbers: usize,
    bytes: &[u8],
    mut state: S,
) -> Result<S, Unreadable> {
    let (flags, numbers) = seal.open(bytes, numbers)?;
    let mut walk = In { numbers, is_sound: flags == 0 };
    state.walk(&mut walk);
    if walk.is_sound && walk.numbers.next().is_none() {
        Ok(state)
    } else {
        Err(Unreadable::Unsound)
    }
}

/// Numbers go out.
struct Out<I> {
    places: I,
}

impl<'a, I: Iterator<Item = &'a mut f64>> Walk for Out<I> {
    fn number(&mut self, number: &mut f64) {
        if let Some(place) = self.places.next() {
            *place = *number;
        }
    }

    fn refuse(&mut self) {}
}

/// Numbers come in.
struct In<I> {
    numbers: I,
    is_sound: bool,
}

impl<I: Iterator<Item = f64>> Walk for In<I> {
    fn number(&mut self, number: &mut f64) {
        *number = self.numbers.next().unwrap_or(f64::NAN);
        self.is_sound &= !number.is_nan();
    }

    fn refuse(&mut self) {
        self.is_sound = false;
    }
}

#[cfg(test)]
#[allow(clippy::indexing_slicing, clippy::arithmetic_side_effects)]
mod tests {
    use super::*;
    use crate::live::{Cue, Follower, Scale, Setup, Step, follow};
    use crate::math::max;
    use crate::quantity::{BrewWater, Clock, Dose, ScaleReading, Time};

    struct Count(usize);

    impl Walk for Count {
        fn number(&mut self, _: &mut f64) {
            self.0 = self.0.saturating_add(1);
        }

        fn refuse(&mut self) {
            panic!("a new state is sound");
        }
    }

    fn numbers(mut state: impl Kept) -> usize {
        let mut count = Count(0);
        state.walk(&mut count);
        count.0
    }

    #[test]
    fn every_number_has_its_place() {
        assert_eq!(numbers(Scale::new(Setup::COMMON)), crate::live::NUMBERS);
        assert_eq!(numbers(Follower::new(Setup::COMMON)), follow::NUMBERS);
    }

    /// What waits to be told waits in a row, from the first place on.
    #[test]
    fn what_waits_to_be_told_is_kept_in_order() {
        let heard = |happening| Waiting::of(Heard { happening, time: fixed(7.0), change: -2.5 });
        let (first, second) = (heard(Happening::PourStopped), heard(Happening::Restless));
        let kept = |waiting| {
            let scale = Scale { pending: Pending(waiting), ..Scale::new(Setup::COMMON) };
            let back = Scale::from_bytes(&scale.to_bytes());
            assert!(back.is_err() || back == Ok(scale));
            back.is_ok()
        };
        let none = Waiting::NONE;
        assert!(kept([none; 3]) && kept([first, none, none]) && kept([first, second, none]));
        assert!(kept([second, first, second]));
        assert!(!kept([none, first, none]) && !kept([first, none, second]));
    }

    /// A brew under way, with all that a new one lacks: coffee, a first water, a cue to stop.
    fn brewing() -> Follower {
        let recipe = [
            Step::Dose { dose: Dose::known(15.0) },
            Step::Pour { to: BrewWater::known(50.0), from: Time::known(0.0) },
        ];
        let mut follower = Follower::new(Setup::COMMON);
        let mut cues = (0..300).map(f64::from).map(|tenth| {
            let water = max(0.0, 0.5 * (tenth - 60.0));
            let shown = ScaleReading::known(if tenth < 20.0 { 0.0 } else { 15.0 + water });
            follower.take(&recipe, Clock::known(0.1 * tenth), shown).unwrap().cue
        });
        assert!(cues.any(|cue| cue == Cue::StopPouring));
        assert!(follower.dose().is_some());
        follower
    }

    /// What comes in goes out with the same bits, or is refused: numbers where nothing is, halves of
    /// pairs, zeros with a sign, times and masses between the steps of a state, or beyond all.
    #[test]
    fn a_state_has_one_form_in_bytes() {
        fn refused<const N: usize>(
            bytes: [u8; N],
            again: impl Fn(&[u8]) -> Result<[u8; N], Unreadable>,
        ) -> usize {
            let mut refused = 0;
            for at in (16..N).step_by(8) {
                for number in [1e12_f64, 200.0, 5.0, 1.0, 0.5, 0.1, -0.0] {
                    let mut other = bytes;
                    other[at..at + 8].copy_from_slice(&number.to_le_bytes());
                    let check = crate::sealed::check_value(&other).to_le_bytes();
                    other[12..16].copy_from_slice(&check);
                    match again(&other) {
                        Ok(same) => assert_eq!(same, other, "{number} at {at}"),
                        Err(error) => {
                            assert_eq!(error, Unreadable::Unsound);
                            refused += 1;
                        }
                    }
                }
            }
            refused
        }
        for follower in [Follower::new(Setup::COMMON), brewing()] {
            let again = |bytes: &[u8]| Follower::from_bytes(bytes).map(|state| state.to_bytes());
            let refused = refused(follower.to_bytes(), again);
            assert!(refused > 60, "{refused}");
        }
        let told =
            Waiting::of(Heard { happening: Happening::Settled, time: fixed(7.0), change: 0.0 });
        let pending = Pending([told, Waiting::NONE, Waiting::NONE]);
        let scale = Scale { pending, ..Scale::new(Setup::COMMON) };
        let again = |bytes: &[u8]| Scale::from_bytes(bytes).map(|state| state.to_bytes());
        let refused = refused(scale.to_bytes(), again);
        assert!(refused > 60, "{refused}");
    }
}
