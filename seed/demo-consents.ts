import { type Consent, giverOf } from "@/lib/domain/consent";
import { DEMO_SEASON_START, type StudentPlan } from "./demo-plan";

/** The academy's age of own consent, as a new one begins. */
const OWN_CONSENT_AGE = 16;
/** The season's last day: consent is asked anew after it. */
const SEASON_END = "2027-02-28";

/** Three students whose families are still to be asked: one's consent has ended, one's ends soon, one's shares nothing. */
const ENDS: Readonly<Record<string, string>> = { s59: "2026-08-31", s60: "2026-09-30" };
const SHARES_NOTHING: readonly string[] = ["s58"];

/** What was consented to at the season's start: to be measured, and mostly to share what comes of it. */
export function demoConsents({ id, birthYear, consentGivenBy }: StudentPlan): readonly Consent[] {
  const giverIs = giverOf({ day: DEMO_SEASON_START, birthYear, ownConsentAge: OWN_CONSENT_AGE });
  const given = { givenBy: consentGivenBy, giverIs, from: DEMO_SEASON_START, withdrawnOn: null };
  return [
    { ...given, kind: "measure", until: ENDS[id] ?? SEASON_END },
    ...(SHARES_NOTHING.includes(id) ? [] : [{ ...given, kind: "share", until: SEASON_END } as const]),
  ];
}
