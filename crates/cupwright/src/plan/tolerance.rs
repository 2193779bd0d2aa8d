//! How far dose and water may stray before the drink leaves its window.

use super::Tolerances;
use super::batch::{Line, Model};
use crate::math::{just_above, just_below, max, min, quadratic_roots};
use crate::quantity::{BeverageRatio, BrewWater, Dose, Measure};
use crate::ratio::{self, Chamber};
use crate::verdict::Window;

impl Model {
    /// How far dose and water may stray, all else as planned.
    pub(super) fn tolerances(
        &self,
        window: &Window,
        dose: Dose,
        water: BrewWater,
        added: f64,
    ) -> Tolerances {
        let (d, w) = (dose.grams(), water.grams());
        let lost = self.fixed + self.vapour;
        let minerals = self.solids * self.vapour;
        let per_dose = self.coffee_per_dose();
        let kept_per_dose = self.kept_per_dose();
        let of_dose = Straying {
            dissolved: Line { at_zero: minerals, slope: per_dose },
            beverage: Line { at_zero: w - lost, slope: -self.retention },
            kept: Line { at_zero: self.fixed, slope: kept_per_dose },
        };
        let of_water = Straying {
            dissolved: Line { at_zero: minerals + per_dose * d, slope: 0.0 },
            beverage: Line { at_zero: -lost - self.retention * d, slope: 1.0 },
            kept: Line { at_zero: self.fixed + kept_per_dose * d, slope: 0.0 },
        };
        // No brew leaves less beverage than the lowest ratio; and the chamber holds so much dose beside
        // the water, and so much water beside the dose.
        let densest = BeverageRatio::QUANTITY.lowest();
        let mut most_dose = of_dose.beverage.at_zero / (densest + self.retention);
        let least_water = of_water.beverage.reaches(densest * d);
        let mut most_water = f64::INFINITY;
        if let Some(Chamber { volume, displacement }) = self.chamber {
            let filled = |dose, water| ratio::fill_ml(dose, water, self.density, displacement);
            let full = volume.millilitres();
            let by_dose = Line { at_zero: filled(0.0, w), slope: filled(1.0, 0.0) };
            let by_water = Line { at_zero: filled(d, 0.0), slope: filled(0.0, 1.0) };
            most_dose = min(most_dose, by_dose.reaches(full));
            most_water = by_water.reaches(full);
        }
        let (dose_from, dose_to) =
            self.span(&of_dose, window, added, d, (f64::NEG_INFINITY, max(most_dose, d)));
        let (water_from, water_to) =
            self.span(&of_water, window, added, w, (min(least_water, w), max(most_water, w)));
        Tolerances { dose_from, dose_to, water_from, water_to }
    }

    /// The nearest places on either side of `planned`, within what can be brewed, where the drink's
    /// strength is at an edge of the window: the roots of B N = τ (B + A)(B + φL), a quadratic in what strays.
    fn span<M: Measure>(
        &self,
        straying: &Straying,
        window: &Window,
        added: f64,
        planned: f64,
        (least, most): (f64, f64),
    ) -> (Option<M>, Option<M>) {
        let Straying { dissolved, beverage, kept } = *straying;
        let drink = Line { at_zero: beverage.at_zero + added, slope: beverage.slope };
        let liquid = Line {
            at_zero: beverage.at_zero + self.held * kept.at_zero,
            slope: beverage.slope + self.held * kept.slope,
        };
        let (mut from, mut to) = (least, most);
        let on_it = just_below(planned)..just_above(planned);
        for (edge, inward) in [(window.strength.lowest(), 1.0), (window.strength.highest(), -1.0)] {
            let tau = edge.fraction() - self.solids;
            let square = beverage.slope * dissolved.slope - tau * drink.slope * liquid.slope;
            let linear = beverage.at_zero * dissolved.slope + beverage.slope * dissolved.at_zero
                - tau * (drink.at_zero * liquid.slope + drink.slope * liquid.at_zero);
            let constant =
                beverage.at_zero * dissolved.at_zero - tau * drink.at_zero * liquid.at_zero;
            for root in quadratic_roots(square, linear, constant) {
                // Rounding cannot say on which side of a plan its own edge lies, but the slope there can.
                let is_below = if on_it.contains(&root) {
                    inward * (2.0 * square * root + linear) > 0.0
                } else {
                    root < planned
                };
                if is_below {
                    from = max(from, min(root, planned));
                } else {
                    to = min(to, max(root, planned));
                }
            }
        }
        (M::new(from).ok(), M::new(to).ok())
    }
}

/// What straying moves, each straight in what strays: dissolved coffee N, beverage B, kept liquid L.
struct Straying {
    dissolved: Line,
    beverage: Line,
    kept: Line,
}
