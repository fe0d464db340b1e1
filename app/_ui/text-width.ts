/** How a word is set in a drawing. */
export interface Lettering {
  readonly size: number;
  readonly weight: "text" | "strong";
}

export const PLAIN: Lettering = { size: 14, weight: "text" };
export const STRONG: Lettering = { size: 14, weight: "strong" };

/** Pixels that a line of text takes, from the mean width of this type's letters: drawn on a server, nothing can be measured. */
export function textWidth(text: string, lettering: Lettering): number {
  return text.length * lettering.size * (lettering.weight === "strong" ? 0.565 : 0.54);
}

/** Breaks a sentence between words into lines of at most `width` pixels; one long word stays whole. */
export function wrapText(text: string, width: number, lettering: Lettering): readonly string[] {
  const lines: string[] = [];
  let line = "";
  for (const word of text.split(" ").filter((part) => part !== "")) {
    const longer = line === "" ? word : `${line} ${word}`;
    if (line !== "" && textWidth(longer, lettering) > width) {
      lines.push(line);
      line = word;
    } else {
      line = longer;
    }
  }
  return line === "" ? lines : [...lines, line];
}
