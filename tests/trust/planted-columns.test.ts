import { expect, it } from "vitest";
import { PLAIN, PRIVATE, textColumns } from "./planted-columns";

it("A4: each column of text is somebody's, and a word is planted in it, or nobody's, and it is said why", () => {
  const listed = [...Object.keys(PRIVATE), ...Object.keys(PLAIN)].sort();
  expect(listed).toEqual([...textColumns()]);
  expect(new Set(listed).size).toBe(listed.length);
  for (const why of Object.values(PLAIN)) expect(why.length).toBeGreaterThan(10);
  console.log(
    `A4: ${Object.keys(PRIVATE).length} columns of somebody's data, ${Object.keys(PLAIN).length} of nobody's`,
  );
});
