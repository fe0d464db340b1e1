import { createElement } from "react";
import { renderToStaticMarkup } from "react-dom/server";
import { describe, expect, it } from "vitest";
import { BriefKnown, BriefLists, BriefNext } from "@/app/_ui/roster/brief";
import type { Brief } from "@/lib/report/brief-model";
import { BRIEF } from "./brief-fixture";

const lists = (brief: Brief) => renderToStaticMarkup(createElement(BriefLists, { brief, action: "/dealt" }));
const next = (brief: Brief) => renderToStaticMarkup(createElement(BriefNext, { brief, action: "/dealt" }));

describe("the brief on the page", () => {
  it("puts a line away and a whole list away by buttons of a form, without scripts", () => {
    const markup = lists(BRIEF);
    expect(markup).toMatch(/<form (?=[^>]*action="\/dealt")(?=[^>]*method="post")/);
    expect(markup).toMatch(/<button (?=[^>]*name="put")(?=[^>]*value="watch b\/hinge\/iron 2026-09-01")/);
    expect(markup).toMatch(/<button (?=[^>]*name="list")(?=[^>]*value="watch")/);
    expect(markup).toContain('<input type="hidden" name="weeks" value="6"/>');
  });

  it("a line that was put away has the button that brings it back", () => {
    const [list] = BRIEF.lists;
    const [item] = list?.items ?? [];
    if (list === undefined || item === undefined) throw new Error("no line");
    const away = { ...item, putAway: { ...item.putAway, state: "put-away" as const } };
    expect(lists({ ...BRIEF, lists: [{ ...list, items: [away] }] })).toMatch(/<button [^>]*name="back"/);
  });

  it("every button says by itself what it is about", () => {
    expect(lists(BRIEF)).toContain('aria-label="Dealt with: Bea"');
    expect(next(BRIEF)).toContain('aria-label="Dealt with: Bea"');
  });

  it("without lists and with nothing put away there is no part; the end of the hour stands where the next thing stood", () => {
    const quiet = { margin: "Next", heading: "Nothing else needs you today", text: "Films settle it." };
    const over: Brief = { ...BRIEF, next: null, quiet, lists: [], aside: null };
    expect(lists(over)).toBe("");
    expect(next(over)).toContain("Nothing else needs you today");
    expect(next({ ...over, quiet: null })).toBe("");
    expect(renderToStaticMarkup(createElement(BriefKnown, { known: null }))).toBe("");
  });
});
