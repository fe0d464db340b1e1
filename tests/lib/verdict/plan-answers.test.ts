import { describe, expect, it } from "vitest";
import type { FilmPlan } from "@/lib/domain/film-plan";
import type { View } from "@/lib/domain/fundamental";
import { askedInVain, planAnswers, type SentFilm } from "@/lib/verdict/plan-answers";

const BOTH: View[] = ["face-on", "down-the-line"];
const FACE_ON: FilmPlan["body"] = { fundamentals: [{ id: "hinge", swings: 3 }], views: ["face-on"], care: [] };
const plan = (madeOn: string, change: Partial<FilmPlan> = {}): FilmPlan => ({
  id: madeOn,
  clubGroup: "iron",
  madeOn,
  dueOn: "2031-12-31",
  body: { fundamentals: [{ id: "hinge", swings: 5 }], views: BOTH, care: [] },
  who: "Owner",
  recordedAt: `${madeOn}T10:00:00.000Z`,
  remindedAt: null,
  voidedAt: null,
  ...change,
});
const film = (day: string, views: View[] = ["face-on"], swings = 5, hour = "12"): SentFilm => ({
  clubGroup: "iron",
  ...{ day, views, swings },
  enteredAt: `${day}T${hour}:00:00.000Z`,
});

describe("what came of both views and five swings", () => {
  it("nothing was asked: nothing is missed, however few came", () =>
    expect(planAnswers([], [film("2031-01-01", [], 1)])).toEqual({
      notSent: { "face-on": 0, "down-the-line": 0 },
      short: { films: 0, came: 0 },
      awaited: null,
    }));

  it("two films in a row without the view: 2; one with it: 0 again", () => {
    const plans = [plan("2031-01-01"), plan("2031-01-08"), plan("2031-01-15")];
    const films = [film("2031-01-03"), film("2031-01-10")];
    expect(planAnswers(plans, films).notSent).toEqual({ "face-on": 0, "down-the-line": 2 });
    expect(planAnswers(plans, [...films, film("2031-01-16", BOTH)]).notSent["down-the-line"]).toBe(0);
  });

  it("a plan is answered by its first film alone, and one that was replaced before a film by none", () => {
    const films = [film("2031-01-03"), film("2031-01-04")];
    expect(planAnswers([plan("2031-01-01")], films).notSent["down-the-line"]).toBe(1);
    expect(planAnswers([plan("2031-01-01"), plan("2031-01-02")], films).notSent["down-the-line"]).toBe(1);
  });

  it("two swings instead of five, twice: short by two films, and two is what comes", () => {
    const plans = [plan("2031-01-01"), plan("2031-01-08")];
    const films = [film("2031-01-03", BOTH, 3), film("2031-01-10", BOTH, 2)];
    expect(planAnswers(plans, films).short).toEqual({ films: 2, came: 2 });
    expect(planAnswers(plans, [...films.slice(0, 1), film("2031-01-10", BOTH, 5)]).short.films).toBe(0);
  });

  it("a view that came unasked, or beside a plan's film, is no longer missed", () => {
    const plans = [plan("2031-01-01"), plan("2031-01-08"), plan("2031-01-15", { body: FACE_ON })];
    const missed = [film("2031-01-03"), film("2031-01-10")];
    expect(planAnswers(plans, [...missed, film("2031-01-16")]).notSent["down-the-line"]).toBe(2);
    expect(planAnswers(plans, [...missed, film("2031-01-16", BOTH)]).notSent["down-the-line"]).toBe(0);
    const beside = [...missed, film("2031-01-11", ["down-the-line"])];
    expect(planAnswers(plans, beside).notSent["down-the-line"]).toBe(0);
  });

  it("five were asked twice, three came; three of three asked prove nothing of five, and five of three do", () => {
    const plans = [plan("2031-01-01"), plan("2031-01-08"), plan("2031-01-15", { body: FACE_ON })];
    const missed = [film("2031-01-03", BOTH, 3), film("2031-01-10", BOTH, 3)];
    expect(planAnswers(plans, [...missed, film("2031-01-16", BOTH, 3)]).short).toEqual({ films: 2, came: 3 });
    expect(planAnswers(plans, [...missed, film("2031-01-16", BOTH, 4)]).short).toEqual({ films: 2, came: 4 });
    expect(planAnswers(plans, [...missed, film("2031-01-16", BOTH, 2)]).short).toEqual({ films: 3, came: 2 });
    expect(planAnswers(plans, [...missed, film("2031-01-16", BOTH, 5)]).short).toEqual({ films: 0, came: 0 });
    // A film beside the plan's tells only where it has them all.
    expect(planAnswers(plans, [...missed, film("2031-01-11", BOTH, 1)]).short).toEqual({ films: 2, came: 3 });
    expect(planAnswers(plans, [...missed, film("2031-01-11", BOTH, 5)]).short.films).toBe(0);
  });

  it("two films of a day, one of each view, answer as one; of one view they are more swings", () => {
    const told = [plan("2031-01-01")];
    const day = [film("2031-01-03", ["face-on"], 5), film("2031-01-03", ["down-the-line"], 4, "13")];
    expect(planAnswers(told, day)).toMatchObject({ notSent: { "down-the-line": 0 }, short: { films: 0 } });
    expect(planAnswers(told, day.toReversed()).notSent).toEqual({ "face-on": 0, "down-the-line": 0 });
    const [three, two] = [film("2031-01-03", BOTH, 3), film("2031-01-03", BOTH, 2, "13")];
    expect(planAnswers(told, [three, two]).short).toEqual({ films: 0, came: 0 });
    // What was entered before the plan of that day answers nothing.
    const same = [film("2031-01-01", ["down-the-line"], 5, "09"), film("2031-01-01", ["face-on"], 5, "11")];
    expect(planAnswers(told, same).notSent["down-the-line"]).toBe(1);
  });

  it("a film with other clubs answers nothing, and each group of clubs has its own last plan", () => {
    const wood = (day: string, views: View[]): SentFilm => ({ ...film(day, views), clubGroup: "wood" });
    const iron = plan("2031-01-01");
    expect(planAnswers([iron], [wood("2031-01-03", ["face-on"])])).toMatchObject({
      ...{ notSent: { "down-the-line": 0 }, awaited: iron },
    });
    const both = [iron, plan("2031-01-02", { clubGroup: "wood" })];
    const came = [wood("2031-01-03", BOTH), film("2031-01-04")];
    expect(planAnswers(both, came.slice(0, 1)).awaited).toBe(iron);
    expect(planAnswers(both, came)).toMatchObject({ notSent: { "down-the-line": 1 }, awaited: null });
  });

  it("a film of the plan's own day answers it where it was entered later; until then it is awaited", () => {
    const told = plan("2031-01-01");
    expect(planAnswers([told], [film("2031-01-01", BOTH, 5, "09")]).awaited).toBe(told);
    expect(planAnswers([told], [film("2031-01-01", BOTH, 5, "11")]).awaited).toBeNull();
  });

  it("what was taken back was never asked; a body that can't be read asks for no view, and is awaited", () => {
    const unread = plan("2031-01-01", { body: null });
    expect(planAnswers([plan("2031-01-01", { voidedAt: "2031-01-02T00:00:00.000Z" })], []).awaited).toBeNull();
    expect(planAnswers([unread], []).awaited).toBe(unread);
    expect(planAnswers([unread], [film("2031-01-03", [], 1)])).toMatchObject({
      notSent: { "face-on": 0 },
      short: { films: 0 },
    });
  });
});

it("a fundamental was asked for in vain as often as its view", () => {
  const of = [
    { id: "hinge", view: "face-on" as const },
    { id: "foot-line", view: "down-the-line" as const },
  ];
  expect([...askedInVain(of, { notSent: { "face-on": 0, "down-the-line": 2 } })]).toEqual([
    ["hinge", 0],
    ["foot-line", 2],
  ]);
});
