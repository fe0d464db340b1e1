import { armDifference } from "./arm-difference";
import { blockOrders } from "./block-orders";
import { TIED } from "./exact-permutation-test";
import { type Outcome, ok, tooFew } from "./outcome";
import { requireFinite } from "./require-finite";
import { spentError } from "./spent-error";

/** A place of a block; what was measured there, and at which look (0-based) it was first in. Null: nothing yet. */
export interface BlockPlace {
  readonly arm: 0 | 1;
  readonly measured: { readonly value: number; readonly look: number } | null;
}

/** Places that were randomised together; strata are numbered from 0. */
export interface RandomBlock {
  readonly stratum: number;
  readonly places: readonly BlockPlace[];
}

/** What is asked of a randomised comparison. */
export interface LooksPlan {
  /** Share of the planned information at each look so far, rising; 1: all of it. */
  readonly fractions: readonly number[];
  /** Two-sided error of all looks together. */
  readonly level: number;
  /** Orders that are counted through at most. */
  readonly orders: number;
}

/** What one look says. */
export interface RandomisedLook {
  /** How much higher arm 1 is, in the unit of the values; the interval is the one that this look's share of the error allows. */
  readonly estimate: number;
  readonly low: number;
  readonly high: number;
  /** Share of orders that differ at least as much, at this look alone. */
  readonly p: number;
  /** The least difference, either way, that proves something at this look; infinity: none does. */
  readonly bound: number;
  readonly proved: "yes" | "no";
  /** Values in, arm 0 and arm 1. */
  readonly have: readonly [number, number];
  readonly orders: number;
  readonly counted: "all" | "drawn";
}

interface Series {
  /** By order: the difference, and that of the given arms themselves (1 for the given order). */
  readonly values: Float64Array;
  readonly arms: Float64Array;
}

const HALVINGS = 50;
/** Least error at which an interval is drawn: below it would lie beyond every order. */
const FARTHEST = 1e-9;

/** The end of the interval on one side: the farthest shift with which the given order isn't rare. */
function endOf({ values, arms }: Series, share: number, way: 1 | -1, scale: number): number {
  const seen = values[0] as number;
  const isRare = (shift: number): boolean => {
    const least = Math.abs(seen - shift) - TIED * scale;
    let asFar = 0;
    values.forEach((value, order) => {
      if (Math.abs(value - shift * (arms[order] as number)) >= least) asFar += 1;
    });
    return asFar / values.length <= share;
  };
  let step = scale === 0 ? 1 : scale;
  for (let round = 0; round < HALVINGS && !isRare(seen + way * step); round++) step *= 2;
  if (!isRare(seen + way * step)) return way * Number.POSITIVE_INFINITY;
  let [near, far] = [0, step];
  for (let round = 0; round < HALVINGS; round++) {
    const middle = (near + far) / 2;
    if (isRare(seen + way * middle)) far = middle;
    else near = middle;
  }
  return seen + way * far;
}

/**
 * Judges a comparison of two arms by the very chance that made it, at each of its looks, with one error for all of them.
 *
 * `blocks`: in the order in which they were begun; the places of each in the order given, those not measured yet with null.
 * `plan`: see `LooksPlan`; a value counts from its look on. `rng`: numbers from 0 to below 1, asked only where there are more than
 * `plan.orders` orders. Result, one for each look: the difference within strata (`armDifference`), the share of orders that
 * differ as much, and a bound such that, were the arms alike in everything, a share of orders of at most `spentError` would
 * have passed a bound by then; an interval by inverting the test at the share of this look (an order is as rare as the shifts
 * that it excludes). Too-few: at the last look fewer than 2 values of an arm, counting the smaller. Bad input: NaN, fractions
 * that don't rise, or a look outside of them throws a RangeError. Assumes that each block's order was drawn with equal chance
 * and that whether and when something is measured doesn't hang on the arm; no distribution. The interval adds that an
 * arm shifts everything by the same amount.
 *
 * Source: Rosenberger, W.F. & Lachin, J.M. (2002), Randomization in Clinical Trials, 11 (tests by the randomisation used, also
 * at several looks with spending of Lan & DeMets (1983)), from memory.
 */
export function rerandomisedLooks(
  blocks: readonly RandomBlock[],
  plan: LooksPlan,
  rng: () => number,
): Outcome<RandomisedLook[]> {
  const { fractions, level } = plan;
  requireFinite(fractions, "fractions");
  fractions.forEach((fraction, look) => {
    if (fraction <= (fractions[look - 1] ?? 0)) throw new RangeError(`fractions must rise from 0, got ${fraction}`);
  });
  const places = blocks.flatMap(({ stratum, places: of }) => of.map((place) => ({ ...place, stratum })));
  const measured = places.flatMap((place, at) =>
    place.measured === null ? [] : [{ ...place.measured, at, arm: place.arm, stratum: place.stratum }],
  );
  requireFinite(
    measured.map(({ value }) => value),
    "values",
  );
  for (const { look } of measured)
    if (!Number.isInteger(look) || look < 0 || look >= fractions.length) throw new RangeError(`no such look: ${look}`);
  const countAt = (look: number, arm: 0 | 1): number =>
    measured.filter((each) => each.look <= look && each.arm === arm).length;
  const smaller = Math.min(countAt(fractions.length - 1, 0), countAt(fractions.length - 1, 1));
  if (smaller < 2) return tooFew(smaller, 2);
  const { orders, kind } = blockOrders(
    blocks.map((block) => block.places.map(({ arm }) => arm)),
    plan.orders,
    rng,
  );
  let alive = orders.map(() => true);
  let spent = 0;
  return ok(
    fractions.map((fraction, look) => {
      const so = measured.filter((each) => each.look <= look);
      const at = Uint32Array.from(so, (each) => each.at);
      const values = Float64Array.from(so, ({ value }) => value);
      const strata = Uint32Array.from(so, ({ stratum }) => stratum);
      const given = Uint8Array.from(so, ({ arm }) => arm);
      const series: Series = { values: new Float64Array(orders.length), arms: new Float64Array(orders.length) };
      const armed = new Uint8Array(so.length);
      orders.forEach((order, number) => {
        at.forEach((place, i) => {
          armed[i] = order[place] as number;
        });
        series.values[number] = armDifference(values, armed, strata) ?? 0;
        series.arms[number] = armDifference(given, armed, strata) ?? 0;
      });
      const far = Array.from(series.values, Math.abs);
      const scale = so.reduce((most, { value }) => Math.max(most, Math.abs(value)), 0);
      const tie = TIED * scale;
      const share = spentError(fraction, level) - spent;
      const ranked = far.filter((_, order) => alive[order]).sort((a, b) => b - a);
      // Orders that are tied with the first one too many prove nothing.
      const may = Math.floor(share * orders.length + 1e-9);
      const over = ranked[may];
      const bound =
        may === 0 ? undefined : ranked.slice(0, may).findLast((one) => over === undefined || one > over + tie);
      const passes = (order: number): boolean => bound !== undefined && (far[order] as number) >= bound - tie;
      const passed = alive.filter((lives, order) => lives && passes(order)).length;
      const before = alive[0] === true;
      const seen = far[0] as number;
      const nominal = Math.max(
        far.filter((one) => bound !== undefined && one >= bound - tie).length / orders.length,
        FARTHEST,
      );
      const said: RandomisedLook = {
        estimate: series.values[0] as number,
        low: endOf(series, nominal, -1, scale),
        high: endOf(series, nominal, 1, scale),
        p: far.filter((one) => one >= seen - tie).length / orders.length,
        bound: bound ?? Number.POSITIVE_INFINITY,
        proved: !before || passes(0) ? "yes" : "no",
        have: [countAt(look, 0), countAt(look, 1)],
        orders: orders.length,
        counted: kind,
      };
      spent += passed / orders.length;
      alive = alive.map((lives, order) => lives && !passes(order));
      return said;
    }),
  );
}
