import { describe, expect, it } from "vitest";
import { parseNoiseLine } from "@/lib/ingest/parse-noise-line";
import { parseTrackLine } from "@/lib/ingest/parse-track-line";

const session = { date: "2026-03-01", captureSd: 0.5, swings: [1, 2] };
const line = (over: object) => JSON.stringify({ id: "t", sessions: [session], ...over });
const withSession = (over: object) => line({ sessions: [session, { ...session, ...over }] });
const issueOf = (text: string) => {
  const outcome = parseTrackLine(text);
  return outcome.kind === "issue" ? { id: outcome.id, field: outcome.issue.field, code: outcome.issue.code } : outcome;
};

describe("parseTrackLine", () => {
  it("takes a full line, passes unknown fields over, and keeps the id as it is", () => {
    const outcome = parseTrackLine(
      line({
        id: " Ä/1 ",
        goal: { low: 3, high: null },
        better: "down",
        readerOffsetSd: 0,
        extra: 1,
        sessions: [{ ...session, use: false, swings: [], captureSetup: "a", daysSincePractice: 8 }],
      }),
    );
    expect(outcome).toMatchObject({
      kind: "ok",
      value: {
        id: " Ä/1 ",
        goal: { low: 3, high: null },
        sessions: [{ use: false, swings: [], daysSincePractice: 8 }],
      },
    });
  });

  it("null and a goal without edges mean left out", () => {
    const outcome = parseTrackLine(line({ goal: { low: null, high: null }, better: null, pool: null }));
    expect(outcome.kind === "ok" && [outcome.value.goal, outcome.value.better, outcome.value.pool]).toEqual([
      undefined,
      undefined,
      undefined,
    ]);
  });

  it("takes owning rules with their first days, and says which of their numbers is none", () => {
    const rule = { from: "2026-03-01", sessions: 3, spanDays: 21, restDays: 7, share: 0.7, shareLow: 0.55 };
    expect(parseTrackLine(line({ owning: [rule] }))).toMatchObject({ kind: "ok", value: { owning: [rule] } });
    const bad = (over: object) => issueOf(line({ owning: [{ ...rule, ...over }] }));
    expect(bad({ from: "2026-02-30" })).toEqual({ id: "t", field: "owning[0].from", code: "not-day" });
    expect(bad({ sessions: 0 })).toEqual({ id: "t", field: "owning[0].sessions", code: "not-above-zero" });
    expect(bad({ spanDays: 1.5 })).toEqual({ id: "t", field: "owning[0].spanDays", code: "not-whole" });
    expect(bad({ share: 1.1 })).toEqual({ id: "t", field: "owning[0].share", code: "not-share" });
  });

  it("takes a track without a session", () => {
    expect(parseTrackLine(line({ sessions: [] })).kind).toBe("ok");
  });

  it.each([
    ["no JSON, id readable", '{"id":"a\\"b","sessions":[', { id: 'a"b', field: "", code: "not-json" }],
    ["no JSON, no id", "hello", { id: null, field: "", code: "not-json" }],
    ["a list", "[1]", { id: null, field: "", code: "not-object" }],
    ["a number as id", '{"id":7,"sessions":[]}', { id: null, field: "id", code: "not-text" }],
    ["no id", '{"sessions":[]}', { id: null, field: "id", code: "missing" }],
    ["no sessions", '{"id":"t"}', { id: "t", field: "sessions", code: "missing" }],
    ["sessions no list", line({ sessions: {} }), { id: "t", field: "sessions", code: "not-list" }],
    ["a session no object", line({ sessions: [3] }), { id: "t", field: "sessions[0]", code: "not-object" }],
    [
      "text in a number",
      withSession({ swings: [1, "2,5"] }),
      { id: "t", field: "sessions[1].swings[1]", code: "not-number" },
    ],
    [
      "null in a number",
      withSession({ swings: [null] }),
      { id: "t", field: "sessions[1].swings[0]", code: "not-number" },
    ],
    ["1e999", line({}).replace("[1,2]", "[1,1e999]"), { id: "t", field: "sessions[0].swings[1]", code: "not-number" }],
    ["NaN", line({}).replace("[1,2]", "[NaN,2]"), { id: "t", field: "sessions[0].swings[0]", code: "not-number" }],
    [
      "-Infinity",
      line({}).replace("0.5", "-Infinity"),
      { id: "t", field: "sessions[0].captureSd", code: "not-number" },
    ],
    ["1e300", withSession({ swings: [1e300] }), { id: "t", field: "sessions[1].swings[0]", code: "too-large" }],
    ["30 February", withSession({ date: "2026-02-30" }), { id: "t", field: "sessions[1].date", code: "not-day" }],
    ["day first", withSession({ date: "01.03.2026" }), { id: "t", field: "sessions[1].date", code: "not-day" }],
    [
      "captureSd below 0",
      withSession({ captureSd: -0.1 }),
      { id: "t", field: "sessions[1].captureSd", code: "below-zero" },
    ],
    [
      "no captureSd",
      withSession({ captureSd: undefined }),
      { id: "t", field: "sessions[1].captureSd", code: "missing" },
    ],
    ["no swings", withSession({ swings: [] }), { id: "t", field: "sessions[1].swings", code: "no-swings" }],
    ["use as text", withSession({ use: "no" }), { id: "t", field: "sessions[1].use", code: "not-yes-no" }],
    ["goal upside down", line({ goal: { low: 5, high: 4 } }), { id: "t", field: "goal", code: "goal-order" }],
    ["goal without an edge's name", line({ goal: { low: 5 } }), { id: "t", field: "goal.high", code: "missing" }],
    ["better sideways", line({ better: "left" }), { id: "t", field: "better", code: "not-up-down" }],
    ["readerSd 0", line({ readerSd: 0 }), { id: "t", field: "readerSd", code: "not-above-zero" }],
    ["readerOffsetSd below 0", line({ readerOffsetSd: -1 }), { id: "t", field: "readerOffsetSd", code: "below-zero" }],
    [
      "startLevel sd 0",
      line({ startLevel: { mean: 1, sd: 0 } }),
      { id: "t", field: "startLevel.sd", code: "not-above-zero" },
    ],
    [
      "a dated goal's least change below 0",
      line({ goals: [{ from: "2026-01-01", low: 1, high: 2, worthwhileAtLeast: -1 }] }),
      { id: "t", field: "goals[0].worthwhileAtLeast", code: "below-zero" },
    ],
    [
      "smallestWorthwhile 0",
      line({ smallestWorthwhile: 0 }),
      { id: "t", field: "smallestWorthwhile", code: "not-above-zero" },
    ],
  ])("names the field: %s", (_, text, expected) => {
    expect(issueOf(text)).toEqual(expected);
  });

  it("NaN in a field that nobody reads is still no JSON", () => {
    expect(issueOf(line({ extra: 1 }).replace('"extra":1', '"extra":NaN'))).toMatchObject({ code: "not-json" });
  });
});

describe("parseNoiseLine", () => {
  const model = {
    noiseModel: "n1",
    kind: "learned",
    cells: [
      { daySd: 1, correlation: 0, weight: 0.4 },
      { daySd: 2, correlation: 0.3, weight: 0.6 },
    ],
    replicateSd: 3,
    priorChange: 0.2,
    learnedFrom: 12,
  };

  it("takes a model of a pool, and one for tracks that name none", () => {
    expect(parseNoiseLine(JSON.stringify({ ...model, pool: "p" }))).toMatchObject({
      kind: "ok",
      value: { pool: "p", model: { id: "n1", cells: model.cells, learnedFrom: 12 } },
    });
    expect(parseNoiseLine(JSON.stringify(model))).toMatchObject({ kind: "ok", value: { pool: null } });
  });

  it.each([
    ["weights that don't sum to 1", { cells: [{ daySd: 1, correlation: 0, weight: 0.4 }] }, "cells", "weights-sum"],
    ["correlation 1", { cells: [{ daySd: 1, correlation: 1, weight: 1 }] }, "cells[0].correlation", "not-below-one"],
    ["day sd 0", { cells: [{ daySd: 0, correlation: 0, weight: 1 }] }, "cells[0].daySd", "not-above-zero"],
    ["kind", { kind: "guess" }, "kind", "not-kind"],
    ["priorChange", { priorChange: 1.5 }, "priorChange", "not-share"],
    ["learnedFrom", { learnedFrom: 1.5 }, "learnedFrom", "not-whole"],
  ])("refuses %s", (_, over, field, code) => {
    expect(parseNoiseLine(JSON.stringify({ ...model, ...over }))).toMatchObject({
      kind: "issue",
      id: "n1",
      issue: { field, code },
    });
  });
});
