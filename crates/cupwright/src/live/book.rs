//! Where the changes of a reading are put down.

use super::kept::{Kept, Walk};
use crate::math::{max, square};

/// Things taken off that are remembered, to know them when they come back.
const REMEMBERED: usize = 3;

/// How much drift is usual, g/s (estimate: a hot open brewer loses 0.005 to 0.02 g/s).
const USUAL_DRIFT: f64 = 0.01;

/// The fastest that water goes off, g/s (estimate: that of such a brewer).
const FASTEST_DRIFT: f64 = 0.02;

/// A level at either end of a run of water is known to so many grams (estimate).
const END: f64 = 0.08;

/// A level at either end of a still time, the mean of more points (estimate).
const STILL_END: f64 = 0.06;

/// Square of how long a still time must be for its rate to be half known, s²: (u_end/u_usual)².
const HALF_KNOWN: f64 = (STILL_END / USUAL_DRIFT) * (STILL_END / USUAL_DRIFT);

/// Less than this lost at rest may be noise at its ends, g (estimate: 1.2 standard deviations of two).
const SURE_DRIFT: f64 = 0.1;

/// The accounts. Their sum is the anchor.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Book {
    pub(super) poured: f64,
    pub(super) moved: f64,
    pub(super) tared: f64,
    pub(super) drifted: f64,
    pub(super) unclear: f64,
    /// The level up to which all is put down.
    pub(super) anchor: f64,
    /// Grams that may be water or not.
    pub(super) unsure: f64,
    /// What was taken off, the last first.
    off: [f64; REMEMBERED],
    /// Seconds during which nothing but drift went on, since water came.
    still: f64,
    /// Drift meanwhile.
    drift: f64,
    /// Seconds of runs of water that are over: drift could not be seen meanwhile.
    wet: f64,
}

impl Book {
    pub(super) const BLANK: Self = Self {
        poured: 0.0,
        moved: 0.0,
        tared: 0.0,
        drifted: 0.0,
        unclear: 0.0,
        anchor: 0.0,
        unsure: 0.0,
        off: [0.0; REMEMBERED],
        still: 0.0,
        drift: 0.0,
        wet: 0.0,
    };

    /// Puts down all up to a level.
    pub(super) fn enter(&mut self, level: f64, account: fn(&mut Self) -> &mut f64) {
        *account(self) += level - self.anchor;
        self.anchor = level;
    }

    /// Puts down the water of a run up to a level, and how many seconds it came.
    pub(super) fn pour(&mut self, level: f64, seconds: f64) {
        self.enter(level, |book| &mut book.poured);
        self.wet += seconds;
    }

    /// The display was set to zero.
    pub(super) fn zeroed(&mut self, by: f64) {
        self.tared -= by;
        self.anchor -= by;
    }

    /// Takes back that something was put down.
    pub(super) fn take_back(&mut self, weight: f64) {
        self.moved -= weight;
        self.anchor -= weight;
    }

    /// Puts down drift.
    pub(super) fn drift(&mut self, change: f64) {
        self.drifted += change;
        self.anchor += change;
    }

    /// Water poured, with what went off meanwhile; the run going on has lasted for some seconds.
    ///
    /// Hot water evaporates while it is poured too. The rate of still times is taken for it, as far as it
    /// can be told: weighted by the variance of what is usual over the sum of that and of the rate's own.
    /// No water comes from nowhere, and none goes off faster than from a hot open brewer: such a rate is
    /// noise, or what a press has left. Nor is there a rate before more is lost than noise may have made:
    /// of noise alone half would be taken for evaporation.
    pub(super) fn water(&self, run: f64) -> f64 {
        if self.drift >= -SURE_DRIFT {
            return self.poured;
        }
        let rate = self.still * self.drift / self.rate_spread();
        self.poured - max(rate, -FASTEST_DRIFT) * (self.wet + run)
    }

    /// Square of how long still times were, and as much as makes their rate half known: t² + (u_end/u_usual)².
    fn rate_spread(&self) -> f64 {
        square(self.still) + HALF_KNOWN
    }

    /// Variance of [`water`](Self::water), where it came in so many runs: a level at either end of
    /// each, what is left of the rate's doubt, and what may be water or not, as likely anything up to
    /// all of it.
    pub(super) fn water_variance(&self, runs: u8, run: f64) -> f64 {
        let rate = square(STILL_END) / self.rate_spread();
        2.0 * f64::from(runs) * square(END)
            + rate * square(self.wet + run)
            + square(self.unsure) / 3.0
    }

    /// Counts water anew.
    pub(super) fn count_anew(&mut self) {
        self.moved += self.poured;
        (self.poured, self.unsure) = (0.0, 0.0);
        (self.still, self.drift, self.wet) = (0.0, 0.0, 0.0);
    }

    /// A while during which water that came was still finding its level; before any came, drift.
    pub(super) fn rest(&mut self, seconds: f64, change: f64) {
        if self.wet > 0.0 {
            self.poured += change;
            self.anchor += change;
            self.wet += seconds;
        } else {
            self.drift(change);
        }
    }

    /// A while during which nothing but drift went on.
    pub(super) fn still(&mut self, seconds: f64, drift: f64) {
        if self.wet > 0.0 {
            self.still += seconds;
            self.drift += drift;
        }
    }

    /// Remembers what was taken off.
    pub(super) fn take_off(&mut self, weight: f64) {
        self.off.rotate_right(1);
        if let Some(last) = self.off.first_mut() {
            *last = weight;
        }
    }

    /// What was taken off and is put back with so much weight: at least half of it is left, and not
    /// much has been added.
    pub(super) fn put_back(&mut self, weight: f64) -> Option<f64> {
        let is_it = |off: f64| weight > 0.5 * off && weight < off + max(5.0, 0.02 * off);
        let place = self.off.iter_mut().find(|off| **off > 0.0 && is_it(**off))?;
        Some(core::mem::replace(place, 0.0))
    }
}

impl Kept for Book {
    fn walk(&mut self, walk: &mut impl Walk) {
        let Self { poured, moved, tared, drifted, unclear, anchor, unsure, off, still, drift, wet } =
            self;
        walk.numbers([poured, moved, tared, drifted, unclear, anchor, unsure]);
        off.iter_mut().for_each(|grams| walk.number(grams));
        walk.numbers([still, drift, wet]);
    }
}

#[cfg(test)]
#[allow(clippy::arithmetic_side_effects)]
mod tests {
    use super::*;

    fn near(a: f64, b: f64) {
        assert!((a - b).abs() < 1e-12 * (1.0 + b.abs()), "{a} {b}");
    }

    fn accounts(book: &Book) -> [f64; 5] {
        [book.poured, book.moved, book.tared, book.drifted, book.unclear]
    }

    /// A vessel of 300 g, 20 g of water, a display set to zero, some drift, something unclear, and a hand.
    #[test]
    fn every_change_has_one_account_and_all_make_the_anchor() {
        let mut book = Book::BLANK;
        let check = |book: &Book, wanted: [f64; 5]| {
            accounts(book).into_iter().zip(wanted).for_each(|(one, wanted)| near(one, wanted));
            near(book.anchor, wanted.iter().sum());
        };
        book.enter(300.0, |book| &mut book.moved);
        check(&book, [0.0, 300.0, 0.0, 0.0, 0.0]);
        book.drift(-0.5);
        check(&book, [0.0, 300.0, 0.0, -0.5, 0.0]);
        book.rest(2.0, 0.25);
        check(&book, [0.0, 300.0, 0.0, -0.25, 0.0]);
        book.pour(319.75, 4.0);
        book.rest(2.0, 0.25);
        check(&book, [20.25, 300.0, 0.0, -0.25, 0.0]);
        book.zeroed(320.0);
        check(&book, [20.25, 300.0, -320.0, -0.25, 0.0]);
        book.enter(7.0, |book| &mut book.unclear);
        check(&book, [20.25, 300.0, -320.0, -0.25, 7.0]);
        book.take_back(40.0);
        check(&book, [20.25, 260.0, -320.0, -0.25, 7.0]);
        book.unsure = 7.0;
        book.count_anew();
        check(&book, [0.0, 280.25, -320.0, -0.25, 7.0]);
        near(book.unsure, 0.0);
        near(book.water_variance(0, 0.0), 0.0);
    }

    /// What went off meanwhile, by the rate of still times: its weight is t²/(t² + 6²), and it is 0.02 g/s at most.
    #[test]
    fn water_goes_off_while_it_is_poured_too() {
        let water = |still: f64, drift: f64| {
            let mut book = Book { poured: 50.0, ..Book::BLANK };
            // Before any water came there is nothing that tells of it.
            book.still(40.0, -9.0);
            book.pour(0.0, 7.0);
            book.still(still, drift);
            // And a run of three seconds going on.
            book.water(3.0)
        };
        near(water(12.0, -0.18), 50.0 + 0.015 * 0.8 * 10.0);
        near(water(6.0, -0.12), 50.0 + 0.02 * 0.5 * 10.0);
        near(water(12.0, -3.0), 50.0 + 0.02 * 10.0);
        near(water(12.0, -0.1), 50.0);
        near(water(12.0, -0.10001), 50.0 + 0.10001 / 12.0 * 0.8 * 10.0);
        near(water(12.0, 3.0), 50.0);
    }

    /// u² = 2n u_L² + (u_R t)² + Q²/3, as `Scale::poured_uncertainty` has it.
    #[test]
    fn the_variance_of_water_has_three_parts() {
        let mut book = Book::BLANK;
        near(book.water_variance(3, 0.0), 6.0 * 0.08 * 0.08);
        book.unsure = -3.0;
        near(book.water_variance(0, 0.0), 3.0);
        book.unsure = 0.0;
        near(book.water_variance(0, 1.0), 0.01 * 0.01);
        book.pour(0.0, 4.0);
        book.rest(3.0, 0.0);
        near(book.water_variance(0, 3.0), square(0.01 * 10.0));
        book.still(8.0, 0.0);
        near(book.water_variance(0, 3.0), square(0.1) / (1.0 + square(8.0 / 6.0)));
        near(book.water_variance(1, 3.0), 2.0 * square(0.08) + square(0.1) * 0.36);
    }

    #[test]
    fn what_was_taken_off_is_known_when_it_comes_back() {
        let back = |off: f64, weight: f64| {
            let mut book = Book::BLANK;
            book.take_off(off);
            book.put_back(weight)
        };
        for (weight, is_it) in [(50.0, false), (50.1, true), (104.9, true), (105.0, false)] {
            assert_eq!(back(100.0, weight), is_it.then_some(100.0), "{weight}");
        }
        for (weight, is_it) in [(500.0, false), (1019.9, true), (1020.0, false)] {
            assert_eq!(back(1000.0, weight), is_it.then_some(1000.0), "{weight}");
        }
        let mut blank = Book::BLANK;
        assert_eq!(blank.put_back(4.0), None, "nothing was taken off");
    }

    #[test]
    fn the_last_three_that_were_taken_off_are_remembered_and_come_back_once() {
        let mut book = Book::BLANK;
        [900.0, 400.0, 403.0, 30.0].into_iter().for_each(|off| book.take_off(off));
        assert_eq!(book.put_back(900.0), None, "of four the first is forgotten");
        assert_eq!(book.put_back(401.0), Some(403.0), "the last that it can be");
        assert_eq!(book.put_back(401.0), Some(400.0));
        assert_eq!(book.put_back(401.0), None);
        assert_eq!(book.put_back(30.0), Some(30.0));
    }
}
