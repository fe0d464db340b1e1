import { randomUUID } from "node:crypto";
import { hashPassword } from "better-auth/crypto";
import { type Database, inTransaction } from "@/db/client";
import type { Invitation } from "@/db/read/invitations";
import { readPerson } from "@/db/read/people";
import { updateInvitationUsed } from "@/db/write/invitations";
import { insertAccount, insertPerson, updatePassword } from "@/db/write/people";
import { ROLES } from "@/lib/domain/person";
import type { FormModel } from "@/lib/report/form-model";
import { type Words, wordsFor } from "@/lib/words/catalogue";
import { forgetTries } from "../access/back-off";
import { entryForm, NOTHING_TYPED, type Typed } from "../access/entry-forms";
import { checkPassword } from "../access/password-rules";
import { cookiesIn, seeOther } from "../access/sign-in-desk";
import { readClock } from "../clock";
import { slowDeadLink } from "../door/dead-links";
import { formResponse } from "../door/form-page";
import { refusalPage } from "../door/refusal-page";
import { answerDiskFailure } from "../door/when-disk-fails";
import { academyCookie, wishIn } from "../viewer";
import { coachesHere } from "./coaches-here";
import { emailIssue, nameIssue } from "./name-rules";
import { findOpenLink } from "./one-time-link";

/** The form behind a one-time link: for whoever comes in, or for a new password. */
export function joinForm(words: Words, link: Invitation, token: string, typed: Typed = NOTHING_TYPED): FormModel {
  const form = entryForm(words, link.kind === "join" ? "join" : "new-password", PASSWORD_FIELD, typed, [
    { name: "token", value: token },
  ]);
  const said = { name: link.name, email: link.email };
  return {
    ...form,
    heading: words.say(`${link.kind === "join" ? "join" : "new-password"}.title`, said),
    explains: words.say(`${link.kind === "join" ? "join" : "new-password"}.lede`, said),
  };
}

const PASSWORD_FIELD = [{ name: "password", kind: "new-password" }] as const;

/** What a link answers that is absent, used, expired or revoked; they look alike. */
export function deadLinkPage(words: Words): string {
  return refusalPage(words, {
    title: words.say("join.dead.title"),
    happened: words.say("join.dead.happened"),
    next: words.say("join.dead.next"),
  });
}

function deadLink(words: Words): Response {
  return new Response(deadLinkPage(words), { status: 404, headers: { "content-type": "text/html; charset=utf-8" } });
}

// What was free when the link was made may be somebody's by now.
function isStillFree(db: Database, link: Invitation): boolean {
  const asked = { db, academyId: link.academyId, userId: null, invitationId: link.id };
  return nameIssue(asked, link.name) === null && emailIssue(asked, link.email) === null;
}

function addPerson(db: Database, link: Invitation, passwordHash: string, now: Date): "added" | "taken" {
  if (!isStillFree(db, link)) return "taken";
  const userId = randomUUID();
  const [roles, assists] = [link.roles.split(","), link.assists.split(",")];
  insertAccount(db, { userId, name: link.name, email: link.email, passwordHash, now });
  insertPerson(db, {
    ...{ userId, academyId: link.academyId },
    roles: ROLES.filter((role) => roles.includes(role)),
    // Whoever has left meanwhile can't be helped.
    assists: coachesHere(db, link.academyId).flatMap(({ userId }) => (assists.includes(userId) ? [userId] : [])),
    ...{ addedAt: now.toISOString(), addedBy: link.who },
  });
  return "added";
}

function renewPassword(db: Database, link: Invitation, passwordHash: string, now: Date): "renewed" | "taken" {
  const person = link.userId === null ? undefined : readPerson(db, link.userId);
  if (!person || person.endedAt !== null) return "taken";
  updatePassword(db, person.userId, passwordHash, now);
  forgetTries(db, person.email, null);
  return "renewed";
}

/** Uses a link up with all that it brings, or changes nothing. */
function useLink(db: Database, link: Invitation, passwordHash: string): "done" | "dead" | "taken" {
  const now = readClock();
  return inTransaction(db, () => {
    // Of two windows the faster one has it.
    if (updateInvitationUsed(db, link.id, now.toISOString()) === "unchanged") return "dead";
    const came =
      link.kind === "join" ? addPerson(db, link, passwordHash, now) : renewPassword(db, link, passwordHash, now);
    return came === "taken" ? "taken" : "done";
  });
}

/** Lets somebody in by a one-time link, or gives their account the password they chose. */
export async function receiveJoin(request: Request): Promise<Response> {
  const words = wordsFor(wishIn(cookiesIn(request)).locale ?? "en");
  const data = await request.formData().catch(() => new FormData());
  const [token, password] = [String(data.get("token") ?? ""), String(data.get("password") ?? "")];
  const found = await findOpenLink(token);
  if (!found) {
    await slowDeadLink();
    return deadLink(words);
  }
  const { db, link } = found;
  const issue = checkPassword(password, [link.name, link.email, link.email.split("@")[0] ?? ""]);
  if (issue) {
    const errors = { password: words.say(`account.password.${issue}`) };
    const typed: Typed = { values: {}, errors, refusal: words.say("join.refusal") };
    return formResponse(words, 422, joinForm(words, link, token, typed), "/api/join");
  }
  const passwordHash = await hashPassword(password);
  return answerDiskFailure(words, async () => {
    if (useLink(db, link, passwordHash) !== "done") return deadLink(words);
    const notice = link.kind === "join" ? "account" : "password";
    return seeOther(`/sign-in?new=${notice}`, [academyCookie("own", request.headers)]);
  });
}
