import { evidence } from "./evidence";
import type { Evidence } from "./look";
import type { NoiseModel } from "./noise-model";
import type { Outcome } from "./outcome";
import type { Series } from "./series";

/**
 * Evidence at every look of a season: entry i is what `evidence` says of groups 0 to i, one entry a group.
 *
 * A look sees nothing later than itself. An unused group repeats the answer of the look before it.
 */
export function evidenceLooks(series: Series, noise: NoiseModel): Outcome<Evidence>[] {
  const looks: Outcome<Evidence>[] = [];
  series.groups.forEach((group, index) => {
    const before = looks[index - 1];
    looks.push(
      before !== undefined && !group.used
        ? before
        : evidence({ ...series, groups: series.groups.slice(0, index + 1) }, noise),
    );
  });
  return looks;
}
