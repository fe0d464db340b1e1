import type { FormModel } from "@/lib/report/form-model";
import { otherAcademy } from "../access/load-sign-in";
import { cookiesIn, seeOther } from "../access/sign-in-desk";
import { ACADEMY_CHOICES, findAcademyDatabase } from "../database";
import type { Viewer } from "../gate";
import { academyCookie, wishIn } from "../viewer";

/** The button that shows the other academy; null: there is no other. */
export async function loadSwitch(viewer: Viewer): Promise<FormModel | null> {
  const other = viewer.choice === "demo" ? "own" : "demo";
  return (await findAcademyDatabase(other)) ? otherAcademy(viewer.words, other) : null;
}

/** Lets a browser see one of the two academies from now on; who may see what in it is asked there. */
export async function receiveChoice(request: Request): Promise<Response> {
  const data = await request.formData().catch(() => new FormData());
  const choice = ACADEMY_CHOICES.find((each) => each === data.get("choice")) ?? wishIn(cookiesIn(request)).choice;
  return seeOther("/", choice === null ? [] : [academyCookie(choice, request.headers)]);
}
