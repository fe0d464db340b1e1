import { readFileSync } from "node:fs";
import path from "node:path";
import { findRow } from "@/app/_server/access/find-row";
import type { RowKey } from "@/app/_server/access/matrix";
import { builtRoutes } from "../e2e/routes";
import { served } from "../e2e/served";
import { WRENS } from "./access-askers";

/** An action of the build with its row, and the page that it belongs to. */
export interface BuiltAction {
  readonly id: string;
  readonly row: RowKey;
  readonly page: string;
}

/** Every action that was built. */
export function builtActionRows(): BuiltAction[] {
  const file = path.join(served.root, ".next", "server", "server-reference-manifest.json");
  const { node } = JSON.parse(readFileSync(file, "utf8")) as {
    node: Record<string, { exportedName: string; filename: string }>;
  };
  const pages = builtRoutes().filter(({ kind }) => kind === "page");
  return Object.entries(node).map(([id, { exportedName, filename }]) => {
    const folder = filename
      .replace(/^app/, "")
      .replace(/\/[^/]+$/, "")
      .replace(/\/\([^)]+\)/g, "");
    const page = pages.find(({ path: address }) => findRow("GET", address) === folder)?.path ?? "/settings";
    return { id, row: `${folder} ${exportedName}` as RowKey, page };
  });
}

/** Names what an action could be about, as Wren's own pages would. */
export function fieldsOf(page: string): Record<string, string> {
  const ids = page.split("/");
  const last = ids.at(-1) ?? "";
  return {
    ...{ studentId: WRENS, draftId: "uploaded-for-the-tests", batchId: "imported-for-the-tests", key: "a-key" },
    ...{ sessionId: ids[4] ?? "", eventId: last, assignmentId: last, readBackId: last, drawId: last, practiceId: "1" },
    ...{
      day: "2026-09-01",
      minutes: "10",
      alias: "Stranger",
      wish: "take",
      intent: "import",
      id: last,
      keyId: "1",
      name: "x",
    },
  };
}
