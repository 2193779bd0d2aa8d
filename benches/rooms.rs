//! Every formula at its example, and those that do more than a few multiplications bare, at inputs of
//! their own types.
//!
//! ```text
//! cargo bench
//! ```

use std::cell::Cell;
use std::hint::black_box;
use std::time::Duration;

use criterion::{Criterion, criterion_group, criterion_main};
use cupwright::advise::{self, Cup, Means};
use cupwright::calibrate::{self, Drained, Thermometer, Timed};
use cupwright::extraction::{self, Brew, Kinetics};
use cupwright::forecast::Straying;
use cupwright::heat::{self, Body, Cover, Surroundings};
use cupwright::plan::{self, Air, Brewer, Coffee, Kitchen, Wish};
use cupwright::quantity::*;
use cupwright::ratio::Chamber;
use cupwright::retention::{Losses, Paper};
use cupwright::uncertainty::{self, Estimate, Measured, Rates, Standard};
use cupwright::{decision, dilution, reading, verdict, water};
use formulas::FORMULAS;
use formulas::examples::examples;
use formulas::inputs::{Asked, Inputs, asked_by};

fn value<M: Measure>(value: f64) -> M {
    M::new(value).expect("a value in range")
}

/// Times `call` on an input that the optimiser cannot see through.
fn time<I, O>(c: &mut Criterion, name: &str, input: I, call: impl Fn(&I) -> O) {
    c.bench_function(name, |b| b.iter(|| call(black_box(&input))));
}

fn brew() -> Brew {
    Brew {
        dose: value(15.0),
        water: value(200.0),
        beverage: value(173.0),
        moisture: value(2.0),
        water_solids: value(80.0),
        vapour: value(1.5),
        held_strength: HeldStrength::STEEPED,
    }
}

fn room() -> Surroundings {
    Surroundings { room: value(21.0), humidity: value(50.0), cover: Cover::Open }
}

fn of_water(c: &mut Criterion) {
    let hot: Temperature = value(93.0);
    time(c, "water/density", hot, |t| water::density(*t));
    time(c, "water/specific_heat", hot, |t| water::specific_heat(*t));
    time(c, "water/enthalpy", hot, |t| water::enthalpy(*t));
    time(c, "water/temperature_of_enthalpy", value(390.0), |h| water::temperature_of_enthalpy(*h));
    time(c, "water/vapour_pressure", hot, |t| water::vapour_pressure(*t));
    time(c, "water/boiling_point", value(78.0), |p| water::boiling_point(*p));
    time(c, "water/latent_heat", hot, |t| water::latent_heat(*t));
    time(c, "water/pressure_at_altitude", value(2140.0), |h| water::pressure_at_altitude(*h));
}

fn of_extraction(c: &mut Criterion) {
    let cup = (brew(), value::<Strength>(1.44));
    time(c, "extraction/extraction_yield", cup, |(b, t)| extraction::extraction_yield(b, *t));
    let wanted = (brew(), value::<Yield>(19.5));
    time(c, "extraction/strength", wanted, |(b, e)| extraction::strength(b, *e));
    time(c, "extraction/plausibility", (brew(), value(2.1)), |(b, t)| {
        extraction::plausibility(b, *t)
    });
    let kinetics = Kinetics {
        equilibrium: value(21.0),
        fast_share: value(60.0),
        fast: value(15.0),
        slow: value(150.0),
    };
    time(c, "extraction/yield_at_time", (kinetics, value(120.0)), |(k, t)| {
        extraction::yield_at_time(k, *t)
    });
    time(c, "extraction/time_for_yield", (kinetics, value(19.0)), |(k, e)| {
        extraction::time_for_yield(k, *e)
    });
}

fn of_heat(c: &mut Criterion) {
    let grounds = Body { heat_capacity: value(24.0), temperature: value(21.0) };
    let glass = Body { heat_capacity: value(168.0), temperature: value(21.0) };
    let pour = (value::<Liquid>(250.0), value::<Temperature>(90.0), [grounds, glass]);
    time(c, "heat/settle", pour, |(m, t, bodies)| heat::settle(*m, *t, bodies));
    time(c, "heat/before_settling", pour, |(m, t, bodies)| heat::before_settling(*m, *t, bodies));
    time(c, "heat/after_vapour", value(250.0), |m| {
        heat::after_vapour(*m, value(90.0), value(1.0), value(120.0))
    });
    let (from, to): (Temperature, Temperature) = (value(82.3), value(60.0));
    let rate: CoolingRate = value(0.0065);
    time(c, "heat/time_to_cool", room(), |room| heat::time_to_cool(from, to, rate, room));
    time(c, "heat/cooling_rate", room(), |room| heat::cooling_rate(from, to, value(900.0), room));
    time(c, "heat/temperature_after", room(), |room| {
        heat::temperature_after(from, value(900.0), rate, room)
    });
    let drink = (value::<Beverage>(150.0), value::<Temperature>(80.0), value::<Ice>(100.0));
    time(c, "dilution/iced", drink, |(b, t, ice)| {
        dilution::iced(*b, *t, value(2.4), *ice, value(-18.0))
    });
}

fn of_reading(c: &mut Criterion) {
    let readings: [Strength; 4] = [1.44, 1.47, 1.45, 1.46].map(value);
    time(c, "reading/combine", readings, |r| reading::combine(r, value(0.01)));
    time(c, "reading/strength_of_index", value(1.3355), |n| {
        reading::strength_of_index(*n, value(24.0), reading::USUAL_REFRACTIVE_FACTOR)
    });
}

fn of_uncertainty(c: &mut Criterion) {
    let known = DegreesOfFreedom::KNOWN;
    let (sure, few): (Confidence, DegreesOfFreedom) = (value(95.0), value(4.3));
    time(c, "uncertainty/coverage_factor/known", known, |nu| {
        uncertainty::coverage_factor(sure, *nu)
    });
    time(c, "uncertainty/coverage_factor/few", few, |nu| uncertainty::coverage_factor(sure, *nu));
    let strength = Estimate {
        value: value::<Strength>(1.42),
        u: value(0.02),
        freedom: DegreesOfFreedom::KNOWN,
    };
    let mass = Standard::known(value(0.06));
    let measured = Measured {
        strength,
        dose: Estimate::with(value(15.0), mass),
        water: Estimate::with(value(200.0), mass),
        beverage: Estimate::with(value(173.0), mass),
        moisture: Estimate::with(value(2.0), Standard::known(value(0.5))),
        water_solids: Estimate::with(value(80.0), Standard::known(value(20.0))),
        vapour: Estimate::with(value(1.5), Standard::known(value(1.0))),
        held_strength: Estimate::with(HeldStrength::STEEPED, Standard::NONE),
        span: Standard::known(value(0.1)),
        factor: Standard::known(value(2.4)),
    };
    time(c, "uncertainty/extraction_yield", measured, uncertainty::extraction_yield);
    let window = verdict::HOME_BREWER_2018.window;
    let wanted = window.strength;
    time(c, "decision/decide/known", strength, |s| decision::decide(s, &wanted, sure));
    let unsure = Estimate { freedom: few, ..strength };
    time(c, "decision/decide/few", unsure, |s| decision::decide(s, &wanted, sure));
    let standard = Standard::known(value(0.03));
    time(c, "decision/acceptance", standard, |s| {
        decision::acceptance::<Strength>(s, &wanted, sure)
    });
    let Some(yields) = window.extracted else { return };
    let extracted = Estimate::with(value(21.6), Standard::known(value(0.3)));
    time(c, "decision/joint", extracted, |e| {
        decision::joint(&strength, e, value(0.97), &wanted, &yields)
    });
}

fn of_calibration(c: &mut Criterion) {
    let kept = [(12.0, 27.9), (15.0, 34.6), (18.0, 41.6), (20.0, 43.4), (25.0, 54.6), (30.0, 65.6)];
    let brews = kept.map(|(dose, kept)| Drained {
        dose: value(dose),
        water: value(16.0 * dose),
        beverage: value(16.0 * dose - kept),
        vapour: Vapour::NONE,
    });
    time(c, "calibrate/retention_line", brews, |brews| calibrate::retention_line(brews));
    let yields = [
        (5.0, 4.06),
        (10.0, 6.91),
        (20.0, 11.16),
        (30.0, 13.73),
        (60.0, 17.0),
        (120.0, 19.52),
        (180.0, 20.78),
        (300.0, 22.19),
    ]
    .map(|(contact, extracted)| Timed { contact: value(contact), extracted: value(extracted) });
    time(c, "calibrate/one_rate", yields, |yields| calibrate::one_rate(yields));
    time(c, "calibrate/two_rates", yields, |yields| calibrate::two_rates(yields));
    let readings = [(0.0, 82.3), (300.0, 72.8), (600.0, 65.0), (1200.0, 54.4)]
        .map(|(at, celsius)| Thermometer { time: value(at), temperature: value(celsius) });
    time(c, "calibrate/cooling", readings, |readings| calibrate::cooling(readings, &room()));
}

fn of_plan(c: &mut Criterion) {
    let brewer = Brewer {
        held_strength: HeldStrength::STEEPED,
        losses: Losses {
            retention: value(1.4),
            hold_up: value(3.0),
            paper: Paper::Rinsed,
            drips: Drips::NONE,
            vapour: value(1.0),
        },
        chamber: Some(Chamber { volume: value(260.0), displacement: value(0.8) }),
        heat_capacity: value(90.0),
        rinse: Some(value(150.0)),
        cooling: Some(value(0.012)),
        cover: Cover::Lidded,
        pressed: true,
        glass: false,
    };
    let coffee =
        Coffee { expected: value(19.5), moisture: value(1.8), caffeine: Some(value(11.0)) };
    let kitchen = Kitchen {
        air: Air::Altitude(value(2140.0)),
        room: value(18.0),
        humidity: value(40.0),
        pour_drop: value(1.0),
        second_vessel: None,
        cup: value(200.0),
        cup_cooling: Some(value(0.0062)),
        water_solids: value(62.0),
        added: value(88.0),
    };
    let wish = Wish {
        cup: value(190.0),
        strength: value(1.3),
        servings: value(2.0),
        brew_strength: None,
        most_batches: None,
        brew_temperature: value(91.0),
        contact: value(120.0),
        serve_at: Some(value(60.0)),
        window: Some(verdict::HOME_BREWER_2018.window),
    };
    time(c, "plan/recipe", wish, |wish| plan::recipe(wish, &brewer, &coffee, &kitchen));

    let straying = straying();
    time(c, "plan/surest", wish, |wish| plan::surest(wish, &brewer, &coffee, &kitchen, &straying));
}

fn straying() -> Straying {
    Straying {
        dose: Standard::known(value(0.06)),
        water: Standard::known(value(2.0)),
        extracted: Standard { u: value(0.4), freedom: value(9.0) },
        retention: Standard { u: value(0.08), freedom: value(9.0) },
        other: Standard::known(value(0.5)),
    }
}

fn of_advice(c: &mut Criterion) {
    let cup = Cup {
        brew: brew(),
        weighing: Standard::known(value(0.06)),
        strength: Estimate::with(value(1.44), Standard::known(value(0.02))),
        extracted: Estimate::with(value(19.2), Standard::known(value(0.3))),
        contact: value(120.0),
    };
    let rates = Rates {
        kinetics: Kinetics {
            equilibrium: value(22.0),
            fast_share: value(60.0),
            fast: value(10.0),
            slow: value(90.0),
        },
        u_fast_share: value(3.0),
        u_fast: value(0.1),
        u_slow: value(0.2),
        share_and_fast: value(0.5),
        share_and_slow: value(0.5),
        fast_and_slow: value(0.5),
        freedom: value(6.0),
    };
    let means =
        Means { rates: Some(rates), kept: None, chamber: None, water: value(92.0), milk: true };
    let (straying, window) = (straying(), verdict::HOME_BREWER_2018.window);
    let advise = |cup: &Cup| advise::on(cup, &straying, &means, value(1.3), &window, value(95.0));
    time(c, "advise/on", cup, advise);
}

/// An example's inputs in the order in which they are asked for, so that none is looked up.
struct InOrder {
    asked: Vec<(String, Asked)>,
    at: Cell<usize>,
}

impl InOrder {
    fn next(&self) -> &Asked {
        let at = self.at.get();
        self.at.set(at + 1);
        &self.asked[at].1
    }
}

impl Inputs for InOrder {
    fn number(&self, field: &str, _: Quantity) -> f64 {
        let Asked::Number(_, value) = self.next() else { panic!("{field} is a number") };
        *value
    }

    fn numbers(&self, field: &str, _: Quantity) -> Vec<f64> {
        let Asked::Numbers(_, values) = self.next() else { panic!("{field} is a list") };
        values.clone()
    }

    fn choice(&self, field: &str, _: u8) -> u8 {
        let Asked::Choice(code, _) = self.next() else { panic!("{field} is a choice") };
        *code
    }

    fn flag(&self, field: &str) -> bool {
        let Asked::Flag(is) = self.next() else { panic!("{field} is a flag") };
        *is
    }
}

/// Every formula behind its name, at its example: some tens of nanoseconds are the lists of what goes in and
/// comes out.
fn of_every_formula(c: &mut Criterion) {
    let examples = examples();
    let mut group = c.benchmark_group("every");
    group.warm_up_time(Duration::from_millis(100)).measurement_time(Duration::from_millis(400));
    for formula in FORMULAS {
        let asked = asked_by(formula, &examples[formula.id]);
        let inputs = InOrder { asked, at: Cell::new(0) };
        group.bench_function(formula.id, |b| {
            b.iter(|| {
                inputs.at.set(0);
                (formula.call)(black_box(&inputs))
            })
        });
    }
}

criterion_group!(
    rooms,
    of_every_formula,
    of_water,
    of_extraction,
    of_heat,
    of_reading,
    of_uncertainty,
    of_calibration,
    of_plan,
    of_advice
);
criterion_main!(rooms);
