import { expect, it } from "vitest";
import { usedDays } from "@/lib/report/used-days";
import { track } from "./brief-parts";

it("days on which any track has a film that counts, in order, each once", () => {
  const hinge = track("s1", "hinge", {}, { days: ["2026-08-24", "2026-08-30"], marks: ["used", "aided"] });
  const sway = track("s1", "hip-sway", {}, { days: ["2026-08-17", "2026-08-24"], marks: ["set-aside", "used"] });
  expect(usedDays({ summaries: [hinge, sway] })).toEqual(["2026-08-24"]);
  expect(usedDays({ summaries: [] })).toEqual([]);
});
