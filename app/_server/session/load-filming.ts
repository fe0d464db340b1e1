import { readStudent } from "@/db/read/students";
import { VIEWS } from "@/lib/domain/fundamental";
import { HANDS } from "@/lib/domain/handedness";
import type { Link } from "@/lib/report/basic-model";
import { buildFilmingCard } from "@/lib/report/build-filming-card";
import type { FilmingCard } from "@/lib/report/filming-model";
import { opensPage } from "../access/find-row";
import { firstPage, type StudentViewer, type Viewer } from "../gate";

/** The wished card; what no card is of gives the first: from the front, right-handed. */
export function loadFilmingCard(
  viewer: Viewer,
  wish: { readonly view?: string | string[]; readonly hand?: string | string[] },
): FilmingCard {
  const view = VIEWS.find((each) => each === wish.view) ?? "face-on";
  const hand = HANDS.find((each) => each === wish.hand) ?? "right";
  const card = buildFilmingCard(viewer.words, view, hand);
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
