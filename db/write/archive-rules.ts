import { eq } from "drizzle-orm";
import type { ArchivePlan } from "@/lib/domain/archive-plan";
import type { AcademyScope } from "@/lib/domain/scope";
import type { Database } from "../client";
import { readDrills } from "../read/drills";
import { academy } from "../schema";
import { noteCoding } from "../schema-entry";
import { owningRule } from "../schema-plans";
import { readerErrorFit } from "../schema-rereads";
import { clubRegrouping, drill, noiseModel, ownFundamental } from "../schema-work";

/**
 * Adds the rules of an archive, numbered rows as they were; the goal bands follow when the students are there. To be called
 * inside a transaction.
 *
 * @returns ids of the drills here by the ids of the archive; a drill that is here word for word is not added again, whatever
 * its usual dose and its history have become
 */
export function enterArchivedRules(
  db: Database,
  scope: AcademyScope,
  { rules, seasonStart }: Pick<ArchivePlan, "rules" | "seasonStart">,
  freeId: (table: "drill", id: string) => string,
): Map<string, string> {
  const { orm } = db;
  const { academyId } = scope;
  if (seasonStart !== null) orm.update(academy).set({ seasonStart }).where(eq(academy.id, academyId)).run();
  for (const row of rules.ownFundamentals)
    orm
      .insert(ownFundamental)
      .values({ ...row, academyId })
      .run();
  for (const row of rules.clubGroups)
    orm
      .insert(clubRegrouping)
      .values({ ...row, academyId })
      .run();
  for (const row of rules.noiseModels)
    orm
      .insert(noiseModel)
      .values({ ...row, academyId })
      .run();
  for (const row of rules.readerErrors)
    orm
      .insert(readerErrorFit)
      .values({ ...row, academyId })
      .run();
  for (const row of rules.owningRules)
    orm
      .insert(owningRule)
      .values({ ...row, academyId })
      .run();
  for (const row of rules.noteCodings)
    orm
      .insert(noteCoding)
      .values({ ...row, academyId })
      .run();
  return enterDrills(db, scope, rules.drills, freeId);
}

/** What makes a drill the same one. */
const SAME = ["id", "name", "fundamentalId", "how", "cautions"] as const;

function enterDrills(
  db: Database,
  scope: AcademyScope,
  drills: ArchivePlan["rules"]["drills"],
  freeId: (table: "drill", id: string) => string,
): Map<string, string> {
  const here = readDrills(db, scope);
  const ids = new Map<string, string>();
  for (const row of drills) {
    const same = here.find((each) => SAME.every((field) => each[field] === row[field]));
    const id = same?.id ?? freeId("drill", row.id);
    ids.set(row.id, id);
    if (!same)
      db.orm
        .insert(drill)
        .values({ ...row, id, academyId: scope.academyId })
        .run();
  }
  return ids;
}
