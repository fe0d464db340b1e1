import { openDatabase } from "@/db/client";

/** What names somebody, or opens something, in a database. */
export function personalWordsIn(file: string): readonly string[] {
  const db = openDatabase(file, "read");
  try {
    return db.sqlite
      .prepare<[], string>(
        `SELECT alias FROM student UNION SELECT name FROM user UNION SELECT email FROM user UNION SELECT token FROM auth_session
         UNION SELECT name FROM invitation UNION SELECT email FROM invitation UNION SELECT given_by FROM consent
         UNION SELECT label FROM family_link UNION SELECT note FROM session WHERE length(note) > 8`,
      )
      .pluck()
      .all()
      .filter((word) => word !== null && word.length > 1);
  } finally {
    db.close();
  }
}
