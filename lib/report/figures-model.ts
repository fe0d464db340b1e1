import type { Link, TableModel } from "./basic-model";

/** Every number that went into a verdict, and how to check it. */
export interface FiguresPart {
  /** The way to the verdict, a sentence a step. */
  readonly steps: readonly string[];
  readonly figures: TableModel;
  /** Each look with its evidence; null: there was none yet. */
  readonly looks: TableModel | null;
  /** How an outsider comes to the same numbers. */
  readonly check: string;
  readonly links: readonly Link[];
}

/** A noise model as it is told: what it was learned from, and until when. */
export interface ToldNoise {
  readonly name: string;
  readonly kind: "learned" | "start";
  readonly learnedFrom: number;
  /** Day of the last reading that it was learned from; empty: none. */
  readonly learnedUpTo: string;
}

/** What the figures rest on beside the verdict. */
export interface FiguresSource {
  /** Models that the track's looks name, oldest first. */
  readonly noise: readonly ToldNoise[];
  /** Reader's error in force at the last look; `number` null: customary. */
  readonly reader: { readonly readerSd: number; readonly offsetSd: number; readonly number: number | null };
}
