import type { OtherServer } from "./other-server";
import type { Answer } from "./raw-request";
import {
  draftOf,
  FORM,
  keep,
  nobody,
  ours,
  sendFile,
  sendRawly,
  sendUnstated,
  signInAs,
  whileSo,
} from "./refusal-senders";

// F1: each row of TRUST.md’s table of refusals, and the ones beside it, forced through a server of its own.

/** One refusal: what is sent, and what must be said. */
export interface RefusalCase {
  readonly name: string;
  readonly status: number;
  /** The cause, in words. */
  readonly says: RegExp;
  /** Whether anything was saved. */
  readonly saved: RegExp;
  /** What to do. */
  readonly next: RegExp;
  /** A page, or data for a program or a page’s own script. */
  readonly kind: "page" | "data";
  readonly send: (server: OtherServer) => Promise<Answer>;
}

const NOTHING =
  /nothing (?:of (?:it|this one) )?was (?:saved|changed|kept)|Nothing was (?:saved|changed|kept)|so nothing was/i;
const page = (name: string, status: number, says: RegExp, next: RegExp, send: RefusalCase["send"], saved = NOTHING) =>
  ({ name, status, says, next, send, saved, kind: "page" }) as const;
const data = (name: string, status: number, says: RegExp, next: RegExp, send: RefusalCase["send"], saved = NOTHING) =>
  ({ name, status, says, next, send, saved, kind: "data" }) as const;

export const REFUSALS: readonly RefusalCase[] = [
  page("401 a download after the log-out", 401, /Please sign in again/, /Sign in at the first page/, (server) =>
    server.send("GET", "/api/students/s01/csv", nobody),
  ),
  page(
    "401 a form sent without scripts after the log-out",
    401,
    /Please sign in again[\s\S]*signed out/,
    /in another window[\s\S]*Send it again/,
    (server) =>
      server.send("POST", "/students/new", ours(server, { ...nobody, "Content-Type": FORM }), "alias=half+a+name"),
  ),
  page(
    "401 a wrong password",
    401,
    /do(?:es)? not|don’t|wrong/i,
    /password/i,
    (server) => signInAs(server, { email: "lark@demo.example", password: "not the password", to: "/" }),
    /./,
  ),
  data(
    "401 what is typed after the log-out",
    401,
    /signed out/,
    /signed in again/,
    (server) =>
      server.send(
        "POST",
        "/api/drafts",
        ours(server, { ...nobody, "Content-Type": "application/json" }),
        JSON.stringify(draftOf({})),
      ),
    /not sent yet/,
  ),
  data(
    "401 no key at the door",
    401,
    /key/,
    /key/i,
    (server) => server.send("POST", "/api/door/import", {}, "student,date\n"),
    /./,
  ),
  page("403 a foreign page", 403, /did not come from Proofband/, /Open Proofband at http/, (server) =>
    server.send("POST", "/settings", ours(server, { Origin: "http://elsewhere.invalid" }), "a=b"),
  ),
  page("403 a foreign name", 403, /did not come from Proofband/, /Open Proofband at http/, (server) =>
    server.send("GET", "/students", { Host: "elsewhere.invalid" }),
  ),
  page("404 no such page", 404, /There is no such page for you/, /To the first page/, (server) =>
    server.send("GET", "/no/such/page", ours(server)),
  ),
  page("404 a student of nobody", 404, /There is no such page for you/, /To the first page/, (server) =>
    server.send("GET", "/students/nobody", ours(server)),
  ),
  page("404 a form for nobody", 404, /There is no such page for you/, /Open Proofband at http/, (server) =>
    server.send("POST", "/students/nobody/practice", ours(server, { "Content-Type": FORM }), "a=b"),
  ),
  page("405 another method", 405, /neither, so nothing was changed/, /Open Proofband/, (server) =>
    server.send("PUT", "/students", ours(server), "x"),
  ),
  page("405 an action replayed by reading", 405, /neither, so nothing was changed/, /Open Proofband/, (server) =>
    server.send("GET", "/students", ours(server, { "Next-Action": "00".repeat(21) })),
  ),
  page("405 a route that is only sent to", 405, /neither, so nothing was changed/, /Open Proofband/, (server) =>
    server.send("GET", "/api/import", ours(server)),
  ),
  data(
    "409 two windows of one form",
    409,
    /Changed in another window at/,
    /Both are below/,
    async (server) => {
      const body = draftOf({ entries: [["note", "one"]] });
      await keep(server, body);
      return keep(server, { ...body, writer: "v", entries: [["note", "other"]] });
    },
    /nothing is lost/,
  ),
  page("413 a file over the limit", 413, /The file is over 32 MB/, /send another file/, (server) =>
    sendFile(server, "big.csv", Buffer.alloc(33 * 1024 * 1024, "a,b\n")),
  ),
  page("413 a form over the limit", 413, /A form may hold 2 MB/, /shorten the notes/, (server) =>
    server.send("POST", "/settings", ours(server, { "Content-Type": FORM }), "a".repeat(2 * 1024 * 1024 + 1)),
  ),
  page("413 a form that doesn’t say how long it is", 413, /A form may hold 2 MB/, /shorten the notes/, (server) =>
    sendUnstated(server, "/settings", ours(server, { "Content-Type": FORM }), 12 * 1024 * 1024),
  ),
  page("413 a file that doesn’t say how long it is", 413, /The file is over 32 MB/, /send another file/, (server) =>
    sendUnstated(
      server,
      "/api/import",
      ours(server, { "Content-Type": "multipart/form-data; boundary=x" }),
      60 * 1024 * 1024,
    ),
  ),
  data(
    "413 a form that is kept while it is typed into",
    413,
    /more than 256 kB/,
    /shorten the notes/,
    (server) => keep(server, draftOf({ entries: [["note", "x".repeat(300_000)]] })),
    /Nothing of it was kept/,
  ),
  page("415 another thing than a table", 415, /not a CSV|no table|picture|zip/i, /send another file/, (server) =>
    sendFile(
      server,
      "picture.csv",
      Buffer.concat([Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]), Buffer.alloc(200)]),
    ),
  ),
  page("422 an empty file", 422, /empty/i, /send another file/, (server) =>
    sendFile(server, "empty.csv", Buffer.alloc(0)),
  ),
  page("413 more parts than a form has", 413, /more than 20 parts/, /send another file/, (server) =>
    server.send(
      "POST",
      "/api/import",
      ours(server, { "Content-Type": "multipart/form-data; boundary=x" }),
      `${'--x\r\nContent-Disposition: form-data; name="a"\r\n\r\n1\r\n'.repeat(100_000)}--x--\r\n`,
    ),
  ),
  page("422 half an upload", 422, /broke off|half|whole/i, /send another file/, (server) =>
    server.send(
      "POST",
      "/api/import",
      ours(server, { "Content-Type": "multipart/form-data; boundary=x" }),
      "--x\r\nContent-Dis",
    ),
  ),
  page(
    "422 a log-in with nothing in it",
    422,
    /./,
    /address|password/i,
    (server) => signInAs(server, { email: "", password: "" }),
    /./,
  ),
  data("422 no form at all", 422, /could not be read as a form/, /Nothing was kept/, (server) => keep(server, "{")),
  page("431 headers over the limit", 431, /over 16 kB/, /first page/, (server) =>
    sendRawly(server, (write) => {
      write(`GET /students HTTP/1.1\r\nHost: 127.0.0.1\r\nX-Long: ${"x".repeat(20_000)}\r\n\r\n`);
    }),
  ),
  page("431 an address over the limit", 431, /over 16 kB/, /first page/, (server) =>
    sendRawly(server, (write) => {
      write(`GET /students?club=${"x".repeat(20_000)} HTTP/1.1\r\nHost: 127.0.0.1\r\n\r\n`);
    }),
  ),
  page("400 no request at all", 400, /could not be read/, /try again/, (server) =>
    sendRawly(server, (write) => {
      write("STUDENTS\0please\r\n\r\n");
    }),
  ),
  page(
    "500 a page that fails",
    500,
    /could not be shown/,
    /try again/i,
    (server) =>
      whileSo(server, "ALTER TABLE event RENAME TO broken_event", "ALTER TABLE broken_event RENAME TO event", () =>
        server.send("GET", "/students/s01/events", ours(server)),
      ),
    /What was saved stays saved/,
  ),
  page(
    "500 a download that fails",
    500,
    /could not be shown/,
    /try again/i,
    (server) =>
      whileSo(
        server,
        "ALTER TABLE reading RENAME TO broken_reading",
        "ALTER TABLE broken_reading RENAME TO reading",
        () => server.send("GET", "/api/students/s01/csv", ours(server)),
      ),
    /What was saved stays saved/,
  ),
  page("503 another program writes", 503, /Another program is writing/, /press again/, (server) =>
    whileSo(server, "BEGIN IMMEDIATE", "ROLLBACK", () =>
      sendFile(server, "season.csv", Buffer.from("student,date\nx,2026-01-01\n")),
    ),
  ),
  page("507 a full disk", 507, /The disk is full/, /once there is room/, (server) =>
    sendFile(server, "large.csv", Buffer.alloc(20 * 1024 * 1024, "student,date\n")),
  ),
  page("507 where a press leads without scripts", 507, /The disk is full/, /Go back/, (server) =>
    server.send("GET", "/not-saved?why=full&back=%2Frecord", ours(server)),
  ),
  page(
    "429 tries at a log-in",
    429,
    /Wait|wait/,
    /not locked/,
    async (server) => {
      const tries = { email: "linnet@demo.example", password: "not the password" };
      for (let n = 0; n < 3; n++) await signInAs(server, tries);
      return signInAs(server, tries);
    },
    /./,
  ),
];
