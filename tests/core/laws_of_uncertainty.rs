//! What must always hold of uncertainties and decisions: less doubt never makes more, what is common
//! cancels, probabilities add up.

use approx::{assert_abs_diff_eq, assert_relative_eq};
use cupwright::decision::{self, Decision, JointDecision, Needed};
use cupwright::extraction::{self, Brew, Kinetics};
use cupwright::heat::{self, Cover, Surroundings};
use cupwright::quantity::*;
use cupwright::reading::{self, Agreement};
use cupwright::uncertainty::{self, *};
use cupwright::verdict::Band;
use proptest::prelude::*;

use crate::{some, value};

fn freedoms() -> impl Strategy<Value = DegreesOfFreedom> {
    prop_oneof![Just(DegreesOfFreedom::KNOWN), some(1.0, 5.0), some(5.0, 200.0), some(1.0, 1e8)]
}

fn about<M: Uncertain>(low: f64, high: f64, u: f64) -> impl Strategy<Value = Estimate<M>> {
    (some(low, high), some(0.0, u), freedoms()).prop_map(|(value, u, freedom)| Estimate {
        value,
        u,
        freedom,
    })
}

fn errors<U: Uncertainty>(u: f64) -> impl Strategy<Value = Standard<U>> {
    (some(0.0, u), freedoms()).prop_map(|(u, freedom)| Standard { u, freedom })
}

prop_compose! {
    /// A brew whose beverage is what a retention of 1 to 3 g/g leaves.
    fn measured()(
        strength in about(0.8, 2.0, 0.1),
        dose in about::<Dose>(10.0, 60.0, 0.5),
        ratio in 8.0..20.0_f64,
        retention in 1.0..3.0_f64,
        masses in (some(0.0, 2.0), some(0.0, 2.0)),
        freedom in (freedoms(), freedoms()),
        moisture in about(0.0, 6.0, 2.0),
        water_solids in about(0.0, 400.0, 60.0),
        vapour in about(0.0, 4.0, 2.0),
        held_strength in about(0.0, 100.0, 30.0),
        span in errors(2.0),
        factor in errors(5.0),
    ) -> Measured {
        let d = dose.value.grams();
        Measured {
            strength, dose, moisture, water_solids, vapour, held_strength, span, factor,
            water: Estimate { value: value(d * ratio), u: masses.0, freedom: freedom.0 },
            beverage: Estimate { value: value(d * (ratio - retention)), u: masses.1, freedom: freedom.1 },
        }
    }
}

/// The same with one input's uncertainty halved, by its place among the terms.
fn halved(m: &Measured, at: usize) -> Measured {
    fn half<U: Uncertainty>(u: U) -> U {
        value(u.value() / 2.0)
    }
    let mut m = *m;
    match at {
        0 => m.strength.u = half(m.strength.u),
        1 => m.dose.u = half(m.dose.u),
        2 => m.water.u = half(m.water.u),
        3 => m.beverage.u = half(m.beverage.u),
        4 => m.moisture.u = half(m.moisture.u),
        5 => m.water_solids.u = half(m.water_solids.u),
        6 => m.vapour.u = half(m.vapour.u),
        7 => m.held_strength.u = half(m.held_strength.u),
        8 => m.span.u = half(m.span.u),
        _ => m.factor.u = half(m.factor.u),
    }
    m
}

fn brew(m: &Measured) -> Brew {
    Brew {
        dose: m.dose.value,
        water: m.water.value,
        beverage: m.beverage.value,
        moisture: m.moisture.value,
        water_solids: m.water_solids.value,
        vapour: m.vapour.value,
        held_strength: m.held_strength.value,
    }
}

fn band(lowest: f64, highest: f64) -> Band<Measurand> {
    Band::new(value(lowest), value(highest)).unwrap()
}

proptest! {
    // ---- Budgets ----------------------------------------------------------------------------------

    #[test]
    fn the_value_is_the_models_and_the_parts_make_the_whole(m in measured()) {
        let Ok(budget) = uncertainty::extraction_yield(&m) else { return Ok(()) };
        let plain = extraction::extraction_yield(&brew(&m), m.strength.value).unwrap();
        prop_assert_eq!(budget.estimate.value, plain);
        let squares = budget.terms().map(|term| term.contribution() * term.contribution());
        let u = budget.estimate.u.percent();
        assert_relative_eq!(u, squares.sum::<f64>().sqrt(), max_relative = 1e-12);
        prop_assert_eq!(budget.terms().count(), 10);
        // Between the worst known of all that is uncertain and all of them together.
        let freedom = budget.estimate.freedom.count();
        let known: Vec<f64> = budget
            .terms()
            .filter(|term| term.contribution() > 0.0)
            .map(|term| term.freedom.count())
            .collect();
        let least = known.iter().copied().fold(1e9, f64::min);
        let all = known.iter().sum::<f64>().max(least);
        prop_assert!(freedom >= least * (1.0 - 1e-12) && freedom <= all * (1.0 + 1e-12));
    }

    #[test]
    fn less_doubt_never_makes_more(m in measured(), at in 0..10_usize) {
        let Ok(budget) = uncertainty::extraction_yield(&m) else { return Ok(()) };
        let less = uncertainty::extraction_yield(&halved(&m, at)).unwrap();
        prop_assert!(less.estimate.u.percent() <= budget.estimate.u.percent() * (1.0 + 1e-15));
        if let Some(dominant) = budget.dominant() {
            prop_assert!(dominant.gone <= dominant.halved && dominant.halved <= budget.estimate.u);
            let place = budget.terms().position(|term| *term == dominant.term).unwrap();
            let less = uncertainty::extraction_yield(&halved(&m, place)).unwrap();
            assert_relative_eq!(
                less.estimate.u.percent(), dominant.halved.percent(), max_relative = 1e-12
            );
            // No other term is worth more.
            for term in budget.terms() {
                prop_assert!(term.contribution() <= dominant.term.contribution());
            }
        }
    }

    #[test]
    fn sensitivities_are_the_models_slopes(m in measured()) {
        let Ok(budget) = uncertainty::extraction_yield(&m) else { return Ok(()) };
        fn moved<M: Uncertain>(e: Estimate<M>, by: f64) -> Option<Estimate<M>> {
            Some(Estimate { value: M::new(e.value.value() + by).ok()?, ..e })
        }
        let at = |place: usize, by: f64| {
            let mut m = m;
            match place {
                0 => m.strength = moved(m.strength, by)?,
                1 => m.dose = moved(m.dose, by)?,
                2 => m.water = moved(m.water, by)?,
                3 => m.beverage = moved(m.beverage, by)?,
                4 => m.moisture = moved(m.moisture, by)?,
                5 => m.water_solids = moved(m.water_solids, by)?,
                6 => m.vapour = moved(m.vapour, by)?,
                _ => m.held_strength = moved(m.held_strength, by)?,
            }
            extraction::extraction_yield(&brew(&m), m.strength.value).ok().map(Yield::percent)
        };
        for (place, term) in budget.terms().take(8).enumerate() {
            let step = 1e-3;
            if let (Some(up), Some(down)) = (at(place, step), at(place, -step)) {
                let slope = (up - down) / (2.0 * step);
                assert_relative_eq!(slope, term.sensitivity, max_relative = 1e-5, epsilon = 1e-9);
            }
        }
    }

    #[test]
    fn the_span_of_a_scale_cancels(
        m in measured(), span in some::<SpanUncertainty>(0.0, 50.0), more in 0.9..1.1_f64
    ) {
        // Nothing but weighed masses: no trace of the span is left.
        let plain = Measured {
            moisture: Estimate::exact(value(0.0)),
            water_solids: Estimate::exact(WaterSolids::NONE),
            vapour: Estimate::exact(Vapour::NONE),
            held_strength: Estimate::exact(HeldStrength::FLOWED_THROUGH),
            span: Standard::known(span),
            ..m
        };
        let Ok(whole) = uncertainty::extraction_yield(&plain) else { return Ok(()) };
        prop_assert_eq!(whole.terms().nth(8).unwrap().contribution(), 0.0);
        let through =
            uncertainty::flow_through_yield(&m.strength, &m.beverage, &m.dose, &m.factor).unwrap();
        assert_relative_eq!(
            whole.estimate.u.percent(), through.estimate.u.percent(), max_relative = 1e-12
        );
        // A scale that shows everything too large by a factor shows the same yield.
        let scaled = Measured {
            dose: Estimate::exact(value(m.dose.value.grams() * more)),
            beverage: Estimate::exact(value(m.beverage.value.grams() * more)),
            water: Estimate::exact(value(m.water.value.grams() * more)),
            ..plain
        };
        let again = uncertainty::extraction_yield(&scaled).unwrap();
        assert_relative_eq!(
            again.estimate.value.percent(), whole.estimate.value.percent(), max_relative = 1e-12
        );
    }

    #[test]
    fn yield_and_strength_go_together(m in measured()) {
        let Ok(budget) = uncertainty::extraction_yield(&m) else { return Ok(()) };
        let correlation = budget.correlation_with_strength().ratio();
        prop_assert!((0.0..=1.0).contains(&correlation));
        let alone = Measured {
            dose: Estimate::exact(m.dose.value),
            water: Estimate::exact(m.water.value),
            beverage: Estimate::exact(m.beverage.value),
            moisture: Estimate::exact(m.moisture.value),
            water_solids: Estimate::exact(m.water_solids.value),
            vapour: Estimate::exact(m.vapour.value),
            held_strength: Estimate::exact(m.held_strength.value),
            span: Standard::NONE,
            ..m
        };
        let budget = uncertainty::extraction_yield(&alone).unwrap();
        if budget.estimate.u.percent() > 0.0 {
            assert_relative_eq!(budget.correlation_with_strength().ratio(), 1.0, max_relative = 1e-12);
        }
    }

    #[test]
    fn a_wish_and_its_water_are_equally_sure(
        beverage in about::<Beverage>(100.0, 400.0, 1.0),
        strength in about::<Strength>(1.3, 3.0, 0.1),
        share in 0.5..0.99_f64,
    ) {
        let wanted = value(strength.value.percent() * share);
        let water = Estimate::exact(WaterSolids::NONE);
        let added = uncertainty::water_to_reach(&beverage, &strength, wanted, &water).unwrap();
        // The strength that this water makes is as uncertain as the strength at hand says.
        let exact = Estimate::exact(added.estimate.value);
        let after = uncertainty::strength_after_water(&beverage, &strength, &exact, &water).unwrap();
        assert_relative_eq!(after.estimate.value.percent(), wanted.percent(), max_relative = 1e-12);
        // ∂A/∂T = −(∂T'/∂T)/(∂T'/∂A)
        let total = beverage.value.grams() + added.estimate.value.grams();
        let slopes: Vec<_> = after.terms().map(|term| term.sensitivity).collect();
        let by_strength = added.terms().nth(1).unwrap().sensitivity;
        assert_relative_eq!(by_strength * wanted.percent() / total, slopes[1], max_relative = 1e-12);
    }

    #[test]
    fn what_a_thermometer_and_a_brewer_leave_open_is_a_slope(
        liquid in about::<Liquid>(40.0, 600.0, 1.0), hot in about::<Temperature>(70.0, 100.0, 1.0),
        capacity in about::<HeatCapacity>(0.0, 600.0, 30.0), cold in about::<VesselTemperature>(-10.0, 60.0, 2.0),
        rate in about::<CoolingRate>(0.003, 0.02, 0.001), to in some::<Temperature>(40.0, 65.0),
    ) {
        let moved = |value: f64, place: usize, at: usize, by: f64| value + if place == at { by } else { 0.0 };
        let settled = uncertainty::settle(&liquid, &hot, &capacity, &cold).unwrap();
        let slopes = settled.terms().map(|term| term.sensitivity).enumerate();
        for (at, slope) in slopes.filter(|(at, _)| *at != 2 || capacity.value.joules_per_kelvin() > 1.0) {
            let of = |by: f64| {
                let body = heat::Body {
                    heat_capacity: value(moved(capacity.value.joules_per_kelvin(), 2, at, by)),
                    temperature: value(moved(cold.value.celsius(), 3, at, by)),
                };
                let mass = value(moved(liquid.value.grams(), 0, at, by));
                heat::settle(mass, value(moved(hot.value.celsius(), 1, at, by)), &[body]).unwrap().celsius()
            };
            assert_relative_eq!((of(0.01) - of(-0.01)) / 0.02, slope, max_relative = 1e-5, epsilon = 1e-7);
        }
        for cover in [heat::Cover::Open, heat::Cover::Lidded] {
            let room = heat::Surroundings { room: value(20.0), humidity: value(50.0), cover };
            let wait = uncertainty::time_to_cool(&hot, to, &rate, &room).unwrap();
            let by = wait.terms().next().unwrap().sensitivity;
            let of = |by: f64| {
                let hotter = value(hot.value.celsius() + by);
                heat::time_to_cool(hotter, to, rate.value, &room).unwrap().seconds()
            };
            assert_relative_eq!((of(0.01) - of(-0.01)) / 0.02, by, max_relative = 1e-5);
            // Twice the rate, half the time: the logarithms have one slope.
            let by = wait.terms().nth(1).unwrap().sensitivity;
            assert_relative_eq!(by * rate.value.per_minute(), -wait.estimate.value.seconds(), max_relative = 1e-12);
        }
    }

    #[test]
    fn readings_that_agree_rest_on_the_others_before(
        values in prop::collection::vec(some::<Strength>(1.40, 1.44), 1..10),
        s in some::<StrengthUncertainty>(0.001, 0.1), freedom in freedoms(),
    ) {
        let own = Series { s, freedom };
        let read = uncertainty::of_readings(&values, &own).unwrap();
        let combined = reading::combine(&values, value(s.percent())).unwrap();
        prop_assert_eq!(read.value, combined.value);
        if combined.agreement == Agreement::Mean || values.len() == 1 {
            assert_relative_eq!(
                read.u.percent(), s.percent() / (values.len() as f64).sqrt(), max_relative = 1e-12
            );
            prop_assert_eq!(read.freedom, freedom);
        } else {
            prop_assert_eq!(read.standard(), uncertainty::of_repeats(&values).unwrap().standard());
            // They do not agree because they scatter more than s says.
            prop_assert!(read.u.percent() > s.percent() / (values.len() as f64).sqrt());
        }
    }

    // ---- Factors and probabilities ----------------------------------------------------------------

    #[test]
    fn surer_is_wider_and_better_known_is_narrower(
        sure in some::<Confidence>(50.0, 99.8), freedom in freedoms(), more in 1.01..100.0_f64
    ) {
        let factor = uncertainty::coverage_factor(sure, freedom);
        let surer = value(sure.percent() + 0.1);
        prop_assert!(uncertainty::coverage_factor(surer, freedom) > factor);
        if let Ok(freedom) = DegreesOfFreedom::from_count(freedom.count() * more) {
            prop_assert!(uncertainty::coverage_factor(sure, freedom) <= factor);
        }
        // What the factor spans has the probability that was asked.
        let k = factor.ratio();
        let zero = Estimate { value: value(0.0), u: value(1.0), freedom };
        let chances = decision::chances(&zero, &band(-k, k));
        assert_abs_diff_eq!(chances.inside.percent(), sure.percent(), epsilon = 1e-8);
        assert_abs_diff_eq!(chances.below.percent(), chances.above.percent(), epsilon = 1e-12);
    }

    #[test]
    fn the_parts_of_the_line_have_all_the_probability(
        y in -50.0..50.0_f64, u in some::<StandardUncertainty>(0.0, 20.0), freedom in freedoms(),
        a in -40.0..0.0_f64, b in 0.01..20.0_f64, c in 20.5..60.0_f64,
    ) {
        let estimate = Estimate { value: value(y), u, freedom };
        let of = |low, high| decision::chances(&estimate, &band(low, high));
        let (left, right, both) = (of(a, b), of(b, c), of(a, c));
        for chances in [left, right, both] {
            let all = [chances.below, chances.inside, chances.above].map(Probability::percent);
            prop_assert!(all.iter().all(|p| (0.0..=100.0).contains(p)));
            assert_abs_diff_eq!(all.iter().sum::<f64>(), 100.0, epsilon = 1e-9);
        }
        // A value without uncertainty on the edge between is inside both.
        if u.number() > 0.0 || y != b {
            assert_abs_diff_eq!(
                left.inside.percent() + right.inside.percent(), both.inside.percent(), epsilon = 1e-9
            );
        }
        assert_abs_diff_eq!(left.below.percent(), both.below.percent(), epsilon = 1e-12);
    }

    // ---- Decisions --------------------------------------------------------------------------------

    #[test]
    fn what_can_be_called_inside_is_symmetric_and_just_sure_enough(
        u in some::<StandardUncertainty>(0.0, 1.0), freedom in freedoms(), width in 0.5..5.0_f64,
        sure in some::<Confidence>(50.0, 99.9),
    ) {
        let wanted = band(20.0, 20.0 + width);
        let standard = Standard { u, freedom };
        let most = decision::largest_uncertainty(&wanted, sure, freedom).unwrap();
        let at = |y: f64| {
            decision::decide(&Estimate::with(value(y), standard), &wanted, sure)
        };
        let Some(safe) = decision::acceptance(&standard, &wanted, sure) else {
            prop_assert!(u.number() >= most.number() * (1.0 - 1e-9));
            prop_assert!(at(wanted.centre()) != Decision::Inside || u.number() <= most.number() * (1.0 + 1e-9));
            return Ok(());
        };
        prop_assert!(u.number() <= most.number() * (1.0 + 1e-9));
        let (low, high) = (safe.lowest().number(), safe.highest().number());
        assert_abs_diff_eq!(low - 20.0, 20.0 + width - high, epsilon = 1e-12);
        prop_assert_eq!(at(safe.centre()), Decision::Inside);
        prop_assert_eq!((at(low), at(high)), (Decision::Inside, Decision::Inside));
        if u.number() > 0.0 {
            for edge in [low, high] {
                let edge = Estimate::with(value(edge), standard);
                let inside = decision::chances(&edge, &wanted).inside.percent();
                // Where the widest acceptable value is the middle, its place is ill defined.
                let loose = if high - low < 1e-3 { 1e-4 } else { 1e-7 };
                assert_abs_diff_eq!(inside, sure.percent(), epsilon = loose);
            }
            prop_assert!(at(20.0 - width) != Decision::Inside);
        }
    }

    #[test]
    fn both_is_no_likelier_than_either(
        strength in about::<Strength>(1.1, 1.5, 0.1), extracted in about::<Yield>(17.0, 23.0, 1.0),
        correlation in some::<Correlation>(-1.0, 1.0),
    ) {
        let strengths = Band::new(value(1.15), value(1.45)).unwrap();
        let yields = Band::new(value(18.0), value(22.0)).unwrap();
        let with = |r| decision::joint(&strength, &extracted, r, &strengths, &yields);
        let joint = with(correlation);
        let (s, e) = (joint.strength.inside.percent(), joint.extracted.inside.percent());
        let both = joint.both.percent();
        prop_assert!(both <= s && both <= e && both >= 0.0);
        prop_assert!(both >= s + e - 100.0 - 1e-8);
        assert_abs_diff_eq!(with(value(0.0)).both.percent(), s * e / 100.0, epsilon = 1e-8);
        // Together is decided only if each alone is.
        let sure = value(95.0);
        if decision::decide_joint(joint.both, sure) == JointDecision::Inside {
            prop_assert_eq!(decision::decide(&strength, &strengths, sure), Decision::Inside);
            prop_assert_eq!(decision::decide(&extracted, &yields, sure), Decision::Inside);
        }
        let is_outside = |decided| matches!(decided, Decision::Below | Decision::Above);
        if is_outside(decision::decide(&strength, &strengths, sure)) {
            prop_assert_eq!(decision::decide_joint(joint.both, sure), JointDecision::Outside);
        }
        prop_assert_eq!(joint.strength, decision::chances(&strength, &strengths));
    }

    #[test]
    fn as_many_readings_as_are_said_decide_and_one_fewer_does_not(
        mean in 1.1..1.5_f64, scatter in some::<StrengthUncertainty>(0.001, 0.1),
        rest in errors::<StrengthUncertainty>(0.03), sure in some::<Confidence>(80.0, 99.0),
    ) {
        let wanted = Band::<Strength>::new(value(1.15), value(1.45)).unwrap();
        let one = Standard::known(scatter);
        let decided = |n: f64| {
            let parts = [scatter.percent() / n.sqrt(), rest.u.percent()];
            let influence = |u: f64, freedom| Influence { sensitivity: value(1.0), u: value(u), freedom };
            let both = [influence(parts[0], one.freedom), influence(parts[1], rest.freedom)];
            let together = uncertainty::combine(value(0.0), &both).unwrap().estimate;
            let standard = Standard { u: value(together.u.number()), freedom: together.freedom };
            let decision = decision::decide(&Estimate::with(value(mean), standard), &wanted, sure);
            matches!(decision, Decision::Inside | Decision::Below | Decision::Above)
        };
        match decision::readings_needed(value(mean), &one, &rest, &wanted, sure).unwrap() {
            Needed::Readings(n) => {
                prop_assert!(decided(n.count()));
                prop_assert!(n.count() == 1.0 || !decided(n.count() - 1.0));
            }
            Needed::MoreThanTen => prop_assert!(!decided(10.0)),
            Needed::NoneIsEnough => {
                prop_assert!((1..=10).all(|n| !decided(f64::from(n))) && !decided(1e12));
            }
            other => panic!("a new variant: {other:?}"),
        }
    }

    #[test]
    fn a_comparison_has_two_sides_and_the_common_factor_counts_only_for_the_difference(
        first in about::<Strength>(1.0, 1.6, 0.05), second in about::<Strength>(1.0, 1.6, 0.05),
        factor in errors::<FactorUncertainty>(5.0), sure in some::<Confidence>(50.0, 99.9),
    ) {
        let there = decision::compare(&first, &second, &factor, sure).unwrap();
        let back = decision::compare(&second, &first, &factor, sure).unwrap();
        prop_assert_eq!(there.difference, -back.difference);
        prop_assert_eq!(there.is_real, back.is_real);
        let without = decision::compare(&first, &second, &Standard::NONE, sure).unwrap();
        // What is real and what is the least real difference do not hang on what is common.
        prop_assert_eq!(there.is_real, without.is_real);
        prop_assert_eq!(there.least.to_bits(), without.least.to_bits());
        let apart = |by: f64| {
            let moved = Estimate::with(value(second.value.percent() + by), first.standard());
            decision::compare(&moved, &second, &factor, sure).unwrap().is_real
        };
        if there.least > 1e-9 {
            prop_assert!(apart(there.least * 1.000_001) && !apart(there.least * 0.999_999));
        }
        let more = there.standard.u.percent().powi(2) - without.standard.u.percent().powi(2);
        let of_factor = factor.u.fraction() * there.difference;
        assert_abs_diff_eq!(more, of_factor * of_factor, epsilon = 1e-12);
        // Real at a confidence is the same as a larger confidence reached.
        if (there.confidence.percent() - sure.percent()).abs() > 1e-6 {
            prop_assert_eq!(there.is_real, there.confidence.percent() > sure.percent());
        }
    }

    #[test]
    fn repeats_and_pools(values in prop::collection::vec(some::<Strength>(1.0, 2.0), 2..10), by in 0.0..3.0_f64) {
        let mean = uncertainty::of_repeats(&values).unwrap();
        // Moving all of them moves the mean and nothing else.
        let moved: Vec<Strength> = values.iter().map(|v| value(v.percent() + by)).collect();
        let again = uncertainty::of_repeats(&moved).unwrap();
        assert_abs_diff_eq!(again.value.percent(), mean.value.percent() + by, epsilon = 1e-12);
        assert_abs_diff_eq!(again.u.percent(), mean.u.percent(), epsilon = 1e-12);
        // One series pooled is itself.
        let n = values.len() as f64;
        let series = Series::<StrengthUncertainty> { s: value(mean.u.percent() * n.sqrt()), freedom: mean.freedom };
        let pooled = uncertainty::pooled(&[series], value(n)).unwrap();
        assert_abs_diff_eq!(pooled.u.percent(), mean.u.percent(), epsilon = 1e-14);
        prop_assert_eq!(pooled.freedom, mean.freedom);
    }
}

#[test]
fn what_is_too_many_or_too_few_is_refused() {
    let one: Strength = value(1.4);
    assert!(uncertainty::of_repeats(&[one]).is_err());
    assert!(uncertainty::of_repeats(&[one; 101]).is_err());
    assert_eq!(uncertainty::of_repeats(&[one; 100]).unwrap().u, StrengthUncertainty::NONE);
    let none: [Series<StrengthUncertainty>; 0] = [];
    assert!(uncertainty::pooled(&none, value(1.0)).is_err());
    assert!(uncertainty::together::<StrengthUncertainty>(&[]).is_err());
    assert!(uncertainty::together(&[Standard::known(StrengthUncertainty::NONE); 11]).is_err());
    assert!(uncertainty::combine(value(0.0), &[]).is_err());
    let influence = Influence { sensitivity: value(1.0), u: value(1.0), freedom: value(3.0) };
    assert!(uncertainty::combine(value(0.0), &[influence; 11]).is_err());
    assert_eq!(uncertainty::combine(value(0.0), &[influence; 10]).unwrap().terms().count(), 10);
}

/// A dose of 3 g ± 3 g: one uncertainty down there is no coffee, and the linear budget stands.
#[test]
fn a_budget_stands_though_nothing_can_be_said_beyond_it() {
    let strength = Estimate::exact(value(1.4));
    let dose = Estimate::with(value(3.0), Standard::known(value(3.0)));
    let told = |dose| {
        uncertainty::flow_through_yield(
            &strength,
            &Estimate::exact(value(45.0)),
            &dose,
            &Standard::NONE,
        )
    };
    let budget = told(dose).unwrap();
    assert_eq!(budget.second_order, None);
    assert_relative_eq!(budget.estimate.u.percent(), 21.0, max_relative = 1e-12);
    let surer = told(Estimate::with(value(3.0), Standard::known(value(0.3)))).unwrap();
    assert!(surer.second_order.is_some_and(|second| second.u > surer.estimate.u));
}

/// On an edge the chance is one half, whatever the scatter.
#[test]
fn no_number_of_readings_decides_a_mean_on_an_edge() {
    let wanted = Band::<Strength>::new(value(1.15), value(1.45)).unwrap();
    let scatter = Standard::known(value(0.02));
    for edge in [wanted.lowest(), wanted.highest()] {
        for rest in [Standard::NONE, Standard::known(value(0.001))] {
            let needed = decision::readings_needed(edge, &scatter, &rest, &wanted, value(95.0));
            assert_eq!(needed, Ok(Needed::NoneIsEnough));
        }
        // A value that does not scatter at all is where it is.
        let exact =
            decision::readings_needed(edge, &Standard::NONE, &Standard::NONE, &wanted, value(95.0));
        assert_eq!(exact, Ok(Needed::Readings(value(1.0))));
    }
    let near = value(1.4499);
    let needed = decision::readings_needed(near, &scatter, &Standard::NONE, &wanted, value(95.0));
    assert_eq!(needed, Ok(Needed::MoreThanTen));
}

/// An invented law of two rates, each parameter so uncertain, with these correlations of E∞ with f, ln τ1,
/// ln τ2, of f with those, and of the two.
fn law(u: [f64; 4], r: [f64; 6]) -> (Rates, Plateau) {
    let [level, share, fast, slow] = u;
    let [level_share, level_fast, level_slow, share_fast, share_slow, fast_slow] = r;
    let rates = Rates {
        kinetics: Kinetics {
            equilibrium: value(22.0),
            fast_share: value(45.0),
            fast: value(10.0),
            slow: value(120.0),
        },
        u_fast_share: value(share),
        u_fast: value(fast),
        u_slow: value(slow),
        share_and_fast: value(share_fast),
        share_and_slow: value(share_slow),
        fast_and_slow: value(fast_slow),
        freedom: value(5.0),
    };
    let level = Plateau {
        u_equilibrium: value(level),
        equilibrium_and_share: value(level_share),
        equilibrium_and_fast: value(level_fast),
        equilibrium_and_slow: value(level_slow),
    };
    (rates, level)
}

proptest! {
    /// Any correlations, also ones that cannot go together, leave an uncertainty that is at most the sum of
    /// its parts; and a time is as uncertain as the yield then is over how fast it grows.
    #[test]
    fn what_a_law_is_uncertain_by_stays_within_its_parts(
        u in (0.0..1.0_f64, 0.0..5.0_f64, 0.0..0.2_f64, 0.0..0.2_f64),
        r in prop::array::uniform6(-1.0..=1.0_f64),
        seconds in 5.0..300.0_f64,
    ) {
        let parts = [[u.0, 0.0, 0.0, 0.0], [0.0, u.1, 0.0, 0.0], [0.0, 0.0, u.2, 0.0], [0.0, 0.0, 0.0, u.3]];
        let contact = Estimate::exact(value(seconds));
        let u_of = |(rates, level): (Rates, Plateau)| {
            let budget = uncertainty::yield_at_time(&rates, &level, &contact).unwrap();
            assert_eq!(budget.terms().count(), 2);
            assert_eq!(budget.estimate.freedom.count(), if budget.estimate.u.percent() > 0.0 { 5.0 } else { 1e9 });
            budget.estimate.u.percent()
        };
        let alone = parts.map(|part| u_of(law(part, [0.0; 6])));
        let apart = u_of(law(u.into(), [0.0; 6]));
        assert_relative_eq!(apart, alone.iter().map(|u| u * u).sum::<f64>().sqrt(), max_relative = 1e-12, epsilon = 1e-14);
        let together = u_of(law(u.into(), r));
        prop_assert!(together <= alone.iter().sum::<f64>() * (1.0 + 1e-9), "{together} {alone:?}");

        let (rates, level) = law(u.into(), r);
        let reached = |t: f64| cupwright::extraction::yield_at_time(&rates.kinetics, value(t)).percent();
        let speed = (reached(seconds + 1e-3) - reached(seconds - 1e-3)) / 2e-3;
        let wait = uncertainty::time_for_yield(&rates, &level, value(reached(seconds))).unwrap();
        assert_relative_eq!(wait.estimate.value.seconds(), seconds, max_relative = 1e-9);
        assert_relative_eq!(wait.estimate.u.seconds() * speed, together, max_relative = 1e-6, epsilon = 1e-9);
    }
}

/// Where the level alone is uncertain the yield is linear in it. Where a time alone is, the mean and the
/// scatter over its normal logarithm are known by summing over it.
#[test]
fn what_the_linear_rule_leaves_out_of_a_law() {
    let contact = Estimate::exact(value(15.0));
    let of = |u: [f64; 4]| {
        let (rates, level) = law(u, [0.0; 6]);
        uncertainty::yield_at_time(&rates, &level, &contact).unwrap()
    };
    let linear = of([0.8, 0.0, 0.0, 0.0]);
    let second = linear.second_order.unwrap();
    assert_relative_eq!(second.u.percent(), linear.estimate.u.percent(), max_relative = 1e-9);
    assert_abs_diff_eq!(second.shift, 0.0, epsilon = 1e-12);

    let u = 0.2;
    let curved = of([0.0, 0.0, u, 0.0]);
    let second = curved.second_order.unwrap();
    let model = |z: f64| {
        let done = |tau: f64| 1.0 - (-15.0 / tau).exp();
        22.0 * (0.45 * done(10.0 * (u * z).exp()) + 0.55 * done(120.0))
    };
    let steps = (-800..=800).map(|k| f64::from(k) / 100.0);
    let weight = |z: f64| (-0.5 * z * z).exp() / (2.0 * std::f64::consts::PI).sqrt() / 100.0;
    let mean: f64 = steps.clone().map(|z| weight(z) * model(z)).sum();
    let variance: f64 = steps.map(|z| weight(z) * (model(z) - mean).powi(2)).sum();
    let value = curved.estimate.value.percent();
    assert_relative_eq!(second.shift, mean - value, max_relative = 0.05);
    let (second, linear, true_u) =
        (second.u.percent(), curved.estimate.u.percent(), variance.sqrt());
    assert!((second - true_u).abs() < 0.3 * (linear - true_u).abs(), "{second} {linear} {true_u}");
}

/// Each part of a law alone, and the time of contact: mean and scatter by summing over its normal law, the
/// model with a second rate and with the time turned round.
#[test]
fn what_the_linear_rule_leaves_out_of_each_part_of_a_law() {
    let u = [0.8, 6.0, 0.2, 0.2];
    let done = |t: f64, tau: f64| 1.0 - (-t / tau).exp();
    let extracted = |z: [f64; 4], t: f64| {
        let (fast, slow) = (10.0 * (u[2] * z[2]).exp(), 120.0 * (u[3] * z[3]).exp());
        let share = 0.45 + 0.01 * u[1] * z[1];
        (22.0 + u[0] * z[0]) * (share * done(t, fast) + (1.0 - share) * done(t, slow))
    };
    let steps = || (-600..=600).map(|k| f64::from(k) / 100.0);
    let weight = |z: f64| (-0.5 * z * z).exp() / (2.0 * std::f64::consts::PI).sqrt() / 100.0;
    let compare = |(u, shift): (f64, f64), model: &dyn Fn(f64) -> f64| {
        let mean: f64 = steps().map(|z| weight(z) * model(z)).sum();
        let variance: f64 = steps().map(|z| weight(z) * (model(z) - mean).powi(2)).sum();
        let true_u = variance.sqrt();
        assert_abs_diff_eq!(shift, mean - model(0.0), epsilon = 0.005 * true_u);
        assert_relative_eq!(u, true_u, max_relative = 0.008);
    };
    for part in 0..4 {
        let mut alone = [0.0; 4];
        alone[part] = u[part];
        let (rates, level) = law(alone, [0.0; 6]);
        let moved = |z: f64| {
            let mut all = [0.0; 4];
            all[part] = z;
            all
        };
        for t in [15.0, 40.0] {
            let contact = Estimate::exact(value(t));
            let budget = uncertainty::yield_at_time(&rates, &level, &contact).unwrap();
            let second = budget.second_order.unwrap();
            compare((second.u.percent(), second.shift), &|z| extracted(moved(z), t));
        }
        let wanted = extracted([0.0; 4], 15.0);
        let budget = uncertainty::time_for_yield(&rates, &level, value(wanted)).unwrap();
        let second = budget.second_order.unwrap();
        compare((second.u.seconds(), second.shift), &|z| {
            let (mut early, mut late) = (0.0, 4000.0);
            for _ in 0..60 {
                let middle = 0.5 * (early + late);
                let is_later = extracted(moved(z), middle) < wanted;
                *(if is_later { &mut early } else { &mut late }) = middle;
            }
            early
        });
    }
    let (rates, level) = law([0.0; 4], [0.0; 6]);
    let contact = Estimate::with(value(15.0), Standard::known(value(4.0)));
    let budget = uncertainty::yield_at_time(&rates, &level, &contact).unwrap();
    let second = budget.second_order.unwrap();
    compare((second.u.percent(), second.shift), &|z| extracted([0.0; 4], 15.0 + 4.0 * z));
}

/// The temperature after a time and the time to that temperature say the same of the same doubt.
#[test]
fn cooling_by_time_and_by_temperature_agree() {
    let room = Surroundings { room: value(21.0), humidity: value(50.0), cover: Cover::Open };
    let rate = Estimate::with(value(0.009), Standard::known(value(0.0006)));
    let from = Estimate::with(value(88.0), Standard::known(value(0.8)));
    let elapsed = Estimate::exact(value(900.0));
    let later = uncertainty::temperature_after(&from, &elapsed, &rate, &room).unwrap();
    let wait = uncertainty::time_to_cool(&from, later.estimate.value, &rate, &room).unwrap();
    assert_relative_eq!(wait.estimate.value.seconds(), 900.0, max_relative = 1e-9);
    let known = |t: f64| {
        let (from, rate) = (Estimate::exact(value(88.0)), Estimate::exact(value(0.009)));
        let elapsed = Estimate::exact(value(t));
        uncertainty::temperature_after(&from, &elapsed, &rate, &room).unwrap().estimate.value
    };
    let speed = (known(899.0).celsius() - known(901.0).celsius()) / 2.0;
    let u = later.estimate.u.kelvin();
    assert_relative_eq!(wait.estimate.u.seconds() * speed, u, max_relative = 1e-5);
    // What the linear rule leaves out, by a grid over the rate's law.
    let by_rate = |z: f64| {
        let rate = Estimate::exact(value(0.009 + 0.0015 * z));
        let from = Estimate::exact(value(88.0));
        let budget = uncertainty::temperature_after(&from, &elapsed, &rate, &room).unwrap();
        budget.estimate.value.celsius()
    };
    let rate = Estimate::with(value(0.009), Standard::known(value(0.0015)));
    let from = Estimate::exact(value(88.0));
    let curved = uncertainty::temperature_after(&from, &elapsed, &rate, &room).unwrap();
    let steps = (-50..=50).map(|k| f64::from(k) / 10.0);
    let weight = |z: f64| (-0.5 * z * z).exp() / (2.0 * std::f64::consts::PI).sqrt() / 10.0;
    let mean: f64 = steps.clone().map(|z| weight(z) * by_rate(z)).sum();
    let variance: f64 = steps.map(|z| weight(z) * (by_rate(z) - mean).powi(2)).sum();
    let second = curved.second_order.unwrap();
    assert_relative_eq!(second.shift, mean - curved.estimate.value.celsius(), max_relative = 0.05);
    assert_relative_eq!(second.u.kelvin(), variance.sqrt(), max_relative = 2e-3);
}

/// Very hard water, much of it boiled off: every input moves the yield.
#[test]
fn the_sensitivities_of_a_balance_are_its_slopes() {
    let at = [1.4, 15.0, 200.0, 168.0, 3.0, 2000.0, 12.0, 70.0];
    let brew = |[_, dose, water, beverage, moisture, solids, vapour, held]: [f64; 8]| Brew {
        dose: value(dose),
        water: value(water),
        beverage: value(beverage),
        moisture: value(moisture),
        water_solids: value(solids),
        vapour: value(vapour),
        held_strength: value(held),
    };
    let extracted = |inputs: [f64; 8]| {
        extraction::extraction_yield(&brew(inputs), value(inputs[0])).unwrap().percent()
    };
    let of = brew(at);
    let budget = uncertainty::extraction_yield(&Measured {
        strength: Estimate::exact(value(at[0])),
        dose: Estimate::exact(of.dose),
        water: Estimate::exact(of.water),
        beverage: Estimate::exact(of.beverage),
        moisture: Estimate::exact(of.moisture),
        water_solids: Estimate::exact(of.water_solids),
        vapour: Estimate::exact(of.vapour),
        held_strength: Estimate::exact(of.held_strength),
        span: Standard::NONE,
        factor: Standard::NONE,
    })
    .unwrap();
    let told: Vec<f64> = budget.terms().map(|term| term.sensitivity).collect();
    for (place, told) in told.iter().take(8).enumerate() {
        let (mut down, mut up) = (at, at);
        let far = 1e-4 * at[place];
        down[place] -= far;
        up[place] += far;
        let slope = (extracted(up) - extracted(down)) / (2.0 * far);
        assert_relative_eq!(*told, slope, max_relative = 1e-6);
    }
    // Masses one per cent larger, but for the vapour.
    let span = |by: f64| {
        let [t, d, w, b, h, s, v, held] = at;
        extracted([t, d * by, w * by, b * by, h, s, v, held])
    };
    let slope = (span(1.0 + 1e-6) - span(1.0 - 1e-6)) / 2e-4;
    assert_relative_eq!(told[8], slope, max_relative = 1e-5);
    // And a factor that is one per cent larger makes the strength so.
    let factor = |by: f64| {
        let mut moved = at;
        moved[0] *= by;
        extracted(moved)
    };
    let slope = (factor(1.0 + 1e-6) - factor(1.0 - 1e-6)) / 2e-4;
    assert_relative_eq!(told[9], slope, max_relative = 1e-5);
}
