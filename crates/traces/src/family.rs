//! Families of traces as data: settings with ranges, a script of actions, seeds.
//!
//! A file of `tests/traces/families` names the base whose settings it starts from, overrides some,
//! and tells what is done. Nothing of a trace is stored: a family and a seed make it anew.

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};

use serde::Deserialize;

use crate::STEPS_PER_S;
use crate::draw::{Dice, Number};
use crate::hand::Habit;
use crate::stream::Fall;
use crate::touch::Touch;

/// Every setting with the range it may be drawn from.
const SETTINGS: [(&str, f64, f64); 39] = [
    ("hand.ramp_up_s", 0.0, 5.0),
    ("hand.ramp_down_s", 0.0, 5.0),
    ("hand.wobble_pct", 0.0, 100.0),
    ("hand.wobble_hz", 0.1, 10.0),
    ("hand.reaction_s", 0.0, 2.0),
    ("hand.reaction_sd_s", 0.0, 0.5),
    ("stream.height_cm", 0.0, 100.0),
    ("stream.exit_m_s", 0.0, 3.0),
    ("stream.splash_pct", 0.0, 50.0),
    ("stream.spatter_pct", 0.0, 500.0),
    ("stream.slosh_g", 0.0, 10.0),
    ("stream.slosh_hz", 0.5, 20.0),
    ("stream.slosh_damping", 0.001, 0.9),
    ("stream.evaporation_g_s", 0.0, 0.1),
    ("touch.move_s", 0.0, 2.0),
    ("touch.bump_pct", 0.0, 100.0),
    ("touch.tremor_pct", 0.0, 50.0),
    ("touch.tremor_hz", 1.0, 20.0),
    ("touch.stir_hz", 0.2, 10.0),
    ("touch.knock_decay_s", 0.001, 2.0),
    ("touch.knock_hz", 0.0, 100.0),
    ("sensor.rate_hz", 1.0, 400.0),
    ("sensor.converter_hz", 1.0, 400.0),
    ("sensor.natural_hz", 0.0, 60.0),
    ("sensor.damping", 0.01, 0.99),
    ("sensor.creep_pct", 0.0, 1.0),
    ("sensor.creep_s", 0.1, 1e4),
    ("sensor.noise_g", 0.0, 10.0),
    ("sensor.flicker_g", 0.0, 10.0),
    ("sensor.hum_g", 0.0, 10.0),
    ("sensor.hum_hz", 1.0, 100.0),
    ("sensor.warm_up_g", -10.0, 10.0),
    ("sensor.warm_up_s", 1.0, 1e5),
    ("sensor.count_g", 0.0, 1.0),
    ("sensor.step_g", 0.001, 10.0),
    ("sensor.capacity_g", 100.0, 1e5),
    ("sensor.overload_is_nan", 0.0, 1.0),
    ("line.uneven_pct", 0.0, 45.0),
    ("line.late_pct", 0.0, 90.0),
];
/// Settings of how much is lost, which every trace may do without.
const LOSSES: [(&str, f64, f64); 2] =
    [("line.missing_pct", 0.0, 90.0), ("line.bad_pct", 0.0, 90.0)];

/// Traces of one kind.
pub struct Family {
    pub name: String,
    /// What is special about them.
    pub about: String,
    /// Pours of a second and more, pauses of 1.5 s and more, and nothing that hides them.
    pub strict: bool,
    pub seeds: Seeds,
    settings: Settings,
    script: Vec<Action>,
}

/// First and last seed of the traces that scores are made from, and of those for tuning.
#[derive(Clone, Copy, Debug, Deserialize, PartialEq)]
#[serde(deny_unknown_fields)]
pub struct Seeds {
    pub held_out: [u64; 2],
    pub tuning: [u64; 2],
}

/// Every setting by its name.
#[derive(Clone, Debug, PartialEq)]
pub struct Settings(BTreeMap<String, Number>);

/// What is done, with ranges.
#[derive(Clone, Debug, Deserialize)]
#[serde(tag = "do", rename_all = "snake_case", deny_unknown_fields)]
pub enum Action {
    /// Has stood on the scale since long before, and was tared; only before anything else.
    Stands {
        grams: Number,
    },
    Wait {
        seconds: Number,
    },
    /// So many grams leave the kettle.
    Pour {
        grams: Number,
        flow_g_s: Number,
    },
    /// The hand waits for a cue at which so many grams more will have arrived.
    PourToCue {
        grams: Number,
        flow_g_s: Number,
    },
    Drip {
        seconds: Number,
        flow_g_s: Number,
    },
    Tare,
    Place {
        grams: Number,
    },
    /// Takes so much off, or everything.
    Remove {
        grams: Option<Number>,
    },
    /// Takes so much off, or everything, to put it back.
    Lift {
        grams: Option<Number>,
    },
    /// Puts back what was lifted, less what has dripped out of it.
    Return {
        dripped_g: Option<Number>,
    },
    Press {
        newtons: Number,
        seconds: Number,
    },
    Stir {
        grams: Number,
        seconds: Number,
    },
    /// The table is knocked while what comes next goes on.
    Knock {
        after_s: Number,
        grams: Number,
    },
    /// No samples arrive while what comes next goes on.
    Gap {
        after_s: Number,
        seconds: Number,
    },
    /// So many samples are bad while what comes next goes on.
    Bad {
        after_s: Number,
        samples: Number,
    },
    Repeat {
        times: Number,
        script: Vec<Action>,
    },
    AnyOf {
        of: Vec<Action>,
    },
}

/// What is done, with numbers drawn.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Step {
    Stands { grams: f64 },
    Wait { seconds: f64 },
    Pour { grams: f64, flow_g_s: f64 },
    PourToCue { grams: f64, flow_g_s: f64 },
    Drip { seconds: f64, flow_g_s: f64 },
    Tare,
    Place { grams: f64 },
    Remove { grams: Option<f64> },
    Lift { grams: Option<f64> },
    Return { dripped_g: f64 },
    Press { newtons: f64, seconds: f64 },
    Stir { grams: f64, seconds: f64 },
    Knock { after_s: f64, grams: f64 },
    Gap { after_s: f64, seconds: f64 },
    Bad { after_s: f64, samples: u32 },
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct File {
    about: String,
    base: String,
    strict: bool,
    seeds: Seeds,
    #[serde(default)]
    settings: BTreeMap<String, BTreeMap<String, Number>>,
    script: Vec<Action>,
}

/// The folder of the corpus in the workspace: families, bases, bars and scores.
pub fn folder() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../../tests/traces")
}

/// What is made of every family, a thread for each, in their order.
pub fn of_each<T: Send>(
    families: &[Family],
    one: impl Fn(&Family) -> Result<Vec<T>, String> + Sync,
) -> Result<Vec<T>, String> {
    std::thread::scope(|scope| {
        let one = &one;
        let started: Vec<_> =
            families.iter().map(|family| scope.spawn(move || one(family))).collect();
        let mut made = Vec::new();
        for thread in started {
            made.extend(thread.join().map_err(|_| "a family's thread broke off".to_string())??);
        }
        Ok(made)
    })
}

impl Family {
    /// Every family of the corpus, in the order of their names.
    pub fn all() -> Result<Vec<Self>, String> {
        let folder = folder().join("families");
        let fail = |error: std::io::Error| format!("{}: {error}", folder.display());
        let mut paths = Vec::new();
        for entry in std::fs::read_dir(&folder).map_err(fail)? {
            paths.push(entry.map_err(fail)?.path());
        }
        paths.retain(|path| path.extension().is_some_and(|e| e == "toml"));
        paths.sort();
        paths.iter().map(|path| Self::read(path)).collect()
    }

    /// A family from its file.
    pub fn read(path: &Path) -> Result<Self, String> {
        let load = |path: &Path| {
            std::fs::read_to_string(path).map_err(|error| format!("{}: {error}", path.display()))
        };
        let name = path.file_stem().unwrap_or_default().to_string_lossy().into_owned();
        let text = load(path)?;
        let base = |base: &str| load(&folder().join(format!("base/{base}.toml")));
        Self::parse(&name, &text, base).map_err(|what| format!("{}: {what}", path.display()))
    }

    /// A family from its text and a way to the text of its base.
    pub fn parse(
        name: &str,
        text: &str,
        base: impl Fn(&str) -> Result<String, String>,
    ) -> Result<Self, String> {
        let file: File = toml::from_str(text).map_err(|error| error.to_string())?;
        let base: BTreeMap<String, BTreeMap<String, Number>> =
            toml::from_str(&base(&file.base)?).map_err(|error| format!("base: {error}"))?;
        let mut settings = flat(base);
        settings.extend(flat(file.settings));
        let settings = Settings(settings);
        settings.check()?;
        if file.script.is_empty() {
            return Err("script: nothing is done".to_string());
        }
        file.script.iter().try_for_each(Action::check)?;
        if file.script.iter().skip(1).any(Action::has_something_standing) {
            return Err("script: what stands there comes before anything else".to_string());
        }
        let Seeds { held_out: [a, b], tuning: [c, d] } = file.seeds;
        if a > b || c > d {
            return Err("seeds: the first comes before the last".to_string());
        }
        if a <= d && c <= b {
            return Err("seeds: held-out traces must not be tuned on".to_string());
        }
        Ok(Self {
            name: name.to_string(),
            about: file.about,
            strict: file.strict,
            seeds: file.seeds,
            settings,
            script: file.script,
        })
    }

    /// The settings of every trace.
    pub fn settings(&self) -> &Settings {
        &self.settings
    }

    /// A stream of random numbers of one trace of this family, for a purpose.
    pub fn dice(&self, seed: u64, purpose: &str) -> Dice {
        Dice::new(seed, &format!("{}: {purpose}", self.name))
    }

    /// The script of one trace.
    pub fn steps(&self, seed: u64) -> Vec<Step> {
        let mut steps = Vec::new();
        let mut dice = self.dice(seed, "script");
        self.script.iter().for_each(|action| action.draw(&mut dice, &mut steps));
        steps
    }
}

fn flat(sections: BTreeMap<String, BTreeMap<String, Number>>) -> BTreeMap<String, Number> {
    let entries = sections.into_iter().flat_map(|(section, entries)| {
        entries.into_iter().map(move |(key, number)| (format!("{section}.{key}"), number))
    });
    entries.collect()
}

impl Settings {
    fn check(&self) -> Result<(), String> {
        let known = || SETTINGS.iter().chain(&LOSSES);
        if let Some(name) = self.0.keys().find(|name| known().all(|(known, ..)| known != name)) {
            return Err(format!("{name}: there is no such setting"));
        }
        for (name, lowest, highest) in known() {
            let number = self.0.get(*name).ok_or_else(|| format!("{name} is missing"))?;
            number.within(name, *lowest, *highest)?;
        }
        Ok(())
    }

    /// Draws a setting.
    pub fn draw(&self, name: &str, dice: &mut Dice) -> f64 {
        let number = self.0.get(name).unwrap_or_else(|| panic!("{name}: no such setting"));
        number.draw(dice)
    }

    /// A hand for one pour. Its reaction scatters normally, and is never quicker than half its
    /// mean.
    pub fn habit(&self, dice: &mut Dice) -> Habit {
        let mean_s = self.draw("hand.reaction_s", dice);
        let reaction_s = mean_s + self.draw("hand.reaction_sd_s", dice) * dice.normal();
        Habit {
            ramp_up_s: self.draw("hand.ramp_up_s", dice),
            ramp_down_s: self.draw("hand.ramp_down_s", dice),
            wobble_pct: self.draw("hand.wobble_pct", dice),
            wobble_hz: self.draw("hand.wobble_hz", dice),
            reaction_s: libm::fmax(reaction_s, mean_s / 2.0),
        }
    }

    /// How water falls in one trace.
    pub fn fall(&self, dice: &mut Dice) -> Fall {
        Fall {
            height_cm: self.draw("stream.height_cm", dice),
            exit_m_s: self.draw("stream.exit_m_s", dice),
            splash_pct: self.draw("stream.splash_pct", dice),
            spatter_pct: self.draw("stream.spatter_pct", dice),
            slosh_g: self.draw("stream.slosh_g", dice),
            slosh_hz: self.draw("stream.slosh_hz", dice),
            slosh_damping: self.draw("stream.slosh_damping", dice),
        }
    }

    /// A mass put down, or taken off with a minus.
    pub fn moved(&self, grams: f64, dice: &mut Dice) -> Touch {
        let over_s = self.draw("touch.move_s", dice);
        Touch::Move { grams, over_s, bump_pct: self.draw("touch.bump_pct", dice) }
    }

    /// A hand that presses.
    pub fn press(&self, newtons: f64, over_s: f64, dice: &mut Dice) -> Touch {
        let tremor_pct = self.draw("touch.tremor_pct", dice);
        Touch::press(newtons, over_s, tremor_pct, self.draw("touch.tremor_hz", dice))
    }

    /// A spoon that goes round.
    pub fn stir(&self, grams: f64, over_s: f64, dice: &mut Dice) -> Touch {
        Touch::Stir { grams, over_s, hz: self.draw("touch.stir_hz", dice) }
    }

    /// A knock on the table.
    pub fn knock(&self, grams: f64, dice: &mut Dice) -> Touch {
        let decay_s = self.draw("touch.knock_decay_s", dice);
        Touch::Knock { grams, decay_s, hz: self.draw("touch.knock_hz", dice) }
    }
}

/// A converter works in whole steps of the simulation.
pub fn steps_per_conversion(converter_hz: f64) -> Result<u64, String> {
    let steps = f64::from(STEPS_PER_S) / converter_hz;
    if steps < 1.0 || libm::floor(steps) != steps {
        return Err(format!("sensor.converter_hz: {STEPS_PER_S} is no multiple of {converter_hz}"));
    }
    Ok(steps as u64)
}

impl Action {
    fn has_something_standing(&self) -> bool {
        match self {
            Self::Stands { .. } => true,
            Self::Repeat { script, .. } => script.iter().any(Self::has_something_standing),
            Self::AnyOf { of } => of.iter().any(Self::has_something_standing),
            _ => false,
        }
    }

    fn check(&self) -> Result<(), String> {
        let seconds = |number: &Number| number.within("seconds", 0.0, 1e5);
        let after = |number: &Number| number.within("after_s", 0.0, 1e4);
        let grams = |number: &Number| number.within("grams", 0.0, 1e4);
        let flow = |number: &Number| number.within("flow_g_s", 0.01, 30.0);
        match self {
            Self::Wait { seconds: s } => seconds(s),
            Self::Pour { grams: g, flow_g_s } | Self::PourToCue { grams: g, flow_g_s } => {
                grams(g)?;
                flow(flow_g_s)
            }
            Self::Drip { seconds: s, flow_g_s } => {
                seconds(s)?;
                flow_g_s.within("flow_g_s", 0.0, crate::label::POURING_G_S)
            }
            Self::Tare => Ok(()),
            Self::Place { grams: g } | Self::Stands { grams: g } => grams(g),
            Self::Remove { grams: g } | Self::Lift { grams: g } => g.as_ref().map_or(Ok(()), grams),
            Self::Return { dripped_g: g } => g.as_ref().map_or(Ok(()), grams),
            Self::Press { newtons, seconds: s } => {
                newtons.within("newtons", 0.0, 500.0)?;
                seconds(s)
            }
            Self::Stir { grams: g, seconds: s } => {
                grams(g)?;
                seconds(s)
            }
            Self::Knock { after_s, grams: g } => {
                after(after_s)?;
                grams(g)
            }
            Self::Gap { after_s, seconds: s } => {
                after(after_s)?;
                seconds(s)
            }
            Self::Bad { after_s, samples } => {
                after(after_s)?;
                samples.within("samples", 0.0, 1e3)
            }
            Self::Repeat { times, script } => {
                times.within("times", 0.0, 1e4)?;
                script.iter().try_for_each(Self::check)
            }
            Self::AnyOf { of } if of.is_empty() => Err("any_of: nothing to choose".to_string()),
            Self::AnyOf { of } => of.iter().try_for_each(Self::check),
        }
    }

    fn draw(&self, dice: &mut Dice, steps: &mut Vec<Step>) {
        let perhaps = |number: &Option<Number>, dice: &mut Dice| {
            number.as_ref().map(|number| number.draw(dice))
        };
        steps.push(match self {
            Self::Stands { grams } => Step::Stands { grams: grams.draw(dice) },
            Self::Wait { seconds } => Step::Wait { seconds: seconds.draw(dice) },
            Self::Pour { grams, flow_g_s } => {
                Step::Pour { grams: grams.draw(dice), flow_g_s: flow_g_s.draw(dice) }
            }
            Self::PourToCue { grams, flow_g_s } => {
                Step::PourToCue { grams: grams.draw(dice), flow_g_s: flow_g_s.draw(dice) }
            }
            Self::Drip { seconds, flow_g_s } => {
                Step::Drip { seconds: seconds.draw(dice), flow_g_s: flow_g_s.draw(dice) }
            }
            Self::Tare => Step::Tare,
            Self::Place { grams } => Step::Place { grams: grams.draw(dice) },
            Self::Remove { grams } => Step::Remove { grams: perhaps(grams, dice) },
            Self::Lift { grams } => Step::Lift { grams: perhaps(grams, dice) },
            Self::Return { dripped_g } => {
                Step::Return { dripped_g: perhaps(dripped_g, dice).unwrap_or_default() }
            }
            Self::Press { newtons, seconds } => {
                Step::Press { newtons: newtons.draw(dice), seconds: seconds.draw(dice) }
            }
            Self::Stir { grams, seconds } => {
                Step::Stir { grams: grams.draw(dice), seconds: seconds.draw(dice) }
            }
            Self::Knock { after_s, grams } => {
                Step::Knock { after_s: after_s.draw(dice), grams: grams.draw(dice) }
            }
            Self::Gap { after_s, seconds } => {
                Step::Gap { after_s: after_s.draw(dice), seconds: seconds.draw(dice) }
            }
            Self::Bad { after_s, samples } => Step::Bad {
                after_s: after_s.draw(dice),
                samples: libm::round(samples.draw(dice)) as u32,
            },
            Self::Repeat { times, script } => {
                let times = libm::round(times.draw(dice)) as u32;
                for _ in 0..times {
                    script.iter().for_each(|action| action.draw(dice, steps));
                }
                return;
            }
            Self::AnyOf { of } => return dice.one_of(of).draw(dice, steps),
        });
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::testing::base;
    use crate::world::World;

    const GOOD: &str = r#"
        about = "a test"
        base = "plain"
        strict = true
        seeds = { held_out = [1, 2], tuning = [3, 4] }
        script = [{ do = "repeat", times = 3, script = [{ do = "wait", seconds = [1, 2] }] }]
        [settings.sensor]
        noise_g = 0.02
    "#;

    #[test]
    fn a_file_overrides_its_base_and_draws_by_seed() {
        let family = Family::parse("good", GOOD, base).unwrap();
        let dice = &mut Dice::new(1, "test");
        assert_eq!(family.settings().draw("sensor.noise_g", dice), 0.02);
        assert_eq!(family.settings().draw("sensor.step_g", dice), 0.1);
        let steps = family.steps(1);
        assert_eq!(steps.len(), 3);
        assert_eq!(steps, family.steps(1));
        assert_ne!(steps, family.steps(2));
        assert_ne!(steps[0], steps[1]);
    }

    #[test]
    fn bad_files_are_refused_with_what_is_wrong() {
        let refused = |from: &str, to: &str| {
            assert!(GOOD.contains(from), "{from}");
            let text = GOOD.replace(from, to).replace("STANDS", r#"{ do = "stands", grams = 1 }"#);
            Family::parse("bad", &text, base).err().expect(to)
        };
        for (from, to, words) in [
            ("noise_g = 0.02", "noise_g = -1", "sensor.noise_g: -1 is outside 0 to 10"),
            ("noise_g = 0.02", "nose_g = 1", "sensor.nose_g: there is no such setting"),
            ("[1, 2] }] }]", "[-1, 2] }] }]", "seconds: -1 is outside 0 to 100000"),
            ("[{ do = \"repeat\"", "[{ do = \"tare\" }, STANDS, { do = \"repeat\"", "comes before"),
            ("tuning = [3, 4]", "tuning = [2, 4]", "held-out traces must not be tuned on"),
            ("held_out = [1, 2]", "held_out = [2, 1]", "the first comes before the last"),
            ("\"wait\"", "\"wate\"", "unknown variant `wate`"),
            ("\"plain\"", "\"plane\"", "plane.toml"),
            ("about =", "abuot =", "unknown field `abuot`"),
        ] {
            let error = refused(from, to);
            assert!(error.contains(words), "{to}: {error}");
        }
    }

    #[test]
    fn the_corpus_is_large_and_every_trace_can_be_set_up() {
        let families = Family::all().unwrap();
        let (mut held_out, mut tuning) = (0, 0);
        for family in &families {
            let Seeds { held_out: [a, b], tuning: [c, d] } = family.seeds;
            held_out += b - a + 1;
            tuning += d - c + 1;
            for seed in (a..=b).chain(c..=d) {
                let refused = World::new(family, seed).err();
                assert_eq!(refused, None, "{} {seed}", family.name);
            }
        }
        assert!(families.len() >= 30, "{}", families.len());
        assert!(held_out >= 200 && tuning >= 200, "{held_out}, {tuning}");
    }
}
