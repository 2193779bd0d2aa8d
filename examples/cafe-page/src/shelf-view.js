// One of several brewers, coffees or kitchens: chosen by name, copied, removed.

import words from "../words.en.js";
import { h } from "./element.js";

export class Shelf {
  kind;
  /** The choice among them. */
  field;
  /** What can be done with the one chosen. */
  actions;

  #settings;
  #changed;
  #offerUndo;
  #select;
  #remove;

  /** `changed` is called after a change; `offerUndo(text, undo)` after one that can be put back. */
  constructor(kind, settings, changed, offerUndo) {
    this.kind = kind;
    this.#settings = settings;
    this.#changed = changed;
    this.#offerUndo = offerUndo;
    const { pick, another, remove } = words.shelf[kind];
    const id = `pick-${kind}`;
    this.#select = h("select", { id, onchange: () => this.#choose(Number(this.#select.value)) });
    this.#remove = h("button", { type: "button", onclick: () => this.#removeChosen() }, remove);
    this.field = h(
      "div",
      { class: "field" },
      h("label", { for: id }, pick),
      h("div", { class: "entry" }, h("span", { class: "box" }, this.#select)),
    );
    this.actions = h(
      "div",
      { class: "actions" },
      h("button", { type: "button", onclick: () => this.#copyChosen() }, another),
      this.#remove,
    );
  }

  /** Shows what is on the shelf now. */
  show() {
    const { chosen } = this.#settings;
    const option = ({ name }, index) =>
      h("option", { value: index, selected: index === chosen[this.kind] }, name || words.shelf.nameless);
    this.#select.replaceChildren(...this.#entries.map(option));
    this.#remove.disabled = this.#entries.length === 1;
  }

  get #entries() {
    return this.#settings.shelf[this.kind];
  }

  #choose(index) {
    this.#settings.chosen[this.kind] = index;
    this.#changed();
  }

  #copyChosen() {
    const entry = this.#entries[this.#settings.chosen[this.kind]];
    this.#choose(this.#entries.push({ ...entry, name: words.shelf.copyOf(entry.name) }) - 1);
  }

  #removeChosen() {
    const index = this.#settings.chosen[this.kind];
    const [entry] = this.#entries.splice(index, 1);
    this.#choose(0);
    this.#offerUndo(words.shelf.removed(entry.name || words.shelf.nameless), () => {
      const at = Math.min(index, this.#entries.length);
      this.#entries.splice(at, 0, entry);
      this.#choose(at);
    });
  }
}
