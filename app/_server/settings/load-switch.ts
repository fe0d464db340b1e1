import type { FormModel } from "@/lib/report/form-model";
import { findAcademyDatabase } from "../database";
import type { Viewer } from "../gate";

/** The button that shows the other academy; null: there is no other. */
export async function loadSwitch(viewer: Viewer): Promise<FormModel | null> {
  const other = viewer.choice === "demo" ? "own" : "demo";
  if (!(await findAcademyDatabase(other))) return null;
  return {
    heading: viewer.words.say("settings.part.switch"),
    explains: viewer.words.say("settings.part.switch.text"),
    parts: [],
    grid: null,
    submit: viewer.words.say(`settings.see-${other}`),
    refusal: "",
    hidden: [],
  };
}
