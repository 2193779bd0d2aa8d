use core::mem::MaybeUninit;

/// Copies structs: also the bytes between their fields, which nobody has set.
///
/// # Safety
/// As C's `memcpy`.
#[cfg_attr(not(test), unsafe(no_mangle))]
unsafe extern "C" fn memcpy(to: *mut u8, from: *const u8, count: usize) -> *mut u8 {
    type Word = MaybeUninit<u64>;
    type Byte = MaybeUninit<u8>;
    // Structs of doubles are copied by eight bytes.
    let aligned = (to.addr() | from.addr()).is_multiple_of(size_of::<Word>());
    let words = if aligned { count / size_of::<Word>() } else { 0 };
    for at in 0..words {
        // Volatile, or the compiler would see a memcpy here and call itself.
        // SAFETY: the caller's; both are aligned for words.
        unsafe { to.cast::<Word>().add(at).write_volatile(from.cast::<Word>().add(at).read()) };
    }
    for at in words * size_of::<Word>()..count {
        // SAFETY: the caller's.
        unsafe { to.cast::<Byte>().add(at).write_volatile(from.cast::<Byte>().add(at).read()) };
    }
    to
}

/// Blanks arrays.
///
/// # Safety
/// As C's `memset`.
#[cfg_attr(not(test), unsafe(no_mangle))]
unsafe extern "C" fn memset(to: *mut u8, byte: i32, count: usize) -> *mut u8 {
    for at in 0..count {
        // Volatile for the same reason.
        // SAFETY: the caller's.
        unsafe { to.add(at).write_volatile(byte as u8) };
    }
    to
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A struct with four bytes that nobody sets.
    #[repr(C)]
    #[derive(Clone, Copy, Debug, PartialEq)]
    struct Padded {
        number: f64,
        code: u32,
    }

    /// Copied by words where it starts at one.
    #[repr(align(8))]
    struct Aligned([u8; 32]);

    /// Under Miri this fails where the padding is read as numbers.
    #[test]
    fn a_struct_is_copied_with_the_bytes_between_its_fields() {
        let from = Padded { number: 1.5, code: 7 };
        let mut to = MaybeUninit::<Padded>::uninit();
        // SAFETY: both are places for a Padded.
        let copied = unsafe {
            memcpy(to.as_mut_ptr().cast(), (&raw const from).cast(), size_of::<Padded>());
            to.assume_init()
        };
        assert_eq!(copied, from);
    }

    #[test]
    fn any_bytes_are_copied_and_no_others() {
        let from = Aligned(std::array::from_fn(|at| at as u8));
        for start in 0..9 {
            for count in 0..20 {
                let mut to = Aligned([0xee; 32]);
                // SAFETY: start and count stay within both.
                let back = unsafe { memcpy(to.0.as_mut_ptr().add(start), from.0.as_ptr(), count) };
                assert_eq!(back, to.0[start..].as_mut_ptr());
                assert_eq!(to.0[start..start + count], from.0[..count]);
                let mut others = to.0[..start].iter().chain(&to.0[start + count..]);
                assert!(others.all(|byte| *byte == 0xee));
            }
        }
    }

    #[test]
    fn bytes_are_blanked_and_no_others() {
        let mut place = [1_u8; 8];
        // SAFETY: both bytes are within.
        unsafe { memset(place.as_mut_ptr().add(2), 0x105, 2) };
        assert_eq!(place, [1, 1, 5, 5, 1, 1, 1, 1]);
    }
}
