//! What one's own brews tell: the numbers for which no published value can stand in.
//!
//! Published constants are of other people's brewers. A few brews on a scale give one's own, each
//! with its standard uncertainty u and degrees of freedom ν, and a plain refusal where the brews
//! cannot tell.
//!
//! | what | from | function |
//! |---|---|---|
//! | retention and hold-up of a brewer | dose, water, beverage of brews of several doses | [`retention_line`] |
//! | the same without hold-up | brews of any dose | [`retention`] |
//! | how fast a coffee extracts | yields after several times of contact | [`one_rate`], [`two_rates`] |
//! | the yield it levels off at | strengths of long steeps | [`equilibrium_yield`] |
//! | heat capacity of a brewer | temperatures of water poured in and settled | [`heat_capacity`] |
//! | how fast a cup cools | a thermometer read several times | [`cooling`] |
//! | refractive factor of a coffee | Brix beside oven-dried strength | [`refractive_factor`] |
//! | repeatability of one's own readings | several cups, each read several times | [`repeatability`] |
//!
//! All are least squares: every measurement counts alike, and scatters independently of the others.
//! With n measurements and p parameters,
//!
//! ```text
//! s² = Σe²/ν,   ν = n − p,   u² = s² × diagonal of (JᵀJ)⁻¹
//! ```
//!
//! and value ± t(ν) u ([`Estimate::expanded`]) holds the truth 95 times in a hundred. Two are told
//! otherwise. A time constant goes by its logarithm, so its interval is τ e^(±t u(ln τ)). A
//! repeatability is itself a scatter: s_r ± t u would hold it 90 to 94 times only. Its ν makes the intervals
//! of later readings right, for which it is there. How often simulated brews' intervals
//! do hold the truth is in `tests/core/coverage.rs`.
//!
//! A measurement where every such law begins, no yield after no time or no Brix of water, tells nothing
//! and does not count.
//!
//! Every fit comes with its [`Quality`]: what scatter is left, how far each measurement lies off
//! and how much it alone decides, and which one stands out. An odd brew is for the brewer to judge:
//! nothing is ever left out by itself.

mod brewer;
mod clock;
mod coffee;
mod cup;
mod curve;
mod instrument;
mod line;
mod quality;
mod rates;

#[cfg(test)]
#[allow(clippy::indexing_slicing, clippy::arithmetic_side_effects)]
mod certified;

pub(crate) use brewer::Keeping;
pub use brewer::{
    Drained, Expected, RetentionLine, Settled, heat_capacity, retention, retention_line,
};
pub use coffee::{OneRate, Steeped, Timed, TwoRates, equilibrium_yield, one_rate, two_rates};
pub use cup::{Cooling, Thermometer, cooling};
pub use instrument::{Dried, Repeat, refractive_factor, repeatability};
pub use quality::{MOST_MEASUREMENTS, Odd, Quality, SUSPICIOUS_CHANCE};

use crate::error::{Error, Untold};
use crate::math::sqrt;
use crate::quantity::{Quantity, computed};
use crate::uncertainty::{Estimate, Uncertain};
use line::Ray;
use quality::enough;

/// One parameter, as measurements tell it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Fitted<M: Uncertain> {
    /// Its value, standard uncertainty and degrees of freedom.
    pub estimate: Estimate<M>,
    /// How far the fit can be trusted.
    pub quality: Quality,
}

/// A value with the uncertainty and degrees of freedom that a fit gives it.
fn told<M: Uncertain>(value: f64, u: f64, quality: &Quality) -> Result<Estimate<M>, Error> {
    Ok(Estimate { value: computed(value)?, u: computed(u)?, freedom: quality.freedom })
}

/// The factor b of y = b x, and its standard uncertainty; `needed` is an x from which it could be told.
fn proportion<T>(
    quantity: Quantity,
    measured: &[T],
    point: impl Fn(&T) -> (f64, f64) + Copy,
    needed: f64,
) -> Result<(f64, f64, Quality), Error> {
    enough(measured.len(), 2.0, quantity)?;
    let points = measured.iter().map(point);
    let ray = Ray::of(points.clone()).ok_or(Error::CannotTell {
        quantity,
        why: Untold::NoSpan,
        found: 0.0,
        needed,
    })?;
    // At x = 0 every such line goes through zero.
    let telling = points.clone().filter(|(x, _)| *x != 0.0).count();
    let measurements = enough(telling, 2.0, quantity)?;
    let each = points.map(|(x, y)| (y - ray.slope * x, ray.leverage(x)));
    let quality = Quality::of(measurements, 1.0, each);
    let u = quality.s * sqrt(ray.slope_variance());
    Ok((ray.slope, u, quality))
}
