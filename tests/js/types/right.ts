// Right uses: these must pass the strictest compiler.

import {
  caution,
  cautionTexts,
  columns,
  constants,
  decision,
  extraction,
  heat,
  limits,
  plan,
  reading,
  Refusal,
  uncertainty,
  verdict,
  windows,
  type Brewer,
  type Budget,
  type Caution,
  type Coffee,
  type Kitchen,
  type QuantityKey,
  type Recipe,
  type StrengthEstimate,
  type Wish,
} from "cupwright";
import { start, water } from "cupwright/slim";

const wish: Wish = { cup_g: 180, strength_pct: 1.3, servings: 2, brew_c: 90, contact_s: 120 };
const brewer: Brewer = {
  held_strength_pct: 100,
  losses: {
    apparent_retention_g_per_g: 1.5,
    hold_up_g: 3,
    paper_g: 0,
    paper_uptake_g_per_g: 0,
    drips_g: 0,
    vapour_g: 1,
  },
  heat_capacity_j_per_k: 90,
  chamber: { volume_ml: 260, displacement_ml_per_g: 0.8 },
  cooling_per_min: null,
  cover: "lidded",
  pressed: true,
  glass: false,
};
const coffee: Coffee = { yield_pct: 19.5, moisture_pct: 2 };
const kitchen: Kitchen = {
  air: "altitude",
  altitude_m: 300,
  room_c: 20,
  humidity_pct: 50,
  drop_k: 1,
  cup_j_per_k: 200,
  water_solids_mg_per_l: 90,
  added_c: 85,
};

const recipe: Recipe = plan.recipe({ wish, brewer, coffee, kitchen });
const fill: number | null = recipe.fill_ml;
const worst: Caution | undefined = recipe.cautions[0];
export const words: string = worst === undefined ? "" : cautionTexts[worst];
export const wait: string = recipe.heat.wait_s === null ? "unknown" : recipe.heat.wait_s.toFixed(0);

const read = reading.combine({ strength_pct: [1.44, 1.46], repeatability_pct: 0.01 });
const agreed: boolean = read.agreement === "mean";
const window = windows.home_brewer_2018.window;
export const side: "below" | "inside" | "above" = verdict.stand({
  window,
  strength_pct: read.strength_pct,
  yield_pct: 20,
}).strength.side;
export const settled: number = heat.settle({
  water_g: 250,
  water_c: 95,
  bodies: [{ heat_capacity_j_per_k: 25, body_c: 20 }],
}).settled_c;
export const burns = caution.timeToBurn({ water_c: 60 }).burn === "within";
export const unit: string = limits.brew_water.unit;
export const key: QuantityKey = "strength";
export const scalding: number = constants.SCALDING_C.value;

const known = limits.degrees_of_freedom.max;
const strength: StrengthEstimate = { strength_pct: 1.42, u_strength_pct: 0.02, nu_strength: known };
const budget: Budget = uncertainty.flowThroughYield({
  strength,
  beverage: { beverage_g: 250, u_beverage_g: 0.1, nu_beverage: known },
  dose: { dose_g: 18, u_dose_g: 0.1, nu_dose: known },
  factor: { u_factor_pct: 0, nu_factor: known },
});
export const weakest: QuantityKey | null = budget.dominant?.source ?? null;
export const both: number = decision.joint({
  bands: { strength_lowest_pct: 1.15, strength_highest_pct: 1.45, yield_lowest_pct: 18, yield_highest_pct: 22 },
  strength,
  extracted: { yield_pct: budget.value, u_yield_pct: budget.u, nu_yield: budget.degrees_of_freedom },
  correlation: budget.correlation ?? 0,
}).both_pct;
export const isDecided: boolean =
  decision.decide({
    estimate: { value: 1.42, u_value: 0.02, nu_value: known },
    band: { lowest: 1.15, highest: 1.45 },
    confidence_pct: 95,
  }).decision !== "not_yet";

const masses: Float64Array = Float64Array.of(15, 16);
const ratios = columns.waterRatio({ dose_g: masses, water_g: 240 });
export const firstRatio: number | undefined = ratios.water_ratio_g_per_g[0];
export const howMany: number = ratios.refused + ratios.status.length;
columns.waterRatio({ dose_g: masses, water_g: masses }, { water_ratio_g_per_g: masses, status: new Uint8Array(2) });
export const sides: Uint8Array = columns.stand({
  window: windows.home_brewer_2018.window,
  strength_pct: masses,
  yield_pct: masses,
}).yield_side;

export function refused(): string {
  try {
    extraction.steepedYield({ strength_pct: 99, water_g: 200, dose_g: 15 });
    return String(agreed && fill);
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    const item: number | null = error.item;
    const range: RangeError = error;
    return `${range.message} ${error.code} ${error.field ?? ""} ${error.min ?? ""}`;
  }
}

export async function slim(): Promise<number> {
  await start(new URL("https://example.org/cupwright.wasm"));
  return water.boilingPoint({ pressure_kpa: 101.325 }).water_c;
}
