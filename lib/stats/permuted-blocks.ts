/**
 * A random order of two arms in blocks, each of which holds both arms equally often.
 *
 * `rng`: numbers from 0 to below 1, all equally likely. `sizes`: the sizes that a block may have, each even and from 2; the size
 * of every block is drawn among them, so that nobody can count out the end of one. `count`: how many places are wanted at least.
 * Result: the blocks in order, 0 and 1 in the order in which they are given; the last block is whole, so there may be more places
 * than wanted, and none where `count` is 0. Within a block every order is as likely as any other, and at no place do the arms
 * differ by more than half of the largest size. Bad input: no size, an odd one, one below 2, or a count that is no whole number
 * throws a RangeError. Assumes nothing but `rng`.
 *
 * Source: Hill, A.B. (1951), British Medical Bulletin 7, 278-282 (equal numbers by blocks); order drawn as in Durstenfeld, R.
 * (1964), Communications of the ACM 7, 420. Both from memory.
 */
export function permutedBlocks(
  rng: () => number,
  { sizes, count }: { readonly sizes: readonly number[]; readonly count: number },
): (0 | 1)[][] {
  if (sizes.length === 0) throw new RangeError("permutedBlocks needs a size");
  for (const size of sizes)
    if (!Number.isInteger(size) || size < 2 || size % 2 !== 0)
      throw new RangeError(`a block's size must be even and at least 2, got ${size}`);
  if (!Number.isInteger(count) || count < 0) throw new RangeError(`count must be a whole number, got ${count}`);
  const blocks: (0 | 1)[][] = [];
  for (let places = 0; places < count; ) {
    const size = sizes[Math.floor(rng() * sizes.length)] as number;
    const block = Array.from({ length: size }, (_, place): 0 | 1 => (place % 2 === 0 ? 0 : 1));
    for (let last = size - 1; last > 0; last--) {
      const other = Math.floor(rng() * (last + 1));
      [block[last], block[other]] = [block[other] as 0 | 1, block[last] as 0 | 1];
    }
    blocks.push(block);
    places += size;
  }
  return blocks;
}
