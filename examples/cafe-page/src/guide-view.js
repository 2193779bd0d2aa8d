// The guide on the page: one step at a time, one big button, and a clock where time matters.

import words from "../words.en.js";
import { cautionsAt } from "./cautions.js";
import { h, svg } from "./element.js";
import { begin, duration, end, stand, stepBack, stepDone, underWay } from "./guide.js";
import { amount, clock } from "./units.js";

const SAID = words.guide;
const TICK_MS = 250;
// The length of a circle of radius 54, for the ring that runs out.
const RING = 2 * Math.PI * 54;

export class GuideView {
  #root;
  #units;
  #say;
  #judge;
  #changed;
  #guide = underWay();
  #timer = null;
  #light = new ScreenLight();

  /** `changed` is called after a step; `until` ends its clock. */
  constructor(root, { units, say, judge, changed, until }) {
    this.#root = root;
    this.#units = units;
    this.#say = say;
    this.#judge = judge;
    this.#changed = changed;
    document.addEventListener("visibilitychange", () => document.hidden || this.#woken(), { signal: until });
    until.addEventListener("abort", () => this.#rest());
    this.show();
  }

  begin(plan, all) {
    this.#guide = begin(plan, all, Date.now());
    this.#moved();
  }

  /** Takes up what another tab or element did. */
  reload() {
    this.#guide = underWay();
    this.show();
  }

  show() {
    this.#rest();
    this.#root.replaceChildren(...(this.#guide ? this.#under() : [h("p", { class: "quiet" }, SAID.idle)]));
  }

  #moved() {
    this.show();
    this.#changed();
    const step = this.#root.querySelector(".step-card h3");
    step?.focus();
  }

  #rest() {
    clearInterval(this.#timer);
    this.#timer = null;
    this.#tick = () => {};
    this.#light.release();
  }

  // A page that slept shows the right time at once.
  #woken() {
    this.#tick();
    if (this.#timer !== null) this.#light.hold();
  }

  #under() {
    const guide = this.#guide;
    const at = stand(guide);
    return [
      h(
        "p",
        { class: "quiet" },
        SAID.begun(new Intl.DateTimeFormat(words.locale, { timeStyle: "short" }).format(guide.begun)),
        " ",
        SAID.steady,
      ),
      h("progress", {
        max: at.of,
        value: guide.done.length,
        "aria-label": SAID.progress(Math.min(guide.done.length + 1, at.of), at.of),
      }),
      at.finished ? this.#finished() : this.#step(at),
      h(
        "div",
        { class: "actions" },
        guide.done.length > 0 &&
          h("button", { type: "button", onclick: () => (stepBack(guide), this.#moved()) }, SAID.back),
        h("button", { type: "button", onclick: () => (end(), (this.#guide = null), this.#moved()) }, SAID.again),
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
    const card = h(
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
      h(
        "button",
        { type: "button", class: "main huge", onclick: () => (stepDone(this.#guide, Date.now()), this.#moved()) },
        done,
      ),
    );
    return card;
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
    let told = false;
    this.#tick = () => {
      const left_s = takes_s - (Date.now() - at.since) / 1000;
      digits.textContent = left_s >= 0 ? SAID.left(clock(Math.ceil(left_s))) : SAID.over(clock(-left_s));
      ring.setAttribute("stroke-dashoffset", RING * (1 - Math.min(1, Math.max(0, left_s / takes_s))));
      dial.classList.toggle("up", left_s < 0);
      if (left_s < 0 && !told) {
        told = true;
        this.#say(SAID.timeUp(name));
        if (navigator.userActivation?.hasBeenActive) navigator.vibrate?.([200, 100, 200]);
      }
    };
    this.#tick();
    this.#timer = setInterval(() => this.#tick(), TICK_MS);
    this.#light.hold();
    return dial;
  }

  #tick = () => {};

  #wording(kind) {
    const { recipe, contact_s, rinse_g, serve_c, add_water } = this.#guide;
    const units = this.#units();
    const show = (quantity, value) => amount(quantity, value, units);
    const { heat } = recipe;
    const step = (key, what, caution) => ({ name: SAID[key].name, done: SAID[key].done, what, caution });
    switch (kind) {
      case "heat":
        return step(
          kind,
          SAID.heat.what(show("temperature", heat.kettle_c)),
          cautionsAt("pour", recipe, heat.kettle_c, units),
        );
      case "preheat":
        return step(kind, SAID.preheat.what(show("liquid", rinse_g)));
      case "dose":
        return step(kind, SAID.dose.what(show("dose", recipe.dose_g)));
      case "pour":
        return step(kind, SAID.pour.what(show("brew_water", recipe.water_g), show("temperature", heat.brew_c)));
      case "steep":
      case "flow":
        return step(kind, SAID[kind].what(clock(contact_s)));
      case "press":
        return step(
          kind,
          SAID.press.what(show("beverage", recipe.beverage_g)),
          cautionsAt("press", recipe, heat.slurry_end_c, units),
        );
      case "drain":
        return step(kind, SAID.drain.what(show("beverage", recipe.beverage_g)));
      case "add_or_share":
        return add_water
          ? step(
              "add",
              SAID.add.what(show("beverage", recipe.brew_per_cup_g), show("addition", recipe.added_per_cup_g)),
            )
          : step("share", SAID.share.what(show("beverage", recipe.brew_per_cup_g)));
      case "wait":
        return step(
          kind,
          SAID.wait.what(clock(heat.wait_s), show("temperature", serve_c)),
          cautionsAt("serve", recipe, serve_c, units),
        );
      default:
        return step(
          "serve",
          SAID.serve.what(show("temperature", heat.in_cup_c)),
          cautionsAt("serve", recipe, heat.in_cup_c, units),
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
