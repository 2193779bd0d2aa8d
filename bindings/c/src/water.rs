//! Water: density, heat content, vapour pressure, boiling point, air pressure.

use cupwright::quantity::Measure;
use cupwright::water;

use crate::call::{answer, checked};
use crate::status::cupwright_error;

/// Density of liquid water at 0.1 MPa. Source: IAPWS SR6-08(2011), equation 1.
///
/// @param water_c Temperature, {Temperature}.
/// @param[out] density_kg_per_m3 {Density}.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_water_density(
    water_c: f64,
    density_kg_per_m3: *mut f64,
    error: *mut cupwright_error,
) -> i32 {
    answer!(density_kg_per_m3, error, |call| Ok(water::density(checked!(call, water_c)?).value()))
}

/// Specific heat of liquid water at 0.1 MPa. Source: IAPWS SR6-08(2011), equation 4.
///
/// @param water_c Temperature, {Temperature}.
/// @param[out] specific_heat_j_per_g_k {SpecificHeat}.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_water_specific_heat(
    water_c: f64,
    specific_heat_j_per_g_k: *mut f64,
    error: *mut cupwright_error,
) -> i32 {
    answer!(specific_heat_j_per_g_k, error, |call| Ok(water::specific_heat(checked!(
        call, water_c
    )?)
    .value()))
}

/// Heat content of liquid water at 0.1 MPa, above that at 0 °C. Source: IAPWS SR6-08(2011), g + T s.
///
/// @param water_c Temperature, {Temperature}.
/// @param[out] enthalpy_j_per_g {Enthalpy}.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_water_enthalpy(
    water_c: f64,
    enthalpy_j_per_g: *mut f64,
    error: *mut cupwright_error,
) -> i32 {
    answer!(enthalpy_j_per_g, error, |call| Ok(water::enthalpy(checked!(call, water_c)?).value()))
}

/// The temperature at which liquid water has a heat content: the inverse of
/// cupwright_water_enthalpy().
///
/// @param enthalpy_j_per_g Heat content, {Enthalpy}.
/// @param[out] water_c {Temperature}.
///
/// Fails with CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE above the heat content at 105 °C.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_water_temperature_of_enthalpy(
    enthalpy_j_per_g: f64,
    water_c: *mut f64,
    error: *mut cupwright_error,
) -> i32 {
    answer!(water_c, error, |call| Ok(call
        .core(water::temperature_of_enthalpy(checked!(call, enthalpy_j_per_g)?))?
        .value()))
}

/// Vapour pressure of water. Source: IAPWS-IF97 region 4, R7-97(2012), equation 30.
///
/// @param water_c Temperature, {Temperature}.
/// @param[out] vapour_pressure_kpa {VapourPressure}.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_water_vapour_pressure(
    water_c: f64,
    vapour_pressure_kpa: *mut f64,
    error: *mut cupwright_error,
) -> i32 {
    answer!(vapour_pressure_kpa, error, |call| Ok(
        water::vapour_pressure(checked!(call, water_c)?).value()
    ))
}

/// Boiling point of water. Source: IAPWS-IF97 region 4, R7-97(2012), equation 31.
///
/// @param pressure_kpa Station pressure, not reduced to sea level, {Pressure}.
/// @param[out] water_c {Temperature}.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_water_boiling_point(
    pressure_kpa: f64,
    water_c: *mut f64,
    error: *mut cupwright_error,
) -> i32 {
    answer!(water_c, error, |call| Ok(water::boiling_point(checked!(call, pressure_kpa)?).value()))
}

/// Latent heat of vaporisation. Source: a cubic fitted to IAPWS-95, within 0.02 J/g from 0 to 100 °C.
///
/// @param water_c Temperature, {Temperature}.
/// @param[out] latent_heat_j_per_g {LatentHeat}.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_water_latent_heat(
    water_c: f64,
    latent_heat_j_per_g: *mut f64,
    error: *mut cupwright_error,
) -> i32 {
    answer!(latent_heat_j_per_g, error, |call| Ok(
        water::latent_heat(checked!(call, water_c)?).value()
    ))
}

/// Air pressure in the standard atmosphere. Weather moves it by ±2.5 kPa, the boiling point by
/// CUPWRIGHT_ALTITUDE_ONLY_UNCERTAINTY_K: a barometer is better. Source: ISO 2533:1975.
///
/// @param altitude_m Altitude, {Altitude}.
/// @param[out] pressure_kpa {Pressure}.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_water_pressure_at_altitude(
    altitude_m: f64,
    pressure_kpa: *mut f64,
    error: *mut cupwright_error,
) -> i32 {
    answer!(pressure_kpa, error, |call| Ok(water::pressure_at_altitude(checked!(
        call, altitude_m
    )?)
    .value()))
}

/// The altitude at which the standard atmosphere has a pressure. Source: ISO 2533:1975.
///
/// @param pressure_kpa Air pressure, {Pressure}.
/// @param[out] altitude_m {Altitude}.
///
/// Fails with CUPWRIGHT_STATUS_RESULT_OUT_OF_RANGE outside the range of the altitude.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn cupwright_water_altitude_at_pressure(
    pressure_kpa: f64,
    altitude_m: *mut f64,
    error: *mut cupwright_error,
) -> i32 {
    answer!(altitude_m, error, |call| Ok(call
        .core(water::altitude_at_pressure(checked!(call, pressure_kpa)?))?
        .value()))
}
