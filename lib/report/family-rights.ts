import { FAMILY_REQUESTS } from "@/lib/domain/family-link";
import { ERASING_THRESHOLDS } from "@/lib/verdict/erasing-thresholds";
import type { Words } from "@/lib/words/catalogue";
import { sayDay } from "@/lib/words/day-words";
import type { FamilyPage, FamilyPart } from "./family-model";
import type { FamilySource } from "./family-source";

/** Openings that are listed one by one. */
const LISTED_OPENINGS = 10;

function askPart(words: Words, { student, link, requests, dayOf }: FamilySource): FamilyPage["ask"] {
  const { alias } = student;
  const ask = (kind: string): string => words.say(`family.ask.${kind}`, { alias });
  // Each link its own: what another parent asked for, and was answered, is theirs (SEASON.md 21).
  const own = requests.filter(({ linkId }) => linkId === link.id);
  const open = own.filter(({ settledAt }) => settledAt === null);
  const day = (instant: string): string => sayDay(words, dayOf(instant), "day-year");
  const answered = own.filter(({ settledAt }) => settledAt !== null).slice(0, FAMILY_REQUESTS.length);
  return {
    heading: words.say("family.ask.heading"),
    lines: [
      ...open.map(({ kind, askedAt }) => `${ask(kind)}: ${words.say("family.ask.open", { day: day(askedAt) })}`),
      ...answered.map(({ kind, settledAt, settledBy, answer }) => {
        const said = { day: day(settledAt ?? ""), who: settledBy ?? "", answer: answer ?? "" };
        return `${ask(kind)}: ${words.say("family.ask.answered", said)}`;
      }),
    ],
    presses: FAMILY_REQUESTS.filter((kind) => open.every((each) => each.kind !== kind)).map((kind) => ({
      label: ask(kind),
      action: `/api/family/${link.id}/requests`,
      hidden: [{ name: "kind", value: kind }],
    })),
  };
}

function consentPart(words: Words, { student, consents, keepMonths }: FamilySource): FamilyPart {
  const { alias } = student;
  return {
    heading: words.say("family.consent.heading"),
    lines: [
      ...consents.map(({ kind, givenBy, from, until }) =>
        words.say(`family.consent.${kind}`, {
          ...{ alias, giver: givenBy, day: sayDay(words, from, "day-year") },
          until: until === null ? "none" : sayDay(words, until, "day-year"),
        }),
      ),
      words.say("family.consent.what"),
      words.say("family.consent.kept", { alias, months: keepMonths, days: ERASING_THRESHOLDS.copyDays.value }),
      words.say("family.consent.back"),
    ],
  };
}

function aboutPart(words: Words, { student, link, openings, dayOf, sayAt }: FamilySource): FamilyPage["about"] {
  return {
    heading: words.say("family.about.heading"),
    lines: [
      words.say("family.about.until", { day: sayDay(words, dayOf(link.expiresAt), "day-year") }),
      words.say("family.about.whose", { alias: student.alias, label: link.label }),
      words.say("family.about.opened", { count: openings.length }),
    ],
    opened: openings.slice(0, LISTED_OPENINGS).map(sayAt),
  };
}

/** What a family may ask for and what was answered, what was agreed to, and what this link is. */
export function familyRights(words: Words, source: FamilySource): Pick<FamilyPage, "ask" | "consent" | "about"> {
  return { ask: askPart(words, source), consent: consentPart(words, source), about: aboutPart(words, source) };
}
