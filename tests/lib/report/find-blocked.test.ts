import { describe, expect, it } from "vitest";
import { findBlocked } from "@/lib/report/find-blocked";
import { wordsFor } from "@/lib/words/catalogue";
import { hurts, source, student, track } from "./brief-parts";

const words = wordsFor("en");
const none = { settleIfReal: null } as const;
const SIX = ["2026-05-04", "2026-06-01", "2026-07-06", "2026-08-03", "2026-08-24", "2026-08-30"];
const torn = { notToldApart: { from: "reader", direction: "up", on: "2026-06-01" } } as const;

describe("students whose films settle nothing", () => {
  const planless = student("s1", "Ari", [track("s1", "hinge", none), track("s1", "hip-sway", none)]);
  const read = student("s2", "Bea", [track("s2", "hinge", torn)]);
  const aside = student("s3", "Cal", [
    track("s3", "hinge", {}, { days: SIX, marks: ["used", "used", "used", "used", "set-aside", "set-aside"] }),
  ]);
  const found = findBlocked(words, source([planless, read, aside]));

  it("says what would help, what is mended most easily first", () => {
    expect(found.map((each) => `${each.alias}: ${each.say()}`)).toEqual([
      "Cal: The last 2 films were set aside. A film from the place on the filming card counts again.",
      "Bea: looks moved since 1 Jun, but so does the reader. Two older films read again by the new reader would tell them apart.",
      "Ari: None of 2 open questions has a plan of up to eight films that would probably settle it. Stop asking what can wait, and film the one in hand.",
    ]);
  });

  it("leads to the fundamental that it is about, else to the student alone", () => {
    expect(found.map(({ fundamental }) => fundamental?.href ?? null)).toEqual([
      null,
      "/students/s2/hinge?club=iron",
      null,
    ]);
  });

  it("claims no more of few films than that a first look takes four", () => {
    const few = student("s5", "Eve", [track("s5", "hinge", none, { days: ["2026-07-06", "2026-08-24"] })]);
    expect(findBlocked(words, source([few]))[0]?.next?.()).toMatchObject({
      heading: "Ask Eve for films: 2 count since 6 Jul",
      text: "A first look takes four films on different days: whether anything changes or holds can be asked from then on.",
    });
  });

  it("is asked anew with the next film: the key holds its day", () => {
    expect(found[0]?.key).toBe("blocked s3 set-aside 2026-08-30");
  });

  it("every reason has its words where it is the one next thing", () => {
    for (const each of found) expect(each.next?.().text.length).toBeGreaterThan(40);
    for (const kind of ["set-aside", "aided", "placement", "reader", "few", "no-plan"])
      for (const key of [`brief.blocked.${kind}`, `brief.next.blocked.${kind}`, `brief.next.blocked.${kind}.text`])
        expect(words.has(key), key).toBe(true);
  });

  it("nobody whose work is stopped: each of these would be asked for a film", () => {
    expect(findBlocked(words, source([planless, read, aside].map(hurts)))).toEqual([]);
  });

  it("nobody who is away: what they lack is a film", () => {
    const away = student("s4", "Dot", [
      track("s4", "hinge", none, { days: ["2026-04-01", "2026-05-01", "2026-06-01", "2026-07-01"] }),
    ]);
    expect(findBlocked(words, source([away]))).toEqual([]);
  });
});
