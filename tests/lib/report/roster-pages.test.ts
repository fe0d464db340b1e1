import { expect, test } from "vitest";
import { pagesShown } from "@/lib/report/roster-pages";

const list = { total: 2000, size: 60 };

test("2000 students in pages of 60: 34 pages, the last of 20; both ends and two on either side stand as links", () => {
  expect(pagesShown({ ...list, wished: undefined })).toEqual({ page: 1, from: 0, to: 60, numbers: [1, 2, 3, 34] });
  expect(pagesShown({ ...list, wished: "30" })).toEqual({
    page: 30,
    from: 1740,
    to: 1800,
    numbers: [1, 28, 29, 30, 31, 32, 34],
  });
  expect(pagesShown({ ...list, wished: "34" })).toEqual({ page: 34, from: 1980, to: 2000, numbers: [1, 32, 33, 34] });
});

test("what is no page shows the first", () => {
  for (const wished of ["0", "35", "-1", "1e1", "999999999999", "two", "", ["2", "3"]])
    expect(pagesShown({ ...list, wished }).page).toBe(1);
  expect(pagesShown({ total: 0, size: 60, wished: "2" })).toEqual({ page: 1, from: 0, to: 0, numbers: [1] });
});
