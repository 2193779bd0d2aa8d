//! What a brew will be before it is made, and how surely.
//!
//! With the symbols of [`crate::extraction`] and [`crate::retention`], B = W − rD − losses, and
//!
//! ```text
//! N = E D(1 − s) − s(hD − V)     M = B(1 − φ) + φ(W + hD − V + ED)
//! T = N/M + s                    strength of the brew
//! T' = (T p + s A)/(p + A)       strength of the drink: A of water into a portion p of it
//! C = T B/D, or E                    yield as the window counts it: by the chart, or at the brewer's φ
//! ```
//!
//! The slopes of all three are exact, and carry the uncertainties by the rules of [`crate::uncertainty`].

use crate::decision;
use crate::dilution;
use crate::error::Error;
use crate::extraction::{self, Balance, Brew};
use crate::math::{max, min, sqrt, square};
use crate::quantity::{
    Addition, Beverage, BrewWater, Correlation, Dose, HeldStrength, MassUncertainty, Moisture,
    Probability, RetentionUncertainty, Strength, WaterSolids, Yield, YieldUncertainty, computed,
};
use crate::record::record;
use crate::retention::{self, Losses};
use crate::uncertainty::{Budget, Estimate, Input, Standard, Uncertain, combined, propagate};
use crate::verdict::{Counting, Window};

record! {
    /// A brew as it is meant to be made, each number with how far it may stray.
    pub struct Intended {
        /// Dose D; how well it is weighed.
        dose: Estimate<Dose> = "dose",
        /// Brew water W; how well the hand stops.
        water: Estimate<BrewWater> = "water",
        /// Yield E to expect by the brewer's own φ; how well it is known, and how far brews differ.
        extracted: Estimate<Yield> = "yield",
        /// What does not reach the cup.
        losses: Losses = "losses",
        /// How far the retention in it may be off.
        retention: Standard<RetentionUncertainty> = "retention",
        /// How far hold-up, paper, drips and vapour may be off together.
        other: Standard<MassUncertainty> = "other",
        /// Moisture h of the dose.
        moisture: Moisture = "moisture_pct",
        /// Solids s of the brew water and of water added.
        water_solids: WaterSolids = "water_solids_mg_per_l",
        /// Strength φ of the liquid kept, relative to the beverage.
        held_strength: HeldStrength = "held_strength_pct",
        /// Brew p that goes into a cup; without an addition it does not matter.
        portion: Estimate<Beverage> = "portion",
        /// Water A added to it; zero for none.
        added: Estimate<Addition> = "added",
    }
}

record! {
    /// How far a brew may stray from what is meant: the hand, the scale, the coffee, the brewer.
    pub struct Straying {
        /// The dose.
        dose: Standard<MassUncertainty> = "dose",
        /// Brew water, and water added in the cup.
        water: Standard<MassUncertainty> = "water",
        /// The yield from brew to brew.
        extracted: Standard<YieldUncertainty> = "yield",
        /// Retention of the grounds.
        retention: Standard<RetentionUncertainty> = "retention",
        /// Hold-up, paper, drips and vapour together.
        other: Standard<MassUncertainty> = "other",
    }
}

record! {
    /// What will come out, and how surely.
    pub struct Outlook {
        /// Beverage of the brew.
        beverage: Estimate<Beverage> = "beverage",
        /// Strength of the drink.
        strength: Estimate<Strength> = "strength",
        /// Yield as the window counts it; by the chart where it does not say.
        counted: Estimate<Yield> = "counted_yield",
        /// How far the two go together.
        correlation: Correlation = "correlation",
        /// Probability that the strength lies inside the window.
        strength_inside: Probability = "strength_inside_pct",
        /// Probability that the strength, and the yield where the window has one and says how it counts it,
        /// lie inside it.
        inside: Probability = "inside_pct",
    }
}

/// The numbers of an intended brew as the equations use them.
struct Numbers {
    d: f64,
    w: f64,
    e: f64,
    h: f64,
    s: f64,
    held: f64,
    r: f64,
    vapour: f64,
    fixed: f64,
}

/// How many inputs of an intended brew are uncertain.
const INPUTS: usize = 7;

/// A result and how it changes with each input, in the order of [`Intended::inputs`].
struct Sloped {
    value: f64,
    slopes: [f64; INPUTS],
}

/// The three results of an intended brew.
struct Results {
    beverage: Sloped,
    strength: Sloped,
    counted: Sloped,
}

impl Intended {
    fn brew(&self, beverage: Beverage) -> Brew {
        Brew {
            dose: self.dose.value,
            water: self.water.value,
            beverage,
            moisture: self.moisture,
            water_solids: self.water_solids,
            vapour: self.losses.vapour,
            held_strength: self.held_strength,
        }
    }

    /// The inputs with their slopes: dose, water, yield, retention, other losses, portion, addition.
    fn inputs(&self, slopes: [f64; INPUTS]) -> [Input; INPUTS] {
        let [dose, water, extracted, retention, other, portion, added] = slopes;
        let held = Estimate::with(self.losses.retention, self.retention);
        [
            Input::new(&self.dose, dose),
            Input::new(&self.water, water),
            Input::new(&self.extracted, extracted),
            Input::new(&held, retention),
            Input::error(&self.other, other),
            Input::new(&self.portion, portion),
            Input::new(&self.added, added),
        ]
    }

    fn results(&self) -> Result<Results, Error> {
        let expected = retention::beverage(&self.losses, self.dose.value, self.water.value)?;
        let of_brew = extraction::strength(&self.brew(expected), self.extracted.value)?;
        let drink = dilution::strength_after_water(
            self.portion.value,
            of_brew,
            self.added.value,
            self.water_solids,
        )?;
        let Numbers { d, w, e, h, s, held, r, vapour, .. } = self.numbers();
        let (b, t) = (expected.grams(), of_brew.percent());
        let kept = 1.0 - held;

        // By dose, water, yield in percent, retention, other losses; the rest do not touch the brew.
        let beverage = [-r, 1.0, 0.0, -d, -1.0, 0.0, 0.0];
        let numerator = [e * (1.0 - s) - s * h, 0.0, 0.01 * d * (1.0 - s), 0.0, 0.0, 0.0, 0.0];
        let denominator =
            [held * (h + e) - r * kept, 1.0, 0.01 * held * d, -d * kept, -kept, 0.0, 0.0];
        let all = b * kept + held * (w + h * d - vapour + e * d);
        let solids = of_brew.fraction() - s;
        let (portion, added) = (self.portion.value.grams(), self.added.value.grams());
        let (mixed, water) = (drink.percent(), 100.0 * s);

        let mut strength = [0.0; INPUTS];
        let mut counted = [0.0; INPUTS];
        let slopes = strength.iter_mut().zip(&mut counted);
        let parts = numerator.iter().zip(&denominator).zip(&beverage);
        for ((of_strength, of_counted), ((n, m), by)) in slopes.zip(parts) {
            let of_solids = 100.0 * (n - solids * m) / all;
            *of_strength = of_solids * portion / (portion + added);
            *of_counted = (of_solids * b + t * by) / d;
        }
        let counted_value = t * b / d;
        let [by_dose, ..] = &mut counted;
        *by_dose -= counted_value / d;
        let [.., by_portion, by_added] = &mut strength;
        *by_portion = (t - mixed) / (portion + added);
        *by_added = (water - mixed) / (portion + added);
        Ok(Results {
            beverage: Sloped { value: b, slopes: beverage },
            strength: Sloped { value: mixed, slopes: strength },
            counted: Sloped { value: counted_value, slopes: counted },
        })
    }

    /// The yield at the brewer's own φ is what is expected.
    fn by_mass_balance(&self) -> Sloped {
        let value = self.extracted.value.percent();
        Sloped { value, slopes: [0.0, 0.0, 1.0, 0.0, 0.0, 0.0, 0.0] }
    }

    fn numbers(&self) -> Numbers {
        let (d, w) = (self.dose.value.grams(), self.water.value.grams());
        let (h, s) = (self.moisture.fraction(), self.water_solids.fraction());
        let held = self.held_strength.fraction();
        let (r, vapour) = (self.losses.retention.grams_per_gram(), self.losses.vapour.grams());
        let fixed = self.losses.fixed();
        Numbers { d, w, e: self.extracted.value.fraction(), h, s, held, r, vapour, fixed }
    }

    /// Dose that makes the brew so strong, g; any number where none does.
    pub(crate) fn dose_for(&self, wanted: Strength) -> f64 {
        let Numbers { w, e, h, s, held, r, vapour, fixed, .. } = self.numbers();
        let tau = wanted.fraction() - s;
        let per_dose = held * (h + e) - (1.0 - held) * r;
        let rest = (1.0 - held) * (w - fixed) + held * (w - vapour);
        (tau * rest - s * vapour) / (e * (1.0 - s) - s * h - tau * per_dose)
    }

    /// Brew water that makes the brew so strong, g; any number where none does.
    pub(crate) fn water_for(&self, wanted: Strength) -> f64 {
        let Numbers { d, e, h, s, held, r, vapour, fixed, .. } = self.numbers();
        let bean_water = h * d - vapour;
        let coffee = e * d * (1.0 - s) - s * bean_water;
        let rest = (1.0 - held) * (-r * d - fixed) + held * (bean_water + e * d);
        coffee / (wanted.fraction() - s) - rest
    }

    /// Yield that makes the brew so strong, %; any number where none does.
    pub(crate) fn yield_for(&self, wanted: Strength) -> f64 {
        let Numbers { d, w, h, s, held, r, vapour, fixed, .. } = self.numbers();
        let tau = wanted.fraction() - s;
        let bean_water = h * d - vapour;
        let rest = (1.0 - held) * (w - r * d - fixed) + held * (w + bean_water);
        100.0 * (tau * rest + s * bean_water) / (d * (1.0 - s - tau * held))
    }

    /// Yield by the brewer's φ at which a window counts a yield; none where no strength gives that.
    pub(crate) fn yield_for_counted(&self, counted: Yield, counting: Counting) -> Option<f64> {
        if counting == Counting::MassBalance {
            return Some(counted.percent());
        }
        let beverage = retention::beverage(&self.losses, self.dose.value, self.water.value).ok()?;
        let strength =
            extraction::flow_through_strength(counted, beverage, self.dose.value).ok()?;
        Some(self.yield_for(strength))
    }

    /// Dose that makes the brew so strong where a window counts such a yield, g.
    pub(crate) fn dose_for_counted(
        &self,
        counted: Yield,
        counting: Counting,
        wanted: Strength,
    ) -> f64 {
        if counting == Counting::MassBalance {
            let extracted = Estimate { value: counted, ..self.extracted };
            return Self { extracted, ..*self }.dose_for(wanted);
        }
        let Numbers { w, r, fixed, .. } = self.numbers();
        // C = T B/D with B = W − rD − losses.
        let t = wanted.fraction();
        t * (w - fixed) / (counted.fraction() + t * r)
    }

    /// The results from any inputs, for what the linear rule leaves out: strength of the drink and counted yield.
    fn model(&self, [d, w, e, r, other, portion, added]: [f64; INPUTS]) -> (f64, f64) {
        let Numbers { h, s, held, vapour, fixed, .. } = self.numbers();
        let beverage = w - r * d - fixed - other;
        let bean_water = h * d - vapour;
        let missing = w + bean_water - beverage;
        let balance = Balance { dose: d, beverage, bean_water, missing, solids: s, held };
        let t = balance.coffee_solids(0.01 * e * d) + s;
        (100.0 * (t * portion + s * added) / (portion + added), 100.0 * t * beverage / d)
    }
}

/// Budget of the strength that the drink will have.
///
/// ```text
/// T' = (T p + s A)/(p + A),   T = N/M + s
/// ```
///
/// Symbols: see the [module](self). Source: conservation of water and solids; GUM 5.1.2.
///
/// Terms: dose, brew water, yield, retention, other losses, portion, addition. Equations: see the
/// [module](self).
///
/// # Errors
/// As [`retention::beverage`], [`extraction::strength`] and [`dilution::strength_after_water`];
/// [`Error::ResultOutOfRange`] for an uncertainty past its range.
pub fn strength(intended: &Intended) -> Result<Budget<Strength>, Error> {
    let Sloped { value, slopes } = intended.results()?.strength;
    propagate(computed(value)?, intended.inputs(slopes), |inputs| intended.model(inputs).0)
}

/// Budget of the yield as the control chart will count it.
///
/// ```text
/// C = T B/D
/// ```
///
/// Symbols: see the [module](self). Source: conservation of water and solids; GUM 5.1.2.
///
/// Terms: as [`strength`].
///
/// # Errors
/// As [`strength`]; [`Error::ResultOutOfRange`] for a yield above 100 %.
pub fn counted_yield(intended: &Intended) -> Result<Budget<Yield>, Error> {
    let Sloped { value, slopes } = intended.results()?.counted;
    propagate(computed(value)?, intended.inputs(slopes), |inputs| intended.model(inputs).1)
}

/// What a brew will be, and the chance that it lies in a window.
///
/// ```text
/// P(inside) = P(strength and yield inside), correlated by the inputs that they share
/// ```
///
/// Symbols: P by [`decision::joint`]; the others, see the [module](self). Source: conservation of
/// water and solids; GUM 5.2.2; the chance by JCGM 106:2012, 7.
///
/// # Errors
/// As [`strength`] and [`counted_yield`].
///
/// ```
/// # use cupwright::{forecast::{self, *}, quantity::*, retention::*, uncertainty::*, verdict};
/// // 13.4 g and 214 g, by a hand that strays by a gram or two and a coffee that strays by half a point.
/// let gram = |u| MassUncertainty::from_grams(u).map(Standard::known);
/// let intended = Intended {
///     dose: Estimate::with(Dose::from_grams(13.4)?, gram(0.06)?),
///     water: Estimate::with(BrewWater::from_grams(214.0)?, gram(2.0)?),
///     extracted: Estimate::with(
///         Yield::from_percent(20.8)?,
///         Standard::known(YieldUncertainty::from_percent(0.5)?),
///     ),
///     losses: Losses {
///         retention: ApparentRetention::from_grams_per_gram(1.35)?,
///         hold_up: HoldUp::from_grams(3.0)?,
///         paper: Paper::None,
///         drips: Drips::NONE,
///         vapour: Vapour::NONE,
///     },
///     retention: Standard::known(RetentionUncertainty::from_grams_per_gram(0.1)?),
///     other: gram(1.0)?,
///     moisture: Moisture::from_percent(1.8)?,
///     water_solids: WaterSolids::NONE,
///     held_strength: HeldStrength::STEEPED,
///     portion: Estimate::exact(Beverage::from_grams(190.0)?),
///     added: Estimate::exact(Addition::from_grams(0.0)?),
/// };
/// let outlook = forecast::outlook(&intended, &verdict::HOME_BREWER_2018.window)?;
/// assert_eq!(format!("{} ± {}", outlook.strength.value, outlook.strength.u), "1.28 % ± 0.033 %");
/// assert_eq!(format!("{:.0}", outlook.inside), "85 %");
/// # Ok::<(), cupwright::Error>(())
/// ```
pub fn outlook(intended: &Intended, window: &Window) -> Result<Outlook, Error> {
    let Results { beverage, strength, counted } = intended.results()?;
    let counted = match window.counting {
        Counting::MassBalance => intended.by_mass_balance(),
        _ => counted,
    };
    let of_beverage = linear(computed(beverage.value)?, &intended.inputs(beverage.slopes))?;
    let by_strength = intended.inputs(strength.slopes);
    let by_counted = intended.inputs(counted.slopes);
    let of_strength = linear(computed(strength.value)?, &by_strength)?;
    let of_counted = linear(computed(counted.value)?, &by_counted)?;
    let correlation = correlation(&by_strength, &by_counted);
    Ok(Outlook::of(window, of_beverage, of_strength, of_counted, correlation))
}

/// A value with the uncertainty that its inputs give it, by the linear rule.
pub(crate) fn linear<M: Uncertain>(value: M, inputs: &[Input]) -> Result<Estimate<M>, Error> {
    let (u, freedom) = combined(|at| inputs.get(at).map(Input::term));
    Ok(Estimate { value, u: computed(u)?, freedom })
}

/// How far two results of the same inputs go together; 0 where one is not uncertain.
pub(crate) fn correlation(first: &[Input], second: &[Input]) -> Correlation {
    let (mut shared, mut of_first, mut of_second) = (0.0, 0.0, 0.0);
    for (a, b) in first.iter().zip(second) {
        let (a, b) = (a.sensitivity * a.u, b.sensitivity * b.u);
        shared += a * b;
        of_first += square(a);
        of_second += square(b);
    }
    let apart = sqrt(of_first) * sqrt(of_second);
    // Only rounding can bring it past one.
    Correlation::known(if apart > 0.0 { max(-1.0, min(1.0, shared / apart)) } else { 0.0 })
}

impl Outlook {
    pub(crate) fn of(
        window: &Window,
        beverage: Estimate<Beverage>,
        strength: Estimate<Strength>,
        counted: Estimate<Yield>,
        correlation: Correlation,
    ) -> Self {
        let strength_inside = decision::chances(&strength, &window.strength).inside;
        let inside = match window.judged() {
            Some(band) => {
                decision::joint(&strength, &counted, correlation, &window.strength, band).both
            }
            None => strength_inside,
        };
        Self { beverage, strength, counted, correlation, strength_inside, inside }
    }
}

#[cfg(test)]
#[allow(clippy::indexing_slicing)]
mod tests {
    use super::*;
    use crate::quantity::{Drips, HoldUp, Measure, Vapour};
    use crate::retention::Paper;

    const INTENDED: [f64; INPUTS] = [15.0, 230.0, 20.5, 1.4, 0.0, 160.0, 35.0];

    /// Invented: of everything a little.
    fn intended([d, w, e, r, other, portion, added]: [f64; INPUTS]) -> Intended {
        Intended {
            dose: Estimate::with(Dose::known(d), Standard::known(MassUncertainty::known(0.1))),
            water: Estimate::with(
                BrewWater::known(w),
                Standard::known(MassUncertainty::known(2.0)),
            ),
            extracted: Estimate::with(
                Yield::known(e),
                Standard::known(YieldUncertainty::known(0.4)),
            ),
            losses: Losses {
                retention: Measure::new(r).unwrap(),
                hold_up: HoldUp::known(3.0 + other),
                paper: Paper::Rinsed,
                drips: Drips::known(1.0),
                vapour: Vapour::known(2.5),
            },
            retention: Standard::known(RetentionUncertainty::known(0.1)),
            other: Standard::known(MassUncertainty::known(1.0)),
            moisture: Moisture::known(3.0),
            water_solids: WaterSolids::known(300.0),
            held_strength: HeldStrength::known(70.0),
            portion: Estimate::with(
                Beverage::known(portion),
                Standard::known(MassUncertainty::known(0.2)),
            ),
            added: Estimate::with(
                Addition::known(added),
                Standard::known(MassUncertainty::known(0.3)),
            ),
        }
    }

    /// Strength of the drink and counted yield, by the models one after the other.
    fn forward(inputs: [f64; INPUTS]) -> (f64, f64) {
        let it = intended(inputs);
        let beverage = retention::beverage(&it.losses, it.dose.value, it.water.value).unwrap();
        let brew = extraction::strength(&it.brew(beverage), it.extracted.value).unwrap();
        let (portion, added) = (it.portion.value, it.added.value);
        let drink = dilution::strength_after_water(portion, brew, added, it.water_solids).unwrap();
        let counted = extraction::flow_through_yield(brew, beverage, it.dose.value).unwrap();
        (drink.percent(), counted.percent())
    }

    fn near(got: f64, wanted: f64, within: f64) {
        assert!((got - wanted).abs() <= within * max(wanted.abs(), 1e-3), "{got} for {wanted}");
    }

    /// Inputs moved one at a time, down and up by a part of their size.
    fn moved(by: f64, mut look: impl FnMut(usize, f64, [f64; INPUTS], [f64; INPUTS])) {
        for at in 0..INPUTS {
            let (mut down, mut up) = (INTENDED, INTENDED);
            let far = by * if at == 4 { 10.0 } else { INTENDED[at] };
            down[at] -= far;
            up[at] += far;
            look(at, far, down, up);
        }
    }

    #[test]
    fn what_is_forecast_is_the_models_one_after_the_other() {
        let it = intended(INTENDED);
        moved(0.1, |_, _, down, up| {
            for inputs in [INTENDED, down, up] {
                let (strength, counted) = forward(inputs);
                let (told_strength, told_counted) = it.model(inputs);
                near(told_strength, strength, 1e-13);
                near(told_counted, counted, 1e-13);
            }
        });
        let told = it.results().unwrap();
        near(told.strength.value, forward(INTENDED).0, 1e-13);
        near(told.counted.value, forward(INTENDED).1, 1e-13);
    }

    #[test]
    fn slopes_are_those_of_the_models() {
        let Results { beverage, strength, counted } = intended(INTENDED).results().unwrap();
        let beverage_of = |inputs| {
            let it = intended(inputs);
            retention::beverage(&it.losses, it.dose.value, it.water.value).unwrap().grams()
        };
        moved(1e-4, |at, far, down, up| {
            let slope = |low: f64, high: f64| (high - low) / (2.0 * far);
            near(beverage.slopes[at], slope(beverage_of(down), beverage_of(up)), 1e-6);
            near(strength.slopes[at], slope(forward(down).0, forward(up).0), 1e-6);
            near(counted.slopes[at], slope(forward(down).1, forward(up).1), 1e-6);
        });
    }

    #[test]
    fn dose_water_and_yield_for_a_strength_make_it() {
        let it = intended(INTENDED);
        let [d, w, e, r, other, portion, _] = INTENDED;
        for wanted in [1.05, 1.4, 1.9] {
            let strength = Strength::known(wanted);
            let brew = |d, w, e| forward([d, w, e, r, other, portion, 0.0]).0;
            near(brew(it.dose_for(strength), w, e), wanted, 1e-12);
            near(brew(d, it.water_for(strength), e), wanted, 1e-12);
            near(brew(d, w, it.yield_for(strength)), wanted, 1e-12);
        }
    }

    #[test]
    fn yield_and_dose_for_a_counted_yield_are_counted_so() {
        let it = intended(INTENDED);
        let [d, w, e, r, other, portion, _] = INTENDED;
        let brew = |d, e| forward([d, w, e, r, other, portion, 0.0]);
        for percent in [17.0, 19.5, 22.0] {
            let counted = Yield::known(percent);
            assert_eq!(it.yield_for_counted(counted, Counting::MassBalance), Some(percent));
            let by_chart = it.yield_for_counted(counted, Counting::FlowThrough).unwrap();
            near(brew(d, by_chart).1, percent, 1e-12);

            let wanted = Strength::known(1.3);
            let dose = it.dose_for_counted(counted, Counting::MassBalance, wanted);
            near(brew(dose, percent).0, 1.3, 1e-12);
            let dose = it.dose_for_counted(counted, Counting::FlowThrough, wanted);
            let beverage = w - r * dose - it.losses.fixed();
            near(1.3 * beverage / dose, percent, 1e-12);
        }
        // Without a beverage there is no yield to count.
        let dry = intended([d, 25.0, e, r, other, portion, 0.0]);
        assert_eq!(dry.yield_for_counted(Yield::known(20.0), Counting::FlowThrough), None);
    }

    #[test]
    fn results_of_the_same_inputs_go_together_as_far_as_they_share_them() {
        let inputs = |slopes| intended(INTENDED).inputs(slopes);
        let of_dose = [1.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0];
        let opposite = of_dose.map(|slope| -3.0 * slope);
        // Dose ± 0.1 and water ± 2: as large as each other.
        let of_both = [20.0, 1.0, 0.0, 0.0, 0.0, 0.0, 0.0];
        for (first, second, wanted) in [
            (of_dose, of_dose, 1.0),
            (of_dose, opposite, -1.0),
            (of_dose, of_both, sqrt(0.5)),
            (of_dose, [0.0; INPUTS], 0.0),
        ] {
            near(correlation(&inputs(first), &inputs(second)).ratio(), wanted, 1e-15);
        }
    }
}
