// node misuse.js CASES: every field of every function misused in every way; each must be refused with the right
// code, field and item of a list, whatever else is in the options.

import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";

import * as library from "cupwright";

import { written } from "./cases.js";

const types = readFileSync(
  createRequire(import.meta.url)
    .resolve("cupwright/cupwright.wasm")
    .replace(/[^/\\]+$/, "index.d.ts"),
  "utf8",
);
/** Of a profile, and of what is lived through on a scale, fields are optional that in formulas are not. */
const ofFormulas = types.replaceAll(/export interface (?:Profile|Live\w*) \{[^]*?\n\}\n/g, "");
const named = (pattern) => new Set([...ofFormulas.matchAll(pattern)].map(([, name]) => name));
const OPTIONAL = named(/^ {2}(\w+)\?:/gm);
assert(OPTIONAL.size > 0);
/** Fields that one record can do without and another cannot. */
const SOMETIMES = new Set([...named(/^ {2}(\w+):/gm)].filter((name) => OPTIONAL.has(name)));
/** Needed with what stands beside them in a case: the other edge of a band, a choice. */
const NEEDED = new Set(["yield_lowest_pct", "yield_highest_pct", "yield_counting", "pressure_kpa", "altitude_m"]);

const isRecord = (value) => typeof value === "object" && !Array.isArray(value);

/** The paths of all that is in the options; of lists the last item. */
function* paths(value, path = []) {
  yield path;
  const entries = Array.isArray(value)
    ? Object.entries(value).slice(-1)
    : isRecord(value)
      ? Object.entries(value)
      : [];
  for (const [key, inner] of entries) yield* paths(inner, [...path, key]);
}

const at = (value, path) => path.reduce((inner, key) => inner[key], value);

/** The options with something else at a path. */
function spoiled(options, path, put) {
  const holder = structuredClone({ options });
  const whole = ["options", ...path];
  put(at(holder, whole.slice(0, -1)), whole.at(-1));
  return holder.options;
}

const MISSING = [undefined, null];
/** Too long for a message. */
const LONG = Array(1000).fill(1);

/** By kind, values that are refused, and with which code. */
const WRONG = {
  record: [
    [[], "wrong_type"],
    ["1", "wrong_type"],
    [1, "wrong_type"],
    [Number.NaN, "wrong_type"],
    [true, "wrong_type"],
  ],
  list: [
    [{}, "wrong_type"],
    ["1", "wrong_type"],
    [1, "wrong_type"],
    [Number.NaN, "wrong_type"],
    [true, "wrong_type"],
  ],
  number: [
    ["1", "wrong_type"],
    ["", "wrong_type"],
    [LONG.join(""), "wrong_type"],
    [[], "wrong_type"],
    [LONG, "wrong_type"],
    [{}, "wrong_type"],
    [refuses, "wrong_type"],
    [true, "wrong_type"],
    [1n, "wrong_type"],
    [10n ** 1000n, "wrong_type"],
    [Symbol(LONG.join("")), "wrong_type"],
    [new Uint8Array(1000), "wrong_type"],
    [Number.NaN, "out_of_range"],
    [Infinity, "out_of_range"],
    [-Infinity, "out_of_range"],
  ],
  boolean: [
    ["true", "wrong_type"],
    [1, "wrong_type"],
    [0, "wrong_type"],
    [[], "wrong_type"],
    [Number.NaN, "wrong_type"],
  ],
  string: [
    ["none of them", "unknown_choice"],
    ["", "unknown_choice"],
    [1, "wrong_type"],
    [[], "wrong_type"],
    [Number.NaN, "wrong_type"],
    [true, "wrong_type"],
  ],
};

const kindOf = (value) => (Array.isArray(value) ? "list" : isRecord(value) ? "record" : typeof value);

let count = 0;

function refuses(call, options, code, field, item, words) {
  count += 1;
  try {
    call(options);
  } catch (thrown) {
    if (!(thrown instanceof library.Refusal)) throw new Error(`${words}: ${thrown}`, { cause: thrown });
    assert.deepEqual([thrown.code, thrown.field, thrown.item], [code, field, item], `${words}: ${thrown.message}`);
    assert.equal(thrown.message.includes(`[${item}]`), item !== null, `${words}: ${thrown.message}`);
    const isShort = code === "unknown_field" || thrown.message.length < 250;
    assert(isShort && !thrown.message.includes("[object"), `${words}: ${thrown.message}`);
    return;
  }
  assert.fail(`${words}: answered`);
}

/** Without a field there is an answer, or the field is missed. */
function answersOrMisses(call, options, field, item, words) {
  try {
    call(options);
  } catch {
    refuses(call, options, "missing", field, item, words);
  }
}

/** Without a field but with it misspelt, a refusal says what was written. */
function saysMisspelt(call, options, written, words) {
  count += 1;
  assert.throws(
    () => call(options),
    ({ code, message }) => /^(missing|unknown_field)$/.test(code) && message.includes(written) && message.length < 500,
    words,
  );
}

/** Every misuse at a place in options that are answered. */
function misuse(call, options, path, name) {
  const value = at(options, path);
  const where = `${name} ${path.join(".")}`;
  // A list's item goes by the list's name.
  const field = path.findLast((key) => !/^\d+$/.test(key)) ?? "options";
  const isItem = /^\d+$/.test(path.at(-1));
  const index = path.findIndex((key) => /^\d+$/.test(key));
  const item = index < 0 ? null : Number(path[index]);
  /** The module says of no item which it is: found in a list that is an option itself. */
  const itemOf = (code) => (code === "out_of_range" && index !== 1 ? null : item);
  const put = (wrong) => spoiled(options, path, (holder, key) => (holder[key] = wrong));
  const isOptional = path.length > 1 && !isItem && OPTIONAL.has(field) && !NEEDED.has(field);
  for (const missing of MISSING) {
    if (isOptional && SOMETIMES.has(field)) {
      answersOrMisses(call, put(missing), field, item, `${where} ${missing}`);
    } else if (isOptional) {
      assert.doesNotThrow(() => call(put(missing)), where);
    } else {
      refuses(call, put(missing), "missing", field, item, `${where} ${missing}`);
    }
  }
  if (path.length > 0 && !isItem) {
    const without = spoiled(options, path, (holder, key) => delete holder[key]);
    if (isOptional && SOMETIMES.has(field)) {
      answersOrMisses(call, without, field, item, `${where} left out`);
    } else if (isOptional) {
      assert.doesNotThrow(() => call(without), where);
    } else {
      refuses(call, without, "missing", field, item, `${where} left out`);
    }
  }
  for (const [wrong, code] of WRONG[kindOf(value)]) {
    refuses(call, put(wrong), code, field, itemOf(code), `${where} ${typeof wrong} ${String(wrong).slice(0, 20)}`);
  }
  if (isRecord(value)) {
    for (const key of Object.keys(value)) {
      const more = spoiled(options, path, (holder, last) => (holder[last][`${key}s`] = holder[last][key]));
      refuses(call, more, "unknown_field", `${key}s`, item, `${where} ${key}s`);
      const misspelt = spoiled(options, path, (holder, last) => {
        const { [key]: meant, ...others } = holder[last];
        holder[last] = { ...others, [`${key}r`]: meant };
      });
      saysMisspelt(call, misspelt, `${key}r`, `${where} ${key}r`);
    }
  }
}

const done = new Map();
for (const line of readFileSync(process.argv[2], "utf8").split("\n")) {
  if (line === "") continue;
  const { room, name, options, answer } = JSON.parse(line);
  if (answer === undefined) continue;
  const call = library[room][name];
  const known = done.get(call) ?? new Set();
  done.set(call, known);
  const own = written(options);
  for (const path of paths(own)) {
    const key = path.join(".");
    if (known.has(key)) continue;
    known.add(key);
    misuse(call, own, path, `${room}.${name}`);
  }
}
// Columns and a profile answer no formula: columns.js, profile.js. Nor does what a scale sees: brews.js.
const { columns, profile, live, ...rooms } = library;
for (const room of Object.values(rooms)) {
  for (const value of Object.values(room)) {
    if (typeof value === "function") assert(done.has(value), `${value.name}: no case is answered`);
  }
}

const setup = { division_g: 0.1, capacity_g: 2000, fastest_g_per_s: 15 };
/** A recipe whose third step is as given. */
const brew = (step) => {
  const recipe = [{ step: "rinse" }, { step: "dose", dose_g: 15 }, step, { step: "beverage", vessel_g: 300 }];
  live.follower(setup, recipe).take({ clock_s: 0, reading_g: 0 });
};
assert.doesNotThrow(() => brew({ step: "pour", to_g: 250, from_s: 0 }));
refuses(brew, { step: "pour", to_g: 250 }, "missing", "from_s", 2, "a pour without its time");
refuses(brew, { step: "pours" }, "unknown_choice", "step", 2, "an unknown step");
refuses(brew, undefined, "missing", "recipe", 2, "no step");
refuses(brew, { step: "pour", to_g: -3, from_s: 0 }, "out_of_range", "to_g", 2, "a pour of less than nothing");
// As other steps have no dose: which one is meant cannot be told.
refuses(brew, { step: "dose", dose_g: 0 }, "out_of_range", "dose_g", null, "a dose of nothing");
const weigh = (reading) => live.scale(setup).take(reading);
saysMisspelt(weigh, { clock_s: 0, reading: 5 }, '"reading"', "a reading misspelt");
saysMisspelt(brew, { step: "pour", to_g: 250, from_sec: 0 }, "from_sec", "a time misspelt");
const outlook = (asked) => live.follower(setup, [{ step: "dose", dose_g: 15 }]).outlook(asked);
saysMisspelt(outlook, { intend: {}, window: {} }, '"intend"', "an outlook's wish misspelt");
const column = (options, into) => columns.waterRatio(options, into);
saysMisspelt(column, { dose: new Float64Array(1), water_g: new Float64Array(1) }, '"dose"', "a column misspelt");
const into = { ratio_: new Float64Array(1), status: new Uint8Array(1) };
const filled = { dose_g: new Float64Array(1), water_g: new Float64Array(1) };
saysMisspelt((options) => column(options, into), filled, '"ratio_"', "a column for answers misspelt");
// Too few readings is no reading's fault, even where one looks like their number.
refuses(library.uncertainty.ofRepeats, { value: [1] }, "out_of_range", "count", null, "one reading");
const drained = { dose_g: 15, water_g: 250, beverage_g: 220, vapour_g: 0 };
const next = { next_water_g: 250, next_vapour_g: 0 };
const manyBrews = { brews: Array(30).fill(drained), ...next, next_dose_gr: 15 };
saysMisspelt(library.calibrate.expectedBeverage, manyBrews, "next_dose_gr", "misspelt behind a long list");

/** What a reader sees, word for word. */
const says = (call, options, message) => assert.throws(() => call(options), { message });
says(library.calibrate.retention, { brews: [drained, 5] }, "brews[1]: 5 is not an object");
says(library.calibrate.retention, { brews: [drained, { ...drained, dose_g: null }] }, "brews[1]: dose_g: a number is missing");
says(library.calibrate.retention, { brews: [{ ...drained, dose_g: -1 }] }, "brews[0]: dose: -1 g is outside 0.1 to 10000 g");
says(library.uncertainty.ofRepeats, { value: [1, 2, "3"] }, 'value[2]: "3" is not a number');
says(
  library.extraction.flowThroughYield,
  { strength_pct: 1.3, beverage_gr: 200, dose_g: 15 },
  'beverage_g: a number is missing; "beverage_gr" is no field',
);
says(library.ratio.waterRatio, { dose_g: new Uint8Array(9), water_g: 1 }, "dose_g: a Uint8Array is not a number");
const misnamed = { dose_g: 15, water_g: 250, ["x".repeat(1000)]: 1 };
says(library.ratio.waterRatio, misnamed, /^x{40}…: is no field here; known are dose_g, water_g$/);
// Of the object that lacks a field, and of no other.
says(library.extraction.extractionYield, { brew: {}, strength_pctr: 1.3 }, /^\w+: a number is missing$/);

console.log(`${count} wrong calls of ${done.size} functions, each refused`);
