import type { KeepAnswer } from "@/lib/report/keep-answer";
import type { Words } from "@/lib/words/catalogue";
import { noteWhy, referenceHere } from "../door/answering";
import { slowDeadLink } from "../door/dead-links";
import { countRequest } from "../door/flood";
import { namesNothing } from "../door/presence";
import { checkHost } from "../door/reached";
import { refusalPage } from "../door/refusal-page";
import { FAMILY, meetFamily } from "../family/meet-family";
import { admitRequest } from "../gate";
import { deadLinkPage } from "../people/join-desk";
import { findOpenLink } from "../people/one-time-link";
import type { ViewerWish } from "../viewer";
import { findRow } from "./find-row";
import { refreshLogIn } from "./log-in";
import { kindOf, mayPass } from "./matrix";
import { signInPage } from "./sign-in-page";

/** How the outermost door meets a request. */
export type Meeting =
  /** `language`: of the words in which the page is made, where they are a family’s. */
  | { readonly kind: "pass"; readonly cookies: readonly string[]; readonly language?: string }
  /** There is nothing for this viewer under that address. */
  | { readonly kind: "absent" }
  | { readonly kind: "sign-in"; readonly href: string }
  | { readonly kind: "refused"; readonly status: 401 | 404; readonly body: string; readonly type?: string }
  /** One account asks for more than a person can look at. */
  | { readonly kind: "slow-down"; readonly words: Words; readonly seconds: number };

interface Met {
  readonly method: string;
  readonly pathname: string;
  readonly search: string;
  readonly headers: Headers;
}

const JOIN = "/join/";

const PASS: Meeting = { kind: "pass", cookies: [] };

function signOut({ method, pathname, search, headers }: Met, words: Words): Meeting {
  const reads = method === "GET" || method === "HEAD";
  if (reads && !pathname.startsWith("/api/")) return { kind: "sign-in", href: signInPage(`${pathname}${search}`) };
  // A page's own script is led on by the answer of its action.
  if (headers.get("next-action") !== null) return PASS;
  noteWhy("signed-out");
  if (pathname === "/api/drafts") {
    const kept: KeepAnswer = { kind: "signed-out", said: words.say("draft.signed-out") };
    return {
      kind: "refused",
      status: 401,
      body: JSON.stringify({ ...kept, reference: referenceHere() }),
      type: "application/json",
    };
  }
  // A form of a page is kept while it is typed into; a file that was sent, or asked for, is not.
  const which = pathname.startsWith("/api/") ? "bare" : "kept";
  const body = refusalPage(words, {
    title: words.say("refusal.signed-out.title"),
    happened: words.say("refusal.signed-out.happened", { which }),
    next: words.say("refusal.signed-out.next", { which }),
  });
  return { kind: "refused", status: 401, body };
}

// The page for what isn't there knows no action, and what it is sent one with would be told so in the framework's words.
function absent({ method, headers }: Met, words: Words): Meeting {
  if (method === "GET" || method === "HEAD") return { kind: "absent" };
  const body = refusalPage(words, {
    title: words.say("absent.title"),
    happened: words.say("absent.happened"),
    next: words.say("refusal.open", { address: checkHost(headers) }),
  });
  return { kind: "refused", status: 404, body };
}

/**
 * Meets a request before any page is made: a page that finds only while it is made that it may not be shown answers with an
 * empty body, which says nothing to a browser without scripts. The gate and the loaders ask again: this is no protection.
 */
export async function meet(request: Met, wish: ViewerWish, words: Words): Promise<Meeting> {
  if (FAMILY.test(request.pathname)) return meetFamily(request, wish);
  const row = findRow(request.method, request.pathname) ?? findRow("GET", request.pathname);
  if (row === null) return PASS;
  if (row === "/join/[token]" && !(await findOpenLink(request.pathname.slice(JOIN.length)))) {
    await slowDeadLink();
    return { kind: "refused", status: 404, body: deadLinkPage(words) };
  }
  const of = kindOf(row);
  if (of === "nobody" || of === "key" || of === "link") return PASS;
  const found = await admitRequest(request.headers, wish);
  if (found.kind === "no-academy") return PASS;
  if (found.kind === "signed-out") return signOut(request, words);
  const { viewer } = found;
  const seconds = countRequest(`account ${viewer.userId}`);
  if (seconds > 0) return { kind: "slow-down", words, seconds };
  if (!mayPass(row, viewer.roles) || namesNothing(request.pathname, viewer)) return absent(request, words);
  // What is pressed there may set another log-in in place of this one, whose hour must not come after it.
  if (request.method === "POST" && request.pathname.startsWith("/account")) return PASS;
  // Asking how long a log-in has left is no use of it.
  if (request.method !== "POST" && request.pathname === "/api/log-in") return PASS;
  return { kind: "pass", cookies: await refreshLogIn(viewer.db, viewer.choice, request.headers) };
}
