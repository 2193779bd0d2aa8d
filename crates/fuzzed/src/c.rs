//! The C interface to a scale, a brew and their bytes, with any numbers, lengths and NULLs: it answers
//! what the core answers, and refuses what the core refuses.

use std::ptr::{null, null_mut};

use cupwright::Error;
use cupwright::live::{FOLLOWER_BYTES, Follower, SCALE_BYTES, Scale, Seen, Setup, Step};
use cupwright::profile::{PROFILE_BYTES, Profile};
use cupwright::quantity::*;
use cupwright_c::live::*;
use cupwright_c::profile::*;
use cupwright_c::status::{cupwright_error, cupwright_status};

use crate::source::Source;

const OK: i32 = cupwright_status::Ok as i32;
const NULL: i32 = cupwright_status::Null as i32;
const UNREADABLE: i32 = cupwright_status::Unreadable as i32;

/// The status of what the core says.
fn status<T>(outcome: &Result<T, Error>) -> i32 {
    let status = match outcome {
        Ok(_) => cupwright_status::Ok,
        Err(Error::OutOfRange { .. }) => cupwright_status::OutOfRange,
        Err(Error::NotWhole { .. }) => cupwright_status::NotWhole,
        Err(Error::Impossible { .. }) => cupwright_status::Impossible,
        Err(Error::ResultOutOfRange { .. }) => cupwright_status::ResultOutOfRange,
        Err(other) => panic!("{other}"),
    };
    status as i32
}

/// A reading as the core takes it.
fn reading(clock_s: f64, reading_g: f64) -> Result<(Clock, ScaleReading), Error> {
    Ok((Clock::from_seconds(clock_s)?, ScaleReading::from_grams(reading_g)?))
}

fn is_seen(c: &cupwright_live_seen, core: &Seen) -> bool {
    let numbers = [c.level_g, c.flow_g_per_s, c.poured_g, c.unclear_g];
    let flow = core.flow.map_or(0.0, Flow::value);
    let event = core.event.map_or([0.0; 2], |e| [e.clock.value(), e.change.value()]);
    numbers.map(f64::to_bits)
        == [core.level.value(), flow, core.poured.value(), core.unclear.value()].map(f64::to_bits)
        && [c.event_clock_s, c.event_change_g].map(f64::to_bits) == event.map(f64::to_bits)
        && (c.has_flow, c.doing) == (core.flow.is_some().into(), core.doing as i32)
        && c.event == core.event.map_or(0, |event| event.happening as i32)
}

/// Each in C and in the core.
struct Pair {
    c_scale: cupwright_scale,
    c_follower: cupwright_follower,
    scale: Scale,
    follower: Follower,
    c_recipe: Vec<cupwright_live_step>,
    recipe: Vec<Step>,
    clock: f64,
}

impl Pair {
    fn take(&mut self, clock_s: f64, reading_g: f64, error: *mut cupwright_error) {
        let read = reading(clock_s, reading_g);
        let seen = read.and_then(|(clock, mass)| self.scale.take(clock, mass));
        let now = read.and_then(|(clock, mass)| self.follower.take(&self.recipe, clock, mass));
        // SAFETY: numbers may be anything; answers are only looked at after a success, and are plain
        // numbers before.
        unsafe {
            let (mut c_seen, mut c_now) = (
                std::mem::zeroed::<cupwright_live_seen>(),
                std::mem::zeroed::<cupwright_live_now>(),
            );
            let got =
                cupwright_live_take(&mut self.c_scale, clock_s, reading_g, &mut c_seen, error);
            assert_eq!(got, status(&seen), "{seen:?}");
            assert!(seen.is_err() || is_seen(&c_seen, seen.as_ref().expect("no error")));
            let (steps, count) = (self.c_recipe.as_ptr(), self.c_recipe.len());
            let scale = &mut self.c_follower;
            let got =
                cupwright_follow_take(scale, steps, count, clock_s, reading_g, &mut c_now, error);
            assert_eq!(got, status(&now), "{now:?}");
            if let Ok(now) = &now {
                assert!(is_seen(&c_now.seen, &now.seen));
                let core = (i32::from(now.step), now.cue as i32, now.why as i32);
                assert_eq!((c_now.step, c_now.cue, c_now.why), core);
            }
        }
        if seen.is_ok() {
            self.clock = clock_s;
        }
    }

    /// Bytes go out and come in, whole or cut off.
    fn keep(&mut self, count: usize, error: *mut cupwright_error) {
        let (mut scale, mut follower) = ([0; SCALE_BYTES], [0; FOLLOWER_BYTES]);
        // SAFETY: room for all bytes, and never more of them said to be there than are.
        unsafe {
            assert_eq!(cupwright_live_to_bytes(&self.c_scale, scale.as_mut_ptr(), error), OK);
            let got = cupwright_follow_to_bytes(&self.c_follower, follower.as_mut_ptr(), error);
            assert_eq!(got, OK);
            assert!(scale == self.scale.to_bytes() && follower == self.follower.to_bytes());
            let count = count.min(SCALE_BYTES);
            let expected = if count == SCALE_BYTES { OK } else { UNREADABLE };
            let got = cupwright_live_from_bytes(scale.as_ptr(), count, &mut self.c_scale, error);
            assert_eq!(got, expected);
            let follower = follower.as_ptr();
            let got = cupwright_follow_from_bytes(follower, count, &mut self.c_follower, error);
            assert_eq!(got, UNREADABLE, "too short by far");
        }
    }

    fn next(&mut self, source: &mut Source) {
        let mut facts = std::mem::MaybeUninit::<cupwright_error>::uninit();
        let wants_facts = source.byte().is_multiple_of(2);
        let error = if wants_facts { facts.as_mut_ptr() } else { null_mut() };
        let operation = source.byte() % 10;
        // SAFETY: pointers are NULL or to what they say.
        unsafe {
            match operation {
                0..=3 => {
                    let (mut mass, flow) =
                        (source.between(-500.0, 2500.0), source.between(-2.0, 16.0));
                    for _ in 0..source.byte() % 32 {
                        mass += 0.1 * flow;
                        self.take(self.clock + 0.1, mass, error);
                    }
                }
                4 => self.take(source.any(), source.any(), error),
                5 => {
                    let by_g = source.any();
                    let by = Change::from_grams(by_g);
                    let got = cupwright_live_zeroed(&mut self.c_scale, by_g, error);
                    assert_eq!(got, status(&by));
                    let got = cupwright_follow_zeroed(&mut self.c_follower, by_g, error);
                    assert_eq!(got, status(&by));
                    if let Ok(by) = by {
                        self.scale.zeroed(by);
                        self.follower.zeroed(by);
                    }
                }
                6 => {
                    let (dose_g, lead_s) = (source.any(), source.any());
                    let (dose, lead) = (Dose::from_grams(dose_g), Lead::from_seconds(lead_s));
                    let got = cupwright_follow_set_dose(&mut self.c_follower, dose_g, error);
                    assert_eq!(got, status(&dose));
                    let got = cupwright_follow_set_lead(&mut self.c_follower, lead_s, error);
                    assert_eq!(got, status(&lead));
                    dose.into_iter().for_each(|dose| self.follower.set_dose(dose));
                    lead.into_iter().for_each(|lead| self.follower.set_lead(lead));
                }
                7 => {
                    assert_eq!(cupwright_live_count_anew(&mut self.c_scale, error), OK);
                    assert_eq!(cupwright_follow_go_on(&mut self.c_follower, error), OK);
                    self.scale.count_anew();
                    self.follower.go_on();
                }
                8 => self.keep(source.word().into(), error),
                _ => {
                    let (scale, follower) = (null_mut(), null_mut());
                    assert_eq!(
                        cupwright_live_take(scale, 1.0, source.any(), null_mut(), error),
                        NULL
                    );
                    assert_eq!(cupwright_live_zeroed(scale, source.any(), error), NULL);
                    assert_eq!(cupwright_follow_go_on(follower, error), NULL);
                    // No bytes need no place.
                    let count = 1 + usize::from(source.word());
                    let got = cupwright_live_from_bytes(null(), count, &mut self.c_scale, error);
                    assert_eq!(got, NULL);
                    let got = cupwright_profile_from_bytes(null(), count, null_mut(), error);
                    assert_eq!(got, NULL);
                }
            }
        }
    }
}

/// A profile's bytes.
fn profile(bytes: &[u8]) {
    // SAFETY: as many bytes as are said to be there; a record of plain numbers.
    unsafe {
        let mut profile = std::mem::zeroed::<cupwright_profile>();
        let (start, count) = (bytes.as_ptr(), bytes.len());
        let got = cupwright_profile_from_bytes(start, count, &mut profile, null_mut());
        let core = Profile::from_bytes(bytes);
        assert_eq!(got, if core.is_ok() { OK } else { UNREADABLE });
        if let Ok(core) = core {
            let mut again = [0; PROFILE_BYTES];
            assert_eq!(cupwright_profile_to_bytes(&profile, again.as_mut_ptr(), null_mut()), OK);
            assert!(again == core.to_bytes());
        }
    }
}

/// A step of a recipe, in C and in the core, if that accepts it.
fn step(source: &mut Source) -> (cupwright_live_step, Option<Step>) {
    let (a, b) = (source.any(), source.between(0.0, 600.0));
    let kind = 1 + i32::from(source.byte() % 7);
    let c =
        cupwright_live_step { dose_g: a, to_g: a, from_s: b, until_s: b, vessel_g: a, step: kind };
    let core = || {
        Ok::<_, Error>(match kind {
            1 => Step::Rinse,
            2 => Step::Dose { dose: Dose::from_grams(a)? },
            3 => Step::Pour { to: BrewWater::from_grams(a)?, from: Time::from_seconds(b)? },
            4 => Step::Stir { from: Time::from_seconds(b)? },
            5 => Step::Wait { until: Time::from_seconds(b)? },
            6 => Step::Press,
            _ => Step::Beverage { vessel: VesselMass::from_grams(a)? },
        })
    };
    (c, core().ok())
}

/// Bytes are read as a profile; then they make a scale and a brew in C, the same in the core, and all
/// that happens to them.
pub fn run(bytes: &[u8]) {
    profile(bytes);
    let mut source = Source::new(bytes);
    let is_common = !source.byte().is_multiple_of(4);
    let numbers =
        if is_common { [0.1, 2000.0, 15.0] } else { [source.any(), source.any(), source.any()] };
    let [division_g, capacity_g, fastest_g_per_s] = numbers;
    let c_setup = cupwright_live_setup { division_g, capacity_g, fastest_g_per_s };
    let setup = || {
        Ok::<_, Error>(Setup {
            division: Division::from_grams(division_g)?,
            capacity: Capacity::from_grams(capacity_g)?,
            fastest: FastestPour::from_grams_per_second(fastest_g_per_s)?,
        })
    };
    let setup = setup();
    // SAFETY: states are plain memory, written by their functions before they are used.
    unsafe {
        let (mut c_scale, mut c_follower) =
            (std::mem::zeroed::<cupwright_scale>(), std::mem::zeroed::<cupwright_follower>());
        assert_eq!(cupwright_live_begin(&c_setup, &mut c_scale, null_mut()), status(&setup));
        assert_eq!(cupwright_follow_begin(&c_setup, &mut c_follower, null_mut()), status(&setup));
        let Ok(setup) = setup else { return };
        let steps: Vec<_> = (0..source.byte() % 25).map(|_| step(&mut source)).collect();
        // What the core has no step for is refused at every reading, and left out here.
        let known = steps.into_iter().filter_map(|(c, core)| Some((c, core?)));
        let (c_recipe, recipe) = known.unzip();
        let (scale, follower) = (Scale::new(setup), Follower::new(setup));
        let mut pair = Pair { c_scale, c_follower, scale, follower, c_recipe, recipe, clock: 0.0 };
        while !source.is_empty() {
            pair.next(&mut source);
        }
    }
}
