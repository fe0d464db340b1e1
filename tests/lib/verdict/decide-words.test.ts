import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Verdict } from "@/lib/domain/track-verdict";
import { decideClaims, decideWords, type LookFacts, type NewLevel } from "@/lib/verdict/decide-words";
import { POLICY } from "@/lib/verdict/policy";

/** Evidence of stretches: from start index to [log Bayes factor, direction up]. */
type Facts = {
  readonly limit?: number;
  readonly adds?: false;
  readonly from: Readonly<Record<number, readonly [number, number]>>;
  readonly newLevel?: NewLevel;
  readonly steady?: "steady" | "open";
};

const look = (facts: Facts): LookFacts => ({
  limit: facts.limit ?? POLICY.limit,
  adds: facts.adds ?? true,
  evidence: (start) => {
    const found = facts.from[start];
    return found === undefined ? null : { logBayesFactor: found[0], directionUp: found[1] };
  },
  newLevel: () => facts.newLevel ?? { shape: "step", surelyFrom: 6 },
  wordOf: ({ direction }): Verdict => (direction === "up" ? "gain" : "slip"),
  steady: () => facts.steady ?? "open",
});
const words = (looks: readonly Facts[]) => decideWords(looks.map(look), POLICY);
const alone = (logBayesFactor: number, directionUp: number): Facts => ({ from: { 0: [logBayesFactor, directionUp] } });

/** What a look has to reach that no other bears out. */
const ALONE = POLICY.limit + POLICY.limitAlone;

describe("decideWords: one look", () => {
  it.each([
    ["too few sessions", { from: {} }, "open"],
    ["evidence at the limit of a look alone, up", alone(ALONE, 0.95), "gain"],
    ["evidence at the limit of a look alone, down", alone(ALONE, 0.05), "slip"],
    ["just below it", alone(ALONE - 0.001, 1), "open"],
    ["direction in doubt", alone(9, 0.94), "open"],
    ["a later look's higher limit", { ...alone(ALONE, 1), limit: POLICY.limit + 0.1 }, "open"],
    ["steady without a change", { ...alone(-2, 0.5), steady: "steady" }, "steady"],
    ["a proved change comes before steady", { ...alone(4, 1), steady: "steady" }, "gain"],
  ] as const)("%s", (_, facts, expected) => {
    expect(words([facts])).toEqual([expected]);
  });
});

describe("decideWords: two looks in a row", () => {
  const at = POLICY.limit;
  it.each([
    ["both at the limit: proved at the second", [alone(at, 1), alone(at, 1)], ["open", "gain"]],
    ["the second just below: nothing", [alone(at, 1), alone(at - 0.001, 1)], ["open", "open"]],
    ["the first just below: nothing", [alone(at - 0.001, 1), alone(at, 1)], ["open", "open"]],
    ["with a look between: nothing", [alone(at, 1), alone(0, 0.5), alone(at, 1)], ["open", "open", "open"]],
    ["in opposite directions: nothing", [alone(at, 1), alone(at, 0)], ["open", "open"]],
    ["the first with its direction in doubt: nothing", [alone(at, 0.9), alone(at, 1)], ["open", "open"]],
    [
      "the first below its own, higher limit: nothing",
      [{ ...alone(at, 1), limit: at + 0.5 }, alone(at, 1)],
      ["open", "open"],
    ],
    [
      "a session set aside repeats a look, it bears nothing out",
      [alone(at, 1), { ...alone(at, 1), adds: false }],
      ["open", "open"],
    ],
    [
      "and parts no two looks",
      [alone(at, 1), { ...alone(at, 1), adds: false }, alone(at, 1)],
      ["open", "open", "gain"],
    ],
  ] as const)("%s", (_, looks, expected) => {
    expect(words(looks)).toEqual(expected);
  });
});

describe("decideWords: an earned word is kept down to the hold limit", () => {
  it("3.4, 0.4, -0.5, -0.6, 2.4, 1.8, 2.4, 1.9: kept at -0.5, withdrawn at -0.6, earned anew only by two looks at 1.85", () => {
    const seen = words([3.4, 0.4, -0.5, -0.6, 2.4, 1.8, 2.4, 1.9].map((e) => alone(e, 1)));
    expect(seen).toEqual(["gain", "gain", "gain", "open", "open", "open", "open", "gain"]);
  });

  it("kept only in its own direction", () => {
    expect(words([alone(3.4, 1), alone(2, 0.51), alone(2, 0.5)])).toEqual(["gain", "gain", "open"]);
    expect(words([alone(3.4, 0), alone(2, 0.49), alone(2, 0.51)])).toEqual(["slip", "slip", "open"]);
  });

  it("a proof the other way replaces it at once", () => {
    expect(words([alone(3.4, 1), alone(3.4, 0.01)])).toEqual(["gain", "slip"]);
  });

  it("a higher limit takes no earned word back", () => {
    expect(words([alone(3.4, 1), { ...alone(3.4, 1), limit: 3.5 }])).toEqual(["gain", "gain"]);
  });

  it("a withdrawn word can leave steady behind", () => {
    expect(words([alone(3.4, 1), { ...alone(-1, 0.5), steady: "steady" }])).toEqual(["gain", "steady"]);
  });
});

describe("decideWords: a further change", () => {
  const proved: Facts = { from: { 0: [5, 1] }, newLevel: { shape: "step", surelyFrom: 6 } };

  it("is looked for from the surely new level on, and then is the latest", () => {
    const looks: readonly Facts[] = [
      proved,
      { from: { 0: [4, 1], 6: [1.7, 0] } },
      { from: { 0: [0.2, 0.6], 6: [4.2, 0.02] } },
    ];
    expect(words(looks)).toEqual(["gain", "gain", "slip"]);
    const claims = decideClaims(looks.map(look), POLICY);
    expect(claims[2]?.claims.map((claim) => [claim.start, claim.direction, claim.provedAt])).toEqual([
      [0, "up", 0],
      [6, "down", 2],
    ]);
    expect(claims[2]?.start).toBe(6);
    expect(claims[2]?.evidence.logBayesFactor).toBe(4.2);
  });

  it("asks three quarters more than the first", () => {
    const asked = ALONE + POLICY.limitFurther;
    const further = (e: number): Facts => ({ from: { 0: [4, 1], 6: [e, 0] } });
    expect(words([proved, further(asked - 0.001)])).toEqual(["gain", "gain"]);
    expect(words([proved, further(asked)])).toEqual(["gain", "slip"]);
  });

  it("settles the one before: that one stays though its own evidence is gone", () => {
    const later: Facts = { from: { 0: [-1, 0.5], 6: [1.2, 0.1] } };
    const slip: Facts = { from: { 0: [0, 0.5], 6: [4.2, 0] } };
    expect(words([proved, slip, later])).toEqual(["gain", "slip", "slip"]);
    const claims = decideClaims([proved, slip, later].map(look), POLICY);
    expect(claims[2]?.claims).toHaveLength(2);
  });

  it("withdrawn: the one before returns if it holds, else nothing is left", () => {
    const slip: Facts = { from: { 0: [4, 1], 6: [4.2, 0] } };
    expect(words([proved, slip, { from: { 0: [1.5, 0.9], 6: [-0.6, 0.2] } }])).toEqual(["gain", "slip", "gain"]);
    expect(words([proved, slip, { from: { 0: [-0.6, 0.9], 6: [-0.6, 0.2] } }])).toEqual(["gain", "slip", "open"]);
  });

  it("can't be met by a season without a proof: its stretch is never asked for", () => {
    const asked = new Set<number>();
    const watched = [1, 2, 1.7, 3.2, -1].map((e) => {
      const facts = look({ from: { 0: [e, 1], 6: [50, 1] } });
      return {
        ...facts,
        evidence: (start: number) => {
          asked.add(start);
          return facts.evidence(start);
        },
      };
    });
    expect(decideWords(watched, POLICY)).toEqual(["open", "open", "open", "open", "open"]);
    expect([...asked]).toEqual([0]);
  });

  it("what goes on in the direction of a gradual change is that change; a turn is a further one", () => {
    const gradual: Facts = { from: { 0: [5, 1] }, newLevel: { shape: "gradual", surelyFrom: 6 } };
    const onward: Facts = { from: { 0: [6, 1], 6: [4.2, 1] } };
    const turn: Facts = { from: { 0: [6, 1], 6: [4.2, 0] } };
    const up = decideClaims([gradual, onward].map(look), POLICY);
    expect(up[1]?.claims).toHaveLength(1);
    const down = decideClaims([gradual, turn].map(look), POLICY);
    expect(down[1]?.claims.map((claim) => claim.direction)).toEqual(["up", "down"]);
  });
});

describe("decideWords: any sequence", () => {
  const facts = fc.record({
    from: fc.record({
      0: fc.tuple(fc.double({ min: -3, max: 8, noNaN: true }), fc.double({ min: 0, max: 1, noNaN: true })),
      6: fc.tuple(fc.double({ min: -3, max: 8, noNaN: true }), fc.double({ min: 0, max: 1, noNaN: true })),
    }),
    steady: fc.constantFrom("steady" as const, "open" as const),
  });

  it("a look says the same whatever comes after it", () => {
    fc.assert(
      fc.property(fc.array(facts, { minLength: 1, maxLength: 12 }), fc.nat(11), (looks, cut) => {
        const whole = words(looks);
        expect(words(looks.slice(0, cut + 1))).toEqual(whole.slice(0, cut + 1));
      }),
    );
  });

  it("a change is first claimed at a look whose evidence reaches the limit, and that of a look alone unless the look before did", () => {
    fc.assert(
      fc.property(fc.array(facts, { minLength: 1, maxLength: 12 }), (looks) => {
        const said = decideClaims(looks.map(look), POLICY);
        said.forEach(({ claims }, at) => {
          for (const claim of claims.filter((each) => each.provedAt === at)) {
            const of = (i: number): number =>
              (looks[i] as Facts | undefined)?.from[claim.start]?.[0] ?? Number.NEGATIVE_INFINITY;
            expect(of(at)).toBeGreaterThanOrEqual(of(at - 1) >= POLICY.limit ? POLICY.limit : ALONE);
          }
        });
      }),
    );
  });
});
