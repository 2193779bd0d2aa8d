import type {
  Intended,
  LiveAccounts,
  LiveNow,
  LiveSeen,
  LiveSetup,
  LiveStep,
  LiveWeighed,
  Outlook,
  Window,
} from "./index.js";

/** A reading of a scale. */
export interface Reading {
  /** When it was taken, on a clock that only goes forward: `performance.now() / 1000`, for example. */
  clock_s: number;
  /** What the scale reads. */
  reading_g: number;
}

/** A scale that is being watched. */
export interface Scale {
  /**
   * Takes the next reading: five to a hundred a second, at uneven times and with gaps.
   *
   * @throws {@link Refusal} For an input that is not accepted, NaN as well: leave that reading out, the state is as it
   * was. With `impossible` for a clock that does not go forward, with `result_out_of_range` after years of pouring.
   */
  take(reading: Reading): LiveSeen;
  /** Tells that readings are lower by so much from the next one on, because the display was set to zero. */
  zeroed(options: { change_g: number }): void;
  /** Counts water from here on: what was poured so far is weight like any other. */
  countAnew(): void;
  /** Where all changes of the reading are put down. */
  account(): LiveAccounts;
  /** The state as bytes, sealed and the same everywhere: for a store, for another thread, for `live.scale.from()`. */
  readonly state: Uint8Array;
}

/** A brew that is being followed. */
export interface Follower {
  /**
   * Takes the next reading, and tells what to do.
   *
   * @throws {@link Refusal} As {@link Scale.take}, and for a recipe whose numbers are not accepted.
   */
  take(reading: Reading): LiveNow;
  /** Goes on to the next step: a button was pressed. */
  goOn(): void;
  /** Tells that readings are lower by so much from the next one on, because the display was set to zero. */
  zeroed(options: { change_g: number }): void;
  /** Tells the dose, where it was weighed elsewhere. In a step that weighs coffee the scale has the last word: `goOn()` first. */
  setDose(options: { dose_g: number }): void;
  /** Tells the beverage, where it was weighed elsewhere. */
  setBeverage(options: { beverage_g: number }): void;
  /** Sets how long before the water is reached the cue to stop comes, for a hand that is known. */
  setLead(options: { lead_s: number }): void;
  /** What was weighed and learned so far. */
  weighed(): LiveWeighed;
  /** Where all changes of the reading are put down. */
  account(): LiveAccounts;
  /**
   * What the brew will be if nothing more is poured, and the chance that it lies in a window: `forecast.outlook()` with
   * the dose and the water that are there by now. The dose meant counts until one is weighed; how surely the water is
   * known comes from the scale.
   *
   * @throws {@link Refusal} With `result_out_of_range` for water that is no brew water yet, and as
   * `forecast.outlook()`.
   */
  outlook(options: { intended: Intended; window: Window }): Outlook;
  /** The state as bytes, sealed and the same everywhere: for a store, for another thread, for `live.follower.from()`. */
  readonly state: Uint8Array;
}

/** A scale that is watched while someone brews on it, and a brew that is followed. */
export const live: {
  readonly scale: {
    /** Begins to watch a scale. The first reading is taken for what lies on it. */
    (setup: LiveSetup): Scale;
    /**
     * Goes on with a scale's state. The clock must have gone on meanwhile.
     *
     * @throws {@link Refusal} With `unreadable` for bytes that are no state of a scale, or a damaged one.
     */
    from(bytes: Uint8Array): Scale;
  };
  readonly follower: {
    /** Begins to follow a brew, at the first step of its recipe: 24 at most, and there may be none. */
    (setup: LiveSetup, recipe: LiveStep[]): Follower;
    /**
     * Goes on with a follower's state, and the same recipe. The clock must have gone on meanwhile.
     *
     * @throws {@link Refusal} With `unreadable` for bytes that are no state of a follower, or a damaged one.
     */
    from(bytes: Uint8Array, recipe: LiveStep[]): Follower;
  };
};
