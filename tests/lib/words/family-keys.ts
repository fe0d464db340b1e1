/** Beginnings of the keys of all that a family reads: its page, its refusals, messages, what it is asked to film, the file, the letter, the card. */
const BEGINNINGS = [
  ...["family.", "family-page.", "family-story.", "tell.file.", "card.", "dose.", "happen.place.", "ask."],
];

/** Of those, what only a coach reads. */
const FOR_A_COACH = ["card.back", "tell.file.explains", "tell.file.link", "tell.file.save", "tell.file.sent"];

/** Whatever else a family reads. */
const OTHERS = [
  ...["letter.own", "letter.foot", "draft.day-and-hour", "refusal.reference"],
  ...["failure.title", "failure.happened", "failure.reference", "failure.again"],
  ...["not-saved.title", "not-saved.full", "not-saved.busy", "not-saved.read-only", "not-saved.again"],
  ...["unit.deg.with", "unit.pct-stance.with", "unit.pct-span.with", "number.plus-minus", "number.range"],
  ...["band.at-least", "band.at-most", "band.none", "share.of-100"],
  ...["plan.sheet.heading", "club.short-iron", "club.iron", "club.hybrid", "club.wood", "club.driver"],
  ...["sure.one-in", "sure.under-1000", "sure.likely-nothing", "day.stretch", "day.stretch-in-month"],
];

/** Whether a message is read by a family, so that it is written in every language that a family is told in. */
export function isForFamily(key: string): boolean {
  if (FOR_A_COACH.includes(key)) return false;
  return OTHERS.includes(key) || BEGINNINGS.some((beginning) => key.startsWith(beginning));
}
