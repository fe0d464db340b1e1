import { describe, expect, test } from "vitest";
import type { Database } from "@/db/client";
import { type DerivedId, readLookNoise, readLooksWithoutNoise } from "@/db/read/looks";
import { readReadingsInForce } from "@/db/read/readings";
import { insertLookNoise } from "@/db/write/looks";
import { insertCorrection, insertReadings } from "@/db/write/readings";
import { insertSession } from "@/db/write/sessions";
import type { EnteredReading } from "@/lib/domain/session-entry";
import { academyScope, entered, NOW, openAcademy, revisionOf, sessionOn, studentScope } from "../academy-fixture";

const DERIVED: readonly DerivedId[] = [["tilt-kept", "top-tilt", "setup-tilt"]];

function film(db: Database, day: string, readings: EnteredReading[][], change: Parameters<typeof sessionOn>[1] = {}) {
  const swings = readings.map((values, index) => ({ number: index + 1, note: null, readings: values }));
  const result = insertSession(db, studentScope(), sessionOn(day, { swings, ...change }), {
    now: NOW,
    newId: () => `${day}${change.clubGroup ?? ""}`,
    batchId: null,
  });
  expect(result.kind).toBe("inserted");
}

function bare(db: Database, derived = DERIVED): string[] {
  return readLooksWithoutNoise(db, academyScope(), derived).map((look) => `${look.sessionId} ${look.fundamentalId}`);
}

describe("looks without a noise model", () => {
  test("are those of unaided sessions in use that hold a measured value", async () => {
    const db = await openAcademy();
    film(db, "2031-02-01", [[entered(1)], [entered(2)]]);
    film(db, "2031-02-02", [[entered(1)]], { circumstance: "aid-in-view", aid: "stick" });
    film(db, "2031-02-03", [[entered(1)]], { circumstance: "in-lesson" });
    film(db, "2031-02-04", [[entered(1)]], { setAsideReason: "storm" });
    film(db, "2031-02-05", [[entered(null)]]);
    film(db, "2031-02-06", [[entered(null), entered(3, "foot-line")]], { clubGroup: "driver" });
    expect(bare(db)).toEqual(["2031-02-01 hinge", "2031-02-06driver foot-line"]);
    expect(readLooksWithoutNoise(db, studentScope(), DERIVED)).toHaveLength(2);
    expect(readLooksWithoutNoise(db, studentScope("s2"), DERIVED)).toEqual([]);
    expect(readLooksWithoutNoise(db, academyScope("a2"), DERIVED)).toEqual([]);
  });

  test("of a derived fundamental need both parts in one swing, measured", async () => {
    const db = await openAcademy();
    const [top, setup] = [entered(9, "top-tilt"), entered(4, "setup-tilt")];
    film(db, "2031-02-01", [[top], [setup]]);
    film(db, "2031-02-02", [[top, setup]]);
    film(db, "2031-02-03", [[top, entered(null, "setup-tilt")]]);
    expect(bare(db).filter((look) => look.endsWith("tilt-kept"))).toEqual(["2031-02-02 tilt-kept"]);
    expect(bare(db, [])).toHaveLength(5);
  });

  test("count the value in force: a correction makes or unmakes a look; another reader's value doesn't", async () => {
    const db = await openAcademy();
    film(db, "2031-02-01", [[entered(null)]]);
    const swings = [{ number: 1, note: null, readings: [entered(7), entered(1, "foot-line")] }];
    const other = { sessionId: "2031-02-01", reader: "Other", reading: "first", swings } as const;
    insertReadings(db, studentScope(), other, { now: NOW, batchId: null });
    expect(bare(db)).toEqual([]);
    const readingId = readReadingsInForce(db, studentScope())[0]?.id ?? 0;
    const change = { readingId, typed: "", who: "Coach", why: "seen after all", now: NOW };
    insertCorrection(db, studentScope(), { ...change, value: 5 });
    expect(bare(db)).toEqual(["2031-02-01 hinge"]);
    insertCorrection(db, studentScope(), { ...change, value: null });
    expect(bare(db)).toEqual([]);
  });
});

describe("the noise model of a look", () => {
  test("is written once, changes no data, and takes the look from the list", async () => {
    const db = await openAcademy();
    film(db, "2031-02-02", [[entered(1), entered(2, "foot-line")]]);
    film(db, "2031-02-01", [[entered(1)]]);
    const look = (sessionId: string, noiseModelName: string) => ({ sessionId, fundamentalId: "hinge", noiseModelName });
    const looks = [look("2031-02-02", "m1"), look("2031-02-01", "m1")];
    expect(insertLookNoise(db, studentScope(), looks)).toBe(2);
    expect(insertLookNoise(db, studentScope(), [look("2031-02-02", "m2")])).toBe(0);
    expect(readLookNoise(db, studentScope())).toEqual([looks[1], looks[0]]);
    expect(bare(db)).toEqual(["2031-02-02 foot-line"]);
    expect(revisionOf(db)).toBe(2);
  });

  test("for another student's session is refused whole", async () => {
    const db = await openAcademy();
    film(db, "2031-02-01", [[entered(1)]]);
    const look = { sessionId: "2031-02-01", fundamentalId: "hinge", noiseModelName: "m1" };
    expect(() => insertLookNoise(db, studentScope("s2"), [look])).toThrow("no such session");
    expect(() => insertLookNoise(db, studentScope(), [look, { ...look, sessionId: "none" }])).toThrow(
      "no such session",
    );
    expect(readLookNoise(db, studentScope())).toEqual([]);
  });
});
