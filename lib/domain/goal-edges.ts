import type { ClubKind } from "./club-group";
import type { Edges } from "./fundamental-shape";

/** The same goal with every club. */
export function everywhere(low: number | null, high: number | null): Record<ClubKind, Edges> {
  const same = { low, high };
  return { "short-iron": same, iron: same, hybrid: same, wood: same, driver: same };
}

/** A goal for each kind of clubs, shortest clubs first. */
export function byClub(
  shortIron: Edges,
  iron: Edges,
  hybrid: Edges,
  wood: Edges,
  driver: Edges,
): Record<ClubKind, Edges> {
  return { "short-iron": shortIron, iron, hybrid, wood, driver };
}

/** A goal with both edges. */
export const edges = (low: number, high: number): Edges => ({ low, high });
