import { meet } from "@/app/_server/access/meet";
import { findFormDraft } from "@/app/_server/draft/form-draft";
import type { Viewer } from "@/app/_server/gate";
import { invite } from "@/app/_server/people/invite-desk";
import { receiveJoin } from "@/app/_server/people/join-desk";
import { type HeldLink, linkKey } from "@/app/_server/people/people-desk";
import { takeHeld } from "@/app/_server/people/shown-once";
import { addStudent } from "@/app/_server/season/student-desk";
import { wordsFor } from "@/lib/words/catalogue";
import { formOf } from "./first-student";
import { sentTo } from "./people-academy";

/** The password of whoever comes in by a link. */
export const FRESH = "six geese over the pond";

export function form(fields: Readonly<Record<string, string | readonly string[]>>): FormData {
  const data = new FormData();
  for (const [name, value] of Object.entries(fields)) for (const each of [value].flat()) data.append(name, each);
  return data;
}

export function inviteBo(viewer: Viewer, more: Readonly<Record<string, string | readonly string[]>> = {}) {
  const made = invite(viewer, form({ name: "Bo", email: "bo@range.example", roles: ["coach"], ...more }));
  if (made.kind !== "invited")
    throw new Error(JSON.stringify(findFormDraft(viewer, "invite-form", made.draftId)?.errors));
  const held = takeHeld<HeldLink>(linkKey(viewer, made.id));
  return { id: made.id, token: held?.path.slice("/join/".length) ?? "" };
}

export const errorsOf = (viewer: Viewer, fields: Parameters<typeof form>[0]) => {
  const made = invite(viewer, form(fields));
  return made.kind === "invited" ? {} : (findFormDraft(viewer, "invite-form", made.draftId)?.errors ?? {});
};

export function join(token: string, password: string): Promise<Response> {
  const body = new URLSearchParams({ token, password });
  return receiveJoin(new Request("http://127.0.0.1:3000/api/join", { method: "POST", headers: sentTo(), body }));
}

export function open(token: string) {
  const request = { method: "GET", pathname: `/join/${token}`, search: "", headers: sentTo() };
  return meet(request, { choice: "own", locale: "en" }, wordsFor("en"));
}

export function addTo(viewer: Viewer, alias: string): string {
  const added = addStudent(
    viewer,
    formOf({
      alias,
      birthYear: "2012",
      hand: "right",
      clubs: "",
      zone: "UTC",
      consentGivenBy: "mother",
      consentOnPaper: "yes",
    }),
  );
  if (added.kind !== "added") throw new Error(JSON.stringify(findFormDraft(viewer, "student-form", added.draftId)));
  return added.studentId;
}
