import { describe, expect, it } from "vitest";
import type { StudentEvent } from "@/lib/domain/student";
import { readerSince } from "@/lib/report/reader-since";

const change = (note: string, day: string, endDay: string | null = null): StudentEvent => ({
  ...({ id: note, kind: "reader-change", place: null, rebaselines: [] } as const),
  ...{ note, day, endDay },
});
const events = [
  change("Before", "2026-11-01"),
  change("Cy", "2026-12-10"),
  change("Ed", "2026-12-20", "2026-12-25"),
  { ...change("grown", "2026-12-22"), kind: "growth" as const },
  change("Di", "2027-02-01"),
];
const on = (seenOn: string) => readerSince(events, { importedOn: "2026-12-01", seenOn });

describe("who reads since films came from elsewhere", () => {
  it("is the last to whom the student was handed by then, with that day: no cover, and nobody who is still to come", () => {
    expect(on("2026-12-09")).toBeNull();
    expect(on("2026-12-10")).toEqual({ name: "Cy", since: "2026-12-10" });
    expect(on("2027-01-31")).toEqual({ name: "Cy", since: "2026-12-10" });
    expect(on("2027-02-01")).toEqual({ name: "Di", since: "2027-02-01" });
  });
});
