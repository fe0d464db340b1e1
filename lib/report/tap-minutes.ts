/** Minutes of a day's dose where the drill names none: then 5, 10 and 15 are offered (common practice in this trade, no source). */
const USUAL_MINUTES = 10;
/** Longer stretches are counted in steps of so many minutes, since nobody looks at the clock for single ones. */
const STEP = 5;
/** A tap is never more than what one day is asked about in words. */
const MOST = 300;

/** Down, so that a tap claims no more than there was. */
function down(minutes: number): number {
  return minutes < STEP ? Math.ceil(minutes) : Math.floor(minutes / STEP) * STEP;
}

function up(minutes: number): number {
  return minutes < 2 * STEP ? Math.ceil(minutes) : Math.ceil(minutes / STEP) * STEP;
}

/**
 * Minutes that a tap writes down: half of the dose, the dose, and half as much again. Ascending, each once, so that a short dose
 * may leave two.
 *
 * @param dose minutes a day, a whole number of at least 1; null: the drill names none
 */
export function tapMinutes(dose: number | null): readonly number[] {
  const whole = dose ?? USUAL_MINUTES;
  const wished = [down(whole / 2), whole, up(whole * 1.5)];
  return [...new Set(wished)].filter((minutes) => minutes >= 1 && minutes <= MOST).sort((a, b) => a - b);
}
