import { dayNumber } from "@/lib/domain/calendar-day";
import type { Words } from "@/lib/words/catalogue";
import { sayDay, sayStretch } from "@/lib/words/day-words";
import { saySure } from "@/lib/words/number-words";
import { sayClubGroup } from "@/lib/words/say-club";
import { sayDose } from "@/lib/words/say-dose";
import { sayDrillCounts } from "@/lib/words/say-drill-practice";
import { sayFundamental } from "@/lib/words/say-fundamental";
import { saySessionPhone } from "./build-fingerprint";
import { saySettleCell } from "./build-settle";
import type { ChartRibbon } from "./chart-model";
import type { SeasonPage } from "./page-model";
import { saidVerdict } from "./said";
import type { SeasonSource, SeasonTrack } from "./season-source";

function sayPractised(words: Words, { practised }: SeasonSource, drillId: string): string {
  const counted = practised?.get(drillId);
  return counted === undefined ? "" : sayDrillCounts(words, counted);
}

/** The drills of the season with practice asked and logged; null without any. */
export function drillTable(words: Words, source: SeasonSource): SeasonPage["drills"] {
  if (source.drills.length === 0) return null;
  return {
    caption: words.say("season.drills"),
    columns: ["season.drills.drill", "season.drills.for", "season.drills.days", "season.drills.dose"]
      .concat("drill.fact.practice")
      .map((key) => ({ label: words.say(key), align: "start" as const })),
    rows: source.drills.map((drill) => ({
      cells: [
        drill.drill,
        source.tracks.find((track) => track.history.fundamental.id === drill.fundamentalId)
          ? sayFundamental(
              words,
              (source.tracks.find((track) => track.history.fundamental.id === drill.fundamentalId) as SeasonTrack)
                .history.fundamental,
            )
          : words.say("season.drills.other"),
        drill.end === null
          ? words.say("season.drills.since", { day: sayDay(words, drill.start, "short") })
          : sayStretch(words, drill.start, drill.end),
        sayDose(words, drill),
        sayPractised(words, source, drill.id),
      ],
      tone: "plain" as const,
    })),
  };
}

/** The drills on the time axis of the season, from its first session on. */
export function drillRibbons(source: SeasonSource, first: string): readonly ChartRibbon[] {
  return source.drills
    .filter((drill) => drill.start <= source.asOf && (drill.end ?? source.asOf) >= first)
    .map((drill) => ({
      from: Math.max(dayNumber(first), dayNumber(drill.start)),
      to: Math.min(dayNumber(source.asOf), dayNumber(drill.end ?? source.asOf)),
      label: drill.drill,
    }));
}

/** What would settle the open questions; null without any. */
export function seasonSettle(words: Words, tracks: readonly SeasonTrack[]): SeasonPage["settle"] {
  const open = tracks.filter(({ verdict }) => saidVerdict(verdict) === "open" && verdict.settle !== null);
  if (open.length === 0) return null;
  return {
    margin: words.say("season.margin.settle"),
    heading: words.say("season.settle.heading", { open: open.length }),
    table: {
      caption: words.say("season.settle.caption"),
      columns: ["question", "now", "settles"].map((column) => ({
        label: words.say(`season.settle.${column}`),
        align: "start" as const,
      })),
      rows: open.map((track) => ({
        cells: [
          words.say("season.settle.has-changed", { name: sayFundamental(words, track.history.fundamental) }),
          saySure(words, track.verdict.evidence.noChange),
          saySettleCell(words, track),
        ],
        tone: track.asking?.state === "stopped" ? ("quiet" as const) : ("plain" as const),
      })),
    },
  };
}

/** The sessions, latest first. */
export function sessionTable(words: Words, source: SeasonSource): SeasonPage["sessions"] {
  return {
    margin: words.say("season.margin.sessions"),
    heading: words.say("season.sessions.heading", { sessions: source.sessions.length }),
    table: {
      caption: words.say("season.sessions.caption"),
      columns: ["day", "club", "circumstance", "contact", "note"].map((column) => ({
        label: words.say(`season.sessions.${column}`),
        align: "start" as const,
      })),
      rows: [...source.sessions].reverse().map((session) => ({
        href: `/students/${session.studentId}/sessions/${session.id}`,
        cells: [
          sayDay(words, session.day, "full"),
          session.club ?? sayClubGroup(words, source.grouping, session.clubGroup),
          words.say(`circumstance.${session.circumstance}`),
          session.solid === null || session.balls === null
            ? ""
            : words.say("contact.solid", { solid: session.solid, balls: session.balls }),
          [
            session.note ?? "",
            ...saySessionPhone(
              words,
              source.tracks.map((track) => track.history),
              session.id,
            ),
          ]
            .filter((note) => note !== "")
            .join(" · "),
        ],
        tone:
          session.circumstance === "unaided" && session.setAsideReason === null
            ? ("plain" as const)
            : ("quiet" as const),
      })),
    },
  };
}
