//! How fast a coffee extracts, as budgets and advice take it.

use super::{OneRate, TwoRates};
use crate::math::{max, min};
use crate::quantity::Correlation;
use crate::uncertainty::{Plateau, Rates};

/// The correlation of two values by their covariance; none where one is not uncertain.
pub(crate) fn correlation(covariance: f64, u: f64, other: f64) -> Correlation {
    let both = u * other;
    // Only rounding can bring it past one.
    Correlation::known(if both > 0.0 { max(-1.0, min(1.0, covariance / both)) } else { 0.0 })
}

impl OneRate {
    /// The law with how well it is known.
    pub fn rates(&self) -> Rates {
        Rates::one(self.equilibrium.value, &self.time)
    }

    /// How well its plateau is known.
    pub fn plateau(&self) -> Plateau {
        let (equilibrium, time) = (self.equilibrium.u, self.time.u);
        Plateau {
            u_equilibrium: equilibrium,
            equilibrium_and_share: Correlation::known(0.0),
            equilibrium_and_fast: correlation(self.covariance, equilibrium.percent(), time.ratio()),
            equilibrium_and_slow: Correlation::known(0.0),
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

    /// How well its plateau is known.
    pub fn plateau(&self) -> Plateau {
        let [[_, with_share, with_fast, with_slow], ..] = self.covariance;
        let equilibrium = self.equilibrium.u;
        let with = |covariance, u| correlation(covariance, equilibrium.percent(), u);
        Plateau {
            u_equilibrium: equilibrium,
            equilibrium_and_share: with(with_share, self.fast_share.u.percent()),
            equilibrium_and_fast: with(with_fast, self.fast.u.ratio()),
            equilibrium_and_slow: with(with_slow, self.slow.u.ratio()),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_not_uncertain_goes_together_with_nothing() {
        let of = |covariance, u, other| correlation(covariance, u, other).ratio();
        assert_eq!((of(-0.03, 0.2, 0.5), of(0.03, 0.2, 0.5)), (-0.3, 0.3));
        assert_eq!((of(0.0, 0.0, 0.5), of(0.1, 0.0, 0.5), of(-0.1, 0.2, 0.0)), (0.0, 0.0, 0.0));
        // Rounding alone brings it past one.
        assert_eq!((of(0.1000001, 0.2, 0.5), of(-0.1000001, 0.2, 0.5)), (1.0, -1.0));
    }
}
