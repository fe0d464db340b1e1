import type { Alteration, Priority, Work } from "@/lib/verdict/choose-priority";
import { reversePivot } from "@/lib/verdict/reverse-pivot";
import type { Words } from "@/lib/words/catalogue";
import { sayDay, sayStretch } from "@/lib/words/day-words";
import { sayBand, sayLevel } from "@/lib/words/number-words";
import { sayDose } from "@/lib/words/say-dose";
import { sayFundamental } from "@/lib/words/say-fundamental";
import { sayPosition } from "@/lib/words/say-verdict";
import { isAway } from "./away-days";
import { asksFirstFilms } from "./build-first-week";
import { chooseWork, type WorkTrack } from "./order-of-work";
import type { Fact } from "./page-model";
import { sayEveryName, sayNames, sayStop } from "./say-work";
import type { NextPart } from "./season-model";
import type { SeasonSource } from "./season-source";
import { buildTrackSummary } from "./track-summary";

/** What a season's student works on with the clubs shown, by the rule that every page has. */
export function seasonWork(source: SeasonSource): Priority<WorkTrack> {
  const ranked = source.tracks.map(({ history, verdict }) => ({
    fundamental: history.fundamental,
    summary: buildTrackSummary(history, verdict),
  }));
  return chooseWork(source.fundamentals, ranked, source.work);
}

const nameOf = (words: Words, { fundamental }: Pick<WorkTrack, "fundamental">): string =>
  sayFundamental(words, fundamental);

/** The one next thing: which, why, what comes before it, what is kept, and what would alter it. */
export function buildSeasonNext(words: Words, source: SeasonSource, priority: Priority<WorkTrack>): NextPart {
  const { stop, inHand, rule, keeps, unknown } = priority;
  const margin = words.say("season.margin.next");
  const cautions =
    reversePivot(source.tracks.map(({ history: { fundamental }, verdict }) => ({ fundamental, verdict }))) === "shown"
      ? [words.say("work.reverse-pivot")]
      : [];
  const page = `/students/${source.student.id}`;
  const choose = {
    href: `${page}/priority${source.clubGroup === null ? "" : `?club=${source.clubGroup}`}`,
    label: words.say(source.choice === null ? "work.choose" : "work.choose-again"),
  };
  const keep = keeps.length === 0 ? [] : [words.say("work.keeps", { names: sayNames(words, keeps) })];
  const left = unknown.length === 0 ? [] : [words.say("work.unknown", { names: sayEveryName(words, unknown) })];
  if (stop !== null)
    return {
      ...{ margin, cautions, facts: [], action: null },
      heading: words.say("work.next.stopped", { stop: sayStop(words, stop) }),
      text: words.say(`work.next.stopped.${stop.kind}`),
      notes: rule === null ? [] : [words.say("work.next.afterwards", { name: nameOf(words, rule.item) })],
      beside: [],
      alters: { heading: words.say("work.alters"), items: [words.say(`work.alters.over.${stop.kind}`)] },
      links: [{ href: `${page}/events`, label: words.say("happen.events") }],
    };
  if (inHand === null)
    return {
      ...{ margin, cautions, facts: [], action: null },
      heading: words.say(unknown.length === 0 ? "work.next.nothing" : "work.next.nothing-known"),
      text: words.say("work.next.nothing.text"),
      notes: [],
      beside: [...keep, ...left],
      alters: {
        heading: words.say("work.alters"),
        items: [
          ...(keeps.length === 0 ? [] : [words.say("work.alters.keep-slips", { names: sayNames(words, keeps) })]),
          words.say("work.alters.pain"),
        ],
      },
      links: [choose],
    };
  const name = nameOf(words, inHand.item);
  return {
    ...{ margin, cautions },
    heading: headingOf(words, source, inHand),
    text: words.say(`work.next.${inHand.reason}.text`, { name, standing: inHand.standing }),
    // A drill that runs is told by the part that gives it, just beneath.
    facts: [
      ...standingFacts(words, inHand.item),
      ...(drillIsNext(source, inHand) !== null && drillFor(source, inHand.item)?.runs === "yes"
        ? []
        : drillFacts(words, source, inHand.item)),
    ],
    notes: [
      ...(asksFirstFilms(source) === "yes" ? [words.say("work.first-films")] : []),
      ...awayNote(words, source),
      ...chosenNotes(words, source, priority),
      ...(inHand.blocks.length === 0
        ? []
        : [words.say("work.blocks", { names: sayEveryName(words, inHand.blocks), name })]),
    ],
    beside: [...keep, ...left],
    alters: {
      heading: words.say("work.alters"),
      items: inHand.alters.map((each) => sayAlteration(words, inHand, each)),
    },
    action: actionOf(words, source, inHand),
    drillFor: drillIsNext(source, inHand),
    links: [choose],
  };
}

/** The fundamental for which a drill is the next thing: it is coached, or a drill runs for it; null: a film is. */
function drillIsNext(source: SeasonSource, { item, standing }: Work<WorkTrack>): string | null {
  if (asksFirstFilms(source) === "yes") return null;
  const coached = standing === "outside" || standing === "slipped";
  return coached || drillFor(source, item)?.runs === "yes" ? item.fundamental.id : null;
}

/** One thing to press: a film for what isn't known, or is to be known before; the first films and drills have parts of their own. */
function actionOf(words: Words, source: SeasonSource, inHand: Work<WorkTrack>): NextPart["action"] {
  if (asksFirstFilms(source) === "yes") return null;
  const blocked = inHand.blocks.length > 0 && drillFor(source, inHand.item)?.runs !== "yes";
  if (drillIsNext(source, inHand) !== null && !blocked) return null;
  return { href: `/students/${source.student.id}/sessions/new`, label: words.say("work.film-next") };
}

function headingOf(words: Words, source: SeasonSource, { item, reason, blocks }: Work<WorkTrack>): string {
  const name = nameOf(words, item);
  if (reason === "chosen") return words.say("work.next.chosen", { name, who: source.choice?.who ?? "" });
  if (blocks.length > 0) return words.say("work.next.first", { name, names: sayNames(words, blocks) });
  if (reason === "slipped" && drillFor(source, item) === null) return words.say("work.next.slipped", { name });
  return reason === "unmeasured"
    ? words.say("work.next.unmeasured", { name })
    : words.say(`season.next.${reason}`, { name });
}

function standingFacts(words: Words, { fundamental, summary }: WorkTrack): readonly Fact[] {
  const level = summary?.verdict.levelNow ?? null;
  if (summary === null || level === null) return [];
  const { position } = summary.verdict;
  return [
    { name: words.say("fact.level-now"), value: sayLevel(words, level, fundamental.unit), note: "" },
    {
      name: words.say("fact.band"),
      value: sayPosition(words, position, level, summary.goal, fundamental.unit),
      note: sayBand(words, summary.goal, fundamental.unit),
    },
  ];
}

/** The drill that runs for it; else the last one that was given for it. */
function drillFor(source: SeasonSource, { fundamental }: WorkTrack) {
  const given = source.drills.filter(
    ({ fundamentalId, start }) => fundamentalId === fundamental.id && start <= source.today,
  );
  const running = given.findLast(({ end }) => end === null || end >= source.today);
  const drill = running ?? given.at(-1);
  return drill === undefined ? null : { drill, runs: running === undefined ? ("no" as const) : ("yes" as const) };
}

function drillFacts(words: Words, source: SeasonSource, item: WorkTrack): readonly Fact[] {
  const found = drillFor(source, item);
  if (found === null) return [];
  const { drill, runs } = found;
  const dose = sayDose(words, drill);
  return [
    {
      name: words.say(runs === "no" ? "work.fact.drill-before" : "work.fact.drill"),
      value: drill.drill,
      note:
        drill.end === null
          ? words.say("season.drills.since", { day: sayDay(words, drill.start, "short") })
          : sayStretch(words, drill.start, drill.end),
    },
    ...(runs === "no" || dose === "" ? [] : [{ name: words.say("season.drills.dose"), value: dose, note: "" }]),
  ];
}

function awayNote(words: Words, { sessions, today }: SeasonSource): readonly string[] {
  const last = sessions.at(-1)?.day;
  return last !== undefined && isAway(last, today)
    ? [words.say("work.away", { day: sayDay(words, last, "short") })]
    : [];
}

/** Who chose it, when and why, and what the order of work would have said. */
function chosenNotes(words: Words, { choice }: SeasonSource, { inHand, rule }: Priority<WorkTrack>): readonly string[] {
  if (choice === null || inHand?.reason !== "chosen") return [];
  const by = { who: choice.who, day: sayDay(words, choice.day, "day-year"), why: choice.reason };
  if (rule === null) return [words.say("work.chosen.by", by), words.say("work.chosen.rule-nothing")];
  return [
    words.say("work.chosen.by", by),
    words.say(rule.item === inHand.item ? "work.chosen.rule-same" : "work.chosen.rule", {
      name: nameOf(words, rule.item),
      reason: rule.reason,
    }),
  ];
}

function sayAlteration(words: Words, { next }: Work<WorkTrack>, alteration: Alteration<WorkTrack>): string {
  if (alteration.kind === "pain" || alteration.kind === "chosen-anew")
    return words.say(`work.alters.${alteration.kind}`);
  if (alteration.kind !== "comes-inside")
    return words.say(`work.alters.${alteration.kind}`, { names: sayNames(words, alteration.items) });
  const { fundamental, summary } = alteration.item;
  return words.say("work.alters.comes-inside", {
    name: nameOf(words, alteration.item),
    band: summary === null ? "" : sayBand(words, summary.goal, fundamental.unit),
    hasBand: summary === null || (summary.goal.low === null && summary.goal.high === null) ? "no" : "yes",
    next: next === null ? "" : nameOf(words, next),
    hasNext: next === null ? "no" : "yes",
  });
}
