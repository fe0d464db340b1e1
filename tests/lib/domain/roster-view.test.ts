import fc from "fast-check";
import { expect, test } from "vitest";
import {
  filtersOf,
  LONGEST_SEARCH,
  parseRosterView,
  type RosterView,
  rosterQuery,
  WHOLE_ROSTER,
  withoutFilter,
} from "@/lib/domain/roster-view";

const read = (address: string) => parseRosterView(Object.fromEntries(new URLSearchParams(address)));

test("an address that says nothing of a view asks for none, so that a kept one may hold", () => {
  expect(parseRosterView({})).toBeNull();
  expect(parseRosterView({ page: "3", done: "kept", sort: undefined })).toBeNull();
  expect(parseRosterView({ sort: "work" })).toEqual(WHOLE_ROSTER);
  expect(read("q=&verdict=&sort=work&second=")).toEqual(WHOLE_ROSTER);
});

test("what isn't understood asks for nothing, and an order is never its own second", () => {
  expect(read("sort=loud&verdict=brilliant&place=&stale=13&coach=%00&club=a b&show=all&who=some")).toEqual(
    WHOLE_ROSTER,
  );
  expect(read("sort=name&second=name")?.second).toBeNull();
  expect(parseRosterView({ verdict: ["open", "gain"] })?.verdict).toBe("open");
});

test("a search is cut by letters, never through one", () => {
  const view = read(`q=${encodeURIComponent(`  ${"🏌".repeat(200)}`)}`);
  expect([...(view?.q ?? "")].length).toBe(LONGEST_SEARCH);
  expect(view?.q).toBe("🏌".repeat(LONGEST_SEARCH));
});

test("every view comes back from its own address", () => {
  const views = fc.record<RosterView>({
    sort: fc.constantFrom("work", "name", "last", "stale", "proved", "open"),
    second: fc.constantFrom(null, "proved" as const),
    verdict: fc.constantFrom(null, "gain" as const, "moved" as const),
    place: fc.constantFrom(null, "edge" as const),
    fundamental: fc.constantFrom(null, "hinge", "own-lead-heel"),
    coach: fc.constantFrom(null, "nobody", "u1"),
    club: fc.constantFrom(null, "iron"),
    stale: fc.constantFrom(null, 14, 84),
    age: fc.constantFrom(null, "9-12" as const),
    hand: fc.constantFrom(null, "left" as const),
    since: fc.constantFrom(null, "slip-2031-04"),
    counted: fc.constantFrom(null, "film-phone" as const, "filmed-unrecorded" as const),
    show: fc.constantFrom(null, "away" as const),
    weeks: fc.constantFrom(null, "8"),
    q: fc.constantFrom("", "Zoë & Åse", "a=b#c"),
    who: fc.constantFrom("here" as const, "all" as const),
  });
  fc.assert(
    fc.property(views, (view) => {
      const wanted = {
        ...view,
        second: view.second === view.sort ? null : view.second,
        weeks: view.show === "away" ? view.weeks : null,
      };
      expect(read(rosterQuery(wanted))).toEqual(wanted);
      expect(filtersOf(wanted).reduce(withoutFilter, { ...wanted, weeks: null })).toEqual({
        ...WHOLE_ROSTER,
        sort: wanted.sort,
        second: wanted.second,
        who: wanted.who,
      });
    }),
  );
});

test("weeks without a film belong to the list of who wasn't seen, and alone ask for no view", () => {
  expect(read("weeks=8")).toBeNull();
  expect(read("show=away&weeks=8")?.weeks).toBe("8");
  expect(read("show=away&weeks=888")?.weeks).toBeNull();
  expect(rosterQuery({ ...WHOLE_ROSTER, show: "stalled", weeks: "8" })).toBe("show=stalled&sort=work");
});

test("the page stands in the address from the second on", () => {
  expect(rosterQuery(WHOLE_ROSTER, 1)).toBe("sort=work");
  expect(rosterQuery({ ...WHOLE_ROSTER, q: "bo" }, 30)).toBe("q=bo&sort=work&page=30");
});
