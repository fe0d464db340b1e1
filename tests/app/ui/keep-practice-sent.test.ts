import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { FakePhone, KEEP, KEY, settle } from "./fake-phone";

// What becomes of practice that a phone keeps. The same in a browser: tests/e2e/family-practice-offline.spec.ts.

let phone: FakePhone;
beforeEach(() => {
  phone = new FakePhone();
});
afterEach(() => phone.away());

describe("what is kept", () => {
  const keepTwo = async () => {
    phone.server = "away";
    const keeper = await phone.start();
    await phone.press({ minutes: "10", hurts: "no" });
    await phone.press({ balls: "30", felt: "hard", day: "2026-02-28", hurts: "no" }, "exact");
    return keeper;
  };

  it("is sent as soon as there is signal, marked as kept, with the keys and days it was made with; then the page is made anew", async () => {
    await keepTwo();
    phone.server = "there";
    phone.page.dispatchEvent(new Event("online"));
    await settle();
    expect(phone.sent.map((fields) => [fields.get("kept"), fields.get("day"), fields.get("hurts")])).toEqual([
      ["yes", "2026-02-28", "no"],
      ["yes", "2026-03-01", "no"],
    ]);
    expect(phone.sent[1]?.get("key")).toBe(KEY);
    expect([phone.stored.size, phone.went]).toEqual([0, ["/family/page?done=sent"]]);
  });

  it("is sent at the next opening, and by hand; while there is no signal it stays, and that is said", async () => {
    const keeper = await keepTwo();
    keeper.send();
    await settle();
    expect([phone.kept.said, phone.kept.logs.length]).toEqual([KEEP.words.waits, 2]);
    keeper.stop();
    phone.server = "there";
    await phone.openAgain();
    expect([phone.sent.length, phone.stored.size]).toEqual([2, 0]);
  });

  it("that is refused stays with its reason, is sent again by hand alone, and can be thrown away", async () => {
    const keeper = await keepTwo();
    phone.refuses = (fields) => (fields.get("minutes") === "10" ? "Too old." : "");
    phone.server = "there";
    phone.section.typed.value = "5";
    phone.page.dispatchEvent(new Event("online"));
    await settle();
    expect([phone.kept.logs.map(({ why }) => why), phone.kept.said, phone.went]).toEqual([
      ["Not saved. Too old."],
      KEEP.words.sent,
      [],
    ]);
    phone.page.dispatchEvent(new Event("online"));
    await settle();
    expect(phone.sent).toHaveLength(2);
    keeper.drop(KEY);
    expect([phone.kept.logs, phone.stored.size]).toEqual([[], 0]);
  });

  it("of a page that opens no more is said to be gone, and is", async () => {
    await keepTwo();
    phone.server = "dead";
    phone.page.dispatchEvent(new Event("online"));
    await settle();
    expect(phone.shown?.slice(0, 2)).toEqual([
      "We can’t show a page from here",
      expect.stringContaining("open the link"),
    ]);
    expect(phone.shown?.[2]).toContain("Sat 28 Feb: 30 balls, hard; Sun 1 Mar: 10 min");
    expect(phone.stored.size).toBe(0);
  });

  it("is one log under the page’s key; whatever is pressed on the same page afterwards is another, sent or kept", async () => {
    await keepTwo();
    phone.server = "there";
    phone.section.typed.value = "5";
    phone.page.dispatchEvent(new Event("online"));
    await settle();
    await phone.press({ minutes: "10", hurts: "no" });
    const keys = phone.sent.map((fields) => fields.get("key"));
    expect([keys.length, new Set(keys).size]).toEqual([3, 3]);
  });

  it("of pain goes with a page that opens no more, which says that the coach doesn’t know it", async () => {
    await phone.start();
    phone.server = "away";
    await phone.press({ hurts: "yes" });
    phone.server = "dead";
    await phone.press({ minutes: "10", hurts: "no" });
    expect([phone.shown?.[2], phone.stored.size]).toEqual([KEEP.words.pain, 0]);
  });

  it("of pain ends where the yes was told, also if the rest was refused", async () => {
    await phone.start();
    phone.server = "away";
    await phone.press({ hurts: "yes" });
    phone.server = "there";
    phone.refuses = () => "Too much.";
    await phone.press({ minutes: "301", hurts: "yes", place: "knee" });
    expect([phone.stored.size, phone.went]).toEqual([0, ["/family/page?done=refused"]]);
  });

  it("of pain can be ended by hand: then nothing is asked again", async () => {
    const keeper = await phone.start();
    phone.server = "away";
    await phone.press({ hurts: "yes" });
    keeper.endPain();
    expect([phone.kept.pain, phone.stored.size]).toEqual(["no", 0]);
  });
});
