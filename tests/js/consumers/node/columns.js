// node columns.js: columns of any length, every row as by the function for one, good rows and bad ones; arrays of
// one's own, and what is refused.

import assert from "node:assert/strict";

import { columns, dilution, extraction, ratio, reading, Refusal, retention, verdict, windows } from "cupwright";

const losses = {
  apparent_retention_g_per_g: 1.9, hold_up_g: 3, paper_g: 1.5, paper_uptake_g_per_g: 3, drips_g: 0.5, vapour_g: 1.5,
};
const factor = { refractive_factor_pct_per_brix: 0.85 };
const { window } = windows.home_brewer_2018;

/** What each function takes, with the numbers that are drawn, and the one for a row. */
const pairs = {
  flowThroughYield: {
    one: extraction.flowThroughYield,
    of: { strength_pct: [1, 9], beverage_g: [100, 400], dose_g: [8, 25] },
  },
  flowThroughStrength: {
    one: extraction.flowThroughStrength,
    of: { yield_pct: [10, 30], beverage_g: [1, 40], dose_g: [8, 25] },
  },
  steepedYield: { one: extraction.steepedYield, of: { strength_pct: [1, 9], water_g: [100, 400], dose_g: [8, 25] } },
  extractionYield: {
    one: ({ strength_pct, ...brew }) => extraction.extractionYield({ brew, strength_pct }),
    of: {
      dose_g: [10, 25], water_g: [200, 400], beverage_g: [100, 250], moisture_pct: [0, 6],
      water_solids_mg_per_l: [0, 900], vapour_g: [0, 9], held_strength_pct: [0, 99], strength_pct: [0.05, 2],
    },
  },
  waterRatio: { one: ratio.waterRatio, of: { dose_g: [0.5, 30], water_g: [1, 900] } },
  waterToReach: {
    one: dilution.waterToReach,
    of: { beverage_g: [100, 400], strength_pct: [0.5, 2], wanted_pct: [0.1, 1.5], water_solids_mg_per_l: [0, 4000] },
  },
  strengthOfBrix: { one: reading.strengthOfBrix, of: { brix: [-2, 6] }, shared: factor },
  beverage: { one: retention.beverage, of: { dose_g: [5, 90], water_g: [20, 400] }, shared: { losses } },
};

/** Numbers that are the same in every run: one in twenty is bad. */
let seed = 1;
function drawn([low, high]) {
  seed = (Math.imul(seed, 1664525) + 1013904223) >>> 0;
  const number = low + ((high - low) * (seed >>> 8)) / 2 ** 24;
  return seed % 20 !== 0 ? number : seed % 3 !== 0 ? -1000 : NaN;
}

/** The answer of a row, or the status that its refusal stands for. */
function expected(one, row, names) {
  try {
    return { answer: Object.values(one(row))[0], status: columns.ANSWERED };
  } catch (refusal) {
    assert(refusal instanceof Refusal, refusal);
    const at = refusal.code === "out_of_range" ? names.indexOf(refusal.field) : -1;
    return { answer: NaN, status: at < 0 ? columns.NO_ANSWER : at + 1 };
  }
}

let [count, refusedOnes] = [0, 0];
for (const [name, { one, of, shared = {} }] of Object.entries(pairs)) {
  const names = Object.keys(of);
  const statuses = new Set();
  for (const rows of [0, 1, 1023, 1024, 1025, 3000]) {
    const inputs = Object.fromEntries(names.map((of_) => [of_, Float64Array.from({ length: rows }, () => drawn(of[of_]))]));
    const got = columns[name]({ ...shared, ...inputs });
    const [answer] = Object.keys(got);
    assert.deepEqual(Object.keys(got), [answer, "status", "refused"]);
    assert(got[answer] instanceof Float64Array && got[answer].length === rows && got.status.length === rows);
    let refused = 0;
    for (let row = 0; row < rows; row++) {
      const numbers = Object.fromEntries(names.map((of_) => [of_, inputs[of_][row]]));
      const wanted = expected(one, { ...shared, ...numbers }, names);
      assert(Object.is(got[answer][row], wanted.answer), `${name} ${JSON.stringify(numbers)}`);
      assert.equal(got.status[row], wanted.status, `${name} ${JSON.stringify(numbers)}`);
      statuses.add(wanted.status);
      refused += wanted.status === 0 ? 0 : 1;
    }
    assert.equal(got.refused, refused);
    [count, refusedOnes] = [count + rows, refusedOnes + refused];
  }
  assert(statuses.has(0) && statuses.has(1), `${name}: ${[...statuses]}`);
}

// The judge.
for (const of of [window, { ...window, yield_lowest_pct: undefined, yield_highest_pct: undefined, yield_counting: undefined }]) {
  const given = Object.fromEntries(Object.entries(of).filter(([, value]) => value !== undefined));
  const [strength_pct, yield_pct] = [[1, 1.6], [16, 24]].map((range) => Float64Array.from({ length: 2000 }, () => drawn(range)));
  const got = columns.stand({ window: given, strength_pct, yield_pct });
  for (let row = 0; row < 2000; row++) {
    const wanted = [null, null];
    let status = 0;
    try {
      const standing = verdict.stand({ window: given, strength_pct: strength_pct[row], yield_pct: yield_pct[row] });
      [wanted[0], wanted[1]] = [standing.strength, standing.yield];
    } catch (refusal) {
      status = refusal.field === "strength_pct" ? 1 : 2;
    }
    assert.equal(got.status[row], status);
    for (const [at, name] of ["strength", "yield"].entries()) {
      const sides = [null, "below", "inside", "above"];
      assert.equal(sides[got[`${name}_side`][row]], wanted[at]?.side ?? null);
      for (const distance of ["above_lowest", "below_highest", "above_centre"]) {
        assert(Object.is(got[`${name}_${distance}`][row], wanted[at]?.[distance] ?? NaN), `${name} ${distance}`);
      }
    }
  }
  count += 2000;
}

// A number is every row's; arrays of one's own are filled, parts of larger ones too, and may be those that are read.
const whole = new Float64Array(5).fill(7);
const into = { water_ratio_g_per_g: whole.subarray(1, 4), status: new Uint8Array(3).fill(77) };
const given = { dose_g: 15, water_g: Float64Array.of(240, -1, 250.5) };
const got = columns.waterRatio(given, into);
assert.equal(got.water_ratio_g_per_g, into.water_ratio_g_per_g);
assert.deepEqual([...whole], [7, 16, NaN, 250.5 / 15, 7]);
assert.deepEqual([...into.status, got.refused], [0, 2, 0, 1]);
columns.waterRatio(given, { water_ratio_g_per_g: given.water_g, status: into.status });
assert.deepEqual([...given.water_g], [16, NaN, 250.5 / 15]);

/** Checks what a call is refused with. */
function refused(call, facts) {
  assert.throws(call, (thrown) => {
    assert(thrown instanceof Refusal, thrown);
    for (const [name, value] of Object.entries(facts)) assert.equal(thrown[name], value, `${name}: ${thrown}`);
    return true;
  });
}

const three = new Float64Array(3).fill(15);
const two = three.subarray(1);
refused(() => columns.waterRatio(), { code: "missing", field: "options" });
refused(() => columns.waterRatio({ dose_g: three }), { code: "missing", field: "water_g" });
refused(() => columns.waterRatio({ dose_g: three, water_g: [1, 2, 3] }), { code: "wrong_type", field: "water_g" });
refused(() => columns.waterRatio({ dose_g: 15, water_g: 240 }), { code: "wrong_type", field: "dose_g" });
refused(() => columns.waterRatio({ dose_g: three, water_g: three, beverage_g: three }), { code: "unknown_field" });
refused(() => columns.waterRatio({ dose_g: three, water_g: two }), { code: "wrong_type", field: "water_g" });
const short = { water_ratio_g_per_g: new Float64Array(3).fill(7), status: new Uint8Array(2) };
refused(() => columns.waterRatio({ dose_g: three, water_g: three }, short), { code: "wrong_type", field: "status" });
refused(() => columns.waterRatio({ dose_g: three, water_g: three }, { status: new Uint8Array(3) }), { code: "missing" });
assert.deepEqual([...short.water_ratio_g_per_g], [7, 7, 7]);
const spoiled = { losses: { ...losses, drips_g: -1 }, dose_g: three, water_g: three };
refused(() => columns.beverage(spoiled), { code: "out_of_range", field: "drips_g" });
refused(() => columns.strengthOfBrix({ refractive_factor_pct_per_brix: NaN, brix: three }), { code: "out_of_range" });

console.log(`${count} rows of columns, ${refusedOnes} refused, as one at a time`);
