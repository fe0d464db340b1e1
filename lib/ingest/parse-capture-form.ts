import type { View } from "@/lib/domain/fundamental";
import { VIEWS } from "@/lib/domain/fundamental";
import type { Hand } from "@/lib/domain/handedness";
import { PICTURE_SIDES, type PictureSide, plusSide, type Sided } from "@/lib/domain/picture-side";
import { type CaptureSightings, PLACEMENTS, SQUARENESS } from "@/lib/domain/session";
import type { EnteredCapture } from "@/lib/domain/session-entry";
import { fieldText } from "./field-issue";
import { type Collect, choice, freeText } from "./form-fields";
import { parseValue } from "./parse-value";

/** Views that a session's form says were not filmed. */
export function viewsNotFilmed(data: FormData): readonly View[] {
  return VIEWS.filter((view) => fieldText(data, notFilmedField(view)) === "yes");
}

/** The box that says that a view was not filmed. */
export function notFilmedField(view: View): string {
  return `notFilmed.${view}`;
}

/**
 * The camera records of a session's form, handedness-neutral, one a view that was filmed; `add` collects what is wrong with
 * each field. That a view was not filmed is kept by its having no record.
 */
export function readCaptures(data: FormData, hand: Hand, add: Collect): EnteredCapture[] {
  const without = viewsNotFilmed(data);
  return VIEWS.flatMap((view) => (without.includes(view) ? [] : [readCapture(data, view, hand, add)]));
}

function readCapture(data: FormData, view: View, hand: Hand, add: Collect): EnteredCapture {
  const placement = choice(data, `placement.${view}`, PLACEMENTS, "unknown", add);
  const label = freeText(data, `placementLabel.${view}`, 60, add);
  const squareness = choice(data, `squareness.${view}`, SQUARENESS, "unknown", add);
  if (placement === "same" && fieldText(data, `placementLabel.${view}`) === "")
    add(`placementLabel.${view}`, "label-missing");
  const before = countIssues(add);
  const offBy = readOffBy(data, view, before.add);
  if (squareness === "off" && offBy === null && before.found() === 0) add(`offBy.${view}`, "off-by-missing");
  return {
    view,
    placement,
    placementLabel: placement === "same" ? label : null,
    squareness,
    offBy: squareness === "off" ? offBy : null,
    seen: readSightings(data, view, hand, add),
    placedBy: freeText(data, `placedBy.${view}`, 60, add),
    setAsideReason: null,
    filmReference: freeText(data, `film.${view}`, 200, add),
  };
}

/** Collects as `add` does, and says how often it did. */
function countIssues(add: Collect): { readonly add: Collect; found(): number } {
  let found = 0;
  return {
    add: (field, code, args) => {
      found += 1;
      return add(field, code, args);
    },
    found: () => found,
  };
}

interface Limits {
  readonly least: number;
  readonly most: number;
  /** Amounts up to this are taken for metres and asked back. */
  readonly metresTo?: number;
}

/** A number from 0 up, in the field's unit; what can't be is asked back with the likely mend. */
function amount(data: FormData, name: string, limits: Limits, add: Collect): number | null {
  const typed = fieldText(data, name);
  const parsed = parseValue(typed);
  if (parsed.kind === "blank") return null;
  if (parsed.kind !== "number") return add(name, "not-a-number", { value: typed });
  const { value } = parsed;
  const { least, most, metresTo } = limits;
  if (metresTo !== undefined && value > 0 && value <= metresTo)
    return add(name, "metres-for-centimetres", { value: typed, centimetres: Math.round(value * 100) });
  if (value < 0 && -value <= most) return add(name, "side-for-sign", { value: typed });
  return value >= least && value <= most ? value : add(name, "capture-impossible", { value: typed, least, most });
}

/** An amount with its side: the side is needed where there is an amount. */
function sided(
  data: FormData,
  names: { readonly amount: string; readonly side: string },
  plus: PictureSide,
  limits: Limits,
  add: Collect,
): number | null {
  const found = amount(data, names.amount, limits, add);
  const side = fieldText(data, names.side);
  const known = PICTURE_SIDES.find((each) => each === side);
  if (side !== "" && known === undefined) return add(names.side, "not-a-choice");
  if (found === null || found === 0) return found;
  if (known === undefined) return add(names.side, "side-missing");
  return known === plus ? found : -found;
}

/** How far off the phone stood: degrees face-on, centimetres down the line; nobody trusts the side of a guess. */
function readOffBy(data: FormData, view: View, add: Collect): number | null {
  const limits = view === "face-on" ? { least: 0, most: 45 } : { least: 0, most: 300, metresTo: 1 };
  return amount(data, `offBy.${view}`, limits, add);
}

function readSightings(data: FormData, view: View, hand: Hand, add: Collect): CaptureSightings {
  const angle = (field: string, what: Sided, most: number): number | null =>
    sided(
      data,
      { amount: `${field}.${view}`, side: `${field}Side.${view}` },
      plusSide(view, what, hand),
      { least: 0, most },
      add,
    );
  const length = (field: string, limits: Limits): number | null => amount(data, `${field}.${view}`, limits, add);
  const beside = { amount: `beside.${view}`, side: `besideSide.${view}` };
  return {
    pointingStickLean: angle("pointing", "pointingStickLean", 80),
    acrossStickSlope: angle("across", "acrossStickSlope", 30),
    plumbLean: angle("plumb", "plumbLean", 20),
    lensHeightCm: length("lens", { least: 10, most: 300, metresTo: 3 }),
    handsHeightCm: length("hands", { least: 30, most: 130, metresTo: 1.3 }),
    distanceCm: length("distance", { least: 50, most: 3000, metresTo: 30 }),
    besideHandsCm:
      view === "down-the-line"
        ? sided(data, beside, plusSide(view, "phone", hand), { least: 0, most: 300, metresTo: 1 }, add)
        : null,
    framesPerSecond: length("frames", { least: 10, most: 1000 }),
    shutterPerSecond: readShutter(data, `shutter.${view}`, add),
  };
}

/** One part in how many of a second: `1/1000`, `1000` or `0.001`. */
function readShutter(data: FormData, name: string, add: Collect): number | null {
  const typed = fieldText(data, name);
  if (typed === "") return null;
  const parts = /^(?:1\s*\/\s*)?(\d+(?:[.,]\d+)?)\s*s?$/.exec(typed);
  const number = Number((parts?.[1] ?? "").replace(",", "."));
  const inverse = number > 0 && number < 1 ? 1 / number : number;
  if (!parts || !(inverse >= 10 && inverse <= 32_000)) return add(name, "not-a-shutter", { value: typed });
  return inverse;
}
