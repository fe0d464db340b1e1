import { describe, expect, it } from "vitest";
import { BUILT_IN, orderedFundamentals } from "@/lib/domain/catalogue";
import type { Fundamental } from "@/lib/domain/fundamental";
import { shownHalf } from "@/lib/domain/half-of-sd";
import { comesAfter, ownIdFor, parseDefinitionForm } from "@/lib/ingest/parse-definition-form";
import { parseOwnFundamental } from "@/lib/ingest/parse-own-fundamental";
import { wordsFor } from "@/lib/words/catalogue";
import { sayFundamental } from "@/lib/words/say-fundamental";
import { OWN_HEEL_FORM } from "@/tests/app/server/own-heel-form";

const words = wordsFor("en");
const TODAY = "2031-05-10";
type Fields = Readonly<Record<string, string>>;

function read(fields: Fields, fundamental: Fundamental | null = null, was: "yes" | "no" = "no") {
  const data = new FormData();
  for (const [name, value] of Object.entries(fields)) data.set(name, value);
  const all = fundamental === null ? BUILT_IN : orderedFundamentals([fundamental]);
  return parseDefinitionForm(data, {
    ...{ today: TODAY, all, now: fundamental === null ? null : { fundamental, read: was } },
    names: BUILT_IN.map((each) => sayFundamental(words, each)),
  });
}

function taken(fields: Fields, fundamental: Fundamental | null = null, was: "yes" | "no" = "no") {
  const outcome = read(fields, fundamental, was);
  if (outcome.kind === "issues") throw new Error(JSON.stringify(outcome.issues));
  return outcome.value;
}

function wrong(over: Fields, fundamental: Fundamental | null = null, was: "yes" | "no" = "no") {
  const outcome = read({ ...OWN_HEEL_FORM, ...over }, fundamental, was);
  if (outcome.kind === "ok") throw new Error("nothing is wrong with it");
  expect(outcome.issues.every(({ code }) => words.has(`form.issue.${code}`))).toBe(true);
  return outcome.issues.map(({ field, code }) => `${field} ${code}`);
}

const HEEL = { id: "own-heel-lift", ...taken(OWN_HEEL_FORM).becomes } as Fundamental;
const AGAIN = { ...OWN_HEEL_FORM, offered: "yes", why: "Clearer." };

describe("a form that defines a fundamental (real FormData)", () => {
  it("what it makes can be kept and read back, and stands in the order of work where it was put", () => {
    expect(parseOwnFundamental(JSON.stringify(HEEL))).toEqual(HEEL);
    const order = orderedFundamentals([HEEL]).map(({ id }) => id);
    expect(order.slice(order.indexOf("top-tilt")).slice(0, 2)).toEqual(["top-tilt", "own-heel-lift"]);
    expect(comesAfter(orderedFundamentals([HEEL]), "own-heel-lift")).toBe("top-tilt");
    const first = { ...HEEL, ...taken({ ...OWN_HEEL_FORM, after: "first" }).becomes };
    expect(orderedFundamentals([first])[0]).toBe(first);
    expect(HEEL.phase).toBe("in-swing");
  });

  // Of a normal error 95 of 100 lie within 1.96 sd: any table of the normal distribution.
  it("takes ± for what holds 95 of 100", () => {
    expect(HEEL.readerSd).toBeCloseTo(3 / 1.959964, 3);
    expect(shownHalf(HEEL.readerSd)).toBe("3");
    expect(HEEL.sensitivity).toEqual({ yaw: 0.1, roll: 0.1, offset: 0 });
  });

  it("takes the camera figures of another one of the same unit and film, and of no other", () => {
    const sway = BUILT_IN.find(({ id }) => id === "hip-sway");
    expect(taken({ ...OWN_HEEL_FORM, like: "hip-sway", camera: "" }).becomes).toMatchObject({
      cameraSdUnknown: sway?.cameraSdUnknown,
      sensitivity: sway?.sensitivity,
    });
    expect([wrong({ like: "hinge" }), wrong({ like: "foot-line" })]).toEqual([
      ["like definition-unlike"],
      ["like definition-unlike"],
    ]);
  });

  it("says what is wrong with each field, and what to do", () => {
    expect(wrong({ name: "wrist HINGE", how: "", plus: "" })).toEqual([
      ...["name definition-name-taken", "how missing", "plus missing"],
    ]);
    expect(wrong({ reading: "0", camera: "2.5°", worthwhile: "0" })).toEqual([
      ...["reading definition-no-error", "worthwhile definition-no-worth", "camera goal-not-a-number"],
    ]);
    expect(wrong({ low: "20", high: "15" })).toEqual(["high goal-order"]);
    expect(wrong({ most: "10" })).toEqual(["most definition-band-beyond"]);
    expect(wrong({ least: "70", low: "", high: "" })).toEqual(["most goal-order"]);
    expect(wrong({ unit: "cm", yaw: "21" })).toEqual(["unit not-a-choice", "yaw number-out-of-range"]);
  });

  it("as long as nothing was read everything may be put right; afterwards what it measures stays", () => {
    const other = { ...AGAIN, unit: "deg", view: "down-the-line", checkpoint: "impact", mirrors: "mirrors", low: "5" };
    expect(taken(other, HEEL).becomes).toMatchObject({ unit: "deg", view: "down-the-line", phase: "impact" });
    const { becomes } = taken({ ...other, worthwhile: "4" }, HEEL, "yes");
    expect(becomes).toEqual({ ...becomes, unit: "pct-stance", view: "face-on", checkpoint: "top", mirrors: "same" });
    expect([becomes.goals, becomes.phase, becomes.worthwhile]).toEqual([HEEL.goals, "in-swing", 4]);
  });

  it("the same again is no change, to the last digit of what is not shown; a change needs a reason", () => {
    const odd = { ...HEEL, readerSd: 1.23456789, order: 143.7 };
    const same = { ...AGAIN, reading: shownHalf(odd.readerSd), after: comesAfter(orderedFundamentals([odd]), odd.id) };
    expect(wrong(same, odd, "yes")).toEqual(["why definition-same"]);
    expect(taken({ ...same, plus: "heel up" }, odd, "yes").becomes).toMatchObject({
      readerSd: 1.23456789,
      order: 143.7,
    });
    expect(wrong({ offered: "no", why: "" }, HEEL)).toEqual(["why missing"]);
    expect(taken({ ...AGAIN, offered: "no" }, HEEL).becomes.retiredOn).toBe(TODAY);
  });

  it("an id is plain letters, and nobody else's", () => {
    expect(ownIdFor("Länge des Schwungs!", new Set())).toBe("own-lange-des-schwungs");
    expect(ownIdFor("Heel lift", new Set(["own-heel-lift", "own-heel-lift-2"]))).toBe("own-heel-lift-3");
    expect(ownIdFor("手", new Set())).toBe("own-measure");
  });
});
