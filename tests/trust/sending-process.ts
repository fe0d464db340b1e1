import { closeDatabases } from "@/app/_server/database";
import { saveSession } from "@/app/_server/session/session-desk";
import { formOf, viewerOfAri } from "./own-academy";

// Sends one form and says what was answered.

const [, , fields = "{}"] = process.argv;

async function main(): Promise<void> {
  const outcome = saveSession(await viewerOfAri(), formOf(JSON.parse(fields) as Record<string, string>));
  process.stdout.write(`answer ${JSON.stringify(outcome)}\n`);
  closeDatabases();
}

void main();
