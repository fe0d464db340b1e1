import { createHash, randomUUID } from "node:crypto";
import { expect, test } from "../e2e/watched";
import { bringAskers, LARKS, WRENS } from "./access-askers";
import { builtActionRows } from "./built-acts";
import { host, sendAction, signIn, withDemo } from "./demo-roles";
import { type Answer, sendRaw } from "./raw-request";

// A7: access that is withdrawn while somebody works ends with their next request, whatever that is.

const OWN = { Host: host, Origin: `http://${host}` };
const KEY = `pbk_${"w".repeat(43)}`;
const DRAFT = randomUUID();
const TYPED = "typed before it ended";

test.beforeAll(async () => {
  await bringAskers();
});

type Send = (cookie: string, student: string) => Promise<Answer>;

async function stream(cookie: string, address: string): Promise<Answer> {
  const headers = { Host: host, cookie, RSC: "1" };
  const first = await sendRaw("GET", address, headers);
  const led = first.headers.location ?? "";
  return led.includes("_rsc") ? sendRaw("GET", led.replace(`http://${host}`, ""), headers) : first;
}

const get = (address: (student: string) => string): Send => {
  return (cookie, student) => sendRaw("GET", address(student), { Host: host, cookie });
};

/** What somebody in the middle of their work asks for next. */
const NEXT: Readonly<Record<string, Send>> = {
  page: get((student) => `/students/${student}`),
  stream: (cookie, student) => stream(cookie, `/students/${student}`),
  readings: get((student) => `/api/students/${student}/csv`),
  archive: get((student) => `/api/students/${student}/archive`),
  chart: get((student) => `/api/students/${student}/season/svg`),
  table: get((student) => `/api/tables?of=season&table=0&student=${student}`),
  action: (cookie, student) => {
    const { id = "" } = builtActionRows().find(({ row }) => row.endsWith("/practice submitPractice")) ?? {};
    const fields = { studentId: student, key: "sent-as-it-ended", day: "2026-09-01", minutes: "" };
    return sendAction(id, `/students/${student}/practice`, cookie, { fields, before: [] });
  },
  draft: (cookie, student) => {
    const entries = [
      ["kind", "new-club"],
      ["day", "2026-09-01"],
      ["note", TYPED],
    ];
    const about = { form: "event-form", studentId: student, of: "", version: 0, writer: "w", settles: "", act: "keep" };
    const body = JSON.stringify({ draft: DRAFT, ...about, turn: Date.now(), entries });
    return sendRaw("POST", "/api/drafts", { ...OWN, cookie, "Content-Type": "application/json" }, body);
  },
};
/** What somebody who only enters values asks for. */
const NEXT_OF_HELPER: Readonly<Record<string, Send>> = {
  "new session": get((student) => `/students/${student}/sessions/new`),
  sheet: get((student) => `/students/${student}/sessions/sheet`),
};

function answers({ status, headers, body }: Answer): boolean {
  const led = `${headers.location ?? ""} ${headers["x-action-redirect"] ?? ""}`;
  if (led.includes("/sign-in") || /NEXT_HTTP_ERROR_FALLBACK;404|NEXT_REDIRECT;[^"]*sign-in/.test(body)) return false;
  return status < 400;
}

/** Something that ends somebody's access, and what gives it back. */
interface Ending {
  readonly name: string;
  readonly who: string;
  readonly student: string;
  readonly end: string;
  readonly again: string;
  readonly next: Readonly<Record<string, Send>>;
}

const ENDINGS: readonly Ending[] = [
  {
    ...{ name: "the charge is ended", who: "lark", student: LARKS, next: NEXT },
    end: `UPDATE charge SET ended_at = '2026-09-01', ended_by = 'dove' WHERE id = 'lark-${LARKS}'`,
    again: `UPDATE charge SET ended_at = NULL, ended_by = NULL WHERE id = 'lark-${LARKS}'`,
  },
  {
    ...{ name: "the cover is over", who: "finch", student: WRENS, next: NEXT },
    end: "UPDATE charge SET until_day = '2026-01-02' WHERE id = 'finch-covers'",
    again: "UPDATE charge SET until_day = NULL WHERE id = 'finch-covers'",
  },
  {
    ...{ name: "the role is taken", who: "lark", student: LARKS, next: NEXT },
    end: "DELETE FROM person_role WHERE user_id = 'lark' AND role = 'coach'",
    again: "INSERT INTO person_role (user_id, role) VALUES ('lark', 'coach')",
  },
  {
    ...{ name: "a director is one no more", who: "dove", student: WRENS, next: NEXT },
    end: "DELETE FROM person_role WHERE user_id = 'dove' AND role = 'director'",
    again: "INSERT INTO person_role (user_id, role) VALUES ('dove', 'director')",
  },
  {
    ...{ name: "the access is ended", who: "lark", student: LARKS, next: NEXT },
    end: "UPDATE person SET ended_at = '2026-09-01', ended_by = 'dove' WHERE user_id = 'lark'",
    again: "UPDATE person SET ended_at = NULL, ended_by = NULL WHERE user_id = 'lark'",
  },
  {
    ...{ name: "the coach is helped no more", who: "linnet", student: WRENS, next: NEXT_OF_HELPER },
    end: "DELETE FROM assistance WHERE assistant_id = 'linnet'",
    again: "INSERT INTO assistance (assistant_id, coach_id) VALUES ('linnet', 'wren')",
  },
  {
    ...{ name: "the log-ins are ended everywhere", who: "lark", student: LARKS, next: NEXT },
    end: "UPDATE auth_session SET expires_at = 0 WHERE user_id = 'lark'",
    again: "DELETE FROM auth_session WHERE user_id = 'lark'",
  },
];

const run = (sql: string): void => withDemo((db) => void db.sqlite.exec(sql));

/** Lets something stand while work is done, and takes it back, also where the work fails. */
async function during<T>(stands: string, back: string, work: () => Promise<T>): Promise<T> {
  run(stands);
  try {
    return await work();
  } finally {
    run(back);
  }
}

const keptDraft = (): number =>
  withDemo(
    (db) =>
      db.sqlite
        .prepare<[string, string], number>("SELECT count(*) FROM draft WHERE id = ? AND body LIKE ?")
        .pluck()
        .get(DRAFT, `%${TYPED}%`) ?? 0,
  );

// What this file added, also where a test of it failed.
test.afterAll(() =>
  run(
    `DELETE FROM charge WHERE id = 'finch-covers'; DELETE FROM access_token WHERE id = 'withdrawn';
     DELETE FROM draft WHERE id = '${DRAFT}'`,
  ),
);

test("A7: the next page, stream, file, action and draft of whoever has lost their access is refused, and what they typed is kept", async () => {
  test.setTimeout(180_000);
  run(
    `INSERT OR REPLACE INTO charge (id, student_id, coach_id, kind, from_day, who, recorded_at)
     VALUES ('finch-covers', '${WRENS}', 'finch', 'cover', '2026-01-01', 'dove', '')`,
  );
  let cases = 0;
  const failures: string[] = [];
  for (const { name, who, student, end, again, next } of ENDINGS) {
    const { cookie } = await signIn(`${who}@demo.example`);
    for (const [what, send] of Object.entries(next))
      if (!answers(await send(cookie, student))) failures.push(`${name}: ${what} is refused before`);
    const typed = keptDraft();
    await during(end, again, async () => {
      for (const [what, send] of Object.entries(next)) {
        cases++;
        const answer = await send(cookie, student);
        if (answers(answer))
          failures.push(`${name}: ${what} is answered: ${answer.status} ${answer.headers.location ?? ""}`);
        if (answer.body.includes(TYPED)) failures.push(`${name}: ${what} shows what was typed`);
      }
      if (keptDraft() !== typed) failures.push(`${name}: what was typed is gone`);
    });
    run(`DELETE FROM draft WHERE id = '${DRAFT}'`);
  }
  console.log(`A7: ${cases} requests after ${ENDINGS.length} endings`);
  expect(failures).toEqual([]);
  expect(cases).toBeGreaterThanOrEqual(20);
});

test("A7: what somebody typed about a student waits for them until the student is theirs again", async () => {
  const { cookie } = await signIn("lark@demo.example");
  expect((await NEXT.draft?.(cookie, LARKS))?.status).toBe(200);
  const [ended] = ENDINGS;
  const form = (sent: string) =>
    sendRaw("GET", `/students/${LARKS}/events/new?draft=${DRAFT}`, { Host: host, cookie: sent });
  await during(ended?.end ?? "", ended?.again ?? "", async () => {
    expect((await form(cookie)).status).toBe(404);
    const record = await sendRaw("GET", "/record", { Host: host, cookie });
    expect([record.status, record.body.includes(DRAFT)]).toEqual([200, false]);
  });
  expect((await form(cookie)).body).toContain(TYPED);
});

test("A7: a key that is revoked, or whose maker has left or lost the student, opens the door no more", async () => {
  const hash = createHash("sha256").update(KEY).digest("hex");
  const academy = withDemo((db) => db.sqlite.prepare<[], string>("SELECT id FROM academy").pluck().get() ?? "");
  run(
    `INSERT OR REPLACE INTO access_token (id, academy_id, name, token_hash, who, user_id, created_at)
     VALUES ('withdrawn', '${academy}', 'bay', '${hash}', 'lark', 'lark', '2026-09-01T08:00:00.000Z')`,
  );
  const alias = withDemo(
    (db) => db.sqlite.prepare<[string], string>("SELECT alias FROM student WHERE id = ?").pluck().get(LARKS) ?? "",
  );
  const csv = `student,date,club,swing,fundamental,value\n${alias},2026-09-01,7-iron,1,hinge,88\n`;
  const send = () =>
    sendRaw(
      "POST",
      "/api/door/import",
      { Host: host, Authorization: `Bearer ${KEY}`, "Content-Type": "text/csv" },
      csv,
    );
  const isNew = (answer: Answer): boolean => /"new-(right|left)"/.test(answer.body);
  const first = await send();
  expect([first.status, isNew(first)]).toEqual([200, false]);
  let cases = 0;
  const endings: readonly (readonly [string, string])[] = [
    [
      "UPDATE access_token SET revoked_at = '2026-09-01' WHERE id = 'withdrawn'",
      "UPDATE access_token SET revoked_at = NULL WHERE id = 'withdrawn'",
    ],
    [
      "UPDATE person SET ended_at = '2026-09-01' WHERE user_id = 'lark'",
      "UPDATE person SET ended_at = NULL WHERE user_id = 'lark'",
    ],
    [
      "UPDATE person_role SET role = 'owner' WHERE user_id = 'lark'",
      "UPDATE person_role SET role = 'coach' WHERE user_id = 'lark'",
    ],
  ];
  for (const [end, again] of endings) {
    const ended = await during(end, again, send);
    expect([end, ended.status]).toEqual([end, 401]);
    expect((await send()).status).toBe(200);
    cases += 2;
  }
  // The student is nobody whom the key's maker knows any more, as if the name had never been here.
  const gone = await during(ENDINGS[0]?.end ?? "", ENDINGS[0]?.again ?? "", send);
  expect([gone.status, isNew(gone)]).toEqual([200, true]);
  console.log(`A7: ${cases + 1} requests of a key`);
});
