//! The way of every call: pointers checked, numbers checked, the core asked, the answer written.

use core::borrow::Borrow;
use core::ffi::c_char;
use core::ptr;

use cupwright::Error;
use cupwright::profile::Unreadable;
use cupwright::quantity::{Measure, Quantity};

use crate::status::{cupwright_error, cupwright_status, cupwright_unreadable};

/// The name of a parameter or field, ended by a zero byte; made by [`field!`].
#[derive(Clone, Copy)]
pub(crate) struct Field(pub(crate) *const c_char);

/// The name of a parameter, or of a record's field, for an error.
macro_rules! field {
    ($name:ident) => {{
        const BYTES: &[u8] = concat!(stringify!($name), "\0").as_bytes();
        // A static of its own: the linker leaves out those of functions that are not used.
        static NAME: [u8; BYTES.len()] = match BYTES.first_chunk() {
            Some(name) => *name,
            None => [0; BYTES.len()],
        };
        $crate::call::Field(NAME.as_ptr().cast())
    }};
}

/// A number as the quantity that the core wants, or a refusal that names it.
macro_rules! checked {
    ($call:ident, $value:ident) => {
        $call.check($value, $crate::call::field!($value))
    };
    ($call:ident, $record:ident.$value:ident) => {
        $call.check($record.$value, $crate::call::field!($value))
    };
}

/// A count as the quantity that the core wants.
macro_rules! counted {
    ($call:ident, $value:ident) => {
        $call.check(f64::from($value), $crate::call::field!($value))
    };
    ($call:ident, $record:ident.$value:ident) => {
        $call.check(f64::from($record.$value), $crate::call::field!($value))
    };
}

/// A value that need not be there.
macro_rules! optional {
    ($call:ident, $record:ident.$flag:ident, $value:ident) => {
        match $record.$flag {
            0 => Ok(None),
            _ => $crate::call::checked!($call, $record.$value).map(Some),
        }
    };
}

/// The record behind a pointer, or the items behind one with a count; or a refusal that names it.
macro_rules! given {
    ($call:ident, $pointer:ident) => {
        // SAFETY: the crate's own condition: NULL, or valid for the call.
        unsafe { $call.read($pointer, $crate::call::field!($pointer)) }
    };
    ($call:ident, $pointer:ident, $count:ident: $counted:ty) => {
        // SAFETY: the crate's own condition: NULL, or valid for the call.
        unsafe { $call.items::<_, $counted>($pointer, $count, $crate::call::field!($pointer)) }
    };
}

/// What the core reads in bytes, or a refusal that says why it cannot. One byte more than anything has
/// is enough to see that there are too many.
macro_rules! opened {
    ($call:ident, $bytes:ident, $count:ident, $open:path) => {{
        const MOST: usize = 1024;
        // SAFETY: the crate's own condition: NULL, or valid for the call.
        let read = unsafe { $call.all($bytes, $count.min(MOST), $crate::call::field!($bytes)) };
        read.and_then(|read| {
            let refused = |error| $call.unreadable(&error, $count, $crate::call::field!($bytes));
            $open(read).map_err(refused)
        })
    }};
}

/// Makes a call: the parameter that takes the answer, the one that takes the error, and what to ask.
macro_rules! answer {
    ($out:ident, $error:ident, |$call:ident| $ask:expr) => {{
        let $call = $crate::call::Call::new($error);
        let ask = || $ask;
        // SAFETY: the crate's own condition: NULL, or valid for the call.
        unsafe { $call.answer($out, $crate::call::field!($out), ask) }
    }};
}

/// Makes a call that changes a state and has no answer: the parameter that takes the error, and what
/// to do.
macro_rules! done {
    ($error:ident, |$call:ident| $do:expr) => {{
        let $call = $crate::call::Call::new($error);
        let act = || $do;
        $crate::call::status(act())
    }};
}

pub(crate) use {answer, checked, counted, done, field, given, opened, optional};

/// The status of a call that has no answer. Its facts are written where they are found, so that
/// nothing large travels through the functions.
pub(crate) struct Refused(i32);

/// What a call comes back with.
pub(crate) fn status(outcome: Result<(), Refused>) -> i32 {
    match outcome {
        Ok(()) => cupwright_status::Ok as i32,
        Err(Refused(status)) => status,
    }
}

/// A call on its way: where its error goes.
#[derive(Clone, Copy)]
pub(crate) struct Call {
    error: *mut cupwright_error,
}

impl Call {
    /// A call whose error goes to a pointer: NULL, or valid for writing while the call lasts.
    pub(crate) fn new(error: *mut cupwright_error) -> Self {
        Self { error }
    }

    /// Asks, and writes the answer.
    ///
    /// # Safety
    /// `out` is NULL, or valid for writing.
    pub(crate) unsafe fn answer<T>(
        self,
        out: *mut T,
        name: Field,
        ask: impl FnOnce() -> Result<T, Refused>,
    ) -> i32 {
        let asked = if out.is_null() { Err(self.null(name)) } else { ask() };
        // SAFETY: not NULL, so valid for writing.
        status(asked.map(|answer| unsafe { out.write(answer) }))
    }

    /// The record behind a pointer.
    ///
    /// # Safety
    /// NULL, or valid for reading while it is used, which is before the answer is written.
    pub(crate) unsafe fn read<'a, T>(
        self,
        pointer: *const T,
        field: Field,
    ) -> Result<&'a T, Refused> {
        // SAFETY: NULL, or valid for reading.
        unsafe { pointer.as_ref() }.ok_or_else(|| self.null(field))
    }

    /// The items behind a pointer, as many as their count `N` allows; none need no pointer.
    ///
    /// # Safety
    /// NULL, or valid for reading `count` items while they are used, unless that is too many.
    pub(crate) unsafe fn items<'a, T, N: Measure>(
        self,
        pointer: *const T,
        count: usize,
        field: Field,
    ) -> Result<&'a [T], Refused> {
        self.check::<N>(count as f64, field!(count))?;
        // SAFETY: the same.
        unsafe { self.all(pointer, count, field) }
    }

    /// So many items behind a pointer; none need no pointer.
    ///
    /// # Safety
    /// NULL, or valid for reading `count` items while they are used.
    pub(crate) unsafe fn all<'a, T>(
        self,
        pointer: *const T,
        count: usize,
        field: Field,
    ) -> Result<&'a [T], Refused> {
        match (pointer.is_null(), count) {
            (_, 0) => Ok(&[]),
            (true, _) => Err(self.null(field)),
            // SAFETY: not NULL, so valid for reading.
            (false, _) => Ok(unsafe { core::slice::from_raw_parts(pointer, count) }),
        }
    }

    /// Room for so many items behind a pointer; none need no pointer.
    ///
    /// # Safety
    /// NULL, or valid for writing `count` items while they are used, and apart from all else that is.
    pub(crate) unsafe fn room<'a, T>(
        self,
        pointer: *mut T,
        count: usize,
        field: Field,
    ) -> Result<&'a mut [T], Refused> {
        match (pointer.is_null(), count) {
            (_, 0) => Ok(&mut []),
            (true, _) => Err(self.null(field)),
            // SAFETY: not NULL, so valid for writing.
            (false, _) => Ok(unsafe { core::slice::from_raw_parts_mut(pointer, count) }),
        }
    }

    /// A number as a quantity.
    pub(crate) fn check<M: Measure>(self, value: f64, field: Field) -> Result<M, Refused> {
        M::accept(value).ok_or_else(|| self.unaccepted(M::QUANTITY, value, field))
    }

    /// The core's answer to a wish, with the field of each quantity that a refusal may be about.
    pub(crate) fn wish<T>(
        self,
        fields: &[(Quantity, Field)],
        answer: Result<T, impl Borrow<Error>>,
    ) -> Result<T, Refused> {
        answer.map_err(|error| self.refuse(error.borrow(), wished(fields, error.borrow())))
    }

    /// The core's answer from a profile, with the fields that may be missing there.
    pub(crate) fn kept<T>(
        self,
        fields: &[(&str, Field)],
        answer: Result<T, Error>,
    ) -> Result<T, Refused> {
        answer.map_err(|error| self.refuse(&error, missing(fields, &error)))
    }

    /// The core's answer; a large one stays where it is, and a reference to it comes back.
    pub(crate) fn core<T>(self, answer: Result<T, impl Borrow<Error>>) -> Result<T, Refused> {
        answer.map_err(|error| self.refuse(error.borrow(), None))
    }

    #[cold]
    #[inline(never)]
    fn unaccepted(self, quantity: Quantity, value: f64, field: Field) -> Refused {
        self.refuse(&quantity.refusal(value), Some(field))
    }

    /// A pointer that is NULL.
    #[cold]
    #[inline(never)]
    pub(crate) fn null(self, field: Field) -> Refused {
        let status = cupwright_status::Null as i32;
        self.write(cupwright_error { status, field: field.0, ..NO_FACTS })
    }

    /// A state that was never begun.
    #[cold]
    #[inline(never)]
    pub(crate) fn not_begun(self, field: Field) -> Refused {
        let status = cupwright_status::NotBegun as i32;
        self.write(cupwright_error { status, field: field.0, ..NO_FACTS })
    }

    /// A choice that is none of those known.
    #[cold]
    #[inline(never)]
    pub(crate) fn unknown_choice(self, value: i32, field: Field) -> Refused {
        let status = cupwright_status::UnknownChoice as i32;
        let value = f64::from(value);
        self.write(cupwright_error { status, value, field: field.0, ..NO_FACTS })
    }

    /// Bytes that cannot be read, and how many there were.
    #[cold]
    #[inline(never)]
    pub(crate) fn unreadable(self, unreadable: &Unreadable, count: usize, field: Field) -> Refused {
        use cupwright_unreadable as why;
        let (why, value) = match *unreadable {
            Unreadable::Length { .. } => (why::Length, count as f64),
            Unreadable::Foreign => (why::Foreign, 0.0),
            Unreadable::Version { found, .. } => (why::Version, found.into()),
            Unreadable::Damaged { found, .. } => (why::Damaged, found.into()),
            Unreadable::Value(error) => return self.refuse(&error, None),
            Unreadable::NotBlank => (why::NotBlank, 0.0),
            _ => (why::Unsound, 0.0),
        };
        let (status, limit) = (cupwright_status::Unreadable as i32, why as i32);
        self.write(cupwright_error { status, value, limit, field: field.0, ..NO_FACTS })
    }

    /// The core's reason, and the input to blame where it is one.
    #[cold]
    #[inline(never)]
    pub(crate) fn refuse(self, error: &Error, field: Option<Field>) -> Refused {
        let field = field.map_or(ptr::null(), |field| field.0);
        self.write(cupwright_error { field, ..facts(error) })
    }

    fn write(self, facts: cupwright_error) -> Refused {
        if !self.error.is_null() {
            // SAFETY: not NULL, so valid for writing.
            unsafe { self.error.write(facts) };
        }
        Refused(facts.status)
    }
}

/// The field that a refusal of a wish is about.
#[inline(never)]
fn wished(fields: &[(Quantity, Field)], error: &Error) -> Option<Field> {
    let (Error::Infeasible { wish: about, .. } | Error::OutOfRange { quantity: about, .. }) = error
    else {
        return None;
    };
    fields.iter().find(|(quantity, _)| quantity == about).map(|(_, field)| *field)
}

/// The field of a profile that is missing.
#[inline(never)]
fn missing(fields: &[(&str, Field)], error: &Error) -> Option<Field> {
    let Error::NotKept { field: missing } = error else { return None };
    fields.iter().find(|(name, _)| name == missing).map(|(_, field)| *field)
}

/// Fills places with what becomes of the items, in order; the part that was filled.
pub(crate) fn each<'a, T: Copy, U>(
    items: &[T],
    places: &'a mut [U],
    make: impl Fn(T) -> Result<U, Refused>,
) -> Result<&'a [U], Refused> {
    let mut count = 0_usize;
    for (place, item) in places.iter_mut().zip(items) {
        *place = make(*item)?;
        count = count.saturating_add(1);
    }
    Ok(places.get(..count).unwrap_or_default())
}

const NO_FACTS: cupwright_error = cupwright_error {
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

/// The facts of the core's error.
fn facts(error: &Error) -> cupwright_error {
    use cupwright_status as status;
    match *error {
        Error::OutOfRange { quantity, value, lowest, highest } => cupwright_error {
            status: status::OutOfRange as i32,
            quantity: quantity as i32,
            value,
            lowest,
            highest,
            ..NO_FACTS
        },
        Error::NotWhole { quantity, value, lowest, highest } => cupwright_error {
            status: status::NotWhole as i32,
            quantity: quantity as i32,
            value,
            lowest,
            highest,
            ..NO_FACTS
        },
        Error::Impossible { quantity, value, lowest, highest, beside } => cupwright_error {
            status: status::Impossible as i32,
            quantity: quantity as i32,
            value,
            lowest,
            highest,
            beside: beside as i32,
            ..NO_FACTS
        },
        Error::EmptyBand { quantity, lowest, highest } => cupwright_error {
            status: status::EmptyBand as i32,
            quantity: quantity as i32,
            lowest,
            highest,
            ..NO_FACTS
        },
        Error::ResultOutOfRange { quantity, value, lowest, highest } => cupwright_error {
            status: status::ResultOutOfRange as i32,
            quantity: quantity as i32,
            value,
            lowest,
            highest,
            ..NO_FACTS
        },
        Error::Infeasible { wish, value, nearest, limit } => cupwright_error {
            status: status::Infeasible as i32,
            quantity: wish as i32,
            value,
            nearest,
            limit: limit as i32,
            ..NO_FACTS
        },
        Error::CannotTell { quantity, why, found, needed } => cupwright_error {
            status: status::CannotTell as i32,
            quantity: quantity as i32,
            value: found,
            lowest: needed,
            limit: why as i32,
            ..NO_FACTS
        },
        Error::NotKept { .. } => cupwright_error { status: status::NotKept as i32, ..NO_FACTS },
        _ => cupwright_error { status: status::Unnamed as i32, ..NO_FACTS },
    }
}
