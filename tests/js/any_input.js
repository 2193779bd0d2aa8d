// node any_input.js PACKAGE CASES: every function with options changed by chance, always the same. Nothing but the
// package's own refusals may come out, and afterwards it answers as before.

import { readFileSync } from "node:fs";
import { join, resolve } from "node:path";
import { pathToFileURL } from "node:url";

import { check, numbers } from "./parity.js";

/** Every which case is changed, and how often. */
const EVERY = 13;
const TIMES = 6;

/** Chance (xorshift, Marsaglia, J. Stat. Softw. 8 (2003), 14; from memory). */
let state = 20_261_126;
function below(count) {
  state ^= state << 13;
  state ^= state >>> 17;
  state ^= state << 5;
  return (state >>> 0) % count;
}

const bits = new DataView(new ArrayBuffer(8));

/** A number of any bits. */
function any() {
  bits.setUint32(0, below(2 ** 32));
  bits.setUint32(4, below(2 ** 32));
  return bits.getFloat64(0);
}

const ODD = [
  NaN, Infinity, -Infinity, -0, 0, -1, 1e308, 5e-324, 0.5, 2 ** 31, 2 ** 53, null, undefined, true, "", "5", "lidded", 7n,
  Symbol("odd"), [Symbol("odd")], Object.create(null), [], {}, [NaN], () => 5, new Date(0), new Float64Array(3), new Uint8Array(312), "__proto__",
];

/** Something else in place of a value. */
function other(value) {
  const way = below(6);
  if (typeof value === "number" && way < 2) return value * [0, -1, 1e9, 1 + below(100) / 50][below(4)];
  if (Array.isArray(value) && value.length > 0 && way < 4) {
    if (way === 0) return Array.from({ length: below(70) }, () => value[0]);
    return value.map((inner) => (below(3) === 0 ? other(inner) : inner));
  }
  if (typeof value === "object" && value !== null && way < 5) return changed(value);
  return way === 5 ? any() : ODD[below(ODD.length)];
}

/** The same options with one or some of them changed, missing or too many. */
function changed(options) {
  const copy = { ...options };
  const names = Object.keys(copy);
  if (names.length === 0 || below(12) === 0) copy[["more", "toString", "constructor"][below(3)]] = ODD[below(ODD.length)];
  for (let times = below(3); times >= 0 && names.length > 0; times--) {
    const name = names[below(names.length)];
    if (below(10) === 0) delete copy[name];
    else copy[name] = other(copy[name]);
  }
  return copy;
}

const [folder, cases] = process.argv.slice(2);
const library = await import(pathToFileURL(join(resolve(folder), "src/index.js")).href);
const text = readFileSync(cases, "utf8");
const wrong = [];
const counts = { calls: 0, answers: 0, refusals: 0 };

/** Calls, and looks at what comes out. */
function call(words, act) {
  counts.calls += 1;
  try {
    act();
    counts.answers += 1;
    return true;
  } catch (thrown) {
    counts.refusals += 1;
    if (!(thrown instanceof library.Refusal)) wrong.push(`${words}: ${String(thrown)}`);
    return false;
  }
}

for (const [at, line] of text.split("\n").entries()) {
  if (line === "" || at % EVERY !== 0) continue;
  const { room, name, options } = JSON.parse(line);
  const given = numbers(options);
  for (let times = 0; times < TIMES && wrong.length < 20; times++) {
    const options = below(40) === 0 ? ODD[below(ODD.length)] : changed(given);
    call(`${room}.${name}`, () => library[room][name](options));
  }
}

const setup = { division_g: 0.1, capacity_g: 2000, fastest_g_per_s: 15 };
const recipe = [{ step: "dose", dose_g: 15 }, { step: "pour", to_g: 50, from_s: 0 }, { step: "press" }];
for (let brew = 0; brew < 100 && wrong.length < 20; brew++) {
  const { live } = library;
  let [scale, follower] = [live.scale(setup), live.follower(setup, recipe)];
  call("live.scale", () => live.scale(changed(setup)));
  call("live.follower", () => live.follower(setup, other(recipe)).take({ clock_s: 1, reading_g: 5 }));
  for (let reading = 0; reading < 60; reading++) {
    const given = { clock_s: reading / 10 + below(3), reading_g: below(3000) / 10 };
    const options = below(3) === 0 ? changed(given) : given;
    for (const one of [scale, follower]) {
      const before = one.state;
      const took = call("take", () => one.take(options));
      const after = one.state;
      if (!took && before.some((byte, at) => after[at] !== byte)) wrong.push("a refused reading changes the state");
    }
    if (below(5) === 0) call("zeroed", () => scale.zeroed(changed({ change_g: 5 })));
    if (below(9) === 0) call("setDose", () => follower.setDose(changed({ dose_g: 15 })));
    if (below(9) === 0) call("setLead", () => follower.setLead(changed({ lead_s: 0.5 })));
    const bytes = scale.state;
    bytes[below(bytes.length)] ^= below(256);
    call("live.scale.from", () => live.scale.from(below(2) === 0 ? bytes : bytes.slice(below(600))));
    call("live.follower.from", () => live.follower.from(ODD[below(ODD.length)], recipe));
  }
}

wrong.push(...check(library, text).wrong);
for (const words of wrong.slice(0, 20)) console.error(words);
console.log(
  `${counts.calls} calls by chance, ${counts.answers} answers, ${counts.refusals} refusals, ${wrong.length} wrong`,
);
process.exitCode = wrong.length === 0 && counts.answers > 0 && counts.refusals > 0 ? 0 : 1;
