import kept from "./measured.json";

/** What simulated seasons of one kind came to; shares are of `series`, unless said otherwise. */
export interface MeasuredSeason {
  readonly kind: "promised" | "beyond" | "changed";
  readonly series: number;
  /** Unchanged: ever called changed. Changed: before the change, or the wrong way first. */
  readonly falseWord: number;
  readonly found: number;
  /** Of those found. */
  readonly takenBack: number;
  /** Whether the level now, and the share inside, lay in their 95 of 100 intervals. */
  readonly level95: number;
  readonly share95: number;
}

/** What the roster's list came to over a season. */
export interface MeasuredList {
  readonly changing: number;
  readonly falseDiscoveries: number;
  readonly power: number;
  readonly studentsTold: number;
}

/** The last kept run of the calibration. */
export interface Measured {
  readonly date: string;
  readonly command: string;
  readonly policyVersion: string;
  readonly series: number;
  readonly academies: number;
  readonly seasons: Readonly<Record<string, MeasuredSeason>>;
  readonly lists: readonly MeasuredList[];
}

/** The figures that pages may quote, written by the calibration itself. */
export const MEASURED = kept as Measured;

/**
 * The figures of one kind of season.
 *
 * @throws RangeError on a kind that was not measured
 */
export function measuredSeason(name: string): MeasuredSeason {
  const found = MEASURED.seasons[name];
  if (found === undefined) throw new RangeError(`not measured: ${name}`);
  return found;
}
