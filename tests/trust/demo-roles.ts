import path from "node:path";
import { hashPassword } from "better-auth/crypto";
import { DEMO_PASSWORD } from "@/app/_server/access/demo-people";
import { type Database, openDatabase } from "@/db/client";
import { insertAccount, insertPerson } from "@/db/write/people";
import type { Role } from "@/lib/domain/person";
import { served } from "../e2e/served";
import { sendRaw } from "./raw-request";

/** The demo's database, beside the server that has it open. */
export function withDemo<T>(work: (db: Database) => T): T {
  const db = openDatabase(path.join(served.data, "demo", "proofband.db"));
  try {
    return work(db);
  } finally {
    db.close();
  }
}

/** People whom the demo lacks. */
const ADDED: readonly { readonly userId: string; readonly roles: readonly Role[]; readonly assists: string[] }[] = [
  { userId: "owl", roles: ["owner"], assists: [] },
  { userId: "dove", roles: ["director"], assists: [] },
  { userId: "finch", roles: ["coach"], assists: [] },
  { userId: "gull", roles: ["coach", "director"], assists: [] },
];

export async function addRoles(): Promise<void> {
  const passwordHash = await hashPassword(DEMO_PASSWORD);
  withDemo((db) => {
    const academyId = db.sqlite.prepare<[], string>("SELECT id FROM academy").pluck().get() ?? "";
    const there = new Set(db.sqlite.prepare<[], string>("SELECT id FROM user").pluck().all());
    for (const { userId, roles, assists } of ADDED.filter((each) => !there.has(each.userId))) {
      insertAccount(db, { userId, name: userId, email: `${userId}@demo.example`, passwordHash, now: new Date() });
      insertPerson(db, { userId, academyId, roles, assists, addedAt: new Date().toISOString(), addedBy: "wren" });
    }
  });
}

/** Takes somebody's work here away while they are logged in. */
export function endPerson(userId: string): void {
  withDemo((db) =>
    db.sqlite
      .prepare("UPDATE person SET ended_at = ?, ended_by = 'wren' WHERE user_id = ?")
      .run(new Date().toISOString(), userId),
  );
}

/** Gives it back, for a file of tests that begins anew. */
export function reopenPerson(userId: string): void {
  withDemo((db) =>
    db.sqlite.prepare("UPDATE person SET ended_at = NULL, ended_by = NULL WHERE user_id = ?").run(userId),
  );
}

export const host = `127.0.0.1:${served.port}`;
export const OWN = { Host: host, Origin: `http://${host}` };

/** The demo's day, which stands still. */
export function demoToday(): string {
  return withDemo((db) => db.sqlite.prepare<[], string>("SELECT fixed_today FROM academy").pluck().get()) ?? "";
}

export interface SignedIn {
  readonly status: number;
  readonly location: string;
  readonly setCookies: readonly string[];
  /** What the browser sends from now on. */
  readonly cookie: string;
}

/** Logs somebody of the demo in, or tries to; `sent` are cookies that the browser has already. */
export async function signIn(
  email: string,
  { password = DEMO_PASSWORD, to = "", sent = "" }: { password?: string; to?: string; sent?: string } = {},
): Promise<SignedIn> {
  const body = new URLSearchParams({ email, password, to }).toString();
  const headers = {
    ...OWN,
    cookie: `proofband-academy=demo; ${sent}`,
    "Content-Type": "application/x-www-form-urlencoded",
  };
  const answer = await sendRaw("POST", "/api/sign-in", headers, body);
  const setCookies = answer.headers["set-cookie"] ?? [];
  const cookie = ["proofband-academy=demo", ...setCookies.map((line) => line.split(";")[0] ?? "")].join("; ");
  return { status: answer.status, location: answer.headers.location ?? "", setCookies, cookie };
}

/** The cookie of a log-in that stands in the table and has ended. */
export async function deadCookie(): Promise<string> {
  const { cookie } = await signIn("dove@demo.example");
  await sendRaw("POST", "/api/sign-out", { ...OWN, cookie });
  return cookie;
}

/** Sends an action as a page's script does: fields of one form, and arguments in front of it. */
export function sendAction(
  id: string,
  page: string,
  cookie: string,
  {
    fields,
    before,
    again = [],
  }: {
    readonly fields: Readonly<Record<string, string>>;
    readonly before: readonly string[];
    /** Fields that come once more, after all others. */
    readonly again?: readonly (readonly [string, string])[];
  },
) {
  const boundary = "----proofband";
  const parts = [
    ...[...Object.entries(fields), ...again].map(([name, value]) => [`_1_${name}`, value]),
    ["0", JSON.stringify([...before, "$K1"])],
  ];
  const body = `${parts.map(([name, value]) => `--${boundary}\r\nContent-Disposition: form-data; name="${name}"\r\n\r\n${value}\r\n`).join("")}--${boundary}--\r\n`;
  const type = `multipart/form-data; boundary=${boundary}`;
  return sendRaw(
    "POST",
    page,
    { ...OWN, cookie, "Next-Action": id, "Content-Type": type, Accept: "text/x-component" },
    body,
  );
}
