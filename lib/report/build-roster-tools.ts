import { AGE_GROUPS } from "@/lib/domain/age-group";
import { HANDS } from "@/lib/domain/handedness";
import {
  filtersOf,
  NOBODY,
  PLACES,
  ROSTER_LISTS,
  ROSTER_SORTS,
  type RosterFilter,
  type RosterView,
  rosterQuery,
  SAID_WORDS,
  STALE_DAYS,
  WHOLE_ROSTER,
  withoutFilter,
} from "@/lib/domain/roster-view";
import type { Words } from "@/lib/words/catalogue";
import { sayDay } from "@/lib/words/day-words";
import type { FilteredRoster } from "./filter-roster";
import type { FieldModel } from "./form-model";
import type { RosterTools } from "./roster-tools-model";

/** What may be chosen from, by id and name. */
type Named = readonly { readonly value: string; readonly label: string }[];

/** What the tools of a roster rest on. */
export interface ToolsSource {
  readonly view: RosterView;
  /** Under which the viewer keeps a view, as an address says it; null: none. */
  readonly kept: string | null;
  /** Whether this roster opened in the kept view because nothing else was asked for. */
  readonly openedKept: "yes" | "no";
  readonly left: FilteredRoster;
  readonly total: number;
  readonly fundamentals: Named;
  /** Coaches who have one of these students in charge; empty where there is no choice. */
  readonly coaches: Named;
  readonly clubs: Named;
}

const here = (view: RosterView): string => `/students?${rosterQuery(view)}#roster`;

/** The choices of a filter in words, without the one that asks for nothing. */
function choicesOf(words: Words, source: ToolsSource, filter: Exclude<RosterFilter, "q">): Named {
  const said = (values: readonly (string | number)[], of: string): Named =>
    values.map((value) => ({ value: String(value), label: words.say(`${of}.${value}`) }));
  switch (filter) {
    case "show":
      return said(ROSTER_LISTS, "roster.list");
    case "verdict":
      return said(SAID_WORDS, "verdict");
    case "place":
      return said(PLACES, "position");
    case "stale":
      return STALE_DAYS.map((days) => ({ value: String(days), label: words.say("roster.stale", { days }) }));
    case "age":
      return said(AGE_GROUPS, "age-group");
    case "hand":
      return said(HANDS, "roster.hand");
    case "since":
      return source.view.since === null
        ? []
        : [{ value: source.view.since, label: sayProvedIn(words, source.view.since) }];
    case "counted":
      return source.view.counted === null ? [] : said([source.view.counted], "roster.counted");
    case "fundamental":
      return source.fundamentals;
    case "coach":
      return source.coaches.length < 2
        ? []
        : [...source.coaches, { value: NOBODY, label: words.say("roster.coach.nobody") }];
    default:
      return source.clubs.length < 2 ? [] : source.clubs;
  }
}

/** A gain or slip and the month since which it holds: “Real gain since May 2031”. */
function sayProvedIn(words: Words, since: string): string {
  const [verdict = "", ...month] = since.split("-");
  return words.say("roster.proved-since", {
    verdict: words.say(`verdict.${verdict}`),
    month: sayDay(words, `${month.join("-")}-01`, "month-year"),
  });
}

function sayFilter(words: Words, source: ToolsSource, filter: RosterFilter): string {
  const value = String(source.view[filter] ?? "");
  if (filter === "q") return words.say("roster.filter.said.q", { value });
  const chosen = choicesOf(words, source, filter).find((each) => each.value === value);
  return words.say("roster.filter.said", {
    name: words.say(`roster.filter.${filter}`),
    value: chosen?.label ?? words.say("roster.filter.unknown"),
  });
}

function select(words: Words, name: string, value: string, choices: Named): FieldModel {
  return {
    name,
    label: words.say(`roster.filter.${name}`),
    hint: "",
    kind: "select",
    value,
    options: [{ value: "", label: words.say(`roster.any.${name === "second" ? "second" : "filter"}`) }, ...choices],
    required: "no",
    error: "",
  };
}

function fieldsOf(words: Words, source: ToolsSource): readonly FieldModel[] {
  const { view } = source;
  const names = [
    "place",
    "verdict",
    "fundamental",
    "show",
    "coach",
    "club",
    "stale",
    "age",
    "hand",
    "since",
    "counted",
  ] as const;
  const sorts = ROSTER_SORTS.map((value) => ({ value, label: words.say(`roster.sort.${value}`) }));
  return [
    ...names.flatMap((name) => {
      const choices = choicesOf(words, source, name);
      const value = String(view[name] ?? "");
      return choices.length === 0 && value === "" ? [] : [select(words, name, value, choices)];
    }),
    { ...select(words, "sort", view.sort, []), options: sorts },
    select(words, "second", view.second ?? "", sorts),
  ];
}

function nobodyLeft(words: Words, source: ToolsSource): RosterTools["none"] {
  const { view, left, total } = source;
  if (left.entries.length > 0 || total === 0) return null;
  const ways = left.without.filter(({ count }) => count > 0);
  return {
    heading: words.say("roster.none.heading"),
    text: words.say(ways.length > 0 ? "roster.none.drop" : "roster.none.all", { total }),
    ways:
      ways.length > 0
        ? ways.map(({ filter, count }) => ({
            href: here(withoutFilter(view, filter)),
            label: words.say("roster.none.without", { filter: sayFilter(words, source, filter), count }),
          }))
        : [{ href: here({ ...WHOLE_ROSTER, who: view.who }), label: words.say("roster.all", { total }) }],
  };
}

/** What finds, filters and orders the roster, in words. */
export function buildRosterTools(words: Words, source: ToolsSource): RosterTools {
  const { view, kept, left, total } = source;
  const filters = filtersOf(view);
  const whole = { ...WHOLE_ROSTER, who: view.who };
  // A search is of the moment: nobody opens their roster at one student every day.
  const lasting = rosterQuery({ ...view, q: "" });
  const isWhole = rosterQuery(view) === rosterQuery(whole);
  return {
    action: "/students#roster",
    search: {
      ...{ name: "q", label: words.say("roster.filter.q"), hint: "", kind: "text", value: view.q, options: [] },
      ...{ required: "no", error: "" },
    },
    submit: words.say("roster.filter.submit"),
    more: {
      summary: words.say("roster.filter.more"),
      open: filters.some((name) => name !== "q") ? "yes" : "no",
      fields: fieldsOf(words, source),
    },
    hidden: [
      ...(view.who === "all" ? [{ name: "who", value: "all" }] : []),
      ...(view.weeks === null ? [] : [{ name: "weeks", value: view.weeks }]),
    ],
    state: words.say("roster.state", {
      shown: left.entries.length,
      total,
      filtered: filters.length === 0 ? "no" : "yes",
      sort: words.say(`roster.sort.${view.sort}`),
      hasSecond: view.second === null ? "no" : "yes",
      second: view.second === null ? "" : words.say(`roster.sort.${view.second}`),
    }),
    filters: filters.map((name) => ({
      href: here(withoutFilter(view, name)),
      label: words.say("roster.filter.drop", { filter: sayFilter(words, source, name) }),
    })),
    filtersLabel: words.say("roster.filters"),
    all: isWhole ? null : { href: here(whole), label: words.say("roster.all", { total }) },
    kept: source.openedKept === "yes" ? words.say("roster.kept") : "",
    back:
      kept === null || source.openedKept === "yes" || kept === rosterQuery(view)
        ? null
        : { href: "/students", label: words.say("roster.back") },
    keep:
      lasting === kept || (kept === null && lasting === rosterQuery(WHOLE_ROSTER))
        ? null
        : { label: words.say("roster.keep"), explains: words.say("roster.keep.explains"), query: lasting },
    forget: kept === null ? null : words.say("roster.forget"),
    none: nobodyLeft(words, source),
  };
}
