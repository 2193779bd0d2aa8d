// Units a person reads. Everything is kept in the package's own; only what is shown or typed is converted.

import { limits } from "../cupwright/src/slim.js";
import words from "../words.en.js";

const OTHER = {
  g: { setting: "mass", when: "oz", unit: "oz", scale: 28.349523125, offset: 0, moreDecimals: 1 },
  mL: { setting: "volume", when: "floz", unit: "fl oz", scale: 29.5735295625, offset: 0, moreDecimals: 1 },
  "°C": { setting: "temperature", when: "f", unit: "°F", scale: 1 / 1.8, offset: 32, moreDecimals: 0 },
  K: { setting: "temperature", when: "f", unit: "°F", scale: 1 / 1.8, offset: 0, moreDecimals: 0 },
};
// A hundredth of an ounce is too coarse to dose with.
const FINE = "dose";

export const CHOICES = { mass: ["g", "oz"], temperature: ["c", "f"], volume: ["ml", "floz"] };

function otherOf(quantity, units) {
  const other = OTHER[limits[quantity].unit];
  return other && units[other.setting] === other.when ? other : null;
}

export const isOther = (quantity, units) => otherOf(quantity, units) !== null;

export function unitOf(quantity, units) {
  const { unit } = otherOf(quantity, units) ?? limits[quantity];
  return words.unitNames[unit] ?? unit;
}

export function toShown(quantity, value, units) {
  const other = otherOf(quantity, units);
  return other ? value / other.scale + other.offset : value;
}

/** A value as it is shown, without the digits that are not. */
export const asShown = (quantity, value, units) =>
  fromShown(quantity, Number(toShown(quantity, value, units).toFixed(decimalsOf(quantity, units))), units);

export function fromShown(quantity, shown, units) {
  const other = otherOf(quantity, units);
  return other ? (shown - other.offset) * other.scale : shown;
}

function decimalsOf(quantity, units) {
  const more = otherOf(quantity, units)?.moreDecimals ?? 0;
  return limits[quantity].decimals + more + (more > 0 && quantity === FINE ? 1 : 0);
}

const format = (value, fewest, most) =>
  new Intl.NumberFormat(words.locale, {
    minimumFractionDigits: fewest,
    maximumFractionDigits: most,
    useGrouping: false,
    signDisplay: "negative",
  }).format(value);

/** To be read, with a minus sign; a box keeps the sign that a keyboard has. */
const printed = (value, fewest, most) => format(value, fewest, most).replace("-", "\u2212");

export const clock = (seconds) => {
  const whole = Math.max(0, Math.round(seconds));
  const two = (count) => String(count).padStart(2, "0");
  const hours = Math.floor(whole / 3600);
  const minutes = Math.floor(whole / 60) % 60;
  return hours > 0 ? `${hours}:${two(minutes)}:${two(whole % 60)}` : `${minutes}:${two(whole % 60)}`;
};

/** A day and its time, for people. */
export const moment = (at) =>
  new Intl.DateTimeFormat(words.locale, { dateStyle: "medium", timeStyle: "short" }).format(new Date(at));

/** A number with the decimals a person wants to see, without its unit. */
export function figure(quantity, value, units) {
  if (quantity === "time") return clock(value);
  const decimals = decimalsOf(quantity, units);
  return printed(toShown(quantity, value, units), decimals, decimals);
}

/** The same with its unit; the space does not break. */
export function amount(quantity, value, units) {
  const unit = quantity === "time" ? "" : unitOf(quantity, units);
  return unit ? `${figure(quantity, value, units)}\u00a0${unit}` : figure(quantity, value, units);
}

/** The same without noughts at its end. */
export function short(quantity, value, units) {
  return `${printed(toShown(quantity, value, units), 0, decimalsOf(quantity, units))}\u00a0${unitOf(quantity, units)}`;
}

/** A bound of a range or a value as it was typed: no decimals that say nothing. */
export function bound(quantity, value, units) {
  const unit = quantity === "time" ? "" : unitOf(quantity, units);
  return unit ? `${bare(quantity, value, units)}\u00a0${unit}` : bare(quantity, value, units);
}

const bare = (quantity, value, units) =>
  quantity === "time"
    ? clock(value)
    : printed(toShown(quantity, value, units), 0, Math.max(decimalsOf(quantity, units) + 2, 4));

/** The range that a quantity is accepted in. */
export function span(quantity, units) {
  const { min, max } = limits[quantity];
  return words.range(bare(quantity, min, units), bound(quantity, max, units));
}

/** What stands in an input box. Text that was no number stays as it was typed. */
export function typed(quantity, value, units) {
  if (value === null || value === undefined) return "";
  if (typeof value === "string") return value;
  if (quantity === "time") return Number.isInteger(value) && value >= 0 ? clock(value) : format(value, 0, 3);
  return format(toShown(quantity, value, units), 0, decimalsOf(quantity, units) + 2);
}

const DECIMAL_SIGN = format(0.5, 1, 1).charAt(1);
const TWO_READINGS = DECIMAL_SIGN === "." ? /^[+-]?[1-9]\d{0,2},\d{3}$/ : /^[+-]?[1-9]\d{0,2}\.\d{3}$/;

/** Whether a number may mean thousands or decimals: both signs stand for a decimal sign, but not where that is so. */
export const hasTwoReadings = (text) => TWO_READINGS.test(text);

/** The number typed, in the package's unit; null for nothing; the text itself where it is no number. */
export function parsed(quantity, text, units) {
  const plain = text.trim().replace("\u2212", "-");
  if (plain === "") return null;
  if (quantity === "time") {
    const [, minutes, hours, past, seconds] = /^(?:(\d+)|(\d+):([0-5]\d)):([0-5]\d)$/.exec(plain) ?? [];
    if (seconds === undefined) return plain;
    return (Number(minutes ?? past) + 60 * Number(hours ?? 0)) * 60 + Number(seconds);
  }
  if (hasTwoReadings(plain)) return plain;
  return /^[+-]?(\d+([.,]\d*)?|[.,]\d+)$/.test(plain)
    ? fromShown(quantity, Number(plain.replace(",", ".")), units)
    : plain;
}
