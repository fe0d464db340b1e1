import { deletePreference, insertPreference } from "@/db/write/preferences";
import { parseRosterView, rosterQuery } from "@/lib/domain/roster-view";
import { type Viewer, viewerKey } from "../gate";
import { ROSTER_VIEW } from "./roster-choice";

/** Keeps a view for this viewer: the roster opens in it where nothing else is asked for. A search is of the moment and not kept. */
export function keepRosterView(viewer: Viewer, query: string): void {
  const view = parseRosterView(Object.fromEntries(new URLSearchParams(query)));
  if (view === null) return;
  const value = rosterQuery({ ...view, q: "" });
  insertPreference(viewer.db, viewer.scope, { viewer: viewerKey(viewer), name: ROSTER_VIEW, value });
}

/** Lets go of the viewer's own view. */
export function forgetRosterView(viewer: Viewer): void {
  deletePreference(viewer.db, viewer.scope, viewerKey(viewer), ROSTER_VIEW);
}
