/**
 * A stream of pseudo-random numbers that a seed determines.
 *
 * Everything random in a simulation takes one as its argument, so that a seed names its whole outcome.
 */
export interface Random {
  /** At least 0 and below 1, 32 bits fine. */
  uniform(): number;
}

/**
 * The stream named by a seed and a stream number; both whole, taken modulo 2^32.
 *
 * Small fast counting generator sfc32 of Chris Doty-Humphrey's PractRand (public domain): three words of state mixed by
 * xor, shift, rotation and addition, and a counter that keeps every period at 2^32 or longer. The first fifteen
 * outputs, in which the seed isn't mixed yet, are dropped.
 */
export function randomFrom(seed: number, stream: number): Random {
  let a = seed >>> 0;
  let b = stream >>> 0;
  let c = 0x9e3779b9;
  let counter = 1;
  const next = (): number => {
    const sum = (a + b + counter) >>> 0;
    counter = (counter + 1) >>> 0;
    a = (b ^ (b >>> 9)) >>> 0;
    b = (c + (c << 3)) >>> 0;
    c = (((c << 21) | (c >>> 11)) + sum) >>> 0;
    return sum;
  };
  for (let round = 0; round < 15; round++) next();
  return { uniform: () => next() / 0x1_0000_0000 };
}

/** One draw of the standard normal distribution, by the polar form of Box and Muller (Marsaglia and Bray 1964). */
export function normal(random: Random): number {
  for (;;) {
    const u = 2 * random.uniform() - 1;
    const v = 2 * random.uniform() - 1;
    const s = u * u + v * v;
    if (s > 0 && s < 1) return u * Math.sqrt((-2 * Math.log(s)) / s);
  }
}

/** One draw of Student's t with 4 degrees of freedom, divided by its sd (root of 2): heavy tails, sd 1. */
export function heavyTailed(random: Random): number {
  const chiSquare = -2 * (Math.log(1 - random.uniform()) + Math.log(1 - random.uniform()));
  return normal(random) / Math.sqrt(chiSquare / 4) / Math.SQRT2;
}

/** A whole number from `low` to `high`, both included, all alike. */
export function whole(random: Random, low: number, high: number): number {
  return low + Math.floor(random.uniform() * (high - low + 1));
}

/** A number from `low` to below `high`. */
export function between(random: Random, low: number, high: number): number {
  return low + random.uniform() * (high - low);
}

/** One entry of a list that isn't empty, all alike. */
export function oneOf<T>(random: Random, list: readonly T[]): T {
  return list[Math.floor(random.uniform() * list.length)] as T;
}
