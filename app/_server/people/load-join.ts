import type { FormModel } from "@/lib/report/form-model";
import type { Words } from "@/lib/words/catalogue";
import { joinForm } from "./join-desk";
import { findOpenLink } from "./one-time-link";

/** The form behind a one-time link; opening it uses nothing up. Null: there is none behind it. */
export async function loadJoin(words: Words, token: string): Promise<FormModel | null> {
  const found = await findOpenLink(token);
  return found ? joinForm(words, found.link, token) : null;
}
