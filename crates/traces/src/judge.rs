//! One follower on one trace: what it heard against what was so.

use crate::family::Family;
use crate::follower::{Event, Follower, Make};
use crate::label::Label;
use crate::world::World;

/// What is known of one follower on one trace.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Verdict {
    /// Starts and stops of pours.
    pub pours: Tally,
    /// Tares, and what was put down, taken off and put back.
    pub handling: Tally,
    /// From water arriving to hearing so, of every pour that was heard.
    pub start_delays_s: Vec<f64>,
    /// From half and nine tenths of the flow arriving to saying so; of a pour where that is never
    /// said, as long as it was looked for.
    pub half_delays_s: Vec<f64>,
    pub most_delays_s: Vec<f64>,
    /// Errors of the flow, everywhere and where it is steady.
    pub flow_errors: Vec<f64>,
    pub steady_errors: Vec<f64>,
    /// Samples, and those that were answered with a flow.
    pub samples: usize,
    pub answers: usize,
    /// Error of the water at the end.
    pub water_error_g: f64,
    /// The standard uncertainty that was told of it.
    pub u_water_g: Option<f64>,
    /// What arrived past each aim.
    pub overshoots_g: Vec<f64>,
}

/// Events of some kinds.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Tally {
    pub happened: usize,
    pub missed: usize,
    pub spurious: usize,
}

/// An event, and when it may be heard.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Expected {
    event: Event,
    from_s: f64,
    to_s: f64,
}

/// How early an event may be heard: samples are not instants. Estimate.
const EARLY_S: f64 = 0.2;
/// How late a pour's start and its end may be heard.
const LATE_S: f64 = 1.5;
/// How early an end: flow below what counts as ended comes before the flow that counts as none.
const EARLY_STOP_S: f64 = 0.5;
/// How late other events may be heard: what was put down must come to rest.
const REST_S: f64 = 2.0;
/// How long after a pour's start its flow is steady, and how long before its stop.
const SETTLED_S: f64 = 1.5;
const CLOSING_S: f64 = 1.0;

/// What was so and what was said at one sample.
struct Moment {
    time_s: f64,
    true_g_s: f64,
    said_g_s: Option<f64>,
}

/// Plays a trace to a follower.
pub fn play(family: &Family, seed: u64, make: Make) -> Result<Verdict, String> {
    let mut world = World::new(family, seed)?;
    let mut follower = make(world.plate());
    Ok(listen(&mut world, &mut *follower))
}

/// Plays a world to a follower, whose cues its hand hears.
pub(crate) fn listen(world: &mut World, follower: &mut dyn Follower) -> Verdict {
    let mut moments = Vec::new();
    let mut heard = Vec::new();
    let mut aims = Vec::new();
    let mut aiming = false;
    let (mut water_g, mut u_water_g) = (0.0, None);
    while let Some(sample) = world.next() {
        let truth = world.truth();
        match world.wanted_g() {
            Some(grams) if !aiming => {
                follower.aim(grams);
                aims.push((truth.time_s, grams));
                aiming = true;
            }
            Some(_) => {}
            None => aiming = false,
        }
        let seen = follower.take(sample);
        water_g = seen.water_g.unwrap_or(water_g);
        u_water_g = seen.u_water_g.or(u_water_g);
        for event in seen.events {
            match event {
                Event::Cue => world.hear_stop(),
                _ => heard.push((event, truth.time_s)),
            }
        }
        moments.push(Moment {
            time_s: truth.time_s,
            true_g_s: truth.inflow_g_s,
            said_g_s: seen.flow_g_s,
        });
    }
    let mut verdict = verdict(&world.labels(), &heard, &moments);
    verdict.water_error_g = (water_g - world.truth().water_g).abs();
    verdict.u_water_g = u_water_g;
    verdict.overshoots_g = overshoots(&world.labels(), &aims);
    verdict
}

fn verdict(labels: &[Label], heard: &[(Event, f64)], moments: &[Moment]) -> Verdict {
    let mut verdict = Verdict { samples: moments.len(), ..Verdict::default() };
    let mut left: Vec<(Event, f64)> = heard.to_vec();
    for expected in labels.iter().flat_map(expected) {
        let tally = verdict.tally(expected.event);
        tally.happened += 1;
        let fits = |(event, at_s): &(Event, f64)| {
            *event == expected.event && (expected.from_s..=expected.to_s).contains(at_s)
        };
        match left.iter().position(fits) {
            None => tally.missed += 1,
            Some(at) => {
                let (_, heard_s) = left.remove(at);
                if expected.event == Event::PourStart {
                    verdict.start_delays_s.push(heard_s - (expected.from_s + EARLY_S));
                }
            }
        }
    }
    for (event, _) in left {
        verdict.tally(event).spurious += 1;
    }
    for moment in moments {
        if let Some(said_g_s) = moment.said_g_s {
            verdict.answers += 1;
            verdict.flow_errors.push(said_g_s - moment.true_g_s);
        }
    }
    for label in labels {
        if let Label::Pour { start_s, stop_s, .. } = *label {
            verdict.follow(moments, start_s, stop_s);
        }
    }
    verdict
}

impl Verdict {
    fn tally(&mut self, event: Event) -> &mut Tally {
        match event {
            Event::PourStart | Event::PourStop => &mut self.pours,
            _ => &mut self.handling,
        }
    }

    /// How the flow of one pour was followed.
    fn follow(&mut self, moments: &[Moment], start_s: f64, stop_s: f64) {
        let between = |from_s: f64, to_s: f64| {
            moments.iter().filter(move |moment| (from_s..=to_s).contains(&moment.time_s))
        };
        let steady = between(start_s + SETTLED_S, stop_s - CLOSING_S);
        self.steady_errors
            .extend(steady.filter_map(|moment| Some(moment.said_g_s? - moment.true_g_s)));
        let mut flows: Vec<f64> = between(start_s, stop_s).map(|moment| moment.true_g_s).collect();
        flows.sort_by(f64::total_cmp);
        let Some(flow) = flows.get(flows.len() / 2) else { return };
        let (from_s, to_s) = (start_s - EARLY_S, stop_s + LATE_S);
        let around: Vec<&Moment> = between(from_s, to_s).collect();
        for (share, delays) in [(0.5, &mut self.half_delays_s), (0.9, &mut self.most_delays_s)] {
            let level = share * flow;
            let so = reached(around.iter().map(|m| (m.time_s, m.true_g_s)), level);
            let said = around.iter().filter_map(|m| Some((m.time_s, m.said_g_s?)));
            let said = reached(said, level);
            if let Some(so_s) = so {
                delays.push(said.unwrap_or(to_s) - so_s);
            }
        }
    }
}

/// When a flow first reaches a level, between samples on a straight line.
fn reached(flows: impl Iterator<Item = (f64, f64)>, level: f64) -> Option<f64> {
    let mut before: Option<(f64, f64)> = None;
    for (time_s, flow) in flows {
        if flow >= level {
            return Some(match before {
                Some((then_s, then)) => then_s + (time_s - then_s) * (level - then) / (flow - then),
                None => time_s,
            });
        }
        before = Some((time_s, flow));
    }
    None
}

/// What a label lets a listener expect.
fn expected(label: &Label) -> Vec<Expected> {
    let one = |event, at_s, early_s, late_s| {
        vec![Expected { event, from_s: at_s - early_s, to_s: at_s + late_s }]
    };
    match *label {
        Label::Pour { start_s, stop_s, .. } => [
            one(Event::PourStart, start_s, EARLY_S, LATE_S),
            one(Event::PourStop, stop_s, EARLY_STOP_S, LATE_S),
        ]
        .concat(),
        Label::Tare { at_s } => one(Event::Tare, at_s, EARLY_S, REST_S),
        Label::Lifted { at_s, .. } | Label::Removed { at_s, .. } => {
            one(Event::Removed, at_s, EARLY_S, REST_S)
        }
        Label::Returned { at_s, .. } => one(Event::Returned, at_s, EARLY_S, REST_S),
        Label::Placed { at_s, .. } => one(Event::Placed, at_s, EARLY_S, REST_S),
        _ => Vec::new(),
    }
}

/// What each aimed pour brought past its aim.
fn overshoots(labels: &[Label], aims: &[(f64, f64)]) -> Vec<f64> {
    let poured = |from_s: f64| {
        labels.iter().find_map(|label| match *label {
            Label::Pour { stop_s, grams, .. } if stop_s >= from_s => Some(grams),
            _ => None,
        })
    };
    aims.iter().filter_map(|(from_s, wanted_g)| Some(poured(*from_s)? - wanted_g)).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    const POUR: Label = Label::Pour { start_s: 10.0, stop_s: 15.0, grams: 25.0 };

    /// A pour of 5 g/s from 10 to 15 s, and what is said of it.
    fn moments(said: impl Fn(f64) -> Option<f64>) -> Vec<Moment> {
        (0..300)
            .map(|i| {
                let time_s = 0.1 * f64::from(i);
                let true_g_s = if (10.0..=15.0).contains(&time_s) { 5.0 } else { 0.0 };
                Moment { time_s, true_g_s, said_g_s: said(time_s) }
            })
            .collect()
    }

    #[test]
    fn what_is_heard_in_time_fits_and_the_rest_does_not() {
        let all = |heard: &[(Event, f64)]| verdict(&[POUR], heard, &[]).pours;
        let both = [(Event::PourStart, 10.4), (Event::PourStop, 15.4)];
        assert_eq!(all(&both), Tally { happened: 2, missed: 0, spurious: 0 });
        assert_eq!(all(&[]), Tally { happened: 2, missed: 2, spurious: 0 });
        let late = [(Event::PourStart, 11.6), (Event::PourStop, 15.4)];
        assert_eq!(all(&late), Tally { happened: 2, missed: 1, spurious: 1 });
        let early = [(Event::PourStart, 9.7), (Event::PourStop, 14.4)];
        assert_eq!(all(&early), Tally { happened: 2, missed: 2, spurious: 2 });
        let twice = [both[0], both[0], both[1]];
        assert_eq!(all(&twice), Tally { happened: 2, missed: 0, spurious: 1 });
        let delays = verdict(&[POUR], &both, &[]).start_delays_s;
        assert!((delays[0] - 0.4).abs() < 1e-9);
    }

    #[test]
    fn handling_is_told_apart() {
        let labels = [
            Label::Tare { at_s: 1.0 },
            Label::Placed { at_s: 5.0, grams: 20.0 },
            Label::Lifted { at_s: 9.0, grams: 20.0 },
            Label::Returned { at_s: 13.0, grams: 20.0 },
            Label::Knock { at_s: 15.0 },
        ];
        let right = [
            (Event::Tare, 1.1),
            (Event::Placed, 5.5),
            (Event::Removed, 9.2),
            (Event::Returned, 14.0),
        ];
        let tally = |heard: &[(Event, f64)]| verdict(&labels, heard, &[]).handling;
        assert_eq!(tally(&right), Tally { happened: 4, missed: 0, spurious: 0 });
        let mut wrong = right;
        wrong[3].0 = Event::Placed;
        assert_eq!(tally(&wrong), Tally { happened: 4, missed: 1, spurious: 1 });
    }

    #[test]
    fn a_late_flow_is_late_by_as_much() {
        let late = |t: f64| Some(if (10.35..=15.35).contains(&t) { 5.0 } else { 0.0 });
        let verdict = verdict(&[POUR], &[], &moments(late));
        for delays in [&verdict.half_delays_s, &verdict.most_delays_s] {
            assert!((delays[0] - 0.4).abs() < 1e-9, "{delays:?}");
        }
        // Four samples at the start and three at the end are off by 5 g/s.
        let squares: f64 = verdict.flow_errors.iter().map(|error| error * error).sum();
        assert!((squares - 7.0 * 25.0).abs() < 1e-9, "{squares}");
        assert!(verdict.steady_errors.iter().all(|error| *error == 0.0));
        assert!(verdict.steady_errors.len() > 20);
    }

    #[test]
    fn a_flow_never_said_is_late_by_the_whole_pour_and_no_answer_is_counted() {
        let verdict = verdict(&[POUR], &[], &moments(|_| None));
        assert!(verdict.half_delays_s[0] > 6.0, "{:?}", verdict.half_delays_s);
        assert_eq!((verdict.samples, verdict.answers), (300, 0));
    }

    #[test]
    fn overshoot_is_what_came_past_the_aim() {
        let labels = [POUR, Label::Pour { start_s: 20.0, stop_s: 30.0, grams: 50.0 }];
        assert_eq!(overshoots(&labels, &[(9.0, 24.0), (19.9, 51.0)]), [1.0, -1.0]);
    }

    /// A hand's mean reaction, half its mean way back, and half the time between readings.
    const HAND_S: f64 = 0.275 + 0.225 + 0.05;

    /// What pours bring past their aim when someone cues who knows water, flow and fall.
    fn missed_g(family: &Family, seed: u64) -> Vec<f64> {
        let mut world = World::new(family, seed).unwrap();
        let fall_s = family.settings().fall(&mut family.dice(seed, "world")).time_s();
        let mut aims = Vec::new();
        let mut aim_g = None;
        let mut waters = [0.0; 11];
        while world.next().is_some() {
            let truth = world.truth();
            waters.rotate_left(1);
            waters[10] = truth.water_g;
            let Some(wanted_g) = world.wanted_g() else {
                aim_g = None;
                continue;
            };
            let aim_g = *aim_g.get_or_insert_with(|| {
                aims.push((truth.time_s, wanted_g));
                truth.water_g + wanted_g
            });
            // Ten samples are a second.
            let flow_g_s = truth.water_g - waters[0];
            if aim_g - truth.water_g <= flow_g_s * (fall_s + HAND_S) {
                world.hear_stop();
            }
        }
        overshoots(&world.labels(), &aims)
    }

    #[test]
    fn a_hand_misses_by_itself() {
        let families = Family::all().unwrap();
        let family = families.iter().find(|family| family.name == "physical_cues").unwrap();
        let most_g = |seeds: std::ops::RangeInclusive<u64>| {
            let mut missed_g: Vec<f64> =
                seeds.flat_map(|seed| missed_g(family, seed)).map(f64::abs).collect();
            missed_g.sort_by(f64::total_cmp);
            missed_g[missed_g.len() * 95 / 100]
        };
        let [first, last] = family.seeds.held_out;
        let both = [most_g(first..=last), most_g(5001..=5100)];
        assert_eq!(both.map(|grams| format!("{grams:.1}")), ["1.3", "1.4"]);
    }
}
