import { BUILT_IN } from "@/lib/domain/catalogue";
import type { Interval, OwnedWatch, ProvedChange, TrackVerdict } from "@/lib/domain/track-verdict";
import type { BriefSource, BriefStudent } from "@/lib/report/brief-source";
import type { SessionMark } from "@/lib/report/chart-model";
import type { NewProof, WatchedTrack } from "@/lib/report/roster-source";
import type { TrackSummary } from "@/lib/report/track-summary";
import { usedDays } from "@/lib/report/used-days";

/** The day on which the briefs of the tests are read. */
export const TODAY = "2026-08-31";

/** Spaces that don't break are spaces here. */
export const plain = (text: string): string => text.replace(/[\u00a0\u202f]/g, " ");

export function fundamental(id: string) {
  const found = BUILT_IN.find((each) => each.id === id);
  if (found === undefined) throw new Error(`no such fundamental: ${id}`);
  return found;
}

/** An interval that reaches 2 to either side. */
export const about = (estimate: number): Interval => ({
  estimate,
  low80: estimate - 1.3,
  high80: estimate + 1.3,
  low95: estimate - 2,
  high95: estimate + 2,
});

export const WATCH: OwnedWatch = {
  since: "2026-08-15",
  sessions: 2,
  raisedOn: "2026-08-22",
  direction: "down",
  size: about(-4.9),
  logBayesFactor: Math.log(240),
};

export function change(verdict: "gain" | "slip", provedOn: string): ProvedChange {
  return {
    verdict,
    shape: "step",
    from: "2026-06-06",
    to: "2026-06-21",
    set80: null,
    set95: null,
    size: about(10),
    before: about(72),
    after: about(82),
    moved: null,
    provedOn,
  };
}

/** Films of one track, used unless it is said otherwise. */
export interface Films {
  readonly days: readonly string[];
  readonly marks?: readonly SessionMark[];
}

const WEEKLY = ["2026-05-04", "2026-06-01", "2026-07-06", "2026-08-03", "2026-08-24"];

/** A track on whose verdict `over` decides: open and inside its band, unless it is said otherwise. */
export function track(
  studentId: string,
  id: string,
  over: Partial<TrackVerdict> = {},
  { days, marks = [] }: Films = { days: WEEKLY },
): TrackSummary {
  const used = days.map((date, at) => ({ date, mean: 80, mark: marks[at] ?? ("used" as const) }));
  return {
    studentId,
    fundamentalId: id,
    clubGroup: "iron",
    goal: { low: 85, high: 95 },
    sessions: used,
    verdict: {
      id: `${studentId}/${id}/iron`,
      sessions: days.length,
      verdict: "open",
      listed: false,
      moved: null,
      changes: over.change ? [over.change] : [],
      change: null,
      levelNow: about(90),
      position: "inside",
      ownedSince: null,
      watch: null,
      notToldApart: null,
      settle: { none: "no-plan", sessionsToFirstLook: 0 },
      settleIfReal: { sessions: 2, swingsEach: 5, captureSd: 1, chance: 0.8 },
      usualCaptureSd: 1,
      ...over,
    } as TrackVerdict,
  };
}

export const OUTSIDE: Partial<TrackVerdict> = { position: "outside", levelNow: about(80) };

/** A student who is here, with tracks of one club group. */
export function student(id: string, alias: string, summaries: readonly TrackSummary[] = []): BriefStudent {
  const days = summaries.flatMap(({ sessions }) => sessions.map(({ date }) => date)).sort();
  return {
    student: { id, alias, birthYear: 2010, hand: "right", zone: "UTC", clubs: "7-iron" },
    since: "2026-03-01",
    sessions: new Set(days).size,
    lastDay: days.at(-1) ?? null,
    summaries,
    filmDays: usedDays({ summaries }),
    askings: [],
  };
}

/** The same with work that is stopped since today: it hurts. */
export function hurts(entry: BriefStudent): BriefStudent {
  return { ...entry, work: { stop: { kind: "pain", since: TODAY, until: null }, chosenId: null, asked: new Map() } };
}

/** Everything of some students that stands on the list or raised an alarm, as the loader has it. */
export function source(students: readonly BriefStudent[], over: Partial<BriefSource> = {}): BriefSource {
  const named = students.flatMap(({ student: who, summaries }) =>
    summaries.map(
      (summary): WatchedTrack => ({
        student: who,
        fundamental: fundamental(summary.fundamentalId),
        summary,
      }),
    ),
  );
  const proofs = named
    .filter(({ summary }) => summary.verdict.listed === true && summary.verdict.change !== null)
    .map((found): NewProof => ({ ...found, key: `${found.summary.verdict.id} proved` }));
  return {
    today: TODAY,
    fundamentals: BUILT_IN,
    students,
    all: students.flatMap(({ summaries }) => summaries),
    proofs,
    watched: named.filter(({ summary }) => summary.verdict.watch !== null),
    drills: [],
    pauses: [],
    pains: [],
    due: [],
    weeks: 6,
    ...over,
  };
}

export const drill = (studentId: string, fundamentalId: string, start = "2026-07-01") => ({
  studentId,
  fundamentalId,
  drill: "Freeze",
  start,
});
