import { randomUUID } from "node:crypto";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { logKeptPractice } from "@/app/_server/family/family-desk";
import { chooseLanguage } from "@/app/_server/family/language-desk";
import { sheetOf } from "@/app/_server/family/letter-desk";
import { loadFamily } from "@/app/_server/family/load-family";
import { loadLetter } from "@/app/_server/family/load-letter";
import { loadTell } from "@/app/_server/family/load-tell";
import { loadTelling } from "@/app/_server/family/load-telling";
import { openFamily } from "@/app/_server/family/open-family";
import type { StudentViewer } from "@/app/_server/gate";
import { addStudent } from "@/app/_server/season/student-desk";
import { loadFilmingCard } from "@/app/_server/session/load-filming";
import { readArchivedStudent } from "@/db/read/archive-student";
import { readStudent, readStudents } from "@/db/read/students";
import { insertAssignment, insertDrill } from "@/db/write/drills";
import { dayFromNumber, dayNumber } from "@/lib/domain/calendar-day";
import { fileTextOf } from "@/lib/report/build-tell";
import { wordsFor } from "@/lib/words/catalogue";
import { isForFamily } from "../../lib/words/family-keys";
import { recordingWords } from "../../lib/words/recording-words";
import { addShared, meetAt, openedFamily, PUBLIC, stateAddress } from "./family-academy";
import { formOf } from "./first-student";
import { type PeopleAcademy, sentTo, startPeopleAcademy } from "./people-academy";
import { fillSeason } from "./reread-season";

let academy: PeopleAcademy;
let dot: StudentViewer;
const english = wordsFor("en");

beforeAll(async () => {
  stateAddress(PUBLIC);
  academy = await startPeopleAcademy();
  dot = addShared(academy, "Dot", { birthYear: "2014" });
  fillSeason(dot, dot.student);
  const drill = { id: "d1", name: "Wand", fundamentalId: "hinge", how: "An die Wand stellen.", cautions: "" };
  insertDrill(dot.db, dot.scope, drill);
  const start = dayFromNumber(dayNumber(dot.today) - 20);
  insertAssignment(dot.db, dot.student, {
    ...{ id: "g1", drillId: "d1", fundamentalId: "hinge", start, end: null, dose: "langsam", minutesADay: 10 },
  });
});
afterAll(() => {
  academy.remove();
  stateAddress(null);
});

/** Which of some messages stand in a text in English: those of two words and more, without arguments. */
function englishIn(text: string, keys: Iterable<string>): readonly string[] {
  return [...keys].filter((key) => {
    try {
      const said = english.say(key);
      return said.includes(" ") && text.includes(said);
    } catch {
      // A message with arguments is none that can be looked for as it stands.
      return false;
    }
  });
}

describe("a family that reads German", () => {
  it("reads English until a coach chooses; what isn't a language is refused, and nothing is judged anew", () => {
    const { revision } = readStudent(dot.db, dot.student);
    expect(readStudent(dot.db, dot.student).language).toBe("en");
    expect(chooseLanguage(dot, formOf({ language: "fr" }))).toBe("unchanged");
    expect(chooseLanguage(dot, formOf({ language: "de" }))).toBe("language");
    expect(chooseLanguage(dot, formOf({ language: "de" }))).toBe("unchanged");
    expect(readStudent(dot.db, dot.student)).toMatchObject({ language: "de", revision });
    expect(readArchivedStudent(dot.db, dot.student, null).language).toBe("de");
  });

  it("has a page, refusals and the page's language in German, whichever the browser's", async () => {
    const { family, cookie } = await openedFamily(dot);
    expect(family.words.locale).toBe("de");
    expect(await meetAt(`/family/${family.link.id}`, cookie)).toMatchObject({ kind: "pass", language: "de" });
    const { words, asked } = recordingWords(family.words);
    const page = await loadFamily({ ...family, words }, "refused");
    const text = JSON.stringify(page);
    expect(asked.size).toBeGreaterThan(80);
    expect(englishIn(text, asked)).toEqual([]);
    expect(text).toContain("Tut etwas weh? Hört auf und sagt es heute einem Erwachsenen.");
    expect(text).toContain("10 Minuten am Tag; langsam");
    const { why } = logKeptPractice(family, formOf({ day: "2020-01-01", minutes: "5", hurts: "no" }));
    expect(why).toBe("Das ist mehr als 7 Tage her. Bitte sagt es dem Coach.");
  });

  it("is told in German, marked as such, on a page whose own words stay English", async () => {
    const page = await loadTell(dot, undefined);
    expect(page.message?.message.lang).toBe("de");
    expect(page.message?.message.text).toContain("Tut etwas weh?");
    expect(page.lede).toBe(english.say("tell.lede"));
    const loaded = await loadTelling(dot);
    expect(loaded.words.locale).toBe("de");
    const file = fileTextOf(loaded.words, loaded.telling);
    expect(file).toContain("Für Dot und Familie gemacht am");
    const { page: letter, form } = await loadLetter(dot, { draft: randomUUID() });
    expect(letter.sheet?.lang).toBe("de");
    expect(form?.submit).toBe(english.say("letter-form.submit"));
    const sheet = sheetOf(dot, loaded, { order: [], own: "", place: "last" });
    expect(sheet.foot[0]).toBe("Tut etwas weh? Hört auf und sagt es heute einem Erwachsenen.");
    const { words, asked } = recordingWords(loaded.words);
    fileTextOf(words, loaded.telling);
    expect([...asked].filter((key) => !isForFamily(key))).toEqual([]);
  });

  it("has the card for its phone in German where it is opened from the student's plan, with the coach's way back", () => {
    const card = loadFilmingCard(dot, { view: "down-the-line", for: dot.student.studentId });
    expect(card.lang).toBe("de");
    expect(card.title).toBe("Video von hinten, rechtshändig");
    expect([card.back.label, card.backLang]).toEqual([english.say("plan"), "en"]);
    expect(loadFilmingCard(dot, {}).lang).toBe("en");
  });

  it("whose link opens nothing is told so in the first language that its browser asks for, whoever's link it was", async () => {
    const answer = async (wanted: string) => {
      const headers = sentTo({ "accept-language": wanted });
      const request = new Request("http://127.0.0.1:3000/family/open/none", { headers });
      return (await openFamily(request, "none")).text();
    };
    const german = await answer("fr-CH, de;q=0.9, en;q=0.8");
    expect(german).toContain('<html lang="de">');
    expect(german).toContain("Von hier können wir keine Seite zeigen. Bitte öffnet den Link");
    expect(await answer("en-GB, de;q=0.5")).toContain('<html lang="en">');
    expect(await answer("fr")).toContain('<html lang="en">');
  });

  it("is chosen with a new student too", () => {
    const who = { alias: "Ada", birthYear: "", hand: "left", clubs: "", zone: "UTC", language: "de" };
    const viewer = academy.viewer(academy.ownerId);
    addStudent(viewer, formOf({ ...who, consentGivenBy: "mother", consentOnPaper: "yes" }));
    const added = readStudents(viewer.db, viewer.scope).find(({ alias }) => alias === "Ada");
    expect(added?.language).toBe("de");
    const refused = addStudent(viewer, formOf({ ...who, alias: "Eve", language: "fr", consentGivenBy: "mother" }));
    expect(refused.kind).toBe("refused");
  });
});
