import { describe, expect, it } from "vitest";
import { NOTHING_SEEN } from "@/lib/domain/session";
import { codes, planLines, readFile, silentRows } from "./import-setup";

const wide = (...rows: readonly string[]) => `student,date,club,swing,hinge,hip sway\n${rows.join("\n")}`;

describe("what a session holds", () => {
  it("facts, camera and notes of a row reach their session and swing", () => {
    const header =
      "student,date,club,swing,hinge,hip sway,hinge camera sd,placement,circumstance,aid,stance width,days since practice,set aside,solid,balls,film,note,reader\n";
    const { plan } = readFile(
      `${header}Bea,2026-03-08,7-iron,1,66,4,1.5,garage,aid in view,stick,42 cm,2,,6,10,clip 7,thin x2,Ann\n`,
    );
    const session = plan?.sessions[0]?.session;
    expect(session).toMatchObject({
      day: "2026-03-08",
      sequence: 1,
      clubGroup: "iron",
      club: "7-iron",
      reader: "Ann",
      circumstance: "aid-in-view",
      aid: "stick",
      stanceWidthCm: 42,
      daysSincePractice: 2,
      solid: 6,
      balls: 10,
      setAsideReason: null,
      statedCaptureSds: [{ fundamentalId: "hinge", sd: 1.5 }],
      captures: [
        {
          view: "face-on",
          placement: "same",
          placementLabel: "garage",
          squareness: "unknown",
          seen: NOTHING_SEEN,
          placedBy: null,
          filmReference: "clip 7",
        },
      ],
    });
    expect(session?.swings[0]?.note).toBe("thin x2");
  });

  it("equal labels share one placement; anew and nothing do not", () => {
    const { plan } = readFile(
      "student,date,club,swing,hinge,placement\nBea,2026-03-08,7-iron,1,66,garage\nBea,2026-03-09,7-iron,1,66,same:garage\nBea,2026-03-10,7-iron,1,66,anew\nBea,2026-03-11,7-iron,1,66,\n",
    );
    expect(
      plan?.sessions.map(
        ({ session }) => session.captures.map(({ placement, placementLabel }) => [placement, placementLabel])[0],
      ),
    ).toEqual([
      ["same", "garage"],
      ["same", "garage"],
      ["anew", null],
      ["unknown", null],
    ]);
  });

  it("a stated camera sd is an sd; ± before it is 95 of 100: 1.96 / 1.96 = 1", () => {
    const { plan, notes } = readFile(
      "student,date,club,swing,hinge,camera sd\nBea,2026-03-08,7-iron,1,66,±1.96\nBea,2026-03-09,7-iron,1,66,2\n",
    );
    expect(plan?.sessions.map(({ session }) => session.statedCaptureSds[0]?.sd)).toEqual([1, 2]);
    expect(codes(notes)).toContain("sd-from-plus-minus");
  });

  it("circumstances are unaided unless the file says so", () => {
    expect(readFile(wide("Bea,2026-03-08,7-iron,1,66,4")).plan?.sessions[0]?.session.circumstance).toBe("unaided");
  });

  it("two clubs of one group on one day are two sessions, in the file's order", () => {
    const preview = readFile(
      wide("Bea,2026-03-08,7-iron,1,66,4", "Bea,2026-03-08,5-iron,1,70,5", "Bea,2026-03-08,driver,1,71,5"),
    );
    expect(planLines(preview).filter((line) => line.includes("hinge"))).toEqual([
      "Bea 2026-03-08 iron/1 swing 1 hinge 66",
      "Bea 2026-03-08 driver/1 swing 1 hinge 71",
      "Bea 2026-03-08 iron/2 swing 1 hinge 70",
    ]);
    expect(codes(preview.notes)).toContain("second-session");
  });

  it("a second person's reading of a swing stays out and is named", () => {
    const preview = readFile(
      "student,date,club,swing,hinge,reader\nBea,2026-03-08,7-iron,1,66,Ann\nBea,2026-03-08,7-iron,1,69,Tom\nBea,2026-03-08,7-iron,2,67,Ann\n",
    );
    expect(planLines(preview)).toEqual([
      "Bea 2026-03-08 iron/1 swing 1 hinge 66",
      "Bea 2026-03-08 iron/1 swing 2 hinge 67",
    ]);
    expect(preview.issues).toMatchObject([{ code: "second-reader", row: 3, value: "Tom" }]);
  });

  it("without a swing column swings are counted in the order of rows, equal rows too", () => {
    const preview = readFile(
      "student,date,club,hinge\nBea,2026-03-08,7-iron,66\nBea,2026-03-08,7-iron,66\nBea,2026-03-08,7-iron,67\n",
    );
    expect(planLines(preview)).toEqual([
      "Bea 2026-03-08 iron/1 swing 1 hinge 66",
      "Bea 2026-03-08 iron/1 swing 2 hinge 66",
      "Bea 2026-03-08 iron/1 swing 3 hinge 67",
    ]);
    expect(preview.notes).toMatchObject([{ code: "club-group-by-club" }, { code: "swing-numbered", rows: [2, 3, 4] }]);
  });

  it("the plan carries every change and refusal by row, whole", () => {
    const { plan } = readFile(wide("Bea,2026-03-08,7-iron,1,x,4", '"Bea",2026-03-08,7-iron,2,"66,5",4'));
    const kept = JSON.parse(plan?.answers ?? "{}");
    expect(kept.left).toMatchObject([{ code: "not-a-number", column: "hinge", args: { value: "x", rows: "2" } }]);
    expect(kept.changed).toContainEqual({
      code: "decimal-comma",
      column: "hinge",
      args: { column: "hinge", value: "66,5", taken: 66.5, count: 1, rows: "3" },
    });
  });

  it("a file in Windows-1252 says so and finds Zoë", () => {
    const bytes = Uint8Array.from(Array.from(wide("Zoë,2026-03-08,7-iron,1,66,4"), (letter) => letter.charCodeAt(0)));
    const preview = readFile(bytes);
    expect(planLines(preview)[0]).toContain("Zoë 2026-03-08");
    expect(codes(preview.notes)).toContain("read-as-encoding");
  });

  it("composed and decomposed letters are one student; the name is stored composed", () => {
    const preview = readFile(
      wide("Zoe\u0308,2026-03-08,7-iron,1,66,4", "Zoë,2026-03-08,7-iron,2,66,4", "ZOË,2026-03-08,7-iron,3,66,4"),
    );
    expect(new Set(preview.plan?.sessions.map(({ alias }) => alias))).toEqual(new Set(["Zoë"]));
    expect(preview.questions).toEqual([]);
    expect(silentRows(preview)).toEqual([]);
  });
});
