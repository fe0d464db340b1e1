import { describe, expect, it } from "vitest";
import type { ArchivedStudent } from "@/lib/domain/archive";
import { endBroughtConsents } from "@/lib/domain/brought-consents";
import { consentStanding } from "@/lib/domain/consent";
import { oneStudent } from "../ingest/carried-archive";

const IMPORT_DAY = "2026-06-10";
const [jun] = oneStudent({}).students as [ArchivedStudent];

function ended(fromDay: string, untilDay: string | null) {
  const given = { givenBy: "mother", giverIs: "guardian", withdrawnOn: null, withdrawnBy: null } as const;
  const row = { id: "c1", kind: "share", ...given, fromDay, untilDay, recordedAt: "2026-01-01T10:00:00.000Z" } as const;
  return endBroughtConsents([{ ...jun, consents: [row] }], IMPORT_DAY)[0]?.consents[0];
}

describe("consents that an archive brings among students of others", () => {
  it.each([
    ["without an end", "2026-01-01", null, "2026-06-09"],
    ["that would last", "2026-01-01", "2030-12-31", "2026-06-09"],
    ["until the day of the import", "2026-01-01", IMPORT_DAY, "2026-06-09"],
    ["that ended before", "2026-01-01", "2026-02-01", "2026-02-01"],
    ["from the day of the import on", IMPORT_DAY, null, "2026-06-09"],
    ["from a later day on", "2027-01-01", null, "2026-06-09"],
  ])("one %s ends, and is in force on no day from the import on", (_what, fromDay, untilDay, last) => {
    const row = ended(fromDay, untilDay);
    expect(row).toMatchObject({ id: "c1", kind: "share", givenBy: "mother", fromDay, untilDay: last });
    const consent = { ...row, from: fromDay, until: row?.untilDay ?? null } as Parameters<typeof consentStanding>[0][0];
    for (const day of [IMPORT_DAY, "2027-01-01", "2029-01-01"]) {
      const asked = { day, birthYear: 2012, ownConsentAge: 16 };
      expect(["given", "not-yet"]).not.toContain(consentStanding([consent], "share", asked).kind);
    }
  });
});
