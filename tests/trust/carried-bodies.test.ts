import { describe, expect, it } from "vitest";
import { archiveText } from "@/lib/domain/archive";
import { carriedText, LONGEST_CARRIED, parseCarried, type SaidLook } from "@/lib/domain/carried-look";
import { carryLooks } from "@/lib/ingest/carry-looks";
import { readArchive } from "@/lib/ingest/read-archive";
import { oneStudent, SAID, SESSION_DAY } from "../lib/ingest/carried-archive";
import { readProject } from "../structure/project-files";
import { seededUniform } from "./child";
import { countCases } from "./count-cases";

// A file says what another academy said: hostile bodies are refused, or nothing of them is kept.

const SEED = 20261127;
const cases = countCases(`hostile looks in an archive (seed ${SEED})`, 300);

const HOSTILE: readonly unknown[] = [
  ...[null, 7, -0, "gain", "<script>alert(1)</script>", [], {}, true, "x".repeat(1_000_000), "2026-13-40"],
  ...[1e308, -1e308, { estimate: 1 }, ["gain"], "\u202egain", "__proto__", "constructor", "9".repeat(400)],
];

/** Every place in a value, as a path of names. */
function pathsOf(value: unknown, path: readonly string[] = []): (readonly string[])[] {
  if (typeof value !== "object" || value === null) return [path];
  return [path, ...Object.entries(value).flatMap(([name, inner]) => pathsOf(inner, [...path, name]))];
}

function replaced(value: unknown, [name, ...rest]: readonly string[], by: unknown): unknown {
  if (name === undefined) return by;
  return { ...(value as object), [name]: replaced((value as Record<string, unknown>)[name], rest, by) };
}

/** An archive that carries one look with that body, as it comes in. */
function read(body: string) {
  return readArchive(new TextEncoder().encode(JSON.stringify({ ...oneStudent({ carried: [body] }), version: 1 })));
}

describe("a carried look in a file", () => {
  it("as it was said comes in, and is one text", () => {
    expect(read(carriedText(SAID)).kind).toBe("archive");
    expect(parseCarried(carriedText(SAID))).toEqual(SAID);
    cases.add(2);
  });

  it("with a wrong kind in any of its places is refused by its place; none comes in", () => {
    let equal = 0;
    for (const path of pathsOf(SAID))
      for (const wrong of HOSTILE) {
        const body = JSON.stringify(replaced(SAID, path, wrong));
        const came = parseCarried(body);
        // Some of these are right where they stand: a figure is a figure, and null may be nothing.
        if (came !== null) {
          expect(JSON.parse(carriedText(came))).toEqual(JSON.parse(body));
          expect(carriedText(came)).not.toMatch(/script|proto|constructor|\u202e/);
          equal += 1;
        } else expect(read(body)).toMatchObject({ kind: "broken" });
        cases.add();
      }
    expect(equal).toBeLessThan(200);
  });

  it.each([
    ["with a field that isn't one", JSON.stringify({ ...SAID, note: "<b>Your child has gained</b>" })],
    ["with __proto__", `{"__proto__":{"verdict":"gain"},${JSON.stringify(SAID).slice(1)}`],
    ["that is a list", "[]"],
    ["that is no JSON", "{"],
    ["of a hundred thousand brackets", "[".repeat(100_000)],
    ["of a megabyte", JSON.stringify({ ...SAID, date: "x".repeat(1_000_000) })],
    ["of another day than its session's", carriedText({ ...SAID, date: "2026-01-01" })],
    ["one letter too long", `${carriedText(SAID)}${" ".repeat(LONGEST_CARRIED - carriedText(SAID).length + 1)}`],
  ])("%s is refused", (_what, body) => {
    expect(read(body)).toMatchObject({ kind: "broken" });
    expect(Object.keys(Object.prototype)).toEqual([]);
    expect(({} as Record<string, unknown>).verdict).toBeUndefined();
    cases.add();
  });

  it("after a session, of a fundamental or by a name that isn't right is refused; twice the same too", () => {
    const whole = oneStudent({ carried: [carriedText(SAID)] });
    const [student] = whole.students;
    const [one] = student?.carried ?? [];
    const wrong = [
      [{ ...one, sessionId: "nowhere" }],
      [{ ...one, fundamentalId: "own-unknown" }],
      [{ ...one, saidBy: "Range\u202e" }],
      [{ ...one, saidBy: "x".repeat(201) }],
      [{ ...one, clubGroup: "putter<b>" }],
      [one, one],
      [{ ...one, extra: 1 }],
    ];
    for (const carried of wrong) {
      const text = JSON.stringify({ ...whole, students: [{ ...student, carried }] });
      expect(readArchive(new TextEncoder().encode(text)).kind).toBe("broken");
      cases.add();
    }
  });
});

describe("a snapshot in a file", () => {
  const looksOf = (body: string) => {
    const made = oneStudent({ snapshot: body });
    return carryLooks(made.students[0] as never, "Far Range", () => false);
  };
  const snapshot = (verdict: unknown): string => JSON.stringify({ track: {}, verdict });
  const good = {
    ...{ moved: null, evidence: { noChange: 0.4, limit: 2 }, levelNow: null, position: null, change: null },
    ...{ changeBelow: 3, ownedSince: null, words: "<b>gained</b>" },
    looks: [{ date: SESSION_DAY, verdict: "open", logBayesFactor: 0.2, directionUp: 0.5, note: "<i>x</i>" }],
  };

  it("gives its looks and nothing else of what stands in it", () => {
    const [look] = looksOf(snapshot(good));
    expect(parseCarried(look?.body ?? "")).toMatchObject({ verdict: "open", logBayesFactor: 0.2 });
    expect(look?.body).not.toMatch(/gained|<i>/);
    cases.add();
  });

  it("with anything hostile in any of its places gives a right look or none, and never throws", () => {
    const uniform = seededUniform(SEED);
    for (const path of pathsOf(good))
      for (let tried = 0; tried < 6; tried++) {
        const wrong = HOSTILE[Math.floor(uniform() * HOSTILE.length)];
        for (const look of looksOf(snapshot(replaced(good, path, wrong)))) {
          const said = parseCarried(look.body) as SaidLook;
          expect(said.date).toBe(SESSION_DAY);
          expect(look.body.length).toBeLessThan(LONGEST_CARRIED);
          expect(look.body).not.toMatch(/script|gained|\u202e/);
        }
        cases.add();
      }
    for (const body of ["", "null", "[]", "{", "[".repeat(100_000), `{"verdict":{"__proto__":{"looks":[]}}}`])
      expect(looksOf(body)).toEqual([]);
  });

  it("over the limit refuses the file, and what came in goes out as one text again", () => {
    const long = oneStudent({ snapshot: JSON.stringify({ x: "y".repeat(1_000_001) }) });
    expect(readArchive(new TextEncoder().encode(JSON.stringify(long))).kind).toBe("broken");
    const whole = oneStudent({ carried: [carriedText(SAID)] });
    const came = readArchive(new TextEncoder().encode(JSON.stringify(whole)));
    expect(came.kind === "archive" && archiveText(came.archive)).toBe(archiveText(whole));
    cases.add(2);
  });
});

describe("what reads carried looks", () => {
  it("is the part of a page that names who said them, and what takes them out or erases them; nothing that judges or lists", () => {
    const readers = readProject()
      .filter(
        ({ name, text }) =>
          !name.startsWith("tests/") && /readCarriedLooks|readArchivedCarried|\bcarried_look\b/.test(text),
      )
      .map(({ name }) => name);
    expect(readers.filter((name) => !/^db\/(migrations|schema)/.test(name)).toSorted()).toEqual(
      [
        ...["app/_server/season/load-carried.ts", "app/_server/erase/load-erase.ts", "db/write/erase-student.ts"],
        ...["db/read/archive-student.ts", "db/read/archive-told.ts", "db/read/carried-looks.ts"],
        ...["db/read/student-rows.ts", "db/write/moved-rows.ts", "db/write/row-states.ts", "db/write/undo-import.ts"],
      ].toSorted(),
    );
    cases.add();
  });
});
