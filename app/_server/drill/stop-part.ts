import type { FormModel } from "@/lib/report/form-model";
import type { Words } from "@/lib/words/catalogue";
import type { field } from "../season/student-form";

type One = (spec: Parameters<typeof field>[3]) => ReturnType<typeof field>;

/**
 * Pain or a pause comes before everything: only on the coach's word is a drill given, or does it go on.
 *
 * @param stop why not today, in sentences; empty: nothing stands against it, and no part is made
 * @param word what the coach says by the tick
 */
export function stopPart(words: Words, stop: readonly string[], one: One, word: string): FormModel["parts"] {
  if (stop.length === 0) return [];
  const options = [{ value: "yes", label: word }];
  return [
    {
      margin: words.say("stop-first.margin"),
      explains: stop.join(" "),
      fields: [one({ name: "goOn", kind: "checkbox", label: words.say("stop-first.word"), options })],
    },
  ];
}
