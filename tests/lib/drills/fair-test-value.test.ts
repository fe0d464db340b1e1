import { describe, expect, it } from "vitest";
import { fairTestValue } from "@/lib/drills/fair-test-value";

const film = (date: string, ...swings: number[]) => ({ date, use: true, swings });
const goal = { low: -5, high: 5 };
const draw = { from: "2031-03-01", days: 42 };

describe("what a student gained in a test by the lot", () => {
  it("20 outside 5 before, 12 after: 15 less 7 is 8 nearer; the film of the day is one of before", () => {
    const films = [film("2031-02-01", 20, 20), film("2031-03-01", 20), film("2031-03-08", 12), film("2031-04-12", 12)];
    expect(fairTestValue(films, goal, draw)).toEqual({ kind: "ok", value: 8, before: 20, after: 12, films: 2 });
  });
  it("each film counts once, however many swings: means 10 and 20 are 15, three swings against one", () => {
    const films = [film("2031-02-01", 10, 10, 10), film("2031-02-08", 20), film("2031-03-08", 0)];
    expect(fairTestValue(films, goal, draw)).toMatchObject({ before: 15, value: 10 });
  });
  it("the last three before and the first eight after", () => {
    const before = [90, 10, 20, 30].map((value, i) => film(`2031-02-0${i + 1}`, value));
    const after = Array.from({ length: 9 }, (_, i) => film(`2031-03-1${i}`, i === 8 ? 99 : 10));
    expect(fairTestValue([...before, ...after], goal, draw)).toMatchObject({ before: 20, after: 10, films: 8 });
  });
  it("through to the other side: 10 above to 10 below gains nothing; a band of one edge counts one side", () => {
    const films = [film("2031-02-01", 15), film("2031-03-08", -15)];
    expect(fairTestValue(films, goal, draw)).toMatchObject({ value: 0 });
    expect(fairTestValue(films, { low: null, high: 5 }, draw)).toMatchObject({ value: 10 });
  });
  it("a film without use or without a swing, and one of day 43, count for nothing", () => {
    const none = [
      film("2031-02-01", 15),
      { ...film("2031-03-08", 0), use: false },
      film("2031-03-09"),
      film("2031-04-13", 0),
    ];
    expect(fairTestValue(none, goal, draw)).toEqual({ kind: "no-film" });
    expect(fairTestValue([film("2031-03-08", 0)], goal, draw)).toEqual({ kind: "no-start" });
  });
});
