// A scale that is watched and a brew that is followed. Their states are kept here, in JavaScript, and lent to the
// module for each call: it keeps nothing, and a state can be copied, stored and brought back.

import {
  answer, answered, base, bytes, bytesAt, items, number, put, putBytes, putEach, readFrom, record,
} from "./call.js";
import {
  FOLLOWER,
  FOLLOWER_BYTES,
  INTENDED_DOUBLES,
  LIVE_STEP_FIELDS,
  SCALE,
  SCALE_BYTES,
  SETUP_DOUBLES,
  STATE_AT,
  STEP_DOUBLES,
  STEP_NUMBERS,
  WINDOW_DOUBLES,
  cupwrightFollowAccount,
  cupwrightFollowBegin,
  cupwrightFollowFromBytes,
  cupwrightFollowGoOn,
  cupwrightFollowOutlook,
  cupwrightFollowSetBeverage,
  cupwrightFollowSetDose,
  cupwrightFollowSetLead,
  cupwrightFollowTake,
  cupwrightFollowToBytes,
  cupwrightFollowWeighed,
  cupwrightFollowZeroed,
  cupwrightLiveAccount,
  cupwrightLiveBegin,
  cupwrightLiveCountAnew,
  cupwrightLiveFromBytes,
  cupwrightLiveTake,
  cupwrightLiveToBytes,
  cupwrightLiveZeroed,
  getLiveAccounts,
  getLiveNow,
  getLiveSeen,
  getLiveWeighed,
  getOutlook,
  takeIntended,
  takeLiveSetup,
  takeLiveStep,
  takeWindow,
} from "./functions.js";

/** Where what goes with a state is lent: a setup, a recipe, a brew as it was meant, after the base: behind the longest state. */
const BEHIND = STATE_AT + FOLLOWER;

const WINDOW_AT = BEHIND + 8 * INTENDED_DOUBLES;

const OUTLOOK = new Set(["intended", "window"]);
const READING = new Set(["clock_s", "reading_g"]);

/** The only option of a call. */
function only(o, name) {
  const fields = new Set([name]);
  record(o, 1, fields, "options");
  return readFrom(o, fields, () => number(o[name], name));
}

/** What a scale's display says, and when. */
function readingOf(o) {
  record(o, 2, READING, "options");
  return readFrom(o, READING, () => [number(o.clock_s, "clock_s"), number(o.reading_g, "reading_g")]);
}

/** A state in JavaScript's memory. A call that is refused leaves it as it was. */
class Kept {
  #state;

  constructor(state) {
    this.#state = state;
  }

  /** Lends the state to a call, with a recipe or without, and keeps what becomes of it. */
  lend(call, recipe) {
    const at = putBytes(this.#state, STATE_AT);
    answered(call(at), "recipe", recipe, LIVE_STEP_FIELDS);
    this.#state = bytesAt(at, this.#state.length);
  }
}

/** The state that a function begins with a setup. */
function begun(setup, size, begin) {
  const at = put(takeLiveSetup(setup, "setup"), BEHIND, SETUP_DOUBLES);
  // Nothing of another call is to be left in it.
  putBytes(new Uint8Array(size), STATE_AT);
  answered(begin(at, base + STATE_AT, base));
  return bytesAt(base + STATE_AT, size);
}

/** A state from bytes that were kept of it. */
function restored(kept, most, size, open) {
  const { count, values } = bytes(kept, "bytes", most);
  answered(open(putBytes(values, BEHIND), count, base + STATE_AT, base));
  return bytesAt(base + STATE_AT, size);
}

class Scale extends Kept {
  take(o) {
    const [clock, reading] = readingOf(o);
    this.lend((at) => cupwrightLiveTake(at, clock, reading, answer, base));
    return getLiveSeen(answer);
  }

  zeroed(o) {
    const change = only(o, "change_g");
    this.lend((at) => cupwrightLiveZeroed(at, change, base));
  }

  countAnew() {
    this.lend((at) => cupwrightLiveCountAnew(at, base));
  }

  account() {
    this.lend((at) => cupwrightLiveAccount(at, answer, base));
    return getLiveAccounts(answer);
  }

  get state() {
    this.lend((at) => cupwrightLiveToBytes(at, answer, base));
    return bytesAt(answer, SCALE_BYTES);
  }
}

class Follower extends Kept {
  #recipe;

  constructor(state, recipe) {
    super(state);
    this.#recipe = recipe;
  }

  take(o) {
    const [clock, reading] = readingOf(o);
    const { count, values } = this.#recipe;
    const steps = putEach(values, BEHIND, STEP_DOUBLES, STEP_NUMBERS);
    this.lend((at) => cupwrightFollowTake(at, steps, count, clock, reading, answer, base), this.#recipe);
    return getLiveNow(answer);
  }

  goOn() {
    this.lend((at) => cupwrightFollowGoOn(at, base));
  }

  zeroed(o) {
    const change = only(o, "change_g");
    this.lend((at) => cupwrightFollowZeroed(at, change, base));
  }

  setDose(o) {
    const dose = only(o, "dose_g");
    this.lend((at) => cupwrightFollowSetDose(at, dose, base));
  }

  setBeverage(o) {
    const beverage = only(o, "beverage_g");
    this.lend((at) => cupwrightFollowSetBeverage(at, beverage, base));
  }

  setLead(o) {
    const lead = only(o, "lead_s");
    this.lend((at) => cupwrightFollowSetLead(at, lead, base));
  }

  weighed() {
    this.lend((at) => cupwrightFollowWeighed(at, answer, base));
    return getLiveWeighed(answer);
  }

  account() {
    this.lend((at) => cupwrightFollowAccount(at, answer, base));
    return getLiveAccounts(answer);
  }

  outlook(o) {
    record(o, 2, OUTLOOK, "options");
    const [intended, window] = readFrom(o, OUTLOOK, () => [
      takeIntended(o.intended, "intended"),
      takeWindow(o.window, "window"),
    ]);
    const meant = put(intended, BEHIND, INTENDED_DOUBLES);
    const wanted = put(window, WINDOW_AT, WINDOW_DOUBLES);
    this.lend((at) => cupwrightFollowOutlook(at, meant, wanted, answer, base));
    return getOutlook(answer);
  }

  get state() {
    this.lend((at) => cupwrightFollowToBytes(at, answer, base));
    return bytesAt(answer, FOLLOWER_BYTES);
  }
}

const steps = (recipe) => items(recipe, "recipe", takeLiveStep);

const scale = (setup) => new Scale(begun(setup, SCALE, cupwrightLiveBegin));
scale.from = (kept) => new Scale(restored(kept, SCALE_BYTES, SCALE, cupwrightLiveFromBytes));

const follower = (setup, recipe) => {
  const taken = steps(recipe);
  return new Follower(begun(setup, FOLLOWER, cupwrightFollowBegin), taken);
};
follower.from = (kept, recipe) => {
  const taken = steps(recipe);
  return new Follower(restored(kept, FOLLOWER_BYTES, FOLLOWER, cupwrightFollowFromBytes), taken);
};

export const live = Object.freeze({ scale: Object.freeze(scale), follower: Object.freeze(follower) });
