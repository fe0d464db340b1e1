/** What orders are asked for. */
export interface BlockOrders {
  /** Orders of all blocks together, each a list of arms, block after block; the first is the one given. */
  readonly orders: readonly Uint8Array[];
  /** `all`: every order once; `drawn`: the given one and others drawn at random. */
  readonly kind: "all" | "drawn";
}

function ordersOf(block: readonly (0 | 1)[]): number[][] {
  const ones = block.filter((arm) => arm === 1).length;
  const found: number[][] = [];
  const fill = (so: number[], left: number): void => {
    if (so.length === block.length) {
      found.push(so);
      return;
    }
    const rest = block.length - so.length;
    if (rest > left) fill([...so, 0], left);
    if (left > 0) fill([...so, 1], left - 1);
  };
  fill([], ones);
  return found;
}

function countOf(block: readonly (0 | 1)[]): number {
  const ones = block.filter((arm) => arm === 1).length;
  let count = 1;
  for (let i = 1; i <= ones; i++) count = (count * (block.length - ones + i)) / i;
  return Math.round(count);
}

/**
 * The orders that two arms could have had, block by block: all of them, or as many as are wanted drawn at random.
 *
 * `blocks`: arms of each block in the order given, any lengths. `most`: how many orders are listed at most, at least 2. `rng`:
 * numbers from 0 to below 1, all equally likely; asked only where there are more orders than that, block after block, so that
 * blocks added behind leave the orders of the earlier ones as they were. Result: the given order first, then each other order
 * once (`all`), or `most` - 1 drawn with equal chance, each anew (`drawn`), so that a share counted over them with the given one is a
 * valid p. Bad input: `most` below 2 throws a RangeError. Assumes that every order of a block was as likely as any other.
 *
 * Source: Edgington, E.S. (1987), Randomization Tests, 2nd ed.; for drawn ones Phipson, B. & Smyth, G.K. (2010), Statistical
 * Applications in Genetics and Molecular Biology 9, 39. Both from memory.
 */
export function blockOrders(blocks: readonly (readonly (0 | 1)[])[], most: number, rng: () => number): BlockOrders {
  if (!(most >= 2)) throw new RangeError(`most must be at least 2, got ${most}`);
  const given = Uint8Array.from(blocks.flat());
  const product = blocks.reduce((so, block) => Math.min(so * countOf(block), Number.MAX_SAFE_INTEGER), 1);
  if (product <= most) {
    let lists: number[][] = [[]];
    for (const block of blocks) {
      const next = ordersOf(block);
      lists = lists.flatMap((so) => next.map((order) => [...so, ...order]));
    }
    const others = lists.filter((list) => list.some((arm, place) => arm !== given[place]));
    return { orders: [given, ...others.map((list) => Uint8Array.from(list))], kind: "all" };
  }
  const drawn = Array.from({ length: most - 1 }, () => given.slice());
  let from = 0;
  for (const block of blocks) {
    for (const order of drawn)
      for (let last = block.length - 1; last > 0; last--) {
        const other = Math.floor(rng() * (last + 1));
        const arm = order[from + last] as number;
        order[from + last] = order[from + other] as number;
        order[from + other] = arm;
      }
    from += block.length;
  }
  return { orders: [given, ...drawn], kind: "drawn" };
}
