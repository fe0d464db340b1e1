import { describe, expect, it } from "vitest";
import { roomOf, whyForbidden } from "./import-table";
import { scanImports } from "./scan-imports";

/** Why the table forbids what a planted file imports. */
function caught(file: string, source: string): string[] {
  const dialect = file.endsWith(".tsx") ? "markup" : "script";
  return scanImports(source, dialect).flatMap((one) => whyForbidden(file, one) ?? []);
}

describe("the import table catches", () => {
  it.each([
    ["lib/stats/a.ts", 'import { z } from "zod";'],
    ["lib/stats/a.ts", 'import type { Track } from "@/lib/domain/track";'],
    ["lib/stats/a.ts", 'import cdf from "@stdlib/stats-base-dists-gamma-cdf";'],
    ["lib/stats/a.ts", 'import { readFileSync } from "node:fs";'],
    ["lib/domain/a.ts", 'import { ok } from "../stats/outcome";'],
    ["lib/capture/a.ts", 'import { a } from "@/lib/verdict/policy";'],
    ["lib/ingest/a.ts", 'import { a } from "@/lib/stats/outcome";'],
    ["lib/verdict/a.ts", 'import { say } from "@/lib/words/say-verdict";'],
    ["lib/drills/a.ts", 'import { a } from "@/lib/capture/a";'],
    ["lib/words/a.ts", 'import { policy } from "@/lib/verdict/policy";'],
    ["lib/words/a.ts", 'import { type Verdict } from "@/lib/verdict/policy";'],
    ["lib/words/a.ts", 'import type { Model } from "@/lib/report/page-model";'],
    ["lib/report/a.ts", 'import { parse } from "@/lib/ingest/parse-csv";'],
    ["lib/report/a.ts", 'import { format } from "date-fns";'],
    ["lib/other/a.ts", 'import "zod";'],
    ["db/a.ts", 'import { a } from "@/lib/verdict/policy";'],
    ["db/a.ts", 'import { createHash } from "node:crypto";'],
    ["db/a.ts", 'import { z } from "zod";'],
    ["app/_server/a.ts", 'import { useState } from "react";'],
    ["app/_server/a.ts", 'import React from "react";'],
    ["app/_server/a.ts", 'import { a } from "../_ui/a";'],
    ["app/_server/a.ts", 'import "server-only";'],
    ["app/_commands/analyze.ts", 'import { simulate } from "@/seed/simulate";'],
    ["app/_commands/analyze.ts", 'import { z } from "zod";'],
    ["app/_commands/start.mjs", 'import { open } from "../../db/client.ts";'],
    ["app/_commands/start.mjs", 'import tsx from "tsx";'],
    ["app/students/actions.ts", 'import { a } from "@/db/read/students";'],
    ["app/students/actions.ts", 'import type { A } from "@/db/schema";'],
    ["app/api/health/route.ts", 'import { a } from "@/lib/verdict/policy";'],
    ["proxy.ts", 'import { a } from "@/db/client";'],
    ["app/students/page.tsx", 'import { build } from "@/lib/report/build-roster";'],
    ["app/students/page.tsx", 'import { add } from "../settings/actions";'],
    ["app/students/page.tsx", 'import { a } from "@/db/client";'],
    ["app/students/page.tsx", 'import { z } from "zod";'],
    ["app/students/error.tsx", 'import { a } from "@/app/_server/gate";'],
    ["app/students/list.tsx", 'import "react";'],
    ["app/_ui/a.tsx", 'import { say } from "@/lib/words/say-verdict";'],
    ["app/_ui/a.tsx", 'import { LineChart } from "recharts";'],
    ["app/_ui/a.tsx", 'import { useRouter } from "next/navigation";'],
    ["app/_ui/a.tsx", 'import type { A } from "@/lib/verdict/policy";'],
    ["app/_ui/a.tsx", 'import { add } from "@/app/students/actions";'],
    ["seed/a.ts", 'import { a } from "@/app/_server/gate";'],
    ["seed/a.ts", 'import { a } from "@/tests/reference/read-reference";'],
    ["seed/a.ts", "await import(file);"],
  ])("%s: %s", (file, source) => {
    expect(caught(file, source)).toHaveLength(1);
  });
});

describe("the import table lets pass", () => {
  it.each([
    ["lib/stats/a.ts", 'import cdf from "@stdlib/stats-base-dists-normal-cdf"; import { ok } from "./outcome";'],
    ["lib/verdict/a.ts", 'import { a } from "../stats/a"; import { b } from "@/lib/capture/b";'],
    ["lib/words/a.ts", 'import type { A } from "@/lib/verdict/policy"; import words from "./messages/en/coach.json";'],
    ["lib/report/a.ts", 'import { say } from "@/lib/words/say-verdict";'],
    [
      "db/a.ts",
      'import { eq } from "drizzle-orm"; import { drizzle } from "drizzle-orm/better-sqlite3"; import fs from "fs";',
    ],
    [
      "app/_server/a.ts",
      'import { cache } from "react"; import { cookies } from "next/headers"; import { a } from "@/db/client";',
    ],
    ["app/_server/worker/boot.mjs", 'import "tsx"; import { parentPort } from "node:worker_threads";'],
    ["app/_commands/start.mjs", 'import { spawn } from "node:child_process"; import { ensure } from "./ensure.mjs";'],
    ["app/_commands/analyze.ts", 'import { a } from "@/app/_server/a"; import { b } from "@/lib/verdict/b";'],
    ["app/students/actions.ts", '"use server"; import { z } from "zod"; import { redirect } from "next/navigation";'],
    [
      "app/students/page.tsx",
      'import { add } from "./actions"; import type { M } from "@/lib/report/page-model"; import "./page.css";',
    ],
    ["app/layout.tsx", 'import "@fontsource/atkinson-hyperlegible-next/400.css"; import "./_ui/base.css";'],
    [
      "app/_ui/a.tsx",
      'import Link from "next/link"; import styles from "./a.module.css"; import type { M } from "@/lib/report/page-model";',
    ],
    ["app/_ui/live-chart/a.tsx", 'import { LineChart } from "recharts"; import { mark } from "../mark";'],
    ["seed/a.ts", 'import { addDays } from "date-fns"; import { a } from "@/db/write/a";'],
    ["tests/a.test.ts", 'import { a } from "@/lib/verdict/a"; await import(file);'],
  ])("%s: %s", (file, source) => {
    expect(caught(file, source)).toEqual([]);
  });

  it("a file in the app of no known kind stands in no room", () => {
    expect([roomOf("app/students/list.tsx"), roomOf("lib/a.ts"), roomOf("app/students/page.tsx")]).toEqual([
      null,
      null,
      "page",
    ]);
  });
});
