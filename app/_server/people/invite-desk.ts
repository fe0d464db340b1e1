import { ROLES } from "@/lib/domain/person";
import type { FormModel } from "@/lib/report/form-model";
import { findFormDraft, keepFormDraft } from "../draft/form-draft";
import { type Refused, submitOnce } from "../draft/submit-once";
import { withKeep } from "../draft/with-keep";
import type { Viewer } from "../gate";
import { field } from "../season/student-form";
import { coachesHere } from "./coaches-here";
import { cleanEmail, cleanName, emailIssue, nameIssue } from "./name-rules";
import { makeLink } from "./one-time-link";
import { assistsIn, type HeldLink, linkKey, rolesIn, rolesIssue } from "./people-desk";
import { holdOnce } from "./shown-once";

/** The form of an invitation among those that are kept. */
export const INVITE_FORM = "invite-form";

/** The roles that a viewer may give: an owner is made by an owner alone. */
export function rolesToGive(viewer: Viewer): readonly { readonly value: string; readonly label: string }[] {
  return ROLES.filter((role) => role !== "owner" || viewer.roles.includes("owner")).map((role) => ({
    value: role,
    label: viewer.words.say(`people.role.${role}.long`),
  }));
}

/** The form that invites somebody. */
export function loadInviteForm(viewer: Viewer, draftId: string, dropped?: string): FormModel {
  const { words } = viewer;
  const draft = findFormDraft(viewer, INVITE_FORM, draftId);
  const one = (spec: Parameters<typeof field>[3]) => field(words, draft, INVITE_FORM, spec);
  const coaches = coachesHere(viewer.db, viewer.academy.id).map(({ userId, name }) => ({ value: userId, label: name }));
  const form: FormModel = {
    heading: words.say("invite-form.heading"),
    explains: words.say("invite-form.explains"),
    parts: [
      {
        margin: words.say("invite-form.who"),
        explains: words.say("invite-form.who.explains"),
        fields: [
          one({ name: "name", kind: "text", required: "yes" }),
          one({ name: "email", kind: "email", required: "yes" }),
        ],
      },
      {
        margin: words.say("invite-form.what"),
        explains: words.say("invite-form.what.explains"),
        fields: [
          one({ name: "roles", kind: "checkbox", options: rolesToGive(viewer) }),
          ...(coaches.length === 0 ? [] : [one({ name: "assists", kind: "checkbox", options: coaches })]),
        ],
      },
    ],
    grid: null,
    submit: words.say("invite-form.submit"),
    refusal: draft?.refusal ?? "",
    hidden: [],
  };
  return withKeep(viewer, form, { form: INVITE_FORM, studentId: "", draftId, dropped });
}

/** A link that was made. */
export interface Invited {
  readonly kind: "invited";
  readonly id: string;
}

/** Invites somebody, once; a refused form is kept with what is wrong in it. */
export function invite(viewer: Viewer, data: FormData): Invited | Refused {
  return submitOnce<Invited>(viewer, INVITE_FORM, data, () => enterInvitation(viewer, data));
}

function enterInvitation(viewer: Viewer, data: FormData): Invited | Refused {
  const { db, words, academy } = viewer;
  const [name, email] = [cleanName(data.get("name")), cleanEmail(data.get("email"))];
  const roles = rolesIn(data);
  const assists = roles.includes("assistant") ? assistsIn(viewer, data) : [];
  const asked = { db, academyId: academy.id, userId: null };
  const errors: Record<string, string> = {};
  const wrong = { name: nameIssue(asked, name), email: emailIssue(asked, email) };
  if (wrong.name) errors.name = words.say(`people.name.${wrong.name}`);
  if (wrong.email) errors.email = words.say(`people.email.${wrong.email}`);
  const issue = rolesIssue(viewer, { roles, assists });
  if (issue) errors[issue === "no-coach" ? "assists" : "roles"] = words.say(`people.why.${issue}`);
  if (viewer.choice === "demo") errors.name = words.say("people.demo");
  if (Object.keys(errors).length > 0)
    return { kind: "refused", draftId: keepFormDraft(viewer, INVITE_FORM, data, errors, words.say("people.refusal")) };
  const made = makeLink(db, academy.id, viewer.name, { kind: "join", name, email, roles, assists });
  holdOnce(linkKey(viewer, made.id), { kind: "join", name, path: made.path } satisfies HeldLink);
  return { kind: "invited", id: made.id };
}
