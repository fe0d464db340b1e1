import type { ContactKind } from "@/lib/domain/contact-word";
import type { Session } from "@/lib/domain/session";
import type { Student } from "@/lib/domain/student";

/** In how many notes each kind of strike is named; kinds that no note names are left out. */
export interface ContactMentions {
  /** Sessions with a note. */
  readonly notes: number;
  readonly kinds: readonly { readonly kind: ContactKind; readonly notes: number }[];
}

/** Everything that the part on contact rests on. */
export interface ContactSource {
  readonly student: Student;
  readonly sessions: readonly Session[];
  /** The club group shown; null: none. */
  readonly clubGroup: string | null;
  readonly seasonStart: string;
  readonly mentions: ContactMentions;
  /** First and last day of the time axis that the season's charts share. */
  readonly from: string;
  readonly asOf: string;
}
