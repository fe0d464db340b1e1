import { expect, it } from "vitest";
import { byStudent } from "@/lib/report/by-student";

it("keeps rows in the order in which they came, by student", () => {
  const rows = [1, 2, 3].map((number) => ({ studentId: number === 2 ? "b" : "a", number }));
  expect([...byStudent(rows)]).toEqual([
    ["a", [rows[0], rows[2]]],
    ["b", [rows[1]]],
  ]);
  expect(byStudent([]).size).toBe(0);
});
