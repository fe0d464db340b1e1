import { describe, expect, test } from "vitest";
import type { Database } from "@/db/client";
import { readLookNoise } from "@/db/read/looks";
import { insertLookNoise } from "@/db/write/looks";
import { insertSession } from "@/db/write/sessions";
import type { EnteredReading } from "@/lib/domain/session-entry";
import { entered, NOW, openAcademy, revisionOf, sessionOn, studentScope } from "../academy-fixture";

function film(db: Database, day: string, readings: EnteredReading[][], change: Parameters<typeof sessionOn>[1] = {}) {
  const swings = readings.map((values, index) => ({ number: index + 1, note: null, readings: values }));
  const result = insertSession(db, studentScope(), sessionOn(day, { swings, ...change }), {
    now: NOW,
    newId: () => `${day}${change.clubGroup ?? ""}`,
    batchId: null,
  });
  expect(result.kind).toBe("inserted");
}

describe("the noise model of a look", () => {
  test("is written once, and changes no data", async () => {
    const db = await openAcademy();
    film(db, "2031-02-02", [[entered(1), entered(2, "foot-line")]]);
    film(db, "2031-02-01", [[entered(1)]]);
    const look = (sessionId: string, noiseModelName: string) => ({
      sessionId,
      fundamentalId: "hinge",
      clubGroup: "iron",
      noiseModelName,
    });
    const looks = [look("2031-02-02", "m1"), look("2031-02-01", "m1")];
    expect(insertLookNoise(db, studentScope(), looks)).toBe(2);
    expect(insertLookNoise(db, studentScope(), [look("2031-02-02", "m2")])).toBe(0);
    expect(readLookNoise(db, studentScope())).toEqual([looks[1], looks[0]]);
    expect(revisionOf(db)).toBe(2);
  });

  test("for another student's session is refused whole", async () => {
    const db = await openAcademy();
    film(db, "2031-02-01", [[entered(1)]]);
    const look = { sessionId: "2031-02-01", fundamentalId: "hinge", clubGroup: "iron", noiseModelName: "m1" };
    expect(() => insertLookNoise(db, studentScope("s2"), [look])).toThrow("no such session");
    expect(() => insertLookNoise(db, studentScope(), [look, { ...look, sessionId: "none" }])).toThrow(
      "no such session",
    );
    expect(readLookNoise(db, studentScope())).toEqual([]);
  });
});
