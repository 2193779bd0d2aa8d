//! Each rule of a watched scale just on either side of its limit, from states made by hand.

use super::*;

const DIVISION: f64 = 0.1;

fn point(time: f64, mass: f64) -> Point {
    Point { time: fixed(time), mass: fixed(mass) }
}

fn known<M: Measure>(x: f64) -> M {
    M::accept(x).unwrap()
}

/// The least that two numbers differ by.
const LEAST: Fixed = Wrapping(1);

/// A scale on which 100 g lie, and so many points that rise at so many grams a second, the last in the
/// twentieth second.
fn sloping(flow: f64, points: u8) -> Scale {
    let mut scale = Scale::new(Setup::COMMON);
    let first = 20.0 - 0.125 * f64::from(points.saturating_sub(1));
    scale.take(known(first), known(100.0)).unwrap();
    scale.line.begin(&[point(first, 100.0)]);
    for at in 1..points {
        let after = 0.125 * f64::from(at);
        scale.line.take(point(first + after, 100.0 + flow * after), scale.noise.variance);
    }
    scale.line.flow = fixed(flow);
    (scale.since, scale.calm) = (ZERO, ZERO);
    scale
}

/// The same, of which the level is so much above what is put down.
fn gaining(flow: f64, points: u8, gain: Fixed) -> Scale {
    let mut scale = sloping(flow, points);
    scale.line.level = fixed(100.0) + gain;
    scale
}

const NOW: Fixed = fixed(20.0);

fn heard(of: impl FnOnce(&mut Option<Heard>)) -> Option<(Happening, f64, f64)> {
    let mut event = None;
    of(&mut event);
    event.map(|heard| (heard.happening, number(heard.time), heard.change))
}

/// Constants are rounded to 2⁻²⁰.
fn near(a: f64, b: f64) {
    assert!((a - b).abs() < 1e-3 * (1.0 + b.abs()), "{a} {b}");
}

/// Noise of three deviations, as several rules allow for.
fn three(scale: &Scale) -> Fixed {
    scale.noise(fixed(3.0))
}

#[test]
fn what_waits_comes_out_as_it_went_in() {
    for happening in Happening::ALL {
        for time in [-3.5, 0.0, 1e6 + 0.25] {
            let one = Heard { happening: *happening, time: fixed(time), change: -2.5 };
            assert_eq!(Waiting::of(one).heard(), Some(one));
        }
    }
    assert_eq!(Waiting::NONE.heard(), None);
}

/// The fastest water, 5.7 deviations of 0.05 g, and a division.
#[test]
fn how_far_water_reaches() {
    let scale = sloping(0.0, 1);
    near(number(scale.noise(fixed(3.0))), 0.15);
    near(number(scale.reach(ZERO)), 5.7 * 0.05 + DIVISION);
    near(number(scale.reach(fixed(0.5))), 7.5 + 5.7 * 0.05 + DIVISION);
    // Down half as far.
    let reach = |change: Fixed| {
        let to = Point { time: NOW + POINT, mass: fixed(100.0) + change };
        scale.is_reached(to, fixed(0.5))
    };
    let (up, down) = (scale.reach(fixed(0.5)), scale.reach(fixed(0.25)));
    assert!(reach(up) && !reach(up + LEAST) && reach(-down) && !reach(-down - LEAST));
}

/// Four readings at forty a second are a point, two at twenty, one at ten; it is their mean.
#[test]
fn readings_make_points() {
    for (rate, of) in [(40.0, 4_u8), (20.0, 2), (10.0, 1), (80.0, 8)] {
        let mut scale = Scale::new(Setup::COMMON);
        scale.take(known(1.0), known(100.0)).unwrap();
        let mut masses = 0.0;
        let mut times = 0.0;
        for reading in 1..=3 * of {
            let time = 1.0 + f64::from(reading) / rate;
            let mass = 100.0 + 0.02 * f64::from(reading % 3);
            scale.take(known(time), known(mass)).unwrap();
            (masses, times) = (masses + mass, times + time);
            assert_eq!(scale.readings, reading % of, "{rate}");
            if scale.readings == 0 {
                let [newest, ..] = scale.line.last_three();
                assert!((number(newest.mass) - masses / f64::from(of)).abs() < 1e-5);
                assert!((number(newest.time) - times / f64::from(of)).abs() < 1e-5);
                (masses, times) = (0.0, 0.0);
            }
        }
    }
}

/// Three readings lie at 100 g, the fourth jumps: the point is of the three.
#[test]
fn no_point_lies_astride_a_jump() {
    let newest = |jump: f64| {
        let mut scale = Scale::new(Setup::COMMON);
        for fortieth in 0..7 {
            scale.take(known(f64::from(fortieth) / 40.0), known(100.0)).unwrap();
        }
        assert_eq!(scale.readings, 2);
        let reach = number(scale.reach(fixed(0.025)));
        scale.take(known(7.0 / 40.0), known(100.0 + reach + jump)).unwrap();
        scale.readings
    };
    assert_eq!((newest(0.001), newest(-0.001)), (1, 3));
}

#[test]
fn a_flow_is_seen_from_the_third_point_on_where_nothing_disturbs() {
    let flow = |points| sloping(3.0, points).seen(None).unwrap().flow.map(Flow::grams_per_second);
    assert_eq!((flow(2), flow(3)), (None, Some(3.0)));
    let mut scale = sloping(3.0, 9);
    scale.hold.begin(point(20.1, 300.0));
    let seen = scale.seen(None).unwrap();
    assert_eq!((seen.flow, seen.doing), (None, Doing::Disturbed));
    let doing = |phase| Scale { phase, ..sloping(0.0, 9) }.seen(None).unwrap().doing;
    assert_eq!(doing(Phase::Still), Doing::Still);
    assert_eq!(doing(Phase::Pouring), Doing::Pouring);
    assert_eq!(doing(Phase::Settling), Doing::Settling);
    assert_eq!(doing(Phase::Dripping), Doing::Dripping);
}

/// A pour is heard at the second point that asks for it.
fn starts(mut scale: Scale) -> bool {
    let first = scale.starts(NOW);
    assert!(!first, "one point is none");
    scale.starts(NOW)
}

#[test]
fn a_pour_begins_with_a_flow_that_is_sure_and_brings_something() {
    let with = |flow: f64, of: fn(&mut Scale)| {
        let mut scale = sloping(flow, 12);
        of(&mut scale);
        starts(scale)
    };
    assert!(with(0.9, |_| {}) && with(17.9, |_| {}));
    // More than 0.8 g/s, less than a fifth above the fastest, 18 g/s.
    assert!(
        !with(0.9, |scale| scale.line.flow = ON) && with(0.9, |scale| scale.line.flow = ON + LEAST)
    );
    let most = product(fixed(1.2), fixed(15.0));
    let mut fast = sloping(17.9, 12);
    fast.line.flow = most;
    assert!(!starts(fast));
    fast.line.flow = most - LEAST;
    assert!(starts(fast));
    // More than a quarter of a gram, beyond the noise.
    let least = fixed(0.25) + three(&fast);
    assert!(!starts(gaining(2.0, 12, least)) && starts(gaining(2.0, 12, least + LEAST)));
    // A hand that was just put down wavers by a share of its weight.
    let wavering = |ago: f64, gain: Fixed| {
        let mut scale = gaining(2.0, 12, gain);
        scale.hold = Hold::ended(NOW - fixed(ago));
        scale.hold.suspect(fixed(1024.0));
        starts(scale)
    };
    let least = (fixed(1024.0) >> WAVER) + three(&fast);
    assert!(!wavering(2.5, least) && wavering(2.5, least + LEAST) && wavering(2.501, least));
    // Three points, if each is higher than the last.
    assert!(starts(gaining(4.0, 3, fixed(2.0))) && !starts(gaining(4.0, 2, fixed(2.0))));
    let mut one_step = gaining(4.0, 3, fixed(2.0));
    one_step.line.begin(&[point(20.0, 102.0), point(19.9, 100.0), point(19.8, 100.0)]);
    assert!(!starts(one_step), "one step alone is no flow");
    // Four deviations of the flow.
    let mut unsure = gaining(2.0, 6, fixed(9.0));
    unsure.noise = Noise::of(fixed(0.45));
    assert!(!starts(unsure));
    unsure.noise = Noise::of(fixed(0.15));
    assert!(starts(unsure));
}

#[test]
fn points_that_ask_for_a_pour_must_follow_each_other() {
    let mut scale = sloping(3.0, 12);
    assert!(!scale.starts(NOW));
    scale.line.flow = ZERO;
    assert!(!scale.starts(NOW));
    scale.line.flow = fixed(3.0);
    assert!(!scale.starts(NOW) && scale.starts(NOW));
}

#[test]
fn what_falls_back_was_no_water() {
    let falls = |phase, flow: Fixed, points, gain: Fixed, suspected: f64| {
        let mut scale = gaining(-2.0, points, gain);
        (scale.phase, scale.line.flow) = (phase, flow);
        scale.hold.suspect(fixed(suspected));
        scale.falls()
    };
    let (fast, low) = (fixed(-2.0), fixed(0.25) - LEAST);
    for phase in [Phase::Pouring, Phase::Settling, Phase::Dripping] {
        assert!(falls(phase, fast, 9, low, 0.0) && !falls(phase, fast, 9, fixed(0.25), 0.0));
        assert!(falls(phase, -ON - LEAST, 9, low, 0.0) && !falls(phase, -ON, 9, low, 0.0));
        assert!(falls(phase, fast, 3, low, 0.0) && !falls(phase, fast, 2, low, 0.0));
    }
    let low = fixed(-0.25) - LEAST;
    assert!(
        falls(Phase::Still, fast, 9, low, 400.0)
            && !falls(Phase::Still, fast, 9, fixed(-0.25), 400.0)
    );
    assert!(!falls(Phase::Still, fast, 9, low, 0.0), "nothing was put down");
}

#[test]
fn a_hand_leaves_no_water_and_no_weight() {
    let last = [point(20.0, 103.0), point(19.9, 103.0), point(19.8, 103.0)];
    for (phase, happening) in [
        (Phase::Pouring, Some(Happening::PourStopped)),
        (Phase::Dripping, Some(Happening::DripStopped)),
        (Phase::Settling, None),
    ] {
        let mut scale = gaining(2.0, 9, fixed(3.0));
        (scale.phase, scale.since) = (phase, fixed(15.0));
        let (told, since, off) = heard(|event| scale.hand(last, event)).unwrap();
        assert_eq!((told, since), (Happening::Disturbed, 15.0));
        near(off, 3.0);
        assert_eq!(
            (scale.phase, scale.level(), scale.hold.told()),
            (Phase::Still, 100.0, Told::Disturbed)
        );
        assert_eq!(
            scale.pending.next().map(|heard| (heard.happening, heard.change)),
            happening.map(|h| (h, 0.0))
        );
        assert_eq!((scale.hold.doing(), scale.hold.suspected()), (Some(Doing::Disturbed), ZERO));
    }
    // What was put down and weighs less now: 600 g were moved, 580 g still press.
    let mut scale = sloping(0.0, 9);
    scale.line.level = fixed(700.0);
    scale.enter(|book| &mut book.moved);
    scale.hold.suspect(fixed(600.0));
    let last = last.map(|one| Point { mass: fixed(680.0), ..one });
    let (told, _, off) = heard(|event| scale.hand(last, event)).unwrap();
    assert_eq!((told, scale.level(), scale.book.moved), (Happening::Pressed, 100.0, 100.0));
    near(off, 580.0);
    near(number(scale.hold.left_by_press()), 0.58);
}

#[test]
fn a_pour_ends_when_the_flow_surely_does() {
    // Points that ask before it has ended.
    let asks = |flow: Fixed, points, gain: Fixed, since: f64, noise: f64| {
        let mut scale = gaining(0.0, points, gain);
        (scale.phase, scale.since) = (Phase::Pouring, fixed(since));
        scale.line.flow = flow;
        scale.noise = Noise::of(fixed(noise));
        (1..9).find(|_| heard(|event| scale.pour(NOW, event)).is_some())
    };
    let slow = OFF - LEAST;
    assert_eq!(
        (asks(slow, 9, fixed(50.0), 0.0, 0.05), asks(OFF, 9, fixed(50.0), 0.0, 0.05)),
        (Some(2), None)
    );
    assert_eq!(
        (asks(ZERO, 3, fixed(50.0), 0.0, 0.05), asks(ZERO, 2, fixed(50.0), 0.0, 0.05)),
        (Some(2), None)
    );
    // No more than 2.5 g/s on average: 50 g in twenty seconds.
    assert_eq!(asks(ZERO, 9, fixed(50.0) - LEAST, 0.0, 0.05), Some(4));
    assert_eq!(asks(ZERO, 9, fixed(25.0), 10.0, 0.05), Some(2), "since it began");
    // One deviation below 0.8 g/s: of nine points S_tt is 60/64.
    assert_eq!(asks(ZERO, 9, fixed(50.0), 0.0, 0.9), None);
    assert_eq!(asks(ZERO, 9, fixed(50.0), 0.0, 0.7), Some(2));
    assert_eq!(asks(fixed(0.3), 9, fixed(50.0), 0.0, 0.7), None);

    let ended = |gain: f64| {
        let mut scale = gaining(0.0, 9, fixed(gain));
        (scale.phase, scale.since, scale.asking) = (Phase::Pouring, fixed(19.0), 7);
        scale.hold.suspect(fixed(400.0));
        let told = heard(|event| scale.pour(NOW, event)).unwrap();
        assert_eq!(told, (Happening::PourStopped, 20.0, gain));
        assert_eq!((scale.phase, scale.since), (Phase::Settling, NOW));
        scale.hold.suspected() > ZERO
    };
    assert!(ended(10.0) && !ended(10.125), "so much water no hand makes");
}

#[test]
fn water_comes_to_rest_with_its_flow_or_after_three_seconds() {
    let settled = |waited: Fixed, flow: Fixed| {
        let mut scale = gaining(0.0, 9, fixed(30.0));
        (scale.phase, scale.since) = (Phase::Settling, NOW - waited);
        scale.line.flow = flow;
        let told = heard(|event| scale.settle(NOW, event));
        assert!(
            told.is_none()
                || (scale.phase, scale.book.poured, scale.under_way()) == (Phase::Still, 30.0, 0.0)
        );
        told
    };
    let told = Some((Happening::Settled, 20.0, 30.0));
    let (soon, late, calm) = (fixed(1.0) + LEAST, fixed(3.0) + LEAST, fixed(0.2) - LEAST);
    assert_eq!(
        (settled(soon, calm), settled(soon, -calm), settled(late, fixed(9.0))),
        (told, told, told)
    );
    assert_eq!(
        (settled(fixed(1.0), calm), settled(soon, fixed(0.2)), settled(soon, fixed(-0.2))),
        (None, None, None)
    );
    assert_eq!(settled(fixed(3.0), fixed(9.0)), None);
}

#[test]
fn a_drip_ends_a_second_after_its_flow() {
    let dripped = |waited: Fixed, flow: Fixed| {
        let mut scale = gaining(0.0, 9, fixed(4.0));
        (scale.phase, scale.since) = (Phase::Dripping, NOW - waited);
        scale.line.flow = flow;
        (heard(|event| scale.drip(NOW, event)), scale.since == NOW)
    };
    let (late, half) = (fixed(1.0) + LEAST, fixed(0.2) >> 1);
    assert_eq!(dripped(late, half), (Some((Happening::DripStopped, 20.0, 4.0)), true));
    assert_eq!(dripped(fixed(1.0), half), (None, false));
    assert_eq!(dripped(late, half + LEAST), (None, true), "it drips on");
}

/// A flow of 0.5 g/s that has lasted.
fn dripping(gain: Fixed) -> Scale {
    Scale { since: NOW - fixed(9.0), ..gaining(0.5, 20, gain) }
}

#[test]
fn a_drip_begins_after_a_second_of_sure_flow() {
    let begins =
        |scale: Scale| {
            let mut scale = scale;
            let told = heard(|event| scale.drift(NOW, POINT, event));
            assert_eq!(scale.phase == Phase::Dripping, told.is_some());
            assert!(told.is_none_or(
                |(happening, time, _)| (happening, time) == (Happening::DripStarted, 20.0)
            ));
            told.is_some()
        };
    let least = fixed(0.3) + three(&dripping(ZERO));
    assert!(begins(dripping(least + LEAST)) && !begins(dripping(least)));
    let since = |waited: Fixed| Scale { since: NOW - waited, ..dripping(fixed(2.0)) };
    assert!(begins(since(DRIP + LEAST)) && !begins(since(DRIP)));
    let flowing = |flow: Fixed| {
        let mut scale = dripping(fixed(0.9));
        scale.line.flow = flow;
        begins(scale)
    };
    assert!(flowing(DRIFT) && !flowing(DRIFT - LEAST) && !flowing(-DRIFT));
    // Not within three seconds after something moved.
    let after = |ago: Fixed| {
        let mut scale = dripping(fixed(2.0));
        scale.hold = Hold::ended(NOW - ago);
        begins(scale)
    };
    assert!(after(fixed(3.0) + LEAST) && !after(fixed(3.0)));
    // A hand wavers by some grams.
    let suspected = |gain: Fixed| {
        let mut scale = dripping(gain);
        scale.hold.suspect(fixed(400.0));
        begins(scale)
    };
    let least = fixed(2.0) + three(&dripping(ZERO));
    assert!(suspected(least + LEAST) && !suspected(least));
    let mut unsure = dripping(fixed(3.0));
    unsure.noise = Noise::of(fixed(0.5));
    assert!(!begins(unsure));
}

/// The level that is put down follows by a second; what is too quick for drift and too small for a jump moved.
#[test]
fn drift_is_put_down_little_by_little() {
    let still = |gain: f64, calm: f64| {
        let mut scale = gaining(0.0, 20, fixed(gain));
        (scale.calm, scale.phase) = (NOW - fixed(calm), Phase::Still);
        scale
    };
    let mut scale = still(0.5, 9.0);
    assert_eq!(heard(|event| scale.drift(NOW, fixed(0.25), event)), None);
    assert_eq!((scale.book.drifted, scale.book.poured, scale.since), (0.125, 0.0, NOW));
    assert_eq!(heard(|event| scale.drift(NOW, fixed(4.0), event)), None);
    assert_eq!(scale.book.drifted, 0.5, "no more than there is");
    // Down alike.
    let mut scale = still(-0.5, 9.0);
    scale.drift(NOW, fixed(0.5), &mut None);
    assert_eq!((scale.book.drifted, number(fixed(scale.book.anchor))), (-0.25, 99.75));
    // A gram and some noise is no drift.
    let most = number(fixed(1.0) + three(&scale));
    for gain in [most, -most] {
        let mut scale = still(gain, 9.0);
        assert_eq!(heard(|event| scale.drift(NOW, POINT, event)), None);
        let mut scale = still(gain * 1.001, 9.0);
        let (happening, ..) = heard(|event| scale.drift(NOW, POINT, event)).unwrap();
        assert!(happening != Happening::Drifted && scale.book.drifted == 0.0, "{happening:?}");
    }
    // Just after something moved all is drift at once.
    let moved = |ago: Fixed| {
        let mut scale = still(0.5, 0.5);
        scale.hold = Hold::ended(NOW - ago);
        scale.drift(NOW, fixed(0.25), &mut None);
        scale.book.drifted
    };
    assert_eq!((moved(fixed(2.0)), moved(fixed(2.0) + LEAST)), (0.5, 0.125));
}

#[test]
fn two_grams_of_drift_are_told() {
    let told = |drifted: f64, before: f64| {
        let mut scale = gaining(0.0, 20, ZERO);
        (scale.calm, scale.book.drifted) = (ZERO, drifted);
        scale.drift_told = (before * 1024.0) as i32;
        let told = heard(|event| scale.drift(NOW, POINT, event));
        (told, f64::from(scale.drift_told) / 1024.0)
    };
    let drifted = |change| Some((Happening::Drifted, 20.0, change));
    assert_eq!((told(2.0, 0.0), told(2.25, 0.0)), ((None, 0.0), (drifted(2.25), 2.25)));
    assert_eq!((told(-2.25, 0.0), told(-2.25, -1.0)), ((drifted(-2.25), -2.25), (None, -1.0)));
    assert_eq!(told(5.5, 3.0), (drifted(2.5), 5.5));
}

/// After readings that disturb, at rest elsewhere: what was put down or taken off.
fn elsewhere(
    of: impl FnOnce(&mut Scale),
    mass: f64,
    told: Told,
) -> (Scale, Option<(Happening, f64, f64)>) {
    let mut scale = sloping(0.0, 9);
    of(&mut scale);
    for at in 0..3 {
        let one = point(20.5 + 0.125 * f64::from(at), mass);
        match at {
            0 => scale.hold.begin(one),
            _ => _ = scale.hold.take(one),
        }
    }
    if told != Told::Nothing {
        scale.hold = Hold::off(told, *scale.hold.last_three(), fixed(mass - 100.0));
    }
    let (time, elapsed) = (fixed(21.0), fixed(0.5));
    let heard = heard(|event| scale.elsewhere(time, elapsed, event));
    assert_eq!(scale.under_way(), 0.0, "all is put down");
    (scale, heard)
}

#[test]
fn a_thing_is_put_down_taken_off_and_put_back() {
    let (mut scale, told) = elsewhere(|_| {}, 350.0, Told::Nothing);
    let (happening, time, weight) = told.unwrap();
    assert_eq!((happening, time, scale.phase), (Happening::Placed, 20.5, Phase::Still));
    near(weight, 250.0);
    near(scale.book.moved, 350.0);
    assert!(scale.hold.suspected() > ZERO && scale.hold.ended_at(fixed(21.0), ZERO));
    let mut event = None;
    scale.line.level = fixed(60.0);
    scale.moved(fixed(30.0), -290.0, &mut event);
    assert_eq!(
        event.take().map(|heard| (heard.happening, heard.change)),
        Some((Happening::Lifted, -290.0))
    );
    near(scale.book.moved, 60.0);
    scale.line.level = fixed(348.0);
    scale.moved(fixed(40.0), 288.0, &mut event);
    assert_eq!(
        event.take().map(|heard| (heard.happening, heard.change)),
        Some((Happening::Returned, -2.0))
    );
}

/// A display that shows nothing after a step from more than a gram was set to zero, if that was sudden.
#[test]
fn a_display_is_set_to_zero() {
    let happening = |of: fn(&mut Scale), mass: f64, told| elsewhere(of, mass, told).1.unwrap().0;
    assert_eq!(happening(|_| {}, 0.0, Told::Nothing), Happening::Tared);
    let (scale, told) = elsewhere(|_| {}, 0.0, Told::Nothing);
    near(told.unwrap().2, -100.0);
    near(scale.book.tared, -100.0);
    // Two and a half divisions are nothing.
    assert_eq!(happening(|_| {}, 0.249, Told::Nothing), Happening::Tared);
    assert_eq!(happening(|_| {}, -0.249, Told::Nothing), Happening::Tared);
    assert_eq!(happening(|_| {}, 0.251, Told::Nothing), Happening::Lifted);
    assert_eq!(happening(|_| {}, -0.251, Told::Nothing), Happening::Lifted);
    // Or three and a half deviations of the noise.
    let noisy: fn(&mut Scale) = |scale| scale.noise = Noise::of(fixed(0.2));
    assert_eq!(
        (happening(noisy, 0.69, Told::Nothing), happening(noisy, 0.71, Told::Nothing)),
        (Happening::Tared, Happening::Lifted)
    );
    // From no more than a gram it is none.
    let low: fn(&mut Scale) = |scale| {
        scale.line.level = fixed(1.0);
        scale.enter(|book| &mut book.moved);
    };
    assert_eq!(happening(low, 0.0, Told::Nothing), Happening::Lifted);
    let higher: fn(&mut Scale) = |scale| {
        scale.line.level = fixed(1.001);
        scale.enter(|book| &mut book.moved);
    };
    assert_eq!(happening(higher, 0.0, Told::Nothing), Happening::Tared);
}

/// What rose no faster than water, after a disturbance that was told, could be water.
#[test]
fn what_could_be_water_is_unclear() {
    let after = |mass: f64, told| {
        let (scale, told) = elsewhere(|_| {}, mass, told);
        (told.unwrap().0, scale.book.unsure, scale.book.unclear)
    };
    // 15 g/s for half a second.
    let (happening, unsure, unclear) = after(107.499, Told::Disturbed);
    assert_eq!(happening, Happening::Unclear);
    near(unsure, 7.499);
    near(unclear, 7.499);
    assert_eq!(after(107.501, Told::Disturbed).0, Happening::Placed);
    assert_eq!(after(107.499, Told::Nothing).0, Happening::Placed);
    assert_eq!(after(99.0, Told::Disturbed).0, Happening::Lifted);
    // A hand that lets go is told first.
    let (mut scale, told) = elsewhere(|_| {}, 104.0, Told::Pressed);
    let (happening, time, change) = told.unwrap();
    assert_eq!((happening, time), (Happening::Released, 21.0));
    near(change, 4.0);
    assert_eq!(scale.pending.next().map(|heard| heard.happening), Some(Happening::Unclear));
}

/// The end of a stream no longer pushes; a spoon that was taken for water falls back to where it began.
#[test]
fn a_pour_that_ends_in_a_step() {
    let pouring = |gain: f64| {
        move |scale: &mut Scale| {
            (scale.phase, scale.since) = (Phase::Pouring, fixed(9.0));
            scale.line.level = fixed(100.0 + gain);
            scale.line.flow = fixed(4.0);
        }
    };
    // A quarter of a second's flow and how far water reaches in a tenth.
    let step = 1.0 + 1.5 + 5.7 * 0.05 + 0.1;
    let mut ended = sloping(0.0, 9);
    pouring(50.0)(&mut ended);
    for (at, mass) in [(0, 147.5), (1, 147.5), (2, 147.5)] {
        let one = point(20.5 + 0.125 * f64::from(at), mass);
        match at {
            0 => ended.hold.begin(one),
            _ => _ = ended.hold.take(one),
        }
    }
    let told = heard(|event| ended.elsewhere(fixed(21.0), fixed(0.5), event)).unwrap();
    assert_eq!((told.0, told.1, ended.phase), (Happening::PourStopped, 20.5, Phase::Settling));
    near(told.2, 47.5);
    // A larger step is a thing: the pour ends with what it had.
    for off in [step + 0.01, -step - 0.01] {
        let (mut scale, told) = elsewhere(pouring(50.0), 150.0 + off, Told::Nothing);
        assert_eq!((told.unwrap().0, told.unwrap().2), (Happening::PourStopped, 50.0));
        let next = scale.pending.next().map(|heard| heard.happening);
        assert_eq!(next, Some(if off > 0.0 { Happening::Placed } else { Happening::Lifted }));
        near(scale.book.poured, 50.0);
    }
    // Less than ten grams that fall back by less than ten, to within a quarter of where they began.
    let spoon = |gain: f64, mass: f64| {
        let mut scale = sloping(0.0, 9);
        pouring(gain)(&mut scale);
        scale.hold.begin(point(20.5, mass));
        scale.hold.take(point(20.625, mass));
        scale.hold.take(point(20.75, mass));
        heard(|event| scale.elsewhere(fixed(21.0), fixed(0.5), event)).unwrap().0
            == Happening::Disturbed
    };
    assert!(spoon(9.999, 100.0) && !spoon(10.0, 100.001));
    assert!(spoon(9.0, 100.249) && !spoon(9.0, 100.251));
    assert!(spoon(5.0, 95.001) && !spoon(5.0, 94.999));
}

/// Readings that come after a gap.
fn after_gap(of: impl FnOnce(&mut Scale), gap: f64, mass: f64) -> (Scale, (Happening, f64, f64)) {
    let mut scale = sloping(0.0, 9);
    of(&mut scale);
    let to = point(20.0 + gap, mass);
    let told = heard(|event| scale.lost(to, fixed(gap), event)).unwrap();
    (scale, told)
}

#[test]
fn what_a_gap_hides() {
    let reach = number(sloping(0.0, 9).reach(POINT));
    // At rest: a change is unclear from where noise cannot make it.
    for (off, is_unclear) in [(reach - 0.001, false), (reach + 0.001, true), (-reach - 0.001, true)]
    {
        let (scale, (happening, time, change)) = after_gap(|_| {}, 5.0, 100.0 + off);
        assert_eq!((happening, time, scale.phase), (Happening::Lost, 25.0, Phase::Still));
        near(change, off);
        near(scale.book.unsure, if is_unclear { off.abs() } else { 0.0 });
        near(scale.book.unclear, if is_unclear { off } else { 0.0 });
    }
    let pouring = |scale: &mut Scale| {
        (scale.phase, scale.line.flow, scale.asking) = (Phase::Pouring, fixed(4.0), 1);
        scale.hold.suspect(fixed(400.0));
    };
    // While it poured: 20 g in five seconds, give or take half of that, is the same pour.
    let phase = |mass: f64| {
        let (scale, (happening, _, change)) = after_gap(pouring, 5.0, mass);
        assert_eq!((happening, scale.hold.suspected()), (Happening::Lost, ZERO));
        near(change, mass - 100.0);
        (scale.phase, scale.book.unsure > 0.0, scale.asking == 0)
    };
    let on = (Phase::Pouring, true, true);
    assert_eq!(
        (phase(120.0), phase(130.0 + reach - 0.001), phase(110.0 - reach + 0.001)),
        (on, on, on)
    );
    let over = (Phase::Settling, true, true);
    assert_eq!((phase(130.0 + reach + 0.001), phase(110.0 - reach - 0.001)), (over, over));
    // Faster than 15 g/s, or less than before, it is no water.
    assert_eq!(phase(175.0 + reach - 0.01), over);
    assert_eq!(
        (phase(175.0 + reach + 0.01).0, phase(100.0 - reach - 0.01).0),
        (Phase::Still, Phase::Still)
    );
    assert_eq!(phase(100.0 - reach + 0.01), over);
    // Water that was coming to rest goes on doing so.
    let settling =
        |scale: &mut Scale| (scale.phase, scale.line.flow) = (Phase::Settling, fixed(4.0));
    assert_eq!(after_gap(settling, 5.0, 120.0).0.phase, Phase::Settling);
}

/// A hold is told after 0.8 s; a pour it interrupts is over.
#[test]
fn a_pour_that_is_disturbed_is_over() {
    let announced = |phase, mass: f64| {
        let mut scale = gaining(0.0, 9, fixed(6.0));
        (scale.phase, scale.since) = (phase, fixed(15.0));
        scale.hold.begin(point(20.125, mass));
        for at in 1..9 {
            scale.hold.take(point(20.125 + 0.125 * f64::from(at), mass));
        }
        let told = heard(|event| scale.announce(fixed(21.125), event)).unwrap();
        (told, scale.pending.next().map(|heard| (heard.happening, heard.change)), scale.phase)
    };
    let (told, next, phase) = announced(Phase::Pouring, 126.0);
    assert_eq!((told.0, told.1), (Happening::Disturbed, 20.125));
    near(told.2, 20.0);
    assert_eq!((next, phase), (Some((Happening::PourStopped, 6.0)), Phase::Settling));
    let (told, next, phase) = announced(Phase::Still, 200.0);
    assert_eq!((told.0, next, phase), (Happening::Pressed, None, Phase::Still));
    near(told.2, 94.0);
}

/// Back where it was, a hold is over: a hand that was told lets go.
#[test]
fn a_disturbance_ends_where_it_began() {
    let back = |told: Told, mass: f64| {
        let mut scale = sloping(0.0, 9);
        let three = [point(20.5, mass), point(20.4, mass), point(20.3, 400.0)];
        scale.hold = Hold::off(told, three, fixed(300.0));
        let told = heard(|event| scale.held(point(20.6, mass), event));
        assert!(told.is_none_or(|told| (told.2 - 0.1).abs() < 1e-3), "what is left of the press");
        (told.map(|told| told.0), scale.hold.is_on(), scale)
    };
    let (told, is_on, scale) = back(Told::Pressed, 100.1);
    assert_eq!((told, is_on), (Some(Happening::Released), false));
    assert_eq!((scale.since, scale.calm), (fixed(20.6), fixed(20.6)));
    let (told, is_on, _) = back(Told::Disturbed, 100.1);
    assert_eq!((told, is_on), (None, false));
    // A press leaves a thousandth of itself as creep, other things do not.
    let mut scale = sloping(0.0, 9);
    let reach = number(scale.reach(fixed(0.125)));
    let near_enough = |press: f64, off: f64| {
        let mut scale = sloping(0.0, 9);
        let three = [0.375, 0.25, 0.125].map(|after| point(20.0 + after, 100.0 + off));
        scale.hold = Hold::off(Told::Pressed, three, fixed(press));
        scale.held(point(20.5, 100.0 + off), &mut None);
        !scale.hold.is_on()
    };
    assert!(near_enough(1000.0, reach + 0.99) && !near_enough(1000.0, reach + 1.01));
    // One point that is back was a knock, and the line goes on.
    scale.hold.begin(point(20.125, 140.0));
    scale.held(point(20.25, 100.0), &mut None);
    assert!(!scale.hold.is_on() && scale.line.weight() == 10);
}

/// A load beyond the capacity, less a division, counted from the first zero.
#[test]
fn more_than_the_scale_can_weigh() {
    let doing = |tared: f64, mass: f64| {
        let mut scale = Scale::new(Setup::COMMON);
        scale.take(known(1.0), known(500.0)).unwrap();
        scale.zeroed(known(tared));
        scale.take(known(1.1), known(mass)).unwrap().doing
    };
    let (over, under) = (Doing::Overloaded, Doing::Disturbed);
    assert_eq!((doing(0.0, 1999.901), doing(0.0, 1999.899)), (over, under));
    assert_eq!((doing(500.0, 1499.901), doing(500.0, 1499.899)), (over, under));
}

/// Firmware that zeroes its display between the readings of a point, or while something is held.
#[test]
fn a_zero_that_is_told_moves_nothing() {
    let mut scale = Scale::new(Setup::COMMON);
    for fortieth in 0..7 {
        scale.take(known(f64::from(fortieth) / 40.0), known(100.0)).unwrap();
    }
    assert_eq!(scale.readings, 2);
    scale.zeroed(known(60.0));
    for fortieth in 7..90 {
        let seen = scale.take(known(f64::from(fortieth) / 40.0), known(40.0)).unwrap();
        assert_eq!((seen.event, seen.doing, seen.level.grams()), (None, Doing::Still, 40.0));
    }
    assert_eq!((scale.book.tared, scale.book.moved, scale.book.anchor), (-60.0, 100.0, 40.0));
    // A knock that is held while the display is zeroed, and over afterwards.
    scale.hold.begin(point(2.25, 70.0));
    scale.zeroed(known(30.0));
    assert_eq!(scale.hold.last_three(), &[point(2.25, 40.0); 3]);
}

/// What poured before counts no more; a pour going on is the first run.
#[test]
fn water_counted_anew() {
    let u = |phase| {
        let mut scale = gaining(4.0, 9, fixed(30.0));
        (scale.phase, scale.runs, scale.calm) = (phase, 5, scale.line.time());
        scale.count_anew();
        assert_eq!(
            (scale.poured().unwrap().grams(), scale.runs),
            (0.0, u8::from(phase != Phase::Still))
        );
        let counted = if phase == Phase::Still { 100.0 } else { 130.0 };
        assert_eq!((scale.book.moved, scale.book.anchor), (counted, counted));
        scale.poured_uncertainty().unwrap().grams()
    };
    assert_eq!(u(Phase::Still), 0.0);
    near(u(Phase::Pouring), 0.08 * sqrt(2.0));
}

/// A run lasts from a second before it was heard, a pour while water settles from then; a drip that grows is one run.
#[test]
fn runs_of_water_are_counted_and_timed() {
    let turned = |from, to| {
        let mut scale = sloping(0.0, 9);
        (scale.phase, scale.calm, scale.runs, scale.asking) = (from, fixed(12.0), 3, 2);
        scale.turn(to, NOW);
        assert_eq!((scale.phase, scale.since, scale.asking), (to, NOW, 0));
        (number(scale.calm), scale.runs)
    };
    use Phase::{Dripping, Pouring, Settling, Still};
    assert_eq!((turned(Still, Pouring), turned(Still, Dripping)), ((19.0, 4), (19.0, 4)));
    assert_eq!(turned(Settling, Pouring), (20.0, 4));
    assert_eq!((turned(Dripping, Pouring), turned(Pouring, Settling)), ((12.0, 3), (12.0, 3)));
    for from in [Still, Settling, Dripping] {
        assert_eq!(turned(from, Still), (20.0, 3));
    }
}

#[test]
fn points_and_readings_just_at_a_gap_or_a_jump() {
    let lost = |gap: Fixed| {
        let mut scale = sloping(0.0, 9);
        heard(|event| scale.point(Point { time: NOW + gap, mass: fixed(100.0) }, event)).is_some()
    };
    assert!(!lost(GAP) && lost(GAP + LEAST));
    // A reading a second after the last belongs to the same point, and one just as far off as water reaches.
    let mut scale = Scale::new(Setup::COMMON);
    for (time, mass) in [(1.0, 100.0), (1.03125, 100.0), (2.03125, 104.0)] {
        scale.take(known(time), known(mass)).unwrap();
    }
    let [newest, ..] = scale.line.last_three();
    assert_eq!((number(newest.mass), number(newest.time)), (102.0, 1.53125));
    scale.take(known(2.0625), known(104.0)).unwrap();
    let mean = scale.gathered.mean(scale.readings).mass;
    let jumps = |off: Fixed| scale.jumps(Point { time: fixed(2.1), mass: mean + off }, fixed(0.03));
    let reach = scale.reach(fixed(0.03));
    assert!(!jumps(reach) && jumps(reach + LEAST) && !jumps(-reach) && jumps(-reach - LEAST));
}

/// The noise of readings that waver by 0.2 g is found, and that of a still display is a third of a division.
#[test]
fn the_noise_is_followed() {
    let noise = |waver: f64| {
        let mut scale = Scale::new(Setup::COMMON);
        for tenth in 0..200_u8 {
            let mass = 100.0
                + waver
                    * f64::from(
                        [0, 1, 0, -1, 1, -1].into_iter().nth(usize::from(tenth % 6)).unwrap(),
                    );
            scale.take(known(f64::from(tenth) / 10.0), known(mass)).unwrap();
        }
        number(scale.noise(fixed(1.0)))
    };
    near(noise(0.0), 0.3055 * DIVISION);
    let wavering = noise(0.2);
    assert!(wavering > 0.1 && wavering < 0.3, "{wavering}");
}

fn judged(mut scale: Scale) -> Option<(Happening, f64, f64)> {
    let first = heard(|event| scale.judge(NOW, POINT, event));
    first.or(heard(|event| scale.judge(NOW, POINT, event)))
}

/// It began when what it has brought by then began to flow, and not half a second before it could.
#[test]
fn when_a_pour_began() {
    let judged = |scale: Scale| {
        let mut scale = Scale { asking: 1, ..scale };
        heard(|event| scale.judge(NOW, POINT, event)).unwrap()
    };
    let (happening, began, gain) = judged(sloping(4.0, 12));
    assert_eq!(happening, Happening::PourStarted);
    near(gain, 5.5);
    near(began, 18.625);
    let (_, began, _) = judged(Scale { since: fixed(19.5), ..sloping(4.0, 12) });
    assert_eq!(began, 19.0);
    // Water that settles is put down before the next pour counts.
    let mut settling = Scale { phase: Phase::Settling, asking: 1, ..sloping(4.0, 12) };
    let (happening, began, gain) = heard(|event| settling.judge(NOW, POINT, event)).unwrap();
    assert_eq!((happening, began, gain), (Happening::PourStarted, 20.0, 0.0));
    near(settling.book.poured, 5.5);
}

#[test]
fn no_pour_begins_right_after_something_moved() {
    let after = |phase, ago: Fixed| {
        let mut scale = Scale { phase, ..sloping(4.0, 12) };
        scale.hold = Hold::ended(NOW - ago);
        judged(scale).is_some()
    };
    assert!(!after(Phase::Still, QUIET) && after(Phase::Still, QUIET + LEAST));
    assert!(after(Phase::Settling, QUIET), "water that was coming may come again");
}

/// Of a line of six points and more the last two may lie lower by its noise.
#[test]
fn a_long_line_rises_but_for_its_noise() {
    let rising = |points: usize, dip: f64| {
        let mut scale = gaining(1.0, 9, fixed(3.0));
        let all = [0.75 - dip, 0.75, 0.5, 0.375, 0.25, 0.125, 0.0].map(|rise| 100.0 + rise);
        let mut time = 20.125;
        let all = all.map(|mass| {
            time -= 0.125;
            point(time, mass)
        });
        let (some, _) = all.split_at(points);
        scale.line.begin(some);
        (scale.line.flow, scale.line.level) = (fixed(1.0), fixed(103.0));
        scale.noise = Noise::of(fixed(0.02));
        starts(scale)
    };
    // 0.3 of 0.125 g are looked for, three deviations are 0.06 g.
    assert!(rising(6, 0.02) && rising(7, 0.02) && !rising(7, 0.024));
    assert!(!rising(5, 0.02) && rising(5, -0.038));
}

/// Eight points after something moved a pour is not heard, whether they ask for one or not; then two are needed.
#[test]
fn what_moved_is_waited_for() {
    let heard_after = |asking_not: u8| {
        let mut scale = sloping(3.0, 12);
        scale.wait();
        (1..30).find(|at| {
            scale.line.flow = if *at > asking_not { fixed(3.0) } else { ZERO };
            scale.starts(NOW)
        })
    };
    assert_eq!([0, 5, 8, 9].map(heard_after), [Some(10), Some(10), Some(10), Some(11)]);
    let mut pouring = Scale { phase: Phase::Pouring, ..sloping(3.0, 12) };
    pouring.wait();
    assert_eq!(pouring.asking, 0);
}

/// While it pours, a point is back near where the flow leads, which may have changed by half meanwhile.
#[test]
fn a_pour_goes_on_through_a_knock() {
    let goes_on = |off: f64| {
        let mut scale = Scale { phase: Phase::Pouring, ..sloping(4.0, 12) };
        scale.hold.begin(point(20.125, 300.0));
        let to = scale.line.ahead(fixed(20.25)) + fixed(off);
        scale.held(Point { time: fixed(20.25), mass: to }, &mut None);
        !scale.hold.is_on()
    };
    // 15 g/s for a fifth of the step, noise and a division; 2 g/s for an eighth of a second.
    let reach = 15.0 * 0.025 + 5.7 * 0.05 + DIVISION + 0.25;
    assert!(goes_on(reach - 0.01) && goes_on(0.01 - reach));
    assert!(!goes_on(reach + 0.01) && !goes_on(-reach - 0.01));
}

/// Three points that rise as water does, from a splash that water can have brought.
#[test]
fn water_may_begin_with_a_splash() {
    let splashed = |gain: f64, told: Told| {
        let mut scale = sloping(0.0, 9);
        let points =
            [0.25, 0.125, 0.0].map(|before| point(20.5 - before, 100.0 + gain - 4.0 * before));
        let [first, second, third] = points;
        scale.hold.begin(first);
        scale.hold.take(second);
        if told != Told::Nothing {
            scale.hold = Hold::off(told, [second, first, first], ZERO);
        }
        scale.held(third, &mut None);
        (!scale.hold.is_on(), scale.asking < 0)
    };
    let reach = 15.0 * 0.125 + 5.7 * 0.05 + DIVISION;
    let (most, least) = (3.75 + reach, -reach);
    assert_eq!(
        (splashed(most - 0.01, Told::Nothing), splashed(most + 0.01, Told::Nothing).0),
        ((true, false), false)
    );
    assert_eq!(
        (splashed(least + 0.01, Told::Nothing).0, splashed(least - 0.01, Told::Nothing).0),
        (true, false)
    );
    assert_eq!(
        splashed(3.0, Told::Disturbed),
        (true, true),
        "after what was told a pour is waited for"
    );
}

/// Three divisions, or six deviations, and a quarter more after a quarter of a second.
#[test]
fn what_lies_within_some_divisions_is_at_rest() {
    let rests = |noise: f64, apart: f64| {
        let mut scale = sloping(0.0, 9);
        scale.noise = Noise::of(fixed(noise));
        scale.hold.begin(point(20.25, 300.0));
        scale.hold.take(point(20.375, 300.0));
        scale.held(point(20.5, 300.0 + apart), &mut None);
        !scale.hold.is_on()
    };
    assert!(rests(0.03, 0.374) && !rests(0.03, 0.376));
    assert!(rests(0.1, 0.749) && !rests(0.1, 0.751));
}

#[test]
fn a_minute_of_unrest_is_a_fault() {
    let mut scale = sloping(0.0, 9);
    scale.hold = Hold::off(Told::Disturbed, [point(20.0, 130.0); 3], ZERO);
    (0..3).for_each(|_| _ = scale.hold.take(point(80.5, 130.0)));
    let (happening, time, off) = heard(|event| scale.announce(fixed(80.5), event)).unwrap();
    assert_eq!((happening, time), (Happening::Restless, 80.5));
    near(off, 30.0);
}

/// Two seconds after water came a change is still of it; not where something moved since.
#[test]
fn what_comes_to_rest_is_water() {
    let poured = |calm: Fixed, moved: Option<Fixed>| {
        let mut scale = sloping(0.0, 20);
        scale.book.pour(100.0, 5.0);
        (scale.line.level, scale.calm) = (fixed(100.5), NOW - calm);
        if let Some(ago) = moved {
            scale.hold = Hold::ended(NOW - ago);
        }
        scale.drift(NOW, fixed(0.5), &mut None);
        (scale.book.poured, scale.book.drifted)
    };
    let (water, drift) = ((0.25, 0.0), (0.0, 0.25));
    assert_eq!((poured(fixed(2.0), None), poured(fixed(2.0) + LEAST, None)), (water, drift));
    let moved = AFTERMATH + QUIET;
    assert_eq!(
        (poured(fixed(1.0), Some(moved)), poured(fixed(1.0), Some(moved + LEAST))),
        (drift, water)
    );
}
