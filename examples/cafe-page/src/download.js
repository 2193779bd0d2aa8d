// Hands a file to the browser's downloads.

import { h } from "./element.js";

export function download(name, type, text) {
  const address = URL.createObjectURL(new Blob([text], { type }));
  h("a", { href: address, download: name }).click();
  // The download has its own hold on the file once it has begun.
  setTimeout(() => URL.revokeObjectURL(address), 10_000);
}
