import { builtinModules } from "node:module";
import path from "node:path";
import type { Import } from "./scan-imports";

/** A line of the table: what a room may take as values, and of which folders it may take types besides. */
interface Rule {
  readonly values: readonly string[];
  readonly types?: readonly string[];
}

const DISTRIBUTIONS = ["normal", "t", "chisquare", "f", "beta"].flatMap((name) => [
  `@stdlib/stats-base-dists-${name}-cdf`,
  `@stdlib/stats-base-dists-${name}-quantile`,
]);
const NUMERIC = [...DISTRIBUTIONS, "simple-statistics"];
const PARSING = ["papaparse", "read-excel-file", "chardet", "fflate"];
const ARCHIVE = ["fflate"];
const MESSAGES = ["intl-messageformat"];
const MAIL = ["nodemailer"];
const LOG_IN = ["better-auth", "@zxcvbn-ts/language-common", "uqr"];
const STYLES = ["*.css"];
const REACT = ["react", "react-dom"];
const LIB = ["stats", "domain", "capture", "ingest", "verdict", "drills", "words", "report"].map(
  (name) => `lib/${name}`,
);

/** Who may import whom. Each room may import itself. Absent means forbidden; DEVELOPERS.md holds the same table in words. */
const TABLE: Record<string, Rule> = {
  "lib/stats": { values: NUMERIC },
  "lib/domain": { values: ["zod", "date-fns"] },
  "lib/capture": { values: ["lib/domain", "lib/stats"] },
  "lib/ingest": { values: ["lib/domain", ...PARSING, "zod", "date-fns"] },
  "lib/verdict": { values: ["lib/stats", "lib/domain", "lib/capture"] },
  "lib/drills": { values: ["lib/stats", "lib/domain", "lib/verdict"] },
  "lib/words": {
    values: ["lib/domain", ...MESSAGES, "date-fns"],
    types: ["lib/capture", "lib/ingest", "lib/verdict", "lib/drills"],
  },
  "lib/report": { values: LIB.filter((name) => name !== "lib/ingest") },
  db: { values: ["lib/domain", "drizzle-orm", "better-sqlite3", "node:fs", "node:fs/promises", "node:path"] },
  "app/_server": { values: [...LIB, "db", "next", "react{cache}", "zod", ...LOG_IN, ...ARCHIVE, ...MAIL, "node:*"] },
  "app/_server/worker/boot.mjs": { values: [...LIB, "db", "app/_server", "node:*", "tsx"] },
  "app/_commands": { values: [...LIB, "db", "app/_server", "node:*"] },
  "app/_commands/*.mjs": { values: ["node:*"] },
  door: {
    values: ["app/_server", "app/_ui/chart-file", "lib/domain", "lib/ingest", "lib/words", "zod", "next"],
  },
  page: {
    values: [
      "app/_server",
      "app/_ui",
      "./actions",
      "next",
      ...REACT,
      ...STYLES,
      "@fontsource/atkinson-hyperlegible-next",
    ],
    types: ["lib/report"],
  },
  error: { values: ["app/_ui", "next", ...REACT] },
  "app/_ui": { values: [...REACT, "next/link", ...STYLES], types: ["lib/report", "lib/domain", "lib/words"] },
  "app/_ui/live-chart": {
    values: ["app/_ui", ...REACT, "next/link", "recharts", ...STYLES],
    types: ["lib/report", "lib/domain", "lib/words"],
  },
  seed: { values: [...LIB, "db", "date-fns"] },
  tests: { values: ["*"] },
};

const DOORS = ["actions.ts", "route.ts", "proxy.ts", "instrumentation.ts"];
const PAGES = ["page.tsx", "layout.tsx", "loading.tsx", "not-found.tsx"];

/** The line of the table that a file falls under; null: the house has no such room. */
export function roomOf(file: string): string | null {
  const [top, second] = file.split("/");
  const name = path.posix.basename(file);
  if (file === "app/_server/worker/boot.mjs") return file;
  if (top === "lib") return LIB.find((room) => file.startsWith(`${room}/`)) ?? null;
  if (top === "db" || top === "seed" || top === "tests") return top;
  if (top === "app" && second === "_commands") return name.endsWith(".mjs") ? "app/_commands/*.mjs" : "app/_commands";
  if (file.startsWith("app/_ui/live-chart/")) return "app/_ui/live-chart";
  if (top === "app" && (second === "_ui" || second === "_server")) return `app/${second}`;
  if (DOORS.includes(name)) return "door";
  if (top !== "app") return null;
  if (PAGES.includes(name)) return "page";
  return name === "error.tsx" ? "error" : null;
}

/** What an import points to: `@/…` and relative ones as a path from the root, Node's as `node:…`, the rest as written. */
export function targetOf(file: string, from: string): { readonly kind: "file" | "package"; readonly name: string } {
  if (from.startsWith("@/")) return { kind: "file", name: path.posix.normalize(from.slice(2)) };
  if (from.startsWith(".")) return { kind: "file", name: path.posix.join(path.posix.dirname(file), from) };
  return { kind: "package", name: builtinModules.includes(from) ? `node:${from}` : from };
}

/** Why a file may not hold an import; null where the table allows it. */
export function whyForbidden(file: string, { from, kind, names }: Import): string | null {
  const room = roomOf(file);
  if (room === null) return `${file} stands in no room of the house`;
  const rule = TABLE[room] as Rule;
  const target = targetOf(file, from);
  if (target.name === "server-only") return `${file} imports server-only`;
  if (rule.values.includes("*")) return null;
  if (target.kind === "file" && sameRoom(room, target.name)) return null;
  if (rule.values.some((allowed) => covers(allowed, file, target, names))) return null;
  if (kind === "type" && rule.types?.some((allowed) => covers(allowed, file, target, names))) return null;
  const only = rule.types?.some((allowed) => covers(allowed, file, target, names)) ? " (import type only)" : "";
  return `${file} (${room}) may not import ${from}${only}`;
}

function sameRoom(room: string, name: string): boolean {
  if (room === "app/_server/worker/boot.mjs") return name.startsWith("app/_server/");
  if (room === "app/_commands/*.mjs") return roomOf(name) === room;
  if (room === "app/_commands") return name.startsWith("app/_commands/");
  return !["door", "page", "error"].includes(room) && (name === room || name.startsWith(`${room}/`));
}

function covers(
  allowed: string,
  file: string,
  target: { kind: string; name: string },
  names: readonly string[],
): boolean {
  const { name } = target;
  if (allowed === "*.css") return target.kind === "file" && name.endsWith(".css");
  if (allowed === "./actions") {
    return target.kind === "file" && name.replace(/\.ts$/, "") === path.posix.join(path.posix.dirname(file), "actions");
  }
  if (allowed === "node:*") return target.kind === "package" && name.startsWith("node:");
  const picked = /^([^{]+)\{(.+)\}$/.exec(allowed);
  if (picked) return name === picked[1] && names.length > 0 && names.every((one) => one === picked[2]);
  if (allowed === "next/link" || allowed.startsWith("node:")) return target.kind === "package" && name === allowed;
  const house = target.kind === "file";
  return house === /^(lib|db|app)\b/.test(allowed) && (name === allowed || name.startsWith(`${allowed}/`));
}
