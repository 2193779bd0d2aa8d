// node chromium.js NODE_PACKAGES FOLDER PAGE: the findings of a page that checks every case.

import { inChromium } from "./browser.js";

const [packages, folder, page] = process.argv.slice(2);
await inChromium(packages, folder, async (open) => {
  const { findings, errors, agent } = await open(page);
  const { count, of, wrong } = findings;
  for (const words of [...errors, ...wrong]) console.error(words);
  console.log(`${agent}: ${count} ${of}, ${wrong.length} wrong`);
  process.exitCode = wrong.length + errors.length === 0 && count > 0 ? 0 : 1;
});
