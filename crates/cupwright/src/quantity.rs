//! One table of every quantity: its name, unit, accepted range, meaning and source.
//!
//! Each row makes one type with a checked constructor that carries the unit in its name, so a dose
//! cannot be passed where brew water is meant and a number outside its range cannot get in:
//!
//! ```
//! use cupwright::quantity::{Dose, Quantity};
//!
//! let dose = Dose::from_grams(15.0)?;
//! assert_eq!(dose.grams(), 15.0);
//!
//! let error = Dose::from_grams(-2.0).unwrap_err();
//! assert_eq!(error.to_string(), "dose: -2 g is outside 0.1 to 10000 g");
//!
//! assert_eq!(Quantity::Dose.field(), "dose_g");
//! # Ok::<(), cupwright::Error>(())
//! ```
//!
//! Percentages are percentages on the way in and on the way out (`Strength::from_percent(1.38)`);
//! [`Strength::fraction`] and its like exist for arithmetic. A temperature and a difference of
//! temperatures are two types. Negative zero is stored as zero, and NaN is never stored.

use crate::error::Error;

mod sealed {
    pub trait Sealed {}
}

/// What every quantity type has in common: a row of the table, a checked way in, a way out.
///
/// Sealed: the table is the only place where quantities are made.
pub trait Measure: Copy + PartialEq + PartialOrd + core::fmt::Debug + sealed::Sealed {
    /// The row of the table.
    const QUANTITY: Quantity;

    /// Checks `value`, in the quantity's own unit, against its range.
    ///
    /// # Errors
    /// [`Error::OutOfRange`] for a value outside the range, an infinity or NaN.
    fn new(value: f64) -> Result<Self, Error>;

    /// The same check, without the reason: [`Quantity::refusal`] gives it later.
    fn accept(value: f64) -> Option<Self>;

    /// The value in the quantity's own unit.
    fn value(self) -> f64;
}

/// A computed value as its quantity: the same check as [`Measure::new`], but the error says that
/// the value came out of a computation and not from the caller.
pub(crate) fn computed<M: Measure>(value: f64) -> Result<M, Error> {
    M::accept(value).ok_or_else(|| M::QUANTITY.left_by(value))
}

/// [`Measure::accept`] as a truth alone, by comparisons that become those of vectors; of a quantity of which
/// any number is accepted, not only whole ones.
pub(crate) const fn is_accepted<M: Measure>(value: f64) -> bool {
    const { assert!(!M::QUANTITY.is_whole()) };
    let (lowest, highest) = const { (M::QUANTITY.lowest(), M::QUANTITY.highest()) };
    (value >= lowest) & (value <= highest)
}

/// Whether doubles are computed in software, as on most bare boards: there every comparison is dear.
const SOFT: bool = cfg!(target_os = "none");

/// Turns -0 into +0, so that equal values have equal bits. Every number that enters or leaves comes here.
const fn with_one_zero(value: f64) -> f64 {
    if SOFT { with_one_zero_by_bits(value) } else { value + 0.0 }
}

/// The same in software, without an addition.
const fn with_one_zero_by_bits(value: f64) -> f64 {
    const SIGN: u64 = i64::MIN.cast_unsigned();
    let bits = value.to_bits();
    // Of zero alone the magnitude less one has a sign.
    f64::from_bits(bits & !((bits & !SIGN).wrapping_sub(1) & SIGN))
}

/// A number's place among all, those that are not numbers at either end.
const fn place(value: f64) -> i64 {
    let bits = value.to_bits() as i64;
    let magnitude = bits & i64::MAX;
    if bits < 0 { magnitude.wrapping_neg() } else { magnitude }
}

/// Whether a number whose zero has one sign lies between two edges, in the way that is cheapest for edges that
/// the compiler knows.
const fn is_within(value: f64, lowest: f64, highest: f64) -> bool {
    if lowest == 0.0 || (SOFT && lowest > 0.0) {
        // From zero up numbers are in the order of their bits, and all others lie above them.
        let bits = value.to_bits();
        bits >= lowest.to_bits() && bits <= highest.to_bits()
    } else if SOFT {
        place(value) >= place(lowest) && place(value) <= place(highest)
    } else {
        value >= lowest && value <= highest
    }
}

macro_rules! quantities {
    ($(
        $(#[doc = $meaning:literal])+
        $code:literal $name:ident = $id:literal, $from:ident/$get:ident $unit:literal as $suffix:literal $($whole:ident)?,
            $lowest:literal..=$highest:literal, $decimals:literal decimals, source $source:literal;
    )+) => {
        /// A row of the quantity table. The number of a row never changes and is never reused.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
        #[non_exhaustive]
        #[repr(u16)]
        pub enum Quantity {
            $($(#[doc = $meaning])+ $name = $code,)+
        }

        impl Quantity {
            /// Every row, in the order of the table.
            pub const ALL: &'static [Quantity] = &[$(Quantity::$name,)+];

            /// The quantity's name in plain words, as error messages use it.
            pub const fn name(self) -> &'static str {
                match self { $(Quantity::$name => $id,)+ }
            }

            /// The unit as written after a number: `g`, `%`, `°C`; empty for a plain count.
            pub const fn unit(self) -> &'static str {
                match self { $(Quantity::$name => $unit,)+ }
            }

            /// The usual name of a field that holds it outside Rust: `dose_g`, `strength_pct`.
            pub const fn field(self) -> &'static str {
                match self { $(Quantity::$name => $suffix,)+ }
            }

            /// The lowest value accepted, in [`unit`](Self::unit)s.
            pub const fn lowest(self) -> f64 {
                match self { $(Quantity::$name => $lowest,)+ }
            }

            /// The highest value accepted, in [`unit`](Self::unit)s.
            pub const fn highest(self) -> f64 {
                match self { $(Quantity::$name => $highest,)+ }
            }

            /// Whether only whole numbers are accepted.
            pub const fn is_whole(self) -> bool {
                match self { $(Quantity::$name => false $(|| stringify!($whole).len() > 0)?,)+ }
            }

            /// Whether a value is accepted: in range, and whole where only whole numbers are.
            //
            // Out of line, as a refusal is and on bare boards each quantity's own: a small image has
            // many inputs to check.
            #[inline(never)]
            pub const fn accepts(self, value: f64) -> bool {
                let among = place(value);
                let in_range = among >= place(self.lowest()) && among <= place(self.highest());
                in_range && (!self.is_whole() || value as u32 as f64 == value)
            }

            /// Why a value is not accepted.
            #[cold]
            #[inline(never)]
            pub const fn refusal(self, value: f64) -> Error {
                let (quantity, lowest, highest) = (self, self.lowest(), self.highest());
                if value >= lowest && value <= highest {
                    Error::NotWhole { quantity, value, lowest, highest }
                } else {
                    Error::OutOfRange { quantity, value, lowest, highest }
                }
            }

            /// The error of a computed value that is not accepted.
            #[cold]
            #[cfg_attr(any(target_os = "none", target_family = "wasm"), inline(never))]
            const fn left_by(self, value: f64) -> Error {
                let (quantity, lowest, highest) = (self, self.lowest(), self.highest());
                Error::ResultOutOfRange { quantity, value, lowest, highest }
            }

            /// How many decimals a person wants to see.
            pub const fn decimals(self) -> usize {
                match self { $(Quantity::$name => $decimals,)+ }
            }

            /// What the quantity is, in a sentence.
            pub const fn meaning(self) -> &'static str {
                match self { $(Quantity::$name => concat!($($meaning),+).trim_ascii(),)+ }
            }

            /// Where its range or definition comes from.
            pub const fn source(self) -> &'static str {
                match self { $(Quantity::$name => $source,)+ }
            }
        }

        $(
            $(#[doc = $meaning])+
            ///
            #[doc = concat!("Range: ", $lowest, " to ", $highest, " ", $unit, " (", $source, "). Outside Rust: `", $suffix, "`.")]
            #[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
            pub struct $name(f64);

            impl $name {
                #[doc = concat!("Checks a value in ", $unit, ".")]
                ///
                /// # Errors
                #[doc = concat!("[`Error::OutOfRange`] outside ", $lowest, " to ", $highest, ", or not a number.")]
                $(#[doc = concat!("[`Error::NotWhole`] for a number that is not ", stringify!($whole), ".")])?
                pub const fn $from(value: f64) -> Result<Self, Error> {
                    match Self::accepted(value) {
                        Some(accepted) => Ok(accepted),
                        None => Err(Quantity::$name.refusal(value)),
                    }
                }

                /// The same as [`Quantity::accepts`], without a look into a table.
                #[cfg_attr(target_os = "none", inline(never))]
                const fn accepted(value: f64) -> Option<Self> {
                    const OF: Quantity = Quantity::$name;
                    const IS_WHOLE: bool = OF.is_whole();
                    // A range that begins above zero has no zero in it.
                    let value = if OF.lowest() > 0.0 { value } else { with_one_zero(value) };
                    let in_range = is_within(value, OF.lowest(), OF.highest());
                    if in_range && (!IS_WHOLE || value as u32 as f64 == value) {
                        Some(Self(value))
                    } else {
                        None
                    }
                }

                #[doc = concat!("The value in ", $unit, ".")]
                pub const fn $get(self) -> f64 {
                    self.0
                }

                /// For constants, and for results whose range is proved by their formula.
                #[allow(dead_code, reason = "not every quantity has a constant")]
                pub(crate) const fn known(value: f64) -> Self {
                    Self(value)
                }
            }

            impl sealed::Sealed for $name {}

            impl Measure for $name {
                const QUANTITY: Quantity = Quantity::$name;

                fn new(value: f64) -> Result<Self, Error> {
                    Self::$from(value)
                }

                fn accept(value: f64) -> Option<Self> {
                    Self::accepted(value)
                }

                fn value(self) -> f64 {
                    self.0
                }
            }

            /// The value with its unit, to the quantity's own number of decimals unless the
            /// format gives a precision.
            impl core::fmt::Display for $name {
                fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
                    let decimals = f.precision().unwrap_or($decimals);
                    write!(f, "{:.decimals$}", self.0)?;
                    if $unit.is_empty() { Ok(()) } else { write!(f, " {}", $unit) }
                }
            }

            #[cfg(feature = "serde")]
            impl serde::Serialize for $name {
                fn serialize<S: serde::Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
                    to.serialize_f64(self.0)
                }
            }

            #[cfg(feature = "serde")]
            impl<'de> serde::Deserialize<'de> for $name {
                fn deserialize<D: serde::Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
                    let value = <f64 as serde::Deserialize>::deserialize(from)?;
                    Self::$from(value).map_err(serde::de::Error::custom)
                }
            }
        )+
    };
}

quantities! {
    /// Ground coffee as weighed, its moisture included.
    1 Dose = "dose", from_grams/grams "g" as "dose_g",
        0.1..=10000.0, 1 decimals, source "range chosen here: a tasting spoon to a catering brewer";
    /// Water poured onto the coffee.
    2 BrewWater = "brew water", from_grams/grams "g" as "water_g",
        0.1..=200000.0, 1 decimals, source "range chosen here: a tasting spoon to a catering brewer";
    /// Brewed coffee that reaches the cup or server.
    3 Beverage = "beverage", from_grams/grams "g" as "beverage_g",
        0.1..=200000.0, 1 decimals, source "range chosen here: a tasting spoon to a catering brewer";
    /// Water or milk added to the beverage after the brew.
    4 Addition = "addition", from_grams/grams "g" as "added_g",
        0.0..=200000.0, 1 decimals, source "range chosen here: as for the beverage";
    /// Ice added to the beverage, or what is left of it.
    5 Ice = "ice", from_grams/grams "g" as "ice_g",
        0.0..=200000.0, 1 decimals, source "range chosen here: as for the beverage";
    /// Any watery liquid that takes part in a heat balance.
    6 Liquid = "liquid", from_grams/grams "g" as "liquid_g",
        0.1..=400000.0, 1 decimals, source "range chosen here: beverage and addition together";
    /// Liquid left behind by the grounds, the paper and the chamber together, its dissolved coffee included.
    7 Retained = "retained liquid", from_grams/grams "g" as "retained_g",
        0.0..=250000.0, 1 decimals, source "range chosen here: more than any brew water with moisture";
    /// Water lost as vapour during the brew.
    8 Vapour = "vapour lost", from_grams/grams "g" as "vapour_g",
        0.0..=20000.0, 1 decimals, source "range chosen here: a tenth of the largest brew water";
    /// Liquid that the chamber and its filter keep whatever the dose.
    9 HoldUp = "chamber hold-up", from_grams/grams "g" as "hold_up_g",
        0.0..=5000.0, 1 decimals, source "range chosen here";
    /// Liquid that drips away before the press or the drain and never reaches the cup.
    10 Drips = "drips lost", from_grams/grams "g" as "drips_g",
        0.0..=5000.0, 1 decimals, source "range chosen here";
    /// Dry filter paper.
    11 PaperMass = "filter paper", from_grams/grams "g" as "paper_g",
        0.0..=500.0, 1 decimals, source "range chosen here";
    /// Water that a gram of dry filter paper takes up.
    12 PaperUptake = "paper uptake", from_grams_per_gram/grams_per_gram "g/g" as "paper_uptake_g_per_g",
        0.0..=20.0, 1 decimals, source "range chosen here; no published value found, weigh a wet paper";
    /// Brew water missing from the beverage per gram of dose, apart from losses named separately: what a scale sees.
    13 ApparentRetention = "apparent retention", from_grams_per_gram/grams_per_gram "g/g" as "apparent_retention_g_per_g",
        0.0..=10.0, 2 decimals, source "range chosen here; published values 1.5 to 2.5";
    /// Liquid that the grounds hold per gram of dose, its dissolved coffee included.
    14 TrueRetention = "true retention", from_grams_per_gram/grams_per_gram "g/g" as "true_retention_g_per_g",
        0.0..=15.0, 2 decimals, source "range chosen here";
    /// Volume of a liquid, or of a chamber.
    15 Volume = "volume", from_millilitres/millilitres "mL" as "volume_ml",
        0.1..=250000.0, 1 decimals, source "range chosen here";
    /// Volume that a gram of wetted grounds takes up under water.
    16 Displacement = "grounds displacement", from_millilitres_per_gram/millilitres_per_gram "mL/g" as "displacement_ml_per_g",
        0.0..=5.0, 2 decimals, source "range chosen here; no published value found, read the level before and after";
    /// Brew water per gram of dose.
    17 WaterRatio = "water ratio", from_grams_per_gram/grams_per_gram "g/g" as "water_ratio_g_per_g",
        0.2..=200.0, 2 decimals, source "range chosen here";
    /// Beverage per gram of dose.
    18 BeverageRatio = "beverage ratio", from_grams_per_gram/grams_per_gram "g/g" as "beverage_ratio_g_per_g",
        0.5..=200.0, 2 decimals, source "range chosen here: no brew leaves less than half its dose";
    /// Dose per litre of brew water at the water's temperature.
    19 DosePerLitre = "dose per litre", from_grams_per_litre/grams_per_litre "g/L" as "dose_g_per_l",
        4.0..=5100.0, 1 decimals, source "range of the water ratio";
    /// Total dissolved solids (TDS) of the beverage, per mass of beverage, the brew water's included.
    20 Strength = "strength", from_percent/percent "%" as "strength_pct",
        0.0..=50.0, 2 decimals, source "range chosen here: far above any brew";
    /// Extraction yield: coffee dissolved, per mass of dose as weighed.
    21 Yield = "yield", from_percent/percent "%" as "yield_pct",
        0.0..=100.0, 2 decimals, source "mass conservation; published soluble limits are near 30 %";
    /// Water in the dose as weighed.
    22 Moisture = "moisture", from_percent/percent "%" as "moisture_pct",
        0.0..=15.0, 1 decimals, source "range chosen here; roasted coffee 1 to 5 % (trade pages)";
    /// Dissolved solids of the water itself.
    23 WaterSolids = "water solids", from_milligrams_per_litre/milligrams_per_litre "mg/L" as "water_solids_mg_per_l",
        0.0..=5000.0, 0 decimals, source "range chosen here: above drinking water";
    /// Strength of the liquid left in the grounds, as a share of the beverage's: 0 % flowed through, 100 % steeped.
    24 HeldStrength = "held strength", from_percent/percent "%" as "held_strength_pct",
        0.0..=100.0, 0 decimals, source "the two published forms of the mass balance";
    /// A share of a whole.
    25 Share = "share", from_percent/percent "%" as "share_pct",
        0.0..=100.0, 1 decimals, source "definition";
    /// A span of time.
    26 Time = "time", from_seconds/seconds "s" as "time_s",
        0.0..=172800.0, 0 decimals, source "range chosen here: two days, for cold brews";
    /// Time constant of an exponential.
    27 TimeConstant = "time constant", from_seconds/seconds "s" as "time_constant_s",
        0.1..=1000000.0, 1 decimals, source "range chosen here";
    /// Temperature of liquid water, brew or milk.
    28 Temperature = "temperature", from_celsius/celsius "°C" as "water_c",
        0.0..=105.0, 1 decimals, source "liquid water at the accepted pressures; inside IAPWS SR6-08";
    /// Temperature of the air.
    29 RoomTemperature = "room temperature", from_celsius/celsius "°C" as "room_c",
        -20.0..=50.0, 1 decimals, source "range chosen here: a winter cart to a hot kitchen";
    /// Temperature of a vessel, of dry grounds or of paper.
    30 VesselTemperature = "vessel temperature", from_celsius/celsius "°C" as "vessel_c",
        -40.0..=105.0, 1 decimals, source "range chosen here: freezer to boiling water";
    /// Temperature of ice.
    31 IceTemperature = "ice temperature", from_celsius/celsius "°C" as "ice_c",
        -40.0..=0.0, 1 decimals, source "range chosen here: below a freezer to melting";
    /// A drop in temperature.
    32 TemperatureDrop = "temperature drop", from_kelvin/kelvin "K" as "drop_k",
        0.0..=105.0, 1 decimals, source "range of the temperature";
    /// Pressure of the air where the brew is made (station pressure, not reduced to sea level).
    33 Pressure = "air pressure", from_kilopascals/kilopascals "kPa" as "pressure_kpa",
        50.0..=110.0, 1 decimals, source "range chosen here: 5500 m to below sea level";
    /// Vapour pressure of water.
    34 VapourPressure = "vapour pressure", from_kilopascals/kilopascals "kPa" as "vapour_pressure_kpa",
        0.6..=125.0, 3 decimals, source "IAPWS-IF97 over the range of the temperature";
    /// Height above sea level.
    35 Altitude = "altitude", from_metres/metres "m" as "altitude_m",
        -650.0..=5550.0, 0 decimals, source "range chosen here: inhabited places, inside that of the pressure";
    /// Density of liquid water.
    36 Density = "density", from_kilograms_per_cubic_metre/kilograms_per_cubic_metre "kg/m³" as "density_kg_per_m3",
        950.0..=1001.0, 2 decimals, source "IAPWS SR6-08 over the range of the temperature";
    /// Heat needed to warm a gram by a kelvin.
    37 SpecificHeat = "specific heat", from_joules_per_gram_kelvin/joules_per_gram_kelvin "J/(g K)" as "specific_heat_j_per_g_k",
        0.05..=10.0, 3 decimals, source "range chosen here: metals to water";
    /// Heat content of liquid water above that at 0 °C.
    38 Enthalpy = "heat content", from_joules_per_gram/joules_per_gram "J/g" as "enthalpy_j_per_g",
        0.0..=441.0, 2 decimals, source "IAPWS SR6-08 over the range of the temperature";
    /// Heat taken up when a gram of water turns to vapour.
    39 LatentHeat = "latent heat", from_joules_per_gram/joules_per_gram "J/g" as "latent_heat_j_per_g",
        2200.0..=2510.0, 1 decimals, source "IAPWS-95 over the range of the temperature";
    /// Heat needed to warm a whole vessel, or the part of it that warms, by a kelvin.
    40 HeatCapacity = "heat capacity", from_joules_per_kelvin/joules_per_kelvin "J/K" as "heat_capacity_j_per_k",
        0.0..=1000000.0, 0 decimals, source "range chosen here";
    /// Mass of a vessel, or of the part of it that warms.
    41 VesselMass = "vessel", from_grams/grams "g" as "vessel_g",
        0.0..=100000.0, 0 decimals, source "range chosen here";
    /// Rate constant of the cooling law.
    42 CoolingRate = "cooling rate", from_per_minute/per_minute "1/min" as "cooling_per_min",
        0.000001..=1.0, 5 decimals, source "range chosen here; measured open mugs 0.005 to 0.008";
    /// Relative humidity of the air.
    43 Humidity = "humidity", from_percent/percent "%" as "humidity_pct",
        0.0..=100.0, 0 decimals, source "definition";
    /// Inner diameter of a cup at the liquid's surface.
    44 Diameter = "surface diameter", from_millimetres/millimetres "mm" as "diameter_mm",
        10.0..=1000.0, 0 decimals, source "range chosen here";
    /// Sugar-scale reading of a refractometer.
    45 Brix = "Brix", from_degrees/degrees "°Bx" as "brix",
        -2.0..=30.5, 2 decimals, source "range of the sucrose fit, its margin and a zero error";
    /// Refractive index relative to air at the sodium line.
    46 RefractiveIndex = "refractive index", from_ratio/ratio "" as "refractive_index",
        1.330..=1.382, 5 decimals, source "range of the sucrose fit";
    /// Strength per degree Brix of a coffee.
    47 RefractiveFactor = "refractive factor", from_percent_per_degree/percent_per_degree "%/°Bx" as "refractive_factor_pct_per_brix",
        0.3..=2.0, 3 decimals, source "range chosen here; reported 0.85 to 1.5";
    /// Temperature of a sample on the prism.
    48 SampleTemperature = "sample temperature", from_celsius/celsius "°C" as "sample_c",
        10.0..=40.0, 1 decimals, source "range of the correction's fit";
    /// Standard deviation of repeated strength readings of one sample by one person on one instrument.
    49 Repeatability = "repeatability", from_percent/percent "% strength" as "repeatability_pct",
        0.0005..=2.0, 3 decimals, source "range chosen here";
    /// Solids of milk, per mass of milk or of drink.
    50 MilkSolids = "milk solids", from_percent/percent "%" as "milk_solids_pct",
        0.0..=80.0, 1 decimals, source "range chosen here: skim to condensed";
    /// Caffeine in ground coffee as weighed.
    51 CaffeineContent = "caffeine content", from_milligrams_per_gram/milligrams_per_gram "mg/g" as "caffeine_mg_per_g",
        0.0..=45.0, 1 decimals, source "range chosen here; green beans 8 to 40 mg/g dry";
    /// Caffeine in a drink.
    52 Caffeine = "caffeine", from_milligrams/milligrams "mg" as "caffeine_mg",
        0.0..=450000.0, 0 decimals, source "range of dose and content";
    /// Water in spent grounds, per mass of wet grounds.
    53 SpentMoisture = "spent-grounds moisture", from_percent/percent "%" as "spent_moisture_pct",
        0.0..=95.0, 1 decimals, source "range chosen here; published 50 to 85 % (10.1007/s12649-017-0061-4)";
    /// People to be served, or cups.
    54 Servings = "servings", from_count/count "" as "servings" whole,
        1.0..=1000.0, 0 decimals, source "range chosen here";
    /// Brews made one after the other in one chamber.
    55 Batches = "batches", from_count/count "" as "batches" whole,
        1.0..=1000.0, 0 decimals, source "range chosen here";
    /// Repeated readings of one sample.
    56 ReadingCount = "readings", from_count/count "" as "readings" whole,
        1.0..=10.0, 0 decimals, source "critical-range factors are given for 2 to 10";
    /// Brew left over when cups are filled.
    57 Rest = "rest", from_grams/grams "g" as "rest_g",
        0.0..=200000.0, 1 decimals, source "range chosen here: as for the beverage";
    /// Solids that meet a liquid in one heat balance, where an interface has room for only so many.
    58 BodyCount = "bodies", from_count/count "" as "bodies" whole,
        0.0..=8.0, 0 decimals, source "range chosen here: kettle, brewer, grounds, paper, cup and three more";
    /// Standard uncertainty of a mass, or a limit or step that one is made from.
    59 MassUncertainty = "uncertainty of a mass", from_grams/grams "g" as "u_g",
        0.0..=400000.0, 2 decimals, source "range chosen here: as for the largest mass";
    /// Standard uncertainty of a strength, or a limit or step that one is made from.
    60 StrengthUncertainty = "uncertainty of a strength", from_percent/percent "%" as "u_strength_pct",
        0.0..=50.0, 3 decimals, source "range of the strength";
    /// Standard uncertainty of a yield, or a limit that one is made from.
    61 YieldUncertainty = "uncertainty of a yield", from_percent/percent "%" as "u_yield_pct",
        0.0..=100.0, 2 decimals, source "range of the yield";
    /// Standard uncertainty of a moisture, a held strength or another share, or a limit that one is made from.
    62 ShareUncertainty = "uncertainty of a share", from_percent/percent "%" as "u_share_pct",
        0.0..=100.0, 1 decimals, source "range of a share";
    /// Standard uncertainty of a temperature, or a limit or step that one is made from.
    63 TemperatureUncertainty = "uncertainty of a temperature", from_kelvin/kelvin "K" as "u_k",
        0.0..=105.0, 2 decimals, source "range of the temperature";
    /// Standard uncertainty of the solids of water, or a limit that one is made from.
    64 WaterSolidsUncertainty = "uncertainty of water solids", from_milligrams_per_litre/milligrams_per_litre "mg/L" as "u_water_solids_mg_per_l",
        0.0..=5000.0, 0 decimals, source "range of the water solids";
    /// Standard uncertainty of a retention, or a limit that one is made from.
    65 RetentionUncertainty = "uncertainty of a retention", from_grams_per_gram/grams_per_gram "g/g" as "u_retention_g_per_g",
        0.0..=10.0, 3 decimals, source "range of the apparent retention";
    /// Standard uncertainty of a scale's span: a relative error common to all that it weighs.
    66 SpanUncertainty = "uncertainty of the scale's span", from_percent/percent "%" as "u_span_pct",
        0.0..=50.0, 2 decimals, source "range chosen here";
    /// Standard uncertainty of a refractive factor over its value: common to all readings of one coffee.
    67 FactorUncertainty = "uncertainty of the refractive factor", from_percent/percent "%" as "u_factor_pct",
        0.0..=50.0, 2 decimals, source "range chosen here";
    /// Any value in a unit of its own.
    68 Measurand = "measurand", from_number/number "" as "value",
        -1000000000.0..=1000000000.0, 3 decimals, source "range chosen here";
    /// Standard uncertainty in the unit of its value, or a limit or step that one is made from.
    69 StandardUncertainty = "standard uncertainty", from_number/number "" as "u",
        0.0..=1000000000.0, 3 decimals, source "range chosen here: as for any value";
    /// How much a result changes with an input, in the units of the two.
    70 Sensitivity = "sensitivity", from_number/number "" as "sensitivity",
        -1000000000000.0..=1000000000000.0, 3 decimals, source "range chosen here";
    /// How well an uncertainty is itself known, as if from so many repeats and one more; the highest stands for as good as known.
    71 DegreesOfFreedom = "degrees of freedom", from_count/count "" as "degrees_of_freedom",
        1.0..=1000000000.0, 1 decimals, source "GUM G.4; the highest chosen here";
    /// How uncertain an uncertainty is, over itself.
    72 Doubt = "doubt", from_percent/percent "%" as "doubt_pct",
        0.0..=70.0, 0 decimals, source "one degree of freedom or more by GUM G.3";
    /// How sure a statement has to be.
    73 Confidence = "confidence", from_percent/percent "%" as "confidence_pct",
        50.0..=99.9, 1 decimals, source "range chosen here";
    /// Probability of a statement.
    74 Probability = "probability", from_percent/percent "%" as "probability_pct",
        0.0..=100.0, 1 decimals, source "definition";
    /// Expanded uncertainty over standard uncertainty.
    75 CoverageFactor = "coverage factor", from_ratio/ratio "" as "coverage_factor",
        0.5..=1000.0, 2 decimals, source "Student t over the range of confidence";
    /// Correlation of two values' errors.
    76 Correlation = "correlation", from_ratio/ratio "" as "correlation",
        -1.0..=1.0, 3 decimals, source "definition";
    /// Terms of an uncertainty budget, or series of repeats put together.
    77 TermCount = "terms", from_count/count "" as "terms" whole,
        1.0..=10.0, 0 decimals, source "range chosen here: the inputs of a mass balance";
    /// Repeats whose scatter tells an uncertainty.
    78 RepeatCount = "repeats", from_count/count "" as "repeats" whole,
        2.0..=100.0, 0 decimals, source "range chosen here; one alone has no scatter";
    /// Measurements from which something is learned.
    80 Measurements = "measurements", from_count/count "" as "measurements" whole,
        0.0..=30.0, 0 decimals, source "range chosen here: a month of brews, and what a small device has room for";
    /// Chamber hold-up as a line through several brews has it, which may come out a little below zero.
    81 FittedHoldUp = "fitted hold-up", from_grams/grams "g" as "fitted_hold_up_g",
        -5000.0..=5000.0, 1 decimals, source "range of the hold-up, either side";
    /// Which cup a reading is of, where several cups were read several times each.
    82 CupNumber = "cup number", from_number/number "" as "cup" whole,
        1.0..=30.0, 0 decimals, source "as many as measurements";
    /// Standard uncertainty of a heat capacity.
    83 HeatCapacityUncertainty = "uncertainty of a heat capacity", from_joules_per_kelvin/joules_per_kelvin "J/K" as "u_heat_capacity_j_per_k",
        0.0..=1000000.0, 1 decimals, source "range chosen here";
    /// Standard uncertainty of a cooling rate.
    84 CoolingRateUncertainty = "uncertainty of a cooling rate", from_per_minute/per_minute "1/min" as "u_cooling_per_min",
        0.0..=10.0, 5 decimals, source "range chosen here";
    /// Standard uncertainty of a time constant over its value, which is that of its logarithm.
    85 TimeConstantUncertainty = "uncertainty of a time constant", from_ratio/ratio "" as "u_ln_time",
        0.0..=1000.0, 3 decimals, source "range chosen here";
    /// Standard uncertainty of a Brix reading, or a limit or step that one is made from.
    90 BrixUncertainty = "uncertainty of a Brix reading", from_degrees/degrees "°Bx" as "u_brix",
        0.0..=32.5, 3 decimals, source "range of the Brix";
    /// Standard uncertainty of a span of time.
    91 TimeUncertainty = "uncertainty of a time", from_seconds/seconds "s" as "u_s",
        0.0..=172800.0, 0 decimals, source "range of the time";
    /// Time on a clock that only goes forward, from any beginning.
    100 Clock = "clock", from_seconds/seconds "s" as "clock_s",
        0.0..=5000000000.0, 2 decimals, source "range chosen here: 32 bits of milliseconds a thousand times over";
    /// What a scale shows, or would show: below zero after something was taken off.
    101 ScaleReading = "scale reading", from_grams/grams "g" as "reading_g",
        -100000.0..=100000.0, 2 decimals, source "range chosen here";
    /// The smallest step of a scale's reading.
    102 Division = "scale division", from_grams/grams "g" as "division_g",
        0.001..=10.0, 3 decimals, source "range chosen here";
    /// The most that a scale can weigh.
    103 Capacity = "scale capacity", from_grams/grams "g" as "capacity_g",
        10.0..=100000.0, 0 decimals, source "range chosen here";
    /// The fastest that water is poured: a reading that rises faster is something else.
    104 FastestPour = "fastest pour", from_grams_per_second/grams_per_second "g/s" as "fastest_g_per_s",
        2.0..=100.0, 1 decimals, source "range chosen here";
    /// How fast a reading rises.
    105 Flow = "flow", from_grams_per_second/grams_per_second "g/s" as "flow_g_per_s",
        -100000000.0..=100000000.0, 2 decimals, source "range chosen here: a scale's range within a millisecond";
    /// Water that was poured, as a scale saw it: its noise can bring it below zero.
    106 Poured = "water poured", from_grams/grams "g" as "poured_g",
        -1000000000.0..=1000000000.0, 1 decimals, source "range chosen here";
    /// A difference of two readings.
    107 Change = "change of weight", from_grams/grams "g" as "change_g",
        -1000000000.0..=1000000000.0, 2 decimals, source "range chosen here";
    /// Weight of which a scale cannot say whether it is water.
    108 Unclear = "unclear weight", from_grams/grams "g" as "unclear_g",
        0.0..=1000000000.0, 1 decimals, source "range chosen here";
    /// How long before its time a cue is given.
    109 Lead = "lead of a cue", from_seconds/seconds "s" as "lead_s",
        0.0..=1.5, 2 decimals, source "range chosen here";
    /// How much the flow of a pour wanders: its standard deviation over its mean.
    110 FlowVariation = "flow variation", from_percent/percent "%" as "flow_variation_pct",
        0.0..=100000.0, 0 decimals, source "range chosen here";
    /// What lies on a scale since it was last set to zero, without noise.
    111 Level = "level of a scale", from_grams/grams "g" as "level_g",
        -1000000000.0..=1000000000.0, 2 decimals, source "range chosen here";
    /// How many steps a recipe that is followed on a scale has.
    112 StepCount = "steps", from_count/count "" as "steps" whole,
        0.0..=24.0, 0 decimals, source "range chosen here: a reading looks at all of them";
}

macro_rules! percentages {
    ($($name:ident),+) => {$(
        impl $name {
            /// The value as a fraction of one.
            pub const fn fraction(self) -> f64 {
                self.0 / 100.0
            }
        }
    )+};
}
percentages!(
    Strength,
    Yield,
    Moisture,
    HeldStrength,
    Share,
    Humidity,
    MilkSolids,
    SpentMoisture,
    FactorUncertainty,
    Confidence,
    Probability
);

macro_rules! liquids {
    ($($name:ident),+) => {$(
        impl From<$name> for Liquid {
            fn from(mass: $name) -> Self {
                Self(mass.0)
            }
        }
    )+};
}
// Their ranges lie inside that of a liquid.
liquids!(BrewWater, Beverage);

/// Mass of a litre of water at 20 °C and 0.1 MPa, kg (IAPWS SR6-08): turns mg/L into mg/kg.
const KILOGRAMS_PER_LITRE: f64 = 0.998_206_5;

impl WaterSolids {
    /// Water without any: distilled.
    pub const NONE: Self = Self(0.0);

    /// The value as a fraction of the water's mass, for a litre measured at 20 °C.
    pub const fn fraction(self) -> f64 {
        self.0 * 1e-6 / KILOGRAMS_PER_LITRE
    }
}

impl HeldStrength {
    /// The liquid left in the grounds is plain water: it flowed through after the coffee had left.
    pub const FLOWED_THROUGH: Self = Self(0.0);
    /// The liquid left in the grounds is as strong as the beverage: steeped and well mixed.
    pub const STEEPED: Self = Self(100.0);
}

impl HoldUp {
    /// A chamber that keeps nothing.
    pub const NONE: Self = Self(0.0);
}

impl DegreesOfFreedom {
    /// As good as known: counts as without end, and the t distribution as the normal one.
    pub const KNOWN: Self = Self(1e9);
}

impl Drips {
    /// Nothing drips away.
    pub const NONE: Self = Self(0.0);
}

impl Vapour {
    /// Nothing boils off.
    pub const NONE: Self = Self(0.0);
}

#[cfg(test)]
mod tests {
    extern crate std;
    use super::*;
    use std::{collections::HashSet, string::ToString};

    #[test]
    fn rows_are_whole_and_distinct() {
        let names: HashSet<_> = Quantity::ALL.iter().map(|q| q.name()).collect();
        let codes: HashSet<_> = Quantity::ALL.iter().map(|q| *q as u16).collect();
        assert_eq!(names.len(), Quantity::ALL.len());
        assert_eq!(codes.len(), Quantity::ALL.len());
        for q in Quantity::ALL {
            assert!(q.lowest() < q.highest(), "{q:?}");
            assert!(q.meaning().ends_with('.') && !q.meaning().contains("  "), "{q:?}");
            assert!(!q.source().is_empty(), "{q:?}");
        }
    }

    #[test]
    fn the_edges_are_accepted_and_one_step_beyond_is_not() {
        assert!(Dose::from_grams(0.1).is_ok());
        assert!(Dose::from_grams(0.1_f64.next_down()).is_err());
        assert!(Dose::from_grams(10_000.0).is_ok());
        assert!(Dose::from_grams(10_000.0_f64.next_up()).is_err());
        assert!(Dose::from_grams(f64::NAN).is_err());
        assert!(Dose::from_grams(f64::INFINITY).is_err());
    }

    #[test]
    fn counts_are_whole() {
        assert!(Servings::from_count(3.0).is_ok());
        let error = Servings::from_count(2.5).unwrap_err();
        assert_eq!(error.to_string(), "servings: 2.5 is not a whole number from 1 to 1000");
        let whole: std::vec::Vec<_> = Quantity::ALL.iter().filter(|q| q.is_whole()).collect();
        assert_eq!(
            whole,
            [
                &Quantity::Servings,
                &Quantity::Batches,
                &Quantity::ReadingCount,
                &Quantity::BodyCount,
                &Quantity::TermCount,
                &Quantity::RepeatCount,
                &Quantity::Measurements,
                &Quantity::CupNumber,
                &Quantity::StepCount
            ]
        );
    }

    #[test]
    fn negative_zero_is_zero() {
        let ice = Ice::from_grams(-0.0).unwrap();
        assert_eq!(ice.grams().to_bits(), 0.0_f64.to_bits());
    }

    /// From one end of all numbers to the other.
    const NUMBERS: [f64; 13] = [
        f64::NEG_INFINITY,
        f64::MIN,
        -1.5,
        -1.0,
        -f64::MIN_POSITIVE,
        -5e-324,
        0.0,
        5e-324,
        f64::MIN_POSITIVE,
        1.0,
        1.5,
        f64::MAX,
        f64::INFINITY,
    ];

    #[test]
    fn in_software_only_the_negative_zero_changes() {
        assert_eq!(with_one_zero_by_bits(-0.0).to_bits(), 0.0_f64.to_bits());
        for number in NUMBERS.into_iter().chain([f64::NAN, -f64::NAN]) {
            assert_eq!(with_one_zero_by_bits(number).to_bits(), number.to_bits());
        }
    }

    #[test]
    fn places_are_in_the_order_of_numbers() {
        let places = NUMBERS.map(place);
        assert!(places.is_sorted_by(|a, b| a < b), "{places:?}");
        assert_eq!([place(-0.0), place(0.0), place(5e-324), place(-5e-324)], [0, 0, 1, -1]);
        assert!(place(f64::NAN) > place(f64::INFINITY));
        assert!(place(-f64::NAN) < place(f64::NEG_INFINITY));
    }

    #[test]
    fn ranges_by_bits_and_by_places_are_those_of_comparisons() {
        for of in Quantity::ALL.iter().filter(|of| !of.is_whole()) {
            let (lowest, highest) = (of.lowest(), of.highest());
            let edges = [lowest, highest].map(|edge| [edge.next_down(), edge, edge.next_up()]);
            let odd = [0.0, 5e-324, lowest, highest, f64::INFINITY, f64::NAN];
            let values = odd.into_iter().flat_map(|value| [value, -value]);
            for value in values.chain(edges.into_iter().flatten()) {
                let is = value >= lowest && value <= highest;
                assert_eq!(is_within(with_one_zero(value), lowest, highest), is, "{of:?} {value}");
                assert_eq!(of.accepts(value), is, "{of:?} {value}");
            }
        }
    }

    #[test]
    fn shown_with_unit_and_decimals() {
        assert_eq!(Strength::from_percent(1.444).unwrap().to_string(), "1.44 %");
        assert_eq!(std::format!("{:.0}", Dose::from_grams(15.2).unwrap()), "15 g");
    }

    #[test]
    fn water_solids_use_the_density_of_water_at_20_c() {
        let density = crate::water::density(Temperature::known(20.0)).kilograms_per_cubic_metre();
        assert!((density / 1000.0 - KILOGRAMS_PER_LITRE).abs() < 5e-8);
    }
}
