import type { Role } from "@/lib/domain/person";
import { ACTION_ROWS } from "./action-rows";
import { PAGE_ROWS } from "./page-rows";
import { ROUTE_ROWS } from "./route-rows";

/** Who may do what: every page, every action and every other address, and the roles for which it answers. */
export const MATRIX = { ...PAGE_ROWS, ...ACTION_ROWS, ...ROUTE_ROWS } as const;

/** One line of the matrix as it is asked about. */
export interface AccessRow {
  readonly of: "nobody" | "viewer" | "academy" | "student" | "key" | "link";
  readonly roles?: readonly Role[];
}

export type RowKey = keyof typeof MATRIX;

/** The rows that are about one kind of thing. */
export type RowOf<K extends AccessRow["of"]> = {
  [R in RowKey]: (typeof MATRIX)[R]["of"] extends K ? R : never;
}[RowKey];

/** What a row is about. */
export function kindOf(row: RowKey): AccessRow["of"] {
  return MATRIX[row].of;
}

/** Whether somebody of some roles may pass a row at all; of whose data it is, the gate asks besides. */
export function mayPass(row: RowKey, roles: readonly Role[]): boolean {
  const found: AccessRow = MATRIX[row];
  return found.roles === undefined || found.roles.some((role) => roles.includes(role));
}
