//! Inputs at which each formula has an answer: those of its first check value, else invented ones.

use std::collections::BTreeMap;

use serde_json::Value;

use crate::inputs::Given;
use crate::vectors::files;

/// Inputs of every formula that has any, by its name.
pub fn examples() -> BTreeMap<String, Given> {
    let invented: BTreeMap<String, Value> =
        serde_json::from_str(include_str!("examples.json")).unwrap();
    let mut examples = BTreeMap::new();
    for (id, fields) in invented {
        if let Value::Object(fields) = fields {
            examples.insert(id, Given(fields.into_iter().collect()));
        }
    }
    for check in files().into_iter().flat_map(|(_, file)| file.checks) {
        examples.entry(check.formula).or_insert(Given(check.r#in));
    }
    examples
}
