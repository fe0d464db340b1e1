import type { Edges } from "./fundamental";
import type { JudgedTrack } from "./judged-track";

/** The goal of a track that was in force on a day; both edges null: it has none. */
export function goalOn({ goal, goals }: Pick<JudgedTrack, "goal" | "goals">, day: string): Edges {
  return goals?.findLast(({ from }) => from <= day) ?? goal ?? { low: null, high: null };
}
