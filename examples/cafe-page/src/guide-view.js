// The guide on the page: one step at a time, one big button, and a clock where time matters.

import words from "../words.en.js";
import { cautionsAt } from "./cautions.js";
import { h, svg } from "./element.js";
import { begin, cupsOfBatch, duration, keep, known, stand, stepBack, stepDone, underWay } from "./guide.js";
import { amount, clock, figure } from "./units.js";

const SAID = words.guide;
const TICK_MS = 250;
// The length of a circle of radius 54, for the ring that runs out.
const RING = 2 * Math.PI * 54;

export class GuideView {
  #steps = h("div", {});
  #alarm = h("p", { class: "unseen", role: "alert" });
  #units;
  #judge;
  #changed;
  #ended;
  #guide = underWay();
  #timer = null;
  #toldOf = null;
  #tick = () => {};
  #light = new ScreenLight();

  /**
   * `judge` is called when the brew is done, `changed` with the guide after each step, `ended` with the guide that was
   * ended by hand; `until` ends its clock.
   */
  constructor(root, { units, judge, changed, ended, until }) {
    root.append(this.#steps, this.#alarm);
    this.#units = units;
    this.#judge = judge;
    this.#changed = changed;
    this.#ended = ended;
    document.addEventListener("visibilitychange", () => document.hidden || this.#woken(), { signal: until });
    until.addEventListener("abort", () => this.#rest());
    this.show();
  }

  /** The brew under way, or null. */
  get guide() {
    return this.#guide;
  }

  begin(plan, all) {
    this.#guide = begin(plan, all, Date.now());
    this.#moved();
  }

  /** Puts a guide in place of the one that is on; null for none. */
  put(guide) {
    keep(guide);
    this.#guide = guide;
    this.#moved();
  }

  /** Takes up what another tab or element did. */
  follow(guide) {
    this.#guide = known(guide);
    this.show();
  }

  show() {
    this.#rest();
    this.#steps.replaceChildren(...(this.#under() ?? [h("p", { class: "quiet", tabindex: "-1" }, SAID.idle)]));
  }

  // A guide that cannot be shown, whatever storage made of it, costs the brew and not the page.
  #under() {
    if (!this.#guide) return null;
    try {
      return this.#shown();
    } catch {
      this.#rest();
      keep(null);
      this.#guide = null;
      return null;
    }
  }

  #moved() {
    this.show();
    this.#changed(this.#guide);
    this.#steps.querySelector("[tabindex]").focus();
  }

  #rest() {
    clearInterval(this.#timer);
    this.#timer = null;
    this.#tick = () => {};
    this.#alarm.textContent = "";
    this.#light.release();
  }

  // A page that slept shows the right time at once.
  #woken() {
    this.#tick();
    if (this.#timer !== null) this.#light.hold();
  }

  #shown() {
    const guide = this.#guide;
    const at = stand(guide);
    const step = Math.min(guide.done.length + 1, at.of);
    const end = () => {
      this.put(null);
      this.#ended(guide);
    };
    return [
      h(
        "p",
        { class: "quiet" },
        SAID.begun(new Intl.DateTimeFormat(words.locale, { timeStyle: "short" }).format(guide.begun)),
        " ",
        SAID.steady,
      ),
      h("progress", { max: at.of, value: guide.done.length, "aria-label": SAID.progress(step, at.of) }),
      at.finished ? this.#finished() : this.#step(at),
      h(
        "div",
        { class: "actions" },
        guide.done.length > 0 &&
          h("button", { type: "button", onclick: () => (stepBack(guide), this.#moved()) }, SAID.back),
        h("button", { type: "button", onclick: end }, SAID.again),
      ),
    ];
  }

  #finished() {
    return h(
      "div",
      { class: "step-card" },
      h("h3", { tabindex: "-1" }, SAID.finished),
      h("button", { type: "button", class: "main huge", onclick: this.#judge }, SAID.finishedGo),
    );
  }

  #step(at) {
    const { name, what, done, caution } = this.#wording(at.kind);
    const takes_s = duration(this.#guide, at.kind);
    const next = () => {
      stepDone(this.#guide, Date.now());
      this.#moved();
    };
    return h(
      "div",
      { class: "step-card" },
      h(
        "p",
        { class: "where" },
        SAID.progress(at.step, at.of),
        at.batch !== null && at.batches > 1 && ` · ${SAID.batch(at.batch, at.batches)}`,
      ),
      h("h3", { tabindex: "-1" }, name),
      h("p", { class: "what" }, what),
      takes_s !== null && this.#dial(at, takes_s, name),
      caution,
      h("button", { type: "button", class: "main huge", onclick: next }, done),
    );
  }

  #dial(at, takes_s, name) {
    const digits = h("span", { class: "digits", role: "timer" });
    const ring = svg("circle", { class: "run", cx: 60, cy: 60, r: 54, "stroke-dasharray": RING });
    const dial = h(
      "div",
      { class: "dial" },
      svg("svg", { viewBox: "0 0 120 120", "aria-hidden": "true" }, svg("circle", { cx: 60, cy: 60, r: 54 }), ring),
      digits,
    );
    this.#tick = () => {
      const gone_s = (Date.now() - at.since) / 1000;
      const left_s = takes_s - gone_s;
      if (gone_s < 0) digits.textContent = SAID.clockBack;
      else digits.textContent = left_s >= 0 ? SAID.left(clock(Math.ceil(left_s))) : SAID.over(clock(-left_s));
      ring.setAttribute("stroke-dashoffset", RING * (1 - Math.min(1, Math.max(0, left_s / takes_s))));
      dial.classList.toggle("up", left_s < 0);
      // Once for a step, however often it is shown.
      if (left_s < 0 && this.#toldOf !== at.since) {
        this.#toldOf = at.since;
        this.#alarm.textContent = SAID.timeUp(name);
        if (navigator.userActivation?.hasBeenActive) navigator.vibrate?.([200, 100, 200]);
      }
    };
    this.#tick();
    this.#timer = setInterval(() => this.#tick(), TICK_MS);
    this.#light.hold();
    return dial;
  }

  #wording(kind) {
    const { recipe, to_heat_g, contact_s, rinse_g, serve_c, add_water, added_c } = this.#guide;
    const units = this.#units();
    const show = (quantity, value) => amount(quantity, value, units);
    const { heat } = recipe;
    const several = recipe.batches > 1;
    const uneven = several && cupsOfBatch(this.#guide) === null;
    // Cups that wait for the last batch are filled from what has cooled meanwhile.
    const atMost = uneven || heat.contact_heat === "at_most";
    const cooler = uneven ? SAID.cooler.batches : several ? SAID.cooler.cups : null;
    const both = (text, more) => [text, more].filter(Boolean).join(" ");
    const step = (key, what, caution) => ({ name: SAID[key].name, done: SAID[key].done, what, caution });
    const water = show("brew_water", recipe.water_g);
    const beverage = show("beverage", recipe.beverage_g);
    const caution = (place, hot_c) => cautionsAt(place, recipe, hot_c, units);
    switch (kind) {
      case "heat":
        return step(
          kind,
          SAID.heat.what(show("liquid", to_heat_g), show("temperature", heat.kettle_c)),
          caution("pour", heat.kettle_c),
        );
      case "preheat":
        return step(kind, SAID.preheat.what(show("liquid", rinse_g)));
      case "dose":
        return step(kind, SAID.dose.what(show("dose", recipe.dose_g)));
      case "pour": {
        const second = heat.second_vessel_c !== null && show("temperature", heat.second_vessel_c);
        return step(kind, SAID.pour.what(water, show("temperature", heat.brew_c), second));
      }
      case "steep":
        return step(kind, SAID.steep.what(water, clock(contact_s)));
      case "flow":
        return step(kind, both(SAID.flow.what(water, clock(contact_s), beverage), SAID.weigh));
      case "press":
        return step(kind, both(SAID.press.what(beverage), SAID.weigh), caution("press", heat.slurry_end_c));
      case "drain":
        return step(kind, both(SAID.drain.what(beverage), SAID.weigh));
      case "fill": {
        const cups = cupsOfBatch(this.#guide) ?? this.#guide.servings;
        const brew = show("beverage", recipe.brew_per_cup_g);
        const filled = SAID.fill.what(figure("servings", cups, units), brew);
        const added = [show("addition", recipe.added_per_cup_g), show("temperature", added_c)];
        return step(kind, both(filled, add_water && SAID.fill.add(...added)));
      }
      case "wait":
        return step(
          kind,
          both(SAID.wait.what(clock(heat.wait_s), show("temperature", serve_c), atMost), cooler),
          caution("serve", serve_c),
        );
      default:
        return step(
          kind,
          both(SAID.serve.what(show("temperature", heat.in_cup_c), atMost), cooler),
          caution("serve", heat.in_cup_c),
        );
    }
  }
}

/** Keeps the screen lit while a clock runs, where the browser can. */
class ScreenLight {
  #wanted = false;
  #lock = null;

  async hold() {
    this.#wanted = true;
    try {
      const lock = await navigator.wakeLock?.request("screen");
      // Another step may have begun before the browser answered.
      if (this.#wanted && !this.#lock) this.#lock = lock ?? null;
      else lock?.release();
    } catch {
      // A battery that is low, or a page out of sight: the moments kept make up for it.
    }
  }

  release() {
    this.#wanted = false;
    this.#lock?.release();
    this.#lock = null;
  }
}
