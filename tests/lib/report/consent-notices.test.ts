import { describe, expect, it } from "vitest";
import { type Consent, consentStanding } from "@/lib/domain/consent";
import { consentNotices } from "@/lib/report/consent-notices";
import { buildRosterConsents } from "@/lib/report/roster-consents";
import { wordsFor } from "@/lib/words/catalogue";

const words = wordsFor("en");
const given: Consent = {
  ...{ kind: "measure", givenBy: "mother", giverIs: "guardian" },
  ...{ from: "2026-03-01", until: "2027-02-28", withdrawnOn: null },
};

function notices(consents: readonly Consent[], today: string, birthYear: number | null = null) {
  const standing = consentStanding(consents, "measure", { day: today, birthYear, ownConsentAge: 16 });
  return consentNotices(words, { alias: "Ari", standing, today });
}

describe("what is told of a consent to measure", () => {
  it.each<[string, readonly Consent[], string, number | null, RegExp | null]>([
    ["in force for long", [given], "2026-09-12", null, null],
    ["31 days before its end: 28 January", [given], "2027-01-28", null, null],
    ["30 days before its end: 29 January", [given], "2027-01-29", null, /ends on Sun 28 Feb 2027/],
    ["its last day", [given], "2027-02-28", null, /ends on/],
    ["the day after", [given], "2027-03-01", null, /none since Mon 1 Mar 2027/],
    ["with no end", [{ ...given, until: null }], "2030-01-01", null, null],
    ["none", [], "2026-09-12", null, /No consent to measure is on file for Ari/],
    ["to come", [{ ...given, from: "2026-10-01" }], "2026-09-12", null, /begins on Thu 1 Oct 2026/],
    ["withdrawn", [{ ...given, withdrawnOn: "2026-09-01" }], "2026-09-12", null, /withdrawn on Tue 1 Sep 2026/],
    ["own age soon: born 2010", [given], "2026-12-15", 2010, /After Thu 31 Dec 2026 Ari’s own consent/],
    ["own age reached", [given], "2027-01-02", 2010, /counts no more since Fri 1 Jan 2027/],
  ])("%s", (_, consents, today, birthYear, said) => {
    const told = notices(consents, today, birthYear);
    if (said === null) expect(told).toEqual([]);
    else expect(told).toEqual([expect.stringMatching(said)]);
  });
});

describe("the roster's list of consents", () => {
  const of = (alias: string, kind: "none" | "given") => ({
    student: { id: alias.toLowerCase(), alias },
    consent: kind === "none" ? ({ kind } as const) : ({ kind, until: null, ends: null, by: [] } as const),
  });
  it("names whoever is to be asked, by alias, with the way to their page", () => {
    const list = buildRosterConsents(words, [of("Bea", "none"), of("Cal", "given"), of("Ari", "none")], "2026-09-12");
    expect(list?.heading).toBe("2 students whose consent is missing or ends soon");
    expect(list?.items.map((item) => item.student.href)).toEqual(["/students/ari/consent", "/students/bea/consent"]);
    expect(list?.more).toBe("");
  });
  it("is no part where nobody is to be asked, and counts what it doesn't show: 15 are 12 and three more", () => {
    expect(buildRosterConsents(words, [of("Cal", "given")], "2026-09-12")).toBeNull();
    const many = Array.from({ length: 15 }, (_, place) => of(`S${place}`, "none"));
    const list = buildRosterConsents(words, many, "2026-09-12");
    expect([list?.items.length, list?.more]).toEqual([12, "3 more students: each season page says so."]);
  });
});
