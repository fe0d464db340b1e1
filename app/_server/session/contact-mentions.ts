import { CONTACT_KINDS } from "@/lib/domain/contact-word";
import type { Session } from "@/lib/domain/session";
import { applyCodings, type Codings } from "@/lib/ingest/apply-codings";
import { codeContactNote } from "@/lib/ingest/code-contact-note";
import type { ContactMentions } from "@/lib/report/contact-source";
import { sessionCounts } from "./note-counts";

/**
 * In how many of a season's notes each kind of strike is named, beside the counts: a mention is never made a count.
 *
 * @param sessions of one student
 * @param days first and last day taken in
 * @param codings what the academy said of phrases, and of counts of single notes
 */
export function contactMentions(
  sessions: readonly Session[],
  clubGroup: string | null,
  days: { readonly from: string; readonly to: string },
  codings: Codings,
): ContactMentions {
  const coded = sessions
    .filter((session) => session.clubGroup === clubGroup && session.day >= days.from && session.day <= days.to)
    .flatMap(({ id, note, balls }) =>
      note === null
        ? []
        : [applyCodings(codeContactNote(note, balls), codings, balls, sessionCounts(codings, id)).contacts],
    );
  return {
    notes: coded.length,
    kinds: CONTACT_KINDS.map((kind) => ({
      kind,
      notes: coded.filter((contacts) => contacts.some((each) => each.kind === kind && each.count !== 0)).length,
    })).filter((each) => each.notes > 0),
  };
}
