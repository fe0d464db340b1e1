import { expect, it } from "vitest";
import { pausing } from "@/lib/report/pausing";
import { student, track } from "./brief-parts";

it("a pause without an end is over once the student was filmed after it began; one with an end holds until then", () => {
  const students = [student("s1", "Ari", [track("s1", "hinge", {}, { days: ["2026-08-10"] })]), student("s2", "Bea")];
  const open = (studentId: string, day: string) => ({ studentId, day, endDay: null });
  const dated = { studentId: "s1", day: "2026-08-01", endDay: "2026-09-10" };
  expect([...pausing({ students, pauses: [open("s1", "2026-08-09"), open("s2", "2026-01-01")] }).keys()]).toEqual([
    "s2",
  ]);
  expect([...pausing({ students, pauses: [open("s1", "2026-08-10")] }).keys()]).toEqual(["s1"]);
  expect(pausing({ students, pauses: [dated] }).get("s1")).toEqual(dated);
});
