import { createElement, type ReactElement } from "react";
import { renderToStaticMarkup } from "react-dom/server";
import { describe, expect, test } from "vitest";
import { IntervalMark } from "@/app/_ui/fundamental/interval-marks";
import { Roster } from "@/app/_ui/roster/roster";
import { ROSTER } from "./made-roster-page";

const draw = (element: ReactElement) => renderToStaticMarkup(element);

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
  const markup = draw(
    createElement(Roster, {
      model: ROSTER,
      seenAction: "/seen",
      dealtAction: "/dealt",
      viewActions: { keep: "/keep", forget: "/forget" },
    }),
  );

  test("says nothing but the model's own words", () => {
    const known = wordsOf(ROSTER);
    const strange = saidIn(markup).filter((said) => !known.some((word) => said.includes(word) || word.includes(said)));
    expect(saidIn(markup).length).toBeGreaterThan(40);
    expect(strange).toEqual([]);
  });

  test("has its parts in order: proved, the one next thing, what is known, the lists, the evidence", () => {
    const parts = [
      ...markup.matchAll(/<section [^>]*aria-label="(Proved|Next|What we know|Lists|Evidence|Settle)"/g),
    ].map(([, name]) => name);
    expect([...new Set(parts)]).toEqual(["Proved", "Next", "What we know", "Lists", "Evidence", "Settle"]);
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
    const empty = draw(
      createElement(Roster, {
        model: { ...ROSTER, start },
        seenAction: "/seen",
        dealtAction: "/dealt",
        viewActions: { keep: "/keep", forget: "/forget" },
      }),
    );
    expect(empty).toContain('<a href="/start">Myself</a>');
    expect(empty).not.toContain("<table");
  });
});

describe("a level against the band", () => {
  const row = { low: 6, value: 7.5, high: 9, sentence: "outside, above by 2 to 5°" };
  const intervals = { label: "Against the band", from: 0, to: 10, bandLow: 2, bandHigh: 4, rows: [row] };

  test("says its place, and stands where its values lie: 0 to 10 over 6 to 254 px, so 7.5 at 192", () => {
    const markup = draw(createElement(IntervalMark, { interval: { ...intervals, ...row } }));
    expect(markup).toContain(`aria-label="${row.sentence}"`);
    expect(markup).toMatch(/<circle [^>]*cx="192"/);
  });

  test("without a band there is no field and no edge", () => {
    const markup = draw(
      createElement(IntervalMark, { interval: { ...intervals, ...row, bandLow: null, bandHigh: null } }),
    );
    expect(markup).not.toContain("<rect");
    expect(markup).toContain('d=""');
  });
});
