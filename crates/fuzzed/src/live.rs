//! A scale that is watched and a brew that is followed, with anything happening to them.

use cupwright::Error;
use cupwright::live::{Follower, Now, Scale, Seen, Setup, Step};
use cupwright::quantity::*;

use crate::chance::Chance;
use crate::source::Source;

/// A scale, a brew, and the same two kept in bytes and brought back now and then.
struct Twins {
    setup: Setup,
    recipe: Vec<Step>,
    scales: [Scale; 2],
    followers: [Follower; 2],
    /// Largest weight that was ever shown or told, and how many operations there were: what rounding
    /// is measured by.
    largest: f64,
    operations: f64,
    clock: f64,
    mass: f64,
}

impl Twins {
    fn new(source: &mut Source) -> Self {
        let mut setup = Setup::COMMON;
        let flags = source.byte();
        if flags & 1 != 0 {
            setup.division = source.quantity();
            setup.capacity = source.quantity();
            setup.fastest = source.quantity();
        }
        let recipe = (0..source.byte() % 25).map(|_| step(source)).collect();
        let (scale, follower) = (Scale::new(setup), Follower::new(setup));
        Self {
            setup,
            recipe,
            scales: [scale; 2],
            followers: [follower; 2],
            largest: 1.0,
            operations: 1.0,
            clock: if flags & 2 != 0 { source.between(0.0, 5e9) } else { 0.0 },
            mass: 0.0,
        }
    }

    /// A reading, to all; refused as it must be, or taken with accounts that add up.
    fn read(&mut self, clock: f64, mass: f64) {
        let (Ok(time), Ok(reading)) = (Clock::from_seconds(clock), ScaleReading::from_grams(mass))
        else {
            assert!(!(0.0..=5e9).contains(&clock) || !(-1e5..=1e5).contains(&mass));
            return;
        };
        self.operations += 1.0;
        self.largest = self.largest.max(mass.abs());
        let before = (self.scales[0], self.followers[0]);
        let [seen, other] = self.scales.each_mut().map(|scale| scale.take(time, reading));
        same(&seen, &other);
        let recipe = &self.recipe;
        let [now, other] = self.followers.each_mut().map(|f| f.take(recipe, time, reading));
        same(&now, &other);
        assert_eq!(self.scales[0], self.scales[1], "a scale that was kept goes another way");
        assert_eq!(self.followers[0], self.followers[1], "a brew that was kept goes another way");
        let (old, older) = (before.0.latest(), before.1.scale().latest());
        assert_eq!(old, older, "a scale and that of a brew hear the same");
        let is_late = old.is_some_and(|old| time.seconds() <= old.seconds());
        match (seen, now) {
            (Err(Error::Impossible { quantity, value, lowest, .. }), Err(_)) => {
                assert!(is_late && quantity == Quantity::Clock && value <= lowest);
                assert_eq!(before.0.to_bytes(), self.scales[0].to_bytes(), "a refusal changes");
                assert_eq!(before.1.to_bytes(), self.followers[0].to_bytes(), "a refusal changes");
                return;
            }
            (Ok(seen), Ok(now)) => {
                let (scale, brew) = (self.scales[0], self.followers[0]);
                assert_eq!(scale.poured(), Ok(seen.poured));
                self.look(&seen, &scale, time);
                self.look(&now.seen, brew.scale(), time);
                self.look_at(&now, time);
            }
            (seen, now) => {
                for error in [seen.err(), now.err()].into_iter().flatten() {
                    assert!(matches!(error, Error::ResultOutOfRange { .. }), "{error}");
                    // Only what was set to zero by thousands of tons gets so far.
                    assert!(self.largest > 1e7 || self.operations > 1e4, "{error}");
                }
            }
        }
        assert!(!is_late, "a clock that does not go forward is taken");
        assert_eq!(self.scales[0].latest(), Some(time));
        self.clock = clock;
    }

    /// What a scale tells, and its accounts.
    fn look(&mut self, seen: &Seen, scale: &Scale, now: Clock) {
        let level = seen.level.grams();
        if let Some(event) = seen.event {
            assert!(event.clock.seconds() <= now.seconds(), "{event:?} at {now}");
        }
        let Ok(account) = scale.account() else {
            assert!(self.largest > 1e7 || self.operations > 1e4);
            return;
        };
        let all = [
            account.poured.grams(),
            account.moved.grams(),
            account.tared.grams(),
            account.drifted.grams(),
            account.unclear.grams(),
            account.under_way.grams(),
        ];
        let sum: f64 = all.into_iter().sum();
        self.largest = all.into_iter().fold(self.largest.max(level.abs()), |a, b| a.max(b.abs()));
        // Each operation rounds a few sums.
        let rounding = 8.0 * f64::EPSILON * self.largest * self.operations;
        assert!((sum - level).abs() <= rounding, "{sum} for {level}: {account:?}");
    }

    /// How the brew stands.
    fn look_at(&self, now: &Now, time: Clock) {
        if let Some(brewing) = now.brewing {
            assert!(brewing.seconds() <= time.seconds());
        }
        if let Some(ratio) = now.ratio {
            assert!(self.followers[0].dose().is_some(), "a ratio of no dose: {ratio}");
        }
    }

    /// One of each is kept in bytes and brought back.
    fn keep(&mut self) {
        let bytes = self.scales[1].to_bytes();
        self.scales[1] = Scale::from_bytes(&bytes).expect("a scale's own bytes");
        assert_eq!(self.scales[1].to_bytes(), bytes);
        let bytes = self.followers[1].to_bytes();
        self.followers[1] = Follower::from_bytes(&bytes).expect("a brew's own bytes");
        assert_eq!(self.followers[1].to_bytes(), bytes);
        let (numbers, _) = bytes[16..].as_chunks::<8>();
        let mut numbers = numbers.iter().map(|bytes| f64::from_le_bytes(*bytes));
        // What has never been is infinitely long ago.
        let odd = numbers.position(|number| number.is_nan() || number == f64::INFINITY);
        assert_eq!(odd, None, "a number in a brew is none: {:?}", self.followers[1]);
    }

    fn zeroed(&mut self, by: f64) {
        if let Ok(by) = Change::from_grams(by) {
            self.operations += 1.0;
            self.largest += by.grams().abs();
            self.scales.iter_mut().for_each(|scale| scale.zeroed(by));
            self.followers.iter_mut().for_each(|follower| follower.zeroed(by));
            self.mass -= by.grams();
        }
    }

    /// Readings of a flow, with noise.
    fn flow(&mut self, source: &mut Source) {
        let readings = source.byte() % 64;
        let (step, flow) = (source.between(0.001, 0.35), source.between(-5.0, 25.0));
        let (mut noise, width) = (source.word(), source.between(0.0, 2.0));
        let division = self.setup.division.grams();
        for _ in 0..readings {
            self.mass += step * flow;
            // Marsaglia's xorshift of sixteen bits (from memory).
            noise ^= noise << 7;
            noise ^= noise >> 9;
            noise ^= noise << 8;
            let off = width * (f64::from(noise) / 65535.0 - 0.5);
            let shown = ((self.mass + off) / division).round() * division;
            self.read(self.clock + step, shown);
        }
    }

    /// Whatever comes next.
    fn next(&mut self, source: &mut Source) {
        match source.byte() % 16 {
            0..=4 => self.flow(source),
            5 => self.mass += source.between(-900.0, 900.0),
            6 => self.mass = 0.0,
            7 => {
                self.clock += source.between(0.0, 60.0);
                self.read(self.clock, self.mass);
            }
            8 => self.read(source.any(), source.any()),
            9 => self.read(self.clock + source.between(-10.0, 10.0), source.any()),
            10 => {
                self.read(self.clock + 0.1, self.setup.capacity.grams() + source.between(-9., 9.))
            }
            11 => {
                let by = if source.byte().is_multiple_of(2) { self.mass } else { source.any() };
                self.zeroed(by);
            }
            12 => self.scales.iter_mut().for_each(Scale::count_anew),
            13 => match source.byte() % 3 {
                0 => self.followers.iter_mut().for_each(Follower::go_on),
                _ => {
                    let step = source.word();
                    self.followers.iter_mut().for_each(|follower| follower.go_to(step % 32));
                }
            },
            14 => {
                let (dose, beverage, lead) =
                    (source.quantity(), source.quantity(), source.quantity());
                for follower in &mut self.followers {
                    follower.set_dose(dose);
                    follower.set_beverage(beverage);
                    follower.set_lead(lead);
                }
            }
            _ => self.keep(),
        }
    }
}

/// The same answer, or the same refusal.
fn same<T: PartialEq + std::fmt::Debug>(one: &Result<T, Error>, other: &Result<T, Error>) {
    assert_eq!(one, other, "what was kept answers otherwise");
}

fn step(source: &mut Source) -> Step {
    match source.byte() % 7 {
        0 => Step::Rinse,
        1 => Step::Dose { dose: source.quantity() },
        2 => Step::Pour { to: source.quantity(), from: source.quantity() },
        3 => Step::Stir { from: source.quantity() },
        4 => Step::Wait { until: source.quantity() },
        5 => Step::Press,
        _ => Step::Beverage { vessel: source.quantity() },
    }
}

/// A scale and a brew in bytes, in the middle of something.
pub(crate) fn kept_live(seed: u8) -> [Vec<u8>; 2] {
    let mut script = Chance::new(seed.into()).bytes(200);
    // From the beginning of the clock.
    script[0] &= 1;
    let mut source = Source::new(&script);
    let mut twins = Twins::new(&mut source);
    (0..seed % 16).for_each(|_| twins.next(&mut source));
    [twins.scales[0].to_bytes().into(), twins.followers[0].to_bytes().into()]
}

/// Bytes make a scale, a recipe and all that happens; see the [crate].
pub fn run(bytes: &[u8]) {
    let mut source = Source::new(bytes);
    let mut twins = Twins::new(&mut source);
    while !source.is_empty() {
        twins.next(&mut source);
    }
    twins.keep();
}
