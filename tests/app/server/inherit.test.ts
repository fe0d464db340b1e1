import { afterAll, beforeAll, describe, expect, it, vi } from "vitest";
import type { StudentViewer } from "@/app/_server/gate";
import { handOver } from "@/app/_server/people/handing-desk";
import { loadInherited, pressInheritedSeen } from "@/app/_server/people/inherited";
import { loadInherit } from "@/app/_server/people/load-inherit";
import { startTenTwice } from "@/app/_server/people/ten-twice-part";
import { loadDraw, loadReaderError } from "@/app/_server/reread/load-rereads";
import { findDraw, saveRereads } from "@/app/_server/reread/reread-desk";
import { giveDrill } from "@/app/_server/season/drill-desk";
import { readRereadDraws, readRereadItems } from "@/db/read/rereads";
import { type HandingAcademy, startHandingAcademy } from "../../trust/handing-academy";
import { form } from "./inviting";
import { fillSeason, firstValue, SESSIONS } from "./reread-season";

const DRAFT = "0f0f0f0f-0f0f-4f0f-8f0f-0f0f0f0f0f0f";

let academy: HandingAcademy;
let cy: StudentViewer;
const drawOf: Record<string, string> = {};

beforeAll(async () => {
  academy = await startHandingAcademy();
  const bo = academy.as("bo");
  fillSeason(bo, bo.student);
  const drill = { drill: "new", name: "Freeze", fundamental: "hinge", how: "Stop.", words: "daily" };
  giveDrill(bo, form({ ...drill, start: bo.today }));
  handOver(bo, form({ coach: "cy", note: "look at the <b>grip</b> first" }));
  cy = academy.as("cy");
}, 60_000);
afterAll(() => academy.remove());

const textOf = async (): Promise<string> => JSON.stringify(await loadInherit(cy, {}));

describe("what a coach inherits", () => {
  it("says from whom, with the note, where the student stands, and what lies open", async () => {
    const text = await textOf();
    for (const part of [
      "Handed over by Bo",
      "look at the <b>grip</b> first",
      "Freeze: daily, from today.",
      "No link for the family is live.",
      "To measure: consent given by mother, until",
      "To share with the family: no consent is in force.",
      "No pause and no break",
      "No films are planned",
      "Bo read before, Cy reads from now on",
    ])
      expect(text).toContain(part);
    const page = await loadInherit(cy, {});
    const table = page.parts.find(({ table }) => table !== null)?.table;
    expect(table?.rows.map(({ cells }) => cells[0])).toHaveLength(1);
  });

  it("stands on the new coach's roster until seen was pressed, and on nobody else's", () => {
    expect(loadInherited(cy)?.items.map(({ student, text }) => `${student.label} ${text}`)).toEqual([
      expect.stringContaining("Nia handed over by Bo"),
    ]);
    expect([loadInherited(academy.viewer("bo")), loadInherited(academy.ada)]).toEqual([null, null]);
    const asked = vi.spyOn(cy.db.sqlite, "prepare");
    loadInherited(cy);
    expect(asked.mock.calls.length).toBeLessThanOrEqual(2);
    asked.mockRestore();
    pressInheritedSeen(cy);
    pressInheritedSeen(cy);
    expect(loadInherited(cy)).toBeNull();
  });
});

describe("ten blind re-reads by both", () => {
  it("are two draws of the same readings, of this student alone; whoever lost the student opens neither", () => {
    const wish = { fundamental: "hinge", first: "Bo", level: "b" };
    expect(startTenTwice(cy, form({ ...wish, readers: [] }))).toEqual({ kind: "refused", why: "choice" });
    expect(startTenTwice(cy, form({ ...wish, first: "Nobody", readers: ["first"] })).kind).toBe("refused");
    expect(startTenTwice(cy, form({ ...wish, fundamental: "spine", readers: ["first"] })).kind).toBe("refused");
    const made = startTenTwice(cy, form({ ...wish, readers: ["first", "coach"] }));
    const draws = readRereadDraws(cy.db, cy.scope);
    expect(draws.map(({ reader, items, level }) => [reader, items, level]).toSorted()).toEqual([
      ["Bo", 10, "b"],
      ["Cy", 10, "b"],
    ]);
    for (const { id, reader } of draws) drawOf[reader] = id;
    expect(made).toEqual({ kind: "drawn", drawId: drawOf.Cy });
    const places = (id: string | undefined) =>
      readRereadItems(cy.db, cy.scope, id ?? "").map(({ place, filmReference, swing }) => [
        place,
        filmReference,
        swing,
      ]);
    expect(places(drawOf.Bo)).toEqual(places(drawOf.Cy));
    for (const id of Object.values(drawOf)) expect(findDraw(academy.viewer("bo"), id)).toBeNull();
  });

  it("show nobody what was read first, nor what the other has read so far", () => {
    const typed = form({ "v.1": "77.125", finish: "no", confirmUnusual: "yes" });
    expect(saveRereads(cy, drawOf.Cy ?? "", typed).kind).toBe("saved");
    const pages = JSON.stringify([drawOf.Bo, drawOf.Cy].map((id) => loadDraw(cy, id ?? "", { draft: DRAFT })));
    for (let session = 0; session < SESSIONS; session++)
      for (const swing of [1, 2, 3]) expect(pages).not.toContain(String(firstValue(session, swing)));
    expect(JSON.stringify(loadDraw(cy, drawOf.Bo ?? "", { draft: DRAFT }))).not.toContain("77.125");
  });

  it("read by both, the one reader through a cover, the page of results tells how far they lie apart, with its interval", () => {
    handOver(cy, form({ kind: "cover", coach: "bo", until: academy.later(1) }));
    const bo = academy.as("bo");
    for (const [viewer, name, shift] of [
      [bo, "Bo", 0],
      [cy, "Cy", 2],
    ] as const) {
      const id = drawOf[name] ?? "";
      const values = readRereadItems(viewer.db, viewer.scope, id).map(({ place, filmReference, swing }) => {
        const first = firstValue(Number(filmReference.replace("shelf ", "")), swing);
        return [`v.${place}`, String(first + shift * (1 + (place % 3) / 5))] as const;
      });
      const filled = form({ ...Object.fromEntries(values), finish: "yes", confirmUnusual: "yes" });
      expect(saveRereads(viewer, id, filled).kind).toBe("finished");
    }
    const results = JSON.stringify(loadReaderError(cy, "hinge"));
    // 2, 2.4 and 2.8 in turn: Bo reads about 2.4 lower.
    expect(results).toMatch(/Bo less Cy","10","−2\.4\s±\s0\.[1-9]°/);
  });
});
