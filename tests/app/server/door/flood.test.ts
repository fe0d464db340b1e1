import { describe, expect, it, vi } from "vitest";
import { beginAnswering, endAnswering } from "@/app/_server/door/answering";
import {
  AT_ONCE,
  countRequest,
  FLOOD,
  holdBack,
  MOST_SENDERS,
  MOST_WAIT_MS,
  senderOf,
  takeTurn,
  WAITING,
} from "@/app/_server/door/flood";

const START = Date.UTC(2031, 2, 1);

describe("requests of one sender", () => {
  it(`${FLOOD.burst} at once pass, the next waits a second, and ${FLOOD.aSecond} pass in each second after`, () => {
    const passed = (at: number, count: number) =>
      Array.from({ length: count }, () => countRequest("one", at)).filter((wait) => wait === 0).length;
    expect(passed(START, FLOOD.burst + 50)).toBe(FLOOD.burst);
    expect(countRequest("one", START)).toBe(1);
    expect(passed(START + 1000, 100)).toBe(FLOOD.aSecond);
    expect(passed(START + 3_600_000, FLOOD.burst * 2)).toBe(FLOOD.burst);
  });

  it("others are counted for themselves, and a clock set back lets nobody wait longer", () => {
    for (let n = 0; n < FLOOD.burst; n++) countRequest("two", START);
    expect(countRequest("two", START)).toBe(1);
    expect(countRequest("three", START)).toBe(0);
    expect(countRequest("two", START - 3_600_000)).toBe(1);
    expect(countRequest("two", START - 3_600_000 + 1000)).toBe(0);
  });

  it("are known by log-in, key or link, by none of them in the clear, and by no address", () => {
    const of = (headers: Record<string, string>, link: string | null = null) => senderOf(new Headers(headers), link);
    const session = of({ cookie: "a=1; __Host-proofband-own.session_token=abc.def; b=2" });
    expect(session).toBe(of({ cookie: "proofband-demo.session_token=abc.def" }));
    expect(session).not.toContain("abc");
    expect(of({ authorization: "Bearer pbk_x" })).not.toBe(session);
    expect(of({}, "token-of-a-link")).not.toBeNull();
    expect(of({ cookie: "__Host-proofband-family-f1=proof" })).toBe(of({ cookie: "proofband-family-f2=proof" }));
    const nobodies: readonly Record<string, string>[] = [
      {},
      { cookie: "" },
      { "x-forwarded-for": "203.0.113.9" },
      { cookie: "proofband-academy=demo" },
    ];
    for (const nobody of nobodies) expect(of(nobody)).toBeNull();
  });

  it("files of the program, and whoever shows nothing, are not counted", async () => {
    const shown = new Headers({ cookie: "proofband-demo.session_token=files" });
    for (let n = 0; n < FLOOD.burst + 100; n++) expect(await holdBack("POST", "/_next/static/a.js", shown)).toBe(0);
    for (let n = 0; n < FLOOD.burst + 100; n++) expect(await holdBack("POST", "/sign-in", new Headers())).toBe(0);
    expect(await holdBack("POST", "/students", shown)).toBe(0);
  });
});

/** One request that takes its turn: what it was told, and how it ends. */
async function request(sender: string): Promise<{ readonly wait: number; readonly end: () => void }> {
  const answering = beginAnswering();
  const wait = await takeTurn(sender);
  return { wait, end: () => endAnswering(answering) };
}

describe("pages of one sender", () => {
  it(`are made ${AT_ONCE} at a time; the next waits until one is answered, and more than ${WAITING} don't even wait`, async () => {
    const inside = await Promise.all(Array.from({ length: AT_ONCE }, () => request("slow")));
    expect(inside.every(({ wait }) => wait === 0)).toBe(true);
    let came = 0;
    const waiting = Array.from({ length: WAITING }, async () => {
      const one = await request("slow");
      came += 1;
      return one;
    });
    expect((await request("slow")).wait).toBeGreaterThan(0);
    expect((await request("another")).wait).toBe(0);
    expect(came).toBe(0);
    inside[0]?.end();
    await new Promise((resolve) => setTimeout(resolve, 5));
    expect(came).toBe(1);
    for (const { end } of inside.slice(1)) end();
    for (const one of waiting) (await one).end();
    expect(came).toBe(WAITING);
    expect((await request("slow")).wait).toBe(0);
  });

  it("whoever asks for the head of a page alone waits too, and whoever sends something doesn't", async () => {
    const shown = new Headers({ cookie: "proofband-demo.session_token=heads" });
    const sent = async (method: string) => {
      const answering = beginAnswering();
      const wait = await holdBack(method, "/students", shown);
      return { wait, end: () => endAnswering(answering) };
    };
    const inside = await Promise.all(Array.from({ length: AT_ONCE }, () => sent("HEAD")));
    let came = 0;
    const waits = ["HEAD", "GET"].map(async (method) => {
      const { end } = await sent(method);
      came += 1;
      end();
    });
    expect((await sent("POST")).wait).toBe(0);
    expect(came).toBe(0);
    for (const { end } of inside) end();
    await Promise.all(waits);
    expect(came).toBe(2);
  });

  it("whoever goes away while waiting holds no place", async () => {
    const inside = await Promise.all(Array.from({ length: AT_ONCE }, () => request("gone")));
    const answering = beginAnswering();
    const waits = takeTurn("gone");
    endAnswering(answering);
    for (const { end } of inside) end();
    expect(await waits).toBe(0);
    const after = await Promise.all(Array.from({ length: AT_ONCE }, () => request("gone")));
    expect(after.every(({ wait }) => wait === 0)).toBe(true);
  });

  it(`wait for ${MOST_WAIT_MS / 1000} s at most, then are told to come back, and take nobody's turn`, async () => {
    vi.useFakeTimers();
    const inside = await Promise.all(Array.from({ length: AT_ONCE }, () => request("stuck")));
    const waits = request("stuck");
    await vi.advanceTimersByTimeAsync(MOST_WAIT_MS);
    expect((await waits).wait).toBeGreaterThan(0);
    const next = request("stuck");
    inside[0]?.end();
    expect((await next).wait).toBe(0);
    vi.useRealTimers();
  });

  it("of more senders than are remembered the one heard of longest ago begins anew", async () => {
    const first = await Promise.all(Array.from({ length: AT_ONCE }, () => request("first")));
    for (let n = 0; n < MOST_SENDERS; n++) await request(`many ${n}`);
    const again = await Promise.all(Array.from({ length: AT_ONCE }, () => request("first")));
    expect(again.every(({ wait }) => wait === 0)).toBe(true);
    // What leaves late takes nothing from those who came after.
    for (const { end } of first) end();
    let came = 0;
    const next = request("first").then(() => (came += 1));
    await new Promise((resolve) => setTimeout(resolve, 5));
    expect(came).toBe(0);
    again[0]?.end();
    await next;
  });
});
