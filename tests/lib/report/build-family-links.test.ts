import { describe, expect, it } from "vitest";
import type { FamilyLink } from "@/lib/domain/family-link";
import {
  type FamilyLinksSource,
  familyLinksTable,
  familyOpeningsTable,
  familyRequestsTable,
} from "@/lib/report/build-family-links";
import { wordsFor } from "@/lib/words/catalogue";

const words = wordsFor("en");
const link = (id: string, over: Partial<FamilyLink> = {}): FamilyLink => ({
  ...{ id, studentId: "s", tokenHash: `hash of ${id}`, label: id, who: "Ada", madeAt: "2026-03-01T08:00:00.000Z" },
  ...{ expiresAt: "2026-12-01T08:00:00.000Z", renewedAt: null, renewedBy: null, revokedAt: null, revokedBy: null },
  ...over,
});
const SOURCE: FamilyLinksSource = {
  links: [
    link("mother"),
    link("father", { expiresAt: "2026-09-15T08:00:00.000Z", renewedAt: "2026-08-01T08:00:00.000Z", renewedBy: "Ada" }),
    link("aunt", { expiresAt: "2026-09-01T08:00:00.000Z" }),
    link("uncle", { revokedAt: "2026-07-02T08:00:00.000Z", revokedBy: "Bo" }),
  ],
  openings: [
    { linkId: "mother", openedAt: "2026-09-11T18:00:00.000Z" },
    { linkId: "father", openedAt: "2026-09-10T18:00:00.000Z" },
    { linkId: "mother", openedAt: "2026-09-09T18:00:00.000Z" },
  ],
  requests: [],
  consent: "given",
  now: "2026-09-12T12:00:00.000Z",
  dayOf: (instant) => instant.slice(0, 10),
  sayAt: (instant) => instant.slice(0, 10),
};

describe("the coach's lists of a family's links", () => {
  it("say of each for whom, by whom, until when, how often opened, and whether it opens", () => {
    const table = familyLinksTable(words, SOURCE);
    expect(table?.caption).toBe("2 links open now");
    expect(table?.rows.map(({ cells, tone }) => [...cells, tone])).toEqual([
      ["mother", "1 Mar 2026, Ada", "1 Dec 2026", "2 times, last 2026-09-11", "opens", "plain"],
      ["father", "1 Mar 2026, Ada", "15 Sep 2026", "once: 2026-09-10", "ends soon, renewed 1 Aug 2026", "plain"],
      ["aunt", "1 Mar 2026, Ada", "1 Sep 2026", "not yet", "ended", "quiet"],
      ["uncle", "1 Mar 2026, Ada", "1 Dec 2026", "not yet", "taken back 2 Jul 2026, Bo", "quiet"],
    ]);
    expect(familyLinksTable(words, { ...SOURCE, links: [] })).toBeNull();
  });

  it("say that a link opens nothing without a consent to share, and count none as open then", () => {
    const table = familyLinksTable(words, { ...SOURCE, consent: "missing" });
    expect(table?.caption).toBe("No link opens now");
    expect(table?.rows.map(({ cells }) => cells.at(-1))).toEqual([
      "opens nothing: no consent to share",
      "opens nothing: no consent to share",
      "ended",
      "taken back 2 Jul 2026, Bo",
    ]);
  });

  it("name every opening, latest first, and hold nothing of a link's secret", () => {
    expect(familyOpeningsTable(words, SOURCE)?.rows.map(({ cells }) => cells)).toEqual([
      ["2026-09-11", "mother"],
      ["2026-09-10", "father"],
      ["2026-09-09", "mother"],
    ]);
    expect(familyOpeningsTable(words, { ...SOURCE, openings: [] })).toBeNull();
    expect(JSON.stringify([familyLinksTable(words, SOURCE), familyOpeningsTable(words, SOURCE)])).not.toContain("hash");
  });

  it("say of each request what, when, by which link, and the answer", () => {
    const asked = {
      kind: "erase",
      askedAt: "2026-09-01T08:00:00.000Z",
      settledAt: null,
      settledBy: null,
      answer: null,
    } as const;
    const table = familyRequestsTable(words, {
      ...SOURCE,
      requests: [
        { id: "1", linkId: "mother", ...asked },
        { id: "2", linkId: null, ...asked, settledAt: "2026-09-03T08:00:00.000Z", settledBy: "Ada", answer: "Done." },
      ],
    });
    expect(table?.caption).toBe("One request is open");
    expect(table?.rows.map(({ cells }) => cells)).toEqual([
      ["to delete the numbers", "1 Sep 2026", "mother", "open"],
      ["to delete the numbers", "1 Sep 2026", "a link that was erased", "3 Sep 2026, Ada: Done."],
    ]);
  });
});
