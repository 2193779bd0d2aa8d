import type { Losses, Window } from "./index.js";

/** A column that is read: an array, or a number that is every row's. Bad numbers may be among them, and NaN. */
export type Column = Float64Array | number;

/** Statuses of rows. */
export interface Statuses {
  /**
   * What became of each row: 0 (`columns.ANSWERED`); from 1 on the first input that is not accepted, counted in
   * the order in which the function's type names its columns; 255 (`columns.NO_ANSWER`) where every input is accepted, but
   * nothing possible follows.
   */
  status: Uint8Array;
}

/** How it went. */
export interface Refused {
  /** How many rows have no answer. */
  refused: number;
}

/**
 * A function on columns: its inputs, its answers, and arrays of one's own for them, as long as the columns. An array of
 * one's own may be an input itself, but none that overlaps one otherwise.
 */
export type OnColumns<Inputs, Answers> = (options: Inputs, into?: Answers & Statuses) => Answers & Statuses & Refused;

/** Where cups stand in a window; 0 and NaN for a row that is refused, and for a yield where the window has none. */
export interface Standings {
  /** Below (1), inside (2) or above (3). */
  strength_side: Uint8Array;
  /** Distance above the lowest edge. */
  strength_above_lowest: Float64Array;
  /** Distance below the highest edge. */
  strength_below_highest: Float64Array;
  /** Distance above the centre. */
  strength_above_centre: Float64Array;
  /** Below (1), inside (2) or above (3). */
  yield_side: Uint8Array;
  /** Distance above the lowest edge. */
  yield_above_lowest: Float64Array;
  /** Distance below the highest edge. */
  yield_below_highest: Float64Array;
  /** Distance above the centre. */
  yield_above_centre: Float64Array;
}

/**
 * The main formulas on whole columns, with the same bits as a row at a time. A row that is refused has NaN for an answer and
 * a status that says why; the function for one row, called with its numbers, throws the {@link Refusal} in full.
 *
 * All throw a {@link Refusal} with `wrong_type` for columns of different lengths, before anything is written.
 */
export const columns: {
  /** The status of a row that is answered. */
  readonly ANSWERED: 0;
  /** The status of a row of which nothing possible follows. */
  readonly NO_ANSWER: 255;
  /** `extraction.flowThroughYield()` of every row, E = T B/D. */
  readonly flowThroughYield: OnColumns<
    {
      /** Strength, %. */
      strength_pct: Column;
      /** Beverage, g. */
      beverage_g: Column;
      /** Dose as weighed, g. */
      dose_g: Column;
    },
    { yield_pct: Float64Array }
  >;
  /** `extraction.flowThroughStrength()` of every row, T = E D/B. */
  readonly flowThroughStrength: OnColumns<
    {
      /** Extraction yield, %. */
      yield_pct: Column;
      /** Beverage, g. */
      beverage_g: Column;
      /** Dose as weighed, g. */
      dose_g: Column;
    },
    { strength_pct: Float64Array }
  >;
  /** `extraction.steepedYield()` of every row, E = (W/D) T/(1 − T). */
  readonly steepedYield: OnColumns<
    {
      /** Strength, %. */
      strength_pct: Column;
      /** Brew water, g. */
      water_g: Column;
      /** Dose as weighed, g. */
      dose_g: Column;
    },
    { yield_pct: Float64Array }
  >;
  /** `extraction.extractionYield()` of every row: the whole mass balance. */
  readonly extractionYield: OnColumns<
    {
      /** Dose as weighed, g. */
      dose_g: Column;
      /** Brew water, g. */
      water_g: Column;
      /** Beverage, g. */
      beverage_g: Column;
      /** Moisture of the dose, %. */
      moisture_pct: Column;
      /** Solids of the water, mg/L. */
      water_solids_mg_per_l: Column;
      /** Vapour lost, g. */
      vapour_g: Column;
      /** Strength of the liquid kept, relative to the beverage, %. */
      held_strength_pct: Column;
      /** Strength, %. */
      strength_pct: Column;
    },
    { yield_pct: Float64Array }
  >;
  /** `ratio.waterRatio()` of every row, R = W/D. */
  readonly waterRatio: OnColumns<
    {
      /** Dose as weighed, g. */
      dose_g: Column;
      /** Brew water, g. */
      water_g: Column;
    },
    { water_ratio_g_per_g: Float64Array }
  >;
  /** `dilution.waterToReach()` of every row, A = B (T − T')/(T' − s). */
  readonly waterToReach: OnColumns<
    {
      /** Beverage, g. */
      beverage_g: Column;
      /** Strength, %. */
      strength_pct: Column;
      /** Strength wanted, %. */
      wanted_pct: Column;
      /** Solids of the water, mg/L. */
      water_solids_mg_per_l: Column;
    },
    { added_g: Float64Array }
  >;
  /** `reading.strengthOfBrix()` of every row, T = k B, with one factor. */
  readonly strengthOfBrix: OnColumns<
    {
      /** Factor of all rows, % per °Bx. */
      refractive_factor_pct_per_brix: number;
      /** Reading at 20 °C, °Bx. */
      brix: Column;
    },
    { strength_pct: Float64Array }
  >;
  /** `retention.beverage()` of every row, with one brewer's losses. */
  readonly beverage: OnColumns<
    {
      /** The losses of all rows. */
      losses: Losses;
      /** Dose as weighed, g. */
      dose_g: Column;
      /** Brew water, g. */
      water_g: Column;
    },
    { beverage_g: Float64Array }
  >;
  /** `verdict.stand()` of every row. The yield must be counted as the window counts it. */
  readonly stand: OnColumns<
    {
      /** The window of all rows. */
      window: Window;
      /** Strength, %. */
      strength_pct: Column;
      /** Extraction yield, %; looked at even where the window has none. */
      yield_pct: Column;
    },
    Standings
  >;
};
