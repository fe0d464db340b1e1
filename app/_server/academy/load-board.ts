import { type BoardSheet, buildBoard } from "@/lib/report/build-board";
import type { Viewer } from "../gate";
import { loadAcademy } from "./load-academy";

/** The title of the sheet's document: no name stands in it. */
export function boardTitle({ words }: Viewer): string {
  return words.say("document-title", { page: words.say("board") });
}

/** The academy's board sheet: of everybody, for no group is told apart there. */
export async function loadBoard(viewer: Viewer): Promise<BoardSheet> {
  return buildBoard(viewer.words, await loadAcademy(viewer, {}));
}
