import { expect, it } from "vitest";
import { filmState } from "@/lib/report/film-state";
import type { TrackSummary } from "@/lib/report/track-summary";
import { track } from "./made-roster";

const film = { day: "2031-05-02", clubGroup: "iron", circumstance: "unaided", aside: "no" } as const;
const marked = (mark: "used" | "aided" | "set-aside", date: string = film.day): TrackSummary => ({
  ...track("hinge", {}),
  sessions: [{ date, mean: 1, mark }],
});

it("a film counts where anything of it does, else the first reason is said", () => {
  expect(filmState(film, [marked("set-aside"), marked("used")])).toBe("counted");
  expect(filmState(film, [marked("set-aside")])).toBe("phone");
  expect(filmState({ ...film, aside: "yes" }, [marked("set-aside")])).toBe("by-hand");
  expect(filmState({ ...film, circumstance: "in-lesson" }, [marked("aided")])).toBe("in-lesson");
  expect(filmState(film, [marked("used", "2031-05-03")])).toBe("unread");
  expect(filmState({ ...film, clubGroup: "driver" }, [marked("used")])).toBe("unread");
});
