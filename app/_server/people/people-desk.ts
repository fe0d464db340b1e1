import { inTransaction } from "@/db/client";
import { readCharges, readPeople } from "@/db/read/people";
import { deleteLogIns } from "@/db/write/accounts";
import { updateCoverEnded } from "@/db/write/handing";
import { updateInvitationRevoked, updatePasswordLinksRevoked } from "@/db/write/invitations";
import { updateChargesOfCoachEnded, updatePersonEnded, updateRoles } from "@/db/write/roles";
import { chargeOn } from "@/lib/domain/charge";
import { type Person, ROLES, type Role } from "@/lib/domain/person";
import { currentInstant } from "../clock";
import { scopeForJudging, type Viewer } from "../gate";
import { DONE, type Outcome, refused } from "./account-desk";
import { coachesHere } from "./coaches-here";
import { takePlannedBack } from "./handing-desk";
import { handingState } from "./handing-state";
import { type MadeLink, makeLink } from "./one-time-link";
import { holdOnce } from "./shown-once";

/** The roles ticked in a form. */
export function rolesIn(data: FormData): readonly Role[] {
  const ticked = data.getAll("roles");
  return ROLES.filter((role) => ticked.includes(role));
}

/** The coaches ticked in a form: people who coach here. */
export function assistsIn(viewer: Viewer, data: FormData): readonly string[] {
  const ticked = data.getAll("assists");
  return coachesHere(viewer.db, viewer.academy.id).flatMap(({ userId }) => (ticked.includes(userId) ? [userId] : []));
}

/** Somebody of the viewer's academy; null: nobody there. */
export function findColleague({ db, academy }: Viewer, userId: string): Person | null {
  return readPeople(db, academy.id).find((each) => each.userId === userId) ?? null;
}

/** What is wrong with roles; null: nothing. Whom they let in must have something to do. */
export function rolesIssue(
  viewer: Viewer,
  wanted: { readonly roles: readonly Role[]; readonly assists: readonly string[] },
): "no-role" | "no-coach" | "not-owner" | null {
  if (wanted.roles.length === 0) return "no-role";
  if (wanted.roles.includes("assistant") && wanted.assists.length === 0) return "no-coach";
  return wanted.roles.includes("owner") && !viewer.roles.includes("owner") ? "not-owner" : null;
}

function isLastOwner(viewer: Viewer, person: Person): boolean {
  const owners = readPeople(viewer.db, viewer.academy.id).filter(
    (each) => each.endedAt === null && each.roles.includes("owner"),
  );
  return person.roles.includes("owner") && owners.length === 1;
}

/** Whether the viewer may change somebody at all: an owner is changed by an owner alone. */
function mayChange(viewer: Viewer, person: Person | null): Outcome & { readonly person?: Person } {
  if (viewer.choice === "demo") return refused("demo");
  if (!person || person.endedAt !== null) return refused("left");
  return person.roles.includes("owner") && !viewer.roles.includes("owner") ? refused("not-owner") : DONE;
}

/**
 * Ends all that a coach has in charge; what is still to come is taken back, so that whoever has the student keeps them, and
 * a cover that runs ends with its change of reader.
 */
function endCharges(viewer: Viewer, userId: string, ended: { readonly endedAt: string; readonly endedBy: string }) {
  const { db, academy, scope, today } = viewer;
  for (const each of readCharges(db, academy.id)) {
    if (each.coachId !== userId) continue;
    const stands = chargeOn(each, today);
    const their = { ...viewer, student: scopeForJudging(db, scope, each.studentId) };
    if (stands === "to-come") takePlannedBack(their, handingState(their), each);
    if (stands === "in-force" && each.kind === "cover")
      updateCoverEnded(db, their.student, { id: each.id, today, who: ended.endedBy, recordedAt: ended.endedAt });
  }
  updateChargesOfCoachEnded(db, userId, { ...ended, today });
}

/** Gives somebody other roles. Who coaches no more has nobody in charge from now on. */
export function changeRoles(viewer: Viewer, userId: string, data: FormData): Outcome {
  return inTransaction(viewer.db, () => {
    const person = findColleague(viewer, userId);
    const may = mayChange(viewer, person);
    if (may.kind === "refused" || !person) return may;
    const roles = rolesIn(data);
    const assists = roles.includes("assistant") ? assistsIn(viewer, data).filter((id) => id !== userId) : [];
    const issue = rolesIssue(viewer, { roles, assists });
    if (issue) return refused(issue);
    if (!roles.includes("owner") && isLastOwner(viewer, person)) return refused("last-owner");
    updateRoles(viewer.db, userId, { roles, assists });
    if (!roles.includes("coach")) endCharges(viewer, userId, { endedAt: currentInstant(), endedBy: viewer.name });
    return DONE;
  });
}

/** Ends somebody's access: their log-ins at once, their charges with it; what they entered stays and names them. */
export function endAccess(viewer: Viewer, userId: string): Outcome {
  return inTransaction(viewer.db, () => {
    const person = findColleague(viewer, userId);
    const may = mayChange(viewer, person);
    if (may.kind === "refused" || !person) return may;
    if (isLastOwner(viewer, person)) return refused("last-owner");
    const ended = { endedAt: currentInstant(), endedBy: viewer.name };
    updatePersonEnded(viewer.db, userId, ended);
    endCharges(viewer, userId, ended);
    updatePasswordLinksRevoked(viewer.db, userId, ended.endedAt);
    deleteLogIns(viewer.db, userId);
    return DONE;
  });
}

/** Under which a link just made waits to be shown, once, to whoever made it. */
export function linkKey({ userId }: Viewer, id: string): string {
  return `link ${userId} ${id}`;
}

/** Under which it waits, after that, to be sent by mail. */
export function mailKey({ userId }: Viewer, id: string): string {
  return `mail ${userId} ${id}`;
}

/** A link that waits to be shown. */
export interface HeldLink {
  readonly kind: "join" | "password";
  readonly name: string;
  readonly path: string;
}

/** Makes a link for a new password of somebody. All their log-ins end now: whoever asks for one may have lost a phone. */
export function makePasswordLink(viewer: Viewer, userId: string): Outcome & { readonly made?: MadeLink } {
  const person = findColleague(viewer, userId);
  const may = mayChange(viewer, person);
  if (may.kind === "refused" || !person) return may;
  const { name, email } = person;
  const made = inTransaction(viewer.db, () => {
    deleteLogIns(viewer.db, userId);
    return makeLink(viewer.db, viewer.academy.id, viewer.name, { kind: "password", name, email, userId });
  });
  holdOnce(linkKey(viewer, made.id), { kind: "password", name, path: made.path } satisfies HeldLink);
  return { ...DONE, made };
}

/** Takes a link back; one that was used or taken back before stays as it is. */
export function revokeLink(viewer: Viewer, id: string): void {
  updateInvitationRevoked(viewer.db, viewer.academy.id, id, currentInstant());
}
