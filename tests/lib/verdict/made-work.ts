import { BUILT_IN } from "@/lib/domain/catalogue";
import type { Fundamental } from "@/lib/domain/fundamental";
import { NAMED_IN_ORDER } from "@/lib/domain/order-of-work";
import type { Interval } from "@/lib/domain/track-verdict";
import type { WorkItem, WorkVerdict } from "@/lib/verdict/work-standing";

/** An item with its whole fundamental, so that a test can say what was chosen. */
export type MadeItem = WorkItem & { readonly fundamental: Fundamental };

/** A level with half of its 95 of 100. */
export function levelOf(estimate: number, half = 1): Interval {
  const part = half * 0.654;
  return {
    estimate,
    low95: estimate - half,
    high95: estimate + half,
    low80: estimate - part,
    high80: estimate + part,
  };
}

const PLAIN: WorkVerdict = {
  verdict: "open",
  listed: false,
  moved: null,
  position: "inside",
  levelNow: levelOf(0),
  ownedSince: null,
  watch: null,
};

/** What may be said of one fundamental, in a word. */
export const MADE = {
  inside: PLAIN,
  outside: { ...PLAIN, position: "outside" },
  edge: { ...PLAIN, position: "edge" },
  owned: { ...PLAIN, ownedSince: "2031-03-01" },
  "owned-edge": { ...PLAIN, ownedSince: "2031-03-01", position: "edge" },
  slipped: { ...PLAIN, verdict: "slip", listed: true, position: "outside" },
  "slipped-edge": { ...PLAIN, verdict: "slip", listed: true, position: "edge" },
  "slip-back-inside": { ...PLAIN, verdict: "slip", listed: true, position: "inside" },
  "slip-alone": { ...PLAIN, verdict: "slip", listed: false, position: "outside" },
  "went-through": { ...PLAIN, verdict: "slip", listed: true, moved: "through", position: "outside" },
  gained: { ...PLAIN, verdict: "gain", listed: true, position: "outside" },
  holding: { ...PLAIN, verdict: "steady", position: "outside" },
  "no-goal": { ...PLAIN, position: null },
  "no-level": { ...PLAIN, position: null, levelNow: null },
  unmeasured: null,
} as const satisfies Record<string, WorkVerdict | null>;

/** One of those words; `edge*` and `unmeasured*` were asked for twice already. */
export type MadeStanding = keyof typeof MADE | "edge*" | "unmeasured*";

/**
 * Every fundamental of the catalogue: those that the order of work names are inside, the others unmeasured, unless the words say
 * otherwise.
 */
export function madeWork(words: Readonly<Record<string, MadeStanding>>): readonly MadeItem[] {
  const isNamed = (id: string): boolean => NAMED_IN_ORDER.some((each) => each === id);
  return BUILT_IN.map((fundamental) => {
    const word = words[fundamental.id] ?? (isNamed(fundamental.id) ? "inside" : "unmeasured");
    const verdict = MADE[word.replace("*", "") as keyof typeof MADE];
    return {
      fundamental,
      verdict,
      askedFor: word.endsWith("*") ? 2 : 0,
      lastDay: verdict === null ? null : "2031-05-01",
    };
  });
}
