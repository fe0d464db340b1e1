import { FILE_LIMIT_MB } from "@/lib/ingest/decode-text";
import type { Words } from "@/lib/words/catalogue";
import { refuseAtDoor } from "../import/door-answer";
import { DOOR } from "./origin";
import { refusalResponse } from "./refusal-page";

/** In bytes; a file beyond it is refused with its name. */
export const UPLOAD_LIMIT = FILE_LIMIT_MB * 1024 * 1024;

/** A form wraps the file in a few hundred bytes of its own. */
export const FORM_BYTES = 4096;

/** The refusal of a body over the limit, as data at the door of other programs and as a page elsewhere. */
export function refuseTooBig(words: Words, pathname: string): Response {
  return pathname.startsWith(DOOR)
    ? refuseAtDoor(words, "too-big", { limit: FILE_LIMIT_MB })
    : refusalResponse(words, 413, words.say("import-page.too-big", { limit: FILE_LIMIT_MB }));
}

/** Whether a body says of itself that it is over the limit: it is refused without being looked at. */
export function statesTooMuch(sent: Headers): boolean {
  return Number(sent.get("content-length") ?? "0") > UPLOAD_LIMIT + FORM_BYTES;
}
