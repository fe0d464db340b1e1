import { readFileSync } from "node:fs";
import path from "node:path";
import { afterAll, beforeAll, expect, it } from "vitest";
import { loadArchive } from "@/app/_server/archive/load-archive";
import { admitToStudent, type Viewer } from "@/app/_server/gate";
import { makeKey, takeShownKey } from "@/app/_server/import/access-keys";
import { receiveAtDoor } from "@/app/_server/import/import-door";
import { confirmImport } from "@/app/_server/import/write-import";
import { digestTables } from "@/db/backup";
import { insertEvent } from "@/db/write/events";
import { startAcademy } from "./own-academy-data";

const HOST = "127.0.0.1:3000";
const sample = readFileSync(path.join(import.meta.dirname, "../../../seed/samples/season-long.csv"));

let viewer: Viewer;
let remove: () => void;
let key: string;
/** Nia's archive as it was taken out. */
let text: string;
let niaId: string;

beforeAll(async () => {
  process.env.PORT = "3000";
  ({ viewer, remove } = await startAcademy());
  const made = makeKey(viewer, "The bay");
  key = made.kind === "made" ? (takeShownKey(viewer, made.id)?.key ?? "") : "";
  await confirmImport(viewer, {
    fileName: "nia.csv",
    file: sample.toString("base64"),
    answers: [
      ["answer:student:nia", "new-right"],
      ["answer-givenBy:student:nia", "herself"],
    ],
  });
  niaId = viewer.db.sqlite.prepare<[], string>("SELECT id FROM student WHERE alias = 'Nia'").pluck().get() ?? "";
  const nia = admitToStudent(viewer, niaId);
  if (!nia) throw new Error("Nia was not added");
  insertEvent(viewer.db, nia, { id: "e1", kind: "growth", day: "2026-02-01", note: "", rebaselines: [] });
  text = JSON.stringify((await loadArchive(viewer, nia)).archive);
}, 120_000);
afterAll(() => remove());

async function send(body: string, ...query: readonly [string, string][]) {
  const request = new Request(`http://${HOST}/api/door/import?${new URLSearchParams([...query])}`, {
    method: "POST",
    headers: { host: HOST, authorization: `Bearer ${key}` },
    body,
    duplex: "half",
  } as RequestInit);
  const answer = await receiveAtDoor(request);
  return { status: answer.status, told: await answer.json() };
}

/** What an import writes; what is judged, and the use of a key, may follow a moment later. */
const held = () => digestTables(viewer.db, ["student", "session", "reading", "event", "import_batch", "draft"]);

it("a student on file already is refused with the reason, and nothing is written", async () => {
  const before = await held();
  const refused = [{ code: "student-here", args: { alias: "Nia", here: "Nia" }, says: expect.stringMatching(/Nia/) }];
  expect(await send(text)).toMatchObject({
    status: 200,
    told: { state: "preview", saved: false, archive: true, ready: false, refused },
  });
  expect(await send(text, ["confirm", "yes"])).toMatchObject({
    status: 422,
    told: { problem: expect.any(String), saved: false, archive: true, refused },
  });
  expect(await held()).toEqual(before);
});

it("another student is told as the page tells her: what is asked, what differs, what comes; answered, that is saved", async () => {
  const other = text.replaceAll(niaId, "another-nia");
  const before = await held();
  const id = "answer-alias:another-nia";
  const asked = await send(other);
  const counts = { students: 1, sessions: 9, readings: 90, events: 1 };
  expect(asked).toMatchObject({ status: 200, told: { ready: false, refused: [], brings: counts } });
  expect(asked.told.questions).toEqual([
    { id, code: "alias-taken", asks: expect.stringContaining("Nia"), answer: null },
  ]);
  const answered = await send(other, ["answer", `${id}=Nia 2`]);
  expect(answered.told).toMatchObject({ ready: true, students: [{ alias: "Nia 2", sessions: 9, events: 1 }] });
  expect(answered.told.differences).toContainEqual({ code: "roster-list", args: {}, says: expect.any(String) });
  expect(await held()).toEqual(before);
  const written = await send(other, ["answer", `${id}=Nia 2`], ["confirm", "yes"]);
  expect(written).toMatchObject({ status: 201, told: { state: "imported", students: 1, sessions: 9, readings: 90 } });
});

it.each([
  ["of another version", () => text.replace(/"version":\d+/, '"version":9'), "other-version"],
  ["with a field that isn't one", () => text.replace('"students":[', '"students":[{"alias":7},'), "broken"],
])("an archive %s is named as one, with what is wrong", async (_what, spoiled, code) => {
  const before = await held();
  const { status, told } = await send(spoiled());
  expect([status, told.archive, told.saved]).toEqual([422, true, false]);
  expect(told.issues[0]).toEqual({ code, says: expect.stringMatching(/\w+ .*\./) });
  expect(await held()).toEqual(before);
});

it("an academy that changes while an archive is read is planned for anew", async () => {
  const other = text.replaceAll(niaId, "third-nia").replaceAll('"alias":"Nia"', '"alias":"Nia 3"');
  const writing = send(other, ["confirm", "yes"]);
  const making = send(text.replaceAll(niaId, "fourth-nia").replaceAll('"alias":"Nia"', '"alias":"Nia 4"'), [
    "confirm",
    "yes",
  ]);
  const answers = await Promise.all([writing, making]);
  expect(answers.map(({ status }) => status)).toEqual([201, 201]);
});
