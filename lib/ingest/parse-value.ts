import { type FileUnit, parseUnit } from "./parse-unit";
import { withoutHiddenMarks } from "./text-key";

/** How a value was written otherwise than plainly; each is listed beside the import. */
export type ValueNote = "decimal-comma" | "thousands" | "exponent" | "minus-sign" | "apostrophe" | "marks-removed";

export type ParsedValue =
  | { readonly kind: "blank" }
  | { readonly kind: "not-measurable" }
  | {
      readonly kind: "number";
      readonly value: number;
      /** Unit written in the cell; null: none. */
      readonly unit: FileUnit | null;
      readonly notes: readonly ValueNote[];
      /** What it would be if the point parted thousands (`1.234`); null where it can't. */
      readonly grouped: number | null;
    }
  /** `1,234`: one and a bit, or more than a thousand. */
  | { readonly kind: "either"; readonly decimal: number; readonly grouped: number; readonly unit: FileUnit | null }
  /** `8o`: letters where figures are meant. */
  | { readonly kind: "look-alike"; readonly value: number; readonly taken: string }
  | {
      readonly kind: "issue";
      readonly code:
        | "not-a-number"
        | "not-finite"
        | "too-large"
        | "too-small"
        | "full-width"
        | "unknown-unit"
        | "plus-minus";
      /** What would be read if the mend is made. */
      readonly taken: string;
    };

const NOT_MEASURABLE = new Set([
  "-",
  "–",
  "—",
  "−",
  "n/m",
  "nm",
  "n.m.",
  "not measurable",
  "not-measurable",
  "unmeasurable",
  "not visible",
  "not readable",
]);

const LOOK_ALIKES: Readonly<Record<string, string>> = {
  o: "0",
  O: "0",
  l: "1",
  I: "1",
  "|": "1",
  S: "5",
  s: "5",
  B: "8",
  Z: "2",
  z: "2",
};

const issue = (code: Extract<ParsedValue, { kind: "issue" }>["code"], taken = ""): ParsedValue => ({
  kind: "issue",
  code,
  taken,
});

/**
 * A measured value as it stands in a cell. Nothing is guessed: what could be read in two ways is said so, and a blank
 * is never nought.
 */
export function parseValue(cell: string): ParsedValue {
  const notes: ValueNote[] = [];
  let text = withoutHiddenMarks(cell);
  if (text !== cell) notes.push("marks-removed");
  text = text.trim();
  if (text === "") return { kind: "blank" };
  if (NOT_MEASURABLE.has(text.toLowerCase())) return { kind: "not-measurable" };
  if (text.length > 60) return issue("not-a-number");
  if (/[\uff01-\uff5e]/.test(text)) {
    const plain = parseValue(text.normalize("NFKC"));
    return plain.kind === "number" ? issue("full-width", String(plain.value)) : issue("not-a-number");
  }
  if (/^[+\-−]?(?:nan|inf|infinity|∞|#n\/a|#(?:num|value|ref|null|spill|calc|name|div\/0)[!?])$/i.test(text))
    return issue("not-finite");
  if (/^(?:±|\+\/-|\+-)/.test(text)) return issue("plus-minus");
  if (/^'[-+−\d.,]/.test(text)) {
    notes.push("apostrophe");
    text = text.slice(1);
  }
  const match = /^([+\-−–]?)\s*((?:\d[\d.,'’\s]*)|(?:[.,]\d+))(?:[eE]([+\-−]?\d{1,6})(?![\da-z]))?(.*)$/s.exec(text);
  if (!match) return lookAlike(text) ?? issue("not-a-number");
  const [, signText = "", bodyText = "", exponent, unitText = ""] = match;
  const rest = unitText.trim();
  const unit = rest === "" ? null : parseUnit(rest);
  if (rest !== "" && unit === null) {
    return (
      lookAlike(text) ??
      issue(/\s$/.test(bodyText) && /^[\p{L}%"″]/u.test(rest) ? "unknown-unit" : "not-a-number", rest)
    );
  }
  if (signText === "–") notes.push("minus-sign");
  const sign = signText === "" || signText === "+" ? 1 : -1;
  const body = parseBody(bodyText.trim());
  if (body === null) return lookAlike(text) ?? issue("not-a-number");
  const finish = (digits: string): number => {
    const size = Number(exponent === undefined ? digits : `${digits}e${exponent.replace("−", "-")}`);
    return size === 0 ? 0 : sign * size;
  };
  const value = finish(body.digits);
  if (!Number.isFinite(value)) return issue("too-large");
  if (value === 0 && /[1-9]/.test(body.digits)) return issue("too-small");
  if (body.ambiguous && exponent === undefined) {
    return { kind: "either", decimal: value, grouped: finish(body.grouped ?? body.digits), unit };
  }
  if (body.note) notes.push(...body.note);
  if (exponent !== undefined) notes.push("exponent");
  return { kind: "number", value, unit, notes, grouped: body.grouped === null ? null : finish(body.grouped) };
}

interface Body {
  readonly digits: string;
  readonly note: readonly ValueNote[] | null;
  readonly ambiguous: boolean;
  readonly grouped: string | null;
}

/** The figures of a number with its separators resolved; null where they fit no rule. */
function parseBody(text: string): Body | null {
  const body = (digits: string, note: readonly ValueNote[] | null = null): Body => ({
    digits,
    note,
    ambiguous: false,
    grouped: null,
  });
  if (/^\d+$/.test(text)) return body(text);
  if (/^\d*\.\d+$/.test(text)) {
    return { ...body(text), grouped: /^[1-9]\d{0,2}\.\d{3}$/.test(text) ? text.replace(".", "") : null };
  }
  if (/^[1-9]\d{0,2},\d{3}$/.test(text)) {
    return { digits: text.replace(",", "."), note: null, ambiguous: true, grouped: text.replace(",", "") };
  }
  if (/^\d*,\d+$/.test(text)) return body(text.replace(",", "."), ["decimal-comma"]);
  if (/^[1-9]\d{0,2}(?:[\s'’]\d{3})+(?:\.\d+)?$/.test(text)) return body(text.replace(/[\s'’]/g, ""), ["thousands"]);
  if (/^[1-9]\d{0,2}(?:[\s'’.]\d{3})+,\d+$/.test(text)) {
    return body(text.replace(/[\s'’.]/g, "").replace(",", "."), ["thousands", "decimal-comma"]);
  }
  if (/^[1-9]\d{0,2}(?:,\d{3})+\.\d+$/.test(text)) return body(text.replace(/,/g, ""), ["thousands"]);
  if (/^[1-9]\d{0,2}(?:,\d{3}){2,}$/.test(text) || /^[1-9]\d{0,2}(?:\.\d{3}){2,}$/.test(text)) {
    return body(text.replace(/[.,]/g, ""), ["thousands"]);
  }
  return null;
}

function lookAlike(text: string): ParsedValue | null {
  if (!/^[+\-−]?[\doOlI|SsBZz]+(?:\.[\doOlI|SsBZz]+)?$/.test(text) || !/\d/.test(text)) return null;
  const taken = text.replace(/[oOlI|SsBZz]/g, (letter) => LOOK_ALIKES[letter] ?? letter).replace("−", "-");
  return { kind: "look-alike", value: Number(taken) === 0 ? 0 : Number(taken), taken };
}
