//! What arrives of a scale's readings, and when: uneven, late, with holes, with samples that are no weight.

use crate::draw::Dice;
use crate::family::Settings;
use crate::label::Label;
use crate::{STEP_S, sensor::Reading};

/// What a listener gets.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sample {
    /// When it arrived; always after the one before.
    pub time_s: f64,
    /// What the display showed; NaN or full scale if that is no weight.
    pub mass_g: f64,
}

/// Least time between two samples' stamps: a clock of milliseconds.
const TICK_S: f64 = 0.001;

/// The way from a scale to a listener.
pub struct Line {
    period_s: f64,
    uneven: f64,
    late: f64,
    missing: f64,
    bad: f64,
    full_scale_g: f64,
    readings: u64,
    due_s: f64,
    stamped_s: f64,
    /// Holes and spells of bad samples to come, as times and lengths.
    gaps: Vec<(f64, f64)>,
    spells: Vec<(f64, u32)>,
    dice: Dice,
}

impl Line {
    /// Draws a line; full scale is what a broken sample may say.
    pub fn new(settings: &Settings, full_scale_g: f64, mut dice: Dice) -> Self {
        let mut draw = |name: &str| settings.draw(name, &mut dice);
        let period_s = 1.0 / draw("sensor.rate_hz");
        Self {
            period_s,
            uneven: draw("line.uneven_pct") / 100.0,
            late: draw("line.late_pct") / 100.0,
            missing: draw("line.missing_pct") / 100.0,
            bad: draw("line.bad_pct") / 100.0,
            full_scale_g,
            readings: 0,
            due_s: period_s,
            stamped_s: f64::NEG_INFINITY,
            gaps: Vec::new(),
            spells: Vec::new(),
            dice,
        }
    }

    /// Whether the scale reads now. Unevenness moves a reading to either side, never past its neighbour.
    pub fn is_due(&mut self, now_s: f64) -> bool {
        if now_s + STEP_S / 2.0 < self.due_s {
            return false;
        }
        self.readings += 1;
        let moved = self.uneven * self.dice.to_either_side();
        self.due_s = (self.readings as f64 + 1.0 + moved) * self.period_s;
        true
    }

    /// Nothing arrives from a time on, for a time.
    pub fn gap(&mut self, start_s: f64, seconds: f64) {
        self.gaps.push((start_s, start_s + seconds));
    }

    /// So many samples from a time on are bad.
    pub fn spell(&mut self, start_s: f64, samples: u32) {
        self.spells.push((start_s, samples));
    }

    /// Sends a reading; what arrives, if it does, with a label if it is no weight.
    pub fn send(&mut self, now_s: f64, reading: Reading) -> Option<(Sample, Option<Label>)> {
        let is_lost = self.dice.even() < self.missing;
        if is_lost || self.gaps.iter().any(|(start_s, stop_s)| (*start_s..*stop_s).contains(&now_s))
        {
            return None;
        }
        let late_s = self.late * self.period_s * self.dice.even();
        let time_s = libm::fmax(now_s + late_s, self.stamped_s + TICK_S);
        self.stamped_s = time_s;
        let begun = |(start_s, left): &&mut (f64, u32)| *start_s <= now_s && *left > 0;
        let spell = self.spells.iter_mut().find(begun).map(|(_, left)| *left -= 1);
        if spell.is_none() && self.dice.even() >= self.bad {
            return Some((Sample { time_s, mass_g: reading.shown_g }, None));
        }
        let mass_g = if self.dice.even() < 0.5 { f64::NAN } else { self.full_scale_g };
        Some((Sample { time_s, mass_g }, Some(Label::BadSample { at_s: now_s })))
    }
}
