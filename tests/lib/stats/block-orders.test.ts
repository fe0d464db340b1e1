import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { blockOrders } from "@/lib/stats/block-orders";
import { monteCarloBand, seededChances } from "./seeded-normals";

const texts = (orders: readonly Uint8Array[]) => orders.map((order) => order.join(""));
const never = () => {
  throw new Error("no chance was to be asked");
};

describe("reference: by hand", () => {
  it("1 0 and 0 1: the given order first, then the three others", () => {
    const { orders, kind } = blockOrders(
      [
        [1, 0],
        [0, 1],
      ],
      100,
      never,
    );
    expect(kind).toBe("all");
    expect(texts(orders)[0]).toBe("1001");
    expect(texts(orders).sort()).toEqual(["0101", "0110", "1001", "1010"]);
  });
  it("three blocks of 4 have 6 x 6 x 6 = 216 orders, each once", () => {
    const { orders } = blockOrders(Array(3).fill([0, 1, 1, 0]), 216, never);
    expect(new Set(texts(orders)).size).toBe(216);
  });
});

describe("too little and bad input", () => {
  it("no block has one order, the empty one", () => {
    expect(blockOrders([], 10, never)).toEqual({ orders: [new Uint8Array(0)], kind: "all" });
  });
  it("a single order is refused", () => {
    expect(() => blockOrders([[0, 1]], 1, never)).toThrow("got 1");
  });
});

describe("invariance", () => {
  it("every order holds as many of each arm in each block as the given one, listed or drawn", () => {
    const block = fc.array(fc.constantFrom(0 as const, 1 as const), { minLength: 1, maxLength: 6 });
    fc.assert(
      fc.property(fc.array(block, { maxLength: 4 }), fc.integer({ min: 2, max: 60 }), (blocks, most) => {
        const { orders } = blockOrders(blocks, most, seededChances(2));
        expect(orders.length).toBeLessThanOrEqual(most);
        expect([...(orders[0] ?? [])]).toEqual(blocks.flat());
        for (const order of orders) {
          let from = 0;
          for (const each of blocks) {
            const ones = order.slice(from, from + each.length).reduce((sum, arm) => sum + arm, 0);
            expect(ones).toBe(each.filter((arm) => arm === 1).length);
            from += each.length;
          }
        }
      }),
      { numRuns: 100 },
    );
  });
  it("drawn orders of the first blocks are the same with and without blocks behind them", () => {
    const first = Array(3).fill([0, 1, 0, 1, 1, 0]);
    const few = blockOrders(first, 50, seededChances(9));
    const many = blockOrders([...first, [1, 0]], 50, seededChances(9));
    expect(few.kind).toBe("drawn");
    expect(texts(many.orders).map((order) => order.slice(0, 18))).toEqual(texts(few.orders));
  });
});

describe("calibration", () => {
  it("6000 drawn orders of a block of 4 beside others: each of its 6 in a sixth, within 4 standard errors (.019)", () => {
    const { orders, kind } = blockOrders(Array(8).fill([0, 0, 1, 1]), 6001, seededChances(13));
    expect(kind).toBe("drawn");
    const counts = new Map<string, number>();
    for (const order of texts(orders.slice(1))) counts.set(order.slice(4, 8), (counts.get(order.slice(4, 8)) ?? 0) + 1);
    expect(counts.size).toBe(6);
    for (const seen of counts.values()) expect(Math.abs(seen / 6000 - 1 / 6)).toBeLessThan(monteCarloBand(1 / 6, 6000));
  });
});
