import type { CalendarDay } from "./calendar-day";
import type { Consent } from "./consent";

/**
 * The consents that a withdrawal on a day ends: those that nobody has withdrawn and whose last day hasn't passed, one that is
 * still to begin among them, so that a no isn't outlived by another paper.
 */
export function withdrawable<C extends Consent>(consents: readonly C[], day: CalendarDay): readonly C[] {
  return consents.filter((each) => each.withdrawnOn === null && (each.until === null || each.until >= day));
}
