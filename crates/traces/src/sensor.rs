//! What a scale makes of a force: a plate on a load cell, a converter, a mean of conversions, a display.
//!
//! Every stage whose setting is zero leaves the signal as it is. So the plain sensor is white noise and
//! the display's steps; the physical one is all of it.

use std::collections::VecDeque;
use std::f64::consts::TAU;

use crate::STEP_S;
use crate::draw::Dice;
use crate::family::{Settings, steps_per_conversion};

/// Time constants of the slow noises whose sum has a power that falls as 1/f from 0.5 mHz to 0.5 Hz:
/// evenly spread on a logarithmic scale (van der Ziel's construction, from memory).
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

    /// Whether it drifts while it warms up.
    pub fn drifts(&self) -> bool {
        self.warm_up_g != 0.0
    }

    /// Most it can weigh.
    pub fn capacity_g(&self) -> f64 {
        self.capacity_g
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

    fn rounded(&self, gross_g: f64) -> f64 {
        libm::round((gross_g - self.zero_g) / self.step_g) * self.step_g
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
