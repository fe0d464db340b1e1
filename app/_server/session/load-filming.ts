import { readStudent } from "@/db/read/students";
import { VIEWS } from "@/lib/domain/fundamental";
import { HANDS } from "@/lib/domain/handedness";
import type { Link } from "@/lib/report/basic-model";
import { buildFilmingCard } from "@/lib/report/build-filming-card";
import type { FilmingCard } from "@/lib/report/filming-model";
import { opensPage } from "../access/find-row";
import { admitToStudent, firstPage, type StudentViewer, type Viewer } from "../gate";

/** A card that was opened from a student's plan leads back to it; the card itself is the same for everybody. */
function forStudent(viewer: Viewer, card: FilmingCard, wished: string | string[] | undefined): FilmingCard {
  const student = typeof wished === "string" ? admitToStudent(viewer, wished) : null;
  if (student === null) return card;
  return {
    ...card,
    back: { href: `/students/${student.studentId}/plan`, label: viewer.words.say("plan") },
    choices: card.choices.map((choice) => ({
      ...choice,
      links: choice.links.map((link) => ({ ...link, href: `${link.href}&for=${student.studentId}` })),
    })),
  };
}

/** The wished card; what no card is of gives the first: from the front, right-handed. */
export function loadFilmingCard(
  viewer: Viewer,
  wish: { readonly view?: string | string[]; readonly hand?: string | string[]; readonly for?: string | string[] },
): FilmingCard {
  const view = VIEWS.find((each) => each === wish.view) ?? "face-on";
  const hand = HANDS.find((each) => each === wish.hand) ?? "right";
  const card = forStudent(viewer, buildFilmingCard(viewer.words, view, hand), wish.for);
  // The way back leads to the students, whom not everybody may see.
  return opensPage(card.back.href, viewer.roles)
    ? card
    : { ...card, back: { href: firstPage(viewer), label: viewer.words.say("saved.bare.back") } };
}

/** The way to the card of a student's hand. */
export function loadFilmingLink(viewer: StudentViewer): Link {
  const { hand } = readStudent(viewer.db, viewer.student);
  return { href: `/filming?hand=${hand}`, label: viewer.words.say("filming.link") };
}
