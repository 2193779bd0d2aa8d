// Drawings of numbers that others worked out. Each has its text beside it for those who do not see it.

import words from "../words.en.js";
import { hasYield } from "./bench.js";
import { h, svg } from "./element.js";
import { amount, clock, figure, toShown, unitOf } from "./units.js";

const WIDE = 340;
const HIGH = 240;
const FRAME = { left: 54, right: 12, top: 14, bottom: 42 };
const SAID = words.pictures;
let figures = 0;

/** The cup's place in strength × yield: `points` of { name, kind, strength_pct, yield_pct }. */
export function placePicture(points, window, units) {
  const strengths = points.map((point) => point.strength_pct);
  const yields = points.map((point) => point.yield_pct);
  if (window) {
    strengths.push(window.strength_lowest_pct, window.strength_highest_pct);
    if (hasYield(window)) yields.push(window.yield_lowest_pct, window.yield_highest_pct);
  }
  const x = scale(yields, 2, FRAME.left, WIDE - FRAME.right);
  const y = scale(strengths, 0.15, HIGH - FRAME.bottom, FRAME.top);
  const parts = axes(x, y, SAID.yieldAxis, SAID.strengthAxis, plain, (value) => value.toFixed(y.decimals));
  if (window) {
    const left = hasYield(window) ? x.at(window.yield_lowest_pct) : FRAME.left;
    const right = hasYield(window) ? x.at(window.yield_highest_pct) : WIDE - FRAME.right;
    const top = y.at(window.strength_highest_pct);
    parts.push(
      svg("rect", {
        class: "window",
        x: left,
        y: top,
        width: right - left,
        height: y.at(window.strength_lowest_pct) - top,
        rx: 6,
      }),
    );
  }
  for (const { name, kind, strength_pct, yield_pct } of points) {
    const [cx, cy] = [x.at(yield_pct), y.at(strength_pct)];
    const before = cx > WIDE * 0.62;
    // Names of two near points go one above and one below.
    const lift = points.some((other) => other.strength_pct > strength_pct) ? 22 : -12;
    parts.push(
      kind === "measured"
        ? svg("rect", {
            class: "spot measured",
            x: cx - 7,
            y: cy - 7,
            width: 14,
            height: 14,
            transform: `rotate(45 ${cx} ${cy})`,
          })
        : svg("circle", { class: "spot", cx, cy, r: 7 }),
      svg(
        "text",
        { class: "name", x: before ? cx - 8 : cx + 8, y: cy + lift, "text-anchor": before ? "end" : "start" },
        name,
      ),
    );
  }
  const say = points
    .map(({ name, strength_pct, yield_pct }) =>
      SAID.point(name, amount("strength", strength_pct, units), amount("yield", yield_pct, units)),
    )
    .join(" ");
  return picture(SAID.place, SAID.placeText(say, saidWindow(window, units)), parts);
}

function saidWindow(window, units) {
  if (!window) return SAID.noWindow;
  const span = (quantity, from, to) => words.range(figure(quantity, from, units), amount(quantity, to, units));
  return SAID.windowText(
    span("strength", window.strength_lowest_pct, window.strength_highest_pct),
    hasYield(window) && span("yield", window.yield_lowest_pct, window.yield_highest_pct),
  );
}

/** The drink cooling in its cup. */
export function coolingPicture(cooling, units) {
  if (!cooling) return h("p", { class: "picture-missing" }, SAID.noCooling);
  const shown = (water_c) => toShown("temperature", water_c, units);
  const { curve, marks, very_hot_c, from_c, is_at_most } = cooling;
  const last = curve[curve.length - 1];
  const x = scale([0, last.time_s / 60], 0, FRAME.left, WIDE - FRAME.right);
  const y = scale([shown(last.water_c), shown(from_c)], 3, HIGH - FRAME.bottom, FRAME.top);
  const at = ({ time_s, water_c }) => `${x.at(time_s / 60).toFixed(1)} ${y.at(shown(water_c)).toFixed(1)}`;
  const parts = [];
  if (from_c > very_hot_c) {
    const edge = y.at(shown(very_hot_c));
    parts.push(
      svg("rect", {
        class: "hot",
        x: FRAME.left,
        y: FRAME.top,
        width: WIDE - FRAME.left - FRAME.right,
        height: edge - FRAME.top,
      }),
      svg(
        "text",
        { class: "name", x: WIDE - FRAME.right - 5, y: FRAME.top + 16, "text-anchor": "end" },
        SAID.veryHot(amount("temperature", very_hot_c, units)),
      ),
    );
  }
  parts.push(
    ...axes(x, y, SAID.timeAxis, SAID.temperatureAxis(unitOf("temperature", units)), plain, plain),
    svg("path", { class: "curve", d: `M${curve.map(at).join("L")}` }),
  );
  for (const { at_c, time_s } of marks) {
    const [cx, cy] = [x.at(time_s / 60), y.at(shown(at_c))];
    parts.push(
      svg("path", { class: "drop", d: `M${cx} ${cy}V${HIGH - FRAME.bottom}` }),
      svg("circle", { class: "spot", cx, cy, r: 6 }),
      svg("text", { class: "name", x: cx + 9, y: cy - 7 }, SAID.markName(clock(time_s), is_at_most)),
    );
  }
  const say = marks
    .map(({ at_c, time_s }) => SAID.mark(amount("temperature", at_c, units), clock(time_s), is_at_most))
    .join(" ");
  return picture(SAID.cooling, SAID.coolingText(amount("temperature", from_c, units), say, is_at_most), parts);
}

/** Strength against added water; `wanted` is { added_g, strength_pct } or null. */
export function weakeningPicture(line, wanted, units) {
  const shown = (added_g) => toShown("addition", added_g, units);
  const [first, last] = [line[0], line[line.length - 1]];
  const x = scale([0, shown(last.added_g)], 0, FRAME.left, WIDE - FRAME.right);
  const y = scale([first.strength_pct, last.strength_pct], 0.05, HIGH - FRAME.bottom, FRAME.top);
  const at = (point) => `${x.at(shown(point.added_g)).toFixed(1)} ${y.at(point.strength_pct).toFixed(1)}`;
  const parts = [
    ...axes(x, y, SAID.addedAxis(unitOf("addition", units)), SAID.strengthAxis, plain, (value) =>
      value.toFixed(y.decimals),
    ),
    svg("path", { class: "curve", d: `M${line.map(at).join("L")}` }),
  ];
  if (wanted) {
    const [cx, cy] = [x.at(shown(wanted.added_g)), y.at(wanted.strength_pct)];
    parts.push(
      svg("path", { class: "drop", d: `M${FRAME.left} ${cy}H${cx}V${HIGH - FRAME.bottom}` }),
      svg("circle", { class: "spot", cx, cy, r: 7 }),
      svg("text", { class: "name", x: cx + 10, y: cy - 8 }, SAID.wished),
    );
  }
  const say = SAID.weakeningText(
    amount("strength", first.strength_pct, units),
    amount("strength", last.strength_pct, units),
    amount("addition", last.added_g, units),
    wanted &&
      SAID.wantedText(amount("strength", wanted.strength_pct, units), amount("addition", wanted.added_g, units)),
  );
  return picture(SAID.weakening, say, parts);
}

/**
 * What a brewer kept against the dose, with the line and the band for the next brew; `odd` is the place of the brew that
 * stands out among `points`, or null.
 */
export function keptPicture({ points, line }, odd, text, units) {
  const [dose, kept] = [(value) => toShown("dose", value, units), (value) => toShown("retained", value, units)];
  const x = scale([dose(line[0].dose_g), dose(line[line.length - 1].dose_g)], 0, FRAME.left, WIDE - FRAME.right);
  const shown = [...points, line[0], line[line.length - 1]].map(({ kept_g }) => kept(kept_g));
  const air = 0.15 * (Math.max(...shown) - Math.min(...shown));
  const y = scale(shown, air, HIGH - FRAME.bottom, FRAME.top);
  // Of few brews the band is wider than the picture.
  const within = (value) => Math.min(HIGH - FRAME.bottom, Math.max(FRAME.top, y.at(kept(value))));
  const at = (dose_g, high) => `${x.at(dose(dose_g)).toFixed(1)} ${high.toFixed(1)}`;
  const upper = line.map(({ dose_g, most_g }) => at(dose_g, within(most_g)));
  const lower = line.map(({ dose_g, least_g }) => at(dose_g, within(least_g))).reverse();
  const parts = [
    ...axes(x, y, SAID.doseAxis(unitOf("dose", units)), SAID.keptAxis(unitOf("retained", units)), plain, plain),
    svg("path", { class: "band", d: `M${[...upper, ...lower].join("L")}Z` }),
    svg("path", {
      class: "curve",
      d: `M${line.map(({ dose_g, kept_g }) => at(dose_g, y.at(kept(kept_g)))).join("L")}`,
    }),
  ];
  points.forEach(({ dose_g, kept_g }, place) => {
    const [cx, cy] = [x.at(dose(dose_g)), y.at(kept(kept_g))];
    parts.push(svg("circle", { class: "spot", cx, cy, r: 5 }));
    if (place !== odd) return;
    const before = cx > WIDE * 0.62;
    parts.push(
      svg("circle", { class: "spot doubtful", cx, cy, r: 11 }),
      svg(
        "text",
        { class: "name", x: before ? cx - 16 : cx + 16, y: cy + 4, "text-anchor": before ? "end" : "start" },
        SAID.odd,
      ),
    );
  });
  return picture(SAID.kept, text, parts);
}

/**
 * Curves over the time of a record, drawn as their points come and shown up to a moment that can be moved. `kinds` are
 * the classes of the curves, of which a "band" reaches down to nought; `low` and `high` are where the axis ends until a
 * point lies beyond; `aim` is a value to get to, with its name.
 */
export class Strip {
  element;
  #kinds;
  #axis;
  #low;
  #high;
  #aim;
  #minutes;
  #y;
  #points = [];
  #marks = [];
  #lines;
  #isBeyond = true;
  #scales = svg("g", {});
  #shown = svg("rect", { x: 0, y: 0, width: 0, height: HIGH });
  #curves;
  #spots = svg("g", {});
  #now = svg("path", { class: "drop" });
  #aims = svg("g", {});
  #name = svg("text", { class: "name", y: FRAME.top + 10 });

  constructor({ title, text, axis, span_s, kinds, low, high, aim = null }) {
    this.#kinds = kinds;
    [this.#low, this.#high] = [low, high];
    this.#minutes = scale([0, span_s / 60], 0, FRAME.left, WIDE - FRAME.right);
    this.#axis = axis;
    this.#aim = aim;
    this.#curves = kinds.map((kind) => svg("path", { class: kind }));
    figures += 1;
    const clip = `picture-${figures}-shown`;
    this.element = picture(title, text, [
      svg("clipPath", { id: clip }, this.#shown),
      this.#scales,
      svg("g", { "clip-path": `url(#${clip})` }, this.#curves, this.#spots),
      this.#now,
      this.#aims,
      this.#name,
    ]);
  }

  /** The next point of every curve; null where it has none. */
  add(time_s, values) {
    this.#points.push([time_s, values]);
    for (const value of values) if (value !== null) this.#reach(value);
    if (!this.#isBeyond) this.#lay(time_s, values);
  }

  /** A spot on a curve, with the words that stand beside the newest. */
  mark(time_s, value, name) {
    this.#marks.push([time_s, value, name]);
    if (value !== null) this.#reach(value);
    if (!this.#isBeyond) this.#spot(time_s, value);
  }

  /** Draws what has come, up to a moment. */
  show(time_s) {
    if (this.#isBeyond) this.#rescale();
    this.#kinds.forEach((kind, at) => this.#curves[at].setAttribute("d", this.#lines[at].path(this.#floorOf(kind))));
    const x = this.#xOf(time_s);
    this.#shown.setAttribute("width", x + 0.5);
    this.#now.setAttribute("d", `M${x.toFixed(1)} ${FRAME.top}V${HIGH - FRAME.bottom}`);
    const newest = this.#marks.findLast(([when_s]) => when_s <= time_s);
    this.#name.textContent = newest?.[2] ?? "";
    if (newest) this.#place(this.#xOf(newest[0]));
  }

  #xOf(time_s) {
    return this.#minutes.at(time_s / 60);
  }

  #floorOf(kind) {
    return kind === "band" ? this.#y.at(0) : null;
  }

  // With air, so that it is not for every point.
  #reach(value) {
    if (value >= this.#low && value <= this.#high) return;
    const air = 0.2 * (Math.max(value, this.#high) - Math.min(value, this.#low));
    if (value > this.#high) this.#high = value + air;
    else this.#low = value - air;
    this.#isBeyond = true;
  }

  #rescale() {
    this.#isBeyond = false;
    this.#y = scale([this.#low, this.#high], 0, HIGH - FRAME.bottom, FRAME.top);
    this.#scales.replaceChildren(...axes(this.#minutes, this.#y, SAID.recordAxis, this.#axis, plain, plain));
    if (this.#aim) this.#aims.replaceChildren(...this.#aimed(this.#y.at(this.#aim.value)));
    this.#lines = this.#kinds.map(() => new Line());
    this.#spots.replaceChildren();
    for (const [time_s, values] of this.#points) this.#lay(time_s, values);
    for (const [time_s, value] of this.#marks) this.#spot(time_s, value);
  }

  #lay(time_s, values) {
    const x = this.#xOf(time_s);
    values.forEach((value, at) => this.#lines[at].add(x, value === null ? null : this.#y.at(value)));
  }

  #spot(time_s, value) {
    if (value === null) return;
    this.#spots.append(svg("circle", { class: "spot", cx: this.#xOf(time_s), cy: this.#y.at(value), r: 4.5 }));
  }

  #aimed(y) {
    return [
      svg("path", { class: "drop", d: `M${FRAME.left} ${y}H${WIDE - FRAME.right}` }),
      svg("text", { class: "name", x: FRAME.left + 6, y: y - 6 }, this.#aim.name),
    ];
  }

  #place(x) {
    const third = (WIDE - FRAME.left - FRAME.right) / 3;
    const anchor = x < FRAME.left + third ? "start" : x > WIDE - FRAME.right - third ? "end" : "middle";
    this.#name.setAttribute("x", x);
    this.#name.setAttribute("text-anchor", anchor);
  }
}

// Narrower than any screen shows: two to a unit of the picture.
const COLUMNS = 2;

// A curve as a path. Of many points in one column the first, lowest, highest and last look the same as all.
class Line {
  #start = null;
  #path = "";
  #column = [];
  #isUp = true;

  add(x, y) {
    const [first] = this.#column;
    if (first && (y === null || Math.floor(first.x * COLUMNS) !== Math.floor(x * COLUMNS))) {
      this.#path += this.#pieces();
      this.#isUp = false;
      this.#column = [];
    }
    if (y === null) this.#isUp = true;
    else this.#column.push({ x, y });
    this.#start ??= y === null ? null : x;
  }

  /** The path so far, closed along a floor where there is one. */
  path(floor) {
    const path = this.#path + this.#pieces();
    return floor === null || path === "" ? path : `${path}V${floor.toFixed(1)}H${this.#start.toFixed(1)}Z`;
  }

  #pieces() {
    const column = this.#column;
    if (column.length === 0) return "";
    const lowest = column.reduce((a, b) => (b.y > a.y ? b : a));
    const highest = column.reduce((a, b) => (b.y < a.y ? b : a));
    const kept = column.filter((point) => [column[0], lowest, highest, column.at(-1)].includes(point));
    return (this.#isUp ? "M" : "L") + kept.map(({ x, y }) => `${x.toFixed(1)} ${y.toFixed(1)}`).join("L");
  }
}

function picture(title, text, parts) {
  figures += 1;
  const id = `picture-${figures}`;
  return h(
    "figure",
    {},
    h("h4", { id: `${id}-title` }, title),
    svg(
      "svg",
      {
        viewBox: `0 0 ${WIDE} ${HIGH}`,
        role: "img",
        "aria-labelledby": `${id}-title`,
        "aria-describedby": `${id}-text`,
      },
      ...parts,
    ),
    h("figcaption", { id: `${id}-text` }, text),
  );
}

// An axis over the values with some air about them, marked at round numbers.
function scale(values, air, from, to) {
  const low = Math.min(...values) - air;
  const high = Math.max(...values) + air;
  const span = high - low || 1;
  const rough = span / 5;
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = power * [1, 2, 5, 10].find((times) => times * power >= rough);
  const marks = [];
  for (let index = Math.ceil(low / step - 1e-9); index * step <= high + step * 1e-9; index += 1)
    marks.push(index * step);
  return {
    at: (value) => from + ((value - low) / span) * (to - from),
    marks,
    decimals: Math.max(0, -Math.floor(Math.log10(step) + 1e-9)),
  };
}

const plain = (value) => String(Number(value.toFixed(6)));

function axes(x, y, xName, yName, xText, yText) {
  const floor = HIGH - FRAME.bottom;
  return [
    ...y.marks.map((value) => svg("path", { class: "grid", d: `M${FRAME.left} ${y.at(value)}H${WIDE - FRAME.right}` })),
    svg("path", { class: "axis", d: `M${FRAME.left} ${floor}H${WIDE - FRAME.right}` }),
    ...x.marks.map((value) => svg("path", { class: "axis", d: `M${x.at(value)} ${floor}v4` })),
    ...x.marks.map((value) => svg("text", { x: x.at(value), y: floor + 17, "text-anchor": "middle" }, xText(value))),
    ...y.marks.map((value) =>
      svg("text", { x: FRAME.left - 7, y: y.at(value) + 4, "text-anchor": "end" }, yText(value)),
    ),
    svg("text", { x: (FRAME.left + WIDE - FRAME.right) / 2, y: HIGH - 5, "text-anchor": "middle" }, xName),
    svg(
      "text",
      {
        x: 0,
        y: 0,
        "text-anchor": "middle",
        transform: `translate(10 ${(FRAME.top + floor) / 2}) rotate(-90)`,
      },
      yName,
    ),
  ];
}
