// Says in words, in the units of the page, why there is no answer.

import { limits, limitTexts } from "../cupwright/src/slim.js";
import words from "../words.en.js";
import { FIELDS } from "./fields.js";
import { bound, hasTwoReadings } from "./units.js";

// What the package names otherwise than the page does.
const ELSEWHERE = {
  water_c: "brewer.brew_c",
  strength_pct: "wish.strength_pct",
  s: "instrument.repeatability_pct",
  u_factor_pct: "instrument.factor_doubt_pct",
  u_next_dose_g: "hand.dose_g",
  u_next_water_g: "hand.water_g",
  u_next_yield_pct: "hand.yield_pct",
  u_next_retention_g_per_g: "hand.retention_g_per_g",
  u_next_losses_g: "hand.losses_g",
};

/** The field that a refusal blames, of those in the given sections, or null. */
export function blamed(refusal, sections) {
  if (refusal.code === "empty_band" && sections.includes("wish")) {
    return FIELDS.find(({ id }) => id === `wish.${refusal.quantity}_lowest_pct`) ?? null;
  }
  const named = (refusal.field ?? "")
    .replace(/\[\d+\]$/, "")
    .split(".")
    .pop();
  const found = FIELDS.find((field) => sections.includes(field.section) && field.key === named);
  if (found) return found;
  const isOfReadings = ["strength_pct", "brix"].includes(named) || refusal.quantity === "reading_count";
  if (sections.includes("brew") && isOfReadings) {
    return FIELDS.find((field) => field.id === "brew.readings");
  }
  return FIELDS.find((field) => field.id === ELSEWHERE[named] && sections.includes(field.section)) ?? null;
}

// A strength may be wished for anywhere in its range; where less is accepted, a window is why.
const isOfWindow = ({ code, quantity, min, max }, field) =>
  code === "out_of_range" &&
  field?.id === "wish.strength_pct" &&
  (min !== limits[quantity].min || max !== limits[quantity].max);

export function sentence(refusal, field, units) {
  const label = field ? words.fields[field.id].label : words.refused.whole;
  const { quantity, code } = refusal;
  const show = (value) => (typeof value === "number" && quantity ? bound(quantity, value, units) : String(value ?? ""));
  const say = words.refused[isOfWindow(refusal, field) ? "outside_window" : code];
  if (code === "missing" || code === "wrong_type") {
    const { value } = refusal;
    if (value === null || value === "") return words.refused.missing(label);
    if (field?.quantity === "time") return words.refused.not_time(label, value);
    return hasTwoReadings(value) ? words.refused.two_readings(label, value) : words.refused.wrong_type(label, value);
  }
  if (code === "infeasible") {
    const why = words.limits[refusal.limit] ?? limitTexts[refusal.limit];
    return say(label, show(refusal.value), why, show(refusal.nearest));
  }
  const bounded = refusal.min !== null && refusal.max !== null;
  if (!say || (!bounded && (code === "out_of_range" || code === "result_out_of_range" || code === "not_whole"))) {
    return words.refused.unknown(refusal.message);
  }
  return say(label, show(refusal.value), show(refusal.min), show(refusal.max));
}
