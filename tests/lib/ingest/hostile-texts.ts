import fc from "fast-check";

/** Texts that programs stumble over: quotes, line ends, emoji, marks of direction, formulas, markup, SQL, nothing. */
export const HOSTILE = [
  "",
  " ",
  '"',
  "'",
  "''",
  "'=1",
  "=1+1",
  "+49",
  "-x",
  "@sum",
  "\t",
  "\r\n",
  "a\nb",
  "\u0000",
  "\u202Eabc",
  "\u200Fא",
  "👩‍👧‍👦",
  "Ångström",
  "e\u0301",
  "＝1",
  "a,b;c",
  "</script><svg/onload=x>",
  "'; DROP TABLE student;--",
  "__proto__",
  "{0}",
  "\uFEFFx",
];

/** Hostile text, alone or in the middle of others, with no half characters: those are refused. */
export const hostileText = fc.oneof(
  fc.constantFrom(...HOSTILE),
  fc.array(fc.constantFrom(...HOSTILE), { maxLength: 4 }).map((parts) => parts.join("x")),
  fc.string({ unit: "binary", maxLength: 40 }),
);
