//! How two texts differ, shown so that a person sees what changed.

use std::fmt::Write;

/// Lines shown before and after each change.
const CONTEXT: usize = 2;

/// The lines that differ, `-` for the first text and `+` for the second, with their surroundings;
/// nothing if the texts are the same to the byte.
pub fn between(old: &str, new: &str) -> Option<String> {
    if old == new {
        return None;
    }
    // Not `lines()`: a missing last newline and a carriage return are differences too.
    let (old, new): (Vec<_>, Vec<_>) = (old.split('\n').collect(), new.split('\n').collect());
    let steps = steps(&old, &new);
    let changed = |at: usize| steps.get(at).is_some_and(|step| step.sign != ' ');
    let mut text = String::new();
    let mut last = None;
    for (at, step) in steps.iter().enumerate() {
        if !(at.saturating_sub(CONTEXT)..=at + CONTEXT).any(changed) {
            continue;
        }
        if last.is_none_or(|last| last + 1 != at) {
            let _ = writeln!(text, "line {}:", step.line);
        }
        last = Some(at);
        let _ = writeln!(text, "  {} {}", step.sign, step.text.escape_debug());
    }
    Some(text)
}

/// One line of the way from the old text to the new one.
struct Step<'a> {
    /// ` ` kept, `-` only in the old text, `+` only in the new one.
    sign: char,
    /// Number of the old line that this one is, or stands before.
    line: usize,
    text: &'a str,
}

/// The shortest way, by the longest common subsequence of lines.
fn steps<'a>(old: &[&'a str], new: &[&'a str]) -> Vec<Step<'a>> {
    // common[i][j]: how many lines old[i..] and new[j..] have in common.
    let mut common = vec![vec![0; new.len() + 1]; old.len() + 1];
    for i in (0..old.len()).rev() {
        for j in (0..new.len()).rev() {
            common[i][j] = if old[i] == new[j] {
                common[i + 1][j + 1] + 1
            } else {
                common[i + 1][j].max(common[i][j + 1])
            };
        }
    }
    let (mut i, mut j) = (0, 0);
    let mut steps = Vec::new();
    while i < old.len() || j < new.len() {
        let line = i + 1;
        if i < old.len() && j < new.len() && old[i] == new[j] {
            steps.push(Step { sign: ' ', line, text: old[i] });
            (i, j) = (i + 1, j + 1);
        } else if j == new.len() || (i < old.len() && common[i + 1][j] >= common[i][j + 1]) {
            steps.push(Step { sign: '-', line, text: old[i] });
            i += 1;
        } else {
            steps.push(Step { sign: '+', line, text: new[j] });
            j += 1;
        }
    }
    steps
}

#[cfg(test)]
mod tests {
    use super::between;

    #[test]
    fn the_same_text_has_none() {
        assert_eq!(between("a\nb\n", "a\nb\n"), None);
        assert_eq!(between("", ""), None);
    }

    #[test]
    fn a_changed_line_is_shown_with_its_surroundings() {
        let shown = between("1\n2\n3\n4\n5\n6\n7\n", "1\n2\n3\n4\nfive\n6\n7\n").unwrap();
        assert_eq!(shown, "line 3:\n    3\n    4\n  - 5\n  + five\n    6\n    7\n");
    }

    #[test]
    fn an_inserted_line_does_not_shift_the_rest() {
        let shown = between("a\nb\nc\nd\ne\n", "new\na\nb\nc\nd\ne\n").unwrap();
        assert_eq!(shown, "line 1:\n  + new\n    a\n    b\n");
    }

    #[test]
    fn distant_changes_are_shown_apart() {
        let old = "x\nb\nc\nd\ne\nf\ng\ny";
        let shown = between(old, "X\nb\nc\nd\ne\nf\ng\nY").unwrap();
        assert!(shown.starts_with("line 1:\n  - x\n  + X\n"), "{shown}");
        assert!(shown.ends_with("line 6:\n    f\n    g\n  - y\n  + Y\n"), "{shown}");
    }

    #[test]
    fn what_cannot_be_seen_is_a_difference_too() {
        assert!(between("a\nb\n", "a\nb").unwrap().contains("  - \n"));
        assert!(between("a\n", "a\r\n").unwrap().contains("  + a\\r\n"));
        assert!(between("a\n", "").is_some());
    }
}
