import type { ConsentStanding } from "@/lib/domain/consent";
import type { Words } from "@/lib/words/catalogue";
import { consentNotices } from "./consent-notices";
import type { RosterPage } from "./page-model";

/** More than these would push the roster off its own page. */
const SHOWN = 12;

/** Whose consent is missing, has ended or ends soon, in the order of the aliases; null: nobody's. */
export function buildRosterConsents(
  words: Words,
  students: readonly {
    readonly student: { readonly id: string; readonly alias: string };
    readonly consent: ConsentStanding;
  }[],
  today: string,
): RosterPage["consents"] {
  const items = students
    .flatMap(({ student: { id, alias }, consent }) =>
      consentNotices(words, { alias, standing: consent, today }).map((text) => ({
        student: { href: `/students/${id}/consent`, label: alias },
        text,
      })),
    )
    .sort((a, b) => a.student.label.localeCompare(b.student.label));
  if (items.length === 0) return null;
  const more = items.length - SHOWN;
  return {
    margin: words.say("roster.margin.consents"),
    heading: words.say("roster.consents.heading", { count: items.length }),
    items: items.slice(0, SHOWN),
    more: more > 0 ? words.say("roster.consents.more", { count: more }) : "",
  };
}
