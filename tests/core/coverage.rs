//! How often the intervals that fits tell hold the truth, over simulated brews: 95 times in a hundred.
//!
//! ```text
//! cargo test --test core coverage -- --nocapture
//! ```

use cupwright::calibrate::{
    self, Drained, Dried, MOST_MEASUREMENTS, Repeat, Settled, Steeped, Thermometer, Timed,
};
use cupwright::extraction::{self, Kinetics};
use cupwright::heat::{self, Body, Cover, Surroundings};
use cupwright::quantity::*;

use crate::value;

/// Brews simulated for each line of the table; the share of intervals that hold is then told to 0.2 %.
const SIMULATED: usize = 10_000;

/// 0.975 quantiles of Student's t for 1 to 30 degrees of freedom (scipy).
const STUDENT: [f64; MOST_MEASUREMENTS] = [
    12.706205, 4.302653, 3.182446, 2.776445, 2.570582, 2.446912, 2.364624, 2.306004, 2.262157,
    2.228139, 2.200985, 2.178813, 2.160369, 2.144787, 2.131450, 2.119905, 2.109816, 2.100922,
    2.093024, 2.085963, 2.079614, 2.073873, 2.068658, 2.063899, 2.059539, 2.055529, 2.051831,
    2.048407, 2.045230, 2.042272,
];

/// Chance from a seed: SplitMix64 (Steele, Lea & Flood 2014), made normal by Box and Muller.
struct Scatter(u64);

impl Scatter {
    fn fraction(&mut self) -> f64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        ((z ^ (z >> 31)) >> 11) as f64 / (1_u64 << 53) as f64
    }

    /// A normal error of standard deviation `sigma`.
    fn of(&mut self, sigma: f64) -> f64 {
        let (radius, turn) = (1.0 - self.fraction(), self.fraction());
        sigma * (-2.0 * radius.ln()).sqrt() * (std::f64::consts::TAU * turn).cos()
    }
}

/// What a fit says of one parameter, and the truth.
struct Told {
    value: f64,
    u: f64,
    freedom: f64,
    truth: f64,
}

impl Told {
    fn holds(&self) -> bool {
        (self.value - self.truth).abs() <= STUDENT[self.freedom as usize - 1] * self.u
    }
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
    for share in shares {
        assert!((94.0..=96.0).contains(&share), "{shares:?}");
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
            let freedom = line.quality.freedom;
            let next = brew(scatter, 22.0, 2.0);
            let expected = line.expected(next.dose, next.water, next.vapour)?;
            let told = |value, u, truth| Told { value, u, freedom, truth };
            Ok([
                told(line.retention.grams_per_gram(), line.u_retention, 2.03),
                told(line.hold_up.grams(), line.u_hold_up, 2.0),
                told(expected.beverage.grams(), expected.u_next, next.beverage.grams()),
            ])
        }));
        let what = format!("retention alone, {} brews", doses.len());
        assert_95(coverage(&what, ["retention"], |scatter| {
            let fit = calibrate::retention(&brews(scatter, 0.0))?;
            let value = fit.value.grams_per_gram();
            Ok([Told { value, u: fit.u, freedom: fit.quality.freedom, truth: 2.03 }])
        }));
    }
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
            let fit = calibrate::heat_capacity(&pours)?;
            let value = fit.value.joules_per_kelvin();
            Ok([Told { value, u: fit.u, freedom: fit.quality.freedom, truth: 168.0 }])
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
            let fit = calibrate::equilibrium_yield(&steeps)?;
            Ok([Told {
                value: fit.value.percent(),
                u: fit.u,
                freedom: fit.quality.freedom,
                truth: 21.0,
            }])
        }));
    }
}

/// Yields of a law at some times, with their scatter in points.
fn yields(scatter: &mut Scatter, law: &Kinetics, contacts: &[f64], sigma: f64) -> Vec<Timed> {
    contacts
        .iter()
        .map(|contact| {
            let extracted = extraction::yield_at_time(law, value(*contact)).percent();
            Timed { contact: value(*contact), extracted: value(extracted + scatter.of(sigma)) }
        })
        .collect()
}

#[test]
fn coverage_of_one_rate() {
    let law = Kinetics {
        equilibrium: value(20.8),
        fast_share: value(100.0),
        fast: value(55.0),
        slow: value(55.0),
    };
    for contacts in [
        &[30.0, 90.0, 300.0][..],
        &[30.0, 60.0, 120.0, 300.0],
        &[20.0, 40.0, 60.0, 90.0, 120.0, 180.0, 240.0, 480.0],
    ] {
        for sigma in [0.15, 0.3, 0.6] {
            let what = format!("one rate, {} yields ± {sigma}", contacts.len());
            assert_95(coverage(&what, ["equilibrium", "ln time"], |scatter| {
                let fit = calibrate::one_rate(&yields(scatter, &law, contacts, sigma))?;
                let freedom = fit.quality.freedom;
                let told = |value, u, truth| Told { value, u, freedom, truth };
                Ok([
                    told(fit.equilibrium.percent(), fit.u_equilibrium, 20.8),
                    told(fit.time.seconds().ln(), fit.u_ln_time, 55.0_f64.ln()),
                ])
            }));
        }
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
    const CONTACTS: [f64; 12] =
        [5.0, 10.0, 20.0, 30.0, 45.0, 60.0, 90.0, 120.0, 180.0, 240.0, 360.0, 600.0];
    for sigma in [0.05, 0.15, 0.3] {
        let what = format!("two rates, 12 yields ± {sigma}");
        let names = ["equilibrium", "fast share", "ln fast", "ln slow"];
        assert_95(coverage(&what, names, |scatter| {
            let fit = calibrate::two_rates(&yields(scatter, &law, &CONTACTS, sigma))?;
            let freedom = fit.quality.freedom;
            let told = |value, u, truth| Told { value, u, freedom, truth };
            Ok([
                told(fit.kinetics.equilibrium.percent(), fit.u_equilibrium, 23.0),
                told(fit.kinetics.fast_share.percent(), fit.u_fast_share, 61.0),
                told(fit.kinetics.fast.seconds().ln(), fit.u_ln_fast, 16.6_f64.ln()),
                told(fit.kinetics.slow.seconds().ln(), fit.u_ln_slow, 125.0_f64.ln()),
            ])
        }));
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
            let freedom = cup.quality.freedom;
            let told = |value, u, truth| Told { value, u, freedom, truth };
            Ok([
                told(cup.rate.per_minute(), cup.u_rate, 0.0065),
                told(cup.start.celsius(), cup.u_start, 85.0),
            ])
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
            let fit = calibrate::refractive_factor(&samples)?;
            let value = fit.value.percent_per_degree();
            Ok([Told { value, u: fit.u, freedom: fit.quality.freedom, truth: 0.86 }])
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
        let value = 1.38 + scatter.of(0.012);
        Ok([Told { value, u: own.value.percent(), freedom: own.quality.freedom, truth: 1.38 }])
    }));
}
