//! What can hurt: scalding, pressing hot liquid, glass, caffeine, milk, ice.
//!
//! [`of`] turns the facts of a drink into a set of [`Caution`]s, each with a lasting code and plain
//! words. They remind; they do not replace local codes, the instructions of the equipment, or the
//! advice of licensed practice, which come first.

use crate::error::Error;
use crate::math::{exp, ln};
use crate::quantity::{Caffeine, CaffeineContent, Dose, Share, Temperature, Time, computed};

/// Something that can hurt. The number of a caution never changes.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
#[non_exhaustive]
#[repr(u8)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(rename_all = "snake_case")
)]
pub enum Caution {
    /// Liquid at or above [`SCALDING`].
    Scald = 1,
    /// A drink above [`VERY_HOT_DRINK`].
    VeryHotDrink = 2,
    /// Hot liquid pressed by hand.
    Pressing = 3,
    /// Glass that meets hot or cold liquid.
    GlassShock = 4,
    /// More caffeine in a serving than [`SINGLE_DOSE_CAFFEINE`].
    Caffeine = 5,
    /// Milk in the drink.
    Milk = 6,
    /// Ice in the drink.
    Ice = 7,
}

impl Caution {
    /// Every caution, in the order of their numbers.
    pub const ALL: [Caution; 7] = [
        Caution::Scald,
        Caution::VeryHotDrink,
        Caution::Pressing,
        Caution::GlassShock,
        Caution::Caffeine,
        Caution::Milk,
        Caution::Ice,
    ];

    /// Plain words for the person at the bench.
    pub const fn words(self) -> &'static str {
        match self {
            Caution::Scald => {
                "Hot enough to burn skin within seconds, children faster than adults. Keep it away from \
                 edges and elbows. Follow your local codes and the equipment's instructions; get \
                 medical help for a burn."
            }
            Caution::VeryHotDrink => {
                "Hotter than 65 °C to drink. Very hot drinks are classed as probably carcinogenic \
                 to the oesophagus (IARC Monograph 116). Let it cool before serving or say so to \
                 the guest."
            }
            Caution::Pressing => {
                "Pressing hot liquid by hand: a slipping seal can spray it far. Stand the brewer on \
                 a firm, heat-proof vessel, press slowly and straight, never lean on it, stop when \
                 it resists or when you hear air. The maker's instructions come first."
            }
            Caution::GlassShock => {
                "Glass can break when heated or chilled suddenly, scratched glass sooner. Use glass \
                 made for it, warm it gradually, and never pour cold into hot glass. The maker's \
                 limits come first."
            }
            Caution::Caffeine => {
                "More caffeine in this serving than the 200 mg that single doses for healthy adults \
                 are rated at (EFSA 2015). People who are pregnant, young, or under medical care \
                 need other limits: ask a doctor or pharmacist."
            }
            Caution::Milk => {
                "Milk is perishable and an allergen. Keep it cold, do not reuse what has been \
                 warmed, and follow local food rules."
            }
            Caution::Ice => {
                "Ice is food: make it from drinking water, handle it with a scoop, and follow local \
                 food rules for chilled drinks."
            }
        }
    }
}

impl core::fmt::Display for Caution {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        f.write_str(self.words())
    }
}

/// A set of cautions.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Cautions(u8);

impl Cautions {
    /// Whether a caution is in the set.
    pub const fn contains(self, caution: Caution) -> bool {
        self.0 & (1 << (caution as u8)) != 0
    }

    /// The cautions in the set, in the order of their numbers.
    pub fn iter(self) -> impl Iterator<Item = Caution> {
        Caution::ALL.into_iter().filter(move |caution| self.contains(*caution))
    }

    fn with(self, caution: Caution, applies: bool) -> Self {
        if applies { Self(self.0 | (1 << (caution as u8))) } else { self }
    }
}

#[cfg(feature = "serde")]
impl serde::Serialize for Cautions {
    fn serialize<S: serde::Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        to.collect_seq(self.iter())
    }
}

#[cfg(feature = "serde")]
impl<'de> serde::Deserialize<'de> for Cautions {
    fn deserialize<D: serde::Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        struct List;
        impl<'de> serde::de::Visitor<'de> for List {
            type Value = Cautions;

            fn expecting(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
                f.write_str("a list of cautions")
            }

            fn visit_seq<A: serde::de::SeqAccess<'de>>(
                self,
                mut list: A,
            ) -> Result<Cautions, A::Error> {
                let mut cautions = Cautions::default();
                while let Some(caution) = list.next_element::<Caution>()? {
                    cautions = cautions.with(caution, true);
                }
                Ok(cautions)
            }
        }
        from.deserialize_seq(List)
    }
}

/// What there is to know of a drink for its cautions.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Hazards {
    /// The hottest liquid handled on the way.
    pub hottest: Temperature,
    /// The drink when it is handed over.
    pub served: Temperature,
    /// Pressed by hand.
    pub pressed: bool,
    /// Glass meets hot or iced liquid.
    pub glass: bool,
    /// Caffeine of a serving, where it is known.
    pub caffeine: Option<Caffeine>,
    /// Milk goes in.
    pub milk: bool,
    /// Ice goes in.
    pub ice: bool,
}

/// The cautions that a drink calls for.
///
/// ```text
/// a caution where its fact is given, or its value past its limit
/// ```
///
/// Symbols: limits are [`SCALDING`], [`VERY_HOT_DRINK`] and [`SINGLE_DOSE_CAFFEINE`]. Source: IARC
/// Monograph 116 (2016), as reported; EFSA Journal 2015;13(5):4102; published burn times
/// ([`time_to_burn`]).
///
/// ```
/// # use cupwright::{caution::{self, Caution, Hazards}, quantity::*};
/// let cautions = caution::of(&Hazards {
///     hottest: Temperature::from_celsius(93.0)?,
///     served: Temperature::from_celsius(62.0)?,
///     pressed: true,
///     glass: false,
///     caffeine: None,
///     milk: false,
///     ice: false,
/// });
/// assert!(cautions.iter().eq([Caution::Scald, Caution::Pressing]));
/// # Ok::<(), cupwright::Error>(())
/// ```
pub fn of(hazards: &Hazards) -> Cautions {
    Cautions::default()
        .with(Caution::Scald, hazards.hottest >= SCALDING)
        .with(Caution::VeryHotDrink, hazards.served > VERY_HOT_DRINK)
        .with(Caution::Pressing, hazards.pressed && hazards.hottest >= SCALDING)
        .with(Caution::GlassShock, hazards.glass)
        .with(Caution::Caffeine, hazards.caffeine.is_some_and(|c| c > SINGLE_DOSE_CAFFEINE))
        .with(Caution::Milk, hazards.milk)
        .with(Caution::Ice, hazards.ice)
}

/// Above this a drink counts as very hot: IARC Monograph 116 (2016), as reported.
pub const VERY_HOT_DRINK: Temperature = Temperature::known(65.0);

/// From here a serious burn takes ten seconds or less; see [`time_to_burn`].
pub const SCALDING: Temperature = Temperature::known(57.0);

/// "Single doses of caffeine up to 200 mg … do not give rise to safety concerns" for healthy adults:
/// EFSA Journal 2015;13(5):4102.
pub const SINGLE_DOSE_CAFFEINE: Caffeine = Caffeine::known(200.0);

/// "Up to 400 mg per day does not give rise to safety concerns for non-pregnant adults": the same
/// opinion, as reported by a law digest. The digests give 200 mg a day in pregnancy.
pub const DAILY_CAFFEINE: Caffeine = Caffeine::known(400.0);

/// Temperature in °C and seconds to a serious burn of adult skin, the shortest of the published times
/// where lists differ: the three that [`time_to_burn`] names.
const BURN_TIMES: [(f64, f64); 8] = [
    (48.9, 300.0),
    (52.0, 90.0),
    (54.4, 30.0),
    (56.1, 15.0),
    (57.0, 10.0),
    (60.0, 5.0),
    (65.0, 2.0),
    (68.0, 1.0),
];

/// How fast hot water burns adult skin seriously.
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub enum TimeToBurn {
    /// Below 48.9 °C: in more than five minutes. Long contact still burns.
    MoreThanFiveMinutes,
    /// In so much time.
    Within(Time),
    /// Above 68 °C: in under a second.
    UnderOneSecond,
}

/// How fast hot water burns adult skin seriously.
///
/// ```text
/// ln t = ln t1 + (T − T1)/(T2 − T1) · (ln t2 − ln t1)   between neighbouring points
/// ```
///
/// Symbols: t time, T temperature of the water; with 1 and 2 those of the published points. Source:
/// US Consumer Product Safety Commission, publication 5098 (its number from memory, its words as quoted
/// by others), for 48.9 and 54.4 °C; Burn Foundation, Safety Facts on Scald Burns (2008), for 56.1, 60 and
/// 65 °C; Children's of Alabama, Prevent Scald Burn Injuries (undated), for 52, 57 and 68 °C.
///
/// Between the published points of 48.9 to 68 °C, ln t runs straight with temperature. Lists differ by
/// up to a factor of two and this takes the shortest; children burn faster still. A reminder of how
/// little time there is, never a safe limit.
pub fn time_to_burn(water: Temperature) -> TimeToBurn {
    let t = water.celsius();
    let below = BURN_TIMES.iter().rev().find(|(at, _)| *at <= t);
    let above = BURN_TIMES.iter().find(|(at, _)| *at >= t);
    match (below, above) {
        (None, _) => TimeToBurn::MoreThanFiveMinutes,
        (_, None) => TimeToBurn::UnderOneSecond,
        (Some((t0, s0)), Some((t1, s1))) => {
            let along = if t1 > t0 { (t - t0) / (t1 - t0) } else { 0.0 };
            TimeToBurn::Within(Time::known(exp(ln(*s0) + along * (ln(*s1) - ln(*s0)))))
        }
    }
}

/// Caffeine of a serving.
///
/// ```text
/// m = D c f
/// ```
///
/// Symbols: m caffeine, D dose, c its caffeine content, f share extracted. Source: definition; the
/// contents are the caller's.
///
/// Contents vary: green arabica 8 to 14 mg/g dry, robusta 17 to 40 (Belitz et al. 2009, secondary).
/// Of that, brewing takes out some 70 to 100 % (weak sources); 100 % is the cautious choice.
///
/// # Errors
/// None in range; the `Result` guards the range of [`Caffeine`].
pub fn caffeine(dose: Dose, content: CaffeineContent, extracted: Share) -> Result<Caffeine, Error> {
    computed(dose.grams() * content.milligrams_per_gram() * extracted.fraction())
}

#[cfg(test)]
mod tests {
    extern crate std;
    use super::*;
    use std::collections::HashSet;
    use std::string::ToString;

    #[test]
    fn words_are_distinct_and_whole() {
        let words: HashSet<_> = Caution::ALL.iter().map(|c| c.to_string()).collect();
        assert_eq!(words.len(), Caution::ALL.len());
        assert!(words.iter().all(|w| w.ends_with('.') && !w.contains("  ")));
    }

    #[test]
    fn a_set_holds_what_was_put_in() {
        for caution in Caution::ALL {
            let set = Cautions::default().with(caution, true);
            assert!(set.iter().eq([caution]));
        }
    }

    /// Scalding begins at its limit; a very hot drink and too much caffeine lie above theirs.
    #[test]
    fn cautions_begin_at_or_above_their_limits() {
        let at = |celsius: f64, milligrams: Option<f64>| {
            let temperature = Temperature::known(celsius);
            of(&Hazards {
                hottest: temperature,
                served: temperature,
                pressed: true,
                glass: false,
                caffeine: milligrams.map(Caffeine::known),
                milk: false,
                ice: false,
            })
        };
        let scald = [Caution::Scald, Caution::Pressing];
        assert!(at(57.0_f64.next_down(), None).iter().eq([]));
        assert!(at(57.0, None).iter().eq(scald));
        assert!(at(65.0, None).iter().eq(scald));
        let very_hot = at(65.0_f64.next_up(), None);
        assert!(very_hot.iter().eq([Caution::Scald, Caution::VeryHotDrink, Caution::Pressing]));
        assert!(at(20.0, Some(150.0)).iter().eq([]));
        assert!(at(20.0, Some(200.0)).iter().eq([]));
        assert!(at(20.0, Some(200.0_f64.next_up())).iter().eq([Caution::Caffeine]));
    }

    #[test]
    fn published_burn_times_are_met() {
        for (celsius, seconds) in BURN_TIMES {
            let TimeToBurn::Within(time) = time_to_burn(Temperature::known(celsius)) else {
                panic!("{celsius}")
            };
            assert!((time.seconds() / seconds - 1.0).abs() < 1e-14, "{celsius}: {time:?}");
        }
    }

    #[test]
    fn hotter_burns_faster() {
        let time = |c: f64| time_to_burn(Temperature::from_celsius(c).unwrap());
        let mut last = f64::INFINITY;
        for tenths in 489..=680 {
            match time(f64::from(tenths) / 10.0) {
                TimeToBurn::Within(t) if t.seconds() < last => last = t.seconds(),
                other => panic!("{tenths}: {other:?}"),
            }
        }
        assert_eq!(time(48.8), TimeToBurn::MoreThanFiveMinutes);
        assert_eq!(time(68.1), TimeToBurn::UnderOneSecond);
    }
}
