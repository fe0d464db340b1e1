import { admitFamily } from "../family-gate";
import type { ViewerWish } from "../viewer";
import { deadFamilyPage } from "./dead-page";
import { familyCookie } from "./family-cookie";
import { strangerWords } from "./stranger-words";

/** Where a family's page stands, and whatever looks like one. */
export const FAMILY = /^\/family(?:\/|$)/;

const PAGE = /^\/family\/([\w-]+)\/*$/;
// It answers for itself, by the secret and not by a cookie.
const OPENS = /^\/family\/open\/[^/]+\/*$/;

type MetFamily =
  | { readonly kind: "pass"; readonly cookies: readonly string[]; readonly language?: string }
  | { readonly kind: "refused"; readonly status: 404; readonly body: string };

/**
 * Meets a request for a family's page: without a cookie that opens it, nothing is there, and whatever else begins like one looks
 * the same. The cookie is given anew each time, so that it lasts as long as a link that was renewed.
 */
export async function meetFamily(
  request: { readonly pathname: string; readonly headers: Headers },
  wish: ViewerWish,
): Promise<MetFamily> {
  if (OPENS.test(request.pathname)) return { kind: "pass", cookies: [] };
  const family = await admitFamily("/family/[pageId]", request.headers, PAGE.exec(request.pathname)?.[1] ?? "", wish);
  if (family === null)
    return { kind: "refused", status: 404, body: deadFamilyPage(strangerWords(wish, request.headers)) };
  const cookies = [familyCookie(family.link, request.headers)];
  return { kind: "pass", cookies, language: family.words.locale };
}
