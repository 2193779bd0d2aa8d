//! What JavaScript is told of quantities, limits, cautions, constants and windows: data for forms,
//! messages and glossaries, from the core's own tables.

use std::fmt::Write;

use cupwright::caution::Caution;
use cupwright::error::{Limit, Untold};
use cupwright::live::{Cue, Doing, Happening, StepKind, Why};
use cupwright::quantity::Quantity;
use cupwright::verdict::Counting;
use serde_json::{Map, Value, json};

use crate::Outcome;
use crate::c::header::screaming;
use crate::published::{self, WINDOWS};

/// A row's key: `brew_water`.
pub fn key(name: &impl std::fmt::Debug) -> String {
    screaming(&format!("{name:?}")).to_lowercase()
}

/// The module `about.js`.
pub fn made() -> Outcome<String> {
    let mut text = String::from("// Made by `cargo xtask face`. Do not edit.\n\n");
    put(
        &mut text,
        "Every quantity by its key: name, unit, the usual name of its field, range, decimals, meaning, source.",
        "limits",
        &limits(),
    );
    let keys: Vec<Value> = Quantity::ALL.iter().map(|q| json!([*q as u16, key(q)])).collect();
    let _ = writeln!(
        text,
        "/** Keys of `limits` by their lasting codes. */\nexport const quantityKeys = new Map({});\n",
        Value::Array(keys)
    );
    keyed(
        &mut text,
        "limit",
        "What can stand in the way of a wish",
        Limit::ALL.iter().map(|l| (*l as i64, key(l), l.words())),
    );
    keyed(
        &mut text,
        "untold",
        "Why measurements cannot tell",
        Untold::ALL.iter().map(|u| (*u as i64, key(u), u.words())),
    );
    let wanting = Untold::ALL.iter().map(|u| (key(u), json!(u.wanting()))).collect();
    put(&mut text, "What is wanting then, in plain words.", "wantingTexts", &wanting);
    keyed(
        &mut text,
        "caution",
        "What can hurt",
        Caution::ALL.into_iter().map(|c| (c as i64, key(&c), c.words())),
    );
    let mut worded = |kind: &str, about: &str, rows: Map<String, Value>| {
        put(&mut text, &format!("{about}, in plain words."), &format!("{kind}Texts"), &rows);
    };
    let doings = Doing::ALL.iter().map(|d| (key(d), json!(d.words()))).collect();
    worded("doing", "What goes on on a scale", doings);
    let happenings = Happening::ALL.iter().map(|h| (key(h), json!(h.words()))).collect();
    worded("happening", "What happens on a scale", happenings);
    let steps = StepKind::ALL.iter().map(|s| (key(s), json!(s.words()))).collect();
    worded("step", "The steps of a recipe", steps);
    let cues = Cue::ALL.iter().map(|c| (key(c), json!(c.words()))).collect();
    worded("cue", "What to do", cues);
    let whys = Why::ALL.iter().map(|w| (key(w), json!(w.words()))).collect();
    worded("why", "Why a cue is given", whys);
    let constants: Map<String, Value> = published::constants()?
        .into_iter()
        .map(|constant| {
            (constant.name, json!({ "value": constant.value, "about": constant.about }))
        })
        .collect();
    put(&mut text, "Constants with their sources.", "constants", &constants);
    let windows: Map<String, Value> = WINDOWS
        .into_iter()
        .map(|(name, window)| {
            let [low, high] = [window.window.strength.lowest(), window.window.strength.highest()];
            let mut fields = json!({
                "strength_lowest_pct": low.percent(),
                "strength_highest_pct": high.percent(),
            });
            if let Some(band) = window.window.extracted {
                fields["yield_lowest_pct"] = json!(band.lowest().percent());
                fields["yield_highest_pct"] = json!(band.highest().percent());
                fields["yield_counting"] = json!(counting(window.window.counting));
            }
            (name.to_lowercase(), json!({ "window": fields, "source": window.source }))
        })
        .collect();
    put(&mut text, "Published windows with their sources.", "windows", &windows);
    Ok(text.trim_end().to_string() + "\n")
}

/// The word for how a yield is counted, as `face.rs` makes it of the C interface's names.
fn counting(counting: Counting) -> &'static str {
    match counting {
        Counting::FlowThrough => "flow_through",
        Counting::MassBalance => "mass_balance",
        _ => "not_stated",
    }
}

fn put(text: &mut String, about: &str, name: &str, entries: &Map<String, Value>) {
    let _ = writeln!(text, "/** {about} */\nexport const {name} = Object.freeze({{");
    for (key, value) in entries {
        let _ = writeln!(text, "  {key}: {value},");
    }
    text.push_str("});\n\n");
}

fn limits() -> Map<String, Value> {
    Quantity::ALL
        .iter()
        .map(|q| {
            let row = json!({
                "code": *q as u16,
                "name": q.name(),
                "unit": q.unit(),
                "field": q.field(),
                "min": number(q.lowest()),
                "max": number(q.highest()),
                "decimals": q.decimals(),
                "whole": q.is_whole(),
                "meaning": q.meaning(),
                "source": q.source(),
            });
            (key(q), row)
        })
        .collect()
}

/// A whole number without a point, as JavaScript prints it.
fn number(value: f64) -> Value {
    if value == (value as i64) as f64 { json!(value as i64) } else { json!(value) }
}

fn keyed(
    text: &mut String,
    kind: &str,
    about: &str,
    rows: impl Iterator<Item = (i64, String, &'static str)>,
) {
    let rows: Vec<_> = rows.collect();
    let mut keys = vec![Value::Null];
    let mut texts = Map::new();
    for (code, key, words) in rows {
        assert_eq!(code as usize, keys.len(), "{kind} {key}: codes count from one");
        keys.push(json!(key));
        texts.insert(key, json!(words));
    }
    let _ = writeln!(
        text,
        "/** {about}: keys by their lasting codes. */\nexport const {kind}Keys = {};\n",
        Value::Array(keys)
    );
    put(text, &format!("{about}, in plain words."), &format!("{kind}Texts"), &texts);
}

/// The types of `about.js` and of refusals.
pub fn types() -> Outcome<String> {
    let union = |keys: Vec<String>| {
        keys.iter().map(|key| format!("\"{key}\"")).collect::<Vec<_>>().join(" | ")
    };
    let constants = published::constants()?.into_iter().map(|constant| constant.name).collect();
    Ok(TYPES
        .replace("QUANTITIES", &union(Quantity::ALL.iter().map(key).collect()))
        .replace("LIMITS", &union(Limit::ALL.iter().map(key).collect()))
        .replace("UNTOLD", &union(Untold::ALL.iter().map(key).collect()))
        .replace("CAUTIONS", &union(Caution::ALL.iter().map(key).collect()))
        .replace("CONSTANTS", &union(constants))
        .replace("WINDOWS", &union(WINDOWS.iter().map(|(name, _)| name.to_lowercase()).collect())))
}

const TYPES: &str = r#"/** Key of a quantity. */
export type QuantityKey = QUANTITIES;

/** A row of the table of quantities. */
export interface Quantity {
  /** Lasting code. */
  code: number;
  /** Name in plain words. */
  name: string;
  /** Unit as written after a number; empty for a plain count. */
  unit: string;
  /** Usual name of a field that holds it. */
  field: string;
  /** Lowest value accepted. */
  min: number;
  /** Highest value accepted. */
  max: number;
  /** How many decimals a person wants to see. */
  decimals: number;
  /** Whether only whole numbers are accepted. */
  whole: boolean;
  /** What it is, in a sentence. */
  meaning: string;
  /** Where its range comes from. */
  source: string;
}

/** Every quantity by its key: for forms, messages and glossaries. */
export const limits: Readonly<Record<QuantityKey, Quantity>>;

/** What can stand in the way of a wish. */
export type Limit = LIMITS;
export const limitTexts: Readonly<Record<Limit, string>>;

/** Why measurements cannot tell. */
export type Untold = UNTOLD;
export const untoldTexts: Readonly<Record<Untold, string>>;
/** What is wanting then: what the value of a refusal counts. */
export const wantingTexts: Readonly<Record<Untold, string>>;

/** What can hurt. */
export type Caution = CAUTIONS;
/** Cautions in plain words. They defer to local codes, the equipment's instructions and licensed practice. */
export const cautionTexts: Readonly<Record<Caution, string>>;

/** What goes on on a scale, what happens there, steps of a recipe, what to do, and why, in plain words. */
export const doingTexts: Readonly<Record<Doing, string>>;
export const happeningTexts: Readonly<Record<Happening, string>>;
export const stepTexts: Readonly<Record<Step, string>>;
export const cueTexts: Readonly<Record<Cue, string>>;
export const whyTexts: Readonly<Record<Why, string>>;

/** Constants with their sources. */
export const constants: Readonly<Record<CONSTANTS, { value: number; about: string }>>;

/** Published windows with their sources. A window is somebody's taste put in numbers. */
export const windows: Readonly<Record<WINDOWS, { window: Window; source: string }>>;

/** What went wrong. The first four never reach the formulas. */
export type RefusalCode =
  | "missing"
  | "wrong_type"
  | "unknown_field"
  | "unknown_choice"
  | "out_of_range"
  | "not_whole"
  | "impossible"
  | "empty_band"
  | "result_out_of_range"
  | "infeasible"
  | "cannot_tell"
  | "unreadable"
  | "not_begun"
  | "not_kept";

/** Why bytes are no profile. */
export type Unreadable = "length" | "foreign" | "version" | "damaged" | "not_blank" | "unsound";

/** Why a function has no answer, in words and in facts. */
export class Refusal extends RangeError {
  readonly code: RefusalCode;
  /** The input to blame, or null. */
  readonly field: string | null;
  /** Which item of a list, counted from 0; null where it is in none, or cannot be told. */
  readonly item: number | null;
  /** The value given or computed; how much there is of what is wanting, where measurements cannot tell; or null. */
  readonly value: unknown;
  /** The lowest value that is accepted or possible; how much is needed for a start, where measurements cannot tell; or null. */
  readonly min: number | null;
  /** The highest, or null. */
  readonly max: number | null;
  /** What the value is, or null. */
  readonly quantity: QuantityKey | null;
  /** The nearest value that can be had, for a wish that cannot be met, or null. */
  readonly nearest: number | null;
  /** What stands in the way of a wish, or null. */
  readonly limit: Limit | null;
  /** Why measurements cannot tell, or bytes are no profile, or null. */
  readonly why: Untold | Unreadable | null;
  /** The quantity that a value does not go with, or null. */
  readonly beside: QuantityKey | null;
}

"#;
