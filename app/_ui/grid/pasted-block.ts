/** A block of cells as spreadsheets put it on the clipboard, row by row, each cell without its outer spaces. */
export type PastedBlock = readonly (readonly string[])[];

/** Cells parted by tabs and lines; a cell in quotation marks may hold both, and two marks in it stand for one. */
function cells(text: string): string[][] {
  const rows: string[][] = [[]];
  let cell = "";
  let quoted: "yes" | "no" = "no";
  const close = (): void => {
    rows.at(-1)?.push(cell.trim());
    cell = "";
  };
  for (let i = 0; i < text.length; i += 1) {
    const sign = text[i] as string;
    if (quoted === "yes") {
      if (sign !== '"') cell += sign;
      else if (text[i + 1] === '"') {
        cell += sign;
        i += 1;
      } else quoted = "no";
    } else if (sign === '"' && cell === "") quoted = "yes";
    else if (sign === "\t") close();
    else if (sign === "\n") {
      close();
      rows.push([]);
    } else cell += sign;
  }
  close();
  return rows;
}

/**
 * What was copied, as a block of cells.
 *
 * @param text as the clipboard holds it; an end of line behind the last row makes no row of its own
 * @returns null where it is a single cell: that is left to the browser, which puts it where the caret stands
 */
export function pastedBlock(text: string): PastedBlock | null {
  const plain = text.replace(/\r\n?/g, "\n").replace(/\n$/, "");
  if (!/[\t\n]/.test(plain)) return null;
  return cells(plain);
}
