import { chooseReference } from "@/lib/drills/drill-rows";
import { Gathering } from "@/lib/drills/gathering";
import { judgeDrills } from "@/lib/drills/judge-drills";
import { POLICY } from "@/lib/verdict/policy";
import { drawAcademy, type SimulatedAcademy, UNIT_SD } from "./drills-population";

/** What the comparison made of what stays of drills that end, of those with one truth. Effects are in U. */
export interface StaysScore {
  /** What truly stays. */
  readonly kept: number;
  readonly effects: number;
  /** Mean number of students on whom an effect rests. */
  readonly students: number;
  /** Share of 95 of 100 intervals that hold the truth. */
  readonly coverage: number;
  readonly bias: number;
  /** Standard error of the bias, from academy to academy: drills of one share its reference. */
  readonly biasError: number;
  readonly halfWidth: number;
}

/** Draws academies whose drills end and compares what stays of them, as the door does; least kept first. */
export function scoreStays(academy: SimulatedAcademy, academies: number, seed: number): readonly StaysScore[] {
  const { stopped } = academy;
  if (stopped === undefined) throw new RangeError(`drills go on in this academy: ${academy.name}`);
  const truths = [...new Set(stopped.kept)].sort((a, b) => a - b);
  const drawn = Array.from({ length: academies }, (_, number) => staysOf(academy, seed + 7919 * number));
  return truths.map((kept) => {
    const perAcademy = drawn.map((found) => found.filter(({ drill }) => stopped.kept[drill] === kept));
    const all = perAcademy.flat();
    const off = perAcademy
      .filter((found) => found.length > 0)
      .map((found) => mean(found.map((one) => one.estimate)) - kept);
    const spread = Math.sqrt(mean(off.map((value) => (value - mean(off)) ** 2)));
    return {
      kept,
      effects: all.length,
      students: mean(all.map(({ students }) => students)),
      coverage: mean(all.map(({ low, high }) => (low <= kept && kept <= high ? 1 : 0))),
      bias: mean(all.map(({ estimate }) => estimate)) - kept,
      biasError: spread / Math.sqrt(off.length),
      halfWidth: mean(all.map(({ low, high }) => (high - low) / 2)),
    };
  });
}

interface Stayed {
  readonly drill: number;
  readonly students: number;
  readonly estimate: number;
  readonly low: number;
  readonly high: number;
}

function staysOf(academy: SimulatedAcademy, seed: number): readonly Stayed[] {
  const tracks = drawAcademy(academy, seed);
  const gathering = new Gathering(POLICY);
  for (const track of tracks) gathering.takeFirst(track);
  for (const track of tracks) gathering.takeWithout(track);
  const gathered = gathering.gathered();
  const { results } = judgeDrills(chooseReference(gathered, POLICY), gathered.drills, null);
  return results.flatMap(({ drill, retained, retainedStudents }) =>
    retained === null
      ? []
      : {
          ...{ drill: Number(drill.slice(1)), students: retainedStudents, estimate: retained.estimate / UNIT_SD },
          ...{ low: retained.low95 / UNIT_SD, high: retained.high95 / UNIT_SD },
        },
  );
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
