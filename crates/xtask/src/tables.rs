//! Tables in Markdown, as they are written here: a row begins with a word in code, and digits stand in
//! threes.

use crate::Outcome;

/// The cells of a table's rows that begin with a word in code.
pub fn rows(text: &str) -> Vec<Vec<&str>> {
    let rows = text.lines().filter(|line| line.starts_with("| `"));
    rows.map(|line| line.split('|').skip(1).map(str::trim).collect()).collect()
}

/// The row of a name.
pub fn row<'a>(rows: &'a [Vec<&'a str>], name: &str) -> Outcome<&'a [&'a str]> {
    let quoted = format!("`{name}`");
    let found = rows.iter().find(|cells| cells.first() == Some(&quoted.as_str()));
    found.map(Vec::as_slice).ok_or_else(|| format!("no row {name}"))
}

/// What a cell says, without the spaces of its digits.
pub fn cell<T: std::str::FromStr>(cells: &[&str], at: usize) -> Outcome<T> {
    let text = cells.get(at).copied().unwrap_or_default().replace(' ', "");
    text.parse().map_err(|_| format!("{text:?} in a row of {}", cells.join(" | ")))
}

/// 12345 as 12 345.
pub fn spaced(number: u64) -> String {
    let digits = number.to_string();
    let mut text = String::new();
    for (at, digit) in digits.chars().enumerate() {
        if at > 0 && (digits.len() - at).is_multiple_of(3) {
            text.push(' ');
        }
        text.push(digit);
    }
    text
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn rows_are_read_by_their_names() {
        let rows = rows("| `a` | 1 234 | x |\n| b | 2 |\n");
        assert_eq!(cell::<u64>(row(&rows, "a").unwrap(), 1), Ok(1234));
        assert!(cell::<u64>(row(&rows, "a").unwrap(), 2).is_err());
        assert_eq!(row(&rows, "b"), Err("no row b".to_string()));
    }

    #[test]
    fn digits_in_threes() {
        assert_eq!(
            [0, 999, 1000, 12_345, 1_234_567].map(spaced),
            ["0", "999", "1 000", "12 345", "1 234 567"]
        );
    }
}
