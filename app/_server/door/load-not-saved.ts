import type { TextPage } from "@/lib/report/form-model";
import type { Viewer } from "../gate";
import { answerAs, referenceHere } from "./answering";
import type { DiskFailure } from "./disk-failure";
import { ownPath } from "./own-path";
import { DISK_STATUS } from "./when-disk-fails";

/** The page that says why nothing of a press was saved, and leads back to where it was pressed. */
export function loadNotSaved(
  { words }: Pick<Viewer, "words">,
  asked: { readonly why?: string; readonly back?: string },
): TextPage {
  const why = asked.why && Object.hasOwn(DISK_STATUS, asked.why) ? (asked.why as DiskFailure) : null;
  if (why !== null) answerAs(DISK_STATUS[why]);
  const part = {
    margin: words.say("not-saved.margin"),
    heading: words.say(`not-saved.${why ?? "full"}`),
    paragraphs: [words.say("not-saved.again"), words.say("refusal.reference", { reference: referenceHere() })],
    links: [{ href: ownPath(asked.back ?? ""), label: words.say("not-saved.back") }],
  };
  return { title: words.say("not-saved.title"), lede: "", parts: [part] };
}
