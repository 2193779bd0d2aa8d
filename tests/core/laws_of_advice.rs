//! What must always hold of forecasts and advice: suggestions lead where they say, stay within reach, and
//! come in the order of their chances.

use approx::{assert_abs_diff_eq, assert_relative_eq};
use cupwright::Error;
use cupwright::advise::{self, Advice, Change, Cup, Direction, Kept, Means, Suggestion};
use cupwright::decision::{self, Decision};
use cupwright::extraction::{self, Brew, Kinetics};
use cupwright::forecast::{self, Intended, Straying};
use cupwright::quantity::*;
use cupwright::ratio::Chamber;
use cupwright::retention::{self, Losses, Paper};
use cupwright::uncertainty::{Estimate, Rates, Standard};
use cupwright::verdict::{Band, Counting, HOME_BREWER_2018, Window};
use proptest::prelude::*;

use crate::{some, value};

prop_compose! {
    fn straying()(
        dose in some(0.0, 0.5), water in some(0.0, 5.0), extracted in some(0.01, 1.0),
        retention in some(0.0, 0.2), other in some(0.0, 2.0),
    ) -> Straying {
        Straying {
            dose: Standard::known(dose),
            water: Standard::known(water),
            extracted: Standard::known(extracted),
            retention: Standard::known(retention),
            other: Standard::known(other),
        }
    }
}

prop_compose! {
    /// A brew, a yield in reach, and the cup that it gives.
    fn cup()(
        dose in some::<Dose>(8.0, 60.0), ratio in 9.0..20.0_f64, kept in 1.2..2.6_f64,
        extracted in some::<Yield>(12.0, 26.0), u in (some(0.0, 0.05), some(0.0, 0.6)),
        moisture in some(0.0, 6.0), water_solids in some(0.0, 300.0), vapour in some(0.0, 4.0),
        held_strength in prop_oneof![Just(HeldStrength::STEEPED), Just(HeldStrength::FLOWED_THROUGH), some(0.0, 100.0)],
        contact in some(60.0, 400.0), weighing in some(0.0, 0.2),
    ) -> Cup {
        let d = dose.grams();
        let brew = Brew {
            dose, moisture, water_solids, vapour, held_strength,
            water: value(d * ratio),
            beverage: value(d * (ratio - kept) - vapour.grams()),
        };
        let strength = extraction::strength(&brew, extracted).unwrap();
        Cup {
            brew,
            weighing: Standard::known(weighing),
            strength: Estimate::with(strength, Standard::known(u.0)),
            extracted: Estimate::with(extracted, Standard::known(u.1)),
            contact,
        }
    }
}

prop_compose! {
    fn means()(
        rates in proptest::option::of((some(20.0, 30.0), some(0.0, 100.0), some(5.0, 60.0), some(60.0, 400.0))),
        doubts in (some(0.0, 10.0), some(0.0, 0.2), some(0.0, 0.3), some(2.0, 20.0)),
        volume in proptest::option::of(some::<Volume>(150.0, 1500.0)),
        water in some(60.0, 100.0), milk: bool,
    ) -> Means {
        Means {
            rates: rates.map(|(equilibrium, fast_share, fast, slow)| Rates {
                kinetics: Kinetics { equilibrium, fast_share, fast, slow },
                u_fast_share: doubts.0,
                u_fast: doubts.1,
                u_slow: doubts.2,
                share_and_fast: value(0.5),
                share_and_slow: value(0.7),
                fast_and_slow: value(0.6),
                freedom: doubts.3,
            }),
            kept: None,
            chamber: volume.map(|volume| Chamber { volume, displacement: value(0.8) }),
            water,
            milk,
        }
    }
}

fn find(advice: &Advice, change: Change) -> Option<&Suggestion> {
    advice.suggestions().find(|s| s.change == change)
}

fn losses(brew: &Brew) -> Losses {
    let none = Losses {
        retention: value(0.0),
        hold_up: HoldUp::NONE,
        paper: Paper::None,
        drips: Drips::NONE,
        vapour: brew.vapour,
    };
    let retention =
        retention::retention_of_brew(&none, brew.dose, brew.water, brew.beverage).unwrap();
    Losses { retention, ..none }
}

/// How large a change is, as advice counts it.
fn size(s: &Suggestion, brew: &Brew) -> f64 {
    let whole = if s.before > 0.0 { s.before } else { brew.beverage.grams() };
    let with = if s.with_dose > 0.0 { (s.with_dose / brew.dose.grams() - 1.0).abs() } else { 0.0 };
    (s.amount - s.before).abs() / whole + with
}

/// What orders suggestions.
fn score(s: &Suggestion, brew: &Brew) -> f64 {
    let outlook = &s.outlook;
    outlook.inside.percent() + 0.1 * outlook.strength_inside.percent() - 10.0 * size(s, brew)
}

/// The strength of the same coffee brewed with other masses.
fn brewed(cup: &Cup, dose: Dose, water: BrewWater) -> f64 {
    let beverage = retention::beverage(&losses(&cup.brew), dose, water).unwrap();
    let brew = Brew { dose, water, beverage, ..cup.brew };
    extraction::strength(&brew, cup.extracted.value).unwrap().percent()
}

proptest! {
    #[test]
    fn suggestions_lead_where_they_say_and_stay_within_reach(
        cup in cup(), straying in straying(), means in means(), wanted in some::<Strength>(1.15, 1.45), sure in some(60.0, 99.0),
    ) {
        let window = HOME_BREWER_2018.window;
        let Ok(advice) = advise::on(&cup, &straying, &means, wanted, &window, sure) else { return Ok(()) };

        for (change, strength) in [
            (Change::Dose, find(&advice, Change::Dose).map(|s| brewed(&cup, value(s.amount), cup.brew.water))),
            (Change::Water, find(&advice, Change::Water).map(|s| brewed(&cup, cup.brew.dose, value(s.amount)))),
        ] {
            if let Some(strength) = strength {
                assert_relative_eq!(strength, wanted.percent(), max_relative = 1e-9);
                let told = find(&advice, change).unwrap().outlook.strength.value.percent();
                assert_relative_eq!(told, wanted.percent(), max_relative = 1e-9);
            }
        }
        // A time lands on an eighth of the band; with a dose, at the strength wanted too.
        for s in [Change::Time, Change::TimeWithDose].into_iter().filter_map(|change| find(&advice, change)) {
            let eighths = (s.outlook.counted.value.percent() - 18.0) / 0.5;
            assert_abs_diff_eq!(eighths, eighths.round(), epsilon = 1e-6);
            prop_assert!((1.0..=7.0).contains(&eighths.round()));
            if s.change == Change::TimeWithDose {
                assert_relative_eq!(s.outlook.strength.value.percent(), wanted.percent(), max_relative = 1e-9);
            }
        }
        // Something is added only to what is too strong, and then it is as strong as wished.
        for change in [Change::AddWater, Change::AddMilk] {
            let found = find(&advice, change);
            if let Some(s) = found {
                prop_assert!(cup.strength.value > wanted && s.amount > 0.0);
                assert_relative_eq!(s.outlook.strength.value.percent(), wanted.percent(), max_relative = 1e-9);
            }
            prop_assert!(change != Change::AddMilk || means.milk || found.is_none());
        }
        if let Some(chamber) = means.chamber {
            let density = cupwright::water::density(means.water).kilograms_per_cubic_metre();
            for s in advice.suggestions() {
                let (dose, water) = match s.change {
                    Change::Dose => (s.amount, cup.brew.water.grams()),
                    Change::Water => (cup.brew.dose.grams(), s.amount),
                    Change::TimeWithDose => (s.with_dose, cup.brew.water.grams()),
                    _ => continue,
                };
                let fill = 1000.0 * water / density + 0.8 * dose;
                prop_assert!(fill <= chamber.volume.millilitres() * (1.0 + 1e-8), "{fill}");
            }
        }
        // As it is is always there, and the same again where anything is said of the next brew.
        let as_it_is = find(&advice, Change::DrinkAsItIs).unwrap();
        assert_relative_eq!(as_it_is.outlook.strength.value.percent(), cup.strength.value.percent(), max_relative = 1e-14);
        let again = find(&advice, Change::SameAgain);
        prop_assert_eq!(again.is_none(), advice.untold.is_some());
        if let Some(again) = again {
            let seen = again.outlook;
            assert_relative_eq!(seen.strength.value.percent(), cup.strength.value.percent(), max_relative = 1e-9);
            assert_relative_eq!(seen.beverage.value.grams(), cup.brew.beverage.grams(), max_relative = 1e-9);
            prop_assert!(seen.beverage.u >= straying.water.u || straying.water.u.grams() == 0.0);
        }
        // A change is one, and lands as surely as leaving things alone, or all but.
        for s in advice.suggestions() {
            let alone = match s.change {
                Change::DrinkAsItIs | Change::SameAgain => continue,
                Change::AddWater | Change::AddMilk => as_it_is,
                _ => again.unwrap(),
            };
            prop_assert!(size(s, &cup.brew) > 1e-3);
            prop_assert!(s.outlook.inside.percent() >= alone.outlook.inside.percent() - 1.0);
            prop_assert!(s.outlook.inside.percent() >= 1.0 || alone.change == Change::DrinkAsItIs);
        }
        let listed: Vec<_> = advice.suggestions().map(|s| score(s, &cup.brew)).collect();
        prop_assert!(listed.is_sorted_by(|one, next| *one >= *next - 1e-9), "{listed:?}");

        let decided = decision::decide(&as_it_is.outlook.counted, &window.extracted.unwrap(), sure);
        let grind = match decided {
            Decision::Inside => Direction::Leave,
            Decision::Below => Direction::More,
            Decision::Above => Direction::Less,
            _ => Direction::NotYetDecided,
        };
        prop_assert_eq!(advice.grind, grind);
    }

    /// The slopes against differences of the models themselves, in each input.
    #[test]
    fn forecasts_have_the_slopes_of_the_models(cup in cup(), straying in straying(), added in some::<Addition>(0.0, 200.0)) {
        let brew = cup.brew;
        let intended = Intended {
            dose: Estimate::with(brew.dose, straying.dose),
            water: Estimate::with(brew.water, straying.water),
            extracted: Estimate::with(cup.extracted.value, straying.extracted),
            losses: losses(&brew),
            retention: straying.retention,
            other: Standard::NONE,
            moisture: brew.moisture,
            water_solids: brew.water_solids,
            held_strength: brew.held_strength,
            portion: Estimate::exact(brew.beverage),
            added: Estimate::exact(added),
        };
        let drink = |i: &Intended| -> [f64; 2] {
            let beverage = retention::beverage(&i.losses, i.dose.value, i.water.value).unwrap();
            let brew = Brew { dose: i.dose.value, water: i.water.value, beverage, ..brew };
            let of_brew = extraction::strength(&brew, i.extracted.value).unwrap();
            let drink = cupwright::dilution::strength_after_water(i.portion.value, of_brew, i.added.value, i.water_solids).unwrap();
            [drink.percent(), of_brew.percent() * beverage.grams() / i.dose.value.grams()]
        };
        let moved = |by: f64| {
            let near = |x: f64| x * (1.0 + by);
            [
                Intended { dose: Estimate { value: value(near(brew.dose.grams())), ..intended.dose }, ..intended },
                Intended { water: Estimate { value: value(near(brew.water.grams())), ..intended.water }, ..intended },
                Intended { extracted: Estimate { value: value(near(cup.extracted.value.percent())), ..intended.extracted }, ..intended },
                Intended { losses: Losses { retention: value(near(intended.losses.retention.grams_per_gram())), ..intended.losses }, ..intended },
            ].map(|i| drink(&i))
        };
        const STEP: f64 = 1e-5;
        let (up, down) = (moved(STEP), moved(-STEP));
        let at = [brew.dose.grams(), brew.water.grams(), cup.extracted.value.percent(), intended.losses.retention.grams_per_gram()];
        let of_strength = forecast::strength(&intended).unwrap();
        let of_counted = forecast::counted_yield(&intended).unwrap();
        let slopes = [
            of_strength.terms().map(|t| t.sensitivity).collect::<Vec<_>>(),
            of_counted.terms().map(|t| t.sensitivity).collect::<Vec<_>>(),
        ];
        for (result, slopes) in slopes.iter().enumerate() {
            for input in 0..4 {
                let slope = (up[input][result] - down[input][result]) / (2.0 * STEP * at[input]);
                assert_abs_diff_eq!(slopes[input], slope, epsilon = 1e-6 * slope.abs() + 1e-7);
            }
        }
        // What is not uncertain has no doubt, and what is has no less than its linear part.
        let none = Intended {
            dose: Estimate::exact(brew.dose),
            water: Estimate::exact(brew.water),
            extracted: Estimate::exact(cup.extracted.value),
            retention: Standard::NONE,
            ..intended
        };
        prop_assert_eq!(forecast::strength(&none).unwrap().estimate.u, StrengthUncertainty::from_percent(0.0).unwrap());
        let outlook = forecast::outlook(&intended, &HOME_BREWER_2018.window).unwrap();
        assert_relative_eq!(outlook.strength.u.percent(), of_strength.estimate.u.percent(), max_relative = 1e-12);
        assert_relative_eq!(outlook.counted.u.percent(), of_counted.estimate.u.percent(), max_relative = 1e-12);
        prop_assert!(outlook.inside <= outlook.strength_inside);
    }

    /// A window without a yield asks for the strength alone.
    #[test]
    fn without_a_yield_the_strength_decides(cup in cup(), straying in straying(), means in means()) {
        let strength = Band::new(value(1.2), value(1.4)).unwrap();
        let window = Window { strength, extracted: None, counting: Counting::NotStated };
        let sure = value(95.0);
        let Ok(advice) = advise::on(&cup, &straying, &means, value(1.3), &window, sure) else { return Ok(()) };
        prop_assert_eq!(advice.grind, Direction::Leave);
        for s in advice.suggestions() {
            prop_assert_eq!(s.outlook.inside, s.outlook.strength_inside);
        }
        if let Some(time) = find(&advice, Change::Time) {
            assert_relative_eq!(time.outlook.strength.value.percent(), 1.3, max_relative = 1e-8);
        }
    }
}

/// An invented steep of 15 g and 225 g that read so strong, of which everything but the yield is well known.
fn steep(strength: f64, u_yield: f64) -> Cup {
    let brew = Brew {
        dose: value(15.0),
        water: value(225.0),
        beverage: value(195.0),
        moisture: value(2.0),
        water_solids: value(0.0),
        vapour: value(0.0),
        held_strength: HeldStrength::STEEPED,
    };
    let extracted = extraction::extraction_yield(&brew, value(strength)).unwrap();
    Cup {
        brew,
        weighing: Standard::known(value(0.03)),
        strength: Estimate::with(value(strength), Standard::known(value(0.01))),
        extracted: Estimate::with(extracted, Standard::known(value(u_yield))),
        contact: value(240.0),
    }
}

fn steady() -> Straying {
    Straying {
        dose: Standard::known(value(0.05)),
        water: Standard::known(value(1.0)),
        extracted: Standard::known(value(0.3)),
        retention: Standard::known(value(0.05)),
        other: Standard::known(value(0.5)),
    }
}

/// One rate with a level and a time constant, as well known as is said.
fn one_rate(equilibrium: f64, time: f64, u_ln_time: f64) -> Rates {
    Rates {
        kinetics: Kinetics {
            equilibrium: value(equilibrium),
            fast_share: value(100.0),
            fast: value(time),
            slow: value(time),
        },
        u_fast_share: value(0.0),
        u_fast: value(u_ln_time),
        u_slow: value(0.0),
        share_and_fast: value(0.0),
        share_and_slow: value(0.0),
        fast_and_slow: value(0.0),
        freedom: value(4.0),
    }
}

fn means_of(rates: Option<Rates>, kept: Option<Kept>) -> Means {
    Means { rates, kept, chamber: None, water: value(92.0), milk: false }
}

/// A window of the strengths and the counted yields given.
fn window(strength: (f64, f64), extracted: (f64, f64)) -> Window {
    Window {
        strength: Band::new(value(strength.0), value(strength.1)).unwrap(),
        extracted: Some(Band::new(value(extracted.0), value(extracted.1)).unwrap()),
        counting: Counting::FlowThrough,
    }
}

/// A window whose source does not say how it counts judges the strength alone, and the advice says so.
#[test]
fn a_yield_that_nobody_knows_how_to_count_is_not_judged() {
    let cup = steep(1.30, 0.2);
    let stated = window((1.15, 1.45), (10.0, 12.0));
    let advice = advised(&cup, &means_of(None, None), 1.3, &stated).unwrap();
    assert_eq!(advice.grind, Direction::Less);
    assert!(advice.suggestions().all(|s| s.outlook.inside < s.outlook.strength_inside));

    let silent = Window { counting: Counting::NotStated, ..stated };
    let advice = advised(&cup, &means_of(None, None), 1.3, &silent).unwrap();
    assert_eq!(advice.grind, Direction::CountingNotStated);
    assert!(advice.suggestions().all(|s| s.outlook.inside == s.outlook.strength_inside));
}

/// One steep, two counts: between them lie the two and a half points that its grounds keep dissolved.
#[test]
fn a_yield_is_judged_as_its_window_counts_it() {
    let cup = steep(1.40, 0.2);
    let chart =
        extraction::flow_through_yield(cup.strength.value, cup.brew.beverage, cup.brew.dose)
            .unwrap();
    let own = cup.extracted.value;
    assert!(own.percent() - chart.percent() > 2.0, "{own} {chart}");
    let around = |centre: Yield| (centre.percent() - 1.0, centre.percent() + 1.0);
    for (counting, of, other) in
        [(Counting::FlowThrough, chart, own), (Counting::MassBalance, own, chart)]
    {
        let judge = |centre| {
            let window = Window { counting, ..window((1.15, 1.45), around(centre)) };
            advised(&cup, &means_of(None, None), 1.3, &window).unwrap()
        };
        assert_eq!(judge(of).grind, Direction::Leave);
        let elsewhere = if other > of { Direction::More } else { Direction::Less };
        assert_eq!(judge(other).grind, elsewhere);
        let next = *find(&judge(of), Change::SameAgain).unwrap();
        assert_relative_eq!(
            next.outlook.counted.value.percent(),
            of.percent(),
            max_relative = 1e-9
        );
    }
}

/// What is tried in another time reaches the yields that the window means.
#[test]
fn a_time_aims_at_yields_as_the_window_counts_them() {
    let cup = steep(1.20, 0.2);
    let rates = one_rate(28.0, 120.0, 0.05);
    let own = cup.extracted.value.percent();
    let wanted =
        Window { counting: Counting::MassBalance, ..window((1.10, 1.50), (own + 1.5, own + 2.5)) };
    let advice = advised(&cup, &means_of(Some(rates), None), 1.3, &wanted).unwrap();
    let time = find(&advice, Change::Time).unwrap_or_else(|| panic!("{advice:?}"));
    let counted = time.outlook.counted.value.percent();
    assert!(counted > own + 1.5 && counted < own + 2.5, "{counted}");
}

fn advised(cup: &Cup, means: &Means, wanted: f64, window: &Window) -> Result<Advice, Error> {
    advise::on(cup, &steady(), means, value(wanted), window, value(95.0))
}

/// A brew that is as wished is not to be changed by what rounding makes of it.
#[test]
fn what_is_as_wished_is_left_alone() {
    for wanted in 115..=145 {
        let cup = steep(f64::from(wanted) / 100.0, 0.2);
        let wanted = cup.strength.value.percent();
        let kept = Kept { retention: losses(&cup.brew).retention, hold_up: HoldUp::NONE };
        for means in [None, Some(kept)].map(|kept| means_of(None, kept)) {
            let advice = advised(&cup, &means, wanted, &HOME_BREWER_2018.window).unwrap();
            let changes: Vec<_> = advice.suggestions().map(|s| s.change).collect();
            assert!(
                changes.iter().all(|c| matches!(c, Change::DrinkAsItIs | Change::SameAgain)),
                "{changes:?}"
            );
        }
    }
}

/// A much longer steep that lands a little more surely comes after a little more coffee.
#[test]
fn a_small_change_comes_before_a_large_one() {
    let cup = steep(1.24, 0.2);
    let window = window((1.25, 1.45), (14.6, 21.0));
    let means = means_of(Some(one_rate(21.0, 84.0, 0.02)), None);
    let advice = advised(&cup, &means, 1.32, &window).unwrap();
    let order: Vec<_> = advice.suggestions().map(|s| s.change).collect();
    let place = |change| order.iter().position(|of| *of == change).unwrap();
    let chance = |change| find(&advice, change).unwrap().outlook.inside.percent();
    assert!(chance(Change::Time) > chance(Change::Dose), "{advice:?}");
    assert!(place(Change::Dose) < place(Change::Time), "{advice:#?}");
}

/// What cannot bring the yield into its band by strength alone is not suggested; a time with a dose is.
#[test]
fn two_changes_where_one_cannot_land() {
    // Strong and far too little extracted.
    let cup = steep(1.30, 0.2);
    let window = window((1.2, 1.4), (19.0, 22.0));
    let told = |rates| advised(&cup, &means_of(rates, None), 1.30, &window).unwrap();
    let without = told(None);
    assert!(find(&without, Change::Dose).is_none() && find(&without, Change::Water).is_none());
    assert_eq!(without.grind, Direction::More);
    let with = told(Some(one_rate(22.0, 150.0, 0.03)));
    let first = with.suggestions().find(|s| s.change != Change::DrinkAsItIs).unwrap();
    assert_eq!(first.change, Change::TimeWithDose);
    assert!(first.outlook.inside.percent() > 85.0 && first.with_dose < 15.0, "{first:?}");
}

/// Where the coffee levels off below the middle of the band, a time aims at what it reaches.
#[test]
fn a_time_aims_at_what_can_be_reached() {
    let cup = steep(1.30, 0.1);
    let counted =
        extraction::flow_through_yield(cup.strength.value, cup.brew.beverage, cup.brew.dose)
            .unwrap();
    let c = counted.percent();
    // Its level is a twentieth above this cup's yield.
    let reached = -(-240.0_f64 / 100.0).exp_m1();
    let level = cup.extracted.value.percent() / reached;
    let window = window((1.2, 1.5), (c + 0.1, c + 3.5));
    let rates = one_rate(level, 100.0, 0.05);
    let advice = advised(&cup, &means_of(Some(rates), None), 1.35, &window).unwrap();
    let time = find(&advice, Change::Time).unwrap();
    let told = time.outlook.counted.value.percent();
    assert!(told > c && told < c + 1.8 && time.outlook.inside.percent() > 50.0, "{time:?}");
}

/// The doubt about the rates goes into what a time is expected to give.
#[test]
fn rates_less_well_known_promise_less() {
    let cup = steep(1.15, 0.1);
    let window = window((1.2, 1.4), (16.0, 22.0));
    let u = |u_ln_time| {
        let rates = one_rate(22.0, 150.0, u_ln_time);
        let advice = advised(&cup, &means_of(Some(rates), None), 1.3, &window).unwrap();
        let time = *find(&advice, Change::Time).unwrap();
        (time.amount, time.outlook.strength.u.percent())
    };
    let ((one, known), (other, unknown)) = (u(0.0), u(0.1));
    assert_eq!(one, other);
    // By hand: ∂ ln E/∂ ln τ = −x e^−x/(1 − e^−x), x = t/τ.
    let slope = |t: f64| -(t / 150.0) * (-t / 150.0).exp() / -(-t / 150.0).exp_m1();
    let by_rates = 0.1 * (slope(one) - slope(240.0)).abs();
    assert_relative_eq!(
        (unknown.powi(2) - known.powi(2)).sqrt(),
        1.3 * by_rates,
        max_relative = 0.2
    );
}

/// Near an edge the grind is left until the yield is known.
#[test]
fn the_grind_waits_for_a_decision() {
    let cup = steep(1.38, 0.4);
    let c = extraction::flow_through_yield(cup.strength.value, cup.brew.beverage, cup.brew.dose)
        .unwrap()
        .percent();
    let grind = |lowest| {
        let window = window((1.2, 1.45), (lowest, lowest + 4.0));
        advised(&cup, &means_of(None, None), 1.3, &window).unwrap().grind
    };
    assert_eq!(grind(c + 0.05), Direction::NotYetDecided);
    assert_eq!(grind(c + 1.0), Direction::More);
    assert_eq!(grind(c - 2.0), Direction::Leave);
    assert_eq!(grind(c - 5.0), Direction::Less);
}

/// More in the cup than was poured says nothing of the next brew, and what to do now is told all the same.
#[test]
fn this_cup_is_advised_on_whatever_the_next() {
    let mut cup = steep(1.40, 0.2);
    cup.brew.beverage = value(230.0);
    let window = HOME_BREWER_2018.window;
    let advice = advised(&cup, &means_of(None, None), 1.25, &window).unwrap();
    assert!(matches!(advice.untold, Some(Error::Impossible { .. })), "{advice:?}");
    assert!(
        find(&advice, Change::AddWater).is_some() && find(&advice, Change::SameAgain).is_none()
    );
    // What the brewer keeps is known: then the next brew is as it says.
    let retention = losses(&steep(1.40, 0.2).brew).retention;
    let known = Kept { retention, hold_up: HoldUp::NONE };
    let advice = advised(&cup, &means_of(None, Some(known)), 1.25, &window).unwrap();
    let again = find(&advice, Change::SameAgain).unwrap();
    assert_relative_eq!(again.outlook.beverage.value.grams(), 195.0, max_relative = 1e-12);
}

#[test]
fn a_wish_outside_the_window_is_refused() {
    let wanted = |percent| {
        advised(&steep(1.3, 0.2), &means_of(None, None), percent, &HOME_BREWER_2018.window)
    };
    for outside in [1.149, 1.451] {
        assert!(matches!(
            wanted(outside),
            Err(Error::OutOfRange { lowest: 1.15, highest: 1.45, .. })
        ));
    }
    assert!(wanted(1.15).is_ok() && wanted(1.45).is_ok());
}

/// Water that changes less than a thousandth of the cup is not worth adding.
#[test]
fn a_thousandth_of_a_cup_is_not_added() {
    let is_suggested = |strength: f64| {
        let means = Means { milk: true, ..means_of(None, None) };
        let advice =
            advised(&steep(strength, 0.2), &means, 1.30, &HOME_BREWER_2018.window).unwrap();
        [Change::AddWater, Change::AddMilk].map(|change| find(&advice, change).is_some())
    };
    assert_eq!((is_suggested(1.3012), is_suggested(1.3014)), ([false; 2], [true; 2]));
}

/// Nor is it for the next brew.
#[test]
fn a_thousandth_is_no_other_brew() {
    let wide = window((1.15, 1.45), (14.0, 22.0));
    let changes = |wanted: f64| {
        let kept =
            Kept { retention: losses(&steep(1.30, 0.2).brew).retention, hold_up: HoldUp::NONE };
        let means = means_of(None, Some(kept));
        let advice = advised(&steep(1.30, 0.2), &means, wanted, &wide).unwrap();
        [Change::Dose, Change::Water].map(|change| find(&advice, change).is_some())
    };
    assert_eq!((changes(1.3005), changes(1.303)), ([false; 2], [true; 2]));
}

/// By the whole balance a yield and a strength go together as far as both are uncertain: not at all where one is not.
#[test]
fn what_is_sure_goes_together_with_nothing() {
    let window = Window { counting: Counting::MassBalance, ..window((1.15, 1.45), (18.0, 22.0)) };
    let correlation = |u_strength: f64, u_yield: f64| {
        let mut cup = steep(1.30, u_yield);
        cup.strength.u = value(u_strength);
        let advice = advised(&cup, &means_of(None, None), 1.30, &window).unwrap();
        find(&advice, Change::DrinkAsItIs).unwrap().outlook.correlation.ratio()
    };
    assert_eq!(
        (correlation(0.01, 0.0), correlation(0.0, 0.2), correlation(0.0, 0.0)),
        (0.0, 0.0, 0.0)
    );
    let both = correlation(0.01, 0.2);
    assert!(both > 0.5 && both < 1.0, "{both}");
    assert_eq!(correlation(0.02, 0.2), (2.0 * both).min(1.0), "the reading is all that they share");
}
