//! What a version of the interface's layout promises: functions, structs with the places of their
//! fields, codes. Written down once, kept for ever; a change needs a new version.

use std::collections::BTreeSet;
use std::path::PathBuf;

use cupwright::quantity::Quantity;
use cupwright_c::version::CUPWRIGHT_ABI_VERSION;

use super::header::screaming;
use super::interface::{self, Interface, Type};
use crate::commands::text_of;
use crate::{Outcome, root};

/// The committed promises of the present version.
fn path() -> PathBuf {
    path_of(CUPWRIGHT_ABI_VERSION)
}

fn path_of(version: u32) -> PathBuf {
    root().join(format!("bindings/c/abi/{version}.txt"))
}

/// Every promise is kept, and everything there is has been promised.
pub fn check() -> Outcome {
    let committed = read()?;
    let present = promises(&interface::read()?);
    kept(&committed, &present)?;
    if let Some(new) = present.difference(&committed).next() {
        return Err(format!("not yet promised: {new}\nTo promise it for good: cargo xtask abi"));
    }
    let older: Vec<_> = (1..CUPWRIGHT_ABI_VERSION).map(path_of).collect();
    for path in older {
        let text = text_of(&path)?;
        codes_kept(&text.lines().map(str::to_string).collect(), &present)?;
    }
    println!("{} promises of version {CUPWRIGHT_ABI_VERSION} kept", committed.len());
    Ok(())
}

/// Writes down what is new, if everything promised before is kept.
pub fn write() -> Outcome {
    let present = promises(&interface::read()?);
    if path().exists() {
        kept(&read()?, &present)?;
    }
    let text: String = present.iter().map(|line| format!("{line}\n")).collect();
    std::fs::write(path(), text).map_err(|error| format!("{}: {error}", path().display()))
}

fn read() -> Outcome<BTreeSet<String>> {
    let text = text_of(path())?;
    Ok(text.lines().map(str::to_string).collect())
}

fn kept(committed: &BTreeSet<String>, present: &BTreeSet<String>) -> Outcome {
    match committed.difference(present).next() {
        None => Ok(()),
        Some(broken) => Err(format!(
            "version {CUPWRIGHT_ABI_VERSION} of the layout promises \"{broken}\", which is no longer so: \
             programs made with it would break. Raise CUPWRIGHT_ABI_VERSION, or take the change back"
        )),
    }
}

/// No code of an older version has another meaning: its name another number, or its number another name.
fn codes_kept(older: &BTreeSet<String>, present: &BTreeSet<String>) -> Outcome {
    let codes = |lines: &BTreeSet<String>| -> Vec<(String, String)> {
        let code = |line: &String| {
            let (name, number) = line.strip_prefix("code ")?.split_once(" = ")?;
            Some((name.to_string(), number.to_string()))
        };
        lines.iter().filter_map(code).collect()
    };
    let kind = |name: &str| name.split('_').nth(1).map(str::to_string);
    for (name, number) in codes(older) {
        for (now, number_now) in codes(present) {
            let same_number = number == number_now && kind(&name) == kind(&now);
            if (name == now) != same_number {
                return Err(format!(
                    "code {name} was {number}; {now} is {number_now}: codes are never used again"
                ));
            }
        }
    }
    Ok(())
}

/// A line for each function, field and code.
fn promises(interface: &Interface) -> BTreeSet<String> {
    let mut lines = BTreeSet::new();
    for function in &interface.functions {
        let parameters: Vec<String> = function
            .parameters
            .iter()
            .map(|parameter| format!("{} {}", parameter.kind.in_c(), parameter.name))
            .collect();
        lines.insert(format!(
            "function {} {}({})",
            function.returns.in_c(),
            function.name,
            parameters.join(", ")
        ));
    }
    for record in &interface.records {
        lines.insert(format!("struct {} of {} bytes", record.name, interface.size(&record.name)));
        for (field, at) in interface.offsets(&record.name) {
            let kind = match &field.kind {
                Type::Record(name) => name.clone(),
                kind => kind.in_c(),
            };
            lines.insert(format!("field {}.{} {kind} at {at}", record.name, field.name));
        }
    }
    for (name, code) in &interface.codes {
        lines.insert(format!("code {name} = {code}"));
    }
    for quantity in Quantity::ALL {
        let name = screaming(&format!("{quantity:?}"));
        lines.insert(format!("code CUPWRIGHT_QUANTITY_{name} = {}", *quantity as i32));
    }
    lines
}

#[cfg(test)]
mod tests {
    use super::*;

    fn set(lines: &[&str]) -> BTreeSet<String> {
        lines.iter().map(|line| (*line).to_string()).collect()
    }

    #[test]
    fn what_was_promised_must_stay() {
        assert_eq!(kept(&set(&["a"]), &set(&["a", "b"])), Ok(()));
        assert!(
            kept(&set(&["a", "b"]), &set(&["a"]))
                .unwrap_err()
                .contains("\"b\", which is no longer so")
        );
    }

    #[test]
    fn codes_keep_their_meaning_in_every_version() {
        let older = set(&["code A_SIDE_LEFT = 1", "code A_SIDE_RIGHT = 2"]);
        assert_eq!(
            codes_kept(&older, &set(&["code A_SIDE_LEFT = 1", "code A_AIR_THIN = 2"])),
            Ok(())
        );
        assert!(codes_kept(&older, &set(&["code A_SIDE_LEFT = 3"])).is_err());
        assert!(codes_kept(&older, &set(&["code A_SIDE_UP = 2"])).is_err());
    }

    #[test]
    fn each_kind_of_promise_is_there() {
        let promises = promises(&interface::read().unwrap());
        for line in [
            "function int32_t cupwright_ratio_water_ratio(double dose_g, double water_g, double * \
             water_ratio_g_per_g, cupwright_error * error)",
            "struct cupwright_error of 56 bytes",
            "field cupwright_wish.strength_pct double at 8",
            "code CUPWRIGHT_STATUS_NULL = 7",
            "code CUPWRIGHT_QUANTITY_DOSE = 1",
        ] {
            assert!(promises.contains(line), "{line}");
        }
    }
}
