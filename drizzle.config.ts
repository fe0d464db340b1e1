import { defineConfig } from "drizzle-kit";

export default defineConfig({
  dialect: "sqlite",
  schema: [
    "./db/schema.ts",
    "./db/schema-work.ts",
    "./db/schema-rereads.ts",
    "./db/schema-entry.ts",
    "./db/schema-people.ts",
    "./db/schema-privacy.ts",
    "./db/schema-plans.ts",
  ],
  out: "./db/migrations",
});
