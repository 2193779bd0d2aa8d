//! What the grounds, the paper and the chamber keep, so that less comes out than went in.
//!
//! Two numbers go by the name of retention. A scale sees the **apparent** one: brew water less
//! beverage, per dose. The grounds hold the **true** one: that plus the coffee dissolved in it, the
//! beans' own moisture, and less what left as vapour. They differ by about the yield, a fifth of a
//! gram per gram, and are two types here.
//!
//! ```text
//! B = W − r D − c − p − d − V
//! ```
//!
//! with apparent retention r, chamber hold-up c, paper p, drips lost d and vapour V.
//!
//! A paper that was rinsed is full already and takes nothing from the brew. No published value was
//! found for pressed coffee, for metal filters, for spent espresso or for a paper's uptake: those are
//! for the caller to measure, and have no default.

use crate::error::Error;
use crate::quantity::{
    ApparentRetention, Beverage, BrewWater, Dose, Drips, HoldUp, Moisture, PaperMass, PaperUptake,
    Quantity, SpentMoisture, TrueRetention, Vapour, Yield, computed,
};
use crate::record::record;

/// The filter paper's part in what is kept.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(rename_all = "snake_case", deny_unknown_fields)
)]
pub enum Paper {
    /// No paper, or a metal filter.
    None,
    /// Rinsed and drained before the brew: already full.
    Rinsed,
    /// Dry: it drinks from the brew.
    Dry {
        /// Mass of all papers, dry.
        #[cfg_attr(feature = "serde", serde(rename = "paper_g"))]
        mass: PaperMass,
        /// What a gram of it takes up: weigh one dry, then wet and drained.
        #[cfg_attr(feature = "serde", serde(rename = "paper_uptake_g_per_g"))]
        uptake: PaperUptake,
    },
}

impl Paper {
    /// Liquid that the paper takes from the brew, g.
    fn takes(self) -> f64 {
        match self {
            Paper::None | Paper::Rinsed => 0.0,
            Paper::Dry { mass, uptake } => mass.grams() * uptake.grams_per_gram(),
        }
    }
}

record! {
    /// Where the brew water goes that does not become beverage.
    pub struct Losses {
        /// Apparent retention r of the grounds.
        retention: ApparentRetention = "apparent_retention_g_per_g",
        /// Hold-up c of the chamber, whatever the dose.
        hold_up: HoldUp = "hold_up_g",
        /// The paper.
        paper: Paper = "paper",
        /// Drips d lost before the press or the drain.
        drips: Drips = "drips_g",
        /// Vapour V lost.
        vapour: Vapour = "vapour_g",
    }
}

impl Losses {
    /// Liquid kept or lost whatever the dose, vapour apart: c + p + d, g.
    pub(crate) fn fixed_liquid(&self) -> f64 {
        self.hold_up.grams() + self.paper.takes() + self.drips.grams()
    }

    /// Everything lost whatever the dose, g.
    pub(crate) fn fixed(&self) -> f64 {
        self.fixed_liquid() + self.vapour.grams()
    }
}

/// Beverage expected.
///
/// ```text
/// B = W − r D − c − p − d − V
/// ```
///
/// Symbols: see the [module](self). Source: conservation of mass.
///
/// # Errors
/// [`Error::ResultOutOfRange`] where nothing is left for the cup.
///
/// ```
/// # use cupwright::{quantity::*, retention::{self, Losses, Paper}};
/// let losses = Losses {
///     retention: ApparentRetention::from_grams_per_gram(1.5)?,
///     hold_up: HoldUp::from_grams(3.0)?,
///     paper: Paper::Rinsed,
///     drips: Drips::NONE,
///     vapour: Vapour::from_grams(1.5)?,
/// };
/// let cup = retention::beverage(&losses, Dose::from_grams(15.0)?, BrewWater::from_grams(200.0)?)?;
/// assert_eq!(cup.grams(), 173.0);
/// # Ok::<(), cupwright::Error>(())
/// ```
pub fn beverage(losses: &Losses, dose: Dose, water: BrewWater) -> Result<Beverage, Error> {
    computed(beverage_grams(losses, dose, water))
}

/// [`beverage`] in grams, not checked.
pub(crate) fn beverage_grams(losses: &Losses, dose: Dose, water: BrewWater) -> f64 {
    water.grams() - losses.retention.grams_per_gram() * dose.grams() - losses.fixed()
}

/// Brew water for a beverage: the inverse of [`beverage`] in W.
///
/// ```text
/// W = B + r D + c + p + d + V
/// ```
///
/// Symbols: see the [module](self). Source: conservation of mass.
///
/// # Errors
/// [`Error::ResultOutOfRange`] outside the range of [`BrewWater`].
pub fn water_for_beverage(
    losses: &Losses,
    dose: Dose,
    beverage: Beverage,
) -> Result<BrewWater, Error> {
    computed(beverage.grams() + losses.retention.grams_per_gram() * dose.grams() + losses.fixed())
}

/// Apparent retention from one brew on a scale. The retention in `losses` is not used; its other
/// fields are.
///
/// ```text
/// r = (W − B − c − p − d − V)/D
/// ```
///
/// Symbols: see the [module](self). Source: conservation of mass.
///
/// # Errors
/// [`Error::Impossible`] for less water than the beverage and the other losses take;
/// [`Error::ResultOutOfRange`] above the range of [`ApparentRetention`].
pub fn retention_of_brew(
    losses: &Losses,
    dose: Dose,
    water: BrewWater,
    beverage: Beverage,
) -> Result<ApparentRetention, Error> {
    let least = beverage.grams() + losses.fixed();
    if water.grams() < least {
        return Err(too_little_water(water, least));
    }
    computed((water.grams() - least) / dose.grams())
}

/// Water that does not suffice for the beverage and the losses given.
fn too_little_water(water: BrewWater, least: f64) -> Error {
    Error::Impossible {
        quantity: Quantity::BrewWater,
        value: water.grams(),
        lowest: least,
        highest: Quantity::BrewWater.highest(),
        beside: Quantity::Beverage,
    }
}

/// Apparent retention as a scale alone sees it.
///
/// ```text
/// r = (W − B)/D
/// ```
///
/// Symbols: r apparent retention, W brew water, B beverage, D dose. Source: definition.
///
/// # Errors
/// [`Error::Impossible`] for less brew water than beverage; [`Error::ResultOutOfRange`] above the range
/// of [`ApparentRetention`].
pub fn apparent_retention(
    dose: Dose,
    water: BrewWater,
    beverage: Beverage,
) -> Result<ApparentRetention, Error> {
    const NOTHING_ELSE: Losses = Losses {
        retention: ApparentRetention::known(0.0),
        hold_up: HoldUp::NONE,
        paper: Paper::None,
        drips: Drips::NONE,
        vapour: Vapour::NONE,
    };
    retention_of_brew(&NOTHING_ELSE, dose, water, beverage)
}

/// True retention from what a scale sees.
///
/// ```text
/// r' = r + E + h − V/D
/// ```
///
/// Symbols: r' true retention, r apparent retention, E yield, h moisture, D dose. Source:
/// conservation of mass.
///
/// V is vapour that the apparent retention still contains; it is zero for a retention from which the
/// vapour was taken out before, as in [`retention_of_brew`].
///
/// # Errors
/// [`Error::ResultOutOfRange`] where the vapour is more than all that is missing.
pub fn true_retention(
    apparent: ApparentRetention,
    extracted: Yield,
    moisture: Moisture,
    vapour: Vapour,
    dose: Dose,
) -> Result<TrueRetention, Error> {
    computed(
        apparent.grams_per_gram() + extracted.fraction() + moisture.fraction()
            - vapour.grams() / dose.grams(),
    )
}

/// What a scale sees from true retention: the inverse of [`true_retention`].
///
/// ```text
/// r = r' − E − h + V/D
/// ```
///
/// Symbols: as for [`true_retention`]. Source: conservation of mass.
///
/// # Errors
/// [`Error::ResultOutOfRange`] below zero: the grounds hold less than they dissolved.
pub fn apparent_of_true_retention(
    held: TrueRetention,
    extracted: Yield,
    moisture: Moisture,
    vapour: Vapour,
    dose: Dose,
) -> Result<ApparentRetention, Error> {
    computed(
        held.grams_per_gram() - extracted.fraction() - moisture.fraction()
            + vapour.grams() / dose.grams(),
    )
}

/// True retention per dose from the water content w of spent grounds.
///
/// ```text
/// r' = w/(1 − w) · (1 − E)
/// ```
///
/// Symbols: r' true retention, w water content, E yield. Source: conservation of mass.
///
/// Reported contents of 50 to 85 % (Waste and Biomass Valorization, 10.1007/s12649-017-0061-4) give
/// 0.8 to 4.5 g/g at a yield of 20 %. It counts the kept liquid's solids as grounds and so is low, by about
/// T/(1 − w): 4 % after a filter brew, 17 % after a brew of 6 %. Bean moisture is left out.
///
/// # Errors
/// [`Error::ResultOutOfRange`] outside the range of [`TrueRetention`].
pub fn retention_of_spent_moisture(
    moisture: SpentMoisture,
    extracted: Yield,
) -> Result<TrueRetention, Error> {
    let w = moisture.fraction();
    computed(w / (1.0 - w) * (1.0 - extracted.fraction()))
}

/// Dose that leaves a beverage from an amount of water: the inverse of [`beverage`] in D.
///
/// ```text
/// D = (W − B − c − p − d − V)/r
/// ```
///
/// Symbols: see the [module](self). Source: conservation of mass.
///
/// # Errors
/// [`Error::Impossible`] where the water does not leave that much with the smallest dose;
/// [`Error::ResultOutOfRange`] outside the range of [`Dose`].
pub fn dose_for_beverage(
    losses: &Losses,
    water: BrewWater,
    beverage: Beverage,
) -> Result<Dose, Error> {
    let retention = losses.retention.grams_per_gram();
    let least = beverage.grams() + losses.fixed() + retention * Quantity::Dose.lowest();
    if water.grams() < least {
        return Err(too_little_water(water, least));
    }
    computed((water.grams() - beverage.grams() - losses.fixed()) / retention)
}

/// A published apparent retention, with what it was measured on.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PublishedRetention {
    /// The value.
    pub retention: ApparentRetention,
    /// Brewer and source.
    pub source: &'static str,
}

/// Published apparent retentions. All are for drained drip brews.
pub const PUBLISHED: [PublishedRetention; 3] = [
    PublishedRetention {
        retention: ApparentRetention::known(1.5),
        source: "drip basket: about 1.5 oz of water per oz of coffee, SCAA brewing chart notes",
    },
    PublishedRetention {
        retention: ApparentRetention::known(68.0 / 36.0),
        source: "filter machine: 36 g, 600 mL in, 532 mL out (millilitres taken as grams), a row of table 2 in Olechno et al. 2021, Foods 10:1208",
    },
    PublishedRetention {
        retention: ApparentRetention::known(2.0),
        source: "pour-over: the lower end of 2 to 2.5 g/g in a trade-education text; reproduces the SCAA chart at 55 g/L",
    },
];
