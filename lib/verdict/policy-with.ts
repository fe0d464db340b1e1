import { POLICY, POLICY_VERSION, type Policy, THRESHOLD_NAMES, THRESHOLDS, type ThresholdName } from "./policy";

/** An override that can't be used: unknown threshold, or a value that is no number within its bounds. */
export type PolicyIssue =
  | { readonly code: "policy-form"; readonly text: string }
  | { readonly code: "policy-unknown"; readonly key: string; readonly known: readonly string[] }
  | {
      readonly code: "policy-value";
      readonly key: string;
      readonly text: string;
      readonly low: number;
      readonly high: number;
    };

/**
 * The built-in policy with thresholds replaced.
 *
 * @param overrides texts `KEY=VALUE`, any order; of one key the last counts
 * @returns the policy, its version followed by `+KEY=VALUE` for each replaced threshold in the order of the alphabet;
 *   or the first text that can't be used
 */
export function policyWith(
  overrides: readonly string[],
): { readonly kind: "ok"; readonly policy: Policy } | { readonly kind: "issue"; readonly issue: PolicyIssue } {
  const replaced = new Map<ThresholdName, number>();
  for (const text of overrides) {
    const at = text.indexOf("=");
    if (at < 1) return { kind: "issue", issue: { code: "policy-form", text } };
    const key = text.slice(0, at);
    const valueText = text.slice(at + 1).trim();
    const name = THRESHOLD_NAMES.find((known) => known === key);
    if (name === undefined) return { kind: "issue", issue: { code: "policy-unknown", key, known: THRESHOLD_NAMES } };
    const [low, high] = THRESHOLDS[name].bounds;
    const value = Number(valueText);
    if (valueText === "" || !(value >= low && value <= high))
      return { kind: "issue", issue: { code: "policy-value", key, text: valueText, low, high } };
    replaced.set(name, value);
  }
  const version = [...replaced]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .reduce((said, [name, value]) => `${said}+${name}=${value}`, POLICY_VERSION);
  return { kind: "ok", policy: { ...POLICY, ...Object.fromEntries(replaced), version } };
}
