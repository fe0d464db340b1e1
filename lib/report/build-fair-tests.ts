import { dayFromNumber, dayNumber } from "@/lib/domain/calendar-day";
import type { FairAllocation, FairFigures, FairStep, FairTest } from "@/lib/domain/fair-test";
import type { Fundamental } from "@/lib/domain/fundamental";
import { fairTestState } from "@/lib/drills/fair-test-state";
import { FAIR_TEST_THRESHOLDS } from "@/lib/drills/fair-test-thresholds";
import { COMPARE_THRESHOLDS } from "@/lib/verdict/compare-thresholds";
import type { Words } from "@/lib/words/catalogue";
import { sayDay } from "@/lib/words/day-words";
import { decimalsFor, sayNumber, saySigned, withUnit } from "@/lib/words/number-words";
import { saySignedRange } from "@/lib/words/say-comparison";
import { sayFundamental } from "@/lib/words/say-fundamental";
import type { FairTestPart, FairTestsPage, LotPart } from "./fair-tests-model";

/** A test with what its part rests on. */
export interface FairTestSource {
  readonly test: FairTest;
  readonly draws: readonly FairAllocation[];
  readonly steps: readonly FairStep[];
  readonly drills: readonly [string, string];
  /** Null: it isn't measured here any more. */
  readonly fundamental: Fundamental | null;
}

/** What the page rests on. */
export interface FairTestsSource {
  readonly tests: readonly FairTestSource[];
  readonly today: string;
  /** What was just done, a word of `fair.done.…`; null: nothing. */
  readonly done: string | null;
}

function sized(words: Words, { test, fundamental }: FairTestSource, value: number): string {
  const unit = fundamental?.unit ?? "deg";
  return withUnit(words, saySigned(words, value, decimalsFor(test.least)), unit);
}

/** What a look says, in one sentence; under five students without a figure. */
function sayFigures(words: Words, source: FairTestSource, figures: FairFigures): string {
  const { drills, fundamental, test } = source;
  const [first, second] = drills;
  const unit = fundamental?.unit ?? "deg";
  const decimals = decimalsFor(test.least);
  const students = figures.have[0] + figures.have[1];
  if (students < COMPARE_THRESHOLDS.estimated.value) return words.say("fair.says.few", { students });
  // Told from the better drill: a student reads a gain, not a sign.
  const turn = figures.says === "first" ? -1 : 1;
  const ends = [figures.low, figures.high].map((end) => (end === null ? null : turn * end));
  const [low, high] = turn === 1 ? ends : [ends[1], ends[0]];
  const between =
    low === null || low === undefined || high === null || high === undefined
      ? "none"
      : saySignedRange(words, { unit }, low, high, decimals);
  return words.say(`fair.says.${figures.says}`, {
    ...{ first, second, students, between },
    size: sized(words, source, turn * figures.estimate),
    least: withUnit(words, sayNumber(words, test.least, decimals), unit),
    rare: sayNumber(words, Math.max(1, Math.round(figures.p * 1000)), 0),
  });
}

function lookLine(words: Words, source: FairTestSource, step: FairStep): string {
  const day = sayDay(words, step.day, "day-year");
  if (step.figures === null) return words.say("fair.ended", { day, who: step.who });
  const { fraction, missing } = step.figures;
  const share = sayNumber(words, Math.round(fraction * 100), 0);
  return words.say("fair.look", {
    number: step.number,
    day,
    share,
    missing,
    said: sayFigures(words, source, step.figures),
  });
}

function nextSaid(words: Words, source: FairTestSource, today: string): string {
  const { test, draws, steps } = source;
  const { next, complete } = fairTestState(test, draws, steps, today);
  if (next === null) return words.say("fair.next.none");
  const waits = draws.toSorted((a, b) => (a.day < b.day ? -1 : 1))[next.needs - 1]?.day;
  const day = waits === undefined ? "none" : sayDay(words, dayFromNumber(dayNumber(waits) + test.days + 1), "day-year");
  return words.say(next.due === "yes" ? "fair.next.due" : "fair.next.waits", {
    ...{ number: next.number, needs: next.needs, complete: complete.length, day },
  });
}

function testPart(words: Words, source: FairTestSource, today: string): FairTestPart {
  const { test, draws, steps, drills, fundamental } = source;
  const state = fairTestState(test, draws, steps, today);
  const [first, second] = drills;
  const last = steps.findLast(({ figures }) => figures !== null)?.figures ?? null;
  const name = fundamental === null ? test.fundamentalId : sayFundamental(words, fundamental);
  const hidden = (wish: string) => ({ testId: test.id, wish });
  return {
    id: test.id,
    margin: words.say(`fair.margin.${state.running}`),
    explains: words.say("fair.planned", { day: sayDay(words, test.day, "day-year"), who: test.who }),
    heading: words.say("fair.heading", { first, second, name }),
    said: last === null ? words.say("fair.says.none") : sayFigures(words, source, last),
    facts: [
      {
        name: words.say("fair.drawn"),
        value: words.say("fair.drawn.of", { drawn: state.drawn, students: test.students }),
        note: words.say("fair.drawn.note"),
      },
      { name: words.say("fair.next"), value: nextSaid(words, source, today), note: "" },
      {
        name: words.say("fair.sought"),
        value: withUnit(words, sayNumber(words, test.least, decimalsFor(test.least)), fundamental?.unit ?? "deg"),
        note: words.say("fair.sought.note", {
          power: sayNumber(words, 100 * FAIR_TEST_THRESHOLDS.power.value, 0),
          days: test.days,
          looks: test.looks,
        }),
      },
    ],
    looks: steps.map((step) => lookLine(words, source, step)),
    presses:
      state.running === "no"
        ? []
        : [
            ...(state.next?.due === "yes"
              ? [{ label: words.say("fair.press.look", { number: state.next.number }), hidden: hidden("look") }]
              : []),
            { label: words.say("fair.press.end", { first, second }), hidden: hidden("end") },
          ],
  };
}

/** The page of an academy's tests by the lot. */
export function buildFairTests(words: Words, { tests, today, done }: FairTestsSource): FairTestsPage {
  const isRunning = (source: FairTestSource): boolean =>
    fairTestState(source.test, source.draws, source.steps, today).running === "yes";
  const ordered = [...tests.filter(isRunning), ...tests.filter((each) => !isRunning(each))];
  const notice = `fair.done.${done ?? ""}`;
  return {
    documentTitle: words.say("document-title", { page: words.say("fair") }),
    title: words.say("fair.title", { running: tests.filter(isRunning).length }),
    lede: words.say("fair.lede"),
    back: { href: "/drills", label: words.say("compared.link.open") },
    notices: words.has(notice) ? [words.say(notice)] : [],
    tests: ordered.map((source) => testPart(words, source, today)),
    method: {
      margin: words.say("fair.margin.method"),
      heading: words.say("fair.method.heading"),
      lines: [
        words.say("fair.method.lot"),
        words.say("fair.method.looks", { level: sayNumber(words, 100 * FAIR_TEST_THRESHOLDS.level.value, 0) }),
        words.say("fair.method.counts"),
        words.say("fair.method.care"),
      ],
    },
  };
}

/** The lot on the page that gives a drill. @param draw null: it may be drawn */
export function buildLotPart(
  words: Words,
  { test, draws, drills, fundamental }: Omit<FairTestSource, "steps">,
  draw: { readonly drill: string; readonly day: string; readonly studentId: string } | { readonly studentId: string },
): LotPart {
  const [first, second] = drills;
  const name = fundamental === null ? test.fundamentalId : sayFundamental(words, fundamental);
  const { studentId } = draw;
  if ("drill" in draw)
    return {
      margin: words.say("fair.lot"),
      heading: words.say("fair.lot.drawn", { drill: draw.drill }),
      lines: [words.say("fair.lot.drawn.text", { day: sayDay(words, draw.day, "day-year"), name })],
      press: null,
    };
  return {
    margin: words.say("fair.lot"),
    heading: words.say("fair.lot.heading", { first, second, name }),
    lines: [words.say("fair.lot.text", { drawn: draws.length, students: test.students })],
    press: { label: words.say("fair.lot.press"), hidden: { studentId, testId: test.id } },
  };
}
