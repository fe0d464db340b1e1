import { readStudentsHere } from "@/db/read/students";
import type { FormModel } from "@/lib/report/form-model";
import type { PeoplePage } from "@/lib/report/people-model";
import { findFormDraft } from "../draft/form-draft";
import { withKeep } from "../draft/with-keep";
import type { Viewer } from "../gate";
import { field } from "../season/student-form";
import { CHARGES_FORM } from "./charge-desk";
import { chargesInForce } from "./charges-in-force";
import { handingFields } from "./handing-form";
import { peoplePart } from "./small-form";

/** What the page is asked with: its form, and what became of a press. */
export interface ChargesWish {
  readonly draft?: string;
  readonly dropped?: string;
  readonly done?: string;
}

/** The form that gives students to a coach: those in nobody's charge first, then everybody with whom they are. */
export function loadCharges(viewer: Viewer, draftId: string, { done, dropped }: ChargesWish): PeoplePage {
  const { words, db, today } = viewer;
  const { charges, coaches, nobodys } = chargesInForce(viewer);
  const nameOf = new Map(coaches.map((each) => [each.userId, each.name]));
  const isNobodys = new Set(nobodys);
  const students = readStudentsHere(db, viewer.scope);
  const option = ({ id, alias }: { readonly id: string; readonly alias: string }) => ({
    value: id,
    label: words.say("charges.student", {
      alias,
      coach: charges
        .filter((each) => each.studentId === id)
        .map((each) => words.say("charges.with", { coach: nameOf.get(each.coachId) ?? "", kind: each.kind }))
        .join(", "),
      held: isNobodys.has(id) ? "no" : "yes",
    }),
  });
  const ordered = [
    ...students.filter(({ id }) => isNobodys.has(id)),
    ...students.filter(({ id }) => !isNobodys.has(id)),
  ];
  const draft = findFormDraft(viewer, CHARGES_FORM, draftId);
  const form: FormModel = {
    heading: "",
    explains: "",
    parts: [
      {
        margin: "",
        explains: "",
        fields: [
          field(words, draft, "charges", { name: "students", kind: "checkbox", options: ordered.map(option) }),
          ...handingFields(words, draft, { coaches, today, wish: {} }),
        ],
      },
    ],
    grid: null,
    submit: words.say("charges.submit"),
    refusal: draft?.refusal ?? "",
    hidden: [],
  };
  const can = students.length > 0 && coaches.length > 0;
  return {
    title: words.say("charges.title"),
    documentTitle: words.say("document-title", { page: words.say("charges.title") }),
    lede: words.say("people.nobodys", { count: nobodys.length }),
    back: { href: "/people", label: words.say("colleague.back") },
    notice: done === "given" ? words.say("people.done.given") : "",
    parts: [
      peoplePart(words.say("charges.margin"), {
        paragraphs: [words.say(can ? "charges.text" : "charges.none")],
        forms: can
          ? [{ act: "give", form: withKeep(viewer, form, { form: CHARGES_FORM, studentId: "", draftId, dropped }) }]
          : [],
      }),
    ],
  };
}
