import { daysBetween } from "@/lib/domain/calendar-day";
import type { Told, ToldFinding } from "@/lib/domain/told";
import type { TrackVerdict } from "@/lib/domain/track-verdict";
import type { FamilyFinding } from "@/lib/words/say-family";
import { changeGlyph, drawnChanges, saidGlyph } from "./said";

/** Days for which a correction stands, from the first text or page on that told it: so it is read, and doesn't stay for ever. */
export const CORRECTION_STANDS_DAYS = 14;

/** What a family is told of something that it was told before. */
export type Correction = Extract<FamilyFinding, { kind: "corrected" }>;

type Claim = Pick<ToldFinding, "said" | "change"> & { readonly on: string };

const GLYPHS = { better: "gain", worse: "slip", moved: "moved" } as const;

/** Whether a change that was told is still seen, or was followed by another one: then it was true when it was said. */
function isBorneOut(verdict: TrackVerdict, { said, change }: Claim): boolean {
  const now = saidGlyph(verdict);
  if (now === GLYPHS[said]) return true;
  if (now === "open" || now === "steady") return false;
  if (said === "moved") return true;
  return drawnChanges(verdict).some(
    (drawn) =>
      drawn.standing === "listed" &&
      changeGlyph(drawn.change) === GLYPHS[said] &&
      change !== null &&
      drawn.change.from <= change.to &&
      drawn.change.to >= change.from,
  );
}

/** What was told of a track up to a day and stands, in the order in which it was. */
export function toldOf(
  told: readonly Told[],
  fundamentalId: string,
  today: string,
): readonly (ToldFinding & { readonly on: string })[] {
  return told
    .filter(({ voidedAt }) => voidedAt === null)
    .flatMap(({ day, findings }) => (findings ?? []).map((finding) => ({ ...finding, on: day })))
    .filter((finding) => finding.fundamentalId === fundamentalId && finding.on <= today);
}

/**
 * What a family was told of a track in a message, a file or a letter and is not seen any more (SEASON.md 19). It rests on the
 * very words that were kept, not on what would be said of that day now.
 *
 * @param told everything that the family was told with the clubs of the track, in the order in which it was
 * @param fundamentalId of the track
 * @returns null: nothing was told, it is borne out, the track was begun anew since, or the correction has stood long enough
 */
export function toldCorrection(
  verdict: TrackVerdict,
  told: readonly Told[],
  fundamentalId: string,
  today: string,
): Correction | null {
  const own = toldOf(told, fundamentalId, today);
  const at = own.findLastIndex(({ kind }) => kind === "changed");
  const claim = own[at];
  const looks = verdict.looks ?? [];
  if (claim === undefined || !looks.some(({ date }) => date <= claim.on) || isBorneOut(verdict, claim)) return null;
  const since = own.slice(at + 1)[0];
  if (since !== undefined && daysBetween(since.on, today) > CORRECTION_STANDS_DAYS) return null;
  const videos = looks.some(({ date }) => date > claim.on) ? "yes" : "no";
  return { kind: "corrected", said: claim.said, on: claim.on, by: "told", videos };
}
