// The calculator as a page of its own: its frame, its address, its life without a network.

import words from "../words.en.js";
import { Calculator, loaded } from "./calculator.js";
import { h } from "./element.js";
import { fromFragment } from "./link.js";

const news = h("p", { class: "news", role: "status" });
const main = h("main", {}, news);
let calculator;

function frame() {
  const stop = ([id, name]) => h("li", {}, h("button", { type: "button", onclick: () => calculator?.goTo(id) }, name));
  document.documentElement.lang = words.language;
  document.title = `${words.title} · ${words.cafe}`;
  document.body.replaceChildren(
    h("a", { class: "skip", href: "#ticket" }, words.skip),
    h(
      "header",
      { class: "board" },
      h("div", {}, h("p", { class: "cafe" }, words.cafe), h("h1", {}, words.title)),
      h("p", { class: "lead" }, words.lead),
    ),
    h("nav", { class: "rail", "aria-label": words.steps }, h("ul", {}, Object.entries(words.places).map(stop))),
    main,
    h("footer", {}, h("p", {}, words.invented), h("p", {}, words.ticket.local)),
  );
}

const surroundings = {
  link: (fragment) => {
    history.replaceState(null, "", fragment);
    return location.href;
  },
  // A link no longer tells what stands on the page once that is edited.
  edited: () => location.hash && history.replaceState(null, "", location.pathname + location.search),
  print: { name: words.ticket.print, act: () => window.print() },
};

function takeLink() {
  if (location.hash.includes("=")) calculator.take(fromFragment(location.hash));
}

async function open() {
  frame();
  try {
    await loaded();
  } catch (error) {
    news.textContent = words.noStart;
    throw error;
  }
  calculator = new Calculator(surroundings);
  main.replaceChildren(calculator.element);
  takeLink();
  addEventListener("hashchange", takeLink);
  // Kept brews should outlast a full disk; a browser that declines still keeps them for now.
  navigator.storage?.persist?.();
  // Without a worker the page needs the network and is the same.
  if ("serviceWorker" in navigator) navigator.serviceWorker.register("service-worker.js").catch(() => {});
}

open();
