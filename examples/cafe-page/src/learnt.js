// What was learnt with a brewer: which brews it rests on, which fields it fills, and how those are given back.

import { limits } from "../cupwright/src/slim.js";
import { canHold, fieldOf } from "./fields.js";

/** The most brews, and the most readings, that the package learns from at once. */
export const MOST_LEARNT = limits.measurements.max;

// Where the page has what a profile names. Of rates it has no field; advice asks for them itself.
const PLACES = {
  apparent_retention_g_per_g: "brewer.apparent_retention_g_per_g",
  fitted_hold_up_g: "brewer.hold_up_g",
  heat_capacity_j_per_k: "brewer.heat_capacity_j_per_k",
  cooling_per_min: "brewer.cooling_per_min",
  refractive_factor_pct_per_brix: "instrument.refractive_factor_pct_per_brix",
  cup_j_per_k: "kitchen.cup_j_per_k",
  cup_cooling_per_min: "kitchen.cup_cooling_per_min",
  repeatability_pct: "instrument.repeatability_pct",
};

// What brews keep in all has these in it: counted apart they would count twice.
const WITHIN = { "brewer.hold_up_g": 0, "brewer.paper_g": 0, "brewer.drips_g": 0 };

/** The fields that a profile fills, with their values. */
export function filled(profile) {
  const told = Object.entries(PLACES).filter(([key]) => profile[key]);
  const factor = profile.refractive_factor_pct_per_brix;
  return {
    ...(profile.apparent_retention_g_per_g && WITHIN),
    ...Object.fromEntries(told.map(([key, id]) => [id, profile[key].value])),
    ...(factor && { "instrument.factor_doubt_pct": factor.u }),
  };
}

const valueOf = (all, id) => {
  const { section, key } = fieldOf(id);
  return all[section][key];
};

const holds = (all, id) => valueOf(all, id) === filled(all.brewer.learned.profile)[id];

/** What was learnt under a name of a profile, where its field still has that value; or null. */
export function inUse(all, key) {
  const learned = all.brewer.learned?.profile[key];
  return learned && holds(all, PLACES[key]) ? learned : null;
}

/** Whether some field that what was learnt has filled has another value by now. */
export const isEdited = (all) => Object.keys(filled(all.brewer.learned.profile)).some((id) => !holds(all, id));

// What a notebook can tell; the rest of a profile comes from elsewhere.
const TOLD = [
  "apparent_retention_g_per_g",
  "fitted_hold_up_g",
  "retention_correlation",
  "retention_scatter_g",
  "equilibrium_yield_pct",
  "fast_share_pct",
  "fast_time_s",
  "slow_time_s",
  "correlation_equilibrium_share",
  "correlation_equilibrium_fast",
  "correlation_equilibrium_slow",
  "correlation_share_fast",
  "correlation_share_slow",
  "correlation_fast_slow",
  "repeatability_pct",
];

/** What brews tell, with what a profile in use has from elsewhere. */
export const joined = (told, { learned }) => ({
  ...Object.fromEntries(Object.entries(learned?.profile ?? {}).filter(([key]) => !TOLD.includes(key))),
  ...told,
});

/** Whether two profiles are the same. */
export const isSame = (one, other) => sorted(one) === sorted(other);

const sorted = (profile) => JSON.stringify(Object.entries(profile).sort(([one], [other]) => (one < other ? -1 : 1)));

/** Whether the recipe rests on what brews of this brewer kept. */
export const restsOnBrews = (all) =>
  Boolean(all.brewer.learned?.brews.length) &&
  inUse(all, "apparent_retention_g_per_g") !== null &&
  Object.keys(WITHIN).every((id) => holds(all, id));

/** Where the number of a field comes from: "learnt", "within" what was learnt, "instead" of it what was learnt; or null. */
export function originOf({ id }, all) {
  const { learned } = all.brewer;
  if (!learned) return null;
  if (id === "hand.retention_g_per_g" || id === "hand.losses_g") return restsOnBrews(all) ? "instead" : null;
  const values = filled(learned.profile);
  if (!(id in values) || !holds(all, id)) return null;
  return id in WITHIN && !(id === PLACES.fitted_hold_up_g && learned.profile.fitted_hold_up_g) ? "within" : "learnt";
}

/** Entries of the notebook that were brewed with a brewer, the newest that can be learnt from; those left out apart. */
export function brewsOf(entries, brewer) {
  const own = entries.filter((entry) => entry.brewer.name === brewer.name);
  const isOut = ({ id }) => brewer.leftOut.includes(id);
  const counted = own.filter((entry) => !isOut(entry));
  return { counted: counted.slice(0, MOST_LEARNT), older: counted.slice(MOST_LEARNT), leftOut: own.filter(isOut) };
}

/** Cups that one instrument read more than once, the newest, with no more readings than can be learnt from. */
export function cupsOf(entries, instrument) {
  let left = MOST_LEARNT;
  return entries
    .filter(({ brew, instrument: { reads } }) => brew.readings.length > 1 && reads === instrument.reads)
    .filter(({ brew }) => (left -= brew.readings.length) >= 0);
}

/** Steeps of one coffee, of those brews in which all the water stood on it at once. */
export const steepsOf = (brews, coffee) =>
  brews.filter((entry) => entry.brewer.has_chamber && entry.coffee.name === coffee.name);

/**
 * Puts what was learnt into the fields. What was in use before is given back first. Answers with the way back for the
 * same brewer among all sections as they are then; it leaves alone what was changed since.
 */
export function take(all, learned) {
  const previous = all.brewer.learned ?? null;
  const values = filled(learned.profile);
  const was = snapshot(all, [...Object.keys(values), ...Object.keys(previous?.before ?? {})]);
  if (previous) giveBack(all);
  all.brewer.learned = { ...learned, before: snapshot(all, Object.keys(values)) };
  put(all, values);
  const is = snapshot(all, Object.keys(was));
  return (now) => {
    if (now.brewer.learned?.at !== learned.at) return;
    put(now, Object.fromEntries(Object.entries(was).filter(([id]) => valueOf(now, id) === is[id])));
    now.brewer.learned = previous;
  };
}

/** Gives back what was there before, but for what was changed since. */
export function giveBack(all) {
  const { before } = all.brewer.learned;
  put(all, Object.fromEntries(Object.entries(before).filter(([id]) => holds(all, id))));
  all.brewer.learned = null;
}

const snapshot = (all, ids) => Object.fromEntries(ids.map((id) => [id, valueOf(all, id)]));

function put(all, values) {
  for (const [id, value] of Object.entries(values)) {
    const { section, key } = fieldOf(id);
    all[section][key] = value;
  }
}

/** What was kept of it on this device, or null; `isSound` judges a profile. */
export function restoredLearned(kept, isSound) {
  const { at, from, coffee, profile, brews, before } = kept ?? {};
  const sound =
    ["brews", "file"].includes(from) &&
    typeof at === "string" &&
    !Number.isNaN(Date.parse(at)) &&
    typeof coffee === "string" &&
    isObject(profile) &&
    isSound(profile) &&
    Array.isArray(brews) &&
    brews.length <= MOST_LEARNT &&
    brews.every(isDrained) &&
    isObject(before) &&
    Object.entries(before).every(([id, value]) => id in filled(profile) && canHold(fieldOf(id), value));
  return sound ? { at, from, coffee, profile, brews, before } : null;
}

const isObject = (value) => typeof value === "object" && value !== null;

const DRAINED = { dose_g: "dose", water_g: "brew_water", beverage_g: "beverage", vapour_g: "vapour" };

const isDrained = (brew) =>
  Object.entries(DRAINED).every(
    ([key, quantity]) => brew?.[key] >= limits[quantity].min && brew[key] <= limits[quantity].max,
  );
