import { BUILT_IN } from "@/lib/domain/catalogue";
import type { Fundamental } from "@/lib/domain/fundamental";
import type { RereadPair } from "@/lib/domain/reread";
import type { ReaderErrorSource } from "@/lib/report/build-reader-error";
import { fitReaderError } from "@/lib/verdict/fit-reader-error";
import { readerError } from "@/lib/verdict/reader-error";

/** The hinge with these pairs, and what was fitted to them on 1 March 2031, if anything. */
export function madeSource(pairs: readonly RereadPair[], id = "hinge"): ReaderErrorSource {
  const fundamental = BUILT_IN.find((each) => each.id === id) as Fundamental;
  const fitted = fitReaderError(pairs, fundamental, undefined, "2031-03-01");
  return {
    fundamental,
    pairs,
    error: readerError(pairs, fundamental.readerSd, 1.5),
    fits: fitted ? [{ ...fitted, number: 1 }] : [],
  };
}

/** A page with plain blanks in place of those that never break. */
export function plainly<T>(page: T): T {
  return JSON.parse(JSON.stringify(page).replace(/[\u00a0\u202f]/g, " ")) as T;
}
