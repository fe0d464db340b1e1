import type { Words } from "@/lib/words/catalogue";

/** Words that keep which messages they were asked for. */
export function recordingWords(words: Words): { readonly words: Words; readonly asked: ReadonlySet<string> } {
  const asked = new Set<string>();
  const recording: Words = {
    locale: words.locale,
    has: (key) => words.has(key),
    say(key, args) {
      asked.add(key);
      return words.say(key, args);
    },
  };
  return { words: recording, asked };
}
