import type { FilmCare } from "@/lib/domain/film-plan";
import { HANDS } from "@/lib/domain/handedness";
import { KEEP_THRESHOLDS } from "@/lib/verdict/keep-thresholds";
import type { PlannedFundamental } from "@/lib/verdict/plan-session";
import { PLAN_THRESHOLDS, RESTING } from "@/lib/verdict/plan-thresholds";
import type { Words } from "@/lib/words/catalogue";
import { sayDay } from "@/lib/words/day-words";
import { langOf } from "@/lib/words/family-words";
import { sayNumber } from "@/lib/words/number-words";
import { sayFundamental } from "@/lib/words/say-fundamental";
import { sayPosition } from "@/lib/words/say-verdict";
import { askVideos } from "./ask-videos";
import { ASK_LETTERS, type AskText, buildAskText } from "./build-ask-text";
import { buildFilmingCard } from "./build-filming-card";
import { toldPart } from "./build-told-plans";
import { cautionsFor } from "./cautions";
import { planCare } from "./plan-care";
import type { CopyText, PlanPage, PlanSheet } from "./plan-model";
import type { PlanSource } from "./plan-source";
import { sayPlanTells } from "./say-plan-tells";

const whole = (words: Words, value: number): string => sayNumber(words, Math.round(value), 0);

/** Minutes of reading, rounded up: a plan that promises too little time isn't kept. */
function minutesOf({ plan }: PlanSource): number {
  return Math.ceil(plan.seconds / 60);
}

function readItem(words: Words, source: PlanSource, item: PlannedFundamental): PlanPage["read"]["items"][number] {
  const { fundamental, role, swings, track } = item;
  const view = words.say(`view.${fundamental.view}`);
  const named = (id: string): string => {
    const found = source.fundamentals.find((each) => each.id === id);
    return found ? sayFundamental(words, found) : id;
  };
  const [first, second] = fundamental.derivedFrom ?? [];
  const position = track
    ? sayPosition(words, track.verdict.position, track.verdict.levelNow, track.history.goal, fundamental.unit)
    : "";
  return {
    name: sayFundamental(words, fundamental),
    href: track ? `/students/${source.student.id}/${fundamental.id}?club=${source.clubGroup}` : null,
    facts:
      first === undefined || second === undefined
        ? words.say("plan.read.item", { swings, view, checkpoint: words.say(`checkpoint.${fundamental.checkpoint}`) })
        : words.say("plan.read.derived", {
            ...{ swings, view },
            parts: words.say("plan.read.parts", { first: named(first), second: named(second) }),
          }),
    why: words.say(`plan.role.${role}${role === "in-hand" && track === null ? ".unknown" : ""}`, { position }),
    tells: sayPlanTells(words, item),
  };
}

function filmPart(words: Words, source: PlanSource): PlanPage["film"] {
  const { plan, student, hold } = source;
  const [first, second] = plan.views.map((view) => words.say(`ask.view.${view}`));
  if (first === undefined) return null;
  const cares = planCare(plan.items).map(({ care, fundamentals }) =>
    words.say(`plan.film.care.${care}`, { names: fundamentals.map((each) => sayFundamental(words, each)).join(", ") }),
  );
  const hand = HANDS.find((each) => each === student.hand) ?? "right";
  return {
    margin: words.say("plan.margin.film"),
    heading: words.say("plan.film.heading", {
      views: plan.views.length,
      which: second === undefined ? first : words.say("plan.film.both", { first, second }),
    }),
    lines: cares.length === 0 ? [words.say("plan.film.no-care")] : cares,
    links: [
      ...plan.views.map((view) => ({
        href: `/filming?view=${view}&hand=${hand}&for=${student.id}`,
        label: words.say("plan.film.card", { view: words.say(`ask.view.${view}`) }),
      })),
      ...(hold === "no"
        ? [
            { href: `/students/${student.id}/sessions/new`, label: words.say("plan.film.enter") },
            { href: `/students/${student.id}/tell`, label: words.say("tell") },
          ]
        : []),
    ],
  };
}

function leftPart(words: Words, { plan }: PlanSource): PlanPage["left"] {
  const { planMinutes } = PLAN_THRESHOLDS;
  const { restEvery } = KEEP_THRESHOLDS;
  const [sooner, later] = RESTING.noticed;
  // What is left out for one reason is said once; of a view that isn't sent, once a view.
  const groups = new Map<string, (typeof plan.leftOut)[number][]>();
  for (const each of plan.leftOut) {
    const key = each.why === "not-sent" ? `${each.why} ${each.fundamental.view}` : each.why;
    groups.set(key, [...(groups.get(key) ?? []), each]);
  }
  const lines = [...groups.values()].flatMap((group) => {
    const [first] = group;
    if (first === undefined) return [];
    return words.say(`plan.left.${first.why}`, {
      count: group.length,
      names: group.map(({ fundamental }) => sayFundamental(words, fundamental)).join(", "),
      view: words.say(`ask.view.${first.fundamental.view}`),
      minutes: planMinutes.value,
      ...{ first: whole(words, 100 * sooner.share), second: whole(words, 100 * later.share) },
      ...{ sooner: sooner.sessions, later: later.sessions },
      ...{ films: sooner.sessions * restEvery.value, more: later.sessions * restEvery.value },
    });
  });
  if (plan.fewerSwings !== null) lines.push(words.say("plan.left.swings", { swings: plan.fewerSwings }));
  return lines.length === 0
    ? null
    : { margin: words.say("plan.margin.left"), heading: words.say("plan.left.heading"), lines };
}

/** The message for the family, and the most swings that each video needs. */
function asked(source: PlanSource, care: readonly FilmCare[]): AskText {
  const { family, plan, student, club, dueOn } = source;
  return buildAskText(family, {
    ...{ kind: "video", alias: student.alias, hand: student.hand, club, dueOn, care },
    videos: askVideos(
      plan.views,
      plan.items.map(({ fundamental, swings }) => ({ view: fundamental.view, swings })),
    ),
    fundamentals: plan.items.map(({ fundamental }) => fundamental),
  });
}

/** A text that is copied, with the words of its button. @param family in which the text is, where that may be another language */
export function copyText(words: Words, text: string, family = words): CopyText {
  return {
    lang: langOf(family),
    label: words.say("plan.send.label", { letters: text.length }),
    text,
    copy: { label: words.say("plan.copy"), done: words.say("plan.copy.done"), failed: words.say("plan.copy.failed") },
  };
}

function sendPart(words: Words, { text, leftOut }: AskText, family: Words): PlanPage["send"] {
  const what = leftOut.map((each) => words.say(`plan.send.short.${each}`)).join(", ");
  return {
    margin: words.say("plan.margin.send"),
    explains: words.say("plan.send.explains"),
    note: leftOut.length === 0 ? "" : words.say("plan.send.short", { limit: ASK_LETTERS, what }),
    message: copyText(words, text, family),
  };
}

function sheetPart(words: Words, source: PlanSource, care: readonly FilmCare[], text: string): PlanSheet {
  const { family, plan, student, dueOn } = source;
  return {
    margin: words.say("plan.margin.sheet"),
    explains: words.say("plan.sheet.explains"),
    lang: langOf(family),
    heading: family.say("plan.sheet.heading", { alias: student.alias, day: sayDay(family, dueOn, "full") }),
    lines: [text],
    cards: plan.views.map((view) => {
      const card = buildFilmingCard(family, view, student.hand);
      return {
        heading: card.place.heading,
        plan: card.place.plan,
        steps: card.place.steps,
        checks: card.checks.items,
      };
    }),
    care: [...care.map((each) => family.say(`ask.care.${each}`)), family.say("card.care.space")],
  };
}

function awaitedPart(words: Words, { answers, today, dayOf, student, shown, hold }: PlanSource): PlanPage["awaited"] {
  const { awaited } = answers;
  if (awaited === null) return null;
  const { remindedAt, madeOn, dueOn } = awaited;
  const late = dueOn < today;
  const key = !late ? "plan.awaited" : remindedAt === null ? "plan.awaited.late" : "plan.awaited.reminded";
  const said = words.say(key, {
    day: sayDay(words, madeOn, "short"),
    due: sayDay(words, dueOn, "with-weekday"),
    reminded: remindedAt === null ? "" : sayDay(words, dayOf(remindedAt), "short"),
  });
  return {
    text: awaited.body === null ? `${said} ${words.say("plan.unreadable")}` : said,
    remind:
      late && hold === "no"
        ? { label: words.say("due.reminded"), hidden: { studentId: student.id, planId: awaited.id, ...shown } }
        : null,
  };
}

/** The page of a student's next film: what is read and why, how it is filmed, what is left out, and the message for the family. */
export function buildPlanPage(words: Words, source: PlanSource): PlanPage {
  const { plan, student, hold } = source;
  const minutes = minutesOf(source);
  const { planReadingSeconds, planSwingSeconds, planViewSeconds } = PLAN_THRESHOLDS;
  const care = planCare(plan.items).map((each) => each.care);
  const isSent = hold === "no" && plan.items.length > 0;
  const text = isSent ? asked(source, care) : null;
  return {
    documentTitle: words.say("document-title", { page: words.say("plan") }),
    title:
      hold === "paused"
        ? words.say("plan.title.hold", { alias: student.alias })
        : plan.items.length === 0
          ? words.say("plan.title.none", { alias: student.alias })
          : words.say("plan.title", { alias: student.alias, swings: plan.swings, minutes }),
    lede: words.say("plan.lede"),
    back: { href: `/students/${student.id}`, label: words.say("plan.back", { alias: student.alias }) },
    notices: [
      ...(source.done === "told" ? [words.say("plan.told.done")] : []),
      ...(hold === "paused" ? [words.say("plan.stopped")] : []),
      ...source.notices,
    ],
    clubGroups: source.clubs.length > 1 ? { label: words.say("club.choose"), links: source.clubs } : null,
    awaited: awaitedPart(words, source),
    read: {
      margin: words.say("plan.margin.read"),
      explains: words.say("plan.read.explains", {
        reading: planReadingSeconds.value,
        swing: planSwingSeconds.value,
        view: planViewSeconds.value,
      }),
      heading: words.say("plan.read.heading", { count: plan.items.length, minutes }),
      items: plan.items.map((item) => readItem(words, source, item)),
    },
    film: filmPart(words, source),
    left: leftPart(words, source),
    cautions: {
      margin: words.say("report.care.margin"),
      heading: words.say("caution.heading"),
      lines: cautionsFor(words, student, source.today),
    },
    send: text === null ? null : sendPart(words, text, source.family),
    sheet: text === null ? null : sheetPart(words, source, care, text.text),
    told: toldPart(words, source),
  };
}
