import { hashPassword } from "better-auth/crypto";
import { readAcademy } from "@/db/read/academies";
import { readPeople } from "@/db/read/people";
import type { AcademyScope } from "@/lib/domain/scope";
import type { FormModel } from "@/lib/report/form-model";
import { type Words, wordsFor } from "@/lib/words/catalogue";
import { findAcademyDatabase } from "../database";
import { formResponse } from "../door/form-page";
import { isLocalHost } from "../door/origin";
import { claimOwnAcademy, startOwnAcademy } from "../settings/own-academy";
import { academyErrors, textOf } from "../settings/settings-desk";
import { academyCookie, wishIn } from "../viewer";
import { entryForm, type Typed } from "./entry-forms";
import { checkPassword } from "./password-rules";
import { hasPublicAddress } from "./second-step";
import { cookiesIn, seeOther } from "./sign-in-desk";

/** `start`: there is no own academy; `claim`: there is one in which nobody has an account; `there`: somebody has. */
export type StartState = "start" | "claim" | "there";

export async function startState(): Promise<{ readonly state: StartState; readonly ownerName: string }> {
  const found = await findAcademyDatabase("own");
  if (!found) return { state: "start", ownerName: "" };
  if (readPeople(found.db, found.academyId).length > 0) return { state: "there", ownerName: "" };
  const scope = { academyId: found.academyId, userId: null, students: [] } as unknown as AcademyScope;
  return { state: "claim", ownerName: readAcademy(found.db, scope).ownerName };
}

/** The form with which an academy begins, or with which one from before there were accounts gets its first. */
export function startForm(words: Words, state: "start" | "claim", ownerName: string, typed: Typed): FormModel {
  const zone = Intl.DateTimeFormat().resolvedOptions().timeZone;
  const academy = [
    { name: "name", kind: "text" },
    { name: "zone", kind: "text", value: zone },
  ] as const;
  return entryForm(
    words,
    state,
    [
      ...(state === "start" ? academy : []),
      { name: "ownerName", kind: "text", value: ownerName },
      { name: "email", kind: "email" },
      { name: "password", kind: "new-password" },
    ],
    typed,
  );
}

const EMAIL = /^[^\s@]+@[^\s@]+$/;

/** What is wrong with an address and a password that somebody wants to log in with. */
export function accountErrors(words: Words, wanted: { email: string; name: string; password: string }) {
  const errors: Record<string, string> = {};
  if (!EMAIL.test(wanted.email)) errors.email = words.say("account.bad-email");
  const issue = checkPassword(wanted.password, [wanted.name, wanted.email, wanted.email.split("@")[0] ?? ""]);
  if (issue) errors.password = words.say(`account.password.${issue}`);
  return errors;
}

// Only on this machine may an academy be begun or taken over. A proxy may call us by this machine's own name for everybody, so
// that where a public address is stated nobody is taken to be here.
function isHere(host: string | null): boolean {
  return !hasPublicAddress() && isLocalHost(host, process.env.PORT || "3000");
}

/** Begins the own academy with its first account, or says what is wrong; nothing of it is kept meanwhile. */
export async function receiveStart(request: Request): Promise<Response> {
  const words = wordsFor(wishIn(cookiesIn(request)).locale ?? "en");
  const { state, ownerName } = await startState();
  if (state === "there") return seeOther("/sign-in");
  const data = await request.formData().catch(() => new FormData());
  const value = (name: string): string => textOf(data, name);
  const password = String(data.get("password") ?? "");
  const wanted = { email: value("email").toLowerCase(), name: value("ownerName"), password };
  const errors = { ...(state === "start" ? academyErrors(words, "start", data) : {}), ...accountErrors(words, wanted) };
  if (wanted.name === "") errors.ownerName = words.say("start.required");
  const refuse = (status: number, refusal: string): Response => {
    const values = { name: value("name"), zone: value("zone"), ownerName: wanted.name, email: wanted.email };
    const typed: Typed = { values, errors, refusal };
    return formResponse(words, status, startForm(words, state, ownerName, typed), "/api/start");
  };
  if (!isHere(request.headers.get("host"))) return refuse(403, words.say("start.local-only"));
  if (Object.keys(errors).length > 0) return refuse(422, words.say("start.refusal"));
  const account = { email: wanted.email, passwordHash: await hashPassword(password) };
  const academy = { name: value("name"), ownerName: wanted.name, zone: value("zone"), locale: words.locale };
  const done =
    state === "start" ? await startOwnAcademy(academy, account) : await claimOwnAcademy(account, wanted.name);
  return done === "started" || done === "claimed"
    ? seeOther("/sign-in?new=account", [academyCookie("own", request.headers)])
    : seeOther("/sign-in");
}
