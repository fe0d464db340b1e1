import { describe, expect, it } from "vitest";
import { buildFamilyStory, storyReader } from "@/lib/report/family-story";
import type { StorySource } from "@/lib/report/family-story-source";
import { wordsFor } from "@/lib/words/catalogue";
import {
  EVENTS,
  feet,
  fundamentalOf,
  grip,
  hips,
  PRACTICES,
  saidOf,
  storySource,
  storyTrack,
  TASK,
  verdict,
} from "./story-cases";

const words = wordsFor("en");
const story = (over: Partial<StorySource>) => buildFamilyStory(words, storySource(over));
const drill = (fundamentalId: string, start: string, end: string | null = null) => ({ fundamentalId, start, end });
const video = (day: string, use: "used" | "apart" = "used") => ({ day, use });

describe("a change that a family is told", () => {
  it("for the better leads the page with the name, and is told to the student", () => {
    const { heading, changed } = story({
      tracks: [grip("better, listed")],
      student: { alias: "Ari", hand: "right", birthYear: 2014 },
    });
    expect(heading).toBe("Ari’s right-hand grip is better than in June");
    expect(changed).toEqual(["Your right-hand grip is better than in June, and it has stayed better."]);
  });

  it("for the worse is told by its direction and the student's hand, kindly", () => {
    const left = { alias: "Dot", hand: "left", birthYear: 2012 } as const;
    expect(story({ tracks: [feet("worse up, listed")] }).changed).toEqual([
      "Your feet have started to point right. That happens. We work on it.",
    ]);
    expect(story({ tracks: [feet("worse up, listed")], student: left }).changed[0]).toContain("point left.");
    expect(story({ tracks: [feet("worse down, listed")] }).changed[0]).toContain("point left.");
    expect(story({ tracks: [feet("worse, further out")] }).changed[0]).toBe(
      "Your feet point more to the right than in June. That happens. We work on it.",
    );
    expect(story({ tracks: [hips("worse up, listed")], student: left }).heading).toBe(
      "Dot’s hips have started to move more to the left as the club goes back",
    );
  });

  it("that takes an old gain back says again, and what helped only where a drill of then is on file", () => {
    const again = (drills: StorySource["drills"]) => story({ tracks: [feet("worse again, listed")], drills });
    expect(again([]).heading).toBe("Dot’s feet have started to point right again");
    expect(again([drill("foot-line", "2026-03-20", "2026-05-01")]).changed).toEqual([
      "Your feet have started to point right again. That happens. We know what helped in April.",
    ]);
    for (const none of [
      drill("hinge", "2026-03-20", "2026-05-01"),
      drill("foot-line", "2026-04-25"),
      drill("foot-line", "2026-01-05", "2026-03-01"),
    ])
      expect(again([none]).changed[0]).toBe(
        "Your feet have started to point right again. That happens. We work on it.",
      );
  });

  it("near growth, new clubs or a pause is told as what can be, and an injury as a pause", () => {
    const why = (events: StorySource["events"]) => story({ tracks: [feet("worse up, listed")], events }).changed[0];
    expect(why(EVENTS.growth ?? [])).toContain("That can happen while you grow.");
    expect(why(EVENTS["new clubs"] ?? [])).toContain("That can happen with new clubs.");
    expect(why(EVENTS.injury ?? [])).toContain("That can happen after a pause.");
  });

  it("that is old is told with the months in which it began", () => {
    expect(story({ tracks: [feet("worse, long ago")] }).changed[0]).toBe(
      "Your feet have started to point right. That happens. We work on it. It began between November 2025 and May.",
    );
  });

  it("that is not on the list, or doubtful since, is none: it is being checked", () => {
    for (const name of ["better, alone", "better, doubtful since"]) {
      const shown = story({ tracks: [grip(name)], videos: [video("2026-09-05")] });
      expect(shown.heading).toBe("Dot: nothing new that we can be sure of");
      expect(shown.changed).toEqual(["So far nothing has changed that we can be sure of."]);
      expect(shown.unsure).toBe("Your right-hand grip looks better; we are checking.");
      expect(shown.numbers).toEqual([]);
    }
    expect(story({ tracks: [grip("worse, alone")] }).unsure).toBe(
      "Your right-hand grip looks different; we are checking.",
    );
  });

  it("that later videos don't bear out is taken back first, with the day on which it was said", () => {
    const shown = story({ tracks: [feet("open, taken back")], openings: ["2026-06-10", "2026-09-10"] });
    expect(shown.heading).toBe("We take back what we said about the way Dot’s feet point");
    expect(shown.changed).toEqual([
      "On 10 June we said that the way your feet point was better. The videos since then don’t show it, so we take that back.",
    ]);
  });

  it("the latest comes first, and what is beyond three is told below", () => {
    const dated = (id: string, provedOn: string) =>
      storyTrack(
        fundamentalOf(id),
        verdict({ verdict: "gain", listed: true, change: { ...saidOf("better, listed").change, provedOn } }),
      );
    const tracks = [
      dated("trail-v", "2026-08-01"),
      dated("lead-v", "2026-08-03"),
      dated("foot-line", "2026-08-02"),
      dated("hinge", "2026-07-30"),
    ];
    const shown = story({ tracks });
    expect(shown.heading).toBe("Dot’s left-hand grip is better than in June");
    expect(shown.changed.map((text) => text.split(" is ")[0])).toEqual([
      "Your left-hand grip",
      "The way your feet point",
      "Your right-hand grip",
    ]);
    expect(shown.rest).toEqual(["The bend of your wrists is better than in June, and it has stayed better."]);
  });

  it("after six weeks without a video is told as of the last one, and what was held is to be looked at again", () => {
    const camera = "none lately";
    expect(story({ tracks: [grip("better, listed", { camera })] }).changed.at(-1)).toBe(
      "All this is from the video on 20 July. We have seen none since.",
    );
    const shown = story({ tracks: [grip("steady and owned", { camera })] });
    expect(shown.unsure).toBe("Your right-hand grip was good on 20 July. The next video will show if it still is.");
    expect(JSON.stringify(shown)).not.toContain("still good");
  });
});

describe("ten weeks without a change", () => {
  const plateau = (kind: "flat" | "unpractised", over = {}) =>
    ({ kind, weeks: 11, below: 2.4, practised: 31, asked: 35, drills: 1, ...over }) as const;
  const drills = [drill("hip-sway", "2026-05-01")];

  it("held inside is good news, with its weeks", () => {
    const shown = story({ tracks: [hips("steady, not owned", { plateau: { kind: "held", weeks: 16 } })] });
    expect(shown.good).toBe("The way your hips move as the club goes back is still good: 16 weeks now.");
  });

  it("flat though practised: the drill was not the right one, and the size stands behind the numbers", () => {
    const shown = story({
      tracks: [hips("steady, not owned", { plateau: plateau("flat"), position: "outside" })],
      drills,
    });
    expect(shown.changed).toEqual([
      "You did your part: you practised on 31 of 35 days. The way your hips move as the club goes back has not changed enough. So the drill was not the right one, and we change it.",
    ]);
    expect(shown.heading).toBe(
      "The way Dot’s hips move as the club goes back has not changed enough, so we change the drill",
    );
    expect(shown.numbers).toEqual([
      "The way your hips move as the club goes back: any change is smaller than 3 % of how wide you stand.",
    ]);
    expect(JSON.stringify(shown.changed)).not.toContain("%");
  });

  it("flat, with a new drill since: it is not promised again", () => {
    const task = { ...TASK, fundamentalId: "hip-sway", start: "2026-09-01", week: null };
    const given = [drill("hip-sway", "2026-05-01", "2026-08-31"), drill("hip-sway", "2026-09-01")];
    const track = hips("steady, not owned", { plateau: plateau("flat", { drills: 2 }) });
    expect(story({ tracks: [track], drills: given, task }).changed[0]).toContain(
      "on 31 of 35 days, each drill counted by itself. The way",
    );
    expect(story({ tracks: [track], drills: given, task }).changed[0]).toContain("and you have a new one now.");
  });

  it("flat, hardly practised: no blame; and no drill is spoken of where none ran", () => {
    const few = { practised: 6 };
    const track = hips("steady, not owned", { plateau: plateau("unpractised", few), position: "outside" });
    expect(story({ tracks: [track], drills }).changed).toEqual([
      "So far nothing has changed that we can be sure of.",
      "The way your hips move as the club goes back has not changed enough so far. 6 of 35 days of practice are written down, so the drill has not had its chance yet. That’s fine: ask for one that fits your week.",
    ]);
    expect(story({ tracks: [track], drills: [] }).changed[1]).toBe(
      "The way your hips move as the club goes back is still the same. We checked it on six videos. It is not yet where we want it.",
    );
  });

  it("can't be told because of the videos: that is said, with what would tell it", () => {
    expect(story({ tracks: [hips("open, nothing seen", { plateau: { kind: "films", weeks: 12 } })] }).unsure).toBe(
      "We still can’t tell about the way your hips move as the club goes back. That is because of the videos, not because of you. Six more videos on different days will probably show if it has stayed the same.",
    );
  });
});

describe("the one task", () => {
  it("has the drill, the dose and the day of the next video; or the stop in its place", () => {
    const task = { ...TASK, week: null };
    expect(story({ task }).task).toBe(
      "Your one task until the next video: Feet on the rails. 20 slow ones, 10 min, 5 days a week. The next video is on Tue 22 Sep.",
    );
    expect(story({ task: { ...task, dose: "", drill: "Rails.", remeasureOn: "2026-09-12" } }).task).toBe(
      "Your one task until the next video: Rails.",
    );
    for (const dose of ["  ", "...", "__proto__", "{dose}", "none", "ten balls!"])
      expect(story({ task: { ...task, dose, remeasureOn: null } }).task).toMatch(
        /^Your one task until the next video: Feet on the rails\.( (__proto__|\{dose\}|None|Ten balls)\.)?$/,
      );
    expect(story({}).task).toBe("You have no task just now. Your coach will give you one.");
    const grown = { alias: "Abe", hand: "right", birthYear: 1980 } as const;
    expect(story({ ...PRACTICES.hurts }).task).toBe("Stop: no practice now. Tell a grown-up today.");
    expect(story({ ...PRACTICES.hurts, student: grown }).task).toBe("Stop: no practice now. Tell your coach today.");
    expect(story({ task, events: EVENTS.injury }).task).toBe("No practice now: it is on hold. Your coach knows.");
    expect(story({ task, events: EVENTS.injury }).heading).toBe("Dot: no practice for now");
  });
});

describe("readers", () => {
  it("under nine are told two things at most, and nothing of a slip", () => {
    const young = { alias: "Dot", hand: "right", birthYear: 2019 } as const;
    const tracks = [
      feet("worse again, listed"),
      grip("better, listed"),
      hips("steady and owned"),
      storyTrack(fundamentalOf("hinge"), saidOf("open, one more video")),
    ];
    const shown = story({ tracks, student: young, videos: [video("2026-09-05")] });
    expect(shown.heading).toBe("Dot’s right-hand grip is better than before");
    expect(shown.good).toBe("The way your hips move as the club goes back is still good.");
    expect(shown.changed).toEqual(["Your right-hand grip is better than before, and it has stayed better."]);
    expect([shown.unsure, shown.numbers]).toEqual(["", []]);
    expect(JSON.stringify(shown)).not.toMatch(/feet|wrists|\d/);
    expect(story({ tracks: [feet("worse up, listed")], student: young, videos: [video("2026-09-05")] })).toMatchObject({
      ...{ heading: "How it goes for Dot", changed: [], unsure: "" },
    });
  });

  it("are young until nine is surely reached, grown from eighteen, and children where nobody knows", () => {
    const reader = (birthYear: number | null) => storyReader({ alias: "", hand: "right", birthYear }, "2026-09-12");
    expect([2017, 2016, 2008, 2007, null].map(reader)).toEqual(["young", "child", "child", "adult", "child"]);
  });
});
