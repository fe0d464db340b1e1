import type { ClubGroup } from "@/lib/domain/club-group";
import type { Fundamental, FundamentalId } from "@/lib/domain/fundamental";
import type { Viewer } from "../gate";
import { loadGridSource, loadRead } from "./grid-desk";
import type { ChosenStudent } from "./group-desk";
import type { GridSource } from "./session-grid";

/** The grid of one student of a group, and which of its first columns matter now for this student. */
export interface GroupGrid {
  readonly source: GridSource;
  readonly own: readonly FundamentalId[];
}

/** Read from stills, in the order of work. */
function readIn(fundamentals: readonly Fundamental[], ids: ReadonlySet<string>): readonly Fundamental[] {
  return fundamentals.filter((each) => each.derivedFrom === null && ids.has(each.id));
}

/**
 * A grid for each student of a group: first what matters now for any of them, in the order of work, so that one eye goes
 * down one list at every student; the rest one key away. Where columns were chosen there are those alone.
 *
 * Only the choice of columns follows from what is on file, as in the form of one student.
 *
 * @param clubGroup whose tracks say what matters now
 * @param wished ids of the columns that were chosen; none: what matters now
 */
export async function loadGroupGrids(
  viewer: Viewer,
  students: readonly ChosenStudent[],
  clubGroup: ClubGroup,
  wished: readonly string[],
): Promise<ReadonlyMap<string, GroupGrid>> {
  const fundamentals = loadRead(viewer);
  const chosen = readIn(fundamentals, new Set(wished));
  const sources: { readonly id: string; readonly source: GridSource }[] = [];
  // One after the other: each asks the same database.
  for (const { id, scope } of students)
    sources.push({ id, source: await loadGridSource({ ...viewer, student: scope }, clubGroup) });
  const union = readIn(fundamentals, new Set(sources.flatMap(({ source }) => source.first)));
  const columns = chosen.length > 0 ? chosen : union;
  const first = columns.map((column) => column.id);
  return new Map(
    sources.map(({ id, source }) => [
      id,
      {
        source: { ...source, first, fundamentals: chosen.length > 0 ? chosen : fundamentals },
        own: first.filter((column) => source.first.includes(column)),
      },
    ]),
  );
}
