// node scattered-node.js PACKAGE PLANS: the module of a folder at scattered inputs, and whether a wrong bit is seen.

import { readFileSync } from "node:fs";
import { join } from "node:path";

import { check } from "./scattered.js";

const [folder, path] = process.argv.slice(2);
const { exports } = new WebAssembly.Instance(new WebAssembly.Module(readFileSync(join(folder, "cupwright.wasm"))));
const plans = JSON.parse(readFileSync(path, "utf8"));

/** The module with one wrong bit: in the first number that a function answers after so many calls. */
function faulty(name, after) {
  let [calls, done] = [0, false];
  const call = (...args) => {
    const status = exports[name](...args);
    calls += 1;
    if (calls > after && status === 0 && !done) {
      const [answer] = args.slice(-2);
      new Uint8Array(exports.memory.buffer)[answer] ^= 1;
      done = true;
    }
    return status;
  };
  return { ...exports, [name]: call };
}

const { count, of, wrong } = check(exports, plans);
// Behind all points of boards, which do not see it.
const [plan] = plans.filter(({ all, onBoards }) => onBoards.points < all.points);
const seen = (share) => check(faulty(plan.name, plan.onBoards.points), [plan], share).wrong.length;
if (seen("onBoards") !== 0 || seen("all") !== 1) {
  wrong.push(`${plan.id}: a wrong bit after ${plan.onBoards.points} inputs is not seen`);
}
for (const words of wrong) console.error(words);
console.log(`${count} ${of}, ${wrong.length} wrong`);
process.exitCode = wrong.length === 0 && count > 0 ? 0 : 1;
