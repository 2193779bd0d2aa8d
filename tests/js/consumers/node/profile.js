// node profile.js: a profile to bytes and back, and bytes that are none.

import assert from "node:assert/strict";

import { calibrate, profile, Refusal, uncertainty } from "cupwright";

// Invented samples.
const samples = [
  { brix: 1.42, strength_pct: 1.214 },
  { brix: 1.66, strength_pct: 1.402 },
];
const fitted = calibrate.refractiveFactor({ samples });
const mine = {
  version: 1,
  refractive_factor_pct_per_brix: {
    value: fitted.refractive_factor_pct_per_brix,
    u: fitted.u_factor_pct,
    degrees_of_freedom: fitted.quality.degrees_of_freedom,
  },
  retention_correlation: -0.96,
};
const { bytes } = profile.toBytes({ profile: mine });
assert.equal(bytes.length, 368);
assert.equal(String.fromCharCode(...bytes.subarray(0, 4)), "CUPW");
const back = profile.fromBytes({ bytes });
const given = Object.entries(back).filter(([, value]) => value !== null);
assert.deepEqual(Object.fromEntries(given), mine);
assert.equal(Object.keys(back).length, 21);
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
  message: "bytes: not as many bytes as there should be",
});
refused(() => profile.fromBytes({ bytes: [...bytes] }), { code: "wrong_type", field: "bytes" });
refused(() => profile.fromBytes({}), { code: "missing", field: "bytes" });
const spoilt = { version: 1, cup_j_per_k: { value: 120, u: -1, degrees_of_freedom: 2 } };
refused(() => profile.toBytes({ profile: spoilt }), {
  code: "out_of_range",
  field: "cup_j_per_k",
  quantity: "heat_capacity_uncertainty",
});
refused(() => profile.toBytes({ profile: { version: 1, cup: null } }), { code: "unknown_field", field: "cup" });
refused(() => profile.toBytes({ profile: {} }), { code: "missing", field: "version" });
refused(() => profile.toBytes({ profile: { version: 2 } }), {
  code: "unreadable",
  field: "version",
  why: "version",
  message: "version: 2, and only 1 is known",
});

// From fits to bytes and back: what is read answers as the fits do.
const nothing = { version: 1 };
const brews = [
  [12, 192, 164.1],
  [15, 240, 205.4],
  [20, 320, 276.6],
  [30, 480, 414.4],
].map(([dose_g, water_g, beverage_g]) => ({ dose_g, water_g, beverage_g, vapour_g: 0 }));
const yields = [
  [3, 5.02],
  [6, 8.12],
  [12, 10.73],
  [25, 12.6],
  [50, 14.41],
  [100, 17.1],
  [200, 19.6],
  [400, 20.96],
].map(([contact_s, yield_pct]) => ({ contact_s, yield_pct }));
const line = calibrate.retentionLine({ brews });
const law = calibrate.twoRates({ yields });
let kept = profile.keepRefractiveFactor({ profile: nothing, fitted });
assert.deepEqual(kept.refractive_factor_pct_per_brix, mine.refractive_factor_pct_per_brix);
kept = profile.keepRetentionLine({ profile: kept, line });
kept = profile.keepTwoRates({ profile: kept, law });
kept = profile.fromBytes(profile.toBytes({ profile: kept }));
assert.deepEqual(JSON.parse(JSON.stringify(kept)), kept);
assert.deepEqual(
  profile.expectedBeverage({ profile: kept, dose_g: 18, water_g: 290, vapour_g: 0 }),
  calibrate.expectedBeverage({ brews, next_dose_g: 18, next_water_g: 290, next_vapour_g: 0 }),
);
const rates = profile.rates({ profile: kept });
assert.equal(rates.u_ln_slow_time, law.u_ln_slow_time);
const means = profile.means({ profile: kept, water_c: 93 });
assert.deepEqual([means.rates, means.chamber, means.milk], [rates, null, false]);
assert.equal(means.kept.hold_up_g, line.fitted_hold_up_g);
const contact = { time_s: 120, u_time_s: 2, nu_time: 1e9 };
const plateau = profile.plateau({ profile: kept });
const budget = uncertainty.yieldAtTime({ rates, plateau, contact });
assert(budget.u < law.u_equilibrium_yield_pct && budget.terms.length === 2);
// One rate after two leaves nothing of them.
kept = profile.keepOneRate({ profile: kept, law: calibrate.oneRate({ yields: yields.slice(3) }) });
assert.deepEqual([kept.slow_time_s, kept.correlation_share_slow], [null, null]);
const retention = calibrate.retention({ brews });
kept = profile.keepRetention({ profile: kept, fitted: retention });
assert.equal(kept.fitted_hold_up_g, null);
refused(() => profile.expectedBeverage({ profile: nothing, dose_g: 18, water_g: 290, vapour_g: 0 }), {
  code: "not_kept",
  field: "apparent_retention_g_per_g",
  message: "apparent_retention_g_per_g: the profile has none",
});
refused(() => profile.keepRetentionLine({ profile: nothing, line: { ...line, covariance_g2_per_g: Number.NaN } }), {
  code: "out_of_range",
  field: "covariance_g2_per_g",
});
refused(() => profile.keepTwoRates({ profile: nothing, law: { ...law, covariance: [[1]] } }), {
  code: "wrong_type",
  field: "covariance",
});
console.log("a profile comes back from its bytes, and no others are one");
