import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import os from "node:os";
import path from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { openDatabase } from "@/db/client";
import { digestTables } from "@/db/digest";
import { consentStanding } from "@/lib/domain/consent";
import { demoEntries } from "@/seed/demo-academy";
import { DEMO_SEASON_START, DEMO_TODAY, SECOND_READER } from "@/seed/demo-plan";
import { DEMO_STUDENTS, demoTracks, STORY_STUDENTS } from "@/seed/demo-roster";
import { builtScript } from "../built-script";

const entries = demoEntries();
const ten = entries.slice(0, 10);

describe("the demo academy's students", () => {
  it("are ten with a story and fifty quiet ones, under ids that tell nothing and aliases that differ", () => {
    expect([STORY_STUDENTS.length, DEMO_STUDENTS.length]).toEqual([10, 60]);
    expect(new Set(entries.map(({ student }) => student.alias)).size).toBe(60);
    for (const { student } of entries) expect(student.id).toMatch(/^s\d\d$/);
  });

  it("three of the ten play left-handed", () => {
    const left = ten.filter(({ student }) => student.hand === "left").map(({ student }) => student.alias);
    expect(left).toEqual(["Bea", "Eli", "Hana"]);
  });

  it("each has a consent to measure on paper from the season's first day, and all but one also to share", () => {
    for (const { consents } of entries) {
      expect([consents[0]?.kind, consents[0]?.from]).toEqual(["measure", DEMO_SEASON_START]);
      for (const consent of consents) expect(consent.givenBy).toContain("on paper");
    }
    expect(entries.flatMap(({ consents }) => consents).filter(({ kind }) => kind === "share")).toHaveLength(59);
  });

  it("59 of 60 may be measured on the demo's day: one consent has ended, no guardian speaks for somebody of own age", () => {
    const kinds = entries.map(({ student: { birthYear }, consents }) => {
      return consentStanding(consents, "measure", { day: DEMO_TODAY, birthYear, ownConsentAge: 16 }).kind;
    });
    expect(kinds.filter((kind) => kind === "given")).toHaveLength(59);
    expect(kinds.filter((kind) => kind === "lapsed")).toHaveLength(1);
  });

  it("every session lies in the season, on days that differ, three to eight swings each", () => {
    for (const { sessions } of entries) {
      const days = sessions.map(({ session }) => session.day);
      expect([...days].sort()).toEqual(days);
      expect(new Set(days).size).toBe(days.length);
      expect(days.every((day) => day >= DEMO_SEASON_START && day <= DEMO_TODAY)).toBe(true);
      for (const { session } of sessions) {
        expect(session.swings.length).toBeGreaterThanOrEqual(3);
        expect(session.swings.length).toBeLessThanOrEqual(8);
      }
    }
  });

  it("Hana has four sessions of three swings", () => {
    const hana = ten[7]?.sessions.map(({ session }) => session.swings.length);
    expect(hana).toEqual([3, 3, 3, 3]);
  });
});

describe("what makes the demo's data like real ones", () => {
  const sessions = ten.flatMap((entry) => entry.sessions.map(({ session }) => session));
  const readings = entries.flatMap((entry) =>
    entry.sessions.flatMap(({ session }) => session.swings.flatMap((swing) => swing.readings)),
  );

  it("values typed with the picture's sign are turned: typed and value differ in sign only, for left hands only", () => {
    const turned = entries.filter((entry) =>
      entry.sessions.some(({ session }) =>
        session.swings.some((swing) =>
          swing.readings.some(
            (reading) => reading.value !== null && Number(reading.typed) === -reading.value && reading.value !== 0,
          ),
        ),
      ),
    );
    expect(turned.map(({ student }) => student.alias)).toEqual(["Eli", "Hana"]);
  });

  it("some readings are not measurable, and some fundamentals are missed at some sessions", () => {
    expect(readings.filter((reading) => reading.value === null).length).toBeGreaterThan(50);
    const gaps = entries.filter((entry) =>
      demoTracks(entry).some((track) => track.sessions.length < entry.sessions.length),
    );
    expect(gaps.length).toBeGreaterThan(30);
  });

  it("one value was entered in another unit and put right with a reason; both are kept", () => {
    const mends = ten.flatMap((entry) => entry.corrections);
    expect(mends.map((mend) => mend.fundamentalId)).toEqual(["hip-sway"]);
    expect(mends[0]?.why).toContain("centimetres");
    const entered = ten[5]?.sessions[2]?.session.swings[1]?.readings.find((r) => r.fundamentalId === "hip-sway");
    expect(entered?.typed).toBe("8.6");
    expect(mends[0]?.value).toBeGreaterThan(12);
  });

  it("one student's films change readers, with an event on the day", () => {
    const read = ten.filter((entry) => entry.sessions.some(({ session }) => session.reader === SECOND_READER));
    expect(read.map(({ student }) => student.alias)).toEqual(["Bea"]);
    expect(read[0]?.events.map((event) => event.kind)).toEqual(["reader-change"]);
  });

  it("circumstances, cameras, strikes and notes with negations are all there", () => {
    expect(new Set(sessions.map((session) => session.circumstance))).toEqual(
      new Set(["unaided", "aid-in-view", "in-lesson"]),
    );
    const cameras = sessions.flatMap((session) => session.captures);
    expect(new Set(cameras.map((camera) => camera.squareness))).toEqual(new Set(["square", "off", "unknown"]));
    const sister = ten[4]?.sessions.flatMap(({ session }) =>
      session.captures.filter((camera) => camera.placementLabel !== null),
    );
    expect(new Set(sister?.map((camera) => camera.placementLabel)).size).toBe(1);
    expect(sister?.length).toBe(5);
    expect(sessions.filter((session) => session.balls !== null).length).toBeGreaterThan(30);
    const notes = sessions.flatMap((session) => session.swings.flatMap((swing) => swing.note ?? []));
    expect(notes.some((note) => note.includes("not "))).toBe(true);
  });

  it("Jun's true share of solid strikes falls from 60 to 45 %", () => {
    const jun = STORY_STUDENTS[9]?.sessions.map((session) => session.solidShare) ?? [];
    expect([jun[0], jun.at(-1)]).toEqual([0.6, 0.45]);
  });

  it("Gus's posture and ball place begin anew on the day of the new clubs, after seven centimetres", () => {
    const gus = ten[6];
    const anew = gus?.events.find((event) => event.kind === "growth");
    expect(anew?.rebaselines).toEqual(["posture-bend", "ball-position"]);
    expect(gus?.sessions[10]?.session.day).toBe(anew?.day);
    expect((gus?.heights.at(-1)?.cm ?? 0) - (gus?.heights[0]?.cm ?? 0)).toBe(7);
  });

  it("pools to learn from: ten tracks of five sessions in every pool of a story but the driver's", () => {
    const counts = new Map<string, number>();
    const teaching = entries
      .flatMap((entry) => [...demoTracks(entry)])
      .filter((track) => track.judged.sessions.length >= 5);
    for (const { judged } of teaching) counts.set(judged.pool ?? "", (counts.get(judged.pool ?? "") ?? 0) + 1);
    for (const plan of STORY_STUDENTS.filter((student) => student.clubGroup !== "driver")) {
      for (const { fundamentalId } of plan.expected)
        expect([fundamentalId, (counts.get(`${fundamentalId}/${plan.clubGroup}`) ?? 0) >= 10]).toEqual([
          fundamentalId,
          true,
        ]);
    }
  });
});

describe("the demo command", () => {
  const folder = mkdtempSync(path.join(os.tmpdir(), "proofband-demo-"));
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  function fill(name: string): { readonly file: string; readonly said: string; readonly status: number | null } {
    const data = path.join(folder, name);
    const run = spawnSync(process.execPath, [builtScript("seed/demo.ts")], {
      env: { ...process.env, PROOFBAND_DATA: data },
      encoding: "utf8",
    });
    return { file: path.join(data, "demo", "proofband.db"), said: run.stdout + run.stderr, status: run.status };
  }

  async function digestOf(file: string) {
    const db = openDatabase(file, "read");
    try {
      return await digestTables(db, [
        "academy",
        "reread_draw",
        "reread_item",
        "reader_error_fit",
        "student",
        "session",
        "capture",
        "swing",
        "reading",
        "correction",
        "event",
        "practice",
        "read_back",
        "read_back_item",
      ]);
    } finally {
      db.close();
    }
  }

  it("fills an empty folder, holds the same rows each time, and leaves a filled one as it is", async () => {
    const first = fill("one");
    expect(first.said).toContain("60 students");
    const digest = await digestOf(first.file);
    const readFirst = entries
      .flatMap((entry) => entry.sessions.flatMap((film) => film.session.swings))
      .reduce((sum, swing) => sum + swing.readings.length, 0);
    // Read again: a draw of twenty by two readers, twelve of the same still, six of an open draw.
    expect(digest.reading?.rows).toBe(readFirst + 2 * 20 + 12 + 6);
    expect([digest.reread_draw?.rows, digest.reader_error_fit?.rows]).toEqual([4, 2]);
    // Beside the films: practice of two students, six events of which one is a pause, an open read-back; none a reading.
    expect(digest.practice?.rows).toBeGreaterThan(60);
    expect([digest.event?.rows, digest.read_back?.rows, digest.read_back_item?.rows]).toEqual([6, 1, 12]);
    const again = fill("one");
    expect([again.status, again.said]).toEqual([0, "The demo academy is there already; nothing was changed.\n"]);
    expect(await digestOf(first.file)).toEqual(digest);
    expect(await digestOf(fill("two").file)).toEqual(digest);
  }, 120_000);
});
