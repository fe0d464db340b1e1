import { inTransaction } from "@/db/client";
import { readPeople } from "@/db/read/people";
import { deleteLogIns } from "@/db/write/accounts";
import { updateInvitationRevoked, updatePasswordLinksRevoked } from "@/db/write/invitations";
import { updateChargesOfCoachEnded, updatePersonEnded, updateRoles } from "@/db/write/roles";
import { type Person, ROLES, type Role } from "@/lib/domain/person";
import { currentInstant } from "../clock";
import type { Viewer } from "../gate";
import { DONE, type Outcome, refused } from "./account-desk";
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
  return coachesOf(viewer).flatMap(({ userId }) => (ticked.includes(userId) ? [userId] : []));
}

/** Everybody who coaches here now. */
export function coachesOf({ db, academy }: Viewer): readonly Person[] {
  return readPeople(db, academy.id).filter((each) => each.endedAt === null && each.roles.includes("coach"));
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
    if (!roles.includes("coach"))
      updateChargesOfCoachEnded(viewer.db, userId, { endedAt: currentInstant(), endedBy: viewer.name });
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
    updateChargesOfCoachEnded(viewer.db, userId, ended);
    updatePasswordLinksRevoked(viewer.db, userId, ended.endedAt);
    deleteLogIns(viewer.db, userId);
    return DONE;
  });
}

/** Under which a link just made waits to be shown, once, to whoever made it. */
export function linkKey({ userId }: Viewer, id: string): string {
  return `link ${userId} ${id}`;
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
