import type { Verdict } from "@/lib/domain/track-verdict";
import { benjaminiHochberg } from "@/lib/stats/benjamini-hochberg";
import { seasonTail } from "@/lib/stats/season-tail";
import { limitRiseAt } from "./limit-at";
import type { Policy } from "./policy";

/** Looks that a season has at least: before its end a track could still rise. */
const SEASON_LOOKS = 20;

/** What the roster's list keeps of one look. */
export interface ListedLook {
  /** Day number of the look. */
  readonly day: number;
  readonly verdict: Verdict;
  readonly logBayesFactor: number;
  /** First session of the stretch that the evidence rests on; a later start is a season begun anew after a proof. */
  readonly start: number;
  /** Whether its session adds to the evidence: one set aside repeats the look before. */
  readonly adds: boolean;
}

/** Evidence of one look beyond what it asks, and the stretch that it rests on. */
interface BorneOut {
  readonly start: number;
  readonly beyond: number;
}

/** The roster's list over time. */
export interface RosterList {
  /** One entry a track: whether each of its looks' dates finds it listed, one entry a look. */
  readonly looks: readonly (readonly boolean[])[];
  /** One entry a track: whether it is listed at the latest date of all tracks. */
  readonly latest: readonly boolean[];
}

/**
 * The roster's list of proved changes, recomputed at each distinct date in order.
 *
 * At each date every track has an anytime p: the tail probability, over a season of twenty looks or as many as there
 * were, of the largest evidence that two looks in a row have borne out so far on the stretch in force (1 before there are
 * two). Evidence counts less what its look asks beyond the limit. Of unchanged tracks the largest evidence is mostly that
 * of one odd look and gone at the next, while that of a true change stays: asking for two finds more at the same rate of
 * false discoveries. A track enters when its adjusted p over all tracks is at most `share` and its verdict now is gain or
 * slip; it stays until that verdict is withdrawn.
 *
 * @param tracks one entry a track: its looks in date order; a track without looks counts as one that shows nothing
 * @param share false-discovery rate over the season, above 0 and below 1
 * @returns in the order of `tracks`; an entry at a date depends on the looks up to that date and on how many tracks
 *   there are in all
 *
 * Source: Benjamini and Hochberg 1995; valid at every look because the p is that of the season's maximum.
 */
export function rosterList(tracks: readonly (readonly ListedLook[])[], share: number, policy: Policy): RosterList {
  const days = [...new Set(tracks.flatMap((looks) => looks.map((look) => look.day)))].sort((a, b) => a - b);
  const next = tracks.map(() => 0);
  const largest = tracks.map(() => new Map<number, number>());
  const before = tracks.map((): BorneOut | null => null);
  const p = tracks.map(() => 1);
  const word = tracks.map((): Verdict => "open");
  const listed = tracks.map(() => false);
  const said = tracks.map((): boolean[] => []);
  for (const day of days) {
    const seen: number[] = [];
    tracks.forEach((looks, t) => {
      let at = next[t] as number;
      if (looks[at]?.day !== day) return;
      for (let look = looks[at]; look?.day === day; look = looks[++at]) {
        const best = largest[t] as Map<number, number>;
        const beyond = look.logBayesFactor - limitRiseAt(at + 1, policy);
        const last = before[t];
        if (look.adds) {
          if (last?.start === look.start)
            best.set(
              look.start,
              Math.max(best.get(look.start) ?? Number.NEGATIVE_INFINITY, Math.min(last.beyond, beyond)),
            );
          before[t] = { start: look.start, beyond };
        }
        const borneOut = best.get(look.start) ?? Number.NEGATIVE_INFINITY;
        p[t] = Math.min(1, policy.listCaution * seasonTail(borneOut, Math.max(SEASON_LOOKS, at + 1)));
        if (look.verdict !== word[t]) listed[t] = false;
        word[t] = look.verdict;
      }
      next[t] = at;
      seen.push(t);
    });
    const adjusted = benjaminiHochberg(p);
    tracks.forEach((_, t) => {
      if ((word[t] === "gain" || word[t] === "slip") && (adjusted[t] as number) <= share) listed[t] = true;
    });
    for (const t of seen) {
      const looks = said[t] as boolean[];
      while (looks.length < (next[t] as number)) looks.push(listed[t] as boolean);
    }
  }
  return { looks: said, latest: listed };
}
