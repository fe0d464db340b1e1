import { workerData } from "node:worker_threads";
import { openDatabase } from "@/db/client";
import { rewriteDatabase } from "@/db/rewrite";

// A thread that writes a database anew, while the server's thread goes on to answer.

function rewrite(file: string): void {
  const db = openDatabase(file);
  try {
    rewriteDatabase(db);
  } finally {
    db.close();
  }
}

rewrite((workerData as { readonly file: string }).file);
