import type { TextPage } from "@/lib/report/form-model";
import type { Viewer } from "../gate";
import { ownPath } from "./own-path";

/** The page that says why nothing of a press was saved, and leads back to where it was pressed. */
export function loadNotSaved(
  { words }: Pick<Viewer, "words">,
  asked: { readonly why?: string; readonly back?: string },
): TextPage {
  const part = {
    margin: words.say("not-saved.margin"),
    heading: words.say(asked.why === "busy" ? "not-saved.busy" : "not-saved.full"),
    paragraphs: [words.say("not-saved.again")],
    links: [{ href: ownPath(asked.back ?? ""), label: words.say("not-saved.back") }],
  };
  return { title: words.say("not-saved.title"), lede: "", parts: [part] };
}
