import type { ComparedTrack } from "@/lib/domain/compared-track";
import { tQuantile } from "@/lib/stats/t-distribution";
import type { Policy } from "@/lib/verdict/policy";
import type { BeforeAfterResult, Caveat, Comparison, Estimate } from "./comparison";
import { CAVEAT_CODES } from "./comparison";
import { type Compared, chooseReference, rowOf, SCORE } from "./drill-rows";
import { ageAndHand, drillSensitivity } from "./drill-sensitivity";
import type { Episode } from "./episode";
import { fitEffects } from "./fit-effects";
import { type Gathered, Gathering, quantile } from "./gathering";
import { judgeDrills } from "./judge-drills";
import { mean } from "./scored-track";

/**
 * The comparison of all drills across the tracks of one fundamental, one a student, in one unit and any order.
 *
 * @param among how many groups of students there are of which these are one that was chosen: so many times less may be left to
 * chance before a drill is said to work (Bonferroni 1936); 1: it is everybody
 */
export function compareDrills(tracks: readonly ComparedTrack[], policy: Policy, among = 1): Comparison {
  const gathering = new Gathering(policy);
  for (const track of tracks) gathering.takeFirst(track);
  for (const track of tracks) gathering.takeWithout(track);
  return compareGathered(gathering.gathered(), policy, among);
}

/** The comparison of what was gathered from both passes over the tracks; `among` as in `compareDrills`. */
export function compareGathered(gathered: Gathered, policy: Policy, among = 1): Comparison {
  const compared = chooseReference(gathered, policy);
  const { against, reference, onDrills } = compared;
  const noise = gathered.unitSd === null ? null : policy.smallestWorthwhile * gathered.unitSd;
  const worthwhile = quantile(gathered.worthwhile, 0.5) ?? noise;
  const { results, effects } = judgeDrills(compared, gathered.drills, worthwhile, among);
  const all = [...reference, ...onDrills];
  const checked = checkedColumns(all, policy);
  const notTold = results.filter(({ students, effect }) => effect === null && students >= policy.judged).length;
  const cameBack = meanChange(reference);
  return {
    students: all.length,
    reference:
      against === "other-drills" || cameBack === null
        ? { kind: "none", have: gathered.without.length, need: policy.waiters }
        : { kind: against, students: reference.length, cameBack },
    smallestWorthwhile: worthwhile,
    drills: results,
    beforeAfter: results.filter(({ students }) => students > 0).map(({ drill }) => beforeAfter(drill, onDrills)),
    sensitivity: drillSensitivity(compared, effects),
    ...checked,
    caveats: caveatsOf(compared, gathered, notTold),
  };
}

function beforeAfter(drill: string, onDrills: readonly Episode[]): BeforeAfterResult {
  const own = onDrills.filter((episode) => episode.drill === drill);
  return {
    drill,
    students: own.length,
    before: mean(own.map(({ score }) => score.before.run)),
    after: mean(own.map(({ score }) => score.after)),
    higher: mean(own.map((episode) => episode.higher)),
    change: meanChange(own),
  };
}

/** Mean of after less before; null under two students. */
function meanChange(episodes: readonly Episode[]): Estimate | null {
  const changes = episodes.map(({ score }) => score.after - score.before.run);
  if (changes.length < 2) return null;
  const estimate = mean(changes);
  const variance = changes.reduce((sum, change) => sum + (change - estimate) ** 2, 0) / (changes.length - 1);
  const reach = -tQuantile(0.025, changes.length - 1) * Math.sqrt(variance / changes.length);
  return { estimate, low95: estimate - reach, high95: estimate + reach };
}

/** What logged practice, age and hand go with, each beside the drills and everything else of the fit. */
function checkedColumns(
  all: readonly Episode[],
  policy: Policy,
): Pick<Comparison, "perHour" | "perYear" | "leftHanded"> {
  const people = ageAndHand(all);
  const found = people === null ? null : extraEffects(all, people, policy);
  const known = (count: number, name: string) => (count < policy.judged ? null : (found?.(name) ?? null));
  const logged = all.filter(({ drill, minutes }) => drill !== null && minutes !== null);
  const hours = logged.map((episode) => (episode.minutes ?? 0) / 60);
  const effect =
    logged.length < policy.judged
      ? null
      : extraEffects(logged, ({ minutes }) => ({ hours: (minutes ?? 0) / 60 - mean(hours) }), policy)("hours");
  return {
    perHour: effect === null ? null : { students: logged.length, effect },
    perYear: known(all.filter(({ ageYears }) => ageYears !== null).length, "ageYears"),
    leftHanded: known(all.filter(({ hand }) => hand === "left").length, "leftHanded"),
  };
}

function extraEffects(
  episodes: readonly Episode[],
  extra: (episode: Episode) => Readonly<Record<string, number>>,
  policy: Policy,
): (name: string) => Estimate | null {
  const rows = episodes.flatMap((episode) => rowOf(episode, { ...SCORE, extra }) ?? []);
  const drills = [...new Set(rows.flatMap((row) => row.drill ?? []))].sort();
  const fitted = fitEffects(rows, drills, policy);
  return (name) => {
    const effect = fitted?.extra.get(name);
    return effect === undefined ? null : { estimate: effect.estimate, low95: effect.low95, high95: effect.high95 };
  };
}

function caveatsOf(
  { against, reference, onDrills, policy }: Compared,
  gathered: Gathered,
  notTold: number,
): readonly Caveat[] {
  const all = [...reference, ...onDrills];
  const counts: Readonly<Record<Caveat["code"], number>> = {
    "hidden-choice": onDrills.filter((episode) => !episode.byChance).length,
    "not-marked": against === "no-drill-recorded" ? reference.length : 0,
    "no-reference": against === "other-drills" ? onDrills.length : 0,
    "no-before": gathered.leftOut["no-before"],
    "no-after": gathered.leftOut["no-after"],
    "short-history": all.filter(({ score }) => score.before.earlier === null).length,
    "few-after": all.filter(({ sessions }) => sessions < policy.afterSessions).length,
    overlap: all.filter((episode) => episode.overlapped).length,
    "not-told-from-coach": notTold,
    "no-dose": onDrills.filter((episode) => episode.minutes === null).length,
    "by-chance": onDrills.filter((episode) => episode.byChance).length,
  };
  return CAVEAT_CODES.filter((code) => counts[code] > 0).map((code) => ({ code, count: counts[code] }));
}
