import { createElement, type ReactElement } from "react";
import { renderToStaticMarkup } from "react-dom/server";
import { describe, expect, test } from "vitest";
import { IntervalMark } from "@/app/_ui/fundamental/interval-marks";
import { Roster } from "@/app/_ui/roster/roster";
import { Strip } from "@/app/_ui/strip/strip";
import type { Strip as StripModel } from "@/lib/report/chart-model";
import type { RosterPage } from "@/lib/report/page-model";

const draw = (element: ReactElement) => renderToStaticMarkup(element);

const STRIP: StripModel = {
  summary: "Foot line: outside, 7.5°. Real slip, 3 sessions.",
  dots: [
    { x: 0, y: 0.5, mark: "used" },
    { x: 0.5, y: 0.8, mark: "set-aside" },
    { x: 1, y: 0.9, mark: "used" },
  ],
  levels: [{ x0: 0, x1: 0.4, y: 0.5 }],
  changes: [{ x0: 0.4, x1: 0.6, y0: 0.5, y1: 0.9, direction: "away" }],
  edges: "both",
};

describe("a strip", () => {
  test("says its summary, and is 94 by 36 with the band from 12 to 24", () => {
    const markup = draw(createElement(Strip, { model: STRIP }));
    expect(markup).toContain(`role="img" aria-label="${STRIP.summary}"`);
    expect(markup).toMatch(/width="94" height="36"/);
    expect(markup).toMatch(/<rect [^>]*y="12" width="94" height="12"/);
  });

  test("draws a session set aside apart from the judged ones, one dot a session: two judged, one aside", () => {
    const markup = draw(createElement(Strip, { model: STRIP }));
    expect(markup).toMatch(/<g class="[^"]*used[^"]*"><path d="M2 18h0M92 3.6h0"><\/path><\/g>/);
    expect(markup).toMatch(/<g class="[^"]*set-aside[^"]*"><path d="M47 7.2h0"><\/path><path class="[^"]*hole/);
  });

  test("keeps 20 px behind the last day for a shape: 94 - 20 - 2 = 72, and the band runs on", () => {
    const markup = draw(createElement(Strip, { model: STRIP, end: "shape" }));
    expect(markup).toContain("M72 3.6h0");
    expect(markup).toMatch(/<rect [^>]*width="94"/);
  });

  test("a band with its low edge alone runs up to the top: 0 to 24", () => {
    const markup = draw(createElement(Strip, { model: { ...STRIP, edges: "low" } }));
    expect(markup).toMatch(/<rect [^>]*y="0" width="94" height="24"/);
    expect(markup).toContain('d="M0 24H94"');
  });
});

const CELL = {
  fundamentalId: "foot-line",
  href: "/students/a/foot-line",
  strip: STRIP,
  position: "outside, 7.5 ± 1.8°",
  glyph: "slip" as const,
  word: "Real slip",
};

const ROSTER: RosterPage = {
  title: "One slip",
  lede: "Two students.",
  proved: {
    margin: "Proved",
    since: "Tue 8 Sep",
    heading: "One is new",
    columns: ["Verdict", "Student", "From", "Change", "Happened", "Chance", "Band", "Season"],
    rows: [
      {
        glyph: "slip",
        word: "Real slip",
        student: "Dot",
        fundamental: "Foot line",
        href: "/students/a/foot-line",
        levels: "2.2° → 7.5°",
        size: "+5.3 ± 2.3°",
        tone: "away",
        days: "6–21 Jul",
        sure: "1 in 45",
        position: "outside",
        strip: STRIP,
      },
    ],
    empty: "Nothing new",
    download: { href: "/api/tables?of=roster&table=0", label: "Proved as CSV" },
    seen: { label: "Seen", explains: "Clears the list.", asOf: "2026-09-12" },
  },
  watch: {
    margin: "Look again",
    heading: "One owned fundamental to look at again",
    items: [
      {
        student: { href: "/students/b", label: "Bea" },
        fundamental: { href: "/students/b/hinge?club=iron", label: "Hinge" },
        text: "Two films below its level.",
      },
    ],
  },
  next: { margin: "Next", heading: "Open Dot", text: "Because", link: { href: "/students/a", label: "Dot’s season" } },
  evidence: {
    margin: "Evidence",
    explains: "In order of work.",
    heading: "Two tracks",
    key: [{ glyph: "slip", label: "Real slip 1" }],
    groups: [{ label: "Before", span: 2 }],
    columns: [
      { id: "foot-line", name: "Foot line", band: "−3 to 4°" },
      { id: "hinge", name: "Hinge", band: "85 to 95°" },
    ],
    studentLabel: "Student name",
    inHandLabel: "In hand",
    contactLabel: "Solid",
    lastLabel: "Last",
    notMeasured: "not measured",
    rows: [
      {
        studentId: "a",
        href: "/students/a",
        alias: "Dot",
        detail: "10, right",
        inHand: { name: "Foot line", position: "outside, 7.5 ± 1.8°", glyph: "slip", word: "Real slip" },
        cells: [CELL, null],
        contact: "9 of 20",
        lastSession: "9 Sep",
        away: "away since July",
      },
    ],
    download: { href: "/api/roster/csv", label: "CSV" },
    sort: { label: "Sort", links: [{ href: "?sort=name", label: "by name", current: "yes" }] },
    pages: null,
  },
  settle: {
    margin: "Settle",
    heading: "One question",
    items: [{ student: "Eli", text: "Two films", href: "/students/e" }],
  },
  start: null,
};

/** Every string of a model, however deep. */
function wordsOf(model: unknown): string[] {
  if (typeof model === "string") return [model];
  if (typeof model !== "object" || model === null) return [];
  return Object.values(model).flatMap(wordsOf);
}

/** What a page says: text between tags, and names for those who don't see it. */
function saidIn(markup: string): string[] {
  const texts = markup.split(/<[^>]*>/).map((text) => text.trim());
  const names = [...markup.matchAll(/aria-label="([^"]*)"/g)].map(([, name]) => name ?? "");
  return [...texts, ...names].filter((text) => /\p{L}/u.test(text));
}

describe("the roster", () => {
  const markup = draw(createElement(Roster, { model: ROSTER, seenAction: "/seen" }));

  test("says nothing but the model's own words", () => {
    const known = wordsOf(ROSTER);
    const strange = saidIn(markup).filter((said) => !known.some((word) => said.includes(word) || word.includes(said)));
    expect(saidIn(markup).length).toBeGreaterThan(40);
    expect(strange).toEqual([]);
  });

  test("has its parts in order, what is to be looked at again before what is next", () => {
    const parts = [...markup.matchAll(/<section [^>]*aria-label="(Proved|Look again|Next|Evidence|Settle)"/g)].map(
      ([, name]) => name,
    );
    expect([...new Set(parts)]).toEqual(["Proved", "Look again", "Next", "Evidence", "Settle"]);
  });

  test("its wide tables stand in regions that a keyboard reaches, under names of their own", () => {
    const names = [...markup.matchAll(/<section [^>]*tabindex="0" aria-label="([^"]*)"/gi)].map(([, name]) => name);
    expect(names).toEqual([ROSTER.proved.heading, ROSTER.evidence.heading]);
  });

  test("what isn't measured is said, not only drawn", () => {
    expect(markup).toContain('<span class="said">not measured</span>');
  });

  test("seen is a form with a button, without scripts", () => {
    expect(markup).toMatch(
      /<form (?=[^>]*action="\/seen")(?=[^>]*method="post")[^>]*><button type="submit"[^>]*>Seen<\/button>/,
    );
  });

  test("an empty academy shows the steps of a start alone", () => {
    const start = { heading: "Four steps", steps: [{ href: "/start", label: "Myself", text: "Your name." }] };
    const empty = draw(createElement(Roster, { model: { ...ROSTER, start }, seenAction: "/seen" }));
    expect(empty).toContain('<a href="/start">Myself</a>');
    expect(empty).not.toContain("<table");
  });
});

describe("a level against the band", () => {
  const row = { low: 6, value: 7.5, high: 9, sentence: "outside, above by 2 to 5°" };
  const intervals = { label: "Against the band", from: 0, to: 10, bandLow: 2, bandHigh: 4, rows: [row] };

  test("says its place, and stands where its values lie: 0 to 10 over 6 to 254 px, so 7.5 at 192", () => {
    const markup = draw(createElement(IntervalMark, { intervals, row }));
    expect(markup).toContain(`aria-label="${row.sentence}"`);
    expect(markup).toMatch(/<circle [^>]*cx="192"/);
  });

  test("without a band there is no field and no edge", () => {
    const markup = draw(
      createElement(IntervalMark, { intervals: { ...intervals, bandLow: null, bandHigh: null }, row }),
    );
    expect(markup).not.toContain("<rect");
    expect(markup).toContain('d=""');
  });
});
