//! Water on its way: it falls, strikes the water below, splashes, and sets it swinging.

use std::collections::VecDeque;

use crate::draw::Dice;
use crate::{GRAVITY_M_S2, STEP_S};

/// How water falls in one trace.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Fall {
    pub height_cm: f64,
    /// Speed downwards with which it leaves the spout.
    pub exit_m_s: f64,
    /// Share of the first water that leaps off the scale.
    pub splash_pct: f64,
    /// Scatter of the striking force, of that force, while it splashes.
    pub spatter_pct: f64,
    /// Standard deviation of the swinging water's force at 5 g/s, its frequency and damping.
    pub slosh_g: f64,
    pub slosh_hz: f64,
    pub slosh_damping: f64,
}

/// How long a stream splashes before it has made its bed. Estimate.
const SPLASH_S: f64 = 0.4;
/// The flow that [`Fall::slosh_g`] is told for.
const SLOSH_FLOW_G_S: f64 = 5.0;

/// What a step of the stream brings to the platter.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Arrival {
    pub flow_g_s: f64,
    /// Force beside the water's weight: that of striking, and of swinging.
    pub force_g: f64,
}

/// Water between spout and platter.
pub struct Stream {
    fall: Fall,
    flight: VecDeque<f64>,
    /// Speed on arrival over gravity: grams of force for a gram per second.
    strike_s: f64,
    /// For how long water has arrived without a pause.
    arriving_s: f64,
    slosh: f64,
    slosh_before: f64,
    dice: Dice,
}

impl Stream {
    pub fn new(fall: Fall, dice: Dice) -> Self {
        let fall_s = fall.time_s();
        let steps = libm::round(fall_s / STEP_S) as usize;
        Self {
            fall,
            flight: VecDeque::from(vec![0.0; steps]),
            strike_s: fall.exit_m_s / GRAVITY_M_S2 + fall_s,
            arriving_s: 0.0,
            slosh: 0.0,
            slosh_before: 0.0,
            dice,
        }
    }

    /// Takes what leaves the spout and gives what arrives; called once a step.
    pub fn step(&mut self, leaving_g_s: f64) -> Arrival {
        self.flight.push_back(leaving_g_s);
        let arriving = self.flight.pop_front().unwrap_or_default();
        self.arriving_s = if arriving > 0.0 { self.arriving_s + STEP_S } else { 0.0 };
        let mut arrival = Arrival {
            flow_g_s: arriving,
            force_g: self.strike_s * arriving + self.slosh(arriving),
        };
        if arriving > 0.0 && self.arriving_s <= SPLASH_S {
            arrival.flow_g_s -= self.fall.splash_pct / 100.0 * arriving;
            if self.fall.spatter_pct > 0.0 {
                let scatter = self.fall.spatter_pct / 100.0 * self.dice.normal();
                arrival.force_g += scatter * self.strike_s * arriving;
            }
        }
        arrival
    }

    /// Whether water is still in the air.
    pub fn is_dry(&self) -> bool {
        self.flight.iter().all(|flow| *flow == 0.0)
    }

    /// The swinging water as an oscillator that the stream's turbulence drives: an autoregression
    /// of second order whose poles are those of the damped swing.
    fn slosh(&mut self, arriving_g_s: f64) -> f64 {
        if self.fall.slosh_g == 0.0 {
            return 0.0;
        }
        let turn = std::f64::consts::TAU * self.fall.slosh_hz * STEP_S;
        let radius = libm::exp(-self.fall.slosh_damping * turn);
        let (a1, a2) = (2.0 * radius * libm::cos(turn), -radius * radius);
        // Variance of such an autoregression for a drive of 1 (Box, Jenkins: from memory).
        let gain = (1.0 - a2) / ((1.0 + a2) * (1.0 - a2 - a1) * (1.0 - a2 + a1));
        let drive = self.fall.slosh_g * arriving_g_s / SLOSH_FLOW_G_S / libm::sqrt(gain);
        let next = a1 * self.slosh + a2 * self.slosh_before + drive * self.dice.normal();
        (self.slosh_before, self.slosh) = (self.slosh, next);
        next
    }
}

impl Fall {
    /// Time from spout to platter: h = v t + g t²/2.
    pub fn time_s(&self) -> f64 {
        let v = self.exit_m_s;
        (libm::sqrt(v * v + 2.0 * GRAVITY_M_S2 * self.height_cm / 100.0) - v) / GRAVITY_M_S2
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const FALL: Fall = Fall {
        height_cm: 15.0,
        exit_m_s: 0.0,
        splash_pct: 0.0,
        spatter_pct: 0.0,
        slosh_g: 0.0,
        slosh_hz: 3.0,
        slosh_damping: 0.03,
    };

    #[test]
    fn fifteen_centimetres_take_as_long_as_they_do() {
        // √(2 · 0.15 / 9.80665)
        assert!((FALL.time_s() - 0.174_904).abs() < 1e-6, "{}", FALL.time_s());
    }

    #[test]
    fn the_reading_is_what_left_and_its_downward_momentum() {
        // Without exit speed the strike makes up for the water in the air; with it, m v / g is
        // added.
        for (exit_m_s, more_g) in [(0.0, 0.0), (0.5, 5.0 * 0.5 / GRAVITY_M_S2)] {
            let mut stream = Stream::new(Fall { exit_m_s, ..FALL }, Dice::new(1, "stream"));
            let (mut left, mut arrived, mut last) = (0.0, 0.0, Arrival::default());
            for _ in 0..800 {
                left += 5.0 * STEP_S;
                last = stream.step(5.0);
                arrived += last.flow_g_s * STEP_S;
            }
            // The fall takes whole steps here: half of one at 5 g/s at most.
            let more = arrived + last.force_g - left;
            assert!((more - more_g).abs() <= 2.5 * STEP_S, "{exit_m_s} m/s: {more} g");
        }
    }

    #[test]
    fn only_the_first_water_splashes_off() {
        let mut stream = Stream::new(Fall { splash_pct: 2.0, ..FALL }, Dice::new(1, "stream"));
        let arrived: f64 = (0..800).map(|_| stream.step(5.0).flow_g_s * STEP_S).sum();
        let fallen: f64 = {
            let mut whole = Stream::new(FALL, Dice::new(1, "stream"));
            (0..800).map(|_| whole.step(5.0).flow_g_s * STEP_S).sum()
        };
        assert!((fallen - arrived - 0.02 * 5.0 * SPLASH_S).abs() < 1e-3, "{}", fallen - arrived);
    }

    #[test]
    fn slosh_has_its_size_and_frequency() {
        let fall = Fall { slosh_g: 0.3, height_cm: 0.0, ..FALL };
        let mut stream = Stream::new(fall, Dice::new(7, "stream"));
        let forces: Vec<f64> = (0..400 * 600).map(|_| stream.step(5.0).force_g).collect();
        let steady = &forces[4000..];
        let n = steady.len() as f64;
        let sd = libm::sqrt(steady.iter().map(|x| x * x).sum::<f64>() / n);
        // The envelope forgets in 1/(2π f ζ) = 1.8 s: some 170 independent swings, 5 % of the sd.
        assert!((sd / 0.3 - 1.0).abs() < 0.2, "{sd}");
        let rises = steady.windows(2).filter(|w| w[0] < 0.0 && w[1] >= 0.0).count() as f64;
        let hz = rises / (n * STEP_S);
        assert!((hz / 3.0 - 1.0).abs() < 0.05, "{hz}");
    }
}
