//! Brewing mathematics for coffee, from the wish to the next cup.
//!
//! cupwright is one body of brewing math for a scale's firmware, a café's website and a brewing app.
//! It needs no standard library, no heap and no operating system, it cannot panic, and it is
//! built so that a result has the same bits on every target.
//!
//! # The tour, in the order a brew uses it
//!
//! | step | room | answers |
//! |---|---|---|
//! | what is a number here? | [`quantity`], [`error`] | units, ranges, sources; what went wrong |
//! | what do I need? | [`plan`] | dose, water, batches, heat, tolerances for a wished cup |
//! | how much of what? | [`ratio`] | ratios, millilitres and grams, servings, batches |
//! | how hot? | [`water`], [`heat`] | boiling point here, kettle to cup, cooling, waiting |
//! | what does the scale see, and what now? | [`live`] | water, flow and events from readings; a recipe followed |
//! | what will come out? | [`retention`] | beverage, and what grounds, paper and chamber keep |
//! | what did I read? | [`reading`] | repeated readings, Brix, brew-water solids to strength |
//! | what does it mean? | [`extraction`], [`verdict`] | yield, plausibility, place in a window |
//! | how sure is that? | [`uncertainty`], [`decision`] | budgets; inside, outside or not yet decided |
//! | what will a brew be, how surely? | [`forecast`] | strength, yield and size before it is made, and the chance to land |
//! | what now, and next time? | [`advise`] | suggestions, the surest first |
//! | what can I do to this cup? | [`dilution`] | water, milk, ice, splitting over cups |
//! | what do my own brews say? | [`calibrate`] | retention, extraction rates, heat, cooling, factors |
//! | where is that kept? | [`profile`] | what was learned, in JSON or in bytes with a check |
//! | and of a million brews? | [`columns`] | the main formulas on whole columns |
//! | what can hurt? | [`caution`] | scalds, pressing, glass, caffeine, milk, ice |
//!
//! # A cup, judged
//!
//! ```
//! use cupwright::quantity::*;
//! use cupwright::{dilution, extraction, reading, verdict};
//!
//! // Invented brew: 16 g of coffee steeped in 220 g of water, pressed, read twice.
//! let dose = Dose::from_grams(16.0)?;
//! let water = BrewWater::from_grams(220.0)?;
//! let beverage = Beverage::from_grams(194.0)?;
//! let readings = [Strength::from_percent(1.47)?, Strength::from_percent(1.49)?];
//!
//! let read = reading::combine(&readings, Repeatability::from_percent(0.01)?)?;
//! assert_eq!(read.agreement, reading::Agreement::Mean);
//!
//! let extracted = extraction::steeped_yield(read.value, water, dose)?;
//! assert_eq!(extracted.to_string(), "20.66 %");
//!
//! // The published windows count the yield as if the liquid kept were plain water.
//! let by_chart = extraction::flow_through_yield(read.value, beverage, dose)?;
//! let window = verdict::HOME_BREWER_2018.window;
//! let cup = verdict::stand(&window, read.value, by_chart);
//! assert_eq!(cup.strength.side, verdict::Side::Above);
//!
//! // Too strong: how much water brings it to 1.30 %?
//! let wanted = Strength::from_percent(1.30)?;
//! let added = dilution::water_to_reach(beverage, read.value, wanted, WaterSolids::NONE)?;
//! assert_eq!(added.to_string(), "26.9 g");
//! # Ok::<(), cupwright::Error>(())
//! ```
//!
//! # Numbers
//!
//! Everything is `f64`. Elementary functions come from one exact version of `libm`, so results do not
//! depend on the platform; a change of any result's bits is a change of the interface. Functions that
//! can fail return [`Error`] with the quantity, the value and the range; functions that cannot return
//! their quantity as it is. Constants that a practitioner could disagree with are parameters, or
//! public constants with their source and how sure they are.
//!
//! # Features
//!
//! * `serde`: quantities as plain numbers, checked when read; records with unit-suffixed field names.
//!   It never changes a number.

#![no_std]
#![forbid(unsafe_code)]
#![deny(
    missing_docs,
    clippy::arithmetic_side_effects,
    clippy::expect_used,
    clippy::indexing_slicing,
    clippy::panic,
    clippy::unreachable,
    clippy::unwrap_used
)]
#![cfg_attr(test, allow(clippy::unwrap_used, clippy::expect_used, clippy::panic))]

pub mod advise;
pub mod calibrate;
pub mod caution;
pub mod columns;
pub mod decision;
pub mod dilution;
mod distribution;
pub mod error;
pub mod extraction;
pub mod forecast;
pub mod heat;

pub mod live;
mod math;
pub mod plan;
pub mod profile;
pub mod quantity;
pub mod ratio;
pub mod reading;
mod record;
pub mod retention;
mod sealed;
pub mod uncertainty;
pub mod verdict;
pub mod water;

pub use error::Error;

/// The README's example runs as a doc test.
#[cfg(doctest)]
#[doc = include_str!("../README.md")]
struct Readme;
