import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { hashPassword } from "better-auth/crypto";
import { authFor, type LogIn, readLogIn } from "@/app/_server/access/log-in";
import { closeDatabases, findAcademyDatabase } from "@/app/_server/database";
import { admitPerson, type Viewer } from "@/app/_server/gate";
import { startOwnAcademy } from "@/app/_server/settings/own-academy";
import type { Database } from "@/db/client";
import { insertAccount, insertPerson } from "@/db/write/people";
import type { Role } from "@/lib/domain/person";

export const PASSWORD = "a heron stands in the reeds";

/** Somebody added beside the invitations, as a test wants them. */
export interface Added {
  readonly userId: string;
  readonly name: string;
  readonly roles: readonly Role[];
  readonly assists?: readonly string[];
}

export interface PeopleAcademy {
  readonly db: Database;
  readonly academyId: string;
  readonly ownerId: string;
  add(person: Added): Promise<void>;
  /** Throws where the person is nobody there. */
  viewer(userId: string): Viewer;
  /** What a browser sends that has logged in. */
  signIn(email: string, password: string, userAgent?: string): Promise<Headers>;
  /** Null: the log-in has ended. */
  logIn(sent: Headers): Promise<LogIn | null>;
  remove(): void;
}

const WISH = { choice: "own", locale: "en" } as const;

/** The headers of a request to this machine. */
export function sentTo(extra: Readonly<Record<string, string>> = {}): Headers {
  return new Headers({ host: "127.0.0.1:3000", origin: "http://127.0.0.1:3000", ...extra });
}

/** An own academy with its first person, in a data folder of its own. */
export async function startPeopleAcademy(): Promise<PeopleAcademy> {
  closeDatabases();
  const folder = mkdtempSync(path.join(tmpdir(), "proofband-test-"));
  process.env.PROOFBAND_DATA = folder;
  const passwordHash = await hashPassword(PASSWORD);
  await startOwnAcademy(
    { name: "Range", ownerName: "Ada", zone: "UTC", locale: "en" },
    { email: "ada@range.example", passwordHash },
  );
  const found = await findAcademyDatabase("own");
  if (!found) throw new Error("no academy was started");
  const { db, academyId } = found;
  const ownerId = db.sqlite.prepare<[], string>("SELECT user_id FROM person").pluck().get() ?? "";
  return {
    db,
    academyId,
    ownerId,
    async add({ userId, name, roles, assists = [] }) {
      const now = new Date();
      insertAccount(db, { userId, name, email: `${userId}@range.example`, passwordHash, now });
      insertPerson(db, { userId, academyId, roles, assists, addedAt: now.toISOString(), addedBy: "Ada" });
    },
    viewer(userId) {
      const viewer = admitPerson({ ...found, choice: "own" }, userId, WISH);
      if (!viewer) throw new Error(`${userId} is nobody here`);
      return viewer;
    },
    async signIn(email, password, userAgent = "Mozilla/5.0 (X11; Linux x86_64) Otter/12.0") {
      const auth = await authFor(db, "own", sentTo());
      const headers = sentTo({ "user-agent": userAgent });
      const done = await auth.api.signInEmail({ body: { email, password }, headers, returnHeaders: true });
      const cookie = done.headers
        .getSetCookie()
        .map((line) => line.split(";")[0])
        .join("; ");
      return sentTo({ cookie });
    },
    logIn: (sent) => readLogIn(db, "own", sent),
    remove() {
      closeDatabases();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}
