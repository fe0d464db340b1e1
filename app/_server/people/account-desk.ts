import { hashPassword } from "better-auth/crypto";
import { readPerson } from "@/db/read/people";
import { deleteLogIns, updateAccountName, updateOwnPassword } from "@/db/write/accounts";
import type { Person } from "@/lib/domain/person";
import type { LogIn } from "../access/log-in";
import { checkPassword } from "../access/password-rules";
import { readClock } from "../clock";
import { keepFormDraft } from "../draft/form-draft";
import { type Refused, submitOnce } from "../draft/submit-once";
import type { Viewer } from "../gate";
import { cleanEmail, cleanName, emailIssue, nameIssue } from "./name-rules";
import { provePassword } from "./prove-password";

/** The form of name and address among those that are kept. */
export const ACCOUNT_FORM = "account-form";

/** The viewer as one of the academy's people. Throws for a program on this machine, which has no account. */
export function requireOwn({ db, userId }: Viewer): Person {
  const person = userId === null ? undefined : readPerson(db, userId);
  if (!person) throw new Error("a viewer without an account");
  return person;
}

/** Keeps another name and address of the viewer, once. */
export function saveAccount(viewer: Viewer, data: FormData): { readonly kind: "saved" } | Refused {
  return submitOnce<{ readonly kind: "saved" }>(viewer, ACCOUNT_FORM, data, () => enterAccount(viewer, data));
}

function enterAccount(viewer: Viewer, data: FormData): { readonly kind: "saved" } | Refused {
  const { db, words, academy } = viewer;
  const { userId } = requireOwn(viewer);
  const [name, email] = [cleanName(data.get("name")), cleanEmail(data.get("email"))];
  const asked = { db, academyId: academy.id, userId };
  const errors: Record<string, string> = {};
  const [wrongName, wrongEmail] = [nameIssue(asked, name), emailIssue(asked, email)];
  if (wrongName) errors.name = words.say(`people.name.${wrongName}`);
  if (wrongEmail) errors.email = words.say(`people.email.${wrongEmail}`);
  if (viewer.choice === "demo") errors.name = words.say("people.demo");
  if (Object.keys(errors).length > 0)
    return {
      kind: "refused",
      draftId: keepFormDraft(viewer, ACCOUNT_FORM, data, errors, words.say("people.refusal")),
    };
  updateAccountName(db, userId, { name, email, now: readClock() });
  return { kind: "saved" };
}

/** Why a press on the account's page changed nothing, as its address says it; `done`: it did. */
export type Outcome = { readonly kind: "done" } | { readonly kind: "refused"; readonly why: string };

export const DONE: Outcome = { kind: "done" };

export function refused(why: string): Outcome {
  return { kind: "refused", why };
}

/** Whether a typed password is right, as an outcome. */
export async function askPassword(viewer: Viewer, password: string): Promise<Outcome> {
  if (viewer.choice === "demo") return refused("demo");
  const proof = await provePassword(viewer, password);
  if (proof.kind === "wait") return refused(`wait-${proof.seconds}`);
  return proof.kind === "right" ? DONE : refused("wrong");
}

/** Another password for the viewer, who shows the old one; every other log-in of theirs ends. */
export async function changePassword(viewer: Viewer, logIn: LogIn, data: FormData): Promise<Outcome> {
  const { userId, name, email } = requireOwn(viewer);
  const asked = await askPassword(viewer, String(data.get("current") ?? ""));
  if (asked.kind === "refused") return asked;
  const fresh = String(data.get("fresh") ?? "");
  const issue = checkPassword(fresh, [name, email, email.split("@")[0] ?? ""]);
  if (issue) return refused(issue);
  const passwordHash = await hashPassword(fresh);
  updateOwnPassword(viewer.db, userId, { passwordHash, keepToken: logIn.token, now: readClock() });
  return DONE;
}

/** Ends all log-ins of the viewer, this one too. */
export function endLogIns(viewer: Viewer): void {
  deleteLogIns(viewer.db, requireOwn(viewer).userId);
}
