import {
  readFilmReach,
  readFirstReaders,
  readReaderErrors,
  readRereadDraws,
  readRereadItems,
  readRereadPairs,
} from "@/db/read/rereads";
import type { Fundamental } from "@/lib/domain/fundamental";
import { buildReaderErrorPage, type ReaderErrorSource } from "@/lib/report/build-reader-error";
import { buildRereadsPage } from "@/lib/report/build-rereads";
import type { FormModel, TextPage } from "@/lib/report/form-model";
import { buildRereadCsv } from "@/lib/report/reread-csv";
import type { ReaderErrorPage, RereadsPage } from "@/lib/report/reread-model";
import { POLICY } from "@/lib/verdict/policy";
import { readerError } from "@/lib/verdict/reader-error";
import { sayDay } from "@/lib/words/day-words";
import { sayFundamental } from "@/lib/words/say-fundamental";
import { linkTables } from "../archive/table-links";
import { csvResponse } from "../door/download";
import type { AskedForm } from "../draft/draft-forms";
import { findFormDraft } from "../draft/form-draft";
import { withKeep } from "../draft/with-keep";
import { requireViewer, type Viewer } from "../gate";
import { loadAcademyRules } from "../season/student-record";
import { findDraw, SECOND_FORM, secondDraft, VALUES_FORM, valuesDraft, WISH_DRAFT } from "./reread-desk";
import { buildDrawForm, buildSecondForm, buildWishForm } from "./reread-form";

type PageLink = TextPage["parts"][number]["links"][number];

/** One of the forms here, kept while somebody types. */
function kept(
  viewer: Viewer,
  form: FormModel,
  name: string,
  asked: AskedForm & { readonly draft: string; readonly of?: string },
): FormModel {
  const { of, draft: draftId, dropped } = asked;
  return withKeep(viewer, form, { form: name, studentId: "", of, draftId, dropped });
}

/** What is known of the reading of each fundamental that is read from stills. */
function readSources(viewer: Viewer, fundamentals: readonly Fundamental[]): readonly ReaderErrorSource[] {
  const { db, scope } = viewer;
  const pairs = readRereadPairs(db, scope);
  const fits = readReaderErrors(db, scope);
  return fundamentals.map((fundamental) => {
    const own = pairs.filter((pair) => pair.fundamentalId === fundamental.id);
    return {
      fundamental,
      pairs: own,
      error: readerError(own, fundamental.readerSd, POLICY.readerOffset),
      fits: fits.filter((fit) => fit.fundamentalId === fundamental.id),
    };
  });
}

function readFromStills(viewer: Viewer): readonly Fundamental[] {
  const { fundamentals } = loadAcademyRules(viewer.db, viewer.scope, viewer.academy);
  return fundamentals.filter((fundamental) => fundamental.derivedFrom === null);
}

/** All draws, and what they have measured. */
export function loadRereads(viewer: Viewer): RereadsPage {
  const page = buildRereadsPage(viewer.words, {
    draws: readRereadDraws(viewer.db, viewer.scope),
    read: readSources(viewer, readFromStills(viewer)),
  });
  return linkTables(viewer.words, "rereads", {}, page);
}

/** The results of one fundamental; null: there is none of that name that is read from stills. */
export function loadReaderError(viewer: Viewer, fundamentalId: string): ReaderErrorPage | null {
  const fundamental = readFromStills(viewer).find((each) => each.id === fundamentalId);
  const [source] = fundamental ? readSources(viewer, [fundamental]) : [];
  if (!source) return null;
  return linkTables(
    viewer.words,
    "reader-error",
    { fundamental: fundamentalId },
    buildReaderErrorPage(viewer.words, source),
  );
}

/** The way from the settings to the re-reads. */
export function loadRereadsDoor({ db, scope, words }: Viewer): TextPage["parts"][number] {
  const measured = new Set(readReaderErrors(db, scope).map((fit) => fit.fundamentalId)).size;
  return {
    margin: words.say("reread.door"),
    heading: words.say("reread.door.heading", { measured }),
    paragraphs: [words.say("reread.door.text")],
    links: [{ href: "/rereads", label: words.say("reread.door.open") }],
  };
}

/** The form that asks for a draw, or the word that nobody has read anything yet. */
export function loadWishForm(
  viewer: Viewer,
  asked: AskedForm & { readonly draft: string },
): { readonly kind: "form"; readonly form: FormModel } | { readonly kind: "nobody"; readonly page: TextPage } {
  const { db, scope, words } = viewer;
  const readers = readFirstReaders(db, scope);
  if (readers.length === 0) {
    const links = [{ href: "/record", label: words.say("nav.record") }];
    const part = {
      margin: words.say("reread-form.part.what"),
      heading: words.say("reread-form.nobody"),
      paragraphs: [],
      links,
    };
    return { kind: "nobody", page: { title: words.say("reread-form.heading"), lede: "", parts: [part] } };
  }
  const { fundamentals } = loadAcademyRules(db, scope, viewer.academy);
  const reach = { readings: 0, noReference: 0 };
  for (const { id, view } of fundamentals.filter((each) => each.derivedFrom === null)) {
    const one = readFilmReach(db, scope, { fundamentalId: id, view });
    reach.readings += one.readings;
    reach.noReference += one.noReference;
  }
  const source = { fundamentals, readers, viewer: viewer.name, reach };
  const form = buildWishForm(words, findFormDraft(viewer, WISH_DRAFT, asked.draft), source);
  return { kind: "form", form: kept(viewer, form, WISH_DRAFT, asked) };
}

/** A draw: its form while it is open; afterwards where its results stand, and the form for a second reader. */
export type DrawPage =
  | { readonly kind: "open"; readonly form: FormModel }
  | { readonly kind: "finished"; readonly page: TextPage; readonly second: FormModel };

/** The page of a draw; null: there is no such draw. */
export function loadDraw(
  viewer: Viewer,
  drawId: string,
  asked: AskedForm & { readonly draft: string },
): DrawPage | null {
  const { db, scope, words } = viewer;
  const draw = findDraw(viewer, drawId);
  if (draw === null) return null;
  const items = readRereadItems(db, scope, drawId);
  const { fundamentals } = loadAcademyRules(db, scope, viewer.academy);
  if (draw.finishedOn === null) {
    const draft = findFormDraft(viewer, valuesDraft(drawId), asked.draft);
    const form = buildDrawForm(words, draft, { draw, items, fundamentals });
    return { kind: "open", form: kept(viewer, form, VALUES_FORM, { ...asked, of: drawId }) };
  }
  const read = fundamentals.filter((each) =>
    items.some((item) => item.fundamentalId === each.id && item.typed !== null),
  );
  const results: PageLink[] = read.map((each) => ({
    href: `/rereads/of/${each.id}`,
    label: sayFundamental(words, each),
  }));
  const page: TextPage = {
    title: words.say("reread-done.heading", { read: draw.read, items: draw.items }),
    lede: words.say("reread-done.explains", {
      reader: draw.reader,
      level: words.say(`reread.level.${draw.level}`),
      drawn: sayDay(words, draw.day, "day-year"),
      finished: sayDay(words, draw.finishedOn, "day-year"),
    }),
    parts: [
      {
        margin: words.say("reread-done.margin"),
        heading: words.say("reread-done.results", { fundamentals: read.length }),
        paragraphs: [words.say("reread-done.text")],
        links: [...results, { href: "/rereads", label: words.say("reread-done.back") }],
      },
    ],
  };
  return {
    kind: "finished",
    page,
    second: kept(
      viewer,
      buildSecondForm(words, findFormDraft(viewer, secondDraft(drawId), asked.draft), drawId),
      SECOND_FORM,
      { ...asked, of: drawId },
    ),
  };
}

/** Every pair of finished draws as a file. */
export async function downloadRereads(): Promise<Response> {
  const viewer = await requireViewer("GET /api/rereads/csv");
  return csvResponse("rereads.csv", buildRereadCsv(readSources(viewer, readFromStills(viewer))));
}
