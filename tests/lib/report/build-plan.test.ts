import { describe, expect, it } from "vitest";
import { orderedFundamentals } from "@/lib/domain/catalogue";
import type { FilmPlan } from "@/lib/domain/film-plan";
import { buildPlanPage } from "@/lib/report/build-plan";
import type { PlanSource } from "@/lib/report/plan-source";
import { planSession } from "@/lib/verdict/plan-session";
import { wordsFor } from "@/lib/words/catalogue";

const words = wordsFor("en");
const fundamentals = orderedFundamentals([]);
const answers = { notSent: { "face-on": 0, "down-the-line": 0 }, short: { films: 0, came: 0 }, awaited: null };
const plan = planSession({
  ...{ tracks: [], fundamentals, inHand: null, blocks: [], answers, films: [], today: "2031-01-05" },
  wish: { fundamentals: ["trail-v", "foot-line"], swings: 4 },
});
const told = (change: Partial<FilmPlan> = {}): FilmPlan => ({
  ...{ id: "p1", clubGroup: "iron", madeOn: "2031-01-01", dueOn: "2031-01-08", who: "Lark" },
  body: { fundamentals: [{ id: "hinge", swings: 5 }], views: ["face-on"], care: [] },
  ...{ recordedAt: "2031-01-01T10:00:00.000Z", remindedAt: null, voidedAt: null },
  ...change,
});
const made = (change: Partial<PlanSource> = {}) =>
  buildPlanPage(words, {
    student: { id: "s1", alias: "Ari", birthYear: 2019, hand: "right", zone: "UTC", clubs: "" },
    ...{ family: words, plan, answers, plans: [], films: [], fundamentals, clubGroup: "iron", club: "with the 7-iron" },
    ...{
      shown: { club: "iron", draft: "d1" },
      dueOn: "2031-01-12",
      today: "2031-01-05",
      hold: "no",
      done: "no",
      notices: [],
      clubs: [],
      dayOf: (at) => at.slice(0, 10),
    },
    ...change,
  });

describe("the page of the next film", () => {
  it("says minutes as counted: 4 + 3 values, 4 + 3 swings, two phones are 5 minutes", () => {
    const page = made();
    expect(plan.seconds).toBe(7 * 15 + 7 * 10 + 2 * 60);
    expect(page.title).toBe("Ari’s next film: 4 swings, about 5 minutes to read");
    expect(page.read.items.map(({ name, href }) => [name, href])).toEqual([
      ["Trail-hand V", null],
      ["Foot line", null],
    ]);
    expect(page.read.items[0]?.why).toBe("Not measured so far.");
    expect(page.documentTitle).not.toContain("Ari");
  });

  it("has a message, a sheet with a card for each view, and links to the cards of the student's hand", () => {
    const page = made({ student: { id: "s1", alias: "Ari", birthYear: null, hand: "left", zone: "UTC", clubs: "" } });
    expect(page.send?.message.text).toContain("by Sunday 12 January");
    expect(page.send?.message.label).toBe(`Message for the family, ${page.send?.message.text.length} letters`);
    expect(page.sheet?.cards).toHaveLength(2);
    expect(page.film?.links.map(({ href }) => href)).toEqual([
      "/filming?view=face-on&hand=left&for=s1",
      "/filming?view=down-the-line&hand=left&for=s1",
      "/students/s1/sessions/new",
      "/students/s1/tell",
    ]);
  });

  it("asks a family that reads German in German, by message and sheet, and tells the coach in English", () => {
    const page = made({ family: wordsFor("de"), club: "mit dem Schläger „7-iron“" });
    expect([page.send?.message.lang, page.sheet?.lang]).toEqual(["de", "de"]);
    expect(page.send?.message.text).toContain("Ari: Bitte macht das nächste Video bis Sonntag, 12. Januar.");
    expect(page.sheet?.heading).toBe("Ari: Video bis So, 12. Januar 2031");
    expect(page.sheet?.cards[0]?.steps[0]).toMatch(/^Legt Stab 1/);
    expect(page.send?.message.label).toMatch(/^Message for the family/);
    expect(page.film?.links[0]?.label).toBe("Card for the phone: from the front");
  });

  it("offers other clubs where there are any", () => {
    const club = (id: string, current: "yes" | "no") => ({ href: `?club=${id}`, label: id, current });
    expect(made({ clubs: [club("iron", "yes")] }).clubGroups).toBeNull();
    expect(made({ clubs: [club("iron", "yes"), club("driver", "no")] }).clubGroups?.links).toHaveLength(2);
  });

  it("asks for nothing while practice rests", () => {
    const page = made({ hold: "paused" });
    expect([page.send, page.sheet]).toEqual([null, null]);
    expect(page.notices[0]).toMatch(/on hold/);
    expect(page.title).toBe("Ari’s next film: none while practice is on hold");
    expect(page.film?.links.map(({ label }) => label)).toEqual([
      "Card for the phone: from the front",
      "Card for the phone: from behind",
    ]);
    const late = { ...answers, awaited: told({ dueOn: "2031-01-04" }) };
    expect(made({ hold: "paused", answers: late }).awaited?.remind).toBeNull();
  });

  it("says what is awaited, and offers to note a reminder only once the day has passed", () => {
    const awaited = (change: Partial<FilmPlan>) => made({ answers: { ...answers, awaited: told(change) } }).awaited;
    expect(made().awaited).toBeNull();
    expect(awaited({})).toEqual({
      text: "Told on 1 Jan, promised by Wed 8 Jan. No film has come since.",
      remind: null,
    });
    expect(awaited({ dueOn: "2031-01-04" })?.text).toBe("Promised by Sat 4 Jan, and no film has come since 1 Jan.");
    expect(awaited({ dueOn: "2031-01-04" })?.remind?.hidden).toEqual({
      ...{ studentId: "s1", planId: "p1" },
      ...{ club: "iron", draft: "d1" },
    });
    expect(awaited({ dueOn: "2031-01-04", remindedAt: "2031-01-05T01:00:00Z" })?.text).toContain("reminded on 5 Jan");
    expect(awaited({ body: null })?.text).toContain("can’t be read here");
  });

  it("lists plans latest first, each with what became of it", () => {
    const state = (plans: readonly FilmPlan[], films: PlanSource["films"] = []) =>
      made({ plans, films, today: "2031-02-01" }).told?.table.rows.map(({ cells }) => cells.at(-1));
    const film = {
      clubGroup: "iron",
      day: "2031-01-03",
      enteredAt: "2031-01-03T10:00:00.000Z",
      views: [],
      swings: 3,
    } as const;
    expect(made().told).toBeNull();
    expect(state([told()])).toEqual(["not come"]);
    // A film with other clubs, and a plan for them, leave it as it was.
    expect(state([told()], [{ ...film, clubGroup: "wood" }])).toEqual(["not come"]);
    expect(state([told(), told({ id: "p2", clubGroup: "wood" })])).toEqual(["not come", "not come"]);
    expect(state([told({ remindedAt: "2031-01-09T10:00:00.000Z" })])).toEqual(["not come, reminded 9 Jan"]);
    expect(state([told({ dueOn: "2031-03-01" })])).toEqual(["awaited"]);
    expect(state([told()], [film])).toEqual(["a film came"]);
    const second = told({ id: "p2", madeOn: "2031-01-02", recordedAt: "2031-01-02T10:00:00.000Z" });
    expect(state([told(), second], [film])).toEqual(["a film came", "replaced before a film came"]);
    expect(state([told(), { ...second, voidedAt: "2031-01-02T11:00:00.000Z" }], [film])).toEqual([
      "taken back 2 Jan",
      "a film came",
    ]);
    expect(made({ plans: [told()] }).told?.presses[0]?.hidden).toMatchObject({
      club: "iron",
      draft: "d1",
      wish: "take",
    });
    expect(made({ plans: [told()] }).told?.table.rows[0]?.cells[2]).toBe("Wrist hinge: 5 swings, from the front");
  });

  it("promises what a plan would tell beside as many swings as it asks for alone; beside fewer it says how many", () => {
    const [item] = plan.items;
    if (!item) throw new Error("nothing planned");
    const taken = { kind: "taken", come: 1, of: 3, swingsEach: 5, chance: 0.8 } as const;
    const offered = { kind: "plan", plan: { sessions: 2, swingsEach: 5, captureSd: 1, chance: 0.8 } } as const;
    const tells = (change: Partial<typeof item>) =>
      made({ plan: { ...plan, items: [{ ...item, ...change }] } }).read.items[0]?.tells;
    const more = "The films that would probably tell have 5 swings each; with 4 this one does not count among them.";
    expect([tells({ tells: taken, swings: 4 }), tells({ tells: offered, swings: 4 })]).toEqual([more, more]);
    expect(tells({ tells: taken, swings: 5 })).toContain("1 of 3 planned films have come");
    expect(tells({ tells: offered, swings: 5 })).not.toBe(more);
  });

  it("says what resting costs in films: every third film, so within 6 and 12 instead of 2 and 4", () => {
    const rests = {
      ...plan,
      leftOut: fundamentals.slice(0, 2).map((fundamental) => ({ fundamental, why: "rests" })),
      fewerSwings: 2,
    } as typeof plan;
    const lines = made({ plan: rests }).left?.lines ?? [];
    expect(lines).toHaveLength(2);
    expect(lines[0]).toMatch(/^Trail-hand V, Lead-hand V rest and are read at every third film/);
    expect(lines[0]).toMatch(/50 in 100 .* within 6 films and 85 in 100 within 12, instead of 2 and 4\.$/);
    expect(lines[1]).toMatch(/^2 swings are planned/);
  });

  it("says the chance of films that were taken on as their fundamental's page does: all of the drawn futures are no certainty", () => {
    const said = (chance: number) => {
      const taken = { kind: "taken" as const, come: 1, of: 3, swingsEach: 3, chance };
      const items = plan.items.map((item) => ({ ...item, tells: taken }));
      return made({ plan: { ...plan, items } }).read.items[0]?.tells;
    };
    expect(said(1)).toBe("1 of 3 planned films have come; all of them would probably tell (over 95 in 100).");
    expect(said(0.85)).toContain("(85 in 100)");
  });

  it("has a whole page where there is nothing to read", () => {
    const none = planSession({
      ...{ tracks: [], fundamentals: [], inHand: null, blocks: [], answers, films: [], today: "2031-01-05" },
      wish: { fundamentals: null, swings: null },
    });
    const page = made({ plan: none });
    expect([page.film, page.send, page.sheet, page.left, page.read.items]).toEqual([null, null, null, null, []]);
    expect(page.title).toBe("Ari’s next film: there is nothing to read");
  });
});
