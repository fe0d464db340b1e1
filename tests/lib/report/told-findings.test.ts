import { describe, expect, it } from "vitest";
import { familyReader } from "@/lib/report/family-findings";
import { buildFamilyStory } from "@/lib/report/family-story";
import { toldFindings } from "@/lib/report/told-findings";
import { wordsFor } from "@/lib/words/catalogue";
import { fundamentalOf, SAID, storySource, storyTrack, TODAY } from "./story-cases";

const words = wordsFor("en");

function saidOf(name: string) {
  const found = SAID[name];
  if (found === undefined) throw new Error(name);
  return found;
}

/** Every sentence of a story of one track, as one text. */
function told(said: string, birthYear: number | null = 2012, part: "all" | "heading" | "good" = "all") {
  const track = storyTrack(fundamentalOf("foot-line"), saidOf(said));
  const source = storySource({ tracks: [track], student: { alias: "Dot", hand: "right", birthYear } });
  const story = buildFamilyStory(words, source);
  const all = [story.heading, story.good, ...story.changed, story.unsure, story.task, ...story.rest].join(" ");
  const text = part === "all" ? all : story[part];
  return { findings: toldFindings(words, source, text), young: familyReader(source.student, TODAY) === "young" };
}

const LISTED = Object.entries(SAID)
  .filter(([name, verdict]) => verdict.listed === true && verdict.change !== null && !name.includes("doubtful"))
  .map(([name]) => [name]);

describe("the changes that a text tells", () => {
  it("there are such that stand on the list, better and worse", () => {
    expect(LISTED.length).toBeGreaterThan(4);
  });

  it.each(LISTED)("%s: told with its days, and as the sentence says it", (name) => {
    const { findings } = told(name);
    const change = saidOf(name).change;
    expect(findings).toHaveLength(1);
    expect(findings[0]).toMatchObject({
      ...{ fundamentalId: "foot-line", kind: "changed", change: { from: change?.from, to: change?.to } },
    });
    if (name.startsWith("better")) expect(findings[0]?.said).toBe("better");
    if (name.startsWith("worse")) expect(findings[0]?.said).toBe("worse");
  });

  it.each(Object.keys(SAID).filter((name) => !LISTED.flat().includes(name)))("%s: no change is told", (name) => {
    expect(told(name).findings.filter(({ kind }) => kind === "changed")).toEqual([]);
  });

  it("a heading alone tells it too, and what is left out is not told", () => {
    expect(told("better, listed", 2012, "heading").findings).toHaveLength(1);
    expect(told("better, listed", 2012, "good").findings).toEqual([]);
  });

  it("the youngest are told no change for the worse", () => {
    const { findings, young } = told("worse up, listed", 2020);
    expect([findings, young]).toEqual([[], true]);
  });
});
