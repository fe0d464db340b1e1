import { dayFromNumber, dayNumber } from "@/lib/domain/calendar-day";
import { FAMILY_THRESHOLDS } from "@/lib/verdict/family-thresholds";
import type { Words } from "@/lib/words/catalogue";
import { sayDay } from "@/lib/words/day-words";
import type { FamilyLogSource } from "./family-log-source";
import type { FamilyKeep, KeepWord } from "./family-practice-model";

/** Filled in on the phone. */
const PLACES = { day: "{day}", said: "{said}", why: "{why}", balls: "{balls}", minutes: "{minutes}" } as const;

/** Where the messages stand that stand elsewhere already; the others are `family.kept.…`. */
const ELSEWHERE: Partial<Readonly<Record<KeepWord, string>>> = {
  minutes: "family.tap.minutes",
  easy: "family.practice.felt.easy",
  hard: "family.practice.felt.hard",
  "dead.title": "family.dead.title",
  "dead.next": "family.dead.next",
  over: "family.stop.over",
  "hurts-missing": "family.issue.hurts-missing",
  "no-practice": "family.issue.no-practice",
  "practice-of-nothing": "family.issue.practice-of-nothing",
  "not-a-count": "family.issue.not-a-count",
  "much-practice": "family.issue.much-practice",
  "many-balls": "family.issue.many-balls",
};

const OWN: readonly KeepWord[] = [
  ...(["heading", "line", "one-ball", "balls", "now", "not", "twice", "waits", "sending", "sent"] as const),
  ...(["refused", "drop", "send", "pain", "pain.again", "press", "dead"] as const),
];

/** What the page's script needs to keep a log that can't be sent; its messages have places in braces for what only it knows. */
export function familyKeep(words: Words, { alias, pageId, today, most }: FamilyLogSource): FamilyKeep {
  const said = (word: KeepWord): [KeepWord, string] => [
    word,
    words.say(ELSEWHERE[word] ?? `family.kept.${word}`, { ...PLACES, alias }),
  ];
  const last = dayNumber(today);
  const days = Array.from({ length: FAMILY_THRESHOLDS.logDays.value }, (_, back) => dayFromNumber(last - back));
  return {
    ...{ pageId, most },
    action: `/api/family/${pageId}/practice`,
    days: days.map((day) => [day, sayDay(words, day, "with-weekday")]),
    words: Object.fromEntries([...OWN, ...(Object.keys(ELSEWHERE) as KeepWord[])].map(said)) as FamilyKeep["words"],
  };
}
