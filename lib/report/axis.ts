import { dayNumber } from "@/lib/domain/calendar-day";
import type { Words } from "@/lib/words/catalogue";
import { sayDay } from "@/lib/words/day-words";
import type { Tick } from "./chart-model";

const MONTH_STEPS = [1, 2, 3, 6, 12, 24, 60, 120, 240];

/**
 * Ticks of a value axis at round numbers.
 *
 * @param most about how many ticks; one more where both ends are round
 * @param label writes a tick's number
 */
export function valueTicks(
  low: number,
  high: number,
  most: number,
  label: (value: number, decimals: number) => string,
): readonly Tick[] {
  const span = Math.max(high - low, Number.MIN_VALUE);
  const raw = span / Math.max(1, most);
  const power = 10 ** Math.floor(Math.log10(raw));
  const step = ([1, 2, 2.5, 5, 10].find((factor) => factor * power >= raw) ?? 10) * power;
  const decimals =
    step >= 1 && Number.isInteger(step)
      ? 0
      : Math.min(6, Math.max(1, Math.ceil(-Math.log10(step)) + (step / power === 2.5 ? 1 : 0)));
  const ticks: Tick[] = [];
  for (let count = Math.ceil(low / step - 1e-9); count * step <= high + step * 1e-9; count++)
    ticks.push({ at: count * step, label: label(count * step, decimals) });
  return ticks;
}

/** Ticks at the first day of months, as many months apart as keeps them to `most`; years stand where there are several. */
export function monthTicks(words: Words, from: string, to: string, most: number): readonly Tick[] {
  const first = monthCount(from);
  const last = monthCount(to);
  const step = MONTH_STEPS.find((length) => (last - first + 1) / length <= most) ?? 240;
  const severalYears = from.slice(0, 4) !== to.slice(0, 4);
  const ticks: Tick[] = [];
  for (let month = Math.ceil(first / step) * step; month <= last; month += step) {
    const day = `${String(Math.floor(month / 12)).padStart(4, "0")}-${String((month % 12) + 1).padStart(2, "0")}-01`;
    if (day < from) continue;
    const style =
      step >= 12 ? "year" : severalYears && (month % 12 === 0 || ticks.length === 0) ? "month-year" : "month";
    ticks.push({ at: dayNumber(day), label: sayDay(words, day, style) });
  }
  return ticks;
}

function monthCount(day: string): number {
  return Number(day.slice(0, 4)) * 12 + Number(day.slice(5, 7)) - 1;
}
