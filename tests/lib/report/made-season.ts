import { BUILT_IN } from "@/lib/domain/catalogue";
import type { Fundamental } from "@/lib/domain/fundamental";
import type { ProvedChange, TrackVerdict } from "@/lib/domain/track-verdict";
import { NO_WORK_FACTS } from "@/lib/report/order-of-work";
import type { SeasonSource, SeasonTrack } from "@/lib/report/season-source";
import type { TrackHistory } from "@/lib/verdict/track-history";
import { levelOf } from "../verdict/made-work";

export const TODAY = "2031-05-10";

/** A fundamental of the catalogue. */
export function named(id: string): Fundamental {
  const found = BUILT_IN.find((each) => each.id === id);
  if (found === undefined) throw new Error(id);
  return found;
}

/** A judged track as far as a season's page asks for it: films on these days, none set aside, and what is said. */
export function madeSeasonTrack(
  id: string,
  verdict: Partial<TrackVerdict>,
  days: readonly string[] = ["2031-05-01"],
): SeasonTrack {
  const fundamental = named(id);
  const { low, high } = fundamental.goals.iron;
  const history = {
    ...{ studentId: "s1", fundamental, clubGroup: "iron", begins: null, goals: [] },
    goal: { low, high },
    sessions: days.map((day, at) => ({
      ...{ session: { id: `x${at}`, day }, swings: [{ number: 1, value: 1 }], apart: null, index: at },
    })),
  } as unknown as TrackHistory;
  return {
    history,
    verdict: {
      ...{ verdict: "open", listed: false, moved: null, position: "inside", levelNow: levelOf(5), ownedSince: null },
      ...{ watch: null, changes: [], change: null, bandShare: null },
      ...verdict,
    } as TrackVerdict,
    asking: null,
  };
}

/** A proved change between two days. */
export function madeChange(
  verdict: "gain" | "slip",
  from: string,
  to: string,
  before: number,
  after: number,
): ProvedChange {
  const size = levelOf(after - before);
  return {
    ...{ verdict, shape: "step", from, to, set80: null, set95: null, size, moved: null, provedOn: to },
    ...{ before: levelOf(before), after: levelOf(after) },
  };
}

/** Everything that a season's page rests on, of a student with irons. */
export function madeSeason(tracks: readonly SeasonTrack[], over: Partial<SeasonSource> = {}): SeasonSource {
  return {
    student: { id: "s1", alias: "Nia", birthYear: 2019, hand: "right", zone: "UTC", clubs: "7-iron" },
    ...{ tracks, fundamentals: BUILT_IN, work: NO_WORK_FACTS, choice: null, drills: [], events: [] },
    sessions: [...new Set(tracks.flatMap(({ history }) => history.sessions.map(({ session }) => session.day)))].map(
      (day) =>
        ({ day, clubGroup: "iron", circumstance: "unaided", setAsideReason: null, solid: null, balls: null }) as never,
    ),
    ...{ consent: { kind: "given", until: null } as never, asOf: TODAY, today: TODAY, clubs: [], clubGroup: "iron" },
    ...{ grouping: { changes: [] } as never, mentions: { notes: 0, kinds: [] }, seasonStart: "2031-01-01" },
    ...over,
  };
}

/** Spaces that don't break are spaces here. */
export function plain(text: string): string {
  return text.replace(/[\u00a0\u202f\u2060]/g, " ");
}
