import { readNoteCodings } from "@/db/read/note-codings";
import { codingsInForce } from "@/lib/domain/phrase-coding";
import { buildNoteCodings, type NoteCodingsPage } from "@/lib/report/build-note-codings";
import type { TextPage } from "@/lib/report/form-model";
import { linkTables } from "../archive/table-links";
import type { Viewer } from "../gate";

/** The page of the phrases that the academy corrected. */
export function loadNoteCodings({ db, scope, words }: Viewer): NoteCodingsPage {
  return linkTables(words, "note-codings", {}, buildNoteCodings(words, readNoteCodings(db, scope)));
}

/** The way from the settings to the corrected phrases. */
export function loadNotesDoor({ db, scope, words }: Viewer): TextPage["parts"][number] {
  return {
    margin: words.say("settings.notes"),
    heading: words.say("settings.notes.heading", { codings: codingsInForce(readNoteCodings(db, scope)).length }),
    paragraphs: [words.say("settings.notes.text")],
    links: [{ href: "/settings/notes", label: words.say("settings.notes.open") }],
  };
}
