import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { admitToStudent, type StudentViewer, type Viewer } from "@/app/_server/gate";
import { confirmImport } from "@/app/_server/import/write-import";
import { decideAsking } from "@/app/_server/season/asking-desk";
import { loadAskedSource, loadFundamentalSource } from "@/app/_server/season/load-fundamental";
import { readStudents } from "@/db/read/students";
import type { TakenPlan } from "@/lib/domain/asking";
import { buildSettle } from "@/lib/report/build-settle";
import { planOnOffer } from "@/lib/report/plan-on-offer";
import { takenPlan } from "@/lib/report/taken-plan";
import { wordsFor } from "@/lib/words/catalogue";
import { flat, madeTrack } from "../../lib/verdict/made-track";
import { startAcademy } from "./own-academy-data";

const words = wordsFor("en");
let viewer: Viewer;
let remove: () => void;

/** Sessions of one student's side tilt as a file. */
async function bring(days: readonly string[], values: readonly (readonly number[])[], name: string): Promise<void> {
  const rows = days.flatMap((day, i) =>
    (values[i] as readonly number[]).map(
      (value, swing) => `Pim,right,2010,${day},7-iron,${swing + 1},setup-tilt,${value.toFixed(1)},deg,1`,
    ),
  );
  const answers =
    readStudents(viewer.db, viewer.scope).length > 0
      ? []
      : ([
          ["answer:student:pim", "new-right"],
          ["answer-givenBy:student:pim", "himself"],
        ] as const);
  const text = ["student,hand,birth year,date,club,swing,fundamental,value,unit,camera sd", ...rows].join("\n");
  const outcome = await confirmImport(viewer, { fileName: name, file: Buffer.from(text).toString("base64"), answers });
  expect(outcome).toMatchObject({ kind: "imported" });
}

const dayAt = (i: number): string => new Date(Date.UTC(2026, 1, 2 + 10 * i)).toISOString().slice(0, 10);

/** Eleven sessions of a made track: 5 degrees, at last two of 10. */
const past = madeTrack(1, [...flat(9, 5), ...flat(2, 10)]).sessions.map((session) => session.swings);

beforeAll(async () => {
  ({ viewer, remove } = await startAcademy());
  await bring(
    past.map((_, i) => dayAt(i)),
    past,
    "past.csv",
  );
});
afterAll(() => remove());

function pim(): StudentViewer {
  const student = admitToStudent(viewer, readStudents(viewer.db, viewer.scope)[0]?.id ?? "");
  if (!student) throw new Error("no pim");
  return { ...viewer, student };
}
const source = () => loadFundamentalSource(pim(), "setup-tilt", "iron");

describe("a conditional plan on the desk", () => {
  let plan: TakenPlan;

  it("is taken as it was offered, with the size that it is for", async () => {
    const { verdict, history } = await source();
    const offered = verdict.settleIfReal;
    if (verdict.settle === null || !("none" in verdict.settle) || offered === null || "none" in offered)
      throw new Error(`another plan: ${JSON.stringify([verdict.settle, offered])}`);
    const data = new FormData();
    for (const [name, value] of Object.entries({
      fundamentalId: "setup-tilt",
      clubGroup: history.clubGroup,
      state: "planned",
    }))
      data.set(name, value);
    await decideAsking(pim(), data);
    const taken = (await source()).asking?.plan;
    if (!taken) throw new Error("not taken");
    expect(taken).toEqual({
      sessions: offered.sessions,
      swingsEach: offered.swingsEach,
      captureSd: offered.captureSd,
      chance: offered.chance,
      after: dayAt(10),
      ifReal: offered.size,
    });
    plan = taken;
  });

  it("films that were asked about are planned with the chance and the size that the engine gave them", async () => {
    const { verdict, history } = await source();
    const offered = planOnOffer(verdict);
    if (offered === null) throw new Error("no plan");
    const ask = async (films: number) => {
      const data = new FormData();
      const track = { fundamentalId: "setup-tilt", clubGroup: history.clubGroup, state: "planned" };
      const wished = { films: String(films), swings: "10", care: "usual" };
      for (const [name, value] of Object.entries({ ...track, ...wished })) data.set(name, value);
      await decideAsking(pim(), data);
      return (await source()).asking?.plan ?? null;
    };
    const { asked } = await loadAskedSource(pim(), "setup-tilt", "iron", { films: "8", swings: "10", care: "usual" });
    const best = asked ? takenPlan(asked.answer) : null;
    if (best === null) throw new Error("the largest plan is not worth asking for");
    expect(await ask(8)).toMatchObject({
      ...{ sessions: 8, swingsEach: 10, captureSd: asked?.answer.captureSd, chance: best.chance },
      ...(best.kind === "if-real" ? { ifReal: best.size } : {}),
    });
    // What nobody can be asked for counts as not wished: the plan on offer.
    const standing = { films: String(offered.sessions), swings: String(offered.swingsEach) };
    const data = new FormData();
    const track = { fundamentalId: "setup-tilt", clubGroup: history.clubGroup, state: "planned" };
    for (const [name, value] of Object.entries({ ...track, ...standing, films: "99" })) data.set(name, value);
    await decideAsking(pim(), data);
    expect((await source()).asking?.plan).toEqual(plan);
  });

  it("is counted film by film; followed back at the old level, it says below what any change lies", async () => {
    expect(buildSettle(words, await source())?.heading).toMatch(/^None of .* come$/);
    const back = madeTrack(9, flat(plan.sessions, 5)).sessions.map(({ swings }) =>
      Array.from({ length: plan.swingsEach }, (_, at) => swings[at % swings.length] as number),
    );
    await bring(
      back.map((_, i) => dayAt(11 + i)),
      back,
      "back.csv",
    );
    const after = await source();
    expect(after.verdict.verdict).toBe("open");
    const part = buildSettle(words, after);
    expect(part?.heading).toBe("You did what was asked, and it is still not settled");
    expect(part?.texts[1]).toMatch(/^If something has changed, it is by less than /);
    expect(part?.texts[2]).toMatch(/as big as it looked then/);
  });
});
