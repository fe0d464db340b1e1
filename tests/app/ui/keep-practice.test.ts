import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { FakePhone, KEEP, KEY } from "./fake-phone";

// What a press on a family's page comes to, with signal and without. The same in a browser: tests/e2e/family-practice.spec.ts.

let phone: FakePhone;
beforeEach(() => {
  phone = new FakePhone();
});
afterEach(() => phone.away());

describe("with signal", () => {
  it("a press is sent as the form would be, and leads where the page says what came of it; nothing is kept", async () => {
    await phone.start();
    await phone.press({ minutes: " 10 ", hurts: "no" });
    expect(phone.sent.map(String)).toEqual([`key=${KEY}&day=2026-03-01&minutes=10&hurts=no`]);
    expect([phone.went, phone.stored.size]).toEqual([["/family/page?done=logged"], 0]);
  });

  it("a press without the answer about pain is sent nowhere and says so", async () => {
    await phone.start();
    await phone.press({ minutes: "10" });
    expect([phone.sent, phone.went, phone.kept.said]).toEqual([[], [], KEEP.words["hurts-missing"]]);
  });

  it("a second press while the first is on its way is none", async () => {
    await phone.start();
    await Promise.all([phone.press({ minutes: "10", hurts: "no" }), phone.press({ minutes: "10", hurts: "no" })]);
    expect(phone.sent).toHaveLength(1);
  });
});

describe("without signal", () => {
  it.each(["away", "full"] as const)(
    "(%s) a log is kept under the form's key, once for a double tap, and again later on",
    async (how) => {
      await phone.start();
      phone.server = how;
      const form = await phone.press({ minutes: "10", hurts: "no" });
      expect([phone.kept.said, phone.kept.logs.length, form.reset.mock.calls.length]).toEqual([KEEP.words.now, 1, 1]);
      phone.now += 4999;
      await phone.press({ minutes: "10", hurts: "no" });
      expect([phone.kept.said, phone.kept.logs.length]).toEqual([KEEP.words.twice, 1]);
      phone.now += 5000;
      await phone.press({ minutes: "10", hurts: "no" });
      expect(phone.kept.logs.map(({ minutes }) => minutes)).toEqual(["10", "10"]);
      expect(new Set(phone.kept.logs.map(({ key }) => key)).size).toBe(2);
      expect(
        phone.kept.logs.every(
          ({ key }) => /^[\da-f]{8}-[\da-f]{4}-4[\da-f]{3}-8[\da-f]{3}-[\da-f]{12}$/.test(key) || key === KEY,
        ),
      ).toBe(true);
    },
  );

  it("a log bears the day of its form: the phone’s own clock is never asked", async () => {
    await phone.start();
    phone.server = "away";
    const refuse = (): never => {
      throw new Error("the phone's clock was asked");
    };
    vi.stubGlobal("Date", Object.assign(refuse, { now: refuse, parse: refuse }));
    await phone.press({ minutes: "10", hurts: "no", day: "2026-02-28" });
    expect([phone.kept.said, phone.kept.logs.map(({ day }) => day)]).toEqual([KEEP.words.now, ["2026-02-28"]]);
  });

  it("what the server would refuse is not kept, but said, and stays in the form", async () => {
    await phone.start();
    phone.server = "away";
    for (const [fields, why] of [
      [{ minutes: "301" }, "much-practice"],
      [{ balls: "1001" }, "many-balls"],
      [{ minutes: "twelve" }, "not-a-count"],
      [{ minutes: "" }, "no-practice"],
    ] as const) {
      const form = await phone.press({ hurts: "no", ...fields }, "exact");
      expect([phone.kept.said, form.reset.mock.calls.length]).toEqual([KEEP.words[why], 0]);
    }
    expect(phone.stored.size).toBe(0);
  });

  it("a yes to pain keeps that it must be asked again and nothing else, and a yes with signal ends that", async () => {
    await phone.start();
    phone.server = "away";
    await phone.press({ minutes: "10", hurts: "yes", place: "knee" });
    expect([...phone.stored]).toEqual([["proofband-practice page ask", "ask"]]);
    expect([phone.kept.pain, phone.section.yes.checked]).toEqual(["asked-again", true]);
    phone.server = "there";
    await phone.press({ hurts: "yes", place: "knee" });
    expect([phone.stored.size, phone.went]).toEqual([0, ["/family/page?done=hurts"]]);
  });

  it("taking back changes nothing and says so", async () => {
    await phone.start();
    phone.server = "away";
    await phone.press({ practiceId: "a" }, null);
    expect([phone.kept.said, phone.stored.size]).toEqual([KEEP.words.press, 0]);
  });
});
