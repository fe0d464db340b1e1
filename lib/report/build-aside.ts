import type { View } from "@/lib/domain/fundamental";
import type { Student } from "@/lib/domain/student";
import type { ApartReason, HistorySession, TrackHistory } from "@/lib/verdict/track-history";
import type { Words } from "@/lib/words/catalogue";
import { sayDay } from "@/lib/words/day-words";
import { sayApart } from "@/lib/words/say-apart";
import { sayFundamental } from "@/lib/words/say-fundamental";
import type { AsideRest } from "./aside-model";
import type { Link } from "./basic-model";
import { buildSavedPage, type SavedSource } from "./build-saved";
import type { SavedPage } from "./saved-model";

/** Where one comes from: the page of a fundamental, or the season. */
function backTo(words: Words, student: Pick<Student, "id" | "alias">, history: TrackHistory | null): Link {
  const home = `/students/${student.id}`;
  return history === null
    ? { href: home, label: words.say("fundamental-page.back", { alias: student.alias }) }
    : {
        href: `${home}/${history.fundamental.id}?club=${history.clubGroup}`,
        label: words.say("aside.back", { name: sayFundamental(words, history.fundamental) }),
      };
}

/** Which fact would have to be another for the camera's rule to let the session count; null: no such rule holds it back. */
function factOf(words: Words, apart: ApartReason): string | null {
  if (apart.kind === "fingerprint") return words.say("aside.fact.fingerprint");
  if (apart.kind === "circumstance") return words.say("aside.fact.circumstance");
  if (apart.kind === "before") return words.say("aside.fact.before");
  return apart.kind === "camera" && words.has(`aside.fact.${apart.why}`) ? words.say(`aside.fact.${apart.why}`) : null;
}

/** How a session stands in one fundamental, what would let it count, and where that is said. */
export function buildAsideRest(
  words: Words,
  source: {
    readonly student: Pick<Student, "id" | "alias">;
    readonly sessionId: string;
    readonly history: TrackHistory | null;
    /** The session in it; null: it has no value of the fundamental. */
    readonly entry: HistorySession | null;
  },
): AsideRest {
  const { student, history, entry } = source;
  const here = `/students/${student.id}/sessions/${source.sessionId}`;
  const apart = entry?.apart ?? null;
  const fact = apart === null ? null : factOf(words, apart);
  const name = history === null ? "" : sayFundamental(words, history.fundamental);
  return {
    back: backTo(words, student, history),
    margin: words.say("aside.margin.now"),
    heading:
      history === null || entry === null
        ? words.say("aside.now.unnamed")
        : words.say(apart === null ? "aside.now.counts" : "aside.now.apart", {
            name,
            why: apart === null ? "" : sayApart(words, apart),
          }),
    texts: [...(fact === null ? [] : [fact]), words.say("aside.now.other")],
    links: [
      { href: `${here}/facts`, label: words.say("session-page.correct-facts") },
      { href: here, label: words.say("aside.history") },
    ],
  };
}

/** What it changed in the verdicts that a session, or one of its films, was set aside or brought back. */
export function buildAsideDone(
  words: Words,
  source: Omit<SavedSource, "readings" | "earlier"> & {
    readonly part: "session" | View;
    /** Null: it counts. */
    readonly reason: string | null;
    /** The fundamental from whose page it was done; null: from elsewhere. */
    readonly of: TrackHistory | null;
  },
): SavedPage {
  const { student, session, part, reason, of } = source;
  const { changed } = buildSavedPage(words, { ...source, readings: [], earlier: [], apart: "known" });
  const what = words.say(part === "session" ? "aside.session" : "aside.film", {
    view: part === "session" ? "" : words.say(`view.${part}`),
  });
  const home = `/students/${student.id}`;
  const back = backTo(words, student, of);
  return {
    title: words.say(reason === null ? "aside.done.back" : "aside.done.aside", {
      alias: student.alias,
      day: sayDay(words, session.day, "full"),
      what,
    }),
    documentTitle: words.say("document-title", { page: words.say("aside.document-title") }),
    lede: reason === null ? words.say("aside.done.back.lede") : words.say("aside.done.aside.lede", { reason }),
    back,
    changed,
    check: null,
    next: {
      margin: words.say("saved.margin.next"),
      heading: words.say("saved.next"),
      links: [
        back,
        {
          href: `${home}/sessions/${session.id}/aside${of === null ? "" : `?of=${of.fundamental.id}`}`,
          label: words.say("aside.again"),
        },
        { href: `${home}/sessions/${session.id}`, label: words.say("aside.history") },
      ],
    },
  };
}
