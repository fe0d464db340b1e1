import type { Words } from "@/lib/words/catalogue";
import { signInPage } from "../access/sign-in-page";
import { barePage, escapeText } from "./refusal-page";

/** What nobody is handed back in a page: it would lie open in it. */
const NEVER_SHOWN = /password|code|token/i;
const FORM_TYPES = ["multipart/form-data", "application/x-www-form-urlencoded"];

function hiddenField([name, value]: readonly [string, string]): string {
  return `<textarea hidden name="${escapeText(name)}">\n${escapeText(value)}</textarea>`;
}

/**
 * A form that came without scripts after its log-in had ended: a page that holds all that was typed, asks to sign in in another
 * window, and sends the same again. Nothing of it is kept here. Null: it is no such form, or holds a file or a secret.
 */
export async function sendAgain(words: Words, request: Request): Promise<string | null> {
  const type = request.headers.get("content-type") ?? "";
  const { pathname, search } = new URL(request.url);
  if (request.method !== "POST" || pathname.startsWith("/api/") || request.headers.get("next-action") !== null)
    return null;
  if (!FORM_TYPES.some((each) => type.startsWith(each))) return null;
  const form = await request.formData().catch(() => null);
  const fields = [...(form ?? [])];
  const typed = fields.filter((each): each is [string, string] => typeof each[1] === "string");
  if (typed.length === 0 || typed.length < fields.length || typed.some(([name]) => NEVER_SHOWN.test(name))) return null;
  const address = `${pathname}${search}`;
  const inside = [
    `<p>${escapeText(words.say("refusal.signed-out.held"))}</p>`,
    `<form method="post" enctype="multipart/form-data" action="${escapeText(address)}">${typed.map(hiddenField).join("")}`,
    `<p>${escapeText(words.say("refusal.signed-out.then"))} <a href="${escapeText(signInPage(null))}" target="_blank" rel="noopener">`,
    `${escapeText(words.say("draft.sign-in"))}</a></p>`,
    `<p><button type="submit">${escapeText(words.say("refusal.signed-out.again"))}</button></p></form>`,
  ].join("");
  return barePage(words, escapeText(words.say("refusal.signed-out.title")), inside);
}
