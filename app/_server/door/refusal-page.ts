import type { Words } from "@/lib/words/catalogue";
import { referenceHere } from "./answering";

const SIGNS: Readonly<Record<string, string>> = { "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;", "'": "&#39;" };

export function escapeText(text: string): string {
  return text.replace(/[&<>"']/g, (sign) => SIGNS[sign] ?? sign);
}

/** What a refusal says: what happened, whether anything was changed, what to do. */
export interface Refusal {
  readonly title: string;
  readonly happened: string;
  readonly next: string;
}

/** A whole page without script, for an answer that is given before any page is reached. */
export function refusalPage(words: Words, refusal: Refusal): string {
  const [title, happened, next] = [refusal.title, refusal.happened, refusal.next].map(escapeText);
  return barePage(words, title ?? "", `<p>${happened}</p><p>${next}</p>`);
}

/** A page that stands by itself: no other file, and no script but one that `inside` may bring. It ends with the reference that finds it in the log. `title` and `inside` are escaped already. */
export function barePage(words: Words, title: string, inside: string): string {
  const reference = escapeText(words.say("refusal.reference", { reference: referenceHere() }));
  return [
    "<!doctype html>",
    `<html lang="${escapeText(words.locale)}"><head><meta charset="utf-8">`,
    '<meta name="viewport" content="width=device-width, initial-scale=1"><meta name="robots" content="noindex">',
    `<title>${title}</title><style>`,
    ":root{color-scheme:light dark}body{max-width:44em;margin:3rem auto;padding:0 1rem;",
    'font:1rem/1.5 "Atkinson Hyperlegible Next","Liberation Sans",Verdana,sans-serif;',
    "background:light-dark(#faf8f3,#14181e);color:light-dark(#1b2330,#ece8de)}",
    "h1{font-size:1.75rem;line-height:2.25rem}label{display:block;margin-top:1rem}",
    "input{font:inherit;padding:.4rem .5rem;width:100%;max-width:24em;box-sizing:border-box}",
    "button{font:inherit;padding:.5rem 1rem;margin-top:1.5rem}.wrong{font-weight:600}.reference{margin-top:2rem;font-size:.875rem}</style></head>",
    `<body><main><h1>${title}</h1>${inside}<p class="reference">${reference}</p></main></body></html>\n`,
  ].join("\n");
}

/** The same as an answer of its own, with its status. */
export function refusalResponse(
  words: Words,
  status: number,
  happened: string,
  next: string = words.say("refusal.nothing-saved"),
): Response {
  const page = refusalPage(words, { title: words.say("refusal.title"), happened, next });
  return new Response(page, { status, headers: { "content-type": "text/html; charset=utf-8" } });
}
