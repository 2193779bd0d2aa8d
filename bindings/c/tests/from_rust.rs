//! The interface called from Rust as C would, so that Miri can watch: pointers that are NULL, memory
//! that is not initialised, answers that replace inputs, and words.

use std::ffi::{CStr, c_char};
use std::mem::MaybeUninit;
use std::ptr::{null, null_mut};

use cupwright::live::{Cue, Doing, Happening, StepKind, Why};
use cupwright_c::advise::*;
use cupwright_c::calibrate::*;
use cupwright_c::caution::*;
use cupwright_c::decision::*;
use cupwright_c::dilution::*;
use cupwright_c::extraction::*;
use cupwright_c::forecast::*;
use cupwright_c::heat::*;
use cupwright_c::plan::*;
use cupwright_c::profile::*;
use cupwright_c::ratio::*;
use cupwright_c::reading::*;
use cupwright_c::retention::*;
use cupwright_c::status::*;
use cupwright_c::uncertainty::*;
use cupwright_c::verdict::*;
use cupwright_c::version::*;
use cupwright_c::water::*;
use cupwright_c::*;

const OK: i32 = cupwright_status::Ok as i32;
const NULL: i32 = cupwright_status::Null as i32;

/// Every function with every pointer NULL; another test sees to it that none is left out.
fn without_pointers(error: *mut cupwright_error) -> Vec<i32> {
    // SAFETY: NULL is refused.
    unsafe {
        vec![
            cupwright_calibrate_retention_line(null(), 1, null_mut(), error),
            cupwright_calibrate_expected_beverage(null(), 1, 1.0, 1.0, 1.0, null_mut(), error),
            cupwright_calibrate_retention(null(), 1, null_mut(), error),
            cupwright_calibrate_heat_capacity(null(), 1, null_mut(), error),
            cupwright_calibrate_equilibrium_yield(null(), 1, null_mut(), error),
            cupwright_calibrate_one_rate(null(), 1, null_mut(), error),
            cupwright_calibrate_two_rates(null(), 1, null_mut(), error),
            cupwright_calibrate_cooling(null(), 1, null(), null_mut(), error),
            cupwright_calibrate_refractive_factor(null(), 1, null_mut(), error),
            cupwright_calibrate_repeatability(null(), 1, null_mut(), error),
            cupwright_caution_of(null(), null_mut(), error),
            cupwright_caution_time_to_burn(1.0, null_mut(), error),
            cupwright_caution_caffeine(1.0, 1.0, 1.0, null_mut(), error),
            cupwright_decision_chances(null(), null(), null_mut(), error),
            cupwright_decision_decide(null(), null(), 1.0, null_mut(), error),
            cupwright_decision_largest_uncertainty(null(), 1.0, 1.0, null_mut(), error),
            cupwright_decision_acceptance(1.0, 1.0, null(), 1.0, null_mut(), error),
            cupwright_decision_readings_needed(
                1.0,
                1.0,
                1.0,
                1.0,
                1.0,
                null(),
                1.0,
                null_mut(),
                error,
            ),
            cupwright_decision_joint(null(), null(), null(), 1.0, null_mut(), error),
            cupwright_decision_decide_joint(50.0, 95.0, null_mut(), error),
            cupwright_decision_compare(null(), null(), 1.0, null_mut(), error),
            cupwright_forecast_strength(null(), null_mut(), error),
            cupwright_forecast_counted_yield(null(), null_mut(), error),
            cupwright_forecast_outlook(null(), null(), null_mut(), error),
            cupwright_advise_on(null(), null(), null(), 1.3, null(), 95.0, null_mut(), error),
            cupwright_dilution_strength_after_water(1.0, 1.0, 1.0, 1.0, null_mut(), error),
            cupwright_dilution_water_to_reach(1.0, 1.0, 1.0, 1.0, null_mut(), error),
            cupwright_dilution_drink_of_brew(1.0, 1.0, 1.0, 1.0, null_mut(), error),
            cupwright_dilution_brew_for_drink(1.0, 1.0, 1.0, 1.0, null_mut(), error),
            cupwright_dilution_split(1.0, 1.0, 1, 1.0, 1.0, 1.0, null_mut(), error),
            cupwright_dilution_with_milk(1.0, 1.0, 1.0, 1.0, null_mut(), error),
            cupwright_dilution_mixed_temperature(1.0, 1.0, 1.0, 1.0, null_mut(), error),
            cupwright_dilution_mixed_with_milk_temperature(1.0, 1.0, 1.0, 1.0, null_mut(), error),
            cupwright_dilution_iced(1.0, 1.0, 1.0, 1.0, 1.0, null_mut(), error),
            cupwright_dilution_ice_to_reach(1.0, 1.0, 1.0, 1.0, null_mut(), error),
            cupwright_extraction_yield(null(), 1.0, null_mut(), error),
            cupwright_extraction_strength(null(), 1.0, null_mut(), error),
            cupwright_extraction_beverage(null(), 1.0, 1.0, null_mut(), error),
            cupwright_extraction_retained_liquid(null(), 1.0, null_mut(), error),
            cupwright_extraction_flow_through_yield(1.0, 1.0, 1.0, null_mut(), error),
            cupwright_extraction_flow_through_strength(1.0, 1.0, 1.0, null_mut(), error),
            cupwright_extraction_steeped_yield(1.0, 1.0, 1.0, null_mut(), error),
            cupwright_extraction_steeped_strength(1.0, 1.0, null_mut(), error),
            cupwright_extraction_steeped_ratio(1.0, 1.0, null_mut(), error),
            cupwright_extraction_oven_dried_yield(1.0, 1.0, 1.0, null_mut(), error),
            cupwright_extraction_dry_basis_yield(1.0, 1.0, null_mut(), error),
            cupwright_extraction_as_weighed_yield(1.0, 1.0, null_mut(), error),
            cupwright_extraction_yield_at_time(null(), 1.0, null_mut(), error),
            cupwright_extraction_time_for_yield(null(), 1.0, null_mut(), error),
            cupwright_extraction_plausibility(null(), 1.0, null_mut(), error),
            cupwright_heat_grounds(1.0, 1.0, null_mut(), error),
            cupwright_heat_capacity(1.0, 1.0, 1.0, null_mut(), error),
            cupwright_heat_settle(1.0, 1.0, null(), 1, null_mut(), error),
            cupwright_heat_before_settling(1.0, 1.0, null(), 1, null_mut(), error),
            cupwright_heat_preheated(null(), 1.0, 1.0, null_mut(), error),
            cupwright_heat_vessel_heat_capacity(1.0, 1.0, 1.0, 1.0, null(), 1, null_mut(), error),
            cupwright_heat_after_vapour(1.0, 1.0, 1.0, 1.0, null_mut(), error),
            cupwright_heat_after_pour(1.0, 1.0, null_mut(), error),
            cupwright_heat_before_pour(1.0, 1.0, null_mut(), error),
            cupwright_heat_reachable(1.0, 1.0, null_mut(), error),
            cupwright_heat_time_to_cool(1.0, 1.0, 1.0, null(), null_mut(), error),
            cupwright_heat_cooling_rate(1.0, 1.0, 1.0, null(), null_mut(), error),
            cupwright_heat_temperature_after(1.0, 1.0, 1.0, null(), null_mut(), error),
            cupwright_heat_open_cup_rate_estimate(1.0, 1.0, 1.0, null_mut(), error),
            cupwright_profile_to_bytes(null(), null_mut(), error),
            cupwright_profile_from_bytes(null(), 1, null_mut(), error),
            cupwright_profile_keep_retention_line(null(), null(), null_mut(), error),
            cupwright_profile_keep_retention(null(), null(), null_mut(), error),
            cupwright_profile_keep_one_rate(null(), null(), null_mut(), error),
            cupwright_profile_keep_two_rates(null(), null(), null_mut(), error),
            cupwright_profile_keep_heat_capacity(null(), null(), null_mut(), error),
            cupwright_profile_keep_cup_cooling(null(), null(), null_mut(), error),
            cupwright_profile_keep_refractive_factor(null(), null(), null_mut(), error),
            cupwright_profile_keep_repeatability(null(), null(), null_mut(), error),
            cupwright_profile_expected_beverage(null(), 1.0, 1.0, 1.0, null_mut(), error),
            cupwright_profile_rates(null(), null_mut(), error),
            cupwright_profile_plateau(null(), null_mut(), error),
            cupwright_profile_means(null(), 1.0, null_mut(), error),
            cupwright_uncertainty_temperature_after(
                null(),
                null(),
                null(),
                null(),
                null_mut(),
                error,
            ),
            cupwright_uncertainty_yield_at_time(null(), null(), null(), null_mut(), error),
            cupwright_uncertainty_time_for_yield(null(), null(), 1.0, null_mut(), error),
            cupwright_plan_recipe(null(), null(), null(), null(), null_mut(), error),
            cupwright_plan_foreseen(null(), null(), null(), null(), null(), null_mut(), error),
            cupwright_plan_surest(null(), null(), null(), null(), null(), null_mut(), error),
            cupwright_ratio_water_ratio(1.0, 1.0, null_mut(), error),
            cupwright_ratio_water_for_ratio(1.0, 1.0, null_mut(), error),
            cupwright_ratio_dose_for_water(1.0, 1.0, null_mut(), error),
            cupwright_ratio_beverage_ratio(1.0, 1.0, null_mut(), error),
            cupwright_ratio_beverage_for_ratio(1.0, 1.0, null_mut(), error),
            cupwright_ratio_dose_for_beverage(1.0, 1.0, null_mut(), error),
            cupwright_ratio_dose_per_litre(1.0, 1.0, null_mut(), error),
            cupwright_ratio_of_dose_per_litre(1.0, 1.0, null_mut(), error),
            cupwright_ratio_water_mass(1.0, 1.0, null_mut(), error),
            cupwright_ratio_water_volume(1.0, 1.0, null_mut(), error),
            cupwright_ratio_for_servings(1.0, 1.0, 1, null_mut(), error),
            cupwright_ratio_whole_cups(1.0, 1.0, null_mut(), error),
            cupwright_ratio_batches(1.0, 1.0, 1.0, null(), null_mut(), error),
            cupwright_ratio_largest_dose(1.0, 1.0, null(), null_mut(), error),
            cupwright_reading_critical_range(1, 1.0, null_mut(), error),
            cupwright_reading_combine(null(), 1, 1.0, null_mut(), error),
            cupwright_reading_repeatability(null(), 1, null_mut(), error),
            cupwright_reading_total_strength(1.0, 1, 1.0, null_mut(), error),
            cupwright_reading_coffee_strength(1.0, 1, 1.0, null_mut(), error),
            cupwright_reading_brix_of_index(1.0, null_mut(), error),
            cupwright_reading_index_of_brix(1.0, null_mut(), error),
            cupwright_reading_brix_at_20(1.0, 1.0, null_mut(), error),
            cupwright_reading_strength_of_brix(1.0, 1.0, null_mut(), error),
            cupwright_reading_brix_of_strength(1.0, 1.0, null_mut(), error),
            cupwright_reading_strength_of_index(1.0, 1.0, 1.0, null_mut(), error),
            cupwright_retention_beverage(null(), 1.0, 1.0, null_mut(), error),
            cupwright_retention_water_for_beverage(null(), 1.0, 1.0, null_mut(), error),
            cupwright_retention_dose_for_beverage(null(), 1.0, 1.0, null_mut(), error),
            cupwright_retention_of_brew(null(), 1.0, 1.0, 1.0, null_mut(), error),
            cupwright_retention_apparent_retention(1.0, 1.0, 1.0, null_mut(), error),
            cupwright_retention_true_retention(1.0, 1.0, 1.0, 1.0, 1.0, null_mut(), error),
            cupwright_retention_apparent_of_true_retention(
                1.0,
                1.0,
                1.0,
                1.0,
                1.0,
                null_mut(),
                error,
            ),
            cupwright_retention_of_spent_moisture(1.0, 1.0, null_mut(), error),
            cupwright_uncertainty_coverage_factor(1.0, 1.0, null_mut(), error),
            cupwright_uncertainty_expanded(null(), 1.0, null_mut(), error),
            cupwright_uncertainty_of_repeats(null(), 1, null_mut(), error),
            cupwright_uncertainty_pooled(null(), 1, 1, null_mut(), error),
            cupwright_uncertainty_of_readings(null(), 2, null(), null_mut(), error),
            cupwright_uncertainty_together(null(), 2, null_mut(), error),
            cupwright_uncertainty_strength_of_brix(null(), null(), null_mut(), error),
            cupwright_uncertainty_settle(null(), null(), null_mut(), error),
            cupwright_uncertainty_time_to_cool(null(), 60.0, null(), null(), null_mut(), error),
            cupwright_uncertainty_of_limit(1.0, 1, null_mut(), error),
            cupwright_uncertainty_of_display(1.0, null_mut(), error),
            cupwright_uncertainty_of_expanded(1.0, 1.0, null_mut(), error),
            cupwright_uncertainty_freedom_of_doubt(1.0, null_mut(), error),
            cupwright_uncertainty_combine(1.0, null(), 1, null_mut(), error),
            cupwright_uncertainty_strength(null(), null(), null(), 1, null(), null_mut(), error),
            cupwright_uncertainty_flow_through_yield(
                null(),
                null(),
                null(),
                null(),
                null_mut(),
                error,
            ),
            cupwright_uncertainty_steeped_yield(null(), null(), null(), null(), null_mut(), error),
            cupwright_uncertainty_extraction_yield(null(), null_mut(), error),
            cupwright_uncertainty_steeped_strength(null(), null(), null(), null_mut(), error),
            cupwright_uncertainty_beverage(
                null(),
                null(),
                null(),
                null(),
                null(),
                null_mut(),
                error,
            ),
            cupwright_uncertainty_water_to_reach(null(), null(), 1.0, null(), null_mut(), error),
            cupwright_uncertainty_strength_after_water(
                null(),
                null(),
                null(),
                null(),
                null_mut(),
                error,
            ),
            cupwright_uncertainty_mixed_temperature(null(), null(), null_mut(), error),
            cupwright_verdict_stand(null(), 1.0, 1.0, null_mut(), error),
            cupwright_water_density(1.0, null_mut(), error),
            cupwright_water_specific_heat(1.0, null_mut(), error),
            cupwright_water_enthalpy(1.0, null_mut(), error),
            cupwright_water_temperature_of_enthalpy(1.0, null_mut(), error),
            cupwright_water_vapour_pressure(1.0, null_mut(), error),
            cupwright_water_boiling_point(1.0, null_mut(), error),
            cupwright_water_latent_heat(1.0, null_mut(), error),
            cupwright_water_pressure_at_altitude(1.0, null_mut(), error),
            cupwright_water_altitude_at_pressure(1.0, null_mut(), error),
        ]
    }
}

fn words(text: *const c_char) -> String {
    // SAFETY: the interface's words end with a zero byte and live for ever.
    unsafe { CStr::from_ptr(text) }.to_str().unwrap().to_string()
}

#[test]
fn null_is_refused_with_and_without_a_place_for_the_error() {
    let mut error = MaybeUninit::uninit();
    for error in [null_mut(), error.as_mut_ptr()] {
        let statuses = without_pointers(error);
        assert!(statuses.iter().all(|status| *status == NULL), "{statuses:?}");
    }
    // SAFETY: the last call wrote it.
    let error: cupwright_error = unsafe { error.assume_init() };
    assert_eq!((error.status, error.quantity), (NULL, 0));
    assert_eq!(words(error.field), "altitude_m");
}

#[test]
fn an_answer_goes_to_memory_that_nobody_initialised() {
    let mut answer = MaybeUninit::uninit();
    // SAFETY: the places are there.
    let status = unsafe { cupwright_water_boiling_point(101.325, answer.as_mut_ptr(), null_mut()) };
    assert_eq!(status, OK);
    // SAFETY: the call wrote it.
    assert!((unsafe { answer.assume_init() } - 99.974).abs() < 0.001);
}

#[test]
fn an_answer_may_replace_its_input() {
    let mut vessel = cupwright_body { heat_capacity_j_per_k: 180.0, body_c: 11.0 };
    let place = &raw mut vessel;
    // SAFETY: both pointers are to the vessel.
    let status = unsafe { cupwright_heat_preheated(place, 756.0, 98.2, place, null_mut()) };
    assert_eq!(status, OK);
    assert!(vessel.body_c > 93.0 && vessel.heat_capacity_j_per_k == 180.0, "{vessel:?}");
}

#[test]
fn a_refusal_tells_its_facts_and_leaves_the_answer_alone() {
    let (mut answer, mut error) = (7.0, MaybeUninit::uninit());
    // SAFETY: the places are there.
    let status =
        unsafe { cupwright_ratio_water_ratio(15.0, f64::NAN, &raw mut answer, error.as_mut_ptr()) };
    // SAFETY: the call wrote it.
    let error: cupwright_error = unsafe { error.assume_init() };
    assert_eq!((status, error.status), (1, 1));
    assert_eq!(answer, 7.0);
    assert_eq!(words(error.field), "water_g");
    assert_eq!(words(cupwright_quantity_text(error.quantity)), "brew water");
    assert!(error.value.is_nan() && error.lowest == 0.1 && error.highest == 200_000.0);
}

#[test]
fn lists_are_read_as_far_as_they_go() {
    let readings = [1.44, 1.46, 1.45];
    let bodies = [cupwright_body { heat_capacity_j_per_k: 25.0, body_c: 21.0 }; 8];
    let (mut combined, mut settled) = (MaybeUninit::uninit(), 0.0);
    // SAFETY: the places are there, and so many items.
    unsafe {
        let status = cupwright_reading_combine(
            readings.as_ptr(),
            readings.len(),
            0.01,
            combined.as_mut_ptr(),
            null_mut(),
        );
        assert_eq!(status, OK);
        let combined: cupwright_combined = combined.assume_init();
        assert_eq!(combined.agreement, cupwright_agreement::Mean as i32);
        for count in 0..=bodies.len() {
            let bodies = if count == 0 { null() } else { bodies.as_ptr() };
            let status =
                cupwright_heat_settle(250.0, 95.0, bodies, count, &raw mut settled, null_mut());
            assert_eq!(status, OK, "{count}");
        }
        assert_eq!(
            cupwright_heat_settle(250.0, 95.0, bodies.as_ptr(), 9, &raw mut settled, null_mut()),
            cupwright_status::OutOfRange as i32
        );
    }
}

#[test]
fn the_longest_lists_are_taken_and_longer_ones_refused() {
    let repeats = [1.44; 101];
    let influence = cupwright_influence { sensitivity: 2.0, u: 0.5, degrees_of_freedom: 9.0 };
    let influences = [influence; 11];
    let (mut mean, mut budget) = (MaybeUninit::uninit(), MaybeUninit::uninit());
    let mut error = MaybeUninit::uninit();
    let mut of_repeats = |count| {
        let (repeats, mean) = (repeats.as_ptr(), mean.as_mut_ptr());
        // SAFETY: the places are there, and so many items.
        unsafe { cupwright_uncertainty_of_repeats(repeats, count, mean, error.as_mut_ptr()) }
    };
    let too_many = cupwright_status::OutOfRange as i32;
    assert_eq!([2, 100, 101, 1].map(&mut of_repeats), [OK, OK, too_many, too_many]);
    let mut combine = |count| {
        let (influences, budget) = (influences.as_ptr(), budget.as_mut_ptr());
        // SAFETY: the places are there, and so many items.
        unsafe { cupwright_uncertainty_combine(1.0, influences, count, budget, null_mut()) }
    };
    assert_eq!([0, 11, 1, 10].map(&mut combine), [too_many, too_many, OK, OK]);
    // SAFETY: the calls wrote them.
    let (mean, budget, error) =
        unsafe { (mean.assume_init(), budget.assume_init(), error.assume_init()) };
    assert_eq!((mean.value, mean.u, mean.degrees_of_freedom), (1.44, 0.0, 99.0));
    assert_eq!((words(error.field), error.value), ("count".to_string(), 1.0));
    assert_eq!((budget.term_count, budget.terms[9].contribution), (10, 1.0));
    assert_eq!((budget.has_dominant, budget.dominant.share_pct), (1, 10.0));
}

#[test]
fn measurements_that_cannot_tell_say_why() {
    let samples = [cupwright_dried { brix: 1.5, strength_pct: 1.27 }; 31];
    let (mut fitted, mut error) = (MaybeUninit::uninit(), MaybeUninit::uninit());
    let mut factor = |count| {
        let samples = if count == 0 { null() } else { samples.as_ptr() };
        let (fitted, error) = (fitted.as_mut_ptr(), error.as_mut_ptr());
        // SAFETY: the places are there, and so many items.
        unsafe { cupwright_calibrate_refractive_factor(samples, count, fitted, error) }
    };
    let (too_many, too_few) =
        (cupwright_status::OutOfRange as i32, cupwright_status::CannotTell as i32);
    assert_eq!([0, 31, 2, 30, 1].map(&mut factor), [too_few, too_many, OK, OK, too_few]);
    // SAFETY: the calls wrote them.
    let (fitted, error): (cupwright_fitted_refractive_factor, cupwright_error) =
        unsafe { (fitted.assume_init(), error.assume_init()) };
    assert_eq!((fitted.quality.measurements, fitted.quality.degrees_of_freedom), (30, 29.0));
    assert_eq!((error.value, error.lowest), (1.0, 2.0));
    assert_eq!(error.limit, cupwright_untold::TooFew as i32);
    assert!(error.field.is_null());
}

#[test]
fn a_profile_comes_back_from_its_bytes() {
    // SAFETY: zeros are numbers and flags.
    let mut profile: cupwright_profile = unsafe { MaybeUninit::zeroed().assume_init() };
    profile.cup_j_per_k = cupwright_learned { value: 120.0, u: 4.0, degrees_of_freedom: 2.0 };
    profile.has_cup = 1;
    profile.retention_correlation = -0.9;
    profile.has_retention_correlation = 1;
    let (mut bytes, mut back) = ([0; CUPWRIGHT_PROFILE_BYTES], MaybeUninit::uninit());
    // SAFETY: the places are there.
    unsafe {
        assert_eq!(cupwright_profile_to_bytes(&profile, bytes.as_mut_ptr(), null_mut()), OK);
        let (place, count) = (back.as_mut_ptr(), bytes.len());
        assert_eq!(cupwright_profile_from_bytes(bytes.as_ptr(), count, place, null_mut()), OK);
        assert_eq!(back.assume_init(), profile);
        bytes[100] ^= 1;
        let mut error = MaybeUninit::uninit();
        let status = cupwright_profile_from_bytes(bytes.as_ptr(), count, place, error.as_mut_ptr());
        let error: cupwright_error = error.assume_init();
        assert_eq!(status, cupwright_status::Unreadable as i32);
        assert_eq!(error.limit, cupwright_unreadable::Damaged as i32);
    }
}

#[test]
fn a_profile_is_kept_and_asked() {
    let drained = |dose: f64, kept: f64| cupwright_drained {
        dose_g: dose,
        water_g: 16.0 * dose,
        beverage_g: 16.0 * dose - kept,
        vapour_g: 0.0,
    };
    let brews = [drained(12.0, 27.9), drained(20.0, 43.4), drained(30.0, 65.6)];
    let timed = |contact_s, yield_pct| cupwright_timed { contact_s, yield_pct };
    let yields = [timed(30.0, 9.1), timed(60.0, 13.9), timed(120.0, 18.6), timed(300.0, 20.7)];
    // SAFETY: zeros are numbers and flags.
    let mut profile: cupwright_profile = unsafe { MaybeUninit::zeroed().assume_init() };
    let mut error = MaybeUninit::uninit();
    // SAFETY: the places are there; a profile replaces itself.
    unsafe {
        let mut means = MaybeUninit::uninit();
        let asked = cupwright_profile_means(&profile, 93.0, means.as_mut_ptr(), null_mut());
        assert_eq!((asked, means.assume_init().has_rates), (OK, 0));
        let mut next = MaybeUninit::uninit();
        let (place, why) = (next.as_mut_ptr(), error.as_mut_ptr());
        let status = cupwright_profile_expected_beverage(&profile, 15.0, 240.0, 0.0, place, why);
        let refused: cupwright_error = error.assume_init();
        assert_eq!(status, cupwright_status::NotKept as i32);
        assert_eq!(CStr::from_ptr(refused.field), c"apparent_retention_g_per_g");

        let (mut line, mut law) = (MaybeUninit::uninit(), MaybeUninit::uninit());
        let fitted =
            cupwright_calibrate_retention_line(brews.as_ptr(), 3, line.as_mut_ptr(), null_mut());
        assert_eq!(fitted, OK);
        assert_eq!(
            cupwright_calibrate_one_rate(yields.as_ptr(), 4, law.as_mut_ptr(), null_mut()),
            OK
        );
        let (line, law) = (line.assume_init(), law.assume_init());
        let itself = &raw mut profile;
        assert_eq!(cupwright_profile_keep_retention_line(itself, &line, itself, null_mut()), OK);
        assert_eq!(cupwright_profile_keep_one_rate(itself, &law, itself, null_mut()), OK);
        let mut bad = line;
        bad.covariance_g2_per_g = f64::NAN;
        let status = cupwright_profile_keep_retention_line(itself, &bad, itself, why);
        let refused: cupwright_error = error.assume_init();
        assert_eq!(status, cupwright_status::OutOfRange as i32);
        assert_eq!(CStr::from_ptr(refused.field), c"covariance_g2_per_g");

        let mut by_line = MaybeUninit::uninit();
        let asked = cupwright_calibrate_expected_beverage(
            brews.as_ptr(),
            3,
            15.0,
            240.0,
            1.0,
            by_line.as_mut_ptr(),
            null_mut(),
        );
        assert_eq!(asked, OK);
        let asked = cupwright_profile_expected_beverage(itself, 15.0, 240.0, 1.0, place, why);
        assert_eq!(asked, OK);
        let (kept, fitted) = (next.assume_init(), by_line.assume_init());
        assert_eq!(
            (kept.beverage_g, kept.u_beverage_g, kept.degrees_of_freedom, kept.u_mean_g),
            (fitted.beverage_g, fitted.u_beverage_g, fitted.degrees_of_freedom, fitted.u_mean_g)
        );
        assert_eq!(cupwright_profile_means(itself, 93.0, means.as_mut_ptr(), why), OK);
        let means = means.assume_init();
        assert_eq!((means.has_rates, means.has_kept, means.has_chamber), (1, 1, 0));
        assert_eq!(means.rates.u_ln_fast_time, law.u_ln_time_constant);
        let mut plateau = MaybeUninit::uninit();
        assert_eq!(cupwright_profile_plateau(itself, plateau.as_mut_ptr(), why), OK);
        let together = plateau.assume_init().correlation_equilibrium_fast;
        let by_fit = law.covariance_pct / (law.u_equilibrium_yield_pct * law.u_ln_time_constant);
        assert!((together - by_fit).abs() < 1e-15, "{together} {by_fit}");
    }
}

#[test]
fn a_choice_that_is_none_is_refused() {
    let room = cupwright_surroundings { room_c: 20.0, humidity_pct: 50.0, cover: 0 };
    let (mut time, mut error) = (0.0, MaybeUninit::uninit());
    // SAFETY: the places are there.
    let status = unsafe {
        cupwright_heat_time_to_cool(90.0, 60.0, 0.01, &room, &raw mut time, error.as_mut_ptr())
    };
    // SAFETY: the call wrote it.
    let error: cupwright_error = unsafe { error.assume_init() };
    assert_eq!(status, cupwright_status::UnknownChoice as i32);
    assert_eq!(words(error.field), "cover");
    let total = |zero| {
        let mut total = 0.0;
        // SAFETY: the place is there.
        unsafe { cupwright_reading_total_strength(1.4, zero, 80.0, &raw mut total, null_mut()) }
    };
    assert_eq!([0, 1, 2, 3].map(total), [8, OK, OK, 8]);
}

#[test]
fn every_code_has_words() {
    assert_eq!(words(cupwright_version_text()), env!("CARGO_PKG_VERSION"));
    assert_eq!(cupwright_abi_version(), CUPWRIGHT_ABI_VERSION);
    for quantity in cupwright::quantity::Quantity::ALL {
        assert_eq!(words(cupwright_quantity_text(*quantity as i32)), quantity.name());
        assert_eq!(words(cupwright_unit_text(*quantity as i32)), quantity.unit());
    }
    for limit in cupwright::error::Limit::ALL {
        assert_eq!(words(cupwright_limit_text(*limit as i32)), limit.words());
    }
    for why in cupwright::error::Untold::ALL {
        assert_eq!(words(cupwright_untold_text(*why as i32)), why.words());
        assert_eq!(words(cupwright_wanting_text(*why as i32)), why.wanting());
    }
    for caution in cupwright::caution::Caution::ALL {
        assert_eq!(words(cupwright_caution_text(caution as i32)), caution.words());
    }
    for doing in Doing::ALL {
        assert_eq!(words(cupwright_doing_text(*doing as i32)), doing.words());
    }
    for happening in Happening::ALL {
        assert_eq!(words(cupwright_happening_text(*happening as i32)), happening.words());
    }
    for step in StepKind::ALL {
        assert_eq!(words(cupwright_step_text(*step as i32)), step.words());
    }
    for cue in Cue::ALL {
        assert_eq!(words(cupwright_cue_text(*cue as i32)), cue.words());
    }
    for why in Why::ALL {
        assert_eq!(words(cupwright_why_text(*why as i32)), why.words());
    }
    for status in 0..=13 {
        assert!(!words(cupwright_status_text(status)).is_empty());
    }
    for why in 1..=6 {
        assert!(!words(cupwright_unreadable_text(why)).is_empty());
    }
    for none in [-1, 10_000, i32::MIN, i32::MAX] {
        assert!(cupwright_doing_text(none).is_null() && cupwright_happening_text(none).is_null());
        assert!(cupwright_step_text(none).is_null() && cupwright_why_text(none).is_null());
        assert!(cupwright_cue_text(none).is_null());
    }
    for none in [-1, 0, 10_000, i32::MIN, i32::MAX] {
        assert!(cupwright_quantity_text(none).is_null());
        assert!(cupwright_unreadable_text(none).is_null());
        assert!(cupwright_untold_text(none).is_null() && cupwright_wanting_text(none).is_null());
        assert!(cupwright_caution_text(none).is_null() && cupwright_limit_text(none).is_null());
    }
}
