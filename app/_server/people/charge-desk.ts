import { inTransaction } from "@/db/client";
import { readStudents } from "@/db/read/students";
import { parseHandingForm } from "@/lib/ingest/parse-handing-form";
import { keepFormDraft } from "../draft/form-draft";
import { type Refused, submitOnce } from "../draft/submit-once";
import { admitToStudent, type StudentViewer, type Viewer } from "../gate";
import { coachesHere } from "./coaches-here";
import { handingObstacle, sayHandingIssues, writeHanding } from "./handing-desk";
import { handingState } from "./handing-state";

/** The form among those that are kept. */
export const CHARGES_FORM = "charges-form";

interface Given {
  readonly kind: "given";
  /** Students who changed hands; who was with that coach already isn't counted. */
  readonly students: number;
}

/**
 * Gives students to a coach, for good or as a cover, once; whoever had them before loses them with that day. All of them, or
 * none: a refused form is kept.
 */
export function giveStudents(viewer: Viewer, data: FormData): Given | Refused {
  return submitOnce<Given>(viewer, CHARGES_FORM, data, () => enterCharges(viewer, data));
}

function enterCharges(viewer: Viewer, data: FormData): Given | Refused {
  const { db, today, words, academy } = viewer;
  return inTransaction(db, () => {
    const refuse = (errors: Readonly<Record<string, string>>): Refused => ({
      kind: "refused",
      draftId: keepFormDraft(viewer, CHARGES_FORM, data, errors, words.say("handing-form.refusal")),
    });
    const coaches = coachesHere(db, academy.id);
    const parsed = parseHandingForm(data, { today, coaches: coaches.map(({ userId }) => userId) });
    const errors = parsed.kind === "issues" ? { ...sayHandingIssues(viewer, parsed.issues) } : {};
    const wished = data.getAll("students");
    const given = readStudents(db, viewer.scope).filter(({ id }) => wished.includes(id));
    if (given.length === 0) errors.students = words.say("charges.why.no-students");
    if (parsed.kind === "issues" || given.length === 0) return refuse(errors);
    const states = given.map(({ id, alias }) => {
      const student = admitToStudent(viewer, id);
      if (!student) throw new Error("a student of another academy");
      const their: StudentViewer = { ...viewer, student };
      return { alias, their, state: handingState(their) };
    });
    // Given again to whoever has them: nothing begins anew.
    const { coachId } = parsed.value;
    const others = states.filter(({ state }) => !state.own.some((each) => each.coachId === coachId));
    const inTheWay = others.flatMap(({ alias, state }) => {
      const obstacle = handingObstacle(state, parsed.value);
      return obstacle === null ? [] : [`${alias}: ${words.say(`handing-form.why.${obstacle}`)}`];
    });
    if (inTheWay.length > 0) return refuse({ students: inTheWay.join(" ") });
    for (const { their, state } of others) writeHanding(their, state, parsed.value);
    return { kind: "given", students: others.length };
  });
}
