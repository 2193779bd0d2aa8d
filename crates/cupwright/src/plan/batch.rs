//! What a batch can hold and give: dose against beverage, how many batches, the strongest brew.

use super::{Brewer, Coffee, Wish};
use crate::error::{Error, Limit};
use crate::math::{just_below, max, min, parts_needed, quadratic_roots};
use crate::quantity::{
    Batches, BeverageRatio, BrewWater, Density, Dose, Measure, Quantity, Strength, Volume,
    WaterSolids, computed,
};
use crate::ratio::{self, Chamber};
use crate::water;

/// The numbers of brewer, coffee and water as the mass balance uses them.
pub(super) struct Model {
    pub(super) expected: f64,
    pub(super) moisture: f64,
    pub(super) solids: f64,
    pub(super) held: f64,
    pub(super) retention: f64,
    /// k: liquid kept or lost whatever the dose.
    pub(super) fixed: f64,
    pub(super) vapour: f64,
    pub(super) chamber: Option<Chamber>,
    pub(super) most_batches: f64,
    /// Of the water in the chamber.
    pub(super) density: Density,
}

/// What all batches together have to give.
#[derive(Clone, Copy)]
pub(super) enum Total {
    /// So many grams of brew, whatever its strength.
    Brew(f64),
    /// So many grams of coffee, in as little brew as its strength makes it: water is added after.
    Coffee(f64),
}

impl Total {
    fn over(self, batches: f64) -> Self {
        match self {
            Total::Brew(brew) => Total::Brew(brew / batches),
            Total::Coffee(coffee) => Total::Coffee(coffee / batches),
        }
    }
}

/// A straight line.
#[derive(Clone, Copy)]
pub(super) struct Line {
    pub(super) at_zero: f64,
    pub(super) slope: f64,
}

impl Line {
    pub(super) fn at(self, x: f64) -> f64 {
        self.at_zero + self.slope * x
    }

    /// Where the line has a value.
    pub(super) fn reaches(self, value: f64) -> f64 {
        (value - self.at_zero) / self.slope
    }
}

impl Model {
    pub(super) fn of(
        wish: &Wish,
        brewer: &Brewer,
        coffee: &Coffee,
        water_solids: WaterSolids,
    ) -> Self {
        Self {
            expected: coffee.expected.fraction(),
            moisture: coffee.moisture.fraction(),
            solids: water_solids.fraction(),
            held: brewer.held_strength.fraction(),
            retention: brewer.losses.retention.grams_per_gram(),
            fixed: brewer.losses.fixed_liquid(),
            vapour: brewer.losses.vapour.grams(),
            chamber: brewer.chamber,
            most_batches: wish.most_batches.map_or(Quantity::Batches.highest(), Batches::count),
            density: water::density(wish.brew_temperature),
        }
    }

    /// Dose of a batch against its beverage, at a strength of the brew.
    pub(super) fn dose_line(&self, total: Total, strength: Strength) -> Result<Line, Error> {
        let tau = strength.fraction() - self.solids;
        let strongest = self.strongest(total)?;
        if tau > strongest {
            return Err(Error::Infeasible {
                wish: Quantity::Strength,
                value: strength.percent(),
                nearest: just_below(100.0 * (strongest + self.solids)),
                limit: Limit::CoffeeGivesNoMore,
            });
        }
        let per_dose = self.coffee_per_dose() - tau * self.held * self.kept_per_dose();
        Ok(Line {
            at_zero: (tau * self.held * self.fixed - self.solids * self.vapour) / per_dose,
            slope: tau / per_dose,
        })
    }

    /// Coffee dissolved by a gram of dose, less the minerals that its moisture stands in for.
    pub(super) fn coffee_per_dose(&self) -> f64 {
        self.expected * (1.0 - self.solids) - self.solids * self.moisture
    }

    /// Liquid kept by a gram of dose, its dissolved coffee included.
    pub(super) fn kept_per_dose(&self) -> f64 {
        self.expected + self.retention + self.moisture
    }

    /// The highest τ that a total can be brewed at: over the numbers of batches allowed, or, if it is too
    /// large for those at any strength, over all numbers.
    fn strongest(&self, total: Total) -> Result<f64, Error> {
        self.strongest_within(self.most_batches, total)
            .or_else(|| self.strongest_within(Quantity::Batches.highest(), total))
            .ok_or_else(|| self.chamber_is_filled_by_hold_up())
    }

    /// The highest τ over numbers of batches up to `most`: each batch has the highest dose that its
    /// beverage allows ([`BeverageRatio`]) and that the chamber holds beside it.
    fn strongest_within(&self, most: f64, total: Total) -> Option<f64> {
        let densest = Line { at_zero: 0.0, slope: 1.0 / BeverageRatio::QUANTITY.lowest() };
        let mut strongest = None;
        let mut batches = 1.0;
        while batches <= most {
            let part = total.over(batches);
            let by_ratio =
                self.range_of_strength(part, densest).map_or(0.0, |(_, highest)| highest);
            let (weakest, by_chamber) = match self.chamber {
                None => (0.0, f64::INFINITY),
                // Too large for so few batches at any strength.
                Some(chamber) => {
                    self.range_in_chamber(part, &chamber).unwrap_or((f64::INFINITY, f64::INFINITY))
                }
            };
            if weakest <= by_ratio {
                let highest = min(by_ratio, by_chamber);
                strongest = Some(max(strongest.unwrap_or(highest), highest));
                // More batches help a chamber that is too small. (They also concentrate the minerals
                // of water that boils off, which no brew is planned for.)
                if by_ratio <= by_chamber {
                    break;
                }
            }
            batches += 1.0;
        }
        strongest
    }

    /// The lowest and the highest τ at which the chamber can brew a part.
    fn range_in_chamber(&self, part: Total, chamber: &Chamber) -> Option<(f64, f64)> {
        let volume = self.volume_line(0.0, chamber);
        if volume.slope > 0.0 {
            return self.range_of_strength(part, self.dose_beside(chamber));
        }
        // A dose that keeps nothing and takes no room: only the beverage counts.
        let by_beverage = Line {
            at_zero: volume.at_zero,
            slope: self.volume_line(1.0, chamber).at_zero - volume.at_zero,
        };
        let most = by_beverage.reaches(chamber.volume.millilitres());
        match part {
            Total::Brew(brew) => (brew <= most).then_some((0.0, f64::INFINITY)),
            Total::Coffee(g) => (most > 0.0).then(|| (g / most, f64::INFINITY)),
        }
    }

    /// The lowest and the highest τ at which a part can be brewed with a dose no higher than a line of
    /// its beverage: where τ(B + φ(k + qD)) = pD + sV.
    fn range_of_strength(&self, part: Total, dose: Line) -> Option<(f64, f64)> {
        let p = self.coffee_per_dose();
        let q = self.held * self.kept_per_dose();
        let k = self.held * self.fixed;
        let minerals = self.solids * self.vapour;
        match part {
            Total::Brew(beverage) => {
                let d = dose.at(beverage);
                (d > 0.0).then(|| (0.0, (p * d + minerals) / (beverage + k + q * d)))
            }
            // With B = g/τ it is a quadratic in τ.
            Total::Coffee(g) => {
                let square = k + q * dose.at_zero;
                let linear = g * (1.0 + q * dose.slope) - p * dose.at_zero - minerals;
                let (mut lowest, mut highest) = (f64::INFINITY, 0.0);
                for root in quadratic_roots(square, linear, -p * dose.slope * g) {
                    if root > 0.0 && dose.at(g / root) > 0.0 {
                        lowest = min(lowest, root);
                        highest = max(highest, root);
                    }
                }
                if highest == 0.0 {
                    None
                } else if dose.slope > 0.0 {
                    Some((0.0, highest))
                } else if square > 0.0 {
                    Some((lowest, highest))
                } else {
                    Some((lowest, f64::INFINITY))
                }
            }
        }
    }

    fn chamber_is_filled_by_hold_up(&self) -> Error {
        let (value, lowest) = self.chamber.map_or((0.0, 0.0), |chamber| {
            let least = Quantity::Beverage.lowest();
            let volume = self.volume_line(least, &chamber).at(Quantity::Dose.lowest());
            (chamber.volume.millilitres(), volume)
        });
        Error::Impossible {
            quantity: Quantity::Volume,
            value,
            lowest: max(lowest, value.next_up()),
            highest: Quantity::Volume.highest(),
            beside: Quantity::HoldUp,
        }
    }

    /// Millilitres in the chamber against the dose, for a beverage of a batch.
    fn volume_line(&self, beverage: f64, chamber: &Chamber) -> Line {
        let volume = |dose, water| ratio::fill_ml(dose, water, self.density, chamber.displacement);
        Line {
            at_zero: volume(0.0, beverage + self.fixed + self.vapour),
            slope: volume(1.0, self.retention),
        }
    }

    /// The highest dose that the chamber holds beside the water for a beverage, against that beverage.
    fn dose_beside(&self, chamber: &Chamber) -> Line {
        let dose =
            |beverage| self.volume_line(beverage, chamber).reaches(chamber.volume.millilitres());
        Line { at_zero: dose(0.0), slope: dose(1.0) - dose(0.0) }
    }

    /// How full a batch makes the chamber, if there is one.
    pub(super) fn fill(&self, dose: Dose, water: BrewWater) -> Result<Option<Volume>, Error> {
        self.chamber
            .map(|chamber| {
                let (d, w) = (dose.grams(), water.grams());
                computed(ratio::fill_ml(d, w, self.density, chamber.displacement))
            })
            .transpose()
    }

    /// The fewest equal batches that the chamber holds; one without a chamber.
    pub(super) fn batches(
        &self,
        wish: &Wish,
        dose: Line,
        brew_total: f64,
    ) -> Result<Batches, Error> {
        let Some(chamber) = self.chamber else { return Batches::from_count(1.0) };
        // The volume is straight in the dose and in the beverage, and the dose in the beverage.
        let filled = |beverage| self.volume_line(beverage, &chamber).at(dose.at(beverage));
        let volume = Line { at_zero: filled(0.0), slope: filled(1.0) - filled(0.0) };
        let most = volume.reaches(chamber.volume.millilitres());
        let batches: Batches = computed(parts_needed(brew_total / most))?;
        match wish.most_batches {
            Some(allowed) if batches > allowed => Err(Error::Infeasible {
                wish: Quantity::Beverage,
                value: wish.cup.grams(),
                nearest: just_below(wish.cup.grams() * most * allowed.count() / brew_total),
                limit: Limit::Chamber,
            }),
            _ => Ok(batches),
        }
    }
}
