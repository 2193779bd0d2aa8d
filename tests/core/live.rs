//! A scale that is watched, and a brew that is followed: what must hold for any readings, and a whole
//! invented brew.

use cupwright::Error;
use cupwright::live::{Cue, Doing, Follower, Happening, Scale, Setup, Step, StepKind, Why};
use cupwright::quantity::*;
use proptest::prelude::*;

fn clock(seconds: f64) -> Clock {
    Clock::from_seconds(seconds).unwrap()
}

fn grams(grams: f64) -> ScaleReading {
    ScaleReading::from_grams(grams).unwrap()
}

/// What comes next on a scale that anything may happen to.
#[derive(Clone, Debug)]
enum Next {
    Reading { after: f64, mass: f64 },
    Still { readings: u8, noise: f64 },
    Pour { readings: u8, flow: f64 },
    Jump { by: f64 },
    Zeroed { by: f64 },
    CountAnew,
}

fn next() -> impl Strategy<Value = Next> {
    let mass = prop_oneof![-5e3..5e3, -1e5..=1e5, Just(0.0)];
    prop_oneof![
        (0.001..20.0, mass).prop_map(|(after, mass)| Next::Reading { after, mass }),
        (1_u8..60, 0.0..3.0).prop_map(|(readings, noise)| Next::Still { readings, noise }),
        (1_u8..60, -5.0..40.0).prop_map(|(readings, flow)| Next::Pour { readings, flow }),
        (-800.0..800.0).prop_map(|by| Next::Jump { by }),
        (-800.0..800.0).prop_map(|by| Next::Zeroed { by }),
        Just(Next::CountAnew),
    ]
}

/// Plays to a scale; after each reading a look at it.
fn play(nexts: &[Next], step: f64, mut look: impl FnMut(&Scale, f64)) {
    let mut scale = Scale::new(Setup::COMMON);
    let (mut time, mut mass, mut wave) = (0.0, 0.0, 0.0_f64);
    let mut read = |scale: &mut Scale, after: f64, mass: f64| {
        time += after;
        let mass = mass.clamp(-1e5, 1e5);
        let seen = scale.take(clock(time), grams(mass)).unwrap();
        assert!(seen.flow.is_none_or(|flow| flow.grams_per_second().is_finite()));
        look(scale, seen.level.grams());
        mass
    };
    for next in nexts {
        match *next {
            Next::Reading { after, mass: to } => mass = read(&mut scale, after, to),
            Next::Still { readings, noise } => {
                for _ in 0..readings {
                    wave += 2.4;
                    read(&mut scale, step, mass + noise * wave.sin());
                }
            }
            Next::Pour { readings, flow } => {
                for _ in 0..readings {
                    mass = read(&mut scale, step, mass + flow * step);
                }
            }
            Next::Jump { by } => mass += by,
            Next::Zeroed { by } => {
                scale.zeroed(Change::from_grams(by).unwrap());
                mass -= by;
            }
            Next::CountAnew => scale.count_anew(),
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(1000))]

    #[test]
    fn whatever_happens_the_accounts_make_the_level(
        nexts in prop::collection::vec(next(), 1..40),
        step in prop_oneof![Just(0.1), Just(0.0125), 0.01..0.3],
    ) {
        play(&nexts, step, |scale, level| {
            let account = scale.account().unwrap();
            let sum = account.poured.grams()
                + account.moved.grams()
                + account.tared.grams()
                + account.drifted.grams()
                + account.unclear.grams()
                + account.under_way.grams();
            // Rounding of sums of up to 1e5 g over some thousand readings.
            assert!((sum - level).abs() < 1e-6, "{sum} for {level}: {account:?}");
        });
    }

    #[test]
    fn a_reading_that_cannot_be_changes_nothing(
        nexts in prop::collection::vec(next(), 1..20),
        back in 0.0..5.0,
    ) {
        play(&nexts, 0.1, |scale, _| {
            let mut other = *scale;
            let late = scale.latest().unwrap().seconds() - back;
            if let Ok(late) = Clock::from_seconds(late) {
                let error = other.take(late, grams(1.0)).unwrap_err();
                assert!(matches!(error, Error::Impossible { quantity: Quantity::Clock, .. }), "{error}");
                assert_eq!(other, *scale);
            }
        });
    }

    /// All that counts is how much there is more than before, and when.
    #[test]
    fn the_beginning_of_the_clock_and_of_the_scale_do_not_matter(
        flow in 3.5..10.0_f64,
        later in 0_u32..100_000,
        heavier in -1000_i32..1000,
    ) {
        let water = |time: f64, mass: f64| {
            let mut scale = Scale::new(Setup::COMMON);
            let mut poured = 0.0;
            for tenth in 0..200 {
                let elapsed = f64::from(tenth) / 8.0;
                let shown = mass + (flow * (elapsed - 3.0)).clamp(0.0, 60.0);
                poured = scale.take(clock(time + elapsed), grams(shown)).unwrap().poured.grams();
            }
            poured
        };
        let plain = water(0.0, 0.0);
        prop_assert!((plain - water(f64::from(later), f64::from(heavier))).abs() < 1e-5);
        prop_assert!((plain - 60.0).abs() < 0.3, "{plain}");
    }
}

#[test]
fn states_are_as_small_as_promised() {
    assert!(size_of::<Scale>() <= 512, "{}", size_of::<Scale>());
    assert!(size_of::<Follower>() <= 1024, "{}", size_of::<Follower>());
}

/// An invented brew on a scale of 0.1 g and ten readings a second, with a little noise that has no
/// chance in it.
struct Brew {
    follower: Follower,
    recipe: Vec<Step>,
    time: f64,
    mass: f64,
    heard: Vec<Happening>,
    cues: Vec<(Cue, Why)>,
    to_pour: Vec<f64>,
}

impl Brew {
    fn new(recipe: Vec<Step>) -> Self {
        let follower = Follower::new(Setup::COMMON);
        let (heard, cues, to_pour) = (Vec::new(), Vec::new(), Vec::new());
        Self { follower, recipe, time: 0.0, mass: 0.0, heard, cues, to_pour }
    }

    fn read(&mut self, off: f64) -> cupwright::live::Now {
        self.time += 0.1;
        let noise = 0.04 * (41.0 * self.time).sin();
        let shown = (10.0 * (self.mass + off + noise)).round() / 10.0;
        let now = self.follower.take(&self.recipe, clock(self.time), grams(shown)).unwrap();
        self.heard.extend(now.seen.event.map(|event| event.happening));
        self.to_pour.extend(now.to_pour.map(Change::grams));
        if self.cues.last() != Some(&(now.cue, now.why)) {
            self.cues.push((now.cue, now.why));
        }
        now
    }

    fn wait(&mut self, seconds: f64) -> cupwright::live::Now {
        for _ in 1..(10.0 * seconds) as u32 {
            self.read(0.0);
        }
        self.read(0.0)
    }

    fn put(&mut self, mass: f64) -> cupwright::live::Now {
        self.mass += mass;
        self.wait(3.0)
    }

    /// Pours until 0.3 s after the cue to stop, or for so many seconds.
    fn pour(&mut self, flow: f64, at_most: f64) -> f64 {
        let before = self.mass;
        let (mut cued, mut elapsed) = (None, 0.0);
        while elapsed < at_most && cued.is_none_or(|cued| elapsed < cued + 0.3) {
            self.mass += 0.1 * flow;
            elapsed += 0.1;
            if self.read(0.0).cue == Cue::StopPouring {
                cued = cued.or(Some(elapsed));
            }
        }
        self.mass - before
    }

    fn press(&mut self, seconds: f64) {
        for tenth in 0..(10.0 * seconds) as u32 {
            self.read(900.0 + 40.0 * (1.7 * f64::from(tenth)).sin());
        }
        self.wait(3.0);
    }
}

fn water(grams: f64) -> BrewWater {
    BrewWater::from_grams(grams).unwrap()
}

fn seconds(seconds: f64) -> Time {
    Time::from_seconds(seconds).unwrap()
}

fn pressed_steep() -> Vec<Step> {
    vec![
        Step::Dose { dose: Dose::from_grams(15.0).unwrap() },
        Step::Pour { to: water(50.0), from: seconds(0.0) },
        Step::Stir { from: seconds(16.0) },
        Step::Pour { to: water(220.0), from: seconds(30.0) },
        Step::Wait { until: seconds(120.0) },
        Step::Press,
        Step::Beverage { vessel: VesselMass::from_grams(0.0).unwrap() },
    ]
}

#[test]
fn a_brew_is_followed_from_the_coffee_to_the_cup() {
    let mut brew = Brew::new(pressed_steep());
    brew.wait(2.0);
    // Brewer and cup, then the display to zero.
    brew.put(431.0);
    brew.mass = 0.0;
    brew.wait(2.0);
    let now = brew.put(15.1);
    assert_eq!((now.step, now.cue, now.why), (1, Cue::Pour, Why::Next));
    assert!((brew.follower.dose().unwrap().grams() - 15.1).abs() < 0.1);

    let first = brew.pour(5.0, 60.0);
    assert!((first - 50.0).abs() < 2.0, "{first}");
    let now = brew.wait(4.0);
    assert_eq!((now.step, now.cue, now.why), (2, Cue::Wait, Why::Early));
    assert!((now.seen.poured.grams() - first).abs() < 0.3);
    let now = brew.wait(5.0);
    assert_eq!((now.step, now.cue, now.why), (2, Cue::Stir, Why::Time));
    for tenth in 0..40 {
        brew.read(12.0 * (1.3 * f64::from(tenth)).sin());
    }
    let now = brew.wait(2.0);
    assert_eq!((now.step, now.cue, now.why), (3, Cue::Wait, Why::Early));

    // Lifted for a look, and two grams drip off.
    let on_scale = brew.mass;
    brew.put(-on_scale - 431.0);
    brew.put(on_scale + 429.0);
    brew.wait(10.0);
    let second = brew.pour(6.0, 60.0);
    let now = brew.wait(4.0);
    assert!((now.seen.poured.grams() - first - second).abs() < 0.3, "{now:?}");
    assert!((first + second - 220.0).abs() < 1.5, "{}", first + second);
    assert!((brew.follower.drips().unwrap().grams() - 2.0).abs() < 0.2);
    assert!((now.ratio.unwrap().grams_per_gram() - (first + second) / 15.1).abs() < 0.1);
    assert_eq!((now.step, now.cue), (4, Cue::Wait));

    let now = brew.wait(80.0);
    assert_eq!((now.step, now.cue), (5, Cue::Press));
    brew.press(20.0);
    let now = brew.wait(2.0);
    assert_eq!((now.step, now.cue), (6, Cue::WeighBeverage));
    assert!((now.seen.poured.grams() - first - second).abs() < 0.5, "a press is no water");
    let on_scale = brew.mass;
    brew.put(-on_scale - 431.0);
    // The cup alone, the display set to zero with one like it.
    brew.mass = 0.0;
    brew.wait(2.0);
    let now = brew.put(187.0);
    assert_eq!((now.cue, now.why), (Cue::Nothing, Why::Done));
    assert!((brew.follower.beverage().unwrap().grams() - 187.0).abs() < 0.2);
    for happening in
        [Happening::Pressed, Happening::Released, Happening::Tared, Happening::Returned]
    {
        assert!(brew.heard.contains(&happening), "{happening:?} in {:?}", brew.heard);
    }
}

/// Invented: the brewer stands on its cup, and both are lifted together.
#[test]
fn a_brewer_comes_back_from_the_sink_and_a_cup_from_under_the_brewer() {
    let mut recipe = pressed_steep();
    recipe.insert(0, Step::Rinse);
    recipe.pop();
    recipe.push(Step::Beverage { vessel: VesselMass::from_grams(312.0).unwrap() });
    let mut brew = Brew::new(recipe);
    brew.wait(2.0);
    brew.put(312.0 + 223.0);
    // The display is set to zero.
    brew.mass = 0.0;
    brew.wait(2.0);
    brew.pour(6.0, 7.0);
    brew.wait(3.0);
    let on_scale = brew.mass + 535.0;
    assert_eq!(brew.put(-on_scale).cue, Cue::AddCoffee);
    // The rinse is gone, and the paper is wet: two grams.
    let now = brew.put(537.0);
    assert_eq!((now.step, now.cue, now.why), (1, Cue::AddCoffee, Why::Next), "{now:?}");
    // Lifted for the coffee, which is weighed with what is back.
    brew.put(-537.0);
    let now = brew.put(537.0 + 15.0);
    assert_eq!((now.step, now.cue), (2, Cue::Pour));
    assert!((brew.follower.dose().unwrap().grams() - 15.0).abs() < 0.1, "{now:?}");

    brew.pour(5.0, 60.0);
    brew.wait(4.0);
    brew.pour(6.0, 60.0);
    brew.wait(4.0);
    brew.press(20.0);
    let on_scale = brew.mass + 535.0;
    let now = brew.put(-on_scale);
    assert_eq!(now.cue, Cue::WeighBeverage, "{now:?}");
    // More than half of all that was lifted: the cup alone looks like all of it, come back.
    let now = brew.put(312.0 + 192.0);
    assert_eq!((now.cue, now.why), (Cue::Nothing, Why::Done), "{now:?}");
    assert!((brew.follower.beverage().unwrap().grams() - 192.0).abs() < 0.2);
    assert!(brew.follower.drips().unwrap().grams() < 0.2, "nothing dripped off");
}

/// Invented: what people do with a spoon or a tin.
#[test]
fn coffee_comes_in_more_than_one_go() {
    let mut brew = Brew::new(pressed_steep());
    brew.wait(2.0);
    brew.pour(8.0, 1.5);
    brew.wait(2.5);
    // Three grams are missing.
    brew.pour(3.0, 0.6);
    let now = brew.wait(2.0);
    assert_eq!((now.step, now.cue, now.why), (0, Cue::AddCoffee, Why::Missing), "{now:?}");
    brew.pour(3.0, 0.4);
    let now = brew.wait(4.0);
    assert_eq!((now.step, now.cue, now.why), (1, Cue::Pour, Why::Next), "{now:?}");
    assert!((brew.follower.dose().unwrap().grams() - 15.0).abs() < 0.1);
    assert!(now.brewing.is_none() && now.seen.poured.grams() < 0.1, "no water yet: {now:?}");
    assert!(brew.to_pour.iter().all(|left| *left > 49.9), "nor for a moment: {:?}", brew.to_pour);

    // Water on less coffee than was asked for.
    let mut brew = Brew::new(pressed_steep());
    brew.wait(2.0);
    brew.put(12.0);
    let before = brew.time;
    brew.pour(5.0, 4.0);
    let now = brew.wait(4.0);
    assert_eq!((now.step, now.cue, now.why), (1, Cue::Pour, Why::Missing), "{now:?}");
    assert!((now.seen.poured.grams() - 20.0).abs() < 0.3, "{now:?}");
    assert!((brew.follower.dose().unwrap().grams() - 12.0).abs() < 0.2);
    assert!((now.brewing.unwrap().seconds() - (brew.time - before)).abs() < 0.5, "{now:?}");
}

/// Invented: coffee weighed in a cup of its own, a little more of it added, and coffee that was there before.
#[test]
fn what_else_happens_to_coffee() {
    let mut brew = Brew::new(pressed_steep());
    brew.wait(2.0);
    let now = brew.put(41.7);
    assert_eq!((now.step, now.cue, now.why), (0, Cue::AddCoffee, Why::Next), "a cup: {now:?}");
    let now = brew.put(14.8);
    assert_eq!((now.step, now.cue), (1, Cue::Pour), "{now:?}");
    // Half a gram more, by the tap of a spoon that takes a second.
    for _ in 0..10 {
        brew.mass += 0.12;
        brew.read(0.0);
    }
    let now = brew.wait(5.0);
    assert!(now.brewing.is_none(), "no water yet: {now:?}");
    assert_eq!((now.step, now.cue, now.why), (1, Cue::Pour, Why::Next));
    assert!(
        (brew.follower.dose().unwrap().grams() - 16.0).abs() < 0.2,
        "{:?}",
        brew.follower.dose()
    );
    let first = brew.pour(5.0, 60.0);
    let now = brew.wait(4.0);
    assert!((now.seen.poured.grams() - first).abs() < 0.3, "{now:?}");

    let mut brew = Brew::new(pressed_steep());
    brew.wait(2.0);
    let poured = brew.pour(6.0, 7.0);
    let now = brew.wait(4.0);
    assert_eq!((now.step, brew.follower.dose()), (1, None), "{now:?}");
    assert!((now.seen.poured.grams() - poured).abs() < 0.3, "{now:?}");
}

/// Invented: a cup is changed for a lighter one before there is coffee, and a hand rests on the scale.
#[test]
fn what_is_weighed_in_may_change() {
    let mut brew = Brew::new(pressed_steep());
    brew.wait(2.0);
    brew.put(312.0);
    brew.put(-312.0);
    brew.put(100.0);
    let now = brew.put(15.0);
    assert_eq!((now.step, now.cue), (1, Cue::Pour), "{now:?}");
    assert!((brew.follower.dose().unwrap().grams() - 15.0).abs() < 0.1);

    let mut brew = Brew::new(pressed_steep());
    brew.wait(2.0);
    brew.put(200.0);
    brew.put(300.0);
    brew.put(-300.0);
    let now = brew.put(15.0);
    assert_eq!((now.step, now.cue), (1, Cue::Pour), "{now:?}");
}

#[test]
fn a_step_beyond_all_is_none() {
    let mut brew = Brew::new(pressed_steep());
    brew.follower.go_to(u16::MAX);
    brew.wait(2.0);
    brew.pour(5.0, 4.0);
    brew.wait(3.0);
    brew.press(5.0);
    assert_eq!(brew.read(0.0).cue, Cue::Nothing);
    let new = Follower::new(Setup::COMMON);
    assert_eq!(Follower::from_bytes(&new.to_bytes()), Ok(new));
}

/// Invented: a hand that stops at 45 g of 50, is told so, and goes on when the next water is due.
#[test]
fn a_pour_that_ends_short_is_over_when_the_next_step_is_due() {
    let mut recipe = pressed_steep();
    recipe.remove(2);
    let mut brew = Brew::new(recipe);
    brew.wait(2.0);
    brew.put(15.0);
    brew.pour(5.0, 9.0);
    let now = brew.wait(4.0);
    assert_eq!((now.step, now.cue, now.why), (1, Cue::Pour, Why::Missing), "{now:?}");
    let now = brew.wait(22.0);
    assert_eq!((now.step, now.cue, now.why), (2, Cue::Pour, Why::Time), "{now:?}");
    brew.pour(6.0, 60.0);
    let now = brew.wait(4.0);
    assert_eq!((now.step, now.cue), (3, Cue::Wait), "{now:?}");
    assert!((now.seen.poured.grams() - 220.0).abs() < 2.0, "{now:?}");
}

/// Invented: a hand that goes on pouring teaches nothing about hands that stop.
#[test]
fn a_cue_that_is_not_heeded_teaches_no_lead() {
    let mut brew = Brew::new(vec![Step::Pour { to: water(60.0), from: seconds(0.0) }]);
    brew.wait(2.0);
    let before = brew.follower.lead();
    for _ in 0..300 {
        brew.mass += 0.5;
        brew.read(0.0);
    }
    brew.wait(5.0);
    assert!(brew.cues.contains(&(Cue::StopPouring, Why::TooMuch)));
    assert_eq!(brew.follower.lead(), before);
}

/// Invented: a brewer of 223 g on a cup of 312 g. The brewer is lifted off after the press, with the grounds.
#[test]
fn a_cup_that_stays_is_weighed_where_it_stands() {
    let mut recipe = pressed_steep();
    recipe.pop();
    recipe.push(Step::Beverage { vessel: VesselMass::from_grams(312.0).unwrap() });
    let mut brew = Brew::new(recipe);
    brew.wait(2.0);
    brew.put(312.0 + 223.0);
    brew.mass = 0.0;
    brew.wait(2.0);
    brew.put(15.0);
    brew.pour(5.0, 60.0);
    brew.wait(4.0);
    brew.pour(6.0, 60.0);
    brew.wait(4.0);
    brew.press(20.0);
    let beverage = brew.mass - 15.0 - 31.0;
    let now = brew.put(-223.0 - 15.0 - 31.0);
    assert_eq!((now.cue, now.why), (Cue::Nothing, Why::Done), "{now:?}");
    let weighed = brew.follower.beverage().unwrap().grams();
    assert!((weighed - beverage).abs() < 0.3, "{weighed} for {beverage}");
}

#[test]
fn without_a_recipe_water_is_counted_all_the_same() {
    let mut brew = Brew::new(Vec::new());
    brew.wait(3.0);
    let poured = brew.pour(4.0, 10.0);
    let now = brew.wait(4.0);
    assert!((now.seen.poured.grams() - poured).abs() < 0.3);
    assert_eq!((now.cue, now.why), (Cue::Nothing, Why::Done));
    let brewing = now.brewing.unwrap().seconds();
    assert!((brewing - 14.0).abs() < 0.3, "{brewing}");
}

#[test]
fn someone_who_goes_ahead_is_followed() {
    let mut brew = Brew::new(pressed_steep());
    brew.wait(2.0);
    brew.put(15.0);
    brew.pour(5.0, 60.0);
    brew.wait(4.0);
    // No stir, no waiting.
    brew.pour(5.0, 60.0);
    let now = brew.wait(4.0);
    assert_eq!(now.step, 4);
    // Pressed long before its time.
    brew.press(10.0);
    assert_eq!(brew.read(0.0).cue, Cue::WeighBeverage);
}

#[test]
fn too_little_water_is_asked_for_and_too_much_is_told() {
    let recipe = vec![Step::Pour { to: water(100.0), from: seconds(0.0) }];
    let mut brew = Brew::new(recipe.clone());
    brew.wait(2.0);
    let poured = brew.pour(5.0, 10.0);
    let now = brew.wait(5.0);
    assert_eq!((now.cue, now.why), (Cue::Pour, Why::Missing));
    assert!((now.to_pour.unwrap().grams() - (100.0 - poured)).abs() < 0.3, "{now:?}");
    assert!(now.variation.unwrap().percent() < 3.0, "an even flow: {now:?}");

    let mut brew = Brew::new(recipe);
    brew.wait(2.0);
    for _ in 0..300 {
        brew.mass += 0.5;
        brew.read(0.0);
    }
    let stops: Vec<Why> =
        brew.cues.iter().filter(|(cue, _)| *cue == Cue::StopPouring).map(|(_, why)| *why).collect();
    assert_eq!(stops, [Why::Lead, Why::Enough, Why::TooMuch]);
}

/// Invented: a brewer swirled in the hand, too much coffee, water in a wait that no pour follows, and a brewer that
/// goes to the cup without being pressed.
#[test]
fn what_is_lifted_or_poured_ends_a_step_too() {
    let mut brew = Brew::new(pressed_steep());
    brew.wait(2.0);
    // What lies below stays: all gone at once would be a tare.
    brew.put(500.0);
    brew.put(300.0);
    let now = brew.put(15.0);
    assert_eq!((now.step, now.cue), (1, Cue::Pour), "{now:?}");
    brew.pour(5.0, 60.0);
    let now = brew.wait(17.0);
    assert_eq!((now.step, now.cue, now.why), (2, Cue::Stir, Why::Time), "{now:?}");
    let brewer = brew.mass - 500.0;
    brew.put(-brewer);
    let now = brew.put(brewer);
    assert_eq!(now.step, 3, "{now:?}");
    brew.pour(6.0, 60.0);
    let now = brew.wait(4.0);
    assert_eq!(
        (now.step, now.cue, now.why),
        (4, Cue::Wait, Why::Early),
        "{now:?} {:?}",
        brew.heard
    );
    // Nothing more is to be poured.
    let told = brew.cues.len();
    for _ in 0..40 {
        brew.mass += 0.6;
        brew.read(0.0);
    }
    assert!(brew.cues[told..].contains(&(Cue::StopPouring, Why::Enough)), "{:?}", brew.cues);
    let now = brew.wait(120.0);
    assert_eq!((now.step, now.cue), (5, Cue::Press), "{now:?}");
    let brewer = brew.mass - 500.0;
    let now = brew.put(-brewer);
    assert_eq!((now.step, now.cue), (6, Cue::WeighBeverage), "{now:?}");
}

/// Recipes that leave something out, and a hand that gives too much.
#[test]
fn a_recipe_may_do_without_a_wait_or_a_pour() {
    let dose = Step::Dose { dose: Dose::from_grams(15.0).unwrap() };
    let mut brew = Brew::new(vec![Step::Wait { until: seconds(0.0) }]);
    let now = brew.wait(2.0);
    assert_eq!((now.step, now.cue, now.why), (0, Cue::Wait, Why::Next), "{now:?}");

    // Water where no pour is named is water all the same.
    let mut brew = Brew::new(vec![dose, Step::Press]);
    brew.wait(2.0);
    let poured = brew.pour(6.0, 15.0);
    let now = brew.wait(4.0);
    assert_eq!((now.step, now.cue, brew.follower.dose()), (1, Cue::Press, None), "{now:?}");
    assert!((now.seen.poured.grams() - poured).abs() < 0.3, "{now:?}");

    // A pour that ends short is not over where the next step has no time.
    let pour = Step::Pour { to: water(100.0), from: seconds(0.0) };
    let mut brew = Brew::new(vec![pour, Step::Press]);
    brew.wait(2.0);
    brew.pour(5.0, 18.0);
    let now = brew.wait(60.0);
    assert_eq!((now.step, now.cue, now.why), (0, Cue::Pour, Why::Missing), "{now:?}");

    let mut brew = Brew::new(vec![dose, pour]);
    brew.wait(2.0);
    brew.put(18.0);
    assert!(brew.cues.contains(&(Cue::AddCoffee, Why::TooMuch)), "{:?}", brew.cues);
}

#[test]
fn a_hand_that_is_slow_is_learned() {
    let recipe: Vec<Step> = (1..=6)
        .map(|pour| Step::Pour { to: water(50.0 * f64::from(pour)), from: seconds(0.0) })
        .collect();
    let mut brew = Brew::new(recipe);
    brew.wait(2.0);
    let mut missed = Vec::new();
    for pour in 1..=6 {
        let flow = 6.0;
        let mut late = 0;
        while late < 11 {
            brew.mass += 0.1 * flow;
            late += u32::from(brew.read(0.0).cue == Cue::StopPouring);
        }
        brew.wait(5.0);
        missed.push(brew.mass - 50.0 * f64::from(pour));
    }
    assert!(missed[0] > 2.0, "{missed:?}");
    assert!(missed[5].abs() < 0.7, "{missed:?}");
}

/// Events on an invented scale that reads ten times a second, and what its accounts say at the end, after
/// each reading has been looked at: nothing is lost.
fn heard_of(seconds: u32, mass: impl Fn(f64) -> f64) -> (Vec<Happening>, Scale) {
    let mut scale = Scale::new(Setup::COMMON);
    let mut heard = Vec::new();
    for tenth in 0..10 * seconds {
        let time = f64::from(tenth) / 10.0;
        let shown = (10.0 * mass(time)).round() / 10.0;
        let seen = scale.take(clock(time), grams(shown)).unwrap();
        let a = scale.account().unwrap();
        let parts = [a.poured, a.moved, a.tared, a.drifted, a.unclear, a.under_way];
        let sum: f64 = parts.iter().map(|part| part.grams()).sum();
        assert!((sum - seen.level.grams()).abs() < 1e-6, "{sum} {seen:?}");
        heard.extend(seen.event.map(|event| event.happening));
    }
    (heard, scale)
}

/// Water of 100 g from the third second on.
fn poured_first(time: f64) -> f64 {
    300.0 + (5.0 * (time - 3.0)).clamp(0.0, 100.0)
}

#[test]
fn a_hand_that_looks_like_a_thing_is_found_out() {
    use Happening::*;
    let hand = |time: f64| {
        let ramp = (2.0 * (time - 30.0)).min(2.0 * (45.0 - time)).clamp(0.0, 1.0);
        // A tremor near the rate of the readings comes out as slow as this.
        let tremor = 2.0 * (std::f64::consts::TAU * (time - 30.7).max(0.0) / 2.5).sin();
        ramp * (1000.0 + tremor)
    };
    let (heard, scale) = heard_of(60, |time| poured_first(time) + hand(time));
    let wanted = [PourStarted, PourStopped, Settled, Placed, Pressed, Released];
    assert_eq!(heard, wanted);
    assert!((scale.poured().unwrap().grams() - 100.0).abs() < 0.3, "{:?}", scale.poured());
    assert!(scale.account().unwrap().moved.grams() - 300.0 < 0.3, "{:?}", scale.account());
}

#[test]
fn a_vessel_is_no_hand_once_water_came_into_it() {
    use Happening::*;
    let vessel = |time: f64| if time < 3.0 { 0.0 } else { 400.0 };
    let water = |time: f64| (5.0 * (time - 8.0)).clamp(0.0, 60.0);
    let (heard, scale) = heard_of(40, |time| vessel(time) + water(time));
    assert_eq!(heard, [Placed, PourStarted, PourStopped, Settled]);
    assert!((scale.poured().unwrap().grams() - 60.0).abs() < 0.3, "{:?}", scale.poured());
}

#[test]
fn a_spoon_that_lifts_and_sinks_leaves_no_water() {
    use Happening::*;
    let spoon = |time: f64| {
        let stirs = (30.0..36.0).contains(&time);
        if stirs { 4.0 * (std::f64::consts::TAU * (time - 30.0) / 2.0).sin() } else { 0.0 }
    };
    let (heard, scale) = heard_of(60, |time| poured_first(time) + spoon(time));
    assert!(heard.contains(&Disturbed), "{heard:?}");
    assert!(
        (scale.poured().unwrap().grams() - 100.0).abs() < 0.3,
        "{heard:?} {:?}",
        scale.poured()
    );
}

/// Invented: a spoon that pushes for a second counts as a pour until it pushes no longer. Then nothing is left
/// of it: no water, no time in which water came, no run of it.
#[test]
fn what_was_no_water_leaves_no_doubt_either() {
    use Happening::*;
    let spoon = |time: f64| match time - 3.0 {
        after @ 0.0..1.0 => 300.0 + 4.0 * after,
        after @ 1.0..1.5 => 304.0 - 8.0 * (after - 1.0),
        _ => 300.0,
    };
    let (heard, scale) = heard_of(20, spoon);
    assert_eq!(heard, [PourStarted, PourStopped, Disturbed]);
    assert_eq!(scale.poured().unwrap().grams(), 0.0);
    assert_eq!(scale.poured_uncertainty().unwrap().grams(), 0.0);
}

/// Invented: the longer water comes, the less is known of what went off meanwhile; a knock begins nothing anew.
#[test]
fn a_knock_within_a_pour_shortens_no_doubt() {
    let knock = |time: f64| if (12.0..12.6).contains(&time) { 40.0 } else { 0.0 };
    let doubt = |seconds: u32| {
        let (heard, scale) = heard_of(seconds, |time| poured_first(time) + knock(time));
        assert_eq!(heard.first(), Some(&Happening::PourStarted));
        scale.poured_uncertainty().unwrap().grams()
    };
    assert!(doubt(14) > doubt(12), "{} {}", doubt(14), doubt(12));
}

/// Invented: something pulls and lets go at a pour's rate, then water comes.
#[test]
fn what_rises_after_a_fall_is_no_water_for_a_while() {
    use Happening::*;
    let pull = |time: f64| match time - 30.0 {
        after @ 0.0..1.0 => -4.0 * after,
        after @ 1.0..1.8 => -4.0 + 5.0 * (after - 1.0),
        _ => 0.0,
    };
    let water = |time: f64| (5.0 * (time - 35.0)).clamp(0.0, 50.0);
    let (heard, scale) = heard_of(60, |time| poured_first(time) + pull(time) + water(time));
    let pour = [PourStarted, PourStopped, Settled];
    assert_eq!(heard.iter().filter(|h| pour.contains(h)).count(), 6, "{heard:?}");
    assert!((scale.poured().unwrap().grams() - 150.0).abs() < 0.3, "{heard:?}");
}

/// Invented: a pour ends under a load beyond the scale, and something heavier is left.
#[test]
fn three_things_at_once_are_told_one_after_the_other() {
    use Happening::*;
    let (heard, _) = heard_of(25, |time| match time {
        ..10.0 => poured_first(time),
        ..13.0 => 3000.0,
        _ => poured_first(10.0) + 400.0,
    });
    assert_eq!(heard, [PourStarted, Overloaded, PourStopped, Released, Placed]);
}

/// Invented: a spoon is let down slowly, then strokes.
#[test]
fn a_spoon_that_begins_like_a_drip_leaves_no_water() {
    let spoon = |time: f64| match time - 30.0 {
        ..0.0 => 0.0,
        after @ ..2.0 => 0.7 * after,
        after @ ..2.5 => 1.4 + 4.0 * (after - 2.0),
        after @ ..6.0 => 3.0 * (std::f64::consts::TAU * 1.9 * (after - 2.2)).cos(),
        _ => 0.0,
    };
    let (heard, scale) = heard_of(60, |time| poured_first(time) + spoon(time));
    assert!(heard.contains(&Happening::DripStarted), "{heard:?}");
    let poured = scale.poured().unwrap().grams();
    assert!((poured - 100.0).abs() < 0.3, "{heard:?} {poured}");
}

/// Invented: a hand of 13 N that has looked like a thing wavers by 0.8 g, like water for a moment.
#[test]
fn a_hand_that_was_just_taken_for_a_thing_pours_nothing() {
    let hand = |time: f64| match time - 30.0 {
        ..0.0 => 0.0,
        ..2.0 => 1327.0,
        after @ ..2.4 => 1327.0 + 2.5 * (after - 2.0),
        ..8.0 => 1327.0 - 30.0 * (time * 7.0).sin().abs(),
        _ => 0.0,
    };
    let (heard, scale) = heard_of(60, |time| poured_first(time) + hand(time));
    let pours = heard.iter().filter(|happening| **happening == Happening::PourStarted).count();
    assert_eq!(pours, 1, "{heard:?}");
    assert!((scale.poured().unwrap().grams() - 100.0).abs() < 0.3, "{heard:?}");
}

#[test]
fn a_gap_is_told_and_what_it_may_have_hidden() {
    let mut brew = Brew::new(Vec::new());
    brew.wait(3.0);
    brew.pour(5.0, 4.0);
    brew.time += 5.0;
    brew.mass += 25.0;
    let now = brew.wait(4.0);
    assert!(brew.heard.contains(&Happening::Lost));
    assert!((now.seen.poured.grams() - 45.0).abs() < 0.5, "{now:?}");
    assert!((now.seen.unclear.grams() - 25.0).abs() < 1.0, "{now:?}");
    assert_eq!(now.seen.doing, Doing::Still);
}

/// Invented: a brewer that loses 0.02 g/s is poured on, and the scale sleeps for a week in the midst of it.
#[test]
fn a_week_without_readings_evaporates_nothing() {
    let mut scale = Scale::new(Setup::COMMON);
    let mut take = |time: f64, mass| scale.take(clock(time), grams(mass)).unwrap();
    let mass = |time: f64| 300.0 + (5.0 * (time - 3.0)).clamp(0.0, 100.0) - 0.02 * time;
    for tenth in 0..600 {
        let time = f64::from(tenth) / 10.0;
        take(time, mass(time));
    }
    for tenth in 0..50 {
        let time = f64::from(tenth) / 10.0;
        take(60.0 + time, mass(60.0) + 5.0 * time);
    }
    take(604_800.0, mass(60.0) + 26.0);
    assert!((scale.poured().unwrap().grams() - 127.0).abs() < 1.0, "{:?}", scale.poured());
}

/// Invented: while a pour comes to rest a vessel is set down unsteadily. However long that takes, no water came then.
#[test]
fn what_is_held_back_is_no_time_in_which_water_came() {
    let doubt = |unsteady: u32| {
        let (from, rest) = (23.8, 23.8 + f64::from(unsteady));
        let vessel = |time: f64| match time {
            _ if time < from => 0.0,
            _ if time < rest => 400.0 + 90.0 * (5.0 * time).sin(),
            _ => 400.0,
        };
        let (heard, scale) = heard_of(34 + unsteady, |time| poured_first(time) + vessel(time));
        assert!(heard.ends_with(&[Happening::Released, Happening::Placed]), "{heard:?}");
        scale.poured_uncertainty().unwrap().grams()
    };
    let (short, long) = (doubt(4), doubt(20));
    assert!((short - long).abs() < 0.01, "{short} {long}");
}

/// Invented: while a pour comes to rest the scale is switched off, and a cup was taken meanwhile. A long gap says no
/// more of what went off than a short one.
#[test]
fn a_gap_is_no_time_in_which_water_came() {
    let after = |gap: f64| {
        let mut scale = Scale::new(Setup::COMMON);
        let mut take = |time: f64, mass| scale.take(clock(time), grams(mass)).unwrap();
        for tenth in 0..80 {
            let time = f64::from(tenth) / 10.0;
            take(time, 300.0 + (5.0 * (time - 3.0)).clamp(0.0, 50.0));
        }
        for tenth in 0..20 {
            take(8.0 + gap + f64::from(tenth) / 10.0, 150.0);
        }
        [scale.poured().unwrap().grams(), scale.poured_uncertainty().unwrap().grams()]
    };
    assert_eq!(after(3000.0), after(30.0));
}

/// A point is a mean of readings; those before a gap have none in common with those after it.
#[test]
fn a_gap_between_the_readings_of_a_point_is_one() {
    let mut scale = Scale::new(Setup::COMMON);
    let mut take = |time, mass| scale.take(clock(time), grams(mass)).unwrap();
    for fortieth in 0..=81 {
        take(f64::from(fortieth) / 40.0, 100.0);
    }
    // Half of a point is there: four readings make one.
    let seen = [take(4e9, 102.0), take(4e9 + 0.025, 102.0)];
    let lost = seen.iter().find_map(|seen| seen.event).expect("an event");
    assert_eq!(
        (lost.happening, lost.clock, lost.change.grams()),
        (Happening::Lost, clock(4e9), 2.0)
    );
    assert_eq!(seen[1].unclear.grams(), 2.0);
}

/// A brew that is kept and taken up again anywhere goes on as if nothing had been.
#[test]
fn a_state_kept_in_bytes_goes_on_as_it_was() {
    let recipe = pressed_steep();
    let mut brew = Brew::new(recipe.clone());
    brew.put(15.0);
    let mut other = Brew::new(recipe);
    other.put(15.0);
    let mut kept = 0;
    for reading in 0..900 {
        let flow =
            if (20..120).contains(&reading) || (400..700).contains(&reading) { 5.0 } else { 0.0 };
        let push =
            if (800..850).contains(&reading) { 700.0 + 9.0 * f64::from(reading % 7) } else { 0.0 };
        for played in [&mut brew, &mut other] {
            played.mass += 0.1 * flow;
            played.read(push);
        }
        if reading % 13 == 0 {
            let bytes = other.follower.to_bytes();
            other.follower = Follower::from_bytes(&bytes).unwrap();
            let scale = brew.follower.scale();
            assert_eq!(Scale::from_bytes(&scale.to_bytes()), Ok(*scale));
            kept += 1;
        }
        assert_eq!(brew.follower, other.follower, "reading {reading}");
    }
    assert_eq!((kept, &brew.heard), (70, &other.heard));
    assert!(brew.heard.contains(&Happening::Pressed), "{:?}", brew.heard);
}

#[test]
fn damaged_states_are_refused() {
    let mut brew = Brew::new(pressed_steep());
    brew.put(15.0);
    brew.pour(5.0, 4.0);
    let bytes = brew.follower.to_bytes();
    for at in 0..bytes.len() {
        let mut damaged = bytes;
        damaged[at] ^= 0x10;
        assert!(Follower::from_bytes(&damaged).is_err(), "byte {at}");
    }
    assert!(Follower::from_bytes(&bytes[1..]).is_err());
    assert!(Scale::from_bytes(&bytes).is_err());
}

/// Each value of each kind has words of its own, and a code of its own.
#[test]
fn everything_that_is_told_has_its_own_words() {
    fn check<T: Copy + std::fmt::Debug>(
        all: &[T],
        words: fn(T) -> &'static str,
        code: fn(T) -> u16,
    ) {
        for (at, one) in all.iter().enumerate() {
            let told = words(*one);
            assert!(told.contains(|letter: char| letter.is_ascii_lowercase()), "{one:?}: {told:?}");
            for other in &all[..at] {
                assert_ne!(told, words(*other), "{one:?} {other:?}");
                assert_ne!(code(*one), code(*other), "{one:?} {other:?}");
            }
        }
    }
    check(Doing::ALL, Doing::words, |one| one as u16);
    check(Happening::ALL, Happening::words, |one| one as u16);
    check(StepKind::ALL, StepKind::words, |one| one as u16);
    check(Cue::ALL, Cue::words, |one| one as u16);
    check(Why::ALL, Why::words, |one| one as u16);
}
