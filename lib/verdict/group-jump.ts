import { HIGH_SENSITIVITY } from "@/lib/capture/camera-limits";
import type { Fundamental, View } from "@/lib/domain/fundamental";
import { huberCentre } from "@/lib/stats/huber-centre";
import { type Departure, departures, type FilmedSession, isWitness } from "./fingerprint-residuals";
import { FINGERPRINT } from "./fingerprint-thresholds";
import { GROUP_JUMP } from "./group-jump-thresholds";

/** One student of a group session: the session of one view, and the student's earlier used ones, date order. */
export interface GroupMember {
  readonly session: FilmedSession;
  readonly earlier: readonly FilmedSession[];
}

/** A jump common to a group, as a phone off to the side makes it. */
export interface GroupJump {
  readonly view: View;
  /** Students whose usual levels are known, and how many of them moved to the side of the shift. */
  readonly students: number;
  readonly together: number;
  /** Degrees by which the phone seems to have stood off: yaw face-on, + toward the target; the offset's angle down the line, + on the ball's side. */
  readonly offBy: number;
  /** Standard error of that, degrees. */
  readonly sd: number;
  /** The fundamentals that moved as the phone would move them, with the group's mean departure in their units. */
  readonly moved: readonly { readonly fundamental: Fundamental; readonly by: number }[];
}

/** One fundamental over the group: mean departure, its variance, and by how much a degree of shift and of roll moves it. */
interface GroupMean {
  readonly fundamental: Fundamental;
  readonly mean: number;
  readonly variance: number;
  readonly loadings: readonly [number, number];
}

/**
 * Whether the students of a group session moved together as a phone off to the side would move them.
 *
 * Each student is held against the own usual level of earlier sessions, with the doubt of that level, and so never against
 * the others. Over the students each fundamental has a robust mean; a shift of the phone moves these in proportion to their
 * sensitivities, beside a roll. It is named when it is far from none in its standard errors, as good as surely more than a
 * square phone may be off, when most students moved to its side, when at least two fundamentals show it, one of them
 * untouched by a roll, and when what it leaves is small: a drill given to all moves one fundamental and fits no phone. The
 * standard error is the larger of the model's and the jackknife's over students, with what earlier placements leave open.
 *
 * @param members any order; those with fewer than the least of earlier sessions take no part
 * @returns null: nothing to say, or too few to say it of
 */
export function groupJump(view: View, members: readonly GroupMember[]): GroupJump | null {
  const known = members.flatMap((member) => {
    const earlier = member.earlier.slice(-FINGERPRINT.referenceMost);
    const items = earlier.length < FINGERPRINT.referenceLeast ? [] : departures([member.session], earlier);
    return items.length === 0 ? [] : [{ items, earlier }];
  });
  const each = known.map((member) => member.items);
  const means = groupMeans(each);
  if (known.length < GROUP_JUMP.fewestStudents || !canTell(means)) return null;
  const { shift, variance, misfit } = fitted(means);
  const sd = Math.sqrt(Math.max(variance, jackknife(each)) + earlierVariance(known.map((member) => member.earlier)));
  const limit = view === "face-on" ? FINGERPRINT.offFromYaw : FINGERPRINT.offFromOffset;
  const size = Math.abs(shift);
  if (size < GROUP_JUMP.together * sd || size - limit < GROUP_JUMP.beyond * sd || misfit > GROUP_JUMP.misfit)
    return null;
  const side = Math.sign(shift);
  const together = each.filter((items) => fitted(items.map(meanOf)).shift * side > 0).length;
  const moved = means.filter(
    ({ fundamental, mean, variance: own, loadings: [loading] }) =>
      isWitness(fundamental) && mean * loading * side >= GROUP_JUMP.witnessMoved * Math.abs(loading) * Math.sqrt(own),
  );
  if (together < GROUP_JUMP.sameSide * known.length || !canShow(moved)) return null;
  return {
    view,
    students: known.length,
    together,
    offBy: shift,
    sd,
    moved: moved.map(({ fundamental, mean }) => ({ fundamental, by: mean })),
  };
}

function meanOf({ fundamental, residual, variance, loadings }: Departure): GroupMean {
  return { fundamental, mean: residual, variance, loadings };
}

/** The group's mean of every fundamental that enough students have. */
function groupMeans(students: readonly (readonly Departure[])[]): readonly GroupMean[] {
  const byId = new Map<string, Departure[]>();
  for (const item of students.flat()) {
    const list = byId.get(item.fundamental.id) ?? [];
    byId.set(item.fundamental.id, list);
    list.push(item);
  }
  return [...byId.values()].flatMap((items) => {
    const [first] = items;
    if (first === undefined || items.length < GROUP_JUMP.fewestStudents - 1) return [];
    const spread = items.reduce((sum, item) => sum + item.variance, 0) / items.length;
    const mean = huberCentre(
      items.map((item) => item.residual),
      FINGERPRINT.fullReach * Math.sqrt(spread),
    );
    return [{ fundamental: first.fundamental, mean, variance: spread / items.length, loadings: first.loadings }];
  });
}

/** Whether a phone off to the side would show at all: enough fundamentals, enough of them moved much by it. */
function canTell(means: readonly GroupMean[]): boolean {
  return means.length >= FINGERPRINT.fewestTogether && canShow(means.filter((mean) => isWitness(mean.fundamental)));
}

/** Enough witnesses, one of them untouched by a roll where any roll counts in that view. */
function canShow(witnesses: readonly GroupMean[]): boolean {
  const free = witnesses.some(({ loadings: [, roll] }) => Math.abs(roll) < HIGH_SENSITIVITY);
  return witnesses.length >= FINGERPRINT.fewestWitnesses && free;
}

/** Least squares of a shift, and of a roll that is believed small; `misfit`: mean square of what is left. */
function fitted(means: readonly GroupMean[]): {
  readonly shift: number;
  readonly variance: number;
  readonly misfit: number;
} {
  let [a11, a12, a22, b1, b2] = [0, 0, 1 / FINGERPRINT.movedRollSd ** 2, 0, 0];
  for (const { mean, variance, loadings } of means) {
    const [l1, l2] = loadings;
    a11 += l1 ** 2 / variance;
    a12 += (l1 * l2) / variance;
    a22 += l2 ** 2 / variance;
    b1 += (l1 * mean) / variance;
    b2 += (l2 * mean) / variance;
  }
  const determinant = a11 * a22 - a12 ** 2;
  if (!(determinant > 0)) return { shift: 0, variance: Number.POSITIVE_INFINITY, misfit: 0 };
  const shift = (a22 * b1 - a12 * b2) / determinant;
  const roll = (a11 * b2 - a12 * b1) / determinant;
  const left = means.reduce(
    (sum, { mean, variance, loadings }) => sum + (mean - loadings[0] * shift - loadings[1] * roll) ** 2 / variance,
    (roll / FINGERPRINT.movedRollSd) ** 2,
  );
  return { shift, variance: a22 / determinant, misfit: left / Math.max(1, means.length - 1) };
}

/** Variance of the shift as the students themselves scatter about it. */
function jackknife(students: readonly (readonly Departure[])[]): number {
  const without = students.map((_, left) => fitted(groupMeans(students.filter((_student, at) => at !== left))).shift);
  const centre = without.reduce((sum, shift) => sum + shift, 0) / without.length;
  const squares = without.reduce((sum, shift) => sum + (shift - centre) ** 2, 0);
  return ((without.length - 1) / without.length) * squares;
}

/** What the placements of the earlier sessions leave open of the group's usual level: those of one label share one error. */
function earlierVariance(students: readonly (readonly FilmedSession[])[]): number {
  const shares = new Map<string, number>();
  students.forEach((earlier, student) => {
    earlier.forEach(({ label, shiftSd }, at) => {
      const name = label === null ? `${student} ${at}` : `label ${label}`;
      shares.set(name, (shares.get(name) ?? 0) + shiftSd / (earlier.length * students.length));
    });
  });
  return [...shares.values()].reduce((sum, share) => sum + share ** 2, 0);
}
