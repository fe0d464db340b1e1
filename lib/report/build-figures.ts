import type { Unit } from "@/lib/domain/fundamental";
import { SINCE_EVER } from "@/lib/domain/goal-band";
import type { LookVerdict, TrackVerdict } from "@/lib/domain/track-verdict";
import { POLICY } from "@/lib/verdict/policy";
import type { ApartReason, TrackHistory } from "@/lib/verdict/track-history";
import type { Words } from "@/lib/words/catalogue";
import { sayDay } from "@/lib/words/day-words";
import { sayBand, sayFits, sayNumber, timesOf, withUnit } from "@/lib/words/number-words";
import { sayApart } from "@/lib/words/say-apart";
import type { TableModel } from "./basic-model";
import type { FiguresPart, FiguresSource } from "./figures-model";
import type { FundamentalSource } from "./fundamental-source";
import { provedAlone, saidVerdict } from "./said";

/** A logarithm as what it stands for: “45 times (ln 3.81)”. */
function sayTimes(words: Words, logBayesFactor: number): string {
  // Before the first look nothing speaks for either.
  if (logBayesFactor === 0) return words.say("figures.alike");
  const { times, over } = timesOf(words, logBayesFactor);
  return words.say("figures.times", {
    times,
    over,
    way: logBayesFactor >= 0 ? "change" : "none",
    log: sayNumber(words, logBayesFactor, 2),
  });
}

function sayHundred(words: Words, share: number): string {
  return sayNumber(words, Math.round(share * 1000) / 10, 1);
}

function saySd(words: Words, sd: number | null, unit: Unit): string {
  return sd === null ? words.say("figures.none") : withUnit(words, sayNumber(words, sd, 2), unit);
}

function sayNoise(words: Words, { noise }: FiguresSource): string {
  return noise
    .map(({ name, kind, learnedFrom, learnedUpTo }) =>
      words.say(`figures.noise.${kind}`, {
        name,
        tracks: learnedFrom,
        day: learnedUpTo === "" ? "" : sayDay(words, learnedUpTo, "full"),
      }),
    )
    .join("; ");
}

/** Sessions that no verdict rests on, by why: “set aside: rain (6 Jun)”. */
function sayApartSessions(words: Words, history: TrackHistory): string {
  const byWhy = new Map<string, string[]>();
  for (const { apart, session } of history.sessions) {
    if (apart === null) continue;
    const why = sayApart(words, apart as ApartReason);
    byWhy.set(why, [...(byWhy.get(why) ?? []), sayDay(words, session.day, "short")]);
  }
  if (byWhy.size === 0) return words.say("figures.none");
  return [...byWhy].map(([why, days]) => words.say("figures.apart", { why, days: days.join(", ") })).join("; ");
}

/** The looks with what the list says of each, the latest first. */
function looksTable(words: Words, looks: readonly LookVerdict[]): TableModel | null {
  if (looks.length === 0) return null;
  return {
    caption: words.say("figures.looks.caption"),
    columns: (["day", "fits", "up", "said"] as const).map((name) => ({
      label: words.say(`figures.looks.${name}`),
      align: name === "day" || name === "said" ? "start" : "end",
    })),
    rows: [...looks].reverse().map((look) => {
      const proved = look.verdict === "gain" || look.verdict === "slip";
      return {
        cells: [
          sayDay(words, look.date, "day-year"),
          sayTimes(words, look.logBayesFactor),
          look.logBayesFactor === 0 ? "" : sayNumber(words, Math.round(look.directionUp * 100), 0),
          words.say(proved && look.listed !== true ? "figures.looks.alone" : `verdict.${look.verdict}`),
        ],
        tone: "plain" as const,
      };
    }),
  };
}

/** The way to the verdict in sentences: which films, which noise, how much evidence, what it had to reach, the list. */
function steps(words: Words, history: TrackHistory, verdict: TrackVerdict, from: FiguresSource): readonly string[] {
  const used = history.sessions.filter((entry) => entry.apart === null);
  const last = used.at(-1)?.session.day;
  const { logBayesFactor, limit, noChange, priorChange } = verdict.evidence;
  const list = [
    words.say("figures.step.films", {
      used: used.length,
      swings: used.reduce((sum, entry) => sum + entry.swings.length, 0),
      apart: history.sessions.length - used.length,
      day: last === undefined ? "" : sayDay(words, last, "full"),
    }),
    words.say("figures.step.noise", { models: from.noise.length, model: verdict.noiseModel }),
  ];
  if (used.length < POLICY.firstLook)
    return [...list, words.say("figures.step.first-look", { have: used.length, need: POLICY.firstLook })];
  list.push(
    sayFits(words, logBayesFactor),
    words.say("figures.step.limit", {
      limit: timesOf(words, limit).times,
      reaches: logBayesFactor >= limit ? "yes" : "no",
    }),
    words.say("figures.step.prior", { prior: sayHundred(words, priorChange), nothing: sayHundred(words, noChange) }),
  );
  const said = saidVerdict(verdict);
  const end = provedAlone(verdict) === "alone" ? "alone" : verdict.change !== null ? "listed" : said;
  return [
    ...list,
    words.say(`figures.step.said.${end === "listed" || end === "alone" || end === "steady" ? end : "open"}`),
  ];
}

/** Every number that went into the verdict of one fundamental; null: nothing is known of what it was judged with. */
export function buildFigures(words: Words, source: FundamentalSource): FiguresPart | null {
  const { history, verdict, figures } = source;
  if (!figures) return null;
  const { unit } = history.fundamental;
  const { evidence, errorBudget, smallestWorthwhile, unitSd } = verdict;
  const used = history.sessions.filter((entry) => entry.apart === null);
  const row = (key: string, value: string): TableModel["rows"][number] => ({
    cells: [words.say(`figures.row.${key}`), value],
    tone: "plain",
  });
  const address = `/api/students/${source.student.id}/${history.fundamental.id}/judged?club=${history.clubGroup}`;
  const goalFrom = history.goals.at(-1)?.from;
  return {
    steps: steps(words, history, verdict, figures),
    figures: {
      caption: words.say("figures.caption"),
      columns: [
        { label: words.say("figures.figure"), align: "start" },
        { label: words.say("figures.value"), align: "start" },
      ],
      rows: [
        row("sessions", words.say("figures.sessions", { used: used.length, all: history.sessions.length })),
        row("apart", sayApartSessions(words, history)),
        row("noise", sayNoise(words, figures)),
        row("fits", sayTimes(words, evidence.logBayesFactor)),
        row("limit", sayTimes(words, evidence.limit)),
        row("up", words.say("figures.of-100", { share: sayHundred(words, evidence.directionUp) })),
        row("prior", words.say("figures.of-100", { share: sayHundred(words, evidence.priorChange) })),
        row("no-change", words.say("figures.of-100", { share: sayHundred(words, evidence.noChange) })),
        row("list", words.say(`figures.list.${verdict.listed === true ? "yes" : "no"}`)),
        row("worthwhile", saySd(words, smallestWorthwhile, unit)),
        row("unit-sd", saySd(words, unitSd, unit)),
        row("swing-sd", saySd(words, errorBudget?.swing ?? null, unit)),
        row("day-sd", saySd(words, errorBudget?.day ?? null, unit)),
        row("camera-sd", saySd(words, errorBudget?.camera ?? null, unit)),
        row(
          "reader",
          words.say("figures.reader", {
            sd: saySd(words, figures.reader.readerSd, unit),
            offset: saySd(words, figures.reader.offsetSd, unit),
            measured: figures.reader.number === null ? "no" : "yes",
            number: figures.reader.number ?? 0,
          }),
        ),
        row(
          "goal",
          words.say("figures.goal", {
            band: sayBand(words, history.goal, unit),
            dated: goalFrom !== undefined && goalFrom > SINCE_EVER ? "yes" : "no",
            day: goalFrom !== undefined && goalFrom > SINCE_EVER ? sayDay(words, goalFrom, "full") : "",
          }),
        ),
        row("policy", verdict.policyVersion),
      ],
    },
    looks: looksTable(words, verdict.looks ?? []),
    check: words.say("figures.check"),
    links: (["verdict", "tracks", "noise"] as const).map((part) => ({
      href: `${address}&part=${part}`,
      label: words.say(`figures.link.${part}`),
    })),
  };
}
