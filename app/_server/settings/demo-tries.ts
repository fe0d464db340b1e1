import { existsSync, readFileSync } from "node:fs";
import path from "node:path";

/** How many random seeds were tried until the demo told its stories; null where nobody searched. */
export function demoTries(): number | null {
  const file = path.join(/* turbopackIgnore: true */ process.cwd(), "seed", "demo-seeds.json");
  if (!existsSync(file)) return null;
  const kept = JSON.parse(readFileSync(file, "utf8")) as { readonly tries?: unknown };
  return typeof kept.tries === "number" ? kept.tries : null;
}
