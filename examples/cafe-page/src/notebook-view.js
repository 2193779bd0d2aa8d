// The notebook on the page: its entries, and files in and out.

import words from "../words.en.js";
import { h } from "./element.js";
import { download } from "./download.js";
import { fromFile, toCsv, toJson } from "./exchange.js";
import { entries, put, remove } from "./notebook.js";
import { amount, moment } from "./units.js";

const SAID = words.notebook;
const MOST_SHOWN = 12;

export class NotebookView {
  #list = h("ol", { class: "entries" });
  #news = h("div", { role: "status" });
  #units;
  #changed;
  #shown;

  /** `changed` is called after an entry came or went; `shown` with all entries, whenever they are shown. */
  constructor(root, units, { changed, shown }) {
    this.#units = units;
    this.#changed = changed;
    this.#shown = shown;
    const file = h("input", {
      type: "file",
      id: "notebook-file",
      accept: ".json,.csv,application/json,text/csv",
      "aria-describedby": "notebook-file-hint",
      onchange: () => this.#import(file),
    });
    root.append(
      this.#list,
      this.#news,
      h(
        "div",
        { class: "actions" },
        h(
          "button",
          { type: "button", onclick: () => this.#export(toJson, "application/json", "json") },
          SAID.exportJson,
        ),
        h("button", { type: "button", onclick: () => this.#export(toCsv, "text/csv", "csv") }, SAID.exportCsv),
      ),
      h(
        "div",
        { class: "field file" },
        h("label", { for: "notebook-file" }, SAID.import),
        file,
        h("p", { class: "hint", id: "notebook-file-hint" }, SAID.importHint),
      ),
      h("p", { class: "quiet" }, SAID.privacy),
    );
  }

  /** Whether the entry is kept now. */
  keep(entry) {
    return this.#safely(async () => {
      await put([entry]);
      await this.#cameOrWent();
      this.#list.querySelector("li").focus();
    });
  }

  async show() {
    await this.#safely(async () => {
      const kept = await entries();
      this.#list.replaceChildren(
        ...(kept.length === 0 ? [h("li", { class: "quiet" }, SAID.empty)] : kept.map((entry) => this.#entry(entry))),
      );
      this.#shown(kept);
    });
  }

  #entry(entry) {
    const { brew, result } = entry;
    const units = this.#units();
    const when = moment(entry.at);
    const weighed = [
      amount("dose", brew.dose_g, units),
      amount("brew_water", brew.water_g, units),
      amount("beverage", brew.beverage_g, units),
    ];
    const name = SAID.entry(when, entry.coffee.name, entry.brewer.name);
    return h(
      "li",
      { tabindex: "-1" },
      h("p", {}, h("strong", {}, name)),
      h(
        "p",
        { class: "numbers" },
        [
          `${SAID.strength} ${amount("strength", result.strength_pct, units)}`,
          `${SAID.yield} ${amount("yield", result.yield_pct, units)}`,
          `${SAID.weighed} ${weighed.join(", ")}`,
        ].join(" · "),
      ),
      brew.note && h("p", { class: "note" }, brew.note),
      h(
        "button",
        { type: "button", "aria-label": `${SAID.remove}: ${name}`, onclick: () => this.#remove(entry) },
        SAID.remove,
      ),
    );
  }

  async #remove(entry) {
    await this.#safely(async () => {
      await remove(entry.id);
      await this.#cameOrWent();
      const restore = h(
        "button",
        { type: "button", onclick: () => (this.#news.replaceChildren(), this.keep(entry)) },
        words.putBack,
      );
      this.#news.replaceChildren(h("p", {}, SAID.removed), restore);
      restore.focus();
    });
  }

  async #export(write, type, ending) {
    await this.#safely(async () => download(`brew-notebook.${ending}`, type, write(await entries())));
  }

  async #import(input) {
    const [file] = input.files;
    if (!file) return;
    await this.#safely(async () => {
      const text = await file.text();
      const read = fromFile(text, file.name.toLowerCase().endsWith(".csv"), await entries());
      if (read.wrong.length === 0) await put(read.entries);
      input.value = "";
      await this.#cameOrWent();
      this.#news.replaceChildren(
        ...(read.wrong.length === 0
          ? [h("p", {}, SAID.imported(read.entries.length, read.known))]
          : refusedFile(read.wrong)),
      );
    });
  }

  async #cameOrWent() {
    await this.show();
    this.#changed();
  }

  async #safely(work) {
    try {
      await work();
      return true;
    } catch {
      this.#news.replaceChildren(h("p", { class: "error" }, SAID.noDatabase));
      return false;
    }
  }
}

/** Why a file was not taken. */
export const refusedFile = (wrong) => [
  h("p", { class: "error" }, SAID.refused),
  h(
    "ul",
    { class: "error" },
    wrong.slice(0, MOST_SHOWN).map((text) => h("li", {}, text)),
    wrong.length > MOST_SHOWN && h("li", {}, SAID.wrong.more(wrong.length - MOST_SHOWN)),
  ),
];
