//! What truly happened, and when.

/// Flow of arriving water from which a pour counts as going on.
pub const POURING_G_S: f64 = 0.5;

/// Something that happened, in seconds of the world's own time.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Label {
    /// Water arrived at more than [`POURING_G_S`], first and last.
    Pour {
        start_s: f64,
        stop_s: f64,
        grams: f64,
    },
    /// Water arrived, never at more than that.
    Drip {
        start_s: f64,
        stop_s: f64,
        grams: f64,
    },
    /// The display was set to zero.
    Tare {
        at_s: f64,
    },
    /// Something that will be put back was taken off.
    Lifted {
        at_s: f64,
        grams: f64,
    },
    /// It was put back, maybe lighter.
    Returned {
        at_s: f64,
        grams: f64,
    },
    Placed {
        at_s: f64,
        grams: f64,
    },
    Removed {
        at_s: f64,
        grams: f64,
    },
    /// A hand pressed; no water came.
    Press {
        start_s: f64,
        stop_s: f64,
    },
    Stir {
        start_s: f64,
        stop_s: f64,
    },
    /// The table was knocked.
    Knock {
        at_s: f64,
    },
    /// The scale drifts: zero or warming up.
    Drift {
        start_s: f64,
        stop_s: f64,
    },
    /// More than the scale can weigh.
    Overload {
        start_s: f64,
        stop_s: f64,
    },
    /// No sample arrived.
    Gap {
        start_s: f64,
        stop_s: f64,
    },
    /// A sample that is no weight: not a number, or full scale.
    BadSample {
        at_s: f64,
    },
}

impl Label {
    /// When it began.
    pub fn start_s(&self) -> f64 {
        match *self {
            Self::Pour { start_s, .. }
            | Self::Drip { start_s, .. }
            | Self::Press { start_s, .. }
            | Self::Stir { start_s, .. }
            | Self::Drift { start_s, .. }
            | Self::Overload { start_s, .. }
            | Self::Gap { start_s, .. } => start_s,
            Self::Tare { at_s }
            | Self::Lifted { at_s, .. }
            | Self::Returned { at_s, .. }
            | Self::Placed { at_s, .. }
            | Self::Removed { at_s, .. }
            | Self::Knock { at_s }
            | Self::BadSample { at_s } => at_s,
        }
    }
}
