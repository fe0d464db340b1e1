import { describe, expect, it } from "vitest";
import { MATRIX, type RowKey } from "@/app/_server/access/matrix";
import { PAGES_WITH_TABLES } from "@/app/_server/archive/table-links";
import { countCases } from "../trust/count-cases";
import { readProject } from "./project-files";

// A1: what is built and what is listed are the same, and each asks the gate by its own row.

const A1 = countCases("A1: pages, actions and routes against the matrix", 120);
const files = readProject().filter(({ name }) => name.startsWith("app/"));
const rows = Object.keys(MATRIX) as RowKey[];

/** The address of a folder: `app/(coach)/students` is `/students`. */
function addressOf(file: string): string {
  const folder = file.replace(/^app/, "").replace(/\/[^/]+$/, "");
  return folder.replace(/\/\([^)]+\)/g, "") || "/";
}

const pages = files.filter(({ name }) => name.endsWith("/page.tsx"));
const routes = files.filter(({ name }) => name.endsWith("/route.ts"));
const actions = files.filter(({ text }) => /^"use server";/m.test(text));

/** Exported functions of a file with the text up to the next one. */
function exported(text: string): { readonly name: string; readonly body: string }[] {
  const parts = text.split(/^export (?=(?:async )?function |const )/m).slice(1);
  return parts.map((body) => ({ name: /^(?:async )?(?:function|const) (\w+)/.exec(body)?.[1] ?? "", body }));
}

const METHODS = new Set(["GET", "POST", "PUT", "PATCH", "DELETE", "HEAD", "OPTIONS"]);
const TABLES = "GET /api/tables";

const builtPages = pages.map(({ name }) => addressOf(name)).sort();
const builtActions = actions
  .flatMap(({ name, text }) => exported(text).map((one) => `${addressOf(name)} ${one.name}`))
  .sort();
const builtRoutes = routes
  .flatMap(({ name, text }) =>
    exported(text)
      .filter((one) => METHODS.has(one.name))
      .map((one) => `${one.name} ${addressOf(name)}`),
  )
  .sort();

describe("the matrix of who may do what", () => {
  it("lists every page, and no other", () => {
    expect(rows.filter((row) => /^\/\S*$/.test(row)).sort()).toEqual(builtPages);
    A1.add(builtPages.length);
  });

  it("lists every action by its page, and no other; none stands outside a file of actions", () => {
    expect(actions.map(({ name }) => name).filter((name) => !name.endsWith("/actions.ts"))).toEqual([]);
    expect(files.filter(({ text }) => /^\s+"use server";/m.test(text)).map(({ name }) => name)).toEqual([]);
    expect(rows.filter((row) => /^\/\S* \S+$/.test(row)).sort()).toEqual(builtActions);
    A1.add(builtActions.length);
  });

  it("lists every other address with its methods, and no other", () => {
    const listed = rows.filter((row) => /^[A-Z]+ \S+$/.test(row)).sort();
    expect(listed).toEqual(builtRoutes.filter((row) => row !== TABLES));
    A1.add(builtRoutes.length);
  });

  it("lists every table that can be taken out, and no other", () => {
    const listed = rows.filter((row) => row.startsWith(`${TABLES} `)).map((row) => row.slice(TABLES.length + 1));
    expect(listed.sort()).toEqual([...PAGES_WITH_TABLES].sort());
    A1.add(listed.length);
  });

  it("is asked by every page and every action with its own row before anything else is done", () => {
    const unasked: string[] = [];
    for (const { name, text } of pages) {
      const row = addressOf(name) as RowKey;
      if (MATRIX[row].of === "nobody") continue;
      if (!text.includes(`"${row}"`)) unasked.push(name);
    }
    for (const { name, text } of actions)
      for (const one of exported(text)) {
        const asked = /require(?:Viewer|Student|LogIn)\(\s*(?:"([^"]+)"|`([^`]+)`)/.exec(one.body);
        if (asked?.[1] !== `${addressOf(name)} ${one.name}`) unasked.push(`${name} ${one.name}`);
      }
    expect(unasked).toEqual([]);
    A1.add(builtPages.length + builtActions.length);
  });

  it("a row about a student is about one where a student is named, and only there", () => {
    const odd = rows.filter((row) => {
      const [first = "", second = ""] = row.split(" ");
      const address = first.startsWith("/") ? first : second;
      return address.includes("[studentId]") && MATRIX[row].of !== "student" && !row.endsWith(" keepGrid");
    });
    expect(odd).toEqual([]);
  });

  it("nobody without a log-in passes but where somebody logs in or begins, and to learn that the server lives", () => {
    expect(rows.filter((row) => MATRIX[row].of === "nobody").sort()).toEqual([
      "/join/[token]",
      "/sign-in",
      "/sign-in/code",
      "/start",
      "GET /api/health",
      "POST /api/academy",
      "POST /api/join",
      "POST /api/sign-in",
      "POST /api/sign-in/code",
      "POST /api/sign-out",
      "POST /api/start",
    ]);
  });

  it("an owner who is nothing else passes no row about students", () => {
    const open = rows.filter((row) => {
      const { of, ...rest } = MATRIX[row] as { of: string; roles?: readonly string[] };
      return of === "student" && (rest.roles === undefined || rest.roles.includes("owner"));
    });
    expect(open).toEqual([]);
  });
});
