import { SINCE_EVER } from "@/lib/domain/goal-band";
import type { Words } from "@/lib/words/catalogue";
import { sayDay, sayStretch } from "@/lib/words/day-words";
import { sayDose } from "@/lib/words/say-dose";
import type { ReviewPage } from "./review-model";
import { reviewRows, reviewTable } from "./review-rows";
import type { ReviewSource } from "./review-source";

/** Films that the start of what hasn't changed rests on: the first that allow a level with both days' doubt. */
export const START_FILMS = 2;

function rowsPart(words: Words, source: ReviewSource): ReviewPage["rows"] {
  const items = reviewRows(words, source);
  const days = items[0]?.chart.x;
  if (days === undefined) return null;
  const more = source.tracks.length - items.length;
  return {
    margin: words.say("review.margin.rows"),
    explains: words.say("review.rows.explains"),
    heading: words.say("review.rows.heading", { rows: items.length }),
    items,
    more: more === 0 ? "" : words.say("review.rows.more", { more }),
    days,
  };
}

function practicePart(words: Words, { drills, practiceDays, season, today }: ReviewSource): ReviewPage["practice"] {
  const lines = drills.map(({ given, done, asked }) =>
    words.say(asked === null ? "review.practice.drill" : "review.practice.drill.asked", {
      drill: given.drill,
      days: sayStretch(words, given.start, given.end ?? today),
      dose: sayDose(words, given) || "none",
      done,
      asked: asked ?? 0,
    }),
  );
  const { practice } = season.evidence;
  return {
    margin: words.say("review.margin.practice"),
    heading: words.say("review.practice.heading", { days: practiceDays }),
    lines: [
      ...(practice ? [practice.summary] : []),
      ...(lines.length === 0 ? [words.say("review.practice.none")] : lines),
    ],
  };
}

function contactPart(words: Words, { season }: ReviewSource): ReviewPage["contact"] {
  const { contact } = season;
  const margin = words.say("review.margin.contact");
  if (contact === null) return { margin, heading: words.say("review.contact.none"), lines: [] };
  // The share stands in the heading; the counts beside it, each with its span.
  const counts = contact.judged?.facts.slice(1, 3) ?? [];
  return {
    margin,
    heading: contact.heading,
    lines: [
      ...counts.map(({ name, value, note }) => words.say("review.contact.fact", { name, value, note })),
      ...contact.texts.slice(0, 1),
    ],
  };
}

/** What is to be cared for first; why it is the next thing, what is kept beside it, and under a head of its own what would alter it. */
function nextLines(next: ReviewSource["season"]["next"]): readonly string[] {
  if (next === null) return [];
  const { cautions, text, notes, beside, alters } = next;
  return [...cautions, text, ...notes, ...beside, ...(alters === null ? [] : [`${alters.heading}:`, ...alters.items])];
}

/** The season of one student for ten minutes of talk. Every figure is one of the season's page; nothing unproved is a change. */
export function buildReview(words: Words, source: ReviewSource): ReviewPage {
  const { season, student, tracks, films } = source;
  const day = sayDay(words, source.today, "full");
  const pain = words.say("caution.pain");
  const inside = tracks.filter(({ verdict }) => verdict.position === "inside").length;
  const owned = tracks.filter(({ verdict }) => verdict.ownedSince !== null).length;
  // What is enough for its track alone is no proof before the roster's list has it.
  const items = season.proved.items.filter(({ glyph }) => glyph !== "open");
  const counts = { alias: student.alias, proved: items.length, inside, measured: tracks.length };
  return {
    documentTitle: words.say("document-title", { page: words.say("review") }),
    title: words.say(tracks.length === 0 ? "review.title.empty" : "review.title", counts),
    lede:
      films === null
        ? words.say("review.lede.empty", { day })
        : words.say("review.lede", {
            stretch: sayStretch(words, films.first, films.last),
            sessions: films.count,
            club: source.clubName,
            day,
          }),
    season:
      source.seasonStart === SINCE_EVER
        ? words.say("review.season.none")
        : words.say("review.season", { start: sayDay(words, source.seasonStart, "day-year") }),
    print: words.say("review.print"),
    back: { href: `/students/${student.id}`, label: words.say("plan.back", { alias: student.alias }) },
    clubGroups: season.clubGroups,
    proved: {
      margin: words.say("review.margin.proved"),
      heading: words.say("review.proved.heading", { changes: items.length }),
      items: items.map(({ glyph, heading, text }) => ({ glyph, heading, text })),
      empty: words.say("review.proved.empty"),
    },
    table:
      tracks.length === 0
        ? null
        : {
            margin: words.say("review.margin.table"),
            explains: words.say("review.table.explains", { films: START_FILMS }),
            heading: words.say("review.table.heading", { ...counts, owned }),
            table: reviewTable(words, source),
          },
    rows: rowsPart(words, source),
    practice: practicePart(words, source),
    contact: contactPart(words, source),
    next: {
      margin: words.say("review.margin.next"),
      heading: season.next?.heading ?? words.say("review.next.none"),
      lines: nextLines(season.next),
    },
    promise: {
      margin: words.say("review.margin.promise"),
      heading: "",
      lines: [words.say("detail.promise")],
    },
    pain,
    cautions: season.cautions.filter((caution) => caution !== pain),
  };
}
