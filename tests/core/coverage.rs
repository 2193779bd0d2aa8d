//! How often the intervals that fits tell hold the truth, over simulated brews: 95 times in a
//! hundred.
//!
//! ```text
//! cargo test --test core coverage -- --nocapture
//! ```
//!
//! | fit | from | truth held, % (refused, %) |
//! |---|---|---|
//! | retention line: retention, hold-up, next brew | 3 brews | 94.95, 94.90, 94.80 |
//! | | 8 brews | 94.95, 94.87, 94.72 |
//! | retention alone | 3, 8 brews | 94.71, 95.01 |
//! | heat capacity | 3, 6 pours | 94.92, 94.76 |
//! | equilibrium yield | 3, 8 steeps | 94.96, 95.48 |
//! | cooling: rate, start | 3 readings | 94.77, 94.94 |
//! | | 7 readings | 94.90, 95.08 |
//! | refractive factor | 3, 6 samples | 95.55, 95.19 |
//! | repeatability: next reading | 5 cups of 3 | 94.72 |
//! | one rate of 55 s: E∞, ln τ | 3 yields to 300 s ± 0.3 | 94.61, 95.02 |
//! | | 4 to 300 s ± 0.3 | 95.08, 95.13 |
//! | | 8 to 480 s ± 0.6 | 95.20, 95.09 |
//! | | 3 to 60 s ± 0.6 | 94.85, 95.07 (2.6) |
//! | | 4 from 120 to 300 s ± 0.6 | 95.15, 95.47 (0.2) |
//! | | 3 to 300 s ± 0.3 and nothing at 0 s | 94.61, 95.02 |
//! | two rates, 17 and 125 s: E∞, f, ln τ1, ln τ2 | 12 to 600 s ± 0.15 | 94.99, 94.84, 94.86, 94.92 |
//! | | 12 to 300 s ± 0.15 | 95.08, 94.48, 94.83, 95.29 |
//! | | 7 to 480 s ± 0.15 | 95.21, 94.51, 94.68, 95.29 |
//! | | 12 to 300 s ± 0.3 | 94.14, 96.43, 95.56, 95.16 (2.3) |
//! | | 7 to 480 s ± 0.3 | 95.76, 93.74, 94.53, 95.49 (0.9) |
//!
//! The last two are not within 1 %: so scattered, the model is far from straight about them, and
//! whether a second rate is accepted depends on how well a curve happens to fit. From five yields,
//! where a third to two thirds are refused, intervals held the truth only 84 to 92 times in a
//! hundred; so seven are asked for. Good brews are called suspicious less than five times in a
//! hundred.

use cupwright::calibrate::{self, Drained, Dried, Repeat, Settled, Steeped, Thermometer, Timed};
use cupwright::extraction::{self, Kinetics};
use cupwright::heat::{self, Body, Cover, Surroundings};
use cupwright::quantity::*;
use cupwright::uncertainty::{self, Estimate, Uncertain};

use crate::value;

/// Brews simulated for each line of the table; the share of intervals that hold is then told to 0.2
/// %.
const SIMULATED: usize = 10_000;

/// Chance from a seed: SplitMix64 (Steele, Lea & Flood 2014), made normal by Box and Muller.
pub struct Scatter(pub u64);

impl Scatter {
    pub fn fraction(&mut self) -> f64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        ((z ^ (z >> 31)) >> 11) as f64 / (1_u64 << 53) as f64
    }

    /// A normal error of standard deviation `sigma`.
    pub fn of(&mut self, sigma: f64) -> f64 {
        let (radius, turn) = (1.0 - self.fraction(), self.fraction());
        sigma * (-2.0 * radius.ln()).sqrt() * (std::f64::consts::TAU * turn).cos()
    }
}

/// How far off a fit is in one parameter, and how far off it says that it may be.
struct Told {
    off: f64,
    half_width: f64,
}

impl Told {
    fn holds(&self) -> bool {
        self.off.abs() <= self.half_width
    }
}

fn told<M: Uncertain>(estimate: Estimate<M>, truth: f64) -> Told {
    // Not by `expanded`, which refuses half-widths beyond all use.
    let factor = uncertainty::coverage_factor(value(95.0), estimate.freedom);
    let half_width = factor.ratio() * estimate.u.value();
    Told { off: estimate.value.value() - truth, half_width }
}

/// Of a time constant, by its logarithm.
fn told_ln(estimate: Estimate<TimeConstant>, truth: f64) -> Told {
    Told { off: (estimate.value.seconds() / truth).ln(), ..told(estimate, truth) }
}

/// Simulates, prints a line for each parameter, and gives the shares in percent that hold.
fn coverage<const P: usize>(
    what: &str,
    names: [&str; P],
    simulate: impl Fn(&mut Scatter) -> Result<[Told; P], cupwright::Error>,
) -> [f64; P] {
    let mut scatter = Scatter(1);
    let mut held = [0; P];
    let mut told = 0;
    for _ in 0..SIMULATED {
        if let Ok(parameters) = simulate(&mut scatter) {
            told += 1;
            for (count, parameter) in held.iter_mut().zip(parameters) {
                *count += usize::from(parameter.holds());
            }
        }
    }
    let shares = held.map(|count| 100.0 * count as f64 / told as f64);
    for (name, share) in names.iter().zip(shares) {
        let refused = 100.0 * (SIMULATED - told) as f64 / SIMULATED as f64;
        println!("{what:32} {name:12} {share:6.2} %   {refused:5.2} % refused");
    }
    shares
}

fn assert_95<const P: usize>(shares: [f64; P]) {
    assert_95_within(1.0, shares);
}

fn assert_95_within<const P: usize>(percent: f64, shares: [f64; P]) {
    for share in shares {
        assert!((share - 95.0).abs() <= percent, "{shares:?}");
    }
}

#[test]
fn coverage_of_retention() {
    for doses in [&[15.0, 20.0, 25.0][..], &[12.0, 15.0, 15.0, 18.0, 20.0, 20.0, 25.0, 30.0]] {
        let brew = |scatter: &mut Scatter, dose: f64, hold_up: f64| Drained {
            dose: value(dose),
            water: value(16.0 * dose),
            beverage: value(16.0 * dose - hold_up - 2.03 * dose + scatter.of(1.0)),
            vapour: Vapour::NONE,
        };
        let brews = |scatter: &mut Scatter, hold_up| -> Vec<_> {
            doses.iter().map(|dose| brew(scatter, *dose, hold_up)).collect()
        };
        let what = format!("retention line, {} brews", doses.len());
        assert_95(coverage(&what, ["retention", "hold-up", "next brew"], |scatter| {
            let line = calibrate::retention_line(&brews(scatter, 2.0))?;
            let next = brew(scatter, 22.0, 2.0);
            let expected = line.expected(next.dose, next.water, next.vapour)?;
            Ok([
                told(line.retention, 2.03),
                told(line.hold_up, 2.0),
                told(expected.beverage, next.beverage.grams()),
            ])
        }));
        let what = format!("retention alone, {} brews", doses.len());
        assert_95(coverage(&what, ["retention"], |scatter| {
            Ok([told(calibrate::retention(&brews(scatter, 0.0))?.estimate, 2.03)])
        }));
    }
}

/// Bonferroni's bound: at most five times in a hundred, and not much less.
#[test]
fn good_brews_are_seldom_suspicious() {
    let mut scatter = Scatter(2);
    let suspicious = (0..SIMULATED).filter(|_| {
        let steeps = [0.0; 8].map(|_| Steeped {
            strength: value(1.4 + scatter.of(0.02)),
            water: value(300.0),
            dose: value(20.0),
        });
        calibrate::equilibrium_yield(&steeps).unwrap().quality.odd.unwrap().is_suspicious
    });
    let share = 100.0 * suspicious.count() as f64 / SIMULATED as f64;
    println!("called suspicious among good brews: {share:.2} %");
    assert!((4.0..5.0).contains(&share), "{share}");
}

#[test]
fn coverage_of_heat_capacity() {
    for count in [3, 6] {
        let what = format!("heat capacity, {count} pours");
        assert_95(coverage(&what, ["capacity"], |scatter| {
            let pours: Vec<_> = (0..count)
                .map(|at| {
                    let (vessel, before) = (20.0 + f64::from(at), 94.0 - f64::from(at));
                    let body = Body { heat_capacity: value(168.0), temperature: value(vessel) };
                    let settled = heat::settle(value(250.0), value(before), &[body]).unwrap();
                    Settled {
                        liquid: value(250.0),
                        before: value(before + scatter.of(0.2)),
                        settled: value(settled.celsius() + scatter.of(0.2)),
                        vessel: value(vessel + scatter.of(0.2)),
                    }
                })
                .collect();
            Ok([told(calibrate::heat_capacity(&pours)?.estimate, 168.0)])
        }));
    }
}

#[test]
fn coverage_of_equilibrium_yield() {
    for count in [3, 8] {
        let what = format!("equilibrium yield, {count} steeps");
        assert_95(coverage(&what, ["equilibrium"], |scatter| {
            let strength = extraction::steeped_strength(value(21.0), value(15.0)).unwrap();
            let steeps: Vec<_> = (0..count)
                .map(|_| Steeped {
                    strength: value(strength.percent() + scatter.of(0.02)),
                    water: value(300.0 + scatter.of(0.3)),
                    dose: value(20.0 + scatter.of(0.05)),
                })
                .collect();
            Ok([told(calibrate::equilibrium_yield(&steeps)?.estimate, 21.0)])
        }));
    }
}

/// Yields of a law at some times, with their scatter in points.
fn yields(scatter: &mut Scatter, law: &Kinetics, contacts: &[f64], sigma: f64) -> Vec<Timed> {
    contacts
        .iter()
        .map(|contact| {
            let extracted = extraction::yield_at_time(law, value(*contact)).percent();
            // What is not brewed does not scatter.
            let sigma = if *contact > 0.0 { sigma } else { 0.0 };
            Timed { contact: value(*contact), extracted: value(extracted + scatter.of(sigma)) }
        })
        .collect()
}

fn of_yields(law: &str, contacts: &[f64], sigma: f64) -> String {
    format!(
        "{law}, {} from {} to {} s ± {sigma}",
        contacts.len(),
        contacts[0],
        contacts.last().unwrap()
    )
}

#[test]
fn coverage_of_one_rate() {
    let law = Kinetics {
        equilibrium: value(20.8),
        fast_share: value(100.0),
        fast: value(55.0),
        slow: value(55.0),
    };
    let cases: [(&[f64], f64); 6] = [
        (&[30.0, 90.0, 300.0], 0.3),
        (&[30.0, 60.0, 120.0, 300.0], 0.3),
        (&[20.0, 40.0, 60.0, 90.0, 120.0, 180.0, 240.0, 480.0], 0.6),
        // Hardly begun to level off, or nearly all of it done.
        (&[10.0, 30.0, 60.0], 0.6),
        (&[120.0, 180.0, 240.0, 300.0], 0.6),
        // Nothing after no time: it tells nothing, and is not counted as if it did.
        (&[30.0, 90.0, 300.0, 0.0], 0.3),
    ];
    for (contacts, sigma) in cases {
        assert_95(coverage(
            &of_yields("one rate", contacts, sigma),
            ["equilibrium", "ln time"],
            |scatter| {
                let fit = calibrate::one_rate(&yields(scatter, &law, contacts, sigma))?;
                Ok([told(fit.equilibrium, 20.8), told_ln(fit.time, 55.0)])
            },
        ));
    }
}

#[test]
fn coverage_of_two_rates() {
    let law = Kinetics {
        equilibrium: value(23.0),
        fast_share: value(61.0),
        fast: value(16.6),
        slow: value(125.0),
    };
    let short: &[f64] =
        &[5.0, 10.0, 20.0, 30.0, 45.0, 60.0, 90.0, 120.0, 150.0, 180.0, 240.0, 300.0];
    let long: &[f64] =
        &[5.0, 10.0, 20.0, 30.0, 45.0, 60.0, 90.0, 120.0, 180.0, 240.0, 360.0, 600.0];
    let few: &[f64] = &[5.0, 15.0, 30.0, 60.0, 120.0, 240.0, 480.0];
    let cases = [
        (long, 0.15, 1.0),
        (short, 0.15, 1.0),
        (few, 0.15, 1.0),
        (short, 0.3, 2.0),
        (few, 0.3, 2.0),
    ];
    for (contacts, sigma, within) in cases {
        let names = ["equilibrium", "fast share", "ln fast", "ln slow"];
        let what = of_yields("two rates", contacts, sigma);
        assert_95_within(
            within,
            coverage(&what, names, |scatter| {
                let fit = calibrate::two_rates(&yields(scatter, &law, contacts, sigma))?;
                Ok([
                    told(fit.equilibrium, 23.0),
                    told(fit.fast_share, 61.0),
                    told_ln(fit.fast, 16.6),
                    told_ln(fit.slow, 125.0),
                ])
            }),
        );
    }
}

#[test]
fn coverage_of_cooling() {
    let room = Surroundings { room: value(20.0), humidity: value(50.0), cover: Cover::Open };
    for minutes in [&[0.0, 5.0, 20.0][..], &[0.0, 4.0, 8.0, 12.0, 16.0, 20.0, 30.0]] {
        let what = format!("cooling, {} readings", minutes.len());
        assert_95(coverage(&what, ["rate", "start"], |scatter| {
            let readings: Vec<_> = minutes
                .iter()
                .map(|minutes| {
                    let time: Time = value(60.0 * minutes);
                    let shown =
                        heat::temperature_after(value(85.0), time, value(0.0065), &room).unwrap();
                    Thermometer { time, temperature: value(shown.celsius() + scatter.of(0.4)) }
                })
                .collect();
            let cup = calibrate::cooling(&readings, &room)?;
            Ok([told(cup.rate, 0.0065), told(cup.start, 85.0)])
        }));
    }
}

#[test]
fn coverage_of_refractive_factor() {
    for count in [3, 6] {
        let what = format!("refractive factor, {count} samples");
        assert_95(coverage(&what, ["factor"], |scatter| {
            let samples: Vec<_> = (0..count)
                .map(|at| {
                    let brix = 1.3 + 0.2 * f64::from(at);
                    Dried {
                        brix: value(brix + scatter.of(0.01)),
                        strength: value(0.86 * brix + scatter.of(0.01)),
                    }
                })
                .collect();
            // Told relative to the factor.
            let told = told(calibrate::refractive_factor(&samples)?.estimate, 0.86);
            Ok([Told { off: 100.0 * told.off / (0.86 + told.off), ..told }])
        }));
    }
}

/// Repeatability is for intervals about later readings: those hold.
#[test]
fn coverage_of_repeatability() {
    assert_95(coverage("repeatability, 5 cups of 3", ["next reading"], |scatter| {
        let readings: Vec<_> = (0..15)
            .map(|at| Repeat {
                cup: value(f64::from(1 + at / 3)),
                strength: value(1.2 + 0.1 * f64::from(at / 3) + scatter.of(0.012)),
            })
            .collect();
        let own = calibrate::repeatability(&readings)?;
        let next: Estimate<Strength> = Estimate {
            value: value(1.38 + scatter.of(0.012)),
            u: value(own.estimate.value.percent()),
            freedom: own.estimate.freedom,
        };
        Ok([told(next, 1.38)])
    }));
}
