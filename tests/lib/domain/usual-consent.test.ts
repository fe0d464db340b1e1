import { expect, it } from "vitest";
import type { Consent } from "@/lib/domain/consent";
import { usualConsent } from "@/lib/domain/usual-consent";

const asked = { day: "2026-06-01", birthYear: null, ownConsentAge: 16 };
const given = (kind: Consent["kind"], until: string | null): Consent => ({
  ...{ kind, givenBy: "mother", giverIs: "guardian", from: "2026-03-01", until, withdrawnOn: null },
});

it.each<[string, Consent[], string, string]>([
  ["none: a year from today", [], "2026-06-01", "2027-05-31"],
  ["one that ends on 28 February: the year after it", [given("measure", "2027-02-28")], "2027-03-01", "2028-02-29"],
  ["one that ends today: from today", [given("measure", "2026-06-01")], "2026-06-01", "2027-05-31"],
  ["one without an end: from today", [given("measure", null)], "2026-06-01", "2027-05-31"],
  ["one that goes on for two years: from today", [given("measure", "2028-06-01")], "2026-06-01", "2027-05-31"],
])("%s", (_, consents, from, until) => expect(usualConsent(consents, ["measure"], asked)).toEqual({ from, until }));

it("of two kinds the one that ends first counts, and one that isn't given begins today", () => {
  const both = [given("measure", "2027-02-28"), given("share", "2026-12-31")];
  expect(usualConsent(both, ["measure", "share"], asked).from).toBe("2027-01-01");
  expect(usualConsent([given("measure", "2027-02-28")], ["measure", "share"], asked).from).toBe("2026-06-01");
});
