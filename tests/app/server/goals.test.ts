import { randomUUID } from "node:crypto";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { judgedInput } from "@/app/_server/analysis/judged-input";
import { admitMachine, type StudentViewer, type Viewer } from "@/app/_server/gate";
import { loadGoals, loadGoalsPage, setGoal } from "@/app/_server/goals/goal-desk";
import { loadOwningForm, loadOwningPage, setOwning } from "@/app/_server/goals/owning-desk";
import { loadStudentVerdicts } from "@/app/_server/roster/load-verdicts";
import { loadFundamental } from "@/app/_server/season/load-fundamental";
import { loadKnownRecord } from "@/app/_server/season/load-known";
import { readGoalBands } from "@/db/read/goal-bands";
import { insertSession } from "@/db/write/sessions";
import { dayFromNumber, dayNumber } from "@/lib/domain/calendar-day";
import { NOTHING_SEEN } from "@/lib/domain/session";
import { parseTrackLine } from "@/lib/ingest/parse-track-line";
import { admitNew, formOf, sent } from "./corrected-season";
import { startAcademy } from "./own-academy-data";

// Six films about 75, then twelve about 90: out of the built-in band 85 to 95, and into it. Every eleventh day, the last yesterday.
const LEVELS = [75, 76, 74, 75, 74, 76, 90, 91, 89, 90, 91, 89, 90, 90, 91, 89, 90, 90];

let viewer: Viewer;
let mine: StudentViewer;
let other: StudentViewer;
let remove: () => void;

const dayAt = (at: number): string => dayFromNumber(dayNumber(viewer.today) - 1 - 11 * (LEVELS.length - 1 - at));

function film(to: StudentViewer, day: string, level: number): void {
  const capture = { view: "face-on", placement: "unknown", placementLabel: null, squareness: "unknown" } as const;
  const made = insertSession(
    viewer.db,
    to.student,
    {
      ...({
        day,
        sequence: 1,
        clubGroup: "iron",
        club: null,
        reader: "Lark",
        circumstance: "unaided",
        aid: null,
      } as const),
      ...{ stanceWidthCm: null, daysSincePractice: 9, marks: [], note: null, solid: null, balls: null },
      ...{ setAsideReason: null, statedCaptureSds: [{ fundamentalId: "hinge", sd: 0.5 }] },
      captures: [
        { ...capture, offBy: null, setAsideReason: null, seen: NOTHING_SEEN, placedBy: null, filmReference: null },
      ],
      swings: [-1, 0, 1, 0, -1].map((off, at) => ({
        ...{ number: at + 1, note: null },
        readings: [
          {
            fundamentalId: "hinge",
            value: level + off,
            typed: String(level + off),
            unit: "deg",
            signRule: "neutral",
          } as const,
        ],
      })),
    },
    { now: `${day}T12:00:00.000Z`, newId: randomUUID, batchId: null },
  );
  if (made.kind !== "inserted") throw new Error("there is such a film");
}

beforeAll(async () => {
  const started = await startAcademy();
  ({ remove } = started);
  // Whatever today is: no season begins among the films.
  started.viewer.db.sqlite.exec("UPDATE academy SET season_start = '2001-01-01'");
  const admitted = await admitMachine({ choice: "own", locale: null });
  if (!admitted) throw new Error("no academy");
  viewer = admitted;
  mine = await admitNew(viewer, "Zephyrine", "right");
  other = await admitNew(viewer, "Wisp", "left");
  for (const [at, level] of LEVELS.entries()) for (const to of [mine, other]) film(to, dayAt(at), level);
}, 60_000);
afterAll(() => remove());

async function hinge(of: StudentViewer = mine) {
  const { tracks } = await loadStudentVerdicts(of);
  const track = tracks.find(({ history }) => history.fundamental.id === "hinge");
  if (!track) throw new Error("no hinge");
  return track;
}

async function sendGoal(to: Viewer | StudentViewer, typed: Readonly<Record<string, string>>) {
  const { form } = await loadGoals(to, { draft: randomUUID(), fundamental: "hinge", club: "iron" });
  return setGoal(to, sent(form, typed));
}

describe("a goal band of a student’s", () => {
  it("judges place and owning anew from its day, while the gain keeps its word and the chart draws both bands", async () => {
    const before = (await hinge()).verdict;
    expect(before).toMatchObject({ verdict: "gain", position: "inside" });
    expect(before.ownedSince).not.toBeNull();
    const set = await sendGoal(mine, { low: "60", high: "70", reason: "a short arm" });
    expect(set).toMatchObject({ kind: "set" });
    const { verdict, history } = await hinge();
    expect(verdict).toMatchObject({ verdict: "gain", position: "outside", ownedSince: null });
    expect(history.goals.map(({ low, high }) => [low, high])).toEqual([
      [85, 95],
      [60, 70],
    ]);
    expect((await loadFundamental(mine, "hinge", "iron")).evidence.chart.bands.map(({ low }) => low)).toContain(85);
    expect((await hinge(other)).verdict.ownedSince).toBe(before.ownedSince);
  });

  it("says on its page what holds, since when, by whom, and why owning is open again", async () => {
    const page = JSON.stringify(await loadGoalsPage(mine, { fundamental: "hinge", club: "iron" }));
    for (const said of ["60 to 70°", "85 to 95°", "a short arm", mine.name, "the owning rule doesn’t hold yet"])
      expect(page).toContain(said);
  });

  it("is written with who set it; as known the day before there was none", async () => {
    expect(readGoalBands(viewer.db, viewer.scope)).toMatchObject([{ who: mine.name, scope: "student", low: 60 }]);
    const { record } = await loadStudentVerdicts(mine);
    const then = loadKnownRecord(mine, record, `${dayFromNumber(dayNumber(mine.today) - 1)}T23:59:59.999Z`);
    expect(then.bands).toEqual([]);
  });

  it("refused it is kept as it was typed, with what is wrong in words, and nothing is set", async () => {
    const refused = await sendGoal(mine, { low: "90", high: "80", reason: "" });
    if (refused.kind !== "refused") throw new Error("taken");
    const { form } = await loadGoals(mine, { draft: refused.draftId });
    const fields = form.parts.flatMap((part) => part.fields);
    expect(form.refusal).toContain("2 things");
    expect(fields.find(({ name }) => name === "low")?.value).toBe("90");
    expect(fields.filter(({ error }) => error !== "").map(({ name }) => name)).toEqual(["high", "reason"]);
    expect(readGoalBands(viewer.db, viewer.scope)).toHaveLength(1);
  });

  it("for clubs that are no group, or a fundamental that nobody knows, nothing is set", async () => {
    const fields = { low: "80", high: "97", from: mine.today, reason: "agreed" };
    const gone = await setGoal(mine, formOf({ ...fields, fundamental: "hinge", clubGroup: "putters" }));
    expect(gone.kind).toBe("refused");
    await expect(setGoal(mine, formOf({ ...fields, fundamental: "nose", clubGroup: "iron" }))).rejects.toThrow();
    expect(readGoalBands(viewer.db, viewer.scope)).toHaveLength(1);
  });

  it("planned by a slip for next year it locks nothing: set again with its right day, it is replaced and never holds", async () => {
    const later = dayFromNumber(dayNumber(viewer.today) + 300);
    const typed = { low: "10", high: "40", reason: "a slip" };
    const send = async (more: object) => {
      const { form } = await loadGoals(other, { draft: randomUUID(), fundamental: "posture-bend", club: "iron" });
      return setGoal(other, sent(form, { ...typed, ...more }));
    };
    expect(await send({ from: later })).toMatchObject({ kind: "set" });
    expect(await send({ reason: "its right day" })).toMatchObject({ kind: "set" });
    const page = JSON.stringify(await loadGoalsPage(other, { fundamental: "posture-bend", club: "iron" }));
    expect(page).toContain("replaced before it began");
    expect(page).not.toContain(' on"');
    other.db.sqlite.prepare("DELETE FROM goal_band WHERE student_id = ?").run(other.student.studentId);
  });

  it("sent twice it is set once", async () => {
    const { form } = await loadGoals(mine, { draft: randomUUID(), fundamental: "tilt-kept", club: "iron" });
    const data = sent(form, { low: "-4", high: "", reason: "one edge" });
    const [first, again] = [await setGoal(mine, data), await setGoal(mine, data)];
    expect(again).toEqual(first);
    expect(readGoalBands(viewer.db, viewer.scope)).toHaveLength(2);
  });

  it("given back on the same day, nothing ever held but the wider band: all is as it was before", async () => {
    expect(await sendGoal(mine, { what: "back", reason: "agreed with her coach" })).toMatchObject({ kind: "set" });
    const { verdict } = await hinge();
    expect(verdict).toMatchObject({ verdict: "gain", position: "inside" });
    expect(verdict.ownedSince).toBe((await hinge(other)).verdict.ownedSince);
    expect(
      readGoalBands(viewer.db, viewer.scope).filter(({ fundamentalId }) => fundamentalId === "hinge"),
    ).toHaveLength(2);
  });
});

describe("a goal band of the academy’s", () => {
  it("reaches everybody without a narrower one; dated back it changes no word of before today", async () => {
    const { ownedSince, changes } = (await hinge(other)).verdict;
    const from = dayAt(2);
    const wish = { low: "55", high: "70", from, reason: "our way" };
    expect(await sendGoal(viewer, wish)).toMatchObject({ kind: "refused" });
    expect(await sendGoal(viewer, { ...wish, datedBack: "yes" })).toMatchObject({ kind: "set" });
    const { verdict, history } = await hinge(other);
    // By the band of that day the move would have led out of it.
    expect(verdict).toMatchObject({ verdict: "gain", position: "outside", ownedSince: null, changes });
    expect(ownedSince).not.toBeNull();
    expect(history.goals.at(-1)?.from).toBe(from);
    expect(history.judged.goals?.at(-1)?.from).toBe(viewer.today);
  });

  it("those of an age come before it", async () => {
    expect(
      await sendGoal(viewer, { reach: "age-range", ageFrom: "1", ageTo: "99", low: "84", high: "96", reason: "ages" }),
    ).toMatchObject({ kind: "set" });
    expect((await hinge(other)).verdict).toMatchObject({ position: "inside", ownedSince: viewer.today });
  });
});

describe("the academy’s owning rule", () => {
  const stricter = { sessions: "40", spanDays: "300", why: "a whole season" };
  it("set for today it takes nothing away, and the judged input of the batch door bears it", async () => {
    const data = sent(loadOwningForm(viewer, randomUUID()), stricter);
    expect(setOwning(viewer, data)).toEqual({ kind: "set" });
    expect(JSON.stringify(loadOwningPage(viewer))).toContain("a whole season");
    film(other, viewer.today, 90);
    film(mine, viewer.today, 90);
    const { tracks } = await judgedInput(viewer, [other.student], null);
    const line = JSON.stringify(tracks.find(({ id }) => id.includes("/hinge/")));
    expect(JSON.parse(line).owning).toEqual([
      { from: viewer.today, sessions: 40, spanDays: 300, restDays: 7, share: 0.7, shareLow: 0.55 },
    ]);
    expect(parseTrackLine(line)).toEqual({ kind: "ok", value: JSON.parse(line) });
  });

  it("decides films of its day and later alone: under the band of before, owning stays as it was said", async () => {
    const { history, verdict } = await hinge(other);
    // The age's band began today, and asks anew by the rule of today.
    expect(verdict.ownedSince).toBeNull();
    expect(history.judged.owning).toHaveLength(1);
  });

  it("refuses yesterday and the same again", async () => {
    for (const more of [{ ...stricter, from: dayAt(3) }, stricter]) {
      const outcome = setOwning(viewer, formOf({ ...base(), ...more }));
      expect(outcome.kind).toBe("refused");
    }
  });
});

function base(): Record<string, string> {
  return { restDays: "7", share: "70", shareLow: "55", from: viewer.today };
}
