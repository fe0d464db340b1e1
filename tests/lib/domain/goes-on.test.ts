import { expect, test } from "vitest";
import { goesOn } from "@/lib/domain/goes-on";
import { EVENT_KINDS } from "@/lib/domain/student";

test("a break and a pause go on until a last day is said; what is a day never goes on", () => {
  expect(EVENT_KINDS.filter((kind) => goesOn({ kind }))).toEqual(["break", "injury", "pause"]);
  expect(EVENT_KINDS.filter((kind) => goesOn({ kind, endDay: null }))).toEqual(["break", "injury", "pause"]);
  expect(EVENT_KINDS.filter((kind) => goesOn({ kind, endDay: "2026-05-03" }))).toEqual([]);
});
