import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { CONTACT_KINDS } from "@/lib/domain/contact-word";
import type { PhraseCoding } from "@/lib/domain/phrase-coding";
import { applyCodings, type RecodedNote } from "@/lib/ingest/apply-codings";
import { codeContactNote } from "@/lib/ingest/code-contact-note";
import { DEVELOPED, HELD_BACK } from "./contact-notes";
import { FRESH_DEVELOPED } from "./contact-notes-fresh";

const recode = (note: string, codings: readonly (readonly [string, PhraseCoding])[], balls: number | null = null) =>
  applyCodings(codeContactNote(note, balls), new Map(codings), balls);
const said = ({ contacts }: RecodedNote) => contacts.map(({ kind, count, of }) => [kind, count, of]);

const notes = fc
  .array(fc.constantFrom(...[...DEVELOPED, ...HELD_BACK, ...FRESH_DEVELOPED].map(([note]) => note)), {
    minLength: 1,
    maxLength: 4,
  })
  .map((parts) => parts.join(". "));
const anyCoding: fc.Arbitrary<PhraseCoding> = fc.oneof(
  fc.constantFrom(...CONTACT_KINDS).map((kind) => ({ as: "strike", kind }) as const),
  fc.constantFrom({ as: "mention" } as const, { as: "nothing" } as const),
);
const phrasesOf = (note: string) => {
  const { contacts, passed } = codeContactNote(note, null);
  return [...contacts, ...passed].map((each) => each.phrase);
};

describe("what an academy said of a phrase", () => {
  it("another kind of strike keeps the number: 2 lateral is 2 of the toe", () =>
    expect(said(recode("2 lateral, 3 thin", [["# lateral", { as: "strike", kind: "toe" }]]))).toEqual([
      ["toe", 2, null],
      ["low", 3, null],
    ]));

  it("a mention loses its number and what it is of", () =>
    expect(said(recode("2/5 fat", [["# fat", { as: "mention" }]]))).toEqual([["ground", null, null]]));

  it("no strike at all is passed over, and says that the academy said so", () => {
    const { contacts, passed } = recode("caught it heavy from the sand", [
      ["caught heavy from sand", { as: "nothing" }],
    ]);
    expect(contacts).toEqual([]);
    expect(passed.map(({ why, at }) => [why, at])).toEqual([["corrected", [10, 15]]]);
  });

  it("a word that was passed over becomes a mention, never a count: 2 heavy legs", () =>
    expect(said(recode("2 heavy legs", [["# heavy legs", { as: "strike", kind: "ground" }]]))).toEqual([
      ["ground", null, null],
    ]));

  it("counts that were more than the balls are no longer asked about once they are mentions", () => {
    expect(recode("5 fat", [], 3).tooMany).toBe("yes");
    expect(recode("5 fat", [["# fat", { as: "mention" }]], 3).tooMany).toBe("no");
  });

  it("a count said of one phrase of this note stands there alone, and its balls stay only where they can hold it", () => {
    const coded = codeContactNote("2/5 fat, thin x3; 2/5 fat", null);
    const counted = (count: number, of: "as-read" | "none") =>
      said(applyCodings(coded, new Map(), null, new Map([["2 2/5 fat", { as: "count", count, of }]]))).at(-1);
    expect(coded.contacts.map((contact) => contact.place)).toEqual(["1 2/5 fat", "1 thin x3", "2 2/5 fat"]);
    expect(counted(3, "as-read")).toEqual(["ground", 3, 5]);
    expect(counted(3, "none")).toEqual(["ground", 3, null]);
    expect(counted(6, "as-read")).toEqual(["ground", 6, null]);
    const own = new Map([["1 thin x3", { as: "mention" } as const]]);
    expect(said(applyCodings(coded, new Map(), null, own))).toEqual([
      ["ground", 2, 5],
      ["low", null, null],
      ["ground", 2, 5],
    ]);
  });

  it("a count said of a number word holds in every note, one of this note goes before it", () => {
    const coded = codeContactNote("a couple of thin", null);
    const codings = new Map([["~couple thin", { as: "count", count: 3, of: "as-read" } as const]]);
    expect(applyCodings(coded, codings, null).contacts[0]).toMatchObject({ count: 3, of: null, corrected: "word" });
    const own = new Map([["1 couple thin", { as: "count", count: 4, of: "none" } as const]]);
    expect(applyCodings(coded, codings, null, own).contacts[0]).toMatchObject({ count: 4, corrected: "here" });
  });

  it("whatever count is said, a number of balls is the note's own or none, and no other phrase changes", () =>
    fc.assert(
      fc.property(
        notes,
        fc.nat(),
        fc.nat(40),
        fc.constantFrom("as-read" as const, "none" as const),
        (note, pick, count, of) => {
          const coded = codeContactNote(note, null);
          fc.pre(coded.contacts.length > 0);
          const at = pick % coded.contacts.length;
          const place = coded.contacts[at]?.place ?? "";
          const after = applyCodings(coded, new Map(), null, new Map([[place, { as: "count", count, of }]])).contacts;
          expect(after.filter((each) => each.corrected !== "no").map((each) => [each.place, each.count])).toEqual([
            [place, count],
          ]);
          for (const [k, contact] of after.entries())
            expect([coded.contacts[k]?.of ?? null, null]).toContain(contact.of);
          for (const contact of after)
            expect(contact.of ?? Number.POSITIVE_INFINITY).toBeGreaterThanOrEqual(contact.count ?? 0);
        },
      ),
      { numRuns: 500 },
    ));

  it("a coding of one phrase never changes another phrase's", () =>
    fc.assert(
      fc.property(notes, anyCoding, fc.nat(), (note, coding, pick) => {
        const phrases = phrasesOf(note);
        fc.pre(phrases.length > 0);
        const spoken = phrases[pick % phrases.length] as string;
        const others = (of: RecodedNote) => ({
          contacts: of.contacts.filter((each) => each.phrase !== spoken),
          passed: of.passed.filter((each) => each.phrase !== spoken),
        });
        expect(others(recode(note, [[spoken, coding]]))).toEqual(others(recode(note, [])));
      }),
      { numRuns: 500 },
    ));

  it("forgetting restores: without the entry, or taken back, a note is what the rules read in it", () =>
    fc.assert(
      fc.property(notes, (note) => {
        const plain = recode(note, []);
        const back = recode(
          note,
          phrasesOf(note).map((phrase) => [phrase, { as: "as-read" }] as const),
        );
        expect(back).toEqual(plain);
        expect(plain.contacts.map(({ corrected: _, ...each }) => each)).toEqual(codeContactNote(note, null).contacts);
      }),
      { numRuns: 500 },
    ));

  it("no word is lost or said twice, and no number is made up, whatever was said", () =>
    fc.assert(
      fc.property(notes, fc.array(anyCoding, { minLength: 8, maxLength: 8 }), (note, list) => {
        const phrases = phrasesOf(note);
        const codings = phrases.map((phrase, at) => [phrase, list[at % list.length] as PhraseCoding] as const);
        const before = codeContactNote(note, null);
        const after = recode(note, codings);
        const places = (of: { readonly contacts: readonly { readonly at: readonly [number, number] }[] }) =>
          of.contacts.map((each) => each.at.join());
        const all = (of: RecodedNote | typeof before) =>
          [...places(of), ...of.passed.map((each) => each.at.join())].sort();
        expect(all(after)).toEqual(all(before));
        for (const contact of after.contacts) {
          const was = before.contacts.find((each) => each.at[0] === contact.at[0]);
          if (contact.count !== null) expect([contact.count, contact.of]).toEqual([was?.count, was?.of]);
        }
      }),
      { numRuns: 500 },
    ));
});
