import { describe, expect, it } from "vitest";
import { lookAt, MANY_ROWS } from "@/app/_server/access/looks";
import { kindOf, MATRIX, type RowKey } from "@/app/_server/access/matrix";
import { buildLooked, buildLookedCsv, type LookedAt } from "@/lib/report/build-looked";
import { sayLookPlace } from "@/lib/report/look-place";
import { wordsFor } from "@/lib/words/catalogue";

const words = wordsFor("en");
const SEASON = "/students/[studentId]";

const look = (day: string, time: string, change: Partial<LookedAt> = {}): LookedAt => ({
  who: "Wren",
  role: "coach",
  what: "page",
  place: SEASON,
  at: `${day}T${time}:00.000Z`,
  day,
  time,
  ...change,
});
const student = { id: "s1", alias: "Dot" };
const page = (looks: readonly LookedAt[], wished?: string) =>
  buildLooked(words, { student, today: "2026-11-20", looks, page: wished });

describe("the page of who looked", () => {
  const looks = [
    look("2026-11-20", "17:05"),
    look("2026-11-20", "17:01", { place: `${SEASON}/[fundamental]` }),
    look("2026-11-20", "16:59"),
    look("2026-11-20", "09:30", { who: "Linnet", role: "assistant", place: `${SEASON}/sessions/new` }),
    look("2026-11-18", "08:00", { what: "file", place: "GET /api/students/[studentId]/archive" }),
    look("2026-11-02", "08:00", { who: "npm run export", role: "program", what: "file", place: "npm run export" }),
  ];

  it("one line a day and person: what was opened, how often, from when to when", () => {
    expect(page(looks).days.table?.rows.map((row) => row.cells)).toEqual([
      ["Fri 20 Nov 2026", "Wren", "coach", "season × 2, one fundamental", "16:59–17:05"],
      ["Fri 20 Nov 2026", "Linnet", "assistant", "form for a session", "09:30"],
      ["Wed 18 Nov 2026", "Wren", "coach", "files: everything on file", "08:00"],
      [
        "Mon 2 Nov 2026",
        "npm run export",
        "program on this computer",
        expect.stringContaining("npm run export"),
        "08:00",
      ],
    ]);
    expect(page(looks).people).toMatchObject({
      heading: "6 looks by 3 people",
      facts: [
        { name: "Wren, coach", value: "on 2 days, last on 20 Nov 2026", note: "1 file taken out" },
        { name: "Linnet, assistant", value: "on 1 day, last on 20 Nov 2026", note: "" },
        { name: "npm run export, program on this computer", note: "1 file taken out" },
      ],
    });
  });

  it("says the same to the family in plain lines, and nothing but who, when and how often", () => {
    expect(page(looks).message.text.split("\n")).toEqual([
      "Who looked at Dot's golf record, 2 Nov 2026 to 20 Nov 2026:",
      "- Wren (coach): on 2 days, last on 20 Nov 2026; saved one file.",
      "- Linnet (helps the coach): on one day, last on 20 Nov 2026.",
      "- npm run export (a program on the academy's computer): on one day, last on 2 Nov 2026; saved one file.",
      "Nobody else has opened it in Proofband. If you want to know more about one of these, ask us.",
    ]);
    const today = [look("2026-11-20", "17:05"), look("2026-11-20", "17:01", { what: "print" }), ...looks.slice(0, 2)];
    expect(page(today).message.text).toContain("record, on 20 Nov 2026:\n");
    expect(page(today).days.table?.rows[0]?.cells[3]).toBe("season × 2, one fundamental; for paper: season");
    expect(page([]).message.text).toBe("Dot: nobody has opened the record up to 20 Nov 2026.");
    expect(page([]).days).toMatchObject({ table: null, pages: null });
  });

  it("shows forty lines a page; whatever page is wished that isn't there, the first", () => {
    const many = Array.from({ length: 95 }, (_, at) => look("2026-11-20", "10:00", { who: `Coach ${at}` }));
    const firstOf = (wished?: string) => [
      page(many, wished).days.table?.rows.length,
      page(many, wished).days.table?.rows[0]?.cells[1],
    ];
    expect(firstOf()).toEqual([40, "Coach 0"]);
    expect(firstOf("3")).toEqual([15, "Coach 80"]);
    for (const wished of ["0", "4", "-1", "1e1", "99999999999", "x"]) expect(firstOf(wished)).toEqual([40, "Coach 0"]);
    expect(page(many, "2").days.pages?.links.map(({ current }) => current)).toEqual(["no", "yes", "no"]);
  });

  it("every place at which a look is kept has words of its own", () => {
    const rows = [...(Object.keys(MATRIX) as RowKey[]).filter((row) => kindOf(row) === "student"), ...MANY_ROWS];
    const places = [...rows.filter((row) => lookAt(row) !== null), "npm run export", "npm run tracks"];
    const other = words.say("looked.place.other");
    expect(places.filter((place) => sayLookPlace(words, place) === other)).toEqual([]);
    expect(places.length).toBeGreaterThan(40);
    expect(sayLookPlace(words, "/students/[studentId]/something-later/[id]")).toBe(other);
  });

  it("as a file: every single look, guarded against formulas", () => {
    const csv = buildLookedCsv(words, [look("2026-11-20", "17:05", { who: "=cmd" })]).split("\r\n");
    expect(csv.slice(0, 2)).toEqual([
      "at,who,as,what,opened,place",
      "2026-11-20T17:05:00.000Z,'=cmd,coach,page,season,/students/[studentId]",
    ]);
  });
});
