import { dayNumber } from "@/lib/domain/calendar-day";
import type { ComparedTrack } from "@/lib/domain/compared-track";
import type { Policy } from "@/lib/verdict/policy";
import type { Episode } from "./episode";
import { findEquallyBad, findFirst, firstDrill } from "./find-episodes";
import { type ScoredSession, scoredTrack } from "./scored-track";

/** What the comparison rests on: one small record a student. */
export interface Gathered {
  readonly onDrills: readonly Episode[];
  /** After an equally bad run, without a drill. */
  readonly without: readonly Episode[];
  /** Names of all drills on file. */
  readonly drills: readonly string[];
  readonly leftOut: { readonly "no-before": number; readonly "no-after": number };
  /** Sd of one session's score about its neighbours, in the unit; null: no two sessions follow one another. */
  readonly unitSd: number | null;
  /** Smallest changes worth having that tracks state, in the unit. */
  readonly worthwhile: readonly number[];
}

/**
 * Gathers episodes from tracks that pass by twice, in the same order, so that none has to be kept: first `takeFirst` of
 * every track, then `takeWithout` of every track. One student has one episode: the one that began first.
 */
export class Gathering {
  readonly #policy: Policy;
  readonly #onDrills = new Map<string, Episode>();
  readonly #without = new Map<string, Episode>();
  readonly #drills = new Set<string>();
  readonly #lengths: number[] = [];
  readonly #runToEnds: number[] = [];
  readonly #depths: number[] = [];
  readonly #worthwhile: number[] = [];
  readonly #leftOut = { "no-before": 0, "no-after": 0 };
  #squares = 0;
  #steps = 0;
  #depth: number | null = null;
  #length: number | null = null;
  #runToEnd: number | null = null;

  constructor(policy: Policy) {
    this.#policy = policy;
  }

  /** The first pass: drills, and how bad runs were before them. */
  takeFirst(track: ComparedTrack): void {
    const sessions = scoredTrack(track, this.#policy);
    this.#countSteps(sessions);
    for (const { drill } of track.drills) this.#drills.add(drill);
    if (track.smallestWorthwhile !== undefined) this.#worthwhile.push(track.smallestWorthwhile);
    const first = firstDrill(track);
    if (first?.end !== undefined) {
      const start = dayNumber(first.start);
      const end = dayNumber(first.end);
      const run = sessions.findLast(({ day }) => day < start);
      this.#lengths.push(end - start);
      if (run !== undefined) this.#runToEnds.push(end - run.day);
    }
    const found = findFirst(track, sessions, null, this.#policy);
    if (found.kind === "left-out") this.#leftOut[found.why] += 1;
    if (found.kind !== "episode" || found.episode.drill === null) return;
    keepFirst(this.#onDrills, found.episode);
    const { run, earlier } = found.episode.score.before;
    if (earlier !== null) this.#depths.push(earlier.mean - run);
  }

  /** The second pass: who waited, and equally bad runs of those with nothing on file. */
  takeWithout(track: ComparedTrack): void {
    const sessions = scoredTrack(track, this.#policy);
    const depth = this.#depthBeforeDrills();
    const found = findFirst(track, sessions, this.#length, this.#policy);
    const episode =
      found.kind === "without"
        ? findEquallyBad(track, sessions, depth, this.#runToEnd, this.#policy)
        : episodeOf(found, depth);
    if (episode !== null) keepFirst(this.#without, episode);
  }

  /** What both passes found. */
  gathered(): Gathered {
    for (const [student, waited] of this.#without) {
      const drilled = this.#onDrills.get(student);
      if (drilled === undefined) continue;
      if (waited.start < drilled.start && waited.marked) this.#onDrills.delete(student);
      else this.#without.delete(student);
    }
    return {
      onDrills: [...this.#onDrills.values()],
      without: [...this.#without.values()],
      drills: [...this.#drills],
      leftOut: this.#leftOut,
      unitSd: this.#steps === 0 ? null : Math.sqrt(this.#squares / this.#steps / 2),
      worthwhile: this.#worthwhile,
    };
  }

  /** Neighbours differ by two sessions' noise and hardly by what lasts (von Neumann and others 1941). */
  #countSteps(sessions: readonly ScoredSession[]): void {
    for (const [at, { score }] of sessions.entries()) {
      const next = sessions[at + 1];
      if (next === undefined) continue;
      this.#squares += (next.score - score) ** 2;
      this.#steps += 1;
    }
  }

  #depthBeforeDrills(): number {
    if (this.#depth === null) {
      this.#depth = quantile(this.#depths, this.#policy.shallowest) ?? Number.NEGATIVE_INFINITY;
      this.#length = quantile(this.#lengths, 0.5);
      this.#runToEnd = quantile(this.#runToEnds, 0.5);
    }
    return this.#depth;
  }
}

/** A stretch marked as waiting counts where its run was equally bad, or its history is too short to say. */
function episodeOf(found: ReturnType<typeof findFirst>, depth: number): Episode | null {
  if (found.kind !== "episode" || found.episode.drill !== null) return null;
  const { run, earlier } = found.episode.score.before;
  return earlier === null || earlier.mean - run >= depth ? found.episode : null;
}

function keepFirst(kept: Map<string, Episode>, episode: Episode): void {
  const before = kept.get(episode.student);
  if (before === undefined || episode.start < before.start) kept.set(episode.student, episode);
}

/** The value at a share of the sorted values, the lower neighbour; null of none. */
export function quantile(values: readonly number[], share: number): number | null {
  return values.toSorted((a, b) => a - b)[Math.floor(share * (values.length - 1))] ?? null;
}
