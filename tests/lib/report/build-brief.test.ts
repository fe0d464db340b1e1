import { describe, expect, it } from "vitest";
import type { BriefFinding } from "@/lib/report/brief-finding";
import { buildBrief } from "@/lib/report/build-brief";
import { findBrief } from "@/lib/report/find-brief";
import { wordsFor } from "@/lib/words/catalogue";
import { OUTSIDE, source, student, track, WATCH } from "./brief-parts";

const words = wordsFor("en");
const NOTHING = { aside: new Set<string>(), show: "standing", elsewhere: "nothing" } as const;
const owned = { ownedSince: "2026-03-22", watch: WATCH };

const students = [
  student("s1", "Ari", [track("s1", "hinge", owned)]),
  ...Array.from({ length: 9 }, (_, at) => student(`t${at}`, `Tia ${at}`, [track(`t${at}`, "hip-sway", OUTSIDE)])),
];
const given = source(students);
const findings = findBrief(words, given);
const build = (over: Partial<Parameters<typeof buildBrief>[3]> = {}, found: readonly BriefFinding[] = findings) =>
  buildBrief(words, given, found, { ...NOTHING, ...over });

describe("the brief", () => {
  it("every list says its finding and its count, shows six lines, and leads to the table for the rest", () => {
    const { lists } = build();
    expect(lists.map(({ word, heading, items }) => [word, heading, items.length])).toEqual([
      ["watch", "One owned fundamental to look at again", 1],
      ["stalled", "9 students without a proved gain for eight weeks", 6],
    ]);
    expect(lists[1]?.more).toEqual({ href: "/students?show=stalled#roster", label: "and 3 more, in the table" });
    expect(lists[0]?.more).toBeNull();
  });

  it("the one next thing is the first over all lists, with its reason and what would alter it", () => {
    const { next } = build();
    expect(next?.heading).toBe("Open Ari: look again at Wrist hinge");
    expect(next?.alters).toContain("The next film decides");
    expect(next?.link.href).toBe("/students/s1/hinge?club=iron");
  });

  it("what was put away is neither a line nor the next thing, is counted, and is shown where that is wished", () => {
    const aside = new Set(["watch s1/hinge/iron 2026-08-22"]);
    const brief = build({ aside });
    expect(brief.lists.map(({ word }) => word)).toEqual(["stalled"]);
    expect(brief.next?.heading).toContain("no proved gain since");
    expect(brief.aside?.label).toContain("One line is put away");
    const shown = build({ aside, show: "all" });
    expect(shown.lists[0]?.items[0]?.putAway).toMatchObject({ state: "put-away", label: "Bring back" });
    expect(shown.lists[1]?.items).toHaveLength(6);
  });

  it("the hour ends when everything is put away or nothing is found; what waits elsewhere on the page is said", () => {
    const aside = new Set(findings.map(({ key }) => key));
    expect(build({ aside }).quiet?.heading).toBe("Nothing else needs you today");
    expect(build({ aside }).next).toBeNull();
    expect(build({}, []).quiet).not.toBeNull();
    expect(build({ aside, elsewhere: "something" }).quiet?.heading).toBe("The films need nothing else from you today");
    expect(build().quiet).toBeNull();
  });

  it("what has come up after it was put away is there again: an alarm of a later day has another key", () => {
    const later = source([
      student("s1", "Ari", [track("s1", "hinge", { ...owned, watch: { ...WATCH, raisedOn: "2026-08-30" } })]),
    ]);
    const again = findBrief(words, later);
    const brief = buildBrief(words, later, again, { ...NOTHING, aside: new Set(findings.map(({ key }) => key)) });
    expect(brief.next?.heading).toContain("look again");
  });

  it("weeks without a film can be chosen where somebody is away, and stand in the way to the table", () => {
    const days = ["2026-05-01"];
    const away = source(
      Array.from({ length: 8 }, (_, at) => student(`a${at}`, `Abe ${at}`, [track(`a${at}`, "hinge", {}, { days })])),
      { weeks: 8 },
    );
    const [list] = buildBrief(words, away, findBrief(words, away), NOTHING).lists;
    expect(list?.choice?.links.map(({ href, current }) => `${href} ${current}`)).toEqual([
      "/students?weeks=4#brief-away no",
      "/students#brief-away no",
      "/students?weeks=8#brief-away yes",
      "/students?weeks=12#brief-away no",
    ]);
    expect(list?.more?.href).toBe("/students?show=away&weeks=8#roster");
  });

  it("what hurts is shown whole: no table is cut to it", () => {
    const many = Array.from({ length: 8 }, (_, at) => student(`p${at}`, `Pia ${at}`));
    const pains = many.map(({ student: { id } }) => ({
      id: `p-${id}`,
      studentId: id,
      day: "2026-08-30",
      place: "back",
    }));
    const hurt = source(many, { pains });
    const [list] = buildBrief(words, hurt, findBrief(words, hurt), NOTHING).lists;
    expect([list?.word, list?.items.length, list?.more]).toEqual(["pain", 8, null]);
  });
});
