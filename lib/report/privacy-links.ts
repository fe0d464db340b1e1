import type { Words } from "@/lib/words/catalogue";
import type { Link } from "./page-model";

/** The pages about one student's family and data, in the order in which they are needed. */
const PRIVACY_PAGES = ["tell", "family", "consent", "looked", "take-out", "handing-over", "erase"] as const;

export type PrivacyPage = (typeof PRIVACY_PAGES)[number];

/** Links between them; the page that they stand on is left out. */
export function buildPrivacyLinks(words: Words, studentId: string, current: PrivacyPage): Link[] {
  return PRIVACY_PAGES.filter((page) => page !== current).map((page) => ({
    href: `/students/${studentId}/${page}`,
    label: words.say(`privacy.link.${page}`),
  }));
}
