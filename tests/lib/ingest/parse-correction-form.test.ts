import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { BUILT_IN } from "@/lib/domain/catalogue";
import { parseCorrectionForm } from "@/lib/ingest/parse-correction-form";
import { hostileText } from "./hostile-texts";

function form(entries: Readonly<Record<string, string>>): FormData {
  const data = new FormData();
  for (const [name, value] of Object.entries(entries)) data.set(name, value);
  return data;
}
const read = (entries: Readonly<Record<string, string>>) => parseCorrectionForm(form(entries), BUILT_IN);
const issues = (entries: Readonly<Record<string, string>>) => {
  const parsed = read(entries);
  return parsed.kind === "issues" ? parsed.issues.map(({ field, code }) => `${field} ${code}`) : [];
};
/** A cell in which 80 stands, reading 7, latest correction 3. */
const shown = { "was.1.hinge": "80", "seen.1.hinge": "7:3" };

describe("a correction form", () => {
  it("takes a changed cell with what was in sight, character by character as typed", () => {
    expect(read({ ...shown, "r.1.hinge": "−81,5", why: "sign", confirmUnusual: "yes" })).toEqual({
      kind: "ok",
      value: {
        changes: [{ cell: "r.1.hinge", readingId: 7, seen: 3, kind: "change", value: -81.5, typed: "−81,5" }],
        added: [],
        why: "sign",
      },
    });
  });

  it("passes over a cell that says the same otherwise written; another unit is another value", () => {
    for (const same of ["80", "80.0", "80,0", "+80", "8e1"])
      expect(issues({ ...shown, "r.1.hinge": same, why: "x" })).toEqual(["why nothing-changed"]);
    expect(issues({ ...shown, "r.1.hinge": "80 cm", why: "x" })).toEqual(["r.1.hinge other-unit"]);
    expect(issues({ "was.1.hinge": "n/m", "seen.1.hinge": "7:0", "r.1.hinge": "-", why: "x" })).toEqual([
      "why nothing-changed",
    ]);
  });

  it("an emptied cell is asked and then taken out, never made nought; not measurable is a value", () => {
    expect(issues({ ...shown, "r.1.hinge": "", why: "x" })).toEqual(["r.1.hinge emptied"]);
    const out = read({ ...shown, "r.1.hinge": " ", why: "x", confirmVoid: "yes" });
    expect(out).toMatchObject({ value: { changes: [{ kind: "void", value: null, typed: "" }] } });
    const gone = read({ ...shown, "r.1.hinge": "n/m", why: "x" });
    expect(gone).toMatchObject({ value: { changes: [{ kind: "change", value: null, typed: "n/m" }] } });
  });

  it("an empty place that is filled is a new reading and needs no reason; a changed one does", () => {
    const added = read({ "was.4.hinge": "", "r.4.hinge": "77", "r.3.foot-line": "2" });
    expect(added).toMatchObject({ kind: "ok", value: { changes: [], why: "" } });
    expect(added.kind === "ok" && added.value.added.map((swing) => swing.number)).toEqual([3, 4]);
    expect(issues({ ...shown, "r.1.hinge": "79" })).toEqual(["why missing"]);
    expect(issues({ ...shown, "r.1.hinge": "79", why: "x".repeat(301) })).toEqual(["why too-long"]);
  });

  it("never throws and never makes a value of what is none, whatever is sent (10,000 cells)", () => {
    const text = fc.oneof(fc.string({ unit: "binary", maxLength: 20 }), hostileText);
    const seen = fc.oneof(fc.constantFrom("7:0", "7:3", "", ":", "1e3:0", "-1:0"), text);
    fc.assert(
      fc.property(text, text, seen, (cell, was, sight) => {
        const parsed = read({
          "r.1.hinge": cell,
          "was.1.hinge": was,
          "seen.1.hinge": sight,
          why: "x",
          confirmUnusual: "yes",
          confirmVoid: "yes",
        });
        if (parsed.kind === "issues") return;
        const { changes, added } = parsed.value;
        expect(changes.length + added.length).toBe(1);
        for (const change of changes) {
          expect(Number.isSafeInteger(change.readingId)).toBe(true);
          expect(change.value === null || Number.isFinite(change.value)).toBe(true);
          expect(change.kind === "void").toBe(change.typed === "");
        }
      }),
      { numRuns: 10_000, seed: 20261126 },
    );
  });

  it("knows no cell of a derived or unknown fundamental, nor a swing that isn't one", () => {
    const derived = BUILT_IN.find((each) => each.derivedFrom !== null)?.id ?? "";
    expect(
      issues({ [`r.1.${derived}`]: "5", "r.0.hinge": "5", "r.x.hinge": "5", "r.1.__proto__": "5", "r.100.hinge": "5" }),
    ).toEqual(["why nothing-changed"]);
  });
});
