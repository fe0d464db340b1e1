/** By what somebody could be found in a text that is kept. */
export interface Naming {
  /** Ids of the student and of all that is theirs; letters, digits, `_` and `-`. */
  readonly ids: ReadonlySet<string>;
  readonly aliases: readonly string[];
}

const IDS = /[A-Za-z0-9_-]+/g;

function folded(text: string): string {
  return text.normalize("NFC").toLowerCase();
}

/** Whether an alias stands in a text as a word of its own, whatever its capitals: “Ari” stands in “ari's swing”, not in “Aria”. */
export function isAliasIn(text: string, aliases: readonly string[]): boolean {
  const read = folded(text);
  return aliases.some((alias) => {
    const wanted = folded(alias);
    if (wanted === "") return false;
    for (let at = read.indexOf(wanted); at >= 0; at = read.indexOf(wanted, at + 1)) {
      const end = at + wanted.length;
      const before = read.slice(Math.max(0, at - 2), at);
      if (!/[\p{L}\p{N}]$/u.test(before) && !/^[\p{L}\p{N}]/u.test(read.slice(end, end + 2))) return true;
    }
    return false;
  });
}

/** Whether one of the ids stands in a text, whole. */
export function isIdIn(text: string, ids: ReadonlySet<string>): boolean {
  for (const [word] of text.matchAll(IDS)) if (ids.has(word)) return true;
  return false;
}

/** Whether a text names somebody, by an id or by an alias. */
export function isNamedIn(text: string, naming: Naming): boolean {
  return isIdIn(text, naming.ids) || isAliasIn(text, naming.aliases);
}

/** Whether an alias stands anywhere in the name of a file, where words run into each other: “ari2026.csv”. */
export function isAliasInFileName(name: string, aliases: readonly string[]): boolean {
  return aliases.some((alias) => alias !== "" && folded(name).includes(folded(alias)));
}
