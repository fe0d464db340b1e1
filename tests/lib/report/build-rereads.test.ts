import { describe, expect, it } from "vitest";
import type { RereadDraw } from "@/lib/domain/reread";
import { buildRereadsPage } from "@/lib/report/build-rereads";
import { wordsFor } from "@/lib/words/catalogue";
import { madePairs } from "../verdict/made-rereads";
import { madeSource } from "./made-reader-error";

const words = wordsFor("en");
const TEN = [1, -1, 2, -2, 0.5, -0.5, 1, -1, 1.5, -1.5];
const draw: RereadDraw = {
  ...{ id: "d1", reader: "Wren", level: "b", sameAs: null, who: "Wren", day: "2031-02-20" },
  ...{ finishedOn: null, items: 20, read: 6 },
};

describe("the page of re-reads", () => {
  it("before the first draw: no draws, no readers, every fundamental customary", () => {
    const page = buildRereadsPage(words, { draws: [], read: [madeSource([])] });
    expect([page.draws, page.readers]).toEqual([null, null]);
    expect(page.lede).toContain("No fundamental is measured yet.");
    expect(page.measured.table.rows[0]?.cells).toEqual([
      "Wrist hinge",
      "0",
      "–",
      "–",
      "1.5°, customary: 10 pairs are missing",
    ]);
    expect(page.measured.links[0]?.href).toBe("/rereads/of/hinge");
  });
  it("an open draw can be gone on with, a finished one be seen", () => {
    const done = { ...draw, id: "d0", finishedOn: "2031-02-10", read: 20 };
    const page = buildRereadsPage(words, { draws: [draw, done], read: [] });
    expect(page.draws?.heading).toBe("One draw is open");
    expect(page.draws?.table.rows.map((row) => row.cells.slice(3))).toEqual([
      ["6 of 20", "open"],
      ["20 of 20", "finished 10 Feb 2031"],
    ]);
    expect(page.draws?.links.map((link) => `${link.href} ${link.label}`)).toEqual([
      "/rereads/d1 Go on reading",
      "/rereads/d0 See the draw",
    ]);
  });
  it("each reader stands beside the fundamental with its own pairs; a measured fundamental is counted", () => {
    const pairs = [...madePairs(TEN), ...madePairs([2, -2], { reader: "Lark", firstReader: "Lark" })];
    const page = buildRereadsPage(words, { draws: [], read: [madeSource(pairs)] });
    expect(page.readers?.table.rows.map((row) => row.cells.slice(0, 3))).toEqual([
      ["Wrist hinge", "Lark", "2"],
      ["Wrist hinge", "Wren", "10"],
    ]);
    expect(page.lede).toContain("One fundamental is measured.");
    expect(page.readers?.heading).toBe("2 readers have read again");
  });
});
