//! Where a cup stands: inside a window or not, and how far from each edge.
//!
//! A window is data: two edges for the strength, two for the yield if there are any, and where they
//! come from, and how the yield is counted: two counts of one cup differ by up to three points
//! ([`crate::extraction`]). The published ones are here; any other is made by the caller. A window is somebody's
//! taste put in numbers (the classic one "conflates hedonic or quality descriptors": Batali,
//! Ristenpart & Guinard 2020, doi 10.1038/s41598-020-73341-4), so it has no default.

use crate::error::Error;
use crate::quantity::{Measure, Quantity, Strength, Yield};
use crate::record::record;

/// A lowest and a highest value.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(
        try_from = "Edges<M>",
        into = "Edges<M>",
        bound(
            serialize = "M: Measure + serde::Serialize",
            deserialize = "M: Measure + serde::Deserialize<'de>"
        )
    )
)]
pub struct Band<M: Measure> {
    lowest: M,
    highest: M,
}

/// A band as it is written down, not yet checked.
#[cfg(feature = "serde")]
#[derive(serde::Serialize, serde::Deserialize)]
#[serde(deny_unknown_fields)]
struct Edges<M> {
    lowest_pct: M,
    highest_pct: M,
}

#[cfg(feature = "serde")]
impl<M: Measure> TryFrom<Edges<M>> for Band<M> {
    type Error = Error;

    fn try_from(edges: Edges<M>) -> Result<Self, Error> {
        Band::new(edges.lowest_pct, edges.highest_pct)
    }
}

#[cfg(feature = "serde")]
impl<M: Measure> From<Band<M>> for Edges<M> {
    fn from(band: Band<M>) -> Self {
        Edges { lowest_pct: band.lowest, highest_pct: band.highest }
    }
}

impl<M: Measure> Band<M> {
    /// A band between two edges.
    ///
    /// # Errors
    /// [`Error::EmptyBand`] where the lowest is not below the highest.
    pub fn new(lowest: M, highest: M) -> Result<Self, Error> {
        if lowest >= highest {
            return Err(Error::EmptyBand {
                quantity: M::QUANTITY,
                lowest: lowest.value(),
                highest: highest.value(),
            });
        }
        Ok(Self { lowest, highest })
    }

    /// The lowest value that is inside.
    pub const fn lowest(&self) -> M {
        self.lowest
    }

    /// The highest value that is inside.
    pub const fn highest(&self) -> M {
        self.highest
    }

    /// The middle, in the quantity's unit.
    pub fn centre(&self) -> f64 {
        self.lowest.value() + (self.highest.value() - self.lowest.value()) / 2.0
    }

    /// Where a value stands.
    pub fn place(&self, value: M) -> Place {
        self.place_of(value.value())
    }

    /// The same of a plain number, not checked.
    pub(crate) fn place_of(&self, v: f64) -> Place {
        Place {
            side: if v < self.lowest.value() {
                Side::Below
            } else if v > self.highest.value() {
                Side::Above
            } else {
                Side::Inside
            },
            above_lowest: v - self.lowest.value(),
            below_highest: self.highest.value() - v,
            above_centre: v - self.centre(),
        }
    }
}

/// On which side of a band a value lies. The edges are inside.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[non_exhaustive]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(rename_all = "snake_case")
)]
pub enum Side {
    /// Below the lowest edge.
    Below = 1,
    /// Inside, edges included.
    Inside = 2,
    /// Above the highest edge.
    Above = 3,
}

record! {
    /// Where a value stands in its band; distances in the value's unit, negative outside.
    pub struct Place {
        /// Below, inside or above.
        side: Side = "side",
        /// Distance above the lowest edge.
        above_lowest: f64 = "above_lowest",
        /// Distance below the highest edge.
        below_highest: f64 = "below_highest",
        /// Distance above the centre.
        above_centre: f64 = "above_centre",
    }
}

/// How a window counts the yield of a cup.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[non_exhaustive]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(rename_all = "snake_case")
)]
pub enum Counting {
    /// Its source does not say: then no forecast and no advice judges the yield.
    #[default]
    NotStated = 1,
    /// As the brewing control chart does, T B/D ([`crate::extraction::flow_through_yield`]).
    FlowThrough = 2,
    /// By the whole balance at the brewer's own φ ([`crate::extraction::extraction_yield`]).
    MassBalance = 3,
}

/// A wanted range of strength, and of yield where there is one.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(deny_unknown_fields)
)]
pub struct Window {
    /// Wanted strength.
    pub strength: Band<Strength>,
    /// Wanted yield.
    #[cfg_attr(feature = "serde", serde(rename = "yield"))]
    pub extracted: Option<Band<Yield>>,
    /// How that yield is counted; without one it does not matter.
    #[cfg_attr(feature = "serde", serde(rename = "yield_counting", default))]
    pub counting: Counting,
}

impl Window {
    /// The yield wanted, where it is known how to count it.
    pub(crate) const fn judged(&self) -> Option<&Band<Yield>> {
        match self.counting {
            Counting::NotStated => None,
            _ => self.extracted.as_ref(),
        }
    }

    /// Refuses a strength wished for outside.
    pub(crate) fn admit(&self, wished: Strength) -> Result<(), Error> {
        let band = self.strength;
        if wished >= band.lowest() && wished <= band.highest() {
            return Ok(());
        }
        Err(Error::OutOfRange {
            quantity: Quantity::Strength,
            value: wished.percent(),
            lowest: band.lowest().percent(),
            highest: band.highest().percent(),
        })
    }
}

/// A window with who published it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PublishedWindow {
    /// The window.
    pub window: Window,
    /// Who published it.
    pub source: &'static str,
}

const fn published(
    strength: (f64, f64),
    extracted: (f64, f64),
    source: &'static str,
) -> PublishedWindow {
    let strength =
        Band { lowest: Strength::known(strength.0), highest: Strength::known(strength.1) };
    let extracted = Band { lowest: Yield::known(extracted.0), highest: Yield::known(extracted.1) };
    // Both name the control chart.
    let counting = Counting::FlowThrough;
    PublishedWindow { window: Window { strength, extracted: Some(extracted), counting }, source }
}

/// Filter coffee, 11.5 to 13.5 g of solids per litre of brew and 18 to 22 % yield.
///
/// The standard's grams per litre are taken as tenths of a percent by mass, which at 20 °C is within
/// 1 %. It reads them off the SCAA brewing control chart, whose notes count T B/D (4 oz, 58 oz of
/// brew and 1.3 % make "~ 19 %"): the flow-through form.
pub const GOLDEN_CUP_2015: PublishedWindow = published(
    (1.15, 1.35),
    (18.0, 22.0),
    "SCAA Standard \"Golden Cup\", revision of 23 December 2015",
);

/// Filter coffee from a certified home brewer, 1.15 to 1.45 % strength and 18 to 22 % yield, "as determined
/// by a coffee refractometer and brewing control chart": the flow-through form.
pub const HOME_BREWER_2018: PublishedWindow = published(
    (1.15, 1.45),
    (18.0, 22.0),
    "SCA certified home brewer program, news of 22 April 2018",
);

record! {
    /// Where a cup stands in a window.
    pub struct Standing {
        /// Its strength in the window.
        strength: Place = "strength",
        /// Its yield, where the window has one.
        extracted: Option<Place> = "yield",
    }
}

impl Standing {
    /// Whether strength, and yield where the window has one, are both inside.
    pub fn is_inside(&self) -> bool {
        self.strength.side == Side::Inside
            && self.extracted.is_none_or(|place| place.side == Side::Inside)
    }
}

/// Where a cup stands in a window, without regard to how sure its numbers are.
///
/// ```text
/// x − lowest,   highest − x,   x − (lowest + highest)/2
/// ```
///
/// Symbols: x strength or yield; lowest and highest the edges of the window. Source: definition.
///
/// The yield must be counted as the window counts it ([`Window::counting`]); a steeped yield reads up to
/// three points higher than a flow-through one for the same cup.
///
/// ```
/// # use cupwright::{quantity::*, verdict::{self, Side}};
/// let cup = verdict::stand(
///     &verdict::HOME_BREWER_2018.window,
///     Strength::from_percent(1.47)?,
///     Yield::from_percent(18.4)?,
/// );
/// assert_eq!(cup.strength.side, Side::Above);
/// assert!((cup.strength.below_highest - -0.02).abs() < 1e-12);
/// # Ok::<(), cupwright::Error>(())
/// ```
pub fn stand(window: &Window, strength: Strength, extracted: Yield) -> Standing {
    Standing {
        strength: window.strength.place(strength),
        extracted: window.extracted.map(|band| band.place(extracted)),
    }
}
