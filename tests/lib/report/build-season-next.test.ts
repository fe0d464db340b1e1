import { describe, expect, it } from "vitest";
import { NAMED_IN_ORDER } from "@/lib/domain/order-of-work";
import type { PriorityChoice } from "@/lib/domain/priority-choice";
import { buildSeasonNext, seasonWork } from "@/lib/report/build-season-next";
import type { SeasonSource } from "@/lib/report/season-source";
import type { WorkStop } from "@/lib/verdict/choose-priority";
import { wordsFor } from "@/lib/words/catalogue";
import { levelOf } from "../verdict/made-work";
import { madeSeason, madeSeasonTrack, plain } from "./made-season";

const words = wordsFor("en");
const FILMS = ["2031-04-20", "2031-05-01"];

/** All that the order of work names is inside, but for what is said otherwise; null: not measured. */
function season(
  over: Readonly<Record<string, Parameters<typeof madeSeasonTrack>[1] | null>>,
  more: Partial<SeasonSource> = {},
): SeasonSource {
  const ids = [...new Set([...NAMED_IN_ORDER, ...Object.keys(over)])];
  return madeSeason(
    ids.flatMap((id) => (over[id] === null ? [] : [madeSeasonTrack(id, over[id] ?? {}, FILMS)])),
    more,
  );
}

function next(source: SeasonSource) {
  const built = buildSeasonNext(words, source, seasonWork(source));
  return {
    ...built,
    notes: built.notes.map(plain),
    beside: built.beside.map(plain),
    alters: built.alters?.items.map(plain) ?? [],
  };
}

const OUTSIDE = { position: "outside", levelNow: levelOf(9, 2) } as const;

describe("the one next thing", () => {
  it("the first outside: where it is, a drill to give, and what the next films would have to show", () => {
    const { heading, facts, action, drillFor, alters } = next(
      season({ "foot-line": OUTSIDE, "hip-sway": { position: "outside" } }),
    );
    expect(heading).toBe("Foot line is the first outside its band");
    expect(facts.map(({ name, value, note }) => plain(`${name}: ${value} (${note})`))).toEqual([
      "Level now: 9.0 ± 2.0° ()",
      "Goal band: outside, above by 3.0 to 7.0° (−3 to 4°)",
    ]);
    expect([action, drillFor]).toEqual([null, "foot-line"]);
    expect(alters).toEqual([
      "The next films show Foot line inside −3 to 4° with all their doubt: then Hip sway, top is next.",
      "Something that is kept slips (Trail-hand V and Lead-hand V): what has slipped comes back first.",
      "Pain, or a pause: everything stops.",
    ]);
  });

  it("what isn't known before it is measured first, and said as what would alter it", () => {
    const { heading, notes, action, drillFor, alters } = next(
      season({ "lead-v": null, "trail-v": { position: "edge" }, "foot-line": OUTSIDE }),
    );
    expect(heading).toBe("Foot line is the first outside; measure Trail-hand V and Lead-hand V before it is coached");
    // A film is pressed first; its drill stays one press away.
    expect([action?.href, drillFor]).toEqual(["/students/s1/sessions/new", "foot-line"]);
    expect(notes[0]).toContain("Trail-hand V, Lead-hand V: not known yet and earlier in the order.");
    expect(alters[1]).toBe(
      "What isn’t known turns out to lie outside (Trail-hand V and Lead-hand V): that comes first.",
    );
  });

  it("with nothing outside what isn't known is in hand, to be filmed and not coached", () => {
    const unmeasured = next(season({ "lead-v": null }));
    expect(unmeasured.drillFor).toBeNull();
    expect([unmeasured.heading, unmeasured.facts, unmeasured.action?.href]).toEqual([
      "Lead-hand V: measure it first",
      [],
      "/students/s1/sessions/new",
    ]);
    expect(next(season({ hinge: { position: "edge" } })).heading).toBe("Wrist hinge: measure it better first");
  });

  it("asked for twice it stays unknown, is named so, and nothing is in hand", () => {
    const { heading, beside, action } = next(
      season({ "lead-v": null }, { work: { stop: null, chosenId: null, asked: new Map([["lead-v", 2]]) } }),
    );
    expect([heading, action]).toEqual(["Nothing is in hand: all that is known is inside", null]);
    expect(beside.at(-1)).toBe(
      "Unknown: Lead-hand V. Asked for twice without a film, so the order of work goes on without.",
    );
  });

  it("a coach's choice: who, when, why, and what the order of work would have said", () => {
    const choice: PriorityChoice = {
      ...{ id: 1, studentId: "s1", clubGroup: "iron", fundamentalId: "hinge", reason: "He can feel it." },
      ...{ day: "2031-05-02", who: "Wren" },
    };
    const chosen = { choice, work: { stop: null, chosenId: "hinge", asked: new Map() } };
    const { heading, notes, links, alters } = next(
      season({ "foot-line": OUTSIDE, hinge: { position: "outside" } }, chosen),
    );
    expect(heading).toBe("Wrist hinge: chosen by Wren");
    expect(alters).toEqual([
      "A coach chooses anew, or lets the order of work choose: until then it stays in hand, whatever the films show.",
      "Pain, or a pause: everything stops.",
    ]);
    expect(notes.slice(0, 2)).toEqual([
      "Put in hand by Wren on 2 May 2031: “He can feel it.”",
      "The order of work would say Foot line: the first outside its band.",
    ]);
    expect(links[0]).toEqual({
      href: "/students/s1/priority?club=iron",
      label: "Choose anew, or let the order of work choose",
    });
    expect(next(season({ hinge: { position: "outside" } }, chosen)).notes[1]).toBe("The order of work says the same.");
    expect(next(season({}, chosen)).text).toContain("It lies inside its band now");
  });

  it.each([
    ["pain", null, "Stopped for pain since 8 May: no drill and no full swings"],
    ["pause", "2031-05-20", "Paused since 8 May, until 20 May: no drill and no full swings"],
  ] as const)("a stop for %s is all that is said; no drill is offered", (kind, until, heading) => {
    const stop: WorkStop = { kind, since: "2031-05-08", until };
    const made = next(season({ "foot-line": OUTSIDE }, { work: { stop, chosenId: null, asked: new Map() } }));
    expect([made.heading, made.action]).toEqual([heading, null]);
    expect(made.notes).toEqual([
      "Afterwards the order of work begins with Foot line; look at it anew on a film first.",
    ]);
    if (kind === "pause") expect(JSON.stringify(made)).not.toMatch(/pain/i);
  });

  it("a drill that runs is told by the part beneath, the last one here; a drill for something else is none of it", () => {
    const drill = {
      id: "d",
      drill: "Rails",
      fundamentalId: "foot-line",
      start: "2031-04-02",
      end: null,
      dose: "20 a day",
    };
    const drillsOf = (over: Partial<typeof drill> | { end: string }) =>
      next(season({ "foot-line": OUTSIDE }, { drills: [{ ...drill, ...over }] }))
        .facts.slice(2)
        .map(({ name, value, note }) => `${name}: ${value} ${note}`);
    expect(drillsOf({})).toEqual([]);
    expect(drillsOf({ end: "2031-04-20" })).toEqual(["Last drill for it: Rails 2–20 Apr"]);
    expect(drillsOf({ fundamentalId: "hinge" })).toEqual([]);
  });

  it("after six weeks without a film it asks for one first; before the second film no drill is given", () => {
    expect(next(season({ "foot-line": OUTSIDE }, { today: "2031-07-01" })).notes[0]).toBe(
      "No film since 1 May: film first, and take what stands here as of that day.",
    );
    const one = madeSeason([madeSeasonTrack("foot-line", OUTSIDE)]);
    expect([next(one).action, next(one).notes[0]]).toEqual([null, "The first drill waits for a film of a second day."]);
  });

  it("a reverse pivot shown with all its doubt is a caution in the trade's words, and no diagnosis", () => {
    const pattern = {
      "hip-sway": { levelNow: levelOf(14, 2), position: "outside" },
      "tilt-kept": { levelNow: levelOf(-8, 2), position: "outside" },
    } as const;
    expect(next(season(pattern)).cautions[0]).toMatch(
      /a pattern many coaches avoid; if there is any back discomfort, stop and ask a clinician\. This is no diagnosis/,
    );
    expect(next(season({ ...pattern, "tilt-kept": { levelNow: levelOf(-6, 2) } })).cautions).toEqual([]);
  });
});
