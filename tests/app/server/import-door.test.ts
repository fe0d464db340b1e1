import { readFileSync } from "node:fs";
import path from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { Viewer } from "@/app/_server/gate";
import { MOST_KEYS, makeKey, revokeKey, takeShownKey } from "@/app/_server/import/access-keys";
import { receiveAtDoor, tellAtDoor } from "@/app/_server/import/import-door";
import { loadKeys } from "@/app/_server/import/load-keys";
import { digestTables } from "@/db/backup";
import { readAccessTokens } from "@/db/read/access-tokens";
import { readImportBatches } from "@/db/read/import-batches";
import { startAcademy } from "./own-academy-data";

const HOST = "127.0.0.1:3000";
const long = readFileSync(path.join(import.meta.dirname, "../../../seed/samples/season-long.csv"));
const nia = new URLSearchParams([
  ["file", "season.csv"],
  ["answer", "student:nia=new-right"],
  ["answer", "answer-givenBy:student:nia=herself"],
]).toString();
const row = (day: string) => `student,date,club,swing,fundamental,value\nNia,${day},7-iron,1,hinge,88\n`;

let viewer: Viewer;
let remove: () => void;
let key: string;

beforeAll(async () => {
  process.env.PORT = "3000";
  ({ viewer, remove } = await startAcademy());
  const made = makeKey(viewer, " The  bay ");
  if (made.kind !== "made") throw new Error(made.kind);
  key = takeShownKey(viewer, made.id)?.key ?? "";
});
afterAll(() => remove());

interface Sent {
  readonly query?: string;
  readonly headers?: Record<string, string>;
  readonly body?: BodyInit;
}

async function send({ query = "", headers = {}, body = long }: Sent): Promise<{ status: number; told: never }> {
  const request = new Request(`http://${HOST}/api/door/import?${query}`, {
    method: "POST",
    headers: { host: HOST, authorization: `Bearer ${key}`, ...headers },
    body,
    duplex: "half",
  } as RequestInit);
  const answer = await receiveAtDoor(request);
  return { status: answer.status, told: (await answer.json()) as never };
}

async function ask(batchId: string, authorization: string) {
  const request = new Request(`http://${HOST}/api/door/import/${batchId}`, { headers: { host: HOST, authorization } });
  const answer = await tellAtDoor(request, batchId);
  return { status: answer.status, told: await answer.json() };
}

/** Everything but when a key was last used. */
async function held() {
  const { access_token: _tokens, ...rest } = await digestTables(viewer.db);
  return rest;
}

describe("a key", () => {
  it("is shown once, kept as a hash, named, and of 256 random bits", () => {
    expect(key).toMatch(/^pbk_[A-Za-z0-9_-]{43}$/);
    const made = makeKey(viewer, "Another");
    const id = made.kind === "made" ? made.id : "";
    expect(loadKeys(viewer, { made: id }).shown?.key).not.toBe(key);
    expect(loadKeys(viewer, { made: id }).shown).toBeNull();
    const kept = viewer.db.sqlite.prepare("SELECT * FROM access_token").all();
    expect(JSON.stringify(kept)).not.toContain(key);
    expect(
      readAccessTokens(viewer.db, viewer.scope)
        .map((token) => token.name)
        .sort(),
    ).toEqual(["Another", "The bay"]);
    revokeKey(viewer, id);
    expect(loadKeys(viewer, {}).revokes.filter((each) => each === null).length).toBe(1);
  });

  it("needs a name, and there are not many", () => {
    expect(makeKey(viewer, "  ")).toEqual({ kind: "no-name" });
    const more = Array.from({ length: MOST_KEYS }, (_, at) => makeKey(viewer, `key ${at}`));
    expect(more.at(-1)).toEqual({ kind: "too-many" });
    for (const made of more) if (made.kind === "made") revokeKey(viewer, made.id);
  });
});

describe("the door", () => {
  it("takes no file without a key in force, from elsewhere, over the limit, broken off, empty, or no table", async () => {
    const before = await held();
    const revoked = makeKey(viewer, "Lost");
    const lost = revoked.kind === "made" ? takeShownKey(viewer, revoked.id)?.key : "";
    if (revoked.kind === "made") revokeKey(viewer, revoked.id);
    const broken = new ReadableStream({
      pull(controller) {
        controller.enqueue(Buffer.from("student,da"));
        controller.error(new Error("gone"));
      },
    });
    const endless = new ReadableStream({ pull: (controller) => controller.enqueue(new Uint8Array(1024 * 1024)) });
    const cases: readonly (readonly [string, number, Sent])[] = [
      ["no key", 401, { headers: { authorization: "" } }],
      ["another scheme", 401, { headers: { authorization: `Basic ${key}` } }],
      ["wrong key", 401, { headers: { authorization: `Bearer ${key.slice(0, -1)}` } }],
      ["no key of ours", 401, { headers: { authorization: "Bearer x" } }],
      ["revoked key", 401, { headers: { authorization: `Bearer ${lost}` } }],
      ["foreign host", 403, { headers: { host: "elsewhere.invalid" } }],
      ["our name on another port", 403, { headers: { host: "127.0.0.1:1" } }],
      ["stated length", 413, { headers: { "content-length": String(33 * 1024 * 1024) } }],
      ["endless", 413, { body: endless }],
      ["empty", 422, { body: "" }],
      ["half", 422, { body: broken }],
      ["half of what was stated", 422, { headers: { "content-length": "20" }, body: "student,date" }],
      ["picture", 415, { body: Buffer.from("89504e470d0a1a0a0000000d49484452", "hex") }],
      ["nothing ready", 422, { query: "confirm=yes", body: "a,b\n1,2\n" }],
    ];
    for (const [name, status, sent] of cases) {
      const answer = await send(sent);
      expect(`${name} ${answer.status}`).toBe(`${name} ${status}`);
      const { problem, do: next } = answer.told as { problem: string; do: string };
      expect([problem.endsWith("."), next.length > 10, /[<{]|Error|sqlite/i.test(problem + next)]).toEqual([
        true,
        true,
        false,
      ]);
    }
    expect(await held()).toEqual(before);
  });

  it("reads a file without writing, and tells what it needs by id", async () => {
    const before = await held();
    const { status, told } = await send({});
    expect(status).toBe(200);
    expect(told).toMatchObject({ state: "preview", saved: false, rows: { all: 90, ready: 0 } });
    const asked = (told as { questions: { id: string; options: { id: string }[] }[] }).questions;
    expect(asked.find((question) => question.id === "student:nia")?.options.map((option) => option.id)).toContain(
      "new-right",
    );
    expect((await send({ query: nia })).told).toMatchObject({ rows: { all: 90, ready: 90, waiting: 0 } });
    expect(await held()).toEqual(before);
  });

  it("writes it once: the same content again is the first import, which can be asked for", async () => {
    const first = await send({ query: `confirm=yes&${nia}` });
    expect([first.status, first.told]).toMatchObject([201, { state: "imported", readings: 90, students: 1 }]);
    const { batch } = first.told as { batch: string };
    const before = await held();
    expect(await send({ query: `confirm=yes&${nia}` })).toMatchObject({
      status: 200,
      told: { state: "already-imported", batch },
    });
    expect(await send({})).toMatchObject({ status: 200, told: { state: "already-imported", batch } });
    expect(await held()).toEqual(before);
    expect(await ask(batch, `Bearer ${key}`)).toMatchObject({ status: 200, told: { state: "imported", batch } });
    expect((await ask("nothing", `Bearer ${key}`)).status).toBe(404);
    expect((await ask(batch, "")).status).toBe(401);
    expect(readAccessTokens(viewer.db, viewer.scope)[0]?.lastUsedAt).not.toBeNull();
    // The upload waits with the batch, and nothing else of it is left.
    const drafts = viewer.db.sqlite.prepare("SELECT id FROM draft ORDER BY id").pluck().all();
    expect(drafts).toEqual([batch, `${batch}.file`]);
  });

  it("one batch of eight sends of one file at once", async () => {
    const before = readImportBatches(viewer.db, viewer.scope).length;
    const body = row("2026-06-01");
    const answers = await Promise.all(Array.from({ length: 8 }, () => send({ query: "confirm=yes", body })));
    expect(answers.map(({ status }) => status).sort()).toEqual([200, 200, 200, 200, 200, 200, 200, 201]);
    expect(new Set(answers.map(({ told }) => (told as { batch: string }).batch)).size).toBe(1);
    expect(readImportBatches(viewer.db, viewer.scope).length).toBe(before + 1);
  });

  it("slows wrong keys after twenty a minute, and a true one never", async () => {
    const wrong = { headers: { authorization: "Bearer pbk_wrong" } };
    const statuses: number[] = [];
    // Two minutes may share these tries: one of them has more than twenty.
    for (let at = 0; at < 45; at++) statuses.push((await send(wrong)).status);
    expect([...new Set(statuses)].sort()).toEqual([401, 429]);
    expect((await send({ query: "confirm=yes", body: row("2026-06-03") })).status).toBe(201);
  });
});
