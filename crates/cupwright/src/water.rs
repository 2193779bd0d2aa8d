//! Water: density, heat content, vapour pressure, boiling point, and the air pressure that sets it.
//!
//! | function | equation | source | worst difference from IAPWS-95 |
//! |---|---|---|---|
//! | [`density`], [`specific_heat`], [`enthalpy`] | liquid at 0.1 MPa | IAPWS SR6-08(2011) | 0.0001 kg/m³, 0.15 J/(kg K), 0.01 J/g |
//! | [`vapour_pressure`], [`boiling_point`] | saturation line | IAPWS-IF97 region 4, R7-97(2012) | 0.03 %, 0.01 K |
//! | [`latent_heat`] | cubic, fitted here | IAPWS-95 | 0.03 J/g |
//! | [`pressure_at_altitude`] | standard troposphere | ISO 2533:1975 | a definition, not a forecast |
//!
//! None of them needs a search; the two inverses that have no closed form take three Newton steps.

use crate::error::Error;
use crate::math::{exp, ln, sqrt, square};
use crate::quantity::{
    Altitude, Density, Enthalpy, LatentHeat, Pressure, Quantity, SpecificHeat, Temperature,
    VapourPressure, computed,
};

/// 0 °C in kelvin.
const ICE_POINT_K: f64 = 273.15;

// IAPWS SR6-08(2011), table 1 and section 2; Pátek et al., J. Phys. Chem. Ref. Data 38 (2009) 21.
const GAS_CONSTANT: f64 = 461.518_05; // J/(kg K)
const REFERENCE_K: f64 = 10.0;
const REFERENCE_PA: f64 = 1e5;
const HOT_POLE_K: f64 = 593.0;
const COLD_POLE_K: f64 = 232.0;
const C1: f64 = -2.452_093_414e2;
const C3: f64 = -8.983_025_854;
const A1: f64 = -1.661_470_539e5;
const A2: f64 = 2.708_781_640e6;
const A3: f64 = -1.557_191_544e8;
const A5: f64 = 1.937_631_57e-2;
const A6: f64 = 6.744_584_46e3;
const A7: f64 = -2.225_216_04e5;
const A8: f64 = 1.002_312_47e8;
const A9: f64 = -1.635_521_18e9;
const A10: f64 = 8.322_996_58e9;
const B1: f64 = -8.237_426_256e-1;
const B2: f64 = 1.908_956_353;
const B3: f64 = -2.017_597_384;
const B4: f64 = 8.546_361_348e-1;
const B5: f64 = 5.785_452_92e-3;
const B6: f64 = -1.531_956_65e-2;
const B7: f64 = 3.113_378_59e-2;
const B8: f64 = -4.235_462_41e-2;
const B9: f64 = 3.387_135_07e-2;
const B10: f64 = -1.199_467_61e-2;

/// Density ρ of liquid water at 0.1 MPa.
///
/// ```text
/// 1/ρ = (R Tr/p0) [ a5 + Σ aᵢ αⁿⁱ + Σ bᵢ βᵐⁱ ],  α = Tr/(593 K − T),  β = Tr/(T − 232 K)
/// ```
///
/// Symbols: ρ density in kg/m³, T temperature in K, α and β without unit; R = 461.51805 J/(kg K),
/// Tr = 10 K, p0 = 100 kPa; a5 and aᵢ, nᵢ (i = 6 to 10) and bᵢ, mᵢ (i = 5 to 10) the numbers of the
/// release's table 1, without unit. Above 99.6 °C the liquid is superheated, which the equation covers
/// up to 110 °C. Source: IAPWS SR6-08(2011), equation 1.
pub fn density(water: Temperature) -> Density {
    let kelvin = water.celsius() + ICE_POINT_K;
    let alpha = REFERENCE_K / (HOT_POLE_K - kelvin);
    let beta = REFERENCE_K / (kelvin - COLD_POLE_K);
    let hot = square(square(alpha))
        * (A6 + alpha * (A7 + square(alpha) * (A8 + alpha * (A9 + alpha * A10))));
    let cold = beta * (B5 + beta * (B6 + beta * (B7 + beta * (B8 + beta * (B9 + beta * B10)))));
    let volume = GAS_CONSTANT * REFERENCE_K / REFERENCE_PA * (A5 + hot + cold);
    Density::known(1.0 / volume)
}

/// Specific heat c of liquid water at 0.1 MPa.
///
/// ```text
/// c = −R [ c3 + τ Σ nᵢ(nᵢ+1) aᵢ αⁿⁱ⁺² + τ Σ mᵢ(mᵢ+1) bᵢ βᵐⁱ⁺² ],  τ = T/Tr
/// ```
///
/// Symbols: c specific heat in J/(kg K), T temperature in K, τ without unit; α, β, R and Tr as for
/// [`density`]; c3 and aᵢ, nᵢ (i = 1 to 3) and bᵢ, mᵢ (i = 1 to 4) the numbers of the release's table 1,
/// without unit. Source: IAPWS SR6-08(2011), equation 4.
pub fn specific_heat(water: Temperature) -> SpecificHeat {
    SpecificHeat::known(specific_heat_at(water.celsius()))
}

/// [`specific_heat`] in J/(g K) for a plain number of degrees.
fn specific_heat_at(celsius: f64) -> f64 {
    let kelvin = celsius + ICE_POINT_K;
    let alpha = REFERENCE_K / (HOT_POLE_K - kelvin);
    let beta = REFERENCE_K / (kelvin - COLD_POLE_K);
    let hot = square(alpha)
        * square(square(alpha))
        * (20.0 * A1 + alpha * (30.0 * A2 + square(alpha) * (56.0 * A3)));
    let cold = square(square(beta))
        * (6.0 * B1 + beta * (12.0 * B2 + beta * (20.0 * B3 + beta * (30.0 * B4))));
    -GAS_CONSTANT * (C3 + kelvin / REFERENCE_K * (hot + cold)) / 1000.0
}

/// Heat content h of liquid water at 0.1 MPa, above that at 0 °C.
///
/// ```text
/// h = g + T s,  less the same at 0 °C
///   = R { Tr [ c1 + Σ aᵢ αⁿⁱ + Σ bᵢ βᵐⁱ ] − T [ c3 + Σ nᵢ aᵢ αⁿⁱ⁺¹ − Σ mᵢ bᵢ βᵐⁱ⁺¹ ] }
/// ```
///
/// In the sum the release's logarithms cancel, so no elementary function is needed.
///
/// Symbols: h heat content in J/kg, g Gibbs energy in J/kg, s entropy in J/(kg K), T temperature in K; α, β, R
/// and Tr as for [`density`]; c1, c3 and aᵢ, nᵢ (i = 1 to 3) and bᵢ, mᵢ (i = 1 to 4) the numbers of the
/// release's table 1, without unit. Source: IAPWS SR6-08(2011), equations 2 and 3.
pub fn enthalpy(water: Temperature) -> Enthalpy {
    Enthalpy::known(enthalpy_at(water.celsius()))
}

/// [`enthalpy`] in J/g for a plain number of degrees.
fn enthalpy_at(celsius: f64) -> f64 {
    const AT_ICE_POINT: f64 = absolute_enthalpy(ICE_POINT_K);
    (absolute_enthalpy(celsius + ICE_POINT_K) - AT_ICE_POINT) / 1000.0
}

/// Enthalpy in J/kg on the release's own zero.
const fn absolute_enthalpy(kelvin: f64) -> f64 {
    let alpha = REFERENCE_K / (HOT_POLE_K - kelvin);
    let beta = REFERENCE_K / (kelvin - COLD_POLE_K);
    let alpha2 = alpha * alpha;
    let beta2 = beta * beta;
    let gibbs = C1
        + alpha2 * alpha2 * (A1 + alpha * (A2 + alpha2 * A3))
        + beta2 * (B1 + beta * (B2 + beta * (B3 + beta * B4)));
    let entropy = C3
        + alpha2 * alpha2 * alpha * (4.0 * A1 + alpha * (5.0 * A2 + alpha2 * (7.0 * A3)))
        - beta2 * beta * (2.0 * B1 + beta * (3.0 * B2 + beta * (4.0 * B3 + beta * (5.0 * B4))));
    GAS_CONSTANT * (REFERENCE_K * gibbs - kelvin * entropy)
}

/// The temperature at which liquid water has the heat content given: the inverse of [`enthalpy`].
///
/// ```text
/// h(t) = h, solved for t
/// ```
///
/// Symbols: h heat content above 0 °C in J/g, t temperature in °C. Source: IAPWS SR6-08(2011),
/// equations 2 and 3, by three of Newton's steps.
///
/// # Errors
/// [`Error::ResultOutOfRange`] above the heat content at 105 °C.
pub fn temperature_of_enthalpy(heat: Enthalpy) -> Result<Temperature, Error> {
    balanced_temperature(1.0, 0.0, heat.joules_per_gram())
}

/// Solves M h(t) + C t = H for t: the common temperature of M grams of water and of dry bodies with
/// a heat capacity of C J/K, holding H joules together above 0 °C.
///
/// # Errors
/// [`Error::ResultOutOfRange`] when that is not a temperature of liquid water.
pub(crate) fn balanced_temperature(
    water_g: f64,
    dry_j_per_k: f64,
    heat_j: f64,
) -> Result<Temperature, Error> {
    // h is straight within 0.2 %, so the straight answer starts within 0.3 K of the true one and
    // three Newton steps reach the last bit or two.
    let mut celsius = heat_j / (4.19 * water_g + dry_j_per_k);
    // Farther out the equation does not hold, and the straight answer is refused as it is.
    if (-15.0..115.0).contains(&celsius) {
        for _ in 0..3 {
            let holds = water_g * enthalpy_at(celsius) + dry_j_per_k * celsius;
            let slope = water_g * specific_heat_at(celsius) + dry_j_per_k;
            celsius -= (holds - heat_j) / slope;
        }
    }
    computed(without_rounding_past_an_end(celsius))
}

/// Two liquids at an end of the range mix at that end, whatever the last bit says.
fn without_rounding_past_an_end(celsius: f64) -> f64 {
    const ROUNDING_K: f64 = 1e-9;
    let (lowest, highest) = (Quantity::Temperature.lowest(), Quantity::Temperature.highest());
    if celsius < lowest && celsius > lowest - ROUNDING_K {
        lowest
    } else if celsius > highest && celsius < highest + ROUNDING_K {
        highest
    } else {
        celsius
    }
}

/// Vapour pressure p of water.
///
/// ```text
/// p = [ 2C / (−B + √(B² − 4AC)) ]⁴
/// ϑ = T + n9/(T − n10),  A = ϑ² + n1 ϑ + n2,  B = n3 ϑ² + n4 ϑ + n5,  C = n6 ϑ² + n7 ϑ + n8
/// ```
///
/// Symbols: p vapour pressure in MPa and T temperature in K, as numbers; ϑ, A, B, C and n1 to n10, those of
/// the release's table 34, without unit. Source: IAPWS-IF97 region 4, R7-97(2012), equation 30. Between 0
/// and 0.01 °C, below the triple point, the equation is used just outside its stated range.
pub fn vapour_pressure(water: Temperature) -> VapourPressure {
    VapourPressure::known(vapour_pressure_at(water.celsius()))
}

// IAPWS-IF97 region 4, table 34.
const N1: f64 = 0.116_705_214_527_67e4;
const N2: f64 = -0.724_213_167_032_06e6;
const N3: f64 = -0.170_738_469_400_92e2;
const N4: f64 = 0.120_208_247_024_70e5;
const N5: f64 = -0.323_255_503_223_33e7;
const N6: f64 = 0.149_151_086_135_30e2;
const N7: f64 = -0.482_326_573_615_91e4;
const N8: f64 = 0.405_113_405_420_57e6;
const N9: f64 = -0.238_555_575_678_49;
const N10: f64 = 0.650_175_348_447_98e3;

/// [`vapour_pressure`] in kPa for a plain number of degrees. Below 0 °C it continues the liquid's
/// curve (supercooled water), as far as cold air needs.
pub(crate) fn vapour_pressure_at(celsius: f64) -> f64 {
    let kelvin = celsius + ICE_POINT_K;
    let theta = kelvin + N9 / (kelvin - N10);
    let a = square(theta) + N1 * theta + N2;
    let b = N3 * square(theta) + N4 * theta + N5;
    let c = N6 * square(theta) + N7 * theta + N8;
    let root = 2.0 * c / (-b + sqrt(b * b - 4.0 * a * c));
    square(square(root)) * 1000.0
}

/// Boiling point of water under the air pressure given.
///
/// ```text
/// T = [ n10 + D − √((n10 + D)² − 4(n9 + n10 D)) ] / 2
/// D = 2G / (−F − √(F² − 4EG))
/// β = p^¼,  E = β² + n3 β + n6,  F = n1 β² + n4 β + n7,  G = n2 β² + n5 β + n8
/// ```
///
/// Symbols: T boiling point in K and p air pressure in MPa, as numbers; β, D, E, F, G and n1 to n10, as for
/// [`vapour_pressure`], without unit. It is 81.3 to 102.3 °C over the range of [`Pressure`]. Source: IAPWS-IF97
/// region 4, R7-97(2012), equation 31. Dissolved minerals raise it by less than 0.01 K in any drinking water.
///
/// ```
/// # use cupwright::{quantity::Pressure, water};
/// let sea_level = Pressure::from_kilopascals(101.325)?;
/// assert_eq!(format!("{:.3}", water::boiling_point(sea_level)), "99.974 °C");
/// # Ok::<(), cupwright::Error>(())
/// ```
pub fn boiling_point(air: Pressure) -> Temperature {
    let beta2 = sqrt(air.kilopascals() / 1000.0);
    let beta = sqrt(beta2);
    let e = beta2 + N3 * beta + N6;
    let f = N1 * beta2 + N4 * beta + N7;
    let g = N2 * beta2 + N5 * beta + N8;
    let d = 2.0 * g / (-f - sqrt(f * f - 4.0 * e * g));
    let sum = N10 + d;
    let kelvin = (sum - sqrt(sum * sum - 4.0 * (N9 + N10 * d))) / 2.0;
    Temperature::known(kelvin - ICE_POINT_K)
}

/// Latent heat of vaporisation.
///
/// ```text
/// L = 2500.92 − 2.37625 t + 5.6406·10⁻⁴ t² − 1.25409·10⁻⁵ t³   J/g, t in °C
/// ```
///
/// Symbols: L latent heat in J/g, t temperature in °C. Source: fitted here to IAPWS-95, R6-95(2018), over
/// 0 to 100 °C, where it is within 0.02 J/g.
pub fn latent_heat(water: Temperature) -> LatentHeat {
    let t = water.celsius();
    LatentHeat::known(2500.92 + t * (-2.376_25 + t * (5.6406e-4 - t * 1.254_09e-5)))
}

// ISO 2533:1975, troposphere.
const SEA_LEVEL_KPA: f64 = 101.325;
const SEA_LEVEL_K: f64 = 288.15;
const LAPSE_K_PER_M: f64 = 0.0065;
/// g0 / (R × lapse rate) with g0 = 9.80665 m/s² and R = 287.05287 J/(kg K).
const EXPONENT: f64 = 9.806_65 / (287.052_87 * LAPSE_K_PER_M);

/// Air pressure in the standard atmosphere.
///
/// ```text
/// p = p0 (1 − Γ H / T0)^(g / (R Γ))
/// ```
///
/// Symbols: p air pressure in kPa, H altitude in m; p0 = 101.325 kPa and T0 = 288.15 K at sea level,
/// lapse rate Γ = 0.0065 K/m, g = 9.80665 m/s², R = 287.05287 J/(kg K); the exponent is 5.25588.
///
/// H is geopotential altitude; taking a map's altitude for it moves the boiling point by less than
/// 0.01 K up to 4000 m. Weather moves the pressure by ±2.5 kPa and so the boiling point by
/// [`ALTITUDE_ONLY_UNCERTAINTY_K`]: a barometer's station pressure is better where there is one.
/// Source: ISO 2533:1975.
pub fn pressure_at_altitude(altitude: Altitude) -> Pressure {
    let ratio = 1.0 - LAPSE_K_PER_M * altitude.metres() / SEA_LEVEL_K;
    Pressure::known(SEA_LEVEL_KPA * exp(EXPONENT * ln(ratio)))
}

/// The altitude at which the standard atmosphere has the pressure given: the inverse of
/// [`pressure_at_altitude`].
///
/// ```text
/// H = (T0/Γ) [ 1 − (p/p0)^(R Γ / g) ]
/// ```
///
/// Symbols: as for [`pressure_at_altitude`]. Source: ISO 2533:1975.
///
/// # Errors
/// [`Error::ResultOutOfRange`] outside the range of [`Altitude`], which is a little narrower than that
/// of [`Pressure`].
pub fn altitude_at_pressure(air: Pressure) -> Result<Altitude, Error> {
    let ratio = exp(ln(air.kilopascals() / SEA_LEVEL_KPA) / EXPONENT);
    computed((1.0 - ratio) * SEA_LEVEL_K / LAPSE_K_PER_M)
}

/// How far weather may move the boiling point from the one an altitude alone gives, K.
/// 0.277 K per kPa times a day's ±2.5 kPa (the swing is an estimate).
pub const ALTITUDE_ONLY_UNCERTAINTY_K: f64 = 0.7;

#[cfg(test)]
mod tests {
    use super::*;
    use approx::assert_abs_diff_eq;

    #[test]
    fn only_a_rounding_past_an_end_is_taken_for_it() {
        let ended = without_rounding_past_an_end;
        assert_eq!([-9e-10, -0.0, 105.0, 105.0 + 9e-10].map(ended), [0.0, 0.0, 105.0, 105.0]);
        for other in [-1.0, -1e-9, -2e-9, 1e-12, 60.0, 104.999, 105.000_001, 105.0 + 2e-9, 200.0] {
            assert_eq!(ended(other), other);
        }
    }

    #[test]
    fn enthalpy_is_the_integral_of_the_specific_heat() {
        for celsius in [10.0, 55.0, 105.0] {
            let integral = crate::math::integral(0.0, celsius, 4, specific_heat_at);
            assert_abs_diff_eq!(integral, enthalpy_at(celsius), epsilon = 1e-7);
        }
    }

    #[test]
    fn saturation_inverts() {
        for kilopascals in [50.0, 75.0, 101.325, 110.0] {
            let boiling = boiling_point(Pressure::known(kilopascals));
            assert_abs_diff_eq!(
                vapour_pressure(boiling).kilopascals(),
                kilopascals,
                epsilon = 1e-9 * kilopascals
            );
        }
    }

    #[test]
    fn temperatures_come_back_from_their_heat() {
        for tenths in 0..=1050 {
            let t = Temperature::known(f64::from(tenths) / 10.0);
            let back = temperature_of_enthalpy(enthalpy(t)).unwrap();
            assert_abs_diff_eq!(back.celsius(), t.celsius(), epsilon = 1e-10);
        }
    }
}
