import { readReadBackCandidates, readReadBackItems, readReadBacks } from "@/db/read/read-backs";
import { readStudent } from "@/db/read/students";
import { buildReadBackDone, buildReadBackPage } from "@/lib/report/build-read-back";
import type { FormModel } from "@/lib/report/form-model";
import type { HappenPage } from "@/lib/report/happen-model";
import type { Link } from "@/lib/report/page-model";
import { sayFundamental } from "@/lib/words/say-fundamental";
import { linkTables } from "../archive/table-links";
import { daysHere } from "../clock";
import { type AskedForm, isDraftId } from "../draft/draft-forms";
import { findFormDraft } from "../draft/form-draft";
import { withKeep } from "../draft/with-keep";
import type { StudentViewer } from "../gate";
import {
  earlierFilms,
  findReadBack,
  READ_BACK_FORM,
  READ_BACK_VALUES,
  readBackDraft,
  readBackValuesDraft,
  readFromFilms,
} from "./read-back-desk";
import { buildDropForm, buildReadBackForm, buildReadBackWish } from "./read-back-form";

type Marked = Link & { readonly current: "yes" | "no" };

/** The page of read-backs: which fundamental, who reads, which films. */
export interface ReadBackRoom {
  readonly page: HappenPage;
  readonly fundamentals: { readonly label: string; readonly links: readonly Marked[] };
  /** Null: one reader at most. */
  readonly readers: { readonly label: string; readonly links: readonly Marked[] } | null;
  /** Null: no film can be read back. */
  readonly wish: FormModel | null;
}

/** Where a read-back begins. */
export function loadReadBacks(
  viewer: StudentViewer,
  asked: AskedForm & { readonly fundamental?: string; readonly reader?: string },
): ReadBackRoom {
  const { words, db, student } = viewer;
  const fundamentals = readFromFilms(viewer);
  const draft = findFormDraft(viewer, readBackDraft(student.studentId), asked.draft);
  const typed = new Map(draft?.entries);
  const unread = fundamentals.filter(
    ({ id, view }) => earlierFilms(readReadBackCandidates(db, student, { fundamentalId: id, view })).length > 0,
  );
  const wished = typed.get("fundamental") ?? asked.fundamental;
  const fundamental = fundamentals.find((each) => each.id === wished) ?? unread[0] ?? null;
  const candidates =
    fundamental === null
      ? []
      : readReadBackCandidates(db, student, { fundamentalId: fundamental.id, view: fundamental.view });
  const readers = [...new Set(candidates.map((each) => each.reader))];
  const reader =
    readers.find((each, place) => each === typed.get("reader") || String(place) === asked.reader) ??
    readers.find((each) => each === viewer.name) ??
    readers[0] ??
    viewer.name;
  const films = earlierFilms(candidates).filter((film) => film.reader === reader);
  const page = `/students/${student.studentId}/read-back`;
  // By place: no name stands in an address.
  const to = (id: string, place: number): string =>
    `${page}?${new URLSearchParams({ fundamental: id, reader: String(place) })}`;
  const { studentId } = student;
  const keep = (form: FormModel): FormModel =>
    isDraftId(asked.draft)
      ? withKeep(viewer, form, { form: READ_BACK_FORM, studentId, draftId: asked.draft, dropped: asked.dropped })
      : form;
  return {
    page: linkTables(
      words,
      "read-backs",
      { student: student.studentId },
      buildReadBackPage(words, {
        student: readStudent(db, student),
        readBacks: readReadBacks(db, student),
        fundamentals,
        chosen: fundamental === null ? null : { fundamental, reader, candidates },
        dayOf: daysHere(viewer.academy),
      }),
    ),
    fundamentals: {
      label: words.say("read-back.which"),
      links: unread.map((each) => ({
        href: `${page}?${new URLSearchParams({ fundamental: each.id })}`,
        label: sayFundamental(words, each),
        current: each.id === fundamental?.id ? "yes" : "no",
      })),
    },
    readers:
      fundamental === null || readers.length < 2
        ? null
        : {
            label: words.say("read-back.who"),
            links: readers.map((each, place) => ({
              href: to(fundamental.id, place),
              label: each,
              current: each === reader ? "yes" : "no",
            })),
          },
    wish:
      fundamental === null || films.length === 0
        ? null
        : keep(buildReadBackWish(words, { studentId, draft }, { fundamental, reader, films })),
  };
}

/** A read-back: its blind form while it is open, afterwards what came of it. */
export type OneReadBack =
  | {
      readonly kind: "open";
      readonly form: FormModel;
      readonly drop: FormModel;
    }
  | { readonly kind: "over"; readonly page: HappenPage };

/** The page of one read-back; null: there is none of that name. */
export function loadReadBack(
  viewer: StudentViewer,
  readBackId: string,
  draftId: string,
  dropped?: string,
): OneReadBack | null {
  const { words, db, student } = viewer;
  const readBack = findReadBack(viewer, readBackId);
  const fundamental = readFromFilms(viewer).find((each) => each.id === readBack?.fundamentalId);
  if (readBack === null || !fundamental) return null;
  if (readBack.finishedAt !== null || readBack.droppedAt !== null) {
    const source = { student: readStudent(db, student), readBack, fundamental, dayOf: daysHere(viewer.academy) };
    return { kind: "over", page: buildReadBackDone(words, source) };
  }
  const draft = findFormDraft(viewer, readBackValuesDraft(readBackId), draftId);
  const items = readReadBackItems(db, student, readBackId);
  const { studentId } = student;
  return {
    kind: "open",
    form: withKeep(viewer, buildReadBackForm(words, { studentId, draft }, { readBack, items, fundamental }), {
      ...{ form: READ_BACK_VALUES, studentId, of: readBackId },
      ...{ draftId, dropped },
    }),
    drop: buildDropForm(words, studentId, readBackId),
  };
}
