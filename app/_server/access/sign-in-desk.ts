import { randomUUID } from "node:crypto";
import { isAPIError } from "better-auth/api";
import type { Database } from "@/db/client";
import { findUserByEmail } from "@/db/read/log-ins";
import { readPerson } from "@/db/read/people";
import { deleteLogIn } from "@/db/write/people";
import type { Words } from "@/lib/words/catalogue";
import { wordsFor } from "@/lib/words/catalogue";
import { readClock } from "../clock";
import type { AcademyChoice } from "../database";
import { formResponse } from "../door/form-page";
import { isLocalHost } from "../door/origin";
import { ownPath } from "../door/own-path";
import { checkHost } from "../door/reached";
import { findWishedAcademy, type ViewerWish, wishIn } from "../viewer";
import { countTry, forgetTries } from "./back-off";
import { codeForm, NOTHING_TYPED, signInForm, type Typed } from "./entry-forms";
import { KNOWN_SECONDS, knownCookie, knownTo, markOf } from "./known-browser";
import { authFor, readLogIn } from "./log-in";
import { hasPublicAddress } from "./second-step";

/** No address is longer (RFC 5321: 254, from memory); no password that is looked at either (see the password rules). */
const LONGEST = 256;

// A browser may hold anything under a name of ours; what is in no encoding stays as it came.
function decoded(value: string): string {
  try {
    return decodeURIComponent(value);
  } catch {
    return value;
  }
}

/** The cookies of a request by name. */
export function cookiesIn(request: Request): { get(name: string): { readonly value: string } | undefined } {
  const jar = new Map(
    (request.headers.get("cookie") ?? "").split(/; */).map((pair) => {
      const at = pair.indexOf("=");
      return [pair.slice(0, at), decoded(pair.slice(at + 1))] as const;
    }),
  );
  return {
    get: (name) => {
      const value = jar.get(name);
      return value === undefined ? undefined : { value };
    },
  };
}

function wordsOf(wish: ViewerWish): Words {
  return wordsFor(wish.locale ?? "en");
}

/** Leads on, with cookies. */
export function seeOther(path: string, cookies: readonly string[] = []): Response {
  const headers = new Headers({ location: path });
  for (const cookie of cookies) headers.append("set-cookie", cookie);
  return new Response(null, { status: 303, headers });
}

function textOf(data: FormData, name: string): string {
  const value = data.get(name);
  return typeof value === "string" ? value.slice(0, LONGEST) : "";
}

async function formOf(request: Request): Promise<FormData> {
  return request.formData().catch(() => new FormData());
}

// The demo's accounts and their password stand on its first page: they open it on this machine alone.
function mayEnterDemo(request: Request): boolean {
  return !hasPublicAddress() && isLocalHost(request.headers.get("host"), process.env.PORT || "3000");
}

// A browser holds one log-in: the one that it showed until now would live on without anybody who could end it.
async function endEarlier(
  { db, choice }: { readonly db: Database; readonly choice: AcademyChoice },
  sent: Headers,
): Promise<void> {
  const earlier = await readLogIn(db, choice, sent);
  if (earlier) deleteLogIn(db, earlier.token);
}

function hasLeft(db: Database, userId: string): boolean {
  const person = readPerson(db, userId);
  return !person || person.endedAt !== null;
}

/**
 * The password to be looked at: of somebody who has left none is the right one, so that the answer, the second step that isn't
 * asked for and the time which it all takes are those of a wrong one.
 */
function lookedAt(db: Database, email: string, password: string): string {
  const userId = findUserByEmail(db, email.toLowerCase());
  return userId !== undefined && hasLeft(db, userId) ? randomUUID() : password;
}

/** Logs somebody in who shows address and password, asks for the second step, or says why not. */
export async function receiveSignIn(request: Request): Promise<Response> {
  const jar = cookiesIn(request);
  const wish = wishIn(jar);
  const words = wordsOf(wish);
  const data = await formOf(request);
  const [email, password, to] = [
    textOf(data, "email").trim(),
    textOf(data, "password"),
    ownPath(textOf(data, "to"), "/"),
  ];
  const found = await findWishedAcademy(wish);
  if (!found) return seeOther("/start");
  const refuse = (status: number, why: string, args = {}): Response => {
    const typed: Typed = { ...NOTHING_TYPED, values: { email }, refusal: words.say(`sign-in.refused.${why}`, args) };
    return formResponse(words, status, signInForm(words, typed, to), "/api/sign-in");
  };
  if (found.choice === "demo" && !mayEnterDemo(request)) return refuse(403, "demo");
  if (email === "" || password === "") return refuse(422, "empty");
  const transport = checkHost(request.headers).startsWith("https:") ? "https" : "http";
  const known = knownTo(email, jar.get(knownCookie(found.choice, transport))?.value);
  const seconds = countTry(found.db, email, known, readClock().getTime());
  if (seconds > 0) {
    const answer = refuse(429, "wait", { seconds });
    answer.headers.set("retry-after", String(seconds));
    return answer;
  }
  const auth = await authFor(found.db, found.choice, request.headers);
  const tried = await auth.api
    .signInEmail({
      body: { email, password: lookedAt(found.db, email, password) },
      headers: request.headers,
      returnHeaders: true,
    })
    .catch((error: unknown) => {
      if (isAPIError(error)) return null;
      throw error;
    });
  if (!tried) return refuse(401, "wrong");
  const secondStep = "twoFactorRedirect" in tried.response;
  // Who leaves at this very moment is told what a stranger is told.
  if ("token" in tried.response && hasLeft(found.db, tried.response.user.id)) {
    deleteLogIn(found.db, tried.response.token);
    return refuse(401, "wrong");
  }
  forgetTries(found.db, email, known);
  if (!secondStep) await endEarlier(found, request.headers);
  const cookies = [
    ...tried.headers.getSetCookie(),
    `${knownCookie(found.choice, transport)}=${markOf(email)}; Path=/; HttpOnly; SameSite=Lax; Max-Age=${KNOWN_SECONDS}${transport === "https" ? "; Secure" : ""}`,
  ];
  return secondStep ? seeOther(`/sign-in/code?to=${encodeURIComponent(to)}`, cookies) : seeOther(to, cookies);
}

/** The second step of a log-in. */
export async function receiveCode(request: Request): Promise<Response> {
  const wish = wishIn(cookiesIn(request));
  const words = wordsOf(wish);
  const data = await formOf(request);
  const [code, to] = [textOf(data, "code").replace(/\s/g, ""), ownPath(textOf(data, "to"), "/")];
  const found = await findWishedAcademy(wish);
  if (!found) return seeOther("/start");
  const { api } = await authFor(found.db, found.choice, request.headers);
  const asked = { body: { code }, headers: request.headers, returnHeaders: true } as const;
  // Six figures come from the program, anything else can only be one of the kept codes.
  const done = await (/^\d{6}$/.test(code) ? api.verifyTOTP(asked) : api.verifyBackupCode(asked)).catch(
    (error: unknown) => {
      if (isAPIError(error)) return null;
      throw error;
    },
  );
  const gone = done !== null && hasLeft(found.db, done.response.user.id);
  // Somebody who left between the two steps has no log-in, as if the code were wrong.
  if (gone && done.response.token) deleteLogIn(found.db, done.response.token);
  if (done && !gone) {
    await endEarlier(found, request.headers);
    return seeOther(to, done.headers.getSetCookie());
  }
  const typed: Typed = { ...NOTHING_TYPED, refusal: words.say("sign-in-code.refused") };
  return formResponse(words, 401, codeForm(words, typed, to), "/api/sign-in/code");
}

/** Ends the log-in of this browser, on both sides. */
export async function receiveSignOut(request: Request): Promise<Response> {
  const found = await findWishedAcademy(wishIn(cookiesIn(request)));
  if (!found) return seeOther("/start");
  const auth = await authFor(found.db, found.choice, request.headers);
  const ended = await auth.api.signOut({ headers: request.headers, returnHeaders: true });
  return seeOther("/sign-in", ended.headers.getSetCookie());
}
