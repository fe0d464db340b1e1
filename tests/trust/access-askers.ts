import { findRow } from "@/app/_server/access/find-row";
import { type AccessRow, MATRIX, type RowKey } from "@/app/_server/access/matrix";
import type { Role } from "@/lib/domain/person";
import { addDemoFamily, type DemoLink, demoFamilyCookie, demoPageId } from "../e2e/demo-family";
import { builtRoutes } from "../e2e/routes";
import { expect } from "../e2e/watched";
import { addRoles, deadCookie, endPerson, reopenPerson, signIn, withDemo } from "./demo-roles";

/** Somebody who asks, as one role of the matrix. */
export interface Asker {
  readonly name: string;
  readonly roles: readonly Role[];
  /** Students in reach; `out`: whoever isn't logged in, or not any more. */
  readonly reach: "all" | "out" | readonly string[];
  readonly cookie: string;
  /** The family's page that the cookie opens; absent: none. */
  readonly page?: string;
}

/** Coach Wren's, whose records every address names, and Coach Lark's. */
export const [WRENS, LARKS] = ["s01", "s02"] as const;
/** What was begun by Wren, or by nobody who can be asked: an upload is its author's, an import its author's and a director's. */
const AUTHORS: Readonly<Record<string, readonly string[]>> = { "[draftId]": ["wren"], "[batchId]": ["wren", "dove"] };
/** A draw holds films of many students: whoever may see them all. */
const DRAWN = ["wren", "dove"];

async function logIn(name: string, roles: readonly Role[], reach: Asker["reach"]): Promise<Asker> {
  const { status, cookie } = await signIn(`${name}@demo.example`);
  expect([name, status]).toEqual([name, 303]);
  return { name, roles, reach, cookie };
}

/** Somebody who has followed a link; a family has no log-in, and is out everywhere but on its page. */
function family(which: DemoLink): Asker {
  const cookie = `proofband-academy=demo; ${demoFamilyCookie(which)}`;
  return { name: `family, ${which}`, roles: [], reach: "out", cookie };
}

/** One of each role, logged in; whoever the demo lacks is added to it. */
export async function bringAskers(): Promise<readonly Asker[]> {
  addDemoFamily();
  await addRoles();
  const charged = withDemo((db) =>
    db.sqlite.prepare<[], string>("SELECT student_id FROM charge WHERE coach_id = 'wren'").pluck().all(),
  );
  expect(charged).toContain(WRENS);
  expect(charged).not.toContain(LARKS);
  reopenPerson("gull");
  const gull = await logIn("gull", [], "out");
  endPerson("gull");
  return [
    { name: "nobody", roles: [], reach: "out", cookie: "proofband-academy=demo" },
    { name: "dead cookie", roles: [], reach: "out", cookie: await deadCookie() },
    { ...gull, name: "ended" },
    { ...family("live"), page: `/family/${demoPageId("live")}` },
    { ...family("foreign"), page: `/family/${demoPageId("foreign")}` },
    family("ended"),
    family("revoked"),
    { ...family("live"), name: "family, dead cookie", cookie: `${family("live").cookie.slice(0, -1)}_` },
    await logIn("owl", ["owner"], []),
    await logIn("dove", ["director"], "all"),
    await logIn("wren", ["owner", "director", "coach"], "all"),
    await logIn("lark", ["coach"], [LARKS]),
    await logIn("finch", ["coach"], []),
    await logIn("linnet", ["assistant"], charged),
  ];
}

export interface Case {
  readonly row: RowKey;
  readonly address: string;
  readonly student: string | null;
}

/** The pattern behind each built address, and the address with a student of Wren's in it. */
export function builtCases(): Case[] {
  const cases = builtRoutes().flatMap(({ path: address }): Case[] => {
    const row = findRow("GET", address);
    if (row === null || row.startsWith("GET /api/tables") || MATRIX[row].of === "key") return [];
    return [{ row, address, student: MATRIX[row].of === "student" ? WRENS : null }];
  });
  const tables = (Object.keys(MATRIX) as RowKey[]).flatMap((row): Case[] => {
    const [, address, of] = row.split(" ");
    if (of === undefined || address !== "/api/tables") return [];
    const which = new URLSearchParams({
      of,
      table: "0",
      student: WRENS,
      fundamental: "hinge",
      batch: "imported-for-the-tests",
    });
    return [{ row, address: `${address}?${which}`, student: MATRIX[row].of === "student" ? WRENS : null }];
  });
  return [...cases, ...tables];
}

export function may({ row }: Case, asker: Asker, student: string | null): boolean {
  const { roles }: AccessRow = MATRIX[row];
  if (roles !== undefined && !roles.some((role) => asker.roles.includes(role))) return false;
  if (row === "/rereads/[drawId]" && !DRAWN.includes(asker.name)) return false;
  const author = Object.entries(AUTHORS).find(([part]) => row.includes(part))?.[1];
  // How far an import is and what it did are told of one that has gone, too.
  if (author && !/\/(done|state)$/.test(row) && !author.includes(asker.name)) return false;
  return student === null || asker.reach === "all" || (asker.reach !== "out" && asker.reach.includes(student));
}

/** Why an answer is not what the matrix says; null: it is. */
export function wrong(
  one: Case,
  asker: Asker,
  student: string | null,
  answer: { status: number; location: string },
): string | null {
  const { status, location } = answer;
  const told = `${asker.name}: ${one.address} ${status} ${location}`;
  if (MATRIX[one.row].of === "link") {
    if (one.address === asker.page) return status === 200 ? null : told;
    // A secret that opens nothing is slowed after many.
    return status === 404 || (one.row.includes("[token]") && status === 429) ? null : told;
  }
  // A one-time link that opens nothing looks alike for everybody.
  if (one.row === "/join/[token]") return status === 404 ? null : told;
  if (MATRIX[one.row].of === "nobody") return status < 400 || status === 405 ? null : told;
  if (asker.reach === "out") {
    const isApi = one.address.startsWith("/api/");
    return isApi ? (status === 401 ? null : told) : status === 303 && location.startsWith("/sign-in") ? null : told;
  }
  if (!may(one, asker, student)) return status === 404 ? null : told;
  const isTable = one.row.startsWith("GET /api/tables");
  if (location.includes("/sign-in")) return told;
  return status < 400 ||
    (isTable && status === 404) ||
    /\/(done|state|rest|rows|progress)$|rereads.*\/svg$/.test(one.row)
    ? null
    : told;
}
