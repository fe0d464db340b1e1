import { updateLanguage } from "@/db/write/students";
import { LANGUAGES } from "@/lib/domain/language";
import type { StudentViewer } from "../gate";

/** In which language the family of a student reads from now on; a word of `tell.done.…`. */
export function chooseLanguage({ db, student }: StudentViewer, data: FormData): "language" | "unchanged" {
  const language = LANGUAGES.find((each) => each === data.get("language"));
  if (language === undefined) return "unchanged";
  return updateLanguage(db, student, language) === "updated" ? "language" : "unchanged";
}
