import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import path from "node:path";
import { describe, expect, it } from "vitest";
import { familyFile } from "@/app/_ui/chart-file/family-file";
import { buildFamilyFile } from "@/lib/report/build-family-file";
import type { FamilyPicture } from "@/lib/report/family-look-model";
import type { FamilyFile } from "@/lib/report/tell-model";
import type { Telling } from "@/lib/report/tell-source";
import { wordsFor } from "@/lib/words/catalogue";
import { HOSTILE } from "../../lib/ingest/hostile-texts";
import { madeSeasonChart } from "./made-season-chart";
import { readXml } from "./read-xml";

const UI = path.join(import.meta.dirname, "../../../app/_ui");
const read = (name: string): string => readFileSync(path.join(UI, name), "utf8");
const digest = (text: string): string => createHash("sha256").update(text).digest("base64");
const SHEETS = {
  ...{ tokens: read("tokens.css"), file: read("chart-file/family-file.css"), digest },
  ...{ marks: read("chart-marks/chart-marks.module.css"), picture: read("family/picture.module.css") },
};
const { x, y, bands, sessions, levels, changes } = madeSeasonChart();
const PICTURE: FamilyPicture = {
  ...{ heading: "Your feet point straighter", summary: "Twelve videos.", reads: ["Each dot is one video."] },
  ...{ high: "too far right", low: "too far left", inside: "where we want it" },
  ...{ x, y, bands, levels, changes },
  sessions: sessions.map(({ day, mean, low, high }) => ({ day, mean, low, high, mark: "used" })),
};
const ALIAS = "Zephyrine";

function made(over: Partial<Telling> = {}, story: Partial<Telling["story"]> = {}): FamilyFile {
  return buildFamilyFile(wordsFor("en"), {
    ...{ student: { id: "s1", alias: ALIAS, hand: "right", birthYear: 2014 }, today: "2026-09-12", told: [] },
    story: {
      ...{
        heading: `${ALIAS}’s grip is better`,
        good: "You practised.",
        changed: ["Your grip is better."],
        unsure: "",
      },
      ...{ task: "Your one task: sticks.", contact: "", rest: [], numbers: ["Grip: 5 degrees."], ...story },
    },
    ...{ stopped: "no", taskLines: ["Lay two sticks."], filming: "Put the phone left.", picture: PICTURE },
    ...over,
  } as Telling);
}
const written = (file: FamilyFile = made()): string => familyFile(file, SHEETS);

/** The page as XML: its only tags without an end are those of its head. */
const asXml = (html: string): string =>
  html.replace("<!doctype html>\n", "").replace(/<meta ([^>]*[^/])>/g, "<meta $1/>");

describe("a file for the family", () => {
  it("is well formed, and says what a family is told in its order, its numbers behind one step", () => {
    const { tags, texts } = readXml(asXml(written()));
    for (const tag of ["title", "style", "main", "svg", "details", "footer"]) expect(tags).toContain(tag);
    const said = texts.join(" ");
    const order = [
      "grip is better",
      "Each dot is one video.",
      "You practised.",
      "Your grip is better.",
      "Your one task",
    ];
    const places = order.map((text) => said.indexOf(text));
    expect(places.every((place, at) => place > (places[at - 1] ?? -1))).toBe(true);
    expect(said).toContain("Does something hurt? Stop, and tell a grown-up today.");
    expect(said).not.toContain("\u2063");
    expect(readXml(asXml(written(made({ picture: null }, { numbers: [] })))).tags).not.toContain("svg");
  });

  it("runs nothing, asks nobody for anything, and its own policy forbids both but for its one style", () => {
    const html = written();
    const { tags } = readXml(asXml(html));
    for (const tag of [
      "script",
      "link",
      "img",
      "iframe",
      "object",
      "form",
      "base",
      "a",
      "use",
      "image",
      "audio",
      "video",
    ])
      expect(tags).not.toContain(tag);
    expect(html).not.toMatch(/\s(?:src|href|srcset|action|formaction|on\w+)=/i);
    expect(html).not.toMatch(/@import|@font-face|https?:|javascript:|data:/i);
    for (const [, target] of html.matchAll(/url\(([^)]*)\)/g)) expect(target).toMatch(/^#/);
    const style = /<style>([\s\S]*?)<\/style>/.exec(html)?.[1] ?? "";
    expect(html.match(/<style>/g)).toHaveLength(1);
    expect(html).not.toMatch(/\sstyle=/);
    const policy = /http-equiv="Content-Security-Policy" content="([^"]*)"/.exec(html)?.[1];
    expect(policy).toBe(`default-src 'none'; style-src 'sha256-${digest(style)}'; base-uri 'none'; form-action 'none'`);
    expect(style).not.toMatch(/var\(/);
  });

  it("has nobody's name in its title or its head, and the alias in its text", () => {
    const html = written();
    const [head = "", body = ""] = html.split("<body>");
    expect(head).not.toContain(ALIAS);
    expect(head).toContain("<title>For the family</title>");
    expect(body).toContain(ALIAS);
  });

  it("is the same text byte by byte for the same content", () => {
    expect(written()).toBe(written());
  });

  it.each(HOSTILE.map((text) => [text]))("takes %o for text", (text) => {
    const file = made({ taskLines: [text] }, { heading: text, changed: [text, `${text}.`], numbers: [text] });
    const { tags } = readXml(asXml(written(file)));
    expect(tags.filter((tag) => tag === "script" || tag === "img")).toEqual([]);
    expect(tags.filter((tag) => tag === "main")).toHaveLength(1);
  });
});
