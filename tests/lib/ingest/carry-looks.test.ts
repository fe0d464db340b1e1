import { describe, expect, it } from "vitest";
import type { ArchivedStudent } from "@/lib/domain/archive";
import { carriedText, parseCarried } from "@/lib/domain/carried-look";
import { carryLooks, saidLooks } from "@/lib/ingest/carry-looks";
import { oneStudent, SAID } from "./carried-archive";

const days = ["2026-05-01", "2026-05-08", "2026-05-15"];
const interval = SAID.whole?.level;
const verdict = {
  ...{ moved: null, evidence: { noChange: 0.3 }, levelNow: interval, position: "edge", change: null, changeBelow: 4 },
  ownedSince: null,
};

/** A student with a film a day, all of them looked at, and a snapshot whose looks have some days. */
function student(looked: readonly string[], listedLooks: readonly boolean[] = []): ArchivedStudent {
  const looks = looked.map((date, at) => ({ date, verdict: "gain", logBayesFactor: at, directionUp: 0.9 }));
  const [made] = oneStudent({ snapshot: JSON.stringify({ verdict: { ...verdict, looks } }) }).students;
  if (!made) throw new Error("nobody");
  const [film] = made.sessions;
  const [snapshot] = made.snapshots;
  if (!film || !snapshot) throw new Error("no film");
  return {
    ...made,
    sessions: days.map((day, at) => ({ ...film, id: `film-${at}`, day })),
    snapshots: [{ ...snapshot, listed: true, listedLooks: [...listedLooks] }],
  };
}

const carried = (of: ArchivedStudent) => carryLooks(of, "Far Range", () => false);

describe("carryLooks", () => {
  it("ties each look to its session, the last with the whole snapshot: three of three", () => {
    const made = carried(student(days, [false, true, true]));
    expect(made.map(({ sessionId, saidBy }) => `${sessionId} ${saidBy}`)).toEqual([
      "film-0 Far Range",
      "film-1 Far Range",
      "film-2 Far Range",
    ]);
    const said = made.map(({ body }) => parseCarried(body));
    expect(said.map((look) => [look?.date, look?.listed, look?.whole === null])).toEqual([
      [days[0], false, true],
      [days[1], true, true],
      [days[2], true, false],
    ]);
    expect(said.at(-1)?.whole).toMatchObject({ sessions: 3, noChange: 0.3, level: interval, changeBelow: 4 });
  });

  it("a track that began anew has looks for its last sessions alone: two of three", () => {
    expect(carried(student(days.slice(1))).map(({ sessionId }) => sessionId)).toEqual(["film-1", "film-2"]);
  });

  it("ties nothing on where the days don't agree", () => {
    expect(carried(student(["2026-05-01", "2026-05-09", "2026-05-15"])).map(({ sessionId }) => sessionId)).toEqual([
      "film-2",
    ]);
    expect(carried(student(["2020-01-01"]))).toEqual([]);
  });

  it("leaves out what this academy says anew by the same model, and keeps what a third one said first", () => {
    expect(carryLooks(student(days), "Far Range", () => true)).toEqual([]);
    const third = {
      ...({ sessionId: "film-1", fundamentalId: "hinge", clubGroup: "iron", saidBy: "Third" } as const),
      policyVersion: "1",
      ...{ noiseModelName: "n", body: carriedText({ ...SAID, date: days[1] ?? "" }) },
    } as const;
    const made = carried({ ...student(days), carried: [third] });
    expect(made.map(({ sessionId, saidBy }) => `${sessionId} ${saidBy}`).toSorted()).toEqual([
      "film-0 Far Range",
      "film-1 Third",
      "film-2 Far Range",
    ]);
  });

  it("a snapshot that is none says nothing", () => {
    const [snapshot] = student(days).snapshots;
    if (!snapshot) throw new Error("no snapshot");
    for (const body of ["", "{}", "[]", JSON.stringify({ verdict: { ...verdict, looks: "many" } })])
      expect(saidLooks({ ...snapshot, body })).toEqual([]);
  });
});
