/** Letters that Unicode doesn't take apart into a plain one and a mark. */
const PLAIN: Readonly<Record<string, string>> = {
  ß: "ss",
  ø: "o",
  ł: "l",
  đ: "d",
  ð: "d",
  þ: "th",
  æ: "ae",
  œ: "oe",
  ı: "i",
};

/** A text as it is searched by: small letters without marks, so that "Zoe" finds "Zoë" and "ase" finds "Åse". */
export function foldText(text: string): string {
  return text
    .normalize("NFKD")
    .toLowerCase()
    .normalize("NFKD")
    .replace(/\p{M}/gu, "")
    .replace(/[ßøłđðþæœı]/g, (letter) => PLAIN[letter] ?? letter);
}
