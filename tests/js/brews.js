// Brews on a scale through the package, each reading's answers compared with the core's by a hash over their
// bits. The lines are those that the driver in C reads: crates/xtask/src/brews.rs.

const buffer = new DataView(new ArrayBuffer(8));

function ofBits(word) {
  buffer.setBigUint64(0, BigInt(`0x${word}`));
  return buffer.getFloat64(0);
}

function bitsOf(number) {
  buffer.setFloat64(0, number);
  return buffer.getBigUint64(0);
}

/** Words by the codes of the C interface. */
const DOING = [null, "still", "pouring", "settling", "dripping", "disturbed", "pressed", "overloaded"];
const HAPPENING = [
  null, "pour_started", "pour_stopped", "settled", "drip_started", "drip_stopped", "tared", "placed", "lifted",
  "returned", "unclear", "disturbed", "pressed", "released", "overloaded", "lost", "drifted", "restless",
];
const CUE = ["nothing", "rinse", "add_coffee", "pour", "stop_pouring", "stir", "wait", "press", "weigh_beverage"];
const WHY = [null, "next", "time", "early", "lead", "enough", "too_much", "missing", "unclear", "done"];
const STEPS = [null, "rinse", "dose", "pour", "stir", "wait", "press", "beverage"];

/** A hash over bits. */
class Hash {
  value = 0n;

  put(bits) {
    const turned = BigInt.asUintN(64, this.value << 5n) | (this.value >> 59n);
    this.value = BigInt.asUintN(64, (turned ^ bits) * 0x517cc1b727220a95n);
  }

  number(number) {
    this.put(bitsOf(number));
  }

  perhaps(number) {
    this.put(number === null ? 0n : 1n);
    this.number(number ?? 0);
  }

  code(word, words) {
    this.put(BigInt(words.indexOf(word)));
  }

  seen(seen) {
    this.number(seen.level_g);
    this.perhaps(seen.flow_g_per_s);
    this.number(seen.poured_g);
    this.number(seen.unclear_g);
    this.code(seen.doing, DOING);
    this.code(seen.event, HAPPENING);
    this.number(seen.event_clock_s ?? 0);
    this.number(seen.event_change_g ?? 0);
  }

  now(now) {
    this.seen(now.seen);
    this.put(BigInt(now.step));
    this.code(now.cue, CUE);
    this.code(now.why, WHY);
    for (const field of ["to_pour_g", "to_wait_s", "ratio_g_per_g", "brewing_s", "flow_variation_pct"]) {
      this.perhaps(now[field]);
    }
  }

  account(account) {
    for (const field of ["poured_g", "moved_g", "tared_g", "drifted_g", "unclear_g", "under_way_g", "u_poured_g"]) {
      this.number(account[field]);
    }
  }

  /** What the brew will be, or how that is refused. */
  outlook(library, follower) {
    const { window } = library.windows.home_brewer_2018;
    let outlook;
    const refused = refusal(library, () => (outlook = follower.outlook({ intended: MEANT, window })));
    if (refused) return this.put(refused.code === "result_out_of_range" ? RESULT_OUT_OF_RANGE : -1n);
    this.put(0n);
    for (const field of OUTLOOK) this.number(outlook[field]);
  }
}

/** As good as known. */
const KNOWN = 1e9;

/** A brew as it was meant: that of crates/xtask/src/brews.rs. */
const MEANT = {
  dose: { dose_g: 15, u_dose_g: 0.0625, nu_dose: KNOWN },
  water: { water_g: 240, u_water_g: 2, nu_water: KNOWN },
  yield: { yield_pct: 20.5, u_yield_pct: 0.5, nu_yield: KNOWN },
  losses: {
    apparent_retention_g_per_g: 1.375, hold_up_g: 3, paper_g: 0, paper_uptake_g_per_g: 0, drips_g: 0, vapour_g: 0,
  },
  retention: { u_apparent_retention_g_per_g: 0.125, nu_apparent_retention: KNOWN },
  other: { u_losses_g: 1, nu_losses: KNOWN },
  moisture_pct: 1.75,
  water_solids_mg_per_l: 0,
  held_strength_pct: 100,
  portion: { portion_g: 190, u_portion_g: 0, nu_portion: KNOWN },
  added: { added_g: 0, u_added_g: 0, nu_added: KNOWN },
};

const RESULT_OUT_OF_RANGE = 5n;

const OUTLOOK = [
  "beverage_g", "u_beverage_g", "strength_pct", "u_strength_pct", "counted_yield_pct", "u_counted_yield_pct",
  "correlation", "inside_pct",
];

const [BEGIN, STEP, TAKE, REFUSED, ZEROED, COUNT_ANEW, GO_ON, KNOW, TOLD] = [1, 2, 3, 4, 5, 6, 7, 8, 9];

const CODES = ["ok", "out_of_range", "not_whole", "impossible"];

/** A step of a recipe from its numbers. */
function stepOf(step, a, b) {
  switch (step) {
    case "dose":
      return { step, dose_g: a };
    case "pour":
      return { step, to_g: a, from_s: b };
    case "stir":
      return { step, from_s: a };
    case "wait":
      return { step, until_s: a };
    case "beverage":
      return { step, vessel_g: a };
    default:
      return { step };
  }
}

/** What a call is refused with, or null. */
function refusal(library, call) {
  try {
    call();
    return null;
  } catch (thrown) {
    if (!(thrown instanceof library.Refusal)) throw thrown;
    return thrown;
  }
}

/** Plays all brews; what is wrong, and how many lines there were. Every fortieth reading, states go to a store
 * and back. */
export function play(library, text) {
  const { live } = library;
  const wrong = [];
  let setup, scale, follower;
  let recipe = [];
  let [brews, readings] = [0, 0];
  const lines = text.trim().split("\n");
  lines.forEach((line, at) => {
    const words = line.split(" ");
    const [operation, a, b, last] = [Number(words[0]), ofBits(words[1]), ofBits(words[2]), words[3]];
    const hash = new Hash();
    const expect = () => {
      if (hash.value !== BigInt(`0x${last}`)) wrong.push(`brew ${brews}, reading ${readings} differs`);
    };
    if (operation === BEGIN) {
      [brews, readings] = [brews + 1, 0];
      setup = { division_g: a, capacity_g: b, fastest_g_per_s: ofBits(last) };
      recipe = [];
      scale = live.scale(setup);
      follower = live.follower(setup, recipe);
    } else if (operation === STEP) {
      recipe.push(stepOf(STEPS[Number(`0x${last}`)], a, b));
      follower = live.follower(setup, recipe);
    } else if (operation === TAKE) {
      readings += 1;
      if (at % 40 === 0) {
        scale = live.scale.from(structuredClone(scale.state));
        follower = live.follower.from(structuredClone(follower.state), recipe);
      }
      hash.seen(scale.take({ clock_s: a, reading_g: b }));
      hash.now(follower.take({ clock_s: a, reading_g: b }));
      expect();
    } else if (operation === REFUSED) {
      readings += 1;
      for (const one of [scale, follower]) {
        const before = one.state;
        const code = refusal(library, () => one.take({ clock_s: a, reading_g: b }))?.code;
        const isAsBefore = one.state.every((byte, place) => byte === before[place]);
        if (code !== CODES[Number(`0x${last}`)] || !isAsBefore) wrong.push(`brew ${brews}, reading ${readings} differs: ${code}`);
      }
    } else if (operation === ZEROED) {
      scale.zeroed({ change_g: a });
      follower.zeroed({ change_g: a });
    } else if (operation === COUNT_ANEW) {
      scale.countAnew();
    } else if (operation === GO_ON) {
      follower.goOn();
    } else if (operation === KNOW) {
      follower.setDose({ dose_g: a });
      follower.setBeverage({ beverage_g: b });
      follower.setLead({ lead_s: ofBits(last) });
    } else if (operation === TOLD) {
      hash.account(scale.account());
      hash.account(follower.account());
      const { dose_g, beverage_g, drips_g, lead_s } = follower.weighed();
      hash.perhaps(dose_g);
      hash.perhaps(beverage_g);
      hash.number(drips_g);
      hash.number(lead_s);
      hash.outlook(library, follower);
      expect();
    }
  });
  return { lines: lines.length, wrong: [...misused(library, setup), ...wrong].slice(0, 20) };
}

/** What is accepted and should not be. */
function misused(library, setup) {
  const { live } = library;
  const scale = live.scale(setup);
  const follower = live.follower(setup, []);
  const reading = { clock_s: 1, reading_g: 5 };
  const cases = [
    ["missing", "division_g", () => live.scale({ capacity_g: 2000, fastest_g_per_s: 15 })],
    ["missing", "setup", () => live.scale()],
    ["out_of_range", "capacity_g", () => live.scale({ ...setup, capacity_g: 0 })],
    ["missing", "recipe", () => live.follower(setup)],
    ["unknown_choice", "step", () => live.follower(setup, [{ step: "grind" }])],
    ["missing", "dose_g", () => live.follower(setup, [{ step: "dose" }])],
    ["wrong_type", "reading_g", () => scale.take({ clock_s: 1, reading_g: "5" })],
    ["unknown_field", "mass_g", () => scale.take({ ...reading, mass_g: 5 })],
    ["out_of_range", "dose_g", () => follower.setDose({ dose_g: 0 })],
    ["missing", "lead_s", () => follower.setLead({})],
    ["out_of_range", "to_g", () => live.follower(setup, [{ step: "pour", to_g: 0, from_s: 0 }]).take(reading)],
    ["out_of_range", "count", () => live.follower(setup, Array(25).fill({ step: "press" })).take(reading)],
    ["missing", "window", () => follower.outlook({ intended: MEANT })],
    ["wrong_type", "bytes", () => live.scale.from([...scale.state])],
    ["unreadable", "bytes", () => live.scale.from(new Uint8Array(512))],
    ["unreadable", "bytes", () => live.scale.from(scale.state.slice(0, 500))],
    ["unreadable", "bytes", () => live.scale.from(scale.state.with(99, 7))],
    ["unreadable", "bytes", () => live.scale.from(follower.state)],
    ["unreadable", "bytes", () => live.follower.from(scale.state, [])],
  ];
  const wrong = [];
  for (const [words, texts] of [
    [DOING, library.doingTexts], [HAPPENING, library.happeningTexts], [STEPS, library.stepTexts],
    [CUE, library.cueTexts], [WHY, library.whyTexts],
  ]) {
    const known = words.filter((word) => word !== null);
    if (!known.every((word) => texts[word]) || Object.keys(texts).length !== known.length) wrong.push(`texts of ${known}`);
  }
  cases.forEach(([code, field, call], at) => {
    const { code: got, field: of } = refusal(library, call) ?? { code: "nothing", field: null };
    if (got !== code || of !== field) wrong.push(`misuse ${at}: ${got} of ${of}, not ${code} of ${field}`);
  });
  // A copy is a copy.
  scale.state.fill(0);
  if (scale.take(reading).level_g !== 5) wrong.push("a state was changed from outside");
  return wrong;
}
