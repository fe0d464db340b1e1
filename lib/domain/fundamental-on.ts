import type { CalendarDay } from "./calendar-day";
import type { Fundamental } from "./fundamental";
import type { Measuring } from "./fundamental-shape";

function measuringOf({ readerSd, cameraSdUnknown, sensitivity, worthwhile }: Measuring): Measuring {
  return { readerSd, cameraSdUnknown, sensitivity, worthwhile };
}

/**
 * A fundamental as it measured on a day: with the errors and the least worthwhile change of the definition in force then.
 * Name and words are today's. A definition that changes changes nothing that was said of earlier films.
 *
 * @returns the same one where it has not changed since
 */
export function fundamentalOn(fundamental: Fundamental, day: CalendarDay): Fundamental {
  const then = fundamental.earlier?.find(({ until }) => day < until);
  return then === undefined ? fundamental : { ...fundamental, ...measuringOf(then) };
}

/** The days within a stretch, its first one excluded, from which another definition holds, in order. */
export function definitionDays(
  { earlier }: Pick<Fundamental, "earlier">,
  [first, last]: readonly [CalendarDay, CalendarDay],
): readonly CalendarDay[] {
  return [...new Set((earlier ?? []).map(({ until }) => until))].filter((day) => day > first && day <= last).sort();
}

/** Whether a fundamental is still read from stills on a day. */
export function isRead({ retiredOn }: Pick<Fundamental, "retiredOn">, day: CalendarDay): boolean {
  return retiredOn === null || retiredOn === undefined || retiredOn > day;
}

/** A fundamental as it was defined at an instant, as far as that is on file: with what had changed until then, and nothing later. */
export function definedAt(fundamental: Fundamental, instant: string): Fundamental {
  const { id, derivedFrom, earlier = [] } = fundamental;
  const at = earlier.findIndex(({ changedAt }) => changedAt > instant);
  const then = earlier[at];
  if (then === undefined) return fundamental;
  const { until: _until, who: _who, why: _why, changedAt: _changed, ...defined } = then;
  return { ...defined, id, derivedFrom, earlier: earlier.slice(0, at) };
}
