//! A hand that pours: it opens, wavers, hears when to stop, and closes.

use crate::STEP_S;
use crate::draw::Dice;

/// What a hand does to the flow, drawn for one pour.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Habit {
    /// Time from nothing to full flow.
    pub ramp_up_s: f64,
    /// Time from flow to nothing.
    pub ramp_down_s: f64,
    /// How far the flow wavers to either side, and how often.
    pub wobble_pct: f64,
    pub wobble_hz: f64,
    /// Time from hearing to the first change of flow.
    pub reaction_s: f64,
}

/// When a hand stops by itself.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Until {
    /// This much will have left the kettle.
    Poured(f64),
    /// It hears a cue; without one, when this much has left.
    Cue { unheard: f64 },
}

/// One pour from a kettle.
pub struct Pour {
    habit: Habit,
    flow_g_s: f64,
    until: Until,
    phase: f64,
    opened_s: f64,
    /// When it begins to close, and the flow it had.
    closes_s: Option<f64>,
    from_g_s: f64,
    left_g: f64,
}

impl Pour {
    pub fn new(now_s: f64, flow_g_s: f64, until: Until, habit: Habit, dice: &mut Dice) -> Self {
        let phase = std::f64::consts::TAU * dice.even();
        Self {
            habit,
            flow_g_s,
            until,
            phase,
            opened_s: now_s,
            closes_s: None,
            from_g_s: 0.0,
            left_g: 0.0,
        }
    }

    /// A cue is heard; only a hand that waits for one heeds it, and only the first.
    pub fn hear_stop(&mut self, now_s: f64) {
        if matches!(self.until, Until::Cue { .. }) && self.closes_s.is_none() {
            self.closes_s = Some(now_s + self.habit.reaction_s);
        }
    }

    /// The flow that leaves the kettle now; called once a step.
    pub fn leave(&mut self, now_s: f64) -> f64 {
        let flow = self.flow(now_s);
        self.left_g += flow * STEP_S;
        if self.closes_s.is_none_or(|closes_s| now_s < closes_s) {
            self.from_g_s = flow;
            let rest = flow * self.habit.ramp_down_s / 2.0;
            let (Until::Poured(most) | Until::Cue { unheard: most }) = self.until;
            if self.left_g + rest >= most {
                self.closes_s = Some(now_s);
            }
        }
        flow
    }

    fn flow(&self, now_s: f64) -> f64 {
        if let Some(closes_s) = self.closes_s.filter(|closes_s| now_s >= *closes_s) {
            return self.from_g_s * (1.0 - rise(now_s - closes_s, self.habit.ramp_down_s));
        }
        let open_s = now_s - self.opened_s;
        let turn = std::f64::consts::TAU * self.habit.wobble_hz * open_s + self.phase;
        let wobble = 1.0 + self.habit.wobble_pct / 100.0 * libm::sin(turn);
        self.flow_g_s * wobble * rise(open_s, self.habit.ramp_up_s)
    }

    /// Whether nothing more will leave.
    pub fn is_shut(&self, now_s: f64) -> bool {
        self.closes_s.is_some_and(|closes_s| now_s >= closes_s + self.habit.ramp_down_s)
    }
}

/// From 0 to 1 in a straight line over a time, which may be nothing.
fn rise(elapsed_s: f64, over_s: f64) -> f64 {
    if elapsed_s >= over_s { 1.0 } else { libm::fmax(elapsed_s, 0.0) / over_s }
}

#[cfg(test)]
mod tests {
    use super::*;

    const HABIT: Habit = Habit {
        ramp_up_s: 0.3,
        ramp_down_s: 0.4,
        wobble_pct: 0.0,
        wobble_hz: 2.0,
        reaction_s: 0.25,
    };

    /// Flow at every step until the pour is shut, with a cue at a time.
    fn poured(until: Until, habit: Habit, cue_s: f64) -> Vec<f64> {
        let mut pour = Pour::new(0.0, 5.0, until, habit, &mut Dice::new(1, "pour"));
        let mut flows = Vec::new();
        loop {
            let now_s = flows.len() as f64 * STEP_S;
            if pour.is_shut(now_s) {
                return flows;
            }
            if now_s >= cue_s {
                pour.hear_stop(now_s);
            }
            flows.push(pour.leave(now_s));
        }
    }

    #[test]
    fn the_wished_grams_leave() {
        let flows = poured(Until::Poured(50.0), HABIT, f64::INFINITY);
        let grams: f64 = flows.iter().map(|flow| flow * STEP_S).sum();
        // Half a step of full flow is 0.006 g.
        assert!((grams - 50.0).abs() < 0.02, "{grams}");
    }

    #[test]
    fn a_cue_is_met_after_the_reaction_and_only_when_waited_for() {
        let flows = poured(Until::Cue { unheard: 500.0 }, HABIT, 4.0);
        let shut_s = flows.len() as f64 * STEP_S;
        assert!((shut_s - (4.0 + 0.25 + 0.4)).abs() <= STEP_S, "{shut_s}");
        let deaf = poured(Until::Poured(50.0), HABIT, 4.0);
        assert!(deaf.len() as f64 * STEP_S > 10.0);
    }

    #[test]
    fn a_cue_that_never_comes_ends_the_pour_too() {
        let grams: f64 =
            poured(Until::Cue { unheard: 80.0 }, HABIT, f64::INFINITY).iter().sum::<f64>() * STEP_S;
        assert!((grams - 80.0).abs() < 0.02, "{grams}");
    }

    #[test]
    fn the_wobble_has_its_depth_and_frequency() {
        let habit = Habit { wobble_pct: 20.0, ..HABIT };
        let flows = poured(Until::Cue { unheard: 500.0 }, habit, 20.0);
        let steady = &flows[400..400 + 4000];
        let highest = steady.iter().copied().fold(0.0, libm::fmax);
        assert!((highest - 6.0).abs() < 0.01, "{highest}");
        let rises = steady.windows(2).filter(|w| w[0] < 5.0 && w[1] >= 5.0).count();
        assert_eq!(rises, 20);
    }
}
