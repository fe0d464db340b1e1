import { findRow } from "../access/find-row";
import { currentInstant } from "../clock";

/** A refusal as the log has it. */
export interface RefusalLine {
  readonly reference: string;
  readonly status: number;
  readonly why: string;
  readonly method: string;
  /** As it was asked for; only its pattern is written down. */
  readonly address: string;
}

const METHOD = /^[A-Z]{3,10}$/;

/** The pattern of an address, without what names somebody or opens something; an address of no page isn't written down at all. */
function patternOf(method: string, address: string): string {
  const [pathname = ""] = address.split("?");
  if (pathname.startsWith("/_next/")) return "/_next";
  const row = findRow(method, pathname) ?? findRow("GET", pathname);
  return row?.split(" ").find((part) => part.startsWith("/")) ?? "nowhere";
}

/** One line of the log: when, which reference, what was answered, why, to what. Nothing that anybody typed is in it. */
export function sayRefusal({ reference, status, why, method, address }: RefusalLine): string {
  const asked = METHOD.test(method) ? method : "?";
  return `${currentInstant()} refused ${reference} ${status} ${why || "-"} ${asked} ${patternOf(asked, address)}\n`;
}

/** Writes it down. */
export function logRefusal(line: RefusalLine): void {
  process.stderr.write(sayRefusal(line));
}
