import type { Policy } from "@/lib/verdict/policy";
import { policyWith } from "@/lib/verdict/policy-with";

/** Where the noise levels come from. */
export type NoiseSource =
  | { readonly kind: "call" }
  | { readonly kind: "none" }
  | { readonly kind: "roster"; readonly file: string }
  | { readonly kind: "models"; readonly file: string };

/** What analyze is asked for. */
export interface AnalyzeArguments {
  readonly looks: "yes" | "no";
  /** False-discovery rate of the list; null: no list. */
  readonly list: number | null;
  readonly noise: NoiseSource;
  readonly policy: Policy;
}

/** Arguments, or the message that says what is wrong with them. */
export type ReadArguments =
  | { readonly kind: "ok"; readonly value: AnalyzeArguments }
  | { readonly kind: "unusable"; readonly key: string; readonly args: Readonly<Record<string, string>> };

const SOURCES = ["--roster", "--noise", "--no-roster"];

function unusable(key: string, args: Readonly<Record<string, string>> = {}): ReadArguments {
  return { kind: "unusable", key: `analyze.usage.${key}`, args };
}

/** Reads the arguments of analyze. */
export function readArguments(argv: readonly string[]): ReadArguments {
  let looks: "yes" | "no" = "no";
  let list: number | null = null;
  let noise: NoiseSource = { kind: "call" };
  const overrides: string[] = [];
  const given = argv.filter((word) => SOURCES.includes(word));
  if (given.length > 1) return unusable("one-source", { sources: given.join(", ") });
  for (let at = 0; at < argv.length; at++) {
    const word = argv[at] ?? "";
    const next = argv[at + 1];
    if (word === "--looks") looks = "yes";
    else if (word === "--no-roster") noise = { kind: "none" };
    else if (!["--list", "--roster", "--noise", "--policy"].includes(word)) return unusable("unknown", { word });
    else if (next === undefined || next.startsWith("--")) return unusable("needs-value", { word });
    else {
      at += 1;
      if (word === "--roster") noise = { kind: "roster", file: next };
      else if (word === "--noise") noise = { kind: "models", file: next };
      else if (word === "--policy") overrides.push(next);
      else {
        const share = /^\d*\.?\d+(e-?\d+)?$/i.test(next) ? Number(next) : Number.NaN;
        if (!(share > 0 && share < 1)) return unusable("list-share", { word: next });
        list = share;
      }
    }
  }
  const changed = policyWith(overrides);
  if (changed.kind === "ok") return { kind: "ok", value: { looks, list, noise, policy: changed.policy } };
  const { code, ...args } = changed.issue;
  return unusable(
    code,
    Object.fromEntries(
      Object.entries(args).map(([name, value]) => [name, Array.isArray(value) ? value.join(", ") : String(value)]),
    ),
  );
}
