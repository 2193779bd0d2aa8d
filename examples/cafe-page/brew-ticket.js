// The calculator as an element of any page: <brew-ticket></brew-ticket>. Its looks come from theme.css, which the page
// outranks with its own values: brew-ticket { --wall: … }.

import { Calculator, loaded } from "./src/calculator.js";
import { h } from "./src/element.js";
import words from "./words.en.js";

const beside = (path) => new URL(path, import.meta.url).href;

/** A style sheet by its address, as strict policies want it, and a promise that is kept when it is there. */
function sheet(path) {
  const link = h("link", { rel: "stylesheet", href: beside(path) });
  return [link, new Promise((settle) => ["load", "error"].forEach((event) => link.addEventListener(event, settle)))];
}

const page = (fragment) => beside(`./${fragment}`);

const surroundings = {
  edited: () => {},
  link: page,
  print: { name: words.ticket.printable, act: (fragment) => window.open(page(fragment), "_blank", "noopener") },
};

class BrewTicket extends HTMLElement {
  #root = this.attachShadow({ mode: "open" });
  #calculator = null;

  async connectedCallback() {
    const [theme, themed] = sheet("theme.css");
    const [looks, looked] = sheet("calculator.css");
    const place = h("div", { lang: words.language }, h("p", { class: "quiet", role: "status" }, words.loading));
    this.#root.replaceChildren(theme, looks, place);
    try {
      await Promise.all([loaded(), themed, looked]);
    } catch (error) {
      place.replaceChildren(h("p", { class: "error", role: "alert" }, words.noStart));
      throw error;
    }
    // It may have been moved or taken away meanwhile.
    if (!place.isConnected) return;
    this.#calculator = new Calculator(surroundings);
    place.replaceChildren(this.#calculator.element);
  }

  disconnectedCallback() {
    this.#calculator?.stop();
    this.#calculator = null;
    this.#root.replaceChildren();
  }
}

customElements.define("brew-ticket", BrewTicket);
