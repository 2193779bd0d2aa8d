// The main formulas on whole columns: arrays in and arrays out, copied through the module's memory in blocks, so that
// any length works.

import { answer, answered, base, columnsAt, f64, i32, mistyped, number, put, readFrom, record, wrong } from "./call.js";
import {
  LOSSES_DOUBLES,
  STATE_AT,
  WINDOW_DOUBLES,
  cupwrightColumnsBeverage,
  cupwrightColumnsExtractionYield,
  cupwrightColumnsFlowThroughStrength,
  cupwrightColumnsFlowThroughYield,
  cupwrightColumnsStand,
  cupwrightColumnsSteepedYield,
  cupwrightColumnsStrengthOfBrix,
  cupwrightColumnsWaterRatio,
  cupwrightColumnsWaterToReach,
  takeLosses,
  takeWindow,
} from "./functions.js";

/** Rows that are lent at once: so that all columns of any function go into the room for them. */
const ROWS = 1024;

/** What is the same for all rows: its name, how it is taken, and how it is passed. */
const at = (doubles) => (values) => put(values, STATE_AT, doubles);
const FACTOR = { name: "refractive_factor_pct_per_brix", take: number, pass: (value) => value };
const LOSSES = { name: "losses", take: takeLosses, pass: at(LOSSES_DOUBLES) };
const WINDOW = { name: "window", take: takeWindow, pass: at(WINDOW_DOUBLES) };

/** An array as one that nobody can have changed. */
function view(value, name, Kind) {
  if (!(value instanceof Kind)) throw mistyped(value, name, `a ${Kind.name}`);
  return new Kind(value.buffer, value.byteOffset, value.length);
}

/** Refuses an array that is not as long as the first one. */
function even(array, name, rows, value) {
  if (array.length !== rows) throw wrong("wrong_type", name, `${array.length} rows, where others have ${rows}`, value);
}

/** A column that is read: an array, or a number that is every row's. */
const taken = (value, name) => (typeof value === "number" ? value : view(value, name, Float64Array));

/** Where the answers go: arrays of the caller's, or new ones. */
function room(into, outputs, rows) {
  const given = {};
  const views = outputs.map(([name, Kind]) => {
    const value = into === undefined ? new Kind(rows) : into[name];
    const array = view(value, name, Kind);
    even(array, name, rows, value);
    given[name] = value;
    return array;
  });
  return { given, views };
}

/** A function on columns: what is the same for all rows, the columns, the answers, and what to call. */
function scored(setting, inputs, answers, call) {
  const outputs = [...answers, ["status", Uint8Array]];
  const names = setting === null ? inputs : [setting.name, ...inputs];
  const fields = new Set(names);
  const places = new Set(outputs.map(([name]) => name));
  return (o, into) => {
    record(o, names.length, fields, "options");
    if (into !== undefined) record(into, outputs.length, places, "into");
    const [shared, columns] = readFrom(o, fields, () => [
      setting === null ? null : setting.take(o[setting.name], setting.name),
      inputs.map((name) => taken(o[name], name)),
    ]);
    const first = columns.find((column) => typeof column !== "number");
    if (first === undefined) throw wrong("wrong_type", inputs[0], "a number, and no column is an array", columns[0]);
    const rows = first.length;
    columns.forEach((column, k) => typeof column === "number" || even(column, inputs[k], rows, column));
    const { given, views } = readFrom(into, places, () => room(into, outputs, rows));
    const refused = inBlocks(rows, columns, views, (from, count, to) =>
      call(...(setting === null ? [] : [setting.pass(shared)]), ...from, count, ...to, answer, base),
    );
    return { ...given, refused };
  };
}

/** Lends columns block by block, and takes what becomes of them; how many rows were refused. */
function inBlocks(rows, columns, views, call) {
  let refused = 0;
  let start = 0;
  do {
    const count = Math.min(ROWS, rows - start);
    let place = columnsAt;
    const from = columns.map((column) => {
      const own = place;
      place += 8 * ROWS;
      if (typeof column === "number") f64.fill(column, own >> 3, (own >> 3) + count);
      else f64.set(column.subarray(start, start + count), own >> 3);
      return own;
    });
    const to = views.map((array) => {
      const own = place;
      place += array.BYTES_PER_ELEMENT * ROWS;
      return own;
    });
    answered(call(from, count, to));
    refused += i32[answer >> 2];
    views.forEach((array, k) => {
      array.set(new array.constructor(f64.buffer, to[k], count), start);
    });
    start += count;
  } while (start < rows);
  return refused;
}

const PLACE = [
  ["side", Uint8Array],
  ["above_lowest", Float64Array],
  ["below_highest", Float64Array],
  ["above_centre", Float64Array],
];
const STANDING = ["strength", "yield"].flatMap((of) => PLACE.map(([name, Kind]) => [`${of}_${name}`, Kind]));

export const columns = Object.freeze({
  ANSWERED: 0,
  NO_ANSWER: 255,
  flowThroughYield: scored(null, ["strength_pct", "beverage_g", "dose_g"], [["yield_pct", Float64Array]], (...given) =>
    cupwrightColumnsFlowThroughYield(...given),
  ),
  flowThroughStrength: scored(null, ["yield_pct", "beverage_g", "dose_g"], [["strength_pct", Float64Array]], (...given) =>
    cupwrightColumnsFlowThroughStrength(...given),
  ),
  steepedYield: scored(null, ["strength_pct", "water_g", "dose_g"], [["yield_pct", Float64Array]], (...given) =>
    cupwrightColumnsSteepedYield(...given),
  ),
  extractionYield: scored(
    null,
    [
      "dose_g",
      "water_g",
      "beverage_g",
      "moisture_pct",
      "water_solids_mg_per_l",
      "vapour_g",
      "held_strength_pct",
      "strength_pct",
    ],
    [["yield_pct", Float64Array]],
    (...given) => cupwrightColumnsExtractionYield(...given),
  ),
  waterRatio: scored(null, ["dose_g", "water_g"], [["water_ratio_g_per_g", Float64Array]], (...given) =>
    cupwrightColumnsWaterRatio(...given),
  ),
  waterToReach: scored(null, ["beverage_g", "strength_pct", "wanted_pct", "water_solids_mg_per_l"], [["added_g", Float64Array]], (...given) =>
    cupwrightColumnsWaterToReach(...given),
  ),
  strengthOfBrix: scored(FACTOR, ["brix"], [["strength_pct", Float64Array]], (...given) =>
    cupwrightColumnsStrengthOfBrix(...given),
  ),
  beverage: scored(LOSSES, ["dose_g", "water_g"], [["beverage_g", Float64Array]], (...given) =>
    cupwrightColumnsBeverage(...given),
  ),
  stand: scored(WINDOW, ["strength_pct", "yield_pct"], STANDING, (...given) => cupwrightColumnsStand(...given)),
});
