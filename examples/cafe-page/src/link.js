// All inputs of a recipe in the fragment of an address, which no server ever sees.

import { SHARED, canHold, fieldsOf } from "./fields.js";

export function toFragment(inputs) {
  const pairs = new URLSearchParams();
  for (const field of fieldsOf(...SHARED)) {
    const value = inputs[field.section][field.key];
    const text = value === null ? "" : String(value);
    // A field that is hidden may hold what was never refused; in a link it would be.
    const unread = field.when && !field.when(inputs) && read(field, text) === undefined;
    pairs.set(field.id, unread ? "" : text);
  }
  return `#${pairs}`;
}

/** The inputs, or the list of what is wrong with the link. Ranges are for the package to judge. */
export function fromFragment(fragment) {
  const pairs = new URLSearchParams(fragment.slice(1));
  const inputs = Object.fromEntries(SHARED.map((section) => [section, {}]));
  const wrong = [];
  for (const field of fieldsOf(...SHARED)) {
    const texts = pairs.getAll(field.id);
    const value = texts.length === 1 ? read(field, texts[0]) : undefined;
    if (value === undefined) wrong.push(field.id);
    else inputs[field.section][field.key] = value;
    pairs.delete(field.id);
  }
  wrong.push(...new Set(pairs.keys()));
  return { inputs, wrong };
}

function read(field, text) {
  const value = valueOf(field, text);
  return value !== undefined && canHold(field, value) ? value : undefined;
}

function valueOf({ kind }, text) {
  switch (kind) {
    case "number":
      if (text === "") return null;
      return /^-?\d+(\.\d+)?(e-?\d+)?$/.test(text) ? Number(text) : undefined;
    case "flag":
      return text === "true" ? true : text === "false" ? false : undefined;
    default:
      return text;
  }
}
