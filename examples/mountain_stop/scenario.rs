//! The scenario file: its shape, and errors that say file, line, field, value and range.

use std::{collections::BTreeMap, fmt, ops::Range, path::Path};

use cupwright::forecast::Straying;
use cupwright::plan::{Brewer, Coffee, Kitchen, Wish};
use cupwright::quantity::{
    Beverage, BrewWater, DegreesOfFreedom, Dose, FactorUncertainty, MassUncertainty, Repeatability,
    Strength, StrengthUncertainty,
};
use cupwright::reading::Zero;
use serde::Deserialize;
use toml::Spanned;

/// A place, what it has, what it wants and what it measured.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Scenario {
    pub place: String,
    kitchens: BTreeMap<String, Kitchen>,
    brewers: BTreeMap<String, Brewer>,
    coffees: BTreeMap<String, Coffee>,
    pub instrument: Option<Instrument>,
    pub wishes: Vec<Spanned<NamedWish>>,
    #[serde(default)]
    pub brews: Vec<Spanned<MeasuredBrew>>,
}

/// What is known of how sure the numbers are.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Instrument {
    #[serde(rename = "limit_pct")]
    pub limit: StrengthUncertainty,
    #[serde(rename = "factor_pct")]
    pub factor: FactorUncertainty,
    #[serde(rename = "scale_limit_g")]
    pub scale_limit: MassUncertainty,
    pub straying: Straying,
}

/// A wish with the names of what it is to be made with.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub struct NamedWish {
    pub name: String,
    kitchen: Spanned<String>,
    brewer: Spanned<String>,
    coffee: Spanned<String>,
    pub drink: Wish,
}

/// A brew as weighed and read.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub struct MeasuredBrew {
    pub of: Spanned<String>,
    #[serde(rename = "dose_g")]
    pub dose: Dose,
    #[serde(rename = "water_g")]
    pub water: BrewWater,
    #[serde(rename = "beverage_g")]
    pub beverage: Beverage,
    #[serde(rename = "readings_pct")]
    pub readings: Vec<Strength>,
    #[serde(rename = "repeatability_pct")]
    pub repeatability: Repeatability,
    #[serde(rename = "repeatability_degrees_of_freedom")]
    pub repeatability_freedom: DegreesOfFreedom,
    pub zero: Zero,
}

/// A wish with its things looked up.
#[derive(Clone, Copy)]
pub struct Setting<'a> {
    pub name: &'a str,
    pub drink: Wish,
    pub kitchen: &'a Kitchen,
    pub brewer: &'a Brewer,
    pub coffee: &'a Coffee,
}

impl Scenario {
    /// Everything a wish refers to.
    pub fn setting<'a>(&'a self, wish: &'a NamedWish) -> Result<Setting<'a>, Fault> {
        Ok(Setting {
            name: &wish.name,
            drink: wish.drink,
            kitchen: look_up(&self.kitchens, &wish.kitchen, "kitchen")?,
            brewer: look_up(&self.brewers, &wish.brewer, "brewer")?,
            coffee: look_up(&self.coffees, &wish.coffee, "coffee")?,
        })
    }

    /// The wish that a brew was made for.
    pub fn wish_of(&self, brew: &MeasuredBrew) -> Result<&NamedWish, Fault> {
        let name = brew.of.as_ref();
        self.wishes.iter().map(Spanned::as_ref).find(|wish| wish.name == *name).ok_or_else(|| {
            Fault {
                at: brew.of.span(),
                field: None,
                what: format!("of: there is no wish named \"{name}\""),
            }
        })
    }
}

fn look_up<'a, T>(
    table: &'a BTreeMap<String, T>,
    name: &Spanned<String>,
    field: &str,
) -> Result<&'a T, Fault> {
    table.get(name.as_ref()).ok_or_else(|| Fault {
        at: name.span(),
        field: None,
        what: format!("{field}: there is no {field} named \"{}\"", name.as_ref()),
    })
}

/// Something wrong at a place in the file.
pub struct Fault {
    /// The place: a value, or the entry that it is somewhere in.
    pub at: Range<usize>,
    /// The field within the entry, where it is known.
    pub field: Option<&'static str>,
    pub what: String,
}

impl Fault {
    /// A library error about the entry given.
    pub fn about(at: Range<usize>, field: Option<&'static str>, error: cupwright::Error) -> Self {
        Self { at, field, what: error.to_string() }
    }

    /// Where to point: at the field if it is found in the entry, else at the entry.
    fn start(&self, text: &str) -> usize {
        let start = self.at.start.min(text.len());
        let entry = text[start..].split("\n[[").next().unwrap_or_default();
        let is_field = |line: &str| {
            let name = line.split('=').next().unwrap_or_default();
            line.contains('=') && Some(name.trim()) == self.field
        };
        let before = entry.split_inclusive('\n').take_while(|line| !is_field(line));
        let within: usize = before.map(str::len).sum();
        start + if within < entry.len() { within } else { 0 }
    }
}

/// A [`Fault`] with its file, for people.
pub struct Located<'a> {
    pub path: &'a Path,
    pub text: &'a str,
    pub fault: Fault,
}

impl fmt::Display for Located<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let start = self.fault.start(self.text);
        let before = &self.text[..start];
        let line = before.matches('\n').count() + 1;
        let column = before.len() - before.rfind('\n').map_or(0, |newline| newline + 1);
        let source = self.text.lines().nth(line - 1).unwrap_or_default();
        writeln!(f, "{}, line {line}: {}", self.path.display(), self.fault.what)?;
        writeln!(f, "{line:>5} | {source}")?;
        write!(f, "{:>5} | {:column$}^", "", "")
    }
}

/// Reads a scenario.
pub fn read(text: &str) -> Result<Scenario, Fault> {
    toml::from_str(text).map_err(|error| Fault {
        at: error.span().unwrap_or_default(),
        field: None,
        what: error.message().to_string(),
    })
}
