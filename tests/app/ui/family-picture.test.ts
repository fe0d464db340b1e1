import { createElement } from "react";
import { renderToStaticMarkup } from "react-dom/server";
import { describe, expect, it } from "vitest";
import { type FamilyForm, familyGeometry, familyMonthTicks } from "@/app/_ui/chart-family";
import { Filming } from "@/app/_ui/family/filming";
import { Picture } from "@/app/_ui/family/picture";
import { PLAIN, textWidth } from "@/app/_ui/text-width";
import { buildFamilyFilming } from "@/lib/report/build-family-filming";
import { buildFamilyPicture } from "@/lib/report/build-family-picture";
import { wordsFor } from "@/lib/words/catalogue";
import { ASIDE, lookTrack, withChange } from "../../lib/report/look-fixture";

const words = wordsFor("en");
const track = lookTrack(
  "foot-line",
  [
    ["2026-03-03", 9],
    ["2026-03-31", 10],
    ["2026-04-20", 1],
    ["2026-05-20", 2, ASIDE],
    ["2026-06-30", 1],
  ],
  withChange("gain", ["2026-03-31", "2026-04-20"], [9.5, 1], true),
);
const picture = buildFamilyPicture(words, { ...track, hand: "right", reader: "other", today: "2026-07-01" });
const FORMS: readonly FamilyForm[] = ["phone", "wide"];

describe("a family's picture", () => {
  it.each(FORMS)("%s: every dot, level and change lies in the plot, and every word in the drawing", (form) => {
    const { plot, x, y, width, height, story, high, low, months } = familyGeometry(picture, form);
    for (const { day, mean, low: from, high: to } of picture.sessions) {
      expect(x(day)).toBeGreaterThanOrEqual(plot.left);
      expect(x(day)).toBeLessThanOrEqual(plot.right);
      for (const value of [mean, from, to]) {
        expect(y(value)).toBeGreaterThanOrEqual(plot.top);
        expect(y(value)).toBeLessThanOrEqual(plot.bottom);
      }
    }
    expect(plot.right + 8 + textWidth(picture.inside, { size: 14, weight: "strong" })).toBeLessThanOrEqual(width);
    expect(story.length).toBe(3);
    for (const line of [high, low, months]) {
      expect(line).toBeGreaterThan(0);
      expect(line).toBeLessThan(height);
    }
    expect(Math.max(...story.map((each) => each.y + 38))).toBeLessThan(high);
  });

  it("months stand free of each other: at least 8 px between one and the next", () => {
    const geometry = familyGeometry(picture, "phone");
    const ticks = familyMonthTicks(picture, geometry);
    expect(ticks.length).toBeGreaterThan(2);
    ticks.slice(1).forEach((tick, at) => {
      const before = ticks[at];
      const end = before ? geometry.x(before.at) + textWidth(before.label, PLAIN) : 0;
      expect(geometry.x(tick.at) - end).toBeGreaterThanOrEqual(8);
    });
  });

  it("is drawn large enough for a thumb: at least 250 px high on a phone, dots of 11 px", () => {
    const { plot, dot } = familyGeometry(picture, "phone");
    expect(plot.bottom - plot.top).toBeGreaterThanOrEqual(250);
    expect(2 * dot).toBeGreaterThanOrEqual(11);
  });

  it("where nothing changed no word of when stands over it", () => {
    expect(familyGeometry({ ...picture, changes: [] }, "phone").story).toEqual([]);
  });

  it("says in words what it shows, marks the video that doesn't count, and bears no unit", () => {
    const markup = renderToStaticMarkup(createElement(Picture, { model: picture }));
    expect(markup).toContain("<h2>Where your feet point</h2>");
    expect(markup.match(/role="img"/g)).toHaveLength(2);
    expect(markup).toContain(picture.summary);
    expect(markup).toContain("↑ too far right");
    expect(markup.match(/hollow/g)).toHaveLength(2);
    expect(markup).not.toMatch(/°|\bdeg\b|<script/);
  });

  it("what is ticked after filming belongs to no form and has no name, so that nothing of it is sent", () => {
    const model = buildFamilyFilming(words, {
      ...{ student: { alias: "Dot", birthYear: 2012, hand: "right" }, today: "2026-07-01", tracks: [track] },
      ...{ inHand: null, videos: [], numbers: [], plan: null, captures: [] },
    });
    const markup = renderToStaticMarkup(createElement(Filming, { model }));
    expect(markup.match(/type="checkbox"/g)).toHaveLength(model.checks.items.length);
    expect(markup).not.toMatch(/<form|name="/);
  });
});
