const ACCENTED: Readonly<Record<string, string>> = {
  a: "á",
  e: "é",
  i: "í",
  o: "ó",
  u: "ú",
  A: "Á",
  E: "É",
  I: "Í",
  O: "Ó",
  U: "Ú",
  n: "ñ",
  c: "ç",
  y: "ý",
};

/**
 * A message stretched and accented outside its arguments, so that a page shows at a glance which words were never
 * written as messages. Odd brace depths are argument syntax and stay; even ones are text (a plural's branch opens a second brace).
 */
export function pseudoMessage(message: string): string {
  let depth = 0;
  let out = "";
  for (let at = 0; at < message.length; at++) {
    const sign = message[at] ?? "";
    if (sign === "{") depth++;
    out += depth % 2 === 0 ? (ACCENTED[sign] ?? sign) : sign;
    if (sign === "}") depth--;
  }
  return `⟦${out}⟧`;
}
