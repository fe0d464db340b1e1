import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { judgeSoon } from "@/app/_server/analysis/judge-soon";
import type { StudentViewer, Viewer } from "@/app/_server/gate";
import { addSession } from "@/app/_server/session/session-desk";
import { saveSettings } from "@/app/_server/settings/settings-desk";
import { readAcademy } from "@/db/read/academies";
import { readCurrentSummaries, readStaleStudents } from "@/db/read/current-analyses";
import { readRosterList } from "@/db/read/roster-lists";
import { dayFromNumber, dayNumber } from "@/lib/domain/calendar-day";
import { POLICY } from "@/lib/verdict/policy";
import { admitFilmed, formOf } from "./corrected-season";
import { enterAsOwner, startAcademy } from "./own-academy-data";

let viewer: Viewer;
let student: StudentViewer;
let remove: () => void;

beforeAll(async () => {
  ({ viewer, remove } = await startAcademy());
  viewer = await enterAsOwner(viewer);
  student = await admitFilmed(viewer, "Zephyrine");
}, 60_000);
afterAll(() => remove());

const stale = () => readStaleStudents(viewer.db, viewer.scope, POLICY.version);
const revisions = () => readCurrentSummaries(viewer.db, viewer.scope, POLICY.version).map((row) => row.dataRevision);
const list = () => readRosterList(viewer.db, viewer.scope, "latest", POLICY.version);

/** Waits, without a page, until the work that was begun beside a request is over. */
async function untilJudged(): Promise<void> {
  for (let wait = 0; wait < 200 && stale().length > 0; wait++) await new Promise((done) => setTimeout(done, 50));
}

describe("judged without a page view", () => {
  it("a session that is saved is judged, and the roster's list with it, before the answer", async () => {
    const fields = {
      day: viewer.today,
      clubGroup: "iron",
      circumstance: "unaided",
      "r.1.hinge": "88",
      "r.2.hinge": "90",
    };
    const before = list()?.inputDigest;
    expect((await addSession(student, formOf(fields))).kind).toBe("added");
    expect(stale()).toEqual([]);
    expect(revisions()).toHaveLength(1);
    expect(list()?.inputDigest).toMatch(/^[0-9a-f]{64}$/);
    expect(list()?.inputDigest).not.toBe(before);
  });

  it("another season's start is judged beside the answer", async () => {
    const { name, ownerName, zone } = viewer.academy;
    const seasonStart = dayFromNumber(dayNumber(viewer.today) - 300);
    const before = revisions();
    expect(saveSettings(viewer, formOf({ name, ownerName, zone, seasonStart })).kind).toBe("saved");
    expect(readAcademy(viewer.db, viewer.scope).seasonStart).toBe(seasonStart);
    expect(stale()).toHaveLength(1);
    await untilJudged();
    expect(stale()).toEqual([]);
    expect(revisions()[0]).toBeGreaterThan(before[0] ?? 0);
  });

  it("fails for nobody: what goes wrong is met again by the first page", async () => {
    const broken = { ...viewer, db: { ...viewer.db, sqlite: null } } as unknown as Viewer;
    await expect(judgeSoon(broken)).resolves.toBeUndefined();
  });
});
