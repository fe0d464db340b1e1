import { describe, expect, it } from "vitest";
import { orderedFundamentals } from "@/lib/domain/catalogue";
import type { TrackVerdict } from "@/lib/domain/track-verdict";
import type { AcademySource } from "@/lib/report/academy-source";
import { buildAcademyPage } from "@/lib/report/build-academy";
import { wordsFor } from "@/lib/words/catalogue";
import { track } from "./made-roster";

const words = wordsFor("en");

function own(studentId: string, over: Partial<TrackVerdict>) {
  const made = track("hinge", { changes: [], settle: null, notToldApart: null, ...over });
  return { ...made, studentId };
}

const changed = (studentId: string, verdict: "gain" | "slip", to: string) => {
  const change = { verdict, moved: null, from: to, to, provedOn: to } as unknown as NonNullable<TrackVerdict["change"]>;
  return own(studentId, { verdict, change, changes: [change], listed: true, position: "inside" });
};

const source = (over: Partial<AcademySource> = {}): AcademySource => ({
  ...{ academyName: "A", today: "2031-06-12", from: "2031-04-20", group: null, students: 6, stalled: 2 },
  groups: { told: [], hidden: 2 },
  tracks: [
    changed("s1", "gain", "2031-05-02"),
    changed("s2", "gain", "2031-05-31"),
    changed("s3", "slip", "2031-06-01"),
    own("s4", { position: "outside", settle: { none: "first-look", sessionsToFirstLook: 2 } }),
    own("s5", { position: "outside", settle: { none: "no-plan", sessionsToFirstLook: 0 } }),
  ],
  films: ["counted", "counted", "phone", "unread"],
  weeks: { films: 12, stalled: 8 },
  fundamentals: orderedFundamentals([]),
  ...{ recorded: [], leftOut: new Map() },
  ...over,
});

const countedOf = (over: Partial<AcademySource> = {}) => {
  const { counted, title } = buildAcademyPage(words, source(over));
  if (counted === null) throw new Error("nothing counted");
  return { ...counted, title };
};

describe("how an academy gets on", () => {
  it("says what is proved by month, and each count leads to its students", () => {
    const { proved, title } = countedOf();
    expect(title).toBe("2 real gains and one slip proved");
    expect(proved.table?.rows.map(({ cells }) => cells)).toEqual([
      ["Apr 2031", "0", "0"],
      ["May 2031", "2", "0"],
      ["Jun 2031", "0", "1"],
    ]);
    expect(proved.table?.rows.map(({ ways }) => ways)).toEqual([
      [null, null, null],
      [null, "/students?since=gain-2031-05&sort=work#roster", null],
      [null, null, "/students?since=slip-2031-06&sort=work#roster"],
    ]);
    expect(proved.chart.months.map(({ gains, slips }) => [gains, slips])).toEqual([
      [0, 0],
      [2, 0],
      [0, 1],
    ]);
  });

  it("of a group each way leads to that group's students", () => {
    const group = {
      id: "hand-left",
      label: "Plays: left-handed",
      studentIds: new Set<string>(),
      club: null,
      view: { hand: "left" as const },
    };
    const { proved, stalled, filter } = countedOf({ group });
    expect(proved.table?.rows[1]?.ways?.[1]).toBe("/students?hand=left&since=gain-2031-05&sort=work#roster");
    expect(stalled.links[0]?.href).toBe("/students?show=stalled&hand=left&sort=work#roster");
    expect(filter).toMatchObject({ state: "6 students: Plays: left-handed", all: { href: "/academy" } });
  });

  it("counts why tracks are open, and what came of films", () => {
    const { open, films, stalled } = countedOf();
    expect(open.heading).toBe("2 of 5 tracks not settled");
    expect(open.table?.rows.map(({ cells }) => cells)).toEqual([
      ["Too few films for a first answer", "1"],
      ["No plan of films would settle it soon", "1"],
    ]);
    expect(films.heading).toBe("2 of 4 films counted");
    expect(films.table?.rows.map(({ cells: [, count] }) => count)).toEqual(["2", "1", "1"]);
    expect(stalled.heading).toBe("2 students have gone 8 weeks of films without a proof");
  });

  it("counts a fundamental from five students on", () => {
    expect(countedOf().levels.table?.rows.map(({ cells }) => cells)).toEqual([["Wrist hinge", "3", "0", "2"]]);
    expect(countedOf({ tracks: source().tracks.slice(0, 4) }).levels.table).toBeNull();
  });

  it("what isn't on the roster's list is no gain and not settled", () => {
    const [first] = source().tracks;
    if (!first) throw new Error("no track");
    const { proved, open } = countedOf({ tracks: [{ ...first, verdict: { ...first.verdict, listed: false } }] });
    expect(proved.heading).toBe("No gain, no slip");
    expect(open.table?.rows[0]?.cells).toEqual(["Enough for this track alone, not yet for the whole roster", "1"]);
  });

  it("of fewer than five it counts nothing", () => {
    expect(buildAcademyPage(words, source({ groups: null }))).toMatchObject({
      title: "Fewer than five students are here",
      counted: null,
    });
  });

  it("says what is recorded of whoever was filmed, by coach in the order in which they are handed over, each leading to the roster", () => {
    expect(countedOf().recorded).toBeNull();
    const counts = { filmed: 12, drilled: 7, waiting: 3, neither: 2, films: 30, counted: 24 };
    const none = { filmed: 0, drilled: 0, waiting: 0, neither: 0, films: 0, counted: 0 };
    const coach = (id: string, label: string) => ({
      ...{ id: `coach-${id}`, label, studentIds: new Set<string>(), club: null, view: { coach: id } },
    });
    const { recorded } = countedOf({
      recorded: [
        { group: null, counts },
        { group: coach("u1", "Coach: Finch"), counts: { ...counts, filmed: 5, neither: 0 } },
        { group: coach("u2", "Coach: Wren"), counts: none },
      ],
    });
    expect(recorded?.heading).toBe("12 were filmed; of 2 it isn’t recorded what they practise");
    expect(recorded?.table?.rows.map(({ cells }) => cells)).toEqual([
      ["Everybody", "12", "7", "3", "2", "30", "24"],
      ["Coach: Finch", "5", "7", "3", "0", "30", "24"],
    ]);
    expect(recorded?.table?.rows[0]?.ways).toEqual([
      ...[null, null, "/students?counted=filmed-on-a-drill&sort=work#roster"],
      "/students?counted=filmed-waiting&sort=work#roster",
      "/students?counted=filmed-unrecorded&sort=work#roster",
      ...[null, "/students?counted=film-counted&sort=work#roster"],
    ]);
    // Of nobody there is nothing to open.
    expect(recorded?.table?.rows[1]?.ways?.[4]).toBeNull();
    expect(recorded?.table?.rows.map(({ href }) => href)).toEqual([
      "/students?sort=work#roster",
      "/students?coach=u1&sort=work#roster",
    ]);
  });

  it("says in one paragraph how all of it is counted, with the promise of the list", () => {
    const { method } = countedOf();
    expect(method.text).toContain("at most 5 in 100 should be wrong");
    expect(method.text).toContain("Films of the last 12 weeks");
    expect(method.text).toContain("fewer than 5 students");
  });

  it("a row from whose taking away one to four students would be left is not there", () => {
    const tracks = ["s1", "s2", "s3", "s4", "s5"].map((id) => own(id, { position: "inside" }));
    const rows = (left: ReadonlyMap<string, number>) =>
      countedOf({ tracks, leftOut: left }).levels.table?.rows.length ?? 0;
    expect([new Map(), new Map([["hinge", 5]])].map(rows)).toEqual([1, 1]);
    expect([1, 4].map((students) => rows(new Map([["hinge", students]])))).toEqual([0, 0]);
  });
});
