import { holm } from "@/lib/stats/holm";
import type { Policy } from "@/lib/verdict/policy";
import type { Against, DrillResult, DrillSays, Estimate } from "./comparison";
import { type Compared, type DrillEffect, drillEffects, SCORE } from "./drill-rows";

/** The drills of the academy and what is said of each, with the effects that it rests on. */
export interface JudgedDrills {
  readonly results: readonly DrillResult[];
  readonly effects: ReadonlyMap<string, DrillEffect>;
}

/**
 * What is said of every drill.
 *
 * @param drills names of all on file, any order
 * @param worthwhile smallest change worth having, in the unit; null: not known, so nothing is ruled out
 * @param among groups of students of which this is a chosen one; 1: everybody
 * @returns most students first, of equally many by name
 */
export function judgeDrills(
  compared: Compared,
  drills: readonly string[],
  worthwhile: number | null,
  among = 1,
): JudgedDrills {
  const effects = drillEffects(compared, SCORE);
  const retained = drillEffects(compared, { ...SCORE, window: "retained" });
  const shares = drillEffects(compared, { ...SCORE, outcomes: (episode) => episode.inBand });
  const named = [...effects.keys()];
  const adjusted = holm(named.map((drill) => effects.get(drill)?.p ?? 1));
  const results = drills.map((drill): DrillResult => {
    const own = compared.onDrills.filter((episode) => episode.drill === drill);
    const effect = effects.get(drill) ?? null;
    const pAdjusted = effect === null ? null : Math.min(1, among * (adjusted[named.indexOf(drill)] ?? 1));
    return {
      drill,
      students: own.length,
      sessions: own.reduce((sum, episode) => sum + episode.sessions, 0),
      against: compared.against,
      byChance: own.filter((episode) => episode.byChance).length,
      effect: bare(effect),
      retained: bare(retained.get(drill) ?? null),
      retainedStudents: own.filter((episode) => episode.score.retained !== null).length,
      bandShare: bare(shares.get(drill) ?? null),
      pAdjusted,
      says: decideDrill(
        { students: own.length, effect, pAdjusted, against: compared.against, worthwhile },
        compared.policy,
      ),
    };
  });
  results.sort((a, b) => b.students - a.students || (a.drill < b.drill ? -1 : 1));
  return { results, effects };
}

/** What is said of one drill. */
export function decideDrill(
  given: {
    readonly students: number;
    readonly effect: Estimate | null;
    readonly pAdjusted: number | null;
    readonly against: Against;
    readonly worthwhile: number | null;
  },
  policy: Policy,
): DrillSays {
  const { students, effect, pAdjusted, against, worthwhile } = given;
  if (students < policy.judged) return "too-few";
  if (effect === null || pAdjusted === null) return "cant-tell";
  if (against === "waiting" && pAdjusted <= policy.falseWorks && effect.low95 > 0) return "works";
  // What lies above nothing is not called no better, though it may be less than is worth having.
  if (worthwhile !== null && effect.high95 < worthwhile && effect.low95 <= 0) return "no-better";
  return "cant-tell";
}

function bare(effect: Estimate | null): Estimate | null {
  if (effect === null) return null;
  return { estimate: effect.estimate, low95: effect.low95, high95: effect.high95 };
}
