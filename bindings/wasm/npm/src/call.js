// The way of every call: objects read and checked, then written to the module's memory, its functions called,
// answers read back, refusals thrown. All is read before anything is written: a getter may call us in turn.

import {
  cautionKeys, limitKeys, limits, limitTexts, quantityKeys, untoldKeys, untoldTexts, wantingTexts,
} from "./about.js";

/** Why a call has no answer. */
export class Refusal extends RangeError {
  constructor(message, facts) {
    super(message);
    this.name = "Refusal";
    /** What went wrong, one word of a fixed list. */
    this.code = facts.code;
    /** The input to blame, or null. */
    this.field = facts.field ?? null;
    /** Which item of a list it is in, counted from 0, or null. */
    this.item = facts.item ?? null;
    /** The value given or computed, or null. */
    this.value = facts.value ?? null;
    /** The lowest value that is accepted or possible, or null. */
    this.min = facts.min ?? null;
    /** The highest, or null. */
    this.max = facts.max ?? null;
    /** What the value is, a key of `limits`, or null. */
    this.quantity = facts.quantity ?? null;
    /** The nearest value that can be had, for a wish that cannot be met, or null. */
    this.nearest = facts.nearest ?? null;
    /** What stands in the way of a wish, or null. */
    this.limit = facts.limit ?? null;
    /** Why measurements cannot tell, or bytes are no profile, or null. */
    this.why = facts.why ?? null;
    /** The quantity that a value does not go with, or null. */
    this.beside = facts.beside ?? null;
  }
}

/** The module's memory. */
export let f64;
export let i32;
/** Where its free memory begins, with the error of a call. */
export let base;
/** Where answers go. */
export let answer;
/** Where columns are lent. */
export let columnsAt;

/** Bytes of the error before the answer. */
const ERROR = 64;
/** Bytes that a call needs: error, answer, inputs. */
const ROOM = 8192;
/** Bytes that columns need besides: a block of nine of numbers and of three of bytes (`columns.js`). */
const COLUMNS = 1024 * (9 * 8 + 3);
const PAGE = 65536;

/** Makes a compiled module the one that answers; its functions. */
export function useModule(module) {
  const exports = new WebAssembly.Instance(module).exports;
  const { memory, __heap_base } = exports;
  base = (__heap_base.value + 7) & ~7;
  answer = base + ERROR;
  columnsAt = base + ROOM;
  const missing = columnsAt + COLUMNS - memory.buffer.byteLength;
  if (missing > 0) memory.grow(Math.ceil(missing / PAGE));
  f64 = new Float64Array(memory.buffer);
  i32 = new Int32Array(memory.buffer);
  return exports;
}

export const wrong = (code, field, words, value) => new Refusal(`${field}: ${words}`, { code, field, value });

/** Letters of a value that a message shows. */
const LONGEST = 40;

const cut = (text) => (text.length > LONGEST ? `${text.slice(0, LONGEST)}…` : text);

/** A value in words, short ones: of an object only what it is. A proxy that is revoked does not say even that. */
function shown(value) {
  if (typeof value === "string") return JSON.stringify(cut(value));
  if (typeof value === "function") return "a function";
  if (typeof value !== "object") return cut(String(value));
  try {
    const name = Object.prototype.toString.call(value).slice("[object ".length, -1);
    return `${/^[AEIO]/.test(name) ? "an" : "a"} ${cut(name)}`;
  } catch {
    return "an object";
  }
}

/** A value of the right type, or a refusal that tells a missing one from a wrong one. */
export function mistyped(value, name, what) {
  return value === undefined || value === null
    ? wrong("missing", name, `${what} is missing`)
    : wrong("wrong_type", name, `${shown(value)} is not ${what}`, value);
}

/** What was thrown while an object was read: of one without a field, also which it should not have, perhaps the one meant. */
export function misspelt(thrown, o, fields) {
  if (!(thrown instanceof Refusal) || thrown.code !== "missing" || !fields.has(thrown.field)) return thrown;
  for (const field in o) {
    if (!fields.has(field)) return new Refusal(`${thrown.message}; ${shown(field)} is no field`, { ...thrown });
  }
  return thrown;
}

/** What is read of an object with these fields. */
export function readFrom(o, fields, read) {
  try {
    return read();
  } catch (thrown) {
    throw misspelt(thrown, o, fields);
  }
}

/** An object with no other fields than those known, `needed` of which must be there. */
export function record(o, needed, fields, name) {
  if (typeof o !== "object" || o === null) throw mistyped(o, name, "an object");
  let count = 0;
  for (const _ in o) count++;
  // As many as are needed: one that is unknown leaves one missing, which is found when it is read.
  if (count !== needed) onlyKnown(o, fields, name);
}

function onlyKnown(o, fields, name) {
  if (Array.isArray(o)) throw mistyped(o, name, "an object");
  for (const field in o) {
    if (!fields.has(field)) {
      const words = `${cut(field)}: is no field here; known are ${[...fields].join(", ")}`;
      throw new Refusal(words, { code: "unknown_field", field, value: o[field] });
    }
  }
}

export function number(value, name) {
  if (typeof value !== "number") throw mistyped(value, name, "a number");
  return value;
}

export function integer(value, name, key) {
  if (typeof value !== "number") throw mistyped(value, name, "a number");
  if (value !== (value | 0)) throw refused(limits[key].code, value, name);
  return value;
}

export function boolean(value, name) {
  if (typeof value !== "boolean") throw mistyped(value, name, "true or false");
  return value ? 1 : 0;
}

export function choice(value, name, texts) {
  if (typeof value !== "string") throw mistyped(value, name, "a text");
  const code = texts.indexOf(value);
  if (code < 1) throw wrong("unknown_choice", name, `${shown(value)} is none of ${texts.slice(1).join(", ")}`, value);
  return code;
}

/** A value that may be absent: taken, or null. */
export const optional = (value, name, take, more) =>
  value === undefined || value === null ? null : take(value, name, more);

/** More items than any function takes are counted, and not taken. */
const MOST_ITEMS = 100;

function lengthOf(value, name) {
  if (!Array.isArray(value) && !ArrayBuffer.isView(value)) throw mistyped(value, name, "a list");
  return value.length;
}

/** A refusal of an item of a list: it says which. */
function ofItem(refusal, name, item) {
  const { field, message } = refusal;
  const isNamed = field === name && (message.startsWith(`${name}:`) || message.startsWith(`${name}[`));
  const words = isNamed ? message.slice(name.length) : `: ${message}`;
  return new Refusal(`${name}[${item}]${words}`, { ...refusal, item });
}

/** An item of a list, taken. */
function itemOf(list, item, name, take, more) {
  try {
    return take(list[item], name, more);
  } catch (thrown) {
    throw thrown instanceof Refusal ? ofItem(thrown, name, item) : thrown;
  }
}

/** A list of numbers, taken, and how many there are. */
export function numbers(value, name) {
  const count = lengthOf(value, name);
  const values = [];
  for (let i = 0; i < count && i < MOST_ITEMS; i++) values.push(itemOf(value, i, name, number));
  return { count, values };
}

/** So many numbers of a list, zeros for those that it does not have. */
export function places(value, name, count) {
  if (lengthOf(value, name) > count) throw wrong("wrong_type", name, `a list of more than ${count}`, value);
  return Array.from({ length: count }, (_, at) => (at < value.length ? itemOf(value, at, name, number) : 0));
}

/** The numbers of a table, row by row. */
export function table(value, name, rows, columns) {
  if (lengthOf(value, name) !== rows) throw wrong("wrong_type", name, `not a table of ${rows} rows`, value);
  return Array.from({ length: rows }, (_, row) => itemOf(value, row, name, places, columns)).flat();
}

/** The version of a profile's fields. */
export function version(value, known) {
  if (number(value, "version") !== known) {
    throw new Refusal(`version: ${value}, and only ${known} is known`, {
      code: "unreadable", field: "version", value, why: "version",
    });
  }
}

/** The numbers of a list of objects, taken, and how many objects there are. */
export function items(value, name, take) {
  const count = lengthOf(value, name);
  const values = [];
  for (let i = 0; i < count && i < MOST_ITEMS; i++) values.push(...itemOf(value, i, name, take));
  return { count, values };
}

/** Writes numbers to a place after the base, so many doubles and then integers; where that is. */
export function put(values, place, doubles = values.length) {
  const at = base + place;
  for (let i = 0; i < doubles; i++) f64[(at >> 3) + i] = values[i];
  for (let i = doubles; i < values.length; i++) i32[(at >> 2) + doubles + i] = values[i];
  return at;
}

/** Writes the items of a list to a place after the base, each of `size` numbers: doubles and then integers. */
export function putEach(values, place, doubles, size) {
  const bytes = 8 * doubles + 4 * (size - doubles);
  for (let i = 0; i * size < values.length; i++) {
    put(values.slice(i * size, (i + 1) * size), place + i * bytes, doubles);
  }
  return base + place;
}

/** Bytes, copied: of more than `most`, one more. */
export function bytes(value, name, most) {
  if (!(value instanceof Uint8Array)) throw mistyped(value, name, "a Uint8Array");
  return { count: value.length, values: value.slice(0, most + 1) };
}

/** Writes bytes to a place after the base; where that is. */
export function putBytes(values, place) {
  new Uint8Array(f64.buffer).set(values, base + place);
  return base + place;
}

/** Reads so many bytes. */
export const bytesAt = (at, count) => new Uint8Array(f64.buffer).slice(at, at + count);

/** Reads so many numbers. */
export const doubles = (count, at) => Array.from(f64.subarray(at >> 3, (at >> 3) + count));

/** Reads so many objects. */
export function list(count, most, at, size, get) {
  return Array.from({ length: Math.min(count, most) }, (_, i) => get(at + i * size));
}

/** The key of a quantity's code. */
export const quantity = (code) => quantityKeys.get(code) ?? null;

/** The keys of a set of cautions. */
export function cautions(bits) {
  return cautionKeys.filter((key, code) => key !== null && bits & (1 << code));
}

const CODES = [
  "ok",
  "out_of_range",
  "not_whole",
  "impossible",
  "empty_band",
  "result_out_of_range",
  "infeasible",
  "null",
  "unknown_choice",
  "unnamed",
  "cannot_tell",
  "unreadable",
  "not_begun",
  "not_kept",
];

/** Why bytes cannot be read: keys by their codes. */
const UNREADABLE = [null, "length", "foreign", "version", "damaged", "not_blank", "unsound"];
const UNREADABLE_TEXTS = {
  length: "not as many bytes as there should be",
  foreign: "they do not begin as they should",
  version: "a version of the layout that is not known here",
  damaged: "they have changed since they were written",
  not_blank: "there is something where this version has nothing",
  unsound: "the numbers are of no state that can be",
};

/** Throws for any status but success. Of a list the call may have: its name, what was taken, the fields of an item. */
export function answered(status, name, list, fields) {
  if (status === 0) return;
  const refusal = reported();
  const item = list === undefined ? -1 : blamed(refusal, list, [...fields].indexOf(refusal.field));
  throw item < 0 ? refusal : ofItem(refusal, name, item);
}

/** The first item with the value that is refused, or -1: the module does not tell which it was. */
function blamed({ code, value }, { count, values }, column) {
  if (code !== "out_of_range") return -1;
  const size = values.length / Math.min(count, MOST_ITEMS);
  const own = values.filter((_, at) => at % size === column);
  const item = own.findIndex((other) => Object.is(other + 0, value + 0));
  // A zero also stands for what an item does not have.
  return value === 0 && own.lastIndexOf(0) !== item ? -1 : item;
}

/** The refusal of a count that is not an integer, which the module could not be asked about. */
function refused(code, value, field) {
  const key = quantityKeys.get(code);
  const { min, max } = limits[key];
  const whole = value >= min && value <= max;
  return refusal({ code: whole ? "not_whole" : "out_of_range", field, value, min, max, quantity: key });
}

/** The refusal that the module has told of. */
function reported() {
  const [d, i] = [base >> 3, base >> 2];
  const code = CODES[i32[i + 8]];
  const ranged = code !== "infeasible";
  const why = { cannot_tell: untoldKeys, unreadable: UNREADABLE }[code];
  return refusal({
    code,
    field: text(i32[i + 12]),
    value: code === "empty_band" ? null : f64[d],
    min: ranged && code !== "unreadable" ? f64[d + 1] : null,
    max: ranged && why === undefined ? f64[d + 2] : null,
    nearest: ranged ? null : f64[d + 3],
    quantity: quantity(i32[i + 9]),
    beside: quantity(i32[i + 10]),
    limit: why === undefined ? limitKeys[i32[i + 11]] : null,
    why: why === undefined ? null : why[i32[i + 11]],
  });
}

/** A text of the module's, ended by a zero byte. */
function text(at) {
  if (at === 0) return null;
  const bytes = new Uint8Array(f64.buffer);
  return String.fromCharCode(...bytes.subarray(at, bytes.indexOf(0, at)));
}

/** A computed number for a message: four decimals at most. */
function rounded(value) {
  const scaled = Math.floor(value * 1e4 + 0.5) / 1e4;
  return Number.isFinite(scaled) ? scaled : value;
}

/** The refusal of some facts, with the words that the other interfaces use. */
function refusal(facts) {
  const { name, unit } = limits[facts.quantity] ?? { name: facts.field, unit: "" };
  const u = unit === "" ? "" : ` ${unit}`;
  const { value, min, max, nearest } = facts;
  const words = {
    out_of_range: () => `${name}: ${value}${u} is outside ${min} to ${max}${u}`,
    not_whole: () => `${name}: ${value} is not a whole number from ${min} to ${max}`,
    impossible: () =>
      facts.quantity === "clock"
        ? `${name}: ${value}${u} does not come after the one before, ${rounded(min)}${u}`
        : `${name}: ${value}${u} cannot be with the ${limits[facts.beside].name} given; ` +
          `${rounded(min)} to ${rounded(max)}${u} can`,
    empty_band: () => `${name}: a band from ${min} to ${max}${u} is empty`,
    result_out_of_range: () => `${name} comes out as ${rounded(value)}${u}, outside ${min} to ${max}${u}`,
    infeasible: () =>
      `${name}: ${rounded(value)}${u} cannot be reached, ${limitTexts[facts.limit]}; ` +
      `the nearest is ${rounded(nearest)}${u}`,
    unreadable: () => `${name}: ${UNREADABLE_TEXTS[facts.why]}`,
    not_begun: () => `${name}: a state that was never begun, or one of another version`,
    not_kept: () => `${name}: the profile has none`,
    cannot_tell: () =>
      `${name}: these measurements cannot tell it, ${untoldTexts[facts.why]} ` +
      `(${wantingTexts[facts.why]}: ${rounded(value)}, needed for a start: ${rounded(min)})`,
  };
  return new Refusal((words[facts.code] ?? (() => `${name}: ${facts.code}`))(), facts);
}
