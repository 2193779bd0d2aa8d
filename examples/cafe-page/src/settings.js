// What the page remembers on this device between visits.

import { profileFault } from "./bench.js";
import { FIELDS, SHARED, SHELVED, canHold, fieldsOf } from "./fields.js";
import { restoredLearned } from "./learnt.js";
import { PRESETS } from "./presets.js";
import { CHOICES } from "./units.js";

const KEY = "brew-ticket.settings";

/** Settings as left on this device. */
export function load() {
  try {
    return restored(JSON.parse(localStorage.getItem(KEY)));
  } catch {
    return restored(null);
  }
}

/** Settings as kept, over those a device starts with; what no field can hold is dropped. */
export function restored(kept) {
  const settings = structuredClone(PRESETS);
  for (const [setting, options] of Object.entries(CHOICES)) {
    if (options.includes(kept?.units?.[setting])) settings.units[setting] = kept.units[setting];
  }
  for (const section of ["wish", "instrument", "hand", "scale", "brew"])
    adopt(section, settings[section], kept?.[section]);
  for (const kind of SHELVED) {
    const entries = kept?.shelf?.[kind];
    if (!Array.isArray(entries) || entries.length === 0) continue;
    settings.shelf[kind] = entries.map((entry) => adopt(kind, { ...PRESETS.shelf[kind][0] }, entry));
    settings.chosen[kind] = entries[kept.chosen?.[kind]] ? kept.chosen[kind] : 0;
  }
  settings.shelf.brewer.forEach((brewer, at) => adoptLearned(brewer, kept?.shelf?.brewer?.[at]));
  return settings;
}

function adopt(section, into, from) {
  for (const field of fieldsOf(section)) {
    const value = from?.[field.key];
    if (value !== undefined && canHold(field, value)) into[field.key] = value;
  }
  return into;
}

function adoptLearned(into, from) {
  into.learned = restoredLearned(from?.learned, (profile) => profileFault(profile) === null);
  const ids = from?.leftOut;
  into.leftOut = Array.isArray(ids) ? ids.filter((id) => typeof id === "string") : [];
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
export function sections({ wish, instrument, hand, scale, brew, shelf, chosen, units }) {
  const picked = Object.fromEntries(SHELVED.map((kind) => [kind, shelf[kind][chosen[kind]]]));
  return { wish, instrument, hand, scale, brew, units, ...picked };
}

/** Takes inputs from a link: a brewer, coffee or kitchen not yet on the shelf is put there. */
export function takeShared(settings, shared) {
  Object.assign(settings.wish, shared.wish);
  for (const kind of SHELVED) {
    const keys = fieldsOf(kind).map(({ key }) => key);
    const same = settings.shelf[kind].findIndex((entry) => keys.every((key) => entry[key] === shared[kind][key]));
    settings.chosen[kind] = same >= 0 ? same : settings.shelf[kind].push(shared[kind]) - 1;
    if (kind === "brewer" && same < 0) adoptLearned(settings.shelf.brewer.at(-1), null);
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
