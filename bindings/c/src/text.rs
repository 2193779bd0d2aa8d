//! Plain words for codes, for a display or a log. UTF-8, ended by a zero byte, never freed.

use core::ffi::c_char;
use core::ptr;

use cupwright::caution::Caution;
use cupwright::error::{Limit, Untold};
use cupwright::live::{Cue, Doing, Happening, StepKind, Why};
use cupwright::quantity::Quantity;

use crate::status::{cupwright_status, cupwright_unreadable};

/// Length of words, each ended by a zero byte, one after the other.
macro_rules! ended {
    ($all:expr, $words:path) => {{
        const LENGTH: usize = {
            let (mut all, mut length): (&[_], usize) = (&$all, 0);
            while let Some((first, rest)) = all.split_first() {
                length = length.saturating_add($words(*first).len()).saturating_add(1);
                all = rest;
            }
            length
        };
        const WORDS: [u8; LENGTH] = {
            let mut bytes = [0_u8; LENGTH];
            let (mut all, mut to): (&[_], &mut [u8]) = (&$all, &mut bytes);
            while let Some((first, rest)) = all.split_first() {
                to = put($words(*first).as_bytes(), to);
                all = rest;
            }
            bytes
        };
        static ENDED: [u8; LENGTH] = WORDS;
        &ENDED
    }};
}

/// Copies words, and gives back what lies behind the zero byte after them.
const fn put<'a>(words: &[u8], to: &'a mut [u8]) -> &'a mut [u8] {
    let (here, behind) = to.split_at_mut(words.len());
    here.copy_from_slice(words);
    behind.split_at_mut(1).1
}

/// The words at a place in a list, or NULL.
fn nth(words: &'static [u8], place: Option<usize>) -> *const c_char {
    let all = || words.split_inclusive(|byte| *byte == 0);
    place.and_then(|place| all().nth(place)).map_or(ptr::null(), |found| found.as_ptr().cast())
}

fn quantity(code: i32) -> Option<usize> {
    Quantity::ALL.iter().position(|quantity| *quantity as i32 == code)
}

/// Statuses in plain words.
const STATUSES: [(cupwright_status, &str); 14] = [
    (cupwright_status::Ok, "ok\0"),
    (cupwright_status::OutOfRange, "outside its range\0"),
    (cupwright_status::NotWhole, "not a whole number\0"),
    (cupwright_status::Impossible, "impossible beside the other inputs\0"),
    (cupwright_status::EmptyBand, "an empty band\0"),
    (cupwright_status::ResultOutOfRange, "the result leaves its range\0"),
    (cupwright_status::Infeasible, "cannot be reached\0"),
    (cupwright_status::Null, "a pointer is NULL\0"),
    (cupwright_status::UnknownChoice, "not one of the choices\0"),
    (cupwright_status::Unnamed, "an error without a name\0"),
    (cupwright_status::CannotTell, "measurements that cannot tell\0"),
    (cupwright_status::Unreadable, "something else, or damaged\0"),
    (cupwright_status::NotBegun, "a state that was never begun\0"),
    (cupwright_status::NotKept, "not in the profile\0"),
];

/// A status in plain words; NULL for a code that is none of enum cupwright_status.
#[unsafe(no_mangle)]
pub extern "C" fn cupwright_status_text(status: i32) -> *const c_char {
    ended_at(&STATUSES, |known| known as i32 == status)
}

/// The words of the code that is meant, or NULL.
fn ended_at<C: Copy>(all: &'static [(C, &str)], is_meant: impl Fn(C) -> bool) -> *const c_char {
    let found = all.iter().find(|(known, _)| is_meant(*known));
    found.map_or(ptr::null(), |(_, words)| words.as_ptr().cast())
}

/// The name of a quantity in plain words, "brew water"; NULL for a code that is none of enum
/// cupwright_quantity.
#[unsafe(no_mangle)]
pub extern "C" fn cupwright_quantity_text(quantity_code: i32) -> *const c_char {
    nth(ended!(*Quantity::ALL, Quantity::name), quantity(quantity_code))
}

/// The unit of a quantity as written after a number, "g", "%"; empty for a plain count; NULL for a
/// code that is none of enum cupwright_quantity.
#[unsafe(no_mangle)]
pub extern "C" fn cupwright_unit_text(quantity_code: i32) -> *const c_char {
    nth(ended!(*Quantity::ALL, Quantity::unit), quantity(quantity_code))
}

/// A limit in plain words, "even boiling water does not arrive so hot"; NULL for a code that is none
/// of enum cupwright_limit.
#[unsafe(no_mangle)]
pub extern "C" fn cupwright_limit_text(limit: i32) -> *const c_char {
    let place = Limit::ALL.iter().position(|known| *known as i32 == limit);
    nth(ended!(*Limit::ALL, Limit::words), place)
}

fn untold(code: i32) -> Option<usize> {
    Untold::ALL.iter().position(|known| *known as i32 == code)
}

/// Why measurements cannot tell, in plain words, "there are too few"; NULL for a code that is none of
/// enum cupwright_untold.
#[unsafe(no_mangle)]
pub extern "C" fn cupwright_untold_text(why: i32) -> *const c_char {
    nth(ended!(*Untold::ALL, Untold::words), untold(why))
}

/// What is wanting where measurements cannot tell, in plain words, "gap between doses in g"; NULL for a
/// code that is none of enum cupwright_untold.
#[unsafe(no_mangle)]
pub extern "C" fn cupwright_wanting_text(why: i32) -> *const c_char {
    nth(ended!(*Untold::ALL, Untold::wanting), untold(why))
}

/// Why bytes cannot be read, in plain words.
const UNREADABLE: [(cupwright_unreadable, &str); 6] = [
    (cupwright_unreadable::Length, "not as many bytes as there should be\0"),
    (cupwright_unreadable::Foreign, "they do not begin as they should\0"),
    (cupwright_unreadable::Version, "a version of the layout that is not known here\0"),
    (cupwright_unreadable::Damaged, "they have changed since they were written\0"),
    (cupwright_unreadable::NotBlank, "there is something where this version has nothing\0"),
    (cupwright_unreadable::Unsound, "the numbers are of no state that can be\0"),
];

/// Why bytes cannot be read, in plain words, "they have changed since they were written"; NULL for a
/// code that is none of enum cupwright_unreadable.
#[unsafe(no_mangle)]
pub extern "C" fn cupwright_unreadable_text(why: i32) -> *const c_char {
    ended_at(&UNREADABLE, |known| known as i32 == why)
}

/// A caution in plain words for the person at the bench; NULL for a code that is none of enum
/// cupwright_caution.
#[unsafe(no_mangle)]
pub extern "C" fn cupwright_caution_text(caution: i32) -> *const c_char {
    let place = Caution::ALL.iter().position(|known| *known as i32 == caution);
    nth(ended!(Caution::ALL, Caution::words), place)
}

/// What is going on on a scale, in plain words, "water is poured"; NULL for a code that is none of enum
/// cupwright_doing.
#[unsafe(no_mangle)]
pub extern "C" fn cupwright_doing_text(doing: i32) -> *const c_char {
    let place = Doing::ALL.iter().position(|known| *known as i32 == doing);
    nth(ended!(*Doing::ALL, Doing::words), place)
}

/// What happened on a scale, in plain words, "a pour began"; NULL for a code that is none of enum
/// cupwright_happening.
#[unsafe(no_mangle)]
pub extern "C" fn cupwright_happening_text(happening: i32) -> *const c_char {
    let place = Happening::ALL.iter().position(|known| *known as i32 == happening);
    nth(ended!(*Happening::ALL, Happening::words), place)
}

/// A step of a recipe in plain words, "pour water"; NULL for a code that is none of enum
/// cupwright_step.
#[unsafe(no_mangle)]
pub extern "C" fn cupwright_step_text(step: i32) -> *const c_char {
    let place = StepKind::ALL.iter().position(|known| *known as i32 == step);
    nth(ended!(*StepKind::ALL, StepKind::words), place)
}

/// A cue in plain words, "stop pouring"; NULL for a code that is none of enum cupwright_cue.
#[unsafe(no_mangle)]
pub extern "C" fn cupwright_cue_text(cue: i32) -> *const c_char {
    let place = Cue::ALL.iter().position(|known| *known as i32 == cue);
    nth(ended!(*Cue::ALL, Cue::words), place)
}

/// Why a cue is given, in plain words, "it is time"; NULL for a code that is none of enum
/// cupwright_why.
#[unsafe(no_mangle)]
pub extern "C" fn cupwright_why_text(why: i32) -> *const c_char {
    let place = Why::ALL.iter().position(|known| *known as i32 == why);
    nth(ended!(*Why::ALL, Why::words), place)
}
