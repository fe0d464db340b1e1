import type { FundamentalId } from "@/lib/domain/fundamental";
import type { ColumnValue } from "@/lib/domain/record-change";
import type { Session } from "@/lib/domain/session";
import type { StudentEvent } from "@/lib/domain/student";
import type { Database } from "../client";
import { splitWords } from "../joined-words";
import { veilPain } from "./events";
import type { FiledCapture, StatedCaptureSd } from "./sessions";

type Row = Record<string, ColumnValue>;

const compare = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

/** A session from its columns, but for its marks. */
export function sessionOf(row: Row): Omit<Session, "marks"> {
  return {
    id: String(row.id),
    studentId: String(row.student_id),
    day: String(row.day),
    sequence: Number(row.sequence),
    clubGroup: String(row.club_group) as Session["clubGroup"],
    club: row.club as string | null,
    reader: String(row.reader),
    circumstance: row.circumstance as Session["circumstance"],
    aid: row.aid as string | null,
    stanceWidthCm: row.stance_width_cm as number | null,
    daysSincePractice: row.days_since_practice as number | null,
    note: row.note as string | null,
    solid: row.solid as number | null,
    balls: row.balls as number | null,
    setAsideReason: row.set_aside_reason as string | null,
    groupId: row.group_id as string | null,
  };
}

function captureOf(row: Row): FiledCapture {
  return {
    sessionId: String(row.session_id),
    view: row.view as FiledCapture["view"],
    placement: row.placement as FiledCapture["placement"],
    placementLabel: row.placement_label as string | null,
    squareness: row.squareness as FiledCapture["squareness"],
    offBy: row.off_by as number | null,
    setAsideReason: row.set_aside_reason as string | null,
    filmReference: row.film_reference as string | null,
    placedBy: row.placed_by as string | null,
    seen: {
      pointingStickLean: row.pointing_stick_lean as number | null,
      acrossStickSlope: row.across_stick_slope as number | null,
      plumbLean: row.plumb_lean as number | null,
      lensHeightCm: row.lens_height_cm as number | null,
      handsHeightCm: row.hands_height_cm as number | null,
      distanceCm: row.distance_cm as number | null,
      besideHandsCm: row.beside_hands_cm as number | null,
      framesPerSecond: row.frames_per_second as number | null,
      shutterPerSecond: row.shutter_per_second as number | null,
    },
  };
}

/** Camera records known at an instant: those that a later import brought are left out. */
export function capturesKnown(
  db: Database,
  { films, stated }: { readonly films: readonly Row[]; readonly stated: readonly Row[] },
  order: ReadonlyMap<string, number>,
  knownAt: string,
): { readonly captures: readonly FiledCapture[]; readonly statedCaptureSds: readonly StatedCaptureSd[] } {
  const brought = db.sqlite.prepare<[string], string>("SELECT created_at FROM import_batch WHERE id = ?").pluck();
  const isKnown = (row: Row): boolean =>
    typeof row.batch_id !== "string" || (brought.get(row.batch_id) ?? "") <= knownAt;
  const place = (id: string): number => order.get(id) ?? 0;
  return {
    captures: films
      .filter(isKnown)
      .map(captureOf)
      .sort((a, b) => place(a.sessionId) - place(b.sessionId) || compare(a.view, b.view)),
    statedCaptureSds: stated
      .filter(isKnown)
      .map((row) => ({
        sessionId: String(row.session_id),
        fundamentalId: String(row.fundamental_id) as FundamentalId,
        sd: Number(row.sd),
      }))
      .sort((a, b) => place(a.sessionId) - place(b.sessionId) || compare(a.fundamentalId, b.fundamentalId)),
  };
}

/** Events that stood at an instant, each with what began anew with it then. */
export function eventsKnown(db: Database, rows: readonly Row[], knownAt: string): readonly StudentEvent[] {
  // The first change after the instant says in `before` how it was until then.
  const before = db.sqlite
    .prepare<[ColumnValue, string], string>(
      "SELECT before FROM rebaseline_change WHERE event_id = ? AND changed_at > ? ORDER BY id LIMIT 1",
    )
    .pluck();
  return rows
    .filter((row) => String(row.recorded_at ?? "") <= knownAt)
    .filter((row) => row.voided_at === null || String(row.voided_at) > knownAt)
    .map(
      (row): StudentEvent => ({
        id: String(row.id),
        kind: row.kind as StudentEvent["kind"],
        day: String(row.day),
        endDay: row.end_day as string | null,
        place: row.place as StudentEvent["place"],
        note: String(row.note),
        rebaselines: splitWords(before.get(row.id ?? null, knownAt) ?? String(row.rebaselines ?? "")),
      }),
    )
    .map(veilPain)
    .sort((a, b) => compare(a.day, b.day) || compare(a.id, b.id));
}
