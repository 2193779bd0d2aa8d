//! A cup: how fast it cools.

use super::clock::Clock;
use super::curve::{self, Curve};
use super::line::Line;
use super::quality::{Quality, enough};
use super::told;
use crate::error::{Error, Untold};
use crate::heat::{Law, Surroundings};
use crate::math::{ln, max, min, sqrt, square};
use crate::quantity::{CoolingRate, Quantity, Temperature, Time, computed};
use crate::record::record;
use crate::uncertainty::Estimate;

record! {
    /// A thermometer in a cup, read.
    pub struct Thermometer {
        /// When, from any beginning.
        time: Time = "time_s",
        /// What it shows.
        temperature: Temperature = "water_c",
    }
}

/// How a cup cools, as a thermometer tells it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Cooling {
    /// Cooling rate k.
    pub rate: Estimate<CoolingRate>,
    /// Temperature at the first reading, by the curve through all of them.
    pub start: Estimate<Temperature>,
    /// Covariance of the two, K/min.
    pub covariance: f64,
    /// How far the curve can be trusted; its scatter is in K.
    pub quality: Quality,
}

/// Cooling rate of a cup from several readings of a thermometer left in it.
///
/// ```text
/// T(t):  dT/dt = −k F(T),  T(0) = T0      F as for crate::heat::time_to_cool
/// ∂T/∂T0 = F(T)/F(T0),     ∂T/∂k = −t F(T)
/// ```
///
/// Symbols: T temperature after the time t, T0 at the start, k cooling rate. Source: least squares;
/// the law is an estimate, as for [`crate::heat::time_to_cool`].
///
/// Least squares in temperature, by the law of [`crate::heat::time_to_cool`]: every reading counts
/// alike, the first one too, which [`crate::heat::cooling_rate`] takes to be exact. Readings over
/// twenty minutes tell more than many within five.
///
/// # Errors
/// [`Error::CannotTell`] for fewer than three readings, all at one time, or ones that do not fall;
/// [`Error::OutOfRange`] for more than thirty; [`Error::Impossible`] for a reading not above where
/// cooling ends; [`Error::ResultOutOfRange`] outside the range of [`CoolingRate`].
///
/// ```
/// # use cupwright::{calibrate::{self, Thermometer}, heat::{Cover, Surroundings}, quantity::*};
/// let read = |minutes: f64, celsius| {
///     Ok::<_, cupwright::Error>(Thermometer {
///         time: Time::from_seconds(60.0 * minutes)?,
///         temperature: Temperature::from_celsius(celsius)?,
///     })
/// };
/// let room = Surroundings {
///     room: RoomTemperature::from_celsius(17.0)?,
///     humidity: Humidity::from_percent(50.0)?,
///     cover: Cover::Open,
/// };
/// // Invented readings.
/// let readings = [read(0.0, 82.3)?, read(5.0, 72.8)?, read(10.0, 65.0)?, read(20.0, 54.4)?];
/// let cup = calibrate::cooling(&readings, &room)?;
/// assert_eq!(format!("{} ± {}", cup.rate.value, cup.rate.u), "0.00665 1/min ± 0.00016 1/min");
/// # Ok::<(), cupwright::Error>(())
/// ```
pub fn cooling(readings: &[Thermometer], surroundings: &Surroundings) -> Result<Cooling, Error> {
    let measurements = enough(readings.len(), 3.0, Quantity::CoolingRate)?;
    let law = Law::of(surroundings);
    for reading in readings {
        law.start(reading.temperature)?;
    }
    let first = readings.iter().map(|reading| reading.time.seconds()).fold(f64::INFINITY, min);
    // Minutes since the first reading, and degrees above the end.
    let points = readings.iter().map(|reading| {
        let minutes = (reading.time.seconds() - first) / 60.0;
        (minutes, reading.temperature.celsius() - law.celsius(0.0))
    });
    let clock = &Clock::of(&law);
    let guess = guess(clock, points.clone())?;
    // The rate is fitted as a multiple of the guess, so that both parameters are of one order.
    let model = |[theta, rate]: &[f64; 2]| {
        let (rate, begin) = (guess.rate * rate, clock.at(ln(*theta)));
        let start_speed = theta / begin.pace;
        move |(minutes, near)| {
            let (later, pace) = clock.when(begin.reads - rate * minutes, near);
            let speed = later / pace;
            (later, [speed / start_speed, -guess.rate * minutes * speed])
        }
    };
    // A thermometer's own reading is near enough to look for the curve.
    let readings = points.clone().map(|(minutes, theta)| ((minutes, theta), theta));
    let Curve { parameters, covariance } =
        curve::fit(readings.clone(), [guess.theta, 1.0], model).ok_or(not_cooling(0.0))?;
    let curve = model(&parameters);
    let each = readings.map(|(reading, theta)| {
        let (value, slopes) = curve(reading);
        (theta - value, curve::covaried(&covariance, &slopes, &slopes))
    });
    let quality = Quality::of(measurements, 2.0, each);
    let [theta, rate] = parameters;
    if rate <= 0.0 {
        return Err(not_cooling(guess.rate * rate));
    }
    let [[of_start, of_both], [_, of_rate]] = covariance;
    Ok(Cooling {
        rate: told(guess.rate * rate, quality.s * guess.rate * sqrt(of_rate), &quality)?,
        start: told(law.celsius(theta), quality.s * sqrt(of_start), &quality)?,
        // Adding zero turns -0 into +0.
        covariance: square(quality.s) * guess.rate * of_both + 0.0,
        quality,
    })
}

/// The slowest of measured open mugs, 1/min.
const SLOW_MUG: f64 = 0.005;

/// A refusal of readings that rise, or jump about as those of no cup do.
fn not_cooling(found: f64) -> Error {
    let (quantity, why) = (Quantity::CoolingRate, Untold::NotCooling);
    Error::CannotTell { quantity, why, found, needed: SLOW_MUG }
}

/// A span of readings that tells something for a start, s.
const STARTING_SPAN_S: f64 = 600.0;

/// Where the curve is sought from.
struct Guess {
    theta: f64,
    /// 1/min
    rate: f64,
}

/// The clock makes a straight line of cooling.
fn guess(clock: &Clock, points: impl Iterator<Item = (f64, f64)> + Clone) -> Result<Guess, Error> {
    let hottest = points.clone().map(|(_, theta)| theta).fold(0.0, max);
    let reads = |theta: f64| clock.at(ln(theta)).reads;
    let line = Line::of(points.map(|(minutes, theta)| (minutes, -reads(theta))));
    let line = line.ok_or(Error::CannotTell {
        quantity: Quantity::CoolingRate,
        why: Untold::NoSpan,
        found: 0.0,
        needed: STARTING_SPAN_S,
    })?;
    if line.slope <= 0.0 {
        return Err(not_cooling(line.slope));
    }
    let rate: CoolingRate = computed(line.slope)?;
    // The line may start above the hottest reading, where no reading vouches for it.
    let (theta, _) = clock.when(min(-line.intercept, reads(hottest)), hottest);
    Ok(Guess { theta, rate: rate.per_minute() })
}
