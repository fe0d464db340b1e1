import { parseRosterView, type RosterWords, WHOLE_ROSTER } from "@/lib/domain/roster-view";
import { buildRosterCsv } from "@/lib/report/build-downloads";
import type { Viewer } from "../gate";
import { loadChosen } from "./load-roster";

/**
 * The rows that an address asks for, of all its pages and in their order. A viewer's own view is not looked at: a file is
 * what its address says, whoever asks for it.
 */
export async function loadRosterCsv(
  viewer: Viewer,
  words: RosterWords,
): Promise<{ readonly text: string; readonly studentIds: readonly string[] }> {
  const view = parseRosterView(words) ?? WHOLE_ROSTER;
  const { left, whole } = await loadChosen(viewer, { view, kept: null, openedKept: "no" });
  const rows = left.entries.map(({ student: { id, alias } }) => {
    const all = whole.everyone.tracks.get(id) ?? [];
    return { alias, tracks: view.club === null ? all : all.filter(({ clubGroup }) => clubGroup === view.club) };
  });
  return { text: buildRosterCsv(rows), studentIds: left.entries.map(({ student }) => student.id) };
}
