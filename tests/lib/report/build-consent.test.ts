import { describe, expect, it } from "vitest";
import { buildConsentPage, type ConsentSource, type ShownConsent } from "@/lib/report/build-consent";
import { wordsFor } from "@/lib/words/catalogue";

const words = wordsFor("en");
const mothers: ShownConsent = {
  ...{ kind: "measure", givenBy: "mother", giverIs: "guardian", from: "2026-03-01", until: "2027-02-28" },
  ...{ withdrawnOn: null, withdrawnBy: null, recordedAt: "2026-03-02T09:00:00.000Z" },
};

function page(consents: readonly ShownConsent[], more: Partial<ConsentSource["student"]> = {}) {
  return buildConsentPage(words, {
    student: { id: "s1", alias: "Ari", birthYear: 2014, departedOn: null, ...more },
    consents,
    today: "2026-09-12",
    academy: { name: "The Two Larches", keepMonths: 24, ownConsentAge: 16 },
    dayOf: (instant) => instant.slice(0, 10),
  });
}

describe("the page of a student's consent", () => {
  it("says what holds and why, for each of the two", () => {
    const { title, parts } = page([mothers]);
    expect(title).toBe("Ari may be measured");
    expect(parts[0]?.heading).toBe("In force until Sun 28 Feb 2027");
    expect(parts[0]?.paragraphs).toEqual(["Given by mother."]);
    expect(parts[1]?.heading).toBe("Nobody has been asked yet");
    expect(parts[1]?.paragraphs.at(-1)).toBe("No link for the family opens until a consent is entered below.");
  });

  it("says that a guardian's word ends with the own age: born 2010, 16 surely on 1 January 2027", () => {
    const [measure] = page([mothers], { birthYear: 2010 }).parts;
    expect(measure?.heading).toBe("In force until Thu 31 Dec 2026");
    expect(measure?.paragraphs[0]).toMatch(/Ari has surely reached 16 the day after/);
    const [reached] = page([mothers], { birthYear: 2009 }).parts;
    expect(reached?.heading).toBe("Ari’s own word is needed since Thu 1 Jan 2026");
  });

  it("says that it doesn't know the age where no birth year is on file, and only while a guardian's word holds", () => {
    expect(page([mothers], { birthYear: null }).parts[0]?.paragraphs[1]).toMatch(/birth year isn’t known/);
    const own = { ...mothers, giverIs: "student" as const };
    expect(page([own], { birthYear: null }).parts[0]?.paragraphs).toHaveLength(1);
    expect(page([], { birthYear: null }).parts[0]?.paragraphs.join(" ")).not.toMatch(/birth year/);
  });

  it("lists every consent, the latest first, with what became of it", () => {
    const withdrawn = { ...mothers, withdrawnOn: "2026-06-01", withdrawnBy: "father" };
    const open = { ...mothers, kind: "share" as const, until: null };
    const table = page([withdrawn, open]).parts[2]?.table;
    expect(table?.rows.map((row) => row.cells)).toEqual([
      ["To share", "mother", "Parent or guardian", "1 Mar 2026", "no end said", "2 Mar 2026", "", "", "in force"],
      [
        ...["To measure", "mother", "Parent or guardian", "1 Mar 2026", "28 Feb 2027", "2 Mar 2026"],
        ...["1 Jun 2026", "father", "withdrawn"],
      ],
    ]);
    expect(table?.rows.map((row) => row.tone)).toEqual(["plain", "quiet"]);
    expect(page([]).parts[2]?.table).toBeNull();
  });

  it("offers to withdraw only where there is something to withdraw", () => {
    const hrefs = (consents: readonly ShownConsent[]) => page(consents).actions.map(({ href }) => href);
    expect(hrefs([mothers])).toContain("/students/s1/consent/withdraw");
    expect(hrefs([])).toEqual(["/students/s1/departed"]);
    expect(hrefs([{ ...mothers, until: "2026-09-11" }])).toEqual(["/students/s1/departed"]);
  });

  it("asks anew in words to be sent: what, how long, who sees it, how to say no and have it erased, local rules", () => {
    const { text } = page([]).message;
    for (const part of [
      /Dear family of Ari/,
      /The Two Larches/,
      /24 months/,
      /erased/,
      /Local rules/,
      /take a yes back/,
    ])
      expect(text).toMatch(part);
    expect(text).toContain("from 12 Sep 2026 to 11 Sep 2027");
    expect(page([], { birthYear: 1990 }).message.text).toMatch(/^Dear Ari,/);
    expect(text).not.toMatch(/proofband|reading|track|session/i);
  });

  it("leads on to the other pages of the family and data, and has no name in its title", () => {
    const { links, documentTitle } = page([mothers]);
    expect(links.links.map(({ href }) => href)).toContain("/students/s1/erase");
    expect(links.links.map(({ href }) => href)).not.toContain("/students/s1/consent");
    expect(documentTitle).not.toContain("Ari");
  });
});
