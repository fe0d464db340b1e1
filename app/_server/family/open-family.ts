import { cookiesIn, seeOther } from "../access/sign-in-desk";
import { readClock } from "../clock";
import { admitFamilyLink } from "../family-gate";
import { wishIn } from "../viewer";
import { deadFamilyAnswer, slowFamilyAnswer } from "./dead-page";
import { familyCookie } from "./family-cookie";
import { findLinkOfToken } from "./find-family-link";
import { countDeadLink } from "./slow-tokens";
import { strangerWords } from "./stranger-words";

/** The part of an address that stands for no secret of ours is no longer than this; what is longer is cut before it is looked up. */
const LONGEST = 200;

/**
 * Swaps a link's secret for a cookie and a clean address. It uses nothing up and counts as no opening, so that a mail scanner
 * may follow it as often as it likes.
 */
export async function openFamily(request: Request, token: string): Promise<Response> {
  const wish = wishIn(cookiesIn(request));
  const words = strangerWords(wish, request.headers);
  const found = await findLinkOfToken(token.slice(0, LONGEST));
  const family = found === null ? null : admitFamilyLink(found, wish);
  if (family) return seeOther(`/family/${family.link.id}`, [familyCookie(family.link, request.headers)]);
  const seconds = countDeadLink(readClock().getTime());
  return seconds === 0 ? deadFamilyAnswer(words) : slowFamilyAnswer(words, seconds);
}
