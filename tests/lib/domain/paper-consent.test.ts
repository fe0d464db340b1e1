import { expect, it } from "vitest";
import { paperConsent } from "@/lib/domain/paper-consent";

it("holds for a year from the day, as a guardian's word or, from the own age on, the student's", () => {
  const terms = { kind: "measure", givenBy: "mother", from: "2026-09-12", until: "2027-09-11", withdrawnOn: null };
  const on = (birthYear: number | null) => ({ day: "2026-09-12", birthYear, ownConsentAge: 16 });
  expect(paperConsent("mother", on(2014))).toEqual({ ...terms, giverIs: "guardian" });
  expect(paperConsent("mother", on(null))).toEqual({ ...terms, giverIs: "guardian" });
  expect(paperConsent("mother", on(2009))).toEqual({ ...terms, giverIs: "student" });
});
