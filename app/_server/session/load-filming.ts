import { readStudent } from "@/db/read/students";
import { VIEWS } from "@/lib/domain/fundamental";
import { HANDS } from "@/lib/domain/handedness";
import type { StudentScope } from "@/lib/domain/scope";
import type { Link } from "@/lib/report/basic-model";
import { buildFilmingCard } from "@/lib/report/build-filming-card";
import type { FilmingCard } from "@/lib/report/filming-model";
import type { Words } from "@/lib/words/catalogue";
import { familyWords, langOf } from "@/lib/words/family-words";
import { opensPage } from "../access/find-row";
import { admitToStudent, firstPage, type StudentViewer, type Viewer } from "../gate";

/**
 * A card that was opened from a student's plan leads back to it and is in the family's language; else it is the same for everybody.
 *
 * @param make makes the card in some words
 */
function forStudent(viewer: Viewer, student: StudentScope, make: (words: Words) => FilmingCard): FilmingCard {
  const { db, words } = viewer;
  const card = make(familyWords(words, readStudent(db, student)));
  return {
    ...card,
    documentTitle: words.say("document-title", { page: words.say("card.document-title") }),
    back: { href: `/students/${student.studentId}/plan`, label: words.say("plan") },
    backLang: langOf(words),
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
  const make = (words: Words): FilmingCard => buildFilmingCard(words, view, hand);
  const student = typeof wish.for === "string" ? admitToStudent(viewer, wish.for) : null;
  const card = student === null ? make(viewer.words) : forStudent(viewer, student, make);
  // The way back leads to the students, whom not everybody may see.
  if (opensPage(card.back.href, viewer.roles)) return card;
  const back = { href: firstPage(viewer), label: viewer.words.say("saved.bare.back") };
  return { ...card, back, backLang: langOf(viewer.words) };
}

/** The way to the card of a student's hand. */
export function loadFilmingLink(viewer: StudentViewer): Link {
  const { hand } = readStudent(viewer.db, viewer.student);
  return { href: `/filming?hand=${hand}`, label: viewer.words.say("filming.link") };
}
