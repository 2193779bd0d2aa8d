//! The way of every call: pointers checked, numbers checked, the core asked, the answer written.

use core::ffi::c_char;
use core::ptr;

use cupwright::Error;
use cupwright::quantity::{Measure, Quantity};

use crate::status::{cupwright_error, cupwright_status};

/// The name of a parameter or field, ended by a zero byte; made by [`field!`].
#[derive(Clone, Copy)]
pub(crate) struct Field(pub(crate) *const c_char);

/// The name of a parameter, or of a record's field, for an error.
macro_rules! field {
    ($name:ident) => {
        $crate::call::Field(concat!(stringify!($name), "\0").as_ptr().cast())
    };
}

/// A number as the quantity that the core wants, or a refusal that names it.
macro_rules! checked {
    ($value:ident) => {
        $crate::call::check($value, $crate::call::field!($value))
    };
    ($record:ident.$value:ident) => {
        $crate::call::check($record.$value, $crate::call::field!($value))
    };
}

/// A count as the quantity that the core wants.
macro_rules! counted {
    ($value:ident) => {
        $crate::call::check(f64::from($value), $crate::call::field!($value))
    };
    ($record:ident.$value:ident) => {
        $crate::call::check(f64::from($record.$value), $crate::call::field!($value))
    };
}

/// The record behind a pointer, or the items behind one with a count; or a refusal that names it.
macro_rules! given {
    ($pointer:ident) => {
        // SAFETY: the crate's own condition: NULL, or valid for the call.
        unsafe { $crate::call::read($pointer, $crate::call::field!($pointer)) }
    };
    ($pointer:ident, $count:ident) => {
        // SAFETY: the crate's own condition: NULL, or valid for the call.
        unsafe { $crate::call::items($pointer, $count, $crate::call::field!($pointer)) }
    };
}

/// A value that need not be there.
macro_rules! optional {
    ($record:ident.$flag:ident, $value:ident) => {
        match $record.$flag {
            0 => Ok(None),
            _ => $crate::call::checked!($record.$value).map(Some),
        }
    };
}

pub(crate) use {checked, counted, field, given, optional};

/// Why a call has no answer.
pub(crate) enum Refusal {
    /// A number is not accepted as a quantity.
    Input(Quantity, f64, Field),
    /// The core's own reason, and the input to blame where it is one.
    Core(Error, Option<Field>),
    /// A pointer is NULL.
    Null(Field),
    /// A choice is none of those known.
    UnknownChoice(i32, Field),
}

impl From<Error> for Refusal {
    fn from(error: Error) -> Self {
        Self::Core(error, None)
    }
}

/// A number as a quantity.
pub(crate) fn check<M: Measure>(value: f64, field: Field) -> Result<M, Refusal> {
    M::accept(value).ok_or(Refusal::Input(M::QUANTITY, value, field))
}

/// The record behind a pointer.
///
/// # Safety
/// NULL, or valid for reading.
pub(crate) unsafe fn read<T: Copy>(pointer: *const T, field: Field) -> Result<T, Refusal> {
    if pointer.is_null() {
        return Err(Refusal::Null(field));
    }
    // SAFETY: not NULL, so valid for reading.
    Ok(unsafe { pointer.read() })
}

/// The items behind a pointer with a count; none need no pointer.
///
/// # Safety
/// Valid for reading `count` items if that is not zero and the pointer not NULL.
pub(crate) unsafe fn items<'a, T: Copy>(
    pointer: *const T,
    count: usize,
    field: Field,
) -> Result<&'a [T], Refusal> {
    match (pointer.is_null(), count) {
        (_, 0) => Ok(&[]),
        (true, _) => Err(Refusal::Null(field)),
        // SAFETY: not NULL, so valid for reading.
        (false, _) => Ok(unsafe { core::slice::from_raw_parts(pointer, count) }),
    }
}

/// Fills places with what becomes of the items, in order; the part that was filled.
pub(crate) fn each<'a, T: Copy, U>(
    items: &[T],
    places: &'a mut [U],
    make: impl Fn(T) -> Result<U, Refusal>,
) -> Result<&'a [U], Refusal> {
    let mut count = 0_usize;
    for (place, item) in places.iter_mut().zip(items) {
        *place = make(*item)?;
        count = count.saturating_add(1);
    }
    Ok(places.get(..count).unwrap_or_default())
}

/// Asks, and writes the answer to `out` or the reason to `error`.
///
/// # Safety
/// Both NULL, or valid for writing.
pub(crate) unsafe fn respond<T>(
    out: *mut T,
    name: Field,
    error: *mut cupwright_error,
    ask: impl FnOnce() -> Result<T, Refusal>,
) -> i32 {
    let asked = if out.is_null() { Err(Refusal::Null(name)) } else { ask() };
    match asked {
        Ok(answer) => {
            // SAFETY: not NULL, so valid for writing.
            unsafe { out.write(answer) };
            cupwright_status::Ok as i32
        }
        // SAFETY: the same condition.
        Err(refusal) => unsafe { report(&refusal, error) },
    }
}

/// Writes the reason to `error`, if it is wanted, and gives back its status.
///
/// # Safety
/// NULL, or valid for writing.
#[inline(never)]
unsafe fn report(refusal: &Refusal, error: *mut cupwright_error) -> i32 {
    let facts = facts(refusal);
    if !error.is_null() {
        // SAFETY: not NULL, so valid for writing.
        unsafe { error.write(facts) };
    }
    facts.status
}

/// [`respond`], with the name of the parameter that takes it.
macro_rules! answer {
    ($out:ident, $error:ident, $ask:expr) => {{
        let ask = || Ok::<_, $crate::call::Refusal>($ask);
        // SAFETY: the crate's own condition: NULL, or valid for the call.
        unsafe { $crate::call::respond($out, $crate::call::field!($out), $error, ask) }
    }};
}
pub(crate) use answer;

/// What C is told of a refusal.
fn facts(refusal: &Refusal) -> cupwright_error {
    let none = cupwright_error {
        value: 0.0,
        lowest: 0.0,
        highest: 0.0,
        nearest: 0.0,
        status: 0,
        quantity: 0,
        beside: 0,
        limit: 0,
        field: ptr::null(),
    };
    match *refusal {
        Refusal::Input(quantity, value, field) => {
            cupwright_error { field: field.0, ..of_core(&quantity.refusal(value), none) }
        }
        Refusal::Core(ref error, field) => {
            cupwright_error { field: field.map_or(ptr::null(), |f| f.0), ..of_core(error, none) }
        }
        Refusal::Null(field) => {
            cupwright_error { status: cupwright_status::Null as i32, field: field.0, ..none }
        }
        Refusal::UnknownChoice(value, field) => cupwright_error {
            status: cupwright_status::UnknownChoice as i32,
            value: f64::from(value),
            field: field.0,
            ..none
        },
    }
}

/// The facts of the core's error.
fn of_core(error: &Error, none: cupwright_error) -> cupwright_error {
    use cupwright_status as status;
    match *error {
        Error::OutOfRange { quantity, value, lowest, highest } => cupwright_error {
            status: status::OutOfRange as i32,
            quantity: quantity as i32,
            value,
            lowest,
            highest,
            ..none
        },
        Error::NotWhole { quantity, value, lowest, highest } => cupwright_error {
            status: status::NotWhole as i32,
            quantity: quantity as i32,
            value,
            lowest,
            highest,
            ..none
        },
        Error::Impossible { quantity, value, lowest, highest, beside } => cupwright_error {
            status: status::Impossible as i32,
            quantity: quantity as i32,
            value,
            lowest,
            highest,
            beside: beside as i32,
            ..none
        },
        Error::EmptyBand { quantity, lowest, highest } => cupwright_error {
            status: status::EmptyBand as i32,
            quantity: quantity as i32,
            lowest,
            highest,
            ..none
        },
        Error::ResultOutOfRange { quantity, value, lowest, highest } => cupwright_error {
            status: status::ResultOutOfRange as i32,
            quantity: quantity as i32,
            value,
            lowest,
            highest,
            ..none
        },
        Error::Infeasible { wish, value, nearest, limit } => cupwright_error {
            status: status::Infeasible as i32,
            quantity: wish as i32,
            value,
            nearest,
            limit: limit as i32,
            ..none
        },
        _ => cupwright_error { status: status::Unnamed as i32, ..none },
    }
}
