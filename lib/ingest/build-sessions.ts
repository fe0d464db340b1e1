import type { ClubGroup } from "@/lib/domain/club-group";
import type { FundamentalId } from "@/lib/domain/fundamental";
import { type Circumstance, NOTHING_SEEN, PLACEMENTS } from "@/lib/domain/session";
import type { EnteredCapture, EnteredSession } from "@/lib/domain/session-entry";
import { buildSwings } from "./build-swings";
import { columnOf, groupBy, type ImportContext, type RowDraft } from "./row-draft";
import { gatherSessions, type SessionDraft, sharedFact } from "./session-draft";
import { wordKey } from "./text-key";

const ANEW = new Set(["anew", "set up anew", "new", "moved"]);
const UNKNOWN = new Set(["unknown", "not known", "?"]);

export interface BuiltSession {
  readonly alias: string;
  readonly session: EnteredSession;
}

/** The sessions that a file's settled rows make, by student and day. */
export function buildSessions(rows: readonly RowDraft[], context: ImportContext): readonly BuiltSession[] {
  const drafts = gatherSessions(rows, context);
  markSecondReaders(drafts, context);
  buildSwings(drafts, context);
  return drafts
    .flatMap((draft) => finishSession(draft, context) ?? [])
    .sort(
      (a, b) =>
        compare(a.alias, b.alias) ||
        compare(a.session.day, b.session.day) ||
        (a.session.sequence ?? 0) - (b.session.sequence ?? 0),
    );
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

/** Of two people who read the same swings of one filming, the second stays out: one reading a swing is in force. */
function markSecondReaders(sessions: readonly SessionDraft[], { log }: ImportContext): void {
  const filming = ({ alias, day, facts }: SessionDraft) =>
    [alias, day, facts.clubGroup, facts.club ?? "", facts.circumstance ?? "", facts.aid ?? ""].join("\u0000");
  for (const [, group] of groupBy(sessions, filming)) {
    if (group.length < 2) continue;
    const read = new Map<string, string>();
    for (const session of group) {
      const reader = session.facts.reader ?? "";
      for (const row of session.rows) {
        for (const reading of row.readings) {
          if (reading.state !== "alive" || row.swing === null) continue;
          const key = `${row.swing}\u0000${reading.fundamental.id}\u0000${row.sequence ?? ""}`;
          const first = read.get(key);
          if (first === undefined) read.set(key, reader);
          else if (first !== reader) {
            reading.state = "refused";
            log.issue({
              code: "second-reader",
              row: row.row,
              column: reading.column.header,
              value: reader,
              args: { swing: row.swing, first, fundamental: reading.fundamental.id },
              at: reading.column.at,
            });
          }
        }
      }
    }
  }
}

function finishSession(draft: SessionDraft, context: ImportContext): BuiltSession | null {
  const swings = [...draft.swings]
    .sort(([a], [b]) => a - b)
    .flatMap(([number, { readings, notes }]) => {
      const kept = [...readings.values()].flatMap(({ draft: reading, reading: entered }) =>
        reading.state === "alive" ? [entered] : [],
      );
      return kept.length === 0
        ? []
        : [{ number, note: notes.size === 0 ? null : [...notes].join("; "), readings: kept }];
    });
  if (swings.length === 0) return null;
  const fact = <T extends string | number>(field: string, factOf: (row: RowDraft) => T | null) =>
    sharedFact(draft, field, factOf, context);
  const solid = fact("solid", (row) => row.solid);
  const balls = fact("balls", (row) => row.balls);
  const strange = solid !== null && balls !== null && solid > balls;
  if (strange)
    context.log.issue({ code: "more-solid-than-balls", row: draft.rows[0]?.row ?? null, value: `${solid} / ${balls}` });
  const setAside = fact("setAside", (row) => row.setAsideReason);
  if (setAside !== null) {
    for (const row of draft.rows) {
      if (row.setAsideReason === null)
        context.log.note(
          "set-aside-with-session",
          row.row,
          null,
          { value: setAside, day: draft.day, alias: draft.alias },
          `${draft.alias} ${draft.day}`,
        );
    }
  }
  return {
    alias: draft.alias,
    session: {
      day: draft.day,
      sequence: draft.sequence,
      clubGroup: draft.facts.clubGroup as ClubGroup,
      club: draft.facts.club ?? null,
      reader: draft.facts.reader ?? context.input.defaults.reader,
      circumstance: (draft.facts.circumstance as Circumstance | undefined) ?? "unaided",
      aid: draft.facts.aid ?? null,
      stanceWidthCm: fact("stanceWidth", (row) => row.stanceWidthCm),
      daysSincePractice: fact("daysSincePractice", (row) => row.daysSincePractice),
      marks: [],
      note: null,
      solid: strange ? null : solid,
      balls,
      setAsideReason: setAside,
      captures: captures(draft, context),
      statedCaptureSds: cameraSds(draft, context),
      swings,
    },
  };
}

/** One record a view that was read; a named place is shared by every session that names it. */
function captures(draft: SessionDraft, context: ImportContext): readonly EnteredCapture[] {
  const text = sharedFact(draft, "placement", (row) => row.placementText, context)?.replace(/^same\s*:\s*/i, "") ?? "";
  const key = wordKey(text);
  const isLabel =
    text !== "" && !ANEW.has(key) && !UNKNOWN.has(key) && !(PLACEMENTS as readonly string[]).includes(key);
  if (key === "same") {
    for (const row of draft.rows) {
      if (row.placementText !== null) context.log.note("same-as-what", row.row, columnOf(context, "placement")?.header);
    }
  }
  const film = sharedFact(draft, "film", (row) => row.film, context);
  const views = new Set(
    draft.rows.flatMap((row) =>
      row.readings.filter(({ state }) => state === "alive").map(({ fundamental }) => fundamental.view),
    ),
  );
  return [...views].sort().map((view) => ({
    view,
    placement: isLabel ? "same" : ANEW.has(key) ? "anew" : "unknown",
    placementLabel: isLabel ? text : null,
    squareness: "unknown",
    offBy: null,
    seen: NOTHING_SEEN,
    placedBy: null,
    setAsideReason: null,
    filmReference: film,
  }));
}

/** One stated sd a fundamental; where rows differ the larger one holds. */
function cameraSds(draft: SessionDraft, context: ImportContext): EnteredSession["statedCaptureSds"] {
  const stated = new Map<FundamentalId, number>();
  for (const row of draft.rows) {
    for (const { fundamental, sd } of row.cameraSds) {
      const held = stated.get(fundamental.id);
      if (held !== undefined && held !== sd) {
        context.log.note(
          "larger-camera-sd",
          row.row,
          columnOf(context, "cameraSd")?.header,
          { taken: Math.max(held, sd), fundamental: fundamental.id },
          fundamental.id,
        );
      }
      stated.set(fundamental.id, Math.max(held ?? 0, sd));
    }
  }
  return [...stated].map(([fundamentalId, sd]) => ({ fundamentalId, sd }));
}
