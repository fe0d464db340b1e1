import { createHash } from "node:crypto";
import { type AccessRow, MATRIX } from "@/app/_server/access/matrix";
import { expect, test } from "../e2e/watched";
import { type Asker, bringAskers, LARKS, WRENS } from "./access-askers";
import { type BuiltAction, builtActionRows, fieldsOf } from "./built-acts";
import { host, sendAction, withDemo } from "./demo-roles";
import { sendRaw } from "./raw-request";

/*
 * A6: what says who somebody is, of which academy, whose record it is and when it was is never taken from a form. Every action
 * and every route with a body is sent such fields beside its own.
 */

const LONG_AGO = "1999-09-09T09:09:09.000Z";
const FORGED = "zqforged";
/** Beside a form's own fields, and once more after one of the same name. */
const FIELDS: Readonly<Record<string, string>> = {
  ...{ role: "owner", academyId: FORGED, academy: FORGED, userId: FORGED, coachId: FORGED, who: FORGED },
  ...{ createdAt: LONG_AGO, recordedAt: LONG_AGO, enteredAt: LONG_AGO, changedAt: LONG_AGO, addedBy: FORGED },
  ...{ policyVersion: FORGED, revision: "999", scope: "all", __proto__x: FORGED, recordedBy: FORGED },
};
/** What would end the very log-in that sends, or somebody's work here: those have no field that could be forged unseen. */
const NOT_SENT = /endOwnLogIns|endColleague|dropOwnSecondStep|beginOwnSecondStep/;

let askers: readonly Asker[] = [];
test.beforeAll(async () => {
  askers = await bringAskers();
});

const asker = (name: string): Asker => {
  const found = askers.find((each) => each.name === name);
  if (!found) throw new Error(`nobody is ${name}`);
  return found;
};

/** Fields with which some of the actions save something. */
const SAVING: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  submitPractice: { "minutes.2026-09-01": "10", week: "2026-08-31", source: "told" },
  submitEvent: { kind: "new-club", day: "2026-09-01", note: "written by the test" },
  submitStudent: {
    ...{
      alias: "Forge",
      birthYear: String(new Date().getFullYear() - 12),
      hand: "right",
      clubs: "",
      zone: "UTC",
      consentGivenBy: "mother",
    },
    consentOnPaper: "yes",
  },
  submitSession: { day: "2026-09-02", clubGroup: "iron", circumstance: "unaided", "r.1.hinge": "88" },
  makeAccessKey: { name: "written by the test" },
};

const textTables = (): readonly string[] =>
  withDemo((db) =>
    db.sqlite
      .prepare<[], string>(
        "SELECT name FROM sqlite_master WHERE type = 'table' AND name NOT LIKE 'sqlite_%' AND name NOT LIKE '\\_\\_%' ESCAPE '\\'",
      )
      .pluck()
      .all(),
  );

/** Rows that come by reading or that nobody saved. */
const UNSAVED = ["draft", "analysis", "record_view", "auth_session", "look_noise", "roster_list"];

/** Rows of everything that is saved. */
function countRows(): number {
  const tables = textTables().filter((each) => !UNSAVED.includes(each));
  return withDemo((db) =>
    tables.reduce(
      (sum, table) => sum + (db.sqlite.prepare<[], number>(`SELECT count(*) FROM ${table}`).pluck().get() ?? 0),
      0,
    ),
  );
}

/** Whose roles there are, and what stands of Wren's student. */
function standing(): { readonly roles: unknown; readonly wrens: string } {
  const tables = textTables().filter((each) => !UNSAVED.includes(each));
  return withDemo((db) => {
    const columns = (table: string) =>
      db.sqlite.prepare<[string], string>("SELECT name FROM pragma_table_info(?)").pluck().all(table);
    const wrens = createHash("sha256");
    for (const table of tables.filter((each) => columns(each).includes("student_id")))
      wrens.update(JSON.stringify(db.sqlite.prepare(`SELECT * FROM ${table} WHERE student_id = ?`).all(WRENS)));
    return {
      roles: db.sqlite.prepare("SELECT * FROM person_role ORDER BY user_id, role").all(),
      wrens: wrens.digest("hex"),
    };
  });
}

/** Rows that hold a forged value; a kept form holds whatever was typed, for whoever typed it. */
function forgedRows(): readonly string[] {
  const tables = textTables().filter((each) => each !== "draft");
  return withDemo((db) =>
    tables.filter((table) => {
      const text = JSON.stringify(db.sqlite.prepare(`SELECT * FROM ${table}`).all(), (_name, value) =>
        Buffer.isBuffer(value) ? "" : value,
      );
      return text.includes(FORGED) || text.includes(LONG_AGO);
    }),
  );
}

function sendForged({ id, row, page }: BuiltAction, by: Asker, mine: string) {
  const own = page.replace(`/${WRENS}`, `/${mine}`);
  const name = row.split(" ")[1] ?? "";
  const fields = { ...fieldsOf(own), studentId: mine, id: mine, ...SAVING[name], ...FIELDS };
  const again = [...Object.entries(FIELDS), ["studentId", WRENS]] as const;
  return sendAction(id, own, by.cookie, { fields, again, before: /Note$/.test(row) ? [mine] : [] });
}

test("A6: fields that say who, whose and when, added to every action, are ignored or refused", async () => {
  test.setTimeout(240_000);
  const before = standing();
  const failures: string[] = [];
  let [asked, saved] = [0, 0];
  for (const by of [asker("lark"), asker("owl")])
    for (const action of builtActionRows().filter(({ row }) => !NOT_SENT.test(row))) {
      const { roles }: AccessRow = MATRIX[action.row];
      const mayPass = roles === undefined || roles.some((role) => by.roles.includes(role));
      const rows = countRows();
      const { status } = await sendForged(action, by, LARKS);
      asked++;
      if (status >= 500) failures.push(`${by.name}: ${action.row} ${status}`);
      const now = countRows();
      if (now > rows) saved++;
      if (now !== rows && !mayPass) failures.push(`${by.name}: ${action.row} wrote`);
    }
  const after = standing();
  console.log(
    `A6: ${asked} actions with ${Object.keys(FIELDS).length + 1} fields more, of which ${saved} saved something`,
  );
  expect(failures).toEqual([]);
  expect(after.roles).toEqual(before.roles);
  // What stood second in the form was another coach's student.
  expect(after.wrens).toBe(before.wrens);
  expect(forgedRows()).toEqual([]);
  // Where nothing is saved nothing is proved.
  expect(saved).toBeGreaterThanOrEqual(Object.keys(SAVING).length);
});

test("A6: the same in what is sent as data: drafts, uploads and the door of other programs", async () => {
  const lark = asker("lark");
  const OWN = { Host: host, Origin: `http://${host}`, cookie: lark.cookie };
  const draft = "0b0b0b0b-0b0b-4b0b-8b0b-0b0b0b0b0b0b";
  const kept = {
    draft,
    form: "event-form",
    studentId: LARKS,
    of: "",
    version: 0,
    writer: "w",
    turn: 1,
    settles: "",
    act: "keep",
  };
  const entries = [["day", "2026-09-01"], ...Object.entries(FIELDS)];
  const body = JSON.stringify({ ...FIELDS, ...kept, entries, updatedAt: LONG_AGO, kind: FORGED });
  const answer = await sendRaw("POST", "/api/drafts", { ...OWN, "Content-Type": "application/json" }, body);
  expect(answer.status).toBe(200);
  const row = withDemo((db) =>
    db.sqlite
      .prepare(
        "SELECT draft.user_id, draft.student_id, draft.kind, draft.updated_at > '2026' AS isNow, academy_id = academy.id AS here FROM draft JOIN academy WHERE draft.id = ?",
      )
      .get(draft),
  );
  expect(row).toEqual({ user_id: "lark", student_id: LARKS, kind: `event-form ${LARKS}`, isNow: 1, here: 1 });
  for (const of of [WRENS, "s99"]) {
    const other = JSON.stringify({ ...kept, draft: "0c0c0c0c-0c0c-4c0c-8c0c-0c0c0c0c0c0c", studentId: of, entries });
    expect((await sendRaw("POST", "/api/drafts", { ...OWN, "Content-Type": "application/json" }, other)).status).toBe(
      404,
    );
  }
  const boundary = "----proofband";
  const part = (name: string, value: string, more = "") =>
    `--${boundary}\r\nContent-Disposition: form-data; name="${name}"${more}\r\n\r\n${value}\r\n`;
  const upload = `${Object.entries(FIELDS)
    .map(([name, value]) => part(name, value))
    .join(
      "",
    )}${part("file", "student,date,club,swing,fundamental,value\nForge,2026-09-01,7-iron,1,hinge,88\n", '; filename="forge.csv"')}--${boundary}--\r\n`;
  // Others may have uploads in the demo by now.
  const uploads = () =>
    withDemo((db) =>
      db.sqlite
        .prepare<[], { id: string; userId: string }>(
          "SELECT id, user_id AS userId FROM draft WHERE kind LIKE 'import%'",
        )
        .all(),
    );
  const earlier = new Set(uploads().map(({ id }) => id));
  const sent = await sendRaw(
    "POST",
    "/api/import",
    { ...OWN, "Content-Type": `multipart/form-data; boundary=${boundary}` },
    upload,
  );
  expect(sent.status).toBeLessThan(500);
  const whose = new Set(uploads().flatMap(({ id, userId }) => (earlier.has(id) ? [] : [userId])));
  expect([...whose]).toEqual(["lark"]);
  expect(forgedRows()).toEqual([]);
  withDemo((db) => db.sqlite.exec(`DELETE FROM draft WHERE user_id = 'lark'`));
  console.log("A6: 4 bodies of data");
});
