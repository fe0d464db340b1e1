import { FILE_LIMIT_MB } from "@/lib/ingest/decode-text";
import type { Words } from "@/lib/words/catalogue";
import { refuseAtDoor } from "../import/door-answer";
import { DOOR } from "./origin";
import { refusalResponse } from "./refusal-page";
import { FORM_LIMIT_MB } from "./say-status";

/** In bytes; a file beyond it is refused with its name. */
export const UPLOAD_LIMIT = FILE_LIMIT_MB * 1024 * 1024;

/** A form wraps the file in a few hundred bytes of its own. */
export const FORM_BYTES = 4096;

/** Where files are sent; anything else that is sent is a form. */
const UPLOADS = ["/api/import", DOOR];

function takesFiles(pathname: string): boolean {
  return UPLOADS.some((each) => pathname === each || (each.endsWith("/") && pathname.startsWith(each)));
}

/** Most bytes that are read of what is sent to an address. */
export function bodyLimit(pathname: string): number {
  return takesFiles(pathname) ? UPLOAD_LIMIT + FORM_BYTES : FORM_LIMIT_MB * 1024 * 1024;
}

/** The refusal of a body over the limit, as data at the door of other programs and as a page elsewhere. */
export function refuseTooBig(words: Words, pathname: string): Response {
  if (pathname.startsWith(DOOR)) return refuseAtDoor(words, "too-big", { limit: FILE_LIMIT_MB });
  return takesFiles(pathname)
    ? refusalResponse(words, 413, words.say("import-page.too-big", { limit: FILE_LIMIT_MB }))
    : refusalResponse(
        words,
        413,
        words.say("refusal.413.happened", { limit: FORM_LIMIT_MB }),
        words.say("refusal.413.next"),
      );
}

/** Whether a body says of itself that it is over the limit: it is refused without being looked at. */
export function statesTooMuch(sent: Headers, pathname: string): boolean {
  return Number(sent.get("content-length") ?? "0") > bodyLimit(pathname);
}
