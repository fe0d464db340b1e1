import type { ProvedChange, TrackVerdict } from "@/lib/domain/track-verdict";
import { saidVerdict } from "@/lib/verdict/said-verdict";
import type { Glyph } from "./page-model";

export { saidVerdict } from "@/lib/verdict/said-verdict";

/** What of a verdict its word and its mark rest on. */
export type SaidVerdict = Pick<TrackVerdict, "verdict" | "listed" | "moved"> & {
  /** Null: nothing is proved. */
  readonly change: object | null;
};

/** The mark of what is said: a proved move that is neither better nor worse has one of its own. */
export function saidGlyph(verdict: SaidVerdict): Glyph {
  const said = saidVerdict(verdict);
  if (said === "open") return "open";
  if (verdict.change !== null && (verdict.moved !== null || said === "steady"))
    return verdict.listed === true ? "moved" : "open";
  return said;
}

/** The key of the message that names what is said. */
export function saidKey(verdict: SaidVerdict): string {
  if (saidGlyph(verdict) !== "moved") return `verdict.${saidGlyph(verdict)}`;
  return verdict.moved === null ? "verdict.moved.same" : `verdict.moved.${verdict.moved}`;
}

/** Whether a track is proved by its own evidence and not (yet) on the roster's list. */
export function provedAlone(verdict: SaidVerdict): "alone" | "no" {
  return verdict.change !== null && verdict.listed !== true ? "alone" : "no";
}

/** A proved change as it is drawn: in its colour when it stood on the roster's list, else as enough for its track alone. */
export interface DrawnChange {
  readonly change: ProvedChange;
  readonly standing: "listed" | "alone";
}

/** The proved changes of a track in order, each with whether it stood on the roster's list between its proof and the next one's. */
export function drawnChanges(verdict: TrackVerdict): readonly DrawnChange[] {
  return verdict.changes.map((change, place) => {
    const next = verdict.changes[place + 1];
    const listed =
      next === undefined
        ? verdict.listed === true
        : (verdict.looks ?? []).some(
            (look) => look.listed === true && look.date >= change.provedOn && look.date < next.provedOn,
          );
    return { change, standing: listed ? "listed" : "alone" };
  });
}

/** The mark of a proved change by itself. */
export function changeGlyph(change: ProvedChange): Glyph {
  return change.moved === null && change.verdict !== "steady" ? change.verdict : "moved";
}

/** The key of the message that names a proved change by itself. */
export function changeKey(change: ProvedChange): string {
  if (change.moved !== null) return `verdict.moved.${change.moved}`;
  return change.verdict === "steady" ? "verdict.moved.same" : `verdict.${change.verdict}`;
}

/** Which way a proved change is drawn: toward the band, away from it, or neither. */
export function changeTone({ change, standing }: DrawnChange): "toward" | "away" | "neither" {
  if (change.moved !== null || standing === "alone") return "neither";
  return change.verdict === "gain" ? "toward" : change.verdict === "slip" ? "away" : "neither";
}
