//! How well a law of extraction is known, and what that makes of its yields and times.

use super::{Budget, Estimate, Input, Standard, Term, Uncertainty, propagate_by};
use crate::error::Error;
use crate::extraction::{self, Kinetics};
use crate::math::{exp, max, min, one_minus_exp_minus, sqrt, square};
use crate::quantity::{
    Correlation, DegreesOfFreedom, Quantity, Share, ShareUncertainty, StandardUncertainty, Time,
    TimeConstant, TimeConstantUncertainty, Yield, YieldUncertainty,
};
use crate::record::record;

record! {
    /// How fast a coffee extracts, and how well that is known.
    ///
    /// How well the plateau E∞ is known stands apart, in [`Plateau`]: whoever changes a time starts from a cup that has
    /// a yield of its own.
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

record! {
    /// How well the plateau E∞ of some [`Rates`] is known, as the same fit told it.
    pub struct Plateau {
        /// Standard uncertainty of E∞.
        u_equilibrium: YieldUncertainty = "u_equilibrium_yield_pct",
        /// Correlation of E∞ and f.
        equilibrium_and_share: Correlation = "correlation_equilibrium_share",
        /// Correlation of E∞ and ln τ1.
        equilibrium_and_fast: Correlation = "correlation_equilibrium_fast",
        /// Correlation of E∞ and ln τ2.
        equilibrium_and_slow: Correlation = "correlation_equilibrium_slow",
    }
}

impl Rates {
    /// A law of one rate, all of it fast.
    pub(crate) fn one(equilibrium: Yield, time: &Estimate<TimeConstant>) -> Self {
        let none = Correlation::known(0.0);
        let (fast_share, fast, slow) = (Share::known(100.0), time.value, time.value);
        Self {
            kinetics: Kinetics { equilibrium, fast_share, fast, slow },
            u_fast_share: ShareUncertainty::NONE,
            u_fast: time.u,
            u_slow: TimeConstantUncertainty::NONE,
            share_and_fast: none,
            share_and_slow: none,
            fast_and_slow: none,
            freedom: time.freedom,
        }
    }

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

/// How many parameters a law of extraction has.
const PARAMETERS: usize = 4;

/// A law of extraction and what it is uncertain by: as many independent errors as it has parameters, each of
/// size one. What a fit tells together stays together so.
struct Law<'a> {
    rates: &'a Rates,
    /// E∞ in %, f in %, ln τ1, ln τ2, each by the errors: the root of their covariance.
    by_errors: [[f64; PARAMETERS]; PARAMETERS],
}

impl<'a> Law<'a> {
    /// Cholesky's root of the correlations, each row times its uncertainty. Correlations that no fit gave may not
    /// go together: then no row grows longer than its uncertainty.
    fn of(rates: &'a Rates, plateau: &Plateau) -> Self {
        let share = plateau.equilibrium_and_share.ratio();
        let of_share = left([share]);
        let fast = plateau.equilibrium_and_fast.ratio();
        let fast_share =
            within(over(rates.share_and_fast.ratio() - fast * share, of_share), left([fast]));
        let of_fast = left([fast, fast_share]);
        let slow = plateau.equilibrium_and_slow.ratio();
        let slow_share =
            within(over(rates.share_and_slow.ratio() - slow * share, of_share), left([slow]));
        let both = slow * fast + slow_share * fast_share;
        let slow_fast =
            within(over(rates.fast_and_slow.ratio() - both, of_fast), left([slow, slow_share]));
        let of_slow = left([slow, slow_share, slow_fast]);
        let row = |u: f64, row: [f64; PARAMETERS]| row.map(|of| u * of);
        Self {
            rates,
            by_errors: [
                row(plateau.u_equilibrium.percent(), [1.0, 0.0, 0.0, 0.0]),
                row(rates.u_fast_share.percent(), [share, of_share, 0.0, 0.0]),
                row(rates.u_fast.ratio(), [fast, fast_share, of_fast, 0.0]),
                row(rates.u_slow.ratio(), [slow, slow_share, slow_fast, of_slow]),
            ],
        }
    }

    /// Slopes of E(t), %, in the errors.
    fn slopes(&self, time: Time) -> [f64; PARAMETERS] {
        let extracted = extraction::yield_at_time(&self.rates.kinetics, time).percent();
        let [share, fast, slow] = self.rates.slopes(time).map(|of_ln| extracted * of_ln);
        let done = extracted / self.rates.kinetics.equilibrium.percent();
        let mut slopes = [0.0; PARAMETERS];
        for (row, slope) in self.by_errors.iter().zip([done, share, fast, slow]) {
            slopes.iter_mut().zip(row).for_each(|(sum, by)| *sum += slope * by);
        }
        slopes
    }

    /// Rate of extraction at a time, %/s.
    fn speed(&self, time: Time) -> f64 {
        let Kinetics { equilibrium, fast_share, fast, slow } = self.rates.kinetics;
        let (t, share) = (time.seconds(), fast_share.fraction());
        let of = |tau: f64| exp(-t / tau) / tau;
        equilibrium.percent() * (share * of(fast.seconds()) + (1.0 - share) * of(slow.seconds()))
    }

    /// The law with its errors at some values: E∞ in %, f, τ1, τ2.
    fn moved(&self, errors: [f64; PARAMETERS]) -> [f64; PARAMETERS] {
        let Kinetics { equilibrium, fast_share, fast, slow } = self.rates.kinetics;
        let [by_level, by_share, by_fast, by_slow] = self
            .by_errors
            .map(|row| row.iter().zip(errors).map(|(by, error)| by * error).sum::<f64>());
        [
            equilibrium.percent() + by_level,
            fast_share.fraction() + 0.01 * by_share,
            fast.seconds() * exp(by_fast),
            slow.seconds() * exp(by_slow),
        ]
    }

    /// The errors as inputs of a model.
    fn inputs(&self, slopes: [f64; PARAMETERS]) -> [Input; PARAMETERS] {
        let one = Standard { u: StandardUncertainty::known(1.0), freedom: self.rates.freedom };
        slopes.map(|slope| Input::error(&one, slope))
    }

    /// The line of a budget for all of them together, from their slopes in E(t).
    fn term(&self, slopes: &[f64; PARAMETERS], sensitivity: f64) -> Term {
        Term {
            source: Quantity::YieldUncertainty,
            sensitivity,
            u: sqrt(slopes.iter().map(|slope| square(*slope)).sum::<f64>()),
            freedom: self.rates.freedom,
        }
    }
}

/// What is left of a row of length one.
fn left<const N: usize>(row: [f64; N]) -> f64 {
    sqrt(max(0.0, 1.0 - row.iter().map(|of| square(*of)).sum::<f64>()))
}

/// A quotient; none over nothing.
fn over(value: f64, by: f64) -> f64 {
    if by > 0.0 { value / by } else { 0.0 }
}

/// A number no farther from zero than `most`.
fn within(value: f64, most: f64) -> f64 {
    max(-most, min(most, value))
}

/// Yield after a time of contact ([`extraction::yield_at_time`]).
///
/// ```text
/// u²(E) = Σ cᵢ cⱼ rᵢⱼ uᵢ uⱼ + (Ė u(t))²   over E∞, f, ln τ1, ln τ2
/// ∂E/∂E∞ = E/E∞    ∂E/∂f = E∞ (e^(−t/τ2) − e^(−t/τ1))    ∂E/∂ln τ1 = −E∞ f (t/τ1) e^(−t/τ1)    and for τ2 alike
/// Ė = E∞ [ (f/τ1) e^(−t/τ1) + ((1 − f)/τ2) e^(−t/τ2) ]
/// ```
///
/// Symbols: c derivatives, r correlations and u standard uncertainties of the parameters; the
/// others as for [`extraction::yield_at_time`], Ė how fast the yield grows.
///
/// Terms: the law, time. The parameters of a law come from one fit and go together, so that they are one
/// term, in points of yield: counted apart they would seem far less certain within the times that were
/// measured. Its ν is that of the fit. How far brews differ is no part of it. Source: GUM 5.2.2.
///
/// # Errors
/// [`Error::ResultOutOfRange`] for an uncertainty past its range.
///
/// ```
/// # use cupwright::{calibrate::{self, Timed}, quantity::*, uncertainty::{self, *}};
/// let timed = |contact, extracted| {
///     Ok::<_, cupwright::Error>(Timed {
///         contact: Time::from_seconds(contact)?,
///         extracted: Yield::from_percent(extracted)?,
///     })
/// };
/// // Invented steeps.
/// let steeps = [timed(30.0, 9.1)?, timed(60.0, 13.9)?, timed(120.0, 18.6)?, timed(300.0, 20.7)?];
/// let coffee = calibrate::one_rate(&steeps)?;
/// let hand = Standard::known(TimeUncertainty::from_seconds(3.0)?);
/// let two_minutes = Estimate::with(Time::from_seconds(120.0)?, hand);
/// let extracted =
///     uncertainty::yield_at_time(&coffee.rates(), &coffee.plateau(), &two_minutes)?.estimate;
/// assert_eq!(format!("{} ± {}", extracted.value, extracted.u), "18.58 % ± 0.15 %");
/// # Ok::<(), cupwright::Error>(())
/// ```
pub fn yield_at_time(
    rates: &Rates,
    plateau: &Plateau,
    contact: &Estimate<Time>,
) -> Result<Budget<Yield>, Error> {
    let law = Law::of(rates, plateau);
    let extracted = extraction::yield_at_time(&rates.kinetics, contact.value);
    let slopes = law.slopes(contact.value);
    let time = Input::new(contact, law.speed(contact.value));
    let terms = [law.term(&slopes, 1.0), time.term()];
    let [level, share, fast, slow] = law.inputs(slopes);
    propagate_by(extracted, &terms, [level, share, fast, slow, time], |[a, b, c, d, t]| {
        let [level, share, fast, slow] = law.moved([a, b, c, d]);
        let done =
            share * one_minus_exp_minus(t / fast) + (1.0 - share) * one_minus_exp_minus(t / slow);
        level * done
    })
}

/// Time of contact after which a yield is reached ([`extraction::time_for_yield`]).
///
/// ```text
/// u(t) = u(E)/Ė    u(E) and Ė at that time, as for yield_at_time
/// ```
///
/// Symbols: t time, E yield, Ė how fast it grows. Source: GUM 5.2.2.
///
/// Terms: the law. The wish is exact. Near the plateau a yield hardly grows, and no time is sure.
///
/// # Errors
/// As [`extraction::time_for_yield`]; [`Error::ResultOutOfRange`] for an uncertainty past its range.
///
/// ```
/// # use cupwright::{calibrate::{self, Timed}, quantity::*, uncertainty};
/// let timed = |contact, extracted| {
///     Ok::<_, cupwright::Error>(Timed {
///         contact: Time::from_seconds(contact)?,
///         extracted: Yield::from_percent(extracted)?,
///     })
/// };
/// // Invented steeps.
/// let steeps = [timed(30.0, 9.1)?, timed(60.0, 13.9)?, timed(120.0, 18.6)?, timed(300.0, 20.7)?];
/// let coffee = calibrate::one_rate(&steeps)?;
/// let wanted = Yield::from_percent(20.0)?;
/// let wait = uncertainty::time_for_yield(&coffee.rates(), &coffee.plateau(), wanted)?.estimate;
/// assert_eq!(format!("{} ± {}", wait.value, wait.u), "176 s ± 7 s");
/// # Ok::<(), cupwright::Error>(())
/// ```
pub fn time_for_yield(
    rates: &Rates,
    plateau: &Plateau,
    wanted: Yield,
) -> Result<Budget<Time>, Error> {
    let law = Law::of(rates, plateau);
    let time = extraction::time_for_yield(&rates.kinetics, wanted)?;
    let (slopes, by_yield) = (law.slopes(time), -1.0 / law.speed(time));
    let terms = [law.term(&slopes, by_yield)];
    let inputs = law.inputs(slopes.map(|slope| slope * by_yield));
    propagate_by(time, &terms, inputs, |errors| {
        let [level, share, fast, slow] = law.moved(errors);
        extraction::seconds_until(wanted.percent() / level, share, fast, slow)
    })
}

#[cfg(test)]
#[allow(clippy::indexing_slicing, clippy::arithmetic_side_effects)]
mod tests {
    use super::*;
    use crate::quantity::Measure;

    fn value<M: Measure>(x: f64) -> M {
        M::accept(x).unwrap()
    }

    fn near(a: f64, b: f64, share: f64) {
        assert!((a - b).abs() <= share * (1.0 + b.abs()), "{a} {b}");
    }

    const U: [f64; PARAMETERS] = [0.8, 4.0, 0.15, 0.12];

    /// An invented law of two rates with these correlations.
    fn law(r: [[f64; PARAMETERS]; PARAMETERS]) -> (Rates, Plateau) {
        let kinetics = Kinetics {
            equilibrium: value(22.0),
            fast_share: value(45.0),
            fast: value(10.0),
            slow: value(120.0),
        };
        let rates = Rates {
            kinetics,
            u_fast_share: value(U[1]),
            u_fast: value(U[2]),
            u_slow: value(U[3]),
            share_and_fast: value(r[1][2]),
            share_and_slow: value(r[1][3]),
            fast_and_slow: value(r[2][3]),
            freedom: value(5.0),
        };
        let plateau = Plateau {
            u_equilibrium: value(U[0]),
            equilibrium_and_share: value(r[0][1]),
            equilibrium_and_fast: value(r[0][2]),
            equilibrium_and_slow: value(r[0][3]),
        };
        (rates, plateau)
    }

    fn symmetric([a, b, c, d, e, f]: [f64; 6]) -> [[f64; PARAMETERS]; PARAMETERS] {
        [[1.0, a, b, c], [a, 1.0, d, e], [b, d, 1.0, f], [c, e, f, 1.0]]
    }

    /// Of the errors, each of size one, the covariances come out again as they went in.
    #[test]
    fn the_errors_of_a_law_have_its_covariances() {
        for r in [[-0.3, 0.4, 0.6, 0.5, -0.7, -0.2], [0.0; 6], [0.9, 0.5, -0.4, 0.3, -0.2, 0.1]] {
            let r = symmetric(r);
            let (rates, plateau) = law(r);
            let rows = Law::of(&rates, &plateau).by_errors;
            for (i, one) in rows.iter().enumerate() {
                for (j, other) in rows.iter().enumerate() {
                    let covariance = one.iter().zip(other).map(|(a, b)| a * b).sum::<f64>();
                    near(covariance, r[i][j] * U[i] * U[j], 1e-14);
                }
            }
        }
    }

    /// Correlations that cannot go together are kept as long as they can be, and every uncertainty is.
    #[test]
    fn no_correlations_change_an_uncertainty() {
        let signs = [-1.0, -0.6, 0.0, 0.6, 1.0];
        for number in 0..15_625_usize {
            let mut left = number;
            let r = [0; 6].map(|_| {
                let sign = signs[left % 5];
                left /= 5;
                sign
            });
            let (rates, plateau) = law(symmetric(r));
            let rows = Law::of(&rates, &plateau).by_errors;
            for ((row, u), first) in rows.iter().zip(U).zip([1.0, r[0], r[1], r[2]]) {
                near(row.iter().map(|of| of * of).sum::<f64>(), u * u, 1e-12);
                near(row[0], u * first, 1e-15);
            }
        }
        // What a row cannot have of another is cut to what is left of it.
        let (rates, plateau) = law(symmetric([0.0, 0.8, 0.0, 1.0, 0.0, 0.0]));
        near(Law::of(&rates, &plateau).by_errors[2][1], 0.6 * U[2], 1e-15);
        let (rates, plateau) = law(symmetric([1.0, 0.5, 0.0, -1.0, 0.0, 0.0]));
        near(Law::of(&rates, &plateau).by_errors[2][1], 0.0, 1e-15);
    }

    /// Slopes are those of the law where its errors move it, its speed that in time.
    #[test]
    fn slopes_are_those_of_a_law_that_is_moved() {
        let (rates, plateau) = law(symmetric([-0.3, 0.4, 0.6, 0.5, -0.7, -0.2]));
        let law = Law::of(&rates, &plateau);
        let extracted = |errors: [f64; PARAMETERS], t: f64| {
            let [level, share, fast, slow] = law.moved(errors);
            level * (share * (1.0 - exp(-t / fast)) + (1.0 - share) * (1.0 - exp(-t / slow)))
        };
        for t in [2.0, 15.0, 80.0, 400.0] {
            let time = value::<Time>(t);
            let told = extraction::yield_at_time(&rates.kinetics, time).percent();
            near(extracted([0.0; PARAMETERS], t), told, 1e-13);
            let slopes = law.slopes(time);
            for (at, slope) in slopes.into_iter().enumerate() {
                let moved = |by| {
                    let mut errors = [0.0; PARAMETERS];
                    errors[at] = by;
                    extracted(errors, t)
                };
                near(slope, (moved(1e-4) - moved(-1e-4)) / 2e-4, 1e-7);
            }
            let speed = (extracted([0.0; PARAMETERS], t + 1e-3)
                - extracted([0.0; PARAMETERS], t - 1e-3))
                / 2e-3;
            near(law.speed(time), speed, 1e-7);
            near(law.term(&slopes, 1.0).u, sqrt(slopes.iter().map(|s| s * s).sum::<f64>()), 1e-14);
        }
        assert_eq!(rates.slopes(value(0.0)), [0.0; 3], "nothing has been extracted yet");
    }

    /// u of ln E(t')/E(t) is that of all parts but the level, which both have in common.
    #[test]
    fn of_a_ratio_the_level_is_no_part() {
        let r = symmetric([0.0, 0.0, 0.0, 0.5, -0.7, -0.2]);
        let (rates, plateau) = law(r);
        let law = Law::of(&rates, &plateau);
        let ln_ratio = |errors: [f64; PARAMETERS]| {
            let [level, share, fast, slow] = law.moved(errors);
            let at = |t: f64| {
                level * (share * (1.0 - exp(-t / fast)) + (1.0 - share) * (1.0 - exp(-t / slow)))
            };
            crate::math::ln(at(200.0) / at(30.0))
        };
        let variance = (0..PARAMETERS).map(|at| {
            let moved = |by| {
                let mut errors = [0.0; PARAMETERS];
                errors[at] = by;
                ln_ratio(errors)
            };
            square((moved(1e-4) - moved(-1e-4)) / 2e-4)
        });
        let u = rates.u_of_ratio(value(30.0), value(200.0));
        near(u, sqrt(variance.sum::<f64>()), 1e-7);
        assert!(u > 0.0, "{u}");
        assert_eq!(rates.u_of_ratio(value(30.0), value(30.0)), 0.0);
        // Correlations that cannot go together leave nothing rather than less.
        let apart = Rates {
            share_and_fast: value(-1.0),
            share_and_slow: value(-1.0),
            fast_and_slow: value(-1.0),
            ..rates
        };
        assert!(apart.u_of_ratio(value(30.0), value(200.0)) >= 0.0);
    }

    #[test]
    fn parts_of_a_root() {
        near(left([0.6, 0.0]), 0.8, 1e-15);
        assert_eq!((left([0.8, 0.8]), left([1.0])), (0.0, 0.0));
        assert_eq!((over(3.0, 2.0), over(3.0, 0.0)), (1.5, 0.0));
        assert_eq!((within(0.5, 1.0), within(2.0, 1.0), within(-2.0, 1.0)), (0.5, 1.0, -1.0));
    }
}
