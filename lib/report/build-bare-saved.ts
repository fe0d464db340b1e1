import type { Session } from "@/lib/domain/session";
import type { Student } from "@/lib/domain/student";
import type { Words } from "@/lib/words/catalogue";
import { sayDay } from "@/lib/words/day-words";
import type { SavedPage } from "./saved-model";

/** What was saved, for whoever enters values and reads no report. */
export interface BareSavedSource {
  readonly student: Pick<Student, "id" | "alias">;
  readonly session: Pick<Session, "day">;
  readonly readings: number;
  readonly swings: number;
  readonly clubName: string;
}

/** That a session was saved, and how much of it: no verdict, no earlier value, no link to either. */
export function buildBareSaved(words: Words, source: BareSavedSource): SavedPage {
  const { student, session, readings, swings, clubName } = source;
  return {
    title: words.say("saved.title", { day: sayDay(words, session.day, "with-weekday"), alias: student.alias }),
    documentTitle: words.say("document-title", { page: words.say("saved.document-title") }),
    lede: words.say("saved.lede", { readings, swings, club: clubName }),
    back: { href: "/record", label: words.say("saved.bare.back") },
    changed: {
      margin: words.say("saved.bare.margin"),
      heading: words.say("saved.bare.heading", { readings }),
      lines: [],
      unchanged: words.say("saved.bare.text"),
    },
    check: null,
    next: {
      margin: words.say("saved.margin.next"),
      heading: words.say("saved.next"),
      links: [
        { href: "/record", label: words.say("saved.another") },
        { href: "/record/group", label: words.say("record.group.open") },
      ],
    },
  };
}
