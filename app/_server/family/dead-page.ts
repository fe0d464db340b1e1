import type { Words } from "@/lib/words/catalogue";
import { barePage, escapeText } from "../door/refusal-page";
import { FORGET_KEPT } from "./forget-kept";

const HTML = { "content-type": "text/html; charset=utf-8" };

function page(words: Words, said: string): string {
  const title = escapeText(words.say("family.dead.title"));
  return barePage(words, title, `<p>${escapeText(said)}</p>`);
}

/** Where the script says what a phone had kept; it is seen by nobody else. */
function keptBox(words: Words): string {
  const [pain, said, minutes, balls] = [
    words.say("family.kept.pain"),
    words.say("family.kept.dead", { said: "{said}" }),
    words.say("family.tap.minutes", { minutes: "{minutes}" }),
    words.say("family.kept.balls", { balls: "{balls}" }),
  ].map(escapeText);
  const boxes = `<p id="kept-pain" hidden>${pain}</p><p id="kept" hidden data-minutes="${minutes}" data-balls="${balls}">${said}</p>`;
  return `${boxes}<script>${FORGET_KEPT}</script>`;
}

/** What a family is answered whose link is absent, foreign, ended or taken back, or whose browser shows nothing for it. */
export function deadFamilyPage(words: Words): string {
  const title = escapeText(words.say("family.dead.title"));
  return barePage(words, title, `<p>${escapeText(words.say("family.dead.next"))}</p>${keptBox(words)}`);
}

/** The same as an answer of its own. */
export function deadFamilyAnswer(words: Words): Response {
  return new Response(deadFamilyPage(words), { status: 404, headers: HTML });
}

/** What is answered in its place after many of them. */
export function slowFamilyAnswer(words: Words, seconds: number): Response {
  const headers = { ...HTML, "retry-after": String(seconds) };
  return new Response(page(words, words.say("family.slow", { seconds })), { status: 429, headers });
}
