import type { FilmCare } from "@/lib/domain/film-plan";
import { FILM_CARES } from "@/lib/domain/film-plan";
import type { Fundamental } from "@/lib/domain/fundamental";
import type { PlannedFundamental } from "@/lib/verdict/plan-session";
import { cameraCare } from "./camera-care";

/** A care for the camera with the fundamentals that need it. */
export interface PlannedCare {
  readonly care: FilmCare;
  readonly fundamentals: readonly Fundamental[];
}

/** Median camera sd of the films of a track that count; null without any. */
function usualSd({ track }: PlannedFundamental): number | null {
  const sds = (track?.history.sessions ?? [])
    .flatMap(({ apart, captureSd }) => (apart === null ? [captureSd] : []))
    .sort((a, b) => a - b);
  return sds[Math.floor(sds.length / 2)] ?? null;
}

function caresOf(item: PlannedFundamental): readonly string[] {
  const { fundamental, track, tells } = item;
  // Of what was never filmed the phone's place isn't known: all that moves it is asked for.
  const usual = usualSd(item) ?? fundamental.cameraSdUnknown;
  const wanted = tells.kind === "plan" ? tells.plan.captureSd : (track?.history.judged.checkedCaptureSd ?? 0);
  return cameraCare({ captureSd: wanted }, usual, fundamental)?.split("-") ?? [];
}

/** The care that a film asks for: only what its fundamentals are moved by, and only where it makes the phone better than usual. */
export function planCare(items: readonly PlannedFundamental[]): readonly PlannedCare[] {
  return FILM_CARES.flatMap((care) => {
    const needing = items.filter((item) => caresOf(item).includes(care));
    return needing.length === 0 ? [] : [{ care, fundamentals: needing.map(({ fundamental }) => fundamental) }];
  });
}
