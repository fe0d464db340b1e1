import { describe, expect, it } from "vitest";
import { announcedDue, keepingEnd } from "@/lib/domain/keeping";

describe("keepingEnd", () => {
  it("a departed student's record: 24 months after 10 January 2031 is 10 January 2033", () => {
    expect(keepingEnd({ departedOn: "2031-01-10", lastEntered: "2032-05-05" }, 24)).toEqual({
      kind: "departed",
      endDay: "2033-01-10",
    });
  });

  it("an idle record: 6 months after the last entry; a month that is shorter ends it on its last day", () => {
    expect(keepingEnd({ departedOn: null, lastEntered: "2031-08-31" }, 6)).toEqual({
      kind: "idle",
      endDay: "2032-02-29",
    });
  });

  it("throws for what is no number of months", () => {
    for (const months of [0, -1, 1.5, Number.NaN])
      expect(() => keepingEnd({ departedOn: null, lastEntered: "2031-01-01" }, months)).toThrow(RangeError);
  });
});

describe("announcedDue", () => {
  it("is the end itself when it is announced in time, exactly 30 days before", () => {
    expect(announcedDue("2031-01-31", "2031-01-01", 30)).toBe("2031-01-31");
  });

  it("is too early 31 days before", () => {
    expect(announcedDue("2031-02-01", "2031-01-01", 30)).toBeNull();
  });

  it("is 30 days after the announcement where the end is past already", () => {
    expect(announcedDue("2029-01-01", "2031-01-01", 30)).toBe("2031-01-31");
  });
});
