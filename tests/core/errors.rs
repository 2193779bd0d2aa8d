//! Every refusal, with its facts, as a caller meets it.

use cupwright::calibrate::{self, Drained, Dried, Repeat, Thermometer, Timed};
use cupwright::error::{Error, Limit, Untold};
use cupwright::extraction::{self, Brew, Credibility};
use cupwright::heat::{self, Cover, Surroundings};
use cupwright::live::{Scale, Setup};
use cupwright::quantity::*;
use cupwright::verdict::{self, Band, Side};
use cupwright::{dilution, reading, retention};

use crate::value;

#[test]
fn every_quantity_refuses_what_is_outside_and_names_itself() {
    fn check<M: Measure>() {
        let quantity = M::QUANTITY;
        let (low, high) = (quantity.lowest(), quantity.highest());
        assert_eq!(M::new(low).unwrap().value(), low);
        assert_eq!(M::new(high).unwrap().value(), high);
        for bad in [low.next_down(), high.next_up(), f64::INFINITY, f64::NEG_INFINITY, f64::NAN] {
            let error = M::new(bad).unwrap_err();
            let words = error.to_string();
            assert!(words.contains(quantity.name()), "{words}");
            assert!(words.contains(&bad.to_string()), "{words}");
            assert!(
                words.contains(&low.to_string()) && words.contains(&high.to_string()),
                "{words}"
            );
        }
    }
    check::<Dose>();
    check::<BrewWater>();
    check::<Beverage>();
    check::<Strength>();
    check::<Yield>();
    check::<Temperature>();
    check::<RoomTemperature>();
    check::<Pressure>();
    check::<CoolingRate>();
    check::<RefractiveIndex>();
}

#[test]
fn water_cannot_strengthen() {
    let error = dilution::water_to_reach(value(170.0), value(1.2), value(1.3), WaterSolids::NONE);
    assert_eq!(
        error,
        Err(Error::Infeasible {
            wish: Quantity::Strength,
            value: 1.3,
            nearest: 1.2,
            limit: Limit::AddingWaterWeakens
        })
    );
}

#[test]
fn hard_water_cannot_weaken_below_itself() {
    let hard = WaterSolids::from_milligrams_per_litre(500.0).unwrap();
    let error = dilution::water_to_reach(value(170.0), value(1.2), value(0.04), hard).unwrap_err();
    assert!(
        matches!(error, Error::Infeasible { limit: Limit::NoWaterIsEnough, nearest, .. }
            if nearest > 0.0501 && nearest < 0.052),
        "{error}"
    );
}

fn long_cup() -> Brew {
    Brew {
        dose: value(15.0),
        water: value(200.0),
        beverage: value(173.0),
        moisture: value(0.0),
        water_solids: WaterSolids::NONE,
        vapour: Vapour::NONE,
        held_strength: HeldStrength::STEEPED,
    }
}

#[test]
fn more_beverage_than_water_is_impossible() {
    let brew = Brew { beverage: value(210.0), ..long_cup() };
    for held_strength in [HeldStrength::STEEPED, HeldStrength::FLOWED_THROUGH] {
        let brew = Brew { held_strength, ..brew };
        let error = extraction::extraction_yield(&brew, value(1.44)).unwrap_err();
        let Error::Impossible { quantity: Quantity::BrewWater, lowest, .. } = error else {
            panic!("{error}");
        };
        // The water named as enough is enough, and no more than that.
        let enough = Brew { water: value(lowest * 1.0001), ..brew };
        assert!(extraction::extraction_yield(&enough, value(1.44)).is_ok());
        let short = Brew { water: value(lowest * 0.98), ..brew };
        assert!(extraction::extraction_yield(&short, value(1.44)).is_err());
    }
    let error = retention::apparent_retention(value(15.0), value(200.0), value(201.0)).unwrap_err();
    assert!(matches!(error, Error::Impossible { lowest: 201.0, .. }), "{error}");
    // So weak a beverage would need more water than there was.
    let through = Brew { held_strength: HeldStrength::FLOWED_THROUGH, ..long_cup() };
    let error = extraction::beverage(&through, value(0.5), value(20.0)).unwrap_err();
    assert!(matches!(error, Error::Impossible { quantity: Quantity::BrewWater, .. }), "{error}");
}

#[test]
fn a_beverage_weaker_than_its_water_is_impossible() {
    let brew = Brew { water_solids: value(300.0), ..long_cup() };
    let error = extraction::extraction_yield(&brew, value(0.02)).unwrap_err();
    assert!(
        matches!(
            error,
            Error::Impossible { quantity: Quantity::Strength, beside: Quantity::WaterSolids, .. }
        ),
        "{error}"
    );
    assert_eq!(
        error.to_string(),
        "strength: 0.02 % cannot be with the water solids given; 0.0301 to 50 % can"
    );
}

#[test]
fn a_clock_that_goes_back_is_told_so() {
    let mut scale = Scale::new(Setup::COMMON);
    let mut take = |seconds| scale.take(value(seconds), value(0.0));
    take(13.5).unwrap();
    assert_eq!(
        take(13.0).unwrap_err().to_string(),
        "clock: 13 s does not come after the one before, 13.5 s"
    );
}

/// The trade's two cups (common practice, no source): the long one is ordinary, the short one is to
/// be questioned.
#[test]
fn the_short_cup_is_questioned_and_the_long_one_is_not() {
    let long = extraction::plausibility(&long_cup(), value(1.44)).unwrap();
    assert_eq!(format!("{}", long.extracted), "19.48 %");
    assert_eq!(long.credibility, Credibility::Ordinary);
    assert_eq!(long.doubts, None);

    let brew = Brew { water: value(60.0), beverage: value(33.0), ..long_cup() };
    let short = extraction::plausibility(&brew, value(6.49)).unwrap();
    assert_eq!(format!("{}", short.extracted), "27.76 %");
    assert_eq!(short.credibility, Credibility::NearLimit);
    let doubts = short.doubts.unwrap();
    // 26 % = (60/15) T/(1 − T), (W/15) 0.0649/0.9351, (60/D) 0.0649/0.9351 by hand.
    let would: Vec<_> = doubts.iter().map(|d| d.would_have_to_be.unwrap()).collect();
    assert!((would[0] - 100.0 * 0.26 / 4.26).abs() < 1e-9, "{would:?}");
    assert!((would[1] - 15.0 * 0.26 * 0.9351 / 0.0649).abs() < 1e-9, "{would:?}");
    assert!((would[2] - 60.0 * 0.0649 / 0.9351 / 0.26).abs() < 1e-9, "{would:?}");
    assert!(would[3] < 100.0, "{would:?}");

    // The window's edge is near for the long cup; the short one lies inside its own window.
    let window = verdict::HOME_BREWER_2018.window;
    let place = verdict::stand(&window, value(1.44), long.extracted);
    assert!(place.is_inside());
    assert!((place.strength.below_highest - 0.01).abs() < 1e-9);
    let short_window = Band::<Strength>::new(value(5.0), value(7.0)).unwrap();
    assert_eq!(short_window.centre(), 6.0);
    assert_eq!(short_window.place(value(6.49)).side, Side::Inside);
}

#[test]
fn the_levels_of_credibility() {
    let judge = |percent| {
        let strength = extraction::strength(&long_cup(), value(percent)).unwrap();
        extraction::plausibility(&long_cup(), strength).unwrap().credibility
    };
    assert_eq!(judge(25.99), Credibility::Ordinary);
    assert_eq!(judge(26.01), Credibility::NearLimit);
    assert_eq!(judge(27.99), Credibility::NearLimit);
    assert_eq!(judge(28.01), Credibility::AtLimit);
    assert_eq!(judge(31.99), Credibility::AtLimit);
    assert_eq!(judge(32.01), Credibility::BeyondLimit);
}

#[test]
fn a_room_cools_only_so_far() {
    let room = Surroundings { room: value(21.0), humidity: value(50.0), cover: Cover::Lidded };
    let rate = value(0.01);
    let error = heat::time_to_cool(value(80.0), value(20.0), rate, &room).unwrap_err();
    assert!(
        matches!(error, Error::Infeasible { limit: Limit::Surroundings, nearest, .. }
            if (nearest - 21.1).abs() < 1e-5),
        "{error}"
    );
    let error = heat::time_to_cool(value(80.0), value(81.0), rate, &room).unwrap_err();
    assert!(
        matches!(error, Error::Infeasible { limit: Limit::HeatLeft, nearest: 80.0, .. }),
        "{error}"
    );
    let error = heat::temperature_after(value(15.0), value(60.0), rate, &room).unwrap_err();
    assert!(
        matches!(error, Error::Impossible { beside: Quantity::RoomTemperature, .. }),
        "{error}"
    );
}

#[test]
fn boiling_is_the_limit() {
    let error = heat::reachable(value(95.0), value(92.8)).unwrap_err();
    assert!(matches!(error, Error::Infeasible { limit: Limit::BoilingPoint, nearest, .. }
            if nearest < 92.8 && nearest > 92.799_999));
    assert_eq!(heat::reachable(value(92.8), value(92.8)), Ok(value(92.8)));
}

#[test]
fn windows_have_their_edges_in_order() {
    let error = Band::<Strength>::new(value(1.45), value(1.15)).unwrap_err();
    assert_eq!(error.to_string(), "strength: a band from 1.45 to 1.15 % is empty");
    assert!(Band::<Strength>::new(value(1.45), value(1.45)).is_err());
}

#[test]
fn one_reading_has_no_critical_range() {
    let error = reading::critical_range(value(1.0), value(0.01)).unwrap_err();
    assert!(matches!(error, Error::OutOfRange { quantity: Quantity::ReadingCount, .. }));
}

#[test]
fn swapped_thermometer_readings_are_impossible() {
    let room = Surroundings { room: value(21.0), humidity: value(50.0), cover: Cover::Open };
    let error = heat::cooling_rate(value(60.0), value(66.0), value(600.0), &room).unwrap_err();
    let Error::Impossible { value, lowest, highest, .. } = error else { panic!("{error}") };
    assert_eq!([value, highest], [66.0, 60.0]);
    let lowest = (lowest * 1e4).round() / 1e4;
    let words = format!("66 °C cannot be with the temperature given; {lowest} to 60 °C can");
    assert_eq!(error.to_string(), format!("temperature: {words}"));
}

#[test]
fn a_preheated_vessel_is_found_though_the_slurry_is_colder() {
    let grounds = heat::Body { heat_capacity: value(32.0), temperature: value(20.0) };
    let vessel = heat::Body { heat_capacity: value(100.0), temperature: value(85.0) };
    let settled = heat::settle(value(200.0), value(86.0), &[grounds, vessel]).unwrap();
    assert!(settled.celsius() < 85.0);
    let found =
        heat::vessel_heat_capacity(value(200.0), value(86.0), settled, value(85.0), &[grounds]);
    assert!((found.unwrap().joules_per_kelvin() - 100.0).abs() < 1e-6);
}

#[test]
fn cups_are_not_lost_to_rounding() {
    use cupwright::ratio;
    for tenths in 1500..2600 {
        let cup = f64::from(tenths) / 10.0;
        let three = f64::from(3 * tenths) / 10.0;
        assert_eq!(ratio::whole_cups(value(three), value(cup)).unwrap().count(), 3.0, "{cup}");
    }
}

// ---- What measurements cannot tell --------------------------------------------------------------

fn drained(dose: f64) -> Drained {
    Drained {
        dose: value(dose),
        water: value(16.0 * dose),
        beverage: value(14.0 * dose - 3.0),
        vapour: Vapour::NONE,
    }
}

fn timed(of: &[(f64, f64)]) -> Vec<Timed> {
    of.iter().map(|(t, e)| Timed { contact: value(*t), extracted: value(*e) }).collect()
}

#[test]
fn brews_of_one_dose_tell_no_hold_up_but_a_retention() {
    let brews = [15.0; 5].map(drained);
    let error = calibrate::retention_line(&brews).unwrap_err();
    assert_eq!(
        error,
        Error::CannotTell {
            quantity: Quantity::HoldUp,
            why: Untold::OneDose,
            found: 0.0,
            needed: 7.5
        }
    );
    assert_eq!(
        error.to_string(),
        "chamber hold-up: these measurements cannot tell it, one dose size shows only what is kept \
         in all (gap between doses in g: 0, needed for a start: 7.5)"
    );
    let all = calibrate::retention(&brews).unwrap();
    assert_eq!(all.estimate.value.grams_per_gram(), 2.2);
}

#[test]
fn too_few_or_too_many_measurements_are_counted() {
    let brews = [12.0, 15.0].map(drained);
    let error = calibrate::retention_line(&brews);
    let (quantity, why) = (Quantity::ApparentRetention, Untold::TooFew);
    assert_eq!(error, Err(Error::CannotTell { quantity, why, found: 2.0, needed: 3.0 }));

    let error = calibrate::two_rates(&timed(&[(10.0, 5.0); 6])).unwrap_err();
    let (quantity, why) = (Quantity::TimeConstant, Untold::TooFew);
    assert_eq!(error, Error::CannotTell { quantity, why, found: 6.0, needed: 7.0 });

    let read = |cup| Repeat { cup: value(cup), strength: value(1.4) };
    let error = calibrate::repeatability(&[read(1.0), read(2.0), read(3.0)]).unwrap_err();
    let (quantity, why) = (Quantity::Repeatability, Untold::TooFew);
    assert_eq!(error, Error::CannotTell { quantity, why, found: 3.0, needed: 4.0 });

    let error = calibrate::retention(&[drained(15.0); 31]).unwrap_err();
    assert_eq!(error.to_string(), "measurements: 31 is outside 0 to 30");
}

#[test]
fn a_yield_that_still_rises_tells_no_equilibrium() {
    // A straight line.
    let error = calibrate::one_rate(&timed(&[(10.0, 2.0), (20.0, 4.0), (30.0, 6.0)]));
    let (quantity, why) = (Quantity::Yield, Untold::StillRising);
    assert_eq!(error, Err(Error::CannotTell { quantity, why, found: 30.0, needed: 60.0 }));
}

#[test]
fn yields_that_have_levelled_off_tell_no_rate() {
    let yields = timed(&[(100.0, 20.1), (200.0, 19.9), (300.0, 20.2), (400.0, 19.8)]);
    let error = calibrate::one_rate(&yields).unwrap_err();
    let (quantity, why) = (Quantity::TimeConstant, Untold::LevelledOff);
    assert_eq!(error, Error::CannotTell { quantity, why, found: 0.0, needed: 1.0 });
}

#[test]
fn one_rate_is_not_told_as_two() {
    // E∞ 20 %, τ 50 s, with some scatter.
    let off = [0.1, -0.1, 0.05, -0.1, 0.1, -0.05, 0.1, -0.1];
    let times = [10.0_f64, 20.0, 40.0, 60.0, 90.0, 120.0, 200.0, 400.0];
    let yields: Vec<_> = times
        .iter()
        .zip(off)
        .map(|(t, off)| (*t, 20.0 * (1.0 - (-t / 50.0).exp()) + off))
        .collect();
    let error = calibrate::two_rates(&timed(&yields)).unwrap_err();
    let Error::CannotTell { quantity: Quantity::TimeConstant, why, found, needed } = error else {
        panic!("{error}")
    };
    assert_eq!(why, Untold::OneRate);
    // The 0.95 quantile of F with 2 and 4 degrees of freedom (scipy).
    assert!((needed - 6.944_271_91).abs() < 1e-7 && found < needed, "{error}");
}

#[test]
fn what_spans_nothing_tells_nothing() {
    let dried = Dried { brix: value(0.0), strength: value(1.2) };
    let error = calibrate::refractive_factor(&[dried; 3]).unwrap_err();
    let (quantity, why) = (Quantity::RefractiveFactor, Untold::NoSpan);
    assert_eq!(error, Error::CannotTell { quantity, why, found: 0.0, needed: 1.0 });

    let untold = |contact, extracted| {
        let yields = [Timed { contact: value(contact), extracted: value(extracted) }; 4];
        let error = calibrate::one_rate(&yields).unwrap_err();
        let Error::CannotTell { quantity, why: Untold::NoSpan, found: 0.0, needed } = error else {
            panic!("{error}");
        };
        (quantity, needed > 0.0)
    };
    assert_eq!(untold(0.0, 20.0), (Quantity::TimeConstant, true));
    assert_eq!(untold(60.0, 0.0), (Quantity::Yield, true));

    let room = Surroundings { room: value(20.0), humidity: value(50.0), cover: Cover::Open };
    let reading = Thermometer { time: value(60.0), temperature: value(70.0) };
    let error = calibrate::cooling(&[reading; 3], &room).unwrap_err();
    let (quantity, why) = (Quantity::CoolingRate, Untold::NoSpan);
    assert_eq!(error, Error::CannotTell { quantity, why, found: 0.0, needed: 600.0 });

    let later = Thermometer { time: value(660.0), temperature: value(75.0) };
    let error = calibrate::cooling(&[reading, reading, later], &room).unwrap_err();
    let Error::CannotTell { quantity: Quantity::CoolingRate, why, found, needed: 0.005 } = error
    else {
        panic!("{error}")
    };
    assert!(why == Untold::NotCooling && found < 0.0, "{error}");
}

/// Where every law begins nothing is measured: with a sample of water and one more no factor is told, and
/// a yield after no time changes nothing.
#[test]
fn what_lies_at_zero_tells_nothing() {
    let (water, dried) = (
        Dried { brix: value(0.0), strength: value(0.0) },
        Dried { brix: value(1.5), strength: value(1.3) },
    );
    let error = calibrate::refractive_factor(&[water, dried, water]).unwrap_err();
    let (quantity, why) = (Quantity::RefractiveFactor, Untold::TooFew);
    assert_eq!(error, Error::CannotTell { quantity, why, found: 1.0, needed: 2.0 });

    let error =
        calibrate::one_rate(&timed(&[(0.0, 0.0), (60.0, 13.9), (240.0, 20.0)])).unwrap_err();
    let (quantity, why) = (Quantity::TimeConstant, Untold::TooFew);
    assert_eq!(error, Error::CannotTell { quantity, why, found: 2.0, needed: 3.0 });

    let steeps = [(30.0, 9.1), (60.0, 13.9), (120.0, 18.6), (300.0, 20.7)];
    let plain = calibrate::one_rate(&timed(&steeps)).unwrap();
    for at_start in [0.0, 0.5] {
        let with_start = [&[(0.0, at_start)], &steeps[..]].concat();
        let more = calibrate::one_rate(&timed(&with_start)).unwrap();
        assert_eq!(more.equilibrium, plain.equilibrium);
        assert_eq!(more.time, plain.time);
        assert_eq!(more.quality.measurements, plain.quality.measurements);
        assert_eq!((more.quality.residuals[0], more.quality.leverages[0]), (at_start, 0.0));
        assert_eq!(more.quality.residuals[1..], plain.quality.residuals[..29]);
    }
}

#[test]
fn doses_too_near_each_other_tell_no_hold_up() {
    // A scatter of half a gram over doses a tenth of a gram apart.
    let brews = [(15.0, 33.5), (15.1, 32.9), (15.2, 32.5)].map(|(dose, kept)| Drained {
        dose: value(dose),
        water: value(240.0),
        beverage: value(240.0 - kept),
        vapour: value(0.0),
    });
    let error = calibrate::retention_line(&brews).unwrap_err();
    let Error::CannotTell { quantity: Quantity::HoldUp, why: Untold::OneDose, found, needed } =
        error
    else {
        panic!("{error}")
    };
    assert!((found - 0.2).abs() < 1e-12 && needed == 7.5, "{error}");
}

/// Scatter makes the line only where doses lie near each other, and only where there is scatter.
#[test]
fn doses_half_as_large_again_or_without_scatter_tell_a_hold_up() {
    let line = |points: &[(f64, f64)]| {
        let brew = |(dose, kept): &(f64, f64)| Drained {
            dose: value(*dose),
            water: value(512.0),
            beverage: value(512.0 - kept),
            vapour: value(0.0),
        };
        calibrate::retention_line(&points.iter().map(brew).collect::<Vec<_>>())
    };
    let is_refused = |points: &[(f64, f64)]| {
        matches!(line(points), Err(Error::CannotTell { why: Untold::OneDose, .. }))
    };
    // r of 2 g/g, uncertain by 4.6 g/g: u² = Σe²/0.02, Σe² = 0.43 g².
    assert!(is_refused(&[(15.0, 30.0), (15.1, 31.0), (15.2, 30.4)]));
    // The same doses where r is uncertain by nothing.
    let told = line(&[(16.0, 34.0), (16.25, 34.5), (16.5, 35.0)]).unwrap();
    assert_eq!((told.retention.value.grams_per_gram(), told.hold_up.value.grams()), (2.0, 2.0));
    assert_eq!((told.retention.u.grams_per_gram(), told.covariance.to_bits()), (0.0, 0));
    // As uncertain, with doses as far apart as is asked for: 10 g and half of that more.
    let told = line(&[(10.0, 20.0), (15.0, 20.0), (15.0, 40.0)]).unwrap();
    assert!(told.retention.u.grams_per_gram() > 3.0);
    assert!(is_refused(&[(10.0, 20.0), (14.9, 20.0), (14.9, 40.0)]));
    // Doses far apart whose line is none of a brewer's.
    let error = line(&[(10.0, 300.0), (20.0, 200.0), (30.0, 100.0)]).unwrap_err();
    assert!(matches!(error, Error::ResultOutOfRange { .. }), "{error}");
}

/// A plateau and a rise without end: two rates describe it, of which the slower is not told. Nor is one that is
/// uncertain by a factor of e, nor a faster one that was over before the first sample.
#[test]
fn a_second_rate_beyond_the_yields_is_not_told() {
    let bumps = [1.0, -1.0, 0.5, -0.75, 1.0, -0.5, 0.75, -1.0, 0.5];
    let told = |times: [f64; 9], scatter: f64, law: &dyn Fn(f64) -> f64| {
        let point = |(t, bump): (&f64, f64)| (*t, law(*t) + scatter * bump);
        let points: Vec<_> = times.iter().zip(bumps).map(point).collect();
        calibrate::two_rates(&timed(&points))
    };
    let done = |turns: f64| 1.0 - (-turns).exp();
    let times = [2.0, 4.0, 8.0, 15.0, 30.0, 60.0, 100.0, 150.0, 200.0];
    let (quantity, why) = (Quantity::Yield, Untold::StillRising);
    let still_rising = Error::CannotTell { quantity, why, found: 200.0, needed: 400.0 };
    let rising = told(times, 0.02, &|t| 10.0 * done(t / 5.0) + 0.02 * t).unwrap_err();
    assert_eq!(rising, still_rising);
    // By other means u(ln τ2) is 0.864 and, with a little more scatter, 1.257.
    let slow = |t: f64| 10.0 * done(t / 5.0) + 8.0 * done(t / 300.0);
    let nearly = told(times, 0.15, &slow).unwrap();
    assert!((nearly.slow.u.ratio() - 0.864).abs() < 0.002, "{:?}", nearly.slow);
    assert_eq!(told(times, 0.2, &slow).unwrap_err(), still_rising);
    let times = [20.0, 30.0, 45.0, 70.0, 100.0, 150.0, 220.0, 330.0, 500.0];
    let risen = told(times, 0.02, &|t| 10.0 + 10.0 * done(t / 150.0)).unwrap_err();
    let (quantity, why) = (Quantity::TimeConstant, Untold::LevelledOff);
    assert_eq!(risen, Error::CannotTell { quantity, why, found: 0.0, needed: 1.0 });
}

/// Nearly straight with scatter: a least-squares curve there is, but with a little more of it its time constant
/// could be any. By other means u(ln τ) is 0.965 and 1.041.
#[test]
fn a_time_constant_uncertain_by_a_factor_of_e_is_not_told() {
    let yields = |scatter: f64| {
        let bumps = [1.0, -1.0, 1.0, -1.0, 1.0, -1.0];
        let law = |t: f64| 20.0 * (1.0 - (-t / 120.0).exp());
        let point = |(at, bump): (usize, f64)| {
            let t = 10.0 * (at as f64 + 1.0);
            (t, law(t) + scatter * bump)
        };
        timed(&bumps.into_iter().enumerate().map(point).collect::<Vec<_>>())
    };
    let told = calibrate::one_rate(&yields(0.8)).unwrap();
    assert!((told.time.u.ratio() - 0.965).abs() < 0.001, "{:?}", told.time.u);
    let error = calibrate::one_rate(&yields(0.9)).unwrap_err();
    let (quantity, why) = (Quantity::Yield, Untold::StillRising);
    assert_eq!(error, Error::CannotTell { quantity, why, found: 60.0, needed: 120.0 });
}

/// Readings that rise, but for one near the end of cooling, which a logarithm makes much of: the rate that fits
/// best is below zero, and is told.
#[test]
fn readings_that_rise_on_the_whole_do_not_cool() {
    let room = Surroundings { room: value(20.0), humidity: value(50.0), cover: Cover::Lidded };
    let readings: Vec<_> = (0..11)
        .map(|at| {
            let rising = 60.0 + 2.0 * f64::from(at);
            let celsius = if at == 7 { 20.5 } else { rising };
            Thermometer { time: value(60.0 * f64::from(at)), temperature: value(celsius) }
        })
        .collect();
    let error = calibrate::cooling(&readings, &room).unwrap_err();
    let Error::CannotTell { quantity: Quantity::CoolingRate, why, found, needed: 0.005 } = error
    else {
        panic!("{error}")
    };
    assert!(why == Untold::NotCooling && found < 0.0 && found > -0.05, "{error}");
}

#[test]
fn yields_that_fall_are_called_so() {
    let yields = timed(&[(30.0, 20.0), (60.0, 15.0), (120.0, 10.0)]);
    let error = calibrate::one_rate(&yields).unwrap_err();
    let (quantity, why) = (Quantity::Yield, Untold::Falling);
    assert_eq!(error, Error::CannotTell { quantity, why, found: 10.0, needed: 18.0 });
    assert_eq!(
        error.to_string(),
        "yield: these measurements cannot tell it, the yield falls with time, which no extraction does \
         (yield after the longest contact in %: 10, needed for a start: 18)"
    );
}
