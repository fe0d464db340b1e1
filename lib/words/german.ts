import card from "./messages/de/card.json";
import coach from "./messages/de/coach.json";
import consent from "./messages/de/consent.json";
import draft from "./messages/de/draft.json";
import family from "./messages/de/family.json";
import familyLog from "./messages/de/family-log.json";
import familyPage from "./messages/de/family-page.json";
import familyStory from "./messages/de/family-story.json";
import frame from "./messages/de/frame.json";
import happen from "./messages/de/happen.json";
import plan from "./messages/de/plan.json";
import tell from "./messages/de/tell.json";

/**
 * Every message that a family reads, in German. A family is spoken to as “ihr”: a child and its parents read the same page. Parts
 * of the body and of the swing are nouns in the first case, so that each stands as the subject of its sentence; left and right are
 * stems (“recht”, “link”), to which a sentence gives the ending that it needs.
 */
export const german: Readonly<Record<string, string>> = {
  ...card,
  ...coach,
  ...consent,
  ...draft,
  ...family,
  ...familyLog,
  ...familyPage,
  ...familyStory,
  ...frame,
  ...happen,
  ...plan,
  ...tell,
};
