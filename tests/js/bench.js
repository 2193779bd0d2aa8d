// node bench.js PACKAGE: nanoseconds of a call, options object in and plain object out, against the same
// formula written by hand in JavaScript without any checks. The least of many short runs: on a busy machine
// some are left alone.

import { join, resolve } from "node:path";
import { pathToFileURL } from "node:url";

const library = await import(pathToFileURL(join(resolve(process.argv[2]), "src/index.js")).href);
const { dilution, extraction, heat, water } = library;

const RUNS = 4_000;
const CALLS = 500;

/** Keeps what is computed from being left out. */
let kept = 0;

function nanoseconds(call) {
  let least = Infinity;
  for (let run = 0; run < RUNS; run++) {
    const start = process.hrtime.bigint();
    for (let i = 0; i < CALLS; i++) kept += call(1 + (i & 1023) * 1e-6);
    least = Math.min(least, Number(process.hrtime.bigint() - start) / CALLS);
  }
  return least;
}

/** Each as one would write it. */
const byHand = {
  afterPour: ({ water_c, drop_k }) => ({ after_c: water_c - drop_k }),
  flowThroughYield: ({ strength_pct, beverage_g, dose_g }) => ({ yield_pct: (strength_pct * beverage_g) / dose_g }),
  strengthAfterWater: ({ beverage_g, strength_pct, added_g, water_solids_mg_per_l }) => ({
    after_pct:
      (strength_pct * beverage_g + ((100 * water_solids_mg_per_l * 1e-6) / 0.9982065) * added_g) /
      (beverage_g + added_g),
  }),
  extractionYield({ brew, strength_pct }) {
    const s = (brew.water_solids_mg_per_l * 1e-6) / 0.9982065;
    const beanWater = (brew.moisture_pct / 100) * brew.dose_g - brew.vapour_g;
    const missing = brew.water_g + beanWater - brew.beverage_g;
    const held = brew.held_strength_pct / 100;
    const tau = strength_pct / 100 - s;
    const dissolved = tau * (brew.beverage_g + held * missing) + s * beanWater;
    return { yield_pct: (100 * dissolved) / (brew.dose_g * (1 - s - held * tau)) };
  },
  boilingPoint({ pressure_kpa }) {
    const n = [
      0, 1167.0521452767, -724213.16703206, -17.073846940092, 12020.82470247, -3232555.0322333, 14.91510861353,
      -4823.2657361591, 405113.40542057, -0.23855557567849, 650.17534844798,
    ];
    const b = Math.sqrt(Math.sqrt(pressure_kpa / 1000));
    const e = b * b + n[3] * b + n[6];
    const f = n[1] * b * b + n[4] * b + n[7];
    const g = n[2] * b * b + n[5] * b + n[8];
    const d = (2 * g) / (-f - Math.sqrt(f * f - 4 * e * g));
    const s = n[10] + d;
    return { water_c: (s - Math.sqrt(s * s - 4 * (n[9] + n[10] * d))) / 2 - 273.15 };
  },
};

const brew = (dose_g) => ({
  dose_g,
  water_g: 200,
  beverage_g: 172,
  moisture_pct: 2,
  water_solids_mg_per_l: 80,
  vapour_g: 2,
  held_strength_pct: 100,
});

const rows = [
  [
    "heat.afterPour",
    (x) => heat.afterPour({ water_c: 90 * x, drop_k: 1 }).after_c,
    (x) => byHand.afterPour({ water_c: 90 * x, drop_k: 1 }).after_c,
  ],
  [
    "extraction.flowThroughYield",
    (x) => extraction.flowThroughYield({ strength_pct: 1.4 * x, beverage_g: 190, dose_g: 16 }).yield_pct,
    (x) => byHand.flowThroughYield({ strength_pct: 1.4 * x, beverage_g: 190, dose_g: 16 }).yield_pct,
  ],
  [
    "dilution.strengthAfterWater",
    (x) =>
      dilution.strengthAfterWater({ beverage_g: 45 * x, strength_pct: 5.2, added_g: 120, water_solids_mg_per_l: 80 })
        .after_pct,
    (x) =>
      byHand.strengthAfterWater({ beverage_g: 45 * x, strength_pct: 5.2, added_g: 120, water_solids_mg_per_l: 80 })
        .after_pct,
  ],
  [
    "water.boilingPoint",
    (x) => water.boilingPoint({ pressure_kpa: 88 * x }).water_c,
    (x) => byHand.boilingPoint({ pressure_kpa: 88 * x }).water_c,
  ],
  [
    "extraction.extractionYield",
    (x) => extraction.extractionYield({ brew: brew(15 * x), strength_pct: 1.44 }).yield_pct,
    (x) => byHand.extractionYield({ brew: brew(15 * x), strength_pct: 1.44 }).yield_pct,
  ],
  [
    "heat.timeToCool",
    (x) =>
      heat.timeToCool({
        water_c: 80 * x,
        to_c: 60,
        cooling_per_min: 0.006,
        surroundings: { room_c: 20, humidity_pct: 50, cover: "open" },
      }).time_s,
    null,
  ],
];
for (const [name, call, hand] of rows) {
  if (hand !== null && Math.abs(hand(1) / call(1) - 1) > 1e-9) throw new Error(`${name}: ${call(1)}, by hand ${hand(1)}`);
  const [ours, theirs] = [nanoseconds(call), hand === null ? null : nanoseconds(hand)];
  console.log(name, ours.toFixed(1), theirs === null ? "-" : theirs.toFixed(1));
}
if (Number.isNaN(kept)) throw new Error("a call gave no number");
