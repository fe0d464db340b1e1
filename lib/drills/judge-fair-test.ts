import type { Arm, FairAllocation, FairFigures, FairTest, FairValue, FairWord } from "@/lib/domain/fair-test";
import { type Outcome, ok } from "@/lib/stats/outcome";
import { type RandomBlock, type RandomisedLook, rerandomisedLooks } from "@/lib/stats/rerandomised-looks";
import { FAIR_TEST_THRESHOLDS, FAIR_TEST_VERSION } from "./fair-test-thresholds";

/** What a look at a test rests on. */
export interface FairLookSource {
  readonly test: Pick<FairTest, "least">;
  readonly draws: readonly FairAllocation[];
  readonly values: readonly FairValue[];
  /** Share of the plan that was in at each look, this one last. */
  readonly fractions: readonly number[];
  /** Drawn and followed to the end without a film. */
  readonly missing: number;
  /** The blocks of one coach's order, as many as hold so many places. */
  readonly orderOf: (coachId: string, places: number) => readonly (readonly Arm[])[];
  /** Numbers from 0 to below 1, the same at every look. */
  readonly rng: () => number;
}

/** The coaches' orders as far as they were begun, each coach a stratum, blocks by the time of their first draw. */
function blocksOf({ draws, values, orderOf }: FairLookSource): RandomBlock[] {
  const coaches = [...new Set(draws.map(({ coachId }) => coachId))];
  const found = new Map(values.map((value) => [value.allocationId, value]));
  const dated = coaches.flatMap((coachId, stratum) => {
    const own = draws.filter((draw) => draw.coachId === coachId);
    let place = 0;
    return orderOf(coachId, Math.max(...own.map((draw) => draw.place)) + 1).map((arms) => {
      const from = place;
      place += arms.length;
      const mine = own.filter((draw) => draw.place >= from && draw.place < place);
      const places = arms.map((arm, at) => {
        const value = found.get(mine.find((draw) => draw.place === from + at)?.id ?? "");
        return { arm, measured: value === undefined ? null : { value: value.value, look: value.look } };
      });
      const begun = mine.map(({ recordedAt }) => recordedAt).sort()[0] ?? "";
      return { begun, block: { stratum, places } };
    });
  });
  return dated.sort((a, b) => (a.begun < b.begun ? -1 : a.begun > b.begun ? 1 : 0)).map(({ block }) => block);
}

function wordOf({ proved, estimate, low, high }: RandomisedLook, least: number): FairWord {
  if (proved === "yes") return estimate > 0 ? "second" : "first";
  return low > -least && high < least ? "alike" : "open";
}

const finite = (end: number): number | null => (Number.isFinite(end) ? end : null);

/**
 * Judges a test at a planned look by the very lot that made it: what was drawn counts, whatever was given (intention to treat).
 *
 * @returns which drill gains more, or that no difference as large as the least worth finding is left (`alike`), or that it is
 *   open, with the difference (second less first, in the unit) and its interval; too-few: under two students of a drill with a film,
 *   counting the fewer. A draw whose order no longer fits its place throws. Assumptions and source: `rerandomisedLooks`;
 *   students are compared with students of the same coach.
 */
export function judgeFairTest(source: FairLookSource): Outcome<FairFigures> {
  const { test, fractions, missing, rng } = source;
  for (const { coachId, place, arm } of source.draws)
    if (source.orderOf(coachId, place + 1).flat()[place] !== arm)
      throw new Error(`the draw at place ${place} is not what its order says`);
  const { level, orders } = FAIR_TEST_THRESHOLDS;
  const looks = rerandomisedLooks(blocksOf(source), { fractions, level: level.value, orders: orders.value }, rng);
  if (looks.kind !== "ok") return looks;
  const look = looks.value.at(-1) as RandomisedLook;
  const { estimate, low, high, p, have, orders: counted, counted: how } = look;
  return ok({
    says: wordOf(look, test.least),
    fraction: fractions.at(-1) as number,
    estimate,
    ...{ low: finite(low), high: finite(high), p, orders: counted, counted: how },
    have: [have[0], have[1]],
    missing,
    version: FAIR_TEST_VERSION,
  });
}
