import { BUILT_IN } from "@/lib/domain/catalogue";
import type { ProvedChange, TrackVerdict } from "@/lib/domain/track-verdict";
import type { LookTrack } from "@/lib/report/family-look-source";
import type { ApartReason, TrackHistory } from "@/lib/verdict/track-history";
import { levelOf } from "../verdict/made-work";

/** A video: its day, the mean of its one swing, and why it doesn't count. */
export type MadeVideo = readonly [day: string, value: number, apart?: ApartReason];

/** The phone stood too far aside. */
export const ASIDE: ApartReason = { kind: "camera", why: "offset-too-large", offBy: 42 };

/** A track as a family's page is drawn from it, with these videos; else open, inside, and nothing proved. */
export function lookTrack(id: string, videos: readonly MadeVideo[], over: Partial<TrackVerdict> = {}): LookTrack {
  const fundamental = BUILT_IN.find((each) => each.id === id);
  if (fundamental === undefined) throw new Error(id);
  const { low, high } = fundamental.goals.iron;
  let used = 0;
  const history = {
    ...{ studentId: "s1", fundamental, clubGroup: "iron", begins: null },
    ...{ goal: { low, high, from: "2026-01-01" }, goals: [{ low, high, from: "2026-01-01" }] },
    judged: { worthwhileAtLeast: 1 },
    sessions: videos.map(([day, value, apart], at) => ({
      ...{ session: { id: `x${at}`, day, reader: "r" }, captureSd: 1, fingerprint: null, takenOut: 0 },
      ...{ swings: [{ number: 1, value, read: value }], apart: apart ?? null, index: apart ? null : used++ },
    })),
  } as unknown as TrackHistory;
  const verdict = {
    ...{ verdict: "open", listed: false, moved: null, position: "inside", levelNow: levelOf(1), ownedSince: null },
    ...{ watch: null, changes: [], change: null, bandShare: null, errorBudget: null, unitSd: 1, looks: [] },
    ...{ smallestWorthwhile: null, settleIfReal: null, evidence: { noChange: 0.02, logBayesFactor: 3 } },
    ...over,
  } as unknown as TrackVerdict;
  return { history, verdict };
}

/** A proved change and a verdict that says it, on the roster's list or not. */
export function withChange(
  says: "gain" | "slip",
  [from, to]: readonly [string, string],
  [before, after]: readonly [number, number],
  listed: boolean,
): Partial<TrackVerdict> {
  const change: ProvedChange = {
    ...{ verdict: says, shape: "step", from, to, set80: null, set95: null, size: levelOf(after - before) },
    ...{ moved: null, provedOn: to, before: levelOf(before), after: levelOf(after) },
  };
  return { verdict: says, listed, change, changes: [change], levelNow: levelOf(after) };
}
