//! Textbook estimators of flow, to be better than: each makes a slope of samples of uneven time,
//! and all share one rule for pours, one account of water and one rule for cues.
//!
//! None knows of tares, of things put down or taken off, or of bumps: that is what is compared.

use std::collections::{BTreeMap, VecDeque};

use serde::Deserialize;

use crate::follower::{Event, Follower, Plate, Seen};
use crate::line::Sample;

/// Flow at which a pour is heard, and at which its end is, each twice in a row.
const ON_G_S: f64 = 1.0;
const OFF_G_S: f64 = 0.4;
const TWICE: u32 = 2;
/// A pour's water counts from this long before it was heard to this long after its end. Estimate.
const MARGIN_S: f64 = 0.5;
/// From a cue to half of what still comes: a reaction of 0.25 s and half of closing. Estimate.
const LEAD_S: f64 = 0.4;
/// A pause after which every estimator begins anew. Estimate.
const PAUSE_S: f64 = 1.0;
/// Answers begin with this sample.
const FIRST_ANSWER: u32 = 3;

/// A mass and a slope from samples.
trait Slope {
    /// Takes a weight and the time since the one before, none for the first.
    fn take(&mut self, since_s: Option<f64>, weighed_g: f64) -> (f64, f64);
}

/// A slope with the common rules.
struct Peer {
    make: Box<dyn Fn() -> Box<dyn Slope>>,
    slope: Box<dyn Slope>,
    taken: u32,
    last_s: f64,
    recent: VecDeque<(f64, f64)>,
    row: u32,
    pour: Option<Poured>,
    before_g: f64,
    water_g: f64,
    aim_g: Option<f64>,
}

/// A pour as it was heard.
struct Poured {
    base_g: f64,
    stopped_s: Option<f64>,
}

impl Peer {
    fn boxed<S: Slope + 'static>(make: impl Fn() -> S + 'static) -> Box<dyn Follower> {
        let make = Box::new(move || Box::new(make()) as Box<dyn Slope>);
        Box::new(Self {
            slope: make(),
            make,
            taken: 0,
            last_s: f64::NEG_INFINITY,
            recent: VecDeque::new(),
            row: 0,
            pour: None,
            before_g: 0.0,
            water_g: 0.0,
            aim_g: None,
        })
    }

    /// Water so far, and the end of a pour whose margin is over.
    fn account(&mut self, now_s: f64, mass_g: f64) {
        let Some(pour) = &self.pour else { return };
        self.water_g = self.before_g + mass_g - pour.base_g;
        if pour.stopped_s.is_some_and(|stopped_s| now_s >= stopped_s + MARGIN_S) {
            self.close();
        }
    }

    fn close(&mut self) {
        self.before_g = self.water_g;
        self.pour = None;
    }

    /// The common rule for pours.
    fn hear(&mut self, now_s: f64, flow_g_s: f64) -> Option<Event> {
        let is_on = self.pour.as_ref().is_some_and(|pour| pour.stopped_s.is_none());
        let counts = if is_on { flow_g_s < OFF_G_S } else { flow_g_s > ON_G_S };
        self.row = if counts { self.row + 1 } else { 0 };
        if self.row < TWICE {
            return None;
        }
        self.row = 0;
        if is_on {
            if let Some(pour) = &mut self.pour {
                pour.stopped_s = Some(now_s);
            }
            return Some(Event::PourStop);
        }
        self.close();
        let base_g = self.recent.front().map_or(0.0, |(_, mass_g)| *mass_g);
        self.pour = Some(Poured { base_g, stopped_s: None });
        Some(Event::PourStart)
    }

    fn cue(&mut self, flow_g_s: f64) -> Option<Event> {
        let is_due = self.aim_g.is_some_and(|aim_g| self.water_g + flow_g_s * LEAD_S >= aim_g);
        is_due.then(|| {
            self.aim_g = None;
            Event::Cue
        })
    }
}

impl Follower for Peer {
    fn take(&mut self, sample: Sample) -> Seen {
        let Sample { time_s, mass_g: weighed_g } = sample;
        if weighed_g.is_nan() {
            return Seen::default();
        }
        if time_s - self.last_s > PAUSE_S {
            self.slope = (self.make)();
            self.taken = 0;
            self.recent.clear();
        }
        let since_s = (self.taken > 0).then_some(time_s - self.last_s);
        let (mass_g, flow_g_s) = self.slope.take(since_s, weighed_g);
        self.taken += 1;
        self.last_s = time_s;
        self.recent.push_back((time_s, mass_g));
        while self.recent.get(1).is_some_and(|(then_s, _)| *then_s <= time_s - MARGIN_S) {
            self.recent.pop_front();
        }
        if self.taken < FIRST_ANSWER {
            return Seen::default();
        }
        self.account(time_s, mass_g);
        let heard = self.hear(time_s, flow_g_s);
        let events = heard.into_iter().chain(self.cue(flow_g_s)).collect();
        let flow_g_s = Some(flow_g_s);
        Seen { water_g: Some(self.water_g), u_water_g: None, flow_g_s, events }
    }

    fn aim(&mut self, grams: f64) {
        self.aim_g = Some(self.water_g + grams);
    }
}

/// Difference to the sample before, over its time.
pub fn first_difference(_plate: Plate) -> Box<dyn Follower> {
    Peer::boxed(|| Difference { before_g: 0.0, flow_g_s: 0.0, memory_s: 0.0 })
}

/// The same, averaged with exponentially falling weights: a fifth for the newest of ten in a
/// second.
pub fn smoothed_difference(_plate: Plate) -> Box<dyn Follower> {
    let memory_s = -0.1 / libm::log(0.8);
    Peer::boxed(move || Difference { before_g: 0.0, flow_g_s: 0.0, memory_s })
}

struct Difference {
    before_g: f64,
    flow_g_s: f64,
    memory_s: f64,
}

impl Slope for Difference {
    fn take(&mut self, since_s: Option<f64>, weighed_g: f64) -> (f64, f64) {
        if let Some(since_s) = since_s {
            let difference = (weighed_g - self.before_g) / since_s;
            let kept = if self.memory_s > 0.0 { libm::exp(-since_s / self.memory_s) } else { 0.0 };
            self.flow_g_s = kept * self.flow_g_s + (1.0 - kept) * difference;
        }
        self.before_g = weighed_g;
        (weighed_g, self.flow_g_s)
    }
}

/// Difference of means of 0.4 s, now and just before.
pub fn moving_average(plate: Plate) -> Box<dyn Follower> {
    let window = libm::round(0.4 * plate.rate_hz) as usize;
    Peer::boxed(move || MovingAverage { window: window.max(1), recent: Window::default() })
}

struct MovingAverage {
    window: usize,
    recent: Window,
}

impl Slope for MovingAverage {
    fn take(&mut self, since_s: Option<f64>, weighed_g: f64) -> (f64, f64) {
        self.recent.push(since_s, weighed_g, 2 * self.window);
        let half = self.recent.0.len().min(2 * self.window) / 2;
        let mean = |mut samples: Vec<(f64, f64)>| {
            let n = samples.len() as f64;
            let sum = samples.drain(..).fold((0.0, 0.0), |sum, s| (sum.0 + s.0, sum.1 + s.1));
            (sum.0 / n, sum.1 / n)
        };
        if half == 0 {
            return (weighed_g, 0.0);
        }
        let (now_s, now_g) = mean(self.recent.0.iter().rev().take(half).copied().collect());
        let (then_s, then_g) =
            mean(self.recent.0.iter().rev().skip(half).take(half).copied().collect());
        (now_g, (now_g - then_g) / (now_s - then_s))
    }
}

/// The last samples with their times, from the first of them on.
#[derive(Default)]
struct Window(VecDeque<(f64, f64)>);

impl Window {
    fn push(&mut self, since_s: Option<f64>, weighed_g: f64, longest: usize) {
        let before_s = self.0.back().map_or(0.0, |(time_s, _)| *time_s);
        self.0.push_back((before_s + since_s.unwrap_or_default(), weighed_g));
        if self.0.len() > longest {
            self.0.pop_front();
        }
    }

    /// Mean time between samples.
    fn spacing_s(&self) -> f64 {
        match (self.0.front(), self.0.back()) {
            (Some((first_s, _)), Some((last_s, _))) if last_s > first_s => {
                (last_s - first_s) / (self.0.len() - 1) as f64
            }
            _ => f64::INFINITY,
        }
    }
}

/// Slope of the line fitted to some 0.8 s.
pub fn fitted_line(plate: Plate) -> Box<dyn Follower> {
    fitted(1.0, 0.8 * plate.rate_hz)
}

/// Slope, at the newest sample, of the parabola fitted to some 1.6 s.
pub fn fitted_parabola(plate: Plate) -> Box<dyn Follower> {
    fitted(2.0, 1.6 * plate.rate_hz)
}

/// Weights of scipy for the window that is nearest to a number of spaces between samples.
fn fitted(order: f64, spaces: f64) -> Box<dyn Follower> {
    let off = |weights: &Vec<f64>| (weights.len() as f64 - 1.0 - spaces).abs();
    let nearest = weights(order)
        .into_iter()
        .min_by(|a, b| off(a).total_cmp(&off(b)))
        .unwrap_or_else(|| panic!("there are no weights of order {order}"));
    Peer::boxed(move || Fitted { weights: nearest.clone(), recent: Window::default() })
}

/// What scipy has computed of filters: a name, and numbers in and out.
#[derive(Deserialize)]
struct Computed {
    formula: String,
    r#in: BTreeMap<String, f64>,
    out: BTreeMap<String, serde_json::Value>,
}

fn computed(formula: &str) -> Vec<Computed> {
    #[derive(Deserialize)]
    struct File {
        checks: Vec<Computed>,
    }
    let text = include_str!("../../../tests/vectors/peers/slopes.json");
    let file: File = serde_json::from_str(text).unwrap_or_else(|error| panic!("{error}"));
    file.checks.into_iter().filter(|check| check.formula == formula).collect()
}

/// Weights of the samples of windows, the oldest first.
fn weights(order: f64) -> Vec<Vec<f64>> {
    computed("savitzky_golay.slope")
        .into_iter()
        .filter(|check| check.r#in["order"] == order)
        .map(|check| {
            let weights = check.out["weights"].as_array().into_iter().flatten();
            weights.filter_map(serde_json::Value::as_f64).collect()
        })
        .collect()
}

struct Fitted {
    weights: Vec<f64>,
    recent: Window,
}

impl Slope for Fitted {
    /// Takes samples as evenly spaced by their mean spacing, as the weights ask for.
    fn take(&mut self, since_s: Option<f64>, weighed_g: f64) -> (f64, f64) {
        self.recent.push(since_s, weighed_g, self.weights.len());
        if self.recent.0.len() < self.weights.len() {
            return (weighed_g, 0.0);
        }
        let slope: f64 = self.weights.iter().zip(&self.recent.0).map(|(w, (_, g))| w * g).sum();
        (weighed_g, slope / self.recent.spacing_s())
    }
}

/// Alpha-beta, critically damped: errors of the prediction are forgotten by θ = 0.7 in 0.1 s.
pub fn alpha_beta(_plate: Plate) -> Box<dyn Follower> {
    Peer::boxed(|| AlphaBeta { mass_g: 0.0, flow_g_s: 0.0 })
}

struct AlphaBeta {
    mass_g: f64,
    flow_g_s: f64,
}

impl Slope for AlphaBeta {
    /// α = 1 − θ², β = (1 − θ)², θ to the power of the time passed.
    fn take(&mut self, since_s: Option<f64>, weighed_g: f64) -> (f64, f64) {
        let Some(since_s) = since_s else {
            self.mass_g = weighed_g;
            return (weighed_g, 0.0);
        };
        let theta = libm::pow(0.7, since_s / 0.1);
        let predicted_g = self.mass_g + self.flow_g_s * since_s;
        let error_g = weighed_g - predicted_g;
        self.mass_g = predicted_g + (1.0 - theta * theta) * error_g;
        self.flow_g_s += (1.0 - theta) * (1.0 - theta) * error_g / since_s;
        (self.mass_g, self.flow_g_s)
    }
}

/// Kalman's filter for a flow that wanders by 2 g²/s³.
pub fn kalman(_plate: Plate) -> Box<dyn Follower> {
    Peer::boxed(|| Kalman::new(2.0))
}

/// The same for 0.2 g²/s³: smoother and later.
pub fn calm_kalman(_plate: Plate) -> Box<dyn Follower> {
    Peer::boxed(|| Kalman::new(0.2))
}

/// Variance of a weight: noise of 0.05 g and steps of 0.1 g, σ² + q²/12.
const WEIGHT_VARIANCE_G2: f64 = 0.05 * 0.05 + 0.1 * 0.1 / 12.0;
/// Variance of a flow that nothing is known of.
const FLOW_VARIANCE_G2_S2: f64 = 100.0;

struct Kalman {
    wander_g2_s3: f64,
    mass_g: f64,
    flow_g_s: f64,
    /// Variances of mass and flow, and their covariance.
    vm: f64,
    vf: f64,
    c: f64,
}

impl Kalman {
    fn new(wander_g2_s3: f64) -> Self {
        let (vm, vf) = (WEIGHT_VARIANCE_G2, FLOW_VARIANCE_G2_S2);
        Self { wander_g2_s3, mass_g: 0.0, flow_g_s: 0.0, vm, vf, c: 0.0 }
    }
}

impl Slope for Kalman {
    fn take(&mut self, since_s: Option<f64>, weighed_g: f64) -> (f64, f64) {
        let Some(dt) = since_s else {
            self.mass_g = weighed_g;
            return (weighed_g, 0.0);
        };
        let q = self.wander_g2_s3;
        let vm = self.vm + 2.0 * dt * self.c + dt * dt * self.vf + q * dt * dt * dt / 3.0;
        let c = self.c + dt * self.vf + q * dt * dt / 2.0;
        let vf = self.vf + q * dt;
        let predicted_g = self.mass_g + self.flow_g_s * dt;
        let error_g = weighed_g - predicted_g;
        let (km, kf) = (vm / (vm + WEIGHT_VARIANCE_G2), c / (vm + WEIGHT_VARIANCE_G2));
        self.mass_g = predicted_g + km * error_g;
        self.flow_g_s += kf * error_g;
        (self.vm, self.c, self.vf) = ((1.0 - km) * vm, (1.0 - km) * c, vf - kf * c);
        (self.mass_g, self.flow_g_s)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const TEN_HZ: Plate = Plate { rate_hz: 10.0, step_g: 0.1, most_g: 3000.0 };
    use crate::draw::Dice;
    use crate::follower::FOLLOWERS;
    use crate::testing::sd;

    /// What a follower says of a mass of time, at times with a spread, with noise.
    fn seen(
        follower: &mut dyn Follower,
        samples: u32,
        spread: f64,
        noise_g: f64,
        mass: impl Fn(f64) -> f64,
    ) -> Vec<(f64, Seen)> {
        let mut dice = Dice::new(1, "peers");
        let mut sample = |i| {
            let time_s = 0.1 * (f64::from(i) + spread * dice.to_either_side());
            Sample { time_s, mass_g: mass(time_s) + noise_g * dice.normal() }
        };
        (0..samples)
            .map(|i| {
                let sample = sample(i);
                (sample.time_s, follower.take(sample))
            })
            .collect()
    }

    #[test]
    fn a_steady_flow_is_found_by_everyone() {
        for (name, make) in FOLLOWERS {
            let seen = seen(&mut *make(TEN_HZ), 100, 0.0, 0.0, |t| 4.0 * t);
            let flow = seen.last().unwrap().1.flow_g_s.unwrap();
            assert!((flow - 4.0).abs() < 1e-3, "{name}: {flow}");
        }
    }

    #[test]
    fn uneven_times_are_no_trouble_to_those_that_heed_them() {
        for (name, make) in FOLLOWERS {
            if name.starts_with("Savitzky") {
                continue;
            }
            let seen = seen(&mut *make(TEN_HZ), 100, 0.3, 0.0, |t| 4.0 * t);
            let flow = seen.last().unwrap().1.flow_g_s.unwrap();
            assert!((flow - 4.0).abs() < 1e-3, "{name}: {flow}");
        }
    }

    /// Standard deviation of the flow at rest in noise of 0.05 g, by name.
    fn scatter(name: &str) -> f64 {
        let (_, make) = FOLLOWERS.iter().find(|(of, _)| *of == name).unwrap();
        let seen = seen(&mut *make(TEN_HZ), 40_000, 0.0, 0.05, |_| 100.0);
        sd(&seen[100..].iter().map(|(_, seen)| seen.flow_g_s.unwrap()).collect::<Vec<_>>())
    }

    #[test]
    fn noise_of_the_flow_is_that_of_the_closed_forms() {
        let sigma = 0.05;
        let line = |n: f64| sigma * libm::sqrt(12.0 / (n * (n * n - 1.0))) / 0.1;
        let parabola = |n: f64| {
            let above = 12.0 * (2.0 * n - 1.0) * (8.0 * n - 11.0);
            sigma * libm::sqrt(above / (n * (n * n - 1.0) * (n * n - 4.0))) / 0.1
        };
        let (alpha, beta): (f64, f64) = (1.0 - 0.49, 0.09);
        let alpha_beta =
            sigma / 0.1 * libm::sqrt(2.0 * beta * beta / (alpha * (4.0 - 2.0 * alpha - beta)));
        for (name, expected) in [
            ("first difference", sigma * std::f64::consts::SQRT_2 / 0.1),
            // Averaged differences of white noise: α σ √(2/(2 − α))/Δt.
            ("difference, EMA", 0.2 * sigma / 0.1 * libm::sqrt(2.0 / 1.8)),
            // Two means of four, 0.4 s apart.
            ("moving average", sigma * libm::sqrt(2.0 / 4.0) / 0.4),
            ("Savitzky-Golay, line", line(9.0)),
            ("Savitzky-Golay, parabola", parabola(17.0)),
            ("alpha-beta", alpha_beta),
        ] {
            let found = scatter(name);
            assert!((found / expected - 1.0).abs() < 0.04, "{name}: {found} and {expected}");
        }
    }

    #[test]
    fn kalman_comes_to_rest_at_the_gains_of_riccati() {
        let checks = computed("kalman.gains");
        assert_eq!(checks.len(), 3);
        for check in checks {
            let (wander, dt_s) = (check.r#in["wander_g2_s3"], check.r#in["dt_s"]);
            let mut kalman = Kalman::new(wander);
            for i in 0..4000 {
                kalman.take((i > 0).then_some(dt_s), 0.0);
            }
            // At rest, what a weight of one gram more changes beside what was foretold.
            let (mass_g, flow_g_s) = kalman.take(Some(dt_s), 1.0);
            for (found, expected) in [(mass_g, "mass"), (flow_g_s, "flow_per_s")] {
                let expected = check.out[expected].as_f64().unwrap();
                assert!((found / expected - 1.0).abs() < 1e-8, "{wander}: {found}, {expected}");
            }
        }
    }

    #[test]
    fn a_pour_is_heard_and_its_water_counted() {
        let poured = |t: f64| 300.0 + 5.0 * (libm::fmin(libm::fmax(t - 5.0, 0.0), 6.0));
        for (name, make) in FOLLOWERS {
            let seen = seen(&mut *make(TEN_HZ), 200, 0.0, 0.0, poured);
            let heard: Vec<(f64, Event)> = seen
                .iter()
                .flat_map(|(time_s, seen)| seen.events.iter().map(move |event| (*time_s, *event)))
                .collect();
            let [(start_s, Event::PourStart), (stop_s, Event::PourStop)] = heard[..] else {
                panic!("{name}: {heard:?}")
            };
            assert!((5.0..6.5).contains(&start_s), "{name}: {start_s}");
            assert!((11.0..13.0).contains(&stop_s), "{name}: {stop_s}");
            let water_g = seen.last().unwrap().1.water_g.unwrap();
            assert!((water_g - 30.0).abs() < 0.6, "{name}: {water_g}");
        }
    }

    #[test]
    fn a_cue_comes_once_and_early_by_its_lead() {
        let mut follower = kalman(TEN_HZ);
        let mut cues = Vec::new();
        for i in 0..200 {
            let time_s = 0.1 * f64::from(i);
            if i == 10 {
                follower.aim(20.0);
            }
            let mass_g = 5.0 * libm::fmax(time_s - 2.0, 0.0);
            if follower.take(Sample { time_s, mass_g }).events.contains(&Event::Cue) {
                cues.push(mass_g);
            }
        }
        assert_eq!(cues.len(), 1);
        // 0.4 s at 5 g/s before 20 g, and up to a sample later.
        assert!((18.0..18.6).contains(&cues[0]), "{cues:?}");
    }
}
