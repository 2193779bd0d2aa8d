//! That fits of curves end at the best curve there is: none on a dense grid over everything that could
//! be told lies nearer to invented measurements, scattered little or much, with an outlier or without.

use cupwright::calibrate::{self, Quality, Thermometer, Timed};
use cupwright::heat::{Cover, Surroundings};

use crate::coverage::Scatter;
use crate::value;

/// Data sets of each kind.
const SETS: usize = 300;

/// Scatter in points of yield; of readings, in half kelvins.
const SIGMAS: [f64; 4] = [0.1, 0.5, 1.0, 3.0];

/// A number from a range, its logarithm spread evenly.
fn spread(scatter: &mut Scatter, least: f64, most: f64) -> f64 {
    least * (most / least).powf(scatter.fraction())
}

/// Where in a row of measurements an outlier lies; every other row has none.
fn outlier(scatter: &mut Scatter, set: usize, count: usize) -> Option<usize> {
    (set % 2 == 1).then_some((scatter.fraction() * count as f64) as usize)
}

fn squares(quality: &Quality) -> f64 {
    quality.freedom.count() * quality.s * quality.s
}

/// Times and yields of a two-rate law, within the range of a yield.
fn yields(scatter: &mut Scatter, set: usize, least: usize) -> Vec<(f64, f64)> {
    let count = least + (24.0 * scatter.fraction()) as usize;
    let sigma = SIGMAS[set % SIGMAS.len()];
    let (equilibrium, share) = (10.0 + 15.0 * scatter.fraction(), scatter.fraction());
    let fast = spread(scatter, 5.0, 100.0);
    let slow = fast * spread(scatter, 1.5, 30.0);
    let first = spread(scatter, 1.0, 60.0);
    let last = first * spread(scatter, 4.0, 200.0);
    let odd = outlier(scatter, set, count);
    (0..count)
        .map(|at| {
            let t = spread(scatter, first, last);
            let left = share * (-t / fast).exp() + (1.0 - share) * (-t / slow).exp();
            let off = scatter.of(sigma) + if odd == Some(at) { scatter.of(8.0) } else { 0.0 };
            (t, (equilibrium * (1.0 - left) + off).clamp(0.0, 40.0))
        })
        .collect()
}

fn timed(points: &[(f64, f64)]) -> Vec<Timed> {
    points.iter().map(|(t, e)| Timed { contact: value(*t), extracted: value(*e) }).collect()
}

/// From a twentieth of the shortest time to a hundred times the longest.
fn time_constants(points: &[(f64, f64)], count: usize) -> Vec<f64> {
    let times = || points.iter().map(|(t, _)| *t);
    let least = times().fold(f64::INFINITY, f64::min) / 20.0;
    let most = times().fold(0.0, f64::max) * 100.0;
    (0..count).map(|at| least * (most / least).powf(at as f64 / (count - 1) as f64)).collect()
}

/// Σe² of the best sum of two columns, or of one given twice.
fn left_by(points: &[(f64, f64)], one: f64, other: Option<f64>) -> f64 {
    let done = |t: f64, tau: f64| -(-t / tau).exp_m1();
    // Gram and Schmidt.
    let (mut dd, mut de) = (0.0, 0.0);
    for (t, e) in points {
        (dd, de) = (dd + done(*t, one).powi(2), de + done(*t, one) * e);
    }
    let rest = |t: f64, e: f64| e - de / dd * done(t, one);
    let Some(other) = other else {
        return points.iter().map(|(t, e)| rest(*t, *e).powi(2)).sum();
    };
    let along = points.iter().map(|(t, _)| done(*t, one) * done(*t, other)).sum::<f64>() / dd;
    let own = |t: f64| done(t, other) - along * done(t, one);
    let part = points.iter().map(|(t, e)| own(*t) * rest(*t, *e)).sum::<f64>()
        / points.iter().map(|(t, _)| own(*t).powi(2)).sum::<f64>();
    if part <= 0.0 || de / dd - along * part <= 0.0 {
        return f64::INFINITY;
    }
    points.iter().map(|(t, e)| (rest(*t, *e) - part * own(*t)).powi(2)).sum()
}

#[test]
fn no_one_rate_curve_lies_nearer() {
    let mut scatter = Scatter(3);
    let mut told = 0;
    for set in 0..SETS {
        let points = yields(&mut scatter, set, 3);
        let Ok(fit) = calibrate::one_rate(&timed(&points)) else { continue };
        told += 1;
        let best = time_constants(&points, 2000)
            .into_iter()
            .map(|tau| left_by(&points, tau, None))
            .fold(f64::INFINITY, f64::min);
        let found = squares(&fit.quality);
        assert!(found <= best * (1.0 + 1e-9), "{found} for {best}: {points:?}");
    }
    assert!(told > SETS / 2, "{told}");
}

#[test]
fn no_two_rate_curve_lies_nearer() {
    let mut scatter = Scatter(4);
    let mut told = 0;
    for set in 0..2 * SETS {
        let points = yields(&mut scatter, set, 7);
        let Ok(fit) = calibrate::two_rates(&timed(&points)) else { continue };
        told += 1;
        let tried = time_constants(&points, 80);
        let pairs = tried
            .iter()
            .enumerate()
            .flat_map(|(at, fast)| tried.iter().skip(at + 1).map(move |slow| (*fast, *slow)));
        let best = pairs
            .map(|(fast, slow)| left_by(&points, fast, Some(slow)))
            .fold(f64::INFINITY, f64::min);
        let found = squares(&fit.quality);
        assert!(found <= best * (1.0 + 1e-9), "{found} for {best}: {points:?}");
    }
    assert!(told > SETS / 10, "{told}");
}

/// Under a lid the law is an exponential, whose best start is known for each rate.
#[test]
fn no_cooling_curve_lies_nearer() {
    let mut scatter = Scatter(5);
    let mut told = 0;
    for set in 0..SETS {
        let room = 5.0 + 30.0 * scatter.fraction();
        let (start, rate) = (60.0 + 35.0 * scatter.fraction(), spread(&mut scatter, 0.003, 0.05));
        let last = spread(&mut scatter, 5.0, 90.0);
        let count = 3 + (24.0 * scatter.fraction()) as usize;
        let odd = outlier(&mut scatter, set, count);
        let points: Vec<_> = (0..count)
            .map(|at| {
                let minutes = if at == 0 { 0.0 } else { last * scatter.fraction() };
                let off = scatter.of(2.0 * SIGMAS[set % SIGMAS.len()])
                    + if odd == Some(at) { scatter.of(15.0) } else { 0.0 };
                let shown = room + (start - room) * (-rate * minutes).exp() + off;
                (minutes, shown.clamp(room + 0.2, 104.0))
            })
            .collect();
        let readings: Vec<_> = points
            .iter()
            .map(|(t, shown)| Thermometer { time: value(60.0 * t), temperature: value(*shown) })
            .collect();
        let surroundings =
            Surroundings { room: value(room), humidity: value(50.0), cover: Cover::Lidded };
        let Ok(fit) = calibrate::cooling(&readings, &surroundings) else { continue };
        told += 1;
        let left_at = |rate: f64| {
            let falling = |t: f64| (-rate * t).exp();
            let ff = points.iter().map(|(t, _)| falling(*t).powi(2)).sum::<f64>();
            let fy = points.iter().map(|(t, y)| falling(*t) * (y - room)).sum::<f64>();
            points.iter().map(|(t, y)| (y - room - fy / ff * falling(*t)).powi(2)).sum::<f64>()
        };
        let best = (0..2000)
            .map(|at| left_at(0.0005 * 4000_f64.powf(f64::from(at) / 1999.0)))
            .fold(f64::INFINITY, f64::min);
        let found = squares(&fit.quality);
        assert!(found <= best * (1.0 + 1e-9), "{found} for {best}: {points:?}");
    }
    assert!(told > SETS / 2, "{told}");
}
