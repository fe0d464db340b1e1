import type { Unit } from "@/lib/domain/fundamental";
import type { HistorySession } from "@/lib/verdict/track-history";
import type { Words } from "@/lib/words/catalogue";
import { sayDay } from "@/lib/words/day-words";
import { sayNumber, saySigned, withUnit } from "@/lib/words/number-words";
import { sayApart } from "@/lib/words/say-apart";
import { sayFingerprintDone } from "./build-fingerprint";
import type { SeasonChart } from "./chart-model";
import type { FundamentalSource } from "./fundamental-source";
import type { TableModel } from "./page-model";

/** The numbers of the chart as a table: the very labels that the chart draws. */
export function buildSessionsTable(
  words: Words,
  { history, readBack }: Pick<FundamentalSource, "history" | "readBack">,
  chart: SeasonChart,
): TableModel {
  return {
    caption: words.say("sessions-table.caption"),
    columns: [
      { label: words.say("sessions-table.session"), align: "start" },
      { label: words.say("sessions-table.mean"), align: "end" },
      { label: words.say("sessions-table.doubt"), align: "end" },
      { label: words.say("sessions-table.camera"), align: "end" },
      { label: words.say("sessions-table.note"), align: "start" },
    ],
    rows: chart.sessions.map((session, place) => {
      const entry = history.sessions[place];
      const camera = entry ? 1.96 * entry.captureSd : 0;
      return {
        ...(entry
          ? {
              href: `/students/${history.studentId}/sessions/${entry.session.id}/aside?of=${history.fundamental.id}`,
            }
          : {}),
        cells: [
          session.dateLabel,
          session.meanLabel,
          session.doubtLabel,
          withUnit(
            words,
            words.say("number.half-only", { half: sayNumber(words, camera, 1) }),
            history.fundamental.unit,
          ),
          [
            session.reason || (entry ? sayFingerprintDone(words, entry) : ""),
            entry ? sayReadOn(words, readBack, entry.session.id) : "",
          ]
            .filter((note) => note !== "")
            .join(" · "),
        ],
        tone: session.mark === "used" ? ("plain" as const) : ("quiet" as const),
      };
    }),
  };
}

/** The days on which a session's readings were read back; empty: they were read with the session. */
function sayReadOn(words: Words, readBack: FundamentalSource["readBack"], sessionId: string): string {
  const on = new Set((readBack ?? []).filter((each) => each.sessionId === sessionId).map((each) => each.readOn));
  const days = [...on].map((day) => sayDay(words, day, "short")).join(", ");
  return days === "" ? "" : words.say("read-back.read-on", { day: days });
}

function sayTakenOut(words: Words, { takenOut, swings }: HistorySession, unit: Unit): string {
  if (takenOut === 0) return "";
  return words.say("readings-table.taken-out", {
    read: swings.map((swing) => sayNumber(words, swing.read, Number.isInteger(swing.read) ? 0 : 1)).join("  "),
    shift: withUnit(words, saySigned(words, takenOut, 1), unit),
  });
}

/** Every swing's reading, latest session first. */
export function buildReadingsTable(words: Words, source: FundamentalSource): TableModel {
  const { history } = source;
  const sessions = [...history.sessions].reverse();
  return {
    caption: words.say("readings-table.caption", { unit: words.say(`unit.${history.fundamental.unit}.name`) }),
    columns: [
      { label: words.say("readings-table.session"), align: "start" },
      { label: words.say("readings-table.club"), align: "start" },
      { label: words.say("readings-table.swings"), align: "start" },
      { label: words.say("readings-table.reader"), align: "start" },
      { label: words.say("readings-table.note"), align: "start" },
    ],
    rows: sessions.map((entry) => {
      const missing = source.notMeasurable.filter((gap) => gap.day === entry.session.day).length;
      const notes = [
        entry.apart === null ? "" : sayApart(words, entry.apart),
        entry.session.note ?? "",
        missing > 0 ? words.say("readings-table.not-measurable", { swings: missing }) : "",
        ...entry.session.marks.map((mark) =>
          words.say(words.has(`mark.${mark}`) ? `mark.${mark}` : "mark.other", { mark }),
        ),
        sayFingerprintDone(words, entry),
        sayTakenOut(words, entry, history.fundamental.unit),
        sayReadOn(words, source.readBack, entry.session.id),
      ].filter((note) => note !== "");
      return {
        href: `/students/${history.studentId}/sessions/${entry.session.id}`,
        cells: [
          sayDay(words, entry.session.day, "with-weekday"),
          entry.session.club ?? "",
          entry.swings.map((swing) => sayNumber(words, swing.value, Number.isInteger(swing.value) ? 0 : 1)).join("  "),
          entry.session.reader,
          notes.join(" · "),
        ],
        tone: entry.apart === null ? ("plain" as const) : ("quiet" as const),
      };
    }),
  };
}
