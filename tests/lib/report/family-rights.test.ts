import { describe, expect, it } from "vitest";
import { familyRights } from "@/lib/report/family-rights";
import type { FamilySource } from "@/lib/report/family-source";
import { wordsFor } from "@/lib/words/catalogue";
import { FAMILY_SOURCE } from "./family-fixture";

const words = wordsFor("en");
const page = (over: Partial<FamilySource>) => familyRights(words, { ...FAMILY_SOURCE, ...over });

describe("what a family may ask and know", () => {
  it("says what was agreed to, how long it is kept, who opened this link, and what was asked and answered", () => {
    const consent = { givenBy: "mother", giverIs: "guardian", from: "2026-03-03", withdrawnOn: null } as const;
    const asked = { linkId: "page", askedAt: "2026-09-01T10:00:00.000Z" };
    const shown = page({
      consents: [
        { ...consent, kind: "measure", until: null },
        { ...consent, kind: "share", until: "2027-03-03" },
      ],
      openings: Array.from({ length: 12 }, (_, at) => `2026-09-${String(12 - at).padStart(2, "0")}T08:00:00.000Z`),
      requests: [
        { id: "1", kind: "erase", ...asked, settledAt: null, settledBy: null, answer: null },
        {
          id: "2",
          kind: "export",
          ...asked,
          settledAt: "2026-09-03T10:00:00.000Z",
          settledBy: "Ada",
          answer: "Posted.",
        },
      ],
    });
    expect(shown.consent.lines.slice(0, 2)).toEqual([
      "mother said yes on 3 Mar 2026: we may make videos of Dot and keep what we measure.",
      "mother said yes on 3 Mar 2026, until 3 Mar 2027: we may show it on this page.",
    ]);
    expect(shown.consent.lines.join()).toContain(
      "We keep it while Dot comes to us, and 24 months after that. Then it is deleted. It is deleted too when nothing was written down here for 24 months. Our safety copies go once they are 35 days old.",
    );
    // There is no button by which it could be asked for here.
    expect(shown.consent.lines.at(-1)).toBe("You can take your yes back at any time: tell your coach.");
    expect(shown.about.lines.at(-1)).toBe("This link was opened 12 times before, the last times:");
    expect(shown.about.opened).toHaveLength(10);
    expect(shown.ask.lines).toEqual([
      "Ask us to delete Dot’s numbers: You asked on 1 Sep 2026. Your coach will answer.",
      "Ask us for a copy of all we have: Ada answered on 3 Sep 2026: Posted.",
    ]);
    expect(shown.ask.presses.map(({ hidden }) => hidden[0]?.value)).toEqual(["export", "who-looked"]);
  });

  it("of what the family asked for it shows what was asked by this link, and leaves the buttons for the rest", () => {
    const asked = { kind: "erase", askedAt: "2026-05-03T10:00:00.000Z" } as const;
    const open = { settledAt: null, settledBy: null, answer: null };
    const answered = { settledAt: "2026-05-04T10:00:00.000Z", settledBy: "Ada", answer: "Not for the other parent." };
    const { ask } = page({
      requests: [
        { id: "1", ...asked, linkId: "another", ...open },
        { id: "2", ...asked, linkId: "another", ...answered },
        { id: "3", ...asked, linkId: null, ...answered },
      ],
    });
    expect([ask.lines, ask.presses.length]).toEqual([[], 3]);
  });
});
