//! What the linear rule leaves out of a budget, against differences of the formula that it is a budget of.

use approx::assert_relative_eq;
use cupwright::dilution;
use cupwright::extraction::{self, Brew};
use cupwright::heat::{self, Cover, Surroundings};
use cupwright::quantity::*;
use cupwright::reading::{self, Zero};
use cupwright::retention::{self, Losses, Paper};
use cupwright::uncertainty::{self, *};

use crate::value;

fn known<M: Uncertain>(x: f64, u: f64) -> Estimate<M> {
    Estimate::with(value(x), Standard::known(value(u)))
}

/// Variance and shift of the second order (JCGM 100:2008, note in 5.1.2), from differences as long as the
/// uncertainties.
fn left_out<const N: usize>(
    x: [f64; N],
    u: [f64; N],
    formula: &dyn Fn([f64; N]) -> f64,
) -> (f64, f64) {
    let at = |moves: &[(usize, f64)]| {
        let mut x = x;
        for (i, by) in moves {
            x[*i] += by * u[*i];
        }
        formula(x)
    };
    let middle = at(&[]);
    let (mut variance, mut shift) = (0.0, 0.0);
    for i in (0..N).filter(|i| u[*i] > 0.0) {
        let [far_down, down, up, far_up] = [-1.0, -0.5, 0.5, 1.0].map(|by| at(&[(i, by)]));
        // Slopes where the formula is as good as straight.
        let slope = (at(&[(i, 1e-3)]) - at(&[(i, -1e-3)])) / 2e-3;
        let bend = far_up - 2.0 * middle + far_down;
        let third = 4.0 * (far_up - 2.0 * up + 2.0 * down - far_down);
        shift += bend / 2.0;
        variance += bend * bend / 2.0 + slope * third;
        for j in (0..N).filter(|j| *j != i && u[*j] > 0.0) {
            let both = |a: f64, b: f64| at(&[(i, a), (j, b)]);
            let twist =
                (both(1.0, 1.0) - both(1.0, -1.0) - both(-1.0, 1.0) + both(-1.0, -1.0)) / 4.0;
            let bend_of_j = |a: f64| both(a, 1.0) - 2.0 * both(a, 0.0) + both(a, -1.0);
            variance += twist * twist / 2.0 + slope * (bend_of_j(1.0) - bend_of_j(-1.0)) / 2.0;
        }
    }
    (variance, shift)
}

/// Only the slopes here are differences, where the core has them exactly.
const EXACT: f64 = 1e-5;

/// A moved end of cooling is found by Simpson's rule, in two steps.
const COOLING: f64 = 1e-2;

/// The core's slopes have the specific heats of the two temperatures, the differences one.
const WITH_ONE_HEAT: f64 = 2e-2;

/// Compares, within so much of the whole.
fn compare<M: Uncertain, const N: usize>(
    budget: Result<Budget<M>, cupwright::Error>,
    x: [f64; N],
    u: [f64; N],
    within: f64,
    formula: impl Fn([f64; N]) -> f64,
) {
    let budget = budget.unwrap();
    let (linear, second) = (budget.estimate.u.value(), budget.second_order.unwrap());
    for (i, term) in budget.terms().enumerate() {
        let moved = |by: f64| {
            let mut x = x;
            x[i] += by * u[i];
            formula(x)
        };
        let slope = (moved(1e-3) - moved(-1e-3)) / (2e-3 * u[i]);
        assert_relative_eq!(term.sensitivity, slope, max_relative = within, epsilon = 1e-9);
    }
    let (variance, shift) = left_out(x, u, &formula);
    assert_relative_eq!(second.shift, shift, max_relative = within, epsilon = 1e-10);
    let more = second.u.value().powi(2) - linear.powi(2);
    assert_relative_eq!(more, variance, max_relative = within, epsilon = 1e-10);
}

#[test]
fn of_readings() {
    let (x, u) = ([1.7, 0.0], [0.1, 6.0]);
    compare(
        uncertainty::strength_of_brix(&known(x[0], u[0]), &known(0.85, u[1])),
        x,
        u,
        EXACT,
        |[brix, f]| {
            let factor = value(0.85 * (1.0 + f / 100.0));
            reading::strength_of_brix(value(brix), factor).unwrap().percent()
        },
    );
    for zero in [Zero::Distilled, Zero::BrewWater] {
        let (x, u) = ([1.4, 0.0, 0.0, 300.0], [0.1, 0.05, 6.0, 100.0]);
        let read = ReadStrength {
            reading: known(x[0], u[0]),
            instrument: Standard::known(value(u[1])),
            factor: Standard::known(value(u[2])),
            zero,
            water_solids: known(x[3], u[3]),
        };
        compare(uncertainty::strength(&read), x, u, EXACT, |[r, e, f, s]| {
            let r = value((r + e) * (1.0 + f / 100.0));
            reading::total_strength(r, zero, value(s)).unwrap().percent()
        });
    }
}

#[test]
fn of_yields() {
    let (x, u) = ([1.4, 250.0, 18.0, 0.0], [0.1, 8.0, 1.5, 6.0]);
    compare(
        uncertainty::flow_through_yield(
            &known(x[0], u[0]),
            &known(x[1], u[1]),
            &known(x[2], u[2]),
            &Standard::known(value(u[3])),
        ),
        x,
        u,
        EXACT,
        |[t, b, d, f]| {
            let t = value(t * (1.0 + f / 100.0));
            extraction::flow_through_yield(t, value(b), value(d)).unwrap().percent()
        },
    );
    let (x, u) = ([1.4, 200.0, 15.0, 0.0], [0.1, 8.0, 1.5, 6.0]);
    compare(
        uncertainty::steeped_yield(
            &known(x[0], u[0]),
            &known(x[1], u[1]),
            &known(x[2], u[2]),
            &Standard::known(value(u[3])),
        ),
        x,
        u,
        EXACT,
        |[t, w, d, f]| {
            let t = value(t * (1.0 + f / 100.0));
            extraction::steeped_yield(t, value(w), value(d)).unwrap().percent()
        },
    );
}

#[test]
fn of_the_balance() {
    let x = [1.4, 18.0, 300.0, 255.0, 3.0, 300.0, 4.0, 40.0, 0.0, 0.0];
    let u = [0.1, 1.0, 6.0, 5.0, 1.0, 100.0, 2.0, 15.0, 3.0, 6.0];
    let measured = Measured {
        strength: known(x[0], u[0]),
        dose: known(x[1], u[1]),
        water: known(x[2], u[2]),
        beverage: known(x[3], u[3]),
        moisture: known(x[4], u[4]),
        water_solids: known(x[5], u[5]),
        vapour: known(x[6], u[6]),
        held_strength: known(x[7], u[7]),
        span: Standard::known(value(u[8])),
        factor: Standard::known(value(u[9])),
    };
    let formula = |[t, d, w, b, h, s, v, held, g, f]: [f64; 10]| {
        let span = 1.0 + g / 100.0;
        let brew = Brew {
            dose: value(d * span),
            water: value(w * span),
            beverage: value(b * span),
            moisture: value(h),
            water_solids: value(s),
            vapour: value(v),
            held_strength: value(held),
        };
        let strength = value(t * (1.0 + f / 100.0));
        extraction::extraction_yield(&brew, strength).unwrap().percent()
    };
    compare(uncertainty::extraction_yield(&measured), x, u, EXACT, formula);
}

#[test]
fn of_what_a_recipe_predicts() {
    let (x, u) = ([20.0, 15.0, 200.0], [2.0, 1.5, 9.0]);
    compare(
        uncertainty::steeped_strength(&known(x[0], u[0]), &known(x[1], u[1]), &known(x[2], u[2])),
        x,
        u,
        EXACT,
        |[e, d, w]| {
            let ratio = cupwright::ratio::water_ratio(value(d), value(w)).unwrap();
            extraction::steeped_strength(value(e), ratio).unwrap().percent()
        },
    );
    let losses = |retention| Losses {
        retention: value(retention),
        hold_up: value(3.0),
        paper: Paper::Rinsed,
        drips: value(1.0),
        vapour: value(2.0),
    };
    let (x, u) = ([300.0, 18.0, 2.0, 0.0], [5.0, 1.0, 0.3, 2.0]);
    compare(
        uncertainty::beverage(
            &losses(x[2]),
            &Standard::known(value(u[2])),
            &Standard::known(value(u[3])),
            &known(x[1], u[1]),
            &known(x[0], u[0]),
        ),
        x,
        u,
        EXACT,
        |[w, d, r, other]| {
            retention::beverage(&losses(r), value(d), value(w)).unwrap().grams() - other
        },
    );
}

#[test]
fn of_water_added() {
    let (x, u) = ([180.0, 1.6, 200.0], [6.0, 0.05, 80.0]);
    compare(
        uncertainty::water_to_reach(
            &known(x[0], u[0]),
            &known(x[1], u[1]),
            value(1.3),
            &known(x[2], u[2]),
        ),
        x,
        u,
        EXACT,
        |[b, t, s]| {
            dilution::water_to_reach(value(b), value(t), value(1.3), value(s)).unwrap().grams()
        },
    );
    let (x, u) = ([180.0, 1.6, 50.0, 200.0], [6.0, 0.05, 9.0, 80.0]);
    compare(
        uncertainty::strength_after_water(
            &known(x[0], u[0]),
            &known(x[1], u[1]),
            &known(x[2], u[2]),
            &known(x[3], u[3]),
        ),
        x,
        u,
        EXACT,
        |[b, t, a, s]| {
            dilution::strength_after_water(value(b), value(t), value(a), value(s))
                .unwrap()
                .percent()
        },
    );
}

#[test]
fn of_heat() {
    let room = Surroundings { room: value(21.0), humidity: value(50.0), cover: Cover::Open };
    let (x, u) = ([90.0, 0.02], [2.0, 0.003]);
    compare(
        uncertainty::time_to_cool(&known(x[0], u[0]), value(60.0), &known(x[1], u[1]), &room),
        x,
        u,
        COOLING,
        |[from, k]| {
            heat::time_to_cool(value(from), value(60.0), value(k), &room).unwrap().seconds()
        },
    );
    let (x, u) = ([90.0, 600.0, 0.02], [2.0, 60.0, 0.003]);
    compare(
        uncertainty::temperature_after(
            &known(x[0], u[0]),
            &known(x[1], u[1]),
            &known(x[2], u[2]),
            &room,
        ),
        x,
        u,
        COOLING,
        |[from, t, k]| {
            heat::temperature_after(value(from), value(t), value(k), &room).unwrap().celsius()
        },
    );
    // Documented to be found with one specific heat, that of the end.
    let (x, u) = ([200.0, 90.0, 60.0, 30.0], [9.0, 1.0, 9.0, 2.0]);
    compare(
        uncertainty::mixed_temperature(
            &known(x[0], u[0]),
            &known(x[1], u[1]),
            &known(x[2], u[2]),
            &known(x[3], u[3]),
        ),
        x,
        u,
        WITH_ONE_HEAT,
        |[b, t, a, other]| (b * t + a * other) / (b + a),
    );
    let (x, u) = ([200.0, 92.0, 90.0, 25.0], [9.0, 1.0, 20.0, 4.0]);
    let vessel = heat::Body { heat_capacity: value(x[2]), temperature: value(x[3]) };
    let settled = heat::settle(value(x[0]), value(x[1]), &[vessel]).unwrap();
    let own = cupwright::water::specific_heat(settled).joules_per_gram_kelvin();
    compare(
        uncertainty::settle(
            &known(x[0], u[0]),
            &known(x[1], u[1]),
            &known(x[2], u[2]),
            &known(x[3], u[3]),
        ),
        x,
        u,
        WITH_ONE_HEAT,
        |[m, t, c, b]| (m * own * t + c * b) / (m * own + c),
    );
}
