import { randomUUID } from "node:crypto";
import { readFileSync } from "node:fs";
import path from "node:path";
import { createElement } from "react";
import { renderToStaticMarkup } from "react-dom/server";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { Viewer } from "@/app/_server/gate";
import { makeKey } from "@/app/_server/import/access-keys";
import { loadKeys, loadKeysDoor, makeKeyFrom } from "@/app/_server/import/load-keys";
import { loadPastImport } from "@/app/_server/import/past-import";
import { loadPastDoor, loadPastImports } from "@/app/_server/import/past-imports";
import { undoBatch } from "@/app/_server/import/undo-desk";
import { confirmImport } from "@/app/_server/import/write-import";
import { PastImport } from "@/app/_ui/import/past-import";
import { PastImports } from "@/app/_ui/import/past-imports";
import { Running } from "@/app/_ui/import/running";
import { Keys } from "@/app/_ui/keys/keys";
import { BUILT_KINDS } from "@/db/read/built-on-import";
import { readImportBatches } from "@/db/read/import-batches";
import { wordsFor } from "@/lib/words/catalogue";
import { startAcademy } from "../server/own-academy-data";

let viewer: Viewer;
let remove: () => void;
const nothing = async (): Promise<void> => {};
const file = (text: string | Buffer) => Buffer.from(text).toString("base64");
const rows = "student,date,club,swing,fundamental,value";

beforeAll(async () => {
  ({ viewer, remove } = await startAcademy());
});
afterAll(() => remove());

function pageOf(batchId: string, problem?: string): string {
  const model = loadPastImport(viewer, batchId, problem);
  if (!model) throw new Error("no such import");
  return renderToStaticMarkup(createElement(PastImport, { model, action: nothing }));
}

async function imported(fileName: string, text: string | Buffer): Promise<string> {
  const outcome = await confirmImport(viewer, {
    fileName,
    file: file(text),
    answers: [
      ["answer:student:nia", "new-right"],
      ["answer-givenBy:student:nia", "herself"],
    ],
  });
  if (outcome.kind !== "imported") throw new Error(outcome.kind);
  return outcome.batchId;
}

describe("the pages of past imports", () => {
  it("say that there is none, and afterwards which, by whom, what was answered and how it is undone", async () => {
    expect(renderToStaticMarkup(createElement(PastImports, { model: loadPastImports(viewer) }))).toContain(
      "Nothing was imported yet.",
    );
    const sample = readFileSync(path.join(import.meta.dirname, "../../../seed/samples/season-long.csv"));
    const batchId = await imported("season-long.csv", sample);
    const list = renderToStaticMarkup(createElement(PastImports, { model: loadPastImports(viewer) }));
    for (const text of ["season-long.csv", "Coach Lark, on the page", "on file", `/import/past/${batchId}`])
      expect(list).toContain(text);
    expect(loadPastDoor(viewer).paragraphs[0]).toContain("One file was imported.");
    const page = pageOf(batchId, "not-sure");
    for (const text of ["brought 90 readings", "Nia (new)", "nia: A new student, right-handed", "Yes, undo 90"])
      expect(page).toContain(text);
    expect(page).toContain('role="alert"');
    expect(page).toContain('name="sure"');
  });

  it("name what was built on it, with the way there, and offer no undo", async () => {
    const batchId = readImportBatches(viewer.db, viewer.scope)[0]?.id ?? "";
    const other = await imported(
      "more.csv",
      `${rows}\nNia,2026-07-01,7-iron,1,hinge,88\nNia,2026-07-01,7-iron,2,hinge,x\n`,
    );
    const page = pageOf(batchId);
    expect(page).toContain("It can’t be undone any more");
    expect(page).toContain("Nia, 1 Jul 2026: a session entered since");
    expect(page).toContain('href="/students/');
    expect(page).not.toContain('name="sure"');
    expect(pageOf(other)).toContain("One thing was set aside");
    await undoBatch(viewer, other, "sure");
    const undone = pageOf(other);
    expect(undone).toContain("“more.csv” is undone");
    expect(undone).toContain(`href="/import/${other}"`);
    expect(pageOf(batchId)).toContain('name="sure"');
  });

  it("show readings that were on file with another value", async () => {
    const first = readImportBatches(viewer.db, viewer.scope).at(-1);
    const day = viewer.db.sqlite
      .prepare<[string], { day: string; value: number; number: number }>(
        `SELECT day, number, value FROM reading JOIN swing ON swing.id = swing_id JOIN session ON session.id = swing.session_id
         WHERE reading.batch_id = ? AND fundamental_id = 'hinge' LIMIT 1`,
      )
      .get(first?.id ?? "");
    const text = `${rows}\nNia,${day?.day},7-iron,${day?.number},hinge,${(day?.value ?? 0) + 1}\n`;
    const page = pageOf(await imported("differs.csv", text));
    expect(page).toContain("brought nothing new");
    expect(page).toContain(`in the file ${(day?.value ?? 0) + 1}`);
  });

  it("have words for all that can be built on an import, in both languages", () => {
    for (const locale of ["en", "en-XA"])
      for (const kind of BUILT_KINDS)
        for (const count of [1, 2])
          expect(wordsFor(locale).say(`undo.built.${kind}`, { alias: "Nia", count, day: "" })).toContain("Nia");
  });
});

describe("the page of an import on its way", () => {
  it("tells how far it is in a status, with a link for pages without scripts and a button that stops it", () => {
    const model = {
      title: "On its way",
      margin: "How far",
      says: "Written 40,000 of 100,000 readings.",
      explains: "It goes on.",
      again: { href: "/import/x/done", label: "See how far it is now" },
      poll: "/api/import/x/state",
      stop: { draftId: "x", label: "Stop it" },
      ended: "no",
    } as const;
    const page = renderToStaticMarkup(createElement(Running, { model, stop: nothing }));
    expect(page).toContain('role="status">Written 40,000 of 100,000 readings.');
    expect(page).toContain('href="/import/x/done"');
    expect(page).toContain("Stop it");
  });
});

describe("the page of keys", () => {
  it("shows a new key once, lists it, and says why none was made", () => {
    const draft = randomUUID();
    expect(loadKeysDoor(viewer).heading).toBe("No other program may import");
    const made = makeKey(viewer, "Phone");
    const wish = made.kind === "made" ? { made: made.id, draft } : { draft };
    const page = renderToStaticMarkup(
      createElement(Keys, { model: loadKeys(viewer, wish), make: nothing, revoke: nothing }),
    );
    expect(page).toMatch(/<code[^>]*>pbk_[A-Za-z0-9_-]{43}<\/code>/);
    expect(page).toContain('aria-label="Revoke “Phone”"');
    const named = new FormData();
    named.set("name", " ");
    named.set("draft", draft);
    const refused = makeKeyFrom(viewer, named);
    if (refused.kind !== "refused") throw new Error("made without a name");
    const again = renderToStaticMarkup(
      createElement(Keys, {
        model: loadKeys(viewer, { ...wish, draft: refused.draftId }),
        make: nothing,
        revoke: nothing,
      }),
    );
    expect(again).not.toContain("pbk_");
    expect(again).toContain(viewer.words.say("keys.new.required"));
  });
});
