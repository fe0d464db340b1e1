import { readErasedGroup } from "@/db/read/erased-group";
import { readFamilyRequests } from "@/db/read/family-links";
import { readNamedDrafts } from "@/db/read/named-drafts";
import { readNamedTexts } from "@/db/read/named-texts";
import { readPeople } from "@/db/read/people";
import { readNaming, readStudentRowCounts, type StudentRowCounts, type StudentTable } from "@/db/read/student-rows";
import { readStudent } from "@/db/read/students";
import { SAID_REASONS } from "@/lib/domain/erasure";
import { keepingEnd } from "@/lib/domain/keeping";
import type { TableModel } from "@/lib/report/basic-model";
import type { PeoplePage, PeoplePart } from "@/lib/report/people-model";
import { buildPrivacyLinks } from "@/lib/report/privacy-links";
import { ERASING_THRESHOLDS } from "@/lib/verdict/erasing-thresholds";
import { sayDay } from "@/lib/words/day-words";
import { mayPass } from "../access/matrix";
import { dayIn } from "../clock";
import type { StudentViewer } from "../gate";
import { peoplePart, smallForm } from "../people/small-form";
import { mayHold } from "./may-hold";

/** What the page is asked with: why a press erased nothing. */
export interface EraseWish {
  readonly why?: string;
}

/** What is told of an erasure beforehand: lines by name, each with the tables whose rows it counts. */
const LINES: readonly (readonly [name: string, tables: readonly StudentTable[]])[] = [
  ["sessions", ["session"]],
  ["swings", ["swing"]],
  ["readings", ["reading"]],
  ["corrections", ["correction", "record_change", "rebaseline_change"]],
  ["cameras", ["capture", "stated_capture_sd"]],
  ["drills", ["drill_assignment"]],
  ["practice", ["practice"]],
  ["events", ["event"]],
  ["goals", ["goal_band", "asking"]],
  ["rereads", ["reread_item", "read_back_item"]],
  ["facts", ["height", "consent", "charge"]],
  ["links", ["family_link"]],
  ["openings", ["family_opening", "family_request"]],
  ["looks", ["record_view"]],
  ["verdicts", ["analysis", "look_noise", "carried_look"]],
  ["drafts", ["draft"]],
];

/** What would go, counted; nothing is written. */
export function previewErasure({ db, student }: Pick<StudentViewer, "db" | "student">) {
  const group = readErasedGroup(db, student);
  const rows = readStudentRowCounts(db, group);
  const { files, forms, changed } = readNamedDrafts(db, group, readNaming(db, group), mayHold);
  return {
    rows,
    aliases: group.aliases,
    files: files.length,
    forms: forms.length + changed.length,
    texts: readNamedTexts(db, group),
  };
}

export type ErasurePreview = ReturnType<typeof previewErasure>;

/** The lines of a preview: what, and how many of it; what there is none of is left out. */
export function previewLines({ rows, files, forms }: ErasurePreview): (readonly [name: string, count: number])[] {
  const sum = (tables: readonly StudentTable[]): number =>
    tables.reduce((total, table) => total + (rows as StudentRowCounts)[table], 0);
  const lines = LINES.map(([name, tables]) => [name, sum(tables)] as const);
  const all = [...lines, ["files", files] as const, ["forms", forms] as const];
  return all.filter(([, count]) => count > 0);
}

function goesPart({ words }: StudentViewer, preview: ErasurePreview): PeoplePart {
  const table: TableModel = {
    caption: words.say("erase.table"),
    columns: [
      { label: words.say("erase.column.what"), align: "start" },
      { label: words.say("erase.column.count"), align: "end" },
    ],
    rows: previewLines(preview).map(([name, count]) => ({
      cells: [words.say(`erase.line.${name}`), String(count)],
      tone: "plain",
    })),
  };
  const more = (["files", "texts"] as const).filter((name) => preview[name] > 0);
  return peoplePart(words.say("erase.margin.goes"), {
    table,
    paragraphs: [
      ...(preview.aliases.length > 1 ? [words.say("erase.merged", { aliases: preview.aliases.join(", ") })] : []),
      ...more.map((name) => words.say(`erase.${name}`, { count: preview[name] })),
    ],
  });
}

function copiesPart({ words }: StudentViewer): PeoplePart {
  const days = ERASING_THRESHOLDS.copyDays.value;
  return peoplePart(words.say("erase.margin.copies"), {
    paragraphs: [words.say("erase.copies", { days }), words.say("erase.stays"), words.say("erase.law")],
  });
}

function takeOutPart({ words, student }: StudentViewer): PeoplePart {
  return peoplePart(words.say("erase.margin.before"), {
    paragraphs: [words.say("erase.before")],
    links: [
      { href: `/api/students/${student.studentId}/archive`, label: words.say("erase.archive") },
      { href: `/students/${student.studentId}/take-out`, label: words.say("privacy.link.take-out") },
    ],
  });
}

function directorsOf({ db, academy }: StudentViewer): string {
  return readPeople(db, academy.id)
    .filter(({ roles, endedAt }) => endedAt === null && roles.includes("director"))
    .map(({ name }) => name)
    .join(", ");
}

/** What the family has asked for; the request goes with the record, and what to answer stands on the page after it. */
function sayAsked({ words, db, student, academy }: StudentViewer): string[] {
  return readFamilyRequests(db, student)
    .filter(({ kind, settledAt }) => kind === "erase" && settledAt === null)
    .map(({ askedAt }) =>
      words.say("erase.asked", { day: sayDay(words, dayIn(academy.zone, new Date(askedAt)), "day-year") }),
    );
}

function erasePart(viewer: StudentViewer, alias: string, why: string | undefined): PeoplePart {
  const { words, student } = viewer;
  const margin = words.say("erase.margin.erase");
  const asked = sayAsked(viewer);
  if (!mayPass("/students/[studentId]/erase submitErase", viewer.roles))
    return peoplePart(margin, {
      paragraphs: [...asked, words.say("erase.ask-director", { names: directorsOf(viewer) })],
    });
  const wrong = why !== undefined && words.has(`erase.why.${why}`) ? words.say(`erase.why.${why}`, { alias }) : "";
  const errors = wrong === "" ? {} : { [why === "reason" ? "reason" : "alias"]: wrong };
  const form = smallForm(
    words,
    "erase.form",
    [
      {
        name: "reason",
        kind: "radio",
        required: "yes",
        options: SAID_REASONS.map((value) => ({ value, label: words.say(`erase.reason.${value}`) })),
      },
      { name: "alias", kind: "text", required: "yes", label: words.say("erase.form.alias", { alias }) },
    ],
    { refusal: wrong === "" ? "" : words.say("erase.nothing"), errors },
    [{ name: "studentId", value: student.studentId }],
  );
  return peoplePart(margin, { paragraphs: [...asked, words.say("erase.final")], forms: [{ act: "erase", form }] });
}

/** A student who leaves needn't be erased at once; where that is noted, and when the record would go. */
function leavingPart({ words, db, student, academy }: StudentViewer): PeoplePart {
  const { departedOn } = readStudent(db, student);
  const months = academy.keepMonths;
  const day = (text: string): string => sayDay(words, text, "day-year");
  const said =
    departedOn === null
      ? words.say("erase.here", { months, notice: ERASING_THRESHOLDS.noticeDays.value })
      : words.say("erase.left", {
          ...{ left: day(departedOn), months },
          end: day(keepingEnd({ departedOn, lastEntered: departedOn }, months).endDay),
        });
  return peoplePart(words.say("erase.margin.leaving"), {
    paragraphs: [said],
    links: [{ href: `/students/${student.studentId}/consent`, label: words.say("erase.leaving") }],
  });
}

/** The page that says what an erasure would take and what stays, and that erases when it is meant. */
export function loadErase(viewer: StudentViewer, { why }: EraseWish): PeoplePage {
  const { words, student } = viewer;
  const { alias } = readStudent(viewer.db, student);
  const preview = previewErasure(viewer);
  return {
    title: words.say("erase.title", { alias }),
    documentTitle: words.say("document-title", { page: words.say("erase.document") }),
    lede: words.say("erase.lede"),
    back: { href: `/students/${student.studentId}`, label: words.say("erase.back-link", { alias }) },
    notice: "",
    parts: [
      goesPart(viewer, preview),
      copiesPart(viewer),
      takeOutPart(viewer),
      erasePart(viewer, alias, why),
      leavingPart(viewer),
      peoplePart(words.say("privacy.links"), { links: buildPrivacyLinks(words, student.studentId, "erase") }),
    ],
  };
}
