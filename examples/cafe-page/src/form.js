// Input fields made from the table of fields, with their labels, hints and refusals tied to them.

import words from "../words.en.js";
import { h } from "./element.js";
import { MOST_TEXT, quantityOf } from "./fields.js";
import { originOf } from "./learnt.js";
import { fromShown, isOther, parsed, span, toShown, typed, unitOf } from "./units.js";

/**
 * A set of fields over the sections that `read` gives. `changed` is called with a field after its value was set.
 */
export class Form {
  #boxes = new Map();
  #read;
  #changed;

  constructor(read, changed) {
    this.#read = read;
    this.#changed = changed;
  }

  /** The elements of one field. */
  build(field) {
    const box = field.kind === "flag" ? this.#flag(field) : this.#labelled(field);
    this.#boxes.set(field.id, box);
    return box.root;
  }

  /** Shows the values as they are now, leaving alone what is being typed. */
  refresh() {
    const all = this.#read();
    for (const [, box] of this.#boxes) {
      box.root.hidden = box.field.when ? !box.field.when(all) : false;
      box.show(all);
      const origin = originOf(box.field, all);
      box.origin.textContent = origin ? ` ${words.learn.origin[origin]}` : "";
    }
  }

  /** Puts a refusal at its field and takes all others away; false where the field is not here. */
  refuse(field, text) {
    for (const [id, box] of this.#boxes) {
      const mine = field?.id === id;
      box.error.textContent = mine ? text : "";
      box.error.hidden = !mine;
      if (mine) box.input.setAttribute("aria-invalid", "true");
      else box.input.removeAttribute("aria-invalid");
    }
    return field !== null && this.#boxes.has(field.id);
  }

  /** Opens what hides a field and moves there. */
  visit(field) {
    const { input } = this.#boxes.get(field.id);
    for (let up = input.parentElement; up; up = up.parentElement) if (up.tagName === "DETAILS") up.open = true;
    input.focus();
    input.scrollIntoView({ block: "center" });
  }

  #set(field, value) {
    this.#read()[field.section][field.key] = value;
    this.#changed(field);
  }

  #notes(field) {
    const { hint } = words.fields[field.id];
    const id = field.id.replace(".", "-");
    const error = h("p", { class: "error", id: `${id}-error`, hidden: true });
    const range = h("span", {});
    const origin = h("span", { class: "learnt" });
    const note = h("p", { class: "hint", id: `${id}-hint` }, hint ? `${hint} ` : "", range, origin);
    return { id, error, range, origin, note, describedby: `${id}-hint ${id}-error` };
  }

  #flag(field) {
    const { id, error, origin, note, describedby } = this.#notes(field);
    const input = h("input", {
      type: "checkbox",
      id,
      "aria-describedby": describedby,
      onchange: () => this.#set(field, input.checked),
    });
    return {
      field,
      input,
      error,
      origin,
      root: h(
        "div",
        { class: "field flag" },
        h("label", { for: id }, input, words.fields[field.id].label),
        note,
        error,
      ),
      show: (all) => {
        input.checked = all[field.section][field.key];
      },
    };
  }

  #labelled(field) {
    const { id, error, range, origin, note, describedby } = this.#notes(field);
    const { label, options } = words.fields[field.id];
    const shared = { id, "aria-describedby": describedby };
    const unit = h("span", { class: "unit", "aria-hidden": "true" });
    const spoken = h("span", { class: "unseen" });
    const optional = field.optional && h("span", { class: "optional" }, words.optional);
    const input =
      field.kind === "choice"
        ? h(
            "select",
            { ...shared, onchange: () => this.#set(field, input.value) },
            field.options.map((option) => h("option", { value: option }, options[option])),
          )
        : h("input", {
            ...shared,
            type: "text",
            inputmode: field.kind === "number" && field.quantity !== "time" ? "decimal" : null,
            autocomplete: "off",
            spellcheck: "false",
            maxlength: field.kind === "text" ? MOST_TEXT : null,
            oninput: () => this.#set(field, this.#value(field, input.value)),
          });
    const row = h("div", { class: field.step ? "entry stepped" : "entry" });
    if (field.step) row.append(this.#stepper(field, -1));
    row.append(h("span", { class: "box" }, input, unit));
    if (field.step) row.append(this.#stepper(field, 1));
    return {
      field,
      input,
      error,
      origin,
      root: h(
        "div",
        { class: "field" },
        h("label", { for: id }, label, spoken, optional ? " " : null, optional),
        row,
        note,
        error,
      ),
      show: (all) => {
        const value = all[field.section][field.key];
        const quantity = quantityOf(field, all);
        if (quantity) {
          const name = quantity === "time" ? "" : unitOf(quantity, all.units);
          unit.textContent = name;
          spoken.textContent = name ? `, ${name}` : "";
          // Three fields of every day stay bare; a refusal names their range.
          if (!field.step) range.textContent = span(quantity, all.units);
        }
        if (input.getRootNode().activeElement === input && field.kind !== "choice") {
          const same = JSON.stringify(this.#value(field, input.value)) === JSON.stringify(value);
          if (same) return;
        }
        input.value =
          field.kind === "number"
            ? typed(quantity, value, all.units)
            : field.kind === "list"
              ? value.map((one) => typed(quantity, one, all.units)).join(" ")
              : value;
      },
    };
  }

  #value(field, text) {
    const { units } = this.#read();
    if (field.kind === "number") return parsed(field.quantity, text, units);
    if (field.kind !== "list") return text;
    return text
      .split(/[\s;]+/)
      .filter((part) => part !== "")
      .map((part) => parsed("strength", part, units));
  }

  #stepper(field, direction) {
    const { label } = words.fields[field.id];
    return h(
      "button",
      {
        type: "button",
        class: "step",
        "aria-label": direction < 0 ? words.less(label) : words.more(label),
        onclick: () => {
          const all = this.#read();
          const value = all[field.section][field.key];
          if (typeof value !== "number") return;
          const step = isOther(field.quantity, all.units) ? field.step.other : field.step.metric;
          const shown = toShown(field.quantity, value, all.units) + direction * step;
          // Steps of a hundredth must not leave a trail of binary digits.
          const tidy = Number(shown.toFixed(6));
          this.#set(field, fromShown(field.quantity, tidy, all.units));
        },
      },
      direction < 0 ? "−" : "+",
    );
  }
}
