import { readReaderErrors } from "@/db/read/rereads";
import type { Fundamental } from "@/lib/domain/fundamental";
import { REREAD_LEVELS } from "@/lib/domain/reread";
import type { PeoplePart } from "@/lib/report/people-model";
import { readerErrorInForce } from "@/lib/verdict/reader-error-in-force";
import { READER_ERROR_THRESHOLDS } from "@/lib/verdict/reader-error-thresholds";
import { sayFundamental } from "@/lib/words/say-fundamental";
import { sayReadingSd } from "@/lib/words/say-reading";
import type { StudentViewer } from "../gate";
import { drawTen, drawTenTwice, type TenTwice, type TenTwiceReach, tenTwiceReach } from "../reread/ten-twice";
import { type HandingState, handingState, lastCoach } from "./handing-state";
import { peoplePart, type Said, smallForm } from "./small-form";

/** Under which name the new coach reads; empty: nobody has the student. */
export function newReader({ own, charges }: HandingState): string {
  return own.at(-1)?.coach ?? charges.at(-1)?.coach ?? "";
}

/** Half of an interval that holds 95 of 100, in sds. */
const HALF_95 = 1.96;

/** What it costs that somebody else reads, for one fundamental. */
function sayCost(viewer: StudentViewer, fundamental: Fundamental): string {
  const { words, db, scope, today } = viewer;
  const { readerSd, offsetSd } = readerErrorInForce(readReaderErrors(db, scope), fundamental, today);
  const said = (sd: number): string => sayReadingSd(words, sd * HALF_95, fundamental.unit);
  return words.say(offsetSd === null ? "ten-twice.cost.unknown" : "ten-twice.cost.measured", {
    name: sayFundamental(words, fundamental),
    reader: said(readerSd),
    offset: said(offsetSd ?? 0),
  });
}

function tenForm(
  viewer: StudentViewer,
  reach: TenTwiceReach,
  source: { readonly first: string; readonly coach: string; readonly inHand: string; readonly said: Said },
) {
  const { words, student } = viewer;
  const { first, coach, inHand, said } = source;
  return smallForm(
    words,
    "ten-twice",
    [
      {
        name: "fundamental",
        kind: "select",
        value: inHand,
        options: reach.fundamentals.map((each) => ({ value: each.id, label: sayFundamental(words, each) })),
      },
      {
        name: "first",
        kind: "select",
        value: first,
        options: reach.readers.map((reader) => ({ value: reader, label: reader })),
      },
      {
        name: "readers",
        kind: "checkbox",
        value: "first,coach",
        options: [
          { value: "first", label: words.say("ten-twice.readers.first") },
          { value: "coach", label: words.say("ten-twice.readers.coach", { coach }) },
        ],
      },
      {
        name: "level",
        kind: "radio",
        value: "b",
        options: REREAD_LEVELS.map((level) => ({
          value: level,
          label: words.say(`reread-form.level.${level}`),
        })).reverse(),
      },
    ],
    said,
    [{ name: "studentId", value: student.studentId }],
  );
}

/** Ten blind re-reads by both readers, proposed with what they would tell. */
export function loadTenTwicePart(
  viewer: StudentViewer,
  state: HandingState,
  asked: { readonly why: string | undefined; readonly inHand: string | undefined },
): PeoplePart {
  const { words, student } = viewer;
  const margin = words.say("ten-twice.margin");
  const reach = tenTwiceReach(viewer);
  const coach = newReader(state);
  const first = reach.readers.find((reader) => reader !== coach) ?? reach.readers[0];
  const fundamental = reach.fundamentals.find(({ id }) => id === asked.inHand) ?? reach.fundamentals[0];
  if (first === undefined || fundamental === undefined || coach === "")
    return peoplePart(margin, {
      heading: words.say("ten-twice.nobody"),
      paragraphs: [words.say("ten-twice.nobody.text")],
    });
  if (reach.readers.every((reader) => reader === coach))
    return peoplePart(margin, {
      heading: words.say("ten-twice.same", { coach }),
      paragraphs: [words.say("ten-twice.same.text")],
    });
  const { items, noReference, tooFresh, again } = drawTen(viewer, { fundamental, level: "b", firstReader: first });
  const name = sayFundamental(words, fundamental);
  const key = asked.why === undefined ? "" : `ten-twice.why.${asked.why}`;
  const said: Said = { refusal: key !== "" && words.has(key) ? words.say(key) : "", errors: {} };
  const readings = READER_ERROR_THRESHOLDS.pairsNeeded.value;
  const giver = state.own.at(-1)?.fromCoach ?? "";
  return peoplePart(margin, {
    heading: words.say("ten-twice.heading", { first, coach }),
    paragraphs: [
      sayCost(viewer, fundamental),
      words.say("ten-twice.text", { readings }),
      words.say("ten-twice.reach", { count: items.length, name, noReference, tooFresh, again }),
      ...(giver === "" ? [] : [words.say("ten-twice.giver", { giver })]),
    ],
    links: [
      { href: `/rereads/of/${fundamental.id}`, label: words.say("ten-twice.results", { name }) },
      ...(giver === ""
        ? []
        : [
            {
              href: `/students/${student.studentId}/handing-over?kind=cover&to=${lastGiver(state)}`,
              label: words.say("ten-twice.cover", { giver }),
            },
          ]),
    ],
    forms: [{ act: "ten", form: tenForm(viewer, reach, { first, coach, inHand: fundamental.id, said }) }],
  });
}

function lastGiver(state: HandingState): string {
  return state.own.at(-1)?.fromCoachId ?? lastCoach(state) ?? "";
}

/** Draws the ten readings that the form asks for. */
export function startTenTwice(viewer: StudentViewer, data: FormData): TenTwice {
  return drawTenTwice(viewer, newReader(handingState(viewer)), data);
}
