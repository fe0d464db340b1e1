// biome-ignore-all lint/suspicious/noTemplateCurlyInString: the planted sources hold templates of their own
import { describe, expect, it } from "vitest";
import {
  buildsRawSql,
  coercesNumbers,
  exportsFunction,
  opensAtLoad,
  outsideReaches,
  scopeClaims,
  tradeWords,
} from "./banned-code";

describe("outsideReaches", () => {
  it.each([
    "const now = Date.now();",
    "const now = new Date();",
    "const now = new Date;",
    "const now = Date();",
    "const r = Math.random();",
    "const id = crypto.randomUUID();",
    "const home = process.env.HOME;",
    "const p = globalThis.process;",
    "const a = `${performance.now()}`;",
    "console.log(1);",
    "setTimeout(f, 1);",
    "const zone = new Intl.DateTimeFormat().resolvedOptions().timeZone;",
    "const mode = import.meta.env.MODE;",
  ])("catches %s", (source) => {
    expect(outsideReaches(source).length).toBeGreaterThan(0);
  });

  it.each([
    "// Date.now()",
    'const a = "Math.random()";',
    "const day = new Date(2024, 1, 1);",
    "const a = track.process.sd;",
    "type D = Date;",
  ])("lets %s pass", (source) => {
    expect(outsideReaches(source)).toEqual([]);
  });
});

describe("tradeWords", () => {
  it("catches a word in a comment, in a name and in capitals", () => {
    expect(tradeWords("// each Swing of a student\nconst cameraSd = 1;")).toEqual(["Swing", "student", "camera"]);
  });

  it("lets replicate, group and known sd pass", () => {
    expect(tradeWords("const replicateSd = 1; // of a group, always known")).toEqual([]);
  });
});

describe("scopeClaims", () => {
  it.each([
    "const a = b as StudentScope;",
    "const a = b as unknown as StudentScope;",
    "const a = b as readonly StudentScope[];",
    "const a = b as Array<StudentScope>;",
    "const a = b as Scope | StudentScope;",
    "const a = <StudentScope>b;",
    "function is(a: unknown): a is StudentScope { return true; }",
    'import { type StudentScope as Loose } from "@/lib/domain/scope";',
    "const a = { studentId } as PainScope;",
    "const a = b as PainScope | null;",
  ])("catches %s", (source) => {
    expect(scopeClaims(source, "script")).toEqual([1]);
  });

  it.each([
    "function a(scope: StudentScope): Promise<StudentScope> {}",
    "// as StudentScope",
    "const a = new Map<string, StudentScope>();",
  ])("lets %s pass", (source) => {
    expect(scopeClaims(source, "script")).toEqual([]);
  });
});

describe("smaller bans", () => {
  it("catches z.coerce.number, and not z.number or the words in a string", () => {
    expect(coercesNumbers("const a = z.coerce.number();", "script")).toBe(true);
    expect(coercesNumbers("const a = z\n  .coerce\n  .number();", "script")).toBe(true);
    expect(coercesNumbers('const a = z.number(); "coerce.number"', "script")).toBe(false);
  });

  it("catches sql.raw, and not a tagged template", () => {
    expect(buildsRawSql("const a = sql.raw(text);", "script")).toBe(true);
    expect(buildsRawSql("const a = sql`select ${b}`;", "script")).toBe(false);
  });

  it.each([
    'import { openDatabase } from "@/db/client"; export const db = openDatabase("a");',
    'import { openDatabase } from "../client"; const f = () => 1; const db = wrap(openDatabase("a"));',
    'import Sqlite from "better-sqlite3"; const db = new Sqlite("a");',
    'import { drizzle } from "drizzle-orm/better-sqlite3"; export const held = { orm: drizzle(file) };',
  ])("catches a database opened at load: %s", (source) => {
    expect(opensAtLoad(source.replace("../client", "@/db/client"), "script")).toHaveLength(1);
  });

  it.each([
    'import { openDatabase } from "@/db/client"; export function db() { return openDatabase("a"); }',
    'import { openDatabase } from "@/db/client"; export const db = cache(() => openDatabase("a"));',
    'import type { Database } from "@/db/client"; export const a: Database | null = null;',
  ])("lets a database opened on call pass: %s", (source) => {
    expect(opensAtLoad(source, "script")).toEqual([]);
  });

  it("knows a statistic by the function that it exports", () => {
    expect(exportsFunction("export function mean(a: number[]): number { return 0; }")).toBe(true);
    expect(exportsFunction("export const mean = (a: number[]): number => 0;")).toBe(true);
    expect(exportsFunction("export const LIMIT = (1 + 2) / 3;\nexport interface A { f(): void }")).toBe(false);
    expect(exportsFunction("export const names = [1].map((n) => n);")).toBe(false);
  });
});
