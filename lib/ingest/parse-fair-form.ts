import { type FormOutcome, fieldText } from "./field-issue";
import { type Collect, collectIssues, count } from "./form-fields";

/** A test by the lot as it is wished. */
export interface EnteredFairTest {
  readonly fundamentalId: string;
  readonly firstDrillId: string;
  readonly secondDrillId: string;
  /** The least difference worth finding, in the fundamental's unit. */
  readonly least: number;
  /** Sd of what students gain, in the unit. */
  readonly spread: number;
  readonly looks: number;
  /** Days after a draw whose films count. */
  readonly days: number;
}

/** What a form is read against. */
export interface FairContext {
  readonly library: readonly { readonly id: string; readonly fundamentalId: string }[];
  /** Sd of what students gained for a fundamental so far; null: too few to take it from. */
  readonly spreadOf: (fundamentalId: string) => number | null;
}

/** Looks, the end among them: with more of them one look tells little. */
export const FAIR_LOOKS = [1, 2, 3, 4] as const;

/** Fewest and most days after a draw whose films count. */
export const FAIR_DAYS = [7, 182] as const;

/** A number above 0 with a point or a comma; null, and an issue, where it is none. */
function size(data: FormData, name: string, add: Collect): number | null {
  const text = fieldText(data, name).replace(",", ".");
  if (text === "") return null;
  return /^\d{1,3}(\.\d{1,3})?$/.test(text) && Number(text) > 0 ? Number(text) : add(name, "fair-not-a-size");
}

/** A form that plans a test of two drills by the lot. A spread that is left empty is the one of the academy's films. */
export function parseFairForm(data: FormData, { library, spreadOf }: FairContext): FormOutcome<EnteredFairTest> {
  const { issues, add } = collectIssues();
  const drill = (name: string) => {
    const found = library.find(({ id }) => id === fieldText(data, name));
    if (found === undefined) add(name, "missing");
    return found;
  };
  const [first, second] = [drill("first"), drill("second")];
  if (first !== undefined && first === second) add("second", "fair-same-drill");
  else if (first !== undefined && second !== undefined && first.fundamentalId !== second.fundamentalId)
    add("second", "fair-not-alike");
  const least = size(data, "least", add);
  if (least === null && fieldText(data, "least") === "") add("least", "missing");
  const typed = size(data, "spread", add);
  const spread = typed ?? (first === undefined ? null : spreadOf(first.fundamentalId));
  if (spread === null && first !== undefined && fieldText(data, "spread") === "") add("spread", "fair-no-spread");
  const looks = count(data, "looks", FAIR_LOOKS.length, add);
  const [fewest, most] = FAIR_DAYS;
  const days = count(data, "days", most, (field) => add(field, "not-a-count", { low: fewest, high: most }));
  if (looks !== null && looks < 1) add("looks", "not-a-choice");
  if (days !== null && days < fewest) add("days", "not-a-count", { low: fewest, high: most });
  if (looks === null && fieldText(data, "looks") === "") add("looks", "missing");
  if (days === null && fieldText(data, "days") === "") add("days", "missing");
  if (issues.length > 0 || !first || !second || least === null || spread === null || looks === null || days === null)
    return { kind: "issues", issues };
  const { fundamentalId } = first;
  return {
    kind: "ok",
    value: { fundamentalId, firstDrillId: first.id, secondDrillId: second.id, least, spread, looks, days },
  };
}
