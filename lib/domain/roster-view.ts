import { AGE_GROUPS, type AgeGroup } from "./age-group";
import { COUNTED_AS, type CountedAs } from "./counted-as";
import { HANDS, type Hand } from "./handedness";

/** What a page says of a track: the four verdicts, and a proved move that is neither better nor worse. */
export const SAID_WORDS = ["gain", "slip", "moved", "steady", "open"] as const;

/** Where a level lies against its band; where work begins first. */
export const PLACES = ["outside", "edge", "inside"] as const;

/** Ways to put the roster in order. */
export const ROSTER_SORTS = ["work", "name", "last", "stale", "proved", "open"] as const;

/** A way to put the roster in order. */
export type RosterSort = (typeof ROSTER_SORTS)[number];

/** The lists of the brief, each of which the table can be cut to. */
export const ROSTER_LISTS = ["proved", "watch", "ready", "blocked", "away", "stalled", "due"] as const;

/** A list of the brief. */
export type RosterListName = (typeof ROSTER_LISTS)[number];

/**
 * Days without a film by which the roster can be cut. Days; two, four and six weeks (the last is where a level stops being
 * called current) and a term. Own choice near a coach's round.
 */
export const STALE_DAYS = [14, 28, 42, 84] as const;

/** A search of more letters than this is cut: no alias is longer. Letters. */
export const LONGEST_SEARCH = 80;

/** In nobody's charge. */
export const NOBODY = "nobody";

/** A proved change that stood on the list, by the month in which the films after it begin: `gain-2031-04`. */
const PROVED_IN = /^(?:gain|slip)-\d{4}-(?:0[1-9]|1[0-2])$/;

/** What of the roster is shown, and in which order. A null field asks for nothing. */
export interface RosterView {
  readonly sort: RosterSort;
  /** Decides between those whom `sort` puts level. */
  readonly second: RosterSort | null;
  readonly verdict: (typeof SAID_WORDS)[number] | null;
  readonly place: (typeof PLACES)[number] | null;
  /** Id of the fundamental that verdict and place are asked of. */
  readonly fundamental: string | null;
  /** Id of the coach in charge, or `nobody`. */
  readonly coach: string | null;
  /** Id of the club group that the rows show. */
  readonly club: string | null;
  /** At least so many days since the last film, or none ever. */
  readonly stale: number | null;
  /** Of which age. */
  readonly age: AgeGroup | null;
  readonly hand: Hand | null;
  /** With a change of a kind since a month, as `provedIn` names it. */
  readonly since: string | null;
  /** Counted for something on the academy's page. */
  readonly counted: CountedAs | null;
  readonly show: RosterListName | null;
  /** Of who wasn't seen lately: weeks without a film, as the brief offers them; null: the brief's own. */
  readonly weeks: string | null;
  /** Part of an alias; empty: no search. */
  readonly q: string;
  /** Whether whoever has left is shown too. */
  readonly who: "here" | "all";
}

/** The fields by which a view leaves students out. */
export const ROSTER_FILTERS = [
  ...(["q", "show", "verdict", "place", "fundamental", "coach", "club", "stale"] as const),
  ...(["age", "hand", "since", "counted"] as const),
] as const;

/** A field by which a view leaves students out. */
export type RosterFilter = (typeof ROSTER_FILTERS)[number];

/** Everybody who is here, in the order of need. */
export const WHOLE_ROSTER: RosterView = {
  sort: "work",
  second: null,
  verdict: null,
  place: null,
  fundamental: null,
  coach: null,
  club: null,
  stale: null,
  age: null,
  hand: null,
  since: null,
  counted: null,
  show: null,
  weeks: null,
  q: "",
  who: "here",
};

/** What an address says of a view; each may be there several times. */
export type RosterWords = Readonly<Record<string, string | readonly string[] | undefined>>;

/** An id as the house makes them: anything else names nothing that is on file. */
const ID = /^[\p{L}\p{N}_-]{1,80}$/u;

function first(words: RosterWords, name: string): string | undefined {
  const value = words[name];
  return typeof value === "string" ? value : value?.[0];
}

/**
 * The view that an address asks for. Whatever it doesn't understand asks for nothing: an old bookmark still opens.
 *
 * @returns null where the address says nothing of a view, so that a kept one may hold
 */
export function parseRosterView(words: RosterWords): RosterView | null {
  const fields = [...ROSTER_FILTERS, "sort", "second", "who"];
  if (!fields.some((name) => first(words, name) !== undefined)) return null;
  const among = <T extends string>(name: string, of: readonly T[]): T | null =>
    of.find((each) => each === first(words, name)) ?? null;
  const id = (name: string): string | null => {
    const value = first(words, name) ?? "";
    return ID.test(value) ? value : null;
  };
  const sort = among("sort", ROSTER_SORTS) ?? "work";
  const second = among("second", ROSTER_SORTS);
  return {
    sort,
    second: second === sort ? null : second,
    verdict: among("verdict", SAID_WORDS),
    place: among("place", PLACES),
    fundamental: id("fundamental"),
    coach: id("coach"),
    club: id("club"),
    stale: STALE_DAYS.find((days) => String(days) === first(words, "stale")) ?? null,
    age: among("age", AGE_GROUPS),
    hand: among("hand", HANDS),
    since: PROVED_IN.exec(first(words, "since") ?? "")?.[0] ?? null,
    counted: among("counted", COUNTED_AS),
    show: among("show", ROSTER_LISTS),
    weeks: among("show", ROSTER_LISTS) === "away" ? (/^\d{1,2}$/.exec(first(words, "weeks") ?? "")?.[0] ?? null) : null,
    q: [...(first(words, "q") ?? "").normalize("NFC").trim()].slice(0, LONGEST_SEARCH).join(""),
    who: among("who", ["all"]) ?? "here",
  };
}

/** The view as an address says it: what asks for nothing is left out, the order always stands. */
export function rosterQuery(view: RosterView, page?: number): string {
  const query = new URLSearchParams();
  for (const name of ROSTER_FILTERS) {
    const value = view[name];
    if (value !== null && value !== "") query.set(name, String(value));
  }
  if (view.show === "away" && view.weeks !== null) query.set("weeks", view.weeks);
  query.set("sort", view.sort);
  if (view.second !== null) query.set("second", view.second);
  if (view.who === "all") query.set("who", "all");
  if (page !== undefined && page > 1) query.set("page", String(page));
  return query.toString();
}

/** The filters that a view leaves students out by, in the order of the form. */
export function filtersOf(view: RosterView): readonly RosterFilter[] {
  return ROSTER_FILTERS.filter((name) => view[name] !== null && view[name] !== "");
}

/** The view without one of its filters. */
export function withoutFilter(view: RosterView, name: RosterFilter): RosterView {
  return { ...view, [name]: WHOLE_ROSTER[name] };
}
