import { describe, expect, it } from "vitest";
import { parseHandingForm } from "@/lib/ingest/parse-handing-form";

const CONTEXT = { today: "2026-11-26", coaches: ["bo", "cy"] };

function read(fields: Readonly<Record<string, string>>) {
  const data = new FormData();
  for (const [name, value] of Object.entries(fields)) data.set(name, value);
  return parseHandingForm(data, CONTEXT);
}

function codes(fields: Readonly<Record<string, string>>): readonly string[] {
  const read_ = read(fields);
  return read_.kind === "issues" ? read_.issues.map(({ field, code }) => `${field} ${code}`) : [];
}

describe("parseHandingForm", () => {
  it("reads a hand-over; without a day it is today's", () => {
    expect(read({ coach: "bo" })).toEqual({
      kind: "ok",
      value: { kind: "own", coachId: "bo", from: "2026-11-26", until: null, note: "" },
    });
  });

  it("reads a cover with its last day and a note", () => {
    expect(read({ kind: "cover", coach: "cy", from: "2026-12-01", until: "2026-12-01", note: " grip first " })).toEqual(
      {
        kind: "ok",
        value: { kind: "cover", coachId: "cy", from: "2026-12-01", until: "2026-12-01", note: "grip first" },
      },
    );
  });

  it("refuses nobody, a stranger, days that are over, a year ahead and no day at all", () => {
    expect(codes({})).toEqual(["coach missing"]);
    expect(codes({ coach: "stranger" })).toEqual(["coach not-a-choice"]);
    expect(codes({ coach: "bo", from: "2026-11-25" })).toEqual(["from past-day"]);
    expect(codes({ coach: "bo", from: "2027-11-27" })).toEqual([]);
    expect(codes({ coach: "bo", from: "2027-11-28" })).toEqual(["from too-far-ahead"]);
    expect(codes({ coach: "bo", from: "2026-02-30" })).toEqual(["from not-a-date"]);
    expect(codes({ kind: "theft", coach: "bo" })).toEqual(["kind not-a-choice"]);
  });

  it("asks a cover for its last day, and a hand-over for none", () => {
    expect(codes({ kind: "cover", coach: "bo" })).toEqual(["until missing"]);
    expect(codes({ kind: "cover", coach: "bo", from: "2026-12-02", until: "2026-12-01" })).toEqual([
      "until ends-before",
    ]);
    expect(codes({ kind: "own", coach: "bo", until: "2026-12-01" })).toEqual(["until until-of-cover"]);
  });

  it("refuses a note that is too long or holds marks that can't be seen, and never cuts it", () => {
    expect(codes({ coach: "bo", note: "x".repeat(600) })).toEqual([]);
    expect(codes({ coach: "bo", note: "x".repeat(601) })).toEqual(["note too-long"]);
    expect(codes({ coach: "bo", note: "a\u202eb" })).toEqual(["note hidden-mark"]);
  });
});
