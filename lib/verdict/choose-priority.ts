import { isNamedInOrder } from "@/lib/domain/order-of-work";
import { PRIORITY_THRESHOLDS } from "./priority-thresholds";
import { type WorkItem, type WorkStanding, workStanding } from "./work-standing";

/** Why a fundamental is the one in hand; `chosen`: the coach put it there against the order of work, or with it. */
export type WorkReason = "slipped" | "outside" | "doubt" | "unmeasured" | "chosen";

/** What would put something else in hand. */
export type Alteration<Item> =
  /** The next films show it inside its band with all their doubt. */
  | { readonly kind: "comes-inside"; readonly item: Item }
  /** They show that what is in doubt lies outside. */
  | { readonly kind: "turns-out-outside"; readonly items: readonly Item[] }
  /** Something that is kept slips. */
  | { readonly kind: "keep-slips"; readonly items: readonly Item[] }
  /** A coach put it in hand, so that nothing a film shows takes it out: a coach chooses anew, or lets the order of work choose. */
  | { readonly kind: "chosen-anew" }
  | { readonly kind: "pain" };

/** The one fundamental in hand. */
export interface Work<Item> {
  readonly item: Item;
  readonly reason: WorkReason;
  /** Where it stands: what isn’t known is measured, not coached. */
  readonly standing: WorkStanding;
  /** Upstream of it and not known yet: measured first, in the order of work. */
  readonly blocks: readonly Item[];
  /** What would be in hand were it inside its band; null: nothing. */
  readonly next: Item | null;
  readonly alters: readonly Alteration<Item>[];
}

/** Why nothing at all is worked on: pain, which is told only to whoever may know it, or a pause without a reason. */
export interface WorkStop {
  readonly kind: "pain" | "pause";
  readonly since: string;
  /** Last day; null: no end is known. */
  readonly until: string | null;
}

/** What a coach works on with a student. */
export interface Priority<Item> {
  /** Null: nothing stops the work. */
  readonly stop: WorkStop | null;
  /** Null: stopped, or all that is known is inside. */
  readonly inHand: Work<Item> | null;
  /** What the order of work says by itself, whatever the coach chose and also while the work is stopped. */
  readonly rule: Work<Item> | null;
  /** At most two, looked at again in turn. */
  readonly keeps: readonly Item[];
  /** Not known, asked for often enough, and planned without. */
  readonly unknown: readonly Item[];
}

/** What decides beside the fundamentals themselves. */
export interface WorkCircumstances {
  readonly stop: WorkStop | null;
  /** What the coach put in hand; null: the order of work chooses. */
  readonly chosenId: string | null;
}

interface Standing<Item> {
  readonly item: Item;
  readonly standing: WorkStanding;
  /** Not known, and not asked for often enough to be planned without. */
  readonly isMissing: "yes" | "no";
}

/**
 * What is worked on next, by the trade’s order. (a) Pain or a pause stops everything. What has slipped comes back first, else the
 * first that lies outside with all its doubt counted: (b) before the swing, grip before anything, then (c) the pivot. (d) Impact
 * is a result: it comes after all else, what isn’t known included. (e) One thing in hand, at most two to keep. (f) What is owned or
 * inside is skipped; what isn’t known is measured, not coached: asked for twice, then planned without. (g) Contact is no part of
 * this and never ordered. Common practice, no source.
 *
 * @param items every fundamental of the academy with what is known of it with one group of clubs; any order
 * @returns the same objects that were given
 */
export function choosePriority<Item extends WorkItem>(
  items: readonly Item[],
  { stop, chosenId }: WorkCircumstances,
): Priority<Item> {
  const ordered = inOrder(items);
  const rule = workOf(ordered);
  const chosen = ordered.find(({ item }) => item.fundamental.id === chosenId);
  const work = chosen === undefined ? rule : withDetail(ordered, chosen, "chosen");
  const inHand = stop === null ? work : null;
  const keeps = keepsOf(ordered, work?.item ?? null);
  const besides = chosen === undefined ? slips(keeps) : [];
  return {
    stop,
    inHand: inHand === null ? null : { ...inHand, alters: [...inHand.alters, ...besides, { kind: "pain" }] },
    rule,
    keeps,
    unknown: ordered.filter(isUnknown).map(({ item }) => item),
  };
}

function inOrder<Item extends WorkItem>(items: readonly Item[]): readonly Standing<Item>[] {
  return [...items]
    .sort(({ fundamental: a }, { fundamental: b }) => a.order - b.order || (a.id < b.id ? -1 : Number(a.id > b.id)))
    .map((item) => {
      const standing = workStanding(item);
      const asked = item.askedFor >= PRIORITY_THRESHOLDS.askedEnough.value;
      return { item, standing, isMissing: isNotKnown({ item, standing }) && !asked ? "yes" : "no" };
    });
}

/** In doubt, or never measured though the order of work names it. */
function isNotKnown<Item extends WorkItem>({ item, standing }: Pick<Standing<Item>, "item" | "standing">): boolean {
  return standing === "doubt" || (standing === "unmeasured" && isNamedInOrder(item.fundamental));
}

function isUnknown<Item extends WorkItem>(each: Standing<Item>): boolean {
  return each.isMissing === "no" && isNotKnown(each);
}

/** What the order of work puts in hand; null: all that is known is inside. */
function workOf<Item extends WorkItem>(ordered: readonly Standing<Item>[]): Work<Item> | null {
  const { found, reason } = firstOf(ordered);
  return found === undefined ? null : withDetail(ordered, found, reason);
}

function firstOf<Item extends WorkItem>(
  ordered: readonly Standing<Item>[],
): { readonly found: Standing<Item> | undefined; readonly reason: WorkReason } {
  const before = ordered.filter(({ item }) => item.fundamental.phase !== "impact");
  const impact = ordered.filter(({ item }) => item.fundamental.phase === "impact");
  for (const among of [before, impact])
    for (const standing of ["slipped", "outside", "missing"] as const) {
      const found = among.find((each) =>
        standing === "missing" ? each.isMissing === "yes" : each.standing === standing,
      );
      if (found !== undefined) return { found, reason: standing === "missing" ? lackOf(found) : standing };
    }
  return { found: undefined, reason: "outside" };
}

function lackOf<Item>({ standing }: Standing<Item>): WorkReason {
  return standing === "doubt" ? "doubt" : "unmeasured";
}

function withDetail<Item extends WorkItem>(
  ordered: readonly Standing<Item>[],
  { item, standing }: Standing<Item>,
  reason: WorkReason,
): Work<Item> {
  const place = ordered.findIndex((each) => each.item === item);
  const isCoached = standing === "outside";
  // What has slipped was there before: it comes back whatever else isn't known.
  const blocks = isCoached
    ? ordered
        .slice(0, place)
        .filter(({ isMissing }) => isMissing === "yes")
        .map((each) => each.item)
    : [];
  const settled = ordered.filter((each) => each.item !== item);
  const doubtful = [...blocks, ...(standing === "doubt" || standing === "unmeasured" ? [item] : [])];
  return {
    item,
    reason,
    standing,
    blocks,
    next: firstOf(settled).found?.item ?? null,
    alters:
      reason === "chosen"
        ? [{ kind: "chosen-anew" }]
        : [
            { kind: "comes-inside", item },
            ...(doubtful.length === 0 ? [] : [{ kind: "turns-out-outside", items: doubtful } as const]),
          ],
  };
}

function slips<Item>(keeps: readonly Item[]): readonly Alteration<Item>[] {
  return keeps.length === 0 ? [] : [{ kind: "keep-slips", items: keeps }];
}

/** What is owned and off its level first, then what is owned, then what is inside; what was read longest ago before the rest. */
function keepsOf<Item extends WorkItem>(ordered: readonly Standing<Item>[], inHand: Item | null): readonly Item[] {
  const rank = ({ item, standing }: Standing<Item>): number => (item.verdict?.watch ? 0 : standing === "owned" ? 1 : 2);
  return ordered
    .filter(({ item, standing }) => item !== inHand && (standing === "owned" || standing === "inside"))
    .sort((a, b) => rank(a) - rank(b) || compareDays(a.item.lastDay, b.item.lastDay))
    .slice(0, PRIORITY_THRESHOLDS.mostKeeps.value)
    .map(({ item }) => item);
}

function compareDays(a: string | null, b: string | null): number {
  return (a ?? "") < (b ?? "") ? -1 : Number((a ?? "") > (b ?? ""));
}
