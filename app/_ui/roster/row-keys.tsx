"use client";

import type { KeyboardEvent, ReactNode } from "react";

const STEPS: Readonly<Record<string, readonly [rows: number, links: number]>> = {
  ArrowUp: [-1, 0],
  ArrowDown: [1, 0],
  ArrowLeft: [0, -1],
  ArrowRight: [0, 1],
};

/** The link that an arrow leads to from one in a table's body; null: the arrow leads nowhere. */
function reached(from: Element, key: string): HTMLElement | null {
  const step = STEPS[key];
  const [cell, row] = [from.closest<HTMLTableCellElement>("th, td"), from.closest("tr")];
  if (!step || !cell || !row) return null;
  const [rows, links] = step;
  if (links !== 0) {
    const own = [...row.querySelectorAll<HTMLElement>("a")];
    return own[own.indexOf(from as HTMLElement) + links] ?? null;
  }
  const side = (of: Element) => (rows > 0 ? of.nextElementSibling : of.previousElementSibling);
  // A row without a link in that column is stepped over.
  for (let next = side(row); next !== null; next = side(next)) {
    const link = next.children[cell.cellIndex]?.querySelector<HTMLElement>("a");
    if (link) return link;
  }
  return null;
}

/** Lets the arrow keys go from link to link in the table within; without scripts the tab key does. */
export function RowKeys({ children }: { readonly children: ReactNode }) {
  const onKeyDown = (event: KeyboardEvent<HTMLElement>): void => {
    if (event.altKey || event.ctrlKey || event.metaKey || event.shiftKey || !(event.target instanceof Element)) return;
    const from = event.target.closest("tbody a");
    const link = from ? reached(from, event.key) : null;
    if (!link) return;
    event.preventDefault();
    link.focus();
    link.scrollIntoView({ block: "nearest", inline: "nearest" });
  };
  // biome-ignore lint/a11y/noStaticElementInteractions: it only hears what its links hear; each of them can be reached without it.
  return <div onKeyDown={onKeyDown}>{children}</div>;
}
