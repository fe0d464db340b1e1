import { LANGUAGES } from "@/lib/domain/language";
import { type Words, wordsFor } from "@/lib/words/catalogue";
import type { ViewerWish } from "../viewer";

/**
 * The words for whoever follows a link that opens nothing. Whose it was isn't said, not even by a language: they are told in the
 * first one that their browser asks for and that families are told in, else in English.
 */
export function strangerWords({ locale }: Pick<ViewerWish, "locale">, sent: Headers): Words {
  const wanted = (sent.get("accept-language") ?? "")
    .split(",")
    .map((each) => each.trim().slice(0, 2).toLowerCase())
    .find((each) => LANGUAGES.some((language) => language === each));
  return wordsFor(locale ?? wanted ?? "en");
}
