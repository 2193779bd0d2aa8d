// The notebook as a file, schema cupwright-cafe-notebook/1, and profiles in the package's own form; both are described
// in schema.md. A file is read strictly: what is not understood is refused with its place, and nothing of such a file
// is taken.

import { limits } from "../cupwright/src/slim.js";
import words from "../words.en.js";
import { PROFILE_VERSION, profileFault } from "./bench.js";
import { MOST_READINGS, fieldOf, fieldsOf, isText, quantityOf } from "./fields.js";
import { filled } from "./learnt.js";

export const SCHEMA = "cupwright-cafe-notebook/1";
const WRONG = words.notebook.wrong;

const result = (key, quantity) => ({ id: `result.${key}`, section: "result", key, kind: "number", quantity });

const LEAVES = [
  ...fieldsOf("wish", "brewer", "coffee", "kitchen", "instrument", "hand", "brew"),
  result("strength_pct", "strength"),
  result("yield_pct", "yield"),
  result("counted_yield_pct", "yield"),
];
const SECTIONS = [...new Set(LEAVES.map(({ section }) => section))];
const COLUMNS = ["id", "at", ...LEAVES.map(({ id }) => id)];

/** An entry of the notebook from all sections and what was found, and what is wrong with it. */
export function entryOf(all, found) {
  const from = { ...all, result: found };
  const entry = { id: freshId(), at: new Date().toISOString() };
  for (const section of SECTIONS) entry[section] = {};
  for (const { section, key } of LEAVES) entry[section][key] = structuredClone(from[section][key]);
  const wrong = [];
  checked(entry, "", wrong);
  return { entry, wrong };
}

// Of 128 random bits; randomUUID is only there on safe addresses.
const freshId = () =>
  Array.from(crypto.getRandomValues(new Uint8Array(16)), (byte) => byte.toString(16).padStart(2, "0")).join("");
const ID = /^[\w-]{1,64}$/;

export const toJson = (entries) => indented({ schema: SCHEMA, entries });

/** A profile as a file, in the package's own form. */
export const profileToJson = (profile) => indented({ version: PROFILE_VERSION, ...profile });

const indented = (value) => `${JSON.stringify(value, null, 2)}\n`;

export function toCsv(entries) {
  const lines = entries.map((entry) =>
    [entry.id, entry.at, ...LEAVES.map((leaf) => cell(leaf, entry[leaf.section][leaf.key]))].map(quoted).join(","),
  );
  // Some spreadsheets know UTF-8 by this mark alone.
  return `\ufeff${[COLUMNS.join(","), ...lines].join("\r\n")}\r\n`;
}

// A spreadsheet would take such text for a formula; the apostrophe is taken off again on the way back.
const FORMULA = /^['=+\-@\t\r]/;

function cell({ kind }, value) {
  if (value === null) return "";
  if (kind === "list") return value.join(" ");
  return kind === "text" && FORMULA.test(value) ? `'${value}` : String(value);
}

const quoted = (text) => (/[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text);

/** The entries of a file, or what is wrong with it. `known` are the entries already kept. */
export function fromFile(text, isCsv, known) {
  const wrong = [];
  const listed = isCsv ? csvEntries(text, wrong) : jsonEntries(text, wrong);
  const ids = new Set();
  const fresh = [];
  listed.forEach((raw, index) => {
    const before = wrong.length;
    const entry = checked(raw, `entries[${index}]`, wrong);
    if (wrong.length > before) return;
    if (ids.has(entry.id)) wrong.push(WRONG.twice(`entries[${index}].id`));
    ids.add(entry.id);
    const kept = known.find(({ id }) => id === entry.id);
    if (!kept) fresh.push(entry);
    else if (JSON.stringify(checked(kept, "", [])) !== JSON.stringify(entry)) {
      wrong.push(WRONG.conflict(`entries[${index}].id`));
    }
  });
  return { entries: fresh, known: listed.length - fresh.length, wrong };
}

/** The profile of a file, or what is wrong with it. */
export function profileFromFile(text) {
  const wrong = [];
  const parsed = parsedJson(text, wrong);
  if (wrong.length > 0) return { wrong };
  if (typeof parsed !== "object" || parsed === null || Array.isArray(parsed)) return { wrong: [WRONG.profile] };
  const { version, ...profile } = parsed;
  if (version !== PROFILE_VERSION) return { wrong: [WRONG.version(version, PROFILE_VERSION)] };
  // One by one, so that each is blamed by its name.
  for (const [key, learned] of Object.entries(profile)) {
    const fault = profileFault({ [key]: learned });
    if (fault) wrong.push(saidFault(key, fault));
  }
  if (wrong.length > 0) return { wrong };
  if (!Object.values(profile).some(Boolean)) return { wrong: [WRONG.nothing] };
  // What a profile may hold and a recipe cannot take, as a hold-up below zero.
  for (const [id, value] of Object.entries(filled(profile))) {
    const fault = numberFault(fieldOf(id).quantity, value, words.fields[id].label);
    if (fault) wrong.push(fault);
  }
  return { profile, wrong };
}

function saidFault(key, { code, field, value, min, max }) {
  const where = field === key ? key : `${key}.${field}`;
  if (code === "out_of_range") return WRONG.range(key, value, min, max);
  return code === "unknown_field" ? WRONG.unknown(where) : WRONG.number(where);
}

function parsedJson(text, wrong) {
  try {
    return JSON.parse(text);
  } catch {
    wrong.push(WRONG.json);
    return undefined;
  }
}

function jsonEntries(text, wrong) {
  const file = parsedJson(text, wrong);
  if (wrong.length > 0) return [];
  if (file?.schema !== SCHEMA) wrong.push(WRONG.schema(String(file?.schema)));
  else if (!Array.isArray(file.entries)) wrong.push(WRONG.entries);
  else return file.entries;
  return [];
}

function csvEntries(text, wrong) {
  const rows = csvRows(text.replace(/^\ufeff/, ""), wrong);
  if (wrong.length > 0) return [];
  const head = rows.shift()?.cells ?? [];
  const missing = COLUMNS.filter((column) => !head.includes(column));
  const strange = head.filter((column, index) => !COLUMNS.includes(column) || head.indexOf(column) !== index);
  if (missing.length > 0) wrong.push(WRONG.columns(missing.join(", ")));
  wrong.push(...strange.map((column) => WRONG.unknown(column)));
  for (const { cells, line } of rows) {
    if (cells.length !== head.length) wrong.push(WRONG.cells(line, cells.length, head.length));
  }
  if (wrong.length > 0) return [];
  return rows.map(({ cells }) => {
    const at = (column) => cells[head.indexOf(column)];
    const entry = { id: at("id"), at: at("at") };
    for (const section of SECTIONS) entry[section] = {};
    for (const leaf of LEAVES) entry[leaf.section][leaf.key] = fromCell(leaf, at(leaf.id));
    return entry;
  });
}

function fromCell({ kind }, text) {
  // What is no number stays text, for the check to refuse by its place.
  const number = (part) => (part.trim() !== "" && Number.isFinite(Number(part)) ? Number(part) : part);
  switch (kind) {
    case "number":
      return text === "" ? null : number(text);
    case "list":
      return text
        .split(" ")
        .filter((part) => part !== "")
        .map(number);
    case "flag":
      // Spreadsheets write them in capitals.
      return { true: true, false: false }[text.toLowerCase()] ?? text;
    case "text":
      return text.startsWith("'") ? text.slice(1) : text;
    default:
      return text;
  }
}

// Rows as RFC 4180 has them.
function csvRows(text, wrong) {
  const rows = [];
  let cells = [];
  let value = "";
  let state = "start";
  let line = 1;
  let from = 1;
  const endCell = () => {
    cells.push(value);
    value = "";
    state = "start";
  };
  const endRow = () => {
    const blank = state === "start" && cells.length === 0;
    endCell();
    if (!blank) rows.push({ cells, line: from });
    cells = [];
    from = line;
  };
  for (const sign of text) {
    if (sign === "\n") line += 1;
    if (state === "quoted") {
      if (sign === '"') state = "closed";
      else value += sign;
    } else if (sign === '"' && state === "closed") {
      value += sign;
      state = "quoted";
    } else if (sign === '"' && state === "start") state = "quoted";
    else if (sign === ",") endCell();
    else if (sign === "\n") endRow();
    else if (sign === "\r") continue;
    else if (sign === '"' || state === "closed") {
      wrong.push(WRONG.csv(line));
      return rows;
    } else {
      value += sign;
      state = "plain";
    }
  }
  if (state === "quoted") wrong.push(WRONG.csv(from));
  else if (state !== "start" || cells.length > 0) endRow();
  return rows;
}

// An entry with its keys in the order of the schema; whatever is wrong is added to the list.
function checked(raw, where, wrong) {
  if (typeof raw !== "object" || raw === null) {
    wrong.push(WRONG.missing(where));
    return null;
  }
  only(raw, ["id", "at", ...SECTIONS], where, wrong);
  if (typeof raw.id !== "string" || !ID.test(raw.id)) wrong.push(WRONG.id(`${where}.id`));
  const time = new Date(raw.at);
  if (typeof raw.at !== "string" || Number.isNaN(time.getTime()) || time.toISOString() !== raw.at) {
    wrong.push(WRONG.time(`${where}.at`));
  }
  const entry = { id: raw.id, at: raw.at };
  for (const section of SECTIONS) {
    entry[section] = {};
    if (typeof raw[section] !== "object" || raw[section] === null) wrong.push(WRONG.missing(`${where}.${section}`));
    else {
      const keys = LEAVES.filter((leaf) => leaf.section === section).map(({ key }) => key);
      only(raw[section], keys, `${where}.${section}`, wrong);
    }
  }
  if (SECTIONS.some((section) => typeof raw[section] !== "object" || raw[section] === null)) return entry;
  for (const leaf of LEAVES) {
    const value = raw[leaf.section][leaf.key];
    const fault = faultOf(leaf, value, raw, where ? `${where}.${leaf.id}` : leaf.id);
    if (fault) wrong.push(fault);
    else entry[leaf.section][leaf.key] = value;
  }
  return entry;
}

function only(object, keys, where, wrong) {
  for (const key of Object.keys(object)) if (!keys.includes(key)) wrong.push(WRONG.unknown(`${where}.${key}`));
}

function faultOf(leaf, value, all, where) {
  if (value === undefined) return WRONG.missing(where);
  switch (leaf.kind) {
    case "text":
      return isText(value) ? null : WRONG.text(where);
    case "flag":
      return typeof value === "boolean" ? null : WRONG.flag(where);
    case "choice":
      return leaf.options.includes(value) ? null : WRONG.choice(where, leaf.options.join(", "));
    case "list": {
      if (!Array.isArray(value) || value.length === 0 || value.length > MOST_READINGS) return WRONG.list(where);
      return (
        value.map((one, index) => numberFault(quantityOf(leaf, all), one, `${where}[${index}]`)).find(Boolean) ?? null
      );
    }
    default:
      if (value === null && (leaf.optional || leaf.when)) return null;
      return numberFault(leaf.quantity, value, where);
  }
}

function numberFault(quantity, value, where) {
  if (typeof value !== "number" || !Number.isFinite(value)) return WRONG.number(where);
  const { min, max, whole } = limits[quantity];
  if (value < min || value > max) return WRONG.range(where, value, min, max);
  return whole && !Number.isInteger(value) ? WRONG.whole(where, value) : null;
}
