// What the page remembers on this device between visits.

import { FIELDS, SHARED, SHELVED, fieldsOf } from "./fields.js";
import { PRESETS } from "./presets.js";

const KEY = "brew-ticket.settings";

/** Settings as left on this device, over those it starts with; what is not known any more is dropped. */
export function load() {
  const settings = structuredClone(PRESETS);
  let kept;
  try {
    kept = JSON.parse(localStorage.getItem(KEY));
  } catch {
    return settings;
  }
  if (!kept || typeof kept !== "object") return settings;
  for (const section of ["units", "wish", "instrument", "brew"]) adopt(settings[section], kept[section]);
  for (const kind of SHELVED) {
    if (!Array.isArray(kept.shelf?.[kind]) || kept.shelf[kind].length === 0) continue;
    const model = PRESETS.shelf[kind][0];
    settings.shelf[kind] = kept.shelf[kind].map((entry) => adopt({ ...model }, entry));
    const index = kept.chosen?.[kind];
    if (Number.isInteger(index) && settings.shelf[kind][index]) settings.chosen[kind] = index;
    else settings.chosen[kind] = 0;
  }
  return settings;
}

function adopt(into, from) {
  for (const key of Object.keys(into)) if (from && key in from) into[key] = from[key];
  return into;
}

/** Keeps the settings; a device that keeps nothing still works until the page is closed. */
export function save(settings) {
  try {
    localStorage.setItem(KEY, JSON.stringify(settings));
  } catch {
    return false;
  }
  return true;
}

/** All sections flat, with the chosen brewer, coffee and kitchen in place. */
export function sections({ wish, instrument, brew, shelf, chosen, units }) {
  const picked = Object.fromEntries(SHELVED.map((kind) => [kind, shelf[kind][chosen[kind]]]));
  return { wish, instrument, brew, units, ...picked };
}

/** Takes inputs from a link: a brewer, coffee or kitchen not yet on the shelf is put there. */
export function takeShared(settings, shared) {
  Object.assign(settings.wish, shared.wish);
  for (const kind of SHELVED) {
    const keys = fieldsOf(kind).map(({ key }) => key);
    const same = settings.shelf[kind].findIndex((entry) => keys.every((key) => entry[key] === shared[kind][key]));
    settings.chosen[kind] = same >= 0 ? same : settings.shelf[kind].push(shared[kind]) - 1;
  }
}

/** The inputs that a link carries. */
export const shared = (settings) => {
  const all = sections(settings);
  return Object.fromEntries(
    SHARED.map((section) => [
      section,
      Object.fromEntries(FIELDS.filter((f) => f.section === section).map(({ key }) => [key, all[section][key]])),
    ]),
  );
};
