import { randomUUID } from "node:crypto";
import { readAssignmentLog } from "@/db/read/drills";
import { readCharges } from "@/db/read/people";
import { readReadingsInForce } from "@/db/read/readings";
import { readSessions } from "@/db/read/sessions";
import { insertFairAllocation } from "@/db/write/fair-tests";
import { chargeOn } from "@/lib/domain/charge";
import type { ClubGroup } from "@/lib/domain/club-group";
import type { FairAllocation, FairTest } from "@/lib/domain/fair-test";
import { fairTestState } from "@/lib/drills/fair-test-state";
import { instantOf } from "../clock";
import { whyNotRecorded } from "../consent/consent-gate";
import { whyStop } from "../drill/proposals";
import type { StudentViewer } from "../gate";
import { type KeptFairTest, loadKeptTests } from "./fair-source";
import { armOfLot } from "./lot";

/** A test in which a student may draw, or has drawn a drill that isn't given yet. */
export type StudentLot =
  | { readonly kind: "may"; readonly kept: KeptFairTest; readonly clubGroup: ClubGroup }
  | { readonly kind: "drawn"; readonly kept: KeptFairTest; readonly draw: FairAllocation; readonly drillId: string };

/** The drill of an arm. */
export function drillOfArm(test: FairTest, arm: FairAllocation["arm"]): string {
  return arm === 0 ? test.firstDrillId : test.secondDrillId;
}

/** The clubs with which most films of a fundamental were made; null: none was. */
function mostFilmed({ db, student }: StudentViewer, fundamentalId: FairTest["fundamentalId"]): ClubGroup | null {
  const read = new Set(
    readReadingsInForce(db, student).flatMap((each) => (each.fundamentalId === fundamentalId ? [each.sessionId] : [])),
  );
  const counts = new Map<ClubGroup, number>();
  for (const { id, clubGroup } of readSessions(db, student))
    if (read.has(id)) counts.set(clubGroup, (counts.get(clubGroup) ?? 0) + 1);
  return [...counts].sort(([, a], [, b]) => b - a)[0]?.[0] ?? null;
}

/**
 * Where a student stands in the tests by the lot that run: in which one a drill may be drawn, or was drawn and isn't given; null:
 * in none. Nobody draws who hurts or has no consent in force, on whom one of the two drills was tried, or who has another for the same.
 */
export function studentLot(viewer: StudentViewer): StudentLot | null {
  const { db, student, today } = viewer;
  const log = readAssignmentLog(db, student).filter(({ state }) => state === "stands");
  const mayNot = whyNotRecorded(viewer, student) !== null || whyStop(viewer).length > 0;
  for (const kept of loadKeptTests(viewer)) {
    const { test, draws, steps } = kept;
    const state = fairTestState(test, draws, steps, today);
    if (state.running === "no") continue;
    const drills = [test.firstDrillId, test.secondDrillId];
    const tried = log.some(({ drillId }) => drills.includes(drillId));
    const draw = draws.find(({ studentId }) => studentId === student.studentId);
    if (draw !== undefined && !tried) return { kind: "drawn", kept, draw, drillId: drillOfArm(test, draw.arm) };
    const runs = log.some(
      ({ fundamentalId, end }) => fundamentalId === test.fundamentalId && (end === null || end >= today),
    );
    if (draw !== undefined || tried || runs || mayNot || state.drawn >= test.students) continue;
    const clubGroup = mostFilmed(viewer, test.fundamentalId);
    if (clubGroup !== null) return { kind: "may", kept, clubGroup };
  }
  return null;
}

/** In whose order a student draws: of the coach who has it in charge, else of whoever draws. */
function orderCoach({ db, academy, today, student, userId }: StudentViewer): string {
  const charge = readCharges(db, academy.id).find(
    (each) => each.studentId === student.studentId && chargeOn(each, today) === "in-force",
  );
  return charge?.coachId ?? userId ?? "";
}

/** Draws a drill for the student in the test in which that may be; the same student never draws twice. */
export function drawLot(viewer: StudentViewer, data: FormData): "drawn" | "unchanged" {
  const lot = studentLot(viewer);
  if (lot?.kind !== "may" || lot.kept.test.id !== data.get("testId")) return "unchanged";
  const { test } = lot.kept;
  const coachId = orderCoach(viewer);
  const made = insertFairAllocation(
    viewer.db,
    viewer.student,
    test,
    {
      ...{ id: randomUUID(), clubGroup: lot.clubGroup, coachId, day: viewer.today, who: viewer.name },
      recordedAt: instantOf(viewer.academy),
    },
    (place) => armOfLot(test, coachId, place),
  );
  return made.kind === "drawn" ? "drawn" : "unchanged";
}
