import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { admitToStudent, type Viewer } from "@/app/_server/gate";
import { previewImport } from "@/app/_server/import/import-desk";
import { confirmImport } from "@/app/_server/import/write-import";
import { readSessions } from "@/db/read/sessions";
import { readConsents, readStudents } from "@/db/read/students";
import { addTo } from "./inviting";
import { type PeopleAcademy, startPeopleAcademy } from "./people-academy";

let academy: PeopleAcademy;
let ids: Readonly<Record<"bo" | "cy", string>>;

beforeAll(async () => {
  academy = await startPeopleAcademy();
  await academy.add({ userId: "bo", name: "Bo", roles: ["coach"] });
  await academy.add({ userId: "cy", name: "Cy", roles: ["coach"] });
  await academy.add({ userId: "dee", name: "Dee", roles: ["director"] });
  ids = { bo: addTo(academy.viewer("bo"), "Ari"), cy: addTo(academy.viewer("cy"), "Ari") };
});
afterAll(() => academy.remove());

const draftOf = (alias: string, day: string, answers: readonly (readonly [string, string])[]) => ({
  fileName: "season.csv",
  file: Buffer.from(`student,date,club,swing,hinge\n${alias},${day},7-iron,1,88\n`).toString("base64"),
  answers: [...answers],
});
function filmsOf(viewer: Viewer, id: string): number {
  const scope = admitToStudent(viewer, id);
  return scope ? readSessions(viewer.db, scope).length : 0;
}

describe("an alias that two coaches' students bear", () => {
  it("is asked about in a director's file, by the coaches' names, and goes to the chosen one alone", async () => {
    const dee = academy.viewer("dee");
    const { questions, plan } = await previewImport(dee, draftOf("Ari", "2026-03-01", []));
    expect(plan).toBeNull();
    expect(questions[0]?.options.map(({ args }) => args.coach ?? "")).toEqual(["Bo", "Cy", ""]);
    const written = await confirmImport(dee, draftOf("Ari", "2026-03-02", [["answer:which:ari", `is-${ids.cy}`]]));
    expect(written.kind).toBe("imported");
    expect([filmsOf(dee, ids.bo), filmsOf(dee, ids.cy)]).toEqual([0, 1]);
  });

  it("is each coach's own in their own file, and nothing is asked", async () => {
    const bo = academy.viewer("bo");
    expect((await previewImport(bo, draftOf("Ari", "2026-03-03", []))).questions).toEqual([]);
    expect((await confirmImport(bo, draftOf("Ari", "2026-03-03", []))).kind).toBe("imported");
    expect([filmsOf(bo, ids.bo), filmsOf(academy.viewer("dee"), ids.cy)]).toEqual([1, 1]);
  });
});

describe("somebody new in a coach's file", () => {
  it("comes in with a consent that ends, in that coach's charge", async () => {
    const answers = [
      ["answer:student:wim", "new-right"],
      ["answer-givenBy:student:wim", "his mother"],
    ] as const;
    const written = await confirmImport(academy.viewer("bo"), draftOf("Wim", "2026-03-04", answers));
    expect(written.kind).toBe("imported");
    const bo = academy.viewer("bo");
    const wim = readStudents(bo.db, bo.scope).find(({ alias }) => alias === "Wim");
    const scope = admitToStudent(bo, wim?.id ?? "");
    if (!scope) throw new Error("not in charge");
    const [consent] = readConsents(bo.db, scope);
    expect(consent).toMatchObject({ kind: "measure", givenBy: "his mother", giverIs: "guardian", from: bo.today });
    expect((consent?.until ?? "") > bo.today).toBe(true);
  });
});
