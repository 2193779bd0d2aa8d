//! How fast a coffee extracts, as advice takes it.

use super::{OneRate, TwoRates};
use crate::extraction::Kinetics;
use crate::math::{exp, max, min, one_minus_exp_minus, sqrt, square};
use crate::quantity::{
    Correlation, DegreesOfFreedom, ShareUncertainty, Time, TimeConstantUncertainty,
};
use crate::record::record;
use crate::uncertainty::Uncertainty;

record! {
    /// How fast a coffee extracts, and how well that is known.
    ///
    /// How well the level E∞ is known is left out: whoever changes a time starts from a cup that has a yield of
    /// its own.
    pub struct Rates {
        /// The law.
        kinetics: Kinetics = "kinetics",
        /// Standard uncertainty of the fast share f.
        u_fast_share: ShareUncertainty = "u_fast_share_pct",
        /// Standard uncertainty of ln τ1.
        u_fast: TimeConstantUncertainty = "u_ln_fast_time",
        /// Standard uncertainty of ln τ2.
        u_slow: TimeConstantUncertainty = "u_ln_slow_time",
        /// Correlation of f and ln τ1.
        share_and_fast: Correlation = "correlation_share_fast",
        /// Correlation of f and ln τ2.
        share_and_slow: Correlation = "correlation_share_slow",
        /// Correlation of ln τ1 and ln τ2.
        fast_and_slow: Correlation = "correlation_fast_slow",
        /// Degrees of freedom of the fit.
        freedom: DegreesOfFreedom = "nu_rates",
    }
}

/// The correlation of two values by their covariance; none where one is not uncertain.
pub(crate) fn correlation(covariance: f64, u: f64, other: f64) -> Correlation {
    let both = u * other;
    // Only rounding can bring it past one.
    Correlation::known(if both > 0.0 { max(-1.0, min(1.0, covariance / both)) } else { 0.0 })
}

impl OneRate {
    /// The law with how well it is known.
    pub fn rates(&self) -> Rates {
        Rates {
            kinetics: self.kinetics(),
            u_fast_share: ShareUncertainty::NONE,
            u_fast: self.time.u,
            u_slow: TimeConstantUncertainty::NONE,
            share_and_fast: Correlation::known(0.0),
            share_and_slow: Correlation::known(0.0),
            fast_and_slow: Correlation::known(0.0),
            freedom: self.time.freedom,
        }
    }
}

impl TwoRates {
    /// The law with how well it is known.
    pub fn rates(&self) -> Rates {
        let [_, [_, _, share_fast, share_slow], [_, _, _, fast_slow], _] = self.covariance;
        let (share, fast, slow) =
            (self.fast_share.u.percent(), self.fast.u.ratio(), self.slow.u.ratio());
        Rates {
            kinetics: self.kinetics(),
            u_fast_share: self.fast_share.u,
            u_fast: self.fast.u,
            u_slow: self.slow.u,
            share_and_fast: correlation(share_fast, share, fast),
            share_and_slow: correlation(share_slow, share, slow),
            fast_and_slow: correlation(fast_slow, fast, slow),
            freedom: self.fast.freedom,
        }
    }
}

impl Rates {
    /// Standard uncertainty of ln[E(t')/E(t)], the yield at one time by that at another.
    ///
    /// ```text
    /// u² = Σ cᵢ cⱼ rᵢⱼ uᵢ uⱼ over f, ln τ1, ln τ2,   c = ∂ ln E(t')/∂· − ∂ ln E(t)/∂·
    /// ```
    pub(crate) fn u_of_ratio(&self, from: Time, to: Time) -> f64 {
        let [a_share, a_fast, a_slow] = self.slopes(from);
        let [b_share, b_fast, b_slow] = self.slopes(to);
        let share = (b_share - a_share) * self.u_fast_share.percent();
        let fast = (b_fast - a_fast) * self.u_fast.ratio();
        let slow = (b_slow - a_slow) * self.u_slow.ratio();
        let pairs = share * fast * self.share_and_fast.ratio()
            + share * slow * self.share_and_slow.ratio()
            + fast * slow * self.fast_and_slow.ratio();
        // Correlations that no fit gave may not go together.
        sqrt(max(0.0, square(share) + square(fast) + square(slow) + 2.0 * pairs))
    }

    /// Slopes of ln E(t) in f, %, ln τ1 and ln τ2.
    fn slopes(&self, time: Time) -> [f64; 3] {
        let share = self.kinetics.fast_share.fraction();
        let fast = time.seconds() / self.kinetics.fast.seconds();
        let slow = time.seconds() / self.kinetics.slow.seconds();
        let (of_fast, of_slow) = (one_minus_exp_minus(fast), one_minus_exp_minus(slow));
        let done = share * of_fast + (1.0 - share) * of_slow;
        if done == 0.0 {
            return [0.0; 3];
        }
        [
            0.01 * (of_fast - of_slow) / done,
            -share * fast * exp(-fast) / done,
            -(1.0 - share) * slow * exp(-slow) / done,
        ]
    }
}
