import { describe, expect, it } from "vitest";
import { BUILT_IN } from "@/lib/domain/catalogue";
import { SHORT_LIST } from "@/lib/domain/club-grouping";
import { parseSessionForm } from "@/lib/ingest/parse-session-form";
import { parseStudentForm } from "@/lib/ingest/parse-student-form";
import { wordsFor } from "@/lib/words/catalogue";

const form = (entries: Readonly<Record<string, string>>): FormData => {
  const data = new FormData();
  for (const [name, value] of Object.entries(entries)) data.set(name, value);
  return data;
};
const words = wordsFor("en");

describe("a student's form (real FormData)", () => {
  const good = {
    alias: " Nia ",
    birthYear: "2014",
    hand: "left",
    zone: "Europe/Berlin",
    clubs: "7-iron",
    consentGivenBy: "mother",
    consentOnPaper: "yes",
  };
  const read = (change: Readonly<Record<string, string>>) =>
    parseStudentForm(form({ ...good, ...change }), { today: "2026-09-12", ownConsentAge: 16 });
  it("is read without blanks around", () =>
    expect(read({})).toEqual({
      kind: "ok",
      value: {
        alias: "Nia",
        birthYear: 2014,
        hand: "left",
        zone: "Europe/Berlin",
        clubs: "7-iron",
        language: "en",
        consents: [
          {
            ...{ kind: "measure", givenBy: "mother", giverIs: "guardian" },
            ...{ from: "2026-09-12", until: "2027-09-11", withdrawnOn: null },
          },
        ],
      },
    }));
  it("says whose word it is, and shares only where that is ticked", () => {
    const own = read({ birthYear: "1990", consentShare: "yes", consentUntil: "2026-12-31" });
    const given = { givenBy: "mother", giverIs: "student", from: "2026-09-12", until: "2026-12-31" };
    expect(own).toMatchObject({
      value: {
        consents: [
          { kind: "measure", ...given },
          { kind: "share", ...given },
        ],
      },
    });
  });
  it("an empty birth year is not known, and never 0", () =>
    expect(read({ birthYear: "" })).toMatchObject({ value: { birthYear: null } }));
  it.each([
    [{ alias: "" }, "alias"],
    [{ alias: "x".repeat(61) }, "alias"],
    [{ birthYear: "14" }, "birthYear"],
    [{ birthYear: "2027" }, "birthYear"],
    [{ birthYear: "1900" }, "birthYear"],
    [{ hand: "both" }, "hand"],
    [{ alias: "N\u202eia" }, "alias"],
    [{ zone: "Mars/One" }, "zone"],
    [{ consentGivenBy: "" }, "consentGivenBy"],
    [{ consentGivenBy: "x".repeat(61) }, "consentGivenBy"],
    [{ consentUntil: "" }, "consentUntil"],
    [{ consentUntil: "2026-02-30" }, "consentUntil"],
    [{ consentUntil: "2026-09-11" }, "consentUntil"],
    [{ consentUntil: "2028-09-12" }, "consentUntil"],
    [{ birthYear: "2009", consentGiverIs: "guardian" }, "consentGiverIs"],
    [{ birthYear: "2011", consentGiverIs: "student" }, "consentGiverIs"],
    [{ consentGiverIs: "coach" }, "consentGiverIs"],
    [{ consentOnPaper: "" }, "consentOnPaper"],
  ])("%j is refused at its field, in words", (change, field) => {
    const outcome = read(change);
    if (outcome.kind !== "issues") throw new Error("taken");
    expect(outcome.issues.map((issue) => issue.field)).toEqual([field]);
    for (const issue of outcome.issues) expect(words.say(`form.issue.${issue.code}`, issue.args)).toMatch(/\w/);
  });
});

describe("a session's form (real FormData)", () => {
  const good = {
    day: "2026-09-01",
    clubGroup: "iron",
    "r.1.hinge": "88",
    "r.2.hinge": "n/m",
    "r.2.setup-tilt": "−3,5",
    "r.3.hinge": "",
  };
  const read = (change: Readonly<Record<string, string>>) =>
    parseSessionForm(form({ ...good, ...change }), {
      today: "2026-09-12",
      fundamentals: BUILT_IN,
      grouping: SHORT_LIST,
      birthYear: 2014,
      hand: "right",
      reader: "Wren",
    });
  it("numbers with a decimal comma and a true minus, not measurable, and blank is no reading", () => {
    const outcome = read({});
    if (outcome.kind !== "ok") throw new Error(JSON.stringify(outcome));
    expect(
      outcome.value.swings.map((swing) => [
        swing.number,
        swing.readings.map((reading) => [reading.fundamentalId, reading.value, reading.typed]),
      ]),
    ).toEqual([
      [1, [["hinge", 88, "88"]]],
      [
        2,
        [
          ["hinge", null, "n/m"],
          ["setup-tilt", -3.5, "−3,5"],
        ],
      ],
    ]);
    expect(outcome.value).toMatchObject({ reader: "Wren", circumstance: "unaided", sequence: null, balls: null });
    expect(outcome.value.captures.map((capture) => [capture.view, capture.placement, capture.squareness])).toEqual([
      ["face-on", "unknown", "unknown"],
      ["down-the-line", "unknown", "unknown"],
    ]);
  });
  it.each([
    [{ day: "2026-02-30" }, "day"],
    [{ day: "2026-09-13" }, "day"],
    [{ day: "2013-01-01" }, "day"],
    [{ clubGroup: "putter" }, "clubGroup"],
    [{ club: "driver" }, "clubGroup"],
    [{ club: "9-iron" }, "clubGroup"],
    [{ "r.1.hinge": "8o" }, "r.1.hinge"],
    [{ "r.1.hinge": "NaN" }, "r.1.hinge"],
    [{ "r.1.hinge": "1e400" }, "r.1.hinge"],
    [{ "r.1.hinge": "1,234" }, "r.1.hinge"],
    [{ "r.1.hinge": "880" }, "r.1.hinge"],
    [{ solid: "5" }, "balls"],
    [{ solid: "12", balls: "10" }, "solid"],
    [{ "placement.face-on": "same" }, "placementLabel.face-on"],
    [{ "squareness.face-on": "off" }, "offBy.face-on"],
    [{ circumstance: "asleep" }, "circumstance"],
    [{ "r.1.hinge": "1.4 rad" }, "r.1.hinge"],
    [{ "r.1.hip-sway": "9 cm" }, "r.1.hip-sway"],
    [{ note: "x".repeat(2001) }, "note"],
    [{ club: "7\u202eiron" }, "club"],
    [{ "squareness.face-on": "off", "offBy.face-on": "a step" }, "offBy.face-on"],
    [{ daysSincePractice: "-1" }, "daysSincePractice"],
  ])("%j is refused at its field, in words", (change, field) => {
    const outcome = read(change);
    if (outcome.kind !== "issues") throw new Error("taken");
    expect(outcome.issues.map((issue) => issue.field)).toEqual([field]);
    for (const issue of outcome.issues) expect(words.say(`form.issue.${issue.code}`, issue.args)).toMatch(/\w/);
  });
  it("an unusual value passes once it is confirmed; the question names no range of anybody", () => {
    expect(read({ "r.1.hinge": "170", confirmUnusual: "yes" }).kind).toBe("ok");
    const outcome = read({ "r.1.hinge": "170" });
    if (outcome.kind !== "issues" || !outcome.issues[0]) throw new Error("taken");
    expect(words.say("form.issue.unusual", outcome.issues[0].args)).not.toMatch(/\d{2,} to/);
  });
  it("without any reading it asks for one", () =>
    expect(read({ "r.1.hinge": "", "r.2.hinge": "", "r.2.setup-tilt": "" })).toEqual({
      kind: "issues",
      issues: [{ field: "r.1", code: "no-readings", args: {} }],
    }));
});
