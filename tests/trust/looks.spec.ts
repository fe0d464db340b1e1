import { hashPassword } from "better-auth/crypto";
import { DEMO_PASSWORD } from "@/app/_server/access/demo-people";
import { lookAt } from "@/app/_server/access/looks";
import { MATRIX, mayPass } from "@/app/_server/access/matrix";
import { insertAccount, insertCharge, insertPerson } from "@/db/write/people";
import type { Role } from "@/lib/domain/person";
import { expect, test } from "../e2e/watched";
import { bringAskers, builtCases, WRENS } from "./access-askers";
import { host, signIn, withDemo } from "./demo-roles";
import { sendRaw } from "./raw-request";

// P5: whoever views, downloads or prints a minor's record leaves an entry. People of this file alone, so that nobody has looked
// within the minute.

interface Looker {
  readonly id: string;
  readonly roles: readonly Role[];
  readonly as: Role;
  readonly assists: readonly string[];
}

const LOOKERS: readonly Looker[] = [
  { id: "tern", roles: ["director"], as: "director", assists: [] },
  { id: "plover", roles: ["coach", "director"], as: "coach", assists: [] },
  { id: "dunlin", roles: ["coach"], as: "coach", assists: [] },
  { id: "siskin", roles: ["assistant"], as: "assistant", assists: ["wren"] },
  { id: "sanderling", roles: ["director"], as: "director", assists: [] },
  { id: "turnstone", roles: ["director"], as: "director", assists: [] },
];

const cookies = new Map<string, string>();

test.beforeAll(async () => {
  const passwordHash = await hashPassword(DEMO_PASSWORD);
  const now = new Date();
  withDemo((db) => {
    const academyId = db.sqlite.prepare<[], string>("SELECT id FROM academy").pluck().get() ?? "";
    const added = { academyId, addedAt: now.toISOString(), addedBy: "wren" };
    for (const { id, roles, as, assists } of LOOKERS) {
      insertAccount(db, { userId: id, name: id, email: `${id}@demo.example`, passwordHash, now });
      insertPerson(db, { userId: id, roles, assists, ...added });
      if (as !== "coach") continue;
      const from = { fromDay: "2020-01-01", untilDay: null, who: "wren", recordedAt: now.toISOString() };
      insertCharge(db, { id: `look-${id}`, studentId: WRENS, coachId: id, kind: "cover", ...from });
    }
  });
  for (const { id } of LOOKERS) cookies.set(id, (await signIn(`${id}@demo.example`)).cookie);
});

interface Entry {
  readonly of: string;
  readonly who: string;
  readonly role: string;
  readonly what: string;
  readonly place: string;
}

const lastEntry = (): number =>
  withDemo((db) => db.sqlite.prepare<[], number>("SELECT coalesce(max(id), 0) FROM record_view").pluck().get() ?? 0);

/** Entries since one; another program is no reason to wait for, so they are there when the answer is. */
function entriesSince(id: number): Entry[] {
  return withDemo((db) =>
    db.sqlite
      .prepare<[number], Entry>(
        "SELECT student_id AS of, who, role, what, place FROM record_view WHERE id > ? ORDER BY id",
      )
      .all(id),
  );
}

const get = (address: string, cookie: string, headers: Record<string, string> = {}) =>
  sendRaw("GET", address, { Host: host, cookie, ...headers });

const cases = builtCases().filter(({ row }) => MATRIX[row].of === "student");

test("P5: each page, file and print of a student leaves one entry: who, as what, at what", async () => {
  test.setTimeout(300_000);
  const failures: string[] = [];
  let [tried, kept] = [0, 0];
  for (const { row, address } of cases)
    for (const { id, roles, as } of LOOKERS.slice(0, 4)) {
      if (!mayPass(row, roles)) continue;
      const before = lastEntry();
      const { status } = await get(address, cookies.get(id) ?? "");
      const found = entriesSince(before);
      tried++;
      const wanted: Entry[] = [{ of: WRENS, who: id, role: as, what: lookAt(row) ?? "", place: row }];
      // A table or a chart that isn't there was asked for, and nothing was seen.
      if (status < 400 && JSON.stringify(found) !== JSON.stringify(wanted))
        failures.push(`${id}: ${address} ${status} ${JSON.stringify(found)}`);
      if (status >= 400 && found.length > 1) failures.push(`${id}: ${address} ${status} leaves ${found.length}`);
      if (status < 400) kept++;
    }
  console.log(`P5: ${tried} looks tried at ${cases.length} addresses, ${kept} answered, ${failures.length} failed`);
  expect(failures).toEqual([]);
  expect(kept).toBeGreaterThan(120);
});

test("P5: a page that a script asks for leaves the same entry, the same again within a minute none", async () => {
  test.setTimeout(120_000);
  const pages = cases.filter(({ row }) => lookAt(row) === "page" || lookAt(row) === "print");
  const failures: string[] = [];
  for (const { row, address } of pages) {
    const before = lastEntry();
    const cookie = cookies.get("sanderling") ?? "";
    const first = await get(address, cookie, { RSC: "1" });
    if (first.headers.location) await get(first.headers.location, cookie, { RSC: "1" });
    await get(address, cookie);
    const found = entriesSince(before).map(({ who, place }) => `${who} ${place}`);
    if (JSON.stringify(found) !== JSON.stringify([`sanderling ${row}`]))
      failures.push(`${address}: ${found.join(", ")}`);
  }
  console.log(`P5: ${pages.length} pages as streams and again`);
  expect(failures).toEqual([]);
});

test("P5: whoever is refused has seen nothing, and leaves no entry", async () => {
  test.setTimeout(300_000);
  const refused = (await bringAskers()).filter(({ name }) =>
    ["nobody", "dead cookie", "ended", "owl", "finch", "lark"].includes(name),
  );
  const before = lastEntry();
  let tried = 0;
  for (const { address } of cases)
    for (const { cookie } of refused) {
      await get(address, cookie);
      tried++;
    }
  console.log(`P5: ${tried} refusals`);
  expect(entriesSince(before)).toEqual([]);
});

test("P5: a file with many records is a look at each of them, a list on a page at none", async () => {
  const everybody = withDemo((db) =>
    db.sqlite.prepare<[], string>("SELECT id FROM student WHERE merged_into IS NULL ORDER BY id").pluck().all(),
  );
  const cookie = cookies.get("turnstone") ?? "";
  for (const [address, row] of [
    ["/api/archive", "GET /api/archive"],
    ["/api/roster/csv", "GET /api/roster/csv"],
  ] as const) {
    const before = lastEntry();
    expect((await get(address, cookie)).status).toBe(200);
    const found = entriesSince(before);
    expect(found.map(({ of }) => of).sort()).toEqual(everybody);
    expect(new Set(found.map(({ who, what, place }) => `${who} ${what} ${place}`))).toEqual(
      new Set([`turnstone file ${row}`]),
    );
  }
  const before = lastEntry();
  for (const address of ["/students", "/record", "/record/group", "/import/past", "/rereads"])
    expect((await get(address, cookie)).status).toBe(200);
  expect(entriesSince(before)).toEqual([]);
  console.log(`P5: ${2 * everybody.length} entries of two files`);
});

test("P5: an entry is never changed, and its page shows it with that of the page itself", async ({ page }) => {
  expect(() => withDemo((db) => db.sqlite.exec("UPDATE record_view SET who = 'nobody'"))).toThrow("never changed");
  await page.goto(`/students/${WRENS}/looked`);
  const table = page.getByRole("region", { name: "Looks by day and person" });
  await expect(table.getByRole("row").filter({ hasText: "tern" }).first()).toContainText("director");
  await expect(table.getByRole("row").filter({ hasText: "Wren" }).first()).toContainText("who looked");
  await expect(page.getByLabel("Words to copy")).toHaveValue(/siskin \(helps the coach\)/);
});
