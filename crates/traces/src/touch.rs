//! Hands and tables: things put down and taken off, pressing, stirring, knocks.

use crate::GRAVITY_M_S2;
use crate::draw::Dice;
use std::f64::consts::{PI, TAU};

/// A force that a hand or the table brings for a while, in grams.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Touch {
    /// Something of this mass comes onto the scale, or goes off with a minus, over a time; the hand
    /// pushes and pulls by a share of it.
    Move { grams: f64, over_s: f64, bump_pct: f64 },
    /// A hand presses, for a time, with a tremor.
    Press { grams: f64, over_s: f64, tremor_pct: f64, tremor_hz: f64 },
    /// A spoon goes round.
    Stir { grams: f64, over_s: f64, hz: f64 },
    /// The table swings and comes to rest.
    Knock { grams: f64, decay_s: f64, hz: f64 },
}

/// Time in which a press comes and goes. Estimate.
const PRESS_RAMP_S: f64 = 0.5;
/// A knock is over after so many times its decay: then 0.03 % of it is left.
const DECAYS: f64 = 8.0;

impl Touch {
    /// A press of a force in newtons.
    pub fn press(newtons: f64, over_s: f64, tremor_pct: f64, tremor_hz: f64) -> Self {
        let grams = 1000.0 * newtons / GRAVITY_M_S2;
        Self::Press { grams, over_s, tremor_pct, tremor_hz }
    }

    /// How long it lasts.
    pub fn over_s(&self) -> f64 {
        match *self {
            Self::Move { over_s, .. } | Self::Press { over_s, .. } | Self::Stir { over_s, .. } => {
                over_s
            }
            Self::Knock { decay_s, .. } => DECAYS * decay_s,
        }
    }

    /// Its force when it has lasted for a time. What was moved stays.
    pub fn force_g(&self, elapsed_s: f64, dice: &mut Dice) -> f64 {
        let done = elapsed_s >= self.over_s();
        match *self {
            Self::Move { grams, .. } if done => grams,
            _ if done => 0.0,
            Self::Move { grams, over_s, bump_pct } => {
                let x = elapsed_s / over_s;
                let pushed = bump_pct / 100.0 * grams.abs() * libm::sin(TAU * x) * x;
                grams * (1.0 - libm::cos(PI * x)) / 2.0 - pushed
            }
            Self::Press { grams, over_s, tremor_pct, tremor_hz } => {
                let left_s = over_s - elapsed_s;
                let ramp = libm::fmin(libm::fmin(elapsed_s, left_s) / PRESS_RAMP_S, 1.0);
                let tremor = tremor_pct / 100.0 * libm::sin(TAU * tremor_hz * elapsed_s);
                grams * ramp * (1.0 + tremor)
            }
            Self::Stir { grams, hz, .. } => {
                // Round and round, and a scatter a third as large. Estimate.
                grams * (libm::sin(TAU * hz * elapsed_s) + dice.normal() / 3.0)
            }
            Self::Knock { grams, decay_s, hz } => {
                grams * libm::exp(-elapsed_s / decay_s) * libm::cos(TAU * hz * elapsed_s)
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_moved_thing_stays_and_everything_else_goes() {
        let mut dice = Dice::new(1, "touch");
        let moved = Touch::Move { grams: -300.0, over_s: 0.2, bump_pct: 30.0 };
        assert_eq!(moved.force_g(0.0, &mut dice), 0.0);
        assert_eq!(moved.force_g(0.2, &mut dice), -300.0);
        for touch in [
            Touch::press(20.0, 5.0, 2.0, 9.0),
            Touch::Stir { grams: 5.0, over_s: 4.0, hz: 2.0 },
            Touch::Knock { grams: 5.0, decay_s: 0.1, hz: 12.0 },
        ] {
            assert_ne!(touch.force_g(0.04, &mut dice), 0.0);
            assert_eq!(touch.force_g(touch.over_s(), &mut dice), 0.0);
        }
    }

    #[test]
    fn twenty_newtons_weigh_two_kilograms() {
        let force = Touch::press(20.0, 5.0, 0.0, 9.0).force_g(2.5, &mut Dice::new(1, "touch"));
        assert!((force - 2039.432).abs() < 1e-3, "{force}");
    }
}
