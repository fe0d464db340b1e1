import fc from "fast-check";
import { strToU8, zipSync } from "fflate";
import { describe, expect, it } from "vitest";
import { type Archive, archiveText } from "@/lib/domain/archive";
import { readArchive, UNPACKED_LIMIT_MB } from "@/lib/ingest/read-archive";
import { spentSince } from "../../cpu-time";
import { manyCases } from "../../many-cases";
import { anyArchive } from "./made-archive";

const SEED = 20261127;

/** An archive with at least one swing that was read. */
function sample(): Archive {
  const found = fc
    .sample(anyArchive, { seed: SEED, numRuns: 60 })
    .find(({ students }) => students[0]?.sessions[0]?.swings[0]?.readings[0] !== undefined);
  if (!found) throw new Error("nothing made");
  return found;
}

const whole = sample();
const zip = (files: Record<string, string>) =>
  zipSync(Object.fromEntries(Object.entries(files).map(([name, text]) => [name, strToU8(text)])));
const read = (value: unknown) => readArchive(strToU8(JSON.stringify(value)));

/** The archive with one thing changed. */
function changed(change: (archive: Archive) => void): unknown {
  const copy = structuredClone(whole) as Archive;
  change(copy);
  return copy;
}

describe("what is an archive", () => {
  it("the zip, whatever lies beside, and archive.json alone are the same archive", () => {
    const text = archiveText(whole);
    const [fromZip, fromText] = [
      readArchive(zip({ "readings.csv": "x", "archive.json": text })),
      readArchive(strToU8(text)),
    ];
    expect(fromZip).toEqual(fromText);
    if (fromZip.kind !== "archive") throw new Error(fromZip.kind);
    expect(archiveText(fromZip.archive)).toBe(text);
  });

  it.each([
    ["a table", strToU8("student,date\nNia,2026-01-01\n")],
    ["other JSON", strToU8('{"format":"other"}')],
    ["a list", strToU8("[1]")],
    ["a workbook, which is a zip too", zip({ "xl/workbook.xml": "<x/>", "[Content_Types].xml": "<x/>" })],
    ["nothing", new Uint8Array()],
    ["a picture", Uint8Array.from([0x89, 0x50, 0x4e, 0x47])],
    ["the head of a zip alone", Uint8Array.from([0x50, 0x4b, 0x03, 0x04])],
  ])("%s is no archive and is left to other readers", (_what, bytes) => {
    expect(readArchive(bytes)).toEqual({ kind: "no-archive" });
  });

  it("another version is named, not guessed at", () => {
    expect(read({ ...whole, version: 2 })).toEqual({ kind: "other-version", version: "2" });
  });
});

const firstSession = (archive: Archive) =>
  archive.students[0]?.sessions[0] as Archive["students"][number]["sessions"][number];
const firstReading = (archive: Archive) => firstSession(archive).swings[0]?.readings[0] ?? {};

describe("a broken archive is refused with the place that is wrong", () => {
  it.each<[string, string, string, (archive: Archive) => unknown]>([
    ["a field nobody knows", "", "unknown-field", (archive) => Object.assign(archive, { extra: 1 })],
    [
      "a number as text",
      "students[0].birthYear",
      "value",
      (archive) => Object.assign(archive.students[0] ?? {}, { birthYear: "2015" }),
    ],
    [
      "a day that isn't one",
      "students[0].sessions[0].day",
      "value",
      (archive) => Object.assign(firstSession(archive), { day: "2026-02-30" }),
    ],
    [
      "half a character",
      "students[0].clubs",
      "value",
      (archive) => Object.assign(archive.students[0] ?? {}, { clubs: "\ud83d" }),
    ],
    [
      "a zone that isn't one",
      "students[0].zone",
      "not-zone",
      (archive) => Object.assign(archive.students[0] ?? {}, { zone: "Mars/Base" }),
    ],
    [
      "a fundamental that nobody defines",
      "students[0].sessions[0].swings[0].readings",
      "unknown-fundamental",
      (archive) => Object.assign(firstReading(archive), { fundamentalId: "own-other" }),
    ],
    [
      "a film plan for a fundamental that nobody defines",
      "students[0].filmPlans",
      "unknown-fundamental",
      (archive) =>
        Object.assign(archive.students[0]?.filmPlans[0] ?? {}, {
          body: '{"fundamentals":[{"id":"own-other","swings":3}],"views":["face-on"],"care":[]}',
        }),
    ],
    [
      "a drill whose history isn't one",
      "rules.drills[0]",
      "not-earlier",
      (archive) => Object.assign(archive.rules.drills[0] ?? {}, { earlier: '[{"how":1}]' }),
    ],
    [
      "a noise model that isn't one",
      "rules.noiseModels[0]",
      "not-noise",
      (archive) => Object.assign(archive.rules.noiseModels[0] ?? {}, { body: "{}" }),
    ],
    [
      "a look of a noise model that isn't there",
      "students[0].sessions[0].looks",
      "unknown-noise",
      (archive) => archive.rules.noiseModels.splice(0),
    ],
    [
      "a drill that isn't there",
      "students[0].assignments",
      "unknown-drill",
      (archive) => archive.rules.drills.splice(0),
    ],
    [
      "one swing twice",
      "students[0].sessions[0].swings",
      "doubled",
      (archive) => firstSession(archive).swings.push(structuredClone(firstSession(archive).swings[0]) as never),
    ],
    ["nobody", "students", "nobody", (archive) => archive.students.splice(0)],
  ])("%s: %s, %s", (_what, where, code, change) => {
    const outcome = read(changed((archive) => void change(archive)));
    if (outcome.kind !== "broken") throw new Error(outcome.kind);
    expect(outcome.issues).toContainEqual({ where, code });
  });
});

describe("a hostile file", () => {
  it("of 150 MB of blanks in a small zip is stopped at the limit", () => {
    const bomb = zipSync({ "archive.json": new Uint8Array(150 * 1024 * 1024).fill(32) }, { level: 6 });
    expect(bomb.length).toBeLessThan(1_000_000);
    expect(readArchive(bomb)).toEqual({ kind: "too-big", limit: UNPACKED_LIMIT_MB });
  });

  it("cut anywhere is broken or no archive, never a part of one (200 cuts)", () => {
    const bytes = zip({ "archive.json": archiveText(whole) });
    for (let cut = 0; cut < 200; cut++) {
      const outcome = readArchive(bytes.subarray(0, Math.floor((bytes.length * cut) / 230)));
      expect(["no-archive", "broken"]).toContain(outcome.kind);
    }
  });

  it("with __proto__, or 100,000 brackets deep, is refused within a second and leaves the prototype alone", () => {
    const start = process.cpuUsage();
    const planted = archiveText(whole).replace("{", '{"__proto__":{"x":1},');
    expect(readArchive(strToU8(planted)).kind).toBe("broken");
    expect(({} as { x?: number }).x).toBeUndefined();
    const deep = `{"format":"proofband-archive","version":1,"holds":${"[".repeat(100_000)}${"]".repeat(100_000)}}`;
    expect(["no-archive", "broken"]).toContain(readArchive(strToU8(deep)).kind);
    expect(spentSince(start)).toBeLessThan(1000);
  });

  it(`${manyCases(3000)} files with flipped bytes never throw and never pass as another archive in silence`, () => {
    const text = strToU8(archiveText(whole));
    let passed = 0;
    fc.assert(
      fc.property(fc.array(fc.tuple(fc.nat(text.length - 1), fc.nat(255)), { minLength: 1, maxLength: 3 }), (flips) => {
        const bytes = text.slice();
        for (const [at, byte] of flips) bytes[at] = byte;
        const outcome = readArchive(bytes);
        // What passes is exactly what the file says: its text can be written out again and read as the same.
        if (outcome.kind !== "archive") return;
        passed += 1;
        expect(JSON.parse(archiveText(outcome.archive))).toEqual(JSON.parse(new TextDecoder().decode(bytes)));
      }),
      { seed: SEED, numRuns: manyCases(3000) },
    );
    expect(passed).toBeGreaterThan(0);
  });
});

it("an archive of millions of empty parts is refused before it is parsed", () => {
  const text = `{"format":"proofband-archive","x":[${"{},".repeat(2_100_000)}{}]}`;
  expect(readArchive(new TextEncoder().encode(text)).kind).not.toBe("archive");
});
