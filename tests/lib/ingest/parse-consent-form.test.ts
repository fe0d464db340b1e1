import { describe, expect, it } from "vitest";
import { parseConsentForm } from "@/lib/ingest/parse-consent-form";
import { wordsFor } from "@/lib/words/catalogue";

const words = wordsFor("en");
const good = { givenBy: "mother", giverIs: "guardian", from: "2026-09-12", until: "2027-09-11", onPaper: "yes" };

function read(change: Readonly<Record<string, string>>, birthYear: number | null = 2014, kinds = ["measure"]) {
  const data = new FormData();
  for (const [name, value] of Object.entries({ ...good, ...change })) data.set(name, value);
  for (const kind of kinds) data.append("kinds", kind);
  return parseConsentForm(data, { today: "2026-09-12", birthYear, ownConsentAge: 16 });
}

describe("a consent as a form gives it (real FormData)", () => {
  it("is one row for each thing it is for", () => {
    const { onPaper: _, ...terms } = good;
    expect(read({}, 2014, ["share", "measure"])).toEqual({
      kind: "ok",
      value: [
        { kind: "measure", ...terms, withdrawnOn: null },
        { kind: "share", ...terms, withdrawnOn: null },
      ],
    });
  });

  it.each<[Readonly<Record<string, string>>, number | null, string, string]>([
    [{ givenBy: " " }, 2014, "givenBy", "missing"],
    [{ givenBy: "m\u202eother" }, 2014, "givenBy", "hidden-mark"],
    [{ givenBy: "x".repeat(61) }, 2014, "givenBy", "too-long"],
    [{ giverIs: "coach" }, 2014, "giverIs", "not-a-choice"],
    [{ giverIs: "student" }, 2011, "giverIs", "consent-too-young"],
    [{ giverIs: "guardian" }, 2009, "giverIs", "consent-own-word"],
    [{ from: "" }, 2014, "from", "missing"],
    [{ from: "12.09.2026" }, 2014, "from", "not-a-date"],
    [{ from: "2013-12-31", until: "2026-09-12" }, 2014, "from", "before-birth"],
    [{ from: "2027-09-12", until: "2028-01-01" }, 2014, "from", "consent-far-ahead"],
    [{ until: "" }, 2014, "until", "consent-end-missing"],
    [{ until: "2027-02-29" }, 2014, "until", "not-a-date"],
    [{ until: "2026-09-11" }, 2014, "until", "ends-before"],
    [{ from: "2026-03-01", until: "2026-09-11" }, 2014, "until", "consent-over"],
    [{ until: "2028-09-12" }, 2014, "until", "consent-too-long"],
    [{ onPaper: "" }, 2014, "onPaper", "consent-not-on-paper"],
  ])("%j of somebody born %s is refused at %s as %s, in words", (change, birthYear, field, code) => {
    const outcome = read(change, birthYear);
    if (outcome.kind !== "issues") throw new Error("taken");
    expect(outcome.issues.map((issue) => [issue.field, issue.code])).toContainEqual([field, code]);
    for (const issue of outcome.issues) expect(words.say(`form.issue.${issue.code}`, issue.args)).toMatch(/\w/);
  });

  it("for nothing, or for something unknown, it is none", () => {
    expect(read({}, 2014, [])).toMatchObject({ issues: [{ field: "kinds", code: "consent-for-nothing" }] });
    expect(read({}, 2014, ["film"])).toMatchObject({ kind: "issues" });
  });

  it.each<[string, Readonly<Record<string, string>>, number | null]>([
    ["two years to the day", { until: "2028-09-11" }, 2014],
    ["its last day is today", { from: "2026-03-01", until: "2026-09-12" }, 2014],
    ["either's word in the year of the birthday, 2010 and 16", { giverIs: "student" }, 2010],
    ["either's word in the year of the birthday, 2010 and 16", { giverIs: "guardian" }, 2010],
    ["a guardian's where no birth year is known", {}, null],
  ])("taken: %s", (_, change, birthYear) => expect(read(change, birthYear).kind).toBe("ok"));
});
