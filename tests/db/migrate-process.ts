import { openDatabase } from "@/db/client";
import { migrateDb } from "@/db/migrate";

/** Migrates the file, saying when it begins and when it is done, so that it can be killed in between. */
async function migrateNamedFile([file, migrations]: string[]): Promise<void> {
  if (!file || !migrations) throw new Error("usage: migrate-process FILE MIGRATIONS");
  const db = openDatabase(file);
  process.stdout.write("begun\n");
  await migrateDb(db, migrations);
  process.stdout.write("done\n");
  db.close();
}

void migrateNamedFile(process.argv.slice(2));
