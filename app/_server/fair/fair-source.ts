import { readComparedAnalyses } from "@/db/read/compared";
import { readDrills } from "@/db/read/drills";
import { readFairAllocations, readFairSteps, readFairTests, readFairValues } from "@/db/read/fair-tests";
import type { ClubGroup } from "@/lib/domain/club-group";
import type { FairAllocation, FairStep, FairTest, FairValue } from "@/lib/domain/fair-test";
import { goalOn } from "@/lib/domain/goal-on";
import type { JudgedTrack } from "@/lib/domain/judged-track";
import { fairTestState } from "@/lib/drills/fair-test-state";
import { FAIR_TEST_THRESHOLDS } from "@/lib/drills/fair-test-thresholds";
import { fairTestValue } from "@/lib/drills/fair-test-value";
import { POLICY } from "@/lib/verdict/policy";
import type { Viewer } from "../gate";
import type { Judged } from "../worker/tasks";

/** A test with all that is kept of it. */
export interface KeptFairTest {
  readonly test: FairTest;
  readonly draws: readonly FairAllocation[];
  readonly steps: readonly FairStep[];
  readonly values: readonly FairValue[];
}

/** Every test of the academy, the latest first. */
export function loadKeptTests({ db, scope }: Pick<Viewer, "db" | "scope">): readonly KeptFairTest[] {
  return readFairTests(db, scope).map((test) => ({
    test,
    draws: readFairAllocations(db, test),
    steps: readFairSteps(db, test),
    values: readFairValues(db, test),
  }));
}

/** The tests that still run: somebody may still be drawn, or is still practising what was drawn. */
export function runningTests(viewer: Pick<Viewer, "db" | "scope" | "today">): readonly FairTest[] {
  return loadKeptTests(viewer)
    .filter(({ test, draws, steps }) => fairTestState(test, draws, steps, viewer.today).running === "yes")
    .map(({ test }) => test);
}

/** Names of the two drills of any test, the library read once; one that left the library is told by its id. */
export function drillsOfTests({
  db,
  scope,
}: Pick<Viewer, "db" | "scope">): (test: FairTest) => readonly [string, string] {
  const names = new Map(readDrills(db, scope).map(({ id, name }) => [id, name]));
  const name = (id: string): string => names.get(id) ?? id;
  return (test) => [name(test.firstDrillId), name(test.secondDrillId)];
}

function filmsOf({ sessions }: JudgedTrack) {
  return sessions.map(({ date, use, swings }) => ({ date, use: use !== false, swings }));
}

/** The judged tracks of a fundamental, by student and clubs. */
function tracksOf(
  { db, scope }: Pick<Viewer, "db" | "scope">,
  fundamentalId: string,
): ReadonlyMap<string, JudgedTrack> {
  const analyses = readComparedAnalyses(db, scope, { fundamentalId, policyVersion: POLICY.version });
  return new Map(
    analyses.map(({ studentId, clubGroup, body }) => [`${studentId} ${clubGroup}`, (JSON.parse(body) as Judged).track]),
  );
}

/** What the complete draws of a test are worth that no look has taken in; a draw without a film has none. */
export function valuesOf(
  viewer: Pick<Viewer, "db" | "scope">,
  { test, values }: KeptFairTest,
  complete: readonly FairAllocation[],
  look: number,
): readonly FairValue[] {
  const tracks = tracksOf(viewer, test.fundamentalId);
  const known = new Set(values.map(({ allocationId }) => allocationId));
  return complete.flatMap(({ id, studentId, clubGroup, day }): FairValue[] => {
    const track = known.has(id) ? undefined : tracks.get(`${studentId} ${clubGroup}`);
    if (track === undefined) return [];
    const found = fairTestValue(filmsOf(track), goalOn(track, day), { from: day, days: test.days });
    return found.kind === "ok" ? [{ allocationId: id, look, value: found.value }] : [];
  });
}

/** Films on each side of a day, so that what was gained past it can be told. */
const AROUND = 2;

/**
 * Sd of what students gained for a fundamental from the middle of their films on, in its unit, whatever they did; null: fewer than
 * `FAIR_TEST_THRESHOLDS.spreadFrom` students with films enough, or none of them gained anything.
 */
export function spreadOfGains(
  viewer: Pick<Viewer, "db" | "scope">,
  fundamentalId: string,
  days: number,
): number | null {
  const best = new Map<string, { readonly group: ClubGroup; readonly track: JudgedTrack }>();
  for (const [key, track] of tracksOf(viewer, fundamentalId)) {
    const [student = "", group = ""] = key.split(" ");
    const other = best.get(student)?.track.sessions.length ?? 0;
    if (track.sessions.length > other) best.set(student, { group: group as ClubGroup, track });
  }
  const gains = [...best.values()].flatMap(({ track }) => {
    const films = filmsOf(track).filter(({ use, swings }) => use && swings.length > 0);
    const from = films[Math.floor(films.length / 2) - 1]?.date;
    if (films.length < 2 * AROUND || from === undefined) return [];
    const found = fairTestValue(films, goalOn(track, from), { from, days });
    return found.kind === "ok" ? [found.value] : [];
  });
  if (gains.length < FAIR_TEST_THRESHOLDS.spreadFrom.value) return null;
  const mean = gains.reduce((sum, value) => sum + value, 0) / gains.length;
  const sd = Math.sqrt(gains.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (gains.length - 1));
  return sd > 0 ? sd : null;
}
