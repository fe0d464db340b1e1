import { describe, expect, it } from "vitest";
import { findBegin } from "@/lib/report/find-begin";
import { wordsFor } from "@/lib/words/catalogue";
import { hurts, source, student, track } from "./brief-parts";

const words = wordsFor("en");
const filmed = (id: string, alias: string, days: readonly string[], marks?: readonly ("used" | "set-aside")[]) =>
  student(id, alias, [track(id, "hinge", {}, { days, ...(marks ? { marks } : {}) })]);
const fresh = { ...student("s0", "Wren"), since: "2026-08-20" };

describe("students at the beginning", () => {
  it("with one film first, then without any; two films on two days are enough", () => {
    const found = findBegin(
      words,
      source([fresh, filmed("s1", "Ari", ["2026-08-24"]), filmed("s2", "Bea", ["2026-08-17", "2026-08-24"])]),
    );
    expect(found.map((each) => `${each.alias}: ${each.say()}`)).toEqual([
      "Ari: One film, 24 Aug: a second on another day.",
      "Wren: No film that counts yet, on record since 20 Aug.",
    ]);
    expect(found.map((each) => each.next?.().heading)).toEqual([
      "Ask Ari for a second film before the first drill",
      "Ask Wren for two films before the first drill",
    ]);
  });

  it("counts days as the season's page does: two sessions of one day, or with two clubs, are one film", () => {
    const twice = { ...filmed("s1", "Ari", ["2026-08-24"]), sessions: 2 };
    const [found] = findBegin(words, source([twice]));
    expect(found?.say()).toBe("One film, 24 Aug: a second on another day.");
    const unread = { ...fresh, sessions: 1, filmDays: ["2026-08-28"] };
    expect(findBegin(words, source([unread]))[0]?.say()).toBe("One film, 28 Aug: a second on another day.");
  });

  it("one film that was set aside is none, and one beside it is one; two in a row that don't count are another matter", () => {
    const one = filmed("s1", "Ari", ["2026-08-24"], ["set-aside"]);
    const beside = filmed("s2", "Bea", ["2026-08-17", "2026-08-24"], ["set-aside", "used"]);
    const two = filmed("s3", "Cal", ["2026-08-17", "2026-08-24"], ["set-aside", "set-aside"]);
    const past = { ...filmed("s4", "Dot", ["2026-08-24"]), filmDays: ["2025-08-17", "2026-08-24"] };
    expect(findBegin(words, source([one, beside, two, past])).map((each) => `${each.alias}: ${each.say()}`)).toEqual([
      "Bea: One film, 24 Aug: a second on another day.",
      "Ari: No film that counts yet, on record since 1 Mar.",
    ]);
  });

  it("says what the first film is for where there is none, and what a second adds where there is one", () => {
    const [one, none] = findBegin(words, source([fresh, filmed("s1", "Ari", ["2026-08-24"])])).map((each) =>
      each.next?.(),
    );
    expect(none?.text).toMatch(/^No film counts yet\. The first says where everything is, .*Without both a change/);
    expect(one?.text).toMatch(/^The first film, of 24 Aug, says where everything is; a second .*Without it a change/);
  });

  it("nobody who is away, pauses or whose work is stopped; the key holds the films, so that the next one asks anew", () => {
    const pauses = [{ studentId: "s0", day: "2026-08-25", endDay: null }];
    expect(findBegin(words, source([fresh], { pauses }))).toEqual([]);
    expect(findBegin(words, source([hurts(fresh)]))).toEqual([]);
    expect(findBegin(words, source([{ ...fresh, since: "2026-07-01" }]))).toEqual([]);
    expect(findBegin(words, source([fresh]))[0]?.key).toBe("begin s0 0");
  });
});
