import type { Language } from "@/lib/domain/language";
import { type Words, wordsFor } from "./catalogue";

/**
 * The words in which a family is told: those of its own language; of English those of the page, which may be the stretched
 * pseudo-language.
 *
 * @param page the words of who asks, or of the academy
 */
export function familyWords(page: Words, { language = "en" }: { readonly language?: Language }): Words {
  return language === "en" ? page : wordsFor(language);
}

/** The language of some words as a page states it; the pseudo-language is stretched English. */
export function langOf({ locale }: Words): string {
  return locale === "en-XA" ? "en" : locale;
}
