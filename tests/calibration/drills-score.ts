import type { Comparison } from "@/lib/drills/comparison";
import { chooseReference } from "@/lib/drills/drill-rows";
import { Gathering } from "@/lib/drills/gathering";
import { judgeDrills } from "@/lib/drills/judge-drills";
import { POLICY } from "@/lib/verdict/policy";
import { drawAcademy, type SimulatedAcademy, UNIT_SD } from "./drills-population";
import { type DrillsPower, drillsPower, type WorthDrill } from "./drills-power";

/** What the comparison made of many academies of one kind. Effects are in U. */
export interface DrillsScore {
  readonly academies: number;
  /** Drills with an effect. */
  readonly effects: number;
  /** Share of 95 of 100 intervals that hold the truth. */
  readonly coverage: number;
  readonly bias: number;
  readonly halfWidth: number;
  /** Share of academies in which a useless drill is said to work. */
  readonly falseWorks: number;
  /** Of the drills worth something, the share said to work, by number of students. */
  readonly found: readonly {
    readonly from: number;
    readonly to: number;
    readonly share: number;
    readonly of: number;
  }[];
  /** The same in finer steps, with what theory says; null: none is worth anything. */
  readonly power: DrillsPower | null;
  /** Of the useless drills with ten students or more, the share said to be no better. */
  readonly noBetter: number;
  /** Of the drills worth something, the share said to be no better. */
  readonly wronglyNoBetter: number;
}

const SIZES = [
  [10, 19],
  [20, 999],
] as const;

/** Draws academies and compares their drills, as the door does up to what is said of each. */
export function scoreDrills(academy: SimulatedAcademy, academies: number, seed: number): DrillsScore {
  const drills: { readonly truth: number; readonly result: Comparison["drills"][number] }[] = [];
  const worthDrills: WorthDrill[] = [];
  let falseWorks = 0;
  for (let number = 0; number < academies; number++) {
    const tracks = drawAcademy(academy, seed + 7919 * number);
    const gathering = new Gathering(POLICY);
    for (const track of tracks) gathering.takeFirst(track);
    for (const track of tracks) gathering.takeWithout(track);
    const gathered = gathering.gathered();
    const worthwhile = POLICY.smallestWorthwhile * (gathered.unitSd ?? 0);
    const { results } = judgeDrills(chooseReference(gathered, POLICY), gathered.drills, worthwhile);
    const known = results.map((result) => ({ result, truth: academy.effects[Number(result.drill.slice(1))] ?? 0 }));
    if (known.some(({ truth, result }) => truth === 0 && result.says === "works")) falseWorks += 1;
    drills.push(...known);
    const tested = known.filter(({ result }) => result.effect !== null).length;
    for (const { truth, result } of known) {
      const { effect, students, says } = result;
      if (truth <= 0 || effect === null) continue;
      const halfWidth = (effect.high95 - effect.low95) / 2 / UNIT_SD;
      const estimate = effect.estimate / UNIT_SD;
      worthDrills.push({ students, tested, truth, estimate, halfWidth, works: says === "works" });
    }
  }
  const estimated = drills.flatMap(({ truth, result: { effect } }) =>
    effect === null
      ? []
      : [{ truth, estimate: effect.estimate / UNIT_SD, low: effect.low95 / UNIT_SD, high: effect.high95 / UNIT_SD }],
  );
  const useless = drills.filter(({ truth, result }) => truth === 0 && result.students >= 10);
  const worth = drills.filter(({ truth, result }) => truth > 0 && result.students >= 10);
  return {
    academies,
    effects: estimated.length,
    coverage: share(estimated, ({ truth, low, high }) => low <= truth && truth <= high),
    bias: estimated.reduce((sum, { truth, estimate }) => sum + estimate - truth, 0) / estimated.length,
    halfWidth: estimated.reduce((sum, { low, high }) => sum + (high - low) / 2, 0) / estimated.length,
    falseWorks: falseWorks / academies,
    found: SIZES.map(([from, to]) => {
      const sized = worth.filter(({ result }) => result.students >= from && result.students <= to);
      return { from, to, share: share(sized, ({ result }) => result.says === "works"), of: sized.length };
    }),
    power: worthDrills.length === 0 ? null : drillsPower(worthDrills),
    noBetter: share(useless, ({ result }) => result.says === "no-better"),
    wronglyNoBetter: share(worth, ({ result }) => result.says === "no-better"),
  };
}

function share<T>(values: readonly T[], holds: (value: T) => boolean): number {
  return values.length === 0 ? 0 : values.filter(holds).length / values.length;
}
