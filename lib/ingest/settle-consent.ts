import { GIVEN_BY, givenBy } from "./ask-students";
import { option } from "./import-log";
import type { KnownStudent } from "./import-preview";
import { columnOf, type ImportContext, isOpen, type RowDraft, setBack } from "./row-draft";

/** A consent to measure that came with a file. */
export interface FileConsent {
  readonly studentId: string;
  readonly alias: string;
  readonly givenBy: string;
}

/**
 * Whether a student's rows may come in: with a consent in force they do; with none ever, who gave one is asked; where one has
 * ended, was withdrawn or is still to come the rows are set aside, because that is to be settled on the student's own page
 * and not beside a file.
 */
export function settleConsent(
  student: KnownStudent,
  rows: readonly RowDraft[],
  context: ImportContext,
): readonly FileConsent[] {
  const { log } = context;
  const { id, alias, consent } = student;
  const column = columnOf(context, "alias");
  if (consent === "given") return [];
  if (consent !== "none") {
    for (const row of rows.filter(isOpen)) {
      const told = { column: column?.header, value: alias, args: { alias }, at: column?.at, mend: "consent-anew" };
      log.issue({ code: `consent-${consent}`, row: row.row, ...told });
      row.state = "refused";
    }
    return [];
  }
  const answer = log.ask(
    {
      id: `consent:${id}`,
      code: "consent-missing",
      args: { alias },
      options: [option("on-paper", { alias }, GIVEN_BY), option("leave-out")],
      at: column?.at,
    },
    rows.map((row) => row.row),
  );
  if (answer?.option === "on-paper") return [{ studentId: id, alias, givenBy: givenBy(answer) }];
  setBack(rows, answer ? "left-out" : "waiting");
  if (answer) for (const row of rows) log.note("left-out", row.row, column?.header, { value: alias }, id);
  return [];
}
