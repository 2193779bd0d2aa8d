// node profile.js: a profile to bytes and back, and bytes that are none.

import assert from "node:assert/strict";

import { calibrate, profile, Refusal } from "cupwright";

// Invented samples.
const samples = [
  { brix: 1.42, strength_pct: 1.214 },
  { brix: 1.66, strength_pct: 1.402 },
];
const fitted = calibrate.refractiveFactor({ samples });
const mine = {
  refractive_factor_pct_per_brix: {
    value: fitted.refractive_factor_pct_per_brix,
    u: fitted.u_factor_pct,
    degrees_of_freedom: fitted.quality.degrees_of_freedom,
  },
  retention_correlation: -0.96,
};
const { bytes } = profile.toBytes({ profile: mine });
assert.equal(bytes.length, 312);
assert.equal(String.fromCharCode(...bytes.subarray(0, 4)), "CUPW");
const back = profile.fromBytes({ bytes });
const given = Object.entries(back).filter(([, value]) => value !== null);
assert.deepEqual(Object.fromEntries(given), mine);
assert.equal(Object.keys(back).length, 13);
assert.deepEqual(profile.toBytes({ profile: back }).bytes, bytes);

/** Checks what a call is refused with. */
function refused(call, facts) {
  assert.throws(call, (thrown) => {
    assert(thrown instanceof Refusal);
    for (const [name, value] of Object.entries(facts)) assert.equal(thrown[name], value, name);
    return true;
  });
}

for (let at = 0; at < bytes.length; at++) {
  const damaged = bytes.slice();
  damaged[at] ^= 4;
  refused(() => profile.fromBytes({ bytes: damaged }), { code: "unreadable", field: "bytes" });
}
const longer = new Uint8Array(100_000);
longer.set(bytes);
refused(() => profile.fromBytes({ bytes: longer }), { why: "length", value: 100_000, min: null, max: null });
refused(() => profile.fromBytes({ bytes: bytes.subarray(1) }), { why: "foreign", limit: null });
refused(() => profile.fromBytes({ bytes: new Uint8Array() }), {
  why: "length",
  message: "bytes: not as many as there should be",
});
refused(() => profile.fromBytes({ bytes: [...bytes] }), { code: "wrong_type", field: "bytes" });
refused(() => profile.fromBytes({}), { code: "missing", field: "bytes" });
const spoilt = { cup_j_per_k: { value: 120, u: -1, degrees_of_freedom: 2 } };
refused(() => profile.toBytes({ profile: spoilt }), {
  code: "out_of_range",
  field: "cup_j_per_k",
  quantity: "heat_capacity_uncertainty",
});
refused(() => profile.toBytes({ profile: { cup: null } }), { code: "unknown_field", field: "cup" });
console.log("a profile comes back from its bytes, and no others are one");
