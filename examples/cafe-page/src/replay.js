// A scale's record, replayed: its file read strictly, then followed by the package reading by reading.

import { limits } from "../cupwright/src/slim.js";
import words from "../words.en.js";
import { attempt } from "./bench.js";

const WRONG = words.replay.wrong;
// Twenty minutes at eighty a second. More is refused, so that no device runs out of memory. Estimate.
const MOST_SAMPLES = 96_000;

const NUMBER = /^-?(\d+\.?\d*|\.\d+)(e-?\d+)?$/;
const HEADS = ["time_s,mass_g", "time_s,mass_g,label"];
const LASTING = ["pour", "drip", "press", "stir"];
const MARKS = [
  ...LASTING.flatMap((kind) => [`${kind}_start`, `${kind}_stop`]),
  ...["tare", "lifted", "returned", "placed", "removed", "knock"],
];

/**
 * A record as record.md describes it: `samples` of { time_s, mass_g, mark }, where a mass may be null and mostly marks
 * are, and `comments`; or what is `wrong` with it, line by line.
 */
export function readRecord(text) {
  const samples = [];
  const comments = [];
  const wrong = [];
  const open = new Map();
  let columns = null;
  let before = null;
  const lines = text.split(/\r?\n/);
  for (const [index, content] of lines.entries()) {
    const line = index + 1;
    if (content.startsWith("#")) comments.push(content.slice(1).trim());
    if (content === "" || content.startsWith("#")) continue;
    if (columns === null) {
      if (!HEADS.includes(content)) return { wrong: [WRONG.columns(line, clipped(content))] };
      columns = content.split(",").length;
      continue;
    }
    const cells = content.split(",");
    if (cells.length !== columns) {
      wrong.push(words.notebook.wrong.cells(line, cells.length, columns));
      continue;
    }
    const [timeText, massText, label = ""] = cells;
    const time_s = number(line, "time_s", "clock", timeText, wrong);
    const mass_g = massText === "nan" ? null : number(line, "mass_g", "scale_reading", massText, wrong);
    if (time_s !== undefined && before !== null && time_s <= before) wrong.push(WRONG.order(line, time_s, before));
    before = time_s ?? before;
    checkMark(line, label, open, wrong);
    samples.push({ time_s, mass_g, mark: label || null });
  }
  if (columns === null) return { wrong: [WRONG.noColumns] };
  for (const [kind, line] of open) wrong.push(WRONG.neverStops(line, `${kind}_start`));
  if (samples.length > MOST_SAMPLES) wrong.push(WRONG.more(samples.length, MOST_SAMPLES));
  if (wrong.length === 0 && samples.every(({ mass_g }) => mass_g === null)) wrong.push(WRONG.empty);
  return { samples, comments, wrong };
}

// What is no number is shown as it stands, but not a whole file that has no ends of lines.
const clipped = (text) => (text.length > 40 ? `${text.slice(0, 40)}…` : text);

function number(line, name, quantity, text, wrong) {
  const value = Number(text);
  const { min, max, unit } = limits[quantity];
  if (!NUMBER.test(text) || !Number.isFinite(value)) wrong.push(WRONG.number(line, name, clipped(text)));
  else if (value < min || value > max) wrong.push(WRONG.range(line, name, value, min, max, unit));
  else return value;
  return undefined;
}

// What starts must stop before it starts again.
function checkMark(line, label, open, wrong) {
  if (label === "") return;
  if (!MARKS.includes(label)) {
    wrong.push(WRONG.label(line, clipped(label)));
    return;
  }
  const [kind, edge] = label.split("_");
  if (edge === "start") {
    if (open.has(kind)) wrong.push(WRONG.again(line, label));
    open.set(kind, line);
  } else if (edge === "stop" && !open.delete(kind)) wrong.push(WRONG.notStarted(line, label));
}

/** A record on its way through a follower of the package. What was answered is kept, so that one can go back. */
export class Replay {
  samples;
  /** What happened: { at, time_s, event, change_g } by the package, { at, time_s, mark } by whoever noted it. */
  events = [];
  /** The package's refusal to go on, or null. */
  refusal = null;

  #follower;
  #answers = [];
  #origin_s;

  constructor({ samples }, follower) {
    this.samples = samples;
    this.#follower = follower;
    this.#origin_s = samples[0].time_s;
  }

  /** How many samples were followed. */
  get followed() {
    return this.#answers.length;
  }

  get isDone() {
    return this.followed === this.samples.length;
  }

  /** All the time of the record. */
  get span_s() {
    return this.timeOf(this.samples.length - 1);
  }

  /** When a sample came, from the first one on. */
  timeOf(index) {
    return this.samples[index].time_s - this.#origin_s;
  }

  /** The last sample that had come by a time from the first one on. */
  indexAt(time_s) {
    let [low, high] = [0, this.samples.length - 1];
    while (low < high) {
      const middle = Math.ceil((low + high) / 2);
      if (this.timeOf(middle) <= time_s) low = middle;
      else high = middle - 1;
    }
    return low;
  }

  /** What the package answered to a sample; null before the first weight. */
  answer(index) {
    return this.#answers[index];
  }

  /** Follows up to a sample and stops early where time is up; `told` hears of each. Whether it got there. */
  run(to, patience_ms, told) {
    const until = performance.now() + patience_ms;
    while (this.followed <= to && this.refusal === null) {
      this.#take();
      if (this.refusal === null) told(this.followed - 1);
      if (performance.now() > until) break;
    }
    return this.followed > to;
  }

  #take() {
    const at = this.followed;
    const { time_s, mass_g, mark } = this.samples[at];
    if (mark) this.events.push({ at, time_s: this.timeOf(at), mark });
    // Where no weight came, what was known stands.
    if (mass_g === null) {
      this.#answers.push(this.#answers.at(-1) ?? null);
      return;
    }
    const { value, refusal } = attempt(() => this.#follower.take({ clock_s: time_s, reading_g: mass_g }));
    if (refusal) {
      this.refusal = refusal;
      return;
    }
    this.#answers.push(value);
    const { event, event_clock_s, event_change_g } = value.seen;
    if (event) {
      const when_s = Math.max(0, event_clock_s - this.#origin_s);
      this.events.push({ at, time_s: when_s, event, change_g: event_change_g });
    }
  }

  /** Where all that was weighed was put down. */
  account() {
    return { ...this.#follower.account(), ...this.#follower.weighed() };
  }
}
