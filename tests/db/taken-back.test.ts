import { expect, test } from "vitest";
import { closeTakenBack, openTakenBack } from "@/db/taken-back";

test("a drill taken back ends the day before it began, and opens again to the end that it had", () => {
  for (const had of [
    { end: null, endWhy: null },
    { end: "2031-03-09", endWhy: "it worked" },
    { end: "2031-03-09", endWhy: null },
    { end: null, endWhy: '{"end":"x"}' },
  ]) {
    const closed = closeTakenBack({ start: "2031-03-01", ...had });
    expect(closed.end).toBe("2031-02-28");
    expect(openTakenBack(closed.endWhy)).toEqual(had);
  }
});

test("a row that was written otherwise opens without an end", () => {
  expect(openTakenBack(null)).toEqual({ end: null, endWhy: null });
  expect(openTakenBack("a slip")).toEqual({ end: null, endWhy: "a slip" });
});
