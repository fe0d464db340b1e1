import { existsSync, mkdirSync } from "node:fs";
import os from "node:os";
import path from "node:path";
import { parseArgs } from "node:util";
import { chromium } from "playwright";
import { addDemoPeople, DEMO_PASSWORD, DEMO_PEOPLE } from "@/app/_server/access/demo-people";
import { closeDatabases, databaseFile, ensurePrivateFolder } from "@/app/_server/database";
import { admitMachine } from "@/app/_server/gate";
import { loadRules } from "@/app/_server/roster/load-verdicts";
import { fillWeeksAcademy, LOOKED_AT_WEEKS } from "@/seed/weeks-academy";
import { serveBuilt, signIn } from "./served-bench";

// Pictures of the roster of a simulated academy some weeks after its first day, made by the real engine and the built pages.

const { values } = parseArgs({
  options: {
    out: { type: "string", default: path.join(os.tmpdir(), "proofband-roster") },
    weeks: { type: "string", default: LOOKED_AT_WEEKS.join(",") },
    widths: { type: "string", default: "390,768,1440" },
    /** What the roster is asked for, as an address says it. */
    view: { type: "string", default: "" },
  },
});

const numbers = (text: string): readonly number[] => text.split(",").map(Number);

async function build(weeks: number): Promise<void> {
  const file = databaseFile("demo");
  if (existsSync(file)) return;
  ensurePrivateFolder(path.dirname(file));
  const made = await fillWeeksAcademy(file, weeks);
  const viewer = await admitMachine({ choice: "demo", locale: null });
  if (viewer === null) throw new Error("the academy that was made isn't there");
  await addDemoPeople(viewer);
  await loadRules(viewer);
  console.log(`week ${weeks}: ${made.students} students, ${made.films} films, judged on ${made.today}`);
}

async function picture(address: string, cookie: string, weeks: number): Promise<void> {
  const browser = await chromium.launch({ executablePath: "/usr/bin/chromium", args: ["--no-sandbox"] });
  try {
    for (const width of numbers(values.widths)) {
      const page = await browser.newPage({ viewport: { width, height: 900 }, extraHTTPHeaders: { cookie } });
      await page.goto(`${address}/students?${values.view}`);
      const file = path.join(values.out, `week-${weeks}-${width}.png`);
      await page.locator("#roster").screenshot({ path: file });
      console.log(file);
      await page.close();
    }
  } finally {
    await browser.close();
  }
}

async function run(): Promise<void> {
  mkdirSync(values.out, { recursive: true });
  const { email } = DEMO_PEOPLE[0] ?? { email: "" };
  for (const weeks of numbers(values.weeks)) {
    process.env.PROOFBAND_DATA = path.join(values.out, `week-${weeks}`);
    await build(weeks);
    closeDatabases();
    const server = await serveBuilt();
    if (server === null) throw new Error("no build is there: npm run build makes one");
    try {
      await picture(server.address, await signIn(server.address, { email, password: DEMO_PASSWORD }), weeks);
    } finally {
      server.stop();
    }
  }
}

run().then(
  () => process.exit(0),
  (error: unknown) => {
    console.error(error instanceof Error ? error.message : String(error));
    process.exit(1);
  },
);
