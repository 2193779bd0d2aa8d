//! What arrives of a scale's readings, and when: uneven, late, with holes, with samples that are no
//! weight.

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

    /// How many readings a second there are.
    pub fn rate_hz(&self) -> f64 {
        1.0 / self.period_s
    }

    /// Whether the scale reads now. Unevenness moves a reading to either side, never past its
    /// neighbour.
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::testing::family;

    /// What a line at 10 Hz lets through in a number of steps, and how often it was due.
    fn arrived(
        settings: &str,
        steps: u64,
        also: impl Fn(&mut Line),
    ) -> (Vec<(Sample, Option<Label>)>, u64) {
        let family = family("plain", &format!("[settings.line]\n{settings}"), "{ do = \"tare\" }");
        let mut line = Line::new(family.settings(), 3000.0, family.dice(1, "line"));
        also(&mut line);
        let (mut samples, mut due) = (Vec::new(), 0);
        for step in 0..steps {
            let now_s = step as f64 * STEP_S;
            if line.is_due(now_s) {
                due += 1;
                samples.extend(line.send(now_s, Reading { shown_g: 1.0, is_overloaded: false }));
            }
        }
        (samples, due)
    }

    fn waits(samples: &[(Sample, Option<Label>)]) -> Vec<f64> {
        samples.windows(2).map(|pair| pair[1].0.time_s - pair[0].0.time_s).collect()
    }

    #[test]
    fn an_even_line_is_even() {
        let (samples, due) = arrived("", 40_001, |_| {});
        assert_eq!((samples.len() as u64, due), (1000, 1000));
        assert!(waits(&samples).iter().all(|wait| (wait - 0.1).abs() < 1e-9));
    }

    #[test]
    fn an_uneven_line_keeps_its_mean_and_its_order() {
        let (samples, due) = arrived("uneven_pct = 30\nlate_pct = 30", 400_000, |_| {});
        assert!(due.abs_diff(10_000) <= 1, "{due}");
        let waits = waits(&samples);
        assert!(waits.iter().all(|wait| *wait > 0.0));
        // Two even spreads of ±0.03 s and two of 0.03 s, each difference of two: √(2 (0.06² +
        // 0.03²)/12).
        let mean = waits.iter().sum::<f64>() / waits.len() as f64;
        let squares: f64 = waits.iter().map(|wait| (wait - mean) * (wait - mean)).sum();
        let sd = libm::sqrt(squares / waits.len() as f64);
        let expected = libm::sqrt((0.06 * 0.06 + 0.03 * 0.03) / 6.0);
        assert!((sd / expected - 1.0).abs() < 0.05, "{sd} and {expected}");
    }

    #[test]
    fn losses_are_as_many_as_set() {
        let (samples, due) = arrived("missing_pct = 10\nbad_pct = 5", 400_000, |_| {});
        let share = samples.len() as f64 / due as f64;
        assert!((share - 0.9).abs() < 0.012, "{share}");
        let bad = samples.iter().filter(|(_, label)| label.is_some()).count();
        assert!((bad as f64 / samples.len() as f64 - 0.05).abs() < 0.01, "{bad}");
        for (sample, label) in samples {
            let is_weight = sample.mass_g == 1.0;
            assert_eq!(is_weight, label.is_none(), "{sample:?}");
        }
    }

    #[test]
    fn a_gap_is_empty_and_a_spell_is_bad() {
        let (samples, _) = arrived("", 8000, |line| {
            line.gap(5.0, 2.0);
            line.spell(10.0, 3);
        });
        assert!(samples.iter().all(|(sample, _)| !(5.0..7.0).contains(&sample.time_s)));
        assert!(waits(&samples).iter().any(|wait| *wait > 2.0));
        let bad: Vec<f64> =
            samples.iter().filter(|(_, l)| l.is_some()).map(|(s, _)| s.time_s).collect();
        assert_eq!(bad.len(), 3);
        assert!(bad.iter().all(|time_s| (10.0..10.31).contains(time_s)), "{bad:?}");
    }
}
