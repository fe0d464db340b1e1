import { describe, expect, it } from "vitest";
import { type FilmedSession, filmDays } from "@/lib/report/film-days";

const session = (over: Partial<FilmedSession> = {}): FilmedSession => ({
  ...{ day: "2031-05-01", clubGroup: "iron", circumstance: "unaided", setAsideReason: null },
  ...over,
});
const days = (clubGroup: string | null, ...sessions: FilmedSession[]) => filmDays({ sessions, clubGroup });

describe("days of films that count", () => {
  it("two films of one day are one day; days come in order", () => {
    expect(days("iron", session(), session())).toEqual(["2031-05-01"]);
    expect(days("iron", session({ day: "2031-05-02" }), session())).toEqual(["2031-05-01", "2031-05-02"]);
  });

  it("aided films, those set aside and those of other clubs are none", () => {
    const none = [
      session({ circumstance: "in-lesson" }),
      session({ setAsideReason: "dark" }),
      session({ clubGroup: "driver" }),
    ];
    expect(days("iron", ...none)).toEqual([]);
    expect(days(null, ...none)).toEqual(["2031-05-01"]);
  });
});
