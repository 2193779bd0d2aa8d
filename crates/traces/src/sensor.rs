//! What a scale makes of a force: a plate on a load cell, a converter, a mean of conversions, a
//! display.
//!
//! Every stage whose setting is zero leaves the signal as it is. So the plain sensor is white noise
//! and the display's steps; the physical one is all of it.

use std::collections::VecDeque;
use std::f64::consts::TAU;

use crate::STEP_S;
use crate::draw::Dice;
use crate::family::{Settings, steps_per_conversion};

/// Time constants of the slow noises whose sum has a power that falls as 1/f from 0.5 mHz to 0.5
/// Hz: evenly spread on a logarithmic scale (van der Ziel's construction, from memory).
const FLICKER_S: [f64; 4] = [0.3, 3.0, 30.0, 300.0];
/// Readings whose mean a tare takes for zero. Estimate.
const TARE_READINGS: usize = 4;

/// A scale's way from force to shown grams.
pub struct Sensor {
    cell: Option<Cell>,
    creep_share: f64,
    creep_s: f64,
    crept_g: f64,
    steps_per_conversion: u64,
    noise_g: f64,
    flicker_g: f64,
    flicker: [f64; FLICKER_S.len()],
    hum_g: f64,
    hum_hz: f64,
    hum_phase: f64,
    warm_up_g: f64,
    warm_up_s: f64,
    count_g: f64,
    step_g: f64,
    capacity_g: f64,
    overload_is_nan: bool,
    sum_g: f64,
    conversions: u32,
    zero_g: f64,
    recent_g: VecDeque<f64>,
    dice: Dice,
}

/// What the display shows.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Reading {
    pub shown_g: f64,
    pub is_overloaded: bool,
}

impl Sensor {
    /// Draws a scale.
    pub fn new(settings: &Settings, mut dice: Dice) -> Result<Self, String> {
        let mut draw = |name: &str| settings.draw(name, &mut dice);
        let converter_hz = draw("sensor.converter_hz");
        let rate_hz = draw("sensor.rate_hz");
        if rate_hz > converter_hz {
            return Err(format!("sensor.rate_hz: {rate_hz} is above {converter_hz} conversions"));
        }
        let natural_hz = draw("sensor.natural_hz");
        let damping = draw("sensor.damping");
        Ok(Self {
            cell: (natural_hz > 0.0).then(|| Cell::new(natural_hz, damping)),
            creep_share: draw("sensor.creep_pct") / 100.0,
            creep_s: draw("sensor.creep_s"),
            crept_g: 0.0,
            steps_per_conversion: steps_per_conversion(converter_hz)?,
            // The mean of n conversions has the noise asked for.
            noise_g: draw("sensor.noise_g") * libm::sqrt(converter_hz / rate_hz),
            flicker_g: draw("sensor.flicker_g"),
            flicker: [0.0; FLICKER_S.len()],
            hum_g: draw("sensor.hum_g"),
            hum_hz: draw("sensor.hum_hz"),
            warm_up_g: draw("sensor.warm_up_g"),
            warm_up_s: draw("sensor.warm_up_s"),
            count_g: draw("sensor.count_g"),
            step_g: draw("sensor.step_g"),
            capacity_g: draw("sensor.capacity_g"),
            overload_is_nan: draw("sensor.overload_is_nan") > 0.5,
            sum_g: 0.0,
            conversions: 0,
            zero_g: 0.0,
            recent_g: VecDeque::new(),
            hum_phase: TAU * dice.even(),
            dice,
        })
    }

    /// Lets a mass have stood there since long ago, and tares it.
    pub fn settle(&mut self, grams: f64) {
        self.crept_g = self.creep_share * grams;
        self.zero_g = grams + self.crept_g;
        if let Some(cell) = &mut self.cell {
            cell.at_g = self.zero_g;
        }
    }

    /// Whether it drifts while it warms up.
    pub fn drifts(&self) -> bool {
        self.warm_up_g != 0.0
    }

    /// Step of the display.
    pub fn step_g(&self) -> f64 {
        self.step_g
    }

    /// Most it can weigh.
    pub fn capacity_g(&self) -> f64 {
        self.capacity_g
    }

    /// Most it can show, with its present zero.
    pub fn most_g(&self) -> f64 {
        self.capacity_g - self.zero_g
    }

    /// Takes the force of a step, the steps counted from the first.
    pub fn step(&mut self, step: u64, force_g: f64) {
        self.crept_g += (self.creep_share * force_g - self.crept_g) * STEP_S / self.creep_s;
        let weighed_g = match &mut self.cell {
            Some(cell) => cell.step(force_g + self.crept_g),
            None => force_g + self.crept_g,
        };
        if step.is_multiple_of(self.steps_per_conversion) {
            let now_s = step as f64 * STEP_S;
            let converted_g = weighed_g + self.disturbance(now_s);
            self.sum_g += if self.count_g > 0.0 {
                libm::round(converted_g / self.count_g) * self.count_g
            } else {
                converted_g
            };
            self.conversions += 1;
        }
    }

    /// What converter and electronics add.
    fn disturbance(&mut self, now_s: f64) -> f64 {
        let mut sum_g = self.noise_g * self.dice.normal();
        if self.flicker_g > 0.0 {
            let dt_s = self.steps_per_conversion as f64 * STEP_S;
            let each_g = self.flicker_g / libm::sqrt(FLICKER_S.len() as f64);
            for (slow, time_s) in self.flicker.iter_mut().zip(FLICKER_S) {
                let kept = libm::exp(-dt_s / time_s);
                *slow = kept * *slow + each_g * libm::sqrt(1.0 - kept * kept) * self.dice.normal();
                sum_g += *slow;
            }
        }
        if self.hum_g > 0.0 {
            sum_g += self.hum_g * libm::sin(TAU * self.hum_hz * now_s + self.hum_phase);
        }
        if self.warm_up_g != 0.0 {
            sum_g += self.warm_up_g * (1.0 - libm::exp(-now_s / self.warm_up_s));
        }
        sum_g
    }

    /// Whether there was a conversion since the last reading.
    pub fn has_converted(&self) -> bool {
        self.conversions > 0
    }

    /// Shows the mean of the conversions since the last reading.
    pub fn read(&mut self) -> Reading {
        let mean_g = self.sum_g / f64::from(self.conversions.max(1));
        (self.sum_g, self.conversions) = (0.0, 0);
        let is_overloaded = mean_g > self.capacity_g;
        if is_overloaded {
            let shown_g =
                if self.overload_is_nan { f64::NAN } else { self.rounded(self.capacity_g) };
            return Reading { shown_g, is_overloaded };
        }
        self.recent_g.push_back(mean_g);
        if self.recent_g.len() > TARE_READINGS {
            self.recent_g.pop_front();
        }
        Reading { shown_g: self.rounded(mean_g), is_overloaded }
    }

    /// Sets the display to zero.
    pub fn tare(&mut self) {
        if !self.recent_g.is_empty() {
            self.zero_g = self.recent_g.iter().sum::<f64>() / self.recent_g.len() as f64;
        }
    }

    /// In steps of the display; zero has one sign.
    fn rounded(&self, gross_g: f64) -> f64 {
        libm::round((gross_g - self.zero_g) / self.step_g) * self.step_g + 0.0
    }
}

/// A plate on a spring: a damped oscillator, stepped exactly for a force that holds for the step.
struct Cell {
    /// What distance and speed become, from distance and speed, about the force.
    turn: [[f64; 2]; 2],
    at_g: f64,
    speed_g_s: f64,
}

impl Cell {
    /// x'' = ω² (u − x) − 2 ζ ω x', below critical damping.
    fn new(natural_hz: f64, damping: f64) -> Self {
        let omega = TAU * natural_hz;
        let swing = omega * libm::sqrt(1.0 - damping * damping);
        let decay = libm::exp(-damping * omega * STEP_S);
        let (sin, cos) = libm::sincos(swing * STEP_S);
        let lean = damping * omega / swing * sin;
        Self {
            turn: [
                [decay * (cos + lean), decay * sin / swing],
                [-decay * omega * omega / swing * sin, decay * (cos - lean)],
            ],
            at_g: 0.0,
            speed_g_s: 0.0,
        }
    }

    fn step(&mut self, force_g: f64) -> f64 {
        let off = self.at_g - force_g;
        let [[a, b], [c, d]] = self.turn;
        (self.at_g, self.speed_g_s) =
            (force_g + a * off + b * self.speed_g_s, c * off + d * self.speed_g_s);
        self.at_g
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::STEPS_PER_S;
    use crate::testing::{family, sd};

    /// A plain scale with some settings.
    fn sensor(settings: &str) -> Sensor {
        let family =
            family("plain", &format!("[settings.sensor]\n{settings}"), "{ do = \"tare\" }");
        Sensor::new(family.settings(), family.dice(1, "sensor")).unwrap()
    }

    /// Readings at a rate under a force of time.
    fn readings(
        sensor: &mut Sensor,
        rate_hz: u64,
        seconds: u64,
        force: impl Fn(f64) -> f64,
    ) -> Vec<f64> {
        let every = u64::from(STEPS_PER_S) / rate_hz;
        let mut shown = Vec::new();
        for step in 0..seconds * u64::from(STEPS_PER_S) {
            sensor.step(step, force(step as f64 * STEP_S));
            if (step + 1).is_multiple_of(every) {
                shown.push(sensor.read().shown_g);
            }
        }
        shown
    }

    const FINE: &str = "noise_g = 0\nstep_g = 0.001\nrate_hz = 400\nconverter_hz = 400\n";

    #[test]
    fn a_loaded_cell_rings_at_its_frequency_and_dies_down_as_damped() {
        let mut sensor = sensor(&format!("{FINE}natural_hz = 12\ndamping = 0.1"));
        let shown = readings(&mut sensor, 400, 2, |_| 1000.0);
        let peaks: Vec<(usize, f64)> = (1..shown.len() - 1)
            .filter(|i| shown[*i] > shown[i - 1] && shown[*i] >= shown[i + 1])
            .map(|i| (i, shown[i] - 1000.0))
            .take(5)
            .collect();
        // Damped frequency f √(1 − ζ²); peaks fall by e^(−2πζ/√(1 − ζ²)) from one to the next.
        let root = libm::sqrt(1.0 - 0.01);
        let hz = 4.0 / ((peaks[4].0 - peaks[0].0) as f64 * STEP_S);
        assert!((hz / (12.0 * root) - 1.0).abs() < 0.01, "{hz} Hz");
        let fall = peaks[1].1 / peaks[0].1;
        assert!((fall / libm::exp(-TAU * 0.1 / root) - 1.0).abs() < 0.02, "{fall}");
        assert!((shown.last().unwrap() - 1000.0).abs() < 0.001);
    }

    #[test]
    fn creep_ends_at_its_share() {
        let mut sensor = sensor(&format!("{FINE}creep_pct = 0.05\ncreep_s = 10"));
        let shown = readings(&mut sensor, 400, 60, |_| 1000.0);
        // 0.05 % of 1000 g is 0.5 g: (1 − 1/e) of that after ten seconds.
        let after = |seconds: usize| shown[seconds * 400 - 1] - 1000.0;
        assert!((after(10) - 0.5 * (1.0 - libm::exp(-1.0))).abs() < 0.002, "{}", after(10));
        assert!((after(60) - 0.5).abs() < 0.003, "{}", after(60));
    }

    #[test]
    fn the_mean_of_conversions_has_the_noise_asked_for() {
        for converter_hz in [10, 80, 400] {
            let settings = format!(
                "noise_g = 0.05\nstep_g = 0.001\nrate_hz = 10\nconverter_hz = {converter_hz}"
            );
            let shown = readings(&mut sensor(&settings), 10, 2000, |_| 0.0);
            // The standard deviation of 20 000 readings strays by 0.5 %.
            assert!((sd(&shown) / 0.05 - 1.0).abs() < 0.02, "{converter_hz}: {}", sd(&shown));
        }
    }

    #[test]
    fn flicker_has_the_same_allan_deviation_for_every_time() {
        let settings =
            "noise_g = 0\nflicker_g = 0.1\nstep_g = 0.001\nrate_hz = 10\nconverter_hz = 10";
        let shown = readings(&mut sensor(settings), 10, 20_000, |_| 0.0);
        let allan = |n: usize| {
            let means: Vec<f64> =
                shown.chunks_exact(n).map(|chunk| chunk.iter().sum::<f64>() / n as f64).collect();
            let steps: Vec<f64> = means.windows(2).map(|pair| pair[1] - pair[0]).collect();
            libm::sqrt(steps.iter().map(|step| step * step).sum::<f64>() / 2.0 / steps.len() as f64)
        };
        // White noise would fall by √100 = 10 from 1 to 100 s, a random walk rise by as much.
        let (short, middle, long) = (allan(10), allan(100), allan(1000));
        assert!(middle / short > 0.8 && middle / short < 1.25, "{short} {middle}");
        assert!(long / short > 0.7 && long / short < 1.4, "{short} {long}");
        let fast = sd(&readings(&mut sensor(settings), 10, 20_000, |_| 0.0));
        assert!((fast / 0.1 - 1.0).abs() < 0.2, "{fast}");
    }

    #[test]
    fn hum_shows_at_its_alias_and_goes_in_the_mean() {
        let hum = "noise_g = 0\nhum_g = 1\nhum_hz = 50\nstep_g = 0.001\nconverter_hz = 80\n";
        let fast = readings(&mut sensor(&format!("{hum}rate_hz = 80")), 80, 10, |_| 0.0);
        // 50 Hz sampled at 80 Hz looks like 30 Hz.
        let power = |hz: f64| {
            let (mut re, mut im) = (0.0, 0.0);
            for (i, value) in fast.iter().enumerate() {
                let (sin, cos) = libm::sincos(TAU * hz * i as f64 / 80.0);
                re += value * cos;
                im += value * sin;
            }
            2.0 * libm::hypot(re, im) / fast.len() as f64
        };
        assert!((power(30.0) - 1.0).abs() < 0.01, "{}", power(30.0));
        assert!(power(20.0) < 0.01, "{}", power(20.0));
        // Eight conversions are five whole turns of the mains.
        let slow = readings(&mut sensor(&format!("{hum}rate_hz = 10")), 10, 10, |_| 0.0);
        assert!(sd(&slow) < 0.002, "{}", sd(&slow));
    }

    #[test]
    fn too_much_is_told_and_shown_as_set() {
        for (is_nan, settings) in [(false, "overload_is_nan = 0"), (true, "overload_is_nan = 1")] {
            let mut sensor = sensor(&format!("{FINE}capacity_g = 2000\n{settings}"));
            sensor.step(0, 2500.0);
            let reading = sensor.read();
            assert!(reading.is_overloaded);
            assert_eq!(reading.shown_g.is_nan(), is_nan);
            assert!(is_nan || (reading.shown_g - 2000.0).abs() < 1e-9);
        }
    }

    #[test]
    fn counts_and_steps_round() {
        let settings = "noise_g = 0\nstep_g = 0.01\nrate_hz = 400\nconverter_hz = 400\n";
        // In counts of 0.02 g 1.0126 g are 1.02 g, else 1.01 g on the display.
        for (count_g, expected) in [(0.0, 1.01), (0.02, 1.02)] {
            let mut sensor = sensor(&format!("{settings}count_g = {count_g}"));
            sensor.step(0, 1.0126);
            let shown = sensor.read().shown_g;
            assert!((shown - expected).abs() < 1e-9, "{shown}");
            sensor.tare();
            sensor.step(1, 1.0126);
            assert_eq!(sensor.read().shown_g, 0.0);
        }
    }
}
