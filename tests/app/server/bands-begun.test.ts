import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { StudentViewer, Viewer } from "@/app/_server/gate";
import { noteBandsBegun } from "@/app/_server/keeping/bands-begun";
import { insertGoalBand } from "@/db/write/goal-bands";
import { dayFromNumber, dayNumber } from "@/lib/domain/calendar-day";
import { admitNew } from "./corrected-season";
import { startAcademy } from "./own-academy-data";

let viewer: Viewer;
let mine: StudentViewer;
let remove: () => void;

beforeAll(async () => {
  ({ viewer, remove } = await startAcademy());
  mine = await admitNew(viewer, "Zephyrine", "right");
});
afterAll(() => remove());

const onDay = (ahead: number): Viewer => ({ ...viewer, today: dayFromNumber(dayNumber(viewer.today) + ahead) });
const revision = (): number =>
  viewer.db.sqlite
    .prepare<[string], number>("SELECT revision FROM student WHERE id = ?")
    .pluck()
    .get(mine.student.studentId) ?? -1;

function plan(id: string, ahead: number): void {
  const edges = { low: 80, high: 97, ageFrom: null, ageTo: null, scope: "student" as const };
  const from = dayFromNumber(dayNumber(viewer.today) + ahead);
  const { studentId } = mine.student;
  const of = { fundamentalId: "hinge" as const, clubGroup: "iron" as const, studentId, from, reason: "agreed" };
  const stamp = { now: "2026-01-01T10:00:00.000Z", newId: () => id };
  insertGoalBand(viewer.db, viewer.scope, { ...edges, ...of }, stamp);
}

describe("a band that was planned", () => {
  it("marks whom it reaches once, on its day or on the first one after it on which the server looks", () => {
    expect(noteBandsBegun(viewer)).toBe(0);
    plan("g1", 2);
    const before = revision();
    expect([noteBandsBegun(onDay(1)), revision()]).toEqual([0, before]);
    expect([noteBandsBegun(onDay(3)), revision()]).toEqual([1, before + 1]);
    expect([noteBandsBegun(onDay(3)), revision()]).toEqual([0, before + 1]);
    expect([noteBandsBegun(onDay(9)), revision()]).toEqual([0, before + 1]);
  });

  it("by a clock that had leapt ahead and is back: marks whom it seemed to reach at once, and again on its day", () => {
    plan("g2", 20);
    const before = revision();
    expect([noteBandsBegun(onDay(400)), revision() > before]).toEqual([1, true]);
    expect([noteBandsBegun(onDay(10)), revision()]).toEqual([1, before + 2]);
    expect([noteBandsBegun(onDay(19)), revision()]).toEqual([0, before + 2]);
    expect([noteBandsBegun(onDay(20)), revision()]).toEqual([1, before + 3]);
  });

  it("and begun before the server ever looked it marks with the first look", () => {
    viewer.db.sqlite.exec("DELETE FROM preference");
    const before = revision();
    expect([noteBandsBegun(onDay(30)), revision()]).toEqual([2, before + 2]);
    expect([noteBandsBegun(onDay(30)), revision()]).toEqual([0, before + 2]);
  });

  it("the demo’s day stands still", () => {
    const demo = { ...onDay(30), academy: { ...viewer.academy, fixedToday: viewer.today } };
    expect(noteBandsBegun(demo)).toBe(0);
  });
});
