import { readStudents } from "@/db/read/students";
import type { PeoplePage } from "@/lib/report/people-model";
import type { Viewer } from "../gate";
import { chargesInForce } from "./charges-in-force";
import { sayWhy } from "./say-why";
import { peoplePart, smallForm } from "./small-form";

/** What the page is asked with: what became of a press. */
export interface ChargesWish {
  readonly done?: string;
  readonly why?: string;
}

/** The form that gives students to a coach: those in nobody's charge first, then everybody with whom they are. */
export function loadCharges(viewer: Viewer, { done, why }: ChargesWish): PeoplePage {
  const { words, db } = viewer;
  const { charges, coaches, nobodys } = chargesInForce(viewer);
  const nameOf = new Map(coaches.map((each) => [each.userId, each.name]));
  const isNobodys = new Set(nobodys);
  const students = readStudents(db, viewer.scope);
  const option = ({ id, alias }: { readonly id: string; readonly alias: string }) => ({
    value: id,
    label: words.say("charges.student", {
      alias,
      coach: charges
        .filter((each) => each.studentId === id)
        .map((each) => nameOf.get(each.coachId) ?? "")
        .join(", "),
      held: isNobodys.has(id) ? "no" : "yes",
    }),
  });
  const ordered = [
    ...students.filter(({ id }) => isNobodys.has(id)),
    ...students.filter(({ id }) => !isNobodys.has(id)),
  ];
  const form = smallForm(
    words,
    "charges",
    [
      { name: "students", kind: "checkbox", options: ordered.map(option) },
      {
        name: "coach",
        kind: "select",
        options: coaches.map((each) => ({ value: each.userId, label: each.name })),
      },
    ],
    sayWhy(words, why, { current: "students" }),
  );
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
        forms: can ? [{ act: "give", form }] : [],
      }),
    ],
  };
}
