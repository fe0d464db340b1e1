import { expect, it } from "vitest";
import { openDatabase } from "@/db/client";
import { migrateDb } from "@/db/migrate";
import { academy } from "@/db/schema";
import { insertAcademy } from "@/db/write/academies";
import { KEEPING_THRESHOLDS } from "@/lib/domain/keeping-thresholds";

it("each has its value within bounds, a unit, a reason and a source", () => {
  for (const each of Object.values(KEEPING_THRESHOLDS)) {
    const [low, high] = each.bounds;
    expect(each.value >= low && each.value <= high).toBe(true);
    for (const text of [each.unit, each.reason, each.source]) expect(text.length).toBeGreaterThan(8);
  }
});

it("an academy begins with what the thresholds say: 24 months, 180 days, 16 years", () => {
  const db = openDatabase(":memory:");
  migrateDb(db);
  insertAcademy(db, {
    ...{ id: "a", name: "A", ownerName: "Wren", zone: "UTC", locale: "en", kind: "own", fixedToday: null },
    ...{ seasonStart: "2026-03-01", createdAt: "2026-03-01T00:00:00.000Z" },
  });
  const row = db.orm.select().from(academy).get();
  const { keepMonths, linkDays, ownConsentAge } = KEEPING_THRESHOLDS;
  expect([row?.keepMonths, row?.linkDays, row?.ownConsentAge]).toEqual([24, 180, 16]);
  expect([keepMonths.value, linkDays.value, ownConsentAge.value]).toEqual([24, 180, 16]);
});
