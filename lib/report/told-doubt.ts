import type { TrackVerdict } from "@/lib/domain/track-verdict";
import { isLessSure } from "@/lib/verdict/is-less-sure";
import type { SaidBefore } from "./family-correction";
import { saidGlyph } from "./said";
import { toldOf } from "./told-correction";

/** A change that a family was told, that stands on the roster's list, and that later films make less sure. */
export interface ToldDoubt {
  readonly said: "better" | "worse" | "moved";
  /** The last day on which it was told. */
  readonly on: string;
}

const SAID = { gain: "better", slip: "worse", moved: "moved" } as const;

/** The last day on which a page told it for sure: between the film that put it on the list and the next one. */
function readOn(verdict: TrackVerdict, openings: readonly string[]): string | null {
  const looks = verdict.looks ?? [];
  const before = looks.findLastIndex((look) => look.listed !== true);
  const [proving, next] = [looks[before + 1], looks[before + 2]];
  if (proving === undefined || next === undefined) return null;
  return [...openings].sort().findLast((day) => day >= proving.date && day < next.date) ?? null;
}

/** The last day on which a text that was sent told this very change. */
function sentOn(verdict: TrackVerdict, said: ToldDoubt["said"], own: ReturnType<typeof toldOf>): string | null {
  const { change } = verdict;
  const claim = own.findLast(({ kind }) => kind === "changed");
  if (change === null || claim === undefined || claim.said !== said || claim.change === null) return null;
  return claim.change.from <= change.to && claim.change.to >= change.from ? claim.on : null;
}

/**
 * What a family was told for sure and is told now with less: it isn't taken back, for it stands on the list, but the sentence that
 * it is being checked says that more was said before (SEASON.md 19).
 *
 * @returns null: it is as sure as it was, or nobody was told
 */
export function toldDoubt(
  verdict: TrackVerdict,
  { openings, told }: SaidBefore,
  { fundamentalId, today }: { readonly fundamentalId: string; readonly today: string },
): ToldDoubt | null {
  const glyph = saidGlyph(verdict);
  if (!isLessSure(verdict) || glyph === "open" || glyph === "steady") return null;
  const said = SAID[glyph];
  const days = [readOn(verdict, openings), sentOn(verdict, said, toldOf(told, fundamentalId, today))];
  const on = days
    .flatMap((day) => day ?? [])
    .sort()
    .at(-1);
  return on === undefined ? null : { said, on };
}
