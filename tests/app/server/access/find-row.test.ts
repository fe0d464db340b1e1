import { describe, expect, it } from "vitest";
import { findRow, opensPage } from "@/app/_server/access/find-row";
import { type AccessRow, MATRIX, type RowKey } from "@/app/_server/access/matrix";
import { countCases } from "../../../trust/count-cases";

const A1 = countCases("A1 (unit): rows found by address", 250);
const rows = Object.keys(MATRIX) as RowKey[];
/** Rows that an address alone leads to: an action has its page's, a table stands behind its own. */
const addressed = rows.filter((row) => (row.startsWith("/") ? !row.includes(" ") : row.split(" ").length === 2));

function split(row: RowKey): { readonly method: string; readonly pattern: string } {
  const [first = "", second] = row.split(" ");
  return second === undefined ? { method: "GET", pattern: first } : { method: first, pattern: second };
}

const filled = (pattern: string): string => pattern.replace(/\[[^\]]+\]/g, "x-1");

describe("the row of an address", () => {
  it("is its own, for every row of the matrix, with a stroke at the end, and with HEAD for GET", () => {
    expect(addressed.length).toBeGreaterThan(80);
    for (const row of addressed) {
      const { method, pattern } = split(row);
      const found = [filled(pattern), pattern === "/" ? "/" : `${filled(pattern)}/`].map((address) =>
        findRow(method, address),
      );
      const asked = method === "GET" ? findRow("HEAD", filled(pattern)) : row;
      expect([row, ...found, asked]).toEqual([row, row, row, row]);
      A1.add(3);
    }
  });

  it("is the one spelt out before the one that may be anything", () => {
    expect(findRow("GET", "/students/new")).toBe("/students/new");
    expect(findRow("GET", "/students/s1/drills")).toBe("/students/[studentId]/drills");
    expect(findRow("GET", "/students/s1/hinge")).toBe("/students/[studentId]/[fundamental]");
    expect(findRow("GET", "/students/s1/sessions/new")).toBe("/students/[studentId]/sessions/new");
    expect(findRow("GET", "/import/past")).toBe("/import/past");
    expect(findRow("GET", "/api/students/s1/history/csv")).toBe("GET /api/students/[studentId]/history/csv");
    A1.add(6);
  });

  it("is none for an address that nobody has, an empty part, another method or other letters", () => {
    for (const [method, address] of [
      ["GET", "/nothing"],
      ["GET", "/students//drills"],
      ["GET", "/STUDENTS"],
      ["GET", "/students/s1/drills/d1/more"],
      ["GET", "//"],
      ["GET", "//students"],
      ["GET", ""],
      ["GET", "/api/sign-in"],
      ["DELETE", "/api/import"],
      ["GET", "/api/auth/sign-in/email"],
      ["POST", "/api/auth/sign-in/email"],
      ["GET", "/__proto__"],
    ] as const) {
      expect([method, address, findRow(method, address)]).toEqual([method, address, null]);
      A1.add();
    }
  });

  it("where two could be meant is of one kind and one set of roles", () => {
    const clashes: string[] = [];
    for (const one of addressed)
      for (const two of addressed) {
        const [a, b] = [split(one), split(two)];
        if (one >= two || a.method !== b.method || open(a.pattern) !== open(b.pattern)) continue;
        if (!meets(a.pattern, b.pattern)) continue;
        const [x, y]: AccessRow[] = [MATRIX[one], MATRIX[two]];
        if (JSON.stringify(x) !== JSON.stringify(y)) clashes.push(`${one} / ${two}`);
      }
    expect(clashes).toEqual([]);
  });

  it("opens a page to whoever has one of its roles", () => {
    expect(opensPage("/students", ["coach"])).toBe(true);
    expect(opensPage("/students", ["owner"])).toBe(false);
    expect(opensPage("/students", ["assistant"])).toBe(false);
    expect(opensPage("/record", ["assistant"])).toBe(true);
    expect(opensPage("/record", [])).toBe(false);
    expect(opensPage("/settings", [])).toBe(true);
    expect(opensPage("/nothing", ["owner", "director", "coach"])).toBe(false);
    A1.add(7);
  });
});

function open(pattern: string): number {
  return pattern.split("[").length;
}

/** Whether some address fits both. */
function meets(one: string, two: string): boolean {
  const [a, b] = [one.split("/"), two.split("/")];
  return (
    a.length === b.length &&
    a.every((part, place) => part === b[place] || part.startsWith("[") || (b[place] ?? "").startsWith("["))
  );
}
