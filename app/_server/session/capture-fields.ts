import type { View } from "@/lib/domain/fundamental";
import { PICTURE_SIDES } from "@/lib/domain/picture-side";
import { PLACEMENTS, SQUARENESS } from "@/lib/domain/session";
import type { FieldModel } from "@/lib/report/form-model";
import type { Words } from "@/lib/words/catalogue";
import type { field } from "../season/student-form";

type One = (spec: Parameters<typeof field>[3]) => FieldModel;

/** The quick fields of one view's film: same place or not, who, square or off, and where to find the film. */
export function captureFields(words: Words, view: View, one: One): readonly FieldModel[] {
  const said = sayingOf(words, view, one);
  const choices = (values: readonly string[], prefix: string) =>
    values.map((value) => ({ value, label: words.say(`${prefix}.${value}`) }));
  return [
    said("placement", { kind: "select", options: choices(PLACEMENTS, "placement"), value: "unknown" }),
    said("placementLabel", { kind: "text" }),
    said("placedBy", { kind: "text" }),
    said("squareness", { kind: "select", options: choices(SQUARENESS, "squareness"), value: "unknown" }),
    said("offBy", { kind: "number", label: words.say(`session-form.offBy.${view}`) }),
    said("film", { kind: "text" }),
  ];
}

/** What may be seen in the picture and measured on the ground. */
export function sightingFields(words: Words, view: View, one: One): readonly FieldModel[] {
  const said = sayingOf(words, view, one);
  const number = { kind: "number" } as const;
  return [
    said("pointing", { ...number, label: words.say(`session-form.pointing.${view}`) }),
    said("pointingSide", sides(words)),
    said("across", number),
    said("acrossSide", sides(words)),
    said("plumb", number),
    said("plumbSide", sides(words)),
    ...(view === "down-the-line" ? [said("beside", number), said("besideSide", sides(words))] : []),
    said("distance", number),
    said("lens", number),
    said("hands", number),
    said("frames", number),
    said("shutter", { kind: "text" }),
  ];
}

/** Names of the fields of what was seen of one view's film. */
export function sightingNames(view: View): readonly string[] {
  return SIGHTING_NAMES.map((name) => `${name}.${view}`);
}

const SIGHTING_NAMES = [
  "pointing",
  "pointingSide",
  "across",
  "acrossSide",
  "plumb",
  "plumbSide",
  "beside",
  "besideSide",
  "distance",
  "lens",
  "hands",
  "frames",
  "shutter",
] as const;

function sides(words: Words): Pick<FieldModel, "kind" | "options"> {
  const options = ["", ...PICTURE_SIDES].map((value) => ({ value, label: words.say(`side.${value || "none"}`) }));
  return { kind: "select", options };
}

/** A field of this view: its name carries the view, its label and hint don't. */
function sayingOf(
  words: Words,
  view: View,
  one: One,
): (name: string, spec: Pick<FieldModel, "kind"> & Partial<FieldModel>) => FieldModel {
  return (name, spec) => {
    const hint = `session-form.${name}.hint`;
    return one({
      label: spec.label ?? words.say(`session-form.${name}`),
      hint: words.has(hint) ? words.say(hint) : "",
      ...spec,
      name: `${name}.${view}`,
    });
  };
}
