import { randomUUID } from "node:crypto";
import { afterAll, beforeAll, expect, it } from "vitest";
import { admitMachine, type StudentViewer, type Viewer } from "@/app/_server/gate";
import { loadGoals } from "@/app/_server/goals/goal-desk";
import { loadStudentVerdicts } from "@/app/_server/roster/load-verdicts";
import { loadKnownRecord } from "@/app/_server/season/load-known";
import { loadGridSource } from "@/app/_server/session/grid-desk";
import {
  addDefinition,
  changeDefinition,
  loadDefinition,
  loadDefinitionForm,
  loadDefinitions,
} from "@/app/_server/settings/definition-desk";
import { insertSession } from "@/db/write/sessions";
import { dayFromNumber, dayNumber } from "@/lib/domain/calendar-day";
import { NOTHING_SEEN } from "@/lib/domain/session";
import { admitNew, formOf, sent } from "./corrected-season";
import { startAcademy } from "./own-academy-data";
import { OWN_HEEL_FORM } from "./own-heel-form";

const ID = "own-heel-lift";
let viewer: Viewer;
let mine: StudentViewer;
let remove: () => void;

function film(at: number, level: number): void {
  const day = dayFromNumber(dayNumber(viewer.today) - at);
  const capture = { view: "face-on", placement: "unknown", placementLabel: null, squareness: "unknown" } as const;
  const made = insertSession(
    viewer.db,
    mine.student,
    {
      ...({ day, sequence: 1, clubGroup: "iron", club: null, reader: "Lark", circumstance: "unaided" } as const),
      ...{ aid: null, stanceWidthCm: null, daysSincePractice: 9, marks: [], note: null, solid: null, balls: null },
      ...{ setAsideReason: null, statedCaptureSds: [] },
      captures: [
        { ...capture, offBy: null, setAsideReason: null, seen: NOTHING_SEEN, placedBy: null, filmReference: null },
      ],
      swings: [-1, 0, 1, 0, -1].map((off, place) => ({
        ...{ number: place + 1, note: null },
        readings: [
          {
            ...({ fundamentalId: ID, value: level + off, typed: String(level + off) } as const),
            ...({ unit: "pct-stance", signRule: "neutral" } as const),
          },
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
  started.viewer.db.sqlite.exec("UPDATE academy SET season_start = '2001-01-01'");
  const admitted = await admitMachine({ choice: "own", locale: null });
  if (!admitted) throw new Error("no academy");
  viewer = admitted;
  mine = await admitNew(viewer, "Zephyrine", "right");
}, 60_000);
afterAll(() => remove());

const shown = (draft: string = randomUUID()) => {
  const form = loadDefinitionForm(viewer, ID, draft);
  if (form === null) throw new Error("no form");
  return form;
};
/** With plain blanks: a number and its unit are held together by another one. */
const plain = (text: string): string => text.replace(/\s/g, " ");
const change = (typed: Readonly<Record<string, string>>) => changeDefinition(viewer, ID, sent(shown(), typed));
const names = (form = shown()) => form.parts.flatMap((part) => part.fields.map(({ name }) => name));
async function heel() {
  const { tracks } = await loadStudentVerdicts(mine);
  return tracks.find(({ history }) => history.fundamental.id === ID);
}
const columns = async () => (await loadGridSource(mine, "iron")).fundamentals.map(({ id }) => id as string);

it("defined, it is measured, judged and given bands like any other; a second one gets another id", async () => {
  expect(loadDefinitions(viewer).title).toBe("No fundamental of your own is measured");
  expect(addDefinition(viewer, formOf(OWN_HEEL_FORM))).toEqual({ kind: "kept", id: ID });
  expect(addDefinition(viewer, formOf({ ...OWN_HEEL_FORM, name: "Heel, lift" }))).toMatchObject({ id: `${ID}-2` });
  expect(await columns()).toContain(ID);
  const room = await loadGoals(viewer, { draft: randomUUID(), fundamental: ID, club: "driver" });
  expect(plain(JSON.stringify(room.page))).toContain("0 to 15 %");
  expect(addDefinition(viewer, formOf({ ...OWN_HEEL_FORM, draft: randomUUID() })).kind).toBe("refused");
});

it("until the first reading everything can be put right, and what was wrong holds for no film", async () => {
  expect(names()).toContain("unit");
  expect(change({ reading: "4", worthwhile: "5", why: "A slip." }).kind).toBe("kept");
  for (const [at, level] of [20, 21, 19].entries()) film(100 - at * 10, level);
  const found = await heel();
  expect(found?.history.judged).toMatchObject({ readerSd: 4 / 1.96, worthwhileAtLeast: 5 });
  expect(JSON.stringify(loadDefinition(viewer, ID))).toContain("no film: nothing was read by it");
  expect(names()).not.toContain("unit");
});

it("changed afterwards, films keep what held on their day, and what was known yesterday is known still", async () => {
  const before = await heel();
  expect(change({ reading: "9", name: "Heel height", why: "Two readers differ by that." }).kind).toBe("kept");
  const after = await heel();
  expect(after?.history.judged).toEqual(before?.history.judged);
  expect(after?.verdict).toEqual(before?.verdict);
  expect(after?.history.fundamental).toMatchObject({ ownName: "Heel height", readerSd: 9 / 1.96 });
  film(0, 20);
  const judged = (await heel())?.history.judged;
  expect(judged?.sessions.map(({ readerSd }) => readerSd ?? judged.readerSd)).toEqual([
    ...Array.from({ length: 3 }, () => 4 / 1.96),
    9 / 1.96,
  ]);
  const { record } = await loadStudentVerdicts(mine);
  const then = loadKnownRecord(mine, record, `${dayFromNumber(dayNumber(mine.today) - 1)}T23:59:59.999Z`);
  const known = then.fundamentals.find(({ id }) => id === ID);
  expect([known?.ownName, known?.readerSd, known?.earlier]).toEqual(["Heel lift", 3 / 1.96, []]);
});

it("the page tells what it was, when, why and by whom; the same again is refused and kept", () => {
  const [, history] = loadDefinition(viewer, ID)?.parts ?? [];
  expect(history?.table?.rows[0]?.cells.slice(1).map(plain)).toEqual([
    "Name: “Heel lift”, Error of one reading: “±4 %”",
    expect.stringMatching(/^films before /),
    ...["Two readers differ by that.", viewer.name],
  ]);
  const refused = change({ why: "again" });
  if (refused.kind !== "refused") throw new Error("kept");
  expect(shown(refused.draftId).parts.at(-1)?.fields.at(-1)).toMatchObject({ name: "why", value: "again" });
  expect(shown(refused.draftId).parts.at(-1)?.fields.at(-1)?.error).toContain("defined already");
});

it("two who change it at once: the second sees what it became before it may hold to theirs", () => {
  const old = sent(shown(), { plus: "heel up", why: "Shorter.", draft: randomUUID() });
  expect(change({ camera: "3", why: "Wider." }).kind).toBe("kept");
  const refused = changeDefinition(viewer, ID, old);
  if (refused.kind !== "refused") throw new Error("kept");
  const again = shown(refused.draftId);
  expect(again.refusal).toContain("Somebody changed this definition");
  expect(changeDefinition(viewer, ID, sent(again, {})).kind).toBe("kept");
});

it("read no more, it is no column, and what is on file stays; one that was never read is nowhere else", async () => {
  expect(change({ offered: "no", why: "Too hard to see." }).kind).toBe("kept");
  expect(await columns()).not.toContain(ID);
  expect((await heel())?.verdict.sessions).toBe(4);
  const other = loadDefinitionForm(viewer, `${ID}-2`, randomUUID());
  if (other === null) throw new Error("no form");
  changeDefinition(viewer, `${ID}-2`, sent(other, { offered: "no", why: "A slip." }));
  expect(loadDefinitions(viewer).parts[0]?.table?.rows).toHaveLength(2);
  const room = await loadGoals(viewer, { draft: randomUUID(), fundamental: "hinge", club: "iron" });
  const offered = room.ways[0]?.links.map(({ label }) => label) ?? [];
  expect([offered.includes("Heel height"), offered.includes("Heel, lift")]).toEqual([true, false]);
});

it("moved in the order of work alone, the page says so", () => {
  expect(change({ after: "first", why: "Seen first." }).kind).toBe("kept");
  const [, history] = loadDefinition(viewer, ID)?.parts ?? [];
  expect(history?.table?.rows[0]?.cells[1]).toBe("Another place in the order of work");
});

it("of one that isn't there nothing is shown or kept", () => {
  expect([loadDefinition(viewer, "hinge"), loadDefinitionForm(viewer, "own-none", randomUUID())]).toEqual([null, null]);
  expect(changeDefinition(viewer, "hinge", formOf({ why: "x" }))).toEqual({ kind: "unknown" });
});
