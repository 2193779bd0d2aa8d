// Wrong uses: each must be an error, or the compiler says that nothing was expected.

import {
  caution,
  columns,
  decision,
  heat,
  limits,
  plan,
  ratio,
  reading,
  uncertainty,
  verdict,
  water,
  windows,
  type Brewer,
  type Budget,
  type Coffee,
  type Plausibility,
  type Wish,
} from "cupwright";

declare const wish: Wish;
declare const brewer: Brewer;
declare const coffee: Coffee;
declare const plausible: Plausibility;
declare const budget: Budget;

// @ts-expect-error a field is missing
ratio.waterRatio({ dose_g: 15 });
// @ts-expect-error a field is misspelt
ratio.waterRatio({ dose_g: 15, water_gr: 200 });
// @ts-expect-error a number is a text
ratio.waterRatio({ dose_g: 15, water_g: "200" });
// @ts-expect-error a number is null
ratio.waterRatio({ dose_g: 15, water_g: null });
// @ts-expect-error a choice that is none
heat.timeToCool({ water_c: 80, to_c: 60, cooling_per_min: 0.006, surroundings: { room_c: 20, humidity_pct: 50, cover: "ajar" } });
// @ts-expect-error an answer that may be null is used as a number
reading.combine({ strength_pct: [1.4], repeatability_pct: 0.01 }).critical_range_pct.toFixed(2);
// @ts-expect-error a list is a number
reading.combine({ strength_pct: 1.4, repeatability_pct: 0.01 });
// @ts-expect-error a window needs a strength
verdict.stand({ window: {}, strength_pct: 1.4, yield_pct: 20 });
// @ts-expect-error no such window
windows.somebodys;
// @ts-expect-error no such quantity
limits.flavour;
// @ts-expect-error the table is not to be changed
limits.dose = limits.strength;
// @ts-expect-error no options
water.boilingPoint();
// @ts-expect-error an answer has no such field
water.boilingPoint({ pressure_kpa: 100 }).boiling_c;
// @ts-expect-error a yes or no is a number
caution.of({ hazards: { hottest_c: 90, served_c: 60, pressed: 1, glass: false, milk: false, ice: false } });
// @ts-expect-error a column that is a plain list
columns.waterRatio({ dose_g: [15, 16], water_g: new Float64Array(2) });
// @ts-expect-error a place for answers without one for statuses
columns.waterRatio({ dose_g: 15, water_g: new Float64Array(2) }, { water_ratio_g_per_g: new Float64Array(2) });
// @ts-expect-error a column is missing
columns.beverage({ losses: { apparent_retention_g_per_g: 2 }, dose_g: new Float64Array(2) });
// @ts-expect-error a recipe needs a kitchen
plan.recipe({ wish, brewer, coffee });
// @ts-expect-error doubts are a list
plausible.doubts.strength;
// @ts-expect-error a budget may have nothing dominant
budget.dominant.source;
// @ts-expect-error an uncertainty without its degrees of freedom
uncertainty.coverageFactor({ confidence_pct: 95 });
// @ts-expect-error a shape that is none
uncertainty.ofLimit({ limit: 0.1, shape: "round" });
// @ts-expect-error a decision is none of these words
decision.decide({ estimate: { value: 1, u_value: 1, nu_value: 9 }, band: { lowest: 0, highest: 2 }, confidence_pct: 95 }).decision === "maybe";
