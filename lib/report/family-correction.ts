import { daysBetween } from "@/lib/domain/calendar-day";
import type { Told } from "@/lib/domain/told";
import type { TrackVerdict } from "@/lib/domain/track-verdict";
import { saidGlyph } from "./said";
import { CORRECTION_STANDS_DAYS, type Correction, toldCorrection } from "./told-correction";

/** What a family has read and been told before. */
export interface SaidBefore {
  /** Days on which a page was opened, in any order. */
  readonly openings: readonly string[];
  /** With the clubs of the track, in the order in which it was told. */
  readonly told: readonly Told[];
}

/**
 * What a family was told of a track and later films don't bear out (SEASON.md 19): by its page, because a change stood on the
 * roster's list when that was opened and none is told any more, or in a text that was kept as sent. A change that another one
 * followed was true when it was said.
 *
 * Looks are computed anew with what is known now, so for a page this rests on what would have been said on the day.
 *
 * @param fundamentalId of the track
 * @returns null: nothing was said, nobody read it, or the correction has stood long enough
 */
export function familyCorrection(
  verdict: TrackVerdict,
  { openings, told }: SaidBefore,
  { fundamentalId, today }: { readonly fundamentalId: string; readonly today: string },
): Correction | null {
  const found = [pageCorrection(verdict, openings, today), toldCorrection(verdict, told, fundamentalId, today)];
  // One thing is taken back once: by the later of both.
  return found.flatMap((each) => each ?? []).sort((a, b) => b.on.localeCompare(a.on))[0] ?? null;
}

function pageCorrection(verdict: TrackVerdict, openings: readonly string[], today: string): Correction | null {
  const looks = verdict.looks ?? [];
  if (!["open", "steady"].includes(saidGlyph(verdict))) return null;
  const last = looks.findLastIndex(
    (look) => look.listed === true && (look.verdict === "gain" || look.verdict === "slip"),
  );
  const [said, after] = [looks[last], looks[last + 1]];
  if (said === undefined || after === undefined) return null;
  const before = looks.slice(0, last).findLastIndex((look) => look.listed !== true || look.verdict !== said.verdict);
  const from = looks[before + 1]?.date ?? said.date;
  const read = [...openings].sort();
  const on = read.findLast((day) => day >= from && day < after.date);
  const since = read.find((day) => day >= after.date);
  if (on === undefined || (since !== undefined && daysBetween(since, today) > CORRECTION_STANDS_DAYS)) return null;
  return { kind: "corrected", said: said.verdict === "gain" ? "better" : "worse", on };
}
