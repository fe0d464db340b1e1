import { describe, expect, it } from "vitest";
import {
  buildsRawSql,
  coercesNumbers,
  exportsFunction,
  opensAtLoad,
  outsideReaches,
  scopeClaims,
  tradeWords,
} from "./structure/banned-code";
import { findCycles } from "./structure/find-cycles";
import { roomOf, targetOf, whyForbidden } from "./structure/import-table";
import { isCode, readProject } from "./structure/project-files";
import { scanImports } from "./structure/scan-imports";
import { titleWords, userWords } from "./structure/user-words";

const files = readProject();
const code = files.filter(isCode);
const names = new Set(files.map((file) => file.name));
const LONGEST = 250;

function within(...folders: string[]) {
  return code.filter((file) => folders.some((folder) => file.name.startsWith(`${folder}/`)));
}

/** The file that an import without an extension means; null: nothing of the house. */
function resolve(file: string, from: string): string | null {
  const target = targetOf(file, from);
  if (target.kind === "package") return null;
  return (
    [target.name, ...[".ts", ".tsx", ".mjs"].map((end) => target.name + end)].find((name) => names.has(name)) ?? null
  );
}

describe("the house", () => {
  it("has files to look at in lib, db, app, seed and tests", () => {
    for (const room of ["lib", "db", "app", "seed", "tests"]) expect(within(room).length, room).toBeGreaterThan(0);
  });

  it("every file stands in a room, and in app is of a known kind", () => {
    expect(code.filter((file) => roomOf(file.name) === null).map((file) => file.name)).toEqual([]);
  });

  it("imports only what the table of DEVELOPERS.md allows", () => {
    const forbidden = code.flatMap((file) =>
      scanImports(file.text, file.dialect).flatMap((one) => {
        const why = whyForbidden(file.name, one);
        return why ? [`${why}, line ${one.line}`] : [];
      }),
    );
    expect(forbidden).toEqual([]);
  });

  it("has no ring of files that import one another", () => {
    const graph = new Map(
      code.map((file) => [
        file.name,
        scanImports(file.text, file.dialect).flatMap((one) => resolve(file.name, one.from) ?? []),
      ]),
    );
    expect(findCycles(graph).map((ring) => ring.join(" -> "))).toEqual([]);
  });

  it(`holds no file of more than ${LONGEST} lines`, () => {
    const long = files.map((file) => [file.name, file.text.trimEnd().split("\n").length] as const);
    expect(long.filter(([, lines]) => lines > LONGEST)).toEqual([]);
  });
});

describe("lib", () => {
  it("reaches for no clock, chance, environment or console", () => {
    const reaches = within("lib").flatMap((file) => outsideReaches(file.text).map((one) => `${file.name}: ${one}`));
    expect(reaches).toEqual([]);
  });

  it("lib/stats knows no word of the trade, in names, code or comments", () => {
    const words = within("lib/stats").flatMap((file) =>
      [...tradeWords(file.name), ...tradeWords(file.text)].map((word) => `${file.name}: ${word}`),
    );
    expect(words).toEqual([]);
  });

  it("every statistic has a test of the same name", () => {
    const owing = within("lib/stats").filter((file) => exportsFunction(file.text));
    const missing = owing
      .map((file) => `tests/${file.name.replace(/\.ts$/, ".test.ts")}`)
      .filter((name) => !names.has(name));
    expect(owing.length).toBeGreaterThan(0);
    expect(missing).toEqual([]);
  });
});

describe("app and db", () => {
  it("app writes no words for users: they come from the messages", () => {
    const words = within("app")
      .filter((file) => file.dialect === "markup")
      .flatMap((file) =>
        [...userWords(file.text), ...titleWords(file.text)].map((one) => `${file.name}:${one.line}: ${one.text}`),
      );
    expect(words).toEqual([]);
  });

  it("a student's scope is proved by the gate, never claimed", () => {
    const claims = code
      .filter((file) => !/^app\/_server\/(family-)?gate\.ts$/.test(file.name) && !/^(seed|tests)\//.test(file.name))
      .flatMap((file) => scopeClaims(file.text, file.dialect).map((line) => `${file.name}:${line}`));
    expect(claims).toEqual([]);
  });

  it("no number is coerced out of a form: an empty field would be 0", () => {
    expect(code.filter((file) => coercesNumbers(file.text, file.dialect)).map((file) => file.name)).toEqual([]);
  });

  it("no SQL is put together from strings", () => {
    const raw = within("app", "db").filter((file) => buildsRawSql(file.text, file.dialect));
    expect(raw.map((file) => file.name)).toEqual([]);
  });

  it("no module opens the database while it loads", () => {
    const opening = within("app", "db").filter((file) => !file.name.startsWith("app/_commands/"));
    expect(
      opening.flatMap((file) => opensAtLoad(file.text, file.dialect).map((name) => `${file.name}: ${name}`)),
    ).toEqual([]);
  });
});
