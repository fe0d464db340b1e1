import { median } from "simple-statistics";
import { replicateSd } from "./replicate-sd";
import { requireSeries } from "./require-series";
import type { Series } from "./series";

/** Where a replicate stands: index of its group in `Series.groups`, index of the value in the group. */
export interface ReplicateAt {
  readonly group: number;
  readonly replicate: number;
}

/**
 * Replicates that look like misreadings: more than four robust sds from the median of their group.
 *
 * Only used groups of three or more replicates are searched; where half of a group or more lie that far out, none of
 * them is called a misreading, because nobody can tell which half is right. The robust sd is the series' own (see
 * `replicateSd`), or the reading error where that is larger. With fewer than four degrees of freedom
 * nothing is called a misreading. In order of group, then replicate. Throws on bad input.
 */
export function misreadings(series: Series): ReplicateAt[] {
  requireSeries(series);
  const used = series.groups.filter((group) => group.used).map((group) => group.values);
  const spread = replicateSd(used, series.readingErrorSd, null);
  if (spread.own === null) return [];
  const reach = 4 * Math.max(spread.own, series.readingErrorSd);
  const found: ReplicateAt[] = [];
  series.groups.forEach((group, index) => {
    if (!group.used || group.values.length < 3) return;
    const middle = median(group.values as number[]);
    const far = group.values.flatMap((value, replicate) =>
      Math.abs(value - middle) > reach ? [{ group: index, replicate }] : [],
    );
    if (2 * far.length < group.values.length) found.push(...far);
  });
  return found;
}
