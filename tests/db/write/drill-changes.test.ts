import { expect, test } from "vitest";
import { readDrillCounts, readDrills } from "@/db/read/drills";
import { insertAssignment, insertDrill, updateAssignmentTakenBack, updateDrill } from "@/db/write/drills";
import { parseEarlierDrills } from "@/lib/domain/drill-version";
import { academyScope, NOW, openAcademy, studentScope } from "../academy-fixture";

const WALL = { id: "d1", name: "Wall", fundamentalId: "hinge", how: "Slowly.", cautions: "Not with a sore wrist." };
const NO_DOSE = { dose: "", reps: null, minutesADay: null, daysAWeek: null, remeasureDays: null, retiredOn: null };
const { id: _id, ...DESCRIBED } = { ...WALL, ...NO_DOSE };
const by = { who: "Wren", why: "clearer", now: NOW, today: "2031-03-01" };
const given = { id: "g1", drillId: "d1", fundamentalId: "hinge", start: "2031-02-02", end: null, dose: "20 a day" };

async function openWith() {
  const db = await openAcademy();
  insertDrill(db, academyScope(), WALL);
  insertDrill(db, academyScope("a2"), { ...WALL, id: "d2" });
  const change = (over: Partial<typeof DESCRIBED>, seen: number, drillId = "d1") =>
    updateDrill(db, academyScope(), { drillId, becomes: { ...DESCRIBED, ...over }, seen, by }).kind;
  const drill = () => readDrills(db, academyScope())[0];
  return { db, change, drill };
}

test("described anew twice, a drill keeps both of what it was, with who and why", async () => {
  const { change, drill } = await openWith();
  expect(change({ how: "By a wall." }, 0)).toBe("updated");
  expect(change({ how: "By a wall.", name: "The wall", reps: null }, 1)).toBe("updated");
  expect(drill()).toMatchObject({ name: "The wall", how: "By a wall." });
  const kept = { ...NO_DOSE, until: "2031-03-01", who: "Wren", why: "clearer", changedAt: NOW };
  expect(parseEarlierDrills(drill()?.earlier ?? "")).toEqual([
    { ...DESCRIBED, ...kept },
    { ...DESCRIBED, ...kept, how: "By a wall." },
  ]);
});

test("whoever has not seen the last change overwrites nothing", async () => {
  const { change, drill } = await openWith();
  change({ how: "By a wall." }, 0);
  const before = drill();
  expect([change({ how: "Faster." }, 0), change({ how: "Faster." }, 2)]).toEqual(["stale", "stale"]);
  expect(drill()).toEqual(before);
});

test("given to somebody, even if that was taken back, it stays for what it is for", async () => {
  const { db, change, drill } = await openWith();
  expect(change({ fundamentalId: "hip-sway" }, 0)).toBe("updated");
  insertAssignment(db, studentScope(), given);
  updateAssignmentTakenBack(db, studentScope(), { assignmentId: "g1", wish: "take", now: NOW });
  expect(readDrillCounts(db, academyScope())).toEqual(new Map([["d1", 1]]));
  expect(change({ fundamentalId: "hinge" }, 1)).toBe("given");
  expect(drill()?.fundamentalId).toBe("hip-sway");
});

test("a drill of another academy is neither changed nor counted", async () => {
  const { db, change } = await openWith();
  expect(change({ how: "x" }, 0, "d2")).toBe("unknown-drill");
  expect(readDrills(db, academyScope("a2"))[0]?.how).toBe("Slowly.");
  expect(readDrillCounts(db, academyScope()).size).toBe(0);
});
