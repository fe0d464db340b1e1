import type { Words } from "@/lib/words/catalogue";
import { sayDay } from "@/lib/words/day-words";
import { sayFundamental } from "@/lib/words/say-fundamental";
import { isAway } from "./away-days";
import { beginning } from "./beginning";
import type { BriefFinding } from "./brief-finding";
import type { BriefSource, BriefStudent } from "./brief-source";
import { trackHref } from "./roster-rows";
import { stopped } from "./stopped";
import { type WhyBlocked, whyBlocked } from "./why-blocked";

/** In the order in which they are mended: the phone and the aid today, a reading again this week, the rest by more films. */
const KINDS: readonly WhyBlocked["kind"][] = ["set-aside", "aided", "placement", "reader", "few", "no-plan"];

function fundamentalOf(words: Words, source: BriefSource, why: WhyBlocked): BriefFinding["fundamental"] {
  if (!("summary" in why)) return null;
  const fundamental = source.fundamentals.find(({ id }) => id === why.summary.fundamentalId);
  return fundamental ? { href: trackHref(why.summary), label: sayFundamental(words, fundamental) } : null;
}

function findingOf(words: Words, source: BriefSource, entry: BriefStudent, why: WhyBlocked): BriefFinding {
  const { student, lastDay } = entry;
  const fundamental = fundamentalOf(words, source, why);
  const torn = "summary" in why ? why.summary.verdict.notToldApart : null;
  const args = () => ({
    alias: student.alias,
    films: "films" in why ? why.films : 0,
    tracks: "tracks" in why ? why.tracks : 0,
    name: fundamental?.label ?? "",
    day: torn === null ? "" : sayDay(words, torn.on, "short"),
    since: "since" in why ? sayDay(words, why.since, "short") : "",
  });
  return {
    word: "blocked",
    studentId: student.id,
    alias: student.alias,
    // With the next film it is asked anew.
    key: `blocked ${student.id} ${why.kind} ${lastDay ?? ""}`,
    fundamental,
    say: () => words.say(`brief.blocked.${why.kind}`, args()),
    next: () => ({
      heading: words.say(`brief.next.blocked.${why.kind}`, args()),
      text: words.say(`brief.next.blocked.${why.kind}.text`, args()),
      alters: words.say("brief.next.blocked.alters"),
    }),
  };
}

/**
 * Students whose films settle nothing, with what would help, what is mended most easily first; nobody who is away or whose
 * work is stopped. Whoever still stands at the beginning is told there that films are wanted.
 */
export function findBlocked(words: Words, source: BriefSource): readonly BriefFinding[] {
  const held = stopped(source);
  const fresh = new Set(beginning(source).map(({ student }) => student.id));
  return source.students
    .flatMap((entry) => {
      const isOut = held.has(entry.student.id) || isAway(entry.lastDay ?? undefined, source.today);
      const why = isOut ? null : whyBlocked(entry, source.today);
      if (why?.kind === "few" && fresh.has(entry.student.id)) return [];
      return why === null ? [] : [{ why, finding: findingOf(words, source, entry, why) }];
    })
    .toSorted((a, b) => KINDS.indexOf(a.why.kind) - KINDS.indexOf(b.why.kind))
    .map(({ finding }) => finding);
}
