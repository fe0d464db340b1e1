import { describe, expect, it } from "vitest";
import { findWatched } from "@/lib/report/find-watched";
import { wordsFor } from "@/lib/words/catalogue";
import { change, hurts, plain, source, student, track, WATCH } from "./brief-parts";

const words = wordsFor("en");
const owned = { ownedSince: "2026-03-22", watch: WATCH };

describe("owned fundamentals to look at again", () => {
  it("with how far off and since when, the latest alarm first; never the word slip", () => {
    const later = { ...owned, watch: { ...WATCH, raisedOn: "2026-08-29" } };
    const found = findWatched(
      words,
      source([
        student("s1", "Ari", [track("s1", "hinge", owned)]),
        student("s2", "Bea", [track("s2", "hinge", later)]),
      ]),
    );
    expect(found.map(({ alias, key }) => [alias, key])).toEqual([
      ["Bea", "watch s2/hinge/iron 2026-08-29"],
      ["Ari", "watch s1/hinge/iron 2026-08-22"],
    ]);
    expect(plain(found[0]?.say() ?? "")).toBe("two films below its level since 15 Aug, by 4.9 ± 2.0°.");
    expect(JSON.stringify([found[0]?.say(), found[0]?.next?.()])).not.toMatch(/slip(?!.*would come first)/i);
    expect(found[0]?.next?.().heading).toBe("Open Bea: look again at Wrist hinge");
  });

  it("leaves out whose work is stopped: a film would be asked for", () => {
    const ari = student("s1", "Ari", [track("s1", "hinge", owned)]);
    expect(findWatched(words, source([ari]))).toHaveLength(1);
    expect(findWatched(words, source([hurts(ari)]))).toEqual([]);
  });

  it("leaves out who is away (43 days since the last film that counts) and what is said to be a slip", () => {
    const away = track("s3", "hinge", owned, { days: ["2026-07-19", "2026-08-30"], marks: ["used", "set-aside"] });
    const slipped = track("s4", "hinge", {
      ...owned,
      verdict: "slip",
      listed: true,
      change: change("slip", "2026-08-22"),
    });
    const quiet = track("s5", "hinge", { ownedSince: "2026-03-22" });
    const students = [away, slipped, quiet].map((each) => student(each.studentId, each.studentId, [each]));
    expect(findWatched(words, source(students))).toEqual([]);
    const day = track("s3", "hinge", owned, { days: ["2026-07-20"] });
    expect(findWatched(words, source([student("s3", "Cal", [day])]))).toHaveLength(1);
  });
});
