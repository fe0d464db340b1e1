import { BUILT_IN } from "@/lib/domain/catalogue";
import type { Edges } from "@/lib/domain/fundamental";
import type { TrackVerdict } from "@/lib/domain/track-verdict";
import type { SpreadSource } from "@/lib/report/spread-source";
import type { TrackSummary } from "@/lib/report/track-summary";
import { track } from "./made-roster";

export const BAND: Edges = { low: 85, high: 95 };

/** A track of the hinge at a level that is known to ±2, with its place against the band worked out from that. */
export function levelOf(
  studentId: string,
  level: number | null,
  over: { readonly club?: string; readonly goal?: Edges; readonly verdict?: Partial<TrackVerdict> } = {},
): TrackSummary {
  const goal = over.goal ?? BAND;
  const [low, high] = [goal.low ?? Number.NEGATIVE_INFINITY, goal.high ?? Number.POSITIVE_INFINITY];
  const levelNow = level === null ? null : { estimate: level, low95: level - 2, high95: level + 2 };
  const isBare = goal.low === null && goal.high === null;
  const position =
    levelNow === null || isBare
      ? null
      : levelNow.low95 >= low && levelNow.high95 <= high
        ? "inside"
        : levelNow.high95 < low || levelNow.low95 > high
          ? "outside"
          : "edge";
  const verdict = { position, levelNow, changes: [], ...over.verdict } as unknown as Partial<TrackVerdict>;
  return { ...track("hinge", verdict, over.club ?? "iron"), studentId, goal };
}

/** A track whose latest change stands on the roster's list, or does not. */
export function changedOf(
  studentId: string,
  verdict: "gain" | "slip",
  [from, to]: readonly [string, string],
  listed: "listed" | "alone" = "listed",
): TrackSummary {
  const change = { verdict, moved: null, from, to, provedOn: to } as unknown as NonNullable<TrackVerdict["change"]>;
  return levelOf(studentId, 90, {
    verdict: { verdict, change, changes: [change], listed: listed === "listed" },
  });
}

/** The page of an academy of which nothing is compared. */
export function spreadSource(over: Partial<SpreadSource> = {}): SpreadSource {
  const fundamental = BUILT_IN.find(({ id }) => id === "hinge");
  if (fundamental === undefined) throw new Error("no hinge");
  return {
    fundamental,
    ...{ today: "2031-06-12", from: "2031-04-20", here: 8, group: null, tracks: [] },
    groups: { told: [], hidden: 0 },
    sayClubs: (club) => `the ${club}s`,
    compared: { lede: "", clubs: null, proved: null, evidence: null },
    givenTo: () => [],
    ...over,
  };
}
