import type { LookData } from "./look-data";
import type { PosteriorComponents } from "./posterior-components";

/**
 * Components with more belief in a step that has only just happened.
 *
 * `lastAlone` and `lastTwo` multiply the weights of the steps whose new level holds the last group alone and the last
 * two. A step is as likely there as at any other group, yet the groups that could show it are the fewest: whoever says
 * that nothing has changed is wrong there first.
 */
export function withRecentDoubt(
  look: LookData,
  components: PosteriorComponents,
  lastAlone: number,
  lastTwo: number,
): PosteriorComponents {
  const weights = components.weights.slice();
  const { stride, unchanged } = components;
  look.cells.forEach((_, g) => {
    // Steps begin at group 1, so that of the last group stands at count - 2.
    const last = g * stride + unchanged + look.count - 2;
    weights[last] = (weights[last] as number) * lastAlone;
    weights[last - 1] = (weights[last - 1] as number) * lastTwo;
  });
  return { ...components, weights };
}
