import { afterAll, beforeAll, beforeEach, describe, expect, it } from "vitest";
import { askOfCoach, logFamilyPractice, takeFamilyPracticeBack } from "@/app/_server/family/family-desk";
import { revokeFamilyLink } from "@/app/_server/family/link-desk";
import { loadFamily } from "@/app/_server/family/load-family";
import { receiveFamily } from "@/app/_server/family/receive-family";
import type { FamilyViewer } from "@/app/_server/family-gate";
import type { StudentViewer } from "@/app/_server/gate";
import { readFamilyRequests } from "@/db/read/family-links";
import { readFamilyPractice } from "@/db/read/family-practice";
import { addShared, cookieOf, familyAt, linkFor, openedFamily, PUBLIC, stateAddress } from "./family-academy";
import { formOf } from "./first-student";
import { type PeopleAcademy, sentTo, startPeopleAcademy } from "./people-academy";

let academy: PeopleAcademy;
let dot: StudentViewer;
let family: FamilyViewer;
let cookie: string;
beforeAll(async () => {
  stateAddress(PUBLIC);
  academy = await startPeopleAcademy();
  dot = addShared(academy, "Dot");
  ({ family, cookie } = await openedFamily(dot));
});
beforeEach(() => {
  dot.db.sqlite.exec("DELETE FROM practice; DELETE FROM family_request");
});
afterAll(() => {
  academy.remove();
  stateAddress(null);
});

describe("what a button sends", () => {
  const send = (name: keyof typeof SENT, fields: Readonly<Record<string, string>>, shown = cookie) =>
    receiveFamily(
      SENT[name],
      new Request(`http://127.0.0.1:3000/api/family/${family.link.id}`, {
        ...{ method: "POST", headers: sentTo({ cookie: shown }), body: new URLSearchParams(fields) },
      }),
      family.link.id,
      WORK[name],
    );
  const WORK = { logFamilyPractice, takeFamilyPracticeBack, askOfCoach };
  const SENT = {
    logFamilyPractice: "POST /api/family/[pageId]/practice",
    takeFamilyPracticeBack: "POST /api/family/[pageId]/practice/back",
    askOfCoach: "POST /api/family/[pageId]/requests",
  } as const;

  it("leads back to the page, which says what was done; a request waits once for the coach", async () => {
    const logged = await send("logFamilyPractice", { day: dot.today, minutes: "5", hurts: "no" });
    expect([logged.status, logged.headers.get("location")]).toEqual([303, `/family/${family.link.id}?done=logged`]);
    expect((await loadFamily(family, "logged")).notice).toBe("Saved for Dot.");
    for (const done of ["asked", "asked-already"])
      expect((await send("askOfCoach", { kind: "erase" })).headers.get("location")).toContain(`done=${done}`);
    expect((await send("askOfCoach", { kind: "everything" })).headers.get("location")).toContain("done=nothing");
    expect(readFamilyRequests(dot.db, dot.student)).toEqual([
      expect.objectContaining({ kind: "erase", linkId: family.link.id, settledAt: null }),
    ]);
    const { ask } = await loadFamily(family, undefined);
    expect(ask.lines).toEqual([
      expect.stringMatching(/^Ask us to delete Dot’s numbers: You asked on .* Your coach will answer\.$/),
    ]);
    expect(ask.presses).toHaveLength(2);
  });

  it("is this link’s own: of a wish of the mother’s the father reads nothing, may wish the same, and the coach reads both", async () => {
    const { id, token } = linkFor(dot, "father’s phone");
    const father = await familyAt(id, await cookieOf(token));
    if (!father) throw new Error("no father");
    const wish = () => formOf({ kind: "erase" });
    expect(askOfCoach(family, wish())).toBe("asked");
    const { ask } = await loadFamily(father, undefined);
    expect([ask.lines, ask.presses.length]).toEqual([[], 3]);
    expect([askOfCoach(father, wish()), askOfCoach(father, wish()), askOfCoach(family, wish())]).toEqual([
      "asked",
      "asked-already",
      "asked-already",
    ]);
    const all = readFamilyRequests(dot.db, dot.student).map(({ linkId }) => linkId);
    expect(all.toSorted()).toEqual([family.link.id, id].toSorted());
  });

  it("is read no further than a form is long, and in whatever bytes it comes it is refused or passed over", async () => {
    const post = (body: BodyInit) =>
      receiveFamily(
        SENT.logFamilyPractice,
        new Request(`http://127.0.0.1:3000/api/family/${family.link.id}`, {
          ...{ method: "POST", headers: sentTo({ cookie }), body },
        }),
        family.link.id,
        logFamilyPractice,
      );
    const whole = new URLSearchParams({ day: dot.today, minutes: "5", hurts: "no" }).toString();
    const hostile: readonly BodyInit[] = [
      `${whole}&note=${"x".repeat(17_000)}`,
      new Uint8Array([0xff, 0xfe, 0x00, 0x25, 0xc3]),
      "%E0%A4%A=%&&&==",
      "[]",
      "day[]=2026&__proto__=1&constructor=2",
      `${whole}&hurts=yes`.replace("hurts=no", "hurts=%00no"),
    ];
    for (const body of hostile) {
      const answer = await post(body);
      expect([answer.status, answer.headers.get("location")]).toEqual([
        303,
        `/family/${family.link.id}?done=refused#log`,
      ]);
    }
    expect(readFamilyPractice(dot.db, family.pain, "2020-01-01")).toEqual([]);
    expect((await post(whole)).headers.get("location")).toContain("done=logged");
  });

  it("is answered by the one page and writes nothing without a cookie, or once the link was taken back", async () => {
    const other = linkFor(dot, "father");
    const shown = await cookieOf(other.token);
    for (const name of Object.keys(SENT) as (keyof typeof SENT)[]) {
      const refused = await send(name, { day: dot.today, minutes: "5", hurts: "no", kind: "erase" }, shown);
      expect([refused.status, await refused.text()]).toEqual([
        404,
        expect.stringContaining("We can’t show a page from here."),
      ]);
    }
    const last = linkFor(dot, "uncle");
    const jar = await cookieOf(last.token);
    revokeFamilyLink(dot, last.id);
    expect(await familyAt(last.id, jar)).toBeNull();
    expect([readFamilyPractice(dot.db, family.pain, "2020-01-01"), readFamilyRequests(dot.db, dot.student)]).toEqual([
      [],
      [],
    ]);
  });
});
