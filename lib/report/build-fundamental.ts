import type { TrackVerdict } from "@/lib/domain/track-verdict";
import { isLessSure } from "@/lib/verdict/is-less-sure";
import type { TrackHistory } from "@/lib/verdict/track-history";
import type { Words } from "@/lib/words/catalogue";
import { sayDay } from "@/lib/words/day-words";
import { sayBand, sayFits, sayLevel, sayLimit, sayNumber, sayShare, saySure } from "@/lib/words/number-words";
import { sayDefinition, sayFundamental, sayPlus } from "@/lib/words/say-fundamental";
import { sayHappened, sayPosition, saySize } from "@/lib/words/say-verdict";
import { isAway } from "./away-days";
import { buildAskPlan } from "./build-ask-plan";
import { buildBeforeAfter } from "./build-before-after";
import { buildClubsBeside } from "./build-clubs-beside";
import { buildDoubt } from "./build-doubt";
import { buildFigures } from "./build-figures";
import { buildNotices } from "./build-notices";
import { buildReach } from "./build-reach";
import { buildReachCurve } from "./build-reach-curve";
import { buildReadingsTable, buildSessionsTable } from "./build-readings-table";
import { buildSeasonChart } from "./build-season-chart";
import { buildSettle } from "./build-settle";
import { buildStays } from "./build-stays";
import { buildWatch } from "./build-watch";
import { cautionsFor } from "./cautions";
import { buildChartFiles } from "./chart-files";
import type { FiguresPart } from "./figures-model";
import type { FundamentalSource } from "./fundamental-source";
import type { Fact, FundamentalPage } from "./page-model";
import { provedAlone, saidGlyph, saidKey, saidVerdict } from "./said";
import { sayOwnedAnew, sayRuleOf } from "./say-owned";

/** The page of one fundamental of one student. */
export function buildFundamentalPage(words: Words, source: FundamentalSource): FundamentalPage {
  const { history, verdict, student } = source;
  const name = sayFundamental(words, history.fundamental);
  const glyph = saidGlyph(verdict);
  const watch = buildWatch(words, source);
  const curve = buildReachCurve(words, source);
  const stays = buildStays(words, source);
  const figures = buildFigures(words, source);
  const chart = buildSeasonChart(words, {
    history,
    verdict,
    drills: source.drills,
    events: source.events,
    practice: source.practice ?? [],
    curve,
    asOf: source.asOf,
    from: null,
  });
  const svg = `/api/students/${student.id}/${history.fundamental.id}/svg?club=${history.clubGroup}`;
  const margin = (part: string): string => words.say(`fundamental-page.margin.${part}`);
  return {
    title: words.say(`fundamental-page.title.${titleKey(verdict)}`, { alias: student.alias, name }),
    documentTitle: words.say("document-title", { page: name }),
    lede: words.say("fundamental-page.lede", {
      definition: sayDefinition(words, history.fundamental),
      club: source.clubName,
      plus: sayPlus(words, history.fundamental),
    }),
    back: { href: `/students/${student.id}`, label: words.say("fundamental-page.back", { alias: student.alias }) },
    verdict: {
      margin: margin("verdict"),
      glyph,
      word: words.say(saidKey(verdict)),
      heading: verdictSentence(words, source),
      position: positionSentence(words, source),
      facts: facts(words, source),
      listing: listingSentence(words, verdict),
      reach: buildReach(words, source),
      stays: stays?.sentence ?? "",
      watch: watch?.sentence ?? "",
      detail: [
        ...detail(words, verdict, figures),
        ...(stays?.detail ?? []),
        ...(watch?.detail ?? []),
        sayRuleOf(words, source),
      ],
      figures,
      detailLabel: words.say("fundamental-page.detail"),
      decides: { href: "/decides", label: words.say("decides.link") },
    },
    evidence: {
      margin: margin("evidence"),
      explains: [words.say("chart.explains"), ...(curve === null ? [] : [curve.explains])].join(" "),
      chart,
      table: buildSessionsTable(words, source, chart),
      leads: words.say("aside.leads"),
      links: [
        {
          href: `/api/students/${student.id}/${history.fundamental.id}/csv?club=${history.clubGroup}`,
          label: words.say("download.csv"),
        },
        {
          href: `/students/${student.id}/known?club=${history.clubGroup}&fundamental=${history.fundamental.id}`,
          label: words.say("history.known"),
        },
        {
          href: `/students/${student.id}/goals?fundamental=${history.fundamental.id}&club=${history.clubGroup}`,
          label: words.say("fundamental-page.goal"),
        },
      ],
      files: buildChartFiles(words, svg, history.fundamental.id),
    },
    beforeAfter: buildBeforeAfter(words, history, verdict),
    doubt: buildDoubt(words, source),
    clubsBeside: buildClubsBeside(words, source.beside ?? [], history.clubGroup),
    settle: settlePart(words, source),
    track: { studentId: student.id, fundamentalId: history.fundamental.id, clubGroup: history.clubGroup },
    readings: {
      margin: margin("readings"),
      heading: words.say("readings.heading", { sessions: history.sessions.length }),
      table: buildReadingsTable(words, source),
    },
    clubGroups: source.otherClubs.length > 1 ? { label: words.say("club.choose"), links: source.otherClubs } : null,
    cautions: cautionsFor(words, student, source.today),
    notices: buildNotices(words, source),
  };
}

function settlePart(words: Words, source: FundamentalSource): FundamentalPage["settle"] {
  const settle = buildSettle(words, source);
  return settle === null ? null : { ...settle, asked: buildAskPlan(words, source) };
}

/** Why a word isn't said though something points there, or is said though less points there now; empty: neither. */
function listingSentence(words: Words, verdict: TrackVerdict): string {
  if (provedAlone(verdict) === "alone") return words.say("listing.alone");
  if (verdict.change !== null && isLessSure(verdict))
    return words.say("listing.less-sure", { day: sayDay(words, verdict.change.provedOn, "full") });
  const { notToldApart } = verdict;
  if (notToldApart === null) return "";
  return words.say(`not-told-apart.${notToldApart.from}`, { day: sayDay(words, notToldApart.on, "full") });
}

function titleKey(verdict: TrackVerdict): string {
  if (verdict.evidence.logBayesFactor === 0 && verdict.trend === null) return "too-few";
  return saidGlyph(verdict);
}

/** The verdict in one sentence with its figures. */
export function verdictSentence(words: Words, source: Pick<FundamentalSource, "history" | "verdict">): string {
  const { history, verdict } = source;
  const unit = history.fundamental.unit;
  const change = verdict.change;
  const glyph = saidGlyph(verdict);
  if (change !== null && glyph !== "open")
    return words.say(`sentence.${glyph}`, {
      size: saySize(words, change, unit),
      happened: sayHappened(words, change),
    });
  if (saidVerdict(verdict) === "steady" && verdict.smallestWorthwhile !== null)
    return words.say("sentence.steady", { limit: sayLimit(words, verdict.smallestWorthwhile, unit) });
  const used = history.sessions.filter((entry) => entry.apart === null).length;
  if (used < 4) return words.say("sentence.too-few", { have: used, need: 4 });
  return words.say("sentence.open", { sessions: used });
}

function positionSentence(words: Words, source: FundamentalSource): string {
  const { history, verdict } = source;
  const { unit } = history.fundamental;
  if (verdict.levelNow === null) return words.say("position.sentence.unknown");
  return words.say(isAway(lastUsedDay(history), source.today) ? "position.sentence.away" : "position.sentence", {
    level: sayLevel(words, verdict.levelNow, unit),
    position: sayPosition(words, verdict.position, verdict.levelNow, history.goal, unit),
    band: sayBand(words, history.goal, unit),
    day: sayDay(words, lastUsedDay(history) ?? source.today, "full"),
  });
}

function lastUsedDay(history: TrackHistory): string | undefined {
  return history.sessions.filter((entry) => entry.apart === null).at(-1)?.session.day;
}

function facts(words: Words, source: FundamentalSource): readonly Fact[] {
  const { history, verdict } = source;
  const { unit } = history.fundamental;
  const list: Fact[] = [];
  const watch = buildWatch(words, source);
  const add = (key: string, value: string, note = ""): void => {
    list.push({ name: words.say(`fact.${key}`), value, note });
  };
  if (verdict.change !== null) {
    const alone = provedAlone(verdict) === "alone" ? words.say("fact.for-this-track") : "";
    add("size", saySize(words, verdict.change, unit), alone);
    add("when", sayHappened(words, verdict.change), alone);
    add("sure", saySure(words, verdict.evidence.noChange), alone);
  } else if (verdict.trend !== null) {
    add("sure-open", saySure(words, verdict.evidence.noChange));
    if (verdict.changeBelow !== null) add("below", sayLimit(words, verdict.changeBelow, unit));
  }
  const last = lastUsedDay(history);
  const away = isAway(last, source.today);
  if (verdict.levelNow !== null)
    list.push({
      name:
        away && last ? words.say("fact.level-on", { day: sayDay(words, last, "short") }) : words.say("fact.level-now"),
      value: sayLevel(words, verdict.levelNow, unit),
      note: "",
    });
  add(
    "band",
    sayPosition(words, verdict.position, verdict.levelNow, history.goal, unit),
    sayBand(words, history.goal, unit),
  );
  if (verdict.bandShare !== null) add("share", sayShare(words, verdict.bandShare), rawCount(words, history));
  if (history.goal.low !== null || history.goal.high !== null)
    add(
      "owned",
      verdict.ownedSince === null
        ? words.say("owned.no")
        : words.say(away ? "owned.to-be-checked" : "owned.since", { day: sayDay(words, verdict.ownedSince, "short") }),
      watch?.short ?? sayOwnedAnew(words, history, verdict),
    );
  return list;
}

/** A raw count beside the model's share, with its span and without an interval. */
function rawCount(words: Words, history: TrackHistory): string {
  const used = history.sessions.filter((entry) => entry.apart === null);
  const swings = used
    .flatMap((entry) => entry.swings.map((swing) => ({ day: entry.session.day, value: swing.value })))
    .slice(-25);
  const first = swings[0];
  if (!first) return "";
  const { low, high } = history.goal;
  const inside = swings.filter(
    (swing) => (low === null || swing.value >= low) && (high === null || swing.value <= high),
  ).length;
  return words.say("share.raw", { inside, swings: swings.length, day: sayDay(words, first.day, "short") });
}

/** What is said beside the figures; where they aren't told, they are said here. */
function detail(words: Words, verdict: TrackVerdict, figures: FiguresPart | null): readonly string[] {
  if (verdict.trend === null) return [];
  if (figures !== null) return [words.say("detail.promise")];
  return [
    sayFits(words, verdict.evidence.logBayesFactor),
    words.say("detail.prior", { share: sayNumber(words, Math.round(verdict.evidence.priorChange * 100), 0) }),
    words.say("detail.promise"),
    words.say("detail.model", { model: verdict.noiseModel, policy: verdict.policyVersion }),
  ];
}
