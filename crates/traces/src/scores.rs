//! Followers on all traces of a family, in numbers, and the bars that they are held to.

use std::fmt::Write;

use serde::Deserialize;

use crate::family::{Family, folder, of_each};
use crate::follower::FOLLOWERS;
use crate::judge::{Verdict, play};

/// Which traces of a family.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Set {
    HeldOut,
    Tuning,
}

/// A name, unit at its end, and a number; none where there is nothing to count.
pub type Measure = (&'static str, Option<f64>);

/// One follower on one family.
pub struct Score {
    pub family: String,
    pub follower: &'static str,
    pub measures: Vec<Measure>,
}

/// What a follower must keep to in a family.
#[derive(Clone, Debug, Deserialize, PartialEq)]
#[serde(deny_unknown_fields)]
pub struct Bar {
    pub family: String,
    pub follower: String,
    pub measure: String,
    /// Most that it may be, to either side of zero.
    pub limit: f64,
}

/// Scores every follower on every family.
pub fn all(families: &[Family], set: Set) -> Result<Vec<Score>, String> {
    let one = |family: &Family| -> Result<Vec<Score>, String> {
        let [first, last] = match set {
            Set::HeldOut => family.seeds.held_out,
            Set::Tuning => family.seeds.tuning,
        };
        let score = |(follower, make): &(&'static str, _)| {
            let verdicts: Result<Vec<Verdict>, String> =
                (first..=last).map(|seed| play(family, seed, *make)).collect();
            let measures = measures(&verdicts?);
            Ok(Score { family: family.name.clone(), follower, measures })
        };
        FOLLOWERS.iter().map(score).collect()
    };
    of_each(families, one)
}

/// All verdicts of a family in numbers.
fn measures(verdicts: &[Verdict]) -> Vec<Measure> {
    let pooled = |of: fn(&Verdict) -> &Vec<f64>| -> Vec<f64> {
        verdicts.iter().flat_map(|verdict| of(verdict).iter().copied()).collect()
    };
    let total = |of: fn(&Verdict) -> usize| Some(verdicts.iter().map(of).sum::<usize>() as f64);
    let starts = pooled(|v| &v.start_delays_s);
    let halves = pooled(|v| &v.half_delays_s);
    let mosts = pooled(|v| &v.most_delays_s);
    let waters: Vec<f64> = verdicts.iter().map(|verdict| verdict.water_error_g).collect();
    let beyond: Vec<bool> = verdicts
        .iter()
        .filter_map(|verdict| Some(verdict.water_error_g > 2.0 * verdict.u_water_g?))
        .collect();
    let overs = pooled(|v| &v.overshoots_g);
    let strays: Vec<f64> = overs.iter().map(|grams| grams.abs()).collect();
    let samples = total(|v| v.samples);
    let answers = total(|v| v.answers);
    vec![
        ("pours_happened", total(|v| v.pours.happened)),
        ("pours_missed", total(|v| v.pours.missed)),
        ("pours_spurious", total(|v| v.pours.spurious)),
        ("handling_happened", total(|v| v.handling.happened)),
        ("handling_missed", total(|v| v.handling.missed)),
        ("handling_spurious", total(|v| v.handling.spurious)),
        ("start_median_s", quantile(&starts, 0.5)),
        ("start_95_s", quantile(&starts, 0.95)),
        ("start_worst_s", quantile(&starts, 1.0)),
        ("half_median_s", quantile(&halves, 0.5)),
        ("most_median_s", quantile(&mosts, 0.5)),
        ("flow_rms_g_s", rms(&pooled(|v| &v.flow_errors))),
        ("steady_rms_g_s", rms(&pooled(|v| &v.steady_errors))),
        ("water_median_g", quantile(&waters, 0.5)),
        ("water_95_g", quantile(&waters, 0.95)),
        ("water_worst_g", quantile(&waters, 1.0)),
        ("water_beyond_pct", share(&beyond)),
        ("overshoot_median_g", quantile(&overs, 0.5)),
        ("overshoot_95_g", quantile(&strays, 0.95)),
        ("silent_pct", answers.zip(samples).map(|(a, s)| 100.0 * (1.0 - a / s))),
    ]
}

/// The least value that a share of all lies at or below.
fn quantile(values: &[f64], share: f64) -> Option<f64> {
    let mut sorted = values.to_vec();
    sorted.sort_by(f64::total_cmp);
    let rank = libm::ceil(share * sorted.len() as f64) as usize;
    sorted.get(rank.max(1) - 1).copied()
}

/// How many of all, in percent.
fn share(all: &[bool]) -> Option<f64> {
    let so = all.iter().filter(|is_so| **is_so).count();
    (!all.is_empty()).then(|| 100.0 * so as f64 / all.len() as f64)
}

fn rms(values: &[f64]) -> Option<f64> {
    let squares: f64 = values.iter().map(|x| x * x).sum();
    (!values.is_empty()).then(|| libm::sqrt(squares / values.len() as f64))
}

impl Score {
    fn measure(&self, name: &str) -> Option<Measure> {
        self.measures.iter().find(|(of, _)| *of == name).copied()
    }

    /// A number for the table, of some measures.
    fn cell(&self, names: &[&str], digits: usize) -> String {
        let number = |name: &&str| match self.measure(name) {
            Some((_, Some(value))) => format!("{value:.digits$}"),
            _ => "–".to_string(),
        };
        names.iter().map(number).collect::<Vec<_>>().join(" / ")
    }
}

/// What stands above the table.
const HEAD: &str = "\
# Scores

Made by `cargo xtask live`; `cargo xtask test` compares. All traces are invented: families and seeds are in
`families`, what the numbers of a world mean in `base`. These are the held-out seeds, on which nothing was
tuned.

- **pours**: starts and stops missed / spurious. A start counts from 0.2 s before to 1.5 s after water
  arrives at more than 0.5 g/s, a stop from 0.5 s before to 1.5 s after it last does.
- **handling**: tares, things put down, taken off and put back, missed / spurious.
- **start**: from water arriving to hearing of it, s: median / 95 % / worst.
- **50 %, 90 %**: median delay of the flow at these shares of the pour's, s.
- **rms**: error of the flow, g/s: all samples / within pours, from 1.5 s after the start to 1 s before the stop.
- **water**: error of the water at the end, g: median / 95 % / worst.
- **beyond**: traces where that error is more than two of the standard uncertainties that were told of it, %.
- **overshoot**: what arrived past the aim, g: median / 95 % to either side. Without a cue a hand stops 30 g late.
- **silent**: samples without a flow, %.
";

/// The table of all scores, family by family.
pub fn table(families: &[Family], scores: &[Score]) -> String {
    let mut text = HEAD.to_string();
    for family in families {
        let of_family = || scores.iter().filter(|score| score.family == family.name);
        let count = |name| of_family().next().map_or("–".to_string(), |s| s.cell(&[name], 0));
        let [first, last] = family.seeds.held_out;
        // Writing to a string does not fail.
        let _ = write!(
            text,
            "\n## {}\n\n{}{}; {} traces, {} starts and stops, {} of handling\n\n\
             | follower | pours | handling | start | 50 % | 90 % | rms | water | beyond | overshoot | silent |\n\
             |-|-|-|-|-|-|-|-|-|-|-|\n",
            family.name,
            family.about,
            if family.strict { "" } else { " (not strict)" },
            last - first + 1,
            count("pours_happened"),
            count("handling_happened"),
        );
        for score in of_family() {
            let cells = [
                score.cell(&["pours_missed", "pours_spurious"], 0),
                score.cell(&["handling_missed", "handling_spurious"], 0),
                score.cell(&["start_median_s", "start_95_s", "start_worst_s"], 2),
                score.cell(&["half_median_s"], 2),
                score.cell(&["most_median_s"], 2),
                score.cell(&["flow_rms_g_s", "steady_rms_g_s"], 3),
                score.cell(&["water_median_g", "water_95_g", "water_worst_g"], 2),
                score.cell(&["water_beyond_pct"], 0),
                score.cell(&["overshoot_median_g", "overshoot_95_g"], 2),
                score.cell(&["silent_pct"], 1),
            ];
            let _ = writeln!(text, "| {} | {} |", score.follower, cells.join(" | "));
        }
    }
    text
}

/// The bars of the corpus.
pub fn bars() -> Result<Vec<Bar>, String> {
    #[derive(Deserialize)]
    #[serde(deny_unknown_fields)]
    struct File {
        bar: Vec<Bar>,
    }
    let path = folder().join("bars.toml");
    let fail = |error: &dyn std::fmt::Display| format!("{}: {error}", path.display());
    let text = std::fs::read_to_string(&path).map_err(|error| fail(&error))?;
    toml::from_str::<File>(&text).map(|file| file.bar).map_err(|error| fail(&error))
}

/// What is wrong with scores, bar by bar: past its limit, or nothing that could be.
pub fn fallen(bars: &[Bar], scores: &[Score]) -> Vec<String> {
    let of = |bar: &Bar| {
        let Bar { family, follower, measure, limit } = bar;
        let found = scores
            .iter()
            .find(|score| score.family == *family && score.follower == follower)
            .and_then(|score| score.measure(measure));
        let what = match found {
            None => "there is no such score".to_string(),
            Some((_, None)) => "there is nothing to count".to_string(),
            // A value that is not a number is past every limit.
            Some((_, Some(value))) if value.abs() <= *limit => return None,
            Some((_, Some(value))) => format!("{value} is past {limit}"),
        };
        Some(format!("{family}, {follower}, {measure}: {what}"))
    };
    bars.iter().filter_map(of).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::judge::Tally;

    #[test]
    fn quantiles_by_rank() {
        let values: Vec<f64> = (1..=20).rev().map(f64::from).collect();
        assert_eq!(quantile(&values, 0.5), Some(10.0));
        assert_eq!(quantile(&values, 0.95), Some(19.0));
        assert_eq!(quantile(&values, 1.0), Some(20.0));
        assert_eq!(quantile(&[3.0], 0.5), Some(3.0));
        assert_eq!(quantile(&[], 0.5), None);
    }

    fn scored() -> Vec<Score> {
        let verdict = |missed, water_error_g, error| Verdict {
            pours: Tally { happened: 8, missed, spurious: 0 },
            flow_errors: vec![error],
            samples: 4,
            answers: 3,
            water_error_g,
            ..Verdict::default()
        };
        let measures = measures(&[verdict(1, 0.5, 3.0), verdict(2, 0.25, -4.0)]);
        vec![Score { family: "some".to_string(), follower: "one", measures }]
    }

    #[test]
    fn verdicts_add_up() {
        let scores = scored();
        let measure = |name| scores[0].measure(name).unwrap().1;
        assert_eq!(measure("pours_happened"), Some(16.0));
        assert_eq!(measure("pours_missed"), Some(3.0));
        assert_eq!(measure("water_worst_g"), Some(0.5));
        assert_eq!(measure("flow_rms_g_s"), Some(libm::sqrt(12.5)));
        assert_eq!(measure("silent_pct"), Some(25.0));
        assert_eq!(measure("overshoot_median_g"), None);
    }

    #[test]
    fn a_bar_falls_where_it_is_passed_or_cannot_be_seen() {
        let bar = |family: &str, measure: &str, limit| Bar {
            family: family.to_string(),
            follower: "one".to_string(),
            measure: measure.to_string(),
            limit,
        };
        let scores = scored();
        assert_eq!(fallen(&[bar("some", "pours_missed", 3.0)], &scores), [""; 0]);
        for (bar, words) in [
            (bar("some", "pours_missed", 2.0), "pours_missed: 3 is past 2"),
            (bar("some", "pours_mist", 9.0), "there is no such score"),
            (bar("other", "pours_missed", 9.0), "there is no such score"),
            (bar("some", "overshoot_median_g", 9.0), "there is nothing to count"),
            (bar("some", "pours_missed", f64::NAN), "past NaN"),
        ] {
            let fallen = fallen(&[bar], &scores);
            assert!(fallen[0].ends_with(words), "{fallen:?}");
        }
    }
}
