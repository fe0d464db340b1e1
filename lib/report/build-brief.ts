import type { Words } from "@/lib/words/catalogue";
import type { BriefFinding } from "./brief-finding";
import { BRIEF_WORDS, type Brief, type BriefWord } from "./brief-model";
import type { BriefSource } from "./brief-source";
import { buildBriefKnown } from "./build-brief-known";
import { layBriefList, putAwayOf } from "./lay-brief-list";

/** For how many weeks a student may not have been filmed, as it can be chosen; six by default. */
export const AWAY_WEEKS = [4, 6, 8, 12] as const;

/** What a brief is asked for, and what stands beside it. */
export interface BriefFrame {
  /** Keys of what the viewer put away. */
  readonly aside: ReadonlySet<string>;
  readonly show: "all" | "standing";
  /** Whether another list of the page waits for the viewer: consents, families, students who came from another coach. */
  readonly elsewhere: "something" | "nothing";
}

/** The page without what it is asked for, and parts of it. */
function hrefOf(wish: Readonly<Record<string, string>>): string {
  const asked = new URLSearchParams(wish).toString();
  return asked === "" ? "/students" : `/students?${asked}`;
}

function nextOf(words: Words, finding: BriefFinding | undefined): Brief["next"] {
  if (!finding?.next) return null;
  const { alias, studentId, fundamental } = finding;
  const putAway = putAwayOf(words, finding, new Set());
  return {
    margin: words.say("brief.next.margin"),
    note: words.say("brief.next.note"),
    ...finding.next(),
    link:
      fundamental === null
        ? { href: `/students/${studentId}`, label: words.say("brief.next.open", { alias }) }
        : {
            href: fundamental.href,
            label: words.say("brief.next.open.fundamental", { alias, name: fundamental.label }),
          },
    // Said aloud, its name begins with what is read on it.
    putAway: {
      ...putAway,
      label: words.say("brief.put-away.next"),
      name: words.say("brief.put-away.next.name", { about: putAway.name }),
    },
  };
}

function weeksChoice(words: Words, { weeks }: BriefSource): NonNullable<ReturnType<typeof layBriefList>>["choice"] {
  return {
    label: words.say("brief.away.choose"),
    links: AWAY_WEEKS.map((each) => ({
      href: `${hrefOf(each === 6 ? {} : { weeks: String(each) })}#brief-away`,
      label: words.say("brief.away.weeks", { weeks: each }),
      current: each === weeks ? "yes" : "no",
    })),
  };
}

/**
 * Where the rest of a list stands: the table, cut to it. What hurts isn't among what a table is cut to; whoever begins stands
 * where the last films do, and what is awaited has a page of its own with its reminders.
 */
function restOf(word: BriefWord, weeks: number): string | null {
  if (word === "pain") return null;
  if (word === "due") return "/due";
  if (word === "begin") return `${hrefOf({ sort: "last" })}#roster`;
  return `${hrefOf({ show: word, ...(word === "away" && weeks !== 6 ? { weeks: String(weeks) } : {}) })}#roster`;
}

/**
 * The brief on top of the roster: the one next thing over all lists in the coach's order, every list with its finding and
 * its count, what is known while nothing is proved, and the end of the hour. What the viewer put away stays away until
 * something about it changes.
 *
 * @param findings in the coach's order (see `findBrief`)
 */
export function buildBrief(
  words: Words,
  source: BriefSource,
  findings: readonly BriefFinding[],
  { aside, show, elsewhere }: BriefFrame,
): Brief {
  const standing = findings.filter(({ key }) => !aside.has(key));
  const away = findings.length - standing.length;
  const lists = BRIEF_WORDS.flatMap((word) => {
    const choice = word === "away" ? weeksChoice(words, source) : null;
    const frame = { word, aside, show, weeks: source.weeks, rest: restOf(word, source.weeks), choice };
    return layBriefList(words, findings, frame) ?? [];
  });
  const next = standing.find((finding) => finding.next !== null);
  return {
    next: nextOf(words, next),
    quiet:
      next !== undefined
        ? null
        : {
            margin: words.say("brief.next.margin"),
            heading: words.say(`brief.quiet.${elsewhere}`),
            text: words.say(`brief.quiet.${elsewhere}.text`),
          },
    known: buildBriefKnown(words, source),
    margin: words.say("brief.margin"),
    weeks: source.weeks,
    lists,
    aside:
      away === 0
        ? null
        : show === "all"
          ? { href: hrefOf({}), label: words.say("brief.aside.hide") }
          : { href: `${hrefOf({ aside: "shown" })}#brief`, label: words.say("brief.aside.show", { count: away }) },
  };
}
