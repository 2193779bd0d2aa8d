// node in-chromium.js NODE_PACKAGES FOLDER ANSWER: the bundled pages and those without a build step must find
// the answer, whose bits are given.

import assert from "node:assert/strict";

import { inChromium, POLICY } from "../browser.js";

const [packages, folder, answer] = process.argv.slice(2);

await inChromium(packages, folder, async (open) => {
  for (const project of ["at-once", "slim"]) {
    for (const bundler of ["vite", "webpack"]) {
      const { findings, errors } = await open(`${project}/${bundler}/index.html`);
      assert.deepEqual([findings, errors], [answer, []], `${bundler}, ${project}`);
      console.log(`${bundler}, ${project}: ${findings}`);
    }
  }
  const forbidding = POLICY.replace(" 'wasm-unsafe-eval'", "");
  assert.notEqual(forbidding, POLICY);
  for (const entry of ["?at-once", "?slim"]) {
    const { findings, errors } = await open(`page/index.html${entry}`);
    assert.deepEqual([findings, errors], [[answer, answer], []], entry);
    console.log(`a page and its worker without a build step, ${entry}: ${findings}`);

    const refused = await open(`page/index.html${entry}`, forbidding);
    for (const words of refused.findings) {
      assert.match(words, /^(CompileError|EvalError): .*(unsafe-eval|Content Security Policy)/s, entry);
    }
    console.log(`the same without 'wasm-unsafe-eval', ${entry}: ${refused.findings[0]}`);
  }
});
