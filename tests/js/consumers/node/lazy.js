// node lazy.js ENTRY CASES: every function with options that are computed when they are read, by code that calls
// the library in turn. Answers and refusals must be those to plain options, and no field may be read twice.

import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";

import { written } from "./cases.js";

const [entry, path] = process.argv.slice(2);
const library = await import(entry);
await library.start?.(readFileSync(fileURLToPath(import.meta.resolve("cupwright/cupwright.wasm"))));

const cases = readFileSync(path, "utf8")
  .trimEnd()
  .split("\n")
  .map((line) => JSON.parse(line))
  .map(({ room, name, options }) => ({ call: library[room][name], name, options: written(options) }));

/** What a call comes to: its answer, or the facts of its refusal. */
function outcome({ call, options }) {
  try {
    return call(options);
  } catch (thrown) {
    if (!(thrown instanceof library.Refusal)) throw thrown;
    return { ...thrown, message: thrown.message };
  }
}

/** One case of each function, to be called while options are read. */
const others = [...new Map(cases.map((one) => [one.call, one])).values()];

/** How often each field has been read, by its path. */
const reads = new Map();

/** Calls at each read, one function after the other in turn: fits take their time. */
const AT_A_READ = 10;
let turn = 0;

function read(path) {
  reads.set(path, (reads.get(path) ?? 0) + 1);
  for (let i = 0; i < AT_A_READ; i++) outcome(others[turn++ % others.length]);
}

/** A value of options whose inner ones are made lazy too. */
const deep = (make) =>
  function lazy(value, path = "") {
    if (typeof value !== "object") return value;
    return make(value, (key) => {
      read(`${path}.${key}`);
      return lazy(value[key], `${path}.${key}`);
    });
  };

/** Getters for all that is in a value. */
const getters = (value, get, enumerable) =>
  Object.fromEntries(Object.keys(value).map((key) => [key, { get: () => get(key), enumerable }]));

const LAZY = {
  getters: deep((value, get) => Object.defineProperties(Array.isArray(value) ? [] : {}, getters(value, get, true))),
  "a class's getters": deep((value, get) =>
    Array.isArray(value)
      ? Object.defineProperties([], getters(value, get, true))
      : Object.create(Object.defineProperties({}, getters(value, get, false))),
  ),
  proxies: deep(
    (value, get) =>
      new Proxy(value, {
        get: (_, key) => get(key),
        ownKeys: () => {
          read("its keys");
          return Reflect.ownKeys(value);
        },
      }),
  ),
};

/** A third of them, of every kind: each read calls several functions. */
const some = cases.filter((_, at) => at % 3 === 0);

let wrong = 0;
for (const [way, lazy] of Object.entries(LAZY)) {
  const met = new Set();
  for (const { call, name, options } of some) {
    const plain = outcome({ call, options });
    reads.clear();
    const got = outcome({ call, options: lazy(options) });
    try {
      assert.deepEqual(got, plain);
      reads.delete("its keys");
      for (const [field, count] of reads) assert.equal(count, 1, `${field} is read ${count} times`);
      assert.ok(reads.size > 0, "nothing was read");
      met.add(call);
    } catch (error) {
      wrong += 1;
      if (wrong <= 20) console.error(`${name} with ${way}, ${JSON.stringify(options)}: ${error.message}`);
    }
  }
  // Columns and a profile answer no formula, nor does what a scale sees.
  const { columns, profile, live, ...rooms } = library;
  for (const room of Object.values(rooms)) {
    for (const [name, value] of Object.entries(room)) {
      if (typeof value === "function") assert.ok(met.has(value), `${name} with ${way}: never right`);
    }
  }
}
assert.equal(wrong, 0);
console.log(`${entry}: ${some.length} cases of ${others.length} functions with lazy options, as with plain ones`);
