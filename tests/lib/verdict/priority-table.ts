import { BUILT_IN } from "@/lib/domain/catalogue";
import type { WorkStop } from "@/lib/verdict/choose-priority";
import type { MadeStanding } from "./made-work";

const PAIN: WorkStop = { kind: "pain", since: "2031-05-02", until: null };
export const PAUSE: WorkStop = { kind: "pause", since: "2031-05-02", until: "2031-05-20" };
/** One row: the letter of the rule, what it says, what is known, and what is in hand then. */
export type PriorityRow = readonly [
  letter: "a" | "b" | "c" | "d" | "e" | "f" | "back" | "coach",
  says: string,
  known: Readonly<Record<string, MadeStanding>>,
  hand: string,
  more?: { readonly stop?: WorkStop; readonly chosen?: string; readonly blocks?: string; readonly next?: string },
];

// The letter is that of the priority rule of TRADE.md §1; `back` is "a slipped one comes back first", `coach` the overruling.
// Common practice, no source. In hand: "fundamental reason"; empty: nothing. `madeWork` says what the words mean.
export const PRIORITY_TABLE: readonly PriorityRow[] = [
  ["a", "pain stops what lies outside", { "trail-v": "outside" }, "", { stop: PAIN }],
  ["a", "a pause of which nobody says why stops it too", { "trail-v": "outside" }, "", { stop: PAUSE }],
  ["a", "pain stops what has slipped", { "foot-line": "slipped" }, "", { stop: PAIN }],
  ["a", "pain stops what the coach chose", { hinge: "outside" }, "", { stop: PAIN, chosen: "hinge" }],
  ["a", "pain stops measuring too", { "lead-v": "unmeasured" }, "", { stop: PAIN }],
  [
    "b",
    "the trail hand's grip before the lead hand's",
    { "trail-v": "outside", "lead-v": "outside" },
    "trail-v outside",
  ],
  ["b", "the lead hand's before the foot line", { "lead-v": "outside", "foot-line": "outside" }, "lead-v outside"],
  ["b", "the foot line before the side tilt", { "foot-line": "outside", "setup-tilt": "outside" }, "foot-line outside"],
  ["b", "the side tilt before posture", { "setup-tilt": "outside", "posture-bend": "outside" }, "setup-tilt outside"],
  [
    "b",
    "posture before ball position",
    { "posture-bend": "outside", "ball-position": "outside" },
    "posture-bend outside",
  ],
  ["b", "ball position before the pivot", { "ball-position": "outside", hinge: "outside" }, "ball-position outside"],
  ["b", "grip before everything at once", allOf("outside"), "trail-v outside", { next: "lead-v" }],
  ["c", "the hinge before club-parallel", { hinge: "outside", "shaft-line": "outside" }, "hinge outside"],
  ["c", "club-parallel before the sway", { "shaft-line": "outside", "hip-sway": "outside" }, "shaft-line outside"],
  ["c", "the sway before the tilt that is kept", { "hip-sway": "outside", "tilt-kept": "outside" }, "hip-sway outside"],
  ["c", "the tilt that is kept, where all before it is inside", { "tilt-kept": "outside" }, "tilt-kept outside"],
  [
    "c",
    "what the order doesn't name is worked on once measured, after what it names",
    { "top-tilt": "outside", "tilt-kept": "outside" },
    "tilt-kept outside",
    { next: "top-tilt" },
  ],
  ["c", "and alone, too", { "head-drift": "outside" }, "head-drift outside"],
  ["d", "the pivot before impact", { "impact-tilt": "outside", "tilt-kept": "outside" }, "tilt-kept outside"],
  [
    "d",
    "a slip at impact waits for what lies outside before it",
    { "impact-tilt": "slipped", hinge: "outside" },
    "hinge outside",
  ],
  [
    "d",
    "impact waits for what is in doubt before it",
    { "impact-tilt": "outside", "hip-sway": "edge" },
    "hip-sway doubt",
    { next: "impact-tilt" },
  ],
  [
    "d",
    "impact waits for what isn't measured before it",
    { "hip-shift": "outside", "lead-v": "unmeasured" },
    "lead-v unmeasured",
  ],
  ["d", "impact is first where all before it is inside", { "impact-tilt": "outside" }, "impact-tilt outside"],
  ["d", "or known to stay unknown", { "impact-tilt": "outside", "lead-v": "unmeasured*" }, "impact-tilt outside"],
  ["d", "impact that nobody measured is asked for by nobody", {}, ""],
  [
    "e",
    "one in hand: the second outside waits",
    { "foot-line": "outside", "hip-sway": "outside" },
    "foot-line outside",
    { next: "hip-sway" },
  ],
  ["f", "what is owned is skipped, even on its edge", { "trail-v": "owned-edge", hinge: "outside" }, "hinge outside"],
  ["f", "what is credibly inside is skipped", { hinge: "outside" }, "hinge outside"],
  [
    "f",
    "in doubt upstream is measured, not coached, and blocks",
    { "trail-v": "edge", hinge: "outside" },
    "hinge outside",
    { blocks: "trail-v" },
  ],
  [
    "f",
    "unmeasured upstream blocks as well, in order",
    { "posture-bend": "edge", "lead-v": "unmeasured", hinge: "outside" },
    "hinge outside",
    { blocks: "lead-v posture-bend" },
  ],
  [
    "f",
    "films that all don't count are no measure",
    { "lead-v": "no-level", hinge: "outside" },
    "hinge outside",
    { blocks: "lead-v" },
  ],
  ["f", "asked for twice it blocks no more", { "lead-v": "unmeasured*", hinge: "outside" }, "hinge outside"],
  ["f", "doubt asked for twice blocks no more", { "trail-v": "edge*", hinge: "outside" }, "hinge outside"],
  [
    "f",
    "doubt downstream blocks nothing",
    { "foot-line": "outside", "hip-sway": "edge" },
    "foot-line outside",
    { next: "hip-sway" },
  ],
  [
    "f",
    "with nothing outside the first doubt is measured",
    { "setup-tilt": "edge", "hip-sway": "edge" },
    "setup-tilt doubt",
    { next: "hip-sway" },
  ],
  [
    "f",
    "and what isn't measured, before a later doubt",
    { "lead-v": "unmeasured", "hip-sway": "edge" },
    "lead-v unmeasured",
  ],
  ["f", "what the order doesn't name is never missed", { "shoulder-line": "unmeasured" }, ""],
  ["f", "all of it asked for twice: nothing in hand", { "lead-v": "unmeasured*", hinge: "edge*" }, ""],
  [
    "f",
    "nothing measured at all: the grip is measured first",
    allOf("unmeasured"),
    "trail-v unmeasured",
    { next: "lead-v" },
  ],
  [
    "f",
    "without a goal nothing can be said, so it is skipped",
    { "trail-v": "no-goal", "foot-line": "outside" },
    "foot-line outside",
  ],
  [
    "f",
    "a proved gain that isn't there yet is outside still",
    { "trail-v": "gained", hinge: "outside" },
    "trail-v outside",
  ],
  ["f", "holding outside is outside", { "lead-v": "holding", "hip-sway": "outside" }, "lead-v outside"],
  [
    "back",
    "a slip comes back before what lies outside upstream",
    { "trail-v": "outside", "hip-sway": "slipped" },
    "hip-sway slipped",
    { next: "trail-v" },
  ],
  [
    "back",
    "the first of two slips",
    { "foot-line": "slipped", "tilt-kept": "slipped" },
    "foot-line slipped",
    { next: "tilt-kept" },
  ],
  ["back", "a slip to the edge comes back too", { hinge: "slipped-edge", "trail-v": "outside" }, "hinge slipped"],
  [
    "back",
    "whatever isn't known upstream blocks no slip",
    { "lead-v": "unmeasured", "foot-line": "slipped" },
    "foot-line slipped",
  ],
  [
    "back",
    "a slip that lies inside again is inside",
    { hinge: "slip-back-inside", "trail-v": "outside" },
    "trail-v outside",
  ],
  [
    "back",
    "a slip proved for its track alone isn't told as one",
    { hinge: "slip-alone", "trail-v": "outside" },
    "trail-v outside",
  ],
  [
    "back",
    "gone through to the other side is no slip",
    { "tilt-kept": "went-through", "trail-v": "outside" },
    "trail-v outside",
  ],
  [
    "coach",
    "what the coach chose, against the order",
    { "foot-line": "outside", hinge: "outside" },
    "hinge chosen",
    { chosen: "hinge", blocks: "", next: "foot-line" },
  ],
  ["coach", "chosen and inside", { "foot-line": "outside" }, "hinge chosen", { chosen: "hinge" }],
  ["coach", "chosen and not measured", { "foot-line": "outside" }, "head-drift chosen", { chosen: "head-drift" }],
  [
    "coach",
    "chosen, and the doubt upstream said",
    { "trail-v": "edge", hinge: "outside" },
    "hinge chosen",
    { chosen: "hinge", blocks: "trail-v" },
  ],
  [
    "coach",
    "what nobody knows any more is no choice",
    { "foot-line": "outside" },
    "foot-line outside",
    { chosen: "own-gone" },
  ],
];

function allOf(word: MadeStanding): Readonly<Record<string, MadeStanding>> {
  return Object.fromEntries(BUILT_IN.map(({ id }) => [id, word]));
}
