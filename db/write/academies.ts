import type { Database } from "../client";
import type { Academy } from "../read/academies";
import { academy } from "../schema";

export function insertAcademy(db: Database, row: Academy): void {
  db.orm.insert(academy).values(row).run();
}
