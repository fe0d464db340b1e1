import { ROSTER_SORTS, type RosterSort } from "@/lib/domain/roster-view";
import type { Words } from "@/lib/words/catalogue";
import type { Link } from "./basic-model";
import type { RosterHead, RosterPage } from "./roster-model";

/** The ways to put the roster in order, each as a link that keeps what else is asked for; in the order of `ROSTER_SORTS`. */
type SortLinks = readonly (Link & { readonly current: "yes" | "no" })[];

/** The orders of a column, the one that a first press gives in front, and which way each runs down the column. */
const ORDERS = {
  student: [["name", "ascending"]],
  inHand: [["work", "other"]],
  last: [
    ["last", "descending"],
    ["stale", "ascending"],
  ],
} as const satisfies Record<keyof RosterPage["evidence"]["heads"], readonly (readonly [RosterSort, string])[]>;

/**
 * The heads of the columns that have an order: each is a link that puts the rows in it, keeping every filter; of a column whose
 * order is the current one, a link to its other order where there is one. What has no order of its own has no such head.
 *
 * @param links one for each of `ROSTER_SORTS`, in that order
 * @throws Error where an order has no link
 */
export function rosterHeads(words: Words, links: SortLinks): RosterPage["evidence"]["heads"] {
  const linkOf = (sort: RosterSort) => {
    const link = links[ROSTER_SORTS.indexOf(sort)];
    if (link === undefined) throw new Error(`no link for the order ${sort}`);
    return link;
  };
  const head = (column: keyof typeof ORDERS, label: string): RosterHead => {
    const orders: readonly (readonly [RosterSort, NonNullable<RosterHead["sorted"]>])[] = ORDERS[column];
    const at = orders.findIndex(([sort]) => linkOf(sort).current === "yes");
    const pressed = orders[at === -1 ? 0 : (at + 1) % orders.length]?.[0] ?? "work";
    const { href, label: order } = linkOf(pressed);
    return {
      ...{ label: words.say(label), href },
      sorted: orders[at]?.[1] ?? null,
      explains: words.say("roster.head.sort", { order }),
    };
  };
  return {
    student: head("student", "roster.student"),
    inHand: head("inHand", "roster.in-hand"),
    last: head("last", "roster.last"),
  };
}
