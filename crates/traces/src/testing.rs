//! What the tests of several rooms need: a family from a few words, a standard deviation.

use crate::family::{Family, folder};

/// The text of a base of the corpus.
pub fn base(name: &str) -> Result<String, String> {
    let path = folder().join(format!("base/{name}.toml"));
    std::fs::read_to_string(&path).map_err(|error| format!("{}: {error}", path.display()))
}

/// A family of one script on a base, with overrides.
pub fn family(on: &str, settings: &str, script: &str) -> Family {
    let text = format!(
        "about = \"a test\"\nbase = \"{on}\"\nstrict = true\n\
         seeds = {{ held_out = [1, 1], tuning = [2, 2] }}\nscript = [{script}]\n{settings}"
    );
    Family::parse("test", &text, base).unwrap()
}

/// Standard deviation of values about their mean.
pub fn sd(values: &[f64]) -> f64 {
    let mean = values.iter().sum::<f64>() / values.len() as f64;
    let squares: f64 = values.iter().map(|x| (x - mean) * (x - mean)).sum();
    libm::sqrt(squares / (values.len() - 1) as f64)
}
