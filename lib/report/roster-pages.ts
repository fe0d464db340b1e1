/** Which part of a long list a page shows, and which pages it leads to. */
export interface PagesShown {
  /** From 1. */
  readonly page: number;
  /** Places in the list: the first shown, and the one behind the last. */
  readonly from: number;
  readonly to: number;
  /** The numbers that stand as links: the first, the last, and those about this one. */
  readonly numbers: readonly number[];
}

/** Pages on either side of this one that stand as links. Own choice: five numbers and both ends fit a phone. */
const BESIDE = 2;

/**
 * The page of a list of so many.
 *
 * @param wished its number as an address says it; what is no page of the list shows the first
 */
export function pagesShown(list: {
  readonly total: number;
  readonly size: number;
  readonly wished: string | readonly string[] | undefined;
}): PagesShown {
  const count = Math.max(1, Math.ceil(list.total / list.size));
  const wished = typeof list.wished === "string" && /^\d{1,6}$/.test(list.wished) ? Number(list.wished) : 1;
  const page = wished >= 1 && wished <= count ? wished : 1;
  const numbers = Array.from({ length: count }, (_, place) => place + 1).filter(
    (number) => number === 1 || number === count || Math.abs(number - page) <= BESIDE,
  );
  return { page, from: (page - 1) * list.size, to: Math.min(list.total, page * list.size), numbers };
}
