import type { Role } from "@/lib/domain/person";
import { MATRIX, mayPass, type RowKey } from "./matrix";

interface Pattern {
  readonly row: RowKey;
  readonly method: string | null;
  readonly parts: readonly string[];
}

// An action has the address of its page, and is asked about behind it; a table stands behind its own address.
const PATTERNS: readonly Pattern[] = (Object.keys(MATRIX) as RowKey[])
  .flatMap((row): Pattern[] => {
    const [first = "", second] = row.split(" ");
    if (first.startsWith("/")) return second === undefined ? [{ row, method: null, parts: first.split("/") }] : [];
    return [{ row, method: first, parts: (second ?? "").split("/") }];
  })
  // A part that is spelt out comes before one that may be anything.
  .sort((a, b) => openParts(a) - openParts(b));

function openParts({ parts }: Pattern): number {
  return parts.filter((part) => part.startsWith("[")).length;
}

/** The line of the matrix that an address belongs to; null: it is none of ours. */
export function findRow(method: string, pathname: string): RowKey | null {
  const asked = (pathname.length > 1 ? pathname.replace(/\/+$/, "") : pathname).split("/");
  const read = method === "HEAD" ? "GET" : method;
  const found = PATTERNS.find(
    (pattern) =>
      (pattern.method === null || pattern.method === read) &&
      pattern.parts.length === asked.length &&
      pattern.parts.every((part, place) => part === asked[place] || (part.startsWith("[") && asked[place] !== "")),
  );
  return found?.row ?? null;
}

/** Whether somebody of some roles may open a page; an address that is none of ours they may not. */
export function opensPage(pathname: string, roles: readonly Role[]): boolean {
  const row = findRow("GET", pathname);
  return row !== null && mayPass(row, roles);
}
