//! What anything that follows a scale is asked, and answers.

use crate::line::Sample;
use crate::peers;
use crate::watched;

/// Something that makes water and flow of a scale's samples as they arrive.
pub trait Follower {
    /// Takes a sample and says what it makes of it.
    fn take(&mut self, sample: Sample) -> Seen;

    /// So many grams more are wanted from here on: [`Event::Cue`] is to come when the hand must be
    /// told.
    fn aim(&mut self, grams: f64);
}

/// What a follower says after a sample. Nothing is no answer, never a zero.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Seen {
    /// Water that has come in, whatever was put down, taken off or tared.
    pub water_g: Option<f64>,
    /// Its standard uncertainty, of those that tell one.
    pub u_water_g: Option<f64>,
    /// Water coming in now.
    pub flow_g_s: Option<f64>,
    pub events: Vec<Event>,
}

/// What a follower notices.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Event {
    PourStart,
    PourStop,
    Tare,
    /// Something went off the scale, for good or not.
    Removed,
    /// What went off came back.
    Returned,
    Placed,
    /// Stop now.
    Cue,
}

/// What is known of a scale before it is read.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Plate {
    /// Samples a second, if none is lost.
    pub rate_hz: f64,
    /// Step of the display.
    pub step_g: f64,
    /// Most it can show from its zero at the beginning.
    pub most_g: f64,
}

/// How a follower is made for a scale.
pub type Make = fn(Plate) -> Box<dyn Follower>;

/// Everything that is scored, by name.
pub const FOLLOWERS: [(&str, Make); 9] = [
    ("cupwright", watched::watched),
    ("first difference", peers::first_difference),
    ("difference, EMA", peers::smoothed_difference),
    ("moving average", peers::moving_average),
    ("Savitzky-Golay, line", peers::fitted_line),
    ("Savitzky-Golay, parabola", peers::fitted_parabola),
    ("alpha-beta", peers::alpha_beta),
    ("Kalman, constant flow", peers::kalman),
    ("Kalman, calm", peers::calm_kalman),
];
