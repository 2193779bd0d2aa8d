//! The two ways of fitting against certified data sets: NIST's Statistical Reference Datasets, in
//! `tests/vectors/nist_strd`. Prints how many digits agree:
//!
//! ```text
//! cargo test -p cupwright certified -- --nocapture
//!
//! data set  start  digits of each parameter          of its standard deviation
//! Norris       -   12.8  14.4                        13.5  13.5
//! Misra1a      1   11.3  11.1                        10.8  11.6
//!              2   11.3  11.1                        10.8  11.6
//! BoxBOD       1   11.7  11.8                        10.4  12.2
//!              2   11.7  11.8                        10.4  12.2
//! Chwirut2     1   10.9  11.3  10.9                  11.1  11.2  11.0
//!              2   10.9  11.3  10.9                  11.1  11.2  11.0
//! MGH17        1   11.1  11.2  11.0  11.4  10.8      10.6  10.7  10.9  11.3  11.3
//!              2   11.1  11.2  11.0  11.4  10.8      10.6  10.7  10.9  11.3  11.3
//! ```
//!
//! Norris is certified to 15 digits, the others to 11: 10.3 is all that can agree.

extern crate std;

use core::cell::Cell;
use std::vec::Vec;

use super::curve::{self, Curve};
use super::line::Line;
use crate::math::{exp, sqrt, square};

/// A certified data set.
struct Certified {
    points: Vec<(f64, f64)>,
    /// Value and standard deviation of each parameter.
    parameters: Vec<(f64, f64)>,
    starts: Vec<Vec<f64>>,
    /// Residual sum of squares.
    squares: f64,
}

impl Certified {
    fn read(text: &str) -> Self {
        let lines = |word: &'static str| {
            text.lines().filter_map(move |line| line.strip_prefix(word)).map(|rest| {
                rest.split_whitespace().map(|x| x.parse().unwrap()).collect::<Vec<f64>>()
            })
        };
        let pair = |of: Vec<f64>| <[f64; 2]>::try_from(of).unwrap().into();
        Self {
            points: lines("point").map(pair).collect(),
            parameters: lines("certified").map(pair).collect(),
            starts: lines("start").collect(),
            squares: lines("squares").flatten().sum(),
        }
    }

    /// Prints the digits that agree and gives the fewest: of the parameters, of the deviations.
    fn compare(&self, name: &str, start: usize, got: &[(f64, f64)]) -> (f64, f64) {
        assert_eq!(got.len(), self.parameters.len());
        let each = |of: fn(&(f64, f64)) -> f64| -> Vec<f64> {
            got.iter().zip(&self.parameters).map(|(g, c)| digits(of(g), of(c))).collect()
        };
        let (values, deviations) = (each(|x| x.0), each(|x| x.1));
        std::println!("{name:9}  {start}  {values:5.1?}  {deviations:5.1?}");
        let fewest = |of: Vec<f64>| of.into_iter().fold(16.0, crate::math::min);
        (fewest(values), fewest(deviations))
    }

    /// Fits from every certified start; the fewest digits of parameters and of deviations. How often the
    /// model is looked at is what a fit costs: the same on every target, as all bits are.
    fn fit<const P: usize>(
        &self,
        name: &str,
        at: impl Fn(f64, &[f64; P]) -> (f64, [f64; P]),
        wanted: [u32; 2],
    ) -> (f64, f64) {
        let mut fewest = (16.0, 16.0);
        let at = &at;
        let looks = Cell::new(0);
        let model = |parameters: &[f64; P]| {
            looks.set(looks.get() + 1);
            let parameters = *parameters;
            move |x| at(x, &parameters)
        };
        let mut taken = Vec::new();
        for (number, start) in self.starts.iter().enumerate() {
            looks.set(0);
            let start = start.clone().try_into().unwrap();
            let Curve { parameters, covariance } =
                curve::fit(self.points.iter().copied(), start, model)
                    .unwrap_or_else(|| panic!("{name} from start {} does not settle", number + 1));
            taken.push(looks.get());
            let off = |&(x, y): &(f64, f64)| square(y - at(x, &parameters).0);
            let squares = self.points.iter().map(off).sum::<f64>();
            assert!(digits(squares, self.squares) > 8.0, "{name}: {squares}");
            let s2 = squares / (self.points.len() - P) as f64;
            let got: Vec<_> =
                (0..P).map(|i| (parameters[i], sqrt(s2 * covariance[i][i]))).collect();
            let (values, deviations) = self.compare(name, number + 1, &got);
            fewest = (crate::math::min(fewest.0, values), crate::math::min(fewest.1, deviations));
        }
        assert_eq!(taken, wanted, "{name}: looks at the model");
        fewest
    }
}

/// Digits that agree: −log10 of the relative difference, 16 for none.
fn digits(got: f64, certified: f64) -> f64 {
    let relative = ((got - certified) / certified).abs();
    if relative == 0.0 { 16.0 } else { -crate::math::ln(relative) / core::f64::consts::LN_10 }
}

#[test]
fn certified_norris() {
    let data = Certified::read(include_str!("../../nist_strd/norris.txt"));
    let points = data.points.iter().copied();
    let line = Line::of(points.clone()).unwrap();
    let squares = points.clone().map(|(x, y)| square(y - line.at(x))).sum::<f64>();
    let s2 = squares / (data.points.len() - 2) as f64;
    let got = [
        (line.intercept, sqrt(s2 * line.leverage(0.0))),
        (line.slope, sqrt(s2 * line.slope_variance())),
    ];
    let (values, deviations) = data.compare("Norris", 0, &got);
    assert!(values > 12.0 && deviations > 12.0);
}

fn levelling_off(x: f64, [b1, b2]: &[f64; 2]) -> (f64, [f64; 2]) {
    let left = exp(-b2 * x);
    (b1 * (1.0 - left), [1.0 - left, b1 * x * left])
}

#[test]
fn certified_misra1a() {
    let data = Certified::read(include_str!("../../nist_strd/misra1a.txt"));
    let fewest = data.fit("Misra1a", levelling_off, [49, 33]);
    assert!(fewest.0 > 10.0 && fewest.1 > 10.0, "{fewest:?}");
}

#[test]
fn certified_boxbod() {
    let data = Certified::read(include_str!("../../nist_strd/boxbod.txt"));
    let fewest = data.fit("BoxBOD", levelling_off, [42, 31]);
    assert!(fewest.0 > 10.0 && fewest.1 > 10.0, "{fewest:?}");
}

#[test]
fn certified_chwirut2() {
    let data = Certified::read(include_str!("../../nist_strd/chwirut2.txt"));
    let fewest = data.fit(
        "Chwirut2",
        |x, [b1, b2, b3]| {
            let below = b2 + b3 * x;
            let y = exp(-b1 * x) / below;
            (y, [-x * y, -y / below, -x * y / below])
        },
        [27, 19],
    );
    assert!(fewest.0 > 10.0 && fewest.1 > 10.0, "{fewest:?}");
}

#[test]
fn certified_mgh17() {
    let data = Certified::read(include_str!("../../nist_strd/mgh17.txt"));
    let fewest = data.fit(
        "MGH17",
        |x, [b1, b2, b3, b4, b5]| {
            let (slow, fast) = (exp(-b4 * x), exp(-b5 * x));
            let slopes = [1.0, slow, fast, -b2 * x * slow, -b3 * x * fast];
            (b1 + b2 * slow + b3 * fast, slopes)
        },
        [481, 37],
    );
    assert!(fewest.0 > 10.0 && fewest.1 > 10.0, "{fewest:?}");
}
