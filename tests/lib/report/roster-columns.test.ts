import { expect, test } from "vitest";
import { BUILT_IN } from "@/lib/domain/catalogue";
import { chooseColumns } from "@/lib/report/roster-columns";
import type { RosterSource } from "@/lib/report/roster-source";
import { student, track } from "./made-roster";

const ids = BUILT_IN.map(({ id }) => id as string);
const [often = "", half = "", seldom = ""] = ids;

/** Eight students: all have the first fundamental, four the second, one the third. */
function source(asked: string | null): RosterSource {
  const students = Array.from({ length: 8 }, (_, at) =>
    student(
      `S${at}`,
      "2026-09-01",
      [often, ...(at < 4 ? [half] : []), ...(at < 1 ? [seldom] : [])].map((id) => track(id, {})),
    ),
  );
  return { students, fundamentals: BUILT_IN, asked } as unknown as RosterSource;
}

const columns = (of: RosterSource) => chooseColumns(of).map(({ id }) => id as string);

test("of eight students one is fewer than a quarter: no column, unless the roster is filtered by it", () => {
  expect(columns(source(null))).toEqual([often, half]);
  expect([...columns(source(seldom))].sort()).toEqual([often, half, seldom].sort());
});

test("where everything is seldom measured, what is measured most still is a column", () => {
  const students = [
    student("One", "2026-09-01", [track(often, {})]),
    ...Array.from({ length: 9 }, (_, at) => student(`N${at}`)),
  ];
  expect(columns({ ...source(null), students })).toEqual([often]);
  expect(columns({ ...source(null), students: [] })).toEqual([]);
});

test("never more than eight, the asked one among them, in the order of work", () => {
  const students = Array.from({ length: 4 }, (_, at) =>
    student(
      `S${at}`,
      "2026-09-01",
      ids.slice(0, at === 0 ? 12 : 11).map((id) => track(id, {})),
    ),
  );
  const asked = ids[11] ?? "";
  const chosen = chooseColumns({ ...source(asked), students });
  expect(chosen).toHaveLength(8);
  expect(chosen.map(({ id }) => id as string)).toContain(asked);
  expect(chosen.map(({ order }) => order)).toEqual(chosen.map(({ order }) => order).toSorted((a, b) => a - b));
});
