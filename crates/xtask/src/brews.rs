//! Invented brews on a scale, made from integers and played to the core: what every binding must
//! answer to the same, as a text that each of them reads line by line.
//!
//! A line is an operation and four words: two numbers as the hexadecimal digits of their bits, then
//! digits that depend on the operation. A reading's are a hash of what the core answers.

use std::fmt::Write;

use cupwright::forecast::{self, Intended, Outlook};
use cupwright::live::{Account, Follower, Now, Scale, Seen, Setup, Step, StepKind};
use cupwright::quantity::*;
use cupwright::retention::{Losses, Paper};
use cupwright::uncertainty::{Estimate, Standard};
use cupwright::verdict;
use cupwright_c::status::cupwright_status;

/// How many brews there are, and readings of each.
const BREWS: u32 = 12;
const READINGS: u32 = 600;

/// What a line asks for. C and JavaScript have the same numbers.
#[derive(Clone, Copy)]
enum Operation {
    /// Nothing more.
    End = 0,
    /// A new scale: division and capacity; the fastest pour.
    Begin = 1,
    /// Another step of the recipe: its numbers; its kind.
    Step = 2,
    /// A reading: clock and reading; the hash of what is seen, and of how the brew stands.
    Take = 3,
    /// The same, refused: the status.
    Refused = 4,
    /// The display was set to zero: by how much.
    Zeroed = 5,
    /// Water counts anew.
    CountAnew = 6,
    /// The next step.
    GoOn = 7,
    /// What is known: dose and beverage; the lead.
    Know = 8,
    /// The hash of the accounts and of what was weighed.
    Told = 9,
}

/// What goes on for some readings.
#[derive(Clone, Copy)]
enum Act {
    Still,
    /// Water, mg/s.
    Pour(i64),
    /// Something put down or taken off, mg.
    Put(i64),
    /// A hand that leans, mg.
    Hand(i64),
    /// Restlessness, mg.
    Knock(i64),
    /// No readings, ms.
    Gap(i64),
    /// The display is set to zero; whether the firmware tells.
    Zero(bool),
}

/// A generator of numbers (xorshift, Marsaglia, J. Stat. Softw. 8 (2003), 14; from memory).
struct Random(u32);

impl Random {
    /// A number below another.
    fn below(&mut self, most: i64) -> i64 {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 17;
        self.0 ^= self.0 << 5;
        i64::from(self.0) % most
    }

    fn act(&mut self) -> Act {
        match self.below(16) {
            0..=3 => Act::Still,
            4..=7 => Act::Pour(500 + self.below(12_000)),
            8 => Act::Pour(150 + self.below(700)),
            9 => Act::Put(self.below(400_000)),
            10 => Act::Put(-self.below(300_000)),
            11 => Act::Hand(60_000 + self.below(500_000)),
            12 => Act::Knock(20_000 + self.below(100_000)),
            13 => Act::Gap(500 + self.below(5_000)),
            14 => Act::Zero(self.below(2) == 0),
            // Beyond the scale.
            _ => Act::Hand(2_500_000),
        }
    }
}

/// How a brew that follows its recipe begins: acts, and for how many readings each.
const BREW: [(Act, u32); 20] = [
    (Act::Still, 15),
    (Act::Put(310_000), 20),
    (Act::Zero(true), 10),
    (Act::Pour(5_000), 25),
    (Act::Still, 40),
    (Act::Put(-330_000), 15),
    (Act::Put(312_000), 20),
    (Act::Put(15_100), 25),
    (Act::Pour(4_600), 90),
    (Act::Still, 30),
    (Act::Knock(30_000), 12),
    (Act::Still, 25),
    (Act::Pour(6_100), 110),
    (Act::Still, 20),
    (Act::Pour(900), 25),
    (Act::Hand(70_000), 30),
    (Act::Still, 15),
    (Act::Put(-560_000), 15),
    (Act::Put(270_000), 25),
    (Act::Still, 20),
];

/// A recipe with every kind of step.
pub fn recipe() -> [Step; 8] {
    let time = |seconds| Time::from_seconds(seconds).expect("in range");
    let water = |grams| BrewWater::from_grams(grams).expect("in range");
    [
        Step::Rinse,
        Step::Dose { dose: Dose::from_grams(15.0).expect("in range") },
        Step::Pour { to: water(42.0), from: time(0.0) },
        Step::Stir { from: time(2.5) },
        Step::Pour { to: water(110.0), from: time(15.0) },
        Step::Wait { until: time(30.0) },
        Step::Press,
        Step::Beverage { vessel: VesselMass::from_grams(120.0).expect("in range") },
    ]
}

/// A hash over the bits of numbers: any one that differs changes it.
struct Hash(u64);

impl Hash {
    fn put(&mut self, bits: u64) {
        self.0 = (self.0.rotate_left(5) ^ bits).wrapping_mul(0x517C_C1B7_2722_0A95);
    }

    fn number(&mut self, number: f64) {
        self.put(number.to_bits());
    }

    /// A number that may not be there: whether it is, and the number or zero.
    fn perhaps(&mut self, number: Option<f64>) {
        self.put(number.is_some().into());
        self.number(number.unwrap_or(0.0));
    }

    fn seen(&mut self, seen: &Seen) {
        self.number(seen.level.value());
        self.perhaps(seen.flow.map(Flow::value));
        self.number(seen.poured.value());
        self.number(seen.unclear.value());
        self.put(seen.doing as u64);
        self.put(seen.event.map_or(0, |event| event.happening as u64));
        self.number(seen.event.map_or(0.0, |event| event.clock.value()));
        self.number(seen.event.map_or(0.0, |event| event.change.value()));
    }

    fn now(&mut self, now: &Now) {
        self.seen(&now.seen);
        self.put(now.step.into());
        self.put(now.cue as u64);
        self.put(now.why as u64);
        self.perhaps(now.to_pour.map(Change::value));
        self.perhaps(now.to_wait.map(Time::value));
        self.perhaps(now.ratio.map(WaterRatio::value));
        self.perhaps(now.brewing.map(Time::value));
        self.perhaps(now.variation.map(FlowVariation::value));
    }

    fn account(&mut self, scale: &Scale) {
        let account = scale.account().expect("in range");
        let Account { poured, moved, tared, drifted, unclear, under_way } = account;
        for change in [poured, moved, tared, drifted, unclear, under_way] {
            self.number(change.value());
        }
        self.number(scale.poured_uncertainty().expect("in range").value());
    }

    /// What a brew will be, or how that is refused.
    fn outlook(&mut self, outlook: &Result<Outlook, cupwright::Error>) {
        let outlook = match outlook {
            Err(cupwright::Error::ResultOutOfRange { .. }) => {
                return self.put(cupwright_status::ResultOutOfRange as u64);
            }
            outlook => outlook.as_ref().expect("a refusal of another kind"),
        };
        self.put(cupwright_status::Ok as u64);
        for number in [
            outlook.beverage.value.value(),
            outlook.beverage.u.value(),
            outlook.strength.value.value(),
            outlook.strength.u.value(),
            outlook.counted.value.value(),
            outlook.counted.u.value(),
            outlook.correlation.value(),
            outlook.inside.value(),
        ] {
            self.number(number);
        }
    }
}

/// A brew as it was meant; the same in C and in JavaScript.
fn meant() -> Intended {
    let gram = |u| Standard::known(MassUncertainty::from_grams(u).expect("in range"));
    let dose = Dose::from_grams(15.0).expect("in range");
    let water = BrewWater::from_grams(240.0).expect("in range");
    let extracted = Yield::from_percent(20.5).expect("in range");
    let half = YieldUncertainty::from_percent(0.5).expect("in range");
    let retention = RetentionUncertainty::from_grams_per_gram(0.125).expect("in range");
    let portion = Beverage::from_grams(190.0).expect("in range");
    Intended {
        dose: Estimate::with(dose, gram(0.0625)),
        water: Estimate::with(water, gram(2.0)),
        extracted: Estimate::with(extracted, Standard::known(half)),
        losses: Losses {
            retention: ApparentRetention::from_grams_per_gram(1.375).expect("in range"),
            hold_up: HoldUp::from_grams(3.0).expect("in range"),
            paper: Paper::None,
            drips: Drips::NONE,
            vapour: Vapour::NONE,
        },
        retention: Standard::known(retention),
        other: gram(1.0),
        moisture: Moisture::from_percent(1.75).expect("in range"),
        water_solids: WaterSolids::NONE,
        held_strength: HeldStrength::STEEPED,
        portion: Estimate::exact(portion),
        added: Estimate::exact(Addition::from_grams(0.0).expect("in range")),
    }
}

/// A scale and a brew on it, as the core has them, and the lines for others.
pub struct Played<'a> {
    scale: Scale,
    follower: Follower,
    recipe: &'a [Step],
    text: &'a mut String,
}

impl<'a> Played<'a> {
    /// A brew begins.
    pub fn begin(setup: Setup, recipe: &'a [Step], text: &'a mut String) -> Self {
        let (scale, follower) = (Scale::new(setup), Follower::new(setup));
        let mut played = Self { scale, follower, recipe, text };
        let Setup { division, capacity, fastest } = setup;
        let numbers = [division.value(), capacity.value()];
        played.line(Operation::Begin, numbers, fastest.value().to_bits());
        recipe.iter().for_each(|step| played.step(step));
        played
    }

    fn line(&mut self, operation: Operation, numbers: [f64; 2], expected: u64) {
        let [a, b] = numbers.map(f64::to_bits);
        let _ = writeln!(self.text, "{} {a:x} {b:x} {expected:x}", operation as u8);
    }

    fn step(&mut self, step: &Step) {
        let (kind, numbers) = match *step {
            Step::Rinse => (StepKind::Rinse, [0.0; 2]),
            Step::Dose { dose } => (StepKind::Dose, [dose.value(), 0.0]),
            Step::Pour { to, from } => (StepKind::Pour, [to.value(), from.value()]),
            Step::Stir { from } => (StepKind::Stir, [from.value(), 0.0]),
            Step::Wait { until } => (StepKind::Wait, [until.value(), 0.0]),
            Step::Press => (StepKind::Press, [0.0; 2]),
            Step::Beverage { vessel } => (StepKind::Beverage, [vessel.value(), 0.0]),
            _ => panic!("a new kind of step: {step:?}"),
        };
        self.line(Operation::Step, numbers, kind as u64);
    }

    /// A reading; how the brew stands, and the hash of all that is answered.
    pub fn take(&mut self, clock_s: f64, reading_g: f64) -> (Now, u64) {
        let clock = Clock::from_seconds(clock_s).expect("in range");
        let reading = ScaleReading::from_grams(reading_g).expect("in range");
        let mut hash = Hash(0);
        hash.seen(&self.scale.take(clock, reading).expect("goes forward"));
        let now = self.follower.take(self.recipe, clock, reading).expect("goes forward");
        hash.now(&now);
        self.line(Operation::Take, [clock_s, reading_g], hash.0);
        (now, hash.0)
    }

    /// The next step.
    pub fn go_on(&mut self) {
        self.follower.go_on();
        self.line(Operation::GoOn, [0.0; 2], 0);
    }

    /// A reading that is refused.
    pub fn refuse(&mut self, clock_s: f64, reading_g: f64, status: cupwright_status) {
        self.line(Operation::Refused, [clock_s, reading_g], status as u64);
    }

    fn zero(&mut self, by_g: f64) {
        let by = Change::new(by_g).expect("in range");
        self.scale.zeroed(by);
        self.follower.zeroed(by);
        self.line(Operation::Zeroed, [by_g, 0.0], 0);
    }

    fn know(&mut self, dose: f64, beverage: f64, lead: f64) {
        self.follower.set_dose(Dose::new(dose).expect("in range"));
        self.follower.set_beverage(Beverage::new(beverage).expect("in range"));
        self.follower.set_lead(Lead::new(lead).expect("in range"));
        self.line(Operation::Know, [dose, beverage], lead.to_bits());
    }

    /// What is told in the end: its hash.
    pub fn tell(&mut self) -> u64 {
        let mut hash = Hash(0);
        hash.account(&self.scale);
        hash.account(self.follower.scale());
        hash.perhaps(self.follower.dose().map(Dose::value));
        hash.perhaps(self.follower.beverage().map(Beverage::value));
        hash.number(self.follower.drips().expect("in range").value());
        hash.number(self.follower.lead().value());
        let window = &verdict::HOME_BREWER_2018.window;
        let now = self.follower.so_far(&meant());
        hash.outlook(&now.and_then(|now| forecast::outlook(&now, window)));
        self.line(Operation::Told, [0.0; 2], hash.0);
        hash.0
    }
}

/// One brew: the even ones follow their recipe, and all end in confusion.
fn brew(number: u32, text: &mut String) {
    let mut random = Random(1 + 7_919 * number);
    let (division_mg, pace_ms) = match number {
        0..4 => (100, 100),
        4 => (10, 50),
        5 => (1_000, 12),
        _ => (100, [20, 200, 90, 110, 250, 60][number as usize % 6]),
    };
    let [division, capacity, fastest] = [division_mg as f64 / 1000.0, 2000.0, 15.0];
    let setup = Setup {
        division: Division::from_grams(division).expect("in range"),
        capacity: Capacity::from_grams(capacity).expect("in range"),
        fastest: FastestPour::from_grams_per_second(fastest).expect("in range"),
    };
    let recipe = if number % 4 == 3 { vec![] } else { recipe().to_vec() };
    let mut played = Played::begin(setup, &recipe, text);
    let mut script = BREW.iter().copied().filter(|_| number.is_multiple_of(2));
    let (mut clock_ms, mut level, mut left) = (0, 0, 0);
    let mut act = Act::Still;
    for reading in 0..READINGS {
        let mut clock_step = pace_ms + random.below(pace_ms / 3 + 1);
        if left == 0 {
            (act, left) = script.next().unwrap_or_else(|| {
                let act = random.act();
                (act, 8 + random.below(50) as u32)
            });
            match act {
                Act::Put(weight) => level += weight,
                Act::Gap(time) => clock_step += time,
                Act::Zero(is_told) => {
                    if is_told {
                        played.zero(level as f64 / 1000.0);
                    }
                    level = 0;
                }
                _ => {}
            }
        }
        left -= 1;
        clock_ms += clock_step;
        let mut shown = level + random.below(121) - 60;
        match act {
            Act::Pour(flow) => level += flow * clock_step / 1000,
            Act::Hand(weight) => shown += weight + random.below(2_001) - 1_000,
            Act::Knock(width) => {
                shown += random.below(width) - width / 2;
                // And a little water meanwhile.
                level += 3 * clock_step;
            }
            _ => {}
        }
        let clock = clock_ms as f64 / 1000.0;
        let shown_g = ((shown + division_mg / 2).div_euclid(division_mg) * division_mg) as f64;
        played.take(clock, shown_g / 1000.0);
        match reading {
            100 => played.refuse(clock, 1.0, cupwright_status::Impossible),
            200 => played.refuse(clock + 1.0, f64::NAN, cupwright_status::OutOfRange),
            300 => played.refuse(f64::INFINITY, 1.0, cupwright_status::OutOfRange),
            400 if number % 2 == 1 => {
                played.scale.count_anew();
                played.line(Operation::CountAnew, [0.0; 2], 0);
            }
            450 if number % 3 == 1 => {
                played.go_on();
            }
            480 if number % 3 == 2 => played.know(16.5, 230.25, 0.7),
            _ => {}
        }
    }
    played.tell();
}

/// All brews.
pub fn all() -> String {
    let mut text = String::new();
    (0..BREWS).for_each(|number| brew(number, &mut text));
    end(&mut text);
    text
}

/// Nothing more.
pub fn end(text: &mut String) {
    let _ = writeln!(text, "{} 0 0 0", Operation::End as u8);
}

#[cfg(test)]
mod tests {
    use super::*;
    use cupwright::live::{Cue, Happening};

    /// What a brew's readings bring about.
    fn heard() -> (Vec<Happening>, Vec<Cue>) {
        let (mut happened, mut cued) = (Vec::new(), Vec::new());
        for number in 0..BREWS {
            let mut text = String::new();
            brew(number, &mut text);
            let recipe = if number % 4 == 3 { vec![] } else { recipe().to_vec() };
            let mut follower = Follower::new(Setup::COMMON);
            for line in text.lines() {
                let words: Vec<&str> = line.split(' ').collect();
                let bits = |at: usize| f64::from_bits(u64::from_str_radix(words[at], 16).unwrap());
                if words[0] == (Operation::Take as u8).to_string() {
                    let clock = Clock::from_seconds(bits(1)).unwrap();
                    let reading = ScaleReading::from_grams(bits(2)).unwrap();
                    let now = follower.take(&recipe, clock, reading).unwrap();
                    happened.extend(now.seen.event.map(|event| event.happening));
                    cued.push(now.cue);
                }
            }
        }
        (happened, cued)
    }

    #[test]
    fn nearly_everything_happens() {
        let (happened, cued) = heard();
        // A fault takes a minute, and drift is slow.
        let rare = [Happening::Restless, Happening::Drifted];
        for happening in Happening::ALL.iter().filter(|one| !rare.contains(one)) {
            assert!(happened.contains(happening), "{happening:?}");
        }
        for cue in Cue::ALL {
            assert!(cued.contains(cue), "{cue:?}");
        }
    }

    #[test]
    fn every_bit_counts() {
        let hash = |numbers: [f64; 3]| {
            let mut hash = Hash(0);
            numbers.into_iter().for_each(|number| hash.number(number));
            hash.0
        };
        let all = [hash([0.1, 0.2, 0.3]), hash([0.1, 0.3, 0.2]), hash([0.1, 0.2, -0.3])];
        assert!(all[0] != all[1] && all[0] != all[2] && all[1] != all[2]);
    }
}
