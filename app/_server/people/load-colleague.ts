import { notFound } from "next/navigation";
import { readAssisted } from "@/db/read/people";
import type { PeoplePage } from "@/lib/report/people-model";
import type { Viewer } from "../gate";
import { coachesHere } from "./coaches-here";
import { rolesToGive } from "./invite-desk";
import { madeLinkPart, sayDone } from "./load-people";
import { LINK_DAYS } from "./one-time-link";
import { findColleague } from "./people-desk";
import { sayRoles } from "./say-roles";
import { sayWhy } from "./say-why";
import { peoplePart, smallForm } from "./small-form";

/** What somebody's page is asked with: a link just made, and what became of a press. */
export interface ColleagueWish {
  readonly made?: string;
  readonly done?: string;
  readonly why?: string;
  /** Why a link was not sent by mail. */
  readonly mail?: string;
}

/** One of the academy's people: what they are, a link for a new password, and the end of their access. */
export function loadColleague(viewer: Viewer, userId: string, { made, done, why, mail }: ColleagueWish): PeoplePage {
  const { words, db } = viewer;
  const person = findColleague(viewer, userId);
  if (!person || person.endedAt !== null) return notFound();
  const { name } = person;
  const hidden = [{ name: "id", value: userId }];
  const coaches = coachesHere(db, viewer.academy.id)
    .filter((each) => each.userId !== userId)
    .map((each) => ({ value: each.userId, label: each.name }));
  const roles = smallForm(
    words,
    "colleague.roles",
    [
      { name: "roles", kind: "checkbox", options: rolesToGive(viewer), value: person.roles.join(",") },
      ...(coaches.length === 0
        ? []
        : [
            {
              ...({ name: "assists", kind: "checkbox", options: coaches } as const),
              value: readAssisted(db, userId).join(","),
            },
          ]),
    ],
    sayWhy(words, why, { current: "roles" }),
    hidden,
  );
  return {
    title: name,
    documentTitle: words.say("document-title", { page: words.say("colleague.document-title") }),
    lede: words.say("colleague.lede", { roles: sayRoles(words, person.roles), email: person.email }),
    back: { href: "/people", label: words.say("colleague.back") },
    notice: sayDone(words, done, mail),
    parts: [
      ...madeLinkPart(viewer, { made, mail, about: userId }),
      peoplePart(words.say("colleague.margin.roles"), {
        paragraphs: [words.say("colleague.roles.text")],
        forms: [{ act: "roles", form: roles }],
      }),
      peoplePart(words.say("colleague.margin.password"), {
        paragraphs: [words.say("colleague.password.text", { days: LINK_DAYS })],
        forms: [{ act: "password", form: smallForm(words, "colleague.password", [], undefined, hidden) }],
      }),
      peoplePart(words.say("colleague.margin.end"), {
        paragraphs: [words.say("colleague.end.text")],
        forms: [{ act: "end", form: smallForm(words, "colleague.end", [], undefined, hidden) }],
      }),
    ],
  };
}
