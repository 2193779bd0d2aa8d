//! States called from Rust as C would, so that Miri can watch: memory of the caller's that is written,
//! copied, refused where nothing was begun, and left alone by what is refused.

use std::mem::MaybeUninit;
use std::ptr::{null, null_mut};

use cupwright_c::forecast::cupwright_intended;
use cupwright_c::live::*;
use cupwright_c::status::*;
use cupwright_c::verdict::cupwright_window;

const OK: i32 = cupwright_status::Ok as i32;
const NULL: i32 = cupwright_status::Null as i32;
const NOT_BEGUN: i32 = cupwright_status::NotBegun as i32;
const OUT_OF_RANGE: i32 = cupwright_status::OutOfRange as i32;
const IMPOSSIBLE: i32 = cupwright_status::Impossible as i32;
const UNKNOWN_CHOICE: i32 = cupwright_status::UnknownChoice as i32;

const SETUP: cupwright_live_setup =
    cupwright_live_setup { division_g: 0.1, capacity_g: 2000.0, fastest_g_per_s: 15.0 };

const STEP: cupwright_live_step = cupwright_live_step {
    dose_g: 0.0,
    to_g: 0.0,
    from_s: 0.0,
    until_s: 0.0,
    vessel_g: 0.0,
    step: 0,
};

fn scale() -> Box<MaybeUninit<cupwright_scale>> {
    let mut scale = Box::new(MaybeUninit::uninit());
    // SAFETY: the place is there.
    assert_eq!(unsafe { cupwright_live_begin(&SETUP, scale.as_mut_ptr(), null_mut()) }, OK);
    scale
}

fn follower() -> Box<MaybeUninit<cupwright_follower>> {
    let mut follower = Box::new(MaybeUninit::uninit());
    // SAFETY: the place is there.
    assert_eq!(unsafe { cupwright_follow_begin(&SETUP, follower.as_mut_ptr(), null_mut()) }, OK);
    follower
}

/// What functions say to states of one kind, with places for their answers or without.
fn of_a_scale(scale: *mut cupwright_scale, is_answered: bool) -> [i32; 4] {
    let (mut seen, mut account) = (MaybeUninit::uninit(), MaybeUninit::uninit());
    let seen = if is_answered { seen.as_mut_ptr() } else { null_mut() };
    let account = if is_answered { account.as_mut_ptr() } else { null_mut() };
    // SAFETY: the state is NULL, zeros, or begun; the places are there.
    unsafe {
        [
            cupwright_live_take(scale, 1.0, 5.0, seen, null_mut()),
            cupwright_live_account(scale, account, null_mut()),
            cupwright_live_zeroed(scale, 5.0, null_mut()),
            cupwright_live_count_anew(scale, null_mut()),
        ]
    }
}

fn of_a_follower(follower: *mut cupwright_follower, is_answered: bool) -> [i32; 8] {
    let mut now = MaybeUninit::uninit();
    let (mut weighed, mut account) = (MaybeUninit::uninit(), MaybeUninit::uninit());
    let now = if is_answered { now.as_mut_ptr() } else { null_mut() };
    let weighed = if is_answered { weighed.as_mut_ptr() } else { null_mut() };
    let account = if is_answered { account.as_mut_ptr() } else { null_mut() };
    // SAFETY: the state is NULL, zeros, or begun; the places are there.
    unsafe {
        [
            cupwright_follow_take(follower, null(), 0, 1.0, 5.0, now, null_mut()),
            cupwright_follow_weighed(follower, weighed, null_mut()),
            cupwright_follow_account(follower, account, null_mut()),
            cupwright_follow_zeroed(follower, 5.0, null_mut()),
            cupwright_follow_go_on(follower, null_mut()),
            cupwright_follow_set_dose(follower, 15.0, null_mut()),
            cupwright_follow_set_beverage(follower, 200.0, null_mut()),
            cupwright_follow_set_lead(follower, 0.5, null_mut()),
        ]
    }
}

#[test]
fn a_null_is_refused() {
    let (mut state, mut other) = (scale(), follower());
    // SAFETY: NULL is refused, and the other places are there.
    unsafe {
        assert_eq!(cupwright_live_begin(null(), state.as_mut_ptr(), null_mut()), NULL);
        assert_eq!(cupwright_live_begin(&SETUP, null_mut(), null_mut()), NULL);
        assert_eq!(cupwright_follow_begin(null(), other.as_mut_ptr(), null_mut()), NULL);
        assert_eq!(cupwright_follow_begin(&SETUP, null_mut(), null_mut()), NULL);
        let mut now = MaybeUninit::uninit();
        let follower = other.as_mut_ptr();
        let status =
            cupwright_follow_take(follower, null(), 1, 1.0, 5.0, now.as_mut_ptr(), null_mut());
        assert_eq!(status, NULL);
    }
    assert_eq!(of_a_scale(null_mut(), true), [NULL; 4]);
    assert_eq!(of_a_follower(null_mut(), true), [NULL; 8]);
    assert_eq!(of_a_scale(state.as_mut_ptr(), false), [NULL, NULL, OK, OK]);
    assert_eq!(of_a_follower(other.as_mut_ptr(), false)[..3], [NULL; 3]);
}

/// What a forecast says to a state, to a brew that is there or not, to a place for the answer or none.
fn outlook(follower: *mut cupwright_follower, is_meant: bool, is_answered: bool) -> i32 {
    // SAFETY: a brew is numbers, for which zeros are some.
    let meant: cupwright_intended = unsafe { MaybeUninit::zeroed().assume_init() };
    let window = cupwright_window {
        strength_lowest_pct: 1.15,
        strength_highest_pct: 1.45,
        yield_lowest_pct: 0.0,
        yield_highest_pct: 0.0,
        has_yield: 0,
        yield_counting: 0,
    };
    let mut outlook = MaybeUninit::uninit();
    let meant = if is_meant { &raw const meant } else { null() };
    let place = if is_answered { outlook.as_mut_ptr() } else { null_mut() };
    // SAFETY: the state is NULL, zeros, or begun; the places are there.
    unsafe { cupwright_follow_outlook(follower, meant, &window, place, null_mut()) }
}

#[test]
fn a_forecast_asks_for_a_state_a_brew_and_a_place() {
    let mut zeros = Box::new(MaybeUninit::<cupwright_follower>::zeroed());
    assert_eq!(outlook(null_mut(), true, true), NULL);
    assert_eq!(outlook(zeros.as_mut_ptr(), true, true), NOT_BEGUN);
    let mut state = follower();
    assert_eq!(outlook(state.as_mut_ptr(), false, true), NULL);
    assert_eq!(outlook(state.as_mut_ptr(), true, false), NULL);
    // A dose of nothing.
    assert_eq!(outlook(state.as_mut_ptr(), true, true), OUT_OF_RANGE);
}

#[test]
fn what_was_never_begun_is_refused() {
    let mut zeros = Box::new(MaybeUninit::<cupwright_scale>::zeroed());
    assert_eq!(of_a_scale(zeros.as_mut_ptr(), true), [NOT_BEGUN; 4]);
    let mut zeros = Box::new(MaybeUninit::<cupwright_follower>::zeroed());
    assert_eq!(of_a_follower(zeros.as_mut_ptr(), true), [NOT_BEGUN; 8]);
    // The state of a follower is none of a scale.
    assert_eq!(of_a_scale(follower().as_mut_ptr().cast(), true), [NOT_BEGUN; 4]);
}

#[test]
fn a_begun_state_answers_where_it_lies_and_as_a_copy() {
    let mut first = scale();
    assert_eq!(of_a_scale(first.as_mut_ptr(), true), [OK; 4]);
    // Copied with what was not initialised, as C does.
    let mut copy = Box::new(MaybeUninit::<cupwright_scale>::uninit());
    // SAFETY: both places are there and apart.
    unsafe { copy.as_mut_ptr().copy_from_nonoverlapping(first.as_ptr(), 1) };
    let take = |state: &mut MaybeUninit<cupwright_scale>, tenth: i32| {
        let mut seen = MaybeUninit::uninit();
        let clock_s = 1.0 + f64::from(tenth) / 10.0;
        let place = seen.as_mut_ptr();
        // SAFETY: the state was begun, the place is there.
        let status =
            unsafe { cupwright_live_take(state.as_mut_ptr(), clock_s, 50.0, place, null_mut()) };
        assert_eq!(status, OK);
        // SAFETY: the call wrote it.
        unsafe { seen.assume_init() }
    };
    let mut heard = Vec::new();
    for tenth in 1..30 {
        let (seen, again) = (take(&mut first, tenth), take(&mut copy, tenth));
        assert_eq!(seen.level_g.to_bits(), again.level_g.to_bits());
        assert_eq!((seen.event, seen.doing), (again.event, again.doing));
        heard.extend((seen.event != 0).then_some(seen.event));
    }
    assert_eq!(heard, [cupwright_happening::Placed as i32]);
}

#[test]
fn a_state_comes_back_from_its_bytes() {
    let (mut scale, mut other) = (scale(), follower());
    let mut bytes = [0; CUPWRIGHT_FOLLOWER_BYTES];
    // SAFETY: the states were begun, and so many bytes are there.
    unsafe {
        let (state, place) = (scale.as_mut_ptr(), bytes.as_mut_ptr());
        assert_eq!(cupwright_live_to_bytes(state, place, null_mut()), OK);
        let count = CUPWRIGHT_SCALE_BYTES;
        assert_eq!(cupwright_live_from_bytes(bytes.as_ptr(), count, state, null_mut()), OK);
        bytes[99] ^= 1;
        let status = cupwright_live_from_bytes(bytes.as_ptr(), count, state, null_mut());
        assert_eq!(status, cupwright_status::Unreadable as i32);
        let (state, place) = (other.as_mut_ptr(), bytes.as_mut_ptr());
        assert_eq!(cupwright_follow_to_bytes(state, place, null_mut()), OK);
        let count = CUPWRIGHT_FOLLOWER_BYTES;
        assert_eq!(cupwright_follow_from_bytes(bytes.as_ptr(), count, state, null_mut()), OK);
    }
    assert_eq!(of_a_scale(scale.as_mut_ptr(), true), [OK; 4]);
    assert_eq!(of_a_follower(other.as_mut_ptr(), true), [OK; 8]);
}

#[test]
fn a_refused_reading_leaves_the_state_as_it_was() {
    let (mut spoiled, mut clean) = (scale(), scale());
    let mut error = MaybeUninit::<cupwright_error>::uninit();
    for tenth in 1..20 {
        let (clock_s, reading_g) = (f64::from(tenth) / 10.0, f64::from(tenth * tenth) / 10.0);
        let (mut seen, mut again) = (MaybeUninit::uninit(), MaybeUninit::uninit());
        // SAFETY: the states were begun, the places are there.
        let (seen, again) = unsafe {
            let state = spoiled.as_mut_ptr();
            let (place, error) = (seen.as_mut_ptr(), error.as_mut_ptr());
            assert_eq!(cupwright_live_take(state, clock_s, f64::NAN, place, error), OUT_OF_RANGE);
            assert_eq!(cupwright_live_take(state, f64::NAN, 1.0, place, error), OUT_OF_RANGE);
            assert_eq!(cupwright_live_zeroed(state, f64::INFINITY, error), OUT_OF_RANGE);
            assert_eq!(cupwright_live_take(state, clock_s, reading_g, place, error), OK);
            assert_eq!(cupwright_live_take(state, clock_s, 7.0, null_mut(), error), NULL);
            let (mut other, mut error) = (MaybeUninit::uninit(), MaybeUninit::uninit());
            let status =
                cupwright_live_take(state, clock_s, 7.0, other.as_mut_ptr(), error.as_mut_ptr());
            let error: cupwright_error = error.assume_init();
            assert_eq!((status, error.value, error.lowest), (IMPOSSIBLE, clock_s, clock_s));
            let (state, place) = (clean.as_mut_ptr(), again.as_mut_ptr());
            assert_eq!(cupwright_live_take(state, clock_s, reading_g, place, null_mut()), OK);
            (seen.assume_init(), again.assume_init())
        };
        assert_eq!(seen.level_g.to_bits(), again.level_g.to_bits());
        assert_eq!(seen.flow_g_per_s.to_bits(), again.flow_g_per_s.to_bits());
    }
}

#[test]
fn a_recipe_is_read_as_far_as_it_goes() {
    let mut state = follower();
    let dose = cupwright_live_step { dose_g: 15.0, step: cupwright_step::Dose as i32, ..STEP };
    let pour = cupwright_live_step { to_g: 250.0, step: cupwright_step::Pour as i32, ..STEP };
    let (none, bad) = (STEP, cupwright_live_step { to_g: f64::NAN, ..pour });
    let mut clock_s = 0.0;
    let mut take = |recipe: &[cupwright_live_step], count: usize| {
        let (mut now, mut error) = (MaybeUninit::uninit(), MaybeUninit::uninit());
        let (place, error) = (now.as_mut_ptr(), error.as_mut_ptr());
        clock_s += 0.1;
        // SAFETY: the state was begun, the places are there, and so many steps.
        unsafe {
            let (state, recipe) = (state.as_mut_ptr(), recipe.as_ptr());
            let status = cupwright_follow_take(state, recipe, count, clock_s, 0.0, place, error);
            if status == OK { Ok(now.assume_init()) } else { Err(status) }
        }
    };
    let now: cupwright_live_now = take(&[dose, pour], 2).unwrap();
    assert_eq!((now.step, now.cue), (0, cupwright_cue::AddCoffee as i32));
    assert_eq!(take(&[], 0).unwrap().why, cupwright_why::Done as i32);
    assert!(take(&[pour; 24], 24).is_ok());
    assert_eq!(take(&[pour; 1], 25).unwrap_err(), OUT_OF_RANGE);
    assert_eq!(take(&[dose, none], 2).unwrap_err(), UNKNOWN_CHOICE);
    assert_eq!(take(&[dose, bad], 2).unwrap_err(), OUT_OF_RANGE);
}

#[test]
fn what_is_told_is_weighed() {
    let mut state = follower();
    assert_eq!(of_a_follower(state.as_mut_ptr(), true), [OK; 8]);
    let mut weighed = MaybeUninit::uninit();
    // SAFETY: the state was begun, the place is there.
    let status =
        unsafe { cupwright_follow_weighed(state.as_ptr(), weighed.as_mut_ptr(), null_mut()) };
    assert_eq!(status, OK);
    // SAFETY: the call wrote it.
    let weighed: cupwright_live_weighed = unsafe { weighed.assume_init() };
    assert_eq!((weighed.dose_g, weighed.beverage_g, weighed.lead_s), (15.0, 200.0, 0.5));
    assert_eq!((weighed.has_dose, weighed.has_beverage), (1, 1));
}
