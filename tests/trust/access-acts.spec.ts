import { type AccessRow, MATRIX, type RowKey } from "@/app/_server/access/matrix";
import { demoPageId } from "../e2e/demo-family";
import { expect, test } from "../e2e/watched";
import { type Asker, bringAskers, LARKS, WRENS } from "./access-askers";
import { atOnce } from "./at-once";
import { builtActionRows, fieldsOf } from "./built-acts";
import { digestData } from "./data-digest";
import { demoToday, OWN, sendAction } from "./demo-roles";
import { sendRaw } from "./raw-request";

// A2: each action as each role.

let askers: readonly Asker[] = [];
test.beforeAll(async () => {
  askers = await bringAskers();
});

/** A stream has begun when the gate says no, and says so inside. */
const DENIED = /E\{"digest":"NEXT_HTTP_ERROR_FALLBACK;404"\}/;
/** What a page asks for by itself while somebody types: whoever was signed out meanwhile is answered nothing, and goes on typing. */
const ASKED_BY_ITSELF = /(?:askGroup|askGroupNote|askCaptures|askNote|askFilms|keepGrid)$/;
const NOTHING = /^1:(?:\[\]|null|"\$undefined")$/m;

test("A2: an action sent by somebody whom it isn't for writes nothing and says so", async () => {
  test.setTimeout(300_000);
  // Filling in the addresses puts an upload and an import into the demo.
  const actions = builtActionRows();
  const before = await digestData();
  expect(actions.length).toBeGreaterThan(40);
  const all = actions.flatMap((action) => {
    const { roles = [], of }: AccessRow = MATRIX[action.row];
    return askers.flatMap((asker) => {
      // What is about the sender themselves anybody who is logged in may send.
      const passes = of === "viewer" || roles.some((role) => asker.roles.includes(role));
      const reaches =
        of !== "student" || asker.reach === "all" || (asker.reach !== "out" && asker.reach.includes(WRENS));
      if (asker.reach !== "out" && passes && reaches) return [];
      // Its own page, one that anybody who is logged in may open, and the same page of a student whom the sender may see.
      const pages = new Set([action.page, "/settings", action.page.replace(`/${WRENS}`, `/${LARKS}`)]);
      return [...pages].map((from) => ({ ...action, asker, from }));
    });
  });
  const failures = await atOnce(all, async ({ id, row, page, asker, from }) => {
    const sent = { fields: fieldsOf(page), before: /Note$/.test(row) ? [WRENS] : [] };
    const { status, headers, body } = await sendAction(id, from, asker.cookie, sent);
    const led = `${headers.location ?? ""} ${headers["x-action-redirect"] ?? ""}`;
    // An action of another page is sent on to that page by the framework; our door refuses it there, and this is left.
    const sentOn = from !== page && status === 200 && body === "{}";
    const toNobody = asker.reach === "out" && ASKED_BY_ITSELF.test(row) && NOTHING.test(body);
    const refused =
      sentOn || toNobody || [401, 403, 404, 409].includes(status) || led.includes("/sign-in") || DENIED.test(body);
    // At its own page the door answers before the gate, and in words.
    const inWords = from !== page || asker.reach === "out" || body.includes("There is no such page for you.");
    return [
      ...(inWords ? [] : [`${asker.name}: ${row} is refused in no words`]),
      ...(refused ? [] : [`${asker.name}: ${row} from ${from}: ${status} ${led}`]),
    ];
  });
  console.log(`A2: ${all.length} actions and roles`);
  expect(failures.flat()).toEqual([]);
  expect(await digestData()).toBe(before);
});

test("A2: what a family's buttons send writes by its own live link, and by nobody else's", async () => {
  const sent = { day: demoToday(), minutes: "7", hurts: "no", kind: "erase", practiceId: "1" };
  const rows = (Object.keys(MATRIX) as RowKey[]).filter((row) => /^POST \/api\/family\//.test(row));
  expect(rows).toHaveLength(3);
  const pageIds = [demoPageId("live"), demoPageId("foreign"), demoPageId("ended"), demoPageId("revoked"), "nobody"];
  const post = (address: string, cookie: string) =>
    sendRaw(
      "POST",
      address,
      { ...OWN, cookie, "Content-Type": "application/x-www-form-urlencoded" },
      new URLSearchParams(sent).toString(),
    );
  const before = await digestData();
  const failures: string[] = [];
  let asked = 0;
  for (const row of rows)
    for (const pageId of pageIds)
      for (const asker of askers.filter(({ page }) => page !== `/family/${pageId}`)) {
        const { status, body } = await post(row.slice(5).replace("[pageId]", pageId), asker.cookie);
        asked++;
        if (status !== 404 || !body.includes("We can’t show a page from here."))
          failures.push(`${asker.name}: ${row} ${pageId} ${status}`);
      }
  expect(failures).toEqual([]);
  expect(await digestData()).toBe(before);
  const live = askers.find(({ page }) => page === `/family/${demoPageId("live")}`);
  const own = await post(`/api/family/${demoPageId("live")}/practice`, live?.cookie ?? "");
  expect([own.status, own.headers.location]).toEqual([303, `/family/${demoPageId("live")}?done=logged`]);
  expect(await digestData()).not.toBe(before);
  console.log(`A2: ${asked} buttons of families, pages and roles`);
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
