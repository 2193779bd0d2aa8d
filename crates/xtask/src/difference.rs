//! How two texts differ, shown so that a person sees what changed.

use similar::TextDiff;

/// The difference in the usual unified form, `-` for the first text and `+` for the second; nothing
/// if the texts are the same to the byte.
pub fn between(old: &str, new: &str) -> Option<String> {
    (old != new).then(|| {
        let text = TextDiff::from_lines(old, new).unified_diff().context_radius(2).to_string();
        text.replace('\r', "\\r")
    })
}

#[cfg(test)]
mod tests {
    use super::between;

    #[test]
    fn the_same_text_has_none() {
        assert_eq!(between("a\nb\n", "a\nb\n"), None);
    }

    #[test]
    fn a_changed_line_is_shown() {
        let shown = between("1\n2\n3\n4\n5\n", "1\n2\n3\nfour\n5\n").unwrap();
        assert!(shown.contains("-4\n+four\n"), "{shown}");
    }

    #[test]
    fn what_cannot_be_seen_is_a_difference_too() {
        assert!(between("a\nb\n", "a\nb").unwrap().contains("-b\n+b\n"));
        assert!(between("a\n", "a\r\n").unwrap().contains("+a\\r"));
    }
}
