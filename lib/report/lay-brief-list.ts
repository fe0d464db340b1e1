import type { Words } from "@/lib/words/catalogue";
import type { BriefFinding } from "./brief-finding";
import type { BriefItem, BriefList, BriefWord, PutAway } from "./brief-model";

/** More lines than these would push the table off its own page. */
const SHOWN = 6;

/** What is said of a list beside its lines. */
export interface ListFrame {
  readonly word: BriefWord;
  /** What was put away, by key. */
  readonly aside: ReadonlySet<string>;
  /** Whether what was put away is shown among the others. */
  readonly show: "all" | "standing";
  readonly weeks: number;
  /** Where the rest of the list stands; null: it is shown whole. */
  readonly rest: string | null;
  readonly choice: BriefList["choice"];
}

/** The button that puts a finding away, or brings it back. */
export function putAwayOf(words: Words, finding: BriefFinding, aside: ReadonlySet<string>): PutAway {
  const { alias, key, word, fundamental } = finding;
  const state = aside.has(key) ? "put-away" : "stands";
  const kind = words.say(`brief.about.${word}`);
  const about = fundamental === null ? kind : words.say("brief.about.of", { about: kind, name: fundamental.label });
  const button = state === "stands" ? "brief.put-away" : "brief.back";
  return { key, state, label: words.say(button), name: words.say(`${button}.name`, { alias, about }) };
}

function itemOf(words: Words, finding: BriefFinding, aside: ReadonlySet<string>): BriefItem {
  return {
    student: { href: `/students/${finding.studentId}`, label: finding.alias },
    fundamental: finding.fundamental,
    text: finding.say(),
    putAway: putAwayOf(words, finding, aside),
  };
}

/** One list, cut to what a page bears; its heading counts what isn't dealt with. Null: there is nothing to show. */
export function layBriefList(
  words: Words,
  findings: readonly BriefFinding[],
  { word, aside, show, weeks, rest, choice }: ListFrame,
): BriefList | null {
  const own = findings.filter((finding) => finding.word === word);
  const standing = own.filter(({ key }) => !aside.has(key));
  const cut = rest === null ? standing : standing.slice(0, SHOWN);
  const shown = show === "all" ? [...cut, ...own.filter(({ key }) => aside.has(key))] : cut;
  if (shown.length === 0) return null;
  const more = standing.length - cut.length;
  return {
    word,
    heading: words.say(`brief.${word}.heading`, { count: standing.length, weeks }),
    explains: words.say(`brief.${word}.explains`),
    items: shown.map((finding) => itemOf(words, finding, aside)),
    more:
      more > 0 && rest !== null
        ? { href: rest, label: words.say(word === "due" ? "brief.more.due" : "brief.more", { count: more }) }
        : null,
    all: standing.length > 1 ? { word, label: words.say("brief.put-away.all") } : null,
    choice,
  };
}
