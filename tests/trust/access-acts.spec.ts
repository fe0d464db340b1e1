import { readFileSync } from "node:fs";
import path from "node:path";
import { findRow } from "@/app/_server/access/find-row";
import { type AccessRow, MATRIX, type RowKey } from "@/app/_server/access/matrix";
import { builtRoutes } from "../e2e/routes";
import { served } from "../e2e/served";
import { expect, test } from "../e2e/watched";
import { type Asker, bringAskers, LARKS, WRENS } from "./access-askers";
import { digestData } from "./data-digest";
import { sendAction } from "./demo-roles";

// A2: each action as each role.

let askers: readonly Asker[] = [];
test.beforeAll(async () => {
  askers = await bringAskers();
});

interface BuiltAction {
  readonly id: string;
  readonly row: RowKey;
  readonly page: string;
}

function builtActionRows(): BuiltAction[] {
  const file = path.join(served.root, ".next", "server", "server-reference-manifest.json");
  const { node } = JSON.parse(readFileSync(file, "utf8")) as {
    node: Record<string, { exportedName: string; filename: string }>;
  };
  const pages = builtRoutes().filter(({ kind }) => kind === "page");
  return Object.entries(node).map(([id, { exportedName, filename }]) => {
    const folder = filename
      .replace(/^app/, "")
      .replace(/\/[^/]+$/, "")
      .replace(/\/\([^)]+\)/g, "");
    const page = pages.find(({ path: address }) => findRow("GET", address) === folder)?.path ?? "/settings";
    return { id, row: `${folder} ${exportedName}` as RowKey, page };
  });
}

/** Names what an action could be about, as Wren's own pages would. */
function fieldsOf(page: string): Record<string, string> {
  const ids = page.split("/");
  const last = ids.at(-1) ?? "";
  return {
    ...{ studentId: WRENS, draftId: "uploaded-for-the-tests", batchId: "imported-for-the-tests", key: "a-key" },
    ...{ sessionId: ids[4] ?? "", eventId: last, assignmentId: last, readBackId: last, drawId: last, practiceId: "1" },
    ...{
      day: "2026-09-01",
      minutes: "10",
      alias: "Stranger",
      wish: "take",
      intent: "import",
      id: last,
      keyId: "1",
      name: "x",
    },
  };
}

/** A stream has begun when the gate says no, and says so inside. */
const DENIED = /E\{"digest":"NEXT_HTTP_ERROR_FALLBACK;404"\}/;

test("A2: an action sent by somebody whom it isn't for writes nothing and says so", async () => {
  test.setTimeout(300_000);
  const before = await digestData();
  const failures: string[] = [];
  let asked = 0;
  const all = builtActionRows();
  expect(all.length).toBeGreaterThan(40);
  for (const { id, row, page } of all) {
    const { roles = [], of }: AccessRow = MATRIX[row];
    for (const asker of askers) {
      // What is about the sender themselves anybody who is logged in may send.
      const passes = of === "viewer" || roles.some((role) => asker.roles.includes(role));
      const reaches =
        of !== "student" || asker.reach === "all" || (asker.reach !== "out" && asker.reach.includes(WRENS));
      if (asker.reach !== "out" && passes && reaches) continue;
      // Its own page, one that anybody who is logged in may open, and the same page of a student whom the sender may see.
      for (const from of new Set([page, "/settings", page.replace(`/${WRENS}`, `/${LARKS}`)])) {
        const sent = { fields: fieldsOf(page), before: /Note$/.test(row) ? [WRENS] : [] };
        const { status, headers, body } = await sendAction(id, from, asker.cookie, sent);
        asked++;
        const led = `${headers.location ?? ""} ${headers["x-action-redirect"] ?? ""}`;
        // An action of another page is sent on to that page by the framework; our door refuses it there, and this is left.
        const sentOn = from !== page && status === 200 && body === "{}";
        const refused =
          sentOn || [401, 403, 404, 409].includes(status) || led.includes("/sign-in") || DENIED.test(body);
        // At its own page the door answers before the gate, and in words.
        const inWords = from !== page || asker.reach === "out" || body.includes("There is no such page for you.");
        if (!inWords) failures.push(`${asker.name}: ${row} is refused in no words`);
        if (!refused) failures.push(`${asker.name}: ${row} from ${from}: ${status} ${led}`);
      }
    }
  }
  console.log(`A2: ${asked} actions and roles`);
  expect(failures).toEqual([]);
  expect(await digestData()).toBe(before);
});

test("A2: the same way of sending writes for whoever may", async () => {
  const wren = askers.find(({ name }) => name === "wren");
  const practice = builtActionRows().find(({ row }) => row.endsWith("/practice submitPractice"));
  const before = await digestData();
  const fields = { studentId: WRENS, key: "sent-by-the-test", day: "2026-09-01", minutes: "" };
  const sent = await sendAction(practice?.id ?? "", practice?.page ?? "", wren?.cookie ?? "", { fields, before: [] });
  expect(sent.headers["x-action-redirect"]).toContain("/practice?");
  expect(await digestData()).not.toBe(before);
});
