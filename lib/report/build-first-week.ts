import { dayFromNumber, dayNumber } from "@/lib/domain/calendar-day";
import type { Unit } from "@/lib/domain/fundamental";
import type { Provable } from "@/lib/verdict/smallest-provable";
import type { Words } from "@/lib/words/catalogue";
import { sayDay } from "@/lib/words/day-words";
import { sayLevel, sayLimit } from "@/lib/words/number-words";
import { sayFundamental } from "@/lib/words/say-fundamental";
import { sayPosition } from "@/lib/words/say-verdict";
import type { TableModel } from "./basic-model";
import { filmDays } from "./film-days";
import type { FirstWeekPart } from "./season-model";
import type { SeasonSource, SeasonTrack } from "./season-source";

/** Film days from which on the verdicts speak for themselves: the first look comes after four sessions. */
const SETTLED_DAYS = 4;
/** Film days before the first drill. */
const BEFORE_FIRST_DRILL = 2;

/** Whether the two films before the first drill are still to come. */
export function asksFirstFilms(source: Pick<SeasonSource, "sessions" | "clubGroup">): "yes" | "no" {
  return filmDays(source).length < BEFORE_FIRST_DRILL ? "yes" : "no";
}

/** How the season's page asks for what further films could prove: of whom with one film to three, and after how many more. */
export function asksProvable(days: number): "first" | "next" | "no" {
  if (days < 1 || days >= SETTLED_DAYS) return "no";
  return days < BEFORE_FIRST_DRILL ? "first" : "next";
}

/** The first films: what is missing in one line, where everything is, and what could be proved by when; null: they are there. */
export function buildFirstWeek(words: Words, source: SeasonSource): FirstWeekPart | null {
  const days = filmDays(source).length;
  if (days >= SETTLED_DAYS) return null;
  const { student } = source;
  return {
    margin: words.say("first-week.margin"),
    heading: words.say("first-week.heading", { days }),
    texts: [
      sayMissing(words, source, days),
      words.say("first-week.text", { days }),
      ...(days === 1 ? [sayLoss(words, source)] : []),
    ].filter((text) => text !== ""),
    table: days === 0 || source.tracks.length === 0 ? null : provableTable(words, source),
    action: { href: `/students/${student.id}/sessions/new`, label: words.say("first-week.action", { days }) },
  };
}

/** Everything that a start needs and that isn't there, in one line. */
function sayMissing(words: Words, { student, consent, clubGroup, tracks }: SeasonSource, days: number): string {
  const views = new Set(tracks.map(({ history }) => history.fundamental.view));
  const missing = [
    consent.kind === "given" ? "" : "consent",
    student.birthYear === null ? "birth-year" : "",
    student.clubs === "" && clubGroup === null ? "club" : "",
    days >= BEFORE_FIRST_DRILL ? "" : days === 0 ? "two-films" : "second-film",
    days > 0 && !views.has("face-on") ? "face-on" : "",
    days > 0 && !views.has("down-the-line") ? "down-the-line" : "",
  ].filter((key) => key !== "");
  if (missing.length === 0) return words.say("first-week.nothing-missing");
  const list = missing.map((key) => words.say(`first-week.missing.${key}`)).join(", ");
  return words.say("first-week.missing", { list });
}

/** What the first in the order of work would have to change by, with and without a second film before the first drill. */
function sayLoss(words: Words, { tracks, provable, today }: SeasonSource): string {
  for (const { history } of tracks) {
    const found = provable?.get(history.fundamental.id);
    const last = history.sessions.at(-1)?.session.day;
    if (!found?.after?.size || last === undefined) continue;
    const { unit } = history.fundamental;
    return words.say("first-week.loss", {
      name: sayFundamental(words, history.fundamental),
      day: sayDay(words, dayOf(found.after, last, today), "short"),
      after: sayWhole(words, found.after.size, unit),
      straight: found.straight?.size ? sayWhole(words, found.straight.size, unit) : "",
      hasStraight: found.straight?.size ? "yes" : "no",
    });
  }
  return "";
}

/** Rounded up to whole units: the search is no finer. */
function sayWhole(words: Words, size: number, unit: Unit): string {
  return sayLimit(words, Math.ceil(size), unit);
}

/** The day of the last of the further films: counted from the last film, or from today where that is later. */
function dayOf({ days }: Provable, last: string, today: string): string {
  return dayFromNumber(Math.max(dayNumber(last), dayNumber(today)) + days);
}

function provableTable(words: Words, source: SeasonSource): TableModel {
  const columns = ["name", "level", "place", "provable"];
  return {
    caption: words.say("first-week.caption"),
    columns: columns.map((column) => ({ label: words.say(`first-week.${column}`), align: "start" as const })),
    rows: source.tracks.map((track) => provableRow(words, source, track)),
  };
}

function provableRow(
  words: Words,
  { student, provable, today }: SeasonSource,
  { history, verdict }: SeasonTrack,
): TableModel["rows"][number] {
  const { fundamental, goal, sessions, clubGroup } = history;
  const { levelNow, position } = verdict;
  const found = provable?.get(fundamental.id)?.after ?? null;
  const last = sessions.at(-1)?.session.day ?? today;
  return {
    href: `/students/${student.id}/${fundamental.id}?club=${clubGroup}`,
    cells: [
      sayFundamental(words, fundamental),
      levelNow === null ? words.say("position.unknown") : sayLevel(words, levelNow, fundamental.unit),
      sayPosition(words, position, levelNow, goal, fundamental.unit),
      found === null || found.size === null
        ? words.say("first-week.not-provable")
        : words.say("first-week.provable-by", {
            size: sayWhole(words, found.size, fundamental.unit),
            day: sayDay(words, dayOf(found, last, today), "short"),
          }),
    ],
    tone: "plain",
  };
}
