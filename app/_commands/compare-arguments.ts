import type { Policy } from "@/lib/verdict/policy";
import { policyWith } from "@/lib/verdict/policy-with";

/** The policy of the call, or the message that says what is wrong with its arguments. */
export type CompareArguments =
  | { readonly kind: "ok"; readonly policy: Policy }
  | { readonly kind: "unusable"; readonly key: string; readonly args: Readonly<Record<string, string>> };

/** Reads the arguments of compare-drills. */
export function readCompareArguments(argv: readonly string[]): CompareArguments {
  const overrides: string[] = [];
  for (let at = 0; at < argv.length; at += 2) {
    const word = argv[at] ?? "";
    const next = argv[at + 1];
    if (word !== "--policy") return { kind: "unusable", key: "compare.usage.unknown", args: { word } };
    if (next === undefined || next.startsWith("--"))
      return { kind: "unusable", key: "compare.usage.needs-value", args: { word } };
    overrides.push(next);
  }
  const changed = policyWith(overrides);
  if (changed.kind === "ok") return changed;
  const { code, ...args } = changed.issue;
  const said = Object.entries(args).map(([name, value]) => [
    name,
    Array.isArray(value) ? value.join(", ") : String(value),
  ]);
  return { kind: "unusable", key: `analyze.usage.${code}`, args: Object.fromEntries(said) };
}
