import type { Database } from "@/db/client";
import { account, authSession, twoFactor as secondStep, user, verification } from "@/db/schema-people";
import type { AcademyChoice } from "../database";
import { configuredOrigins } from "../door/origin";
import { LONGEST_PASSWORD, SHORTEST_PASSWORD } from "./password-rules";
import { installationSecret } from "./secret";

const HOUR_S = 3600;
/** A log-in that nobody uses for so long has ended (TRUST.md S4). */
export const IDLE_SECONDS = 12 * HOUR_S;
/** A log-in ends after so long, used or not (TRUST.md S4). */
export const ABSOLUTE_SECONDS = 30 * 24 * HOUR_S;
/** A log-in's hour is written anew at most so often: each writing waits for the disk. */
const REFRESH_SECONDS = 300;

/** Where the log-in of an academy is used from: the name and flags of its cookies follow. */
export interface AuthPlace {
  readonly choice: AcademyChoice;
  /** Reached under an https address. */
  readonly transport: "https" | "http";
}

// The library's own pages and addresses are never served: what it can do is called from the log-in desk alone.
async function makeAuth(db: Database, { choice, transport }: AuthPlace) {
  // Taken in by whoever logs somebody in: most commands never do, and it takes longer to load than all the rest.
  const { betterAuth } = await import("better-auth/minimal");
  const { drizzleAdapter } = await import("better-auth/adapters/drizzle");
  const { twoFactor } = await import("better-auth/plugins/two-factor");
  const secure = transport === "https";
  return betterAuth({
    appName: "Proofband",
    baseURL: configuredOrigins()[0] ?? "",
    secret: installationSecret(),
    telemetry: { enabled: false },
    // It would write down with which address somebody tried to log in.
    logger: { disabled: true },
    database: drizzleAdapter(db.orm, {
      provider: "sqlite",
      schema: { user, session: authSession, account, verification, twoFactor: secondStep },
    }),
    emailAndPassword: {
      enabled: true,
      disableSignUp: true,
      minPasswordLength: SHORTEST_PASSWORD,
      maxPasswordLength: LONGEST_PASSWORD,
    },
    session: { expiresIn: IDLE_SECONDS, updateAge: REFRESH_SECONDS, cookieCache: { enabled: false } },
    // By account and in the database instead: an address is what the sender says it is.
    rateLimit: { enabled: false },
    advanced: {
      cookiePrefix: `${secure ? "__Host-" : ""}proofband-${choice}`,
      useSecureCookies: false,
      defaultCookieAttributes: { httpOnly: true, sameSite: "lax", secure, path: "/" },
      ipAddress: { disableIpTracking: true },
    },
    plugins: [twoFactor({ issuer: "Proofband" })],
  });
}

export type Auth = Awaited<ReturnType<typeof makeAuth>>;

const KEY = Symbol.for("proofband.auth");
const shared = globalThis as { [KEY]?: WeakMap<Database, Map<string, Promise<Auth>>> };

/** The log-in library at work on one academy's database. */
export function authOf(db: Database, place: AuthPlace): Promise<Auth> {
  shared[KEY] ??= new WeakMap();
  const known = shared[KEY].get(db) ?? new Map<string, Promise<Auth>>();
  shared[KEY].set(db, known);
  const auth = known.get(place.transport) ?? makeAuth(db, place);
  known.set(place.transport, auth);
  return auth;
}
