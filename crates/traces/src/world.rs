//! A scale, what lies on it, and a person, in time: a script played out one sample after the other.

use std::collections::VecDeque;

use crate::STEP_S;
use crate::draw::Dice;
use crate::family::{Family, Step};
use crate::follower::Plate;
use crate::hand::{Pour, Until};
use crate::label::{Label, POURING_G_S};
use crate::line::{Line, Sample};
use crate::sensor::Sensor;
use crate::stream::Stream;
use crate::touch::Touch;

/// How far past the wish a hand goes on when no cue comes. Estimate.
const UNHEARD_G: f64 = 30.0;

/// What is so when a sample is taken.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Truth {
    /// The world's own time; a sample may arrive later.
    pub time_s: f64,
    /// Water that has arrived from the beginning on, whatever became of it.
    pub water_g: f64,
    /// Water arriving now.
    pub inflow_g_s: f64,
    /// Mass on the scale.
    pub load_g: f64,
}

/// One trace being played.
pub struct World<'a> {
    family: &'a Family,
    steps: VecDeque<Step>,
    doing: Doing,
    step: u64,
    dice: Dice,
    stream: Stream,
    sensor: Sensor,
    line: Line,
    evaporation_g_s: f64,
    things_g: f64,
    lifted_g: f64,
    evaporated_g: f64,
    arrived: Arrived,
    touches: Vec<(Touch, f64)>,
    overloaded_s: Option<f64>,
    drifts: bool,
    truth: Truth,
    labels: Vec<Label>,
}

/// What the person is at.
enum Doing {
    Waiting { until_s: f64 },
    Pouring { pour: Box<Pour>, wanted_g: Option<f64> },
    Dripping { until_s: f64, flow_g_s: f64 },
    Done,
}

/// Water of one pour or drip as it arrives.
#[derive(Default)]
struct Arrived {
    before_g: f64,
    first_s: Option<f64>,
    last_s: f64,
    /// First and last time at which it was a pour.
    poured_s: Option<(f64, f64)>,
}

impl<'a> World<'a> {
    /// Sets up one trace of a family.
    pub fn new(family: &'a Family, seed: u64) -> Result<Self, String> {
        let settings = family.settings();
        let mut dice = family.dice(seed, "world");
        let fall = settings.fall(&mut dice);
        let mut sensor = Sensor::new(settings, family.dice(seed, "sensor"))?;
        let mut steps = VecDeque::from(family.steps(seed));
        let mut things_g = 0.0;
        if let Some(Step::Stands { grams }) = steps.front().copied() {
            steps.pop_front();
            sensor.settle(grams);
            things_g = grams;
        }
        let drifts = sensor.drifts();
        let line = Line::new(settings, sensor.capacity_g(), family.dice(seed, "line"));
        Ok(Self {
            family,
            steps,
            doing: Doing::Waiting { until_s: 0.0 },
            step: 0,
            evaporation_g_s: settings.draw("stream.evaporation_g_s", &mut dice),
            dice,
            stream: Stream::new(fall, family.dice(seed, "stream")),
            sensor,
            line,
            things_g,
            lifted_g: 0.0,
            evaporated_g: 0.0,
            arrived: Arrived::default(),
            touches: Vec::new(),
            overloaded_s: None,
            drifts,
            truth: Truth::default(),
            labels: Vec::new(),
        })
    }

    /// What stands on the scale's plate.
    pub fn plate(&self) -> Plate {
        Plate {
            rate_hz: self.line.rate_hz(),
            step_g: self.sensor.step_g(),
            most_g: self.sensor.most_g(),
        }
    }

    /// What was so when the last sample was taken.
    pub fn truth(&self) -> Truth {
        self.truth
    }

    /// How many grams more the hand wants, from where it began on, if it waits for a cue.
    pub fn wanted_g(&self) -> Option<f64> {
        match self.doing {
            Doing::Pouring { wanted_g, .. } => wanted_g,
            _ => None,
        }
    }

    /// The hand hears a cue to stop.
    pub fn hear_stop(&mut self) {
        let now_s = self.now_s();
        if let Doing::Pouring { pour, .. } = &mut self.doing {
            pour.hear_stop(now_s);
        }
    }

    /// What has happened, in the order in which it began; all of it when the trace is over.
    pub fn labels(&self) -> Vec<Label> {
        let mut labels = self.labels.clone();
        labels.sort_by(|a, b| a.start_s().total_cmp(&b.start_s()));
        labels
    }

    fn now_s(&self) -> f64 {
        self.step as f64 * STEP_S
    }

    /// Begins what comes next until something takes time; whether there was anything.
    fn begin(&mut self) -> bool {
        let now_s = self.now_s();
        let settings = self.family.settings();
        while let Some(step) = self.steps.pop_front() {
            let dice = &mut self.dice;
            match step {
                Step::Stands { .. } => unreachable!("a family checks that nothing comes before it"),
                Step::Wait { seconds } => {
                    self.doing = Doing::Waiting { until_s: now_s + seconds };
                    return true;
                }
                Step::Pour { grams, flow_g_s } => {
                    self.pour(flow_g_s, Until::Poured(grams), None);
                    return true;
                }
                Step::PourToCue { grams, flow_g_s } => {
                    let until = Until::Cue { unheard: grams + UNHEARD_G };
                    self.pour(flow_g_s, until, Some(grams));
                    return true;
                }
                Step::Drip { seconds, flow_g_s } => {
                    self.arrived = Arrived { before_g: self.truth.water_g, ..Arrived::default() };
                    self.doing = Doing::Dripping { until_s: now_s + seconds, flow_g_s };
                    return true;
                }
                Step::Tare => {
                    self.sensor.tare();
                    self.labels.push(Label::Tare { at_s: now_s });
                }
                Step::Place { grams } => {
                    return self.put(grams, |at_s| Label::Placed { at_s, grams });
                }
                Step::Remove { grams } => {
                    let grams = grams.unwrap_or(self.truth.load_g);
                    return self.put(-grams, |at_s| Label::Removed { at_s, grams });
                }
                Step::Lift { grams } => {
                    let grams = grams.unwrap_or(self.truth.load_g);
                    self.lifted_g = grams;
                    return self.put(-grams, |at_s| Label::Lifted { at_s, grams });
                }
                Step::Return { dripped_g } => {
                    let grams = self.lifted_g - dripped_g;
                    return self.put(grams, |at_s| Label::Returned { at_s, grams });
                }
                Step::Press { newtons, seconds } => {
                    let touch = settings.press(newtons, seconds, dice);
                    self.labels.push(Label::Press { start_s: now_s, stop_s: now_s + seconds });
                    return self.touch(touch);
                }
                Step::Stir { grams, seconds } => {
                    let touch = settings.stir(grams, seconds, dice);
                    self.labels.push(Label::Stir { start_s: now_s, stop_s: now_s + seconds });
                    return self.touch(touch);
                }
                Step::Knock { after_s, grams } => {
                    let at_s = now_s + after_s;
                    self.touches.push((settings.knock(grams, dice), at_s));
                    self.labels.push(Label::Knock { at_s });
                }
                Step::Gap { after_s, seconds } => {
                    let start_s = now_s + after_s;
                    self.line.gap(start_s, seconds);
                    self.labels.push(Label::Gap { start_s, stop_s: start_s + seconds });
                }
                Step::Bad { after_s, samples } => self.line.spell(now_s + after_s, samples),
            }
        }
        false
    }

    fn pour(&mut self, flow_g_s: f64, until: Until, wanted_g: Option<f64>) {
        let habit = self.family.settings().habit(&mut self.dice);
        let pour = Pour::new(self.now_s(), flow_g_s, until, habit, &mut self.dice);
        self.arrived = Arrived { before_g: self.truth.water_g, ..Arrived::default() };
        self.doing = Doing::Pouring { pour: Box::new(pour), wanted_g };
    }

    /// Moves a mass onto the scale, or off with a minus; its label lies halfway.
    fn put(&mut self, grams: f64, label: impl Fn(f64) -> Label) -> bool {
        let touch = self.family.settings().moved(grams, &mut self.dice);
        self.labels.push(label(self.now_s() + touch.over_s() / 2.0));
        self.touch(touch)
    }

    fn touch(&mut self, touch: Touch) -> bool {
        self.touches.push((touch, self.now_s()));
        self.doing = Doing::Waiting { until_s: self.now_s() + touch.over_s() };
        true
    }

    /// What leaves the kettle now; begins what comes next when this is over.
    fn leaving_g_s(&mut self) -> f64 {
        loop {
            let now_s = self.now_s();
            let is_dry = self.stream.is_dry();
            match &mut self.doing {
                Doing::Waiting { until_s } if now_s < *until_s => return 0.0,
                Doing::Pouring { pour, .. } if !pour.is_shut(now_s) => return pour.leave(now_s),
                Doing::Dripping { until_s, flow_g_s } if now_s < *until_s => return *flow_g_s,
                Doing::Pouring { .. } | Doing::Dripping { .. } if !is_dry => return 0.0,
                Doing::Pouring { .. } | Doing::Dripping { .. } => {
                    self.labels.extend(self.arrived.label(self.truth.water_g));
                }
                Doing::Waiting { .. } => {}
                Doing::Done => return 0.0,
            }
            if !self.begin() {
                self.doing = Doing::Done;
            }
        }
    }

    /// The force of everything that touches the scale; what has come to rest lies there.
    fn touched_g(&mut self) -> f64 {
        let now_s = self.now_s();
        let mut sum_g = 0.0;
        for (touch, start_s) in &self.touches {
            if now_s >= *start_s {
                sum_g += touch.force_g(now_s - start_s, &mut self.dice);
            }
        }
        let things_g = &mut self.things_g;
        self.touches.retain(|(touch, start_s)| {
            let rests = now_s - start_s >= touch.over_s();
            if let (true, Touch::Move { grams, .. }) = (rests, touch) {
                *things_g += grams;
            }
            !rests
        });
        sum_g
    }

    /// One step of everything.
    fn advance(&mut self) {
        let leaving_g_s = self.leaving_g_s();
        let now_s = self.now_s();
        let arrival = self.stream.step(leaving_g_s);
        let things_g = self.things_g;
        let touched_g = self.touched_g();
        if self.truth.water_g > 0.0 {
            self.evaporated_g += self.evaporation_g_s * STEP_S;
        }
        self.arrived.add(now_s, arrival.flow_g_s);
        let water_g = self.truth.water_g + arrival.flow_g_s * STEP_S;
        let rest_g = water_g - self.evaporated_g;
        self.truth = Truth {
            time_s: now_s,
            water_g,
            inflow_g_s: arrival.flow_g_s,
            load_g: self.things_g + rest_g,
        };
        self.sensor.step(self.step, things_g + rest_g + touched_g + arrival.force_g);
        self.step += 1;
    }

    /// Ends what lasts as long as the trace, once.
    fn end(&mut self) {
        let stop_s = self.now_s();
        if let Some(start_s) = self.overloaded_s.take() {
            self.labels.push(Label::Overload { start_s, stop_s });
        }
        if std::mem::take(&mut self.drifts) {
            self.labels.push(Label::Drift { start_s: 0.0, stop_s });
        }
    }
}

impl Arrived {
    fn add(&mut self, now_s: f64, flow_g_s: f64) {
        if flow_g_s > 0.0 {
            self.first_s.get_or_insert(now_s);
            self.last_s = now_s;
        }
        if flow_g_s > POURING_G_S {
            let (first_s, _) = self.poured_s.unwrap_or((now_s, now_s));
            self.poured_s = Some((first_s, now_s));
        }
    }

    /// What it was, when all of it has arrived; nothing if nothing has.
    fn label(&self, water_g: f64) -> Option<Label> {
        let grams = water_g - self.before_g;
        let first_s = self.first_s?;
        Some(match self.poured_s {
            Some((start_s, stop_s)) => Label::Pour { start_s, stop_s, grams },
            None => Label::Drip { start_s: first_s, stop_s: self.last_s, grams },
        })
    }
}

impl Iterator for World<'_> {
    type Item = Sample;

    /// The next sample that arrives; none when the script is over.
    fn next(&mut self) -> Option<Sample> {
        while !matches!(self.doing, Doing::Done) {
            self.advance();
            let truth = self.truth;
            if !self.sensor.has_converted() || !self.line.is_due(truth.time_s) {
                continue;
            }
            let reading = self.sensor.read();
            match (reading.is_overloaded, self.overloaded_s) {
                (true, None) => self.overloaded_s = Some(truth.time_s),
                (false, Some(start_s)) => {
                    self.overloaded_s = None;
                    self.labels.push(Label::Overload { start_s, stop_s: truth.time_s });
                }
                _ => {}
            }
            if let Some((sample, label)) = self.line.send(truth.time_s, reading) {
                self.labels.extend(label);
                return Some(sample);
            }
        }
        self.end();
        None
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::draw::hash;
    use crate::testing::{family, sd};

    fn played<'a>(family: &'a Family, seed: u64) -> (Vec<Sample>, Vec<Truth>, World<'a>) {
        let mut world = World::new(family, seed).unwrap();
        let (mut samples, mut truths) = (Vec::new(), Vec::new());
        while let Some(sample) = world.next() {
            samples.push(sample);
            truths.push(world.truth());
        }
        (samples, truths, world)
    }

    #[test]
    fn what_stands_there_reads_zero_from_the_first_sample_on() {
        let settings = "[settings.sensor]\nnoise_g = 0\nhum_g = 0\nflicker_g = 0\nwarm_up_g = 0";
        let script = "{ do = \"stands\", grams = 500 }, { do = \"wait\", seconds = 30 }";
        let family = family("physical", settings, script);
        let (samples, truths, _) = played(&family, 1);
        assert!(samples.iter().all(|sample| sample.mass_g.abs() < 0.011));
        assert!(truths.iter().all(|truth| truth.load_g == 500.0));
    }

    const POURS: &str = r#"
        { do = "wait", seconds = 2 },
        { do = "place", grams = [200, 400] },
        { do = "wait", seconds = 2 },
        { do = "tare" },
        { do = "repeat", times = 4, script = [
            { do = "pour", grams = [20, 60], flow_g_s = [3, 8] },
            { do = "wait", seconds = [3, 5] },
        ] },
        { do = "drip", seconds = 10, flow_g_s = 0.3 },
        { do = "wait", seconds = 2 },
    "#;

    #[test]
    fn inflow_adds_up_to_the_water_and_labels_to_both() {
        let family = family("plain", "[settings.stream]\nheight_cm = 20", POURS);
        for seed in 1..6 {
            let mut world = World::new(&family, seed).unwrap();
            let mut summed_g = 0.0;
            while !matches!(world.doing, Doing::Done) {
                world.advance();
                summed_g += world.truth.inflow_g_s * STEP_S;
            }
            let water_g = world.truth().water_g;
            assert!((summed_g - water_g).abs() < 1e-9, "{summed_g} and {water_g}");
            let labelled: f64 = world
                .labels()
                .iter()
                .map(|label| match label {
                    Label::Pour { grams, .. } | Label::Drip { grams, .. } => *grams,
                    _ => 0.0,
                })
                .sum();
            assert!((labelled - water_g).abs() < 1e-9, "{labelled} and {water_g}");
        }
    }

    #[test]
    fn the_display_shows_the_load_less_what_was_tared() {
        let family = family("plain", "[settings.sensor]\nnoise_g = 0\nstep_g = 0.01", POURS);
        let (samples, truths, world) = played(&family, 3);
        let (sample, truth) = (samples.last().unwrap(), truths.last().unwrap());
        assert!((sample.mass_g - truth.water_g).abs() < 0.011, "{sample:?}, {truth:?}");
        assert!(world.labels().iter().any(|label| matches!(label, Label::Tare { .. })));
    }

    #[test]
    fn labels_stand_in_order_and_pours_where_water_arrives() {
        let family = family("plain", "", POURS);
        let (_, truths, world) = played(&family, 4);
        let labels = world.labels();
        assert!(labels.windows(2).all(|pair| pair[0].start_s() <= pair[1].start_s()));
        let pours: Vec<_> = labels
            .iter()
            .filter_map(|label| match *label {
                Label::Pour { start_s, stop_s, .. } => Some((start_s, stop_s)),
                _ => None,
            })
            .collect();
        assert_eq!(pours.len(), 4);
        for truth in truths {
            let within = pours.iter().any(|(a, b)| (*a..=*b).contains(&truth.time_s));
            assert_eq!(within, truth.inflow_g_s > POURING_G_S, "{truth:?}");
        }
    }

    #[test]
    fn noise_and_steps_of_the_display_have_their_size() {
        let settings = "[settings.sensor]\nnoise_g = 0.08\nstep_g = 0.1";
        let family = family("plain", settings, r#"{ do = "wait", seconds = 4000 }"#);
        let (samples, ..) = played(&family, 5);
        let shown: Vec<f64> = samples.iter().map(|sample| sample.mass_g).collect();
        assert!(shown.iter().all(|g| (g / 0.1 - libm::round(g / 0.1)).abs() < 1e-9));
        // White noise and the rounding's even spread add as variances: σ² + q²/12. The standard
        // deviation of 40 000 readings strays by 0.35 %, 1.5 % are over four times that.
        let expected = libm::sqrt(0.08 * 0.08 + 0.1 * 0.1 / 12.0);
        assert!((sd(&shown) / expected - 1.0).abs() < 0.015, "{}", sd(&shown));
        // White: the difference of neighbours has √2 of it.
        let steps: Vec<f64> = shown.windows(2).map(|pair| pair[1] - pair[0]).collect();
        assert!((sd(&steps) / expected - std::f64::consts::SQRT_2).abs() < 0.02, "{}", sd(&steps));
    }

    #[test]
    fn a_hand_reacts_to_its_cue_and_not_before() {
        let settings = "[settings.hand]\nreaction_s = 0.4\nreaction_sd_s = 0\nramp_down_s = 0.2";
        let script = r#"
            { do = "wait", seconds = 1 },
            { do = "pour_to_cue", grams = 100, flow_g_s = 5 },
            { do = "wait", seconds = 1 },
        "#;
        let family = family("plain", settings, script);
        let mut world = World::new(&family, 6).unwrap();
        let mut heard = None;
        while world.next().is_some() {
            let truth = world.truth();
            if world.wanted_g().is_some() && truth.water_g > 50.0 && heard.is_none() {
                world.hear_stop();
                heard = Some(truth);
            }
        }
        // 0.4 s at 5 g/s, then half of that for 0.2 s.
        let more_g = world.truth().water_g - heard.unwrap().water_g;
        assert!((more_g - 2.5).abs() < 0.05, "{more_g}");
    }

    #[test]
    fn the_same_seed_is_the_same_trace() {
        let of = |on, seed| {
            let family = family(on, "", POURS);
            let (samples, ..) = played(&family, seed);
            let bits = samples.iter().flat_map(|s| [s.time_s.to_bits(), s.mass_g.to_bits()]);
            hash(&bits.flat_map(u64::to_le_bytes).collect::<Vec<_>>())
        };
        assert_ne!(of("plain", 1), of("plain", 2));
        // Made by this code: a change of the generator is seen, and changes the scores.
        assert_eq!(
            [of("plain", 1), of("physical", 1)],
            [1_796_799_291_125_648_202, 14_289_788_907_888_264_303]
        );
    }

    #[test]
    fn handling_is_labelled_where_the_load_changes() {
        let script = r#"
            { do = "wait", seconds = 3 },
            { do = "place", grams = 300 },
            { do = "wait", seconds = 3 },
            { do = "lift" },
            { do = "wait", seconds = 3 },
            { do = "return", dripped_g = 2 },
            { do = "wait", seconds = 3 },
            { do = "press", newtons = 50, seconds = 4 },
            { do = "gap", after_s = 1, seconds = 2 },
            { do = "wait", seconds = 4 },
            { do = "remove" },
            { do = "wait", seconds = 2 },
        "#;
        let settings = "[settings.sensor]\ncapacity_g = 2000\nwarm_up_g = 0.1";
        let family = family("physical", settings, script);
        let (samples, truths, world) = played(&family, 1);
        let at = |time_s: f64| truths.iter().find(|truth| truth.time_s >= time_s).unwrap().load_g;
        let labels = world.labels();
        assert_eq!(labels.len(), 8, "{labels:?}");
        for label in labels {
            let (at_s, moved_g) = match label {
                Label::Placed { at_s, grams } => {
                    assert_eq!(grams, 300.0);
                    (at_s, 300.0)
                }
                Label::Lifted { at_s, grams } => {
                    assert!((grams - 300.0).abs() < 1e-9);
                    (at_s, -300.0)
                }
                Label::Returned { at_s, .. } => (at_s, 298.0),
                Label::Removed { at_s, .. } => (at_s, -298.0),
                Label::Overload { start_s, stop_s } => {
                    // 50 N are 5.1 kg; the scale weighs two.
                    assert!(stop_s - start_s > 2.0, "{label:?}");
                    continue;
                }
                Label::Gap { start_s, stop_s } => {
                    assert!(samples.iter().all(|s| !(start_s + 0.02..stop_s).contains(&s.time_s)));
                    continue;
                }
                Label::Drift { .. } | Label::Press { .. } => continue,
                other => panic!("{other:?}"),
            };
            let change_g = at(at_s + 0.5) - at(at_s - 0.5);
            assert!((change_g - moved_g).abs() < 1e-9, "{label:?}: {change_g}");
        }
    }
}
