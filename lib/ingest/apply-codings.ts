import { countKey } from "@/lib/domain/count-key";
import type { PhraseCoding } from "@/lib/domain/phrase-coding";
import { type CodedContact, type CodedNote, isTooMany, type PassedWord } from "./code-contact-note";

/** What the academy said of phrases, by their compared form; a phrase without an entry is what the rules read in it. */
export type Codings = ReadonlyMap<string, PhraseCoding>;

/** What was said of counts of one note, by the place of each phrase in it. */
export type OwnCounts = ReadonlyMap<string, PhraseCoding>;

/** A phrase that names a strike, and whether the academy said so of it, of its number word, or somebody of this note alone. */
export type RecodedContact = CodedContact & { readonly corrected: "yes" | "word" | "here" | "no" };

/** A word that was passed over; `corrected`: the academy said that it is no strike. */
export type RecodedWord = Omit<PassedWord, "why"> & { readonly why: PassedWord["why"] | "corrected" };

/** A coded note with the academy's own codings taken in. */
export interface RecodedNote {
  readonly contacts: readonly RecodedContact[];
  readonly passed: readonly RecodedWord[];
  readonly tooMany: "yes" | "no";
}

/**
 * A coded note with what the academy said of its phrases.
 *
 * A phrase said to be a strike of another kind keeps its number; one that the rules passed over becomes a mention, for no
 * number of it was read. A mention has no number. A count that was said of a phrase of this note, or of a number word in every
 * note, stands in place of what was read; what it is of is as the note says or not said. Nothing is done to phrases that
 * nobody spoke of, and no number is made up.
 *
 * @param coded as the rules read it
 * @param balls how many were hit, where it is known
 * @param own counts of this note alone
 */
export function applyCodings(
  coded: CodedNote,
  codings: Codings,
  balls: number | null,
  own: OwnCounts = new Map(),
): RecodedNote {
  const contacts: RecodedContact[] = [];
  const passed: RecodedWord[] = [];
  for (const contact of coded.contacts) {
    const coding = codings.get(contact.phrase);
    if (coding?.as === "nothing") passed.push({ why: "corrected", at: contact.at, phrase: contact.phrase });
    else contacts.push(recounted(recoded(contact, coding), codings, own));
  }
  for (const word of coded.passed) {
    const coding = codings.get(word.phrase);
    const { at, phrase } = word;
    if (coding?.as !== "strike") passed.push(word);
    else {
      const nothingSaid = { count: null, of: null, said: phrase, place: "" };
      contacts.push({ kind: coding.kind, ...nothingSaid, at, phrase, corrected: "yes" });
    }
  }
  const inOrder = <T extends { readonly at: readonly [number, number] }>(list: readonly T[]): readonly T[] =>
    list.toSorted((a, b) => a.at[0] - b.at[0]);
  return { contacts: inOrder(contacts), passed: inOrder(passed), tooMany: isTooMany(contacts, balls) };
}

function recoded(contact: CodedContact, coding: PhraseCoding | undefined): RecodedContact {
  switch (coding?.as) {
    case "strike":
      return { ...contact, kind: coding.kind, corrected: "yes" };
    case "mention":
      return { ...contact, count: null, of: null, corrected: "yes" };
    default:
      return { ...contact, corrected: "no" };
  }
}

/** A phrase with the count that was said of it: of this note first, else of its number word. */
function recounted(contact: RecodedContact, codings: Codings, own: OwnCounts): RecodedContact {
  const here = own.get(contact.place);
  const coding = here ?? codings.get(countKey({ scope: "academy", words: contact.said }));
  const corrected = here === undefined ? "word" : "here";
  if (coding?.as === "mention") return { ...contact, count: null, of: null, corrected };
  if (coding?.as !== "count") return contact;
  // What it is of stays only where it can hold the count.
  const of = coding.of === "as-read" && contact.of !== null && coding.count <= contact.of ? contact.of : null;
  return { ...contact, count: coding.count, of, corrected };
}
