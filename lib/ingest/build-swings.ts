import type { EnteredReading } from "@/lib/domain/session-entry";
import { option } from "./import-log";
import type { ImportContext, ReadingDraft } from "./row-draft";
import type { SessionDraft, SwingDraft } from "./session-draft";

interface Clash {
  readonly session: SessionDraft;
  readonly swing: number;
  readonly id: string;
  readonly first: ReadingDraft;
  readonly second: ReadingDraft;
}

function toEntry(draft: ReadingDraft): { readonly draft: ReadingDraft; readonly reading: EnteredReading } {
  return {
    draft,
    reading: {
      fundamentalId: draft.fundamental.id,
      value: draft.value,
      typed: draft.typed,
      unit: draft.fundamental.unit,
      signRule: draft.signRule,
    },
  };
}

function swingOf(session: SessionDraft, number: number): SwingDraft {
  const kept = session.swings.get(number);
  if (kept) return kept;
  const made: SwingDraft = { readings: new Map(), notes: new Set() };
  session.swings.set(number, made);
  return made;
}

/**
 * Puts readings into their swings. Two rows with one reading of one swing: equal ones are kept once, different ones
 * are one question a file, and a second person's reading of a swing stays out.
 */
export function buildSwings(sessions: readonly SessionDraft[], context: ImportContext): void {
  const { log } = context;
  const clashes: Clash[] = [];
  for (const session of sessions) {
    const counts = new Map<string, number>();
    const largest = session.rows.reduce((most, row) => Math.max(most, row.swing ?? 0), 0);
    for (const row of session.rows) {
      let number = row.swing;
      if (number === null) {
        // In long form each fundamental counts its own swings.
        const id = context.form === "wide" ? "" : (row.readings[0]?.fundamental.id ?? "");
        counts.set(id, (counts.get(id) ?? 0) + 1);
        number = largest + (counts.get(id) ?? 0);
        log.note("swing-numbered", row.row);
      }
      const swing = swingOf(session, number);
      if (row.note !== null) swing.notes.add(row.note);
      for (const reading of row.readings) {
        if (reading.state !== "alive") continue;
        const id = reading.fundamental.id;
        const kept = swing.readings.get(id);
        if (!kept) swing.readings.set(id, toEntry(reading));
        else if (kept.draft.value === reading.value) {
          reading.state = "left-out";
          log.note("same-reading-again", row.row, reading.column.header, { first: kept.draft.row.row });
        } else clashes.push({ session, swing: number, id, first: kept.draft, second: reading });
      }
    }
  }
  settleClashes(clashes, context);
}

function settleClashes(clashes: readonly Clash[], context: ImportContext): void {
  const { log } = context;
  const [example] = clashes;
  if (!example) return;
  const answer = log.ask(
    {
      id: "same-swing",
      code: "same-swing",
      args: {
        fundamental: example.id,
        swing: example.swing,
        day: example.session.day,
        alias: example.session.alias,
        first: example.first.typed.trim(),
        second: example.second.typed.trim(),
      },
      options: [option("keep-first"), option("keep-last"), option("leave-out", {}, undefined, "leave-out-both")],
      at: example.second.column.at,
    },
    clashes.flatMap(({ first, second }) => [first.row.row, second.row.row]),
  );
  const choice = answer?.option ?? null;
  for (const { session, swing, id, first, second } of clashes) {
    const readings = session.swings.get(swing)?.readings;
    if (choice === "keep-first") second.state = "left-out";
    else if (choice === "keep-last") {
      const kept = readings?.get(id)?.draft;
      if (kept) kept.state = "left-out";
      readings?.set(id, toEntry(second));
    } else {
      readings?.delete(id);
      for (const draft of [first, second]) draft.state = choice === null ? "waiting" : "left-out";
    }
    if (choice !== null) {
      for (const draft of [first, second]) {
        if (draft.state === "left-out")
          log.note("left-out", draft.row.row, draft.column.header, { value: draft.typed.trim() });
      }
    }
  }
}
