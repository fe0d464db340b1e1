import { notFound } from "next/navigation";
import { readFamilyLinks, readFamilyRequests } from "@/db/read/family-links";
import { readStudent } from "@/db/read/students";
import type { FamilyRequest } from "@/lib/domain/family-link";
import type { PeoplePage } from "@/lib/report/people-model";
import { buildPrivacyLinks } from "@/lib/report/privacy-links";
import { sayDay } from "@/lib/words/day-words";
import { dayIn } from "../clock";
import { kindOf } from "../draft/draft-forms";
import { findFormDraft } from "../draft/form-draft";
import { withKeep } from "../draft/with-keep";
import type { StudentViewer } from "../gate";
import { peoplePart, smallForm } from "../people/small-form";
import { FAMILY_ANSWER } from "./link-desk";

/** The page on which what is asked for is done. */
const DONE_ON: Readonly<Record<FamilyRequest["kind"], string>> = {
  erase: "erase",
  export: "take-out",
  "who-looked": "looked",
};

/** One request of a family: what it asks for, where that is done, and the answer. */
export function loadFamilyRequest(
  viewer: StudentViewer,
  requestId: string,
  { draftId, dropped }: { readonly draftId: string; readonly dropped?: string },
): PeoplePage {
  const { words, db, student, academy } = viewer;
  const { studentId } = student;
  const found = readFamilyRequests(db, student).find(({ id }) => id === requestId);
  if (!found) return notFound();
  const day = (instant: string): string => sayDay(words, dayIn(academy.zone, new Date(instant)), "day-year");
  const label =
    readFamilyLinks(db, student).find(({ id }) => id === found.linkId)?.label ?? words.say("family-links.request.gone");
  const kept = findFormDraft(viewer, kindOf(FAMILY_ANSWER, "", requestId), draftId);
  const typed = kept?.entries.find(([name]) => name === "answer")?.[1] ?? "";
  const form = smallForm(
    words,
    FAMILY_ANSWER,
    [{ name: "answer", kind: "textarea", required: "yes", value: typed }],
    { refusal: kept?.refusal ?? "", errors: kept?.errors ?? {} },
    [{ name: "requestId", value: requestId }],
  );
  const shown = { form: FAMILY_ANSWER, studentId, of: requestId, draftId, dropped };
  const asked = words.say(`family-links.request.${found.kind}`);
  return {
    title: words.say("family-answer.title", { alias: readStudent(db, student).alias, asked }),
    documentTitle: words.say("document-title", { page: words.say("family-links.document-title") }),
    lede: words.say("family-answer.lede", { day: day(found.askedAt), label }),
    back: { href: `/students/${studentId}/family`, label: words.say("family-answer.back") },
    notice: "",
    parts: [
      peoplePart(words.say("family-answer.margin.do"), {
        links: [
          {
            href: `/students/${studentId}/${DONE_ON[found.kind]}`,
            label: words.say(`family-answer.do.${found.kind}`),
          },
        ],
      }),
      ...(found.settledAt === null
        ? []
        : [
            peoplePart(words.say("family-answer.margin.given"), {
              heading: words.say("family-answer.settled", { day: day(found.settledAt), who: found.settledBy ?? "" }),
              paragraphs: [found.answer ?? ""],
            }),
          ]),
      // What somebody wrote while another one answered stays to be read, until it is dropped.
      ...(found.settledAt !== null && !kept
        ? []
        : [
            peoplePart(words.say("family-answer.margin"), {
              heading: words.say("family-answer.heading"),
              forms: [{ act: "settle", form: withKeep(viewer, form, shown) }],
            }),
          ]),
      peoplePart(words.say("family-links.margin.more"), { links: buildPrivacyLinks(words, studentId, "family") }),
    ],
  };
}
